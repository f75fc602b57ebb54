//! The words of the questions that are no item's own.

use crate::items::Drawing;
use crate::items::Item;
use crate::items::OpeningsCheckedWord;
use crate::items::PlaceWord;
use crate::quantities::Length;
use crate::quantities::LengthUnit;
use crate::reading::parse_length;
use crate::survey::Guard;
use crate::walk::AnswerTopic;
use crate::walk::GuardTopic;
use crate::walk::Prompt;
use crate::walk::PromptChoice;
use crate::walk::Taking;
use crate::walk::Topic;
use crate::walk::plan::gives_way;
use crate::walk::plan::on_a_stair;
use crate::walk::question::ByHand;

/// An item and the word that is written of it.
type SeenRow = (Item, &'static str);

/// What the eye sees, by its key. Behind the key: item and word; none for nothing seen.
pub(super) const LOOK: [(&str, &str, Option<SeenRow>); 9] = [
    ("0", "no railing here", Some((Item::Guard, "none"))),
    (
        "1",
        "a bar or panel is missing",
        Some((Item::InfillLoose, "missing")),
    ),
    (
        "2",
        "a post is off the floor",
        Some((Item::PostFastening, "missing")),
    ),
    ("3", "paint that flakes", Some((Item::Paint, "flaking"))),
    ("4", "broken glass", Some((Item::Condition, "broken glass"))),
    (
        "5",
        "rot at a post, rail or fixing",
        Some((Item::Condition, "rot")),
    ),
    ("6", "deep rust there", Some((Item::Condition, "deep rust"))),
    ("7", "cracks there", Some((Item::Condition, "cracks"))),
    ("n", "nothing of these", None),
];

/// The same in few words, for who has read it.
const LOOK_SHORT: [&str; 9] = [
    "no railing",
    "bar missing",
    "post off the floor",
    "flaking",
    "broken glass",
    "rot",
    "deep rust",
    "cracks",
    "nothing",
];

/// What moves, by its key, with what is written then.
pub(super) const TOUCH: [(&str, &str, &[SeenRow]); 5] = [
    (
        "n",
        "nothing",
        &[(Item::MovesWhenPushed, "no"), (Item::InfillLoose, "no")],
    ),
    (
        "1",
        "it moves a little",
        &[(Item::MovesWhenPushed, "a little")],
    ),
    ("2", "it moves a lot", &[(Item::MovesWhenPushed, "a lot")]),
    (
        "3",
        "one bar turns",
        &[(Item::MovesWhenPushed, "no"), (Item::InfillLoose, "one")],
    ),
    (
        "4",
        "several bars turn",
        &[
            (Item::MovesWhenPushed, "no"),
            (Item::InfillLoose, "several"),
        ],
    ),
];

/// What is wrong where a stick and the tape contradict each other, by its key.
const WRONG: [(&str, &str); 3] = [
    ("1", "they are of two places"),
    ("2", "the tape was wrong"),
    ("3", "the stick was wrong"),
];

/// Where a ball is tried that is no ball of all holes.
const BALL_STOPS: [(Item, &str); 3] = [
    (
        Item::EdgeGap,
        "between the floor's edge and the railing (no gap: none)",
    ),
    (
        Item::EndGap,
        "at the gap at the railing's end (no gap: none)",
    ),
    (
        Item::StairTriangle,
        "at every step, between riser, tread and bottom rail? Closed side: none",
    ),
];

/// A size as a person reads it whose tape has this unit: `3 1/2 in (88.9 mm)`.
pub(super) fn size_in(written: &str, unit: Option<LengthUnit>) -> String {
    let (Some(unit), Ok(size)) = (unit, parse_length(written, None)) else {
        return written.to_owned();
    };
    match (unit.is_imperial(), size.unit.is_imperial()) {
        (true, false) => format!("{written} ({})", down(size.length, LengthUnit::Inch)),
        (false, true) => {
            // rounded down, so that one that stops proves no less; no ball is measured more finely
            const TENTH: i64 = 100_000;
            let down = size.length.nanometres().div_euclid(TENTH) * TENTH;
            let down = Length::from_nanometres(down).millimetre_digits();
            format!("{written} ({down} mm)")
        }
        (true, true) | (false, false) => written.to_owned(),
    }
}

fn down(length: Length, unit: LengthUnit) -> String {
    length.readable_down(unit)
}

pub(super) fn look(guard: &Guard) -> Prompt {
    let choices: Vec<(&str, &str)> = LOOK.iter().map(|(key, says, _)| (*key, *says)).collect();
    let mut ask = Prompt::bare(
        Topic::Guard(GuardTopic::Look),
        "Look only, from a step away. What do you see?",
        "not looked at",
    )
    .choosing(Taking::Several, &choices)
    .in_short(&LOOK_SHORT);
    ask.more = vec![
        "Touch nothing yet. Look along the whole of it: are all bars and panels there, does each post stand on the floor, is any wood soft or split, any metal eaten through, any glass broken?".to_owned(),
        "Several may be true: 1 3. A comma and words of your own are kept as a note.".to_owned(),
    ];
    if guard.of(Item::Built).next().is_none() {
        ask.more.push(
            "Paint from before 1978 may hold lead: do not scrape, sand or drill it.".to_owned(),
        );
    }
    ask
}

pub(super) fn touch() -> Prompt {
    let choices: Vec<(&str, &str)> = TOUCH.iter().map(|(key, says, _)| (*key, *says)).collect();
    let mut ask = Prompt::bare(
        Topic::Guard(GuardTopic::Touch),
        "Stand firmly, well back. Push once, gently, with one hand at the top, near a post; then twist each bar gently. Stop at the first movement. What moves?",
        "not tried",
    )
    .choosing(Taking::One, &choices)
    .in_short(&["nothing", "a little", "a lot", "one bar", "several"])
    .titled("touch", "Push once, twist each bar, gently. What moves?");
    ask.more = vec![
        "Never lean on it, never pull at it, never push with more than one hand.".to_owned(),
        "If it moves a lot, let go and step back: nothing more is measured here.".to_owned(),
    ];
    ask
}

pub(super) fn drop(guard: &Guard, size: &str, stop: ByEye) -> Prompt {
    let stair = guard
        .of(Item::Place)
        .any(|(_, o)| o.word() == Some(PlaceWord::Stair));
    let (question, words) = match (stop, stair) {
        (ByEye::Yes, false) => (
            format!(
                "Stay back from the edge and measure nothing there. By eye: is it more than {size} down?"
            ),
            "Where you cannot see down: cannot see",
        ),
        (ByEye::Yes, true) => (
            format!(
                "Stay back from the edge and measure nothing there. By eye, from the highest step there: is it more than {size} down?"
            ),
            "Where you cannot see down: cannot see",
        ),
        (ByEye::No, false) => (
            format!("Is it more than {size} down at the edge, at its deepest? Never lean over."),
            "Or what the tape reads.",
        ),
        (ByEye::No, true) => (
            format!(
                "Is it more than {size} down at the edge? On a stair from the highest step that it runs along. Never lean over."
            ),
            "Or what the tape reads.",
        ),
    };
    let mut ask = Prompt::item(Item::Drop);
    ask.topic = Topic::Guard(GuardTopic::Drop(size.to_owned()));
    ask.question = question;
    ask.short = match stop {
        ByEye::Yes => {
            format!("Stay back and measure nothing there. By eye: more than {size} down?")
        }
        ByEye::No => format!("More than {size} down at its deepest?"),
    };
    ask.how = vec![words.to_owned()];
    ask.choices = vec![PromptChoice::new("y", ""), PromptChoice::new("n", "")];
    ask.taking = Taking::ByLetters;
    ask.examples = Vec::new();
    ask
}

/// Whether a drop is told by eye alone.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum ByEye {
    No,
    Yes,
}

