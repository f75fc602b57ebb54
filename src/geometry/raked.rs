//! The opening between two balusters under a sloping rail.

use uom::si::angle::radian;

use crate::geometry::Corner;
use crate::geometry::exact::nanometre_corner;
use crate::geometry::exact::scaled;
use crate::geometry::tangents::ROUNDINGS;
use crate::quantities::Angle;
use crate::quantities::Length;
use crate::quantities::StandardUncertainty;

/// How the tape lay across the gap.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Across {
    /// Along the rail.
    Along,
    /// Level.
    Level,
}

/// How the balusters stand.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Balusters {
    /// Upright, whatever the rail does.
    Plumb,
    /// Square to the rail.
    Square,
}

/// How steep the rails are.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Rake {
    /// As an angle from the level, and the step to which it was read.
    Angle(Angle, Angle),
    /// As the rise and the going of a step.
    Step {
        /// Plumb.
        rise: Length,
        /// Level.
        going: Length,
    },
}

/// A gap between balusters in a raked bay, and how high the bay is, plumb, where
/// its rails come near enough to matter.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RakedBay {
    /// Clear between the faces, as the tape lay.
    pub gap: Length,
    /// How the tape lay.
    pub across: Across,
    /// How the balusters stand.
    pub balusters: Balusters,
    /// The slope of both rails.
    pub rake: Rake,
    /// Plumb between the rails, where written.
    pub high: Option<Length>,
}

/// A length in nanometres between two bounds, and how sure it is.
#[derive(Clone, Copy, Debug)]
pub(super) struct Between {
    pub(super) lower: f64,
    pub(super) upper: f64,
    uncertainty: StandardUncertainty,
}

impl RakedBay {
    /// The clear opening in nanometres: the nearer pair of faces.
    pub(super) fn clear(&self, each: StandardUncertainty) -> Between {
        let (gap, rails) = self.strips(each);
        match rails {
            Some(rails) => gap.smaller_of(rails),
            None => gap,
        }
    }

    /// How far the balusters stand apart, square to them, and the rails, square to
    /// those, in nanometres.
    ///
    /// Upright balusters are as far apart as a level tape says, and square ones as
    /// one along the rail says; the other reading is longer by 1/cos of the slope.
    /// The rails lie high · cos of the slope apart.
    ///
    /// # Source
    /// Trigonometry: a gap of w between plumb bars reads w/cos θ along the rail, and one
    /// between bars square to the rail reads w/cos θ on the level.
    pub(super) fn strips(&self, each: StandardUncertainty) -> (Between, Option<Between>) {
        let gap = match (self.across, self.balusters) {
            (Across::Along, Balusters::Plumb) | (Across::Level, Balusters::Square) => {
                self.rake.shortened(self.gap, each)
            }
            (Across::Along, Balusters::Square) | (Across::Level, Balusters::Plumb) => {
                let size = self.gap.nanometres_as_float();
                Between {
                    lower: size,
                    upper: size,
                    uncertainty: each,
                }
            }
        };
        (gap, self.high.map(|high| self.rake.shortened(high, each)))
    }

    /// The bay between its four faces when its rails stand so far apart, plumb; in
    /// nanometres, to rounding: from the foot of the left baluster along the lower
    /// rail, and up.
    pub(super) fn outline(&self, high: Length) -> [Corner; 4] {
        let high = high.nanometres_as_float();
        let cosine = self.rake.cosine();
        let sine = (1.0 - cosine * cosine).max(0.0).sqrt();
        let (gap, _) = self.strips(StandardUncertainty::NONE);
        let (level, up) = match self.balusters {
            Balusters::Plumb => (gap.lower, (0.0, high)),
            // rails that far apart, plumb, are nearer square to them
            Balusters::Square => {
                let up = (-high * cosine * sine, high * cosine * cosine);
                (gap.lower * cosine, up)
            }
        };
        let foot = (level, level * sine / cosine);
        [
            Corner::ORIGIN,
            nanometre_corner(foot.0, foot.1),
            nanometre_corner(foot.0 + up.0, foot.1 + up.1),
            nanometre_corner(up.0, up.1),
        ]
    }

