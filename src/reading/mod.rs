//! The text of a reading ⇄ its exact value: lengths and how finely they were
//! read, ball tests, shapes, footholds, ages, years, words.
//!
//! A reading knows its item's kind and nothing of survey files: where it stood,
//! and what was said beside it, is the survey's to know.

mod value;

pub use value::{
    BallTest, Bound, Extent, Foothold, Graduation, Measure, Push, Reading, ShapeReading,
    StairReading, Stick, ThingToClimb, Value,
};
