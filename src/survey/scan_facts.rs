//! The first reading's facts: of the survey, of buildings and units, of each file.

use std::io;
use std::mem;
use std::sync::Arc;

use crate::input::Excerpt;
use crate::input::Scanner;
use crate::items::Holds;
use crate::items::Item;
use crate::items::TapeWord;
use crate::reading::Value;
use crate::reading::parse;
use crate::survey::FileFacts;
use crate::survey::NamedRules;
use crate::survey::Observation;
use crate::survey::RowPlace;
use crate::survey::SurveyFacts;
use crate::survey::TapeClass;
use crate::survey::clash;
use crate::survey::codes;
use crate::survey::entries::EntrySubject;
use crate::survey::entries::RowEntry;
use crate::survey::entries::loose_note;
use crate::survey::header::Header;
use crate::survey::header::Layout;
use crate::survey::heading::HeaderColumn;
use crate::survey::heading::length_unit;
use crate::survey::names::NameId;
use crate::survey::names::SURVEY;
use crate::survey::observations::Level;
use crate::survey::observations::Misplaced;
use crate::survey::observations::guard_missing;
use crate::survey::observations::lost_observation;
use crate::survey::observations::misplaced;
use crate::survey::observations::wrong_level;
use crate::survey::place::Belonging;
use crate::survey::row::SurveyRow;
use crate::survey::scan::Scan;
use crate::survey::scan::Scanned;
use crate::survey::scan::WaitingFacts;
use crate::survey::scan::begins_no_date_or_person;
use crate::survey::scan_complaints::MOST_RULES;
use crate::survey::scan_complaints::is_like_an_id;
use crate::survey::scan_complaints::own_text_of_no_guard;
use crate::survey::scan_complaints::row_in_one_cell;
use crate::survey::scan_complaints::rules_in_the_note;
use crate::survey::scan_complaints::says_nothing;
use crate::survey::scan_complaints::too_many_rules;
use crate::survey::stream::Saved;

/// How many different dates and names of people are listed.
const LISTED: usize = 100;

impl Scan {
    /// Dates and people may stand at guards too.
    pub(super) fn list_dates_and_people(&mut self, row: &SurveyRow<'_>, header: &Header) {
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

    pub(super) fn fact_row(&mut self, row: &SurveyRow<'_>, header: &Header, place: Belonging) {
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
    pub(super) fn read_waiting_facts(
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
            let written = |id: NameId| names.written(id);
            let in_one_cell = [written(place.building), written(place.unit)]
                .into_iter()
                .any(|name| name.matches([';', '\t', '|']).count() > 1);
            let complaints = &mut self.scanned.complaints;
            if in_one_cell {
                // whose reading it is nobody knows
                complaints.push(row_in_one_cell(row, header.delimiter));
                let names = &mut self.scanned.names;
                let building = names.enter(SURVEY, "", row.at).id;
                let unit = names.enter(building, "", row.at).id;
                self.scanned.orphans.insert(unit);
            } else {
                complaints.count(row.file, codes::SAYS_NOTHING, "", || says_nothing(row));
            }
        }
        for entry in entries {
            match &entry.subject {
                EntrySubject::Item(Item::Rules) if is_like_an_id(&entry.note) => {
                    self.scanned.complaints.push(rules_in_the_note(row, &entry));
                    self.scanned.orphans.insert(place.unit);
                    self.fact(row, header, place, level, &entry, Item::Rules);
                }
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
                EntrySubject::Lost(_) | EntrySubject::Nothing => {
                    self.scanned.orphans.insert(place.unit);
                }
            }
        }
    }

    pub(super) fn fact(
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
                scanned.orphans.insert(place.unit);
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
        let of_all = !item.is_circumstance() && level == Level::Survey;
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
        if of_all {
            self.scanned.facts.said.extend(new);
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
    pub(super) fn file_facts(&mut self, file: &Arc<str>) {
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
