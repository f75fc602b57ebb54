//! The load path: one test for each thing that it promises, a whole chain worked
//! by hand, published tests of guard posts beside what is predicted for them, and
//! what must hold whatever is written.

use serde_json::Value;

use crate::harness::check;
use crate::harness::finding;
use crate::harness::only_guard;
use crate::harness::run;

pub(super) const LAW: &[&str] = &["--rules", "us-dwelling-2018", "--no-guidance"];

/// A guard that meets every rule but for what the rows say of its strength.
pub(super) fn guard(rows: &[(&str, &str)]) -> String {
    let mut text = "unit,guard,item,reading\n\
         ,,use,dwelling\n,,dwellings in building,1\n\
         a,g,place,deck\na,g,drop,9 ft\na,g,opening,3 in\n\
         a,g,bottom gap,2 in\n"
        .to_owned();
    for (item, reading) in rows {
        text.push_str(&format!("a,g,{item},{reading}\n"));
    }
    text
}

pub(super) fn load_finding(rows: &[(&str, &str)]) -> Value {
    of_ruleset(rows, "us-dwelling-2018")
}

/// A report in this form.
pub(super) fn report(rows: &[(&str, &str)], form: &str, more: &[&str]) -> String {
    let survey = guard(rows);
    let mut args = vec![
        "check",
        "@survey.csv",
        "--rules",
        "us-dwelling-2018",
        "--no-guidance",
    ];
    args.extend(["--format", form]);
    args.extend(more);
    run(&[("survey.csv", &survey)], &args).out
}

fn of_ruleset(rows: &[(&str, &str)], ruleset: &str) -> Value {
    let report = check(&guard(rows), &["--rules", ruleset, "--no-guidance"]).json();
    let id = if ruleset == "uk-approved-document-k" {
        "guard-load-outside"
    } else {
        "guard-load"
    };
    finding(only_guard(&report), id).clone()
}

pub(super) fn link<'f>(finding: &'f Value, kind: &str, case: &str) -> &'f Value {
    let links = finding["links"].as_array().expect("links");
    let found = links.iter().find(|link| {
        link["link"] == kind && link["case"].as_str().is_some_and(|of| of.contains(case))
    });
    found.unwrap_or_else(|| panic!("no {kind} ({case}) in {links:#?}"))
}

/// A ratio of demand to capacity, at the end that is named.
pub(super) fn ratio(link: &Value, end: &str) -> f64 {
    link["ratio"][end]
        .as_f64()
        .unwrap_or_else(|| panic!("{link:#?}"))
}

pub(super) fn near(found: f64, printed: f64, what: &str) {
    // printed to three figures or more
    assert!(
        (found / printed - 1.0).abs() < 6e-3,
        "{what}: {found}, printed {printed}"
    );
}

/// Worked by hand with NDS 2018 values: 36 in guard outdoors, Southern Pine No. 2,
/// two 1/2 in bolts 2 and 7 in down outside a 2x10 rim that is nailed into the joist
/// ends, 1 in decking: a = 39 in.
pub(super) const WORKED: &[(&str, &str)] = &[
    ("height", "36 in"),
    ("location", "outside"),
    ("condition", "sound"),
    ("moves when pushed", "no"),
    ("post material", "wood"),
    ("wood species", "southern pine"),
    ("framing species", "southern pine"),
    ("lumber grade", "no. 2"),
    ("rows of slits", "no"),
    ("post section", "4x4"),
    ("notched post", "no"),
    ("post spacing", "6 ft"),
    ("post fastening", "through bolts"),
    ("post position", "outside the rim"),
    ("behind the post", "nothing"),
    ("post fasteners", "2 x 1/2 in"),
    ("fastener spacing", "5 in"),
    ("fastener depth", "2 in"),
    ("rim depth", "9 1/4 in"),
    ("framing thickness", "1 1/2 in"),
    ("decking thickness", "1 in"),
    ("washer size", "1 3/8 in"),
    ("fastened to", "rim board"),
    ("framing held by", "nails into end grain"),
    ("rail section", "3 1/2 x 1 1/2 in"),
    ("lower rail section", "none"),
    ("infill", "balusters"),
    ("baluster section", "2x2"),
    ("baluster spacing", "4 3/4 in"),
    ("baluster length", "32 in"),
];

