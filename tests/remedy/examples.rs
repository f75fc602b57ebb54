//! Every rule's own examples of what falls short: something is offered for it, and holds
//! up when it is judged again, or it is known why nothing is.

use std::collections::BTreeMap;
use std::ops::ControlFlow;

use guardrule::items::Item;
use guardrule::items::Verdict;
use guardrule::judge::Options;
use guardrule::judge::judge;
use guardrule::remedy::plan;
use guardrule::rules::Example;
use guardrule::rules::Ruleset;
use guardrule::rules::embedded_ids;
use guardrule::rules::load;
use guardrule::survey::InMemory;
use guardrule::survey::Survey;
use guardrule::survey::SurveyFile;

/// Items of which some example has no remedy, and why that is right.
const WITHOUT: &[(Item, &str)] = &[];

/// The example as a survey of one guard.
fn survey(example: &Example) -> String {
    let mut text = "unit,guard,item,reading\n".to_owned();
    for (item, _, written) in &example.given {
        let written = written.replace('"', "\"\"");
        text.push_str(&format!(",g,{},\"{written}\"\n", item.name()));
    }
    text
}

/// The items of the example that have no remedy.
fn left(example: &Example, rulesets: &[Ruleset]) -> Vec<(Item, String)> {
    let text = survey(example);
    let files: Vec<Box<dyn SurveyFile>> = vec![Box::new(InMemory::new("s.csv", text.as_bytes()))];
    let survey = Survey::scan(&files).expect("it can be read");
    let mut left = Vec::new();
    survey
        .guards(&mut |guard| {
            let options = Options::default();
            let judged = judge(&guard, survey.facts(), rulesets, options);
            let plan = plan(&guard, &judged, survey.facts(), rulesets, options);
            let refused = || {
                let refused = plan.refused.iter();
                let told = refused.map(|one| format!("{} ({:?})", one.offered.says, one.breaks));
                told.collect::<Vec<_>>().join(" / ")
            };
            left.extend(
                plan.unsolved
                    .iter()
                    .map(|one| (one.topic.item, format!("{text}{}: {}", one.why, refused()))),
            );
            ControlFlow::Continue(())
        })
        .expect("it can be read");
    left
}

#[test]
fn whatever_a_rule_finds_wrong_has_a_remedy_or_a_reason_why_it_has_none() {
    let mut without: BTreeMap<&str, Vec<String>> = BTreeMap::new();
    let mut tried = 0;
    for id in embedded_ids() {
        let one = [load(id, &|_| None).ruleset.expect("it is embedded")];
        for rule in &one[0].rules {
            let short = rule
                .examples
                .iter()
                .filter(|example| example.expect == Verdict::FallsShort);
            // one of each rule; all of them by hand
            let all = std::env::var("REMEDY_EXAMPLES").is_ok();
            for example in short.take(if all { usize::MAX } else { 1 }) {
                tried += 1;
                for (item, why) in left(example, &one) {
                    let told = format!("{id} {}: {why}", rule.id);
                    without.entry(item.name()).or_default().push(told);
                }
            }
        }
    }
    let known: Vec<&str> = WITHOUT.iter().map(|(item, _)| item.name()).collect();
    without.retain(|item, _| !known.contains(item));
    assert!(tried > 300, "{tried}");
    let counts: Vec<(&str, usize)> = without
        .iter()
        .map(|(item, all)| (*item, all.len()))
        .collect();
    let first: Vec<&String> = without
        .values()
        .flat_map(|all| all.iter().take(3))
        .collect();
    assert!(without.is_empty(), "{counts:?} of {tried}\n{first:#?}");
}
