//! Surveys of two rounds.

use crate::compare::compare;
use crate::compare::survey;
use crate::harness::run;
use crate::harness::words;

type Rows = &'static [(&'static str, &'static str)];

/// One guard in two rounds: the exit status and the words.
fn one(before: Rows, after: Rows, more: &[&str]) -> (u8, String) {
    let ran = compare(
        &survey("2026-03-14", &[("gallery", before)]),
        &survey("2027-03-20", &[("gallery", after)]),
        more,
    );
    assert_eq!(ran.err, "");
    (ran.code, words(&ran.out))
}

#[test]
fn what_fell_short_and_now_meets_is_mended() {
    let (code, text) = one(&[("height", "34 in")], &[("height", "37 in")], &[]);
    assert_eq!(code, 0, "{text}");
    assert!(text.contains("MENDED"), "{text}");
    let says = "gallery. Height: before 34 in, now 37 in; asked: 36 in or more (rules).";
    assert!(text.contains(says), "{text}");
}

#[test]
fn a_change_smaller_than_the_doubt_is_none() {
    let (code, text) = one(&[("height", "35 1/16 in")], &[("height", "35 in")], &[]);
    assert_eq!(code, 1, "{text}");
    assert!(
        text.contains("STILL SHORT") && !text.contains("WORSE"),
        "{text}"
    );
    assert!(
        text.contains("less than the tape's doubt: no change"),
        "{text}"
    );
    // by the reading alone it would meet, and the tape cannot tell one from the other
    let simple = ["--decision", "simple"];
    let (code, text) = one(
        &[("height", "35 15/16 in")],
        &[("height", "36 in")],
        &simple,
    );
    assert_eq!(code, 3, "{text}");
    assert!(
        text.contains("NOT SETTLED") && !text.contains("MENDED"),
        "{text}"
    );
}

#[test]
fn a_shortfall_that_grew_by_more_than_the_doubt_is_worse() {
    let (code, text) = one(&[("height", "35 in")], &[("height", "33 in")], &[]);
    assert_eq!(code, 1);
    assert!(text.contains("WORSE THAN BEFORE"), "{text}");
    assert!(
        text.contains("3 in too low; worse by 2 in (rules)"),
        "{text}"
    );
    let (_, text) = one(&[("height", "33 in")], &[("height", "35 in")], &[]);
    assert!(text.contains("better by 2 in, and not enough"), "{text}");
    let (code, text) = one(&[], &[("height", "33 in")], &[]);
    assert_eq!(code, 1);
    assert!(text.contains("WORSE THAN BEFORE"), "it met before: {text}");
}

#[test]
fn a_shortfall_that_nobody_had_found_is_new() {
    let (code, text) = one(&[("opening", "")], &[("opening", "5 in")], &[]);
    assert_eq!(code, 1, "{text}");
    assert!(text.contains("NEW"), "{text}");
    assert!(text.contains("before nothing written, now 5 in"), "{text}");
}

#[test]
fn what_nobody_measured_again_is_not_mended() {
    for again in [("height", ""), ("height", "not reached")] {
        let ran = compare(
            &survey("2026-03-14", &[("gallery", &[("height", "34 in")])]),
            &survey("2027-03-20", &[("gallery", &[again])]),
            &[],
        );
        assert_eq!(ran.code, 3, "{}", ran.out);
        assert!(ran.out.contains("NO LONGER MEASURED"), "{}", ran.out);
        assert!(!ran.out.contains("MENDED"), "{}", ran.out);
    }
}

#[test]
fn a_shortfall_of_two_places_is_not_mended_by_measuring_the_better_one() {
    let before: Rows = &[("height", "34 in"), ("height", "36 1/2 in")];
    let (code, text) = one(before, &[("height", "36 1/2 in")], &[]);
    assert_eq!(code, 3, "{text}");
    assert!(text.contains("read in fewer places than before"), "{text}");
    // a ball that stops everywhere was tried at all of them
    let before: Rows = &[("opening", "5 in"), ("opening", "4 1/2 in")];
    let (code, text) = one(before, &[("opening", "4 in ball stops everywhere")], &[]);
    assert_eq!(code, 0, "{text}");
    assert!(text.contains("MENDED"), "{text}");
}

