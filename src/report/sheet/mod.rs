//! The sheet: a page for each guard to fill in by hand, and a blank survey for a
//! spreadsheet. Only what the chosen rulesets ask for is on it.

mod back;
mod blank;
mod choice;
mod frame;
mod front;
mod guard;
mod page;
mod paginate;
mod rows;

pub use blank::{BlankSurvey, BlankTable, blank_survey, blank_table};
pub use choice::{Paper, Sheet, StrengthPages};
pub use page::sheet;
