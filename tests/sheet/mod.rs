//! The measuring drawings, the printed sheet and the blank survey.

mod blank;
mod drawings;
mod page;