/// The rows with some of them replaced or added; an empty reading takes one out.
pub(super) fn but<'r>(
    rows: &[(&'r str, &'r str)],
    changed: &[(&'r str, &'r str)],
) -> Vec<(&'r str, &'r str)> {
    let mut rows = rows.to_vec();
    rows.retain(|(item, _)| !changed.iter().any(|(other, _)| other == item));
    rows.extend(changed.iter().filter(|(_, reading)| !reading.is_empty()));
    rows
}

#[test]
fn a_whole_chain_comes_out_as_worked_by_hand() {
    let found = load_finding(WORKED);
    // kind, case, load in N or N·m of pounds and lb·in, ratio high, low, verdict
    let (pound, pound_inch) = (4.448_221_615_260_5, 0.112_984_829_0);
    let rows = [
        (
            "infill",
            "baluster",
            128.65 * pound_inch,
            0.208,
            0.130,
            "meets",
        ),
        (
            "top rail",
            "down",
            3600.0 * pound_inch,
            2.267,
            1.417,
            "falls short",
        ),
        (
            "top rail",
            "level",
            3600.0 * pound_inch,
            1.069,
            0.668,
            "too close to call",
        ),
        (
            "post",
            "bending",
            7800.0 * pound_inch,
            1.1823,
            0.7390,
            "too close to call",
        ),
        (
            "post",
            "shear",
            1560.0 * pound,
            1.341,
            0.561,
            "too close to call",
        ),
        (
            "post fixing",
            "steel",
            1760.0 * pound,
            0.398,
            0.289,
            "meets",
        ),
        (
            "post fixing",
            "washer",
            1760.0 * pound,
            2.955,
            1.435,
            "not measured",
        ),
        // 399.578 lb each by Table 12.3.1A, and the two in a row 0.994 of that
        (
            "post fixing",
            "down",
            100.0 * pound,
            0.3597,
            0.1573,
            "meets",
        ),
    ];
    for (kind, case, load, high, low, verdict) in rows {
        let link = link(&found, kind, case);
        let what = format!("{kind} ({case})");
        near(link["demand"]["high"].as_f64().unwrap(), load, &what);
        near(ratio(link, "high"), high, &what);
        near(ratio(link, "low"), low, &what);
        assert_eq!(link["verdict"], verdict, "{what}");
    }
    let rim = link(&found, "what holds the framing", "joists");
    near(
        rim["demand"]["high"].as_f64().unwrap(),
        1760.0 * pound,
        "rim",
    );
    assert_eq!(rim["by_rule"], true);
    assert_eq!(rim["weakest"], false, "what is ruled out is not ranked");
    assert_eq!(link(&found, "top rail", "down")["weakest"], true);
    assert_eq!(found["verdict"], "falls short");
}

/// A tie of 1 825 lb by its label: 1 825/1.6·0.7 in wet wood to 1 825 lb.
#[test]
fn a_tie_is_worth_its_label_at_best() {
    let tied = [
        ("framing held by", "tie at the upper bolt"),
        ("tie label", "1825 lbf"),
    ];
    let found = load_finding(&but(WORKED, &tied));
    let tie = link(&found, "what holds the framing", "joists");
    near(ratio(tie, "high"), 2.204, "wet");
    near(ratio(tie, "low"), 0.699, "edge pivot");
    assert_eq!(tie["verdict"], "too close to call");
    // inside the rim it is the same pull at the same place
    let mut inside = tied.to_vec();
    inside.push(("post position", "inside the rim"));
    let found = load_finding(&but(WORKED, &inside));
    near(
        ratio(link(&found, "what holds the framing", "joists"), "high"),
        2.204,
        "inside",
    );
    // a tie at the lower bolt never holds a push outward
    let lower = [
        ("framing held by", "tie at the lower bolt"),
        ("tie label", "9000 lbf"),
    ];
    let found = load_finding(&but(WORKED, &lower));
    assert_eq!(
        link(&found, "what holds the framing", "joists")["by_rule"],
        true
    );
}

