//! Outlines in a survey: judged by both bounds of their clear opening.

use crate::harness::check;
use crate::harness::finding;
use crate::harness::only_guard;

const HEAD: &str =
    "unit,guard,item,reading,note\n,,use,dwelling,\n,deck,place,deck,\n,deck,drop,9 ft,\n";

fn opening(reading: &str, more: &[&str]) -> serde_json::Value {
    let survey = format!("{HEAD},deck,opening,{reading},\n,deck,bottom gap,none,\n");
    let mut args = vec!["--rules", "us-dwelling-2018", "--no-guidance"];
    args.extend(more);
    let ran = check(&survey, &args);
    let report = ran.json();
    let guard = only_guard(&report);
    let rule = guard["findings"].as_array().expect("findings").iter();
    let about = |f: &&serde_json::Value| {
        f["measured"]["written"] == reading && f["limit"]["written"] == "4 in"
    };
    let found = rule.clone().find(about);
    found.unwrap_or_else(|| panic!("{guard:#}")).clone()
}

/// A plus of four limbs passes √2 times their width (plane geometry), so limbs of 70 mm stop a 4 in ball (98.995 mm) and limbs of 75 mm do not.
#[test]
fn a_plus_passes_more_than_its_limbs() {
    let plus = |w: i32| {
        let (a, b, c) = (200, 200 + w, 400 + w);
        format!(
            "polygon {a}:0 {b}:0 {b}:{a} {c}:{a} {c}:{b} {b}:{b} {b}:{c} {a}:{c} {a}:{b} 0:{b} 0:{a} {a}:{a} mm"
        )
    };
    let stops = opening(&plus(70), &[]);
    assert_eq!(stops["verdict"], "meets");
    let value = stops["measured"]["value"].as_f64().expect("a number");
    assert!(
        (value - 70.0 * std::f64::consts::SQRT_2).abs() <= 1e-6,
        "{value}"
    );
    // √2 of what one reading is sure to
    assert!(stops["uncertainty"]["value"].as_f64().expect("a number") > 0.65);
    assert_eq!(opening(&plus(75), &[])["verdict"], "falls short");
}

#[test]
fn near_the_limit_the_tape_cannot_tell_whatever_the_bounds_say() {
    let near = opening("polygon 0:0 4:0 4:30 0:30 in", &[]);
    assert_eq!(near["verdict"], "too close to call");
    let alone = opening("polygon 0:0 4:0 4:30 0:30 in", &["--decision", "simple"]);
    assert_eq!(
        alone["verdict"], "not measured",
        "the bounds lie on both sides"
    );
}

#[test]
fn an_outline_that_crosses_itself_is_an_error_of_the_survey() {
    let survey = format!("{HEAD},deck,opening,polygon 0:0 120:90 120:0 0:90 mm,\n");
    let ran = check(&survey, &["--rules", "us-dwelling-2018", "--no-guidance"]);
    assert_eq!(ran.code, 2);
    let said = "the outline crosses itself: side 1 and side 3 meet at 60:45 mm";
    let err: Vec<&str> = ran.err.split_whitespace().collect();
    assert!(err.join(" ").contains(said), "{}", ran.err);
    let report = ran.json();
    let unread = finding(only_guard(&report), "gap-too-wide");
    assert_eq!(unread["verdict"], "not measured");
}

/// Verdict and reasons of the finding about an item, in a stair's or a deck's survey.
fn judged(place: &str, rows: &[&str], item: &str) -> serde_json::Value {
    let head = format!("unit,guard,item,reading\n,,use,dwelling\n,g,place,{place}\n,g,drop,9 ft\n");
    let rows: String = rows.iter().map(|row| format!(",g,{row}\n")).collect();
    let survey = head + &rows;
    let ran = check(&survey, &["--rules", "us-dwelling-2018", "--no-guidance"]);
    assert_ne!(ran.code, 2, "{}", ran.err);
    let report = ran.json();
    let findings = only_guard(&report)["findings"]
        .as_array()
        .expect("findings")
        .clone();
    let about = findings
        .into_iter()
        .find(|f| f["item"] == item && f["verdict"] != "does not apply");
    about.unwrap_or_else(|| panic!("{item}: {report:#}"))
}

/// 4 in level is 5.0606 in along the rail at 7 3/4 : 10
/// (w/cos θ); a stair's gap stops a 4 3/8 in ball.
#[test]
fn a_gap_read_along_the_rail_is_judged_by_what_is_clear() {
    let opening = |reading: &str| judged("stair", &[&format!("opening,{reading}")], "opening");
    let along = opening("raked 5 1/16 in along rise 7 3/4 going 10");
    assert_eq!(along["verdict"], "meets");
    let value = along["measured"]["value"].as_f64().expect("a number");
    assert!(
        (value - 5.0625 * 25.4 * 10.0 / 12.651_581).abs() < 1e-4,
        "{value}"
    );
    // the same length read level is the gap itself
    assert_eq!(
        opening("raked 5 1/16 in level rise 7 3/4 going 10")["verdict"],
        "falls short"
    );
}

