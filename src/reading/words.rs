//! Words: of an item's list, `none`, those for "could not look", counts.

use crate::input::folded;
use crate::input::nearest;
use crate::items::Item;
use crate::items::Kind;
use crate::reading::Value;
use crate::reading::error::ReadingError;
use crate::reading::error::quoted;
use crate::reading::number::number;
use crate::reading::number::number_is_next;
use crate::reading::tokens::Cursor;

/// What people write when they could not look.
const UNKNOWN: &[&str] = &[
    "not reached",
    "unknown",
    "n/a",
    "na",
    "n.a.",
    "-",
    "--",
    "–",
    "—",
    "?",
    "??",
    "???",
    "not known",
    "not measured",
    "not seen",
    "not checked",
    "cannot see",
    "can't see",
    "could not see",
    "couldn't see",
    "cannot reach",
    "can't reach",
    "could not reach",
    "couldn't reach",
    "not accessible",
    "inaccessible",
    "don't know",
    "do not know",
    "dont know",
    "not sure",
    "unsure",
    "no idea",
    "cant see",
    "couldnt see",
    "cant reach",
    "couldnt reach",
];

/// What people write when they looked and there is none.
const NONE: &[&str] = &["none", "no", "n", "nothing"];

/// No building has more of anything that is counted here. (common practice, no source)
const MOST: u64 = 100_000;

/// The text with single spaces and plain apostrophes, in lower case.
pub(super) fn plain(text: &str) -> String {
    let folded = folded(text);
    if folded.is_ascii() {
        return folded;
    }
    folded.replace('’', "'")
}

/// Whether the text says "could not look".
pub(super) fn says_unknown(plain: &str) -> bool {
    UNKNOWN.contains(&plain)
}

/// Whether the text says "there is none".
pub(super) fn says_none(plain: &str) -> bool {
    NONE.contains(&plain)
}

/// `none` where the item cannot be none.
pub(super) fn none_refused(cursor: &Cursor<'_>, item: Item) -> ReadingError {
    let info = item.info();
    let whole = cursor.whole();
    let found = quoted(cursor.slice(whole.clone()));
    let example = info.examples.first().copied().unwrap_or("what you found");
    let zero = matches!(info.kind, Kind::Length | Kind::Opening) && info.zero_allowed;
    let help = if zero {
        "write 0 in if that is what you measured, or not reached where you could not".to_owned()
    } else if item == Item::Height {
        format!(
            "write {example}; where there is no guard at all, write none for the item guard (in a table: in a column called railing)"
        )
    } else {
        format!("write {example}, or not reached where you could not look")
    };
    ReadingError::new(format!("{found} is no reading of {item}"), whole).help(help)
}

/// A word of the item's list.
pub(super) fn word(cursor: &Cursor<'_>, item: Item) -> Result<Value, ReadingError> {
    let text = cursor.text().trim();
    if let Some(word) = item.word(text) {
        return Ok(Value::Word(word));
    }
    let names: Vec<&str> = item.words().iter().map(|word| word.name).collect();
    let known = item
        .words()
        .iter()
        .flat_map(|word| std::iter::once(word.name).chain(word.synonyms.iter().copied()));
    let list = names.join(", ");
    let error = ReadingError::new(
        format!("{} is no word for {item}", quoted(text)),
        cursor.whole(),
    );
    // a synonym that is near stands for its word
    // and so does one that stands among others, unless they deny it: `back porch`, `not sound`
    let words: Vec<String> = text.split(' ').map(folded).collect();
    let denied = words
        .iter()
        .any(|word| matches!(&**word, "no" | "not" | "never" | "without"));
    let among = || {
        let spoken = |known: &&str| !denied && words.iter().any(|word| word == known);
        let mut meant = known
            .clone()
            .filter(spoken)
            .filter_map(|near| item.word(near));
        // two words of the list in one answer say nothing for sure
        let first = meant.next()?;
        meant.all(|other| other == first).then_some(first)
    };
    let near = nearest(text, known.clone()).and_then(|near| item.word(near));
    let near = near.or_else(among);
    Err(match near {
        Some(near) => error.help(format!("write {near}; the words are {list}")),
        None => error.help(format!("write one of {list}")),
    })
}

/// A whole number.
pub(super) fn count(cursor: &mut Cursor<'_>, item: Item) -> Result<Value, ReadingError> {
    let whole = cursor.whole();
    let found = quoted(cursor.slice(whole.clone()));
    let expected = ReadingError::new(
        format!("{item} is a whole number, and {found} is none"),
        whole.clone(),
    );
    if !number_is_next(cursor) {
        return Err(expected.help("write a number, such as 2"));
    }
    let number = number(cursor)?;
    if !number.is_whole() {
        return Err(expected.help("write a number, such as 2"));
    }
    if number.whole != 0 && !cursor.at_end() {
        return Err(expected.help(format!("write {}, and the rest in the note", number.whole)));
    }
    if number.whole == 0 && !item.info().zero_allowed {
        return Err(ReadingError::new(format!("{item} cannot be zero"), whole)
            .help("count again, or write unknown"));
    }
    match u32::try_from(number.whole) {
        Ok(count) if number.whole <= MOST => Ok(Value::Count(count)),
        Ok(_) | Err(_) => Err(
            ReadingError::new(format!("{found} is absurd for {item}"), whole)
                .help("count again, or write unknown"),
        ),
    }
}
