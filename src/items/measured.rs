//! The rows of what is measured at a guard, but for its openings.

use crate::items::Drawing;
use crate::items::Group;
use crate::items::Hazard;
use crate::items::Item;
use crate::items::ItemInfo;
use crate::items::ItemWord;
use crate::items::Kind;
use crate::items::LevelMembersOnWord;
use crate::items::MeasuredBetween;
use crate::items::Part;
use crate::items::Pictured;
use crate::items::Worst;
use crate::items::row::row;
use crate::quantities::Length;

pub(super) const HEIGHT: ItemInfo = ItemInfo {
    part: Part::OfTheGuard,
    load_path: Some(45),
    synonyms: &["rail height", "guard height", "railing height"],
    worst: Worst::Least,
    hazards: &[Hazard::FallOver],
    question: "How high is the top of the guard at its lowest?",
    usual: Some((Length::inches(12), Length::feet(8))),
    most: Some(Length::feet(20)),
    pictured: Pictured::By(&[Drawing::Height, Drawing::HeightOnStair]),
    ..row(
        Item::Height,
        "height",
        Kind::Length,
        Group::Measured,
        "How high the top of the guard stands above the walking surface, at its lowest.",
        &[
            "Find the lowest place: rails sag between posts, and floors rise.",
            "Stand the tape on the walking surface beside the guard, plumb: held askew it reads too long.",
            "On a stair measure plumb from the nose of a step, not from the back of the tread.",
            "Read at the top edge of the top rail.",
            "Too close to tell: hold up a stick cut to the height asked for; write reaches 36 in, or below 36 in.",
        ],
        &["34 5/8 in", "reaches 36 in", "879 mm"],
    )
};

pub(super) const HEIGHT_ABOVE_SEAT: ItemInfo = ItemInfo {
    part: Part::OfTheGuard,
    synonyms: &[
        "height above kerb",
        "height above ledge",
        "height above curb",
    ],
    worst: Worst::Least,
    hazards: &[Hazard::FallOver],
    question: "How high is the guard's top above the seat, kerb or ledge beside it?",
    usual: Some((Length::inches(4), Length::feet(8))),
    most: Some(Length::feet(20)),
    zero_allowed: true,
    pictured: Pictured::By(&[Drawing::AboveASeat]),
    ..row(
        Item::HeightAboveSeat,
        "height above seat",
        Kind::Length,
        Group::Measured,
        "How high the top of the guard stands above a built-in seat, kerb or ledge beside it that one can stand on.",
        &[
            "Stand the tape on the seat, kerb or ledge, plumb, at the guard's lowest place.",
            "There is nothing of the kind: leave it out, and write fixed seat no.",
        ],
        &["19 3/4 in", "815 mm"],
    )
};

pub(super) const GUARD_THICKNESS: ItemInfo = ItemInfo {
    part: Part::OfTheGuard,
    between: MeasuredBetween::Faces,
    synonyms: &["parapet thickness"],
    worst: Worst::Least,
    hazards: &[Hazard::FallOver],
    question: "How thick is the guard at its top?",
    usual: Some((Length::millimetres(10), Length::feet(3))),
    most: Some(Length::feet(10)),
    pictured: Pictured::By(&[Drawing::AboveASeat]),
    ..row(
        Item::GuardThickness,
        "guard thickness",
        Kind::Length,
        Group::Measured,
        "How thick the guard is at its top, from its inner to its outer face.",
        &["Measure level across the top. A rail on uprights: the width of the top rail."],
        &["60 mm", "12 in"],
    )
};

pub(super) const LEVEL_BAR_SPACING: ItemInfo = ItemInfo {
    part: Part::OfTheGuard,
    between: MeasuredBetween::Faces,
    synonyms: &["distance between level members"],
    worst: Worst::Least,
    hazards: &[Hazard::Climb],
    question: "How far apart are the tops of the level members?",
    usual: Some((Length::inches(2), Length::feet(6))),
    most: Some(Length::feet(20)),
    pictured: Pictured::Not("the words say between which two places the tape runs"),
    topic: Some(Item::Infill),
    ..row(
        Item::LevelBarSpacing,
        "level bar spacing",
        Kind::Length,
        Group::Measured,
        "How far apart two level members of the guard or fence are, from top to top, at the nearest.",
        &[
            "Measure plumb from the top of one level member to the top of the next.",
            "There is one level member at most: leave it out.",
        ],
        &["43 1/2 in", "1.12 m"],
    )
};

