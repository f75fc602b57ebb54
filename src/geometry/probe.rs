//! A flat rectangular probe against the shapes of openings.

use crate::geometry::ClearOpening;
use crate::geometry::Corner;
use crate::geometry::Fit;
use crate::geometry::Polygon;
use crate::geometry::Shape;
use crate::geometry::StairTriangle;
use crate::geometry::admits;
use crate::measure::Length;

/// The face of a rectangular probe; only its face matters, since it is pushed
/// through square to the plane of the opening.
///
/// # Source
/// facts/rules-north-america.md §5.1: a template of the small torso, tried in the
/// plane of the opening in any rotation.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Probe {
    short: Length,
    long: Length,
}

impl Probe {
    /// A probe by its two sides, in either order; `None` where one is not longer
    /// than nothing.
    #[must_use]
    pub fn new(one: Length, other: Length) -> Option<Probe> {
        let short = one.min(other);
        (short > Length::ZERO).then_some(Probe {
            short,
            long: one.max(other),
        })
    }

    /// Its shorter side: what decides in an opening that is long in the other direction.
    #[must_use]
    pub const fn short(self) -> Length {
        self.short
    }

    /// Its longer side.
    #[must_use]
    pub const fn long(self) -> Length {
        self.long
    }

    fn millimetres(self, smaller_by: Length) -> (f64, f64) {
        let side = |side: Length| (side - smaller_by).nanometres_as_float() / 1e6;
        (side(self.short), side(self.long))
    }
}

impl Shape {
    /// Whether a probe passes, turned and moved as one likes, when every dimension
    /// of the shape is longer by `enlarged` (below zero: shorter).
    ///
    /// Every coordinate of a polygon may be off: there the probe is made smaller,
    /// by √2 of it, as [`Shape::clear_opening_uncertainty`] counts it.
    ///
    /// # Accuracy
    /// Exact for slot, circle and rectangle, and for a triangle unless the probe
    /// just fits along its slant; a polygon's as [`admits`].
    ///
    /// # Source
    /// Rectangle: W. B. Carver 1957, restated by J. E. Wetzel, "Rectangles in
    /// rectangles", 2000 (both from memory; checked against a search). Triangle: a
    /// polygon that fits in a triangle fits with a side along one of its sides, J. M.
    /// Sullivan 1996 (from memory; checked against a search). Circle: the diagonal.
    ///
    /// ```
    /// use guardrule::geometry::{Fit, Probe, Shape};
    /// use guardrule::measure::Length;
    /// let torso = Probe::new(Length::inches(3), Length::inches(4)).unwrap();
    /// let hole = Shape::Circle { diameter: Length::inches(5) };
    /// assert_eq!(hole.admits(torso, Length::ZERO), Fit::Passes(None));
    /// assert_eq!(hole.admits(torso, Length::from_nanometres(-1)), Fit::DoesNotPass);
    /// ```
    #[must_use]
    pub fn admits(&self, probe: Probe, enlarged: Length) -> Fit {
        let of = |length: Length| (length + enlarged).max(Length::ZERO);
        match self {
            Shape::Circle { diameter } => {
                let [a, b, d] = [probe.short, probe.long, of(*diameter)].map(whole);
                passes(a * a + b * b <= d * d)
            }
            Shape::Polygon(outline) => admits(outline, probe.millimetres(diagonal(enlarged))),
            Shape::Rectangle { width, height } => in_rectangle(probe, of(*width), of(*height)),
            Shape::Slot { width } => passes(probe.short <= of(*width)),
            Shape::Triangle { rise, run } => in_triangle(probe, of(*rise), of(*run)),
            // no gap of theirs is known at every height: what the balls on its short
            // side and around it tell
            Shape::Cables(_) | Shape::Raked(_) | Shape::Turned(_) => {
                by_balls(probe, self.clear_opening(), diagonal(enlarged))
            }
        }
    }
}

