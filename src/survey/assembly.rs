//! The second reading: rows become guards, and each guard is handed over as
//! soon as its last row is read, in the order of first appearance.

use crate::items::GuardWord;
use std::collections::HashMap;
use std::collections::VecDeque;
use std::io;
use std::ops::ControlFlow;
use std::sync::Arc;

use crate::input::Diagnostic;
use crate::input::Excerpt;
use crate::items::Item;
use crate::items::ItemSet;
use crate::quantities::LengthUnit;
use crate::reading::Value;
use crate::survey;
use crate::survey::FileError;
use crate::survey::Guard;
use crate::survey::Inherited;
use crate::survey::Observation;
use crate::survey::OwnEntry;
use crate::survey::clash;
use crate::survey::clash::can_clash;
use crate::survey::codes;
use crate::survey::complaints::Complaints;
use crate::survey::complaints::RowSpot;
use crate::survey::complaints::SpotMark;
use crate::survey::complaints::Unplaced;
use crate::survey::entries::Entries;
use crate::survey::entries::EntrySubject;
use crate::survey::entries::RowEntry;
use crate::survey::header::Header;
use crate::survey::header::Layout;
use crate::survey::names::NameId;
use crate::survey::names::SURVEY;
use crate::survey::observations::EntryOutcome;
use crate::survey::observations::Level;
use crate::survey::observations::Observer;
use crate::survey::observations::lost_observation;
use crate::survey::observations::misplaced;
use crate::survey::observations::wrong_level;
use crate::survey::place::Locator;
use crate::survey::reader::RowReader;
use crate::survey::row::SurveyRow;
use crate::survey::scan::Scanned;
use crate::survey::stream::Saved;

/// How many units' names and inherited facts are remembered.
const REMEMBERED: usize = 10_000;

/// What guards of one unit share.
#[derive(Clone)]
struct Shared {
    building: Arc<str>,
    unit: Arc<str>,
    inherited: Arc<Inherited>,
    /// Rows in error of which nobody knows whether they are this guard's: 1 or none.
    orphans: u32,
}

/// A guard whose last row has not been read.
struct OpenGuard {
    guard: Guard,
    seen: u32,
    /// Its row in the table of a file.
    table_row: Option<survey::RowPlace>,
    /// Items that were written down, and those that were more than once.
    items: ItemSet,
    repeated: ItemSet,
}

/// Puts guards together.
pub(super) struct Assembly<'s> {
    scanned: &'s Scanned,
    files: &'s [Saved<'s>],
    pub(super) complaints: Complaints,
    observer: Observer,
    entries: Entries,
    shared: HashMap<NameId, Shared>,
    /// Guards from the name of index `base` on; other names have no rows.
    queue: VecDeque<Option<Box<OpenGuard>>>,
    base: usize,
}

