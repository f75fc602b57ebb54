//! How many guards came out how, in a sentence.

use std::collections::BTreeMap;
use std::collections::BTreeSet;

use crate::items::Verdict;
use crate::judge::Authority;
use crate::report::Detail;
use crate::report::ReportBasis;
use crate::report::Summary;
use crate::report::one_line;
use crate::report::reader;
use crate::report::told::GuardTold;
use crate::report::told::outcome::NOT_CHECKED;
use crate::report::told::outcome::are_unfinished;
use crate::report::told::outcome::ask_nothing_about;
use crate::report::words;
use crate::report::words::several;

/// Property, days, people and the day of the report.
pub(in crate::report) fn when_and_by(basis: &ReportBasis<'_>) -> String {
    let facts = basis.survey;
    let mut parts = Vec::new();
    parts.extend(
        facts
            .property
            .as_deref()
            .map(|name| words::shortened(&one_line(name))),
    );
    let list = |several: &[String]| {
        let each: Vec<_> = several.iter().map(|text| one_line(text)).collect();
        words::shortened(&each.join("; "))
    };
    parts.push(match (facts.dates.as_slice(), facts.by.as_slice()) {
        ([], []) => "day of measuring not written down".to_owned(),
        ([], by) => format!("measured by {}", list(by)),
        (dates, []) => format!("measured {}", list(dates)),
        (dates, by) => format!("measured {} by {}", list(dates), list(by)),
    });
    parts.push(format!("report of {}", basis.today));
    parts.join(" · ")
}

/// One sentence: building rules and advice apart, units not entered in it.
pub(in crate::report) fn counts(
    basis: &ReportBasis<'_>,
    told: &[GuardTold],
    summary: Summary,
    authority: Authority,
) -> String {
    let asked = match authority {
        Authority::Law => "the building rules".to_owned(),
        Authority::Guidance => advice(basis, told),
    };

    let mut parts: Vec<String> = Vec::new();
    let mut say = |count: u64, one: &str, many: &str| {
        if count > 0 {
            parts.push(format!("{count} {}", if count == 1 { one } else { many }));
        }
    };
    say(
        summary.falls_short,
        &format!("falls short of {asked}"),
        &format!("fall short of {asked}"),
    );
    say(
        summary.too_close,
        "is too near to tell",
        "are too near to tell",
    );
    if summary.not_settled > 0 {
        parts.push(match told {
            [_] => "for it a rule is unclear".to_owned(),
            _ => format!("for {} a rule is unclear", summary.not_settled),
        });
    }
    let mut say = |count: u64, one: &str, many: &str| {
        if count > 0 {
            parts.push(format!("{count} {}", if count == 1 { one } else { many }));
        }
    };
    say(summary.not_measured, "is unfinished", "are unfinished");
    let open = told
        .iter()
        .any(|guard| guard.comes_out.ends_with(NOT_CHECKED));
    let hold = if open {
        " (whether it would hold was not checked)"
    } else {
        ""
    };
    let met = if summary.falls_short > 0 {
        "it"
    } else {
        &asked
    };
    let met = if met == "it" && authority == Authority::Law {
        "them"
    } else {
        met
    };
    let open = |verdict: Verdict| besides(told, verdict);
    let on_guards = if open(Verdict::Meets).is_some() && met == asked {
        " on guards"
    } else {
        ""
    };
    let besides_met = open(Verdict::Meets).unwrap_or_default();
    let drawn = as_drawn(told);
    let silent = silent(told);
    say(
        summary.meets,
        &format!("meets {met}{on_guards}{silent}{drawn}{hold}{besides_met}"),
        &format!("meet {met}{on_guards}{silent}{drawn}{hold}{besides_met}"),
    );
    let besides_none = open(Verdict::DoesNotApply).unwrap_or_default();
    say(
        summary.does_not_apply,
        &format!("needs no railing by these rules{besides_none}"),
        &format!("need no railing by these rules{besides_none}"),
    );
    say(
        summary.could_not_judge,
        "could not be understood",
        "could not be understood",
    );
    let all = several(told.len(), "railing", "railings");
    let mut text = match (told, parts.as_slice()) {
        ([one], [only]) => {
            let only = only.trim_start_matches("1 ").trim_start_matches("is ");
            format!("{}: {only}", one.name)
        }
        (_, parts) => format!("{all}: {}", parts.join(", ")),
    };
    let short = told
        .iter()
        .filter(|guard| !guard.by_advice.is_empty())
        .count();
    if authority == Authority::Law && short > 0 {
        let who = match (short == told.len(), short) {
            // one railing that falls short of both
            (true, 1) if summary.falls_short == 1 => " and".to_owned(),
            (true, 1) => "; it falls short".to_owned(),
            (true, 2) => "; both fall short".to_owned(),
            (true, all) => format!("; all {all} fall short"),
            (false, 1) => "; 1 falls short".to_owned(),
            (false, some) => format!("; {some} fall short"),
        };
        text.push_str(&format!("{who} of {}", advice(basis, told)));
    }
    text.push('.');
    if let Some(units) = units_not_entered(told) {
        text.push_str(&format!(" {units}"));
    }
    if basis.detail == Detail::Full && summary.reading_alone_meets > 0 {
        text.push_str(&format!(
            " By the readings alone {} of the undecided would meet.",
            summary.reading_alone_meets
        ));
    }
    text
}

