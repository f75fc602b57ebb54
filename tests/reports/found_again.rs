//! What a person wrote about a railing is found again: every reading and every note of
//! every survey here, the faulty ones among them, in each form or in what is said of the file.

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

use crate::harness::run_here;
use crate::harness::words;

const FOLDERS: [&str; 4] = [
    "demo-surveys",
    "tests/reports/surveys",
    "tests/corpus/surveys",
    "tests/corpus/spreadsheets",
];

/// Cells that this reader of plain CSV sees and no careful person would: rows swallowed by a
/// quotation mark, letters of an old encoding, rows below a second heading or of sums.
const READ_OTHERWISE: [&str; 12] = [
    "formulas-neutralised.csv",
    "header-without-reading.csv",
    "mac-roman.csv",
    "reading-over-two-lines.csv",
    "second-table.csv",
    "several-faults-in-a-table.csv",
    "several-faults.csv",
    "swallowed-by-a-note.csv",
    "swallowed-rows.csv",
    "swallowed-to-the-end.csv",
    "text-after-a-closing-mark.csv",
    "totals-and-a-signature.csv",
];

/// A file's text, in the encodings that office programs write.
fn text_of(bytes: &[u8]) -> String {
    if bytes.starts_with(&[0xff, 0xfe]) {
        let pairs = bytes[2..].chunks_exact(2);
        let units: Vec<u16> = pairs
            .map(|two| u16::from_le_bytes([two[0], two[1]]))
            .collect();
        return String::from_utf16(&units).expect("UTF-16");
    }
    match std::str::from_utf8(bytes) {
        Ok(text) => text.trim_start_matches('\u{feff}').to_owned(),
        // the letters and fractions here are the same in Latin-1
        Err(_) => bytes.iter().map(|byte| char::from(*byte)).collect(),
    }
}

/// Readings and notes of a survey's guards, as a reader of plain CSV finds them.
fn written(text: &str) -> Vec<String> {
    let parts = [',', ';', '\t', '|'];
    let most = parts
        .into_iter()
        .max_by_key(|part| text.matches(*part).count());
    let mut reader = csv::ReaderBuilder::new()
        .flexible(true)
        .has_headers(false)
        .delimiter(u8::try_from(most.unwrap_or(',')).expect("ASCII"))
        .from_reader(text.as_bytes());
    let mut header: Option<Vec<String>> = None;
    let mut cells = Vec::new();
    for row in reader.records() {
        let row = row.expect("a row");
        let lower = || {
            row.iter()
                .map(|cell| cell.trim().to_lowercase())
                .collect::<Vec<_>>()
        };
        let Some(header) = &header else {
            header = Some(lower()).filter(|row| row.iter().any(|cell| cell == "guard"));
            continue;
        };
        let guard = header
            .iter()
            .position(|name| name == "guard")
            .expect("found above");
        if row.get(guard).is_none_or(|name| name.trim().is_empty()) {
            continue;
        }
        for (column, cell) in row.iter().enumerate() {
            let heading = header.get(column).map_or("", String::as_str);
            let is_name = column == guard || ["building", "unit", "item"].contains(&heading);
            if !is_name && !cell.trim().is_empty() {
                cells.push(words(cell));
            }
        }
    }
    cells
}

/// A form's text without what the form itself adds.
fn plain(form: &str, out: &str) -> String {
    let text = match form {
        // a line break within a note
        "json" => out.replace("\\r\\n", " ").replace("\\n", " "),
        "html" => {
            let mut text = String::new();
            for part in out.split('<') {
                text.push_str(part.split_once('>').map_or(part, |(_, text)| text));
                text.push(' ');
            }
            let marks = [
                ("&lt;", "<"),
                ("&gt;", ">"),
                ("&quot;", "\""),
                ("&amp;", "&"),
            ];
            marks
                .iter()
                .fold(text, |text, (from, to)| text.replace(from, to))
        }
        _ => out.to_owned(),
    };
    words(&text)
}

/// Characters that a terminal would obey are written out.
fn written_out(piece: &str) -> String {
    let mut text = String::new();
    for c in piece.trim().chars() {
        if c.is_control() {
            text.push_str(&format!("\\u{{{:x}}}", u32::from(c)));
        } else {
            text.push(c);
        }
    }
    text
}

#[test]
fn every_reading_and_note_of_every_survey_here_is_found_in_every_form() {
    let here = Path::new(env!("CARGO_MANIFEST_DIR"));
    let mut found: BTreeMap<String, usize> = BTreeMap::new();
    let mut lost = Vec::new();
    for folder in FOLDERS {
        for entry in fs::read_dir(here.join(folder)).expect("a folder") {
            let path = entry.expect("readable").path();
            let name = path
                .file_name()
                .unwrap_or_default()
                .to_string_lossy()
                .into_owned();
            if !name.ends_with(".csv") || READ_OTHERWISE.contains(&name.as_str()) {
                continue;
            }
            let cells = written(&text_of(&fs::read(&path).expect("readable")));
            if cells.is_empty() {
                continue;
            }
            let file = path.display().to_string();
            for form in ["text", "json", "csv", "html"] {
                let ran = run_here(&["check", &file, "--format", form]);
                // what could not be read is shown where its fault is said
                let told = format!("{} {}", plain(form, &ran.out), words(&ran.err));
                for part in cells.iter().flat_map(|cell| cell.split("; ")) {
                    // quotation marks are doubled or escaped
                    let is_told = |piece: &str| {
                        told.contains(piece.trim())
                            || told.contains(&written_out(piece))
                            || told.contains(&written_out(piece).replace('\\', "\\\\"))
                    };
                    if !part.split('"').all(is_told) {
                        lost.push(format!("{name}, {form}: {part}"));
                    }
                }
            }
            found.insert(format!("{folder}/{name}"), cells.len());
        }
    }
    assert!(lost.is_empty(), "{}", lost.join("\n"));
    let cells = found.values().sum::<usize>();
    assert!(
        found.len() >= 60 && cells > 1_000,
        "{} surveys, {cells} cells",
        found.len()
    );
}

#[test]
fn a_reading_that_is_left_out_would_be_missed() {
    let text = "unit,guard,item,reading,note\na,g,height,36 in,by the door\na,,use,dwelling,\n";
    assert_eq!(written(text), ["36 in", "by the door"]);
    assert!(!plain("json", "{\"written\": \"36 in\"}").contains("by the door"));
}
