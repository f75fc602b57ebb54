//! Blank cells of units and buildings below filled ones: merged in the
//! spreadsheet that the file came from, or meant so? Nobody guesses.

use crate::survey::RowPlace;
use crate::survey::names::NameId;

/// What is seen of one column of names while a file is read.
#[derive(Debug, Default)]
pub(super) struct BlankNames {
    /// How many different names, and whether one of them came twice.
    filled: u32,
    any_twice: bool,
    last: Option<NameId>,
    /// The guard of the last row whose name was filled.
    guard_above: String,
    /// The first row whose name is blank below a filled one.
    first_blank: Option<RowPlace>,
    blank: u32,
    /// Blank rows stand below the last filled one.
    in_blanks: bool,
    /// Blank rows with filled ones above and below.
    between: bool,
    same_guard: bool,
}

/// One row's name: a blank one, or which and whether it is new.
#[derive(Clone, Copy, Debug)]
pub(super) enum SeenName {
    Blank,
    Known(NameId),
    New(NameId),
}

impl BlankNames {
    /// Looks at the name and the guard of one more row that names a guard.
    pub(super) fn see(&mut self, name: SeenName, guard: &str, row: RowPlace) {
        match name {
            SeenName::Blank if self.filled > 0 => {
                self.first_blank.get_or_insert(row);
                self.blank += 1;
                // directly below a named row: its next reading
                self.same_guard |= !self.in_blanks && self.guard_above.eq_ignore_ascii_case(guard);
                self.in_blanks = true;
                return;
            }
            SeenName::Blank => return,
            SeenName::Known(id) => {
                // the same guard's next reading is no second mention
                let goes_on = self.last == Some(id) && self.guard_above.eq_ignore_ascii_case(guard);
                self.any_twice |= !goes_on;
                self.fill(id);
            }
            SeenName::New(id) => {
                self.filled += 1;
                self.fill(id);
            }
        }
        self.guard_above.clear();
        self.guard_above.push_str(guard);
    }

    fn fill(&mut self, id: NameId) {
        self.between |= self.in_blanks;
        self.in_blanks = false;
        self.last = Some(id);
    }

    /// The first row and the count of those that must be asked about: each name
    /// stands once, at the head of its rows, as merged cells leave it; or a row
    /// goes on with the guard above.
    pub(super) fn asked(&self) -> Option<(RowPlace, u32)> {
        let merged = self.between && !self.any_twice && self.filled >= 2;
        self.first_blank
            .filter(|_| merged || self.same_guard)
            .map(|first| (first, self.blank))
    }
}
