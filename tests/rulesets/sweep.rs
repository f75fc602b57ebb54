//! A rail of 300 mm with holes of 300 mm, 20 m up, under every shipped ruleset at every
//! place and use that it covers: no text lets it pass.

use crate::harness::check;
use guardrule::rules::Condition;
use guardrule::rules::Test;
use guardrule::rules::embedded_ids;
use guardrule::rules::load;

/// What is written of each guard beside its place and use.
const READINGS: &[(&str, &str)] = &[
    ("location", "outside"),
    ("drop", "20 m"),
    ("height", "300 mm"),
    ("opening", "300 mm"),
    ("storeys", "3"),
    ("built", "2024"),
    ("handrail", "separate"),
    ("handrail height", "900 mm"),
    ("handrail sides", "both sides"),
    ("risers", "13"),
    ("flight width", "900 mm"),
    ("infill", "balusters"),
    ("children", "3 years"),
    ("guard thickness", "50 mm"),
    ("fixed seat", "no"),
    ("ground fall", "0 mm"),
    ("foothold", "none"),
    ("own way out", "yes"),
    ("sill height", "300 mm"),
    ("sill top height", "300 mm"),
    ("sill above ground", "20 m"),
    ("replaced window", "no"),
];

fn covered(conditions: &[Condition], item: &str, all: &[&str]) -> Vec<String> {
    let named = conditions.iter().find(|c| c.item.name() == item);
    match named.map(|condition| &condition.test) {
        Some(Test::OneOf(words)) => words.iter().map(ToString::to_string).collect(),
        _ => all.iter().map(ToString::to_string).collect(),
    }
}

#[test]
fn a_rail_of_300_mm_with_holes_of_300_mm_meets_no_text_anywhere() {
    const PLACES: &[&str] = &[
        "landing", "stair", "ramp", "deck", "balcony", "window", "pool",
    ];
    const USES: &[&str] = &["dwelling", "public", "workplace"];
    let mut tried = 0;
    for id in embedded_ids() {
        let ruleset = load(id, &|_| None).ruleset.expect("shipped");
        let conditions = &ruleset.covers.conditions;
        let mut survey = String::from("guard,item,reading\n");
        for place in covered(conditions, "place", PLACES) {
            for usage in covered(conditions, "use", USES) {
                for (shared, dwellings) in [("no", "1"), ("no", "12"), ("yes", "12")] {
                    let guard = format!("{place} {usage} {shared} {dwellings}");
                    let own = [
                        ("place", place.as_str()),
                        ("use", usage.as_str()),
                        ("shared", shared),
                        ("dwellings in building", dwellings),
                    ];
                    for (item, reading) in own.iter().chain(READINGS) {
                        survey.push_str(&format!("{guard},{item},{reading}\n"));
                    }
                    tried += 1;
                }
            }
        }
        let options = ["--rules", id, "--no-guidance", "--decision", "simple"];
        let ran = check(&survey, &options);
        assert_ne!(ran.code, 0, "{id}");
        for guard in ran.json()["guards"].as_array().expect("a list") {
            assert_ne!(guard["verdict"], "meets", "{id}: {}", guard["guard"]);
        }
    }
    assert!(tried > 2000, "{tried}");
}
