//! What a ruleset is about, where it is about less than homes and buildings at large.

/// A narrower matter that a ruleset speaks of. Somebody who did not ask about
/// it is told that there is such a ruleset, and is not led to it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Topic {
    /// Handrails and ramps that a person in a wheelchair can use.
    Accessibility,
    /// Rooms and homes where children are minded.
    ChildCare,
    /// Cribs and other beds with slats.
    Cribs,
    /// Gates at stairs.
    Gates,
    /// Playgrounds.
    Playgrounds,
    /// Pools.
    Pools,
    /// Homes that are let.
    Rented,
    /// Windows that a child may fall from.
    Windows,
    /// Housing of workers.
    WorkerHousing,
}

impl Topic {
    /// All of them.
    pub const ALL: [Topic; 9] = [
        Topic::Accessibility,
        Topic::ChildCare,
        Topic::Cribs,
        Topic::Gates,
        Topic::Playgrounds,
        Topic::Pools,
        Topic::Rented,
        Topic::Windows,
        Topic::WorkerHousing,
    ];

    /// The word in rulesets and in answers: `for rented homes`.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Topic::Accessibility => "accessibility",
            Topic::ChildCare => "child care",
            Topic::Cribs => "cribs",
            Topic::Gates => "gates",
            Topic::Playgrounds => "playgrounds",
            Topic::Pools => "pools",
            Topic::Rented => "rented homes",
            Topic::Windows => "windows",
            Topic::WorkerHousing => "worker housing",
        }
    }

    /// What people write who ask about it, in lower case.
    #[must_use]
    pub(super) const fn asked_as(self) -> &'static [&'static str] {
        match self {
            Topic::Accessibility => &["accessible", "accessibility", "wheelchair", "disabled"],
            Topic::ChildCare => &[
                "child care",
                "childcare",
                "childminder",
                "child minder",
                "child minding",
                "creche",
                "day care",
                "daycare",
                "kindergarten",
                "kita",
                "nursery",
                "preschool",
            ],
            Topic::Cribs => &["cot", "cots", "crib", "cribs", "slats", "bunk bed"],
            Topic::Gates => &["baby gate", "gate", "gates", "safety gate", "stair gate"],
            Topic::Playgrounds => &["climbing frame", "playground", "playgrounds", "play area"],
            Topic::Pools => &["pool", "pools", "swimming pool"],
            Topic::Rented => &[
                "landlord", "lease", "let", "letting", "rent", "rental", "rentals", "rented",
                "renting", "tenant", "tenants", "voucher",
            ],
            Topic::Windows => &["sill", "window", "windows", "window sill"],
            Topic::WorkerHousing => &["farm workers", "labor camp", "worker housing", "workers"],
        }
    }
}
