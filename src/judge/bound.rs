//! A bound that a value must keep to, and what evidence says of it.

use std::borrow::Cow;

use crate::items::Verdict;
use crate::judge::Decision;
use crate::judge::LimitShown;
use crate::judge::Operator;
use crate::quantities::Length;
use crate::quantities::Probability;
use crate::quantities::StandardUncertainty;
use crate::rules::Bounds;
use crate::rules::Entraps;
use crate::rules::Limit;
use crate::rules::OpeningDemand;

/// What an observation says about a length.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Evidence {
    /// The true value is this or more: a ball passes, a stick reaches.
    AtLeast(Length),
    /// The true value is more than this: `over`.
    Above(Length),
    /// The true value is less than this: a ball stops, `under`.
    Below(Length),
    /// A reading, and how sure it is.
    Point(Length, StandardUncertainty),
}

impl Evidence {
    /// How it is decided where this was asked for: a doubt beyond any tape's counts though
    /// the reading alone was asked for.
    pub(super) fn decision(self, asked: Decision) -> Decision {
        match self {
            Evidence::Point(value, u) if u.is_beyond_any_tape(value) => Decision::Guarded,
            Evidence::Point(..)
            | Evidence::AtLeast(_)
            | Evidence::Above(_)
            | Evidence::Below(_) => asked,
        }
    }

    /// The length it names.
    pub(super) fn length(self) -> Length {
        match self {
            Evidence::AtLeast(length)
            | Evidence::Above(length)
            | Evidence::Below(length)
            | Evidence::Point(length, _) => length,
        }
    }
}

/// A bound that a value must keep to.
#[derive(Clone, Copy, Debug)]
pub(super) enum Must<'r> {
    /// More than.
    Above(&'r Limit),
    /// This or more.
    AtLeast(&'r Limit),
    /// This or less.
    AtMost(&'r Limit),
    /// Less than.
    Below(&'r Limit),
    /// A gap that is long the other way: not as wide as the first and below the
    /// second at once.
    Entraps(&'r Entraps),
    /// Not above the first and below the second at once.
    NotWithin(&'r Limit, &'r Limit),
    /// A ball of this size must not pass.
    StopsBall(&'r Limit),
}

/// What became of evidence against bounds.
#[derive(Clone, Debug)]
pub(super) struct Outcome<'r> {
    pub(super) verdict: Verdict,
    /// The verdict of the simple decision.
    pub(super) alone: Verdict,
    /// On the good side above zero.
    pub(super) margin: Option<Length>,
    pub(super) probability: Option<Probability>,
    pub(super) limit: LimitShown<'r>,
}

/// The bounds of a plain length.
pub(super) fn asks(bounds: &Bounds<Limit>) -> Musts<'_> {
    Musts([
        bounds.at_least.as_ref().map(Must::AtLeast),
        bounds.at_most.as_ref().map(Must::AtMost),
        bounds.above.as_ref().map(Must::Above),
        bounds.below.as_ref().map(Must::Below),
        None,
    ])
}

/// The bounds of an opening.
pub(super) fn opening_asks(demand: &OpeningDemand) -> Musts<'_> {
    let band = demand.not_within.as_ref();
    Musts([
        demand.stops_ball.as_ref().map(Must::StopsBall),
        demand.at_most.as_ref().map(Must::AtMost),
        demand.at_least.as_ref().map(Must::AtLeast),
        band.map(|(above, below)| Must::NotWithin(above, below)),
        demand.entraps.as_deref().map(Must::Entraps),
    ])
}

/// The bounds of an opening whose shape is known, so that a probe is tried in it
/// otherwise.
pub(super) fn shape_asks(demand: &OpeningDemand) -> Musts<'_> {
    let mut asks = opening_asks(demand);
    asks.0[4] = None;
    asks
}

/// The bounds that one check sets; all of them must hold.
#[derive(Clone, Copy, Debug)]
pub(super) struct Musts<'r>([Option<Must<'r>>; 5]);

impl<'r> Musts<'r> {
    /// A single bound.
    pub(super) fn only(ask: Must<'r>) -> Musts<'r> {
        Musts([Some(ask), None, None, None, None])
    }

    pub(super) fn iter(&self) -> impl Iterator<Item = Must<'r>> {
        self.0.into_iter().flatten()
    }
}

