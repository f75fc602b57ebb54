//! Three-valued conditions, with a fourth value for triggers in doubt.

use crate::items::Item;
use crate::items::Verdict;
use crate::items::Worst;
use crate::judge::Decision;
use crate::judge::Reason;
use crate::judge::bound::Evidence;
use crate::judge::bound::Must;
use crate::judge::bound::asks;
use crate::judge::facts::trigger;
use crate::judge::said::says_nothing;
use crate::judge::said::word;
use crate::judge::scene::Scene;
use crate::judge::scene::Supposed;
use crate::quantities::Age;
use crate::quantities::StandardUncertainty;
use crate::quantities::YearSpan;
use crate::reading::Value;
use crate::rules::Bounds;
use crate::rules::Condition;
use crate::rules::Limit;
use crate::rules::Rule;
use crate::rules::Test;

/// Whether a condition holds: `when` takes the lowest, `when-any` the highest.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Truth {
    /// It was stated and does not hold.
    False,
    /// Nobody wrote it down.
    Unknown,
    /// It was measured, and the tape cannot tell.
    Doubt,
    /// It holds.
    True,
}

impl Truth {
    fn not(self) -> Truth {
        match self {
            Truth::False => Truth::True,
            Truth::Unknown => Truth::Unknown,
            Truth::Doubt => Truth::Doubt,
            Truth::True => Truth::False,
        }
    }

    fn of(holds: bool) -> Truth {
        if holds { Truth::True } else { Truth::False }
    }
}

/// Whether a rule applies.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Applies {
    pub(super) truth: Truth,
    /// What the readings alone would say.
    pub(super) alone: Truth,
}

impl Applies {
    /// Whether it does, so that nothing has to be said of why.
    pub(super) fn surely(self) -> bool {
        self.truth == Truth::True
    }
}

/// Whether a rule applies to this guard.
pub(super) fn applies(scene: &Scene<'_>, rule: &Rule) -> Applies {
    let decision = scene.options.decision;
    let truth = rule_truth(scene, rule, decision);
    // only a doubt can come out otherwise by the reading alone, and an unknown may hide one
    let alone = match truth {
        Truth::False | Truth::True => truth,
        Truth::Doubt | Truth::Unknown => rule_truth(scene, rule, Decision::Simple),
    };
    Applies { truth, alone }
}

fn rule_truth(scene: &Scene<'_>, rule: &Rule, decision: Decision) -> Truth {
    // a rule that asks how the ground falls says itself what that does to the drop
    let asks_of_it = rule
        .conditions()
        .any(|condition| condition.item == Item::GroundFall);
    let ground = if asks_of_it {
        FallOfGround::AskedApart
    } else {
        FallOfGround::DeepensTheDrop
    };
    let all = |conditions: &[Condition]| all_with(scene, conditions, decision, ground);
    let mut truth = all(&rule.when);
    if !rule.when_any.is_empty() {
        let groups = rule.when_any.iter();
        let best = groups.map(|group| all(group)).max();
        truth = truth.min(best.unwrap_or(Truth::True));
    }
    for group in &rule.unless {
        truth = truth.min(all(group).not());
    }
    truth
}

/// What ground that falls away beside the edge does to a drop that was measured at it.
#[derive(Clone, Copy)]
enum FallOfGround {
    AskedApart,
    DeepensTheDrop,
}

/// All of these together: the lowest of their truths.
pub(super) fn all(scene: &Scene<'_>, conditions: &[Condition], decision: Decision) -> Truth {
    all_with(scene, conditions, decision, FallOfGround::DeepensTheDrop)
}

fn all_with(
    scene: &Scene<'_>,
    conditions: &[Condition],
    decision: Decision,
    ground: FallOfGround,
) -> Truth {
    let mut truth = Truth::True;
    for condition in conditions {
        truth = truth.min(holds_with(scene, condition, decision, ground));
        if truth == Truth::False {
            break;
        }
    }
    truth
}

