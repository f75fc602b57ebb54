//! Worked cases: what is offered, with its numbers. Each number is worked out apart from
//! the code, by exact fractions, from the lengths of its case.

use serde_json::Value;

use crate::remedy::plan_of;

/// One case: readings, rulesets, the kind that has to be offered, words it has to say,
/// kinds that have to be refused.
struct WorkedCase {
    /// What it shows, and how its numbers come about.
    source: &'static str,
    rows: &'static [&'static str],
    rules: &'static str,
    kind: &'static str,
    says: &'static [&'static str],
    refused: &'static [&'static str],
}

const DECK: &[&str] = &[
    "use,dwelling",
    "place,deck",
    "drop,4 ft",
    "moves when pushed,no",
    "build tolerance,1/8 in",
];

#[rustfmt::skip]
const CASES: &[WorkedCase] = &[
    WorkedCase {
        source: "a gap of 5 11/32 in between bars of 3/4: (5 11/32 - 3/4) / 2 = 2 19/64, up to a mark 2 5/16",
        rows: &["height,38 in", "bottom gap,2 in", "infill,balusters", "opening,5 11/32 in", "baluster section,3/4 x 3/4 in"],
        rules: "us-dwelling-2018",
        kind: "bars-between",
        says: &["one more upright bar in every gap", "leaves 2 5/16 in"],
        refused: &[],
    },
    WorkedCase {
        source: "9 1/2 in with one bar of 1 1/2 leaves exactly 4, which a 4 in ball passes: two, (9 1/2 - 3) / 3 = 2 1/6, up to a mark 2 3/16",
        rows: &["height,38 in", "bottom gap,2 in", "infill,balusters", "opening,9 1/2 in", "baluster section,1 1/2 x 1 1/2 in"],
        rules: "us-dwelling-2018",
        kind: "bars-between",
        says: &["2 more upright bars", "leaves 2 3/16 in"],
        refused: &[],
    },
    WorkedCase {
        source: "a bay of 72 - 3 1/2 = 68 1/2 in, bars of 1 1/2, gaps of 3 3/4: ceil((68.5 - 3.75) / 5.25) = 13",
        rows: &["height,38 in", "bottom gap,2 in", "infill,balusters", "opening,4 5/32 in", "baluster section,1 1/2 x 1 1/2 in", "post section,3 1/2 x 3 1/2 in", "post spacing,72 in"],
        rules: "us-dwelling-2018",
        kind: "laid-out-again",
        says: &["no gap wider than 3 3/4 in: 13 in a bay"],
        refused: &[],
    },
    WorkedCase {
        source: "a gap of 4 5/32 in down to 3 3/4 in: strips of 13/32, up to a mark 7/16",
        rows: &["height,38 in", "bottom gap,2 in", "infill,balusters", "opening,4 5/32 in", "baluster section,1 1/2 x 1 1/2 in"],
        rules: "us-dwelling-2018",
        kind: "strips",
        says: &["a strip 7/16 in thick"],
        refused: &[],
    },
    WorkedCase {
        source: "10 in below the rail: one bar of 1 1/2 leaves twice 4 1/4 and is refused; a board 10 - 1/2 - 1/4 = 9 1/4",
        rows: &["height,38 in", "opening,3 in", "infill,balusters", "bottom gap,10 in"],
        rules: "us-dwelling-2018",
        kind: "kick-board",
        says: &["a board 9 1/4 in high"],
        refused: &["second-bottom-rail"],
    },
    WorkedCase {
        source: "4 1/4 in for a 3 1/2 in ball, aimed at 3 1/4: a strip of 1 in; 3/4 would leave exactly 3 1/2",
        rows: &["height,38 in", "opening,3 in", "infill,balusters", "foothold,none", "bottom gap,4 1/4 in", "infill loose,no", "thing to climb,none"],
        rules: "small-child-advice",
        kind: "strip-under",
        says: &["a strip 1 in high"],
        refused: &[],
    },
    WorkedCase {
        source: "10 in below the rail with a small child: the one bar's top would stand at 4 1/4 + 1 1/2 = 5 3/4 in = 146 mm, a foothold",
        rows: &["height,38 in", "opening,3 in", "infill,balusters", "foothold,none", "bottom gap,10 in"],
        rules: "small-child-advice",
        kind: "kick-board",
        says: &["a board 9 1/4 in high"],
        refused: &["second-bottom-rail"],
    },
    WorkedCase {
        source: "35 5/8 in for 36 in, aimed at 36 1/4: a cap of 5/8",
        rows: &["height,35 5/8 in", "opening,3 in", "infill,balusters", "bottom gap,2 in"],
        rules: "us-dwelling-2018",
        kind: "cap",
        says: &["5/8 in thick", "36 1/4 in at its lowest"],
        refused: &[],
    },
    WorkedCase {
        source: "36 in for 42 in: a rail of 1 1/2 with its top at 42 1/4 leaves 4 3/4 and is refused; a 3 1/2 in board leaves 2 3/4",
        rows: &["use,public", "height,36 in", "opening,3 in", "infill,balusters", "bottom gap,2 in"],
        rules: "us-buildings-2024",
        kind: "board-above",
        says: &["it is 3 1/2 in wide", "its top at 42 1/4 in", "2 3/4 in stays open"],
        refused: &["rail-above"],
    },
    WorkedCase {
        source: "a step of 7 3/4 on 10 in, lift 2 in, ball 6.414: the largest lift for 6 in is 1.3705 (textbook inradius, from the rise, the going and the lift)",
        rows: &["place,stair", "risers,13", "handrail,separate", "handrail height,36 in", "height,38 in", "opening,3 in", "infill,balusters", "riser opening,none", "stair triangle,rise 7 3/4 going 10 lift 2 in"],
        rules: "us-dwelling-2018",
        kind: "strip-under-stair-rail",
        says: &["measured plumb"],
        refused: &[],
    },
    WorkedCase {
        source: "6 1/4 in between treads: a bar of 1 in leaves (6 1/4 - 1) / 2 = 2 5/8",
        rows: &["place,stair", "risers,13", "handrail,separate", "handrail height,36 in", "height,38 in", "opening,3 in", "infill,balusters", "riser opening,6 1/4 in", "stair triangle,none", "bottom gap,none"],
        rules: "us-dwelling-2018",
        kind: "riser-bar",
        says: &["2 5/8 in stay below and above"],
        refused: &[],
    },
    WorkedCase {
        source: "6 1/4 in between treads: a strip of 6 1/4 - 3 3/4 = 2 1/2 keeps the law, and dries by 0.044 (1.77 per cent, Wood Handbook table 4-3): 4 - 0.144 - 1/16 - 0.044 = 3.749, down to a mark 3 11/16",
        rows: &["place,stair", "risers,13", "handrail,separate", "handrail height,36 in", "height,38 in", "opening,3 in", "infill,balusters", "riser opening,6 1/4 in", "stair triangle,none", "bottom gap,none"],
        rules: "us-dwelling-2018",
        kind: "riser-strip",
        says: &["a strip 2 9/16 in high", "3 11/16 in or less"],
        refused: &[],
    },
    WorkedCase {
        source: "a handrail at 33 in for 34 to 38: 36 in lies in it, and in 900 to 1000 mm",
        rows: &["place,stair", "risers,9", "handrail,separate", "handrail height,33 in", "height,38 in", "opening,3 in", "infill,balusters", "riser opening,none", "stair triangle,none", "bottom gap,none"],
        rules: "us-dwelling-2018",
        kind: "move-brackets",
        says: &["stands at 36 in"],
        refused: &[],
    },
    WorkedCase {
        source: "a ledge 20 mm deep at 400 mm: a fillet of 45 degrees is steeper than 1 in 2",
        rows: &["height,1000 mm", "opening,60 mm", "infill,balusters", "bottom gap,50 mm", "foothold,400 mm high 20 mm deep", "infill loose,no", "thing to climb,none"],
        rules: "small-child-advice",
        kind: "fillet",
        says: &["45 degrees"],
        refused: &[],
    },
    WorkedCase {
        source: "a bench 5 in from a guard: moved 40 in away (common practice, no source)",
        rows: &["height,38 in", "opening,3 in", "infill,balusters", "bottom gap,2 in", "foothold,none", "infill loose,no", "thing to climb,18 in high 5 in away"],
        rules: "small-child-advice",
        kind: "move-thing",
        says: &["40 in or more"],
        refused: &[],
    },
    WorkedCase {
        source: "the last gap at a wall, 4 1/4 in, others 3: a strip of 4 1/4 - 3 3/4 = 1/2",
        rows: &["height,38 in", "opening,3 in", "infill,balusters", "bottom gap,2 in", "end gap,4 1/4 in"],
        rules: "us-dwelling-2018",
        kind: "strip-at-wall",
        says: &["1/2 in thick or more"],
        refused: &[],
    },
    WorkedCase {
        source: "a deck's open edge over 4 ft: top at 36 + 1/4, gaps of 4 - 1/4",
        rows: &["guard,none"],
        rules: "us-dwelling-2018",
        kind: "new-guard",
        says: &["top at 36 1/4 in", "no more than 3 3/4 in apart"],
        refused: &[],
    },
];

