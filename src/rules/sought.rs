//! What plain words ask for: where, what kind of home, which thing.

use crate::input::folded;
use crate::input::nearest;
use crate::items::Item;
use crate::rules::gazetteer;
use crate::rules::gazetteer::OnTheMap;
use crate::rules::matter::Matter;

/// What was asked for, as far as it was understood.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Sought {
    /// The countries; several where one name stands for several.
    pub countries: Vec<&'static str>,
    /// The part of the country.
    pub region: Option<&'static str>,
    /// `house` or `flat`, where either was said.
    pub home: Option<Home>,
    /// The word of the item `use`, where one was said or follows.
    pub purpose: Option<&'static str>,
    /// The word of the item `place`.
    pub place: Option<&'static str>,
    /// Narrower matters.
    pub matters: Vec<Matter>,
    /// The year in which it was built.
    pub built: Option<i32>,
    /// Words that were not understood, each with the nearest that would be.
    pub unknown: Vec<(String, Option<&'static str>)>,
}

/// What kind of home.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Home {
    /// One of several in a building.
    Flat,
    /// A house of one household or two.
    House,
}

/// Words of the item `use`; a test holds that it has them.
pub(super) mod usage {
    pub(in crate::rules) const DWELLING: &str = "dwelling";
    pub(in crate::rules) const PUBLIC: &str = "public";
    pub(in crate::rules) const WORKPLACE: &str = "workplace";
}

/// What a word or some words mean.
enum Meaning {
    Child,
    Home(Home),
    OnTheMap(OnTheMap),
    Nothing,
    Place(&'static str),
    Purpose(&'static str),
    Matter(Matter),
}

/// The longest name that is looked for, in words.
const MOST_WORDS: usize = 4;

/// The nearest word that would be understood.
fn near(word: &str) -> Option<&'static str> {
    let matters = Matter::ALL
        .iter()
        .flat_map(|matter| matter.asked_as())
        .copied();
    let kinds = KINDS.iter().flat_map(|(said, _)| said.iter()).copied();
    let places = Item::Place.words().iter().map(|word| word.name);
    nearest(
        word,
        gazetteer::names().chain(matters).chain(kinds).chain(places),
    )
}

/// A child-care home is both a place on the map of rules and a purpose, so that
/// some words mean two things.
fn meanings(words: &str) -> Vec<Meaning> {
    let mut meanings = Vec::new();
    meanings.extend(gazetteer::on_the_map(words).map(Meaning::OnTheMap));
    meanings.extend(Item::Place.word(words).map(Meaning::Place));
    let matters = Matter::ALL.into_iter();
    let matters = matters.filter(|matter| matter.asked_as().contains(&words));
    meanings.extend(matters.map(Meaning::Matter));
    for (said, kind) in KINDS {
        if said.contains(&words) {
            meanings.push(match kind {
                WordKind::Child => Meaning::Child,
                WordKind::Flat => Meaning::Home(Home::Flat),
                WordKind::House => Meaning::Home(Home::House),
                WordKind::Nothing => Meaning::Nothing,
                WordKind::Purpose(word) => Meaning::Purpose(word),
            });
        }
    }
    meanings
}

impl Sought {
    /// What plain words ask for.
    pub(super) fn read(text: &str) -> Sought {
        let text = folded(text);
        let of_a_word = |c: char| !(c.is_alphanumeric() || "-'.".contains(c));
        let tokens: Vec<&str> = text
            .split(of_a_word)
            .map(|word| word.trim_matches(['.', '\'', '-']))
            .filter(|word| !word.is_empty())
            .collect();
        let mut sought = Sought::default();
        let mut homes: Vec<Home> = Vec::new();
        let mut at = 0;
        while let Some(first) = tokens.get(at) {
            let longest = MOST_WORDS.min(tokens.len() - at);
            let read = (1..=longest).rev().find_map(|count| {
                let meanings = meanings(&tokens[at..at + count].join(" "));
                (!meanings.is_empty()).then_some((count, meanings))
            });
            let counted = first.starts_with(|c: char| c.is_ascii_digit());
            match (read, first.parse::<i32>()) {
                (Some((count, meanings)), _) => {
                    for meaning in meanings {
                        sought.take(meaning, &mut homes);
                    }
                    at += count;
                    continue;
                }
                (None, Ok(year @ 1500..=2200)) => sought.built = Some(year),
                // a storey, a number of stairs
                (None, _) if counted => {}
                (None, _) => sought.unknown.push(((*first).to_owned(), near(first))),
            }
            at += 1;
        }
        // a flat in a house may be one of two or of ten: that is asked
        let first = homes.first().copied();
        sought.home = first.filter(|first| homes.iter().all(|home| home == first));
        sought
    }

