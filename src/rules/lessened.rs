//! What a rule of an amendment asks less than the one that it replaces.

use crate::items::Item;
use crate::rules::demand::Bounds;
use crate::rules::demand::Check;
use crate::rules::demand::Demand;
use crate::rules::demand::FootholdDemand;
use crate::rules::demand::Limit;
use crate::rules::demand::LoadDemand;
use crate::rules::demand::OpeningDemand;
use crate::rules::demand::Subject;
use crate::rules::demand::Zone;
use crate::rules::model::Condition;
use crate::rules::model::Rule;
use crate::rules::model::Test;
use crate::rules::phrases::all_of;

/// In what `own` asks less than `old`, a few words each; empty where it asks as much.
pub(super) fn lessened(old: &Rule, own: &Rule) -> Vec<String> {
    let mut less = Vec::new();
    for check in &old.checks {
        let subject = subject(check.subject);
        match own.checks.iter().find(|own| own.subject == check.subject) {
            Some(own) if asks_less(&check.demand, &own.demand) => {
                less.push(match (limit_of(&check.demand), limit_of(&own.demand)) {
                    (Some(from), Some(to)) if from != to => {
                        format!("{subject}: {to} in place of {from}")
                    }
                    (_, _) => format!("{subject}: less is asked of it"),
                });
            }
            Some(_) => {}
            None if asks_of_all(own, check) => {}
            None => less.push(format!("nothing is asked of {subject} any more")),
        }
    }
    if own.checks.len() > old.checks.len() {
        less.push("one way more satisfies it".to_owned());
    }
    for condition in &own.when {
        let before = old.when.iter().filter(|old| old.item == condition.item);
        let before: Vec<&Condition> = before.collect();
        if before.is_empty()
            || before
                .iter()
                .any(|old| is_narrower(&old.test, &condition.test))
        {
            let instead = match before.first() {
                Some(old) => format!(" in place of {}", old.says()),
                None => String::new(),
            };
            less.push(format!("only where {}{instead}", condition.says()));
        }
    }
    let gone = |group: &&Vec<Condition>| !own.when_any.contains(group);
    if old.when_any.is_empty() && !own.when_any.is_empty() {
        less.push("only in some circumstances".to_owned());
    } else if old.when_any.iter().any(|group| gone(&group)) && !own.when_any.is_empty() {
        less.push("no longer in some circumstances".to_owned());
    }
    let exceptions = own
        .unless
        .iter()
        .filter(|group| !old.unless.contains(group));
    less.extend(exceptions.map(|group| format!("not where {}", all_of(group))));
    less
}

fn subject(subject: Subject) -> &'static str {
    match subject {
        Subject::AnyOpening => "openings",
        Subject::Item(item) => item.name(),
        Subject::LoadPath => "loads",
    }
}

/// Whether a rule on any opening stands in for one on a single one.
fn asks_of_all(own: &Rule, old: &Check) -> bool {
    let any = own
        .checks
        .iter()
        .find(|own| own.subject == Subject::AnyOpening);
    let of_an_opening = |item: Item| Item::ANY_OPENING.contains(&item);
    match (any, old.subject) {
        (Some(any), Subject::Item(item)) if of_an_opening(item) => {
            !asks_less(&old.demand, &any.demand)
        }
        (_, _) => false,
    }
}

/// The limit that says most of a demand.
fn limit_of(demand: &Demand) -> Option<String> {
    match demand {
        Demand::Count(bounds) => Some(bounds.says(ToString::to_string)),
        Demand::Foothold(demand) => {
            let zone = demand.none_within.as_ref();
            zone.map(|zone| format!("none from {} to {}", zone.from.written, zone.to.written))
        }
        Demand::Length(bounds) => Some(bounds.says(|limit| limit.written.clone())),
        Demand::Opening(demand) => {
            let stops = demand.stops_ball.as_ref();
            let most = demand.at_most.as_ref();
            stops
                .map(|limit| format!("less than {}", limit.written))
                .or_else(|| most.map(|limit| format!("at most {}", limit.written)))
        }
        Demand::Load(demand) => Some(demand.says()),
        Demand::VOpening(limit) => Some(limit.written.clone()),
        Demand::Words { .. } => None,
    }
}

fn asks_less(old: &Demand, own: &Demand) -> bool {
    match (old, own) {
        (Demand::Count(old), Demand::Count(own)) => is_wider(old, own),
        (Demand::Foothold(old), Demand::Foothold(own)) => foothold_less(old, own),
        (Demand::Length(old), Demand::Length(own)) => is_wider(&lengths(old), &lengths(own)),
        (Demand::Load(old), Demand::Load(own)) => load_less(old, own),
        (Demand::Opening(old), Demand::Opening(own)) => opening_less(old, own),
        (Demand::VOpening(old), Demand::VOpening(own)) => own.tilt < old.tilt,
        (
            Demand::Words { is, is_not },
            Demand::Words {
                is: own_is,
                is_not: own_is_not,
            },
        ) => {
            let more_is_fine = !is.is_empty()
                && (own_is.is_empty() || own_is.iter().any(|word| !is.contains(word)));
            more_is_fine
                || is_not.iter().any(|word| {
                    !own_is_not.contains(word) && (own_is.is_empty() || own_is.contains(word))
                })
        }
        (
            Demand::Count(_)
            | Demand::Foothold(_)
            | Demand::Length(_)
            | Demand::Load(_)
            | Demand::Opening(_)
            | Demand::VOpening(_)
            | Demand::Words { .. },
            _,
        ) => true,
    }
}

