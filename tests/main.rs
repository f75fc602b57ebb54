//! The integration tests, one binary.

mod rulesets;
