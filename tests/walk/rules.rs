//! The plain questions that find the rulesets.

use guardrule::rules;
use guardrule::rules::Ruleset;
use guardrule::walk::RulesSearch;
use guardrule::walk::RulesSought;

use crate::walk::support::refusals;

fn all() -> Vec<Ruleset> {
    rules::embedded_ids()
        .filter_map(|id| rules::load(id, &|_| None).ruleset)
        .collect()
}

fn sought(search: &RulesSearch<'_>) -> Vec<String> {
    match search.sought() {
        RulesSought::Chosen(ids) => ids.clone(),
        RulesSought::Open => panic!("still open: {:?}", search.step()),
    }
}

#[test]
fn a_house_in_florida_is_two_questions_and_one_in_wisconsin_a_choice() {
    let all = all();
    let mut search = RulesSearch::new(&all);
    assert_eq!(search.step().id(), "country");
    search.answer("Florida");
    assert_eq!(search.step().id(), "home");
    search.answer("h");
    // the code of all other buildings is not for a house
    assert_eq!(sought(&search), ["florida-dwelling-2023"]);
    let mut search = RulesSearch::new(&all);
    search.answer("Wisconsin");
    search.answer("h");
    let ask = search.step();
    assert_eq!(ask.id(), "which rules");
    assert!(
        ask.choices[0].says.starts_with("wisconsin-decks"),
        "{:?}",
        ask.choices
    );
    search.answer("");
    assert_eq!(sought(&search), ["wisconsin-decks"]);
}

#[test]
fn where_only_one_holds_nothing_more_is_asked() {
    let all = all();
    let mut search = RulesSearch::new(&all);
    search.answer("England");
    while *search.sought() == RulesSought::Open {
        let id = search.step().id();
        assert_ne!(id, "which rules");
        search.answer("house");
    }
    assert_eq!(sought(&search), ["uk-approved-document-k"]);
}

/// A slip of the pen is asked about, and Enter then means yes: never no rules at all.
#[test]
fn a_place_written_wrong_is_offered_right() {
    let all = all();
    let mut search = RulesSearch::new(&all);
    search.answer("ohoi");
    let ask = search.step();
    assert!(ask.question.contains("Was Ohio meant?"), "{}", ask.question);
    assert_eq!(ask.enter, "yes, Ohio");
    search.answer("");
    assert_eq!(search.step().id(), "home");
    search.answer("rented flat");
    assert_eq!(search.step().id(), "which rules");
    let mut other = RulesSearch::new(&all);
    other.answer("ohoi");
    other.answer("n");
    assert_eq!(other.step().enter, "advice alone, no building rules");
    other.answer("Florida");
    assert_eq!(other.step().id(), "home");
}

#[test]
fn nowhere_is_refused_and_enter_is_advice_alone() {
    let all = all();
    let mut search = RulesSearch::new(&all);
    assert_eq!(refusals(&search.answer("Atlantis")).len(), 1);
    search.answer("");
    assert!(sought(&search).is_empty());
    let mut two = RulesSearch::new(&all);
    two.answer("Wisconsin");
    assert_eq!(refusals(&two.answer("castle")).len(), 1);
    two.answer("house");
    assert_eq!(refusals(&two.answer("99")).len(), 1);
    two.answer("1 2");
    assert_eq!(sought(&two).len(), 2);
}
