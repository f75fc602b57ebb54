//! What an answer becomes: a reading, a refusal, a question about it, a change
//! of the survey.

use crate::input::Diagnostic;
use crate::input::Severity;
use crate::items::Change;
use crate::items::Holds;
use crate::items::Hole;
use crate::items::Item;
use crate::items::Kind;
use crate::items::Role;
use crate::items::Verdict;
use crate::judge::Judged;
use crate::quantities::LengthUnit;
use crate::reading::Value;
use crate::reading::parse;
use crate::reading::print;
use crate::survey::codes;
use crate::walk::GuardName;
use crate::walk::Reply;
use crate::walk::Walk;
use crate::walk::next_question::holes;
use crate::walk::page::Page;
use crate::walk::page::PageEntry;
use crate::walk::page::PageSpot;
use crate::walk::pending::How;
use crate::walk::pending::Pending;
use crate::walk::pending::Why;
use crate::walk::question::ball_reading;
use crate::walk::view::View;
use crate::walk::walk::Focus;
use crate::walk::walk::WrittenAnswer;
use crate::walk::walk::by_hand;
use crate::walk::words::Meant;
use crate::walk::words::word_of;
use crate::walk::words::yes_or_no;

type Told<'r> = Vec<Reply<'r>>;

/// Why it cannot be written: what was found, and what to write.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct AnswerRefusal(String, Option<String>);

impl AnswerRefusal {
    fn said<'r>(self) -> Reply<'r> {
        Reply::Refused(self.0, self.1)
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
        if item.info().hole != Hole::No && yes_or_no(text).is_some() {
            // `n` would be read as `none`: a hole that is closed
            let help = "write none if there is no such opening, else what the tape reads";
            let message = format!("{text} may mean two things for {item}");
            said.push(Reply::Refused(message, Some(help.to_owned())));
            return;
        }
        let (text, note) = with_reason(text);
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

    /// A ball's answer; anything but yes and no is read as a reading.
    pub(super) fn read_ball(&mut self, item: Item, size: &str, text: &str, said: &mut Told<'r>) {
        let stops = match text.trim().to_lowercase().as_str() {
            "stops" | "stop" | "it stops" => Some(true),
            "passes" | "pass" | "it passes" => Some(false),
            other => yes_or_no(other),
        };
        let Some(stops) = stops else {
            self.read(item, text, How::Add, said);
            return;
        };
        let Some((guard, _)) = &self.guard else {
            return;
        };
        let reading = ball_reading(item, size, stops, by_hand(guard), holes(guard));
        self.read(item, &reading, How::Add, said);
    }

    /// The reading that is meant: words by their first letters.
    fn meant(&self, item: Item, text: &str) -> Result<String, AnswerRefusal> {
        if text.eq_ignore_ascii_case("nr") {
            return Ok("not reached".to_owned());
        }
        if matches!(item.info().kind, Kind::Words(_)) {
            match word_of(item, text) {
                Meant::Nothing => {}
                Meant::One(word) => return Ok(word.to_owned()),
                Meant::Several(words) => {
                    let message = format!("{text} may be {}", words.join(" or "));
                    let help = Some("type a letter more".to_owned());
                    return Err(AnswerRefusal(message, help));
                }
            }
        }
        Ok(text.to_owned())
    }

    /// Writes an answer, unless something must be asked about it first.
    pub(super) fn write_or_ask(&mut self, mut pending: Pending, said: &mut Told<'r>) {
        let item = pending.item;
        let known = parse(item, &pending.reading, None);
        let lacks_unit = known.is_err()
            && item.info().kind.holds_a_length()
            && parse(item, &pending.reading, Some(LengthUnit::Inch)).is_ok();
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
        if let Some(word) = self.another_word(&pending) {
            self.focus = Focus::Pending(pending, Why::Slip(word));
            return;
        }
        match self.page_with(&pending) {
            Ok((entry, page, view)) => {
                let cautions = view.new_faults(&self.view, Severity::Warning);
                let caution = cautions.iter().find(|fault| fault.code == codes::CAUTION);
                if let (Some(caution), false) = (caution, pending.confirmed) {
                    let caution = format!("{}.", caution.message);
                    self.focus = Focus::Pending(pending, Why::Unlikely(caution));
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
            Err(_) if lacks_unit && self.unit.is_none() => {
                self.focus = Focus::Pending(pending, Why::Unit);
            }
            Err(refused) => said.push(refused.said()),
        }
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
        let refused = |message: String| AnswerRefusal(message, None);
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
            Some(fault) => Err(AnswerRefusal(fault.message.clone(), fault.help.clone())),
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
                    *self.followed.entry((here.compared(), item)).or_default() += 1;
                }
                page.line_written(self.table_row(&entry.place))
            }
            How::Replace(spot, _) => spot.line,
        };
        self.page = page;
        self.view = view;
        let written = WrittenAnswer {
            place: entry.place.clone(),
            item,
            spot: PageSpot {
                line,
                written: entry.reading.clone(),
            },
        };
        self.history
            .retain(|old| old.spot.line != line || old.item != item);
        self.history.push(written);
        if self.facts.first() == Some(&item) {
            self.facts.remove(0);
        }
        if let Some(here) = &self.here {
            self.skipped.remove(&(here.compared(), item));
        }
        self.focus = Focus::Next;
        let before = self.guard.take();
        self.judge_anew();
        said.push(Reply::Understood {
            item,
            meant: meant(item, &entry.reading, self.unit_of(item, &entry.reading)),
            reading: entry.reading,
            note: entry.note,
            place: entry.place,
        });
        said.extend(self.settled(before.as_ref().map(|(_, judged)| judged)));
    }