    fn take(&mut self, meaning: Meaning, homes: &mut Vec<Home>) {
        match meaning {
            Meaning::Child | Meaning::Nothing => {}
            Meaning::Home(home) => {
                homes.push(home);
                self.purpose = Some(usage::DWELLING);
            }
            Meaning::OnTheMap(OnTheMap::Countries(countries)) => {
                if self.region.is_none() {
                    self.countries = countries.to_vec();
                }
            }
            Meaning::OnTheMap(OnTheMap::Region(region)) => {
                let known = self.region.and_then(gazetteer::region);
                // "Chicago, Illinois": the city decides over the state that it lies in
                let of_the_city = known.is_some_and(|known| known.within == Some(region.name));
                if !of_the_city {
                    self.region = Some(region.name);
                    self.countries = vec![region.country];
                }
            }
            Meaning::Place(place) => self.place = Some(place),
            Meaning::Purpose(word) => self.purpose = Some(word),
            Meaning::Matter(matter) => self.matters.push(matter),
        }
    }
}

/// What else a word says.
enum WordKind {
    Child,
    Flat,
    House,
    Nothing,
    Purpose(&'static str),
}

const KINDS: &[(&[&str], WordKind)] = &[
    (
        &[
            "baby", "babies", "child", "children", "crawling", "infant", "kid", "kids", "newborn",
            "toddler", "toddlers", "twins",
        ],
        WordKind::Child,
    ),
    (
        &[
            "apartment",
            "apartments",
            "block",
            "common",
            "communal",
            "condo",
            "condominium",
            "flat",
            "flats",
            "maisonette",
            "shared",
            "stairwell",
            "stairwells",
            "tenement",
        ],
        WordKind::Flat,
    ),
    (
        &[
            "bungalow",
            "cottage",
            "duplex",
            "house",
            "houses",
            "row house",
            "rowhouse",
            "semi",
            "terrace house",
            "terraced house",
            "townhouse",
            "villa",
        ],
        WordKind::House,
    ),
    (
        &["dwelling", "home", "homes", "household"],
        WordKind::Purpose(usage::DWELLING),
    ),
    (
        &[
            "church",
            "creche",
            "day care",
            "daycare",
            "hospital",
            "hotel",
            "kindergarten",
            "kita",
            "library",
            "mall",
            "museum",
            "nursery",
            "preschool",
            "public",
            "public building",
            "restaurant",
            "school",
            "shop",
            "theatre",
            "theater",
        ],
        WordKind::Purpose(usage::PUBLIC),
    ),
    (
        &[
            "factory",
            "office",
            "offices",
            "plant",
            "warehouse",
            "work",
            "workplace",
            "workshop",
        ],
        WordKind::Purpose(usage::WORKPLACE),
    ),
    (
        &[
            "a",
            "about",
            "an",
            "and",
            "any",
            "at",
            "baluster",
            "balusters",
            "balustrade",
            "balustrades",
            "banister",
            "bars",
            "bedroom",
            "bedrooms",
            "big",
            "building",
            "buildings",
            "built",
            "by",
            "cable",
            "cables",
            "code",
            "date",
            "floor",
            "for",
            "from",
            "glass",
            "guard",
            "guardrail",
            "guardrails",
            "guards",
            "has",
            "have",
            "high",
            "i",
            "in",
            "inside",
            "is",
            "it",
            "large",
            "law",
            "level",
            "live",
            "living",
            "loft",
            "low",
            "metal",
            "my",
            "near",
            "new",
            "of",
            "old",
            "on",
            "one",
            "our",
            "outside",
            "rail",
            "railing",
            "railings",
            "rails",
            "regulation",
            "regulations",
            "room",
            "rules",
            "small",
            "state",
            "steel",
            "stone",
            "storey",
            "storeys",
            "stories",
            "story",
            "tall",
            "that",
            "the",
            "there",
            "to",
            "two",
            "we",
            "what",
            "which",
            "with",
            "without",
            "wood",
            "wooden",
            "young",
        ],
        WordKind::Nothing,
    ),
];

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_words_of_a_purpose_are_those_of_the_item() {
        for word in [usage::DWELLING, usage::PUBLIC, usage::WORKPLACE] {
            assert_eq!(Item::Use.word(word), Some(word));
        }
    }
}
