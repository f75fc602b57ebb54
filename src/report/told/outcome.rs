//! How the rules and the advice came out of a guard, in one line and hazard by hazard.

use std::collections::BTreeSet;

use crate::items::Hazard;
use crate::items::Verdict;
use crate::judge::Authority;
use crate::judge::Finding;
use crate::judge::HazardVerdict;
use crate::judge::WhenBuilt;
use crate::report::JudgedGuard;
use crate::report::ReportBasis;
use crate::report::matters::AskedBy;
use crate::report::matters::is_open_edge;
use crate::report::one_line;
use crate::report::reader;
use crate::report::words::several;
use crate::rules::Concern;

/// The last words of how a guard comes out whose strength nobody judged.
pub(in crate::report) const NOT_CHECKED: &str = "whether it would hold was not checked";

/// How one hazard comes out; `None` where nothing asks about it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in crate::report) struct HazardTold {
    pub(in crate::report) hazard: Hazard,
    /// By the building rules; `None` as well where none were checked.
    pub(in crate::report) rules: Option<Verdict>,
    pub(in crate::report) advice: Option<Verdict>,
}

/// How many rules came out how: `1 of 7 building rules not met; …`
pub(super) fn comes_out(entry: &JudgedGuard<'_>, basis: &ReportBasis<'_>) -> String {
    if entry.judged.could_not_judge {
        return "none of its rows could be understood".to_owned();
    }
    let authority = Authority::of(basis.rulesets);
    let mut parts = Vec::new();
    if authority == Authority::Law {
        parts.extend(rules_came_out(entry, basis));
    }
    if !entry.judged.notes.is_empty() {
        parts.push("a note tells of a danger, and no reading says whether it is so".to_owned());
    }
    let advice = Tally::of(entry, basis, AskedBy::Advice);
    if advice.short > 0 {
        let points = several(advice.short, "point", "points");
        parts.push(format!("{points} of advice not followed"));
    } else if advice.all() > 0 && advice.met == advice.all() {
        let points = several(advice.met, "point", "points");
        parts.push(format!("meets the {points} of advice"));
    } else if authority == Authority::Guidance && advice.met > 0 {
        let points = several(advice.met, "point", "points");
        parts.push(format!("meets {points} of advice so far"));
    }
    if entry.judged.verdict == Verdict::DoesNotApply {
        parts.push("these rules ask for no railing here; that is no word about danger".to_owned());
    }
    let warnings = Tally::of(entry, basis, AskedBy::Warning);
    if warnings.all() > 0 {
        let rules = several(warnings.all(), "rule", "rules");
        parts.push(format!(
            "{rules} known only from memory {}",
            if warnings.short > 0 {
                "would not be met: ask the local authority"
            } else {
                "decided nothing"
            }
        ));
    }
    if let Some(when) = &entry.judged.when_built
        && !when.rulesets.is_empty()
    {
        parts.push(when_built(when));
    }
    if entry.guard.rows_in_error > 0 {
        let rows = usize::try_from(entry.guard.rows_in_error).unwrap_or(usize::MAX);
        parts.push(format!(
            "{} of it could not be understood",
            several(rows, "row", "rows")
        ));
    }
    if !is_open_edge(&entry.guard) && entry.judged.strength_unchecked {
        parts.push(NOT_CHECKED.to_owned());
    }
    parts.join("; ")
}

/// The subjects whose rules are not finished though the guard meets: files about one
/// subject hold up no other's `meets`, and what they wait for is said beside it.
pub(super) fn unfinished_subjects(
    entry: &JudgedGuard<'_>,
    basis: &ReportBasis<'_>,
) -> Vec<&'static str> {
    if !is_good(entry.judged.verdict) {
        return Vec::new();
    }
    let open = |finding: &&Finding<'_>| {
        AskedBy::of(finding, basis) == AskedBy::Rules
            && finding.takes_part()
            && finding.counts_as().is_undecided()
    };
    let open = entry.judged.findings.iter().filter(open);
    let concerns: BTreeSet<Concern> = open
        .flat_map(|finding| finding.ruleset.concerns.iter().copied())
        .collect();
    let names = concerns.into_iter().map(|concern| match concern {
        Concern::Gaps => "gap",
        Concern::Gates => "gate",
        Concern::Handrails => "handrail",
        Concern::Heights => "height",
        Concern::Slats => "slat",
    });
    names.collect()
}

