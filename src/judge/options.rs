//! How to judge: what a caller chooses.

/// How a reading near a limit is decided.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Decision {
    /// `meets` or `falls short` only at least 2u away from the limit
    /// (JCGM 106:2012 and ILAC-G8:09/2019, k = 2).
    #[default]
    Guarded,
    /// The reading alone is compared with the limit.
    Simple,
}

impl Decision {
    /// The word on the command line and in reports.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Decision::Guarded => "guarded",
            Decision::Simple => "simple",
        }
    }
}

/// Whether rules from memory take part in a guard's verdict.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum MemoryRules {
    /// They only warn.
    #[default]
    Warn,
    /// The user asked for them to decide.
    Decide,
}

/// How to judge.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Options {
    /// Near a limit.
    pub decision: Decision,
    /// Rules from memory.
    pub memory: MemoryRules,
    /// The rules of the time of building.
    pub when_built: AskedWhenBuilt,
}

/// Whether a guard is judged by the rules of its time, beside those chosen.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum AskedWhenBuilt {
    /// By those chosen alone.
    #[default]
    NotAsked,
    /// By the editions that were in force when it was built as well.
    Asked,
}
