//! What an answer of the walk has decided, in words.

use crate::items::Verdict;
use crate::judge::Agreed;
use crate::judge::Finding;
use crate::report::advice;
use crate::report::one_line;
use crate::report::palette;
use crate::report::reader;
use crate::report::reader::asked;
use crate::report::reader::capital;
use crate::report::reader::fault;
use crate::report::reader::shortfall;
use crate::report::reader::way;
use crate::report::words::several;
use crate::report::wrap::hanging_in;
use crate::walk::NowSettled;

/// How many shortfalls are told at once; the report has them all.
const TOLD: usize = 3;

/// What an answer has decided: a sentence for each thing that is wrong, with what the
/// rules and the advice ask, and a count of what is met.
pub(super) fn progress(settled: &NowSettled<'_>, width: usize) -> String {
    let judged = &settled.judged;
    let of = |verdict: Verdict| -> Vec<&Finding<'_>> {
        let findings = settled.findings.iter();
        let findings = findings.filter_map(|index| judged.findings.get(*index));
        findings
            .filter(|finding| finding.verdict == verdict)
            .collect()
    };
    let mut lines = Vec::new();
    for verdict in [Verdict::FallsShort, Verdict::TooClose, Verdict::NotSettled] {
        let things = by_thing(verdict, of(verdict));
        for (thing, findings) in things.iter().take(TOLD) {
            let text = format!("{}. {}", capital(thing), what_is_asked(findings));
            lines.push(palette::verdict(&hanging_in(width, "  ", &text), verdict));
            let settle = findings.first().and_then(|finding| advice::settle(finding));
            if let (Verdict::TooClose, Some(settle)) = (verdict, settle) {
                let text = format!("To settle it: {settle}");
                lines.push(hanging_in(width, "    ", &text));
            }
        }
        if things.len() > TOLD {
            let more = things.len() - TOLD;
            let text = format!("And {}.", several(more, "thing more", "things more"));
            lines.push(hanging_in(width, "  ", &text));
        }
    }
    let agreed = settled
        .agreed
        .iter()
        .filter_map(|index| judged.agreed.get(*index));
    for text in agreed.filter_map(agreed_on) {
        let text = hanging_in(width, "  ", &text);
        lines.push(palette::verdict(&text, Verdict::FallsShort));
    }
    let (tried, met): (Vec<_>, Vec<_>) = of(Verdict::Meets)
        .into_iter()
        .partition(|finding| finding.partial);
    for (met, says) in [(met, "Meets"), (tried, "What was tried meets")] {
        if met.is_empty() {
            continue;
        }
        let advised = met
            .iter()
            .filter(|finding| finding.ruleset.advisory)
            .count();
        let law = met.len() - advised;
        let mut parts = Vec::new();
        if law > 0 {
            parts.push(several(law, "building rule", "building rules"));
        }
        if advised > 0 {
            parts.push(several(advised, "point of advice", "points of advice"));
        }
        let text = format!("{says} {}.", parts.join(", "));
        let text = hanging_in(width, "  ", &text);
        lines.push(palette::verdict(&text, Verdict::Meets));
    }
    lines.join("\n")
}

/// Findings of one verdict by the thing that they are about, in their order, with what
/// is wrong with it.
fn by_thing<'f, 'r>(
    verdict: Verdict,
    findings: Vec<&'f Finding<'r>>,
) -> Vec<(String, Vec<&'f Finding<'r>>)> {
    let mut things: Vec<(String, Vec<&Finding<'_>>)> = Vec::new();
    for finding in findings {
        let thing = match verdict {
            Verdict::TooClose => format!("{}: too near to tell", finding.item),
            Verdict::NotSettled => format!("{}: the rule is unclear", finding.item),
            Verdict::DoesNotApply | Verdict::FallsShort | Verdict::Meets | Verdict::NotMeasured => {
                fault(finding)
            }
        };
        let of_it = |all: &[&Finding<'_>]| all.iter().any(|other| other.item == finding.item);
        match things.iter_mut().find(|(_, all)| of_it(all)) {
            Some((_, all)) => all.push(finding),
            None => things.push((thing, vec![finding])),
        }
    }
    things
}

/// `Rules: 36 in or more, 1 3/8 in too low. Advice: the same.`
fn what_is_asked(findings: &[&Finding<'_>]) -> String {
    let of = |advisory: bool| -> Vec<String> {
        let mut all: Vec<String> = Vec::new();
        let of = |finding: &&&Finding<'_>| finding.ruleset.advisory == advisory;
        for finding in findings.iter().filter(of) {
            let said = match (shortfall(finding), finding.verdict) {
                (Some(amount), Verdict::FallsShort) => {
                    let operator = finding.limit.as_ref().map(|limit| limit.operator);
                    let way = way(finding.item, operator);
                    format!("{}, {amount} {way}", asked(finding))
                }
                (_, _) => asked(finding),
            };
            if !all.contains(&said) {
                all.push(said);
            }
        }
        all
    };
    let (rules, advice) = (of(false), of(true));
    let mut text = String::new();
    if !rules.is_empty() {
        text.push_str(&format!("Rules: {}.", rules.join("; ")));
    }
    if advice == rules {
        text.push_str(" Advice: the same.");
    } else if !advice.is_empty() {
        text.push_str(&format!(" Advice: {}.", advice.join("; ")));
    }
    text.trim_start().to_owned()
}

/// What all cases of what is still open agree on of one hazard, where it is not good.
fn agreed_on(agreed: &Agreed<'_>) -> Option<String> {
    let hazard = capital(reader::hazard(agreed.hazard?));
    let well = matches!(agreed.verdict, Verdict::DoesNotApply | Verdict::Meets);
    (!well).then(|| {
        format!(
            "{hazard}: {} whatever is still open, by {}.",
            reader::verdict(agreed.verdict),
            one_line(&agreed.ruleset.title)
        )
    })
}
