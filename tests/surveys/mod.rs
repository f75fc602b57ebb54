//! Surveys from files: faults, order of rows, both layouts, any bytes.

mod corpus;
mod properties;
mod support;
