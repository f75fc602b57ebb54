//! What the table says of an item, and the item of a name.

use std::fmt;
use std::sync::OnceLock;

use crate::input::folded;
use crate::items::Danger;
use crate::items::Group;
use crate::items::Holds;
use crate::items::Item;
use crate::items::ItemInfo;
use crate::items::ItemPlace;
use crate::items::Kind;
use crate::items::Part;
use crate::items::Word;
use crate::items::table;

impl Item {
    /// What a load rule looks at, in the order of asking.
    pub const LOAD_PATH: &[Item] = table::LOAD_PATH;

    /// What a rule on any opening looks at.
    pub const ANY_OPENING: &[Item] = table::ANY_OPENING;

    /// The holes that a ball tried everywhere tells of.
    pub const EVERYWHERE: &[Item] = table::EVERYWHERE;

    /// Every item, in the order of the table.
    pub fn all() -> impl Iterator<Item = Item> {
        table::ITEMS.iter().map(|info| info.item)
    }

    /// What the table says of it.
    #[must_use]
    pub fn info(self) -> &'static ItemInfo {
        // the table is in the order of the enum; a test holds it so
        &table::ITEMS[self as usize]
    }

    /// Its name in surveys: `bottom gap`.
    #[must_use]
    pub fn name(self) -> &'static str {
        self.info().name
    }

    /// Its name in rulesets: `bottom-gap`.
    #[must_use]
    pub fn toml_name(self) -> String {
        self.name().replace(' ', "-")
    }

    /// The item of this name or synonym; case and runs of spaces do not count.
    #[must_use]
    pub fn by_name(name: &str) -> Option<Item> {
        spelt(name).or_else(|| spelt(&folded(name)))
    }

    /// Every name and synonym, for suggestions.
    pub fn names() -> impl Iterator<Item = &'static str> {
        table::ITEMS
            .iter()
            .flat_map(|info| std::iter::once(info.name).chain(info.synonyms.iter().copied()))
    }

    /// Whether it says which rules apply (circumstances).
    #[must_use]
    pub fn is_circumstance(self) -> bool {
        self.info().group == Group::Circumstance
    }

    /// Whether it is about the survey itself.
    #[must_use]
    pub fn is_survey_fact(self) -> bool {
        self.info().group == Group::Survey
    }

    /// Whether it is observed at the guard itself; its row needs a guard.
    #[must_use]
    pub fn is_at_guard(self) -> bool {
        matches!(self.info().group, Group::Measured | Group::Seen)
    }

    /// Whether it is a circumstance that is the same for most guards of a house,
    /// so that a sheet asks for it once.
    #[must_use]
    pub fn is_asked_once(self) -> bool {
        let once = match self.info().holds {
            Holds::ForAUnit | Holds::ForAll | Holds::ForMost => true,
            Holds::ForAGuard | Holds::ForItsFile | Holds::ForThisGuardAlone => false,
        };
        once && self.is_circumstance()
    }

    /// Whether a reading of it says that there is a guard.
    #[must_use]
    pub fn is_of_the_guard(self) -> bool {
        self.info().part == Part::OfTheGuard
    }

    /// Whether it is found on stairs alone.
    #[must_use]
    pub fn is_of_stairs(self) -> bool {
        self.info().place == ItemPlace::OnStairs
    }

    /// The item under which reports speak of it: what one remedy puts right stands together.
    #[must_use]
    pub fn topic(self) -> Item {
        self.info().topic.unwrap_or(self)
    }

    /// The words of its list; empty for other kinds.
    #[must_use]
    pub fn words(self) -> &'static [Word] {
        if let Kind::Words(words) = self.info().kind {
            words
        } else {
            &[]
        }
    }

    /// The danger that a word of its list states, if it does.
    #[must_use]
    pub fn danger(self, word: &str) -> Option<Danger> {
        self.words()
            .iter()
            .find(|known| known.name == word)
            .and_then(|known| known.danger)
    }

    /// Whether a word of its list states a danger.
    #[must_use]
    pub fn may_state_a_danger(self) -> bool {
        self.words().iter().any(|word| word.danger.is_some())
    }

    /// The list's own form of a word or synonym; case and runs of spaces do not count.
    #[must_use]
    pub fn word(self, text: &str) -> Option<&'static str> {
        let words = self.words();
        if let Some(word) = words.iter().find(|word| word.name == text) {
            return Some(word.name);
        }
        let text = folded(text);
        words
            .iter()
            .find(|word| word.name == text || word.synonyms.contains(&text.as_str()))
            .map(|word| word.name)
    }
}

/// The item of a name or synonym that is spelt as the table has it. No two items share one.
fn spelt(name: &str) -> Option<Item> {
    static NAMES: OnceLock<Vec<(&str, Item)>> = OnceLock::new();
    let names = NAMES.get_or_init(|| {
        let of_item = |info: &'static ItemInfo| {
            let synonyms = info.synonyms.iter().copied();
            let names = std::iter::once(info.name).chain(synonyms);
            names.map(|name| (name, info.item))
        };
        let mut names: Vec<_> = table::ITEMS.iter().flat_map(of_item).collect();
        names.sort_unstable();
        names
    });
    let place = names.binary_search_by_key(&name, |(known, _)| known).ok()?;
    names.get(place).map(|(_, item)| *item)
}

impl fmt::Display for Item {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.name())
    }
}
