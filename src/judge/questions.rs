//! What to find out next, asked once for each item.

use std::cmp::Reverse;
use std::collections::BTreeMap;

use crate::items::AskedWhen;
use crate::items::Item;
use crate::items::Verdict;
use crate::judge::Finding;
use crate::judge::Judged;
use crate::judge::Question;

impl Judged<'_> {
    /// What to find out next, most decisive first.
    #[must_use]
    pub fn questions(&self) -> Vec<Question> {
        let mut questions = questions(&self.findings);
        // what may be a danger comes before all that was only not measured
        for note in self.notes.iter().rev() {
            let item = note.told.item;
            let waits = questions.iter().position(|question| question.item == item);
            let known = waits.map(|at| questions.remove(at));
            questions.insert(
                0,
                Question {
                    item,
                    findings: known.map_or(1, |known| known.findings),
                    of_strength: false,
                },
            );
        }
        questions
    }
}

/// Each missing item once: what decides most findings first, law before guidance.
fn questions(all: &[Finding<'_>]) -> Vec<Question> {
    let mut waiting: BTreeMap<Item, Awaited> = BTreeMap::new();
    for finding in all {
        if finding.verdict != Verdict::NotMeasured && !finding.partial {
            continue;
        }
        let mut asked: Vec<Item> = Vec::new();
        for reason in &finding.reasons {
            if let Some(item) = reason.asks_for(finding.item)
                && !asked.contains(&item)
            {
                asked.push(item);
                let waits = waiting.entry(item).or_default();
                waits.binding += usize::from(finding.binding);
                waits.findings += 1;
                waits.beyond_strength |= !finding.is_indicative();
            }
        }
    }
    let mut questions: Vec<(Awaited, Item)> = waiting
        .into_iter()
        .filter(|(item, _)| item.info().asked != AskedWhen::Never)
        .map(|(item, waits)| (waits, item))
        .collect();
    // what only the load path waits for comes last, in the order of asking
    let order = |waits: &Awaited, item: Item| {
        let by_strength = Item::LOAD_PATH.iter().position(|one| *one == item);
        let by_strength = by_strength.filter(|_| !waits.beyond_strength);
        let place = if waits.beyond_strength {
            (Reverse(waits.binding), Reverse(waits.findings))
        } else {
            (Reverse(0), Reverse(0))
        };
        (!waits.beyond_strength, by_strength, place, item)
    };
    questions.sort_by_key(|(waits, item)| order(waits, *item));
    questions
        .into_iter()
        .map(|(waits, item)| Question {
            item,
            findings: waits.findings,
            of_strength: !waits.beyond_strength,
        })
        .collect()
}

/// What waits for an item.
#[derive(Clone, Copy, Default)]
struct Awaited {
    /// Findings that decide.
    binding: usize,
    /// All findings.
    findings: usize,
    /// Whether a rule about more than strength waits for it.
    beyond_strength: bool,
}
