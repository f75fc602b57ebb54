use crate::harness::Ran;
use crate::harness::check;
use crate::harness::finding;
use crate::harness::only_guard;
use crate::harness::run;

/// A loft edge with everything written that `us-dwelling-2018` asks, but for the rows added.
fn loft(rows: &str) -> String {
    format!(
        "unit,guard,item,reading,note\n\
         ,,use,dwelling,\n\
         cabin,loft,place,floor edge,\n\
         cabin,loft,drop,4 ft 4 1/4 in,\n\
         {rows}"
    )
}

const LAW: &[&str] = &["--rules", "us-dwelling-2018", "--no-guidance"];

const TWO_ZONES: &str = r#"
id = "two-zones"
title = "Two zones of openings, for a test"
edition = "none"

[source.test]
title = "Chosen for a test; the limits are those of no code"
edition = "none"
status = "published"

[[rule]]
id = "low-hole"
hazard = "fall through"
clause = "-"
check.opening = { stops-ball = "4 in", zone = ["0 in", "36 in"] }
says = "Below 36 in a 4 in ball must not pass."
source = "test"

[[rule]]
id = "high-hole"
hazard = "fall through"
clause = "-"
check.opening = { stops-ball = "4 3/8 in", zone = ["36 in", "42 in"] }
says = "From 36 in to 42 in a 4 3/8 in ball must not pass."
source = "test"
"#;

fn two_zones(opening: &str) -> Ran {
    let survey = format!("unit,guard,item,reading\na,rail,opening,{opening}\n");
    let files = [("zones.toml", TWO_ZONES), ("survey.csv", survey.as_str())];
    let args = [
        "check",
        "@survey.csv",
        "--rules",
        "@zones.toml",
        "--no-guidance",
        "--decision",
        "simple",
        "--format",
        "json",
    ];
    run(&files, &args)
}

#[test]
fn what_stands_apart_from_a_guard_does_not_say_that_there_is_one() {
    for apart in [
        "paint,sound",
        "paint,flaking",
        "handrail height,36 in",
        "thing to climb,none",
        "top of stairs gate,screwed",
    ] {
        let ran = check(&loft(&format!("cabin,loft,{apart},\n")), LAW);
        let report = ran.json();
        let presence = finding(only_guard(&report), "no-guard");
        assert_eq!(presence["verdict"], "not measured", "{apart}");
    }
    let report = check(&loft("cabin,loft,infill,balusters,\n"), LAW).json();
    let presence = finding(only_guard(&report), "no-guard");
    assert_eq!(presence["verdict"], "meets");
}

#[test]
fn guard_none_falls_short_where_a_guard_is_required() {
    let ran = check(&loft("cabin,loft,guard,none,\n"), LAW);
    let report = ran.json();
    let guard = only_guard(&report);
    assert_eq!(guard["verdict"], "falls short");
    assert_eq!(finding(guard, "no-guard")["verdict"], "falls short");
    assert_eq!(finding(guard, "rail-too-low")["verdict"], "does not apply");
    assert_eq!(ran.code, 1);
}

#[test]
fn a_ruleset_that_asks_nothing_here_yields_does_not_apply_and_says_so_about_danger() {
    let survey = "unit,guard,item,reading\n\
        a,step,use,dwelling\na,step,place,landing\na,step,drop,20 in\na,step,height,30 in\n";
    let ran = check(survey, LAW);
    let report = ran.json();
    assert_eq!(only_guard(&report)["verdict"], "does not apply");
    assert_eq!(ran.code, 0);
    let mut args = vec!["check", "@survey.csv"];
    args.extend(LAW);
    let text = run(&[("survey.csv", survey)], &args).out;
    assert!(text.contains("no word about danger"), "{text}");
}

