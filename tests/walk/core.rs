//! Scenes of the conversation, without a terminal.

use guardrule::items::Item;
use guardrule::walk::AnswerTopic;
use guardrule::walk::GuardTopic;
use guardrule::walk::Reply;
use guardrule::walk::Topic;

use crate::walk::support::asked;
use crate::walk::support::refusals;
use crate::walk::support::report;
use crate::walk::support::rulesets;
use crate::walk::support::typed;
use crate::walk::support::walk;

/// The head of a survey that began on this day by rules of a country of inches.
const HEAD: &str = "unit,guard,item,reading,note\n,,date,2026-05-04,\n,,default unit,in,\n";

/// The questions up to the gaps at a landing that looks well and does not move.
const WELL: [(&str, &str); 5] = [
    ("railing", "landing"),
    ("look", "n"),
    ("touch", "n"),
    ("drop beyond", "y"),
    ("infill", "b"),
];

#[test]
fn a_walk_and_a_survey_by_hand_give_the_same_report() {
    let law = rulesets(&["us-dwelling-2018"]);
    let mut one = walk("", &law);
    asked(&mut one, &WELL);
    asked(
        &mut one,
        &[
            ("gaps", "y"),
            ("height", "34 5/8"),
            ("post fastening", ""),
            ("guard length", ""),
            ("photo", ""),
        ],
    );
    assert_eq!(one.step().topic, Topic::Name, "{}", one.text());
    let by_hand = "unit,guard,item,reading,note\n,,default unit,in,\n\
        ,landing,condition,none seen,\n,landing,height,34 5/8,\n,landing,place,landing,\n\
        ,landing,opening,4 in ball stops everywhere,\n,landing,infill,balusters,\n\
        ,landing,drop,over 30 in,\n,landing,paint,sound,\n,landing,infill loose,no,\n\
        ,landing,moves when pushed,no,\n";
    let args = ["--rules", "us-dwelling-2018", "--no-guidance"];
    assert_eq!(report(one.text(), &args), report(by_hand, &args));
}

#[test]
fn date_unit_and_rules_stand_in_a_survey_before_anything_is_asked() {
    let law = rulesets(&["us-dwelling-2018"]);
    let one = walk("", &law);
    assert_eq!(one.text(), HEAD);
    let metric = rulesets(&["uk-approved-document-k"]);
    assert!(walk("", &metric).text().contains("default unit,mm,"));
    // where both countries' rules were chosen nobody can tell
    let both = rulesets(&["us-dwelling-2018", "uk-approved-document-k"]);
    assert!(!walk("", &both).text().contains("default unit"));
}

#[test]
fn a_false_circumstance_ends_the_questions() {
    let law = rulesets(&["us-dwelling-2018"]);
    let mut one = walk("", &law);
    asked(
        &mut one,
        &[
            ("railing", "step"),
            ("place", "deck"),
            ("look", "n"),
            ("touch", "n"),
            ("drop beyond", "n"),
            ("drop", "20"),
            ("post fastening", ""),
        ],
    );
    // R312.1.1: no guard is asked for where the drop is 30 in or less
    assert_eq!(one.step().id(), "photo", "{}", one.text());
}

#[test]
fn a_drop_is_asked_as_yes_or_no_and_measured_after_a_no() {
    let both = rulesets(&["us-dwelling-2018", "small-child-advice"]);
    let mut one = walk("", &both);
    asked(
        &mut one,
        &[
            ("children", "none"),
            ("railing", "deck"),
            ("look", "n"),
            ("touch", "n"),
        ],
    );
    assert_eq!(
        one.step().topic,
        Topic::Guard(GuardTopic::Drop("30 in".to_owned()))
    );
    asked(&mut one, &[("drop beyond", "6 ft 7 in")]);
    assert!(one.text().contains("drop,6 ft 7 in,"), "{}", one.text());
    // in a country of millimetres it is worded above the limit
    let metric = rulesets(&["uk-approved-document-k", "small-child-advice"]);
    let mut two = walk("", &metric);
    asked(
        &mut two,
        &[
            ("children", "none"),
            ("railing", "landing"),
            ("look", "n"),
            ("touch", "n"),
        ],
    );
    assert_eq!(
        two.step().topic,
        Topic::Guard(GuardTopic::Drop("770 mm".to_owned()))
    );
}

