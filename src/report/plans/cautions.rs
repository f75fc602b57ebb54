//! What to mind before anybody begins, by the place whose rules were chosen.

use crate::items::Item;
use crate::reading::Value;
use crate::remedy::Needed;
use crate::remedy::RemedyCaution;
use crate::remedy::RemedyKind;
use crate::report::PlannedGuard;
use crate::report::ReportBasis;

const UNITED_STATES: &str = "United States";

/// Something that holds in one country, said where a plan has one of these kinds, or
/// minds this.
struct LocalCaution {
    country: &'static str,
    said: SaidWith,
    says: &'static str,
}

/// What a local caution goes with.
enum SaidWith {
    Caution(RemedyCaution),
    Kinds(&'static [RemedyKind]),
    Permit,
}

/// What was read of single countries; each names where.
const LOCAL: &[LocalCaution] = &[
    LocalCaution {
        country: UNITED_STATES,
        said: SaidWith::Caution(RemedyCaution::Lead),
        says: "In the United States, in a home from before 1978: paid work, and any work by the owner of a \
               rented home, that disturbs more than 6 sq ft of paint in a room or 20 sq ft outside (all sides \
               together; a part that is taken out counts whole, work of 30 days in a room together), or breaks \
               painted parts, needs a certified renovator (40 CFR 745 subpart E; areas as the federal \
               agency's questions and answers give them).",
    },
    LocalCaution {
        country: UNITED_STATES,
        said: SaidWith::Permit,
        says: "Putting back what was there often needs no permit, a new railing usually does (pages of \
               Roseville, of Bedford NH and of Shrewsbury MA on permits); your town may decide otherwise.",
    },
    LocalCaution {
        country: UNITED_STATES,
        said: SaidWith::Kinds(WINDOWS),
        says: "In New York City the owner of a building of three flats or more fits window guards where a child \
               of 10 or younger lives (Admin. Code 27-2043.1, second-hand): ask the owner.",
    },
    LocalCaution {
        country: "Ireland",
        said: SaidWith::Kinds(WINDOWS),
        says: "In a rented house in Ireland a stop lets a window open by 100 mm at most, is undone by a movement \
               that a child under 5 cannot make, and needs no key on a window to escape by (Dublin city council \
               on the regulations of 2017).",
    },
    LocalCaution {
        country: "Australia",
        said: SaidWith::Kinds(&[RemedyKind::ScrewedGate]),
        says: "In Victoria a tenant may screw a gate to walls other than bare brick or concrete without leave, \
               but not in a heritage building (the state's page for renters).",
    },
    LocalCaution {
        country: "Australia",
        said: SaidWith::Kinds(&[
            RemedyKind::ScrewedGate,
            RemedyKind::WindowStop,
            RemedyKind::SillStop,
        ]),
        says: "In New South Wales gates inside and window stops are minor changes, which a landlord may not \
               refuse without good reason (the state's list, second-hand).",
    },
];

const WINDOWS: &[RemedyKind] = &[
    RemedyKind::WindowStop,
    RemedyKind::SillStop,
    RemedyKind::WindowGuard,
    RemedyKind::UprightBarsAtWindow,
];

/// Where the chosen building rules hold.
pub(super) struct PlacesOfRules<'b> {
    countries: Vec<&'b str>,
}

impl<'b> PlacesOfRules<'b> {
    pub(super) fn of(basis: &ReportBasis<'b>) -> PlacesOfRules<'b> {
        let rules = basis.rulesets.iter().filter(|ruleset| !ruleset.advisory);
        let mut countries: Vec<&str> = rules.filter_map(|r| r.country.as_deref()).collect();
        countries.sort_unstable();
        countries.dedup();
        PlacesOfRules { countries }
    }

    /// Whether it may be this country: one of those chosen, or nobody chose any.
    fn may_be(&self, country: &str) -> bool {
        self.countries.is_empty() || self.countries.contains(&country)
    }

    /// Whether the areas of paint that were read may count for this guard.
    pub(super) fn counts_painted_areas(&self, guard: &PlannedGuard<'_>) -> bool {
        self.may_be(UNITED_STATES) && is_said(RemedyCaution::Lead, guard, self)
    }

    /// Who gives a permit. (from memory)
    fn office(&self) -> &'static str {
        let controlled = [
            "England",
            "Wales",
            "Scotland",
            "Northern Ireland",
            "Ireland",
        ];
        let offices = ["United States", "Canada"];
        let all = |of: &[&str]| {
            !self.countries.is_empty() && self.countries.iter().all(|country| of.contains(country))
        };
        if all(&controlled) {
            "the council's building control"
        } else if all(&offices) {
            "the building office"
        } else {
            "the local building authority"
        }
    }

