//! The last page: what the chosen rules ask, and what they leave out.

use maud::Markup;
use maud::html;

use crate::report::one_line;
use crate::report::rulesets::place;
use crate::report::standing;
use crate::rules::Rule;
use crate::rules::Ruleset;
use crate::rules::Status;

pub(super) fn back(rulesets: &[Ruleset]) -> Markup {
    html! {
        section class="back" {
            h1 { "What the chosen rules ask" }
            p {
                "For looking up, and no verdict: type the readings in, and "
                code { "guardrule check" }
                " compares them. Verify: we did not read that clause in its own text."
            }
            @for ruleset in rulesets { (limits(ruleset)) }
        }
    }
}

fn limits(ruleset: &Ruleset) -> Markup {
    html! {
        h2 {
            (one_line(&ruleset.title)) " (" (standing(ruleset)) "; edition read: "
            (one_line(&ruleset.edition)) ")"
        }
        @if !ruleset.covers.says.is_empty() { p { "Covers: " (one_line(&ruleset.covers.says)) } }
        table {
            thead { tr { th { "rule" } th { "applies" } th { "clause" } } }
            tbody { @for rule in &ruleset.rules { (row(rule)) } }
        }
        @if !ruleset.leaves_out.is_empty() {
            p class="out" {
                b { "It leaves out: " }
                @for part in &ruleset.leaves_out { (one_line(part)) " " }
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
