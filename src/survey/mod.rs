//! Survey files: from CSV in two layouts to complete guards, one after another.
//!
//! What is wrong with a file comes back as diagnostics with file, line, column
//! and cell. Nothing here sees a rule.

mod model;

pub use model::{FileFacts, Guard, Inherited, Observation, Row, SurveyFacts, TapeClass};
