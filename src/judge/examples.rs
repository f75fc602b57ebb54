//! The worked examples of a ruleset, judged as exact values without doubt.

use std::fmt;
use std::sync::Arc;

use crate::items::Verdict;
use crate::judge::Chain;
use crate::judge::condition::Truth;
use crate::judge::condition::holds;
use crate::judge::findings::findings;
use crate::judge::load_path::chain;
use crate::judge::rule::Bench;
use crate::judge::rule::Decides;
use crate::judge::rule::InForceThen;
use crate::judge::scene::Scene;
use crate::quantities::Moment;
use crate::rules::Example;
use crate::rules::Member;
use crate::rules::Rule;
use crate::rules::Ruleset;
use crate::survey::Guard;
use crate::survey::Inherited;
use crate::survey::Observation;
use crate::survey::RowPlace;
use crate::survey::SurveyFacts;

/// An example that does not come out as it says.
#[derive(Clone, Debug)]
pub struct Failed<'r> {
    /// The rule.
    pub rule: &'r Rule,
    /// The example.
    pub example: &'r Example,
    /// What came out instead.
    pub found: Found,
}

/// What came out of an example.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Found {
    /// Another moment than the one stated, in newton metres; `None` where none
    /// could be worked out.
    Moment(Member, Option<f64>),
    /// Another verdict.
    Verdict(Verdict),
}

impl fmt::Display for Found {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Found::Moment(member, Some(moment)) => {
                write!(f, "{moment:.3} N m in the {}", member.name())
            }
            Found::Moment(member, None) => write!(f, "none in the {}", member.name()),
            Found::Verdict(verdict) => write!(f, "{verdict}"),
        }
    }
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
            if let Some(found) = miss(ruleset, rule, example) {
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

/// Where an example does not come out as it says: another verdict, or another
/// moment than one that it states.
#[must_use]
pub fn miss(ruleset: &Ruleset, rule: &Rule, example: &Example) -> Option<Found> {
    let verdict = judge_example(ruleset, rule, example);
    if verdict != example.expect {
        return Some(Found::Verdict(verdict));
    }
    let guard = given(example);
    let facts = SurveyFacts::default();
    let scene = Scene::exact(&guard, &facts);
    let chains: Vec<Chain> = rule.loads().map(|demand| chain(&scene, demand)).collect();
    example.moments.iter().find_map(|(member, stated)| {
        let found = chains.iter().flat_map(|chain| &chain.moments);
        let found = found
            .filter(|(of, _)| of == member)
            .map(|(_, moment)| *moment);
        let found = found.fold(None, |worst: Option<Moment>, one| {
            Some(worst.map_or(one, |worst| worst.max(one)))
        });
        let near = |found: Moment| (found - stated.value).abs() <= stated.value * SAME_MOMENT;
        let same = found.is_some_and(near);
        (!same).then(|| Found::Moment(*member, found.map(|moment| moment.value)))
    })
}

/// Moments are stated to four digits or more.
const SAME_MOMENT: f64 = 5e-5;

/// The verdict of one example.
#[must_use]
pub fn judge_example(ruleset: &Ruleset, rule: &Rule, example: &Example) -> Verdict {
    let guard = given(example);
    let facts = SurveyFacts::default();
    let scene = Scene::exact(&guard, &facts);
    let mut covers = ruleset.covers.conditions.iter();
    let decision = scene.options.decision;
    if covers.any(|condition| holds(&scene, condition, decision) == Truth::False) {
        return Verdict::NotSettled;
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
            row: RowPlace { file: 0, line: 0 },
            column: 0,
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
