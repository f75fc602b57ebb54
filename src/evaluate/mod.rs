//! Rule × guard → finding: three-valued conditions, how sure a reading is, the
//! decision, and the guard's verdict.
//!
//! Judging a guard is a pure function of its observations, the survey's facts
//! and the rulesets: no files, no clock, no order of calls.

mod finding;

pub use finding::{
    Assumption, Decision, Finding, HazardVerdict, Judged, LimitShown, Measured, MemoryRules,
    Operator, Options, Question, Reason,
};
