//! A set of items.

use crate::items::Item;
use crate::items::table::ITEMS;

/// A set of items, one bit each: every guard carries some, and there may be a million guards.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct ItemSet(u128);

const _: () = assert!(ITEMS.len() <= 128, "more items than bits");

impl ItemSet {
    /// Without any.
    pub const EMPTY: ItemSet = ItemSet(0);

    const fn bit(item: Item) -> u128 {
        1 << item as u32
    }

    /// Whether an item is in it.
    #[must_use]
    pub const fn contains(self, item: Item) -> bool {
        self.0 & ItemSet::bit(item) != 0
    }

    /// Puts an item in; whether it was not there before.
    pub const fn insert(&mut self, item: Item) -> bool {
        let new = !self.contains(item);
        self.0 |= ItemSet::bit(item);
        new
    }

    /// Whether there is none in it.
    #[must_use]
    pub const fn is_empty(self) -> bool {
        self.0 == 0
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
}
