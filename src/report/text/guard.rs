//! One guard as a block of text.

use crate::items::Hazard;
use crate::items::Item;
use crate::items::Verdict;
use crate::judge::Authority;
use crate::judge::Bearing;
use crate::judge::Finding;
use crate::judge::HazardVerdict;
use crate::judge::Question;
use crate::judge::Reason;
use crate::reading::Value;
use crate::report::Explain;
use crate::report::JudgedGuard;
use crate::report::ReportBasis;
use crate::report::explain;
use crate::report::one_line;
use crate::report::palette;
use crate::report::text::findings;
use crate::report::text::headline::FindingGroup;
use crate::report::text::strength;
use crate::report::words;
use crate::report::words::several;
use crate::report::wrap::hanging;
use crate::survey::Guard;

/// More questions than these are only named.
const MOST_QUESTIONS: usize = 8;

/// How much is said of a guard.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Detail {
    /// There are many: how to measure is left to `guardrule items`.
    Brief,
    /// Everything.
    Full,
}

/// The lines below a guard's headline, without its cautions.
pub(super) fn block(entry: &JudgedGuard<'_>, basis: &ReportBasis<'_>, detail: Detail) -> String {
    let mut lines = Vec::new();
    hazards(&mut lines, entry, basis);
    let of = |group| -> Vec<&Finding<'_>> {
        let findings = entry.judged.findings.iter();
        findings
            .filter(|finding| FindingGroup::of(finding, basis) == group)
            .collect()
    };
    let decides = of(FindingGroup::Decides);
    let (short, close) = match Authority::of(basis.rulesets) {
        Authority::Guidance => ("Falls short (guidance)", "Too close to call (guidance)"),
        Authority::Law => ("Falls short of the law", "Too close to call: the law"),
    };
    group(&mut lines, entry, &decides, short, close);
    agreed(&mut lines, entry);
    unclear(&mut lines, entry);
    strength::section(&mut lines, entry);
    questions(&mut lines, entry, detail);
    in_the_way(&mut lines, entry);
    met(&mut lines, entry, &decides, met_title(basis));
    guidance(&mut lines, entry, basis, &of(FindingGroup::Guidance));
    of_its_time(&mut lines, entry, &of(FindingGroup::OfItsTime));
    memory(&mut lines, entry, &of(FindingGroup::Memory));
    does_not_apply(&mut lines, entry);
    own(&mut lines, &entry.guard);
    given(&mut lines, entry, basis);
    if basis.explain == Explain::Yes {
        section(&mut lines, "The arithmetic");
        for finding in &entry.judged.findings {
            lines.extend(explain::arithmetic(finding, &entry.guard, basis));
        }
    }
    lines.join("\n")
}

fn section(lines: &mut Vec<String>, title: &str) {
    lines.push(String::new());
    lines.push(format!("  {}", palette::heading(title)));
}

fn hazards(lines: &mut Vec<String>, entry: &JudgedGuard<'_>, basis: &ReportBasis<'_>) {
    for hazard in &entry.judged.hazards {
        let authority = Authority::of(basis.rulesets);
        lines.push(hazard_line(
            hazard,
            authority,
            rests_on(entry, hazard.hazard),
        ));
    }
}

/// What a hazard's `meets` rests on.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Rests {
    OnReadings,
    /// The load path takes part.
    OnTheLoadPath,
}

fn rests_on(entry: &JudgedGuard<'_>, hazard: Hazard) -> Rests {
    let indicative = |finding: &&Finding<'_>| {
        finding.is_indicative() && finding.binding && finding.verdict == Verdict::Meets
    };
    let of = |finding: &&Finding<'_>| finding.rule.hazard == hazard;
    let mut findings = entry.judged.findings.iter().filter(of);
    if findings.any(|finding| indicative(&finding)) {
        Rests::OnTheLoadPath
    } else {
        Rests::OnReadings
    }
}

