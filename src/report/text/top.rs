//! The first screen: how many came out how, what to do tonight, what is wrong and
//! what to do first.

use std::collections::BTreeMap;

use crate::judge::Authority;
use crate::report::ReportBasis;
use crate::report::Summary;
use crate::report::one_line;
use crate::report::palette;
use crate::report::reader;
use crate::report::text::told::GuardTold;
use crate::report::text::told::NOT_CHECKED;
use crate::report::text::told::ReportPart;
use crate::report::words;
use crate::report::words::several;
use crate::report::wrap::Lines;

/// Above this many, the list of what is wrong goes by unit.
const MANY: usize = 12;

/// The head and the sentence of counts.
pub(super) fn head(
    lines: &mut Lines,
    basis: &ReportBasis<'_>,
    told: &[GuardTold],
    summary: Summary,
) {
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
    lines.spread("", "", &parts.join(" · "));
    let authority = Authority::of(basis.rulesets);
    if told.is_empty() {
        let none =
            "No railing could be read from the survey, so nothing was judged; why is said apart.";
        lines.spread("", "", none);
        return;
    }
    lines.spread("", "", &counts(basis, told, summary, authority));
    for ruleset in basis.rulesets {
        for unread in &ruleset.unread {
            let says = format!(
                "NOT READ: {} ({}): by these rules no railing meets.",
                unread.says(),
                ruleset.id
            );
            lines.spread("", "   ", &one_line(&says));
        }
    }
    if authority == Authority::Guidance {
        let text = "NO BUILDING RULES WERE CHECKED, only advice. Rules that hold where you are may ask for \
more. Find them: guardrule rules find \"flat, your country or state\".";
        lines.spread("", "", text);
    }
}

/// One sentence: building rules and advice apart, units not entered in it.
fn counts(
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
    say(
        summary.not_settled,
        "for it a rule is unclear",
        "for them a rule is unclear",
    );
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
    say(
        summary.meets,
        &format!("meets {met}{hold}"),
        &format!("meet {met}{hold}"),
    );
    say(
        summary.does_not_apply,
        "needs no railing by these rules",
        "need no railing by these rules",
    );
    say(
        summary.could_not_judge,
        "could not be understood",
        "could not be understood",
    );
    let all = several(told.len(), "railing", "railings");
    let mut text = match (told, parts.as_slice()) {
        ([one], [only]) => format!("{}: {}", one.name, only.trim_start_matches("1 ")),
        (_, parts) => format!("{all}: {}", parts.join(", ")),
    };
    let short = told
        .iter()
        .filter(|guard| !guard.by_advice.is_empty())
        .count();
    if authority == Authority::Law && short > 0 {
        let who = match (short == told.len(), short) {
            (true, 1) => "it falls short".to_owned(),
            (true, 2) => "both fall short".to_owned(),
            (true, all) => format!("all {all} fall short"),
            (false, 1) => "1 falls short".to_owned(),
            (false, some) => format!("{some} fall short"),
        };
        text.push_str(&format!("; {who} of {}", advice(basis, told)));
    }
    text.push('.');
    if let Some(units) = units_not_entered(told) {
        text.push_str(&format!(" {units}"));
    }
    if summary.reading_alone_meets > 0 {
        text.push_str(&format!(
            " By the readings alone {} of the undecided would meet.",
            summary.reading_alone_meets
        ));
    }
    text
}

