//! Cross-sections: area, second moment, elastic and plastic modulus, for a load
//! in a stated direction.
//!
//! Sizes named `along` run in the direction of the load, those named `across`
//! at right angles to it: a board lying flat under a vertical load has its
//! thickness along.

use std::f64::consts::PI;

use crate::quantities::Area;
use crate::quantities::Distance;
use crate::quantities::SecondMoment;
use crate::quantities::SectionModulus;
use crate::statics::basis::Provenance;
use crate::statics::worked::Worked;

const CLOSED_FORM: Provenance = Provenance::computed("closed forms of plane sections");

/// The shape of a cross-section; outside sizes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Profile {
    /// A solid rectangle.
    Rectangle {
        /// At right angles to the load.
        across: Distance,
        /// In the direction of the load.
        along: Distance,
    },
    /// A solid round bar.
    Round {
        /// Its diameter.
        diameter: Distance,
    },
    /// A round tube or pipe.
    RoundTube {
        /// Outside diameter.
        outside: Distance,
        /// Wall thickness.
        wall: Distance,
    },
    /// A rectangular tube.
    RectangularTube {
        /// At right angles to the load.
        across: Distance,
        /// In the direction of the load.
        along: Distance,
        /// Wall thickness.
        wall: Distance,
        /// Outside radius of the corners; 0 for the sharp corners of an extrusion.
        corner: Distance,
    },
}

/// What a cross-section is worth in bending and shear.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Section {
    /// A
    pub area: Area,
    /// I
    pub second_moment: SecondMoment,
    /// S, to first yield
    pub elastic: SectionModulus,
    /// Z, fully plastic
    pub plastic: SectionModulus,
}

/// Why a profile has no section.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum NoSection {
    /// A size is zero, negative or no number.
    #[error("a size of the section is not above 0")]
    NoSize,
    /// The wall is half the outside size or more.
    #[error("the wall is half the outside size or more, so nothing is hollow")]
    WallTooThick,
    /// The corner radius is more than half the smaller side.
    #[error("the corner radius is more than half the smaller side")]
    CornerTooRound,
}

impl Profile {
    /// The part left by a notch, for a load across the notch.
    ///
    /// # Errors
    /// A profile other than a solid rectangle, or nothing left.
    pub fn notched(self, left: Distance) -> Result<Profile, NoSection> {
        match self {
            Profile::Rectangle { across, along } if left <= along => Ok(Profile::Rectangle {
                across,
                along: left,
            }),
            Profile::Rectangle { .. }
            | Profile::Round { .. }
            | Profile::RoundTube { .. }
            | Profile::RectangularTube { .. } => Err(NoSection::NoSize),
        }
    }

    /// What holes in the direction of the load leave: they take from the width
    /// (NDS 2018 §3.1.2, heading read second-hand: the gross section less what was
    /// bored away).
    ///
    /// # Errors
    /// A profile other than a solid rectangle, or nothing left.
    pub fn bored(self, hole: Distance, side_by_side: u32) -> Result<Profile, NoSection> {
        let taken = hole * f64::from(side_by_side);
        match self {
            Profile::Rectangle { across, along } if taken < across => Ok(Profile::Rectangle {
                across: across - taken,
                along,
            }),
            Profile::Rectangle { .. }
            | Profile::Round { .. }
            | Profile::RoundTube { .. }
            | Profile::RectangularTube { .. } => Err(NoSection::NoSize),
        }
    }

    /// The outside size in the direction of the load.
    #[must_use]
    pub fn along(self) -> Distance {
        match self {
            Profile::Rectangle { along, .. } | Profile::RectangularTube { along, .. } => along,
            Profile::Round { diameter } => diameter,
            Profile::RoundTube { outside, .. } => outside,
        }
    }

    /// The same profile turned by a right angle.
    #[must_use]
    pub fn turned(self) -> Profile {
        match self {
            Profile::Rectangle { across, along } => Profile::Rectangle {
                across: along,
                along: across,
            },
            Profile::RectangularTube {
                across,
                along,
                wall,
                corner,
            } => Profile::RectangularTube {
                across: along,
                along: across,
                wall,
                corner,
            },
            Profile::Round { .. } | Profile::RoundTube { .. } => self,
        }
    }

    /// Area, second moment and moduli.
    ///
    /// # Errors
    /// Sizes that make no section.
    pub fn section(self) -> Result<Section, NoSection> {
        match self {
            Profile::Rectangle { across, along } => {
                positive(&[across, along])?;
                Ok(rounded_rectangle(across, along, Distance::default()))
            }
            Profile::Round { diameter } => {
                positive(&[diameter])?;
                Ok(disc(diameter))
            }
            Profile::RoundTube { outside, wall } => {
                let inside = hollow(outside, wall)?;
                Ok(disc(outside).less(disc(inside), outside))
            }
            Profile::RectangularTube {
                across,
                along,
                wall,
                corner,
            } => {
                let (clear, deep) = (hollow(across, wall)?, hollow(along, wall)?);
                if corner.value < 0.0 || corner * 2.0 > across || corner * 2.0 > along {
                    return Err(NoSection::CornerTooRound);
                }
                let inner = Distance::default().max(corner - wall);
                let outer = rounded_rectangle(across, along, corner);
                Ok(outer.less(rounded_rectangle(clear, deep, inner), along))
            }
        }
    }

