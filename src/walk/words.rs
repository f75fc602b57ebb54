//! What a person means by a few letters.

use crate::input::folded;
use crate::items::Item;
use crate::items::Kind;
use crate::walk::question::digits_are_words;

/// What a few letters may stand for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Meant {
    /// Nothing of the list begins so.
    Nothing,
    /// One of the words.
    One(&'static str),
    /// Several of them.
    Several(Vec<&'static str>),
}

/// The word of an item's list: whole, as a synonym, by its first letters, or by
/// the first letter of each of its words (`tb`: through bolts).
pub(super) fn word_of(item: Item, text: &str) -> Meant {
    if let Some(word) = item.word(text) {
        return Meant::One(word);
    }
    let text = folded(text);
    if text.is_empty() {
        return Meant::Nothing;
    }
    if let Some(word) = by_number(item, &text) {
        return Meant::One(word);
    }
    let names = |matches: &dyn Fn(&str) -> bool| -> Vec<&'static str> {
        let words = item.words().iter();
        words
            .filter(|word| matches(word.name))
            .map(|word| word.name)
            .collect()
    };
    let begins = names(&|name| name.to_lowercase().starts_with(&text));
    let initials = names(&|name| name.contains(' ') && initials(name) == text);
    let also: Vec<&'static str> = item
        .words()
        .iter()
        .filter(|word| word.synonyms.iter().any(|other| other.starts_with(&text)))
        .map(|word| word.name)
        .collect();
    for found in [begins, initials, also] {
        match found.as_slice() {
            [] => {}
            [one] => return Meant::One(one),
            // "could not be seen" is the one that claims nothing
            several if several.contains(&HIDDEN) => return Meant::One(HIDDEN),
            _ => return Meant::Several(found),
        }
    }
    misspelt(item, &text).map_or(Meant::Nothing, Meant::One)
}

/// No shorter word is taken for another: `no` is one letter from `to`.
const LONG_ENOUGH: usize = 6;

/// The one word of the list that is a single letter away: `ballusters`.
fn misspelt(item: Item, text: &str) -> Option<&'static str> {
    if text.chars().count() < LONG_ENOUGH {
        return None;
    }
    let mut near = item.words().iter().filter(|word| {
        let said = std::iter::once(&word.name).chain(word.synonyms);
        said.into_iter()
            .any(|said| strsim::osa_distance(said, text) == 1)
    });
    match (near.next(), near.next()) {
        (Some(word), None) => Some(word.name),
        (_, _) => None,
    }
}

/// What cannot be seen, wherever a list has the word.
const HIDDEN: &str = "hidden";

/// The word with this number in the list, where digits mean nothing else there.
fn by_number(item: Item, text: &str) -> Option<&'static str> {
    let Kind::Words(words) = item.info().kind else {
        return None;
    };
    let number: usize = text.parse().ok()?;
    if digits_are_words(words) {
        return None;
    }
    words.get(number.checked_sub(1)?).map(|word| word.name)
}

fn initials(name: &str) -> String {
    let words = name.split([' ', '-']);
    words
        .filter_map(|word| word.chars().next())
        .flat_map(char::to_lowercase)
        .collect()
}

/// The item of this name, synonym or beginning of a name.
pub(super) fn item_of(text: &str) -> Result<Item, Vec<&'static str>> {
    let text = folded(text).replace('-', " ");
    if let Some(item) = Item::by_name(&text) {
        return Ok(item);
    }
    let begins: Vec<Item> = Item::all()
        .filter(|item| !text.is_empty() && item.name().starts_with(&text))
        .collect();
    // `hei` means the height rather than the height above a seat
    let of_all = |short: &&Item| {
        begins
            .iter()
            .all(|other| other.name().starts_with(short.name()))
    };
    match begins.iter().find(of_all) {
        Some(one) => Ok(*one),
        None => Err(begins.iter().map(|item| item.name()).collect()),
    }
}

/// Yes or no by its first letters.
pub(super) fn yes_or_no(text: &str) -> Option<bool> {
    match folded(text).as_str() {
        "y" | "ye" | "yes" => Some(true),
        "n" | "no" => Some(false),
        _ => None,
    }
}

/// `2, stopped at once`: the answer, and words of the person's own behind a comma.
pub(super) fn words_behind(text: &str) -> (String, String) {
    for (at, _) in text.match_indices(',') {
        let rest = text[at + 1..].trim_start();
        if rest.starts_with(char::is_alphabetic) && at > 0 {
            return (text[..at].trim().to_owned(), rest.trim().to_owned());
        }
    }
    (text.trim().to_owned(), String::new())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_behind_a_comma_are_a_note() {
        let parted = |text| words_behind(text);
        let pair = |a: &str, b: &str| (a.to_owned(), b.to_owned());
        assert_eq!(parted("2, stopped at once"), pair("2", "stopped at once"));
        assert_eq!(
            parted("7 3/4, 10, 2, third step"),
            pair("7 3/4, 10, 2", "third step")
        );
        assert_eq!(parted("1,250 mm"), pair("1,250 mm", ""));
        assert_eq!(parted("8 months, 3 years"), pair("8 months, 3 years", ""));
    }

    #[test]
    fn first_letters_suffice_where_they_mean_one_word() {
        assert_eq!(word_of(Item::Place, "d"), Meant::One("deck"));
        assert_eq!(word_of(Item::Place, "Steps"), Meant::One("stair"));
        assert_eq!(
            word_of(Item::Place, "po"),
            Meant::Several(vec!["porch", "pool"])
        );
        assert_eq!(
            word_of(Item::PostFastening, "tb"),
            Meant::One("through bolts")
        );
        assert_eq!(word_of(Item::Infill, "hb"), Meant::One("horizontal bars"));
        assert_eq!(word_of(Item::Place, "hallw"), Meant::One("landing"));
        assert_eq!(word_of(Item::Shared, "y"), Meant::One("yes"));
        assert_eq!(word_of(Item::PostFastening, "h"), Meant::One("hidden"));
        assert_eq!(word_of(Item::Infill, "4"), Meant::One("balusters"));
        assert_eq!(word_of(Item::Handrail, "3"), Meant::One("none"));
        // a digit that is a word of its own counts no list
        assert_eq!(word_of(Item::OpeningsChecked, "1"), Meant::One("one"));
        assert_eq!(word_of(Item::OpeningsChecked, "2"), Meant::Nothing);
        // a slip of one letter in a long word, and no more
        assert_eq!(word_of(Item::Infill, "ballusters"), Meant::One("balusters"));
        assert_eq!(word_of(Item::Infill, "balasturs"), Meant::Nothing);
        assert_eq!(word_of(Item::MovesWhenPushed, "ni"), Meant::Nothing);
        assert_eq!(word_of(Item::Place, "x"), Meant::Nothing);
        assert_eq!(word_of(Item::Place, ""), Meant::Nothing);
    }

    #[test]
    fn an_item_is_known_by_its_beginning() {
        assert_eq!(item_of("hei"), Ok(Item::Height));
        assert_eq!(item_of("Bottom-Gap"), Ok(Item::BottomGap));
        assert_eq!(item_of("hand"), Ok(Item::Handrail));
        assert_eq!(item_of("infil"), Ok(Item::Infill));
        assert_eq!(item_of("fast").map_err(|names| names.len()), Err(3));
        assert_eq!(item_of("zzz"), Err(Vec::new()));
    }
}
