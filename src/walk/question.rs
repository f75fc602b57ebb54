//! What is asked: the question, how to measure, what to write.

use std::fmt;

use crate::items::Drawing;
use crate::items::Item;
use crate::items::Kind;
use crate::items::Pictured;
use crate::items::Word;
use crate::walk::GuardName;

/// What an answer will be about.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Topic {
    /// An answer that was given just now.
    Answer(AnswerTopic),
    /// Something about the survey itself.
    Fact(Item),
    /// Nothing more: the walk is over.
    Finished,
    /// The guard that is spoken of.
    Guard(GuardTopic),
    /// The next guard's name.
    Name,
    /// Which rulesets hold here: where, what kind of home, which of several.
    Rules(RulesTopic),
}

/// What is asked of an answer that was given just now: never the same twice.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum AnswerTopic {
    /// Whether a bare number means months or years.
    Age,
    /// Where it was measured, of two that cannot both hold at one place.
    Place(Item),
    /// Why an item could not be looked at.
    Reason(Item),
    /// Whether another word of an item was a slip, or a new guard starts.
    Slip(Item),
    /// The unit of a number that has none.
    Unit(Item),
    /// The unit of a number that was written before the unit was mended.
    UnitOf(Item),
    /// Whether an unlikely reading is right.
    Unlikely(Item),
}

/// What is asked of a guard, each at most once.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum GuardTopic {
    /// A ball of this size at one hole: it stops, or it passes.
    Ball(Item, String),
    /// Balls of these sizes, largest first: the smallest that stops everywhere.
    Balls(Vec<String>),
    /// Whether to go on with what the eye tells, after a danger.
    ByEye,
    /// What could be climbed, on the guard and near it.
    Climb,
    /// Whether the way to a danger is closed.
    Closed,
    /// What is wrong where a gauge and the tape contradict each other.
    Contradiction(Item),
    /// Whether the drop is above this.
    Drop(String),
    /// A reading of an item.
    Item(Item),
    /// What the eye sees from a step away.
    Look,
    /// Whether a stick of this length stands under the top.
    Stick(Item, String),
    /// What moves when it is pushed and twisted gently.
    Touch,
}

/// A question about a guard by its kind: what was passed over is not asked again.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Asking {
    /// A ball at this hole.
    Ball(Item),
    /// Balls at all holes.
    Balls,
    ByEye,
    Climb,
    Closed,
    Contradiction(Item),
    Drop,
    Item(Item),
    Look,
    Stick(Item),
    Touch,
}

impl GuardTopic {
    /// Its kind.
    pub(super) fn asking(&self) -> Asking {
        match self {
            GuardTopic::Ball(item, _) => Asking::Ball(*item),
            GuardTopic::Balls(_) => Asking::Balls,
            GuardTopic::ByEye => Asking::ByEye,
            GuardTopic::Climb => Asking::Climb,
            GuardTopic::Closed => Asking::Closed,
            GuardTopic::Contradiction(item) => Asking::Contradiction(*item),
            GuardTopic::Drop(_) => Asking::Drop,
            GuardTopic::Item(item) => Asking::Item(*item),
            GuardTopic::Look => Asking::Look,
            GuardTopic::Stick(item, _) => Asking::Stick(*item),
            GuardTopic::Touch => Asking::Touch,
        }
    }

    /// The item whose reading would answer it as well.
    #[must_use]
    pub fn item(&self) -> Option<Item> {
        self.asking().item()
    }
}

impl Asking {
    /// The item whose reading would answer it as well.
    pub(super) fn item(self) -> Option<Item> {
        match self {
            Asking::Ball(item) | Asking::Item(item) | Asking::Stick(item) => Some(item),
            Asking::Balls => Some(Item::Opening),
            Asking::Drop => Some(Item::Drop),
            Asking::ByEye
            | Asking::Climb
            | Asking::Closed
            | Asking::Contradiction(_)
            | Asking::Look
            | Asking::Touch => None,
        }
    }
}

/// What is asked to find the rulesets that hold.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RulesTopic {
    /// Country, and state or province.
    Country,
    /// A house or a flat.
    Home,
    /// Which of several.
    Which,
}

