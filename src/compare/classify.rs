//! What became of each thing of one guard.

use crate::compare::change::ChangeFound;
use crate::compare::change::ChangeKind;
use crate::compare::change::ChangeNote;
use crate::compare::change::GuardOfRound;
use crate::items::ConditionWord;
use crate::items::Item;
use crate::items::OpeningsCheckedWord;
use crate::items::PostFasteningWord;
use crate::items::Verdict;
use crate::judge::Finding;
use crate::quantities::DoubtEffect;
use crate::quantities::Length;
use crate::quantities::StandardUncertainty;
use crate::quantities::Term;
use crate::quantities::TermKind;
use crate::quantities::combine;
use crate::reading::Extent;
use crate::reading::Value;
use crate::rules::Status;
use crate::survey::Guard;

/// Everything that changed or still falls short, worst first. Where law was judged,
/// only that decides.
pub(super) fn changes<'e, 'r>(
    before: &'e GuardOfRound<'r>,
    after: &'e GuardOfRound<'r>,
    law: bool,
) -> Vec<ChangeFound<'e, 'r>> {
    let mut found = dangers(before, after);
    let mut known: Vec<usize> = Vec::new();
    let later = &after.judged.findings;
    for first in &before.judged.findings {
        let second = later.iter().position(|second| is_same(first, second));
        known.extend(second);
        let second = second.map(|index| &later[index]);
        found.extend(change(Some(first), second, before, after, law));
    }
    for (index, second) in later.iter().enumerate() {
        if !known.contains(&index) {
            found.extend(change(None, Some(second), before, after, law));
        }
    }
    found.sort_by_key(|change| (change.kind, !change.decides));
    found
}

/// One rule at one item, by name: the rounds may have been judged apart.
fn is_same(one: &Finding<'_>, other: &Finding<'_>) -> bool {
    (&one.ruleset.id, &one.rule.id, one.item) == (&other.ruleset.id, &other.rule.id, other.item)
}

fn change<'e, 'r>(
    first: Option<&'e Finding<'r>>,
    second: Option<&'e Finding<'r>>,
    before: &GuardOfRound<'r>,
    after: &GuardOfRound<'r>,
    law: bool,
) -> Option<ChangeFound<'e, 'r>> {
    let finding = second.or(first)?;
    // what only warns is no shortfall, before or after
    if finding.rule.status == Status::Memory && !finding.binding {
        return None;
    }
    let moved = moved(first, second);
    let (kind, note) = become_of(first, second, before, after)?;
    Some(ChangeFound {
        item: finding.item,
        kind,
        note,
        decides: !(law && finding.ruleset.advisory),
        before: first,
        after: second,
        dangers: [None, None],
        moved,
    })
}

