//! Guards that are alike in their faults are spoken of together.

use std::collections::HashMap;
use std::collections::hash_map::Entry;

use crate::report::told::GuardTold;
use crate::report::told::guard::ReportPart;
use crate::report::told::paragraph::Paragraph;

/// Guards of one block, by their place in the report.
pub(in crate::report) fn alike(told: &[GuardTold]) -> Vec<Vec<usize>> {
    let mut groups: Vec<Vec<usize>> = Vec::new();
    let mut seen: HashMap<String, usize> = HashMap::new();
    for (index, guard) in told.iter().enumerate() {
        if guard.part != ReportPart::Wrong {
            continue;
        }
        let known = guard.full.is_empty().then(|| seen.entry(same_of(guard)));
        match known {
            Some(Entry::Occupied(group)) => groups[*group.get()].push(index),
            Some(Entry::Vacant(new)) => {
                new.insert(groups.len());
                groups.push(vec![index]);
            }
            // everything of it is printed
            None => groups.push(vec![index]),
        }
    }
    groups
}

/// All that guards of one block share: what is said of them but for readings and amounts.
fn same_of(guard: &GuardTold) -> String {
    let acts: Vec<(&str, &str)> = guard
        .tonight
        .iter()
        .map(|act| (act.call, act.does))
        .collect();
    let said: Vec<_> = guard
        .paragraphs
        .iter()
        .map(Paragraph::but_for_amounts)
        .collect();
    format!(
        "{:?}",
        (
            acts,
            said,
            guard.verdict,
            &guard.comes_out,
            &guard.hazards,
            &guard.next,
            &guard.unclear
        )
    )
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