#[test]
fn one_question_tries_all_balls_and_no_tape_follows() {
    let both = rulesets(&["us-dwelling-2018", "small-child-advice"]);
    let mut one = walk("", &both);
    asked(&mut one, &[("children", "none")]);
    asked(&mut one, &WELL);
    let sizes = ["6 in", "4 in", "3 1/2 in"].map(str::to_owned);
    assert_eq!(
        one.step().topic,
        Topic::Guard(GuardTopic::Balls(sizes.to_vec()))
    );
    let ids: Vec<String> = std::iter::once(one.step().id())
        .chain(["4", "37 1/4", "n", "", "", ""].iter().map(|line| {
            one.answer(line);
            one.step().id()
        }))
        .collect();
    assert_eq!(
        ids,
        [
            "gaps",
            "height",
            "climb",
            "post fastening",
            "guard length",
            "photo",
            "railing"
        ]
    );
    assert!(
        one.text().contains("opening,4 in ball stops everywhere,\n")
            && one.text().contains("opening,3 1/2 in ball passes,\n"),
        "{}",
        one.text()
    );
    let report = report(one.text(), &["--rules", "us-dwelling-2018"]);
    assert_eq!(report["guards"][0]["verdict"], "meets", "{}", one.text());
    assert_eq!(report["guards"][0]["guidance"], "falls short");
}

#[test]
fn who_had_no_smaller_ball_says_so() {
    let both = rulesets(&["us-dwelling-2018", "small-child-advice"]);
    let mut one = walk("", &both);
    asked(&mut one, &[("children", "none")]);
    asked(&mut one, &WELL);
    asked(&mut one, &[("gaps", "4 only")]);
    assert!(!one.text().contains("passes"), "{}", one.text());
    let mut two = walk("", &both);
    asked(&mut two, &[("children", "none")]);
    asked(&mut two, &WELL);
    let refused = asked(&mut two, &[("gaps", "8")]);
    assert_eq!(refusals(&refused).len(), 1);
    asked(&mut two, &[("gaps", "p")]);
    assert!(two.text().ends_with("opening,6 in ball passes,\n"));
}

/// On a stair the steps have holes of their own: the ball says nothing of them.
#[test]
fn on_a_stair_the_balls_never_speak_of_the_steps() {
    let both = rulesets(&["us-dwelling-2018", "small-child-advice"]);
    let mut one = walk("", &both);
    asked(
        &mut one,
        &[
            ("children", "none"),
            ("railing", "back stair"),
            ("look", "n"),
            ("touch", "n"),
            ("drop beyond", "y"),
            ("infill", "b"),
            ("gaps", "4"),
            ("ball stair triangle 6 in", ""),
            ("stair triangle", "7 3/4, 10, 2"),
            ("riser opening", "n"),
            ("handrail", "1"),
            ("height", "34 3/4"),
            ("climb", "n"),
            ("post fastening", ""),
            ("guard length", ""),
            ("photo", ""),
        ],
    );
    let text = one.text();
    assert!(!text.contains("everywhere"), "{text}");
    assert!(
        text.contains("opening,3 1/2 in ball passes 4 3/8 in ball stops,\n")
            && text.contains("openings checked,every one,\n")
            && text.contains("stair triangle,rise 7 3/4 going 10 lift 2,\n")
            && text.contains("handrail,top of the guard,\n"),
        "{text}"
    );
    let report = report(text, &["--rules", "us-dwelling-2018"]);
    assert_eq!(report["guards"][0]["verdict"], "falls short", "{text}");
}

#[test]
fn without_a_ball_the_tape_is_asked_and_how_many_were_looked_at() {
    let law = rulesets(&["us-dwelling-2018"]);
    let mut one = walk("", &law);
    asked(&mut one, &WELL);
    asked(&mut one, &[("gaps", "")]);
    assert_eq!(refusals(&asked(&mut one, &[("opening", "n")])).len(), 1);
    // shapes are offered only to who has no plain gap
    assert!(!one.step().examples.iter().any(|e| e.contains("triangle")));
    let said = asked(&mut one, &[("opening", "shape")]);
    assert!(format!("{said:?}").contains("triangle 7 3/4 x 10 in"));
    asked(
        &mut one,
        &[
            ("opening", "3 1/4"),
            ("bottom gap", "2"),
            ("openings checked", "1"),
        ],
    );
    assert!(one.text().contains("openings checked,one,\n"));
    assert_eq!(one.step().id(), "height");
}

