//! Three surveys of three kinds of people: how long their report is, and that every
//! reading and note of theirs stands in every form; lines fit every screen.

use std::path::Path;

use crate::harness::run_here;

/// The survey, its rules, and the most lines of its report at 80 columns.
const SURVEYS: [(&str, &[&str], usize); 3] = [
    ("one-landing.csv", &[], 78),
    ("house.csv", &["--rules", "us-dwelling-2018"], 200),
    ("twelve-flats.csv", &[], 300),
];

fn report(file: &str, more: &[&str]) -> String {
    let path = format!("@tests/reports/surveys/{file}");
    let args = [&["check", path.as_str()], more].concat();
    run_here(&args).out
}

fn words(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[test]
fn a_report_is_no_longer_than_its_reader_reads() {
    for (file, rules, most) in SURVEYS {
        let lines = report(file, rules).lines().count();
        assert!(lines <= most, "{file}: {lines} lines");
    }
}

#[test]
fn every_reading_and_every_note_stands_in_text_json_and_csv() {
    for (file, rules, _) in SURVEYS {
        let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/reports/surveys");
        let mut reader = csv::Reader::from_path(path.join(file)).expect("the survey is there");
        let headers = reader.headers().expect("a header").clone();
        let column = |name: &str| headers.iter().position(|h| h == name).expect("a column");
        let (guard, reading, note) = (column("guard"), column("reading"), column("note"));
        let rows: Vec<csv::StringRecord> =
            reader.records().map(|row| row.expect("a row")).collect();
        for form in ["text", "json", "csv"] {
            let out = report(file, &[rules, &["--format", form]].concat());
            let out = words(&out);
            for row in rows.iter().filter(|row| !row[guard].is_empty()) {
                for cell in [&row[reading], &row[note]] {
                    assert!(out.contains(cell), "{file}, {form}: {cell}");
                }
            }
        }
        let text = words(&report(file, rules));
        for row in rows.iter().filter(|row| row[guard].is_empty()) {
            assert!(text.contains(&row[reading]), "{file}: {}", &row[reading]);
        }
    }
}

#[test]
fn the_order_is_danger_then_what_is_wrong_then_what_is_unfinished() {
    let text = report("twelve-flats.csv", &[]);
    let parts = [
        "NO BUILDING RULES WERE CHECKED",
        "TONIGHT",
        "WHAT IS WRONG, AND WHAT TO DO FIRST",
        "UNFINISHED",
        "NOTHING WRONG FOUND",
        "FOR ALL",
        "The local authority and licensed professionals decide",
    ];
    let found: Vec<usize> = parts
        .iter()
        .map(|part| text.find(part).unwrap_or_else(|| panic!("{part}: {text}")))
        .collect();
    assert!(found.is_sorted(), "{found:?}");
    let told = "1 of 12 flats was not entered: 2C (nobody at home)";
    assert!(words(&text).contains(told), "{text}");
}

#[test]
fn a_list_of_work_has_a_row_for_each_act_and_defers_in_each() {
    let out = report("twelve-flats.csv", &["--format", "actions"]);
    let mut reader = csv::Reader::from_reader(out.as_bytes());
    let rows: Vec<csv::StringRecord> = reader.records().map(|row| row.expect("a row")).collect();
    let order = ["now", "soon", "look", "know"];
    let ranks: Vec<usize> = rows
        .iter()
        .map(|row| {
            order
                .iter()
                .position(|word| *word == &row[0])
                .expect("a priority")
        })
        .collect();
    assert!(ranks.is_sorted(), "{ranks:?}");
    assert!(rows.len() > 25, "{}", rows.len());
    assert!(
        rows.iter()
            .all(|row| row[18].contains("licensed professionals decide"))
    );
    assert!(
        rows.iter()
            .any(|row| &row[5] == "not entered" && &row[15] == "nobody at home")
    );
}
