//! The plans as CSV for the shop and the trade: a row for each part of each step.

use std::io;
use std::io::Write;

use crate::quantities::Length;
use crate::quantities::LengthUnit;
use crate::remedy::MakesHoles;
use crate::remedy::MaterialPart;
use crate::remedy::Needed;
use crate::remedy::Offered;
use crate::remedy::Planned;
use crate::remedy::RemedyKind;
use crate::report::PlannedGuard;
use crate::report::ReportBasis;
use crate::report::cautions::DEFERRAL;
use crate::report::one_line;
use crate::report::plans::counts::OwnMinutes;
use crate::report::plans::counts::labour_by;
use crate::report::plans::counts::own_minutes;
use crate::report::plans::counts::taken_before;
use crate::report::plans::counts::to_write;
use crate::report::plans::counts::totals;
use crate::report::plans::json::leave;
use crate::report::plans::json::outcome;
use crate::report::plans::words;
use crate::report::reader;
use crate::report::safe_cell;

const COLUMNS: [&str; 29] = [
    "building",
    "unit",
    "guard",
    "outcome",
    "when",
    "step",
    "what",
    "measured",
    "remedy",
    "kind",
    "aims at",
    "who",
    "leave",
    "holes",
    "permit",
    "part",
    "count from",
    "count to",
    "each long",
    "lengths to cut from",
    "buy in all",
    "buy in all (mm)",
    "minutes each",
    "each is",
    "minutes from",
    "minutes to",
    "labour is",
    "to count it write",
    "deferral",
];

/// What the labour columns are worth.
const LABOUR_IS: &str = "common practice, no source; without travel";

