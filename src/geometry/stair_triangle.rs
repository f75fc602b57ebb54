//! The opening between riser, tread and the bottom rail of a stair guard.

use crate::geometry::shape::scaled;
use crate::measure::Length;
use crate::measure::StandardUncertainty;

/// The triangle at a step: riser, tread and a straight bottom rail parallel to
/// the nosing line, lifted off it by a plumb distance.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct StairTriangle {
    rise: Length,
    going: Length,
    lift: Length,
}

/// Why the closed form does not answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
#[non_exhaustive]
pub enum StairTriangleError {
    /// Rise or going of zero or below, or a lift below zero.
    #[error("rise and going must be longer than nothing, and the lift not below it")]
    NotPositive,
    /// The ball is so large that it touches the nosings and not tread and riser.
    #[error("the rail stands so high that the closed form no longer holds")]
    LiftTooHigh,
}

impl StairTriangle {
    /// A step's rise and going, and the plumb distance from the nosing line to
    /// the rail's underside.
    ///
    /// # Errors
    /// [`StairTriangleError::NotPositive`].
    pub fn new(
        rise: Length,
        going: Length,
        lift: Length,
    ) -> Result<StairTriangle, StairTriangleError> {
        if rise <= Length::ZERO || going <= Length::ZERO || lift < Length::ZERO {
            return Err(StairTriangleError::NotPositive);
        }
        Ok(StairTriangle { rise, going, lift })
    }

    /// The clear opening: the diameter of the largest ball that passes.
    ///
    /// # Errors
    /// [`StairTriangleError::LiftTooHigh`] once the ball's radius exceeds rise
    /// or going; the closed form is not valid there.
    ///
    /// # Accuracy
    /// Rounded to the nearest nanometre.
    ///
    /// # Source
    /// D = (R + G − √(R² + G²)) · (1 + v/R): facts/measurement-and-geometry.md
    /// §3.3, derived there and checked by enumeration.
    ///
    /// ```
    /// use guardrule::geometry::StairTriangle;
    /// use guardrule::measure::Length;
    /// let step = StairTriangle::new(Length::inches(3), Length::inches(4), Length::ZERO)?;
    /// assert_eq!(step.clear_opening(), Ok(Length::inches(2)));
    /// # Ok::<(), guardrule::geometry::StairTriangleError>(())
    /// ```
    pub fn clear_opening(self) -> Result<Length, StairTriangleError> {
        let ball = closed_form(
            self.rise.nanometres_as_float(),
            self.going.nanometres_as_float(),
            self.lift.nanometres_as_float(),
        );
        let ball = Length::from_nanometres_rounded(ball);
        let least = self.rise.min(self.going);
        if ball > least + least {
            return Err(StairTriangleError::LiftTooHigh);
        }
        Ok(ball)
    }

    /// Rise, going and lift.
    pub(super) fn sides(self) -> (Length, Length, Length) {
        (self.rise, self.going, self.lift)
    }

    /// An upper bound of the clear opening where a nosing overhangs the riser by
    /// so much: the riser's face is taken back by it all the way up.
    ///
    /// The hole is a part of that larger triangle, so no larger ball passes;
    /// without the overhang is a lower bound.
    ///
    /// # Errors
    /// [`StairTriangleError::LiftTooHigh`] as for [`StairTriangle::clear_opening`].
    ///
    /// # Source
    /// Similar triangles: D · (1 + v/R + n/G).
    pub fn with_nosing(self, nosing: Length) -> Result<Length, StairTriangleError> {
        let (rise, going, lift) = (
            self.rise.nanometres_as_float(),
            self.going.nanometres_as_float(),
            self.lift.nanometres_as_float(),
        );
        let further = lift + nosing.nanometres_as_float() * rise / going;
        let ball = Length::from_nanometres_rounded(closed_form(rise, going, further));
        self.clear_opening()?;
        Ok(ball)
    }

    /// How sure the clear opening is when rise, going and lift are each this
    /// sure, by the first order of the law of propagation (GUM, JCGM 100:2008, 5.1.2).
    #[must_use]
    pub fn clear_opening_uncertainty(self, each: StandardUncertainty) -> StandardUncertainty {
        let (r, g, v) = (
            self.rise.nanometres_as_float(),
            self.going.nanometres_as_float(),
            self.lift.nanometres_as_float(),
        );
        let slant = (r * r + g * g).sqrt();
        let base = r + g - slant;
        let by_rise = (1.0 - r / slant) * (1.0 + v / r) - base * v / (r * r);
        let by_going = (1.0 - g / slant) * (1.0 + v / r);
        let by_lift = base / r;
        scaled(
            each,
            (by_rise * by_rise + by_going * by_going + by_lift * by_lift).sqrt(),
        )
    }
}

