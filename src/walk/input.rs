//! What a person types, answer or command, and where it leads.

use crate::items::Item;
use crate::quantities::LengthUnit;
use crate::walk::AnswerTopic;
use crate::walk::GuardName;
use crate::walk::GuardTopic;
use crate::walk::Reply;
use crate::walk::Topic;
use crate::walk::Walk;
use crate::walk::command::command;
use crate::walk::command::command_nearly_meant;
use crate::walk::pending::How;
use crate::walk::pending::Pending;
use crate::walk::pending::Why;
use crate::walk::question::Asking;
use crate::walk::unit::unit_named;
use crate::walk::unit::without_unit;
use crate::walk::walk::Focus;
use crate::walk::words::yes_or_no;

/// Longer answers are cut: no reading and no name is as long. (common practice, no source)
const LONGEST: usize = 400;

impl<'r> Walk<'r> {
    /// Takes what was typed. What is to be saved is in [`Walk::text`] afterwards.
    pub fn answer(&mut self, typed: &str) -> Vec<Reply<'r>> {
        let shown = typed.chars().map(|c| if c.is_control() { ' ' } else { c });
        let text: String = shown.take(LONGEST).collect();
        let text = text.trim();
        let mut said = Vec::new();
        match command(text) {
            Some(wish) => self.run_command(wish, &mut said),
            None => self.reply(text, &mut said),
        }
        if let (Some(Reply::Refused(_, help)), Some(right)) =
            (said.last_mut(), command_nearly_meant(text))
        {
            let before = help
                .take()
                .map_or_else(String::new, |help| format!("{help}; "));
            *help = Some(format!("{before}type {right} if that was meant"));
        }
        self.refresh();
        self.leave_if_done(&mut said);
        said
    }

    fn reply(&mut self, text: &str, said: &mut Vec<Reply<'r>>) {
        let topic = self.step().topic;
        if let Some((item, reading)) = self.out_of_turn(&topic, text) {
            self.answer_out_of_turn(item, &reading, said);
            return;
        }
        match (self.focus.clone(), topic) {
            (Focus::Pending(pending, why), _) => {
                self.answer_about_pending(pending, &why, text, said);
            }
            (Focus::Item(..) | Focus::Redo(_), _) if text.is_empty() => self.focus = Focus::Next,
            (Focus::Item(item, how), _) => self.read(item, text, how, said),
            (Focus::Place(item, spot), _) => self.answer_place(item, &spot, text, said),
            (_, Topic::Answer(AnswerTopic::UnitOf(_))) => self.answer_about_bare(text, said),
            (_, Topic::Fact(_)) if text.is_empty() => {
                self.facts.remove(0);
            }
            (_, Topic::Fact(Item::By)) => self.by_and_where(text, said),
            (_, Topic::Fact(item)) => self.read(item, text, How::Add, said),
            (_, Topic::Name) => self.name(text, said),
            (Focus::Next, Topic::Guard(topic)) if text.is_empty() => self.pass(&topic, said),
            (_, Topic::Guard(topic)) => {
                let tape = matches!(topic, GuardTopic::Ball(..) | GuardTopic::Balls(_));
                if tape && ["tape", "the tape"].contains(&text) {
                    self.pass(&topic, said);
                } else {
                    self.answer_about_guard(&topic, text, said);
                }
            }
            (_, Topic::Answer(_) | Topic::Finished | Topic::Rules(_)) => {}
        }
    }

    /// `height: 35 in` whatever is asked, and facts of the survey such as its date.
    fn answer_out_of_turn(&mut self, item: Item, reading: &str, said: &mut Vec<Reply<'r>>) {
        if item == Item::DefaultUnit {
            self.choose_default_unit(reading, said);
            return;
        }
        if item.is_survey_fact() {
            let how = match self.page.fact(item) {
                Some(spot) => How::Replace(spot, GuardName::default()),
                None => How::Add,
            };
            self.focus = Focus::Next;
            self.read(item, reading, how, said);
            return;
        }
        self.return_to_last_guard();
        let how = self.how_for(item);
        self.focus = Focus::Next;
        self.read(item, reading, how, said);
    }

    pub(super) fn choose_default_unit(&mut self, name: &str, said: &mut Vec<Reply<'r>>) {
        match unit_named(name) {
            Some(unit) => {
                self.focus = Focus::Next;
                self.mend_unit(unit, said);
            }
            None => said.push(Reply::Refused(
                format!("{name} is no unit of length"),
                Some("write in, ft, mm, cm or m".to_owned()),
            )),
        }
    }

    /// `R. T., yellow house`: who measured, and the property.
    fn by_and_where(&mut self, text: &str, said: &mut Vec<Reply<'r>>) {
        let (by, place) = match text.split_once(',') {
            Some((by, place)) => (by.trim(), place.trim()),
            None => (text, ""),
        };
        if !by.is_empty() {
            self.read(Item::By, by, How::Add, said);
        }
        if !place.is_empty() && self.page.fact(Item::Property).is_none() {
            self.focus = Focus::Next;
            self.read(Item::Property, place, How::Add, said);
        }
        self.facts.retain(|fact| *fact != Item::By);
    }

    pub(super) fn answer_item(&mut self, item: Item, text: &str, said: &mut Vec<Reply<'r>>) {
        if self.begins_strength(item) {
            self.passed
                .strength
                .extend(self.here.as_ref().map(GuardName::compared));
        }
        let how = self.how_for(item);
        self.read(item, text, how, said);
    }

    /// Enter alone: not to be asked again here; nor what follows, where this was the
    /// first of what only strength wants to know. What was seen and not measured is said.
    pub(super) fn pass(&mut self, topic: &GuardTopic, said: &mut Vec<Reply<'r>>) {
        let Some(here) = &self.here else {
            return;
        };
        let place = here.compared();
        let mut over = vec![topic.asking()];
        if let GuardTopic::Item(item) = topic {
            if self.passed.seen.remove(&(place.clone(), *item)) {
                let reading = if *item == Item::ThingToClimb {
                    "yes"
                } else {
                    "not reached, seen and not measured"
                };
                self.read(*item, reading, How::Add, said);
                return;
            }
            if self.begins_strength(*item) {
                over.extend(Item::LOAD_PATH.iter().map(|item| Asking::Item(*item)));
            }
        }
        let over = over.into_iter().map(|asking| (place.clone(), asking));
        self.passed.over.extend(over);
    }

    /// `height: 35 in` while something else is asked.
    fn out_of_turn(&self, topic: &Topic, text: &str) -> Option<(Item, String)> {
        if matches!(
            topic,
            Topic::Answer(AnswerTopic::Place(_) | AnswerTopic::Reason(_))
        ) {
            return None;
        }
        let (name, reading) = text.split_once(':')?;
        let item = Item::by_name(name)?;
        // between two guards a name may hold a colon
        let plain = name.trim().eq_ignore_ascii_case(item.name());
        if *topic == Topic::Name && !plain {
            return None;
        }
        let reading = reading.trim();
        if reading.is_empty() || item == Item::Rules {
            return None;
        }
        if !item.is_survey_fact() {
            self.here.as_ref().or(self.last.as_ref())?;
            if self.here.is_none() && matches!(topic, Topic::Fact(_)) {
                return None;
            }
        }
        Some((item, reading.to_owned()))
    }

    /// An answer to a question about an answer.
    fn answer_about_pending(
        &mut self,
        pending: Pending,
        why: &Why,
        text: &str,
        said: &mut Vec<Reply<'r>>,
    ) {
        let item = pending.item;
        let agreed = Pending {
            confirmed: true,
            ..pending.clone()
        };
        match (why, yes_or_no(text)) {
            (Why::Age(_), _) => self.choose_age(&pending, why, text, said),
            (Why::Reason, _) => {
                let note = text.to_owned();
                self.focus = Focus::Next;
                self.write_or_ask(Pending { note, ..agreed }, said);
            }
            (Why::Unit, _) if text.is_empty() => self.ask_again(&pending),
            (Why::Unit, _) => self.choose_unit(pending, text, said),
            (Why::Unlikely(..) | Why::Slip(_), Some(true)) => {
                self.focus = Focus::Next;
                self.write_or_ask(agreed, said);
            }
            (Why::Slip(_), Some(false)) => {
                self.here = None;
                self.guard = None;
                self.focus = Focus::Next;
                let text =
                    format!("A new railing starts there: name it, and answer {item} for it.");
                said.push(Reply::Remark(text));
            }
            (Why::Slip(_), None) => self.focus = Focus::Next,
            (Why::Unlikely(..), Some(false)) => self.ask_again(&pending),
            (Why::Unlikely(..), None) if text.is_empty() => self.ask_again(&pending),
            (Why::Unlikely(_, likely), None) => {
                match unit_named(text).filter(|unit| likely.contains(unit)) {
                    Some(unit) => self.take_in_unit(pending, unit, said),
                    None => {
                        self.focus = Focus::Next;
                        self.read(item, text, pending.how, said);
                    }
                }
            }
        }
    }

    /// An answer whose unit was a slip: where it had none of its own, the unit of all
    /// numbers alone is mended.
    fn take_in_unit(&mut self, pending: Pending, unit: LengthUnit, said: &mut Vec<Reply<'r>>) {
        let alone = without_unit(&pending.reading) == pending.reading;
        self.focus = Focus::Next;
        if alone && self.unit_in_force().is_some() {
            self.mend_unit(unit, said);
        }
        let reading = format!("{} {}", without_unit(&pending.reading), unit.symbol());
        let pending = Pending { reading, ..pending };
        self.write_or_ask(pending, said);
    }

    /// Months or years.
    fn choose_age(&mut self, pending: &Pending, why: &Why, text: &str, said: &mut Vec<Reply<'r>>) {
        let Why::Age(usual) = why else {
            return;
        };
        let unit = match (text.to_lowercase().as_str(), usual) {
            ("", Some(usual)) => usual,
            ("", None) => {
                self.ask_again(pending);
                return;
            }
            (text, _) if "months".starts_with(text) => "months",
            (text, _) if "years".starts_with(text) => "years",
            (_, _) => {
                self.focus = Focus::Next;
                self.read(pending.item, text, pending.how.clone(), said);
                return;
            }
        };
        self.focus = Focus::Next;
        let reading = format!("{} {unit}", pending.reading);
        self.read(pending.item, &reading, pending.how.clone(), said);
    }

    /// The question that an answer was given to, once more.
    fn ask_again(&mut self, pending: &Pending) {
        let next = self.next.as_ref().and_then(GuardTopic::item);
        let asked = self.facts.first() == Some(&pending.item) || next == Some(pending.item);
        self.focus = if asked && pending.how == How::Add {
            Focus::Next
        } else {
            Focus::Item(pending.item, pending.how.clone())
        };
    }
}