#[test]
fn cables_are_tried_with_a_push_of_the_hand_at_once() {
    let law = rulesets(&["us-dwelling-2018"]);
    let mut one = walk("", &law);
    asked(&mut one, &WELL[..4]);
    asked(&mut one, &[("infill", "cables")]);
    assert!(one.step().question.contains("pushed gently by hand"));
    asked(&mut one, &[("gaps", "y")]);
    assert!(
        one.text()
            .contains("4 in ball stops everywhere pushed by hand")
    );
}

#[test]
fn a_stick_is_offered_only_where_the_tape_cannot_tell() {
    let law = rulesets(&["us-dwelling-2018"]);
    let mut one = walk("", &law);
    asked(&mut one, &WELL);
    asked(
        &mut one,
        &[("gaps", "y"), ("height", "36"), ("stick height", "n")],
    );
    assert!(one.text().contains("height,below 36 in,\n"));
    let report = report(
        one.text(),
        &["--rules", "us-dwelling-2018", "--no-guidance"],
    );
    assert_eq!(report["summary"]["falls_short"], 1, "{}", one.text());
}

/// A stick that reaches and a tape that reads less contradict each other at one place:
/// which it is is asked, and nothing is dropped.
#[test]
fn two_heights_that_contradict_each_other_are_asked_about() {
    let law = rulesets(&["us-dwelling-2018"]);
    let text = "unit,guard,item,reading,note\n,hall,place,landing,\n,hall,condition,none seen,\n\
        ,hall,moves when pushed,no,\n,hall,drop,9 ft,\n,hall,infill,balusters,\n\
        ,hall,opening,4 in ball stops everywhere,\n,hall,height,reaches 36 in,\n";
    let contradicted = || {
        let mut one = walk(text, &law);
        one.answer("another height");
        let said = format!("{:?}", one.answer("34 in"));
        assert!(
            said.contains("falls_short") || said.contains("FallsShort"),
            "{said}"
        );
        let ask = one.step();
        assert_eq!(ask.id(), "contradiction height", "{}", one.text());
        assert!(
            ask.question.contains("reaches 36 in; 34 in"),
            "{}",
            ask.question
        );
        one
    };
    // two places: both stay, with the words for one of them
    let mut one = contradicted();
    one.answer("1");
    assert_eq!(one.step().id(), "place of height");
    one.answer("at the newel, floor is higher");
    assert!(
        one.text()
            .contains("height,34 in,\"at the newel, floor is higher\""),
        "{}",
        one.text()
    );
    assert_ne!(one.step().id(), "contradiction height");
    assert_eq!(
        report(one.text(), &["--rules", "us-dwelling-2018"])["guards"][0]["verdict"],
        "falls short"
    );
    // the tape was wrong: it is asked once more, in its place
    let mut two = contradicted();
    two.answer("2");
    let ask = two.step();
    assert_eq!(
        (ask.id().as_str(), ask.enter.as_str()),
        ("height", "keep 34 in")
    );
    two.answer("36 3/4 in");
    assert!(
        !two.text().contains("34 in") && two.text().contains("height,36 3/4 in,"),
        "{}",
        two.text()
    );
    assert_ne!(two.step().id(), "contradiction height");
    // not known: both stay, and it is not asked again
    let mut three = contradicted();
    three.answer("");
    assert_ne!(three.step().id(), "contradiction height");
    assert!(three.text().contains("reaches 36 in") && three.text().contains(",34 in,"));
    // measured anew and contradicting still, it is asked again
    let mut four = contradicted();
    four.answer("3");
    four.answer("reaches 37 in");
    assert_eq!(four.step().id(), "contradiction height", "{}", four.text());
}

