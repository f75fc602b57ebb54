//! Guards that are alike in their faults are spoken of together.

use crate::report::told::GuardTold;
use crate::report::told::guard::ReportPart;

/// Guards of one block, by their place in the report.
pub(in crate::report) fn alike(told: &[GuardTold]) -> Vec<Vec<usize>> {
    let mut groups: Vec<Vec<usize>> = Vec::new();
    for (index, guard) in told.iter().enumerate() {
        if guard.part != ReportPart::Wrong {
            continue;
        }
        let group = groups
            .iter_mut()
            .find(|group| are_alike(&told[group[0]], guard));
        match group {
            Some(group) => group.push(index),
            None => groups.push(vec![index]),
        }
    }
    groups
}

fn are_alike(one: &GuardTold, other: &GuardTold) -> bool {
    let acts = |guard: &GuardTold| -> Vec<(&str, &str)> {
        guard
            .tonight
            .iter()
            .map(|act| (act.call, act.does))
            .collect()
    };
    let mut paragraphs = one.paragraphs.iter().zip(&other.paragraphs);
    one.paragraphs.len() == other.paragraphs.len()
        && paragraphs.all(|(a, b)| a.is_like(b))
        && acts(one) == acts(other)
        && one.verdict == other.verdict
        && one.comes_out == other.comes_out
        && one.hazards == other.hazards
        && one.next == other.next
        && one.unclear == other.unclear
        && one.full.is_empty()
}

/// One text where all are the same, else each with its guard.
pub(in crate::report) fn apart(of_each: &[(&str, &str)]) -> String {
    let Some((_, first)) = of_each.first() else {
        return String::new();
    };
    if of_each.iter().all(|(_, text)| text == first) {
        return (*first).to_owned();
    }
    let each: Vec<String> = of_each
        .iter()
        .map(|(name, text)| format!("{text} ({name})"))
        .collect();
    each.join(", ")
}
