//! Circumstances that nobody wrote down: the guard is judged once for each value
//! that a rule tells apart, and what all cases agree on holds.
//!
//! The single findings stay `not measured`: nobody knows which of them applies.

use std::collections::BTreeMap;
use std::collections::BTreeSet;

use crate::items::Hazard;
use crate::items::Item;
use crate::items::Verdict;
use crate::judge::Agreed;
use crate::judge::Finding;
use crate::judge::LeadsTo;
use crate::judge::condition::Truth;
use crate::judge::condition::applies;
use crate::judge::condition::holds;
use crate::judge::decides::decided_and_alone;
use crate::judge::decides::worst_of_hazards;
use crate::judge::findings::CaseFindings;
use crate::judge::findings::KnownChecks;
use crate::judge::findings::RuleCounts;
use crate::judge::rule::Bench;
use crate::judge::scene::Scene;
use crate::judge::told_apart::Unknown;
use crate::judge::told_apart::told_apart;
use crate::judge::view::FindingView;
use crate::rules::Condition;
use crate::rules::Rule;
use crate::rules::Subject;

/// More cases than these are not gone through.
const MOST_CASES: usize = 64;

/// What the cases of one ruleset say together.
#[derive(Clone, Debug, Default)]
pub(super) struct Cases<'r> {
    /// What all agree on for the guard.
    pub(super) verdict: Option<Verdict>,
    /// What the readings alone agree on.
    pub(super) alone: Option<Verdict>,
    /// What all agree on for each hazard.
    pub(super) hazards: [Option<Verdict>; 5],
    /// The rules that fall short in some case, by hazard.
    short: Vec<(Hazard, &'r str)>,
    /// What each answer leads to.
    pub(super) leads_to: Vec<LeadsTo<'r>>,
}

/// One case, judged.
struct OneCase<'r> {
    /// Which answer of each unknown.
    chosen: Vec<usize>,
    verdict: Verdict,
    alone: Verdict,
    hazards: [Option<Verdict>; 5],
    /// Whether the answer switches off what is asked about falling over, and through.
    switched_off: [bool; 2],
    short: Vec<(Hazard, &'r str)>,
}

/// What was found without any case, rule by rule.
#[derive(Clone, Copy)]
pub(super) struct FoundWithout<'f, 'r> {
    pub(super) found: &'f [Finding<'r>],
    pub(super) counts: &'f RuleCounts,
}

/// Goes through the cases of a ruleset; `None` where everything was written down.
pub(super) fn cases<'r>(
    scene: &Scene<'_>,
    bench: &Bench<'r>,
    without: FoundWithout<'_, 'r>,
    known: &mut KnownChecks<'r>,
) -> Option<Cases<'r>> {
    if bench.not_covered.is_some() {
        return None;
    }
    let needs = needs(scene, bench, without.counts);
    let in_doubt = is_a_drop_in_doubt(scene, bench);
    if needs.is_empty() && !in_doubt {
        return None;
    }
    let mut together = Cases::default();
    let groups = if needs.is_empty() {
        Vec::new()
    } else {
        groups(scene, bench, &needs)
    };
    let all = groups.len() < 2 && !cut(&groups, &needs) && !in_doubt;
    for group in groups {
        let judged = go_through(scene, bench, &group, without, known);
        together.add(bench, &group, &judged);
    }
    if !all {
        for hazard in [Hazard::FallOver, Hazard::FallThrough] {
            together.add_shortfall(scene, bench, hazard, without, known);
        }
    }
    Some(together)
}

/// Whether some unknown was left out of the cases.
fn cut(groups: &[Vec<Unknown>], needs: &[BTreeSet<Item>]) -> bool {
    let asked = |item: &Item| groups.iter().flatten().any(|unknown| unknown.item == *item);
    !needs.iter().flatten().all(asked)
}

/// Whether a drop was measured so near to where a rule begins that the tape cannot
/// tell which rules apply: they may all fall short.
fn is_a_drop_in_doubt(scene: &Scene<'_>, bench: &Bench<'_>) -> bool {
    let mut conditions = bench.ruleset.rules.iter().flat_map(Rule::conditions);
    conditions.any(|condition| {
        condition.item == Item::Drop
            && holds(scene, condition, scene.options.decision) == Truth::Doubt
    })
}

