//! Words of notes that tell of a danger, with the item that would say so.
//!
//! Nobody judges by a note; but what it says and no reading denies is asked about, and
//! until then the guard does not meet. English alone, whole words, a short list: each row of the
//! table is a danger of the words of an item, and one row of a survey answers it.

use std::sync::LazyLock;

use crate::items::Danger;
use crate::items::Item;
use crate::items::danger;

/// A danger that a note tells of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct DangerTold {
    /// The item whose word would state it.
    pub item: Item,
    /// The word that states it, and one that denies it.
    pub readings: [&'static str; 2],
    /// The danger.
    pub danger: Danger,
}

/// What tells of a danger: one of the words, and one of `near` where there are some.
struct Telltale {
    told: DangerTold,
    words: &'static [&'static str],
    near: &'static [&'static str],
}

const fn told(item: Item, readings: [&'static str; 2], danger: Danger) -> DangerTold {
    DangerTold {
        item,
        readings,
        danger,
    }
}

const INFILL: DangerTold = told(Item::InfillLoose, ["missing", "no"], danger::MISSING_INFILL);
const MOVES: DangerTold = told(Item::MovesWhenPushed, ["a lot", "no"], danger::MOVES_A_LOT);
const POSTS: DangerTold = told(
    Item::PostFastening,
    ["missing", "through bolts"],
    danger::POSTS_NOT_FASTENED,
);
const ROT: DangerTold = told(Item::Condition, ["rot", "none seen"], danger::ROT);
const RUST: DangerTold = told(
    Item::Condition,
    ["deep rust", "none seen"],
    danger::DEEP_RUST,
);
const CRACKS: DangerTold = told(Item::Condition, ["cracks", "none seen"], danger::CRACKS);
const GLASS: DangerTold = told(
    Item::Condition,
    ["broken glass", "none seen"],
    danger::BROKEN_GLASS,
);

const GUARD: DangerTold = told(Item::Guard, ["none", "present"], danger::NO_RAILING);

const PARTS: &[&str] = &[
    "baluster",
    "balusters",
    "spindle",
    "spindles",
    "picket",
    "pickets",
    "bar",
    "bars",
    "panel",
    "panels",
    "slat",
    "slats",
    "infill",
    "rung",
    "rungs",
];
const MESHES: &[&str] = &["mesh", "net", "netting", "wire"];
const PANES: &[&str] = &["glass", "pane", "panes", "glazing", "window"];
const FIXINGS: &[&str] = &[
    "bolt", "bolts", "screw", "screws", "nut", "nuts", "nail", "nails", "bracket", "brackets",
    "fixing", "fixings", "anchor", "anchors", "lag", "lags",
];
const WOOD: &[&str] = &[
    "post", "posts", "newel", "rail", "timber", "wood", "board", "boards", "joist", "foot", "base",
];

/// The first that fits is what a word tells of.
const TELLTALES: &[Telltale] = &[
    Telltale {
        told: ROT,
        words: &[
            "rot",
            "rots",
            "rotten",
            "rotted",
            "rotting",
            "decay",
            "decayed",
            "soft wood",
        ],
        near: &[],
    },
    Telltale {
        told: RUST,
        words: &[
            "rusted through",
            "rusted out",
            "rusted away",
            "rust hole",
            "rust holes",
            "deep rust",
        ],
        near: &[],
    },
    Telltale {
        told: GLASS,
        words: &[
            "broken",
            "cracked",
            "crack",
            "cracks",
            "shattered",
            "smashed",
        ],
        near: PANES,
    },
    Telltale {
        told: CRACKS,
        words: &["crack", "cracks", "cracked"],
        near: &[],
    },
    Telltale {
        told: CRACKS,
        words: &["split", "splits", "broken", "snapped"],
        near: WOOD,
    },
    Telltale {
        told: POSTS,
        words: &["missing", "gone", "sheared", "not fastened", "unfastened"],
        near: FIXINGS,
    },
    Telltale {
        told: INFILL,
        words: &["missing", "broken out", "fallen out", "knocked out"],
        near: &[],
    },
    Telltale {
        told: INFILL,
        words: &[
            "loose",
            "gone",
            "broken",
            "snapped",
            "removed",
            "taken out",
            "lost",
            "fallen",
        ],
        near: PARTS,
    },
    Telltale {
        told: INFILL,
        words: &["hole", "holes", "torn"],
        near: MESHES,
    },
    Telltale {
        told: GUARD,
        words: &["no railing", "no guardrail", "no banister", "no balustrade"],
        near: &[],
    },
    Telltale {
        told: MOVES,
        words: &[
            "loose",
            "wobble",
            "wobbles",
            "wobbling",
            "wobbly",
            "shaky",
            "rickety",
            "unsteady",
            "unstable",
            "sways",
            "swaying",
            "gives way",
            "comes away",
            "moves a lot",
            "collapsed",
            "collapsing",
            "detached",
            "unsafe",
            "dangerous",
        ],
        near: &[],
    },
    Telltale {
        told: CRACKS,
        words: &["broken", "snapped"],
        near: &[],
    },
];

const NEGATIONS: &[&str] = &[
    "no", "not", "none", "nothing", "without", "never", "neither", "nor", "isnt", "arent", "wasnt",
    "werent", "doesnt", "dont", "didnt", "hasnt", "havent", "cant", "cannot", "couldnt",
];

/// Behind a negation they make a doubt of it, or no negation at all: `not sure`.
const NO_NEGATION: &[&str] = &[
    "sure", "certain", "clear", "known", "checked", "looked", "tried", "only", "just", "more",
    "less", "fewer",
];

/// Behind them begins another statement.
const PARTING: &[&str] = &[
    "and", "but", "except", "though", "however", "yet", "because", "since", "where", "then",
];

/// Behind these stands what is there: `did not touch the loose post`.
const POINTING: &[&str] = &["the", "this", "that", "these", "those"];

/// Over how many words a negation reaches: `none of the balusters is missing`.
const REACH: usize = 5;

/// What a note tells of, each danger once, with the words that tell it.
#[must_use]
pub fn dangers_told(note: &str) -> Vec<(DangerTold, &'static str)> {
    static BEGINNINGS: LazyLock<Beginnings> =
        LazyLock::new(|| Beginnings::of(TELLTALES.iter().flat_map(|telltale| telltale.words)));
    let mut told: Vec<(DangerTold, &'static str)> = Vec::new();
    if !BEGINNINGS.are_in(note) {
        return told;
    }
    let statements = statements(note);
    let is_there = |near: &[&str]| {
        let mut words = statements.iter().flatten();
        near.is_empty() || words.any(|word| near.contains(&word.as_str()))
    };
    for (place, words) in statements.iter().enumerate() {
        // `rot: none`
        let next = statements.get(place + 1).map(Vec::as_slice);
        if matches!(next, Some([only]) if NEGATIONS.contains(&only.as_str())) {
            continue;
        }
        for at in 0..words.len() {
            let found = TELLTALES.iter().find_map(|telltale| {
                let mut phrases = telltale.words.iter();
                let phrase = phrases.find(|phrase| begins_with(&words[at..], phrase))?;
                is_there(telltale.near).then_some((telltale.told, *phrase))
            });
            if let Some((danger, phrase)) = found
                && !is_denied(words, at, phrase)
                && !told.iter().any(|(known, _)| *known == danger)
            {
                told.push((danger, phrase));
            }
        }
    }
    told
}

/// Words of a note that say that the reading beside it is no measurement.
const GUESSES: &[&str] = &[
    "guess",
    "guessed",
    "guessing",
    "estimate",
    "estimated",
    "by eye",
    "assumed",
    "from memory",
];

/// The word of a note that says that the reading beside it was guessed.
#[must_use]
pub fn guess_told(note: &str) -> Option<&'static str> {
    static BEGINNINGS: LazyLock<Beginnings> = LazyLock::new(|| Beginnings::of(GUESSES.iter()));
    if !BEGINNINGS.are_in(note) {
        return None;
    }
    let statements = statements(note);
    statements.iter().find_map(|words| {
        (0..words.len()).find_map(|at| {
            let mut phrases = GUESSES.iter();
            let phrase = phrases.find(|phrase| begins_with(&words[at..], phrase))?;
            (!is_denied(words, at, phrase)).then_some(*phrase)
        })
    })
}

/// Phrases by how they begin. Most notes hold none of them, and tell of nothing.
struct Beginnings {
    phrases: Vec<&'static str>,
    /// By first letter, a bit for each length that a first word has.
    lengths: [u32; 26],
}

impl Beginnings {
    fn of(phrases: impl Iterator<Item = &'static &'static str>) -> Beginnings {
        let phrases: Vec<&str> = phrases.copied().collect();
        let mut lengths = [0; 26];
        for first in phrases.iter().filter_map(|phrase| phrase.split(' ').next()) {
            if let Some(known) = lengths.get_mut(first_letter(first)) {
                *known |= bit_of(first.len());
            }
        }
        Beginnings { phrases, lengths }
    }

    /// Whether one of them may be in the note.
    fn are_in(&self, note: &str) -> bool {
        let words = note.split(|c: char| !c.is_alphanumeric());
        let mut words = words.filter(|word| !word.is_empty());
        while let Some(word) = words.next() {
            let lengths = self.lengths.get(first_letter(word)).copied();
            if lengths.is_none_or(|lengths| lengths & bit_of(word.len()) == 0) {
                continue;
            }
            let is_here = |phrase: &&str| {
                let mut next = std::iter::once(word).chain(words.clone());
                let mut parts = phrase.split(' ');
                parts.all(|part| {
                    next.next()
                        .is_some_and(|next| next.eq_ignore_ascii_case(part))
                })
            };
            if self.phrases.iter().any(is_here) {
                return true;
            }
        }
        false
    }
}

/// From 0 for `a`; beyond the alphabet where it begins with something else.
fn first_letter(word: &str) -> usize {
    let first = word.bytes().next().unwrap_or_default();
    usize::from(first.to_ascii_lowercase().wrapping_sub(b'a'))
}

/// None for a word longer than all.
fn bit_of(length: usize) -> u32 {
    u32::try_from(length).map_or(0, |length| 1_u32.checked_shl(length).unwrap_or(0))
}

/// The words of each statement, in small letters and without apostrophes.
fn statements(note: &str) -> Vec<Vec<String>> {
    let mut all = Vec::new();
    for clause in note.split(['.', ',', ';', ':', '!', '?', '(', ')', '\n']) {
        let plain: String = clause
            .chars()
            .filter(|c| !matches!(c, '\'' | '\u{2019}'))
            .collect::<String>()
            .to_lowercase();
        let words = plain.split(|c: char| !c.is_alphanumeric());
        let mut statement: Vec<String> = Vec::new();
        for word in words.filter(|word| !word.is_empty()) {
            if PARTING.contains(&word) {
                all.push(std::mem::take(&mut statement));
            } else {
                statement.push(word.to_owned());
            }
        }
        all.push(statement);
    }
    all.retain(|statement| !statement.is_empty());
    all
}

fn begins_with(words: &[String], phrase: &str) -> bool {
    // of nearly all phrases the first word already is another
    if !words.first().is_some_and(|first| phrase.starts_with(first)) {
        return false;
    }
    let mut words = words.iter();
    phrase
        .split(' ')
        .all(|word| words.next().is_some_and(|next| next == word))
}

/// Whether the statement says that it is not so.
fn is_denied(words: &[String], at: usize, phrase: &str) -> bool {
    let word = |place: usize| words.get(place).map_or("", String::as_str);
    let behind = at + phrase.split(' ').count();
    if word(behind) == "free" {
        return true;
    }
    if at > 0 && POINTING.contains(&word(at - 1)) {
        return false;
    }
    (at.saturating_sub(REACH)..at).any(|place| {
        let free_of = word(place) == "free" && matches!(word(place + 1), "of" | "from");
        let denies = NEGATIONS.contains(&word(place)) && !NO_NEGATION.contains(&word(place + 1));
        free_of || denies
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn of(note: &str) -> Vec<(Item, &'static str)> {
        let told = dangers_told(note).into_iter();
        told.map(|(danger, word)| (danger.item, word)).collect()
    }

    #[test]
    fn a_note_that_tells_of_a_danger_is_asked_about() {
        for (note, item, word) in [
            ("one baluster is missing", Item::InfillLoose, "missing"),
            ("Missing picket near the wall", Item::InfillLoose, "missing"),
            ("a spindle has gone", Item::InfillLoose, "gone"),
            ("3 spindles loose", Item::InfillLoose, "loose"),
            ("wobbles a lot", Item::MovesWhenPushed, "wobbles"),
            ("top rail loose", Item::MovesWhenPushed, "loose"),
            ("rotten at the foot", Item::Condition, "rotten"),
            ("dry rot", Item::Condition, "rot"),
            ("ROT!", Item::Condition, "rot"),
            ("base rusted through", Item::Condition, "rusted through"),
            ("pane cracked", Item::Condition, "cracked"),
            ("post split at the bolt", Item::Condition, "split"),
            ("two bolts missing", Item::PostFastening, "missing"),
            ("two balusters removed", Item::InfillLoose, "removed"),
            ("net torn at the corner", Item::InfillLoose, "torn"),
            ("no railing at the last metre", Item::Guard, "no railing"),
            ("looks unsafe", Item::MovesWhenPushed, "unsafe"),
            ("broken at the end", Item::Condition, "broken"),
            ("not high but rotten", Item::Condition, "rotten"),
            (
                "did not touch the loose post",
                Item::MovesWhenPushed,
                "loose",
            ),
            ("not sure if rotten", Item::Condition, "rotten"),
            ("no more than one missing", Item::InfillLoose, "missing"),
            (
                "not measured because one is missing",
                Item::InfillLoose,
                "missing",
            ),
        ] {
            assert_eq!(of(note), [(item, word)], "{note}");
        }
        assert_eq!(of("rotten post, one baluster missing").len(), 2);
    }

    #[test]
    fn a_note_that_denies_a_danger_or_speaks_of_something_else_asks_nothing() {
        for note in [
            "",
            "no rot",
            "No rot, no cracks.",
            "nothing missing",
            "none missing",
            "none of the balusters is missing",
            "not loose",
            "isn't loose",
            "isn\u{2019}t loose",
            "without any sign of rot",
            "free of rot",
            "rot-free",
            "rot: none",
            "loose? no",
            "could not see any rot",
            "no cracks or rot",
            "rotary dryer beside it",
            "split level landing",
            "where it sags",
            "tenant has gone out",
            "glossy, looser fit",
            "carpet removed before measuring",
            "holes for the screws are plugged",
        ] {
            assert_eq!(of(note), [], "{note}");
        }
    }

    #[test]
    fn a_note_that_says_guessed_is_known() {
        for (note, word) in [
            ("guessed", "guessed"),
            ("estimated from the street", "estimated"),
            ("by eye", "by eye"),
            ("I assumed so", "assumed"),
        ] {
            assert_eq!(guess_told(note), Some(word), "{note}");
        }
        for note in [
            "",
            "measured, not guessed",
            "no guess",
            "lowest place",
            "guesthouse",
        ] {
            assert_eq!(guess_told(note), None, "{note}");
        }
    }

    #[test]
    fn each_danger_that_a_note_tells_of_is_one_of_its_items_words() {
        for Telltale { told, words, .. } in TELLTALES {
            let [says, denies] = told.readings;
            assert_eq!(told.item.danger(says), Some(told.danger), "{words:?}");
            assert!(told.item.word(denies).is_some(), "{denies}");
            assert_eq!(told.item.danger(denies), None, "{denies}");
            let lower = |phrase: &&str| phrase.chars().all(|c| c.is_ascii_lowercase() || c == ' ');
            assert!(words.iter().all(lower), "{words:?}");
        }
    }
}
