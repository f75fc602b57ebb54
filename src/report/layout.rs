//! Balusters of one bay, as text and as JSON.

use std::io;
use std::io::Write;

use serde::Serialize;
use textwrap::core::display_width;

use crate::geometry::AtTheLimit;
use crate::geometry::BayEnds;
use crate::geometry::BayLayout;
use crate::geometry::BayPlan;
use crate::geometry::Infilled;
use crate::geometry::USUAL_DRYING;
use crate::quantities::Length;
use crate::quantities::LengthUnit;
use crate::report::cautions::DEFERRAL;
use crate::report::millimetres::Millimetres;
use crate::report::palette;
use crate::report::wrap::hanging_in;

/// A bay, and where its balusters stand.
#[derive(Clone, Debug)]
pub struct LayoutAnswer {
    /// What was asked.
    pub plan: BayPlan,
    /// The unit in which it was asked.
    pub unit: LengthUnit,
    /// The layout; `None` where balusters are put between others.
    pub layout: Option<BayLayout>,
    /// Gaps that are there, with what is put into each.
    pub between: Vec<Infilled>,
    /// How many balusters on each tread would do, and the gap that they leave.
    pub each_tread: Option<(u8, Length)>,
    /// The slope of the rail in degrees; `None` where it is level.
    pub degrees: Option<f64>,
    /// Whether the tolerance was taken, as nobody stated it.
    pub tolerance_taken: bool,
    /// Whether the drying was taken, as nobody stated it.
    pub drying_taken: bool,
}

/// What the answer is worth, and what it leaves to others.
const CAUTIONS: [&str; 4] = [
    "The bay is open while balusters are out: close the way to it, do one bay at a time, and \
     leave none open overnight.",
    "Measure each bay anew: two bays that look alike may differ.",
    "Nothing is said of whether post and rail hold, of the height, or of the gap below the rail.",
    "Ask the building office before you begin: new work may need a permit and must keep to \
     today's rules.",
];

impl LayoutAnswer {
    fn short(&self, length: Length) -> String {
        length.readable(self.unit)
    }

    fn first_post(&self) -> &'static str {
        match self.degrees {
            Some(_) => "the upper post's face, along the rail",
            None => "the left post's face",
        }
    }

    pub(super) fn limit_says(&self) -> String {
        let limit = self.plan.limit.length.exact(self.unit);
        match self.plan.limit.exactly {
            AtTheLimit::Fits => format!("No gap may be wider than {limit}"),
            AtTheLimit::Passes => format!("A ball of {limit} must not pass"),
        }
    }

    /// What is kept free of the limit, and why.
    fn kept_free(&self) -> String {
        let taken = |taken: bool| if taken { " (taken as usual)" } else { "" };
        let dries = if self.drying_taken {
            format!(" ({USUAL_DRYING}, taken as usual)")
        } else {
            String::new()
        };
        format!(
            "{}: a gap is drawn no wider than {}, so that one that comes out up to {} off{} and \
             balusters that dry narrower by {}{dries} still keep it.",
            self.limit_says(),
            self.plan.target().readable_down(self.unit),
            self.plan.tolerance.exact(self.unit),
            taken(self.tolerance_taken),
            self.plan.shrinkage.readable_up(self.unit),
        )
    }

    fn notes(&self) -> Vec<String> {
        let mut notes = vec![self.kept_free()];
        if self.drying_taken {
            notes.push(
                "Balusters that are wet from treatment shrink more than twice as much: say how \
                 much with --dries-by, or let them dry first."
                    .to_owned(),
            );
        }
        if let Some((count, gap)) = self.each_tread {
            let bars = if count == 1 { "baluster" } else { "balusters" };
            notes.push(format!(
                "On the treads, {count} {bars} on each would do: {} between them, measured level.",
                self.short(gap)
            ));
        }
        notes
    }
}

