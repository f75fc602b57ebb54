//! Footholds, things to climb, sections of members.

use crate::items::Item;
use crate::measure::Length;
use crate::measure::LengthUnit;
use crate::reading::Foothold;
use crate::reading::ThingToClimb;
use crate::reading::Value;
use crate::reading::error::ReadingError;
use crate::reading::error::quoted;
use crate::reading::quantity::Context;
use crate::reading::quantity::Quantity;
use crate::reading::settle::BareZero;
use crate::reading::settle::Settled;
use crate::reading::settle::settle;
use crate::reading::shape::sides;
use crate::reading::stair::Part;
use crate::reading::stair::labelled_behind;
use crate::reading::stair::settle_parts;
use crate::reading::stair::unit_of;
use crate::reading::tokens::Cursor;

const FOOTHOLD: &[&[&str]] = &[&["high", "up"], &["deep"]];
const FOOTHOLD_EXAMPLE: &str = "write it so: 450 mm high 40 mm deep, or 18 in high";
const THING: &[&[&str]] = &[&["high", "tall"], &["away", "off", "from the guard"]];
const THING_EXAMPLE: &str = "write it so: 18 in high 5 in away, or yes, or none";

/// `450 mm high 40 mm deep`.
pub(super) fn foothold(
    cursor: &mut Cursor<'_>,
    context: Context,
    item: Item,
) -> Result<Value, ReadingError> {
    let parts = parts(cursor, item, FOOTHOLD, FOOTHOLD_EXAMPLE)?;
    let whole = cursor.whole();
    let (settled, graduation) = settle_parts(cursor, context, &parts)?;
    let Some(height) = labelled_length(&parts, &settled, 0) else {
        return Err(
            ReadingError::new("how high the foothold is, is missing", whole).help(FOOTHOLD_EXAMPLE),
        );
    };
    if height == Length::ZERO {
        return Err(ReadingError::new("a foothold has a height", whole)
            .help("write how high its top is, or none if there is none"));
    }
    Ok(Value::Foothold(Foothold {
        height,
        depth: labelled_length(&parts, &settled, 1),
        unit: unit_of(&settled[..1]),
        graduation,
    }))
}

/// `18 in high 5 in away`, `yes`.
pub(super) fn thing_to_climb(
    cursor: &mut Cursor<'_>,
    context: Context,
    item: Item,
) -> Result<Value, ReadingError> {
    if cursor.any_phrase(&["yes", "y"]) {
        return Ok(Value::ThingToClimb(ThingToClimb {
            height: None,
            away: None,
        }));
    }
    let parts = parts(cursor, item, THING, THING_EXAMPLE)?;
    let (settled, _) = settle_parts(cursor, context, &parts)?;
    Ok(Value::ThingToClimb(ThingToClimb {
        height: labelled_length(&parts, &settled, 0),
        away: labelled_length(&parts, &settled, 1),
    }))
}

fn parts(
    cursor: &mut Cursor<'_>,
    item: Item,
    labels: &[&[&str]],
    example: &str,
) -> Result<Vec<Part>, ReadingError> {
    let parts = labelled_behind(cursor, labels, example)?;
    if parts.is_empty() {
        let whole = cursor.whole();
        let found = quoted(cursor.slice(whole.clone()));
        return Err(
            ReadingError::new(format!("{found} is no reading of {item}"), whole)
                .help(example.to_owned()),
        );
    }
    Ok(parts)
}

fn labelled_length(parts: &[Part], settled: &[Settled], label: usize) -> Option<Length> {
    parts
        .iter()
        .zip(settled)
        .find(|(part, _)| part.label == label)
        .map(|(_, settled)| settled.length)
}

/// Parses two sides: `3 1/2 x 6.2 in`, and the unit of the last one.
///
/// # Errors
/// [`ReadingError`] where it is not two lengths with a unit, or one is nothing.
///
/// ```
/// use guardrule::measure::Length;
/// let (short, _, _) = guardrule::reading::parse_sides("3 1/2 x 6.2 in")?;
/// assert_eq!(short, Length::sixty_fourths(224));
/// # Ok::<(), guardrule::reading::ReadingError>(())
/// ```
pub fn parse_sides(text: &str) -> Result<(Length, Length, LengthUnit), ReadingError> {
    const EXAMPLE: &str = "write both sides: 3 1/2 x 6.2 in";
    let mut cursor = Cursor::new(text);
    let whole = cursor.whole();
    let read = sides(&mut cursor)?;
    cursor.finish()?;
    let both: Vec<&Quantity> = read.iter().collect();
    let context = Context {
        item: None,
        default_unit: None,
    };
    let settled = settle(&mut cursor, context, &both, BareZero::Refused)?;
    match settled.as_slice() {
        [one, other] if one.length > Length::ZERO && other.length > Length::ZERO => {
            Ok((one.length, other.length, other.unit))
        }
        _ => {
            let found = quoted(text);
            Err(ReadingError::new(format!("{found} is not two sides"), whole).help(EXAMPLE))
        }
    }
}

/// `3 1/2 x 3 1/2 in`.
pub(super) fn section(cursor: &mut Cursor<'_>, context: Context) -> Result<Value, ReadingError> {
    const EXAMPLE: &str = "write both sides as measured: 3 1/2 x 3 1/2 in";
    let whole = cursor.whole();
    let sides = sides(cursor)?;
    if sides.len() != 2 {
        let found = quoted(cursor.slice(whole.clone()));
        return Err(ReadingError::new(
            format!("a section has two sides, and {found} has not"),
            whole,
        )
        .help(EXAMPLE));
    }
    let both: Vec<&Quantity> = sides.iter().collect();
    let settled = settle(cursor, context, &both, BareZero::Refused)?;
    if settled.iter().any(|side| side.length == Length::ZERO) {
        return Err(ReadingError::new("a section has no side of no length", whole).help(EXAMPLE));
    }
    Ok(Value::Section(settled[0].length, settled[1].length))
}
