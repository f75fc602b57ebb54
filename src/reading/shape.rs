//! Shapes of openings that are no plain gap.

use std::ops::Range;

use crate::geometry::Corner;
use crate::geometry::Polygon;
use crate::geometry::Shape;
use crate::geometry::ShapeError;
use crate::input::nearest;
use crate::items::Item;
use crate::quantities::Length;
use crate::quantities::LengthUnit;
use crate::reading::Bound;
use crate::reading::Graduation;
use crate::reading::ShapeReading;
use crate::reading::bars::Bars;
use crate::reading::bars::bars;
use crate::reading::error::ReadingError;
use crate::reading::error::quoted;
use crate::reading::error::shown;
use crate::reading::length::plus_minus;
use crate::reading::length::settle_with;
use crate::reading::number::number_is_next;
use crate::reading::plausible::judge;
use crate::reading::quantity::Context;
use crate::reading::quantity::Quantity;
use crate::reading::quantity::quantity;
use crate::reading::settle::Settled;
use crate::reading::settle::coarsest;
use crate::reading::tokens::Cursor;
use crate::reading::tokens::Lexeme;
use crate::reading::unit::unit;
use crate::reading::unit::unknown_unit;

/// Corners beyond this are no opening: 100 km.
const FARTHEST_MM: f64 = 1e8;

/// Which shape a word names.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum ShapeWord {
    Circle,
    Rectangle,
    Slot,
    Triangle,
}

impl ShapeWord {
    const fn name(self) -> &'static str {
        match self {
            ShapeWord::Circle => "circle",
            ShapeWord::Rectangle => "rectangle",
            ShapeWord::Slot => "slot",
            ShapeWord::Triangle => "triangle",
        }
    }

    const fn example(self) -> &'static str {
        match self {
            ShapeWord::Circle => "circle 5 in",
            ShapeWord::Rectangle => "rectangle 3 1/2 x 30 in",
            ShapeWord::Slot => "slot 4 1/4 in",
            ShapeWord::Triangle => "triangle 7 3/4 x 10 in",
        }
    }

    const fn sides(self) -> usize {
        match self {
            ShapeWord::Circle | ShapeWord::Slot => 1,
            ShapeWord::Rectangle | ShapeWord::Triangle => 2,
        }
    }
}

/// The shape that is next, where a word names one.
pub(super) fn shape(
    cursor: &mut Cursor<'_>,
    context: Context,
    item: Item,
) -> Result<Option<ShapeReading>, ReadingError> {
    let whole = cursor.whole();
    if let Some(bars) = bars(cursor, context)? {
        return between_bars(cursor, context, item, bars, whole.start).map(Some);
    }
    if cursor.word("polygon") {
        return polygon(cursor, context, item).map(Some);
    }
    let form = if cursor.word("circle") {
        ShapeWord::Circle
    } else if cursor.word("rectangle") {
        ShapeWord::Rectangle
    } else if cursor.word("slot") {
        ShapeWord::Slot
    } else if cursor.word("triangle") {
        ShapeWord::Triangle
    } else {
        return refuse_near_shape(cursor).map(|()| None);
    };
    closed(cursor, context, item, form).map(Some)
}

/// `rectangl 3 x 4 in`: nearly the word of a shape.
fn refuse_near_shape(cursor: &Cursor<'_>) -> Result<(), ReadingError> {
    const SHAPES: [&str; 9] = [
        "slot",
        "rectangle",
        "triangle",
        "circle",
        "polygon",
        "raked",
        "turned",
        "cable",
        "rods",
    ];
    let Some(near) = cursor.next_word().and_then(|word| nearest(word, SHAPES)) else {
        return Ok(());
    };
    let here = cursor.here();
    let found = quoted(cursor.slice(here.clone()));
    let right = cursor.rewritten(here.clone(), near);
    Err(
        ReadingError::new(format!("{found} is no shape that is known here"), here)
            .help(format!("write {}", shown(&right))),
    )
}

/// A shape between bars: the ± behind it, and whether it can be.
fn between_bars(
    cursor: &mut Cursor<'_>,
    context: Context,
    item: Item,
    bars: Bars,
    start: usize,
) -> Result<ShapeReading, ReadingError> {
    let Bars { shape, settled } = bars;
    let unit = settled[0].unit;
    let within = plus_minus(cursor)?;
    let shared = Context {
        default_unit: Some(unit),
        ..context
    };
    let (_, within) = settle_with(cursor, shared, &[], within.as_ref())?;
    let ball = Settled {
        length: shape.clear_opening().lower,
        span: cursor.since(start),
        number: None,
        ..settled[0].clone()
    };
    judge(cursor, item.info(), &ball, Bound::Exactly)?;
    let graduation = match within {
        Some(within) => Graduation::PlusMinus(within.length),
        None => coarsest(&settled),
    };
    Ok(ShapeReading {
        shape,
        unit,
        graduation,
    })
}