#[test]
fn guidance_alone_decides_under_its_heading() {
    let survey = loft("cabin,loft,guard,none,\n");
    let ran = check(&survey, &["--rules", "small-child-advice"]);
    let report = ran.json();
    assert_eq!(report["basis"], "guidance");
    assert_eq!(only_guard(&report)["verdict"], "falls short");
    assert_eq!(ran.code, 1);
    let text = run(&[("survey.csv", &survey)], &["check", "@survey.csv"]).out;
    let flat = text.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(
        flat.contains("NO BUILDING RULES WERE CHECKED, only advice"),
        "{text}"
    );
}

const FROM_MEMORY: &str = r#"
id = "from-memory"
title = "One rule from memory, one read, for a test"
edition = "none"

[source.test]
title = "Chosen for a test; the limits are those of no code"
edition = "none"
status = "published"

[[rule]]
id = "remembered"
hazard = "fall over"
clause = "-"
check.height.at-least = "42 in"
says = "The rail is to stand at least 42 in high."
source = "test"
status = "memory"

[[rule]]
id = "read"
hazard = "fall over"
clause = "-"
check.height.at-least = "36 in"
says = "The rail is to stand at least 36 in high."
source = "test"
"#;

#[test]
fn a_rule_from_memory_that_is_not_met_is_not_settled() {
    let survey = "unit,guard,item,reading\na,rail,height,38 in\n";
    let files = [("memory.toml", FROM_MEMORY), ("survey.csv", survey)];
    let mut args = vec![
        "check",
        "@survey.csv",
        "--rules",
        "@memory.toml",
        "--no-guidance",
        "--format",
        "json",
    ];
    let warned = run(&files, &args);
    let report = warned.json();
    let guard = only_guard(&report);
    assert_eq!(guard["verdict"], "not settled");
    assert_eq!(finding(guard, "remembered")["verdict"], "not settled");
    assert_eq!(warned.code, 3);
    args.extend(["--memory", "decides"]);
    let decided = run(&files, &args);
    assert_eq!(only_guard(&decided.json())["verdict"], "falls short");
    assert_eq!(decided.code, 1);
}

/// Where only rules from memory apply, the ruleset does ask for something.
#[test]
fn a_rule_from_memory_that_applies_keeps_a_guard_from_needing_none() {
    let survey = "unit,guard,item,reading\na,deck,place,deck\na,deck,drop,9 ft\n\
        a,deck,height,33 in\na,deck,opening,5 in\na,deck,bottom gap,none\na,deck,fixed seat,no\n";
    let files = [("survey.csv", survey)];
    let rules = ["--rules", "us-dwelling-2003", "--no-guidance"];
    let mut args = vec!["check", "@survey.csv", "--format", "json"];
    args.extend(rules);
    let warned = run(&files, &args);
    assert_eq!(only_guard(&warned.json())["verdict"], "not settled");
    assert_eq!(warned.code, 3);
    args.extend(["--memory", "decides"]);
    let decided = run(&files, &args);
    assert_eq!(only_guard(&decided.json())["verdict"], "falls short");
    // on a level patio nothing is asked, from memory or not
    let low = survey.replace("9 ft", "12 in");
    let mut args = vec!["check", "@low.csv", "--format", "json"];
    args.extend(rules);
    let none = run(&[("low.csv", low.as_str())], &args);
    assert_eq!(only_guard(&none.json())["verdict"], "does not apply");
}

#[test]
fn an_opening_without_at_is_judged_by_the_strictest_and_laxest_zone() {
    let verdicts = |opening: &str| {
        let report = two_zones(opening).json();
        let guard = only_guard(&report);
        let of = |rule| {
            finding(guard, rule)["verdict"]
                .as_str()
                .expect("a word")
                .to_owned()
        };
        [of("low-hole"), of("high-hole")]
    };
    assert_eq!(verdicts("3 11/16 in"), ["meets", "meets"]);
    assert_eq!(verdicts("4 1/4 in"), ["not measured", "meets"]);
    assert_eq!(verdicts("4 1/2 in"), ["falls short", "falls short"]);
    // where it says so, only its own zone counts
    assert_eq!(
        verdicts("4 1/4 in at 20 in"),
        ["falls short", "not measured"]
    );
    assert_eq!(verdicts("4 1/4 in at 40 in"), ["not measured", "meets"]);
    assert_eq!(
        verdicts("4 1/4 in at 30 in to 40 in"),
        ["falls short", "meets"]
    );
}

