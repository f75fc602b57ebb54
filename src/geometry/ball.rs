//! The largest ball through one shape, as its own answer: diameter, bounds, centre.

use crate::geometry::Certified;
use crate::geometry::Corner;
use crate::geometry::Polygon;
use crate::geometry::Risers;
use crate::geometry::Shape;
use crate::geometry::StairTriangle;
use crate::geometry::clear_opening;
use crate::geometry::tangents::ROUNDINGS;
use crate::quantities::Length;
use crate::quantities::StandardUncertainty;

/// The largest ball that passes through a shape whose sides are exact.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LargestBall {
    /// Where its centre passes; `None` where many places are as good (a slot).
    pub centre: Option<Corner>,
    /// A ball of this diameter passes, in mm.
    pub lower_mm: f64,
    /// No ball of a larger diameter than this passes, in mm; `None` where the shape
    /// bounds it from below alone.
    pub upper_mm: Option<f64>,
    /// The lower bound, where it is a whole number of nanometres for certain; the
    /// diameter itself, unless there is no upper bound.
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
            } else if self.upper_mm.is_some() {
                Passage::Stops
            } else {
                Passage::CannotTell
            };
        }
        let size_mm = ball.millimetres_as_float();
        let rounding = ROUNDINGS * size_mm;
        if self.lower_mm >= size_mm + rounding {
            Passage::Passes
        } else if self
            .upper_mm
            .is_some_and(|upper| upper < size_mm - rounding)
        {
            Passage::Stops
        } else {
            Passage::CannotTell
        }
    }

    fn exactly(diameter: Length, centre: Option<Corner>) -> LargestBall {
        LargestBall {
            centre,
            lower_mm: diameter.millimetres_as_float(),
            upper_mm: Some(diameter.millimetres_as_float()),
            exact: Some(diameter),
        }
    }

    /// The same, if it is not known exactly.
    fn or_exactly(self, exact: Option<Length>) -> LargestBall {
        exact.map_or(self, |exact| LargestBall::exactly(exact, self.centre))
    }

    /// A ball of this size passes, and perhaps a larger one.
    fn at_least(self) -> LargestBall {
        LargestBall {
            upper_mm: None,
            ..self
        }
    }

    const UNKNOWN: LargestBall = LargestBall {
        centre: None,
        lower_mm: 0.0,
        upper_mm: None,
        exact: None,
    };

    fn between(ball: &Certified) -> LargestBall {
        LargestBall {
            centre: Some(ball.centre),
            lower_mm: ball.lower_mm,
            upper_mm: Some(ball.upper_mm),
            exact: None,
        }
    }
}

impl Shape {
    /// The largest ball that passes, and where its centre does.
    ///
    /// Corners are counted from the lower left corner of a rectangle, from the
    /// square corner of a triangle (the run across, the rise up), from the middle
    /// of a circle, from the left axis of turned balusters at their height 0; those
    /// of a polygon are as written.
    ///
    /// # Accuracy
    /// As [`clear_opening`]'s, closed forms too; exact where the diameter is.
    #[must_use]
    pub fn largest_ball(&self) -> LargestBall {
        match self {
            Shape::Cables(cables) => LargestBall::exactly(cables.at_rest(), None).at_least(),
            Shape::Circle { diameter } => LargestBall::exactly(*diameter, Some(Corner::ORIGIN)),
            Shape::Polygon(outline) => LargestBall::between(&clear_opening(outline)),
            Shape::Raked(bay) => {
                let clear = bay.clear(StandardUncertainty::NONE);
                let exact = self.clear_opening().exact();
                LargestBall {
                    centre: None,
                    lower_mm: clear.lower / 1e6 * (1.0 - ROUNDINGS),
                    upper_mm: Some(clear.upper / 1e6 * (1.0 + ROUNDINGS)),
                    exact: None,
                }
                .or_exactly(exact)
            }
            Shape::Rectangle { width, height } => {
                let middle = Corner {
                    x_mm: width.millimetres_as_float() / 2.0,
                    y_mm: height.millimetres_as_float() / 2.0,
                };
                LargestBall::exactly(*width.min(height), Some(middle))
            }
            Shape::Slot { width } => LargestBall::exactly(*width, None),
            Shape::Triangle { rise, run } => right_triangle(*rise, *run, Enlarged::NOT),
            Shape::Turned(pair) => match pair.circle() {
                Some(circle) => LargestBall::between(&circle),
                None => LargestBall::UNKNOWN,
            },
        }
    }
}

