//! Whether an opening lets a body in and holds the head: the probe of a torso and
//! a ball of the head's size in one shape.

use std::borrow::Cow;

use crate::geometry::Fit;
use crate::geometry::Probe;
use crate::items::Item;
use crate::items::Verdict;
use crate::judge::Decision;
use crate::judge::LimitShown;
use crate::judge::Measured;
use crate::judge::Operator;
use crate::judge::Reason;
use crate::judge::bound::Evidence;
use crate::judge::judgement::Judgement;
use crate::judge::said::AtWorst;
use crate::judge::said::Said;
use crate::judge::scene::Scene;
use crate::quantities::Length;
use crate::quantities::StandardUncertainty;
use crate::quantities::combine;
use crate::reading::Value;
use crate::rules::Entraps;
use crate::rules::OpeningDemand;

/// Whether a reading gives the shape of an opening, and not a gap or a ball.
pub(super) fn has_shape(scene: &Scene<'_>, index: usize) -> bool {
    let reading = scene.guard.observation(index).reading.as_ref();
    reading
        .is_some_and(|reading| matches!(reading.value, Value::Shape(_) | Value::StairTriangle(_)))
}

/// A gap that falls short is long the other way, as far as anybody wrote.
pub(super) fn taken_as_long(judgement: &mut Judgement<'_>) {
    let entraps = judgement
        .limit
        .as_ref()
        .is_some_and(|limit| limit.operator == Operator::Entraps);
    if entraps && judgement.verdict != Verdict::Meets {
        judgement.reasons.push(Reason::TakenAsLong);
    }
}

/// How wide a clear opening is at least and at most, with the doubt of each of its
/// shape's dimensions.
struct Doubt {
    lower: Length,
    /// `None` where nothing bounds it.
    upper: Option<Length>,
    of_ball: Length,
    of_sides: Length,
}

/// The probe in a shape; `None` where the demand asks for none, or the reading has
/// no shape.
pub(super) fn probe<'r>(
    scene: &Scene<'_>,
    item: Item,
    index: usize,
    said: &Said,
    demand: &'r OpeningDemand,
) -> Option<Judgement<'r>> {
    let entraps = demand.entraps.as_deref()?;
    let observation = scene.guard.observation(index);
    let value = &observation.reading.as_ref()?.value;
    let (unit, graduation) = value.tape()?;
    let probe = Probe::new(entraps.short.length, entraps.long.length)?;
    let fits: Box<dyn Fn(Length) -> Fit> = match value {
        Value::Shape(shape) => Box::new(move |by| shape.shape.admits(probe, by)),
        Value::StairTriangle(stair) => {
            let step = stair.triangle(stair.lift?).ok()?;
            Box::new(move |by| step.admits(probe, by))
        }
        Value::Age(_)
        | Value::Ball(_)
        | Value::Count(_)
        | Value::Date { .. }
        | Value::Fasteners(_)
        | Value::Foothold(_)
        | Value::Force(_)
        | Value::Pull(_)
        | Value::VOpening(_)
        | Value::Measure(_)
        | Value::None
        | Value::Section(..)
        | Value::Stick(_)
        | Value::Text(_)
        | Value::ThingToClimb(_)
        | Value::Unknown
        | Value::Word(_)
        | Value::Years(_) => return None,
    };
    let Evidence::Point(lower, u) = said.evidence else {
        return None;
    };
    let upper = match said.at_worst {
        Some(AtWorst::Within(worst, _)) => Some(worst.length()),
        Some(AtWorst::GivesWay | AtWorst::GoesOn) => None,
        None => Some(lower),
    };
    let terms = scene.terms(item, observation, upper.unwrap_or(lower), unit, graduation);
    let doubt = Doubt {
        lower,
        upper,
        of_ball: u.doubled(),
        of_sides: combine(&terms).doubled(),
    };
    let (verdict, alone) = verdicts(entraps, &fits, &doubt, scene.options.decision);
    let mut reasons = Vec::new();
    if verdict == Verdict::NotMeasured {
        reasons.push(Reason::ProbeUndecided);
    }
    Some(Judgement {
        measured: Some(Measured {
            written: observation.written.clone(),
            value: Some(lower),
            unit: Some(unit),
        }),
        limit: Some(LimitShown {
            operator: Operator::Entraps,
            written: Cow::Owned(entraps.says()),
            value: None,
            unit: None,
        }),
        uncertainty: Some(u).filter(|u| *u > StandardUncertainty::NONE),
        alone,
        readings: vec![index],
        ..Judgement::bare(item, verdict, reasons)
    })
}

/// The verdict, and that of the reading alone.
fn verdicts(
    entraps: &Entraps,
    fits: &dyn Fn(Length) -> Fit,
    doubt: &Doubt,
    decision: Decision,
) -> (Verdict, Verdict) {
    let head = entraps.head.length;
    let stops = |by: Length| doubt.upper.is_some_and(|upper| upper + by < head);
    let plain = fits(Length::ZERO);
    let alone = settled(&plain, &plain, doubt.lower >= head, stops(Length::ZERO));
    let alone = alone.unwrap_or(Verdict::NotMeasured);
    let certain = doubt.of_sides == Length::ZERO && doubt.of_ball == Length::ZERO;
    if decision == Decision::Simple || certain {
        return (alone, alone);
    }
    let (small, large) = (fits(-doubt.of_sides), fits(doubt.of_sides));
    let head_passes = doubt.lower - doubt.of_ball >= head;
    let head_stops = stops(doubt.of_ball);
    let verdict = match settled(&small, &large, head_passes, head_stops) {
        Some(verdict) => verdict,
        None if alone == Verdict::NotMeasured => Verdict::NotMeasured,
        None => Verdict::TooClose,
    };
    (verdict, alone)
}

/// What is certain when the probe fares so in the opening at its smallest and at
/// its largest.
fn settled(small: &Fit, large: &Fit, head_passes: bool, head_stops: bool) -> Option<Verdict> {
    if head_passes || *large == Fit::DoesNotPass {
        Some(Verdict::Meets)
    } else if head_stops && matches!(small, Fit::Passes(_)) {
        Some(Verdict::FallsShort)
    } else {
        None
    }
}
