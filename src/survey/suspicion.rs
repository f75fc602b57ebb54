//! What looks wrong with a row before it is read: traps of quoting, surplus
//! cells, characters that would do something in a spreadsheet or a terminal.

use crate::input::Diagnostic;
use crate::input::Quoting;
use crate::items::Item;
use crate::quantities::LengthUnit;
use crate::reading::parse;
use crate::survey::codes;
use crate::survey::complaints::Complaints;
use crate::survey::header::Header;
use crate::survey::header::Layout;
use crate::survey::heading::HeaderColumn;
use crate::survey::heading::length_unit;
use crate::survey::row::RowCondition;
use crate::survey::row::SurveyRow;

/// How many cells are tried as one reading.
const TRIED: usize = 8;

/// Whether a quoted cell of the row has swallowed rows that follow.
///
/// Only a note may hold line ends, where its cell closes, the row has no more
/// cells than the header, and no line within looks like a row.
pub(super) fn swallows(row: &SurveyRow<'_>, header: &Header) -> bool {
    row.cells.iter().enumerate().any(|(index, cell)| {
        let text = &row.text[cell.range()];
        match cell.quoting {
            Quoting::BareMark | Quoting::Plain | Quoting::Quoted => false,
            Quoting::TextAfterMark | Quoting::Unclosed => text.contains(['\n', '\r']),
            Quoting::QuotedLines => {
                let note = matches!(
                    header.columns.get(index),
                    Some(HeaderColumn::Note | HeaderColumn::NoteOf(_))
                );
                !note
                    || row.filled_width() > header.columns.len()
                    || text
                        .lines()
                        .skip(1)
                        .any(|line| looks_like_a_row(line, row.delimiter, header))
            }
        }
    })
}

fn looks_like_a_row(line: &str, delimiter: char, header: &Header) -> bool {
    if line.split(delimiter).count() >= header.columns.len() && header.columns.len() > 1 {
        return true;
    }
    match header.layout {
        Layout::Notebook { item, .. } => {
            let item = line.split(delimiter).nth(item);
            item.is_some_and(|item| Item::by_name(item.trim()).is_some())
        }
        Layout::Table => false,
    }
}

/// Looks at the row's cells and complains.
pub(super) fn examine(
    row: &SurveyRow<'_>,
    header: &Header,
    complaints: &mut Complaints,
) -> RowCondition {
    let mut condition = RowCondition::SOUND;
    for (index, cell) in row.cells.iter().enumerate() {
        match cell.quoting {
            Quoting::Plain | Quoting::Quoted | Quoting::QuotedLines => continue,
            Quoting::BareMark => bare_mark(row, index, header, complaints),
            Quoting::TextAfterMark => {
                complaints.push(text_after_mark(row, index));
                condition.doubt(index..index + 1);
            }
            Quoting::Unclosed => {
                complaints.push(swallowed_rows(row, index));
                condition.doubt(index..index + 1);
            }
        }
    }
    if !condition.in_error {
        examine_surplus(row, header, &mut condition, complaints);
    }
    if complaints.are_heard() {
        complain_of_dangerous_text(row, header, complaints);
    }
    condition
}

/// A quoted cell that runs on over following rows, or is never closed.
pub(super) fn swallowed_rows(row: &SurveyRow<'_>, index: usize) -> Diagnostic {
    let range = row.range(index);
    let written = row.text[range.clone()].trim_start_matches('"');
    let help = match written.split_once('"') {
        Some((reading, _)) if reading.trim().ends_with(|c: char| c.is_ascii_digit()) => {
            format!("write {} in, and no marks", reading.trim())
        }
        Some(_) | None => {
            "close the cell with a second mark, or leave the first one out".to_owned()
        }
    };
    Diagnostic::error(
        codes::SWALLOWED_ROWS,
        "a quotation mark opens this cell, and nothing closes it on this line: read as it stands, it would swallow the rows below",
        row.excerpt_of(range),
    )
    .label("not read")
    .help(help)
}

