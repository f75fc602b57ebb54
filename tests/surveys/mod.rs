//! Surveys from files: faults, order of rows, both layouts, any bytes.

pub(crate) mod corpus;
mod demo;
mod levels;
mod properties;
mod support;
