//! Answers that make several rows at once: what was seen, what moved, which ball stops.

use crate::input::Severity;
use crate::input::folded;
use crate::items::Item;
use crate::reading::parse;
use crate::walk::GuardTopic;
use crate::walk::Reply;
use crate::walk::Topic;
use crate::walk::Walk;
use crate::walk::page::Page;
use crate::walk::page::PageEntry;
use crate::walk::page::PageSpot;
use crate::walk::pending::How;
use crate::walk::plan::WAY_CLOSED;
use crate::walk::plan::WAY_OPEN;
use crate::walk::plan::on_a_stair;
use crate::walk::prompts;
use crate::walk::prompts::LOOK;
use crate::walk::prompts::TOUCH;
use crate::walk::question::Asking;
use crate::walk::question::ByHand;
use crate::walk::sizes::BallChoice;
use crate::walk::sizes::chosen_ball;
use crate::walk::view::View;
use crate::walk::walk::Focus;
use crate::walk::walk::WrittenAnswer;
use crate::walk::walk::by_hand;
use crate::walk::words::words_behind;
use crate::walk::words::yes_or_no;

type SaidThen<'r> = Vec<Reply<'r>>;
type Rows = Vec<(Item, String)>;

impl<'r> Walk<'r> {
    /// An answer to a question about the guard that is spoken of.
    pub(super) fn answer_about_guard(
        &mut self,
        topic: &GuardTopic,
        text: &str,
        said: &mut SaidThen<'r>,
    ) {
        let (head, note) = words_behind(text);
        match topic {
            GuardTopic::Ball(item, size) => {
                self.ball(topic, (*item, size), &head, &note, text, said);
            }
            GuardTopic::Balls(sizes) => self.balls(topic, sizes, &head, &note, text, said),
            GuardTopic::ByEye => self.by_eye(&head),
            GuardTopic::Climb => self.climb(&head, &note, said),
            GuardTopic::Closed => self.closed(&head, &note, said),
            GuardTopic::Contradiction(item) => self.contradiction(*item, &head, &note, said),
            GuardTopic::Drop(size) => self.drop(topic, size, &head, &note, text, said),
            GuardTopic::Item(item) => self.answer_item(*item, text, said),
            GuardTopic::Look => self.look(&head, &note, said),
            GuardTopic::Stick(item, size) => {
                self.stick(topic, (*item, size), &head, &note, text, said);
            }
            GuardTopic::Touch => self.touch(&head, &note, said),
        }
    }

    fn look(&mut self, text: &str, note: &str, said: &mut SaidThen<'r>) {
        let Some(keys) = keys_of(text, &LOOK.map(|(key, says, _)| (key, says))) else {
            said.push(not_in_the_list(text));
            return;
        };
        let seen: Rows = LOOK
            .iter()
            .filter(|(key, ..)| keys.contains(key))
            .filter_map(|(_, _, row)| *row)
            .map(|(item, word)| (item, word.to_owned()))
            .collect();
        let nothing_here = keys.contains(&"0");
        if keys.len() > 1 && (nothing_here || keys.contains(&"n")) {
            let message = format!("{text} says that there is something, and that there is not");
            said.push(Reply::Refused(
                message,
                Some("write one of them".to_owned()),
            ));
            return;
        }
        let mut rows = seen;
        let has = |rows: &Rows, item: Item| rows.iter().any(|(of, _)| *of == item);
        let danger = rows.iter().any(|(item, word)| item.danger(word).is_some());
        if !nothing_here && !danger {
            // the whole list was looked through
            rows.push((Item::Condition, "none seen".to_owned()));
        }
        if !nothing_here && !has(&rows, Item::Paint) {
            rows.push((Item::Paint, "sound".to_owned()));
        }
        self.write_together(&GuardTopic::Look, rows, note, said);
    }

