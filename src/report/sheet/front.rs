//! The first page: cautions, head, what holds for every guard, how to write it down.

use std::collections::BTreeSet;

use maud::Markup;
use maud::html;

use crate::items::Item;
use crate::report::cautions::GENERAL;
use crate::report::one_line;
use crate::report::sheet::Sheet;
use crate::report::sheet::boxes::answer;
use crate::report::standing;

/// What nobody should do with the tape in hand. Common practice, no source.
const WHILE_MEASURING: [&str; 3] = [
    "Stay on the safe side of every guard. Never lean over an edge or on a railing, and never test one by leaning.",
    "Where there is no guard, or it moves, keep well back: write not reached. A missing reading harms nobody.",
    "Keep children away while you measure. In homes from before 1978 paint may hold lead: do not scrape, sand or drill it.",
];

/// Who decides.
pub(super) const DEFERRAL: &str = "The local authority and licensed professionals decide what the law asks \
here and whether a guard is fit. This sheet only collects readings; nothing on it calls a guard safe.";

/// What to write, and when.
const LEGEND: [(&str, &str); 10] = [
    (
        "34 5/8 in · 2 ft 10 5/8 in · 879 mm · 87.9 cm",
        "a length, always with its unit; in and no inch mark",
    ),
    (
        "over 8 ft · under 20 in",
        "too far to measure, but surely more, or less",
    ),
    ("5 in ± 1/2 in", "you are not sure by how much"),
    (
        "4 in ball stops everywhere",
        "the ball was tried at every hole, and stopped",
    ),
    ("4 in ball passes", "it went through one"),
    (
        "reaches 36 in · below 36 in",
        "a stick cut to length and held plumb reaches the top, or does not",
    ),
    (
        "3 11/16 in at 31 in",
        "a hole, and how high it lies above the walking surface",
    ),
    (
        "triangle 7 3/4 x 10 in · circle 5 in",
        "a hole that is no plain gap",
    ),
    ("none", "you looked, and there is none"),
    ("not reached", "you could not look: say why in the notes"),
];

pub(super) fn front(sheet: &Sheet<'_>, items: &BTreeSet<Item>) -> Markup {
    let mut shared = items.clone();
    shared.retain(|item| item.is_asked_once());
    html! {
        section class="front" {
            h1 { "Measuring sheet for railings and guards" }
            div class="cautions" {
                h2 { "Before you measure" }
                ul {
                    @for caution in WHILE_MEASURING.iter().chain(&GENERAL) { li { (caution) } }
                    li class="deferral" { (DEFERRAL) }
                }
            }
            h2 { "This round" }
            div class="head" {
                p class="wide" { b { "property" } span class="line" {} }
                p { b { "date" } span class="line" {} }
                p { b { "by" } span class="line" {} }
                p {
                    b { "tape" } " ☐ class I  ☐ class II  ☐ class III  ☐ no class on it"
                }
                p { b { "default unit" } " ☐ in  ☐ mm  ☐ cm  ☐ written each time" }
            }
            @if !shared.is_empty() {
                h2 { "The same for every guard (where one differs, say so in its notes)" }
                div class="row" { @for item in &shared { (answer(*item)) } }
            }
            h2 { "How to write it down" }
            dl { @for (written, means) in LEGEND { dt { (written) } dd { (means) } } }
            p {
                "One page for each guard. A new guard starts where slope, rise, infill or what it \
                 stands on changes. Leave empty what you did not measure: empty is not measured, \
                 and never counts as met."
            }
            p {
                "The ball first: it needs no tape, and fits any shape of hole. Measure across it \
                 before you start: a ball of another size settles nothing."
            }
            h2 { "Asked by" }
            ul {
                @for ruleset in sheet.rulesets {
                    li {
                        (one_line(&ruleset.title)) " (" (standing(ruleset)) "; edition read: "
                        (one_line(&ruleset.edition)) "; " code { (one_line(&ruleset.id)) } ")"
                    }
                }
            }
        }
    }
}
