//! Why a finding is what it is: every reason, where a report says it, and the
//! question that would answer it. Its words stand in `report/words/`.

use crate::items::Item;
use crate::items::Kind;
use crate::quantities::Length;
use crate::quantities::LengthUnit;
use crate::rules::Zone;

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
    /// Another reading of the guard beside which this one cannot be: the observations'
    /// indices.
    Contradicts {
        /// Whose reading is doubted.
        item: Item,
        /// The doubted observation.
        index: usize,
        /// The other one.
        by: usize,
        /// What it is at least by the other one, or of a sill at most.
        bound: Length,
    },
    /// Its own note says that a reading was guessed.
    Guessed {
        /// The item.
        item: Item,
        /// The observation.
        index: usize,
        /// The word that says so.
        word: &'static str,
    },
    /// Its own note tells of a worse place, which is no reading.
    NoteTellsWorse {
        /// The item.
        item: Item,
        /// The observation.
        index: usize,
    },
    /// The ground falls away beside the edge, so that the drop may be as deep as this.
    GroundFallsAway {
        /// The observation of the drop.
        index: usize,
        /// How deep it may be within 36 in.
        deeper: Length,
    },
    /// An opening that lies higher than the top of the guard.
    NoSuchPlace {
        /// The observation.
        index: usize,
        /// The top.
        top: Length,
    },
    /// More than is ever found: a slip of the unit is likelier.
    TooLargeToBe {
        /// The item.
        item: Item,
        /// The observation.
        index: usize,
        /// The most that is usual.
        usual: Length,
    },
    /// Less than is ever found: a slip of the unit is likelier.
    TooSmallToBe {
        /// The item.
        item: Item,
        /// The observation.
        index: usize,
        /// The least that is usual.
        usual: Length,
    },
    /// A trigger was measured but lies too close to its limit.
    TriggerInDoubt(Item),
    /// Another reading of the same place cannot be true beside this one.
    Contradicted,
    /// It cannot be seen: the observation's index.
    Hidden(usize),
    /// The rule is known only from memory, and is not met.
    OnlyFromMemory,
    /// An exception that is known only from memory would lift the rule.
    LiftedFromMemory,
    /// A baluster or panel is missing, so the widest opening was not measured:
    /// the observation's index.
    InfillMissing(usize),
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
    /// One height was written for an opening that may reach into this zone: how far?
    ReachNotWritten(&'r Zone),
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
    /// It is written twice, as the lift of the triangle and as the bottom gap, and differs.
    LiftsDiffer,
    /// How thick an overhanging nosing is is not written down, and it decides.
    NosingThickness,
    /// The dimensions of the step cannot be.
    NoSuchStep,
    /// The rise of a step is more than its going: they are most likely written the other way round.
    StepTurned,
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
    /// It says that there is no gap, and bars that stand apart have gaps.
    BarsHaveGaps,
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

/// What a reason bears on, and so where in a guard's block it is said.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Bearing {
    /// The rule does not apply.
    Aside,
    /// Nobody can measure it now: could not look, not understood, not covered.
    InTheWay,
    /// Something is not written down; the questions ask for it.
    Missing,
    /// Some openings only.
    OnlySome,
    /// Worth knowing beside a finding.
    Remark,
    /// A reading is there and does not say enough.
    TooLittle,
}

/// What would answer a reason.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Asks {
    /// Nothing that a person could write down.
    Nothing,
    /// This item.
    For(Item),
    /// Another reading of the item that was judged.
    Again,
    /// A ball or a stick, tried at the item that was judged.
    Gauge,
}

