//! Readings at and beside published limits, judged by the shipped rulesets as exact
//! values: the reading alone, rules from memory counted too. The limits come from
//! outside, from the clause that each row names (title, edition and how it was read
//! stand beside the rule in `rulesets/`); the verdicts we worked out by hand from the
//! words of the clause, apart from the code.

mod library;

use crate::harness::check;
use crate::harness::only_guard;

/// What is given, by which clause and rule, and what must come out.
struct Row {
    clause: &'static str,
    ruleset: &'static str,
    rule: &'static str,
    given: &'static [(&'static str, &'static str)],
    expect: &'static str,
}

const fn row(
    clause: &'static str,
    ruleset: &'static str,
    rule: &'static str,
    given: &'static [(&'static str, &'static str)],
    expect: &'static str,
) -> Row {
    Row {
        clause,
        ruleset,
        rule,
        given,
        expect,
    }
}

const US: &str = "us-dwelling-2018";
const US_2000: &str = "us-dwelling-2000";
const UK: &str = "uk-approved-document-k";
const CHILD: &str = "small-child-advice";
const MEETS: &str = "meets";
const SHORT: &str = "falls short";
const NOT_HERE: &str = "does not apply";
const A_PERSON: &str = "too close to call";
const OPEN: &str = "not measured";

const LANDING: (&str, &str) = ("place", "landing");
const DECK: (&str, &str) = ("place", "deck");
const STAIR: (&str, &str) = ("place", "stair");
const HIGH: (&str, &str) = ("drop", "9 ft");
const GAP: &str = "gap-too-wide";
const STAIR_GAP: &str = "stair-gap-too-wide";
const TRIANGLE: &str = "step-triangle-too-wide";

