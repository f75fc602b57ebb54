//! How many keys a guard costs.

use guardrule::items::Item;
use guardrule::walk::Topic;

use crate::walk::support::answered;
use crate::walk::support::item;
use crate::walk::support::report;
use crate::walk::support::rulesets;
use crate::walk::support::walk;

fn common(topic: &Topic) -> &'static str {
    match item(topic) {
        Some(Item::Children) => "2 years",
        Some(Item::Drop) => "6 ft 7 in",
        Some(Item::FastenedTo) => "j",
        Some(Item::Foothold | Item::ThingToClimb) => "none",
        Some(Item::Height) => "37 in",
        Some(Item::Infill) => "b",
        Some(Item::InfillLoose | Item::MovesWhenPushed | Item::NotchedPost) => "n",
        Some(Item::Place) => "l",
        Some(Item::PostFastening) => "tb",
        Some(_) if matches!(topic, Topic::Ball(..)) => "y",
        Some(_) | None => "",
    }
}

/// The count is the point: whoever makes the walk longer sees it here.
#[test]
fn a_parent_at_one_landing() {
    let both = rulesets(&["us-dwelling-2018", "small-child-advice"]);
    let mut one = walk("", &both);
    let mut keys = answered(&mut one, &common);
    keys += "landing".len() + 1;
    one.answer("landing");
    keys += answered(&mut one, &common);
    keys += 1;
    one.answer("");
    assert_eq!(one.step().topic, Topic::Finished);
    let report = report(one.text(), &["--rules", "us-dwelling-2018"]);
    assert_eq!(report["guards"][0]["verdict"], "meets", "{}", one.text());
    assert_eq!(report["guards"][0]["guidance"], "meets", "{}", one.text());
    assert_eq!(keys, 66, "keys of a parent's one landing\n{}", one.text());
}

#[test]
fn a_stairwell_in_the_middle_of_forty() {
    let law = rulesets(&["us-dwelling-2018"]);
    let stair = |topic: &Topic| match item(topic) {
        Some(Item::Place) => "s",
        Some(Item::Handrail) => "t",
        Some(Item::Height | Item::HandrailHeight) => "36 1/2",
        Some(Item::Drop) => "9 ft",
        Some(Item::Risers) => "15",
        Some(Item::RiserOpening) if !matches!(topic, Topic::Ball(..)) => "none",
        Some(_) | None if matches!(topic, Topic::Unit(_)) => "in",
        Some(_) | None => common(topic),
    };
    let mut one = walk("", &law);
    answered(&mut one, &stair);
    one.answer("1, stair");
    answered(&mut one, &stair);
    let mut counts = Vec::new();
    for _ in 2..=20 {
        one.answer("=,");
        counts.push("=,".len() + 1 + answered(&mut one, &stair));
    }
    let last = counts.pop().expect("counted");
    assert!(counts.iter().all(|count| *count == last), "{counts:?}");
    let report = report(
        one.text(),
        &["--rules", "us-dwelling-2018", "--no-guidance"],
    );
    assert_eq!(report["summary"]["guards"], 20);
    assert_eq!(report["summary"]["meets"], 20, "{}", one.text());
    assert_eq!(
        last,
        16,
        "keys of a stairwell in the middle of forty\n{}",
        one.text()
    );
}