pub(super) fn balls(guard: &Guard, sizes: &[String], unit: Option<LengthUnit>) -> Prompt {
    let (stair, pushed) = (on_a_stair(guard), gives_way(guard));
    let some = some_out_of_reach(guard);
    let place = if some {
        "at all the gaps that you can reach"
    } else if stair {
        "between the bars and at both ends"
    } else {
        "everywhere: between the bars, under the bottom rail, at both ends"
    };
    let hand = if pushed {
        ", each pushed gently by hand"
    } else {
        ". Press nothing"
    };
    let (question, short) = if sizes.len() == 1 {
        let size = sizes.first().map_or("", String::as_str);
        let size = size_in(size, unit);
        let push = if pushed {
            ", pushed gently by hand,"
        } else {
            ""
        };
        (
            format!("Does a {size} ball{push} stop {place}?"),
            format!("Does a {size} ball{push} stop everywhere?"),
        )
    } else {
        (
            format!(
                "Try balls from the largest down, {place}{hand}. Which is the smallest that stops everywhere?"
            ),
            if some {
                "And at all the gaps that you can reach: the smallest ball that stops?"
            } else {
                "The smallest ball that stops everywhere?"
            }
            .to_owned(),
        )
    };
    let mut ask = Prompt::bare(
        Topic::Guard(GuardTopic::Balls(sizes.to_vec())),
        question,
        "no ball at hand: the tape",
    );
    ask.title = "gaps".to_owned();
    ask.short = short;
    ask.taking = Taking::ByLetters;
    ask.choices = if sizes.len() == 1 {
        vec![
            PromptChoice::new("y", "it stops"),
            PromptChoice::new("n", "it passes somewhere"),
        ]
    } else {
        let mut all: Vec<PromptChoice> = sizes
            .iter()
            .map(|size| {
                let shown = size_in(size, unit);
                let says = shown.strip_prefix(size.as_str()).unwrap_or("").trim();
                PromptChoice::new(size.clone(), says)
            })
            .collect();
        all.push(PromptChoice::new("p", "all pass"));
        all
    };
    ask.how = vec![
        "Anything round of that size, or a disc of card held flat in the hole like a lid."
            .to_owned(),
    ];
    ask.more = vec![
        "Measure across the ball first: one of another size settles nothing.".to_owned(),
        "If you had no smaller ball, write only behind it: 4 in only.".to_owned(),
        "Some of them out of reach: cannot reach, and why; then those are tried that you reach."
            .to_owned(),
        "No holes at all, a closed wall or panel: none.".to_owned(),
    ];
    ask.drawing = Some(Drawing::Ball);
    ask
}

