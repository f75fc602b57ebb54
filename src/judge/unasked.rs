//! Holes that were written down and that no rule which was read asks about.

use crate::items::Hole;
use crate::items::Item;
use crate::items::ItemSet;
use crate::items::Verdict;
use crate::judge::Finding;
use crate::judge::Reason;
use crate::judge::bound::Evidence;
use crate::judge::bound::opening_asks;
use crate::judge::decision::against;
use crate::judge::opening;
use crate::judge::rule::side_is_closed;
use crate::judge::scene::Scene;
use crate::judge::view::FindingView;
use crate::quantities::combine;
use crate::reading::Value;
use crate::rules::OpeningDemand;

/// A written hole that no finding is about, and that the limits on openings which
/// were met would not let pass: nobody knows what the text asks of it.
///
/// `limits` are the demands on openings that let the guard meet.
pub(super) fn hole_that_no_rule_asks(
    scene: &Scene<'_>,
    findings: &[Finding<'_>],
    limits: &[&OpeningDemand],
    view: FindingView,
) -> Option<Item> {
    unasked_holes(scene, findings).into_iter().find(|item| {
        limits
            .iter()
            .any(|demand| is_wider(scene, *item, demand, view))
    })
}

/// The written holes that no finding is about.
pub(super) fn unasked_holes(scene: &Scene<'_>, findings: &[Finding<'_>]) -> Vec<Item> {
    let mut unasked: Vec<Item> = Vec::new();
    let mut looked_at = ItemSet::EMPTY;
    for observation in &scene.guard.observations {
        let item = observation.item;
        let hole = item == Item::VOpening || item.info().hole != Hole::No && item != Item::Opening;
        let anew = hole && looked_at.insert(item);
        if anew && says_something(scene, item) && !is_asked(scene, findings, item) {
            unasked.push(item);
        }
    }
    unasked.sort_unstable();
    unasked
}

/// Whether somebody looked, and found a hole.
fn says_something(scene: &Scene<'_>, item: Item) -> bool {
    scene.of(item).any(|(_, observation)| {
        let reading = observation.reading.as_ref();
        reading.is_some_and(|reading| !matches!(reading.value, Value::None | Value::Unknown))
    })
}

/// Whether a rule that was read speaks of it here, or a number of its text says that it
/// asks nothing here. On a stair the bottom gap is the lift in the triangle.
fn is_asked(scene: &Scene<'_>, findings: &[Finding<'_>], item: Item) -> bool {
    let lift =
        item == Item::BottomGap && scene.on_a_stair() != Some(false) && !side_is_closed(scene);
    let speaks_of = |finding: &Finding<'_>, of: Item| {
        let mut checks = finding.rule.checks.iter();
        finding.item == of
            || finding.rule.checks.len() > 1 && checks.any(|check| check.items().contains(&of))
    };
    findings
        .iter()
        .filter(|finding| !finding.from_memory)
        .any(|finding| {
            let of_it = speaks_of(finding, item) || lift && speaks_of(finding, Item::StairTriangle);
            let off = finding.verdict == Verdict::DoesNotApply;
            let mut reasons = finding.reasons.iter();
            of_it && (!off || reasons.any(Reason::lets_no_guard_be_asked_for))
        })
}

/// Whether the limit on openings would not be met by the hole.
fn is_wider(scene: &Scene<'_>, item: Item, demand: &OpeningDemand, view: FindingView) -> bool {
    let limit = OpeningDemand {
        stops_ball: demand.stops_ball.clone(),
        at_most: demand.at_most.clone(),
        ..OpeningDemand::default()
    };
    if item == Item::VOpening {
        return is_wider_at_the_top(scene, &limit, view);
    }
    let judgement = opening::opening(scene, item, &limit, &[]);
    let verdict = match view {
        FindingView::Decided => judgement.verdict,
        FindingView::Alone => judgement.alone,
    };
    verdict != Verdict::Meets
}

/// Whether an opening that narrows downward is wider at the top than the limit on openings
/// lets one be: at the least one of them is.
fn is_wider_at_the_top(scene: &Scene<'_>, limit: &OpeningDemand, view: FindingView) -> bool {
    scene.of(Item::VOpening).any(|(_, observation)| {
        let reading = observation.reading.as_ref().map(|reading| &reading.value);
        let Some(Value::VOpening(vee)) = reading else {
            return false;
        };
        let terms = scene.terms(
            Item::VOpening,
            observation,
            vee.wide,
            vee.unit,
            vee.graduation,
        );
        let evidence = Evidence::Point(vee.wide, combine(&terms));
        let outcome = against(evidence, &opening_asks(limit), scene.options.decision);
        outcome.is_none_or(|outcome| {
            let verdict = match view {
                FindingView::Decided => outcome.verdict,
                FindingView::Alone => outcome.alone,
            };
            verdict != Verdict::Meets
        })
    })
}
