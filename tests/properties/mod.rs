//! The invariants that hold for every survey.

mod same;

use proptest::prelude::*;
use serde_json::Value;

use crate::harness::check;
use crate::harness::finding;
use crate::harness::only_guard;
use crate::harness::run;
use guardrule::quantities::Length;
use guardrule::quantities::LengthUnit;

const LAW: &[&str] = &["--rules", "us-dwelling-2018", "--no-guidance"];
const SIMPLE: &[&str] = &[
    "--rules",
    "us-dwelling-2018",
    "--no-guidance",
    "--decision",
    "simple",
];

/// Rows that may stand in a survey, several for most items.
const POOL: &[&str] = &[
    ",,use,dwelling,",
    ",,built,before 1978,",
    ",,children,14 months,",
    "a,,place,landing,",
    "a,,drop,9 ft,",
    "a,one,height,36 in,by the window",
    "a,one,height,34 5/8 in,",
    "a,one,height,reaches 36 in,",
    "a,one,opening,3 11/16 in,",
    "a,one,opening,4 in ball stops everywhere,",
    "a,one,bottom gap,2 in,",
    "a,two,place,deck,",
    "a,two,drop,20 in,",
    "a,two,drop,over 8 ft,",
    "a,two,guard,none,",
    "a,three,place,stair,",
    "a,three,height,902 mm,",
    "a,three,opening,105 mm,",
    "a,three,stair triangle,rise 7 3/4 going 10 lift 1 in,",
    "a,three,handrail,top of the guard,",
    "a,three,risers,13,",
    "a,three,openings checked,some,",
    "a,four,height,not reached,behind the sofa",
    "a,four,moves when pushed,a lot,",
    "a,four,infill,horizontal bars,",
    "b,one,height,40 inn,",
    "b,one,opening,90,2 cm,",
    "b,one,foothold,18 in high 2 in deep,",
];

/// What does not depend on the order of rows: guards by name, with their
/// verdicts and those of their findings.
fn order_free(report: &Value) -> Vec<String> {
    let guards = report["guards"].as_array().expect("guards");
    let mut all: Vec<String> = guards
        .iter()
        .map(|guard| {
            let findings = guard["findings"].as_array().expect("findings");
            let findings: Vec<String> = findings
                .iter()
                .map(|finding| {
                    format!(
                        "{}/{} {} {} {} {}",
                        finding["ruleset"],
                        finding["rule"],
                        finding["verdict"],
                        finding["reading_alone"],
                        finding["measured"]["value"],
                        finding["margin"]["value"]
                    )
                })
                .collect();
            format!(
                "{}/{} {} {} {}\n{}",
                guard["unit"],
                guard["guard"],
                guard["verdict"],
                guard["guidance"],
                guard["hazards"],
                findings.join("\n")
            )
        })
        .collect();
    all.sort();
    all.push(report["summary"].to_string());
    all
}

/// A length as written with a finest mark of 1/64 in, and the same in millimetres.
fn both_units(sixty_fourths: i32) -> [String; 2] {
    let length = Length::sixty_fourths(sixty_fourths);
    [
        length.exact(LengthUnit::Inch),
        length.exact(LengthUnit::Millimetre),
    ]
}

fn rail(item: &str, reading: &str) -> String {
    format!("unit,guard,item,reading\na,g,place,landing\na,g,drop,9 ft\na,g,{item},{reading}\n")
}

fn verdict(item: &str, reading: &str, rule: &str, args: &[&str]) -> String {
    let report = check(&rail(item, reading), args).json();
    let found = finding(only_guard(&report), rule)["verdict"].clone();
    found.as_str().expect("a word").to_owned()
}

/// From best to worst for one and the same rule.
fn badness(verdict: &str) -> u8 {
    match verdict {
        "meets" => 0,
        "too close to call" => 1,
        "falls short" => 2,
        other => panic!("{other} cannot come from a plain reading"),
    }
}

