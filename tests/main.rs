//! Integration tests, one binary.

mod surveys;
