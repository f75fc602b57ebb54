//! Three surveys of three kinds of people: how long their report is, in which order and
//! in which words.

use std::fs;
use std::path::Path;
use std::path::PathBuf;

use crate::harness::run;
use crate::harness::run_here;
use crate::harness::undated;
use crate::harness::words;

/// The survey, its rules, and the most lines of its report at 80 columns.
const SURVEYS: [(&str, &[&str], usize); 3] = [
    ("one-landing.csv", &[], 60),
    ("house.csv", &["--rules", "us-dwelling-2018"], 150),
    ("twelve-flats.csv", &[], 220),
];

fn report(file: &str, more: &[&str]) -> String {
    let path = format!("@tests/reports/surveys/{file}");
    let args = [&["check", path.as_str()], more].concat();
    run_here(&args).out
}

#[test]
fn a_report_is_no_longer_than_its_reader_reads() {
    for (file, rules, most) in SURVEYS {
        let lines = report(file, rules).lines().count();
        assert!(lines <= most, "{file}: {lines} lines");
    }
    let house = report("house.csv", &["--rules", "us-dwelling-2018"]);
    let deck = house.lines().skip_while(|line| !line.starts_with("1 deck"));
    let deck = deck.take_while(|line| !line.starts_with("2 stair")).count();
    assert!(deck <= 40, "the deck: {deck} lines");
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

/// The reader's words, each with the older one that it stands for.
const READERS_WORDS: [(&str, &str); 14] = [
    ("railing", "guard"),
    ("building rules", "binding"),
    ("advice", "guidance"),
    ("too near to tell", "too close to call"),
    ("rule unclear", "not settled"),
    ("not looked at", "not measured"),
    ("not written down", "circumstance"),
    ("unfinished", "undecided"),
    ("not entered", "not reached:"),
    ("no rule asks", "does not apply"),
    ("open edge", "falls over"),
    ("too low", "short by"),
    ("too wide", "shortfall"),
    (
        "whether it would hold was not checked",
        "strength not judged",
    ),
];

/// What a person wrote, and what names a form or an option, is not the program's own.
fn own_words(text: &str) -> String {
    let mut own = String::new();
    for (index, part) in text.split('"').enumerate() {
        if index % 2 == 0 {
            own.push_str(part);
        }
    }
    for taken in ["top of the guard", "guardrule", "guard not reached"] {
        own = own.replace(taken, "");
    }
    words(&own.to_lowercase())
}

#[test]
fn a_report_speaks_in_words_of_every_day_and_in_no_others() {
    let mut all = String::new();
    let mut surveys: Vec<(&str, &[&str])> = SURVEYS.map(|(file, rules, _)| (file, rules)).to_vec();
    let law_alone = &["--rules", "us-dwelling-2018", "--no-guidance"];
    surveys.push(("in-other-words.csv", law_alone));
    for (file, rules) in surveys {
        all.push_str(&report(file, rules));
    }
    let own = own_words(&all);
    for (word, older) in READERS_WORDS {
        assert!(own.contains(word), "{word} is never said:\n{all}");
        let said = own.match_indices(older).next();
        let around = said.map(|(at, _)| {
            own[at.saturating_sub(60)..]
                .chars()
                .take(140)
                .collect::<String>()
        });
        assert_eq!(around, None, "{older} is said in place of {word}");
    }
}

#[test]
fn a_number_under_a_heading_with_a_unit_is_told_with_it() {
    let survey =
        "unit,guard,place,drop (ft),height (in),opening (in)\n1A,balcony,balcony,9,33 1/2,3 7/8\n";
    for form in ["text", "actions"] {
        let args = ["check", "@s.csv", "--format", form];
        let out = words(&run(&[("s.csv", survey)], &args).out);
        for told in ["33 1/2 in", "3 7/8 in", "drop 9 ft"] {
            assert!(out.contains(told), "{form}: {told}\n{out}");
        }
    }
}

#[test]
fn a_danger_that_several_share_is_said_once() {
    let mut survey = "unit,guard,item,reading,note\n".to_owned();
    for flat in 1..=11 {
        let note = if flat == 4 { "the corner post" } else { "" };
        survey.push_str(&format!(
            "{flat},balcony,moves when pushed,a lot,{note}\n{flat},balcony,drop,9 ft,\n"
        ));
    }
    let out = run(&[("s.csv", &survey)], &["check", "@s.csv"]).out;
    let tonight = out.split("WHAT IS WRONG").next().expect("a part");
    let tonight = words(tonight);
    let said = tonight.matches("It moves a lot when pushed gently").count();
    assert_eq!(said, 2, "{tonight}");
    assert!(
        tonight.contains("4, balcony: It moves a lot when pushed gently (\"the corner post\")")
    );
    let first = words(&out.lines().take(24).collect::<Vec<_>>().join(" "));
    assert!(first.contains("KEEP EVERYBODY OFF IT"), "{first}");
}

#[test]
fn what_could_not_be_looked_at_is_told_where_no_railing_is_asked_for_too() {
    let survey = "guard,item,reading\nstep,drop,under 10 in\nstep,place,deck\n\
step,bottom gap,not reached\n";
    let args = ["check", "@s.csv", "--rules", "us-dwelling-2018"];
    let told = words(&run(&[("s.csv", survey)], &args).out);
    assert!(told.contains("needs no railing by these rules"), "{told}");
    assert!(
        told.contains("Not looked at: bottom gap not reached; opening, "),
        "{told}"
    );
}

/// What ten kinds of people read first, slips of theirs and all: 24 lines of 80 columns
/// and the complaints beside them. Read before they were accepted.
#[test]
fn first_screens_of_ten_kinds_of_people() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/reports/first-screens");
    let files = fs::read_dir(folder).expect("the surveys are there");
    let mut files: Vec<PathBuf> = files
        .map(|entry| entry.expect("a file").path())
        .filter(|path| path.extension().is_some_and(|ending| ending == "csv"))
        .collect();
    files.sort();
    assert_eq!(files.len(), 10);
    let mut settings = insta::Settings::clone_current();
    settings.set_omit_expression(true);
    settings.set_prepend_module_to_snapshot(false);
    settings.set_snapshot_path("first-screens/snapshots");
    for file in files {
        let name = file.file_stem().expect("a name").to_string_lossy();
        let path = format!("@tests/reports/first-screens/{name}.csv");
        let ran = run_here(&["check", &path]);
        let out = undated(&ran.out);
        let first: Vec<&str> = out.lines().take(24).collect();
        let screen = format!(
            "{}\n…\n\nexit status {}\n{}",
            first.join("\n"),
            ran.code,
            ran.err
        );
        settings.bind(|| insta::assert_snapshot!(&*name, screen));
    }
}

