//! A rule that replaces another one and holds at fewer places: the places that
//! no longer have a rule of its kind are named, since silence there would look
//! like leave to do anything.

use std::ops::Range;

use crate::items::Item;
use crate::rules::codes::RuleFault;
use crate::rules::demand::Demand;
use crate::rules::demand::Limit;
use crate::rules::demand::Subject;
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

/// Warns where `own` asks for a higher guard than `old` did, and the rules about
/// openings look no higher than before: between the two any hole would do.
pub(super) fn warn_of_zone(
    old: &Rule,
    own: &Rule,
    rules: &[Rule],
    at: &Range<usize>,
    faults: &mut Faults,
) {
    let (Some(before), Some(now)) = (least_height(old), least_height(own)) else {
        return;
    };
    let mut zones = rules
        .iter()
        .filter(|rule| meet_somewhere(rule, own))
        .flat_map(|rule| {
            rule.openings(Item::Opening)
                .map(move |demand| (rule, demand))
        })
        .filter(|(_, demand)| demand.stops_ball.is_some() || demand.at_most.is_some());
    let mut highest: Option<(&Rule, &Limit)> = None;
    let anywhere = zones.any(|(rule, demand)| match &demand.zone {
        None => true,
        Some(zone) => {
            if highest.is_none_or(|(_, to)| to.length < zone.to.length) {
                highest = Some((rule, &zone.to));
            }
            false
        }
    });
    let Some((rule, to)) = highest.filter(|_| !anywhere) else {
        return;
    };
    // what was not raised leaves no height between
    if to.length >= now.length || to.length < before.length {
        return;
    }
    faults.warning(
        RuleFault::ZoneNotRaised,
        at,
        format!(
            "guards are raised from {} to {}, and `{}` looks at openings up to {} alone: above it any gap would meet",
            before.written, now.written, rule.id, to.written
        ),
        format!("replace {} too, with a zone up to {}, if the text asks so", rule.id, now.written),
    );
}

/// The least height that a rule asks of a guard.
fn least_height(rule: &Rule) -> Option<&Limit> {
    let mut heights = rule.checks.iter().filter_map(|check| match &check.demand {
        Demand::Length(bounds) if check.subject == Subject::Item(Item::Height) => {
            bounds.at_least.as_ref()
        }
        Demand::Count(_)
        | Demand::Foothold(_)
        | Demand::Length(_)
        | Demand::Load(_)
        | Demand::Opening(_)
        | Demand::VOpening(_)
        | Demand::Words { .. } => None,
    });
    heights.next()
}

/// Whether two rules hold at one place at least.
fn meet_somewhere(one: &Rule, other: &Rule) -> bool {
    match (places(&one.when), places(&other.when)) {
        (Some(one), Some(other)) => one.iter().any(|place| other.contains(place)),
        (None, _) | (_, None) => true,
    }
}

/// The places that conditions name; `None` where they name none.
pub(super) fn places(conditions: &[Condition]) -> Option<Vec<&'static str>> {
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
