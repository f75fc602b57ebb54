//! The largest ball through one shape, as its own answer: diameter, bounds, centre.

use crate::geometry::Certified;
use crate::geometry::Corner;
use crate::geometry::Polygon;
use crate::geometry::Shape;
use crate::geometry::StairTriangle;
use crate::geometry::StairTriangleError;
use crate::geometry::clear_opening;
use crate::geometry::tangents::ROUNDINGS;
use crate::measure::Length;

/// The largest ball that passes through a shape whose sides are exact.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LargestBall {
    /// Where its centre passes; `None` where many places are as good (a slot).
    pub centre: Option<Corner>,
    /// A ball of this diameter passes, in mm.
    pub lower_mm: f64,
    /// No ball of a larger diameter than this passes, in mm.
    pub upper_mm: f64,
    /// The diameter, where it is a whole number of nanometres for certain.
    pub exact: Option<Length>,
}

/// Whether a ball of a given size passes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Passage {
    /// Its size lies between the bounds.
    CannotTell,
    /// It passes; a ball of exactly the clear opening does.
    Passes,
    /// It is stopped.
    Stops,
}

impl LargestBall {
    /// Whether a ball of this diameter passes.
    #[must_use]
    pub fn against(&self, ball: Length) -> Passage {
        if let Some(exact) = self.exact {
            return if ball <= exact {
                Passage::Passes
            } else {
                Passage::Stops
            };
        }
        let size_mm = millimetres(ball);
        let rounding = ROUNDINGS * size_mm;
        if self.lower_mm >= size_mm + rounding {
            Passage::Passes
        } else if self.upper_mm < size_mm - rounding {
            Passage::Stops
        } else {
            Passage::CannotTell
        }
    }

    fn exactly(diameter: Length, centre: Option<Corner>) -> LargestBall {
        LargestBall {
            centre,
            lower_mm: millimetres(diameter),
            upper_mm: millimetres(diameter),
            exact: Some(diameter),
        }
    }

    fn between(ball: &Certified) -> LargestBall {
        LargestBall {
            centre: Some(ball.centre),
            lower_mm: ball.lower_mm,
            upper_mm: ball.upper_mm,
            exact: None,
        }
    }
}

impl Shape {
    /// The largest ball that passes, and where its centre does.
    ///
    /// Corners are counted from the lower left corner of a rectangle, from the
    /// square corner of a triangle (the run across, the rise up), from the middle
    /// of a circle; those of a polygon are as written.
    ///
    /// # Accuracy
    /// As [`clear_opening`]'s, closed forms too; exact where the diameter is.
    #[must_use]
    pub fn largest_ball(&self) -> LargestBall {
        match self {
            Shape::Circle { diameter } => LargestBall::exactly(*diameter, Some(Corner::ORIGIN)),
            Shape::Polygon(outline) => LargestBall::between(&clear_opening(outline)),
            Shape::Rectangle { width, height } => {
                let middle = Corner {
                    x_mm: millimetres(*width) / 2.0,
                    y_mm: millimetres(*height) / 2.0,
                };
                LargestBall::exactly(*width.min(height), Some(middle))
            }
            Shape::Slot { width } => LargestBall::exactly(*width, None),
            Shape::Triangle { rise, run } => right_triangle(*rise, *run, Enlarged::NOT),
        }
    }
}

impl StairTriangle {
    /// The largest ball that passes, and where its centre does: from the corner of
    /// riser and tread, across along the tread and up the riser.
    ///
    /// Where a nosing overhangs by so much, the bounds are the openings without it
    /// and with the riser taken back by it all the way up.
    ///
    /// # Errors
    /// [`StairTriangleError::LiftTooHigh`], as for [`StairTriangle::clear_opening`].
    pub fn largest_ball(self, nosing: Length) -> Result<LargestBall, StairTriangleError> {
        self.clear_opening()?;
        let (rise, going, lift) = self.sides();
        let lifted = Enlarged {
            by: lift.nanometres(),
            of: rise.nanometres(),
        };
        let ball = right_triangle(rise, going, lifted);
        if nosing <= Length::ZERO {
            return Ok(ball);
        }
        let (rise, going) = (rise.nanometres_as_float(), going.nanometres_as_float());
        let more = nosing.nanometres_as_float() / going;
        let before = 1.0 + lift.nanometres_as_float() / rise;
        let upper_mm = ball.upper_mm * ((before + more) / before) * (1.0 + ROUNDINGS);
        Ok(LargestBall {
            upper_mm,
            exact: None,
            ..ball
        })
    }
}

/// How much larger than the triangle itself: by one part of another.
#[derive(Clone, Copy, Debug)]
struct Enlarged {
    by: i64,
    of: i64,
}

