//! What a rule checks, as a ruleset states it: limits and demands on readings, openings,
//! footholds, slopes and loads.

use crate::items::Item;
use crate::quantities::Force;
use crate::quantities::Length;
use crate::quantities::LengthUnit;
use crate::quantities::LineLoad;
use crate::quantities::Pressure;
use crate::reading::Tilt;

/// Up to four bounds of one value; all that are there must hold.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Bounds<T> {
    /// `at-least`: equal is fine.
    pub at_least: Option<T>,
    /// `at-most`: equal is fine.
    pub at_most: Option<T>,
    /// `above`: equal is not.
    pub above: Option<T>,
    /// `below`: equal is not.
    pub below: Option<T>,
}

impl<T> Default for Bounds<T> {
    fn default() -> Bounds<T> {
        Bounds {
            at_least: None,
            at_most: None,
            above: None,
            below: None,
        }
    }
}

/// A length that a ruleset states, with its text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Limit {
    /// The exact length.
    pub length: Length,
    /// The unit it is written in.
    pub unit: LengthUnit,
    /// As the file writes it.
    pub written: String,
}

/// What a check looks at.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Subject {
    /// One item.
    Item(Item),
    /// `opening`, `bottom gap` and `end gap` alike, a finding for each.
    AnyOpening,
    /// What holds the guard up, from the infill to the framing.
    LoadPath,
}

/// One thing that a rule asks.
#[derive(Clone, Debug, PartialEq)]
pub struct Check {
    /// What it looks at.
    pub subject: Subject,
    /// What it asks of it.
    pub demand: Demand,
}

/// What is asked of an item.
#[derive(Clone, Debug, PartialEq)]
pub enum Demand {
    /// Of a count.
    Count(Bounds<u32>),
    /// Of footholds.
    Foothold(FootholdDemand),
    /// Of a length.
    Length(Bounds<Limit>),
    /// Of what holds the guard up.
    Load(LoadDemand),
    /// Of an opening.
    Opening(OpeningDemand),
    /// Of an opening that narrows downward: its sides open at least this far.
    VOpening(SlopeLimit),
    /// Of words: one of `is` if there are any, none of `is_not`.
    Words {
        /// Words that are fine.
        is: Vec<&'static str>,
        /// Words that are not.
        is_not: Vec<&'static str>,
    },
}

/// What a guard must stand up to. Its loads are separate cases and never added.
#[derive(Clone, Debug, PartialEq)]
pub struct LoadDemand {
    /// A force at the worst point along the top.
    pub concentrated: Option<Stated<Force>>,
    /// A load along the top, level.
    pub line: Option<Stated<LineLoad>>,
    /// A load along the top, straight down.
    pub line_down: Option<Stated<LineLoad>>,
    /// A force on the infill.
    pub infill: Option<Patch>,
    /// A pressure on all of the infill.
    pub infill_pressure: Option<Stated<Pressure>>,
    /// Which way the loads along the top act.
    pub direction: Direction,
    /// Which capacities they may be compared with.
    pub basis: LoadBasis,
}

/// A quantity that a ruleset states, with its text.
#[derive(Clone, Debug, PartialEq)]
pub struct Stated<T> {
    /// The quantity.
    pub value: T,
    /// As the file writes it.
    pub written: String,
}

/// A force on a part of the infill.
#[derive(Clone, Debug, PartialEq)]
pub struct Patch {
    /// The force; its text is that of the whole load.
    pub force: Stated<Force>,
    /// The side of the square it is spread over; `None` for a point.
    pub over: Option<Limit>,
}

/// Which way a load along the top acts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Direction {
    /// Every way, so that inward, outward and downward are separate cases.
    Any,
    /// Level, outward or inward.
    Level,
    /// Outward or downward.
    OutwardOrDown,
}

impl Direction {
    /// All of them.
    pub const ALL: [Direction; 3] = [Direction::Any, Direction::Level, Direction::OutwardOrDown];

    /// In words for a reader.
    #[must_use]
    pub const fn says(self) -> &'static str {
        match self {
            Direction::Any => "in any direction",
            Direction::Level => "inward and outward",
            Direction::OutwardOrDown => "outward and downward",
        }
    }

    /// The word in rulesets.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Direction::Any => "any",
            Direction::Level => "level",
            Direction::OutwardOrDown => "outward or down",
        }
    }
}

