//! What a careful inspector would not sign, as `inspector.py` found it.

use crate::harness::only_guard;
use crate::harness::run;
use crate::harness::verdict_by;

/// The verdict of a guard with these rows by one ruleset.
fn by(rules: &str, rows: &[&str]) -> String {
    let mut survey = "guard,item,reading\n".to_owned();
    for row in rows {
        survey.push_str(&format!("g,{row}\n"));
    }
    verdict_by(rules, "", &survey)
}

/// Readings of a stair's guard by these rulesets, all well but for risers, openings and drop.
const STAIR: &[&str] = &[
    "place,stair",
    "use,dwelling",
    "location,inside",
    "height,920 mm",
    "bottom gap,50 mm",
    "stair triangle,none",
    "handrail,separate",
    "handrail height,920 mm",
    "handrail sides,both sides",
    "risers,13",
    "infill,balusters",
    "foothold,none",
    "edge gap,none",
];

const ASK_ABOUT_RISERS: [&str; 3] = [
    "us-dwelling-2018",
    "uk-approved-document-k",
    "australia-ncc-2022",
];

fn stair<'r>(more: &[&'r str]) -> Vec<&'r str> {
    [STAIR, more].concat()
}

/// What fills a guard and what lies between two treads are looked at each for itself
/// (IRC 2018 R312.1.3 and R311.7.5.1).
#[test]
fn a_ball_tried_at_every_hole_of_the_guard_tells_nothing_of_open_risers() {
    let everywhere = "opening,3 in ball stops everywhere";
    let treads = "riser opening,3 in ball stops everywhere";
    for rules in ASK_ABOUT_RISERS {
        let stair = |more: &[&str]| by(rules, &stair(&[&["drop,2600 mm"], more].concat()));
        assert_eq!(stair(&[everywhere]), "not measured", "{rules}");
        assert_eq!(stair(&[treads]), "not measured", "{rules}");
        assert_eq!(stair(&[everywhere, treads]), "meets", "{rules}");
        assert_eq!(
            stair(&[everywhere, "riser opening,none"]),
            "meets",
            "{rules}"
        );
    }
}

/// Above a drop its rules on height and gaps are met, below it they ask nothing, and a
/// rule on handrails is met either way: that is no agreement.
#[test]
fn a_drop_that_nobody_wrote_lets_no_guard_meet() {
    let rows = ["opening,80 mm", "riser opening,none"];
    for rules in ASK_ABOUT_RISERS {
        let with = |drop| by(rules, &stair(&[&rows[..], &[drop]].concat()));
        assert_eq!(by(rules, &stair(&rows)), "not measured", "{rules}");
        assert_eq!(with("drop,not reached"), "not measured", "{rules}");
        assert_eq!(with("drop,2600 mm"), "meets", "{rules}");
    }
}

/// How many dangers are called out at a landing of a house with these rows.
fn dangers(town: &str, rows: &[&str]) -> usize {
    let mut survey = "guard,item,reading\ng,place,landing\ng,use,dwelling\n".to_owned();
    for row in rows {
        survey.push_str(&format!("g,{row}\n"));
    }
    let args = ["check", "@s.csv", "--no-guidance", "--format", "json"];
    let rules = ["--rules", "us-dwelling-2018", "--rules", "@town.toml"];
    let files = [("s.csv", survey.as_str()), ("town.toml", town)];
    let given = if town.is_empty() { 2 } else { 4 };
    let ran = run(&files, &[&args[..], &rules[..given]].concat());
    let report = ran.json();
    let seen = only_guard(&report)["dangers"].as_array().map(Vec::len);
    seen.expect("a list")
}

/// A hole where a baluster is missing is one to fall through only over a drop of more
/// than 30 in (IRC 2018 R312.1.1), or one that nobody wrote or the tape cannot tell.
#[test]
fn a_missing_baluster_is_a_danger_over_a_drop() {
    let at = |drop: &str| dangers("", &["height,42 in", "infill loose,missing", drop]);
    assert_eq!(at("drop,20 in"), 0);
    assert_eq!(at("drop,29 in"), 0);
    assert_eq!(at("drop,30 1/16 in"), 1);
    assert_eq!(at("drop,9 ft"), 1);
    assert_eq!(at("drop,not reached"), 1);
    assert_eq!(dangers("", &["height,42 in", "infill loose,missing"]), 1);
}

/// An edge without a railing is called out where a law that decides asks for one; what
/// advice asks beside it is advice.
#[test]
fn advice_calls_out_no_edge_that_the_law_leaves_open() {
    let town = |advisory: bool| {
        format!(
            "id = \"town\"\ntitle = \"T\"\nedition = \"E\"\nadvisory = {advisory}\n\
             [source.s]\ntitle = \"T\"\nedition = \"E\"\nstatus = \"published\"\n\
             [[rule]]\nid = \"r\"\nhazard = \"fall over\"\nclause = \"1\"\n\
             says = \"Above a drop a railing is asked for.\"\nsource = \"s\"\n\
             when.drop.above = \"20 in\"\ncheck.guard.is = \"present\"\n"
        )
    };
    let none = ["guard,none", "drop,25 in"];
    assert_eq!(dangers("", &none), 0);
    assert_eq!(dangers(&town(true), &none), 0);
    assert_eq!(dangers(&town(false), &none), 1);
    assert_eq!(dangers("", &["guard,none", "drop,9 ft"]), 1);
}
