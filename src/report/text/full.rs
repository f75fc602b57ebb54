//! Everything of a guard: each finding with its rule, its clause, its source and
//! why; what holds the guard up; the sums. For `--full` and `--explain`.

use crate::judge::Finding;
use crate::quantities::Length;
use crate::report::JudgedGuard;
use crate::report::ReportBasis;
use crate::report::advice;
use crate::report::explain;
use crate::report::matters::AskedBy;
use crate::report::one_line;
use crate::report::palette;
use crate::report::reader;
use crate::report::text::strength;
use crate::report::words;
use crate::report::wrap::Lines;

/// Every finding and the load path.
pub(super) fn everything(lines: &mut Lines, entry: &JudgedGuard<'_>, basis: &ReportBasis<'_>) {
    lines.push(format!("  {}", palette::heading("Every finding")));
    for finding in &entry.judged.findings {
        of_finding(lines, finding, entry, basis);
    }
    strength::section(lines, entry);
    let taken: Vec<String> = basis.taken(entry).iter().map(words::assumption).collect();
    if !taken.is_empty() {
        lines.hanging("  ", &format!("Taken as given: {}.", taken.join("; ")));
    }
}

/// The sums of every finding.
pub(super) fn sums(lines: &mut Lines, entry: &JudgedGuard<'_>, basis: &ReportBasis<'_>) {
    lines.push(format!("  {}", palette::heading("The sums")));
    for finding in &entry.judged.findings {
        explain::arithmetic(lines, finding, &entry.guard, basis);
    }
}

fn of_finding(
    lines: &mut Lines,
    finding: &Finding<'_>,
    entry: &JudgedGuard<'_>,
    basis: &ReportBasis<'_>,
) {
    let mut head = format!("{}: {}", finding.item, finding.verdict);
    if let Some(measured) = &finding.measured {
        head.push_str(&format!("; {}", one_line(&measured.written)));
    }
    if finding.limit.is_some() {
        head.push_str(&format!("; asked: {}", reader::asked(finding)));
    }
    if let Some(margin) = finding.margin {
        let amount = advice::amount(finding, margin);
        let side = if margin < Length::ZERO {
            "missed by"
        } else {
            "to spare:"
        };
        head.push_str(&format!("; {side} {amount}"));
    }
    lines.hanging("  - ", &format!("{head}."));
    let rule = finding.rule;
    let mark = reader::mark(rule.status).unwrap_or("read in the text");
    let source = format!(
        "{}: {} {}, {} ({}), {mark}; {}.",
        AskedBy::of(finding, basis).name(),
        one_line(&finding.ruleset.id),
        one_line(&rule.id),
        one_line(&rule.clause),
        one_line(&rule.source.title),
        rule.hazard,
    );
    lines.hanging("    ", &source);
    lines.hanging("    ", &one_line(&rule.says));
    for reason in &finding.reasons {
        let text = reader::capital(&words::reason(reason, &entry.guard));
        lines.hanging("    ", &format!("{}.", text.trim_end_matches('.')));
    }
}
