//! Workbooks: .xlsx and .ods, read for what a survey needs to know of a cell,
//! each sheet handed on as a file of its own.
//!
//! Readers of plain values alone do not tell a number from a fraction that is
//! shown rounded, nor what is merged, hidden, struck out, commented or raised;
//! so the parts are read here. Another reader is held against this one in the
//! tests.

mod bounds;
mod formats;
mod grid;
mod ods;
mod ods_styles;
mod opening;
mod parts;
mod refusal;
mod rich;
mod sheet_file;
mod text;
mod xlsx;
mod xml;

pub(super) use opening::{LARGEST, is_one, open};
pub(super) use refusal::Refusal;
