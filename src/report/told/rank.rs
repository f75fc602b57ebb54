//! Which guard is worse.

use std::cmp::Reverse;

use crate::items::GuardWord;
use crate::items::Verdict;
use crate::judge::Finding;
use crate::report::JudgedGuard;
use crate::report::matters::says;
use crate::report::matters::share_short;
use crate::rules::Status;
use crate::rules::Urgency;

/// The place of a guard in the report: the least comes first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(in crate::report) struct Rank {
    class: RankClass,
    /// The largest shortfall for its limit, in millionths of it.
    shortfall: Reverse<i128>,
    /// The order of first appearance.
    order: usize,
}

/// In the order of the report.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum RankClass {
    NoGuard,
    Danger,
    Urgent,
    FallsShort,
    PerhapsNoGuard,
    TooClose,
    NotSettled,
    NotMeasured,
    GuidanceFallsShort,
    Meets,
    DoesNotApply,
}

impl Rank {
    pub(in crate::report) fn of(entry: &JudgedGuard<'_>, order: usize) -> Rank {
        Rank {
            class: class(entry),
            shortfall: Reverse(largest_shortfall(entry)),
            order,
        }
    }
}

fn class(entry: &JudgedGuard<'_>) -> RankClass {
    let verdict = entry.judged.verdict;
    let none = says(&entry.guard, GuardWord::None);
    let guidance = entry.judged.guidance;
    if none && [Some(verdict), guidance].contains(&Some(Verdict::FallsShort)) {
        return RankClass::NoGuard;
    }
    if !entry.judged.dangers.is_empty() {
        return RankClass::Danger;
    }
    if entry.judged.findings.iter().any(is_urgent) {
        return RankClass::Urgent;
    }
    match verdict {
        Verdict::FallsShort => RankClass::FallsShort,
        Verdict::TooClose | Verdict::NotSettled | Verdict::NotMeasured if none => {
            RankClass::PerhapsNoGuard
        }
        Verdict::TooClose => RankClass::TooClose,
        Verdict::NotSettled => RankClass::NotSettled,
        Verdict::NotMeasured => RankClass::NotMeasured,
        Verdict::Meets | Verdict::DoesNotApply if guidance == Some(Verdict::FallsShort) => {
            RankClass::GuidanceFallsShort
        }
        Verdict::Meets => RankClass::Meets,
        Verdict::DoesNotApply => RankClass::DoesNotApply,
    }
}

/// A fault to act on tonight; what only memory says does not lead the report.
fn is_urgent(finding: &Finding<'_>) -> bool {
    finding.verdict == Verdict::FallsShort
        && finding.rule.urgency == Urgency::Now
        && (finding.binding || finding.rule.status != Status::Memory)
}

/// Where the guard falls short, of what decides; else of guidance.
fn largest_shortfall(entry: &JudgedGuard<'_>) -> i128 {
    let decides = entry.judged.verdict == Verdict::FallsShort;
    let short = |finding: &&Finding<'_>| {
        finding.verdict == Verdict::FallsShort && (finding.binding || !decides)
    };
    let findings = entry.judged.findings.iter().filter(short);
    findings.filter_map(share_short).max().unwrap_or(0)
}
