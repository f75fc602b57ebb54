//! Evidence against all the bounds of a check.

use crate::items::Verdict;
use crate::judge::Decision;
use crate::judge::bound::Evidence;
use crate::judge::bound::Must;
use crate::judge::bound::Musts;
use crate::judge::bound::Outcome;
use crate::quantities::Length;

/// One piece of evidence against all bounds: the worst verdict, the bound with
/// least to spare, and the probability that all hold.
pub(super) fn against<'r>(
    evidence: Evidence,
    asks: &Musts<'r>,
    decision: Decision,
) -> Option<Outcome<'r>> {
    let mut all: Option<Outcome<'r>> = None;
    for ask in asks.iter() {
        let next = ask.judge(evidence, decision);
        all = Some(match all {
            None => next,
            Some(so_far) => so_far.and(next),
        });
    }
    all
}

/// Several one-sided pieces of evidence about one and the same opening or
/// height: together they may settle what none does alone.
pub(super) fn bounds_against<'r>(bounds: &[Evidence], asks: &Musts<'r>) -> Option<Outcome<'r>> {
    let mut all: Option<Outcome<'r>> = None;
    for ask in asks.iter() {
        let outcomes = bounds.iter().map(|bound| ask.judge_bound(*bound));
        let mut best = outcomes.min_by_key(|outcome| settled_first(outcome.verdict))?;
        let within = match ask {
            Must::Entraps(entraps) => {
                lies_within(bounds, entraps.short.length, entraps.head.length)
            }
            Must::NotWithin(above, below) => lies_within(bounds, above.length, below.length),
            Must::Above(_)
            | Must::AtLeast(_)
            | Must::AtMost(_)
            | Must::Below(_)
            | Must::StopsBall(_) => false,
        };
        if best.verdict == Verdict::NotMeasured && within {
            best.verdict = Verdict::FallsShort;
            best.alone = Verdict::FallsShort;
        }
        all = Some(match all {
            None => best,
            Some(so_far) => so_far.and(best),
        });
    }
    all
}

/// A shortfall that is certain comes first, then what is met for certain.
fn settled_first(verdict: Verdict) -> u8 {
    match verdict {
        Verdict::FallsShort => 0,
        Verdict::Meets => 1,
        Verdict::TooClose | Verdict::NotSettled | Verdict::NotMeasured | Verdict::DoesNotApply => 2,
    }
}

/// Whether the bounds together place the value inside the band.
fn lies_within(bounds: &[Evidence], above: Length, below: Length) -> bool {
    let from = bounds.iter().any(|bound| match bound {
        // a ball that passes lies inside a band that begins at its size
        Evidence::AtLeast(length) => *length >= above,
        Evidence::Above(length) => *length >= above,
        Evidence::Below(_) | Evidence::Point(..) => false,
    });
    let to = bounds.iter().any(|bound| match bound {
        Evidence::Below(length) => *length <= below,
        Evidence::AtLeast(_) | Evidence::Above(_) | Evidence::Point(..) => false,
    });
    from && to
}

impl<'r> Outcome<'r> {
    /// Both must hold.
    fn and(self, other: Outcome<'r>) -> Outcome<'r> {
        let verdict = self.verdict.min(other.verdict);
        let alone = self.alone.min(other.alone);
        let probability = match (self.probability, other.probability) {
            (Some(one), Some(two)) => Some(one.minus(two.complement())),
            (one, two) => one.or(two),
        };
        let first = (self.verdict, self.margin.unwrap_or(NO_MARGIN))
            <= (other.verdict, other.margin.unwrap_or(NO_MARGIN));
        let kept = if first { self } else { other };
        Outcome {
            verdict,
            alone,
            probability,
            ..kept
        }
    }
}

/// Larger than every margin, so that a bound with one is shown first.
const NO_MARGIN: Length = Length::from_nanometres(i64::MAX);

#[cfg(test)]
mod tests {
    use super::*;
    use crate::judge::bound::asks;
    use crate::judge::bound::tests::limit;
    use crate::quantities::StandardUncertainty;
    use crate::rules::Bounds;

    #[derive(Clone, Copy)]
    enum Side {
        AtLeast(i64),
        AtMost(i64),
        Between(i64, i64),
    }

    /// One of the twenty: reading and uncertainty in units of 100 nm, the limit, the probability
    /// to six digits, and the ILAC non-binary column.
    struct Example(i64, i64, Side, f64, Zone4);

    /// ILAC-G8:09/2019, 4.2.3.
    #[derive(Clone, Copy, Debug, PartialEq)]
    enum Zone4 {
        Pass,
        ConditionalPass,
        ConditionalFail,
        Fail,
    }
    use Side::{AtLeast, AtMost, Between};
    use Zone4::{ConditionalFail, ConditionalPass, Fail, Pass};

