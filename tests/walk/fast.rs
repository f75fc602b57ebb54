//! How many questions and keys a guard costs. The counts are the point: whoever makes
//! the walk longer sees it here. Enter counts as a key.

use guardrule::walk::Topic;

use crate::walk::support::answered;
use crate::walk::support::report;
use crate::walk::support::rulesets;
use crate::walk::support::walk;

/// What most guards answer.
fn ordinary(id: &str) -> &'static str {
    match id {
        "children" => "2 years",
        "drop beyond" => "y",
        "foothold" | "thing to climb" => "none",
        "gaps" => "3",
        "height" => "37 1/4",
        "infill" => "b",
        "look" | "touch" | "climb" => "n",
        "riser opening" => "n",
        "handrail" => "1",
        "ball stair triangle 6 in" => "y",
        "top of stairs gate" => "s",
        _ => "",
    }
}

/// At which question, counted from 1 with the name, everything about an item is known.
fn place_of(questions: &[String], last: &str) -> usize {
    let at = questions.iter().rposition(|id| id == last);
    at.map_or(usize::MAX, |at| at + 1)
}

#[test]
fn an_inspectors_ordinary_landing_takes_at_most_thirty_keys() {
    let both = rulesets(&["us-dwelling-2018", "small-child-advice"]);
    let mut one = walk("", &both);
    one.answer("none");
    one.answer("hall landing");
    answered(&mut one, &ordinary);
    one.answer("landing");
    let (questions, keys) = answered(&mut one, &ordinary);
    let keys = keys + "landing".len() + 1;
    let report = report(one.text(), &["--rules", "us-dwelling-2018"]);
    assert_eq!(report["guards"][1]["verdict"], "meets", "{}", one.text());
    assert_eq!(report["guards"][1]["guidance"], "meets", "{}", one.text());
    assert_eq!(
        questions,
        [
            "look",
            "touch",
            "drop beyond",
            "infill",
            "gaps",
            "height",
            "climb",
            "post fastening",
            "photo"
        ]
    );
    assert_eq!(keys, 29, "{}", one.text());
}

#[test]
fn a_parents_first_stair_has_its_first_verdicts_within_twelve_questions() {
    let both = rulesets(&["us-dwelling-2018", "small-child-advice"]);
    let stair = |id: &str| match id {
        "children" => "2 years",
        // a parent has no ball of the steps' size
        "ball stair triangle 6 in" => "",
        "stair triangle" => "7 3/4, 10, 1",
        id => ordinary(id),
    };
    let mut one = walk("", &both);
    let mut questions = vec!["children".to_owned(), "railing".to_owned()];
    one.answer("2 years");
    one.answer("stair");
    let (more, keys) = answered(&mut one, &stair);
    questions.extend(more);
    let keys = keys + "2 years".len() + "stair".len() + 2;
    assert!(place_of(&questions, "gaps") <= 12, "{questions:?}");
    assert!(place_of(&questions, "height") <= 12, "{questions:?}");
    assert!(questions.len() <= 20, "{} {questions:?}", questions.len());
    assert!(keys <= 75, "{keys} {questions:?}");
    assert_eq!(one.step().topic, Topic::Name);
}

#[test]
fn a_parents_landing_by_tape_alone_ends_within_twenty_questions() {
    let both = rulesets(&["us-dwelling-2018", "small-child-advice"]);
    let by_tape = |id: &str| match id {
        "gaps" => "",
        "opening" => "3 1/4",
        "bottom gap" => "2",
        "openings checked" => "e",
        id => ordinary(id),
    };
    let mut one = walk("", &both);
    one.answer("2 years");
    one.answer("landing");
    let (questions, _) = answered(&mut one, &by_tape);
    assert!(place_of(&questions, "height") + 2 <= 12, "{questions:?}");
    assert!(questions.len() + 2 <= 20, "{questions:?}");
    let report = report(one.text(), &["--rules", "us-dwelling-2018"]);
    assert_eq!(report["guards"][0]["verdict"], "meets", "{}", one.text());
}

#[test]
fn a_stairwell_in_the_middle_of_forty_takes_at_most_thirty_keys() {
    let law = rulesets(&["us-dwelling-2018"]);
    let stair = |id: &str| match id {
        "height" => "36 1/2",
        "gaps" => "y",
        id => ordinary(id),
    };
    let mut one = walk("", &law);
    one.answer("1, stair");
    answered(&mut one, &stair);
    let mut counts = Vec::new();
    for _ in 2..=20 {
        one.answer("=,");
        let (_, keys) = answered(&mut one, &stair);
        counts.push("=,".len() + 1 + keys);
    }
    let last = counts.pop().expect("counted");
    assert!(counts.iter().all(|count| *count == last), "{counts:?}");
    let report = report(
        one.text(),
        &["--rules", "us-dwelling-2018", "--no-guidance"],
    );
    assert_eq!(report["summary"]["guards"], 20);
    assert_eq!(report["summary"]["meets"], 20, "{}", one.text());
    assert!(last <= 30, "{last}\n{}", one.text());
}
