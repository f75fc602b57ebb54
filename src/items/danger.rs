//! What is seen at a guard and comes before every rule.

use crate::items::Hazard;

/// Something seen that comes before every rule, as a column of the words of an item.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Danger {
    /// What may happen.
    pub hazard: Hazard,
    /// What to do about it tonight, as it is called out: `KEEP EVERYBODY OFF IT`.
    pub act: &'static str,
    /// What was seen, in one sentence without its full stop.
    pub says: &'static str,
    /// Where it is one.
    pub counts: DangerCounts,
}

/// Where something seen is a danger.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DangerCounts {
    /// Wherever it is seen.
    Always,
    /// Over a drop that nobody wrote, or that is above the trigger of a chosen rule:
    /// lower down it is advice.
    OverADrop,
    /// Only over a drop that a deciding ruleset protects.
    OverAProtectedDrop,
}

const fn danger(hazard: Hazard, act: &'static str, says: &'static str) -> Danger {
    Danger {
        hazard,
        act,
        says,
        counts: DangerCounts::Always,
    }
}

const OFF: &str = "KEEP EVERYBODY OFF IT";

pub(super) const MOVES_A_LOT: Danger =
    danger(Hazard::GiveWay, OFF, "it moves a lot when pushed gently");

pub(super) const POSTS_NOT_FASTENED: Danger =
    danger(Hazard::GiveWay, OFF, "what should hold a post is missing");

pub(super) const ROT: Danger = danger(
    Hazard::GiveWay,
    OFF,
    "there is rot in it, and nobody should lean on it until somebody has looked",
);

pub(super) const DEEP_RUST: Danger = danger(
    Hazard::GiveWay,
    OFF,
    "rust has eaten into it, and nobody should lean on it until somebody has looked",
);

pub(super) const CRACKS: Danger = danger(
    Hazard::GiveWay,
    OFF,
    "there are cracks in it, and nobody should lean on it until somebody has looked",
);

pub(super) const BROKEN_GLASS: Danger = danger(Hazard::FallThrough, OFF, "its glass is broken");

pub(super) const MISSING_INFILL: Danger = Danger {
    counts: DangerCounts::OverADrop,
    ..danger(
        Hazard::FallThrough,
        "CLOSE THE HOLE",
        "a baluster or a panel is missing",
    )
};

pub(super) const STOP_COMES_UNDONE: Danger = Danger {
    counts: DangerCounts::OverADrop,
    ..danger(
        Hazard::FallOver,
        "KEEP CHILDREN FROM THE WINDOW",
        "the stop that should hold it comes undone, so that it opens wide",
    )
};

pub(super) const NO_RAILING: Danger = Danger {
    counts: DangerCounts::OverAProtectedDrop,
    ..danger(
        Hazard::FallOver,
        "NO RAILING",
        "there is no railing at this edge",
    )
};
