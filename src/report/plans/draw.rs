//! The bays of the plans as one drawing, each to scale.

use std::io;
use std::io::Write;

use maud::Markup;
use maud::html;

use crate::geometry::added_between;
use crate::remedy::Bay;
use crate::report::LayoutAnswer;
use crate::report::PlannedGuard;
use crate::report::layout_svg::LAYOUT_WIDE;
use crate::report::layout_svg::layout_drawing;
use crate::report::one_line;
use crate::report::reader;

/// From one guard's title to its drawing, and room for text.
const TITLE: f64 = 34.0;
const LINE: f64 = 22.0;

/// Every bay that a plan marks, one below the other, with the guard's name; a guard whose
/// bay cannot be drawn says what to write down first.
///
/// # Errors
/// Those of `out`.
pub fn plans_svg(out: &mut dyn Write, guards: &[PlannedGuard<'_>]) -> io::Result<()> {
    let mut high = 20.0;
    let mut parts: Vec<(f64, Markup)> = Vec::new();
    for planned in guards
        .iter()
        .filter(|planned| !planned.plan.steps.is_empty())
    {
        let drawn: Vec<_> = planned
            .plan
            .steps
            .iter()
            .flat_map(|step| {
                let instead = step.instead.iter().map(|offered| ("or ", offered));
                std::iter::once(("", &step.offered)).chain(instead)
            })
            .filter_map(|(or, offered)| {
                let answer = answer(planned, offered.bay.as_ref()?)?;
                Some((or, offered, answer))
            })
            .collect();
        if drawn.is_empty() {
            let says = undrawn(planned);
            parts.push((high, html! { text x="30" y="16" { (says) } }));
            high += LINE;
            continue;
        }
        for (or, offered, answer) in drawn {
            let title = format!("{}: {or}{}", planned.name(), offered.kind.row().name);
            let (tall, drawing) = layout_drawing(&answer);
            parts.push((
                high,
                html! {
                    text x="30" y="20" font-size="17" font-weight="bold" { (title) }
                    g transform={ "translate(0 " (TITLE) ")" } { (drawing) }
                },
            ));
            high += TITLE + tall;
        }
    }
    let drawing = html! {
        svg xmlns="http://www.w3.org/2000/svg" width=(LAYOUT_WIDE) height=(high + 40.0)
            viewBox={ "0 0 " (LAYOUT_WIDE) " " (high + 40.0) } role="img" font-family="sans-serif"
            font-size="13" fill="#1a1a1a" {
            title { "Where balusters are marked" }
            rect width="100%" height="100%" fill="#ffffff" {}
            @for (top, part) in &parts {
                g transform={ "translate(0 " (top) ")" } { (part) }
            }
            @if parts.is_empty() {
                text x="30" y="36" { "Nothing falls short: there is nothing to draw." }
            }
            text x="30" y=(high + 24.0) font-size="11" {
                "Measure each bay anew before you cut. The local authority and licensed professionals decide."
            }
        }
    };
    writeln!(out, "{}", drawing.into_string())
}

fn undrawn(planned: &PlannedGuard<'_>) -> String {
    let topics: Vec<String> = planned
        .plan
        .steps
        .iter()
        .map(|step| reader::title(step.topic.item).to_lowercase())
        .collect();
    let steps = planned.plan.steps.iter();
    let mut write: Vec<&str> = Vec::new();
    for item in steps.flat_map(|step| &step.offered.asks) {
        if !write.contains(&item.name()) {
            write.push(item.name());
        }
    }
    let write = if write.is_empty() {
        String::new()
    } else {
        format!("; to draw a bay, write {}", write.join(", "))
    };
    let name = planned.name();
    one_line(&format!(
        "{name}: no bay to mark ({}){write}",
        topics.join(", ")
    ))
    .into_owned()
}

fn answer(planned: &PlannedGuard<'_>, bay: &Bay) -> Option<LayoutAnswer> {
    let between = added_between(&bay.plan, &bay.between).ok()?;
    let layout = if bay.between.is_empty() {
        Some(bay.plan.layout().ok()?)
    } else {
        None
    };
    Some(LayoutAnswer {
        plan: bay.plan,
        unit: planned.plan.measuring.unit,
        layout,
        between,
        each_tread: None,
        degrees: None,
        tolerance_taken: true,
        drying_taken: true,
    })
}
