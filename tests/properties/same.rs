//! The same railing written down in another way is the same railing: other units, another
//! order, a table for a notebook, two files for one.

use std::collections::BTreeMap;

use proptest::prelude::*;
use serde_json::Value;

use crate::harness::run;
use crate::properties::NOTES;
use crate::properties::order_free;
use guardrule::quantities::Length;
use guardrule::quantities::LengthUnit;

const DECISIONS: [&str; 2] = ["simple", "guarded"];

/// One observation: of which guard, which item, what was read.
type Row = (usize, &'static str, String);

fn notebook(rows: &[Row]) -> String {
    let mut text = "unit,guard,item,reading\n".to_owned();
    for (guard, item, reading) in rows {
        text.push_str(&format!("a,rail {guard},{item},{reading}\n"));
    }
    text
}

/// A row for each guard, its readings of one item in one cell.
fn table(rows: &[Row]) -> String {
    let items: Vec<&str> = NOTES.iter().map(|(item, _)| *item).collect();
    let mut cells: BTreeMap<usize, BTreeMap<&str, Vec<&str>>> = BTreeMap::new();
    for (guard, item, reading) in rows {
        let of_guard = cells.entry(*guard).or_default();
        of_guard.entry(item).or_default().push(reading);
    }
    let mut text = format!("unit,guard,{}\n", items.join(","));
    for (guard, readings) in cells {
        let row = items.iter().map(|item| {
            let all = readings.get(item).map(Vec::as_slice).unwrap_or_default();
            all.join("; ")
        });
        text.push_str(&format!(
            "a,rail {guard},{}\n",
            row.collect::<Vec<_>>().join(",")
        ));
    }
    text
}

fn judged(surveys: &[&str], ruleset: &str, decision: &str) -> (Vec<String>, u8) {
    let names: Vec<String> = (0..surveys.len())
        .map(|at| format!("part{at}.csv"))
        .collect();
    let files: Vec<(&str, &str)> = names
        .iter()
        .map(String::as_str)
        .zip(surveys.iter().copied())
        .collect();
    let asked: Vec<String> = names.iter().map(|name| format!("@{name}")).collect();
    let mut args = vec!["check"];
    args.extend(asked.iter().map(String::as_str));
    args.extend([
        "--rules",
        ruleset,
        "--decision",
        decision,
        "--format",
        "json",
    ]);
    let ran = run(&files, &args);
    (order_free(&ran.json()), ran.code)
}

/// A guard's notes, most of them such that it can meet, some items read twice.
fn rows() -> impl Strategy<Value = Vec<Row>> {
    let reading = || prop_oneof![5 => Just(0_usize), 2 => 0_usize..6];
    let of_item = prop::collection::vec(reading(), 0..=2);
    let of_guard = prop::collection::vec(of_item, NOTES.len());
    prop::collection::vec(of_guard, 1..=2).prop_map(|guards| {
        let mut rows: Vec<Row> = Vec::new();
        for (guard, items) in guards.iter().enumerate() {
            for ((item, readings), chosen) in NOTES.iter().zip(items) {
                // a guard has one place, one handrail and so on
                let once = ["place", "handrail", "risers", "top of stairs gate"].contains(item);
                let chosen = if once {
                    &chosen[..chosen.len().min(1)]
                } else {
                    chosen
                };
                let reading = |at: &usize| readings[at % readings.len()].to_owned();
                rows.extend(chosen.iter().map(|at| (guard, *item, reading(at))));
            }
            rows.push((guard, "infill", "balusters".to_owned()));
        }
        rows
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(6))]

    #[test]
    fn order_layout_and_files_change_nothing_under_either_decision(
        (rows, shuffled) in rows().prop_flat_map(|rows| (Just(rows.clone()), Just(rows).prop_shuffle())),
        tenth in 1_usize..9,
    ) {
        let infill: Vec<Row> = rows.iter().filter(|row| row.1 != "infill").cloned().collect();
        let at = (rows.len() * tenth / 10).clamp(1, rows.len() - 1);
        let (first, second) = rows.split_at(at);
        for ruleset in ["us-dwelling-2018", "us-buildings-2018", "small-child-advice"] {
            for decision in DECISIONS {
                let one = |text: &str| judged(&[text], ruleset, decision);
                let whole = one(&notebook(&rows));
                prop_assert_eq!(&whole, &one(&notebook(&shuffled)), "order, {}", notebook(&rows));
                let parts = [notebook(first), notebook(second)];
                let parts: Vec<&str> = parts.iter().map(String::as_str).collect();
                prop_assert_eq!(&whole, &judged(&parts, ruleset, decision), "files, {}", notebook(&rows));
                // the table has no column for the infill
                prop_assert_eq!(one(&notebook(&infill)), one(&table(&infill)), "layout, {}", notebook(&rows));
            }
        }
    }

    /// With the tape named and the doubt beside each reading, no unit is surer than another.
    #[test]
    fn the_unit_changes_nothing_under_either_decision(
        place in prop::sample::select(vec!["landing", "stair", "deck"]),
        drop in 29 * 64_i32..32 * 64,
        heights in prop::collection::vec(33 * 64_i32..39 * 64, 1..=2),
        openings in prop::collection::vec(3 * 64_i32..5 * 64, 1..=2),
        gap in 64_i32..5 * 64,
        ball in 2 * 64_i32..6 * 64,
    ) {
        let of = |unit: LengthUnit| {
            let exact = |marks: i32| Length::sixty_fourths(marks).exact(unit);
            let doubt = Length::sixty_fourths(4).exact(unit);
            let mut text = format!(
                "unit,guard,item,reading\n,,tape,class II\na,g,place,{place}\na,g,use,dwelling\na,g,infill,panel\n\
                 a,g,stair triangle,none\na,g,riser opening,none\na,g,drop,{} ± {doubt}\na,g,bottom gap,{} ± {doubt}\n\
                 a,g,opening,{} ball stops at {}\n",
                exact(drop), exact(gap), exact(ball), exact(20 * 64),
            );
            for height in &heights {
                text.push_str(&format!("a,g,height,{} ± {doubt}\n", exact(*height)));
            }
            for opening in &openings {
                text.push_str(&format!("a,g,opening,{} ± {doubt}\n", exact(*opening)));
            }
            text
        };
        for ruleset in ["us-dwelling-2018", "us-buildings-2018", "small-child-advice"] {
            for decision in DECISIONS {
                let written = [LengthUnit::Inch, LengthUnit::Millimetre, LengthUnit::Centimetre].map(of);
                let [inches, millimetres, centimetres] = written.each_ref().map(|text| judged(&[text], ruleset, decision));
                prop_assert_eq!(&inches, &millimetres, "{}", written[0]);
                prop_assert_eq!(&inches, &centimetres, "{}", written[0]);
            }
        }
    }
}

/// Readings of items with words or numbers of their own kind; lengths are made up anew.
const OTHERS: &[(&str, &[&str])] = &[
    (
        "place",
        &["landing", "stair", "deck", "terrace", "window", "pool"],
    ),
    ("use", &["dwelling", "public", "workplace"]),
    ("built", &["1994", "before 1978", "1990s"]),
    ("children", &["14 months", "3 years", "none"]),
    ("handrail", &["separate", "top of the guard", "none"]),
    ("risers", &["2", "13"]),
    (
        "infill",
        &["balusters", "cables", "horizontal bars", "glass", "solid"],
    ),
    ("infill loose", &["no", "one", "missing"]),
    ("moves when pushed", &["no", "a little", "a lot"]),
    ("condition", &["none seen", "sound", "rot", "surface rust"]),
    (
        "post fastening",
        &["through bolts", "nails", "hidden", "not reached"],
    ),
    ("notched post", &["no", "yes"]),
    ("paint", &["sound", "flaking"]),
    ("thing to climb", &["none", "yes", "18 in high 5 in away"]),
    ("openings checked", &["every one", "some", "one"]),
    ("top of stairs gate", &["screwed", "pressed", "none"]),
];

/// Items that are read with a tape, how a reading of them may be written, and how large.
const LENGTHS: &[(&str, &[&str], std::ops::Range<u32>)] = &[
    (
        "height",
        &[
            "# in",
            "reaches # in",
            "below # in",
            "over # in",
            "# in ± 1/8 in",
            "not reached",
        ],
        20..48,
    ),
    (
        "drop",
        &["# in", "over # in", "under # in", "unknown"],
        10..120,
    ),
    (
        "opening",
        &[
            "# in",
            "# in at 20 in",
            "slot # in",
            "# in ball stops",
            "# in ball passes",
            "under # in",
            "?",
        ],
        1..9,
    ),
    (
        "bottom gap",
        &[
            "# in",
            "# in ball stops everywhere",
            "over # in",
            "not reached",
        ],
        1..9,
    ),
    ("end gap", &["# in", "# in ball stops"], 1..9),
    ("riser opening", &["# in", "none"], 1..9),
    (
        "stair triangle",
        &["rise 7 3/4 going 10 lift # in", "# in ball stops"],
        1..4,
    ),
    ("handrail height", &["# in", "below # in"], 30..42),
    ("foothold", &["# in high 2 in deep", "# in high"], 4..34),
];

/// Item, reading and note; in thousandths no two lengths of a survey are alike.
fn told_rows() -> impl Strategy<Value = Vec<(usize, &'static str, String, String)>> {
    let word = (0..OTHERS.len(), 0_usize..8).prop_map(|(item, at)| {
        let (item, readings) = OTHERS[item];
        (item, readings[at % readings.len()].to_owned())
    });
    let length = (0..LENGTHS.len(), 0_usize..8, 0_u32..1000).prop_map(|(item, at, size)| {
        let (item, forms, range) = LENGTHS[item].clone();
        let whole = range.start + size % (range.end - range.start);
        (
            item,
            forms[at % forms.len()].replace('#', &format!("{whole}.{:03}", size | 1)),
        )
    });
    let wrong = prop::sample::select(vec![
        ("height", "abouut 3 ft"),
        ("opening", "1,25 furlong"),
        ("bottom gap", "17"),
    ]);
    let wrong = wrong.prop_map(|(item, reading)| (item, reading.replace(',', ".")));
    let row = prop_oneof![8 => length, 6 => word, 1 => wrong];
    prop::collection::vec((0_usize..4, row, any::<bool>()), 3..40).prop_map(|rows| {
        let mut told: Vec<(usize, &'static str, String, String)> = Vec::new();
        for (at, (guard, (item, reading), noted)) in rows.into_iter().enumerate() {
            // words of circumstances clash where they differ
            let again = told
                .iter()
                .any(|(of, known, ..)| *of == guard && *known == item);
            if again && OTHERS.iter().any(|(known, _)| *known == item) {
                continue;
            }
            let note = if noted {
                format!("seen by lamp {at}q")
            } else {
                String::new()
            };
            told.push((guard, item, reading, note));
        }
        told
    })
}

/// What JSON hands over of each guard's readings.
fn handed_over(report: &Value) -> Vec<(String, String, String, String)> {
    let guards = report["guards"].as_array().expect("guards");
    let mut all = Vec::new();
    for guard in guards {
        for reading in guard["readings"].as_array().expect("readings") {
            let of = |key: &str| reading[key].as_str().unwrap_or_default().to_owned();
            let name = guard["guard"].as_str().expect("a name").to_owned();
            all.push((name, of("item"), of("written"), of("note")));
        }
    }
    all.sort();
    all
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn every_reading_and_note_of_random_guards_is_found_in_text_json_and_csv(rows in told_rows()) {
        let mut survey = "unit,guard,item,reading,note\n".to_owned();
        for (guard, item, reading, note) in &rows {
            survey.push_str(&format!("a,rail {guard},{item},{reading},{note}\n"));
        }
        let said = |form: &str| run(&[("s.csv", &survey)], &["check", "@s.csv", "--rules", "us-dwelling-2018", "--format", form]);
        let mut expected: Vec<(String, String, String, String)> = rows
            .iter()
            .map(|(guard, item, reading, note)| (format!("rail {guard}"), (*item).to_owned(), reading.clone(), note.clone()))
            .collect();
        expected.sort();
        prop_assert_eq!(handed_over(&said("json").json()), expected, "{}", survey);

        let text = crate::harness::words(&said("text").out);
        for (_, item, reading, note) in &rows {
            prop_assert!(text.contains(reading), "text: {item}: {reading}\n{survey}\n{text}");
            prop_assert!(text.contains(note), "text: {item}: {reading}: {note}\n{survey}\n{text}");
        }

        let csv = said("csv").out;
        let mut reader = csv::Reader::from_reader(csv.as_bytes());
        let records: Vec<csv::StringRecord> = reader.records().map(|row| row.expect("a row")).collect();
        for (guard, item, reading, note) in &rows {
            let name = format!("rail {guard}");
            // one row has the guard, the reading and its note
            let stands = records.iter().any(|row| {
                row.iter().any(|cell| cell == name)
                    && row.iter().any(|cell| cell.contains(reading.as_str()))
                    && row.iter().any(|cell| cell.contains(note.as_str()))
            });
            prop_assert!(stands, "CSV: {name}: {item}: {reading}: {note}\n{survey}\n{csv}");
        }
    }
}
