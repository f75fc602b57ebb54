//! The largest ball through one shape, as text and as JSON.

use std::io;
use std::io::Write;

use serde::Serialize;
use uom::si::force::newton;
use uom::si::force::pound_force;

use crate::geometry::Cables;
use crate::geometry::Corner;
use crate::geometry::LargestBall;
use crate::geometry::Passage;
use crate::geometry::Risers;
use crate::geometry::Shape;
use crate::geometry::Sketch;
use crate::geometry::Strand;
use crate::quantities::Length;
use crate::quantities::LengthUnit;
use crate::quantities::pounds_force;
use crate::reading::Value;
use crate::report::cautions::DEFERRAL;
use crate::report::escape::one_line;
use crate::report::wrap::TextPage;
use crate::report::wrap::hanging_in;
use crate::report::wrap::heading_in;

/// What was asked about a shape, and the answer.
#[derive(Clone, Debug)]
pub struct OpeningAnswer<'a> {
    /// The shape as it was written.
    pub written: &'a str,
    /// The unit it was written in.
    pub unit: LengthUnit,
    /// From where its centre is counted, in a reader's words.
    pub origin: &'static str,
    /// The largest ball.
    pub largest: LargestBall,
    /// A ball that was asked about, in the unit in which it was written.
    pub ball: Option<(Length, LengthUnit)>,
    /// What the shape leaves open, in a reader's words ([`opening_notes`]).
    pub notes: Vec<String>,
    /// What to draw.
    pub sketch: Sketch,
}

/// What must be said beside the clear opening of a shape: what no reading of a tape
/// bounds, and what statics says of cables whose tension was measured. The latter
/// explains and decides nothing; `ball` is the one whose passage is of interest.
#[must_use]
pub fn opening_notes(value: &Value, ball: Option<Length>, unit: LengthUnit) -> Vec<String> {
    if let Value::StairTriangle(step) = value {
        return step_notes(step.risers, step.lift);
    }
    let Value::Shape(found) = value else {
        return Vec::new();
    };
    match &found.shape {
        Shape::Cables(run) => cable_notes(run, ball, unit),
        Shape::Turned(_) => vec![
            "Between its heights the profile was taken as straight, and the opening as \
             closed by rails at its ends; the upper bound holds where the balusters go on \
             no thinner."
                .to_owned(),
        ],
        Shape::Circle { .. }
        | Shape::Polygon(_)
        | Shape::Raked(_)
        | Shape::Rectangle { .. }
        | Shape::Slot { .. }
        | Shape::Triangle { .. } => Vec::new(),
    }
}

fn step_notes(risers: Risers, lift: Option<Length>) -> Vec<String> {
    let mut notes = Vec::new();
    if risers == Risers::Open {
        notes.push(
            "The risers are open: tread, rail and the tread above bound the hole from three sides, \
             and behind the tread it goes on. The gap between two treads is a reading of its own \
             (riser opening)."
                .to_owned(),
        );
    }
    if lift.is_some_and(|lift| lift > Length::ZERO) {
        notes.push(
            "The lifted rail joins the triangles into one opening along the flight; the steps \
             were taken as equal."
                .to_owned(),
        );
    }
    notes
}

