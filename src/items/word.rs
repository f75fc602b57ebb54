//! Words that an item's reading may be.

use crate::items::Danger;

/// One word of an item's list.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Word {
    /// The word as rulesets and reports write it.
    pub name: &'static str,
    /// Plain words that mean the same.
    pub synonyms: &'static [&'static str],
    /// The danger that it states, if it does.
    pub danger: Option<Danger>,
}