fn lengths(bounds: &Bounds<Limit>) -> Bounds<i64> {
    let of = |limit: &Option<Limit>| limit.as_ref().map(|limit| limit.length.nanometres());
    Bounds {
        at_least: of(&bounds.at_least),
        at_most: of(&bounds.at_most),
        above: of(&bounds.above),
        below: of(&bounds.below),
    }
}

/// A bound with what holds exactly at it: of a lower one `above` is the stricter.
fn lower<T: Copy + Ord>(bounds: &Bounds<T>) -> Option<(T, bool)> {
    let above = bounds.above.map(|limit| (limit, true));
    let at_least = bounds.at_least.map(|limit| (limit, false));
    above.max(at_least)
}

fn upper<T: Copy + Ord>(bounds: &Bounds<T>) -> Option<(T, bool)> {
    let below = bounds.below.map(|limit| (limit, false));
    let at_most = bounds.at_most.map(|limit| (limit, true));
    match (below, at_most) {
        (Some(one), Some(other)) => Some(one.min(other)),
        (one, other) => one.or(other),
    }
}

/// Whether a value may be what it might not be before.
fn is_wider<T: Copy + Ord>(old: &Bounds<T>, own: &Bounds<T>) -> bool {
    let low = lower(old).is_some_and(|old| lower(own).is_none_or(|own| own < old));
    let high = upper(old).is_some_and(|old| upper(own).is_none_or(|own| own > old));
    low || high
}

fn opening_less(old: &OpeningDemand, own: &OpeningDemand) -> bool {
    let most = |demand: &OpeningDemand| {
        let stops = demand
            .stops_ball
            .as_ref()
            .map(|limit| (limit.length, false));
        let at_most = demand.at_most.as_ref().map(|limit| (limit.length, true));
        match (stops, at_most) {
            (Some(one), Some(other)) => Some(one.min(other)),
            (one, other) => one.or(other),
        }
    };
    let wider = most(old).is_some_and(|old| most(own).is_none_or(|own| own > old));
    let least = |demand: &OpeningDemand| demand.at_least.as_ref().map(|limit| limit.length);
    let narrower = least(old).is_some_and(|old| least(own).is_none_or(|own| own < old));
    let band = match (&old.not_within, &own.not_within) {
        (Some(_), None) => true,
        (Some((from, to)), Some((own_from, own_to))) => {
            own_from.length > from.length || own_to.length < to.length
        }
        (None, _) => false,
    };
    let head = old.entraps.is_some() && own.entraps != old.entraps;
    let push = match (old.pushed, own.pushed) {
        (Some(_), None) => true,
        (Some(old), Some(own)) => own < old,
        (None, _) => false,
    };
    wider || narrower || band || head || push || zone_less(old.zone.as_ref(), own.zone.as_ref())
}

/// Whether heights are left out that belonged to a zone; without one all heights do.
fn zone_less(old: Option<&Zone>, own: Option<&Zone>) -> bool {
    match (old, own) {
        (_, None) => false,
        (None, Some(_)) => true,
        (Some(old), Some(own)) => {
            own.from.length > old.from.length || own.to.length < old.to.length
        }
    }
}

fn foothold_less(old: &FootholdDemand, own: &FootholdDemand) -> bool {
    let zone = match (&old.none_within, &own.none_within) {
        (Some(_), None) => true,
        (old, own) => zone_less(old.as_ref(), own.as_ref()) && old.is_some(),
    };
    let ladder = match (&old.ladder, &own.ladder) {
        (Some(_), None) => true,
        (Some(old), Some(own)) => own.limit().length < old.limit().length,
        (None, _) => false,
    };
    let depth = |demand: &FootholdDemand| demand.deeper_than.as_ref().map(|limit| limit.length);
    let deeper = depth(own).is_some_and(|own| depth(old).is_none_or(|old| own > old));
    let slope = own.no_steeper_than.is_some() && own.no_steeper_than != old.no_steeper_than;
    zone || ladder || deeper || slope
}

fn load_less(old: &LoadDemand, own: &LoadDemand) -> bool {
    fn less<T: PartialOrd>(old: Option<T>, own: Option<T>) -> bool {
        match (old, own) {
            (Some(_), None) => true,
            (Some(old), Some(own)) => own < old,
            (None, _) => false,
        }
    }
    let point = |demand: &LoadDemand| demand.concentrated.as_ref().map(|load| load.value);
    let line = |demand: &LoadDemand| demand.line.as_ref().map(|load| load.value);
    let down = |demand: &LoadDemand| demand.line_down.as_ref().map(|load| load.value);
    let infill = |demand: &LoadDemand| demand.infill.as_ref().map(|patch| patch.force.value);
    let pressure = |demand: &LoadDemand| demand.infill_pressure.as_ref().map(|load| load.value);
    less(point(old), point(own))
        || less(line(old), line(own))
        || less(down(old), down(own))
        || less(infill(old), infill(own))
        || less(pressure(old), pressure(own))
}

/// Whether a condition holds of fewer guards than before.
fn is_narrower(old: &Test, own: &Test) -> bool {
    match (old, own) {
        (Test::Age(old), Test::Age(own)) => is_wider(own, old),
        (Test::Count(old), Test::Count(own)) => is_wider(own, old),
        (Test::Length(old), Test::Length(own)) => is_wider(&lengths(own), &lengths(old)),
        (Test::Years(old), Test::Years(own)) => is_wider(own, old),
        (Test::OneOf(old), Test::OneOf(own)) => old.iter().any(|word| !own.contains(word)),
        (Test::NoneOf(old), Test::NoneOf(own)) => own.iter().any(|word| !old.contains(word)),
        (
            Test::Age(_)
            | Test::Count(_)
            | Test::Length(_)
            | Test::NoneOf(_)
            | Test::OneOf(_)
            | Test::Years(_),
            _,
        ) => true,
    }
}