/// The readings of a case, those of a deck first where it does not say otherwise.
fn rows(case: &WorkedCase) -> Vec<&'static str> {
    let item = |row: &str| row.split(',').next().map(str::to_owned);
    let own = |row: &&&str| case.rows.iter().all(|other| item(other) != item(row));
    let deck = DECK
        .iter()
        .filter(|row| !row.starts_with("build tolerance"))
        .filter(own);
    let firm = case.rows.contains(&"guard,none");
    deck.filter(|row| !(firm && row.starts_with("moves")))
        .chain(case.rows)
        .copied()
        .collect()
}

#[test]
fn worked_cases_are_offered_with_their_numbers_and_what_breaks_is_refused() {
    for case in CASES {
        let plan = plan_of(&rows(case), case.rules);
        let steps = plan["steps"].as_array().expect("a list");
        let others = steps
            .iter()
            .flat_map(|step| step["instead"].as_array().expect("a list"));
        let all: Vec<&Value> = steps.iter().chain(others).collect();
        let of_kind: Vec<&&Value> = all.iter().filter(|one| one["kind"] == case.kind).collect();
        let says = |one: &Value| one["says"].as_str().unwrap_or("").to_owned();
        let fits = of_kind
            .iter()
            .any(|one| case.says.iter().all(|words| says(one).contains(words)));
        let told: Vec<String> = of_kind.iter().map(|one| says(one)).collect();
        assert!(
            fits,
            "{}: {} says {told:?}\n{plan:#}",
            case.source, case.kind
        );
        for kind in case.refused {
            let refused = plan["refused"].as_array().expect("a list");
            let one = refused.iter().find(|one| one["kind"] == *kind);
            let one =
                one.unwrap_or_else(|| panic!("{}: {kind} is not refused\n{plan:#}", case.source));
            assert!(
                one["breaks"]
                    .as_array()
                    .is_some_and(|breaks| !breaks.is_empty()),
                "{}",
                case.source
            );
        }
    }
}