/// What the rules that decide were read to ask nothing about, of falling over and through,
/// where no other rule does.
pub(super) fn silent_about(entry: &JudgedGuard<'_>, basis: &ReportBasis<'_>) -> Vec<&'static str> {
    let hazards = [
        (Hazard::FallOver, "how high it is"),
        (Hazard::FallThrough, "gaps"),
    ];
    let silent = hazards.into_iter().filter(|(hazard, _)| {
        let mut findings = entry.judged.findings.iter();
        let asked = findings.any(|finding| {
            AskedBy::of(finding, basis) == AskedBy::Rules
                && finding.counts()
                && finding.rule.hazard == *hazard
                && finding.counts_as() != Verdict::DoesNotApply
        });
        let mut silences = entry.judged.silences.iter();
        !asked && silences.any(|silence| silence.hazard == *hazard)
    });
    silent.map(|(_, about)| about).collect()
}

/// `, which ask nothing about gaps`; nothing where they ask.
pub(in crate::report) fn ask_nothing_about(silent: &[&str]) -> String {
    if silent.is_empty() {
        return String::new();
    }
    let about: Vec<String> = silent.iter().map(|&about| about.to_owned()).collect();
    format!(", which ask nothing about {}", reader::listed(&about))
}

/// `the handrail rules are unfinished`
pub(in crate::report) fn are_unfinished(subjects: &[&str]) -> String {
    let subjects: Vec<String> = subjects.iter().map(|&name| name.to_owned()).collect();
    format!("the {} rules are unfinished", reader::listed(&subjects))
}

/// Whether nothing is wrong by the rules that decide.
pub(super) const fn is_good(verdict: Verdict) -> bool {
    match verdict {
        Verdict::Meets | Verdict::DoesNotApply => true,
        Verdict::FallsShort | Verdict::TooClose | Verdict::NotSettled | Verdict::NotMeasured => {
            false
        }
    }
}

fn rules_came_out(entry: &JudgedGuard<'_>, basis: &ReportBasis<'_>) -> Option<String> {
    let open = unfinished_subjects(entry, basis);
    if entry.judged.verdict == Verdict::Meets && !open.is_empty() {
        let tally = Tally::of(entry, basis, AskedBy::Rules);
        let all = several(tally.all(), "building rule", "building rules");
        return Some(format!(
            "meets the building rules on guards, and {}: {} of {all} not finished",
            are_unfinished(&open),
            tally.open + tally.unclear
        ));
    }
    let tally = Tally::of(entry, basis, AskedBy::Rules);
    let all = several(tally.all(), "building rule", "building rules");
    let mut parts = Vec::new();
    for (count, says) in [
        (tally.short, "not met"),
        (tally.close, "too near to tell"),
        (tally.unclear, "unclear"),
        (tally.open, "not finished"),
    ] {
        if count == 0 {
            continue;
        }
        parts.push(if parts.is_empty() && tally.all() > count {
            format!("{count} of {all} {says}")
        } else if parts.is_empty() {
            format!("{all} {says}")
        } else {
            format!("{count} {says}")
        });
    }
    if parts.is_empty() && tally.met > 0 {
        let silent = ask_nothing_about(&silent_about(entry, basis));
        parts.push(format!("meets the {all} checked{silent}"));
    }
    (!parts.is_empty()).then(|| parts.join(", "))
}

