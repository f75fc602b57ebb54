//! Rules that a person wrote: what they do not ask of a hole that is there, and limits
//! that no railing has.

use crate::harness::Ran;
use crate::harness::only_guard;
use crate::harness::run;
use crate::harness::verdict_by;
use crate::harness::words;

/// A landing 9 ft up, 42 in high with openings of 3 in, and these rows.
fn judged(town: &str, rows: &[&str], format: &str) -> Ran {
    let mut survey =
        "guard,item,reading\ng,place,landing\ng,drop,9 ft\ng,opening,3 in\n".to_owned();
    for row in rows {
        survey.push_str(&format!("g,{row}\n"));
    }
    let files = [("town.toml", town), ("survey.csv", survey.as_str())];
    let args = [
        "check",
        "@survey.csv",
        "--rules",
        "@town.toml",
        "--no-guidance",
        "--format",
        format,
    ];
    run(&files, &args)
}

fn verdict(town: &str, rows: &[&str]) -> String {
    let report = judged(town, rows, "json").json();
    let verdict = only_guard(&report)["verdict"].as_str();
    verdict.expect("a word").to_owned()
}

const SOURCE: &str = "[source.s]\ntitle = \"Our own\"\nedition = \"E\"\nstatus = \"published\"\n";

/// A height, and openings in the infill alone.
fn openings_alone(opening: &str) -> String {
    format!(
        "id = \"town\"\ntitle = \"T\"\nedition = \"E\"\n{SOURCE}\
         [[rule]]\nid = \"rail-too-low\"\nhazard = \"fall over\"\nclause = \"1\"\n\
         check.height.at-least = \"36 in\"\nsays = \"A guard is 36 in high.\"\nsource = \"s\"\n\
         [[rule]]\nid = \"gap-too-wide\"\nhazard = \"fall through\"\nclause = \"2\"\n\
         {opening}\nsays = \"An opening is narrow.\"\nsource = \"s\"\n"
    )
}

#[test]
fn a_wider_hole_that_no_rule_asks_about_is_not_settled() {
    let town = openings_alone("check.opening.stops-ball = \"4 in\"");
    let of = |row: &str| verdict(&town, &["height,42 in", row]);
    assert_eq!(verdict(&town, &["height,42 in"]), "meets");
    for item in [
        "bottom gap",
        "end gap",
        "edge gap",
        "gap above solid part",
        "riser opening",
    ] {
        assert_eq!(of(&format!("{item},9 in")), "not settled", "{item}");
        assert_eq!(of(&format!("{item},3 in")), "meets", "{item}");
        assert_eq!(of(&format!("{item},none")), "meets", "{item}");
    }
    for (ball, expected) in [
        ("4 in ball stops", "meets"),
        ("4 1/16 in ball stops", "not settled"),
        ("4 in ball passes", "not settled"),
        ("3 15/16 in ball passes", "not settled"),
    ] {
        assert_eq!(of(&format!("bottom gap,{ball}")), expected, "{ball}");
    }
    let ran = judged(&town, &["height,42 in", "bottom gap,9 in"], "text");
    let text = words(&ran.out);
    assert_eq!(ran.code, 3, "{text}");
    let says = "Rule unclear: gaps: no rule of town that was read asks about the bottom gap";
    assert!(text.contains(says), "{text}");
}

#[test]
fn a_wider_hole_stays_short_where_a_rule_asks_about_it() {
    let any = openings_alone("check.any-opening.stops-ball = \"4 in\"");
    assert_eq!(
        verdict(&any, &["height,42 in", "bottom gap,9 in"]),
        "falls short"
    );
    let low = openings_alone("check.opening.stops-ball = \"4 in\"");
    assert_eq!(
        verdict(&low, &["height,20 in", "bottom gap,9 in"]),
        "falls short"
    );
}

#[test]
fn on_a_stair_a_lift_that_no_rule_asks_about_is_a_hole() {
    let town = openings_alone("check.opening.stops-ball = \"4 in\"");
    let stair = |rows: &[&str]| {
        let mut survey =
            "guard,item,reading\ns,place,stair\ns,height,42 in\ns,opening,3 in\n".to_owned();
        for row in rows {
            survey.push_str(&format!("s,{row}\n"));
        }
        verdict_by("@town.toml", &town, &survey)
    };
    assert_eq!(stair(&[]), "meets");
    assert_eq!(stair(&["bottom gap,1 in"]), "meets");
    assert_eq!(stair(&["bottom gap,9 in"]), "not settled");
    let triangle = "stair triangle,rise 7 3/4 going 10 lift 2 in";
    assert_eq!(stair(&[triangle]), "not settled");
    assert_eq!(stair(&["stair triangle,4 in ball stops"]), "meets");
    assert_eq!(stair(&["stair triangle,none"]), "meets");
}

