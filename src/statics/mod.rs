//! The mechanics of a guard's load path: sections, beams, fasteners, couples,
//! plates and pull tests, each result with the lines that lead to it.
//!
//! Every quantity at a border has its dimension as a type. Formulas that were
//! fitted in inches and pounds say so and convert inside. Numbers carry their
//! source and how far it was read. Nothing here knows a guard, a rule or a
//! report, and nothing here says that anything is strong enough: a ratio of
//! demand to capacity is indicative, and a licensed engineer decides.

mod amount;
mod basis;
mod bounds;
mod worked;

pub mod anchor;
pub mod beam;
pub mod cable;
pub mod couple;
pub mod demand;
pub mod dowel;
pub mod factors;
pub mod grade;
pub mod hardware;
pub mod infill;
pub mod joint;
pub mod lateral;
pub mod metal;
pub mod panel;
pub mod plate;
pub mod pocket;
pub mod section;
pub mod stiffness;
pub mod torsion;
pub mod washer;
pub mod withdrawal;
pub mod wood;

pub use amount::{AnyQuantity, Units};
pub use basis::{HowRead, Provenance, Sourced};
pub use bounds::{Ends, RatioOutcome, Utilisation};
pub use worked::{Line, UnitForm, Worked};
