//! The circumstances of the wood: what is known of species, moisture and load
//! duration, and every combination of what is not.

use crate::items::Item;
use crate::judge::load_path::link::Taken;
use crate::judge::load_path::seen::Seen;
use crate::statics::factors::Incising;
use crate::statics::factors::JointService;
use crate::statics::factors::LoadDuration;
use crate::statics::factors::Moisture;
use crate::statics::wood::SPECIES;
use crate::statics::wood::Service;
use crate::statics::wood::Species;
use crate::statics::wood::TIMBERS;

/// Both ends of the disputed load duration (NDS 2018 Table
/// 2.3.2 goes by time and names no guards).
pub(super) const DURATIONS: [LoadDuration; 2] =
    [LoadDuration::TEN_YEARS, LoadDuration::TEN_MINUTES];

/// The names of the table of species behind the words of the item.
const NAMES: &[(&str, &str)] = &[
    ("southern pine", "Southern Pine"),
    ("douglas fir-larch", "Douglas Fir-Larch"),
    ("hem-fir", "Hem-Fir"),
    ("spruce-pine-fir", "Spruce-Pine-Fir"),
    ("spruce-pine-fir south", "SPF (South)"),
    ("redwood", "Redwood"),
    ("cedar", "Western cedars"),
];

/// What is known of the wood.
pub(super) struct Wood {
    species: Vec<&'static Species>,
    timbers: Vec<&'static Species>,
    moistures: Vec<Moisture>,
    taken: Vec<Taken>,
}

impl Wood {
    pub(super) fn of(seen: &Seen<'_, '_>) -> Wood {
        let word = seen.word(Item::WoodSpecies);
        let named = word.and_then(|word| NAMES.iter().find(|(known, _)| *known == word));
        let mut taken = vec![Taken::Grade, Taken::Duration];
        if named.is_none() {
            taken.push(Taken::Species);
        }
        let of = |table: &'static [Species]| {
            let fits = |species: &&Species| named.is_none_or(|(_, name)| species.name == *name);
            table.iter().filter(fits).collect()
        };
        let moistures = moistures(seen);
        if moistures.len() > 1 {
            taken.push(Taken::Moisture);
        }
        Wood {
            species: of(SPECIES),
            timbers: of(TIMBERS),
            moistures,
            taken,
        }
    }

    /// Lumber 2 to 4 in thick.
    pub(super) fn lumber(&self) -> &[&'static Species] {
        &self.species
    }

    /// Posts and timbers 5 x 5 in and larger.
    pub(super) fn timbers(&self) -> &[&'static Species] {
        &self.timbers
    }

    pub(super) fn moistures(&self) -> &[Moisture] {
        &self.moistures
    }

    /// What was taken as given.
    pub(super) fn taken(&self) -> &[Taken] {
        &self.taken
    }

    /// What would narrow a link of wood.
    pub(super) fn narrows(&self) -> Vec<Item> {
        let mut items = Vec::new();
        if self.taken.contains(&Taken::Species) {
            items.push(Item::WoodSpecies);
        }
        if self.taken.contains(&Taken::Moisture) {
            items.push(Item::Condition);
        }
        items
    }

    /// Every service of a member that cannot be ruled out.
    pub(super) fn members(&self) -> impl Iterator<Item = Service> {
        self.moistures.iter().flat_map(|moisture| {
            DURATIONS.map(|duration| Service {
                duration,
                moisture: *moisture,
                incising: Incising::Plain,
            })
        })
    }

    /// Every service of a joint that cannot be ruled out.
    pub(super) fn joints(&self) -> impl Iterator<Item = JointService> {
        self.moistures
            .iter()
            .flat_map(|moisture| DURATIONS.map(|d| JointService::plain(d, *moisture)))
    }
}

/// Wet or dry where somebody said so; inside dry; else both.
fn moistures(seen: &Seen<'_, '_>) -> Vec<Moisture> {
    let inside = seen.word(Item::Location) == Some("inside");
    if seen.has(Item::Condition, "wet") {
        vec![Moisture::Wet]
    } else if seen.has(Item::Condition, "dry") || inside {
        vec![Moisture::Dry]
    } else {
        vec![Moisture::Dry, Moisture::Wet]
    }
}
