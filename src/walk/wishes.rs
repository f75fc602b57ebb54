//! What a person wishes instead of answering: back, another reading, a note, the list.

use crate::items::Item;
use crate::items::Role;
use crate::survey::Observation;
use crate::walk::AnswerTopic;
use crate::walk::GuardName;
use crate::walk::GuardTopic;
use crate::walk::Reply;
use crate::walk::Topic;
use crate::walk::Walk;
use crate::walk::command::WalkCommand;
use crate::walk::page::PageEntry;
use crate::walk::page::PageSpot;
use crate::walk::pending::How;
use crate::walk::question::Asking;
use crate::walk::view::View;
use crate::walk::walk::Ending;
use crate::walk::walk::Focus;
use crate::walk::words::item_of;

impl<'r> Walk<'r> {
    pub(super) fn run_command(&mut self, wish: WalkCommand, said: &mut Vec<Reply<'r>>) {
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
            (Focus::Next, Topic::Answer(AnswerTopic::UnitOf(_))) => {
                self.bare.remove(0);
            }
            (Focus::Next, Topic::Name) => {
                said.push(Reply::Remark("Type finish to stop here.".to_owned()));
            }
            (Focus::Next, Topic::Guard(topic)) => {
                self.pass(&topic, said);
                // skipped is skipped: the tape is not asked for instead
                let item = topic.item().map(Asking::Item);
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
    pub(super) fn return_to_last_guard(&mut self) -> bool {
        match (&self.here, self.last.clone()) {
            (Some(_), _) => true,
            (None, Some(last)) => {
                self.go_to(last);
                true
            }
            (None, None) => false,
        }
    }

    /// `another opening`, or with its reading: `another height: 34 in`.
    fn another(&mut self, text: &str, said: &mut Vec<Reply<'r>>) {
        let (name, reading) = match text.split_once(':') {
            Some((name, reading)) => (name.trim(), reading.trim()),
            None => (text, ""),
        };
        let Some(item) = item_named(name, said) else {
            return;
        };
        let alone = item.info().role == Role::Single || item.is_survey_fact();
        if alone {
            let text = format!("{item} has one answer; correct {item} changes it.");
            said.push(Reply::Remark(text));
        } else if self.return_to_last_guard() {
            self.focus = Focus::Item(item, How::Add);
            if !reading.is_empty() {
                self.read(item, reading, How::Add, said);
            }
        } else {
            said.push(Reply::Remark("Name the guard first.".to_owned()));
        }
    }

    fn back(&mut self, said: &mut Vec<Reply<'r>>) {
        // what is only being asked about is let go; what is asked once more leads further back
        if matches!(
            self.focus,
            Focus::Pending(..) | Focus::Place(..) | Focus::Item(_, How::Add)
        ) {
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
            (Topic::Guard(GuardTopic::Item(_)) | Topic::Fact(_), [(item, spot)]) => {
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
