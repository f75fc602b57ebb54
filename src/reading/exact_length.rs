//! The exact length of a number in a unit.

use crate::quantities::Length;
use crate::quantities::LengthUnit;
use crate::reading::number::Number;

/// The longest length that is read: 100 km, beyond any building.
const LONGEST: i128 = 100_000 * 1_000_000_000;

/// A number in a unit, as a length.
pub(super) enum ExactLength {
    /// It is one.
    Length(Length),
    /// It is no whole number of nanometres; the nearest mark of a tape.
    TooFine(Length),
    /// Beyond any building.
    TooLong,
}

/// The exact length of a number in a unit, or why there is none.
pub(super) fn exact_length(number: &Number, unit: LengthUnit) -> ExactLength {
    let (numerator, denominator) = number.ratio();
    // at most 10^24 times 10^9, well within i128
    let scaled = numerator * i128::from(unit.one().nanometres());
    if scaled > LONGEST * denominator {
        return ExactLength::TooLong;
    }
    if scaled % denominator == 0 {
        return ExactLength::Length(nanometres(scaled / denominator));
    }
    let mark = if unit.is_imperial() { 396_875 } else { 100_000 };
    let marks = (2 * scaled + mark * denominator) / (2 * mark * denominator);
    ExactLength::TooFine(nanometres(marks * mark))
}

pub(super) fn nanometres(count: i128) -> Length {
    Length::from_nanometres(i64::try_from(count).unwrap_or(i64::MAX))
}
