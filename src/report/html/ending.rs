//! What is said once for all guards: by what they were judged, what was taken as
//! given, cautions, sources, how each thing is measured.

use std::collections::BTreeSet;

use maud::Markup;
use maud::html;

use crate::items::Item;
use crate::report::html::marks;
use crate::report::html::sheet::PageSheet;
use crate::report::html::sheet::running;
use crate::report::one_line;
use crate::report::reader;
use crate::report::told::DEFERRAL;
use crate::report::told::GENERAL;
use crate::report::told::SurveyTold;
use crate::report::told::judged_by;
use crate::report::told::judging;
use crate::report::told::taken;
use crate::report::told::whose;
use crate::report::told::written::SaidOfItem;
use crate::rules::Ruleset;
use crate::rules::Status;

/// The last sheet.
pub(super) fn last_sheet(
    sheet: &PageSheet<'_>,
    survey: &SurveyTold,
    for_all: &[SaidOfItem],
) -> Markup {
    let basis = sheet.basis;
    let told = &survey.guards;
    let rulesets = judging(basis, survey);
    let tapes = basis.survey.tapes.iter();
    let tapes = tapes.map(|tape| format!("tape {}", one_line(tape)));
    let facts: Vec<String> = for_all
        .iter()
        .map(|said| said.says.clone())
        .chain(tapes)
        .collect();
    let left_out = survey.left_out();
    let what = match told.len() {
        1 => told[0].name.clone(),
        many => format!("for all {many} railings"),
    };
    html! {
        section class="sheet" aria-labelledby="know" {
            (running(&sheet.head_of(&what)))
            div class="matter" {
                h2 class="name" id="know" { "Know" }
                @for text in [GENERAL, DEFERRAL] { p { (text) } }
                @for (guards, says) in survey.cautions() {
                    p { (whose(&guards, told)) (says.join(" ")) }
                }
                @if !facts.is_empty() {
                    h3 class="sub" { "Written for all" }
                    ul class="written" { @for fact in &facts { li { (fact) } } }
                }
                h3 class="sub" { "Judged by" }
                @for ruleset in &rulesets { p { (judged_by(ruleset, basis)) } (sources(ruleset)) }
                p { "Taken as given: " (taken(basis, told).join("; ")) "." }
                @if !left_out.is_empty() { p { "Not asked by these rules: " (left_out.join("; ")) "." } }
                h3 class="sub" { "The marks" }
                (marks::legend())
                p { (read_from(sheet)) }
                (how_measured(survey))
            }
            (sheet.foot())
        }
    }
}

/// Where the report comes from.
fn read_from(sheet: &PageSheet<'_>) -> String {
    let basis = sheet.basis;
    let files = basis.survey.files.iter().map(|name| one_line(name));
    let files: Vec<_> = files.collect();
    format!(
        "Report of {}, guardrule {}; read from {}.",
        basis.today,
        basis.tool_version,
        files.join(", ")
    )
}

/// The sources of a ruleset, each with how it was read.
fn sources(ruleset: &Ruleset) -> Markup {
    let read = |status: Status| reader::mark(status).unwrap_or("read in the text");
    html! {
        ul class="written source" {
            @for source in &ruleset.sources {
                li { (source.title) @if !source.edition.is_empty() { ", " (source.edition) } ": " (read(source.status)) "." }
            }
        }
    }
}

/// A folded note for each thing that was written or is asked for.
fn how_measured(survey: &SurveyTold) -> Markup {
    let mut items: BTreeSet<Item> = BTreeSet::new();
    for guard in &survey.guards {
        items.extend(guard.next.iter().map(|next| next.item));
        items.extend(guard.page.iter().flat_map(|page| &page.items));
    }
    items.retain(|item| !item.is_asked_once() && !item.info().how.is_empty());
    if items.is_empty() {
        return html! {};
    }
    html! {
        div class="how" {
            h3 class="sub" { "How each thing is measured" }
            @for item in items {
                details {
                    summary { (reader::capital(item.name())) }
                    p { (item.info().means) }
                    ol { @for step in item.info().how { li { (step) } } }
                }
            }
        }
    }
}