/// A choice that can be tapped or typed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PromptChoice {
    /// What to type.
    pub key: String,
    /// What it says; empty where the key says it.
    pub says: String,
    /// The same for who has read it before.
    pub short: String,
}

impl PromptChoice {
    pub(super) fn new(key: impl Into<String>, says: impl Into<String>) -> PromptChoice {
        let says = says.into();
        PromptChoice {
            key: key.into(),
            short: says.clone(),
            says,
        }
    }
}

/// How the choices of a question are taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Taking {
    /// One of them, by its key.
    One,
    /// One of a list of words, by its first letters or its number in the list.
    ByNumber,
    /// One of a list of words, by its first letters: a digit means something else.
    ByLetters,
    /// Several of them.
    Several,
}

/// A question: all that a screen needs to put it.
///
/// An answer goes to [`Walk::answer`](crate::walk::Walk::answer) as text: the key of
/// a choice, a reading, nothing at all for what stands in `enter`.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Prompt {
    /// What it is about.
    pub topic: Topic,
    /// The guard that is spoken of.
    pub place: Option<GuardName>,
    /// What it is called: `gaps`.
    pub title: String,
    /// The question itself.
    pub question: String,
    /// The question in a few words, for who has answered it before.
    pub short: String,
    /// How to measure it, in a line or two.
    pub how: Vec<String>,
    /// All there is to say about it.
    pub more: Vec<String>,
    /// What to choose from.
    pub choices: Vec<PromptChoice>,
    /// How the choices are taken.
    pub taking: Taking,
    /// Answers as examples.
    pub examples: Vec<String>,
    /// What was written so far.
    pub so_far: Vec<String>,
    /// What Enter alone does; empty where it does nothing.
    pub enter: String,
    /// The drawing that shows it; its name is that of its SVG.
    pub drawing: Option<Drawing>,
    /// Keys for fractions, where the number is one of inches: `1/16` to `15/16`.
    pub fractions: &'static [&'static str],
    /// How many rules wait for it.
    pub waiting: usize,
    /// Whether the person wished to be asked, and not the rules.
    pub out_of_turn: bool,
}

/// The marks of an inch tape between two inches.
pub(super) const SIXTEENTHS: [&str; 15] = [
    "1/16", "1/8", "3/16", "1/4", "5/16", "3/8", "7/16", "1/2", "9/16", "5/8", "11/16", "3/4",
    "13/16", "7/8", "15/16",
];

impl fmt::Display for Topic {
    /// A name for the question that stays the same from one walk to the next.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Topic::Answer(topic) => topic.fmt(f),
            Topic::Fact(item) => f.write_str(item.name()),
            Topic::Finished => f.write_str("finished"),
            Topic::Guard(topic) => topic.fmt(f),
            Topic::Name => f.write_str("railing"),
            Topic::Rules(RulesTopic::Country) => f.write_str("country"),
            Topic::Rules(RulesTopic::Home) => f.write_str("home"),
            Topic::Rules(RulesTopic::Which) => f.write_str("which rules"),
        }
    }
}

impl fmt::Display for GuardTopic {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            GuardTopic::Ball(item, size) => write!(f, "ball {item} {size}"),
            GuardTopic::Balls(_) => f.write_str("gaps"),
            GuardTopic::ByEye => f.write_str("by eye"),
            GuardTopic::Climb => f.write_str("climb"),
            GuardTopic::Closed => f.write_str("closed"),
            GuardTopic::Contradiction(item) => write!(f, "contradiction {item}"),
            GuardTopic::Drop(_) => f.write_str("drop beyond"),
            GuardTopic::Item(item) => f.write_str(item.name()),
            GuardTopic::Look => f.write_str("look"),
            GuardTopic::Stick(item, _) => write!(f, "stick {item}"),
            GuardTopic::Touch => f.write_str("touch"),
        }
    }
}

impl fmt::Display for AnswerTopic {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            AnswerTopic::Age => f.write_str("age"),
            AnswerTopic::Place(item) => write!(f, "place of {item}"),
            AnswerTopic::Reason(item) => write!(f, "reason {item}"),
            AnswerTopic::Slip(item) => write!(f, "slip {item}"),
            AnswerTopic::Unit(item) => write!(f, "unit {item}"),
            AnswerTopic::UnitOf(item) => write!(f, "unit of {item}"),
            AnswerTopic::Unlikely(item) => write!(f, "unlikely {item}"),
        }
    }
}

