//! The counts of a report with what only all guards together tell, and who decides.

use std::collections::HashMap;
use std::sync::Arc;

use serde::Serialize;

use crate::report::JudgedGuard;
use crate::report::Summary;
use crate::report::cautions::DEFERRAL;
use crate::report::matters::was_not_entered;

/// The counts as guards come, and which units were entered.
#[derive(Debug, Default)]
pub(super) struct Counted {
    guards: Summary,
    /// Whether anybody could look at a guard of this building and unit.
    units: HashMap<(Arc<str>, Arc<str>), UnitEntered>,
}

/// Whether a unit was entered.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum UnitEntered {
    No,
    Yes,
}

impl Counted {
    pub(super) fn count(&mut self, entry: &JudgedGuard<'_>) {
        self.guards.count(&entry.judged);
        let guard = &entry.guard;
        if guard.unit.is_empty() {
            return;
        }
        let unit = (Arc::clone(&guard.building), Arc::clone(&guard.unit));
        let known = self.units.entry(unit).or_insert(UnitEntered::No);
        if !was_not_entered(guard) {
            *known = UnitEntered::Yes;
        }
    }

    /// How many guards came so far.
    pub(super) const fn guards(&self) -> u64 {
        self.guards.guards
    }

    pub(super) fn summary(&self) -> Summary {
        let closed = self.units.values().filter(|unit| **unit == UnitEntered::No);
        Summary {
            not_entered: closed.count() as u64,
            ..self.guards
        }
    }
}

/// The counts with who decides.
#[derive(Serialize)]
pub(super) struct SummaryRecord {
    #[serde(flatten)]
    counts: Summary,
    deferral: &'static str,
}

impl SummaryRecord {
    pub(super) const fn of(counts: Summary) -> SummaryRecord {
        SummaryRecord {
            counts,
            deferral: DEFERRAL,
        }
    }
}
