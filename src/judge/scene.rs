//! A guard as the judge sees it: what its observations say about an item.

use std::sync::Arc;

use crate::items::InfillLooseWord;
use crate::items::InfillWord;
use crate::items::ItemWord;
use crate::items::PlaceWord;
use crate::items::StateWord;
use std::cell::Cell;
use std::cell::OnceCell;
use std::rc::Rc;

use crate::geometry::Shape;
use crate::items::Item;
use crate::items::ItemSet;
use crate::judge::Decision;
use crate::judge::Judged;
use crate::judge::Options;
use crate::judge::Reason;
use crate::judge::before::Before;
use crate::judge::bound::Evidence;
use crate::judge::doubt;
use crate::judge::presence::Presence;
use crate::judge::presence::presence;
use crate::judge::said::AtWorst;
use crate::judge::said::Piece;
use crate::judge::said::Said;
use crate::judge::said::Spread;
use crate::judge::said::at_worst;
use crate::judge::said::ball_bound;
use crate::judge::said::says_nothing;
use crate::quantities::Age;
use crate::quantities::DoubtEffect;
use crate::quantities::Length;
use crate::quantities::LengthUnit;
use crate::quantities::StandardUncertainty;
use crate::quantities::Term;
use crate::quantities::TermKind;
use crate::quantities::combine;
use crate::reading::Bound;
use crate::reading::Extent;
use crate::reading::Graduation;
use crate::reading::Measure;
use crate::reading::Reading;
use crate::reading::ShapeReading;
use crate::reading::StairReading;
use crate::reading::Value;
use crate::survey::Guard;
use crate::survey::Observation;
use crate::survey::SurveyFacts;

/// A guard, the facts of its survey, and how to judge.
pub(super) struct Scene<'g> {
    pub(super) guard: &'g Guard,
    pub(super) facts: &'g SurveyFacts,
    pub(super) options: Options,
    pub(super) build: Build,
    pub(super) presence: Presence,
    /// Items that somebody has asked for so far.
    looked_at: Cell<ItemSet>,
    /// What each observation says about its own item, once somebody has asked.
    pieces: Rc<Vec<OnceCell<(Piece, ItemSet)>>>,
    /// Circumstances that nobody wrote down, as one case has them.
    supposed: Vec<(Item, Supposed)>,
    /// Items that the guard's own observations speak of, and those it inherits.
    own: ItemSet,
    inherited: ItemSet,
    /// Whether the infill gives way, once somebody has asked.
    gives_way: OnceCell<(bool, ItemSet)>,
    /// Whether some circumstance that was measured is doubtful, once somebody has asked.
    pub(super) doubtful: OnceCell<bool>,
    /// The guard as it was before a change, where it is one that was changed.
    pub(super) before: Option<Rc<Before<'g>>>,
}

/// What a case supposes of a circumstance that nobody wrote down.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Supposed {
    /// A child of this age.
    Age(Age),
    /// So many.
    Count(u32),
    /// This length.
    Length(Length),
    /// None: no child.
    Nobody,
    /// This word.
    Word(&'static str),
    /// This year.
    Year(i32),
}

/// Whether the guard stands there, and how exactly it will.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Build {
    /// It was measured, and will be changed: a reading with ± of its own is drawn, and
    /// the others keep the doubt of the tape.
    Altered,
    /// It was measured.
    Existing,
    /// It is drawn; the builder keeps within ± this, if anybody said so.
    Proposed(Option<Length>),
    /// Readings are exact: a ruleset's worked example.
    Exact,
}

