//! The CSV cell scanner: rows of a stream, with the place of every cell and the
//! traps of quoting in it.
//!
//! Cells are those that the `csv` crate reads (a property test holds it so);
//! what is added is where each stands in its row, on which line the row begins,
//! and how its marks were used. Only a buffer is held, never the file.

use std::io;
use std::io::Read;
use std::ops::Range;

use memchr::{memchr, memchr2, memchr2_iter};

use crate::input::cell::{ByteClass, ByteClasses, CellSpan, Quoting, cell_end};

/// How much is read at once.
const CHUNK: usize = 128 * 1024;

/// How much is read first: the text of a walk is read many times over, and is no longer.
const FIRST_CHUNK: usize = 4 * 1024;

/// Longer rows are not read: 1 MiB.
pub const LONGEST_ROW: usize = 1 << 20;

/// What kind of row the scanner found.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FoundRow {
    /// The end of the stream.
    End,
    /// A row.
    Row,
    /// A row longer than [`LONGEST_ROW`]; nothing of it is kept but its line.
    TooLong,
}

/// One row as it stands in the file.
#[derive(Clone, Copy, Debug)]
pub struct RawRow<'s> {
    /// The line on which it begins, from 1.
    pub line: u64,
    /// Its bytes without the line end.
    pub raw: &'s [u8],
    /// Its cells, in order; their ranges are ranges of `raw`.
    pub cells: &'s [CellSpan],
}

/// Reads rows from a stream.
///
/// ```
/// use guardrule::input::{FoundRow, Scanner};
/// let mut rows = Scanner::new("a,\"b\"\"c\"\r\nd".as_bytes());
/// assert_eq!(rows.advance()?, FoundRow::Row);
/// let row = rows.record();
/// let text = std::str::from_utf8(row.raw).unwrap();
/// assert_eq!(row.cells[1].text(text), "b\"c");
/// assert_eq!(row.cells[1].range(), 2..8);
/// # Ok::<(), std::io::Error>(())
/// ```
#[derive(Debug)]
pub struct Scanner<R> {
    reader: R,
    delimiter: u8,
    classes: ByteClasses,
    buffer: Vec<u8>,
    /// Bytes read so far and not yet left behind.
    filled: usize,
    at_end: bool,
    /// Where the next row is looked for.
    next: usize,
    next_line: u64,
    /// The line end before `next` was a carriage return: a line feed belongs to it.
    after_return: bool,
    begun: bool,
    row: Range<usize>,
    row_line: u64,
    cells: Vec<CellSpan>,
}

impl<R: Read> Scanner<R> {
    /// Rows of this stream, cells parted by commas.
    pub fn new(reader: R) -> Scanner<R> {
        Scanner {
            reader,
            delimiter: b',',
            classes: ByteClasses::of(b','),
            buffer: Vec::new(),
            filled: 0,
            at_end: false,
            next: 0,
            next_line: 1,
            after_return: false,
            begun: false,
            row: 0..0,
            row_line: 1,
            cells: Vec::new(),
        }
    }

    /// The first bytes of the stream, to tell what kind of file it is; before the first row only.
    ///
    /// # Errors
    /// What the stream says.
    pub fn beginning(&mut self) -> io::Result<&[u8]> {
        while self.filled < 64 && !self.at_end {
            self.fill()?;
        }
        Ok(&self.buffer[..self.filled])
    }

    /// The byte that parts cells.
    #[must_use]
    pub fn delimiter(&self) -> u8 {
        self.delimiter
    }

    /// Parts the cells of the current row, and of those to come, at this byte.
    ///
    /// # Errors
    /// What the stream says.
    pub fn part_at(&mut self, delimiter: u8) -> io::Result<FoundRow> {
        self.next_parts_at(delimiter);
        self.put_back();
        self.advance()
    }

    /// Parts the cells of rows to come at this byte.
    pub fn next_parts_at(&mut self, delimiter: u8) {
        self.delimiter = delimiter;
        self.classes = ByteClasses::of(delimiter);
    }

