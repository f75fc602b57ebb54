//! One plan for a guard that satisfies all chosen rules at once, what else would do, what
//! is refused and why.

use crate::judge;
use crate::judge::Judged;
use crate::judge::Options;
use crate::remedy::aim::Measuring;
use crate::remedy::bench::RemedyBench;
use crate::remedy::planned::BestSteps;
use crate::remedy::planned::PlanDepth;
use crate::remedy::planned::RemedyPlan;
use crate::remedy::topics::is_high_outdoors;
use crate::rules::Ruleset;
use crate::survey::Guard;
use crate::survey::SurveyFacts;

/// The steps that [`plan`] takes as well, without what else would do; for a report of
/// many guards, since less is judged for it.
#[must_use]
pub fn best_steps<'r>(
    guard: &Guard,
    judged: &Judged<'r>,
    facts: &SurveyFacts,
    rulesets: &'r [Ruleset],
    options: Options,
    depth: PlanDepth,
) -> BestSteps {
    let bench = RemedyBench {
        guard,
        judge: &|changed| {
            judge::judge_by_findings(changed, Some((guard, judged)), facts, rulesets, options)
        },
        measuring: Measuring::of(guard, facts),
        high: is_high_outdoors(guard),
        depth,
    };
    bench.best(judged)
}

/// Works out what would put a guard right, and judges every part of it.
#[must_use]
pub fn plan<'r>(
    guard: &Guard,
    judged: &Judged<'r>,
    facts: &SurveyFacts,
    rulesets: &'r [Ruleset],
    options: Options,
) -> RemedyPlan {
    let bench = RemedyBench {
        guard,
        judge: &|changed| judge::judge_changed(changed, (guard, judged), facts, rulesets, options),
        measuring: Measuring::of(guard, facts),
        high: is_high_outdoors(guard),
        depth: PlanDepth::All,
    };
    bench.plan(judged)
}
