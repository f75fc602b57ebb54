//! The first reading: facts of survey, building, unit and file, and which
//! guards there are with how many rows.

use std::collections::HashMap;
use std::collections::HashSet;
use std::io;
use std::mem;
use std::sync::Arc;

use crate::items::Holds;
use crate::items::Item;
use crate::quantities::LengthUnit;
use crate::survey::FileError;
use crate::survey::FileFacts;
use crate::survey::Observation;
use crate::survey::RowPlace;
use crate::survey::SurveyFacts;
use crate::survey::blank_names::BlankNames;
use crate::survey::blank_names::SeenName;
use crate::survey::clash;
use crate::survey::clash::can_clash;
use crate::survey::complaints::Complaints;
use crate::survey::complaints::SpotMark;
use crate::survey::entries::Entries;
use crate::survey::header::Header;
use crate::survey::header::Layout;
use crate::survey::heading::HeaderColumn;
use crate::survey::names::NameId;
use crate::survey::names::Names;
use crate::survey::observations::Level;
use crate::survey::observations::Observer;
use crate::survey::observations::misplaced;
use crate::survey::observations::wrong_level;
use crate::survey::place::Belonging;
use crate::survey::place::Locator;
use crate::survey::reader::RowReader;
use crate::survey::rounds::Rounds;
use crate::survey::row::RowCondition;
use crate::survey::row::SurveyRow;
use crate::survey::scan_complaints::blank_below;
use crate::survey::scan_complaints::header_only;
use crate::survey::scan_complaints::nearly_the_same;
use crate::survey::scan_complaints::no_guard_in_unit;
use crate::survey::scan_complaints::no_guards;
use crate::survey::stream::Saved;

/// What the first reading found.
pub(super) struct Scanned {
    pub(super) facts: SurveyFacts,
    pub(super) names: Names,
    /// Rows of each guard, by the place of its name among all names.
    pub(super) rows: Vec<u32>,
    /// Facts by unit; the survey's own stand at the unit without a name.
    pub(super) levels: HashMap<NameId, Vec<Observation>>,
    /// Units, buildings or the survey where a guard's reading stands in a row without
    /// a guard.
    pub(super) orphans: HashSet<NameId>,
    /// The default unit of each file.
    pub(super) units: Vec<Option<LengthUnit>>,
    /// From where on blank units and buildings of a file cannot be told.
    pub(super) blank_from: Vec<[Option<RowPlace>; 2]>,
    /// Two files are two rounds: nothing is judged.
    pub(super) is_two_rounds: bool,
    pub(super) complaints: Complaints,
}

