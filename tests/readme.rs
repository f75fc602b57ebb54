//! What the README shows is what the program does.

use std::fs;
use std::path::Path;

use crate::harness::run;
use crate::harness::run_here;
use crate::harness::undated;

fn readme() -> String {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("README.md");
    fs::read_to_string(path).expect("the README is there")
}

/// The fenced block below a marker line.
fn block<'a>(readme: &'a str, marker: &str) -> &'a str {
    let after = readme.split(marker).nth(1).expect("the marker is there");
    let inside = after.split("```").nth(1).expect("a fenced block");
    inside.split_once('\n').expect("a first line").1
}

#[test]
fn the_worked_example_is_what_the_program_prints() {
    let readme = readme();
    let survey = block(&readme, "<!-- file: porch.csv -->\n");
    let shown = block(&readme, "<!-- the output begins so -->\n");
    let (command, output) = shown.split_once('\n').expect("a command and its output");
    let args: Vec<&str> = command
        .strip_prefix("$ guardrule ")
        .expect("a command")
        .split(' ')
        .map(|arg| {
            if arg == "porch.csv" {
                "@porch.csv"
            } else {
                arg
            }
        })
        .collect();
    let ran = run(&[("porch.csv", survey)], &args);
    assert_eq!(ran.err, "");
    let (found, shown) = (undated(&ran.out), undated(output.trim_end()));
    let beginning: Vec<&str> = found.lines().take(shown.lines().count()).collect();
    assert!(shown.lines().count() > 30, "{shown}");
    assert_eq!(beginning.join("\n"), shown);
    assert_eq!(ran.code, 1);
}

/// The guide's amendment has examples for every limit, and does what it says.
#[test]
fn the_guides_amendment_raises_guards_to_41_in() {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("rulesets/README.md");
    let guide = fs::read_to_string(path).expect("the guide is there");
    let amendment = block(&guide, "<!-- file: higher-guards.toml -->\n");
    let files = [
        ("higher-guards.toml", amendment),
        (
            "deck.csv",
            "unit,guard,item,reading\n,deck,place,deck\n,deck,drop,6 ft 5 in\n,deck,height,38 in\n",
        ),
    ];
    let ran = run(&files, &["rules", "test", "@higher-guards.toml"]);
    assert_eq!(ran.err, "");
    assert_eq!(ran.code, 0, "{}", ran.out);
    let mut lows = Vec::new();
    for rules in ["us-dwelling-2018", "@higher-guards.toml"] {
        let args = ["check", "@deck.csv", "--no-guidance", "--rules", rules];
        let ran = run(&files, &args);
        lows.push(ran.out.contains("41 in or more: 3 in too low"));
    }
    assert_eq!(lows, [false, true]);
}

#[test]
fn every_ruleset_is_named() {
    let table = include_str!("../rulesets/README.md");
    for id in guardrule::rules::embedded_ids() {
        assert!(table.contains(&format!("| `{id}` |")), "{id}");
    }
    let readme = readme();
    let named = readme
        .split('`')
        .filter(|word| word.starts_with("us-") || word.starts_with("uk-"));
    for id in named {
        assert!(guardrule::rules::embedded(id).is_some(), "{id}");
    }
}

#[test]
fn the_first_command_runs_the_main_job() {
    assert!(readme().contains("cargo run --release -- check demo-surveys/family-house.csv"));
    let ran = run_here(&["check", "@demo-surveys/family-house.csv"]);
    assert_eq!(ran.code, 1);
    assert_eq!(ran.err, "");
}