#[test]
fn a_hole_without_at_falls_short_where_the_limited_zone_would_fail_it() {
    let rows = "cabin,loft,height,40 in,\n\
        cabin,loft,opening,5 in,\ncabin,loft,bottom gap,2 in,\n";
    let report = check(&loft(rows), LAW).json();
    let guard = only_guard(&report);
    assert_eq!(guard["verdict"], "falls short");
    let opening = finding(guard, "gap-too-wide");
    assert_eq!(opening["verdict"], "falls short");
}

#[test]
fn some_openings_checked_never_meets() {
    let rows = |checked| {
        loft(&format!(
            "cabin,loft,height,40 in,\ncabin,loft,opening,3 in,\n\
             cabin,loft,bottom gap,2 in,\ncabin,loft,openings checked,{checked},\n"
        ))
    };
    for checked in ["some", "one"] {
        let report = check(&rows(checked), LAW).json();
        let guard = only_guard(&report);
        assert_eq!(guard["verdict"], "not measured", "{checked}");
        assert_eq!(finding(guard, "gap-too-wide")["verdict"], "meets");
        assert_eq!(finding(guard, "gap-too-wide")["partial"], true);
    }
    assert_eq!(
        only_guard(&check(&rows("every one"), LAW).json())["verdict"],
        "meets"
    );
}

#[test]
fn a_second_larger_drop_governs() {
    let survey = |drops: &str| {
        format!(
            "unit,guard,item,reading\na,g,use,dwelling\na,g,place,deck\na,g,guard,none\n{drops}"
        )
    };
    let low = check(&survey("a,g,drop,20 in\n"), LAW);
    assert_eq!(only_guard(&low.json())["verdict"], "does not apply");
    for drops in [
        "a,g,drop,20 in\na,g,drop,40 in\n",
        "a,g,drop,40 in\na,g,drop,20 in\n",
    ] {
        let both = check(&survey(drops), LAW);
        assert_eq!(only_guard(&both.json())["verdict"], "falls short");
    }
}

#[test]
fn a_units_fact_is_overridden_by_the_guards() {
    let survey = |own: &str| {
        format!(
            "unit,guard,item,reading\na,,use,dwelling\na,,place,landing\na,,drop,20 in\n\
             a,g,guard,none\n{own}"
        )
    };
    let inherited = check(&survey(""), LAW).json();
    assert_eq!(only_guard(&inherited)["verdict"], "does not apply");
    let own = check(&survey("a,g,drop,9 ft\n"), LAW).json();
    assert_eq!(only_guard(&own)["verdict"], "falls short");
}

#[test]
fn an_item_with_an_unreadable_reading_never_meets() {
    let rows = "cabin,loft,height,40 inn,\ncabin,loft,height,40 in,\n\
        cabin,loft,opening,3 in,\ncabin,loft,bottom gap,2 in,\n";
    let ran = check(&loft(rows), LAW);
    let report = ran.json();
    let guard = only_guard(&report);
    assert_eq!(finding(guard, "rail-too-low")["verdict"], "not measured");
    assert_eq!(guard["verdict"], "not measured");
    assert_eq!(ran.code, 2);
    assert!(ran.err.contains("40 inn"), "{}", ran.err);
}

#[test]
fn a_stick_that_reaches_and_a_ball_that_stops_everywhere_settle_a_guard_without_any_doubt() {
    let tape = "cabin,loft,height,36 in,\ncabin,loft,opening,3 15/16 in,\n\
        cabin,loft,bottom gap,3 15/16 in,\n";
    let report = check(&loft(tape), LAW).json();
    assert_eq!(only_guard(&report)["verdict"], "too close to call");
    let gauges = format!(
        "{tape}cabin,loft,height,reaches 36 in,\n\
         cabin,loft,opening,4 in ball stops everywhere,\n"
    );
    for rows in [gauges.as_str(), &gauges[tape.len()..]] {
        let ran = check(&loft(rows), LAW);
        let report = ran.json();
        let guard = only_guard(&report);
        assert_eq!(guard["verdict"], "meets", "{rows}\n{}", ran.out);
        assert_eq!(ran.code, 0);
        for name in ["rail-too-low", "gap-too-wide"] {
            assert!(finding(guard, name)["uncertainty"].is_null(), "{name}");
        }
    }
}

