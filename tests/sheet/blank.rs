//! The blank survey: read back as it is, and filled in.

use serde_json::Value;

use crate::harness::check;
use crate::harness::run_here;

/// One finding that both layouts must agree on, without the places in the file.
fn without_places(report: &Value) -> Vec<(String, String, Vec<Value>)> {
    let guards = report["guards"].as_array().expect("guards");
    let each = guards.iter().map(|guard| {
        let findings = guard["findings"].as_array().expect("findings");
        let findings = findings.iter().map(|finding| {
            let mut finding = finding.clone();
            let object = finding.as_object_mut().expect("an object");
            object.remove("readings").expect("readings");
            object.remove("also_readings").expect("also readings");
            finding
        });
        (
            guard["guard"].to_string(),
            guard["verdict"].to_string(),
            findings.collect(),
        )
    });
    each.collect()
}

/// The blank table with each guard's notebook rows in it, cell by cell.
fn filled(blank: &str, notebook: &[(&str, &str, &str)]) -> String {
    let mut reader = csv::Reader::from_reader(blank.as_bytes());
    let header = reader.headers().expect("a header").clone();
    let mut rows: Vec<Vec<String>> = reader
        .records()
        .map(|row| row.expect("a row").iter().map(str::to_owned).collect())
        .collect();
    let mut names: Vec<&str> = vec![""];
    for (guard, item, reading) in notebook {
        if !names.contains(guard) {
            names.push(guard);
        }
        let row = names
            .iter()
            .position(|name| name == guard)
            .expect("just named");
        let column = |name: &str| {
            let found = header.iter().position(|heading| heading == name);
            found.unwrap_or_else(|| panic!("no column {name}"))
        };
        rows[row][column("guard")] = (*guard).to_owned();
        let cell = &mut rows[row][column(item)];
        if !cell.is_empty() {
            cell.push_str("; ");
        }
        cell.push_str(reading);
    }
    let mut writer = csv::Writer::from_writer(Vec::new());
    writer.write_record(&header).expect("written");
    for row in rows {
        writer.write_record(row).expect("written");
    }
    String::from_utf8(writer.into_inner().expect("flushed")).expect("UTF-8")
}

const BLANK: [&str; 6] = [
    "sheet",
    "--csv",
    "--rules",
    "us-dwelling-2018",
    "--guards",
    "2",
];

const HOUSE: [(&str, &str, &str); 19] = [
    ("", "property", "a house"),
    ("", "date", "2026-05-04"),
    ("", "use", "dwelling"),
    ("", "children", "14 months"),
    ("landing", "place", "landing"),
    ("landing", "drop", "9 ft"),
    ("landing", "height", "34 5/8 in"),
    ("landing", "opening", "3 11/16 in"),
    ("landing", "opening", "4 1/4 in at 38 in"),
    ("landing", "bottom gap", "2 in"),
    ("landing", "infill", "balusters"),
    ("stair", "place", "stair"),
    ("stair", "drop", "8 ft 9 in"),
    ("stair", "risers", "13"),
    ("stair", "height", "36 in"),
    ("stair", "stair triangle", "rise 7 3/4 going 10 lift 2 in"),
    ("stair", "riser opening", "none"),
    ("stair", "opening", "4 in ball stops everywhere"),
    ("stair", "handrail", "top of the guard"),
];

#[test]
fn a_blank_survey_is_read_back_and_nothing_is_measured() {
    let blank = run_here(&BLANK);
    assert_eq!((blank.code, blank.err.as_str()), (0, ""));
    let ran = check(&blank.out, &[]);
    assert_eq!((ran.code, ran.err.as_str()), (3, ""), "{}", ran.err);
    let report = ran.json();
    assert_eq!(report["summary"]["guards"], 2);
    assert_eq!(report["summary"]["not_measured"], 2);
    let rulesets: Vec<&Value> = report["rulesets"]
        .as_array()
        .expect("rulesets")
        .iter()
        .map(|ruleset| &ruleset["id"])
        .collect();
    assert_eq!(rulesets, ["us-dwelling-2018", "small-child-advice"]);
}

#[test]
fn filled_in_it_gives_what_the_notebook_gives() {
    let table = filled(&run_here(&BLANK).out, &HOUSE);
    let mut notebook =
        "guard,item,reading\n,rules,us-dwelling-2018; small-child-advice\n".to_owned();
    for (guard, item, reading) in HOUSE {
        notebook.push_str(&format!("{guard},{item},{reading}\n"));
    }
    let (table, notebook) = (check(&table, &[]), check(&notebook, &[]));
    assert_eq!((table.err.as_str(), notebook.err.as_str()), ("", ""));
    assert_eq!((table.code, notebook.code), (1, 1));
    let (table, notebook) = (table.json(), notebook.json());
    assert_eq!(without_places(&table), without_places(&notebook));
    assert_eq!(table["summary"], notebook["summary"]);
    assert_eq!(table["summary"]["guards"], 2);
}

#[test]
fn where_there_is_no_guard_the_column_railing_says_so() {
    let rows = [
        ("edge", "place", "landing"),
        ("edge", "drop", "9 ft"),
        ("edge", "railing", "none"),
    ];
    let mut args = BLANK.to_vec();
    args.truncate(4);
    let ran = check(&filled(&run_here(&args).out, &rows), &[]);
    assert_eq!((ran.code, ran.err.as_str()), (1, ""), "{}", ran.err);
    assert_eq!(ran.json()["summary"]["falls_short"], 1);
}

#[test]
fn every_ruleset_gives_a_blank_survey_that_reads_without_a_word() {
    for id in guardrule::rules::embedded_ids() {
        let blank = run_here(&[
            "sheet", "--csv", "--rules", id, "--units", "2", "--guards", "3",
        ]);
        let folder = tempfile::tempdir().expect("a folder");
        std::fs::write(folder.path().join("s.csv"), &blank.out).expect("written");
        let ran = crate::harness::run_in(
            folder.path(),
            &["check", "@s.csv", "--format", "summary"],
            "",
        );
        assert_eq!(ran.err, "", "{id}");
        assert_eq!(ran.json()["guards"], 6, "{id}");
    }
}

#[test]
fn a_ruleset_named_like_a_formula_gets_an_apostrophe() {
    let names = ["=town.toml".to_owned()];
    let ruleset = guardrule::rules::load("us-dwelling-2018", &|_| None);
    let rulesets = [ruleset.ruleset.expect("it loads")];
    let blank = guardrule::report::BlankSurvey {
        rulesets: &rulesets,
        names: &names,
        guards: std::num::NonZeroU32::MIN,
        units: None,
    };
    let mut out = Vec::new();
    guardrule::report::blank_survey(&mut out, &blank).expect("a Vec takes all");
    let text = String::from_utf8(out).expect("UTF-8");
    let facts = text.lines().nth(1).expect("the row of facts");
    assert!(
        facts.split(',').any(|cell| cell == "'=town.toml"),
        "{facts}"
    );
}
