//! A flat rectangular probe against the shapes of openings.

use crate::geometry::ClearOpening;
use crate::geometry::Corner;
use crate::geometry::Fit;
use crate::geometry::Polygon;
use crate::geometry::RakedBay;
use crate::geometry::Risers;
use crate::geometry::Shape;
use crate::geometry::StairTriangle;
use crate::geometry::TurnedPair;
use crate::geometry::admits;
use crate::geometry::turned::ProfileEnds;
use crate::quantities::Length;
use crate::quantities::StandardUncertainty;

/// The face of a rectangular probe; only its face matters, since it is pushed
/// through square to the plane of the opening.
///
/// # Source
/// CPSC Public Playground Safety Handbook, Pub. 325 (2010), appendix B.2.5, read in
/// the text: a template of the small torso, tried in the plane of the opening in any
/// rotation.
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
        let side = |side: Length| (side - smaller_by).millimetres_as_float();
        (side(self.short), side(self.long))
    }
}

impl Shape {
    /// Whether a probe passes, turned and moved as one likes, when every dimension
    /// of the shape is longer by `enlarged` (below zero: shorter).
    ///
    /// Every coordinate of a polygon may be off: there the probe is made smaller,
    /// by √2 of it, as [`Shape::clear_opening_uncertainty`] counts it; and so it is
    /// between turned balusters and in raked bays, by what is in doubt there.
    ///
    /// # Accuracy
    /// Exact for slot, circle and rectangle, and for a triangle unless the probe
    /// just fits along its slant; the others' as [`admits`]. Between turned balusters
    /// it passes if it does with rails at the ends of the profile, and does not if it
    /// does not where the balusters go on. Only balls tell of cables.
    ///
    /// # Source
    /// Rectangle: W. B. Carver 1957, restated by J. E. Wetzel, "Rectangles in
    /// rectangles", 2000 (both from memory; checked against a search). Triangle: a
    /// polygon that fits in a triangle fits with a side along one of its sides, J. M.
    /// Sullivan 1996 (from memory; checked against a search). Circle: the diagonal.
    ///
    /// ```
    /// use guardrule::geometry::{Fit, Probe, Shape};
    /// use guardrule::quantities::Length;
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
                let [a, b, d] = [probe.short, probe.long, of(*diameter)].map(nanometres_of);
                passes(a * a + b * b <= d * d)
            }
            Shape::Polygon(outline) => admits(outline, probe.millimetres(diagonal(enlarged))),
            Shape::Rectangle { width, height } => in_rectangle(probe, of(*width), of(*height)),
            Shape::Slot { width } => passes(probe.short <= of(*width)),
            Shape::Triangle { rise, run } => in_triangle(probe, of(*rise), of(*run)),
            Shape::Raked(bay) => in_raked(probe, bay, enlarged),
            Shape::Turned(pair) => between_turned(probe, pair, enlarged),
            // a push spreads them: what the ball of its short side, or around it, tells
            Shape::Cables(_) => fit_by_balls(probe, self.clear_opening(), diagonal(enlarged)),
        }
    }
}

impl StairTriangle {
    /// Whether a probe passes between the steps and the rail, when rise, going, lift
    /// and nosing are longer by `enlarged` (below zero: shorter).
    ///
    /// The stair is drawn out for as many steps as the probe could span. Where nobody
    /// wrote how thick an overhanging nosing is, the answers without it and with the
    /// thinnest one have to agree. Open risers let through what closed ones do, and
    /// perhaps more.
    #[must_use]
    pub fn admits(self, probe: Probe, enlarged: Length) -> Fit {
        let Some((thick, thin)) = self.enlarged(enlarged) else {
            return Fit::DoesNotPass; // no step is left
        };
        let passes = fit_at_steps(probe, thick);
        if passes != Fit::DoesNotPass {
            return passes;
        }
        let stops = thin == thick || fit_at_steps(probe, thin) == Fit::DoesNotPass;
        match self.risers {
            Risers::Closed if stops => Fit::DoesNotPass,
            Risers::Closed | Risers::Open => Fit::Undecided,
        }
    }
}

/// A bay without a height is long, as a gap is.
fn in_raked(probe: Probe, bay: &RakedBay, enlarged: Length) -> Fit {
    // two standard uncertainties of each dimension are what is added
    let half = Length::from_nanometres(enlarged.magnitude().nanometres() / 2);
    let each = StandardUncertainty::from_length(half);
    let doubt = bay.uncertainty_of_sides(each).doubled();
    let larger = if enlarged < Length::ZERO {
        -doubt
    } else {
        doubt
    };
    match bay.high {
        Some(high) => in_outline(probe, &bay.outline(high), larger),
        None => {
            let by = larger.nanometres_as_float();
            let clear = bay.clear(StandardUncertainty::NONE);
            let short = probe.short.nanometres_as_float();
            if clear.lower + by >= short {
                Fit::Passes(None)
            } else if clear.upper + by < short {
                Fit::DoesNotPass
            } else {
                Fit::Undecided
            }
        }
    }
}

