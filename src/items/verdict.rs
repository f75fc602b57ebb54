//! The six verdicts.

use std::fmt;

/// What became of one rule at one guard. Closed by definition.
///
/// The order is that of the design, worst first: the least of several verdicts
/// is the worst.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Verdict {
    /// It does not do what the rule asks.
    FallsShort,
    /// The reading lies nearer to the limit than the tape can tell.
    TooClose,
    /// It was measured well enough, but what is asked is not known: a rule known
    /// only from memory, a clause without a number, a guard outside what a
    /// ruleset covers, a ruleset that could not be read whole.
    NotSettled,
    /// Something the rule needs was not written down.
    NotMeasured,
    /// It does what the rule asks.
    Meets,
    /// The rule says nothing about this guard.
    DoesNotApply,
}

impl Verdict {
    /// All six, worst first.
    pub const ALL: [Verdict; 6] = [
        Verdict::FallsShort,
        Verdict::TooClose,
        Verdict::NotSettled,
        Verdict::NotMeasured,
        Verdict::Meets,
        Verdict::DoesNotApply,
    ];

    /// Whether nothing falls short and something is open.
    #[must_use]
    pub const fn is_undecided(self) -> bool {
        match self {
            Verdict::TooClose | Verdict::NotSettled | Verdict::NotMeasured => true,
            Verdict::DoesNotApply | Verdict::FallsShort | Verdict::Meets => false,
        }
    }

    /// The verdict in the words of rulesets and reports.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Verdict::FallsShort => "falls short",
            Verdict::TooClose => "too close to call",
            Verdict::NotSettled => "not settled",
            Verdict::NotMeasured => "not measured",
            Verdict::Meets => "meets",
            Verdict::DoesNotApply => "does not apply",
        }
    }

    /// The verdict of this name.
    #[must_use]
    pub fn by_name(name: &str) -> Option<Verdict> {
        Verdict::ALL
            .into_iter()
            .find(|verdict| verdict.name() == name)
    }
}

impl fmt::Display for Verdict {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.name())
    }
}
