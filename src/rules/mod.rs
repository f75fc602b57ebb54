//! Rulesets: what is asked of a guard, by which clause, from which source.
//!
//! TOML becomes a [`Ruleset`] whose every limit, item and word has been
//! checked; what is wrong with the file comes back as diagnostics, all of it in
//! one run. Nothing here sees a survey, and nothing here opens a file.
//!
//! ```
//! let loaded = guardrule::rules::load("us-dwelling-2018", &|_| None);
//! assert!(loaded.diagnostics.is_empty());
//! assert_eq!(loaded.ruleset.map(|ruleset| ruleset.edition), Some("2018".to_owned()));
//! ```

mod asked_items;
mod asks_nothing;
mod checks;
mod chosen;
mod codes;
mod conditions;
mod demand;
mod embedded;
mod faults;
mod fields;
mod find;
mod gazetteer;
mod head;
mod late;
mod lessened;
mod load;
mod loads;
mod matter;
mod merge;
mod model;
mod narrowed;
mod phrases;
mod plausible;
mod quantity;
mod rule;
mod sought;
mod sources;
mod straddle;
mod syntax;
mod unread;

pub use chosen::{GUIDANCE, Guidance, chosen};
pub use codes::codes;
pub use demand::{
    Bounds, Check, Demand, Direction, Entraps, FootholdDemand, Ladder, Limit, LoadBasis,
    LoadDemand, Member, OpeningDemand, Patch, SlopeLimit, Stated, Subject, Zone,
};
pub use embedded::{embedded, embedded_ids, is_embedded, other_editions};
pub use find::{FoundRules, Offer, find};
pub use load::{LoadedRuleset, load, load_head, load_to_judge};
pub use matter::Matter;
pub use model::{
    Amendment, Asked, AsksNothing, Caution, Concern, Condition, Covers, Example, InForce, LeaveOut,
    Rule, Ruleset, Source, Status, Test, Urgency,
};
pub use phrases::all_of;
pub use sought::{Home, Sought};
pub use straddle::{StraddleGap, straddle_gaps};
pub use unread::{Unread, UnreadPart};
