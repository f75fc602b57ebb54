//! The opening between riser, tread and the bottom rail of a stair guard.

use crate::geometry::ClearOpening;
use crate::geometry::exact::by_differences;
use crate::geometry::exact::scaled;
use crate::quantities::Length;
use crate::quantities::StandardUncertainty;

/// Whether a board closes the back of each step.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Risers {
    /// A riser stands behind each tread.
    Closed,
    /// The opening goes on below the tread above.
    Open,
}

/// The triangle at a step of a flight of equal steps: riser, tread and a straight
/// bottom rail parallel to the line of the noses, lifted off it by a plumb distance.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct StairTriangle {
    pub(super) rise: Length,
    pub(super) going: Length,
    pub(super) lift: Length,
    pub(super) overhang: Length,
    pub(super) thickness: Option<Length>,
    pub(super) risers: Risers,
}

/// Why there is no such step.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
#[non_exhaustive]
pub enum StairTriangleError {
    /// A nosing that overhangs by less than nothing or by a whole going, or one as
    /// thick as the step is high.
    #[error("a nosing overhangs by less than the going and is thinner than the rise")]
    Nosing,
    /// Rise or going of zero or below, or a lift below zero.
    #[error("rise and going must be longer than nothing, and the lift not below it")]
    NotPositive,
}

