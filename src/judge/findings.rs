//! All rules of a ruleset against a guard: as it is written, after a change, and in one case
//! of its unknown circumstances after another.

use std::ops::Range;

use crate::items::Item;
use crate::items::ItemSet;
use crate::judge::Finding;
use crate::judge::before::Before;
use crate::judge::condition::Applies;
use crate::judge::condition::Truth;
use crate::judge::judgement::Judgement;
use crate::judge::rule::Bench;
use crate::judge::rule::Considered;
use crate::judge::rule::Others;
use crate::judge::rule::bounds_holes;
use crate::judge::rule::finding;
use crate::judge::rule::has_a_zone;
use crate::judge::rule::is_excepted;
use crate::judge::rule::judge_rule;
use crate::judge::rule::lifted_from_memory;
use crate::judge::scene::Scene;
use crate::rules::Rule;

/// All of a ruleset's rules against a guard; how many findings are of each rule, and what
/// the checks of those that wait for a circumstance made of the readings.
pub(super) fn findings<'r>(
    scene: &Scene<'_>,
    bench: &Bench<'r>,
    found: &mut Vec<Finding<'r>>,
) -> (RuleCounts, KnownChecks<'r>) {
    let rules = bench.ruleset.rules.len();
    let mut cases = CaseFindings {
        // a rule on any opening makes up to four
        found: Vec::with_capacity(rules + 3),
        of_rules: Vec::with_capacity(rules),
        on_a_stair: None,
    };
    let mut known = KnownChecks::default();
    cases.next(scene, bench, &|_| true, &mut known);
    found.append(&mut cases.found);
    (RuleCounts(cases.of_rules), known)
}

/// As [`findings`], of a guard that was changed: what the change leaves alone is taken over
/// from the findings before it.
pub(super) fn findings_after<'r>(
    scene: &Scene<'_>,
    bench: &Bench<'r>,
    (before, known): (&Before<'_>, &[Finding<'r>]),
    found: &mut Vec<Finding<'r>>,
) {
    let of_ruleset = |finding: &Finding<'r>| std::ptr::eq(finding.ruleset, bench.ruleset);
    let from = known.iter().position(of_ruleset).unwrap_or(known.len());
    let mut known = &known[from..];
    let stays = bench.not_covered.is_none() && before.stays_under(bench.ruleset);
    // those that are judged anew look at whether the others apply
    let rules = bench.ruleset.rules.iter();
    let rules: Vec<Considered<'r>> = rules.map(|rule| Considered::of(scene, rule)).collect();
    let others = Others { rules: &rules };
    let first = found.len();
    let mut judgements = Vec::with_capacity(3);
    for here in &rules {
        let of_rule = |of: &&Finding<'r>| std::ptr::eq(of.rule, here.rule);
        let (own, rest) = known.split_at(known.iter().take_while(of_rule).count());
        known = rest;
        if stays && let Some(own) = before.taken_over(own) {
            found.extend(own);
            continue;
        }
        let looked_at = judge_rule(scene, bench, here, &others, None, &mut judgements);
        let done = judgements.drain(..);
        found.extend(done.map(|judgement| finding(scene, bench, here.rule, judgement, looked_at)));
    }
    lifted_from_memory(scene, bench, &mut found[first..]);
}

/// How many findings are of each rule, and whether it applies.
pub(super) struct RuleCounts(Vec<(usize, Applies)>);

impl RuleCounts {
    /// Whether each rule applies, in their order.
    pub(super) fn truths(&self) -> impl Iterator<Item = Truth> {
        self.0.iter().map(|(_, applies)| applies.truth)
    }
}

/// The findings of a ruleset in one case after another: those that no circumstance touches
/// that is another one than in the case before stay as they were.
pub(super) struct CaseFindings<'r> {
    found: Vec<Finding<'r>>,
    of_rules: Vec<(usize, Applies)>,
    /// Whether the guard stands on a stair in the case before.
    on_a_stair: Option<bool>,
}

/// What the checks of each rule make of the readings, whatever circumstances a case
/// supposes: of all of them a check looks at the stair alone.
#[derive(Default)]
pub(super) struct KnownChecks<'r> {
    /// On no stair, on one, and where nobody said.
    by_stair: [Vec<Option<Vec<Judgement<'r>>>>; 3],
}

impl<'r> KnownChecks<'r> {
    /// Of the rule at this place; `None` where its checks have to be looked at anew.
    fn of(
        &mut self,
        place: usize,
        (rule, applies): (&Rule, Applies),
        scene: &Scene<'_>,
    ) -> Option<&mut Option<Vec<Judgement<'r>>>> {
        let on_a_stair = scene.on_a_stair();
        let of_cases = scene.is_a_case() || matches!(applies.truth, Truth::Unknown | Truth::Doubt);
        if !of_cases || looks_at_others(rule, on_a_stair) || rule.loads().next().is_some() {
            return None;
        }
        let known = match on_a_stair {
            Some(false) => &mut self.by_stair[0],
            Some(true) => &mut self.by_stair[1],
            None => &mut self.by_stair[2],
        };
        if known.len() <= place {
            known.resize_with(place + 1, || None);
        }
        known.get_mut(place)
    }
}

