//! The shipped rulesets are complete: every rule says where it comes from, and
//! its examples straddle its limits.

use guardrule::evaluate::examples;
use guardrule::items::Verdict;
use guardrule::rules::Ruleset;
use guardrule::rules::Status;
use guardrule::rules::embedded;
use guardrule::rules::embedded_ids;
use guardrule::rules::load;
use guardrule::rules::straddle_gaps;

/// A shipped ruleset, which must have no fault at all.
fn shipped(id: &str) -> Ruleset {
    let loaded = load(id, &|name| panic!("{id} asks for {name}"));
    let faults: Vec<String> = loaded
        .diagnostics
        .iter()
        .map(super::faulty::plain)
        .collect();
    assert!(faults.is_empty(), "{}", faults.join("\n"));
    loaded.ruleset.expect("a ruleset without faults is there")
}

#[test]
fn every_shipped_ruleset_loads_without_a_word() {
    let ids: Vec<&str> = embedded_ids().collect();
    assert_eq!(
        ids,
        [
            "us-dwelling-2018",
            "us-dwelling-2000",
            "uk-approved-document-k",
            "small-child-advice"
        ]
    );
    for id in ids {
        let ruleset = shipped(id);
        assert_eq!(ruleset.id, id);
        assert_eq!(&*ruleset.file, id);
        assert!(embedded(id).is_some());
        assert!(ruleset.amendments.is_empty());
    }
    assert!(embedded("us-dwelling-1899").is_none());
}

#[test]
fn only_the_advice_is_advisory_and_only_it_names_no_years() {
    for id in embedded_ids() {
        let ruleset = shipped(id);
        let advice = id == "small-child-advice";
        assert_eq!(ruleset.advisory, advice, "{id}");
        assert_eq!(ruleset.in_force.is_none(), advice, "{id}");
    }
}

#[test]
fn every_rule_has_clause_source_and_a_sentence() {
    for id in embedded_ids() {
        let ruleset = shipped(id);
        assert!(ruleset.covers.says.len() > 20, "{id} says what it covers");
        assert!(
            !ruleset.leaves_out.is_empty(),
            "{id} says what it leaves out"
        );
        for sentence in &ruleset.leaves_out {
            assert!(sentence.ends_with('.'), "{id}: {sentence}");
        }
        for rule in &ruleset.rules {
            let name = format!("{id}: {}", rule.id);
            assert!(!rule.clause.is_empty(), "{name}: clause");
            assert!(rule.says.ends_with('.'), "{name}: {}", rule.says);
            assert!(rule.says.starts_with(char::is_uppercase), "{name}");
            let listed = ruleset.sources.contains(&rule.source);
            assert!(listed, "{name}: source {}", rule.source.key);
            assert_eq!(rule.checks.len(), 1, "{name}");
            if let Some(why) = &rule.judgement {
                assert!(why.ends_with('.'), "{name}: {why}");
            }
        }
        for caution in &ruleset.cautions {
            assert!(caution.says.ends_with('.'), "{id}: {}", caution.says);
        }
    }
}

#[test]
fn the_examples_of_every_rule_straddle_its_limits() {
    for id in embedded_ids() {
        let gaps: Vec<String> = straddle_gaps(&shipped(id))
            .into_iter()
            .map(|gap| format!("{}: {}", gap.rule, gap.says))
            .collect();
        assert!(gaps.is_empty(), "{id}:\n{}", gaps.join("\n"));
    }
}

/// Rules, and how many of them were read second-hand, are from memory, or are
/// common practice. The third figure only goes down.
#[test]
fn how_much_is_from_memory() {
    const TABLE: &[(&str, usize, usize, usize, usize)] = &[
        ("us-dwelling-2018", 10, 1, 0, 0),
        ("us-dwelling-2000", 9, 2, 6, 0),
        ("uk-approved-document-k", 16, 6, 1, 0),
        ("small-child-advice", 19, 1, 0, 9),
    ];
    for (id, rules, quoted, memory, practice) in TABLE {
        let ruleset = shipped(id);
        let count = |status| ruleset.rules.iter().filter(|r| r.status == status).count();
        assert_eq!(
            (
                ruleset.rules.len(),
                count(Status::Quoted),
                count(Status::Memory),
                count(Status::Practice)
            ),
            (*rules, *quoted, *memory, *practice),
            "{id}"
        );
    }
}

/// A rule that leaves the decision to a person never says "falls short".
#[test]
fn a_rule_for_a_person_to_decide_has_no_example_that_falls_short() {
    for id in embedded_ids() {
        for rule in shipped(id).rules {
            let short = rule
                .examples
                .iter()
                .any(|e| e.expect == Verdict::FallsShort);
            let close = rule.examples.iter().any(|e| e.expect == Verdict::TooClose);
            assert_eq!(rule.judgement.is_some(), close, "{id}: {}", rule.id);
            assert!(!(close && short), "{id}: {}", rule.id);
        }
    }
}

#[test]
fn every_example_comes_out_as_it_says() {
    for id in embedded_ids() {
        let ruleset = shipped(id);
        let tested = examples::test(&ruleset);
        let failed: Vec<String> = tested
            .failed
            .iter()
            .map(|failed| {
                let (line, found) = (failed.example.at.line(), failed.found);
                format!("{id}:{line}: {}: {found}", failed.rule.id)
            })
            .collect();
        assert!(failed.is_empty(), "{}", failed.join("\n"));
        let written: usize = ruleset.rules.iter().map(|rule| rule.examples.len()).sum();
        assert_eq!(tested.count, written, "{id}");
    }
}
