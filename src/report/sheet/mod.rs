//! The sheet: a page for each guard to fill in by hand, and a blank survey for a
//! spreadsheet. Only what the chosen rulesets ask for is on it.

mod back;
mod blank;
mod boxes;
mod choice;
mod front;
mod guard;
mod page;

pub use blank::{BlankSurvey, BlankTable, blank_survey, blank_table};
pub use choice::{Paper, Sheet};
pub use page::sheet;
