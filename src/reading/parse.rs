//! From the text of a cell to its readings.

use crate::items::Item;
use crate::items::Kind;
use crate::quantities::LengthUnit;
use crate::reading::Reading;
use crate::reading::Value;
use crate::reading::calendar::day;
use crate::reading::calendar::looks_like_a_date;
use crate::reading::calendar::spreadsheet_date;
use crate::reading::error::ReadingError;
use crate::reading::error::quoted;
use crate::reading::fasteners::fasteners;
use crate::reading::fasteners::pull;
use crate::reading::footholds::footholds;
use crate::reading::footholds::section;
use crate::reading::footholds::thing_to_climb;
use crate::reading::footholds::v_opening;
use crate::reading::force::force;
use crate::reading::length::graduation;
use crate::reading::length::length;
use crate::reading::length::tolerance;
use crate::reading::offers::with_accepted_offers;
use crate::reading::opening::opening;
use crate::reading::quantity::Context;
use crate::reading::stair::stair_triangle;
use crate::reading::tokens::Cursor;
use crate::reading::words::count;
use crate::reading::words::none_refused;
use crate::reading::words::plain;
use crate::reading::words::says_none;
use crate::reading::words::says_unknown;
use crate::reading::words::word;
use crate::reading::years::age;
use crate::reading::years::parse_years;

/// What a text was understood as.
#[derive(Clone, Debug, PartialEq)]
pub struct Parsed {
    /// The readings: usually one, and two for `5 to 6 in`.
    pub readings: Vec<Reading>,
    /// What was accepted with a warning, each one plain sentence.
    pub cautions: Vec<String>,
}

/// Parses the reading of an item.
///
/// `default_unit` is the unit of numbers that are written without one.
///
/// # Errors
/// [`ReadingError`]: what was found, what was expected, what to write instead.
///
/// ```
/// use guardrule::items::Item;
/// use guardrule::quantities::Length;
/// use guardrule::reading::Value;
/// use guardrule::reading::parse;
///
/// let parsed = parse(Item::Height, "2'11 1/2\"", None)?;
/// let Value::Measure(height) = &parsed.readings[0].value else { unreachable!() };
/// assert_eq!(height.length, Length::sixty_fourths(35 * 64 + 32));
///
/// let error = parse(Item::Opening, "about 5 in", None).unwrap_err();
/// assert_eq!(error.help.as_deref(), Some("write 5 in ± 1/2 in"));
/// # Ok::<(), guardrule::reading::ReadingError>(())
/// ```
pub fn parse(
    item: Item,
    text: &str,
    default_unit: Option<LengthUnit>,
) -> Result<Parsed, ReadingError> {
    if let Some(miss) = item.near_miss(text) {
        let message = format!("{} may mean several things for {item}", quoted(text.trim()));
        let whole = Cursor::new(text).whole();
        return Err(ReadingError::new(message, whole).help(miss.says));
    }
    let is_read = |text: &str| parse_plainly(item, text, default_unit).is_ok();
    parse_plainly(item, text, default_unit)
        .map_err(|error| with_accepted_offers(error, item, text, &is_read))
}

/// As [`parse`], for whoever has no use for what a refusal would say: many times as fast
/// where it refuses.
#[must_use]
pub fn parse_or_none(item: Item, text: &str, default_unit: Option<LengthUnit>) -> Option<Parsed> {
    match item.near_miss(text) {
        Some(_) => None,
        None => parse_plainly(item, text, default_unit).ok(),
    }
}

/// As [`parse`]; what a refusal offers may be refused in its turn.
fn parse_plainly(
    item: Item,
    text: &str,
    default_unit: Option<LengthUnit>,
) -> Result<Parsed, ReadingError> {
    let mut cursor = Cursor::new(text);
    let kind = item.info().kind;
    let plain = plain(text);
    let own_word = matches!(kind, Kind::Words(_)) && item.word(text.trim()).is_some();
    if cursor.at_end() {
        return Err(ReadingError::new("the reading is empty", 0..0)
            .help("write what you measured, or not reached where you could not"));
    }
    if !own_word && says_unknown(&plain) {
        return Ok(single(Value::Unknown));
    }
    let words_or_text = matches!(kind, Kind::Words(_) | Kind::Text);
    let no_railing = item == Item::Height && plain.starts_with("no ");
    if (says_none(&plain) || no_railing) && !words_or_text {
        return if item.info().none_allowed {
            Ok(single(Value::None))
        } else {
            Err(none_refused(&cursor, item))
        };
    }
    // elsewhere a date can only be a spreadsheet's doing
    let dates_are_slips = !matches!(kind, Kind::Date | Kind::Text | Kind::Words(_) | Kind::Years);
    if dates_are_slips && looks_like_a_date(text) {
        return Err(spreadsheet_date(&cursor));
    }
    let context = Context {
        item: Some(item),
        default_unit,
    };
    let readings = readings(&mut cursor, context, item).map_err(|error| {
        let error = with_example(error, item);
        match or_more(item, text, default_unit) {
            Some(help) => error.help(help),
            None => error,
        }
    })?;
    Ok(Parsed {
        readings,
        cautions: cursor.cautions,
    })
}

