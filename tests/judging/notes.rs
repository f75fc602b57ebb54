//! Notes that tell of a danger which no reading says or denies: the guard does not meet,
//! and one row more answers it.

use serde_json::Value;

use crate::harness::check;
use crate::harness::only_guard;
use crate::harness::run;
use crate::harness::words;

const LAW: &[&str] = &["--rules", "us-dwelling-2018", "--no-guidance"];

/// The report on a landing that meets by its readings, with a note beside its height.
fn judged(note: &str, rows: &[&str]) -> Value {
    let mut survey = format!(
        "guard,item,reading,note\ng,place,landing,\ng,drop,9 ft,\ng,height,42 in,\"{note}\"\n\
         g,opening,3 in,\ng,bottom gap,none,\n"
    );
    for row in rows {
        survey.push_str(&format!("g,{row},\n"));
    }
    check(&survey, LAW).json()
}

fn verdict(note: &str, rows: &[&str]) -> String {
    let report = judged(note, rows);
    let verdict = only_guard(&report)["verdict"].as_str();
    verdict.expect("a word").to_owned()
}

#[test]
fn a_note_that_tells_of_a_danger_holds_up_meets_until_a_reading_says() {
    for (note, item, so, not_so) in [
        ("one baluster is missing", "infill loose", "missing", "no"),
        ("wobbles a lot", "moves when pushed", "a lot", "no"),
        ("rotten at the foot", "condition", "rot", "none seen"),
        (
            "rusted through at the base",
            "condition",
            "deep rust",
            "none seen",
        ),
        ("crack in the newel", "condition", "cracks", "none seen"),
        (
            "two bolts missing",
            "post fastening",
            "missing",
            "through bolts",
        ),
    ] {
        assert_eq!(verdict(note, &[]), "not measured", "{note}");
        let report = judged(note, &[]);
        let guard = only_guard(&report);
        assert_eq!(guard["notes"][0]["item"], item, "{note}");
        assert_eq!(guard["notes"][0]["note"], note);
        assert_eq!(guard["questions"][0]["item"], item, "{note}");
        assert_eq!(report["summary"]["meets"], 0, "{note}");
        assert_eq!(report["summary"]["not_measured"], 1, "{note}");
        let denied = format!("{item},{not_so}");
        assert_eq!(verdict(note, &[&denied]), "meets", "{note}");
        let stated = format!("{item},{so}");
        assert_eq!(verdict(note, &[&stated]), "falls short", "{note}");
        let unseen = format!("{item},not reached");
        assert_eq!(verdict(note, &[&unseen]), "not measured", "{note}");
    }
    // dry wood may be rotten, and one answer is not that to another
    assert_eq!(verdict("rotten", &["condition,dry"]), "not measured");
    assert_eq!(verdict("rotten", &["infill loose,no"]), "not measured");
}

#[test]
fn a_note_that_denies_a_danger_holds_nothing_up() {
    for note in [
        "no rot",
        "nothing missing",
        "not loose",
        "no rot, nothing missing, not loose",
    ] {
        assert_eq!(verdict(note, &[]), "meets", "{note}");
        assert_eq!(
            only_guard(&judged(note, &[]))["notes"],
            Value::Array(Vec::new())
        );
    }
    assert_eq!(verdict("measured where it sags", &[]), "meets");
}

#[test]
fn a_note_of_a_hole_counts_over_a_drop_alone() {
    let low = |note: &str| {
        let survey = format!("guard,item,reading,note\ng,place,landing,\ng,drop,2 ft,{note}\n");
        let report = check(&survey, LAW).json();
        only_guard(&report)["verdict"]
            .as_str()
            .expect("a word")
            .to_owned()
    };
    assert_eq!(low("one baluster missing"), "does not apply");
    // rot is a danger at any height
    assert_eq!(low("rotten"), "not measured");
}

#[test]
fn a_note_beside_no_item_and_a_column_of_ones_own_are_read_too() {
    let notebook = "guard,item,reading,note\ng,place,landing,\ng,drop,9 ft,\ng,height,42 in,\n\
        g,opening,3 in,\ng,bottom gap,none,\ng,note,one baluster is missing,\n";
    let of = |survey: &str| {
        let report = check(survey, LAW).json();
        only_guard(&report)["verdict"]
            .as_str()
            .expect("a word")
            .to_owned()
    };
    assert_eq!(of(notebook), "not measured");
    let table = |note: &str| {
        format!(
            "guard,place,drop,height,opening,bottom gap,note\ng,landing,9 ft,42 in,3 in,none,{note}\n"
        )
    };
    assert_eq!(of(&table("top rail loose")), "not measured");
    assert_eq!(of(&table("top rail firm")), "meets");
}

