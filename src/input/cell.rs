//! One cell of a CSV row: where it begins and ends, how marks were used in it,
//! and the text that it holds.

use std::borrow::Cow;
use std::ops::Range;

use memchr::{memchr, memchr2};

/// How quotation marks were used in a cell.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Quoting {
    /// No marks at its ends, but one inside: the inch mark of `33 1/2"`.
    BareMark,
    /// No marks.
    Plain,
    /// In marks, as it should be.
    Quoted,
    /// In marks, as it should be, and with a line end inside.
    QuotedLines,
    /// In marks, with more text behind the closing one.
    TextAfterMark,
    /// An opening mark and no closing one.
    Unclosed,
}

/// One cell of a row.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CellSpan {
    pub(super) start: usize,
    pub(super) end: usize,
    /// How marks were used in it.
    pub quoting: Quoting,
}

impl CellSpan {
    /// The bytes of the row that it takes, with its marks.
    #[must_use]
    pub fn range(&self) -> Range<usize> {
        self.start..self.end
    }

    /// Its text in the row that it belongs to, without the marks around it and
    /// with doubled ones made single.
    ///
    /// A cell with a trap comes as the `csv` crate would read it.
    #[must_use]
    #[inline]
    pub fn text<'r>(&self, row: &'r str) -> Cow<'r, str> {
        let raw = row.get(self.range()).unwrap_or_default();
        match self.quoting {
            Quoting::BareMark | Quoting::Plain => Cow::Borrowed(raw),
            Quoting::Quoted | Quoting::QuotedLines | Quoting::TextAfterMark | Quoting::Unclosed => {
                unquoted(raw)
            }
        }
    }
}

/// The text of a cell that begins with a mark.
fn unquoted(raw: &str) -> Cow<'_, str> {
    let inner = raw.strip_prefix('"').unwrap_or(raw);
    if let Some(plain) = inner.strip_suffix('"')
        && !plain.bytes().any(|byte| byte == b'"')
    {
        return Cow::Borrowed(plain);
    }
    let mut text = String::with_capacity(inner.len());
    let mut rest = inner;
    while let Some((before, after)) = rest.split_once('"') {
        text.push_str(before);
        rest = after;
        match after.strip_prefix('"') {
            Some(doubled) => {
                text.push('"');
                rest = doubled;
            }
            // behind the closing mark a mark is text
            None => break,
        }
    }
    text.push_str(rest);
    Cow::Owned(text)
}

/// What a byte is to a row.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum ByteClass {
    Delimiter,
    LineEnd,
    Mark,
    Text,
}

/// The class of every byte.
#[derive(Debug)]
pub(super) struct ByteClasses([ByteClass; 256]);

impl ByteClasses {
    pub(super) fn of(delimiter: u8) -> ByteClasses {
        let mut classes = [ByteClass::Text; 256];
        classes[usize::from(b'\n')] = ByteClass::LineEnd;
        classes[usize::from(b'\r')] = ByteClass::LineEnd;
        classes[usize::from(b'"')] = ByteClass::Mark;
        classes[usize::from(delimiter)] = ByteClass::Delimiter;
        ByteClasses(classes)
    }

    pub(super) fn of_byte(&self, byte: u8) -> ByteClass {
        self.0[usize::from(byte)]
    }
}

/// How long the cell at the beginning of `bytes` is and how its marks were
/// used; `None` if that depends on bytes to come.
pub(super) fn cell_end(
    bytes: &[u8],
    classes: &ByteClasses,
    at_end: bool,
) -> Option<(usize, Quoting)> {
    let ends = |byte: u8| {
        matches!(
            classes.of_byte(byte),
            ByteClass::Delimiter | ByteClass::LineEnd
        )
    };
    let ending = |from: usize| {
        let end = bytes[from..].iter().position(|byte| ends(*byte));
        end.map(|at| from + at).or(at_end.then_some(bytes.len()))
    };
    if bytes.first() != Some(&b'"') {
        let mut quoting = Quoting::Plain;
        // short as cells are, a plain loop is the fastest
        for (at, byte) in bytes.iter().enumerate() {
            match classes.of_byte(*byte) {
                ByteClass::Text => {}
                ByteClass::Delimiter | ByteClass::LineEnd => return Some((at, quoting)),
                ByteClass::Mark => quoting = Quoting::BareMark,
            }
        }
        return at_end.then_some((bytes.len(), quoting));
    }
    let mut from = 1;
    loop {
        let Some(mark) = memchr(b'"', &bytes[from..]).map(|at| from + at) else {
            return at_end.then_some((bytes.len(), Quoting::Unclosed));
        };
        match bytes.get(mark + 1) {
            None if !at_end => return None,
            Some(b'"') => from = mark + 2,
            Some(byte) if !ends(*byte) => {
                return Some((ending(mark + 1)?, Quoting::TextAfterMark));
            }
            None | Some(_) => {
                let lines = memchr2(b'\n', b'\r', &bytes[..mark]).is_some();
                let quoting = if lines {
                    Quoting::QuotedLines
                } else {
                    Quoting::Quoted
                };
                return Some((mark + 1, quoting));
            }
        }
    }
}
