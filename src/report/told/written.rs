//! What was written about a guard and is not said elsewhere, word for word.

use std::collections::BTreeMap;
use std::collections::BTreeSet;
use std::collections::HashSet;
use std::collections::VecDeque;
use std::sync::Arc;

use crate::items::Item;
use crate::report::one_line;
use crate::report::reader;
use crate::survey::Guard;
use crate::survey::Observation;
use crate::survey::OwnEntry;
use crate::survey::ReadingKey;
use crate::survey::RowPlace;

/// What was written of one item: its name, and its readings with their notes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(in crate::report) struct SaidOfItem {
    pub(in crate::report) item: String,
    pub(in crate::report) says: String,
}

/// Every reading and note of the guard's own that has not been said, in the order
/// of the survey: `place deck`, `drop 4 ft 2 in ("at the steps")`.
pub(in crate::report) fn of_guard(
    guard: &Guard,
    said: &[ReadingKey],
    notes: &RowNotes,
) -> Vec<SaidOfItem> {
    let mut parts = readings(&guard.observations, said, notes);
    parts.extend(guard.own.iter().map(own));
    parts.extend(notes.said());
    parts
}

/// The rows of a table whose note stands beside many readings: it is told once, and not
/// behind each of them.
pub(in crate::report) struct RowNotes(BTreeMap<RowPlace, Arc<str>>);

/// A note beside so many items of one row is the row's.
const ITEMS_OF_A_ROW: usize = 3;

impl RowNotes {
    /// The notes of a guard's rows.
    pub(in crate::report) fn of(guard: &Guard) -> RowNotes {
        let mut items: BTreeMap<RowPlace, BTreeSet<Item>> = BTreeMap::new();
        let noted = guard.observations.iter().filter(|o| !o.note.is_empty());
        for observation in noted.clone() {
            let of_row = items.entry(observation.row).or_default();
            of_row.insert(observation.item);
        }
        let of_a_row = noted.filter(|o| items[&o.row].len() >= ITEMS_OF_A_ROW);
        RowNotes(of_a_row.map(|o| (o.row, Arc::clone(&o.note))).collect())
    }

    /// A reading, with its note where that is its own.
    pub(in crate::report) fn reading(&self, observation: &Observation) -> String {
        if self.0.get(&observation.row) == Some(&observation.note) {
            reader::written(observation)
        } else {
            reader::reading(observation)
        }
    }

    fn said(&self) -> impl Iterator<Item = SaidOfItem> {
        let notes = self.0.values().filter_map(|note| reader::noted(note));
        notes.map(|note| SaidOfItem {
            item: "note".to_owned(),
            says: format!("note {note}"),
        })
    }
}

/// What the guard inherits from its unit, its building and the survey.
pub(in crate::report) fn inherited(guard: &Guard) -> Vec<SaidOfItem> {
    readings(
        &guard.inherited.observations,
        &[],
        &RowNotes(BTreeMap::new()),
    )
}

fn readings(
    observations: &[Observation],
    said: &[ReadingKey],
    notes: &RowNotes,
) -> Vec<SaidOfItem> {
    let mut parts: Vec<SaidOfItem> = Vec::new();
    let mut known: HashSet<ReadingKey> = said.iter().cloned().collect();
    for observation in observations {
        // a cell such as `5 to 6 in` is two observations and one reading
        if known.insert(observation.key()) {
            add(&mut parts, observation, notes);
        }
    }
    parts
}

/// Puts a reading beside the others of its item.
pub(in crate::report) fn add(
    parts: &mut Vec<SaidOfItem>,
    observation: &Observation,
    notes: &RowNotes,
) {
    let item = observation.item.name();
    let reading = notes.reading(observation);
    match parts.iter_mut().find(|part| part.item == item) {
        Some(part) => part.says.push_str(&format!(" and {reading}")),
        None => parts.push(SaidOfItem {
            item: item.to_owned(),
            says: format!("{item} {reading}"),
        }),
    }
}

