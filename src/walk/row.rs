//! The rows of a survey's text, each with the place of its cells.

use std::ops::Range;

use crate::input::FoundRow;
use crate::input::Quoting;
use crate::input::Scanner;
use crate::walk::page_error::PageError;

/// One row as it stands.
pub(super) struct PageRow {
    /// Its bytes in the text, without the line end.
    pub(super) range: Range<usize>,
    /// The bytes of its cells in the text.
    pub(super) cells: Vec<Range<usize>>,
    /// What the cells say.
    pub(super) texts: Vec<String>,
}

impl PageRow {
    /// The row that begins on a line.
    pub(super) fn of(text: &str, line: u64, delimiter: char) -> Result<PageRow, PageError> {
        let (_, start) = line_starts(text)
            .find(|(number, _)| *number == line)
            .ok_or(PageError::Gone(line))?;
        PageRow::at(text, line, start, delimiter)
    }

    /// The same where it is known at which byte the line begins.
    pub(super) fn at(
        text: &str,
        line: u64,
        start: usize,
        delimiter: char,
    ) -> Result<PageRow, PageError> {
        let gone = PageError::Gone(line);
        let rest = &text.as_bytes()[start..];
        let end = rest.iter().position(|byte| matches!(byte, b'\n' | b'\r'));
        let first = &rest[..end.unwrap_or(rest.len())];
        // only marks lead a row on over the end of its line
        let taken = if first.contains(&b'"') { rest } else { first };
        let mut rows = Scanner::new(taken);
        let mut found = rows.advance().map_err(|_| gone.clone())?;
        if delimiter != ',' && delimiter.is_ascii() {
            let byte = u8::try_from(delimiter).unwrap_or(b',');
            found = rows.part_at(byte).map_err(|_| gone.clone())?;
        }
        if found != FoundRow::Row || rows.record().line != 1 {
            return Err(gone);
        }
        let record = rows.record();
        let raw = &text[start..start + record.raw.len()];
        let open = |quoting| matches!(quoting, Quoting::TextAfterMark | Quoting::Unclosed);
        if record.cells.iter().any(|cell| open(cell.quoting)) {
            return Err(PageError::Marks(line));
        }
        let shifted = |range: Range<usize>| start + range.start..start + range.end;
        Ok(PageRow {
            range: start..start + raw.len(),
            cells: record
                .cells
                .iter()
                .map(|cell| shifted(cell.range()))
                .collect(),
            texts: record
                .cells
                .iter()
                .map(|cell| cell.text(raw).into_owned())
                .collect(),
        })
    }
}

/// Blank lines, and comments: lines that begin with `#` and hold no delimiter.
pub(super) fn line_is_no_row(rest: &str, delimiter: char) -> bool {
    let line = rest.split(['\n', '\r']).next().unwrap_or_default();
    line.trim().is_empty() || (line.starts_with('#') && !line.contains(delimiter))
}

/// The lines of a text with where each begins, as the scanner counts them: a
/// line feed, a carriage return and both together end a line.
pub(super) fn line_starts(text: &str) -> impl Iterator<Item = (u64, usize)> {
    let bytes = text.as_bytes();
    let mark = if text.starts_with('\u{feff}') { 3 } else { 0 };
    let ends = (0..bytes.len()).filter(move |at| match bytes[*at] {
        b'\n' => true,
        b'\r' => bytes.get(at + 1) != Some(&b'\n'),
        _ => false,
    });
    (1..).zip(std::iter::once(mark).chain(ends.map(|at| at + 1)))
}
