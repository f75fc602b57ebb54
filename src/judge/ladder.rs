//! Ledges that may make a ladder: which two of them decide, without a look at every two.
//!
//! Two ledges are as good as the better of: one of them does not count; they lie far
//! enough apart, in height, and along the guard as well where that is asked. The worst two
//! decide. Ledges nearer than the limit are found side by side in the order of their
//! heights or of their places, so that few of all pairs are looked at.

use std::borrow::Cow;

use crate::items::Item;
use crate::items::Verdict;
use crate::judge::LimitShown;
use crate::judge::Operator;
use crate::judge::Reason;
use crate::judge::bound::Evidence;
use crate::judge::bound::Must;
use crate::judge::bound::Musts;
use crate::judge::bound::Outcome;
use crate::judge::decision::against;
use crate::judge::judgement::Judgement;
use crate::judge::opening::better;
use crate::judge::said::Said;
use crate::judge::scene::Scene;
use crate::judge::view::FindingView;
use crate::quantities::Length;
use crate::quantities::StandardUncertainty;
use crate::quantities::Term;
use crate::quantities::combine;
use crate::reading::Foothold;
use crate::rules::Ladder;
use crate::rules::Limit;

const ITEM: Item = Item::Foothold;

/// A foothold that was written, and how it fares by itself.
pub(super) struct Ledge<'r> {
    pub(super) index: usize,
    pub(super) foothold: Foothold,
    pub(super) alone: Judgement<'r>,
}

/// Whether ledges must lie apart along the guard as well.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Along {
    /// Both ways.
    Asked,
    /// In height alone.
    NotAsked,
}

/// Where a ledge lies in one direction, and what makes that doubtful.
struct Spot {
    at: Length,
    terms: Vec<Term>,
}

/// Two or more ledges that count, in the order of their heights.
pub(super) struct LedgePairs<'s, 'g, 'r> {
    scene: &'s Scene<'g>,
    ledges: Vec<Ledge<'r>>,
    heights: Vec<Spot>,
    places: Vec<Option<Spot>>,
    ladder: &'r Ladder,
    along: Along,
    /// In which two ledges may be anything but far enough apart.
    window: [Length; 2],
}

/// The verdicts of two ledges, or of one: as it is decided, and of the readings alone.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct Verdicts {
    decided: Verdict,
    alone: Verdict,
}

impl Verdicts {
    const fn of(self, view: FindingView) -> Verdict {
        match view {
            FindingView::Decided => self.decided,
            FindingView::Alone => self.alone,
        }
    }

    fn worse(self, other: Verdicts) -> Verdicts {
        Verdicts {
            decided: self.decided.min(other.decided),
            alone: self.alone.min(other.alone),
        }
    }
}

/// The worst of all pairs, and one that is so bad; none where all lie far apart.
type WorstLadder = (Verdict, Option<[usize; 2]>);