    /// The elastic modulus with the lines that lead to it.
    ///
    /// # Errors
    /// Sizes that make no section.
    pub fn elastic(self) -> Result<Worked<SectionModulus>, NoSection> {
        let section = self.section()?;
        Ok(self.line("S", section.elastic, |profile| match profile {
            Profile::Rectangle { .. } => "b·d²/6",
            Profile::Round { .. } => "π·D³/32",
            Profile::RoundTube { .. } => "π·(D⁴ - (D - 2·t)⁴)/(32·D)",
            Profile::RectangularTube { .. } => "2·I/d, I of the outer less the inner rectangle",
        }))
    }

    /// The plastic modulus with the lines that lead to it.
    ///
    /// # Errors
    /// Sizes that make no section.
    pub fn plastic(self) -> Result<Worked<SectionModulus>, NoSection> {
        let section = self.section()?;
        Ok(self.line("Z", section.plastic, |profile| match profile {
            Profile::Rectangle { .. } => "b·d²/4",
            Profile::Round { .. } => "D³/6",
            Profile::RoundTube { .. } => "(D³ - (D - 2·t)³)/6",
            Profile::RectangularTube { .. } => "Z of the outer less the inner rectangle",
        }))
    }

    /// The second moment of area with the lines that lead to it.
    ///
    /// # Errors
    /// Sizes that make no section.
    pub fn second_moment(self) -> Result<Worked<SecondMoment>, NoSection> {
        let section = self.section()?;
        Ok(
            self.line("I", section.second_moment, |profile| match profile {
                Profile::Rectangle { .. } => "b·d³/12",
                Profile::Round { .. } => "π·D⁴/64",
                Profile::RoundTube { .. } => "π·(D⁴ - (D - 2·t)⁴)/64",
                Profile::RectangularTube { .. } => "I of the outer less the inner rectangle",
            }),
        )
    }

    fn line<T: Copy + Into<crate::statics::amount::AnyQuantity>>(
        self,
        symbol: &'static str,
        value: T,
        formula: impl Fn(Profile) -> &'static str,
    ) -> Worked<T> {
        let inputs = match self {
            Profile::Rectangle { across, along } => {
                vec![("b", across.into()), ("d", along.into())]
            }
            Profile::Round { diameter } => vec![("D", diameter.into())],
            Profile::RoundTube { outside, wall } => {
                vec![("D", outside.into()), ("t", wall.into())]
            }
            Profile::RectangularTube {
                across,
                along,
                wall,
                corner,
            } => vec![
                ("b", across.into()),
                ("d", along.into()),
                ("t", wall.into()),
                ("r", corner.into()),
            ],
        };
        Worked::new(symbol, formula(self), &inputs, value, CLOSED_FORM)
    }
}

impl Section {
    /// This section without a smaller one about the same axis.
    fn less(self, inner: Section, along: Distance) -> Section {
        let second_moment = self.second_moment - inner.second_moment;
        Section {
            area: self.area - inner.area,
            second_moment,
            elastic: second_moment * 2.0 / along,
            plastic: self.plastic - inner.plastic,
        }
    }
}

fn positive(sizes: &[Distance]) -> Result<(), NoSection> {
    let fine = |size: &Distance| size.value > 0.0 && size.value.is_finite();
    if sizes.iter().all(fine) {
        Ok(())
    } else {
        Err(NoSection::NoSize)
    }
}

fn hollow(outside: Distance, wall: Distance) -> Result<Distance, NoSection> {
    positive(&[outside, wall])?;
    let inside = outside - wall * 2.0;
    if inside.value > 0.0 {
        Ok(inside)
    } else {
        Err(NoSection::WallTooThick)
    }
}

fn disc(diameter: Distance) -> Section {
    let square = diameter * diameter;
    Section {
        area: square * (PI / 4.0),
        second_moment: square * square * (PI / 64.0),
        elastic: square * diameter * (PI / 32.0),
        plastic: square * diameter / 6.0,
    }
}

/// A rectangle with corners rounded by `r`: each corner loses a square less a
/// quarter of a disc, taken about the middle axis.
fn rounded_rectangle(across: Distance, along: Distance, r: Distance) -> Section {
    let half = along / 2.0;
    let straight = half - r;
    let quarter = r * r * (PI / 4.0);
    let lost_area = r * r - quarter;
    let lost_first =
        r * (half * half - straight * straight) / 2.0 - (r * r * r / 3.0 + straight * quarter);
    let lost_second = r * (half * half * half - straight * straight * straight) / 3.0
        - (r * r * r * r * (PI / 16.0)
            + straight * r * r * r * (2.0 / 3.0)
            + straight * straight * quarter);
    let second_moment = across * along * along * along / 12.0 - lost_second * 4.0;
    Section {
        area: across * along - lost_area * 4.0,
        second_moment,
        elastic: second_moment * 2.0 / along,
        plastic: across * along * along / 4.0 - lost_first * 4.0,
    }
}
