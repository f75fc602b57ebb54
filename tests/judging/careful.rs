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
