//! The first screen: how many came out how, what to do tonight, what is wrong and
//! what to do first.

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
use crate::report::told::when_and_by;
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

/// What to do tonight, the act first; one act for several guards is said once.
pub(super) fn tonight(lines: &mut Lines, told: &[GuardTold]) {
    let acts = acts_of_all(told);
    if acts.is_empty() {
        return;
    }
    lines.gap();
    lines.push(palette::danger("TONIGHT"));
    for act in acts {
        let ActOfAll { call, does, .. } = act;
        let names = reader::listed(&act.names(told));
        let text = match (call, act.guards.as_slice()) {
            ("", _) => format!("{names}: {does}"),
            (call, [(_, why)]) => format!("{names}: {call}. {why} {does}"),
            (call, several) => {
                let whys: Vec<String> = several
                    .iter()
                    .map(|(index, why)| format!("{}: {why}", told[*index].name))
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