/// What the rules of one hazard about the guard's height, or about its openings,
/// wait for: enough to see that each of its cases falls short.
fn needs_of(scene: &Scene<'_>, bench: &Bench<'_>, hazard: Hazard) -> BTreeSet<Item> {
    let of_dimension = |rule: &&Rule| {
        rule.hazard == hazard
            && rule.checks.iter().any(|check| match check.subject {
                Subject::AnyOpening => true,
                Subject::Item(item) => matches!(item, Item::Height | Item::Opening),
                Subject::LoadPath => false,
            })
    };
    let waiting = bench.ruleset.rules.iter().filter(of_dimension);
    waiting
        .filter(|rule| matches!(applies(scene, rule).truth, Truth::Doubt | Truth::Unknown))
        .flat_map(|rule| {
            let doubtful = rule.conditions().filter(|condition| {
                condition.item == Item::Drop
                    && holds(scene, condition, scene.options.decision) == Truth::Doubt
            });
            let doubtful = doubtful.map(|condition| condition.item);
            unknown(scene, rule.conditions())
                .chain(doubtful)
                .collect::<Vec<_>>()
        })
        .collect()
}

/// For each rule that waits for circumstances: which.
fn needs(scene: &Scene<'_>, bench: &Bench<'_>, counts: &RuleCounts) -> Vec<BTreeSet<Item>> {
    let mut needs = Vec::new();
    for (rule, truth) in bench.ruleset.rules.iter().zip(counts.truths()) {
        let mut items = BTreeSet::new();
        if truth == Truth::Unknown {
            let conditions = rule.conditions();
            items.extend(unknown(scene, conditions));
        }
        let by_stair = rule
            .checks
            .iter()
            .any(|check| check.subject == Subject::AnyOpening);
        if by_stair && scene.on_a_stair().is_none() && truth > Truth::False {
            items.insert(Item::Place);
        }
        if !items.is_empty() {
            needs.push(items);
        }
    }
    for silence in &bench.ruleset.asks_nothing {
        let items: BTreeSet<Item> = unknown(scene, silence.when.iter()).collect();
        if !items.is_empty() {
            needs.push(items);
        }
    }
    needs
}

fn unknown<'a>(
    scene: &'a Scene<'_>,
    conditions: impl Iterator<Item = &'a Condition>,
) -> impl Iterator<Item = Item> {
    conditions
        .filter(|condition| condition.item.is_circumstance() && condition.item != Item::State)
        .filter(|condition| holds(scene, condition, scene.options.decision) == Truth::Unknown)
        .map(|condition| condition.item)
}

/// All unknown circumstances together where their cases are few; else those that
/// some rule needs together, without what most rules need until they are few.
fn groups(scene: &Scene<'_>, bench: &Bench<'_>, needs: &[BTreeSet<Item>]) -> Vec<Vec<Unknown>> {
    let all: BTreeSet<Item> = needs.iter().flatten().copied().collect();
    let unknowns: BTreeMap<Item, Unknown> = all
        .iter()
        .map(|item| (*item, told_apart(scene, bench, *item)))
        .collect();
    let count = |items: &BTreeSet<Item>| {
        let answers = items.iter().filter_map(|item| unknowns.get(item));
        answers
            .map(|unknown| unknown.answers.len().max(1))
            .fold(1_usize, usize::saturating_mul)
    };
    let of = |items: &BTreeSet<Item>| -> Vec<Unknown> {
        let kept = items.iter().filter_map(|item| unknowns.get(item).cloned());
        kept.filter(|unknown| !unknown.answers.is_empty()).collect()
    };
    if count(&all) <= MOST_CASES {
        return vec![of(&all)];
    }
    let mut joined: Vec<BTreeSet<Item>> = Vec::new();
    for need in needs {
        let (touching, mut apart): (Vec<_>, Vec<_>) = joined
            .into_iter()
            .partition(|group| !group.is_disjoint(need));
        let mut group = need.clone();
        group.extend(touching.into_iter().flatten());
        apart.push(group);
        joined = apart;
    }
    for group in &mut joined {
        while count(group) > MOST_CASES {
            let most = group
                .iter()
                .copied()
                .max_by_key(|item| needs.iter().filter(|need| need.contains(item)).count());
            let Some(most) = most else { break };
            group.remove(&most);
        }
    }
    joined.retain(|group| !group.is_empty());
    joined.iter().map(of).collect()
}

