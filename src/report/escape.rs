//! Text of other people made fit for a terminal line and for a spreadsheet.

use std::borrow::Cow;
use std::fmt::Write;

/// The text as one line that a terminal shows and does not obey.
///
/// Line breaks and tabs become a space; every other control character, and
/// the marks that turn the direction of writing or cannot be seen, are written
/// out as `\u{1b}`.
///
/// ```
/// use guardrule::report::one_line;
/// assert_eq!(one_line("loose\r\nat the top"), "loose at the top");
/// assert_eq!(one_line("\u{1b}[31mred"), "\\u{1b}[31mred");
/// ```
#[must_use]
pub fn one_line(text: &str) -> Cow<'_, str> {
    // bytes before characters: most text is plain
    if text.bytes().all(|byte| matches!(byte, b' '..=b'~')) {
        return Cow::Borrowed(text);
    }
    if !text.chars().any(|c| is_break(c) || is_hidden(c)) {
        return Cow::Borrowed(text);
    }
    let mut line = String::with_capacity(text.len() + 8);
    let mut after_break = false;
    for c in text.chars() {
        if is_break(c) {
            if !after_break {
                line.push(' ');
            }
        } else if is_hidden(c) {
            let written = write!(line, "\\u{{{:x}}}", u32::from(c));
            debug_assert!(written.is_ok(), "a String takes everything");
        } else {
            line.push(c);
        }
        after_break = is_break(c);
    }
    Cow::Owned(line)
}

const fn is_break(c: char) -> bool {
    matches!(
        c,
        '\n' | '\r' | '\t' | '\u{b}' | '\u{c}' | '\u{85}' | '\u{2028}' | '\u{2029}'
    )
}

fn is_hidden(c: char) -> bool {
    // Unicode 16.0, general category Cf, and what else is drawn as nothing (from memory)
    let turns = matches!(
        c,
        '\u{ad}' | '\u{600}'..='\u{605}' | '\u{61c}' | '\u{6dd}' | '\u{70f}' | '\u{115f}' | '\u{1160}'
            | '\u{180e}' | '\u{200b}'..='\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2060}'..='\u{206f}'
            | '\u{3164}' | '\u{feff}' | '\u{ffa0}' | '\u{fff9}'..='\u{fffb}' | '\u{e0000}'..='\u{e007f}'
    );
    (c.is_control() || turns) && !is_break(c)
}

/// A cell that no spreadsheet runs as a formula: an apostrophe in front of
/// `=`, `+`, `-`, `@`, their full-width forms, a tab and a carriage return.
///
/// ```
/// use guardrule::report::safe_cell;
/// assert_eq!(safe_cell("=1+1"), "'=1+1");
/// assert_eq!(safe_cell("＝1+1"), "'＝1+1");
/// assert_eq!(safe_cell("34 5/8 in"), "34 5/8 in");
/// ```
#[must_use]
pub fn safe_cell(text: &str) -> String {
    if text.starts_with([
        '=', '+', '-', '@', '\u{ff1d}', '\u{ff0b}', '\u{ff0d}', '\u{ff20}', '\t', '\r',
    ]) {
        format!("'{text}")
    } else {
        text.to_owned()
    }
}
