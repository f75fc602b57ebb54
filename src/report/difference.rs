//! Two rulesets beside each other: which rules differ, in words and numbers.

use std::io;
use std::io::Write;

use crate::report::one_line;
use crate::report::palette;
use crate::report::rulesets::asks;
use crate::report::rulesets::place;
use crate::report::wrap::TextPage;
use crate::report::wrap::hanging_in;
use crate::rules::Bounds;
use crate::rules::Demand;
use crate::rules::Limit;
use crate::rules::Rule;
use crate::rules::Ruleset;

/// What the second ruleset asks otherwise than the first, rule by rule. Rules
/// of one id are put beside each other.
///
/// # Errors
/// Those of `out`.
pub fn difference(out: &mut TextPage<'_>, first: &Ruleset, second: &Ruleset) -> io::Result<()> {
    let names = [one_line(&first.id), one_line(&second.id)];
    let head = format!("{} beside {}", names[0], names[1]);
    writeln!(out, "{}", palette::heading(&head))?;
    let mut same = Vec::new();
    for rule in &first.rules {
        match second.rules.iter().find(|other| other.id == rule.id) {
            None => rule_of_one(out, rule, &names[0])?,
            Some(other) if asks(rule) == asks(other) && place(rule) == place(other) => {
                same.push(rule.id.as_str());
            }
            Some(other) => rule_of_both(out, [rule, other], [&names[0], &names[1]])?,
        }
    }
    let known = |rule: &&Rule| first.rules.iter().any(|other| other.id == rule.id);
    for rule in second.rules.iter().filter(|rule| !known(rule)) {
        rule_of_one(out, rule, &names[1])?;
    }
    for amendment in &second.amendments {
        if let Some(less) = amendment.says_less() {
            let says = format!("{}, by {}: {less}", amendment.rule, amendment.file);
            let says = one_line(&says);
            writeln!(out, "\n{}", hanging_in(out.width(), "", &says))?;
        }
    }
    let same = match same.as_slice() {
        [] => "none".to_owned(),
        ids => one_line(&ids.join(", ")).into_owned(),
    };
    writeln!(
        out,
        "\n{}",
        hanging_in(out.width(), "The same in both: ", &same)
    )?;
    let hint = "Rules are paired by their ids; a rule that stands in one alone may be asked by \
the other under another id.";
    writeln!(out, "{}", hanging_in(out.width(), "", hint))
}

fn rule_of_one(out: &mut TextPage<'_>, rule: &Rule, name: &str) -> io::Result<()> {
    let id = one_line(&rule.id);
    writeln!(out, "\n{}  (only in {name})", palette::heading(&id))?;
    line(out, "Asks: ", &asks(rule))?;
    line(out, "Where: ", &place(rule))
}

fn rule_of_both(out: &mut TextPage<'_>, rules: [&Rule; 2], names: [&str; 2]) -> io::Result<()> {
    let id = one_line(&rules[0].id);
    writeln!(out, "\n{}", palette::heading(&id))?;
    if asks(rules[0]) == asks(rules[1]) {
        line(out, "Both ask: ", &asks(rules[0]))?;
    } else {
        for (rule, name) in rules.into_iter().zip(names) {
            line(out, &format!("{name}: "), &asks(rule))?;
        }
    }
    line(out, "So the second: ", &limit_changes(rules).join("; "))?;
    if place(rules[0]) != place(rules[1]) {
        for (rule, name) in rules.into_iter().zip(names) {
            line(out, &format!("Where, {name}: "), &place(rule))?;
        }
    }
    Ok(())
}

fn line(out: &mut TextPage<'_>, label: &str, text: &str) -> io::Result<()> {
    if text.is_empty() {
        return Ok(());
    }
    writeln!(
        out,
        "{}",
        hanging_in(out.width(), &format!("  {label}"), text)
    )
}

/// `36 in becomes 42 in: 6 in more`, for each kind of limit that both rules
/// state; nothing where they look at different items.
fn limit_changes(rules: [&Rule; 2]) -> Vec<String> {
    let [first, second] = rules.map(|rule| {
        rule.checks
            .iter()
            .flat_map(|check| limits(&check.demand))
            .collect::<Vec<_>>()
    });
    let subjects = rules.map(|rule| rule.checks.iter().map(|c| c.subject).collect::<Vec<_>>());
    if subjects[0] != subjects[1] {
        return Vec::new();
    }
    let pair = |(kind, from): (&'static str, &Limit)| {
        let (_, to) = second.iter().find(|(other, _)| *other == kind)?;
        limit_change(from, to)
    };
    first.into_iter().filter_map(pair).collect()
}

fn limit_change(from: &Limit, to: &Limit) -> Option<String> {
    let (less, more) = (from.length.min(to.length), from.length.max(to.length));
    if less == more {
        return None;
    }
    let way = if to.length == more { "more" } else { "less" };
    Some(format!(
        "{} becomes {}: {} {way}",
        one_line(&from.written),
        one_line(&to.written),
        (more - less).readable(to.unit)
    ))
}

/// The lengths that a demand states, each with what kind of limit it is.
fn limits(demand: &Demand) -> Vec<(&'static str, &Limit)> {
    match demand {
        Demand::Count(_) | Demand::Load(_) | Demand::VOpening(_) | Demand::Words { .. } => {
            Vec::new()
        }
        Demand::Foothold(demand) => {
            let zone = demand.none_within.iter();
            let mut all: Vec<_> = zone
                .flat_map(|zone| [("from", &zone.from), ("to", &zone.to)])
                .collect();
            all.extend(
                demand
                    .ladder
                    .iter()
                    .map(|ladder| ("ladder", ladder.limit())),
            );
            all.extend(demand.deeper_than.iter().map(|limit| ("deeper", limit)));
            all
        }
        Demand::Length(bounds) => of_bounds(bounds),
        Demand::Opening(demand) => {
            let band = demand.not_within.as_ref();
            let entraps = demand.entraps.as_ref();
            let zone = demand.zone.as_ref();
            let all = [
                ("ball", demand.stops_ball.as_ref()),
                ("at most", demand.at_most.as_ref()),
                ("at least", demand.at_least.as_ref()),
                ("above", band.map(|(above, _)| above)),
                ("below", band.map(|(_, below)| below)),
                ("probe, short", entraps.map(|entraps| &entraps.short)),
                ("probe, long", entraps.map(|entraps| &entraps.long)),
                ("head", entraps.map(|entraps| &entraps.head)),
                ("from", zone.map(|zone| &zone.from)),
                ("to", zone.map(|zone| &zone.to)),
            ];
            limits_stated(all)
        }
    }
}

fn of_bounds(bounds: &Bounds<Limit>) -> Vec<(&'static str, &Limit)> {
    limits_stated([
        ("at least", bounds.at_least.as_ref()),
        ("at most", bounds.at_most.as_ref()),
        ("above", bounds.above.as_ref()),
        ("below", bounds.below.as_ref()),
    ])
}

fn limits_stated<'l, const N: usize>(
    all: [(&'static str, Option<&'l Limit>); N],
) -> Vec<(&'static str, &'l Limit)> {
    all.into_iter()
        .filter_map(|(kind, limit)| Some((kind, limit?)))
        .collect()
}
