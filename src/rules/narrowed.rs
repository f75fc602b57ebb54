//! A rule that replaces another one and holds at fewer places: the places that
//! no longer have a rule of its kind are named, since silence there would look
//! like leave to do anything.

use std::ops::Range;

use crate::items::Item;
use crate::rules::codes::RuleFault;
use crate::rules::faults::Faults;
use crate::rules::model::Condition;
use crate::rules::model::Rule;
use crate::rules::model::Ruleset;
use crate::rules::model::Test;

/// Warns where `own` replaces `old` and leaves out places at which no rule of
/// the merged `rules` asks about the same thing any more.
pub(super) fn warn(
    old: &Rule,
    own: &Rule,
    base: &Ruleset,
    rules: &[Rule],
    at: &Range<usize>,
    faults: &mut Faults,
) {
    let before = places(&old.when).or_else(|| places(&base.covers.conditions));
    let before = before.unwrap_or_else(|| Item::Place.words().iter().map(|w| w.name).collect());
    // a rule with a condition more, such as a handrail on top, holds for some guards only
    let as_wide = |rule: &Rule| {
        rule.when.iter().all(|condition| {
            let mut known = old.when.iter().chain(&own.when);
            condition.item == Item::Place || known.any(|other| other.item == condition.item)
        })
    };
    let same = |rule: &&Rule| {
        as_wide(rule)
            && rule.hazard == own.hazard
            && rule.checks.iter().any(|check| {
                let mut of_old = old.checks.iter();
                of_old.any(|old| old.subject == check.subject)
            })
    };
    let asked: Vec<&Rule> = rules.iter().filter(same).collect();
    let has = |place: &&'static str| {
        asked
            .iter()
            .any(|rule| places(&rule.when).is_none_or(|places| places.contains(place)))
    };
    let lost: Vec<&str> = before.into_iter().filter(|place| !has(place)).collect();
    if lost.is_empty() {
        return;
    }
    let lost = lost.join(", ");
    faults.warning(
        RuleFault::PlaceLost,
        at,
        format!(
            "`{}` replaces the rule of {} whole, and no longer holds at: {lost}",
            own.id, base.id
        ),
        format!("if they should keep a rule, add them to when.place, or write a second rule for {lost} under another id"),
    );
}

/// The places that conditions name; `None` where they name none.
fn places(conditions: &[Condition]) -> Option<Vec<&'static str>> {
    conditions
        .iter()
        .filter(|condition| condition.item == Item::Place)
        .find_map(|condition| match &condition.test {
            Test::OneOf(words) => Some(words.clone()),
            Test::NoneOf(words) => {
                let all = Item::Place.words().iter().map(|word| word.name);
                Some(all.filter(|word| !words.contains(word)).collect())
            }
            Test::Age(_) | Test::Count(_) | Test::Length(_) | Test::Years(_) => None,
        })
}
