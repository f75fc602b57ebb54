//! Openings between bars that are no plain gap: raked bays, turned balusters,
//! cables and rods.

use std::ops::Range;

use uom::si::angle::degree;

use crate::geometry::Across;
use crate::geometry::Balusters;
use crate::geometry::Cables;
use crate::geometry::CablesError;
use crate::geometry::Rake;
use crate::geometry::RakedBay;
use crate::geometry::Shape;
use crate::geometry::Station;
use crate::geometry::Strand;
use crate::geometry::TurnedError;
use crate::geometry::TurnedPair;
use crate::quantities::Angle;
use crate::quantities::Length;
use crate::reading::error::ReadingError;
use crate::reading::error::quoted;
use crate::reading::error::shown;
use crate::reading::force::force;
use crate::reading::number::FractionPart;
use crate::reading::number::Number;
use crate::reading::number::number;
use crate::reading::number::number_is_next;
use crate::reading::quantity::Context;
use crate::reading::quantity::Quantity;
use crate::reading::quantity::WrittenAmount;
use crate::reading::quantity::quantity;
use crate::reading::settle::BareZero;
use crate::reading::settle::Settled;
use crate::reading::settle::settle;
use crate::reading::stair::labelled_behind;
use crate::reading::tokens::Cursor;
use crate::reading::tokens::Lexeme;
use crate::reading::unit::unit;
use crate::reading::unit::unknown_unit;

const RAKED: &str = "write it so: raked 4 1/2 along rise 7 3/4 going 10 in";
const TURNED: &str = "write it so: turned 4 1/2 in centres 0:1 3/4 6:1 12:1 3/4 in";
const CABLES: &str = "write it so: cable 3 in spacing 1/8 in diameter 36 in free";

/// Beyond this a rail is a post.
const STEEPEST_DEGREES: f64 = 80.0;

/// Stations that one profile may have.
const MOST_STATIONS: usize = 500;

/// A shape between bars, and the lengths of which it was made.
pub(super) struct Bars {
    pub(super) shape: Shape,
    pub(super) settled: Vec<Settled>,
}

/// The shape between bars that is next, where a word names one.
pub(super) fn bars(
    cursor: &mut Cursor<'_>,
    context: Context,
) -> Result<Option<Bars>, ReadingError> {
    let start = cursor.here().start;
    let found = if cursor.word("raked") {
        raked(cursor, context, start)
    } else if cursor.word("turned") {
        turned(cursor, context, start)
    } else if cursor.any_phrase(&["cable", "cables"]) {
        cables(cursor, context, Strand::Cable, start)
    } else if cursor.any_phrase(&["rod", "rods"]) {
        cables(cursor, context, Strand::Rod, start)
    } else {
        return Ok(None);
    };
    found.map(Some)
}

/// Settles a length that stands first and those behind it: one unit at the end may
/// serve all, and the first one's serves those that have none.
fn settle_behind(
    cursor: &mut Cursor<'_>,
    context: Context,
    first: &Quantity,
    behind: &[&Quantity],
) -> Result<Vec<Settled>, ReadingError> {
    if !first.has_unit() {
        let all: Vec<&Quantity> = [first].into_iter().chain(behind.iter().copied()).collect();
        return settle(cursor, context, &all, BareZero::Refused);
    }
    let mut settled = settle(cursor, context, &[first], BareZero::Refused)?;
    let context = Context {
        default_unit: Some(settled[0].unit),
        ..context
    };
    settled.extend(settle(cursor, context, behind, BareZero::Refused)?);
    Ok(settled)
}

/// How steep, as written.
enum Slope {
    Angle(Angle, Angle),
    Step(Box<(Quantity, Quantity)>),
}

/// What stands behind the gap of a raked bay.
#[derive(Default)]
struct RakedTail {
    across: Option<Across>,
    balusters: Option<Balusters>,
    slope: Option<Slope>,
    high: Option<Quantity>,
}

/// `4 1/2 in along rise 7 3/4 going 10`, `4 in level square at 37 deg high 30 in`.
fn raked(cursor: &mut Cursor<'_>, context: Context, start: usize) -> Result<Bars, ReadingError> {
    if !number_is_next(cursor) {
        return Err(ReadingError::new(
            "the gap between the balusters is missing",
            cursor.since(start),
        )
        .help(RAKED));
    }
    let gap = quantity(cursor, RAKED_WORDS)?;
    let tail = raked_tail(cursor)?;
    let span = cursor.since(start);
    let missing = |what: &str| ReadingError::new(what.to_owned(), span.clone()).help(RAKED);
    let across = tail.across.ok_or_else(|| {
        missing("whether the tape lay along the rail or level is missing from the raked bay")
    })?;
    let slope = tail
        .slope
        .ok_or_else(|| missing("how steep the rail is is missing from the raked bay"))?;
    let mut behind: Vec<&Quantity> = Vec::new();
    if let Slope::Step(step) = &slope {
        behind.extend([&step.0, &step.1]);
    }
    behind.extend(&tail.high);
    let settled = settle_behind(cursor, context, &gap, &behind)?;
    let zero = settled.iter().find(|one| one.length == Length::ZERO);
    if let Some(zero) = zero {
        let found = quoted(cursor.slice(zero.span.clone()));
        return Err(ReadingError::new(
            format!("{found}: nothing of a raked bay is zero"),
            zero.span.clone(),
        )
        .help("write the lengths as measured, or none if there is no opening"));
    }
    let rake = match &slope {
        Slope::Angle(angle, step) => Rake::Angle(*angle, *step),
        Slope::Step(..) => Rake::Step {
            rise: settled[1].length,
            going: settled[2].length,
        },
    };
    let high = tail.high.as_ref().and(settled.last());
    let shape = Shape::Raked(RakedBay {
        gap: settled[0].length,
        across,
        balusters: tail.balusters.unwrap_or(Balusters::Plumb),
        rake,
        high: high.map(|high| high.length),
    });
    Ok(Bars { shape, settled })
}

