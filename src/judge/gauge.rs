//! Balls and sticks: which of them tell of one hole, and what they make of the
//! tape readings beside them.
//!
//! A bound is an observation like any other. Two are joined into a bracket only
//! where they are of one hole: written in one reading, or at the same height.
//! A ball tried everywhere bounds every hole from above.

use std::collections::HashMap;
use std::sync::Arc;

use crate::items::Item;
use crate::items::Verdict;
use crate::judge::Decision;
use crate::judge::Reason;
use crate::judge::bound::Evidence;
use crate::judge::bound::Musts;
use crate::judge::decision::against;
use crate::judge::decision::bounds_against;
use crate::judge::judgement::Judgement;
use crate::judge::said::Said;
use crate::judge::scene::Scene;
use crate::quantities::Length;
use crate::quantities::StandardUncertainty;
use crate::reading::Extent;
use crate::reading::Value;
use crate::survey::RowPlace;

/// One-sided readings of one hole.
#[derive(Clone, Debug)]
pub(super) struct BoundedHole {
    /// The readings with their observations, in an order of their own.
    pub(super) bounds: Vec<(usize, Said)>,
    pub(super) place: Where,
}

/// Where a reading was taken, as far as it says so.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub(super) enum Where {
    /// At this height above the walking surface.
    At(Extent),
    /// At every hole.
    Everywhere,
    /// At the one place that the item means: a height at its lowest.
    TheOnlyOne,
    /// Nobody said.
    NotSaid,
}

impl Where {
    /// Whether a gauge used here speaks of a tape reading taken there.
    fn speaks_of(self, tape: Where) -> bool {
        match (self, tape) {
            (Where::Everywhere, _) | (Where::TheOnlyOne, Where::TheOnlyOne) => true,
            (Where::At(one), Where::At(other)) => one == other,
            (Where::At(_) | Where::NotSaid | Where::TheOnlyOne, _) => false,
        }
    }
}

/// The holes that one-sided readings tell of.
pub(super) fn holes(
    scene: &Scene<'_>,
    bounded: &[(usize, Said)],
    place: impl Fn(usize, &Said) -> Where,
) -> Vec<BoundedHole> {
    let mut holes: Vec<BoundedHole> = Vec::new();
    // of which hole readings are that were written as one, or at one place
    let mut by_reading: HashMap<OneReading, usize> = HashMap::new();
    let mut by_place: HashMap<Where, usize> = HashMap::new();
    for (index, said) in bounded {
        let place = place(*index, said);
        let reading = one_reading(scene, *index);
        let of_its_place = match place {
            Where::At(_) | Where::Everywhere => by_place.get(&place),
            Where::NotSaid | Where::TheOnlyOne => None,
        };
        let known = by_reading.get(&reading).into_iter().chain(of_its_place);
        let at = known.min().copied().unwrap_or(holes.len());
        match holes.get_mut(at) {
            Some(hole) => hole.bounds.push((*index, *said)),
            None => {
                by_place.entry(place).or_insert(at);
                holes.push(BoundedHole {
                    bounds: vec![(*index, *said)],
                    place,
                });
            }
        }
        by_reading.entry(reading).or_insert(at);
    }
    let above_all: Vec<(usize, Said)> = bounded
        .iter()
        .filter(|(_, said)| said.everywhere() && matches!(said.evidence, Evidence::Below(_)))
        .copied()
        .collect();
    for hole in &mut holes {
        if hole.place != Where::Everywhere {
            hole.bounds.extend(&above_all);
        }
        // an order that is not that of the rows
        hole.bounds.sort_by_key(|(index, said)| {
            (order(said), scene.guard.observation(*index).written.clone())
        });
    }
    holes
}

/// What is the same of readings that were written as one: the row, the item, the text.
type OneReading = (RowPlace, Item, *const str);

fn one_reading(scene: &Scene<'_>, index: usize) -> OneReading {
    let observation = scene.guard.observation(index);
    let written = Arc::as_ptr(&observation.written);
    (observation.row, observation.item, written)
}

/// The tightest bound from above first, then the tightest from below.
fn order(said: &Said) -> (u8, i64) {
    match said.evidence {
        Evidence::Below(length) => (0, length.nanometres()),
        Evidence::Above(length) => (1, length.nanometres().saturating_neg()),
        Evidence::AtLeast(length) => (2, length.nanometres().saturating_neg()),
        Evidence::Point(length, _) => (3, length.nanometres()),
    }
}

impl BoundedHole {
    /// Whether no hole can be so: wider than what stops in it.
    fn contradicts_itself(&self) -> bool {
        let evidence = || self.bounds.iter().map(|(_, said)| said.evidence);
        let least = evidence().filter_map(|evidence| match evidence {
            Evidence::Above(length) | Evidence::AtLeast(length) => Some(length),
            Evidence::Below(_) | Evidence::Point(..) => None,
        });
        let most = evidence().filter_map(|evidence| match evidence {
            Evidence::Below(length) => Some(length),
            Evidence::Above(_) | Evidence::AtLeast(_) | Evidence::Point(..) => None,
        });
        matches!((least.max(), most.min()), (Some(least), Some(most)) if least >= most)
    }