/// Whether it was said that some of the gaps could not be looked at.
pub(super) fn some_out_of_reach(guard: &Guard) -> bool {
    let mut checked = guard.of(Item::OpeningsChecked);
    checked.any(|(_, o)| {
        o.word()
            .is_some_and(|word: OpeningsCheckedWord| word != OpeningsCheckedWord::EveryOne)
    })
}

/// Whether a ball of a size stops at a hole of its own.
pub(super) fn ball(item: Item, size: &str, by_hand: ByHand, unit: Option<LengthUnit>) -> Prompt {
    let push = match by_hand {
        ByHand::No => "",
        ByHand::Yes => ", pushed gently by hand,",
    };
    let stops = BALL_STOPS.iter().find(|(of, _)| *of == item);
    let stops = stops.map_or("everywhere there", |(_, stops)| *stops);
    let end = if stops.contains('?') { "." } else { "?" };
    let size_shown = size_in(size, unit);
    let mut ask = Prompt::item(item);
    ask.topic = Topic::Guard(GuardTopic::Ball(item, size.to_owned()));
    ask.question = format!("Does a {size_shown} ball{push} stop {stops}{end}");
    ask.short = ask.question.clone();
    ask.how = Vec::new();
    ask.choices = vec![
        PromptChoice::new("y", "stops"),
        PromptChoice::new("n", "passes"),
    ];
    ask.taking = Taking::ByLetters;
    ask.examples = Vec::new();
    ask.enter = "no ball at hand: the tape".to_owned();
    ask
}

