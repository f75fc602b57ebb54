//! The text report: 80 columns, worst guard first, in words for somebody who
//! has never read a building code.

mod document;
mod findings;
mod guard;
mod head;
mod headline;
mod rank;
mod strength;

pub use document::TextReport;
pub(super) use findings::compared;
