//! The first reading: facts of survey, building, unit and file, and which
//! guards there are with how many rows.

use crate::items::TapeWord;
use std::collections::HashMap;
use std::io;
use std::mem;
use std::sync::Arc;

use crate::input::Excerpt;
use crate::input::Scanner;
use crate::items::Holds;
use crate::items::Item;
use crate::quantities::LengthUnit;
use crate::reading::Value;
use crate::reading::parse;
use crate::survey::FileError;
use crate::survey::FileFacts;
use crate::survey::NamedRules;
use crate::survey::Observation;
use crate::survey::RowPlace;
use crate::survey::SurveyFacts;
use crate::survey::TapeClass;
use crate::survey::blank_names::BlankNames;
use crate::survey::blank_names::SeenName;
use crate::survey::clash;
use crate::survey::clash::can_clash;
use crate::survey::codes;
use crate::survey::complaints::Complaints;
use crate::survey::complaints::SpotMark;
use crate::survey::entries::Entries;
use crate::survey::entries::EntrySubject;
use crate::survey::entries::RowEntry;
use crate::survey::entries::loose_note;
use crate::survey::header::Header;
use crate::survey::header::Layout;
use crate::survey::heading::HeaderColumn;
use crate::survey::heading::length_unit;
use crate::survey::names::NameId;
use crate::survey::names::Names;
use crate::survey::observations::Level;
use crate::survey::observations::Misplaced;
use crate::survey::observations::Observer;
use crate::survey::observations::guard_missing;
use crate::survey::observations::lost_observation;
use crate::survey::observations::misplaced;
use crate::survey::observations::wrong_level;
use crate::survey::place::Belonging;
use crate::survey::place::Locator;
use crate::survey::reader::RowReader;
use crate::survey::rounds::Rounds;
use crate::survey::row::RowCondition;
use crate::survey::row::SurveyRow;
use crate::survey::scan_complaints::MOST_RULES;
use crate::survey::scan_complaints::blank_below;
use crate::survey::scan_complaints::header_only;
use crate::survey::scan_complaints::nearly_the_same;
use crate::survey::scan_complaints::no_guard_in_unit;
use crate::survey::scan_complaints::no_guards;
use crate::survey::scan_complaints::own_text_of_no_guard;
use crate::survey::scan_complaints::says_nothing;
use crate::survey::scan_complaints::too_many_rules;
use crate::survey::stream::Saved;

/// How many different dates and names of people are listed.
const LISTED: usize = 100;

