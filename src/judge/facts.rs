//! Readings that a slip of the unit, or another reading beside them, makes doubtful: they
//! must not switch a rule off, nor let one be met.
//!
//! A stated bound (`under 30 in`) is nobody's slip and is taken as it stands: it is also
//! how a person says that a doubtful reading was right.

use crate::items::InfillWord;
use crate::items::Item;
use crate::items::ItemSet;
use crate::items::PlaceWord;
use crate::items::Worst;
use crate::items::guess_told;
use crate::judge::Reason;
use crate::judge::bound::Evidence;
use crate::judge::said::Piece;
use crate::judge::scene::Build;
use crate::judge::scene::Scene;
use crate::quantities::Length;
use crate::reading::Bound;
use crate::reading::Extent;
use crate::reading::Graduation;
use crate::reading::Value;
use crate::survey::Observation;

/// What a reading says of where rules begin.
#[derive(Clone, Debug)]
pub(super) struct Trigger {
    /// What it says; where it is doubtful, from the side alone that no doubt touches.
    pub(super) evidence: Evidence,
    /// The other end of what it may be, where it is known.
    pub(super) up_to: Option<Evidence>,
    /// Why it is doubtful.
    pub(super) doubt: Option<Reason<'static>>,
}

impl Trigger {
    fn plain(evidence: Evidence) -> Trigger {
        Trigger {
            evidence,
            up_to: None,
            doubt: None,
        }
    }
}

/// What makes a trigger doubtful beside itself.
const DOUBTED_BY: ItemSet = ItemSet::EMPTY
    .with(Item::Drop)
    .with(Item::GroundFall)
    .with(Item::Infill)
    .with(Item::Place)
    .with(Item::Risers)
    .with(Item::SillAboveGround)
    .with(Item::SillHeight)
    .with(Item::SillTopHeight);

/// A reading of a length as a trigger; `None` where it says nothing.
pub(super) fn trigger(scene: &Scene<'_>, item: Item, index: usize) -> Option<Trigger> {
    scene.rests_on(DOUBTED_BY);
    // of nearly every guard there is nothing to doubt, and conditions are many
    if !*scene.doubtful.get_or_init(|| is_doubtful(scene)) {
        return scene.evidence(item, index).map(Trigger::plain);
    }
    doubted(scene, item, index)
}

/// Whether something that was measured is doubtful as a trigger.
fn is_doubtful(scene: &Scene<'_>) -> bool {
    let guard = scene.guard;
    let all = guard
        .observations
        .iter()
        .chain(&guard.inherited.observations);
    scene.build != Build::Exact
        && all.enumerate().any(|(index, observation)| {
            let item = observation.item;
            item.info().usual.is_some()
                && doubted(scene, item, index).is_some_and(|trigger| trigger.doubt.is_some())
        })
}

fn doubted(scene: &Scene<'_>, item: Item, index: usize) -> Option<Trigger> {
    let evidence = scene.evidence(item, index)?;
    let doubt = slip(scene, item, index).filter(|slip| !brings_rules_in(item, slip));
    if let Some(doubt) = doubt.or_else(|| contradicted(scene, item, index)) {
        let evidence = from_one_side(evidence, &doubt);
        return Some(Trigger {
            evidence,
            up_to: None,
            doubt: Some(doubt),
        });
    }
    let Evidence::Point(value, u) = evidence else {
        return Some(Trigger::plain(evidence));
    };
    if item == Item::Drop
        && let Some(deeper) = deeper_further_out(scene, value)
    {
        return Some(Trigger {
            evidence,
            up_to: Some(Evidence::Point(deeper, u)),
            doubt: Some(Reason::GroundFallsAway { index, deeper }),
        });
    }
    Some(Trigger::plain(evidence))
}

/// What is left of a doubtful reading: it may be more and is not less, or the other way.
fn from_one_side(evidence: Evidence, doubt: &Reason<'_>) -> Evidence {
    let too_much = matches!(doubt, Reason::TooLargeToBe { .. })
        || matches!(doubt, Reason::Contradicts { item, .. } if *item == Item::SillTopHeight);
    match evidence {
        Evidence::Above(length) | Evidence::AtLeast(length) if too_much => {
            // nothing is left of it
            Evidence::AtLeast(length.min(Length::ZERO))
        }
        Evidence::Below(length) | Evidence::Point(length, _) if too_much => Evidence::Below(length),
        Evidence::Above(length) | Evidence::AtLeast(length) | Evidence::Point(length, _) => {
            Evidence::AtLeast(length)
        }
        Evidence::Below(_) => Evidence::AtLeast(Length::ZERO),
    }
}

/// Whether a slip errs on the side where more is asked: a drop that is too deep to be.
fn brings_rules_in(item: Item, slip: &Reason<'_>) -> bool {
    match item.info().worst {
        Worst::Greatest => matches!(slip, Reason::TooLargeToBe { .. }),
        Worst::Least => matches!(slip, Reason::TooSmallToBe { .. }),
        Worst::Neither => false,
    }
}

