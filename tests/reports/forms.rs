//! JSON against its shipped schema, CSV, the summary.

use serde_json::Value;

use guardrule::report::SCHEMA_TEXT;
use guardrule::report::Summary;

use crate::reports::scenes::Scene;
use crate::reports::scenes::guard;
use crate::reports::scenes::house;

const LAW: &[&str] = &["us-dwelling-2018", "small-child-advice"];

/// Panics where a report is not as the shipped schema says.
pub(crate) fn fits_the_schema(report: &Value) {
    let schema: Value = serde_json::from_str(SCHEMA_TEXT).expect("the schema is JSON");
    jsonschema::meta::validate(&schema).expect("the schema is a schema");
    let validator = jsonschema::validator_for(&schema).expect("a schema");
    let faults: Vec<String> = validator
        .iter_errors(report)
        .map(|fault| format!("{}: {fault}", fault.instance_path()))
        .collect();
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

#[test]
fn json_fits_its_schema_and_adds_up() {
    let (text, summary) = Scene::new(LAW, house()).json();
    let report: Value = serde_json::from_str(&text).expect("JSON");
    fits_the_schema(&report);
    let keys: Vec<&String> = report.as_object().expect("an object").keys().collect();
    assert_eq!(
        keys,
        [
            "schema",
            "tool",
            "survey",
            "basis",
            "decision",
            "rulesets",
            "guards",
            "diagnostics",
            "summary"
        ]
    );
    assert_eq!(report["guards"].as_array().map(Vec::len), Some(6));
    let mut counts = report["summary"].clone();
    let counts_alone = counts.as_object_mut().expect("an object");
    assert_eq!(counts_alone.remove("not_entered"), Some(Value::from(0)));
    assert!(counts_alone.remove("deferral").is_some());
    assert_eq!(serde_json::to_value(summary).expect("counts"), counts);
    adds_up(summary);
}

fn adds_up(summary: Summary) {
    assert_eq!(
        summary.guards,
        summary.meets
            + summary.falls_short
            + summary.undecided
            + summary.does_not_apply
            + summary.could_not_judge
    );
    assert_eq!(
        summary.undecided,
        summary.too_close + summary.not_settled + summary.not_measured
    );
    assert!(summary.reading_alone_meets <= summary.undecided);
}

#[test]
fn the_schema_refuses_what_is_left_out_and_what_is_added() {
    let (text, _) = Scene::new(LAW, house()).json();
    let report: Value = serde_json::from_str(&text).expect("JSON");
    let schema: Value = serde_json::from_str(SCHEMA_TEXT).expect("the schema is JSON");
    let validator = jsonschema::validator_for(&schema).expect("a schema");
    assert!(validator.is_valid(&report));
    for (key, value) in [("remedy", None), ("extra", Some(Value::Null))] {
        let mut changed = report.clone();
        let finding = changed["guards"][0]["findings"][0]
            .as_object_mut()
            .expect("a finding");
        match value {
            Some(value) => finding.insert(key.to_owned(), value),
            None => finding.remove(key),
        };
        assert!(!validator.is_valid(&changed), "{key}");
    }
}

/// 34 5/8 in = 879.475 mm, 36 in = 914.4 mm: exact, by 1 in = 25.4 mm.
#[test]
fn millimetres_are_printed_in_full_and_no_further() {
    let (text, _) = Scene::new(LAW, house().into_iter().take(1).collect()).json();
    for exact in [
        r#""measured":{"written":"34 5/8 in","value":879.475,"unit":"mm"}"#,
        r#""limit":{"written":"36 in","value":914.4,"unit":"mm"}"#,
        r#""margin":{"written":"-1 3/8 in","value":-34.925,"unit":"mm"}"#,
    ] {
        assert!(text.contains(exact), "{exact}");
    }
}

#[test]
fn one_guard_in_json() {
    let (text, _) = Scene::new(&["us-dwelling-2018"], house().into_iter().take(1).collect()).json();
    let report: Value = serde_json::from_str(&text).expect("JSON");
    insta::assert_snapshot!(serde_json::to_string_pretty(&report["guards"][0]).expect("JSON"));
}

#[test]
fn a_report_of_no_guard_is_whole_json() {
    let (text, summary) = Scene::new(LAW, Vec::new()).json();
    let report: Value = serde_json::from_str(&text).expect("JSON");
    fits_the_schema(&report);
    assert_eq!(report["guards"], Value::Array(Vec::new()));
    assert_eq!(summary, Summary::default());
}

#[test]
fn a_row_of_csv_for_every_finding() {
    let scene = Scene::new(LAW, house());
    let (json, _) = scene.json();
    let report: Value = serde_json::from_str(&json).expect("JSON");
    let findings: usize = report["guards"]
        .as_array()
        .expect("guards")
        .iter()
        .flat_map(|guard| guard["findings"].as_array().expect("findings"))
        .filter(|finding| finding["verdict"] != "does not apply")
        .count();
    let text = scene.csv();
    let mut reader = csv::Reader::from_reader(text.as_bytes());
    let columns = reader.headers().expect("a header").len();
    let rows: Vec<csv::StringRecord> = reader.records().map(|row| row.expect("a row")).collect();
    let verdict = 16;
    let said = rows.iter().filter(|row| !row[verdict].is_empty()).count();
    assert_eq!(said, findings);
    // a guard of which no rule says anything has a row, and so has each unused reading
    assert!(rows.iter().any(|row| &row[3] == "front step"));
    let cautions = columns - 1;
    assert!(
        rows.iter()
            .all(|row| row[cautions].contains("licensed professionals decide"))
    );
    assert!(rows.iter().all(|row| row.len() == columns));
}

#[test]
fn csv_of_one_guard() {
    let text = Scene::new(
        &["us-dwelling-2018"],
        house().into_iter().skip(2).take(1).collect(),
    )
    .csv();
    insta::assert_snapshot!(text);
}

#[test]
fn no_cell_of_csv_is_a_formula() {
    let trap = guard(
        "@unit",
        "=cmd|' /C calc'!A0",
        &[
            ("place", "landing", "-1+1"),
            ("drop", "9 ft", "+1"),
            ("height", "35 in", "\t=1"),
        ],
    );
    let mut scene = Scene::new(LAW, vec![trap]);
    scene.facts.property = Some("=HYPERLINK(\"x\")".to_owned());
    let text = scene.csv();
    let mut reader = csv::Reader::from_reader(text.as_bytes());
    let mut cells = 0;
    for row in reader.records() {
        for cell in &row.expect("a row") {
            cells += 1;
            assert!(
                !cell.starts_with(['=', '+', '-', '@', '\t', '\r']),
                "{cell:?}"
            );
        }
    }
    assert!(cells > 100);
    assert!(text.contains("'=HYPERLINK"));
    assert!(text.contains("'@unit"));
}

#[test]
fn the_summary_alone() {
    let (text, summary) = Scene::new(LAW, house()).summary();
    adds_up(summary);
    let (json, _) = Scene::new(LAW, house()).json();
    let whole: Value = serde_json::from_str(&json).expect("JSON");
    let alone: Value = serde_json::from_str(&text).expect("JSON");
    assert_eq!(alone, whole["summary"]);
    insta::assert_snapshot!(text);
}