    /// How sure the clear opening is when every dimension is this sure, and an angle
    /// to half a step of its reading (GUM, JCGM 100:2008, 5.1.2 and 4.3.7).
    pub(super) fn uncertainty(&self, each: StandardUncertainty) -> StandardUncertainty {
        self.clear(each).uncertainty
    }

    /// The same of whichever pair of faces is the less sure, and of how far the slope
    /// slides the one baluster along the other.
    pub(super) fn uncertainty_of_sides(&self, each: StandardUncertainty) -> StandardUncertainty {
        let (gap, rails) = self.strips(each);
        let of_rails = rails.map_or(StandardUncertainty::NONE, |rails| rails.uncertainty);
        let slid = gap.upper * self.rake.slope_doubt(each);
        let across = gap.uncertainty.max(of_rails).as_length();
        let whole = libm::hypot(across.nanometres_as_float(), slid);
        StandardUncertainty::from_length(Length::from_nanometres_rounded(whole))
    }
}

impl Rake {
    /// The cosine of the slope.
    pub(super) fn cosine(&self) -> f64 {
        match self {
            Rake::Angle(angle, _) => libm::cos(angle.get::<radian>()),
            Rake::Step { rise, going } => {
                let (r, g) = (rise.nanometres_as_float(), going.nanometres_as_float());
                g / (r * r + g * g).sqrt()
            }
        }
    }

    /// How sure the slope is, in radians: by rise and going, or by half a step of an
    /// angle's reading.
    fn slope_doubt(&self, each: StandardUncertainty) -> f64 {
        let u = each.as_length().nanometres_as_float();
        match self {
            Rake::Angle(_, step) if u > 0.0 => step.get::<radian>() / 12.0_f64.sqrt(),
            Rake::Angle(..) => 0.0,
            // by rise G/h², by going R/h²
            Rake::Step { rise, going } => {
                u / libm::hypot(rise.nanometres_as_float(), going.nanometres_as_float())
            }
        }
    }

    /// A length times the cosine of the slope.
    fn shortened(&self, length: Length, each: StandardUncertainty) -> Between {
        let (size, cosine) = (length.nanometres_as_float(), self.cosine());
        let u = each.as_length().nanometres_as_float();
        let by_slope = size * (1.0 - cosine * cosine).max(0.0).sqrt() * self.slope_doubt(each);
        let whole = u * u * cosine * cosine + by_slope * by_slope;
        // an angle near the plumb loses some digits of its cosine
        let room = 4.0 * ROUNDINGS;
        Between {
            lower: size * cosine * (1.0 - room),
            upper: size * cosine * (1.0 + room),
            uncertainty: if u > 0.0 {
                scaled(each, whole.sqrt() / u)
            } else {
                StandardUncertainty::NONE
            },
        }
    }
}