/// A shape with one or two dimensions.
fn closed(
    cursor: &mut Cursor<'_>,
    context: Context,
    item: Item,
    form: ShapeWord,
) -> Result<ShapeReading, ReadingError> {
    let start = cursor.whole().start;
    if !number_is_next(cursor) {
        let here = cursor.rest();
        let found = match cursor.slice(here.clone()) {
            "" => "nothing".to_owned(),
            found => quoted(found),
        };
        let message = format!(
            "a length was expected behind {}, and {found} was found",
            form.name()
        );
        return Err(
            ReadingError::new(message, here).help(format!("write it so: {}", form.example()))
        );
    }
    let sides = sides(cursor)?;
    if sides.len() != form.sides() {
        let span = cursor.since(start);
        let count = if form.sides() == 1 {
            "one length"
        } else {
            "two lengths"
        };
        return Err(ReadingError::new(
            format!(
                "a {} has {count}, and {} was found",
                form.name(),
                sides.len()
            ),
            span,
        )
        .help(format!("write it so: {}", form.example())));
    }
    let within = plus_minus(cursor)?;
    let all: Vec<&Quantity> = sides.iter().collect();
    let (settled, within) = settle_with(cursor, context, &all, within.as_ref())?;
    let span = cursor.since(start);
    if settled.iter().any(|side| side.length == Length::ZERO) {
        let found = quoted(cursor.slice(span.clone()));
        return Err(
            ReadingError::new(format!("{found} has a side of no length"), span)
                .help("write the sides as measured, or none if there is no opening"),
        );
    }
    let shape = built(form, &settled);
    let ball = Settled {
        length: shape.clear_opening().lower,
        span,
        number: None,
        ..settled[0].clone()
    };
    judge(cursor, item.info(), &ball, Bound::Exactly)?;
    let unit = settled[settled.len() - 1].unit;
    let graduation = match within {
        Some(within) => Graduation::PlusMinus(within.length),
        None => coarsest(&settled),
    };
    Ok(ShapeReading {
        shape,
        unit,
        graduation,
    })
}

/// Lengths parted by `x`.
pub(super) fn sides(cursor: &mut Cursor<'_>) -> Result<Vec<Quantity>, ReadingError> {
    let mut sides = vec![quantity(cursor, &["x", "by", "at"])?];
    while cursor.times() {
        sides.push(quantity(cursor, &["x", "by", "at"])?);
    }
    Ok(sides)
}

fn built(form: ShapeWord, settled: &[Settled]) -> Shape {
    let (first, last) = (settled[0].length, settled[settled.len() - 1].length);
    match form {
        ShapeWord::Circle => Shape::Circle { diameter: first },
        ShapeWord::Rectangle => Shape::Rectangle {
            width: first,
            height: last,
        },
        ShapeWord::Slot => Shape::Slot { width: first },
        ShapeWord::Triangle => Shape::Triangle {
            rise: first,
            run: last,
        },
    }
}

/// `0:0 120:0 60:90 mm`: corners as x:y, then the unit.
fn polygon(
    cursor: &mut Cursor<'_>,
    context: Context,
    item: Item,
) -> Result<ShapeReading, ReadingError> {
    let start = cursor.whole().start;
    let mut written: Vec<(Coordinate, Coordinate)> = Vec::new();
    while matches!(cursor.peek(), Some(Lexeme::Number(_) | Lexeme::Dash)) {
        let x = coordinate(cursor)?;
        if !cursor.eat(&Lexeme::Colon) {
            return Err(corner_error(cursor));
        }
        written.push((x, coordinate(cursor)?));
    }
    if written.is_empty() {
        return Err(corner_error(cursor));
    }
    let unit = match unit(cursor) {
        Some(unit) => unit,
        None => {
            if let Some(error) = unknown_unit(cursor, &["at"]) {
                return Err(error);
            }
            context.default_unit.ok_or_else(|| {
                ReadingError::new("the corners have no unit", cursor.whole())
                    .help("write the unit behind the last corner: polygon 0:0 120:0 60:90 mm")
            })?
        }
    };
    let within = plus_minus(cursor)?;
    let (_, within) = settle_with(cursor, context, &[], within.as_ref())?;
    let span = cursor.since(start);
    let corners: Vec<Corner> = written
        .iter()
        .map(|(x, y)| Corner {
            x_mm: x.value * millimetres(unit),
            y_mm: y.value * millimetres(unit),
        })
        .collect();
    let far = |c: &Corner| c.x_mm.abs() > FARTHEST_MM || c.y_mm.abs() > FARTHEST_MM;
    if corners.iter().any(far) {
        return Err(
            ReadingError::new("a corner lies farther than 100 km away", span)
                .help("look at the numbers and their unit again"),
        );
    }
    let outline = Polygon::new(corners).map_err(|error| refused(error, unit, span.clone()))?;
    let shape = Shape::Polygon(outline);
    let ball = Settled {
        length: shape.clear_opening().lower,
        unit,
        step: unit.one(),
        span,
        number: None,
    };
    judge(cursor, item.info(), &ball, Bound::Exactly)?;
    let graduation = match within {
        Some(within) => Graduation::PlusMinus(within.length),
        None => Graduation::ReadTo(coarsest_corner(&written, unit)),
    };
    Ok(ShapeReading {
        shape,
        unit,
        graduation,
    })
}

