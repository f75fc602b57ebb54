//! Footholds: which of them count, where none may be, and which make a ladder.

use crate::items::InfillWord;
use std::borrow::Cow;

use crate::items::Item;
use crate::items::Verdict;
use crate::judge::LimitShown;
use crate::judge::Operator;
use crate::judge::Reason;
use crate::judge::bound::Evidence;
use crate::judge::bound::Must;
use crate::judge::bound::Musts;
use crate::judge::decision::against;
use crate::judge::judgement::Judgement;
use crate::judge::judgement::seen;
use crate::judge::ladder::Along;
use crate::judge::ladder::Ledge;
use crate::judge::ladder::LedgePairs;
use crate::judge::ladder::of_limit;
use crate::judge::ladder::said;
use crate::judge::opening::better;
use crate::judge::said::says_nothing;
use crate::judge::scene::Scene;
use crate::quantities::StandardUncertainty;
use crate::quantities::combine;
use crate::reading::Foothold;
use crate::reading::Value;
use crate::rules::FootholdDemand;
use crate::rules::Ladder;
use crate::rules::Zone;

const ITEM: Item = Item::Foothold;

/// Footholds against what a rule asks of them.
pub(super) fn foothold<'r>(scene: &Scene<'_>, demand: &'r FootholdDemand) -> Judgement<'r> {
    let bars = scene.of(Item::Infill);
    let bars = bars
        .map(|(_, o)| o.word())
        .any(|word| word == Some(InfillWord::HorizontalBars));
    let mut all = Vec::new();
    let mut ledges = Vec::new();
    for (index, observation) in scene.of(ITEM) {
        match observation.reading.as_ref().map(|reading| &reading.value) {
            Some(Value::Foothold(foothold)) => ledges.push(Ledge {
                index,
                foothold: *foothold,
                alone: alone(scene, index, foothold, demand),
            }),
            Some(Value::None) if bars => all.push(Judgement::open(ITEM, Reason::BarsHaveHeights)),
            Some(Value::None) => {
                all.push(seen(scene, ITEM, index, Verdict::Meets, shown(demand)));
            }
            _ => {
                let reason = says_nothing(index, observation).unwrap_or(Reason::Unreadable(index));
                all.push(Judgement::open(ITEM, reason));
            }
        }
    }
    all.extend(together(scene, ledges, demand));
    match Judgement::worst(scene, all) {
        Some(worst) => worst,
        None if bars => Judgement::open(ITEM, Reason::BarsHaveHeights),
        None => Judgement::not_written(scene, ITEM),
    }
}

/// The judgements of all ledges: those that count are judged together where the rule
/// says how near they make a ladder.
fn together<'r>(
    scene: &Scene<'_>,
    ledges: Vec<Ledge<'r>>,
    demand: &'r FootholdDemand,
) -> Vec<Judgement<'r>> {
    let counts = |ledge: &Ledge<'_>| ledge.alone.verdict != Verdict::Meets;
    let Some(ladder) = &demand.ladder else {
        return ledges.into_iter().map(|ledge| ledge.alone).collect();
    };
    let (counted, fine): (Vec<_>, Vec<_>) = ledges.into_iter().partition(counts);
    let mut all: Vec<Judgement<'r>> = fine.into_iter().map(|ledge| ledge.alone).collect();
    match (counted.as_slice(), &demand.none_within) {
        ([], _) => {}
        ([only], Some(_)) => all.push(only.alone.clone()),
        ([only], None) => all.push(seen(scene, ITEM, only.index, Verdict::Meets, shown(demand))),
        (_, zone) => {
            let along = if zone.is_some() {
                Along::Asked
            } else {
                Along::NotAsked
            };
            all.extend(LedgePairs::new(scene, counted, ladder, along).judged());
        }
    }
    all
}

/// One foothold: fine where it lies outside the zone, or does not count as one.
fn alone<'r>(
    scene: &Scene<'_>,
    index: usize,
    foothold: &Foothold,
    demand: &'r FootholdDemand,
) -> Judgement<'r> {
    let point = |length, item| {
        let observation = scene.guard.observation(index);
        let (unit, graduation) = (foothold.unit, foothold.graduation);
        Evidence::Point(
            length,
            combine(&scene.terms(item, observation, length, unit, graduation)),
        )
    };
    let one = |evidence, ask| {
        let outcome = against(evidence, &Musts::only(ask), scene.options.decision)?;
        let said = said(evidence, foothold);
        Some(Judgement::from_outcome(scene, ITEM, index, &said, outcome))
    };
    let height = point(foothold.height, ITEM);
    let mut best: Option<Judgement<'r>> = None;
    // below the zone or above it; its ends belong to it
    if let Some(zone) = &demand.none_within {
        for ask in [Must::Below(&zone.from), Must::Above(&zone.to)] {
            best = one(height, ask).map_or(best.clone(), |next| better(best, next));
        }
    }
    match (&demand.deeper_than, foothold.depth) {
        (Some(limit), Some(depth)) => {
            // the depth of a ledge is a gap between two faces
            let depth = point(depth, Item::SolidPartTopWidth);
            best = one(depth, Must::AtMost(limit)).map_or(best.clone(), |next| better(best, next));
        }
        (Some(_), None) => {
            best = better(best, Judgement::open(ITEM, Reason::FootholdDepthMissing));
        }
        (None, _) => {}
    }
    let steep = demand.no_steeper_than.as_ref().zip(foothold.slope);
    if steep.is_some_and(|(limit, slope)| slope > limit.tilt) {
        best = better(
            best,
            seen(scene, ITEM, index, Verdict::Meets, shown(demand)),
        );
    }
    let counts = |shown| {
        let mut judgement = seen(scene, ITEM, index, Verdict::FallsShort, shown);
        if let (Some(measured), Evidence::Point(value, u)) = (&mut judgement.measured, height) {
            (measured.value, measured.unit) = (Some(value), Some(foothold.unit));
            judgement.uncertainty = Some(u).filter(|u| *u > StandardUncertainty::NONE);
        }
        judgement
    };
    let mut judgement = best.unwrap_or_else(|| counts(shown(demand)));
    if judgement.verdict != Verdict::Meets {
        // how far it is from not counting says nothing beside a zone
        judgement.limit = Some(shown(demand));
        judgement.margin = None;
    }
    judgement
}

fn shown(demand: &FootholdDemand) -> LimitShown<'_> {
    match (&demand.none_within, &demand.ladder) {
        (Some(Zone { from, to }), _) => LimitShown {
            operator: Operator::NoneWithin,
            written: Cow::Owned(format!("{} and {}", from.written, to.written)),
            value: None,
            unit: None,
        },
        (None, Some(Ladder::UpTo(limit))) => of_limit(Operator::LadderUpTo, limit),
        (None, Some(Ladder::Below(limit))) => of_limit(Operator::LadderBelow, limit),
        (None, None) => LimitShown {
            operator: Operator::Is,
            written: Cow::Borrowed("none"),
            value: None,
            unit: None,
        },
    }
}