impl<'g> Scene<'g> {
    pub(super) fn new(guard: &'g Guard, facts: &'g SurveyFacts, options: Options) -> Scene<'g> {
        let is = |state: StateWord| guard.of(Item::State).any(|(_, o)| o.word() == Some(state));
        Scene {
            guard,
            facts,
            options,
            build: if is(StateWord::Proposed) {
                Build::Proposed(facts.build_tolerance)
            } else if is(StateWord::Altered) {
                Build::Altered
            } else {
                Build::Existing
            },
            presence: presence(guard),
            looked_at: Cell::new(ItemSet::EMPTY),
            gives_way: OnceCell::new(),
            doubtful: OnceCell::new(),
            before: None,
            pieces: Rc::new(
                std::iter::repeat_with(OnceCell::new)
                    .take(guard.observations.len() + guard.inherited.observations.len())
                    .collect(),
            ),
            supposed: Vec::new(),
            own: items(&guard.observations),
            inherited: items(&guard.inherited.observations),
        }
    }

    /// The same guard, with what it was before a change.
    pub(super) fn after(self, (guard, judged): (&'g Guard, &'g Judged<'_>)) -> Scene<'g> {
        let before = Before::of(guard, &judged.findings, self.guard);
        Scene {
            before: Some(Rc::new(before)),
            ..self
        }
    }

    /// Work, with the items whose readings it looks at.
    pub(super) fn looking_at<T>(&self, work: impl FnOnce() -> T) -> (T, ItemSet) {
        let before = self.looked_at.replace(ItemSet::EMPTY);
        let done = work();
        let looked_at = self.looked_at.get();
        self.looked_at.set(before.union(looked_at));
        (done, looked_at)
    }

    /// What is being worked out rests on these as well.
    pub(super) fn rests_on(&self, items: ItemSet) {
        self.looked_at.set(self.looked_at.get().union(items));
    }

    /// As [`Guard::of`], without looking where nothing is.
    pub(super) fn of(&self, item: Item) -> impl Iterator<Item = (usize, &'g Observation)> {
        self.rests_on(ItemSet::EMPTY.with(item));
        let (start, all) = if self.own.contains(item) {
            (0, &*self.guard.observations)
        } else if self.inherited.contains(item) {
            let own = self.guard.observations.len();
            (own, &*self.guard.inherited.observations)
        } else {
            (0, &[][..])
        };
        (start..)
            .zip(all)
            .filter(move |(_, observation)| observation.item == item)
    }

    /// `guard,not reached`: could not look at it as a whole; the observation's index.
    pub(super) fn not_reached(&self) -> Option<usize> {
        self.of(Item::Guard)
            .find(|(_, observation)| {
                let reading = observation.reading.as_ref();
                reading.is_none_or(|reading| reading.value == Value::Unknown)
            })
            .map(|(index, _)| index)
    }

    /// Whether the infill is upright, so that a gap runs from bottom to top.
    fn is_upright(&self) -> bool {
        self.of(Item::Infill)
            .any(|(_, o)| o.word() == Some(InfillWord::Balusters))
    }

    /// Whether the note beside a reading stands beside readings of other items too: it is of
    /// none of them in particular.
    pub(super) fn shares_its_note(&self, observation: &Observation) -> bool {
        let mut others = self.guard.observations.iter();
        let shared = others.find(|other| {
            other.item != observation.item && Arc::ptr_eq(&other.note, &observation.note)
        });
        self.rests_on(shared.map(|other| other.item).into_iter().collect());
        shared.is_some()
    }

    /// Whether it is at a window.
    pub(super) fn is_at_a_window(&self) -> bool {
        self.of(Item::Place)
            .any(|(_, observation)| observation.word() == Some(PlaceWord::Window))
    }

    /// Whether level bars alone fill it.
    pub(super) fn is_of_level_bars(&self) -> bool {
        let mut words = self
            .of(Item::Infill)
            .filter_map(|(_, o)| o.word::<InfillWord>())
            .peekable();
        words.peek().is_some() && words.all(|word| word == InfillWord::HorizontalBars)
    }

    /// Whether what fills it cannot be without gaps: bars that stand apart, cables, mesh.
    fn has_gaps(&self) -> bool {
        let mut words = self.of(Item::Infill).filter_map(|(_, o)| o.word());
        words.any(InfillWord::has_gaps)
    }

    /// The same guard judged as exact values, without doubt.
    pub(super) fn exact(guard: &'g Guard, facts: &'g SurveyFacts) -> Scene<'g> {
        let options = Options {
            decision: Decision::Simple,
            ..Options::default()
        };
        Scene {
            build: Build::Exact,
            ..Scene::new(guard, facts, options)
        }
    }

    /// Whether the infill gives way under a push, so that a reading without
    /// one can prove only a shortfall.
    pub(super) fn infill_gives_way(&self) -> bool {
        let known = || self.looking_at(|| self.some_infill_gives_way());
        let (gives_way, looked_at) = *self.gives_way.get_or_init(known);
        self.rests_on(looked_at);
        gives_way
    }

    fn some_infill_gives_way(&self) -> bool {
        let strung = |reading: &Reading| matches!(&reading.value, Value::Shape(found) if matches!(found.shape, Shape::Cables(_)));
        let said = self
            .of(Item::Infill)
            .any(|(_, o)| o.word().is_some_and(InfillWord::gives_way));
        let mut openings = self.of(Item::Opening);
        said || openings.any(|(_, o)| o.reading.as_deref().is_some_and(strung))
    }

    /// The same guard, as if these circumstances had been written down.
    pub(super) fn supposing(&self, supposed: Vec<(Item, Supposed)>) -> Scene<'g> {
        // what was read is the same in every case
        Scene {
            supposed,
            looked_at: Cell::new(ItemSet::EMPTY),
            gives_way: self.gives_way.clone(),
            doubtful: self.doubtful.clone(),
            before: self.before.clone(),
            pieces: Rc::clone(&self.pieces),
            ..*self
        }
    }

    /// What a case supposes of a circumstance.
    pub(super) fn supposed(&self, item: Item) -> Option<&Supposed> {
        self.supposed
            .iter()
            .find(|(of, _)| *of == item)
            .map(|(_, supposed)| supposed)
    }

    /// Whether circumstances are supposed.
    pub(super) fn is_a_case(&self) -> bool {
        !self.supposed.is_empty()
    }

    /// Whether somebody wrote a value of an item down.
    pub(super) fn is_written(&self, item: Item) -> bool {
        self.supposed(item).is_some()
            || self
                .of(item)
                .any(|(index, observation)| says_nothing(index, observation).is_none())
    }

    /// A baluster or panel that is missing; the observation's index.
    pub(super) fn infill_missing(&self) -> Option<usize> {
        self.of(Item::InfillLoose)
            .find(|(_, observation)| observation.word() == Some(InfillLooseWord::Missing))
            .map(|(index, _)| index)
    }

    /// Whether the place is a stair: `None` where nobody said.
    pub(super) fn on_a_stair(&self) -> Option<bool> {
        if let Some(Supposed::Word(place)) = self.supposed(Item::Place) {
            return Some(*place == PlaceWord::Stair.name());
        }
        let mut places = self
            .of(Item::Place)
            .filter_map(|(_, o)| o.word::<PlaceWord>());
        places.next().map(|place| place == PlaceWord::Stair)
    }

    /// Whether it is known to stand where no balusters follow the slope of steps; a ramp
    /// slopes so little that nothing is taken off (IBC 2018 1012.2: 1 in 12, a cosine of 0.997).
    fn is_level(&self) -> bool {
        let mut places = self
            .of(Item::Place)
            .map(|(_, o)| o.word::<PlaceWord>())
            .peekable();
        places.peek().is_some()
            && places.all(|place| place.is_some_and(|place| place != PlaceWord::Stair))
    }

    /// How sure a length is, by the effects that bear on it.
    pub(super) fn terms(
        &self,
        item: Item,
        observation: &Observation,
        length: Length,
        unit: LengthUnit,
        graduation: Graduation,
    ) -> Vec<Term> {
        // a circumstance is read at the place even where the guard is a plan
        let own = match graduation {
            Graduation::PlusMinus(size) => Some(size),
            Graduation::ReadTo(_) => None,
        };
        if own.is_some() {
            // drawn, or to be changed
            self.rests_on(ItemSet::EMPTY.with(Item::State));
        }
        let builder = |size| Term {
            effect: DoubtEffect::Builder,
            size,
            kind: TermKind::Within,
        };
        match self.build {
            Build::Exact => Vec::new(),
            // what is stated beside a reading may make it more doubtful, never surer
            Build::Proposed(tolerance) if item.is_at_guard() => {
                tolerance.max(own).map(builder).into_iter().collect()
            }
            Build::Altered if item.is_at_guard() && own.is_some() => {
                own.map(builder).into_iter().collect()
            }
            Build::Altered | Build::Existing | Build::Proposed(_) => {
                let file = usize::try_from(observation.row.file).unwrap_or(usize::MAX);
                let file = self.facts.file_facts.get(file).copied();
                doubt::terms(item, length, unit, graduation, file.unwrap_or_default())
            }
        }
    }

    /// What an observation says about a length of this item.
    pub(super) fn piece(&self, item: Item, index: usize) -> Piece {
        match self.pieces.get(index) {
            Some(piece) if self.guard.observation(index).item == item => {
                self.known(piece, item, index).clone()
            }
            Some(_) | None => self.read(item, index),
        }
    }

    /// The evidence alone, where there is some.
    pub(super) fn evidence(&self, item: Item, index: usize) -> Option<Evidence> {
        let evidence = |piece: &Piece| match piece {
            Piece::Says(said) => Some(said.evidence),
            Piece::Nothing(_) => None,
        };
        match self.pieces.get(index) {
            Some(piece) if self.guard.observation(index).item == item => {
                evidence(self.known(piece, item, index))
            }
            Some(_) | None => evidence(&self.read(item, index)),
        }
    }

    fn known<'p>(
        &self,
        piece: &'p OnceCell<(Piece, ItemSet)>,
        item: Item,
        index: usize,
    ) -> &'p Piece {
        let read = || self.looking_at(|| self.read(item, index));
        let (piece, looked_at) = piece.get_or_init(read);
        self.rests_on(*looked_at);
        piece
    }

    fn read(&self, item: Item, index: usize) -> Piece {
        let observation = self.guard.observation(index);
        let Some(reading) = &observation.reading else {
            return Piece::Nothing(Reason::Unreadable(index));
        };
        // somebody meant that nothing is wrong with them
        if item == Item::Opening && says_none(&reading.value) && self.has_gaps() {
            return Piece::Nothing(Reason::BarsHaveGaps);
        }
        let mut said = match &reading.value {
            Value::Measure(measure) => {
                Said::plain(self.measured(item, observation, *measure), measure.unit)
            }
            Value::Ball(ball) => Said {
                ball: Some(*ball),
                ..Said::plain(ball_bound(ball), ball.unit)
            },
            Value::Stick(stick) if stick.reaches => {
                Said::plain(Evidence::AtLeast(stick.stick), stick.unit)
            }
            Value::Stick(stick) => Said::plain(Evidence::Below(stick.stick), stick.unit),
            // where nothing is raked, as between two treads, the gap is as wide as the tape said
            Value::Shape(ShapeReading {
                shape: Shape::Raked(bay),
                unit,
                graduation,
            }) if item == Item::RiserOpening || self.is_level() => {
                let terms = self.terms(item, observation, bay.gap, *unit, *graduation);
                Said::plain(Evidence::Point(bay.gap, combine(&terms)), *unit)
            }
            Value::Shape(shape) => {
                let ball = shape.shape.clear_opening();
                let size = ball.upper.unwrap_or(ball.lower);
                let terms = self.terms(item, observation, size, shape.unit, shape.graduation);
                let u = shape.shape.clear_opening_uncertainty(combine(&terms));
                let unbounded = match shape.shape {
                    Shape::Cables(_) => AtWorst::GivesWay,
                    Shape::Circle { .. }
                    | Shape::Polygon(_)
                    | Shape::Raked(_)
                    | Shape::Rectangle { .. }
                    | Shape::Slot { .. }
                    | Shape::Triangle { .. }
                    | Shape::Turned(_) => AtWorst::GoesOn,
                };
                Said {
                    at_worst: at_worst(ball, u, Spread::Bounds, unbounded),
                    ..Said::plain(Evidence::Point(ball.lower, u), shape.unit)
                }
            }
            Value::StairTriangle(stair) => match self.triangle(item, observation, stair) {
                Ok(said) => said,
                Err(reason) => return Piece::Nothing(reason),
            },
            // looked, and there is none: an opening of nothing
            Value::None => Said::plain(
                Evidence::Point(Length::ZERO, StandardUncertainty::NONE),
                LengthUnit::Millimetre,
            ),
            Value::Unknown => return Piece::Nothing(Reason::CouldNotLook(index)),
            Value::Age(_)
            | Value::Count(_)
            | Value::Date { .. }
            | Value::Fasteners(_)
            | Value::Foothold(_)
            | Value::VOpening(_)
            | Value::Force(_)
            | Value::Pull(_)
            | Value::Section(..)
            | Value::Text(_)
            | Value::ThingToClimb(_)
            | Value::Word(_)
            | Value::Years(_) => return Piece::Nothing(Reason::Unreadable(index)),
        };
        said.at = self.extent(item, reading, said.evidence);
        Piece::Says(said)
    }

    /// Where an opening lies: as written; a bottom gap always at the bottom, an edge gap
    /// at the floor; a gap
    /// between balusters from bottom to top, unless an extent says otherwise.
    fn extent(&self, item: Item, reading: &Reading, evidence: Evidence) -> Option<Extent> {
        if item == Item::BottomGap {
            return reading.at.or(Some(Extent {
                low: Length::ZERO,
                high: evidence.length(),
            }));
        }
        // beside the edge of the floor it lies at the floor
        if item == Item::EdgeGap {
            let floor = Extent {
                low: Length::ZERO,
                high: Length::ZERO,
            };
            return reading.at.or(Some(floor));
        }
        if runs_between(item, reading) && self.is_upright() {
            return Some(Extent {
                low: Length::ZERO,
                high: Length::from_nanometres(i64::MAX),
            });
        }
        reading.at
    }

    /// Whether a gap of which one height was written may go on above and below it,
    /// since nobody wrote what fills the guard.
    pub(super) fn may_run_on(&self, item: Item, index: usize) -> bool {
        let reading = self.guard.observation(index).reading.as_deref();
        self.build != Build::Exact
            && self.of(Item::Infill).next().is_none()
            && reading.is_some_and(|reading| runs_between(item, reading))
    }

    fn measured(&self, item: Item, observation: &Observation, measure: Measure) -> Evidence {
        match measure.bound {
            Bound::Over => Evidence::Above(measure.length),
            Bound::Under => Evidence::Below(measure.length),
            Bound::Exactly => {
                let terms = self.terms(
                    item,
                    observation,
                    measure.length,
                    measure.unit,
                    measure.graduation,
                );
                Evidence::Point(measure.length, combine(&terms))
            }
        }
    }

    fn triangle(
        &self,
        item: Item,
        observation: &Observation,
        stair: &StairReading,
    ) -> Result<Said, Reason<'static>> {
        let lift = stair.lift.ok_or(Reason::LiftMissing)?;
        let triangle = stair.triangle(lift).map_err(|_| Reason::NoSuchStep)?;
        let clear = triangle.clear_opening();
        let size = clear.upper.unwrap_or(clear.lower);
        let terms = self.terms(item, observation, size, stair.unit, stair.graduation);
        let u = triangle.clear_opening_uncertainty(combine(&terms));
        let why = if stair.nosing > Length::ZERO && stair.nosing_thickness.is_none() {
            Spread::Nosing
        } else {
            Spread::Bounds
        };
        Ok(Said {
            at_worst: at_worst(clear, u, why, AtWorst::GoesOn),
            ..Said::plain(Evidence::Point(clear.lower, u), stair.unit)
        })
    }
}

