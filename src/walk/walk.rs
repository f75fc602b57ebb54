//! The walk: which question comes next, and what is remembered between answers.

use crate::items::Hole;
use std::collections::BTreeMap;
use std::collections::BTreeSet;

use crate::items::Item;
use crate::judge::Judged;
use crate::judge::Options;
use crate::quantities::LengthUnit;
use crate::rules::Ruleset;
use crate::survey::Guard;
use crate::walk::GuardName;
use crate::walk::Prompt;
use crate::walk::Reply;
use crate::walk::Topic;
use crate::walk::next_question::ball_to_try;
use crate::walk::next_question::gives_way;
use crate::walk::next_question::holes;
use crate::walk::next_question::next_item;
use crate::walk::page::Page;
use crate::walk::page::PageEntry;
use crate::walk::page::PageSpot;
use crate::walk::pending::How;
use crate::walk::pending::Pending;
use crate::walk::pending::Why;
use crate::walk::question::ByHand;
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
    /// Today's date, where it is known: `2026-05-04`.
    pub today: Option<String>,
    /// Rulesets that are to be written into a survey that names none.
    pub rules: Vec<String>,
}

/// What is asked now.
#[derive(Clone, Debug)]
pub(super) enum Focus {
    /// Whatever is most decisive.
    Next,
    /// An item, out of turn.
    Item(Item, How),
    /// Something about an answer that is not written yet.
    Pending(Pending, Why),
    /// Nothing: it is over.
    Finished,
}

/// An answer that was written, to go back to.
#[derive(Clone, Debug)]
pub(super) struct WrittenAnswer {
    pub(super) place: GuardName,
    pub(super) item: Item,
    pub(super) spot: PageSpot,
}