fn text_after_mark(row: &SurveyRow<'_>, index: usize) -> Diagnostic {
    let text = row.cell(index);
    Diagnostic::error(
        codes::TEXT_AFTER_MARK,
        "text follows the mark that closes this cell",
        row.excerpt(index),
    )
    .label("not read")
    .help(format!(
        "leave out the marks, or write a mark within the cell as two: {}",
        in_marks(&row.text[row.range(index)], &text)
    ))
}

/// The cell as it was probably meant: the marks in it doubled.
fn in_marks(raw: &str, text: &str) -> String {
    let inner = raw.strip_prefix('"').unwrap_or(text);
    format!("\"{}\"", inner.replace("\"\"", "\"").replace('"', "\"\""))
}

/// An inch mark in a cell without marks around it: read, but a bad habit.
fn bare_mark(row: &SurveyRow<'_>, index: usize, header: &Header, complaints: &mut Complaints) {
    let column = header.columns.get(index);
    if matches!(
        column,
        None | Some(HeaderColumn::Note | HeaderColumn::NoteOf(_) | HeaderColumn::Own)
    ) {
        return;
    }
    complaints.count(row.file, codes::BARE_INCH_MARK, "", || {
        let text = row.cell(index);
        let plain = text.replace('"', "");
        let help = match column {
            Some(HeaderColumn::Of(..) | HeaderColumn::Reading(_)) => format!(
                "write {} in; elsewhere the mark can swallow the rows below",
                plain.trim()
            ),
            Some(_) | None => format!("write {}", plain.trim()),
        };
        Diagnostic::warning(
            codes::BARE_INCH_MARK,
            format!("`{text}` has a bare inch mark; it was read as it stands"),
            row.excerpt(index),
        )
        .help(help)
    });
}

/// Cells beyond the header's, and numbers that a decimal comma has cut in two.
fn examine_surplus(
    row: &SurveyRow<'_>,
    header: &Header,
    condition: &mut RowCondition,
    complaints: &mut Complaints,
) {
    let width = header.columns.len();
    let surplus = if row.width() > width {
        row.filled_width().saturating_sub(width)
    } else {
        0
    };
    match header.layout {
        Layout::Notebook { item, reading, .. } => {
            let cut = header.note == Some(reading + 1)
                && is_cut_number(row, reading)
                && Item::by_name(&row.cell(item))
                    .is_some_and(|item| item.info().kind.holds_a_length());
            if surplus > 0 || cut {
                let item = Item::by_name(&row.cell(item));
                notebook_surplus(row, header, (item, reading), condition, complaints);
            }
        }
        Layout::Table if surplus > 0 => {
            table_surplus(row, header, surplus, condition, complaints);
        }
        Layout::Table => {}
    }
}

/// Whether a cell is digits alone and the next too, with a unit or without:
/// `90` and `2 cm`.
fn is_cut_number(row: &SurveyRow<'_>, index: usize) -> bool {
    let Some(cell) = row.cells.get(index) else {
        return false;
    };
    // most readings end with a unit: no need to look further
    let last = row.text.as_bytes()[cell.range()].last();
    if !last.is_some_and(|last| last.is_ascii_digit() || last.is_ascii_whitespace()) {
        return false;
    }
    let (whole, rest) = (row.cell(index), row.cell(index + 1));
    let unit = rest.trim_start_matches(|c: char| c.is_ascii_digit());
    whole.bytes().all(|byte| byte.is_ascii_digit())
        && rest.starts_with(|c: char| c.is_ascii_digit())
        && (unit.is_empty() || length_unit(unit.trim()).is_some())
}

