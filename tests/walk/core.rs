//! Scenes of the conversation, without a terminal.

use guardrule::items::Item;
use guardrule::walk::Reply;
use guardrule::walk::Topic;

use crate::walk::support::item;
use crate::walk::support::report;
use crate::walk::support::rulesets;
use crate::walk::support::typed;
use crate::walk::support::walk;

const START: &str = "unit,guard,item,reading,note\n,,date,2026-05-04,\n";

fn refusals(said: &[Reply<'_>]) -> Vec<String> {
    let refused = said.iter().filter_map(|said| {
        let Reply::Refused(message, help) = said else {
            return None;
        };
        Some(format!("{message}|{}", help.as_deref().unwrap_or("")))
    });
    refused.collect()
}

#[test]
fn a_walk_and_a_survey_by_hand_give_the_same_report() {
    let law = rulesets(&["us-dwelling-2018"]);
    let mut one = walk("", &law);
    typed(
        &mut one,
        &[
            "",
            "",
            "",
            "landing",
            "l",
            "4 ft 4 1/4 in",
            "34 5/8 in",
            "b",
            "y",
        ],
    );
    assert_eq!(one.step().topic, Topic::Name, "{}", one.text());
    let by_hand = "unit,guard,item,reading,note\n,,date,2026-05-04,\n\
        ,landing,height,34 5/8 in,\n,landing,place,landing,\n\
        ,landing,opening,4 in ball stops everywhere,\n,landing,infill,balusters,\n\
        ,landing,drop,4 ft 4 1/4 in,\n";
    let args = ["--rules", "us-dwelling-2018", "--no-guidance"];
    assert_eq!(report(one.text(), &args), report(by_hand, &args));
}

#[test]
fn a_false_circumstance_ends_the_questions() {
    let law = rulesets(&["us-dwelling-2018"]);
    let mut one = walk(START, &law);
    typed(&mut one, &["", "", "step", "deck", "20 in"]);
    let said = one.answer("list");
    assert!(matches!(&said[..], [Reply::Listing(_)]));
    // R312.1.1: no guard is asked for where the drop is 30 in or less
    assert_eq!(one.step().topic, Topic::Name, "{}", one.text());
}

#[test]
fn the_ball_comes_first_and_the_tape_where_it_settled_nothing() {
    let both = rulesets(&["us-dwelling-2018", "small-child-advice"]);
    let mut one = walk(START, &both);
    typed(
        &mut one,
        &["", "", "g", "landing", "9 ft", "none", "balusters"],
    );
    while item(&one.step().topic) != Some(Item::Opening) {
        one.answer("");
    }
    assert_eq!(
        one.step().topic,
        Topic::Ball(Item::Opening, "4 in".to_owned())
    );
    one.answer("y");
    assert!(one.text().contains("opening,4 in ball stops everywhere"));
    one.answer("again");
    while item(&one.step().topic) != Some(Item::Opening) {
        one.answer("");
    }
    assert_eq!(
        one.step().topic,
        Topic::Ball(Item::Opening, "3 1/2 in".to_owned())
    );
    one.answer("");
    while item(&one.step().topic) != Some(Item::Opening) {
        one.answer("");
    }
    assert_eq!(one.step().topic, Topic::Item(Item::Opening), "the tape");
    one.answer("3 1/4 in");
    let text = one.text().to_owned();
    assert!(text.ends_with("opening,3 1/4 in,\n"), "{text}");
}

#[test]
fn a_ball_that_passes_asks_for_no_smaller_one_and_a_bare_n_closes_no_hole() {
    let both = rulesets(&["us-dwelling-2018", "small-child-advice"]);
    let mut one = walk(START, &both);
    typed(&mut one, &["", "", "g", "landing", "9 ft", "none", "b"]);
    one.answer("infill: balusters");
    while item(&one.step().topic) != Some(Item::Opening) {
        one.answer("");
    }
    one.answer("n");
    assert!(one.text().ends_with("opening,4 in ball passes,\n"));
    while item(&one.step().topic) != Some(Item::Opening) {
        one.answer("");
    }
    assert_eq!(
        one.step().topic,
        Topic::Ball(Item::Opening, "6 in".to_owned())
    );
    one.answer("");
    while item(&one.step().topic) != Some(Item::Opening) {
        one.answer("");
    }
    let before = one.text().to_owned();
    assert_eq!(refusals(&one.answer("n")).len(), 1);
    assert_eq!(one.text(), before);
}

#[test]
fn after_the_tape_it_asks_how_many_were_looked_at() {
    let law = rulesets(&["us-dwelling-2018"]);
    let mut one = walk(START, &law);
    typed(&mut one, &["", "", "g", "landing", "9 ft"]);
    while item(&one.step().topic) != Some(Item::Opening) {
        one.answer(if item(&one.step().topic) == Some(Item::Infill) {
            "bal"
        } else {
            ""
        });
    }
    one.answer("3 1/4 in");
    assert_eq!(one.step().topic, Topic::Item(Item::OpeningsChecked));
}

#[test]
fn cables_are_tried_with_a_push_of_the_hand() {
    let law = rulesets(&["us-dwelling-2018"]);
    let mut one = walk(START, &law);
    typed(&mut one, &["", "", "g", "landing", "9 ft"]);
    while item(&one.step().topic) != Some(Item::Opening) {
        one.answer(if item(&one.step().topic) == Some(Item::Infill) {
            "c"
        } else {
            ""
        });
    }
    assert!(one.step().question.contains("pushed gently by hand"));
    one.answer("y");
    assert!(
        one.text()
            .contains("4 in ball stops everywhere pushed by hand")
    );
}

#[test]
fn unlikely_values_are_questioned_once_and_never_refused() {
    let law = rulesets(&["us-dwelling-2018"]);
    let mut one = walk(START, &law);
    typed(&mut one, &["", "", "g", "landing", "9 ft", "height: 12 ft"]);
    assert_eq!(one.step().topic, Topic::Unlikely(Item::Height));
    assert!(!one.text().contains("12 ft"));
    one.answer("y");
    assert!(one.text().contains("height,12 ft,"));
    typed(&mut one, &["correct height", "13 ft"]);
    assert_eq!(one.step().topic, Topic::Unlikely(Item::Height));
    one.answer("36 in");
    assert!(one.text().contains("height,36 in,") && !one.text().contains("13 ft"));
}

#[test]
fn what_cannot_be_read_is_refused_as_a_survey_would() {
    let law = rulesets(&["us-dwelling-2018"]);
    let mut one = walk(START, &law);
    let said = typed(
        &mut one,
        &["", "", "g", "p", "landin", "about 9 ft", "drop: 1,250 mm"],
    );
    let refused = refusals(&said);
    assert_eq!(refused.len(), 3, "{refused:?}");
    assert_eq!(refused[0], "p may be porch or pool|type a letter more");
    assert!(refused[1].contains("9 ft ± "), "{refused:?}");
    assert!(refused[2].contains("1,250"), "{refused:?}");
}

#[test]
fn the_unit_is_asked_once_and_written_down() {
    let law = rulesets(&["us-dwelling-2018"]);
    let mut one = walk(START, &law);
    typed(&mut one, &["", "", "g", "landing", "110"]);
    assert_eq!(one.step().topic, Topic::Unit(Item::Drop));
    typed(&mut one, &["in", "height: 34 5/8"]);
    assert!(
        one.text().contains(",,default unit,in,\n"),
        "{}",
        one.text()
    );
    assert!(one.text().contains("height,34 5/8,"), "{}", one.text());
    let report = report(one.text(), &["--rules", "us-dwelling-2018"]);
    assert_eq!(report["summary"]["falls_short"], 1);
}

#[test]
fn a_reason_becomes_the_note() {
    let law = rulesets(&["us-dwelling-2018"]);
    let mut one = walk(START, &law);
    typed(
        &mut one,
        &["", "", "g", "landing", "9 ft", "height: not reached"],
    );
    assert_eq!(one.step().topic, Topic::Reason(Item::Height));
    typed(&mut one, &["locked, no key", "opening: nr, behind a shelf"]);
    assert!(
        one.text()
            .contains("height,not reached,\"locked, no key\"\n"),
        "{}",
        one.text()
    );
    assert!(
        one.text().contains("opening,not reached,behind a shelf\n"),
        "{}",
        one.text()
    );
    // what one could not look at is not asked for again
    assert_ne!(item(&one.step().topic), Some(Item::Height));
}

#[test]
fn another_infill_is_a_slip_or_another_guard() {
    let law = rulesets(&["us-dwelling-2018"]);
    let mut one = walk(START, &law);
    typed(&mut one, &["", "", "g", "landing", "9 ft", "infill: glass"]);
    typed(&mut one, &["infill: mesh"]);
    assert_eq!(one.step().topic, Topic::Slip(Item::Infill));
    one.answer("y");
    assert!(one.text().contains("infill,mesh,") && !one.text().contains("glass"));
    typed(&mut one, &["correct infill", "glass", "n"]);
    assert_eq!(one.step().topic, Topic::Name, "a new guard starts there");
    assert!(one.text().contains("infill,mesh,") && !one.text().contains("glass"));
}

#[test]
fn back_and_correct_change_the_row_in_its_place() {
    let law = rulesets(&["us-dwelling-2018"]);
    let mut one = walk(START, &law);
    typed(
        &mut one,
        &[
            "", "", "g", "stair", "9 ft", "back", "8 ft", "back", "back", "back",
        ],
    );
    typed(&mut one, &["", "correct place", "landing", "y"]);
    let text = one.text().to_owned();
    assert_eq!(text, format!("{START},g,place,landing,\n,g,drop,8 ft,\n"));
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
    typed(&mut two, &["height: 35", "drop: 9 ft"]);
    assert_eq!(
        two.text(),
        "unit,guard,place,height (in),remarks,drop\n2A,stair,stair,35,mine,9 ft\n"
    );
}

#[test]
fn no_guard_at_all_is_one_answer() {
    let law = rulesets(&["us-dwelling-2018"]);
    let mut one = walk(START, &law);
    typed(&mut one, &["", "", "g", "landing", "9 ft", "no guard"]);
    assert_eq!(one.step().topic, Topic::Name, "{}", one.text());
    let report = report(
        one.text(),
        &["--rules", "us-dwelling-2018", "--no-guidance"],
    );
    assert_eq!(report["summary"]["falls_short"], 1);
    assert_eq!(refusals(&typed(&mut one, &["g", "height: 36 in"])).len(), 1);
}

#[test]
fn a_copy_leaves_out_what_must_be_looked_at_anew() {
    let both = rulesets(&["us-dwelling-2018", "small-child-advice"]);
    let mut one = walk(START, &both);
    typed(
        &mut one,
        &[
            "",
            "",
            "3, stair",
            "stair",
            "9 ft",
            "infill: balusters",
            "height: 36 in",
            "moves when pushed: no",
            "infill loose: no",
            "post fastening: tb",
            "next",
            "=,",
        ],
    );
    assert_eq!(
        one.here().map(|place| place.says()),
        Some("4, stair".to_owned())
    );
    let copied: Vec<&str> = one.text().lines().filter(|l| l.starts_with("4,")).collect();
    assert_eq!(
        copied,
        [
            "4,stair,place,stair,",
            "4,stair,drop,9 ft,",
            "4,stair,infill,balusters,",
            "4,stair,post fastening,through bolts,",
        ]
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
