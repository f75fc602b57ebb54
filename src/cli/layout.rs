//! `guardrule layout`: balusters for one bay.

use std::io;
use std::io::Write;

use uom::si::angle::radian;

use crate::cli::args::EndsArg;
use crate::cli::args::LayoutArgs;
use crate::cli::args::LayoutFormat;
use crate::cli::codes::NO_LAYOUT;
use crate::cli::exit::Exit;
use crate::cli::terminal::Terminal;
use crate::geometry::AtTheLimit;
use crate::geometry::BayEnds;
use crate::geometry::BayError;
use crate::geometry::BayPlan;
use crate::geometry::GapLimit;
use crate::geometry::UsualBuilding;
use crate::geometry::added_between;
use crate::geometry::on_each_tread;
use crate::geometry::usual_drying;
use crate::quantities::Length;
use crate::quantities::LengthUnit;
use crate::reading::ReadingError;
use crate::reading::parse_length;
use crate::reading::parse_sides;
use crate::reading::parse_slope;
use crate::report;
use crate::report::LayoutAnswer;
use crate::report::one_line;

pub(super) fn run(args: &LayoutArgs, terminal: &mut Terminal<'_>) -> io::Result<Exit> {
    let asked = match LayoutAsked::read(args) {
        Ok(asked) => asked,
        Err(faults) => {
            for fault in faults {
                fault.write(terminal)?;
            }
            return Ok(Exit::BadInput);
        }
    };
    let answer = match asked.answer() {
        Ok(answer) => answer,
        Err(error) => {
            Fault::of_layout(error).write(terminal)?;
            return Ok(Exit::BadInput);
        }
    };
    let columns = terminal.columns();
    let mut out = terminal.out();
    match args.format {
        LayoutFormat::Json => report::layout_json(&mut out, &answer)?,
        LayoutFormat::Svg => report::layout_svg(&mut out, &answer)?,
        LayoutFormat::Text => report::layout_text(&mut out, &answer, columns)?,
    }
    out.flush()?;
    Ok(Exit::Met)
}

/// One option that cannot be read, or all of them together.
struct Fault {
    message: String,
    help: String,
}

impl Fault {
    fn of_option(option: &str, error: ReadingError) -> Fault {
        Fault {
            message: format!("{option}: {}", error.message),
            help: error
                .help
                .unwrap_or_else(|| format!("write {option} \"72 in\" or {option} \"1800 mm\"")),
        }
    }

    fn of_layout(error: BayError) -> Fault {
        let help = match error {
            BayError::NothingLeft => {
                "a smaller --tolerance, drier or narrower balusters (--dries-by)"
            }
            BayError::NotPositive => "lengths above nothing for --clear, --baluster and --limit",
            BayError::TooMany => "one bay, from post to post",
            BayError::TooTight => "a wider --limit, a finer --graduation, or narrower balusters",
            BayError::Wall => "the slope of the rail, such as --rake \"7 3/4 x 10 in\"",
        };
        Fault {
            message: error.to_string(),
            help: help.to_owned(),
        }
    }

    fn write(&self, terminal: &mut Terminal<'_>) -> io::Result<()> {
        let mut err = terminal.err();
        let code = NO_LAYOUT.number;
        writeln!(err, "error[G{code}]: {}", one_line(&self.message))?;
        writeln!(err, "  = help: {}", one_line(&self.help))
    }
}

/// The options as quantities.
struct LayoutAsked {
    plan: BayPlan,
    unit: LengthUnit,
    going: Option<Length>,
    between: Vec<Length>,
    tolerance_taken: bool,
    drying_taken: bool,
}

impl LayoutAsked {
    /// Reads all options; all faults come together.
    fn read(args: &LayoutArgs) -> Result<LayoutAsked, Vec<Fault>> {
        let mut faults = Vec::new();
        let mut length = |option: &str, text: &str| match parse_length(text, None) {
            Ok(measure) => Some((measure.length, measure.unit)),
            Err(error) => {
                faults.push(Fault::of_option(option, error));
                None
            }
        };
        let clear = args.clear.as_deref().map(|text| length("--clear", text));
        let baluster = length("--baluster", &args.baluster);
        let limit = length("--limit", &args.limit);
        let graduation = args
            .graduation
            .as_deref()
            .map(|text| length("--graduation", text));
        let tolerance = args
            .tolerance
            .as_deref()
            .map(|text| length("--tolerance", text));
        let dries_by = args
            .dries_by
            .as_deref()
            .map(|text| length("--dries-by", text));
        let between: Vec<_> = args
            .between
            .iter()
            .map(|text| length("--between", text))
            .collect();
        let rake = match args.rake.as_deref().map(parse_slope) {
            Some(Err(error)) => {
                faults.push(Fault::of_option("--rake", error));
                None
            }
            Some(Ok(angle)) => Some(angle),
            None => None,
        };
        let (Some((baluster, _)), Some((limit, unit)), true) = (baluster, limit, faults.is_empty())
        else {
            return Err(faults);
        };
        let given = |one: Option<Option<(Length, LengthUnit)>>| one.flatten().map(|(long, _)| long);
        let unit = clear.flatten().map_or(unit, |(_, unit)| unit);
        let usual = UsualBuilding::in_unit(unit);
        let plan = BayPlan {
            clear: given(clear).unwrap_or(limit),
            baluster,
            limit: GapLimit {
                length: limit,
                exactly: if args.at_most {
                    AtTheLimit::Fits
                } else {
                    AtTheLimit::Passes
                },
            },
            ends: match args.ends {
                EndsArg::Baluster => BayEnds::Baluster,
                EndsArg::Gap => BayEnds::Gap,
                EndsArg::HalfGap => BayEnds::HalfGap,
            },
            rake,
            graduation: given(graduation).unwrap_or(usual.graduation),
            tolerance: given(tolerance).unwrap_or(usual.tolerance),
            shrinkage: given(dries_by).unwrap_or_else(|| usual_drying(baluster)),
        };
        Ok(LayoutAsked {
            going: args.rake.as_deref().and_then(going),
            between: between
                .into_iter()
                .flatten()
                .map(|(long, _)| long)
                .collect(),
            tolerance_taken: tolerance.is_none(),
            drying_taken: dries_by.is_none(),
            plan,
            unit,
        })
    }

    fn answer(&self) -> Result<LayoutAnswer, BayError> {
        let between = added_between(&self.plan, &self.between)?;
        let layout = if self.between.is_empty() {
            Some(self.plan.layout()?)
        } else {
            None
        };
        Ok(LayoutAnswer {
            plan: self.plan,
            unit: self.unit,
            layout,
            between,
            each_tread: self
                .going
                .and_then(|going| on_each_tread(&self.plan, going)),
            degrees: self
                .plan
                .rake
                .map(|angle| angle.get::<radian>().to_degrees()),
            tolerance_taken: self.tolerance_taken,
            drying_taken: self.drying_taken,
        })
    }
}

/// The going of `7 3/4 x 10 in`; of an angle there is none.
fn going(rake: &str) -> Option<Length> {
    parse_sides(rake).ok().map(|(_, going, _)| going)
}
