//! What holds a guard up, as a short table.

use crate::items::Verdict;
use crate::judge::Chain;
use crate::judge::Finding;
use crate::judge::Link;
use crate::report::JudgedGuard;
use crate::report::one_line;
use crate::report::palette;
use crate::report::strength;
use crate::report::wrap::hanging;
use crate::statics::AnyQuantity;
use crate::statics::Units;

/// How wide the columns of the table are.
const LINK: usize = 22;
const LOAD: usize = 17;
const TAKES: usize = 18;
const SO: usize = 19;

/// How much of a load path is shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Shown {
    /// The table of every link, with what was taken as given.
    Everything,
    /// At most six lines.
    WhatMatters,
}

/// Lines that a guard's load path takes where nobody asked for all of it.
const MOST_LINES: usize = 6;

/// The weakest link, what is seen wrong, what a tradesman would do, what to look at
/// next: one paragraph, and what no longer fits is left to the table.
fn in_short(lines: &mut Vec<String>, chain: &Chain) {
    let title = "What holds it up: indicative, a licensed engineer decides (more: --full)";
    let sentences = [
        strength::ruled_out(chain),
        strength::weakest(chain),
        strength::mends(chain),
        strength::seen_wrong(chain),
        strength::look_at_next(chain),
    ];
    let mut told = String::new();
    for sentence in sentences.into_iter().flatten() {
        let longer = if told.is_empty() {
            sentence
        } else {
            format!("{told} {sentence}")
        };
        if hanging("    ", &longer).lines().count() < MOST_LINES {
            told = longer;
        }
    }
    lines.push(String::new());
    lines.push(format!("  {}", palette::heading(title)));
    if !told.is_empty() {
        lines.push(hanging("    ", &told));
    }
}

/// The load paths of a guard; one short line where nothing is known of what holds it.
pub(super) fn section(lines: &mut Vec<String>, entry: &JudgedGuard<'_>, shown: Shown) {
    let mut silent = false;
    let mut told = false;
    for finding in &entry.judged.findings {
        let applies = finding.verdict != Verdict::DoesNotApply;
        let Some(chain) = finding.chain.as_deref().filter(|_| applies) else {
            continue;
        };
        if chain.written {
            match shown {
                Shown::Everything => of_rule(lines, finding, chain),
                Shown::WhatMatters => in_short(lines, chain),
            }
            told = true;
        } else {
            silent = true;
        }
    }
    if silent && !told {
        lines.push(String::new());
        let text = "Strength not judged: nothing known about what holds the posts; how to look: guardrule items post-fastening.";
        lines.push(hanging("  ", text));
    }
}

fn of_rule(lines: &mut Vec<String>, finding: &Finding<'_>, chain: &Chain) {
    lines.push(String::new());
    lines.push(format!(
        "  {}",
        palette::heading("What holds it up (indicative: a licensed engineer decides)")
    ));
    let loads = format!(
        "Loads: {}, by {} ({}).",
        strength::loads(finding),
        one_line(&finding.ruleset.id),
        one_line(&finding.rule.clause)
    );
    lines.push(hanging("    ", &loads));
    lines.push(String::new());
    lines.extend(row(["Link", "Load on it", "It can take", "So"]));
    for link in &chain.links {
        let demand = link
            .demand
            .map(|demand| strength::range(demand, chain.units));
        let capacity = link
            .capacity
            .map(|capacity| strength::range(capacity, chain.units));
        let cells = [
            &strength::name(link),
            demand.as_deref().unwrap_or("-"),
            capacity.as_deref().unwrap_or("-"),
            strength::verdict(link),
        ];
        lines.extend(row(cells));
    }
    let moment = |link: &Link| matches!(link.demand.map(|d| d.high), Some(AnyQuantity::Moment(_)));
    if chain.links.iter().any(moment) {
        let says = match chain.units {
            Units::Customary => "lb·in: pounds times the inches of its lever.",
            Units::Metric => "N·m: newtons times the metres of its lever.",
        };
        lines.push(hanging("    ", says));
    }
    lines.push(String::new());
    let sentences = [
        strength::ruled_out(chain),
        strength::weakest(chain),
        strength::may_be_weaker(chain),
        strength::seen_wrong(chain),
        strength::mends(chain),
    ];
    lines.extend(sentences.iter().flatten().map(|says| hanging("    ", says)));
    for link in &chain.links {
        lines.extend(remark(link));
    }
    if let Some(taken) = strength::taken(chain) {
        lines.push(hanging("    ", &taken));
    }
}

/// Why a link has no number and what to look at next.
fn remark(link: &Link) -> Option<String> {
    let parts: Vec<String> = [strength::why(link), strength::next(link)]
        .into_iter()
        .flatten()
        .collect();
    if parts.is_empty() {
        return None;
    }
    let text = format!("{}: {}.", strength::name(link), parts.join("; "));
    Some(hanging("    - ", &text))
}

/// A row of the table; long cells run on below.
fn row(cells: [&str; 4]) -> Vec<String> {
    let columns = [
        (cells[0], LINK),
        (cells[1], LOAD),
        (cells[2], TAKES),
        (cells[3], SO),
    ];
    let wrapped: Vec<Vec<String>> = columns
        .iter()
        .map(|(text, width)| {
            let lines = textwrap::wrap(text, width - 1);
            lines.into_iter().map(|line| line.into_owned()).collect()
        })
        .collect();
    let height = wrapped.iter().map(Vec::len).max().unwrap_or(0);
    (0..height)
        .map(|at| {
            let mut line = "    ".to_owned();
            for (cell, (_, width)) in wrapped.iter().zip(columns) {
                let part = cell.get(at).map_or("", String::as_str);
                let pad = width.saturating_sub(textwrap::core::display_width(part));
                line.push_str(part);
                line.push_str(&" ".repeat(pad));
            }
            line.trim_end().to_owned()
        })
        .collect()
}