#[test]
fn a_row_that_may_tell_of_a_danger_is_no_row_to_wait_for() {
    let gallery = "guard,item,reading,note\ngallery,place,landing,\ngallery,height,42 in,\n";
    let told = |row: &str| {
        let survey = format!("{gallery}{row}\n");
        words(&run(&[("s.csv", &survey)], &["check", "@s.csv"]).out)
    };
    let act =
        "TONIGHT Let nobody lean on it: a row that may tell of a danger could not be understood.";
    for row in [
        "gallery,broken glass,yes,one pane",
        "gallery,moves when pushed,yes,",
        "gallery,condition,shabby,",
        "gallery,infill loose,wobbles,",
    ] {
        assert!(told(row).contains(act), "{row}");
        assert!(!told(row).contains("Take hold of"), "{row}");
    }
    // a danger that was understood says more, and a slip elsewhere says nothing of one
    let danger = told("gallery,moves when pushed,a lot,\ngallery,condition,shabby,");
    assert!(danger.contains("TONIGHT KEEP EVERYBODY OFF IT") && !danger.contains(act));
    assert!(!told("gallery,opening,wide,").contains(act));
    let csv = format!("{gallery}gallery,condition,shabby,by the door\n");
    let list = run(
        &[("s.csv", &csv)],
        &["check", "@s.csv", "--format", "actions"],
    )
    .out;
    let mut reader = csv::Reader::from_reader(list.as_bytes());
    let first = reader.records().next().expect("a row").expect("a row");
    assert_eq!((&first[0], &first[6]), ("now", "shabby"), "{list}");
}