/// The class of the tape is asked where it would change a verdict, once in a survey.
#[test]
fn the_tapes_class_is_asked_only_where_it_would_decide() {
    let law = rulesets(&["uk-approved-document-k"]);
    let begun = "unit,guard,item,reading,note\n,a,place,landing,\n,a,condition,none seen,\n\
        ,a,moves when pushed,no,\n,a,drop,over 2 m,\n,a,infill,balusters,\n\
        ,a,opening,100 mm ball stops everywhere,\n,a,foothold,none,\n";
    let after = |height: &str| {
        let mut one = walk(begun, &law);
        assert_eq!(one.step().id(), "height", "{}", one.text());
        one.answer(height);
        one
    };
    let mut near = after("903 mm");
    assert_eq!(
        near.step().topic,
        Topic::Fact(Item::Tape),
        "{}",
        near.text()
    );
    // each class by itself, as `check` judges it: they differ
    let verdict = |class: &str| {
        let text = format!("{}tape,{class},\n", near.text().to_owned() + ",,");
        report(&text, &["--rules", "uk-approved-document-k"])["guards"][0]["verdict"].to_string()
    };
    assert_ne!(verdict("class I"), verdict("class III"));
    near.answer("1");
    assert!(near.text().contains(",,tape,class I,"), "{}", near.text());
    assert_ne!(near.step().topic, Topic::Fact(Item::Tape));
    // far from the limit no class matters; told once or passed over, it is not asked again
    let far = after("950 mm");
    assert_ne!(far.step().topic, Topic::Fact(Item::Tape));
    let mut passed = after("903 mm");
    passed.answer("");
    passed.answer("correct height");
    passed.answer("902 mm");
    assert_ne!(passed.step().topic, Topic::Fact(Item::Tape));
}

/// What cannot be reached is said once, and the balls are tried at the rest.
#[test]
fn some_gaps_out_of_reach_leave_the_balls_for_the_others() {
    let law = rulesets(&["us-dwelling-2018"]);
    let mut one = walk("", &law);
    one.answer("landing");
    asked(
        &mut one,
        &[
            ("look", "n"),
            ("touch", "n"),
            ("drop beyond", "y"),
            ("infill", "b"),
            ("gaps", "cannot reach, bookcase at the wall end"),
        ],
    );
    let ask = one.step();
    assert_eq!(ask.id(), "gaps");
    assert!(
        ask.question.contains("that you can reach"),
        "{}",
        ask.question
    );
    one.answer("y");
    one.answer("37 1/4");
    assert!(
        one.text()
            .contains("openings checked,some,bookcase at the wall end"),
        "{}",
        one.text()
    );
    let report = report(
        one.text(),
        &["--rules", "us-dwelling-2018", "--no-guidance"],
    );
    assert_eq!(
        report["guards"][0]["verdict"],
        "not measured",
        "{}",
        one.text()
    );
    // none of them within reach
    let mut two = walk("", &law);
    two.answer("landing");
    typed(&mut two, &["n", "n", "y", "b", "nr, boxes", "nr, boxes"]);
    assert!(
        two.text().contains("opening,not reached,boxes"),
        "{}",
        two.text()
    );
}

#[test]
fn a_slip_of_unit_names_both_units_before_anything_is_written() {
    let law = rulesets(&["us-dwelling-2018"]);
    let mut one = walk("", &law);
    asked(&mut one, &WELL[..3]);
    asked(&mut one, &[("drop beyond", "n"), ("drop", "110")]);
    asked(&mut one, &[("infill", "b"), ("gaps", ""), ("opening", "8")]);
    let ask = one.step();
    assert_eq!(
        ask.topic,
        Topic::Answer(AnswerTopic::Unlikely(Item::Opening))
    );
    assert!(
        ask.question.contains("inches") && ask.question.contains("8 cm"),
        "{}",
        ask.question
    );
    assert!(!one.text().contains("opening"), "{}", one.text());
    // one answer mends the unit, and asks again what it touched
    asked(&mut one, &[("unlikely opening", "cm")]);
    assert_eq!(
        one.step().topic,
        Topic::Answer(AnswerTopic::UnitOf(Item::Drop))
    );
    assert!(one.text().contains("drop,110 in,"), "{}", one.text());
    asked(&mut one, &[("unit of drop", "")]);
    let text = one.text();
    assert!(
        text.contains("default unit,cm,\n")
            && text.contains("drop,110 cm,\n")
            && text.contains("opening,8 cm,\n"),
        "{text}"
    );
    assert_eq!(text.matches("default unit").count(), 1, "{text}");
}