    /// What the bounds say together; apart where they cannot both be true.
    pub(super) fn judged<'r>(
        &self,
        scene: &Scene<'_>,
        item: Item,
        musts: &Musts<'r>,
    ) -> Vec<(Judgement<'r>, Vec<(usize, Said)>)> {
        if !self.contradicts_itself() {
            let judged = together(scene, item, &self.bounds, musts);
            return judged
                .map(|judgement| (judgement, self.bounds.clone()))
                .into_iter()
                .collect();
        }
        let apart = self.bounds.chunks(1).filter_map(|one| {
            let mut judgement = together(scene, item, one, musts)?;
            let others = self.bounds.iter().map(|(index, _)| *index);
            judgement.also_readings = others.filter(|other| *other != one[0].0).collect();
            judgement.contradicted();
            Some((judgement, one.to_vec()))
        });
        apart.collect()
    }
}

/// One-sided readings of one hole together against the limits.
fn together<'r>(
    scene: &Scene<'_>,
    item: Item,
    bounded: &[(usize, Said)],
    musts: &Musts<'r>,
) -> Option<Judgement<'r>> {
    let evidence: Vec<Evidence> = bounded.iter().map(|(_, said)| said.evidence).collect();
    let outcome = bounds_against(&evidence, musts)?;
    // name the one that decides: the first that alone says the same
    let decides = |evidence: Evidence| {
        against(evidence, musts, Decision::Simple).map(|outcome| outcome.verdict)
            == Some(outcome.verdict)
    };
    let (index, said) = bounded
        .iter()
        .find(|(_, said)| decides(said.evidence))
        .or_else(|| bounded.first())?;
    let mut judgement = Judgement::from_outcome(scene, item, *index, said, outcome);
    judgement.also_readings = bounded
        .iter()
        .map(|(index, _)| *index)
        .filter(|other| other != index)
        .collect();
    Some(judgement)
}

/// A tape reading and what became of it.
#[derive(Clone, Debug)]
pub(super) struct Taped<'r> {
    pub(super) judgement: Judgement<'r>,
    pub(super) index: usize,
    pub(super) value: Length,
    pub(super) doubt: StandardUncertainty,
    pub(super) place: Where,
}

/// A hole and what became of it.
#[derive(Clone, Debug)]
pub(super) struct Gauged<'r> {
    pub(super) judgement: Judgement<'r>,
    pub(super) bounds: Vec<(usize, Said)>,
    pub(super) place: Where,
}

/// Tape readings and gauges beside each other: a gauge at the same place settles
/// what a tape could not tell; where the two cannot both be true, both stay and
/// say so; a finer reading of the same place takes the place of a coarser one.
pub(super) fn beside_each_other<'r>(
    scene: &Scene<'_>,
    mut tapes: Vec<Taped<'r>>,
    mut gauges: Vec<Gauged<'r>>,
) -> Vec<Judgement<'r>> {
    let guarded = scene.options.decision == Decision::Guarded;
    if guarded {
        finer_ones(&mut tapes);
    }
    if gauges.is_empty() {
        return tapes.into_iter().map(|tape| tape.judgement).collect();
    }
    let slack = |tape: &Taped<'_>| {
        if guarded {
            tape.doubt.doubled()
        } else {
            Length::ZERO
        }
    };
    let mut denied = vec![false; tapes.len()];
    for gauge in &mut gauges {
        for (tape, denied) in tapes.iter_mut().zip(&mut denied) {
            let denies_it =
                |(_, said): &(usize, Said)| denies(said.evidence, tape.value, slack(tape));
            if gauge.place.speaks_of(tape.place) && gauge.bounds.iter().any(denies_it) {
                *denied = true;
                tape.judgement.contradicted();
                let by = &gauge.judgement.readings;
                tape.judgement.also_readings.extend(by);
                gauge.judgement.contradicted();
                gauge.judgement.also_readings.push(tape.index);
            }
        }
    }
    let mut settled = vec![false; tapes.len()];
    for gauge in &mut gauges {
        let contradicted = gauge.judgement.reasons.contains(&Reason::Contradicted);
        let tried = gauge
            .bounds
            .iter()
            .all(|(index, _)| is_a_gauge(scene, *index));
        if contradicted || !tried || gauge.judgement.verdict != Verdict::Meets {
            continue;
        }
        let mut by_it = Vec::new();
        for (at, tape) in tapes.iter().enumerate() {
            if denied[at] || !gauge.place.speaks_of(tape.place) {
                continue;
            }
            let doubtful = guarded && tape.judgement.is_within_doubt();
            if doubtful {
                gauge.judgement.alone = gauge.judgement.alone.min(tape.judgement.alone);
            }
            if doubtful || tape.judgement.waits_for_a_ball() {
                settled[at] = true;
                by_it.push(tape.index);
            }
        }
        if !by_it.is_empty() {
            let by = gauge.judgement.readings.first().copied();
            gauge
                .judgement
                .reasons
                .extend(by.map(Reason::SettledByGauge));
            gauge.judgement.also_readings.extend(by_it);
        }
    }
    let mut settled = settled.into_iter();
    tapes.retain(|_| !settled.next().unwrap_or(false));
    // what a tape at the very place tells more of
    gauges.retain(|gauge| {
        let told = tapes.iter().any(|tape| {
            matches!(gauge.place, Where::At(_))
                && gauge.place.speaks_of(tape.place)
                && tape.judgement.verdict != Verdict::NotMeasured
        });
        let silent = gauge.judgement.reasons == [Reason::BoundDoesNotSettle];
        !(told && silent)
    });
    let tapes = tapes.into_iter().map(|tape| tape.judgement);
    tapes
        .chain(gauges.into_iter().map(|gauge| gauge.judgement))
        .collect()
}

