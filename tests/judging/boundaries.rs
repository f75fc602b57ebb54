//! At, just under and just over: what every comparison makes of a value that lies
//! exactly on its limit, one step below it and one step above. The verdicts follow
//! from the words of a rule: at least, more than, at most, less than.

use crate::harness::check;
use crate::harness::finding;
use crate::harness::only_guard;
use crate::harness::run;
use crate::harness::verdict_by;

/// The verdict of one rule, made of these lines, on one guard with these rows; the
/// readings alone are compared.
pub(super) fn of(rule: &str, rows: &[&str]) -> String {
    let rules = format!(
        "id = \"town\"\ntitle = \"T\"\nedition = \"E\"\n[source.s]\ntitle = \"T\"\nedition = \"E\"\n\
         status = \"published\"\n[[rule]]\nid = \"r\"\nhazard = \"fall over\"\nclause = \"1\"\n\
         says = \"Something is asked.\"\nsource = \"s\"\n{rule}\n"
    );
    let mut survey = "guard;item;reading\n".to_owned();
    for row in rows {
        let (item, reading) = row.split_once(',').expect("an item and a reading");
        survey.push_str(&format!("rail;{item};{reading}\n"));
    }
    let args = [
        "check",
        "@s.csv",
        "--rules",
        "@town.toml",
        "--no-guidance",
        "--decision",
        "simple",
        "--format",
        "json",
    ];
    let ran = run(&[("town.toml", &rules), ("s.csv", &survey)], &args);
    let report = ran.json();
    let verdict = finding(only_guard(&report), "r")["verdict"].clone();
    verdict.as_str().expect("a word").to_owned()
}

fn all(rule: &str, item: &str, expected: &[(&str, &str)]) {
    for (reading, verdict) in expected {
        assert_eq!(
            of(rule, &[&format!("{item},{reading}")]),
            *verdict,
            "{rule}: {reading}"
        );
    }
}

const MEETS: &str = "meets";
const SHORT: &str = "falls short";
const OPEN: &str = "not measured";
const ASIDE: &str = "does not apply";

#[test]
fn at_least_is_met_by_equal_and_a_bound_at_the_limit_settles_it() {
    all(
        "check.height.at-least = \"36 in\"",
        "height",
        &[
            ("36 in", MEETS),
            ("35 15/16 in", SHORT),
            ("36 1/16 in", MEETS),
            ("914.399999 mm", SHORT),
            ("914.4 mm", MEETS),
            ("reaches 36 in", MEETS),
            ("reaches 35 15/16 in", OPEN),
            ("below 36 in", SHORT),
            ("below 36 1/16 in", OPEN),
            ("over 36 in", MEETS),
            ("over 35 15/16 in", OPEN),
            ("under 36 in", SHORT),
            ("under 36 1/16 in", OPEN),
        ],
    );
}

#[test]
fn above_is_not_met_by_equal() {
    all(
        "check.height.above = \"36 in\"",
        "height",
        &[
            ("36 in", SHORT),
            ("914.400001 mm", MEETS),
            ("reaches 36 in", OPEN),
            ("reaches 36 1/16 in", MEETS),
            ("over 36 in", MEETS),
            ("over 35 15/16 in", OPEN),
            ("below 36 in", SHORT),
            ("below 36 1/16 in", OPEN),
        ],
    );
}

#[test]
fn at_most_is_met_by_equal() {
    all(
        "check.height.at-most = \"38 in\"",
        "height",
        &[
            ("38 in", MEETS),
            ("965.200001 mm", SHORT),
            ("under 38 in", MEETS),
            ("under 38 1/16 in", OPEN),
            ("over 38 in", SHORT),
            ("over 37 15/16 in", OPEN),
            ("reaches 38 in", OPEN),
            ("reaches 38 1/16 in", SHORT),
            ("below 38 in", MEETS),
        ],
    );
}

