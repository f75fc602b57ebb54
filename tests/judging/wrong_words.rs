//! Surveys of which `meets` must not be said: each test is named for its sentence.

use crate::harness::Ran;
use crate::harness::check;
use crate::harness::finding;
use crate::harness::only_guard;
use crate::harness::run;

const LAW: &[&str] = &["--rules", "us-dwelling-2018", "--no-guidance"];

/// A landing 9 ft up whose bottom is closed, with these rows.
fn landing(rows: &[&str]) -> String {
    let mut survey = "unit,guard,item,reading,note\n\
        hall,landing,place,landing,\nhall,landing,drop,9 ft,\nhall,landing,bottom gap,none,\n"
        .to_owned();
    for row in rows {
        survey.push_str(&format!("hall,landing,{row},\n"));
    }
    survey
}

fn verdict(ran: &Ran) -> String {
    let report = ran.json();
    let verdict = only_guard(&report)["verdict"].clone();
    verdict.as_str().expect("a word").to_owned()
}

fn of(rows: &[&str]) -> String {
    verdict(&check(&landing(rows), LAW))
}

/// The verdict of a landing 42 in high with these openings, in either order of rows.
fn openings(rows: &[&str]) -> String {
    let mut all = vec!["height,42 in"];
    all.extend(rows);
    let forwards = of(&all);
    all.reverse();
    assert_eq!(of(&all), forwards, "{rows:?}");
    forwards
}

#[test]
fn two_bounds_are_joined_only_where_they_are_of_one_hole() {
    let apart = [
        [
            "opening,4 in ball stops at 6 in",
            "opening,6 in ball stops at 30 in",
        ],
        ["opening,under 3 in", "opening,under 6 in"],
        ["opening,3 in ball stops", "opening,3 1/2 in ball passes"],
    ];
    for rows in apart {
        assert_eq!(openings(&rows), "not measured", "{rows:?}");
    }
    assert_eq!(openings(&["opening,4 in ball stops at 6 in"]), "meets");
    let one_place = [
        "opening,3 in ball passes at 6 in",
        "opening,4 in ball stops at 6 in",
    ];
    assert_eq!(openings(&one_place), "meets");
    assert_eq!(
        openings(&["opening,3 in ball passes 4 in ball stops"]),
        "meets"
    );
    let passes = [
        "opening,3 in ball passes at 6 in",
        "opening,4 in ball stops at 30 in",
    ];
    assert_eq!(openings(&passes), "not measured");
}

#[test]
fn a_semicolon_in_a_cell_parts_places() {
    let table = |opening: &str| {
        let survey = format!(
            "guard,place,drop,height,bottom gap,opening\nrail,landing,9 ft,42 in,none,{opening}\n"
        );
        verdict(&check(&survey, LAW))
    };
    let apart = "4 in ball stops at 6 in; 6 in ball stops at 30 in";
    assert_eq!(table(apart), "not measured");
    assert_eq!(
        table("6 in ball stops at 30 in; 4 in ball stops at 6 in"),
        "not measured"
    );
    assert_eq!(table("4 in ball stops at 6 in; 3 in"), "meets");
}

#[test]
fn a_ball_tried_everywhere_bounds_every_hole_from_above_only() {
    let joined = [
        "opening,4 in ball stops everywhere",
        "opening,6 in ball stops at 30 in",
    ];
    assert_eq!(openings(&joined), "meets");
    let denied = [
        "opening,4 in ball stops everywhere",
        "opening,4 1/2 in ball passes at 30 in",
    ];
    assert_eq!(openings(&denied), "falls short");
}

#[test]
fn two_sticks_at_a_rail_are_two_places() {
    let of_heights = |rows: &[&str]| {
        let mut all = vec!["opening,3 in"];
        all.extend(rows);
        of(&all)
    };
    assert_eq!(of_heights(&["height,reaches 38 in"]), "meets");
    let apart = ["height,reaches 38 in", "height,below 37 in"];
    assert_eq!(of_heights(&apart), "not measured");
    assert_eq!(
        of_heights(&["height,below 37 in", "height,reaches 38 in"]),
        "not measured"
    );
    assert_eq!(
        of_heights(&["height,reaches 38 in", "height,below 36 in"]),
        "falls short"
    );
}

