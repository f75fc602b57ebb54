//! The walk: which question comes next, and what is remembered between answers.

use std::collections::BTreeSet;

use crate::items::Item;
use crate::judge::Authority;
use crate::judge::Judged;
use crate::judge::Options;
use crate::judge::Question;
use crate::quantities::LengthUnit;
use crate::rules::Ruleset;
use crate::survey::Guard;
use crate::walk::GuardName;
use crate::walk::GuardTopic;
use crate::walk::Prompt;
use crate::walk::Reply;
use crate::walk::Topic;
use crate::walk::outcome::GuardDone;
use crate::walk::page::Page;
use crate::walk::page::PageEntry;
use crate::walk::page::PageSpot;
use crate::walk::pending::How;
use crate::walk::pending::Pending;
use crate::walk::pending::Why;
use crate::walk::plan::AskingPlan;
use crate::walk::plan::Passed;
use crate::walk::plan::gives_way;
use crate::walk::plan::of_strength;
use crate::walk::prompts;
use crate::walk::question::Asking;
use crate::walk::question::ByHand;
use crate::walk::unit::Bare;
use crate::walk::unit::unit_named;
use crate::walk::view::View;

/// Why a text cannot be walked through.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("{0}")]
pub struct WalkError(pub(super) String);

/// What the walk is to know beside the survey.
#[derive(Clone, Debug, Default)]
pub struct Settings {
    /// How guards are judged.
    pub options: Options,
    /// Today's date, where it is known: `2026-05-04`. It is written into a survey that begins.
    pub today: Option<String>,
    /// Rulesets that are to be written into a survey that names none.
    pub rules: Vec<String>,
}

/// What is asked now.
#[derive(Clone, Debug)]
pub(super) enum Focus {
    /// Nothing: it is over.
    Finished,
    /// An item, out of turn.
    Item(Item, How),
    /// Where a reading was taken, for its note.
    Place(Item, PageSpot),
    /// Whatever comes next.
    Next,
    /// Something about an answer that is not written yet.
    Pending(Pending, Why),
    /// An answer of several rows, once more; they are replaced together.
    Redo(WrittenAnswer),
}

/// An answer that was written, to go back to.
#[derive(Clone, Debug)]
pub(super) struct WrittenAnswer {
    pub(super) place: GuardName,
    /// The question that it answered.
    pub(super) topic: Topic,
    /// The rows that it made.
    pub(super) rows: Vec<(Item, PageSpot)>,
}

/// How far the end of the walk has come.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Ending {
    NotYet,
    /// No more guards: what heads the report is asked, then it is over.
    Asked,
}

/// Whether it was said already that a shortfall is to be kept away from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Warned {
    No,
    Yes,
}

/// A conversation about one survey.
///
/// [`Walk::step`] says what to ask, [`Walk::answer`] takes the answer, and
/// [`Walk::text`] is the survey as it is to be saved. Nothing of it knows a
/// terminal, a file or a clock, so that a page on a phone can hold the same
/// conversation: each [`Prompt`] has the words, the choices, the drawing and the
/// keys of a screen, and [`Walk::go_back`], [`Walk::correct`], [`Walk::pass_over`],
/// [`Walk::cannot_reach`], [`Walk::like_the_last`] are the buttons beside them.
#[derive(Clone, Debug)]
pub struct Walk<'r> {
    pub(super) page: Page,
    pub(super) view: View,
    pub(super) rulesets: &'r [Ruleset],
    pub(super) settings: Settings,
    /// The guard that is spoken of.
    pub(super) here: Option<GuardName>,
    /// The last one that was.
    pub(super) last: Option<GuardName>,
    pub(super) guard: Option<(Guard, Judged<'r>)>,
    /// What its findings wait for: worked out once, and looked at for each question to come.
    pub(super) questions: Vec<Question>,
    pub(super) focus: Focus,
    /// Facts of the survey that are still to be asked.
    pub(super) facts: Vec<Item>,
    pub(super) passed: Passed,
    /// What comes next here, worked out after each answer.
    pub(super) next: Option<GuardTopic>,
    pub(super) history: Vec<WrittenAnswer>,
    /// The unit of numbers without one, where the file cannot say it.
    pub(super) unit: Option<LengthUnit>,
    /// Numbers without a unit that were written before the unit was mended.
    pub(super) bare: Vec<Bare>,
    pub(super) ending: Ending,
    pub(super) warned: Warned,
    /// The class of the tape is asked once, whether it was told or not.
    pub(super) tape_asked: bool,
}

