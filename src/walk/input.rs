//! What a person types, answer or command, and where it leads.

use crate::input::Severity;
use crate::items::Holds;
use crate::items::Item;
use crate::items::Kind;
use crate::items::Role;
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
use crate::walk::view::View;
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
        self.leave_if_done(&mut said);
        said
    }

    fn reply(&mut self, text: &str, said: &mut Vec<Reply<'r>>) {
        let topic = self.step().topic;
        if let Some((item, reading)) = self.out_of_turn(&topic, text) {
            self.return_to_last_guard();
            let how = self.how_for(item);
            self.focus = Focus::Next;
            self.read(item, &reading, how, said);
            return;
        }
        match (self.focus.clone(), topic) {
            (Focus::Pending(pending, why), _) => {
                self.answer_about_pending(pending, &why, text, said)
            }
            (Focus::Item(..), _) if text.is_empty() => self.focus = Focus::Next,
            (Focus::Item(item, how), _) => self.read(item, text, how, said),
            (_, Topic::Fact(Item::Date)) if text.is_empty() && self.settings.today.is_some() => {
                let today = self.settings.today.clone().unwrap_or_default();
                self.read(Item::Date, &today, How::Add, said);
            }
            (_, Topic::Fact(_)) if text.is_empty() => {
                self.facts.remove(0);
            }
            (_, Topic::Fact(item)) => self.read(item, text, How::Add, said),
            (_, Topic::Name) => self.name(text, said),
            (_, Topic::Ball(item, _)) if text.is_empty() || text == "tape" => {
                self.no_ball.extend(self.key(item));
            }
            (_, Topic::Ball(item, size)) => self.read_ball(item, &size, text, said),
            (_, Topic::Item(item)) if text.is_empty() => self.pass_over(item),
            (_, Topic::Item(item)) => {
                if self.begins_strength(item) {
                    self.strength
                        .extend(self.here.as_ref().map(GuardName::compared));
                }
                let how = self.how_for(item);
                self.read(item, text, how, said);
            }
            (
                _,
                Topic::Finished
                | Topic::Reason(_)
                | Topic::Slip(_)
                | Topic::Unit(_)
                | Topic::Unlikely(_),
            ) => {}
        }
    }

    /// Not to be asked again here; nor what follows, where this was the first of
    /// what only strength wants to know.
    fn pass_over(&mut self, item: Item) {
        if self.begins_strength(item) {
            let all = Item::LOAD_PATH.iter().filter_map(|item| self.key(*item));
            let all: Vec<(GuardName, Item)> = all.collect();
            self.skipped.extend(all);
        } else {
            self.skipped.extend(self.key(item));
        }
    }

    fn key(&self, item: Item) -> Option<(GuardName, Item)> {
        self.here.as_ref().map(|here| (here.compared(), item))
    }

    /// `height: 35 in` while something else is asked.
    fn out_of_turn(&self, topic: &Topic, text: &str) -> Option<(Item, String)> {
        self.here.as_ref().or(self.last.as_ref())?;
        if matches!(topic, Topic::Fact(_) | Topic::Reason(_)) {
            return None;
        }
        let (name, reading) = text.split_once(':')?;
        let item = Item::by_name(name)?;
        // between two guards a name may hold a colon
        if *topic == Topic::Name && !name.eq_ignore_ascii_case(item.name()) {
            return None;
        }
        let reading = reading.trim();
        (!reading.is_empty() && !item.is_survey_fact()).then(|| (item, reading.to_owned()))
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
            (Why::Reason, _) => {
                let note = text.to_owned();
                self.focus = Focus::Next;
                self.write_or_ask(Pending { note, ..agreed }, said);
            }
            (Why::Unit, _) if text.is_empty() => self.ask_again(&pending),
            (Why::Unit, _) => self.choose_unit(pending, text, said),
            (Why::Unlikely(_) | Why::Slip(_), Some(true)) => {
                self.focus = Focus::Next;
                self.write_or_ask(agreed, said);
            }
            (Why::Slip(_), Some(false)) => {
                self.here = None;
                self.guard = None;
                self.focus = Focus::Next;
                let text = format!("A new guard starts there: name it, and answer {item} for it.");
                said.push(Reply::Remark(text));
            }
            (Why::Slip(_), None) => self.focus = Focus::Next,
            (Why::Unlikely(_), Some(false)) => self.ask_again(&pending),
            (Why::Unlikely(_), None) if text.is_empty() => self.ask_again(&pending),
            (Why::Unlikely(_), None) => {
                self.focus = Focus::Next;
                self.read(item, text, pending.how, said);
            }
        }
    }

    /// The question that an answer was given to, once more.
    fn ask_again(&mut self, pending: &Pending) {
        let asked = self.facts.first() == Some(&pending.item)
            || self
                .next_item()
                .is_some_and(|(item, _)| item == pending.item);
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
            WalkCommand::Correct(name) => self.correct(&name, said),
            WalkCommand::Finish => self.focus = Focus::Finished,
            WalkCommand::Help => said.push(Reply::Help),
            WalkCommand::List => said.push(self.listing()),
            WalkCommand::More => said.push(Reply::More),
            WalkCommand::NextGuard => self.next_guard(said),
            WalkCommand::NoGuard => self.no_guard(said),
            WalkCommand::Note(note) => self.note(&note, said),
            WalkCommand::Skip => self.skip(said),
        }
    }

    fn skip(&mut self, said: &mut Vec<Reply<'r>>) {
        let topic = self.step().topic;
        match (&self.focus, topic) {
            (Focus::Next, Topic::Fact(_)) => {
                self.facts.remove(0);
            }
            (Focus::Next, Topic::Item(item)) => self.pass_over(item),
            (Focus::Next, Topic::Ball(item, _)) => self.skipped.extend(self.key(item)),
            (Focus::Next, Topic::Name) => {
                said.push(Reply::Remark("Type finish to stop here.".to_owned()));
            }
            (_, _) => self.focus = Focus::Next,
        }
    }

    fn explain_again(&mut self, said: &mut Vec<Reply<'r>>) {
        let Some(place) = self.here.clone().or_else(|| self.last.clone()) else {
            return;
        };
        let compared = place.compared();
        self.skipped.retain(|(other, _)| *other != compared);
        self.no_ball.retain(|(other, _)| *other != compared);
        self.followed.retain(|(other, _), _| *other != compared);
        self.facts.clear();
        self.go_to(place);
        if self.next_item().is_none() {
            said.push(Reply::Remark("Nothing was skipped.".to_owned()));
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
        if !matches!(self.focus, Focus::Next) {
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
        self.focus = Focus::Item(last.item, How::Replace(last.spot, last.place));
    }

    /// `correct height`; of several readings the last one, or `correct opening 1`.
    fn correct(&mut self, name: &str, said: &mut Vec<Reply<'r>>) {
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
            let spot = self.history.iter().rfind(|written| written.item == item);
            match spot.cloned() {
                Some(w) => self.focus = Focus::Item(item, How::Replace(w.spot, w.place)),
                None => {
                    let text =
                        format!("{item} was not written in this walk; change it in the file.");
                    said.push(Reply::Remark(text));
                }
            }
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
        self.focus = Focus::Next;
        if let (Some(place), Some((_, judged))) = (self.here.take(), self.guard.take()) {
            let open = judged.questions();
            said.push(Reply::Done(place, open, judged.verdict));
        }
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
        let Some(last) = self.history.last().cloned() else {
            said.push(Reply::Remark("A note stands beside an answer.".to_owned()));
            return;
        };
        let entry = PageEntry {
            place: last.place.clone(),
            item: last.item,
            reading: last.spot.written.clone(),
            note: note.to_owned(),
        };
        match self.page.noted(last.spot.line, &entry) {
            Ok(page) => {
                self.page = page;
                self.view = View::of(&self.page);
                self.judge_anew();
                said.push(Reply::Remark(format!("Note at {}: {note}", last.item)));
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
        for (place, item) in &self.skipped {
            if Some(place) == here.as_ref() && missed.contains(item) {
                lines.push((item.name().to_owned(), "skipped".to_owned()));
            }
        }
        Reply::Listing(lines)
    }

    fn name(&mut self, text: &str, said: &mut Vec<Reply<'r>>) {
        let last = self.last.clone().unwrap_or_default();
        if text.is_empty() {
            self.focus = Focus::Finished;
            return;
        }
        let copied = match text.strip_prefix('=') {
            Some(rest) => Some(rest.trim()),
            None if text.to_lowercase().starts_with("same") => text.get(4..).map(str::trim),
            None => None,
        };
        let place = match copied {
            Some(_) if self.last.is_none() => None,
            Some(rest) => GuardName::following(rest, &last),
            None => GuardName::named(text, &last),
        };
        let Some(place) = place else {
            let help = "write its name, or UNIT, NAME: 2A, balcony".to_owned();
            said.push(Reply::Refused(format!("{text} names no guard"), Some(help)));
            return;
        };
        if !place.building.is_empty() && self.page.plan.building.is_none() {
            // only while no guard stands in the file: later rows would have to be guessed
            if let (true, Ok(page)) = (
                self.view.guards.is_empty(),
                self.page.with_building_column(),
            ) {
                self.page = page;
                self.view = View::of(&self.page);
                self.history.clear();
            }
        }
        if let Err(error) = self.page.can_name(&place) {
            said.push(Reply::Refused(error.to_string(), None));
            return;
        }
        let known = self.view.guard(&place).map(GuardName::of);
        if let Some(known) = known {
            let text = format!("{} is in the file already; going on there.", known.says());
            said.push(Reply::Remark(text));
            self.go_to(known);
            return;
        }
        self.go_to(place.clone());
        if copied.is_some() {
            self.copy(&last, &place, said);
        }
    }

    /// Takes over where a guard stands and how it is built.
    fn copy(&mut self, from: &GuardName, to: &GuardName, said: &mut Vec<Reply<'r>>) {
        let Some(old) = self.view.guard(from).cloned() else {
            return;
        };
        let before = (self.page.clone(), self.view.clone());
        let mut taken = Vec::new();
        let all = old.observations.iter().chain(&old.inherited.observations);
        for o in all {
            let kept = (o.item.is_circumstance() || matches!(o.item.info().kind, Kind::Words(_)))
                && o.item.info().holds != Holds::ForThisGuardAlone
                && o.reading.is_some();
            let there = self.guard.as_ref().is_some_and(|(guard, _)| {
                guard
                    .of(o.item)
                    .any(|(_, other)| other.written == o.written)
            });
            if !kept || there || taken.contains(&(o.item, o.written.to_string())) {
                continue;
            }
            let entry = PageEntry {
                place: to.clone(),
                item: o.item,
                reading: o.written.to_string(),
                note: String::new(),
            };
            let row = self.table_row(to);
            if let Ok(page) = self.page.with(&entry, row) {
                self.page = page;
                taken.push((o.item, o.written.to_string()));
            }
        }
        self.view = View::of(&self.page);
        let faults = self.view.new_faults(&before.1, Severity::Error);
        if let Some(fault) = faults.first() {
            (self.page, self.view) = before;
            self.judge_anew();
            said.push(Reply::Refused(fault.message.clone(), fault.help.clone()));
            return;
        }
        self.judge_anew();
        said.push(Reply::Copied(from.clone(), taken));
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