#[test]
fn what_is_no_longer_asked_is_not_mended() {
    let (code, text) = one(
        &[("height", "34 in")],
        &[("height", "34 in"), ("drop", "20 in")],
        &[],
    );
    assert_eq!(code, 3, "{text}");
    assert!(
        text.contains("by what is written now no rule asks for it"),
        "{text}"
    );
    assert!(!text.contains("MENDED"), "{text}");
}

#[test]
fn a_danger_is_mended_only_where_somebody_looked_again() {
    let moves: Rows = &[("moves when pushed", "a lot")];
    let (_, text) = one(moves, &[("moves when pushed", "no")], &[]);
    assert!(text.contains("MENDED"), "{text}");
    let (code, text) = one(moves, &[], &[]);
    assert!(
        text.contains("NO LONGER MEASURED") && !text.contains("MENDED"),
        "{text}"
    );
    assert_eq!(code, 3);
    let (code, text) = one(moves, moves, &[]);
    assert!(
        text.contains("DANGER at 1 railing")
            && text.contains("(danger, still short)")
            && text.contains("KEEP EVERYBODY OFF IT"),
        "{text}"
    );
    assert_eq!(code, 1);
    let (_, text) = one(&[], moves, &[]);
    assert!(text.contains("(danger, new)"), "{text}");
}

#[test]
fn a_danger_comes_first_and_once() {
    let before: Rows = &[("moves when pushed", "no"), ("height", "34 in")];
    let after: Rows = &[("moves when pushed", "a lot"), ("height", "34 in")];
    let (_, text) = one(before, after, &[]);
    let (danger, short) = (text.find(" DANGER 1A"), text.find("STILL SHORT"));
    assert!(danger.is_some() && danger < short, "{text}");
    assert_eq!(text.matches("Moves when pushed").count(), 1, "{text}");
    assert!(text.contains("Height: 34 in as before; asked:"), "{text}");
}

#[test]
fn a_railing_that_nobody_could_enter_is_said_apart() {
    let before = survey("2026-03-14", &[("gallery", &[("height", "34 in")])]);
    let after = "unit,guard,item,reading,note\n,,date,2027-03-20,\n1A,gallery,guard,not reached,nobody at home\n";
    let ran = compare(&before, after, &[]);
    assert_eq!(ran.code, 3, "{}", ran.out);
    let text = words(&ran.out);
    assert!(
        text.contains(
            "NOT ENTERED THIS TIME 1A, gallery (\"nobody at home\"); before: falls short."
        ),
        "{text}"
    );
    assert!(!text.contains("MENDED"), "{text}");
}

#[test]
fn a_railing_of_another_name_is_asked_about_and_never_guessed() {
    let ran = compare(
        &survey(
            "2026-03-14",
            &[("gallery", &[("height", "34 in")]), ("porch", &[])],
        ),
        &survey("2027-03-20", &[("galery", &[]), ("Porch", &[])]),
        &[],
    );
    assert_eq!(ran.code, 3, "{}", ran.out);
    let text = words(&ran.out);
    assert!(text.contains("1A, gallery stands in the first round alone, and 1A, galery in the second alone. Are they the same?"), "{text}");
    assert!(
        text.contains("1 railing compared"),
        "case is no other name: {text}"
    );
    assert!(!text.contains("MENDED"), "{text}");
    let ran = compare(
        &survey("2026-03-14", &[("porch", &[])]),
        &survey(
            "2027-03-20",
            &[("porch", &[]), ("deck", &[("height", "30 in")])],
        ),
        &[],
    );
    assert_eq!(
        ran.code, 1,
        "a railing that appeared and falls short: {}",
        ran.out
    );
}

#[test]
fn every_form_says_the_same_and_defers() {
    let before = survey(
        "2026-03-14",
        &[
            ("gallery", &[("height", "34 in")]),
            ("porch", &[("opening", "5 in")]),
        ],
    );
    let after = survey(
        "2027-03-20",
        &[
            ("gallery", &[("height", "37 in")]),
            ("porch", &[("opening", "5 in")]),
        ],
    );
    for form in ["text", "json", "csv", "html"] {
        let ran = compare(&before, &after, &["--format", form]);
        assert_eq!(ran.code, 1, "{form}");
        for part in [
            "mended",
            "still short",
            "gallery",
            "porch",
            "licensed professionals decide",
        ] {
            assert!(
                words(&ran.out).to_lowercase().contains(part),
                "{form}: {part}: {}",
                ran.out
            );
        }
    }
    let json = compare(&before, &after, &["--format", "json"]).out;
    let json: serde_json::Value = serde_json::from_str(&json).expect("JSON");
    assert_eq!(json["counts"]["mended"]["decides"], 1);
    assert_eq!(json["counts"]["still_short"]["decides"], 1);
    assert_eq!(json["changes"].as_array().expect("a list").len(), 2);
}