/// How it fares by the rules of its time; never a word about danger.
fn when_built(when: &WhenBuilt<'_>) -> String {
    let rulesets = when.rulesets.join(" and ");
    let fares = match when.verdict {
        Verdict::FallsShort => "falls short of the rules of its time",
        Verdict::TooClose => "too near to tell by the rules of its time",
        Verdict::NotSettled => "unclear by the rules of its time",
        Verdict::NotMeasured => "unfinished by the rules of its time",
        Verdict::Meets => {
            "meets what was read of the rules of its time, which says nothing about danger"
        }
        Verdict::DoesNotApply => {
            "asked for by no rule of its time, which says nothing about danger"
        }
    };
    format!("{fares} ({})", one_line(&rulesets))
}

/// How many rules came out how; a rule judged at several openings counts once.
#[derive(Clone, Copy, Debug, Default)]
struct Tally {
    short: usize,
    close: usize,
    unclear: usize,
    open: usize,
    met: usize,
}

impl Tally {
    fn of(entry: &JudgedGuard<'_>, basis: &ReportBasis<'_>, asked_by: AskedBy) -> Tally {
        let mut tally = Tally::default();
        let findings = &entry.judged.findings;
        for of_one_rule in findings.chunk_by(|a, b| std::ptr::eq(a.rule, b.rule)) {
            let of_group = |finding: &&Finding<'_>| {
                AskedBy::of(finding, basis) == asked_by && finding.counts()
            };
            let verdicts = of_one_rule.iter().filter(of_group).map(Finding::counts_as);
            match verdicts.min() {
                Some(Verdict::FallsShort) => tally.short += 1,
                Some(Verdict::TooClose) => tally.close += 1,
                Some(Verdict::NotSettled) => tally.unclear += 1,
                Some(Verdict::NotMeasured) => tally.open += 1,
                Some(Verdict::Meets) => tally.met += 1,
                Some(Verdict::DoesNotApply) | None => {}
            }
        }
        tally
    }

    const fn all(self) -> usize {
        self.short + self.close + self.unclear + self.open + self.met
    }
}

/// The five hazards as one line, those that come out alike together.
pub(super) fn hazards(entry: &JudgedGuard<'_>, basis: &ReportBasis<'_>) -> String {
    let none = is_open_edge(&entry.guard);
    let authority = Authority::of(basis.rulesets);
    let mut together: Vec<(&str, Vec<&str>)> = Vec::new();
    for of in &entry.judged.hazards {
        let comes_out = hazard(of, authority, none);
        let name = reader::hazard(of.hazard);
        match together.iter_mut().find(|(known, _)| *known == comes_out) {
            Some((_, names)) => names.push(name),
            None => together.push((comes_out, vec![name])),
        }
    }
    let parts: Vec<String> = together
        .iter()
        .map(|(comes_out, names)| format!("{}: {comes_out}", names.join(", ")))
        .collect();
    // no line begins with the dot
    parts.join("\u{a0}· ")
}

fn hazard(of: &HazardVerdict, authority: Authority, open_edge: bool) -> &'static str {
    if open_edge {
        return "open edge";
    }
    let (rules, advice) = match authority {
        Authority::Law => (of.verdict, of.guidance),
        Authority::Guidance => (None, of.verdict),
    };
    match (rules, advice) {
        (Some(Verdict::FallsShort), _) => "rules",
        (_, Some(Verdict::FallsShort)) => "advice",
        (Some(verdict), _) => reader::verdict(verdict),
        (None, Some(verdict)) => reader::verdict(verdict),
        (None, None) => "no rule asks",
    }
}

/// The five hazards one by one, what decides and what advises apart.
pub(super) fn each_hazard(entry: &JudgedGuard<'_>, basis: &ReportBasis<'_>) -> Vec<HazardTold> {
    let authority = Authority::of(basis.rulesets);
    let of = |of: &HazardVerdict| match authority {
        Authority::Law => HazardTold {
            hazard: of.hazard,
            rules: of.verdict,
            advice: of.guidance,
        },
        Authority::Guidance => HazardTold {
            hazard: of.hazard,
            rules: None,
            advice: of.verdict,
        },
    };
    entry.judged.hazards.iter().map(of).collect()
}
