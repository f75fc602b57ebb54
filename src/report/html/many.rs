//! The first sheet of several guards: how many came out how, what to do tonight,
//! and one table.

use std::borrow::Cow;

use maud::Markup;
use maud::html;

use crate::items::Verdict;
use crate::judge::Authority;
use crate::report::Summary;
use crate::report::html::marks;
use crate::report::html::sheet::PageSheet;
use crate::report::html::sheet::running;
use crate::report::reader;
use crate::report::told::GuardTold;
use crate::report::told::ReportPart;
use crate::report::told::SurveyTold;
use crate::report::told::acts_of_all;
use crate::report::told::alike;
use crate::report::told::counts;
use crate::report::words;
use crate::report::words::several;

/// Rows that stay together under their unit's heading.
const TOGETHER: usize = 10;

/// From so many guards on there are totals.
const MANY: usize = 12;

/// Where a guard's own page is.
pub(super) type LinkTo<'l> = &'l dyn Fn(usize) -> String;

/// One row: guards alike, by their places in the report.
struct TableRow {
    guards: Vec<usize>,
}

/// The first sheet.
pub(super) fn first_sheet(
    sheet: &PageSheet<'_>,
    survey: &SurveyTold,
    faulty: bool,
    link: LinkTo<'_>,
) -> Markup {
    let told = &survey.guards;
    html! {
        section class="sheet wide-sheet" aria-labelledby="all" {
            (running(&sheet.head_of(&several(told.len(), "railing", "railings"))))
            div class="matter" {
                h1 id="all" { (sheet.title()) }
                (strip(survey.summary, sheet.authority))
                p { (counts(sheet.basis, told, survey.summary, sheet.authority)) }
                (warnings(sheet, faulty))
                (tonight(told, link))
                (table(told, link))
                (good(told, link))
                @if told.len() > MANY { (totals(survey)) }
            }
            (sheet.foot())
        }
    }
}

/// What a reader must know of what was judged at all.
pub(in crate::report) fn warnings(sheet: &PageSheet<'_>, faulty: bool) -> Markup {
    html! {
        @if faulty {
            p class="law" { b { "Something in the files could not be understood." }
                " It is said where the report was made, with file and line; mend it and make the report again." }
        }
        @for ruleset in sheet.basis.rulesets {
            @for unread in &ruleset.unread {
                p class="law" { b { "Not read:" } " " (words::not_read(unread, &ruleset.id))
                    ": by these rules no railing meets." }
            }
        }
        @if sheet.authority == Authority::Guidance {
            p class="law" { b { "No building rules were checked, only advice." }
                " Rules that hold where you are may ask for more. Find them: guardrule rules find, with \
    your country or state." }
        }
    }
}

/// How many came out how.
fn strip(summary: Summary, authority: Authority) -> Markup {
    let asked = match authority {
        Authority::Law => "the building rules",
        Authority::Guidance => "the advice",
    };
    let cells = [
        (
            Verdict::FallsShort,
            summary.falls_short,
            format!("fall short of {asked}"),
        ),
        (
            Verdict::TooClose,
            summary.too_close,
            "too near to tell".to_owned(),
        ),
        (
            Verdict::NotSettled,
            summary.not_settled,
            "rule unclear".to_owned(),
        ),
        (
            Verdict::NotMeasured,
            summary.not_measured + summary.could_not_judge,
            "unfinished".to_owned(),
        ),
        (Verdict::Meets, summary.meets, format!("meet {asked}")),
        (
            Verdict::DoesNotApply,
            summary.does_not_apply,
            "need no railing by these rules".to_owned(),
        ),
    ];
    html! {
        ul class="strip" {
            @for (verdict, count, says) in cells.iter().filter(|(_, count, _)| *count > 0) {
                li { (marks::mark(*verdict)) b { (count) } span { (says) } }
            }
        }
    }
}

fn tonight(told: &[GuardTold], link: LinkTo<'_>) -> Markup {
    let acts = acts_of_all(told);
    if acts.is_empty() {
        return html! {};
    }
    html! {
        section class="say" aria-labelledby="tonight" {
            h2 class="sub" id="tonight" { "Tonight" }
            ol {
                @for act in &acts {
                    li {
                        @if !act.call.is_empty() { b { (act.call) ". " } }
                        (act.does)
                        @for (index, why) in &act.guards {
                            " " a href=(link(*index)) { (told[*index].name) } ": " (why)
                        }
                    }
                }
            }
        }
    }
}

