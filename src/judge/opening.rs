//! Openings and footholds against what is asked of them: zones of height, balls
//! tried everywhere, infill that gives way.

use crate::items::Item;
use crate::items::OpeningsCheckedWord;
use crate::items::StateWord;
use crate::items::Verdict;
use crate::judge::Reason;
use crate::judge::bound::Evidence;
use crate::judge::bound::Musts;
use crate::judge::bound::Outcome;
use crate::judge::bound::opening_asks;
use crate::judge::bound::shape_asks;
use crate::judge::decision::against;
use crate::judge::decision::bounds_against;
use crate::judge::entrapment;
use crate::judge::facts;
use crate::judge::gauge::Gauged;
use crate::judge::gauge::Taped;
use crate::judge::gauge::Where;
use crate::judge::gauge::beside_each_other;
use crate::judge::gauge::holes;
use crate::judge::judgement::Judgement;
use crate::judge::said::AtWorst;
use crate::judge::said::Piece;
use crate::judge::said::Said;
use crate::judge::said::Spread;
use crate::judge::scene::Build;
use crate::judge::scene::Scene;
use crate::quantities::Length;
use crate::quantities::LengthUnit;
use crate::reading::Extent;
use crate::reading::Graduation;
use crate::reading::Push;
use crate::reading::Value;
use crate::rules::Limit;
use crate::rules::OpeningDemand;
use crate::rules::Zone;

/// One opening item against what a rule asks of it.
///
/// `zoned` are the demands of the same ruleset that apply, look at the same
/// item and carry a zone; they decide for an opening whose height nobody wrote.
pub(super) fn opening<'r>(
    scene: &Scene<'_>,
    item: Item,
    demand: &'r OpeningDemand,
    zoned: &[&'r OpeningDemand],
) -> Judgement<'r> {
    // whose axes are known may be told of without a reading of its own
    if item != Item::Opening && observations(scene, item).next().is_none() {
        return Judgement::not_written(scene, item);
    }
    let asks = opening_asks(demand);
    let mut all = Vec::new();
    let mut tapes = Vec::new();
    let mut bounded = Vec::new();
    let mut outside = false;
    for (index, from) in observations(scene, item) {
        let said = match scene.piece(from, index) {
            Piece::Nothing(reason) => {
                all.push(Judgement::open(item, reason));
                continue;
            }
            Piece::Says(said) => said,
        };
        if let (Some(zone), Some(at)) = (&demand.zone, said.at)
            && !overlaps(zone, at)
        {
            outside = true;
            let decision = said.evidence.decision(scene.options.decision);
            let stopped = against(said.evidence, &asks, decision)
                .is_some_and(|outcome| outcome.verdict == Verdict::Meets);
            if stopped {
                continue;
            }
            if let Some(top) = facts::top_below(scene, at) {
                all.push(Judgement::open(item, Reason::NoSuchPlace { index, top }));
            } else if scene.may_run_on(from, index) {
                all.push(Judgement::open(item, Reason::NotWritten(Item::Infill)));
            } else if overlaps(zone, reach(scene, &said, at)) {
                all.push(Judgement::open(item, Reason::ReachNotWritten(zone)));
            }
            continue;
        }
        match said.evidence {
            Evidence::Point(value, doubt) => {
                let judgement = tape(scene, item, index, &said, demand, zoned);
                tapes.extend(judgement.map(|judgement| Taped {
                    judgement,
                    index,
                    value,
                    doubt,
                    place: place(scene, index, &said),
                }));
                all.extend(entrapment::probe(scene, item, index, &said, demand));
            }
            Evidence::AtLeast(_) | Evidence::Above(_) | Evidence::Below(_) => {
                bounded.push((index, said));
            }
        }
    }
    if item == Item::Opening {
        all.extend(by_their_axes(scene, &asks));
    }
    let mut gauges = Vec::new();
    for hole in holes(scene, &bounded, |index, said| place(scene, index, said)) {
        for (judgement, bounds) in hole.judged(scene, item, &asks) {
            gauges.push(Gauged {
                judgement: ball(scene, judgement, &bounds, demand, zoned),
                bounds,
                place: hole.place,
            });
        }
    }
    all.extend(beside_each_other(scene, tapes, gauges));
    match (Judgement::worst(scene, all), &demand.zone) {
        (Some(worst), _) => partly(scene, worst),
        (None, Some(zone)) if outside => Judgement::open(item, Reason::OutsideZone(zone)),
        (None, _) => Judgement::not_written(scene, item),
    }
}

