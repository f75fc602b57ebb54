//! The question that comes next, in words.

use crate::items::Item;
use crate::survey::Guard;
use crate::walk::GuardTopic;
use crate::walk::Prompt;
use crate::walk::Topic;
use crate::walk::Walk;
use crate::walk::pending::How;
use crate::walk::prompts;
use crate::walk::walk::WrittenAnswer;
use crate::walk::walk::by_hand;

impl Walk<'_> {
    pub(super) fn ask_next(&self) -> Prompt {
        if let Some(bare) = self.bare.first() {
            return bare.ask();
        }
        if let Some(fact) = self.facts.first() {
            return self.ask_fact(*fact);
        }
        match (&self.next, &self.guard) {
            (Some(topic), Some((guard, _))) => {
                let mut ask = self.ask_topic(topic, guard);
                if let GuardTopic::Item(item) = topic {
                    self.waiting(&mut ask, *item, guard);
                }
                ask
            }
            (_, _) => self.ask_name(),
        }
    }

    /// A question about a guard, in words.
    fn ask_topic(&self, topic: &GuardTopic, guard: &Guard) -> Prompt {
        let unit = self.unit_in_force();
        let eye = self.by_eye_alone(guard);
        match topic {
            GuardTopic::Ball(item, size) => prompts::ball(*item, size, by_hand(guard), unit),
            GuardTopic::Balls(sizes) => prompts::balls(guard, sizes, unit),
            GuardTopic::ByEye => prompts::by_eye(),
            GuardTopic::Climb => prompts::climb(self.level_bars()),
            GuardTopic::Closed => prompts::closed(),
            GuardTopic::Contradiction(item) => prompts::contradiction(*item, guard),
            GuardTopic::Drop(size) => prompts::drop(guard, size, eye),
            GuardTopic::Item(item) => prompts::of_item(*item, guard, unit),
            GuardTopic::Look => prompts::look(guard),
            GuardTopic::Stick(item, size) => prompts::stick(*item, size, unit),
            GuardTopic::Touch => prompts::touch(),
        }
    }

    /// How many rules wait for it, and why it is asked though something is written.
    fn waiting(&self, ask: &mut Prompt, item: Item, guard: &Guard) {
        ask.so_far = readings_so_far(guard, item);
        if let Some(question) = self.questions.iter().find(|question| question.item == item) {
            ask.waiting = question.findings;
            if !ask.so_far.is_empty() {
                let why = " What is written does not settle every rule; a further reading may.";
                ask.question.push_str(why);
                ask.short.push_str(why);
            }
        }
        if self.begins_strength(item) {
            "leave out all about strength".clone_into(&mut ask.enter);
        }
    }

    fn ask_fact(&self, item: Item) -> Prompt {
        let info = item.info();
        let mut ask = Prompt::item(item);
        ask.topic = Topic::Fact(item);
        if item == Item::Children {
            "How old are the children who live here or visit?".clone_into(&mut ask.question);
            ask.short = ask.question.clone();
            // several at once here, where a file wants a row for each
            ask.how = vec!["Months for small children. None, now or as guests: none.".to_owned()];
            ask.examples = vec!["14 months".into(), "8 months, 3 years".into()];
        } else if item == Item::By {
            "Who measured, and where? It heads the report.".clone_into(&mut ask.question);
            ask.short = ask.question.clone();
            ask.how = Vec::new();
            ask.examples = vec!["R. T., yellow house".to_owned()];
            "leave blank".clone_into(&mut ask.enter);
        } else if item == Item::Tape {
            "What stands on the tape near its zero, I, II or III in an oval? It decides here."
                .clone_into(&mut ask.question);
            ask.short = ask.question.clone();
            ask.how = Vec::new();
            ask.examples = Vec::new();
            "no mark, or not known".clone_into(&mut ask.enter);
        } else if info.question.is_empty() {
            info.means.clone_into(&mut ask.question);
            ask.short = ask.question.clone();
        }
        ask
    }

    fn ask_name(&self) -> Prompt {
        let mut ask = match &self.last {
            None => {
                let mut ask = Prompt::bare(
                    Topic::Name,
                    "What do you call the railing that you stand at?",
                    "finish",
                )
                .with_how("Say what it is in its name: landing, stair, deck, balcony, porch ...");
                ask.examples = vec!["landing".to_owned(), "2A, back stair".to_owned()];
                ask
            }
            Some(_) => Prompt::bare(
                Topic::Name,
                "The next one? = NAME: like the last one; = NAME but WORD: like it but for that.",
                "no more",
            )
            .titled("railing", "The next one?"),
        };
        ask.more = [
            "One run of railing is one railing here. Where its slope, its infill or what it stands on changes, a new one begins.",
            "A name and a unit keep them apart: porch; 2A, balcony; north block, 2A, balcony.",
            "= and a name copies from the last one where it stands, what fills it, what a hand holds and a drop above every limit, and says so. = NAME but balusters copies all but that. Nothing that is looked at, pushed or measured is copied.",
            "= alone counts the name on (stair 2, stair 3), =, counts the unit on.",
            "First letters of a place word suffice: hall la is hall landing. One that is in the file already is gone on with.",
        ]
        .map(str::to_owned)
        .to_vec();
        ask
    }

    pub(super) fn ask_item(&self, item: Item, how: &How) -> Prompt {
        let mut ask = match &self.guard {
            Some((guard, _)) if !item.is_survey_fact() => {
                prompts::of_item(item, guard, self.unit_in_force())
            }
            Some(_) | None => self.ask_fact(item),
        };
        ask.topic = Topic::Guard(GuardTopic::Item(item));
        if let How::Replace(spot, _) = how {
            ask.so_far = vec![spot.written.clone()];
            ask.enter = format!("keep {}", spot.written);
        } else {
            "skip".clone_into(&mut ask.enter);
            if let Some((guard, _)) = &self.guard {
                ask.so_far = readings_so_far(guard, item);
            }
        }
        ask
    }

    /// A question of several rows once more, with what was answered.
    pub(super) fn ask_once_more(&self, group: &WrittenAnswer) -> Prompt {
        let Some((guard, _)) = &self.guard else {
            return self.ask_name();
        };
        let Topic::Guard(topic) = &group.topic else {
            return self.ask_name();
        };
        let mut ask = self.ask_topic(topic, guard);
        ask.so_far = group
            .rows
            .iter()
            .map(|(item, spot)| format!("{item} {}", spot.written))
            .collect();
        "keep that".clone_into(&mut ask.enter);
        ask
    }
}

fn readings_so_far(guard: &Guard, item: Item) -> Vec<String> {
    let written = guard.of(item).map(|(_, o)| o.written.to_string());
    written.collect()
}