#[test]
fn a_comparison_of_a_survey_with_itself_changes_nothing() {
    let folder = std::path::Path::new(env!("CARGO_MANIFEST_DIR"));
    for name in ["twelve-flats", "family-house", "city-flat-uk"] {
        let path = format!("@demo-surveys/{name}.csv");
        let ran =
            crate::harness::run_in(folder, &["compare", &path, &path, "--format", "json"], "");
        let json: serde_json::Value = serde_json::from_str(&ran.out).expect("JSON");
        let changes = json["changes"].as_array().expect("a list");
        assert!(!changes.is_empty(), "{name}");
        for change in changes {
            assert_eq!(change["change"], "still short", "{name}: {change}");
        }
        assert_eq!(json["questions"].as_array().map(Vec::len), Some(0));
    }
}

/// Both rounds are judged by the same rules, whatever each of them named.
#[test]
fn rules_that_the_first_round_alone_named_are_said_to_judge_nothing() {
    let of = |first: &str, second: &str| {
        let named = |id: &str| {
            let rows: Rows = &[("height", "37 in")];
            format!(
                "{},,rules,{id},\n",
                survey("2026-03-14", &[("gallery", rows)])
            )
        };
        let files = [("a.csv", &*named(first)), ("b.csv", &*named(second))];
        words(&run(&files, &["compare", "@a.csv", "@b.csv", "--no-guidance"]).out)
    };
    let text = of("us-dwelling-2018", "us-dwelling-2021");
    let says = "Both rounds are judged alike, and not by us-dwelling-2018, which the first one named. \
                Building rules: ";
    assert!(text.contains(says), "{text}");
    assert!(text.contains("(us-dwelling-2021)"), "{text}");
    let alike = of("us-dwelling-2018", "us-dwelling-2018");
    assert!(
        alike.contains("Both rounds are judged alike. Building rules: "),
        "{alike}"
    );
}

/// A plan, another hole, a gauge at one place and a word that tells of something else are
/// no measuring again of what was short.
#[test]
fn a_plan_another_hole_or_another_word_mends_nothing() {
    let not_mended = |before: Rows, after: Rows| {
        let (code, text) = one(before, after, &[]);
        assert!(!text.contains("MENDED"), "{text}");
        assert_ne!(code, 0, "{text}");
        text
    };
    let drawn = not_mended(
        &[("height", "32 in")],
        &[("height", "37 in"), ("state", "proposed")],
    );
    assert!(
        drawn.contains("as drawn: nobody has measured what was built"),
        "{drawn}"
    );
    let elsewhere = not_mended(
        &[("opening", "6 in at 20 in"), ("openings checked", "")],
        &[("opening", "3 1/4 in at 10 in"), ("openings checked", "")],
    );
    assert!(
        elsewhere.contains("measure again where it was short"),
        "{elsewhere}"
    );
    not_mended(
        &[("opening", "5 in"), ("openings checked", "")],
        &[
            ("opening", "4 in ball stops at 10 in"),
            ("openings checked", ""),
        ],
    );
    not_mended(
        &[("post fastening", "missing")],
        &[("post fastening", "hidden")],
    );
    let rot: Rows = &[("condition", "rot")];
    let others: [Rows; 3] = [
        &[("condition", "dry")],
        &[("condition", "surface rust")],
        &[("condition", "none seen")],
    ];
    for other in others {
        not_mended(rot, other);
    }
    // at the same place, and by somebody who looked closely, it is
    let (_, same) = one(
        &[("opening", "6 in at 20 in"), ("openings checked", "")],
        &[("opening", "3 1/4 in at 20 in"), ("openings checked", "")],
        &[],
    );
    assert!(same.contains("MENDED"), "{same}");
    let (_, sound) = one(rot, &[("condition", "sound")], &[]);
    assert!(sound.contains("MENDED"), "{sound}");
}
