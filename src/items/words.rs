//! Words that an item's reading may be.

/// One word of an item's list.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Word {
    /// The word as rulesets and reports write it.
    pub name: &'static str,
    /// Plain words that mean the same.
    pub synonyms: &'static [&'static str],
}

impl Word {
    /// A word without synonyms.
    pub(super) const fn plain(name: &'static str) -> Word {
        Word {
            name,
            synonyms: &[],
        }
    }

    /// A word with others that mean the same.
    pub(super) const fn or(name: &'static str, synonyms: &'static [&'static str]) -> Word {
        Word { name, synonyms }
    }
}

/// Yes and no, better first where an item has such words.
pub(super) const YES_NO: &[Word] = &[
    Word::or("yes", &["y", "true"]),
    Word::or("no", &["n", "false"]),
];

/// The other way round, for faults: no is better.
pub(super) const NO_YES: &[Word] = &[
    Word::or("no", &["n", "false"]),
    Word::or("yes", &["y", "true"]),
];
