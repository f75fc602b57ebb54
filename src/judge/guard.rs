//! A guard as a whole: its verdict and its hazards.

use crate::items::Hazard;
use crate::items::Item;
use crate::items::ItemWord;
use crate::items::PlaceWord;
use crate::items::UseWord;
use crate::items::Verdict;
use crate::judge::Agreed;
use crate::judge::AskedWhenBuilt;
use crate::judge::Finding;
use crate::judge::HazardVerdict;
use crate::judge::Judged;
use crate::judge::LeadsTo;
use crate::judge::Options;
use crate::judge::Reason;
use crate::judge::Unclear;
use crate::judge::WhenBuilt;
use crate::judge::WhyUnclear;
use crate::judge::cases::Cases;
use crate::judge::cases::FoundWithout;
use crate::judge::cases::cases;
use crate::judge::cases::tells_more;
use crate::judge::condition::Truth;
use crate::judge::condition::all;
use crate::judge::condition::holds;
use crate::judge::dangers::dangers;
use crate::judge::decides::Decided;
use crate::judge::decides::decided_and_alone;
use crate::judge::decides::worst_of_hazards;
use crate::judge::findings::findings;
use crate::judge::findings::findings_after;
use crate::judge::noted::noted;
use crate::judge::rule::Bench;
use crate::judge::rule::Decides;
use crate::judge::rule::InForceThen;
use crate::judge::scene::Scene;
use crate::judge::view::FindingView;
use crate::quantities::YearSpan;
use crate::reading::Value;
use crate::rules::Asked;
use crate::rules::AsksNothing;
use crate::rules::Ruleset;
use crate::rules::Test;
use crate::survey::Guard;
use crate::survey::SurveyFacts;

/// Whether law was chosen, or guidance alone.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Authority {
    /// Only advisory rulesets: guidance decides, and no law was checked.
    Guidance,
    /// At least one ruleset of law.
    Law,
}

impl Authority {
    /// What these rulesets are together.
    #[must_use]
    pub fn of(rulesets: &[Ruleset]) -> Authority {
        if rulesets.iter().all(|ruleset| ruleset.advisory) {
            Authority::Guidance
        } else {
            Authority::Law
        }
    }

    /// The word in reports: `law`, `guidance`.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Authority::Guidance => "guidance",
            Authority::Law => "law",
        }
    }
}

/// Judges one guard by every rule of the rulesets.
///
/// A pure function: the same guard, facts, rulesets and options give the same
/// findings, whatever was judged before.
#[must_use]
pub fn judge<'r>(
    guard: &Guard,
    facts: &SurveyFacts,
    rulesets: &'r [Ruleset],
    options: Options,
) -> Judged<'r> {
    let scene = Scene::new(guard, facts, options);
    judged(&scene, rulesets, NotWritten::GoneThrough)
}

/// As [`judge`], of a guard to which something was done that was judged before.
///
/// It gives the same: what rests on readings that are as they were is taken over.
#[must_use]
pub fn judge_changed<'r>(
    guard: &Guard,
    before: (&Guard, &Judged<'r>),
    facts: &SurveyFacts,
    rulesets: &'r [Ruleset],
    options: Options,
) -> Judged<'r> {
    let scene = Scene::new(guard, facts, options).after(before);
    judged(&scene, rulesets, NotWritten::GoneThrough)
}

/// The findings and the dangers of a guard, for whoever compares them with those of another, or
/// with those before a change: its verdict leaves out what all cases of a circumstance agree
/// on that nobody wrote down, and what notes tell.
#[must_use]
pub fn judge_by_findings<'r>(
    guard: &Guard,
    before: Option<(&Guard, &Judged<'r>)>,
    facts: &SurveyFacts,
    rulesets: &'r [Ruleset],
    options: Options,
) -> Judged<'r> {
    let scene = Scene::new(guard, facts, options);
    let (scene, known) = match before {
        Some(before) => (scene.after(before), before.1.findings.as_slice()),
        None => (scene, [].as_slice()),
    };
    judged(&scene, rulesets, NotWritten::LeftOpen(known))
}

/// What becomes of circumstances that nobody wrote down.
#[derive(Clone, Copy)]
enum NotWritten<'k, 'r> {
    /// The guard is judged in each of their cases.
    GoneThrough,
    /// They stay open; with the findings before a change.
    LeftOpen(&'k [Finding<'r>]),
}

