//! A plain length against what is asked of it: tapes, and sticks beside them.

use crate::items::Item;
use crate::judge::bound::Evidence;
use crate::judge::bound::asks;
use crate::judge::decision::against;
use crate::judge::gauge::Gauged;
use crate::judge::gauge::Taped;
use crate::judge::gauge::Where;
use crate::judge::gauge::beside_each_other;
use crate::judge::gauge::holes;
use crate::judge::judgement::Judgement;
use crate::judge::said::Piece;
use crate::judge::scene::Scene;
use crate::rules::Bounds;
use crate::rules::Limit;

/// A plain length against its bounds.
pub(super) fn length<'r>(
    scene: &Scene<'_>,
    item: Item,
    bounds: &'r Bounds<Limit>,
) -> Judgement<'r> {
    let asks = asks(bounds);
    let mut all = Vec::new();
    let mut tapes = Vec::new();
    let mut bounded = Vec::new();
    for (index, _) in scene.of(item) {
        match scene.piece(item, index) {
            Piece::Nothing(reason) => {
                all.push(Judgement::open(item, reason));
            }
            Piece::Says(said) => match said.evidence {
                Evidence::Point(value, doubt) => {
                    let decision = said.evidence.decision(scene.options.decision);
                    let outcome = against(said.evidence, &asks, decision);
                    tapes.extend(outcome.map(|outcome| Taped {
                        judgement: Judgement::from_outcome(scene, item, index, &said, outcome),
                        index,
                        value,
                        doubt,
                        place: Where::TheOnlyOne,
                    }));
                }
                Evidence::AtLeast(_) | Evidence::Above(_) | Evidence::Below(_) => {
                    bounded.push((index, said));
                }
            },
        }
    }
    // a stick at the lowest place settles what the tape there could not
    let holes = holes(scene, &bounded, |_, _| Where::TheOnlyOne);
    let gauges = holes.iter().flat_map(|hole| {
        let judged = hole.judged(scene, item, &asks);
        judged.into_iter().map(|(judgement, bounds)| Gauged {
            judgement,
            bounds,
            place: hole.place,
        })
    });
    all.extend(beside_each_other(scene, tapes, gauges.collect()));
    Judgement::worst(scene, all).unwrap_or_else(|| Judgement::not_written(scene, item))
}
