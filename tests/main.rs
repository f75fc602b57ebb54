//! All integration tests in one program, so that everything is linked once.

mod architecture;
mod commands;
mod compare;
mod geometry;
mod harness;
mod hostile;
mod judging;
mod layout;
mod outputs;
mod pages;
mod phone;
mod properties;
mod published;
mod readings;
mod readme;
mod remedy;
mod reports;
mod rulesets;
mod sheet;
mod spreadsheets;
mod statics;
mod surveys;
mod walk;
mod widths;
