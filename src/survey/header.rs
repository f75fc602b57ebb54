//! The header row: which layout a file has, and what each column holds.

use std::sync::Arc;

use crate::input::Diagnostic;
use crate::items::Item;
use crate::items::Kind;
use crate::quantities::LengthUnit;
use crate::reading::parse;
use crate::survey::codes;
use crate::survey::heading::HeaderColumn;
use crate::survey::heading::Heading;
use crate::survey::heading::HeadingFault;
use crate::survey::heading::heading;
use crate::survey::heading::is_of_an_item;
use crate::survey::heading::length_unit;
use crate::survey::names::tidy;
use crate::survey::row::SurveyRow;

/// The two layouts of a survey.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Layout {
    /// One observation a row.
    Notebook {
        item: usize,
        reading: usize,
        unit: Option<LengthUnit>,
    },
    /// One guard a row.
    Table,
}

/// A header that was understood.
#[derive(Clone, Debug)]
pub(super) struct Header {
    pub(super) columns: Vec<HeaderColumn>,
    pub(super) headings: Vec<Arc<str>>,
    pub(super) layout: Layout,
    pub(super) building: Option<usize>,
    pub(super) unit: Option<usize>,
    pub(super) guard: Option<usize>,
    pub(super) note: Option<usize>,
    /// Columns of notes of one item, each item once.
    pub(super) notes: Vec<(Item, usize)>,
    pub(super) delimiter: u8,
    /// Whether cells stand beside what a notebook's row says.
    pub(super) has_more: bool,
    /// How many columns at the beginning hold names only.
    pub(super) names: usize,
}

/// Whether the cells of a first row are a header: a notebook's or a table's.
pub(super) fn makes_sense(row: &SurveyRow<'_>) -> bool {
    layout(&columns(&names(row))).is_some()
}

/// Whether a row below the first is a header beyond doubt: an item that is spelt
/// right, and no more columns of the person's own than others.
pub(super) fn is_plainly_one(row: &SurveyRow<'_>) -> bool {
    let names = names(row);
    let columns = columns(&names);
    let known = |(column, name): &(&HeaderColumn, &String)| match column {
        HeaderColumn::Own | HeaderColumn::Misspelt(_) | HeaderColumn::Twice => false,
        HeaderColumn::Building
        | HeaderColumn::Guard
        | HeaderColumn::Item
        | HeaderColumn::Note
        | HeaderColumn::NoteOf(_)
        | HeaderColumn::Of(..)
        | HeaderColumn::Reading(_)
        | HeaderColumn::Unit => !name.is_empty(),
    };
    let filled = names.iter().filter(|name| !name.is_empty()).count();
    let known = columns.iter().zip(&names).filter(known).count();
    layout(&columns).is_some() && known >= 2 && known * 2 >= filled
}

/// Whether a row could be the first of two rows of headings: it has a column of
/// guards, and items may stand below.
pub(super) fn may_begin_one(row: &SurveyRow<'_>) -> bool {
    let columns = columns(&names(row));
    columns.contains(&HeaderColumn::Guard) && columns.len() > 1
}

/// The headings of two rows as one, where the second row holds units or the
/// headings of columns that the first one groups; `None` where it is no heading.
pub(super) fn joined_with(first: &SurveyRow<'_>, second: &SurveyRow<'_>) -> Option<Vec<String>> {
    let (above, below) = (names(first), names(second));
    let columns = columns(&above);
    let mut joined = Vec::with_capacity(above.len().max(below.len()));
    let mut group = "";
    let (mut units, mut items) = (0, 0);
    for index in 0..above.len().max(below.len()) {
        let above = above.get(index).map_or("", String::as_str);
        let below = below.get(index).map_or("", String::as_str);
        if !above.is_empty() {
            group = above;
        }
        // a heading merged over both rows
        let below = if below == above { "" } else { below };
        let column = columns.get(index);
        if below.is_empty() {
            joined.push(above.to_owned());
            continue;
        }
        let unit = length_unit(below.trim_matches(['(', ')', '[', ']', ' ']));
        match (column, unit) {
            (Some(HeaderColumn::Building | HeaderColumn::Unit | HeaderColumn::Guard), _) => {
                return None;
            }
            (Some(HeaderColumn::Of(..) | HeaderColumn::Reading(_)), Some(_)) => {
                units += 1;
                joined.push(format!(
                    "{above} ({})",
                    below.trim_matches(['(', ')', '[', ']'])
                ));
            }
            (_, _) => {
                let both = format!("{group} {below}");
                let taken = if is_of_an_item(below) {
                    items += 1;
                    below.to_owned()
                } else if is_of_an_item(&both) {
                    items += 1;
                    both
                } else if above.is_empty() && !below.starts_with(|c: char| c.is_ascii_digit()) {
                    both
                } else {
                    return None;
                };
                joined.push(taken);
            }
        }
    }
    let alone = layout(&columns).is_some();
    let together = layout(&self::columns(&joined)).is_some();
    let second_is_one = (units > 0 && items == 0) || (items > 0 && !alone) || items > 1;
    (together && second_is_one).then_some(joined)
}

