use std::fs;
use std::path::Path;

use crate::harness::check;

/// Items that may be left out, as the design lists them: each is printed as taken.
const EXCEPT: &[&str] = &[
    "openings checked",
    "infill",
    "state",
    "tape",
    "read to",
    "default unit",
    // circumstances that only `covers` names
    "use",
    "dwellings in building",
    "shared",
];

const DEMOS: &[&str] = &["family-house.csv", "city-flat-uk.csv"];

/// The rows of a notebook survey, as cells; the demo surveys quote no cell before the note.
fn rows(text: &str) -> Vec<Vec<&str>> {
    text.lines()
        .filter(|line| !line.starts_with('#') && !line.is_empty())
        .map(|line| line.split(',').collect())
        .collect()
}

fn meets(survey: &str) -> Vec<String> {
    let report = check(survey, &[]).json();
    let guards = report["guards"].as_array().expect("guards");
    let met = guards.iter().filter(|guard| guard["verdict"] == "meets");
    met.map(|guard| format!("{}/{}", guard["unit"], guard["guard"]))
        .collect()
}

#[test]
fn leaving_an_item_out_of_a_demo_survey_never_makes_a_guard_meet() {
    let mut left_out = 0;
    for demo in DEMOS {
        let path = Path::new(env!("CARGO_MANIFEST_DIR"))
            .join("demo-surveys")
            .join(demo);
        let text = fs::read_to_string(path).expect("the demo survey is there");
        let rows = rows(&text);
        let item = rows[0]
            .iter()
            .position(|cell| *cell == "item")
            .expect("a notebook");
        let whole = meets(&text);
        let mut names: Vec<(&str, &str, &str)> = rows[1..]
            .iter()
            .map(|row| (row[0], row[1], row[item]))
            .collect();
        names.sort_unstable();
        names.dedup();
        for (unit, guard, name) in names {
            if EXCEPT.contains(&name) || name == "rules" {
                continue;
            }
            let kept: Vec<String> = rows
                .iter()
                .filter(|row| (row[0], row[1], row[item]) != (unit, guard, name))
                .map(|row| row.join(","))
                .collect();
            // leaving out a guard's own fact may leave an inherited one in its place
            let inherited = rows
                .iter()
                .any(|row| row[item] == name && !guard.is_empty() && row[1].is_empty());
            if inherited {
                continue;
            }
            let now = meets(&(kept.join("\n") + "\n"));
            left_out += 1;
            for guard in now {
                assert!(
                    whole.contains(&guard),
                    "{demo}: without {name}, {guard} meets"
                );
            }
        }
    }
    assert!(left_out > 40, "{left_out} items were left out");
}
