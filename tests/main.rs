//! All integration tests in one program, so that everything is linked once.

mod architecture;
mod harness;
mod judging;
mod properties;
mod published;
mod readings;
mod reports;
mod rulesets;
mod surveys;