/// Every guard that needs anything, by unit; those alike share a line.
fn table(told: &[GuardTold], link: LinkTo<'_>) -> Markup {
    let units = by_unit(told);
    if units.is_empty() {
        return html! {};
    }
    let columns = told.first().map_or(0, |guard| guard.each_hazard.len());
    html! {
        section aria-labelledby="needs" {
            h2 class="sub" id="needs" { "What needs doing, worst first" }
            div class="table-wide" {
                table {
                    caption { "rules, advice = falls short of it (advice is no building rule) · near = too near to tell · unclear = rule unclear · open = not looked at · no rule = no rule asks" }
                    thead { tr {
                        th scope="col" { "railing" }
                        @for hazard in told.iter().take(1).flat_map(|guard| &guard.each_hazard) {
                            th scope="col" { (reader::hazard(hazard.hazard)) }
                        }
                        th scope="col" { "worst of it" }
                        th scope="col" { "first thing to do" }
                    } }
                    @for (unit, rows) in &units {
                        @for rows in rows.chunks(TOGETHER) {
                            tbody class="whole" {
                                @if !unit.is_empty() && rows.len() > 1 {
                                    tr class="unit" { th scope="rowgroup" colspan=(columns + 3) { (unit) } }
                                }
                                @for row in rows { (line(told, row, rows.len() > 1, link)) }
                            }
                        }
                    }
                }
            }
            nav class="contents" aria-label="Railings that need something" {
                ul class="contents" {
                    @for (_, rows) in &units { @for row in rows { (entry(told, row, link)) } }
                }
            }
        }
    }
}

/// Units in the order of their worst guard, each with its rows.
fn by_unit(told: &[GuardTold]) -> Vec<(String, Vec<TableRow>)> {
    let mut units: Vec<(String, Vec<TableRow>)> = Vec::new();
    let mut known: std::collections::BTreeMap<String, usize> = std::collections::BTreeMap::new();
    let mut put = |guards: Vec<usize>| {
        let Some(first) = guards.first() else { return };
        let guard = &told[*first];
        let parts = [guard.building.as_str(), guard.unit.as_str()];
        let parts: Vec<&str> = parts.into_iter().filter(|part| !part.is_empty()).collect();
        let unit = parts.join(", ");
        let at = *known.entry(unit.clone()).or_insert_with(|| {
            units.push((unit, Vec::new()));
            units.len() - 1
        });
        units[at].1.push(TableRow { guards });
    };
    for group in alike(told) {
        // those of one unit share a line
        let mut rest = group;
        while let Some(first) = rest.first().copied() {
            let same = |index: &usize| {
                (&told[*index].building, &told[*index].unit)
                    == (&told[first].building, &told[first].unit)
            };
            let (here, elsewhere) = rest.into_iter().partition(same);
            put(here);
            rest = elsewhere;
        }
    }
    for (index, guard) in told.iter().enumerate() {
        if guard.part == ReportPart::Unfinished {
            put(vec![index]);
        }
    }
    units
}

fn line(told: &[GuardTold], row: &TableRow, headed: bool, link: LinkTo<'_>) -> Markup {
    let Some(first) = row.guards.first() else {
        return html! {};
    };
    let guard = &told[*first];
    html! {
        tr {
            th scope="row" class="row-name" { (names(told, row, headed, link)) }
            @if guard.open_edge {
                td colspan=(guard.each_hazard.len()) {
                    (marks::with(Verdict::FallsShort, "no railing: open edge for every hazard"))
                }
            } @else if let Some(why) = &guard.not_entered {
                td colspan=(guard.each_hazard.len()) {
                    (marks::with(Verdict::NotMeasured, "not entered"))
                    @if !why.is_empty() { ": “" (why) "”" }
                }
            } @else {
                @for of in &guard.each_hazard { td { (hazard(of.rules, of.advice)) } }
            }
            td { (guard.worst) }
            td { (first_thing(guard)) }
        }
    }
}