/// Whether a reading is so far from what is usual that a slip of the unit is likelier.
pub(super) fn slip(scene: &Scene<'_>, item: Item, index: usize) -> Option<Reason<'static>> {
    if scene.build == Build::Exact {
        return None;
    }
    let observation = scene.guard.observation(index);
    if is_turned(observation) {
        return Some(Reason::StepTurned);
    }
    let (low, high) = item.info().usual?;
    let low = if item == Item::Opening {
        least_opening(scene, low)
    } else {
        low
    };
    let (least, most) = extremes(observation)?;
    // at a balcony one cannot fall nowhere
    let nowhere = item == Item::Drop && most == Some(Length::ZERO) && is_above_something(scene);
    if least.is_some_and(|least| least > high) {
        return Some(Reason::TooLargeToBe {
            item,
            index,
            usual: high,
        });
    }
    let small = most.is_some_and(|most| most > Length::ZERO && most < low);
    (small || nowhere).then_some(Reason::TooSmallToBe {
        item,
        index,
        usual: low,
    })
}

/// Whether its place is one by the drop alone: a balcony, a floor's edge, a roof.
fn is_above_something(scene: &Scene<'_>) -> bool {
    let mut places = scene.of(Item::Place).filter_map(|(_, o)| o.word());
    places.any(|word| {
        matches!(
            word,
            PlaceWord::Balcony | PlaceWord::FloorEdge | PlaceWord::Roof
        )
    })
}

/// Whether its own note says that a reading was guessed, and nothing says how far off it may
/// be.
pub(super) fn guessed(scene: &Scene<'_>, index: usize) -> Option<Reason<'static>> {
    let observation = scene.guard.observation(index);
    if observation.note.is_empty() || scene.build == Build::Exact {
        return None;
    }
    let Value::Measure(measure) = observation.reading.as_ref()?.value else {
        return None;
    };
    let bounded =
        measure.bound != Bound::Exactly || matches!(measure.graduation, Graduation::PlusMinus(_));
    if bounded || scene.shares_its_note(observation) {
        return None;
    }
    let word = guess_told(&observation.note)?;
    Some(Reason::Guessed {
        item: observation.item,
        index,
        word,
    })
}

/// Whether the rise of a step is more than its going: on a stair that is walked the going
/// is the greater of the two. (common practice, no source)
fn is_turned(observation: &Observation) -> bool {
    let reading = observation.reading.as_ref().map(|reading| &reading.value);
    matches!(reading, Some(Value::StairTriangle(stair)) if stair.rise > stair.going)
}

/// What a length is at least and at most, by the words of its reading.
fn extremes(observation: &Observation) -> Option<(Option<Length>, Option<Length>)> {
    Some(match &observation.reading.as_ref()?.value {
        Value::Measure(measure) => match measure.bound {
            Bound::Exactly => (Some(measure.length), Some(measure.length)),
            Bound::Over => (Some(measure.length), None),
            Bound::Under => (None, Some(measure.length)),
        },
        Value::Ball(ball) if ball.passes => (Some(ball.ball), None),
        Value::Ball(ball) => (None, Some(ball.ball)),
        Value::Stick(stick) if stick.reaches => (Some(stick.stick), None),
        Value::Stick(stick) => (None, Some(stick.stick)),
        Value::Age(_)
        | Value::Count(_)
        | Value::Date { .. }
        | Value::Fasteners(_)
        | Value::Foothold(_)
        | Value::Force(_)
        | Value::None
        | Value::Pull(_)
        | Value::Section(..)
        | Value::Shape(_)
        | Value::StairTriangle(_)
        | Value::Text(_)
        | Value::ThingToClimb(_)
        | Value::Unknown
        | Value::VOpening(_)
        | Value::Word(_)
        | Value::Years(_) => return None,
    })
}

/// Between bars that stand apart, or where nobody wrote what fills it, a gap is wider than
/// half an inch; mesh, boards and panes have gaps as small as they like. (common practice,
/// no source)
fn least_opening(scene: &Scene<'_>, low: Length) -> Length {
    let closed = |word: InfillWord| match word {
        InfillWord::Glass
        | InfillWord::Mesh
        | InfillWord::Net
        | InfillWord::Other
        | InfillWord::Panel
        | InfillWord::Solid => true,
        InfillWord::Balusters
        | InfillWord::Cables
        | InfillWord::HorizontalBars
        | InfillWord::UprightCables => false,
    };
    let mut infill = scene.of(Item::Infill).filter_map(|(_, o)| o.word());
    if infill.any(closed) {
        low.min(Length::micrometres(100))
    } else {
        low.max(Length::sixty_fourths(32))
    }
}

/// Another reading beside which this one cannot be.
fn contradicted(scene: &Scene<'_>, item: Item, index: usize) -> Option<Reason<'static>> {
    if !matches!(
        item,
        Item::Drop | Item::SillAboveGround | Item::SillTopHeight
    ) {
        return None;
    }
    let Evidence::Point(value, u) = scene.evidence(item, index)? else {
        return None;
    };
    let (by, bound) = if item == Item::Drop {
        let steps = climbed(scene).into_iter();
        steps
            .chain(below_the_sill(scene))
            .max_by_key(|(_, bound)| *bound)
    } else if item == Item::SillAboveGround && scene.is_at_a_window() {
        // the sill lies above the floor from which the drop counts
        least(scene, Item::Drop)
    } else if item == Item::SillTopHeight {
        let (by, most) = most(scene, Item::SillHeight)?;
        let too_high = value - u.doubled() > most;
        return too_high.then_some(Reason::Contradicts {
            item,
            index,
            by,
            bound: most,
        });
    } else {
        None
    }?;
    (value + u.doubled() < bound).then_some(Reason::Contradicts {
        item,
        index,
        by,
        bound,
    })
}

/// How far the risers of a stair climb at least: 4 in each.
///
/// # Source
/// IBC 2018 1011.5.2: a riser is 4 in high at least.
fn climbed(scene: &Scene<'_>) -> Option<(usize, Length)> {
    // as written, whatever a case supposes; risers where nobody wrote the place are a stair's
    let elsewhere = |(_, observation): (usize, &Observation)| {
        observation
            .word::<PlaceWord>()
            .is_some_and(|word| word != PlaceWord::Stair)
    };
    if scene.of(Item::Risers).next().is_none() || scene.of(Item::Place).any(elsewhere) {
        return None;
    }
    let counts = scene.of(Item::Risers).filter_map(|(index, observation)| {
        if let Value::Count(count) = observation.reading.as_ref()?.value {
            Some((index, count))
        } else {
            None
        }
    });
    let (index, count) = counts.min_by_key(|(_, count)| *count)?;
    let risers = i64::from(count.min(MOST_RISERS));
    let riser = Length::inches(4).nanometres();
    Some((index, Length::from_nanometres(riser * risers)))
}

/// No sum grows beyond bounds.
const MOST_RISERS: u32 = 10_000;

/// The ground lies below a window's sill as far as was written, and the floor below the
/// sill no more than its height.
fn below_the_sill(scene: &Scene<'_>) -> Option<(usize, Length)> {
    if scene.of(Item::SillAboveGround).next().is_none() || !scene.is_at_a_window() {
        return None;
    }
    let (index, above_ground) = least(scene, Item::SillAboveGround)?;
    let (_, above_floor) = most(scene, Item::SillHeight)?;
    Some((index, above_ground - above_floor))
}

/// What an item is at least, by all its readings.
fn least(scene: &Scene<'_>, item: Item) -> Option<(usize, Length)> {
    let ends = scene
        .of(item)
        .filter_map(|(index, _)| match scene.evidence(item, index)? {
            Evidence::Point(value, u) => Some((index, value - u.doubled())),
            Evidence::Above(length) | Evidence::AtLeast(length) => Some((index, length)),
            Evidence::Below(_) => None,
        });
    ends.max_by_key(|(_, end)| *end)
}

/// What an item is at most, by all its readings.
pub(super) fn most(scene: &Scene<'_>, item: Item) -> Option<(usize, Length)> {
    let mut most: Option<(usize, Length)> = None;
    for (index, _) in scene.of(item) {
        let end = match scene.piece(item, index) {
            Piece::Says(said) => match said.evidence {
                Evidence::Point(value, u) => value + u.doubled(),
                Evidence::Below(length) => length,
                Evidence::Above(_) | Evidence::AtLeast(_) => return None,
            },
            Piece::Nothing(_) => return None,
        };
        if most.is_none_or(|(_, known)| known < end) {
            most = Some((index, end));
        }
    }
    most
}

/// How deep the drop may be 36 in out from the edge, where the ground falls away and
/// nobody wrote a bound; `None` where it does not fall.
///
/// # Source
/// IRC 2018 R312.1.1: the fall counts to the lowest place within 36 in.
fn deeper_further_out(scene: &Scene<'_>, drop: Length) -> Option<Length> {
    let falls = scene.of(Item::GroundFall).filter_map(|(index, _)| {
        match scene.evidence(Item::GroundFall, index)? {
            Evidence::Point(fall, _) | Evidence::Above(fall) | Evidence::AtLeast(fall) => {
                Some(fall)
            }
            Evidence::Below(_) => None,
        }
    });
    let fall = falls.max().filter(|fall| *fall > Length::ZERO)?;
    // of one metre, 36 in are 914.4 mm
    let out = i128::from(fall.nanometres()) * 9144 / 10_000;
    let out = i64::try_from(out).unwrap_or(i64::MAX);
    Some(Length::from_nanometres(
        drop.nanometres().saturating_add(out),
    ))
}

/// The top of the guard, where an opening said to lie there lies above it; `None` too where
/// some height does not say how far up the guard goes at most.
pub(super) fn top_below(scene: &Scene<'_>, at: Extent) -> Option<Length> {
    if scene.build == Build::Exact {
        return None;
    }
    let (_, top) = most(scene, Item::Height)?;
    // of one that reaches above, both ends were read with a tape
    let reaches_above = at.low < at.high && at.high > top + Length::inches(1);
    (at.low > top || reaches_above).then_some(top)
}