impl Enlarged {
    const NOT: Enlarged = Enlarged { by: 0, of: 1 };
}

/// The circle in a right triangle, or in a larger one of the same form. The sides
/// are whole nanometres, so the bounds are found in nanometres.
fn right_triangle(rise: Length, run: Length, enlarged: Enlarged) -> LargestBall {
    let corner = |x_mm, y_mm| Corner { x_mm, y_mm };
    let corners = vec![
        corner(0.0, 0.0),
        corner(run.nanometres_as_float(), 0.0),
        corner(0.0, rise.nanometres_as_float()),
    ];
    let Ok(outline) = Polygon::new(corners) else {
        return LargestBall::exactly(Length::ZERO, None); // a side of nothing
    };
    let ball = clear_opening(&outline);
    let of = Length::from_nanometres(enlarged.of).nanometres_as_float();
    let by = Length::from_nanometres(enlarged.by).nanometres_as_float();
    let scale = (1.0 + by / of) / 1e6;
    let exact = exactly_inscribed(rise, run, enlarged);
    let (lower_mm, upper_mm) = match exact {
        Some(exact) => (millimetres(exact), millimetres(exact)),
        None => (
            ball.lower_mm * scale * (1.0 - ROUNDINGS),
            ball.upper_mm * scale * (1.0 + ROUNDINGS),
        ),
    };
    LargestBall {
        centre: Some(corner(lower_mm / 2.0, lower_mm / 2.0)),
        lower_mm,
        upper_mm,
        exact,
    }
}

/// a + b − √(a² + b²), enlarged, where it is a whole number of nanometres.
fn exactly_inscribed(rise: Length, run: Length, enlarged: Enlarged) -> Option<Length> {
    let (a, b) = (i128::from(rise.nanometres()), i128::from(run.nanometres()));
    let square = a * a + b * b;
    let slant = square.isqrt();
    if slant * slant != square {
        return None;
    }
    let (by, of) = (i128::from(enlarged.by), i128::from(enlarged.of));
    let product = (a + b - slant).checked_mul(of + by)?;
    let whole = (product % of == 0).then_some(product / of)?;
    i64::try_from(whole).ok().map(Length::from_nanometres)
}

/// The nearest float of a length in mm.
fn millimetres(length: Length) -> f64 {
    length.nanometres_as_float() / 1e6
}

#[cfg(test)]
mod tests {
    use super::*;

    fn triangle(rise: Length, run: Length) -> LargestBall {
        Shape::Triangle { rise, run }.largest_ball()
    }

    #[test]
    fn the_three_four_five_triangle_is_exact() {
        let ball = triangle(Length::inches(3), Length::inches(4));
        assert_eq!(ball.exact, Some(Length::inches(2)));
        assert_eq!(ball.against(Length::inches(2)), Passage::Passes);
        let hair = Length::from_nanometres(1);
        assert_eq!(ball.against(Length::inches(2) + hair), Passage::Stops);
    }

    /// 5.098419071120 in: facts/measurement-and-geometry.md §6.2, row 4.
    #[test]
    fn the_usual_step_lies_between_its_bounds() {
        let ball = triangle(Length::sixty_fourths(496), Length::inches(10));
        let given = 5.098_419_071_120 * 25.4;
        assert_eq!(ball.exact, None);
        assert!((ball.lower_mm - given).abs() < 1e-10 && ball.lower_mm < ball.upper_mm);
        assert!(ball.upper_mm - ball.lower_mm < 1e-12 * given);
    }

    /// A 6 in ball passes once the rail stands more than 1.370474 in off the nosing
    /// line: facts/measurement-and-geometry.md §3.3.
    #[test]
    fn the_lift_at_which_a_six_inch_ball_passes() {
        let at = |nanometres| {
            let lift = Length::from_nanometres(nanometres);
            StairTriangle::new(Length::sixty_fourths(496), Length::inches(10), lift)
                .and_then(|step| step.largest_ball(Length::ZERO))
                .map(|ball| ball.against(Length::inches(6)))
        };
        assert_eq!(at(34_810_000), Ok(Passage::Stops)); // 1.370473 in
        assert_eq!(at(34_810_100), Ok(Passage::Passes)); // 1.370476 in
    }

    #[test]
    fn a_nosing_leaves_a_ball_between_undecided() {
        let step =
            StairTriangle::new(Length::inches(3), Length::inches(4), Length::ZERO).expect("a step");
        let ball = step.largest_ball(Length::inches(1)).expect("closed form");
        assert_eq!(ball.against(Length::sixty_fourths(127)), Passage::Passes);
        assert_eq!(
            ball.against(Length::sixty_fourths(144)),
            Passage::CannotTell
        );
        assert_eq!(ball.against(Length::inches(3)), Passage::Stops);
    }
}
