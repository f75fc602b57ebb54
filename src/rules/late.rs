//! Rules that begin where nobody begins: a slip of the unit in a trigger, most often. Such
//! a rule switches itself off at nearly every guard, so it counts as not read.

use crate::items::Item;
use crate::quantities::Length;
use crate::rules::demand::Bounds;
use crate::rules::demand::Limit;
use crate::rules::demand::Subject;
use crate::rules::model::Condition;
use crate::rules::model::Rule;
use crate::rules::model::Test;
use crate::rules::narrowed::places;

/// The condition that begins too late, where the rule is about whether there is a guard,
/// its height or its openings, and at some place no other of the rules asks the same from
/// lower down. `covered` is what the ruleset covers.
///
/// Texts begin between 0.2 m and 2 m; at windows, of which NCC 11.3.8 speaks, at 4 m. What
/// asks for more above 10 m stands beside a rule that begins lower.
pub(super) fn too_late<'o>(
    rule: &Rule,
    covered: &[Condition],
    others: impl Iterator<Item = &'o Rule>,
) -> Option<String> {
    let dimensions = |rule: &Rule| -> Vec<Subject> {
        let subjects = rule.checks.iter().map(|check| check.subject);
        subjects.filter(|subject| is_of_a_guard(*subject)).collect()
    };
    let of_it = dimensions(rule);
    if of_it.is_empty() {
        return None;
    }
    let late = late(rule)?;
    let lower_down: Vec<&Rule> = others
        .filter(|other| {
            let shared = dimensions(other);
            shared.iter().any(|subject| of_it.contains(subject)) && self::late(other).is_none()
        })
        .collect();
    let asked_at = |place: &&'static str| {
        let mut rules = lower_down.iter();
        rules.any(|other| places(&other.when).is_none_or(|places| places.contains(place)))
    };
    let of_rule = places(&rule.when).or_else(|| places(covered));
    let of_rule = of_rule.unwrap_or_else(|| Item::Place.words().iter().map(|w| w.name).collect());
    (!of_rule.iter().all(asked_at)).then_some(late)
}

fn is_of_a_guard(subject: Subject) -> bool {
    match subject {
        Subject::AnyOpening => true,
        Subject::Item(item) => matches!(item, Item::Guard | Item::Height | Item::Opening),
        Subject::LoadPath => false,
    }
}

/// A condition without which the rule never applies, and that hardly ever holds.
fn late(rule: &Rule) -> Option<String> {
    let of_all = rule.when.iter().find(|condition| is_late(condition));
    let of_each = || {
        let mut groups = rule.when_any.iter();
        let late = |group: &Vec<Condition>| group.iter().any(is_late);
        let all = !rule.when_any.is_empty() && groups.all(late);
        all.then(|| rule.when_any.iter().flatten().find(|c| is_late(c)))
            .flatten()
    };
    // an exception that nearly always holds
    let excepted = || {
        let mut groups = rule.unless.iter();
        groups.find_map(|group| match group.as_slice() {
            [only] if is_nearly_always(only) => Some(only),
            [..] => None,
        })
    };
    of_all
        .or_else(of_each)
        .or_else(excepted)
        .map(Condition::says)
}

/// From which drop, storey and riser on a rule begins at the latest. (common practice, no
/// source)
const DROP: Length = Length::millimetres(4000);
const STOREYS: u32 = 10;
const RISERS: u32 = 10;

fn is_late(condition: &Condition) -> bool {
    match (&condition.test, condition.item) {
        (Test::Length(bounds), Item::Drop | Item::SillAboveGround) => {
            lower(bounds).is_some_and(|limit| limit.length > DROP)
        }
        (Test::Count(bounds), Item::Storeys) => lower(bounds).is_some_and(|count| *count > STOREYS),
        (Test::Count(bounds), Item::Risers) => lower(bounds).is_some_and(|count| *count > RISERS),
        (
            Test::Age(_)
            | Test::Count(_)
            | Test::Length(_)
            | Test::NoneOf(_)
            | Test::OneOf(_)
            | Test::Years(_),
            _,
        ) => false,
    }
}

fn is_nearly_always(condition: &Condition) -> bool {
    match (&condition.test, condition.item) {
        (Test::Length(bounds), Item::Drop | Item::SillAboveGround) => {
            upper(bounds).is_some_and(|limit| limit.length > DROP)
        }
        (
            Test::Age(_)
            | Test::Count(_)
            | Test::Length(_)
            | Test::NoneOf(_)
            | Test::OneOf(_)
            | Test::Years(_),
            _,
        ) => false,
    }
}

fn lower<T>(bounds: &Bounds<T>) -> Option<&T> {
    bounds.at_least.as_ref().or(bounds.above.as_ref())
}

fn upper(bounds: &Bounds<Limit>) -> Option<&Limit> {
    bounds.at_most.as_ref().or(bounds.below.as_ref())
}
