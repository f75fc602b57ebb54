//! What is the matter with a guard: a paragraph's worth for each thing measured,
//! with what asks, by how much it is missed, and one remedy for all of it.

use std::cmp::Reverse;

use std::collections::HashSet;

use crate::items::GuardWord;
use crate::items::Item;
use crate::items::ItemWord;
use crate::items::Verdict;
use crate::judge::Finding;
use crate::judge::MemoryRules;
use crate::judge::Reason;
use crate::quantities::Length;
use crate::report::JudgedGuard;
use crate::report::ReportBasis;
use crate::report::reader;
use crate::rules::Asked;
use crate::rules::Status;
use crate::rules::Urgency;
use crate::survey::Guard;
use crate::survey::Observation;
use crate::survey::RowPlace;

/// By whose word something is asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum AskedBy {
    /// A building rule.
    Rules,
    /// Guidance, and no law.
    Advice,
    /// A rule that nobody read, or one of another time: it only warns.
    Warning,
}

impl AskedBy {
    pub(super) fn of(finding: &Finding<'_>, basis: &ReportBasis<'_>) -> AskedBy {
        let memory = finding.rule.status == Status::Memory
            && basis.options.memory == MemoryRules::Warn
            && !finding.binding;
        if memory || finding.ruleset.asked == Asked::OfItsTime {
            AskedBy::Warning
        } else if finding.ruleset.advisory {
            AskedBy::Advice
        } else {
            AskedBy::Rules
        }
    }

    /// As it stands in a list of work.
    pub(super) const fn name(self) -> &'static str {
        match self {
            AskedBy::Rules => "rules",
            AskedBy::Advice => "advice",
            AskedBy::Warning => "a rule from memory",
        }
    }
}

/// One thing measured, with everything that is asked of it.
#[derive(Clone, Debug)]
pub(super) struct ThingMeasured<'e, 'r> {
    /// Under which item it is spoken of.
    pub(super) topic: Item,
    /// What asks, worst first; those that are met come last.
    pub(super) asks: Vec<(AskedBy, &'e Finding<'r>)>,
}

impl<'e, 'r> ThingMeasured<'e, 'r> {
    /// What is missed, worst first: rules before advice, the strictest of each first.
    pub(super) fn missed(&self) -> impl Iterator<Item = (AskedBy, &'e Finding<'r>)> {
        self.with(Verdict::FallsShort)
    }

    /// What came out so.
    pub(super) fn with(
        &self,
        verdict: Verdict,
    ) -> impl Iterator<Item = (AskedBy, &'e Finding<'r>)> {
        let asks = self.asks.iter().copied();
        asks.filter(move |(_, finding)| finding.verdict == verdict)
    }

    /// Whether a building rule or advice is missed.
    pub(super) fn is_missed(&self) -> bool {
        self.missed().any(|(by, _)| by != AskedBy::Warning)
    }

    /// The demand that a remedy must satisfy: the one that is missed by most.
    pub(super) fn strictest(&self) -> Option<&'e Finding<'r>> {
        let missed = self.missed().map(|(_, finding)| finding);
        missed.min_by_key(|finding| finding.margin.unwrap_or(Length::ZERO))
    }

    /// Whether somebody should act at once.
    pub(super) fn is_urgent(&self) -> bool {
        let mut missed = self.missed();
        missed.any(|(by, finding)| by != AskedBy::Warning && finding.rule.urgency == Urgency::Now)
    }

    /// The readings that are spoken of: of the topic itself first, then what may be a danger.
    pub(super) fn readings<'g>(&self, guard: &'g Guard) -> Vec<&'g Observation> {
        let mut known: HashSet<(RowPlace, Item)> = HashSet::new();
        let mut items: Vec<Item> = Item::all()
            .filter(|item| item.topic() == self.topic)
            .collect();
        items.sort_by_key(|item| (*item != self.topic, !item.may_state_a_danger()));
        let all = items.into_iter();
        let all = all.flat_map(|item| guard.of(item).map(|(_, observation)| observation));
        all.filter(|observation| known.insert((observation.row, observation.item)))
            .collect()
    }
}

/// Everything that is missed, too near to tell or unclear, the most pressing first.
pub(super) fn matters<'e, 'r>(
    entry: &'e JudgedGuard<'r>,
    basis: &ReportBasis<'_>,
) -> Vec<ThingMeasured<'e, 'r>> {
    let mut matters: Vec<ThingMeasured<'e, 'r>> = Vec::new();
    for finding in &entry.judged.findings {
        let said = finding.counts() && finding.verdict != Verdict::DoesNotApply;
        // that a ruleset does not cover the guard is said once, and of no single rule
        let covered = !finding
            .reasons
            .iter()
            .any(|reason| matches!(reason, Reason::NotCovered(_)));
        if !said || (!covered && finding.verdict == Verdict::NotSettled) {
            continue;
        }
        let topic = reader::topic(finding);
        let ask = (AskedBy::of(finding, basis), finding);
        match matters.iter_mut().find(|matter| matter.topic == topic) {
            Some(matter) => matter.asks.push(ask),
            None => matters.push(ThingMeasured {
                topic,
                asks: vec![ask],
            }),
        }
    }
    for matter in &mut matters {
        let order = |(by, finding): &(AskedBy, &Finding<'_>)| {
            let margin = finding.margin.unwrap_or(Length::ZERO);
            (finding.verdict, *by, finding.rule.urgency, margin)
        };
        matter.asks.sort_by_key(order);
    }
    let open = |matter: &ThingMeasured<'_, '_>| {
        let mut asks = matter.asks.iter();
        asks.any(|(_, finding)| is_said(finding.verdict))
    };
    matters.retain(open);
    matters.sort_by_key(|matter| {
        let first = matter
            .asks
            .first()
            .map(|(by, finding)| (finding.verdict, *by));
        let share = matter
            .missed()
            .filter_map(|(_, finding)| share_short(finding));
        (
            !matter.is_urgent(),
            matter.topic != Item::PostFastening,
            first,
            Reverse(share.max().unwrap_or(0)),
        )
    });
    matters
}

/// Whether a paragraph speaks of it: what is missing is asked for elsewhere.
const fn is_said(verdict: Verdict) -> bool {
    match verdict {
        Verdict::FallsShort | Verdict::TooClose | Verdict::NotSettled => true,
        Verdict::NotMeasured | Verdict::Meets | Verdict::DoesNotApply => false,
    }
}

/// A shortfall in millionths of its limit, where both are lengths.
pub(super) fn share_short(finding: &Finding<'_>) -> Option<i128> {
    let limit = finding.limit.as_ref()?.value?.nanometres();
    let margin = finding.margin?.nanometres();
    (limit > 0 && margin < 0).then(|| i128::from(-margin) * 1_000_000 / i128::from(limit))
}

/// Whether one of the item's readings is this word.
pub(super) fn says<W: ItemWord>(guard: &Guard, word: W) -> bool {
    guard.of(W::ITEM).any(|(_, o)| o.word() == Some(word))
}

/// Whether it was written that there is no guard.
pub(super) fn is_open_edge(guard: &Guard) -> bool {
    says(guard, GuardWord::None)
}

/// Whether nobody could look at the guard at all: every reading of its own says so.
pub(super) fn was_not_entered(guard: &Guard) -> bool {
    guard.was_not_entered()
}
