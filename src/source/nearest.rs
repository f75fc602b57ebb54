//! The nearest right word.

/// The candidate nearest to a word, where one is near: at most two letters
/// away, or a third of the word's length. Case does not count.
///
/// ```
/// use guardrule::source::nearest;
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