/// Why a rule does not apply, or why nobody knows.
pub(super) fn reasons<'r>(scene: &Scene<'_>, rule: &Rule, truth: Truth) -> Vec<Reason<'r>> {
    let decision = scene.options.decision;
    let mut reasons = Vec::new();
    match truth {
        Truth::True => {}
        Truth::False => {
            let stated = rule
                .when
                .iter()
                .find(|c| holds(scene, c, decision) == Truth::False);
            let any = || rule.when_any.iter().flatten().next();
            let excepted = || {
                let mut groups = rule.unless.iter();
                groups
                    .find(|group| all(scene, group, decision) == Truth::True)
                    .and_then(|group| group.first())
            };
            if let Some(condition) = stated {
                reasons.push(Reason::TriggerFalse(condition.item));
            } else if let Some(condition) = excepted() {
                reasons.push(Reason::Excepted(condition.item));
            } else if let Some(condition) = any() {
                reasons.push(Reason::TriggerFalse(condition.item));
            }
        }
        Truth::Unknown | Truth::Doubt => {
            // a group that is settled can no longer change anything
            let open = |group: &&Vec<Condition>| {
                matches!(all(scene, group, decision), Truth::Unknown | Truth::Doubt)
            };
            let any = &rule.when_any;
            let satisfied = |group: &Vec<Condition>| all(scene, group, decision) == Truth::True;
            let any_open = !any.iter().any(satisfied);
            let alternatives = any.iter().filter(|group| any_open && open(group));
            let exceptions = rule.unless.iter().filter(open);
            let groups = alternatives.chain(exceptions).flatten();
            for condition in rule.when.iter().chain(groups) {
                let reason = match holds(scene, condition, decision) {
                    Truth::False | Truth::True => continue,
                    Truth::Doubt => Reason::TriggerInDoubt(condition.item),
                    Truth::Unknown => why_unknown(scene, condition.item),
                };
                if !reasons.contains(&reason) {
                    reasons.push(reason);
                }
            }
        }
    }
    reasons
}

fn why_unknown<'r>(scene: &Scene<'_>, item: Item) -> Reason<'r> {
    let nothing = scene
        .of(item)
        .find_map(|(index, observation)| says_nothing(index, observation));
    let doubted = || {
        let mut readings = scene.of(item).filter(|_| scene.supposed(item).is_none());
        readings.find_map(|(index, _)| trigger(scene, item, index)?.doubt)
    };
    nothing
        .or_else(doubted)
        .unwrap_or(Reason::CircumstanceMissing(item))
}

/// Whether one condition holds.
pub(super) fn holds(scene: &Scene<'_>, condition: &Condition, decision: Decision) -> Truth {
    holds_with(scene, condition, decision, FallOfGround::DeepensTheDrop)
}

fn holds_with(
    scene: &Scene<'_>,
    condition: &Condition,
    decision: Decision,
    ground: FallOfGround,
) -> Truth {
    let item = condition.item;
    if let Some(supposed) = scene.supposed(item) {
        return as_supposed(*supposed, &condition.test);
    }
    match &condition.test {
        Test::OneOf(words) => of_words(scene, item, words),
        Test::NoneOf(words) => of_words(scene, item, words).not(),
        Test::Length(bounds) => of_lengths(scene, item, bounds, decision, ground),
        Test::Age(bounds) => of_ages(scene, item, bounds),
        Test::Count(bounds) => of_counts(scene, item, bounds),
        Test::Years(bounds) => of_years(scene, item, bounds),
    }
}

/// Whether a condition holds of what a case supposes; a value of another kind
/// leaves it unknown.
pub(super) fn as_supposed(supposed: Supposed, test: &Test) -> Truth {
    match (test, supposed) {
        (Test::OneOf(words), Supposed::Word(word)) => Truth::of(words.contains(&word)),
        (Test::NoneOf(words), Supposed::Word(word)) => Truth::of(!words.contains(&word)),
        (Test::Length(bounds), Supposed::Length(length)) => {
            let point = Evidence::Point(length, StandardUncertainty::NONE);
            let musts = asks(bounds);
            let mut musts = musts.iter();
            Truth::of(musts.all(|must| must.verdict(point, Decision::Simple) == Verdict::Meets))
        }
        (Test::Age(bounds), Supposed::Age(age)) => Truth::of(within(bounds, age)),
        (Test::Age(_), Supposed::Nobody) => Truth::False,
        (Test::Count(bounds), Supposed::Count(count)) => Truth::of(within(bounds, count)),
        (Test::Years(bounds), Supposed::Year(year)) => Truth::of(within(bounds, year)),
        (
            Test::Age(_)
            | Test::Count(_)
            | Test::Length(_)
            | Test::NoneOf(_)
            | Test::OneOf(_)
            | Test::Years(_),
            Supposed::Age(_)
            | Supposed::Count(_)
            | Supposed::Length(_)
            | Supposed::Nobody
            | Supposed::Word(_)
            | Supposed::Year(_),
        ) => Truth::Unknown,
    }
}

