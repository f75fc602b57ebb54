//! What every form of output says, whoever asks: who decides, and all that was written.

use std::fs;

use guardrule::items::Item;

use crate::harness::Ran;
use crate::harness::run;
use crate::harness::run_here;
use crate::harness::run_in;
use crate::harness::words;

/// The sentence that every output ends with, in whichever words begin it.
const DECIDES: &str = "The local authority and licensed professionals decide";

const SURVEY: &str = "unit,guard,item,reading,note\n,,use,dwelling,\n,,built,1961,\n\
    2A,loft edge,place,landing,\n2A,loft edge,drop,9 ft,\n2A,loft edge,height,33 in,by the lamp\n\
    2A,loft edge,opening,5 1/4 in,\n2A,loft edge,bottom gap,2 in,\n";

fn survey(args: &[&str]) -> Ran {
    let more = ["--rules", "us-dwelling-2018"];
    run(
        &[("s.csv", SURVEY)],
        &[&["check", "@s.csv"], &more[..], args].concat(),
    )
}

fn defers(ran: &Ran, what: &str) {
    assert!(ran.code <= 3 && ran.err.is_empty(), "{what}: {}", ran.err);
    assert!(words(&ran.out).contains(DECIDES), "{what}: {}", ran.out);
}

#[test]
fn every_command_says_who_decides() {
    for form in ["text", "json", "csv", "actions", "summary"] {
        defers(&survey(&["--format", form]), form);
    }
    let layout = [
        "layout",
        "--clear",
        "6 ft",
        "--baluster",
        "1 1/2 in",
        "--limit",
        "4 in",
    ];
    let commands: [&[&str]; 16] = [
        &["items"],
        &["items", "height"],
        &["items", "place"],
        &["layout"],
        &["opening", "slot 4 in"],
        &["opening", "slot 4 in", "--ball", "4 in", "--format", "json"],
        &["opening", "slot 4 in", "--format", "svg"],
        &["opening", "cable 3 in spacing 1/8 in diameter 36 in free"],
        &["rules", "list"],
        &["rules", "list", "--full"],
        &["rules", "find", "ohio", "deck"],
        &["rules", "show", "us-dwelling-2018"],
        &["rules", "diff", "us-dwelling-2018", "us-dwelling-2021"],
        &["rules", "test", "us-crib-slats"],
        &["sheet"],
        &["sheet", "--csv"],
    ];
    for args in commands {
        let plain: &[&str] = if args == ["layout"] { &layout } else { args };
        let what = args.join(" ");
        let ran = run_here(plain);
        let text = ran.out.replace("</tspan>", " ").replace("</text>", " ");
        let text = without_tags(&text);
        defers(&Ran { out: text, ..ran }, &what);
    }
    let form = [&layout[..], &["--format", "json"]].concat();
    defers(&run_here(&form), "layout as JSON");
}

/// The text between the tags of a drawing or a page.
fn without_tags(text: &str) -> String {
    let mut kept = String::new();
    let mut inside = false;
    for c in text.chars() {
        match c {
            '<' => inside = true,
            '>' => {
                inside = false;
                kept.push(' ');
            }
            _ if !inside => kept.push(c),
            _ => {}
        }
    }
    kept
}

#[test]
fn the_end_of_a_walk_says_who_decides() {
    let folder = tempfile::tempdir().expect("a folder");
    fs::write(folder.path().join("s.csv"), SURVEY).expect("written");
    let args = ["walk", "@s.csv", "--rules", "us-dwelling-2018"];
    let ran = run_in(folder.path(), &args, "");
    assert!(words(&ran.out).contains(DECIDES), "{}", ran.out);
}

/// A sheet that is filtered still carries it: each row for itself.
#[test]
fn every_row_of_csv_and_of_the_list_of_work_says_who_decides_and_what_to_beware_of() {
    for (form, cautioned) in [("csv", true), ("actions", false)] {
        let ran = survey(&["--format", form]);
        let mut reader = csv::Reader::from_reader(ran.out.as_bytes());
        let rows: Vec<csv::StringRecord> = reader.records().map(|r| r.expect("a row")).collect();
        assert!(rows.len() > 2, "{form}");
        for row in &rows {
            assert!(
                row.iter().any(|cell| cell.contains(DECIDES)),
                "{form}: {row:?}"
            );
            if cautioned {
                let lean = row.iter().any(|cell| cell.contains("Do not lean on it"));
                assert!(lean, "{form}: {row:?}");
            }
        }
    }
}

