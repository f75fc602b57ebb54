//! What the deciding rulesets leave out and may bear on the guard at hand.

use crate::judge::Decision;
use crate::judge::Options;
use crate::judge::condition::Truth;
use crate::judge::condition::all;
use crate::judge::scene::Scene;
use crate::rules::Asked;
use crate::rules::Ruleset;
use crate::survey::Guard;
use crate::survey::SurveyFacts;

/// What the deciding rulesets leave out: what bears on this guard, and after
/// an "If" what may, since nobody wrote down whether it does. Law decides
/// where there is some, else guidance.
#[must_use]
pub fn leave_outs(
    guard: &Guard,
    facts: &SurveyFacts,
    rulesets: &[Ruleset],
    options: Options,
) -> Vec<String> {
    let scene = Scene::new(guard, facts, options);
    let law = rulesets.iter().any(|ruleset| !ruleset.advisory);
    let mut said = Vec::new();
    for ruleset in rulesets {
        let decides = ruleset.asked == Asked::Chosen && !(law && ruleset.advisory);
        if !decides || all(&scene, &ruleset.covers.conditions, Decision::Simple) == Truth::False {
            continue;
        }
        for part in &ruleset.leaves_out {
            let says = match all(&scene, &part.when, options.decision) {
                Truth::False => continue,
                Truth::True => part.says.clone(),
                Truth::Unknown | Truth::Doubt => part.conditional(),
            };
            if !said.contains(&says) {
                said.push(says);
            }
        }
    }
    said
}
