//! The rows about handrails.

use crate::items::Drawing;
use crate::items::Group;
use crate::items::HandrailContinuousWord;
use crate::items::HandrailEndsWord;
use crate::items::HandrailShapeWord;
use crate::items::HandrailSidesWord;
use crate::items::Hazard;
use crate::items::Item;
use crate::items::ItemInfo;
use crate::items::ItemPlace;
use crate::items::ItemWord;
use crate::items::Kind;
use crate::items::MeasuredBetween;
use crate::items::Pictured;
use crate::items::RampEdgeWord;
use crate::items::Worst;
use crate::items::row::row;
use crate::quantities::Length;

pub(super) const HANDRAIL_HEIGHT: ItemInfo = ItemInfo {
    synonyms: &["rail grip height"],
    worst: Worst::Neither,
    question: "How high is the handrail above the step noses, or on a ramp above its floor?",
    usual: Some((Length::inches(15), Length::feet(5))), // 15 in for toddlers: CPSC publication 325
    most: Some(Length::feet(12)),
    pictured: Pictured::By(&[Drawing::HandrailHeight]),
    place: ItemPlace::OnStairs,
    ..row(
        Item::HandrailHeight,
        "handrail height",
        Kind::Length,
        Group::Measured,
        "How high the top of the handrail is above the line of the step noses, or the floor.",
        &[
            "Plumb from the nose of a step, or from the floor of a ramp, to the top of the handrail.",
            "Measure at the lowest and at the highest place, and write both.",
        ],
        &["35 1/4 in", "895 mm"],
    )
};

pub(super) const HANDRAIL_SIDES: ItemInfo = ItemInfo {
    synonyms: &["handrails on"],
    hazards: &[Hazard::FallOver],
    question: "Is there a handrail on both sides, or on one?",
    pictured: Pictured::Not("it is counted, and not measured"),
    place: ItemPlace::OnStairs,
    ..row(
        Item::HandrailSides,
        "handrail sides",
        Kind::Words(HandrailSidesWord::WORDS),
        Group::Measured,
        "On how many sides of the flight or ramp a handrail runs.",
        &[
            "Count a guard whose top is the handrail as one side.",
            "One side, if one of the two does not run the whole length.",
        ],
        &["both sides", "one side"],
    )
};

pub(super) const HANDRAIL_SHAPE: ItemInfo = ItemInfo {
    hazards: &[Hazard::FallOver],
    question: "Is the handrail round, has it finger grooves, or neither?",
    pictured: Pictured::Not("it is looked at, and not measured"),
    place: ItemPlace::OnStairs,
    ..row(
        Item::HandrailShape,
        "handrail shape",
        Kind::Words(HandrailShapeWord::WORDS),
        Group::Measured,
        "What a cut through the handrail looks like.",
        &[
            "round: a full circle, as of a pipe.",
            "with finger grooves: a wide rail with a groove for the fingers on both sides, below its widest part.",
            "other: anything else, an oval or a flat board too.",
        ],
        &["round", "other"],
    )
};

pub(super) const HANDRAIL_THICKNESS: ItemInfo = ItemInfo {
    between: MeasuredBetween::Faces,
    synonyms: &["handrail diameter", "handrail width"],
    worst: Worst::Neither,
    hazards: &[Hazard::FallOver],
    question: "How thick is the handrail?",
    usual: Some((Length::millimetres(10), Length::inches(8))),
    most: Some(Length::feet(2)),
    pictured: Pictured::By(&[Drawing::FromTheWall]),
    place: ItemPlace::OnStairs,
    ..row(
        Item::HandrailThickness,
        "handrail thickness",
        Kind::Length,
        Group::Measured,
        "How thick the handrail is: the longest straight line across a cut through it, which for a round one is its diameter.",
        &[
            "Hold two flat blocks against it, parallel, and measure between them.",
            "Turn them around it and take the greatest.",
        ],
        &["1 1/2 in", "40 mm"],
    )
};

pub(super) const HANDRAIL_PERIMETER: ItemInfo = ItemInfo {
    between: MeasuredBetween::Faces,
    synonyms: &["perimeter of the handrail"],
    worst: Worst::Neither,
    hazards: &[Hazard::FallOver],
    question: "How long is a strip of paper once around the handrail?",
    usual: Some((Length::inches(1), Length::inches(24))),
    most: Some(Length::feet(4)),
    pictured: Pictured::Not("the words say between which two places the tape runs"),
    place: ItemPlace::OnStairs,
    ..row(
        Item::HandrailPerimeter,
        "handrail perimeter",
        Kind::Length,
        Group::Measured,
        "How long a string is that goes once around the handrail.",
        &[
            "Lay a strip of paper around it, mark where it meets itself, and measure the strip flat.",
        ],
        &["5 in", "130 mm"],
    )
};

