//! The rows of holes in a guard and beside it.

use crate::items::Drawing;
use crate::items::Group;
use crate::items::Hazard;
use crate::items::Holds;
use crate::items::Hole;
use crate::items::Item;
use crate::items::ItemInfo;
use crate::items::ItemPlace;
use crate::items::ItemWord;
use crate::items::Kind;
use crate::items::MeasuredBetween;
use crate::items::OpeningsCheckedWord;
use crate::items::Part;
use crate::items::Pictured;
use crate::items::Worst;
use crate::items::row::row;
use crate::quantities::Length;

pub(super) const OPENING: ItemInfo = ItemInfo {
    part: Part::OfTheGuard,
    between: MeasuredBetween::Faces,
    hole: Hole::Any,
    synonyms: &[
        "gap",
        "baluster gap",
        "openings",
        "biggest gap",
        "largest gap",
        "widest gap",
        "widest opening",
        "gap between balusters",
        "gap between spindles",
    ],
    worst: Worst::Greatest,
    hazards: &[Hazard::FallThrough, Hazard::Entrapment],
    question: "How wide is the widest opening? Best: does a ball of that size stop everywhere?",
    usual: Some((Length::millimetres(6), Length::inches(24))),
    most: Some(Length::feet(20)),
    zero_allowed: true,
    none_allowed: true,
    pictured: Pictured::By(&[Drawing::Ball, Drawing::Tape, Drawing::RakedGap]),
    ..row(
        Item::Opening,
        "opening",
        Kind::Opening,
        Group::Measured,
        "The widest hole anywhere in the guard, at its ends too: the largest ball that would pass.",
        &[
            "Best: try a ball of the size asked for at every hole. Write 4 in ball stops everywhere, or 4 in ball passes.",
            "With a tape: look first where the guard meets a wall or a post, find the widest gap by eye, then measure clear between the faces, square to them, at top, middle and bottom.",
            "Turned or shaped balusters: where they are slimmest; or their profile, heights up from the bottom with the diameter there, and how far apart their centres stand.",
            "Under a sloping rail a tape along the rail reads more than the hole: raked says how it lay.",
            "Cables and thin rods spread: try a ball and push it. A tape alone can show only that they are too far apart.",
            "Above the walking surface by how much? Add at 38 in where the hole lies high; of a tall hole its lowest and highest place: at 30 in to 38 in.",
        ],
        &[
            "3 11/16 in",
            "4 in ball stops everywhere",
            "87 mm at 340 mm",
            "raked 4 1/2 in along rise 7 3/4 going 10",
            "turned 4 1/2 in centres 0:1 3/4 6:1 12:1 3/4 in",
            "cable 3 in spacing 1/8 in diameter 36 in free",
            "polygon 0:0 120:0 60:90 mm",
            "none",
        ],
    )
};

pub(super) const OPENINGS_CHECKED: ItemInfo = ItemInfo {
    part: Part::OfTheGuard,
    holds: Holds::ForThisGuardAlone,
    synonyms: &["gaps checked", "gaps looked at", "checked"],
    hazards: &[Hazard::FallThrough, Hazard::Entrapment],
    question: "Did you check every opening, some, or one?",
    pictured: Pictured::Not("a word says how many were looked at; the tape shows nothing"),
    ..row(
        Item::OpeningsChecked,
        "openings checked",
        Kind::Words(OpeningsCheckedWord::WORDS),
        Group::Measured,
        "How many of the openings you looked at; every one if not said, as the widest is asked for.",
        &["With some or one, the rest stays not measured."],
        &["every one", "some"],
    )
};

