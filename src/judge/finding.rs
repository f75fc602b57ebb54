//! What comes out of judging a guard.

use std::borrow::Cow;
use std::sync::Arc;

use crate::items::Hazard;
use crate::items::Item;
use crate::items::Verdict;
use crate::judge::Chain;
use crate::quantities::Length;
use crate::quantities::LengthUnit;
use crate::quantities::Probability;
use crate::quantities::StandardUncertainty;
use crate::quantities::YearSpan;
use crate::rules::Rule;
use crate::rules::Ruleset;
use crate::rules::Zone;

/// How a reading near a limit is decided.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Decision {
    /// `meets` or `falls short` only at least 2u away from the limit
    /// (JCGM 106:2012 and ILAC-G8:09/2019, k = 2).
    #[default]
    Guarded,
    /// The reading alone is compared with the limit.
    Simple,
}

impl Decision {
    /// The word on the command line and in reports.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Decision::Guarded => "guarded",
            Decision::Simple => "simple",
        }
    }
}

/// Whether rules from memory take part in a guard's verdict.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum MemoryRules {
    /// They only warn.
    #[default]
    Warn,
    /// The user asked for them to decide.
    Decide,
}

/// How to judge.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Options {
    /// Near a limit.
    pub decision: Decision,
    /// Rules from memory.
    pub memory: MemoryRules,
    /// The rules of the time of building.
    pub as_built: AsBuilt,
}

/// Whether a guard is judged by the rules of its time, beside those chosen.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum AsBuilt {
    /// By those chosen alone.
    #[default]
    NotAsked,
    /// By the editions that were in force when it was built as well.
    Asked,
}

/// How a guard fares by the rules that were in force when it was built.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct WhenBuilt<'r> {
    /// The worst of their findings, those from memory left out.
    pub verdict: Verdict,
    /// The ids of the rulesets that were in force then.
    pub rulesets: Vec<&'r str>,
}

/// One rule judged against one guard (for `any-opening`: against one of its items).
#[derive(Clone, Debug)]
pub struct Finding<'r> {
    /// The ruleset.
    pub ruleset: &'r Ruleset,
    /// The rule.
    pub rule: &'r Rule,
    /// The item that was judged; the first one the rule asks for where none was.
    pub item: Item,
    /// What became of it.
    pub verdict: Verdict,
    /// What the reading alone would say (the simple decision).
    pub reading_alone: Verdict,
    /// It meets where it was measured, and the rest was not looked at.
    pub partial: bool,
    /// It takes part in the guard's verdict: a rule of law, not from memory.
    pub binding: bool,
    /// The deciding value, where there is one.
    pub measured: Option<Measured>,
    /// The limit with which it was compared: the one with least to spare.
    pub limit: Option<LimitShown<'r>>,
    /// How far on the good side of the limit (below zero: short by), where both are lengths.
    pub margin: Option<Length>,
    /// How sure the value is; `None` where no doubt is counted.
    pub uncertainty: Option<StandardUncertainty>,
    /// How likely it conforms, where the value is doubtful.
    pub probability: Option<Probability>,
    /// The observations that decided: indices as
    /// [`Guard::observation`](crate::survey::Guard::observation) takes them.
    pub readings: Vec<usize>,
    /// Other observations of the same item.
    pub also_readings: Vec<usize>,
    /// Why, and what a reader should know about it.
    pub reasons: Vec<Reason<'r>>,
    /// The load path, where the rule states loads. The finding is then
    /// indicative: it can make a guard fall short, and never meet.
    pub chain: Option<Box<Chain>>,
}

impl Finding<'_> {
    /// Whether it rests on the load path, and so is no statement of strength.
    #[must_use]
    pub fn is_indicative(&self) -> bool {
        self.chain.is_some()
    }

    /// Whether it takes part in the guard's verdict and in the count of rules:
    /// an indicative one only where it falls short.
    #[must_use]
    pub fn counts(&self) -> bool {
        !self.is_indicative() || self.verdict == Verdict::FallsShort
    }

    /// Whether the guard's verdict may not rest on it as `meets`.
    #[must_use]
    pub fn counts_as(&self) -> Verdict {
        if self.partial && self.verdict == Verdict::Meets {
            Verdict::NotMeasured
        } else {
            self.verdict
        }
    }
}

/// The value that decided a finding.
#[derive(Clone, Debug, PartialEq)]
pub struct Measured {
    /// The cell as it stands.
    pub written: Arc<str>,
    /// The value that was compared, where it is a length: of a triangle its clear opening.
    pub value: Option<Length>,
    /// The unit the person wrote.
    pub unit: Option<LengthUnit>,
}

