//! What the counts of a survey are made of while its guards arrive, and the object
//! that ends a report in JSON.

use std::collections::BTreeMap;
use std::sync::Arc;

use serde::Serialize;

use crate::report::JudgedGuard;
use crate::report::Summary;
use crate::report::cautions::DEFERRAL;
use crate::report::matters::was_not_entered;

/// The counts so far, and which units nobody has entered yet.
#[derive(Debug, Default)]
pub(super) struct SurveyTally {
    summary: Summary,
    /// Of each building and unit: whether nobody could look at any of its guards.
    units: BTreeMap<(Arc<str>, Arc<str>), bool>,
}

/// The `summary` of JSON.
#[derive(Serialize)]
pub(super) struct SummaryRecord {
    #[serde(flatten)]
    counts: Summary,
    not_entered: usize,
    deferral: &'static str,
}

impl SurveyTally {
    /// Counts one more guard.
    pub(super) fn count(&mut self, entry: &JudgedGuard<'_>) {
        self.summary.count(&entry.judged);
        let guard = &entry.guard;
        if guard.unit.is_empty() {
            return;
        }
        let unit = (Arc::clone(&guard.building), Arc::clone(&guard.unit));
        let closed = was_not_entered(guard);
        *self.units.entry(unit).or_insert(closed) &= closed;
    }

    /// The counts by verdict.
    pub(super) fn summary(&self) -> Summary {
        self.summary
    }

    /// All that a report ends with.
    pub(super) fn record(&self) -> SummaryRecord {
        SummaryRecord {
            counts: self.summary,
            not_entered: self.units.values().filter(|closed| **closed).count(),
            deferral: DEFERRAL,
        }
    }
}
