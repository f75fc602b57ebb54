//! Limits: lengths, counts, ages, years and forces as a ruleset writes them,
//! and the bounds made of them.

use std::ops::Range;

use toml::de::DeValue;

use crate::quantities::Age;
use crate::quantities::Force;
use crate::quantities::Length;
use crate::reading::ReadingError;
use crate::reading::Tilt;
use crate::reading::parse_age;
use crate::reading::parse_force;
use crate::reading::parse_length;
use crate::reading::parse_sides;
use crate::reading::parse_slope;
use crate::rules::codes::RuleFault;
use crate::rules::demand::Bounds;
use crate::rules::demand::Limit;
use crate::rules::demand::SlopeLimit;
use crate::rules::demand::Zone;
use crate::rules::faults::Faults;
use crate::rules::fields::Fields;
use crate::rules::fields::Text;
use crate::rules::fields::TomlNode;
use crate::rules::fields::kind;
use crate::rules::fields::scalar;
use crate::rules::fields::text;

/// The operators of plain bounds.
pub(super) const BOUNDS: &[&str] = &["at-least", "at-most", "above", "below"];

/// A length with its unit: `"36 in"`.
pub(super) fn limit(value: &TomlNode<'_>, key: &str, faults: &mut Faults) -> Option<Limit> {
    if let DeValue::Integer(_) | DeValue::Float(_) = value.get_ref() {
        let number = scalar(value.get_ref()).unwrap_or_default();
        faults.error_help(
            RuleFault::UnreadableQuantity,
            &value.span(),
            format!("`{key}` is a bare number; expected a length with its unit"),
            format!("write \"{number} in\" or \"{number} mm\", in quotation marks"),
        );
        return None;
    }
    let text = text(value, key, faults)?;
    match parse_length(text.value, None) {
        Ok(measure) => Some(Limit {
            length: measure.length,
            unit: measure.unit,
            written: text.value.to_owned(),
        }),
        Err(error) => {
            unreadable(&text, &error, RuleFault::UnreadableQuantity, faults);
            None
        }
    }
}

/// Two sides with their unit, `"3 1/2 x 6.2 in"`: the shorter, the longer, and as
/// it is written.
pub(super) fn sides(
    value: &TomlNode<'_>,
    key: &str,
    faults: &mut Faults,
) -> Option<(Limit, Limit, String)> {
    let text = text(value, key, faults)?;
    match parse_sides(text.value) {
        Ok((one, other, unit)) => {
            let limit = |length: Length| Limit {
                length,
                unit,
                written: length.exact(unit),
            };
            Some((
                limit(one.min(other)),
                limit(one.max(other)),
                text.value.to_owned(),
            ))
        }
        Err(error) => {
            unreadable(&text, &error, RuleFault::UnreadableQuantity, faults);
            None
        }
    }
}

/// A slope: `"1:2"`, `"60 deg"`.
pub(super) fn slope(value: &TomlNode<'_>, key: &str, faults: &mut Faults) -> Option<SlopeLimit> {
    let text = text(value, key, faults)?;
    match parse_slope(text.value) {
        Ok(angle) => Some(SlopeLimit {
            tilt: Tilt::of(angle),
            written: text.value.to_owned(),
        }),
        Err(error) => {
            unreadable(&text, &error, RuleFault::UnreadableQuantity, faults);
            None
        }
    }
}

/// A whole number, with or without quotation marks.
pub(super) fn count(value: &TomlNode<'_>, key: &str, faults: &mut Faults) -> Option<u32> {
    whole(value, key, "a whole number", "\"4\"", faults)
}

/// A year of four digits, with or without quotation marks.
pub(super) fn year(value: &TomlNode<'_>, key: &str, faults: &mut Faults) -> Option<i32> {
    let written = value.get_ref().as_str().unwrap_or_default();
    let example = format!("\"{}\"", year_within(written).unwrap_or("2018"));
    let year: u32 = whole(value, key, "a year", &example, faults)?;
    if (1000..=9999).contains(&year) {
        return i32::try_from(year).ok();
    }
    faults.error_help(
        RuleFault::UnreadableQuantity,
        &value.span(),
        format!("`{key}` is {year}; expected a year of four digits"),
        "write \"2018\"",
    );
    None
}

/// The four digits of the year in a date: `2023-05-01`, `1 May 2023`.
fn year_within(text: &str) -> Option<&str> {
    text.split(|letter: char| !letter.is_ascii_digit())
        .find(|digits| digits.len() == 4)
}

fn whole(
    value: &TomlNode<'_>,
    key: &str,
    what: &str,
    example: &str,
    faults: &mut Faults,
) -> Option<u32> {
    let plain = value.get_ref().as_integer().filter(|n| n.radix() == 10);
    let written = match plain {
        Some(number) => number.as_str(),
        None => value.get_ref().as_str().unwrap_or_default().trim(),
    };
    let number = written
        .bytes()
        .all(|byte| byte.is_ascii_digit())
        .then(|| written.parse().ok())
        .flatten();
    if number.is_none() {
        let found = match value.get_ref().as_str() {
            Some(text) => format!("\"{text}\""),
            None => kind(value.get_ref()).to_owned(),
        };
        faults.error_help(
            RuleFault::UnreadableQuantity,
            &value.span(),
            format!("`{key}` is {found}; expected {what}"),
            format!("write {example}, or the number without quotation marks"),
        );
    }
    number
}

