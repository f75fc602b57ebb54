//! What one heading means: an item, its unit, a column of names or notes.

use crate::input::nearest;
use crate::items::DefaultUnitWord;
use crate::items::Item;
use crate::items::ItemWord;
use crate::items::NearMiss;
use crate::quantities::LengthUnit;

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
    /// A second column where there can be only one: kept, and no row that fills it is understood.
    Twice,
    Unit,
}

/// A heading, and where it is no plain one the fault of it.
pub(super) struct Heading {
    pub(super) column: HeaderColumn,
    pub(super) fault: Option<HeadingFault>,
}

/// What is wrong with a heading.
pub(super) enum HeadingFault {
    Misspelt(&'static str),
    Own,
    Several(&'static NearMiss),
    UnknownUnit(String),
}

/// Headings of the columns that are no items, with what else they may be called.
const STRUCTURE: &[(&str, &[&str])] = &[
    ("building", &["block", "house"]),
    ("unit", &["flat", "apartment"]),
    ("guard", &[]),
    ("item", &["observation"]),
    ("reading", &["readings", "value"]),
    (
        "note",
        &["notes", "remark", "remarks", "comment", "comments"],
    ),
];

impl HeaderColumn {
    /// Whether two columns hold the same, whatever unit their headings name.
    pub(super) fn means_the_same(self, other: HeaderColumn) -> bool {
        match (self, other) {
            (HeaderColumn::Reading(_), HeaderColumn::Reading(_)) => true,
            (_, _) => self == other,
        }
    }

    /// Whether its cells say something beside a notebook's item, reading and note.
    pub(super) fn is_beside_a_notebook(self) -> bool {
        matches!(
            self,
            HeaderColumn::Misspelt(_) | HeaderColumn::Own | HeaderColumn::Twice
        )
    }
}

impl Heading {
    pub(super) fn plain(column: HeaderColumn) -> Heading {
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
pub(super) fn heading(name: &str) -> Heading {
    understood(name, item_heading)
}

/// Whether a heading is that of an item, spelt right. Cheap: it looks for no near word, and
/// may be asked of every cell of a row.
pub(super) fn is_of_an_item(name: &str) -> bool {
    let spelt_right = |name: &str, unit| {
        let item = Item::by_name(name).map(|item| HeaderColumn::Of(item, unit));
        Heading::plain(item.unwrap_or(HeaderColumn::Own))
    };
    matches!(understood(name, spelt_right).column, HeaderColumn::Of(..))
}

/// What a heading means, its item read by `item`.
fn understood(name: &str, item: fn(&str, Option<LengthUnit>) -> Heading) -> Heading {
    let plain = punctuation_left_out(name);
    let name = plain.as_str();
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
    match base_and_unit(name) {
        Some((base, unit)) => heading_with_unit(name, &punctuation_left_out(base), unit, item),
        None => item(name, None),
    }
}

/// A heading without what is not part of its words: `Bottom_gap:`, `height*`.
fn punctuation_left_out(name: &str) -> String {
    let ends = name.trim_end_matches([':', '.', '*', '?', '!', ',', ';', ' ']);
    let words = ends.trim_start_matches(['#', '*', ' ']).replace('_', " ");
    // few columns are no item's: they are looked through first
    if structure(&words).is_some() || Item::by_name(&words).is_some() {
        return words;
    }
    let spaced = words.replace('-', " ");
    if Item::by_name(&spaced).is_some() {
        return spaced;
    }
    words
}

/// The unit of a heading and what stands before it: `height (in)`, `[in]`, `, in`,
/// `/ mm`, `in inches`, `height mm`, `height "`.
fn base_and_unit(name: &str) -> Option<(&str, &str)> {
    for (open, close) in [('(', ')'), ('[', ']')] {
        if let Some((base, unit)) = name
            .strip_suffix(close)
            .and_then(|name| name.rsplit_once(open))
        {
            return Some((base.trim(), unit.trim().trim_end_matches('.')));
        }
    }
    for between in [",", "/", " in ", " - ", ":"] {
        if let Some((base, unit)) = name.rsplit_once(between)
            && length_unit(unit.trim()).is_some()
        {
            return Some((base.trim(), unit.trim()));
        }
    }
    if let Some((base, unit)) = name.rsplit_once(' ')
        && length_unit(unit).is_some()
        && Item::by_name(name).is_none()
    {
        return Some((base.trim(), unit));
    }
    let base = name.strip_suffix(['"', '\u{2033}', '\u{201D}'])?.trim();
    Item::by_name(base).is_some().then_some((base, "in"))
}

/// `height (in)`: a heading with a unit of measure.
fn heading_with_unit(
    name: &str,
    base: &str,
    unit: &str,
    item: fn(&str, Option<LengthUnit>) -> Heading,
) -> Heading {
    let known = length_unit(unit);
    let heading = match structure(base) {
        Some(HeaderColumn::Reading(_)) => Heading::plain(HeaderColumn::Reading(known)),
        Some(_) | None => item(base, known),
    };
    let takes_unit = matches!(
        heading.column,
        HeaderColumn::Of(..) | HeaderColumn::Reading(_)
    );
    match (known, takes_unit) {
        (None, true) => Heading::faulty(heading.column, HeadingFault::UnknownUnit(unit.to_owned())),
        (None, false) => item(name, None),
        (Some(_), _) => heading,
    }
}

fn item_heading(name: &str, unit: Option<LengthUnit>) -> Heading {
    if let Some(item) = Item::by_name(name) {
        return Heading::plain(HeaderColumn::Of(item, unit));
    }
    if let Some(miss) = Item::near_miss_of_name(name) {
        return one_of(miss);
    }
    let structure_names = STRUCTURE.iter().map(|(name, _)| *name);
    let Some(right) = nearest_name(name, structure_names.chain(Item::names())) else {
        return match Item::holding_a_word_of_one(name) {
            Some(miss) => one_of(miss),
            None => Heading::faulty(HeaderColumn::Own, HeadingFault::Own),
        };
    };
    let column = structure(right).or(Item::by_name(right).map(HeaderColumn::Misspelt));
    Heading::faulty(
        column.unwrap_or(HeaderColumn::Own),
        HeadingFault::Misspelt(right),
    )
}

/// A heading that means one of several items; the first of them is lost.
fn one_of(miss: &'static NearMiss) -> Heading {
    let column = miss
        .item()
        .map_or(HeaderColumn::Own, HeaderColumn::Misspelt);
    Heading::faulty(column, HeadingFault::Several(miss))
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
