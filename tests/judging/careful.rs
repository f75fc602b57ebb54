//! What a careful inspector would not sign, found by random guards against the
//! published limits alone (`tests/judging/inspector.py`).

use crate::harness::check;
use crate::harness::only_guard;

fn verdict(survey: &str, ruleset: &str) -> (String, u8) {
    let ran = check(survey, &["--rules", ruleset, "--no-guidance"]);
    let report = ran.json();
    let verdict = only_guard(&report)["verdict"].as_str().expect("a word");
    (verdict.to_owned(), ran.code)
}

/// IRC 2018 R312.1.3: a 4 in ball up to 36 in above the floor.
#[test]
fn a_wide_gap_held_at_one_height_may_run_down_between_balusters_that_nobody_named() {
    let landing = |rows: &str| {
        let survey = format!(
            "guard,item,reading\nloft,place,landing\nloft,drop,8 ft 3 in\nloft,height,45 in\n\
             loft,bottom gap,none\nloft,opening,3 in\n{rows}"
        );
        verdict(&survey, "us-dwelling-2018")
    };
    let high = "loft,opening,8 in at 40 in\n";
    assert_eq!(landing(high), ("not measured".to_owned(), 3));
    let bars = format!("{high}loft,infill,horizontal bars\n");
    assert_eq!(landing(&bars), ("meets".to_owned(), 0));
    let upright = format!("{high}loft,infill,balusters\n");
    assert_eq!(landing(&upright), ("falls short".to_owned(), 1));
    // narrow enough wherever it runs
    assert_eq!(
        landing("loft,opening,3 1/8 in at 40 in\n"),
        ("meets".to_owned(), 0)
    );
}

/// IBC 1015.3: 42 in, and 34 in at the kindest, on a stair of a dwelling.
#[test]
fn what_is_too_low_in_every_case_falls_short_however_many_circumstances_are_open() {
    let survey = "guard,item,reading\nstep,place,stair\nstep,use,dwelling\nstep,drop,3973 mm\n\
        step,height,20 in\nstep,opening,97 mm\nstep,stair triangle,none\nstep,bottom gap,50 mm\n\
        step,riser opening,none\nstep,location,outside\n";
    let short = ("falls short".to_owned(), 1);
    assert_eq!(verdict(survey, "us-buildings-2018"), short);
    // between the two limits it depends on what nobody wrote
    let between = survey.replace("20 in", "38 in");
    assert_ne!(verdict(&between, "us-buildings-2018"), short);
    assert_ne!(verdict(&between, "us-buildings-2018").0, "meets");
}

/// IRC 2018 R311.7.8.1 wants a handrail of 34 to 38 in; R312.1.2 a guard of 34 in.
#[test]
fn nobody_is_told_to_lower_a_guard() {
    let survey = "guard,item,reading\nstep,place,stair\nstep,use,dwelling\nstep,drop,8 ft 1 in\n\
        step,height,43 in\nstep,handrail,top of the guard\nstep,opening,3 in\nstep,risers,12\n";
    let ran = check(survey, &["--rules", "us-dwelling-2018"]);
    let report = ran.json();
    let findings = only_guard(&report)["findings"]
        .as_array()
        .expect("findings");
    let remedies: Vec<&str> = findings
        .iter()
        .filter_map(|finding| finding["remedy"]["says"].as_str())
        .collect();
    assert!(!remedies.is_empty());
    for remedy in remedies {
        assert!(!remedy.to_lowercase().contains("lower the top"), "{remedy}");
    }
    assert!(ran.out.contains("do not lower the guard"), "{}", ran.out);
}

/// 2 3/8 in for a child under two: Caring for Our Children 5.1.5.1 (read).
#[test]
fn level_bars_get_no_rung_more_and_what_moves_is_held_first() {
    let survey = "guard,item,reading\nback,place,deck\nback,use,dwelling\nback,drop,7 ft 5 in\n\
        back,children,9 months\nback,height,38 in\nback,infill,horizontal bars\n\
        back,opening,5 1/4 in\nback,bottom gap,2 in\nback,moves when pushed,a little\n";
    let ran = check(survey, &["--rules", "us-dwelling-2018"]);
    let report = ran.json();
    let findings = only_guard(&report)["findings"]
        .as_array()
        .expect("findings");
    let of_openings: Vec<&str> = findings
        .iter()
        .filter(|finding| finding["item"] == "opening")
        .filter_map(|finding| finding["remedy"]["says"].as_str())
        .collect();
    assert!(!of_openings.is_empty());
    for remedy in of_openings {
        let remedy = remedy.to_lowercase();
        assert!(!remedy.contains("another baluster"), "{remedy}");
        assert!(!remedy.contains("another bar"), "{remedy}");
        // far below 2 3/8 in, so that no foot finds hold either
        assert!(
            remedy.contains("no gap between them wider than 1/2 in"),
            "{remedy}"
        );
    }
}

#[test]
fn the_gap_under_a_stair_rail_and_its_note_stand_in_every_form() {
    let survey = "guard,item,reading,note\nstep,place,stair,\nstep,use,dwelling,\n\
        step,drop,8 ft 1 in,\nstep,height,36 1/2 in,\n\
        step,bottom gap,9 1/8 in,at the fourth step\nstep,opening,3 in,\n";
    for form in ["json", "csv", "text"] {
        let ran = crate::harness::run(
            &[("stairs.csv", survey)],
            &[
                "check",
                "@stairs.csv",
                "--rules",
                "us-dwelling-2018",
                "--format",
                form,
            ],
        );
        let words: Vec<&str> = ran.out.split_whitespace().collect();
        let text = words.join(" ");
        assert!(text.contains("9 1/8 in"), "{form}");
        assert!(text.contains("at the fourth step"), "{form}: {}", ran.out);
    }
}