impl Between {
    /// The smaller of both. Where they lie so near each other that the doubt may turn
    /// them round, the larger doubt counts.
    fn smaller_of(self, other: Between) -> Between {
        let doubt = |one: &Between| one.uncertainty.doubled().nanometres_as_float();
        let (less, more) = if other.lower < self.lower {
            (other, self)
        } else {
            (self, other)
        };
        let near = more.lower - less.upper <= doubt(&less) + doubt(&more);
        Between {
            lower: less.lower,
            upper: less.upper.min(more.upper),
            uncertainty: if near {
                less.uncertainty.max(more.uncertainty)
            } else {
                less.uncertainty
            },
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use uom::si::angle::degree;

    const STEP: Rake = Rake::Step {
        rise: Length::sixty_fourths(496),
        going: Length::inches(10),
    };

    fn bay(gap: Length, across: Across, balusters: Balusters) -> RakedBay {
        RakedBay {
            gap,
            across,
            balusters,
            rake: STEP,
            high: None,
        }
    }

    fn inches(bay: &RakedBay) -> f64 {
        let clear = bay.clear(StandardUncertainty::NONE);
        assert!(clear.lower <= clear.upper);
        clear.lower / 25.4e6
    }

    /// At 7 3/4 : 10 a gap of 4 in reads 5.0606 in along the rail, 4 3/8 in reads
    /// 5.5351 in: w/cos θ, worked by hand to four digits.
    #[test]
    fn a_tape_along_the_rail_reads_too_much() {
        for (along, clear) in [(5.0606, 4.0), (5.5351, 4.375)] {
            let along = Length::from_nanometres_rounded(along * 25.4e6);
            let ours = inches(&bay(along, Across::Along, Balusters::Plumb));
            assert!((ours - clear).abs() < 0.00005, "{ours}");
            // square to the rake, a level tape is the one that reads too much
            let ours = inches(&bay(along, Across::Level, Balusters::Square));
            assert!((ours - clear).abs() < 0.00005, "{ours}");
        }
    }

    /// A bay of plumb bars 3.9 in apart and a raked panel 4.2 in clear, as enumerated by
    /// ourselves with 40 digits (mpmath 1.3.0) and checked with scipy and GEOS.
    #[test]
    fn the_other_tape_reads_the_opening_itself() {
        let tall = RakedBay {
            high: Some(Length::inches(30)),
            ..bay(Length::micrometres(99_060), Across::Level, Balusters::Plumb)
        };
        assert!((inches(&tall) - 3.9).abs() < 1e-12);
        let square = bay(
            Length::micrometres(106_680),
            Across::Along,
            Balusters::Square,
        );
        assert!((inches(&square) - 4.2).abs() < 1e-12);
    }

    /// A bay 4 in high, plumb, lets no more than 4 · 10/12.6516 in through.
    #[test]
    fn rails_close_together_govern() {
        let low = RakedBay {
            high: Some(Length::inches(4)),
            ..bay(Length::inches(4), Across::Level, Balusters::Plumb)
        };
        assert!((inches(&low) - 40.0 / 12.651_581).abs() < 1e-6);
    }

    #[test]
    fn doubt_carries_through_as_differences_say() {
        let each = StandardUncertainty::from_length(Length::micrometres(800));
        let at = |gap: i64, rise: i64, going: i64| {
            let bay = RakedBay {
                rake: Rake::Step {
                    rise: Length::from_nanometres(rise),
                    going: Length::from_nanometres(going),
                },
                ..bay(
                    Length::from_nanometres(gap),
                    Across::Along,
                    Balusters::Plumb,
                )
            };
            bay.clear(each)
        };
        let (gap, rise, going, h) = (114_300_000, 196_850_000, 254_000_000, 10_000);
        let by = [
            at(gap + h, rise, going).lower - at(gap - h, rise, going).lower,
            at(gap, rise + h, going).lower - at(gap, rise - h, going).lower,
            at(gap, rise, going + h).lower - at(gap, rise, going - h).lower,
        ];
        let factor = by.iter().map(|d| d * d).sum::<f64>().sqrt() / 20_000.0;
        let ours = at(gap, rise, going)
            .uncertainty
            .as_length()
            .nanometres_as_float();
        assert!((ours - factor * 800_000.0).abs() < 50.0, "{ours}");
    }

    /// An angle read to a degree is off by 1/√12 of one as a standard uncertainty.
    #[test]
    fn an_angle_adds_its_own_doubt() {
        let each = StandardUncertainty::from_length(Length::millimetres(1));
        let rake = Rake::Angle(Angle::new::<degree>(37.0), Angle::new::<degree>(1.0));
        let bay = RakedBay {
            rake,
            ..bay(Length::millimetres(120), Across::Along, Balusters::Plumb)
        };
        let by_angle = 120.0 * libm::sin(0.645_772) * 0.017_453_29 / 12.0_f64.sqrt();
        let whole = (0.798_636 * 0.798_636 + by_angle * by_angle).sqrt();
        let ours = bay.uncertainty(each).as_length().millimetres_as_float();
        assert!((ours - whole).abs() < 1e-4, "{ours} for {whole}");
        let exact = bay.uncertainty(StandardUncertainty::NONE);
        assert_eq!(exact.as_length(), Length::ZERO);
    }
}
