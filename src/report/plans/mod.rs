//! What `guardrule remedy` prints: the plans of all guards, as text, JSON, CSV and drawings,
//! and the guards as they would be, as a survey.

mod cautions;
mod counts;
mod csv;
mod draw;
mod json;
mod survey_file;
mod text;
mod words;

pub use csv::plans_csv;
pub use draw::plans_svg;
pub use json::plans_json;
pub use survey_file::altered_survey;
pub use text::plans_text;
pub(super) use words::{part as material, refusal};

use crate::items::Verdict;
use crate::judge::Judged;
use crate::remedy::RemedyPlan;
use crate::report::one_line;
use crate::survey::Guard;

/// A guard with what would put it right.
#[derive(Clone, Debug)]
pub struct PlannedGuard<'r> {
    /// The guard.
    pub guard: Guard,
    /// How it was judged.
    pub judged: Judged<'r>,
    /// What would put it right.
    pub plan: RemedyPlan,
}

/// How a guard comes out.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum PlanOutcome {
    /// Something has no remedy that the re-check confirms, or a danger stands.
    Stands,
    /// Every shortfall has a confirmed remedy, and something undecided stays.
    Undecided,
    /// Every shortfall has a remedy that the re-check confirms.
    Confirmed,
    /// Nothing falls short, and nothing is undecided.
    Nothing,
}

impl PlannedGuard<'_> {
    /// How it comes out.
    #[must_use]
    pub fn outcome(&self) -> PlanOutcome {
        if !self.plan.is_proved() {
            PlanOutcome::Stands
        } else if self.plan.way.verdict.is_undecided() || self.judged.could_not_judge {
            PlanOutcome::Undecided
        } else if self.plan.way.verdict == Verdict::FallsShort {
            PlanOutcome::Stands
        } else if self.plan.topics.is_empty() {
            PlanOutcome::Nothing
        } else {
            PlanOutcome::Confirmed
        }
    }

    /// Its full name: `Flat 5, balcony`.
    fn name(&self) -> String {
        let parts = [&self.guard.building, &self.guard.unit, &self.guard.name];
        let parts = parts.iter().filter(|part| !part.is_empty());
        let parts: Vec<_> = parts.map(|part| one_line(part)).collect();
        parts.join(", ")
    }
}
