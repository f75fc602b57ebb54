//! The place that stands in a guard's name.

use crate::items::Item;

/// Words that name more than one kind of place, or a room and no place in it: nobody
/// can tell from them alone.
const UNSURE: [&str; 7] = [
    "hall",
    "hallway",
    "upstairs hall",
    "loft",
    "gallery",
    "mezzanine",
    "flight",
];

/// The place word that stands alone in a name: `back stair` is a stair; `deck stair`,
/// `pool deck` name two, and say nothing.
pub(super) fn place_in(name: &str) -> Option<&'static str> {
    let name = name.to_lowercase();
    let words: Vec<&str> = name
        .split(|c: char| !c.is_alphanumeric())
        .filter(|word| !word.is_empty())
        .collect();
    let stands = |sought: &str| {
        let sought: Vec<&str> = sought.split(' ').collect();
        words.windows(sought.len()).any(|there| there == sought)
    };
    let mut found: Option<&'static str> = None;
    for word in Item::Place.words() {
        let synonyms = word.synonyms.iter().filter(|other| !UNSURE.contains(other));
        let said = std::iter::once(&word.name).chain(synonyms);
        if said.clone().any(|said| stands(said))
            || said.clone().any(|said| stands(&format!("{said}s")))
        {
            match found {
                None => found = Some(word.name),
                Some(_) => return None,
            }
        }
    }
    found
}

/// A name whose last word is the beginning of one place word alone, in full: `hall la` is
/// `hall landing`. A single letter is a name of its own.
pub(super) fn name_in_full(name: &str) -> Option<String> {
    let (before, last) = match name.rsplit_once(' ') {
        Some((before, last)) => (format!("{before} "), last),
        None => (String::new(), name),
    };
    let start = last.to_lowercase();
    if start.chars().count() < 2 || place_in(name).is_some() {
        return None;
    }
    let words = Item::Place.words().iter();
    let mut begun = words.filter(|word| word.name.starts_with(&start));
    match (begun.next(), begun.next()) {
        (Some(word), None) => Some(format!("{before}{}", word.name)),
        (_, _) => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_beginning_of_a_place_word_is_the_whole_of_it() {
        for (name, full) in [
            ("la", Some("landing")),
            ("hall la", Some("hall landing")),
            ("Ba", Some("balcony")),
            ("back st", Some("back stair")),
            ("po", None),
            ("l", None),
            ("7", None),
            ("landing", None),
            ("hall", None),
            ("steps", None),
            ("stairwell", None),
        ] {
            assert_eq!(name_in_full(name).as_deref(), full, "{name}");
        }
    }

    #[test]
    fn one_place_word_alone_in_a_name_is_the_place() {
        for (name, place) in [
            ("back stair", Some("stair")),
            ("Landing", Some("landing")),
            ("landing 2", Some("landing")),
            ("cellar steps", Some("stair")),
            ("floor edge", Some("floor edge")),
            ("rear decking", Some("deck")),
            ("deck stair", None),
            ("pool deck", None),
            ("roof terrace", None),
            ("hall", None),
            ("gallery", None),
            ("stairwell", None),
            ("g", None),
        ] {
            assert_eq!(place_in(name), place, "{name}");
        }
    }
}
