//! What is asked: the question, how to measure, what to write.

use crate::items::Hole;
use crate::items::Item;
use crate::items::Kind;
use crate::walk::GuardName;
use crate::walk::next_question::Holes;

/// What an answer will be about.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Topic {
    /// A ball of this size at a hole.
    Ball(Item, String),
    /// Something about the survey itself.
    Fact(Item),
    /// Nothing more: the walk is over.
    Finished,
    /// A reading of an item.
    Item(Item),
    /// The next guard's name.
    Name,
    /// Why an item could not be looked at.
    Reason(Item),
    /// Whether another word of an item was a slip, or a new guard starts.
    Slip(Item),
    /// The unit of a number that has none.
    Unit(Item),
    /// Whether an unlikely reading is right.
    Unlikely(Item),
}

/// A question.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Prompt {
    /// What it is about.
    pub topic: Topic,
    /// The guard that is spoken of.
    pub place: Option<GuardName>,
    /// The question itself.
    pub question: String,
    /// How to measure it, in a line or two.
    pub how: Vec<&'static str>,
    /// All there is to say about it.
    pub more: Vec<&'static str>,
    /// The words to choose from.
    pub words: Vec<&'static str>,
    /// Answers as examples.
    pub examples: Vec<String>,
    /// What was written so far.
    pub so_far: Vec<String>,
    /// What Enter alone does.
    pub enter: String,
    /// How many rules wait for it.
    pub waiting: usize,
    /// Whether the person wished to be asked, and not the rules.
    pub out_of_turn: bool,
}

/// Where a ball is to be tried for an opening as such.
const ALL_HOLES: &str = "everywhere: between the infill, under the bottom rail, at both ends";

/// And where the steps of a stair have holes of their own.
const IN_THE_INFILL: &str = "everywhere between the infill and at both ends";

/// Where it is to be tried for other holes.
const BALL_STOPS: [(Item, &str); 5] = [
    (
        Item::BottomGap,
        "all along under the bottom rail (down to the floor: none)",
    ),
    (
        Item::EdgeGap,
        "between the floor's edge and the guard (no gap: none)",
    ),
    (Item::EndGap, "at the gap at the guard's end (no gap: none)"),
    (
        Item::RiserOpening,
        "between all treads (closed risers: none)",
    ),
    (
        Item::StairTriangle,
        "at every step, between riser, tread and bottom rail (closed side: none)",
    ),
];

impl Prompt {
    /// A question with nothing around it.
    pub(super) fn bare(topic: Topic, question: impl Into<String>, enter: &str) -> Prompt {
        Prompt {
            topic,
            place: None,
            question: question.into(),
            how: Vec::new(),
            more: Vec::new(),
            words: Vec::new(),
            examples: Vec::new(),
            so_far: Vec::new(),
            enter: enter.to_owned(),
            waiting: 0,
            out_of_turn: false,
        }
    }

    /// The question for an item, from the table.
    pub(super) fn item(item: Item) -> Prompt {
        let info = item.info();
        let question = match info.question {
            "" => info.means,
            _ if item == Item::Opening => "How wide is the widest opening, with the tape?",
            question => question,
        };
        let mut ask = Prompt::bare(Topic::Item(item), question, "skip");
        // an item that a look answers is told by its words
        let seen = matches!(info.kind, Kind::Words(_)) && item != Item::MovesWhenPushed;
        // where a ball can be tried, it was asked about before
        let by_tape = |how: &&str| info.hole == Hole::No || !how.contains("ball");
        let how = info.how.iter().copied().filter(by_tape);
        ask.how = how.take(if seen { 1 } else { 2 }).collect();
        ask.more = std::iter::once(info.means)
            .chain(info.how.iter().copied())
            .collect();
        ask.words = item.words().iter().map(|word| word.name).collect();
        if ask.words.is_empty() {
            let examples = info.examples.iter().map(|example| (*example).to_owned());
            ask.examples = examples.collect();
        }
        if item == Item::Children {
            // several at once here, where a file wants a row for each
            ask.how = vec!["Months for small children. No children, now or as guests: none."];
            ask.examples = vec![
                "14 months".into(),
                "8 months, 3 years".into(),
                "none".into(),
            ];
        }
        ask
    }

    /// Whether a ball of a size stops at a hole.
    pub(super) fn ball(item: Item, size: &str, by_hand: ByHand, holes: Holes) -> Prompt {
        let ball = match by_hand {
            ByHand::No => format!("a {size} ball"),
            ByHand::Yes => format!("a {size} ball, pushed gently by hand,"),
        };
        let of_item = BALL_STOPS.iter().find(|(of, _)| *of == item);
        let stops = match (of_item, holes) {
            (Some((_, stops)), _) => stops,
            (None, Holes::All) => ALL_HOLES,
            (None, Holes::Infill) => IN_THE_INFILL,
        };
        let question = format!("Does {ball} stop {stops}?");
        let mut ask = Prompt::bare(
            Topic::Ball(item, size.to_owned()),
            question,
            "no ball at hand: the tape",
        );
        ask.how = vec![
            "Anything round of that size will do, or a block cut to it. y: it stops. n: it passes. A length is taken as read with the tape.",
        ];
        ask.more = item.info().how.to_vec();
        ask.words = vec!["y", "n"];
        ask
    }
}

/// Whether a ball is pushed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum ByHand {
    No,
    Yes,
}

/// A ball's answer as a survey has it.
pub(super) fn ball_reading(
    item: Item,
    size: &str,
    stops: bool,
    by_hand: ByHand,
    holes: Holes,
) -> String {
    let mut text = format!("{size} ball {}", if stops { "stops" } else { "passes" });
    // `everywhere` speaks for every hole of the guard, so each must have been asked about
    let all = item == Item::Opening && holes == Holes::All;
    if stops && (all || item == Item::StairTriangle) {
        text.push_str(" everywhere");
    }
    if by_hand == ByHand::Yes {
        text.push_str(" pushed by hand");
    }
    text
}