#[test]
fn below_is_not_met_by_equal() {
    all(
        "check.height.below = \"38 in\"",
        "height",
        &[
            ("38 in", SHORT),
            ("965.199999 mm", MEETS),
            ("reaches 38 in", SHORT),
            ("reaches 37 15/16 in", OPEN),
            ("under 38 in", MEETS),
            ("under 38 1/16 in", OPEN),
            ("over 38 in", SHORT),
            ("over 37 15/16 in", OPEN),
        ],
    );
}

#[test]
fn both_ends_of_a_range_belong_to_it() {
    all(
        "check.height = { at-least = \"34 in\", at-most = \"38 in\" }",
        "height",
        &[
            ("33 15/16 in", SHORT),
            ("34 in", MEETS),
            ("38 in", MEETS),
            ("38 1/16 in", SHORT),
        ],
    );
}

#[test]
fn a_hole_exactly_as_wide_as_the_ball_lets_it_pass() {
    all(
        "check.opening.stops-ball = \"4 in\"",
        "opening",
        &[
            ("4 in", SHORT),
            ("101.599999 mm", MEETS),
            ("101.6 mm", SHORT),
            ("4 in ball stops", MEETS),
            ("4 1/16 in ball stops", OPEN),
            ("4 in ball passes", SHORT),
            ("3 15/16 in ball passes", OPEN),
            ("under 4 in", MEETS),
            ("under 4 1/16 in", OPEN),
            ("over 4 in", SHORT),
            ("over 3 15/16 in", OPEN),
            ("circle 4 in", SHORT),
            ("rectangle 3 15/16 x 30 in", MEETS),
            ("rectangle 4 x 30 in", SHORT),
        ],
    );
}

#[test]
fn an_opening_at_most_so_wide_may_be_exactly_so_wide() {
    all(
        "check.opening.at-most = \"4 in\"",
        "opening",
        &[
            ("4 in", MEETS),
            ("101.600001 mm", SHORT),
            ("4 in ball stops", MEETS),
            ("4 in ball passes", OPEN),
            ("4 1/16 in ball passes", SHORT),
            ("over 4 in", SHORT),
            ("over 3 15/16 in", OPEN),
            ("under 4 in", MEETS),
        ],
    );
}

#[test]
fn the_ends_of_a_forbidden_band_lie_outside_it() {
    let rule = "check.opening.not-within = { above = \"3 1/2 in\", below = \"9 in\" }";
    all(
        rule,
        "opening",
        &[
            ("3 1/2 in", MEETS),
            ("88.900001 mm", SHORT),
            ("228.599999 mm", SHORT),
            ("9 in", MEETS),
            ("3 1/2 in ball stops", MEETS),
            ("3 9/16 in ball stops", OPEN),
            ("9 in ball passes", MEETS),
            ("8 15/16 in ball passes", OPEN),
            ("over 9 in", MEETS),
            ("under 3 1/2 in", MEETS),
        ],
    );
}

#[test]
fn a_push_exactly_as_asked_counts() {
    let rule = "check.opening = { stops-ball = \"4 in\", pushed = \"50 lbf\" }";
    all(
        rule,
        "opening",
        &[
            ("4 in ball stops pushed 50 lbf", MEETS),
            ("4 in ball stops pushed 51 lbf", MEETS),
            ("4 in ball stops pushed 49 lbf", OPEN),
            ("4 in ball stops pushed by hand", OPEN),
            ("4 in ball stops", OPEN),
            // wide open without a push is wide open
            ("4 in ball passes", SHORT),
            ("none", MEETS),
        ],
    );
}

