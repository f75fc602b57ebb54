//! The text report: the answer first, worst guard first, in words for somebody who
//! has never read a building code.

mod blocks;
mod document;
mod end;
mod full;
mod paragraph;
mod rank;
mod strength;
mod told;
mod top;
mod written;

pub use document::TextReport;