/// The probe goes straight through, so that what it meets is the outline of both
/// balusters against the light, which is their section through both axes.
fn between_turned(probe: Probe, pair: &TurnedPair, enlarged: Length) -> Fit {
    let by = diagonal(enlarged);
    let inside = |ends| in_outline(probe, &pair.outline(ends), by);
    match inside(ProfileEnds::Closed) {
        Fit::Passes(placement) => Fit::Passes(placement),
        // farther out it stands between straight sides, and may be moved back
        Fit::DoesNotPass | Fit::Undecided => {
            match inside(ProfileEnds::GoOn(probe.short + probe.long)) {
                Fit::DoesNotPass => Fit::DoesNotPass,
                Fit::Passes(_) | Fit::Undecided => Fit::Undecided,
            }
        }
    }
}

/// Steps repeat, so that a place for the probe is one with its middle over the middle
/// step, from where it reaches no farther than half of its sides' sum.
fn fit_at_steps(probe: Probe, step: StairTriangle) -> Fit {
    const MOST: i32 = 30;
    let (rise, going, lift) = step.sides();
    if lift == Length::ZERO {
        return if step.overhang == Length::ZERO {
            in_triangle(probe, rise, going)
        } else {
            in_outline(probe, &step.outline_of_steps(0.0), Length::ZERO)
        };
    }
    let reach = (probe.short + probe.long).nanometres() / 2;
    match i32::try_from(reach / going.nanometres() + 2) {
        Ok(beside) if beside <= MOST => {
            let outline = step.outline_of_steps(f64::from(beside));
            in_outline(probe, &outline, Length::ZERO)
        }
        Ok(_) | Err(_) => Fit::Undecided,
    }
}

/// In an outline in nanometres, made wider all over by a length.
fn in_outline(probe: Probe, outline: &[Corner], wider: Length) -> Fit {
    let corner = |corner: &Corner| Corner {
        x_mm: corner.x_mm / 1e6,
        y_mm: corner.y_mm / 1e6,
    };
    match Polygon::new(outline.iter().map(corner).collect()) {
        Ok(outline) => admits(&outline, probe.millimetres(wider)),
        Err(_) => Fit::Undecided, // sides below what an outline can have
    }
}

fn passes(it_does: bool) -> Fit {
    if it_does {
        Fit::Passes(None)
    } else {
        Fit::DoesNotPass
    }
}

fn nanometres_of(length: Length) -> i128 {
    i128::from(length.nanometres())
}

/// A probe holds the ball of its short side, and the ball of its diagonal holds it.
fn fit_by_balls(probe: Probe, clear: ClearOpening, enlarged: Length) -> Fit {
    let [a, b, d] = [probe.short, probe.long, clear.lower + enlarged].map(nanometres_of);
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
    let (a, b) = (
        nanometres_of(width.max(height)),
        nanometres_of(width.min(height)),
    );
    let (p, q) = (nanometres_of(probe.long), nanometres_of(probe.short));
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
    let (r, t) = (nanometres_of(rise), nanometres_of(run));
    let (a, b) = (nanometres_of(probe.short), nanometres_of(probe.long));
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

#[cfg(test)]
mod tests {
    use super::*;

    fn torso() -> Probe {
        // 3 1/2 x 6 1/5 in, of the playground handbook named above: the long side from memory
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
        let at = |lift| step(lift).admits(probe, Length::ZERO);
        assert_eq!(at(Length::ZERO), Fit::DoesNotPass);
        // along the rail: 6.2/12.652 + 3.5 x 12.652/77.5 = 1.0614, so that a triangle
        // larger by that just admits it: a lift of 0.0614 x 7.75 = 0.476 in
        assert_eq!(at(Length::sixty_fourths(30)), Fit::DoesNotPass);
        let passes = matches!(at(Length::sixty_fourths(31)), Fit::Passes(Some(_)));
        assert!(passes);
        let overhung = |thick| {
            let step = step(Length::ZERO).with_nosing(Length::inches(6), thick);
            step.map(|step| step.admits(probe, Length::ZERO))
        };
        assert_eq!(overhung(None), Ok(Fit::Undecided));
        let thin = overhung(Some(Length::sixty_fourths(8)));
        assert!(matches!(thin, Ok(Fit::Passes(Some(_)))), "{thin:?}");
        let thick = overhung(Some(Length::inches(7)));
        assert_eq!(thick, Ok(Fit::DoesNotPass));
    }
}