#[test]
fn a_zone_ends_where_it_ends_and_its_ends_belong_to_it() {
    let rule = "check.opening = { stops-ball = \"4 in\", zone = [\"10 in\", \"36 in\"] }";
    let with = |reading: &str| {
        of(
            rule,
            &[
                "infill,panel",
                "opening,3 in",
                &format!("opening,{reading}"),
            ],
        )
    };
    for (reading, verdict) in [
        ("6 in at 36 in to 44 in", SHORT),
        ("6 in at 36 1/16 in to 44 in", MEETS),
        ("6 in at 2 in to 10 in", SHORT),
        ("6 in at 2 in to 9 15/16 in", MEETS),
        ("6 in at 36 in", SHORT),
        ("6 in at 10 in", SHORT),
        // half of it may reach in
        ("6 in at 39 in", OPEN),
        ("6 in at 39 1/16 in", MEETS),
        ("6 in at 7 in", OPEN),
        ("6 in at 6 15/16 in", MEETS),
    ] {
        assert_eq!(with(reading), verdict, "{reading}");
    }
}

#[test]
fn a_drop_at_the_trigger_is_not_above_it() {
    let rule = "when.drop.above = \"30 in\"\ncheck.height.at-least = \"36 in\"";
    let with = |drop: &str| of(rule, &["height,35 in", &format!("drop,{drop}")]);
    for (drop, verdict) in [
        ("30 in", ASIDE),
        ("762.000001 mm", SHORT),
        ("30 1/16 in", SHORT),
        ("over 30 in", SHORT),
        ("over 29 15/16 in", OPEN),
        ("under 30 in", ASIDE),
        ("under 30 1/16 in", OPEN),
    ] {
        assert_eq!(with(drop), verdict, "{drop}");
    }
    let two = ["height,35 in", "drop,30 in", "drop,30 1/16 in"];
    assert_eq!(of(rule, &two), SHORT, "the greatest governs");
}

#[test]
fn a_drop_at_the_trigger_is_at_least_it() {
    let rule = "when.drop.at-least = \"1 m\"\ncheck.height.at-least = \"36 in\"";
    let with = |drop: &str| of(rule, &["height,35 in", &format!("drop,{drop}")]);
    for (drop, verdict) in [
        ("1 m", SHORT),
        ("999.999999 mm", ASIDE),
        ("over 1 m", SHORT),
        ("over 999 mm", OPEN),
        ("under 1 m", ASIDE),
        ("under 1001 mm", OPEN),
    ] {
        assert_eq!(with(drop), verdict, "{drop}");
    }
    let range = "when.drop = { above = \"600 mm\", at-most = \"1800 mm\" }\n\
                 check.height.at-least = \"36 in\"";
    let with = |drop: &str| of(range, &["height,35 in", &format!("drop,{drop}")]);
    for (drop, verdict) in [
        ("600 mm", ASIDE),
        ("601 mm", SHORT),
        ("1800 mm", SHORT),
        ("1800.000001 mm", ASIDE),
        ("over 1800 mm", ASIDE),
        ("under 600 mm", ASIDE),
    ] {
        assert_eq!(with(drop), verdict, "{drop}");
    }
}

#[test]
fn the_greatest_count_governs_and_equal_counts() {
    let rule = "when.risers.at-least = \"4\"\ncheck.height.at-least = \"36 in\"";
    let with = |risers: &[&str]| {
        let mut rows = vec!["height,35 in".to_owned()];
        rows.extend(risers.iter().map(|count| format!("risers,{count}")));
        of(rule, &rows.iter().map(String::as_str).collect::<Vec<_>>())
    };
    assert_eq!(with(&["3"]), ASIDE);
    assert_eq!(with(&["4"]), SHORT);
    assert_eq!(with(&["3", "4"]), SHORT);
    assert_eq!(with(&["4", "3"]), SHORT);
    assert_eq!(with(&["2", "3"]), ASIDE);
    assert_eq!(with(&["3", "not reached"]), OPEN);
    let most = "when.risers.at-most = \"3\"\ncheck.height.at-least = \"36 in\"";
    assert_eq!(of(most, &["height,35 in", "risers,3"]), SHORT);
    assert_eq!(of(most, &["height,35 in", "risers,4"]), ASIDE);
    assert_eq!(of(most, &["height,35 in", "risers,3", "risers,4"]), ASIDE);
    let above = "when.risers.above = \"3\"\ncheck.height.at-least = \"36 in\"";
    assert_eq!(of(above, &["height,35 in", "risers,3"]), ASIDE);
    assert_eq!(of(above, &["height,35 in", "risers,4"]), SHORT);
    let below = "when.risers.below = \"4\"\ncheck.height.at-least = \"36 in\"";
    assert_eq!(of(below, &["height,35 in", "risers,3"]), SHORT);
    assert_eq!(of(below, &["height,35 in", "risers,4"]), ASIDE);
}

