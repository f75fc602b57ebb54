//! What comes before the report where it is sent to somebody: a request to a landlord,
//! a contractor's list, a record to sign. They choose what comes first, never what is true.

use std::collections::BTreeMap;

use maud::Markup;
use maud::html;

use crate::judge::Authority;
use crate::report::html::marks;
use crate::report::html::sheet::PageSheet;
use crate::report::html::sheet::running;
use crate::report::reader;
use crate::report::told::GuardTold;
use crate::report::told::Paragraph;
use crate::report::told::ReportPart;
use crate::report::told::SurveyTold;
use crate::report::wrap::quantities_tied;

/// How long a landlord has, by texts that were read: California Civil Code 1942 (text as
/// of 2014: 30 days are presumed reasonable), New York City housing code § 27-2115 (its
/// city's text as quoted: 24 hours for class C, immediately hazardous). What the law of
/// the place says was not read.
const TIME: &str = "What the law of this place allows was not read. Elsewhere 30 days are presumed \
reasonable (California Civil Code 1942, text as of 2014), and 24 hours are asked where something is \
immediately hazardous (New York City housing code 27-2115, second-hand).";

/// What a tenant should hear once. Common practice, no source.
const TENANT: &str = "Keep a copy of this letter and of the answer. Before you hold back rent, or repair \
at the landlord's cost, ask a tenants' office or a lawyer.";

fn blank(what: &str) -> Markup {
    html! { p { (what) " " span class="blank" {} } }
}

/// A request to the owner, ready to send.
pub(super) fn request(sheet: &PageSheet<'_>, survey: &SurveyTold, warnings: &Markup) -> Markup {
    let needs = |guard: &&GuardTold| guard.part == ReportPart::Wrong;
    let wrong: Vec<&GuardTold> = survey.guards.iter().filter(needs).collect();
    let urgent: Vec<&GuardTold> = wrong
        .iter()
        .copied()
        .filter(|guard| !guard.tonight.is_empty())
        .collect();
    let by = match sheet.authority {
        Authority::Law => "the building rules and the advice named below",
        Authority::Guidance => "the advice named below; no building rules were checked",
    };
    html! {
        section class="sheet" aria-labelledby="letter" {
            (running(&sheet.head_of("request to repair")))
            div class="matter" {
                h1 id="letter" { "Request to repair railings" }
                (warnings)
                (blank("Date:")) (blank("To:")) (blank("From:")) (blank("Address of the home:"))
                p { (sheet.when_and_by()) "." }
                @if wrong.is_empty() {
                    p { "Nothing that falls short was found at the railings that were measured." }
                } @else {
                    p { "The railings named here were measured with a tape and compared with " (by)
                        ". What was found, and what is asked for, stands below; the readings and the sources are attached. \
    Please have them put right." }
                    @if !urgent.is_empty() {
                        section class="say" aria-labelledby="first" {
                            h2 class="sub" id="first" { "What cannot wait" }
                            @for guard in &urgent {
                                @for act in &guard.tonight {
                                    p { b { (guard.name) ": " @if !act.call.is_empty() { (act.call) ". " } } (act.why) }
                                }
                            }
                            p { "Please make these safe to pass at once, and mend them within days." }
                        }
                    }
                    @for guard in &wrong { (asked_of(guard)) }
                    h2 class="sub" { "By when" }
                    p { "What cannot wait: at once. All else: within a reasonable time, and please name the day. " (TIME) }
                    p { "Please answer in writing: what will be done, by whom, and when. If paint is to be \
    scraped, sanded or drilled in a house from before 1978, it may hold lead: please have that looked at first." }
                    (blank("I can let you in on:"))
                    (blank("Signed:"))
                    p class="source" { (TENANT) }
                }
            }
            (sheet.foot())
        }
    }
}

/// What is asked at one railing: the result, and a way to it.
fn asked_of(guard: &GuardTold) -> Markup {
    html! {
        section class="whole" {
            h2 class="sub" { (guard.name) }
            @for paragraph in &guard.paragraphs {
                p {
                    (marks::mark(paragraph.verdict)) " "
                    b { (paragraph.title) @if !paragraph.readings.is_empty() { ": " (quantities_tied(&paragraph.readings)) } "." }
                    " " (quantities_tied(&reader::capital(&paragraph.shortly))) ". "
                    @for sentence in &paragraph.sentences { (sentence.text()) " " }
                    @for does in &paragraph.does { (quantities_tied(&does.text())) " " }
                    @if !paragraph.sources.is_empty() { span class="source" { "Source: " (paragraph.sources.join("; ")) "." } }
                }
            }
        }
    }
}

/// A piece of work for somebody.
struct WorkPiece<'t> {
    guard: &'t GuardTold,
    paragraph: &'t Paragraph,
}