fn hazard_line(hazard: &HazardVerdict, authority: Authority, rests: Rests) -> String {
    let label = format!(
        "{:<12}  {:<13}",
        hazard.hazard.name(),
        meaning(hazard.hazard)
    );
    let asked = match (hazard.verdict, hazard.guidance) {
        (Some(Verdict::Meets), _) if rests == Rests::OnTheLoadPath => "no shortfall found",
        (Some(verdict), _) => verdict.name(),
        (None, Some(_)) => "no rule of law asks",
        (None, None) => "no chosen rule asks",
    };
    let guidance = match (authority, hazard.verdict, hazard.guidance) {
        (Authority::Guidance, Some(_), _) => "  (guidance)".to_owned(),
        (_, _, Some(verdict)) => {
            format!("  guidance: {}", palette::verdict(verdict.name(), verdict))
        }
        (_, _, None) => String::new(),
    };
    let gap = if guidance.is_empty() {
        String::new()
    } else {
        " ".repeat(19_usize.saturating_sub(asked.len()))
    };
    let shown = match hazard.verdict {
        Some(verdict) => palette::verdict(asked, verdict),
        None => palette::aside(asked),
    };
    format!("  {label}  {shown}{gap}{guidance}")
}

const fn meaning(hazard: Hazard) -> &'static str {
    match hazard {
        Hazard::FallOver => "over the top",
        Hazard::FallThrough => "through gaps",
        Hazard::Entrapment => "head caught",
        Hazard::Climb => "up, then over",
        Hazard::GiveWay => "comes loose",
    }
}

/// Shortfalls and what is too close to call, of one group.
fn group(
    lines: &mut Vec<String>,
    entry: &JudgedGuard<'_>,
    of_group: &[&Finding<'_>],
    short: &str,
    close: &str,
) {
    let with = |verdict| {
        of_group
            .iter()
            .filter(move |finding| finding.verdict == verdict && finding.counts())
    };
    let mut shortfalls: Vec<_> = with(Verdict::FallsShort).collect();
    // what a danger says already is not said again
    let said = |finding: &Finding<'_>| {
        let dangers = &entry.judged.dangers;
        finding.ruleset.advisory && dangers.iter().any(|seen| seen.item == finding.item)
    };
    shortfalls.retain(|finding| !said(finding));
    shortfalls.sort_by_key(|finding| (finding.rule.urgency, finding.margin));
    if !shortfalls.is_empty() {
        section(lines, short);
    }
    for (index, finding) in shortfalls.iter().enumerate() {
        // one remedy for each thing measured, which does for all that is asked of it
        let mut before = shortfalls[..index].iter();
        let larger = before.any(|other| other.item == finding.item);
        let advice = if larger {
            findings::Advice::SaidAbove
        } else {
            findings::Advice::Say
        };
        lines.extend(findings::shortfall(finding, entry, advice));
    }
    for (verdict, title) in [
        (Verdict::TooClose, close.to_owned()),
        (
            Verdict::NotSettled,
            close.replacen("Too close to call", "Not settled", 1),
        ),
    ] {
        if with(verdict).next().is_some() {
            section(lines, &title);
        }
        for finding in with(verdict) {
            lines.extend(findings::open(finding, &entry.guard));
        }
    }
}

const fn met_title_of(authority: Authority) -> &'static str {
    match authority {
        Authority::Guidance => "Met",
        Authority::Law => "Met of the law",
    }
}

fn met_title(basis: &ReportBasis<'_>) -> &'static str {
    met_title_of(Authority::of(basis.rulesets))
}

fn met(lines: &mut Vec<String>, entry: &JudgedGuard<'_>, of_group: &[&Finding<'_>], title: &str) {
    if let Some(met) = findings::met(of_group) {
        lines.push(String::new());
        lines.push(hanging("  ", &format!("{title}: {met}.")));
    }
    if let Some(items) = findings::met_in_part(of_group) {
        lines.push(hanging(
            "  ",
            &format!("{title}, where it was looked at: {items}."),
        ));
    }
    for remark in findings::met_remarks(of_group, &entry.guard) {
        lines.push(hanging("    ", &format!("{remark}.")));
    }
}