#[test]
fn an_age_and_a_year_at_the_limit() {
    let young = "when.children.below = \"36 months\"\ncheck.height.at-least = \"36 in\"";
    let with = |age: &str| of(young, &["height,35 in", &format!("children,{age}")]);
    for (age, verdict) in [
        ("35 months", SHORT),
        ("36 months", ASIDE),
        ("3 years", ASIDE),
        ("none", ASIDE),
    ] {
        assert_eq!(with(age), verdict, "{age}");
    }
    let both = ["height,35 in", "children,9 years", "children,35 months"];
    assert_eq!(of(young, &both), SHORT, "one child suffices");
    let old = "when.children.at-least = \"36 months\"\ncheck.height.at-least = \"36 in\"";
    assert_eq!(of(old, &["height,35 in", "children,3 years"]), SHORT);
    assert_eq!(of(old, &["height,35 in", "children,35 months"]), ASIDE);
    for (rule, year, verdict) in [
        ("at-least = \"1994\"", "1994", SHORT),
        ("at-least = \"1994\"", "1993", ASIDE),
        ("at-least = \"1994\"", "1990-1993", ASIDE),
        ("at-least = \"1994\"", "1990-1994", OPEN),
        ("at-least = \"1994\"", "before 1994", ASIDE),
        ("at-least = \"1994\"", "after 1993", SHORT),
        ("at-least = \"1994\"", "after 1992", OPEN),
        ("above = \"1994\"", "1994", ASIDE),
        ("above = \"1994\"", "1995", SHORT),
        ("at-most = \"1994\"", "1994", SHORT),
        ("at-most = \"1994\"", "1995", ASIDE),
        ("below = \"1994\"", "1994", ASIDE),
        ("below = \"1994\"", "1993", SHORT),
        ("below = \"1994\"", "before 1994", SHORT),
        ("below = \"1994\"", "before 1995", OPEN),
    ] {
        let rule = format!("when.built.{rule}\ncheck.height.at-least = \"36 in\"");
        let row = format!("built,{year}");
        assert_eq!(
            of(&rule, &["height,35 in", &row]),
            verdict,
            "{rule}: {year}"
        );
    }
}

#[test]
fn the_ends_of_a_zone_without_footholds_belong_to_it() {
    all(
        "check.foothold.none-within = [\"140 mm\", \"900 mm\"]",
        "foothold",
        &[
            ("139 mm high 40 mm deep", MEETS),
            ("140 mm high 40 mm deep", SHORT),
            ("900 mm high 40 mm deep", SHORT),
            ("901 mm high 40 mm deep", MEETS),
            ("none", MEETS),
        ],
    );
    let deep =
        "check.foothold = { none-within = [\"140 mm\", \"900 mm\"], deeper-than = \"15 mm\" }";
    all(
        deep,
        "foothold",
        &[
            ("300 mm high 15 mm deep", MEETS),
            ("300 mm high 16 mm deep", SHORT),
        ],
    );
}

