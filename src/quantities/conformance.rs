//! How likely a value conforms to a limit, given its reading and how sure it is.

use std::f64::consts::SQRT_2;

use crate::quantities::Length;
use crate::quantities::StandardUncertainty;

/// A probability between 0 and 1.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct Probability(f64);

impl Probability {
    /// Certain.
    pub const CERTAIN: Probability = Probability(1.0);
    /// Impossible.
    pub const IMPOSSIBLE: Probability = Probability(0.0);

    /// The probability that a value read so lies below `limit`: Φ((limit − reading) / u).
    ///
    /// # Source
    /// JCGM 106:2012, clause 7 (one-sided limits; clause number from memory).
    #[must_use]
    pub fn below(reading: Length, limit: Length, u: StandardUncertainty) -> Probability {
        let gap = (limit - reading).nanometres_as_float();
        let width = u.as_length().nanometres_as_float();
        if width > 0.0 {
            return Probability(normal_cumulative(gap / width));
        }
        if gap > 0.0 {
            Probability::CERTAIN
        } else {
            Probability::IMPOSSIBLE
        }
    }

    /// The probability of the opposite of [`Probability::below`].
    #[must_use]
    pub fn not_below(reading: Length, limit: Length, u: StandardUncertainty) -> Probability {
        let gap = (reading - limit).nanometres_as_float();
        if gap > CERTAIN_FROM * u.as_length().nanometres_as_float() {
            return Probability::CERTAIN; // what is left is less than floats can tell from 1
        }
        Probability::below(reading, limit, u).complement()
    }

    /// The probability of the opposite.
    #[must_use]
    pub fn complement(self) -> Probability {
        Probability(1.0 - self.0)
    }

    /// What remains when a part of it is taken away; never below 0.
    #[must_use]
    pub fn minus(self, part: Probability) -> Probability {
        Probability((self.0 - part.0).max(0.0))
    }

    /// The probability as a number from 0 to 1.
    #[must_use]
    pub const fn value(self) -> f64 {
        self.0
    }
}

/// So many standard deviations off, Φ is 1 to the last digit of a float: the rest
/// is below 2e-19, and half the distance to the next float is 5e-17.
const CERTAIN_FROM: f64 = 9.0;

/// Φ(z): the share of a normal distribution that lies below z standard deviations.
///
/// # Accuracy
/// That of `libm::erfc`, about 1e-15 absolute; finite for every finite z.
///
/// # Source
/// Φ(z) = erfc(−z/√2)/2: textbook definition.
#[must_use]
pub fn normal_cumulative(z: f64) -> f64 {
    if z > CERTAIN_FROM {
        return 1.0; // as it comes out below, without the work
    }
    libm::erfc(-z / SQRT_2) / 2.0
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Reference values of Φ in 25-digit arithmetic (mpmath 1.3.0, `ncdf`).
    #[test]
    #[expect(clippy::excessive_precision, reason = "digits as computed there")]
    fn normal_cumulative_agrees_with_the_reference_library() {
        const CASES: &[(f64, f64)] = &[
            (-3.0, 0.001_349_898_031_630_094_5),
            (-2.0, 0.022_750_131_948_179_207),
            (-1.0, 0.158_655_253_931_457_05),
            (-0.5, 0.308_537_538_725_986_9),
            (0.0, 0.5),
            (0.5, 0.691_462_461_274_013_1),
            (1.0, 0.841_344_746_068_542_95),
            (1.4, 0.919_243_340_766_228_95),
            (11.0 / 6.0, 0.966_623_492_415_182_75),
            (2.0, 0.977_249_868_051_820_79),
            (3.0, 0.998_650_101_968_369_91),
            (6.0, 0.999_999_999_013_412_35),
            (1.644_853_626_951_472_2, 0.95),
            (1.959_963_984_540_054, 0.975),
        ];
        for (z, given) in CASES {
            let ours = normal_cumulative(*z);
            assert!((ours - given).abs() < 1e-15, "{z}: {ours} against {given}");
        }
    }

    /// JCGM 106:2012's own example, a diode at −5.47 V against −5.40 V with
    /// u = 0.05 V: 0.919 (the example from memory).
    #[test]
    fn the_guides_own_example() {
        let volts = |millivolts: i64| Length::from_nanometres(millivolts * 1_000_000);
        let u = StandardUncertainty::from_length(volts(50));
        let p = Probability::below(volts(-5470), volts(-5400), u);
        assert!((p.value() - 0.919).abs() < 0.0005);
    }
}
