//! What one observation says about a length, or why it says nothing.

use crate::geometry::ClearOpening;
use crate::judge::Reason;
use crate::judge::bound::Evidence;
use crate::quantities::LengthUnit;
use crate::quantities::StandardUncertainty;
use crate::reading::BallTest;
use crate::reading::Extent;
use crate::reading::Push;
use crate::reading::Value;
use crate::survey::Observation;

/// What one observation says about a length, or why it says nothing.
#[derive(Clone, Debug)]
pub(super) enum Piece {
    /// Evidence.
    Says(Said),
    /// Nothing, and why.
    Nothing(Reason<'static>),
}

/// Why a shape's ball may be larger than the smallest that is proven to pass.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Spread {
    /// It lies between two bounds that rounding, or the ends of a profile, keep apart.
    Bounds,
    /// How thick the nosing is is not known.
    Nosing,
}

/// A larger ball that cannot be ruled out.
#[derive(Clone, Copy, Debug)]
pub(super) enum AtWorst {
    /// Any at all, under a push: cables and rods.
    GivesWay,
    /// Any at all: the risers are open.
    GoesOn,
    /// One of this size, and why.
    Within(Evidence, Spread),
}

/// Evidence with what belongs to it.
#[derive(Clone, Copy, Debug)]
pub(super) struct Said {
    pub(super) evidence: Evidence,
    /// A larger value that cannot be ruled out.
    pub(super) at_worst: Option<AtWorst>,
    pub(super) unit: LengthUnit,
    pub(super) at: Option<Extent>,
    pub(super) ball: Option<BallTest>,
}

impl Said {
    pub(super) fn plain(evidence: Evidence, unit: LengthUnit) -> Said {
        Said {
            evidence,
            at_worst: None,
            unit,
            at: None,
            ball: None,
        }
    }

    /// Whether the reading counts for the push that is asked for.
    pub(super) fn pushed(&self) -> Push {
        self.ball.map_or(Push::None, |ball| ball.push)
    }

    /// Whether a ball was tried at every hole.
    pub(super) fn everywhere(&self) -> bool {
        self.ball.is_some_and(|ball| ball.everywhere)
    }
}

/// The word of an observation; `none` and a thing to climb count as words too.
pub(super) fn word(observation: &Observation) -> Option<&'static str> {
    match &observation.reading.as_ref()?.value {
        Value::Word(word) => Some(word),
        Value::None => Some("none"),
        Value::ThingToClimb(_) => Some("yes"),
        Value::Age(_)
        | Value::Ball(_)
        | Value::Count(_)
        | Value::Date { .. }
        | Value::Fasteners(_)
        | Value::Foothold(_)
        | Value::VOpening(_)
        | Value::Measure(_)
        | Value::Force(_)
        | Value::Pull(_)
        | Value::Section(..)
        | Value::Shape(_)
        | Value::StairTriangle(_)
        | Value::Stick(_)
        | Value::Text(_)
        | Value::Unknown
        | Value::Years(_) => None,
    }
}

/// Whether an observation says nothing: unreadable, or "could not look".
pub(super) fn says_nothing<'r>(index: usize, observation: &Observation) -> Option<Reason<'r>> {
    match &observation.reading {
        None => Some(Reason::Unreadable(index)),
        Some(reading) if reading.value == Value::Unknown => Some(Reason::CouldNotLook(index)),
        Some(_) => None,
    }
}

pub(super) fn ball_bound(ball: &BallTest) -> Evidence {
    if ball.passes {
        Evidence::AtLeast(ball.ball)
    } else {
        Evidence::Below(ball.ball)
    }
}

/// The larger ball that cannot be ruled out, where there is one.
pub(super) fn at_worst(
    ball: ClearOpening,
    u: StandardUncertainty,
    why: Spread,
    unbounded: AtWorst,
) -> Option<AtWorst> {
    match ball.upper {
        None => Some(unbounded),
        Some(upper) if upper > ball.lower => Some(AtWorst::Within(Evidence::Point(upper, u), why)),
        Some(_) => None,
    }
}
