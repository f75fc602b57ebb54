//! The outline between a flight of steps and the bottom rail of its guard.

use crate::geometry::Certified;
use crate::geometry::Corner;
use crate::geometry::StairTriangle;
use crate::geometry::exact::certified;
use crate::geometry::exact::nanometre_corner;
use crate::quantities::Length;

/// No nosing is thinner.
const THINNEST: Length = Length::from_nanometres(1);

/// Steps to either side beyond which a rail stands so high that its distance from
/// the noses is the answer, near enough.
const FARTHEST_STEP: f64 = 32.0;

impl StairTriangle {
    /// The largest circle with closed risers, between two bounds, whatever it touches;
    /// counted from where tread and riser meet.
    pub(super) fn circle(self) -> Option<Certified> {
        let (thick, thin) = self.with_any_nosing();
        let mut lower = thick.circle_at_one_step()?;
        if thin != thick {
            lower.upper_mm = thin.circle_at_one_step()?.upper_mm;
        }
        Some(lower)
    }

    /// Where nobody wrote how thick an overhanging nosing is, the same without it and
    /// with the thinnest: the hole without it is a part of what it is with any.
    fn with_any_nosing(self) -> (StairTriangle, StairTriangle) {
        if self.thickness.is_some() || self.overhang == Length::ZERO {
            return (self, self);
        }
        let without = StairTriangle {
            overhang: Length::ZERO,
            ..self
        };
        let thinnest = StairTriangle {
            thickness: Some(THINNEST),
            ..self
        };
        (without, thinnest)
    }

    /// The least and the largest that the hole can be when each of its dimensions is
    /// longer by so much, and a nosing that much thinner; `None` where no step is left.
    pub(super) fn enlarged(self, by: Length) -> Option<(StairTriangle, StairTriangle)> {
        let (rise, going) = (self.rise + by, self.going + by);
        if rise <= THINNEST || going <= Length::ZERO {
            return None;
        }
        let lift = (self.lift + by).max(Length::ZERO);
        let overhang = if self.overhang == Length::ZERO {
            Length::ZERO
        } else {
            (self.overhang + by).min(going - THINNEST).max(Length::ZERO)
        };
        let thinner = |thick: Length| (thick - by).min(rise - THINNEST).max(THINNEST);
        let step = StairTriangle {
            rise,
            going,
            lift,
            overhang,
            thickness: self.thickness.map(thinner),
            ..self
        };
        Some(step.with_any_nosing())
    }

    pub(super) fn circle_at_one_step(self) -> Option<Certified> {
        match self.outline() {
            Some(corners) => {
                let circle = certified(corners)?;
                let centre = self.moved_to_middle_step(circle.centre);
                Some(Certified { centre, ..circle })
            }
            None => Some(self.circle_under_high_rail()),
        }
    }

    /// The same place over the middle step, from where its tread and riser meet.
    fn moved_to_middle_step(self, centre: Corner) -> Corner {
        let (rise, going, lift) = self.floats();
        let steps = if lift > 0.0 {
            (centre.x_mm * 1e6 / going).floor()
        } else {
            0.0
        };
        let overhang = self.overhang.nanometres_as_float();
        Corner {
            x_mm: centre.x_mm + (overhang - steps * going) / 1e6,
            y_mm: centre.y_mm + steps * rise / 1e6,
        }
    }

    /// The opening as an outline in nanometres, counted from below the nose of the
    /// step above, on the tread: exact, since the rail passes through whole
    /// nanometres above each nose. `None` where it would take too many steps.
    ///
    /// With the rail on the noses, the step alone. Else so many steps to either side
    /// that no circle about the middle one reaches the ends: the opening lies between
    /// the rail and the parallel line through the corners of treads and risers, and
    /// no circle is wider than the distance W of the two. Steps repeat, so that a
    /// largest circle of the endless opening has its centre over the middle going,
    /// and reaches no farther than W/2 beyond it; and the outline is a part of that
    /// opening. So both have the same largest circle.
    fn outline(self) -> Option<Vec<Corner>> {
        let (rise, going, lift) = self.floats();
        if self.lift == Length::ZERO {
            return Some(self.outline_of_steps(0.0));
        }
        let slant = (rise * rise + going * going).sqrt();
        let overhang = self.overhang.nanometres_as_float();
        let wide = (going * (rise + lift) + rise * overhang) / slant;
        // a step more than needed takes care of rounding
        let steps = (wide / (2.0 * going)).ceil() + 1.0;
        (steps <= FARTHEST_STEP).then(|| self.outline_of_steps(steps))
    }

    /// The same with a step to either side, or as many as a high rail takes.
    pub(super) fn outline_to_draw(self) -> Vec<Corner> {
        if self.lift == Length::ZERO {
            return self.outline_of_steps(0.0);
        }
        let (_, going, lift) = self.floats();
        let steps = (lift / (2.0 * going)).ceil().clamp(1.0, FARTHEST_STEP);
        self.outline_of_steps(steps)
    }

    /// With so many steps to either side of the middle one.
    pub(super) fn outline_of_steps(self, beside: f64) -> Vec<Corner> {
        let (rise, going, lift) = self.floats();
        let overhang = self.overhang.nanometres_as_float();
        let thickness = self.thickness.unwrap_or(THINNEST).nanometres_as_float();
        let mut corners = vec![nanometre_corner((beside + 1.0) * going, -beside * rise)];
        let mut step = -beside;
        while step <= beside {
            let (nose, tread) = (-step * going, step * rise);
            let above = tread + rise;
            corners.push(nanometre_corner(nose - overhang, tread));
            if overhang > 0.0 {
                corners.push(nanometre_corner(nose - overhang, above - thickness));
                corners.push(nanometre_corner(nose, above - thickness));
            }
            corners.push(nanometre_corner(nose, above));
            step += 1.0;
        }
        if lift > 0.0 {
            let rail = |x: f64, y: f64| nanometre_corner(x * going, y * rise + lift);
            corners.push(rail(-beside, beside + 1.0));
            corners.push(rail(beside + 1.0, -beside));
        }
        corners
    }

    /// With a rail far above the steps: a circle between it and the noses fits, and
    /// none is wider than down to the corners.
    fn circle_under_high_rail(self) -> Certified {
        let (rise, going, lift) = self.floats();
        let slant = (rise * rise + going * going).sqrt();
        let overhang = self.overhang.nanometres_as_float();
        let (high, wide) = (going * lift / slant, rise * overhang / slant);
        let deep = going * rise / slant + wide;
        let middle = |by: f64| (by * high / (2.0 * slant)) / 1e6;
        Certified {
            centre: Corner {
                x_mm: middle(rise),
                y_mm: rise / 1e6 + middle(going),
            },
            lower_mm: high / 1e6 * (1.0 - 1e-12),
            upper_mm: (high + deep) / 1e6 * (1.0 + 1e-12),
        }
    }
}