/// Limits of the United States; verdicts worked out by ourselves.
const NORTH_AMERICA: &[Row] = &[
    row(
        "R312.1.3",
        US,
        GAP,
        &[DECK, HIGH, ("opening", "3 15/16 in")],
        MEETS,
    ),
    row(
        "R312.1.3",
        US,
        GAP,
        &[DECK, HIGH, ("opening", "4 in")],
        SHORT,
    ),
    row(
        "R312.1.3",
        US,
        GAP,
        &[DECK, HIGH, ("opening", "100 mm")],
        MEETS,
    ),
    row(
        "R312.1.3",
        US,
        GAP,
        &[DECK, HIGH, ("opening", "101.8 mm")],
        SHORT,
    ),
    row(
        "R312.1.3, exception 2",
        US,
        STAIR_GAP,
        &[STAIR, HIGH, ("opening", "4 1/4 in")],
        MEETS,
    ),
    row(
        "R312.1.3, exception 2: in mm",
        US,
        STAIR_GAP,
        &[STAIR, HIGH, ("opening", "107.95 mm")],
        MEETS,
    ),
    row(
        "R312.1.3",
        US,
        GAP,
        &[LANDING, HIGH, ("opening", "4 1/4 in")],
        SHORT,
    ),
    row(
        "R312.1.3, exception 2",
        US,
        STAIR_GAP,
        &[STAIR, HIGH, ("opening", "111 mm")],
        MEETS,
    ),
    row(
        "R312.1.3, exception 2",
        US,
        STAIR_GAP,
        &[STAIR, HIGH, ("opening", "4 3/8 in")],
        SHORT,
    ),
    row(
        "R312.1.3, exception 2",
        US,
        STAIR_GAP,
        &[STAIR, HIGH, ("opening", "111.2 mm")],
        SHORT,
    ),
    row(
        "R316.2",
        US_2000,
        STAIR_GAP,
        &[STAIR, HIGH, ("opening", "4 1/4 in")],
        SHORT,
    ),
    row(
        "R312.1.3, exception 1",
        US,
        TRIANGLE,
        &[
            STAIR,
            HIGH,
            ("stair triangle", "rise 7 3/4 going 10 lift 0 in"),
        ],
        MEETS,
    ),
    // 1 in off the nosing line square to it is 1.2652 in plumb (g = v·t/√(r²+t²))
    row(
        "R312.1.3, exception 1",
        US,
        TRIANGLE,
        &[
            STAIR,
            HIGH,
            ("stair triangle", "rise 7.75 going 10 lift 1.2652 in"),
        ],
        MEETS,
    ),
    row(
        "R312.1.3, exception 1",
        US,
        TRIANGLE,
        &[
            STAIR,
            HIGH,
            ("stair triangle", "rise 7.75 going 10 lift 1.5814 in"),
        ],
        SHORT,
    ),
    row(
        "R312.1.2",
        US,
        "rail-too-low",
        &[LANDING, HIGH, ("height", "36 in")],
        MEETS,
    ),
    row(
        "R312.1.2",
        US,
        "rail-too-low",
        &[LANDING, HIGH, ("height", "35 15/16 in")],
        SHORT,
    ),
    row(
        "R312.1.2",
        US,
        "rail-too-low",
        &[LANDING, HIGH, ("height", "914 mm")],
        SHORT,
    ),
    row(
        "R312.1.2, exception 1",
        US,
        "stair-rail-too-low",
        &[STAIR, HIGH, ("handrail", "separate"), ("height", "34 in")],
        MEETS,
    ),
    row(
        "R312.1.2, exception 1",
        US,
        "stair-rail-too-low",
        &[
            STAIR,
            HIGH,
            ("handrail", "top of the guard"),
            ("height", "39 in"),
        ],
        MEETS,
    ),
    row(
        "R312.1.2, exception 2, and R311.7.8.1",
        US,
        "guard-top-as-handrail",
        &[
            STAIR,
            HIGH,
            ("handrail", "top of the guard"),
            ("height", "39 in"),
        ],
        SHORT,
    ),
    row(
        "R312.1.1",
        US,
        "no-guard",
        &[DECK, ("drop", "30 in"), ("guard", "none")],
        NOT_HERE,
    ),
    row(
        "R312.1.1",
        US,
        "no-guard",
        &[DECK, ("drop", "30 1/16 in"), ("guard", "none")],
        SHORT,
    ),
    row(
        "R312.1.1",
        US,
        "no-guard",
        &[
            DECK,
            ("drop", "28 in"),
            ("drop", "31 in"),
            ("guard", "none"),
        ],
        SHORT,
    ),
    // a place 40 in out is no part of the drop, which is taken within 36 in of the edge
    row(
        "R312.1.1",
        US,
        "no-guard",
        &[DECK, ("drop", "28 in"), ("guard", "none")],
        NOT_HERE,
    ),
    row(
        "R311.7.8.1",
        US,
        "handrail-height",
        &[
            STAIR,
            ("handrail", "separate"),
            ("handrail height", "34 in"),
        ],
        MEETS,
    ),
    row(
        "R311.7.8.1",
        US,
        "handrail-height",
        &[
            STAIR,
            ("handrail", "separate"),
            ("handrail height", "38 in"),
        ],
        MEETS,
    ),
    row(
        "R311.7.8",
        US,
        "handrail-missing",
        &[STAIR, ("risers", "3"), ("handrail", "none")],
        NOT_HERE,
    ),
    row(
        "R311.7.8",
        US,
        "handrail-missing",
        &[STAIR, ("risers", "4"), ("handrail", "none")],
        SHORT,
    ),
    // the hole lies above the required height; the openings below it are another reading
    row(
        "R312.1.3",
        US,
        GAP,
        &[
            DECK,
            HIGH,
            ("opening", "5 in at 36 1/2 in to 41 1/2 in"),
            ("opening", "3 in at 6 in to 30 in"),
        ],
        MEETS,
    ),
    row(
        "R312.1.3: hole alone",
        US,
        GAP,
        &[DECK, HIGH, ("opening", "5 in at 36 1/2 in to 41 1/2 in")],
        OPEN,
    ),
    row(
        "R316.2",
        US_2000,
        "climbable-infill",
        &[DECK, ("drop", "3.9 m"), ("infill", "cables")],
        SHORT,
    ),
    row(
        "R312.1.3",
        US,
        GAP,
        &[DECK, HIGH, ("opening", "3 3/4 in")],
        MEETS,
    ),
    row(
        "Caring for Our Children 5.1.6.6",
        CHILD,
        "gap-too-wide",
        &[("children", "2 years"), ("opening", "3 3/4 in")],
        SHORT,
    ),
    row(
        "CPSC Pub. 325, B.2.5.1: trap",
        CHILD,
        "gap-can-hold-a-head",
        &[("opening", "3 3/4 in")],
        SHORT,
    ),
    row(
        "Caring for Our Children 5.1.6.6",
        CHILD,
        "gap-too-wide",
        &[("children", "2 years"), ("opening", "3 1/2 in")],
        SHORT,
    ),
    row(
        "Caring for Our Children 5.1.5.1",
        CHILD,
        "gap-too-wide-for-infant",
        &[("children", "12 months"), ("opening", "2 3/8 in")],
        SHORT,
    ),
    row(
        "Caring for Our Children 5.1.5.1",
        CHILD,
        "gap-too-wide-for-infant",
        &[("children", "12 months"), ("opening", "60 mm")],
        MEETS,
    ),
    row(
        "CPSC Pub. 325, B.2.5.1",
        CHILD,
        "gap-can-hold-a-head",
        &[("opening", "8.9 in")],
        SHORT,
    ),
    row(
        "CPSC Pub. 325, B.2.5.1",
        CHILD,
        "gap-can-hold-a-head",
        &[("opening", "9 in")],
        MEETS,
    ),
    row(
        "R311.7.5.1",
        US,
        "open-riser-too-wide",
        &[STAIR, ("drop", "31 in"), ("riser opening", "4 in")],
        SHORT,
    ),
    row(
        "R311.7.5.1",
        US,
        "open-riser-too-wide",
        &[STAIR, ("drop", "29 in"), ("riser opening", "4 in")],
        NOT_HERE,
    ),
    row(
        "R312.1.3",
        US,
        GAP,
        &[DECK, HIGH, ("opening", "3.5 in")],
        MEETS,
    ),
    row(
        "R312.1.3",
        US,
        GAP,
        &[DECK, HIGH, ("opening", "4.25 in")],
        SHORT,
    ),
];

