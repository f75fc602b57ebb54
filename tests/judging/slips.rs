//! Readings that are most likely a slip, or cannot stand beside another: they switch no
//! rule off and let none be met, and a row more says what was right.

use crate::harness::check;
use crate::harness::run;
use crate::harness::words;

/// The verdict of a guard with these rows by one ruleset.
fn verdict(rows: &[&str], args: &[&str]) -> String {
    let mut survey = "guard,item,reading\n".to_owned();
    for row in rows {
        survey.push_str(&format!("g,{row}\n"));
    }
    let mut all = vec!["--no-guidance"];
    all.extend(args);
    let report = check(&survey, &all).json();
    let verdict = report["guards"][0]["verdict"].as_str();
    verdict.expect("a word").to_owned()
}

/// Of a low landing whose bottom is closed.
fn low(rows: &[&str]) -> String {
    let mut all = vec![
        "place,landing",
        "height,20 in",
        "opening,9 in",
        "bottom gap,none",
    ];
    all.extend(rows);
    verdict(&all, &["--rules", "us-dwelling-2018"])
}

/// Of a landing 9 ft up, 38 in high, whose bottom is closed.
fn high(rows: &[&str]) -> String {
    let mut all = vec![
        "place,landing",
        "drop,9 ft",
        "height,38 in",
        "bottom gap,none",
    ];
    all.extend(rows);
    verdict(&all, &["--rules", "us-dwelling-2018"])
}

#[test]
fn a_drop_that_is_most_likely_a_slip_of_the_unit_switches_no_rule_off() {
    assert_eq!(low(&["drop,26 in"]), "does not apply");
    assert_eq!(low(&["drop,26 mm"]), "not measured");
    assert_eq!(low(&["drop,under 26 mm"]), "not measured");
    assert_eq!(low(&["drop,3 in"]), "not measured");
    // what is usual begins at 4 in
    assert_eq!(low(&["drop,4 in"]), "does not apply");
    assert_eq!(low(&["drop,3 63/64 in"]), "not measured");
    // a bound is nobody's slip, and nothing to fall is a statement
    assert_eq!(low(&["drop,under 4 in"]), "does not apply");
    assert_eq!(low(&["drop,0 in"]), "does not apply");
    assert_eq!(low(&["drop,26 mm", "drop,9 ft"]), "falls short");
    // a balcony is one by the drop alone
    let at = |place: &str, drop: &str| {
        let rows = [
            format!("place,{place}"),
            format!("drop,{drop}"),
            "height,20 in".to_owned(),
        ];
        let rows: Vec<&str> = rows.iter().map(String::as_str).collect();
        verdict(&rows, &["--rules", "us-dwelling-2018"])
    };
    assert_eq!(at("balcony", "0 in"), "not measured");
    assert_eq!(at("deck", "0 in"), "does not apply");
    // of a building of many storeys, and nothing is asked less
    let tower = [
        "place,landing",
        "drop,60 ft",
        "height,42 in",
        "opening,3 in",
        "bottom gap,none",
    ];
    assert_eq!(verdict(&tower, &["--rules", "us-dwelling-2018"]), "meets");
    let survey = "guard,item,reading\ng,place,landing\ng,drop,26 mm\ng,height,20 in\n";
    let args = [
        "check",
        "@s.csv",
        "--rules",
        "us-dwelling-2018",
        "--no-guidance",
    ];
    let text = words(&run(&[("s.csv", survey)], &args).out);
    let asks = "Drop \"26 mm\" is less than is found (101.6 mm is little), and a slip of the unit is likelier";
    assert!(text.contains(asks), "{text}");
    assert!(
        text.contains("if it is right, write under 101.6 mm"),
        "{text}"
    );
}

#[test]
fn a_drop_beside_more_risers_than_fit_into_it_switches_no_rule_off() {
    let stair = |rows: &[&str]| {
        let mut all = vec![
            "place,stair",
            "use,dwelling",
            "height,20 in",
            "opening,9 in",
            "stair triangle,none",
            "riser opening,none",
            "handrail,separate",
            "handrail height,36 in",
        ];
        all.extend(rows);
        verdict(&all, &["--rules", "us-dwelling-2018"])
    };
    assert_eq!(stair(&["risers,14", "drop,9 ft"]), "falls short");
    assert_eq!(stair(&["risers,14", "drop,2 ft"]), "not measured");
    // 4 in each: 5 risers climb 20 in, 7 climb 28 in
    assert_eq!(stair(&["risers,5", "drop,29 in"]), "not settled");
    assert_eq!(stair(&["risers,7", "drop,29 in"]), "not settled");
    assert_eq!(stair(&["risers,8", "drop,29 in"]), "not measured");
    // the railing runs along the lowest steps alone
    assert_eq!(stair(&["risers,14", "drop,under 26 in"]), "not settled");
    // a deck is reached by steps, and they say nothing of its edge
    assert_eq!(low(&["risers,14", "drop,2 ft"]), "does not apply");
}