pub(super) const HANDRAIL_CLEARANCE: ItemInfo = ItemInfo {
    between: MeasuredBetween::Faces,
    synonyms: &["distance from the wall"],
    worst: Worst::Least,
    hazards: &[Hazard::FallOver],
    question: "How much room is there between the handrail and the wall?",
    usual: Some((Length::millimetres(10), Length::inches(8))),
    most: Some(Length::feet(4)),
    pictured: Pictured::By(&[Drawing::FromTheWall]),
    place: ItemPlace::OnStairs,
    ..row(
        Item::HandrailClearance,
        "handrail clearance",
        Kind::Length,
        Group::Measured,
        "How much room there is between the handrail and the wall or guard beside it.",
        &[
            "Measure clear between the faces, at the narrowest place; brackets do not count. No wall beside it: leave it out.",
        ],
        &["1 1/2 in", "50 mm"],
    )
};

pub(super) const HANDRAIL_EXTENSION: ItemInfo = ItemInfo {
    between: MeasuredBetween::Faces,
    synonyms: &["top extension"],
    worst: Worst::Least,
    hazards: &[Hazard::FallOver],
    question: "How far does the handrail run on beyond the top step?",
    usual: Some((Length::ZERO, Length::feet(12))), // along a landing
    most: Some(Length::feet(30)),
    none_allowed: true,
    pictured: Pictured::By(&[Drawing::BeyondTheStep]),
    place: ItemPlace::OnStairs,
    ..row(
        Item::HandrailExtension,
        "handrail extension",
        Kind::Length,
        Group::Measured,
        "How far the handrail runs on level beyond the top step.",
        &[
            "At the top landing, measure level from the nose of the last step to the handrail's end.",
            "It ends at the step: none.",
        ],
        &["12 in", "300 mm", "none"],
    )
};

pub(super) const HANDRAIL_CONTINUOUS: ItemInfo = ItemInfo {
    synonyms: &["continuous handrail", "unbroken handrail"],
    hazards: &[Hazard::FallOver],
    question: "Does the handrail run the whole flight without a break?",
    pictured: Pictured::Not("it is looked at, and not measured"),
    place: ItemPlace::OnStairs,
    ..row(
        Item::HandrailContinuous,
        "handrail continuous",
        Kind::Words(HandrailContinuousWord::WORDS),
        Group::Measured,
        "Whether the handrail runs without a break from above the top step to above the lowest one.",
        &[
            "Slide a hand along it from top to bottom: it should not have to let go.",
            "A post at a turn of the stair is no break. It begins after the top step or ends before the lowest: no.",
        ],
        &["yes", "no"],
    )
};

pub(super) const HANDRAIL_ENDS: ItemInfo = ItemInfo {
    synonyms: &["ends of the handrail", "handrail returns"],
    hazards: &[Hazard::FallOver],
    question: "How do the handrail's ends stop: turned to the wall or floor, at a post, or free?",
    pictured: Pictured::Not("it is looked at, and not measured"),
    place: ItemPlace::OnStairs,
    ..row(
        Item::HandrailEnds,
        "handrail ends",
        Kind::Words(HandrailEndsWord::WORDS),
        Group::Measured,
        "How the ends of the handrail stop, so that no sleeve and no bag catches on them.",
        &[
            "returned: bent round to the wall, the floor, the guard or itself.",
            "at a post: they stop at a newel or post. free: they just stop. The worst end counts.",
        ],
        &["returned", "at a post", "free"],
    )
};

pub(super) const HANDRAIL_PROJECTION: ItemInfo = ItemInfo {
    between: MeasuredBetween::Faces,
    synonyms: &["handrail stands out"],
    worst: Worst::Greatest,
    hazards: &[Hazard::FallOver],
    question: "How far does the handrail stand out from the wall, its own thickness counted?",
    usual: Some((Length::inches(1), Length::inches(9))),
    most: Some(Length::feet(4)),
    none_allowed: true,
    pictured: Pictured::By(&[Drawing::FromTheWall]),
    place: ItemPlace::OnStairs,
    ..row(
        Item::HandrailProjection,
        "handrail projection",
        Kind::Length,
        Group::Measured,
        "How far the handrail stands out from the wall into the stair or ramp: the room behind it and its thickness together.",
        &[
            "Level from the wall to the face of the handrail farthest from it, at the widest place.",
            "Brackets count where they stand out farther. No wall beside it: none.",
        ],
        &["3 in", "85 mm", "none"],
    )
};

