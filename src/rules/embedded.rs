//! The rulesets that are shipped inside the program.

use crate::input::SourceFile;

/// The file of a shipped ruleset.
#[must_use]
pub fn embedded(id: &str) -> Option<SourceFile> {
    EMBEDDED
        .iter()
        .find(|(name, _)| *name == id)
        .map(|(name, text)| SourceFile::new(name, text))
}

/// The ids of the shipped rulesets.
pub fn embedded_ids() -> impl Iterator<Item = &'static str> {
    EMBEDDED.iter().map(|(name, _)| *name)
}

/// The ids of the other shipped editions of a ruleset: those that differ from it
/// in the year or number at the end alone.
///
/// ```
/// use guardrule::rules::other_editions;
/// assert!(other_editions("us-dwelling-2018").any(|id| id == "us-dwelling-2000"));
/// assert_eq!(other_editions("small-child-advice").count(), 0);
/// ```
pub fn other_editions(id: &str) -> impl Iterator<Item = &'static str> {
    let stem = |id: &str| id.trim_end_matches(|c: char| c.is_ascii_digit()).to_owned();
    let own = stem(id);
    let has_number = own.len() < id.len();
    let id = id.to_owned();
    embedded_ids().filter(move |other| has_number && **other != id && stem(other) == own)
}