#[test]
fn ground_that_falls_away_deepens_the_drop_within_three_feet() {
    // IRC 2018 R312.1.1: the lowest place within 36 in counts
    assert_eq!(low(&["drop,29 in"]), "does not apply");
    assert_eq!(low(&["drop,29 in", "ground fall,8 in"]), "not measured");
    assert_eq!(low(&["drop,29 in", "ground fall,0 in"]), "does not apply");
    assert_eq!(low(&["drop,20 in", "ground fall,8 in"]), "does not apply");
    assert_eq!(low(&["drop,31 in", "ground fall,8 in"]), "falls short");
    assert_eq!(
        low(&["drop,under 30 in", "ground fall,8 in"]),
        "does not apply"
    );
}

#[test]
fn a_sill_lower_above_the_ground_than_the_floor_switches_no_rule_off() {
    let window = |rows: &[&str]| {
        let mut all = vec![
            "place,window",
            "use,dwelling",
            "opening,9 in",
            "sill height,20 in",
        ];
        all.extend(rows);
        verdict(&all, &["--rules", "us-windows-2021"])
    };
    assert_eq!(window(&["sill above ground,9 ft"]), "falls short");
    assert_eq!(window(&["sill above ground,5 ft"]), "does not apply");
    assert_eq!(
        window(&["sill above ground,5 ft", "drop,9 ft"]),
        "not measured"
    );
    assert_eq!(
        window(&["sill above ground,5 ft", "drop,3 ft"]),
        "does not apply"
    );
}

#[test]
fn a_ball_of_a_size_that_no_gap_between_bars_has_stops_nothing() {
    let ball = "opening,6 mm ball stops everywhere";
    assert_eq!(high(&[ball, "infill,balusters"]), "not measured");
    assert_eq!(high(&[ball]), "not measured");
    assert_eq!(
        high(&["opening,10 mm", "infill,horizontal bars"]),
        "not measured"
    );
    assert_eq!(high(&["opening,1/2 in", "infill,balusters"]), "meets");
    for closed in ["mesh", "solid", "panel", "glass"] {
        assert_eq!(
            high(&[ball, &format!("infill,{closed}")]),
            "meets",
            "{closed}"
        );
    }
    assert_eq!(
        high(&["opening,6 in ball passes", "infill,balusters"]),
        "falls short"
    );
}

#[test]
fn cables_mesh_and_nets_have_gaps() {
    for strung in ["cables", "upright cables", "net", "mesh", "balusters"] {
        let infill = format!("infill,{strung}");
        assert_eq!(high(&["opening,none", &infill]), "not measured", "{strung}");
    }
    assert_eq!(high(&["opening,none", "infill,glass"]), "meets");
}

#[test]
fn a_hole_above_the_top_lies_nowhere() {
    let hole = |place: &str| {
        high(&[
            "opening,3 in",
            "infill,panel",
            &format!("opening,8 in at {place}"),
        ])
    };
    assert_eq!(hole("200 in"), "not measured");
    assert_eq!(hole("50 in"), "not measured");
    assert_eq!(hole("20 in"), "falls short");
    // narrow enough wherever it lies
    let narrow = ["infill,panel", "opening,3 in", "opening,3 in at 50 in"];
    assert_eq!(high(&narrow), "meets");
    assert_eq!(hole("37 in to 45 in"), "not measured");
    assert_eq!(hole("37 in to 38 in"), "meets");
    // the top goes higher there
    let taller = [
        "height,5 ft",
        "opening,3 in",
        "infill,panel",
        "opening,8 in at 50 in",
    ];
    assert_eq!(high(&taller), "meets");
}