fn closed_form(rise: f64, going: f64, lift: f64) -> f64 {
    (rise + going - (rise * rise + going * going).sqrt()) * (1.0 + lift / rise)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn ball(rise_64: i32, going_64: i32, lift_64: i32) -> f64 {
        let step = StairTriangle::new(
            Length::sixty_fourths(rise_64),
            Length::sixty_fourths(going_64),
            Length::sixty_fourths(lift_64),
        );
        let ball = step.and_then(StairTriangle::clear_opening).expect("valid");
        ball.nanometres_as_float() / 25.4e6
    }

    /// Table "7 3/4 x 10 by lift" of facts/measurement-and-geometry.md §3.3, to its four digits.
    #[test]
    fn the_published_lifts() {
        const CASES: &[(i32, f64)] = &[
            (0, 5.0984),
            (32, 5.4273),
            (64, 5.7563),
            (80, 5.9207),
            (84, 5.9619),
            (88, 6.0030),
            (92, 6.0441),
            (96, 6.0852),
            (128, 6.4141),
        ];
        for (lift, given) in CASES {
            let ours = ball(496, 640, *lift);
            assert!((ours - given).abs() <= 0.00005, "lift {lift}/64 in: {ours}");
        }
    }

    /// The largest lift for a 6 in ball is 1.370474 in plumb: just under stops it, just over passes it.
    #[test]
    fn the_largest_lift_for_a_six_inch_ball() {
        let at = |lift_nm| {
            StairTriangle::new(
                Length::sixty_fourths(496),
                Length::inches(10),
                Length::from_nanometres(lift_nm),
            )
            .and_then(StairTriangle::clear_opening)
            .expect("valid")
        };
        assert!(at(34_810_000) < Length::inches(6)); // 1.370473 in
        assert!(at(34_810_100) > Length::inches(6)); // 1.370476 in
    }

    /// Metric rows of facts/rules-elsewhere.md §7, to 0.1 mm.
    #[test]
    fn the_metric_table() {
        const CASES: &[(i32, i32, i32, f64)] = &[
            (180, 280, 0, 127.1),
            (180, 280, 25, 144.8),
            (180, 280, 50, 162.4),
            (190, 240, 0, 123.9),
            (190, 240, 25, 140.2),
            (190, 240, 50, 156.5),
            (220, 220, 0, 128.9),
            (220, 220, 25, 143.5),
            (220, 220, 50, 158.2),
            (170, 290, 0, 123.8),
            (170, 290, 25, 142.1),
            (170, 290, 50, 160.3),
        ];
        for (rise, going, lift, given) in CASES {
            let step = StairTriangle::new(
                Length::millimetres(*rise),
                Length::millimetres(*going),
                Length::millimetres(*lift),
            );
            let ours = step.and_then(StairTriangle::clear_opening).expect("valid");
            let ours = ours.nanometres_as_float() / 1e6;
            assert!(
                (ours - given).abs() <= 0.05 + 1e-9,
                "{rise}/{going}/{lift}: {ours}"
            );
        }
    }

    /// The closed form holds while the radius is at most rise and going: g ≤ 15.8 in at 7 3/4 x 10.
    #[test]
    fn a_rail_too_high_has_no_closed_form() {
        let at = |lift| {
            StairTriangle::new(
                Length::sixty_fourths(496),
                Length::inches(10),
                Length::inches(lift),
            )
            .and_then(StairTriangle::clear_opening)
        };
        assert!(at(15).is_ok());
        assert_eq!(at(16), Err(StairTriangleError::LiftTooHigh));
    }

    #[test]
    fn doubt_carries_through_as_differences_say() {
        let each = StandardUncertainty::from_length(Length::micrometres(800));
        let step = |r: i64, g: i64, v: i64| {
            StairTriangle::new(
                Length::from_nanometres(r),
                Length::from_nanometres(g),
                Length::from_nanometres(v),
            )
            .expect("valid")
        };
        let (r, g, v, h) = (196_850_000, 254_000_000, 25_400_000, 10_000);
        let ball = |r, g, v| {
            step(r, g, v)
                .clear_opening()
                .expect("valid")
                .nanometres_as_float()
        };
        let by = [
            ball(r + h, g, v) - ball(r - h, g, v),
            ball(r, g + h, v) - ball(r, g - h, v),
            ball(r, g, v + h) - ball(r, g, v - h),
        ];
        let factor = by.iter().map(|d| d * d).sum::<f64>().sqrt() / 20_000.0;
        let ours = step(r, g, v)
            .clear_opening_uncertainty(each)
            .as_length()
            .nanometres_as_float();
        assert!((ours - factor * 800_000.0).abs() < 50.0);
    }
}
