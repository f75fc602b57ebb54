//! What lets a body in and holds the head, footholds that make a ladder, openings
//! that narrow downward.

use crate::harness::Ran;
use crate::harness::check;
use crate::harness::finding;
use crate::harness::only_guard;
use crate::harness::run;

const TEMPLATE: &str = "torso-fits-and-head-does-not";

/// The verdict of the template rule for one opening, with the tape's doubt.
fn template(opening: &str) -> String {
    of_rule(TEMPLATE, opening)
}

/// The verdict of a rule for one opening of a playground's deck.
fn of_rule(rule: &str, opening: &str) -> String {
    let survey = format!(
        "guard,item,reading\ndeck,place,deck\ndeck,opening,{opening}\ndeck,bottom gap,none\n"
    );
    let args = [
        "--rules",
        "us-playground-handbook-2010",
        "--memory",
        "decides",
    ];
    let report = check(&survey, &args).json();
    let guard = only_guard(&report).clone();
    let findings = guard["findings"].as_array().expect("findings");
    let found = findings
        .iter()
        .find(|f| f["rule"] == rule && f["item"] == "opening");
    found.expect("a finding")["verdict"].to_string()
}

#[test]
fn a_body_that_passes_without_its_head_falls_short() {
    for (opening, verdict) in [
        ("rectangle 4 x 7 in", "falls short"),
        ("rectangle 4 x 5 in", "meets"),
        ("rectangle 10 x 12 in", "meets"),
        ("circle 8 in", "falls short"),
        ("circle 6 in", "meets"),
        // a square standing on its corner: the diagonal is no help
        ("polygon 0:-4 4:0 0:4 -4:0 in", "meets"),
        ("polygon 0:0 4:0 4:9 0:9 in", "falls short"),
        // bent, so that a ball of 4 in passes and the stiff probe does not
        ("polygon 0:0 4.1:0 4.1:5 9:5 9:9.1 0:9.1 in", "falls short"),
        ("polygon 0:0 3.7:0 3.7:2 5.5:2 5.5:5 0:5 in", "meets"),
        ("triangle 7 3/4 x 10 in", "meets"),
        ("triangle 9 x 14 in", "falls short"),
        ("4 in", "falls short"),
        ("3 in", "meets"),
        ("4 in ball stops everywhere", "not measured"),
        ("3 in ball stops everywhere", "meets"),
    ] {
        assert_eq!(template(opening), format!("\"{verdict}\""), "{opening}");
    }
}

/// The largest share of the template that passes, beside each: found with shapely
/// 2.2.0 on GEOS 3.14.1 by taking from the outline what each side forbids the probe's
/// middle (`difference`, `unary_union`), turned by quarters of a degree.
#[test]
fn between_raked_and_turned_balusters_the_probe_is_tried_too() {
    for (opening, verdict) in [
        // 1.143
        ("raked 4 in level rise 7 going 10 high 30 in", "falls short"),
        ("raked 4 in level rise 7 going 10", "falls short"),
        // 0.901
        ("raked 5 in level rise 7 1/2 going 10 high 7 in", "meets"),
        // 0.830
        ("raked 5 in level rise 7 1/2 going 10 high 6 in", "meets"),
        ("raked 3 in level at 37 deg", "meets"),
        // 1.125, with rails at the ends and without
        (
            "turned 140 mm centres 0:60 60:40 300:40 360:60 mm",
            "falls short",
        ),
        // 0.816
        ("turned 131 mm centres 0:67 34:68 74:25 199:68 mm", "meets"),
        // slim at its end, where a rail may be or not
        ("turned 128 mm centres 0:60 40:20 mm", "not measured"),
    ] {
        assert_eq!(template(opening), format!("\"{verdict}\""), "{opening}");
    }
}

/// Between 3 in, with rails at the ends of the profile, and 11 in without, most balls
/// lie in the band in which neither bound does.
#[test]
fn bounds_on_either_side_of_a_band_settle_nothing() {
    for (opening, verdict) in [
        ("turned 12 in centres 0:1 3:1 in", "not measured"),
        ("turned 12 in centres 0:1 60:1 in", "meets"),
        ("turned 6 in centres 0:1 4:1 in", "falls short"),
        ("turned 4 in centres 0:1 2:1 in", "meets"),
    ] {
        let found = of_rule("gap-can-hold-a-head", opening);
        assert_eq!(found, format!("\"{verdict}\""), "{opening}");
    }
}

#[test]
fn a_probe_within_the_tapes_doubt_is_too_close_to_call() {
    for opening in [
        "rectangle 3 1/2 x 8 in",
        "rectangle 5 x 6 3/16 in",
        "circle 7 1/8 in",
        "polygon 0:0 3.52:0 3.52:9 0:9 in",
        "polygon 0:0 8.98:0 8.98:20 0:20 in",
    ] {
        assert_eq!(template(opening), "\"too close to call\"", "{opening}");
    }
}

fn ruleset(check: &str) -> String {
    format!(
        "id = \"own\"\ntitle = \"Own\"\nedition = \"1\"\nleaves-out = [\"the rest\"]\n\
[source.s]\ntitle = \"S\"\nedition = \"1\"\nstatus = \"published\"\n\
[[rule]]\nid = \"r\"\nhazard = \"climb\"\nclause = \"1\"\nsays = \"Says.\"\nsource = \"s\"\n{check}\n"
    )
}

