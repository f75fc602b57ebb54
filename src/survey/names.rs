//! Names of buildings, units and guards: which are the same, and which nearly.

use std::borrow::Cow;
use std::collections::HashMap;
use std::collections::hash_map::RandomState;
use std::hash::BuildHasher;

use crate::survey::RowPlace;

/// A name in the index: a building, a unit or a guard.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub(super) struct NameId(u32);

impl NameId {
    /// Its place among all names, from 0 (the survey itself).
    pub(super) fn index(self) -> usize {
        self.0 as usize
    }
}

/// How many names are looked at before the index: a building, a unit, a guard.
const AHEAD: usize = 3;

/// The survey itself: what buildings belong to.
pub(super) const SURVEY: NameId = NameId(0);

#[derive(Clone, Debug)]
struct NameNode {
    parent: NameId,
    /// Where its text ends in the arena; it begins where the one before ends.
    end: usize,
    first: RowPlace,
    /// Another name of the same hash.
    chained: Option<NameId>,
}

/// All names of a survey, each under what it belongs to.
///
/// The texts lie one behind the other in one place, so that a survey of a
/// million guards costs some tens of megabytes and not hundreds.
#[derive(Clone, Debug)]
pub(super) struct Names {
    hasher: RandomState,
    by_hash: HashMap<u64, NameId>,
    nodes: Vec<NameNode>,
    arena: String,
    words: Words,
}

/// Whether a name was known, and one that is nearly the same.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Entered {
    pub(super) id: NameId,
    pub(super) is_new: bool,
    /// Another name under the same parent that differs by one letter.
    pub(super) near: Option<NameId>,
}

impl Names {
    pub(super) fn new() -> Names {
        let survey = NameNode {
            parent: SURVEY,
            end: 0,
            first: RowPlace { file: 0, line: 0 },
            chained: None,
        };
        Names {
            hasher: RandomState::new(),
            by_hash: HashMap::new(),
            nodes: vec![survey],
            arena: String::new(),
            words: Words::default(),
        }
    }

    /// The name under its parent, entered if it is new.
    pub(super) fn enter(&mut self, parent: NameId, written: &str, row: RowPlace) -> Entered {
        let compared = compared(written);
        let hash = self.hash(parent, &compared);
        if let Some(id) = self.find_compared(hash, parent, &compared) {
            return Entered {
                id,
                is_new: false,
                near: None,
            };
        }
        let near = self
            .words
            .variants(&compared)
            .into_iter()
            .find_map(|other| self.find_compared(self.hash(parent, &other), parent, &other));
        // 2^32 names would fill 100 GB of survey first
        let id = NameId(u32::try_from(self.nodes.len()).unwrap_or(u32::MAX));
        self.arena.push_str(&tidy(written));
        let chained = self.by_hash.insert(hash, id);
        self.nodes.push(NameNode {
            parent,
            end: self.arena.len(),
            first: row,
            chained,
        });
        Entered {
            id,
            is_new: true,
            near,
        }
    }

    /// The name under its parent, where it is known. Looks first at the names
    /// behind `after`: rows are mostly in the order in which names were entered.
    pub(super) fn find(&self, parent: NameId, written: &str, after: NameId) -> Option<NameId> {
        let ahead = (after.0..).skip(1).take(AHEAD).map(NameId);
        let mut ahead = ahead.take_while(|id| id.index() < self.nodes.len());
        if let Some(id) =
            ahead.find(|id| self.nodes[id.index()].parent == parent && self.written(*id) == written)
        {
            return Some(id);
        }
        let compared = compared(written);
        self.find_compared(self.hash(parent, &compared), parent, &compared)
    }

    /// The name as it was written first; a run of spaces is one.
    pub(super) fn written(&self, id: NameId) -> &str {
        let start = match id.index().checked_sub(1) {
            Some(before) => self.nodes[before].end,
            None => 0,
        };
        &self.arena[start..self.nodes[id.index()].end]
    }

    /// Where it was written first.
    pub(super) fn first(&self, id: NameId) -> RowPlace {
        self.nodes[id.index()].first
    }

    /// What it belongs to.
    pub(super) fn parent(&self, id: NameId) -> NameId {
        self.nodes[id.index()].parent
    }

    fn hash(&self, parent: NameId, compared: &str) -> u64 {
        self.hasher.hash_one((parent.0, compared))
    }

    fn find_compared(&self, hash: u64, parent: NameId, compared: &str) -> Option<NameId> {
        let mut next = self.by_hash.get(&hash).copied();
        while let Some(id) = next {
            let node = &self.nodes[id.index()];
            if node.parent == parent && is_written_of(self.written(id), compared) {
                return Some(id);
            }
            next = node.chained;
        }
        None
    }
}

/// A name without spaces around it, a run of spaces as one.
pub(super) fn tidy(written: &str) -> Cow<'_, str> {
    let trimmed = written.trim();
    let odd_space = |byte: u8| byte.is_ascii_whitespace() && byte != b' ';
    if trimmed.is_ascii() && !trimmed.contains("  ") && !trimmed.bytes().any(odd_space) {
        return Cow::Borrowed(trimmed);
    }
    Cow::Owned(trimmed.split_whitespace().collect::<Vec<_>>().join(" "))
}