fn judged<'r>(
    scene: &Scene<'_>,
    rulesets: &'r [Ruleset],
    not_written: NotWritten<'_, 'r>,
) -> Judged<'r> {
    let guard = scene.guard;
    let benches = benches(scene, rulesets);
    let rules: usize = rulesets.iter().map(|ruleset| ruleset.rules.len()).sum();
    // a rule on any opening makes up to four
    let mut all: Vec<Finding<'r>> = Vec::with_capacity(rules + 3 * rulesets.len());
    let mut judged: Vec<ByRuleset<'_, 'r>> = Vec::with_capacity(benches.len());
    for bench in &benches {
        let from = all.len();
        let cases = match (not_written, scene.before.as_deref()) {
            (NotWritten::LeftOpen(known), Some(before)) => {
                findings_after(scene, bench, (before, known), &mut all);
                None
            }
            (NotWritten::LeftOpen(_), None) => {
                findings(scene, bench, &mut all);
                None
            }
            (NotWritten::GoneThrough, _) => {
                let (counts, mut known) = findings(scene, bench, &mut all);
                let found = &all[from..];
                let counts = &counts;
                cases(scene, bench, FoundWithout { found, counts }, &mut known)
            }
        };
        judged.push(ByRuleset::new(scene, bench, &all[from..], cases));
    }
    let when_built = when_built(scene, &judged);
    let dangers = dangers(scene, &benches);
    let notes = match not_written {
        NotWritten::GoneThrough => noted(scene, &benches),
        NotWritten::LeftOpen(_) => Vec::new(),
    };
    let could_not_judge = guard.rows > 0 && guard.rows_in_error >= guard.rows;
    let never_meets = |verdict| {
        let in_error = guard.rows_in_error > 0 && verdict == Verdict::Meets;
        let told_otherwise =
            !notes.is_empty() && matches!(verdict, Verdict::Meets | Verdict::DoesNotApply);
        if in_error || told_otherwise {
            Verdict::NotMeasured
        } else {
            verdict
        }
    };
    let first = |verdict: Verdict| {
        if dangers.is_empty() {
            never_meets(verdict)
        } else {
            Verdict::FallsShort
        }
    };
    let deciding = || judged.iter().filter(|by| by.bench.decides == Decides::Yes);
    let advising = || judged.iter().filter(|by| by.advises());
    let (verdict, unclear) = overall(&deciding().collect::<Vec<_>>(), FindingView::Decided);
    let (reading_alone, _) = overall(&deciding().collect::<Vec<_>>(), FindingView::Alone);
    let strength_unseen = |finding: &Finding<'_>| {
        finding.binding
            && (finding.is_strength_unseen()
                || finding.is_indicative()
                    && !matches!(finding.verdict, Verdict::DoesNotApply | Verdict::FallsShort))
    };
    let guidance = advising().filter_map(ByRuleset::guidance).min();
    let tells_of = |hazard: Hazard| {
        let mut notes = notes.iter();
        notes.any(|note| note.told.danger.hazard == hazard)
    };
    let mut hazards = hazards(&judged).map(|of| {
        let denied = guard.rows_in_error > 0 || tells_of(of.hazard);
        let here = |verdict: Verdict| {
            if denied && verdict == Verdict::Meets {
                Verdict::NotMeasured
            } else {
                verdict
            }
        };
        HazardVerdict {
            verdict: of.verdict.map(here),
            guidance: of.guidance.map(here),
            ..of
        }
    });
    for danger in &dangers {
        for of in hazards
            .iter_mut()
            .filter(|of| of.hazard == danger.danger.hazard)
        {
            of.verdict = Some(Verdict::FallsShort);
        }
    }
    Judged {
        verdict: first(verdict),
        reading_alone: first(reading_alone),
        guidance: guidance.map(never_meets),
        when_built: when_built.map(|when| WhenBuilt {
            verdict: never_meets(when.verdict),
            ..when
        }),
        unclear: unclear
            .into_iter()
            .filter(|unclear| unclear.why.verdict() == verdict)
            .collect(),
        agreed: judged.iter().flat_map(ByRuleset::agreed).collect(),
        leads_to: judged.iter().flat_map(ByRuleset::leads_to).collect(),
        silences: deciding()
            .flat_map(|by| silences(scene, by.bench))
            .collect(),
        strength_unchecked: all.iter().any(strength_unseen),
        dangers,
        notes,
        could_not_judge,
        hazards,
        findings: all,
    }
}

