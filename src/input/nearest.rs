//! Words as people mean them: without regard to case and runs of spaces, and the
//! nearest right one.

/// A word or name as it is compared: in lower case, a run of spaces as one, none around it.
///
/// ```
/// use guardrule::input::folded;
/// assert_eq!(folded("  Bottom   GAP "), "bottom gap");
/// ```
#[must_use]
pub fn folded(text: &str) -> String {
    let words: Vec<&str> = text.split_whitespace().collect();
    words.join(" ").to_lowercase()
}

/// The candidate nearest to a word, where one is near: at most two letters
/// away, or a third of the word's length. Case does not count.
///
/// ```
/// use guardrule::input::nearest;
/// assert_eq!(nearest("hieght", ["height", "opening"]), Some("height"));
/// assert_eq!(nearest("colour", ["height", "opening"]), None);
/// ```
pub fn nearest<'a>(word: &str, candidates: impl IntoIterator<Item = &'a str>) -> Option<&'a str> {
    let word = word.to_lowercase();
    let length = word.chars().count();
    // short words are near to everything, so they must share more
    let allowed = match length {
        0..=2 => 0,
        3..=4 => 1,
        _ => 2.max(length / 3),
    };
    let letters = Letters::of(&word);
    candidates
        .into_iter()
        // most are far by a look at their letters alone
        .filter(|candidate| letters.least_distance(&Letters::of(candidate)) <= allowed)
        .map(|candidate| {
            let distance = strsim::damerau_levenshtein(&word, &candidate.to_lowercase());
            (distance, candidate)
        })
        .filter(|(distance, _)| *distance <= allowed)
        .min_by_key(|(distance, _)| *distance)
        .map(|(_, candidate)| candidate)
}

/// How often each letter stands in a word; other characters share a few places.
struct Letters([u8; 32]);

impl Letters {
    fn of(word: &str) -> Letters {
        let mut counts = [0_u8; 32];
        for c in word.chars() {
            let place = match c.to_ascii_lowercase() {
                letter @ 'a'..='z' => usize::from(letter as u8 - b'a'),
                other => 26 + other.to_lowercase().next().map_or(0, |c| c as usize % 6),
            };
            counts[place] = counts[place].saturating_add(1);
        }
        Letters(counts)
    }

    /// No fewer letters must change for one word to become the other.
    fn least_distance(&self, other: &Letters) -> usize {
        let over = |ours: &[u8; 32], theirs: &[u8; 32]| -> usize {
            let pairs = ours.iter().zip(theirs);
            pairs.map(|(a, b)| usize::from(a.saturating_sub(*b))).sum()
        };
        over(&self.0, &other.0).max(over(&other.0, &self.0))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn letters_alone_never_put_words_farther_apart(one in "[a-dA-D é½]{0,9}", other in "[a-dA-D é½]{0,9}") {
            let distance = strsim::damerau_levenshtein(&one.to_lowercase(), &other.to_lowercase());
            let least = Letters::of(&one).least_distance(&Letters::of(&other));
            prop_assert!(least <= distance, "{} and {}: {} and {}", one, other, least, distance);
        }
    }
}