fn become_of(
    first: Option<&Finding<'_>>,
    second: Option<&Finding<'_>>,
    before: &GuardOfRound<'_>,
    after: &GuardOfRound<'_>,
) -> Option<(ChangeKind, Option<ChangeNote>)> {
    let was = first.map_or(Verdict::DoesNotApply, Finding::counts_as);
    let is = second.map_or(Verdict::DoesNotApply, Finding::counts_as);
    let item = second.or(first)?.item;
    let within = is_within_doubt(first, second);
    let better = moved(first, second).is_some_and(|moved| moved > Length::ZERO);
    Some(match (was, is) {
        (Verdict::FallsShort, Verdict::FallsShort) => match (within, better) {
            (Some(false), false) => (ChangeKind::Worse, None),
            (Some(false), true) => (ChangeKind::StillShort, Some(ChangeNote::Better)),
            (Some(true) | None, _) => (ChangeKind::StillShort, None),
        },
        (Verdict::Meets, Verdict::FallsShort) => {
            let note = (within == Some(true)).then_some(ChangeNote::WithinDoubt);
            (ChangeKind::Worse, note)
        }
        (
            Verdict::TooClose | Verdict::NotSettled | Verdict::NotMeasured | Verdict::DoesNotApply,
            Verdict::FallsShort,
        ) => (ChangeKind::New, None),
        (Verdict::FallsShort, Verdict::Meets) => {
            if after.guard.is_drawn() {
                (ChangeKind::Undecided, Some(ChangeNote::OnlyDrawn))
            } else if second.is_some_and(Finding::is_indicative) {
                (ChangeKind::Undecided, Some(ChangeNote::OnlySeen))
            } else if within == Some(true) {
                (ChangeKind::Undecided, Some(ChangeNote::WithinDoubt))
            } else if is_read_in_fewer_places(item, &before.guard, &after.guard) {
                (ChangeKind::Undecided, Some(ChangeNote::FewerPlaces))
            } else if is_read_elsewhere(item, &before.guard, &after.guard) {
                (ChangeKind::Undecided, Some(ChangeNote::ElsewhereNow))
            } else {
                (ChangeKind::Mended, None)
            }
        }
        (Verdict::FallsShort, Verdict::TooClose | Verdict::NotSettled) => {
            (ChangeKind::Undecided, Some(ChangeNote::NotSettledNow))
        }
        (Verdict::FallsShort, Verdict::DoesNotApply) => {
            (ChangeKind::Undecided, Some(ChangeNote::NotAskedNow))
        }
        (Verdict::FallsShort | Verdict::TooClose | Verdict::Meets, Verdict::NotMeasured) => {
            if first.is_some_and(|first| first.is_indicative() && !first.counts()) {
                return None;
            }
            (ChangeKind::NoLongerMeasured, None)
        }
        (Verdict::Meets, Verdict::TooClose | Verdict::NotSettled) if within != Some(true) => {
            (ChangeKind::Undecided, Some(ChangeNote::NotSettledNow))
        }
        (Verdict::Meets, Verdict::TooClose | Verdict::NotSettled)
        | (Verdict::Meets, Verdict::Meets | Verdict::DoesNotApply)
        | (
            Verdict::TooClose,
            Verdict::TooClose | Verdict::NotSettled | Verdict::Meets | Verdict::DoesNotApply,
        )
        | (
            Verdict::NotSettled | Verdict::NotMeasured | Verdict::DoesNotApply,
            Verdict::TooClose
            | Verdict::NotSettled
            | Verdict::NotMeasured
            | Verdict::Meets
            | Verdict::DoesNotApply,
        ) => return None,
    })
}

/// How far it moved to the good side of one and the same limit.
fn moved(first: Option<&Finding<'_>>, second: Option<&Finding<'_>>) -> Option<Length> {
    let (first, second) = (first?, second?);
    let limit = |finding: &Finding<'_>| finding.limit.as_ref().and_then(|limit| limit.value);
    let same = limit(first).is_some() && limit(first) == limit(second);
    let by = second.margin? - first.margin?;
    same.then_some(by)
}

/// Whether the two readings differ by no more than twice their doubt together (the root
/// of the sum of the squares, GUM, JCGM 100:2008, 5.1.2; clause number from memory);
/// `None` where they are no two lengths against one limit.
fn is_within_doubt(first: Option<&Finding<'_>>, second: Option<&Finding<'_>>) -> Option<bool> {
    let moved = moved(first, second)?;
    let doubt = |finding: Option<&Finding<'_>>| {
        let doubt = finding.and_then(|finding| finding.uncertainty);
        doubt.unwrap_or(StandardUncertainty::NONE).as_length()
    };
    let terms = [first, second].map(|finding| Term {
        effect: DoubtEffect::Round,
        size: doubt(finding),
        kind: TermKind::Deviation,
    });
    Some(moved.magnitude() <= combine(&terms).doubled())
}

/// Whether an item was read in fewer places than before: the bad place may be among
/// those left out. A ball that stops everywhere was tried at all of them.
fn is_read_in_fewer_places(item: Item, before: &Guard, after: &Guard) -> bool {
    let places = |guard: &Guard| {
        let mut rows: Vec<_> = guard
            .of(item)
            .map(|(_, o)| (o.row, o.written.clone()))
            .collect();
        rows.dedup();
        rows.len()
    };
    places(after) < places(before) && !is_read_everywhere(item, after)
}