    fn touch(&mut self, text: &str, note: &str, said: &mut SaidThen<'r>) {
        let list = TOUCH.map(|(key, says, _)| (key, says));
        let key = match folded(text).as_str() {
            "no" | "0" | "nothing" => Some("n"),
            "a little" | "little" => Some("1"),
            "a lot" | "lot" => Some("2"),
            _ => keys_of(text, &list).and_then(|keys| match keys.as_slice() {
                [one] => Some(*one),
                [] | [_, ..] => None,
            }),
        };
        let chosen = TOUCH.iter().find(|(of, ..)| Some(*of) == key);
        let Some((_, _, rows)) = chosen else {
            said.push(not_in_the_list(text));
            return;
        };
        let rows = rows.iter().map(|(item, word)| (*item, (*word).to_owned()));
        self.write_together(&GuardTopic::Touch, rows.collect(), note, said);
    }

    fn climb(&mut self, text: &str, note: &str, said: &mut SaidThen<'r>) {
        let list = [("n", "nothing"), ("1", "on it"), ("2", "near it")];
        let text = match yes_or_no(text) {
            Some(false) => "n",
            Some(true) | None => text,
        };
        let keys = keys_of(text, &list).filter(|keys| keys.len() == 1 || !keys.contains(&"n"));
        let (Some(keys), Some(here)) = (keys, self.here.clone()) else {
            said.push(not_in_the_list(text));
            return;
        };
        let mut rows = Rows::new();
        for (key, item) in [("1", Item::Foothold), ("2", Item::ThingToClimb)] {
            let asked = item == Item::ThingToClimb || !self.bars_are_level();
            if keys.contains(&key) {
                self.passed.seen.insert((here.compared(), item));
            } else if asked {
                rows.push((item, "none".to_owned()));
            }
        }
        self.passed.over.insert((here.compared(), Asking::Climb));
        if rows.is_empty() && !matches!(self.focus, Focus::Redo(_)) {
            self.focus = Focus::Next;
        } else {
            self.write_together(&GuardTopic::Climb, rows, note, said);
        }
    }

    fn bars_are_level(&self) -> bool {
        let ask = self.step();
        ask.topic == Topic::Guard(GuardTopic::Climb)
            && !ask.choices.iter().any(|choice| choice.key == "1")
    }

    /// Whether the way to a danger is closed: a note beside it.
    fn closed(&mut self, text: &str, note: &str, said: &mut SaidThen<'r>) {
        let words = match yes_or_no(text) {
            Some(true) => WAY_CLOSED,
            Some(false) => WAY_OPEN,
            None => {
                said.push(not_in_the_list(text));
                return;
            }
        };
        let words = if note.is_empty() {
            words.to_owned()
        } else {
            format!("{words}: {note}")
        };
        let Some((guard, judged)) = &self.guard else {
            return;
        };
        let Some(danger) = judged.dangers.first() else {
            return;
        };
        let beside = guard.observation(danger.index).clone();
        if self.note_beside(&beside, &words, said) && words.starts_with(WAY_OPEN) {
            let text = "It stands first in the report until it is.";
            said.push(Reply::Remark(text.to_owned()));
        }
        self.focus = Focus::Next;
    }

    fn by_eye(&mut self, text: &str) {
        let Some(here) = self.here.as_ref().map(|here| here.compared()) else {
            return;
        };
        if yes_or_no(text) == Some(true) {
            self.passed.by_eye.insert(here);
        } else {
            self.passed.over.insert((here, Asking::ByEye));
        }
        self.focus = Focus::Next;
    }

