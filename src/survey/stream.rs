//! The rows of a survey's file as they stand: how its letters are saved, what
//! kind of file it is, and the text of one row after another.

use std::io;
use std::io::Read;
use std::sync::Arc;

use crate::input::CellSpan;
use crate::input::Decoded;
use crate::input::Diagnostic;
use crate::input::Encoding;
use crate::input::Excerpt;
use crate::input::FoundRow;
use crate::input::Quoting;
use crate::input::Scanner;
use crate::survey;
use crate::survey::SurveyFile;
use crate::survey::codes;
use crate::survey::complaints::Complaints;
use crate::survey::row::RowCondition;
use crate::survey::row::SurveyRow;
use crate::survey::sheet::SheetCells;

/// The rows of a file as they stand, with their text.
pub(super) struct Stream<'f> {
    pub(super) scanner: Scanner<Box<dyn Read + 'f>>,
    pub(super) file: Arc<str>,
    sheet: Option<&'f SheetCells>,
    index: u32,
    /// A row's text with a question mark for each byte that is not UTF-8.
    patched: String,
}

/// A file and how its letters are saved.
#[derive(Clone, Copy)]
pub(super) struct Saved<'f> {
    pub(super) file: &'f dyn SurveyFile,
    pub(super) encoding: Encoding,
}

impl<'f> Saved<'f> {
    /// Looks at all of a file to see how it is saved.
    pub(super) fn look(file: &'f dyn SurveyFile) -> io::Result<Saved<'f>> {
        let encoding = match file.sheet() {
            Some(_) => Encoding::Utf8,
            None => Encoding::of(file.open()?)?,
        };
        Ok(Saved { file, encoding })
    }

    fn open(&self) -> io::Result<Box<dyn Read + 'f>> {
        let bytes = self.file.open()?;
        Ok(match self.encoding {
            Encoding::Utf8 | Encoding::Unknown => bytes,
            old @ (Encoding::Utf16Le | Encoding::Utf16Be | Encoding::Windows1252) => {
                Box::new(Decoded::new(bytes, old))
            }
        })
    }
}

impl<'f> Stream<'f> {
    /// Opens a file; `None` if it is of a kind that cannot be read, with the
    /// reason among the complaints.
    pub(super) fn open(
        saved: Saved<'f>,
        index: u32,
        complaints: &mut Complaints,
    ) -> io::Result<Option<Stream<'f>>> {
        let mut stream = Stream {
            scanner: Scanner::new(saved.open()?),
            file: saved.file.name().into(),
            sheet: saved.file.sheet(),
            index,
            patched: String::new(),
        };
        if let Some(kind) = other_kind(stream.scanner.beginning()?) {
            complaints.push(kind.diagnostic(&stream.file));
            return Ok(None);
        }
        complaints.extend(old_encoding(&stream.file, saved.encoding));
        Ok(Some(stream))
    }

    /// The current row; its condition is looked at elsewhere.
    pub(super) fn row(&mut self) -> SurveyRow<'_> {
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
            sheet: self.sheet,
        }
    }

    /// Rows of empty cells; lines that start with `#` and are one cell.
    pub(super) fn is_blank_or_comment(&self) -> bool {
        let record = self.scanner.record();
        let delimiter = self.scanner.delimiter();
        let empty = |byte: &u8| byte.is_ascii_whitespace() || *byte == b'"' || *byte == delimiter;
        (record.cells.len() == 1 && record.raw.starts_with(b"#")) || record.raw.iter().all(empty)
    }

    /// Goes to the next row that is not blank and no comment; false if there is none.
    pub(super) fn next_written(&mut self, complaints: &mut Complaints) -> io::Result<bool> {
        loop {
            match self.scanner.advance()? {
                FoundRow::End => return Ok(false),
                FoundRow::Row if self.is_blank_or_comment() => {}
                FoundRow::Row => return Ok(true),
                FoundRow::TooLong => {
                    complaints.push(self.too_long());
                    return Ok(false);
                }
            }
        }
    }

    /// Whether a cell of the current row goes on over its line, or may.
    pub(super) fn has_open_cell(&self) -> bool {
        let over_lines = |cell: &CellSpan| {
            matches!(
                cell.quoting,
                Quoting::QuotedLines | Quoting::TextAfterMark | Quoting::Unclosed
            )
        };
        self.scanner.record().cells.iter().any(over_lines)
    }

    pub(super) fn too_long(&self) -> Diagnostic {
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
pub(super) fn complain_of_bytes(row: &SurveyRow<'_>, complaints: &mut Complaints) {
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

/// That a file is saved in an old encoding, and was read so.
fn old_encoding(file: &Arc<str>, encoding: Encoding) -> Option<Diagnostic> {
    let name = match encoding {
        Encoding::Utf8 | Encoding::Unknown => return None,
        Encoding::Utf16Le | Encoding::Utf16Be => "UTF-16 (\"Unicode text\")",
        Encoding::Windows1252 => "Windows-1252 (\"ANSI\")",
    };
    let message = format!("the file is saved as {name}, and was read so");
    Some(
        Diagnostic::warning(codes::OLD_ENCODING, message, Excerpt::whole(Arc::clone(file))).help(
            "look whether names and fractions are right in the report; save it as \"CSV UTF-8\" to be sure",
        ),
    )
}

/// Files that are no CSV at all.
enum FileKind {
    Document,
    Page,
    Workbook,
}

fn other_kind(beginning: &[u8]) -> Option<FileKind> {
    const WORKBOOKS: &[&[u8]] = &[b"PK\x03\x04", b"\xD0\xCF\x11\xE0"];
    const DOCUMENTS: &[&[u8]] = &[b"%PDF", b"{\\rtf", b"\x89PNG", b"\xFF\xD8\xFF"];
    const PAGES: &[&[u8]] = &[b"<!doctype", b"<html", b"<?xml", b"<table", b"<head"];
    let begins_with = |marks: &[&[u8]]| marks.iter().any(|mark| beginning.starts_with(mark));
    let start = beginning.trim_ascii_start().to_ascii_lowercase();
    if begins_with(WORKBOOKS) {
        Some(FileKind::Workbook)
    } else if begins_with(DOCUMENTS) {
        Some(FileKind::Document)
    } else if PAGES.iter().any(|mark| start.starts_with(mark)) {
        Some(FileKind::Page)
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
            FileKind::Page => (
                "this is a web page or an XML file, whatever its name says, and no CSV file",
                "open it in a spreadsheet and save it as \"CSV UTF-8\"",
            ),
            FileKind::Workbook => (
                "this is a spreadsheet's own file, not a CSV file",
                "open it in the spreadsheet and save it as \"CSV UTF-8\"",
            ),
        };
        Diagnostic::error(codes::NO_CSV, message, Excerpt::whole(Arc::clone(file))).help(help)
    }
}

pub(super) fn empty_file(file: &Arc<str>) -> Diagnostic {
    Diagnostic::error(
        codes::EMPTY_FILE,
        "the file is empty",
        Excerpt::whole(Arc::clone(file)),
    )
    .help(
        "begin with the row unit,guard,item,reading,note and write one observation a row below it",
    )
}
