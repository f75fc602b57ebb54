//! A list of work that came back filled in.

use std::fs;

use crate::compare::survey;
use crate::harness::run_in;
use crate::harness::words;

/// Judges two guards, fills in the list of work with `fill`, and compares.
fn with_list(
    fill: impl Fn(&str, &str) -> Option<(&'static str, &'static str)>,
) -> (u8, String, String) {
    let folder = tempfile::tempdir().expect("a folder");
    let before = survey(
        "2026-03-14",
        &[
            ("gallery", &[("height", "34 in"), ("opening", "5 in")]),
            ("porch", &[("height", "33 in")]),
        ],
    );
    fs::write(folder.path().join("before.csv"), before).expect("written");
    let rules = ["--rules", "us-dwelling-2018", "--no-guidance"];
    let list = run_in(
        folder.path(),
        &[&["check", "@before.csv", "--format", "actions"][..], &rules].concat(),
        "",
    )
    .out;
    let mut reader = csv::Reader::from_reader(list.as_bytes());
    let headers = reader.headers().expect("a header").clone();
    let column = |name: &str| headers.iter().position(|h| h == name).expect("a column");
    let mut out = csv::Writer::from_writer(Vec::new());
    out.write_record(&headers).expect("a Vec takes everything");
    for row in reader.records() {
        let row = row.expect("a row");
        let mut cells: Vec<String> = row.iter().map(str::to_owned).collect();
        if let Some((done, after)) = fill(&row[column("guard")], &row[column("what")]) {
            cells[column("done on")] = done.to_owned();
            cells[column("measured after")] = after.to_owned();
        }
        out.write_record(&cells).expect("a Vec takes everything");
    }
    fs::write(
        folder.path().join("done.csv"),
        out.into_inner().expect("whole"),
    )
    .expect("written");
    let ran = run_in(
        folder.path(),
        &[&["compare", "@before.csv", "@done.csv"][..], &rules].concat(),
        "",
    );
    (ran.code, words(&ran.out), ran.err)
}

#[test]
fn what_was_measured_after_the_work_is_judged_and_the_rest_stays() {
    let (code, text, err) = with_list(|guard, what| {
        (guard == "gallery" && what == "too low").then_some(("2026-06-01", "37 in"))
    });
    assert_eq!((code, err.as_str()), (1, ""), "{text}");
    let mended = text.split("MENDED").nth(1).expect("something was mended");
    assert!(
        mended.contains("gallery. Height: before 34 in, now 37 in"),
        "{text}"
    );
    let short = text
        .split("STILL SHORT")
        .nth(1)
        .expect("something is short");
    assert!(
        short.contains("porch. Height") && short.contains("gallery. Gaps"),
        "{text}"
    );
}

#[test]
fn what_was_done_and_not_measured_is_not_mended() {
    let (_, text, _) = with_list(|guard, what| {
        (guard == "gallery" && what == "too low").then_some(("2026-06-01", ""))
    });
    assert!(!text.contains("MENDED"), "{text}");
    let open = text.split("NO LONGER MEASURED").nth(1).expect("open");
    assert!(open.contains("gallery. Height"), "{text}");
}

#[test]
fn a_reading_that_cannot_be_read_is_said_with_its_line() {
    let (code, text, err) = with_list(|guard, what| {
        (guard == "gallery" && what == "too low").then_some(("2026-06-01", "about right"))
    });
    assert_eq!(code, 2);
    assert!(err.contains("G331") && err.contains("about right"), "{err}");
    assert!(!text.contains("MENDED"), "{text}");
}
