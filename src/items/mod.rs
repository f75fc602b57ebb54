//! The one table of what can be observed: items, their words, what they mean
//! and how to measure them; and the words for hazards and verdicts.
//!
//! Surveys, rules, error suggestions, `guardrule items` and the reports all
//! read this table. Nothing here judges.

mod drawing;
mod drawings;
mod hazard;
mod item;
mod load_path;
mod lookup;
mod marks;
mod row;
mod set;
mod table;
mod verdict;
mod words;

pub use drawing::{Drawing, Pictured};
pub use hazard::Hazard;
pub use item::{Asked, Group, Item, ItemInfo, Kind, Role, Worst};
pub use marks::{At, COLUMN, DimensionEnds, DrawingScene, Mark, ROW};
pub use set::ItemSet;
pub use verdict::Verdict;
pub use words::Word;