impl Prompt {
    /// A question with nothing around it.
    pub(super) fn bare(topic: Topic, question: impl Into<String>, enter: &str) -> Prompt {
        let question = question.into();
        Prompt {
            title: topic.to_string(),
            topic,
            place: None,
            short: question.clone(),
            question,
            how: Vec::new(),
            more: Vec::new(),
            choices: Vec::new(),
            taking: Taking::One,
            examples: Vec::new(),
            so_far: Vec::new(),
            enter: enter.to_owned(),
            drawing: None,
            fractions: &[],
            waiting: 0,
            out_of_turn: false,
        }
    }

    /// The same with choices, each a key and what it says.
    pub(super) fn choosing(mut self, taking: Taking, choices: &[(&str, &str)]) -> Prompt {
        self.taking = taking;
        self.choices = choices
            .iter()
            .map(|(key, says)| PromptChoice::new(*key, *says))
            .collect();
        self
    }

    /// The same with shorter words of the choices, in their order.
    pub(super) fn in_short(mut self, short: &[&str]) -> Prompt {
        for (choice, short) in self.choices.iter_mut().zip(short) {
            (*short).clone_into(&mut choice.short);
        }
        self
    }

    /// The same with a line on how to do it.
    pub(super) fn with_how(mut self, how: &str) -> Prompt {
        self.how.push(how.to_owned());
        self
    }

    /// The same, called so.
    pub(super) fn titled(mut self, title: &str, short: &str) -> Prompt {
        title.clone_into(&mut self.title);
        short.clone_into(&mut self.short);
        self
    }

    /// The name of the question, the same from one walk to the next: `gaps`.
    #[must_use]
    pub fn id(&self) -> String {
        self.topic.to_string()
    }

    /// Whether nothing has to be answered: Enter goes on.
    #[must_use]
    pub fn can_be_skipped(&self) -> bool {
        !self.enter.is_empty()
    }

    /// The question for an item, from the table.
    pub(super) fn item(item: Item) -> Prompt {
        let info = item.info();
        let question = match info.question {
            "" => info.means,
            question => question,
        };
        let mut ask = Prompt::bare(Topic::Guard(GuardTopic::Item(item)), question, "skip");
        // an item that a look answers is told by its words
        let seen = matches!(info.kind, Kind::Words(_));
        let how = info.how.iter().map(|how| (*how).to_owned());
        ask.how = how.take(if seen { 1 } else { 2 }).collect();
        let means = std::iter::once(info.means);
        ask.more = means
            .chain(info.how.iter().copied())
            .map(str::to_owned)
            .collect();
        ask.drawing = match info.pictured {
            Pictured::By(drawings) => drawings.first().copied(),
            Pictured::Not(_) => None,
        };
        if let Kind::Words(words) = info.kind {
            ask.taking = if digits_are_words(words) {
                Taking::ByLetters
            } else {
                Taking::ByNumber
            };
            ask.choices = words
                .iter()
                .map(|word| PromptChoice::new(word.name, ""))
                .collect();
        } else {
            let plain = |example: &&&str| example.starts_with(|c: char| c.is_ascii_digit());
            let examples = info.examples.iter();
            ask.examples = if info.hole == crate::items::Hole::No {
                examples.map(|example| (*example).to_owned()).collect()
            } else {
                examples
                    .filter(plain)
                    .take(2)
                    .map(|example| (*example).to_owned())
                    .collect()
            };
        }
        ask
    }
}

/// Whether a word of the list is also called by a digit, so that digits cannot count the list.
pub(super) fn digits_are_words(words: &[Word]) -> bool {
    let digit = |text: &&&str| text.starts_with(|c: char| c.is_ascii_digit());
    words
        .iter()
        .any(|word| word.synonyms.iter().any(|other| digit(&other)))
}

/// Whether a ball is pushed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum ByHand {
    No,
    Yes,
}