/// The answer as text, in lines of at most so many columns.
///
/// # Errors
/// Those of `out`.
pub fn layout_text(out: &mut dyn Write, answer: &LayoutAnswer, columns: usize) -> io::Result<()> {
    let baluster = answer.plan.baluster.exact(answer.unit);
    if let Some(layout) = &answer.layout {
        let clear = answer.plan.clear.exact(answer.unit);
        let says = match layout.marks.len() {
            0 => format!("No baluster is needed in a bay of {clear}."),
            count => format!("{} of {baluster} in a bay of {clear}.", balusters(count)),
        };
        writeln!(out, "{}", palette::heading(&hanging_in(columns, "", &says)))?;
        whole_bay(out, answer, layout, columns)?;
    } else {
        let count: usize = answer
            .between
            .iter()
            .map(|one| one.layout.marks.len())
            .sum();
        let says = match count {
            0 => "No baluster needs to be added.".to_owned(),
            count => format!("{} of {baluster} to add.", balusters(count)),
        };
        writeln!(out, "{}", palette::heading(&hanging_in(columns, "", &says)))?;
        for gap in &answer.between {
            writeln!(out, "{}", hanging_in(columns, "  ", &added(answer, gap)))?;
        }
    }
    writeln!(out)?;
    for note in answer.notes() {
        writeln!(out, "{}", hanging_in(columns, "", &note))?;
    }
    writeln!(out)?;
    for caution in CAUTIONS.iter().chain([&DEFERRAL]) {
        writeln!(out, "{}", hanging_in(columns, "- ", caution))?;
    }
    Ok(())
}

fn balusters(count: usize) -> String {
    if count == 1 {
        "1 baluster".to_owned()
    } else {
        format!("{count} balusters")
    }
}

fn added(answer: &LayoutAnswer, gap: &Infilled) -> String {
    let wide = gap.gap.exact(answer.unit);
    let marks: Vec<String> = gap
        .layout
        .marks
        .iter()
        .map(|mark| mark.exact(answer.unit))
        .collect();
    match marks.as_slice() {
        [] => format!("gap of {wide}: narrow enough as it is"),
        marks => format!(
            "gap of {wide}: {}, near face at {} from the left face of the gap; leaves {}",
            balusters(marks.len()),
            marks.join(", "),
            answer.short(gap.layout.largest_gap),
        ),
    }
}

fn whole_bay(
    out: &mut dyn Write,
    answer: &LayoutAnswer,
    layout: &BayLayout,
    columns: usize,
) -> io::Result<()> {
    let level = if answer.degrees.is_some() {
        ", measured level"
    } else {
        ""
    };
    let mut say = |text: &str| writeln!(out, "{}", hanging_in(columns, "  ", text));
    say(&format!(
        "Gaps of {}{level}; between the marks none is wider than {}.",
        answer.short(layout.gap),
        layout.largest_gap.readable_up(answer.unit)
    ))?;
    if layout.marks.is_empty() {
        return Ok(());
    }
    say(&format!(
        "Near face of each baluster, all measured from {}:",
        answer.first_post()
    ))?;
    writeln!(out)?;
    marks(out, answer, layout, columns)?;
    writeln!(out)?;
    let mut say = |text: &str| writeln!(out, "{}", hanging_in(columns, "  ", text));
    say(&format!(
        "A block of {} holds a baluster while you fix it. Place by the marks: the error of a \
         block adds up from gap to gap.",
        layout.spacer.exact(answer.unit)
    ))?;
    if answer.plan.ends == BayEnds::HalfGap {
        say("At each post stands half a gap.")?;
    }
    Ok(())
}

