//! The bays of the plans as one drawing, each to scale.

use std::io;
use std::io::Write;

use maud::Markup;
use maud::PreEscaped;
use maud::html;
use textwrap::wrap;

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

/// So many letters of a title stand beside each other.
const COLUMNS: usize = 84;

/// Every bay that a plan marks, one below the other, with the guard's name; a guard whose
/// bay cannot be drawn says what to write down first.
///
/// # Errors
/// Those of `out`.
pub fn plans_svg(out: &mut dyn Write, guards: &[PlannedGuard<'_>]) -> io::Result<()> {
    let mut high = 20.0;
    let mut parts: Vec<(f64, Markup)> = Vec::new();
    let (bays, undrawn) = bays(guards);
    for bay in bays {
        let title = format!("{}: {}", bay.names.join("; "), bay.what);
        let title = wrap(&title, COLUMNS);
        let (last, above) = title
            .split_last()
            .map_or(("", &[][..]), |(last, above)| (&**last, above));
        for line in above {
            parts.push((
                high,
                html! { text x="30" y="20" font-size="17" font-weight="bold" { (line) } },
            ));
            high += LINE;
        }
        parts.push((
            high,
            html! {
                text x="30" y="20" font-size="17" font-weight="bold" { (last) }
                g transform={ "translate(0 " (TITLE) ")" } { (PreEscaped(bay.drawing)) }
            },
        ));
        high += TITLE + bay.tall;
    }
    for says in undrawn {
        parts.push((high, html! { text x="30" y="16" { (says) } }));
        high += LINE;
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

/// A bay, and the guards that have one like it.
struct DrawnBay {
    names: Vec<String>,
    what: String,
    tall: f64,
    drawing: String,
}

/// The bays that can be drawn, alike ones once, and what is said of the guards without one.
fn bays(guards: &[PlannedGuard<'_>]) -> (Vec<DrawnBay>, Vec<String>) {
    let mut bays: Vec<DrawnBay> = Vec::new();
    let mut without: Vec<String> = Vec::new();
    for planned in guards
        .iter()
        .filter(|planned| !planned.plan.steps.is_empty())
    {
        let mut any = false;
        for step in &planned.plan.steps {
            let instead = step.instead.iter().map(|offered| ("or ", offered));
            for (or, offered) in std::iter::once(("", &step.offered)).chain(instead) {
                let Some(answer) = offered.bay.as_ref().and_then(|bay| answer(planned, bay)) else {
                    continue;
                };
                any = true;
                let (tall, drawing) = layout_drawing(&answer);
                let (what, drawing) = (
                    format!("{or}{}", offered.kind.row().name),
                    drawing.into_string(),
                );
                let alike = |bay: &&mut DrawnBay| bay.what == what && bay.drawing == drawing;
                match bays.iter_mut().find(alike) {
                    Some(bay) => bay.names.push(planned.name()),
                    None => bays.push(DrawnBay {
                        names: vec![planned.name()],
                        what,
                        tall,
                        drawing,
                    }),
                }
            }
        }
        if !any {
            without.push(undrawn(planned));
        }
    }
    (bays, without)
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