#[test]
fn open_risers_wider_than_an_opening_may_be_meet_no_text_whose_clause_was_not_read() {
    for rules in ["new-york-city", "scotland-1999", "us-buildings-2018"] {
        let stair = |riser: &str| {
            let survey = format!(
                "guard,item,reading\ns,place,stair\ns,use,dwelling\ns,shared,no\ns,drop,2.9 m\n\
                 s,height,1100 mm\ns,opening,40 mm\ns,stair triangle,none\ns,bottom gap,none\n\
                 s,location,inside\ns,dwellings in building,1\ns,storeys,2\ns,risers,14\n\
                 s,handrail,separate\ns,handrail height,920 mm\ns,handrail sides,both\n\
                 s,foothold,none\ns,infill,balusters\ns,riser opening,{riser}\n"
            );
            verdict_by(rules, "", &survey)
        };
        assert_eq!(stair("none"), "meets", "{rules}");
        assert_eq!(stair("6 in"), "not settled", "{rules}");
    }
}

/// An amendment of `us-dwelling-2018` whose rule has a slip of the unit.
fn amended(id: &str, hazard: &str, asks: &str) -> String {
    format!(
        "id = \"town\"\ntitle = \"T\"\nedition = \"E\"\nextends = \"us-dwelling-2018\"\n{SOURCE}\
         [[rule]]\nid = \"{id}\"\nhazard = \"{hazard}\"\nclause = \"1\"\n{asks}\n\
         says = \"It is as wide or as high as our town says.\"\nsource = \"s\"\n"
    )
}

#[test]
fn a_limit_that_no_railing_has_lets_nothing_meet() {
    let closed = "bottom gap,none";
    for (id, hazard, asks, bad) in [
        (
            "rail-too-low",
            "fall over",
            "check.height.at-least = \"36 mm\"",
            "height,20 in",
        ),
        (
            "rail-too-low",
            "fall over",
            "when.drop.above = \"36 m\"\ncheck.height.at-least = \"36 in\"",
            "height,20 in",
        ),
        (
            "gap-too-wide",
            "fall through",
            "check.any-opening.stops-ball = \"4 m\"",
            "opening,9 in",
        ),
        (
            "gap-too-wide",
            "fall through",
            "check.any-opening.at-most = \"100 cm\"",
            "opening,9 in",
        ),
    ] {
        let town = amended(id, hazard, asks);
        let ran = judged(&town, &["height,42 in", closed, bad], "json");
        // the rule that it would have replaced stays in force
        let report = ran.json();
        assert_eq!(only_guard(&report)["verdict"], "falls short", "{asks}");
        assert!(ran.err.contains("G131"), "{asks}\n{}", ran.err);
        assert_eq!(ran.code, 2, "{asks}");
        assert_eq!(
            verdict(&town, &["height,42 in", closed]),
            "not settled",
            "{asks}"
        );
    }
    let right = amended(
        "rail-too-low",
        "fall over",
        "check.height.at-least = \"40 in\"",
    );
    assert_eq!(verdict(&right, &["height,42 in", closed]), "meets");
}

#[test]
fn a_house_of_more_than_three_storeys_lies_outside_the_code_for_houses() {
    for rules in [
        "us-dwelling-2015",
        "us-dwelling-2018",
        "us-dwelling-2024",
        "ohio-dwelling",
    ] {
        let of = |storeys: &str| {
            let survey = format!(
                "guard,item,reading\ng,place,landing\ng,use,dwelling\ng,drop,9 ft\ng,height,42 in\n\
                 g,opening,3 in\ng,bottom gap,none\n{storeys}"
            );
            verdict_by(rules, "", &survey)
        };
        assert_eq!(of(""), "meets", "{rules}");
        assert_eq!(of("g,storeys,3\n"), "meets", "{rules}");
        assert_eq!(of("g,storeys,4\n"), "not settled", "{rules}");
    }
}

