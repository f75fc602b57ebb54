//! `guardrule remedy`: what is offered is proved by judging the changed guard again.

mod after;
mod cables;
mod cases;
mod examples;
mod proof;
mod quantities;
mod states;
mod wood;

use std::fs;

use serde_json::Value;

use crate::harness::Ran;
use crate::harness::run;
use crate::harness::run_here;
use crate::harness::run_in;
use crate::harness::words;

/// `remedy --format json` of a survey of one guard: its plan.
pub(super) fn plan_of(rows: &[&str], rules: &str) -> Value {
    let survey = format!("unit,guard,item,reading\n,g,{}\n", rows.join("\n,g,"));
    let args = [
        "remedy",
        "@s.csv",
        "--format",
        "json",
        "--rules",
        rules,
        "--no-guidance",
    ];
    let ran = run(&[("s.csv", &survey)], &args);
    assert_eq!(ran.err, "", "{survey}");
    ran.json()["guards"][0].clone()
}

fn exit(rows: &[&str]) -> u8 {
    let survey = format!("unit,guard,item,reading\n,g,{}\n", rows.join("\n,g,"));
    let args = [
        "remedy",
        "@s.csv",
        "--rules",
        "us-dwelling-2018",
        "--no-guidance",
    ];
    run(&[("s.csv", &survey)], &args).code
}

const FIRM: &[&str] = &[
    "use,dwelling",
    "place,deck",
    "drop,4 ft",
    "infill,balusters",
    "moves when pushed,no",
    "openings checked,every one",
];

fn with<'a>(rows: &[&'a str]) -> Vec<&'a str> {
    FIRM.iter().chain(rows).copied().collect()
}

#[test]
fn the_exit_status_says_whether_every_shortfall_has_a_confirmed_remedy() {
    let fine = ["height,37 in", "opening,3 in", "bottom gap,2 in"];
    assert_eq!(exit(&with(&fine)), 0, "nothing falls short");
    let gap = ["height,37 in", "opening,4 3/8 in", "bottom gap,2 in"];
    assert_eq!(exit(&with(&gap)), 0, "a gap with a remedy");
    let open = ["height,not reached", "opening,4 3/8 in", "bottom gap,2 in"];
    assert_eq!(exit(&with(&open)), 3, "the height stays undecided");
    let moves: Vec<&str> = with(&gap)
        .into_iter()
        .map(|row| row.replace("pushed,no", "pushed,a lot"))
        .map(|row| &*row.leak())
        .collect();
    assert_eq!(exit(&moves), 1, "a danger stands");
    let unread = run(
        &[("s.csv", "unit,guard,item,reading\n,g,height,36\n")],
        &["remedy", "@s.csv"],
    );
    assert_eq!(unread.code, 2, "a reading that cannot be read");
}

#[test]
fn a_survey_is_written_that_the_check_confirms_and_no_file_is_replaced_unasked() {
    let folder = tempfile::tempdir().expect("a folder");
    let survey = "unit,guard,item,reading,note\n,,date,2026-05-04,\n,porch,use,dwelling,\n\
        ,porch,place,porch,\n,porch,drop,4 ft,\n,porch,height,35 in,=by the door\n\
        ,porch,opening,4 1/4 in,\n,porch,bottom gap,2 in,\n,porch,infill,balusters,\n\
        ,porch,moves when pushed,no,\n,porch,colour,green,\n";
    fs::write(folder.path().join("s.csv"), survey).expect("written");
    let args = [
        "remedy",
        "@s.csv",
        "--rules",
        "us-dwelling-2018",
        "--no-guidance",
        "--write",
        "@after.csv",
    ];
    let ran = run_in(folder.path(), &args, "");
    assert_eq!(ran.code, 0, "{}{}", ran.out, ran.err);
    let after = fs::read_to_string(folder.path().join("after.csv")).expect("written");
    assert!(after.contains("build tolerance,1/8 in"), "{after}");
    assert!(after.contains("porch,state,altered"), "{after}");
    assert!(
        after.contains("'=by the door") || !after.contains("by the door"),
        "{after}"
    );
    assert!(
        after.contains("colour,green"),
        "what is one's own stays: {after}"
    );
    let args = [
        "check",
        "@after.csv",
        "--no-guidance",
        "--format",
        "summary",
    ];
    let checked = run_in(folder.path(), &args, "");
    assert_eq!(checked.code, 0, "{}{after}", checked.out);
    let args = [
        "remedy",
        "@s.csv",
        "--rules",
        "us-dwelling-2018",
        "--write",
        "@s.csv",
    ];
    let again = run_in(folder.path(), &args, "");
    assert_eq!(again.code, 2, "the survey itself is not replaced");
    assert_eq!(
        fs::read_to_string(folder.path().join("s.csv")).expect("there"),
        survey
    );
}