    fn drop(
        &mut self,
        topic: &GuardTopic,
        size: &str,
        head: &str,
        note: &str,
        whole: &str,
        said: &mut SaidThen<'r>,
    ) {
        let eye = self
            .guard
            .as_ref()
            .is_some_and(|(guard, _)| self.by_eye_alone(guard) == prompts::ByEye::Yes);
        let here = self.here.as_ref().map(|here| here.compared());
        match yes_or_no(head) {
            Some(true) => {
                let note = if eye && note.is_empty() {
                    "by eye"
                } else {
                    note
                };
                let rows = vec![(Item::Drop, format!("over {size}"))];
                self.write_together(topic, rows, note, said);
            }
            Some(false) => {
                self.passed
                    .over
                    .extend(here.clone().map(|here| (here, Asking::Drop)));
                if eye {
                    self.passed
                        .over
                        .extend(here.map(|here| (here, Asking::Item(Item::Drop))));
                    let text = "Nothing is written: only a tape could say that it is low enough.";
                    said.push(Reply::Remark(text.to_owned()));
                }
                self.focus = Focus::Next;
            }
            None if ["cannot see", "can not see", "c"].contains(&folded(head).as_str()) => {
                let reading = if note.is_empty() {
                    "not reached, could not see down".to_owned()
                } else {
                    format!("not reached, {note}")
                };
                self.read(Item::Drop, &reading, How::Add, said);
            }
            None => self.read_here(Item::Drop, whole, said),
        }
    }

    fn balls(
        &mut self,
        topic: &GuardTopic,
        sizes: &[String],
        head: &str,
        note: &str,
        whole: &str,
        said: &mut SaidThen<'r>,
    ) {
        let (text, only) = match head.strip_suffix(" only") {
            Some(text) => (text, Smaller::NotTried),
            None => (head, Smaller::Passed),
        };
        let Some((guard, _)) = &self.guard else {
            return;
        };
        let (stair, push) = (on_a_stair(guard), by_hand(guard));
        let some = prompts::some_out_of_reach(guard);
        if let (Some(why), false) = (out_of_reach(head, note), some) {
            let rows = vec![(Item::OpeningsChecked, "some".to_owned())];
            self.write_together(topic, rows, &why, said);
            return;
        }
        let rows = match chosen_ball(text, sizes) {
            BallChoice::AllPass => sizes
                .first()
                .map(|size| vec![(Item::Opening, passes(size, push))]),
            BallChoice::Stops(index) => sizes.get(index).map(|size| {
                let smaller = sizes.get(index + 1).filter(|_| only == Smaller::Passed);
                let mut rows = rows_of_balls(size, smaller.map(String::as_str), push, stair);
                // that not every one was looked at stays
                rows.retain(|(item, _)| !some || *item != Item::OpeningsChecked);
                rows
            }),
            BallChoice::No => None,
        };
        match rows {
            Some(rows) => self.write_together(topic, rows, note, said),
            None if text.starts_with(|c: char| c.is_ascii_digit())
                && parse(Item::Opening, whole, None).is_err() =>
            {
                let list = sizes.join(", ");
                let message = format!("{text} is none of these balls: {list}");
                let help = "write the one that stops everywhere, or p where all pass; Enter, and then what the tape reads".to_owned();
                said.push(Reply::Refused(message, Some(help)));
            }
            None => self.read_here(Item::Opening, whole, said),
        }
    }

    fn ball(
        &mut self,
        topic: &GuardTopic,
        (item, size): (Item, &str),
        head: &str,
        note: &str,
        whole: &str,
        said: &mut SaidThen<'r>,
    ) {
        let stops = match folded(head).as_str() {
            "stops" | "stop" | "it stops" => Some(true),
            "passes" | "pass" | "it passes" => Some(false),
            other => yes_or_no(other),
        };
        let Some((guard, _)) = &self.guard else {
            return;
        };
        let push = by_hand(guard);
        match stops {
            None => self.read_here(item, whole, said),
            Some(stops) => {
                let mut reading = if stops {
                    format!("{size} ball stops")
                } else {
                    format!("{size} ball passes")
                };
                // the question was put of every step
                if stops && item == Item::StairTriangle {
                    reading.push_str(" everywhere");
                }
                reading.push_str(pushed(push));
                self.write_together(topic, vec![(item, reading)], note, said);
            }
        }
    }