impl Reason<'_> {
    /// What it bears on.
    #[must_use]
    pub fn bearing(&self) -> Bearing {
        self.row().0
    }

    /// The item that would answer it, if a person can find it out.
    pub(super) fn asks_for(&self, judged: Item) -> Option<Item> {
        match self.row().1 {
            Asks::Nothing => None,
            Asks::For(item) => (!matches!(item.info().kind, Kind::Text)).then_some(item),
            Asks::Again | Asks::Gauge => Some(judged),
        }
    }

    /// The item whose reading is there and is doubted, be it judged or a circumstance.
    #[must_use]
    pub fn doubts(&self) -> Option<Item> {
        if let Reason::Contradicts { item, .. }
        | Reason::Guessed { item, .. }
        | Reason::NoteTellsWorse { item, .. }
        | Reason::TooLargeToBe { item, .. }
        | Reason::TooSmallToBe { item, .. } = self
        {
            Some(*item)
        } else {
            matches!(self, Reason::GroundFallsAway { .. }).then_some(Item::Drop)
        }
    }

    /// The observation that it speaks of, where it does.
    pub(super) fn observation(&self) -> Option<usize> {
        if let Reason::Contradicts { index, .. }
        | Reason::CouldNotLook(index)
        | Reason::GroundFallsAway { index, .. }
        | Reason::Guessed { index, .. }
        | Reason::NoteTellsWorse { index, .. }
        | Reason::NoSuchPlace { index, .. }
        | Reason::TooLargeToBe { index, .. }
        | Reason::TooSmallToBe { index, .. }
        | Reason::Hidden(index)
        | Reason::InfillMissing(index)
        | Reason::SettledByGauge(index)
        | Reason::Unreadable(index) = self
        {
            Some(*index)
        } else {
            None
        }
    }

    /// Whether a rule is off for a reason that its text gives: an exception, or a
    /// trigger that was measured. That no rule speaks of a place or a use is silence,
    /// and nobody read that nothing is asked there.
    pub(super) fn lets_no_guard_be_asked_for(&self) -> bool {
        let by_number = |item: Item| {
            let kind = item.info().kind;
            matches!(kind, Kind::Ages | Kind::Count | Kind::Length | Kind::Years)
                && item != Item::DwellingsInBuilding
        };
        matches!(self, Reason::Excepted(_))
            || matches!(self, Reason::TriggerFalse(item) if by_number(*item))
    }

    /// Whether a ball or a stick would answer it.
    #[must_use]
    pub fn wants_a_gauge(&self) -> bool {
        self.row().1 == Asks::Gauge
    }

    /// The table: a row for each reason.
    fn row(&self) -> (Bearing, Asks) {
        match self {
            Reason::AlongMissing => (Bearing::TooLittle, Asks::Again),
            Reason::BarsHaveHeights => (Bearing::TooLittle, Asks::Again),
            Reason::BottomGapIsLift => (Bearing::Aside, Asks::Nothing),
            Reason::BoundDoesNotSettle => (Bearing::TooLittle, Asks::Gauge),
            Reason::BoundsStraddle => (Bearing::TooLittle, Asks::Again),
            Reason::CircumstanceMissing(item) => (Bearing::Missing, Asks::For(*item)),
            Reason::Contradicted => (Bearing::Remark, Asks::Again),
            Reason::Contradicts { item, .. }
            | Reason::Guessed { item, .. }
            | Reason::NoteTellsWorse { item, .. }
            | Reason::TooLargeToBe { item, .. }
            | Reason::TooSmallToBe { item, .. } => (Bearing::TooLittle, Asks::For(*item)),
            Reason::CouldNotLook(_) => (Bearing::InTheWay, Asks::Nothing),
            Reason::CoveredElsewhere(_) => (Bearing::Aside, Asks::Nothing),
            Reason::ExactlyAtLimit => (Bearing::Remark, Asks::Nothing),
            Reason::Excepted(_) => (Bearing::Aside, Asks::Nothing),
            Reason::FootholdDepthMissing | Reason::BarsHaveGaps => {
                (Bearing::TooLittle, Asks::Again)
            }
            Reason::ForAPerson(_) => (Bearing::Remark, Asks::Nothing),
            Reason::GroundFallsAway { .. } => (Bearing::TooLittle, Asks::For(Item::Drop)),
            Reason::Hidden(_) => (Bearing::InTheWay, Asks::Nothing),
            Reason::InfillMissing(_) => (Bearing::TooLittle, Asks::Again),
            Reason::Ladder { .. } => (Bearing::Remark, Asks::Nothing),
            Reason::LiftMissing => (Bearing::TooLittle, Asks::Again),
            Reason::LiftsDiffer => (Bearing::TooLittle, Asks::Again),
            Reason::LiftedFromMemory => (Bearing::Remark, Asks::Nothing),
            Reason::MayBeTriangle => (Bearing::Remark, Asks::Nothing),
            Reason::NeedsPush => (Bearing::TooLittle, Asks::Gauge),
            Reason::NoBuildTolerance => (Bearing::Remark, Asks::Nothing),
            Reason::NoGuard => (Bearing::Aside, Asks::Nothing),
            Reason::NoSuchPlace { .. } => (Bearing::TooLittle, Asks::Again),
            Reason::NoSuchStep | Reason::StepTurned => (Bearing::TooLittle, Asks::Again),
            Reason::NosingThickness => (Bearing::TooLittle, Asks::Again),
            Reason::NotCovered(_) => (Bearing::InTheWay, Asks::Nothing),
            Reason::NotInForceWhenBuilt => (Bearing::Remark, Asks::Nothing),
            Reason::NotWritten(item) => (Bearing::Missing, Asks::For(*item)),
            Reason::OnlyFromMemory => (Bearing::Remark, Asks::Nothing),
            Reason::OnlySomeOpenings => (Bearing::OnlySome, Asks::For(Item::OpeningsChecked)),
            Reason::OutsideZone(_) => (Bearing::Aside, Asks::Again),
            Reason::ProbeUndecided => (Bearing::TooLittle, Asks::Again),
            Reason::PushTooWeak => (Bearing::TooLittle, Asks::Again),
            Reason::PushedByHand => (Bearing::Remark, Asks::Nothing),
            Reason::ReachNotWritten(_) => (Bearing::TooLittle, Asks::Again),
            Reason::RisersOpen => (Bearing::TooLittle, Asks::Again),
            Reason::SettledByGauge(_) => (Bearing::Remark, Asks::Nothing),
            Reason::SidesDoNotMeet => (Bearing::TooLittle, Asks::Again),
            Reason::StrengthNotJudged => (Bearing::Remark, Asks::Nothing),
            Reason::TakenAsLong => (Bearing::Remark, Asks::Nothing),
            Reason::TakenInZone(_) => (Bearing::Remark, Asks::Nothing),
            Reason::TriggerFalse(_) => (Bearing::Aside, Asks::Nothing),
            Reason::TriggerInDoubt(_) => (Bearing::Remark, Asks::Nothing),
            Reason::Unreadable(_) => (Bearing::InTheWay, Asks::Nothing),
            Reason::Wedges { .. } => (Bearing::Remark, Asks::Nothing),
            Reason::WhereDoesItLie(_) => (Bearing::TooLittle, Asks::Again),
        }
    }
}