/// The limit of a finding.
#[derive(Clone, Debug, PartialEq)]
pub struct LimitShown<'r> {
    /// How the value is compared.
    pub operator: Operator,
    /// The limit as the ruleset writes it.
    pub written: Cow<'r, str>,
    /// The limit as a length, where it is one.
    pub value: Option<Length>,
    /// The unit the ruleset wrote.
    pub unit: Option<LengthUnit>,
}

impl LimitShown<'_> {
    /// In a reader's words: `at least 36 in`, `a 4 in ball must not pass`.
    #[must_use]
    pub fn says(&self) -> String {
        let written = &self.written;
        match self.operator {
            Operator::Above => format!("more than {written}"),
            Operator::AtLeast => format!("at least {written}"),
            Operator::AtMost => format!("at most {written}"),
            Operator::Below => format!("less than {written}"),
            Operator::AngleAtLeast => format!("sides that open {written} or more"),
            Operator::Entraps => format!("must not admit a {written}"),
            Operator::LadderBelow => format!("no two less than {written} apart"),
            Operator::LadderUpTo => format!("no two {written} apart or nearer"),
            Operator::Is => format!("must be {written}"),
            Operator::IsNot => format!("must not be {written}"),
            Operator::NoneWithin => format!("none within {written}"),
            Operator::NotWithin => format!("not between {written}"),
            Operator::StopsBall => format!("a {written} ball must not pass"),
        }
    }
}

/// How a value is compared with a limit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Operator {
    /// More than; equal is not enough.
    Above,
    /// An angle; equal is fine.
    AngleAtLeast,
    /// Equal is fine.
    AtLeast,
    /// Equal is fine.
    AtMost,
    /// Less than; equal is too much.
    Below,
    /// A probe of the torso must not pass where a ball of the head's size does not.
    Entraps,
    /// One of these words.
    Is,
    /// None of these words.
    IsNot,
    /// No two footholds nearer to each other than this.
    LadderBelow,
    /// No two footholds up to this from each other.
    LadderUpTo,
    /// No foothold within this zone; its ends belong to it.
    NoneWithin,
    /// Not inside this band; its ends are outside.
    NotWithin,
    /// A ball of this size must not pass; equal is a failure.
    StopsBall,
}

impl Operator {
    /// The key in a ruleset.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Operator::Above => "above",
            Operator::AngleAtLeast => "angle-at-least",
            Operator::AtLeast => "at-least",
            Operator::AtMost => "at-most",
            Operator::Below => "below",
            Operator::Entraps => "entraps",
            Operator::Is => "is",
            Operator::IsNot => "is-not",
            Operator::LadderBelow => "ladder-below",
            Operator::LadderUpTo => "ladder-up-to",
            Operator::NoneWithin => "none-within",
            Operator::NotWithin => "not-within",
            Operator::StopsBall => "stops-ball",
        }
    }
}