const DEEP: (&str, &str) = ("drop", "2.4 m");

/// Limits of England; verdicts worked out by ourselves.
const ELSEWHERE: &[Row] = &[
    row(
        "1.41",
        UK,
        "no-guard-at-stair",
        &[STAIR, ("drop", "600 mm"), ("guard", "none")],
        NOT_HERE,
    ),
    row(
        "1.41",
        UK,
        "no-guard-at-stair",
        &[STAIR, ("drop", "601 mm"), ("guard", "none")],
        SHORT,
    ),
    row(
        "3.2a, diagram 3.1",
        UK,
        "rail-too-low",
        &[LANDING, DEEP, ("height", "900 mm")],
        MEETS,
    ),
    row(
        "3.2a, diagram 3.1",
        UK,
        "rail-too-low",
        &[LANDING, DEEP, ("height", "899 mm")],
        SHORT,
    ),
    row(
        "Diagram 3.1",
        UK,
        "outside-rail-too-low",
        &[("place", "balcony"), DEEP, ("height", "1050 mm")],
        SHORT,
    ),
    row(
        "3.3a",
        UK,
        GAP,
        &[LANDING, DEEP, ("opening", "99 mm")],
        MEETS,
    ),
    row(
        "3.3a",
        UK,
        GAP,
        &[LANDING, DEEP, ("opening", "100 mm")],
        SHORT,
    ),
    row(
        "3.3a",
        UK,
        GAP,
        &[
            LANDING,
            DEEP,
            ("infill", "horizontal bars"),
            ("opening", "80 mm"),
        ],
        MEETS,
    ),
    row(
        "3.3b",
        UK,
        "climbable-infill",
        &[
            LANDING,
            DEEP,
            ("infill", "horizontal bars"),
            ("opening", "80 mm"),
        ],
        A_PERSON,
    ),
    row(
        "1.34 to 1.36, 2.12",
        UK,
        "handrail-height",
        &[
            ("place", "ramp"),
            ("handrail", "separate"),
            ("handrail height", "1000 mm"),
        ],
        MEETS,
    ),
    row(
        "1.34 to 1.36, 2.12",
        UK,
        "handrail-height",
        &[
            ("place", "ramp"),
            ("handrail", "separate"),
            ("handrail height", "1001 mm"),
        ],
        SHORT,
    ),
    row(
        "Diagram 3.1",
        UK,
        "outside-rail-too-low",
        &[DECK, DEEP, ("height", "1000 mm")],
        SHORT,
    ),
    row("3.3a", UK, GAP, &[DECK, DEEP, ("opening", "105 mm")], SHORT),
    row(
        "3.2a, diagram 3.1",
        UK,
        "rail-too-low",
        &[STAIR, ("drop", "2600 mm"), ("height", "880 mm")],
        SHORT,
    ),
    row(
        "1.39a",
        UK,
        STAIR_GAP,
        &[STAIR, ("drop", "2600 mm"), ("opening", "95 mm")],
        MEETS,
    ),
    row(
        "1.39a",
        UK,
        TRIANGLE,
        &[
            STAIR,
            ("drop", "2600 mm"),
            ("stair triangle", "rise 180 going 280 lift 25 mm"),
        ],
        A_PERSON,
    ),
];

