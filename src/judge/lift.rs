//! The lift of the rail at the steps, where it is written twice: as the lift of the
//! stair triangle, and as the bottom gap, which on a stair is the same length.

use crate::items::Item;
use crate::items::Verdict;
use crate::judge::Reason;
use crate::judge::bound::Evidence;
use crate::judge::judgement::Judgement;
use crate::judge::scene::Scene;
use crate::quantities::Length;
use crate::reading::Value;

/// Whether an item is one of the two.
pub(super) fn is_the_lift(item: Item) -> bool {
    matches!(item, Item::BottomGap | Item::StairTriangle)
}

/// Where the other of both says more, by more than the tapes' doubt, this one settles
/// nothing but a shortfall.
pub(super) fn written_twice(scene: &Scene<'_>, judgement: &mut Judgement<'_>) {
    if scene.on_a_stair() == Some(false) {
        return;
    }
    let more_elsewhere = (judgement.item == Item::StairTriangle && gap_says_more(scene))
        || (judgement.item == Item::BottomGap && triangle_says_more(scene));
    if !more_elsewhere {
        return;
    }
    for verdict in [&mut judgement.verdict, &mut judgement.alone] {
        if matches!(verdict, Verdict::Meets | Verdict::TooClose) {
            *verdict = Verdict::NotMeasured;
        }
    }
    if judgement.verdict == Verdict::NotMeasured {
        judgement.reasons.push(Reason::LiftsDiffer);
    }
}

/// The lifts that are written with the triangles.
fn lifts(scene: &Scene<'_>) -> impl Iterator<Item = Length> {
    scene
        .of(Item::StairTriangle)
        .filter_map(|(_, observation)| {
            if let Value::StairTriangle(stair) = &observation.reading.as_ref()?.value {
                stair.lift
            } else {
                None
            }
        })
}

/// Whether a bottom gap says more than every lift that is written.
fn gap_says_more(scene: &Scene<'_>) -> bool {
    let Some(most) = lifts(scene).max() else {
        return false;
    };
    let mut gaps = scene.of(Item::BottomGap);
    gaps.any(|(index, _)| match scene.evidence(Item::BottomGap, index) {
        // of both tapes
        Some(Evidence::Point(gap, u)) => gap > most + u.doubled() + u.doubled(),
        Some(Evidence::Above(gap) | Evidence::AtLeast(gap)) => gap > most,
        Some(Evidence::Below(_)) | None => false,
    })
}

/// Whether a triangle says more than every bottom gap that is written.
fn triangle_says_more(scene: &Scene<'_>) -> bool {
    let gaps = scene.of(Item::BottomGap).filter_map(|(index, _)| {
        match scene.evidence(Item::BottomGap, index)? {
            Evidence::Point(gap, u) => Some(gap + u.doubled() + u.doubled()),
            Evidence::Below(gap) => Some(gap),
            Evidence::Above(_) | Evidence::AtLeast(_) => None,
        }
    });
    let most = gaps.max();
    most.is_some_and(|most| lifts(scene).any(|lift| lift > most))
}
