//! What holds for every survey: order, layout, names, levels, any bytes.

use std::collections::BTreeSet;

use proptest::prelude::*;

use crate::surveys::support::Read;
use crate::surveys::support::brief;
use crate::surveys::support::read;
use crate::surveys::support::read_files;

/// Rows of a small survey: unit, guard, item and reading; none clash.
fn row() -> impl Strategy<Value = [String; 4]> {
    let item = prop_oneof![
        (0_usize..4).prop_map(|i| ("height", ["36 in", "34 5/8 in", "902 mm", "not reached"][i])),
        (0_usize..4).prop_map(|i| ("opening", ["4 in", "3 11/16 in", "none", "99 mm"][i])),
        (0_usize..3).prop_map(|i| ("drop", ["9 ft", "2.6 m", "over 8 ft"][i])),
        Just(("paint", "flaking")),
        Just(("post fastening", "lag screws")),
        Just(("children", "14 months")),
    ];
    (0_usize..3, 0_usize..3, item).prop_map(|(unit, guard, (item, reading))| {
        let unit = ["2A", "2B", ""][unit];
        let guard = ["landing", "stair", "Deck 1"][guard];
        [unit, guard, item, reading].map(str::to_owned)
    })
}

fn facts() -> impl Strategy<Value = Vec<[String; 4]>> {
    let fact = prop_oneof![
        Just(["", "", "built", "1994"]),
        Just(["2A", "", "built", "before 1978"]),
        Just(["", "", "use", "dwelling"]),
        Just(["2B", "", "drop", "3 m"]),
        Just(["", "", "tape", "class II"]),
    ];
    proptest::collection::vec(fact.prop_map(|fact| fact.map(str::to_owned)), 0..4)
}

fn notebook(rows: &[[String; 4]]) -> String {
    let mut text = "unit,guard,item,reading\n".to_owned();
    for row in rows {
        text.push_str(&row.join(","));
        text.push('\n');
    }
    text
}