/// The marks in columns, counted down each column.
fn marks(
    out: &mut dyn Write,
    answer: &LayoutAnswer,
    layout: &BayLayout,
    columns: usize,
) -> io::Result<()> {
    let count = layout.marks.len();
    let digits = count.to_string().len();
    let cells: Vec<String> = (1..)
        .zip(&layout.marks)
        .map(|(number, mark): (usize, _)| format!("{number:>digits$}  {}", mark.exact(answer.unit)))
        .collect();
    let wide = cells
        .iter()
        .map(|cell| display_width(cell))
        .max()
        .unwrap_or(0)
        + 4;
    let across = (columns.saturating_sub(2) / wide).max(1);
    let down = count.div_ceil(across);
    for row in 0..down {
        let line: Vec<String> = cells
            .iter()
            .skip(row)
            .step_by(down)
            .map(|cell| format!("{cell:<wide$}"))
            .collect();
        writeln!(out, "  {}", line.concat().trim_end())?;
    }
    Ok(())
}

#[derive(Serialize)]
struct BayRecord {
    count: usize,
    gap: Millimetres,
    spacing: Millimetres,
    spacer: Millimetres,
    largest_gap: Millimetres,
    marks: Vec<Millimetres>,
}

#[derive(Serialize)]
struct BetweenRecord {
    existing: Millimetres,
    #[serde(flatten)]
    bay: BayRecord,
}

#[derive(Serialize)]
struct LayoutRecord {
    #[serde(flatten)]
    bay: BayRecord,
    clear: Option<Millimetres>,
    baluster: Millimetres,
    limit: Millimetres,
    at_most: bool,
    ends: &'static str,
    rake_degrees: Option<f64>,
    graduation: Millimetres,
    tolerance: Millimetres,
    dries_by: Millimetres,
    target: Millimetres,
    each_tread: Option<u8>,
    measured_from: &'static str,
    between: Vec<BetweenRecord>,
    cautions: [&'static str; 4],
    deferral: &'static str,
}

fn record(layout: Option<&BayLayout>, count: usize) -> BayRecord {
    let length = |of: fn(&BayLayout) -> Length| Millimetres(layout.map(of).unwrap_or_default());
    BayRecord {
        count,
        gap: length(|layout| layout.gap),
        spacing: length(|layout| layout.spacing),
        spacer: length(|layout| layout.spacer),
        largest_gap: length(|layout| layout.largest_gap),
        marks: layout
            .map(|layout| layout.marks.iter().copied().map(Millimetres).collect())
            .unwrap_or_default(),
    }
}

/// The answer as one JSON object, lengths in millimetres: `count`, `gap`, `spacing`,
/// `spacer`, `largest_gap`, `marks[]`, and what they rest on. With balusters put
/// between others, `between[]` has the same keys for each gap, `count` is of them
/// all, and the other lengths are 0.
///
/// # Errors
/// Those of `out`.
pub fn layout_json(out: &mut dyn Write, answer: &LayoutAnswer) -> io::Result<()> {
    let plan = &answer.plan;
    let added: usize = answer
        .between
        .iter()
        .map(|one| one.layout.marks.len())
        .sum();
    let count = answer
        .layout
        .as_ref()
        .map_or(added, |layout| layout.marks.len());
    let record = LayoutRecord {
        bay: record(answer.layout.as_ref(), count),
        clear: answer.layout.is_some().then_some(Millimetres(plan.clear)),
        baluster: Millimetres(plan.baluster),
        limit: Millimetres(plan.limit.length),
        at_most: plan.limit.exactly == AtTheLimit::Fits,
        ends: match plan.ends {
            BayEnds::Baluster => "baluster",
            BayEnds::Gap => "gap",
            BayEnds::HalfGap => "half-gap",
        },
        rake_degrees: answer.degrees,
        graduation: Millimetres(plan.graduation),
        tolerance: Millimetres(plan.tolerance),
        dries_by: Millimetres(plan.shrinkage),
        target: Millimetres(plan.target()),
        each_tread: answer.each_tread.map(|(count, _)| count),
        measured_from: answer.first_post(),
        between: answer
            .between
            .iter()
            .map(|one| BetweenRecord {
                existing: Millimetres(one.gap),
                bay: record(Some(&one.layout), one.layout.marks.len()),
            })
            .collect(),
        cautions: CAUTIONS,
        deferral: DEFERRAL,
    };
    serde_json::to_writer(&mut *out, &record)?;
    writeln!(out)
}
