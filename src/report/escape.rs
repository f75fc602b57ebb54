//! Text of other people made fit for a terminal line and for a spreadsheet.

use std::borrow::Cow;
use std::fmt::Write;
use std::ops::RangeInclusive;

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
    if is_plain(text) {
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

/// Whether a text holds printable ASCII alone. All bytes are looked at, since that goes
/// many at a time.
pub(super) fn is_plain(text: &str) -> bool {
    let bytes = text.as_bytes().iter();
    bytes.fold(true, |plain, byte| plain & matches!(byte, b' '..=b'~'))
}

/// Whether a character ends or divides a line.
pub(super) const fn is_break(c: char) -> bool {
    matches!(
        c,
        '\n' | '\r' | '\t' | '\u{b}' | '\u{c}' | '\u{85}' | '\u{2028}' | '\u{2029}'
    )
}

/// Whether a character is obeyed, turns the direction of writing or is drawn as nothing.
pub(super) fn is_hidden(c: char) -> bool {
    if c.is_ascii() {
        return c.is_ascii_control() && !is_break(c);
    }
    (c.is_control() || FORMAT.iter().any(|range| range.contains(&c))) && !is_break(c)
}

/// General category Cf of Unicode, as Python's `unicodedata` 15.0 lists it, and what else is
/// drawn as nothing (from memory: fillers of Hangul, tags, variation selectors beyond the first
/// sixteen, of which writing makes use).
const FORMAT: [RangeInclusive<char>; 24] = [
    '\u{ad}'..='\u{ad}',
    '\u{600}'..='\u{605}',
    '\u{61c}'..='\u{61c}',
    '\u{6dd}'..='\u{6dd}',
    '\u{70f}'..='\u{70f}',
    '\u{890}'..='\u{891}',
    '\u{8e2}'..='\u{8e2}',
    '\u{115f}'..='\u{1160}',
    '\u{180e}'..='\u{180e}',
    '\u{200b}'..='\u{200f}',
    '\u{202a}'..='\u{202e}',
    '\u{2060}'..='\u{206f}',
    '\u{3164}'..='\u{3164}',
    '\u{feff}'..='\u{feff}',
    '\u{ffa0}'..='\u{ffa0}',
    '\u{fff9}'..='\u{fffb}',
    '\u{110bd}'..='\u{110bd}',
    '\u{110cd}'..='\u{110cd}',
    '\u{13430}'..='\u{1343f}',
    '\u{1bca0}'..='\u{1bca3}',
    '\u{1d173}'..='\u{1d17a}',
    '\u{e0000}'..='\u{e007f}',
    '\u{e0100}'..='\u{e01ef}',
    '\u{fffe}'..='\u{ffff}',
];

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
    if is_formula(text) {
        format!("'{text}")
    } else {
        text.to_owned()
    }
}

/// Whether a spreadsheet would run it.
pub(super) fn is_formula(text: &str) -> bool {
    text.starts_with([
        '=', '+', '-', '@', '\u{ff1d}', '\u{ff0b}', '\u{ff0d}', '\u{ff20}', '\t', '\r',
    ])
}
