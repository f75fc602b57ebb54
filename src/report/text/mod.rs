//! The text report: the answer first, worst guard first, in words for somebody who
//! has never read a building code.

mod blocks;
mod document;
mod end;
mod full;
mod strength;
mod top;

pub use document::{TextReport, first_screen};
