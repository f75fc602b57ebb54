//! The circumstances of the wood: what is known of species, moisture and load
//! duration, and every combination of what is not.

use crate::items::ConditionWord;
use crate::items::Item;
use crate::items::LocationWord;
use crate::items::WoodSpeciesWord;
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

/// Both ends of the disputed load duration (facts/load-path.md §2.2).
pub(super) const DURATIONS: [LoadDuration; 2] =
    [LoadDuration::TEN_YEARS, LoadDuration::TEN_MINUTES];

/// The name in the table of species behind a word of the item.
const fn in_the_table(word: WoodSpeciesWord) -> Option<&'static str> {
    match word {
        WoodSpeciesWord::Cedar => Some("Western cedars"),
        WoodSpeciesWord::DouglasFirLarch => Some("Douglas Fir-Larch"),
        WoodSpeciesWord::HemFir => Some("Hem-Fir"),
        WoodSpeciesWord::Redwood => Some("Redwood"),
        WoodSpeciesWord::SouthernPine => Some("Southern Pine"),
        WoodSpeciesWord::SprucePineFir => Some("Spruce-Pine-Fir"),
        WoodSpeciesWord::SprucePineFirSouth => Some("SPF (South)"),
        WoodSpeciesWord::UnknownWood => None,
    }
}

/// What is known of the wood.
pub(super) struct Wood {
    species: Vec<&'static Species>,
    timbers: Vec<&'static Species>,
    moistures: Vec<Moisture>,
    taken: Vec<Taken>,
}

impl Wood {
    pub(super) fn of(seen: &Seen<'_, '_>) -> Wood {
        let named = seen.word().and_then(in_the_table);
        let mut taken = vec![Taken::Grade, Taken::Duration];
        if named.is_none() {
            taken.push(Taken::Species);
        }
        let of = |table: &'static [Species]| {
            let fits = |species: &&Species| named.is_none_or(|name| species.name == name);
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
    let inside = seen.word() == Some(LocationWord::Inside);
    if seen.has(ConditionWord::Wet) {
        vec![Moisture::Wet]
    } else if seen.has(ConditionWord::Dry) || inside {
        vec![Moisture::Dry]
    } else {
        vec![Moisture::Dry, Moisture::Wet]
    }
}
