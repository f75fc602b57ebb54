//! A person who answers anything at all.

use std::ops::ControlFlow;

use guardrule::items::Item;
use guardrule::items::Kind;
use guardrule::items::Verdict;
use guardrule::judge;
use guardrule::judge::Reason;
use guardrule::rules::Ruleset;
use guardrule::survey::InMemory;
use guardrule::survey::Survey;
use guardrule::survey::SurveyFile;
use guardrule::walk::AnswerTopic;
use guardrule::walk::GuardName;
use guardrule::walk::GuardTopic;
use guardrule::walk::Reply;
use guardrule::walk::Topic;
use guardrule::walk::Walk;
use proptest::prelude::*;

use crate::walk::support::item;
use crate::walk::support::rulesets;
use crate::walk::support::walk;

/// What fits anywhere and nowhere.
const ODD: [&str; 33] = [
    "",
    "",
    "",
    "y",
    "n",
    "none",
    "not reached",
    "nr, a dog",
    "back",
    "list",
    "?",
    "help",
    "again",
    "another opening",
    "another foothold",
    "correct height",
    "correct opening 1",
    "correct place",
    "height: 34 5/8 in",
    "infill: cables",
    "no guard",
    "next",
    "skip",
    "note low, \"very\" low",
    "12 ft",
    "unit mm",
    "unit in",
    "= attic but glass",
    "4 in ball passes",
    "=,",
    "= attic",
    "1,250 mm",
    "\u{1b}[2J;=x",
];

const NAMES: [&str; 7] = [
    "landing",
    "2A, stair",
    "deck",
    "=",
    "=, ",
    "=2B, landing",
    "= loft but hb",
];

fn line(topic: &Topic, (kind, pick): (u8, usize)) -> String {
    let odd = ODD[pick % ODD.len()].to_owned();
    let of = |item: Item| {
        let info = item.info();
        if let Kind::Words(words) = info.kind {
            words[pick % words.len()].name.to_owned()
        } else {
            info.examples[pick % info.examples.len()].to_owned()
        }
    };
    if kind < 3 {
        return odd;
    }
    match topic {
        Topic::Answer(AnswerTopic::Place(_)) => ["", "at the newel"][pick % 2].to_owned(),
        Topic::Answer(AnswerTopic::Age) => ["", "m", "y"][pick % 3].to_owned(),
        Topic::Guard(GuardTopic::Ball(..)) | Topic::Guard(GuardTopic::Stick(..)) => {
            ["y", "n", "", "3 in"][pick % 4].to_owned()
        }
        Topic::Guard(GuardTopic::Balls(_)) => {
            ["3", "4", "p", "", "6 in", "none", "4 only"][pick % 7].to_owned()
        }
        Topic::Guard(GuardTopic::ByEye) | Topic::Guard(GuardTopic::Closed) => {
            ["y", "n", "", "y, a lock"][pick % 4].to_owned()
        }
        Topic::Guard(GuardTopic::Contradiction(_)) => {
            ["1", "2", "3", "", "1, a step"][pick % 5].to_owned()
        }
        Topic::Guard(GuardTopic::Climb) => ["n", "1", "2", "1 2", ""][pick % 5].to_owned(),
        Topic::Guard(GuardTopic::Drop(_)) => {
            ["y", "n", "", "9 ft", "cannot see"][pick % 5].to_owned()
        }
        Topic::Guard(GuardTopic::Look) => {
            ["n", "n", "n", "3", "1", "0", "1 3", "5", ""][pick % 9].to_owned()
        }
        Topic::Guard(GuardTopic::Touch) => {
            ["n", "n", "1", "2", "3", "4, loose", ""][pick % 7].to_owned()
        }
        Topic::Name => NAMES[pick % NAMES.len()].to_owned(),
        Topic::Answer(AnswerTopic::Unlikely(_)) | Topic::Answer(AnswerTopic::Slip(_)) => {
            ["y", "n", "", "cm"][pick % 4].to_owned()
        }
        Topic::Answer(AnswerTopic::Unit(_)) | Topic::Answer(AnswerTopic::UnitOf(_)) => {
            ["in", "mm", "", "12 in"][pick % 4].to_owned()
        }
        Topic::Fact(asked)
        | Topic::Guard(GuardTopic::Item(asked))
        | Topic::Answer(AnswerTopic::Reason(asked)) => of(*asked),
        Topic::Finished | Topic::Rules(_) => odd,
    }
}