/// Surplus cells of a notebook: they belong to the reading where the first cell
/// behind it begins with a digit or the reading makes no sense without them;
/// else they are the rest of the note, or of the person's own last column.
///
/// What stands in front of a known item is where it should be, names too.
fn notebook_surplus(
    row: &SurveyRow<'_>,
    header: &Header,
    (item, reading): (Option<Item>, usize),
    condition: &mut RowCondition,
    complaints: &mut Complaints,
) {
    let width = header.columns.len();
    let readable =
        |text: &str| item.is_none_or(|item| parse(item, text, Some(LengthUnit::Inch)).is_ok());
    let digit_follows = row
        .cell(reading + 1)
        .starts_with(|c: char| c.is_ascii_digit());
    let behind = header.columns.get(reading + 1..).unwrap_or_default();
    let rest_of_last = match behind {
        [] | [HeaderColumn::Note] => true,
        // which of several columns goes on, nobody can tell
        [HeaderColumn::Own] => item.is_some(),
        [..] => false,
    };
    let read_alone = !digit_follows && readable(&row.cell(reading));
    if rest_of_last && read_alone {
        condition.rest_of_last = Some(reading + 1);
        complaints.push(rest_of_last_column(row, header, reading + 1));
        return;
    }
    let first = match item {
        Some(_) if read_alone && !behind.is_empty() => reading + 1,
        Some(_) => reading,
        None if rest_of_last => reading,
        None => 0,
    };
    condition.doubt(first..usize::MAX);
    let (message, help) = if first == reading + 1 {
        (
            format!(
                "this row has {} cells, and the header {width}",
                row.filled_width()
            ),
            "put a note that holds a comma in quotation marks".to_owned(),
        )
    } else {
        (
            "a comma has cut this row into more cells than it should have, perhaps within the reading".to_owned(),
            mended_reading(row, item, reading),
        )
    };
    let start = row.range(first.max(reading)).start;
    complaints.push(
        Diagnostic::error(
            codes::SURPLUS_READING,
            message,
            row.excerpt_of(start..row.range(row.filled_width() - 1).end),
        )
        .label("not read")
        .help(help),
    );
}

/// What to write where a comma has cut a reading.
fn mended_reading(row: &SurveyRow<'_>, item: Option<Item>, reading: usize) -> String {
    let candidates = (reading + 2..=row.filled_width())
        .take(TRIED)
        .map(|end| reading..end);
    let meant = item.and_then(|item| {
        candidates
            .map(|cells| (cells.clone(), row.joined(cells)))
            .find(|(_, joined)| parse(item, joined, Some(LengthUnit::Inch)).is_ok())
    });
    if let Some((cells, joined)) = meant {
        return format!("put the reading in marks: {}", row.mended(cells, &joined));
    }
    let digit_follows = row
        .cell(reading + 1)
        .starts_with(|c: char| c.is_ascii_digit());
    item.filter(|_| digit_follows)
        .and_then(|item| parse(item, &row.joined(reading..reading + 2), None).err())
        .map_or_else(
            || "put a reading or note that holds a comma in quotation marks".to_owned(),
            |refused| refused.help.unwrap_or(refused.message),
        )
}

/// Surplus cells of a table: cut numbers, or the rest of a note in the last
/// column; else nobody knows where they belong.
fn table_surplus(
    row: &SurveyRow<'_>,
    header: &Header,
    surplus: usize,
    condition: &mut RowCondition,
    complaints: &mut Complaints,
) {
    let width = header.columns.len();
    let cut = cut_numbers(row, header);
    let ends_with_note = header.columns.last() == Some(&HeaderColumn::Note);
    let digit_follows = row.cell(width).starts_with(|c: char| c.is_ascii_digit());
    if cut.is_empty() && ends_with_note && !digit_follows {
        condition.rest_of_last = Some(width - 1);
        complaints.push(rest_of_last_column(row, header, width - 1));
        return;
    }
    let first = cut.first().copied().unwrap_or(header.names);
    condition.doubt(first..usize::MAX);
    let help = if cut.len() == surplus && surplus <= TRIED {
        let mended = cut.iter().rev().fold(row.text.to_owned(), |text, index| {
            let joined = row.joined(*index..index + 2);
            let (start, end) = (row.range(*index).start, row.range(index + 1).end);
            format!("{}\"{joined}\"{}", &text[..start], &text[end..])
        });
        format!("put the reading in marks: {mended}")
    } else {
        "put a reading or note that holds a comma in quotation marks".to_owned()
    };
    complaints.push(
        Diagnostic::error(
            codes::SURPLUS_READING,
            format!(
                "this row has {} cells, and the header {width}",
                row.filled_width()
            ),
            row.excerpt_of(row.range(first).start..row.text.len()),
        )
        .label("not read")
        .help(help),
    );
}