impl Header {
    /// The header in a row, with what is wrong with it; `None` if it is none.
    ///
    /// `joined` are the headings of two rows, where there are two.
    pub(super) fn read(
        row: &SurveyRow<'_>,
        joined: Option<&[String]>,
        delimiter: u8,
        faults: &mut Vec<Diagnostic>,
    ) -> Option<Header> {
        let names = joined.map_or_else(|| names(row), <[String]>::to_vec);
        let headings = headings(&names);
        let mut columns: Vec<HeaderColumn> =
            headings.iter().map(|heading| heading.column).collect();
        let layout = layout(&columns)?;
        columns_with_one_meaning(row, &mut columns, faults);
        for (index, heading) in headings.iter().enumerate() {
            faults.extend(
                heading
                    .fault
                    .as_ref()
                    .map(|fault| fault.diagnostic(row, index)),
            );
        }
        if let Layout::Notebook { .. } = layout {
            for (index, column) in columns.iter_mut().enumerate() {
                if let HeaderColumn::Of(item, _) = *column {
                    faults.push(item_in_a_notebook(row, index, item));
                    *column = if is_read_by_no_rule(item) {
                        HeaderColumn::Own
                    } else {
                        HeaderColumn::Misspelt(item)
                    };
                } else if let HeaderColumn::NoteOf(_) = *column {
                    // whatever item the row speaks of: kept as it stands
                    *column = HeaderColumn::Own;
                }
            }
        }
        let place = |wanted: HeaderColumn| columns.iter().position(|column| *column == wanted);
        Some(Header {
            layout,
            building: place(HeaderColumn::Building),
            unit: place(HeaderColumn::Unit),
            guard: place(HeaderColumn::Guard),
            note: place(HeaderColumn::Note),
            notes: notes(&columns),
            delimiter,
            has_more: columns.iter().any(|column| column.is_beside_a_notebook()),
            names: columns
                .iter()
                .take_while(|c| {
                    matches!(
                        c,
                        HeaderColumn::Building | HeaderColumn::Unit | HeaderColumn::Guard
                    )
                })
                .count(),
            headings: (0..columns.len())
                .map(|index| match joined {
                    Some(names) => names[index].as_str().into(),
                    None => tidy(&row.cell(index)).into(),
                })
                .collect(),
            columns,
        })
    }
}

impl Header {
    /// The column of notes; where there is none, the one behind the last: a row's
    /// surplus text is a note.
    pub(super) fn note_column(&self) -> usize {
        self.note.unwrap_or(self.columns.len())
    }
}

