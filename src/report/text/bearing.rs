//! Where in a guard's block a reason is said.

use crate::judge::Reason;

/// What a reason bears on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Bearing {
    /// The rule does not apply, for this cause.
    Aside(&'static str),
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

impl Bearing {
    pub(super) fn of(reason: &Reason<'_>) -> Bearing {
        match reason {
            Reason::BottomGapIsLift => Bearing::Aside("a stair's gap under the rail is its lift"),
            Reason::CoveredElsewhere(item)
            | Reason::Excepted(item)
            | Reason::TriggerFalse(item) => Bearing::Aside(item.name()),
            Reason::NoGuard => Bearing::Aside("no guard to measure"),
            Reason::OutsideZone(_) => Bearing::Aside("where the opening lies"),
            Reason::CouldNotLook(_) | Reason::NotCovered(_) | Reason::Unreadable(_) => {
                Bearing::InTheWay
            }
            Reason::CircumstanceMissing(_) | Reason::NotWritten(_) => Bearing::Missing,
            Reason::OnlySomeOpenings => Bearing::OnlySome,
            Reason::ExactlyAtLimit
            | Reason::ForAPerson(_)
            | Reason::Ladder { .. }
            | Reason::MayBeTriangle
            | Reason::NoBuildTolerance
            | Reason::NotInForceWhenBuilt
            | Reason::PushedByHand
            | Reason::SettledByGauge(_)
            | Reason::TakenAsLong
            | Reason::StrengthNotJudged
            | Reason::TakenInZone(_)
            | Reason::TriggerInDoubt(_)
            | Reason::Wedges { .. } => Bearing::Remark,
            Reason::AlongMissing
            | Reason::BarsHaveHeights
            | Reason::BoundDoesNotSettle
            | Reason::BoundsStraddle
            | Reason::FootholdDepthMissing
            | Reason::LiftMissing
            | Reason::NeedsPush
            | Reason::NoSuchStep
            | Reason::NosingThickness
            | Reason::ProbeUndecided
            | Reason::PushTooWeak
            | Reason::RisersOpen
            | Reason::SidesDoNotMeet
            | Reason::WhereDoesItLie(_) => Bearing::TooLittle,
        }
    }
}