/// Balusters, or level bars, so far apart from centre to centre that the gap between two of them falls
/// short, whichever of their sides lies along it and whatever else was written; where
/// nobody wrote how thick they are, that is asked.
fn by_their_axes<'r>(scene: &Scene<'_>, asks: &Musts<'r>) -> Vec<Judgement<'r>> {
    let level = scene.is_of_level_bars();
    let axis = if level {
        Item::LevelBarSpacing
    } else {
        Item::BalusterSpacing
    };
    if scene.of(axis).next().is_none() {
        return Vec::new();
    }
    let sections = scene.of(Item::BalusterSection).filter_map(|(_, o)| {
        let reading = o.reading.as_ref()?;
        if let Value::Section(one, other) = reading.value {
            Some(one.max(other))
        } else {
            None
        }
    });
    let section = sections.max();
    let thickest = section.unwrap_or(THICKEST);
    // where bars were drawn in between, the old ones still stand as far apart
    let mut states = scene.of(Item::State);
    if states.any(|(_, o)| o.word() == Some(StateWord::Altered)) {
        return Vec::new();
    }
    let widest = facts::most(scene, Item::Opening).map(|(_, widest)| widest);
    let axes = scene.of(axis).filter_map(|(index, _)| {
        let Piece::Says(said) = scene.piece(axis, index) else {
            return None;
        };
        let Evidence::Point(apart, doubt) = said.evidence else {
            return None;
        };
        let least = apart - doubt.doubled() - thickest;
        // a gap that these readings alone make wider than the widest that was written
        let denies = widest.is_some_and(|widest| least > widest);
        let evidence = if denies && section.is_some() {
            Evidence::Point(apart - thickest, doubt)
        } else {
            Evidence::AtLeast(least)
        };
        let outcome = against(evidence, asks, scene.options.decision)?;
        let told = matches!(outcome.verdict, Verdict::FallsShort | Verdict::TooClose);
        told.then(|| {
            if section.is_none() {
                return Judgement::open(Item::Opening, Reason::NotWritten(Item::BalusterSection));
            }
            let said = Said::plain(evidence, said.unit);
            Judgement::from_outcome(scene, Item::Opening, index, &said, outcome)
        })
    });
    axes.collect()
}

/// No baluster is thicker, where nobody wrote how thick they are. (common practice, no source)
const THICKEST: Length = Length::sixty_fourths(224);

/// Where an opening was measured.
fn place(scene: &Scene<'_>, index: usize, said: &Said) -> Where {
    let reading = scene.guard.observation(index).reading.as_ref();
    match reading.and_then(|reading| reading.at) {
        _ if said.everywhere() && matches!(said.evidence, Evidence::Below(_)) => Where::Everywhere,
        Some(at) => Where::At(at),
        None => Where::NotSaid,
    }
}

/// The item's own observations, and balls that were tried everywhere. Each comes
/// with the item it was written for.
fn observations<'s>(scene: &'s Scene<'_>, item: Item) -> impl Iterator<Item = (usize, Item)> + 's {
    let alike = if item.info().hole.is_everywhere() {
        Item::EVERYWHERE
    } else {
        &[]
    };
    let others = alike.iter().copied().filter(move |other| *other != item);
    let everywhere = others.flat_map(move |other| {
        let of_all = scene.of(other).filter(|(_, observation)| {
            observation.reading.as_ref().is_some_and(|reading| {
                matches!(&reading.value, Value::Ball(ball) if ball.everywhere && !ball.passes)
            })
        });
        of_all.map(move |(at, _)| (at, other))
    });
    scene
        .of(item)
        .map(move |(at, _)| (at, item))
        .chain(everywhere)
}

