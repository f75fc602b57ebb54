//! The worked examples of a ruleset, judged as exact values without doubt.

use std::sync::Arc;

use crate::evaluate::condition::Truth;
use crate::evaluate::condition::holds;
use crate::evaluate::rule::Bench;
use crate::evaluate::rule::Decides;
use crate::evaluate::rule::InForceThen;
use crate::evaluate::rule::findings;
use crate::evaluate::scene::Scene;
use crate::items::Verdict;
use crate::rules::Example;
use crate::rules::Rule;
use crate::rules::Ruleset;
use crate::survey::Guard;
use crate::survey::Inherited;
use crate::survey::Observation;
use crate::survey::Row;
use crate::survey::SurveyFacts;

/// An example that does not come out as it says.
#[derive(Clone, Debug)]
pub struct Failed<'r> {
    /// The rule.
    pub rule: &'r Rule,
    /// The example.
    pub example: &'r Example,
    /// What came out instead.
    pub found: Verdict,
}

/// How many examples a ruleset has, and which of them fail.
#[derive(Clone, Debug)]
pub struct Tested<'r> {
    /// How many were judged.
    pub count: usize,
    /// Those that fail.
    pub failed: Vec<Failed<'r>>,
}

/// Judges every example of a ruleset by its own rule.
#[must_use]
pub fn test(ruleset: &Ruleset) -> Tested<'_> {
    let mut tested = Tested {
        count: 0,
        failed: Vec::new(),
    };
    for rule in &ruleset.rules {
        for example in &rule.examples {
            tested.count += 1;
            let found = judge_example(ruleset, rule, example);
            if found != example.expect {
                tested.failed.push(Failed {
                    rule,
                    example,
                    found,
                });
            }
        }
    }
    tested
}

/// The verdict of one example.
#[must_use]
pub fn judge_example(ruleset: &Ruleset, rule: &Rule, example: &Example) -> Verdict {
    let guard = given(example);
    let facts = SurveyFacts::default();
    let scene = Scene::exact(&guard, &facts);
    let mut covers = ruleset.covers.conditions.iter();
    let decision = scene.options.decision;
    if covers.any(|condition| holds(&scene, condition, decision) == Truth::False) {
        return Verdict::NotMeasured;
    }
    let bench = Bench {
        ruleset,
        not_covered: None,
        decides: Decides::Yes,
        in_force: InForceThen::Perhaps,
    };
    let mut found = Vec::new();
    findings(&scene, &bench, &mut found);
    found
        .iter()
        .filter(|finding| finding.rule.id == rule.id)
        .map(|finding| finding.counts_as())
        .min()
        .unwrap_or(Verdict::NotMeasured)
}

fn given(example: &Example) -> Guard {
    let observations = example
        .given
        .iter()
        .map(|(item, reading, written)| Observation {
            item: *item,
            written: written.as_str().into(),
            reading: Some(Arc::new(reading.clone())),
            note: "".into(),
            row: Row { file: 0, line: 0 },
        });
    Guard {
        building: "".into(),
        unit: "".into(),
        name: "example".into(),
        observations: observations.collect(),
        own: Vec::new(),
        inherited: Arc::new(Inherited::default()),
        rows_in_error: 0,
        rows: 0,
    }
}