impl<'s, 'g, 'r> LedgePairs<'s, 'g, 'r> {
    pub(super) fn new(
        scene: &'s Scene<'g>,
        mut ledges: Vec<Ledge<'r>>,
        ladder: &'r Ladder,
        along: Along,
    ) -> Self {
        let written = |ledge: &Ledge<'_>| {
            let observation = scene.guard.observation(ledge.index);
            (observation.written.clone(), observation.note.clone())
        };
        // what is written, so that the order of rows decides nothing
        ledges.sort_by_cached_key(|ledge| {
            (ledge.foothold.height, ledge.foothold.along, written(ledge))
        });
        let spot = |ledge: &Ledge<'_>, at| {
            let observation = scene.guard.observation(ledge.index);
            let Foothold {
                unit, graduation, ..
            } = ledge.foothold;
            let terms = scene.terms(ITEM, observation, at, unit, graduation);
            Spot { at, terms }
        };
        let heights: Vec<Spot> = ledges.iter().map(|l| spot(l, l.foothold.height)).collect();
        let places: Vec<Option<Spot>> = match along {
            Along::NotAsked => Vec::new(),
            Along::Asked => ledges
                .iter()
                .map(|l| l.foothold.along.map(|at| spot(l, at)))
                .collect(),
        };
        let all = heights.iter().chain(places.iter().flatten());
        let most = all.map(|spot| combine(&spot.terms)).max();
        // of two, each with twice its doubt
        let slack = most.unwrap_or(StandardUncertainty::NONE).doubled();
        let limit = ladder.limit().length;
        LedgePairs {
            scene,
            ledges,
            heights,
            places,
            ladder,
            along,
            window: [limit - slack - slack, limit + slack + slack],
        }
    }

    /// What all pairs come to.
    pub(super) fn judged(&self) -> Option<Judgement<'r>> {
        let (_, pair) = self.worst(FindingView::Decided);
        let mut judgement = self.shown(pair)?;
        let (verdict, _) = self.worst(FindingView::Alone);
        judgement.alone = verdict;
        let own = &judgement.readings;
        let others = self.ledges.iter().map(|ledge| ledge.index);
        judgement.also_readings = others.filter(|index| !own.contains(index)).collect();
        judgement.also_readings.sort_unstable();
        Some(judgement)
    }

    /// The pair that is shown: of all that are so bad the nearest, where they follow each
    /// other in height.
    fn shown(&self, pair: Option<[usize; 2]>) -> Option<Judgement<'r>> {
        let view = FindingView::Decided;
        let bad = pair.map(|pair| self.verdicts(pair).of(view));
        let places: Vec<usize> = if bad == Some(Verdict::FallsShort) {
            self.that_are(view, Verdict::FallsShort)
        } else {
            (0..self.ledges.len()).collect()
        };
        let beside = places.windows(2).map(|two| [two[0], two[1]]);
        let alike = beside.filter(|two| bad == Some(self.verdicts(*two).of(view)) || bad.is_none());
        let mut shown: Vec<Judgement<'r>> = alike.map(|two| self.near(two)).collect();
        if shown.is_empty() {
            shown.extend(pair.map(|pair| self.near(pair)));
        }
        let worst = Judgement::worst(self.scene, shown)?;
        Some(match (self.along, worst.verdict) {
            (Along::Asked, Verdict::FallsShort) => self.ledge_that_falls_short(worst),
            (Along::Asked | Along::NotAsked, _) => worst,
        })
    }

    /// A ledge where none may be, and what it makes a ladder with.
    fn ledge_that_falls_short(&self, near: Judgement<'r>) -> Judgement<'r> {
        let is_of_both = |ledge: &&Ledge<'r>| near.readings.contains(&ledge.index);
        let both = self.ledges.iter().filter(is_of_both);
        let both: Vec<Judgement<'r>> = both.map(|ledge| ledge.alone.clone()).collect();
        match Judgement::worst(self.scene, both) {
            Some(mut judgement) => {
                judgement.reasons.extend(near.reasons);
                judgement
            }
            None => near,
        }
    }

    /// The worst of all pairs.
    fn worst(&self, view: FindingView) -> WorstLadder {
        use Verdict::{FallsShort, Meets, NotMeasured, TooClose};
        // by the reading alone, one that cannot be told from the limit may be none
        let counts = |place: &usize| self.ledge(*place).of(view) != Meets;
        let all: Vec<usize> = (0..self.ledges.len()).filter(counts).collect();
        let short = self.that_are(view, FallsShort);
        let is = |verdict: Verdict| move |found: Verdict| found == verdict;
        let any = |_: usize| true;
        if let Some(pair) = self.find(view, &short, &any, &is(FallsShort)) {
            return (FallsShort, Some(pair));
        }
        let not_far = |found: Verdict| found != Meets;
        let close = |place: usize| self.ledge(place).of(view) == TooClose;
        if let Some(pair) = self.find(view, &all, &close, &not_far) {
            return (TooClose, Some(pair));
        }
        if let Some(pair) = self.in_doubt(view, &all) {
            return (TooClose, Some(pair));
        }
        match self.find(view, &all, &any, &not_far) {
            Some(pair) => (NotMeasured, Some(pair)),
            None => (Meets, None),
        }
    }

    fn that_are(&self, view: FindingView, verdict: Verdict) -> Vec<usize> {
        let all = 0..self.ledges.len();
        all.filter(|place| self.ledge(*place).of(view) == verdict)
            .collect()
    }

    fn ledge(&self, place: usize) -> Verdicts {
        let alone = &self.ledges[place].alone;
        Verdicts {
            decided: alone.verdict,
            alone: alone.alone,
        }
    }

    /// Two of these ledges, one of them wanted, whose distance comes to what is looked for.
    fn find(
        &self,
        view: FindingView,
        among: &[usize],
        wanted: &dyn Fn(usize) -> bool,
        accept: &dyn Fn(Verdict) -> bool,
    ) -> Option<[usize; 2]> {
        let accepts = |pair: [usize; 2]| accept(self.apart(pair).of(view)).then_some(pair);
        // whoever did not write where along the guard is near to everybody
        if self.along == Along::Asked
            && let Some(unplaced) = among.iter().find(|place| self.places[**place].is_none())
        {
            let other =
                |place: &&usize| *place != unplaced && (wanted(**place) || wanted(*unplaced));
            let found = among.iter().find(other);
            if let Some(pair) = found.and_then(|other| accepts([*unplaced, *other])) {
                return Some(pair);
            }
        }
        let in_height = |one, other| self.height_between([one, other]);
        let in_place = |one, other| self.place_between([one, other]);
        let find = |order: &[usize], between: &dyn Fn(usize, usize) -> Length| {
            let is_near = |one, other| between(one, other) <= self.window[1];
            for (place, one) in order.iter().enumerate().filter(|(_, one)| wanted(**one)) {
                let after = order[place + 1..].iter();
                let before = order[..place].iter().rev();
                let found = after
                    .take_while(|other| is_near(*one, **other))
                    .chain(before.take_while(|other| is_near(*one, **other)))
                    .find_map(|other| accepts([*one, *other]));
                if found.is_some() {
                    return found;
                }
            }
            None
        };
        find(among, &in_height).or_else(|| find(&self.by_place(among), &in_place))
    }

    /// Two ledges whose distance the tape cannot tell from the limit.
    fn in_doubt(&self, view: FindingView, among: &[usize]) -> Option<[usize; 2]> {
        let in_height = |one, other| self.height_between([one, other]);
        let in_place = |one, other| self.place_between([one, other]);
        let find = |order: &[usize], between: &dyn Fn(usize, usize) -> Length| {
            let [from, to] = self.window;
            for (place, one) in order.iter().enumerate() {
                let after = &order[place + 1..];
                let first = after.partition_point(|other| between(*one, *other) < from);
                let found = after[first..]
                    .iter()
                    .take_while(|other| between(*one, **other) <= to)
                    .map(|other| [*one, *other])
                    .find(|pair| self.apart(*pair).of(view) == Verdict::TooClose);
                if found.is_some() {
                    return found;
                }
            }
            None
        };
        find(among, &in_height).or_else(|| find(&self.by_place(among), &in_place))
    }

    /// Those of the ledges of which somebody wrote where along the guard they lie, in
    /// that order.
    fn by_place(&self, among: &[usize]) -> Vec<usize> {
        let placed = |place: &usize| self.places.get(*place).is_some_and(Option::is_some);
        let mut placed: Vec<usize> = among.iter().copied().filter(placed).collect();
        placed.sort_by_key(|place| self.places[*place].as_ref().map(|spot| spot.at));
        placed
    }

    fn height_between(&self, pair: [usize; 2]) -> Length {
        let [one, other] = pair.map(|place| self.heights[place].at);
        (one - other).magnitude()
    }

    fn place_between(&self, pair: [usize; 2]) -> Length {
        let [one, other] = pair.map(|place| self.places[place].as_ref().map(|spot| spot.at));
        match (one, other) {
            (Some(one), Some(other)) => (one - other).magnitude(),
            (None, _) | (_, None) => Length::ZERO,
        }
    }

    /// A pair with the ledges it is of: as good as the better of all that counts for it.
    fn verdicts(&self, pair: [usize; 2]) -> Verdicts {
        let near = self.near(pair);
        Verdicts {
            decided: near.verdict,
            alone: near.alone,
        }
    }

    /// How far two ledges lie apart, whatever they are.
    fn apart(&self, pair: [usize; 2]) -> Verdicts {
        let pair = [pair[0].min(pair[1]), pair[0].max(pair[1])];
        const OPEN: Verdicts = Verdicts {
            decided: Verdict::NotMeasured,
            alone: Verdict::NotMeasured,
        };
        let verdicts = |outcome: Option<Outcome<'_>>| {
            outcome.map_or(OPEN, |outcome| Verdicts {
                decided: outcome.verdict,
                alone: outcome.alone,
            })
        };
        let [one, other] = pair.map(|place| &self.heights[place]);
        let heights = verdicts(self.distance(one, other).1);
        match self.along {
            Along::NotAsked => heights,
            Along::Asked => {
                let along = match pair.map(|place| self.places[place].as_ref()) {
                    [Some(one), Some(other)] => verdicts(self.distance(one, other).1),
                    [None, _] | [_, None] => OPEN,
                };
                heights.worse(along)
            }
        }
    }

    /// A distance against how near makes a ladder.
    fn distance(&self, one: &Spot, other: &Spot) -> (Evidence, Option<Outcome<'r>>) {
        let terms: Vec<Term> = one.terms.iter().chain(&other.terms).copied().collect();
        let evidence = Evidence::Point((one.at - other.at).magnitude(), combine(&terms));
        let ask = match self.ladder {
            Ladder::Below(limit) => Must::AtLeast(limit),
            Ladder::UpTo(limit) => Must::Above(limit),
        };
        let decision = self.scene.options.decision;
        (evidence, against(evidence, &Musts::only(ask), decision))
    }

    /// Two ledges: fine where one does not count, or where they are far enough apart.
    fn near(&self, pair: [usize; 2]) -> Judgement<'r> {
        let pair = [pair[0].min(pair[1]), pair[0].max(pair[1])];
        let [lower, upper] = pair.map(|place| &self.ledges[place]);
        let [from, to] = pair.map(|place| &self.heights[place]);
        let mut apart = self.shown_distance([lower, upper], self.distance(from, to));
        if self.along == Along::Asked {
            let along = match pair.map(|place| self.places[place].as_ref()) {
                [Some(one), Some(other)] => {
                    self.shown_distance([lower, upper], self.distance(one, other))
                }
                [None, _] | [_, None] => Judgement::open(ITEM, Reason::AlongMissing),
            };
            let alone = apart.alone.min(along.alone);
            if along.verdict < apart.verdict {
                apart = along;
            }
            apart.alone = alone;
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
        better(either, apart).unwrap_or_else(|| Judgement::not_written(self.scene, ITEM))
    }

    fn shown_distance(
        &self,
        [lower, upper]: [&Ledge<'r>; 2],
        (evidence, outcome): (Evidence, Option<Outcome<'r>>),
    ) -> Judgement<'r> {
        let Some(outcome) = outcome else {
            return Judgement::not_written(self.scene, ITEM);
        };
        let said = said(evidence, &lower.foothold);
        let mut judgement = Judgement::from_outcome(self.scene, ITEM, upper.index, &said, outcome);
        judgement.readings = vec![upper.index, lower.index];
        judgement.readings.dedup();
        judgement.limit = Some(self.limit());
        judgement
    }

    fn limit(&self) -> LimitShown<'r> {
        let operator = match self.ladder {
            Ladder::Below(_) => Operator::LadderBelow,
            Ladder::UpTo(_) => Operator::LadderUpTo,
        };
        of_limit(operator, self.ladder.limit())
    }
}

