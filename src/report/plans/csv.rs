//! The plans as CSV for the shop and the trade: a row for each part of each step.

use std::io;
use std::io::Write;

use crate::quantities::Length;
use crate::remedy::HowMany;
use crate::remedy::MakesHoles;
use crate::remedy::MaterialPart;
use crate::remedy::Needed;
use crate::remedy::Offered;
use crate::remedy::RemedyKind;
use crate::report::PlannedGuard;
use crate::report::ReportBasis;
use crate::report::cautions::DEFERRAL;
use crate::report::one_line;
use crate::report::plans::counts::to_write;
use crate::report::plans::json::leave;
use crate::report::plans::json::outcome;
use crate::report::plans::words;
use crate::report::reader;
use crate::report::safe_cell;

const COLUMNS: [&str; 23] = [
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
    "count",
    "count is",
    "each long",
    "buy in all",
    "buy in all (mm)",
    "to count it write",
    "deferral",
];

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
            let says = words::tonight(*kind);
            let row = row(guard, "tonight", "", ["", "", &says, ""], *kind, None, &[]);
            rows.write_record(row)?;
        }
        for (number, step) in (1..).zip(&guard.plan.steps) {
            let title = reader::title(step.topic.item);
            let measured = words::readings(&guard.guard, step.topic.item);
            let soon = step.topic.soon(&guard.guard).says().unwrap_or("");
            let aims_at = step.offered.aims_at.as_deref().unwrap_or("");
            let cells = [&*title, &measured, &step.offered.says, aims_at];
            let write: Vec<&str> = to_write(&step.offered)
                .iter()
                .map(|item| item.name())
                .collect();
            for part in parts(&step.offered) {
                let row = row(
                    guard,
                    soon,
                    &number.to_string(),
                    cells,
                    step.offered.kind,
                    part,
                    &write,
                );
                rows.write_record(row)?;
            }
        }
        for unsolved in &guard.plan.unsolved {
            let title = reader::title(unsolved.topic.item);
            let measured = words::readings(&guard.guard, unsolved.topic.item);
            let mut cells: Vec<String> = vec![String::new(); COLUMNS.len()];
            cells[..4].clone_from_slice(&who_it_is(guard));
            cells[6] = safe_cell(&title);
            cells[7] = safe_cell(&measured);
            cells[8] = safe_cell(&unsolved.why);
            cells[22] = DEFERRAL.to_owned();
            rows.write_record(cells)?;
        }
    }
    rows.flush()
}

/// The parts of a remedy; one row where it takes none.
fn parts(offered: &Offered) -> Vec<Option<&MaterialPart>> {
    if offered.parts.is_empty() {
        vec![None]
    } else {
        offered.parts.iter().map(Some).collect()
    }
}

fn who_it_is(guard: &PlannedGuard<'_>) -> [String; 4] {
    let name = |name: &str| safe_cell(&one_line(name));
    [
        name(&guard.guard.building),
        name(&guard.guard.unit),
        name(&guard.guard.name),
        outcome(guard.outcome()).to_owned(),
    ]
}

fn row(
    guard: &PlannedGuard<'_>,
    when: &str,
    step: &str,
    [what, measured, remedy, aims_at]: [&str; 4],
    kind: RemedyKind,
    part: Option<&MaterialPart>,
    write: &[&str],
) -> Vec<String> {
    let unit = guard.plan.measuring.unit;
    let about = kind.row();
    let count = part.map(|part| match &part.how_many {
        HowMany::Exactly(count) => (count.to_string(), "exact"),
        HowMany::AtMost(count) => (count.to_string(), "at most"),
        HowMany::Write(_) => (String::new(), "not counted"),
    });
    let (count, count_is) = count.unwrap_or_default();
    let readable =
        |length: Option<Length>| length.map_or_else(String::new, |length| length.readable_up(unit));
    let mut cells: Vec<String> = who_it_is(guard).to_vec();
    cells.extend(
        [
            when,
            step,
            what,
            measured,
            remedy,
            about.name,
            aims_at,
            guard.plan.who(kind).name(),
            leave(kind),
            match about.holes {
                MakesHoles::No => "no",
                MakesHoles::Either => "either",
                MakesHoles::Yes => "yes",
            },
            match about.permit {
                Needed::No => "no",
                Needed::Ask => "ask",
                Needed::Yes => "yes",
            },
        ]
        .map(|cell| safe_cell(&one_line(cell))),
    );
    cells.push(part.map_or_else(String::new, |part| safe_cell(&part.what)));
    cells.push(count);
    cells.push(count_is.to_owned());
    cells.push(readable(part.and_then(|part| part.length)));
    cells.push(readable(part.and_then(|part| part.buy)));
    let buy = part.and_then(|part| part.buy);
    cells.push(buy.map_or_else(String::new, Length::millimetre_digits));
    cells.push(write.join("; "));
    cells.push(DEFERRAL.to_owned());
    cells
}