#[test]
fn a_rule_that_begins_where_no_text_begins_lets_nothing_meet() {
    let (high, closed) = ("height,42 in", "bottom gap,none");
    let of_height = "check.height.at-least = \"36 in\"";
    let of_gaps = "check.any-opening.stops-ball = \"4 in\"";
    for (id, hazard, asks) in [
        (
            "rail-too-low",
            "fall over",
            format!("when.drop.above = \"30 ft\"\n{of_height}"),
        ),
        (
            "rail-too-low",
            "fall over",
            format!("when.drop.at-least = \"4001 mm\"\n{of_height}"),
        ),
        (
            "rail-too-low",
            "fall over",
            format!("when.storeys.above = 30\n{of_height}"),
        ),
        (
            "gap-too-wide",
            "fall through",
            format!("when.drop.above = \"30 ft\"\n{of_gaps}"),
        ),
        (
            "gap-too-wide",
            "fall through",
            format!("{of_gaps}\n[[rule.unless]]\ndrop.at-most = \"30 ft\""),
        ),
        (
            "gap-too-wide",
            "fall through",
            format!("{of_gaps}\n[[rule.when-any]]\ndrop.above = \"30 ft\""),
        ),
    ] {
        // what it asks stands before the tables that belong to it
        let (asks, tables) = asks
            .split_once("\n[[")
            .map_or((asks.as_str(), ""), |(a, t)| (a, t));
        let tables = if tables.is_empty() {
            String::new()
        } else {
            format!("[[{tables}\n")
        };
        let town = format!("{}{tables}", amended(id, hazard, asks));
        let ran = judged(&town, &[high, closed], "json");
        assert_eq!(only_guard(&ran.json())["verdict"], "not settled", "{town}");
        assert!(ran.err.contains("G131"), "{town}\n{}", ran.err);
        assert_eq!(ran.code, 2, "{town}");
    }
    // what asks for more higher up stands beside a rule that begins lower; and 4 m is read
    let higher = amended(
        "rail-higher",
        "fall over",
        "when.drop.above = \"30 ft\"\ncheck.height.at-least = \"42 in\"",
    );
    assert_eq!(verdict(&higher, &[high, closed]), "meets");
    let late = amended(
        "rail-too-low",
        "fall over",
        &format!("when.drop.above = \"4000 mm\"\n{of_height}"),
    );
    let ran = judged(&late, &[high, closed], "json");
    assert!(!ran.err.contains("G131"), "{}", ran.err);
}

#[test]
fn what_an_amendment_asks_less_is_said_rule_by_rule() {
    let told = |town: &str| {
        let ran = judged(town, &["height,42 in", "bottom gap,none"], "text");
        let tested = run(&[("town.toml", town)], &["rules", "test", "@town.toml"]);
        (words(&ran.out), words(&tested.out))
    };
    let same = "when.drop.above = \"30 in\"\nwhen.place = [\"landing\", \"floor edge\", \"ramp\", \"deck\", \
\"terrace\", \"balcony\", \"porch\"]\n";
    for (id, hazard, asks, says) in [
        (
            "rail-too-low",
            "fall over",
            format!("{same}check.height.at-least = \"30 in\""),
            "IT ASKS LESS (height: at least 30 in in place of at least 36 in)",
        ),
        (
            "rail-too-low",
            "fall over",
            format!(
                "{}check.height.at-least = \"36 in\"",
                same.replace("30 in", "4 ft")
            ),
            "IT ASKS LESS (only where drop more than 4 ft in place of drop more than 30 in)",
        ),
        (
            "rail-too-low",
            "fall over",
            format!(
                "{}check.height.at-least = \"36 in\"",
                same.replace("\"porch\"", "\"roof\"")
            ),
            "IT ASKS LESS (only where place is landing",
        ),
        (
            "gap-too-wide",
            "fall through",
            format!("{same}check.any-opening.stops-ball = \"5 in\""),
            "IT ASKS LESS (openings: less than 5 in in place of less than 4 in)",
        ),
        (
            "gap-too-wide",
            "fall through",
            format!("{same}check.any-opening.at-most = \"4 in\""),
            "IT ASKS LESS (openings: at most 4 in in place of less than 4 in)",
        ),
    ] {
        let (report, tested) = told(&amended(id, hazard, &asks));
        assert!(report.contains(says), "{says}\n{report}");
        assert!(tested.contains(says), "{says}\n{tested}");
    }
    let removed = "id = \"town\"\ntitle = \"T\"\nedition = \"E\"\nextends = \"us-dwelling-2018\"\n\
        remove = [\"handrail-height\"]\n";
    let (report, tested) = told(removed);
    let says = "IT ASKS LESS (what it asks is asked no more)";
    assert!(
        report.contains(says) && tested.contains(says),
        "{report}\n{tested}"
    );
    // more, or the same
    for height in ["36 in", "42 in", "914.4 mm"] {
        let asks = format!("{same}check.height.at-least = \"{height}\"");
        let (report, tested) = told(&amended("rail-too-low", "fall over", &asks));
        assert!(!report.contains("ASKS LESS"), "{height}\n{report}");
        assert!(!tested.contains("ASKS LESS"), "{height}\n{tested}");
    }
}
