//! The rows about gates at stairs.

use crate::items::BottomOfStairsGateWord;
use crate::items::Drawing;
use crate::items::GateClosesItselfWord;
use crate::items::GateOpensWord;
use crate::items::Group;
use crate::items::Hazard;
use crate::items::Item;
use crate::items::ItemInfo;
use crate::items::ItemPlace;
use crate::items::ItemWord;
use crate::items::Kind;
use crate::items::MeasuredBetween;
use crate::items::Pictured;
use crate::items::TopOfStairsGateWord;
use crate::items::Worst;
use crate::items::row::row;
use crate::quantities::Length;

pub(super) const TOP_OF_STAIRS_GATE: ItemInfo = ItemInfo {
    synonyms: &[
        "gate at the top of the stairs",
        "gate at top of stairs",
        "gate at the top",
        "gate at top",
        "upper gate",
        "top gate",
    ],
    hazards: &[Hazard::FallOver],
    question: "Is there a gate at the top of the stairs, screwed or pressed?",
    place: ItemPlace::OnStairs,
    ..row(
        Item::TopOfStairsGate,
        "top of stairs gate",
        Kind::Words(TopOfStairsGateWord::WORDS),
        Group::Seen,
        "Whether a gate closes the top of the stairs, and how it is held.",
        &["screwed: held by screws in the wall. pressed: held by pressing against the walls."],
        &["screwed", "pressed", "none"],
    )
};

pub(super) const GATE_HEIGHT: ItemInfo = ItemInfo {
    synonyms: &["height of the gate"],
    worst: Worst::Least,
    hazards: &[Hazard::FallOver],
    question: "How high is the gate?",
    usual: Some((Length::inches(12), Length::feet(6))),
    most: Some(Length::feet(12)),
    pictured: Pictured::Not("a gate's height is measured as a guard's is"),
    place: ItemPlace::OnStairs,
    ..row(
        Item::GateHeight,
        "gate height",
        Kind::Length,
        Group::Measured,
        "How high the top of the stair gate stands above the floor.",
        &[
            "Measure plumb at its lowest place.",
            "A bar of the gate that a child can step on: measure from that bar.",
        ],
        &["30 in", "750 mm"],
    )
};

pub(super) const GATE_GAP: ItemInfo = ItemInfo {
    between: MeasuredBetween::Faces,
    synonyms: &["gate openings", "gate bars"],
    worst: Worst::Greatest,
    hazards: &[Hazard::FallThrough, Hazard::Entrapment],
    question: "How wide is the widest gap in the gate?",
    usual: Some((Length::millimetres(6), Length::inches(12))),
    most: Some(Length::feet(6)),
    none_allowed: true,
    pictured: Pictured::Not("the gaps of a gate are measured as those of a guard are"),
    place: ItemPlace::OnStairs,
    ..row(
        Item::GateGap,
        "gate gap",
        Kind::Opening,
        Group::Measured,
        "The widest gap between two bars of the stair gate, or at its side.",
        &[
            "Measure clear between the faces, square to them, at the widest place.",
            "The gate is solid: none.",
        ],
        &["55 mm", "2 1/4 in", "none"],
    )
};

pub(super) const GATE_BOTTOM_GAP: ItemInfo = ItemInfo {
    synonyms: &["gap under the gate"],
    worst: Worst::Greatest,
    hazards: &[Hazard::FallThrough, Hazard::Entrapment],
    question: "How high is the gap under the gate?",
    usual: Some((Length::ZERO, Length::inches(12))),
    most: Some(Length::feet(6)),
    zero_allowed: true,
    none_allowed: true,
    pictured: Pictured::Not("the gap under a gate is measured as that under a guard is"),
    place: ItemPlace::OnStairs,
    ..row(
        Item::GateBottomGap,
        "gate bottom gap",
        Kind::Opening,
        Group::Measured,
        "The gap between the floor and the underside of the stair gate, at its highest.",
        &["Measure up from the floor to the underside, at the highest place."],
        &["2 in", "50 mm", "none"],
    )
};

pub(super) const BOTTOM_OF_STAIRS_GATE: ItemInfo = ItemInfo {
    synonyms: &[
        "gate at the foot of the stairs",
        "gate at the bottom of the stairs",
        "gate at bottom of stairs",
        "gate at the bottom",
        "gate at bottom",
        "lower gate",
        "bottom gate",
    ],
    hazards: &[Hazard::Climb],
    question: "Is there a gate at the foot of the stairs, screwed or pressed?",
    place: ItemPlace::OnStairs,
    ..row(
        Item::BottomOfStairsGate,
        "bottom of stairs gate",
        Kind::Words(BottomOfStairsGateWord::WORDS),
        Group::Seen,
        "Whether a gate closes the foot of the stairs, and how it is held.",
        &["screwed: held by screws in the wall. pressed: held by pressing against the walls."],
        &["screwed", "pressed", "none"],
    )
};

pub(super) const LATCH_HEIGHT: ItemInfo = ItemInfo {
    synonyms: &["gate latch height", "height of the latch"],
    worst: Worst::Least,
    hazards: &[Hazard::FallOver],
    question: "How high is the latch of the gate?",
    usual: Some((Length::inches(12), Length::feet(6))),
    most: Some(Length::feet(10)),
    pictured: Pictured::By(&[Drawing::Latch]),
    place: ItemPlace::OnStairs,
    ..row(
        Item::LatchHeight,
        "latch height",
        Kind::Length,
        Group::Measured,
        "How high above the ground or floor the part of the latch is that opens the gate.",
        &["Measure plumb to the knob or lever that has to be moved. Two latches: the lower one."],
        &["54 in", "1.5 m"],
    )
};

pub(super) const GATE_CLOSES_ITSELF: ItemInfo = ItemInfo {
    synonyms: &["self-closing", "self closing", "self-closing gate"],
    hazards: &[Hazard::FallOver],
    question: "Does the gate close and latch by itself?",
    ..row(
        Item::GateClosesItself,
        "gate closes itself",
        Kind::Words(GateClosesItselfWord::WORDS),
        Group::Seen,
        "Whether the gate falls shut and its latch catches without a hand.",
        &[
            "Open it wide and let go, then open it a hand's width and let go: it must latch both times.",
            "It falls shut and does not latch: no.",
        ],
        &["yes", "no"],
    )
};

pub(super) const GATE_OPENS: ItemInfo = ItemInfo {
    synonyms: &["gate swing", "gate opens towards"],
    hazards: &[Hazard::FallOver],
    question: "Which way does the gate open: away from the stairs or pool, towards them, or both ways?",
    ..row(
        Item::GateOpens,
        "gate opens",
        Kind::Words(GateOpensWord::WORDS),
        Group::Seen,
        "Which way the gate swings, seen from the stairs or the pool that it closes off.",
        &[
            "away: over the landing, or out of the pool's yard. towards: over the stairs, or into the pool's yard.",
        ],
        &["away", "towards"],
    )
};
