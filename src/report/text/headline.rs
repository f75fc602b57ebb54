//! A guard's headline: the verdict by law, the guidance beside it.

use crate::items::GuardWord;
use crate::items::Item;
use crate::items::Verdict;
use crate::judge::AskedWhenBuilt;
use crate::judge::Assumption;
use crate::judge::Authority;
use crate::judge::Finding;
use crate::judge::MemoryRules;
use crate::judge::WhenBuilt;
use crate::report::JudgedGuard;
use crate::report::ReportBasis;
use crate::report::one_line;
use crate::report::text::rank::says;
use crate::report::words;
use crate::report::words::several;
use crate::rules::Asked;
use crate::rules::Ruleset;
use crate::rules::Status;

/// What part of the report a finding belongs to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum FindingGroup {
    /// It decides: law, or guidance where no law was chosen.
    Decides,
    /// Guidance beside the law.
    Guidance,
    /// From memory: it only warns.
    Memory,
    /// By another edition, which was in force when it was built.
    OfItsTime,
}

impl FindingGroup {
    pub(super) fn of(finding: &Finding<'_>, basis: &ReportBasis<'_>) -> FindingGroup {
        let memory = finding.rule.status == Status::Memory;
        if finding.binding {
            FindingGroup::Decides
        } else if finding.ruleset.asked == Asked::OfItsTime {
            FindingGroup::OfItsTime
        } else if memory && basis.options.memory == MemoryRules::Warn {
            FindingGroup::Memory
        } else {
            FindingGroup::Guidance
        }
    }
}

/// How many rules of a group came out how; a rule judged at several openings
/// counts once, by its worst.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) struct Tally {
    short: usize,
    close: usize,
    unclear: usize,
    open: usize,
    met: usize,
}