/// Readings for every item at a guard or about its circumstances, most of them such
/// that a guard can meet; a random choice of them makes a random person's notes.
const NOTES: &[(&str, &[&str])] = &[
    (
        "place",
        &["landing", "stair", "deck", "window", "not reached"],
    ),
    (
        "drop",
        &["9 ft", "30 1/16 in", "20 in", "over 8 ft", "not reached"],
    ),
    ("risers", &["13", "2"]),
    ("handrail", &["separate", "top of the guard", "none"]),
    ("children", &["14 months", "3 years", "none"]),
    ("height", &["37 in", "36 in", "reaches 36 in", "30 in"]),
    (
        "opening",
        &[
            "2 in",
            "3 3/4 in",
            "4 in ball stops everywhere",
            "none",
            "3 in at 20 in",
            "5 in",
        ],
    ),
    ("bottom gap", &["1 in", "none", "5 in"]),
    (
        "stair triangle",
        &[
            "none",
            "rise 7 in going 11 in lift 0",
            "rise 7 in going 11 in",
        ],
    ),
    ("riser opening", &["none", "5 in"]),
    ("handrail height", &["36 in", "40 in"]),
    ("foothold", &["none", "12 in high 2 in deep", "12 in high"]),
    ("thing to climb", &["none", "yes"]),
    ("infill loose", &["no", "missing"]),
    ("post fastening", &["through bolts", "nails", "hidden"]),
    ("notched post", &["no", "yes"]),
    ("fastened to", &["joist", "hidden"]),
    ("moves when pushed", &["no", "a lot"]),
    ("top of stairs gate", &["screwed", "none"]),
];

fn notes(chosen: &[(usize, usize)], without: Option<usize>) -> String {
    let mut text = String::from("unit,guard,item,reading\na,g,infill,balusters\n");
    for (place, (item, reading)) in chosen.iter().enumerate() {
        if Some(place) != without {
            let (item, readings) = NOTES[*item];
            text.push_str(&format!(
                "a,g,{item},{}\n",
                readings[*reading % readings.len()]
            ));
        }
    }
    text
}

/// A guard's verdict by one ruleset alone; `None` where it has no rows left.
fn of_notes(survey: &str, ruleset: &str) -> Option<String> {
    let report = check(survey, &["--rules", ruleset, "--no-guidance"]).json();
    let guard = report["guards"].as_array()?.first()?;
    guard["verdict"].as_str().map(str::to_owned)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(40))]

    /// An item left out, with all its readings, never makes a guard meet.
    #[test]
    fn leaving_an_item_out_never_makes_a_guard_meet(
        kept in prop::collection::vec(prop::option::weighted(0.95, prop_oneof![6 => Just(0_usize), 1 => 0_usize..6]), NOTES.len()),
    ) {
        let chosen: Vec<(usize, usize)> = kept
            .iter()
            .enumerate()
            .filter_map(|(item, reading)| reading.map(|reading| (item, reading)))
            .collect();
        // the first reading of each item is one that meets
        for ruleset in ["us-dwelling-2018", "uk-approved-document-k", "small-child-advice"] {
            let whole = of_notes(&notes(&chosen, None), ruleset);
            let survey = notes(&chosen, None);
            for (without, (item, _)) in chosen.iter().enumerate() {
                // a ball tried everywhere speaks for this gap; a tape that says
                // otherwise contradicts it, and without the tape the ball stands
                let spoken_for = NOTES[*item].0 == "bottom gap";
                if spoken_for && survey.contains("stops everywhere") {
                    continue;
                }
                // a lift that is written twice, and otherwise, is none that is known
                let lift_twice = survey.contains("bottom gap") && survey.contains(" lift ");
                if lift_twice && ["bottom gap", "stair triangle"].contains(&NOTES[*item].0) {
                    continue;
                }
                // a hole that no rule asks about here is open as long as somebody wrote it
                let a_hole = ["bottom gap", "stair triangle", "riser opening"];
                if a_hole.contains(&NOTES[*item].0) && whole.as_deref() == Some("not settled") {
                    continue;
                }
                // of two readings that contradict each other, each alone stands
                let lift = ["bottom gap", "stair triangle"];
                if lift.contains(&NOTES[*item].0) && lift.iter().all(|item| survey.contains(item)) {
                    continue;
                }
                let survey = notes(&chosen, Some(without));
                // what could not be looked at is no reading: without it the guard is
                // judged case by case
                let readings = NOTES[*item].1;
                if readings[chosen[without].1 % readings.len()] == "not reached" {
                    continue;
                }
                // strength and dangers can only make worse: a report says that whether it
                // would hold was not checked
                let holds = ["post fastening", "notched post", "fastened to"];
                let dangers = ["infill loose", "moves when pushed"];
                if holds.contains(&NOTES[*item].0)
                    || ruleset != "small-child-advice" && dangers.contains(&NOTES[*item].0)
                {
                    continue;
                }
                if of_notes(&survey, ruleset).as_deref() == Some("meets") {
                    prop_assert_eq!(whole.as_deref(), Some("meets"), "{} by {}", survey, ruleset);
                }
            }
        }
    }
}