/// The worse of rules and advice; advice says that it is no rule.
fn hazard(rules: Option<Verdict>, advice: Option<Verdict>) -> Markup {
    match (rules, advice) {
        (Some(Verdict::FallsShort), _) => marks::with(Verdict::FallsShort, "rules"),
        (_, Some(Verdict::FallsShort)) => marks::with(Verdict::FallsShort, "advice"),
        (Some(verdict), _) | (None, Some(verdict)) => marks::with(verdict, short_word(verdict)),
        (None, None) => marks::with(Verdict::DoesNotApply, short_word(Verdict::DoesNotApply)),
    }
}

/// A verdict in a narrow column; the caption says what it stands for.
const fn short_word(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::FallsShort => "short",
        Verdict::TooClose => "near",
        Verdict::NotSettled => "unclear",
        Verdict::NotMeasured => "open",
        Verdict::Meets => "meets",
        Verdict::DoesNotApply => "no rule",
    }
}

/// The names alone below a heading, else with their unit.
fn names(told: &[GuardTold], row: &TableRow, headed: bool, link: LinkTo<'_>) -> Markup {
    html! {
        @for (place, index) in row.guards.iter().enumerate() {
            @if place > 0 { ", " }
            @let name = if headed { &told[*index].alone } else { &told[*index].name };
            a href=(link(*index)) { (name) }
        }
        @if row.guards.len() > 1 { span class="alike" { " (alike)" } }
    }
}

/// What to do first; of an unfinished one what to look at.
fn first_thing(guard: &GuardTold) -> String {
    if guard.not_entered.is_some() {
        return "ask for a date".to_owned();
    }
    if !guard.first.is_empty() {
        return guard.first.clone();
    }
    let next = guard.next.first();
    next.map_or_else(String::new, |next| format!("look: {}", next.item.name()))
}

/// A line on a phone.
fn entry(told: &[GuardTold], row: &TableRow, link: LinkTo<'_>) -> Markup {
    html! {
        @for index in &row.guards {
            @let guard = &told[*index];
            li { a href=(link(*index)) {
                (marks::mark(guard.verdict))
                span {
                    b { (guard.name) } " · " (comes_out(guard))
                    @let worst = [guard.worst.clone(), first_thing(guard)];
                    @let says: Vec<&str> = worst.iter().map(String::as_str).filter(|part| !part.is_empty()).collect();
                    span { (says.join(": ")) }
                }
            } }
        }
    }
}

/// The verdict; where only the advice is not followed, both, since what follows is the
/// advice's.
fn comes_out(guard: &GuardTold) -> Cow<'static, str> {
    let verdict = reader::verdict(guard.verdict);
    let advice_alone = guard.by_rules.is_empty() && !guard.by_advice.is_empty();
    if advice_alone && guard.verdict != Verdict::FallsShort {
        let short = reader::verdict(Verdict::FallsShort);
        Cow::Owned(format!("rules: {verdict}; advice: {short}"))
    } else {
        Cow::Borrowed(verdict)
    }
}

/// How many guards fall short by what.
fn totals(survey: &SurveyTold) -> Markup {
    html! {
        section aria-labelledby="totals" {
            h2 class="sub" id="totals" { "Totals" }
            @for (what, list) in survey.totals.lists() {
                h3 class="card-name" { (what) }
                ul class="written" { @for (name, count) in list { li { b { (count) } " " (name) } } }
            }
        }
    }
}

fn good(told: &[GuardTold], link: LinkTo<'_>) -> Markup {
    let is_good = |guard: &&GuardTold| guard.part == ReportPart::Good;
    let mut outcomes: Vec<(&str, Vec<usize>)> = Vec::new();
    for (index, guard) in told.iter().enumerate().filter(|(_, guard)| is_good(guard)) {
        let known = outcomes
            .iter_mut()
            .find(|(comes_out, _)| *comes_out == guard.comes_out);
        match known {
            Some((_, guards)) => guards.push(index),
            None => outcomes.push((&guard.comes_out, vec![index])),
        }
    }
    if outcomes.is_empty() {
        return html! {};
    }
    html! {
        section aria-labelledby="good" {
            h2 class="sub" id="good" { "Nothing wrong found" }
            @for (comes_out, guards) in &outcomes {
                p {
                    (marks::mark(told[guards[0]].verdict)) " " (reader::capital(comes_out)) ": "
                    @for (place, index) in guards.iter().enumerate() {
                        @if place > 0 { "; " }
                        a href=(link(*index)) { (told[*index].name) }
                    }
                    "."
                }
            }
        }
    }
}