/// Reads all files once.
pub(super) fn scan(files: &[Saved<'_>]) -> Result<Scanned, FileError> {
    let mut scan = Scan::new();
    for (index, file) in (0..).zip(files) {
        scan.file(*file, index).map_err(FileError::of(file.file))?;
    }
    Ok(scan.finish(files))
}

/// The first reading as it goes.
pub(super) struct Scan {
    pub(super) scanned: Scanned,
    pub(super) observer: Observer,
    pub(super) entries: Entries,
    pub(super) locator: Locator,
    /// What is wrong with marks and cells is said by the second reading.
    pub(super) unsaid: Complaints,
    /// Facts that need a default unit, which may come later in the file.
    pub(super) waiting: Vec<WaitingFacts>,
    /// What was said of the survey as a whole, and of each file.
    pub(super) survey_level: Vec<Observation>,
    pub(super) file_level: Vec<Observation>,
    /// The last guard named, for who took a blank cell for "the same".
    pub(super) above: Option<NameId>,
    /// A file that could not be used may have held the guards.
    pub(super) any_unusable: bool,
    /// Buildings and units that have a guard, by the place of their name.
    pub(super) inhabited: Vec<bool>,
    /// Blank names of the file that is read: of buildings and of units.
    pub(super) blanks: [BlankNames; 2],
    pub(super) rounds: Rounds,
    /// Facts of the whole file that a table's column repeats.
    pub(super) filled_down: Vec<(Item, String)>,
}

/// A row of facts that could not be read without a default unit.
pub(super) struct WaitingFacts {
    pub(super) text: String,
    pub(super) line: u64,
    pub(super) condition: RowCondition,
    pub(super) above: Option<NameId>,
}

impl Scan {
    fn new() -> Scan {
        Scan {
            scanned: Scanned {
                facts: SurveyFacts::default(),
                names: Names::new(),
                rows: Vec::new(),
                levels: HashMap::new(),
                orphans: HashSet::new(),
                units: Vec::new(),
                blank_from: Vec::new(),
                is_two_rounds: false,
                complaints: Complaints::default(),
            },
            observer: Observer::new(),
            entries: Entries::new(),
            locator: Locator::default(),
            unsaid: Complaints::unheard(),
            waiting: Vec::new(),
            survey_level: Vec::new(),
            file_level: Vec::new(),
            above: None,
            any_unusable: false,
            inhabited: Vec::new(),
            blanks: Default::default(),
            rounds: Rounds::default(),
            filled_down: Vec::new(),
        }
    }

    fn file(&mut self, saved: Saved<'_>, index: u32) -> io::Result<()> {
        let name: Arc<str> = saved.file.name().into();
        self.scanned.facts.files.push(Arc::clone(&name));
        self.scanned.facts.file_facts.push(FileFacts::default());
        let sheet = saved.file.sheet().map(|sheet| sheet.name().into());
        self.scanned.facts.sheets.push(sheet);
        self.scanned.units.push(None);
        self.scanned.blank_from.push([None; 2]);
        self.blanks = Default::default();
        self.filled_down.clear();
        self.locator.forget();
        self.above = None;
        let Some(mut reader) = RowReader::open(saved, index, &mut self.scanned.complaints)? else {
            self.any_unusable = true;
            return Ok(());
        };
        let header = Arc::clone(&reader.header);
        let mut any = false;
        while let Some(row) = reader.next(&mut self.unsaid)? {
            any = true;
            let Some(guard) = self.row(&row, &header) else {
                continue;
            };
            let alike = reader.pass_over(self.locator.names(), begins_no_date_or_person)?;
            self.scanned.rows[guard.index()] += alike;
        }
        if !any {
            self.any_unusable = true;
            self.scanned.complaints.push(header_only(&name));
        }
        for waiting in mem::take(&mut self.waiting) {
            self.read_waiting_facts(&waiting, &header, saved, index)?;
        }
        self.file_facts(&name);
        self.ask_of_blank_names(&name, index);
        Ok(())
    }

    /// Counts the row of a guard, and says which; reads a row of facts.
    fn row(&mut self, row: &SurveyRow<'_>, header: &Header) -> Option<NameId> {
        let place = self.belonging(row, header)?;
        let Some(guard) = place.guard else {
            self.fact_row(row, header, place);
            return None;
        };
        self.above = Some(guard);
        self.look_at_names(row, header, place, guard);
        self.filled_down(row, header, place);
        let rows = &mut self.scanned.rows;
        if rows.len() <= guard.index() {
            rows.resize(guard.index() + 1, 0);
        }
        rows[guard.index()] += 1;
        for place in [place.building, place.unit] {
            if self.inhabited.len() <= place.index() {
                self.inhabited.resize(place.index() + 1, false);
            }
            self.inhabited[place.index()] = true;
        }
        self.list_dates_and_people(row, header);
        Some(guard)
    }

    /// Whether names are blank below filled ones, and whether another file named the guard first.
    fn look_at_names(
        &mut self,
        row: &SurveyRow<'_>,
        header: &Header,
        place: Belonging,
        guard: NameId,
    ) {
        let names = &self.scanned.names;
        let columns = [(header.building, place.building), (header.unit, place.unit)];
        for (blanks, (column, id)) in self.blanks.iter_mut().zip(columns) {
            if column.is_some() {
                let name = if names.written(id).is_empty() {
                    SeenName::Blank
                } else if names.first(id) == row.at {
                    SeenName::New(id)
                } else {
                    SeenName::Known(id)
                };
                blanks.see(name, names.written(guard), row.at);
            }
        }
        let first = names.first(guard);
        if first.file != row.at.file {
            self.rounds.shared(first, row.at, names.written(guard));
        }
    }

    /// Facts of the whole file in a table's column, the same on every row.
    fn filled_down(&mut self, row: &SurveyRow<'_>, header: &Header, place: Belonging) {
        if header.layout != Layout::Table {
            return;
        }
        for (index, column) in header.columns.iter().enumerate() {
            let HeaderColumn::Of(item, unit) = *column else {
                continue;
            };
            let text = row.cell(index);
            let is_known = self
                .filled_down
                .iter()
                .any(|(of, known)| *of == item && *known == *text);
            if misplaced(Level::Guard, item).is_none() || text.is_empty() || is_known {
                continue;
            }
            let entry = self.entries.filled_down(item, index, text, unit);
            if item == Item::Rules && self.filled_down.iter().any(|(of, _)| *of == item) {
                let complaint = wrong_level(row, &entry, item);
                self.scanned.complaints.push(complaint);
            } else {
                self.fact(row, header, place, Level::Survey, &entry, item);
            }
            self.filled_down.push((item, entry.text.into_owned()));
        }
    }

    /// Asks where merged cells of a spreadsheet may have become blank ones.
    fn ask_of_blank_names(&mut self, name: &Arc<str>, index: u32) {
        let kinds = [("building", SpotMark::Building), ("unit", SpotMark::Unit)];
        for (nth, (what, mark)) in kinds.into_iter().enumerate() {
            let Some((row, count)) = self.blanks[nth].asked() else {
                continue;
            };
            self.scanned.blank_from[index as usize][nth] = Some(row);
            self.scanned
                .complaints
                .push_unplaced(blank_below(name, row, count, what, mark));
        }
    }

    pub(super) fn belonging(&mut self, row: &SurveyRow<'_>, header: &Header) -> Option<Belonging> {
        let Scanned {
            names, complaints, ..
        } = &mut self.scanned;
        self.locator.locate(row, header, |parent, written, column| {
            let entered = names.enter(parent, written, row.at);
            if let (Some(near), Some(column)) = (entered.near, column) {
                complaints.push_unplaced(nearly_the_same(row, header, names, near, column));
            }
            Some(entered.id)
        })
    }

    /// Says where facts hold for no guard: its name may have been forgotten.
    fn units_without_guard(&mut self) {
        let Scanned {
            names,
            levels,
            facts,
            complaints,
            ..
        } = &mut self.scanned;
        let lonely = |unit: &&NameId| {
            let building = names.parent(**unit);
            let of_building = names.written(**unit).is_empty();
            let of_survey = of_building && names.written(building).is_empty();
            let place = if of_building { building } else { **unit };
            !of_survey && !self.inhabited.get(place.index()).is_some_and(|any| *any)
        };
        let mut without: Vec<NameId> = levels.keys().filter(lonely).copied().collect();
        without.sort_unstable();
        for unit in without {
            let file = &facts.files[names.first(unit).file as usize];
            complaints.push_unplaced(no_guard_in_unit(names, unit, file));
        }
    }

    fn finish(mut self, files: &[Saved<'_>]) -> Scanned {
        let names: Vec<Arc<str>> = self.scanned.facts.files.clone();
        let mut complain = |pair: [&Observation; 2]| {
            let file = &names[pair[1].row.file as usize];
            self.scanned
                .complaints
                .push_unplaced(clash::complaint(pair, file));
        };
        let of_the_survey = |item: &Item| {
            let of_a_file = item.info().holds == Holds::ForItsFile;
            item.is_survey_fact() && can_clash(*item) && !of_a_file
        };
        for item in Item::all().filter(of_the_survey) {
            clash::clashing(&self.survey_level, item)
                .into_iter()
                .for_each(&mut complain);
        }
        for facts in self.scanned.levels.values_mut() {
            // rows that waited for their default unit came last
            facts.sort_by_key(|observation| observation.row);
            for item in Item::all().filter(|item| item.is_circumstance() && can_clash(*item)) {
                if let Some(pair) = clash::clashing(facts, item) {
                    complain(pair);
                    clash::forget(facts, item);
                }
            }
        }
        for unplaced in self.rounds.two_rounds(&names) {
            self.scanned.is_two_rounds = true;
            self.scanned.complaints.push_unplaced(unplaced);
        }
        let any_guard = self.scanned.rows.iter().any(|rows| *rows > 0);
        if any_guard && !self.any_unusable {
            self.units_without_guard();
        }
        if let (false, false, Some(file)) = (any_guard, self.any_unusable, files.first()) {
            self.scanned.complaints.push(no_guards(file.file.name()));
        }
        self.scanned
    }
}

/// Whether no name of the items `date` and `by` begins with this byte, nor a
/// space in front of one.
pub(super) fn begins_no_date_or_person(first: u8) -> bool {
    first.is_ascii_alphanumeric() && !b"dDbBmMwW".contains(&first)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_name_of_a_date_or_person_is_passed_over() {
        for item in [Item::Date, Item::By] {
            for name in std::iter::once(&item.info().name).chain(item.info().synonyms) {
                for name in [(*name).to_owned(), name.to_uppercase(), format!(" {name}")] {
                    assert!(!begins_no_date_or_person(name.as_bytes()[0]), "{name}");
                }
            }
        }
    }
}