/// What the first reading found.
pub(super) struct Scanned {
    pub(super) facts: SurveyFacts,
    pub(super) names: Names,
    /// Rows of each guard, by the place of its name among all names.
    pub(super) rows: Vec<u32>,
    /// Facts by unit; the survey's own stand at the unit without a name.
    pub(super) levels: HashMap<NameId, Vec<Observation>>,
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

struct Scan {
    scanned: Scanned,
    observer: Observer,
    entries: Entries,
    locator: Locator,
    /// What is wrong with marks and cells is said by the second reading.
    unsaid: Complaints,
    /// Facts that need a default unit, which may come later in the file.
    waiting: Vec<WaitingFacts>,
    /// What was said of the survey as a whole, and of each file.
    survey_level: Vec<Observation>,
    file_level: Vec<Observation>,
    /// The last guard named, for who took a blank cell for "the same".
    above: Option<NameId>,
    /// A file that could not be used may have held the guards.
    any_unusable: bool,
    /// Buildings and units that have a guard, by the place of their name.
    inhabited: Vec<bool>,
    /// Blank names of the file that is read: of buildings and of units.
    blanks: [BlankNames; 2],
    rounds: Rounds,
    /// Facts of the whole file that a table's column repeats.
    filled_down: Vec<(Item, String)>,
}

/// A row of facts that could not be read without a default unit.
struct WaitingFacts {
    text: String,
    line: u64,
    condition: RowCondition,
    above: Option<NameId>,
}

impl Scan {
    fn new() -> Scan {
        Scan {
            scanned: Scanned {
                facts: SurveyFacts::default(),
                names: Names::new(),
                rows: Vec::new(),
                levels: HashMap::new(),
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

    fn belonging(&mut self, row: &SurveyRow<'_>, header: &Header) -> Option<Belonging> {
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

    /// Dates and people may stand at guards too.
    fn list_dates_and_people(&mut self, row: &SurveyRow<'_>, header: &Header) {
        let facts = &mut self.scanned.facts;
        let rounds = &mut self.rounds;
        match header.layout {
            Layout::Notebook { item, reading, .. } => {
                let name = row.cell(item);
                let first = name.bytes().next().unwrap_or_default();
                if !begins_no_date_or_person(first)
                    && let Some(item) = Item::by_name(&name)
                {
                    list_once(facts, item, &row.cell(reading));
                    if item == Item::Date {
                        rounds.date(row.at.file, &row.cell(reading));
                    }
                }
            }
            Layout::Table => {
                for (index, column) in header.columns.iter().enumerate() {
                    if let HeaderColumn::Of(item, _) = *column {
                        list_once(facts, item, &row.cell(index));
                        if item == Item::Date {
                            rounds.date(row.at.file, &row.cell(index));
                        }
                    }
                }
            }
        }
    }

    fn fact_row(&mut self, row: &SurveyRow<'_>, header: &Header, place: Belonging) {
        let unit = self.scanned.units[row.at.file as usize];
        let complaints = &mut self.scanned.complaints;
        let (first, others) = self.entries.of(row, header, complaints);
        let entries: Vec<RowEntry<'_>> = first.into_iter().chain(others).collect();
        if unit.is_none() && entries.iter().any(|entry| self.observer.lacks_unit(entry)) {
            self.waiting.push(WaitingFacts {
                text: row.text.to_owned(),
                line: row.at.line,
                condition: row.condition.clone(),
                above: self.above,
            });
            return;
        }
        self.facts(row, header, place, entries);
    }

    /// A row of facts that waited for the default unit: the file has ended.
    fn read_waiting_facts(
        &mut self,
        waiting: &WaitingFacts,
        header: &Header,
        saved: Saved<'_>,
        index: u32,
    ) -> io::Result<()> {
        let file: Arc<str> = saved.file.name().into();
        let mut scanner = Scanner::new(waiting.text.as_bytes());
        scanner.part_at(header.delimiter)?;
        let row = SurveyRow {
            file: &file,
            at: RowPlace {
                file: index,
                line: waiting.line,
            },
            text: &waiting.text,
            undecoded: None,
            cells: scanner.record().cells,
            condition: &waiting.condition,
            delimiter: char::from(header.delimiter),
            sheet: saved.file.sheet(),
        };
        self.above = waiting.above;
        if let Some(place) = self.belonging(&row, header) {
            let (first, others) = self.entries.of(&row, header, &mut self.unsaid);
            let entries = first.into_iter().chain(others).collect();
            self.facts(&row, header, place, entries);
        }
        Ok(())
    }

    fn facts(
        &mut self,
        row: &SurveyRow<'_>,
        header: &Header,
        place: Belonging,
        entries: Vec<RowEntry<'_>>,
    ) {
        let names = &self.scanned.names;
        let blank = |id: NameId| names.written(id).is_empty();
        let level = if blank(place.building) && blank(place.unit) {
            Level::Survey
        } else {
            Level::Unit
        };
        if entries.is_empty() {
            let complaints = &mut self.scanned.complaints;
            complaints.count(row.file, codes::SAYS_NOTHING, "", || says_nothing(row));
        }
        for entry in entries {
            match &entry.subject {
                EntrySubject::Item(item) => self.fact(row, header, place, level, &entry, *item),
                EntrySubject::Lost(item) if item.is_circumstance() => {
                    let facts = self.scanned.levels.entry(place.unit).or_default();
                    facts.push(lost_observation(row, &entry, *item));
                }
                EntrySubject::Own(name) if &**name == "note" => {
                    let note = header.note.unwrap_or(entry.cell);
                    self.scanned.complaints.push(loose_note(row, note, "item"));
                }
                EntrySubject::Own(_) => {
                    let make = || own_text_of_no_guard(row, entry.cell);
                    let complaints = &mut self.scanned.complaints;
                    complaints.count(row.file, codes::LOOSE_NOTE, "", make);
                }
                EntrySubject::Lost(_) | EntrySubject::Nothing => {}
            }
        }
    }

    fn fact(
        &mut self,
        row: &SurveyRow<'_>,
        header: &Header,
        place: Belonging,
        level: Level,
        entry: &RowEntry<'_>,
        item: Item,
    ) {
        let scanned = &mut self.scanned;
        match misplaced(level, item) {
            Some(Misplaced::NeedsGuard) => {
                let above = self.above.map(|guard| scanned.names.written(guard));
                let complaint = guard_missing(row, header, item, above);
                scanned.complaints.push(complaint);
                return;
            }
            Some(Misplaced::HoldsForAll) => {
                scanned.complaints.push(wrong_level(row, entry, item));
                return;
            }
            None => {}
        }
        let into = if item.is_circumstance() || level == Level::Unit {
            scanned.levels.entry(place.unit).or_default()
        } else if item.info().holds == Holds::ForItsFile {
            &mut self.file_level
        } else {
            &mut self.survey_level
        };
        let unit = scanned.units[row.at.file as usize];
        let before = into.len();
        self.observer.observe(
            (row, header),
            entry,
            item,
            unit,
            &mut scanned.complaints,
            into,
        );
        let new: Vec<Observation> = into[before..].to_vec();
        for observation in &new {
            self.note_fact(observation, || row.excerpt(entry.cell));
        }
    }

    /// Facts that hold at once, or are listed.
    fn note_fact(&mut self, observation: &Observation, at: impl Fn() -> Excerpt) {
        let Some(reading) = &observation.reading else {
            return;
        };
        let (item, written) = (observation.item, &*observation.written);
        let Scanned { facts, units, .. } = &mut self.scanned;
        list_once(facts, item, written);
        if item == Item::Date {
            self.rounds.date(observation.row.file, written);
        }
        match (item, &reading.value) {
            (Item::DefaultUnit, Value::Word(word)) => {
                let unit = &mut units[observation.row.file as usize];
                *unit = unit.or(length_unit(word));
            }
            (Item::Rules, Value::Text(_)) => {
                for name in written.split(';').map(str::trim).filter(|r| !r.is_empty()) {
                    if facts.rules.len() >= MOST_RULES {
                        self.scanned.complaints.push(too_many_rules(at()));
                        break;
                    }
                    if !facts.rules.iter().any(|known| known.name == name) {
                        facts.rules.push(NamedRules {
                            name: name.to_owned(),
                            at: at(),
                        });
                    }
                }
            }
            (Item::Property, Value::Text(_)) if facts.property.is_none() => {
                facts.property = Some(written.to_owned());
            }
            (Item::BuildTolerance, Value::Measure(measure)) if facts.build_tolerance.is_none() => {
                facts.build_tolerance = Some(measure.length);
            }
            (_, _) => {}
        }
    }

    /// What was said of the file that was just read.
    fn file_facts(&mut self, file: &Arc<str>) {
        let said = mem::take(&mut self.file_level);
        for item in Item::all().filter(|item| item.info().holds == Holds::ForItsFile) {
            if let Some(pair) = clash::clashing(&said, item) {
                let complaint = clash::complaint(pair, file);
                self.scanned.complaints.push_unplaced(complaint);
                if item == Item::DefaultUnit {
                    self.forget_unit(pair[1].row.file);
                }
            }
        }
        let first = |item: Item| {
            let mut values = said.iter().filter(|o| o.item == item);
            values.find_map(|o| o.reading.as_ref().map(|reading| &reading.value))
        };
        let facts = FileFacts {
            tape: first(Item::Tape).and_then(Value::word).map(tape_class),
            read_to: match first(Item::ReadTo) {
                Some(Value::Measure(measure)) => Some(measure.length),
                Some(_) | None => None,
            },
        };
        if let Some(last) = self.scanned.facts.file_facts.last_mut() {
            *last = facts;
        }
    }

    /// Two default units: no bare number in the file has one.
    fn forget_unit(&mut self, file: u32) {
        self.scanned.units[file as usize] = None;
        let facts = self.scanned.levels.values_mut().flatten();
        for fact in facts.filter(|fact| fact.row.file == file) {
            if parse(fact.item, &fact.written, None).is_err() {
                fact.reading = None;
            }
        }
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
fn begins_no_date_or_person(first: u8) -> bool {
    first.is_ascii_alphanumeric() && !b"dDbBmMwW".contains(&first)
}

/// Lists a date or a person, each once.
fn list_once(facts: &mut SurveyFacts, item: Item, written: &str) {
    let lists = [
        (Item::Date, &mut facts.dates),
        (Item::By, &mut facts.by),
        (Item::Tape, &mut facts.tapes),
    ];
    let Some((_, into)) = lists.into_iter().find(|(of, _)| *of == item) else {
        return;
    };
    let known = written.is_empty() || into.iter().any(|known| known == written);
    if !known && into.len() < LISTED {
        into.push(written.to_owned());
    }
}

fn tape_class(word: TapeWord) -> TapeClass {
    match word {
        TapeWord::ClassOne => TapeClass::I,
        TapeWord::ClassTwo => TapeClass::II,
        TapeWord::ClassThree => TapeClass::III,
        TapeWord::Handbook44 => TapeClass::Handbook44,
    }
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
