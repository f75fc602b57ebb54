//! Whoever stands at a railing that gives way is sent away from it.

use guardrule::items::Item;
use guardrule::walk::GuardTopic;
use guardrule::walk::Reply;
use guardrule::walk::Topic;

use crate::walk::support::asked;
use crate::walk::support::refusals;
use crate::walk::support::report;
use crate::walk::support::rulesets;
use crate::walk::support::typed;
use crate::walk::support::walk;

fn stops(said: &[Reply<'_>]) -> bool {
    said.iter().any(|said| matches!(said, Reply::Stop(..)))
}

#[test]
fn a_danger_that_the_eye_sees_skips_the_push_and_all_measuring() {
    let both = rulesets(&["us-dwelling-2018", "small-child-advice"]);
    for (key, row) in [
        ("1", "infill loose,missing"),
        ("2", "post fastening,missing"),
        ("4", "condition,broken glass"),
        ("5", "condition,rot"),
        ("6", "condition,deep rust"),
        ("7", "condition,cracks"),
    ] {
        let mut one = walk("", &both);
        asked(&mut one, &[("children", "none"), ("railing", "deck")]);
        let said = asked(&mut one, &[("look", key)]);
        assert!(stops(&said), "{key}: {said:?}");
        assert!(one.text().contains(row), "{}", one.text());
        asked(&mut one, &[("closed", ""), ("by eye", "")]);
        assert_eq!(one.step().topic, Topic::Name, "{key}");
        let report = report(one.text(), &["--rules", "us-dwelling-2018"]);
        assert_eq!(report["summary"]["falls_short"], 1, "{key}");
    }
}

#[test]
fn a_danger_in_the_middle_ends_what_is_left_and_what_the_eye_tells_may_follow() {
    let both = rulesets(&["us-dwelling-2018", "small-child-advice"]);
    let mut one = walk("", &both);
    asked(
        &mut one,
        &[("children", "2 years"), ("railing", "deck"), ("look", "3")],
    );
    assert!(one.text().contains("paint,flaking"), "{}", one.text());
    let said = asked(&mut one, &[("touch", "2, stopped at once")]);
    assert!(stops(&said), "{said:?}");
    asked(
        &mut one,
        &[
            ("closed", "y, kitchen door locked"),
            ("by eye", "y"),
            ("drop beyond", "y"),
            ("infill", "horizontal bars"),
            ("photo", "deck.jpg"),
        ],
    );
    assert_eq!(one.step().topic, Topic::Name, "{}", one.text());
    let text = one.text();
    assert!(
        text.contains("moves when pushed,a lot,stopped at once; way closed: kitchen door locked\n")
            && text.contains("drop,over 30 in,by eye\n")
            && text.contains("photo,deck.jpg,\n"),
        "{text}"
    );
    // asking again sends nobody back to it
    let said = one.answer("again");
    assert!(stops(&said), "{said:?}");
    assert!(!one.text().contains("height"));
}

#[test]
fn a_danger_typed_at_any_question_ends_the_measuring() {
    let both = rulesets(&["us-dwelling-2018", "small-child-advice"]);
    for row in [
        "moves when pushed: a lot",
        "infill loose: missing",
        "condition: rot",
        "post fastening: missing",
    ] {
        let mut one = walk("", &both);
        typed(&mut one, &["none", "deck", "n", "n", "y", "b"]);
        let said = one.answer(row);
        assert!(stops(&said), "{row}: {said:?}");
        assert_eq!(one.step().topic, Topic::Guard(GuardTopic::Closed), "{row}");
        // corrected, it goes on
        let item = row.split(':').next().expect("an item");
        typed(
            &mut one,
            &[&format!("correct {item}"), "not reached", "a slip"],
        );
        assert_ne!(
            one.step().topic,
            Topic::Guard(GuardTopic::Closed),
            "{row}\n{}",
            one.text()
        );
    }
}

#[test]
fn an_open_edge_over_a_drop_is_not_measured() {
    let both = rulesets(&["us-dwelling-2018", "small-child-advice"]);
    let mut one = walk("", &both);
    asked(
        &mut one,
        &[
            ("children", "none"),
            ("railing", "cellar stair"),
            ("look", "0"),
        ],
    );
    let ask = one.step();
    assert_eq!(
        ask.topic,
        Topic::Guard(GuardTopic::Drop("30 in".to_owned()))
    );
    assert!(ask.question.contains("By eye"), "{}", ask.question);
    let said = asked(&mut one, &[("drop beyond", "y")]);
    assert!(stops(&said), "{said:?}");
    asked(&mut one, &[("closed", "n, no door there"), ("photo", "")]);
    assert_eq!(one.step().topic, Topic::Name);
    assert!(
        one.text()
            .contains("guard,none,way not closed: no door there\n"),
        "{}",
        one.text()
    );
    let args = ["--rules", "us-dwelling-2018", "--no-guidance"];
    assert_eq!(report(one.text(), &args)["summary"]["falls_short"], 1);
    // what an open edge cannot have is refused
    let refused = refusals(&typed(&mut one, &["cellar stair", "height: 36 in"]));
    assert_eq!(refused.len(), 1);
}

#[test]
fn an_open_edge_that_nobody_could_look_down_stays_undecided() {
    let law = rulesets(&["us-dwelling-2018"]);
    let mut one = walk("", &law);
    asked(
        &mut one,
        &[("railing", "landing"), ("look", "0"), ("drop beyond", "n")],
    );
    assert!(!one.text().contains("drop"), "{}", one.text());
    let args = ["--rules", "us-dwelling-2018", "--no-guidance"];
    let report = report(one.text(), &args);
    assert_eq!(report["summary"]["undecided"], 1, "{}", one.text());
}

#[test]
fn what_moves_a_little_is_measured_on_and_no_bar_is_twisted() {
    let both = rulesets(&["us-dwelling-2018", "small-child-advice"]);
    let mut one = walk("", &both);
    asked(
        &mut one,
        &[
            ("children", "none"),
            ("railing", "deck"),
            ("look", "n"),
            ("touch", "1"),
        ],
    );
    let mut ids = Vec::new();
    for _ in 0..40 {
        let ask = one.step();
        if ask.topic == Topic::Name {
            break;
        }
        ids.push(ask.id());
        one.answer("");
    }
    assert!(ids.contains(&"height".to_owned()), "{ids:?}");
    assert!(
        !ids.contains(&Item::InfillLoose.name().to_owned()),
        "{ids:?}"
    );
}

/// A thing that was seen and not measured is not taken as none.
#[test]
fn what_was_seen_to_climb_and_not_measured_is_kept() {
    let both = rulesets(&["us-dwelling-2018", "small-child-advice"]);
    let mut one = walk("", &both);
    typed(
        &mut one,
        &[
            "none", "landing", "n", "n", "y", "b", "3", "37 1/4", "1 2", "", "",
        ],
    );
    let text = one.text();
    assert!(
        text.contains("foothold,not reached,seen and not measured\n")
            && text.contains("thing to climb,yes,\n"),
        "{text}"
    );
}
