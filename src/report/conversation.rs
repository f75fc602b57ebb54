//! The walk in words: its questions, and what became of the answers.

use crate::items::Verdict;
use crate::judge::Finding;
use crate::judge::Judged;
use crate::judge::Question;
use crate::report::advice;
use crate::report::cautions::DEFERRAL;
use crate::report::cautions::GENERAL;
use crate::report::one_line;
use crate::report::palette;
use crate::report::reader::compared;
use crate::report::words::several;
use crate::report::wrap::hanging_in;
use crate::rules::Ruleset;
use crate::walk::COMMANDS;
use crate::walk::GuardName;
use crate::walk::Prompt;
use crate::walk::Reply;
use crate::walk::Topic;

/// How a question is put.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Manner {
    /// With how to measure.
    InFull,
    /// The question alone: it was put in full before.
    Short,
}

/// How many shortfalls are told at once; the report has them all.
const TOLD: usize = 3;

/// The cautions with which a walk begins, and what it judges by.
#[must_use]
pub fn opening_words(rulesets: &[Ruleset], width: usize) -> String {
    let mut lines = vec![palette::heading("Before you begin")];
    let act = [
        "Stay behind the guard. Never lean on it, over it or out of a window to measure: write not reached instead.",
        "Nothing here is to be pulled or loaded to see whether it holds.",
    ];
    for caution in GENERAL.iter().chain(&act).chain(std::iter::once(&DEFERRAL)) {
        lines.push(hanging_in(width, "  - ", caution));
    }
    lines.push(String::new());
    for ruleset in rulesets {
        let kind = if ruleset.advisory { "guidance" } else { "law" };
        let text = format!(
            "Judged by {}: {} ({kind})",
            one_line(&ruleset.id),
            one_line(&ruleset.title)
        );
        lines.push(hanging_in(width, "", &text));
    }
    if rulesets.iter().all(|ruleset| ruleset.advisory) {
        let text = "No law is checked, only guidance. For the code of your place: guardrule rules find flat in Florida (say where you are), then guardrule walk FILE --rules ID.";
        lines.push(hanging_in(width, "", text));
    }
    lines.join("\n")
}

/// A question as it is put.
#[must_use]
pub fn asked(ask: &Prompt, manner: Manner, width: usize) -> String {
    let wrap = |label: &str, text: &str| hanging_in(width, label, text);
    let mut title = match &ask.topic {
        Topic::Ball(item, _) | Topic::Fact(item) | Topic::Item(item) => format!("{item}: "),
        Topic::Finished
        | Topic::Name
        | Topic::Reason(_)
        | Topic::Slip(_)
        | Topic::Unit(_)
        | Topic::Unlikely(_) => String::new(),
    };
    title.push_str(&one_line(&ask.question));
    let mut lines = vec![palette::heading(&wrap("", &title))];
    if manner == Manner::InFull {
        lines.extend(ask.how.iter().map(|how| wrap("  ", how)));
    }
    if !ask.so_far.is_empty() {
        let so_far: Vec<_> = ask.so_far.iter().map(|text| one_line(text)).collect();
        lines.push(wrap("  ", &format!("So far: {}.", so_far.join("; "))));
    }
    if !ask.words.is_empty() {
        lines.push(wrap("  ", &ask.words.join(", ")));
    } else if !ask.examples.is_empty() && manner == Manner::InFull {
        lines.push(wrap(
            "  ",
            &format!("For example: {}", ask.examples.join("; ")),
        ));
    }
    lines.push(wrap("  ", &format!("[Enter: {}]", one_line(&ask.enter))));
    lines.join("\n")
}

/// What became of an answer.
#[must_use]
pub fn answered(said: &Reply<'_>, ask: &Prompt, width: usize) -> String {
    let wrap = |label: &str, text: &str| hanging_in(width, label, text);
    match said {
        Reply::Copied(from, items) => {
            let all: Vec<String> = items
                .iter()
                .map(|(item, written)| format!("{item} {}", one_line(written)))
                .collect();
            let text = if all.is_empty() {
                format!(
                    "Nothing was to be taken over from {}.",
                    one_line(&from.says())
                )
            } else {
                format!(
                    "Taken over from {}: {}. Where one differs here: correct ITEM.",
                    one_line(&from.says()),
                    all.join("; ")
                )
            };
            wrap("  ", &text)
        }
        Reply::Done(place, open, verdict) => wrap("", &guard_done(place, open, *verdict)),
        Reply::Help => {
            let rows = COMMANDS.iter();
            let lines: Vec<String> = rows
                .map(|(typed, does)| wrap(&format!("  {typed:<16}"), does))
                .collect();
            lines.join("\n")
        }
        Reply::Listing(all) if all.is_empty() => wrap("  ", "Nothing is written here yet."),
        Reply::Listing(all) => {
            let lines = all
                .iter()
                .map(|(name, text)| wrap(&format!("  {}: ", one_line(name)), &one_line(text)));
            lines.collect::<Vec<String>>().join("\n")
        }
        Reply::More => further_help(ask, width),
        Reply::Refused(message, help) => {
            let mut text = format!("Not taken: {}.", one_line(message));
            if let Some(help) = help {
                text.push_str(&format!(" {}.", capital(&one_line(help))));
            }
            palette::verdict(&wrap("  ", &text), Verdict::NotMeasured)
        }
        Reply::Remark(text) => wrap("  ", &one_line(text)),
        Reply::Settled(settled) => {
            let (_, judged, new) = &**settled;
            progress(judged, new, width)
        }
        Reply::Understood {
            item,
            reading,
            meant,
            note,
            place,
        } => {
            let mut text = format!("{item}: {}", one_line(reading));
            if let Some(meant) = meant {
                text.push_str(&format!(", that is {}", one_line(meant)));
            }
            if !note.is_empty() {
                text.push_str(&format!(" ({})", one_line(note)));
            }
            if place.guard.is_empty() && !item.is_survey_fact() {
                let whole = if place.unit.is_empty() {
                    "the whole survey".to_owned()
                } else {
                    format!("the whole of {}", one_line(&place.unit))
                };
                text.push_str(&format!(", for {whole}"));
            }
            wrap("  ", &format!("Noted. {}.", text.trim_end_matches('.')))
        }
    }
}

