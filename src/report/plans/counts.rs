//! What the plans take together: parts for the whole property, and what to write down so
//! that they can be counted.

use crate::items::Item;
use crate::quantities::Length;
use crate::remedy::HowMany;
use crate::remedy::MaterialPart;
use crate::remedy::Offered;
use crate::report::plans::PlannedGuard;

/// One kind of part over all guards.
#[derive(Clone, Debug)]
pub(super) struct PartTotal {
    /// What it is.
    pub(super) what: String,
    /// How many, where each guard's were counted.
    pub(super) count: u32,
    /// Whether some are counted as if every place needed it.
    pub(super) at_most: bool,
    /// How much length to buy in all.
    pub(super) buy: Length,
    /// For how many guards.
    pub(super) guards: u32,
    /// For how many of them it could not be counted.
    pub(super) uncounted: u32,
}

/// The parts of all plans, alike ones together.
pub(super) fn totals(guards: &[PlannedGuard<'_>]) -> Vec<PartTotal> {
    let mut totals: Vec<PartTotal> = Vec::new();
    for guard in guards {
        for part in guard.plan.steps.iter().flat_map(|step| &step.offered.parts) {
            add(&mut totals, part);
        }
    }
    totals
}

fn add(totals: &mut Vec<PartTotal>, part: &MaterialPart) {
    let at = totals.iter().position(|total| total.what == part.what);
    let at = at.unwrap_or_else(|| {
        totals.push(PartTotal {
            what: part.what.clone(),
            count: 0,
            at_most: false,
            buy: Length::ZERO,
            guards: 0,
            uncounted: 0,
        });
        totals.len() - 1
    });
    let total = &mut totals[at];
    total.guards += 1;
    match &part.how_many {
        HowMany::Exactly(count) => total.count = total.count.saturating_add(*count),
        HowMany::AtMost(count) => {
            total.count = total.count.saturating_add(*count);
            total.at_most = true;
        }
        HowMany::Write(_) => total.uncounted += 1,
    }
    total.buy = total.buy + part.buy.unwrap_or(Length::ZERO);
}

/// What to write down so that a remedy can be counted or drawn.
pub(super) fn to_write(offered: &Offered) -> Vec<Item> {
    let mut items: Vec<Item> = offered.asks.clone();
    for part in &offered.parts {
        if let HowMany::Write(missing) = &part.how_many {
            items.extend(missing);
        }
    }
    items.sort();
    items.dedup();
    items
}

/// The same of a whole plan.
pub(super) fn all_to_write(guard: &PlannedGuard<'_>) -> Vec<Item> {
    let steps = guard.plan.steps.iter();
    let mut items: Vec<Item> = steps.flat_map(|step| to_write(&step.offered)).collect();
    items.sort();
    items.dedup();
    items
}

/// How long the plans take, in minutes, and how many of their steps could not be counted.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) struct LabourTotal {
    /// The least and the most of what could be counted.
    pub(super) minutes: [u32; 2],
    /// Steps that no one can count before something is written down.
    pub(super) uncounted: u32,
}

/// The labour of a plan's steps, common practice, no source; without travel.
pub(super) fn labour(guard: &PlannedGuard<'_>) -> LabourTotal {
    let mut total = LabourTotal::default();
    for offered in guard.plan.steps.iter().map(|step| &step.offered) {
        let Some(labour) = offered.labour else {
            total.uncounted += 1;
            continue;
        };
        match labour.times(&guard.guard, &offered.parts) {
            HowMany::Exactly(times) | HowMany::AtMost(times) => {
                for (sum, each) in total.minutes.iter_mut().zip(labour.minutes) {
                    *sum = sum.saturating_add(each.saturating_mul(times));
                }
            }
            HowMany::Write(_) => total.uncounted += 1,
        }
    }
    total
}

/// The labour of all plans.
pub(super) fn all_labour(guards: &[PlannedGuard<'_>]) -> LabourTotal {
    let mut total = LabourTotal::default();
    for one in guards.iter().map(labour) {
        for (sum, more) in total.minutes.iter_mut().zip(one.minutes) {
            *sum = sum.saturating_add(more);
        }
        total.uncounted += one.uncounted;
    }
    total
}