/// The verdict of one rule for what a row gives; for a rule on any opening that
/// of the items given.
fn verdict(row: &Row) -> String {
    judged_alone(row.clause, row.ruleset, row.rule, row.given)
}

fn judged_alone(clause: &str, ruleset: &str, rule: &str, given: &[(&str, &str)]) -> String {
    let mut survey = String::from("unit,guard,item,reading\n");
    for (item, reading) in given {
        survey.push_str(&format!("a,g,{item},{reading}\n"));
    }
    let args = [
        "--rules",
        ruleset,
        "--no-guidance",
        "--decision",
        "simple",
        "--memory",
        "decides",
    ];
    let report = check(&survey, &args).json();
    let guard = only_guard(&report);
    let findings = guard["findings"].as_array().expect("findings");
    let of_rule: Vec<&str> = findings
        .iter()
        .filter(|finding| finding["rule"] == rule)
        .map(|finding| finding["verdict"].as_str().expect("a word"))
        .collect();
    assert!(!of_rule.is_empty(), "{clause}: no finding of {rule}");
    // the first finding of a rule on any opening is that of `opening`
    of_rule[0].to_owned()
}

fn judge(rows: &[Row]) {
    let mut faults = Vec::new();
    for row in rows {
        let found = verdict(row);
        if found != row.expect {
            faults.push(format!(
                "{}: {} of {}: {found}, expected {}",
                row.clause, row.rule, row.ruleset, row.expect
            ));
        }
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

#[test]
fn worked_examples_of_north_american_rules() {
    judge(NORTH_AMERICA);
}

#[test]
fn worked_examples_of_rules_elsewhere() {
    judge(ELSEWHERE);
}

/// 3 31/32 in and the doubt of a tape of sixteenths pass 4 in.
#[test]
fn a_gap_within_the_tapes_doubt_is_too_close_to_call() {
    let survey = "unit,guard,item,reading\na,g,place,deck\na,g,drop,9 ft\na,g,opening,3 31/32 in\n";
    let report = check(survey, &["--rules", US, "--no-guidance"]).json();
    let guard = only_guard(&report);
    let gap = crate::harness::finding(guard, GAP);
    assert_eq!(gap["verdict"], A_PERSON);
    assert_eq!(gap["reading_alone"], MEETS);
}
