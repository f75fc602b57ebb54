//! What was seen that comes before every rule, chosen or not.

use crate::items::Danger;
use crate::items::DangerCounts;
use crate::items::Item;
use crate::judge::DangerSeen;
use crate::judge::condition::Truth;
use crate::judge::condition::applies;
use crate::judge::condition::holds;
use crate::judge::rule::Bench;
use crate::judge::rule::Decides;
use crate::judge::said::word;
use crate::judge::scene::Scene;
use crate::rules::Condition;
use crate::rules::Rule;
use crate::rules::Test;

/// The dangers of a guard, in the order of the items table.
pub(super) fn dangers(scene: &Scene<'_>, benches: &[Bench<'_>]) -> Vec<DangerSeen> {
    let mut seen: Vec<DangerSeen> = Vec::new();
    for (index, observation) in scene.guard.observations.iter().enumerate() {
        let item = observation.item;
        let Some(word) = word(observation) else {
            continue;
        };
        let Some(danger) = item.danger(word) else {
            continue;
        };
        let counts = counts(scene, benches, &danger);
        let known = seen
            .iter()
            .any(|known| (known.item, known.word) == (item, word));
        if counts && !known {
            seen.push(DangerSeen {
                item,
                word,
                danger,
                index,
            });
        }
    }
    seen.sort_by_key(|danger| danger.item);
    seen
}

/// Whether a danger is one here.
pub(super) fn counts(scene: &Scene<'_>, benches: &[Bench<'_>], danger: &Danger) -> bool {
    match danger.counts {
        DangerCounts::Always => true,
        DangerCounts::OverADrop => over_a_drop(scene, benches),
        DangerCounts::OverAProtectedDrop => over_a_protected_drop(scene, benches),
    }
}

/// Whether the drop was not written, or is above the trigger of some chosen rule.
fn over_a_drop(scene: &Scene<'_>, benches: &[Bench<'_>]) -> bool {
    let rules = benches.iter().flat_map(|bench| &bench.ruleset.rules);
    let triggers: Vec<&Condition> = rules
        .flat_map(Rule::conditions)
        .filter(|condition| condition.item == Item::Drop)
        .filter(|condition| {
            matches!(&condition.test, Test::Length(bounds) if bounds.above.is_some() || bounds.at_least.is_some())
        })
        .collect();
    let decision = scene.options.decision;
    triggers.is_empty()
        || triggers
            .iter()
            .any(|trigger| holds(scene, trigger, decision) != Truth::False)
}

/// Whether a ruleset that decides asks for a guard here, whatever it says of how
/// it was read.
fn over_a_protected_drop(scene: &Scene<'_>, benches: &[Bench<'_>]) -> bool {
    let deciding = benches
        .iter()
        .filter(|bench| bench.decides == Decides::Yes && bench.not_covered.is_none());
    let mut rules = deciding.flat_map(|bench| &bench.ruleset.rules);
    rules.any(|rule| {
        let mut items = rule.checks.iter().flat_map(|check| check.items());
        let of_a_guard = items.any(|item| matches!(item, Item::Guard | Item::Height));
        let over_something = rule
            .conditions()
            .any(|condition| condition.item == Item::Drop);
        of_a_guard && over_something && applies(scene, rule).truth == Truth::True
    })
}
