//! How many guards came out how.

use serde::Serialize;

use crate::items::Verdict;
use crate::judge::Judged;

/// Counts of guards by verdict. `meets`, `falls_short`, `undecided`,
/// `does_not_apply` and `could_not_judge` add up to `guards`.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
pub struct Summary {
    /// All of them.
    pub guards: u64,
    /// Every rule that applies is met.
    pub meets: u64,
    /// At least one rule is not.
    pub falls_short: u64,
    /// Nothing falls short, and something is open.
    pub undecided: u64,
    /// No rule asks for a guard there.
    pub does_not_apply: u64,
    /// Every row of it is in error.
    pub could_not_judge: u64,
    /// Of the undecided: too close to call.
    pub too_close: u64,
    /// Of the undecided: what is asked is not known.
    pub not_settled: u64,
    /// Of the undecided: not measured.
    pub not_measured: u64,
    /// Of the undecided: the readings alone would meet.
    pub reading_alone_meets: u64,
    /// Guards at which something was seen that comes before every rule.
    pub dangers: u64,
}

impl Summary {
    /// Counts one more guard.
    pub fn count(&mut self, judged: &Judged<'_>) {
        self.guards += 1;
        self.dangers += u64::from(!judged.dangers.is_empty());
        if judged.could_not_judge {
            self.could_not_judge += 1;
            return;
        }
        match judged.verdict {
            Verdict::FallsShort => self.falls_short += 1,
            Verdict::TooClose => self.too_close += 1,
            Verdict::NotSettled => self.not_settled += 1,
            Verdict::NotMeasured => self.not_measured += 1,
            Verdict::Meets => self.meets += 1,
            Verdict::DoesNotApply => self.does_not_apply += 1,
        }
        let undecided = judged.verdict.is_undecided();
        self.undecided += u64::from(undecided);
        let alone = undecided && judged.reading_alone == Verdict::Meets;
        self.reading_alone_meets += u64::from(alone);
    }

    /// Adds the counts of another part of the same survey.
    pub fn merge(&mut self, other: Summary) {
        self.guards += other.guards;
        self.meets += other.meets;
        self.falls_short += other.falls_short;
        self.undecided += other.undecided;
        self.does_not_apply += other.does_not_apply;
        self.could_not_judge += other.could_not_judge;
        self.too_close += other.too_close;
        self.not_settled += other.not_settled;
        self.not_measured += other.not_measured;
        self.reading_alone_meets += other.reading_alone_meets;
        self.dangers += other.dangers;
    }
}
