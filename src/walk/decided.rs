//! What an answer has decided: a danger, a finding, a shortfall whichever holds.

use crate::items::Item;
use crate::items::Verdict;
use crate::judge::Agreed;
use crate::judge::Finding;
use crate::judge::Judged;
use crate::walk::NowSettled;
use crate::walk::Reply;
use crate::walk::Walk;
use crate::walk::plan::stopped_at_first_movement;
use crate::walk::question::Asking;
use crate::walk::walk::Warned;

impl<'r> Walk<'r> {
    /// Judges anew, and says what has changed: a danger, what is decided now, and at the
    /// first shortfall whom to keep away.
    pub(super) fn look_again(&mut self, said: &mut Vec<Reply<'r>>) {
        let before = self.guard.take();
        self.judge_anew();
        self.ask_for_the_tape();
        let Some((guard, judged)) = &self.guard else {
            return;
        };
        let known = before
            .as_ref()
            .map_or(0, |(_, judged)| judged.dangers.len());
        if judged.dangers.len() > known {
            self.say_stop(said);
            self.warned = Warned::Yes;
            return;
        }
        if stopped_at_first_movement(guard)
            && let Some(here) = &self.here
        {
            // one stops at the first movement: no bar is tried any more
            self.passed
                .over
                .insert((here.compared(), Asking::Item(Item::InfillLoose)));
        }
        let Some(settled) = self.settled(before.as_ref().map(|(_, judged)| judged)) else {
            return;
        };
        let short = settled.falls_short();
        said.push(Reply::Settled(Box::new(settled)));
        if short && self.warned == Warned::No {
            self.warned = Warned::Yes;
            said.push(Reply::UntilMended);
        }
    }

    /// What to do where a danger was seen.
    pub(super) fn say_stop(&self, said: &mut Vec<Reply<'r>>) {
        if let (Some(here), Some((_, judged))) = (&self.here, &self.guard)
            && !judged.dangers.is_empty()
        {
            said.push(Reply::Stop(here.clone(), judged.dangers.clone()));
        }
    }

    /// What is decided now and was not before.
    fn settled(&self, before: Option<&Judged<'r>>) -> Option<NowSettled<'r>> {
        let (_, judged) = self.guard.as_ref()?;
        // a danger is all there is to say: the rest waits
        if !judged.dangers.is_empty() {
            return None;
        }
        let known = |finding: &Finding<'r>| {
            before.is_some_and(|before| {
                before.findings.iter().any(|old| {
                    std::ptr::eq(old.rule, finding.rule)
                        && old.item == finding.item
                        && old.verdict == finding.verdict
                        && old.margin == finding.margin
                })
            })
        };
        let decided = |verdict: Verdict| {
            matches!(
                verdict,
                Verdict::FallsShort | Verdict::Meets | Verdict::NotSettled | Verdict::TooClose
            )
        };
        let findings = judged.findings.iter().enumerate();
        let findings: Vec<usize> = findings
            .filter(|(_, finding)| decided(finding.verdict) && !known(finding))
            // that what the eye sees is well, what was noted says already
            .filter(|(_, finding)| {
                finding.verdict != Verdict::Meets || finding.item.info().kind.holds_a_length()
            })
            .map(|(index, _)| index)
            .collect();
        let known = |agreed: &Agreed<'r>| {
            before.is_some_and(|before| {
                before.agreed.iter().any(|old| {
                    std::ptr::eq(old.ruleset, agreed.ruleset)
                        && (old.hazard, old.verdict) == (agreed.hazard, agreed.verdict)
                })
            })
        };
        let agreed = judged.agreed.iter().enumerate();
        let agreed: Vec<usize> = agreed
            .filter(|(_, agreed)| agreed.verdict == Verdict::FallsShort && !known(agreed))
            .filter(|(_, agreed)| agreed.hazard.is_some())
            .map(|(index, _)| index)
            .collect();
        (!findings.is_empty() || !agreed.is_empty()).then(|| NowSettled {
            judged: judged.clone(),
            findings,
            agreed,
        })
    }
}
