//! JSON whose strings hold no character that a terminal obeys or a reader does not
//! see: they are written as `\\u202e`, which a parser reads back as they were.

use std::io;
use std::io::Write;

use serde::Serialize;
use serde_json::Serializer;
use serde_json::ser::Formatter;

use crate::report::escape::is_break;
use crate::report::escape::is_hidden;
use crate::report::escape::is_plain;

/// Writes a value on one line.
///
/// # Errors
/// Those of `out`.
pub(super) fn write<T: Serialize + ?Sized>(out: &mut dyn Write, value: &T) -> io::Result<()> {
    let mut serializer = Serializer::with_formatter(out, Escaped);
    value.serialize(&mut serializer)?;
    Ok(())
}

/// A form of JSON with hidden characters written out.
struct Escaped;

impl Formatter for Escaped {
    fn write_string_fragment<W: Write + ?Sized>(
        &mut self,
        out: &mut W,
        fragment: &str,
    ) -> io::Result<()> {
        // bytes before characters: most text is plain
        if is_plain(fragment) {
            return out.write_all(fragment.as_bytes());
        }
        let mut rest = fragment;
        while let Some(at) = rest.find(|c: char| is_hidden(c) || is_break(c)) {
            let (before, after) = rest.split_at(at);
            out.write_all(before.as_bytes())?;
            let mut chars = after.chars();
            for unit in chars.next().into_iter().flat_map(|c| {
                let mut units = [0; 2];
                c.encode_utf16(&mut units).to_vec()
            }) {
                write!(out, "\\u{unit:04x}")?;
            }
            rest = chars.as_str();
        }
        out.write_all(rest.as_bytes())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_written_reads_back_and_hides_nothing() {
        let text = "plain \u{1b}[31m \u{202e}back \u{1d173} \u{85}\u{2028}\n\"é½\"";
        let mut out = Vec::new();
        write(&mut out, text).expect("a vector takes everything");
        let json = String::from_utf8(out).expect("text");
        assert!(!json.chars().any(|c| is_hidden(c) || is_break(c)), "{json}");
        let back: String = serde_json::from_str(&json).expect("it is JSON");
        assert_eq!(back, text);
    }
}