/// What one ruleset makes of a guard, as written and by the cases of what was not.
struct ByRuleset<'b, 'r> {
    bench: &'b Bench<'r>,
    decided: Decided<'r>,
    alone: Decided<'r>,
    /// The worst of its findings for each hazard.
    hazards: [Option<Verdict>; 5],
    cases: Option<Cases<'r>>,
}

impl<'b, 'r> ByRuleset<'b, 'r> {
    fn new(
        scene: &Scene<'_>,
        bench: &'b Bench<'r>,
        found: &[Finding<'r>],
        cases: Option<Cases<'r>>,
    ) -> ByRuleset<'b, 'r> {
        // what rests on the load path is shown at its hazard, whatever it counts for
        let shown = found.iter().filter(|finding| {
            finding.is_indicative() || finding.takes_part() || finding.is_strength_unseen()
        });
        let hazards = worst_of_hazards(shown, Finding::counts_as);
        let [decided, alone] = decided_and_alone(scene, bench, found);
        ByRuleset {
            bench,
            decided,
            alone,
            hazards,
            cases,
        }
    }

    /// Whether it advises beside law.
    fn advises(&self) -> bool {
        self.bench.decides == Decides::No && self.bench.ruleset.asked == Asked::Chosen
    }

    /// Whether another ruleset covers the guard in its stead.
    fn is_beside_the_point(&self) -> bool {
        matches!(self.bench.not_covered, Some(Reason::CoveredElsewhere(_)))
    }

    /// Its verdict with what all cases agree on.
    fn verdict(&self, view: FindingView) -> Verdict {
        let (decided, agreed) = match view {
            FindingView::Decided => (
                &self.decided,
                self.cases.as_ref().and_then(|cases| cases.verdict),
            ),
            FindingView::Alone => (
                &self.alone,
                self.cases.as_ref().and_then(|cases| cases.alone),
            ),
        };
        let verdict = decided.verdict();
        match agreed {
            Some(agreed) if tells_more(agreed, verdict) => agreed,
            Some(_) | None => verdict,
        }
    }

    /// The worst of its findings beside law; `None` where none counts.
    fn guidance(&self) -> Option<Verdict> {
        let worst = self.decided.worst?;
        let agreed = self.cases.as_ref().and_then(|cases| cases.verdict);
        Some(match agreed {
            Some(agreed) if tells_more(agreed, worst) => agreed,
            Some(_) | None => worst,
        })
    }

    fn hazard(&self, at: usize) -> Option<Verdict> {
        let without = self.hazards[at]?;
        let agreed = self.cases.as_ref().and_then(|cases| cases.hazards[at]);
        Some(match agreed {
            Some(agreed) if tells_more(agreed, without) => agreed,
            Some(_) | None => without,
        })
    }

    fn agreed(&self) -> Vec<Agreed<'r>> {
        let Some(cases) = &self.cases else {
            return Vec::new();
        };
        let advises = self.advises();
        if self.bench.decides == Decides::No && !advises {
            return Vec::new();
        }
        cases.agreed(self.bench, self.decided.verdict(), &self.hazards, advises)
    }

    fn leads_to(&self) -> Vec<LeadsTo<'r>> {
        let open = self.verdict(FindingView::Decided).is_undecided();
        match &self.cases {
            Some(cases) if open => cases.leads_to.clone(),
            Some(_) | None => Vec::new(),
        }
    }
}

/// The worst of what decides and of what advises, for each hazard.
fn hazards(judged: &[ByRuleset<'_, '_>]) -> [HazardVerdict; 5] {
    let mut hazards = Hazard::ALL.map(|hazard| HazardVerdict {
        hazard,
        verdict: None,
        guidance: None,
    });
    for by in judged.iter().filter(|by| !by.is_beside_the_point()) {
        for (at, of) in hazards.iter_mut().enumerate() {
            let into = if by.bench.decides == Decides::Yes {
                &mut of.verdict
            } else if by.advises() {
                &mut of.guidance
            } else {
                continue;
            };
            if let Some(verdict) = by.hazard(at) {
                *into = Some(into.map_or(verdict, |worst| worst.min(verdict)));
            }
        }
    }
    hazards
}