/// What may be added to an item that is observed already, and what can only make worse.
const ADDED: &[(&str, &[&str])] = &[
    (
        "height",
        &[
            "37 in",
            "45 in",
            "30 in",
            "reaches 55 in",
            "below 37 in",
            "over 3 ft",
            "not reached",
        ],
    ),
    (
        "opening",
        &[
            "1 in",
            "6 in",
            "3 in ball stops",
            "6 in ball stops at 30 in",
            "under 3 in",
            "2 in ball passes",
            "3 in ball passes 5 in ball stops",
            "not reached",
        ],
    ),
    (
        "bottom gap",
        &["1/2 in", "6 in", "2 in ball stops", "unknown"],
    ),
    (
        "stair triangle",
        &["none", "4 in ball stops", "8 in ball passes"],
    ),
    ("riser opening", &["none", "5 in", "2 in ball stops"]),
    ("handrail height", &["36 in", "50 in", "not reached"]),
    ("drop", &["not reached", "12 ft"]),
];

/// Dangers, and what could not be looked at.
const WORSE: &[&str] = &[
    "guard,not reached",
    "moves when pushed,a lot",
    "infill loose,missing",
    "condition,rot",
    "post fastening,missing",
    "openings checked,one",
];

/// Whether one verdict says that nothing is left to do where the other did not.
fn improves(before: &str, after: &str) -> bool {
    let done = |verdict: &str| ["meets", "does not apply"].contains(&verdict);
    done(after) && !done(before) || before == "falls short" && after != "falls short"
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(8))]

    /// An observation added to an item that is observed already, a danger, a
    /// `not reached` never improves a guard; a gauge at the same place and a finer
    /// reading of it are tested by their own sentences.
    #[test]
    fn an_observation_more_never_improves_a_guard(
        kept in prop::collection::vec(prop_oneof![6 => Just(0_usize), 1 => 0_usize..6], NOTES.len()),
        simple in any::<bool>(),
    ) {
        let chosen: Vec<(usize, usize)> = kept.iter().copied().enumerate().collect();
        let decision = if simple { "simple" } else { "guarded" };
        for ruleset in ["us-dwelling-2018", "us-buildings-2018", "small-child-advice"] {
            let of = |survey: &str| {
                let args = ["--rules", ruleset, "--no-guidance", "--decision", decision];
                let report = check(survey, &args).json();
                only_guard(&report)["verdict"].as_str().expect("a word").to_owned()
            };
            let whole = notes(&chosen, None);
            let before = of(&whole);
            let added = ADDED
                .iter()
                .flat_map(|(item, readings)| readings.iter().map(move |r| format!("{item},{r}")));
            for row in added.chain(WORSE.iter().map(|row| (*row).to_owned())) {
                // a stick settles a tape at the same rail: an exception by name
                let settles = row.starts_with("height,reaches") || row.starts_with("height,over");
                let after = of(&format!("{whole}a,g,{row}\n"));
                prop_assert!(
                    settles || !improves(&before, &after),
                    "{ruleset}: {row} makes {before} {after}\n{whole}"
                );
            }
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    #[test]
    fn shuffling_rows_changes_nothing_but_the_order(
        rows in Just(POOL.to_vec()).prop_shuffle(),
        kept in prop::collection::vec(any::<bool>(), POOL.len()),
    ) {
        let header = "unit,guard,item,reading,note\na,one,paint,sound,\n";
        let chosen = |order: &[&str]| {
            let mut text = header.to_owned();
            for row in order.iter() {
                let at = POOL.iter().position(|one| one == row).expect("of the pool");
                if kept[at] {
                    text.push_str(row);
                    text.push('\n');
                }
            }
            text
        };
        let args = ["--rules", "us-dwelling-2018"];
        let ordered = check(&chosen(POOL), &args);
        let shuffled = check(&chosen(&rows), &args);
        prop_assert_eq!(order_free(&ordered.json()), order_free(&shuffled.json()));
        prop_assert_eq!(ordered.code, shuffled.code);
    }

    #[test]
    fn the_same_reading_in_another_unit_gives_the_same_verdict(
        height in 35 * 64_i32..37 * 64,
        opening in 3 * 64_i32..5 * 64,
    ) {
        let heights = both_units(height).map(|text| verdict("height", &text, "rail-too-low", SIMPLE));
        prop_assert_eq!(&heights[0], &heights[1]);
        let openings = both_units(opening).map(|text| verdict("opening", &text, "gap-too-wide", SIMPLE));
        prop_assert_eq!(&openings[0], &openings[1]);
    }

    #[test]
    fn raising_a_rail_never_makes_it_fall_short(
        height in 35 * 64_i32..37 * 64,
        more in 1_i32..64,
    ) {
        let of = |marks| {
            let text = Length::sixty_fourths(marks).exact(LengthUnit::Inch);
            // the same fineness for both, so that only the height differs
            badness(&verdict("height", &format!("{text} ± 1/16 in"), "rail-too-low", LAW))
        };
        prop_assert!(of(height + more) <= of(height));
    }

    #[test]
    fn widening_an_opening_never_helps(opening in 3 * 64_i32..5 * 64, more in 1_i32..64) {
        let of = |marks| {
            let text = Length::sixty_fourths(marks).exact(LengthUnit::Inch);
            badness(&verdict("opening", &format!("{text} ± 1/16 in"), "gap-too-wide", LAW))
        };
        prop_assert!(of(opening + more) >= of(opening));
    }

    #[test]
    fn no_bytes_make_the_program_panic(bytes in prop::collection::vec(any::<u8>(), 0..400)) {
        let folder = tempfile::tempdir().expect("a folder");
        std::fs::write(folder.path().join("survey.csv"), &bytes).expect("written");
        let ran = crate::harness::run_in(folder.path(), &["check", "@survey.csv"], "");
        prop_assert!([0, 1, 2, 3].contains(&ran.code));
    }

    #[test]
    fn no_text_of_cells_makes_the_program_panic(cells in prop::collection::vec("[ -~½\"\u{1b}]{0,24}", 1..20)) {
        let mut survey = String::from("unit,guard,item,reading,note\na,g,height,40 in,\n");
        for pair in cells.chunks(2) {
            survey.push_str("a,g,");
            survey.push_str(&pair.join(","));
            survey.push('\n');
        }
        let ran = run(&[("survey.csv", &survey)], &["check", "@survey.csv"]);
        prop_assert!(!ran.out.contains('\u{1b}'), "no escape reaches the terminal");
        prop_assert!(!ran.err.contains('\u{1b}'), "no escape reaches the terminal");
    }
}

/// The property above would say nothing about guards that never meet.
#[test]
fn the_first_readings_of_the_notes_meet() {
    let first: Vec<(usize, usize)> = (0..NOTES.len()).map(|item| (item, 0)).collect();
    for ruleset in ["us-dwelling-2018", "small-child-advice"] {
        let verdict = of_notes(&notes(&first, None), ruleset);
        assert_eq!(verdict.as_deref(), Some("meets"), "{ruleset}");
    }
}