#[test]
fn a_doubt_beyond_any_tape_counts_even_where_the_reading_alone_is_asked_for() {
    let simple = ["--rules", "us-dwelling-2018", "--decision", "simple"];
    let of = |height: &str| {
        let height = format!("height,{height}");
        let rows = [
            "place,landing",
            "drop,9 ft",
            &height,
            "opening,3 in",
            "bottom gap,none",
        ];
        verdict(&rows, &simple)
    };
    assert_eq!(of("36 in"), "meets");
    assert_eq!(of("36 in ± 1/2 in"), "meets");
    assert_eq!(of("36 in ± 3 in"), "too close to call");
    assert_eq!(of("35 in ± 3 in"), "too close to call");
    // far from the limit, any doubt will do
    assert_eq!(of("42 in ± 3 in"), "meets");
    assert_eq!(of("20 in ± 3 in"), "falls short");
    let trigger = ["place,landing", "drop,29 in ± 3 in", "height,20 in"];
    assert_ne!(verdict(&trigger, &simple), "does not apply");
    let trigger = ["place,landing", "drop,20 in ± 3 in", "height,20 in"];
    assert_eq!(verdict(&trigger, &simple), "does not apply");
}

#[test]
fn an_opening_that_narrows_downward_and_that_no_rule_asks_about_is_not_settled() {
    let vee = |reading: &str| high(&["opening,3 in", &format!("v opening,{reading}")]);
    assert_eq!(vee("9 in wide 12 in deep"), "not settled");
    assert_eq!(vee("4 in wide 12 in deep"), "not settled");
    // no wider than an opening may be, or none
    assert_eq!(vee("3 in wide 12 in deep"), "meets");
    assert_eq!(vee("none"), "meets");
}

#[test]
fn advice_about_homes_settles_nothing_at_a_pool() {
    let at = |place: &str| {
        let place = format!("place,{place}");
        let rows = [
            place.as_str(),
            "drop,9 ft",
            "height,48 in",
            "opening,2 in",
            "bottom gap,none",
            "children,none",
            "foothold,none",
            "thing to climb,none",
            "infill,balusters",
            "infill loose,no",
            "moves when pushed,no",
            "post fastening,through bolts",
            "fastened to,joist",
            "notched post,no",
        ];
        verdict(&rows, &["--rules", "small-child-advice"])
    };
    assert_eq!(at("deck"), "meets");
    assert_eq!(at("pool"), "not settled");
}

/// A stair by the rules for guards and those for handrails, the handrail not looked at.
#[test]
fn what_rules_about_one_subject_wait_for_stands_beside_what_is_met() {
    const STAIR: &str = "place,stair\nuse,dwelling\ndrop,9 ft\nheight,42 in\nopening,3 in\n\
        stair triangle,5 in ball stops\nrisers,14\nhandrail,separate\nhandrail height,36 in\nriser opening,none\n";
    let guard = |name: &str| -> String {
        let rows = STAIR.lines().map(|row| format!("{name},{}\n", row.trim()));
        rows.collect()
    };
    let text = |survey: &str| {
        let survey = format!("guard,item,reading\n{survey}");
        let args = [
            "check",
            "@s.csv",
            "--rules",
            "us-dwelling-2018",
            "--rules",
            "us-handrails-2018",
            "--no-guidance",
        ];
        words(&run(&[("s.csv", &survey)], &args).out)
    };
    let one = text(&guard("steps"));
    let headline = "steps: meets the building rules on guards (whether it would hold was not checked); \
the handrail rules are unfinished.";
    assert!(one.contains(headline), "{one}");
    assert!(!one.contains("NOTHING WRONG FOUND"), "{one}");
    let landing = "hall,place,landing\nhall,drop,9 ft\nhall,height,42 in\nhall,opening,3 in\nhall,bottom gap,none\n";
    let several = text(&format!("{}{landing}", guard("steps")));
    let headline = "2 meet the building rules on guards (whether it would hold was not checked); \
of 1 of them the handrail rules are unfinished";
    assert!(several.contains(headline), "{several}");
    let (_, good) = several
        .split_once("NOTHING WRONG FOUND")
        .expect("a heading");
    let (good, _) = good.split_once("FOR ALL").expect("a heading");
    assert!(
        good.contains("hall") && !good.contains("steps"),
        "{several}"
    );
    // with the handrail looked at, nothing is left open
    let handrail = "steps,handrail shape,round\nsteps,handrail thickness,1 1/2 in\nsteps,handrail clearance,2 in\n\
        steps,handrail continuous,yes\nsteps,handrail ends,returned\nsteps,handrail projection,3 1/2 in\n";
    let done = text(&format!("{}{handrail}", guard("steps")));
    assert!(
        done.contains("steps: meets the building rules (whether"),
        "{done}"
    );
    assert!(done.contains("NOTHING WRONG FOUND"), "{done}");
}

