//! What the rules that apply ask of an item, together.

use crate::items::Item;
use crate::items::Verdict;
use crate::judge::Finding;
use crate::judge::Judged;
use crate::quantities::Length;
use crate::rules::Demand;
use crate::rules::Subject;

/// The strictest of all that is asked of a length.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) struct Demands {
    /// The least that is asked.
    pub(super) least: Option<Length>,
    /// The most that is allowed; of a ball that must not pass, its size.
    pub(super) most: Option<Length>,
}

impl Demands {
    /// Of all rules that apply, advice too; from memory only what somebody asked for.
    pub(super) fn of(judged: &Judged<'_>, item: Item) -> Demands {
        let applies = |finding: &&Finding<'_>| finding.verdict != Verdict::DoesNotApply;
        Demands::of_findings(judged.findings.iter().filter(applies), item)
    }

    /// The same of rules that do not apply as well: a part that is not there yet.
    pub(super) fn of_any(judged: &Judged<'_>, item: Item) -> Demands {
        Demands::of_findings(judged.findings.iter(), item)
    }

    fn of_findings<'f, 'r: 'f>(
        findings: impl Iterator<Item = &'f Finding<'r>>,
        item: Item,
    ) -> Demands {
        let mut all = Demands::default();
        for finding in findings {
            if finding.from_memory {
                continue;
            }
            for check in &finding.rule.checks {
                let of_item = match check.subject {
                    Subject::AnyOpening => Item::ANY_OPENING.contains(&item),
                    Subject::Item(of) => of == item,
                    Subject::LoadPath => false,
                };
                if of_item {
                    all.take(&check.demand);
                }
            }
        }
        all
    }

    fn take(&mut self, demand: &Demand) {
        let (least, most) = match demand {
            Demand::Length(bounds) => (
                [&bounds.at_least, &bounds.above],
                [&bounds.at_most, &bounds.below],
            ),
            Demand::Opening(opening) => (
                [&opening.at_least, &None],
                [&opening.stops_ball, &opening.at_most],
            ),
            Demand::Count(_)
            | Demand::Foothold(_)
            | Demand::Load(_)
            | Demand::VOpening(_)
            | Demand::Words { .. } => return,
        };
        for limit in least.into_iter().flatten() {
            self.least = Some(
                self.least
                    .map_or(limit.length, |least| least.max(limit.length)),
            );
        }
        for limit in most.into_iter().flatten() {
            self.most = Some(
                self.most
                    .map_or(limit.length, |most| most.min(limit.length)),
            );
        }
        if let Demand::Opening(opening) = demand
            && let Some((above, below)) = &opening.not_within
            && self
                .most
                .is_none_or(|most| most < below.length && most > above.length)
        {
            self.most = Some(above.length);
        }
    }
}
