//! What would put a guard right, worked out in numbers and proved by judging the changed
//! guard with the same rules.
//!
//! A remedy is a change of readings: what is built anew is written as drawn, with what the
//! builder may be off; what stays keeps its reading and the tape's doubt. Every change is
//! judged against all chosen rules with all circumstances; one that makes anything short
//! or unmeasured that was not is refused, and why is kept. Nothing here lowers a guard,
//! adds a rung, or is fastened to a guard that moves.
//!
//! What a remedy says stands where it is worked out, and what is said of its kind in the
//! one table of kinds. Nothing here knows a form of report.

mod aim;
mod below;
mod bench;
mod bridges;
mod cables;
mod change;
mod cost;
mod demands;
mod drawn;
mod ends;
mod faces;
mod footholds;
mod gaps;
mod handrails;
mod height;
mod holding;
mod kind;
mod mends;
mod offered;
mod openings;
mod plan;
mod planned;
mod proof;
mod quantity;
mod shortfall;
mod stairs;
mod tonight;
mod tonight_words;
mod topics;
mod windows;

pub use aim::Measuring;
pub use change::{GuardChange, NewReading, changed};
pub use kind::{
    FirmOnly, HowLong, MakesHoles, Needed, REMEDIES, RemedyCaution, RemedyKind, RemedyRow, WhoDoes,
};
pub use mends::{mended, mends_of, unseen_foot};
pub use offered::{Bay, Offered, WaitsFor};
pub use plan::{best_steps, plan};
pub use planned::{
    BestSteps, Lesser, PlanDepth, Planned, PlannedWay, RemedyPlan, StillOpen, Unsolved,
};
pub use proof::{Broken, RefusedRemedy, RuleKey, is_met};
pub use quantity::{HowMany, Labour, LabourPer, MaterialPart, PaintedArea, Stock};
pub use shortfall::{HowSoon, SHORTFALLS, ShortfallKind, ShortfallRow};
pub use tonight_words::{KEEP_FROM_GAPS, TONIGHT, TonightWords, tonight_words};
pub use topics::{ShortTopic, is_high_outdoors, topics};
