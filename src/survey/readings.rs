//! Readings that were read before: a tape has few distinct values, so most
//! cells of a large survey are found here and not parsed again.

use std::collections::HashMap;
use std::sync::Arc;

use crate::items::Item;
use crate::measure::LengthUnit;
use crate::reading::Reading;
use crate::reading::ReadingError;
use crate::reading::parse;

/// How many are remembered; then it begins anew.
const REMEMBERED: usize = 100_000;

/// Units that a bare number may have: none, or one of five.
const UNITS: usize = 6;

/// A cell that was understood.
#[derive(Clone, Debug)]
pub(super) struct Understood {
    /// The cell as it stands.
    pub(super) written: Arc<str>,
    /// What it says; `5 to 6 in` says two things.
    pub(super) readings: Box<[Arc<Reading>]>,
    /// What a person should know of it.
    pub(super) cautions: Box<[String]>,
}

/// Cells that were understood, by item, default unit and text.
#[derive(Debug, Default)]
pub(super) struct Readings {
    /// Where each text stands in `understood`, by item and unit.
    known: Vec<HashMap<Box<str>, usize>>,
    understood: Vec<Understood>,
    /// Places in `understood` of texts met last, with their item's slot: most
    /// cells are found here without a search.
    recent: Vec<(usize, usize)>,
}

impl Readings {
    /// What a cell says of an item; a bare number is of this unit.
    pub(super) fn understand(
        &mut self,
        item: Item,
        text: &str,
        unit: Option<LengthUnit>,
    ) -> Result<&Understood, ReadingError> {
        let slot = item as usize * UNITS + unit.map_or(0, |unit| 1 + unit as usize);
        if self.known.len() <= slot {
            self.known.resize_with(slot + 1, HashMap::new);
        }
        let recent = recent(slot, text);
        self.recent.resize(RECENT, (usize::MAX, 0));
        let (of, index) = self.recent[recent];
        if of == slot
            && self
                .understood
                .get(index)
                .is_some_and(|u| *u.written == *text)
        {
            return Ok(&self.understood[index]);
        }
        if let Some(index) = self.known[slot].get(text) {
            self.recent[recent] = (slot, *index);
            return Ok(&self.understood[*index]);
        }
        let parsed = parse(item, text, unit)?;
        if self.understood.len() >= REMEMBERED {
            self.known.iter_mut().for_each(HashMap::clear);
            self.understood.clear();
            self.recent.fill((usize::MAX, 0));
        }
        let index = self.understood.len();
        self.known[slot].insert(text.into(), index);
        self.understood.push(Understood {
            written: text.into(),
            readings: parsed.readings.into_iter().map(Arc::new).collect(),
            cautions: parsed.cautions.into_iter().collect(),
        });
        Ok(&self.understood[index])
    }
}

/// How many texts are found without a search.
const RECENT: usize = 8192;

/// Where a text is looked for among the recent ones.
fn recent(slot: usize, text: &str) -> usize {
    let mixed = text.bytes().fold(slot, |mixed, byte| {
        (mixed ^ usize::from(byte)).wrapping_mul(0x0100_0193)
    });
    (mixed ^ (mixed >> 15)) % RECENT
}
