//! What an answer becomes: a reading, a refusal, a question about it, a change
//! of the survey.

use crate::input::Diagnostic;
use crate::input::Severity;
use crate::input::folded;
use crate::items::Change;
use crate::items::Holds;
use crate::items::Hole;
use crate::items::Item;
use crate::items::Kind;
use crate::items::Role;
use crate::quantities::LengthUnit;
use crate::reading::Value;
use crate::reading::parse;
use crate::reading::parse_length;
use crate::reading::parse_or_none;
use crate::reading::print;
use crate::survey::codes;
use crate::walk::GuardName;
use crate::walk::GuardTopic;
use crate::walk::Reply;
use crate::walk::Topic;
use crate::walk::Walk;
use crate::walk::page::Page;
use crate::walk::page::PageEntry;
use crate::walk::page::PageSpot;
use crate::walk::pending::How;
use crate::walk::pending::Pending;
use crate::walk::pending::Why;
use crate::walk::question::Asking;
use crate::walk::understood::meant;
use crate::walk::unit::likely_units;
use crate::walk::unit::odd_alone;
use crate::walk::unit::unit_named;
use crate::walk::view::View;
use crate::walk::walk::Focus;
use crate::walk::walk::WrittenAnswer;
use crate::walk::words::Meant;
use crate::walk::words::word_of;
use crate::walk::words::words_behind;
use crate::walk::words::yes_or_no;

type Told<'r> = Vec<Reply<'r>>;

/// Why it cannot be written: what was found, and what to write.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct AnswerRefusal {
    message: String,
    help: Option<String>,
    /// Only a unit is missing, and none is in force in the file.
    lacks_unit: bool,
}

impl AnswerRefusal {
    fn new(message: String, help: Option<String>) -> AnswerRefusal {
        AnswerRefusal {
            message,
            help,
            lacks_unit: false,
        }
    }

    /// With a sentence more to help.
    fn adding(mut self, sentence: &str) -> AnswerRefusal {
        self.help = Some(match self.help {
            Some(help) => format!("{help}; {sentence}"),
            None => sentence.to_owned(),
        });
        self
    }

    fn said<'r>(self) -> Reply<'r> {
        Reply::Refused(self.message, self.help)
    }
}

impl<'r> Walk<'r> {
    /// What a person answers to a question about an item.
    pub(super) fn read(&mut self, item: Item, text: &str, how: How, said: &mut Told<'r>) {
        let ages: Vec<&str> = text.split([',', ';']).map(str::trim).collect();
        if item == Item::Children && how == How::Add && ages.len() > 1 {
            for age in ages {
                self.read(item, age, How::Add, said);
            }
            return;
        }
        if item == Item::RiserOpening && yes_or_no(text) == Some(false) {
            // asked as whether the steps are open at the back
            self.read(item, "none", how, said);
            return;
        }
        if item.info().hole != Hole::No && yes_or_no(text).is_some() {
            // `n` would be read as `none`: a hole that is closed
            let help = "write none if there is no such opening, else what the tape reads";
            let message = format!("{text} may mean two things for {item}");
            said.push(Reply::Refused(message, Some(help.to_owned())));
            return;
        }
        if item.info().hole != Hole::No && text.eq_ignore_ascii_case("shape") {
            said.push(Reply::Remark(SHAPES.to_owned()));
            return;
        }
        if item == Item::Children
            && let Ok(age) = text.trim().parse::<u32>()
            && age > 0
        {
            let pending = Pending {
                item,
                reading: text.trim().to_owned(),
                note: String::new(),
                how,
                confirmed: false,
            };
            self.focus = Focus::Pending(pending, Why::Age((age > GROWN_UP).then_some("months")));
            return;
        }
        if item == Item::Children && parse_length(text, None).is_ok() {
            // `34 in` must not come out as 34 months
            let message = format!("{text} is a length, and an age is asked for");
            let help =
                "write 14 months or 3 years; a length goes behind its item, such as height: 36 in";
            said.push(Reply::Refused(message, Some(help.to_owned())));
            return;
        }
        let (mut text, mut note) = with_reason(text);
        // a text and a date are kept as they are, commas and all
        if note.is_empty() && !matches!(item.info().kind, Kind::Date | Kind::Text) {
            (text, note) = words_behind(&text);
        }
        let text = steps_in_order(item, &text);
        let reading = match self.meant(item, &text) {
            Ok(reading) => reading,
            Err(refused) => {
                said.push(refused.said());
                return;
            }
        };
        let pending = Pending {
            item,
            reading,
            note,
            how,
            confirmed: false,
        };
        self.write_or_ask(pending, said);
    }

