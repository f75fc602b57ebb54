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

/// What is answered to the question of an item.
type Answers = fn(&str) -> &'static str;

/// One railing of one person: its name, what is answered to what, and what it may cost.
struct Counted {
    who: &'static str,
    rules: &'static [&'static str],
    /// What this person answers to the facts of the house.
    children: &'static str,
    /// How the railing is called; `=` copies from the one before.
    railings: [(&'static str, Answers); 3],
    /// Questions and keys of each, its name counted in.
    costs: [(usize, usize); 3],
}

/// A stair whose triangle is measured, as nobody carries a 6 in ball.
fn stair_by_numbers(id: &str) -> &'static str {
    match id {
        "ball stair triangle 6 in" => "",
        "stair triangle" => "7 3/4, 10, 1",
        "height" => "36 1/2",
        id => ordinary(id),
    }
}

/// One ball, since the building rules ask for one.
fn of_the_law_alone(id: &str) -> &'static str {
    match id {
        "gaps" => "y",
        id => stair_by_numbers(id),
    }
}

fn with_a_stool(id: &str) -> &'static str {
    match id {
        "climb" => "2",
        "thing to climb" => "18 high 5 away",
        id => ordinary(id),
    }
}

fn typing_units(id: &str) -> &'static str {
    match id {
        "height" => "37 1/4\"",
        id => ordinary(id),
    }
}

fn by_tape(id: &str) -> &'static str {
    match id {
        "gaps" => "",
        "opening" => "3 1/4",
        "bottom gap" => "2",
        "openings checked" => "e",
        id => ordinary(id),
    }
}

/// Three railings each of a parent, an inspector and a landlord. The counts stand here
/// so that a change of them is seen; Enter is a key.
#[test]
fn three_railings_each_of_a_parent_an_inspector_and_a_landlord() {
    const BOTH: &[&str] = &["us-dwelling-2018", "small-child-advice"];
    const LAW: &[&str] = &["us-dwelling-2018"];
    let people = [
        Counted {
            who: "parent",
            rules: BOTH,
            children: "2 years",
            railings: [
                ("landing", by_tape),
                ("stair", stair_by_numbers),
                ("deck", with_a_stool),
            ],
            costs: [(13, 38), (16, 48), (11, 41)],
        },
        Counted {
            who: "inspector",
            rules: BOTH,
            children: "none",
            railings: [
                ("landing", ordinary),
                ("2A, la", typing_units),
                ("= gallery", ordinary),
            ],
            costs: [(10, 29), (10, 29), (8, 27)],
        },
        Counted {
            who: "landlord",
            rules: LAW,
            children: "",
            railings: [
                ("1, stair", of_the_law_alone),
                ("=,", of_the_law_alone),
                ("=,", of_the_law_alone),
            ],
            costs: [(13, 46), (10, 34), (10, 34)],
        },
    ];
    for person in people {
        let rules = rulesets(person.rules);
        let mut one = walk("", &rules);
        if one.step().id() == "children" {
            one.answer(person.children);
        }
        let mut counted = Vec::new();
        for (name, answers) in person.railings {
            one.answer(name);
            let (questions, keys) = answered(&mut one, &answers);
            counted.push((questions.len() + 1, keys + name.chars().count() + 1));
        }
        assert_eq!(counted, person.costs, "{}\n{}", person.who, one.text());
    }
}
