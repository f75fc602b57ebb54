//! The text of a reading ⇄ its exact value: lengths and how finely they were
//! read, ball tests, shapes, footholds, ages, years, words.
//!
//! A reading knows its item's kind and nothing of survey files: where it stood,
//! and what was said beside it, is the survey's to know.

mod ball;
mod bars;
mod calendar;
mod error;
mod exact_length;
mod fasteners;
mod footholds;
mod force;
mod length;
mod number;
mod offered_units;
mod offers;
mod opening;
mod parse;
mod plausible;
mod print;
mod quantity;
mod settle;
mod shape;
mod slope;
mod stair;
mod tokens;
mod unit;
mod value;
mod words;
mod years;

pub use ball::names_a_ball;
pub use calendar::looks_like_a_date;
pub use error::ReadingError;
pub use footholds::parse_sides;
pub use force::{parse_force, parse_line_load, parse_moment, parse_pressure};
pub use length::parse_length;
pub use parse::{Parsed, parse, parse_or_none};
pub use print::print;
pub use slope::parse_slope;
pub use value::{
    BallTest, Bound, Extent, FastenerSize, Fasteners, Foothold, Graduation, Measure, Pull, Push,
    Reading, ShapeReading, StairReading, Stick, ThingToClimb, Tilt, VReading, Value,
};
pub use years::{parse_age, parse_years};
