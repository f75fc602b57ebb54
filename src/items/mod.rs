//! The one table of what can be observed: items, their words, what they mean
//! and how to measure them; and the words for hazards and verdicts.
//!
//! Surveys, rules, error suggestions, `guardrule items` and the reports all
//! read this table. Nothing here judges.

mod circumstances;
mod counted;
mod danger;
mod drawing;
mod drawings;
mod gates;
mod handrails;
mod hazard;
mod item;
mod item_word;
mod joints;
mod load_path;
mod lookup;
mod marks;
mod measured;
mod near_misses;
mod noted;
mod openings;
mod row;
mod seen;
mod set;
mod survey_facts;
mod table;
mod verdict;
mod word;
mod words;

pub use danger::{Danger, DangerCounts};
pub use drawing::{Drawing, Pictured};
pub use hazard::Hazard;
pub use item::{
    AskedWhen, Change, Group, Holds, Hole, Item, ItemInfo, ItemPlace, Kind, MeasuredBetween, Part,
    Role, Worst,
};
pub use item_word::ItemWord;
pub use marks::{At, COLUMN, DimensionEnds, DrawingScene, Mark, ROW};
pub use near_misses::NearMiss;
pub use noted::{DangerTold, dangers_told, guess_told};
pub use set::ItemSet;
pub use verdict::Verdict;
pub use word::Word;
pub use words::{
    BalusterFixingWord, BehindThePostWord, BottomOfStairsGateWord, ConditionWord, DefaultUnitWord,
    FastenedToWord, FixedSeatWord, FlightShapeWord, FramingHeldByWord, GateClosesItselfWord,
    GateOpensWord, GuardWord, HandrailContinuousWord, HandrailEndsWord, HandrailShapeWord,
    HandrailSidesWord, HandrailWord, InfillLooseWord, InfillWord, LevelMembersOnWord, LocationWord,
    LumberGradeWord, MovesWhenPushedWord, NotchedPostWord, OpeningsCheckedWord, OwnWayOutWord,
    PaintWord, PlaceWord, PostFasteningWord, PostMaterialWord, PostPositionWord,
    RailEndFasteningWord, RailPositionWord, RampEdgeWord, ReplacedWindowWord, RowsOfSlitsWord,
    SharedWord, StateWord, TapeWord, TopOfStairsGateWord, UseWord, WindowStopWord, WoodSpeciesWord,
};