/// The plans as CSV.
///
/// # Errors
/// Those of `out`.
pub fn plans_csv(
    out: &mut dyn Write,
    guards: &[PlannedGuard<'_>],
    _: &ReportBasis<'_>,
) -> io::Result<()> {
    let mut rows = csv::Writer::from_writer(out);
    rows.write_record(COLUMNS)?;
    for guard in guards {
        for kind in &guard.plan.tonight {
            let mut row = Row::of(guard);
            row.set("when", "tonight");
            row.set("remedy", &words::tonight(*kind));
            row.of_kind(guard, *kind);
            rows.write_record(&row.0)?;
        }
        for (index, step) in guard.plan.steps.iter().enumerate() {
            for (at, part) in parts(&step.offered).into_iter().enumerate() {
                let mut row = Row::of(guard);
                row.step(guard, index + 1, step);
                let before = part.and_then(|part| taken_before(&guard.plan.steps, index, part));
                // once a part and once a step, so that a column can be added up
                match before {
                    Some(step) => row.set("part", &format!("as in step {step}")),
                    None => row.part(part, guard.plan.measuring.unit),
                }
                if at == 0 {
                    row.labour(guard, index);
                }
                rows.write_record(&row.0)?;
            }
        }
        for unsolved in &guard.plan.unsolved {
            let mut row = Row::of(guard);
            row.set("what", &reader::title(unsolved.topic.item));
            row.set(
                "measured",
                &words::readings(&guard.guard, unsolved.topic.item),
            );
            row.set("remedy", &unsolved.why);
            rows.write_record(&row.0)?;
        }
    }
    for row in in_all(guards) {
        rows.write_record(&row.0)?;
    }
    rows.flush()
}

/// What all railings take together, where there are several: a row for each part and for
/// each trade, marked as a sum.
fn in_all(guards: &[PlannedGuard<'_>]) -> Vec<Row> {
    let planned = guards.iter().filter(|guard| !guard.plan.steps.is_empty());
    let Some(first) = guards.first().filter(|_| planned.count() > 1) else {
        return Vec::new();
    };
    let unit = first.plan.measuring.unit;
    let sum = || {
        let mut row = Row::empty();
        row.set("guard", "all railings together");
        row.set("when", "in all (a sum of the rows above)");
        row
    };
    let mut all: Vec<Row> = Vec::new();
    for total in totals(guards) {
        let mut row = sum();
        row.set("part", &total.what);
        if total.count[1] > 0 {
            row.count(total.count);
        }
        if total.buy > Length::ZERO {
            row.buy(total.buy, unit);
        }
        all.push(row);
    }
    for (who, total) in labour_by(guards) {
        let mut row = sum();
        row.set("who", who.name());
        row.minutes(total.minutes);
        all.push(row);
    }
    all
}

/// The parts of a remedy; one row where it takes none.
fn parts(offered: &Offered) -> Vec<Option<&MaterialPart>> {
    if offered.parts.is_empty() {
        vec![None]
    } else {
        offered.parts.iter().map(Some).collect()
    }
}

/// One row, its cells by the names of their columns.
struct Row(Vec<String>);

impl Row {
    fn empty() -> Row {
        let mut row = Row(vec![String::new(); COLUMNS.len()]);
        row.set("deferral", DEFERRAL);
        row
    }

    fn of(guard: &PlannedGuard<'_>) -> Row {
        let mut row = Row::empty();
        row.set("building", &guard.guard.building);
        row.set("unit", &guard.guard.unit);
        row.set("guard", &guard.guard.name);
        row.set("outcome", outcome(guard.outcome()));
        row
    }

    /// No cell is a formula, and none breaks a line.
    fn set(&mut self, column: &'static str, text: &str) {
        let at = COLUMNS.iter().position(|name| *name == column);
        debug_assert!(at.is_some(), "no column is called {column}");
        if let Some(cell) = at.and_then(|at| self.0.get_mut(at)) {
            *cell = safe_cell(&one_line(text));
        }
    }

    fn of_kind(&mut self, guard: &PlannedGuard<'_>, kind: RemedyKind) {
        let about = kind.row();
        self.set("kind", about.name);
        self.set("who", guard.plan.who(kind).name());
        self.set("leave", leave(kind));
        let holes = match about.holes {
            MakesHoles::No => "no",
            MakesHoles::Either => "either",
            MakesHoles::Yes => "yes",
        };
        self.set("holes", holes);
        let permit = match about.permit {
            Needed::No => "no",
            Needed::Ask => "ask",
            Needed::Yes => "yes",
        };
        self.set("permit", permit);
    }

    fn step(&mut self, guard: &PlannedGuard<'_>, number: usize, step: &Planned) {
        let item = step.topic.item;
        let soon = step.topic.soon(&guard.guard).says().unwrap_or("");
        self.set("when", soon);
        self.set("step", &number.to_string());
        self.set("what", &reader::title(item));
        self.set("measured", &words::readings(&guard.guard, item));
        self.set("remedy", &step.offered.says);
        self.set("aims at", step.offered.aims_at.as_deref().unwrap_or(""));
        self.of_kind(guard, step.offered.kind);
        let write = to_write(&guard.guard, &step.offered);
        let write: Vec<&str> = write.iter().map(|item| item.name()).collect();
        self.set("to count it write", &write.join("; "));
    }

    fn part(&mut self, part: Option<&MaterialPart>, unit: LengthUnit) {
        let Some(part) = part else { return };
        self.set("part", &part.what);
        if let Some(range) = part.how_many.range() {
            self.count(range);
        }
        if let Some(length) = part.length {
            self.set("each long", &length.readable_up(unit));
        }
        if let Some(stock) = part.stock(unit) {
            let lengths = words::range(stock.lengths);
            let says = format!(
                "{lengths} of {}, {} from each",
                stock.long.exact(unit),
                stock.each
            );
            self.set("lengths to cut from", &says);
        }
        if let Some(buy) = part.buy {
            self.buy(buy, unit);
        }
    }

    fn count(&mut self, [least, most]: [u32; 2]) {
        self.set("count from", &least.to_string());
        self.set("count to", &most.to_string());
    }

    fn buy(&mut self, buy: Length, unit: LengthUnit) {
        self.set("buy in all", &buy.readable_up(unit));
        self.set("buy in all (mm)", &buy.millimetre_digits());
    }

    fn labour(&mut self, guard: &PlannedGuard<'_>, index: usize) {
        let step = guard.plan.steps.get(index);
        let Some(labour) = step.and_then(|step| step.offered.labour) else {
            return;
        };
        let [quick, slow] = labour.minutes;
        self.set("minutes each", &format!("{quick} to {slow}"));
        self.set("each is", labour.per.name());
        self.set("labour is", LABOUR_IS);
        match own_minutes(guard, index) {
            OwnMinutes::Counted(minutes) => self.minutes(minutes),
            OwnMinutes::NotCounted => {}
            OwnMinutes::WithAnother => self.set("labour is", "counted with the step before"),
        }
    }

    fn minutes(&mut self, [from, to]: [u32; 2]) {
        self.set("minutes from", &from.to_string());
        self.set("minutes to", &to.to_string());
        self.set("labour is", LABOUR_IS);
    }
}