/// Whether a reading says that there is no gap: `none`, or one of no width.
fn says_none(value: &Value) -> bool {
    let no_width = |measure: &Measure| {
        measure.length == Length::ZERO && matches!(measure.bound, Bound::Exactly | Bound::Under)
    };
    if let Value::Measure(measure) = value {
        no_width(measure)
    } else {
        *value == Value::None
    }
}

/// Whether a reading is of a gap that, between balusters, runs from bottom to top:
/// no extent was written.
fn runs_between(item: Item, reading: &Reading) -> bool {
    let at_one_height = reading.at.is_none_or(|at| at.low == at.high);
    let everywhere = matches!(&reading.value, Value::Ball(ball) if ball.everywhere);
    let is_a_gap = match &reading.value {
        Value::Ball(_) | Value::Measure(_) => !everywhere,
        Value::Shape(shape) => match shape.shape {
            Shape::Raked(_) | Shape::Slot { .. } | Shape::Turned(_) => true,
            Shape::Cables(_)
            | Shape::Circle { .. }
            | Shape::Polygon(_)
            | Shape::Rectangle { .. }
            | Shape::Triangle { .. } => false,
        },
        Value::Age(_)
        | Value::Count(_)
        | Value::Date { .. }
        | Value::Fasteners(_)
        | Value::Foothold(_)
        | Value::None
        | Value::Force(_)
        | Value::Pull(_)
        | Value::Section(..)
        | Value::StairTriangle(_)
        | Value::Stick(_)
        | Value::Text(_)
        | Value::ThingToClimb(_)
        | Value::Unknown
        | Value::VOpening(_)
        | Value::Word(_)
        | Value::Years(_) => false,
    };
    matches!(item, Item::Opening | Item::EndGap) && is_a_gap && at_one_height
}

fn items(observations: &[Observation]) -> ItemSet {
    observations.iter().map(|one| one.item).collect()
}
