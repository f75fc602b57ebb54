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

/// Demo surveys that are notebooks.
const NOTEBOOKS: &[&str] = &["family-house.csv", "city-flat-uk.csv"];

fn demo(name: &str) -> String {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("demo-surveys");
    fs::read_to_string(folder.join(name)).expect("the demo survey is there")
}

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
    for name in NOTEBOOKS {
        let text = demo(name);
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
                assert!(whole.contains(&guard), "without {name}, {guard} meets");
            }
        }
    }
    assert!(left_out > 40, "{left_out} items were left out");
}

/// The same for a table: a cell left empty is a reading left out.
#[test]
fn leaving_a_cell_out_of_a_demo_table_never_makes_a_guard_meet() {
    let text = demo("twelve-flats.csv");
    let mut reader = csv::Reader::from_reader(text.as_bytes());
    let header = reader.headers().expect("a header").clone();
    let rows: Vec<csv::StringRecord> = reader.records().map(|row| row.expect("a row")).collect();
    let whole = meets(&text);
    assert!(!whole.is_empty(), "some guards meet");
    let mut left_out = 0;
    for (at, row) in rows.iter().enumerate() {
        for (column, name) in header.iter().enumerate().skip(3) {
            // a fact of the survey may come back in place of a unit's own
            let own_fact = row[2].is_empty() && !(row[0].is_empty() && row[1].is_empty());
            if EXCEPT.contains(&name) || name == "rules" || row[column].is_empty() || own_fact {
                continue;
            }
            let mut writer = csv::Writer::from_writer(Vec::new());
            writer.write_record(&header).expect("written");
            for (index, row) in rows.iter().enumerate() {
                let cells = row.iter().enumerate().map(|(place, cell)| {
                    if (index, place) == (at, column) {
                        ""
                    } else {
                        cell
                    }
                });
                writer.write_record(cells).expect("written");
            }
            let bytes = writer.into_inner().expect("flushed");
            let now = meets(&String::from_utf8(bytes).expect("text"));
            left_out += 1;
            for guard in now {
                assert!(
                    whole.contains(&guard),
                    "without {name} of row {at}, {guard} meets"
                );
            }
        }
    }
    assert!(left_out > 150, "{left_out} cells were left out");
}

/// A row left out of the demo survey of the load path never makes what holds a
/// guard up meet, nor one of its links show no shortfall that was not measured.
#[test]
fn leaving_a_row_out_never_finds_strength() {
    let text = demo("load-path.csv");
    let lines: Vec<&str> = text.lines().collect();
    let links = |survey: &str| -> Vec<(String, String)> {
        let report = check(survey, &["--rules", "us-dwelling-2018", "--no-guidance"]).json();
        let guards = report["guards"].as_array().expect("guards");
        let mut all = Vec::new();
        for guard in guards {
            for finding in guard["findings"].as_array().expect("findings") {
                if finding["rule"] != "guard-load" {
                    continue;
                }
                assert_ne!(finding["verdict"], "meets", "{guard}");
                for link in finding["links"].as_array().expect("links") {
                    let name = format!("{} {} {}", guard["guard"], link["link"], link["case"]);
                    all.push((name, link["verdict"].to_string()));
                }
            }
        }
        all
    };
    let whole = links(&text);
    let mut left_out = 0;
    for at in 1..lines.len() {
        let kept: Vec<&str> = lines
            .iter()
            .enumerate()
            .filter(|(index, _)| *index != at)
            .map(|(_, line)| *line)
            .collect();
        for (name, verdict) in links(&(kept.join("\n") + "\n")) {
            let before = whole.iter().find(|one| one.0 == name);
            let was_open = before.is_none_or(|one| one.1 == "\"not measured\"");
            let found = was_open && verdict == "\"meets\"";
            assert!(!found, "without {}: {name} shows no shortfall", lines[at]);
        }
        left_out += 1;
    }
    assert!(left_out > 60, "{left_out}");
}