#[test]
fn a_gauge_settles_a_tape_only_at_the_same_place_and_within_its_doubt() {
    assert_eq!(openings(&["opening,4 in"]), "too close to call");
    let everywhere = ["opening,4 in", "opening,4 in ball stops everywhere"];
    assert_eq!(openings(&everywhere), "meets");
    let there = ["opening,4 in at 10 in", "opening,4 in ball stops at 10 in"];
    assert_eq!(openings(&there), "meets");
    let elsewhere = ["opening,4 in at 10 in", "opening,4 in ball stops at 20 in"];
    assert_eq!(openings(&elsewhere), "too close to call");
    assert_eq!(
        openings(&["opening,4 in", "opening,4 in ball stops"]),
        "too close to call"
    );
    // 2u of a gap read to 1/16 in is 1.74 mm: beyond it the two contradict each other
    let contradicted = ["opening,4 1/16 in", "opening,2 in ball stops everywhere"];
    assert_eq!(openings(&contradicted), "too close to call");
    let heights = |rows: &[&str]| {
        let mut all = vec!["opening,3 in"];
        all.extend(rows);
        of(&all)
    };
    assert_eq!(heights(&["height,36 in"]), "too close to call");
    assert_eq!(heights(&["height,36 in", "height,reaches 36 in"]), "meets");
    assert_eq!(
        heights(&["height,36 in", "height,reaches 55 in"]),
        "too close to call"
    );
    // a rough reading is no gauge: it rests on the same tape
    assert_eq!(
        heights(&["height,36 in", "height,over 35 in"]),
        "too close to call"
    );
    assert_eq!(
        heights(&["height,36 in", "height,over 36 in"]),
        "too close to call"
    );
    let rough = ["opening,4 in at 10 in", "opening,under 4 in at 10 in"];
    assert_eq!(openings(&rough), "too close to call");
}

#[test]
fn two_readings_that_contradict_each_other_are_both_shown() {
    let rows = [
        "height,42 in",
        "opening,4 1/16 in",
        "opening,2 in ball stops everywhere",
    ];
    let report = check(&landing(&rows), LAW).json();
    let gap = finding(only_guard(&report), "gap-too-wide");
    assert_eq!(gap["measured"]["written"], "4 1/16 in");
    assert_eq!(gap["also_readings"].as_array().map(Vec::len), Some(1));
    assert!(
        gap["reasons"].to_string().contains("cannot both be true"),
        "{gap}"
    );
}

#[test]
fn under_the_simple_decision_a_gauge_settles_no_tape_in_any_unit() {
    let simple: Vec<&str> = LAW
        .iter()
        .copied()
        .chain(["--decision", "simple"])
        .collect();
    for tape in ["4 1/16 in", "103.1875 mm"] {
        let opening = format!("opening,{tape}");
        let rows = [
            "height,42 in",
            &opening,
            "opening,4 in ball stops everywhere",
        ];
        assert_eq!(
            verdict(&check(&landing(&rows), &simple)),
            "falls short",
            "{tape}"
        );
    }
}

#[test]
fn a_finer_reading_of_the_same_place_takes_the_place_of_a_coarser_one() {
    let coarse = "opening,10 cm at 10 in";
    assert_eq!(openings(&[coarse]), "too close to call");
    assert_eq!(openings(&[coarse, "opening,99 mm at 10 in"]), "meets");
    assert_eq!(
        openings(&[coarse, "opening,99 mm at 12 in"]),
        "too close to call"
    );
    assert_eq!(
        openings(&[coarse, "opening,80 mm at 10 in"]),
        "too close to call"
    );
}

#[test]
fn a_gap_between_balusters_runs_their_full_height() {
    let rows = [
        "infill,balusters",
        "opening,4 1/4 in at 38 in",
        "opening,3 3/4 in at 10 in",
    ];
    assert_eq!(openings(&rows), "falls short");
    // an extent says otherwise: only the stretch above 36 in is so wide
    let extent = [
        "infill,balusters",
        "opening,4 1/4 in at 37 in to 42 in",
        "opening,3 3/4 in at 10 in",
    ];
    assert_eq!(openings(&extent), "meets");
    // what is no baluster has its hole where it was measured
    let panel = ["infill,panel", "opening,4 1/4 in at 39 in", rows[2]];
    assert_eq!(openings(&panel), "meets");
    // and where nobody wrote what fills it, it may be balusters
    assert_eq!(openings(&rows[1..]), "not measured");
}

