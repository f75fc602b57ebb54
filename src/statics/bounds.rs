//! A low and a high end, and the finding that two pairs of ends allow.

use crate::quantities::Dimension;
use crate::quantities::Of;
use crate::statics::worked::Worked;

/// How far rounding of floats may carry a ratio past 1 without meaning it.
const ROUNDING: f64 = 1e-9;

/// The least and the greatest plausible value.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ends<T> {
    /// The least.
    pub low: T,
    /// The greatest.
    pub high: T,
}

impl<T> Ends<T> {
    /// A value that is known.
    pub fn exactly(value: T) -> Ends<T>
    where
        T: Clone,
    {
        Ends {
            low: value.clone(),
            high: value,
        }
    }

    /// Both ends through a function that rises with its argument.
    pub fn rising<U>(self, f: impl Fn(T) -> U) -> Ends<U> {
        Ends {
            low: f(self.low),
            high: f(self.high),
        }
    }

    /// Both ends through a function that falls as its argument rises.
    pub fn falling<U>(self, f: impl Fn(T) -> U) -> Ends<U> {
        Ends {
            low: f(self.high),
            high: f(self.low),
        }
    }
}

impl<T: Copy + PartialOrd> Ends<T> {
    /// Two values in whichever order.
    pub fn between(one: T, other: T) -> Ends<T> {
        if other < one {
            Ends {
                low: other,
                high: one,
            }
        } else {
            Ends {
                low: one,
                high: other,
            }
        }
    }

    /// The ends of several values; `None` for no value.
    pub fn over(values: impl IntoIterator<Item = T>) -> Option<Ends<T>> {
        values
            .into_iter()
            .map(|value| Ends {
                low: value,
                high: value,
            })
            .reduce(Ends::hull)
    }

    /// The least interval that holds both.
    #[must_use]
    pub fn hull(self, other: Ends<T>) -> Ends<T> {
        Ends {
            low: if other.low < self.low {
                other.low
            } else {
                self.low
            },
            high: if other.high > self.high {
                other.high
            } else {
                self.high
            },
        }
    }

    /// Whether the value lies within.
    pub fn holds(&self, value: T) -> bool {
        self.low <= value && value <= self.high
    }
}

impl<T: Copy + PartialOrd> Ends<Worked<T>> {
    /// The ends of several worked results, each with its own lines.
    pub fn of_worked(values: impl IntoIterator<Item = Worked<T>>) -> Option<Ends<Worked<T>>> {
        let mut values = values.into_iter();
        let first = values.next()?;
        let mut ends = Ends::exactly(first);
        for next in values {
            if next.value < ends.low.value {
                ends.low = next;
            } else if next.value > ends.high.value {
                ends.high = next;
            }
        }
        Some(ends)
    }

    /// The values alone.
    #[must_use]
    pub fn values(&self) -> Ends<T> {
        Ends {
            low: self.low.value,
            high: self.high.value,
        }
    }
}

/// Demand over capacity, a pure number.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct Utilisation(pub f64);

impl Utilisation {
    /// Whether the demand is no greater than the capacity; exactly 1 is not
    /// greater, and neither is 1 plus the rounding of floats.
    #[must_use]
    pub fn is_within(self) -> bool {
        self.0 <= 1.0 + ROUNDING
    }
}

/// What two pairs of ends allow to say.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum RatioOutcome {
    /// Even the least demand exceeds the greatest capacity.
    FallsShort,
    /// Even the greatest demand does not exceed the least capacity; indicative,
    /// and never a statement of strength.
    NoShortfall,
    /// It depends on what is not known.
    TooClose,
}

impl Ends<Utilisation> {
    /// r_low and r_high: demand over capacity at the ends that oppose each other.
    ///
    /// Demand and capacity are of one dimension, or it does not compile. No
    /// demand is 0 whatever the capacity; a demand on no capacity is infinite.
    #[must_use]
    pub fn utilisation<D: Dimension + ?Sized>(
        demand: Ends<Of<D>>,
        capacity: Ends<Of<D>>,
    ) -> Ends<Utilisation> {
        let over = |demand: Of<D>, capacity: Of<D>| {
            if demand.value <= 0.0 {
                Utilisation(0.0)
            } else {
                Utilisation(demand.value / capacity.value.max(0.0))
            }
        };
        Ends {
            low: over(demand.low, capacity.high),
            high: over(demand.high, capacity.low),
        }
    }

    /// The finding of one link: r_low > 1 falls short, r_high ≤ 1 shows no
    /// shortfall, else too close to call.
    #[must_use]
    pub fn outcome(&self) -> RatioOutcome {
        if self.high.is_within() {
            RatioOutcome::NoShortfall
        } else if self.low.0 > 1.0 + ROUNDING {
            RatioOutcome::FallsShort
        } else {
            RatioOutcome::TooClose
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantities::pounds;

    fn forces(low: f64, high: f64) -> Ends<crate::quantities::Force> {
        Ends::between(pounds(low), pounds(high))
    }

    #[test]
    fn the_finding_follows_the_ends() {
        for (demand, capacity, outcome) in [
            ((200.0, 200.0), (100.0, 199.0), RatioOutcome::FallsShort),
            ((200.0, 200.0), (200.0, 300.0), RatioOutcome::NoShortfall),
            ((200.0, 200.0), (100.0, 200.0), RatioOutcome::TooClose),
            ((0.0, 0.0), (0.0, 0.0), RatioOutcome::NoShortfall),
            ((1.0, 1.0), (0.0, 0.0), RatioOutcome::FallsShort),
        ] {
            let ratio =
                Ends::utilisation(forces(demand.0, demand.1), forces(capacity.0, capacity.1));
            assert_eq!(ratio.outcome(), outcome, "{demand:?} on {capacity:?}");
        }
    }

    #[test]
    fn what_is_not_a_number_is_no_pass() {
        let ratio = Ends::utilisation(forces(f64::NAN, f64::NAN), forces(1.0, 1.0));
        assert_eq!(ratio.outcome(), RatioOutcome::TooClose);
    }

    #[test]
    fn ends_are_put_in_order() {
        let ends = Ends::between(3, 1);
        assert_eq!((ends.low, ends.high), (1, 3));
        assert_eq!(Ends::over([2, 5, 1]), Some(Ends { low: 1, high: 5 }));
        assert_eq!(Ends::<i32>::over([]), None);
        assert!(ends.holds(2) && !ends.holds(4));
        assert_eq!(ends.falling(|x| -x), Ends { low: -3, high: -1 });
    }
}