/// Why an outline is none, in the unit of its corners.
fn refused(error: ShapeError, unit: LengthUnit, span: Range<usize>) -> ReadingError {
    let place = |at: Corner| {
        let rounded = |mm: f64| (mm / millimetres(unit) * 1000.0).round() / 1000.0 + 0.0;
        format!(
            "{}:{} {}",
            rounded(at.x_mm),
            rounded(at.y_mm),
            unit.symbol()
        )
    };
    let (message, help) = match error {
        ShapeError::SidesCross { first, second, at } => (
            format!(
                "the outline crosses itself: side {first} and side {second} meet at {}",
                place(at)
            ),
            "write the corners in the order in which you meet them, once round the opening",
        ),
        ShapeError::SidesFold { first, second, at } => (
            format!(
                "the outline folds back on itself at {}: side {second} runs over side {first}",
                place(at)
            ),
            "write the corners in the order in which you meet them, once round the opening",
        ),
        ShapeError::RepeatedCorner { first, second: 1 } => (
            format!("corner {first} is the first corner again"),
            "leave it out: the outline closes by itself",
        ),
        ShapeError::TooFewCorners { .. } => (
            error.to_string(),
            "write three corners or more: polygon 0:0 120:0 60:90 mm",
        ),
        ShapeError::NotFinite
        | ShapeError::NotPositive
        | ShapeError::RepeatedCorner { .. }
        | ShapeError::TooSmall => (
            error.to_string(),
            "write each corner once: polygon 0:0 120:0 60:90 mm",
        ),
    };
    ReadingError::new(message, span).help(help)
}

/// One coordinate, and how many decimals it was written with.
#[derive(Clone, Copy, Debug)]
struct Coordinate {
    value: f64,
    places: u32,
}

fn coordinate(cursor: &mut Cursor<'_>) -> Result<Coordinate, ReadingError> {
    let negative = cursor.eat(&Lexeme::Dash);
    let Some(Lexeme::Number(digits)) = cursor.peek().cloned() else {
        return Err(corner_error(cursor));
    };
    let value: f64 = digits.parse().map_err(|_| corner_error(cursor))?;
    cursor.advance();
    let places = digits.split_once('.').map_or(0, |(_, after)| after.len());
    Ok(Coordinate {
        value: if negative { -value } else { value },
        places: u32::try_from(places).unwrap_or(u32::MAX),
    })
}

fn corner_error(cursor: &Cursor<'_>) -> ReadingError {
    let here = cursor.here();
    let found = match cursor.slice(here.clone()) {
        "" => "nothing".to_owned(),
        found => quoted(found),
    };
    ReadingError::new(
        format!("a corner is x:y, whole or decimal with a point, and {found} was found"),
        here,
    )
    .help("write it so: polygon 0:0 120:0 60:90 mm")
}

/// One of a unit in millimetres; exact as a float.
fn millimetres(unit: LengthUnit) -> f64 {
    match unit {
        LengthUnit::Inch => 25.4,
        LengthUnit::Foot => 304.8,
        LengthUnit::Millimetre => 1.0,
        LengthUnit::Centimetre => 10.0,
        LengthUnit::Metre => 1000.0,
    }
}

/// The coarsest step of the coordinates that are no zero, as for lengths.
fn coarsest_corner(corners: &[(Coordinate, Coordinate)], unit: LengthUnit) -> Length {
    let whole = match unit {
        LengthUnit::Inch => Length::sixty_fourths(16),
        LengthUnit::Foot => Length::inches(1),
        LengthUnit::Millimetre => Length::millimetres(1),
        LengthUnit::Centimetre | LengthUnit::Metre => Length::millimetres(10),
    };
    let step = |c: &Coordinate| match c.places {
        0 => whole,
        places => {
            let place = 10_i64.checked_pow(places).unwrap_or(i64::MAX);
            let last = Length::from_nanometres(unit.one().nanometres() / place);
            last.max(Length::millimetres(1))
        }
    };
    corners
        .iter()
        .flat_map(|(x, y)| [x, y])
        .filter(|c| c.value.abs() > 0.0)
        .map(step)
        .max()
        .unwrap_or(whole)
}