#[test]
fn a_public_landing_with_balusters_is_not_asked_where_its_gap_lies() {
    let survey = "guard,item,reading\nrail,place,landing\nrail,use,public\nrail,shared,yes\n\
        rail,storeys,2\nrail,drop,9 ft\nrail,height,43 in\nrail,bottom gap,none\n\
        rail,infill,balusters\nrail,opening,4 1/4 in\n";
    let args = ["--rules", "us-buildings-2018", "--no-guidance"];
    assert_eq!(verdict(&check(survey, &args)), "falls short");
}

#[test]
fn could_not_look_leaves_what_was_read_partly_unmeasured() {
    assert_eq!(
        openings(&["opening,3 in", "opening,not reached"]),
        "not measured"
    );
    assert_eq!(
        openings(&["opening,3 in", "guard,not reached"]),
        "not measured"
    );
    assert_eq!(
        openings(&["opening,5 in", "guard,not reached"]),
        "falls short"
    );
    let one = ["opening,4 in ball stops everywhere", "openings checked,one"];
    assert_eq!(openings(&one), "not measured");
    let every = [
        "opening,4 in ball stops everywhere",
        "openings checked,every one",
    ];
    assert_eq!(openings(&every), "meets");
    assert_eq!(
        openings(&["opening,3 in", "drop,not reached"]),
        "not measured"
    );
    assert_eq!(
        of(&["height,42 in", "height,not reached", "opening,3 in"]),
        "not measured"
    );
}

#[test]
fn danger_comes_before_arithmetic() {
    let fine = ["opening,3 in"];
    assert_eq!(openings(&fine), "meets");
    for danger in [
        "moves when pushed,a lot",
        "infill loose,missing",
        "condition,rot",
        "condition,deep rust",
        "condition,cracks",
        "condition,broken glass",
        "post fastening,missing",
    ] {
        let rows = ["height,45 in", "opening,3 in", danger];
        let ran = check(&landing(&rows), LAW);
        assert_eq!(ran.code, 1, "{danger}");
        assert_eq!(verdict(&ran), "falls short", "{danger}");
        let report = ran.json();
        let seen = only_guard(&report)["dangers"].clone();
        assert_eq!(seen.as_array().map(Vec::len), Some(1), "{danger}");
        assert_eq!(report["summary"]["dangers"], 1, "{danger}");
    }
    let report = check(
        &landing(&["height,42 in", "opening,3 in", "infill loose,missing"]),
        LAW,
    );
    let report = report.json();
    let gap = finding(only_guard(&report), "gap-too-wide");
    assert_eq!(gap["verdict"], "not measured");
}

#[test]
fn no_railing_over_a_drop_that_the_rules_protect_is_a_danger() {
    let none = |drop: &str| {
        let survey = format!("guard,item,reading\ng,place,landing\ng,drop,{drop}\ng,guard,none\n");
        let report = check(&survey, LAW).json();
        let guard = only_guard(&report).clone();
        (
            guard["verdict"].clone(),
            guard["dangers"].as_array().map(Vec::len),
        )
    };
    assert_eq!(none("9 ft"), ("falls short".into(), Some(1)));
    assert_eq!(none("12 in"), ("does not apply".into(), Some(0)));
}

#[test]
fn what_holds_the_posts_and_cannot_be_seen_is_not_measured() {
    for word in ["unknown", "hidden"] {
        let row = format!("post fastening,{word}");
        let survey = landing(&["height,42 in", "opening,3 in", &row]);
        let report = check(&survey, &["--rules", "small-child-advice"]).json();
        let nails = finding(only_guard(&report), "nails-only");
        assert_eq!(nails["verdict"], "not measured", "{word}");
    }
}

#[test]
fn a_stair_with_a_wide_triangle_and_open_risers_does_not_meet_the_advice() {
    let advice = |rows: &str| {
        let survey = format!(
            "guard,item,reading\ns,place,stair\ns,drop,9 ft\ns,height,40 in\ns,opening,3 in\n{rows}"
        );
        let report = check(&survey, &["--rules", "small-child-advice"]).json();
        let guard = only_guard(&report).clone();
        [
            "step-triangle-lets-a-child-through",
            "riser-lets-a-child-through",
        ]
        .map(|rule| finding(&guard, rule)["verdict"].clone())
    };
    assert_eq!(advice(""), ["not measured", "not measured"]);
    let wide = "s,stair triangle,rise 12 going 30 lift 6 in\ns,riser opening,12 in\n";
    assert_eq!(advice(wide), ["falls short", "falls short"]);
    assert_eq!(
        advice("s,stair triangle,none\ns,riser opening,none\n"),
        ["meets", "meets"]
    );
}

