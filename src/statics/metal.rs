//! Metals: strengths, allowable moments, what a weld costs. Each strength has
//! its source; the methods (F_y·Z/1.67, 0.60·F_y·S, F_ty·S/1.65) are from memory.

use crate::quantities::Moment;
use crate::quantities::Pressure;
use crate::quantities::psi;
use crate::statics::basis::Provenance;
use crate::statics::basis::Sourced;
use crate::statics::section::Section;
use crate::statics::worked::Worked;

/// Which method gives the allowable moment.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Method {
    /// F_ty over 1.65 on the elastic modulus.
    Aluminium,
    /// Brittle or of unknown alloy: no number.
    NoMethod,
    /// F_y over 1.67 on the plastic modulus of a compact section.
    Steel,
}

/// A metal with its strengths.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Metal {
    /// As it is sold.
    pub name: &'static str,
    /// F_y or 0.2 % proof strength; `None` where no number may be used.
    pub strength: Option<Sourced<Pressure>>,
    /// Strength within 1 in of a weld, where a weld softens it.
    pub welded: Option<Sourced<Pressure>>,
    /// E
    pub elasticity: Option<Pressure>,
    /// How it is judged.
    pub method: Method,
}

const fn metal(
    name: &'static str,
    strength: Pressure,
    basis: Provenance,
    elasticity: f64,
    method: Method,
) -> Metal {
    Metal {
        name,
        strength: Some(Sourced::new(strength, basis)),
        welded: None,
        elasticity: Some(psi(elasticity)),
        method,
    }
}

const fn aluminium(name: &'static str, strength: f64, basis: Provenance, welded: f64) -> Metal {
    let welded_basis = Provenance::memory("welded strength of aluminium alloys");
    Metal {
        welded: Some(Sourced::new(psi(welded), welded_basis)),
        ..metal(name, psi(strength), basis, 10.1e6, Method::Aluminium)
    }
}

const STEEL_TABLES: Provenance = Provenance::quoted("steel section tables: ASTM A53, A500");
const FROM_MEMORY: Provenance = Provenance::memory("usual minimum strengths");
const EXTRUDER: Provenance = Provenance::published("an extruder's table of alloys and tempers");
const STAINLESS_TABLES: Provenance = Provenance::quoted("dealers' tables after ASTM A269 and A213");
const CYLINDER_RULE: Provenance = Provenance::published("49 CFR 178.46 Table 2, alloy 6061-T6");

/// Metals of rails and posts.
pub const METALS: &[Metal] = &[
    metal(
        "steel A53 Gr B pipe",
        psi(35e3),
        STEEL_TABLES,
        29e6,
        Method::Steel,
    ),
    metal(
        "steel A500 Gr B",
        psi(46e3),
        STEEL_TABLES,
        29e6,
        Method::Steel,
    ),
    metal(
        "steel A500 Gr C",
        psi(50e3),
        STEEL_TABLES,
        29e6,
        Method::Steel,
    ),
    metal(
        "steel A500 Gr B round",
        psi(42e3),
        FROM_MEMORY,
        29e6,
        Method::Steel,
    ),
    metal(
        "mild steel, unknown",
        psi(30e3),
        FROM_MEMORY,
        29e6,
        Method::Steel,
    ),
    metal(
        "stainless 304 or 316",
        psi(30e3),
        STAINLESS_TABLES,
        28e6,
        Method::Steel,
    ),
    metal(
        "stainless 304L or 316L",
        psi(25e3),
        STAINLESS_TABLES,
        28e6,
        Method::Steel,
    ),
    aluminium("aluminium 6061-T6", 35e3, CYLINDER_RULE, 15e3),
    aluminium("aluminium 6063-T6", 25e3, EXTRUDER, 8e3),
    aluminium("aluminium 6063-T5", 16e3, EXTRUDER, 8e3),
    Metal {
        name: "iron, wrought or cast",
        strength: None,
        welded: None,
        elasticity: None,
        method: Method::NoMethod,
    },
];

/// Strength at the low end of an unknown aluminium alloy beside a visible weld.
pub const UNKNOWN_WELDED_ALUMINIUM: Sourced<Pressure> = Sourced::new(psi(8e3), FROM_MEMORY);

/// Whether the section is beside a weld.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Weld {
    /// 1 in or nearer, as a welded base; unknown counts as this at the low end.
    Beside,
    /// Farther, or none.
    Clear,
}