impl HeadingFault {
    fn diagnostic(&self, row: &SurveyRow<'_>, index: usize) -> Diagnostic {
        let at = row.excerpt(index);
        let written = row.cell(index);
        let written = tidy(&written);
        match self {
            HeadingFault::Misspelt(right) => Diagnostic::error(
                codes::NEARLY_A_HEADING,
                format!("the heading `{written}` is none, but nearly `{right}`"),
                at,
            )
            .help(format!("write {right}")),
            HeadingFault::Several(miss) => Diagnostic::error(
                codes::NEARLY_A_HEADING,
                format!("the heading `{written}` may mean several items"),
                at,
            )
            .help(miss.says),
            HeadingFault::Own => Diagnostic::warning(
                codes::OWN_HEADING,
                format!("the column `{written}` is your own: no rule reads it"),
                at,
            )
            .help("type `guardrule items` to see the headings that rules read"),
            HeadingFault::UnknownUnit(unit) => Diagnostic::error(
                codes::HEADING_UNIT,
                format!("`{unit}` in the heading `{written}` is no unit of measure known here"),
                at,
            )
            .help("write in, ft, mm, cm or m in the brackets, or the unit with each reading"),
        }
    }
}

/// Whether nothing of the judging is lost where it stands apart: a date, a photograph.
fn is_read_by_no_rule(item: Item) -> bool {
    item.is_survey_fact() || item.info().kind == Kind::Text
}

fn item_in_a_notebook(row: &SurveyRow<'_>, index: usize, item: Item) -> Diagnostic {
    let make = if is_read_by_no_rule(item) {
        Diagnostic::warning
    } else {
        Diagnostic::error
    };
    make(
        codes::OWN_HEADING,
        format!(
            "a file with the columns `item` and `reading` has no column `{item}`: no rule reads it"
        ),
        row.excerpt(index),
    )
    .help(format!(
        "write {item} in the column `item`, and what you found beside it"
    ))
}

fn notes(columns: &[HeaderColumn]) -> Vec<(Item, usize)> {
    let note = |(index, column): (usize, &HeaderColumn)| match column {
        HeaderColumn::NoteOf(item) => Some((*item, index)),
        HeaderColumn::Building
        | HeaderColumn::Guard
        | HeaderColumn::Item
        | HeaderColumn::Misspelt(_)
        | HeaderColumn::Note
        | HeaderColumn::Of(..)
        | HeaderColumn::Own
        | HeaderColumn::Reading(_)
        | HeaderColumn::Twice
        | HeaderColumn::Unit => None,
    };
    columns.iter().enumerate().filter_map(note).collect()
}

/// Two columns with the same meaning where there can be only one: which of them a row
/// means, nobody can tell. A second column of notes is the person's own.
fn columns_with_one_meaning(
    row: &SurveyRow<'_>,
    columns: &mut [HeaderColumn],
    faults: &mut Vec<Diagnostic>,
) {
    for index in 1..columns.len() {
        let column = columns[index];
        if matches!(
            column,
            HeaderColumn::Of(..)
                | HeaderColumn::Own
                | HeaderColumn::Misspelt(_)
                | HeaderColumn::Twice
        ) {
            continue;
        }
        let Some(first) = columns[..index]
            .iter()
            .position(|c| c.means_the_same(column))
        else {
            continue;
        };
        let message = format!("two columns are called `{}`", tidy(&row.cell(index)));
        faults.push(
            Diagnostic::error(codes::COLUMN_TWICE, message, row.excerpt(index))
                .also(row.excerpt(first), "the first one")
                .help("leave out one of them, or give it another name"),
        );
        columns[index] = match column {
            HeaderColumn::Note | HeaderColumn::NoteOf(_) => HeaderColumn::Own,
            HeaderColumn::Building
            | HeaderColumn::Guard
            | HeaderColumn::Item
            | HeaderColumn::Misspelt(_)
            | HeaderColumn::Of(..)
            | HeaderColumn::Own
            | HeaderColumn::Reading(_)
            | HeaderColumn::Twice
            | HeaderColumn::Unit => HeaderColumn::Twice,
        };
    }
}

