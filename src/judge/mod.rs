//! Rule × guard → finding: three-valued conditions, how sure a reading is, the
//! decision, and the guard's verdict.
//!
//! Judging a guard is a pure function of its observations, the survey's facts
//! and the rulesets: no files, no clock, no order of calls.

mod assumptions;
mod before;
mod bound;
mod cases;
mod cautions;
mod condition;
mod dangers;
mod decides;
mod decision;
mod doubt;
mod entrapment;
pub mod examples;
mod facts;
mod finding;
mod findings;
mod foothold;
#[cfg(test)]
mod from_csv;
mod gauge;
mod guard;
mod judgement;
mod ladder;
mod leave_outs;
mod lengths;
mod lift;
mod limit_shown;
mod load_path;
mod noted;
mod opening;
mod options;
mod presence;
mod questions;
mod reason;
mod rule;
mod said;
mod scene;
mod terms;
mod told_apart;
mod told_worse;
mod unasked;
mod v_opening;
mod view;

pub use assumptions::assumptions;
pub use cautions::{CautionSaid, WrittenDown, cautions, guard_cautions};
pub use finding::{
    Agreed, Assumption, DangerSeen, Finding, HazardVerdict, Judged, LeadsTo, Measured,
    NoteOfDanger, Question, Unclear, WhenBuilt, WhyUnclear,
};
pub use guard::{Authority, judge, judge_by_findings, judge_changed};
pub use leave_outs::leave_outs;
pub use limit_shown::{LimitShown, Operator};
pub use load_path::{
    Chain, Hidden, Link, LinkCase, LinkFinding, LinkKind, LinkReason, Mend, Ruled, Step, StepName,
    Taken, Wrong,
};
pub use options::{AskedWhenBuilt, Decision, MemoryRules, Options};
pub use reason::{Bearing, Reason};
