//! What a sheet is made of.

use std::collections::BTreeSet;
use std::num::NonZeroU32;

use crate::items::Item;
use crate::quantities::LengthUnit;
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

    /// How high the page is between its margins of 11 mm, in millimetres; of both papers
    /// the lower one.
    pub(super) const fn room(self) -> f64 {
        match self {
            Paper::A4 => 275.0,
            Paper::AsPrinted | Paper::Letter => 257.0,
        }
    }
}

/// Whether the pages about what holds a guard are wanted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum StrengthPages {
    /// They are left out.
    No,
    /// Each guard has them.
    Yes,
}

/// What a sheet is made of.
#[derive(Clone, Debug)]
pub struct Sheet<'a> {
    /// The chosen rulesets.
    pub rulesets: &'a [Ruleset],
    /// How many guards have pages.
    pub guards: NonZeroU32,
    /// The paper.
    pub paper: Paper,
    /// Whether what holds a guard is asked for as well.
    pub strength: StrengthPages,
}

/// What stands on every sheet: dangers come before all rules, chosen or not, and a
/// photograph helps whoever mends it.
const ALWAYS: [Item; 8] = [
    Item::Guard,
    Item::MovesWhenPushed,
    Item::InfillLoose,
    Item::Condition,
    Item::Paint,
    Item::Place,
    Item::Drop,
    Item::Photo,
];

impl Sheet<'_> {
    /// The items that the rulesets ask for, strength included.
    pub(super) fn items(&self) -> BTreeSet<Item> {
        self.rulesets.iter().flat_map(Ruleset::items).collect()
    }

    /// Those on the pages of a guard: what is asked for beyond strength, and the dangers.
    pub(super) fn items_of_a_guard(&self) -> BTreeSet<Item> {
        let rulesets = self.rulesets.iter();
        let mut items: BTreeSet<Item> = rulesets.flat_map(Ruleset::items_beyond_strength).collect();
        items.extend(ALWAYS);
        items
    }

    /// Those on its strength pages.
    pub(super) fn items_of_strength(&self) -> BTreeSet<Item> {
        match self.strength {
            StrengthPages::No => BTreeSet::new(),
            StrengthPages::Yes => {
                let others = self.items_of_a_guard();
                self.items().difference(&others).copied().collect()
            }
        }
    }

    /// The unit of the country's tapes: inches where all law is of the United States.
    pub(super) fn unit(&self) -> LengthUnit {
        let mut law = self
            .rulesets
            .iter()
            .filter(|ruleset| !ruleset.advisory)
            .peekable();
        let any = law.peek().is_some();
        if any && law.all(|ruleset| ruleset.country.as_deref() == Some("United States")) {
            LengthUnit::Inch
        } else {
            LengthUnit::Millimetre
        }
    }
}