impl Tally {
    pub(super) fn of(
        entry: &JudgedGuard<'_>,
        basis: &ReportBasis<'_>,
        group: FindingGroup,
    ) -> Tally {
        let mut tally = Tally::default();
        let findings = &entry.judged.findings;
        for of_one_rule in findings.chunk_by(|a, b| std::ptr::eq(a.rule, b.rule)) {
            let of_group = |finding: &&Finding<'_>| {
                FindingGroup::of(finding, basis) == group && finding.counts()
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

    /// The worst there is of these rules.
    const fn worst(self) -> Option<Verdict> {
        if self.short > 0 {
            Some(Verdict::FallsShort)
        } else if self.close > 0 {
            Some(Verdict::TooClose)
        } else if self.unclear > 0 {
            Some(Verdict::NotSettled)
        } else if self.open > 0 {
            Some(Verdict::NotMeasured)
        } else if self.met > 0 {
            Some(Verdict::Meets)
        } else {
            None
        }
    }
}

/// What the rules are called, one and many.
#[derive(Clone, Copy)]
struct Noun {
    one: &'static str,
    many: &'static str,
}

const LAW: Noun = Noun {
    one: "rule of law",
    many: "rules of law",
};

fn guidance_noun(basis: &ReportBasis<'_>) -> Noun {
    if words::guidance_name(basis.rulesets) == "child guidance" {
        Noun {
            one: "piece of child guidance",
            many: "pieces of child guidance",
        }
    } else {
        Noun {
            one: "piece of guidance",
            many: "pieces of guidance",
        }
    }
}

/// The headline, without a full stop.
pub(super) fn headline(entry: &JudgedGuard<'_>, basis: &ReportBasis<'_>) -> String {
    let guard = &entry.guard;
    let mut parts: Vec<String> = words::dangers(&entry.judged).into_iter().collect();
    let of_danger = |item| entry.judged.dangers.iter().any(|seen| seen.item == item);
    if says(guard, GuardWord::None) && !of_danger(Item::Guard) {
        parts.push("there is no guard here".to_owned());
    }
    if entry.judged.could_not_judge {
        parts.push("could not be judged: none of its rows could be understood".to_owned());
        return parts.join("; ");
    }
    let decides = Tally::of(entry, basis, FindingGroup::Decides);
    match Authority::of(basis.rulesets) {
        Authority::Guidance => {
            parts.push("guidance only; no law was checked".to_owned());
            parts.push(verdict_words(entry, basis, decides, guidance_noun(basis)));
        }
        Authority::Law => {
            parts.push(verdict_words(entry, basis, decides, LAW));
            let guidance = Tally::of(entry, basis, FindingGroup::Guidance);
            parts.extend(beside(guidance, guidance_noun(basis)));
        }
    }
    parts.extend(from_memory(Tally::of(entry, basis, FindingGroup::Memory)));
    parts.extend(strength(entry).map(str::to_owned));
    match &entry.judged.when_built {
        Some(when) if !when.rulesets.is_empty() => parts.push(when_built(when)),
        Some(_) | None => parts.extend(unknown_then(entry, basis)),
    }
    if guard.rows_in_error > 0 {
        let rows = usize::try_from(guard.rows_in_error).unwrap_or(usize::MAX);
        parts.push(format!(
            "{} of it could not be understood",
            several(rows, "row", "rows")
        ));
    }
    parts.join("; ")
}

/// What a "meets" beside it does not cover: rules that apply, and that nobody read.
fn from_memory(tally: Tally) -> Option<String> {
    if tally.all() == 0 {
        return None;
    }
    let rules = several(
        tally.all(),
        "rule from memory applies and only warns",
        "rules from memory apply and only warn",
    );
    let parts = [
        (tally.short, "not met"),
        (tally.close, "too close to call"),
        (tally.unclear, "not settled"),
        (tally.open, "not measured"),
    ];
    let parts: Vec<String> = parts
        .iter()
        .filter(|(count, _)| *count > 0)
        .map(|(count, what)| format!("{count} {what}"))
        .collect();
    let rest = if parts.is_empty() {
        "met".to_owned()
    } else {
        parts.join(", ")
    };
    Some(format!("{rules}: {rest}"))
}

/// Where a rule states loads and nothing falls short by them: that this is no
/// word about strength.
fn strength(entry: &JudgedGuard<'_>) -> Option<&'static str> {
    let indicative = entry.judged.findings.iter().filter(|f| f.is_indicative());
    let mut open = indicative.map(|finding| finding.verdict).peekable();
    open.peek()?;
    let worst = open
        .filter(|verdict| *verdict != Verdict::DoesNotApply)
        .min()?;
    (worst != Verdict::FallsShort).then_some("strength not judged")
}

/// Where its time was asked for and no rules of it are here: that nothing is said of it.
fn unknown_then(entry: &JudgedGuard<'_>, basis: &ReportBasis<'_>) -> Option<String> {
    if basis.options.when_built == AskedWhenBuilt::NotAsked {
        return None;
    }
    basis.taken(entry).into_iter().find_map(|taken| {
        let Assumption::NoRulesetCovers(years) = taken else {
            return None;
        };
        Some(format!(
            "no ruleset here holds the rules of its time ({years}), so whether it was legal when built \
is not told"
        ))
    })
}

/// How it fares by the rules of its time; never a word about danger.
fn when_built(when: &WhenBuilt<'_>) -> String {
    let rulesets = when.rulesets.join(" and ");
    let fares = match when.verdict {
        Verdict::FallsShort => "falls short of the rules of its time",
        Verdict::TooClose => "is too close to call by the rules of its time",
        Verdict::NotSettled => "is not settled by the rules of its time",
        Verdict::NotMeasured => "is not measured for the rules of its time",
        Verdict::Meets => {
            "meets what was read of the rules of its time, which says nothing about danger"
        }
        Verdict::DoesNotApply => {
            "was asked for by no rule of its time, which says nothing about danger"
        }
    };
    format!("{fares} ({})", one_line(&rulesets))
}

fn verdict_words(
    entry: &JudgedGuard<'_>,
    basis: &ReportBasis<'_>,
    tally: Tally,
    noun: Noun,
) -> String {
    let all = several(tally.all(), noun.one, noun.many);
    let extra = |count: usize, what: &str| {
        if count > 0 {
            format!("; {count} {what}")
        } else {
            String::new()
        }
    };
    match entry.judged.verdict {
        Verdict::FallsShort if tally.short == 0 && !entry.judged.agreed.is_empty() => {
            "falls short, whichever the open circumstances are".to_owned()
        }
        Verdict::FallsShort if tally.short == 0 => "falls short, whatever the rules say".to_owned(),
        Verdict::FallsShort => format!(
            "falls short of {}the {all} checked{}{}{}",
            part(tally.short, tally.all()),
            extra(tally.close, "too close to call"),
            extra(tally.unclear, "not settled"),
            extra(tally.open, "not measured"),
        ),
        Verdict::TooClose => format!(
            "too close to call on {}the {all} checked{}{}",
            part(tally.close, tally.all()),
            extra(tally.unclear, "not settled"),
            extra(tally.open, "not measured"),
        ),
        Verdict::NotSettled if tally.unclear > 0 => format!(
            "not settled: {}the {all} unclear{}{}",
            part(tally.unclear, tally.all()),
            extra(tally.open, "not measured"),
            extra(tally.met, "met"),
        ),
        Verdict::NotSettled if tally.met > 0 => {
            format!(
                "not settled; meets the {} checked",
                several(tally.met, noun.one, noun.many)
            )
        }
        Verdict::NotSettled => format!("not settled: no {} could decide", noun.one),
        Verdict::NotMeasured if tally.open > 0 && tally.met > 0 => format!(
            "not measured: {} of {all} open; meets the other {}",
            tally.open, tally.met
        ),
        Verdict::NotMeasured if tally.open > 0 => {
            format!("not measured: none of {all} could be decided")
        }
        Verdict::NotMeasured if tally.met > 0 => {
            format!("not measured; what could be understood meets {all}")
        }
        Verdict::NotMeasured => format!("not measured: no {} could decide", noun.one),
        Verdict::Meets => format!("meets the {all} checked"),
        Verdict::DoesNotApply => no_guard_asked(entry, basis),
    }
}

/// `2 of `, unless it is all there is of one.
fn part(count: usize, all: usize) -> String {
    if all == 1 {
        String::new()
    } else {
        format!("{count} of ")
    }
}

fn no_guard_asked(entry: &JudgedGuard<'_>, basis: &ReportBasis<'_>) -> String {
    let of = |ruleset: &Ruleset| {
        let findings = entry.judged.findings.iter();
        let mut binding = findings.filter(|finding| finding.binding);
        binding.any(|finding| std::ptr::eq(finding.ruleset, ruleset))
    };
    let count = basis.rulesets.iter().filter(|ruleset| of(ruleset)).count();
    let who = if count > 1 {
        "these rulesets ask"
    } else {
        "this ruleset asks"
    };
    format!("{who} for no guard here; that is no word about danger")
}

/// The guidance beside the law.
fn beside(tally: Tally, noun: Noun) -> Option<String> {
    let count = |count| several(count, noun.one, noun.many);
    Some(match tally.worst()? {
        Verdict::FallsShort => format!("falls short of {}", count(tally.short)),
        Verdict::TooClose => format!("too close to call on {}", count(tally.close)),
        Verdict::NotSettled => format!("{} not settled", count(tally.unclear)),
        Verdict::NotMeasured => format!("{} not measured", count(tally.open)),
        Verdict::Meets => format!("meets the {}", count(tally.met)),
        Verdict::DoesNotApply => return None,
    })
}