impl<'r> Must<'r> {
    pub(super) fn judge(self, evidence: Evidence, decision: Decision) -> Outcome<'r> {
        match evidence {
            Evidence::Point(value, u) => self.judge_point(value, u, decision),
            Evidence::AtLeast(_) | Evidence::Above(_) | Evidence::Below(_) => {
                self.judge_bound(evidence)
            }
        }
    }

    /// The verdict alone: what a condition asks.
    pub(super) fn verdict(self, evidence: Evidence, decision: Decision) -> Verdict {
        match evidence {
            Evidence::Point(value, u) => self.point_verdicts(value, u, decision).0,
            Evidence::AtLeast(_) | Evidence::Above(_) | Evidence::Below(_) => {
                self.bound_verdict(evidence)
            }
        }
    }

    /// The verdict, and that of the simple decision.
    fn point_verdicts(
        self,
        value: Length,
        u: StandardUncertainty,
        decision: Decision,
    ) -> (Verdict, Verdict) {
        let margin = self.margin(value);
        let equal_is_fine = match self {
            Must::AtLeast(_) | Must::AtMost(_) | Must::NotWithin(..) => true,
            // a probe that just fits passes, and so does the head
            Must::Entraps(entraps) => value >= entraps.head.length,
            Must::Above(_) | Must::Below(_) | Must::StopsBall(_) => false,
        };
        let alone = if margin > Length::ZERO || (equal_is_fine && margin == Length::ZERO) {
            Verdict::Meets
        } else {
            Verdict::FallsShort
        };
        let doubtful = margin.magnitude() < u.doubled();
        let verdict = if decision == Decision::Guarded && doubtful {
            Verdict::TooClose
        } else {
            alone
        };
        (verdict, alone)
    }

    fn judge_point(self, value: Length, u: StandardUncertainty, decision: Decision) -> Outcome<'r> {
        let margin = self.margin(value);
        let (verdict, alone) = self.point_verdicts(value, u, decision);
        Outcome {
            verdict,
            alone,
            margin: Some(margin),
            probability: (u > StandardUncertainty::NONE).then(|| self.probability(value, u)),
            limit: self.shown(value),
        }
    }

    /// On the good side above zero.
    fn margin(self, value: Length) -> Length {
        match self {
            Must::Above(limit) | Must::AtLeast(limit) => value - limit.length,
            Must::AtMost(limit) | Must::Below(limit) | Must::StopsBall(limit) => {
                limit.length - value
            }
            Must::Entraps(entraps) => {
                (entraps.short.length - value).max(value - entraps.head.length)
            }
            Must::NotWithin(above, below) => (above.length - value).max(value - below.length),
        }
    }

    fn probability(self, value: Length, u: StandardUncertainty) -> Probability {
        match self {
            Must::Above(limit) | Must::AtLeast(limit) => {
                Probability::not_below(value, limit.length, u)
            }
            Must::AtMost(limit) | Must::Below(limit) | Must::StopsBall(limit) => {
                Probability::below(value, limit.length, u)
            }
            Must::Entraps(entraps) => inside(value, &entraps.short, &entraps.head, u).complement(),
            Must::NotWithin(above, below) => inside(value, above, below, u).complement(),
        }
    }

    fn bound_verdict(self, bound: Evidence) -> Verdict {
        match self {
            Must::Above(limit) => lower(bound, limit.length, Equal::FallsShort),
            Must::AtLeast(limit) => lower(bound, limit.length, Equal::Meets),
            Must::AtMost(limit) => upper(bound, limit.length, Equal::Meets),
            Must::Below(limit) | Must::StopsBall(limit) => {
                upper(bound, limit.length, Equal::FallsShort)
            }
            Must::Entraps(entraps) => {
                let under = upper(bound, entraps.short.length, Equal::FallsShort);
                let over = lower(bound, entraps.head.length, Equal::Meets);
                if under == Verdict::Meets || over == Verdict::Meets {
                    Verdict::Meets
                } else {
                    Verdict::NotMeasured
                }
            }
            Must::NotWithin(above, below) => {
                let under = upper(bound, above.length, Equal::Meets);
                let over = lower(bound, below.length, Equal::Meets);
                if under == Verdict::Meets || over == Verdict::Meets {
                    Verdict::Meets
                } else {
                    Verdict::NotMeasured
                }
            }
        }
    }

    pub(super) fn judge_bound(self, bound: Evidence) -> Outcome<'r> {
        let verdict = self.bound_verdict(bound);
        Outcome {
            verdict,
            alone: verdict,
            margin: None,
            probability: None,
            limit: self.shown(bound.length()),
        }
    }

    fn shown(self, value: Length) -> LimitShown<'r> {
        let of = |operator, limit: &'r Limit| LimitShown {
            operator,
            written: Cow::Borrowed(limit.written.as_str()),
            value: Some(limit.length),
            unit: Some(limit.unit),
        };
        match self {
            Must::Above(limit) => of(Operator::Above, limit),
            Must::AtLeast(limit) => of(Operator::AtLeast, limit),
            Must::AtMost(limit) => of(Operator::AtMost, limit),
            Must::Below(limit) => of(Operator::Below, limit),
            Must::StopsBall(limit) => of(Operator::StopsBall, limit),
            Must::Entraps(entraps) => {
                let near_head = value - entraps.short.length > entraps.head.length - value;
                let nearest = if near_head {
                    &entraps.head
                } else {
                    &entraps.short
                };
                LimitShown {
                    written: Cow::Owned(entraps.says()),
                    ..of(Operator::Entraps, nearest)
                }
            }
            Must::NotWithin(above, below) => {
                let near_below = value - above.length > below.length - value;
                let nearest = if near_below { below } else { above };
                LimitShown {
                    written: Cow::Owned(format!("{} and {}", above.written, below.written)),
                    ..of(Operator::NotWithin, nearest)
                }
            }
        }
    }
}

