//! What a person types, answer or command, and where it leads.

use crate::items::Item;
use crate::items::Role;
use crate::quantities::LengthUnit;
use crate::survey::Observation;
use crate::walk::GuardName;
use crate::walk::Reply;
use crate::walk::Topic;
use crate::walk::Walk;
use crate::walk::command::WalkCommand;
use crate::walk::command::command;
use crate::walk::command::command_nearly_meant;
use crate::walk::page::PageEntry;
use crate::walk::page::PageSpot;
use crate::walk::pending::How;
use crate::walk::pending::Pending;
use crate::walk::pending::Why;
use crate::walk::plan::Asking;
use crate::walk::unit::unit_named;
use crate::walk::unit::without_unit;
use crate::walk::view::View;
use crate::walk::walk::Ending;
use crate::walk::walk::Focus;
use crate::walk::words::item_of;
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
            (_, Topic::UnitOf(_)) => self.answer_about_bare(text, said),
            (_, Topic::Fact(_)) if text.is_empty() => {
                self.facts.remove(0);
            }
            (_, Topic::Fact(Item::By)) => self.by_and_where(text, said),
            (_, Topic::Fact(item)) => self.read(item, text, How::Add, said),
            (_, Topic::Name) => self.name(text, said),
            (Focus::Next, topic) if text.is_empty() => self.pass(&topic, said),
            (_, Topic::Item(item)) => self.answer_item(item, text, said),
            (
                _,
                topic @ (Topic::Ball(..)
                | Topic::Balls(_)
                | Topic::ByEye
                | Topic::Climb
                | Topic::Closed
                | Topic::Drop(_)
                | Topic::Look
                | Topic::Stick(..)
                | Topic::Touch),
            ) => {
                let tape = matches!(topic, Topic::Ball(..) | Topic::Balls(_));
                if tape && ["tape", "the tape"].contains(&text) {
                    self.pass(&topic, said);
                } else {
                    self.answer_together(&topic, text, said);
                }
            }
            (
                _,
                Topic::Age
                | Topic::Finished
                | Topic::Reason(_)
                | Topic::Rules(_)
                | Topic::Slip(_)
                | Topic::Unit(_)
                | Topic::Unlikely(_),
            ) => {}
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

    fn choose_default_unit(&mut self, name: &str, said: &mut Vec<Reply<'r>>) {
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

    fn answer_item(&mut self, item: Item, text: &str, said: &mut Vec<Reply<'r>>) {
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
    fn pass(&mut self, topic: &Topic, said: &mut Vec<Reply<'r>>) {
        let (Some(here), Some(asking)) = (&self.here, Asking::of(topic)) else {
            return;
        };
        let place = here.compared();
        let mut over = vec![asking];
        if let Topic::Item(item) = topic {
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
        if matches!(topic, Topic::Reason(_)) {
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
            if matches!(topic, Topic::Fact(_)) {
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
        let asked = self.facts.first() == Some(&pending.item)
            || self
                .next
                .as_ref()
                .is_some_and(|topic| item_of_topic(topic) == Some(pending.item));
        self.focus = if asked && pending.how == How::Add {
            Focus::Next
        } else {
            Focus::Item(pending.item, pending.how.clone())
        };
    }

    fn run_command(&mut self, wish: WalkCommand, said: &mut Vec<Reply<'r>>) {
        match wish {
            WalkCommand::Again => self.explain_again(said),
            WalkCommand::Another(name) => self.another(&name, said),
            WalkCommand::Back => self.back(said),
            WalkCommand::Correct(name) => self.correct_item(&name, said),
            WalkCommand::Finish => self.focus = Focus::Finished,
            WalkCommand::Help => said.push(Reply::Help),
            WalkCommand::List => said.push(self.listing()),
            WalkCommand::More => said.push(Reply::More),
            WalkCommand::NextGuard => self.next_guard(said),
            WalkCommand::NoGuard => self.no_guard(said),
            WalkCommand::Note(note) => self.note(&note, said),
            WalkCommand::Skip => self.skip(said),
            WalkCommand::Unit(name) => self.choose_default_unit(&name, said),
        }
    }

    fn skip(&mut self, said: &mut Vec<Reply<'r>>) {
        let topic = self.step().topic;
        match (&self.focus, topic) {
            (Focus::Next, Topic::Fact(_)) => {
                self.facts.remove(0);
            }
            (Focus::Next, Topic::UnitOf(_)) => {
                self.bare.remove(0);
            }
            (Focus::Next, Topic::Name) => {
                said.push(Reply::Remark("Type finish to stop here.".to_owned()));
            }
            (Focus::Next, topic) => {
                self.pass(&topic, said);
                // skipped is skipped: the tape is not asked for instead
                let item = item_of_topic(&topic).map(Asking::Item);
                let here = self.here.as_ref().map(GuardName::compared);
                self.passed.over.extend(here.zip(item));
            }
            (_, _) => self.focus = Focus::Next,
        }
    }

    fn explain_again(&mut self, said: &mut Vec<Reply<'r>>) {
        let Some(place) = self.here.clone().or_else(|| self.last.clone()) else {
            return;
        };
        let compared = place.compared();
        self.passed.over.retain(|(other, _)| *other != compared);
        self.passed.followed.retain(|(other, _)| *other != compared);
        self.passed.strength.remove(&compared);
        self.facts.clear();
        self.go_to(place);
        self.refresh();
        let danger = self
            .guard
            .as_ref()
            .map(|(_, judged)| judged.dangers.clone());
        match danger {
            Some(dangers) if !dangers.is_empty() => {
                said.extend(self.here.clone().map(|place| Reply::Stop(place, dangers)))
            }
            Some(_) | None if self.next.is_none() => {
                said.push(Reply::Remark("Nothing was skipped.".to_owned()));
            }
            Some(_) | None => {}
        }
    }

    /// The guard of a command that is typed between two guards: the last one.
    fn return_to_last_guard(&mut self) -> bool {
        match (&self.here, self.last.clone()) {
            (Some(_), _) => true,
            (None, Some(last)) => {
                self.go_to(last);
                true
            }
            (None, None) => false,
        }
    }

    fn another(&mut self, name: &str, said: &mut Vec<Reply<'r>>) {
        let Some(item) = item_named(name, said) else {
            return;
        };
        let alone = item.info().role == Role::Single || item.is_survey_fact();
        if alone {
            let text = format!("{item} has one answer; correct {item} changes it.");
            said.push(Reply::Remark(text));
        } else if self.return_to_last_guard() {
            self.focus = Focus::Item(item, How::Add);
        } else {
            said.push(Reply::Remark("Name the guard first.".to_owned()));
        }
    }

    fn back(&mut self, said: &mut Vec<Reply<'r>>) {
        // what is only being asked about is let go; what is asked once more leads further back
        if matches!(self.focus, Focus::Pending(..) | Focus::Item(_, How::Add)) {
            self.focus = Focus::Next;
            return;
        }
        let Some(last) = self.history.pop() else {
            let text = "Nothing was answered yet that one could go back to.";
            said.push(Reply::Remark(text.to_owned()));
            return;
        };
        if !last.place.guard.is_empty() && self.here.as_ref() != Some(&last.place) {
            self.go_to(last.place.clone());
        }
        self.ending = Ending::NotYet;
        self.focus = match (&last.topic, last.rows.as_slice()) {
            (Topic::Item(_) | Topic::Fact(_), [(item, spot)]) => {
                Focus::Item(*item, How::Replace(spot.clone(), last.place.clone()))
            }
            (_, _) => Focus::Redo(last),
        };
    }

    /// `correct height`; of several readings the last one, or `correct opening 1`.
    fn correct_item(&mut self, name: &str, said: &mut Vec<Reply<'r>>) {
        let (name, number) = match name.rsplit_once(' ') {
            Some((before, digits)) => match digits.parse::<usize>() {
                Ok(number) => (before, Some(number)),
                Err(_) => (name, None),
            },
            None => (name, None),
        };
        let Some(item) = item_named(name, said) else {
            return;
        };
        if item.is_survey_fact() {
            self.focus = match self.page.fact(item) {
                Some(spot) => Focus::Item(item, How::Replace(spot, GuardName::default())),
                None => Focus::Item(item, How::Add),
            };
            return;
        }
        if !self.return_to_last_guard() {
            said.push(Reply::Remark("Name the guard first.".to_owned()));
            return;
        }
        self.focus = Focus::Item(item, self.replacing(item, number));
    }

    /// In the place of which reading a new one comes.
    fn replacing(&self, item: Item, number: Option<usize>) -> How {
        let (Some((guard, _)), Some(here)) = (&self.guard, &self.here) else {
            return How::Add;
        };
        let spot = |o: &Observation| PageSpot {
            line: o.row.line,
            written: o.written.to_string(),
        };
        let own: Vec<_> = guard
            .observations
            .iter()
            .filter(|o| o.item == item)
            .collect();
        let chosen = number.and_then(|number| own.get(number.wrapping_sub(1)));
        if let Some(old) = chosen.or(own.last()) {
            return How::Replace(spot(old), here.clone());
        }
        // what holds for the survey as a whole is changed there while this is its only guard
        let inherited = guard.of(item).last().map(|(_, o)| spot(o));
        match inherited {
            Some(spot) if self.view.guards.len() < 2 => How::Replace(spot, GuardName::default()),
            Some(_) | None => How::Add,
        }
    }

    fn next_guard(&mut self, said: &mut Vec<Reply<'r>>) {
        self.facts.clear();
        self.bare.clear();
        self.focus = Focus::Next;
        self.leave(said);
    }

    fn no_guard(&mut self, said: &mut Vec<Reply<'r>>) {
        if self.here.is_some() {
            let how = self.how_for(Item::Guard);
            self.focus = Focus::Next;
            self.read(Item::Guard, "none", how, said);
        } else {
            said.push(Reply::Remark("Name the place first.".to_owned()));
        }
    }

    fn note(&mut self, note: &str, said: &mut Vec<Reply<'r>>) {
        let last = self.history.last();
        let beside = last.and_then(|last| {
            let (item, spot) = last.rows.first()?;
            Some((last.place.clone(), *item, spot.clone()))
        });
        let Some((place, item, spot)) = beside else {
            said.push(Reply::Remark("A note stands beside an answer.".to_owned()));
            return;
        };
        let entry = PageEntry {
            place,
            item,
            reading: spot.written,
            note: note.to_owned(),
        };
        match self.page.noted(spot.line, &entry) {
            Ok(page) => {
                self.page = page;
                self.view = View::of(&self.page);
                self.judge_anew();
                said.push(Reply::Remark(format!("Note at {item}: {note}")));
            }
            Err(error) => said.push(Reply::Refused(error.to_string(), None)),
        }
    }

    fn listing(&self) -> Reply<'r> {
        let Some((guard, _)) = &self.guard else {
            let guards = self.view.guards.iter().map(|guard| {
                let open = self.view.judge(guard, self.rulesets, self.settings.options);
                let open: Vec<&str> = open.questions().iter().map(|q| q.item.name()).collect();
                let open = match open.as_slice() {
                    [] => "nothing is missing".to_owned(),
                    open => format!("open: {}", open.join(", ")),
                };
                (GuardName::of(guard).says(), open)
            });
            return Reply::Listing(guards.collect());
        };
        let mut lines: Vec<(String, String)> = Vec::new();
        let all = guard
            .observations
            .iter()
            .chain(&guard.inherited.observations);
        for o in all {
            let note = if o.note.is_empty() {
                String::new()
            } else {
                format!(" ({})", o.note)
            };
            lines.push((o.item.name().to_owned(), format!("{}{note}", o.written)));
        }
        let here = self.here.as_ref().map(GuardName::compared);
        let questions = self.guard.iter().flat_map(|(_, judged)| judged.questions());
        let missed: Vec<Item> = questions.map(|question| question.item).collect();
        for (place, asking) in &self.passed.over {
            if let Asking::Item(item) = asking
                && Some(place) == here.as_ref()
                && missed.contains(item)
            {
                lines.push((item.name().to_owned(), "skipped".to_owned()));
            }
        }
        Reply::Listing(lines)
    }
}

/// The item that a question about a guard is put for.
fn item_of_topic(topic: &Topic) -> Option<Item> {
    match topic {
        Topic::Ball(item, _) | Topic::Item(item) | Topic::Stick(item, _) => Some(*item),
        Topic::Balls(_) => Some(Item::Opening),
        Topic::Drop(_) => Some(Item::Drop),
        Topic::Age
        | Topic::ByEye
        | Topic::Climb
        | Topic::Closed
        | Topic::Fact(_)
        | Topic::Finished
        | Topic::Look
        | Topic::Name
        | Topic::Reason(_)
        | Topic::Rules(_)
        | Topic::Slip(_)
        | Topic::Touch
        | Topic::Unit(_)
        | Topic::UnitOf(_)
        | Topic::Unlikely(_) => None,
    }
}

/// The item of a name, or what to say of it.
fn item_named(name: &str, said: &mut Vec<Reply<'_>>) -> Option<Item> {
    match item_of(name) {
        Ok(item) => Some(item),
        Err(several) => {
            let (message, help) = if several.is_empty() {
                (
                    format!("{name} is no item"),
                    "guardrule items shows what there is".to_owned(),
                )
            } else {
                (
                    format!("{name} may be {}", several.join(" or ")),
                    "write a letter more".to_owned(),
                )
            };
            said.push(Reply::Refused(message, Some(help)));
            None
        }
    }
}