/// What `check` would still miss at a guard, found anew from the text alone.
fn missing(text: &str, place: &GuardName, rulesets: &[Ruleset]) -> Vec<Item> {
    let files: Vec<Box<dyn SurveyFile>> = vec![Box::new(InMemory::new("s.csv", text.as_bytes()))];
    let survey = Survey::scan(&files).expect("in memory");
    let mut missing = Vec::new();
    let each = &mut |guard: guardrule::survey::Guard| {
        let same = *guard.name == *place.guard && *guard.unit == *place.unit;
        if same {
            let options = judge::Options::default();
            let judged = judge::judge(&guard, survey.facts(), rulesets, options);
            for finding in &judged.findings {
                if finding.verdict != Verdict::NotMeasured {
                    continue;
                }
                for reason in &finding.reasons {
                    if let Reason::NotWritten(item) | Reason::CircumstanceMissing(item) = reason {
                        missing.push(*item);
                    }
                }
            }
        }
        ControlFlow::Continue(())
    };
    survey.guards(each).expect("in memory");
    missing
}

fn asked_for_a_reason(walk: &Walk<'_>, asked: Item) -> bool {
    let Some((guard, judged)) = walk.judged() else {
        return false;
    };
    let waits = judged
        .questions()
        .iter()
        .any(|question| question.item == asked);
    // taken as stiff, and as every one, where nobody says otherwise; what was seen to
    // climb is to be measured; a photograph is for whoever reads the report
    let given = [
        Item::Foothold,
        Item::Infill,
        Item::OpeningsChecked,
        Item::Photo,
        Item::ThingToClimb,
    ]
    .contains(&asked);
    let taken_as_given = given && guard.of(asked).next().is_none();
    // a remedy is counted by it, where something falls short
    let counted = judged.findings.iter().any(|finding| {
        finding.verdict == Verdict::FallsShort && finding.item.counted_by().contains(&asked)
    });
    waits || taken_as_given || counted
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    #[test]
    fn the_file_is_sound_and_nothing_idle_is_asked(
        picks in proptest::collection::vec((0_u8..10, 0_usize..200), 1..70),
        guidance in proptest::bool::ANY,
    ) {
        let ids: &[&str] = if guidance {
            &["us-dwelling-2018", "small-child-advice"]
        } else {
            &["us-dwelling-2018"]
        };
        let rulesets = rulesets(ids);
        let mut walk = walk("", &rulesets);
        for pick in picks {
            let ask = walk.step();
            if let Some((_, judged)) = walk.judged()
                && !judged.dangers.is_empty()
                && !ask.out_of_turn
            {
                let measured = item(&ask.topic).is_some_and(|asked| ![Item::Infill, Item::Photo].contains(&asked));
                let touched = matches!(ask.topic, Topic::Guard(GuardTopic::Balls(_)) | Topic::Guard(GuardTopic::Climb) | Topic::Guard(GuardTopic::Look) | Topic::Guard(GuardTopic::Touch));
                prop_assert!(!measured && !touched, "{:?} beside a danger\n{}", ask.topic, walk.text());
            }
            if let (Some(asked), false) = (item(&ask.topic), ask.out_of_turn) {
                prop_assert!(asked_for_a_reason(&walk, asked), "{asked} for nothing\n{}", walk.text());
            }
            let line = line(&ask.topic, pick);
            for said in walk.answer(&line) {
                if let Reply::Done(done) = said {
                    let open = done.judged.questions();
                    let open: Vec<Item> = open.iter().map(|question| question.item).collect();
                    let missing = missing(walk.text(), &done.place, &rulesets);
                    let unsaid: Vec<_> = missing.iter().filter(|item| !open.contains(item)).collect();
                    prop_assert!(unsaid.is_empty(), "{unsaid:?}\n{}", walk.text());
                }
            }
            prop_assert_eq!(walk.errors(), 0, "{}\n{}", line, walk.text());
            if walk.step().topic == Topic::Finished {
                break;
            }
        }
    }
}
