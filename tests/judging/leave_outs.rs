//! What a ruleset leaves out is said where it may bear on the guard at hand.

use crate::harness::check;
use crate::harness::only_guard;

const LOADS: &str = "Strength (table R301.5): the load path is followed as far as it can be seen, indicatively; a licensed engineer decides.";

/// What the report on a guard with these rows says the rulesets leave out.
fn left_out(rows: &str, rules: &[&str]) -> Vec<String> {
    let survey = format!("unit,guard,item,reading\n{rows}");
    let args: Vec<&str> = rules.iter().flat_map(|id| ["--rules", id]).collect();
    let report = check(&survey, &args).json();
    let list = only_guard(&report)["leaves_out"]
        .as_array()
        .expect("a list");
    list.iter()
        .map(|part| part.as_str().expect("text").to_owned())
        .collect()
}

#[test]
fn what_is_left_out_is_said_where_its_condition_is_not_false() {
    let deck = "a,g,place,deck\na,g,height,40 in\n";
    let glass = "Glass in guards.".to_owned();
    let cases = [
        ("a,g,infill,glass\n", Some(glass.clone())),
        ("", Some(format!("If infill is glass: {glass}"))),
        ("a,g,infill,balusters\n", None),
    ];
    for (row, expect) in cases {
        let said = left_out(&format!("{deck}{row}"), &["us-dwelling-2018"]);
        let of_glass: Vec<&String> = said.iter().filter(|part| part.contains("Glass")).collect();
        assert_eq!(of_glass, expect.iter().collect::<Vec<_>>(), "{row}");
        assert!(said.iter().any(|part| part == LOADS), "{said:?}");
        assert!(
            !said.iter().any(|part| part.contains("windows")),
            "{said:?}"
        );
    }
}

#[test]
fn what_two_rulesets_leave_out_alike_is_said_once() {
    let rows = "a,g,place,deck\na,g,infill,glass\n";
    let said = left_out(rows, &["us-dwelling-2015", "us-dwelling-2012"]);
    assert_eq!(
        said.iter()
            .filter(|part| part.starts_with("Strength"))
            .count(),
        1
    );
    // guidance is silent where law decides
    let said = left_out(rows, &["us-dwelling-2018", "small-child-advice"]);
    assert!(
        !said
            .iter()
            .any(|part| part.starts_with("Strength: whether")),
        "{said:?}"
    );
    assert!(
        left_out(rows, &["small-child-advice"])
            .iter()
            .any(|part| part.starts_with("Strength"))
    );
}

#[test]
fn a_ruleset_that_does_not_cover_the_guard_leaves_nothing_out() {
    let rows = "a,g,place,deck\na,g,use,workplace\n";
    assert!(left_out(rows, &["uk-approved-document-k"]).is_empty());
}
