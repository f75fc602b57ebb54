//! A piece of a file with a marked range, kept so that it can be shown later
//! without the file.

use std::ops::Range;
use std::sync::Arc;

/// A text file held in memory: a ruleset. Surveys are streamed and never held whole.
#[derive(Clone, Debug)]
pub struct SourceFile {
    /// The name as the user gave it, or the id of an embedded ruleset.
    pub name: Arc<str>,
    /// The text, without a byte-order mark.
    pub text: Arc<str>,
    /// Where its line ends stand.
    line_ends: Arc<[usize]>,
}

impl SourceFile {
    /// A file of this name with this text; a byte-order mark in front is taken off.
    #[must_use]
    pub fn new(name: &str, text: &str) -> SourceFile {
        let text = text.strip_prefix('\u{feff}').unwrap_or(text);
        SourceFile {
            name: name.into(),
            text: text.into(),
            line_ends: memchr::memchr_iter(b'\n', text.as_bytes()).collect(),
        }
    }

    /// The whole lines around a byte range, with the range marked.
    ///
    /// A range past the end or through the middle of a character is moved to
    /// the nearest place that exists.
    #[must_use]
    pub fn excerpt(&self, range: Range<usize>) -> Excerpt {
        let range = clamp(&self.text, range);
        let start = self.text[..range.start].rfind('\n').map_or(0, |at| at + 1);
        let end = self.text[range.end..]
            .find('\n')
            .map_or(self.text.len(), |at| range.end + at);
        let line = 1 + self.line_ends.partition_point(|at| *at < start);
        let text = self.text[start..end].trim_end_matches('\r');
        Excerpt::new(
            Arc::clone(&self.name),
            line as u64,
            text,
            range.start - start..range.end - start,
        )
    }
}

/// Some whole lines of a file, with a marked byte range in them.
///
/// The range always lies within the text and on character boundaries.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Excerpt {
    file: Arc<str>,
    line: u64,
    text: Box<str>,
    start: usize,
    end: usize,
    /// Where it stands in a spreadsheet: `D7`.
    cell: Option<Box<str>>,
}

impl Excerpt {
    /// Lines of `file` from `line` on (counted from 1), with `range` marked.
    #[must_use]
    pub fn new(file: Arc<str>, line: u64, text: &str, range: Range<usize>) -> Excerpt {
        let range = clamp(text, range);
        Excerpt {
            file,
            line,
            text: text.into(),
            start: range.start,
            end: range.end,
            cell: None,
        }
    }

    /// The same as a place in a spreadsheet, by the cell's address there: `D7`.
    #[must_use]
    pub fn in_cell(mut self, address: &str) -> Excerpt {
        self.cell = Some(address.into());
        self
    }

    /// The address of the cell in a spreadsheet, where the file is one.
    #[must_use]
    pub fn cell(&self) -> Option<&str> {
        self.cell.as_deref()
    }

    /// A file as a whole, where no place in it can be named.
    #[must_use]
    pub fn whole(file: Arc<str>) -> Excerpt {
        Excerpt::new(file, 0, "", 0..0)
    }

    /// The file's name.
    #[must_use]
    pub fn file(&self) -> &Arc<str> {
        &self.file
    }

    /// The first line of the excerpt, from 1; 0 where no place can be named.
    #[must_use]
    pub fn first_line(&self) -> u64 {
        self.line
    }

    /// The lines themselves.
    #[must_use]
    pub fn text(&self) -> &str {
        &self.text
    }

    /// The marked byte range in the text.
    #[must_use]
    pub fn range(&self) -> Range<usize> {
        self.start..self.end
    }

    /// The marked text.
    #[must_use]
    pub fn marked(&self) -> &str {
        &self.text[self.range()]
    }

    /// Line (from 1) where the marked range begins; 0 where no place can be named.
    #[must_use]
    pub fn line(&self) -> u64 {
        self.line + self.text[..self.start].matches('\n').count() as u64
    }

    /// Column of the marked range in characters, from 1.
    #[must_use]
    pub fn column(&self) -> u64 {
        let line_start = self.text[..self.start].rfind('\n').map_or(0, |at| at + 1);
        1 + self.text[line_start..self.start].chars().count() as u64
    }
}

/// The nearest range that lies in the text and on character boundaries.
fn clamp(text: &str, range: Range<usize>) -> Range<usize> {
    let start = text.floor_char_boundary(range.start);
    let end = text.ceil_char_boundary(range.end.max(range.start));
    start..end
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_excerpt_knows_its_line_and_column() {
        let file = SourceFile::new("a.toml", "\u{feff}id = \"é\"\nbad = 1\r\nlast");
        let at = file.excerpt(10..13);
        assert_eq!(
            (at.line(), at.column(), at.text(), at.marked()),
            (2, 1, "bad = 1", "bad")
        );
        let past = file.excerpt(900..1000);
        assert_eq!((past.line(), past.column(), past.marked()), (3, 5, ""));
        assert_eq!(file.excerpt(7..8).marked(), "é");
    }
}