fn judged(rule: &str, rows: &str) -> Ran {
    let survey = format!("guard,item,reading\n{rows}");
    let files = [
        ("survey.csv", survey.as_str()),
        ("own.toml", &ruleset(rule)),
    ];
    let args = ["check", "@survey.csv", "--rules", "@own.toml"];
    run(&files, &args)
}

#[test]
fn the_report_names_the_ledges_that_make_a_ladder() {
    let ladder = "check.foothold.ladder-up-to = \"350 mm\"";
    let ran = judged(
        ladder,
        "deck,foothold,100 mm high\ndeck,foothold,400 mm high\ndeck,foothold,1000 mm high\n",
    );
    let text = ran.out.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(
        text.contains("The ledges at 100 mm and 400 mm are 300 mm apart"),
        "{text}"
    );
}

/// The worst verdict of one guard under one rule of our own.
/// A report by one rule of a ruleset made for it.
fn of(rule: &str, rows: &str, format: &str) -> Ran {
    let survey = format!("guard,item,reading\n{rows}");
    let files = [
        ("survey.csv", survey.as_str()),
        ("own.toml", &ruleset(rule)),
    ];
    let args = [
        "check",
        "@survey.csv",
        "--rules",
        "@own.toml",
        "--no-guidance",
        "--format",
        format,
    ];
    run(&files, &args)
}

fn verdict(rule: &str, rows: &str) -> String {
    let report = of(rule, rows, "json").json();
    let guard = only_guard(&report);
    finding(guard, "r")["verdict"]
        .as_str()
        .expect("a verdict")
        .to_owned()
}

#[test]
fn what_makes_a_ladder_is_said_by_the_ruleset() {
    let up_to = "check.foothold = { ladder-up-to = \"350 mm\", deeper-than = \"15 mm\" }";
    let below = "check.foothold.ladder-below = \"350 mm\"";
    for (rule, rows, expected) in [
        (below, "d,foothold,100 mm high\n", "meets"),
        (below, "d,foothold,none\n", "meets"),
        (
            below,
            "d,foothold,100 mm high\nd,foothold,500 mm high\n",
            "meets",
        ),
        (
            below,
            "d,foothold,100 mm high\nd,foothold,451 mm high\n",
            "too close to call",
        ),
        (
            below,
            "d,foothold,100 to 900 mm every 100 mm\n",
            "falls short",
        ),
        // a ledge that is too shallow is none
        (
            up_to,
            "d,foothold,100 mm high 40 mm deep\nd,foothold,300 mm high 5 mm deep\n",
            "meets",
        ),
        (
            up_to,
            "d,foothold,100 mm high 40 mm deep\nd,foothold,300 mm high 40 mm deep\n",
            "falls short",
        ),
        (
            up_to,
            "d,foothold,100 mm high 40 mm deep\nd,foothold,300 mm high\n",
            "not measured",
        ),
        // the worst pair decides
        (
            below,
            "d,foothold,100 mm high\nd,foothold,900 mm high\nd,foothold,700 mm high\n",
            "falls short",
        ),
    ] {
        assert_eq!(verdict(rule, rows), expected, "{rule}: {rows}");
    }
}

#[test]
fn level_bars_without_heights_are_not_measured() {
    let zone = "check.foothold.none-within = [\"140 mm\", \"900 mm\"]";
    let bars = "d,infill,horizontal bars\n";
    assert_eq!(verdict(zone, bars), "not measured");
    assert_eq!(
        verdict(zone, &format!("{bars}d,foothold,none\n")),
        "not measured"
    );
    let heights = format!("{bars}d,foothold,100 to 1000 mm every 150 mm\n");
    assert_eq!(verdict(zone, &heights), "falls short");
}

#[test]
fn an_opening_that_narrows_to_a_point_is_judged_by_its_angle() {
    let angle = "check.v-opening.angle-at-least = \"55 deg\"";
    for (written, expected) in [
        ("5 in wide 6 in deep", "falls short"),
        ("vee 9 in wide 6 in deep", "meets"),
        ("6 1/4 in wide 6 in deep", "too close to call"),
        ("5 in wide 6 in deep 1 in at the bottom", "not measured"),
        ("none", "meets"),
        ("not reached", "not measured"),
    ] {
        let rows = format!("d,v opening,{written}\n");
        assert_eq!(verdict(angle, &rows), expected, "{written}");
    }
}

#[test]
fn an_opening_whose_sides_do_not_meet_is_asked_about_and_told_why() {
    let rule = "check.v-opening.angle-at-least = \"55 deg\"";
    let rows = "d,v opening,5 in wide 6 in deep 1 in at the bottom\n";
    let text = of(rule, rows, "text").out;
    let words: Vec<&str> = text.split_whitespace().collect();
    let text = words.join(" ");
    assert!(
        text.contains("Its sides do not meet at the bottom"),
        "{text}"
    );
    let report = of(rule, rows, "json").json();
    let questions = only_guard(&report)["questions"].to_string();
    assert!(questions.contains("\"v opening\""), "{questions}");
}