    fn stick(
        &mut self,
        topic: &GuardTopic,
        (item, size): (Item, &str),
        head: &str,
        note: &str,
        whole: &str,
        said: &mut SaidThen<'r>,
    ) {
        match yes_or_no(head) {
            Some(true) => {
                let rows = vec![(item, format!("reaches {size}"))];
                self.write_together(topic, rows, note, said);
            }
            Some(false) => {
                let rows = vec![(item, format!("below {size}"))];
                self.write_together(topic, rows, note, said);
            }
            None => self.read_here(item, whole, said),
        }
    }

    /// Reads an answer to an item, in the place of what is answered once more.
    fn read_here(&mut self, item: Item, text: &str, said: &mut SaidThen<'r>) {
        if let Focus::Redo(group) = self.focus.clone() {
            let before = (self.page.clone(), self.view.clone(), self.history.clone());
            match self.without(&group) {
                Ok(page) => {
                    self.page = page;
                    self.view = View::of(&self.page);
                    self.moved_up(&group);
                }
                Err(why) => {
                    said.push(Reply::Refused(why, None));
                    return;
                }
            }
            self.focus = Focus::Next;
            self.judge_anew();
            self.read(item, text, How::Add, said);
            if matches!(said.last(), Some(Reply::Refused(..))) {
                (self.page, self.view, self.history) = before;
                self.focus = Focus::Redo(group);
                self.judge_anew();
            }
            return;
        }
        let how = self.how_for(item);
        self.read(item, text, how, said);
    }

    /// The survey without the rows of an answer.
    fn without(&self, group: &WrittenAnswer) -> Result<Page, String> {
        let mut lines: Vec<&(Item, PageSpot)> = group.rows.iter().collect();
        lines.sort_by_key(|(_, spot)| std::cmp::Reverse(spot.line));
        let mut page = self.page.clone();
        for (item, spot) in lines {
            page = page
                .removed(*item, spot)
                .map_err(|error| error.to_string())?;
        }
        Ok(page)
    }

    /// Lines below rows that were taken out have moved up.
    fn moved_up(&mut self, group: &WrittenAnswer) {
        if !self.page.is_notebook() {
            return;
        }
        let gone: Vec<u64> = group.rows.iter().map(|(_, spot)| spot.line).collect();
        for written in &mut self.history {
            for (_, spot) in &mut written.rows {
                let above = gone.iter().filter(|line| **line < spot.line).count();
                spot.line -= u64::try_from(above).unwrap_or(0);
            }
        }
    }

    /// Writes the rows of one answer, all or none.
    fn write_together(
        &mut self,
        topic: &GuardTopic,
        rows: Rows,
        note: &str,
        said: &mut SaidThen<'r>,
    ) {
        let Some(here) = self.here.clone() else {
            return;
        };
        let before = (self.page.clone(), self.view.clone(), self.history.clone());
        if let Focus::Redo(group) = self.focus.clone() {
            match self.without(&group) {
                Ok(page) => self.page = page,
                Err(why) => {
                    said.push(Reply::Refused(why, None));
                    return;
                }
            }
            self.moved_up(&group);
        }
        let mut written = Vec::new();
        let mut fault = None;
        for (index, (item, reading)) in rows.iter().enumerate() {
            let entry = PageEntry {
                place: here.clone(),
                item: *item,
                reading: reading.clone(),
                note: if index == 0 {
                    note.to_owned()
                } else {
                    String::new()
                },
            };
            let row = self.table_row(&here);
            match self.page.with(&entry, row) {
                Ok(page) => {
                    self.page = page;
                    let line = self.page.line_written(self.table_row(&here));
                    let spot = PageSpot {
                        line,
                        written: reading.clone(),
                    };
                    written.push((*item, spot));
                }
                Err(error) => fault = Some((error.to_string(), None)),
            }
        }
        let view = View::of(&self.page);
        if let Some(new) = view.new_faults(&before.1, Severity::Error).first() {
            fault = Some((new.message.clone(), new.help.clone()));
        }
        if let Some((message, help)) = fault {
            (self.page, self.view, self.history) = before;
            said.push(Reply::Refused(message, help));
            return;
        }
        self.view = view;
        self.history.push(WrittenAnswer {
            place: here,
            topic: Topic::Guard(topic.clone()),
            rows: written,
        });
        said.push(Reply::Noted(rows, note.to_owned()));
        self.focus = Focus::Next;
        self.look_again(said);
    }
}