    /// Whom to ask.
    pub(super) fn whom_to_ask(&self) -> String {
        format!(
            "Whom to ask: the owner (in writing) for holes and for what is seen from outside, {} for a permit, \
             an engineer for what holds it, the fire authority before a way is shut.",
            self.office()
        )
    }

    /// What was not read of the countries chosen.
    fn unread(&self, cautions: &[RemedyCaution]) -> Option<String> {
        let unread = self
            .countries
            .iter()
            .filter(|country| **country != UNITED_STATES);
        let unread: Vec<&str> = unread.copied().collect();
        let lead = cautions.contains(&RemedyCaution::Lead);
        (lead && !unread.is_empty()).then(|| {
            format!(
                "What work on old paint needs in {} was not read here: ask the health or building authority.",
                unread.join(", ")
            )
        })
    }
}

/// What to mind of these guards' plans: what holds anywhere with its key, then what was
/// read of the place.
pub(super) fn cautions<'p>(
    guards: impl Iterator<Item = &'p PlannedGuard<'p>>,
    places: &PlacesOfRules<'_>,
) -> (Vec<RemedyCaution>, Vec<String>) {
    let mut found: Vec<RemedyCaution> = Vec::new();
    let mut kinds: Vec<RemedyKind> = Vec::new();
    for guard in guards {
        let steps = guard.plan.steps.iter().map(|step| step.offered.kind);
        let bridges = guard.plan.bridges.iter().map(|bridge| bridge.kind);
        for kind in steps
            .chain(bridges)
            .chain(guard.plan.tonight.iter().copied())
        {
            kinds.push(kind);
            let all = kind.row().cautions.iter();
            found.extend(all.filter(|caution| is_said(**caution, guard, places)));
        }
    }
    found.sort();
    found.dedup();
    let local = LOCAL.iter().filter(|local| {
        let with = match &local.said {
            SaidWith::Caution(caution) => found.contains(caution),
            SaidWith::Kinds(of) => kinds.iter().any(|kind| of.contains(kind)),
            SaidWith::Permit => kinds.iter().any(|kind| kind.row().permit != Needed::No),
        };
        // what nobody chose is said only where it names its country and hurts if missed
        let lead = matches!(local.said, SaidWith::Caution(RemedyCaution::Lead));
        with && places.may_be(local.country) && (lead || !places.countries.is_empty())
    });
    let mut local: Vec<String> = local.map(|local| local.says.to_owned()).collect();
    local.extend(places.unread(&found));
    (found, local)
}

/// Lead and fibre only where it may be old.
fn is_said(caution: RemedyCaution, guard: &PlannedGuard<'_>, places: &PlacesOfRules<'_>) -> bool {
    let old = |year: i32| {
        guard.guard.of(Item::Built).all(|(_, observation)| {
            let value = observation.reading.as_ref().map(|reading| &reading.value);
            !matches!(value, Some(Value::Years(span)) if span.surely_from(year))
        })
    };
    match caution {
        // the year is that of the United States; of others none was read, so a late one is taken
        RemedyCaution::Lead if places.countries == [UNITED_STATES] => old(1978),
        RemedyCaution::Lead => old(2000),
        RemedyCaution::Fibre => old(1990),
        RemedyCaution::Below => guard.plan.high,
        RemedyCaution::Firm
        | RemedyCaution::Lever
        | RemedyCaution::Escape
        | RemedyCaution::Edge
        | RemedyCaution::OpenBay
        | RemedyCaution::Ladder
        | RemedyCaution::Cords
        | RemedyCaution::Choke
        | RemedyCaution::Sharp
        | RemedyCaution::Swing
        | RemedyCaution::Wires
        | RemedyCaution::Slab
        | RemedyCaution::Glass
        | RemedyCaution::Treated
        | RemedyCaution::Fire
        | RemedyCaution::Cable
        | RemedyCaution::Water
        | RemedyCaution::Watch => true,
    }
}