/// A reading that stays has the doubt of its tape: 36 1/8 in meets 36 in by 0.125 in, which
/// is more than that doubt (0.11 in) and less than that of a builder of ± 1/8 in (0.144 in;
/// both worked out from the budgets of the tape and a/√3).
#[test]
fn what_stays_keeps_the_doubt_of_the_tape_and_only_what_is_new_carries_the_builders() {
    let rows = ["height,36 1/8 in", "opening,4 1/4 in", "bottom gap,2 in"];
    let plan = plan_of(&with(&rows), "us-dwelling-2018");
    assert_eq!(plan["outcome"], "confirmed", "{plan}");
    assert_eq!(plan["steps"].as_array().map(Vec::len), Some(1));
    let read = |state: &str| {
        let survey = format!(
            "unit,guard,item,reading\n,,build tolerance,1/8 in\n,g,{}\n,g,height,36 1/8 in\n,g,state,{state}\n\
             ,g,opening,3 in ± 1/8 in\n,g,bottom gap,2 in\n",
            FIRM.join("\n,g,")
        );
        let args = [
            "check",
            "@s.csv",
            "--rules",
            "us-dwelling-2018",
            "--no-guidance",
        ];
        run(&[("s.csv", &survey)], &args).code
    };
    assert_eq!((read("altered"), read("proposed")), (0, 3));
}

/// A drawn reading 0.15 in off the limit: outside the builder's doubt (0.144 in), inside
/// that of the builder and the tape together, so that the two are not added up.
#[test]
fn a_drawn_reading_of_an_altered_guard_has_the_builders_doubt_alone() {
    let read = |opening: &str| {
        let survey = format!(
            "unit,guard,item,reading\n,g,{}\n,g,height,38 in\n,g,state,altered\n,g,opening,{opening}\n\
             ,g,bottom gap,2 in\n",
            FIRM.join("\n,g,")
        );
        let args = [
            "check",
            "@s.csv",
            "--rules",
            "us-dwelling-2018",
            "--no-guidance",
        ];
        run(&[("s.csv", &survey)], &args).code
    };
    assert_eq!(read("3.85 in ± 1/8 in"), 0);
    assert_eq!(read("3.86 in ± 1/8 in"), 3);
    assert_eq!(read("4.2 in ± 1/8 in"), 1);
}

