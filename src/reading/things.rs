//! Footholds, things to climb, sections of members.

use crate::items::Item;
use crate::measure::Length;
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

/// `3 1/2 x 3 1/2 in`.
pub(super) fn section(cursor: &mut Cursor<'_>, context: Context) -> Result<Value, ReadingError> {
    const EXAMPLE: &str = "write both sides as measured: 3 1/2 x 3 1/2 in";
    let whole = cursor.whole();
    if let Some(size) = sold_as(cursor.text()) {
        while cursor.advance().is_some() {}
        return Ok(size);
    }
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

/// Lumber by the name it is sold by: `4x4` is 3 1/2 x 3 1/2 in, dressed and dry
/// (NDS Supplement Table 1A, facts/load-path.md §2.1). The width comes first.
fn sold_as(text: &str) -> Option<Value> {
    const NAMES: &[(&str, i32, i32)] = &[
        ("2x2", 96, 96),
        ("2x4", 96, 224),
        ("4x2", 224, 96),
        ("2x6", 96, 352),
        ("6x2", 352, 96),
        ("4x4", 224, 224),
        ("5/4x6", 64, 352),
        ("6x6", 352, 352),
    ];
    let name = text.to_lowercase().replace('×', "x").replace(' ', "");
    let (_, a, b) = NAMES.iter().find(|(known, _, _)| *known == name)?;
    Some(Value::Section(
        Length::sixty_fourths(*a),
        Length::sixty_fourths(*b),
    ))
}