/// Every combination of the answers, judged.
fn go_through<'r>(
    scene: &Scene<'_>,
    bench: &Bench<'r>,
    group: &[Unknown],
    without: FoundWithout<'_, 'r>,
    known: &mut KnownChecks<'r>,
) -> Vec<OneCase<'r>> {
    let mut chosen = vec![0; group.len()];
    let mut judged = Vec::new();
    let mut found = CaseFindings::after(scene, without.found, without.counts);
    let mut changed = group.len();
    loop {
        let supposed = group.iter().zip(&chosen);
        let supposed = supposed.map(|(unknown, at)| (unknown.item, unknown.answers[*at].supposed));
        let case = scene.supposing(supposed.collect());
        let is_another = |item| group[..changed].iter().any(|unknown| unknown.item == item);
        let found = found.next(&case, bench, &is_another, known);
        judged.push(one_case(&case, bench, found, chosen.clone()));
        let Some(next) = (0..group.len()).find(|at| chosen[*at] + 1 < group[*at].answers.len())
        else {
            return judged;
        };
        chosen[next] += 1;
        chosen[..next].fill(0);
        changed = next + 1;
    }
}

fn one_case<'r>(
    scene: &Scene<'_>,
    bench: &Bench<'r>,
    found: &[Finding<'r>],
    chosen: Vec<usize>,
) -> OneCase<'r> {
    let [decided, alone] = decided_and_alone(scene, bench, found);
    let taking_part = || found.iter().filter(|finding| finding.takes_part());
    // strength is not judged case by case
    let hazards = worst_of_hazards(
        taking_part().filter(|finding| finding.rule.loads().next().is_none()),
        |finding| FindingView::Decided.of(finding),
    );
    let short = taking_part().filter(|finding| finding.verdict == Verdict::FallsShort);
    OneCase {
        verdict: decided.verdict(),
        alone: alone.verdict(),
        switched_off: decided.switched_off,
        hazards,
        short: short
            .map(|finding| (finding.rule.hazard, finding.rule.id.as_str()))
            .collect(),
        chosen,
    }
}

/// What all are, where they are the same.
fn same<T: Copy + PartialEq>(mut all: impl Iterator<Item = T>) -> Option<T> {
    let first = all.next()?;
    all.all(|other| other == first).then_some(first)
}

/// What two groups of circumstances agree on: a shortfall of one holds whatever
/// the other is; anything else only where nothing else is open.
fn joined(so_far: Option<Verdict>, next: Option<Verdict>) -> Option<Verdict> {
    match (so_far, next) {
        (Some(one), Some(other)) => Some(one.min(other)),
        (one, other) => one.or(other),
    }
}

