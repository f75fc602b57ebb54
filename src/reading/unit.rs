//! Units of length as people write them.

use crate::measure::LengthUnit;
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
    let error = ReadingError::new(
        format!("{found} is no unit of length that is known here"),
        here.clone(),
    );
    Some(error.help(match nearest_unit(word) {
        Some(unit) => format!(
            "write {} if that was meant",
            shown(&cursor.rewritten(here, unit.symbol()))
        ),
        None => "write the length in in, ft, mm, cm or m".to_owned(),
    }))
}

/// The unit whose name differs by a letter, or by two in a long name.
fn nearest_unit(word: &str) -> Option<LengthUnit> {
    let distance = |unit: LengthUnit| {
        names(unit)
            .iter()
            .map(|name| strsim::damerau_levenshtein(word, name))
            .min()
    };
    let allowed = match word.chars().count() {
        // one letter is near to every short name
        0..=1 => 0,
        2..=4 => 1,
        _ => 2,
    };
    UNITS
        .into_iter()
        .filter_map(|unit| Some((distance(unit)?, unit)))
        .filter(|(distance, _)| *distance <= allowed)
        .min_by_key(|(distance, _)| *distance)
        .map(|(_, unit)| unit)
}