/// The guard's verdict by the rulesets that decide, and what keeps them from
/// letting it meet.
///
/// Files about one subject grant that subject alone, the heights and the gaps
/// together; beside a ruleset about guards as a whole what they leave open holds
/// nothing up.
fn overall<'r>(deciding: &[&ByRuleset<'_, 'r>], view: FindingView) -> (Verdict, Vec<Unclear<'r>>) {
    let counted = || deciding.iter().filter(|by| !by.is_beside_the_point());
    let whole: Vec<_> = counted()
        .filter(|by| by.bench.ruleset.concerns.is_empty())
        .collect();
    let parts: Vec<_> = counted()
        .filter(|by| !by.bench.ruleset.concerns.is_empty())
        .collect();
    let decided = |by: &ByRuleset<'_, 'r>| match view {
        FindingView::Decided => by.decided.clone(),
        FindingView::Alone => by.alone.clone(),
    };
    if whole.is_empty() {
        return by_parts(
            &parts
                .iter()
                .map(|by| (by.worst(view), decided(by)))
                .collect::<Vec<_>>(),
        );
    }
    let mut verdict = whole.iter().map(|by| by.verdict(view)).min();
    // a ruleset that asks for no guard lets it meet only where what was measured says so
    let mut unclear: Vec<Unclear<'r>> = whole
        .iter()
        .filter(|by| by.verdict(view) != Verdict::Meets)
        .flat_map(|by| decided(by).lacks)
        .collect();
    if verdict == Some(Verdict::Meets) {
        let lack = unclear.iter().map(|lack| lack.why.verdict()).min();
        verdict = lack.or(verdict);
    } else if verdict == Some(Verdict::DoesNotApply) {
        unclear.clear();
    }
    let of_parts = parts.iter().filter_map(|by| by.worst(view));
    let holds_up = |verdict: &Verdict| matches!(verdict, Verdict::FallsShort | Verdict::TooClose);
    let unread = parts
        .iter()
        .filter(|by| !by.bench.ruleset.unread.is_empty())
        .map(|_| Verdict::NotSettled);
    let verdict = of_parts.filter(holds_up).chain(unread).chain(verdict).min();
    (verdict.unwrap_or(Verdict::NotMeasured), unclear)
}

/// Files about one subject alone: each grants its own, and what none grants is
/// not settled.
fn by_parts<'r>(parts: &[(Option<Verdict>, Decided<'r>)]) -> (Verdict, Vec<Unclear<'r>>) {
    let mut unclear = Vec::new();
    for hazard in [Hazard::FallOver, Hazard::FallThrough] {
        let of = |lack: &&Unclear<'r>| lack.hazard == Some(hazard);
        let speak = |decided: &Decided<'r>| {
            let mut lacks = decided.lacks.iter().filter(of);
            !lacks.any(|lack| matches!(lack.why, WhyUnclear::OnlyOneSubject(_)))
        };
        let mut speaking = parts
            .iter()
            .filter(|(_, decided)| speak(decided))
            .peekable();
        let lacks = if speaking.peek().is_none() {
            parts
                .first()
                .and_then(|(_, decided)| decided.lacks.iter().find(of))
                .cloned()
                .into_iter()
                .collect()
        } else {
            let all = speaking.flat_map(|(_, decided)| decided.lacks.iter().filter(of));
            all.cloned().collect::<Vec<_>>()
        };
        unclear.extend(lacks);
    }
    let whole = parts.iter().flat_map(|(_, decided)| &decided.lacks);
    unclear.extend(whole.filter(|lack| lack.hazard.is_none()).cloned());
    let Some(worst) = parts.iter().filter_map(|(worst, _)| *worst).min() else {
        let lack = unclear.iter().map(|lack| lack.why.verdict()).min();
        return (lack.unwrap_or(Verdict::NotMeasured), unclear);
    };
    let lack = unclear.iter().map(|lack| lack.why.verdict()).min();
    match (worst, lack) {
        (Verdict::Meets, Some(lack)) => (lack, unclear),
        (worst, _) => (worst, unclear),
    }
}

