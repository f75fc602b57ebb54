//! What holds a guard up, as a short table.

use crate::items::Verdict;
use crate::judge::Chain;
use crate::judge::Finding;
use crate::judge::Link;
use crate::report::JudgedGuard;
use crate::report::one_line;
use crate::report::strength;
use crate::report::wrap::Lines;
use crate::report::wrap::heading_in;
use crate::statics::AnyQuantity;
use crate::statics::Units;

/// How wide the columns of the table are.
const LINK: usize = 22;
const LOAD: usize = 17;
const TAKES: usize = 18;
const SO: usize = 19;

/// Lines that a guard's load path takes where nobody asked for all of it.
const MOST_LINES: usize = 6;

/// The same in one short paragraph; what no longer fits is left to the table.
pub(super) fn in_short(lines: &mut Lines, sentences: &[String]) {
    // what would not hold was said with who decides
    let mends = sentences
        .first()
        .is_some_and(|first| first.starts_with(strength::MENDS));
    let mut told = if mends {
        String::new()
    } else {
        "What holds it (indicative; an engineer decides):".to_owned()
    };
    for sentence in sentences {
        let longer = format!("{told} {sentence}");
        let longer = longer.trim_start().to_owned();
        let mut tried = Lines::new(lines.width());
        tried.spread("  ", "     ", &longer);
        if tried.joined().lines().count() <= MOST_LINES {
            told = longer;
        }
    }
    lines.spread("  ", "     ", &told);
}

/// The load paths of a guard; one short line where nothing is known of what holds it.
pub(super) fn section(lines: &mut Lines, entry: &JudgedGuard<'_>) {
    let mut silent = false;
    let mut told = false;
    for finding in &entry.judged.findings {
        let applies = finding.verdict != Verdict::DoesNotApply;
        let Some(chain) = finding.chain.as_deref().filter(|_| applies) else {
            continue;
        };
        if chain.written {
            of_rule(lines, finding, chain);
            told = true;
        } else {
            silent = true;
        }
    }
    if silent && !told {
        lines.gap();
        let text = "Strength not judged: nothing known about what holds the posts; how to look: guardrule items post-fastening.";
        lines.hanging("  ", text);
    }
}

fn of_rule(lines: &mut Lines, finding: &Finding<'_>, chain: &Chain) {
    lines.gap();
    let title = "What holds it up (indicative: a licensed engineer decides)";
    lines.push(heading_in(lines.width(), "  ", title));
    let loads = format!(
        "Loads: {}, by {} ({}).",
        strength::loads(finding),
        one_line(&finding.ruleset.id),
        one_line(&finding.rule.clause)
    );
    lines.hanging("    ", &loads);
    lines.gap();
    let table = lines.width() >= 4 + LINK + LOAD + TAKES + SO;
    if table {
        row(lines, ["Link", "Load on it", "It can take", "So"]);
    }
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
        if table {
            row(lines, cells);
        } else {
            let [link, load, takes, so] = cells;
            let text = format!("{link}: load {load}, can take {takes}: {so}");
            lines.spread("    ", "      ", &text);
        }
    }
    let moment = |link: &Link| matches!(link.demand.map(|d| d.high), Some(AnyQuantity::Moment(_)));
    if chain.links.iter().any(moment) {
        let says = match chain.units {
            Units::Customary => "lb·in: pounds times the inches of its lever.",
            Units::Metric => "N·m: newtons times the metres of its lever.",
        };
        lines.hanging("    ", says);
    }
    lines.gap();
    let sentences = [
        strength::ruled_out(chain),
        strength::weakest(chain),
        strength::may_be_weaker(chain),
        strength::seen_wrong(chain),
        strength::mends(chain),
    ];
    for says in sentences.iter().flatten() {
        lines.hanging("    ", says);
    }
    for link in &chain.links {
        remark(lines, link);
    }
    if let Some(taken) = strength::taken(chain) {
        lines.hanging("    ", &taken);
    }
}

/// Why a link has no number and what to look at next.
fn remark(lines: &mut Lines, link: &Link) {
    let parts: Vec<String> = [strength::why(link), strength::next(link)]
        .into_iter()
        .flatten()
        .collect();
    if !parts.is_empty() {
        let text = format!("{}: {}.", strength::name(link), parts.join("; "));
        lines.hanging("    - ", &text);
    }
}

/// A row of the table; long cells run on below.
fn row(lines: &mut Lines, cells: [&str; 4]) {
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
    for at in 0..height {
        let mut line = "    ".to_owned();
        for (cell, (_, width)) in wrapped.iter().zip(columns) {
            let part = cell.get(at).map_or("", String::as_str);
            let pad = width.saturating_sub(textwrap::core::display_width(part));
            line.push_str(part);
            line.push_str(&" ".repeat(pad));
        }
        lines.push(line.trim_end().to_owned());
    }
}