fn guidance(
    lines: &mut Vec<String>,
    entry: &JudgedGuard<'_>,
    basis: &ReportBasis<'_>,
    of_group: &[&Finding<'_>],
) {
    let name = words::guidance_name(basis.rulesets);
    let (short, close) = (
        format!("Falls short of {name} (no law)"),
        format!("Too close to call: {name} (no law)"),
    );
    group(lines, entry, of_group, &short, &close);
    met(lines, entry, of_group, &format!("Met of {name}"));
}

/// What the editions that were in force when it was built asked.
fn of_its_time(lines: &mut Vec<String>, entry: &JudgedGuard<'_>, of_group: &[&Finding<'_>]) {
    group(
        lines,
        entry,
        of_group,
        "Falls short of the rules of its time",
        "Too close to call: the rules of its time",
    );
    met(lines, entry, of_group, "Met of the rules of its time");
}

fn memory(lines: &mut Vec<String>, entry: &JudgedGuard<'_>, of_group: &[&Finding<'_>]) {
    group(
        lines,
        entry,
        of_group,
        "Warnings by rules from memory (verify them; they decide nothing)",
        "Too close to call, by rules from memory (they decide nothing)",
    );
    met(lines, entry, of_group, "Met of the rules from memory");
}

/// What to find out next, each item once.
fn questions(lines: &mut Vec<String>, entry: &JudgedGuard<'_>, detail: Detail) {
    let questions = entry.judged.questions();
    if questions.is_empty() || entry.judged.could_not_judge {
        return;
    }
    section(lines, "What to measure or write down next");
    if detail == Detail::Brief {
        let items: Vec<&str> = questions
            .iter()
            .map(|question| question.item.name())
            .collect();
        let how = "(how: guardrule items NAME)";
        lines.push(hanging("    ", &format!("{} {how}", items.join(", "))));
        return;
    }
    let (first, later) = questions.split_at(questions.len().min(MOST_QUESTIONS));
    for (number, question) in (1..).zip(first) {
        ask(lines, number, question, entry);
    }
    if !later.is_empty() {
        let names: Vec<&str> = later.iter().map(|question| question.item.name()).collect();
        let text = format!("{} (how: guardrule items NAME)", names.join(", "));
        lines.push(hanging("    Then: ", &text));
    }
}

fn ask(lines: &mut Vec<String>, number: usize, question: &Question, entry: &JudgedGuard<'_>) {
    let info = question.item.info();
    let label = format!("{number:>5}. ");
    let indent = " ".repeat(label.len());
    let wait = several(question.findings, "finding waits", "findings wait");
    let special = special_question(question.item, entry);
    let asks = special.as_deref().unwrap_or(info.question);
    lines.push(hanging(
        &label,
        &format!("{}: {asks} ({wait} for it)", info.name),
    ));
    if special.is_none()
        && let Some(step) = info.how.first()
    {
        lines.push(hanging(&indent, step));
    }
    if special.is_none()
        && let Some(example) = info.examples.first()
    {
        lines.push(hanging(&indent, &format!("Write for example: {example}")));
    }
}

/// Where a reading is there and says too little: why.
fn special_question(item: Item, entry: &JudgedGuard<'_>) -> Option<String> {
    let wanted = if item == Item::OpeningsChecked {
        Bearing::OnlySome
    } else {
        Bearing::TooLittle
    };
    let findings = entry.judged.findings.iter();
    findings
        .filter(|finding| finding.item == item || wanted == Bearing::OnlySome)
        .filter(|finding| finding.counts_as() == Verdict::NotMeasured)
        .find_map(|finding| {
            let mut reasons = finding.reasons.iter();
            let reason = reasons.find(|reason| reason.bearing() == wanted)?;
            let says = words::reason(reason, &entry.guard);
            Some(match &finding.limit {
                Some(limit) => format!("{says}; asked: {}", one_line(&words::limit(limit))),
                None => says,
            })
        })
}

