//! A block for each guard that needs anything; guards alike in their faults share one.

use crate::judge::Authority;
use crate::report::palette;
use crate::report::reader;
use crate::report::text::strength;
use crate::report::told::GuardTold;
use crate::report::told::Next;
use crate::report::told::Paragraph;
use crate::report::told::Sentence;
use crate::report::told::apart;
use crate::report::told::written;
use crate::report::told::written::Known;
use crate::report::told::written::SaidOfItem;
use crate::report::wrap::Lines;

/// More things to look at than these are counted.
const NEXT: usize = 4;

/// The block of these guards.
pub(super) fn block(
    lines: &mut Lines,
    number: Option<usize>,
    guards: &[&GuardTold],
    authority: Authority,
    for_all: &[SaidOfItem],
    known: &mut Known,
) {
    let Some(first) = guards.first() else { return };
    lines.gap();
    match number {
        Some(number) => title(lines, number, guards, &first.status(authority), first),
        None => lines.push(palette::heading("WHAT IS WRONG")),
    }
    let how = format!(
        "{}. {}.",
        reader::capital(&first.comes_out),
        reader::capital(&first.hazards)
    );
    lines.spread("  ", "  ", &how);

    for (index, _) in first.paragraphs.iter().enumerate() {
        paragraph(lines, guards, index);
    }
    rest(lines, guards, for_all, known, number.is_none());
    if !first.full.is_empty() {
        lines.push(first.full.clone());
    }
}

fn title(lines: &mut Lines, number: usize, guards: &[&GuardTold], status: &str, first: &GuardTold) {
    let names: Vec<String> = guards.iter().map(|guard| guard.name.clone()).collect();
    let name = format!("{number} {}", reader::listed(&names));
    let alike = match guards.len() {
        1 => String::new(),
        2 => " (two railings alike)".to_owned(),
        many => format!(" ({many} railings alike)"),
    };
    let left = format!("{name}{alike} ");
    let taken = textwrap::core::display_width(&left) + textwrap::core::display_width(status) + 4;
    if taken <= lines.width() {
        let dashes = "-".repeat(lines.width() - taken + 3);
        let status = palette::verdict(status, first.verdict);
        lines.push(format!("{}{dashes} {status}", palette::heading(&left)));
    } else {
        lines.heading(left.trim_end());
        lines.push(format!("   {}", palette::verdict(status, first.verdict)));
    }
}

fn paragraph(lines: &mut Lines, guards: &[&GuardTold], index: usize) {
    let of_each: Vec<(&str, &Paragraph)> = guards
        .iter()
        .filter_map(|guard| Some((guard.name.as_str(), guard.paragraphs.get(index)?)))
        .collect();
    let Some((_, first)) = of_each.first() else {
        return;
    };
    let readings: Vec<(&str, &str)> = of_each
        .iter()
        .map(|(name, paragraph)| (*name, paragraph.readings.as_str()))
        .collect();
    let readings = apart(&readings);
    let head = if readings.is_empty() {
        format!("{}:", first.title)
    } else {
        format!("{}: {readings}", first.title)
    };
    lines.spread("  ", "     ", &head);
    said_by_each(lines, &of_each, |paragraph| &paragraph.sentences);
    said_by_each(lines, &of_each, |paragraph| &paragraph.does);
}

/// Sentences that all of these guards share, with the amounts of each.
fn said_by_each(
    lines: &mut Lines,
    of_each: &[(&str, &Paragraph)],
    sentences: impl for<'p> Fn(&'p Paragraph) -> &'p [Sentence],
) {
    let Some((_, first)) = of_each.first() else {
        return;
    };
    let mut said: Vec<String> = Vec::new();
    for (at, sentence) in sentences(first).iter().enumerate() {
        let amounts: Vec<(&str, &str)> = of_each
            .iter()
            .filter_map(|(name, paragraph)| {
                let sentence: &Sentence = sentences(paragraph).get(at)?;
                Some((*name, sentence.amount.as_str()))
            })
            .collect();
        said.push(format!(
            "{}{}{}",
            sentence.before,
            apart(&amounts),
            sentence.after
        ));
    }
    if !said.is_empty() {
        lines.spread("     ", "     ", &said.join(" "));
    }
}

