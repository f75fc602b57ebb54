//! What a row below the header is: written by hand, or a row of totals, a
//! legend, a signature, or a header once more.

use crate::input::Diagnostic;
use crate::input::folded;
use crate::survey::codes;
use crate::survey::header;
use crate::survey::header::Header;
use crate::survey::header::Layout;
use crate::survey::heading::HeaderColumn;
use crate::survey::row::SurveyRow;

/// What a row is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum RowKind {
    /// The header of this table once more, as on every printed page.
    HeaderAgain,
    /// The header of another table.
    OtherHeader,
    /// Totals, a legend, a signature: no guard.
    Totals,
    /// One of the table's own.
    Written,
}

/// What a row of totals is called. (common practice, no source)
const TOTALS: [&str; 16] = [
    "total",
    "totals",
    "grand total",
    "subtotal",
    "sub-total",
    "sum",
    "average",
    "averages",
    "mean",
    "minimum",
    "maximum",
    "count",
    "summe",
    "durchschnitt",
    "somme",
    "moyenne",
];

/// How a row of words below a table begins. (common practice, no source)
const LEGENDS: [&str; 8] = [
    "signed",
    "signature",
    "checked by",
    "measured by",
    "prepared by",
    "legend",
    "key",
    "notes:",
];

/// What the row is; the same for every reading of the file.
pub(super) fn kind_of(row: &SurveyRow<'_>, header: &Header) -> RowKind {
    if names_a_heading(row, header) {
        return header_kind(row, header);
    }
    let names = [header.guard, header.unit, header.building];
    let mut names = names.into_iter().flatten().map(|column| row.cell(column));
    // most rows end here: no word of either list begins otherwise
    let may_be_one = names.clone().any(|name| {
        let first = name.bytes().next().unwrap_or_default();
        b"tgsamcdlpnk".contains(&first.to_ascii_lowercase())
    });
    // in the column of the guards stands their count
    let is_count = |name: &str| {
        name.bytes()
            .all(|byte| byte.is_ascii_digit() || byte == b'.')
    };
    let is_total = may_be_one
        && names
            .find(|name| !is_count(name))
            .is_some_and(|name| TOTALS.contains(&folded(name.trim_end_matches(':')).as_str()));
    if is_total || looks_down(row, header) || is_a_remark(row, header) {
        RowKind::Totals
    } else {
        RowKind::Written
    }
}

/// Whether a column's cell repeats its heading: few rows do.
fn names_a_heading(row: &SurveyRow<'_>, header: &Header) -> bool {
    let column = match header.layout {
        Layout::Notebook { item, .. } => Some(item),
        Layout::Table => header.guard,
    };
    column.is_some_and(|column| {
        let heading = &header.headings[column];
        row.cell(column).eq_ignore_ascii_case(heading)
    })
}

fn header_kind(row: &SurveyRow<'_>, header: &Header) -> RowKind {
    let same = (0..header.columns.len())
        .all(|column| folded(&row.cell(column)) == folded(&header.headings[column]));
    if same {
        RowKind::HeaderAgain
    } else if header::is_plainly_one(row) {
        RowKind::OtherHeader
    } else {
        RowKind::Written
    }
}

/// Whether a reading of the row is worked out from the rows above.
fn looks_down(row: &SurveyRow<'_>, header: &Header) -> bool {
    if row.sheet.is_none() {
        return false;
    }
    header.columns.iter().enumerate().any(|(index, column)| {
        matches!(column, HeaderColumn::Of(..) | HeaderColumn::Reading(_))
            && row.sheet_cell(index).is_some_and(|cell| cell.looks_down)
    })
}

/// Words below the table, in the columns of names alone: a signature, a legend, `total
/// railings` with their count beside it.
fn is_a_remark(row: &SurveyRow<'_>, header: &Header) -> bool {
    let names = [header.building, header.unit, header.guard];
    let is_name = |index: usize| names.contains(&Some(index));
    // most rows end here
    if !(0..row.width()).all(|index| is_name(index) || row.cell(index).is_empty()) {
        return false;
    }
    let names = names.into_iter().flatten().map(|column| row.cell(column));
    let names: Vec<String> = names
        .map(|name| folded(&name))
        .filter(|name| !name.is_empty())
        .collect();
    let totals = |name: &String| {
        let mut words = name.split([' ', ':']);
        words.any(|word| TOTALS.contains(&word))
    };
    let legend = |name: &String| LEGENDS.iter().any(|word| name.starts_with(word));
    names.first().is_some_and(legend) || names.iter().any(totals)
}

/// What is said of a row of totals.
pub(super) fn totals(row: &SurveyRow<'_>) -> Diagnostic {
    Diagnostic::warning(
        codes::TOTALS,
        "this row was taken for totals, a legend or a signature, and for no guard",
        row.excerpt_whole(),
    )
    .help("if it is a guard, give it another name")
}

/// What is said of the header once more.
pub(super) fn header_again(row: &SurveyRow<'_>) -> Diagnostic {
    Diagnostic::warning(
        codes::SECOND_HEADER,
        "the heading row stands here once more; it was passed over",
        row.excerpt_whole(),
    )
    .help("leave it out")
}

/// What is said of the header of another table.
pub(super) fn other_header(row: &SurveyRow<'_>) -> Diagnostic {
    Diagnostic::error(
        codes::SECOND_HEADER,
        "a second table with other headings begins here",
        row.excerpt_whole(),
    )
    .label("from here on the file was not read")
    .help("put this table into a file or sheet of its own, and name both files")
}
