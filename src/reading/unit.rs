//! Units of length as people write them.

use crate::quantities::LengthUnit;
use crate::reading::error::ReadingError;
use crate::reading::error::quoted;
use crate::reading::error::shown;
use crate::reading::tokens::Cursor;
use crate::reading::tokens::Lexeme;

/// Every unit, the likeliest first where one is to be suggested.
pub(super) const UNITS: [LengthUnit; 5] = [
    LengthUnit::Millimetre,
    LengthUnit::Centimetre,
    LengthUnit::Inch,
    LengthUnit::Foot,
    LengthUnit::Metre,
];

/// The names of a unit, its symbol first.
const fn names(unit: LengthUnit) -> &'static [&'static str] {
    match unit {
        LengthUnit::Centimetre => &[
            "cm",
            "cms",
            "centimetre",
            "centimetres",
            "centimeter",
            "centimeters",
        ],
        LengthUnit::Foot => &["ft", "foot", "feet"],
        LengthUnit::Inch => &["in", "ins", "inch", "inches"],
        LengthUnit::Metre => &["m", "metre", "metres", "meter", "meters"],
        LengthUnit::Millimetre => &[
            "mm",
            "mms",
            "millimetre",
            "millimetres",
            "millimeter",
            "millimeters",
        ],
    }
}

/// The unit of this name, in lower case.
fn by_name(word: &str) -> Option<LengthUnit> {
    UNITS.into_iter().find(|unit| names(*unit).contains(&word))
}

/// Steps over the unit that is next, with the point of `in.`.
pub(super) fn unit(cursor: &mut Cursor<'_>) -> Option<LengthUnit> {
    let found = unit_ahead(cursor)?;
    cursor.advance();
    if cursor.touches() {
        cursor.eat(&Lexeme::Dot);
    }
    Some(found)
}

/// The unit that is next.
fn unit_ahead(cursor: &Cursor<'_>) -> Option<LengthUnit> {
    let next = cursor.peek()?;
    if *next == Lexeme::DoublePrime {
        Some(LengthUnit::Inch)
    } else if *next == Lexeme::Prime {
        Some(LengthUnit::Foot)
    } else {
        next.as_word().and_then(by_name)
    }
}

/// An error for a word that is next and touches the place of a unit, but is none.
pub(super) fn unknown_unit(cursor: &Cursor<'_>, known: &[&str]) -> Option<ReadingError> {
    let word = cursor.next_word()?;
    if known.contains(&word) {
        return None;
    }
    let here = cursor.here();
    let found = quoted(cursor.slice(here.clone()));
    let unit = nearest_unit(word);
    let label = known
        .iter()
        .filter(|label| label.len() > 3) // of short ones half the alphabet is a neighbour
        .filter_map(|label| Some((letters_apart(word, label)?, *label)))
        .min()
        .filter(|(off, _)| unit.is_none_or(|(unit_off, _)| *off <= unit_off));
    let write = |right: &str| {
        let right = shown(&cursor.rewritten(here.clone(), right));
        format!("write {right} if that was meant")
    };
    let (message, help) = match (label, unit) {
        (Some((_, label)), _) => (
            format!("{found} is no word that is known here"),
            write(label),
        ),
        (None, Some((_, unit))) => (
            format!("{found} is no unit of length that is known here"),
            write(unit.symbol()),
        ),
        (None, None) => (
            format!("{found} is no unit of length that is known here"),
            "write the length in in, ft, mm, cm or m".to_owned(),
        ),
    };
    Some(ReadingError::new(message, here.clone()).help(help))
}

/// By how many letters a word differs from a name, where that is one, or two in a
/// long word.
fn letters_apart(word: &str, name: &str) -> Option<usize> {
    let allowed = match word.chars().count() {
        // one letter is near to every short name
        0..=1 => 0,
        2..=4 => 1,
        _ => 2,
    };
    let off = strsim::damerau_levenshtein(word, name);
    (off <= allowed).then_some(off)
}

/// The unit with the nearest name, and how far off that is.
fn nearest_unit(word: &str) -> Option<(usize, LengthUnit)> {
    let nearest = |unit: LengthUnit| {
        names(unit)
            .iter()
            .filter_map(|name| letters_apart(word, name))
            .min()
    };
    UNITS
        .into_iter()
        .filter_map(|unit| Some((nearest(unit)?, unit)))
        .min_by_key(|(off, _)| *off)
}
