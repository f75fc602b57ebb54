//! What an item is: its name, the kind of its reading, and what the table says of it.

use crate::items::Hazard;
use crate::items::Pictured;
use crate::items::Word;
use crate::quantities::Length;

/// Something that can be written down about a guard, a unit or a survey.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[non_exhaustive]
#[expect(missing_docs, reason = "each is described in the table")]
pub enum Item {
    Property,
    Date,
    By,
    Tape,
    ReadTo,
    DefaultUnit,
    Rules,
    BuildTolerance,
    Place,
    Use,
    DwellingsInBuilding,
    Shared,
    OwnWayOut,
    Location,
    Drop,
    SillHeight,
    SillTopHeight,
    SillAboveGround,
    ReplacedWindow,
    WindowStop,
    GroundFall,
    CeilingHeight,
    RampSlope,
    RampRise,
    Built,
    Storeys,
    Risers,
    FlightWidth,
    FlightShape,
    TreadThickness,
    WellWidth,
    InnerEdgeLength,
    Handrail,
    FixedSeat,
    Children,
    State,
    Guard,
    Height,
    HeightAboveSeat,
    GuardThickness,
    GuardLength,
    Opening,
    OpeningsChecked,
    BottomGap,
    EndGap,
    EdgeGap,
    StairTriangle,
    RiserOpening,
    VOpening,
    LevelBarSpacing,
    LevelMembersOn,
    GapAboveSolidPart,
    Foothold,
    ThingToClimb,
    StepBeside,
    StepOutside,
    HandrailHeight,
    HandrailSides,
    HandrailShape,
    HandrailThickness,
    HandrailPerimeter,
    HandrailClearance,
    HandrailExtension,
    HandrailContinuous,
    HandrailEnds,
    HandrailProjection,
    HandrailEndGap,
    HandrailGripWidth,
    HandrailBottomExtension,
    HandrailReach,
    RampEdge,
    SolidPartHeight,
    SolidPartTopWidth,
    PostSpacing,
    PostSection,
    Infill,
    InfillLoose,
    PostFastening,
    NotchedPost,
    FastenedTo,
    MovesWhenPushed,
    TopOfStairsGate,
    BottomOfStairsGate,
    GateHeight,
    GateGap,
    GateBottomGap,
    LatchHeight,
    GateClosesItself,
    GateOpens,
    Paint,
    Photo,
    PostMaterial,
    WallThickness,
    WoodSpecies,
    PostFasteners,
    ThreadInFraming,
    FastenerSpacing,
    FastenerDepth,
    EdgeDistance,
    WasherSize,
    DeckingThickness,
    FramingHeldBy,
    RailSection,
    RailEndFastening,
    RailEndFasteners,
    BalusterSection,
    BalusterSpacing,
    BalusterLength,
    BalusterFixing,
    Condition,
    RailPosition,
    LowerRailSection,
    PostPosition,
    BehindThePost,
    FramingSpecies,
    LumberGrade,
    RowsOfSlits,
    FramingThickness,
    RimDepth,
    WasherThickness,
    TieLabel,
    CableCount,
    CableTension,
    AnchorEmbedment,
    ConcreteEdge,
    PlateThickness,
    SocketDepth,
    PostNeck,
    NeckHeight,
    PullTest,
}

/// What kind of reading an item takes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// Ages of children: `14 months`, `3 years`, or none.
    Ages,
    /// A whole number.
    Count,
    /// A day: `2026-05-04`.
    Date,
    /// Fasteners: how many, how thick, how long: `2 x 1/2 in x 6 in`.
    Fasteners,
    /// A foothold: `450 mm high 40 mm deep`.
    Foothold,
    /// A force: `225 lbf`, `1 kN`.
    Force,
    /// How finely a tape was read: `1/16 in`, `1 mm`.
    Graduation,
    /// A plain length.
    Length,
    /// An opening: a length, a ball test, or a shape.
    Opening,
    /// A pull and how far something moved: `50 lbf 0.21 in`.
    Pull,
    /// A section: `3 1/2 x 3 1/2 in`.
    Section,
    /// Rise, going and lift at a step.
    StairTriangle,
    /// Words of the person's own.
    Text,
    /// A thing to climb: `18 in high 5 in away`, `yes`, `none`.
    ThingToClimb,
    /// ± a length.
    Tolerance,
    /// An opening that is open at the top and narrows downward: `5 in wide 6 in deep`.
    VOpening,
    /// A word of a list, better words first.
    Words(&'static [Word]),
    /// A year or a span of years.
    Years,
}

impl Kind {
    /// Whether a reading holds a length: a number without a unit may be the start of one, and
    /// a date can only be a spreadsheet's doing.
    #[must_use]
    pub const fn holds_a_length(self) -> bool {
        match self {
            Self::Fasteners
            | Self::Foothold
            | Self::Graduation
            | Self::Length
            | Self::Opening
            | Self::Pull
            | Self::Section
            | Self::StairTriangle
            | Self::ThingToClimb
            | Self::Tolerance
            | Self::VOpening => true,
            Self::Ages
            | Self::Count
            | Self::Date
            | Self::Force
            | Self::Text
            | Self::Words(_)
            | Self::Years => false,
        }
    }
}

