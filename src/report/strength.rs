//! The load path in words: what bears on each link, what it can take, what to
//! look at next. Indicative throughout.

use crate::items::Item;
use crate::items::Verdict;
use crate::judge::Chain;
use crate::judge::Finding;
use crate::judge::Link;
use crate::judge::LinkFinding;
use crate::judge::LinkKind;
use crate::judge::Taken;
use crate::report::one_line;
use crate::report::wrap::Lines;
use crate::rules::LoadDemand;
use crate::statics::Amount;
use crate::statics::Bounds;
use crate::statics::Units;

const INDENT: &str = "        ";

/// A link with its case: `top rail (bending, pressed down)`.
#[must_use]
pub(super) fn name(link: &Link) -> String {
    format!("{} ({})", link.kind.name(), link.case)
}

/// What became of a link, for a reader.
#[must_use]
pub(super) fn verdict(link: &Link) -> &'static str {
    match link.finding {
        LinkFinding::ByRule(_) => "falls short, by rule",
        LinkFinding::FallsShort => "falls short",
        LinkFinding::NoShortfall if link.kind == LinkKind::Stiffness => {
            "no shortfall found in stiffness"
        }
        LinkFinding::NoShortfall => "no shortfall found",
        LinkFinding::NotMeasured(_) => "not measured",
        LinkFinding::TooClose => "too close to call",
    }
}

/// Why a link has no number, or is ruled out, with the source.
#[must_use]
pub(super) fn why(link: &Link) -> Option<String> {
    match link.finding {
        LinkFinding::ByRule(ruled) => Some(format!("{} ({})", ruled.reason, ruled.source)),
        LinkFinding::NotMeasured(hidden) => Some(hidden.reason.to_owned()),
        LinkFinding::FallsShort | LinkFinding::NoShortfall | LinkFinding::TooClose => None,
    }
}

/// What to write down so that a link can be judged, or judged more narrowly.
#[must_use]
pub(super) fn next(link: &Link) -> Option<String> {
    let open = matches!(
        link.finding,
        LinkFinding::NotMeasured(_) | LinkFinding::TooClose
    );
    if !open || link.asks.is_empty() {
        return None;
    }
    let mut names: Vec<&str> = Vec::new();
    for item in &link.asks {
        // of a link with numbers only the moisture is open
        let moisture = *item == Item::Condition && link.finding == LinkFinding::TooClose;
        let name = if moisture {
            "condition (wet or dry)"
        } else {
            item.name()
        };
        if !names.contains(&name) {
            names.push(name);
        }
    }
    Some(format!("write down {}", names.join(", ")))
}

/// The weakest link in one sentence.
#[must_use]
pub(super) fn weakest(chain: &Chain) -> Option<String> {
    let link = chain.weakest()?;
    let far = if chain.is_found_so_far() {
        "Weakest link found so far"
    } else {
        "Weakest link"
    };
    let ratio = link
        .ratio
        .map(|ratio| format!(": {}", share(ratio.low.0, ratio.high.0)));
    let hidden = if chain.is_found_so_far() {
        "; one that could not be judged may be weaker"
    } else {
        ""
    };
    let ratio = ratio.unwrap_or_default();
    Some(format!("{far}: {}{ratio}{hidden}.", name(link)))
}

/// `the load is 1.8 to 2.9 times what it can take`; two figures and no more.
fn share(low: f64, high: f64) -> String {
    let (low, high) = (two_figures(low), two_figures(high));
    if low == high {
        format!("the load is {low} times what it can take")
    } else {
        format!("the load is {low} to {high} times what it can take")
    }
}

/// A ratio to two figures.
#[must_use]
pub(super) fn two_figures(ratio: f64) -> String {
    figures(ratio, 2)
}

/// A number to so many figures, without a power of ten.
fn figures(number: f64, figures: i32) -> String {
    if !number.is_finite() {
        return "far more than 100".to_owned();
    }
    let shown = format!("{number:.0$e}", usize::try_from(figures - 1).unwrap_or(0));
    let exponent = shown.split('e').next_back().and_then(|e| e.parse().ok());
    let exponent: i32 = exponent.unwrap_or(0);
    let places = usize::try_from(figures - 1 - exponent).unwrap_or(0).min(9);
    let rounded: f64 = shown.parse().unwrap_or(number);
    format!("{rounded:.places$}")
}

/// A range of amounts to three figures in the person's own units.
#[must_use]
pub(super) fn range(bounds: Bounds<Amount>, units: Units) -> String {
    let ((low, unit), (high, _)) = (bounds.low.size(units), bounds.high.size(units));
    let (low, high) = (figures(low, 3), figures(high, 3));
    if low == high {
        format!("{low} {unit}")
    } else {
        format!("{low}–{high} {unit}")
    }
}

/// Why the guard falls short, for its headline shortfall.
#[must_use]
pub(super) fn compared(chain: &Chain) -> String {
    format!("strength, indicative: {}", would_not_hold(chain))
}

/// Where it would not hold: `would not hold at the post fixing`.
#[must_use]
pub(super) fn would_not_hold(chain: &Chain) -> String {
    let short = chain
        .links
        .iter()
        .filter(|link| link.finding.verdict() == Verdict::FallsShort);
    let names: Vec<String> = short.map(name).collect();
    format!("would not hold at {}", names.join("; "))
}

/// What the rule asks, in its own loads.
#[must_use]
pub(super) fn loads(finding: &Finding<'_>) -> String {
    let mut says = finding.rule.loads().map(LoadDemand::says);
    one_line(&says.next().unwrap_or_default()).into_owned()
}

/// What was taken as given.
#[must_use]
pub(super) fn taken(chain: &Chain) -> Option<String> {
    let taken = chain.taken();
    let says: Vec<&str> = taken.iter().map(|taken: &Taken| taken.says()).collect();
    (!says.is_empty()).then(|| format!("Taken as given: {}.", says.join("; ")))
}

/// Every calculation of the chain, line by line, for `--explain`.
pub(super) fn calculation(lines: &mut Lines, chain: &Chain) {
    for link in &chain.links {
        let title = format!("{}: {}", name(link), verdict(link));
        lines.hanging("      - ", &title);
        for step in &link.steps {
            if step.lines.is_empty() {
                continue;
            }
            lines.hanging(INDENT, &format!("{}:", step.what));
            for line in &step.lines {
                let basis = line.basis;
                let text = format!(
                    "{}  [{}; {}]",
                    line.written(chain.units),
                    basis.source,
                    basis.status.word()
                );
                lines.hanging("          ", &text);
            }
        }
        if let Some(ratio) = link.ratio {
            let text = format!(
                "load over capacity: {:.4} at least, {:.4} at most",
                ratio.low.0, ratio.high.0
            );
            lines.hanging(INDENT, &text);
        }
        if let Some(why) = why(link) {
            lines.hanging(INDENT, &why);
        }
    }
}

/// The whole chain in one cell.
#[must_use]
pub(super) fn in_one_cell(chain: &Chain) -> String {
    let links: Vec<String> = chain
        .links
        .iter()
        .map(|link| {
            let mut text = format!("{}: {}", name(link), verdict(link));
            if let Some(demand) = link.demand {
                text.push_str(&format!(", load {}", range(demand, chain.units)));
            }
            if let Some(capacity) = link.capacity {
                text.push_str(&format!(", can take {}", range(capacity, chain.units)));
            }
            text
        })
        .collect();
    links.join("; ")
}
