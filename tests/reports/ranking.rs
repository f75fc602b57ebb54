//! The order of guards, and words that must or must not be there.

use guardrule::rules::Ruleset;
use guardrule::rules::Status;

use crate::reports::scenes::Scene;
use crate::reports::scenes::guard;
use crate::reports::scenes::house;
use crate::reports::scenes::rulesets;

const LAW: &[&str] = &["us-dwelling-2018", "small-child-advice"];

fn deck(name: &str, height: &str, moves: &str) -> guardrule::survey::Guard {
    let rows = [
        ("place", "deck", ""),
        ("use", "dwelling", ""),
        ("drop", "9 ft", ""),
        ("height", height, ""),
        ("opening", "3 in ball stops everywhere", ""),
        ("moves when pushed", moves, ""),
    ];
    guard("", name, &rows)
}

/// The order of design: no guard, urgent or moving a lot, the larger shortfall,
/// undecided, meets, does not apply.
#[test]
fn the_worst_guard_comes_first() {
    let mut guards = vec![
        deck("met", "40 in", "no"),
        deck("a little short", "35 in", "no"),
        deck("at the limit", "36 in", "no"),
        deck("far short", "30 in", "no"),
        deck("loose", "40 in", "a lot"),
    ];
    guards.extend(
        house()
            .into_iter()
            .filter(|guard| *guard.name == *"front step"),
    );
    guards.extend(
        house()
            .into_iter()
            .filter(|guard| *guard.name == *"back steps"),
    );
    let text = Scene::new(LAW, guards).text();
    let order = [
        "1. back steps (unit A)",
        "2. loose",
        "3. far short",
        "4. a little short",
        "5. at the limit",
        "6. met",
        "7. front step (unit B)",
    ];
    let found: Vec<&str> = text
        .lines()
        .filter(|line| line.starts_with(|c: char| c.is_ascii_digit()))
        .collect();
    assert_eq!(found, order);
}

#[test]
fn every_report_defers_and_none_calls_a_guard_safe() {
    let scene = Scene::new(LAW, house());
    let (json, _) = scene.json();
    for text in [scene.text(), json, scene.csv()] {
        let mut joined = text.split_whitespace().collect::<Vec<_>>().join(" ");
        // the titles of sources are other people's words
        for source in scene.rulesets.iter().flat_map(|ruleset| &ruleset.sources) {
            joined = joined.replace(&source.title, "");
        }
        assert!(joined.contains("The local authority and licensed professionals decide"));
        for (at, _) in joined.to_lowercase().match_indices("safe") {
            let before = &joined[..at];
            let said = ["no guard is called ", "on the "];
            assert!(said.iter().any(|said| before.ends_with(said)), "{before}");
        }
    }
}

/// A copy of a ruleset whose every rule is from memory.
fn from_memory(mut ruleset: Ruleset) -> Ruleset {
    for rule in &mut ruleset.rules {
        rule.status = Status::Memory;
    }
    ruleset
}

#[test]
fn a_rule_from_memory_that_is_not_met_is_unclear_and_no_shortfall() {
    let mut scene = Scene::new(&[], vec![deck("far short", "30 in", "no")]);
    let law = rulesets(&["us-dwelling-2018"]).remove(0);
    scene.rulesets = vec![from_memory(law)];
    let text = scene.text();
    assert!(text.contains("not settled"), "{text}");
    assert!(text.contains("known only from memory"), "{text}");
    assert!(!text.contains("Falls short of the law"), "{text}");
}

#[test]
fn a_guard_that_meets_says_what_the_rules_leave_out() {
    let text = Scene::new(&["us-dwelling-2018"], vec![deck("met", "40 in", "no")]).text();
    assert!(text.contains("meets the 3 rules of law checked"), "{text}");
    assert!(text.contains("What these rules leave out"));
    assert!(text.contains("Only the railing was looked at, not the platform it stands on."));
}

#[test]
fn hazards_that_no_rule_asks_about_say_so() {
    let text = Scene::new(&["us-dwelling-2018"], vec![deck("met", "40 in", "no")]).text();
    assert!(
        text.contains("climb         up, then over  no chosen rule asks"),
        "{text}"
    );
    let both = Scene::new(LAW, vec![deck("met", "40 in", "no")]).text();
    assert!(
        both.contains("climb         up, then over  no rule of law asks  guidance: not measured")
    );
}

#[test]
fn what_was_looked_at_in_part_is_said_apart() {
    let rows = [
        ("place", "deck", ""),
        ("use", "dwelling", ""),
        ("drop", "9 ft", ""),
        ("height", "40 in", ""),
        ("opening", "3 in", ""),
        ("bottom gap", "2 in", ""),
        ("openings checked", "some", ""),
    ];
    let text = Scene::new(&["us-dwelling-2018"], vec![guard("", "deck", &rows)]).text();
    assert!(
        text.contains("Met of the law, where it was looked at: opening"),
        "{text}"
    );
    assert!(text.contains("Met of the law: 2 rules (guard, height)."));
    assert!(text.contains("only some of the openings were looked at"));
    assert!(!text.contains("meets the 3 rules"));
}

/// In an edition of which one clause alone was read, a "meets" stands beside
/// what the rules from memory say.
#[test]
fn a_headline_says_how_the_rules_from_memory_come_out() {
    let survey = "unit,guard,item,reading\na,g,place,stair\na,g,drop,9 ft\n\
a,g,riser opening,3 in\na,g,opening,5 in\na,g,height,36 in\n";
    let args = [
        "check",
        "@survey.csv",
        "--rules",
        "us-dwelling-2012",
        "--no-guidance",
    ];
    let text = crate::harness::run(&[("survey.csv", survey)], &args).out;
    let text = text.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(text.contains("1. g (unit a): not settled"), "{text}");
    assert!(
        text.contains("2 rules from memory apply and only warn: met"),
        "{text}"
    );
}
