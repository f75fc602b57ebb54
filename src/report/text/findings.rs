//! Findings of a guard as paragraphs: shortfalls, what is too close to call,
//! what was met.

use std::cmp::Reverse;

use crate::items::Item;
use crate::items::Verdict;
use crate::judge::Authority;
use crate::judge::Finding;
use crate::judge::LimitShown;
use crate::judge::Operator;
use crate::judge::Reason;
use crate::quantities::Length;
use crate::quantities::LengthUnit;
use crate::reading::Value;
use crate::report::JudgedGuard;
use crate::report::ReportBasis;
use crate::report::advice;
use crate::report::one_line;
use crate::report::palette;
use crate::report::remedy::remedy;
use crate::report::strength;
use crate::report::text::headline::FindingGroup;
use crate::report::text::rank::share_short;
use crate::report::words;
use crate::report::words::several;
use crate::report::wrap::hanging;
use crate::report::wrap::tied;
use crate::rules::Urgency;
use crate::survey::Guard;

const BULLET: &str = "    * ";
const UNDER: &str = "      ";

/// Whether a shortfall's line of what to do is said.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Advice {
    /// It is.
    Say,
    /// A larger shortfall of the same item said it already.
    SaidAbove,
}

/// A shortfall: what was found, what is asked, by how much it is short, what to do.
pub(super) fn shortfall(
    finding: &Finding<'_>,
    entry: &JudgedGuard<'_>,
    advice: Advice,
) -> Vec<String> {
    let guard = &entry.guard;
    let mut lines = vec![palette_first(hanging(BULLET, &compared(finding, guard)))];
    lines.push(hanging(UNDER, &one_line(&finding.rule.says)));
    let when = match finding.rule.urgency {
        Urgency::Now => "Tonight, to put it right: ",
        Urgency::Soon | Urgency::Know => "To put it right: ",
    };
    if advice == Advice::Say {
        let text = format!("{when}{}", put_right(finding, entry));
        lines.push(hanging(UNDER, &text));
    }
    lines.push(hanging(UNDER, &source(finding)));
    remarks(&mut lines, finding, guard);
    lines
}

/// What to speak of first, for the top of the report: the most urgent shortfall,
/// then the largest for its limit, with what to do; else what is too close to
/// call, with how to settle it; and what to find out next.
pub(super) fn first_steps(entry: &JudgedGuard<'_>, basis: &ReportBasis<'_>) -> Vec<String> {
    let of = |verdict: Verdict| {
        entry
            .judged
            .findings
            .iter()
            .filter(move |finding| finding.verdict == verdict && finding.counts())
            .filter(|finding| FindingGroup::of(finding, basis) != FindingGroup::Memory)
    };
    let worst = of(Verdict::FallsShort).min_by_key(|finding| {
        let share = Reverse(share_short(finding).unwrap_or(0));
        (!finding.binding, finding.rule.urgency, share)
    });
    let close = of(Verdict::TooClose).min_by_key(|finding| !finding.binding);
    let mut steps = Vec::new();
    if let Some(worst) = worst {
        let by = by_whom(worst, basis);
        steps.push(format!("{}{by}.", compared(worst, &entry.guard)));
        steps.push(format!("To put it right: {}", put_right(worst, entry)));
    } else if let Some(close) = close {
        let by = by_whom(close, basis);
        steps.push(format!(
            "{}; too close to call{by}.",
            compared(close, &entry.guard)
        ));
        let settle = advice::settle(close);
        steps.extend(settle.map(|settle| format!("To settle it: {settle}")));
    }
    let next = entry.judged.questions();
    let next = next.iter().take(NEXT);
    let next: Vec<&str> = next.map(|question| question.item.name()).collect();
    if !next.is_empty() {
        steps.push(format!("Measure or write down next: {}.", next.join(", ")));
    }
    steps
}

/// What asks, where a law was chosen and it is not the law.
fn by_whom(finding: &Finding<'_>, basis: &ReportBasis<'_>) -> &'static str {
    match (
        Authority::of(basis.rulesets),
        FindingGroup::of(finding, basis),
    ) {
        (Authority::Law, FindingGroup::Guidance | FindingGroup::Memory) => " (guidance, no law)",
        (Authority::Law, FindingGroup::OfItsTime) => " (rules of its time)",
        (Authority::Law, FindingGroup::Decides) | (Authority::Guidance, _) => "",
    }
}

/// How many things to find out next are named at the top.
const NEXT: usize = 3;

/// What would put right what a finding judged, with whatever else is asked of it.
fn put_right(finding: &Finding<'_>, entry: &JudgedGuard<'_>) -> String {
    remedy(&entry.judged, &entry.guard, finding.item)
        .map_or_else(|| advice::put_right(finding), |remedy| remedy.says)
}

