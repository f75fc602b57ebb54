//! At the limit, where several rules or readings stand beside each other: how many cases
//! are gone through, gauges of one size, a lift that is written twice, a drop known from
//! one side.

use super::boundaries::of;
use crate::harness::run;
use crate::harness::verdict_by;
use crate::harness::words;

/// Circumstances of two answers each, and the condition that the first of them meets.
const OPEN: [(&str, &str); 7] = [
    ("shared = \"yes\"", "shared = \"no\""),
    ("own-way-out = \"yes\"", "own-way-out = \"no\""),
    ("fixed-seat = \"yes\"", "fixed-seat = \"no\""),
    ("replaced-window = \"yes\"", "replaced-window = \"no\""),
    ("location = \"inside\"", "location = \"outside\""),
    ("risers.at-least = \"4\"", "risers.below = \"4\""),
    ("storeys.at-most = \"3\"", "storeys.above = \"3\""),
];

fn rule(id: &str, hazard: &str, asks: &str) -> String {
    format!(
        "[[rule]]\nid = \"{id}\"\nhazard = \"{hazard}\"\nclause = \"1\"\n\
         says = \"Something is asked.\"\nsource = \"s\"\n{asks}\n"
    )
}

/// The verdict of a landing 42 in high with gaps of 3 in, and these rows.
fn guard(rules: &str, rows: &[&str]) -> String {
    let town = format!(
        "id = \"town\"\ntitle = \"T\"\nedition = \"E\"\n[source.s]\ntitle = \"T\"\nedition = \"E\"\n\
         status = \"published\"\n{rules}"
    );
    let mut survey = "guard,item,reading\ng,place,landing\ng,height,42 in\ng,opening,3 in\n\
                      g,bottom gap,none\n"
        .to_owned();
    for row in rows {
        survey.push_str(&format!("g,{row}\n"));
    }
    verdict_by("@town.toml", &town, &survey)
}

#[test]
fn sixty_four_cases_are_gone_through_and_no_more() {
    let meets = |open: usize| {
        let mut rules = rule(
            "gap",
            "fall through",
            "check.any-opening.stops-ball = \"4 in\"",
        );
        rules += &rule("base", "fall over", "check.height.at-least = \"36 in\"");
        for (place, (when, _)) in OPEN.iter().take(open).enumerate() {
            let asks = format!("when.{when}\ncheck.height.at-least = \"36 in\"");
            rules += &rule(&format!("r{place}"), "fall over", &asks);
        }
        guard(&rules, &[])
    };
    // two answers each: 2^6 = 64
    assert_eq!(meets(6), "meets");
    assert_eq!(meets(7), "not measured");
}

#[test]
fn of_heights_alone_sixty_four_cases_are_gone_through_and_no_more() {
    let short = |open: usize| {
        // too low in each of its cases, and gaps that need one circumstance more
        let mut all = String::new();
        let mut any = String::new();
        for (first, other) in OPEN.iter().take(open) {
            all += &format!("when.{first}\n");
            any += &format!("[[rule.when-any]]\n{other}\n");
        }
        let high = "check.height.at-least = \"60 in\"\n";
        let mut rules = rule("all", "fall over", &format!("{all}{high}"));
        rules += &rule("any", "fall over", &format!("{high}{any}"));
        let gap = "when.shared = \"yes\"\nwhen.dwellings-in-building.at-most = \"2\"\n\
                   check.any-opening.stops-ball = \"4 in\"";
        rules += &rule("gap", "fall through", gap);
        guard(&rules, &[])
    };
    assert_eq!(short(6), "falls short");
    assert_eq!(short(7), "not measured");
}

#[test]
fn one_ball_cannot_both_stop_and_pass_at_one_place() {
    let ball = |passes: &str| {
        let rows = ["opening,4 in ball stops at 6 in", passes];
        of("check.opening.stops-ball = \"5 in\"", &rows)
    };
    assert_eq!(ball("opening,3 15/16 in ball passes at 6 in"), "meets");
    assert_eq!(ball("opening,4 in ball passes at 6 in"), "not measured");
    assert_eq!(
        ball("opening,4 1/16 in ball passes at 6 in"),
        "not measured"
    );
}

#[test]
fn a_ball_under_the_rail_as_large_as_the_lift_says_no_more_than_it() {
    let stair = |ball: &str| {
        let rows = [
            "place,stair",
            "stair triangle,rise 7 3/4 going 10 lift 1 in",
            &format!("bottom gap,{ball}"),
        ];
        of("check.stair-triangle.stops-ball = \"6 in\"", &rows)
    };
    assert_eq!(stair("15/16 in ball passes"), "meets");
    assert_eq!(stair("1 in ball passes"), "meets");
    assert_eq!(stair("1 1/16 in ball passes"), "not measured");
}

#[test]
fn a_drop_under_a_trigger_is_not_at_it() {
    let height = "check.height.at-least = \"60 in\"";
    let mut rules = rule(
        "gap",
        "fall through",
        "check.any-opening.stops-ball = \"4 in\"",
    );
    for (id, when) in [
        ("low", "when.drop.at-most = \"20 in\""),
        (
            "middle",
            "when.drop = { above = \"20 in\", below = \"30 in\" }",
        ),
        ("high", "when.drop.at-least = \"40 in\""),
    ] {
        rules += &rule(id, "fall over", &format!("{when}\n{height}"));
    }
    assert_eq!(guard(&rules, &["drop,under 30 in"]), "falls short");
    assert_eq!(guard(&rules, &["drop,under 30 1/16 in"]), "not measured");
}

/// A hole is told by the larger ball that passes it, and not by the tape beside it.
#[test]
fn a_ball_that_passes_far_beyond_the_tape_is_what_is_told() {
    let told = |more: &str| {
        let survey = format!(
            "guard,item,reading\nwest,place,deck\nwest,use,dwelling\nwest,drop,8 ft\n\
             west,height,39 in\nwest,bottom gap,2 in\nwest,opening,4 3/8 in\n{more}"
        );
        let args = [
            "check",
            "@s.csv",
            "--rules",
            "us-dwelling-2018",
            "--no-guidance",
        ];
        words(&run(&[("s.csv", &survey)], &args).out)
    };
    assert!(told("").contains("3/8 in too wide"), "{}", told(""));
    let ball = told("west,opening,7 in ball passes\n");
    assert!(ball.contains("4 3/8 in; 7 in ball passes"), "{ball}");
    assert!(ball.contains(": at least 3 in too wide"), "{ball}");
}
