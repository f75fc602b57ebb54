//! Telling a report from other files, so that none of those is replaced unasked.

use crate::report::csv::COLUMNS;

/// How many words the first line of a text has at most: property, days, people.
const TITLE_WORDS: usize = 120;

/// Whether a file that begins so is a report or a printed sheet; an empty file
/// is nobody's loss. A survey is none, a blank one neither: somebody may have
/// filled it in.
#[must_use]
pub fn is_a_report(beginning: &[u8]) -> bool {
    let text = String::from_utf8_lossy(beginning);
    let text = text.trim_start();
    let columns = COLUMNS[..5].join(",");
    let page = text
        .get(..15)
        .is_some_and(|start| start.eq_ignore_ascii_case("<!doctype html>"));
    // the first sentence of a text, however its lines are broken
    let words: Vec<&str> = text.split_whitespace().take(TITLE_WORDS).collect();
    text.is_empty()
        || words.join(" ").contains("· report of 2")
        || text.starts_with(&columns)
        || text.starts_with("priority,building,unit,guard,")
        || text.starts_with("change,building,unit,guard,")
        || (text.starts_with('{')
            && (text.contains("\"schema\":")
                || text.contains("\"comparison\":")
                || text.contains("\"falls_short\":")))
        || (page && text.contains("guardrule"))
}