/// One of several observations suffices; one that says nothing leaves it open.
fn of_words(scene: &Scene<'_>, item: Item, words: &[&'static str]) -> Truth {
    let truths = scene.of(item).map(|(_, observation)| {
        word(observation).map_or(Truth::Unknown, |word| Truth::of(words.contains(&word)))
    });
    truths.max().unwrap_or(Truth::Unknown)
}

/// The governing observation decides: for a drop the greatest.
fn of_lengths(
    scene: &Scene<'_>,
    item: Item,
    bounds: &Bounds<Limit>,
    decision: Decision,
    ground: FallOfGround,
) -> Truth {
    let mut truth = Truth::True;
    for ask in asks(bounds).iter() {
        let of = |evidence: Evidence| match ask.verdict(evidence, evidence.decision(decision)) {
            Verdict::Meets => Truth::True,
            Verdict::FallsShort => Truth::False,
            Verdict::TooClose => Truth::Doubt,
            Verdict::NotMeasured | Verdict::NotSettled | Verdict::DoesNotApply => Truth::Unknown,
        };
        let truths = scene.of(item).map(|(index, _)| {
            let Some(trigger) = trigger(scene, item, index) else {
                return Truth::Unknown;
            };
            let truth = of(trigger.evidence);
            match (trigger.up_to, ground) {
                (Some(end), FallOfGround::DeepensTheDrop) if of(end) != truth => Truth::Unknown,
                (Some(_) | None, _) => truth,
            }
        });
        let highest = match (item.info().worst, ask) {
            (Worst::Greatest, Must::Above(_) | Must::AtLeast(_))
            | (Worst::Least, Must::Below(_) | Must::AtMost(_)) => truths.max(),
            (Worst::Greatest | Worst::Least | Worst::Neither, _) => truths.min(),
        };
        truth = truth.min(highest.unwrap_or(Truth::Unknown));
    }
    truth
}

/// One child within the bounds suffices.
fn of_ages(scene: &Scene<'_>, item: Item, bounds: &Bounds<Age>) -> Truth {
    let truths = scene.of(item).map(|(_, observation)| {
        match observation.reading.as_ref().map(|reading| &reading.value) {
            Some(Value::Age(age)) => Truth::of(within(bounds, *age)),
            Some(Value::None) => Truth::False,
            _ => Truth::Unknown,
        }
    });
    truths.max().unwrap_or(Truth::Unknown)
}

/// The greatest count governs.
fn of_counts(scene: &Scene<'_>, item: Item, bounds: &Bounds<u32>) -> Truth {
    let counts = scene.of(item).map(|(_, observation)| {
        match observation.reading.as_ref().map(|reading| &reading.value) {
            Some(Value::Count(count)) => Some(*count),
            _ => None,
        }
    });
    let counts: Option<Vec<u32>> = counts.collect();
    match counts.as_deref().and_then(|counts| counts.iter().max()) {
        Some(count) => Truth::of(within(bounds, *count)),
        None => Truth::Unknown,
    }
}

fn of_years(scene: &Scene<'_>, item: Item, bounds: &Bounds<i32>) -> Truth {
    let truths = scene.of(item).map(|(_, observation)| {
        match observation.reading.as_ref().map(|reading| &reading.value) {
            Some(Value::Years(span)) => years_within(*span, bounds),
            _ => Truth::Unknown,
        }
    });
    truths.min().unwrap_or(Truth::Unknown)
}

/// A span of years is true or false only where all of its years are.
fn years_within(span: YearSpan, bounds: &Bounds<i32>) -> Truth {
    let from = |year: i32| match (span.surely_from(year), span.surely_before(year)) {
        (true, _) => Truth::True,
        (_, true) => Truth::False,
        (false, false) => Truth::Unknown,
    };
    let mut truth = Truth::True;
    if let Some(year) = bounds.at_least {
        truth = truth.min(from(year));
    }
    if let Some(year) = bounds.above {
        truth = truth.min(from(year + 1));
    }
    if let Some(year) = bounds.at_most {
        truth = truth.min(from(year + 1).not());
    }
    if let Some(year) = bounds.below {
        truth = truth.min(from(year).not());
    }
    truth
}

/// Whether an exact value keeps to every bound.
pub(super) fn within<T: PartialOrd + Copy>(bounds: &Bounds<T>, value: T) -> bool {
    bounds.at_least.is_none_or(|limit| value >= limit)
        && bounds.at_most.is_none_or(|limit| value <= limit)
        && bounds.above.is_none_or(|limit| value > limit)
        && bounds.below.is_none_or(|limit| value < limit)
}
