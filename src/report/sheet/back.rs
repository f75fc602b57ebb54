//! The last page: what the chosen rules ask, and what they leave out.

use maud::Markup;
use maud::html;

use crate::report::one_line;
use crate::report::rulesets::place;
use crate::report::sheet::frame::DEFERRAL;
use crate::report::standing;
use crate::rules::Rule;
use crate::rules::Ruleset;
use crate::rules::Status;

pub(super) fn back(rulesets: &[Ruleset]) -> Markup {
    html! {
        section class="back" aria-label="what the chosen rules ask" {
            table {
                thead { tr { th colspan="3" scope="colgroup" { "What the chosen rules ask" } } }
                tbody {
                    tr {
                        td colspan="3" {
                            "For looking up, and no verdict: type the readings in, and "
                            code { "guardrule check" }
                            " compares them. Verify: we did not read that clause in its own text."
                        }
                    }
                    @for ruleset in rulesets { (limits(ruleset)) }
                }
                tfoot { tr { td colspan="3" { (DEFERRAL) } } }
            }
        }
    }
}

fn limits(ruleset: &Ruleset) -> Markup {
    html! {
        tr class="title" {
            th colspan="3" scope="colgroup" {
                (one_line(&ruleset.title)) " (" (standing(ruleset)) "; edition read: "
                (one_line(&ruleset.edition)) ")"
            }
        }
        @if !ruleset.covers.says.is_empty() {
            tr { td colspan="3" { "Covers: " (one_line(&ruleset.covers.says)) } }
        }
        tr { th scope="col" { "rule" } th scope="col" { "applies" } th scope="col" { "clause" } }
        @for rule in &ruleset.rules { (row(rule)) }
        @if !ruleset.leaves_out.is_empty() {
            tr class="out" {
                td colspan="3" {
                    b { "It leaves out: " }
                    @for part in &ruleset.leaves_out { (one_line(&part.conditional())) " " }
                }
            }
        }
    }
}

fn row(rule: &Rule) -> Markup {
    let place = place(rule);
    html! {
        tr {
            td { (one_line(&rule.says)) }
            td { @if place.is_empty() { "everywhere" } @else { (place) } }
            td { (one_line(&rule.clause)) (standing_of(rule.status)) }
        }
    }
}

const fn standing_of(status: Status) -> &'static str {
    match status {
        Status::Memory => " (from memory: verify)",
        Status::Practice | Status::Published => "",
        Status::Quoted => " (second-hand: verify)",
    }
}