fn cable_notes(run: &Cables, ball: Option<Length>, unit: LengthUnit) -> Vec<String> {
    let what = match run.strand() {
        Strand::Cable => "Cables",
        Strand::Rod => "Rods as slender as these",
    };
    let mut notes = vec![format!(
        "{what} spread under a push: at rest the gap is this wide, and only a ball that is pushed \
         tells whether a larger one passes."
    )];
    let Some(taut) = run.taut() else {
        return notes;
    };
    let short = |length: Length| length.readable(unit);
    let push = |pounds: f64| {
        let push = pounds_force(pounds);
        if unit.is_imperial() {
            (push, format!("{pounds} lbf"))
        } else {
            (push, format!("{:.0} N", push.get::<newton>()))
        }
    };
    // the larger is that for which infill is designed (IRC 2018
    // Table R301.5, 50 lbf on a square foot)
    let ((small, small_said), (design, design_said)) = (push(10.0), push(50.0));
    notes.push(format!(
        "An explanation, no verdict: by statics alone (k = 4T/L; friction, stretch and the posts \
         left out) a push of {small_said} at mid-span moves one cable {}, and one of {design_said} \
         lets a ball of {} through.",
        short(taut.gives(small)),
        short(taut.ball_under(design)),
    ));
    if let Some(ball) = ball.filter(|ball| *ball > run.at_rest()) {
        let push = taut.push_for(ball);
        let push = if unit.is_imperial() {
            format!("{:.1} lbf", push.get::<pound_force>())
        } else {
            format!("{:.0} N", push.get::<newton>())
        };
        notes.push(format!(
            "By the same sum a ball of {} takes a push of about {push}.",
            ball.exact(unit)
        ));
    }
    notes
}

/// The answer as text.
///
/// # Errors
/// Those of `out`.
pub fn opening_text(out: &mut TextPage<'_>, answer: &OpeningAnswer<'_>) -> io::Result<()> {
    let OpeningAnswer { unit, largest, .. } = answer;
    writeln!(
        out,
        "{}",
        heading_in(out.width(), "", &one_line(answer.written))
    )?;
    let width = out.width();
    let mut say = |text: &str| writeln!(out, "{}", hanging_in(width, "  ", text));
    match (largest.exact, largest.upper_mm) {
        (Some(exact), Some(_)) => say(&format!(
            "The largest ball that passes measures {} across, exactly{}.",
            exact.exact(*unit),
            also_metric(exact, *unit)
        ))?,
        (Some(_), None) => say(&largest_in_words(largest, *unit))?,
        (None, upper) => {
            let lower = digits(largest.lower_mm, *unit);
            say(&largest_in_words(largest, *unit))?;
            match upper {
                Some(upper) => say(&format!(
                    "Proven: a ball of {lower} passes, and none larger than {upper} mm does."
                ))?,
                None => say(&format!("Proven: a ball of {lower} passes."))?,
            }
        }
    }
    if let Some(centre) = largest.centre {
        say(&format!(
            "Its centre passes at {} ({}).",
            place(centre, *unit),
            answer.origin
        ))?;
    }
    if let Some((ball, unit)) = answer.ball {
        say(&passage_in_words(largest, ball, unit))?;
    }
    for note in &answer.notes {
        say(note)?;
    }
    say("The shape was taken as exact; how sure a tape is, a survey counts (guardrule check).")?;
    say("A ball in the hand, or a disc of stiff card, settles it without arithmetic.")?;
    say(DEFERRAL)
}

/// The largest ball in a sentence.
pub(super) fn largest_in_words(largest: &LargestBall, unit: LengthUnit) -> String {
    match (largest.upper_mm, largest.exact) {
        (Some(_), Some(exact)) => format!(
            "The largest ball that passes measures {} across, exactly.",
            exact.exact(unit)
        ),
        (Some(upper_mm), None) => format!(
            "The largest ball that passes measures {} across.",
            between(largest.lower_mm, upper_mm, unit)
        ),
        (None, exact) => {
            let size = exact.map_or_else(
                || between(largest.lower_mm, largest.lower_mm, unit),
                |exact| exact.exact(unit),
            );
            format!("A ball of {size} passes, and perhaps a larger one.")
        }
    }
}

/// One length for a reader, or two where the bounds lie apart.
fn between(lower_mm: f64, upper_mm: f64, unit: LengthUnit) -> String {
    let near = |mm: f64| {
        let text = Length::from_nanometres_rounded(mm * 1e6).readable(unit);
        if text.starts_with(|c: char| c.is_ascii_digit()) {
            format!("about {text}") // near a mark, and not proven to lie on it
        } else {
            text
        }
    };
    let (lower, upper) = (near(lower_mm), near(upper_mm));
    if lower == upper {
        lower
    } else {
        format!("from {lower} to {upper}")
    }
}

