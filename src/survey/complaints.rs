//! What is wrong with a survey, gathered while it is read: many of a kind as
//! one with their count, and places that lie far behind looked up at the end.

use std::collections::BTreeMap;
use std::sync::Arc;

use crate::input::Code;
use crate::input::Diagnostic;
use crate::input::Diagnostics;
use crate::input::Excerpt;
use crate::items::Item;
use crate::survey::RowPlace;

/// What to mark in a row that is looked up.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub(super) enum SpotMark {
    Building,
    Guard,
    /// What is written of this item.
    Item(Item),
    Unit,
}

/// A place to be looked up.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct RowSpot {
    pub(super) row: RowPlace,
    pub(super) mark: SpotMark,
}

/// A diagnostic whose places are still to be looked up.
#[derive(Clone, Debug)]
pub(super) struct Unplaced {
    /// The first is where it is shown, the second what belongs to it; the same twice for one place.
    pub(super) spots: [RowSpot; 2],
    /// What is said at the second place.
    pub(super) second_says: &'static str,
    /// Its place is made up until it is looked up.
    pub(super) diagnostic: Diagnostic,
}

/// How many of a code and file are looked up; more are not shown anyway.
const LOOKED_UP: usize = 20;

/// How many are looked up, and counted by kind, in all.
const KEPT: usize = 2000;

/// Everything found so far.
#[derive(Clone, Debug, Default)]
pub(super) struct Complaints {
    diagnostics: Diagnostics,
    alike: BTreeMap<(Arc<str>, u16, String), (Diagnostic, u64)>,
    unplaced: Vec<Unplaced>,
    /// Those beyond what is looked up and counted by kind.
    beyond: Diagnostics,
    unheard: bool,
}

impl Complaints {
    /// Keeps nothing: for rows that are looked at again, or were before.
    pub(super) fn unheard() -> Complaints {
        Complaints {
            unheard: true,
            ..Complaints::default()
        }
    }

    /// Whether it is worth looking for what is wrong.
    pub(super) fn are_heard(&self) -> bool {
        !self.unheard
    }

    pub(super) fn push(&mut self, diagnostic: Diagnostic) {
        if self.are_heard() {
            self.diagnostics.push(diagnostic);
        }
    }

    pub(super) fn extend(&mut self, diagnostics: impl IntoIterator<Item = Diagnostic>) {
        for diagnostic in diagnostics {
            self.push(diagnostic);
        }
    }

    /// Counts one of those that are alike in a file; only the first is made and kept.
    pub(super) fn count(
        &mut self,
        file: &Arc<str>,
        code: Code,
        alike: &str,
        make: impl FnOnce() -> Diagnostic,
    ) {
        if self.unheard {
            return;
        }
        let key = (Arc::clone(file), code.number, alike.to_owned());
        if let Some((_, count)) = self.alike.get_mut(&key) {
            *count += 1;
        } else if self.alike.len() < KEPT {
            self.alike.insert(key, (make(), 1));
        } else {
            self.beyond.push(make());
        }
    }

    /// Adds one whose places are looked up at the end.
    pub(super) fn push_unplaced(&mut self, unplaced: Unplaced) {
        let (file, code) = (unplaced.spots[0].row.file, unplaced.diagnostic.code);
        let alike =
            |other: &&Unplaced| other.spots[0].row.file == file && other.diagnostic.code == code;
        let room = self.unplaced.len() < KEPT;
        if room && self.unplaced.iter().filter(alike).count() < LOOKED_UP {
            self.unplaced.push(unplaced);
        } else {
            self.beyond.push(unplaced.diagnostic);
        }
    }

    /// Places that are still to be looked up.
    pub(super) fn spots_wanted(&self) -> Vec<RowSpot> {
        let mut spots: Vec<RowSpot> = self.unplaced.iter().flat_map(|u| u.spots).collect();
        spots.sort_by_key(|spot| spot.row);
        spots
    }

    /// All of it, with the places that were looked up.
    pub(super) fn finish(self, placed: impl Fn(RowSpot) -> Option<Excerpt>) -> Diagnostics {
        let mut all = self.diagnostics;
        for (mut diagnostic, count) in self.alike.into_values() {
            if count > 1 {
                let message = &diagnostic.message;
                diagnostic.message =
                    format!("{message} ({} more like this in the file)", count - 1);
            }
            all.push(diagnostic);
        }
        for unplaced in self.unplaced {
            let mut diagnostic = unplaced.diagnostic;
            let [first, second] = unplaced.spots;
            if let Some(at) = placed(first) {
                diagnostic.at.at = at;
            }
            if first != second
                && let Some(at) = placed(second)
            {
                diagnostic = diagnostic.also(at, unplaced.second_says);
            }
            all.push(diagnostic);
        }
        all.absorb(self.beyond);
        all
    }
}