#[test]
fn best_and_worst_plausible_values_make_a_range_and_the_verdict_follows_it() {
    let mut rows = WORKED.to_vec();
    rows.retain(|(item, _)| *item != "wood species");
    let found = load_finding(&rows);
    let post = link(&found, "post", "bending");
    assert!(ratio(post, "high") > ratio(post, "low") * 1.6);
    let (low, high) = (ratio(post, "low"), ratio(post, "high"));
    let expected = match (low > 1.0, high <= 1.0) {
        (true, _) => "falls short",
        (_, true) => "meets",
        (false, false) => "too close to call",
    };
    assert_eq!(post["verdict"], expected, "{low} to {high}");
}

#[test]
fn the_weakest_is_found_so_far_where_a_link_is_hidden() {
    let mut rows = WORKED.to_vec();
    rows.retain(|(item, _)| *item != "framing held by");
    rows.push(("framing held by", "hidden"));
    let out = report(&rows, "text", &["--full"]);
    assert!(
        out.contains("Weakest link found so far: top rail"),
        "{}",
        out
    );
}

#[test]
fn both_ends_of_load_duration_and_moisture_are_computed_and_said() {
    let found = load_finding(WORKED);
    let bolts = link(&found, "post fixing", "down");
    // dry and ten minutes over wet and ten years: 1.6 / 0.7
    near(
        ratio(bolts, "high") / ratio(bolts, "low"),
        1.6 / 0.7,
        "both ends",
    );
    let taken = bolts["taken"].to_string();
    assert!(
        taken.contains("C_D 1.0 and 1.6") && taken.contains("both dry and wet"),
        "{taken}"
    );
}

#[test]
fn the_lever_arm_runs_to_the_resisting_fastener() {
    let mut rows = WORKED.to_vec();
    let short = load_finding(&rows);
    rows.retain(|(item, _)| *item != "fastener depth");
    rows.push(("fastener depth", "4 in"));
    let long = load_finding(&rows);
    let pull = |found: &Value| {
        link(found, "post fixing", "steel")["demand"]["high"]
            .as_f64()
            .unwrap()
    };
    // T = 200·(a + 5)/5 with a = 39 and 41 in
    near(pull(&long) / pull(&short), 46.0 / 44.0, "T");
}

#[test]
fn characteristic_loads_are_never_compared_with_allowable_capacities() {
    let found = of_ruleset(WORKED, "uk-approved-document-k");
    for link in found["links"].as_array().unwrap() {
        assert_eq!(link["capacity"], Value::Null, "{link:#?}");
        assert_eq!(link["ratio"], Value::Null);
        let by_rule = link["by_rule"] == true;
        assert_eq!(
            link["verdict"],
            if by_rule {
                "falls short"
            } else {
                "not measured"
            }
        );
    }
    // 0.74 kN/m on 6 ft at 39 in, the upper bolt
    let post = link(&found, "post", "bending");
    near(
        post["demand"]["high"].as_f64().unwrap(),
        740.0 * 1.8288 * 0.9906,
        "demand",
    );
}