/// How likely a value lies between two limits.
fn inside(value: Length, above: &Limit, below: &Limit, u: StandardUncertainty) -> Probability {
    let under = Probability::below(value, below.length, u);
    under.minus(Probability::below(value, above.length, u))
}

/// What a value exactly at the limit does.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Equal {
    FallsShort,
    Meets,
}

/// A one-sided bound against a lower limit.
fn lower(bound: Evidence, limit: Length, equal: Equal) -> Verdict {
    match bound {
        Evidence::AtLeast(v) if v > limit || (v == limit && equal == Equal::Meets) => {
            Verdict::Meets
        }
        Evidence::Above(v) if v >= limit => Verdict::Meets,
        Evidence::Below(v) if v <= limit => Verdict::FallsShort,
        Evidence::AtLeast(_) | Evidence::Above(_) | Evidence::Below(_) | Evidence::Point(..) => {
            Verdict::NotMeasured
        }
    }
}

/// A one-sided bound against an upper limit.
fn upper(bound: Evidence, limit: Length, equal: Equal) -> Verdict {
    match bound {
        Evidence::Below(v) if v <= limit => Verdict::Meets,
        Evidence::AtLeast(v) if v > limit || (v == limit && equal == Equal::FallsShort) => {
            Verdict::FallsShort
        }
        Evidence::Above(v) if v >= limit => Verdict::FallsShort,
        Evidence::AtLeast(_) | Evidence::Above(_) | Evidence::Below(_) | Evidence::Point(..) => {
            Verdict::NotMeasured
        }
    }
}

#[cfg(test)]
pub(super) mod tests {
    use super::*;
    use crate::quantities::LengthUnit;

    pub(in crate::judge) fn limit(nanometres: i64) -> Limit {
        Limit {
            length: Length::from_nanometres(nanometres),
            unit: LengthUnit::Millimetre,
            written: Length::from_nanometres(nanometres).to_string(),
        }
    }

    #[test]
    fn one_nanometre_on_either_side_of_a_limit() {
        let at = limit(101_600_000);
        let verdicts = |ask: Must<'_>| {
            [-1, 0, 1].map(|off| {
                let value = Length::from_nanometres(101_600_000 + off);
                let point = Evidence::Point(value, StandardUncertainty::NONE);
                ask.judge(point, Decision::Guarded).verdict
            })
        };
        use Verdict::{FallsShort, Meets};
        assert_eq!(
            verdicts(Must::StopsBall(&at)),
            [Meets, FallsShort, FallsShort]
        );
        assert_eq!(verdicts(Must::AtMost(&at)), [Meets, Meets, FallsShort]);
        assert_eq!(verdicts(Must::AtLeast(&at)), [FallsShort, Meets, Meets]);
        assert_eq!(verdicts(Must::Above(&at)), [FallsShort, FallsShort, Meets]);
        assert_eq!(verdicts(Must::Below(&at)), [Meets, FallsShort, FallsShort]);
    }

    #[test]
    fn a_ball_of_exactly_the_limit_settles_it() {
        let four = limit(101_600_000);
        let ball = Length::inches(4);
        let stops = Must::StopsBall(&four);
        assert_eq!(
            stops.judge_bound(Evidence::Below(ball)).verdict,
            Verdict::Meets
        );
        assert_eq!(
            stops.judge_bound(Evidence::AtLeast(ball)).verdict,
            Verdict::FallsShort
        );
        // where equal is fine, a ball that passes may just fit
        let most = Must::AtMost(&four);
        assert_eq!(
            most.judge_bound(Evidence::AtLeast(ball)).verdict,
            Verdict::NotMeasured
        );
        let larger = Evidence::Below(Length::inches(5));
        assert_eq!(stops.judge_bound(larger).verdict, Verdict::NotMeasured);
    }
}
