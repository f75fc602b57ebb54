//! What is said of an act for tonight; the one table, for a check and for a plan.
//!
//! Common practice, no source.

use crate::remedy::kind::RemedyKind;

/// An act that needs no tool and no leave.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct TonightWords {
    /// Which.
    pub kind: RemedyKind,
    /// In a few words.
    pub shortly: &'static str,
    /// In a sentence.
    pub does: &'static str,
    /// What more there is to mind.
    pub more: &'static str,
}

/// The words of an act; `None` where none is done tonight.
#[must_use]
pub fn tonight_words(kind: RemedyKind) -> Option<&'static TonightWords> {
    TONIGHT.iter().find(|words| words.kind == kind)
}

/// Of a gap that lets a small child's body in.
pub const KEEP_FROM_GAPS: TonightWords = TonightWords {
    kind: RemedyKind::KeepAway,
    shortly: "keep the child from the gaps",
    does: "Keep the child from the gaps: a body can slip in and the head be held.",
    more: "",
};

const fn row(
    kind: RemedyKind,
    shortly: &'static str,
    does: &'static str,
    more: &'static str,
) -> TonightWords {
    TonightWords {
        kind,
        shortly,
        does,
        more,
    }
}

use RemedyKind as K;

/// All of them.
pub const TONIGHT: &[TonightWords] = &[
    row(
        K::EverybodyOff,
        "keep everybody off it",
        "Close the way to it, as far as nobody needs it to get out.",
        "Nobody stands below it either. Where it is a way out in a fire, do not lock it: tell the owner and \
         the fire authority at once. Nothing is tied to it, and nobody tests it again by hand.",
    ),
    row(
        K::BoardOverHole,
        "close the hole",
        "Keep children from it until it is closed: boards upright over the hole, tied or clamped, if the \
         railing stands firm.",
        "On the inner side, to both rails; a child pushes outward.",
    ),
    row(
        K::CloseTheWay,
        "bar the way",
        "Bar the way with a barrier that a child cannot climb; lock a door only where it is no way out in a \
         fire, else tell the owner and the fire authority at once.",
        "The barrier stands back from the edge.",
    ),
    row(
        K::MoveThing,
        "take away what a child climbs on",
        "Take away what a child climbs on, or move it well away.",
        "At least 40 in (1 m), and not into the way out.",
    ),
    row(
        K::KeepAway,
        "keep children from it",
        "Keep children from it: close the way to it, or put up a barrier that cannot be climbed, and leave \
         every way out in a fire open.",
        "A door before it is shut with a latch high up that every adult opens from inside in the dark.",
    ),
    row(
        K::MoveWhatRaises,
        "take away what raises a child",
        "Take away what raises a child beside it: bench, box, planter.",
        "",
    ),
    row(
        K::FootholdAway,
        "take away what a foot finds hold on",
        "Take away what a foot finds hold on, if it is no part that holds the railing.",
        "",
    ),
    row(
        K::BoardAlongGap,
        "wedge one board along the gap at the floor",
        "Wedge one board along the gap at the floor, its top no higher than 5 1/2 in (140 mm).",
        "No boxes, no foam; somebody watches.",
    ),
    row(
        K::StairsShut,
        "shut the door to the stairs",
        "Shut the door to the stairs, or keep the child in a room.",
        "Shut, not locked: it is a way out. Carry the child with one hand on the rail.",
    ),
    row(
        K::TieLoose,
        "tie or clamp what is loose",
        "Tie or clamp what is loose where both rails are firm, else treat it as missing.",
        "",
    ),
    row(
        K::WindowShut,
        "shut and latch the window",
        "Shut and latch the window, furniture away from it, cords tied high.",
        "Never nailed or screwed shut.",
    ),
    row(
        K::WindowAndFurniture,
        "shut and latch the window",
        "Shut and latch the window, bed and chairs away from it.",
        "Never nailed or screwed shut.",
    ),
    row(
        K::KeepOffPaint,
        "keep children off it",
        "Keep children off it, pick up chips and wipe wet; no sweeping, sanding or household vacuum.",
        "A child that chewed paint: ask a doctor for a blood test.",
    ),
    row(
        K::TestPaint,
        "have the paint tested",
        "Have the paint tested; until then treat it as if it held lead.",
        "",
    ),
    row(
        K::DoNotHold,
        "do not hold it",
        "Hang a notice on it that nobody holds it.",
        "A rail that comes off in the hand is taken off.",
    ),
    row(
        K::BoardInWallGap,
        "close the gap at the wall",
        "Clamp a board upright in the gap at the wall, where post or last bar are firm.",
        "",
    ),
    row(
        K::BoardAcrossJoint,
        "close the joint",
        "Tie a board across the joint on the inner side, both railings firm.",
        "",
    ),
    row(
        K::BoardAlongEdge,
        "close the gap at the edge",
        "Lay a board along the floor's edge, clamped and marked so that nobody trips.",
        "",
    ),
    row(
        K::PoolGateLocked,
        "lock the gate",
        "Lock the gate unless it is a way out in a fire, somebody at the water.",
        "Chairs and pots away from the outside of the fence.",
    ),
    row(
        K::OffAndBelow,
        "keep everybody off it and from below it",
        "Keep everybody off it and from below it.",
        "No board, tape or clamp on the glass.",
    ),
];

#[cfg(test)]
mod tests {
    use super::*;
    use crate::remedy::shortfall::SHORTFALLS;

    #[test]
    fn every_act_for_tonight_has_its_words() {
        for kind in SHORTFALLS.iter().flat_map(|row| row.tonight) {
            assert!(tonight_words(*kind).is_some(), "{}", kind.row().key);
        }
    }
}