/// 7 3/4 on 10 in, lift g: D = (R + T - √(R² + T²)) (1 + g / R) (textbook inradius, scaled
/// by the lift). What the strip leaves keeps the ball of 6 in off by the builder's doubt.
#[test]
fn the_strip_under_a_stair_rail_leaves_a_ball_that_the_formula_bounds() {
    let case = CASES
        .iter()
        .find(|case| case.kind == "strip-under-stair-rail")
        .expect("it is there");
    let plan = plan_of(&rows(case), case.rules);
    let readings = plan["steps"][0]["readings"].as_array().expect("a list");
    let stair = readings
        .iter()
        .find(|reading| reading["item"] == "stair triangle")
        .expect("a triangle");
    let written = stair["written"].as_str().expect("a text");
    let lift = written
        .split("lift ")
        .nth(1)
        .and_then(|rest| rest.split(" in").next())
        .expect("a lift");
    let lift: f64 = lift
        .split(' ')
        .map(|part| match part.split_once('/') {
            Some((over, under)) => {
                over.parse::<f64>().expect("a number") / under.parse::<f64>().expect("a number")
            }
            None => part.parse().expect("a number"),
        })
        .sum();
    let ball =
        |lift: f64| (7.75 + 10.0 - (7.75_f64 * 7.75 + 10.0 * 10.0).sqrt()) * (1.0 + lift / 7.75);
    assert!((ball(2.0) - 6.414).abs() < 5e-4, "the ball before");
    let builder = 2.0 * 0.125 / 3_f64.sqrt();
    assert!(ball(lift) < 6.0 - builder, "{written}: {}", ball(lift));
    assert!(
        ball(lift + 0.5) > 6.0 - 3.0 * builder,
        "{written}: not more than needed"
    );
}
