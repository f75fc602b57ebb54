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
use crate::judge::opening::better;
use crate::judge::said::Said;
use crate::judge::said::says_nothing;
use crate::judge::scene::Scene;
use crate::quantities::Length;
use crate::quantities::StandardUncertainty;
use crate::quantities::combine;
use crate::reading::Foothold;
use crate::reading::Value;
use crate::rules::FootholdDemand;
use crate::rules::Ladder;
use crate::rules::Limit;
use crate::rules::Zone;

const ITEM: Item = Item::Foothold;

/// A foothold that was written, and how it fares by itself.
struct Ledge<'r> {
    index: usize,
    foothold: Foothold,
    alone: Judgement<'r>,
}

/// Footholds against what a rule asks of them.
pub(super) fn foothold<'r>(scene: &Scene<'_>, demand: &'r FootholdDemand) -> Judgement<'r> {
    let bars = scene.guard.of(Item::Infill);
    let bars = bars
        .map(|(_, o)| o.word())
        .any(|word| word == Some(InfillWord::HorizontalBars));
    let mut all = Vec::new();
    let mut ledges = Vec::new();
    for (index, observation) in scene.guard.of(ITEM) {
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
    ledges.sort_by_key(|ledge| ledge.foothold.height);
    all.extend(together(scene, ledges, demand));
    match Judgement::worst(scene, all) {
        Some(worst) => worst,
        None if bars => Judgement::open(ITEM, Reason::BarsHaveHeights),
        None => Judgement::not_written(scene, ITEM),
    }
}

/// The judgements of all ledges, each beside the others where the rule says how
/// near they make a ladder.
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
    if demand.none_within.is_none() {
        if let [only] = counted.as_slice() {
            all.push(seen(scene, ITEM, only.index, Verdict::Meets, shown(demand)));
        }
        // of ledges in order the nearest two follow each other
        let pairs = counted.windows(2);
        all.extend(pairs.map(|pair| near(scene, [&pair[0], &pair[1]], ladder, None)));
        return all;
    }
    for (place, ledge) in counted.iter().enumerate() {
        let apart = beside_its_nearest(scene, &counted, place, ladder);
        let best = match Judgement::worst(scene, apart) {
            None => ledge.alone.clone(),
            Some(apart) if apart.verdict == Verdict::FallsShort => {
                let reasons = apart.reasons;
                let mut judgement = ledge.alone.clone();
                judgement.reasons.extend(reasons);
                judgement
            }
            Some(apart) => {
                better(Some(ledge.alone.clone()), apart).unwrap_or_else(|| ledge.alone.clone())
            }
        };
        all.push(best);
    }
    all
}

/// A ledge beside each of the others, the nearest in height first: up to a sure
/// shortfall, and in either direction up to the first that is far enough above
/// or below it, since those beyond are farther still.
fn beside_its_nearest<'r>(
    scene: &Scene<'_>,
    counted: &[Ledge<'r>],
    place: usize,
    ladder: &'r Ladder,
) -> Vec<Judgement<'r>> {
    let ledge = &counted[place];
    let mut below = counted[..place].iter().rev().peekable();
    let mut above = counted[place + 1..].iter().peekable();
    let mut apart = Vec::new();
    loop {
        let down = below
            .peek()
            .map(|other| ledge.foothold.height - other.foothold.height);
        let up = above
            .peek()
            .map(|other| other.foothold.height - ledge.foothold.height);
        let (other, goes_down) = match (down, up) {
            (None, None) => return apart,
            (Some(down), Some(up)) if down <= up => (below.next(), true),
            (Some(_), None) => (below.next(), true),
            (_, Some(_)) => (above.next(), false),
        };
        let Some(other) = other else {
            return apart;
        };
        let pair = if goes_down {
            [other, ledge]
        } else {
            [ledge, other]
        };
        let judged = near(scene, pair, ladder, Some(along(scene, pair, ladder)));
        let is_short = judged.verdict == Verdict::FallsShort;
        apart.push(judged);
        if is_short {
            return apart;
        }
        let heights = pair.map(|ledge| ledge.foothold.height);
        if distance(scene, pair, heights, ladder).verdict == Verdict::Meets {
            if goes_down {
                below = counted[..0].iter().rev().peekable();
            } else {
                above = counted[..0].iter().peekable();
            }
        }
    }
}