#[test]
fn a_mended_unit_changes_no_reading_that_nobody_has_looked_at() {
    let law = rulesets(&["us-dwelling-2018"]);
    let mut one = walk("", &law);
    asked(&mut one, &WELL);
    asked(&mut one, &[("gaps", "y"), ("height", "38")]);
    one.answer("unit mm");
    assert!(one.text().contains("height,38 in,\n"), "{}", one.text());
    asked(&mut one, &[("unit of height", "in")]);
    assert!(one.text().contains("height,38 in,\n"), "{}", one.text());
    assert_eq!(one.step().id(), "post fastening");
}

#[test]
fn a_unit_that_was_a_slip_is_asked_without_end_nowhere() {
    let law = rulesets(&["us-dwelling-2018", "uk-approved-document-k"]);
    let mut one = walk("", &law);
    typed(&mut one, &["deck", "height: 8 3/4", "ft"]);
    assert_eq!(
        one.step().topic,
        Topic::Answer(AnswerTopic::Unlikely(Item::Height))
    );
    let said = typed(&mut one, &["34", "ft"]);
    let refused = refusals(&said);
    assert_eq!(refused.len(), 1, "{said:?}");
    assert!(refused[0].contains("34 ft"), "{refused:?}");
    assert!(refused[0].contains("34 in"), "{refused:?}");
    assert!(!one.text().contains("default unit"), "{}", one.text());
    let said = typed(
        &mut one,
        &["height: 3 1/4", "ft", "height: 34", "height: 34"],
    );
    assert!(
        !matches!(one.step().topic, Topic::Answer(AnswerTopic::Unit(_))),
        "{said:?}"
    );
    let refused = refusals(&said);
    assert_eq!(refused.len(), 2, "{said:?}");
    assert!(refused[0].contains("alone is feet"), "{refused:?}");
    assert_eq!(one.text().matches("default unit").count(), 1);
}

#[test]
fn the_unit_is_asked_once_where_no_country_tells_it() {
    let advice = rulesets(&["small-child-advice"]);
    let mut one = walk("", &advice);
    typed(&mut one, &["none", "landing", "height: 34 5/8"]);
    assert_eq!(
        one.step().topic,
        Topic::Answer(AnswerTopic::Unit(Item::Height))
    );
    typed(&mut one, &["in", "drop: 110"]);
    let text = one.text();
    assert!(text.contains(",,default unit,in,\n"), "{text}");
    assert!(text.contains("drop,110,"), "{text}");
}

#[test]
fn an_age_is_never_a_length_and_a_number_alone_says_months_or_years() {
    let both = rulesets(&["us-dwelling-2018", "small-child-advice"]);
    let mut one = walk("", &both);
    for length in ["34 in", "34\"", "2 ft 10 in", "0.9 m"] {
        let refused = refusals(&asked(&mut one, &[("children", length)]));
        assert_eq!(refused.len(), 1, "{length}");
        assert!(refused[0].contains("is a length"), "{refused:?}");
    }
    assert!(!one.text().contains("children"), "{}", one.text());
    asked(&mut one, &[("children", "38"), ("age", "")]);
    assert!(one.text().contains(",,children,38 months,"));
    let mut two = walk("", &both);
    asked(&mut two, &[("children", "2"), ("age", "y")]);
    assert!(two.text().contains(",,children,2 years,"), "{}", two.text());
    let mut three = walk("", &both);
    asked(&mut three, &[("children", "8 months, 3 years")]);
    assert_eq!(three.text().matches("children").count(), 2);
}

#[test]
fn what_is_hidden_ends_the_questions_of_strength() {
    let law = rulesets(&["us-dwelling-2018"]);
    let mut one = walk("", &law);
    asked(&mut one, &WELL);
    asked(
        &mut one,
        &[("gaps", "y"), ("height", "38"), ("post fastening", "h")],
    );
    assert!(one.text().contains("post fastening,hidden,"));
    assert_eq!(one.step().id(), "photo");
}