/// One tape reading.
fn tape<'r>(
    scene: &Scene<'_>,
    item: Item,
    index: usize,
    said: &Said,
    demand: &'r OpeningDemand,
    zoned: &[&'r OpeningDemand],
) -> Option<Judgement<'r>> {
    let decision = said.evidence.decision(scene.options.decision);
    let shaped = entrapment::has_shape(scene, index);
    let asks = if shaped {
        shape_asks(demand)
    } else {
        opening_asks(demand)
    };
    let outcome = against(said.evidence, &asks, decision)?;
    let mut judgement = Judgement::from_outcome(scene, item, index, said, outcome);
    match said.at_worst {
        Some(AtWorst::Within(at_worst, why)) => {
            for larger in larger(said.evidence, at_worst, demand) {
                spread(&mut judgement, &against(larger, &asks, decision)?, why);
            }
        }
        Some(AtWorst::GoesOn) => goes_on(&mut judgement, demand),
        Some(AtWorst::GivesWay) | None => {} // a push decides
    }
    let lenient = || {
        zoned.iter().any(|other| {
            against(said.evidence, &opening_asks(other), decision)
                .is_some_and(|outcome| outcome.verdict != Verdict::FallsShort)
        })
    };
    in_zone(&mut judgement, said, demand, lenient);
    entrapment::taken_as_long(&mut judgement);
    give_way(
        scene,
        &mut judgement,
        std::slice::from_ref(&(index, *said)),
        demand,
    );
    Some(judgement)
}

/// The largest ball that cannot be ruled out, and before it the one between both
/// bounds that lies deepest in a forbidden band.
fn larger(
    smallest: Evidence,
    largest: Evidence,
    demand: &OpeningDemand,
) -> impl Iterator<Item = Evidence> {
    let deepest = demand.not_within.as_ref().and_then(|(above, below)| {
        let Evidence::Point(most, u) = largest else {
            return None;
        };
        let middle = (above.length + below.length).nanometres() / 2;
        let middle = Length::from_nanometres(middle);
        Some(Evidence::Point(middle.min(most).max(smallest.length()), u))
    });
    deepest.into_iter().chain([largest])
}

/// A larger ball may pass than the one that was judged: where it would be judged
/// otherwise, nothing is settled.
fn spread(judgement: &mut Judgement<'_>, larger: &Outcome<'_>, why: Spread) {
    if larger.alone != judgement.alone {
        judgement.alone = Verdict::NotMeasured;
    }
    let (one, other) = (judgement.verdict, larger.verdict);
    if one == other || one == Verdict::NotMeasured {
        return;
    }
    let close = one == Verdict::TooClose || other == Verdict::TooClose;
    match why {
        Spread::Bounds if close => judgement.verdict = Verdict::TooClose,
        Spread::Bounds => {
            judgement.verdict = Verdict::NotMeasured;
            judgement.reasons.push(Reason::BoundsStraddle);
        }
        Spread::Nosing => {
            judgement.verdict = Verdict::NotMeasured;
            judgement.reasons.push(Reason::NosingThickness);
        }
    }
}

/// Behind open risers the opening goes on: what was measured bounds it from below
/// alone, so that it can be too wide and nothing else.
fn goes_on(judgement: &mut Judgement<'_>, demand: &OpeningDemand) {
    // too wide for one limit may be wide enough for the other end of a band
    let settles = demand.not_within.is_none();
    for verdict in [&mut judgement.verdict, &mut judgement.alone] {
        if !(settles && *verdict == Verdict::FallsShort) {
            *verdict = Verdict::NotMeasured;
        }
    }
    if judgement.verdict == Verdict::NotMeasured {
        judgement.reasons.push(Reason::RisersOpen);
    }
}