impl<'r> Cases<'r> {
    fn add(&mut self, bench: &Bench<'r>, group: &[Unknown], judged: &[OneCase<'r>]) {
        let may_be_outside = group.iter().any(|unknown| unknown.may_be_outside);
        // where one case meets a rule and another asks nothing, nothing is agreed
        let alike = |at: usize| same(judged.iter().map(|case| case.switched_off[at])).is_some();
        let told = |verdict: Option<Verdict>, alike: bool| {
            verdict.filter(|verdict| match verdict {
                Verdict::Meets => alike && !may_be_outside,
                Verdict::DoesNotApply => !may_be_outside,
                Verdict::FallsShort
                | Verdict::TooClose
                | Verdict::NotSettled
                | Verdict::NotMeasured => true,
            })
        };
        let whole = alike(0) && alike(1);
        let verdict = told(same(judged.iter().map(|case| case.verdict)), whole);
        let alone = told(same(judged.iter().map(|case| case.alone)), whole);
        self.verdict = joined(self.verdict, verdict);
        self.alone = joined(self.alone, alone);
        for (at, hazard) in self.hazards.iter_mut().enumerate() {
            let agreed = same(judged.iter().map(|case| case.hazards[at])).flatten();
            let of_strength = Hazard::ALL[at] == Hazard::GiveWay;
            let agreed = agreed.filter(|verdict| !of_strength || *verdict == Verdict::FallsShort);
            let alike = match Hazard::ALL[at] {
                Hazard::FallOver => alike(0),
                Hazard::FallThrough => alike(1),
                Hazard::Climb | Hazard::Entrapment | Hazard::GiveWay => true,
            };
            *hazard = joined(*hazard, told(agreed, alike));
        }
        for short in judged.iter().flat_map(|case| &case.short) {
            if !self.short.contains(short) {
                self.short.push(*short);
            }
        }
        if same(judged.iter().map(|case| case.verdict)).is_some() {
            return;
        }
        for (at, unknown) in group.iter().enumerate() {
            let answers = unknown.answers.iter().enumerate().map(|(number, answer)| {
                let of = judged.iter().filter(|case| case.chosen[at] == number);
                (answer.in_words(), same(of.map(|case| case.verdict)))
            });
            self.leads_to.push(LeadsTo {
                ruleset: bench.ruleset,
                item: unknown.item,
                answers: answers.collect(),
            });
        }
    }

    /// A shortfall that every case of the circumstances of one hazard's rules holds.
    /// The other circumstances stay open, which takes no shortfall away.
    fn add_shortfall(
        &mut self,
        scene: &Scene<'_>,
        bench: &Bench<'r>,
        hazard: Hazard,
        without: FoundWithout<'_, 'r>,
        known: &mut KnownChecks<'r>,
    ) {
        let group: Vec<Unknown> = needs_of(scene, bench, hazard)
            .into_iter()
            .map(|item| told_apart(scene, bench, item))
            .filter(|unknown| !unknown.answers.is_empty())
            .collect();
        let count = group.iter().fold(1_usize, |count, unknown| {
            count.saturating_mul(unknown.answers.len())
        });
        if group.is_empty() || count > MOST_CASES {
            return;
        }
        let judged = go_through(scene, bench, &group, without, known);
        let at = Hazard::ALL.iter().position(|one| *one == hazard);
        let Some(at) = at else { return };
        let short = Some(Verdict::FallsShort);
        if !judged.iter().all(|case| case.hazards[at] == short) {
            return;
        }
        self.hazards[at] = short;
        self.verdict = short;
        if judged.iter().all(|case| case.alone == Verdict::FallsShort) {
            self.alone = short;
        }
        for one in judged.iter().flat_map(|case| &case.short) {
            if one.0 == hazard && !self.short.contains(one) {
                self.short.push(*one);
            }
        }
    }

    /// What is agreed on and no single finding says.
    pub(super) fn agreed(
        &self,
        bench: &Bench<'r>,
        without: Verdict,
        hazards_without: &[Option<Verdict>; 5],
        advises: bool,
    ) -> Vec<Agreed<'r>> {
        let rules = |hazard: Option<Hazard>, verdict: Verdict| -> Vec<&'r str> {
            let of = self
                .short
                .iter()
                .filter(|(of, _)| hazard.is_none_or(|hazard| hazard == *of));
            if verdict == Verdict::FallsShort {
                of.map(|(_, id)| *id).collect()
            } else {
                Vec::new()
            }
        };
        let mut agreed = Vec::new();
        let mut add = |hazard, verdict| {
            agreed.push(Agreed {
                ruleset: bench.ruleset,
                verdict,
                hazard,
                rules: rules(hazard, verdict),
                advises,
            });
        };
        for (at, hazard) in Hazard::ALL.into_iter().enumerate() {
            match (self.hazards[at], hazards_without[at]) {
                (Some(verdict), Some(without)) if tells_more(verdict, without) => {
                    add(Some(hazard), verdict);
                }
                (Some(_), Some(_)) | (None, _) | (_, None) => {}
            }
        }
        if let Some(verdict) = self.verdict
            && tells_more(verdict, without)
        {
            add(None, verdict);
        }
        agreed
    }
}

