//! Footholds, things to climb, sections of members.

use crate::items::Item;
use crate::quantities::Length;
use crate::quantities::LengthUnit;
use crate::reading::Foothold;
use crate::reading::Graduation;
use crate::reading::ThingToClimb;
use crate::reading::Tilt;
use crate::reading::VReading;
use crate::reading::Value;
use crate::reading::error::ReadingError;
use crate::reading::error::quoted;
use crate::reading::quantity::Context;
use crate::reading::quantity::Quantity;
use crate::reading::quantity::quantity;
use crate::reading::quantity::quantity_is_next;
use crate::reading::settle::BareZero;
use crate::reading::settle::Settled;
use crate::reading::settle::coarsest;
use crate::reading::settle::settle;
use crate::reading::shape::sides;
use crate::reading::slope::refuse_wall;
use crate::reading::slope::slope;
use crate::reading::stair::LabelledLength;
use crate::reading::stair::labelled_behind;
use crate::reading::stair::settle_parts;
use crate::reading::stair::unit_of;
use crate::reading::tokens::Cursor;

const FOOTHOLD: &[&[&str]] = &[&["high", "up"], &["deep"], &["along"]];
/// Behind the heights of a row of bars.
const OF_ALL: &[&[&str]] = &[&["deep"], &["along"]];
const FOOTHOLD_EXAMPLE: &str = "write it so: 450 mm high 40 mm deep, or 18 in high";
const ROW_EXAMPLE: &str = "write it so: 100 to 900 mm every 100 mm";
/// No guard has more bars.
const MOST_BARS: i64 = 200;
const VEE: &[&[&str]] = &[&["wide"], &["deep"], &["at the bottom", "bottom"]];
const VEE_EXAMPLE: &str = "write it so: 5 in wide 6 in deep, or none";
const THING: &[&[&str]] = &[
    &["high", "tall"],
    &["away", "off", "from the guard"],
    &["deep"],
];
const THING_EXAMPLE: &str =
    "write it so: 18 in high 5 in away, or yes, or none, and what it is in the note";

/// `450 mm high 40 mm deep`, or a row of bars: `100 to 900 mm every 100 mm`.
pub(super) fn footholds(
    cursor: &mut Cursor<'_>,
    context: Context,
    item: Item,
) -> Result<Vec<Value>, ReadingError> {
    let start = cursor.mark();
    if quantity_is_next(cursor) {
        let first = quantity(cursor, &["to", "high", "up", "deep", "along"])?;
        if cursor.any_phrase(&["to", "up to"]) {
            return row_of_footholds(cursor, context, first);
        }
        cursor.back_to(start);
    }
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
    Ok(vec![Value::Foothold(Foothold {
        height,
        depth: labelled_length(&parts, &settled, 1),
        along: labelled_length(&parts, &settled, 2),
        slope: sloped(cursor)?,
        unit: unit_of(&settled[..1]),
        graduation,
    })])
}

/// `sloped 60 deg`, `sloped 1:2`.
fn sloped(cursor: &mut Cursor<'_>) -> Result<Option<Tilt>, ReadingError> {
    if !cursor.any_phrase(&["sloped", "sloping", "slope"]) {
        return Ok(None);
    }
    let angle = slope(cursor)?;
    refuse_wall(cursor, angle)?;
    Ok(Some(Tilt::of(angle)))
}