#[test]
fn a_guard_can_fall_short_by_its_load_path_and_never_meet_by_it() {
    let short = check(
        &guard(&[("height", "36 1/2 in"), ("fastened to", "drywall only")]),
        LAW,
    )
    .json();
    assert_eq!(only_guard(&short)["verdict"], "falls short");
    let open = check(
        &guard(&[("height", "36 1/2 in"), ("fastened to", "joist")]),
        LAW,
    )
    .json();
    assert_eq!(
        finding(only_guard(&open), "guard-load")["verdict"],
        "not measured"
    );
    assert_eq!(finding(only_guard(&open), "guard-load")["indicative"], true);
    assert_eq!(
        only_guard(&open)["verdict"],
        "meets",
        "the other rules alone decide"
    );
    let out = report(&[("height", "36 1/2 in")], "text", &[]);
    let out = out.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(
        out.contains("whether it would hold was not checked"),
        "{}",
        out
    );
}

#[test]
fn what_is_ruled_out_falls_short_by_rule_with_its_reason() {
    for (item, reading, kind) in [
        ("fastened to", "drywall only", "framing"),
        ("fastened to", "subfloor", "framing"),
        ("post fastening", "nails", "post fixing"),
        ("rail end fastening", "hollow-wall anchor", "rail end"),
        ("rail end fastening", "nails", "rail end"),
        ("notched post", "yes", "post"),
        ("condition", "rot", "post"),
    ] {
        let found = load_finding(&[("height", "36 in"), (item, reading)]);
        let link = link(&found, kind, "");
        assert_eq!(link["by_rule"], true, "{item} {reading}: {found:#?}");
        let reason = link["reason"].as_str().unwrap();
        assert!(reason.len() > 40 && reason.contains('('), "{reason}");
        assert_eq!(found["verdict"], "falls short");
    }
    for (item, reading) in [("post fastening", "hidden"), ("fastened to", "hidden")] {
        let rows = [
            ("height", "36 in"),
            ("post section", "4x4"),
            (item, reading),
        ];
        assert_eq!(
            load_finding(&rows)["verdict"],
            "not measured",
            "{item} {reading}"
        );
    }
}

/// Worked by hand: four screws in a subfloor alone carry 27.8 of
/// 200 lb at most: ratio 7.2 with G 0.42 and C_D 1.6, 5.1 with G 0.50.
#[test]
fn a_plate_on_a_subfloor_falls_short_as_computed() {
    let found = load_finding(&[
        ("height", "36 in"),
        ("location", "inside"),
        ("post fastening", "plate"),
        ("post fasteners", "4 x No. 14 x 2 in"),
        ("fastener spacing", "3 in"),
        ("edge distance", "1/2 in"),
        ("fastened to", "subfloor"),
        ("wood species", "douglas fir-larch"),
        ("post section", "4x4"),
    ]);
    let plate = link(&found, "post fixing", "plate");
    near(
        plate["demand"]["low"].as_f64().unwrap(),
        1008.0 * 4.448_221_6,
        "T",
    );
    // a plate that bends presses at the post's face, 1/4 in further in:
    // 7200·3.25/(2·(3.25² + 0.25²)) = 1101.2 lb
    near(ratio(plate, "high"), 1101.2 / 87.445, "G 0.42, C_D 1.0");
    near(
        ratio(plate, "low"),
        1008.0 / (87.445 * 1.6 * 0.25 / 0.1764),
        "G 0.50, C_D 1.6",
    );
}

/// Worked by hand: 0.21 in at 10 lb, 0.72 in at 50 lb, 42 in:
/// 2.6325 in at 200 lb against 3.5 in; the ruler's 1/16 in makes a range of it.
#[test]
fn a_pull_test_gives_a_stiffness_and_no_strength() {
    let rows = [
        ("height", "42 in"),
        ("pull test", "10 lbf 0.21 in"),
        ("pull test", "50 lbf 0.72 in"),
    ];
    let found = load_finding(&rows);
    let link = link(&found, "stiffness in the pull test", "");
    let mm = |end: &str| link["demand"][end].as_f64().unwrap() / 25.4;
    assert!(mm("low") < 2.6325 && 2.6325 < mm("high"), "{link:#?}");
    near(
        link["capacity"]["high"].as_f64().unwrap() / 25.4,
        3.5,
        "h/12",
    );
    assert_eq!(link["verdict"], "meets");
    assert_eq!(
        found["verdict"], "not measured",
        "a stiffness is no strength"
    );
    // the post that failed at 237 lb moved 1.1 in at 50 lb
    let rows = [("height", "36 in"), ("pull test", "50 lbf 1.1 in")];
    assert_eq!(load_finding(&rows)["verdict"], "falls short");
}

