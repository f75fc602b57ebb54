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

/// A plus of four limbs passes √2 times their width (facts/measurement-and-geometry.md
/// §3.2), so limbs of 70 mm stop a 4 in ball (98.995 mm) and limbs of 75 mm do not.
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
    assert!(ran.err.contains(said), "{}", ran.err);
    let report = ran.json();
    let unread = finding(only_guard(&report), "gap-too-wide");
    assert_eq!(unread["verdict"], "not measured");
}