/// `900 mm every 100 mm 20 mm deep`, behind `100 to`.
fn row_of_footholds(
    cursor: &mut Cursor<'_>,
    context: Context,
    first: Quantity,
) -> Result<Vec<Value>, ReadingError> {
    let whole = cursor.whole();
    let last = quantity(cursor, &["every", "high", "up"])?;
    cursor.any_phrase(&["high", "up"]);
    if !cursor.word("every") {
        let rest = cursor.rest();
        return Err(
            ReadingError::new("how far apart the bars are, is missing", rest).help(ROW_EXAMPLE),
        );
    }
    let every = quantity(cursor, &["apart", "and", "deep", "along", "sloped"])?;
    cursor.word("apart");
    cursor.word("and");
    let mut parts = vec![LabelledLength {
        label: 2,
        quantity: every,
    }];
    parts.extend(labelled_behind(cursor, OF_ALL, ROW_EXAMPLE)?);
    // one unit behind the two heights serves both
    let ends = settle(cursor, context, &[&first, &last], BareZero::Refused)?;
    let (settled, graduation) = settle_parts(cursor, context, &parts)?;
    let (low, high, every) = (ends[0].length, ends[1].length, settled[0].length);
    let graduation = match (graduation, coarsest(&ends)) {
        (Graduation::ReadTo(one), Graduation::ReadTo(other)) => Graduation::ReadTo(one.max(other)),
        (within, _) => within,
    };
    if low == Length::ZERO || every == Length::ZERO || low >= high {
        return Err(ReadingError::new(
            "a row of bars goes up from the lowest, which has a height, in steps",
            whole,
        )
        .help(ROW_EXAMPLE));
    }
    if (high - low).nanometres() / every.nanometres() >= MOST_BARS {
        return Err(ReadingError::new("so many bars stand on no guard", whole)
            .help("look at the heights and their unit again"));
    }
    let slope = sloped(cursor)?;
    let mut bars = Vec::new();
    let mut height = low;
    while height <= high {
        bars.push(Value::Foothold(Foothold {
            height,
            depth: labelled_length(&parts, &settled, 0),
            along: labelled_length(&parts, &settled, 1),
            slope,
            unit: unit_of(&ends),
            graduation,
        }));
        height = height + every;
    }
    Ok(bars)
}

/// `5 in wide 6 in deep`, `vee 5 in wide 6 in deep 1 in at the bottom`.
pub(super) fn v_opening(
    cursor: &mut Cursor<'_>,
    context: Context,
    item: Item,
) -> Result<Value, ReadingError> {
    cursor.any_phrase(&["vee", "v"]);
    let parts = parts(cursor, item, VEE, VEE_EXAMPLE)?;
    let whole = cursor.whole();
    let (settled, graduation) = settle_parts(cursor, context, &parts)?;
    let of = |label| labelled_length(&parts, &settled, label);
    let (Some(wide), Some(deep)) = (of(0), of(1)) else {
        return Err(ReadingError::new(
            "how wide it is at the top and how deep belong to a v opening, and one is missing",
            whole,
        )
        .help(VEE_EXAMPLE));
    };
    let bottom = of(2).unwrap_or(Length::ZERO);
    if wide == Length::ZERO || deep == Length::ZERO || bottom >= wide {
        return Err(ReadingError::new(
            "a v opening has a width and a depth, and is narrower at the bottom",
            whole,
        )
        .help("write a gap that does not narrow as an opening: opening, 4 in"));
    }
    Ok(Value::VOpening(VReading {
        wide,
        deep,
        bottom,
        unit: unit_of(&settled),
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
            depth: None,
            away: None,
        }));
    }
    let parts = parts(cursor, item, THING, THING_EXAMPLE)?;
    let (settled, _) = settle_parts(cursor, context, &parts)?;
    Ok(Value::ThingToClimb(ThingToClimb {
        height: labelled_length(&parts, &settled, 0),
        depth: labelled_length(&parts, &settled, 2),
        away: labelled_length(&parts, &settled, 1),
    }))
}

fn parts(
    cursor: &mut Cursor<'_>,
    item: Item,
    labels: &[&[&str]],
    example: &str,
) -> Result<Vec<LabelledLength>, ReadingError> {
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

fn labelled_length(parts: &[LabelledLength], settled: &[Settled], label: usize) -> Option<Length> {
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
/// use guardrule::quantities::Length;
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
/// (NDS Supplement Table 1A, second-hand: as a public frame library transcribes it). The
/// width comes first.
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
