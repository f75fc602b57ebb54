//! By what is counted what it takes to put an item right.

use crate::items::Item;

impl Item {
    /// What to write down beside it so that material can be counted; asked only where it
    /// falls short.
    #[must_use]
    pub fn counted_by(self) -> &'static [Item] {
        let known = COUNTED_BY.iter().find(|(items, _)| items.contains(&self));
        known.map_or(&[], |(_, by)| by)
    }
}

/// Items, and what they are counted by; a flight is counted by its steps, the rest by the
/// piece.
const COUNTED_BY: &[(&[Item], &[Item])] = &[
    (
        &[Item::Opening],
        &[
            Item::GuardLength,
            Item::BalusterSection,
            Item::BalusterSpacing,
        ],
    ),
    (
        &[
            Item::BottomGap,
            Item::EdgeGap,
            Item::GapAboveSolidPart,
            Item::Height,
            Item::Infill,
        ],
        &[Item::GuardLength],
    ),
];
