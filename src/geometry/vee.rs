//! An opening that is open at the top and narrows downward to a point.

use crate::quantities::Angle;
use crate::quantities::Length;

/// Two straight sides that meet below, seen square to the opening; the same on the
/// left and on the right.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Vee {
    wide: Length,
    deep: Length,
}

impl Vee {
    /// By the width at the top and the depth below it; `None` unless both are
    /// longer than nothing.
    #[must_use]
    pub fn new(wide: Length, deep: Length) -> Option<Vee> {
        (wide > Length::ZERO && deep > Length::ZERO).then_some(Vee { wide, deep })
    }

    /// The angle between its sides: 2 atan(w / 2d).
    #[must_use]
    pub fn angle(self) -> Angle {
        let (w, d) = (
            self.wide.nanometres_as_float(),
            self.deep.nanometres_as_float(),
        );
        Angle::new::<uom::si::angle::radian>(2.0 * libm::atan2(w, 2.0 * d))
    }

    /// The largest ball that sinks in up to the level of the top, and how far above
    /// the point its middle comes to rest.
    ///
    /// # Accuracy
    /// Rounded to the nearest nanometre.
    ///
    /// # Source
    /// Inradius of an isosceles triangle, 2A/P: textbook geometry. The middle lies that
    /// radius below the top.
    ///
    /// ```
    /// use guardrule::geometry::Vee;
    /// use guardrule::quantities::Length;
    /// let vee = Vee::new(Length::inches(6), Length::inches(4)).unwrap();
    /// let (ball, above) = vee.sunk_ball();
    /// assert_eq!((ball, above), (Length::inches(3), Length::from_nanometres(63_500_000)));
    /// ```
    #[must_use]
    pub fn sunk_ball(self) -> (Length, Length) {
        let (w, d) = (
            self.wide.nanometres_as_float(),
            self.deep.nanometres_as_float(),
        );
        let slant = (d * d + w * w / 4.0).sqrt();
        let radius = w * d / (w + 2.0 * slant);
        (
            Length::from_nanometres_rounded(2.0 * radius),
            Length::from_nanometres_rounded(d - radius),
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Isosceles, base 6 and height 8: 4A/P, and our own enumeration with 40 digits
    /// (mpmath 1.3.0) gives the same.
    #[test]
    fn the_ball_of_the_worked_triangle() {
        let vee = Vee::new(Length::inches(6), Length::inches(8)).expect("sides above zero");
        let (ball, _) = vee.sunk_ball();
        let off = ball.nanometres_as_float() - 4.158_002_808_988 * 25.4e6;
        assert!(off.abs() <= 0.5, "{off}");
    }

    #[test]
    fn as_wide_as_twice_its_depth_is_a_right_angle() {
        let vee = Vee::new(Length::inches(8), Length::inches(4)).expect("sides above zero");
        let degrees = vee.angle().get::<uom::si::angle::degree>();
        assert!((degrees - 90.0).abs() < 1e-12, "{degrees}");
    }
}
