//! The first leaf: cautions, head, what holds for every guard, how to write it down.

use std::collections::BTreeSet;

use maud::Markup;
use maud::html;

use crate::items::Item;
use crate::report::cautions::GENERAL;
use crate::report::one_line;
use crate::report::sheet::Sheet;
use crate::report::sheet::frame::foot;
use crate::report::sheet::rows::row_of;
use crate::report::standing;

/// What nobody should do with the tape in hand. Common practice, no source.
const WHILE_MEASURING: [&str; 3] = [
    "Stay on the safe side of every railing. Never lean over an edge or on a railing, and never test one by leaning.",
    "Where there is no railing, or it moves, keep well back: write not reached. A missing reading harms nobody.",
    "Keep children away while you measure. In homes from before 1978 paint may hold lead: do not scrape, sand or drill it.",
];

/// Who decides.
pub(super) const DEFERRAL: &str = "The local authority and licensed professionals decide what the law asks \
here and whether a guard is fit. This sheet only collects readings; nothing on it calls a guard safe.";

/// What to write, and when; lengths in inches, and in millimetres.
const LEGEND: [(&str, &str, &str); 9] = [
    (
        "34 5/8 in · 2 ft 10 5/8 in",
        "879 mm · 87.9 cm · 0.879 m",
        "a length, always with its unit; in and no inch mark",
    ),
    (
        "over 8 ft · under 20 in",
        "over 2.5 m · under 500 mm",
        "too far to measure, but surely more, or less",
    ),
    (
        "5 in ± 1/2 in",
        "125 mm ± 10 mm",
        "you are not sure by how much",
    ),
    (
        "4 in ball stops everywhere",
        "100 mm ball stops everywhere",
        "the ball was tried at every hole, and stopped",
    ),
    (
        "4 in ball passes",
        "100 mm ball passes",
        "it went through one",
    ),
    (
        "reaches 36 in · below 36 in",
        "reaches 900 mm · below 900 mm",
        "a stick cut to length and held plumb reaches the top, or does not",
    ),
    (
        "3 11/16 in at 31 in",
        "95 mm at 780 mm",
        "a hole, and how high it lies above the walking surface",
    ),
    ("none", "none", "you looked, and there is none"),
    (
        "not reached",
        "not reached",
        "you could not look: say why in the notes",
    ),
];

/// Two pages, so that the first guard begins on a leaf of its own.
pub(super) fn front(sheet: &Sheet<'_>) -> Markup {
    let mut shared: BTreeSet<Item> = sheet.items();
    shared.retain(|item| item.is_asked_once());
    let unit = sheet.unit();
    html! {
        section class="pg front" aria-label="before you measure" {
            h1 { "Measuring sheet for railings and guards" }
            div class="cau" {
                h2 { "Before you measure" }
                ul {
                    @for caution in WHILE_MEASURING.iter().chain(&GENERAL) { li { (caution) } }
                    li class="deferral" { (DEFERRAL) }
                }
            }
            h2 { "This round" }
            div class="head" {
                p class="wide" { b { "property" } i class="w" {} }
                p { b { "date" } i class="w" {} }
                p { b { "by" } i class="w" {} }
                p { b { "tape" } " ☐ class I  ☐ class II  ☐ class III  ☐ no class on it" }
                p { b { "default unit" } " ☐ in  ☐ mm  ☐ cm  ☐ written each time" }
            }
            @if !shared.is_empty() {
                h2 { "The same for every railing (where one differs, say so in its notes)" }
                table class="rows" {
                    thead { tr class="vh" { th scope="col" { "what" } th scope="col" { "tick or write" } } }
                    tbody { @for item in &shared { (row_of(*item, sheet.rulesets, unit).1) } }
                }
            }
            (foot(sheet.rulesets))
        }
        section class="pg front" aria-label="how to write it down" {
            h1 { "How to write it down" }
            dl {
                @for (inches, metric, means) in LEGEND {
                    dt { @if unit.is_imperial() { (inches) } @else { (metric) } }
                    dd { (means) }
                }
            }
            p {
                "One leaf or more for each railing. A new one starts where slope, rise, infill or what it \
                 stands on changes. Leave empty what you did not measure: empty is not measured, \
                 and never counts as met."
            }
            p {
                "Look and push first, then the ball, then the tape. The ball needs no tape, and fits any \
                 shape of hole. Measure across it before you start: a ball of another size settles nothing."
            }
            p {
                "Where STOP is ticked nothing more is touched or measured at that railing."
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
            h2 { "Notes" }
            div class="notes" { p class="vh" { "Lines to write on." } }
            (foot(sheet.rulesets))
        }
    }
}