#[test]
fn nothing_is_tied_to_a_railing_that_moves_and_what_holds_it_comes_first() {
    let rows = [
        "use,dwelling",
        "place,landing",
        "location,inside",
        "drop,9 ft",
        "height,38 in",
        "opening,5 in",
        "bottom gap,2 in",
        "infill,balusters",
        "moves when pushed,a lot",
    ];
    let plan = plan_of(&rows, "us-dwelling-2018");
    let tonight: Vec<&str> = plan["tonight"]
        .as_array()
        .expect("a list")
        .iter()
        .filter_map(|act| act["kind"].as_str())
        .collect();
    assert_eq!(tonight, ["everybody-off"]);
    let bridges = plan["bridges"].as_array().expect("a list").iter();
    let bridges: Vec<&Value> = bridges.map(|bridge| &bridge["kind"]).collect();
    assert_eq!(bridges, ["barrier-set-back"], "nothing that is tied to it");
    assert_eq!(plan["steps"][0]["item"], "moves when pushed");
    assert_eq!(plan["steps"][0]["proved"], false);
    assert_eq!(plan["steps"][1]["waits"], true, "{plan}");
    assert_eq!(plan["outcome"], "stands");
    let mesh = refused(&plan, "mesh-inside");
    assert!(
        mesh["why"]
            .as_str()
            .is_some_and(|why| why.contains("moves")),
        "{mesh}"
    );
}

fn refused<'p>(plan: &'p Value, kind: &str) -> &'p Value {
    let all = plan["refused"].as_array().expect("a list");
    all.iter()
        .find(|one| one["kind"] == kind)
        .unwrap_or_else(|| panic!("{kind} is not refused: {plan}"))
}

/// A way out is shut and never locked, fixed or barred; nothing is taken off what moves.
#[test]
fn no_act_for_tonight_locks_a_way_out_or_takes_anything_off_what_moves() {
    let window = [
        "use,dwelling",
        "place,window",
        "location,inside",
        "drop,10 ft",
        "height,20 in",
        "opening,12 in",
        "children,2 years",
    ];
    let plan = plan_of(&window, "small-child-advice");
    let tonight = |plan: &Value| -> Vec<String> {
        let acts = plan["tonight"].as_array().expect("a list").iter();
        acts.map(|act| act["kind"].as_str().expect("a text").to_owned())
            .collect()
    };
    assert_eq!(tonight(&plan), ["window-shut", "window-and-furniture"]);
    let moving = [
        "use,dwelling",
        "place,deck",
        "drop,4 ft",
        "height,38 in",
        "opening,3 in",
        "bottom gap,2 in",
        "infill,balusters",
        "foothold,12 in high 3 in deep",
        "end gap,5 in",
        "moves when pushed,a little",
    ];
    let plan = plan_of(&moving, "small-child-advice");
    assert!(
        !tonight(&plan).contains(&"foothold-away".to_owned()),
        "{plan:#}"
    );
    let waits = |item: &str| {
        let steps = plan["steps"].as_array().expect("a list");
        let step = steps.iter().find(|step| step["item"] == item);
        step.unwrap_or_else(|| panic!("{item}: {plan:#}"))["waits"].clone()
    };
    assert_eq!(
        (waits("foothold"), waits("end gap")),
        (true.into(), true.into())
    );
    for words in guardrule::remedy::TONIGHT {
        let says = format!("{} {}", words.does, words.more);
        let locks = says.to_lowercase().contains("lock");
        let free = ["way out", "not locked"]
            .iter()
            .any(|kept| says.contains(kept));
        assert!(!locks || free, "{says}");
    }
}

#[test]
fn a_net_above_one_storey_outdoors_is_held_back() {
    let rows = [
        "use,dwelling",
        "place,balcony",
        "location,outside",
        "drop,22 ft",
        "height,43 in",
        "opening,5 in",
        "bottom gap,2 in",
        "infill,balusters",
        "moves when pushed,no",
    ];
    let plan = plan_of(&rows, "us-dwelling-2018");
    assert!(
        refused(&plan, "mesh-outside")["why"]
            .as_str()
            .is_some_and(|why| why.contains("storey"))
    );
    let inside: Vec<&str> = rows
        .iter()
        .map(|row| match *row {
            "location,outside" => "location,inside",
            "place,balcony" => "place,landing",
            row => row,
        })
        .collect();
    let plan = plan_of(&inside, "us-dwelling-2018");
    assert_eq!(plan["bridges"][0]["kind"], "mesh-inside", "{plan}");
}

