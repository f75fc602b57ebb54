//! The mechanics of the load path against published values, a frame-analysis
//! library, an independent derivation of the yield modes, and their invariants.

mod beams;
mod chain;
mod dowel_equations;
mod edges;
mod fasteners;
mod guards;
mod invariants;
mod joints;
mod members;
mod outside;
mod stiffness;
mod yield_modes;

use outside::Outside;
use outside::reproduced;

use guardrule::quantities::Angle;
use guardrule::quantities::Distance;
use guardrule::quantities::Moment;
use guardrule::quantities::Pressure;
use guardrule::quantities::SectionModulus;
use guardrule::quantities::inches;
use guardrule::statics::AnyQuantity;
use guardrule::statics::Units;
use guardrule::statics::factors::SpecificGravity;
use guardrule::statics::hardware::LAGS;
use guardrule::statics::hardware::Lag;
use guardrule::statics::hardware::WOOD_SCREWS;
use guardrule::statics::hardware::WoodScrew;
use guardrule::statics::section::Profile;
use guardrule::statics::washer::Washer;
use guardrule::statics::wood::SPECIES;
use guardrule::statics::wood::Species;

/// The number of a quantity in lb, in, psi.
pub(crate) fn customary(of: impl Into<AnyQuantity>) -> f64 {
    of.into().size(Units::Customary).0
}

/// Equal to seven digits that were worked out apart from the code.
pub(crate) fn agrees(what: &str, ours: impl Into<AnyQuantity>, expected: f64) {
    let ours = customary(ours);
    reproduced(Outside::Worked, what, expected);
    assert!(
        (ours - expected).abs() <= 6e-7 * expected.abs(),
        "{what}: {ours}, expected {expected}"
    );
}

/// Rounds to the published value, whose last digit counts `step`.
pub(crate) fn prints_as(what: &str, ours: impl Into<AnyQuantity>, published: f64, step: f64) {
    let ours = customary(ours);
    reproduced(Outside::Printed, what, published);
    assert!(
        (ours - published).abs() <= step * (0.5 + 1e-9),
        "{what}: {ours}, published {published}"
    );
}

pub(crate) const fn gravity(g: f64) -> SpecificGravity {
    SpecificGravity(g)
}

pub(crate) fn degrees(of: f64) -> Angle {
    Angle::new::<uom::si::angle::degree>(of)
}

pub(crate) fn lag(name: &str) -> Lag {
    let row = LAGS.iter().find(|row| row.name == name);
    *row.unwrap_or_else(|| panic!("no lag {name}"))
}

pub(crate) fn screw(number: u8) -> WoodScrew {
    let row = WOOD_SCREWS.iter().find(|row| row.number == number);
    *row.unwrap_or_else(|| panic!("no screw {number}"))
}

/// A common nail by its name: NDS 2018 Appendix L, second-hand.
pub(crate) struct Nail {
    pub(crate) diameter: Distance,
    pub(crate) length: Distance,
}

pub(crate) fn nail(name: &str) -> Nail {
    let (diameter, length) = match name {
        "6d" => (0.113, 2.0),
        "8d" => (0.131, 2.5),
        "10d" => (0.148, 3.0),
        "16d" => (0.162, 3.5),
        other => panic!("no nail {other}"),
    };
    Nail {
        diameter: inches(diameter),
        length: inches(length),
    }
}

/// A rectangle bent across `along`.
pub(crate) fn rectangle(across: f64, along: f64) -> Profile {
    Profile::Rectangle {
        across: inches(across),
        along: inches(along),
    }
}

/// The stress of a moment on a section: M/S.
pub(crate) fn bending_stress(moment: Moment, modulus: SectionModulus) -> Pressure {
    moment / modulus
}

/// The 1/2 in cut washer: outside 1.375 in, hole 9/16 in. From memory.
pub(crate) const HALF_INCH_CUT: Washer = Washer::Round {
    outside: inches(1.375),
    hole: inches(0.5625),
};

pub(crate) fn species(name: &str) -> &'static Species {
    let row = SPECIES.iter().find(|row| row.name == name);
    row.unwrap_or_else(|| panic!("no species {name}"))
}