#[test]
fn ledges_exactly_so_far_apart_are_a_ladder_or_none() {
    let rows = |upper: &str| {
        [
            "foothold,200 mm high 40 mm deep".to_owned(),
            format!("foothold,{upper} high 40 mm deep"),
        ]
    };
    let with = |rule: &str, upper: &str| {
        let rows = rows(upper);
        of(rule, &[&rows[0], &rows[1]])
    };
    let up_to = "check.foothold.ladder-up-to = \"450 mm\"";
    assert_eq!(with(up_to, "650 mm"), SHORT);
    assert_eq!(with(up_to, "651 mm"), MEETS);
    let below = "check.foothold.ladder-below = \"450 mm\"";
    assert_eq!(with(below, "649 mm"), SHORT);
    assert_eq!(with(below, "650 mm"), MEETS);
}

#[test]
fn an_angle_of_exactly_what_is_asked_is_wide_enough() {
    // 3 : 4 : 5 doubled: sides that meet at 2 atan(1/2) = 53.13 degrees
    let rule = |angle: &str| format!("check.v-opening.angle-at-least = \"{angle}\"");
    assert_eq!(
        of(&rule("53 deg"), &["v opening,10 in wide 10 in deep"]),
        MEETS
    );
    assert_eq!(
        of(&rule("54 deg"), &["v opening,10 in wide 10 in deep"]),
        SHORT
    );
}

#[test]
fn a_guard_of_errors_alone_could_not_be_judged_and_one_right_row_is_enough_to_judge() {
    let law = ["--rules", "us-dwelling-2018", "--no-guidance"];
    let of = |rows: &str| check(&format!("guard,item,reading\n{rows}"), &law).json();
    let none = of("rail,height,abouut\nrail,opening,12\n");
    assert_eq!(none["summary"]["could_not_judge"], 1);
    let one = of("rail,height,abouut\nrail,opening,3 in\n");
    assert_eq!(one["summary"]["could_not_judge"], 0);
    assert_eq!(one["summary"]["not_measured"], 1);
}

#[test]
fn what_is_certain_has_no_chance() {
    let law = ["--rules", "us-dwelling-2018", "--no-guidance"];
    let rows = "guard,item,reading\nrail,place,landing\nrail,drop,9 ft\nrail,height,42 in\n\
        rail,opening,none\nrail,bottom gap,4 in ball stops\n";
    let report = check(rows, &law).json();
    let findings = only_guard(&report)["findings"]
        .as_array()
        .expect("findings");
    let chance = |item: &str| {
        let of = findings.iter().filter(|finding| finding["item"] == item);
        let mut of = of.filter(|finding| finding["verdict"] == "meets");
        of.next().expect("a finding")["probability"].clone()
    };
    assert!(chance("height").is_number());
    assert!(chance("opening").is_null() && chance("bottom gap").is_null());
}

#[test]
fn a_danger_that_is_written_twice_is_told_once() {
    let law = ["--rules", "us-dwelling-2018", "--no-guidance"];
    let rows = "guard,item,reading\nrail,height,42 in\nrail,moves when pushed,a lot\n\
        rail,moves when pushed,a lot\nrail,condition,rot\n";
    let report = check(rows, &law).json();
    let dangers = only_guard(&report)["dangers"].as_array().expect("dangers");
    assert_eq!(dangers.len(), 2, "{dangers:?}");
}

#[test]
fn a_rule_that_was_taken_away_and_asked_nothing_here_changes_nothing() {
    let town = "id = \"town\"\ntitle = \"T\"\nedition = \"E\"\nextends = \"us-dwelling-2018\"\n\
        remove = [\"step-triangle-too-wide\"]\n";
    let of = |rows: &str| {
        let survey = format!("guard,item,reading\nrail,use,dwelling\n{rows}");
        verdict_by("@town.toml", town, &survey)
    };
    let low = "rail,drop,20 in\nrail,height,30 in\nrail,opening,3 in\nrail,bottom gap,2 in\n";
    assert_eq!(of(&format!("rail,place,landing\n{low}")), ASIDE);
    // on a stair it would have asked something
    let stair = of(&format!("rail,place,stair\nrail,risers,3\n{low}").replace("20 in", "9 ft"));
    assert_ne!(stair, MEETS);
}

