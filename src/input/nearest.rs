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
    candidates
        .into_iter()
        .map(|candidate| {
            let distance = strsim::damerau_levenshtein(&word, &candidate.to_lowercase());
            (distance, candidate)
        })
        .filter(|(distance, _)| *distance <= allowed)
        .min_by_key(|(distance, _)| *distance)
        .map(|(_, candidate)| candidate)
}
