//! The one table of what can be observed: items, their words, what they mean
//! and how to measure them; and the words for hazards and verdicts.
//!
//! Surveys, rules, error suggestions, `guardrule items` and the reports all
//! read this table. Nothing here judges.

mod drawing;
mod drawings;
mod hazard;
mod item;
mod joints;
mod load_path;
mod set;
mod table;
mod verdict;
mod words;

pub use drawing::{At, COLUMN, Drawing, Ends, Mark, Pictured, ROW, Scene};
pub use hazard::Hazard;
pub use item::{Asked, Group, Item, ItemInfo, Kind, Role, Worst};
pub use set::ItemSet;
pub use verdict::Verdict;
pub use words::Word;