/// Rules on holes look at each other where a hole lies, and on a stair.
fn looks_at_others(rule: &Rule, on_a_stair: Option<bool>) -> bool {
    has_a_zone(rule) || (on_a_stair == Some(true) && bounds_holes(rule))
}

impl<'r> CaseFindings<'r> {
    /// Before the first case: what was found without any.
    pub(super) fn after(
        scene: &Scene<'_>,
        found: &[Finding<'r>],
        counts: &RuleCounts,
    ) -> CaseFindings<'r> {
        // strength is no matter of cases
        let bare = |finding: &Finding<'r>| Finding {
            ruleset: finding.ruleset,
            rule: finding.rule,
            item: finding.item,
            verdict: finding.verdict,
            reading_alone: finding.reading_alone,
            partial: finding.partial,
            binding: finding.binding,
            from_memory: finding.from_memory,
            measured: None,
            limit: None,
            margin: finding.margin,
            uncertainty: None,
            probability: None,
            readings: Vec::new(),
            also_readings: Vec::new(),
            reasons: finding.reasons.clone(),
            chain: None,
            looked_at: ItemSet::EMPTY,
        };
        CaseFindings {
            found: found.iter().map(bare).collect(),
            of_rules: counts.0.clone(),
            on_a_stair: scene.on_a_stair(),
        }
    }

    /// Of the next case, with the circumstances that changed.
    pub(super) fn next(
        &mut self,
        scene: &Scene<'_>,
        bench: &Bench<'r>,
        changed: &dyn Fn(Item) -> bool,
        known: &mut KnownChecks<'r>,
    ) -> &[Finding<'r>] {
        let all = &bench.ruleset.rules;
        // on a stair other items are looked at
        let on_a_stair = scene.on_a_stair();
        let anew = self.of_rules.len() != all.len() || on_a_stair != self.on_a_stair;
        self.on_a_stair = on_a_stair;
        let is_touched = |rule: &Rule| {
            anew || rule.loads().next().is_some()
                || rule.conditions().any(|condition| changed(condition.item))
        };
        let rules: Vec<Considered<'r>> = all
            .iter()
            .enumerate()
            .map(|(place, rule)| match self.of_rules.get(place) {
                Some((_, known)) if !is_touched(rule) => Considered {
                    rule,
                    applies: *known,
                    looked_at: ItemSet::EMPTY,
                    is_touched: false,
                },
                Some(_) | None => Considered::of(scene, rule),
            })
            .collect();
        let mut touched = rules.iter().filter(|here| here.is_touched);
        let holes = touched.any(|here| bounds_holes(here.rule));
        let others = Others { rules: &rules };
        let mut judgements = Vec::with_capacity(3);
        let mut from = 0;
        for (place, here) in rules.iter().enumerate() {
            let (rule, applies) = (here.rule, here.applies);
            let (count, before) = self.of_rules.get(place).copied().unwrap_or((0, applies));
            let there = from..from + count;
            // what an exception lifts depends on the other rules
            let excepted = self.found[there.clone()].iter().any(is_excepted);
            let beside_others = holes && looks_at_others(rule, on_a_stair);
            // one that applies as before says what it said; of strength a case says nothing
            let as_before = before == applies && applies.surely() && rule.loads().next().is_none();
            let touched = here.is_touched && (anew || !as_before);
            if excepted || touched || beside_others {
                let known = known.of(place, (rule, applies), scene);
                let looked_at = judge_rule(scene, bench, here, &others, known, &mut judgements);
                let made = judgements.len();
                let done = judgements.drain(..);
                let done = done.map(|judgement| finding(scene, bench, rule, judgement, looked_at));
                put(&mut self.found, there, done);
                match self.of_rules.get_mut(place) {
                    Some(of_rule) => *of_rule = (made, applies),
                    None => self.of_rules.push((made, applies)),
                }
                from += made;
            } else {
                from += count;
            }
        }
        lifted_from_memory(scene, bench, &mut self.found);
        &self.found
    }
}

/// As [`Vec::splice`]; nearly always behind the last, or as many as there were, where
/// nothing has to be moved.
fn put<'r>(
    found: &mut Vec<Finding<'r>>,
    known: Range<usize>,
    done: impl ExactSizeIterator<Item = Finding<'r>>,
) {
    if known.start == found.len() {
        found.extend(done);
    } else if known.len() == done.len() {
        for (place, next) in found[known].iter_mut().zip(done) {
            *place = next;
        }
    } else {
        found.splice(known, done);
    }
}