pub(super) const FOOTHOLD: ItemInfo = ItemInfo {
    part: Part::OfTheGuard,
    synonyms: &["toe hold", "toehold", "footholds"],
    hazards: &[Hazard::Climb],
    question: "Is there anything on the guard that a child's foot could stand on, and how high?",
    none_allowed: true,
    pictured: Pictured::By(&[Drawing::Foothold]),
    topic: Some(Item::Infill),
    ..row(
        Item::Foothold,
        "foothold",
        Kind::Foothold,
        Group::Measured,
        "Something on the guard that a child's foot could stand on: a rail, a ledge, a wide hole.",
        &[
            "Look from a child's height for anything level that sticks out or lets a foot in.",
            "Measure its top above the walking surface, and how deep it is.",
            "Bottom rails count too. Nothing of the kind: none.",
        ],
        &["385 mm high 35 mm deep", "17 in high", "none"],
    )
};

pub(super) const THING_TO_CLIMB: ItemInfo = ItemInfo {
    synonyms: &[
        "climbable object",
        "furniture",
        "planter",
        "things to climb",
    ],
    hazards: &[Hazard::Climb],
    question: "Does anything stand near the guard that a child could climb?",
    none_allowed: true,
    pictured: Pictured::By(&[Drawing::ThingToClimb]),
    ..row(
        Item::ThingToClimb,
        "thing to climb",
        Kind::ThingToClimb,
        Group::Measured,
        "Something near the guard that a child could climb: a chair, a planter, a toy box.",
        &[
            "Look along the whole guard.",
            "Move it away, and then write none; else write how high it is and how far off.",
        ],
        &["17 in high 7 in away", "yes", "none"],
    )
};

pub(super) const SOLID_PART_HEIGHT: ItemInfo = ItemInfo {
    part: Part::OfTheGuard,
    synonyms: &["parapet height", "wall height"],
    worst: Worst::Least,
    hazards: &[Hazard::Climb],
    usual: Some((Length::inches(1), Length::feet(8))),
    most: Some(Length::feet(20)),
    zero_allowed: true,
    none_allowed: true,
    question: "How high is the solid part of the guard?",
    pictured: Pictured::By(&[Drawing::SolidPart]),
    ..row(
        Item::SolidPartHeight,
        "solid part height",
        Kind::Length,
        Group::Measured,
        "How high the solid lower part of the guard is: a parapet or a kerb.",
        &["From the walking surface to its top. A child may stand on it."],
        &["24 in", "none"],
    )
};

pub(super) const SOLID_PART_TOP_WIDTH: ItemInfo = ItemInfo {
    part: Part::OfTheGuard,
    between: MeasuredBetween::Faces,
    synonyms: &["parapet width", "wall top width"],
    worst: Worst::Greatest,
    hazards: &[Hazard::Climb],
    usual: Some((Length::ZERO, Length::feet(4))),
    most: Some(Length::feet(20)),
    zero_allowed: true,
    question: "How wide is the top of the solid part?",
    pictured: Pictured::By(&[Drawing::SolidPart]),
    ..row(
        Item::SolidPartTopWidth,
        "solid part top width",
        Kind::Length,
        Group::Measured,
        "How wide the top of the solid part is, where a foot could stand.",
        &["Across the top, from the inner face to whatever stands on it."],
        &["4 in"],
    )
};

pub(super) const POST_SPACING: ItemInfo = ItemInfo {
    part: Part::OfTheGuard,
    between: MeasuredBetween::Faces,
    load_path: Some(30),
    synonyms: &["distance between posts"],
    worst: Worst::Greatest,
    hazards: &[Hazard::GiveWay],
    usual: Some((Length::inches(12), Length::feet(12))),
    most: Some(Length::feet(60)),
    question: "How far apart are the posts, at most?",
    pictured: Pictured::By(&[Drawing::PostSpacing]),
    topic: Some(Item::PostFastening),
    ..row(
        Item::PostSpacing,
        "post spacing",
        Kind::Length,
        Group::Measured,
        "How far apart the posts stand, centre to centre, at most.",
        &[
            "Along the rail, from the middle of one post to the middle of the next; take the widest bay.",
        ],
        &["6 ft", "1.8 m"],
    )
};

