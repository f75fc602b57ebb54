//! Surveys that people and a judge of another hand found a wrong word in, as far as no
//! other test is named for them.

use crate::harness::Ran;
use crate::harness::finding;
use crate::harness::only_guard;
use crate::harness::run;

fn checked(rules: (&str, &str), rows: &[&str], format: &str) -> Ran {
    let mut survey =
        "guard,item,reading\ng,place,landing\ng,drop,9 ft\ng,bottom gap,none\n".to_owned();
    for row in rows {
        survey.push_str(&format!("g,{row}\n"));
    }
    let (name, text) = rules;
    let file = format!("@{name}");
    let chosen = if text.is_empty() { name } else { file.as_str() };
    let args = [
        "check",
        "@s.csv",
        "--rules",
        chosen,
        "--no-guidance",
        "--format",
        format,
    ];
    run(&[("s.csv", &survey), (name, text)], &args)
}

const LAW: (&str, &str) = ("us-dwelling-2018", "");

#[test]
fn a_source_without_an_edition_lets_nothing_meet() {
    let town = |edition: &str| {
        format!(
            "id = \"town\"\ntitle = \"T\"\nedition = \"E\"\nextends = \"us-dwelling-2018\"\n\
             [source.s]\ntitle = \"T\"\n{edition}status = \"published\"\n\
             [[rule]]\nid = \"rail-too-low\"\nhazard = \"fall over\"\nclause = \"1\"\n\
             check.height.at-least = \"42 in\"\nsays = \"A guard is 42 in high.\"\nsource = \"s\"\n"
        )
    };
    let of = |edition: &str, height: &str| {
        let town = town(edition);
        let rows = ["opening,3 in", height];
        let ran = checked(("town.toml", &town), &rows, "json");
        let report = ran.json();
        let verdict = only_guard(&report)["verdict"].as_str();
        (verdict.expect("a word").to_owned(), ran.code)
    };
    let right = "edition = \"E\"\n";
    assert_eq!(of(right, "height,45 in"), ("meets".to_owned(), 0));
    assert_eq!(of("", "height,45 in"), ("not settled".to_owned(), 2));
    assert_eq!(of("", "height,20 in"), ("falls short".to_owned(), 2));
}

#[test]
fn a_rule_taken_away_ends_with_no_good_status() {
    let town = "id = \"town\"\ntitle = \"T\"\nedition = \"E\"\nextends = \"us-dwelling-2018\"\n\
                remove = [\"gap-too-wide\"]\n";
    let rows = ["height,42 in", "opening,9 in"];
    assert_ne!(checked(("town.toml", town), &rows, "json").code, 0);
}

#[test]
fn which_of_several_bounds_is_printed_does_not_depend_on_the_order_of_rows() {
    let bounds = [
        "opening,under 3 in",
        "opening,under 6 in",
        "opening,4 in ball stops at 6 in",
        "opening,6 in ball stops at 30 in",
        "opening,5 in ball stops",
    ];
    let printed = |rows: &[&str]| {
        let mut all = vec!["height,42 in"];
        all.extend(rows);
        let report = checked(LAW, &all, "json").json();
        let gap = finding(only_guard(&report), "gap-too-wide");
        (
            gap["verdict"].clone(),
            gap["measured"].clone(),
            gap["limit"].clone(),
        )
    };
    let first = printed(&bounds);
    assert!(first.1["written"].is_string(), "{first:?}");
    for turned in 1..bounds.len() {
        let mut rows = bounds;
        rows.rotate_left(turned);
        assert_eq!(printed(&rows), first, "{rows:?}");
        rows.reverse();
        assert_eq!(printed(&rows), first, "{rows:?}");
    }
}

#[test]
fn what_is_offered_for_a_word_records_nothing_else() {
    // most bars of homes stand upright: which ones is asked, and none is taken
    let bars = checked(
        LAW,
        &["height,42 in", "opening,3 in", "infill,metal bars"],
        "json",
    );
    assert_eq!(bars.code, 2);
    assert_ne!(only_guard(&bars.json())["verdict"], "meets");
    assert!(!bars.err.contains("write horizontal bars"), "{}", bars.err);
    // these are items of their own, and say nothing of a height
    for row in ["guard length,45 in", "latch height,45 in"] {
        let ran = checked(LAW, &["opening,3 in", row], "json");
        let report = ran.json();
        let height = finding(only_guard(&report), "rail-too-low");
        assert_eq!(height["verdict"], "not measured", "{row}: {}", ran.err);
    }
}

#[test]
fn what_would_put_it_right_stands_in_json_and_in_each_row_of_csv() {
    let rows = ["height,30 in", "opening,3 in"];
    let report = checked(LAW, &rows, "json").json();
    let remedy = &finding(only_guard(&report), "rail-too-low")["remedy"];
    let says = remedy["says"].as_str().expect("a sentence");
    assert!(!says.is_empty());
    let csv = checked(LAW, &rows, "csv").out;
    let mut reader = csv.lines();
    let head: Vec<&str> = reader.next().expect("a heading").split(',').collect();
    assert!(head.contains(&"remedy"), "{head:?}");
    let short = csv.lines().find(|row| row.contains("rail-too-low"));
    let words = says.split([',', ';', '"']).next().expect("some words");
    assert!(
        short.expect("a row").contains(words.trim()),
        "{says}\n{csv}"
    );
}