/// The rules of a town for landings and decks: what is covered beside what is asked.
#[test]
fn a_place_that_may_lie_outside_what_is_covered_lets_nothing_meet() {
    let rule = |id: &str, hazard: &str, check: &str| {
        format!(
            "[[rule]]\nid = \"{id}\"\nhazard = \"{hazard}\"\nclause = \"1\"\nsays = \"S.\"\n\
             source = \"s\"\n{check}\n"
        )
    };
    let town = format!(
        "id = \"town\"\ntitle = \"T\"\nedition = \"E\"\n[covers]\nsays = \"landings, decks\"\n\
         place = [\"landing\", \"deck\"]\n[source.s]\ntitle = \"T\"\nedition = \"E\"\n\
         status = \"published\"\n{}{}{}",
        rule(
            "a",
            "fall over",
            "when.place = [\"landing\"]\ncheck.height.at-least = \"36 in\""
        ),
        rule(
            "b",
            "fall over",
            "when.place = [\"deck\"]\ncheck.height.at-least = \"36 in\""
        ),
        rule("c", "fall through", "check.opening.stops-ball = \"4 in\""),
    );
    let of = |rows: &str| {
        let survey = format!("guard,item,reading\n{rows}");
        let files = [("town.toml", town.as_str()), ("s.csv", survey.as_str())];
        let args = [
            "check",
            "@s.csv",
            "--rules",
            "@town.toml",
            "--no-guidance",
            "--format",
            "json",
        ];
        let ran = run(&files, &args);
        let report = ran.json();
        only_guard(&report)["verdict"]
            .as_str()
            .expect("a word")
            .to_owned()
    };
    let fine = "rail,height,42 in\nrail,opening,3 in\n";
    assert_eq!(of(&format!("rail,place,deck\n{fine}")), MEETS);
    assert_eq!(of(fine), OPEN, "it may stand at a window");
    // too low at both, and told as if one of them held
    assert_eq!(of("rail,height,30 in\nrail,opening,3 in\n"), SHORT);
    assert_eq!(of(&format!("rail,place,window\n{fine}")), "not settled");
}

#[test]
fn a_gap_that_lets_a_small_body_in_begins_and_ends_where_it_is_said_to() {
    let law = ["--rules", "us-dwelling-2018", "--no-guidance"];
    for (gap, warned) in [
        ("3 7/16 in", false),
        ("3 1/2 in", true),
        ("4 in", true),
        ("4 1/16 in", false),
    ] {
        let rows = format!("guard,item,reading\nrail,place,landing\nrail,opening,{gap}\n");
        let report = check(&rows, &law).json();
        let cautions = only_guard(&report)["cautions"].to_string();
        assert_eq!(cautions.contains("small child's body in"), warned, "{gap}");
    }
}

/// The ball says less than the tape that was held at the same place.
#[test]
fn a_gauge_that_settles_nothing_takes_nothing_from_a_tape_at_its_place() {
    let law = ["--rules", "us-dwelling-2018", "--no-guidance"];
    let of = |ball: &str| {
        let rows = format!(
            "guard,item,reading\nrail,place,landing\nrail,drop,9 ft\nrail,height,42 in\n\
             rail,bottom gap,none\nrail,infill,panel\nrail,opening,3 in at 10 in\n\
             rail,opening,{ball}\n"
        );
        let report = check(&rows, &law).json();
        only_guard(&report)["verdict"]
            .as_str()
            .expect("a word")
            .to_owned()
    };
    assert_eq!(of("6 in ball stops at 10 in"), MEETS);
    assert_eq!(of("6 in ball stops at 12 in"), OPEN);
}