/// A name as it is compared: tidy, in small letters.
fn compared(written: &str) -> Cow<'_, str> {
    let tidy = tidy(written);
    if tidy.is_ascii() && !tidy.bytes().any(|byte| byte.is_ascii_uppercase()) {
        return tidy;
    }
    Cow::Owned(tidy.to_lowercase())
}

fn is_written_of(written: &str, compared: &str) -> bool {
    written == compared || written.to_lowercase() == compared
}

/// How many different longer words are compared with one another.
const COMPARED: usize = 2000;

/// Longer names are not compared for a letter.
const LONGEST_COMPARED: usize = 100;

/// The longer words in names, each with those that differ from it by a letter.
#[derive(Clone, Debug, Default)]
struct Words {
    near: HashMap<Box<str>, Vec<Box<str>>>,
}

impl Words {
    /// The name with one of its longer words spelt as another known one that
    /// differs by a letter; learns the name's words.
    fn variants(&mut self, name: &str) -> Vec<String> {
        let mut variants = Vec::new();
        if name.len() > LONGEST_COMPARED {
            return variants;
        }
        for (at, word) in words(name).filter(|(_, word)| is_longer(word)) {
            if !self.near.contains_key(word) {
                self.learn(word);
            }
            for other in self.near.get(word).into_iter().flatten() {
                let (before, after) = (&name[..at], &name[at + word.len()..]);
                variants.push(format!("{before}{other}{after}"));
            }
        }
        variants
    }

    fn learn(&mut self, word: &str) {
        if self.near.len() >= COMPARED {
            return;
        }
        let mut near = Vec::new();
        for (other, theirs) in &mut self.near {
            if differ_by_a_letter(word, other) {
                near.push(other.clone());
                theirs.push(word.into());
            }
        }
        // never by the order of a hash map
        near.sort();
        self.near.insert(word.into(), near);
    }
}

/// Words of a name with where they begin.
fn words(name: &str) -> impl Iterator<Item = (usize, &str)> {
    name.split(' ').scan(0, |at, word| {
        let start = *at;
        *at += word.len() + 1;
        Some((start, word))
    })
}

/// Letters alone, and at least four of them: digits and single letters are names.
fn is_longer(word: &str) -> bool {
    word.chars().all(char::is_alphabetic) && word.chars().nth(3).is_some()
}

/// One letter put in, left out, changed, or two changed over, in a word of five letters or more.
fn differ_by_a_letter(one: &str, other: &str) -> bool {
    let (long, short) = if one.chars().count() >= other.chars().count() {
        (one, other)
    } else {
        (other, one)
    };
    let (long, short): (Vec<char>, Vec<char>) = (long.chars().collect(), short.chars().collect());
    if long.len() < 5 || long.len() - short.len() > 1 {
        return false;
    }
    let same = long.iter().zip(&short).take_while(|(a, b)| a == b).count();
    if same == long.len() {
        return false;
    }
    let (long, short) = (&long[same..], &short[same..]);
    if long.len() > short.len() {
        return long[1..] == *short;
    }
    let swapped =
        long.len() > 1 && long[0] == short[1] && long[1] == short[0] && long[2..] == short[2..];
    long[1..] == short[1..] || swapped
}

#[cfg(test)]
mod tests {
    use super::*;

    const ROW: RowPlace = RowPlace { file: 0, line: 1 };

    #[test]
    fn case_and_runs_of_spaces_do_not_make_another_name() {
        let mut names = Names::new();
        let first = names.enter(SURVEY, " Front  Stair ", ROW);
        assert!(first.is_new);
        assert_eq!(names.enter(SURVEY, "front stair", ROW).id, first.id);
        assert!(names.enter(first.id, "front stair", ROW).is_new);
        assert_eq!(names.find(SURVEY, "FRONT STAIR", SURVEY), Some(first.id));
        assert_eq!(names.find(first.id, "back stair", SURVEY), None);
    }

    #[test]
    fn a_letter_within_a_longer_word_makes_names_near() {
        const CASES: &[(&str, &str, bool)] = &[
            ("landing", "landng", true),
            ("landing 1", "lading 1", true),
            ("front stair", "front stairs", true),
            ("front stair", "frnot stair", true),
            ("balcony", "balcomy", true),
            ("landing 1", "landing 2", false),
            ("stair a", "stair b", false),
            ("flat 1a", "flat 1b", false),
            ("left", "lift", false),
            ("front", "back", false),
            ("landing 1", "landng 2", false),
        ];
        for (one, other, near) in CASES {
            let mut names = Names::new();
            let first = names.enter(SURVEY, one, ROW).id;
            let found = names.enter(SURVEY, other, ROW).near;
            assert_eq!(found == Some(first), *near, "{one} and {other}");
            let elsewhere = names.enter(first, "x", ROW).id;
            assert_eq!(names.enter(elsewhere, other, ROW).near, None, "{other}");
        }
    }
}
