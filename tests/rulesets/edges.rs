//! Limits of a ruleset that touch each other: which of them can be kept, and which is a
//! contradiction that is told.

use crate::harness::run;

/// What is said of a ruleset whose head and check are these.
fn said(head: &str, check: &str) -> String {
    let town = format!(
        "id = \"town\"\ntitle = \"T\"\nedition = \"E\"\n{head}[source.s]\ntitle = \"T\"\nedition = \"E\"\n\
         status = \"published\"\n[[rule]]\nid = \"r\"\nhazard = \"fall through\"\nclause = \"1\"\n\
         says = \"Something is asked.\"\nsource = \"s\"\n{check}\n"
    );
    run(&[("town.toml", &town)], &["rules", "test", "@town.toml"]).err
}

fn kept(check: &str) {
    let err = said("", check);
    assert!(!err.contains("error"), "{check}\n{err}");
}

fn refused(check: &str, because: &str) {
    let err = crate::harness::words(&said("", check));
    assert!(err.contains(because), "{check}\n{err}");
}

#[test]
fn at_least_and_at_most_may_meet_in_one_value_and_no_other_two() {
    kept("check.height = { at-least = \"36 in\", at-most = \"36 in\" }");
    refused(
        "check.height = { at-least = \"36 in\", at-most = \"35 15/16 in\" }",
        "nothing is both",
    );
    refused(
        "check.height = { above = \"36 in\", at-most = \"36 in\" }",
        "nothing is both",
    );
    refused(
        "check.height = { at-least = \"36 in\", below = \"36 in\" }",
        "nothing is both",
    );
}

#[test]
fn an_opening_may_be_exactly_as_wide_as_asked_where_equal_is_fine() {
    kept("check.opening = { at-least = \"2 in\", at-most = \"2 in\" }");
    kept("check.opening = { at-least = \"2 in\", stops-ball = \"2 1/16 in\" }");
    refused(
        "check.opening = { at-least = \"2 in\", stops-ball = \"2 in\" }",
        "no opening is at least 2 in",
    );
    refused(
        "check.opening = { at-least = \"2 in\", at-most = \"1 15/16 in\" }",
        "no opening is at least 2 in",
    );
}

#[test]
fn a_band_a_zone_and_a_head_have_a_width() {
    for (ends, fine) in [
        (["3 in", "9 in"], true),
        (["9 in", "9 in"], false),
        (["9 in", "3 in"], false),
    ] {
        let [low, high] = ends;
        let band =
            format!("check.opening.not-within = {{ above = \"{low}\", below = \"{high}\" }}");
        let zone =
            format!("check.opening = {{ stops-ball = \"4 in\", zone = [\"{low}\", \"{high}\"] }}");
        let head = format!(
            "check.opening.entraps = {{ admits = \"{low} x 12 in\", stops-ball = \"{high}\" }}"
        );
        for (check, because) in [
            (band, "upside down"),
            (zone, "upside down"),
            (head, "nothing admits a probe"),
        ] {
            if fine {
                kept(&check);
            } else {
                refused(&check, because);
            }
        }
    }
}

#[test]
fn an_edition_is_in_force_for_a_year_at_least() {
    let of = |until: &str| {
        said(
            &format!("in-force = {{ from = \"2018\", until = \"{until}\" }}\n"),
            "check.height.at-least = \"36 in\"",
        )
    };
    assert!(!of("2019").contains("error"), "{}", of("2019"));
    assert!(of("2018").contains("does not come after"));
}

#[test]
fn a_limit_may_be_as_lax_as_the_laxest_that_is_usual_and_no_laxer() {
    for (check, fine) in [
        ("check.height.at-least = \"12 in\"", true),
        ("check.height.at-least = \"11 15/16 in\"", false),
        ("check.height.above = \"12 in\"", true),
        ("check.height.above = \"304 mm\"", false),
        ("check.height.at-most = \"8 ft\"", true),
        ("check.height.at-most = \"8 ft 1/16 in\"", false),
        ("check.height.below = \"8 ft\"", true),
        ("check.height.below = \"8 ft 1/16 in\"", false),
        // one that asks for more than is usual falls short, and is seen
        ("check.height.at-least = \"36 m\"", true),
        ("check.height.at-most = \"36 mm\"", true),
        ("check.opening.at-most = \"24 in\"", true),
        ("check.opening.at-most = \"24 1/16 in\"", false),
        ("check.any-opening.stops-ball = \"24 in\"", true),
        ("check.any-opening.stops-ball = \"24 1/16 in\"", false),
        ("check.opening.at-most = \"1 mm\"", true),
        ("check.stair-triangle.stops-ball = \"24 in\"", true),
        ("check.stair-triangle.stops-ball = \"24 1/16 in\"", false),
    ] {
        one_side(check, fine);
    }
}

#[test]
fn a_trigger_is_at_most_twice_what_is_usual_and_at_least_half_of_it() {
    for (drop, fine) in [
        ("100 ft", true),
        ("1200 1/16 in", false),
        ("2 in", true),
        ("1 15/16 in", false),
        ("0 in", true),
    ] {
        for key in ["above", "at-least", "at-most", "below"] {
            // no dimension of a guard, of which a rule begins at 4 m at the latest
            let when =
                format!("when.drop.{key} = \"{drop}\"\ncheck.handrail-height.at-least = \"34 in\"");
            one_side(&when, fine);
        }
    }
}

fn one_side(asks: &str, fine: bool) {
    if fine {
        kept(asks);
    } else {
        refused(asks, "look at the number and its unit again");
    }
}