#[test]
fn a_turned_profile_is_judged_by_both_bounds() {
    let opening = |reading: &str| judged("deck", &[&format!("opening,{reading}")], "opening");
    let beads = "0:40 380:40 400:18 420:40 800:40 mm";
    // in the groove a tape reads 107 mm, and the beads hold the ball
    let held = opening(&format!("turned 125 mm centres {beads}"));
    assert_eq!(held["verdict"], "meets");
    assert_eq!(
        opening(&format!("turned 145 mm centres {beads}"))["verdict"],
        "falls short"
    );
    // slimmest at its end, where nobody knows whether a rail closes it
    let taper = opening("turned 128 mm centres 0:60 40:20 mm");
    assert_eq!(taper["verdict"], "not measured");
}

#[test]
fn a_cable_reading_never_meets_and_a_pushed_ball_decides() {
    let cable = "opening,cable 3 in spacing 1/8 in diameter 36 in free tension 2000 lbf";
    let alone = judged("deck", &[cable], "opening");
    assert_eq!(alone["verdict"], "not measured");
    let wide = "opening,cable 5 in spacing 1/8 in diameter";
    assert_eq!(judged("deck", &[wide], "opening")["verdict"], "falls short");
    let rods = "opening,rods 3 in spacing 1/2 in diameter 36 in free";
    assert_eq!(
        judged("deck", &[rods], "opening")["verdict"],
        "not measured"
    );
    let still = "opening,4 in ball stops everywhere";
    assert_eq!(
        judged("deck", &[cable, still], "opening")["verdict"],
        "not measured"
    );
    let pushed = "opening,4 in ball stops everywhere pushed by hand";
    assert_eq!(
        judged("deck", &[cable, pushed], "opening")["verdict"],
        "meets"
    );
    let through = "opening,4 in ball passes pushed by hand";
    assert_eq!(
        judged("deck", &[cable, through], "opening")["verdict"],
        "falls short"
    );
}

#[test]
fn open_risers_can_fall_short_and_not_meet() {
    let item = "stair triangle";
    let step =
        |reading: &str| judged("stair", &[&format!("{item},{reading}")], item)["verdict"].clone();
    assert_eq!(step("rise 7 3/4 going 10 lift 0 in"), "meets");
    assert_eq!(
        step("rise 7 3/4 going 10 lift 0 in open risers"),
        "not measured"
    );
    assert_eq!(
        step("rise 7 3/4 going 10 lift 4 in open risers"),
        "falls short"
    );
    let ball = format!("{item},6 in ball stops everywhere");
    let open = format!("{item},rise 7 3/4 going 10 lift 0 in open risers");
    assert_eq!(judged("stair", &[&open, &ball], item)["verdict"], "meets");
}

/// 5.0984 in without a nosing, and 5.0984 · (1 + 3/10) = 6.63 in with a thin one of 3 in.
#[test]
fn a_nosing_of_unknown_thickness_is_open_only_where_it_decides() {
    let item = "stair triangle";
    let step =
        |reading: &str| judged("stair", &[&format!("{item},{reading}")], item)["verdict"].clone();
    assert_eq!(step("rise 7 3/4 going 10 lift 0 nosing 3/4 in"), "meets");
    assert_eq!(
        step("rise 7 3/4 going 10 lift 0 nosing 3 in"),
        "not measured"
    );
    assert_eq!(
        step("rise 7 3/4 going 10 lift 0 nosing 3 thick 1 in"),
        "falls short"
    );
    assert_eq!(
        step("rise 7 3/4 going 10 lift 0 nosing 3 thick 6 in"),
        "meets"
    );
}

/// Winders: one reading a tread, and the widest decides.
#[test]
fn of_several_treads_the_widest_decides() {
    let item = "stair triangle";
    let rows = [
        "stair triangle,rise 7 3/4 going 10 lift 1/2 in",
        "stair triangle,rise 7 3/4 going 15 lift 1/2 in",
        "stair triangle,rise 7 3/4 going 7 lift 1/2 in",
    ];
    let found = judged("stair", &rows, item);
    assert_eq!(found["verdict"], "falls short");
    assert_eq!(
        found["measured"]["written"],
        "rise 7 3/4 going 15 lift 1/2 in"
    );
}

/// A rail far beyond the closed form: the gap between the noses and the rail alone is
/// 20 in · 10/12.65.
#[test]
fn a_rail_high_above_the_steps_is_judged() {
    let item = "stair triangle";
    let found = judged(
        "stair",
        &["stair triangle,rise 7 3/4 going 10 lift 20 in"],
        item,
    );
    assert_eq!(found["verdict"], "falls short");
    assert!(found["measured"]["value"].as_f64().expect("a number") > 25.4 * 200.0 / 12.652);
}
