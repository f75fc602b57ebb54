//! Wood that dries: what is drawn beside new wood keeps the limit when the wood has
//! narrowed, in the plan and in the layout alike.

use serde_json::Value;

use crate::harness::run_here;
use crate::remedy::plan_of;

/// From 19 to 12 per cent of moisture, 7.6 per cent from wet to dry, tangential: Douglas-fir
/// of the coast, Wood Handbook FPL-GTR-190, table 4-3; share as restated second-hand.
const DRIES: f64 = 0.076 * (19.0 - 12.0) / 30.0;

/// A balcony of millimetres: its gap, what its balusters measure, the rulesets, the limit
/// that the plan has to keep, and how wide the new wood is.
const BALCONIES: &[(&str, &str, &str, f64, f64)] = &[
    ("120 mm", "20 x 20 mm", "canada-dwelling", 100.0, 20.0),
    ("118 mm", "38 x 38 mm", "canada-dwelling", 100.0, 38.0),
    ("160 mm", "90 x 20 mm", "canada-dwelling", 100.0, 90.0),
    ("140 mm", "38 x 38 mm", "austria-oib-4", 120.0, 38.0),
    // no child is written down, so that it may be one under two: 2 3/8 in
    ("100 mm", "38 x 38 mm", "small-child-advice", 60.325, 38.0),
];

fn offered<'p>(plan: &'p Value, kind: &str) -> Option<&'p Value> {
    let steps = plan["steps"].as_array().expect("a list");
    let mut all = steps.iter().flat_map(|step| {
        let instead = step["instead"].as_array().expect("a list");
        std::iter::once(step).chain(instead)
    });
    all.find(|one| one["kind"] == kind)
}

/// `94 mm ± 3 mm` of the opening that is drawn.
fn drawn(one: &Value) -> f64 {
    let readings = one["readings"].as_array().expect("a list");
    let opening = readings.iter().find(|reading| reading["item"] == "opening");
    let written = opening.and_then(|opening| opening["written"].as_str());
    let size = written.and_then(|written| written.split(" mm").next());
    size.and_then(|size| size.parse().ok())
        .expect("a size in millimetres")
}

#[test]
fn a_gap_beside_new_wood_keeps_the_limit_when_it_has_dried() {
    let doubt = 2.0 * 3.0 / 3_f64.sqrt();
    for (gap, section, rules, limit, wide) in BALCONIES {
        let opening = format!("opening,{gap}");
        let section = format!("baluster section,{section}");
        let rows = [
            "use,dwelling",
            "place,balcony",
            "location,outside",
            "drop,2.6 m",
            "height,1200 mm",
            "bottom gap,40 mm",
            "infill,balusters",
            "moves when pushed,no",
            "post section,90 x 90 mm",
            "post spacing,1800 mm",
            &opening,
            &section,
        ];
        let plan = plan_of(&rows, rules);
        let mut found = 0;
        for kind in ["bars-between", "strips", "laid-out-again", "new-bay"] {
            let Some(one) = offered(&plan, kind) else {
                continue;
            };
            found += 1;
            // a strip is thinner than the bars, and dries by less
            let narrower = if kind == "strips" { 0.0 } else { wide * DRIES };
            let widest = drawn(one) + narrower + doubt;
            assert!(widest < *limit, "{gap} {kind}: {widest} for {limit}");
            assert!(
                widest > limit - narrower - 2.5,
                "{gap} {kind}: no more than needed"
            );
            for marked in one["marks"].as_array().expect("a list") {
                let number = |key: &str| marked[key].as_f64().expect("a number");
                let dries = number("dries_by");
                assert!((dries - wide * DRIES).abs() < 1e-5, "{kind}: {dries}");
                let after = number("largest_gap") + dries + doubt;
                assert!(after < *limit, "{gap} {kind}: {after} for {limit}");
            }
        }
        assert!(found >= 2, "{gap}: {plan:#}");
    }
}

/// The plan's own bay is what `layout` draws for the same lengths, one graduation kept free.
#[test]
fn the_bay_of_a_plan_is_the_one_that_layout_draws() {
    let rows = [
        "use,dwelling",
        "place,balcony",
        "location,outside",
        "drop,2.6 m",
        "height,1200 mm",
        "bottom gap,40 mm",
        "infill,balusters",
        "moves when pushed,no",
        "opening,118 mm",
        "baluster section,38 x 38 mm",
        "post section,90 x 90 mm",
        "post spacing,1800 mm",
    ];
    let plan = plan_of(&rows, "canada-dwelling");
    let laid_out = offered(&plan, "laid-out-again").expect("it is offered");
    let ran = run_here(&[
        "layout",
        "--clear",
        "1710 mm",
        "--baluster",
        "38 mm",
        "--limit",
        "99 mm",
        "--at-most",
        "--format",
        "json",
    ]);
    let layout = ran.json();
    let ours = &laid_out["marks"][0];
    for key in ["marks", "largest_gap", "spacer", "dries_by", "tolerance"] {
        assert_eq!(ours[key], layout[key], "{key}");
    }
}

/// It is said once, where the plan says what it was drawn for.
#[test]
fn the_text_says_what_is_kept_free_for_wood() {
    let ran = run_here(&["remedy", "@demo-surveys/one-railing.csv"]);
    let words = ran.out.split_whitespace().collect::<Vec<_>>().join(" ");
    for said in [
        "new wood dry narrower by 1.8 per cent of its width",
        "wood wet from treatment shrinks more than twice as much: let it dry first",
    ] {
        assert!(words.contains(said), "{said}\n{}", ran.out);
    }
}
