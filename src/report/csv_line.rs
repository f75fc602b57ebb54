//! One row of CSV as bytes: each cell on one line, no formula for a spreadsheet, in
//! quotation marks where it needs them.

use std::io::Write;

use crate::report::escape::is_formula;
use crate::report::one_line;

/// The cells of a row so far.
#[derive(Clone, Debug, Default)]
pub(super) struct CsvLine {
    bytes: Vec<u8>,
    cells: usize,
}

impl CsvLine {
    /// How many cells there are.
    pub(super) const fn cells(&self) -> usize {
        self.cells
    }

    /// A cell of a word of ours that stands as it is.
    pub(super) fn plain(&mut self, word: &str) {
        debug_assert!(stands(word), "{word} is no plain word");
        self.part();
        self.bytes.extend_from_slice(word.as_bytes());
    }

    /// A cell of this text.
    pub(super) fn text(&mut self, text: &str) {
        self.part();
        // most cells are plain and stand as they are
        if stands(text) {
            self.bytes.extend_from_slice(text.as_bytes());
            return;
        }
        let line = one_line(text);
        let guarded = is_formula(&line);
        let quoted = memchr::memchr3(b',', b'"', b'\r', line.as_bytes()).is_some();
        if quoted {
            self.bytes.push(b'"');
        }
        if guarded {
            self.bytes.push(b'\'');
        }
        let mut rest = line.as_bytes();
        while let Some(mark) = memchr::memchr(b'"', rest) {
            self.bytes.extend_from_slice(&rest[..=mark]);
            self.bytes.push(b'"');
            rest = &rest[mark + 1..];
        }
        self.bytes.extend_from_slice(rest);
        if quoted {
            self.bytes.push(b'"');
        }
    }

    /// A cell of a number.
    pub(super) fn number(&mut self, number: u64) {
        self.part();
        // a row in memory takes all that is written
        let _ = write!(self.bytes, "{number}");
    }

    /// Cells with nothing in them.
    pub(super) fn empty(&mut self, count: usize) {
        for _ in 0..count {
            self.part();
        }
    }

    /// The cells of another row behind these.
    pub(super) fn extend(&mut self, other: &CsvLine) {
        if other.cells > 0 {
            self.part();
            self.bytes.extend_from_slice(&other.bytes);
            self.cells += other.cells - 1;
        }
    }

    /// Begins again.
    pub(super) fn clear(&mut self) {
        self.bytes.clear();
        self.cells = 0;
    }

    /// The row with its end.
    pub(super) fn ended(&mut self) -> &[u8] {
        self.bytes.push(b'\n');
        &self.bytes
    }

    fn part(&mut self) {
        if self.cells > 0 {
            self.bytes.push(b',');
        }
        self.cells += 1;
    }
}

/// Whether a text stands in a cell as it is. All bytes are looked at, since that goes many at
/// a time.
fn stands(text: &str) -> bool {
    let bytes = text.as_bytes();
    let plain = bytes.iter().fold(true, |plain, byte| {
        plain & matches!(byte, b' '..=b'~') & (*byte != b',') & (*byte != b'"')
    });
    plain && !matches!(bytes.first(), Some(b'=' | b'+' | b'-' | b'@'))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn rows_are_what_the_csv_crate_writes_and_reads() {
        let cells = [
            "",
            "plain",
            "+1",
            "@x",
            "-2, 3",
            "a\tb",
            "a, b",
            "34 1/2\"",
            "\"",
            "=1+1",
            "＝1",
            "-",
            "two\nlines",
            "é;ü",
            " x ",
        ];
        let mut line = CsvLine::default();
        let mut writer = csv::Writer::from_writer(Vec::new());
        for cell in cells {
            line.text(cell);
        }
        let safe = cells.map(|cell| crate::report::safe_cell(&one_line(cell)));
        writer
            .write_record(&safe)
            .expect("a vector takes everything");
        let theirs = writer.into_inner().expect("a vector takes everything");
        assert_eq!(line.ended(), theirs);
    }
}
