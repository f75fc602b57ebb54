//! Opens a survey file, finds its header, and hands over its rows with what is
//! wrong with their marks and cells.

use std::io;
use std::io::Read;
use std::sync::Arc;

use memchr::memchr_iter;

use crate::input::CellSpan;
use crate::input::Diagnostic;
use crate::input::Excerpt;
use crate::input::FoundRow;
use crate::input::Quoting;
use crate::input::Scanner;
use crate::survey;
use crate::survey::SurveyFile;
use crate::survey::codes;
use crate::survey::complaints::Complaints;
use crate::survey::header;
use crate::survey::header::Header;
use crate::survey::header::Layout;
use crate::survey::row::RowCondition;
use crate::survey::row::SurveyRow;
use crate::survey::suspicion;

/// Reads the rows of one file.
pub(super) struct RowReader<'f> {
    stream: Stream<'f>,
    pub(super) header: Arc<Header>,
    condition: RowCondition,
    /// How rows of the last guard begin.
    beginning: Vec<u8>,
}

/// The rows of a file as they stand, with their text.
struct Stream<'f> {
    scanner: Scanner<Box<dyn Read + 'f>>,
    file: Arc<str>,
    index: u32,
    /// A row's text with a question mark for each byte that is not UTF-8.
    patched: String,
}

impl<'f> RowReader<'f> {
    /// Opens a file and reads its header; `None` if the file cannot be used,
    /// with the reason among the complaints.
    pub(super) fn open(
        file: &'f dyn SurveyFile,
        index: u32,
        complaints: &mut Complaints,
    ) -> io::Result<Option<RowReader<'f>>> {
        let mut stream = Stream {
            scanner: Scanner::new(file.open()?),
            file: file.name().into(),
            index,
            patched: String::new(),
        };
        if let Some(kind) = other_kind(stream.scanner.beginning()?) {
            complaints.push(kind.diagnostic(&stream.file));
            return Ok(None);
        }
        if !stream.first_row(complaints)? {
            return Ok(None);
        }
        stream.find_delimiter(complaints)?;
        let delimiter = stream.scanner.delimiter();
        let row = stream.row();
        let mut faults = Vec::new();
        let header = Header::read(&row, delimiter, &mut faults);
        complaints.extend(faults);
        let Some(header) = header else {
            complaints.push(header::no_header(&row));
            return Ok(None);
        };
        if row
            .cells
            .iter()
            .any(|cell| cell.quoting == Quoting::Unclosed)
        {
            complaints.push(suspicion::swallowed_rows(&row, row.cells.len() - 1));
            stream.scanner.keep_first_line();
        }
        Ok(Some(RowReader {
            stream,
            header: Arc::new(header),
            condition: RowCondition::SOUND,
            beginning: Vec::new(),
        }))
    }

    /// The line on which the current row begins: after opening, the header.
    pub(super) fn line(&self) -> u64 {
        self.stream.scanner.record().line
    }

    /// The next row that is not blank and no comment, with what is wrong with
    /// its marks and cells among the complaints.
    pub(super) fn next(
        &mut self,
        complaints: &mut Complaints,
    ) -> io::Result<Option<SurveyRow<'_>>> {
        loop {
            match self.stream.scanner.advance()? {
                FoundRow::End => return Ok(None),
                FoundRow::Row if self.stream.is_blank_or_comment() => {}
                FoundRow::Row => break,
                FoundRow::TooLong => complaints.push(self.stream.too_long()),
            }
        }
        let over_lines = |cell: &CellSpan| {
            matches!(
                cell.quoting,
                Quoting::QuotedLines | Quoting::TextAfterMark | Quoting::Unclosed
            )
        };
        if self.stream.scanner.record().cells.iter().any(over_lines)
            && suspicion::swallows(&self.stream.row(), &self.header)
        {
            self.stream.scanner.keep_first_line();
        }
        let row = self.stream.row();
        self.condition = suspicion::examine(&row, &self.header, complaints);
        if row.undecoded.is_some() {
            self.condition.in_error = true;
            complain_of_bytes(&row, complaints);
        }
        Ok(Some(SurveyRow {
            condition: &self.condition,
            ..row
        }))
    }

    /// Passes over rows of the same guard as the last one, whose names stood
    /// there as `names`, as long as their item's first letter passes; how many
    /// they were. For who counts rows and reads no further.
    ///
    /// Only rows with no more cells than the header are passed over: of the
    /// others [`RowReader::next`] alone decides whose they are.
    pub(super) fn pass_over(&mut self, names: &str, passes: fn(u8) -> bool) -> io::Result<u32> {
        let item_follows = match self.header.layout {
            Layout::Notebook { item, .. } => item == self.header.names,
            Layout::Table => false,
        };
        if !item_follows || names.is_empty() {
            return Ok(0);
        }
        let delimiter = self.header.delimiter;
        self.beginning.clear();
        self.beginning.extend_from_slice(names.as_bytes());
        self.beginning.push(delimiter);
        let most = self.header.columns.len() - self.header.names;
        let passes = |rest: &[u8]| {
            rest.first().is_some_and(|first| passes(*first))
                && memchr_iter(delimiter, rest).nth(most - 1).is_none()
        };
        self.stream.scanner.pass_over(&self.beginning, passes)
    }
}