/// Why a finding is what it is, and what a reader should know about it.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub enum Reason<'r> {
    /// A trigger was stated and is false, so the rule does not apply.
    TriggerFalse(Item),
    /// An exception was stated and holds, so the rule does not apply.
    Excepted(Item),
    /// A circumstance that the rule depends on was not written down.
    CircumstanceMissing(Item),
    /// A trigger was measured but lies too close to its limit.
    TriggerInDoubt(Item),
    /// The item was not written down.
    NotWritten(Item),
    /// "Could not look": the observation's index.
    CouldNotLook(usize),
    /// The cell could not be read: the observation's index.
    Unreadable(usize),
    /// Nothing is written about what holds the guard, or it could not be seen.
    StrengthNotJudged,
    /// A circumstance stands outside what the ruleset covers.
    NotCovered(Item),
    /// Not covered here, and another binding ruleset covers it.
    CoveredElsewhere(Item),
    /// There is no guard, so rules about its dimensions do not apply.
    NoGuard,
    /// The opening lies outside the rule's zone.
    OutsideZone(&'r Zone),
    /// No height was written for the opening: taken to lie in this zone.
    TakenInZone(&'r Zone),
    /// It would meet the laxer zone and not this stricter one: where does it lie?
    WhereDoesItLie(&'r Zone),
    /// A bounded reading (a ball, a stick, over, under) does not settle this limit.
    BoundDoesNotSettle,
    /// The infill gives way; without a push a reading can prove only a shortfall.
    NeedsPush,
    /// The push was weaker than the rule asks, or its force is not known.
    PushTooWeak,
    /// The ball was pushed by hand, with no force stated.
    PushedByHand,
    /// Some openings only were looked at.
    OnlySomeOpenings,
    /// The lift of the rail at the step is not written down.
    LiftMissing,
    /// How thick an overhanging nosing is is not written down, and it decides.
    NosingThickness,
    /// The dimensions of the step cannot be.
    NoSuchStep,
    /// The risers are open: the opening goes on below, bounded by nothing written.
    RisersOpen,
    /// The limit lies between the two bounds of an outline's clear opening.
    BoundsStraddle,
    /// Whether the probe passes is not proven either way.
    ProbeUndecided,
    /// A gap is taken as long in the other direction, so that the probe's shorter side decides.
    TakenAsLong,
    /// How far along the guard several footholds lie is not written down.
    AlongMissing,
    /// Level bars are footholds: their heights are not written down.
    BarsHaveHeights,
    /// Two footholds make a ladder.
    Ladder {
        /// The height of the lower one.
        lower: Length,
        /// The height of the upper one.
        upper: Length,
        /// The unit it was written in.
        unit: LengthUnit,
    },
    /// An opening that narrows downward: how it holds a ball.
    Wedges {
        /// The angle between its sides, in degrees.
        degrees: String,
        /// The largest ball that sinks in wholly.
        ball: Length,
        /// How far above the point its middle stays.
        above: Length,
        /// The unit it was written in.
        unit: LengthUnit,
    },
    /// An opening whose sides do not meet is not judged by its angle.
    SidesDoNotMeet,
    /// The depth of a foothold is not written down.
    FootholdDepthMissing,
    /// Too wide for the infill but not for the triangle: is it the triangle at the steps?
    MayBeTriangle,
    /// The bottom gap on a stair is no opening of its own.
    BottomGapIsLift,
    /// The clause leaves the decision to a person.
    ForAPerson(&'r str),
    /// The ruleset was not yet, or no longer, in force when it was built.
    NotInForceWhenBuilt,
    /// A proposed guard without a build tolerance: nothing is left for the builder's error.
    NoBuildTolerance,
    /// The reading lies exactly on the limit.
    ExactlyAtLimit,
    /// A go/no-go test settled what the tape could not.
    SettledByGauge(usize),
}

/// Something taken as given, to be printed.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub enum Assumption<'r> {
    /// The readings of this item are taken as those of its worst place.
    WorstPlace(Item),
    /// A ruleset's scope that nobody stated is taken as given.
    Covered {
        /// The ruleset's id.
        ruleset: &'r str,
        /// The circumstance.
        item: Item,
    },
    /// The infill was not written down: taken as stiff.
    InfillStiff,
    /// Every opening was looked at, since nobody said otherwise.
    EveryOpening,
    /// The guard stands there, since nobody said that it is a plan.
    Existing,
    /// Asked for the rules of its time, and nobody wrote down when it was built.
    BuiltUnknown,
    /// No chosen ruleset of law states years that cover this time of building.
    NoRulesetCovers(YearSpan),
    /// A tape that nobody named is taken as this.
    Tape(&'static str),
    /// How finely readings were taken to be read: the written form and the step.
    ReadTo {
        /// The reading.
        written: String,
        /// The step, as text.
        step: String,
    },
}

/// What to find out next, asked once per item.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Question {
    /// The item to measure or to write down.
    pub item: Item,
    /// How many findings wait for it.
    pub findings: usize,
    /// Whether the load path alone waits for it.
    pub of_strength: bool,
}

/// A hazard's verdicts: by law, and by guidance. `None` where no chosen rule asks.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct HazardVerdict {
    /// Which hazard.
    pub hazard: Hazard,
    /// The worst of the findings that decide.
    pub verdict: Option<Verdict>,
    /// The worst of the findings that only advise.
    pub guidance: Option<Verdict>,
}

/// A guard with everything that was found.
#[derive(Clone, Debug)]
pub struct Judged<'r> {
    /// The guard's verdict: the worst of the findings that decide.
    pub verdict: Verdict,
    /// What the readings alone would say.
    pub reading_alone: Verdict,
    /// The worst of the guidance; `None` where none was chosen or guidance itself decides.
    pub guidance: Option<Verdict>,
    /// By the rules of the time of building; `None` where nobody asked, where
    /// the time is not known, or where no ruleset here was in force then.
    pub when_built: Option<WhenBuilt<'r>>,
    /// Whether every row of it is in error, so that nothing could be judged.
    pub could_not_judge: bool,
    /// All five hazards, in their order.
    pub hazards: [HazardVerdict; 5],
    /// The findings, in the order of the rulesets and their rules.
    pub findings: Vec<Finding<'r>>,
}
