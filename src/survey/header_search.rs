//! Finds the header of a file: below a title and empty rows, in one row or two,
//! whatever parts the cells.

use std::io;

use crate::input::CellSpan;
use crate::input::Diagnostic;
use crate::input::FoundRow;
use crate::input::Quoting;
use crate::survey::codes;
use crate::survey::complaints::Complaints;
use crate::survey::header;
use crate::survey::header::Header;
use crate::survey::row::RowCondition;
use crate::survey::row::SurveyRow;
use crate::survey::stream::Stream;
use crate::survey::stream::complain_of_bytes;
use crate::survey::stream::empty_file;
use crate::survey::suspicion;

/// How many rows are looked through for a header.
const LOOKED_THROUGH: usize = 25;

/// How much of a row above the header is shown.
const SHOWN: usize = 120;

/// What may part cells, with its name; commas are tried first.
const DELIMITERS: [(u8, &str); 4] = [
    (b',', "commas"),
    (b';', "semicolons"),
    (b'\t', "tabs"),
    (b'|', "bars"),
];

/// A header, and the line on which it begins.
pub(super) struct FoundHeader {
    pub(super) header: Header,
    pub(super) line: u64,
}

/// Goes to the header and behind it; `None` if there is none, with the reason
/// among the complaints.
pub(super) fn find(
    stream: &mut Stream<'_>,
    complaints: &mut Complaints,
) -> io::Result<Option<FoundHeader>> {
    let mut above: Option<Diagnostic> = None;
    let mut texts: Vec<String> = Vec::new();
    let mut none: Option<Diagnostic> = None;
    for nth in 0..LOOKED_THROUGH {
        if !stream.next_written(complaints)? {
            break;
        }
        if nth == 0 {
            complain_of_bytes(&stream.row(), complaints);
        }
        if let Some(delimiter) = named_delimiter(&stream.row()) {
            stream.scanner.part_at(delimiter)?;
            continue;
        }
        let row = stream.row();
        let missing = none.is_none().then(|| header::no_header(&row));
        let (at, text) = (row.excerpt_whole(), shown(&row));
        let rank = if nth == 0 {
            HeaderRank::First
        } else {
            HeaderRank::Below
        };
        if let Some(found) = header_here(stream, rank, complaints)? {
            if let Some(first) = above {
                complaints.push(passed_over(first, &texts));
            }
            return Ok(Some(found));
        }
        none = none.or(missing);
        above.get_or_insert_with(|| Diagnostic::warning(codes::ABOVE_HEADER, "", at));
        texts.push(text);
    }
    complaints.push(none.unwrap_or_else(|| empty_file(&stream.file)));
    Ok(None)
}

/// Whether a row is the first of its file that says something.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum HeaderRank {
    Below,
    First,
}

/// The header in the current row, or in it and the next one.
fn header_here(
    stream: &mut Stream<'_>,
    rank: HeaderRank,
    complaints: &mut Complaints,
) -> io::Result<Option<FoundHeader>> {
    let fits = |row: &SurveyRow<'_>| match rank {
        HeaderRank::First => header::makes_sense(row),
        HeaderRank::Below => header::is_plainly_one(row),
    };
    let mut found = None;
    for (delimiter, name) in DELIMITERS {
        if stream.scanner.delimiter() != delimiter {
            stream.scanner.part_at(delimiter)?;
        }
        let row = stream.row();
        if fits(&row) || header::may_begin_one(&row) {
            found = Some((delimiter, name));
            break;
        }
    }
    let Some((delimiter, name)) = found else {
        stream.scanner.part_at(b',')?;
        return Ok(None);
    };
    let first = KeptRow::of(&stream.row());
    let fits_alone = fits(&stream.row());
    let second = second_row(stream, &first, complaints)?;
    let row = SurveyRow {
        text: &first.text,
        cells: &first.cells,
        at: first.at,
        ..stream.row()
    };
    if !fits_alone && second.is_none() {
        stream.scanner.next_parts_at(b',');
        return Ok(None);
    }
    if delimiter != b',' {
        let message = format!("cells are parted by {name} here; they were read so");
        complaints.push(
            Diagnostic::warning(codes::OTHER_DELIMITER, message, row.excerpt_whole())
                .help("save the file as CSV with commas"),
        );
    }
    let mut faults = Vec::new();
    let header = Header::read(&row, second.as_deref(), delimiter, &mut faults);
    let line = row.at.line;
    if first
        .cells
        .iter()
        .any(|cell| cell.quoting == Quoting::Unclosed)
    {
        faults.push(suspicion::swallowed_rows(&row, first.cells.len() - 1));
        stream.scanner.keep_first_line();
    }
    complaints.extend(faults);
    Ok(header.map(|header| FoundHeader { header, line }))
}

/// The headings with a second row of them or of units, where the next row is
/// one; it is read then, and else it is the next one still.
fn second_row(
    stream: &mut Stream<'_>,
    first: &KeptRow,
    complaints: &mut Complaints,
) -> io::Result<Option<Vec<String>>> {
    if first
        .cells
        .iter()
        .any(|cell| cell.quoting == Quoting::Unclosed)
    {
        return Ok(None);
    }
    let found = stream.scanner.advance()?;
    let joined = match found {
        FoundRow::TooLong => {
            complaints.push(stream.too_long());
            return Ok(None);
        }
        FoundRow::End => None,
        FoundRow::Row if stream.is_blank_or_comment() => None,
        FoundRow::Row => {
            let second = stream.row();
            let row = SurveyRow {
                text: &first.text,
                cells: &first.cells,
                ..second
            };
            header::joined_with(&row, &second)
        }
    };
    if joined.is_none() {
        stream.scanner.put_back();
    }
    Ok(joined)
}

/// A row that outlives the next one.
struct KeptRow {
    text: String,
    cells: Vec<CellSpan>,
    at: crate::survey::RowPlace,
}

impl KeptRow {
    fn of(row: &SurveyRow<'_>) -> KeptRow {
        debug_assert!(
            *row.condition == RowCondition::SOUND,
            "nothing was said of it yet"
        );
        KeptRow {
            text: row.text.to_owned(),
            cells: row.cells.to_vec(),
            at: row.at,
        }
    }
}

/// `sep=;` as some programs write above the table.
fn named_delimiter(row: &SurveyRow<'_>) -> Option<u8> {
    let rest = row.text.trim().strip_prefix("sep=")?;
    match rest.as_bytes() {
        [delimiter] if delimiter.is_ascii() => Some(*delimiter),
        _ => None,
    }
}

/// The filled cells of a row.
fn shown(row: &SurveyRow<'_>) -> String {
    let cells: Vec<_> = (0..row.width())
        .map(|index| row.cell(index))
        .filter(|cell| !cell.is_empty())
        .collect();
    let text = cells.join(", ");
    match text.char_indices().nth(SHOWN) {
        Some((end, _)) => format!("{} …", &text[..end]),
        None => text,
    }
}

/// What stood above the header, word for word.
fn passed_over(mut first: Diagnostic, texts: &[String]) -> Diagnostic {
    let rows = match texts.len() {
        1 => "one row stands".to_owned(),
        count => format!("{count} rows stand"),
    };
    first.message = format!(
        "{rows} above the heading row and was passed over: {}",
        texts.join(" / ")
    );
    if texts.len() > 1 {
        first.message = first.message.replace(" and was passed", " and were passed");
    }
    first.help(
        "what the check should know of it goes into rows below the headings, as item and reading",
    )
}
