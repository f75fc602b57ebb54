//! Survey files: from CSV in two layouts to complete guards, one after another.
//!
//! A survey is read twice: once for facts and which guards there are, once to
//! hand the guards over. So facts and rows may come late, and no file is held
//! in memory. What is wrong with a file comes back as diagnostics with file,
//! line, column and cell. Nothing here sees a rule.

mod assembly;
mod blank_names;
mod clash;
pub(crate) mod codes;
mod complaints;
mod entries;
mod file;
mod header;
mod header_search;
mod heading;
mod lookup;
mod model;
mod names;
mod observations;
mod place;
mod plan;
mod reader;
mod readings;
mod rounds;
mod row;
mod row_kind;
mod scan;
mod scan_complaints;
mod scan_facts;
mod sheet;
mod stream;
#[expect(clippy::module_inception, reason = "the type gives the file its name")]
mod survey;
mod suspicion;

pub use codes::codes;
pub use file::{FileError, InMemory, SurveyFile};
pub use model::{
    FileFacts, Guard, Inherited, NamedRules, Observation, OwnEntry, ReadingKey, RowPlace,
    SurveyFacts, TapeClass,
};
pub use plan::{Plan, PlanLayout};
pub use sheet::{CellDoubt, SheetCell, SheetCells};
pub use survey::Survey;