/// Why some of the gaps could not be reached, where that was answered.
fn out_of_reach(head: &str, note: &str) -> Option<String> {
    let said = ["cannot reach", "can not reach", "not reached", "nr"];
    said.contains(&folded(head).as_str())
        .then(|| note.to_owned())
}

/// Whether the next smaller ball was tried and passed.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Smaller {
    NotTried,
    Passed,
}

/// A ball that stops everywhere, and the next smaller one that passes. On a stair the
/// steps were not tried: there they are of one hole, and every hole of the infill was
/// looked at.
fn rows_of_balls(stops: &str, smaller: Option<&str>, push: ByHand, stair: bool) -> Rows {
    let hand = pushed(push);
    if !stair {
        let mut rows = vec![(
            Item::Opening,
            format!("{stops} ball stops everywhere{hand}"),
        )];
        rows.extend(smaller.map(|smaller| (Item::Opening, passes(smaller, push))));
        return rows;
    }
    let reading = match smaller {
        Some(smaller) => format!("{smaller} ball passes{hand} {stops} ball stops{hand}"),
        None => format!("{stops} ball stops{hand}"),
    };
    vec![
        (Item::Opening, reading),
        (Item::OpeningsChecked, "every one".to_owned()),
    ]
}

fn passes(size: &str, push: ByHand) -> String {
    format!("{size} ball passes{}", pushed(push))
}

const fn pushed(push: ByHand) -> &'static str {
    match push {
        ByHand::No => "",
        ByHand::Yes => " pushed by hand",
    }
}

pub(super) fn not_in_the_list<'r>(text: &str) -> Reply<'r> {
    let message = format!("{text} is not in the list");
    Reply::Refused(message, Some("write what stands in front of it".to_owned()))
}

/// Several keys of a list, parted by blanks or commas; or one by the words behind it.
fn keys_of(text: &str, list: &[(&'static str, &'static str)]) -> Option<Vec<&'static str>> {
    let text = folded(text);
    if text.is_empty() {
        return None;
    }
    if let Some((key, _)) = list.iter().find(|(_, says)| *says == text) {
        return Some(vec![*key]);
    }
    let mut keys = Vec::new();
    for part in text
        .split([' ', ',', '+', ';'])
        .filter(|part| !part.is_empty())
    {
        let part = match part {
            "no" | "none" | "nothing" => "n",
            part => part,
        };
        let (key, _) = list.iter().find(|(key, _)| *key == part)?;
        if !keys.contains(key) {
            keys.push(*key);
        }
    }
    Some(keys)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn on_a_stair_a_ball_never_speaks_of_the_steps() {
        let rows = rows_of_balls("4 3/8 in", Some("3 1/2 in"), ByHand::No, true);
        assert_eq!(
            rows,
            [
                (
                    Item::Opening,
                    "3 1/2 in ball passes 4 3/8 in ball stops".to_owned()
                ),
                (Item::OpeningsChecked, "every one".to_owned()),
            ]
        );
        let level = rows_of_balls("4 in", None, ByHand::Yes, false);
        assert_eq!(
            level,
            [(
                Item::Opening,
                "4 in ball stops everywhere pushed by hand".to_owned()
            )]
        );
    }
}