/// Whether an item was read somewhere else than before: each reading says where, and the
/// place that was short before is none of them.
fn is_read_elsewhere(item: Item, before: &Guard, after: &Guard) -> bool {
    let places = |guard: &Guard| -> Vec<Option<Extent>> {
        let readings = guard.of(item).filter_map(|(_, o)| o.reading.as_ref());
        readings.map(|reading| reading.at).collect()
    };
    let now = places(after);
    let here = |then: &Option<Extent>| {
        now.iter().any(|now| match (now, then) {
            (Some(now), Some(then)) => now.low <= then.high && then.low <= now.high,
            (Some(_), None) => false,
            (None, _) => true,
        })
    };
    !places(before).iter().all(here) && !is_read_everywhere(item, after)
}

/// Whether somebody says to have read it at every place.
fn is_read_everywhere(item: Item, guard: &Guard) -> bool {
    let everywhere = guard.of(item).any(|(_, observation)| {
        let reading = observation.reading.as_ref();
        reading.is_some_and(|reading| {
            if let Value::Ball(ball) = &reading.value {
                ball.everywhere
            } else {
                reading.value == Value::None
            }
        })
    });
    let every_one = guard
        .of(Item::OpeningsChecked)
        .any(|(_, o)| o.word() == Some(OpeningsCheckedWord::EveryOne));
    let is_a_hole = matches!(item, Item::Opening | Item::BottomGap | Item::EndGap);
    everywhere || is_a_hole && every_one
}

/// What was seen that comes before every rule, then and now.
fn dangers<'e, 'r>(
    before: &GuardOfRound<'r>,
    after: &GuardOfRound<'r>,
) -> Vec<ChangeFound<'e, 'r>> {
    let mut found = Vec::new();
    let mut push = |kind, note, dangers: [Option<crate::judge::DangerSeen>; 2]| {
        let Some(item) = dangers.iter().flatten().map(|seen| seen.item).next() else {
            return;
        };
        found.push(ChangeFound {
            item,
            kind,
            note: Some(note),
            decides: true,
            before: None,
            after: None,
            dangers,
            moved: None,
        });
    };
    for seen in &before.judged.dangers {
        let mut again = after.judged.dangers.iter();
        let again = again.find(|other| (other.item, other.word) == (seen.item, seen.word));
        let (kind, note) = match again {
            Some(_) => (ChangeKind::StillShort, ChangeNote::Danger),
            None => gone(seen.item, &after.guard),
        };
        push(kind, note, [Some(*seen), again.copied()]);
    }
    for seen in &after.judged.dangers {
        let mut then = before.judged.dangers.iter();
        if !then.any(|other| (other.item, other.word) == (seen.item, seen.word)) {
            push(ChangeKind::New, ChangeNote::Danger, [None, Some(*seen)]);
        }
    }
    found
}

/// What became of a danger that nobody states any more: it is gone where somebody looked
/// again and says so.
fn gone(item: Item, guard: &Guard) -> (ChangeKind, ChangeNote) {
    if guard.is_drawn() {
        return (ChangeKind::Undecided, ChangeNote::OnlyDrawn);
    }
    let looked = guard.of(item).map(|(_, observation)| {
        let reading = observation.reading.as_ref();
        let could_not_look = reading.is_none_or(|reading| reading.value == Value::Unknown);
        let hidden = observation.word() == Some(PostFasteningWord::Hidden);
        match observation.word::<ConditionWord>() {
            _ if could_not_look || hidden => LookedAgain::No,
            // it speaks of something else: what is dry may be rotten all the same
            Some(ConditionWord::Dry | ConditionWord::Wet | ConditionWord::SurfaceRust) => {
                LookedAgain::No
            }
            // nothing was pressed or probed
            Some(ConditionWord::NoneSeen) => LookedAgain::FromAside,
            Some(_) | None => LookedAgain::Closely,
        }
    });
    match looked.min().unwrap_or(LookedAgain::No) {
        LookedAgain::No => (ChangeKind::NoLongerMeasured, ChangeNote::Danger),
        LookedAgain::FromAside => (ChangeKind::Undecided, ChangeNote::OnlySeen),
        LookedAgain::Closely => (ChangeKind::Mended, ChangeNote::Danger),
    }
}

/// How somebody looked again, the least first.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum LookedAgain {
    No,
    FromAside,
    Closely,
}