#[test]
fn the_place_is_taken_from_a_name_that_has_one() {
    let law = rulesets(&["us-dwelling-2018"]);
    let mut one = walk("", &law);
    one.answer("2A, back stair");
    assert!(one.text().ends_with("2A,back stair,place,stair,\n"));
    let mut two = walk("", &law);
    two.answer("pool deck");
    assert_eq!(two.step().id(), "place");
    // first letters and numbers choose words
    two.answer("5");
    assert!(two.text().ends_with("place,deck,\n"), "{}", two.text());
}

#[test]
fn what_was_passed_over_is_asked_again_only_on_request() {
    let law = rulesets(&["us-dwelling-2018"]);
    let mut one = walk("", &law);
    asked(
        &mut one,
        &[
            ("railing", "landing"),
            ("look", ""),
            ("touch", ""),
            ("drop beyond", "y"),
            ("infill", ""),
            ("gaps", ""),
            ("opening", ""),
            ("bottom gap", ""),
            ("height", ""),
            ("photo", ""),
        ],
    );
    assert_eq!(one.step().topic, Topic::Name);
    one.answer("again");
    assert_eq!(one.step().id(), "look");
}

#[test]
fn unlikely_values_are_questioned_once_and_never_refused() {
    let law = rulesets(&["us-dwelling-2018"]);
    let mut one = walk("", &law);
    typed(&mut one, &["landing", "height: 12 ft"]);
    assert_eq!(
        one.step().topic,
        Topic::Answer(AnswerTopic::Unlikely(Item::Height))
    );
    assert!(!one.text().contains("12 ft"));
    one.answer("y");
    assert!(one.text().contains("height,12 ft,"));
    typed(&mut one, &["correct height", "13 ft"]);
    assert_eq!(
        one.step().topic,
        Topic::Answer(AnswerTopic::Unlikely(Item::Height))
    );
    one.answer("36 in");
    assert!(one.text().contains("height,36 in,") && !one.text().contains("13 ft"));
}

#[test]
fn what_cannot_be_read_is_refused_as_a_survey_would() {
    let law = rulesets(&["us-dwelling-2018"]);
    let mut one = walk("", &law);
    let said = typed(
        &mut one,
        &["g", "p", "xyz", "drop: about 9 ft", "drop: 1,250 mm"],
    );
    let refused = refusals(&said);
    assert_eq!(refused.len(), 4, "{refused:?}");
    assert_eq!(refused[0], "p may be porch or pool|type a letter more");
    assert!(refused[2].contains("9 ft ± "), "{refused:?}");
    assert!(refused[3].contains("1,250"), "{refused:?}");
}

#[test]
fn a_reason_becomes_the_note() {
    let law = rulesets(&["us-dwelling-2018"]);
    let mut one = walk("", &law);
    typed(&mut one, &["landing", "height: not reached"]);
    assert_eq!(
        one.step().topic,
        Topic::Answer(AnswerTopic::Reason(Item::Height))
    );
    typed(&mut one, &["locked, no key", "opening: nr, behind a shelf"]);
    let text = one.text();
    assert!(
        text.contains("height,not reached,\"locked, no key\"\n"),
        "{text}"
    );
    assert!(
        text.contains("opening,not reached,behind a shelf\n"),
        "{text}"
    );
    // the words behind a comma stay with any answer
    typed(&mut one, &["n", "1, at the newel"]);
    assert!(
        one.text()
            .contains("moves when pushed,a little,at the newel\n"),
        "{}",
        one.text()
    );
}

#[test]
fn another_infill_is_a_slip_or_another_guard() {
    let law = rulesets(&["us-dwelling-2018"]);
    let mut one = walk("", &law);
    typed(&mut one, &["landing", "infill: glass", "infill: mesh"]);
    assert_eq!(
        one.step().topic,
        Topic::Answer(AnswerTopic::Slip(Item::Infill))
    );
    one.answer("y");
    assert!(one.text().contains("infill,mesh,") && !one.text().contains("glass"));
    typed(&mut one, &["correct infill", "glass", "n"]);
    assert_eq!(one.step().topic, Topic::Name, "a new guard starts there");
    assert!(one.text().contains("infill,mesh,") && !one.text().contains("glass"));
}

