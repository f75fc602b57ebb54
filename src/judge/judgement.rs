//! One check against one item of a guard.

use std::borrow::Cow;
use std::sync::Arc;

use crate::items::Item;
use crate::items::Verdict;
use crate::judge::Chain;
use crate::judge::LimitShown;
use crate::judge::Measured;
use crate::judge::Operator;
use crate::judge::Reason;
use crate::judge::bound::Evidence;
use crate::judge::bound::Outcome;
use crate::judge::condition::within;
use crate::judge::presence::Presence;
use crate::judge::said::Said;
use crate::judge::said::says_nothing;
use crate::judge::said::word;
use crate::judge::scene::Scene;
use crate::quantities::Length;
use crate::quantities::Probability;
use crate::quantities::StandardUncertainty;
use crate::reading::Value;
use crate::rules::Bounds;

/// What a check makes of an item.
#[derive(Clone, Debug)]
pub(super) struct Judgement<'r> {
    pub(super) item: Item,
    pub(super) verdict: Verdict,
    pub(super) alone: Verdict,
    pub(super) partial: bool,
    pub(super) measured: Option<Measured>,
    pub(super) limit: Option<LimitShown<'r>>,
    pub(super) margin: Option<Length>,
    pub(super) uncertainty: Option<StandardUncertainty>,
    pub(super) probability: Option<Probability>,
    pub(super) readings: Vec<usize>,
    pub(super) also_readings: Vec<usize>,
    pub(super) reasons: Vec<Reason<'r>>,
    pub(super) chain: Option<Arc<Chain>>,
}

impl<'r> Judgement<'r> {
    /// A verdict that no value stands behind.
    pub(super) fn bare(item: Item, verdict: Verdict, reasons: Vec<Reason<'r>>) -> Judgement<'r> {
        Judgement {
            item,
            verdict,
            alone: verdict,
            partial: false,
            measured: None,
            limit: None,
            margin: None,
            uncertainty: None,
            probability: None,
            readings: Vec::new(),
            also_readings: Vec::new(),
            reasons,
            chain: None,
        }
    }

    /// What the verdict of a guard rests on; what a report shows of it is left out.
    pub(super) fn without_what_is_shown(&self) -> Judgement<'r> {
        Judgement {
            alone: self.alone,
            partial: self.partial,
            margin: self.margin,
            readings: self.readings.clone(),
            ..Judgement::bare(self.item, self.verdict, self.reasons.clone())
        }
    }

    /// Not measured, for one reason.
    pub(super) fn open(item: Item, reason: Reason<'r>) -> Judgement<'r> {
        Judgement::bare(item, Verdict::NotMeasured, vec![reason])
    }

    /// Nothing was written about the item.
    pub(super) fn not_written(scene: &Scene<'_>, item: Item) -> Judgement<'r> {
        let reason = match scene.presence {
            Presence::NotLooked(index) if item.is_of_the_guard() => Reason::CouldNotLook(index),
            Presence::NotLooked(_)
            | Presence::Present(_)
            | Presence::Absent(_)
            | Presence::NotSaid => Reason::NotWritten(item),
        };
        Judgement::open(item, reason)
    }

    /// From an outcome of evidence against limits.
    pub(super) fn from_outcome(
        scene: &Scene<'_>,
        item: Item,
        index: usize,
        said: &Said,
        outcome: Outcome<'r>,
    ) -> Judgement<'r> {
        let (value, uncertainty) = match said.evidence {
            Evidence::Point(value, u) => {
                (value, Some(u).filter(|u| *u > StandardUncertainty::NONE))
            }
            Evidence::AtLeast(value) | Evidence::Above(value) | Evidence::Below(value) => {
                (value, None)
            }
        };
        let mut reasons = Vec::new();
        if outcome.margin == Some(Length::ZERO) && uncertainty.is_some() {
            reasons.push(Reason::ExactlyAtLimit);
        }
        if outcome.verdict == Verdict::NotMeasured {
            reasons.push(Reason::BoundDoesNotSettle);
        }
        Judgement {
            item,
            verdict: outcome.verdict,
            alone: outcome.alone,
            partial: false,
            measured: Some(Measured {
                written: scene.guard.observation(index).written.clone(),
                value: Some(value),
                unit: Some(said.unit),
            }),
            limit: Some(outcome.limit),
            margin: outcome.margin,
            uncertainty,
            probability: outcome.probability,
            readings: vec![index],
            also_readings: Vec::new(),
            reasons,
            chain: None,
        }
    }

    /// The worst of several: the worst verdict, then the least to spare, then by
    /// what is written, so that the order of rows decides nothing; the readings of
    /// the others are named beside it.
    pub(super) fn worst(scene: &Scene<'_>, mut all: Vec<Judgement<'r>>) -> Option<Judgement<'r>> {
        if all.len() < 2 {
            return all.pop();
        }
        let alone = all.iter().map(|judgement| judgement.alone).min()?;
        let written = |one: &Judgement<'_>| {
            let index = one.readings.first().copied().or_else(|| {
                let mut reasons = one.reasons.iter();
                reasons.find_map(Reason::observation)
            });
            index.map(|index| {
                let observation = scene.guard.observation(index);
                (observation.written.clone(), observation.note.clone())
            })
        };
        let ranked = |one: &Judgement<'_>| (one.rank(), written(one));
        let places = all.iter().enumerate();
        let (place, _) = places.min_by(|(_, one), (_, other)| ranked(one).cmp(&ranked(other)))?;
        let mut worst = all.remove(place);
        worst.alone = alone;
        for other in all {
            worst.also_readings.extend(other.readings);
            worst.also_readings.extend(other.also_readings);
        }
        let own = &worst.readings;
        worst.also_readings.retain(|index| !own.contains(index));
        worst.also_readings.sort_unstable();
        worst.also_readings.dedup();
        Some(worst)
    }

    fn rank(&self) -> (Verdict, Length) {
        let no_margin = Length::from_nanometres(i64::MAX);
        (
            self.verdict,
            self.margin.or(self.beyond()).unwrap_or(no_margin),
        )
    }

    /// How far a bound that falls short lies beyond its limit at least: a hole that a larger
    /// ball passes is not told by a lesser tape reading.
    fn beyond(&self) -> Option<Length> {
        let limit = self.limit.as_ref()?.value?;
        let bound = self.measured.as_ref()?.value?;
        (self.verdict == Verdict::FallsShort).then(|| -(bound - limit).magnitude())
    }
}