impl StairTriangle {
    /// Whether a probe passes between the steps and the rail, when rise, going and
    /// lift are longer by `enlarged` (below zero: shorter).
    ///
    /// The stair is drawn out for as many steps as the probe could span. Where a
    /// nosing overhangs, the answers without it and with the riser taken back by it
    /// all the way up have to agree.
    #[must_use]
    pub fn admits(self, probe: Probe, nosing: Length, enlarged: Length) -> Fit {
        let (rise, going, lift) = self.sides();
        let of = |length: Length| (length + enlarged).max(Length::ZERO);
        let (rise, going) = (of(rise), of(going));
        let lift = if lift > Length::ZERO || enlarged > Length::ZERO {
            of(lift)
        } else {
            Length::ZERO
        };
        if rise == Length::ZERO || going == Length::ZERO {
            return Fit::DoesNotPass;
        }
        let without = at_steps(probe, rise, going, lift);
        if nosing <= Length::ZERO || without != Fit::DoesNotPass {
            return without;
        }
        let back =
            nosing.nanometres_as_float() * rise.nanometres_as_float() / going.nanometres_as_float();
        let further = Length::from_nanometres_rounded(back) + Length::from_nanometres(1);
        match at_steps(probe, rise, going, lift + further) {
            Fit::DoesNotPass => Fit::DoesNotPass,
            Fit::Passes(_) | Fit::Undecided => Fit::Undecided,
        }
    }
}

fn passes(it_does: bool) -> Fit {
    if it_does {
        Fit::Passes(None)
    } else {
        Fit::DoesNotPass
    }
}

fn whole(length: Length) -> i128 {
    i128::from(length.nanometres())
}

/// A probe holds the ball of its short side, and the ball of its diagonal holds it.
fn by_balls(probe: Probe, clear: ClearOpening, enlarged: Length) -> Fit {
    let [a, b, d] = [probe.short, probe.long, clear.lower + enlarged].map(whole);
    let stops = |upper| upper + enlarged < probe.short;
    if clear.upper.is_some_and(stops) {
        Fit::DoesNotPass
    } else if d > 0 && a * a + b * b <= d * d {
        Fit::Passes(None)
    } else {
        Fit::Undecided
    }
}

/// √2 of a length.
fn diagonal(length: Length) -> Length {
    Length::from_nanometres_rounded(length.nanometres_as_float() * std::f64::consts::SQRT_2)
}

/// p × q in a × b, the longer sides first: p ≤ a and q ≤ b, or, turned,
/// ((a + b)/(p + q))² + ((a − b)/(p − q))² ≥ 2.
fn in_rectangle(probe: Probe, width: Length, height: Length) -> Fit {
    let (a, b) = (whole(width.max(height)), whole(width.min(height)));
    let (p, q) = (whole(probe.long), whole(probe.short));
    if q > b {
        return Fit::DoesNotPass;
    }
    if p <= a {
        return Fit::Passes(None);
    }
    let product = |one: i128, other: i128| {
        let product = one.checked_mul(other)?;
        product.checked_mul(product)
    };
    // here p > a ≥ b ≥ q, so that p − q is above zero
    let fits = product(a + b, p - q)
        .zip(product(a - b, p + q))
        .and_then(|(one, other)| one.checked_add(other))
        .zip(product(p + q, p - q).and_then(|both| both.checked_mul(2)))
        .map(|(sum, twice)| sum >= twice);
    fits.map_or(Fit::Undecided, passes)
}

/// A side of the probe along a leg, or along the slant.
fn in_triangle(probe: Probe, rise: Length, run: Length) -> Fit {
    let (r, t) = (whole(rise), whole(run));
    let (a, b) = (whole(probe.short), whole(probe.long));
    if a * r + b * t <= r * t || b * r + a * t <= r * t {
        return Fit::Passes(None);
    }
    let (r, t) = (rise.nanometres_as_float(), run.nanometres_as_float());
    let slant = (r * r + t * t).sqrt();
    let room = r * t * slant;
    let near = 1e-12 * room;
    let sides = [probe.short, probe.long].map(Length::nanometres_as_float);
    let along = |p: f64, q: f64| p * r * t + q * slant * slant - room;
    let least = along(sides[0], sides[1]).min(along(sides[1], sides[0]));
    if least > near {
        Fit::DoesNotPass
    } else if least < -near {
        Fit::Passes(None)
    } else {
        Fit::Undecided
    }
}