impl StairTriangle {
    /// The largest ball that passes, and where its centre does: from the corner of
    /// riser and tread, across along the tread and up the riser.
    ///
    /// The bounds are those of [`StairTriangle::clear_opening`], not rounded.
    #[must_use]
    pub fn largest_ball(self) -> LargestBall {
        let (rise, going, lift) = self.sides();
        let closed = if self.closed_form().is_some() {
            let lifted = Enlarged {
                by: lift.nanometres(),
                of: rise.nanometres(),
            };
            right_triangle(rise, going, lifted)
        } else {
            match self.circle() {
                Some(circle) => LargestBall::between(&circle),
                None => LargestBall::UNKNOWN,
            }
        };
        match self.risers {
            Risers::Closed => closed,
            Risers::Open => closed.at_least(),
        }
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
        Some(exact) => (exact.millimetres_as_float(), exact.millimetres_as_float()),
        None => (
            ball.lower_mm * scale * (1.0 - ROUNDINGS),
            ball.upper_mm * scale * (1.0 + ROUNDINGS),
        ),
    };
    LargestBall {
        centre: Some(corner(lower_mm / 2.0, lower_mm / 2.0)),
        lower_mm,
        upper_mm: Some(upper_mm),
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

    /// 5.098419071120 in: a + b − c, and our own enumeration with 40 digits (mpmath 1.3.0).
    #[test]
    fn the_usual_step_lies_between_its_bounds() {
        let ball = triangle(Length::sixty_fourths(496), Length::inches(10));
        let given = 5.098_419_071_120 * 25.4;
        assert_eq!(ball.exact, None);
        let upper_mm = ball.upper_mm.expect("bounded");
        assert!((ball.lower_mm - given).abs() < 1e-10 && ball.lower_mm < upper_mm);
        assert!(upper_mm - ball.lower_mm < 1e-12 * given);
    }

    /// A 6 in ball passes once the rail stands more than 1.370474 in off the nosing
    /// line: solved for the lift from the closed form, apart from this code.
    #[test]
    fn the_lift_at_which_a_six_inch_ball_passes() {
        let at = |nanometres| {
            let lift = Length::from_nanometres(nanometres);
            StairTriangle::new(Length::sixty_fourths(496), Length::inches(10), lift)
                .map(|step| step.largest_ball().against(Length::inches(6)))
        };
        assert_eq!(at(34_810_000), Ok(Passage::Stops)); // 1.370473 in
        assert_eq!(at(34_810_100), Ok(Passage::Passes)); // 1.370476 in
    }

    #[test]
    fn a_nosing_of_unknown_thickness_leaves_a_ball_between_undecided() {
        let step = StairTriangle::new(Length::inches(3), Length::inches(4), Length::ZERO)
            .and_then(|step| step.with_nosing(Length::inches(1), None));
        let ball = step.expect("a step").largest_ball();
        assert_eq!(ball.against(Length::sixty_fourths(127)), Passage::Passes);
        assert_eq!(
            ball.against(Length::sixty_fourths(144)),
            Passage::CannotTell
        );
        assert_eq!(ball.against(Length::inches(3)), Passage::Stops);
    }

    #[test]
    fn what_goes_on_stops_no_ball() {
        let step = StairTriangle::new(Length::inches(3), Length::inches(4), Length::ZERO);
        let open = step
            .expect("a step")
            .with_risers(Risers::Open)
            .largest_ball();
        assert_eq!(open.against(Length::inches(2)), Passage::Passes);
        assert_eq!(open.against(Length::feet(9)), Passage::CannotTell);
    }
}
