//! The units that are offered for a number that has none.

use crate::items::Item;
use crate::quantities::LengthUnit;
use crate::reading::exact_length::ExactLength;
use crate::reading::exact_length::exact_length;
use crate::reading::number::Number;

/// Units in the order in which they are offered.
const OFFERED: [LengthUnit; 5] = [
    LengthUnit::Inch,
    LengthUnit::Millimetre,
    LengthUnit::Centimetre,
    LengthUnit::Foot,
    LengthUnit::Metre,
];

/// One or two units in which a number would be a usual value of the item.
pub(super) fn offered_units(item: Option<Item>, number: &Number) -> Vec<LengthUnit> {
    if number.has_fraction() {
        return vec![LengthUnit::Inch];
    }
    let usual = item.and_then(|item| item.info().usual);
    let within = |unit: &LengthUnit| match (exact_length(number, *unit), usual) {
        (ExactLength::Length(length), Some((low, high))) => low <= length && length <= high,
        (ExactLength::Length(_) | ExactLength::TooFine(_) | ExactLength::TooLong, _) => false,
    };
    let usual_units = OFFERED.into_iter().filter(within);
    let found: Vec<LengthUnit> = usual_units.take(2).collect();
    if found.is_empty() {
        OFFERED.into_iter().take(2).collect()
    } else {
        found
    }
}
