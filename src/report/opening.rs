//! The largest ball through one shape, as text and as JSON.

use std::io;
use std::io::Write;

use serde::Serialize;

use crate::geometry::Corner;
use crate::geometry::LargestBall;
use crate::geometry::Passage;
use crate::measure::Length;
use crate::measure::LengthUnit;
use crate::report::escape::one_line;
use crate::report::palette;
use crate::report::wrap::hanging;

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
}

/// The answer as text.
///
/// # Errors
/// Those of `out`.
pub fn opening_text(out: &mut dyn Write, answer: &OpeningAnswer<'_>) -> io::Result<()> {
    let OpeningAnswer { unit, largest, .. } = answer;
    writeln!(out, "{}", palette::heading(&one_line(answer.written)))?;
    let mut say = |text: &str| writeln!(out, "{}", hanging("  ", text));
    match largest.exact {
        Some(exact) => say(&format!(
            "The largest ball that passes measures {} across, exactly{}.",
            exact.exact(*unit),
            also_metric(exact, *unit)
        ))?,
        None => {
            say(&format!(
                "The largest ball that passes measures {} across.",
                between(largest, *unit)
            ))?;
            say(&format!(
                "Proven: a ball of {} passes, and none larger than {} mm does.",
                digits(largest.lower_mm, *unit),
                largest.upper_mm
            ))?;
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
        say(&passage(largest, ball, unit))?;
    }
    say("The shape was taken as exact; how sure a tape is, a survey counts (guardrule check).")?;
    say("A ball in the hand, or a disc of stiff card, settles it without arithmetic.")
}

/// One length for a reader, or two where the bounds lie apart.
fn between(largest: &LargestBall, unit: LengthUnit) -> String {
    let near = |mm: f64| {
        let text = Length::from_nanometres_rounded(mm * 1e6).readable(unit);
        if text.starts_with(|c: char| c.is_ascii_digit()) {
            format!("about {text}") // near a mark, and not proven to lie on it
        } else {
            text
        }
    };
    let (lower, upper) = (near(largest.lower_mm), near(largest.upper_mm));
    if lower == upper {
        lower
    } else {
        format!("from {lower} to {upper}")
    }
}

fn passage(largest: &LargestBall, ball: Length, unit: LengthUnit) -> String {
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
struct Record<'a> {
    shape: &'a str,
    diameter: f64,
    lower: f64,
    upper: f64,
    exact: bool,
    centre: Option<CentreRecord>,
    ball: Option<BallRecord>,
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
/// circle that fits; what does not exist is `null`.
///
/// # Errors
/// Those of `out`.
pub fn opening_json(out: &mut dyn Write, answer: &OpeningAnswer<'_>) -> io::Result<()> {
    let largest = &answer.largest;
    let record = Record {
        shape: answer.written,
        diameter: largest.lower_mm,
        lower: largest.lower_mm,
        upper: largest.upper_mm,
        exact: largest.exact.is_some(),
        centre: largest.centre.map(|centre| CentreRecord {
            x: centre.x_mm,
            y: centre.y_mm,
        }),
        ball: answer.ball.map(|(ball, _)| BallRecord {
            size: ball.nanometres_as_float() / 1e6,
            passes: match largest.against(ball) {
                Passage::CannotTell => None,
                Passage::Passes => Some(true),
                Passage::Stops => Some(false),
            },
        }),
    };
    serde_json::to_writer(&mut *out, &record)?;
    writeln!(out)
}