impl ByRuleset<'_, '_> {
    /// The worst of its findings, or what all cases agree on where that says more.
    fn worst(&self, view: FindingView) -> Option<Verdict> {
        let (worst, agreed) = match view {
            FindingView::Decided => (
                self.decided.worst,
                self.cases.as_ref().and_then(|c| c.verdict),
            ),
            FindingView::Alone => (self.alone.worst, self.cases.as_ref().and_then(|c| c.alone)),
        };
        match (worst, agreed) {
            (Some(worst), Some(Verdict::FallsShort)) => Some(worst.min(Verdict::FallsShort)),
            (worst, _) => worst,
        }
    }
}

/// What a ruleset was read to ask nothing about here.
fn silences<'r>(scene: &Scene<'_>, bench: &Bench<'r>) -> Vec<&'r AsksNothing> {
    let decision = scene.options.decision;
    let silences = bench.ruleset.asks_nothing.iter();
    silences
        .filter(|silence| all(scene, &silence.when, decision) == Truth::True)
        .collect()
}

pub(super) fn benches<'r>(scene: &Scene<'_>, rulesets: &'r [Ruleset]) -> Vec<Bench<'r>> {
    let authority = Authority::of(rulesets);
    let outside: Vec<Option<Item>> = rulesets.iter().map(|r| not_covered(scene, r)).collect();
    let built = built(scene.guard);
    let law_covers = rulesets.iter().zip(&outside).any(|(ruleset, outside)| {
        !ruleset.advisory && ruleset.asked == Asked::Chosen && outside.is_none()
    });
    rulesets
        .iter()
        .zip(&outside)
        .filter(|(ruleset, _)| ruleset.asked == Asked::Chosen || was_in_force(ruleset, built))
        .filter(|(ruleset, _)| !is_out_of_place(scene, ruleset, rulesets))
        .map(|(ruleset, outside)| Bench {
            ruleset,
            not_covered: outside.map(|item| {
                if law_covers && !ruleset.advisory {
                    Reason::CoveredElsewhere(item)
                } else {
                    Reason::NotCovered(item)
                }
            }),
            decides: if ruleset.asked == Asked::OfItsTime
                || (ruleset.advisory && authority == Authority::Law)
            {
                Decides::No
            } else {
                Decides::Yes
            },
            in_force: InForceThen::of(ruleset, built),
        })
        .collect()
}

/// Whether advice about small children has no place beside the chosen law here: not
/// where a file about pools covers the guard, nor at a workplace where nobody wrote
/// of a child.
fn is_out_of_place(scene: &Scene<'_>, ruleset: &Ruleset, rulesets: &[Ruleset]) -> bool {
    let beside_law = rulesets.iter().any(|other| !other.advisory);
    if !(beside_law && ruleset.advisory && ruleset.is_about_small_children()) {
        return false;
    }
    let pool = [PlaceWord::Pool.name()];
    let of_pools = |other: &Ruleset| {
        let mut conditions = other.covers.conditions.iter();
        conditions.any(|condition| {
            condition.item == Item::Place
                && matches!(&condition.test, Test::OneOf(words) if *words == pool)
        })
    };
    let at_a_pool = rulesets.iter().any(|other| {
        other.asked == Asked::Chosen && of_pools(other) && not_covered(scene, other).is_none()
    });
    let at_work = scene
        .of(Item::Use)
        .any(|(_, observation)| observation.word() == Some(UseWord::Workplace));
    at_a_pool || at_work && scene.of(Item::Children).next().is_none()
}

/// Whether a ruleset's years may hold the time of building, and both are known.
fn was_in_force(ruleset: &Ruleset, built: Option<YearSpan>) -> bool {
    built.is_some()
        && ruleset.in_force.is_some()
        && InForceThen::of(ruleset, built) == InForceThen::Perhaps
}

/// How the guard fares by the rules of law that were in force when it was built:
/// not settled where none of those here was.
fn when_built<'r>(scene: &Scene<'_>, judged: &[ByRuleset<'_, 'r>]) -> Option<WhenBuilt<'r>> {
    let built = built(scene.guard);
    if scene.options.when_built == AskedWhenBuilt::NotAsked || built.is_none() {
        return None;
    }
    let then: Vec<&ByRuleset<'_, 'r>> = judged
        .iter()
        .filter(|by| !by.bench.ruleset.advisory && was_in_force(by.bench.ruleset, built))
        .collect();
    let verdict = if then.is_empty() {
        Verdict::NotSettled
    } else {
        overall(&then, FindingView::Decided).0
    };
    Some(WhenBuilt {
        verdict,
        rulesets: then.iter().map(|by| by.bench.ruleset.id.as_str()).collect(),
    })
}