/// What to say of a first row that is no header.
pub(super) fn no_header(row: &SurveyRow<'_>) -> Diagnostic {
    let columns = columns(&names(row));
    let has = |wanted: fn(&HeaderColumn) -> bool| columns.iter().any(wanted);
    let message = match (
        has(|c| *c == HeaderColumn::Item),
        has(|c| matches!(c, HeaderColumn::Reading(_))),
        has(|c| *c == HeaderColumn::Guard),
    ) {
        (true, false, _) => "the header has a column `item` and no column `reading`",
        (false, true, _) => "the header has a column `reading` and no column `item`",
        (false, false, true) => "the header has a column `guard` and no item beside it",
        (_, _, _) => {
            "the first row is no header: it names no columns `item` and `reading`, and no column `guard`"
        }
    };
    if let Some(header) = header_for_data(row) {
        let message = "the first row is a reading already, and no header stands above it";
        return Diagnostic::error(codes::NO_HEADER, message, row.excerpt_whole())
            .label("the file was not read")
            .help(format!("write this row above it: {header}"));
    }
    Diagnostic::error(codes::NO_HEADER, message, row.excerpt_whole())
        .label("the rest of the file was not read")
        .help("begin with the row unit,guard,item,reading,note; a table begins with unit,guard and then one item a column")
}

/// The header that a first row of readings lacks: one cell names an item, a
/// reading of it follows, and names stand before it.
fn header_for_data(row: &SurveyRow<'_>) -> Option<String> {
    let item = (0..row.width()).find(|index| {
        let known = Item::by_name(&row.cell(*index));
        known.is_some_and(|item| parse(item, &row.cell(index + 1), Some(LengthUnit::Inch)).is_ok())
    })?;
    let names: &[&str] = match item {
        0 => &[],
        1 => &["guard"],
        2 => &["unit", "guard"],
        3 => &["building", "unit", "guard"],
        _ => return None,
    };
    let rest: &[&str] = match row.width() - item {
        2 => &["item", "reading"],
        3 => &["item", "reading", "note"],
        _ => return None,
    };
    Some([names, rest].concat().join(","))
}

/// Notebook or table; `None` if the columns are neither's.
fn layout(columns: &[HeaderColumn]) -> Option<Layout> {
    let item = columns.iter().position(|c| *c == HeaderColumn::Item);
    let reading = columns
        .iter()
        .position(|c| matches!(c, HeaderColumn::Reading(_)));
    match (item, reading) {
        (Some(item), Some(reading)) => {
            let unit = match columns[reading] {
                HeaderColumn::Reading(unit) => unit,
                HeaderColumn::Building
                | HeaderColumn::Guard
                | HeaderColumn::Item
                | HeaderColumn::Misspelt(_)
                | HeaderColumn::Note
                | HeaderColumn::NoteOf(_)
                | HeaderColumn::Of(..)
                | HeaderColumn::Own
                | HeaderColumn::Twice
                | HeaderColumn::Unit => None,
            };
            Some(Layout::Notebook {
                item,
                reading,
                unit,
            })
        }
        (Some(_), None) | (None, Some(_)) => None,
        (None, None) => {
            let any_item = columns
                .iter()
                .any(|c| matches!(c, HeaderColumn::Of(..) | HeaderColumn::Misspelt(_)));
            let guard = columns.contains(&HeaderColumn::Guard);
            (guard && any_item).then_some(Layout::Table)
        }
    }
}

fn columns(names: &[String]) -> Vec<HeaderColumn> {
    headings(names)
        .into_iter()
        .map(|heading| heading.column)
        .collect()
}

/// The cells of a row as headings are compared.
fn names(row: &SurveyRow<'_>) -> Vec<String> {
    let mut names: Vec<String> = (0..row.width())
        .map(|index| tidy(&row.cell(index)).to_lowercase())
        .collect();
    // a spreadsheet adds empty headings at the end; what stands below them is surplus
    while names.last().is_some_and(String::is_empty) {
        names.pop();
    }
    names
}

fn headings(names: &[String]) -> Vec<Heading> {
    // the column `guard` holds the guards' names; a second one says whether there is a guard
    let guard = names.iter().position(|name| name == "guard").or_else(|| {
        names
            .iter()
            .position(|name| Item::by_name(name) == Some(Item::Guard))
    });
    names
        .iter()
        .enumerate()
        .map(|(index, name)| {
            if Some(index) == guard {
                Heading::plain(HeaderColumn::Guard)
            } else if guard.is_some() && Item::by_name(name) == Some(Item::Guard) {
                Heading::plain(HeaderColumn::Of(Item::Guard, None))
            } else {
                heading(name)
            }
        })
        .collect()
}