fn own(own: &OwnEntry) -> SaidOfItem {
    let item = one_line(&own.name).into_owned();
    let mut says = item.clone();
    if !own.written.is_empty() {
        says.push_str(&format!(": {}", one_line(&own.written)));
    }
    if let Some(note) = reader::noted(&own.note) {
        says.push_str(&format!(" ({note})"));
    }
    SaidOfItem { item, says }
}

/// What stands in `these` and not in `those`.
pub(in crate::report) fn without(these: &[SaidOfItem], those: &[SaidOfItem]) -> Vec<SaidOfItem> {
    let new = these.iter().filter(|part| !those.contains(part));
    new.cloned().collect()
}

/// All of it in a row.
pub(in crate::report) fn joined(parts: &[SaidOfItem]) -> String {
    let says: Vec<&str> = parts.iter().map(|part| part.says.as_str()).collect();
    says.join("; ")
}

/// What was written of the guards so far, so that the next one says only what differs.
#[derive(Default)]
pub(in crate::report) struct Known {
    guards: VecDeque<KnownGuard>,
}

/// Of so many guards the one that is most alike is looked for.
const KEPT: usize = 64;

struct KnownGuard {
    name: String,
    said: Vec<SaidOfItem>,
    as_written: AsWritten,
}

/// Whether a reader finds it all in one place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum AsWritten {
    InFull,
    AsAnother,
}

impl Known {
    /// `the same as 2A, but drop 22 ft`; `None` where little is the same. `rest` is what
    /// was not said of the guard yet, `all` everything that was written of it.
    pub(in crate::report) fn shortly(
        &mut self,
        name: &str,
        rest: &[SaidOfItem],
        all: &[SaidOfItem],
    ) -> Option<String> {
        let nearest = self
            .guards
            .iter()
            .min_by_key(|known| Difference::of(rest, all, &known.said).count());
        let shortly = nearest.and_then(|known| like(rest, all, known));
        // whoever looks it up is sent on once at most
        let as_written = match (&shortly, nearest.map(|known| known.as_written)) {
            (None, _) => Some(AsWritten::InFull),
            (Some(_), Some(AsWritten::InFull)) => Some(AsWritten::AsAnother),
            (Some(_), Some(AsWritten::AsAnother) | None) => None,
        };
        if let Some(as_written) = as_written {
            if self.guards.len() == KEPT {
                self.guards.pop_front();
            }
            self.guards.push_back(KnownGuard {
                name: name.to_owned(),
                said: all.to_vec(),
                as_written,
            });
        }
        shortly
    }
}

/// In what a guard differs from another.
struct Difference<'s> {
    new: Vec<&'s SaidOfItem>,
    /// Nothing was written of it here.
    gone: Vec<&'s SaidOfItem>,
}

impl<'s> Difference<'s> {
    fn of(rest: &'s [SaidOfItem], all: &[SaidOfItem], known: &'s [SaidOfItem]) -> Difference<'s> {
        let here = |part: &&SaidOfItem| all.iter().any(|other| other.item == part.item);
        Difference {
            new: rest.iter().filter(|part| !known.contains(part)).collect(),
            gone: known.iter().filter(|part| !here(part)).collect(),
        }
    }

    fn count(&self) -> usize {
        self.new.len() + self.gone.len()
    }
}

/// `the same as 2A, but drop 22 ft`; `None` where little is the same.
fn like(rest: &[SaidOfItem], all: &[SaidOfItem], known: &KnownGuard) -> Option<String> {
    let difference = Difference::of(rest, all, &known.said);
    if difference.count() * 2 >= rest.len() {
        return None;
    }
    let mut text = format!("the same as {}", known.name);
    if !difference.new.is_empty() {
        let new: Vec<&str> = difference
            .new
            .iter()
            .map(|part| part.says.as_str())
            .collect();
        text.push_str(&format!(", but {}", new.join("; ")));
    }
    if !difference.gone.is_empty() {
        let items: Vec<&str> = difference
            .gone
            .iter()
            .map(|part| part.item.as_str())
            .collect();
        text.push_str(&format!("; nothing for {}", items.join(", ")));
    }
    Some(text)
}
