//! What bridges the time until a shortfall is put right: it is looked at every week, and
//! makes no guard meet.

use crate::items::InfillWord;
use crate::items::Item;
use crate::items::PlaceWord;
use crate::quantities::Length;
use crate::remedy::change::GuardChange;
use crate::remedy::drawn::Drawn;
use crate::remedy::drawn::is_stair;
use crate::remedy::faces;
use crate::remedy::kind::RemedyKind;
use crate::remedy::offered::Offered;
use crate::remedy::quantity::LabourPer;
use crate::remedy::topics::ShortTopic;
use crate::remedy::topics::says;

/// What could bridge the time for these shortfalls, with the item that each is for.
pub(super) fn bridges_of(drawn: &Drawn<'_, '_>, topics: &[ShortTopic]) -> Vec<(Item, Offered)> {
    let mut all: Vec<(Item, Offered)> = Vec::new();
    let of_gaps = |topic: &ShortTopic| matches!(topic.item, Item::Opening | Item::InfillLoose);
    let glass = says(drawn.guard, InfillWord::Glass);
    // a window has no rail to tie to, and may be the way out in a fire
    let window = says(drawn.guard, PlaceWord::Window);
    if topics.iter().any(of_gaps) && !glass && !window && !is_stair(drawn.guard) {
        let faces = faces::bridges(drawn).into_iter();
        all.extend(faces.map(|offered| (Item::Opening, offered)));
    }
    // where a gate is put up for good, nothing is said of gates for the time being
    let gate_comes = topics
        .iter()
        .any(|topic| topic.item == Item::TopOfStairsGate);
    for topic in topics {
        let bridges = topic.kind.map_or(&[][..], |kind| kind.row().bridge);
        let bridges = bridges
            .iter()
            .filter(|kind| !(gate_comes && **kind == RemedyKind::StairGates));
        for kind in bridges {
            let offered = without_a_face(drawn, *kind);
            let known = |offered: &Offered| all.iter().any(|(_, other)| other.kind == offered.kind);
            all.extend(
                offered
                    .filter(|offered| !known(offered))
                    .map(|offered| (topic.item, offered)),
            );
        }
    }
    all
}

/// One that closes no face of the guard; `None` of those that do, and of what is said with
/// the remedy itself.
fn without_a_face(drawn: &Drawn<'_, '_>, kind: RemedyKind) -> Option<Offered> {
    let m = &drawn.measuring;
    let (says, [from, to], per) = if kind == RemedyKind::StairGates {
        (
            "Screw a gate to wood that does not move at the top and one at the foot of the flight, opening over the landing and \
             the floor, never over the stairs; each adult opens them in the dark, and nobody steps over them."
                .to_owned(),
            [40, 90],
            LabourPer::Gate,
        )
    } else if kind == RemedyKind::RiserMesh {
        (
            "Fix a stiff mesh or a sheet behind the treads, over every opening; it takes nothing of a tread \
             and catches no toe."
                .to_owned(),
            [12, 18],
            LabourPer::Step,
        )
    } else if kind == RemedyKind::BarrierSetBack {
        (
            format!(
                "Have a barrier put up that stands by itself, well back from the edge and leaning on nothing, \
                 with rails at {} and {}; it holds no small child back, and leaves every way out in a fire open.",
                m.text(m.either(Length::inches(42), 1100)),
                m.text(m.either(Length::inches(21), 550))
            ),
            [60, 180],
            LabourPer::Place,
        )
    } else if kind == RemedyKind::ClampKit {
        (
            "Where the newels do not move, hold a screwed gate with a clamp kit made for newels, which makes \
             no holes; it opens over the landing and never over the stairs. Push it hard every week."
                .to_owned(),
            [40, 90],
            LabourPer::Gate,
        )
    } else if kind == RemedyKind::PressedGateBelow {
        (
            "Put a pressed gate at the foot of the stair; never one at the top, not even for a night."
                .to_owned(),
            [10, 30],
            LabourPer::Gate,
        )
    } else {
        return None;
    };
    Some(Offered::new(kind, says, GuardChange::default()).taking(from, to, per))
}
