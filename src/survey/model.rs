//! What a survey is once it has been read.

use std::sync::Arc;

use crate::input::Excerpt;
use crate::items::Danger;
use crate::items::Item;
use crate::items::ItemWord;
use crate::items::StateWord;
use crate::quantities::Length;
use crate::reading::Reading;
use crate::reading::Value;

/// A row of a survey: which file, and which line of it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct RowPlace {
    /// Index into the survey's files.
    pub file: u32,
    /// The line on which the row begins, from 1.
    pub line: u64,
}

/// Which reading an observation is of: a cell such as `5 to 6 in` is two observations
/// and one reading, one such as `3 in; 5 in` two readings.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct ReadingKey {
    row: RowPlace,
    item: Item,
    written: Arc<str>,
}

/// One observation: a reading of an item, as written and as understood.
#[derive(Clone, Debug)]
pub struct Observation {
    /// What was observed.
    pub item: Item,
    /// The cell as it stands.
    pub written: Arc<str>,
    /// What was understood; a cell such as `5 to 6 in` gives two observations.
    /// `None` where it could not be read: it then counts as unknown.
    pub reading: Option<Arc<Reading>>,
    /// The note beside it; empty if there is none.
    pub note: Arc<str>,
    /// Where it stands.
    pub row: RowPlace,
    /// In which column of the file, from 0.
    pub column: u32,
}

impl Observation {
    /// The word that was written, where it is one of this item's list.
    #[must_use]
    pub fn word<W: ItemWord>(&self) -> Option<W> {
        let reading = self.reading.as_ref().filter(|_| self.item == W::ITEM)?;
        reading.value.word()
    }

    /// The danger that it states, where it does.
    #[must_use]
    pub fn danger(&self) -> Option<Danger> {
        if let Value::Word(name) = self.reading.as_ref()?.value {
            self.item.danger(name)
        } else {
            None
        }
    }
}

/// Something of the person's own: no rule reads it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OwnEntry {
    /// The heading or the word in the column `item`; `note` for a note beside no item.
    pub name: Arc<str>,
    /// The cell as it stands.
    pub written: Arc<str>,
    /// The note beside it; empty if there is none.
    pub note: Arc<str>,
    /// Where it stands.
    pub row: RowPlace,
    /// In which column of the file, from 0.
    pub column: u32,
}

/// Circumstances that a guard inherits, nearest level first resolved: for each
/// item only the observations of the nearest level that wrote it down.
#[derive(Clone, Debug, Default)]
pub struct Inherited {
    /// The observations.
    pub observations: Vec<Observation>,
}

/// One guard with everything written about it.
#[derive(Clone, Debug)]
pub struct Guard {
    /// The building it belongs to, as written first; empty if none.
    pub building: Arc<str>,
    /// The unit it belongs to, as written first; empty if none.
    pub unit: Arc<str>,
    /// Its name, as written first.
    pub name: Arc<str>,
    /// Its own observations, in the order of the files.
    pub observations: Vec<Observation>,
    /// What is the person's own.
    pub own: Vec<OwnEntry>,
    /// What it inherits from unit, building and survey.
    pub inherited: Arc<Inherited>,
    /// How many of its entries could not be used (errors): rows of a notebook,
    /// filled cells of a table.
    pub rows_in_error: u32,
    /// How many entries it has in all.
    pub rows: u32,
}

impl Observation {
    /// Which reading it is of.
    #[must_use]
    pub fn key(&self) -> ReadingKey {
        ReadingKey {
            row: self.row,
            item: self.item,
            written: Arc::clone(&self.written),
        }
    }
}

impl Guard {
    /// The observations of an item with their indices: the guard's own, else
    /// those it inherits.
    pub fn of(&self, item: Item) -> impl Iterator<Item = (usize, &Observation)> {
        let own = self.observations.iter().position(|o| o.item == item);
        let (start, all) = match own {
            Some(first) => (first, &self.observations[first..]),
            None => (self.observations.len(), &*self.inherited.observations),
        };
        (start..)
            .zip(all)
            .filter(move |(_, observation)| observation.item == item)
    }

    /// Whether it is a plan, or what will be once the work is done.
    #[must_use]
    pub fn is_drawn(&self) -> bool {
        self.of(Item::State).any(|(_, observation)| {
            matches!(
                observation.word(),
                Some(StateWord::Altered | StateWord::Proposed)
            )
        })
    }

    /// Whether nobody could look at it at all: every reading that there is a guard says so.
    #[must_use]
    pub fn was_not_entered(&self) -> bool {
        let mut of_guard = self.of(Item::Guard).peekable();
        of_guard.peek().is_some()
            && of_guard.all(|(_, observation)| {
                let reading = observation.reading.as_ref();
                reading.is_some_and(|reading| reading.value == Value::Unknown)
            })
    }

    /// The observation of an index: the guard's own come first, then the
    /// inherited ones.
    ///
    /// # Panics
    /// For an index that [`Guard::of`] did not give.
    #[must_use]
    pub fn observation(&self, index: usize) -> &Observation {
        let own = self.observations.len();
        if index < own {
            &self.observations[index]
        } else {
            &self.inherited.observations[index - own]
        }
    }
}

/// The accuracy class of a tape.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum TapeClass {
    /// Class I of the EU and UK rules for material measures.
    I,
    /// Class II.
    II,
    /// Class III.
    III,
    /// The limit of NIST Handbook 44 for metal tapes.
    Handbook44,
}

impl TapeClass {
    /// All of them.
    pub const ALL: [TapeClass; 4] = [
        TapeClass::I,
        TapeClass::II,
        TapeClass::III,
        TapeClass::Handbook44,
    ];
}

/// What holds only for the file it stands in.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct FileFacts {
    /// The tape, where named.
    pub tape: Option<TapeClass>,
    /// How finely it was read, where said.
    pub read_to: Option<Length>,
}

/// A ruleset that a survey asks for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NamedRules {
    /// Its id or path.
    pub name: String,
    /// Where the survey names it first.
    pub at: Excerpt,
}

/// What holds for the survey as a whole.
#[derive(Clone, Debug, Default)]
pub struct SurveyFacts {
    /// The files' names, in the order given.
    pub files: Vec<Arc<str>>,
    /// What holds in each file, in the same order.
    pub file_facts: Vec<FileFacts>,
    /// The name of each file's sheet, where it is one of a workbook.
    pub sheets: Vec<Option<Arc<str>>>,
    /// The property, as written.
    pub property: Option<String>,
    /// The dates of measuring, as written.
    pub dates: Vec<String>,
    /// Who measured, as written.
    pub by: Vec<String>,
    /// The tapes, as written.
    pub tapes: Vec<String>,
    /// The rulesets that the survey asks for.
    pub rules: Vec<NamedRules>,
    /// All that was written of the survey as a whole or of a file, circumstances left out.
    pub said: Vec<Observation>,
    /// ± this for proposed guards.
    pub build_tolerance: Option<Length>,
}
