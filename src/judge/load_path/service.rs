//! The circumstances of the wood: what is known of species, grade, moisture, load
//! duration and incising, and every combination of what is not.

use crate::items::ConditionWord;
use crate::items::Item;
use crate::items::LocationWord;
use crate::items::LumberGradeWord;
use crate::items::RowsOfSlitsWord;
use crate::items::WoodSpeciesWord;
use crate::judge::load_path::link::Taken;
use crate::judge::load_path::seen::Seen;
use crate::statics::factors::Grain;
use crate::statics::factors::Incising;
use crate::statics::factors::JointService;
use crate::statics::factors::LoadDuration;
use crate::statics::factors::Moisture;
use crate::statics::grade::Grade;
use crate::statics::wood::SPECIES;
use crate::statics::wood::Service;
use crate::statics::wood::Species;
use crate::statics::wood::TIMBERS;

/// Both ends of the disputed load duration (NDS 2018 Table 2.3.2 goes by time and
/// names no guards; engineers argue both, read second-hand).
pub(super) const DURATIONS: [LoadDuration; 2] =
    [LoadDuration::TEN_YEARS, LoadDuration::TEN_MINUTES];

/// The name in the table of species behind a word; none for a wood that nobody knows.
const fn table_name(word: WoodSpeciesWord) -> Option<&'static str> {
    Some(match word {
        WoodSpeciesWord::SouthernPine => "Southern Pine",
        WoodSpeciesWord::DouglasFirLarch => "Douglas Fir-Larch",
        WoodSpeciesWord::HemFir => "Hem-Fir",
        WoodSpeciesWord::SprucePineFir => "Spruce-Pine-Fir",
        WoodSpeciesWord::SprucePineFirSouth => "SPF (South)",
        WoodSpeciesWord::Redwood => "Redwood",
        WoodSpeciesWord::Cedar => "Western cedars",
        WoodSpeciesWord::UnknownWood => return None,
    })
}

/// The grade behind a word.
const fn graded(word: LumberGradeWord) -> Option<Grade> {
    Some(match word {
        LumberGradeWord::NumberOne => Grade::No1,
        LumberGradeWord::NumberTwo => Grade::No2,
        LumberGradeWord::NumberThree => Grade::No3,
        LumberGradeWord::Stud => Grade::Stud,
        LumberGradeWord::Standard => Grade::Standard,
        LumberGradeWord::UnknownGrade => return None,
    })
}

/// Treated pine is usually not incised; other treated wood usually is (common
/// practice, no source).
const SELDOM_INCISED: &str = "Southern Pine";

/// What is known of the wood of posts and rails, or of the framing.
pub(super) struct Wood {
    species: Vec<&'static Species>,
    timbers: Vec<&'static Species>,
    grades: Vec<Grade>,
    moistures: Vec<Moisture>,
    slits: Option<Incising>,
    may_be_treated: bool,
    taken: Vec<Taken>,
    species_item: Item,
}

impl Wood {
    /// Posts, rails and balusters.
    pub(super) fn of_posts(seen: &Seen<'_, '_>) -> Wood {
        Wood::of(seen, Item::WoodSpecies)
    }

    /// Rim, joists and studs: often another wood than the posts.
    pub(super) fn of_framing(seen: &Seen<'_, '_>) -> Wood {
        Wood::of(seen, Item::FramingSpecies)
    }

