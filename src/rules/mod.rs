//! Rulesets: what is asked of a guard, by which clause, from which source.
//!
//! TOML becomes a [`Ruleset`] whose every limit, item and word has been
//! checked; what is wrong with the file comes back as diagnostics. Nothing here
//! sees a survey.

mod model;

pub use model::{
    Amendment, Bounds, Caution, Check, Condition, Covers, Demand, Example, FootholdDemand, InForce,
    Limit, OpeningDemand, Rule, Ruleset, Source, Status, Subject, Test, Urgency, Zone,
};
