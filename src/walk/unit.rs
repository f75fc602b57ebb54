//! Slips of unit: which unit was likely meant, and what a mended unit touches.

use crate::items::Item;
use crate::quantities::Length;
use crate::quantities::LengthUnit;
use crate::reading::Value;
use crate::reading::parse;
use crate::reading::parse_length;
use crate::reading::parse_or_none;
use crate::walk::AnswerTopic;
use crate::walk::GuardName;
use crate::walk::Prompt;
use crate::walk::PromptChoice;
use crate::walk::Taking;
use crate::walk::Topic;
use crate::walk::page::PageSpot;
use crate::walk::words::Meant;
use crate::walk::words::word_of;

/// All units, as a tape has them.
const UNITS: [LengthUnit; 5] = [
    LengthUnit::Inch,
    LengthUnit::Millimetre,
    LengthUnit::Centimetre,
    LengthUnit::Metre,
    LengthUnit::Foot,
];

/// A number without a unit, written before the unit was mended; it stands in the survey
/// with its old unit until somebody says what it is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Bare {
    pub(super) place: GuardName,
    pub(super) item: Item,
    pub(super) spot: PageSpot,
    /// As it was written.
    pub(super) number: String,
    pub(super) old: LengthUnit,
    pub(super) new: LengthUnit,
}

impl Bare {
    /// Which of the two it is.
    pub(super) fn ask(&self) -> Prompt {
        let both = format!(
            "{} ({})",
            self.in_new(),
            meant_by(self.item, &self.in_new())
        );
        let question = format!(
            "{} was written alone. Is it {both}, or {} ({})?",
            self.number,
            self.in_old(),
            meant_by(self.item, &self.in_old()),
        );
        let mut ask = Prompt::bare(
            Topic::Answer(AnswerTopic::UnitOf(self.item)),
            question,
            &self.in_new(),
        );
        ask.title = format!("{}, {}", self.place.says(), self.item);
        ask.choices = vec![
            PromptChoice::new(self.new.symbol(), ""),
            PromptChoice::new(self.old.symbol(), ""),
        ];
        ask.taking = Taking::ByLetters;
        ask.how = vec!["Or write it anew.".to_owned()];
        ask
    }

    pub(super) fn in_old(&self) -> String {
        format!("{} {}", self.number, self.old.symbol())
    }

    pub(super) fn in_new(&self) -> String {
        format!("{} {}", self.number, self.new.symbol())
    }
}

/// A length in the unit of the other system, for whoever compares.
fn meant_by(item: Item, reading: &str) -> String {
    let parsed = parse_or_none(item, reading, None);
    let first = parsed.as_ref().and_then(|parsed| parsed.readings.first());
    let Some(Value::Measure(measure)) = first.map(|reading| &reading.value) else {
        return reading.to_owned();
    };
    let (length, unit) = (measure.length, measure.unit);
    let other = if unit.is_imperial() {
        LengthUnit::Millimetre
    } else {
        LengthUnit::Inch
    };
    length.readable(other)
}

/// The number of a reading without its unit, where it ends in one.
pub(super) fn without_unit(reading: &str) -> &str {
    let symbols = UNITS.map(LengthUnit::symbol);
    let found = symbols.iter().find_map(|symbol| {
        let rest = reading.strip_suffix(symbol)?;
        rest.ends_with(|c: char| c.is_ascii_digit() || c == ' ')
            .then(|| rest.trim_end())
    });
    found.unwrap_or(reading)
}

/// A gap of a railing lies between these: beyond them a number alone is likely in
/// another unit. (common practice, no source)
const USUAL_GAP: (Length, Length) = (Length::millimetres(10), Length::millimetres(153));

/// What is odd about a gap whose number stands alone, and the units in which it would not be.
pub(super) fn odd_alone(
    item: Item,
    number: &str,
    unit: LengthUnit,
) -> Option<(String, Vec<LengthUnit>)> {
    let usual = |unit: LengthUnit| {
        let measure = parse_length(number, Some(unit)).ok()?;
        Some(USUAL_GAP.0 <= measure.length && measure.length <= USUAL_GAP.1)
    };
    if !item.info().hole.is_everywhere() || usual(unit)? {
        return None;
    }
    let likely: Vec<LengthUnit> = UNITS
        .into_iter()
        .filter(|other| *other != unit && usual(*other) == Some(true))
        .collect();
    let caution = format!("{number} {} is an unusual {item}.", unit.symbol());
    (!likely.is_empty()).then_some((caution, likely))
}

/// The units in which this number would be a usual one.
pub(super) fn likely_units(item: Item, reading: &str) -> Vec<LengthUnit> {
    let number = without_unit(reading);
    let given = parse(item, reading, None)
        .ok()
        .and_then(|parsed| parsed.readings.first()?.value.tape());
    let usual = |unit: &LengthUnit| {
        let other = given.is_none_or(|(given, _)| given != *unit);
        let parsed = parse(item, &format!("{number} {}", unit.symbol()), None);
        other && parsed.is_ok_and(|parsed| parsed.cautions.is_empty())
    };
    UNITS.into_iter().filter(usual).collect()
}

pub(super) fn unit_named(name: &str) -> Option<LengthUnit> {
    match word_of(Item::DefaultUnit, name) {
        Meant::One(word) => UNITS.into_iter().find(|unit| unit.symbol() == word),
        Meant::Nothing | Meant::Several(_) => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_likely_unit_is_one_in_which_the_number_is_usual() {
        assert_eq!(
            likely_units(Item::Height, "3 3/4 in").first(),
            Some(&LengthUnit::Foot)
        );
        assert!(likely_units(Item::Opening, "8 in").contains(&LengthUnit::Centimetre));
        assert!(likely_units(Item::Height, "36 ft").contains(&LengthUnit::Inch));
        let odd = |number, unit| odd_alone(Item::Opening, number, unit).map(|(_, likely)| likely);
        assert_eq!(
            odd("8", LengthUnit::Inch),
            Some(vec![LengthUnit::Centimetre])
        );
        assert_eq!(odd("3 1/4", LengthUnit::Inch), None);
        assert_eq!(odd("95", LengthUnit::Millimetre), None);
        assert!(odd("4", LengthUnit::Millimetre).is_some_and(|u| u.contains(&LengthUnit::Inch)));
        assert_eq!(without_unit("3 3/4 ft"), "3 3/4");
        assert_eq!(without_unit("8"), "8");
        assert_eq!(without_unit("4 in ball stops"), "4 in ball stops");
    }
}