/// `, which ask nothing about gaps`, of what meets.
fn silent(told: &[GuardTold]) -> String {
    let met = || told.iter().filter(|guard| guard.verdict == Verdict::Meets);
    let silent = || met().filter(|guard| !guard.silent_about.is_empty());
    let about: BTreeSet<&str> = silent()
        .flat_map(|guard| guard.silent_about.iter().copied())
        .collect();
    let says = ask_nothing_about(&about.into_iter().collect::<Vec<_>>());
    match (silent().count(), met().count()) {
        (0, _) => says,
        (some, all) if some == all => says,
        (some, _) => format!("{says} at {some} of them"),
    }
}

/// That what meets was drawn, and not measured.
fn as_drawn(told: &[GuardTold]) -> String {
    let met = || told.iter().filter(|guard| guard.verdict == Verdict::Meets);
    match (met().filter(|guard| guard.drawn).count(), met().count()) {
        (0, _) => String::new(),
        (drawn, all) if drawn == all => " as drawn".to_owned(),
        (drawn, _) => format!(", {drawn} of them as drawn"),
    }
}

/// `; the handrail rules are unfinished`, where some of those with this verdict meet the
/// rules without them.
fn besides(told: &[GuardTold], verdict: Verdict) -> Option<String> {
    let of_it = told.iter().filter(|guard| guard.verdict == verdict);
    let open: Vec<&GuardTold> = of_it
        .clone()
        .filter(|guard| !guard.open_subjects.is_empty())
        .collect();
    let subjects: BTreeSet<&str> = open
        .iter()
        .flat_map(|guard| guard.open_subjects.iter().copied())
        .collect();
    let says = are_unfinished(&subjects.into_iter().collect::<Vec<_>>());
    match (open.len(), of_it.count()) {
        (0, _) => None,
        (some, all) if some == all => Some(format!("; {says}")),
        (some, _) => Some(format!("; of {some} of them {says}")),
    }
}

/// `the advice for a child of 14 months`
pub(in crate::report) fn advice(basis: &ReportBasis<'_>, told: &[GuardTold]) -> String {
    let mut children = told.iter().map(|guard| &guard.children);
    let first = children.next().filter(|first| !first.is_empty());
    match first {
        Some(first) if children.all(|other| other == first) => {
            let child = if first.len() == 1 {
                "a child"
            } else {
                "children"
            };
            format!("the advice for {child} of {}", reader::listed(first))
        }
        _ if words::guidance_name(basis.rulesets) == "child guidance" => {
            "the advice for small children".to_owned()
        }
        _ => "the advice".to_owned(),
    }
}

/// `3 of 60 flats not entered (tenant refused 2, no answer 1).`
fn units_not_entered(told: &[GuardTold]) -> Option<String> {
    let mut units: BTreeMap<(&str, &str), Option<&str>> = BTreeMap::new();
    for guard in told.iter().filter(|guard| !guard.unit.is_empty()) {
        let why = guard.not_entered.as_deref();
        let unit = units.entry((&guard.building, &guard.unit)).or_insert(why);
        *unit = unit.and(why);
    }
    let closed: Vec<((&str, &str), &str)> = units
        .iter()
        .filter_map(|(unit, why)| Some((*unit, (*why)?)))
        .collect();
    if closed.is_empty() {
        return None;
    }
    let all = several(units.len(), "flat", "flats");
    if closed.len() <= 3 {
        let named: Vec<String> = closed
            .iter()
            .map(|((_, unit), why)| match *why {
                "" => (*unit).to_owned(),
                why => format!("{unit} ({why})"),
            })
            .collect();
        let was = if closed.len() == 1 { "was" } else { "were" };
        return Some(format!(
            "{} of {all} {was} not entered: {}.",
            closed.len(),
            named.join(", ")
        ));
    }
    let mut reasons: BTreeMap<&str, usize> = BTreeMap::new();
    for (_, why) in &closed {
        let why = if why.is_empty() {
            "no reason written"
        } else {
            why
        };
        *reasons.entry(why).or_default() += 1;
    }
    let mut reasons: Vec<(usize, &str)> = reasons.into_iter().map(|(why, n)| (n, why)).collect();
    reasons.sort_by_key(|(count, why)| (std::cmp::Reverse(*count), *why));
    let reasons: Vec<String> = reasons
        .iter()
        .map(|(count, why)| format!("{why} {count}"))
        .collect();
    Some(format!(
        "{} of {all} not entered ({}).",
        closed.len(),
        reasons.join(", ")
    ))
}