/// Guards with their observations, both without order.
fn content(read: &Read) -> Vec<(String, Vec<String>)> {
    let mut guards: Vec<(String, Vec<String>)> = read
        .guards
        .iter()
        .map(|guard| {
            let own = guard.observations.iter().map(brief);
            let inherited = guard
                .inherited
                .observations
                .iter()
                .map(|o| brief(o) + " inherited");
            let mut observations: Vec<String> = own.chain(inherited).collect();
            observations.sort();
            (format!("{}/{}", guard.unit, guard.name), observations)
        })
        .collect();
    guards.sort();
    guards
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    #[test]
    fn shuffled_rows_give_the_same_guards(
        (rows, shuffled) in (proptest::collection::vec(row(), 1..30), facts())
            .prop_map(|(mut rows, facts)| { rows.extend(facts); rows })
            .prop_flat_map(|rows| (Just(rows.clone()), Just(rows).prop_shuffle())),
    ) {
        let (one, other) = (read(&notebook(&rows)), read(&notebook(&shuffled)));
        prop_assert_eq!(content(&one), content(&other));
        // facts of a unit whose guards the rows never name are all there is to say
        let guards = |unit: &str| rows.iter().any(|row| row[0] == unit && !row[1].is_empty());
        let mut lonely: Vec<&String> = rows.iter().map(|row| &row[0]).filter(|unit| !unit.is_empty() && !guards(unit)).collect();
        lonely.sort();
        lonely.dedup();
        for read in [&one, &other] {
            // a unit that is blank below others is asked about, and that depends on their order
            let codes = read.diagnostics.sorted().into_iter().map(|said| said.code.number);
            let said: Vec<u16> = codes.filter(|code| *code != 242).collect();
            prop_assert_eq!(said, vec![235; lonely.len()]);
        }
        let firsts: Vec<&[String]> = shuffled.iter().map(|row| &row[..2]).filter(|row| !row[1].is_empty()).collect();
        let mut order: Vec<&[String]> = Vec::new();
        for first in firsts {
            if !order.contains(&first) {
                order.push(first);
            }
        }
        let given: Vec<[&str; 2]> = other.guards.iter().map(|guard| [&*guard.unit, &*guard.name]).collect();
        prop_assert_eq!(order, given);
    }

    #[test]
    fn rows_in_two_files_are_rows_in_one(
        rows in proptest::collection::vec(row(), 1..20),
        cut in 0_usize..20,
    ) {
        let (first, second) = rows.split_at(cut.clamp(1, rows.len()).min(rows.len()));
        let mut files = vec![notebook(first)];
        if !second.is_empty() {
            files.push(notebook(second));
        }
        let named: Vec<(&str, &[u8])> = files.iter().map(|text| ("part.csv", text.as_bytes())).collect();
        prop_assert_eq!(content(&read_files(&named)), content(&read(&notebook(&rows))));
    }

    /// One guard a row with several readings in a cell, or one observation a row.
    #[test]
    fn both_layouts_give_the_same_observations(rows in proptest::collection::vec(row(), 1..25)) {
        const ITEMS: [&str; 6] = ["height", "opening", "drop", "paint", "post fastening", "children"];
        let mut table = format!("unit,guard,{}\n", ITEMS.join(","));
        let mut named: Vec<&[String]> = rows.iter().map(|row| &row[..2]).collect();
        named.sort();
        named.dedup();
        for guard in named {
            let cells = ITEMS.map(|item| {
                let of_item = rows.iter().filter(|row| row[..2] == *guard && row[2] == item);
                of_item.map(|row| &*row[3]).collect::<Vec<_>>().join("; ")
            });
            table.push_str(&format!("{},{},{}\n", guard[0], guard[1], cells.join(",")));
        }
        let (one, other) = (read(&table), read(&notebook(&rows)));
        prop_assert_eq!(content(&one), content(&other));
        prop_assert_eq!(one.diagnostics.sorted().len(), 0);
    }

    /// The same bytes after a header, so that they are rows and not an unknown file.
    #[test]
    fn any_bytes_are_read_or_complained_of(
        bytes in proptest::collection::vec(any::<u8>(), 0..300),
        header in 0_usize..4,
    ) {
        let headers = ["", "unit,guard,item,reading,note\n", "guard,height (in),opening,note: opening\n", "unit;item;reading\n"];
        let text = [headers[header].as_bytes(), &bytes].concat();
        let read = read_files(&[("bytes.csv", &text)]);
        for guard in &read.guards {
            prop_assert!(guard.rows_in_error <= guard.rows);
        }
        prop_assert!(!read.guards.is_empty() || read.diagnostics.any_error());
    }

    /// Bytes that are nearly a survey.
    #[test]
    fn near_surveys_are_read_or_complained_of(
        text in "(2A|stair|,|,|\"|\n|\r|36 in|4|2 cm|height|opening|guard|none|#|=|;|é|default unit|mm| ){0,60}",
        header in 0_usize..3,
    ) {
        let headers = ["unit,guard,item,reading,note\n", "guard,height,opening,note\n", "guard,item,reading\n"];
        let whole = format!("{}{text}", headers[header]);
        let read = read(&whole);
        for guard in &read.guards {
            prop_assert!(guard.rows_in_error <= guard.rows);
            let unread = guard.observations.iter().any(|o| o.reading.is_none());
            prop_assert!(!unread || guard.rows_in_error > 0);
        }
        for diagnostic in read.diagnostics.sorted() {
            let line = diagnostic.at.at.line();
            prop_assert!(line <= 1 + whole.matches(['\n', '\r']).count() as u64);
            prop_assert!(diagnostic.help.is_some(), "{}", diagnostic.message);
        }
    }

    /// What the first reading counts the second one hands over (`read` holds it
    /// so), and no row is lost on the way.
    #[test]
    fn every_row_is_in_a_guard_a_fact_a_comment_or_a_diagnostic(
        header in 0_usize..HEADERS.len(),
        rows in proptest::collection::vec(written_row(), 1..9),
    ) {
        let (header, width) = HEADERS[header];
        let mut text = format!("{header}\n");
        for cells in &rows {
            // a row that ends early is one that has blank cells
            text.push_str(&cells[..cells.len().min(width + 2)].join(","));
            text.push('\n');
        }
        let read = read(&text);
        let mut spoken_of: BTreeSet<u64> = BTreeSet::new();
        for guard in &read.guards {
            spoken_of.extend(guard.observations.iter().map(|o| o.row.line));
            spoken_of.extend(guard.own.iter().map(|own| own.row.line));
            spoken_of.extend(guard.inherited.observations.iter().map(|o| o.row.line));
        }
        let mut said = String::new();
        for diagnostic in read.diagnostics.sorted() {
            let also = diagnostic.also.iter().map(|label| &label.at);
            for at in also.chain([&diagnostic.at.at]) {
                spoken_of.extend(at.first_line()..=at.line() + at.marked().lines().count().saturating_sub(1) as u64);
            }
            said.push_str(&diagnostic.message);
        }
        // faults that are alike are said once with their count
        // and where no guard is named there is nobody to tell the facts of
        let counted = said.contains("names no guard") || said.contains("a row of facts and no guard") || said.contains("more like this") || read.diagnostics.left_out().next().is_some();
        for (line, row) in (2_u64..).zip(text.lines().skip(1)) {
            let blank = row.chars().all(|c| matches!(c, ',' | ' ' | '"'));
            let comment = row.starts_with('#') && !row.contains(',');
            let names_alone = read.guards.iter().any(|guard| {
                let mut one = csv::ReaderBuilder::new().has_headers(false).from_reader(row.as_bytes());
                let cells = one.records().next().and_then(Result::ok).unwrap_or_default();
                let cells: Vec<&str> = cells.iter().map(str::trim).collect();
                cells.contains(&&*guard.name) && cells.iter().filter(|cell| !cell.is_empty()).count() <= 2
            });
            // a quoted note may hold line breaks: its further lines are told with it
            let in_a_note = read.guards.iter().any(|guard| {
                let mut lines = guard.observations.iter().flat_map(|o| o.note.lines().skip(1));
                lines.any(|line| line.trim() == row.trim_end_matches('"').trim())
            });
            prop_assert!(
                blank || comment || counted || names_alone || in_a_note || spoken_of.contains(&line),
                "line {} is nowhere:\n{}{}", line, text, crate::surveys::support::lines(&read)
            );
        }
    }
}

