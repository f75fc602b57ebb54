//! Spreadsheets as office programs write them: what is read of each, and what is
//! said. How the files were made stands beside them, in `make.py`.

use std::fmt::Write;
use std::fs;
use std::path::Path;
use std::path::PathBuf;

use serde_json::Value;

use crate::harness::run_in;

fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/corpus/spreadsheets")
}

fn corpus() -> Vec<String> {
    let mut names: Vec<String> = fs::read_dir(folder())
        .expect("the corpus is there")
        .map(|entry| entry.expect("the corpus can be listed").file_name())
        .map(|name| name.to_string_lossy().into_owned())
        .filter(|name| {
            [".xlsx", ".ods", ".csv"]
                .iter()
                .any(|end| name.ends_with(end))
        })
        .collect();
    names.sort();
    assert!(names.len() >= 40, "the corpus is whole");
    names
}

/// What is said of a file, and what was read of it.
fn read(name: &str) -> String {
    let file = format!("@{name}");
    let args = [
        "check",
        &file,
        "--no-guidance",
        "--rules",
        "us-dwelling-2018",
        "--format",
        "json",
    ];
    let ran = run_in(&folder(), &args, "");
    let mut lines = format!("status {}\n{}", ran.code, ran.err);
    if ran.out.is_empty() {
        return lines;
    }
    for guard in ran.json()["guards"].as_array().expect("a list") {
        let text = |key: &str| guard[key].as_str().unwrap_or_default().to_owned();
        writeln!(
            lines,
            "{}, {}: {}",
            text("unit"),
            text("guard"),
            text("verdict")
        )
        .expect("a string takes text");
        let mut readings = guard["readings"].as_array().expect("a list").iter();
        for reading in &mut readings {
            let text = |value: &Value| value.as_str().unwrap_or_default().to_owned();
            let note = text(&reading["note"]);
            let note = if note.is_empty() {
                note
            } else {
                format!(" [{note}]")
            };
            writeln!(
                lines,
                "    {} {} = {}{note}",
                reading["line"],
                text(&reading["item"]),
                text(&reading["written"])
            )
            .expect("a string takes text");
        }
    }
    lines
}

#[test]
fn spreadsheets_are_read_as_they_are_kept_or_asked_about() {
    let mut settings = insta::Settings::clone_current();
    settings.set_omit_expression(true);
    settings.set_prepend_module_to_snapshot(false);
    settings.set_snapshot_path("../corpus/spreadsheets/snapshots");
    for name in corpus() {
        settings.bind(|| insta::assert_snapshot!(name.clone(), read(&name)));
    }
}