pub(super) const POST_SECTION: ItemInfo = ItemInfo {
    part: Part::OfTheGuard,
    between: MeasuredBetween::Faces,
    load_path: Some(6),
    synonyms: &["post size"],
    hazards: &[Hazard::GiveWay],
    question: "What is the post's section?",
    pictured: Pictured::By(&[Drawing::PostSection]),
    topic: Some(Item::PostFastening),
    ..row(
        Item::PostSection,
        "post section",
        Kind::Section,
        Group::Measured,
        "How thick a post is, both ways, as measured and not as sold.",
        &["Across both faces of the post."],
        &["3 1/2 x 3 1/2 in", "90 x 90 mm"],
    )
};

pub(super) const GUARD_LENGTH: ItemInfo = ItemInfo {
    synonyms: &[
        "railing length",
        "length of the guard",
        "length of the railing",
        "edge length",
    ],
    worst: Worst::Greatest,
    question: "How long is the guard, or the open edge, along its inside?",
    usual: Some((Length::inches(6), Length::feet(100))),
    most: Some(Length::feet(2000)),
    between: MeasuredBetween::Faces,
    pictured: Pictured::Not("the words say between which two places the tape runs"),
    ..row(
        Item::GuardLength,
        "guard length",
        Kind::Length,
        Group::Measured,
        "How long the guard is, or the edge that has none, along its inside.",
        &[
            "On the inside, from wall to wall, or to the middle of the last post. On a stair along the slope.",
            "It says how much material a remedy takes. Where there is no guard, measure along the wall opposite and keep away from the edge.",
        ],
        &["8 ft 7 in", "2.6 m"],
    )
};

pub(super) const LEVEL_MEMBERS_ON: ItemInfo = ItemInfo {
    synonyms: &[
        "side of the level members",
        "level members",
        "rails on side",
    ],
    part: Part::OfTheGuard,
    hazards: &[Hazard::Climb],
    question: "On which side of the guard are its level members: inside, outside, both, or none?",
    pictured: Pictured::Not("it is looked at, and not measured"),
    ..row(
        Item::LevelMembersOn,
        "level members on",
        Kind::Words(LevelMembersOnWord::WORDS),
        Group::Measured,
        "On which side of the uprights the level members lie: rails, boards, anything a foot could stand on.",
        &[
            "Look along the guard from its end. Inside is the side where people stand.",
            "A top rail and a bottom rail in the middle of the uprights can be stepped on from both sides: both sides.",
            "No level member but the top rail: none.",
        ],
        &["outside", "both sides", "none"],
    )
};

pub(super) const STEP_BESIDE: ItemInfo = ItemInfo {
    synonyms: &["plinth", "radiator", "fixed step", "step beside the guard"],
    hazards: &[Hazard::Climb, Hazard::FallOver],
    question: "Is there anything fixed beside the guard that one could stand on: a radiator, a plinth, a low wall?",
    none_allowed: true,
    pictured: Pictured::By(&[Drawing::ThingToClimb]),
    ..row(
        Item::StepBeside,
        "step beside",
        Kind::ThingToClimb,
        Group::Measured,
        "Something fixed on the inside, beside the guard or below the window, that one could stand on: a radiator, a plinth, a planted bed, a low wall.",
        &[
            "How high its top is above the floor, how deep it is, and how far from the guard it ends.",
            "What can be carried away is a thing to climb; what is part of the guard is a foothold.",
            "Nothing of the kind: none.",
        ],
        &[
            "150 mm high 300 mm deep 0 mm away",
            "18 in high 8 in deep",
            "none",
        ],
    )
};

pub(super) const STEP_OUTSIDE: ItemInfo = ItemInfo {
    synonyms: &["ledge outside", "step outside the guard"],
    hazards: &[Hazard::Climb],
    question: "Is there anything just outside the guard that one could stand on: a ledge, a roof, a wall?",
    none_allowed: true,
    pictured: Pictured::By(&[Drawing::ThingToClimb]),
    ..row(
        Item::StepOutside,
        "step outside",
        Kind::ThingToClimb,
        Group::Measured,
        "Something on the far side of the guard that a child could reach with a foot: a ledge, a kerb, a roof, a retaining wall, a branch.",
        &[
            "Look over the guard without leaning on it, or from below.",
            "How high its top is above the floor inside, how deep it is, and how far from the guard it begins. Guess rather than reach out, and say so in the note.",
            "Nothing of the kind: none.",
        ],
        &["4 in high 6 in deep 2 in away", "yes", "none"],
    )
};