const EMBEDDED: &[(&str, &str)] = &[
    (
        "us-dwelling-2000",
        include_str!("../../rulesets/us-dwelling-2000.toml"),
    ),
    (
        "us-dwelling-2003",
        include_str!("../../rulesets/us-dwelling-2003.toml"),
    ),
    (
        "us-dwelling-2006",
        include_str!("../../rulesets/us-dwelling-2006.toml"),
    ),
    (
        "us-dwelling-2009",
        include_str!("../../rulesets/us-dwelling-2009.toml"),
    ),
    (
        "us-dwelling-2012",
        include_str!("../../rulesets/us-dwelling-2012.toml"),
    ),
    (
        "us-dwelling-2015",
        include_str!("../../rulesets/us-dwelling-2015.toml"),
    ),
    (
        "us-dwelling-2018",
        include_str!("../../rulesets/us-dwelling-2018.toml"),
    ),
    (
        "us-dwelling-2021",
        include_str!("../../rulesets/us-dwelling-2021.toml"),
    ),
    (
        "us-dwelling-2024",
        include_str!("../../rulesets/us-dwelling-2024.toml"),
    ),
    (
        "us-windows-2012",
        include_str!("../../rulesets/us-windows-2012.toml"),
    ),
    (
        "us-windows-2015",
        include_str!("../../rulesets/us-windows-2015.toml"),
    ),
    (
        "us-windows-2021",
        include_str!("../../rulesets/us-windows-2021.toml"),
    ),
    (
        "us-buildings-2018",
        include_str!("../../rulesets/us-buildings-2018.toml"),
    ),
    (
        "us-buildings-2000",
        include_str!("../../rulesets/us-buildings-2000.toml"),
    ),
    (
        "us-workplace",
        include_str!("../../rulesets/us-workplace.toml"),
    ),
    (
        "us-accessible-handrails-2010",
        include_str!("../../rulesets/us-accessible-handrails-2010.toml"),
    ),
    (
        "us-pool-barriers",
        include_str!("../../rulesets/us-pool-barriers.toml"),
    ),
    (
        "us-rental-upkeep",
        include_str!("../../rulesets/us-rental-upkeep.toml"),
    ),
    (
        "massachusetts-rental-2024",
        include_str!("../../rulesets/massachusetts-rental-2024.toml"),
    ),
    (
        "california-dwelling",
        include_str!("../../rulesets/california-dwelling.toml"),
    ),
    (
        "new-york-city",
        include_str!("../../rulesets/new-york-city.toml"),
    ),
    (
        "chicago-older-text",
        include_str!("../../rulesets/chicago-older-text.toml"),
    ),
    (
        "washington-worker-housing",
        include_str!("../../rulesets/washington-worker-housing.toml"),
    ),
    (
        "us-stair-gates",
        include_str!("../../rulesets/us-stair-gates.toml"),
    ),
    (
        "us-crib-slats",
        include_str!("../../rulesets/us-crib-slats.toml"),
    ),
    (
        "us-playground-handbook-2010",
        include_str!("../../rulesets/us-playground-handbook-2010.toml"),
    ),
    (
        "canada-dwelling",
        include_str!("../../rulesets/canada-dwelling.toml"),
    ),
    (
        "ontario-2012",
        include_str!("../../rulesets/ontario-2012.toml"),
    ),
    (
        "uk-approved-document-k",
        include_str!("../../rulesets/uk-approved-document-k.toml"),
    ),
    (
        "northern-ireland-2012",
        include_str!("../../rulesets/northern-ireland-2012.toml"),
    ),
    (
        "ireland-tgd-k-2014",
        include_str!("../../rulesets/ireland-tgd-k-2014.toml"),
    ),
    (
        "scotland-1999",
        include_str!("../../rulesets/scotland-1999.toml"),
    ),
    (
        "scotland-2019",
        include_str!("../../rulesets/scotland-2019.toml"),
    ),
    (
        "australia-ncc-2022",
        include_str!("../../rulesets/australia-ncc-2022.toml"),
    ),
    (
        "australia-ncc-2019",
        include_str!("../../rulesets/australia-ncc-2019.toml"),
    ),
    (
        "new-zealand-f4",
        include_str!("../../rulesets/new-zealand-f4.toml"),
    ),
    (
        "germany-building-codes",
        include_str!("../../rulesets/germany-building-codes.toml"),
    ),
    (
        "germany-hesse-2018",
        include_str!("../../rulesets/germany-hesse-2018.toml"),
    ),
    (
        "germany-stairs-din-18065",
        include_str!("../../rulesets/germany-stairs-din-18065.toml"),
    ),
    (
        "germany-baden-wuerttemberg",
        include_str!("../../rulesets/germany-baden-wuerttemberg.toml"),
    ),
    (
        "germany-child-minding",
        include_str!("../../rulesets/germany-child-minding.toml"),
    ),
    (
        "germany-child-care",
        include_str!("../../rulesets/germany-child-care.toml"),
    ),
    (
        "germany-schleswig-holstein-1994",
        include_str!("../../rulesets/germany-schleswig-holstein-1994.toml"),
    ),
    (
        "france-1988",
        include_str!("../../rulesets/france-1988.toml"),
    ),
    (
        "france-2024",
        include_str!("../../rulesets/france-2024.toml"),
    ),
    (
        "austria-oib-4",
        include_str!("../../rulesets/austria-oib-4.toml"),
    ),
    (
        "switzerland-sia-358",
        include_str!("../../rulesets/switzerland-sia-358.toml"),
    ),
    (
        "netherlands-2012",
        include_str!("../../rulesets/netherlands-2012.toml"),
    ),
    (
        "netherlands-existing-2012",
        include_str!("../../rulesets/netherlands-existing-2012.toml"),
    ),
    ("sweden-bbr", include_str!("../../rulesets/sweden-bbr.toml")),
    (
        "denmark-br18",
        include_str!("../../rulesets/denmark-br18.toml"),
    ),
    (
        "norway-tek17",
        include_str!("../../rulesets/norway-tek17.toml"),
    ),
    (
        "norway-tek10",
        include_str!("../../rulesets/norway-tek10.toml"),
    ),
    (
        "singapore-h",
        include_str!("../../rulesets/singapore-h.toml"),
    ),
    (
        "japan-balconies",
        include_str!("../../rulesets/japan-balconies.toml"),
    ),
    (
        "india-kerala-high-rise",
        include_str!("../../rulesets/india-kerala-high-rise.toml"),
    ),
    (
        "europe-stair-gates-en-1930",
        include_str!("../../rulesets/europe-stair-gates-en-1930.toml"),
    ),
    (
        "small-child-advice",
        include_str!("../../rulesets/small-child-advice.toml"),
    ),
];
