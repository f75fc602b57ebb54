//! The rulesets that are shipped inside the program.

use crate::source::SourceFile;

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

const EMBEDDED: &[(&str, &str)] = &[
    (
        "us-dwelling-2018",
        include_str!("../../rulesets/us-dwelling-2018.toml"),
    ),
    (
        "us-dwelling-2000",
        include_str!("../../rulesets/us-dwelling-2000.toml"),
    ),
    (
        "uk-approved-document-k",
        include_str!("../../rulesets/uk-approved-document-k.toml"),
    ),
    (
        "small-child-advice",
        include_str!("../../rulesets/small-child-advice.toml"),
    ),
];