impl<'r> Walk<'r> {
    /// Begins with the text of a survey, which may be empty.
    ///
    /// # Errors
    /// A text that does not begin as a survey does.
    pub fn new(
        name: &str,
        text: &str,
        rulesets: &'r [Ruleset],
        settings: Settings,
    ) -> Result<Walk<'r>, WalkError> {
        let page = Page::new(name, text).map_err(|error| WalkError(error.to_string()))?;
        let view = View::of(&page);
        let mut walk = Walk {
            page,
            view,
            rulesets,
            settings,
            here: None,
            last: None,
            guard: None,
            questions: Vec::new(),
            focus: Focus::Next,
            facts: Vec::new(),
            passed: Passed::default(),
            next: None,
            history: Vec::new(),
            unit: None,
            bare: Vec::new(),
            ending: Ending::NotYet,
            warned: Warned::No,
            tape_asked: false,
        };
        walk.begin();
        Ok(walk)
    }

    fn begin(&mut self) {
        if let Some(place) = self.view.guards.last().map(GuardName::of) {
            self.go_to(place);
            self.refresh();
            // a guard of which only the photograph was not asked is done
            if self.next == Some(GuardTopic::Item(Item::Photo)) {
                self.here = None;
                self.guard = None;
            }
        } else {
            self.write_head();
            let asks = |ruleset: &Ruleset| ruleset.items().contains(&Item::Children);
            let known = self.page.fact(Item::Children).is_some();
            if self.rulesets.iter().any(asks) && !known {
                self.facts = vec![Item::Children];
            }
        }
        self.refresh();
    }

    /// What is known of a new survey stands in it from the start: the rulesets, so that a
    /// later check judges by the same, the day, and the unit of the country's tapes.
    fn write_head(&mut self) {
        let mut head: Vec<(Item, String)> = Vec::new();
        if self.view.facts.rules.is_empty() && !self.settings.rules.is_empty() {
            head.push((Item::Rules, self.settings.rules.join("; ")));
        }
        if let (true, Some(today)) = (self.view.facts.dates.is_empty(), &self.settings.today) {
            head.push((Item::Date, today.clone()));
        }
        if let (true, None, Some(unit)) = (
            self.page.is_notebook(),
            self.page.fact(Item::DefaultUnit),
            self.unit_of_the_country(),
        ) {
            head.push((Item::DefaultUnit, unit.symbol().to_owned()));
        }
        for (item, reading) in head {
            let entry = PageEntry {
                place: GuardName::default(),
                item,
                reading,
                note: String::new(),
            };
            if let Ok(page) = self.page.with(&entry, None) {
                self.page = page;
            }
        }
        self.view = View::of(&self.page);
    }

    /// Inches where only rules of the United States were chosen, millimetres elsewhere;
    /// nothing where no law was chosen.
    fn unit_of_the_country(&self) -> Option<LengthUnit> {
        let law = self.rulesets.iter().filter(|ruleset| !ruleset.advisory);
        let inches: BTreeSet<bool> = law
            .map(|ruleset| ruleset.country.as_deref() == Some("United States"))
            .collect();
        match inches.into_iter().collect::<Vec<_>>().as_slice() {
            [true] => Some(LengthUnit::Inch),
            [false] => Some(LengthUnit::Millimetre),
            [] | [_, _, ..] => None,
        }
    }

    /// The unit that a number alone has now, where it has one.
    #[must_use]
    pub fn unit_in_force(&self) -> Option<LengthUnit> {
        let written = self.page.default_unit();
        self.unit
            .or_else(|| written.and_then(|spot| unit_named(&spot.written)))
    }

    /// The survey as it is to be saved.
    #[must_use]
    pub fn text(&self) -> &str {
        &self.page.text
    }

    /// How many errors stand in the survey.
    #[must_use]
    pub fn errors(&self) -> usize {
        self.view.errors()
    }

    /// How many guards there are.
    #[must_use]
    pub fn guard_count(&self) -> usize {
        self.view.guards.len()
    }

    /// The guard that is spoken of.
    #[must_use]
    pub fn here(&self) -> Option<&GuardName> {
        self.here.as_ref()
    }

    /// The guard that is spoken of, and how it is judged so far.
    #[must_use]
    pub fn judged(&self) -> Option<(&Guard, &Judged<'r>)> {
        self.guard.as_ref().map(|(guard, judged)| (guard, judged))
    }

    /// All guards of the survey as they are judged so far, in the order of the file.
    #[must_use]
    pub fn all_judged(&self) -> Vec<(Guard, Judged<'r>)> {
        let all = self.view.guards.iter();
        all.map(|guard| {
            let judged = self.view.judge(guard, self.rulesets, self.settings.options);
            (guard.clone(), judged)
        })
        .collect()
    }

    /// What the survey says of itself.
    #[must_use]
    pub fn facts(&self) -> &crate::survey::SurveyFacts {
        &self.view.facts
    }

    /// Goes on with a text that another program has written meanwhile.
    ///
    /// # Errors
    /// A text that does not begin as a survey does.
    pub fn take_in(&mut self, text: &str) -> Result<(), WalkError> {
        let name = self.page.name.to_string();
        let page = Page::new(&name, text).map_err(|error| WalkError(error.to_string()))?;
        self.page = page;
        self.view = View::of(&self.page);
        // lines may have moved
        self.history.clear();
        self.bare.clear();
        if matches!(
            self.focus,
            Focus::Item(_, How::Replace(..)) | Focus::Place(..) | Focus::Redo(_)
        ) {
            self.focus = Focus::Next;
        }
        if let Focus::Pending(pending, _) = &self.focus
            && pending.how != How::Add
        {
            self.focus = Focus::Next;
        }
        self.judge_anew();
        self.refresh();
        Ok(())
    }

    /// What to ask now.
    #[must_use]
    pub fn step(&self) -> Prompt {
        let mut ask = match &self.focus {
            Focus::Finished => Prompt::bare(Topic::Finished, "", ""),
            Focus::Item(item, how) => self.ask_item(*item, how),
            Focus::Next => self.ask_next(),
            Focus::Place(item, _) => prompts::place_of(*item),
            Focus::Pending(pending, why) => why.ask(pending, self.unit_in_force()),
            Focus::Redo(group) => self.ask_once_more(group),
        };
        ask.place.clone_from(&self.here);
        ask.out_of_turn = matches!(self.focus, Focus::Item(..) | Focus::Redo(_));
        ask
    }

    /// Whether a drop is told by eye here: nobody measures at an open edge or near a danger.
    pub(super) fn by_eye_alone(&self, guard: &Guard) -> prompts::ByEye {
        let open = guard.of(Item::Guard).any(|(_, o)| &*o.written == "none");
        let danger = self
            .guard
            .as_ref()
            .is_some_and(|(_, judged)| !judged.dangers.is_empty());
        if open || danger {
            prompts::ByEye::Yes
        } else {
            prompts::ByEye::No
        }
    }

    pub(super) fn level_bars(&self) -> bool {
        self.plan(&self.passed)
            .is_some_and(|plan| plan.level_bars())
    }

    /// Whether this is the first thing that only strength wants to know here: who
    /// passes over it is asked for none of the rest.
    pub(super) fn begins_strength(&self, item: Item) -> bool {
        let (Some(here), Some(_)) = (&self.here, &self.guard) else {
            return false;
        };
        let mut of_item = self
            .questions
            .iter()
            .filter(|question| question.item == item);
        let first = !self.passed.strength.contains(&here.compared());
        item != Item::Infill && of_item.any(of_strength) && first
    }

    fn plan<'p>(&'p self, passed: &'p Passed) -> Option<AskingPlan<'p, 'r>> {
        let (guard, judged) = self.guard.as_ref()?;
        Some(AskingPlan {
            place: self.here.as_ref()?.compared(),
            guard,
            judged,
            questions: &self.questions,
            passed,
        })
    }

    /// Works out what comes next.
    pub(super) fn refresh(&mut self) {
        self.passed.unit = self.unit_in_force();
        self.next = self.plan(&self.passed).and_then(|plan| plan.next());
        let over = self.ending == Ending::Asked && self.facts.is_empty();
        if over && matches!(self.focus, Focus::Next) {
            self.focus = Focus::Finished;
        }
    }

    /// How many more questions are likely at this guard, what is asked now counted: as
    /// many as come if each is passed over.
    #[must_use]
    pub fn questions_left(&self) -> usize {
        const MANY: usize = 60;
        let Some(place) = self.here.as_ref().map(GuardName::compared) else {
            return 0;
        };
        let mut passed = self.passed.clone();
        for count in 0..MANY {
            let next = self.plan(&passed).and_then(|plan| plan.next());
            let Some(asking) = next.as_ref().map(GuardTopic::asking) else {
                return count;
            };
            let mut over = |asking| passed.over.insert((place.clone(), asking));
            over(asking);
            // one of them answers the others too
            match asking {
                Asking::Balls => {
                    for item in [Item::Opening, Item::BottomGap, Item::EndGap] {
                        over(Asking::Item(item));
                    }
                }
                Asking::Drop => {
                    over(Asking::Item(Item::Drop));
                }
                Asking::Ball(item) => {
                    over(Asking::Item(item));
                }
                Asking::Item(item) if self.begins_strength(item) => {
                    for item in Item::LOAD_PATH {
                        over(Asking::Item(*item));
                    }
                }
                Asking::ByEye
                | Asking::Climb
                | Asking::Closed
                | Asking::Contradiction(_)
                | Asking::Item(_)
                | Asking::Look
                | Asking::Stick(_)
                | Asking::Touch => {}
            }
        }
        MANY
    }

    /// Turns to a guard.
    pub(super) fn go_to(&mut self, place: GuardName) {
        self.last = Some(place.clone());
        self.here = Some(place);
        self.focus = Focus::Next;
        self.judge_anew();
    }

    /// Reads and judges the guard that is spoken of anew.
    pub(super) fn judge_anew(&mut self) {
        self.guard = self.here.as_ref().map(|place| {
            let guard = self.view.guard_or_blank(&self.page, place);
            let judged = self
                .view
                .judge(&guard, self.rulesets, self.settings.options);
            (guard, judged)
        });
        let judged = self.guard.as_ref().map(|(_, judged)| judged);
        self.questions = judged.map(Judged::questions).unwrap_or_default();
    }

    /// Leaves the guard where nothing more is to be asked, and says so.
    pub(super) fn leave_if_done(&mut self, said: &mut Vec<Reply<'r>>) {
        let busy = !matches!(self.focus, Focus::Next) || self.next.is_some();
        if busy || !self.facts.is_empty() || !self.bare.is_empty() {
            return;
        }
        self.leave(said);
    }

    /// Leaves the guard that is spoken of, and says how it came out.
    pub(super) fn leave(&mut self, said: &mut Vec<Reply<'r>>) {
        if let (Some(place), Some((guard, judged))) = (self.here.take(), self.guard.take()) {
            said.push(Reply::Done(Box::new(GuardDone {
                place,
                guard,
                judged,
                authority: Authority::of(self.rulesets),
            })));
        }
        self.next = None;
    }

    /// Back to the last answer.
    pub fn go_back(&mut self) -> Vec<Reply<'r>> {
        self.answer("back")
    }

    /// Puts another answer right.
    pub fn correct(&mut self, item: Item) -> Vec<Reply<'r>> {
        self.answer(&format!("correct {item}"))
    }

    /// Passes over what is asked.
    pub fn pass_over(&mut self) -> Vec<Reply<'r>> {
        self.answer("skip")
    }

    /// What is asked could not be looked at, and why.
    pub fn cannot_reach(&mut self, why: &str) -> Vec<Reply<'r>> {
        self.answer(&format!("not reached, {why}"))
    }

    /// The next guard is built as the last one, but for these words.
    pub fn like_the_last(&mut self, name: &str, but: &[&str]) -> Vec<Reply<'r>> {
        let mut line = format!("= {name}");
        if !but.is_empty() {
            line.push_str(" but ");
            line.push_str(&but.join(", "));
        }
        self.answer(&line)
    }
}

pub(super) fn by_hand(guard: &Guard) -> ByHand {
    if gives_way(guard) {
        ByHand::Yes
    } else {
        ByHand::No
    }
}
