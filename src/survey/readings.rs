//! Readings that were read before: a tape has few distinct values, so most
//! cells of a large survey are found here and not parsed again.

use std::collections::HashMap;
use std::sync::Arc;

use crate::items::Item;
use crate::quantities::LengthUnit;
use crate::reading::Parsed;
use crate::reading::Reading;
use crate::reading::ReadingError;
use crate::reading::parse;

/// How many are remembered; then it begins anew.
const REMEMBERED: usize = 100_000;

/// Units that a bare number may have: none, or one of five.
const UNITS: usize = 6;

/// A cell that was understood.
#[derive(Clone, Debug, Default)]
pub(super) struct Understood {
    /// The cell as it stands.
    pub(super) written: Arc<str>,
    /// What it says.
    first: Option<Arc<Reading>>,
    /// What it says besides; `5 to 6 in` says two things.
    others: Box<[Arc<Reading>]>,
    /// What a person should know of it.
    pub(super) cautions: Box<[String]>,
}

impl Understood {
    /// What it says, in the order written.
    pub(super) fn readings(&self) -> impl Iterator<Item = &Arc<Reading>> {
        self.first.iter().chain(&self.others)
    }
}

/// Cells that were understood, by item, default unit and text.
#[derive(Debug, Default)]
pub(super) struct Readings {
    /// By item and unit.
    known: Vec<HashMap<Box<str>, Understood>>,
    count: usize,
    /// Texts met last, with their item's slot: most cells are found here without
    /// a search, and with one look into memory.
    recent: Vec<(usize, Understood)>,
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
        if self.recent.is_empty() {
            self.recent = vec![(usize::MAX, Understood::default()); RECENT];
        }
        let recent = recent(slot, text);
        let (of, last) = &self.recent[recent];
        if *of != slot || *last.written != *text {
            let known = match self.known[slot].get(text) {
                Some(known) => known.clone(),
                None => self.understand_anew(slot, text, parse(item, text, unit)?),
            };
            self.recent[recent] = (slot, known);
        }
        Ok(&self.recent[recent].1)
    }

    fn understand_anew(&mut self, slot: usize, text: &str, parsed: Parsed) -> Understood {
        if self.count >= REMEMBERED {
            self.known.iter_mut().for_each(HashMap::clear);
            self.count = 0;
        }
        let mut readings = parsed.readings.into_iter().map(Arc::new);
        let understood = Understood {
            written: text.into(),
            first: readings.next(),
            others: readings.collect(),
            cautions: parsed.cautions.into_iter().collect(),
        };
        self.count += 1;
        self.known[slot].insert(text.into(), understood.clone());
        understood
    }
}

/// How many texts are found without a search.
const RECENT: usize = 512;

/// Where a text is looked for among the recent ones.
fn recent(slot: usize, text: &str) -> usize {
    let mixed = text.bytes().fold(slot, |mixed, byte| {
        (mixed ^ usize::from(byte)).wrapping_mul(0x0100_0193)
    });
    (mixed ^ (mixed >> 15)) % RECENT
}