#[test]
fn back_asks_an_answer_once_more_and_replaces_all_its_rows() {
    let both = rulesets(&["us-dwelling-2018", "small-child-advice"]);
    let mut one = walk("", &both);
    asked(&mut one, &[("children", "none")]);
    asked(&mut one, &WELL);
    asked(&mut one, &[("gaps", "4"), ("height", "back")]);
    assert_eq!(
        one.step().so_far,
        [
            "opening 4 in ball stops everywhere",
            "opening 3 1/2 in ball passes"
        ]
    );
    asked(&mut one, &[("gaps", "3")]);
    let text = one.text().to_owned();
    assert!(
        text.ends_with("infill,balusters,\n,landing,opening,3 1/2 in ball stops everywhere,\n"),
        "{text}"
    );
    // further back past it: the rows that moved up are found
    asked(
        &mut one,
        &[("height", "38"), ("climb", "back"), ("height", "back")],
    );
    asked(
        &mut one,
        &[("gaps", "back"), ("infill", "glass"), ("slip infill", "y")],
    );
    let text = one.text().to_owned();
    assert!(
        text.contains("infill,glass,\n") && text.contains("height,38,\n"),
        "{text}"
    );
    // keeping is one key
    asked(&mut one, &[("climb", "back")]);
    asked(&mut one, &[("infill", "")]);
    assert_eq!(one.text(), text);
}

#[test]
fn a_survey_by_hand_is_gone_on_with_as_it_stands() {
    let text = "# our notebook\r\nguard,mine,item,reading\r\n\
        landing,x,place,landing\r\nlanding,,drop,9 ft\r\n";
    let law = rulesets(&["us-dwelling-2018"]);
    let mut one = walk(text, &law);
    assert_eq!(
        one.here().map(|place| place.guard.as_str()),
        Some("landing")
    );
    one.answer("height: 36 in");
    assert_eq!(one.text(), format!("{text}landing,,height,36 in\r\n"));
    let table = "unit,guard,place,height (in),remarks\n2A,stair,stair,,mine\n";
    let mut two = walk(table, &law);
    typed(&mut two, &["height: 35", "drop: 9 ft", "n", "n"]);
    assert_eq!(
        two.text(),
        "unit,guard,place,height (in),remarks,drop,condition,paint,moves when pushed,infill loose\n\
         2A,stair,stair,35,mine,9 ft,none seen,sound,no,no\n"
    );
}

#[test]
fn a_file_with_errors_gets_no_unit_that_might_hide_them() {
    let law = rulesets(&["us-dwelling-2018"]);
    let text = "guard,item,reading\ng,place,landing\ng,height,900\n";
    let mut one = walk(text, &law);
    typed(&mut one, &["drop: 110", "in"]);
    assert_eq!(one.text(), format!("{text}g,drop,110 in\n"));
}

/// What is the same for two railings is copied, and what must be looked at never is.
#[test]
fn like_the_last_one_shows_what_it_copies() {
    let both = rulesets(&["us-dwelling-2018", "small-child-advice"]);
    let mut one = walk("", &both);
    asked(&mut one, &[("children", "none")]);
    asked(&mut one, &WELL);
    typed(&mut one, &["4", "37 1/4", "n", "through bolts", "next"]);
    let said = one.answer("= gallery but hb");
    let Some(Reply::Copied { from, taken, but }) = said.first() else {
        panic!("{said:?}");
    };
    assert_eq!(from.guard, "landing");
    let taken: Vec<Item> = taken.iter().map(|(item, _)| *item).collect();
    assert_eq!(taken, [Item::Place, Item::Drop]);
    assert_eq!(but, &[(Item::Infill, "horizontal bars".to_owned())]);
    asked(
        &mut one,
        &[
            ("look", "n"),
            ("touch", "n"),
            ("gaps", "6"),
            ("height", "39"),
        ],
    );
    // level bars are a ladder: only what stands near is asked
    let ask = one.step();
    assert_eq!(ask.id(), "climb");
    assert!(ask.question.contains("Level bars"), "{}", ask.question);
}