/// A child's age: `"24 months"`.
pub(super) fn age(value: &TomlNode<'_>, key: &str, faults: &mut Faults) -> Option<Age> {
    if let DeValue::Integer(number) = value.get_ref() {
        let number = number.as_str();
        faults.error_help(
            RuleFault::UnreadableQuantity,
            &value.span(),
            format!("`{key}` is a bare number; expected an age with its unit"),
            format!("write \"{number} months\" or \"{number} years\", in quotation marks"),
        );
        return None;
    }
    let text = text(value, key, faults)?;
    parse_age(text.value)
        .map_err(|error| unreadable(&text, &error, RuleFault::UnreadableQuantity, faults))
        .ok()
}

/// A force: `"50 lbf"`.
pub(super) fn force(value: &TomlNode<'_>, key: &str, faults: &mut Faults) -> Option<Force> {
    if let DeValue::Integer(_) | DeValue::Float(_) = value.get_ref() {
        let number = scalar(value.get_ref()).unwrap_or_default();
        faults.error_help(
            RuleFault::UnreadableQuantity,
            &value.span(),
            format!("`{key}` is a bare number; expected a force with its unit"),
            format!("write \"{number} lbf\" or \"{number} N\", in quotation marks"),
        );
        return None;
    }
    let text = text(value, key, faults)?;
    parse_force(text.value)
        .map_err(|error| unreadable(&text, &error, RuleFault::UnreadableQuantity, faults))
        .ok()
}

/// Reports a text that the parser of readings refuses, at the refused part of it.
pub(super) fn unreadable(
    text: &Text<'_>,
    error: &ReadingError,
    fault: RuleFault,
    faults: &mut Faults,
) {
    let at = part(text, &error.span, faults);
    match &error.help {
        Some(help) => faults.error_help(fault, &at, error.message.clone(), help.clone()),
        None => faults.error(fault, &at, error.message.clone()),
    }
}

/// A part of a text as a place in the file; the whole text where the file
/// writes it with escapes.
fn part(text: &Text<'_>, span: &Range<usize>, faults: &Faults) -> Range<usize> {
    let raw = faults.file().text.get(text.at.clone()).unwrap_or_default();
    let plain = raw.len() == text.value.len() + 2 && raw.get(1..raw.len() - 1) == Some(text.value);
    if plain && !span.is_empty() && span.end <= text.value.len() {
        text.at.start + 1 + span.start..text.at.start + 1 + span.end
    } else {
        text.at.clone()
    }
}

/// Two lengths, the first below the second: `["0 in", "36 in"]`.
pub(super) fn zone(value: &TomlNode<'_>, key: &str, faults: &mut Faults) -> Option<Zone> {
    let ends = value.get_ref().as_array().filter(|array| array.len() == 2);
    let Some(ends) = ends else {
        faults.error_help(
            RuleFault::WrongKind,
            &value.span(),
            format!("`{key}` takes two heights above the walking surface, the lower one first"),
            format!("write {key} = [\"0 in\", \"36 in\"]"),
        );
        return None;
    };
    let mut ends = ends.iter().map(|end| limit(end, key, faults));
    let (from, to) = (ends.next().flatten(), ends.next().flatten());
    let (from, to) = (from?, to?);
    if from.length >= to.length {
        faults.error_help(
            RuleFault::Contradiction,
            &value.span(),
            format!(
                "`{key}` is upside down: {} is not below {}",
                from.written, to.written
            ),
            format!("write {key} = [\"{}\", \"{}\"]", to.written, from.written),
        );
        return None;
    }
    Some(Zone { from, to })
}

/// Plain bounds, each read by `read`; contradicting ones are a fault.
///
/// `size` gives the value that is compared. `None` where a bound is faulty or
/// there is none at all.
pub(super) fn bounds<T>(
    fields: &Fields<'_>,
    faults: &mut Faults,
    read: fn(&TomlNode<'_>, &str, &mut Faults) -> Option<T>,
    size: fn(&T) -> i64,
) -> Option<Bounds<T>> {
    let before = faults.errors();
    let mut one = |key| {
        let value = fields.value(key)?;
        read(value, key, faults)
    };
    let bounds = Bounds {
        at_least: one("at-least"),
        at_most: one("at-most"),
        above: one("above"),
        below: one("below"),
    };
    let low = end(
        [("at-least", &bounds.at_least), ("above", &bounds.above)],
        fields,
        faults,
    );
    let high = end(
        [("at-most", &bounds.at_most), ("below", &bounds.below)],
        fields,
        faults,
    );
    if let (Some((low_key, low)), Some((high_key, high))) = (low, high) {
        // only at-least and at-most may meet in one value
        let closed = low_key == "at-least" && high_key == "at-most";
        let (low, high) = (size(low), size(high));
        if low > high || (low == high && !closed) {
            faults.error(
                RuleFault::Contradiction,
                &fields.at_of(high_key),
                format!("nothing is both {low_key} and {high_key} these values"),
            );
        }
    }
    let some = low.is_some() || high.is_some();
    (some && faults.errors() == before).then_some(bounds)
}

/// The one bound of a side; two of them are a fault.
fn end<'b, T>(
    pair: [(&'static str, &'b Option<T>); 2],
    fields: &Fields<'_>,
    faults: &mut Faults,
) -> Option<(&'static str, &'b T)> {
    let [(first, one), (second, other)] = pair;
    if one.is_some() && other.is_some() {
        faults.error_help(
            RuleFault::Contradiction,
            &fields.at_of(second),
            format!("`{first}` and `{second}` bound the same side"),
            format!("keep one: {first} lets the limit itself pass, {second} does not"),
        );
    }
    let one = one.as_ref().map(|value| (first, value));
    one.or(other.as_ref().map(|value| (second, value)))
}
