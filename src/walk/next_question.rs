//! What to ask next at a guard.

use crate::items::Hole;
use crate::items::InfillWord;
use crate::items::Item;
use crate::items::PlaceWord;
use crate::items::Verdict;
use crate::judge::Finding;
use crate::judge::Judged;
use crate::judge::Reason;
use crate::quantities::Length;
use crate::reading::Value;
use crate::rules::Demand;
use crate::rules::Limit;
use crate::rules::Subject;
use crate::survey::Guard;

/// What to ask next, of what `open` leaves: circumstances, then what decides
/// most; at openings the one question that may answer all of them first.
pub(super) fn next_item(
    judged: &Judged<'_>,
    guard: &Guard,
    open: &dyn Fn(Item) -> bool,
) -> Option<Item> {
    if open(Item::OpeningsChecked) && rests_on_every_opening(judged, guard) {
        return Some(Item::OpeningsChecked);
    }
    let mut questions = judged.questions();
    questions.retain(|question| open(question.item));
    // what strength alone wants to know comes last, be it a circumstance
    let first_of_all = questions.iter().filter(|question| !question.of_strength);
    let mut circumstances = first_of_all.map(|question| question.item);
    let circumstance = circumstances.find(|item| item.is_circumstance());
    let asked: Vec<Item> = questions.iter().map(|question| question.item).collect();
    if let Some(item) = circumstance {
        let place = asked.iter().find(|item| **item == Item::Place);
        return Some(place.copied().unwrap_or(item));
    }
    // any reading of a part of the guard says that there is one
    let parts = asked.iter().find(|item| **item != Item::Guard);
    let first = *parts.or(asked.first())?;
    if first.info().hole == Hole::No {
        return Some(first);
    }
    // cables give way: that must be known before a ball is tried
    if open(Item::Infill) && guard.of(Item::Infill).next().is_none() {
        return Some(Item::Infill);
    }
    let opening = asked.iter().find(|item| **item == Item::Opening);
    Some(*opening.unwrap_or(&first))
}

/// Whether something meets only since nobody said that holes were left out.
fn rests_on_every_opening(judged: &Judged<'_>, guard: &Guard) -> bool {
    let said = guard.of(Item::OpeningsChecked).next().is_some();
    let by_tape = |index: &usize| {
        let reading = guard.observation(*index).reading.as_ref();
        reading.is_some_and(|reading| matches!(reading.value, Value::Measure(_) | Value::Shape(_)))
    };
    let mut met = judged.findings.iter().filter(|finding| {
        finding.item == Item::Opening && finding.verdict == Verdict::Meets && !finding.partial
    });
    !said && met.any(|finding| finding.readings.iter().any(by_tape))
}

/// A finding that waits for a further reading of this item.
fn waits_for_reading(finding: &Finding<'_>, item: Item) -> bool {
    let open = finding.verdict == Verdict::NotMeasured || finding.partial;
    let missing =
        |reason: &Reason<'_>| reason.wants_a_gauge() || *reason == Reason::NotWritten(item);
    open && finding.item == item && finding.reasons.iter().any(missing)
}

/// The ball to try next at a hole; `None` where no ball can settle more.
///
/// That of the law first; of several the smallest, since one that stops settles
/// every larger one. Of guidance, one that a single rule wants comes after
/// those that several want.
pub(super) fn ball_to_try(judged: &Judged<'_>, guard: &Guard, item: Item) -> Option<Limit> {
    let mut wanted: Vec<(bool, &Limit, usize)> = Vec::new();
    let waiting = judged
        .findings
        .iter()
        .filter(|finding| waits_for_reading(finding, item));
    for finding in waiting {
        for limit in finding
            .rule
            .checks
            .iter()
            .filter_map(|check| match check.subject {
                Subject::Item(of) if of != item => None,
                Subject::LoadPath => None,
                Subject::AnyOpening | Subject::Item(_) => ball_limit(&check.demand),
            })
        {
            if ball_was_tried(guard, item, limit.length) {
                continue;
            }
            let known = wanted
                .iter_mut()
                .find(|(_, other, _)| other.length == limit.length);
            match known {
                Some((binding, _, count)) => {
                    *binding |= finding.binding;
                    *count += 1;
                }
                None => wanted.push((finding.binding, limit, 1)),
            }
        }
    }
    let law = judged.guidance.is_some() && wanted.iter().any(|(binding, _, _)| *binding);
    let several = wanted.iter().any(|(_, _, count)| *count > 1);
    wanted
        .into_iter()
        .filter(|(binding, _, count)| {
            if law {
                *binding
            } else {
                *count > 1 || !several
            }
        })
        .min_by_key(|(_, limit, _)| limit.length)
        .map(|(_, limit, _)| limit.clone())
}

fn ball_limit(demand: &Demand) -> Option<&Limit> {
    match demand {
        Demand::Opening(demand) => demand
            .stops_ball
            .as_ref()
            .or(demand.at_most.as_ref())
            .or(demand.not_within.as_ref().map(|(above, _)| above)),
        Demand::Count(_)
        | Demand::Foothold(_)
        | Demand::Length(_)
        | Demand::Load(_)
        | Demand::VOpening(_)
        | Demand::Words { .. } => None,
    }
}

/// Whether a ball has told already, here or everywhere, what one of this size would.
fn ball_was_tried(guard: &Guard, item: Item, size: Length) -> bool {
    guard.observations.iter().any(|observation| {
        let reading = observation.reading.as_ref();
        let Some(Value::Ball(ball)) = reading.map(|reading| &reading.value) else {
            return false;
        };
        let here = observation.item == item;
        // what lets a ball pass lets every smaller one pass, and what stops one every larger
        if ball.passes {
            here && ball.ball >= size
        } else {
            (here || ball.everywhere) && ball.ball <= size
        }
    })
}

/// Whether the infill gives way, so that a ball is tried with a push of the hand.
pub(super) fn gives_way(guard: &Guard) -> bool {
    guard
        .of(Item::Infill)
        .any(|(_, o)| o.word().is_some_and(InfillWord::gives_way))
}

/// How far a ball at an opening speaks for the whole guard.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Holes {
    /// For every hole: `stops everywhere`.
    All,
    /// For the infill alone: the steps of a stair have holes of their own.
    Infill,
}

/// Which holes a ball is asked about at once.
pub(super) fn holes(guard: &Guard) -> Holes {
    let mut places = guard.of(Item::Place).filter_map(|(_, o)| o.word());
    let level = places.any(|place: PlaceWord| place != PlaceWord::Stair);
    if level { Holes::All } else { Holes::Infill }
}