    fn of(seen: &Seen<'_, '_>, species_item: Item) -> Wood {
        let named = seen.word_in(species_item).and_then(table_name);
        let mut taken = vec![Taken::Duration];
        if named.is_none() {
            taken.push(if species_item == Item::FramingSpecies {
                Taken::FramingSpecies
            } else {
                Taken::Species
            });
        }
        let of = |table: &'static [Species]| {
            let fits = |species: &&Species| named.is_none_or(|name| species.name == name);
            table.iter().filter(fits).collect()
        };
        let moistures = moistures(seen);
        if moistures.len() > 1 {
            taken.push(Taken::Moisture);
        }
        let grade = seen.word().and_then(graded);
        let grades = grade.map_or_else(|| Grade::ALL.to_vec(), |grade| vec![grade]);
        let slits = match seen.word::<RowsOfSlitsWord>() {
            Some(RowsOfSlitsWord::Yes) => Some(Incising::Incised),
            Some(_) => Some(Incising::Plain),
            None => None,
        };
        Wood {
            species: of(SPECIES),
            timbers: of(TIMBERS),
            grades,
            moistures,
            slits,
            may_be_treated: seen.word() != Some(LocationWord::Inside),
            taken,
            species_item,
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

    /// The grades that it may be.
    pub(super) fn grades(&self) -> &[Grade] {
        &self.grades
    }

    pub(super) fn moistures(&self) -> &[Moisture] {
        &self.moistures
    }

    /// What was taken as given of a fastener in the wood.
    pub(super) fn taken(&self) -> &[Taken] {
        &self.taken
    }

    /// What was taken as given of a member that bends.
    pub(super) fn taken_in_bending(&self) -> Vec<Taken> {
        let mut taken = self.taken.clone();
        if self.grades.len() > 1 {
            taken.push(Taken::Grade);
        }
        if self.slits.is_none() && self.may_be_treated {
            taken.push(Taken::Slits);
        }
        taken
    }

    /// What would narrow a link of fasteners in the wood.
    pub(super) fn narrows(&self) -> Vec<Item> {
        let mut items = Vec::new();
        if self.species.len() > 1 {
            items.push(self.species_item);
        }
        if self.moistures.len() > 1 {
            items.push(Item::Location);
        }
        items
    }

    /// What would narrow a member that bends.
    pub(super) fn narrows_bending(&self) -> Vec<Item> {
        let mut items = Vec::new();
        if self.grades.len() > 1 {
            items.push(Item::LumberGrade);
        }
        if self.species.len() > 1 {
            items.push(self.species_item);
        }
        let slit = |species: &&&Species| species.name != SELDOM_INCISED;
        if self.slits.is_none() && self.may_be_treated && self.species.iter().any(|s| slit(&s)) {
            items.push(Item::RowsOfSlits);
        }
        items
    }

    /// Whether this wood may be incised: treated wood often is.
    fn incisings(&self, species: &Species) -> &'static [Incising] {
        match self.slits {
            Some(Incising::Incised) => &[Incising::Incised],
            Some(Incising::Plain) => &[Incising::Plain],
            None if self.may_be_treated && species.name != SELDOM_INCISED => {
                &[Incising::Plain, Incising::Incised]
            }
            None => &[Incising::Plain],
        }
    }

    /// Every service of a member of this species that cannot be ruled out.
    pub(super) fn members(&self, species: &Species) -> Vec<Service> {
        let mut all = Vec::new();
        for incising in self.incisings(species) {
            for moisture in &self.moistures {
                all.extend(DURATIONS.map(|duration| Service {
                    duration,
                    moisture: *moisture,
                    incising: *incising,
                }));
            }
        }
        all
    }

    /// Every service of a joint in side grain that cannot be ruled out.
    pub(super) fn joints(&self) -> impl Iterator<Item = JointService> {
        self.joints_in(Grain::Side)
    }

    /// Every service of a joint in this grain that cannot be ruled out.
    pub(super) fn joints_in(&self, grain: Grain) -> impl Iterator<Item = JointService> {
        self.moistures.iter().flat_map(move |moisture| {
            DURATIONS.map(|duration| JointService {
                grain,
                ..JointService::plain(duration, *moisture)
            })
        })
    }
}

/// Wet where somebody said so; inside dry; else both: a roof alone does not keep
/// wood dry enough (answer page of the American wood council, read in the text).
fn moistures(seen: &Seen<'_, '_>) -> Vec<Moisture> {
    if seen.mentions(ConditionWord::Wet) {
        vec![Moisture::Wet]
    } else if seen.word() == Some(LocationWord::Inside) {
        vec![Moisture::Dry]
    } else {
        vec![Moisture::Dry, Moisture::Wet]
    }
}
