//! The measuring drawings by name.

use crate::items::DrawingScene;
use crate::items::drawings;

/// One drawing that shows where the tape or the ball goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Drawing {
    /// How high a guard stands above a seat, and how thick it is.
    AboveASeat,
    /// A ball at an opening.
    Ball,
    /// How far a handrail runs on beyond the top step.
    BeyondTheStep,
    /// The gap under the bottom rail.
    BottomGap,
    /// The drop at an edge.
    Drop,
    /// The level gap between the floor's edge and a guard fixed outside it.
    EdgeGap,
    /// The gap between a guard's end and the wall.
    EndGap,
    /// How wide a flight is.
    FlightWidth,
    /// How high and how deep a foothold is.
    Foothold,
    /// The room behind a handrail, and its thickness.
    FromTheWall,
    /// A handrail on a stair.
    HandrailHeight,
    /// The lowest place of a level rail.
    Height,
    /// The height of a guard on a stair.
    HeightOnStair,
    /// How high a latch is.
    Latch,
    /// The thickness of a post, both ways.
    PostSection,
    /// Posts, centre to centre.
    PostSpacing,
    /// The gap between the balusters of a stair guard.
    RakedGap,
    /// How steep a ramp is, and how far it rises.
    Ramp,
    /// The gap between two treads.
    RiserOpening,
    /// A window's sill, from inside and from outside.
    Sill,
    /// A parapet's height and the width of its top.
    SolidPart,
    /// Rise, going and the plumb lift of the bottom rail.
    StairTriangle,
    /// The tape at the widest gap.
    Tape,
    /// How high a thing is and how far from the guard.
    ThingToClimb,
    /// How thick a tread is.
    TreadThickness,
    /// How wide and how deep an opening is that narrows downward.
    VOpening,
}

/// How an item is shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Pictured {
    /// By these drawings, the first one first.
    By(&'static [Drawing]),
    /// Not at all, and why; empty where nothing is measured.
    Not(&'static str),
}

impl Drawing {
    /// All of them.
    pub const ALL: [Drawing; 26] = [
        Drawing::AboveASeat,
        Drawing::Ball,
        Drawing::BeyondTheStep,
        Drawing::BottomGap,
        Drawing::Drop,
        Drawing::EdgeGap,
        Drawing::EndGap,
        Drawing::FlightWidth,
        Drawing::Foothold,
        Drawing::FromTheWall,
        Drawing::HandrailHeight,
        Drawing::Height,
        Drawing::HeightOnStair,
        Drawing::Latch,
        Drawing::PostSection,
        Drawing::PostSpacing,
        Drawing::RakedGap,
        Drawing::Ramp,
        Drawing::RiserOpening,
        Drawing::Sill,
        Drawing::SolidPart,
        Drawing::StairTriangle,
        Drawing::Tape,
        Drawing::ThingToClimb,
        Drawing::TreadThickness,
        Drawing::VOpening,
    ];

    /// What is drawn.
    #[must_use]
    pub const fn scene(self) -> &'static DrawingScene {
        match self {
            Drawing::AboveASeat => &drawings::ABOVE_A_SEAT,
            Drawing::Ball => &drawings::BALL,
            Drawing::BeyondTheStep => &drawings::BEYOND_THE_STEP,
            Drawing::BottomGap => &drawings::BOTTOM_GAP,
            Drawing::Drop => &drawings::DROP,
            Drawing::EdgeGap => &drawings::EDGE_GAP,
            Drawing::EndGap => &drawings::END_GAP,
            Drawing::FlightWidth => &drawings::FLIGHT_WIDTH,
            Drawing::Foothold => &drawings::FOOTHOLD,
            Drawing::FromTheWall => &drawings::FROM_THE_WALL,
            Drawing::HandrailHeight => &drawings::HANDRAIL_HEIGHT,
            Drawing::Height => &drawings::HEIGHT,
            Drawing::HeightOnStair => &drawings::HEIGHT_ON_STAIR,
            Drawing::Latch => &drawings::LATCH,
            Drawing::PostSection => &drawings::POST_SECTION,
            Drawing::PostSpacing => &drawings::POST_SPACING,
            Drawing::RakedGap => &drawings::RAKED_GAP,
            Drawing::Ramp => &drawings::RAMP,
            Drawing::RiserOpening => &drawings::RISER_OPENING,
            Drawing::Sill => &drawings::SILL,
            Drawing::SolidPart => &drawings::SOLID_PART,
            Drawing::StairTriangle => &drawings::STAIR_TRIANGLE,
            Drawing::Tape => &drawings::TAPE,
            Drawing::ThingToClimb => &drawings::THING_TO_CLIMB,
            Drawing::TreadThickness => &drawings::TREAD_THICKNESS,
            Drawing::VOpening => &drawings::V_OPENING,
        }
    }
}
