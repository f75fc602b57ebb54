//! The load path of a guard: every link from the infill down to the framing
//! with what bears on it and what it can take.
//!
//! Indicative throughout: it can show where a guard falls short, and never
//! that one is strong enough.

mod arm;
mod bend;
mod bolts;
mod cables;
mod chain;
mod concrete;
mod fixing;
mod framing;
mod infill;
mod link;
mod load;
mod plate;
mod post;
mod prying;
mod pull;
mod rail;
mod rail_end;
mod rod;
mod screws;
mod seen;
mod service;
mod sources;
mod washer;
mod why;
mod wood;
mod woods;

pub(super) use chain::{chain, is_the_same};
pub use link::{Chain, Hidden, Link, LinkFinding, LinkKind, Mend, Ruled, Step, Taken, Wrong};
pub use why::{LinkCase, LinkReason, StepName};