/// What is too close to call or not settled, why, and how to settle it.
pub(super) fn open(finding: &Finding<'_>, guard: &Guard) -> Vec<String> {
    let mut lines = vec![hanging(BULLET, &compared(finding, guard))];
    lines.push(hanging(UNDER, &one_line(&finding.rule.says)));
    let within_doubt = match (finding.margin, finding.uncertainty) {
        (Some(margin), Some(u)) => margin.magnitude() < u.doubled(),
        (None, _) | (_, None) => false,
    };
    // where what is asked is not known, the reasons below say so
    if within_doubt || finding.verdict == Verdict::TooClose {
        lines.push(hanging(UNDER, &why_open(finding)));
        if let Some(settle) = advice::settle(finding) {
            lines.push(hanging(UNDER, &format!("To settle it: {settle}")));
        }
    }
    lines.push(hanging(UNDER, &source(finding)));
    remarks(&mut lines, finding, guard);
    lines
}

fn palette_first(text: String) -> String {
    match text.split_once('\n') {
        None => palette::verdict(&text, Verdict::FallsShort),
        Some((first, rest)) => {
            format!("{}\n{rest}", palette::verdict(first, Verdict::FallsShort))
        }
    }
}

/// `height: 34 5/8 in; asked: at least 36 in; short by 1/2 in`
pub(in crate::report) fn compared(finding: &Finding<'_>, guard: &Guard) -> String {
    if let Some(chain) = &finding.chain {
        return strength::compared(chain);
    }
    let mut text = format!("{}: ", finding.item);
    match &finding.measured {
        Some(measured) => text.push_str(&tied(&one_line(&measured.written))),
        None => text.push_str("no reading"),
    }
    if let Some(ball) = clear_opening(finding, guard) {
        text.push_str(&format!(" (the largest ball through it: {ball})"));
    }
    if let Some(limit) = &finding.limit {
        let asked = in_own_units(limit, advice::unit(finding));
        text.push_str(&format!("; asked: {}", tied(&one_line(&asked))));
    }
    match finding.margin {
        Some(margin) if margin < Length::ZERO && finding.verdict == Verdict::FallsShort => {
            text.push_str(&format!("; short by {}", advice::amount(finding, margin)));
        }
        Some(Length::ZERO) if finding.verdict == Verdict::FallsShort => {
            text.push_str("; exactly the limit is not enough");
        }
        Some(margin) if finding.verdict == Verdict::Meets => {
            text.push_str(&format!("; {} to spare", advice::amount(finding, margin)));
        }
        Some(_) | None => {}
    }
    text
}

/// What is asked, for who measured in the other system: `at least 36 in (914.4 mm)`.
fn in_own_units(limit: &LimitShown<'_>, own: LengthUnit) -> String {
    let says = words::limit(limit);
    let of_two = limit.operator == Operator::NotWithin;
    match (limit.value, limit.unit) {
        (Some(value), Some(unit)) if !of_two && unit.is_imperial() != own.is_imperial() => {
            let both = format!("{} ({})", limit.written, value.readable(own));
            says.replacen(&*limit.written, &both, 1)
        }
        (_, _) => says,
    }
}

/// The clear opening, where the reading was a shape.
fn clear_opening(finding: &Finding<'_>, guard: &Guard) -> Option<String> {
    let index = *finding.readings.first()?;
    let value = finding.measured.as_ref()?.value?;
    let reading = guard.observation(index).reading.as_ref()?;
    let shaped = matches!(reading.value, Value::Shape(_) | Value::StairTriangle(_));
    shaped.then(|| tied(&value.readable(advice::unit(finding))))
}

/// `Rule: R312.1.2, us-dwelling-2018 (rail-too-low)`
fn source(finding: &Finding<'_>) -> String {
    // a clause that is common practice says so already
    let said = finding.rule.clause == "common practice, no source";
    let verify = words::verify(finding.rule.status).filter(|_| !said);
    let verify = verify.map_or_else(String::new, |verify| format!("; {verify}"));
    format!(
        "Rule: {}, {} ({}){verify}",
        one_line(&finding.rule.clause),
        one_line(&finding.ruleset.id),
        one_line(&finding.rule.id)
    )
}