#[test]
fn balusters_that_stand_too_far_apart_for_any_thickness_meet_nothing() {
    let apart = |rows: &[&str]| {
        let mut all = vec!["opening,3 in"];
        all.extend(rows);
        high(&all)
    };
    assert_eq!(apart(&["baluster spacing,4 1/2 in"]), "meets");
    // a baluster is 3 1/2 in thick at most, and leaves 4 1/2 in
    assert_eq!(apart(&["baluster spacing,8 in"]), "not measured");
    let section = "baluster section,1 1/2 x 1 1/2 in";
    assert_eq!(apart(&["baluster spacing,8 in", section]), "falls short");
    assert_eq!(apart(&["baluster spacing,4 1/2 in", section]), "meets");
}

#[test]
fn a_stair_beside_a_well_is_not_covered_where_its_height_was_not_read() {
    let stair = |rows: &[&str]| {
        let mut all = vec![
            "place,stair",
            "use,dwelling",
            "drop,3 m",
            "height,1200 mm",
            "opening,80 mm",
            "stair triangle,none",
            "riser opening,none",
            "bottom gap,none",
        ];
        all.extend(rows);
        verdict(&all, &["--rules", "czech-1998"])
    };
    assert_ne!(stair(&[]), "not settled");
    assert_eq!(stair(&["well width,none"]), stair(&[]));
    assert_eq!(stair(&["well width,2 m"]), "not settled");
}

/// A step that is higher than it is deep is most likely written the other way round; and
/// between bars and cables there is a gap, whatever number says that there is none.
#[test]
fn a_turned_step_and_a_gap_of_nothing_settle_nothing() {
    let rules = ["--rules", "us-dwelling-2018"];
    let stair = |step: &str| {
        let rows = [
            "place,stair",
            "use,dwelling",
            "drop,8 ft",
            "height,36 in",
            "opening,3 1/4 in",
            "riser opening,none",
            "handrail,top of the guard",
            "risers,13",
            step,
        ];
        verdict(&rows, &rules)
    };
    let walked = "stair triangle,rise 7 1/4 in going 10 3/4 in lift 1/2 in";
    assert_eq!(stair(walked), "meets");
    let turned = "stair triangle,rise 10 3/4 in going 7 1/4 in lift 1/2 in";
    assert_eq!(stair(turned), "not measured");
    assert_eq!(stair("stair triangle,6 in ball stops"), "meets");
    for infill in ["infill,cables", "infill,net", "infill,balusters"] {
        for none in ["opening,none", "opening,0 in", "opening,0 mm"] {
            assert_eq!(high(&[infill, none]), "not measured", "{infill} {none}");
        }
    }
}

/// Axes and thickness that make a gap wider than the widest written, and as wide as the
/// limit, are no gap that meets (5 1/2 in less 1 1/2 in are 4 in, which a 4 in ball passes).
#[test]
fn a_gap_that_its_bars_deny_does_not_meet_at_the_limit_either() {
    let of = |spacing: &str| {
        let rows = [
            "infill,balusters",
            "opening,3 1/4 in",
            "baluster section,1 1/2 x 1 1/2 in",
            spacing,
        ];
        high(&rows)
    };
    assert_eq!(of("baluster spacing,4 3/4 in"), "meets");
    assert_eq!(of("baluster spacing,5 1/2 in"), "too close to call");
    assert_eq!(of("baluster spacing,5 3/4 in"), "falls short");
}

/// Level bars 8 in from top to top and 1 in thick leave 7 in between them.
#[test]
fn level_bars_too_far_apart_deny_a_narrow_opening() {
    let of = |rows: &[&str]| {
        let mut all = vec!["opening,3 1/4 in", "baluster section,1 x 1 in"];
        all.extend(rows);
        high(&all)
    };
    assert_eq!(
        of(&["infill,horizontal bars", "level bar spacing,4 in"]),
        "meets"
    );
    assert_eq!(
        of(&["infill,horizontal bars", "level bar spacing,8 in"]),
        "falls short"
    );
    // the rails above and below balusters
    assert_eq!(
        of(&["infill,balusters", "level bar spacing,34 in"]),
        "meets"
    );
}