pub(super) const BOTTOM_GAP: ItemInfo = ItemInfo {
    part: Part::OfTheGuard,
    between: MeasuredBetween::Faces,
    hole: Hole::Any,
    synonyms: &[
        "gap under the rail",
        "gap under bottom rail",
        "gap under the bottom rail",
        "gap at the bottom",
        "gap at bottom",
        "gap below",
        "bottom",
    ],
    worst: Worst::Greatest,
    hazards: &[Hazard::FallThrough, Hazard::Entrapment],
    question: "How high is the gap under the bottom rail, at its highest?",
    usual: Some((Length::ZERO, Length::inches(28))), // 28 in under a guardrail: CPSC publication 325
    most: Some(Length::feet(20)),
    zero_allowed: true,
    none_allowed: true,
    pictured: Pictured::By(&[Drawing::BottomGap]),
    ..row(
        Item::BottomGap,
        "bottom gap",
        Kind::Opening,
        Group::Measured,
        "The gap between the walking surface and the lowest rail, at its highest. On a stair: the plumb distance from the line of the step noses to the rail's underside.",
        &[
            "Look along the bottom for the highest place: floors dip.",
            "Measure up from the walking surface to the underside.",
            "The guard goes down to the floor: none.",
        ],
        &["1 15/16 in", "55 mm", "none"],
    )
};

pub(super) const END_GAP: ItemInfo = ItemInfo {
    part: Part::OfTheGuard,
    between: MeasuredBetween::Faces,
    hole: Hole::Any,
    synonyms: &["side gap", "wall gap", "gap at the wall", "gap at the end"],
    worst: Worst::Greatest,
    hazards: &[Hazard::FallThrough, Hazard::Entrapment],
    question: "How wide is the gap between the guard's end and the wall or post?",
    usual: Some((Length::ZERO, Length::inches(24))),
    most: Some(Length::feet(20)),
    zero_allowed: true,
    none_allowed: true,
    pictured: Pictured::By(&[Drawing::EndGap]),
    topic: Some(Item::Opening),
    ..row(
        Item::EndGap,
        "end gap",
        Kind::Opening,
        Group::Measured,
        "The gap between the guard's end and the wall or post; only where you want it apart from opening.",
        &["Walls lean: measure at the widest place, not at the bottom."],
        &["2 7/16 in", "none"],
    )
};

pub(super) const EDGE_GAP: ItemInfo = ItemInfo {
    part: Part::OfTheGuard,
    between: MeasuredBetween::Faces,
    hole: Hole::AnyForItself,
    synonyms: &["face gap", "gap beside the floor", "gap at the edge"],
    worst: Worst::Greatest,
    hazards: &[Hazard::FallThrough],
    question: "How wide is the gap between the edge of the floor and the inner face of the guard?",
    usual: Some((Length::ZERO, Length::inches(12))),
    most: Some(Length::feet(20)),
    zero_allowed: true,
    none_allowed: true,
    pictured: Pictured::By(&[Drawing::EdgeGap]),
    ..row(
        Item::EdgeGap,
        "edge gap",
        Kind::Opening,
        Group::Measured,
        "The level gap between the edge of the floor, or of the flight, and the inner face of a guard that is fixed outside it.",
        &[
            "Only where the guard stands outside the edge, fixed to its face.",
            "Measure level from the edge to the nearest inner face, at the widest place.",
            "The guard stands on the floor: none.",
        ],
        &["40 mm", "1 1/2 in", "none"],
    )
};

