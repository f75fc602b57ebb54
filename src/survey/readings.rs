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
    known: Vec<HashMap<Box<str>, Understood>>,
    count: usize,
}

impl Readings {
    /// What a cell says of an item; a bare number is of this unit.
    pub(super) fn understand(
        &mut self,
        item: Item,
        text: &str,
        unit: Option<LengthUnit>,
    ) -> Result<&Understood, ReadingError> {
        if self.count >= REMEMBERED {
            self.known.clear();
            self.count = 0;
        }
        let slot = item as usize * UNITS + unit.map_or(0, |unit| 1 + unit as usize);
        if self.known.len() <= slot {
            self.known.resize_with(slot + 1, HashMap::new);
        }
        let known = &mut self.known[slot];
        // looked up twice, as the borrow of a find cannot be returned on one path only
        if !known.contains_key(text) {
            let parsed = parse(item, text, unit)?;
            self.count += 1;
            let understood = Understood {
                written: text.into(),
                readings: parsed.readings.into_iter().map(Arc::new).collect(),
                cautions: parsed.cautions.into_iter().collect(),
            };
            known.insert(text.into(), understood);
        }
        Ok(&known[text])
    }
}
