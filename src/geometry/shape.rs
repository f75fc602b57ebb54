//! Plain shapes and their clear opening in closed form.

use crate::geometry::Cables;
use crate::geometry::Certified;
use crate::geometry::Polygon;
use crate::geometry::RakedBay;
use crate::geometry::TurnedPair;
use crate::geometry::clear_opening;
use crate::geometry::exact::scaled;
use crate::quantities::Length;
use crate::quantities::StandardUncertainty;

/// The shape of an opening.
#[derive(Clone, Debug, PartialEq)]
pub enum Shape {
    /// Between level cables or rods, which spread under a push.
    Cables(Cables),
    /// A round hole.
    Circle {
        /// Its diameter.
        diameter: Length,
    },
    /// An outline by its corners.
    Polygon(Polygon),
    /// Between balusters under a sloping rail.
    Raked(RakedBay),
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
    /// Between two equal turned balusters.
    Turned(TurnedPair),
}

impl Shape {
    /// The clear opening: the diameter of the largest ball that passes.
    ///
    /// # Accuracy
    /// Exact for slot, rectangle and circle; a triangle's is rounded to the
    /// nearest nanometre, and exact where it is a whole number of them; a
    /// polygon's and every other's lies between two bounds ([`clear_opening`]),
    /// rounded outward. Cables have no upper bound, since a push spreads them.
    ///
    /// # Source
    /// Inradius of a right triangle, d = a + b − √(a² + b²): textbook geometry.
    ///
    /// ```
    /// use guardrule::geometry::Shape;
    /// use guardrule::quantities::Length;
    /// let triangle = Shape::Triangle { rise: Length::inches(3), run: Length::inches(4) };
    /// assert_eq!(triangle.clear_opening().exact(), Some(Length::inches(2)));
    /// ```
    #[must_use]
    pub fn clear_opening(&self) -> ClearOpening {
        match self {
            Shape::Cables(cables) => ClearOpening {
                lower: cables.at_rest(),
                upper: None,
            },
            Shape::Circle { diameter } => ClearOpening::of(*diameter),
            Shape::Polygon(outline) => ClearOpening::between(&clear_opening(outline)),
            Shape::Raked(bay) => {
                let clear = bay.clear(StandardUncertainty::NONE);
                ClearOpening::rounded_outward(clear.lower, clear.upper)
            }
            Shape::Rectangle { width, height } => ClearOpening::of(*width.min(height)),
            Shape::Slot { width } => ClearOpening::of(*width),
            Shape::Triangle { rise, run } => ClearOpening::of(inscribed(*rise, *run)),
            Shape::Turned(pair) => match pair.circle() {
                Some(circle) => ClearOpening::between(&circle),
                None => ClearOpening::UNKNOWN,
            },
        }
    }

    /// How sure the clear opening is when every dimension is this sure, by the
    /// first order of the law of propagation (GUM, JCGM 100:2008, 5.1.2).
    ///
    /// Of a polygon every coordinate is, and the answer is the most that it can
    /// be: the circle is held by touching places whose shares add up to 1, none
    /// above one half, so that its diameter moves by √2 of that at most, which
    /// two corners that face each other reach. The same holds of turned balusters:
    /// the distance of the axes, the diameters and the heights each move the circle
    /// by no more than their touching places' share, across or up and down.
    #[must_use]
    pub fn clear_opening_uncertainty(&self, each: StandardUncertainty) -> StandardUncertainty {
        match self {
            Shape::Circle { .. } | Shape::Rectangle { .. } | Shape::Slot { .. } => each,
            Shape::Cables(_) | Shape::Polygon(_) | Shape::Turned(_) => {
                scaled(each, std::f64::consts::SQRT_2)
            }
            Shape::Raked(bay) => bay.uncertainty(each),
            Shape::Triangle { rise, run } => {
                let (a, b) = (rise.nanometres_as_float(), run.nanometres_as_float());
                let slant = (a * a + b * b).sqrt();
                let (da, db) = (1.0 - a / slant, 1.0 - b / slant);
                scaled(each, (da * da + db * db).sqrt())
            }
        }
    }
}

/// A clear opening in whole nanometres: at least the one and at most the other.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ClearOpening {
    /// A ball of this diameter passes.
    pub lower: Length,
    /// No ball of a larger diameter passes; `None` where nothing is known of that.
    pub upper: Option<Length>,
}

impl ClearOpening {
    /// Nothing is known.
    pub(super) const UNKNOWN: ClearOpening = ClearOpening {
        lower: Length::ZERO,
        upper: None,
    };

    /// The diameter, where both bounds are the same.
    #[must_use]
    pub fn exact(self) -> Option<Length> {
        self.upper.filter(|upper| *upper == self.lower)
    }

    pub(super) fn of(diameter: Length) -> ClearOpening {
        ClearOpening {
            lower: diameter,
            upper: Some(diameter),
        }
    }

    pub(super) fn between(ball: &Certified) -> ClearOpening {
        ClearOpening::rounded_outward(ball.lower_mm * 1e6 - 1e-3, ball.upper_mm * 1e6 + 1e-3)
    }

    /// Two bounds in nanometres, to whole ones; products are off by less than the
    /// thousandth that is added where they were made.
    fn rounded_outward(lower: f64, upper: f64) -> ClearOpening {
        ClearOpening {
            lower: Length::from_nanometres_rounded(lower.floor().max(0.0)),
            upper: Some(Length::from_nanometres_rounded(upper.ceil())),
        }
    }
}

/// Diameter of the circle inscribed in a right triangle with these legs.
pub(super) fn inscribed(rise: Length, run: Length) -> Length {
    let (a, b) = (rise.nanometres_as_float(), run.nanometres_as_float());
    Length::from_nanometres_rounded(a + b - (a * a + b * b).sqrt())
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Openings worked by ourselves apart from this code (enumeration with 40 digits in
    /// mpmath 1.3.0, checked with scipy 1.17.1 and GEOS 3.14.1), in inches or
    /// millimetres as given.
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
            let ours = shape.clear_opening().exact().expect("a closed form");
            let given = given * millimetres * 1e6;
            let off = ours.nanometres_as_float() - given;
            assert!(off.abs() <= 0.5 + 1e-3, "{shape:?}: off by {off} nm");
        }
    }
}
