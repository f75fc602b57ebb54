//! The first screen: how many came out how, what to do tonight, what is wrong and
//! what to do first.

use std::collections::HashMap;

use crate::judge::Authority;
use crate::report::ReportBasis;
use crate::report::Summary;
use crate::report::one_line;
use crate::report::palette;
use crate::report::reader;
use crate::report::told::ActOfAll;
use crate::report::told::GuardTold;
use crate::report::told::ReportPart;
use crate::report::told::acts_of_all;
use crate::report::told::counts;
use crate::report::told::shared_names;
use crate::report::told::when_and_by;
use crate::report::words;
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
    lines.spread("", "", &when_and_by(basis));
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
            let unread = words::not_read(unread, &ruleset.id);
            let says = format!("NOT READ: {unread}: by these rules no railing meets.");
            lines.spread("", "   ", &one_line(&says));
        }
    }
    if authority == Authority::Guidance {
        let text = "NO BUILDING RULES WERE CHECKED, only advice. Rules that hold where you are may ask for \
more. Find them: guardrule rules find \"flat, your country or state\".";
        lines.spread("", "", text);
    }
}

/// What to do tonight, the act first; one act for several guards is said once.
pub(super) fn tonight(lines: &mut Lines, told: &[GuardTold]) {
    let acts = acts_of_all(told);
    if acts.is_empty() {
        return;
    }
    lines.gap();
    lines.push(palette::danger("TONIGHT"));
    let mut said: Vec<(Vec<String>, Vec<String>)> = Vec::new();
    for act in acts {
        let names = act.names(told);
        let text = does(&act, told);
        match said.last_mut() {
            // one railing is named once
            Some((known, all)) if *known == names => all.push(text),
            Some(_) | None => said.push((names, vec![text])),
        }
    }
    for (names, all) in said {
        // one railing alone was named in the line before
        let whose = match told {
            [_] => String::new(),
            _ => format!("{}: ", reader::listed(&names)),
        };
        lines.spread("  ", "     ", &format!("{whose}{}", all.join(" ")));
    }
}

fn does(act: &ActOfAll<'_>, told: &[GuardTold]) -> String {
    let ActOfAll { call, does, .. } = act;
    match (*call, act.guards.as_slice()) {
        ("", _) => (*does).to_owned(),
        (call, [(_, why)]) => format!("{call}. {why} {does}"),
        (call, several) => {
            // what most of them share is said once, and of whom else something is, of these
            let mut counts: HashMap<&str, usize> = HashMap::new();
            for (_, why) in several {
                *counts.entry(*why).or_default() += 1;
            }
            let whys = several.iter().map(|(_, why)| *why);
            let shared = whys
                .max_by_key(|why| counts[why])
                .filter(|why| counts[why] > 1);
            let apart = several.iter().filter(|(_, why)| Some(*why) != shared);
            let apart = apart.map(|(index, why)| format!("{}: {why}", told[*index].name));
            let whys = shared.map(str::to_owned).into_iter().chain(apart);
            let whys: Vec<String> = whys.collect();
            format!("{call}. {does} {}", whys.join(" "))
        }
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
    for (title, called, blocks) in by_place(told, groups) {
        if !title.is_empty() {
            lines.spread("", "  ", &title);
        }
        for (number, guards) in blocks {
            one(lines, number, &guards, called);
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

/// Blocks under one heading: the heading, how their guards are called, and each block's
/// number with those of its guards that are there.
type BlocksOfPlace<'t> = (String, Called, Vec<(usize, Vec<&'t GuardTold>)>);

/// The blocks by unit where there are many guards, and then those elsewhere.
fn by_place<'t>(told: &'t [GuardTold], groups: &[Vec<usize>]) -> Vec<BlocksOfPlace<'t>> {
    let place = |index: usize| {
        let guard = &told[index];
        (guard.building.as_str(), guard.unit.as_str())
    };
    let mut counts: HashMap<(&str, &str), usize> = HashMap::new();
    for index in groups.iter().flatten() {
        *counts.entry(place(*index)).or_default() += 1;
    }
    // a heading over one railing alone would say its name twice
    let headed = |here: (&str, &str)| {
        told.len() > MANY && here != ("", "") && counts.get(&here).is_some_and(|count| *count > 1)
    };
    let mut places: Vec<BlocksOfPlace<'t>> = Vec::new();
    let mut rest: BlocksOfPlace<'t> = (String::new(), Called::ByPlace, Vec::new());
    let mut known: HashMap<(&str, &str), usize> = HashMap::new();
    for (number, group) in (1..).zip(groups) {
        for index in group {
            let here = place(*index);
            let (_, _, blocks) = if headed(here) {
                let at = *known.entry(here).or_insert(places.len());
                if at == places.len() {
                    let parts = [here.0, here.1].into_iter().filter(|part| !part.is_empty());
                    let title = parts.collect::<Vec<_>>().join(", ");
                    places.push((title, Called::ByName, Vec::new()));
                }
                &mut places[at]
            } else {
                &mut rest
            };
            match blocks.last_mut() {
                Some((last, guards)) if *last == number => guards.push(&told[*index]),
                Some(_) | None => blocks.push((number, vec![&told[*index]])),
            }
        }
    }
    if !places.is_empty() {
        "Elsewhere".clone_into(&mut rest.0);
    }
    if !rest.2.is_empty() {
        places.push(rest);
    }
    places
}

/// How a guard is called in the list: its place may stand above it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Called {
    ByName,
    ByPlace,
}

fn one(lines: &mut Lines, number: usize, guards: &[&GuardTold], called: Called) {
    let Some(guard) = guards.first() else { return };
    let names = match called {
        Called::ByName => {
            let names: Vec<String> = guards.iter().map(|guard| guard.alone.clone()).collect();
            reader::listed(&names)
        }
        Called::ByPlace => shared_names(guards).together,
    };
    let mut text = format!("{number} {names}.");
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
