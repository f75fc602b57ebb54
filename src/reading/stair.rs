//! The stair triangle: rise, going, lift, nosing and risers; and other readings whose
//! lengths are told apart by words.

use std::ops::Range;

use crate::geometry::Risers;
use crate::geometry::StairTriangle;
use crate::items::Item;
use crate::quantities::Length;
use crate::quantities::LengthUnit;
use crate::reading::Graduation;
use crate::reading::StairReading;
use crate::reading::Value;
use crate::reading::ball::WhereRule;
use crate::reading::ball::ball;
use crate::reading::ball::ball_is_mentioned;
use crate::reading::error::ReadingError;
use crate::reading::error::quoted;
use crate::reading::length::plus_minus;
use crate::reading::quantity::Context;
use crate::reading::quantity::Quantity;
use crate::reading::quantity::quantity;
use crate::reading::quantity::quantity_is_next;
use crate::reading::settle::BareZero;
use crate::reading::settle::Settled;
use crate::reading::settle::coarsest;
use crate::reading::settle::settle;
use crate::reading::settle::settle_doubt;
use crate::reading::tokens::Cursor;
use crate::reading::tokens::Lexeme;

/// The words before each length, the names first.
const LABELS: &[&[&str]] = &[
    &["rise", "riser"],
    &["going", "tread", "run"],
    &["lift", "lifted"],
    &["nosing", "overhang"],
    &["thick", "thickness"],
];

/// Said of steps without a board at their back.
const OPEN: &[&str] = &[
    "open risers",
    "open riser",
    "risers open",
    "riser open",
    "open",
];

const EXAMPLE: &str = "write it so: rise 7 3/4 going 10 lift 1 in";

/// The reading of a stair triangle: a ball test, or its lengths.
pub(super) fn stair_triangle(
    cursor: &mut Cursor<'_>,
    context: Context,
    item: Item,
) -> Result<Value, ReadingError> {
    if ball_is_mentioned(cursor) {
        let (ball, _) = ball(cursor, context, item, WhereRule::MayNot)?;
        return Ok(Value::Ball(ball));
    }
    let whole = cursor.whole();
    let parts = labelled(cursor)?;
    let mut risers = open_risers(cursor);
    let of = |label: usize| parts.iter().find(|part| part.label == label);
    if parts.is_empty() || of(0).is_none() || of(1).is_none() {
        let missing = match (of(0), of(1)) {
            (None, None) => "rise and going are",
            (None, Some(_)) => "the rise is",
            (Some(_), _) => "the going is",
        };
        return Err(
            ReadingError::new(format!("{missing} missing from the stair triangle"), whole)
                .help(EXAMPLE),
        );
    }
    let (settled, graduation) = settle_parts(cursor, context, &parts)?;
    if open_risers(cursor) == Risers::Open {
        risers = Risers::Open;
    }
    let length = |label: usize| {
        parts
            .iter()
            .zip(&settled)
            .find(|(part, _)| part.label == label)
            .map(|(_, settled)| settled.length)
    };
    let (rise, going) = (
        length(0).unwrap_or(Length::ZERO),
        length(1).unwrap_or(Length::ZERO),
    );
    if rise == Length::ZERO || going == Length::ZERO {
        let span = cursor.whole();
        let found = quoted(cursor.slice(span.clone()));
        return Err(
            ReadingError::new(format!("{found}: rise and going cannot be zero"), span)
                .help("write both as measured, or none if the side is closed"),
        );
    }
    let nosing = length(3).unwrap_or(Length::ZERO);
    let nosing_thickness = length(4);
    refuse_no_step(cursor, [rise, going, nosing], nosing_thickness)?;
    Ok(Value::StairTriangle(StairReading {
        rise,
        going,
        lift: length(2),
        nosing,
        nosing_thickness,
        risers,
        unit: unit_of(&settled),
        graduation,
    }))
}

fn open_risers(cursor: &mut Cursor<'_>) -> Risers {
    if cursor.any_phrase(OPEN) {
        Risers::Open
    } else {
        Risers::Closed
    }
}