const RAKED_WORDS: &[&str] = &[
    "along", "level", "plumb", "upright", "square", "rise", "riser", "going", "tread", "at",
    "high", "deg", "degree", "degrees",
];

fn raked_tail(cursor: &mut Cursor<'_>) -> Result<RakedTail, ReadingError> {
    let mut tail = RakedTail::default();
    loop {
        let here = cursor.here();
        let twice = if cursor.any_phrase(&["along the rail", "along the rake", "along"]) {
            tail.across.replace(Across::Along).is_some()
        } else if cursor.word("level") {
            tail.across.replace(Across::Level).is_some()
        } else if cursor.any_phrase(&["square to the rail", "square"]) {
            tail.balusters.replace(Balusters::Square).is_some()
        } else if cursor.any_phrase(&["plumb", "upright"]) {
            tail.balusters.replace(Balusters::Plumb).is_some()
        } else if cursor.word("high") {
            tail.high.replace(quantity(cursor, RAKED_WORDS)?).is_some()
        } else if let Some(slope) = slope(cursor, tail.slope.is_none())? {
            tail.slope.replace(slope).is_some()
        } else {
            return Ok(tail);
        };
        if twice {
            let found = quoted(cursor.slice(here.clone()));
            return Err(ReadingError::new(
                format!("{found} comes on top of the same said before"),
                here,
            )
            .help(RAKED));
        }
    }
}

/// `rise 7 3/4 going 10`, `at 37 deg`. Once the slope is known, `at` says where the
/// opening lies.
fn slope(cursor: &mut Cursor<'_>, may_be_angle: bool) -> Result<Option<Slope>, ReadingError> {
    if cursor.any_phrase(&["rise", "riser"]) {
        let rise = quantity(cursor, RAKED_WORDS)?;
        if !cursor.any_phrase(&["going", "tread", "run"]) {
            return Err(
                ReadingError::new("the going is missing behind the rise", cursor.here())
                    .help(RAKED),
            );
        }
        let going = quantity(cursor, RAKED_WORDS)?;
        return Ok(Some(Slope::Step(Box::new((rise, going)))));
    }
    let back = cursor.mark();
    let start = cursor.here().start;
    cursor.word("at");
    if !may_be_angle || !number_is_next(cursor) {
        cursor.back_to(back);
        return Ok(None);
    }
    let found = number(cursor)?;
    if !(cursor.eat(&Lexeme::Degree) || cursor.any_phrase(&["deg", "degree", "degrees"])) {
        cursor.back_to(back);
        return Ok(None);
    }
    cursor.eat(&Lexeme::Dot);
    let degrees = found.as_float();
    if degrees <= 0.0 || degrees > STEEPEST_DEGREES {
        let span = cursor.since(start);
        return Err(ReadingError::new(
            format!(
                "{} is no slope of a rail beside steps",
                quoted(cursor.slice(span.clone()))
            ),
            span,
        )
        .help("write the angle from the level, such as 37 deg, or rise 7 3/4 going 10 in"));
    }
    let angle = Angle::new::<degree>(degrees);
    Ok(Some(Slope::Angle(angle, angle_step(&found))))
}

/// To how much an angle was read: a degree, or its last decimal.
fn angle_step(found: &Number) -> Angle {
    let step = match found.part {
        FractionPart::Decimal { written, .. } => (0..written).fold(1.0, |step, _| step / 10.0),
        FractionPart::Fraction { denominator, .. } => {
            1.0 / f64::from(u32::try_from(denominator).unwrap_or(1))
        }
        FractionPart::Nothing => 1.0,
    };
    Angle::new::<degree>(step)
}

