//! A set of items.

use crate::items::Item;
use crate::items::table::ITEMS;

/// A set of items, one bit each: every guard carries some, and there may be a million guards.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct ItemSet([u64; WORDS]);

const BITS: usize = u64::BITS as usize;
const WORDS: usize = ITEMS.len().div_ceil(BITS);

impl ItemSet {
    /// Without any.
    pub const EMPTY: ItemSet = ItemSet([0; WORDS]);

    const fn word(item: Item) -> usize {
        item as usize / BITS
    }

    const fn bit(item: Item) -> u64 {
        1 << (item as usize % BITS)
    }

    /// Whether an item is in it.
    #[must_use]
    pub const fn contains(self, item: Item) -> bool {
        self.0[ItemSet::word(item)] & ItemSet::bit(item) != 0
    }

    /// Puts an item in; whether it was not there before.
    pub const fn insert(&mut self, item: Item) -> bool {
        let new = !self.contains(item);
        self.0[ItemSet::word(item)] |= ItemSet::bit(item);
        new
    }

    /// With one more.
    #[must_use]
    pub const fn with(mut self, item: Item) -> ItemSet {
        self.insert(item);
        self
    }

    /// All that is in either.
    #[must_use]
    pub fn union(self, other: ItemSet) -> ItemSet {
        let mut both = self;
        for (word, more) in both.0.iter_mut().zip(other.0) {
            *word |= more;
        }
        both
    }

    /// Whether something is in both.
    #[must_use]
    pub fn intersects(self, other: ItemSet) -> bool {
        self.0
            .iter()
            .zip(other.0)
            .any(|(one, other)| one & other != 0)
    }

    /// Whether there is none in it.
    #[must_use]
    pub fn is_empty(self) -> bool {
        self == ItemSet::EMPTY
    }
}

impl FromIterator<Item> for ItemSet {
    fn from_iter<I: IntoIterator<Item = Item>>(items: I) -> ItemSet {
        let mut set = ItemSet::EMPTY;
        for item in items {
            set.insert(item);
        }
        set
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_item_is_in_the_set_once() {
        let mut set = ItemSet::EMPTY;
        assert!(set.is_empty());
        for item in Item::all() {
            assert!(!set.contains(item), "{item}");
            assert!(set.insert(item), "{item}");
            assert!(!set.insert(item), "{item}");
        }
        assert_eq!(set, Item::all().collect());
    }

    #[test]
    fn two_sets_have_in_common_what_is_in_both() {
        let [height, opening, drop] =
            [Item::Height, Item::Opening, Item::Drop].map(|item| ItemSet::EMPTY.with(item));
        let both = height.union(opening);
        assert_eq!(both, [Item::Opening, Item::Height].into_iter().collect());
        assert!(both.intersects(height) && both.intersects(opening));
        assert!(!both.intersects(drop) && !both.intersects(ItemSet::EMPTY));
    }
}
