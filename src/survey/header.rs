//! The header row: which layout a file has, and what each column holds.

use crate::items::DefaultUnitWord;
use crate::items::ItemWord;
use crate::items::NearMiss;
use std::sync::Arc;

use crate::input::Diagnostic;
use crate::input::nearest;
use crate::items::Item;
use crate::quantities::LengthUnit;
use crate::survey::codes;
use crate::survey::names::tidy;
use crate::survey::row::SurveyRow;

/// What a column holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum HeaderColumn {
    Building,
    Guard,
    /// Names of items: the notebook.
    Item,
    /// A misspelt item: what stands there cannot be used.
    Misspelt(Item),
    Note,
    NoteOf(Item),
    /// Readings of one item: the table; with the unit of its heading.
    Of(Item, Option<LengthUnit>),
    /// The person's own.
    Own,
    /// Readings of the row's item: the notebook; with the unit of its heading.
    Reading(Option<LengthUnit>),
    Unit,
}

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
    /// Whether a column is the person's own.
    pub(super) has_own: bool,
    /// How many columns at the beginning hold names only.
    pub(super) names: usize,
}

/// A heading, and where it is no plain one the fault of it.
struct Heading {
    column: HeaderColumn,
    fault: Option<HeadingFault>,
}

enum HeadingFault {
    Misspelt(&'static str),
    Own,
    Several(&'static NearMiss),
    UnknownUnit(String),
}

/// Headings of the columns that are no items, with what else they may be called.
const STRUCTURE: &[(&str, &[&str])] = &[
    ("building", &["block"]),
    ("unit", &["flat", "apartment"]),
    ("guard", &[]),
    ("item", &["observation"]),
    ("reading", &["readings", "value"]),
    (
        "note",
        &["notes", "remark", "remarks", "comment", "comments"],
    ),
];

/// Whether the cells of a first row are a header: a notebook's or a table's.
pub(super) fn makes_sense(row: &SurveyRow<'_>) -> bool {
    let columns = columns(row);
    layout(&columns).is_some()
}

impl Header {
    /// The header in a row, with what is wrong with it; `None` if it is none.
    pub(super) fn read(
        row: &SurveyRow<'_>,
        delimiter: u8,
        faults: &mut Vec<Diagnostic>,
    ) -> Option<Header> {
        let headings = headings(row);
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
            has_own: columns.contains(&HeaderColumn::Own),
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
                .map(|index| tidy(&row.cell(index)).into())
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

fn item_in_a_notebook(row: &SurveyRow<'_>, index: usize, item: Item) -> Diagnostic {
    Diagnostic::warning(
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
        | HeaderColumn::Unit => None,
    };
    columns.iter().enumerate().filter_map(note).collect()
}

/// Two columns with the same meaning where there can be only one: the second is the person's own.
fn columns_with_one_meaning(
    row: &SurveyRow<'_>,
    columns: &mut [HeaderColumn],
    faults: &mut Vec<Diagnostic>,
) {
    for index in 1..columns.len() {
        let column = columns[index];
        if matches!(
            column,
            HeaderColumn::Of(..) | HeaderColumn::Own | HeaderColumn::Misspelt(_)
        ) {
            continue;
        }
        let Some(first) = columns[..index].iter().position(|c| *c == column) else {
            continue;
        };
        let message = format!("two columns are called `{}`", tidy(&row.cell(index)));
        faults.push(
            Diagnostic::error(codes::COLUMN_TWICE, message, row.excerpt(index))
                .also(row.excerpt(first), "the first one")
                .help("leave out one of them, or give it another name"),
        );
        columns[index] = HeaderColumn::Own;
    }
}

/// What to say of a first row that is no header.
pub(super) fn no_header(row: &SurveyRow<'_>) -> Diagnostic {
    let columns = columns(row);
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
    Diagnostic::error(codes::NO_HEADER, message, row.excerpt_whole())
        .label("the rest of the file was not read")
        .help("begin with the row unit,guard,item,reading,note; a table begins with unit,guard and then one item a column")
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

fn columns(row: &SurveyRow<'_>) -> Vec<HeaderColumn> {
    headings(row)
        .into_iter()
        .map(|heading| heading.column)
        .collect()
}

fn headings(row: &SurveyRow<'_>) -> Vec<Heading> {
    let mut names: Vec<String> = (0..row.width())
        .map(|index| tidy(&row.cell(index)).to_lowercase())
        .collect();
    // a spreadsheet adds empty headings at the end; what stands below them is surplus
    while names.last().is_some_and(String::is_empty) {
        names.pop();
    }
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

impl Heading {
    fn plain(column: HeaderColumn) -> Heading {
        Heading {
            column,
            fault: None,
        }
    }

    fn faulty(column: HeaderColumn, fault: HeadingFault) -> Heading {
        Heading {
            column,
            fault: Some(fault),
        }
    }
}

/// What one heading means: `height`, `height (in)`, `note: height`.
fn heading(name: &str) -> Heading {
    if name.is_empty() {
        return Heading::plain(HeaderColumn::Own);
    }
    if let Some(column) = structure(name) {
        return Heading::plain(column);
    }
    if let Some((note, of)) = name.split_once(':')
        && structure(note.trim()) == Some(HeaderColumn::Note)
    {
        return note_of(of.trim());
    }
    match name
        .strip_suffix(')')
        .and_then(|name| name.rsplit_once('('))
    {
        Some((base, unit)) => heading_with_unit(name, base.trim(), unit.trim()),
        None => item_heading(name, None),
    }
}

/// `height (in)`: a heading with a unit of measure.
fn heading_with_unit(name: &str, base: &str, unit: &str) -> Heading {
    let known = length_unit(unit);
    let heading = match structure(base) {
        Some(HeaderColumn::Reading(_)) => Heading::plain(HeaderColumn::Reading(known)),
        Some(_) | None => item_heading(base, known),
    };
    let takes_unit = matches!(
        heading.column,
        HeaderColumn::Of(..) | HeaderColumn::Reading(_)
    );
    match (known, takes_unit) {
        (None, true) => Heading::faulty(heading.column, HeadingFault::UnknownUnit(unit.to_owned())),
        (None, false) => item_heading(name, None),
        (Some(_), _) => heading,
    }
}

fn item_heading(name: &str, unit: Option<LengthUnit>) -> Heading {
    if let Some(item) = Item::by_name(name) {
        return Heading::plain(HeaderColumn::Of(item, unit));
    }
    if let Some(miss) = Item::near_miss_of_name(name) {
        let first = miss.offers.first().and_then(|name| Item::by_name(name));
        let column = first.map_or(HeaderColumn::Own, HeaderColumn::Misspelt);
        return Heading::faulty(column, HeadingFault::Several(miss));
    }
    let structure_names = STRUCTURE.iter().map(|(name, _)| *name);
    let Some(right) = nearest_name(name, structure_names.chain(Item::names())) else {
        return Heading::faulty(HeaderColumn::Own, HeadingFault::Own);
    };
    let column = structure(right).or(Item::by_name(right).map(HeaderColumn::Misspelt));
    Heading::faulty(
        column.unwrap_or(HeaderColumn::Own),
        HeadingFault::Misspelt(right),
    )
}

fn note_of(name: &str) -> Heading {
    if let Some(item) = Item::by_name(name) {
        return Heading::plain(HeaderColumn::NoteOf(item));
    }
    match nearest_name(name, Item::names()) {
        Some(right) => Heading::faulty(HeaderColumn::Own, HeadingFault::Misspelt(right)),
        None => Heading::faulty(HeaderColumn::Own, HeadingFault::Own),
    }
}

/// Longer words are near to nothing, and comparing them takes long.
const LONGEST_WORD: usize = 60;

/// The nearest of these, for words of a likely length.
pub(super) fn nearest_name<'a>(
    word: &str,
    candidates: impl IntoIterator<Item = &'a str>,
) -> Option<&'a str> {
    (word.len() <= LONGEST_WORD)
        .then(|| nearest(word, candidates))
        .flatten()
}

/// A column that is no item's.
fn structure(name: &str) -> Option<HeaderColumn> {
    let (name, _) = STRUCTURE
        .iter()
        .find(|(known, others)| *known == name || others.contains(&name))?;
    match *name {
        "building" => Some(HeaderColumn::Building),
        "unit" => Some(HeaderColumn::Unit),
        "guard" => Some(HeaderColumn::Guard),
        "item" => Some(HeaderColumn::Item),
        "reading" => Some(HeaderColumn::Reading(None)),
        "note" => Some(HeaderColumn::Note),
        _ => None,
    }
}

/// The unit of length of this name.
pub(super) fn length_unit(name: &str) -> Option<LengthUnit> {
    let word = Item::DefaultUnit.word(name)?;
    DefaultUnitWord::by_name(word).map(|unit| match unit {
        DefaultUnitWord::Inch => LengthUnit::Inch,
        DefaultUnitWord::Foot => LengthUnit::Foot,
        DefaultUnitWord::Millimetre => LengthUnit::Millimetre,
        DefaultUnitWord::Centimetre => LengthUnit::Centimetre,
        DefaultUnitWord::Metre => LengthUnit::Metre,
    })
}
