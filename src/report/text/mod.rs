//! The text report: 80 columns, worst guard first, in words for somebody who
//! has never read a building code.

mod bearing;
mod collect;
mod findings;
mod guard;
mod head;
mod headline;
mod rank;
mod strength;

pub use collect::Text;
pub(super) use findings::compared;