/// The design philosophy of a load: which capacities it may be compared with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LoadBasis {
    /// A service load, for allowable stresses.
    Allowable,
    /// A characteristic or specified load, for limit states with partial factors.
    Characteristic,
}

impl LoadBasis {
    /// All of them.
    pub const ALL: [LoadBasis; 2] = [LoadBasis::Allowable, LoadBasis::Characteristic];

    /// The word in rulesets.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            LoadBasis::Allowable => "allowable",
            LoadBasis::Characteristic => "characteristic",
        }
    }
}

/// A part of a guard whose moment an example of a load rule states.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Member {
    /// One baluster, at midspan.
    Infill,
    /// A post, at the fastener that resists.
    Post,
    /// The top rail between two posts, at midspan, pressed down.
    Rail,
}

impl Member {
    /// All of them.
    pub const ALL: [Member; 3] = [Member::Infill, Member::Post, Member::Rail];

    /// The word in rulesets.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Member::Infill => "infill",
            Member::Post => "post",
            Member::Rail => "rail",
        }
    }
}

impl Check {
    /// The items that it looks at, the first the one that a finding names.
    #[must_use]
    pub fn items(&self) -> &'static [Item] {
        self.subject.looks_at()
    }
}

impl Subject {
    /// The items that it looks at where they are written, those that nobody
    /// asks for too.
    #[must_use]
    pub fn looks_at(self) -> &'static [Item] {
        match self {
            Subject::AnyOpening => Item::ANY_OPENING,
            // one item as a slice of the table of all of them
            Subject::Item(item) => std::slice::from_ref(&item.info().item),
            Subject::LoadPath => Item::LOAD_PATH,
        }
    }
}

/// What is asked of an opening: every bound that is there must hold.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct OpeningDemand {
    /// A ball of this size must not pass: equal is a failure.
    pub stops_ball: Option<Limit>,
    /// Equal is fine.
    pub at_most: Option<Limit>,
    /// For gaps that must be wide enough: equal is fine.
    pub at_least: Option<Limit>,
    /// A forbidden band: above the first and below the second is a failure.
    pub not_within: Option<(Limit, Limit)>,
    /// A body must not pass where the head behind it does not.
    pub entraps: Option<Box<Entraps>>,
    /// Only openings that lie here.
    pub zone: Option<Zone>,
    /// The push with which a ball is to be tried, where the rule states one.
    pub pushed: Option<Force>,
}

/// What holds a head: an opening that admits a probe of the torso and stops a ball
/// of the head's size.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Entraps {
    /// The probe's shorter side; a probe that just fits is admitted.
    pub short: Limit,
    /// The probe's longer side.
    pub long: Limit,
    /// The head: a ball of exactly the clear opening passes.
    pub head: Limit,
    /// The probe as the file writes it.
    pub written: String,
}

/// A band of heights above the walking surface, both ends included.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Zone {
    /// Its lower end.
    pub from: Limit,
    /// Its upper end.
    pub to: Limit,
}

/// What is asked of footholds: none within the zone that counts as one, and none
/// that together make a ladder.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct FootholdDemand {
    /// Where none may be; without it a single one is fine, and only a ladder counts.
    pub none_within: Option<Zone>,
    /// Only what is deeper than this counts; without it, everything does.
    pub deeper_than: Option<Limit>,
    /// Only what slopes no more than this counts; without it, everything does.
    pub no_steeper_than: Option<SlopeLimit>,
    /// How near to each other two of them make a ladder. With a zone, several in it
    /// that are all farther from each other, upwards and along the guard, are fine.
    pub ladder: Option<Ladder>,
}

/// A slope that a ruleset states, with its text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SlopeLimit {
    /// The slope.
    pub tilt: Tilt,
    /// As the file writes it.
    pub written: String,
}

/// How near to each other two footholds make a ladder.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Ladder {
    /// `ladder-below`: nearer than this; equal is fine.
    Below(Limit),
    /// `ladder-up-to`: up to this; equal is a ladder.
    UpTo(Limit),
}

impl Ladder {
    /// The distance it states.
    #[must_use]
    pub const fn limit(&self) -> &Limit {
        match self {
            Ladder::Below(limit) | Ladder::UpTo(limit) => limit,
        }
    }

    /// The distance it states, to change it.
    pub const fn limit_mut(&mut self) -> &mut Limit {
        match self {
            Ladder::Below(limit) | Ladder::UpTo(limit) => limit,
        }
    }
}