    /// Goes on to the next row; empty lines are none.
    ///
    /// # Errors
    /// What the stream says.
    pub fn advance(&mut self) -> io::Result<FoundRow> {
        self.cells.clear();
        if !self.begun {
            self.begin()?;
        }
        if !self.skip_line_ends()? {
            self.row = self.next..self.next;
            return Ok(FoundRow::End);
        }
        self.row_line = self.next_line;
        let Some(length) = self.line_length()? else {
            return self.leave_out();
        };
        if let Some(start) = self.cut_plain(length) {
            return self.cut_quoted(start);
        }
        self.end_row(length);
        Ok(FoundRow::Row)
    }

    /// Makes the current row the next one again.
    pub fn put_back(&mut self) {
        self.next = self.row.start;
        self.next_line = self.row_line;
        self.after_return = false;
    }

    /// Passes over rows that begin with these bytes, hold no marks, and of which
    /// `passes` says yes to the rest of the line; how many they were.
    ///
    /// # Errors
    /// What the stream says.
    pub fn pass_over(
        &mut self,
        beginning: &[u8],
        passes: impl Fn(&[u8]) -> bool,
    ) -> io::Result<u32> {
        let mut count = 0;
        while self.skip_line_ends()? {
            let Some(length) = self.line_length()? else {
                break;
            };
            let line = &self.buffer[self.next..self.next + length];
            let alike = line.strip_prefix(beginning).is_some_and(&passes);
            if !alike || memchr(b'"', line).is_some() {
                break;
            }
            self.next += length;
            count += 1;
        }
        Ok(count)
    }