/// Whether a ball or a stick was held there: `over 34 in` is a rough reading by the same
/// tape, and settles nothing that the tape could not.
fn is_a_gauge(scene: &Scene<'_>, index: usize) -> bool {
    let reading = scene.guard.observation(index).reading.as_ref();
    reading.is_some_and(|reading| matches!(reading.value, Value::Ball(_) | Value::Stick(_)))
}

/// Whether a bound cannot be true of a place that reads so, within the slack.
fn denies(bound: Evidence, value: Length, slack: Length) -> bool {
    match bound {
        Evidence::Below(length) => length <= value - slack,
        Evidence::AtLeast(length) => length > value + slack,
        Evidence::Above(length) => length >= value + slack,
        Evidence::Point(..) => false,
    }
}

/// Coarser readings of a place go where a finer one agrees within their doubt.
fn finer_ones(tapes: &mut Vec<Taped<'_>>) {
    if tapes.len() < 2 {
        return;
    }
    // by their place, each list in the order of the readings
    let mut finer: HashMap<Where, Vec<(Length, StandardUncertainty, usize)>> = HashMap::new();
    for tape in tapes
        .iter()
        .filter(|tape| matches!(tape.place, Where::At(_)))
    {
        let known = finer.entry(tape.place).or_default();
        known.push((tape.value, tape.doubt, tape.index));
    }
    let mut replaced: HashMap<usize, Vec<usize>> = HashMap::new();
    tapes.retain(|coarse| {
        let agrees = |(value, doubt, _): &&(Length, StandardUncertainty, usize)| {
            *doubt < coarse.doubt && (*value - coarse.value).magnitude() <= coarse.doubt.doubled()
        };
        let mut there = finer.get(&coarse.place).into_iter().flatten();
        let by = there.find(agrees).map(|(_, _, index)| *index);
        if let Some(by) = by {
            replaced.entry(by).or_default().push(coarse.index);
        }
        by.is_none()
    });
    for tape in tapes {
        let coarse = replaced.remove(&tape.index).unwrap_or_default();
        tape.judgement.also_readings.extend(coarse);
    }
}

impl Judgement<'_> {
    /// Notes that another reading of the same place cannot be true beside it.
    fn contradicted(&mut self) {
        if !self.reasons.contains(&Reason::Contradicted) {
            self.reasons.push(Reason::Contradicted);
        }
    }

    /// Whether the arithmetic of a shape left the answer to a ball in the hand.
    fn waits_for_a_ball(&self) -> bool {
        self.verdict == Verdict::NotMeasured
            && self.reasons.iter().any(|reason| {
                matches!(
                    reason,
                    Reason::BoundsStraddle
                        | Reason::NeedsPush
                        | Reason::NosingThickness
                        | Reason::RisersOpen
                )
            })
    }

    /// Whether the tape could not tell, whatever the decision made of it.
    fn is_within_doubt(&self) -> bool {
        match (self.margin, self.uncertainty) {
            (Some(margin), Some(u)) => margin.magnitude() < u.doubled(),
            (None, _) | (_, None) => false,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const TAPE: Length = Length::from_nanometres(100_000_000);
    const SLACK: Length = Length::from_nanometres(2_000_000);

    /// Whether bounds one nanometre below, at and above a length deny the tape.
    fn around(bound: fn(Length) -> Evidence, at: Length, slack: Length) -> [bool; 3] {
        [-1, 0, 1].map(|off| {
            let bound = bound(at + Length::from_nanometres(off));
            denies(bound, TAPE, slack)
        })
    }

    #[test]
    fn a_ball_that_stops_denies_a_tape_that_reads_at_least_its_doubt_more() {
        let edge = TAPE - SLACK;
        assert_eq!(around(Evidence::Below, edge, SLACK), [true, true, false]);
        // the reading alone: what stops is less than the ball
        let plain = around(Evidence::Below, TAPE, Length::ZERO);
        assert_eq!(plain, [true, true, false]);
    }

    #[test]
    fn a_ball_that_passes_denies_a_tape_that_reads_less_by_more_than_its_doubt() {
        let edge = TAPE + SLACK;
        assert_eq!(around(Evidence::AtLeast, edge, SLACK), [false, false, true]);
        assert_eq!(around(Evidence::Above, edge, SLACK), [false, true, true]);
        let plain = around(Evidence::AtLeast, TAPE, Length::ZERO);
        assert_eq!(plain, [false, false, true]);
    }
}