/// A guard is never lowered, and bars that a child climbs get no rung more.
#[test]
fn no_guard_is_lowered_and_no_rung_is_added() {
    let stair = [
        "use,dwelling",
        "place,stair",
        "drop,9 ft",
        "height,45 in",
        "handrail,top of the guard",
        "handrail height,45 in",
        "risers,13",
        "opening,3 in",
        "stair triangle,none",
        "bottom gap,none",
        "riser opening,none",
        "infill,balusters",
    ];
    let plan = plan_of(&stair, "us-dwelling-2018");
    assert_eq!(plan["steps"][0]["kind"], "wall-handrail", "{plan}");
    refused(&plan, "lower-top");
    let heights: Vec<&Value> = all_readings(&plan)
        .into_iter()
        .filter(|reading| reading["item"] == "height")
        .collect();
    assert!(heights.is_empty(), "{heights:?}");
    let bars = [
        "use,dwelling",
        "place,deck",
        "drop,9 ft",
        "height,38 in",
        "infill,horizontal bars",
        "opening,5 in",
        "bottom gap,3 in",
        "foothold,11 in high 1 1/4 in deep",
        "moves when pushed,no",
    ];
    let plan = plan_of(&bars, "small-child-advice");
    refused(&plan, "more-level-bars");
    let rungs: Vec<&Value> = all_readings(&plan)
        .into_iter()
        .filter(|reading| reading["item"] == "foothold" && reading["written"] != "none")
        .collect();
    assert!(rungs.is_empty(), "{rungs:?}");
}

fn all_readings(plan: &Value) -> Vec<&Value> {
    let steps = plan["steps"].as_array().expect("a list");
    steps
        .iter()
        .flat_map(|step| step["readings"].as_array().expect("a list"))
        .collect()
}

#[test]
fn the_family_house_in_text() {
    let ran = run_here(&["remedy", "@demo-surveys/family-house.csv"]);
    assert_eq!((ran.code, ran.err.as_str()), (1, ""));
    let words = ran.out.split_whitespace().collect::<Vec<_>>().join(" ");
    for said in [
        "3 of 3 railings fall short.",
        "Keep everybody off it. Close the way to it",
        "Put more upright bars in every gap that a block of 2 1/8 in goes through",
        "they would close the gaps and add rungs that a child climbs",
        "To count what it takes, write guard length, post spacing, baluster section, baluster spacing",
        "Next: guardrule remedy SURVEY --write after.csv",
    ] {
        assert!(words.contains(said), "{said}\n{}", ran.out);
    }
}

#[test]
fn every_form_carries_the_deferral() {
    for form in ["text", "json", "csv", "svg"] {
        let ran: Ran = run_here(&["remedy", "@demo-surveys/twelve-flats.csv", "--format", form]);
        let words = ran.out.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(
            words.contains("The local authority and licensed professionals decide"),
            "{form}"
        );
    }
}