/// Balls and one-sided readings of one hole, with the zone they lie in and the push.
fn ball<'r>(
    scene: &Scene<'_>,
    mut judgement: Judgement<'r>,
    bounded: &[(usize, Said)],
    demand: &'r OpeningDemand,
    zoned: &[&'r OpeningDemand],
) -> Judgement<'r> {
    let decides = judgement.readings.first().copied();
    let Some((_, said)) = bounded.iter().find(|(index, _)| Some(*index) == decides) else {
        return judgement;
    };
    let evidence: Vec<Evidence> = bounded.iter().map(|(_, said)| said.evidence).collect();
    let lenient = || {
        zoned.iter().any(|other| {
            bounds_against(&evidence, &opening_asks(other))
                .is_some_and(|outcome| outcome.verdict != Verdict::FallsShort)
        })
    };
    in_zone(&mut judgement, said, demand, lenient);
    entrapment::taken_as_long(&mut judgement);
    give_way(scene, &mut judgement, bounded, demand);
    judgement
}

/// An opening of which nobody wrote where it lies.
fn in_zone<'r>(
    judgement: &mut Judgement<'r>,
    said: &Said,
    demand: &'r OpeningDemand,
    lenient: impl Fn() -> bool,
) {
    let Some(zone) = &demand.zone else { return };
    if said.at.is_some() || said.everywhere() {
        return;
    }
    let short = Verdict::FallsShort;
    if judgement.verdict != short && judgement.alone != short {
        return;
    }
    if lenient() {
        judgement.reasons.push(Reason::WhereDoesItLie(zone));
        for verdict in [&mut judgement.verdict, &mut judgement.alone] {
            if *verdict == short {
                *verdict = Verdict::NotMeasured;
            }
        }
    } else {
        judgement.reasons.push(Reason::TakenInZone(zone));
    }
}

/// Where the infill gives way, a reading without the push proves only a shortfall.
fn give_way<'r>(
    scene: &Scene<'_>,
    judgement: &mut Judgement<'r>,
    said: &[(usize, Said)],
    demand: &OpeningDemand,
) {
    // what was said stands in the order of the readings
    let of_reading = |reading: &usize| {
        let place = said.binary_search_by_key(reading, |(index, _)| *index);
        place.ok().map(|place| &said[place].1)
    };
    let strung = judgement
        .readings
        .iter()
        .filter_map(of_reading)
        .any(|said| matches!(said.at_worst, Some(AtWorst::GivesWay)));
    let flexible = strung || scene.infill_gives_way() && judgement.item != Item::RiserOpening;
    let solid = judgement
        .measured
        .as_ref()
        .is_some_and(|m| m.value == Some(Length::ZERO));
    let asked = demand.pushed;
    if solid || (!flexible && asked.is_none()) || judgement.verdict == Verdict::FallsShort {
        return;
    }
    let enough = |push: Push| match (push, asked) {
        (Push::None, _) | (Push::ByHand, Some(_)) => false,
        (Push::ByHand | Push::Force(_), None) => true,
        (Push::Force(force), Some(asked)) => force >= asked,
    };
    let mut deciding = judgement.readings.clone();
    deciding.sort_unstable();
    let mut pushes = deciding.iter().filter_map(of_reading);
    let push = pushes.next().map_or(Push::None, Said::pushed);
    if enough(push) {
        if push == Push::ByHand {
            judgement.reasons.push(Reason::PushedByHand);
        }
        return;
    }
    judgement.verdict = Verdict::NotMeasured;
    judgement.alone = if judgement.alone == Verdict::FallsShort {
        Verdict::FallsShort
    } else {
        Verdict::NotMeasured
    };
    judgement.reasons.push(if push == Push::None {
        Reason::NeedsPush
    } else {
        Reason::PushTooWeak
    });
}

