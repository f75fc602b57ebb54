//! The mechanics of the load path against published values, a frame-analysis
//! library, an independent derivation of the yield modes, and their invariants.

mod beams;
mod chain;
mod dowel_equations;
mod fasteners;
mod guards;
mod invariants;
mod joints;
mod members;
mod stiffness;
mod yield_modes;

use guardrule::quantities::Angle;
use guardrule::statics::AnyQuantity;
use guardrule::statics::Units;
use guardrule::statics::factors::SpecificGravity;
use guardrule::statics::hardware::LAGS;
use guardrule::statics::hardware::Lag;
use guardrule::statics::hardware::NAILS;
use guardrule::statics::hardware::Nail;
use guardrule::statics::hardware::WOOD_SCREWS;
use guardrule::statics::hardware::WoodScrew;
use guardrule::statics::wood::SPECIES;
use guardrule::statics::wood::Species;

/// The number of a quantity in lb, in, psi.
pub(crate) fn customary(of: impl Into<AnyQuantity>) -> f64 {
    of.into().size(Units::Customary).0
}

/// Equal to the seven digits that the facts print.
pub(crate) fn agrees(what: &str, ours: impl Into<AnyQuantity>, expected: f64) {
    let ours = customary(ours);
    assert!(
        (ours - expected).abs() <= 6e-7 * expected.abs(),
        "{what}: {ours}, expected {expected}"
    );
}

/// Rounds to the published value, whose last digit counts `step`.
pub(crate) fn prints_as(what: &str, ours: impl Into<AnyQuantity>, published: f64, step: f64) {
    let ours = customary(ours);
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

pub(crate) fn nail(name: &str) -> Nail {
    let row = NAILS.iter().find(|row| row.name == name);
    *row.unwrap_or_else(|| panic!("no nail {name}"))
}

pub(crate) fn species(name: &str) -> &'static Species {
    let row = SPECIES.iter().find(|row| row.name == name);
    row.unwrap_or_else(|| panic!("no species {name}"))
}
