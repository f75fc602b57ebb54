//! A question as a screen needs it.

use serde::Serialize;

use crate::items::Item;
use crate::report::vector;
use crate::walk::GuardTopic;
use crate::walk::Prompt;
use crate::walk::PromptChoice;
use crate::walk::Taking;
use crate::walk::Topic;

/// A question.
#[derive(Debug, Serialize)]
pub(super) struct Screen {
    /// The same from one walk to the next.
    pub(super) id: String,
    /// What it is called: `gaps`.
    pub(super) title: String,
    /// The item, where a reading of one is asked for.
    pub(super) item: Option<&'static str>,
    /// Whether the walk is over.
    pub(super) finished: bool,
    /// Whether it asks for the name of the next railing.
    pub(super) is_name: bool,
    pub(super) question: String,
    /// The question in a few words.
    pub(super) short: String,
    pub(super) how: Vec<String>,
    pub(super) more: Vec<String>,
    pub(super) choices: Vec<Choice>,
    /// Whether several may be chosen.
    pub(super) several: bool,
    pub(super) examples: Vec<String>,
    pub(super) so_far: Vec<String>,
    /// What no answer at all does; empty where it does nothing.
    pub(super) enter: String,
    /// The drawing, as SVG.
    pub(super) drawing: Option<String>,
    /// Whether a length is asked for, so that keys for fractions and units help.
    pub(super) length: bool,
    /// How many more questions are likely at this railing.
    pub(super) left: usize,
    /// The railing that is spoken of.
    pub(super) place: Option<String>,
}

/// Something to tap.
#[derive(Debug, Serialize)]
pub(super) struct Choice {
    /// What it types.
    pub(super) key: String,
    /// What stands on it.
    pub(super) says: String,
}

impl Screen {
    /// A question, and how many are likely still to come at its railing.
    pub(super) fn of(ask: &Prompt, left: usize) -> Screen {
        let item = item(&ask.topic);
        Screen {
            id: ask.id(),
            title: ask.title.clone(),
            item: item.map(Item::name),
            finished: ask.topic == Topic::Finished,
            is_name: ask.topic == Topic::Name,
            question: ask.question.clone(),
            short: ask.short.clone(),
            how: ask.how.clone(),
            more: ask.more.clone(),
            choices: ask.choices.iter().map(choice).collect(),
            several: ask.taking == Taking::Several,
            examples: ask.examples.clone(),
            so_far: ask.so_far.clone(),
            enter: ask.enter.clone(),
            drawing: ask
                .drawing
                .map(|drawing| vector(drawing.scene()).into_string()),
            length: item.is_some_and(|item| item.info().kind.holds_a_length()),
            left,
            place: ask.place.as_ref().map(|place| place.says()),
        }
    }
}

/// A key of one sign is for typing; what it says stands on the button.
fn choice(choice: &PromptChoice) -> Choice {
    let says = choice.says.trim_matches(['(', ')']);
    let words = match choice.key.as_str() {
        "y" => "yes",
        "n" => "no",
        key => key,
    };
    let says = match (choice.key.chars().count(), says) {
        (_, "") => words.to_owned(),
        (1, says) => says.to_owned(),
        (_, says) => format!("{words} ({says})"),
    };
    Choice {
        key: choice.key.clone(),
        says,
    }
}

/// The item of which a reading is asked for.
fn item(topic: &Topic) -> Option<Item> {
    match topic {
        Topic::Fact(item) | Topic::Guard(GuardTopic::Item(item)) => Some(*item),
        Topic::Guard(GuardTopic::Drop(_)) => Some(Item::Drop),
        Topic::Answer(_) | Topic::Finished | Topic::Guard(_) | Topic::Name | Topic::Rules(_) => {
            None
        }
    }
}
