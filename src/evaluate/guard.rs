//! A guard as a whole: its verdict, its hazards, what was taken as given and
//! what to find out next.

use std::collections::BTreeMap;

use crate::evaluate::Assumption;
use crate::evaluate::Finding;
use crate::evaluate::HazardVerdict;
use crate::evaluate::Judged;
use crate::evaluate::MemoryRules;
use crate::evaluate::Options;
use crate::evaluate::Question;
use crate::evaluate::Reason;
use crate::evaluate::condition::Truth;
use crate::evaluate::condition::holds;
use crate::evaluate::doubt;
use crate::evaluate::opening;
use crate::evaluate::rule::Bench;
use crate::evaluate::rule::Decides;
use crate::evaluate::rule::InForceThen;
use crate::evaluate::rule::findings;
use crate::evaluate::scene::Scene;
use crate::items::Hazard;
use crate::items::Item;
use crate::items::Kind;
use crate::items::Verdict;
use crate::measure::LengthUnit;
use crate::measure::YearSpan;
use crate::reading::Graduation;
use crate::reading::Value;
use crate::rules::Ruleset;
use crate::rules::Status;
use crate::survey::Guard;
use crate::survey::SurveyFacts;
use crate::survey::TapeClass;

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
    let all: Vec<Finding<'r>> = benches
        .iter()
        .flat_map(|bench| findings(&scene, bench))
        .collect();
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
    Judged {
        verdict: never_meets(overall(&all, |finding| finding.counts_as())),
        reading_alone: never_meets(overall(&all, |finding| {
            if finding.partial && finding.reading_alone == Verdict::Meets {
                Verdict::NotMeasured
            } else {
                finding.reading_alone
            }
        })),
        guidance: worst(all.iter().filter(advises).map(Finding::counts_as)).map(never_meets),
        could_not_judge,
        hazards: Hazard::ALL.map(|hazard| {
            let of = || all.iter().filter(|finding| finding.rule.hazard == hazard);
            let decides = of().filter(|finding| finding.binding);
            HazardVerdict {
                hazard,
                verdict: worst(decides.map(Finding::counts_as)).map(never_meets),
                guidance: worst(of().filter(advises).map(Finding::counts_as)).map(never_meets),
            }
        }),
        assumptions: assumptions(&scene, &benches, &all),
        questions: questions(&all),
        findings: all,
    }
}

/// The worst of what applies; if nothing does, that nothing does.
fn worst(verdicts: impl Iterator<Item = Verdict>) -> Option<Verdict> {
    verdicts.min()
}

/// The guard's verdict: the worst binding finding; `does not apply` only where a
/// trigger was stated and is false; `not measured` where nothing could decide.
fn overall(all: &[Finding<'_>], verdict_of: impl Fn(&Finding<'_>) -> Verdict) -> Verdict {
    let binding = || all.iter().filter(|finding| finding.binding);
    let Some(worst) = worst(binding().map(verdict_of)) else {
        return Verdict::NotMeasured;
    };
    let stated =
        |reason: &Reason<'_>| matches!(reason, Reason::TriggerFalse(_) | Reason::Excepted(_));
    if worst == Verdict::DoesNotApply
        && !binding().any(|finding| finding.reasons.iter().any(stated))
    {
        return Verdict::NotMeasured;
    }
    worst
}