    /// The reading that is meant: words by their first letters.
    fn meant(&self, item: Item, text: &str) -> Result<String, AnswerRefusal> {
        if NOT_REACHED.contains(&folded(text).as_str()) {
            return Ok("not reached".to_owned());
        }
        if matches!(item.info().kind, Kind::Words(_)) {
            match word_of(item, text) {
                Meant::Nothing => {}
                Meant::One(word) => return Ok(word.to_owned()),
                Meant::Several(words) => {
                    let message = format!("{text} may be {}", words.join(" or "));
                    let help = Some("type a letter more".to_owned());
                    return Err(AnswerRefusal::new(message, help));
                }
            }
        }
        Ok(text.to_owned())
    }

    /// Writes an answer, unless something must be asked about it first.
    pub(super) fn write_or_ask(&mut self, mut pending: Pending, said: &mut Told<'r>) {
        let item = pending.item;
        let known = parse(item, &pending.reading, None);
        if let (Kind::Date, Ok(parsed)) = (item.info().kind, &known) {
            // one form for all, whichever of them was typed
            let printed: Vec<String> = parsed.readings.iter().map(print).collect();
            pending.reading = printed.join("; ");
        }
        let lacks_unit = known.is_err()
            && item.info().kind.holds_a_length()
            && parse_or_none(item, &pending.reading, Some(LengthUnit::Inch)).is_some();
        if let (true, Some(unit)) = (lacks_unit, self.unit) {
            pending.reading = format!("{} {}", pending.reading, unit.symbol());
        } else if let (Err(error), false) = (&known, lacks_unit) {
            said.push(Reply::Refused(error.message.clone(), error.help.clone()));
            return;
        }
        if let Ok(parsed) = &known {
            let unknown = parsed.readings.iter().any(|r| r.value == Value::Unknown);
            if unknown && pending.note.is_empty() && !pending.confirmed {
                self.focus = Focus::Pending(pending, Why::Reason);
                return;
            }
        }
        if self.is_written_already(&pending) {
            if let Some(here) = &self.here {
                self.passed.followed.insert((here.compared(), item));
            }
            let text = format!("{item} {} is written already.", pending.reading);
            said.push(Reply::Remark(text));
            self.focus = Focus::Next;
            return;
        }
        if let Some(word) = self.another_word(&pending) {
            self.focus = Focus::Pending(pending, Why::Slip(word));
            return;
        }
        if let (true, false, Some(unit)) = (lacks_unit, pending.confirmed, self.unit_in_force())
            && let Some((caution, likely)) = odd_alone(item, &pending.reading, unit)
        {
            self.focus = Focus::Pending(pending, Why::Unlikely(caution, likely));
            return;
        }
        match self.page_with(&pending) {
            Ok((entry, page, view)) => {
                let cautions = view.new_faults(&self.view, Severity::Warning);
                let caution = cautions.iter().find(|fault| fault.code == codes::CAUTION);
                if let (Some(caution), false) = (caution, pending.confirmed) {
                    let caution = format!("{}.", caution.message);
                    let likely = likely_units(item, &pending.reading);
                    self.focus = Focus::Pending(pending, Why::Unlikely(caution, likely));
                    return;
                }
                said.extend(
                    cautions
                        .iter()
                        .filter(|f| f.code != codes::CAUTION)
                        .map(fault_as_remark),
                );
                self.write(&pending, entry, page, view, said);
            }
            Err(refused) if refused.lacks_unit && self.unit.is_none() => {
                self.focus = Focus::Pending(pending, Why::Unit);
            }
            Err(refused) if lacks_unit && !refused.lacks_unit => {
                let unit = self
                    .unit_in_force()
                    .map_or("the unit of its column", LengthUnit::plural);
                let in_force = format!("a number alone is {unit} here");
                let refused = refused.adding(&in_force);
                said.push(refused.said());
            }
            Err(refused) => said.push(refused.said()),
        }
    }

    /// Whether the very same stands at this guard, and nobody asked for `another` one.
    fn is_written_already(&self, pending: &Pending) -> bool {
        let wished = matches!(self.focus, Focus::Item(..));
        if wished || pending.how != How::Add || !pending.item.is_at_guard() {
            return false;
        }
        self.guard.iter().any(|(guard, _)| {
            let mut own = guard.observations.iter();
            own.any(|o| {
                o.item == pending.item && *o.written == *pending.reading && *o.note == *pending.note
            })
        })
    }

