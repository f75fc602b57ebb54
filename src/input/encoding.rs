//! How the letters of a file are saved, and text in old encodings as UTF-8.
//!
//! A byte-order mark decides; without one, zeros in every other byte are
//! UTF-16, bytes that are UTF-8 are UTF-8, and what is left is Windows-1252, as
//! office programs of western Europe and America save CSV, unless something
//! speaks against it: then nobody guesses.

use std::io;
use std::io::Read;

/// How the letters of a file are saved.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Encoding {
    /// As UTF-8, with a byte-order mark or without.
    Utf8,
    /// As UTF-16, the low byte first.
    Utf16Le,
    /// As UTF-16, the high byte first.
    Utf16Be,
    /// In the code page of western Europe and America.
    Windows1252,
    /// In no way that can be told: neither of the above, or several in one file.
    Unknown,
}

/// How much is read at once.
const CHUNK: usize = 64 * 1024;

/// How much is read first: most texts that are read many times over are no longer.
const FIRST_CHUNK: usize = 4 * 1024;

/// How far into a file zeros are counted.
const LOOKED_AT: usize = 4096;

/// What Windows-1252 has at 80 to 9F, where Latin-1 has controls; 0 where it
/// has nothing. (The Unicode Consortium's mapping table of code page 1252; from
/// memory, and checked against another decoder in the tests.)
const UPPER: [u16; 32] = [
    0x20AC, 0, 0x201A, 0x0192, 0x201E, 0x2026, 0x2020, 0x2021, 0x02C6, 0x2030, 0x0160, 0x2039,
    0x0152, 0, 0x017D, 0, 0, 0x2018, 0x2019, 0x201C, 0x201D, 0x2022, 0x2013, 0x2014, 0x02DC,
    0x2122, 0x0161, 0x203A, 0x0153, 0, 0x017E, 0x0178,
];

/// Bytes of 80 to 9F that stand between letters in Windows-1252 too: Š Œ Ž ’ š œ ž Ÿ.
const BETWEEN_LETTERS: [u8; 8] = [0x8A, 0x8C, 0x8E, 0x92, 0x9A, 0x9C, 0x9E, 0x9F];

impl Encoding {
    /// How this stream is saved; reads it to its end.
    ///
    /// # Errors
    /// What the stream says.
    pub fn of(mut stream: impl Read) -> io::Result<Encoding> {
        let mut look = Look::default();
        let mut buffer = vec![0; FIRST_CHUNK];
        loop {
            match stream.read(&mut buffer) {
                Ok(0) => return Ok(look.decide()),
                Ok(count) => {
                    if let Some(decided) = look.at(&buffer[..count]) {
                        return Ok(decided);
                    }
                    buffer.resize(CHUNK, 0);
                }
                Err(error) if error.kind() == io::ErrorKind::Interrupted => {}
                Err(error) => return Err(error),
            }
        }
    }
}

/// What was seen of a file so far.
#[derive(Default)]
struct Look {
    begun: bool,
    /// The beginning of a character that the next chunk ends.
    cut: Vec<u8>,
    any_invalid: bool,
    any_multibyte: bool,
    speaks_against: bool,
    last: [u8; 2],
}

impl Look {
    /// Looks at more of it; the answer where it is known already.
    fn at(&mut self, bytes: &[u8]) -> Option<Encoding> {
        if !self.begun {
            self.begun = true;
            if let Some(known) = beginning(bytes) {
                return Some(known);
            }
        }
        if self.cut.is_empty() && !self.any_invalid && bytes.is_ascii() {
            return None;
        }
        let mut whole = std::mem::take(&mut self.cut);
        whole.extend_from_slice(bytes);
        self.valid(&whole);
        self.against(bytes);
        None
    }

    fn valid(&mut self, mut bytes: &[u8]) {
        loop {
            match std::str::from_utf8(bytes) {
                Ok(text) => {
                    self.any_multibyte |= !text.is_ascii();
                    return;
                }
                Err(error) => {
                    let (valid, rest) = bytes.split_at(error.valid_up_to());
                    self.any_multibyte |= !valid.is_ascii();
                    let Some(length) = error.error_len() else {
                        self.cut = rest.to_vec();
                        return;
                    };
                    self.any_invalid = true;
                    bytes = &rest[length..];
                }
            }
        }
    }

