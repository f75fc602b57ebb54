//! What an item is: its name, the kind of its reading, and what the table says of it.

use std::fmt;

use crate::input::folded;
use crate::items::Hazard;
use crate::items::Pictured;
use crate::items::Word;
use crate::items::table;
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
    Location,
    Drop,
    SillHeight,
    SillAboveGround,
    GroundFall,
    Built,
    Storeys,
    Risers,
    FlightWidth,
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
    Opening,
    OpeningsChecked,
    BottomGap,
    EndGap,
    EdgeGap,
    StairTriangle,
    RiserOpening,
    VOpening,
    LevelBarSpacing,
    GapAboveSolidPart,
    Foothold,
    ThingToClimb,
    HandrailHeight,
    HandrailSides,
    HandrailShape,
    HandrailThickness,
    HandrailPerimeter,
    HandrailClearance,
    HandrailExtension,
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
    GateHeight,
    GateGap,
    GateBottomGap,
    Paint,
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

/// Whether anybody asks for an item.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Asked {
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
    pub asked: Asked,
    /// Whether zero can be.
    pub zero_allowed: bool,
    /// Whether `none` ("looked, there is none") can be.
    pub none_allowed: bool,
}

impl Item {
    /// What a load rule looks at, in the order of asking: what decides most first.
    pub const LOAD_PATH: &[Item] = &[
        Item::PostFastening,
        Item::FastenedTo,
        Item::FramingHeldBy,
        Item::MovesWhenPushed,
        Item::PostFasteners,
        Item::PostMaterial,
        Item::PostSection,
        Item::NotchedPost,
        Item::Condition,
        Item::PostPosition,
        Item::BehindThePost,
        Item::FastenerSpacing,
        Item::FastenerDepth,
        Item::RimDepth,
        Item::FramingThickness,
        Item::DeckingThickness,
        Item::WasherSize,
        Item::WasherThickness,
        Item::ThreadInFraming,
        Item::TieLabel,
        Item::EdgeDistance,
        Item::PlateThickness,
        Item::AnchorEmbedment,
        Item::ConcreteEdge,
        Item::SocketDepth,
        Item::RailPosition,
        Item::RailEndFastening,
        Item::RailEndFasteners,
        Item::RailSection,
        Item::LowerRailSection,
        Item::PostSpacing,
        Item::Infill,
        Item::CableCount,
        Item::CableTension,
        Item::BalusterSection,
        Item::BalusterSpacing,
        Item::BalusterLength,
        Item::BalusterFixing,
        Item::LumberGrade,
        Item::WoodSpecies,
        Item::FramingSpecies,
        Item::RowsOfSlits,
        Item::WallThickness,
        Item::PostNeck,
        Item::NeckHeight,
        Item::Height,
        Item::Location,
        Item::PullTest,
    ];

    /// Every item, in the order of the table.
    pub fn all() -> impl Iterator<Item = Item> {
        table::ITEMS.iter().map(|info| info.item)
    }

    /// What the table says of it.
    #[must_use]
    pub fn info(self) -> &'static ItemInfo {
        // the table is in the order of the enum; a test holds it so
        &table::ITEMS[self as usize]
    }

    /// Its name in surveys: `bottom gap`.
    #[must_use]
    pub fn name(self) -> &'static str {
        self.info().name
    }

    /// Its name in rulesets: `bottom-gap`.
    #[must_use]
    pub fn toml_name(self) -> String {
        self.name().replace(' ', "-")
    }

    /// The item of this name or synonym; case and runs of spaces do not count.
    #[must_use]
    pub fn by_name(name: &str) -> Option<Item> {
        let exact = table::ITEMS.iter().find(|info| info.name == name);
        if let Some(info) = exact {
            return Some(info.item);
        }
        let name = folded(name);
        table::ITEMS
            .iter()
            .find(|info| info.name == name || info.synonyms.contains(&name.as_str()))
            .map(|info| info.item)
    }

    /// Every name and synonym, for suggestions.
    pub fn names() -> impl Iterator<Item = &'static str> {
        table::ITEMS
            .iter()
            .flat_map(|info| std::iter::once(info.name).chain(info.synonyms.iter().copied()))
    }

    /// Whether it says which rules apply (circumstances).
    #[must_use]
    pub fn is_circumstance(self) -> bool {
        self.info().group == Group::Circumstance
    }

    /// Whether it is about the survey itself.
    #[must_use]
    pub fn is_survey_fact(self) -> bool {
        self.info().group == Group::Survey
    }

    /// Whether it is observed at the guard itself; its row needs a guard.
    #[must_use]
    pub fn is_at_guard(self) -> bool {
        matches!(self.info().group, Group::Measured | Group::Seen)
    }

    /// Whether it is a part or a state of the guard itself, so that a reading
    /// of it says that there is one. A gate, a chair nearby, a handrail on the
    /// wall or an open riser may be there without a guard.
    #[must_use]
    pub fn is_of_the_guard(self) -> bool {
        self.is_at_guard()
            && !matches!(
                self,
                Item::DeckingThickness
                    | Item::FramingHeldBy
                    | Item::GateBottomGap
                    | Item::GateGap
                    | Item::GateHeight
                    | Item::Guard
                    | Item::HandrailClearance
                    | Item::HandrailExtension
                    | Item::HandrailHeight
                    | Item::HandrailPerimeter
                    | Item::HandrailShape
                    | Item::HandrailSides
                    | Item::HandrailThickness
                    | Item::RiserOpening
                    | Item::ThingToClimb
                    | Item::TopOfStairsGate
            )
    }

    /// The words of its list; empty for other kinds.
    #[must_use]
    pub fn words(self) -> &'static [Word] {
        if let Kind::Words(words) = self.info().kind {
            words
        } else {
            &[]
        }
    }

    /// The list's own form of a word or synonym; case and runs of spaces do not count.
    #[must_use]
    pub fn word(self, text: &str) -> Option<&'static str> {
        let words = self.words();
        if let Some(word) = words.iter().find(|word| word.name == text) {
            return Some(word.name);
        }
        let text = folded(text);
        words
            .iter()
            .find(|word| word.name == text || word.synonyms.contains(&text.as_str()))
            .map(|word| word.name)
    }
}

impl fmt::Display for Item {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.name())
    }
}
