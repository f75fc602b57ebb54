//! A question as a screen needs it.

use serde::Serialize;

use crate::items::Item;
use crate::items::Pictured;
use crate::report::vector;
use crate::walk::Prompt;
use crate::walk::Topic;

/// A question.
#[derive(Debug, Serialize)]
pub(super) struct Screen {
    /// What it is called: the same from one walk to the next.
    pub(super) id: String,
    /// The item, where it is about one.
    pub(super) item: Option<&'static str>,
    /// Whether the walk is over.
    pub(super) finished: bool,
    /// Whether it asks for the name of the next railing.
    pub(super) is_name: bool,
    pub(super) question: String,
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
    /// The screen of a question; `left` of them are likely.
    pub(super) fn of(ask: &Prompt, left: usize) -> Screen {
        let item = item(&ask.topic);
        let measured = matches!(ask.topic, Topic::Item(_) | Topic::Fact(_) | Topic::Ball(..));
        Screen {
            id: format!("{:?}", ask.topic),
            item: item.map(Item::name),
            finished: ask.topic == Topic::Finished,
            is_name: ask.topic == Topic::Name,
            question: ask.question.clone(),
            how: ask.how.iter().map(|how| (*how).to_owned()).collect(),
            more: ask.more.iter().map(|more| (*more).to_owned()).collect(),
            choices: choices(ask),
            several: false,
            examples: ask.examples.clone(),
            so_far: ask.so_far.clone(),
            enter: ask.enter.clone(),
            drawing: item.filter(|_| measured).and_then(drawing),
            length: item.is_some_and(|item| measured && item.info().kind.holds_a_length()),
            left,
            place: ask.place.as_ref().map(|place| place.says()),
        }
    }
}

fn choices(ask: &Prompt) -> Vec<Choice> {
    let choice = |word: &&str| Choice {
        key: (*word).to_owned(),
        says: (*word).to_owned(),
    };
    ask.words.iter().map(choice).collect()
}

/// The item that a question is about.
fn item(topic: &Topic) -> Option<Item> {
    match topic {
        Topic::Ball(item, _)
        | Topic::Fact(item)
        | Topic::Item(item)
        | Topic::Reason(item)
        | Topic::Slip(item)
        | Topic::Unit(item)
        | Topic::Unlikely(item) => Some(*item),
        Topic::Finished | Topic::Name => None,
    }
}

fn drawing(item: Item) -> Option<String> {
    match item.info().pictured {
        Pictured::By([first, ..]) => Some(vector(first.scene()).into_string()),
        Pictured::By([]) | Pictured::Not(_) => None,
    }
}