/// What was read of a foothold, as evidence.
pub(super) fn said(evidence: Evidence, foothold: &Foothold) -> Said {
    Said {
        evidence,
        at_worst: None,
        unit: foothold.unit,
        at: None,
        ball: None,
    }
}

/// A limit as it is shown.
pub(super) fn of_limit(operator: Operator, limit: &Limit) -> LimitShown<'_> {
    LimitShown {
        operator,
        written: Cow::Borrowed(limit.written.as_str()),
        value: Some(limit.length),
        unit: Some(limit.unit),
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::Just;
    use proptest::prelude::Strategy;
    use proptest::prelude::any;
    use proptest::prelude::prop_oneof;
    use proptest::proptest;

    use super::*;
    use crate::judge::Decision;
    use crate::judge::Options;
    use crate::judge::from_csv;
    use crate::quantities::LengthUnit;
    use crate::reading::Value;
    use crate::survey::Guard;

    /// A ledge: its height and place in millimetres, how sure, what it is by itself.
    type Drawn = (u32, Option<u32>, u32, Verdict, Verdict);

    fn drawn() -> impl Strategy<Value = Vec<Drawn>> {
        // few distances, many of them at the limit
        let at = prop_oneof![
            1_u32..1500,
            (0_u32..4, 0_u32..9).prop_map(|(far, near)| 100 + 450 * far + near),
        ];
        let verdicts = prop_oneof![
            Just((Verdict::FallsShort, Verdict::FallsShort)),
            Just((Verdict::TooClose, Verdict::FallsShort)),
            Just((Verdict::TooClose, Verdict::Meets)),
            Just((Verdict::NotMeasured, Verdict::NotMeasured)),
        ];
        let place = prop_oneof![8 => at.clone().prop_map(|at| Some(4 * at)), 1 => Just(None)];
        let one =
            (at, place, 1_u32..30, verdicts).prop_map(|(height, place, sure, (verdict, alone))| {
                (height, place, sure, verdict, alone)
            });
        prop_oneof![
            proptest::collection::vec(one.clone(), 2..6),
            proptest::collection::vec(one, 2..40)
        ]
    }

    fn guard(drawn: &[Drawn]) -> Guard {
        let mut survey = "guard,item,reading\n".to_owned();
        for (height, along, sure, ..) in drawn {
            let along = along.map_or_else(String::new, |along| format!(" {along} mm along"));
            survey.push_str(&format!("g,foothold,{height} mm high{along} ± {sure} mm\n"));
        }
        from_csv::guards(&survey).remove(0)
    }

    proptest! {
        #[test]
        fn the_worst_of_all_pairs_is_found_without_a_look_at_all(
            drawn in drawn(), up_to in any::<bool>(), along in any::<bool>(), simple in any::<bool>()
        ) {
            let guard = guard(&drawn);
            let decision = if simple { Decision::Simple } else { Decision::Guarded };
            let facts = crate::survey::SurveyFacts::default();
            let scene = Scene::new(&guard, &facts, Options { decision, ..Options::default() });
            let length = Length::millimetres(450);
            let limit = Limit { length, unit: LengthUnit::Millimetre, written: "450 mm".to_owned() };
            let ladder = if up_to { Ladder::UpTo(limit) } else { Ladder::Below(limit) };
            let along = if along { Along::Asked } else { Along::NotAsked };
            let ledges = drawn.iter().enumerate().map(|(index, (.., verdict, alone))| {
                let observation = guard.observation(index);
                let reading = observation.reading.as_ref().map(|reading| &reading.value);
                let Some(Value::Foothold(foothold)) = reading else {
                    panic!("{observation:?}");
                };
                let verdict = if simple { alone } else { verdict };
                let bare = Judgement::bare(ITEM, *verdict, Vec::new());
                let alone = Judgement { alone: *alone, readings: vec![index], ..bare };
                Ledge { index, foothold: *foothold, alone }
            });
            let pairs = LedgePairs::new(&scene, ledges.collect(), &ladder, along);
            let all = (0..drawn.len()).flat_map(|one| (0..one).map(move |other| [other, one]));
            let all: Vec<Verdicts> = all.map(|pair| pairs.verdicts(pair)).collect();
            let plain = all.into_iter().reduce(Verdicts::worse).expect("there are two");
            let found = pairs.judged().expect("there are two");
            assert_eq!((found.verdict, found.alone), (plain.decided, plain.alone));
            let told = found.readings.len() + found.also_readings.len();
            assert_eq!(told, drawn.len());
        }
    }
}
