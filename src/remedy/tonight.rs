//! What comes before anybody sleeps, and whether anything may be fixed to a guard.

use crate::items::Hazard;
use crate::items::Item;
use crate::items::MovesWhenPushedWord;
use crate::items::PostFasteningWord;
use crate::judge::Judged;
use crate::remedy::kind::FirmOnly;
use crate::remedy::kind::HowLong;
use crate::remedy::kind::RemedyCaution;
use crate::remedy::kind::RemedyKind;
use crate::remedy::offered::WaitsFor;
use crate::remedy::topics::ShortTopic;
use crate::remedy::topics::says;
use crate::survey::Guard;
use crate::survey::Observation;

pub(super) fn not_firm(guard: &Guard, judged: &Judged<'_>, topics: &[ShortTopic]) -> bool {
    let moves = says(guard, MovesWhenPushedWord::ALot) || says(guard, MovesWhenPushedWord::ALittle);
    let danger = judged
        .dangers
        .iter()
        .any(|seen| seen.danger.hazard == Hazard::GiveWay);
    let held = topics.iter().any(|topic| {
        matches!(
            topic.item,
            Item::MovesWhenPushed | Item::Condition | Item::PostFastening
        )
    });
    moves || danger || held
}

/// What may stand on a wall or a string as well, and else is fixed to the guard.
const MAY_TOUCH: [RemedyKind; 3] = [
    RemedyKind::ClampKit,
    RemedyKind::StripAtWall,
    RemedyKind::TriangleFillers,
];

/// What a remedy waits for on this guard.
pub(super) fn waits(guard: &Guard, kind: RemedyKind, not_firm: bool) -> WaitsFor {
    let row = kind.row();
    let seen = |(_, observation): (usize, &Observation)| {
        let word = observation.word::<PostFasteningWord>();
        word.is_some_and(|word| word != PostFasteningWord::Hidden)
    };
    let looked = says(guard, MovesWhenPushedWord::No) && guard.of(Item::PostFastening).any(seen);
    let touches = row.firm == FirmOnly::Yes
        || row.cautions.contains(&RemedyCaution::Firm)
        || MAY_TOUCH.contains(&kind);
    if not_firm && touches {
        WaitsFor::AFirmGuard
    } else if row.firm != FirmOnly::Yes {
        WaitsFor::Nothing
    } else if row.cautions.contains(&RemedyCaution::Lever) && !looked {
        WaitsFor::ALook
    } else {
        WaitsFor::Nothing
    }
}

/// What comes tonight: of a guard that does not hold only that everybody keeps off it.
pub(super) fn tonight(guard: &Guard, topics: &[ShortTopic], not_firm: bool) -> Vec<RemedyKind> {
    let moves = topics.iter().any(|topic| {
        topic.danger
            && matches!(
                topic.item,
                Item::MovesWhenPushed | Item::Condition | Item::PostFastening
            )
    });
    if moves || says(guard, MovesWhenPushedWord::ALot) {
        return vec![RemedyKind::EverybodyOff];
    }
    let mut kinds: Vec<RemedyKind> = Vec::new();
    let little = says(guard, MovesWhenPushedWord::ALittle);
    for topic in topics {
        let Some(kind) = topic.kind else { continue };
        for kind in kind.row().tonight {
            let held_back = not_firm && kind.row().firm == FirmOnly::Yes;
            let there = |item: Item| topics.iter().any(|topic| topic.item == item);
            let not_there = (*kind == RemedyKind::MoveThing && !there(Item::ThingToClimb))
                || (*kind == RemedyKind::MoveWhatRaises && there(Item::ThingToClimb))
                || (*kind == RemedyKind::FootholdAway && (not_firm || !there(Item::Foothold)))
                || (*kind == RemedyKind::EverybodyOff && !little);
            if !held_back && !not_there && !kinds.contains(kind) {
                kinds.push(*kind);
            }
        }
    }
    // whoever keeps off, or keeps from the stairs, keeps from the rest as well
    let sweeping = [
        RemedyKind::EverybodyOff,
        RemedyKind::CloseTheWay,
        RemedyKind::StairsShut,
        RemedyKind::KeepAway,
    ];
    if let Some(first) = sweeping.iter().find(|kind| kinds.contains(kind)) {
        let beside = [
            RemedyKind::MoveThing,
            RemedyKind::FootholdAway,
            RemedyKind::BoardOverHole,
            RemedyKind::KeepOffPaint,
            RemedyKind::TestPaint,
        ];
        kinds.retain(|kind| kind == first || beside.contains(kind));
        kinds.sort_by_key(|kind| kind != first);
    }
    debug_assert!(
        kinds
            .iter()
            .all(|kind| kind.row().lasts.contains(&HowLong::Tonight))
    );
    kinds
}