/// A town's rules: an amendment of `us-dwelling-2018`.
fn amended(rest: &str, rows: &[&str]) -> Ran {
    let town = format!(
        "id = \"town\"\ntitle = \"A town, for a test\"\nedition = \"none\"\n\
         extends = \"us-dwelling-2018\"\n{rest}"
    );
    let survey = landing(rows);
    let files = [
        ("town.toml", town.as_str()),
        ("survey.csv", survey.as_str()),
    ];
    let args = [
        "check",
        "@survey.csv",
        "--rules",
        "@town.toml",
        "--no-guidance",
        "--format",
        "json",
    ];
    run(&files, &args)
}

#[test]
fn a_ruleset_with_a_slip_lets_nothing_meet() {
    let rule = |height: &str| {
        format!(
            "[[rule]]\nid = \"rail-too-low\"\nhazard = \"fall over\"\nclause = \"-\"\n{height}\n\
             says = \"The rail must be at least 42 in high.\"\nsource = \"irc-2018\"\n\
             [[rule.example]]\ngiven = {{ height = \"42 in\" }}\nexpect = \"meets\"\n\
             [[rule.example]]\ngiven = {{ height = \"41 15/16 in\" }}\nexpect = \"falls short\"\n"
        )
    };
    let fine = ["height,45 in", "opening,3 in"];
    let right = amended(&rule("check.height.at-least = \"42 in\""), &fine);
    assert_eq!(verdict(&right), "meets", "{}", right.err);
    for slip in [
        "check.height.at-lest = \"42 in\"",
        "when.drp.above = \"30 in\"\ncheck.height.at-least = \"42 in\"",
        "check.height.at-least = \"42\"",
    ] {
        let low = amended(&rule(slip), &["height,20 in", "opening,3 in"]);
        assert_eq!(verdict(&low), "falls short", "{slip}");
        let high = amended(&rule(slip), &fine);
        assert_eq!(verdict(&high), "not settled", "{slip}");
        assert_ne!(high.code, 0, "{slip}");
    }
}

#[test]
fn a_ruleset_that_was_not_found_lets_nothing_meet() {
    let survey = landing(&["height,42 in", "opening,3 in"]);
    let args = [
        "--rules",
        "us-dwelling-2018",
        "--rules",
        "nosuch.toml",
        "--no-guidance",
    ];
    let ran = check(&survey, &args);
    assert_ne!(ran.code, 0);
    if !ran.out.is_empty() {
        assert_eq!(verdict(&ran), "not settled");
    }
}

#[test]
fn a_rule_that_was_removed_is_no_leave() {
    let removed = |rows: &[&str]| verdict(&amended("remove = [\"gap-too-wide\"]\n", rows));
    assert_eq!(removed(&["height,42 in", "opening,9 in"]), "not settled");
    assert_eq!(removed(&["height,42 in", "opening,3 in"]), "not settled");
    assert_eq!(removed(&["height,30 in", "opening,3 in"]), "falls short");
}

#[test]
fn one_subject_is_not_taken_for_all() {
    let crib = check(
        &landing(&["height,12 in", "opening,1 in"]),
        &["--rules", "us-crib-slats", "--no-guidance"],
    );
    assert_ne!(verdict(&crib), "meets");
    let germany = check(
        &landing(&["height,1200 mm", "opening,300 mm"]),
        &["--rules", "germany-building-codes", "--no-guidance"],
    );
    assert_ne!(verdict(&germany), "meets");
}

#[test]
fn a_rule_from_memory_decides_in_no_direction() {
    let rule = |id: &str, hazard: &str, check: &str| {
        format!(
            "[[rule]]\nid = \"{id}\"\nhazard = \"{hazard}\"\nclause = \"-\"\n{check}\n\
             says = \"A rule for a test.\"\nsource = \"irc-2018\"\nstatus = \"memory\"\n"
        )
    };
    let high = "when.place = [\"landing\"]\ncheck.height.at-least = \"36 in\"";
    let narrow = "when.place = [\"landing\"]\ncheck.any-opening.stops-ball = \"4 in\"";
    let rules =
        rule("rail-too-low", "fall over", high) + &rule("gap-too-wide", "fall through", narrow);
    let of = |rows: &[&str]| verdict(&amended(&rules, rows));
    assert_eq!(of(&["height,20 in", "opening,12 in"]), "not settled");
    assert_eq!(of(&["height,45 in", "opening,3 in"]), "not settled");
    // what nobody wrote is asked for, however the rule is known
    assert_eq!(of(&["height,45 in"]), "not measured");
}