fn at_steps(probe: Probe, rise: Length, going: Length, lift: Length) -> Fit {
    if lift <= Length::ZERO {
        return in_triangle(probe, rise, going);
    }
    const MOST: i64 = 60;
    let span = (probe.short + probe.long).nanometres() / going.nanometres() + 3;
    if span > MOST {
        return Fit::Undecided;
    }
    let mut corners = Vec::new();
    let at = |across: i64, up: i64, lift: Length| Corner {
        x_mm: Length::from_nanometres(going.nanometres() * across).nanometres_as_float() / 1e6,
        y_mm: (Length::from_nanometres(rise.nanometres() * up) + lift).nanometres_as_float() / 1e6,
    };
    for step in 0..span {
        corners.push(at(step, step, Length::ZERO));
        corners.push(at(step + 1, step, Length::ZERO));
    }
    corners.push(at(span, span, lift));
    corners.push(at(0, 0, lift));
    match Polygon::new(corners) {
        Ok(outline) => admits(&outline, probe.millimetres(Length::ZERO)),
        Err(_) => Fit::Undecided, // sides below what an outline can have
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn torso() -> Probe {
        // 3 1/2 x 6 1/5 in: facts/rules-north-america.md §5.1
        let long = Length::from_nanometres(157_480_000);
        Probe::new(long, Length::sixty_fourths(224)).expect("sides above zero")
    }

    /// A long, thin probe p x q that only fits turned: b = (2 p q a + (p² − q²)
    /// √(p² + q² − a²)) / (p² + q²), the other form of Carver's condition.
    #[test]
    fn a_turned_probe_needs_what_the_other_form_says() {
        let (p, q) = (160.0, 10.0);
        let probe = Probe::new(Length::millimetres(160), Length::millimetres(10));
        let probe = probe.expect("sides above zero");
        for a in [158.0_f64, 150.0, 140.0, 130.0] {
            let root = (p * p + q * q - a * a).sqrt();
            let b = (2.0 * p * q * a + (p * p - q * q) * root) / (p * p + q * q);
            assert!(b < a, "{b}");
            let at = |b: f64| Shape::Rectangle {
                width: Length::from_nanometres_rounded(b * 1e6),
                height: Length::from_nanometres_rounded(a * 1e6),
            };
            let wide = at(b + 1e-4).admits(probe, Length::ZERO);
            assert_eq!(wide, Fit::Passes(None), "{a} x {b}");
            let narrow = at(b - 1e-4).admits(probe, Length::ZERO);
            assert_eq!(narrow, Fit::DoesNotPass, "{a} x {b}");
        }
    }

    #[test]
    fn what_just_fits_passes() {
        let probe = torso();
        let rectangle = |short: Length| Shape::Rectangle {
            width: short,
            height: Length::from_nanometres(157_480_000),
        };
        let hair = Length::from_nanometres(1);
        let exact = rectangle(Length::sixty_fourths(224));
        assert_eq!(exact.admits(probe, Length::ZERO), Fit::Passes(None));
        assert_eq!(exact.admits(probe, -hair), Fit::DoesNotPass);
        let slot = Shape::Slot {
            width: Length::sixty_fourths(224),
        };
        assert_eq!(slot.admits(probe, Length::ZERO), Fit::Passes(None));
        assert_eq!(slot.admits(probe, -hair), Fit::DoesNotPass);
    }

    #[test]
    fn a_stair_with_a_lifted_rail_is_more_than_its_triangle() {
        let probe = torso();
        let step = |lift| {
            let rise = Length::sixty_fourths(496);
            StairTriangle::new(rise, Length::inches(10), lift).expect("a step")
        };
        let at = |lift| step(lift).admits(probe, Length::ZERO, Length::ZERO);
        assert_eq!(at(Length::ZERO), Fit::DoesNotPass);
        // along the rail: 6.2/12.652 + 3.5 x 12.652/77.5 = 1.0614, so that a triangle
        // larger by that just admits it: a lift of 0.0614 x 7.75 = 0.476 in
        assert_eq!(at(Length::sixty_fourths(30)), Fit::DoesNotPass);
        let passes = matches!(at(Length::sixty_fourths(31)), Fit::Passes(Some(_)));
        assert!(passes);
        let overhung = step(Length::ZERO).admits(probe, Length::inches(6), Length::ZERO);
        assert_eq!(overhung, Fit::Undecided);
    }
}
