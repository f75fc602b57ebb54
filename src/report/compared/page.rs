//! A comparison as a page to hand over.

use std::io;
use std::io::Write;

use maud::html;

use crate::items::Verdict;
use crate::report::ReportBasis;
use crate::report::compared::told::ComparisonTold;
use crate::report::compared::told::mark_of;
use crate::report::html::PageSheet;
use crate::report::html::beginning;
use crate::report::html::ending;
use crate::report::html::mark;
use crate::report::html::running;
use crate::report::html::warnings;
use crate::report::reader;

pub(super) fn write(
    out: &mut dyn Write,
    basis: &ReportBasis<'_>,
    told: &ComparisonTold,
) -> io::Result<()> {
    let sheet = PageSheet::new(basis, told.compared);
    let title = format!("{}: two rounds compared", sheet.title());
    out.write_all(beginning(&title, &told.head).into_string().as_bytes())?;
    let page = html! {
        section class="sheet wide-sheet" aria-labelledby="all" {
            (running(&told.head))
            div class="matter" {
                h1 id="all" { (title) }
                ul class="strip" {
                    @for (kind, decides, advice) in &told.by_kind {
                        @if decides + advice > 0 {
                            li { (mark(mark_of(*kind))) b { (decides + advice) } span { (kind.name()) } }
                        }
                    }
                    @if !told.not_entered.is_empty() {
                        li { (mark(Verdict::NotMeasured)) b { (told.not_entered.len()) } span { "not entered" } }
                    }
                }
                p { (told.counts) }
                (warnings(&sheet, false))
                @for part in told.parts() {
                    h2 class="sub" { (part.heading) }
                    ul class="found" {
                        @for (name, changes) in &part.guards {
                            li {
                                (mark(part.mark)) " " b { (name) }
                                @for change in changes {
                                    br;
                                    (change.what) ": " (change.says) " "
                                    span class="source" {
                                        "(" (change.by())
                                        @if !change.clause.is_empty() { "; " (change.clause) }
                                        ")"
                                    }
                                }
                            }
                        }
                    }
                }
                @if !told.not_entered.is_empty() {
                    h2 class="sub" { "Not entered this time" }
                    ul class="found" {
                        @for (name, why, before) in &told.not_entered {
                            li { b { (name) } @if !why.is_empty() { " “" (why) "”" } "; before: " (reader::verdict(*before)) "." }
                        }
                    }
                }
                @if !told.questions.is_empty() {
                    h2 class="sub" { "In one round alone" }
                    ul class="found" { @for question in &told.questions { li { (question) } } }
                }
                @if !told.unchanged.is_empty() {
                    p { "Nothing to say of: " (reader::listed(&told.unchanged)) "." }
                }
                p class="source" { "A change counts where the readings differ by more than twice the tapes' doubt \
    together. What nobody measured again is not taken as mended." }
                p class="source" { (told.judged_by) }
            }
            (sheet.foot())
        }
    };
    out.write_all(page.into_string().as_bytes())?;
    writeln!(out, "{}", ending())
}