fn readings(
    cursor: &mut Cursor<'_>,
    context: Context,
    item: Item,
) -> Result<Vec<Reading>, ReadingError> {
    let values = match item.info().kind {
        Kind::Opening => {
            let readings = opening(cursor, context, item)?;
            cursor.finish()?;
            return Ok(readings);
        }
        // these look at the text as a whole
        Kind::Date => return day(cursor).map(|value| vec![plain_reading(value)]),
        Kind::Text => {
            let text = cursor.text().trim();
            return Ok(vec![plain_reading(Value::Text(text.into()))]);
        }
        Kind::Words(_) => return word(cursor, item).map(|value| vec![plain_reading(value)]),
        Kind::Years => {
            let span = parse_years(cursor.text())?;
            return Ok(vec![plain_reading(Value::Years(span))]);
        }
        Kind::Ages => vec![Value::Age(age(cursor)?)],
        Kind::Count => vec![count(cursor, item)?],
        Kind::Fasteners => vec![fasteners(cursor, context)?],
        Kind::Foothold => footholds(cursor, context, item)?,
        Kind::Force => vec![Value::Force(force(cursor)?)],
        Kind::Graduation => vec![graduation(cursor, context, item)?],
        Kind::Length => length(cursor, context, item)?,
        Kind::Pull => vec![pull(cursor, context)?],
        Kind::Section => vec![section(cursor, context)?],
        Kind::StairTriangle => vec![stair_triangle(cursor, context, item)?],
        Kind::ThingToClimb => vec![thing_to_climb(cursor, context, item)?],
        Kind::VOpening => vec![v_opening(cursor, context, item)?],
        Kind::Tolerance => vec![tolerance(cursor, context, item)?],
    };
    cursor.finish()?;
    Ok(values.into_iter().map(plain_reading).collect())
}

/// `36+ in`, `8 ft+`: what to write for it.
fn or_more(item: Item, text: &str, default_unit: Option<LengthUnit>) -> Option<String> {
    let (before, after) = text.split_once('+')?;
    let plain = format!("{} {}", before.trim(), after.trim());
    let plain = plain.trim();
    let over = format!("over {plain}");
    let right = !before.trim().is_empty() && parse_plainly(item, plain, default_unit).is_ok();
    (right && parse_plainly(item, &over, default_unit).is_ok())
        .then(|| format!("write {over}, or {plain} if it is exactly that"))
}

/// An error that offers nothing yet offers the item's first example.
fn with_example(error: ReadingError, item: Item) -> ReadingError {
    match (&error.help, item.info().examples.first()) {
        (None, Some(example)) => error.help(format!("write it so: {example}")),
        (Some(_), _) | (None, None) => error,
    }
}

fn single(value: Value) -> Parsed {
    Parsed {
        readings: vec![plain_reading(value)],
        cautions: Vec::new(),
    }
}

fn plain_reading(value: Value) -> Reading {
    Reading { value, at: None }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::reading::print;

    #[test]
    fn every_example_of_the_table_is_read_and_printed() {
        for item in Item::all() {
            for example in item.info().examples {
                let parsed = parse(item, example, None);
                let parsed = parsed.unwrap_or_else(|e| panic!("{item} {example}: {e}"));
                assert_eq!(parsed.cautions, [""; 0], "{item}: {example}");
                let printed = print(&parsed.readings[0]);
                let again = parse(item, &printed, None).unwrap();
                // what the example leaves open (whose unit a stair's lift has) stays so
                assert_eq!(
                    again.readings, parsed.readings,
                    "{item}: {example} {printed}"
                );
            }
        }
    }
}
