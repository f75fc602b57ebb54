//! What a ruleset is about, where it is about less than homes and buildings at large.

/// A narrower matter that a ruleset speaks of. Somebody who did not ask about
/// it is told that there is such a ruleset, and is not led to it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Matter {
    /// Handrails and ramps that a person in a wheelchair can use.
    Accessibility,
    /// Work on a building that stands.
    Alterations,
    /// Houses that take guests for bed and breakfast.
    BedAndBreakfast,
    /// Rooms and homes where children are minded.
    ChildCare,
    /// Cribs and other beds with slats.
    Cribs,
    /// Gates at stairs.
    Gates,
    /// A handrail's grip, ends and distance from the wall.
    Handrails,
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

impl Matter {
    /// All of them.
    pub const ALL: [Matter; 12] = [
        Matter::Accessibility,
        Matter::Alterations,
        Matter::BedAndBreakfast,
        Matter::ChildCare,
        Matter::Cribs,
        Matter::Gates,
        Matter::Handrails,
        Matter::Playgrounds,
        Matter::Pools,
        Matter::Rented,
        Matter::Windows,
        Matter::WorkerHousing,
    ];

    /// The word in rulesets and in answers: `for rented homes`.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Matter::Accessibility => "accessibility",
            Matter::Alterations => "alterations",
            Matter::BedAndBreakfast => "bed and breakfast",
            Matter::ChildCare => "child care",
            Matter::Cribs => "cribs",
            Matter::Gates => "gates",
            Matter::Handrails => "handrails",
            Matter::Playgrounds => "playgrounds",
            Matter::Pools => "pools",
            Matter::Rented => "rented homes",
            Matter::Windows => "windows",
            Matter::WorkerHousing => "worker housing",
        }
    }

    /// What people write who ask about it, in lower case.
    #[must_use]
    pub(super) const fn asked_as(self) -> &'static [&'static str] {
        match self {
            Matter::Accessibility => &["accessible", "accessibility", "wheelchair", "disabled"],
            Matter::Alterations => &[
                "alteration",
                "alterations",
                "conversion",
                "existing building",
                "refurbishment",
                "remodel",
                "remodelling",
                "renovated",
                "renovation",
                "replaced window",
                "replaced windows",
            ],
            Matter::BedAndBreakfast => &[
                "b b",
                "bnb",
                "bed and breakfast",
                "bed-and-breakfast",
                "guest house",
            ],
            Matter::ChildCare => &[
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
            Matter::Cribs => &["cot", "cots", "crib", "cribs", "slats", "bunk bed"],
            Matter::Gates => &["baby gate", "gate", "gates", "safety gate", "stair gate"],
            Matter::Handrails => &["grip", "hand rail", "handrail", "handrails"],
            Matter::Playgrounds => &["climbing frame", "playground", "playgrounds", "play area"],
            Matter::Pools => &["pool", "pools", "swimming pool"],
            Matter::Rented => &[
                "landlord", "lease", "let", "letting", "rent", "rental", "rentals", "rented",
                "renting", "tenant", "tenants", "voucher",
            ],
            Matter::Windows => &["sill", "window", "windows", "window sill"],
            Matter::WorkerHousing => &["farm workers", "labor camp", "worker housing", "workers"],
        }
    }
}