impl Stream<'_> {
    /// The current row; its condition is looked at elsewhere.
    fn row(&mut self) -> SurveyRow<'_> {
        let record = self.scanner.record();
        let (text, undecoded) = match std::str::from_utf8(record.raw) {
            Ok(text) => (text, None),
            Err(error) => {
                self.patched = patched(record.raw);
                (&*self.patched, Some(error.valid_up_to()))
            }
        };
        SurveyRow {
            file: &self.file,
            at: survey::RowPlace {
                file: self.index,
                line: record.line,
            },
            text,
            undecoded,
            cells: record.cells,
            condition: &RowCondition::SOUND,
            delimiter: char::from(self.scanner.delimiter()),
        }
    }

    /// Rows of empty cells; lines that start with `#` and are one cell.
    fn is_blank_or_comment(&self) -> bool {
        let record = self.scanner.record();
        let delimiter = self.scanner.delimiter();
        let empty = |byte: &u8| byte.is_ascii_whitespace() || *byte == b'"' || *byte == delimiter;
        (record.cells.len() == 1 && record.raw.starts_with(b"#")) || record.raw.iter().all(empty)
    }

    /// Goes to the first row that is not blank and no comment; false if there is none.
    fn first_row(&mut self, complaints: &mut Complaints) -> io::Result<bool> {
        loop {
            match self.scanner.advance()? {
                FoundRow::End => {
                    complaints.push(empty(&self.file));
                    return Ok(false);
                }
                FoundRow::Row if self.is_blank_or_comment() => {}
                FoundRow::Row => {
                    complain_of_bytes(&self.row(), complaints);
                    return Ok(true);
                }
                FoundRow::TooLong => {
                    complaints.push(self.too_long());
                    return Ok(false);
                }
            }
        }
    }

    /// Parts cells by a semicolon or a tab where the header makes sense only so.
    fn find_delimiter(&mut self, complaints: &mut Complaints) -> io::Result<()> {
        if header::makes_sense(&self.row()) {
            return Ok(());
        }
        for (delimiter, name) in [(b';', "semicolons"), (b'\t', "tabs")] {
            self.scanner.part_at(delimiter)?;
            let row = self.row();
            if header::makes_sense(&row) {
                let message = format!("cells are parted by {name} here; they were read so");
                complaints.push(
                    Diagnostic::warning(codes::OTHER_DELIMITER, message, row.excerpt_whole())
                        .help("save the file as CSV with commas"),
                );
                return Ok(());
            }
        }
        self.scanner.part_at(b',')?;
        Ok(())
    }

    fn too_long(&self) -> Diagnostic {
        let line = self.scanner.record().line;
        Diagnostic::error(
            codes::ROW_TOO_LONG,
            "this row is longer than 1 MiB and was not read",
            Excerpt::new(Arc::clone(&self.file), line, "", 0..0),
        )
        .help("look whether line ends were lost when the file was saved")
    }
}

/// Bytes that are not UTF-8, if the row has any.
fn complain_of_bytes(row: &SurveyRow<'_>, complaints: &mut Complaints) {
    let Some(bad) = row.undecoded else {
        return;
    };
    complaints.count(row.file, codes::NOT_UTF8, "", || {
        Diagnostic::error(
            codes::NOT_UTF8,
            "the file is not saved as UTF-8: this character cannot be read",
            row.excerpt_of(bad..bad + 1),
        )
        .help("save it again and choose \"CSV UTF-8\", or the encoding UTF-8")
    });
}

/// The text with a question mark for each byte that is not UTF-8, as long as before.
fn patched(raw: &[u8]) -> String {
    let mut text = String::with_capacity(raw.len());
    for chunk in raw.utf8_chunks() {
        text.push_str(chunk.valid());
        text.extend(chunk.invalid().iter().map(|_| '?'));
    }
    text
}

/// Files that are no CSV at all.
enum FileKind {
    Document,
    Utf16,
    Workbook,
}

fn other_kind(beginning: &[u8]) -> Option<FileKind> {
    const WORKBOOKS: &[&[u8]] = &[b"PK\x03\x04", b"\xD0\xCF\x11\xE0"];
    const DOCUMENTS: &[&[u8]] = &[b"%PDF", b"{\\rtf", b"\x89PNG", b"\xFF\xD8\xFF"];
    let begins_with = |marks: &[&[u8]]| marks.iter().any(|mark| beginning.starts_with(mark));
    if beginning.starts_with(b"\xFF\xFE") || beginning.starts_with(b"\xFE\xFF") {
        return Some(FileKind::Utf16);
    }
    let first = &beginning[..beginning.len().min(64)];
    let zeros = first.iter().filter(|byte| **byte == 0).count();
    if begins_with(WORKBOOKS) {
        Some(FileKind::Workbook)
    } else if begins_with(DOCUMENTS) {
        Some(FileKind::Document)
    } else if zeros * 3 > first.len() {
        Some(FileKind::Utf16)
    } else {
        None
    }
}

impl FileKind {
    fn diagnostic(&self, file: &Arc<str>) -> Diagnostic {
        let (message, help) = match self {
            FileKind::Document => (
                "this is a document or a picture, not a CSV file",
                "write the readings into a CSV file: unit,guard,item,reading,note",
            ),
            FileKind::Utf16 => (
                "the file is saved as UTF-16 (\"Unicode text\"), not as UTF-8",
                "save it again and choose \"CSV UTF-8\", or the encoding UTF-8",
            ),
            FileKind::Workbook => (
                "this is a spreadsheet's own file, not a CSV file",
                "open it in the spreadsheet and save it as \"CSV UTF-8\"",
            ),
        };
        Diagnostic::error(codes::NO_CSV, message, Excerpt::whole(Arc::clone(file))).help(help)
    }
}

fn empty(file: &Arc<str>) -> Diagnostic {
    Diagnostic::error(
        codes::EMPTY_FILE,
        "the file is empty",
        Excerpt::whole(Arc::clone(file)),
    )
    .help(
        "begin with the row unit,guard,item,reading,note and write one observation a row below it",
    )
}