/// What holds whichever the open circumstances are.
fn agreed(lines: &mut Vec<String>, entry: &JudgedGuard<'_>) {
    let agreed = words::agreed(&entry.judged);
    if agreed.is_empty() {
        return;
    }
    section(lines, "Whichever it is");
    for text in agreed {
        lines.push(hanging("    - ", &text));
    }
}

/// What keeps the rules from letting it meet, and whom to ask.
fn unclear(lines: &mut Vec<String>, entry: &JudgedGuard<'_>) {
    if entry.judged.unclear.is_empty() || entry.judged.could_not_judge {
        return;
    }
    section(lines, "Rule unclear");
    for unclear in &entry.judged.unclear {
        lines.push(hanging("    - ", &words::why_unclear(unclear)));
    }
}

/// What could not be reached or understood, and what no ruleset covers.
fn in_the_way(lines: &mut Vec<String>, entry: &JudgedGuard<'_>) {
    let mut said: Vec<String> = could_not_look(&entry.guard);
    for finding in &entry.judged.findings {
        let reasons = finding.reasons.iter();
        for reason in reasons.filter(|reason| reason.bearing() == Bearing::InTheWay) {
            let says = words::reason(reason, &entry.guard);
            let text = if matches!(reason, Reason::NotCovered(_)) {
                format!("{}: {says}", one_line(&finding.ruleset.id))
            } else {
                says
            };
            if !said.contains(&text) {
                said.push(text);
            }
        }
    }
    if said.is_empty() {
        return;
    }
    section(lines, "Could not be reached, understood or judged");
    for text in said {
        lines.push(hanging("    - ", &text));
    }
}

/// The guard's own readings that say "could not look" or were not understood.
fn could_not_look(guard: &Guard) -> Vec<String> {
    let observations = guard.observations.iter().enumerate();
    observations
        .filter_map(|(index, observation)| match &observation.reading {
            None => Some(Reason::Unreadable(index)),
            Some(reading) if reading.value == Value::Unknown => Some(Reason::CouldNotLook(index)),
            Some(_) => None,
        })
        .map(|reason| words::reason(&reason, guard))
        .collect()
}

/// Rules that do not apply, in one line, with why.
fn does_not_apply(lines: &mut Vec<String>, entry: &JudgedGuard<'_>) {
    let findings = entry.judged.findings.iter();
    let aside: Vec<&Finding<'_>> = findings
        .filter(|finding| finding.verdict == Verdict::DoesNotApply)
        .collect();
    if aside.is_empty() {
        return;
    }
    let mut items: Vec<&str> = Vec::new();
    for reason in aside.iter().flat_map(|finding| &finding.reasons) {
        let Bearing::Aside(why) = reason.bearing() else {
            continue;
        };
        if !items.contains(&why) {
            items.push(why);
        }
    }
    let count = several(aside.len(), "rule does not", "rules do not");
    let why = if items.is_empty() {
        String::new()
    } else {
        format!(" (by: {})", items.join(", "))
    };
    lines.push(String::new());
    lines.push(hanging("  ", &format!("{count} apply here{why}.")));
}

/// What the person wrote for themselves.
fn own(lines: &mut Vec<String>, guard: &Guard) {
    if guard.own.is_empty() {
        return;
    }
    section(lines, "Your own notes");
    for own in &guard.own {
        let mut text = format!("{}: {}", one_line(&own.name), one_line(&own.written));
        if !own.note.is_empty() {
            text.push_str(&format!(" ({})", one_line(&own.note)));
        }
        lines.push(hanging("    - ", &words::shortened(&text)));
    }
}

fn given(lines: &mut Vec<String>, entry: &JudgedGuard<'_>, basis: &ReportBasis<'_>) {
    let taken = basis.taken(entry);
    let taken: Vec<String> = taken.iter().map(words::assumption).collect();
    if !taken.is_empty() {
        lines.push(String::new());
        lines.push(hanging(
            "  ",
            &format!("Taken as given: {}.", taken.join("; ")),
        ));
    }
}