fn benches<'r>(scene: &Scene<'_>, rulesets: &'r [Ruleset]) -> Vec<Bench<'r>> {
    let authority = Authority::of(rulesets);
    let outside: Vec<Option<Item>> = rulesets.iter().map(|r| not_covered(scene, r)).collect();
    let built = built(scene.guard);
    let law_covers = rulesets
        .iter()
        .zip(&outside)
        .any(|(ruleset, outside)| !ruleset.advisory && outside.is_none());
    rulesets
        .iter()
        .zip(&outside)
        .map(|(ruleset, outside)| Bench {
            ruleset,
            not_covered: outside.map(|item| {
                if law_covers && !ruleset.advisory {
                    Reason::CoveredElsewhere(item)
                } else {
                    Reason::NotCovered(item)
                }
            }),
            decides: if ruleset.advisory && authority == Authority::Law {
                Decides::No
            } else {
                Decides::Yes
            },
            in_force: InForceThen::of(ruleset, built),
        })
        .collect()
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
fn built(guard: &Guard) -> Option<YearSpan> {
    guard.of(Item::Built).find_map(|(_, observation)| {
        match observation.reading.as_ref().map(|reading| &reading.value) {
            Some(Value::Years(span)) => Some(*span),
            _ => None,
        }
    })
}

fn assumptions<'r>(
    scene: &Scene<'_>,
    benches: &[Bench<'r>],
    all: &[Finding<'r>],
) -> Vec<Assumption<'r>> {
    let mut taken = Vec::new();
    for bench in benches {
        if bench.not_covered.is_some() {
            continue;
        }
        for condition in &bench.ruleset.covers.conditions {
            if holds(scene, condition, scene.options.decision) == Truth::Unknown {
                taken.push(Assumption::Covered {
                    ruleset: &bench.ruleset.id,
                    item: condition.item,
                });
            }
        }
    }
    let has = |item| scene.guard.of(item).next().is_some();
    if !has(Item::State) {
        taken.push(Assumption::Existing);
    }
    let openings = [
        Item::Opening,
        Item::BottomGap,
        Item::EndGap,
        Item::StairTriangle,
    ];
    if openings.into_iter().any(has) && !has(Item::Infill) {
        taken.push(Assumption::InfillStiff);
    }
    if has(Item::Opening) && !has(Item::OpeningsChecked) && !ball_everywhere(scene.guard) {
        taken.push(Assumption::EveryOpening);
    }
    for finding in all {
        if finding.measured.as_ref().is_some_and(|m| m.value.is_some()) {
            let worst = Assumption::WorstPlace(finding.item);
            if !taken.contains(&worst) && finding.item.is_at_guard() {
                taken.push(worst);
            }
        }
    }
    taken.extend(tapes(scene, all));
    taken.extend(no_ruleset_covers(benches, built(scene.guard)));
    taken
}

fn ball_everywhere(guard: &Guard) -> bool {
    guard.of(Item::Opening).any(|(_, observation)| {
        let reading = observation.reading.as_ref();
        reading
            .is_some_and(|reading| matches!(&reading.value, Value::Ball(ball) if ball.everywhere))
    })
}

/// Tapes that nobody named, and how finely readings were taken to be read
/// wherever that made a finding too close to call.
fn tapes<'r>(scene: &Scene<'_>, all: &[Finding<'r>]) -> Vec<Assumption<'r>> {
    let mut taken: Vec<Assumption<'r>> = Vec::new();
    let mut add = |assumption: Assumption<'r>| {
        if !taken.contains(&assumption) {
            taken.push(assumption);
        }
    };
    for finding in all.iter().filter(|finding| finding.uncertainty.is_some()) {
        for index in &finding.readings {
            let observation = scene.guard.observation(*index);
            let Some(reading) = &observation.reading else {
                continue;
            };
            let Some((unit, graduation)) = read(&reading.value) else {
                continue;
            };
            let file = usize::try_from(observation.row.file).unwrap_or(usize::MAX);
            let file = scene
                .facts
                .file_facts
                .get(file)
                .copied()
                .unwrap_or_default();
            if file.tape.is_none() {
                add(Assumption::Tape(match doubt::tape_taken(unit) {
                    TapeClass::Handbook44 => "handbook 44",
                    TapeClass::I | TapeClass::II | TapeClass::III => "class II",
                }));
            }
            let step = opening::step(graduation, unit).filter(|_| file.read_to.is_none());
            if let (Verdict::TooClose, Some(step)) = (finding.verdict, step) {
                add(Assumption::ReadTo {
                    written: observation.written.to_string(),
                    step,
                });
            }
        }
    }
    taken
}

fn read(value: &Value) -> Option<(LengthUnit, Graduation)> {
    match value {
        Value::Measure(measure) => Some((measure.unit, measure.graduation)),
        Value::Shape(shape) => Some((shape.unit, shape.graduation)),
        Value::StairTriangle(stair) => Some((stair.unit, stair.graduation)),
        Value::Foothold(foothold) => Some((foothold.unit, foothold.graduation)),
        Value::Age(_)
        | Value::Ball(_)
        | Value::Count(_)
        | Value::Date { .. }
        | Value::None
        | Value::Section(..)
        | Value::Stick(_)
        | Value::Text(_)
        | Value::ThingToClimb(_)
        | Value::Unknown
        | Value::Word(_)
        | Value::Years(_) => None,
    }
}

/// Where the year is known and no ruleset of law states years that hold it.
fn no_ruleset_covers<'r>(benches: &[Bench<'r>], built: Option<YearSpan>) -> Option<Assumption<'r>> {
    let built = built?;
    let mut law = benches
        .iter()
        .filter(|bench| !bench.ruleset.advisory)
        .peekable();
    law.peek()?;
    let covered =
        law.any(|bench| bench.ruleset.in_force.is_some() && bench.in_force == InForceThen::Perhaps);
    (!covered).then_some(Assumption::NoRulesetCovers(built))
}

