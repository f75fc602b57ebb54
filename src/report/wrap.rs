//! Lines that are no longer than the reader's screen.

use std::io;
use std::io::Write;

use textwrap::Options;
use textwrap::WordSplitter;
use textwrap::core::display_width;

use crate::report::palette;

/// No line is shorter than this, and none needs more. (common practice, no source)
pub const NARROWEST: usize = 40;

/// A line that is longer than this is hard to read. (common practice, no source)
pub const WIDEST: usize = 100;

/// The width of what goes to a file or another program.
pub const WIDTH: usize = 80;

/// Where lines go, and how long they may be.
pub struct TextPage<'w> {
    out: &'w mut dyn Write,
    width: usize,
}

impl<'w> TextPage<'w> {
    /// Lines of this many columns, from [`NARROWEST`] to [`WIDEST`].
    pub fn new(out: &'w mut dyn Write, width: usize) -> TextPage<'w> {
        TextPage {
            out,
            width: width.clamp(NARROWEST, WIDEST),
        }
    }

    /// How long a line may be.
    #[must_use]
    pub const fn width(&self) -> usize {
        self.width
    }
}

impl Write for TextPage<'_> {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        self.out.write(bytes)
    }

    fn flush(&mut self) -> io::Result<()> {
        self.out.flush()
    }
}

/// Lines of text that are kept until they can be written.
#[derive(Clone, Debug)]
pub(super) struct Lines {
    width: usize,
    lines: Vec<String>,
}

impl Lines {
    /// None yet; each of at most this many columns.
    pub(super) const fn new(width: usize) -> Lines {
        Lines {
            width,
            lines: Vec::new(),
        }
    }

    /// A label with text behind it, on as many lines as it takes.
    pub(super) fn hanging(&mut self, label: &str, text: &str) {
        self.lines.push(hanging_in(self.width, label, text));
    }

    /// Lines as they are.
    pub(super) fn push(&mut self, text: String) {
        self.lines.push(text);
    }

    /// Text whose further lines begin with another indent than its first.
    pub(super) fn spread(&mut self, first: &str, rest: &str, text: &str) {
        self.lines.push(fill(self.width, text, first, rest));
    }

    /// On how many lines it would be spread.
    pub(super) fn would_take(&self, first: &str, rest: &str, text: &str) -> usize {
        fill(self.width, text, first, rest).lines().count()
    }

    /// A title on as many lines as it takes.
    pub(super) fn heading(&mut self, text: &str) {
        self.lines.push(heading_in(self.width, "", text));
    }

    /// An empty line.
    pub(super) fn gap(&mut self) {
        self.lines.push(String::new());
    }

    /// How long a line may be.
    pub(super) const fn width(&self) -> usize {
        self.width
    }

    /// All of them as one text without a last line break.
    pub(super) fn joined(&self) -> String {
        self.lines.join("\n")
    }
}

/// A label longer than this is wrapped like the text behind it.
const LONGEST_LABEL: usize = 32;

/// A space that no line breaks at; it is an ordinary space in the output.
pub(super) const TIE: char = '\u{a0}';

/// A label with text behind it, wrapped so that further lines stand under the
/// text's beginning, in lines of this width. No line break at the end.
#[must_use]
pub(super) fn hanging_in(columns: usize, label: &str, text: &str) -> String {
    let width = display_width(label);
    if width > LONGEST_LABEL.min(columns / 2) {
        let indent = label.len() - label.trim_start_matches(' ').len();
        let indent = " ".repeat(indent.min(LONGEST_LABEL).min(columns / 4));
        let rest = format!("{indent}  ");
        let whole = format!("{}{text}", label.trim_start_matches(' '));
        return fill(columns, &whole, &indent, &rest);
    }
    fill(columns, text, label, &" ".repeat(width))
}

/// A title in lines of this width, with this indent.
#[must_use]
pub(super) fn heading_in(columns: usize, indent: &str, text: &str) -> String {
    let rest = format!("{indent}   ");
    let lines = fill(columns, text, indent, &rest);
    let lines: Vec<String> = lines
        .lines()
        .map(|line| {
            let title = line.trim_start_matches(' ');
            let indent = &line[..line.len() - title.len()];
            format!("{indent}{}", palette::heading(title))
        })
        .collect();
    lines.join("\n")
}

/// Text in lines of this width.
#[must_use]
pub fn wrapped(text: &str, columns: usize) -> String {
    hanging_in(columns, "", text)
}

/// Text whose words keep together at the end of a line: `34 5/8 in`.
#[must_use]
pub(super) fn tied(text: &str) -> String {
    if display_width(text) > LONGEST_LABEL {
        return text.to_owned();
    }
    text.replace(' ', "\u{a0}")
}

/// Ties a number to its fraction and its unit: `4 3/8 in` is never broken.
pub(super) fn quantities_tied(text: &str) -> String {
    const UNITS: [&str; 8] = ["in", "ft", "mm", "cm", "m", "lbf", "N", "kN"];
    let mut tied = String::with_capacity(text.len());
    let mut number_before = false;
    for (index, word) in text.split(' ').enumerate() {
        let bare = word.trim_matches(|c: char| !c.is_alphanumeric());
        let goes_on = word.starts_with(|c: char| c.is_ascii_digit()) && bare.contains('/');
        if index > 0 {
            let tie = number_before && (goes_on || UNITS.contains(&bare));
            tied.push(if tie { TIE } else { ' ' });
        }
        tied.push_str(word);
        number_before = word.ends_with(|c: char| c.is_ascii_digit());
    }
    tied
}

fn fill(columns: usize, text: &str, first: &str, rest: &str) -> String {
    let text = &quantities_tied(text);
    let options = Options::new(columns)
        .initial_indent(first)
        .subsequent_indent(rest)
        .word_splitter(WordSplitter::NoHyphenation);
    let lines: Vec<String> = textwrap::wrap(text, options)
        .iter()
        .map(|line| line.trim_end().replace(TIE, " "))
        .collect();
    lines.join("\n")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn further_lines_stand_under_the_beginning() {
        let text = "word ".repeat(30);
        let filled = hanging_in(WIDTH, "  1. ", &text);
        for (number, line) in filled.lines().enumerate() {
            assert!(line.len() <= WIDTH, "{line}");
            assert!(line.starts_with(if number == 0 {
                "  1. word"
            } else {
                "     word"
            }));
        }
    }

    #[test]
    fn a_reading_keeps_together() {
        let before = "x".repeat(66);
        let filled = hanging_in(WIDTH, "", &format!("{before} below 4 3/8 in."));
        assert_eq!(filled, format!("{before} below\n4 3/8 in."));
        let before = "x".repeat(74);
        let filled = hanging_in(WIDTH, "", &format!("{before} {}", tied("34 5/8 in")));
        assert_eq!(filled, format!("{before}\n34 5/8 in"));
    }
}