/// The first stated circumstance that lies outside what the ruleset covers.
fn not_covered(scene: &Scene<'_>, ruleset: &Ruleset) -> Option<Item> {
    let decision = scene.options.decision;
    let conditions = ruleset.covers.conditions.iter();
    conditions
        .filter(|condition| holds(scene, condition, decision) == Truth::False)
        .map(|condition| condition.item)
        .next()
}

/// When it was built, where somebody wrote that down.
pub(super) fn built(guard: &Guard) -> Option<YearSpan> {
    guard.of(Item::Built).find_map(|(_, observation)| {
        match observation.reading.as_ref().map(|reading| &reading.value) {
            Some(Value::Years(span)) => Some(*span),
            _ => None,
        }
    })
}

#[cfg(test)]
mod tests {
    use std::sync::Arc;

    use super::*;
    use crate::judge::Chain;
    use crate::judge::from_csv;
    use crate::rules::load_to_judge;

    const SAID: [(&str, &str, &str); 8] = [
        ("place", "deck", "stair"),
        ("height", "36 in", "42 in"),
        ("opening", "4 1/2 in", "3 1/2 in"),
        ("post section", "3 1/2 x 3 1/2 in", "1 1/2 x 3 1/2 in"),
        ("post spacing", "6 ft", "4 ft"),
        ("post fastening", "lag screws", "through bolts"),
        ("condition", "dry", "rot"),
        ("moves when pushed", "no", "a lot"),
    ];

    /// The guard, with its first readings or the others.
    fn guard(of: impl Fn(&(&str, &'static str, &'static str)) -> &'static str) -> Guard {
        let rows = SAID
            .iter()
            .map(|said| format!("g,{},{}\n", said.0, of(said)));
        from_csv::guards(&format!("guard,item,reading\n{}", rows.collect::<String>())).remove(0)
    }

    fn told<'j>(judged: &'j Judged<'_>) -> Vec<(&'j str, Verdict, Option<&'j Chain>)> {
        let findings = judged.findings.iter();
        let told = findings.map(|of| (of.rule.id.as_str(), of.verdict, of.chain.as_deref()));
        told.collect()
    }

    /// Only what no reading of the load path changed is taken over, and it is the same.
    #[test]
    fn a_changed_guard_is_judged_as_if_nobody_had_judged_it_before() {
        let rulesets = ["us-dwelling-2018", "canada-dwelling"].map(|id| {
            let loaded = load_to_judge(id, &|_| None);
            loaded.ruleset.expect("it is embedded")
        });
        let facts = SurveyFacts::default();
        let options = Options::default();
        let before = guard(|(_, first, _)| first);
        let others = guard(|(_, _, other)| other);
        let judged = judge(&before, &facts, &rulesets, options);
        let mut taken_over = Vec::new();
        for (at, (item, ..)) in SAID.iter().enumerate() {
            // as a remedy does it: the old reading goes, the new one stands behind
            let mut left_out = before.clone();
            left_out.observations.remove(at);
            let mut changed = left_out.clone();
            changed.observations.push(others.observations[at].clone());
            for other in [changed, left_out] {
                let anew = judge(&other, &facts, &rulesets, options);
                let changed = judge_changed(&other, (&before, &judged), &facts, &rulesets, options);
                assert_eq!(told(&changed), told(&anew), "{item}");
                let pairs = judged.findings.iter().zip(&changed.findings);
                let mut chains =
                    pairs.filter_map(|(old, new)| Some((old.chain.as_ref()?, new.chain.as_ref()?)));
                if chains.any(|(old, new)| Arc::ptr_eq(old, new)) {
                    taken_over.push(*item);
                }
            }
        }
        assert!(taken_over.contains(&"opening"), "{taken_over:?}");
        let elsewhere = |item: &&str| ["place", "opening"].contains(item);
        assert!(taken_over.iter().all(elsewhere), "{taken_over:?}");
    }
}