    /// The unit that was understood, where the reading names none.
    fn unit_of(&self, item: Item, reading: &str) -> Option<LengthUnit> {
        let (guard, _) = self.guard.as_ref()?;
        let mut own = guard
            .observations
            .iter()
            .filter(|o| o.item == item && &*o.written == reading);
        let value = &own.next_back()?.reading.as_ref()?.value;
        value.tape().map(|(unit, _)| unit)
    }

    /// What is decided now and was not before.
    fn settled(&self, before: Option<&Judged<'r>>) -> Option<Reply<'r>> {
        let (guard, judged) = self.guard.as_ref()?;
        let known = |index: usize| {
            let finding = &judged.findings[index];
            before.is_some_and(|before| {
                before.findings.iter().any(|old| {
                    std::ptr::eq(old.rule, finding.rule)
                        && old.item == finding.item
                        && old.verdict == finding.verdict
                        && old.margin == finding.margin
                })
            })
        };
        let decided = |verdict: Verdict| {
            matches!(
                verdict,
                Verdict::FallsShort | Verdict::Meets | Verdict::NotSettled | Verdict::TooClose
            )
        };
        let new: Vec<usize> = (0..judged.findings.len())
            .filter(|index| decided(judged.findings[*index].verdict) && !known(*index))
            .collect();
        (!new.is_empty()).then(|| Reply::Settled(Box::new((guard.clone(), judged.clone(), new))))
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

fn unit_named(name: &str) -> Option<LengthUnit> {
    let all = [
        LengthUnit::Inch,
        LengthUnit::Foot,
        LengthUnit::Millimetre,
        LengthUnit::Centimetre,
        LengthUnit::Metre,
    ];
    all.into_iter().find(|unit| unit.symbol() == name)
}

/// What was understood, where it is not what stands there.
fn meant(item: Item, written: &str, unit: Option<LengthUnit>) -> Option<String> {
    let parsed = parse(item, written, unit).ok()?;
    let printed: Vec<String> = parsed.readings.iter().map(print).collect();
    let printed = printed.join("; ");
    (printed != written).then_some(printed)
}

fn fault_as_remark<'r>(fault: &Diagnostic) -> Reply<'r> {
    Reply::Remark(format!("{}.", fault.message.trim_end_matches('.')))
}

/// `not reached, no ladder`: the words, and the reason.
fn with_reason(text: &str) -> (String, String) {
    for word in ["not reached", "nr", "unknown"] {
        let rest = text
            .get(..word.len())
            .filter(|start| start.eq_ignore_ascii_case(word));
        let rest = rest.and_then(|_| text.get(word.len()..));
        if let Some(reason) = rest.and_then(|rest| rest.strip_prefix([',', ':', ';'])) {
            let word = if word == "nr" { "not reached" } else { word };
            return (word.to_owned(), reason.trim().to_owned());
        }
    }
    (text.to_owned(), String::new())
}
