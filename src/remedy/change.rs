//! A remedy as a change of what was written about a guard.

use std::sync::Arc;

use crate::items::Item;
use crate::items::ItemWord;
use crate::items::StateWord;
use crate::reading::Reading;
use crate::reading::Value;
use crate::reading::parse;
use crate::survey::Guard;
use crate::survey::Observation;
use crate::survey::RowPlace;

/// A reading of a part that is to be built.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NewReading {
    /// What is read.
    pub item: Item,
    /// As a survey has it.
    pub written: String,
    /// What it is.
    pub note: String,
}

/// What a remedy changes of a guard's readings.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct GuardChange {
    /// Observations that no longer hold, by their index as
    /// [`Guard::observation`] takes them.
    pub gone: Vec<usize>,
    /// What is written instead.
    pub new: Vec<NewReading>,
}

impl GuardChange {
    /// All readings of an item are replaced by this one.
    pub(super) fn instead(mut self, guard: &Guard, item: Item, written: &str, note: &str) -> Self {
        self.gone.extend(own(guard, item));
        self.also(item, written, note)
    }

    /// A reading more.
    pub(super) fn also(mut self, item: Item, written: &str, note: &str) -> Self {
        self.new.push(NewReading {
            item,
            written: written.to_owned(),
            note: note.to_owned(),
        });
        self
    }

    /// All readings of an item go.
    pub(super) fn without(mut self, guard: &Guard, item: Item) -> Self {
        self.gone.extend(own(guard, item));
        self
    }

    /// This and another one.
    #[must_use]
    pub fn and(&self, other: &GuardChange) -> GuardChange {
        let mut both = self.clone();
        both.gone.extend(&other.gone);
        for new in &other.new {
            if !both.new.contains(new) {
                both.new.push(new.clone());
            }
        }
        both
    }
}

fn own(guard: &Guard, item: Item) -> Vec<usize> {
    let all = (0..).zip(&guard.observations);
    all.filter(|(_, observation)| observation.item == item)
        .map(|(index, _)| index)
        .collect()
}

/// The guard with a change made: what was not touched stands as it was written, and
/// the guard is said to be `altered`, or `proposed` where it was.
///
/// `None` where a new reading is none of its item.
#[must_use]
pub fn changed(guard: &Guard, change: &GuardChange) -> Option<Guard> {
    let row = guard
        .observations
        .first()
        .map_or(RowPlace { file: 0, line: 0 }, |o| o.row);
    let mut state = None;
    let mut observations: Vec<Observation> = Vec::with_capacity(guard.observations.len() + 4);
    for (index, observation) in (0..).zip(&guard.observations) {
        if observation.item == Item::State {
            state = observation.word::<StateWord>();
        } else if !change.gone.contains(&index) {
            observations.push(observation.clone());
        }
    }
    let inherited = guard.of(Item::State).find_map(|(_, o)| o.word());
    let state = match state.or(inherited) {
        Some(StateWord::Proposed) => StateWord::Proposed,
        Some(StateWord::Altered | StateWord::Existing) | None => StateWord::Altered,
    };
    observations.push(Observation {
        item: Item::State,
        written: state.name().into(),
        reading: Some(Arc::new(Reading {
            value: Value::Word(state.name()),
            at: None,
        })),
        note: "".into(),
        row,
        column: 0,
    });
    for new in &change.new {
        let parsed = parse(new.item, &new.written, None).ok()?;
        let written: Arc<str> = new.written.as_str().into();
        for reading in parsed.readings {
            observations.push(Observation {
                item: new.item,
                written: Arc::clone(&written),
                reading: Some(Arc::new(reading)),
                note: new.note.as_str().into(),
                row,
                column: 0,
            });
        }
    }
    Some(Guard {
        observations,
        ..guard.clone()
    })
}