/// `the advice for a child of 14 months`
fn advice(basis: &ReportBasis<'_>, told: &[GuardTold]) -> String {
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

/// What to do tonight, the act first; one act for several guards is said once.
pub(super) fn tonight(lines: &mut Lines, told: &[GuardTold]) {
    /// An act with what it does, and the guards that it is for with what was seen.
    type Act<'a> = (&'static str, &'static str, Vec<(&'a str, &'a str)>);
    let mut acts: Vec<Act<'_>> = Vec::new();
    for guard in told {
        for act in &guard.tonight {
            let known = acts
                .iter_mut()
                .find(|(call, does, _)| (*call, *does) == (act.call, act.does));
            let one = (guard.name.as_str(), act.why.as_str());
            match known {
                Some((_, _, guards)) => guards.push(one),
                None => acts.push((act.call, act.does, vec![one])),
            }
        }
    }
    if acts.is_empty() {
        return;
    }
    acts.sort_by_key(|(call, _, _)| call.is_empty());
    lines.gap();
    lines.push(palette::danger("TONIGHT"));
    for (call, does, guards) in acts {
        let names: Vec<String> = guards.iter().map(|(name, _)| (*name).to_owned()).collect();
        let names = reader::listed(&names);
        let text = match (call, guards.as_slice()) {
            ("", _) => format!("{names}: {does}"),
            (call, [(_, why)]) => format!("{names}: {call}. {why} {does}"),
            (call, several) => {
                let whys: Vec<String> = several
                    .iter()
                    .map(|(name, why)| format!("{name}: {why}"))
                    .collect();
                format!("{names}: {call}. {does} {}", whys.join(" "))
            }
        };
        lines.spread("  ", "     ", &text);
    }
}

/// What is wrong and what to do first, a paragraph for each block; then what is
/// unfinished, then what meets, by name.
pub(super) fn wrong(lines: &mut Lines, told: &[GuardTold], groups: &[Vec<usize>]) {
    if told.len() < 2 {
        return;
    }
    if !groups.is_empty() {
        lines.gap();
        lines.push(palette::heading("WHAT IS WRONG, AND WHAT TO DO FIRST"));
    }
    let by_unit = told.len() > MANY;
    let place = |index: &usize| {
        let guard = &told[*index];
        (guard.building.as_str(), guard.unit.as_str())
    };
    let mut places: Vec<(&str, &str)> = Vec::new();
    for place in groups.iter().flatten().map(place) {
        if by_unit && !places.contains(&place) {
            places.push(place);
        }
    }
    if !by_unit {
        places.push(("", ""));
    }
    for here in places {
        // a heading over one railing alone would say its name twice
        let of_place = groups
            .iter()
            .flatten()
            .filter(|index| place(index) == here)
            .count();
        let headed = by_unit && of_place > 1 && here != ("", "");
        if headed {
            let (building, unit) = here;
            let parts: Vec<&str> = [building, unit]
                .into_iter()
                .filter(|p| !p.is_empty())
                .collect();
            lines.spread("", "  ", &parts.join(", "));
        }
        for (number, group) in (1..).zip(groups) {
            let guards: Vec<&GuardTold> = group
                .iter()
                .filter(|index| !by_unit || place(index) == here)
                .map(|index| &told[*index])
                .collect();
            if !guards.is_empty() {
                one(lines, number, &guards, headed);
            }
        }
    }
    let names = |part| -> Vec<String> {
        let guards = told.iter().filter(|guard| guard.part == part);
        guards.map(|guard| guard.name.clone()).collect()
    };
    let unfinished = names(ReportPart::Unfinished);
    if !unfinished.is_empty() {
        lines.spread(
            "  ",
            "     ",
            &format!("Unfinished: {}.", reader::listed(&unfinished)),
        );
    }
    let good = names(ReportPart::Good);
    if !good.is_empty() {
        lines.spread(
            "  ",
            "     ",
            &format!("Nothing wrong found: {}.", reader::listed(&good)),
        );
    }
}

fn one(lines: &mut Lines, number: usize, guards: &[&GuardTold], headed: bool) {
    let Some(guard) = guards.first() else { return };
    let names: Vec<String> = guards
        .iter()
        .map(|guard| if headed { &guard.alone } else { &guard.name })
        .cloned()
        .collect();
    let mut text = format!("{number} {}.", reader::listed(&names));
    if let Some(act) = guard.tonight.iter().find(|act| !act.call.is_empty()) {
        text.push_str(&format!(" {}.", act.call));
    }
    for (who, faults) in [
        ("Rules", &guard.by_rules),
        ("Advice", &guard.by_advice),
        ("Too near to tell", &guard.near),
    ] {
        if !faults.is_empty() {
            text.push_str(&format!(" {who}: {}.", faults.join(", ")));
        }
    }
    if !guard.first.is_empty() {
        text.push_str(&format!(" First: {}.", guard.first));
    }
    lines.spread("  ", "     ", &text);
}
