//! For which guards something holds, in a few words.

use crate::report::reader;
use crate::report::told::guard::GuardTold;

/// More guards than these are counted and not named.
const NAMED: usize = 3;

/// `deck and stair: `, `For all but 2C: `, `For 12 of 19: `; nothing where for all.
pub(in crate::report) fn whose(guards: &[usize], told: &[GuardTold]) -> String {
    if guards.len() == told.len() {
        return String::new();
    }
    let names = |all: &mut dyn Iterator<Item = usize>| -> Vec<String> {
        all.filter_map(|index| told.get(index))
            .map(|guard| guard.name.clone())
            .collect()
    };
    if guards.len() <= NAMED {
        let names = names(&mut guards.iter().copied());
        return format!("{}: ", reader::listed(&names));
    }
    if told.len() - guards.len() <= NAMED {
        let others = &mut (0..told.len()).filter(|index| !guards.contains(index));
        return format!("For all but {}: ", reader::listed(&names(others)));
    }
    format!("For {} of {}: ", guards.len(), told.len())
}
