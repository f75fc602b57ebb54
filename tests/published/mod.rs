//! Limits and decided cases from outside, each with its source, judged by the shipped
//! rulesets as exact values: the reading alone, rules from memory counted too.

mod decided;
mod elsewhere;
mod limits;
mod neighbours;
mod north_america;
mod railings;

use crate::harness::check;
use crate::harness::only_guard;

/// `place=deck; drop=2.4 m` as readings.
fn readings(text: &str) -> Vec<(&str, &str)> {
    text.split("; ")
        .map(|reading| reading.split_once('=').expect("item=reading"))
        .collect()
}

/// The verdict of one rule for what is given.
fn judged_alone(source: &str, ruleset: &str, rule: &str, given: &[(&str, &str)]) -> String {
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
    assert!(!of_rule.is_empty(), "{source}: no finding of {rule}");
    // the first finding of a rule on any opening is that of `opening`
    of_rule[0].to_owned()
}

/// Judges a table whose rows have their own readings, or all the same ones.
fn judge(table: &str, same: Option<&str>) {
    let mut faults = Vec::new();
    let mut count = 0;
    for line in table.trim().lines() {
        let cells: Vec<&str> = line.split(" | ").collect();
        let (source, ruleset, rule, given, expect) = match (cells.as_slice(), same) {
            ([source, ruleset, rule, given, expect], None) => {
                (source, ruleset, rule, *given, expect)
            }
            ([source, ruleset, rule, expect], Some(same)) => (source, ruleset, rule, same, expect),
            _ => panic!("a row of another form: {line}"),
        };
        let found = judged_alone(source, ruleset, rule, &readings(given));
        count += 1;
        if found != *expect {
            faults.push(format!(
                "{source}: {rule} of {ruleset}: {given}: {found}, expected {expect}"
            ));
        }
    }
    assert!(count > 5, "{count} rows");
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

/// 3 31/32 in is too close to 4 in with a tape read to 1/16 in.
#[test]
fn a_gap_within_the_tapes_doubt_is_too_close_to_call() {
    let survey = "unit,guard,item,reading\na,g,place,deck\na,g,drop,9 ft\na,g,opening,3 31/32 in\n";
    let report = check(survey, &["--rules", "us-dwelling-2018", "--no-guidance"]).json();
    let guard = only_guard(&report);
    let gap = crate::harness::finding(guard, "gap-too-wide");
    assert_eq!(gap["verdict"], "too close to call");
    assert_eq!(gap["reading_alone"], "meets");
}