    /// Bytes that Windows-1252 would hardly have where they stand.
    fn against(&mut self, bytes: &[u8]) {
        for byte in bytes {
            let [before, middle] = self.last;
            let upper = (0x80..0xA0).contains(&middle);
            let odd = upper && !BETWEEN_LETTERS.contains(&middle);
            let nothing = upper && UPPER[usize::from(middle - 0x80)] == 0;
            let between = before.is_ascii_alphabetic() && byte.is_ascii_alphabetic();
            self.speaks_against |= nothing || (odd && between);
            // lines that end with a carriage return alone are of an old Macintosh
            self.speaks_against |= middle == b'\r' && *byte != b'\n';
            self.last = [middle, *byte];
        }
    }

    fn decide(mut self) -> Encoding {
        self.any_invalid |= !self.cut.is_empty();
        match (self.any_invalid, self.any_multibyte || self.speaks_against) {
            (false, _) => Encoding::Utf8,
            (true, false) => Encoding::Windows1252,
            (true, true) => Encoding::Unknown,
        }
    }
}

/// What the first bytes tell.
fn beginning(bytes: &[u8]) -> Option<Encoding> {
    if bytes.starts_with(b"\xEF\xBB\xBF") {
        return None;
    }
    if bytes.starts_with(b"\xFF\xFE") {
        return Some(Encoding::Utf16Le);
    }
    if bytes.starts_with(b"\xFE\xFF") {
        return Some(Encoding::Utf16Be);
    }
    let looked = &bytes[..bytes.len().min(LOOKED_AT)];
    let zeros = |from: usize| {
        looked
            .iter()
            .skip(from)
            .step_by(2)
            .filter(|b| **b == 0)
            .count()
    };
    let (even, odd) = (zeros(0), zeros(1));
    let half = looked.len() / 2;
    if half < 4 {
        None
    } else if even == 0 && odd * 10 > half * 8 {
        Some(Encoding::Utf16Le)
    } else if odd == 0 && even * 10 > half * 8 {
        Some(Encoding::Utf16Be)
    } else {
        None
    }
}

/// A stream in an old encoding, handed on as UTF-8.
///
/// ```
/// use std::io::Read;
/// use guardrule::input::{Decoded, Encoding};
/// let mut text = String::new();
/// Decoded::new(&b"35\xBD in"[..], Encoding::Windows1252).read_to_string(&mut text)?;
/// assert_eq!(text, "35½ in");
/// # Ok::<(), std::io::Error>(())
/// ```
#[derive(Debug)]
pub struct Decoded<R> {
    stream: R,
    encoding: Encoding,
    buffer: Vec<u8>,
    /// Bytes that belong to a character of which the rest is to come.
    cut: Vec<u8>,
    ready: Vec<u8>,
    given: usize,
}

impl<R: Read> Decoded<R> {
    /// The stream, which is saved so.
    pub fn new(stream: R, encoding: Encoding) -> Decoded<R> {
        Decoded {
            stream,
            encoding,
            buffer: vec![0; CHUNK],
            cut: Vec::new(),
            ready: Vec::new(),
            given: 0,
        }
    }

    fn decode(&mut self, count: usize) {
        self.ready.clear();
        self.given = 0;
        let bytes = &self.buffer[..count];
        match self.encoding {
            Encoding::Utf8 | Encoding::Unknown => self.ready.extend_from_slice(bytes),
            Encoding::Windows1252 => {
                for byte in bytes {
                    push(&mut self.ready, windows_1252(*byte));
                }
            }
            Encoding::Utf16Le | Encoding::Utf16Be => self.decode_utf16(count),
        }
    }

