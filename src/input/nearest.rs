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
    let mut folded = String::with_capacity(text.len());
    for word in text.split_whitespace() {
        if !folded.is_empty() {
            folded.push(' ');
        }
        folded.push_str(word);
    }
    if folded.is_ascii() {
        folded.make_ascii_lowercase();
        folded
    } else {
        folded.to_lowercase()
    }
}

/// The candidate nearest to a word, where one is near: misspelt by a letter or
/// two, each word of a longer name for itself, since `latch height` is no
/// misspelling of `gate height`. Case does not count.
///
/// ```
/// use guardrule::input::nearest;
/// assert_eq!(nearest("hieght", ["height", "opening"]), Some("height"));
/// assert_eq!(nearest("colour", ["height", "opening"]), None);
/// assert_eq!(nearest("latch height", ["gate height"]), None);
/// assert_eq!(nearest("botom gap", ["bottom gap"]), Some("bottom gap"));
/// ```
pub fn nearest<'a>(word: &str, candidates: impl IntoIterator<Item = &'a str>) -> Option<&'a str> {
    let word = word.to_lowercase();
    let letters = Letters::of_words(&word);
    candidates
        .into_iter()
        .filter_map(|candidate| {
            let distance = misspelt(&word, &letters, &candidate.to_lowercase())?;
            Some((distance, candidate))
        })
        .min_by_key(|(distance, _)| *distance)
        .map(|(_, candidate)| candidate)
}

/// Where a name is parted into words.
const PARTS: [char; 4] = [' ', '-', '_', '.'];

/// How many letters apart two names are, where one may be the other misspelt.
fn misspelt(written: &str, letters: &Letters, right: &str) -> Option<usize> {
    let count = |text: &str| text.split(PARTS).count();
    let words = count(written);
    if words == count(right) {
        let several = words > 1;
        let pairs = written.split(PARTS).zip(right.split(PARTS));
        let part = |(a, b): (&str, &str)| {
            // `to` for `too` is a slip in a longer name, and no word of its own
            let cut_short = several && b.strip_prefix(a).is_some_and(|rest| rest.len() == 1);
            near(a, b).or(cut_short.then_some(1))
        };
        // the first word that is far ends it
        return pairs.map(part).sum();
    }
    // a space or a hyphen too many or too few
    if letters.least_distance(&Letters::of_words(right)) > 1 {
        return None;
    }
    let concat = |text: &str| text.split(PARTS).collect::<String>();
    let distance = near(&concat(written), &concat(right))?;
    (distance <= 1).then_some(distance + 1)
}

/// How many letters apart two words are, where these are few for their length.
fn near(written: &str, right: &str) -> Option<usize> {
    // short words are near to everything, so they must share more
    let allowed = match written.chars().count() {
        0..=2 => 0,
        3..=4 => 1,
        5..=8 => 2,
        _ => 3,
    };
    // most words are far by a look at their letters alone
    if Letters::of(written).least_distance(&Letters::of(right)) > allowed {
        return None;
    }
    let distance = strsim::damerau_levenshtein(written, right);
    (distance <= allowed).then_some(distance)
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

    /// Of all words of a name.
    fn of_words(name: &str) -> Letters {
        let mut letters = Letters::of(name);
        for part in name.chars().filter(|c| PARTS.contains(c)) {
            // what parts words is counted among the other characters
            let place = 26 + part as usize % 6;
            letters.0[place] = letters.0[place].saturating_sub(1);
        }
        letters
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