    /// A word of this guard that a new one contradicts, where a change of it
    /// starts a new guard.
    fn another_word(&self, pending: &Pending) -> Option<String> {
        let item = pending.item;
        let starts_anew = item.info().change == Change::StartsAGuard;
        if !starts_anew || pending.confirmed {
            return None;
        }
        let (guard, _) = self.guard.as_ref()?;
        let own = guard.observations.iter().filter(|o| o.item == item);
        let known = own.filter(|o| {
            let reading = o.reading.as_ref();
            reading.is_some_and(|reading| reading.value != Value::Unknown)
        });
        let mut words = known.map(|o| o.written.to_string());
        words.find(|word| item.word(word) != item.word(&pending.reading))
    }

    /// The survey with the answer in it; a refusal where that brings new errors.
    fn page_with(&self, pending: &Pending) -> Result<(PageEntry, Page, View), AnswerRefusal> {
        let refused = |message: String| AnswerRefusal::new(message, None);
        let place = self.where_it_holds(pending);
        let entry = PageEntry {
            place: place.clone(),
            item: pending.item,
            reading: pending.reading.clone(),
            note: pending.note.clone(),
        };
        let page = match &pending.how {
            How::Add => self.page.with(&entry, self.table_row(&place)),
            How::Replace(spot, _) => self.page.corrected(spot, &entry),
        };
        let page = page.map_err(|error| refused(error.to_string()))?;
        let view = View::of(&page);
        let faults = view.new_faults(&self.view, Severity::Error);
        match faults.first() {
            Some(fault) => Err(AnswerRefusal {
                lacks_unit: faults.iter().any(|fault| fault.code == codes::BARE_NUMBER),
                ..AnswerRefusal::new(fault.message.clone(), fault.help.clone())
            }),
            None => Ok((entry, page, view)),
        }
    }

    /// Where an answer holds: what is the same for all guards is written once,
    /// as long as no other guard is still to be asked for it.
    fn where_it_holds(&self, pending: &Pending) -> GuardName {
        if let How::Replace(_, place) = &pending.how {
            return place.clone();
        }
        if pending.item.is_survey_fact() {
            return GuardName::default();
        }
        let here = self.here.clone().unwrap_or_default();
        let wide = match pending.item.info().holds {
            Holds::ForAUnit => here.whole_unit(),
            Holds::ForAll | Holds::ForItsFile => GuardName::default(),
            Holds::ForAGuard | Holds::ForMost | Holds::ForThisGuardAlone => return here,
        };
        let settled = self.view.guards.iter().all(|guard| {
            GuardName::of(guard).compared() == here.compared()
                || guard.of(pending.item).next().is_some()
        });
        let inherited = self
            .guard
            .as_ref()
            .is_some_and(|(guard, _)| guard.of(pending.item).next().is_some());
        if self.page.is_notebook() && settled && !inherited {
            wide
        } else {
            here
        }
    }

    /// The line of a guard's row in a table.
    pub(super) fn table_row(&self, place: &GuardName) -> Option<u64> {
        if self.page.is_notebook() {
            return None;
        }
        self.page.row_of(place)
    }

    fn write(
        &mut self,
        pending: &Pending,
        entry: PageEntry,
        page: Page,
        view: View,
        said: &mut Told<'r>,
    ) {
        let item = pending.item;
        let line = match &pending.how {
            How::Add => {
                if let (Some(here), Some((guard, _))) = (&self.here, &self.guard)
                    && guard.of(item).next().is_some()
                {
                    self.passed.followed.insert((here.compared(), item));
                }
                page.line_written(self.row_in(&page, &entry.place))
            }
            How::Replace(spot, _) => spot.line,
        };
        self.page = page;
        self.view = view;
        let topic = if item.is_survey_fact() {
            Topic::Fact(item)
        } else {
            Topic::Guard(GuardTopic::Item(item))
        };
        let spot = PageSpot {
            line,
            written: entry.reading.clone(),
        };
        let same = |old: &WrittenAnswer| {
            let [(of, spot)] = old.rows.as_slice() else {
                return false;
            };
            spot.line == line && *of == item
        };
        self.history.retain(|old| !same(old));
        self.history.push(WrittenAnswer {
            place: entry.place.clone(),
            topic,
            rows: vec![(item, spot)],
        });
        if self.facts.first() == Some(&item) {
            self.facts.remove(0);
        }
        if let Some(here) = &self.here {
            for asking in [Asking::Item(item), Asking::Contradiction(item)] {
                self.passed.over.remove(&(here.compared(), asking));
            }
        }
        self.focus = Focus::Next;
        said.push(Reply::Understood {
            item,
            meant: meant(item, &entry.reading, self.unit_in_force()),
            reading: entry.reading,
            note: entry.note,
            place: entry.place,
        });
        self.look_again(said);
    }