impl<'s> Assembly<'s> {
    pub(super) fn new(scanned: &'s Scanned, files: &'s [Saved<'s>]) -> Assembly<'s> {
        Assembly {
            scanned,
            files,
            complaints: scanned.complaints.clone(),
            observer: Observer::new(),
            entries: Entries::new(),
            shared: HashMap::new(),
            queue: VecDeque::new(),
            base: 0,
        }
    }

    /// Reads all files and hands over guard after guard.
    pub(super) fn run(
        &mut self,
        each: &mut dyn FnMut(Guard) -> ControlFlow<()>,
    ) -> Result<(), FileError> {
        for (index, file) in (0..).zip(self.files) {
            let read = self.file(*file, index, each);
            match read.map_err(FileError::of(file.file))? {
                None => return Err(FileError::changed(file.file)),
                Some(ControlFlow::Break(())) => return Ok(()),
                Some(ControlFlow::Continue(())) => {}
            }
        }
        match self.queue.iter().flatten().next() {
            // its rows were counted by the first reading, and are fewer now
            Some(open) => {
                let row = open.guard.observations.first().map_or(0, |o| o.row.file);
                Err(FileError::changed(self.files[row as usize].file))
            }
            None => Ok(()),
        }
    }

    /// Reads one file; `None` if it is not what the first reading read.
    fn file(
        &mut self,
        file: Saved<'_>,
        index: u32,
        each: &mut dyn FnMut(Guard) -> ControlFlow<()>,
    ) -> io::Result<Option<ControlFlow<()>>> {
        // what is wrong with the header was said by the first reading
        let mut said = Complaints::unheard();
        let Some(mut reader) = RowReader::open(file, index, &mut said)? else {
            return Ok(Some(ControlFlow::Continue(())));
        };
        let header = Arc::clone(&reader.header);
        let mut locator = Locator::default();
        let mut last = SURVEY;
        while let Some(row) = reader.next(&mut self.complaints)? {
            let mut unknown = false;
            let place = locator.locate(&row, &header, |parent, written, _| {
                let found = self.scanned.names.find(parent, written, last);
                last = found.unwrap_or(last);
                unknown |= found.is_none();
                found
            });
            if unknown {
                return Ok(None);
            }
            // facts, and rows whose names cannot be trusted, belong to no guard
            let Some((unit, guard)) = place.and_then(|place| Some((place.unit, place.guard?)))
            else {
                continue;
            };
            let Some(open) = self.open(unit, guard, &row, &header) else {
                return Ok(None);
            };
            self.row(&row, &header, open);
            if let ControlFlow::Break(()) = self.hand_over(each) {
                return Ok(Some(ControlFlow::Break(())));
            }
        }
        Ok(Some(ControlFlow::Continue(())))
    }

    /// The queue's index of a guard; `None` if it has more rows than were counted.
    fn open(
        &mut self,
        unit: NameId,
        guard: NameId,
        row: &SurveyRow<'_>,
        header: &Header,
    ) -> Option<usize> {
        let index = guard.index().checked_sub(self.base)?;
        while self.queue.len() <= index {
            self.queue.push_back(None);
        }
        if self.queue[index].is_none() {
            let rows = *self.scanned.rows.get(guard.index())?;
            let shared = self.shared(unit);
            let capacity = match header.layout {
                Layout::Notebook { .. } => rows.min(64) as usize,
                Layout::Table => header.columns.len(),
            };
            self.queue[index] = Some(Box::new(OpenGuard {
                guard: Guard {
                    building: shared.building,
                    unit: shared.unit,
                    name: self.scanned.names.written(guard).into(),
                    observations: Vec::with_capacity(capacity),
                    own: Vec::new(),
                    inherited: shared.inherited,
                    rows_in_error: shared.orphans,
                    rows: shared.orphans,
                },
                seen: 0,
                table_row: None,
                items: ItemSet::EMPTY,
                repeated: ItemSet::EMPTY,
            }));
        }
        if let Some(Some(open)) = self.queue.get_mut(index) {
            open.seen += 1;
            if header.layout == Layout::Table {
                open.second_row_in_a_table(row, &mut self.complaints);
            }
        }
        Some(index)
    }

    /// What guards of a unit share: names as written first, and inherited facts.
    fn shared(&mut self, unit: NameId) -> Shared {
        if let Some(shared) = self.shared.get(&unit) {
            return shared.clone();
        }
        let names = &self.scanned.names;
        let shared = Shared {
            building: names.written(names.parent(unit)).into(),
            unit: names.written(unit).into(),
            inherited: Arc::new(self.inherited(unit)),
            orphans: u32::from(self.may_own_an_orphan(unit)),
        };
        if self.shared.len() >= REMEMBERED {
            self.shared.clear();
        }
        self.shared.insert(unit, shared.clone());
        shared
    }

    /// The unit, its building, and the survey.
    fn levels(&self, unit: NameId) -> impl Iterator<Item = NameId> {
        let names = &self.scanned.names;
        let no_unit = |building| names.find(building, "", SURVEY);
        let building = names.parent(unit);
        let survey = names.find(SURVEY, "", SURVEY).and_then(no_unit);
        let mut levels = vec![Some(unit), no_unit(building), survey];
        levels.dedup();
        levels.into_iter().flatten()
    }

    /// Whether a reading stands in a row without a guard, so that it may be this one's:
    /// nobody knows what it says of it.
    fn may_own_an_orphan(&self, unit: NameId) -> bool {
        let mut levels = self.levels(unit);
        levels.any(|level| self.scanned.orphans.contains(&level))
    }

    /// For each item the observations of the nearest level that wrote it down.
    fn inherited(&self, unit: NameId) -> Inherited {
        let mut observations: Vec<Observation> = Vec::new();
        let levels = self.levels(unit);
        for facts in levels.filter_map(|level| self.scanned.levels.get(&level)) {
            let nearer = observations.len();
            for fact in facts {
                let known = observations[..nearer].iter().any(|o| o.item == fact.item);
                if !known {
                    observations.push(fact.clone());
                }
            }
        }
        Inherited { observations }
    }

    /// What a row says goes to its guard.
    fn row(&mut self, row: &SurveyRow<'_>, header: &Header, index: usize) {
        let Some(Some(open)) = self.queue.get_mut(index) else {
            return;
        };
        let (first, others) = self.entries.of(row, header, &mut self.complaints);
        let before = open.guard.rows_in_error;
        let mut place = Receiver {
            open,
            observer: &mut self.observer,
            complaints: &mut self.complaints,
            unit: self.scanned.units[row.at.file as usize],
        };
        if let Some(entry) = &first {
            place.receive((row, header), entry);
        }
        for entry in &others {
            place.receive((row, header), entry);
        }
        let guard = &mut open.guard;
        let blank_from = self.scanned.blank_from[row.at.file as usize];
        for (from, column) in blank_from.into_iter().zip([header.building, header.unit]) {
            if from.is_some_and(|from| row.at >= from) && row.cell_of(column).is_empty() {
                // nobody knows whose guard it is
                guard.rows_in_error += 1;
                guard.rows += 1;
            }
        }
        if row.condition.in_error && guard.rows_in_error == before {
            // the fault lies beside the readings: in a note, or in a name's bytes
            guard.rows_in_error += 1;
            guard.rows += u32::from(first.is_none() && others.is_empty());
        }
    }

    /// Hands over the guards at the front of the queue that are complete.
    fn hand_over(&mut self, each: &mut dyn FnMut(Guard) -> ControlFlow<()>) -> ControlFlow<()> {
        while !self.queue.is_empty() {
            let rows = self.scanned.rows.get(self.base).copied().unwrap_or(0);
            let complete = match self.queue.front() {
                Some(Some(open)) => open.seen >= rows,
                Some(None) => rows == 0,
                None => false,
            };
            if !complete {
                break;
            }
            self.base += 1;
            if let Some(Some(open)) = self.queue.pop_front() {
                each(open.finish(self.scanned, &mut self.complaints))?;
            }
        }
        ControlFlow::Continue(())
    }
}

/// A guard that is being put together, and what reads its entries.
struct Receiver<'a> {
    open: &'a mut OpenGuard,
    observer: &'a mut Observer,
    complaints: &'a mut Complaints,
    /// The file's default unit.
    unit: Option<LengthUnit>,
}

impl Receiver<'_> {
    /// One thing that a row says of the guard.
    fn receive(&mut self, (row, header): (&SurveyRow<'_>, &Header), entry: &RowEntry<'_>) {
        let guard = &mut self.open.guard;
        let before = guard.observations.len();
        let outcome = match &entry.subject {
            // a column that repeats a fact of the whole file: the first reading read it
            EntrySubject::Item(item)
                if header.layout == Layout::Table && misplaced(Level::Guard, *item).is_some() =>
            {
                EntryOutcome::Used
            }
            EntrySubject::Item(item) if misplaced(Level::Guard, *item).is_some() => {
                let make = || wrong_level(row, entry, *item);
                self.complaints
                    .count(row.file, codes::WRONG_LEVEL, item.name(), make);
                EntryOutcome::InError
            }
            EntrySubject::Item(item) => self.observer.observe(
                (row, header),
                entry,
                *item,
                self.unit,
                self.complaints,
                &mut guard.observations,
            ),
            EntrySubject::Lost(item) => {
                guard.observations.push(lost_observation(row, entry, *item));
                EntryOutcome::InError
            }
            EntrySubject::Nothing => EntryOutcome::InError,
            EntrySubject::Own(name) => {
                guard.own.push(OwnEntry {
                    name: Arc::clone(name),
                    written: (&*entry.text).into(),
                    note: Arc::clone(&entry.note),
                    row: row.at,
                    column: entry.column(),
                });
                EntryOutcome::Used
            }
        };
        guard.rows += 1;
        guard.rows_in_error += u32::from(outcome == EntryOutcome::InError);
        if let Some(observation) = guard.observations.get(before)
            && !self.open.items.insert(observation.item)
        {
            self.open.repeated.insert(observation.item);
        }
    }
}

impl OpenGuard {
    /// A table has one row a guard: a second one in the same file is an error.
    fn second_row_in_a_table(&mut self, row: &SurveyRow<'_>, complaints: &mut Complaints) {
        let Some(first) = self.table_row.replace(row.at) else {
            return;
        };
        if first.file != row.at.file {
            return;
        }
        self.table_row = Some(first);
        self.guard.rows += 1;
        self.guard.rows_in_error += 1;
        let message = format!(
            "`{}` has a row of its own already, on line {}",
            self.guard.name, first.line
        );
        complaints.push_unplaced(Unplaced {
            spots: [row.at, first].map(|row| RowSpot {
                row,
                mark: SpotMark::Guard,
            }),
            second_says: "the first one",
            diagnostic: Diagnostic::error(
                codes::GUARD_TWICE,
                message,
                Excerpt::new(Arc::clone(row.file), row.at.line, "", 0..0),
            )
            .help("a table has one row a guard; part several readings in a cell by ;"),
        });
    }

