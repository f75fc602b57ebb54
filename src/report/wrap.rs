//! Lines of at most 80 columns.

use textwrap::Options;
use textwrap::WordSplitter;
use textwrap::core::display_width;

/// The width of every text report.
pub(super) const WIDTH: usize = 80;

/// A label longer than this is wrapped like the text behind it.
const LONGEST_LABEL: usize = 32;

/// A space that no line breaks at; it is an ordinary space in the output.
const TIE: char = '\u{a0}';

/// A label with text behind it, wrapped so that further lines stand under the
/// text's beginning. No line break at the end.
#[must_use]
pub(super) fn hanging(label: &str, text: &str) -> String {
    hanging_in(WIDTH, label, text)
}

/// The same for lines of another width.
#[must_use]
pub(super) fn hanging_in(columns: usize, label: &str, text: &str) -> String {
    let width = display_width(label);
    if width > LONGEST_LABEL {
        let indent = label.len() - label.trim_start_matches(' ').len();
        let indent = " ".repeat(indent.min(LONGEST_LABEL));
        let rest = format!("{indent}  ");
        let whole = format!("{}{text}", label.trim_start_matches(' '));
        return fill(columns, &whole, &indent, &rest);
    }
    fill(columns, text, label, &" ".repeat(width))
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
fn quantities_tied(text: &str) -> String {
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
        let filled = hanging("  1. ", &text);
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
        let filled = hanging("", &format!("{before} below 4 3/8 in."));
        assert_eq!(filled, format!("{before} below\n4 3/8 in."));
        let before = "x".repeat(74);
        let filled = hanging("", &format!("{before} {}", tied("34 5/8 in")));
        assert_eq!(filled, format!("{before}\n34 5/8 in"));
    }
}