/// The shop's list: every row has as many cells as the head, and no cell is a formula.
#[test]
fn the_shops_list_is_safe_to_open_and_counts_what_was_measured() {
    let survey = "unit,guard,item,reading\n=1+1,deck,use,dwelling\n=1+1,deck,place,deck\n=1+1,deck,drop,4 ft\n\
        =1+1,deck,height,38 in\n=1+1,deck,opening,4 1/2 in\n=1+1,deck,bottom gap,2 in\n\
        =1+1,deck,infill,balusters\n=1+1,deck,baluster section,3/4 x 3/4 in\n\
        =1+1,deck,baluster spacing,5 1/4 in\n=1+1,deck,guard length,12 ft\n=1+1,deck,moves when pushed,no\n";
    let args = [
        "remedy",
        "@s.csv",
        "--rules",
        "us-dwelling-2018",
        "--no-guidance",
        "--format",
        "csv",
    ];
    let ran = run(&[("s.csv", survey)], &args);
    let mut rows = csv::Reader::from_reader(ran.out.as_bytes());
    let heads = rows.headers().expect("a head").clone();
    let at = |name: &str| {
        heads
            .iter()
            .position(|head| head == name)
            .expect("a column")
    };
    let rows: Vec<csv::StringRecord> = rows.records().map(|row| row.expect("a row")).collect();
    assert!(
        rows.iter().flatten().all(|cell| !cell.starts_with('=')),
        "{}",
        ran.out
    );
    let bars = rows
        .iter()
        .find(|row| row[at("kind")] == *"bars between")
        .expect("bars");
    // 144 in of 5 1/4 in: 27 whole spacings, so that 28 gaps begin in it, one bar in each
    assert_eq!(
        (&bars[at("count from")], &bars[at("count to")]),
        ("1", "28")
    );
    // 12 to 24 minutes a bar: a quick hand at one, a slow one at all
    assert_eq!(
        (
            &bars[at("minutes each")],
            &bars[at("each is")],
            &bars[at("minutes from")],
            &bars[at("minutes to")]
        ),
        ("12 to 24", "a bar", "12", "672")
    );
    assert!(bars[at("labour is")].starts_with("common practice, no source"));
}

/// The marks of the drawing are those of the plan.
#[test]
fn a_bay_is_drawn_with_its_marks_to_scale() {
    let survey = "unit,guard,item,reading\n,deck,use,dwelling\n,deck,place,deck\n,deck,drop,4 ft\n,deck,height,38 in\n\
        ,deck,opening,4 1/2 in\n,deck,bottom gap,2 in\n,deck,infill,balusters\n\
        ,deck,baluster section,3/4 x 3/4 in\n,deck,post section,3 1/2 x 3 1/2 in\n\
        ,deck,post spacing,6 ft\n,deck,moves when pushed,no\n";
    let args = [
        "remedy",
        "@s.csv",
        "--rules",
        "us-dwelling-2018",
        "--no-guidance",
        "--format",
        "svg",
    ];
    let ran = run(&[("s.csv", survey)], &args);
    assert!(ran.out.starts_with("<svg"), "{}", ran.out);
    assert!(
        ran.out
            .contains("= 12 in of the bay, at any size of print: to scale")
            && ran.out.contains("deck: or all bars laid out again"),
        "{}",
        ran.out
    );
}

/// No hand closes around a board on edge (IRC 2018 R311.7.8.5), and a window has no rail to
/// tie a mesh to, which would close a way out as well.
#[test]
fn a_top_that_is_the_handrail_stays_one_and_a_window_is_not_tied_shut() {
    let of = |rows: &str, rules: &str| {
        let survey = format!("guard,item,reading\n{rows}");
        words(
            &run(
                &[("s.csv", &survey)],
                &["remedy", "@s.csv", "--rules", rules],
            )
            .out,
        )
    };
    let stair = of(
        "flight,place,stair\nflight,use,dwelling\nflight,drop,9 ft\nflight,risers,14\nflight,height,30 in\n\
         flight,handrail,top of the guard\nflight,handrail shape,round\nflight,handrail thickness,1 3/4 in\n\
         flight,opening,3 in\nflight,stair triangle,none\nflight,riser opening,none\n",
        "us-dwelling-2018",
    );
    assert!(stair.contains("36"), "{stair}");
    if let Some((_, after)) = stair.split_once("board on edge") {
        assert!(after.contains("handrail of its own"), "{stair}");
    }
    let window = of(
        "nursery,place,window\nnursery,use,dwelling\nnursery,sill height,22 in\nnursery,sill above ground,14 ft\n\
         nursery,opening,9 in\nnursery,children,3 years\n",
        "small-child-advice",
    );
    assert!(window.contains("window"), "{window}");
    assert!(!window.contains("stiff mesh to the inner face"), "{window}");
}
