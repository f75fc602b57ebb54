//! What was understood of a reading, where that is more than what stands there.

use crate::items::Item;
use crate::quantities::Length;
use crate::quantities::LengthUnit;
use crate::reading::Value;
use crate::reading::parse_or_none;
use crate::reading::print;
use crate::walk::unit::without_unit;

/// What was understood, where it is not what stands there.
pub(super) fn meant(item: Item, written: &str, unit: Option<LengthUnit>) -> Option<String> {
    let parsed = parse_or_none(item, written, unit)?;
    let printed: Vec<String> = parsed.readings.iter().map(print).collect();
    let printed = printed.join("; ");
    if let [reading] = parsed.readings.as_slice()
        && let Value::Measure(measure) = &reading.value
        && let Some(larger) = in_larger_unit(measure.length, measure.unit)
    {
        let number = without_unit(&printed);
        let alone = number == written;
        let unit = if alone { &printed[number.len()..] } else { "" };
        return Some(format!("{written}{unit}, that is {larger}"));
    }
    (printed != written).then_some(printed)
}

/// Beyond these a length is told in the larger unit too, so that a slip is seen.
/// (common practice, no source)
const MANY_INCHES: Length = Length::feet(8);
const MANY_MILLIMETRES: Length = Length::millimetres(5000);

fn feet_and_inches(length: Length) -> String {
    let foot = Length::feet(1).nanometres();
    let rest = Length::from_nanometres(length.nanometres() % foot);
    let feet = format!("{} ft", length.nanometres() / foot);
    if rest == Length::ZERO {
        feet
    } else {
        format!("{feet} {}", rest.exact(LengthUnit::Inch))
    }
}

fn in_larger_unit(length: Length, unit: LengthUnit) -> Option<String> {
    match unit {
        LengthUnit::Inch if length >= MANY_INCHES => Some(feet_and_inches(length)),
        LengthUnit::Millimetre | LengthUnit::Centimetre if length >= MANY_MILLIMETRES => {
            Some(length.exact(LengthUnit::Metre))
        }
        LengthUnit::Centimetre
        | LengthUnit::Foot
        | LengthUnit::Inch
        | LengthUnit::Metre
        | LengthUnit::Millimetre => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_number_alone_is_told_with_its_unit_and_a_long_one_in_the_larger_unit() {
        let inches = |text| meant(Item::Drop, text, Some(LengthUnit::Inch));
        assert_eq!(inches("34 5/8").as_deref(), Some("34 5/8 in"));
        assert_eq!(inches("260").as_deref(), Some("260 in, that is 21 ft 8 in"));
        assert_eq!(inches("240").as_deref(), Some("240 in, that is 20 ft"));
        assert_eq!(inches("34 5/8 in"), None);
        let millimetres = |text| meant(Item::Drop, text, Some(LengthUnit::Millimetre));
        assert_eq!(
            millimetres("9500").as_deref(),
            Some("9500 mm, that is 9.5 m")
        );
        assert_eq!(millimetres("2600").as_deref(), Some("2600 mm"));
    }
}