/// Each missing item once: what decides most findings first, law before guidance.
fn questions(all: &[Finding<'_>]) -> Vec<Question> {
    let mut waiting: BTreeMap<Item, (usize, usize)> = BTreeMap::new();
    for finding in all {
        if finding.verdict != Verdict::NotMeasured && !finding.partial {
            continue;
        }
        let mut asked: Vec<Item> = Vec::new();
        for reason in &finding.reasons {
            if let Some(item) = asks_for(reason, finding.item)
                && !asked.contains(&item)
            {
                asked.push(item);
                let count = waiting.entry(item).or_default();
                count.0 += usize::from(finding.binding);
                count.1 += 1;
            }
        }
    }
    let mut questions: Vec<(usize, usize, Item)> = waiting
        .into_iter()
        .map(|(item, (binding, findings))| (binding, findings, item))
        .collect();
    questions.sort_by_key(|(binding, findings, item)| {
        (
            std::cmp::Reverse(*binding),
            std::cmp::Reverse(*findings),
            *item,
        )
    });
    questions
        .into_iter()
        .map(|(_, findings, item)| Question { item, findings })
        .collect()
}

/// The item that would answer a reason, if a person can find it out.
fn asks_for(reason: &Reason<'_>, judged: Item) -> Option<Item> {
    match reason {
        Reason::CircumstanceMissing(item) | Reason::NotWritten(item) => {
            (!matches!(item.info().kind, Kind::Text)).then_some(*item)
        }
        Reason::BoundDoesNotSettle
        | Reason::BoundsStraddle
        | Reason::FootholdDepthMissing
        | Reason::LiftMissing
        | Reason::NeedsPush
        | Reason::NosingNotCounted
        | Reason::OutsideZone(_)
        | Reason::PushTooWeak
        | Reason::NoClosedForm
        | Reason::WhereDoesItLie(_) => Some(judged),
        Reason::OnlySomeOpenings => Some(Item::OpeningsChecked),
        Reason::BottomGapIsLift
        | Reason::CouldNotLook(_)
        | Reason::CoveredElsewhere(_)
        | Reason::ExactlyAtLimit
        | Reason::Excepted(_)
        | Reason::ForAPerson(_)
        | Reason::MayBeTriangle
        | Reason::NoBuildTolerance
        | Reason::NoGuard
        | Reason::NotCovered(_)
        | Reason::NotInForceWhenBuilt
        | Reason::PushedByHand
        | Reason::SettledByGauge(_)
        | Reason::TakenInZone(_)
        | Reason::TriggerFalse(_)
        | Reason::TriggerInDoubt(_)
        | Reason::Unreadable(_) => None,
    }
}