    fn decode_utf16(&mut self, count: usize) {
        let mut whole = std::mem::take(&mut self.cut);
        whole.extend_from_slice(&self.buffer[..count]);
        let unit = |pair: &[u8]| match self.encoding {
            Encoding::Utf16Be => u16::from_be_bytes([pair[0], pair[1]]),
            Encoding::Utf8 | Encoding::Utf16Le | Encoding::Unknown | Encoding::Windows1252 => {
                u16::from_le_bytes([pair[0], pair[1]])
            }
        };
        let mut end = whole.len() & !1;
        // a pair of surrogates stays together
        if count > 0 && end >= 2 && (0xD800..0xDC00).contains(&unit(&whole[end - 2..end])) {
            end -= 2;
        }
        let units: Vec<u16> = whole[..end].chunks_exact(2).map(unit).collect();
        for character in char::decode_utf16(units) {
            push(
                &mut self.ready,
                character.unwrap_or(char::REPLACEMENT_CHARACTER),
            );
        }
        self.cut = whole[end..].to_vec();
        if count == 0 && !self.cut.is_empty() {
            self.cut.clear();
            push(&mut self.ready, char::REPLACEMENT_CHARACTER);
        }
    }
}

impl<R: Read> Read for Decoded<R> {
    fn read(&mut self, into: &mut [u8]) -> io::Result<usize> {
        while self.given == self.ready.len() {
            let count = self.stream.read(&mut self.buffer)?;
            let last = count == 0 && self.cut.is_empty();
            self.decode(count);
            if last {
                return Ok(0);
            }
        }
        let rest = &self.ready[self.given..];
        let count = rest.len().min(into.len());
        into[..count].copy_from_slice(&rest[..count]);
        self.given += count;
        Ok(count)
    }
}

fn push(into: &mut Vec<u8>, character: char) {
    into.extend_from_slice(character.encode_utf8(&mut [0; 4]).as_bytes());
}

fn windows_1252(byte: u8) -> char {
    let code = match byte {
        0x80..=0x9F => UPPER[usize::from(byte - 0x80)],
        other => u16::from(other),
    };
    char::from_u32(u32::from(code))
        .filter(|_| code != 0 || byte == 0)
        .unwrap_or(char::REPLACEMENT_CHARACTER)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn of(bytes: &[u8]) -> Encoding {
        Encoding::of(bytes).unwrap()
    }

    #[test]
    fn the_bytes_tell_how_a_file_is_saved() {
        assert_eq!(of("Café, 35½ in".as_bytes()), Encoding::Utf8);
        assert_eq!(of(b"35\xBD in, Caf\xE9"), Encoding::Windows1252);
        assert_eq!(
            of(b"the owner\x92s flat, \x93so\x94"),
            Encoding::Windows1252
        );
        let utf16: Vec<u8> = "unit,guard"
            .encode_utf16()
            .flat_map(u16::to_le_bytes)
            .collect();
        assert_eq!(of(&utf16), Encoding::Utf16Le);
        let utf16: Vec<u8> = "unit,guard"
            .encode_utf16()
            .flat_map(u16::to_be_bytes)
            .collect();
        assert_eq!(of(&utf16), Encoding::Utf16Be);
        // é of Mac Roman and of a DOS page, a byte that is nothing, both at once
        assert_eq!(of(b"Caf\x8Es, d\x82j\x85"), Encoding::Unknown);
        assert_eq!(of(b"35 \x81 in"), Encoding::Unknown);
        assert_eq!(of(b"Caf\xC3\xA9 and Caf\xE9"), Encoding::Unknown);
        assert_eq!(of(b"guard,item\ra,caf\xE9\r"), Encoding::Unknown);
    }

    #[test]
    fn a_character_cut_by_a_chunk_is_whole_again() {
        struct Bytewise<'t>(&'t [u8]);
        impl Read for Bytewise<'_> {
            fn read(&mut self, into: &mut [u8]) -> io::Result<usize> {
                let count = self.0.len().min(into.len()).min(1);
                into[..count].copy_from_slice(&self.0[..count]);
                self.0 = &self.0[count..];
                Ok(count)
            }
        }
        let text = "unit,½ é 𝟜\r\n";
        assert_eq!(
            Encoding::of(Bytewise(text.as_bytes())).unwrap(),
            Encoding::Utf8
        );
        let bytes: Vec<u8> = text.encode_utf16().flat_map(u16::to_le_bytes).collect();
        let mut read = String::new();
        Decoded::new(Bytewise(&bytes), Encoding::Utf16Le)
            .read_to_string(&mut read)
            .unwrap();
        assert_eq!(read, text);
    }
}
