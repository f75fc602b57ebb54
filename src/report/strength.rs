//! The load path in words: what bears on each link, what it can take, what to
//! look at next. Indicative throughout.

use crate::items::Item;
use crate::items::Verdict;
use crate::judge::Chain;
use crate::judge::Finding;
use crate::judge::Link;
use crate::judge::LinkFinding;
use crate::judge::LinkKind;
use crate::judge::Wrong;
use crate::remedy::mended;
use crate::remedy::mends_of;
use crate::remedy::unseen_foot;
use crate::report::link_reasons::reason;
use crate::report::link_words;
use crate::report::one_line;
use crate::report::wrap::Lines;
use crate::rules::LoadDemand;
use crate::statics::AnyQuantity;
use crate::statics::Ends;
use crate::statics::Units;

const INDENT: &str = "        ";

/// A link with its case: `top rail (bending, pressed down)`.
#[must_use]
pub(super) fn name(link: &Link) -> String {
    format!(
        "{} ({})",
        link_words::kind(link.kind),
        link_words::case(link.case)
    )
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
        LinkFinding::ByRule(ruled) => Some(format!("{} ({})", reason(ruled.reason), ruled.source)),
        LinkFinding::NotMeasured(hidden) => Some(reason(hidden.reason).to_owned()),
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

/// What is ruled out without a number, the lowest in the path first.
#[must_use]
pub(super) fn ruled_out(chain: &Chain) -> Option<String> {
    // one part may be ruled out twice over
    let mut kinds: Vec<LinkKind> = Vec::new();
    let mut names: Vec<String> = Vec::new();
    for link in chain.ruled_out() {
        if !kinds.contains(&link.kind) {
            kinds.push(link.kind);
            names.push(name(link));
        }
    }
    (!names.is_empty()).then(|| format!("Falls short by rule: {}.", names.join("; ")))
}

/// The weakest link in one sentence.
#[must_use]
pub(super) fn weakest(chain: &Chain) -> Option<String> {
    let link = chain.weakest()?;
    let far = match (chain.ruled_out().next(), chain.is_found_so_far()) {
        (Some(_), true) => "Weakest of the rest so far",
        (Some(_), false) => "Weakest of the rest",
        (None, true) => "Weakest link found so far",
        (None, false) => "Weakest link",
    };
    let ratio = link
        .ratio
        .map(|ratio| format!(": {}", share(ratio.low.0, ratio.high.0)));
    Some(format!(
        "{far}: {}{}.",
        name(link),
        ratio.unwrap_or_default()
    ))
}

/// That a link without a number may be the weakest.
#[must_use]
pub(super) fn may_be_weaker(chain: &Chain) -> Option<String> {
    let says = "A link that could not be judged, or that is ruled out, may give way sooner.";
    let open = chain.is_found_so_far() || chain.ruled_out().next().is_some();
    open.then(|| says.to_owned())
}

/// What somebody saw that no number counts.
#[must_use]
pub(super) fn seen_wrong(chain: &Chain) -> Option<String> {
    let says = seen(chain);
    (!says.is_empty()).then(|| format!("Seen: {}.", says.join("; ")))
}

/// The same, each for itself.
#[must_use]
pub(super) fn seen(chain: &Chain) -> Vec<&'static str> {
    let wrong = chain.seen.iter();
    wrong.map(|wrong| wrong_in_words(*wrong)).collect()
}

const fn wrong_in_words(wrong: Wrong) -> &'static str {
    match wrong {
        Wrong::Apart => "post and framing do not touch",
        Wrong::Cables => "cables pull at the end posts all the time",
        Wrong::Cracks => "cracks",
        Wrong::DeepRust => "deep rust",
        Wrong::MovesALittle => "it moves a little",
        Wrong::MovesALot => "it moves a lot",
        Wrong::Notched => "a notched post",
        Wrong::Rot => "rot",
        Wrong::WideAcrossGrain => {
            "bolts more than 5 in (130 mm) apart across the rim's grain, which splits it as it shrinks"
        }
    }
}