#[test]
fn a_note_that_tells_of_a_danger_is_said_first_with_what_to_write() {
    let survey = "guard,item,reading,note\ng,place,landing,\ng,drop,9 ft,\ng,height,42 in,one baluster is missing\n\
        g,opening,3 in,\ng,bottom gap,none,\n";
    let text = |format: &str| {
        let args = [
            "check",
            "@s.csv",
            "--rules",
            "us-dwelling-2018",
            "--no-guidance",
            "--format",
            format,
        ];
        words(&run(&[("s.csv", survey)], &args).out)
    };
    let report = text("text");
    let first = report.find("TONIGHT Let nobody lean on it: a note tells of a danger");
    assert!(first.is_some_and(|at| at < 200), "{report}");
    let asks = "Your note says \"one baluster is missing\", and nothing written says whether it is so: \
write infill loose,missing, or infill loose,no.";
    assert!(report.contains(asks), "{report}");
    assert!(!report.contains("NOTHING WRONG FOUND"), "{report}");
    assert!(text("actions").contains("one baluster is missing"));
    assert!(text("csv").contains("not measured"));
}

#[test]
fn a_height_that_its_own_note_calls_guessed_meets_nothing() {
    assert_eq!(verdict("guessed from the street", &[]), "not measured");
    assert_eq!(verdict("measured, not guessed", &[]), "meets");
    let of = |rows: &str| {
        let survey = format!("guard,item,reading,note\n{rows}");
        let report = check(&survey, LAW).json();
        only_guard(&report)["verdict"]
            .as_str()
            .expect("a word")
            .to_owned()
    };
    let landing = |height: &str, note: &str| {
        of(&format!(
            "g,place,landing,\ng,drop,9 ft,\ng,height,{height},{note}\ng,opening,3 in,\ng,bottom gap,none,\n"
        ))
    };
    assert_eq!(landing("42 in", "estimated"), "not measured");
    // who says how far off it may be has said what it is worth
    assert_eq!(landing("42 in ± 2 in", "estimated"), "meets");
    assert_eq!(landing("over 40 in", "estimated"), "meets");
    assert_eq!(landing("30 in", "estimated"), "falls short");
    // a drop is seldom measured, and is far from where a rule begins
    let drop = "g,place,landing,\ng,drop,9 ft,estimated\ng,height,42 in,\ng,opening,3 in,\ng,bottom gap,none,\n";
    assert_eq!(of(drop), "meets");
    // the note of a table's row is of none of its cells in particular
    let table = "guard,place,drop,height,opening,bottom gap,note\ng,landing,9 ft,42 in,3 in,none,drop estimated\n";
    let report = check(table, LAW).json();
    assert_eq!(only_guard(&report)["verdict"], "meets");
}

/// A lower place and a ball that passes are readings wherever they are written: beside
/// another reading they are asked for as one.
#[test]
fn a_note_that_tells_of_a_worse_place_lets_its_reading_not_meet() {
    let of = |height: &str, opening: &str, more: &str| {
        let survey = format!(
            "guard,item,reading,note\nnorth,place,deck,\nnorth,use,dwelling,\nnorth,drop,7 ft,\n\
             north,height,{height}\nnorth,opening,{opening}\nnorth,bottom gap,1 1/2 in,\n{more}"
        );
        let args = ["--rules", "us-dwelling-2018", "--no-guidance"];
        let report = check(&survey, &args).json();
        let verdict = report["guards"][0]["verdict"].as_str();
        verdict.expect("a word").to_owned()
    };
    let (high, narrow) = ("38 in,", "3 1/8 in,");
    assert_eq!(of(high, narrow, ""), "meets");
    for told in [
        "34 1/2 in at the far end",
        "really 2 ft 11 in at the sag",
        "at the post (33 in)",
    ] {
        assert_eq!(
            of(&format!("38 in,{told}"), narrow, ""),
            "not measured",
            "{told}"
        );
    }
    for told in [
        "a 4 in ball passes there",
        "5 in ball passes at the wall.",
        "a 4 in ball goes through",
        "4 in ball went through at the post",
        "a 4 in sphere fits through",
        "4 in Ball Passed",
    ] {
        assert_eq!(
            of(high, &format!("3 1/8 in,{told}"), ""),
            "not measured",
            "{told}"
        );
    }
    // what is no lower place, and what is a reading already
    for told in [
        "10 in from the wall",
        "41 in at the post",
        "tape read to 1/16 in",
        "bay 3 of 5",
    ] {
        assert_eq!(of(&format!("38 in,{told}"), narrow, ""), "meets", "{told}");
    }
    assert_eq!(of(high, "3 1/8 in,4 in ball stops there", ""), "meets");
    let both = of(
        "38 in,36 1/2 in at the far end",
        narrow,
        "north,height,36 1/2 in,\n",
    );
    assert_eq!(both, "meets");
}