/// A conversation about one survey.
///
/// [`Walk::step`] says what to ask, [`Walk::answer`] takes the answer, and
/// [`Walk::text`] is the survey as it is to be saved.
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
    pub(super) focus: Focus,
    /// Facts of the survey that are still to be asked.
    pub(super) facts: Vec<Item>,
    pub(super) skipped: BTreeSet<(GuardName, Item)>,
    /// Guards at which something was answered that only strength wants to know.
    pub(super) strength: BTreeSet<GuardName>,
    pub(super) no_ball: BTreeSet<(GuardName, Item)>,
    /// How often a further reading was asked for.
    pub(super) followed: BTreeMap<(GuardName, Item), usize>,
    pub(super) history: Vec<WrittenAnswer>,
    /// The unit of numbers without one, where the file cannot say it.
    pub(super) unit: Option<LengthUnit>,
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
            focus: Focus::Next,
            facts: Vec::new(),
            skipped: BTreeSet::new(),
            strength: BTreeSet::new(),
            no_ball: BTreeSet::new(),
            followed: BTreeMap::new(),
            history: Vec::new(),
            unit: None,
        };
        walk.begin();
        Ok(walk)
    }

    fn begin(&mut self) {
        match self.view.guards.last().map(GuardName::of) {
            Some(place) => self.go_to(place),
            None => {
                let facts = &self.view.facts;
                let asked = [
                    (Item::Date, facts.dates.is_empty()),
                    (Item::By, facts.by.is_empty()),
                    (Item::Tape, facts.tapes.is_empty()),
                ];
                self.facts = asked
                    .into_iter()
                    .filter(|(_, missing)| *missing)
                    .map(|(item, _)| item)
                    .collect();
                self.write_rules();
            }
        }
    }

    /// Rulesets that were chosen for a new survey are written into it, so that a
    /// later check judges by the same.
    fn write_rules(&mut self) {
        if self.settings.rules.is_empty() || !self.view.facts.rules.is_empty() {
            return;
        }
        let entry = PageEntry {
            place: GuardName::default(),
            item: Item::Rules,
            reading: self.settings.rules.join("; "),
            note: String::new(),
        };
        if let Ok(page) = self.page.with(&entry, None) {
            self.page = page;
            self.view = View::of(&self.page);
        }
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
        if matches!(self.focus, Focus::Item(_, How::Replace(..))) {
            self.focus = Focus::Next;
        }
        if let Focus::Pending(pending, _) = &self.focus
            && pending.how != How::Add
        {
            self.focus = Focus::Next;
        }
        self.judge_anew();
        Ok(())
    }

    /// What to ask now.
    #[must_use]
    pub fn step(&self) -> Prompt {
        let mut ask = match &self.focus {
            Focus::Finished => Prompt::bare(Topic::Finished, "", ""),
            Focus::Item(item, how) => self.ask_item(*item, how),
            Focus::Next => self.ask_next(),
            Focus::Pending(pending, why) => why.ask(pending),
        };
        ask.place = self.here.clone();
        ask.out_of_turn = matches!(self.focus, Focus::Item(..));
        ask
    }

    fn ask_next(&self) -> Prompt {
        if let Some(fact) = self.facts.first() {
            return self.ask_fact(*fact);
        }
        let Some((item, size)) = self.next_item() else {
            return self.ask_name();
        };
        let Some((guard, judged)) = &self.guard else {
            return self.ask_name();
        };
        let mut ask = match size {
            Some(size) => Prompt::ball(item, &size, by_hand(guard), holes(guard)),
            None => Prompt::item(item),
        };
        ask.so_far = readings_so_far(guard, item);
        let questions = judged.questions();
        if let Some(question) = questions.iter().find(|question| question.item == item) {
            ask.waiting = question.findings;
        }
        if self.begins_strength(item) {
            ask.enter = "leave strength out".to_owned();
        }
        ask
    }

    /// Whether this is the first thing that only strength wants to know here: who
    /// passes over it is asked for none of the rest.
    pub(super) fn begins_strength(&self, item: Item) -> bool {
        let (Some(here), Some((_, judged))) = (&self.here, &self.guard) else {
            return false;
        };
        let questions = judged.questions();
        let mut of_item = questions.iter().filter(|question| question.item == item);
        of_item.any(|question| question.of_strength) && !self.strength.contains(&here.compared())
    }

    /// The item that comes next here, with the size of a ball where one is to be tried.
    pub(super) fn next_item(&self) -> Option<(Item, Option<String>)> {
        let place = self.here.as_ref()?.compared();
        let (guard, judged) = self.guard.as_ref()?;
        let sized = |item| {
            let no_ball = self.no_ball.contains(&(place.clone(), item));
            let limit = (!no_ball && item.info().hole != Hole::No)
                .then(|| ball_to_try(judged, guard, item));
            limit.flatten().map(|limit| limit.written)
        };
        let open = |item: Item| {
            let key = (place.clone(), item);
            let written = guard.of(item).next().is_some();
            let followed = self.followed.get(&key).copied().unwrap_or(0) > 0;
            !self.skipped.contains(&key) && (!written || !followed || sized(item).is_some())
        };
        let item = next_item(judged, guard, &open)?;
        Some((item, sized(item)))
    }

    fn ask_fact(&self, item: Item) -> Prompt {
        let info = item.info();
        let (question, how) = if item == Item::Date {
            ("On which day do you measure?", None)
        } else if item == Item::By {
            ("Who measures? A name or initials.", None)
        } else if item == Item::Tape {
            let question = "Which class is the tape? It is printed near its zero mark.";
            (question, info.how.first().copied())
        } else {
            (info.means, info.how.first().copied())
        };
        let today = self.settings.today.as_deref();
        let enter = match (item, today) {
            (Item::Date, Some(today)) => format!("today, {today}"),
            _ => "skip".to_owned(),
        };
        let mut ask = Prompt::bare(Topic::Fact(item), question, &enter);
        ask.how = how.into_iter().collect();
        ask.more = item.info().how.to_vec();
        ask.words = item.words().iter().map(|word| word.name).collect();
        ask
    }

    fn ask_name(&self) -> Prompt {
        let mut ask = match &self.last {
            None => Prompt::bare(
                Topic::Name,
                "What do you call the guard that you stand at?",
                "finish",
            ),
            Some(_) => Prompt::bare(Topic::Name, "The next guard?", "finish"),
        };
        ask.how = vec![match &self.last {
            None => "One run of railing is one guard. With a unit: 2A, balcony.",
            Some(_) => "Its name, or UNIT, NAME. = NAME: built as the last one. =: counted on.",
        }];
        ask.examples = vec!["porch".to_owned(), "2A, balcony".to_owned()];
        ask.more = vec![
            "A guard is one run of railing, judged as one thing. Where its slope, its infill or what it stands on changes, a new guard begins.",
            "A name and a unit keep guards apart: porch; 2A, balcony; north block, 2A, balcony.",
            "= and a name takes over from the last guard where it stands and how it is built, and asks only for what must be measured or looked at anew. = alone counts the name on (stair 2, stair 3), =, counts the unit on.",
            "A guard that is in the file already is gone on with.",
        ];
        ask
    }

    fn ask_item(&self, item: Item, how: &How) -> Prompt {
        let mut ask = if item.is_survey_fact() {
            self.ask_fact(item)
        } else {
            Prompt::item(item)
        };
        if let How::Replace(spot, _) = how {
            ask.so_far = vec![spot.written.clone()];
            ask.enter = format!("keep {}", spot.written);
        } else if let Some((guard, _)) = &self.guard {
            ask.so_far = readings_so_far(guard, item);
        }
        ask
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
    }

    /// Leaves the guard where nothing more is to be asked, and says so.
    pub(super) fn leave_if_done(&mut self, said: &mut Vec<Reply<'r>>) {
        let busy = !matches!(self.focus, Focus::Next) || self.next_item().is_some();
        if busy || !self.facts.is_empty() {
            return;
        }
        if let (Some(place), Some((_, judged))) = (self.here.take(), self.guard.take()) {
            let open = judged.questions();
            said.push(Reply::Done(place, open, judged.verdict));
        }
    }
}

fn readings_so_far(guard: &Guard, item: Item) -> Vec<String> {
    let written = guard.of(item).map(|(_, o)| o.written.to_string());
    written.collect()
}

pub(super) fn by_hand(guard: &Guard) -> ByHand {
    if gives_way(guard) {
        ByHand::Yes
    } else {
        ByHand::No
    }
}
