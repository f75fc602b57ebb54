//! What was taken as given, to be printed with the findings.

use crate::items::Hole;
use crate::items::Item;
use crate::items::Verdict;
use crate::judge::AskedWhenBuilt;
use crate::judge::Assumption;
use crate::judge::Finding;
use crate::judge::Judged;
use crate::judge::Options;
use crate::judge::condition::Truth;
use crate::judge::condition::holds;
use crate::judge::doubt;
use crate::judge::guard::benches;
use crate::judge::guard::built;
use crate::judge::opening;
use crate::judge::rule::Bench;
use crate::judge::rule::InForceThen;
use crate::judge::scene::Scene;
use crate::quantities::YearSpan;
use crate::reading::Value;
use crate::rules::Ruleset;
use crate::survey::Guard;
use crate::survey::SurveyFacts;
use crate::survey::TapeClass;

/// What was taken as given when a guard was judged.
#[must_use]
pub fn assumptions<'r>(
    guard: &Guard,
    judged: &Judged<'r>,
    facts: &SurveyFacts,
    rulesets: &'r [Ruleset],
    options: Options,
) -> Vec<Assumption<'r>> {
    let scene = Scene::new(guard, facts, options);
    let benches = benches(&scene, rulesets);
    all(&scene, &benches, &judged.findings)
}

fn all<'r>(scene: &Scene<'_>, benches: &[Bench<'r>], all: &[Finding<'r>]) -> Vec<Assumption<'r>> {
    let mut taken = Vec::new();
    for bench in benches {
        if bench.not_covered.is_some() {
            continue;
        }
        // what is found on stairs alone is nowhere else taken as anything
        let off_stairs = |item: Item| item.is_of_stairs() && scene.on_a_stair() == Some(false);
        let conditions = bench.ruleset.covers.conditions.iter();
        for condition in conditions.filter(|condition| !off_stairs(condition.item)) {
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
    let tried = |item: &Item| item.info().hole == Hole::Any || *item == Item::StairTriangle;
    let mut openings = Item::all().filter(tried);
    if openings.any(has) && !has(Item::Infill) {
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
    if scene.options.when_built == AskedWhenBuilt::Asked && built(scene.guard).is_none() {
        taken.push(Assumption::BuiltUnknown);
    }
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
            let Some((unit, graduation)) = reading.value.tape() else {
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
