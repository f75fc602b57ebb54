//! One item to fill in: a question with words to tick, or a box with its drawing.

use maud::Markup;
use maud::html;

use crate::items::Drawing;
use crate::items::Item;
use crate::items::Kind;
use crate::items::Pictured;
use crate::quantities::Length;
use crate::report::one_line;
use crate::report::vector;
use crate::rules::Limit;
use crate::rules::Ruleset;

/// How many openings there is room for.
const ROWS: u8 = 4;

/// A question in words: ticks, or a line to write on.
pub(super) fn answer(item: Item) -> Markup {
    let info = item.info();
    html! {
        div class="answer" data-item=(info.name) {
            span { b { (info.name) } " " (info.question) }
            @if item == Item::MovesWhenPushed {
                // the one thing on the page that is done and not read: how, in full
                @for step in info.how { " " (step) }
            }
            " " (ticks(info.kind))
            @if info.none_allowed { span class="tick" { "☐ none" } }
        }
    }
}

fn ticks(kind: Kind) -> Markup {
    if let Kind::Words(words) = kind {
        html! { @for word in words { span class="tick" { "☐ " (word.name) } " " } }
    } else {
        html! { span class="line" {} " " }
    }
}

fn none_box(item: Item) -> Markup {
    html! {
        @if item.info().none_allowed { span class="tick" { "☐ none" } " " }
        @if item.is_at_guard() { span class="tick" { "☐ not reached" } }
    }
}

/// A measured item with its drawing.
pub(super) fn measured(item: Item, rulesets: &[Ruleset]) -> Markup {
    let info = item.info();
    let fields = fields(info.kind);
    // several lines to write on leave no room for ticks beside them
    let beside = fields.len() > 1;
    html! {
        div class="box" data-item=(info.name) {
            p { b { (info.name) } " " (info.question) }
            div class="drawings" {
                @if let Pictured::By(drawings) = info.pictured {
                    @for drawing in drawings { (vector(drawing.scene())) }
                }
                div class="beside" {
                    (balls(item, rulesets))
                    @if beside { (none_box(item)) }
                }
            }
            p class="fill" {
                @for name in fields { (name) span class="line" {} " " }
                @if !beside { (none_box(item)) }
            }
        }
    }
}

/// What is written in a box, by the kind of reading.
const fn fields(kind: Kind) -> &'static [&'static str] {
    match kind {
        Kind::Fasteners => &["how many", "thick", "long"],
        Kind::Foothold => &["high", "deep"],
        Kind::Pull => &["force", "moved"],
        Kind::Section => &["across", "by"],
        Kind::StairTriangle => &["rise", "going", "lift"],
        Kind::ThingToClimb => &["high", "deep", "away"],
        Kind::VOpening => &["wide", "deep", "at the bottom"],
        Kind::Ages
        | Kind::Count
        | Kind::Date
        | Kind::Force
        | Kind::Graduation
        | Kind::Length
        | Kind::Opening
        | Kind::Text
        | Kind::Tolerance
        | Kind::Words(_)
        | Kind::Years => &[""],
    }
}

/// The sizes that the rulesets ask for, each once, small ones first.
fn sizes(item: Item, rulesets: &[Ruleset]) -> Vec<&Limit> {
    let mut sizes: Vec<&Limit> = rulesets
        .iter()
        .flat_map(|ruleset| ruleset.balls(item))
        // a gap of nothing is asked for by tape, and by no ball
        .filter(|limit| limit.length > Length::ZERO)
        .collect();
    sizes.sort_by_key(|limit| limit.length);
    sizes.dedup_by_key(|limit| limit.length);
    sizes
}

fn balls(item: Item, rulesets: &[Ruleset]) -> Markup {
    let sizes = sizes(item, rulesets);
    html! {
        @if !sizes.is_empty() {
            span { "ball stops:" }
            @for size in sizes { span class="tick" { "☐ " (one_line(&size.written)) } " " }
        }
    }
}

/// The openings: the ball first, then the tape, with room for several.
pub(super) fn openings(rulesets: &[Ruleset]) -> Markup {
    let info = Item::Opening.info();
    let sizes = sizes(Item::Opening, rulesets);
    html! {
        div class="openings" data-item=(info.name) {
            p { b { (info.name) } " " (info.means) }
            div class="halves" {
                div class="half" {
                    (vector(Drawing::Ball.scene()))
                    p { b { "1. The ball first" } }
                    @for size in &sizes {
                        p class="ball" {
                            b { (one_line(&size.written)) " ball" }
                            span class="tick" { "☐ stops everywhere" }
                            span class="tick" { "☐ passes" }
                        }
                    }
                    p class="ball" { b { "otherwise" } (none_box(Item::Opening)) }
                }
                div class="half" {
                    div class="pair" { (vector(Drawing::Tape.scene())) (vector(Drawing::RakedGap.scene())) }
                    p { b { "2. The tape" } ", where the ball did not settle it; on a stair, level" }
                    table {
                        tr { th { "widest openings" } th { "at height" } th { "where" } }
                        @for _ in 0..ROWS { tr { td {} td {} td {} } }
                    }
                }
            }
            p class="fill" data-item="openings checked" {
                b { "openings checked " }
                (ticks(Item::OpeningsChecked.info().kind))
            }
        }
    }
}