/// Whether what the cases agree on says more than the findings do.
pub(super) fn tells_more(agreed: Verdict, without: Verdict) -> bool {
    let settles_what_was_open = without == Verdict::NotMeasured && agreed != Verdict::NotMeasured;
    settles_what_was_open || agreed == Verdict::FallsShort && without != Verdict::FallsShort
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::judge::Options;
    use crate::judge::findings::findings;
    use crate::judge::from_csv;
    use crate::judge::rule::Decides;
    use crate::judge::rule::InForceThen;
    use crate::rules::embedded_ids;
    use crate::rules::load_to_judge;
    use crate::survey::Guard;
    use crate::survey::SurveyFacts;

    /// A guard with some of its circumstances left out.
    fn guards() -> Vec<Guard> {
        const SAID: &str = "height,35 in\nopening,3 7/8 in\nbottom gap,3 in\nfoothold,300 mm high 40 mm deep\n\
stair triangle,rise 7 1/2 going 10 lift 2 in\nriser opening,4 in\ninfill,balusters\nhandrail height,33 in\n";
        const CIRCUMSTANCES: [&str; 6] = [
            "place,landing",
            "use,dwelling",
            "drop,9 ft",
            "children,14 months",
            "built,1994",
            "dwellings in building,1",
        ];
        let mut survey = "guard,item,reading\n".to_owned();
        for which in 0..1_u32 << CIRCUMSTANCES.len() {
            for said in SAID.lines() {
                survey.push_str(&format!("g{which},{said}\n"));
            }
            for (at, said) in CIRCUMSTANCES.iter().enumerate() {
                if which >> at & 1 == 1 {
                    survey.push_str(&format!("g{which},{said}\n"));
                }
            }
        }
        from_csv::guards(&survey)
    }

    fn told(findings: &[Finding<'_>]) -> Vec<String> {
        let told = findings.iter().map(|finding| {
            format!(
                "{} {:?} {:?} {:?} {:?} {} {}",
                finding.rule.id,
                finding.item,
                finding.verdict,
                finding.reading_alone,
                finding.reasons,
                finding.partial,
                finding.takes_part()
            )
        });
        told.collect()
    }

    #[test]
    fn what_a_case_leaves_as_it_was_is_what_it_would_be_anew() {
        let facts = SurveyFacts::default();
        let guards = guards();
        let mut seen = 0;
        for id in embedded_ids() {
            let ruleset = load_to_judge(id, &|_| None)
                .ruleset
                .expect("it is embedded");
            let bench = Bench {
                ruleset: &ruleset,
                not_covered: None,
                decides: Decides::Yes,
                in_force: InForceThen::Perhaps,
            };
            for guard in guards.iter().step_by(5) {
                let scene = Scene::new(guard, &facts, Options::default());
                let (counts, _) = findings(&scene, &bench, &mut Vec::new());
                let needs = needs(&scene, &bench, &counts);
                let groups = groups(&scene, &bench, &needs);
                for group in groups {
                    let mut found = Vec::new();
                    let (counts, mut known) = findings(&scene, &bench, &mut found);
                    let mut kept = CaseFindings::after(&scene, &found, &counts);
                    let mut before: Vec<usize> = Vec::new();
                    // each answer of each unknown after another, the others at their first
                    for at in 0..group.len() {
                        for number in 0..group[at].answers.len() {
                            let mut chosen = vec![0; group.len()];
                            chosen[at] = number;
                            let supposed = group.iter().zip(&chosen);
                            let supposed = supposed
                                .map(|(unknown, at)| (unknown.item, unknown.answers[*at].supposed));
                            let case = scene.supposing(supposed.collect());
                            let changed = |item: Item| {
                                group.iter().enumerate().any(|(place, unknown)| {
                                    unknown.item == item
                                        && before.get(place) != Some(&chosen[place])
                                })
                            };
                            let next = told(kept.next(&case, &bench, &changed, &mut known));
                            let mut anew = Vec::new();
                            findings(&case, &bench, &mut anew);
                            assert_eq!(next, told(&anew), "{id}: {}", guard.name);
                            before = chosen;
                            seen += 1;
                        }
                    }
                }
            }
        }
        assert!(seen > 2_000, "{seen} cases");
    }
}
