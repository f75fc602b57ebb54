//! A stick and a tape that contradict each other, and the tape whose class would decide.

use crate::items::Item;
use crate::judge::judge_by_findings;
use crate::reading::Value;
use crate::survey::Guard;
use crate::survey::Observation;
use crate::survey::TapeClass;
use crate::walk::Reply;
use crate::walk::Walk;
use crate::walk::page::PageEntry;
use crate::walk::page::PageSpot;
use crate::walk::pending::How;
use crate::walk::question::Asking;
use crate::walk::together::not_in_the_list;
use crate::walk::view::View;
use crate::walk::walk::Focus;

/// No class of tape is as much less sure than another: a margin of so many standard
/// uncertainties is decided by none of them. (EU and UK classes I to III and Handbook 44
/// differ by less than a factor of three, the other terms counted in)
const FAR: i64 = 6;

impl<'r> Walk<'r> {
    /// Where a stick and the tape cannot both be right: two places, or which was wrong.
    pub(super) fn contradiction(
        &mut self,
        item: Item,
        text: &str,
        note: &str,
        said: &mut Vec<Reply<'r>>,
    ) {
        let (Some(here), Some((guard, _))) = (&self.here, &self.guard) else {
            return;
        };
        let tape = last_of(guard, item, |value| matches!(value, Value::Measure(_))).cloned();
        let stick = last_of(guard, item, |value| matches!(value, Value::Stick(_))).cloned();
        let over = (here.compared(), Asking::Contradiction(item));
        let replaced = |old: Observation| How::Replace(spot_of(&old), here.clone());
        let focus = match (text, tape, stick) {
            ("1", Some(tape), _) if note.is_empty() => Focus::Place(item, spot_of(&tape)),
            ("1", Some(tape), _) => {
                self.note_beside(&tape, note, said);
                Focus::Next
            }
            ("2", Some(tape), _) => Focus::Item(item, replaced(tape)),
            ("3", _, Some(stick)) => Focus::Item(item, replaced(stick)),
            (_, _, _) => {
                said.push(not_in_the_list(text));
                return;
            }
        };
        self.passed.over.insert(over);
        self.focus = focus;
    }

    /// Where the tape was held, in the person's own words.
    pub(super) fn answer_place(
        &mut self,
        item: Item,
        spot: &PageSpot,
        text: &str,
        said: &mut Vec<Reply<'r>>,
    ) {
        self.focus = Focus::Next;
        let Some((guard, _)) = &self.guard else {
            return;
        };
        let mut own = guard.observations.iter();
        let at = own.find(|o| o.item == item && spot_of(o) == *spot).cloned();
        if let (Some(at), false) = (at, text.is_empty()) {
            self.note_beside(&at, text, said);
        }
    }

    /// Adds words of the person's own to the note beside a reading of the guard that is
    /// spoken of. Whether they are written there now.
    pub(super) fn note_beside(
        &mut self,
        beside: &Observation,
        words: &str,
        said: &mut Vec<Reply<'r>>,
    ) -> bool {
        let old = beside.note.trim();
        let entry = PageEntry {
            place: self.here.clone().unwrap_or_default(),
            item: beside.item,
            reading: beside.written.to_string(),
            note: if old.is_empty() {
                words.to_owned()
            } else {
                format!("{old}; {words}")
            },
        };
        match self.page.noted(beside.row.line, &entry) {
            Ok(page) => {
                self.page = page;
                self.view = View::of(&self.page);
                self.judge_anew();
                let text = format!("Noted beside it: \"{words}\".");
                said.push(Reply::Remark(text));
                true
            }
            Err(error) => {
                said.push(Reply::Refused(error.to_string(), None));
                false
            }
        }
    }

    /// Asks once for the class of the tape, where it would change a verdict here.
    pub(super) fn ask_for_the_tape(&mut self) {
        let asked = self.tape_asked || !self.page.is_notebook();
        if !asked && self.view.facts.tapes.is_empty() && self.tape_decides() {
            self.tape_asked = true;
            self.facts.push(Item::Tape);
        }
    }

    fn tape_decides(&self) -> bool {
        let Some((guard, judged)) = &self.guard else {
            return false;
        };
        let near = judged.findings.iter().any(|finding| {
            let doubt = finding.uncertainty.map(|doubt| doubt.doubled());
            matches!((finding.margin, doubt), (Some(margin), Some(doubt))
                if margin.magnitude().nanometres() <= doubt.nanometres().saturating_mul(FAR / 2))
        });
        let verdicts = |class: TapeClass| -> Vec<_> {
            let mut facts = self.view.facts.clone();
            for file in &mut facts.file_facts {
                file.tape = Some(class);
            }
            let judged =
                judge_by_findings(guard, None, &facts, self.rulesets, self.settings.options);
            judged
                .findings
                .iter()
                .map(|finding| finding.verdict)
                .collect()
        };
        let now: Vec<_> = judged
            .findings
            .iter()
            .map(|finding| finding.verdict)
            .collect();
        near && TapeClass::ALL
            .into_iter()
            .any(|class| verdicts(class) != now)
    }
}

fn last_of(guard: &Guard, item: Item, is: impl Fn(&Value) -> bool) -> Option<&Observation> {
    guard.observations.iter().rfind(|o| {
        let value = o.reading.as_ref().map(|reading| &reading.value);
        o.item == item && value.is_some_and(&is)
    })
}

fn spot_of(o: &Observation) -> PageSpot {
    PageSpot {
        line: o.row.line,
        written: o.written.to_string(),
    }
}
