//! Faults of the TOML itself, in a reader's words; and a text that can be read
//! on behind them.

use std::ops::Range;

use toml::de::DeTable;

use crate::rules::faults::Faults;
use crate::rules::faults::SyntaxFault;

/// How many brackets that are never closed are mended in one file.
const MOST_MENDED: usize = 20;

/// The file's text for reading. Faults of its syntax are reported.
///
/// A bracket that is never closed swallows every line below it, and would hide
/// their faults behind dozens of its own. It is replaced by a stand-in of the
/// same length, so that every place stays where it is.
pub(super) fn readable(faults: &mut Faults) -> String {
    let mut text = faults.file().text.to_string();
    let mut found = Vec::new();
    for _ in 0..MOST_MENDED {
        let (_, errors) = DeTable::parse_recoverable(&text);
        let swallowed = errors.iter().find_map(|error| swallowed(error, &text));
        let Some(open) = swallowed.and_then(|line| opening(&text, line)) else {
            break;
        };
        found.push(SyntaxFault {
            at: open.start..open.start + 1,
            message: "this bracket is not closed before the next key begins".to_owned(),
            help: Some("close it at the end of the list".to_owned()),
        });
        text = stand_in(&text, open);
    }
    let (_, errors) = DeTable::parse_recoverable(&text);
    found.extend(errors.iter().map(|error| in_words(error, &text)));
    faults.syntax(found);
    text
}

/// The start of a line on which something begins that can be no part of a list
/// or an inline table, where that is what the error is about.
fn swallowed(error: &toml::de::Error, text: &str) -> Option<usize> {
    let at = error.span()?.start;
    let line = text.get(..at)?.rfind('\n')? + 1;
    let begins = text[line..at].trim().is_empty();
    let first = text[at..].trim_start_matches([' ', '\t']);
    let in_list = error.message().contains("array");
    let other = first.starts_with("[[") || (in_list && starts_with_key(first));
    (begins && other).then_some(line)
}

/// From the bracket that is still open at a line to that line.
fn opening(text: &str, line: usize) -> Option<Range<usize>> {
    let mut closed = 0_u32;
    for (index, byte) in text.as_bytes()[..line].iter().enumerate().rev() {
        match *byte {
            b']' | b'}' => closed += 1,
            b'[' | b'{' if closed == 0 => return Some(index..line),
            b'[' | b'{' => closed -= 1,
            _ => {}
        }
    }
    None
}

/// Whether a line goes `key =` or `key.key =`.
fn starts_with_key(line: &str) -> bool {
    let key = line.trim_start_matches(|c: char| c.is_ascii_alphanumeric() || "-_.".contains(c));
    key.len() < line.len() && key.trim_start().starts_with('=')
}

/// The text with a number and spaces in a range, its lines kept.
fn stand_in(text: &str, range: Range<usize>) -> String {
    let blank: String = text[range.clone()]
        .bytes()
        .map(|byte| if byte == b'\n' { '\n' } else { ' ' })
        .collect();
    format!(
        "{}0{}{}",
        &text[..range.start],
        &blank[1..],
        &text[range.end..]
    )
}

fn in_words(error: &toml::de::Error, text: &str) -> SyntaxFault {
    let at = error.span().unwrap_or(0..0);
    let text = text.get(at.clone()).unwrap_or_default();
    let found = error.message();
    let curly = ['\u{201c}', '\u{201d}', '\u{201e}', '\u{2018}', '\u{2019}'];
    let (message, help) = if text.starts_with(curly) {
        let plain = text.trim_matches(curly);
        (
            "curly quotation marks stand here, as a word processor makes them",
            Some(format!("write \"{plain}\" with straight ones")),
        )
    } else if found.contains("must be quoted") {
        let help = (!text.is_empty()).then(|| format!("write \"{text}\""));
        (
            "a value stands here without quotation marks, or none at all",
            help,
        )
    } else if found.contains("duplicate key") {
        let help = "keep one of them; each rule begins with a line of its own, [[rule]]";
        ("this key stands here a second time", Some(help.to_owned()))
    } else {
        (found, None)
    };
    SyntaxFault {
        at,
        message: format!("this cannot be read as TOML: {message}"),
        help,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::input::SourceFile;

    fn read(text: &str) -> (String, usize) {
        let file = SourceFile::new("a.toml", text);
        let mut faults = Faults::new(&file);
        let readable = readable(&mut faults);
        (readable, faults.errors())
    }

    #[test]
    fn a_list_that_is_never_closed_hides_nothing_below_it() {
        let text = "a = [\"x\",\n  \"é\"\nb = 1\n[[rule]]\nid = \"r\"\n";
        let (readable, errors) = read(text);
        assert_eq!(errors, 1);
        assert_eq!(readable.len(), text.len());
        assert_eq!(
            &readable[text.find("b = 1").unwrap()..],
            "b = 1\n[[rule]]\nid = \"r\"\n"
        );
    }

    #[test]
    fn a_table_that_is_never_closed_hides_nothing_below_it() {
        let (readable, errors) = read("a = { x = 1\n[[rule]]\nid = 2\n");
        assert_eq!(
            (readable.as_str(), errors),
            ("a = 0      \n[[rule]]\nid = 2\n", 1)
        );
    }

    #[test]
    fn a_missing_comma_is_no_missing_bracket() {
        let text = "a = [\n  \"x\"\n  \"y\",\n]\nb = 1\n";
        assert_eq!(read(text), (text.to_owned(), 1));
    }

    #[test]
    fn sound_text_is_left_alone() {
        let text = "a = [\n  [1],\n  { b = 2 },\n]\n[[rule]]\nid = \"x\"\n";
        assert_eq!(read(text), (text.to_owned(), 0));
    }
}
