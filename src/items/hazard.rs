//! The five hazards that organise everything a person reads.

use std::fmt;

/// What can happen to a child at a guard. Closed by definition; in the order of the reports.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Hazard {
    /// Over the top.
    FallOver,
    /// MeasuredBetween or under its parts.
    FallThrough,
    /// Body through and head held.
    Entrapment,
    /// Up it, and then over.
    Climb,
    /// It breaks or pulls out.
    GiveWay,
}

impl Hazard {
    /// All five, in the order of the reports.
    pub const ALL: [Hazard; 5] = [
        Hazard::FallOver,
        Hazard::FallThrough,
        Hazard::Entrapment,
        Hazard::Climb,
        Hazard::GiveWay,
    ];

    /// The hazard in the words of rulesets and reports.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Hazard::FallOver => "fall over",
            Hazard::FallThrough => "fall through",
            Hazard::Entrapment => "entrapment",
            Hazard::Climb => "climb",
            Hazard::GiveWay => "give way",
        }
    }

    /// The hazard of this name.
    #[must_use]
    pub fn by_name(name: &str) -> Option<Hazard> {
        Hazard::ALL.into_iter().find(|hazard| hazard.name() == name)
    }
}

impl fmt::Display for Hazard {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.name())
    }
}