    /// The current row.
    #[must_use]
    pub fn record(&self) -> RawRow<'_> {
        RawRow {
            line: self.row_line,
            raw: &self.buffer[self.row.clone()],
            cells: &self.cells,
        }
    }

    /// Takes only the first line of the current row for the row, and looks for
    /// the next one behind it: what a quoted cell has swallowed is read after all.
    pub fn keep_first_line(&mut self) {
        let raw = &self.buffer[self.row.clone()];
        let Some(length) = memchr2(b'\n', b'\r', raw) else {
            return;
        };
        self.next = self.row.start;
        self.cut_short(length);
        self.next_line = self.row_line;
        self.end_row(length);
    }

    /// Skips the byte-order mark.
    fn begin(&mut self) -> io::Result<()> {
        self.begun = true;
        if self.beginning()?.starts_with(b"\xEF\xBB\xBF") {
            self.next = 3;
        }
        Ok(())
    }

    /// Skips line ends; false at the end of the stream.
    fn skip_line_ends(&mut self) -> io::Result<bool> {
        loop {
            match self.buffer[self.next..self.filled].first() {
                None if self.at_end => return Ok(false),
                None => {
                    self.fill()?;
                    continue;
                }
                Some(b'\n') if self.after_return => self.after_return = false,
                Some(b'\n') => self.next_line += 1,
                Some(b'\r') => {
                    self.next_line += 1;
                    self.after_return = true;
                }
                Some(_) => {
                    self.after_return = false;
                    return Ok(true);
                }
            }
            self.next += 1;
        }
    }

    /// How long the line at `next` is; `None` if too long for a row.
    fn line_length(&mut self) -> io::Result<Option<usize>> {
        let mut looked = 0;
        loop {
            let unseen = &self.buffer[self.next + looked..self.filled];
            if let Some(at) = memchr2(b'\n', b'\r', unseen) {
                return Ok(Some(looked + at).filter(|length| *length <= LONGEST_ROW));
            }
            looked = self.filled - self.next;
            if looked > LONGEST_ROW {
                return Ok(None);
            }
            if self.at_end {
                return Ok(Some(looked));
            }
            self.fill()?;
        }
    }

    /// Cuts a line into cells up to the first that has a mark; where that begins.
    fn cut_plain(&mut self, length: usize) -> Option<usize> {
        let mut start = 0;
        let plain = |start: usize, end: usize| CellSpan {
            start,
            end,
            quoting: Quoting::Plain,
        };
        let line = &self.buffer[self.next..self.next + length];
        for (at, byte) in line.iter().enumerate() {
            match self.classes.of_byte(*byte) {
                ByteClass::Text | ByteClass::LineEnd => {}
                ByteClass::Delimiter => {
                    self.cells.push(plain(start, at));
                    start = at + 1;
                }
                ByteClass::Mark => return Some(start),
            }
        }
        self.cells.push(plain(start, length));
        None
    }

    /// Cuts the rest of a row with marks into cells; it may go on over several lines.
    fn cut_quoted(&mut self, start: usize) -> io::Result<FoundRow> {
        let mut at = start;
        loop {
            let Some(cell) = self.cell(at)? else {
                return self.cut_too_long(at);
            };
            self.cells.push(cell);
            let end = self.next + cell.end;
            if self.buffer[..self.filled].get(end) != Some(&self.delimiter) {
                self.end_row(cell.end);
                return Ok(FoundRow::Row);
            }
            at = cell.end + 1;
        }
    }

    /// The cell that begins `at` bytes into the row; `None` if the row becomes too long.
    fn cell(&mut self, at: usize) -> io::Result<Option<CellSpan>> {
        loop {
            let rest = &self.buffer[self.next + at..self.filled];
            if let Some((length, quoting)) = cell_end(rest, &self.classes, self.at_end) {
                let cell = CellSpan {
                    start: at,
                    end: at + length,
                    quoting,
                };
                return Ok((cell.end <= LONGEST_ROW).then_some(cell));
            }
            if self.filled - self.next > LONGEST_ROW {
                return Ok(None);
            }
            self.fill()?;
        }
    }

    /// The cell at `at` runs on without end: its row is what stands on the first line.
    fn cut_too_long(&mut self, at: usize) -> io::Result<FoundRow> {
        self.cells.push(CellSpan {
            start: at,
            end: at,
            quoting: Quoting::Unclosed,
        });
        let Some(length) = self.line_length()? else {
            return self.leave_out();
        };
        self.cut_short(length);
        self.end_row(length);
        Ok(FoundRow::Row)
    }

    /// Keeps of the cells what stands in the first bytes of the row; the last one lacks its end.
    fn cut_short(&mut self, length: usize) {
        self.cells.retain(|cell| cell.start <= length);
        if let Some(last) = self.cells.last_mut() {
            last.end = length;
            last.quoting = Quoting::Unclosed;
        }
    }

    /// The row that begins at `next` is so long.
    fn end_row(&mut self, length: usize) {
        self.row = self.next..self.next + length;
        self.next = self.row.end;
        let over_lines = |cell: &CellSpan| {
            matches!(
                cell.quoting,
                Quoting::QuotedLines | Quoting::TextAfterMark | Quoting::Unclosed
            )
        };
        if self.cells.iter().any(over_lines) {
            self.next_line += line_ends(&self.buffer[self.row.clone()]);
        }
    }

    /// Leaves out a row that is too long, to the end of its line.
    fn leave_out(&mut self) -> io::Result<FoundRow> {
        self.cells.clear();
        loop {
            let unread = &self.buffer[self.next..self.filled];
            if let Some(at) = memchr2(b'\n', b'\r', unread) {
                self.next += at;
                break;
            }
            self.next = self.filled;
            if self.at_end {
                break;
            }
            self.fill()?;
        }
        self.row = self.next..self.next;
        Ok(FoundRow::TooLong)
    }

    /// Moves what is not yet left behind to the front, and reads more.
    fn fill(&mut self) -> io::Result<()> {
        if self.next > 0 {
            self.buffer.copy_within(self.next..self.filled, 0);
            self.filled -= self.next;
            self.next = 0;
            self.row = 0..0;
        }
        let room = self.buffer.len().clamp(FIRST_CHUNK, CHUNK);
        if self.buffer.len() - self.filled < room {
            self.buffer.resize(self.filled + room, 0);
        }
        loop {
            match self.reader.read(&mut self.buffer[self.filled..]) {
                Ok(0) => self.at_end = true,
                Ok(count) => self.filled += count,
                Err(error) if error.kind() == io::ErrorKind::Interrupted => continue,
                Err(error) => return Err(error),
            }
            return Ok(());
        }
    }
}