pub(super) fn stick(item: Item, size: &str, unit: Option<LengthUnit>) -> Prompt {
    let shown = size_in(size, unit);
    let mut ask = Prompt::bare(
        Topic::Guard(GuardTopic::Stick(item, size.to_owned())),
        format!("Cut a stick to {shown} and stand it upright on the floor at the lowest place. Does the railing reach its top?"),
        "no stick at hand",
    )
    .choosing(Taking::One, &[("y", "it reaches"), ("n", "it is below")])
    .titled("stick", &format!("Does it reach the top of a stick of {shown}?"));
    ask.drawing = Some(Drawing::Height);
    ask.more = vec!["A stick has no doubt of its own: it settles what the tape cannot.".to_owned()];
    ask
}

pub(super) fn contradiction(item: Item, guard: &Guard) -> Prompt {
    let written: Vec<&str> = guard.of(item).map(|(_, o)| &*o.written).collect();
    let mut ask = Prompt::bare(
        Topic::Guard(GuardTopic::Contradiction(item)),
        format!(
            "At one place these cannot all be so: {}. What is it?",
            written.join("; ")
        ),
        "not known; all stay, the worse decides",
    )
    .choosing(Taking::One, &WRONG)
    .titled(item.name(), "These cannot all be so. What is it?");
    ask.more = vec![
        "A stick that reaches the top, and a tape that reads less: at the same place one of them is wrong. Of two places both may be right, and the lower one counts.".to_owned(),
        "What was wrong is asked for once more, and written in its place.".to_owned(),
    ];
    ask
}

/// Where the tape was held, of two places.
pub(super) fn place_of(item: Item) -> Prompt {
    Prompt::bare(
        Topic::Answer(AnswerTopic::Place(item)),
        "At which place was the tape?",
        "no words",
    )
    .titled(item.name(), "At which place was the tape?")
}

pub(super) fn climb(level_bars: bool) -> Prompt {
    let mut ask = if level_bars {
        Prompt::bare(
            Topic::Guard(GuardTopic::Climb),
            "Level bars can be climbed, so only this: does anything to stand on stand near it?",
            "not looked at",
        )
        .choosing(Taking::One, &[("n", "no"), ("2", "something near it")])
        .titled("climb", "Anything to stand on near it?")
    } else {
        Prompt::bare(
            Topic::Guard(GuardTopic::Climb),
            "From a child's height: is there anything level to stand on, on the railing or near it?",
            "not looked at",
        )
        .choosing(
            Taking::Several,
            &[("n", "nothing"), ("1", "on the railing"), ("2", "near it")],
        )
        .in_short(&["nothing", "on it", "near it"])
        .titled("climb", "Anything level to stand on?")
    };
    ask.drawing = Some(if level_bars {
        Drawing::ThingToClimb
    } else {
        Drawing::Foothold
    });
    ask.more = vec![
        "On the railing: a rail, a ledge, a hole that takes a foot. Near it: a chair, a box, a planter, a bed.".to_owned(),
        "If you moved it away just now: n, and tell in a note what it was.".to_owned(),
    ];
    ask
}

pub(super) fn closed() -> Prompt {
    let mut ask = Prompt::bare(
        Topic::Guard(GuardTopic::Closed),
        "Is the way to it closed now?",
        "on to the next railing",
    )
    .choosing(Taking::ByLetters, &[("y", ""), ("n", "")]);
    ask.more = vec![
        "A comma and words of your own are kept as a note: y, kitchen door locked.".to_owned(),
        "Never lock or block a way out in a fire.".to_owned(),
    ];
    ask
}