pub(super) const STAIR_TRIANGLE: ItemInfo = ItemInfo {
    part: Part::OfTheGuard,
    between: MeasuredBetween::Faces,
    hole: Hole::ForItself,
    synonyms: &["triangle", "step triangle"],
    worst: Worst::Greatest,
    hazards: &[Hazard::FallThrough],
    question: "At a step, what are rise, going and the plumb lift of the bottom rail?",
    none_allowed: true,
    pictured: Pictured::By(&[Drawing::StairTriangle]),
    place: ItemPlace::OnStairs,
    ..row(
        Item::StairTriangle,
        "stair triangle",
        Kind::StairTriangle,
        Group::Measured,
        "The hole between a riser, a tread and the bottom rail of a stair guard.",
        &[
            "Rise: plumb from one tread to the next. Going: level from one nose to the next.",
            "Lift: lay a straight board on the noses and measure plumb up to the rail's underside. On the noses: lift 0.",
            "Steps that stand out over the riser below: add how far, and how thick they are: nosing 1 thick 1 1/4 in. No boards behind the treads: add open risers.",
            "Steps differ: measure the largest. Where the stair winds: a reading for each tread, its going measured along the guard.",
            "The side is closed: none. Quicker: try a ball; write 6 in ball stops everywhere.",
        ],
        &[
            "rise 7 3/4 going 10 lift 1 in",
            "rise 7 3/4 going 10 lift 1 nosing 1 thick 1 1/4 in",
            "rise 190 going 250 lift 40 mm open risers",
            "6 in ball stops everywhere",
            "none",
        ],
    )
};

pub(super) const RISER_OPENING: ItemInfo = ItemInfo {
    between: MeasuredBetween::Faces,
    hole: Hole::ForItself,
    synonyms: &["open riser", "open risers", "riser gap"],
    worst: Worst::Greatest,
    hazards: &[Hazard::FallThrough],
    question: "Are the risers open, and how wide is the gap between treads?",
    usual: Some((Length::ZERO, Length::inches(12))),
    most: Some(Length::feet(5)),
    zero_allowed: true,
    none_allowed: true,
    pictured: Pictured::By(&[Drawing::RiserOpening]),
    place: ItemPlace::OnStairs,
    ..row(
        Item::RiserOpening,
        "riser opening",
        Kind::Opening,
        Group::Measured,
        "The gap between two treads of a stair with open risers.",
        &[
            "Measure plumb from the top of one tread to the underside of the next.",
            "Closed risers: none.",
        ],
        &["none", "6 in"],
    )
};

pub(super) const V_OPENING: ItemInfo = ItemInfo {
    part: Part::OfTheGuard,
    between: MeasuredBetween::Faces,
    synonyms: &[
        "v gap",
        "vee",
        "v",
        "vee opening",
        "v shaped opening",
        "v shaped gap",
    ],
    worst: Worst::Neither,
    hazards: &[Hazard::Entrapment],
    question: "Does any opening stand open at the top and narrow downward, and how wide and deep is it?",
    none_allowed: true,
    pictured: Pictured::By(&[Drawing::VOpening]),
    ..row(
        Item::VOpening,
        "v opening",
        Kind::VOpening,
        Group::Measured,
        "An opening that is open at the top and narrows downward: between pickets, scrolls, a rail and a post.",
        &[
            "Measure how wide it is at the top, and how deep from there to where the sides meet.",
            "If the sides do not meet, add how wide it is at the bottom. Nothing of the kind: none.",
        ],
        &[
            "5 in wide 6 in deep",
            "120 mm wide 150 mm deep 20 mm at the bottom",
            "none",
        ],
    )
};

pub(super) const GAP_ABOVE_SOLID_PART: ItemInfo = ItemInfo {
    hole: Hole::AnyForItself,
    part: Part::OfTheGuard,
    between: MeasuredBetween::Faces,
    synonyms: &["gap above the front"],
    worst: Worst::Greatest,
    hazards: &[Hazard::FallThrough, Hazard::Entrapment],
    question: "How wide is the gap between the solid part and the rail above it?",
    usual: Some((Length::ZERO, Length::inches(24))),
    most: Some(Length::feet(20)),
    zero_allowed: true,
    none_allowed: true,
    pictured: Pictured::Not("the words say between which two places the tape runs"),
    ..row(
        Item::GapAboveSolidPart,
        "gap above solid part",
        Kind::Length,
        Group::Measured,
        "The gap between the top of the guard's solid part, such as a balcony's front, and a rail above it.",
        &[
            "Measure plumb at the widest place.",
            "There is no rail above it: none.",
        ],
        &["84 mm", "3 1/4 in", "none"],
    )
};
