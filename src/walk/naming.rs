//! Which guard is next: its name, and what it takes over from the last one.

use crate::input::Severity;
use crate::items::Item;
use crate::judge::Judged;
use crate::reading::Bound;
use crate::reading::Value;
use crate::survey::Guard;
use crate::walk::GuardName;
use crate::walk::Reply;
use crate::walk::Walk;
use crate::walk::page::PageEntry;
use crate::walk::pending::How;
use crate::walk::pending::Pending;
use crate::walk::place_word::name_in_full;
use crate::walk::place_word::place_in;
use crate::walk::sizes::all_triggers;
use crate::walk::view::View;
use crate::walk::walk::Ending;
use crate::walk::words::Meant;
use crate::walk::words::word_of;

/// What a guard that is built as the last one takes over. What is measured, looked
/// at or pushed is never copied, nor a circumstance that may switch rules off: a drop
/// only where it is above every limit.
const COPIED: [Item; 3] = [Item::Place, Item::Infill, Item::Handrail];

impl<'r> Walk<'r> {
    /// What a person calls the next guard; nothing for no more.
    pub(super) fn name(&mut self, text: &str, said: &mut Vec<Reply<'r>>) {
        let last = self.last.clone().unwrap_or_default();
        if text.is_empty() {
            self.no_more();
            return;
        }
        let copied = match text.strip_prefix('=') {
            Some(rest) => Some(rest.trim()),
            None if text.to_lowercase().starts_with("same") => text.get(4..).map(str::trim),
            None => None,
        };
        let (copied, but) = match copied.map(but_behind) {
            Some((name, but)) => (Some(name), but),
            None => (None, Vec::new()),
        };
        let place = match copied {
            Some(_) if self.last.is_none() => None,
            Some(rest) => GuardName::following(rest, &last),
            None => GuardName::named(text, &last),
        };
        let place = place.map(|place| self.in_full(place, said));
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
            self.go_to(known.clone());
            self.say_stop(said);
            return;
        }
        let but = match words_meant(&but) {
            Ok(but) => but,
            Err(word) => {
                let message = format!("{word} is no place, no infill and nothing to hold");
                let help = "write what is otherwise: = gallery but horizontal bars".to_owned();
                said.push(Reply::Refused(message, Some(help)));
                return;
            }
        };
        self.go_to(place.clone());
        match copied {
            Some(_) => self.copy(&last, &place, but, said),
            None => self.place_of_the_name(&place, said),
        }
    }

    /// A name whose last word is the beginning of a place word, in full.
    fn in_full(&self, place: GuardName, said: &mut Vec<Reply<'r>>) -> GuardName {
        if self.view.guard(&place).is_some() {
            return place;
        }
        match name_in_full(&place.guard) {
            Some(guard) => {
                said.push(Reply::Remark(format!("The railing is called {guard}.")));
                GuardName { guard, ..place }
            }
            None => place,
        }
    }

    /// No more guards: who measured is asked where nobody wrote it, then it is over.
    fn no_more(&mut self) {
        if self.view.facts.by.is_empty() && !self.view.guards.is_empty() {
            self.facts = vec![Item::By];
        }
        self.ending = Ending::Asked;
    }

    /// The place that stands in a guard's name is written down.
    fn place_of_the_name(&mut self, place: &GuardName, said: &mut Vec<Reply<'r>>) {
        let written = self
            .guard
            .as_ref()
            .is_some_and(|(guard, _)| guard.of(Item::Place).next().is_some());
        let Some(word) = place_in(&place.guard).filter(|_| !written) else {
            return;
        };
        let pending = Pending {
            item: Item::Place,
            reading: word.to_owned(),
            note: String::new(),
            how: How::Add,
            confirmed: true,
        };
        self.write_or_ask(pending, said);
    }

    /// Takes over where a guard stands, how it is filled, what a hand holds, and a drop
    /// that is above every limit; `but` comes in the place of what differs.
    fn copy(
        &mut self,
        from: &GuardName,
        to: &GuardName,
        but: Vec<(Item, String)>,
        said: &mut Vec<Reply<'r>>,
    ) {
        let Some(old) = self.view.guard(from).cloned() else {
            return;
        };
        let before = (self.page.clone(), self.view.clone());
        let judged = self.view.judge(&old, self.rulesets, self.settings.options);
        let deep = is_above_every_limit(&old, &judged);
        let mut taken: Vec<(Item, String)> = Vec::new();
        let all = old.observations.iter().chain(&old.inherited.observations);
        for o in all {
            let kept = COPIED.contains(&o.item) && o.reading.is_some();
            let kept = kept || o.item == Item::Drop && deep;
            let otherwise = but.iter().any(|(item, _)| *item == o.item);
            let there = self.guard.as_ref().is_some_and(|(guard, _)| {
                guard
                    .of(o.item)
                    .any(|(_, other)| other.written == o.written)
            });
            let entry = (o.item, o.written.to_string());
            if kept && !otherwise && !there && !taken.contains(&entry) {
                taken.push(entry);
            }
        }
        for (item, reading) in taken.iter().chain(&but) {
            let entry = PageEntry {
                place: to.clone(),
                item: *item,
                reading: reading.clone(),
                note: String::new(),
            };
            let row = self.table_row(to);
            if let Ok(page) = self.page.with(&entry, row) {
                self.page = page;
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
        said.push(Reply::Copied {
            from: from.clone(),
            taken,
            but,
        });
    }
}

/// Whether every drop that was written lies above all limits of the chosen rules: then
/// it can switch no rule off.
fn is_above_every_limit(guard: &Guard, judged: &Judged<'_>) -> bool {
    let Some(most) = all_triggers(judged).last().map(|limit| limit.length) else {
        return false;
    };
    let mut drops = guard.of(Item::Drop).peekable();
    drops.peek().is_some()
        && drops.all(|(_, o)| {
            let value = o.reading.as_ref().map(|reading| &reading.value);
            let Some(Value::Measure(measure)) = value else {
                return false;
            };
            match measure.bound {
                Bound::Over => measure.length >= most,
                // a tape's doubt is far less than a tenth
                Bound::Exactly => measure.length.nanometres() / 11 * 10 > most.nanometres(),
                Bound::Under => false,
            }
        })
}

/// `gallery but hb, wall`: the name, and what is otherwise.
fn but_behind(text: &str) -> (&str, Vec<&str>) {
    let found = text
        .find(" but ")
        .map(|at| (&text[..at], &text[at + 5..]))
        .or_else(|| text.strip_prefix("but ").map(|but| ("", but)));
    match found {
        Some((name, but)) => {
            let each = but.split([',', ';']).map(str::trim);
            (name.trim(), each.filter(|word| !word.is_empty()).collect())
        }
        None => (text, Vec::new()),
    }
}

/// What each word is of; the word that is of nothing that is copied.
fn words_meant(but: &[&str]) -> Result<Vec<(Item, String)>, String> {
    but.iter()
        .map(|word| {
            let of = |item: Item| match word_of(item, word) {
                Meant::One(found) => Some((item, found.to_owned())),
                Meant::Nothing | Meant::Several(_) => None,
            };
            [Item::Infill, Item::Place, Item::Handrail]
                .into_iter()
                .find_map(of)
                .ok_or_else(|| (*word).to_owned())
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_otherwise_stands_behind_but() {
        assert_eq!(but_behind("gallery but hb"), ("gallery", vec!["hb"]));
        assert_eq!(but_behind("but glass"), ("", vec!["glass"]));
        assert_eq!(but_behind("butler's stair"), ("butler's stair", vec![]));
        assert_eq!(
            words_meant(&["hb", "wall"]),
            Ok(vec![
                (Item::Infill, "horizontal bars".to_owned()),
                (Item::Infill, "solid".to_owned())
            ])
        );
        assert_eq!(words_meant(&["zzz"]), Err("zzz".to_owned()));
    }
}
