//! A guard as a whole: its verdict and its hazards.

use crate::items::Hazard;
use crate::items::Item;
use crate::items::Verdict;
use crate::judge::AsBuilt;
use crate::judge::Finding;
use crate::judge::HazardVerdict;
use crate::judge::Judged;
use crate::judge::MemoryRules;
use crate::judge::Options;
use crate::judge::Reason;
use crate::judge::WhenBuilt;
use crate::judge::condition::Truth;
use crate::judge::condition::holds;
use crate::judge::rule::Bench;
use crate::judge::rule::Decides;
use crate::judge::rule::InForceThen;
use crate::judge::rule::findings;
use crate::judge::scene::Scene;
use crate::quantities::YearSpan;
use crate::reading::Value;
use crate::rules::Asked;
use crate::rules::Ruleset;
use crate::rules::Status;
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
    let benches = benches(&scene, rulesets);
    let rules: usize = rulesets.iter().map(|ruleset| ruleset.rules.len()).sum();
    // a rule on any opening makes up to three
    let mut all: Vec<Finding<'r>> = Vec::with_capacity(rules + 2 * rulesets.len());
    for bench in &benches {
        findings(&scene, bench, &mut all);
    }
    let when_built = when_built(&scene, &benches, &all);
    let could_not_judge = guard.rows > 0 && guard.rows_in_error >= guard.rows;
    let never_meets = |verdict| {
        if guard.rows_in_error > 0 && verdict == Verdict::Meets {
            Verdict::NotMeasured
        } else {
            verdict
        }
    };
    let warns_only = |finding: &Finding<'_>| {
        finding.rule.status == Status::Memory && options.memory == MemoryRules::Warn
    };
    let advises = |finding: &&Finding<'_>| {
        finding.ruleset.advisory && !finding.binding && !warns_only(finding)
    };
    let advises_the_guard = |finding: &&Finding<'_>| advises(finding) && finding.counts();
    Judged {
        verdict: never_meets(overall(&all, |finding| finding.counts_as())),
        reading_alone: never_meets(overall(&all, |finding| {
            if finding.partial && finding.reading_alone == Verdict::Meets {
                Verdict::NotMeasured
            } else {
                finding.reading_alone
            }
        })),
        guidance: worst(all.iter().filter(advises_the_guard).map(Finding::counts_as))
            .map(never_meets),
        when_built: when_built.map(|when| WhenBuilt {
            verdict: never_meets(when.verdict),
            ..when
        }),
        could_not_judge,
        hazards: hazards(&all, advises).map(|of| HazardVerdict {
            verdict: of.verdict.map(never_meets),
            guidance: of.guidance.map(never_meets),
            ..of
        }),
        findings: all,
    }
}

/// The worst of what decides and of what advises, for each hazard.
fn hazards<'r>(all: &[Finding<'r>], advises: impl Fn(&&Finding<'r>) -> bool) -> [HazardVerdict; 5] {
    let mut hazards = Hazard::ALL.map(|hazard| HazardVerdict {
        hazard,
        verdict: None,
        guidance: None,
    });
    for finding in all {
        let mut of = hazards.iter_mut();
        let Some(of) = of.find(|of| of.hazard == finding.rule.hazard) else {
            continue;
        };
        let into = if finding.binding {
            &mut of.verdict
        } else if advises(&finding) {
            &mut of.guidance
        } else {
            continue;
        };
        let verdict = finding.counts_as();
        *into = Some(into.map_or(verdict, |worst| worst.min(verdict)));
    }
    hazards
}

/// The worst of what applies; if nothing does, that nothing does.
fn worst(verdicts: impl Iterator<Item = Verdict>) -> Option<Verdict> {
    verdicts.min()
}

/// The guard's verdict: the worst binding finding; `does not apply` only where a
/// trigger was stated and is false, and no rule from memory applies; `not
/// measured` where nothing could decide.
fn overall(all: &[Finding<'_>], verdict_of: impl Fn(&Finding<'_>) -> Verdict) -> Verdict {
    let binding = || {
        all.iter()
            .filter(|finding| finding.binding && finding.counts())
    };
    let Some(worst) = worst(binding().map(&verdict_of)) else {
        return Verdict::NotMeasured;
    };
    let stated =
        |reason: &Reason<'_>| matches!(reason, Reason::TriggerFalse(_) | Reason::Excepted(_));
    // a rule from memory that applies decides nothing, and yet something is asked
    let undecided = worst == Verdict::DoesNotApply
        && (!binding().any(|finding| finding.reasons.iter().any(stated))
            || warnings(all).any(|finding| verdict_of(finding) != Verdict::DoesNotApply));
    if undecided {
        Verdict::NotMeasured
    } else {
        worst
    }
}

/// Findings of rules from memory that decide nothing, of the rulesets that do.
fn warnings<'f, 'r>(all: &'f [Finding<'r>]) -> impl Iterator<Item = &'f Finding<'r>> {
    let law = all.iter().any(|finding| !finding.ruleset.advisory);
    all.iter().filter(move |finding| {
        let from_memory =
            !finding.binding && finding.counts() && finding.rule.status == Status::Memory;
        from_memory && !(law && finding.ruleset.advisory)
    })
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

/// Whether a ruleset's years may hold the time of building, and both are known.
fn was_in_force(ruleset: &Ruleset, built: Option<YearSpan>) -> bool {
    built.is_some()
        && ruleset.in_force.is_some()
        && InForceThen::of(ruleset, built) == InForceThen::Perhaps
}

/// How the guard fares by the rules of law that were in force when it was built.
fn when_built<'r>(
    scene: &Scene<'_>,
    benches: &[Bench<'r>],
    all: &[Finding<'r>],
) -> Option<WhenBuilt<'r>> {
    let options = scene.options;
    let built = built(scene.guard);
    if options.as_built == AsBuilt::NotAsked {
        return None;
    }
    let then: Vec<&'r Ruleset> = benches
        .iter()
        .filter(|bench| !bench.ruleset.advisory && was_in_force(bench.ruleset, built))
        .map(|bench| bench.ruleset)
        .collect();
    let of_then = |finding: &&Finding<'_>| {
        let memory = finding.rule.status == Status::Memory;
        let counts = !memory || options.memory == MemoryRules::Decide;
        counts
            && finding.counts()
            && then
                .iter()
                .any(|ruleset| std::ptr::eq(*ruleset, finding.ruleset))
    };
    let verdict = worst(all.iter().filter(of_then).map(Finding::counts_as));
    let rulesets: Vec<&'r str> = then.iter().map(|ruleset| ruleset.id.as_str()).collect();
    (!rulesets.is_empty()).then(|| WhenBuilt {
        verdict: verdict.unwrap_or(Verdict::NotMeasured),
        rulesets,
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