/// A contractor's list: by trade, by place, with a box for what is measured after.
pub(super) fn work(sheet: &PageSheet<'_>, survey: &SurveyTold, warnings: &Markup) -> Markup {
    let mut trades: BTreeMap<&str, BTreeMap<String, Vec<WorkPiece<'_>>>> = BTreeMap::new();
    for guard in &survey.guards {
        let parts = [guard.building.as_str(), guard.unit.as_str()];
        let parts: Vec<&str> = parts.into_iter().filter(|part| !part.is_empty()).collect();
        let trip = parts.join(", ");
        for paragraph in &guard.paragraphs {
            let who = paragraph.who.unwrap_or("to be measured again");
            let trips = trades.entry(who).or_default();
            let pieces = trips.entry(trip.clone()).or_default();
            pieces.push(WorkPiece { guard, paragraph });
        }
    }
    html! {
        section class="sheet wide-sheet" aria-labelledby="work" {
            (running(&sheet.head_of("list of work")))
            div class="matter" {
                h1 id="work" { "List of work: " (sheet.title()) }
                p { (sheet.when_and_by()) "." }
                (warnings)
                p { "The worst railing comes first in each place. The result counts, to be shown with the ball or the \
    tape named; the way to it may be another. No notch in a post, no wider gap, no new step below the rail; \
    nothing is fixed to a railing before what holds it was looked at; no bay stays open overnight." }
                @for (who, trips) in &trades {
                    h2 class="sub" { (reader::capital(who)) }
                    div class="scroll" tabindex="0" role="group" aria-label=(who) { table class="work" {
                        thead { tr {
                            th scope="col" { "railing" } th scope="col" { "found" } th scope="col" { "to do" }
                            th scope="col" { "takes" } th scope="col" { "measured after, day, initials" }
                        } }
                        @for (trip, pieces) in trips {
                            tbody {
                                tr class="unit" {
                                    th colspan="5" scope="rowgroup" {
                                        @if trip.is_empty() { "The property" } @else { (trip) } ": " (pieces.len()) " to do"
                                    }
                                }
                                @for piece in pieces { (work_row(piece)) }
                            }
                        }
                    } }
                }
                p { "Not in this list: whether the platform or the stair itself holds. Measure again when all is done, and \
    compare: guardrule compare, with the survey and the new one." }
            }
            (sheet.foot())
        }
    }
}

fn work_row(piece: &WorkPiece<'_>) -> Markup {
    let WorkPiece { guard, paragraph } = piece;
    html! {
        tr class="whole" {
            th scope="row" class="row-name" {
                (guard.alone)
                @if let Some(act) = guard.tonight.iter().find(|act| !act.call.is_empty()) { br; (act.call) }
            }
            td { b { (paragraph.title) } @if !paragraph.readings.is_empty() { ": " (quantities_tied(&paragraph.readings)) } br; (quantities_tied(&paragraph.shortly)) }
            td { @for does in &paragraph.does { (quantities_tied(&does.text())) " " } }
            td { (paragraph.takes.join(", ")) }
            td { span class="tick" {} " done " span class="blank" {} }
        }
    }
}

/// The last sheet of a record: what was not looked at, and who signs.
pub(super) fn record(sheet: &PageSheet<'_>, survey: &SurveyTold) -> Markup {
    let open: Vec<&GuardTold> = survey
        .guards
        .iter()
        .filter(|guard| {
            !(guard.next.is_empty()
                && guard.could_not_look.is_empty()
                && guard.not_entered.is_none())
        })
        .collect();
    html! {
        section class="sheet" aria-labelledby="record" {
            (running(&sheet.head_of("record")))
            div class="matter" {
                h2 class="name" id="record" { "What was not looked at" }
                @if open.is_empty() { p { "Everything that the chosen rules ask for was written down." } }
                ul class="found" {
                    @for guard in &open {
                        li {
                            b { (guard.name) ": " }
                            @if let Some(why) = &guard.not_entered {
                                "not entered" @if !why.is_empty() { " (“" (why) "”)" } ". "
                            }
                            @if !guard.could_not_look.is_empty() { (guard.could_not_look.join("; ")) ". " }
                            @if !guard.next.is_empty() {
                                "Not written down: "
                                (guard.next.iter().map(|next| next.item.name()).collect::<Vec<_>>().join(", ")) "."
                            }
                        }
                    }
                }
                p { "What lies inside walls, floors and posts was not looked at, and nothing was tested by load." }
                ul class="to-sign" {
                    li { "measured by, day" } li { "seen by the tenant, day" }
                    li { "seen by the owner or agent, day" } li { "measured again by, day" }
                }
            }
            (sheet.foot())
        }
    }
}