/// A nosing that no step has.
fn refuse_no_step(
    cursor: &Cursor<'_>,
    [rise, going, nosing]: [Length; 3],
    thickness: Option<Length>,
) -> Result<(), ReadingError> {
    if thickness.is_some() && nosing == Length::ZERO {
        return Err(ReadingError::new(
            "how thick the nosing is says nothing where none overhangs",
            cursor.whole(),
        )
        .help("write nosing 1 thick 1 1/4 in, or leave both out"));
    }
    // alternating treads, the steepest that a code lets be, are 5 in deep and 9 1/2 in high at the
    // most (IRC 2018 R311.7.11); beyond these a unit is slipped (common practice, no source)
    let usual = [
        ("rise", rise, Length::inches(2), Length::inches(16)),
        ("going", going, Length::inches(4), Length::feet(6)),
    ];
    for (what, length, least, most) in usual {
        if length < least || length > most {
            return Err(ReadingError::new(
                format!(
                    "no step has such a {what}: {}",
                    cursor.slice(cursor.whole())
                ),
                cursor.whole(),
            )
            .help(EXAMPLE));
        }
    }
    StairTriangle::new(rise, going, Length::ZERO)
        .and_then(|step| step.with_nosing(nosing, thickness))
        .map(|_| ())
        .map_err(|error| {
            ReadingError::new(error.to_string(), cursor.whole())
                .help("write how far the nose stands out before the riser below: nosing 1 in")
        })
}

/// A length and the label beside it.
pub(super) struct LabelledLength {
    pub(super) label: usize,
    pub(super) quantity: Quantity,
}

/// `rise 7 3/4 going 10 lift 2 in`, in any order.
fn labelled(cursor: &mut Cursor<'_>) -> Result<Vec<LabelledLength>, ReadingError> {
    let mut parts: Vec<LabelledLength> = Vec::new();
    while let Some(label) = LABELS.iter().position(|names| cursor.any_phrase(names)) {
        let here = cursor.here();
        refuse_twice(&parts, label, LABELS[label][0], here)?;
        let follows: Vec<&str> = LABELS
            .iter()
            .flat_map(|names| names.iter().copied())
            .collect();
        let quantity = quantity(cursor, &follows)?;
        parts.push(LabelledLength { label, quantity });
        cursor.eat(&Lexeme::Comma);
        cursor.word("and");
    }
    Ok(parts)
}

/// `450 mm high 40 mm deep`: labels behind their lengths, in any order.
pub(super) fn labelled_behind(
    cursor: &mut Cursor<'_>,
    labels: &[&[&str]],
    example: &str,
) -> Result<Vec<LabelledLength>, ReadingError> {
    let follows: Vec<&str> = labels
        .iter()
        .flat_map(|names| names.iter().copied())
        .collect();
    let mut parts: Vec<LabelledLength> = Vec::new();
    while quantity_is_next(cursor) {
        let quantity = quantity(cursor, &follows)?;
        let here = cursor.here();
        let Some(label) = labels.iter().position(|names| cursor.any_phrase(names)) else {
            let found = quoted(cursor.slice(quantity.span.clone()));
            let names: Vec<&str> = labels.iter().map(|names| names[0]).collect();
            return Err(ReadingError::new(
                format!("{found} does not say whether it is {}", names.join(" or ")),
                quantity.span,
            )
            .help(example.to_owned()));
        };
        refuse_twice(&parts, label, labels[label][0], here)?;
        parts.push(LabelledLength { label, quantity });
        cursor.eat(&Lexeme::Comma);
        cursor.word("and");
    }
    Ok(parts)
}

fn refuse_twice(
    parts: &[LabelledLength],
    label: usize,
    name: &str,
    here: Range<usize>,
) -> Result<(), ReadingError> {
    if parts.iter().any(|part| part.label == label) {
        return Err(
            ReadingError::new(format!("{name} stands twice"), here).help("write one reading a row")
        );
    }
    Ok(())
}

/// The lengths of the parts, and how finely they were read together.
pub(super) fn settle_parts(
    cursor: &mut Cursor<'_>,
    context: Context,
    parts: &[LabelledLength],
) -> Result<(Vec<Settled>, Graduation), ReadingError> {
    let within = plus_minus(cursor)?;
    let all: Vec<&Quantity> = parts.iter().map(|part| &part.quantity).collect();
    let settled = settle(cursor, context, &all, BareZero::Allowed)?;
    let Some(within) = within else {
        let graduation = coarsest(&settled);
        return Ok((settled, graduation));
    };
    let within = settle_doubt(cursor, context, &settled, &within)?;
    if within.length == Length::ZERO {
        return Err(
            ReadingError::new("± nothing is surer than any tape", within.span)
                .help("leave it out, or write how far off it may be"),
        );
    }
    Ok((settled, Graduation::PlusMinus(within.length)))
}

/// The unit of the last length that is no bare zero.
pub(super) fn unit_of(settled: &[Settled]) -> LengthUnit {
    settled
        .iter()
        .rev()
        .find(|one| one.length != Length::ZERO)
        .or(settled.last())
        .map_or(LengthUnit::Inch, |one| one.unit)
}
