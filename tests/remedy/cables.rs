//! Cables that spread under a push: what spreaders, tension and spacing come to, and that
//! nothing measured at rest is taken for a remedy.

use guardrule::geometry::Cables;
use guardrule::geometry::Strand;
use guardrule::quantities::Length;
use guardrule::reading::parse_length;
use uom::si::f64::Force;
use uom::si::force::newton;
use uom::si::force::pound_force;

use crate::remedy::plan_of;

fn length(text: &str) -> Length {
    parse_length(text, None).expect("a length").length
}

/// Cables 3/16 in thick, 200 lbf of tension where none is named: spacing, free length,
/// push in lbf, and the ball in millimetres that it forces through. Worked out apart from
/// the code from the balance of a taut cable at mid-span, k = 4T/L, and the largest force
/// on the way between two cables that are pushed apart (statics, no source).
const BALLS: &[(&str, &str, f64, Option<f64>, f64)] = &[
    ("3 in", "48 in", 5.0, None, 97.3),
    ("3 in", "24 in", 5.0, None, 87.5),
    ("3 in", "16 in", 5.0, None, 83.6),
    ("3 in", "36 in", 5.0, Some(890.0), 92.6),
    ("3 in", "36 in", 5.0, Some(623.0), 98.6),
    ("3 in", "24 in", 10.0, None, 97.3),
    ("3 in", "24 in", 50.0, None, 153.8),
    ("2 in", "24 in", 50.0, None, 120.5),
];

#[test]
fn a_spreader_halves_the_length_that_gives_way_and_a_harder_push_undoes_it() {
    for (spacing, free, push, tension, ball) in BALLS {
        let tension =
            tension.map_or_else(|| Force::new::<pound_force>(200.0), Force::new::<newton>);
        let run = Cables::new(Strand::Cable, length(spacing), length("3/16 in"));
        let run = run.and_then(|run| run.strung(Some(length(free)), Some(tension)));
        let taut = run.ok().and_then(|run| run.taut()).expect("taut cables");
        let found = taut.ball_under(Force::new::<pound_force>(*push));
        let millimetres =
            f64::from(i32::try_from(found.nanometres() / 1000).expect("small")) / 1000.0;
        assert!(
            (millimetres - ball).abs() < 0.06,
            "{spacing} free {free} pushed {push} lbf: {millimetres}, not {ball}"
        );
    }
}

/// What a pushed ball found is put right for sure by a face that no push opens; spreaders
/// and tension are named as what only another push shows, and prove nothing.
#[test]
fn spreaders_are_named_and_prove_nothing() {
    let rows = [
        "use,dwelling",
        "place,deck",
        "drop,4 ft",
        "infill,cables",
        "height,38 in",
        "bottom gap,2 in",
        "foothold,none",
        "opening,4 in ball passes pushed 50 lbf",
        "moves when pushed,no",
    ];
    let plan = plan_of(&rows, "us-dwelling-2018");
    let steps = plan["steps"].as_array().expect("a list");
    let step = steps
        .iter()
        .find(|step| step["item"] == "opening")
        .unwrap_or_else(|| panic!("no step for the opening: {plan:#}"));
    assert_eq!(step["proved"], true, "{plan:#}");
    let to_try = step["to_try"].as_array().expect("a list");
    let kinds: Vec<&str> = to_try
        .iter()
        .filter_map(|one| one["kind"].as_str())
        .collect();
    for kind in ["spreader-bars", "tighten-cables"] {
        assert!(kinds.contains(&kind), "{kinds:?}\n{plan:#}");
    }
    for one in to_try {
        assert_eq!(one["readings"], serde_json::json!([]), "{one}");
    }
    // where the gap is too wide while nobody pushes, neither would do
    let wide: Vec<&str> = rows
        .iter()
        .map(|row| match *row {
            "opening,4 in ball passes pushed 50 lbf" => "opening,4 1/2 in",
            row => row,
        })
        .collect();
    let plan = plan_of(&wide, "us-dwelling-2018");
    let text = plan.to_string();
    assert!(
        !text.contains("spreader-bars") && !text.contains("tighten-cables"),
        "{text}"
    );
}
