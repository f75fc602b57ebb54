//! What the plans take together: parts for the whole property, and what to write down so
//! that they can be counted.

use std::collections::BTreeMap;

use crate::items::Item;
use crate::quantities::Length;
use crate::remedy::HowMany;
use crate::remedy::MaterialPart;
use crate::remedy::Offered;
use crate::remedy::Planned;
use crate::remedy::WhoDoes;
use crate::report::plans::PlannedGuard;
use crate::survey::Guard;

/// One kind of part over all guards.
#[derive(Clone, Debug)]
pub(super) struct PartTotal {
    /// What it is.
    pub(super) what: String,
    /// The least and the most of what could be counted.
    pub(super) count: [u32; 2],
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
        for (index, step) in guard.plan.steps.iter().enumerate() {
            for part in &step.offered.parts {
                if taken_before(&guard.plan.steps, index, part).is_none() {
                    add(&mut totals, part);
                }
            }
        }
    }
    totals
}

/// The step before this one, counted from 1, that takes the same part: it is bought once.
pub(super) fn taken_before(steps: &[Planned], index: usize, part: &MaterialPart) -> Option<usize> {
    let mut before = steps.iter().take(index);
    let at = before.position(|step| step.offered.parts.contains(part))?;
    Some(at + 1)
}

/// The labour of a step: none of its own where it is done at the same parts as one before.
pub(super) fn own_minutes(guard: &PlannedGuard<'_>, index: usize) -> OwnMinutes {
    let steps = &guard.plan.steps;
    let Some(step) = steps.get(index) else {
        return OwnMinutes::WithAnother;
    };
    let parts = &step.offered.parts;
    let again = |part: &MaterialPart| taken_before(steps, index, part).is_some();
    if !parts.is_empty() && parts.iter().all(again) {
        return OwnMinutes::WithAnother;
    }
    match minutes(&guard.guard, &step.offered) {
        Some(minutes) => OwnMinutes::Counted(minutes),
        None => OwnMinutes::NotCounted,
    }
}

/// How long a step takes of its own.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum OwnMinutes {
    Counted([u32; 2]),
    NotCounted,
    /// It is done together with a step before it.
    WithAnother,
}

fn add(totals: &mut Vec<PartTotal>, part: &MaterialPart) {
    let at = totals.iter().position(|total| total.what == part.what);
    let at = at.unwrap_or_else(|| {
        totals.push(PartTotal {
            what: part.what.clone(),
            count: [0, 0],
            buy: Length::ZERO,
            guards: 0,
            uncounted: 0,
        });
        totals.len() - 1
    });
    let total = &mut totals[at];
    total.guards += 1;
    match part.how_many.range() {
        Some(range) => add_up(&mut total.count, range),
        None => total.uncounted += 1,
    }
    total.buy = total.buy + part.buy.unwrap_or(Length::ZERO);
}

fn add_up(sum: &mut [u32; 2], more: [u32; 2]) {
    for (sum, more) in sum.iter_mut().zip(more) {
        *sum = sum.saturating_add(more);
    }
}

/// What to write down so that a remedy can be counted or drawn, its labour too.
pub(super) fn to_write(guard: &Guard, offered: &Offered) -> Vec<Item> {
    let mut items: Vec<Item> = offered.asks.clone();
    let parts = offered.parts.iter().map(|part| part.how_many.clone());
    let times = offered
        .labour
        .map(|labour| labour.times(guard, &offered.parts));
    for how_many in parts.chain(times) {
        if let HowMany::Write(missing) = how_many {
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
    let mut items: Vec<Item> = steps
        .flat_map(|step| to_write(&guard.guard, &step.offered))
        .collect();
    items.sort();
    items.dedup();
    items
}

/// How long plans take, in minutes, and how many of their steps could not be counted.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) struct LabourTotal {
    /// The least and the most of what could be counted: a quick hand where one place needs
    /// it, a slow one where every place does.
    pub(super) minutes: [u32; 2],
    /// Steps that no one can count before something is written down.
    pub(super) uncounted: u32,
}

impl LabourTotal {
    fn add(&mut self, minutes: OwnMinutes) {
        match minutes {
            OwnMinutes::Counted(minutes) => add_up(&mut self.minutes, minutes),
            OwnMinutes::NotCounted => self.uncounted += 1,
            OwnMinutes::WithAnother => {}
        }
    }
}

/// How long a step takes in all, in minutes; common practice, no source; without travel.
pub(super) fn minutes(guard: &Guard, offered: &Offered) -> Option<[u32; 2]> {
    let labour = offered.labour?;
    let [least, most] = labour.times(guard, &offered.parts).range()?;
    let [quick, slow] = labour.minutes;
    Some([quick.saturating_mul(least), slow.saturating_mul(most)])
}

/// The labour of a plan's steps.
pub(super) fn labour(guard: &PlannedGuard<'_>) -> LabourTotal {
    let mut total = LabourTotal::default();
    for index in 0..guard.plan.steps.len() {
        total.add(own_minutes(guard, index));
    }
    total
}

/// The labour of all plans, by who does it, from anybody on.
pub(super) fn labour_by(guards: &[PlannedGuard<'_>]) -> BTreeMap<WhoDoes, LabourTotal> {
    let mut by: BTreeMap<WhoDoes, LabourTotal> = BTreeMap::new();
    for guard in guards {
        for (index, step) in guard.plan.steps.iter().enumerate() {
            let total = by.entry(guard.plan.who(step.offered.kind)).or_default();
            total.add(own_minutes(guard, index));
        }
    }
    by
}
