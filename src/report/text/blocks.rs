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
use crate::report::told::shared_names;
use crate::report::told::written;
use crate::report::told::written::Known;
use crate::report::told::written::SaidOfItem;
use crate::report::wrap::Lines;

/// More things to look at than these are counted.
const NEXT: usize = 4;

/// In a block beside others.
const NEXT_IN_A_BLOCK: usize = 3;

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
    let name = format!("{number} {}", shared_names(guards).together);
    let alike = match guards.len() {
        1 | 2 => String::new(),
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
    let names = shared_names(guards).each;
    let of_each: Vec<(&str, &Paragraph)> = names
        .iter()
        .zip(guards)
        .filter_map(|(name, guard)| Some((name.as_str(), guard.paragraphs.get(index)?)))
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
    let said = said_by_each(&of_each, |paragraph| &paragraph.sentences);
    let does = said_by_each(&of_each, |paragraph| &paragraph.does);
    let parts = [said, does];
    let parts: Vec<&String> = parts.iter().filter(|part| !part.is_empty()).collect();
    let whole: Vec<&str> = parts.iter().map(|part| part.as_str()).collect();
    let whole = format!("{head}. {}", whole.join(" "));
    if lines.would_take("  ", "     ", &whole) <= SHORT {
        lines.spread("  ", "     ", &whole);
        return;
    }
    lines.spread("  ", "     ", &head);
    for part in parts {
        lines.spread("     ", "     ", part);
    }
}

/// A paragraph of so few lines is said in one go.
const SHORT: usize = 4;

/// Sentences that all of these guards share, with the amounts of each.
fn said_by_each(
    of_each: &[(&str, &Paragraph)],
    sentences: impl for<'p> Fn(&'p Paragraph) -> &'p [Sentence],
) -> String {
    let Some((_, first)) = of_each.first() else {
        return String::new();
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
    said.join(" ")
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
    let mut said: Vec<String> = Vec::new();
    if first.waits_for_the_posts {
        let text = "Nothing more is looked at by hand here; the rest waits for the posts.";
        said.push(text.to_owned());
    } else if !first.next.is_empty() && !alone {
        said.push(format!("Next: {}", next(&first.next)));
    }
    said.extend(first.unclear.iter().cloned());
    for guard in guards
        .iter()
        .filter(|guard| !guard.could_not_look.is_empty())
    {
        let whose = match guards {
            [_] => String::new(),
            _ => format!(", {}", guard.name),
        };
        let what = guard.could_not_look.join("; ");
        said.push(format!("Not looked at{whose}: {what}."));
    }
    if !said.is_empty() {
        lines.spread("  ", "     ", &said.join(" "));
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
    let mut told: Vec<(Vec<String>, &GuardTold, Vec<SaidOfItem>)> = Vec::new();
    for (guard, name) in guards.iter().zip(shared_names(guards).each) {
        let others = others(guard, for_all);
        let same = told
            .iter_mut()
            .find(|(_, one, rest)| one.met == guard.met && *rest == others);
        match same {
            Some((names, ..)) => names.push(name),
            None => told.push((vec![name], guard, others)),
        }
    }
    for (names, guard, others) in told {
        let text = of_one(guard, &others, for_all, known);
        let whose = if names.len() == guards.len() {
            String::new()
        } else {
            format!("{}. ", reader::listed(&names))
        };
        if !text.is_empty() {
            lines.spread("  ", "     ", &format!("{whose}{text}"));
        }
    }
}

fn of_one(
    guard: &GuardTold,
    others: &[SaidOfItem],
    for_all: &[SaidOfItem],
    known: &mut Known,
) -> String {
    let rest = [&guard.met, others].concat();
    match known.shortly(&guard.name, &rest, &everything(guard, for_all)) {
        Some(shortly) => format!("As written: {shortly}."),
        None => {
            let parts = [("Met", guard.met.as_slice()), ("As written", others)];
            let parts: Vec<String> = parts
                .iter()
                .filter(|(_, parts)| !parts.is_empty())
                .map(|(what, parts)| format!("{what}: {}.", written::joined(parts)))
                .collect();
            parts.join(" ")
        }
    }
}

/// All that was written of a guard but what holds for all.
pub(super) fn everything(guard: &GuardTold, for_all: &[SaidOfItem]) -> Vec<SaidOfItem> {
    let mut parts = guard.all.clone();
    parts.extend(written::without(&guard.inherited, for_all));
    parts
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
        .take(NEXT_IN_A_BLOCK)
        .map(|next| next.asks.as_str())
        .collect();
    let more = items.len().saturating_sub(NEXT_IN_A_BLOCK);
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