/// Cells of a table that with the next one are a number cut in two.
fn cut_numbers(row: &SurveyRow<'_>, header: &Header) -> Vec<usize> {
    let mut cut: Vec<usize> = Vec::new();
    for index in header.names..row.filled_width() {
        // a cut shifts all cells behind it to the right
        let column = header.columns.get(index - cut.len());
        let of_length =
            matches!(column, Some(HeaderColumn::Of(item, _)) if item.info().kind.holds_a_length());
        let free = cut.last().is_none_or(|last| last + 1 < index);
        if free && of_length && is_cut_number(row, index) {
            cut.push(index);
        }
    }
    cut
}

fn rest_of_last_column(row: &SurveyRow<'_>, header: &Header, last: usize) -> Diagnostic {
    let cells = last..row.filled_width();
    let joined = row.joined(cells.clone());
    let range = row.range(cells.start).start..row.range(cells.end - 1).end;
    let (whose, what) = match header.columns.get(last) {
        Some(HeaderColumn::Own) => {
            let heading = &header.headings[last];
            (format!("the column `{heading}`"), heading.to_string())
        }
        Some(_) | None => ("the note".to_owned(), "note".to_owned()),
    };
    Diagnostic::warning(
        codes::SURPLUS_NOTE,
        format!(
            "this row has more cells than the header: the last ones were read as the rest of {whose}"
        ),
        row.excerpt_of(range),
    )
    .help(format!(
        "put the {what} in marks: {}",
        row.mended(cells, &joined)
    ))
}

/// Cells that a spreadsheet would run, and characters that steer a terminal.
fn complain_of_dangerous_text(row: &SurveyRow<'_>, header: &Header, complaints: &mut Complaints) {
    for (index, cell) in row.cells.iter().enumerate() {
        let raw = &row.text.as_bytes()[cell.range()];
        if raw.first().is_none_or(u8::is_ascii_alphanumeric) {
            continue;
        }
        let first = raw.iter().find(|byte| !matches!(byte, b'"' | b' '));
        let Some(first @ (b'=' | b'+' | b'-' | b'@' | b'\t')) = first else {
            continue;
        };
        let reads = matches!(
            header.columns.get(index),
            Some(HeaderColumn::Reading(_) | HeaderColumn::Of(..))
        );
        // `-` alone says that one could not look, and other readings say themselves what is wrong
        if reads && matches!(first, b'-' | b'+') || row.cell(index).len() < 2 {
            continue;
        }
        complaints.count(row.file, codes::FORMULA, "", || formula(row, index));
    }
    // without stopping at the first: many bytes at a time
    let low = row.text.bytes().fold(0, |low, byte| {
        low | u8::from(byte < 0x20) | u8::from(byte == 0x7F)
    });
    let unseen = (low != 0 || !row.text.is_ascii()) && row.text.chars().any(is_unseen);
    if unseen {
        complaints.count(row.file, codes::CONTROL_CHARACTERS, "", || unseen_at(row));
    }
}

fn formula(row: &SurveyRow<'_>, index: usize) -> Diagnostic {
    Diagnostic::warning(
        codes::FORMULA,
        "a spreadsheet may take this cell for a formula: here it was read as text",
        row.excerpt(index),
    )
    .help("begin the cell with a letter or a digit; what is written for spreadsheets here gets an apostrophe in front")
}

/// Characters that cannot be seen and change what is seen: controls, marks that
/// turn the direction of writing, spaces without width.
fn is_unseen(c: char) -> bool {
    let steers = matches!(
        c,
        '\u{200B}'..='\u{200F}' | '\u{202A}'..='\u{202E}' | '\u{2060}'..='\u{2069}' | '\u{FEFF}'
    );
    steers || (c.is_control() && !matches!(c, '\t' | '\n' | '\r'))
}

fn unseen_at(row: &SurveyRow<'_>) -> Diagnostic {
    let at = row.text.char_indices().find(|(_, c)| is_unseen(*c));
    let (start, c) = at.unwrap_or_default();
    Diagnostic::warning(
        codes::CONTROL_CHARACTERS,
        format!(
            "this row holds a character that cannot be seen (U+{:04X}); nothing here obeys it",
            u32::from(c)
        ),
        row.excerpt_of(start..start + c.len_utf8()),
    )
    .help("delete it, or type the cell anew")
}
