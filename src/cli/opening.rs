//! `guardrule opening SHAPE`

use crate::cli::codes;
use std::io;
use std::io::Write;

use crate::cli::args::OpeningArgs;
use crate::cli::args::OpeningFormat;
use crate::cli::exit::Exit;
use crate::cli::terminal::Terminal;
use crate::geometry::LargestBall;
use crate::geometry::Passage;
use crate::geometry::Shape;
use crate::geometry::Sketch;
use crate::geometry::StairTriangle;
use crate::items::Item;
use crate::quantities::LengthUnit;
use crate::reading::Bound;
use crate::reading::ReadingError;
use crate::reading::StairReading;
use crate::reading::Value;
use crate::reading::parse;
use crate::reading::parse_length;
use crate::report;
use crate::report::OpeningAnswer;
use crate::report::TextPage;
use crate::report::one_line;

/// What to write, for a reading that is no single shape.
const FORMS: &str = "write a shape, such as triangle 7 3/4 x 10 in, slot 4 1/4 in, or \
    polygon 0:0 120:0 60:90 mm";

pub(super) fn run(args: &OpeningArgs, terminal: &mut Terminal<'_>) -> io::Result<Exit> {
    let written = args.shape.join(" ");
    let found = match shape(&written) {
        Ok(found) => found,
        Err(refusal) => return refused(&refusal, terminal),
    };
    let ball = match args.ball.as_deref().map(|ball| parse_length(ball, None)) {
        None => None,
        Some(Ok(ball)) => Some((ball.length, ball.unit)),
        Some(Err(error)) => return refused(&error.into(), terminal),
    };
    for caution in &found.cautions {
        let code = codes::UNUSUAL_SHAPE;
        writeln!(terminal.err(), "warning[{code}]: {}", one_line(caution))?;
    }
    let answer = OpeningAnswer {
        written: &written,
        unit: found.unit,
        origin: found.origin,
        largest: found.largest,
        ball,
        notes: report::opening_notes(&found.value, ball.map(|(ball, _)| ball), found.unit),
        sketch: found.sketch,
    };
    let width = terminal.columns();
    let mut out = terminal.out();
    match args.format {
        OpeningFormat::Json => report::opening_json(&mut out, &answer)?,
        OpeningFormat::Svg => report::opening_svg(&mut out, &answer)?,
        OpeningFormat::Text => report::opening_text(&mut TextPage::new(&mut out, width), &answer)?,
    }
    out.flush()?;
    Ok(match ball.map(|(ball, _)| answer.largest.against(ball)) {
        None | Some(Passage::Stops) => Exit::Met,
        Some(Passage::Passes) => Exit::FallsShort,
        Some(Passage::CannotTell) => Exit::Undecided,
    })
}

/// A shape, the unit it was written in, and where its corners are counted from.
struct GivenShape {
    largest: LargestBall,
    unit: LengthUnit,
    origin: &'static str,
    value: Value,
    sketch: Sketch,
    cautions: Vec<String>,
}

/// Why the command line names no shape.
struct NoShape {
    message: String,
    help: String,
}

impl From<ReadingError> for NoShape {
    fn from(error: ReadingError) -> NoShape {
        NoShape {
            help: error.help.unwrap_or_else(|| FORMS.to_owned()),
            message: error.message,
        }
    }
}

fn refused(refusal: &NoShape, terminal: &mut Terminal<'_>) -> io::Result<Exit> {
    let mut err = terminal.err();
    let code = codes::CANNOT_READ_SHAPE;
    writeln!(err, "error[{code}]: {}", one_line(&refusal.message))?;
    writeln!(err, "  = help: {}", one_line(&refusal.help))?;
    Ok(Exit::BadInput)
}

/// Reads a shape as a survey's cell would be.
fn shape(written: &str) -> Result<GivenShape, NoShape> {
    let no_shape = |message: &str| NoShape {
        message: message.to_owned(),
        help: FORMS.to_owned(),
    };
    let first = written.split_whitespace().next().unwrap_or_default();
    let begins = |words: &[&str]| words.iter().any(|word| first.eq_ignore_ascii_case(word));
    if begins(&["v", "vee"]) {
        return Err(NoShape {
            message: "an opening that is open at the top has no largest ball; its angle counts"
                .to_owned(),
            help: "write it as v opening in a survey, and judge it with guardrule check".to_owned(),
        });
    }
    let item = if begins(&["rise", "riser", "going", "tread", "lift"]) {
        Item::StairTriangle
    } else {
        Item::Opening
    };
    let parsed = parse(item, written, None)?;
    let [reading] = parsed.readings.as_slice() else {
        return Err(no_shape("one shape at a time, and several were found"));
    };
    let (largest, sketch, unit, origin) = match &reading.value {
        Value::Measure(gap) if gap.bound == Bound::Exactly => {
            let slot = Shape::Slot { width: gap.length };
            (slot.largest_ball(), slot.sketch(), gap.unit, "")
        }
        Value::Shape(found) => (
            found.shape.largest_ball(),
            found.shape.sketch(),
            found.unit,
            origin(&found.shape),
        ),
        Value::StairTriangle(step) => {
            let triangle = at_a_step(step)?;
            let origin = "across:up from the corner of riser and tread";
            (
                triangle.largest_ball(),
                triangle.sketch(),
                step.unit,
                origin,
            )
        }
        Value::Age(_)
        | Value::Ball(_)
        | Value::Count(_)
        | Value::Date { .. }
        | Value::Fasteners(_)
        | Value::Foothold(_)
        | Value::VOpening(_)
        | Value::Measure(_)
        | Value::None
        | Value::Force(_)
        | Value::Pull(_)
        | Value::Section(..)
        | Value::Stick(_)
        | Value::Text(_)
        | Value::ThingToClimb(_)
        | Value::Unknown
        | Value::Word(_)
        | Value::Years(_) => {
            return Err(no_shape(
                "this says something of an opening, and not its shape",
            ));
        }
    };
    Ok(GivenShape {
        largest,
        unit,
        origin,
        value: reading.value.clone(),
        sketch,
        cautions: parsed.cautions,
    })
}

fn at_a_step(step: &StairReading) -> Result<StairTriangle, NoShape> {
    let Some(lift) = step.lift else {
        return Err(NoShape {
            message: "the lift is missing: how far the rail's underside stands above the line of \
                the step noses, plumb"
                .to_owned(),
            help: "write it behind: lift 1 in, or lift 0 where the rail rests on the noses"
                .to_owned(),
        });
    };
    step.triangle(lift).map_err(|error| NoShape {
        message: error.to_string(),
        help: "try a ball in the hand".to_owned(),
    })
}

fn origin(shape: &Shape) -> &'static str {
    match shape {
        Shape::Circle { .. } => "across:up from the middle",
        Shape::Polygon(_) => "across:up, as the corners are",
        Shape::Rectangle { .. } => "across:up from a corner",
        Shape::Cables(_) | Shape::Raked(_) | Shape::Slot { .. } => "",
        Shape::Triangle { .. } => "across:up from the square corner",
        Shape::Turned(_) => "across from the left baluster's axis:up from height 0",
    }
}