#[test]
fn guidance_stands_beside_law_and_moves_neither_verdict_nor_exit_status() {
    let rows = "cabin,loft,height,40 in,\ncabin,loft,opening,3 3/4 in,\n\
        cabin,loft,bottom gap,2 in,\n";
    let alone = check(&loft(rows), LAW);
    let beside = check(&loft(rows), &["--rules", "us-dwelling-2018"]);
    let (alone_report, beside_report) = (alone.json(), beside.json());
    assert_eq!(only_guard(&alone_report)["verdict"], "meets");
    assert_eq!(
        only_guard(&alone_report)["guidance"],
        serde_json::Value::Null
    );
    assert_eq!(only_guard(&beside_report)["verdict"], "meets");
    assert_eq!(only_guard(&beside_report)["guidance"], "falls short");
    assert_eq!((alone.code, beside.code), (0, 0));
    assert_eq!(alone_report["summary"], beside_report["summary"]);
}

#[test]
fn a_proposed_guard_is_judged_by_its_build_tolerance() {
    let survey = |tolerance: &str| {
        format!(
            "unit,guard,item,reading\n,,use,dwelling\n{tolerance}a,g,state,proposed\n\
             a,g,place,landing\na,g,drop,9 ft\na,g,height,36 1/8 in\n\
             a,g,opening,3 3/4 in\na,g,bottom gap,2 in\n"
        )
    };
    let of = |tolerance| {
        let report = check(&survey(tolerance), LAW).json();
        finding(only_guard(&report), "rail-too-low")["verdict"].clone()
    };
    assert_eq!(of(""), "meets");
    assert_eq!(of(",,build tolerance,± 1/16 in\n"), "meets");
    assert_eq!(of(",,build tolerance,± 1/4 in\n"), "too close to call");
}

#[test]
fn cables_without_a_push_prove_only_a_shortfall() {
    let of = |opening: &str| {
        let rows = format!(
            "cabin,loft,infill,cables,\ncabin,loft,height,40 in,\n\
             cabin,loft,opening,{opening},\ncabin,loft,bottom gap,none,\n"
        );
        let report = check(&loft(&rows), LAW).json();
        finding(only_guard(&report), "gap-too-wide")["verdict"].clone()
    };
    assert_eq!(of("3 in"), "not measured");
    assert_eq!(of("5 in"), "falls short");
    assert_eq!(of("4 in ball stops everywhere"), "not measured");
    assert_eq!(of("4 in ball stops everywhere pushed by hand"), "meets");
}

#[test]
fn on_a_stair_the_bottom_gap_is_the_lift_unless_the_side_is_closed() {
    let survey = |triangle: &str| {
        format!(
            "unit,guard,item,reading\na,g,use,dwelling\na,g,place,stair\na,g,drop,9 ft\n\
             a,g,handrail,separate\na,g,height,36 in\na,g,opening,3 in\na,g,bottom gap,5 in\n\
             a,g,stair triangle,{triangle}\n"
        )
    };
    let gap = |triangle| {
        let report = check(&survey(triangle), LAW).json();
        let guard = only_guard(&report).clone();
        let findings = guard["findings"].as_array().expect("findings").clone();
        findings
            .iter()
            .filter(|finding| {
                finding["readings"][0]["line"] == 8 && finding["verdict"] == "falls short"
            })
            .count()
    };
    assert_eq!(gap("rise 7 3/4 going 10 lift 0 in"), 0);
    assert_eq!(gap("none"), 1);
}
