//! Why a reading could not be understood.

use std::ops::Range;

/// Why a text is no reading: what was found, what was expected, what to write.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("{message}")]
pub struct ReadingError {
    /// What was found and what was expected, in one line.
    pub message: String,
    /// What to write instead.
    pub help: Option<String>,
    /// The bytes of the text that it speaks of.
    pub span: Range<usize>,
}

impl ReadingError {
    pub(super) fn new(message: impl Into<String>, span: Range<usize>) -> ReadingError {
        ReadingError {
            message: message.into(),
            help: None,
            span,
        }
    }

    /// The same with what to write instead.
    pub(super) fn help(mut self, help: impl Into<String>) -> ReadingError {
        self.help = Some(help.into());
        self
    }
}

/// How many characters of a person's text a message repeats.
const SHOWN: usize = 48;

/// A piece of the person's text for a message: in backticks, cut where it is
/// long, without characters that could steer a terminal.
pub(super) fn quoted(text: &str) -> String {
    format!("`{}`", shown(text))
}

/// The same without backticks.
pub(super) fn shown(text: &str) -> String {
    let text = text.trim();
    let mut out: String = text
        .chars()
        .take(SHOWN)
        .map(|c| if c.is_control() { '\u{fffd}' } else { c })
        .collect();
    if text.chars().nth(SHOWN).is_some() {
        out.push('…');
    }
    out
}
