//! The words of one item as an enum, so that code cannot name one that there is not.

use crate::items::Item;
use crate::items::Word;

/// The words of one item, for code that tells them apart.
pub trait ItemWord: Copy + Eq + 'static {
    /// The item whose words they are.
    const ITEM: Item;
    /// All of them, better ones first.
    const ALL: &'static [Self];
    /// What the table says of each, in the same order.
    const WORDS: &'static [Word];

    /// The word as rulesets and reports write it.
    #[must_use]
    fn name(self) -> &'static str;

    /// The word of this name; synonyms are none.
    #[must_use]
    fn by_name(name: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|word| word.name() == name)
    }
}

/// The list of one item's words, as an enum and as a column of the table.
macro_rules! item_words {
    ($($list:ident of $item:ident {
        $($word:ident = $name:literal $synonyms:tt $($danger:ident)?,)+
    })+) => {$(
        #[doc = concat!("A word of the item `", stringify!($item), "`.")]
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        #[expect(missing_docs, reason = "the table of items describes them")]
        pub enum $list { $($word,)+ }

        impl ItemWord for $list {
            const ITEM: Item = Item::$item;
            const ALL: &'static [$list] = &[$($list::$word,)+];
            const WORDS: &'static [Word] = &[$(Word {
                name: $name,
                synonyms: &$synonyms,
                danger: item_words!(@danger $($danger)?),
            },)+];

            fn name(self) -> &'static str {
                Self::WORDS[self as usize].name
            }
        }
    )+

        /// The list of each item that has one, to check the table against.
        #[cfg(test)]
        pub(super) const LISTS: &[(Item, &[Word])] = &[$((Item::$item, $list::WORDS),)+];
    };
    (@danger) => { None };
    (@danger $danger:ident) => { Some(danger::$danger) };
}

pub(super) use item_words;