fn passage_in_words(largest: &LargestBall, ball: Length, unit: LengthUnit) -> String {
    let size = ball.exact(unit);
    match largest.against(ball) {
        Passage::CannotTell => {
            format!("Whether a ball of {size} passes, the sum cannot tell: try one.")
        }
        Passage::Passes => format!("A ball of {size} passes."),
        Passage::Stops => format!("A ball of {size} is stopped."),
    }
}

/// The same in millimetres, behind a length in inches that prints as such.
fn also_metric(length: Length, unit: LengthUnit) -> String {
    let text = length.exact(unit);
    if text.ends_with(" mm") {
        String::new()
    } else {
        format!(" ({length})")
    }
}

/// Millimetres in full, and behind them the unit the person wrote to nine decimals.
fn digits(mm: f64, unit: LengthUnit) -> String {
    match unit {
        LengthUnit::Millimetre => format!("{mm} mm"),
        LengthUnit::Inch | LengthUnit::Foot | LengthUnit::Centimetre | LengthUnit::Metre => {
            let (value, symbol) = in_unit(mm, unit);
            format!("{mm} mm ({value:.9} {symbol})")
        }
    }
}

fn place(at: Corner, unit: LengthUnit) -> String {
    let ((x, symbol), (y, _)) = (in_unit(at.x_mm, unit), in_unit(at.y_mm, unit));
    let short = |v: f64| (v * 1000.0).round() / 1000.0 + 0.0;
    format!("{}:{} {symbol}", short(x), short(y))
}

/// A number of millimetres in a unit; feet as inches, as they are read.
fn in_unit(mm: f64, unit: LengthUnit) -> (f64, &'static str) {
    let one = match unit {
        LengthUnit::Inch | LengthUnit::Foot => 25.4,
        LengthUnit::Millimetre => 1.0,
        LengthUnit::Centimetre => 10.0,
        LengthUnit::Metre => 1000.0,
    };
    let unit = match unit {
        LengthUnit::Foot | LengthUnit::Inch => LengthUnit::Inch,
        LengthUnit::Millimetre | LengthUnit::Centimetre | LengthUnit::Metre => unit,
    };
    (mm / one, unit.symbol())
}

#[derive(Serialize)]
struct OpeningRecord<'a> {
    shape: &'a str,
    diameter: f64,
    lower: f64,
    upper: Option<f64>,
    exact: bool,
    centre: Option<CentreRecord>,
    ball: Option<BallRecord>,
    notes: &'a [String],
    deferral: &'static str,
}

#[derive(Serialize)]
struct CentreRecord {
    x: f64,
    y: f64,
}

#[derive(Serialize)]
struct BallRecord {
    size: f64,
    passes: Option<bool>,
}

/// The answer as one JSON object, lengths in millimetres. `diameter` is that of the
/// circle that fits; what does not exist, or is not bounded, is `null`.
///
/// # Errors
/// Those of `out`.
pub fn opening_json(out: &mut dyn Write, answer: &OpeningAnswer<'_>) -> io::Result<()> {
    let largest = &answer.largest;
    let record = OpeningRecord {
        shape: answer.written,
        diameter: largest.lower_mm,
        lower: largest.lower_mm,
        upper: largest.upper_mm,
        exact: largest.exact.is_some() && largest.upper_mm.is_some(),
        centre: largest.centre.map(|centre| CentreRecord {
            x: centre.x_mm,
            y: centre.y_mm,
        }),
        ball: answer.ball.map(|(ball, _)| BallRecord {
            size: ball.millimetres_as_float(),
            passes: match largest.against(ball) {
                Passage::CannotTell => None,
                Passage::Passes => Some(true),
                Passage::Stops => Some(false),
            },
        }),
        notes: &answer.notes,
        deferral: DEFERRAL,
    };
    serde_json::to_writer(&mut *out, &record)?;
    writeln!(out)
}