/// Why the tape cannot tell.
fn why_open(finding: &Finding<'_>) -> String {
    let alone = format!("the reading alone {}", alone(finding.reading_alone));
    let exactly = finding.reasons.contains(&Reason::ExactlyAtLimit);
    let in_doubt = finding
        .reasons
        .iter()
        .any(|reason| matches!(reason, Reason::TriggerInDoubt(_)));
    if exactly && let Some(limit) = &finding.limit {
        let size = tied(&one_line(&limit.written));
        return match limit.value {
            Some(_) => format!("It reads exactly {size}; a tape cannot settle that; {alone}."),
            None => format!("It reads exactly a limit; a tape cannot settle that; {alone}."),
        };
    }
    match (finding.margin, finding.uncertainty) {
        (Some(margin), Some(u)) if margin.magnitude() < u.doubled() => {
            let side = if margin < Length::ZERO {
                "past the limit"
            } else {
                "on the good side of the limit"
            };
            format!(
                "It lies {} {side}, and the tape is sure only to {} either way{}; {alone}.",
                advice::amount(finding, margin),
                advice::doubt(finding, u.doubled()),
                chance(finding)
            )
        }
        _ if in_doubt => format!("It would fall short, if the rule applies here; {alone}."),
        _ => format!("It is left open; {alone}."),
    }
}

const fn alone(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::FallsShort => "would fall short",
        Verdict::NotSettled | Verdict::TooClose => "does not settle it either",
        Verdict::NotMeasured => "would not be enough either",
        Verdict::Meets => "would meet",
        Verdict::DoesNotApply => "would take the rule as not applying",
    }
}

/// ` (about 80 % likely to meet)`
fn chance(finding: &Finding<'_>) -> String {
    let Some(probability) = finding.probability else {
        return String::new();
    };
    let hundredths = (probability.value() * 100.0).round().clamp(1.0, 99.0);
    format!(" (about {hundredths} % likely to meet)")
}

/// What a reader should know beside a finding: other readings, its note, its reasons.
fn remarks(lines: &mut Vec<String>, finding: &Finding<'_>, guard: &Guard) {
    if !finding.also_readings.is_empty() {
        let others: Vec<String> = finding
            .also_readings
            .iter()
            .map(|index| tied(&one_line(&guard.observation(*index).written)))
            .collect();
        let all = several(others.len() + 1, "reading", "readings");
        let text = format!("The worst of {all}; the others: {}", others.join(", "));
        lines.push(hanging(UNDER, &words::shortened(&text)));
    }
    for index in &finding.readings {
        let observation = guard.observation(*index);
        if !observation.note.is_empty() {
            let note = words::shortened(&one_line(&observation.note));
            lines.push(hanging(UNDER, &format!("Note: {note}")));
        }
    }
    for reason in &finding.reasons {
        if *reason != Reason::ExactlyAtLimit {
            let text = capitalised(&words::reason(reason, guard));
            lines.push(hanging(UNDER, &format!("{}.", text.trim_end_matches('.'))));
        }
    }
}

fn capitalised(text: &str) -> String {
    let mut chars = text.chars();
    match chars.next() {
        Some(first) => first.to_uppercase().chain(chars).collect(),
        None => String::new(),
    }
}

/// What was met, in one line: `3 rules (height, opening)`. A rule judged at
/// several openings is met where all of them meet.
pub(super) fn met(findings: &[&Finding<'_>]) -> Option<String> {
    let mut items: Vec<Item> = Vec::new();
    let mut rules = 0;
    for of_one_rule in findings.chunk_by(|a, b| std::ptr::eq(a.rule, b.rule)) {
        if of_one_rule.iter().any(|finding| finding.is_indicative()) {
            continue;
        }
        let verdicts = of_one_rule.iter().map(|finding| finding.counts_as());
        if verdicts.min() == Some(Verdict::Meets) {
            rules += 1;
            let met = |finding: &&&Finding<'_>| finding.verdict == Verdict::Meets;
            items.extend(of_one_rule.iter().filter(met).map(|finding| finding.item));
        }
    }
    (rules > 0).then(|| format!("{} ({})", several(rules, "rule", "rules"), names(items)))
}

/// What meets where it was looked at, and the rest was not.
pub(super) fn met_in_part(findings: &[&Finding<'_>]) -> Option<String> {
    let partial = |finding: &&&Finding<'_>| finding.verdict == Verdict::Meets && finding.partial;
    let items: Vec<Item> = findings
        .iter()
        .filter(partial)
        .map(|finding| finding.item)
        .collect();
    (!items.is_empty()).then(|| names(items))
}

/// Each item's name once.
fn names(items: Vec<Item>) -> String {
    let mut names: Vec<String> = Vec::new();
    for item in items {
        let name = tied(item.name());
        if !names.contains(&name) {
            names.push(name);
        }
    }
    names.join(", ")
}

/// What to know about findings that meet, each once.
pub(super) fn met_remarks(findings: &[&Finding<'_>], guard: &Guard) -> Vec<String> {
    let mut said: Vec<String> = Vec::new();
    for finding in findings {
        if finding.verdict != Verdict::Meets {
            continue;
        }
        for reason in &finding.reasons {
            let text = format!("{}: {}", finding.item, words::reason(reason, guard));
            if !said.contains(&text) {
                said.push(text);
            }
        }
    }
    said
}