/// What matters of each load path.
pub(super) fn what_holds_it(lines: &mut Lines, guard: &GuardTold) {
    for sentences in guard.holds.iter().filter(|said| !said.is_empty()) {
        strength::in_short(lines, sentences);
    }
}

/// What to look at next, what is met, and what else was written.
fn rest(
    lines: &mut Lines,
    guards: &[&GuardTold],
    for_all: &[SaidOfItem],
    known: &mut Known,
    alone: bool,
) {
    let Some(first) = guards.first() else { return };
    what_holds_it(lines, first);
    if first.waits_for_the_posts {
        let text = "Nothing more is looked at by hand here; the rest waits for the posts.";
        lines.spread("  ", "     ", text);
    } else if !first.next.is_empty() && !alone {
        lines.spread("  ", "     ", &format!("Next: {}", next(&first.next)));
    }
    for why in &first.unclear {
        lines.spread("  ", "     ", why);
    }
    for guard in guards {
        let whose = |what: &str| match guards {
            [_] => format!("{what}: "),
            _ => format!("{what}, {}: ", guard.name),
        };
        if !guard.could_not_look.is_empty() {
            let text = format!(
                "{}{}.",
                whose("Not looked at"),
                guard.could_not_look.join("; ")
            );
            lines.spread("  ", "     ", &text);
        }
    }
    if alone && !first.waits_for_the_posts {
        numbered(lines, &first.next);
    }
    as_written(lines, guards, for_all, known);
}

/// What is met and what else was written; what is the same as another guard's is not
/// said again.
pub(super) fn as_written(
    lines: &mut Lines,
    guards: &[&GuardTold],
    for_all: &[SaidOfItem],
    known: &mut Known,
) {
    for guard in guards {
        let others = others(guard, for_all);
        let text = match known.shortly(&guard.name, &[guard.met.clone(), others.clone()].concat()) {
            Some(shortly) => format!("As written: {shortly}."),
            None => {
                let parts = [("Met", &guard.met), ("As written", &others)];
                let parts: Vec<String> = parts
                    .iter()
                    .filter(|(_, parts)| !parts.is_empty())
                    .map(|(what, parts)| format!("{what}: {}.", written::joined(parts)))
                    .collect();
                parts.join(" ")
            }
        };
        if text.is_empty() {
            continue;
        }
        let whose = match guards {
            [_] => String::new(),
            _ => format!("{}. ", guard.name),
        };
        lines.spread("  ", "     ", &format!("{whose}{text}"));
    }
}

fn others(guard: &GuardTold, for_all: &[SaidOfItem]) -> Vec<SaidOfItem> {
    let mut parts = guard.written.clone();
    parts.extend(written::without(&guard.inherited, for_all));
    parts
}

/// The questions, most decisive first, as they are asked.
pub(super) fn next(items: &[Next]) -> String {
    let asked: Vec<&str> = items
        .iter()
        .take(NEXT)
        .map(|next| next.asks.as_str())
        .collect();
    let more = items.len().saturating_sub(NEXT);
    let rest = if more > 0 {
        format!(" And {more} more: guardrule walk asks them.")
    } else {
        String::new()
    };
    format!("{}{rest}", asked.join(" "))
}

/// The questions of a single guard, each with how to look.
pub(super) fn numbered(lines: &mut Lines, items: &[Next]) {
    if items.is_empty() {
        return;
    }
    lines.gap();
    lines.push(palette::heading("NOT LOOKED AT YET, most useful first"));
    for (number, next) in (1..).zip(items.iter().take(NEXT)) {
        let text = format!("{number} {} {}", next.asks, next.how);
        lines.spread("  ", "    ", text.trim_end());
    }
    let names: Vec<&str> = items
        .iter()
        .skip(NEXT)
        .map(|next| next.item.name())
        .collect();
    let then = if names.is_empty() {
        String::new()
    } else {
        format!("Then: {}. ", names.join(", "))
    };
    let walk = "To add them: guardrule walk FILE goes on with these questions.";
    lines.spread("  ", "    ", &format!("{then}{walk}"));
    lines.gap();
}
