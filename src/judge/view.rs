//! Which verdicts of findings are looked at: those of the decision, or of the readings alone.

use crate::items::Verdict;
use crate::judge::Finding;

/// Which verdicts of the findings are looked at.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum FindingView {
    /// By the decision that was asked for.
    Decided,
    /// Of the readings alone.
    Alone,
}

impl FindingView {
    /// What a finding counts as; a partial one says nothing of the rest.
    pub(super) fn of(self, finding: &Finding<'_>) -> Verdict {
        let verdict = match self {
            FindingView::Decided => finding.verdict,
            FindingView::Alone => finding.reading_alone,
        };
        if finding.partial && verdict == Verdict::Meets {
            Verdict::NotMeasured
        } else {
            verdict
        }
    }
}