/// A probe that just fits goes in, and a head of exactly the opening comes out again.
#[test]
fn both_ends_of_what_holds_a_head_are_judged_as_they_read() {
    let rule = "check.opening.entraps = { admits = \"3 1/2 x 6.2 in\", stops-ball = \"9 in\" }";
    all(
        rule,
        "opening",
        &[
            ("3 7/16 in", MEETS),
            ("3 1/2 in", SHORT),
            ("8 15/16 in", SHORT),
            ("9 in", MEETS),
            ("rectangle 3 7/16 x 30 in", MEETS),
            ("rectangle 3 1/2 x 6.2 in", SHORT),
            ("rectangle 8 15/16 x 30 in", SHORT),
            ("rectangle 9 x 30 in", MEETS),
            ("circle 8 15/16 in", SHORT),
            ("circle 9 in", MEETS),
        ],
    );
}

#[test]
fn a_ledge_that_slopes_exactly_as_much_as_is_allowed_is_a_foothold() {
    let rule =
        "check.foothold = { none-within = [\"140 mm\", \"900 mm\"], no-steeper-than = \"1:2\" }";
    all(
        rule,
        "foothold",
        &[
            ("300 mm high 40 mm deep slope 1:2", SHORT),
            ("300 mm high 40 mm deep slope 26 deg", SHORT),
            ("300 mm high 40 mm deep slope 27 deg", MEETS),
        ],
    );
}

#[test]
fn a_name_without_a_reading_is_not_measured_and_no_guard_of_errors() {
    let law = ["--rules", "us-dwelling-2018", "--no-guidance"];
    let report = check("guard,height,opening\nrail,,\nother,42 in,\n", &law).json();
    assert_eq!(report["summary"]["could_not_judge"], 0, "{report}");
    assert_eq!(report["summary"]["not_measured"], 2);
}

/// As large as the ball that the triangle at the steps must stop, it is too large for
/// that as well.
#[test]
fn a_hole_as_wide_as_the_ball_of_the_steps_is_not_asked_whether_it_is_theirs() {
    let law = ["--rules", "us-dwelling-2018", "--no-guidance"];
    let of = |opening: &str| {
        let rows = format!(
            "guard,item,reading\nrail,place,stair\nrail,drop,9 ft\nrail,opening,{opening}\n"
        );
        let report = check(&rows, &law).json();
        let found = finding(only_guard(&report), "stair-gap-too-wide");
        found["reasons"]
            .to_string()
            .contains("triangle at the steps")
    };
    assert!(of("5 15/16 in"));
    assert!(!of("6 in"));
}

#[test]
fn a_plan_with_a_quarter_of_an_inch_to_spare_leaves_room_for_the_builder() {
    let law = ["--rules", "us-dwelling-2018", "--no-guidance"];
    let of = |height: &str| {
        let rows = format!(
            "guard,item,reading\nrail,place,landing\nrail,state,proposed\nrail,drop,9 ft\nrail,height,{height}\n"
        );
        let report = check(&rows, &law).json();
        let found = finding(only_guard(&report), "rail-too-low");
        found["reasons"].to_string().contains("builder's error")
    };
    assert!(of("36 3/16 in"));
    assert!(!of("36 1/4 in"));
}

#[test]
fn a_gap_that_nobody_could_reach_is_said_so_where_the_place_is_unknown_too() {
    let law = ["--rules", "us-dwelling-2018", "--no-guidance"];
    let rows =
        "guard,item,reading\nrail,drop,9 ft\nrail,opening,3 in\nrail,bottom gap,not reached\n";
    let report = check(rows, &law).json();
    let findings = only_guard(&report)["findings"]
        .as_array()
        .expect("findings");
    let gap = findings
        .iter()
        .find(|finding| finding["item"] == "bottom gap");
    let gap = gap.expect("a finding");
    assert_eq!(gap["verdict"], "not measured");
    assert!(gap["reasons"].to_string().contains("not reached"), "{gap}");
}