impl StairTriangle {
    /// A step's rise and going, and the plumb distance from the nosing line to
    /// the rail's underside; risers closed, without a nosing.
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
        Ok(StairTriangle {
            rise,
            going,
            lift,
            overhang: Length::ZERO,
            thickness: None,
            risers: Risers::Closed,
        })
    }

    /// The same with noses that overhang the risers by so much, and how thick they
    /// are, where that is known.
    ///
    /// # Errors
    /// [`StairTriangleError::Nosing`].
    pub fn with_nosing(
        self,
        overhang: Length,
        thickness: Option<Length>,
    ) -> Result<StairTriangle, StairTriangleError> {
        let thick = |thick: Length| thick > Length::ZERO && thick < self.rise;
        let fits = overhang >= Length::ZERO && overhang < self.going;
        if !fits || !thickness.is_none_or(thick) {
            return Err(StairTriangleError::Nosing);
        }
        Ok(StairTriangle {
            overhang,
            thickness,
            ..self
        })
    }

    /// The same with its risers closed or open.
    #[must_use]
    pub fn with_risers(self, risers: Risers) -> StairTriangle {
        StairTriangle { risers, ..self }
    }

    /// The clear opening: the diameter of the largest ball that passes.
    ///
    /// Where a nosing overhangs and nobody said how thick it is, the bounds are the
    /// openings without it and with the thinnest one. Open risers leave the opening
    /// unbounded from above: it goes on behind the tread.
    ///
    /// # Accuracy
    /// Rounded to the nearest nanometre where the closed form holds, without a nosing
    /// and with a radius of at most rise and going; elsewhere between two bounds.
    ///
    /// # Source
    /// D = (R + G − √(R² + G²)) · (1 + v/R): the incircle of a right triangle, scaled as
    /// the rail moves out; worked out by ourselves, and checked by enumeration. Beyond
    /// it, the outline of tread, nosing, riser and rail.
    ///
    /// ```
    /// use guardrule::geometry::StairTriangle;
    /// use guardrule::quantities::Length;
    /// let step = StairTriangle::new(Length::inches(3), Length::inches(4), Length::ZERO)?;
    /// assert_eq!(step.clear_opening().exact(), Some(Length::inches(2)));
    /// # Ok::<(), guardrule::geometry::StairTriangleError>(())
    /// ```
    #[must_use]
    pub fn clear_opening(self) -> ClearOpening {
        let closed = match self.closed_form() {
            Some(ball) => ClearOpening::of(Length::from_nanometres_rounded(ball)),
            None => match self.circle() {
                Some(circle) => ClearOpening::between(&circle),
                None => ClearOpening::UNKNOWN,
            },
        };
        match self.risers {
            Risers::Closed => closed,
            Risers::Open => ClearOpening {
                upper: None,
                ..closed
            },
        }
    }

    /// Rise, going and lift.
    pub(super) fn sides(self) -> (Length, Length, Length) {
        (self.rise, self.going, self.lift)
    }

    /// The diameter in nanometres without a nosing, while the circle touches tread,
    /// riser and rail.
    pub(super) fn closed_form(self) -> Option<f64> {
        let (rise, going, lift) = self.floats();
        let ball = (rise + going - (rise * rise + going * going).sqrt()) * (1.0 + lift / rise);
        let least = self.rise.min(self.going).nanometres_as_float();
        (self.overhang == Length::ZERO && ball <= 2.0 * least).then_some(ball)
    }

    pub(super) fn floats(self) -> (f64, f64, f64) {
        (
            self.rise.nanometres_as_float(),
            self.going.nanometres_as_float(),
            self.lift.nanometres_as_float(),
        )
    }

    /// How sure the clear opening is when rise, going, lift and nosing are each this
    /// sure: by the first order of the law of propagation (GUM, JCGM 100:2008, 5.1.2)
    /// where the closed form holds, else by differences.
    #[must_use]
    pub fn clear_opening_uncertainty(self, each: StandardUncertainty) -> StandardUncertainty {
        if self.closed_form().is_none() {
            return self.uncertainty_by_differences(each);
        }
        let (r, g, v) = self.floats();
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

    fn uncertainty_by_differences(self, each: StandardUncertainty) -> StandardUncertainty {
        let mut dimensions = vec![self.rise, self.going, self.lift];
        if self.overhang > Length::ZERO {
            dimensions.push(self.overhang);
        }
        dimensions.extend(self.thickness);
        by_differences(&dimensions, each, |moved| {
            let [rise, going, lift, others @ ..] = moved else {
                return None;
            };
            let mut step = StairTriangle {
                rise: *rise,
                going: *going,
                lift: *lift,
                ..self
            };
            if let [overhang, ..] = others
                && self.overhang > Length::ZERO
            {
                step.overhang = *overhang;
            }
            if let (Some(_), Some(thickness)) = (self.thickness, others.last()) {
                step.thickness = Some(*thickness);
            }
            // the larger opening is the more doubtful one
            Some(step.circle()?.upper_mm * 1e6)
        })
    }
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
        let ball = step.expect("valid").clear_opening().lower;
        ball.nanometres_as_float() / 25.4e6
    }

    /// 7 3/4 x 10 by lift, worked in Python apart from this code, to four digits.
    #[test]
    fn the_lifts_worked_elsewhere() {
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
            .expect("valid")
            .clear_opening()
            .lower
        };
        assert!(at(34_810_000) < Length::inches(6)); // 1.370473 in
        assert!(at(34_810_100) > Length::inches(6)); // 1.370476 in
    }

    /// Metric steps, worked in Python apart from this code and checked there by a search
    /// over a grid, to 0.1 mm.
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
            let ours = step.expect("valid").clear_opening().lower;
            let ours = ours.millimetres_as_float();
            assert!(
                (ours - given).abs() <= 0.05 + 1e-9,
                "{rise}/{going}/{lift}: {ours}"
            );
        }
    }

    fn step(rise: Length, going: Length, lift: Length) -> StairTriangle {
        StairTriangle::new(rise, going, lift).expect("valid")
    }

    /// The closed form holds while the radius is at most rise and going: g ≤ 15.8 in at
    /// 7 3/4 x 10. Beyond, the ball touches noses, and is larger than the closed form's.
    #[test]
    fn a_rail_too_high_for_the_closed_form_is_bounded_all_the_same() {
        let at = |lift| {
            step(
                Length::sixty_fourths(496),
                Length::inches(10),
                Length::inches(lift),
            )
        };
        assert!(at(15).closed_form().is_some());
        assert_eq!(at(16).closed_form(), None);
        let (low, high) = (at(15).clear_opening(), at(16).clear_opening());
        assert!(low.upper.is_some_and(|low| low < high.lower));
        let far = at(20_000).clear_opening();
        let square = 20_000.0 * 25.4e6 * 10.0 / 12.651_58;
        let between = (far.lower.nanometres_as_float() - square) / square;
        assert!(between.abs() < 1e-6, "{far:?}");
        assert!(far.upper.is_some_and(|upper| upper > far.lower));
    }

    /// The outline of several steps against the closed form: both hold alike
    /// (as an enumeration of our own with 40 digits found at these lifts).
    #[test]
    fn the_outline_agrees_with_the_closed_form() {
        for micrometres in [
            0, 1, 6350, 33_337, 34_925, 76_200, 203_200, 304_800, 400_000,
        ] {
            let lift = Length::micrometres(micrometres);
            let step = step(Length::sixty_fourths(496), Length::inches(10), lift);
            let closed = step.closed_form().expect("closed form") / 1e6;
            let circle = step.circle_at_one_step().expect("an outline");
            assert!(
                circle.lower_mm <= closed * (1.0 + 1e-14)
                    && closed <= circle.upper_mm * (1.0 + 1e-14),
                "{micrometres}: {closed} {circle:?}"
            );
            assert!(
                circle.upper_mm - circle.lower_mm < 1e-9 * closed,
                "{circle:?}"
            );
        }
    }

    /// A thin nose lets the ball back to the riser: by similar triangles
    /// D = (R + G − √(R² + G²)) · (1 + v/R + n/G). A thick one stops it on the way.
    #[test]
    fn a_nosing_is_counted_exactly_where_its_thickness_is_known() {
        let (rise, going) = (Length::sixty_fourths(496), Length::inches(10));
        let bare = step(rise, going, Length::inches(1));
        let inch = Length::inches(1);
        let nosed = |thickness| bare.with_nosing(inch, thickness).expect("a nosing");
        let thin = nosed(Some(inch)).clear_opening();
        let given = 5.098_419_071_120 * (1.0 + 1.0 / 7.75 + 0.1) * 25.4e6;
        let upper = thin.upper.expect("bounded").nanometres_as_float();
        assert!(
            thin.lower.nanometres_as_float() <= given && given <= upper,
            "{thin:?}"
        );
        assert!(
            upper - thin.lower.nanometres_as_float() < 2000.0,
            "{thin:?}"
        );
        let thick = nosed(Some(Length::inches(4))).clear_opening();
        assert!(thick.upper < Some(thin.lower));
        assert!(thick.lower > bare.clear_opening().lower);
        let unknown = nosed(None).clear_opening();
        assert!(unknown.lower <= bare.clear_opening().lower && unknown.upper >= thin.upper);
    }

    #[test]
    fn open_risers_bound_from_below_alone() {
        let closed = step(Length::inches(3), Length::inches(4), Length::ZERO);
        let open = closed.with_risers(Risers::Open).clear_opening();
        assert_eq!((open.lower, open.upper), (Length::inches(2), None));
    }

    #[test]
    fn noses_that_cannot_be_are_refused() {
        let bare = step(Length::inches(7), Length::inches(10), Length::ZERO);
        let (inch, ten) = (Length::inches(1), Length::inches(10));
        let refused = Err(StairTriangleError::Nosing);
        assert_eq!(bare.with_nosing(ten, None), refused);
        assert_eq!(bare.with_nosing(inch, Some(Length::inches(7))), refused);
        assert_eq!(bare.with_nosing(inch, Some(Length::ZERO)), refused);
        assert_eq!(bare.with_nosing(-inch, None), refused);
    }

    /// With a thin nose by the derivative of (R + G − √(R² + G²)) · (1 + v/R + n/G).
    #[test]
    fn the_doubt_of_a_nosing_is_counted() {
        let (rise, going) = (Length::inches(6), Length::inches(8));
        let bare = step(rise, going, Length::inches(1));
        let nosed = bare.with_nosing(Length::inches(1), Some(Length::inches(1)));
        let each = StandardUncertainty::from_length(Length::micrometres(100));
        let ours = nosed.expect("a nosing").clear_opening_uncertainty(each);
        let (r, g, v, n) = (6.0_f64, 8.0_f64, 1.0_f64, 1.0_f64);
        let (base, grown) = (4.0, 1.0 + v / r + n / g);
        let by_rise = (1.0 - 0.6) * grown - base * v / (r * r);
        let by_going = (1.0 - 0.8) * grown - base * n / (g * g);
        let (by_lift, by_nosing) = (base / r, base / g);
        let all = [by_rise, by_going, by_lift, by_nosing];
        let factor = all.iter().map(|d| d * d).sum::<f64>().sqrt();
        let ours = ours.as_length().nanometres_as_float();
        assert!((ours - 100_000.0 * factor).abs() < 100.0, "{ours} {factor}");
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
        let ball = |r, g, v| step(r, g, v).closed_form().map(f64::round).expect("valid");
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

    #[test]
    fn without_a_nosing_three_dimensions_make_the_doubt() {
        // a lift so high that no closed form holds
        let [rise, going, lift] = [190, 100, 400].map(Length::millimetres);
        let clear = |rise, going, lift| {
            let step = StairTriangle::new(rise, going, lift).expect("a step");
            assert!(step.closed_form().is_none());
            step.clear_opening().lower.nanometres_as_float()
        };
        let by = Length::millimetres(2);
        let middle = clear(rise, going, lift);
        let change = |more: f64, less: f64| (more - middle).abs().max((less - middle).abs());
        let changes = [
            change(clear(rise + by, going, lift), clear(rise - by, going, lift)),
            change(clear(rise, going + by, lift), clear(rise, going - by, lift)),
            change(clear(rise, going, lift + by), clear(rise, going, lift - by)),
        ];
        let squares: f64 = changes.iter().map(|change| change * change).sum();
        let step = StairTriangle::new(rise, going, lift).expect("a step");
        let found = step.clear_opening_uncertainty(StandardUncertainty::from_length(by));
        let found = found.as_length().nanometres_as_float();
        let expected = squares.sqrt();
        assert!(
            (found - expected).abs() <= 1e-6 * expected,
            "{found} {expected}"
        );
    }
}
