//! Plain shapes and their clear opening in closed form.

use crate::measure::Length;
use crate::measure::StandardUncertainty;

/// A corner of a polygon in millimetres, as written and not rounded.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Corner {
    /// Across, in millimetres.
    pub x_mm: f64,
    /// Up, in millimetres.
    pub y_mm: f64,
}

/// An outline of at least three corners with finite coordinates.
///
/// Whether it crosses itself is not looked at here.
#[derive(Clone, Debug, PartialEq)]
pub struct Polygon {
    corners: Vec<Corner>,
}

impl Polygon {
    /// An outline through these corners.
    ///
    /// # Errors
    /// [`ShapeError::TooFewCorners`] below three, [`ShapeError::NotFinite`].
    pub fn new(corners: Vec<Corner>) -> Result<Polygon, ShapeError> {
        if corners.len() < 3 {
            return Err(ShapeError::TooFewCorners {
                count: corners.len(),
            });
        }
        if corners
            .iter()
            .any(|c| !c.x_mm.is_finite() || !c.y_mm.is_finite())
        {
            return Err(ShapeError::NotFinite);
        }
        Ok(Polygon { corners })
    }

    /// The corners in the order they were written.
    #[must_use]
    pub fn corners(&self) -> &[Corner] {
        &self.corners
    }
}

/// Why a shape cannot be.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
#[non_exhaustive]
pub enum ShapeError {
    /// A polygon with fewer than three corners.
    #[error("an outline needs three corners or more, and this has {count}")]
    TooFewCorners {
        /// How many there are.
        count: usize,
    },
    /// A coordinate that is no number.
    #[error("a corner is no finite number")]
    NotFinite,
    /// A side of zero or below.
    #[error("every side must be longer than nothing")]
    NotPositive,
}

/// The shape of an opening.
#[derive(Clone, Debug, PartialEq)]
pub enum Shape {
    /// A round hole.
    Circle {
        /// Its diameter.
        diameter: Length,
    },
    /// An outline by its corners; judged by the geometry of a later floor plan.
    Polygon(Polygon),
    /// A rectangle.
    Rectangle {
        /// One side.
        width: Length,
        /// The other side.
        height: Length,
    },
    /// A gap between two parallel members.
    Slot {
        /// Clear width, square to the members.
        width: Length,
    },
    /// A triangle with a right angle.
    Triangle {
        /// One leg.
        rise: Length,
        /// The other leg.
        run: Length,
    },
}

impl Shape {
    /// The clear opening: the diameter of the largest ball that passes.
    ///
    /// `None` for a polygon, which has no closed form.
    ///
    /// # Accuracy
    /// Exact for slot, rectangle and circle; a triangle's is rounded to the
    /// nearest nanometre, and exact where it is a whole number of them.
    ///
    /// # Source
    /// Inradius of a right triangle, d = a + b − √(a² + b²): textbook geometry,
    /// facts/measurement-and-geometry.md §3.2.
    ///
    /// ```
    /// use guardrule::geometry::Shape;
    /// use guardrule::measure::Length;
    /// let triangle = Shape::Triangle { rise: Length::inches(3), run: Length::inches(4) };
    /// assert_eq!(triangle.clear_opening(), Some(Length::inches(2)));
    /// ```
    #[must_use]
    pub fn clear_opening(&self) -> Option<Length> {
        match self {
            Shape::Circle { diameter } => Some(*diameter),
            Shape::Polygon(_) => None,
            Shape::Rectangle { width, height } => Some(*width.min(height)),
            Shape::Slot { width } => Some(*width),
            Shape::Triangle { rise, run } => Some(inscribed(*rise, *run)),
        }
    }

    /// How sure the clear opening is when every dimension is this sure, by the
    /// first order of the law of propagation (GUM, JCGM 100:2008, 5.1.2).
    #[must_use]
    pub fn clear_opening_uncertainty(&self, each: StandardUncertainty) -> StandardUncertainty {
        match self {
            Shape::Circle { .. }
            | Shape::Polygon(_)
            | Shape::Rectangle { .. }
            | Shape::Slot { .. } => each,
            Shape::Triangle { rise, run } => {
                let (a, b) = (rise.nanometres_as_float(), run.nanometres_as_float());
                let slant = (a * a + b * b).sqrt();
                let (da, db) = (1.0 - a / slant, 1.0 - b / slant);
                scaled(each, (da * da + db * db).sqrt())
            }
        }
    }
}

/// Diameter of the circle inscribed in a right triangle with these legs.
pub(super) fn inscribed(rise: Length, run: Length) -> Length {
    let (a, b) = (rise.nanometres_as_float(), run.nanometres_as_float());
    Length::from_nanometres_rounded(a + b - (a * a + b * b).sqrt())
}

/// An uncertainty times a factor.
pub(super) fn scaled(u: StandardUncertainty, factor: f64) -> StandardUncertainty {
    let size = u.as_length().nanometres_as_float() * factor;
    StandardUncertainty::from_length(Length::from_nanometres_rounded(size))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Worked openings of facts/measurement-and-geometry.md §6.2 (40-digit
    /// enumeration, checked there against a linear program and GEOS), in inches
    /// or millimetres as given; rows 1 to 6.
    #[test]
    fn worked_openings() {
        let in64 = |marks| Length::sixty_fourths(marks);
        let cases: [(Shape, f64, f64); 6] = [
            (
                Shape::Rectangle {
                    width: in64(248),
                    height: in64(32 * 64),
                },
                3.875,
                25.4,
            ),
            (
                Shape::Rectangle {
                    width: in64(256),
                    height: in64(256),
                },
                4.0,
                25.4,
            ),
            (
                Shape::Triangle {
                    rise: in64(192),
                    run: in64(256),
                },
                2.0,
                25.4,
            ),
            (
                Shape::Triangle {
                    rise: in64(496),
                    run: in64(640),
                },
                5.098_419_071_120,
                25.4,
            ),
            (
                Shape::Triangle {
                    rise: in64(448),
                    run: in64(704),
                },
                4.961_595_189_595,
                25.4,
            ),
            (
                Shape::Triangle {
                    rise: Length::millimetres(190),
                    run: Length::millimetres(240),
                },
                123.895_442_699_721,
                1.0,
            ),
        ];
        for (shape, given, millimetres) in cases {
            let ours = shape.clear_opening().expect("a closed form");
            let given = given * millimetres * 1e6;
            let off = ours.nanometres_as_float() - given;
            assert!(off.abs() <= 0.5 + 1e-3, "{shape:?}: off by {off} nm");
        }
    }

    #[test]
    fn an_outline_needs_three_finite_corners() {
        let corner = |x_mm, y_mm| Corner { x_mm, y_mm };
        assert_eq!(
            Polygon::new(vec![corner(0.0, 0.0), corner(1.0, 0.0)]),
            Err(ShapeError::TooFewCorners { count: 2 })
        );
        let bad = vec![corner(0.0, 0.0), corner(f64::NAN, 0.0), corner(1.0, 1.0)];
        assert_eq!(Polygon::new(bad), Err(ShapeError::NotFinite));
    }
}