/// The word for what cannot be seen.
pub(super) const HIDDEN: &str = "hidden";

/// Words against a list.
pub(super) fn words<'r>(
    scene: &Scene<'_>,
    item: Item,
    is: &'r [&'static str],
    is_not: &'r [&'static str],
) -> Judgement<'r> {
    let mut all = Vec::new();
    for (index, observation) in scene.of(item) {
        let Some(word) = word(observation) else {
            let reason = says_nothing(index, observation).unwrap_or(Reason::Unreadable(index));
            all.push(Judgement::open(item, reason));
            continue;
        };
        if word == HIDDEN && !is.contains(&word) && !is_not.contains(&word) {
            all.push(Judgement::open(item, Reason::Hidden(index)));
            continue;
        }
        let wanted = is.is_empty() || is.contains(&word);
        let forbidden = is_not.contains(&word);
        let verdict = if wanted && !forbidden {
            Verdict::Meets
        } else {
            Verdict::FallsShort
        };
        let (operator, list) = if is.is_empty() || forbidden {
            (Operator::IsNot, is_not)
        } else {
            (Operator::Is, is)
        };
        let limit = LimitShown {
            operator,
            written: match list {
                [only] => Cow::Borrowed(*only),
                several => Cow::Owned(several.join(" or ")),
            },
            value: None,
            unit: None,
        };
        all.push(seen(scene, item, index, verdict, limit));
    }
    Judgement::worst(scene, all).unwrap_or_else(|| Judgement::not_written(scene, item))
}

/// Counts against their bounds.
pub(super) fn count<'r>(scene: &Scene<'_>, item: Item, bounds: &Bounds<u32>) -> Judgement<'r> {
    let mut all = Vec::new();
    for (index, observation) in scene.of(item) {
        let count = match observation.reading.as_ref().map(|reading| &reading.value) {
            Some(Value::Count(count)) => *count,
            _ => {
                let reason = says_nothing(index, observation).unwrap_or(Reason::Unreadable(index));
                all.push(Judgement::open(item, reason));
                continue;
            }
        };
        let verdict = if within(bounds, count) {
            Verdict::Meets
        } else {
            Verdict::FallsShort
        };
        let (operator, limit) = count_limit(bounds, count);
        let limit = LimitShown {
            operator,
            written: Cow::Owned(limit.to_string()),
            value: None,
            unit: None,
        };
        all.push(seen(scene, item, index, verdict, limit));
    }
    Judgement::worst(scene, all).unwrap_or_else(|| Judgement::not_written(scene, item))
}

/// The bound that a count breaks, else the first there is.
fn count_limit(bounds: &Bounds<u32>, count: u32) -> (Operator, u32) {
    let all = [
        (
            Operator::AtLeast,
            bounds.at_least,
            Bounds {
                at_least: bounds.at_least,
                ..Bounds::default()
            },
        ),
        (
            Operator::AtMost,
            bounds.at_most,
            Bounds {
                at_most: bounds.at_most,
                ..Bounds::default()
            },
        ),
        (
            Operator::Above,
            bounds.above,
            Bounds {
                above: bounds.above,
                ..Bounds::default()
            },
        ),
        (
            Operator::Below,
            bounds.below,
            Bounds {
                below: bounds.below,
                ..Bounds::default()
            },
        ),
    ];
    let there = || {
        all.iter()
            .filter_map(|(operator, limit, alone)| limit.map(|limit| (*operator, limit, alone)))
    };
    there()
        .find(|(_, _, alone)| !within(alone, count))
        .or_else(|| there().next())
        .map_or((Operator::AtLeast, 0), |(operator, limit, _)| {
            (operator, limit)
        })
}

/// A judgement of something seen or counted, without length and doubt.
pub(super) fn seen<'r>(
    scene: &Scene<'_>,
    item: Item,
    index: usize,
    verdict: Verdict,
    limit: LimitShown<'r>,
) -> Judgement<'r> {
    Judgement {
        item,
        verdict,
        alone: verdict,
        partial: false,
        measured: Some(Measured {
            written: scene.guard.observation(index).written.clone(),
            value: None,
            unit: None,
        }),
        limit: Some(limit),
        margin: None,
        uncertainty: None,
        probability: None,
        readings: vec![index],
        also_readings: Vec::new(),
        reasons: Vec::new(),
        chain: None,
    }
}

/// Whether there is a guard at all.
pub(super) fn presence<'r>(scene: &Scene<'_>) -> Judgement<'r> {
    let limit = LimitShown {
        operator: Operator::Is,
        written: Cow::Borrowed("present"),
        value: None,
        unit: None,
    };
    match scene.presence {
        Presence::Present(index) => seen(scene, Item::Guard, index, Verdict::Meets, limit),
        Presence::Absent(index) => seen(scene, Item::Guard, index, Verdict::FallsShort, limit),
        Presence::NotLooked(index) => Judgement::open(Item::Guard, Reason::CouldNotLook(index)),
        Presence::NotSaid => Judgement::open(Item::Guard, Reason::NotWritten(Item::Guard)),
    }
}
