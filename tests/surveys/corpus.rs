//! Faulty surveys: what is said of each, and what was read all the same.

use std::collections::BTreeSet;
use std::fs;
use std::io;
use std::ops::ControlFlow;
use std::path::Path;

use guardrule::input::Severity;
use guardrule::items::Item;
use guardrule::survey::CellDoubt;
use guardrule::survey::SheetCell;
use guardrule::survey::SheetCells;
use guardrule::survey::Survey;
use guardrule::survey::SurveyFile;

use crate::surveys::support::lines;
use crate::surveys::support::read_files;

/// Files of which nothing is wrong: they stand beside a trap and must not spring it.
const FAULTLESS: &[&str] = &[
    "default-unit-comes-late.csv",
    "facts-filled-down.csv",
    "formulas-neutralised.csv",
    "headings-with-units.csv",
    "note-over-lines-with-empty-columns.csv",
    "note-over-two-lines.csv",
    "row-of-groups.csv",
    "row-of-units.csv",
];

fn corpus() -> Vec<(String, Vec<u8>)> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/corpus/surveys");
    let mut files: Vec<(String, Vec<u8>)> = fs::read_dir(folder)
        .expect("the corpus is there")
        .map(|entry| entry.expect("the corpus can be listed").path())
        .filter(|path| path.extension().is_some_and(|ending| ending == "csv"))
        .map(|path| {
            let name = path.file_name().expect("a file has a name");
            let bytes = fs::read(&path).expect("the corpus can be read");
            (name.to_string_lossy().into_owned(), bytes)
        })
        .collect();
    files.sort();
    files
}

/// Items and readings of the notebooks in the corpus, where both cells can be told.
pub(crate) fn rows() -> Vec<(Item, String)> {
    let mut rows = Vec::new();
    for (_, bytes) in corpus() {
        let mut reader = csv::ReaderBuilder::new();
        let mut reader = reader.flexible(true).has_headers(true).from_reader(&*bytes);
        let Ok(header) = reader.headers().cloned() else {
            continue;
        };
        let column = |name: &str| header.iter().position(|heading| heading == name);
        let (Some(item), Some(reading)) = (column("item"), column("reading")) else {
            continue;
        };
        for record in reader.records().flatten() {
            if let (Some(name), Some(text)) = (record.get(item), record.get(reading))
                && let Some(item) = Item::by_name(name)
            {
                rows.push((item, text.to_owned()));
            }
        }
    }
    rows
}

#[test]
fn every_fault_is_said_with_its_place_and_the_rest_is_read() {
    let mut settings = insta::Settings::clone_current();
    settings.set_omit_expression(true);
    settings.set_prepend_module_to_snapshot(false);
    settings.set_snapshot_path("../corpus/surveys/snapshots");
    for (name, bytes) in corpus() {
        let read = read_files(&[(&name, &bytes)]);
        settings.bind(|| insta::assert_snapshot!(name.trim_end_matches(".csv"), lines(&read)));
    }
}

#[test]
fn every_file_of_the_corpus_says_something_with_a_place_and_a_way_out() {
    for (name, bytes) in corpus() {
        let read = read_files(&[(&name, &bytes)]);
        let all = read.diagnostics.sorted();
        assert_eq!(all.is_empty(), FAULTLESS.contains(&&*name), "{name}");
        for diagnostic in all {
            assert!(diagnostic.help.is_some(), "{name}: {}", diagnostic.message);
            let whole_file = diagnostic.at.at.line() == 0;
            assert!(
                whole_file || !diagnostic.at.at.text().is_empty() || diagnostic.code.number == 230,
                "{name}: {} has no place",
                diagnostic.message
            );
        }
    }
}

#[test]
fn every_code_is_given_by_some_file() {
    let mut given: BTreeSet<u16> = corpus()
        .iter()
        .flat_map(|(name, bytes)| {
            let read = read_files(&[(name, bytes)]);
            read.diagnostics
                .sorted()
                .iter()
                .map(|d| d.code.number)
                .collect::<Vec<_>>()
        })
        .collect();
    // a row of more than 1 MiB is no file for the corpus
    let long = format!(
        "unit,guard,item,reading\nA,b,height,{}\n",
        "3".repeat(1 << 20)
    );
    let read = read_files(&[("long.csv", long.as_bytes())]);
    given.extend(read.diagnostics.sorted().iter().map(|d| d.code.number));
    let many: Vec<String> = (0..101).map(|n| format!("town-{n}")).collect();
    let many = format!(
        "guard,item,reading\n,rules,{}\na,height,36 in\n",
        many.join("; ")
    );
    let read = read_files(&[("many.csv", many.as_bytes())]);
    given.extend(read.diagnostics.sorted().iter().map(|d| d.code.number));
    // these need a spreadsheet, and two files
    given.extend(sheet_and_rounds());
    for code in guardrule::survey::codes() {
        assert!(
            given.contains(&code.number),
            "G{}: {}",
            code.number,
            code.title
        );
    }
}

/// A sheet of a spreadsheet with a cell that cannot be taken as it stands.
struct OneSheet(SheetCells);

impl SurveyFile for OneSheet {
    fn name(&self) -> &'static str {
        "flats.xlsx, Flats"
    }

    fn open(&self) -> io::Result<Box<dyn io::Read + '_>> {
        Ok(Box::new(&b"guard,height (in)\na,3.8\n"[..]))
    }

    fn sheet(&self) -> Option<&SheetCells> {
        Some(&self.0)
    }
}

fn sheet_and_rounds() -> Vec<u16> {
    let mut cells = SheetCells::new("Sheet1");
    let cell = SheetCell {
        doubt: Some(CellDoubt::Percent),
        ..SheetCell::default()
    };
    cells.set(2, 1, cell);
    let files: Vec<Box<dyn SurveyFile>> = vec![Box::new(OneSheet(cells))];
    let survey = Survey::scan(&files).expect("memory can be read");
    let mut said = survey
        .guards(&mut |_| ControlFlow::Continue(()))
        .expect("memory can be read");
    let round = |date: &str| format!("guard,item,reading\n,date,{date}\na,height,36 in\n");
    let (first, second) = (round("2026-03-08"), round("2026-11-12"));
    let rounds = [("a.csv", first.as_bytes()), ("b.csv", second.as_bytes())];
    said.absorb(read_files(&rounds).diagnostics);
    said.sorted().iter().map(|said| said.code.number).collect()
}

#[test]
fn a_guard_with_an_error_knows_it() {
    for (name, bytes) in corpus() {
        let read = read_files(&[(&name, &bytes)]);
        let unread = |guard: &guardrule::survey::Guard| {
            guard.observations.iter().any(|o| o.reading.is_none())
        };
        for guard in &read.guards {
            assert!(guard.rows_in_error <= guard.rows, "{name}: {}", guard.name);
            assert!(
                !unread(guard) || guard.rows_in_error > 0,
                "{name}: {}",
                guard.name
            );
        }
        let any = read.guards.iter().any(|guard| guard.rows_in_error > 0);
        let said = read
            .diagnostics
            .sorted()
            .iter()
            .any(|d| d.severity == Severity::Error);
        assert!(!any || said, "{name}");
    }
}