/// Two ledges, the lower first: fine where one does not count, or where they are
/// far enough apart; along the guard too, where that is asked.
fn near<'r>(
    scene: &Scene<'_>,
    pair: [&Ledge<'r>; 2],
    ladder: &'r Ladder,
    along: Option<Judgement<'r>>,
) -> Judgement<'r> {
    let [lower, upper] = pair;
    let heights = pair.map(|ledge| ledge.foothold.height);
    let mut apart = distance(scene, pair, heights, ladder);
    if let Some(along) = along
        && along.verdict < apart.verdict
    {
        apart = along;
    }
    if apart.verdict != Verdict::Meets {
        apart.reasons.push(Reason::Ladder {
            lower: lower.foothold.height,
            upper: upper.foothold.height,
            unit: lower.foothold.unit,
        });
    }
    let either = [lower, upper]
        .into_iter()
        .map(|ledge| ledge.alone.clone())
        .filter(|alone| alone.verdict != Verdict::FallsShort)
        .fold(None, better);
    match better(either, apart) {
        Some(best) => best,
        None => Judgement::not_written(scene, ITEM),
    }
}

/// How far along the guard two ledges lie from each other, against the limit.
fn along<'r>(scene: &Scene<'_>, pair: [&Ledge<'r>; 2], ladder: &'r Ladder) -> Judgement<'r> {
    match pair.map(|ledge| ledge.foothold.along) {
        [Some(one), Some(other)] => distance(scene, pair, [one.min(other), one.max(other)], ladder),
        [None, _] | [_, None] => Judgement::open(ITEM, Reason::AlongMissing),
    }
}

/// A distance between two ledges against how near makes a ladder.
fn distance<'r>(
    scene: &Scene<'_>,
    pair: [&Ledge<'r>; 2],
    [from, to]: [Length; 2],
    ladder: &'r Ladder,
) -> Judgement<'r> {
    let mut terms = Vec::new();
    for (ledge, at) in pair.into_iter().zip([from, to]) {
        let observation = scene.guard.observation(ledge.index);
        let Foothold {
            unit, graduation, ..
        } = ledge.foothold;
        terms.extend(scene.terms(ITEM, observation, at, unit, graduation));
    }
    let [lower, upper] = pair;
    let evidence = Evidence::Point(to - from, combine(&terms));
    let (ask, operator) = match ladder {
        Ladder::Below(limit) => (Must::AtLeast(limit), Operator::LadderBelow),
        Ladder::UpTo(limit) => (Must::Above(limit), Operator::LadderUpTo),
    };
    let said = said(evidence, &lower.foothold);
    match against(evidence, &Musts::only(ask), scene.options.decision) {
        Some(outcome) => {
            let mut judgement = Judgement::from_outcome(scene, ITEM, upper.index, &said, outcome);
            judgement.readings = vec![upper.index, lower.index];
            judgement.readings.dedup();
            judgement.limit = Some(of_limit(operator, ladder.limit()));
            judgement
        }
        None => Judgement::not_written(scene, ITEM),
    }
}

fn said(evidence: Evidence, foothold: &Foothold) -> Said {
    Said {
        evidence,
        at_worst: None,
        unit: foothold.unit,
        at: None,
        ball: None,
    }
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

fn of_limit(operator: Operator, limit: &Limit) -> LimitShown<'_> {
    LimitShown {
        operator,
        written: Cow::Borrowed(limit.written.as_str()),
        value: Some(limit.length),
        unit: Some(limit.unit),
    }
}
