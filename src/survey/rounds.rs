//! One guard in two files of different dates: two rounds of a survey, which are
//! compared and not mixed.

use std::collections::BTreeMap;
use std::sync::Arc;

use crate::input::Diagnostic;
use crate::input::Excerpt;
use crate::input::folded;
use crate::items::Item;
use crate::reading::parse;
use crate::survey::RowPlace;
use crate::survey::codes;
use crate::survey::complaints::RowSpot;
use crate::survey::complaints::SpotMark;
use crate::survey::complaints::Unplaced;

/// The dates of each file, and guards that stand in two of them.
#[derive(Debug, Default)]
pub(super) struct Rounds {
    dates: Vec<Vec<String>>,
    /// Of each two files, the first guard that stands in both: where in each.
    shared: BTreeMap<(u32, u32), (RowPlace, RowPlace, String)>,
}

/// How many different dates of a file are kept.
const KEPT: usize = 100;

impl Rounds {
    /// A date that a file names.
    pub(super) fn date(&mut self, file: u32, written: &str) {
        let file = file as usize;
        if self.dates.len() <= file {
            self.dates.resize(file + 1, Vec::new());
        }
        let known = &mut self.dates[file];
        if !written.is_empty() && known.len() < KEPT && !known.iter().any(|date| date == written) {
            known.push(written.to_owned());
        }
    }

    /// A row of a guard that another file named first.
    pub(super) fn shared(&mut self, first: RowPlace, row: RowPlace, guard: &str) {
        let entry = self.shared.entry((first.file, row.file));
        entry.or_insert_with(|| (first, row, guard.to_owned()));
    }

    /// Files that have a guard in common and no date.
    pub(super) fn two_rounds(&self, files: &[Arc<str>]) -> Vec<Unplaced> {
        let none = Vec::new();
        let dates = |file: u32| self.dates.get(file as usize).unwrap_or(&none);
        let mut found = Vec::new();
        for ((one, other), (first, row, guard)) in &self.shared {
            let (ours, theirs) = (dates(*one), dates(*other));
            let common = ours
                .iter()
                .any(|a| theirs.iter().any(|b| is_same_day(a, b)));
            if ours.is_empty() || theirs.is_empty() || common {
                continue;
            }
            let message = format!(
                "`{guard}` was measured on {} here, and on {} in {}: these are two rounds, and a check does not mix them",
                theirs.join(", "),
                ours.join(", "),
                files[*one as usize]
            );
            let spot = |row: RowPlace| RowSpot {
                row,
                mark: SpotMark::Guard,
            };
            let at = Excerpt::new(Arc::clone(&files[*other as usize]), row.line, "", 0..0);
            found.push(Unplaced {
                spots: [spot(*row), spot(*first)],
                second_says: "the other round",
                diagnostic: Diagnostic::error(codes::TWO_ROUNDS, message, at).help(
                    "check each file by itself; if it was one round, write the same date in both",
                ),
            });
        }
        found
    }
}

/// Whether two dates are one day, however they are written.
fn is_same_day(one: &str, other: &str) -> bool {
    if folded(one) == folded(other) {
        return true;
    }
    match (parse(Item::Date, one, None), parse(Item::Date, other, None)) {
        (Ok(one), Ok(other)) => {
            let values = |parsed: &crate::reading::Parsed| -> Vec<crate::reading::Value> {
                parsed
                    .readings
                    .iter()
                    .map(|reading| reading.value.clone())
                    .collect()
            };
            values(&one) == values(&other)
        }
        (Err(_), _) | (_, Err(_)) => false,
    }
}