pub(super) const HANDRAIL_END_GAP: ItemInfo = ItemInfo {
    between: MeasuredBetween::Faces,
    synonyms: &["handrail return gap"],
    worst: Worst::Greatest,
    hazards: &[Hazard::FallOver],
    question: "How wide is the gap between the turned end of the handrail and the wall?",
    usual: Some((Length::ZERO, Length::inches(2))),
    most: Some(Length::feet(2)),
    none_allowed: true,
    pictured: Pictured::Not("the words say between which two places the tape runs"),
    place: ItemPlace::OnStairs,
    ..row(
        Item::HandrailEndGap,
        "handrail end gap",
        Kind::Length,
        Group::Measured,
        "How wide the gap is between an end of the handrail that turns toward the wall and the wall itself.",
        &[
            "Push a strip of card of known thickness into it, or lay a rule across: clear between end and wall, the wider end.",
            "It touches the wall, or turns to the floor, the guard or itself: none.",
        ],
        &["1/8 in", "3 mm", "none"],
    )
};

pub(super) const HANDRAIL_GRIP_WIDTH: ItemInfo = ItemInfo {
    between: MeasuredBetween::Faces,
    synonyms: &["width above the grooves", "grip width"],
    worst: Worst::Neither,
    hazards: &[Hazard::FallOver],
    question: "How wide is the handrail above its finger grooves?",
    usual: Some((Length::inches(1), Length::inches(6))),
    most: Some(Length::feet(2)),
    pictured: Pictured::Not("the words say between which two places the tape runs"),
    place: ItemPlace::OnStairs,
    ..row(
        Item::HandrailGripWidth,
        "handrail grip width",
        Kind::Length,
        Group::Measured,
        "How wide the part of a handrail above its finger grooves is, from side to side.",
        &[
            "Hold two flat blocks upright against its sides above the grooves, and measure level between them.",
            "Only for a handrail with finger grooves.",
        ],
        &["2 1/4 in", "58 mm"],
    )
};

pub(super) const HANDRAIL_BOTTOM_EXTENSION: ItemInfo = ItemInfo {
    between: MeasuredBetween::Faces,
    synonyms: &["bottom extension"],
    worst: Worst::Least,
    hazards: &[Hazard::FallOver],
    question: "How far does the handrail run on beyond the lowest step?",
    usual: Some((Length::ZERO, Length::feet(12))), // along a landing
    most: Some(Length::feet(30)),
    none_allowed: true,
    pictured: Pictured::Not(
        "it is measured as the run beyond the top step is, at the foot of the flight",
    ),
    place: ItemPlace::OnStairs,
    ..row(
        Item::HandrailBottomExtension,
        "handrail bottom extension",
        Kind::Length,
        Group::Measured,
        "How far the handrail runs on beyond the lowest step.",
        &[
            "At the foot of the flight, measure level from below the nose of the lowest step to the handrail's end.",
            "It ends at the step: none.",
        ],
        &["11 in", "300 mm", "none"],
    )
};

pub(super) const HANDRAIL_REACH: ItemInfo = ItemInfo {
    between: MeasuredBetween::Faces,
    synonyms: &["distance to the handrail"],
    worst: Worst::Greatest,
    hazards: &[Hazard::FallOver],
    question: "How far is the nearest handrail from the line where people walk?",
    usual: Some((Length::inches(4), Length::feet(5))),
    most: Some(Length::feet(30)),
    pictured: Pictured::Not("the words say between which two places the tape runs"),
    place: ItemPlace::OnStairs,
    ..row(
        Item::HandrailReach,
        "handrail reach",
        Kind::Length,
        Group::Measured,
        "How far the nearest handrail is from the line that people naturally take up and down the flight.",
        &[
            "Stand where you would walk and look down: measure level from between your feet to the handrail.",
            "On a wide flight people walk at either side: take the side that is farther from a handrail.",
        ],
        &["20 in", "500 mm"],
    )
};

pub(super) const RAMP_EDGE: ItemInfo = ItemInfo {
    synonyms: &["ramp edge protection", "edge protection"],
    hazards: &[Hazard::FallOver],
    question: "What keeps a wheel from running off the side of the ramp: a kerb, a low rail, a wall, or nothing?",
    pictured: Pictured::Not("it is looked at, and not measured"),
    ..row(
        Item::RampEdge,
        "ramp edge",
        Kind::Words(RampEdgeWord::WORDS),
        Group::Measured,
        "What keeps wheels and feet from running off the open side of a ramp.",
        &[
            "Look at the foot of the ramp's side: a raised edge is a kerb; a bar near the floor a low rail.",
            "The floor just ends: none.",
        ],
        &["kerb", "low rail", "none"],
    )
};