    /// The line of a place's row in a table of another text.
    fn row_in(&self, page: &Page, place: &GuardName) -> Option<u64> {
        if page.is_notebook() {
            return None;
        }
        page.row_of(place)
    }

    /// The unit of numbers without one; the answer that waits for it is then written.
    pub(super) fn choose_unit(&mut self, mut pending: Pending, text: &str, said: &mut Told<'r>) {
        let Meant::One(unit) = word_of(Item::DefaultUnit, text) else {
            let message = format!("{text} is no unit of length");
            said.push(Reply::Refused(
                message,
                Some("write in, ft, mm, cm or m".to_owned()),
            ));
            return;
        };
        let fact = Pending {
            item: Item::DefaultUnit,
            reading: unit.to_owned(),
            note: String::new(),
            how: How::Add,
            confirmed: true,
        };
        // where the file has errors, a unit for the whole of it might hide some
        let whole_file = self.page.is_notebook() && self.view.errors() == 0;
        // and one that was a slip would spoil every number after it
        let usual = parse(pending.item, &pending.reading, unit_named(unit))
            .is_ok_and(|parsed| parsed.cautions.is_empty());
        if !usual {
            pending.reading = format!("{} {unit}", pending.reading);
            self.focus = Focus::Next;
            self.write_or_ask(pending, said);
            return;
        }
        if let (true, Ok((entry, page, view))) = (whole_file, self.page_with(&fact)) {
            self.write(&fact, entry, page, view, said);
        } else {
            self.unit = unit_named(unit);
            pending.reading = format!("{} {unit}", pending.reading);
        }
        self.focus = Focus::Next;
        self.write_or_ask(pending, said);
    }

    /// Where several readings cannot stand beside each other, a new one replaces the old.
    pub(super) fn how_for(&self, item: Item) -> How {
        let single = item.info().role == Role::Single;
        let own = self
            .guard
            .as_ref()
            .and_then(|(guard, _)| guard.observations.iter().rfind(|o| o.item == item));
        match (single, own, &self.here) {
            (true, Some(old), Some(here)) => How::Replace(
                PageSpot {
                    line: old.row.line,
                    written: old.written.to_string(),
                },
                here.clone(),
            ),
            (_, _, _) => How::Add,
        }
    }
}

/// Above this a number alone is no age of a child in years.
const GROWN_UP: u32 = 17;

/// How to write a hole that is no plain gap.
const SHAPES: &str = "No plain gap: write its shape. triangle 7 3/4 x 10 in (the two legs); \
rectangle 3 1/2 x 30 in; slot 4 1/4 in; circle 5 in; polygon 0:0 120:0 60:90 mm (its corners).";

/// `7 3/4, 10, 2`: rise, going and lift in this order.
fn steps_in_order(item: Item, text: &str) -> String {
    let parts: Vec<&str> = text.split(',').map(str::trim).collect();
    let numbers = parts
        .iter()
        .all(|part| part.starts_with(|c: char| c.is_ascii_digit()));
    match parts.as_slice() {
        [rise, going, lift] if item == Item::StairTriangle && numbers => {
            format!("rise {rise} going {going} lift {lift}")
        }
        [..] => text.to_owned(),
    }
}

fn fault_as_remark<'r>(fault: &Diagnostic) -> Reply<'r> {
    Reply::Remark(format!("{}.", fault.message.trim_end_matches('.')))
}

/// That one could not look, in the words that people type.
const NOT_REACHED: [&str; 4] = ["not reached", "nr", "cannot reach", "can not reach"];

/// `not reached, no ladder`: the words, and the reason.
fn with_reason(text: &str) -> (String, String) {
    for word in NOT_REACHED.into_iter().chain(["unknown"]) {
        let rest = text
            .get(..word.len())
            .filter(|start| start.eq_ignore_ascii_case(word));
        let rest = rest.and_then(|_| text.get(word.len()..));
        if let Some(reason) = rest.and_then(|rest| rest.strip_prefix([',', ':', ';'])) {
            let word = if word == "unknown" {
                word
            } else {
                NOT_REACHED[0]
            };
            return (word.to_owned(), reason.trim().to_owned());
        }
    }
    (text.to_owned(), String::new())
}