#[test]
fn an_exception_from_memory_lifts_no_rule_that_was_read() {
    let read = "[[rule]]\nid = \"gap-too-wide\"\nhazard = \"fall through\"\nclause = \"-\"\n\
        check.any-opening.stops-ball = \"4 in\"\nsays = \"A rule for a test.\"\nsource = \"irc-2018\"\n\
        [[rule.unless]]\nlocation = [\"inside\"]\n";
    let exception = "[[rule]]\nid = \"gap-inside\"\nhazard = \"fall through\"\nclause = \"-\"\n\
        when.location = [\"inside\"]\ncheck.any-opening.stops-ball = \"12 in\"\n\
        says = \"A rule for a test.\"\nsource = \"irc-2018\"\nstatus = \"memory\"\n";
    let rules = format!("{read}{exception}");
    let of = |rows: &[&str]| amended(&rules, rows);
    let lifted = of(&["height,45 in", "location,inside", "opening,10 in"]);
    assert_eq!(verdict(&lifted), "not settled");
    let report = lifted.json();
    assert_eq!(
        finding(only_guard(&report), "gap-too-wide")["verdict"],
        "not settled"
    );
    let outside = of(&["height,45 in", "location,outside", "opening,10 in"]);
    assert_eq!(verdict(&outside), "falls short");
}

#[test]
fn what_all_cases_agree_on_holds() {
    let survey = "guard,item,reading\ng,place,landing\ng,use,dwelling\ng,drop,9 ft\ng,height,30 in\n\
        g,opening,3 in\ng,bottom gap,none\n";
    let args = ["--rules", "us-buildings-2018", "--no-guidance"];
    let ran = check(survey, &args);
    assert_eq!(ran.code, 1);
    assert_eq!(verdict(&ran), "falls short");
    let report = ran.json();
    let guard = only_guard(&report);
    assert_eq!(finding(guard, "rail-too-low")["verdict"], "not measured");
    let agreed = guard["agreed"].as_array().expect("a list");
    assert!(
        agreed
            .iter()
            .any(|one| one["hazard"] == "fall over" && one["verdict"] == "falls short"),
        "{agreed:?}"
    );
    assert_eq!(guard["hazards"][0]["verdict"], "falls short");
    // high enough for one answer, too low for the other: the question says so
    let between = check(&survey.replace("30 in", "39 in"), &args).json();
    let guard = only_guard(&between);
    assert_eq!(guard["verdict"], "not measured");
    let questions = guard["questions"].as_array().expect("a list");
    let shared = questions
        .iter()
        .find(|one| one["item"] == "shared")
        .expect("asked");
    let leads = shared["leads_to"].to_string();
    assert!(leads.contains("falls short"), "{leads}");
}

#[test]
fn a_guard_whose_place_nobody_wrote_is_not_measured() {
    let survey =
        "guard,item,reading\ng,drop,9 ft\ng,height,45 in\ng,opening,3 in\ng,bottom gap,none\n";
    assert_eq!(verdict(&check(survey, LAW)), "not measured");
}

#[test]
fn a_ball_that_passes_lies_inside_a_forbidden_band_that_begins_at_its_size() {
    let held = |opening: &str| {
        let survey = format!("guard,item,reading\ng,place,landing\ng,opening,{opening}\n");
        let report = check(&survey, &["--rules", "small-child-advice"]).json();
        finding(only_guard(&report), "gap-can-hold-a-head")["verdict"].clone()
    };
    assert_eq!(held("3 1/2 in ball passes 9 in ball stops"), "falls short");
    assert_eq!(held("3 1/2 in ball stops"), "meets");
    assert_eq!(held("9 in ball passes"), "meets");
    assert_eq!(
        held("3 7/16 in ball passes 9 in ball stops"),
        "not measured"
    );
    assert_eq!(
        held("3 1/2 in ball passes 9 1/16 in ball stops"),
        "not measured"
    );
}