/// With a capital in front, as a sentence begins.
fn capital(text: &str) -> String {
    let mut letters = text.chars();
    let first = letters.next().map(char::to_uppercase);
    first.into_iter().flatten().chain(letters).collect()
}

/// What is still to be found out; what strength alone wants to know in a few words.
fn open_questions(open: &[Question]) -> String {
    let (of_strength, others): (Vec<&Question>, Vec<&Question>) =
        open.iter().partition(|q| q.of_strength);
    let names = others
        .iter()
        .map(|question| question.item.name().to_owned());
    let mut parts: Vec<String> = names.collect();
    match of_strength.as_slice() {
        [] => {}
        [one] => parts.push(format!("for strength {}", one.item)),
        [one, rest @ ..] => {
            parts.push(format!("for strength {} and {} more", one.item, rest.len()))
        }
    }
    parts.join(", ")
}

fn guard_done(place: &GuardName, open: &[Question], verdict: Verdict) -> String {
    let mut text = format!("{}: ", one_line(&place.says()));
    if open.is_empty() {
        text.push_str("nothing more to find out for these rules.");
    } else {
        let left = format!("left open: {}. again asks once more.", open_questions(open));
        text.push_str(&left);
    }
    text.push_str(match verdict {
        Verdict::DoesNotApply => {
            " These rules ask for no guard here; that is no word about danger."
        }
        Verdict::FallsShort => " It falls short; the report says what would put it right.",
        Verdict::Meets => " It meets what was checked; that says nothing about strength.",
        Verdict::NotMeasured | Verdict::NotSettled | Verdict::TooClose => {
            " It is undecided so far."
        }
    });
    text
}

fn further_help(ask: &Prompt, width: usize) -> String {
    let mut lines: Vec<String> = ask
        .more
        .iter()
        .map(|text| hanging_in(width, "  - ", text))
        .collect();
    if ask.waiting > 0 {
        let rules = several(ask.waiting, "rule waits", "rules wait");
        lines.push(hanging_in(width, "  - ", &format!("{rules} for it.")));
    }
    if let Topic::Item(item) | Topic::Ball(item, _) = ask.topic {
        let none = if item.info().none_allowed {
            "none: looked, and there is none. not reached: could not look."
        } else {
            "not reached: could not look."
        };
        lines.push(hanging_in(width, "  - ", none));
    }
    lines.push(hanging_in(
        width,
        "  - ",
        "help lists what else can be typed.",
    ));
    lines.join("\n")
}

/// What an answer has decided, and what is still to be found out.
fn progress(judged: &Judged<'_>, new: &[usize], width: usize) -> String {
    let of = |verdict: Verdict| -> Vec<&Finding<'_>> {
        let findings = new.iter().filter_map(|index| judged.findings.get(*index));
        findings
            .filter(|finding| finding.verdict == verdict)
            .collect()
    };
    let mut lines = Vec::new();
    let told = [
        (Verdict::FallsShort, "Falls short"),
        (Verdict::TooClose, "Too near to tell"),
        (Verdict::NotSettled, "The rule is unclear"),
    ];
    for (verdict, name) in told {
        let found = of(verdict);
        for finding in found.iter().take(TOLD) {
            let by = if finding.ruleset.advisory {
                "advice"
            } else {
                "building rules"
            };
            let text = format!("{name} ({by}): {}.", compared(finding));
            lines.push(palette::verdict(&hanging_in(width, "  ", &text), verdict));
            if let (Verdict::TooClose, Some(settle)) = (verdict, advice::settle(finding)) {
                lines.push(hanging_in(
                    width,
                    "    ",
                    &format!("To settle it: {settle}"),
                ));
            }
        }
        if found.len() > TOLD {
            let rest = several(found.len() - TOLD, "other rule", "other rules");
            lines.push(hanging_in(width, "  ", &format!("{name} of {rest} too.")));
        }
    }
    let met = of(Verdict::Meets);
    if !met.is_empty() {
        let law = met
            .iter()
            .filter(|finding| !finding.ruleset.advisory)
            .count();
        let guidance = met.len() - law;
        let mut parts = Vec::new();
        if law > 0 {
            parts.push(several(law, "building rule", "building rules"));
        }
        if guidance > 0 {
            parts.push(several(guidance, "point of advice", "points of advice"));
        }
        let text = format!("Meets {}.", parts.join(", "));
        lines.push(palette::verdict(
            &hanging_in(width, "  ", &text),
            Verdict::Meets,
        ));
    }
    let open = judged.questions();
    if !open.is_empty() {
        let text = format!("Still to find out: {}.", open_questions(&open));
        lines.push(palette::aside(&hanging_in(width, "  ", &text)));
    }
    lines.join("\n")
}