#[test]
fn a_judged_railing_in_doubt_comes_with_its_cautions_in_every_form() {
    for form in ["text", "json", "csv"] {
        let out = words(&survey(&["--format", form]).out);
        // 1961 lies before 1978, and the rail is too low
        for caution in ["Do not lean on it", "hold lead"] {
            assert!(out.contains(caution), "{form}: {caution}");
        }
    }
}

#[test]
fn a_summary_counts_units_nobody_entered_and_no_railings() {
    let survey = "unit,guard,item,reading\n,,use,dwelling\n\
        1A,porch,guard,not reached\n1A,stair,guard,not reached\n\
        1B,porch,guard,not reached\n1B,stair,place,stair\n\
        1C,porch,height,40 in\n,gate,guard,not reached\n";
    let args = ["check", "@s.csv", "--rules", "us-dwelling-2018"];
    let of = |form: &str| {
        run(
            &[("s.csv", survey)],
            &[&args[..], &["--format", form]].concat(),
        )
        .json()
    };
    let summary = of("summary");
    assert_eq!(summary["not_entered"], 1, "{summary}");
    assert_eq!(summary["guards"], 6, "{summary}");
    assert_eq!(summary["not_measured"], 6, "{summary}");
    assert!(
        summary["deferral"]
            .as_str()
            .is_some_and(|text| text.contains(DECIDES))
    );
    assert_eq!(of("json")["summary"], summary);
}

#[test]
fn a_remedy_in_json_has_all_its_keys() {
    let report = survey(&["--format", "json"]).json();
    let findings = report["guards"][0]["findings"]
        .as_array()
        .expect("findings");
    let remedies: Vec<_> = findings.iter().filter(|f| !f["remedy"].is_null()).collect();
    assert!(!remedies.is_empty());
    let keys = [
        "says", "aims_at", "quantity", "who", "leave", "holes", "access", "lasts", "within",
        "refused",
    ];
    for finding in remedies {
        assert_eq!(finding["verdict"], "falls short");
        let remedy = finding["remedy"].as_object().expect("an object");
        let found: Vec<&str> = remedy.keys().map(String::as_str).collect();
        assert_eq!(found, keys, "{finding}");
        assert!(remedy["refused"].is_array(), "{finding}");
    }
}

/// Every example of every item, each with a note of its own.
#[test]
fn every_example_of_every_item_is_found_in_text_json_and_csv_with_its_note() {
    let mut survey = csv::Writer::from_writer(Vec::new());
    survey
        .write_record(["guard", "item", "reading", "note"])
        .expect("written");
    let mut all = Vec::new();
    for item in Item::all().filter(|item| !item.is_survey_fact() && *item != Item::Place) {
        for example in item.info().examples {
            let (guard, note) = (
                format!("rail {}", all.len()),
                format!("remark {}x", all.len()),
            );
            for row in [
                [&*guard, "place", "stair", ""],
                [&*guard, item.name(), example, &*note],
            ] {
                survey.write_record(row).expect("written");
            }
            all.push((item.name(), *example, note));
        }
    }
    assert!(all.len() > 120, "{}", all.len());
    let survey = String::from_utf8(survey.into_inner().expect("flushed")).expect("UTF-8");
    for form in ["text", "json", "csv"] {
        let args = [
            "check",
            "@s.csv",
            "--rules",
            "us-dwelling-2018",
            "--no-guidance",
            "--format",
            form,
        ];
        let ran = run(&[("s.csv", &survey)], &args);
        let out = words(&ran.out);
        let mut lost = Vec::new();
        for (item, example, note) in &all {
            // in text that says `not entered`
            let of_guard = *item == "guard" && form == "text";
            let is_there = of_guard || example.split('"').all(|piece| out.contains(piece.trim()));
            if !(is_there && out.contains(note.as_str())) {
                lost.push(format!("{item}: {example} ({note})"));
            }
        }
        assert!(lost.is_empty(), "{form}:\n{}\n{}", lost.join("\n"), ran.err);
    }
}