/// Headers with how many columns they have: own columns in front, behind and between.
const HEADERS: &[(&str, usize)] = &[
    ("unit,guard,item,reading,note", 5),
    ("unit,guard,item,reading", 4),
    ("unit,guard,item,reading,corner", 5),
    ("unit,guard,item,reading,note,corner", 6),
    ("unit,guard,item,reading,corner,seen from", 6),
    ("corner,unit,guard,item,reading", 5),
    ("unit,guard,corner,item,reading", 5),
    ("item,reading,unit,guard", 4),
    ("unit,guard,height,opening,corner", 5),
    ("unit,guard,height,opening,note", 5),
    ("height,unit,guard,opening", 4),
];

/// Cells of a row as people, spreadsheets and slips leave them.
fn written_row() -> impl Strategy<Value = Vec<String>> {
    let name = prop_oneof![
        Just("2A"),
        Just("hall"),
        Just(""),
        Just("#2"),
        Just("# hall")
    ];
    let item = prop_oneof![
        3 => Just("height"), 3 => Just("opening"), 1 => Just("drop"), 1 => Just("built"),
        1 => Just("hieght"), 1 => Just("colour"), 1 => Just(""), 1 => Just("34 in"),
    ];
    let cell = prop_oneof![
        4 => Just("34 in"), 1 => Just("90"), 1 => Just("2 cm"), 1 => Just("1994"), 1 => Just("left"),
        1 => Just(" at the wall"), 1 => Just("34 1/2\""), 1 => Just("\"34 1/2\"\""),
        1 => Just("\"left"), 1 => Just("\"left\" side"), 1 => Just("\"a, b\""), 1 => Just("=1+1"),
        1 => Just(""), 1 => Just("none"),
    ];
    (
        name.clone(),
        name,
        item,
        proptest::collection::vec(cell, 0..6),
    )
        .prop_map(|(unit, guard, item, rest)| {
            let front = [unit, guard, item].into_iter().chain(rest);
            front.map(str::to_owned).collect()
        })
}
