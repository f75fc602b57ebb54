//! What a sheet is made of.

use std::collections::BTreeSet;
use std::num::NonZeroU32;

use crate::items::Item;
use crate::rules::Ruleset;

/// The paper to print on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Paper {
    /// 210 × 297 mm.
    A4,
    /// What the printer holds; the pages fit A4 and Letter.
    AsPrinted,
    /// 8 1/2 × 11 in.
    Letter,
}

impl Paper {
    pub(super) const fn rule(self) -> &'static str {
        match self {
            Paper::A4 => "@page { size: A4 portrait; }",
            Paper::AsPrinted => "",
            Paper::Letter => "@page { size: letter portrait; }",
        }
    }
}

/// What a sheet is made of.
#[derive(Clone, Debug)]
pub struct Sheet<'a> {
    /// The chosen rulesets.
    pub rulesets: &'a [Ruleset],
    /// How many guards have a page.
    pub guards: NonZeroU32,
    /// The paper.
    pub paper: Paper,
}

impl Sheet<'_> {
    /// The items that the rulesets ask for.
    pub(super) fn items(&self) -> BTreeSet<Item> {
        self.rulesets.iter().flat_map(Ruleset::items).collect()
    }

    /// Those of them that are asked for beyond strength.
    pub(super) fn items_beyond_strength(&self) -> BTreeSet<Item> {
        let rulesets = self.rulesets.iter();
        rulesets.flat_map(Ruleset::items_beyond_strength).collect()
    }
}