/// With some openings looked at only, what meets does so where it was measured.
fn partly<'r>(scene: &Scene<'_>, mut judgement: Judgement<'r>) -> Judgement<'r> {
    // a ball tried everywhere says nothing more where only some were looked at
    let by_everywhere = judgement.readings.iter().any(|index| {
        let reading = &scene.guard.observation(*index).reading;
        reading
            .as_ref()
            .is_some_and(|reading| matches!(&reading.value, Value::Ball(ball) if ball.everywhere))
    });
    let some_only = scene
        .of(Item::OpeningsChecked)
        .any(|(_, observation)| observation.word() != Some(OpeningsCheckedWord::EveryOne));
    if (judgement.item == Item::Opening || by_everywhere)
        && judgement.verdict == Verdict::Meets
        && some_only
    {
        judgement.partial = true;
        judgement.reasons.push(Reason::OnlySomeOpenings);
    }
    judgement
}

/// How far an opening may reach. One height alone says where the tape was held: the
/// hole goes on above and below it by half its size at least, and one that is known
/// from below alone by nobody knows how much.
fn reach(scene: &Scene<'_>, said: &Said, at: Extent) -> Extent {
    if scene.build == Build::Exact || at.low != at.high {
        return at;
    }
    let size = match (said.at_worst, said.evidence) {
        (Some(AtWorst::Within(Evidence::Point(size, _), _)), _)
        | (None, Evidence::Point(size, _) | Evidence::Below(size)) => size,
        (None, Evidence::AtLeast(_) | Evidence::Above(_)) | (Some(_), _) => {
            return Extent {
                low: Length::ZERO,
                high: Length::from_nanometres(i64::MAX),
            };
        }
    };
    let half = Length::from_nanometres(size.nanometres() / 2);
    Extent {
        low: at.low - half,
        high: at.high + half,
    }
}

/// Both ends of a zone belong to it: at a shared edge the stricter rule counts.
fn overlaps(zone: &Zone, at: Extent) -> bool {
    at.low <= zone.to.length && at.high >= zone.from.length
}

/// The better of two ways to satisfy: meets, too close, not settled, not measured, falls short.
pub(super) fn better<'r>(
    so_far: Option<Judgement<'r>>,
    next: Judgement<'r>,
) -> Option<Judgement<'r>> {
    let Some(so_far) = so_far else {
        return Some(next);
    };
    let rank = |judgement: &Judgement<'_>| {
        let least = Length::from_nanometres(i64::MIN);
        let margin = -judgement.margin.unwrap_or(least);
        (satisfied_first(judgement.verdict), margin)
    };
    let alone = if satisfied_first(next.alone) < satisfied_first(so_far.alone) {
        next.alone
    } else {
        so_far.alone
    };
    let kept = if rank(&next) < rank(&so_far) {
        next
    } else {
        so_far
    };
    Some(Judgement { alone, ..kept })
}

fn satisfied_first(verdict: Verdict) -> u8 {
    match verdict {
        Verdict::Meets => 0,
        Verdict::TooClose => 1,
        Verdict::NotSettled => 2,
        Verdict::NotMeasured => 3,
        Verdict::FallsShort => 4,
        Verdict::DoesNotApply => 5,
    }
}

/// The written form of a graduation, for what is taken as given.
pub(super) fn step(graduation: Graduation, unit: LengthUnit) -> Option<String> {
    match graduation {
        Graduation::ReadTo(step) => Some(step.exact(unit)),
        Graduation::PlusMinus(_) => None,
    }
}

/// The ball size of a demand, for telling the triangle at the steps from the infill.
pub(super) fn ball_size(demand: &OpeningDemand) -> Option<&Limit> {
    demand.stops_ball.as_ref().or(demand.at_most.as_ref())
}
