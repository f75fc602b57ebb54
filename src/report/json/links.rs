//! `links[]`: the load path of a finding, in newton, newton metre and millimetre.

use serde::Serialize;

use crate::items::Verdict;
use crate::judge::Chain;
use crate::judge::Finding;
use crate::judge::Link;
use crate::judge::LinkFinding;
use crate::remedy::mends_of;
use crate::report::link_words;
use crate::report::strength;
use crate::statics::AnyQuantity;
use crate::statics::Ends;
use crate::statics::Units;

/// One link.
#[derive(Serialize)]
pub(super) struct LinkRecord {
    link: &'static str,
    case: &'static str,
    verdict: &'static str,
    by_rule: bool,
    weakest: bool,
    demand: Option<RangeRecord>,
    capacity: Option<RangeRecord>,
    ratio: Option<RatioRecord>,
    reason: Option<String>,
    source: Option<LinkSourceRecord>,
    asks: Vec<&'static str>,
    fit: Option<String>,
    taken: Vec<&'static str>,
    calculation: Vec<StepRecord>,
}

/// The least and the greatest plausible value.
#[derive(Serialize)]
struct RangeRecord {
    low: f64,
    high: f64,
    unit: &'static str,
    written: String,
}

#[derive(Serialize)]
struct RatioRecord {
    low: Option<f64>,
    high: Option<f64>,
}

#[derive(Serialize)]
struct LinkSourceRecord {
    text: &'static str,
    status: &'static str,
}

#[derive(Serialize)]
struct StepRecord {
    what: &'static str,
    lines: Vec<LineRecord>,
}

#[derive(Serialize)]
struct LineRecord {
    symbol: &'static str,
    formula: &'static str,
    written: String,
    source: &'static str,
    status: &'static str,
}

/// What matters of a load path, as the other forms of report tell it.
#[derive(Serialize)]
pub(super) struct StrengthRecord<'a> {
    ruleset: &'a str,
    rule: &'a str,
    weakest: Option<String>,
    seen: Vec<&'static str>,
    look_at_next: Vec<&'static str>,
    fit: Vec<String>,
}

/// The load paths of a guard of which anything is written.
pub(super) fn strengths<'a>(findings: &'a [Finding<'_>]) -> Vec<StrengthRecord<'a>> {
    let applies = |finding: &&Finding<'_>| finding.verdict != Verdict::DoesNotApply;
    let record = |finding: &'a Finding<'_>| {
        let chain = finding.chain.as_deref().filter(|chain| chain.written)?;
        Some(StrengthRecord {
            ruleset: &finding.ruleset.id,
            rule: &finding.rule.id,
            weakest: chain.weakest().map(strength::name),
            seen: strength::seen(chain),
            look_at_next: chain.asks().iter().map(|item| item.name()).collect(),
            fit: mends_of(chain),
        })
    };
    findings.iter().filter(applies).filter_map(record).collect()
}

/// The links of a finding; none for a rule that states no loads.
pub(super) fn links(finding: &Finding<'_>) -> Vec<LinkRecord> {
    let Some(chain) = &finding.chain else {
        return Vec::new();
    };
    let weakest = chain.weakest();
    let record = |link: &Link| {
        let is_weakest = weakest.is_some_and(|weakest| std::ptr::eq(weakest, link));
        LinkRecord::of(link, chain, is_weakest)
    };
    chain.links.iter().map(record).collect()
}

impl LinkRecord {
    fn of(link: &Link, chain: &Chain, weakest: bool) -> LinkRecord {
        LinkRecord {
            link: link_words::kind(link.kind),
            case: link_words::case(link.case),
            verdict: link.finding.verdict().name(),
            by_rule: matches!(link.finding, LinkFinding::ByRule(_)),
            weakest,
            demand: link.demand.map(|demand| range(demand, chain.units)),
            capacity: link.capacity.map(|capacity| range(capacity, chain.units)),
            ratio: link.ratio.map(|ratio| RatioRecord {
                // a capacity of nothing has no ratio
                low: Some(ratio.low.0).filter(|ratio| ratio.is_finite()),
                high: Some(ratio.high.0).filter(|ratio| ratio.is_finite()),
            }),
            reason: strength::why(link),
            source: link.source().map(|basis| LinkSourceRecord {
                text: basis.source,
                status: basis.status.word(),
            }),
            asks: link.asks.iter().map(|item| item.name()).collect(),
            fit: strength::fit(link, chain.units),
            taken: link
                .taken
                .iter()
                .map(|taken| link_words::taken(*taken))
                .collect(),
            calculation: steps(link, chain.units),
        }
    }
}

fn range(bounds: Ends<AnyQuantity>, units: Units) -> RangeRecord {
    let ((low, unit), (high, _)) = (
        bounds.low.size(Units::Metric),
        bounds.high.size(Units::Metric),
    );
    RangeRecord {
        low,
        high,
        unit,
        written: strength::range(bounds, units),
    }
}

fn steps(link: &Link, units: Units) -> Vec<StepRecord> {
    let steps = link.steps.iter();
    steps
        .map(|step| StepRecord {
            what: link_words::step(step.what),
            lines: step
                .lines
                .iter()
                .map(|line| LineRecord {
                    symbol: line.symbol,
                    formula: line.formula,
                    written: line.written(units),
                    source: line.basis.source,
                    status: line.basis.status.word(),
                })
                .collect(),
        })
        .collect()
}
