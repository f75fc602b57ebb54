//! Screws that bite a subfloor panel only (equivalent G, from memory).

use crate::quantities::Distance;
use crate::quantities::inches;
use crate::statics::basis::Provenance;
use crate::statics::basis::Sourced;
use crate::statics::factors::SpecificGravity;

/// Plywood or OSB as wood: the G that the tables of withdrawal take.
///
/// Tests found that the formula over-predicts withdrawal from plywood, so what
/// comes out is not cautious.
pub const PANEL_GRAVITY: Sourced<SpecificGravity> = Sourced::new(
    SpecificGravity(0.42),
    Provenance::memory("equivalent G of plywood and OSB"),
);

/// Structural I plywood, or all plies of Group 1.
pub const STRUCTURAL_PANEL_GRAVITY: Sourced<SpecificGravity> = Sourced::new(
    SpecificGravity(0.50),
    Provenance::memory("equivalent G of plywood and OSB"),
);

/// The usual subfloor: 23/32 in.
pub const USUAL_SUBFLOOR: Distance = inches(23.0 / 32.0);