/// Where an item belongs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Group {
    /// About the survey itself: who, when, with which tape.
    Survey,
    /// Circumstances: they say which rules apply.
    Circumstance,
    /// Measured at the guard.
    Measured,
    /// Seen at the guard.
    Seen,
}

/// Which of several measured values governs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Worst {
    /// The least one: a height.
    Least,
    /// The greatest one: an opening, a drop.
    Greatest,
    /// No order.
    Neither,
}

/// Whether several words or years of an item clash, or are several observations.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Role {
    /// One value may hold: two that differ are an error.
    Single,
    /// Several may be written, and the governing one counts.
    Several,
}

/// Whether a change of it starts a new guard.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Change {
    /// It does: what a guard is filled with, or stands on.
    StartsAGuard,
    /// It does not.
    WithinAGuard,
}

/// Whether an item is a part or a state of the guard itself.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// It may be there without a guard: a gate, a chair nearby, paint, a handrail on the wall.
    Apart,
    /// A reading of it says that there is a guard.
    OfTheGuard,
}

/// Where an item is found.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ItemPlace {
    /// Wherever guards are.
    Anywhere,
    /// On stairs alone.
    OnStairs,
}

/// Between what a length is measured: it says what makes the reading doubtful.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MeasuredBetween {
    /// Two faces close together: an opening, a section.
    Faces,
    /// The walking surface and something above it.
    FloorAndTop,
    /// An edge and whatever lies below it.
    EdgeAndGround,
}

/// What kind of hole an item is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Hole {
    /// None.
    No,
    /// One that a ball tried everywhere tells of, and rules on any opening judge.
    Any,
    /// One that rules on any opening judge, and that a ball has to be tried at for itself.
    AnyForItself,
    /// One that a ball has to be tried at for itself.
    ForItself,
}

impl Hole {
    /// Whether a ball tried everywhere is evidence for it.
    #[must_use]
    pub const fn is_everywhere(self) -> bool {
        match self {
            Hole::Any => true,
            Hole::AnyForItself | Hole::ForItself | Hole::No => false,
        }
    }

    /// Whether a ball has to be tried at it for itself.
    #[must_use]
    pub const fn is_for_itself(self) -> bool {
        match self {
            Hole::AnyForItself | Hole::ForItself => true,
            Hole::Any | Hole::No => false,
        }
    }
}

/// For what an answer holds in most houses: who asks for it asks so often.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Holds {
    /// For one guard: it is asked at each.
    ForAGuard,
    /// For one guard, and it is looked at anew however alike two guards are built.
    ForThisGuardAlone,
    /// For most guards of a house, though it is written at each.
    ForMost,
    /// For a unit.
    ForAUnit,
    /// For the whole survey.
    ForAll,
    /// For the file in which it stands.
    ForItsFile,
}

/// Whether anybody asks for an item.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum AskedWhen {
    /// Where a chosen rule looks at it.
    ByRules,
    /// Never: it is read where somebody wrote it of their own accord.
    Never,
}

/// What the table says of one item.
#[derive(Clone, Copy, Debug)]
pub struct ItemInfo {
    /// Which item.
    pub item: Item,
    /// Its name in surveys.
    pub name: &'static str,
    /// What it is called in plain speech as well; understood in surveys.
    pub synonyms: &'static [&'static str],
    /// What kind of reading it takes.
    pub kind: Kind,
    /// Where it belongs.
    pub group: Group,
    /// Whether several values clash.
    pub role: Role,
    /// Which of several values governs.
    pub worst: Worst,
    /// Whether a change of it starts a new guard.
    pub change: Change,
    /// Whether a reading of it says that there is a guard.
    pub part: Part,
    /// Between what a length of it is measured.
    pub between: MeasuredBetween,
    /// What kind of hole it is.
    pub hole: Hole,
    /// For what an answer holds.
    pub holds: Holds,
    /// Where it is found.
    pub place: ItemPlace,
    /// The item under which reports speak of it, since one remedy puts both right; `None`
    /// where that is itself.
    pub topic: Option<Item>,
    /// Its place among what a load rule looks at, in the order of asking: what
    /// decides most first.
    pub load_path: Option<u8>,
    /// The hazards it bears on.
    pub hazards: &'static [Hazard],
    /// What it is, in one sentence.
    pub means: &'static str,
    /// How to measure or find it, step by step, with its worst place.
    pub how: &'static [&'static str],
    /// The drawings that show it.
    pub pictured: Pictured,
    /// Readings to write as they stand, as examples.
    pub examples: &'static [&'static str],
    /// The question a report asks when it is missing.
    pub question: &'static str,
    /// Values outside are questioned. (common practice, no source)
    pub usual: Option<(Length, Length)>,
    /// Values above are refused as slips. (common practice, no source)
    pub most: Option<Length>,
    /// Whether reports, walk and sheet ask for it.
    pub asked: AskedWhen,
    /// Whether zero can be.
    pub zero_allowed: bool,
    /// Whether `none` ("looked, there is none") can be.
    pub none_allowed: bool,
}