    /// Twenty readings of our own, their probabilities worked out apart from this code with
    /// scipy.stats.norm.cdf (scipy 1.17.1).
    const TWENTY: [Example; 20] = [
        Example(980_000, 6_000, AtMost(1_016_000), 1.000_000, Pass),
        Example(
            1_005_000,
            6_000,
            AtMost(1_016_000),
            0.966_623,
            ConditionalPass,
        ),
        Example(
            1_010_000,
            6_000,
            AtMost(1_016_000),
            0.841_345,
            ConditionalPass,
        ),
        Example(
            1_016_000,
            6_000,
            AtMost(1_016_000),
            0.500_000,
            ConditionalPass,
        ),
        Example(
            1_020_000,
            6_000,
            AtMost(1_016_000),
            0.252_493,
            ConditionalFail,
        ),
        Example(1_030_000, 6_000, AtMost(1_016_000), 0.009_815, Fail),
        Example(984_250, 7_500, AtMost(1_016_000), 0.999_988, Pass),
        Example(1_000_125, 7_500, AtMost(1_016_000), 0.982_856, Pass),
        Example(
            1_016_000,
            7_500,
            AtMost(1_016_000),
            0.500_000,
            ConditionalPass,
        ),
        Example(1_031_875, 7_500, AtMost(1_016_000), 0.017_144, Fail),
        Example(1_095_375, 7_500, AtMost(1_111_250), 0.982_856, Pass),
        Example(1_492_250, 15_000, AtMost(1_524_000), 0.982_856, Pass),
        Example(
            9_144_000,
            15_000,
            AtLeast(9_144_000),
            0.500_000,
            ConditionalPass,
        ),
        Example(9_112_250, 15_000, AtLeast(9_144_000), 0.017_144, Fail),
        Example(9_175_750, 15_000, AtLeast(9_144_000), 0.982_856, Pass),
        Example(10_030_000, 15_000, AtLeast(10_000_000), 0.977_250, Pass),
        Example(
            10_980_000,
            15_000,
            AtLeast(11_000_000),
            0.091_211,
            ConditionalFail,
        ),
        Example(
            9_636_125,
            15_000,
            Between(8_636_000, 9_652_000),
            0.855_048,
            ConditionalPass,
        ),
        Example(980_000, 6_000, AtMost(990_000), 0.952_210, ConditionalPass),
        Example(880_000, 6_000, AtMost(889_000), 0.933_193, ConditionalPass),
    ];

    #[test]
    fn the_twenty_probability_examples() {
        for (row, Example(reading, u, side, given, zone)) in TWENTY.iter().enumerate() {
            let bounds = match *side {
                AtLeast(at) => Bounds {
                    at_least: Some(limit(at * 100)),
                    ..Bounds::default()
                },
                AtMost(at) => Bounds {
                    at_most: Some(limit(at * 100)),
                    ..Bounds::default()
                },
                Between(from, to) => Bounds {
                    at_least: Some(limit(from * 100)),
                    at_most: Some(limit(to * 100)),
                    ..Bounds::default()
                },
            };
            let u = StandardUncertainty::from_length(Length::from_nanometres(u * 100));
            let point = Evidence::Point(Length::from_nanometres(reading * 100), u);
            let out = against(point, &asks(&bounds), Decision::Guarded).expect("bounds are there");
            let p = out.probability.expect("a doubtful reading has one").value();
            assert!((p - given).abs() <= 0.5e-6, "row {}: {p}", row + 1);
            let ours = match (out.verdict, out.alone) {
                (Verdict::Meets, _) => Pass,
                (Verdict::TooClose, Verdict::Meets) => ConditionalPass,
                (Verdict::TooClose, _) => ConditionalFail,
                _ => Fail,
            };
            assert_eq!(ours, *zone, "row {}", row + 1);
        }
    }

    #[test]
    fn two_balls_place_an_opening_inside_a_band() {
        let (low, high) = (limit(88_900_000), limit(228_600_000));
        let band = Musts::only(Must::NotWithin(&low, &high));
        let passes = Evidence::AtLeast(Length::inches(4));
        let stops = Evidence::Below(Length::inches(9));
        let alone = bounds_against(&[passes], &band).expect("a bound is there");
        assert_eq!(alone.verdict, Verdict::NotMeasured);
        let both = bounds_against(&[passes, stops], &band).expect("bounds are there");
        assert_eq!(both.verdict, Verdict::FallsShort);
    }

    #[test]
    fn a_band_holds_what_lies_between_its_ends_and_a_ball_of_its_lower_one() {
        let [above, below] = [88_900_000, 228_600_000].map(Length::from_nanometres);
        let inside = |least: Evidence, most: i64| {
            let most = Evidence::Below(Length::from_nanometres(most));
            lies_within(&[least, most], above, below)
        };
        let passes = |at: i64| Evidence::AtLeast(Length::from_nanometres(at));
        assert_eq!(
            [-1, 0, 1].map(|off| inside(passes(88_900_000 + off), 228_600_000)),
            [false, true, true]
        );
        assert_eq!(
            [-1, 0, 1].map(|off| inside(passes(88_900_000), 228_600_000 + off)),
            [true, true, false]
        );
        let over = |at: i64| Evidence::Above(Length::from_nanometres(at));
        assert_eq!(
            [-1, 0, 1].map(|off| inside(over(88_900_000 + off), 228_600_000)),
            [false, true, true]
        );
    }
}
