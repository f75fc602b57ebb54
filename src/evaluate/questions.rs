//! What to find out next, asked once for each item.

use std::cmp::Reverse;
use std::collections::BTreeMap;

use crate::evaluate::Finding;
use crate::evaluate::Judged;
use crate::evaluate::Question;
use crate::evaluate::Reason;
use crate::items::Item;
use crate::items::Kind;
use crate::items::Verdict;

impl Judged<'_> {
    /// What to find out next, most decisive first.
    #[must_use]
    pub fn questions(&self) -> Vec<Question> {
        questions(&self.findings)
    }
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
    questions
        .sort_by_key(|(binding, findings, item)| (Reverse(*binding), Reverse(*findings), *item));
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
        Reason::AlongMissing
        | Reason::BarsHaveHeights
        | Reason::BoundDoesNotSettle
        | Reason::BoundsStraddle
        | Reason::FootholdDepthMissing
        | Reason::LiftMissing
        | Reason::NeedsPush
        | Reason::NosingThickness
        | Reason::OutsideZone(_)
        | Reason::ProbeUndecided
        | Reason::PushTooWeak
        | Reason::RisersOpen
        | Reason::NoSuchStep
        | Reason::WhereDoesItLie(_) => Some(judged),
        Reason::OnlySomeOpenings => Some(Item::OpeningsChecked),
        Reason::BottomGapIsLift
        | Reason::CouldNotLook(_)
        | Reason::CoveredElsewhere(_)
        | Reason::ExactlyAtLimit
        | Reason::Excepted(_)
        | Reason::ForAPerson(_)
        | Reason::Ladder { .. }
        | Reason::MayBeTriangle
        | Reason::NoBuildTolerance
        | Reason::NoGuard
        | Reason::NotCovered(_)
        | Reason::NotInForceWhenBuilt
        | Reason::PushedByHand
        | Reason::SettledByGauge(_)
        | Reason::SidesDoNotMeet
        | Reason::TakenAsLong
        | Reason::TakenInZone(_)
        | Reason::TriggerFalse(_)
        | Reason::TriggerInDoubt(_)
        | Reason::Unreadable(_)
        | Reason::Wedges { .. } => None,
    }
}