/// Whether the walls of a tube may buckle before the metal yields.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Walls {
    /// Thick enough for the methods here.
    Compact,
    /// Beyond the limits: no number.
    Slender,
}

impl Metal {
    /// Square steel tube to a flat width of 1.12·√(E/F_y) walls, pipe to a
    /// diameter of 0.07·E/F_y walls, aluminium to 20 walls (AISC Table B4.1b and,
    /// for aluminium, a rough limit: all from memory).
    #[must_use]
    pub fn walls(&self, profile: crate::statics::section::Profile) -> Walls {
        use crate::statics::section::Profile;
        let (Some(strength), Some(elasticity)) = (self.strength, self.elasticity) else {
            return Walls::Slender;
        };
        let stiff = (elasticity / strength.value).value;
        let (wide, most) = match (profile, self.method) {
            (Profile::Rectangle { .. } | Profile::Round { .. }, _) => return Walls::Compact,
            (Profile::RoundTube { outside, wall }, Method::Steel) => {
                ((outside / wall).value, 0.07 * stiff)
            }
            (
                Profile::RectangularTube {
                    across,
                    along,
                    wall,
                    corner,
                },
                Method::Steel,
            ) => {
                let flat = across.max(along) - corner.max(wall) * 2.0;
                ((flat / wall).value, 1.12 * stiff.sqrt())
            }
            (Profile::RoundTube { outside, wall }, Method::Aluminium | Method::NoMethod) => {
                ((outside / wall).value, 20.0)
            }
            (
                Profile::RectangularTube {
                    across,
                    along,
                    wall,
                    ..
                },
                Method::Aluminium | Method::NoMethod,
            ) => (((across.max(along) - wall * 2.0) / wall).value, 20.0),
        };
        if wide > most {
            Walls::Slender
        } else {
            Walls::Compact
        }
    }
}

/// The design wall of formed steel tube over the nominal one. From memory.
pub const DESIGN_WALL: f64 = 0.93;

/// Why a metal gives no moment.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, thiserror::Error)]
#[error("no number may be used for this metal: it may be brittle, and its strength is unknown")]
pub struct NoMethod;

impl Metal {
    /// The strength that counts at this place.
    ///
    /// # Errors
    /// [`NoMethod`] for a metal without a number.
    pub fn strength_at(&self, weld: Weld) -> Result<Sourced<Pressure>, NoMethod> {
        let plain = self.strength.ok_or(NoMethod)?;
        Ok(match weld {
            Weld::Beside => self.welded.unwrap_or(plain),
            Weld::Clear => plain,
        })
    }

    /// M_a: F_y·Z/1.67 for compact steel, F_ty·S/1.65 for aluminium.
    ///
    /// # Errors
    /// [`NoMethod`] for a metal without a number.
    pub fn allowable_moment(
        &self,
        section: &Section,
        weld: Weld,
    ) -> Result<Worked<Moment>, NoMethod> {
        let strength = self.strength_at(weld)?;
        let worked = match self.method {
            Method::Aluminium => {
                let inputs = [
                    ("F_ty", strength.value.into()),
                    ("S", section.elastic.into()),
                ];
                let moment = strength.value * section.elastic / 1.65;
                Worked::new("M_a", "F_ty·S/1.65", &inputs, moment, strength.basis)
            }
            Method::NoMethod => return Err(NoMethod),
            Method::Steel => {
                let inputs = [
                    ("F_y", strength.value.into()),
                    ("Z", section.plastic.into()),
                ];
                let moment = strength.value * section.plastic / 1.67;
                Worked::new("M_a", "F_y·Z/1.67", &inputs, moment, strength.basis)
            }
        };
        Ok(worked)
    }

    /// The lower, elastic value of steel: 0.60·F_y·S.
    ///
    /// # Errors
    /// [`NoMethod`] for what is no steel.
    pub fn elastic_moment(&self, section: &Section) -> Result<Worked<Moment>, NoMethod> {
        match self.method {
            Method::Aluminium | Method::NoMethod => Err(NoMethod),
            Method::Steel => {
                let strength = self.strength_at(Weld::Clear)?;
                let inputs = [
                    ("F_y", strength.value.into()),
                    ("S", section.elastic.into()),
                ];
                let moment = strength.value * section.elastic * 0.60;
                let worked = Worked::new("M_el", "0.60·F_y·S", &inputs, moment, strength.basis);
                Ok(worked)
            }
        }
    }
}