    /// The guard, once all its rows are read.
    fn finish(self, scanned: &Scanned, complaints: &mut Complaints) -> Guard {
        let mut guard = self.guard;
        if !self.repeated.is_empty() {
            for item in Item::all().filter(|item| can_clash(*item)) {
                if self.repeated.contains(item) {
                    settle_clash(&mut guard, item, scanned, complaints);
                }
            }
        }
        if self.items.contains(Item::Guard) {
            beside_no_guard(&mut guard, scanned, complaints);
        }
        guard
    }
}

fn settle_clash(guard: &mut Guard, item: Item, scanned: &Scanned, complaints: &mut Complaints) {
    let Some(pair) = clash::clashing(&guard.observations, item) else {
        return;
    };
    let file = &scanned.facts.files[pair[1].row.file as usize];
    complaints.push_unplaced(clash::complaint(pair, file));
    let readable = guard
        .observations
        .iter()
        .filter(|o| o.item == item && o.reading.is_some());
    let mut rows: Vec<survey::RowPlace> = readable.map(|o| o.row).collect();
    rows.dedup();
    guard.rows_in_error += u32::try_from(rows.len()).unwrap_or(u32::MAX);
    clash::forget(&mut guard.observations, item);
}

/// A part of a guard beside `guard,none`: an error, and the part is not believed.
fn beside_no_guard(guard: &mut Guard, scanned: &Scanned, complaints: &mut Complaints) {
    let says = |observation: &Observation, value: &Value| {
        observation
            .reading
            .as_ref()
            .is_some_and(|r| r.value == *value)
    };
    let none = |o: &&Observation| o.item == Item::Guard && o.word() == Some(GuardWord::None);
    let Some(none) = guard.observations.iter().find(none).map(|o| o.row) else {
        return;
    };
    for observation in &mut guard.observations {
        let part = observation.item.is_of_the_guard()
            && observation.reading.is_some()
            && !says(observation, &Value::Unknown)
            && !says(observation, &Value::None);
        if !part {
            continue;
        }
        observation.reading = None;
        guard.rows_in_error += 1;
        let item = observation.item;
        complaints.push_unplaced(Unplaced {
            spots: [
                RowSpot {
                    row: observation.row,
                    mark: SpotMark::Item(item),
                },
                RowSpot {
                    row: none,
                    mark: SpotMark::Item(Item::Guard),
                },
            ],
            second_says: "said to be missing here",
            diagnostic: Diagnostic::error(
                codes::BESIDE_NO_GUARD,
                format!(
                    "{item}: `{}`, and line {} says that there is no guard",
                    observation.written, none.line
                ),
                Excerpt::new(
                    Arc::clone(&scanned.facts.files[observation.row.file as usize]),
                    observation.row.line,
                    "",
                    0..0,
                ),
            )
            .help(format!("leave out {item}, or leave out guard, none")),
        });
    }
}