pub(super) fn by_eye() -> Prompt {
    Prompt::bare(
        Topic::Guard(GuardTopic::ByEye),
        "Three things can be seen from where it is safe, nothing touched: how far down, what fills it, a photograph. Go on with them?",
        "on to the next railing",
    )
    .choosing(Taking::ByLetters, &[("y", "")])
}

/// The question for an item as the walk puts it, with the guard known.
pub(super) fn of_item(item: Item, guard: &Guard, unit: Option<LengthUnit>) -> Prompt {
    let mut ask = Prompt::item(item);
    let stair = on_a_stair(guard) && guard.of(Item::Place).next().is_some();
    let mut put = |question: &str, short: &str, how: &[&str]| {
        question.clone_into(&mut ask.question);
        short.clone_into(&mut ask.short);
        ask.how = how.iter().map(|how| (*how).to_owned()).collect();
    };
    if item == Item::Height && stair {
        put(
            "How high is the top at its lowest, upright from the nose of a step?",
            "How high is the top at its lowest?",
            &[],
        );
        ask.drawing = Some(Drawing::HeightOnStair);
    } else if item == Item::Height {
        put(
            "How high is the top of the railing at its lowest?",
            "How high is the top at its lowest?",
            &["Tape on the floor, upright."],
        );
    } else if item == Item::Opening {
        put(
            "How wide is the widest gap, with the tape?",
            "How wide is the widest gap?",
            &[
                "Square between the faces, at top, middle and bottom.",
                "No plain gap: shape",
            ],
        );
        ask.drawing = Some(if stair {
            Drawing::RakedGap
        } else {
            Drawing::Tape
        });
    } else if item == Item::OpeningsChecked {
        put(
            "Was that the widest of all, or only of some?",
            "Was that the widest of all?",
            &[],
        );
    } else if item == Item::StairTriangle {
        put(
            "Rise, going (level, nose to nose) and lift (from the line of the noses up to the rail's underside), where it is largest?",
            "Rise, going and lift at the largest?",
            &["Three numbers in this order: 7 3/4, 10, 1. Closed side: none"],
        );
        ask.examples = Vec::new();
    } else if item == Item::RiserOpening {
        put(
            "Are the steps open at the back?",
            "Are the steps open at the back?",
            &["n closed, or what the tape reads between two treads"],
        );
        ask.examples = Vec::new();
    } else if item == Item::Handrail {
        put(
            "What does a hand hold here?",
            "What does a hand hold here?",
            &[],
        );
    } else if item == Item::Infill {
        put(
            "What fills it between floor and top rail?",
            "What fills it?",
            &[],
        );
        if let Some(uprights) = ask
            .choices
            .iter_mut()
            .find(|choice| choice.key == "balusters")
        {
            "upright bars".clone_into(&mut uprights.says);
        }
    } else if item == Item::PostFastening {
        put(
            "What holds the posts? Look at the foot, inside and outside; take nothing apart.",
            "What holds the posts?",
            &[],
        );
        "holds".clone_into(&mut ask.title);
    } else if item == Item::Photo {
        put(
            "A photograph of it? The name of its file.",
            "A photograph of it?",
            &[],
        );
        "none".clone_into(&mut ask.enter);
        ask.examples = Vec::new();
    } else if item == Item::Foothold {
        put(
            "How high above the floor is it, and how deep?",
            "How high above the floor is it, and how deep?",
            &[],
        );
        "not measured".clone_into(&mut ask.enter);
    } else if item == Item::ThingToClimb {
        put(
            "How high is it, and how far away?",
            "How high is it, and how far away?",
            &["Words behind a comma are kept. Moved it away just now: none"],
        );
        "not measured".clone_into(&mut ask.enter);
    }
    if item.info().kind.holds_a_length() && unit.is_some_and(LengthUnit::is_imperial) {
        ask.fractions = &crate::walk::question::SIXTEENTHS;
    }
    ask
}