/// How many line ends there are; a carriage return and a line feed are one.
fn line_ends(bytes: &[u8]) -> u64 {
    memchr2_iter(b'\n', b'\r', bytes)
        .filter(|at| bytes[*at] == b'\r' || *at == 0 || bytes[at - 1] != b'\r')
        .count() as u64
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// All rows' cells, with line, quoting and text.
    fn rows(text: &[u8]) -> Vec<(u64, Vec<(Quoting, String)>)> {
        let mut scanner = Scanner::new(text);
        let mut rows = Vec::new();
        while scanner.advance().unwrap() != FoundRow::End {
            let record = scanner.record();
            let raw = std::str::from_utf8(record.raw).unwrap();
            let cells = record
                .cells
                .iter()
                .map(|cell| (cell.quoting, cell.text(raw).into_owned()));
            rows.push((record.line, cells.collect()));
        }
        rows
    }

    fn one(text: &str) -> (Quoting, String) {
        rows(text.as_bytes()).remove(0).1.remove(0)
    }

    #[test]
    fn marks_are_told_apart() {
        const CASES: &[(&str, Quoting, &str)] = &[
            ("33 1/2 in", Quoting::Plain, "33 1/2 in"),
            ("33 1/2\"", Quoting::BareMark, "33 1/2\""),
            (" \"33\"", Quoting::BareMark, " \"33\""),
            ("\"33 1/2\"\"\"", Quoting::Quoted, "33 1/2\""),
            ("\"\"", Quoting::Quoted, ""),
            ("\"a\nb\"", Quoting::QuotedLines, "a\nb"),
            ("\"33 1/2\" high", Quoting::TextAfterMark, "33 1/2 high"),
            ("\"33 1/2\"\",ok\nB", Quoting::Unclosed, "33 1/2\",ok\nB"),
        ];
        for (text, quoting, cell) in CASES {
            assert_eq!(one(text), (*quoting, (*cell).to_owned()), "{text}");
        }
    }

    #[test]
    fn lines_are_counted_as_an_editor_counts_them() {
        let text = "\u{feff}a\r\n\r\nb\r\"c\r\nd\"\n\ne";
        let lines: Vec<u64> = rows(text.as_bytes()).iter().map(|row| row.0).collect();
        assert_eq!(lines, [1, 3, 4, 7]);
    }

    #[test]
    fn what_a_quoted_cell_swallowed_can_be_read_after_all() {
        let mut scanner = Scanner::new("A,\"33\"\",x\r\nB,\"4 in\"\nC".as_bytes());
        scanner.advance().unwrap();
        assert_eq!(scanner.record().cells.len(), 2);
        scanner.keep_first_line();
        let record = scanner.record();
        assert_eq!(record.raw, b"A,\"33\"\",x");
        assert_eq!(record.cells[1].quoting, Quoting::Unclosed);
        assert_eq!(scanner.advance().unwrap(), FoundRow::Row);
        assert_eq!(
            (scanner.record().line, scanner.record().raw),
            (2, &b"B,\"4 in\""[..])
        );
    }

    #[test]
    fn rows_alike_are_passed_over_and_the_next_one_is_read_in_its_place() {
        let text = "A,b,c\nA,b,d\r\n\r\nA,b,\"e\"\nA,b,d\nA,bc,d\n";
        let mut scanner = Scanner::new(text.as_bytes());
        scanner.advance().unwrap();
        let passes = |rest: &[u8]| rest == b"d";
        assert_eq!(scanner.pass_over(b"A,b,", passes).unwrap(), 1);
        assert_eq!(scanner.advance().unwrap(), FoundRow::Row);
        assert_eq!(
            (scanner.record().line, scanner.record().raw),
            (4, &b"A,b,\"e\""[..])
        );
        assert_eq!(scanner.pass_over(b"A,b,", passes).unwrap(), 1);
        assert_eq!(scanner.pass_over(b"A,b,", passes).unwrap(), 0);
        assert_eq!(scanner.advance().unwrap(), FoundRow::Row);
        assert_eq!(
            (scanner.record().line, scanner.record().raw),
            (6, &b"A,bc,d"[..])
        );
        assert_eq!(scanner.pass_over(b"A", |_| true).unwrap(), 0);
    }

    #[test]
    fn a_row_without_end_is_left_out_and_the_next_one_read() {
        let mut text = vec![b'x'; LONGEST_ROW + 1];
        text.extend(b"\nA,b");
        let mut scanner = Scanner::new(&text[..]);
        assert_eq!(scanner.advance().unwrap(), FoundRow::TooLong);
        assert_eq!(scanner.record().line, 1);
        assert_eq!(scanner.advance().unwrap(), FoundRow::Row);
        assert_eq!(
            (scanner.record().line, scanner.record().raw),
            (2, &b"A,b"[..])
        );
        let mut text = b"A,\"b\n".to_vec();
        text.extend(b"c,d\n".repeat(LONGEST_ROW / 4 + 1));
        let mut scanner = Scanner::new(&text[..]);
        assert_eq!(scanner.advance().unwrap(), FoundRow::Row);
        assert_eq!(scanner.record().raw, b"A,\"b");
        assert_eq!(scanner.advance().unwrap(), FoundRow::Row);
        assert_eq!(
            (scanner.record().line, scanner.record().raw),
            (2, &b"c,d"[..])
        );
    }

    /// A stream that hands over a few bytes at a time.
    struct Trickle<'t>(&'t [u8], usize);

    impl Read for Trickle<'_> {
        fn read(&mut self, into: &mut [u8]) -> io::Result<usize> {
            let count = self.1.min(self.0.len()).min(into.len());
            into[..count].copy_from_slice(&self.0[..count]);
            self.0 = &self.0[count..];
            Ok(count)
        }
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(4000))]

        /// The csv crate is the second way: the same cells, and every range lies in its row.
        #[test]
        fn cells_are_those_of_the_csv_crate(text in "[\",\\r\\né a]{0,40}", step in 1_usize..9) {
            let theirs: Vec<Vec<String>> = csv::ReaderBuilder::new()
                .has_headers(false)
                .flexible(true)
                .from_reader(text.as_bytes())
                .records()
                .map(|record| record.unwrap().iter().map(str::to_owned).collect())
                .collect();
            let mut ours = Vec::new();
            let mut scanner = Scanner::new(Trickle(text.as_bytes(), step));
            while scanner.advance().unwrap() != FoundRow::End {
                let record = scanner.record();
                let raw = std::str::from_utf8(record.raw).unwrap();
                let mut end = 0;
                for cell in record.cells {
                    prop_assert!(cell.range().start >= end && raw.get(cell.range()).is_some());
                    end = cell.range().end;
                }
                prop_assert_eq!(end, raw.len());
                ours.push(record.cells.iter().map(|c| c.text(raw).into_owned()).collect::<Vec<_>>());
            }
            prop_assert_eq!(ours, theirs);
        }

        /// A row begins on the line that holds its first byte.
        #[test]
        fn rows_begin_where_they_are_said_to(text in "[\",\\r\\na]{0,40}") {
            let mut from = 0;
            for (line, _) in rows(text.as_bytes()) {
                let start = text.len() - text[from..].trim_start_matches(['\r', '\n']).len();
                prop_assert_eq!(line, 1 + line_ends(&text.as_bytes()[..start]));
                let mut scanner = Scanner::new(&text.as_bytes()[start..]);
                scanner.advance().unwrap();
                from = start + scanner.record().raw.len();
            }
        }
    }
}
