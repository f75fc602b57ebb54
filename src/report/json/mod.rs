//! The JSON report: `schema` first, `summary` last, one guard a line, written
//! as the guards come.

mod diagnostic;
mod escaped;
mod links;
mod record;
mod writer;

pub use writer::{Json, SCHEMA, SCHEMA_TEXT};