#[test]
fn nobody_asks_for_a_pull_test_and_its_cautions_stand_where_there_is_one() {
    let asked = check(&guard(&[("height", "42 in"), ("post section", "4x4")]), LAW).json();
    let asked = only_guard(&asked);
    assert!(!asked["questions"].to_string().contains("pull test"));
    assert!(!asked["cautions"].to_string().contains("pull test"));
    let pulled = check(
        &guard(&[("height", "42 in"), ("pull test", "50 lbf 1/2 in")]),
        LAW,
    )
    .json();
    assert!(
        only_guard(&pulled)["cautions"]
            .to_string()
            .contains("Before anybody pulls again")
    );
}

#[test]
fn questions_of_strength_come_last_and_none_where_nothing_is_written() {
    let silent = check(&guard(&[]), LAW).json();
    let items = |report: &Value| -> Vec<String> {
        let questions = only_guard(report)["questions"].as_array().unwrap().clone();
        questions
            .iter()
            .map(|q| q["item"].as_str().unwrap().to_owned())
            .collect()
    };
    assert_eq!(items(&silent), ["height"]);
    let some = check(&guard(&[("fastened to", "joist")]), LAW).json();
    let items = items(&some);
    assert_eq!(items[0], "height");
    assert!(
        items.len() > 3 && items[1..].contains(&"framing held by".to_owned()),
        "{items:?}"
    );
}

#[test]
fn every_answer_about_strength_says_that_an_engineer_decides() {
    for form in ["text", "json", "csv"] {
        let out = report(WORKED, form, &[]);
        let text = out.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(text.contains("licensed engineer decides"), "{form}");
        for (at, _) in text.match_indices("safe") {
            let before = &text[text.floor_char_boundary(at.saturating_sub(40))..at];
            let fine = before.ends_with("does not say that it is ")
                || before.ends_with("no guard is called ")
                || before.ends_with("Nothing here is called ");
            assert!(fine, "{form}: …{before}safe");
        }
    }
}

#[test]
fn the_calculation_stands_line_by_line() {
    let out = report(WORKED, "text", &["--explain"]);
    let text = out.split_whitespace().collect::<Vec<_>>().join(" ");
    for line in [
        "a = h + t_deck + y_fastener = 36 in + 1 in + 2 in = 39 in",
        "T = F·(a + d)/d = 200 lb·(39 in + 5 in)/5 in = 1760 lb",
        "A_net = π/4·(OD² - hole²)",
        "[NDS 2018 §3.10.2",
    ] {
        assert!(text.contains(line), "{line}\n{text}");
    }
}

/// The demo survey's report, read as a layman and as an engineer before it was
/// accepted.
#[test]
fn the_demo_survey_of_the_load_path() {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/demo-surveys/load-path.csv");
    let survey = std::fs::read_to_string(path).expect("the demo survey is there");
    let args = ["check", "@load-path.csv", "--no-guidance"];
    let ran = run(&[("load-path.csv", &survey)], &args);
    assert_eq!((ran.code, ran.err.as_str()), (1, ""));
    // the day of the report, and where the survey lay
    let today = ran.out.split("report of").nth(1).expect("a date");
    let today = today.split_whitespace().next().expect("a date");
    let dated = ran.out.replace(today, "YYYY-MM-DD");
    let text: Vec<&str> = dated
        .lines()
        .take_while(|line| !line.starts_with("FOR ALL"))
        .collect();
    insta::assert_snapshot!(text.join("\n"));
}
