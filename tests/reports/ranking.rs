//! The order of guards, and words that must or must not be there.

use guardrule::rules::Ruleset;
use guardrule::rules::Status;

use crate::harness::words;
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

/// The order of design: no guard, a danger, what is urgent, the larger shortfall,
/// undecided, meets, does not apply.
#[test]
fn the_worst_guard_comes_first() {
    let mut guards = vec![
        deck("met", "40 in", "no"),
        deck("a little short", "35 in", "no"),
        deck("at the limit", "36 in", "no"),
        deck("far short", "30 in", "no"),
        deck("loose", "40 in", "a lot"),
        guard(
            "",
            "cracked pane",
            &[
                ("place", "balcony", ""),
                ("use", "dwelling", ""),
                ("drop", "9 ft", ""),
                ("height", "40 in", ""),
                ("infill", "glass", ""),
                ("condition", "broken glass", ""),
            ],
        ),
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
        "1 A, back steps.",
        "2 loose.",
        "3 cracked pane.",
        "4 far short.",
        "5 a little short.",
        "6 at the limit.",
        "Nothing wrong found: met; B, front step.",
    ];
    let found: Vec<usize> = order
        .iter()
        .map(|name| text.find(name).unwrap_or_else(|| panic!("{name}: {text}")))
        .collect();
    assert!(found.is_sorted(), "{found:?} {text}");
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
            let said = ["no guard is called ", "othing here is called ", "on the "];
            assert!(said.iter().any(|said| before.ends_with(said)), "{before}");
        }
    }
}

/// What a block says of a hazard: those that come out alike stand together.
fn outcome<'t>(text: &'t str, hazard: &str) -> &'t str {
    let at = text
        .to_lowercase()
        .find(hazard)
        .expect("the hazard is named");
    let (_, rest) = text[at..].split_once(": ").expect("how it comes out");
    let ends = [rest.find(" ·"), rest.find('.')].into_iter().flatten();
    &rest[..ends.min().unwrap_or(rest.len())]
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
    let text = words(&scene.text());
    assert!(
        text.contains("far short: for it a rule is unclear"),
        "{text}"
    );
    assert!(text.contains("known only from memory"), "{text}");
    assert!(!text.contains("fall short of the building rules"), "{text}");
}

#[test]
fn a_guard_that_meets_says_what_the_rules_leave_out() {
    let text = Scene::new(&["us-dwelling-2018"], vec![deck("met", "40 in", "no")]).text();
    let text = words(&text);
    let meets = "Meets the 3 building rules checked; whether it would hold was not checked";
    assert!(text.contains(meets), "{text}");
    assert!(text.contains("Not asked by these rules: "));
    assert!(text.contains("Only the railing was looked at, not the platform it stands on."));
}

#[test]
fn hazards_that_no_rule_asks_about_say_so() {
    let text = words(&Scene::new(&["us-dwelling-2018"], vec![deck("short", "30 in", "no")]).text());
    assert_eq!(outcome(&text, "climbing up"), "no rule asks", "{text}");
    let both = words(&Scene::new(LAW, vec![deck("short", "30 in", "no")]).text());
    assert_eq!(outcome(&both, "climbing up"), "not looked at", "{both}");
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
    let text = words(&text);
    assert!(
        text.contains("1 of 3 building rules not finished"),
        "{text}"
    );
    assert!(
        text.contains("Did you check every opening, some, or one?"),
        "{text}"
    );
    assert!(!text.to_lowercase().contains("meets the 3"));
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
        "us-dwelling-2003",
        "--no-guidance",
    ];
    let text = crate::harness::run(&[("survey.csv", survey)], &args).out;
    let text = words(&text);
    assert!(text.contains("for it a rule is unclear"), "{text}");
    assert!(
        text.contains("2 rules known only from memory decided nothing"),
        "{text}"
    );
}