/// Why nobody can say what holds the post, and how to look, where it cannot be seen.
#[must_use]
pub(super) fn unseen(chain: &Chain) -> Option<String> {
    let link = unseen_foot(chain)?;
    Some(format!("What holds the post: {}.", why(link)?))
}

/// Most things to look at next that one line names.
const MOST_NEXT: usize = 3;

/// What to look at next, the most useful first.
#[must_use]
pub(super) fn look_at_next(chain: &Chain) -> Option<String> {
    let asks = chain.asks();
    let names: Vec<&str> = asks
        .iter()
        .take(MOST_NEXT)
        .map(|item| item.name())
        .collect();
    let more = if asks.len() > MOST_NEXT {
        " and more"
    } else {
        ""
    };
    (!names.is_empty()).then(|| format!("Look at next: {}{more}.", names.join(", ")))
}

/// How the sentence of what would mend it begins.
pub(super) const MENDS: &str = "A tradesman would";

/// What a tradesman would do at the worst joints; an engineer confirms it.
#[must_use]
pub(super) fn mends(chain: &Chain) -> Option<String> {
    let mut says = mends_of(chain);
    says.truncate(2);
    (!says.is_empty()).then(|| format!("{MENDS} fit {}.", says.join("; and ")))
}

/// The same without the first, where that was said as what to do.
#[must_use]
pub(super) fn further_mends(chain: &Chain) -> Option<String> {
    let fits = mends_of(chain);
    let second = fits.get(1)?;
    Some(format!("{MENDS} also fit {second}."))
}

/// What a tradesman would fit at one joint.
#[must_use]
pub(super) fn fit(link: &Link, units: Units) -> Option<String> {
    let wanting = link.finding != LinkFinding::NoShortfall;
    let mend = link.mend.filter(|_| wanting);
    mend.map(|mend| mended(mend, units))
}

/// `too weak, the load is 1.8 to 2.9 times what it takes`; two figures and no more.
fn share(low: f64, high: f64) -> String {
    let so = match (low > 1.0, high > 1.0) {
        (true, _) => "too weak",
        (false, true) => "it cannot be told",
        (false, false) => "no shortfall found",
    };
    let (low, high) = (two_figures(low), two_figures(high));
    if low == high {
        format!("{so}, the load is {low} times what it takes")
    } else {
        format!("{so}, the load is {low} to {high} times what it takes")
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
pub(super) fn range(bounds: Ends<AnyQuantity>, units: Units) -> String {
    let ((low, unit), (high, _)) = (bounds.low.size(units), bounds.high.size(units));
    if low.to_bits() == high.to_bits() {
        return format!("{} {unit}", figures(low, 3));
    }
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

/// The first of them alone: `200 lbf at the worst point along the top`.
pub(super) fn main_load(finding: &Finding<'_>) -> String {
    let loads = loads(finding);
    let first = loads.split_once(", ").map(|(first, _)| first.to_owned());
    first.unwrap_or(loads)
}

/// What was taken as given.
#[must_use]
pub(super) fn taken(chain: &Chain) -> Option<String> {
    let taken = chain.taken();
    let says: Vec<&str> = taken
        .iter()
        .map(|taken| link_words::taken(*taken))
        .collect();
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
            lines.hanging(INDENT, &format!("{}:", link_words::step(step.what)));
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
    let mut cell = String::new();
    for link in &chain.links {
        if !cell.is_empty() {
            cell.push_str("; ");
        }
        let (kind, case) = (link_words::kind(link.kind), link_words::case(link.case));
        for part in [kind, " (", case, "): ", verdict(link)] {
            cell.push_str(part);
        }
        if let Some(demand) = link.demand {
            cell.push_str(", load ");
            cell.push_str(&range(demand, chain.units));
        }
        if let Some(capacity) = link.capacity {
            cell.push_str(", can take ");
            cell.push_str(&range(capacity, chain.units));
        }
    }
    cell
}