/// A drop that was copied could switch off every rule of the next guard.
#[test]
fn a_copy_takes_over_no_shallow_drop_and_nothing_that_holds_the_posts() {
    let law = rulesets(&["us-dwelling-2018"]);
    let mut one = walk("", &law);
    typed(
        &mut one,
        &[
            "deck",
            "drop: 20 in",
            "post fastening: tb",
            "next",
            "= porch",
        ],
    );
    let copied: Vec<&str> = one
        .text()
        .lines()
        .filter(|line| line.starts_with(",porch"))
        .collect();
    assert_eq!(copied, [",porch,place,deck,"]);
    // 31 in is above the limit, and not by as much as a tape may err
    let mut two = walk("", &law);
    typed(&mut two, &["deck", "drop: 31 in", "next", "= porch"]);
    assert!(!two.text().contains(",porch,drop"), "{}", two.text());
    assert!(!refusals(&typed(&mut two, &["next", "= attic but zzz"])).is_empty());
}

#[test]
fn what_is_written_already_is_not_written_twice_and_asked_again_with_a_reason() {
    let law = rulesets(&["us-dwelling-2018"]);
    let mut one = walk("", &law);
    typed(
        &mut one,
        &[
            "stair",
            "n",
            "n",
            "y",
            "b",
            "y",
            "y",
            "n",
            "1",
            "reaches 36 in",
        ],
    );
    let ask = one.step();
    assert_eq!(ask.id(), "height", "a stick of 36 in says nothing of 38 in");
    assert!(ask.question.contains("does not settle"), "{}", ask.question);
    one.answer("reaches 36 in");
    assert_eq!(one.text().matches("reaches 36 in").count(), 1);
    assert_ne!(one.step().id(), "height");
    // who wishes to write it twice can
    typed(&mut one, &["another height", "reaches 36 in"]);
    assert_eq!(one.text().matches("reaches 36 in").count(), 2);
}

#[test]
fn who_measured_is_asked_at_the_end_alone() {
    let law = rulesets(&["us-dwelling-2018"]);
    let mut one = walk("", &law);
    typed(&mut one, &["landing", "next", ""]);
    asked(&mut one, &[("by", "S. and D., the corner house")]);
    assert_eq!(one.step().topic, Topic::Finished);
    let text = one.text();
    assert!(
        text.contains(",,by,S. and D.,\n") && text.contains(",,property,the corner house,\n"),
        "{text}"
    );
}

#[test]
fn a_fact_of_the_survey_is_mended_at_any_question() {
    let law = rulesets(&["us-dwelling-2018"]);
    let mut one = walk("", &law);
    assert_eq!(refusals(&one.answer("date: 4/5/26")).len(), 1);
    typed(&mut one, &["landing", "date: 2026-05-11"]);
    assert!(
        one.text().contains(",,date,2026-05-11,\n"),
        "{}",
        one.text()
    );
    assert_eq!(one.text().matches(",,date,").count(), 1);
}

#[test]
fn every_question_has_what_a_screen_needs() {
    let both = rulesets(&["us-dwelling-2018", "small-child-advice"]);
    let mut one = walk("", &both);
    asked(&mut one, &[("children", "2 years"), ("railing", "stair")]);
    let look = one.step();
    assert!(look.can_be_skipped() && look.choices.len() == 9, "{look:?}");
    let before = one.questions_left();
    asked(
        &mut one,
        &[("look", "n"), ("touch", "n"), ("drop beyond", "y")],
    );
    assert!(
        one.questions_left() < before,
        "{} then {}",
        before,
        one.questions_left()
    );
    asked(&mut one, &[("infill", "b")]);
    assert_eq!(one.step().drawing, Some(guardrule::items::Drawing::Ball));
    one.pass_over();
    let ask = one.step();
    assert_eq!(ask.fractions.len(), 15, "{ask:?}");
    one.cannot_reach("a cupboard");
    assert!(
        one.text().contains("not reached,a cupboard"),
        "{}",
        one.text()
    );
    one.go_back();
    assert!(one.step().out_of_turn, "{:?}", one.step());
    one.answer("");
    one.correct(Item::Infill);
    assert_eq!(one.step().id(), "infill");
    typed(&mut one, &["", "next"]);
    one.like_the_last("attic stair", &["glass"]);
    assert!(
        one.text().contains("attic stair,infill,glass,"),
        "{}",
        one.text()
    );
}
