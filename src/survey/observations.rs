//! From an entry to observations, with what is wrong with its reading.

use std::sync::Arc;

use crate::input::Code;
use crate::input::Diagnostic;
use crate::items::Item;
use crate::quantities::LengthUnit;
use crate::reading::ReadingError;
use crate::reading::looks_like_a_date;
use crate::reading::parse;
use crate::survey::Observation;
use crate::survey::codes;
use crate::survey::complaints::Complaints;
use crate::survey::entries::EntrySubject;
use crate::survey::entries::RowEntry;
use crate::survey::header::Header;
use crate::survey::header::Layout;
use crate::survey::heading::HeaderColumn;
use crate::survey::heading::length_unit;
use crate::survey::readings::Readings;
use crate::survey::row::SurveyRow;
use crate::survey::sheet::CellDoubt;

/// Whether what an entry says could be used.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum EntryOutcome {
    InError,
    Used,
}

/// Where a row without or with a guard belongs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Level {
    Guard,
    Survey,
    Unit,
}

/// What an item's entry in a row gives: its observations, added to `into`.
pub(super) struct Observer {
    readings: Readings,
}

impl Observer {
    pub(super) fn new() -> Observer {
        Observer {
            readings: Readings::default(),
        }
    }

    /// Reads an entry of an item. What cannot be read becomes an observation
    /// without a reading: it counts as unknown, and is never inherited instead.
    pub(super) fn observe(
        &mut self,
        (row, header): (&SurveyRow<'_>, &Header),
        entry: &RowEntry<'_>,
        item: Item,
        unit: Option<LengthUnit>,
        complaints: &mut Complaints,
        into: &mut Vec<Observation>,
    ) -> EntryOutcome {
        let cell = row.sheet_cell(entry.cell);
        let doubt = cell.and_then(|cell| cell.doubt.as_ref());
        if let Some(doubt) = doubt.filter(|doubt| doubt.bears_on(item)) {
            complaints.push(cell_in_doubt(row, entry.cell, item.name(), doubt));
            into.push(lost_observation(row, entry, item));
            return EntryOutcome::InError;
        }
        let unit = entry.unit.or(unit);
        let observation = |written: &Arc<str>, reading| Observation {
            item,
            written: Arc::clone(written),
            reading,
            note: Arc::clone(&entry.note),
            row: row.at,
            column: entry.column(),
        };
        match self.readings.understand(item, &entry.text, unit) {
            Ok(understood) => {
                for reading in understood.readings() {
                    into.push(observation(&understood.written, Some(Arc::clone(reading))));
                }
                for caution in &understood.cautions {
                    complaints.push(unusual(row, entry.cell, item, caution));
                }
                EntryOutcome::Used
            }
            Err(error) => {
                unreadable((row, header), entry, (item, unit), error, complaints);
                into.push(observation(&(&*entry.text).into(), None));
                EntryOutcome::InError
            }
        }
    }

    /// Whether an entry can be read, but only with a default unit.
    pub(super) fn lacks_unit(&mut self, entry: &RowEntry<'_>) -> bool {
        let EntrySubject::Item(item) = entry.subject else {
            return false;
        };
        let mut readable = |unit| self.readings.understand(item, &entry.text, unit).is_ok();
        entry.unit.is_none()
            && item.info().kind.holds_a_length()
            && !readable(None)
            && readable(Some(LengthUnit::Inch))
    }
}

/// A spreadsheet's cell whose value is not what was read at the guard.
pub(super) fn cell_in_doubt(
    row: &SurveyRow<'_>,
    cell: usize,
    what: &str,
    doubt: &CellDoubt,
) -> Diagnostic {
    let code = match doubt {
        CellDoubt::Date(_) | CellDoubt::Time(_) => codes::SPREADSHEET_DATE,
        CellDoubt::Error
        | CellDoubt::Merged(_)
        | CellDoubt::Money
        | CellDoubt::NoResult(_)
        | CellDoubt::Percent
        | CellDoubt::StruckOut => codes::SHEET_CELL,
    };
    let (message, help) = doubt.says(&row.cell(cell));
    Diagnostic::error(code, format!("{what}: {message}"), row.excerpt(cell))
        .label("not read")
        .help(help)
}

/// An observation of what was said to be unusable elsewhere.
pub(super) fn lost_observation(
    row: &SurveyRow<'_>,
    entry: &RowEntry<'_>,
    item: Item,
) -> Observation {
    Observation {
        item,
        written: (&*entry.text).into(),
        reading: None,
        note: Arc::clone(&entry.note),
        row: row.at,
        column: entry.column(),
    }
}

fn unusual(row: &SurveyRow<'_>, cell: usize, item: Item, caution: &str) -> Diagnostic {
    let message = format!("{item}: {}", caution.trim_end_matches('.'));
    Diagnostic::warning(codes::CAUTION, message, row.excerpt(cell))
        .help("it was read as it stands; if it is right, there is nothing to do")
}

fn unreadable(
    (row, header): (&SurveyRow<'_>, &Header),
    entry: &RowEntry<'_>,
    (item, unit): (Item, Option<LengthUnit>),
    error: ReadingError,
    complaints: &mut Complaints,
) {
    if let Some(meant) =
        rounded_sixteenth(&entry.text).filter(|_| item.info().kind.holds_a_length())
    {
        complaints.push(rounded_fraction(row, entry, item, &meant));
        return;
    }
    // where a unit is in force, the number itself is what cannot be
    if unit.is_none() && is_bare_number(&entry.text) && item.info().kind.holds_a_length() {
        let alike = match header.layout {
            // one answer holds for all of them
            Layout::Notebook { .. } => "",
            Layout::Table => item.name(),
        };
        complaints.count(row.file, codes::BARE_NUMBER, alike, || {
            bare_number((row, header), entry, item)
        });
        return;
    }
    if looks_like_a_time_of_day(&entry.text) && item.info().kind.holds_a_length() {
        complaints.push(time_of_day(row, entry, item));
        return;
    }
    let code = if looks_like_a_date(&entry.text) && item.info().kind.holds_a_length() {
        codes::SPREADSHEET_DATE
    } else {
        codes::UNREADABLE
    };
    let start: String = entry.text.chars().take(ALIKE).collect();
    complaints.count(row.file, code, &format!("{item} {start}"), || {
        let mut diagnostic = cannot_be_read(row, entry, item, code, error);
        if let Some(rows) = one_row_each(row, header, entry, item) {
            diagnostic.help = Some(format!("write one row for each: {rows}"));
        }
        diagnostic
    });
}

/// Several readings in a cell of a notebook, as rows: the unit behind the last
/// one is that of all.
fn one_row_each(
    row: &SurveyRow<'_>,
    header: &Header,
    entry: &RowEntry<'_>,
    item: Item,
) -> Option<String> {
    let Layout::Notebook { .. } = header.layout else {
        return None;
    };
    let parts: Vec<&str> = entry.text.split(';').map(str::trim).collect();
    let unit = parts
        .last()?
        .rsplit(' ')
        .next()
        .filter(|unit| length_unit(unit).is_some());
    if parts.len() < 2 || parts.len() > MOST_PARTS {
        return None;
    }
    let whole = |part: &str| -> Option<String> {
        let with_unit = unit.map(|unit| format!("{part} {unit}"));
        [Some(part.to_owned()), with_unit]
            .into_iter()
            .flatten()
            .find(|text| parse(item, text, None).is_ok())
    };
    let rows: Option<Vec<String>> = parts
        .iter()
        .map(|part| Some(row.mended(entry.cell..entry.cell + 1, &whole(part)?)))
        .collect();
    Some(rows?.join("   and   "))
}

/// Of more readings in a cell no rows are made.
const MOST_PARTS: usize = 6;

/// `36 8/9`: of all sixteenths a format of one digit makes ninths, fifths and
/// thirds, and none of those is a mark of a tape; what may have been written.
fn rounded_sixteenth(text: &str) -> Option<String> {
    const ROUNDED: [(&str, &str); 8] = [
        ("1/9", "1/16"),
        ("1/5", "3/16"),
        ("1/3", "5/16"),
        ("4/9", "7/16"),
        ("5/9", "9/16"),
        ("2/3", "11/16"),
        ("4/5", "13/16"),
        ("8/9", "15/16"),
    ];
    let text = text
        .trim()
        .trim_end_matches("in")
        .trim_end_matches('"')
        .trim_end();
    let (whole, fraction) = text.rsplit_once([' ', '-']).unwrap_or(("", text));
    let (_, sixteenth) = ROUNDED.iter().find(|(shown, _)| *shown == fraction)?;
    let digits = whole.bytes().all(|byte| byte.is_ascii_digit());
    digits.then(|| format!("{whole} {sixteenth} in").trim_start().to_owned())
}

fn rounded_fraction(
    row: &SurveyRow<'_>,
    entry: &RowEntry<'_>,
    item: Item,
    meant: &str,
) -> Diagnostic {
    let message = format!(
        "{item}: `{}` is no mark of a tape: a spreadsheet may have rounded it when it was shown",
        entry.text
    );
    Diagnostic::error(codes::SPREADSHEET_DATE, message, row.excerpt(entry.cell)).help(format!(
        "it may have been {meant}: look at the cell, or give the spreadsheet itself to check"
    ))
}

fn time_of_day(row: &SurveyRow<'_>, entry: &RowEntry<'_>, item: Item) -> Diagnostic {
    let message = format!(
        "{item}: `{}` is a time of day; a spreadsheet seems to have made it of a reading",
        entry.text
    );
    Diagnostic::error(codes::SPREADSHEET_DATE, message, row.excerpt(entry.cell))
        .help("format the column as text, and write the reading again, such as 2 ft 11 in")
}

/// `02:11:00 AM`, `2:11:00`: with seconds or the half of the day, no slope.
fn looks_like_a_time_of_day(text: &str) -> bool {
    let upper = text.trim().to_uppercase();
    let bare = upper
        .trim_end_matches("AM")
        .trim_end_matches("PM")
        .trim_end();
    let parts: Vec<&str> = bare.split(':').collect();
    let digits = parts
        .iter()
        .all(|part| !part.is_empty() && part.bytes().all(|byte| byte.is_ascii_digit()));
    digits && (parts.len() == 3 || (parts.len() == 2 && bare.len() < upper.len()))
}

/// How many letters make two unreadable readings the same fault.
const ALIKE: usize = 100;

fn cannot_be_read(
    row: &SurveyRow<'_>,
    entry: &RowEntry<'_>,
    item: Item,
    code: Code,
    error: ReadingError,
) -> Diagnostic {
    let start = row.range(entry.cell).start;
    // the error's place is known within the cell where the cell is plain text
    let plain = row.text.get(start..start + entry.text.len()) == Some(&*entry.text);
    let at = if plain && !error.span.is_empty() {
        row.excerpt_of(start + error.span.start..start + error.span.end)
    } else {
        row.excerpt(entry.cell)
    };
    let mut diagnostic = Diagnostic::error(code, format!("{item}: {}", error.message), at);
    diagnostic.help = error.help.or_else(|| {
        let examples = item.info().examples.join(", or ");
        Some(format!("write it like this: {examples}"))
    });
    diagnostic
}

/// A number alone: `36`, `35 1/2`, `35½`, `90,2`.
fn is_bare_number(text: &str) -> bool {
    let numeral = |c: char| {
        c.is_ascii_digit() || matches!(c, ' ' | '.' | ',' | '/' | '-' | '¼'..='¾' | '⅐'..='⅞' | '⁄')
    };
    text.starts_with(|c: char| c.is_ascii_digit() || !c.is_ascii())
        && text.chars().all(numeral)
        && !looks_like_a_date(text)
}

fn bare_number(
    (row, header): (&SurveyRow<'_>, &Header),
    entry: &RowEntry<'_>,
    item: Item,
) -> Diagnostic {
    let text = &entry.text;
    let cells = entry.cell..entry.cell + 1;
    let whole = row.cell(entry.cell);
    let (symbol, spelt) = likely_unit(item, text);
    let mended = row.mended(cells, &whole.replace(&**text, &format!("{text} {symbol}")));
    let once = match header.columns.get(entry.cell) {
        Some(HeaderColumn::Of(..)) => format!("here or in the heading as {item} ({symbol})"),
        Some(_) | None => {
            "here or once for the file in a row with the item default unit".to_owned()
        }
    };
    Diagnostic::error(
        codes::BARE_NUMBER,
        format!("{item}: `{text}` has no unit of measure"),
        row.excerpt(entry.cell),
    )
    .help(format!(
        "write the unit that was read, {once}; in {spelt}: {mended}"
    ))
}

/// The unit in which a bare number would be a usual reading: inches, unless
/// only another one makes sense.
fn likely_unit(item: Item, text: &str) -> (&'static str, &'static str) {
    let known = [
        ("in", "inches"),
        ("mm", "millimetres"),
        ("cm", "centimetres"),
    ];
    let usual = |symbol: &str| {
        parse(item, &format!("{text} {symbol}"), None).is_ok_and(|read| read.cautions.is_empty())
    };
    known
        .into_iter()
        .find(|(symbol, _)| usual(symbol))
        .unwrap_or(known[0])
}

/// Why an item does not belong into a row.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Misplaced {
    HoldsForAll,
    NeedsGuard,
}

/// Why an item does not belong into a row of this level, if it does not.
pub(super) fn misplaced(level: Level, item: Item) -> Option<Misplaced> {
    if item.is_circumstance() || matches!(item, Item::Date | Item::By) {
        return None;
    }
    match (level, item.is_at_guard()) {
        (Level::Guard, true) | (Level::Survey, false) => None,
        (Level::Survey | Level::Unit, true) => Some(Misplaced::NeedsGuard),
        (Level::Guard | Level::Unit, false) => Some(Misplaced::HoldsForAll),
    }
}

/// A guard's item in a row without guard.
pub(super) fn guard_missing(
    row: &SurveyRow<'_>,
    header: &Header,
    item: Item,
    above: Option<&str>,
) -> Diagnostic {
    let message = format!("`{item}` is seen or measured at a guard, and this row names none");
    let help = match above {
        Some(above) => {
            format!("a blank cell is not \"the same as above\": write {above} again if it is meant")
        }
        None => "write the guard's name into the column guard".to_owned(),
    };
    let at = match header.guard {
        Some(guard) if guard < row.width() => row.excerpt(guard),
        Some(_) | None => row.excerpt_whole(),
    };
    let at = if at.marked().is_empty() {
        row.excerpt_whole()
    } else {
        at
    };
    Diagnostic::error(codes::GUARD_MISSING, message, at).help(help)
}

/// A fact of the whole survey in a row of a unit or guard.
pub(super) fn wrong_level(row: &SurveyRow<'_>, entry: &RowEntry<'_>, item: Item) -> Diagnostic {
    Diagnostic::error(
        codes::WRONG_LEVEL,
        format!("`{item}` holds for the whole file or survey, not for one unit or guard"),
        row.excerpt(entry.cell),
    )
    .help("write it in a row of its own, with building, unit and guard left blank")
}