/// `4 1/2 in centres 0:1 3/4 6:1 12:1 3/4 in`: heights with diameters.
fn turned(cursor: &mut Cursor<'_>, context: Context, start: usize) -> Result<Bars, ReadingError> {
    const CENTRES: &[&str] = &[
        "centres",
        "centers",
        "centre",
        "center",
        "on centres",
        "on centers",
        "on centre",
        "on center",
        "apart",
        "spacing",
    ];
    let refuse = |message: &str, span: Range<usize>| {
        Err(ReadingError::new(message.to_owned(), span).help(TURNED))
    };
    if !number_is_next(cursor) {
        let span = cursor.since(start);
        return refuse("how far apart the centres are is missing", span);
    }
    let centres = quantity(
        cursor,
        &[
            "on", "centres", "centers", "centre", "center", "apart", "spacing",
        ],
    )?;
    if !cursor.any_phrase(CENTRES) {
        let span = cursor.since(start);
        return refuse("centres was expected behind their distance", span);
    }
    let mut pairs: Vec<Quantity> = Vec::new();
    while number_is_next(cursor) {
        pairs.push(length_without_unit(cursor)?);
        if !cursor.eat(&Lexeme::Colon) || !number_is_next(cursor) {
            let here = cursor.here();
            return refuse("a place of the profile is height:diameter", here);
        }
        pairs.push(length_without_unit(cursor)?);
    }
    if pairs.len() > 2 * MOST_STATIONS {
        let span = cursor.since(start);
        return refuse("a profile has 500 heights at the most", span);
    }
    lend_unit(cursor, &mut pairs)?;
    if pairs.is_empty() {
        let span = cursor.since(start);
        return refuse("the profile is missing: heights with diameters", span);
    }
    let behind: Vec<&Quantity> = pairs.iter().collect();
    let settled = settle_behind(cursor, context, &centres, &behind)?;
    let profile = settled[1..]
        .chunks_exact(2)
        .map(|pair| Station {
            height: pair[0].length,
            diameter: pair[1].length,
        })
        .collect();
    let span = cursor.since(start);
    let pair =
        TurnedPair::new(settled[0].length, profile).map_err(|error| no_profile(error, span))?;
    Ok(Bars {
        shape: Shape::Turned(pair),
        settled,
    })
}

/// A number whose unit stands elsewhere.
fn length_without_unit(cursor: &mut Cursor<'_>) -> Result<Quantity, ReadingError> {
    let found = number(cursor)?;
    Ok(Quantity {
        span: found.span.clone(),
        amount: WrittenAmount::One(found, None),
    })
}

/// The unit behind the last number belongs to it, and so to all.
fn lend_unit(cursor: &mut Cursor<'_>, pairs: &mut [Quantity]) -> Result<(), ReadingError> {
    let Some(last) = pairs.last_mut() else {
        return Ok(());
    };
    match unit(cursor) {
        Some(found) => {
            if let WrittenAmount::One(_, unit) = &mut last.amount {
                *unit = Some(found);
            }
            Ok(())
        }
        None => unknown_unit(cursor, &["at"]).map_or(Ok(()), Err),
    }
}

fn no_profile(error: TurnedError, span: Range<usize>) -> ReadingError {
    let help = match error {
        TurnedError::NotRising { .. } => {
            "write the heights from the bottom up; one may stand twice, where the baluster is cut square"
        }
        TurnedError::Touch { .. } => {
            "write the diameter, not the circumference, and the distance from centre to centre"
        }
        TurnedError::NotPositive | TurnedError::TooFewStations { .. } => TURNED,
    };
    ReadingError::new(error.to_string(), span).help(help)
}

/// `3 in spacing 1/8 in diameter 36 in free tension 200 lbf`.
fn cables(
    cursor: &mut Cursor<'_>,
    context: Context,
    strand: Strand,
    start: usize,
) -> Result<Bars, ReadingError> {
    const LABELS: &[&[&str]] = &[
        &[
            "spacing",
            "on centres",
            "on centers",
            "centres",
            "centers",
            "apart",
        ],
        &["diameter", "thick"],
        &["free", "span"],
    ];
    let parts = labelled_behind(cursor, LABELS, CABLES)?;
    let tension = if cursor.word("tension") {
        Some(force(cursor)?)
    } else {
        None
    };
    let all: Vec<&Quantity> = parts.iter().map(|part| &part.quantity).collect();
    let settled = settle(cursor, context, &all, BareZero::Refused)?;
    let of = |label: usize| {
        let found = parts.iter().position(|part| part.label == label);
        found.map(|found| settled[found].length)
    };
    let span = cursor.since(start);
    let (Some(spacing), Some(diameter)) = (of(0), of(1)) else {
        let missing = if of(0).is_none() {
            "spacing"
        } else {
            "diameter"
        };
        let message = format!(
            "the {missing} is missing from {}",
            shown(cursor.slice(span.clone()))
        );
        return Err(ReadingError::new(message, span).help(CABLES));
    };
    let run = Cables::new(strand, spacing, diameter)
        .and_then(|run| run.strung(of(2), tension))
        .map_err(|error| {
            let help = match error {
                CablesError::TensionAlone if strand == Strand::Rod => {
                    "leave the tension out: what holds a rod straight is its own stiffness"
                }
                CablesError::TensionAlone => {
                    "write the free length between posts too (36 in free), or leave the tension out"
                }
                CablesError::NotPositive | CablesError::Touch => CABLES,
            };
            ReadingError::new(error.to_string(), span).help(help)
        })?;
    Ok(Bars {
        shape: Shape::Cables(run),
        settled,
    })
}
