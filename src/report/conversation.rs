//! The walk in words: its questions, and what became of the answers.

use crate::items::Hazard;
use crate::items::Item;
use crate::items::Verdict;
use crate::judge::Authority;
use crate::judge::DangerSeen;
use crate::judge::Judged;
use crate::judge::Question;
use crate::quantities::LengthUnit;
use crate::report::cautions::DEFERRAL;
use crate::report::cautions::GENERAL;
use crate::report::decided::progress;
use crate::report::one_line;
use crate::report::palette;
use crate::report::plain;
use crate::report::reader::capital;
use crate::report::reader::fault;
use crate::report::words::several;
use crate::report::wrap::hanging_in;
use crate::rules::Ruleset;
use crate::walk::COMMANDS;
use crate::walk::GuardDone;
use crate::walk::GuardName;
use crate::walk::GuardTopic;
use crate::walk::Prompt;
use crate::walk::Reply;
use crate::walk::Taking;
use crate::walk::Topic;

/// How a question is put.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Manner {
    /// With how to measure.
    InFull,
    /// The question alone: it was put in full before.
    Short,
}

/// What is said of paper and keys when a walk begins.
#[derive(Clone, Debug, Default)]
pub struct WalkBegins<'a> {
    /// The survey's name.
    pub survey: &'a str,
    /// How many railings stand in it already.
    pub railings: usize,
    /// Today's date, where it is known.
    pub today: &'a str,
    /// The unit that a number alone has.
    pub unit: Option<LengthUnit>,
    /// The railing at which it goes on.
    pub at: Option<String>,
}

/// How a walk begins: what nobody should do, where the answers go, by what is judged.
/// The cautions stand in full behind `?` and in the report.
#[must_use]
pub fn opening_words(rulesets: &[Ruleset], begins: &WalkBegins<'_>, width: usize) -> String {
    let name = one_line(begins.survey);
    let saved = match begins.railings {
        0 => format!("Each answer is saved in {name} at once."),
        1 => format!("{name} holds 1 railing; each answer is added to it at once."),
        count => format!("{name} holds {count} railings; each answer is added to it at once."),
    };
    let mut lines = vec![
        hanging_in(width, "", &format!("{STAY_BEHIND} {saved}")),
        hanging_in(
            width,
            "",
            &format!(
                "? shows how, back mends, Enter skips, help lists the rest. Today: {}.",
                begins.today
            ),
        ),
    ];
    let id = |ruleset: &Ruleset| one_line(&ruleset.id).into_owned();
    let mut judged = judged_by(rulesets, &id, ", ");
    if Authority::of(rulesets) == Authority::Guidance {
        judged
            .push_str(" Those that hold where you are: guardrule rules find \"house in Florida\".");
    }
    lines.push(hanging_in(width, "", &judged));
    if let Some(unit) = begins.unit {
        let unit = unit.plural();
        let text = format!("A number alone is {unit} here; unit cm would change that.");
        lines.push(hanging_in(width, "", &text));
    }
    if let Some(at) = &begins.at {
        let text = format!(
            "Going on at {}; list shows what is written of it.",
            one_line(at)
        );
        lines.push(hanging_in(width, "", &text));
    }
    lines.push(hanging_in(width, "", DEFERRAL));
    lines.join("\n")
}

/// What is to be known before the questions, a sentence or two each, on whatever surface:
/// what nobody should do, by what is judged, the unit of a number alone, who decides.
#[must_use]
pub fn before_a_walk(rulesets: &[Ruleset], unit: Option<LengthUnit>) -> Vec<String> {
    let unit = unit.map(|unit| format!("A number alone is {} here.", unit.plural()));
    let mut lines = vec![STAY_BEHIND.to_owned(), judged_by_titles(rulesets)];
    lines.extend(unit);
    lines.push(DEFERRAL.to_owned());
    lines
}

/// By what is judged: who has not chosen it by its id knows it by what it is called.
pub(super) fn judged_by_titles(rulesets: &[Ruleset]) -> String {
    let called = |ruleset: &Ruleset| {
        let (title, id) = (one_line(&ruleset.title), one_line(&ruleset.id));
        format!("{title} ({id})")
    };
    judged_by(rulesets, &called, "; ")
}

/// By what is judged; in capitals where it is no law.
fn judged_by(rulesets: &[Ruleset], name: &dyn Fn(&Ruleset) -> String, between: &str) -> String {
    let named = |advisory: bool| {
        let of = rulesets
            .iter()
            .filter(|ruleset| ruleset.advisory == advisory);
        of.map(name).collect::<Vec<String>>().join(between)
    };
    let (law, advice) = (named(false), named(true));
    match (law.as_str(), advice.as_str()) {
        ("", advice) => format!("NO BUILDING RULES ARE CHECKED, only advice: {advice}."),
        (law, "") => format!("Building rules: {law}."),
        (law, advice) => format!("Building rules: {law}. Advice as well: {advice}."),
    }
}

/// The one caution that stands before all questions.
const STAY_BEHIND: &str =
    "Stay behind each railing; do not lean on it or over it; pull at nothing.";

/// A question as it is put.
#[must_use]
pub fn asked(ask: &Prompt, manner: Manner, width: usize) -> String {
    let wrap = |label: &str, text: &str| hanging_in(width, label, text);
    let question = match manner {
        Manner::InFull => &ask.question,
        Manner::Short => &ask.short,
    };
    let title = format!("{}: {}", one_line(&ask.title), one_line(question));
    let mut lines = vec![palette::heading(&wrap("", &title))];
    if manner == Manner::InFull {
        lines.extend(ask.how.iter().map(|how| wrap("  ", &one_line(how))));
    }
    if !ask.so_far.is_empty() {
        let so_far: Vec<_> = ask.so_far.iter().map(|text| one_line(text)).collect();
        lines.push(wrap("  ", &format!("So far: {}.", so_far.join("; "))));
    }
    lines.extend(choices(ask, manner, width));
    if !ask.examples.is_empty() && manner == Manner::InFull {
        lines.push(wrap(
            "  ",
            &format!("For example: {}", ask.examples.join("; ")),
        ));
    }
    if !ask.enter.is_empty() {
        lines.push(wrap("  ", &format!("[Enter: {}]", one_line(&ask.enter))));
    }
    lines.join("\n")
}

/// The choices: a line each where they are told in words, else one behind the other.
fn choices(ask: &Prompt, manner: Manner, width: usize) -> Vec<String> {
    let numbered = ask.taking == Taking::ByNumber;
    let each: Vec<String> = (1..)
        .zip(&ask.choices)
        .map(|(number, choice): (usize, _)| {
            let key = one_line(&choice.key);
            let key = if numbered {
                format!("{number} {key}")
            } else {
                key.into_owned()
            };
            let says = match manner {
                Manner::InFull => &choice.says,
                Manner::Short => &choice.short,
            };
            if says.is_empty() {
                key
            } else if numbered || says.starts_with('(') {
                format!("{key} ({})", one_line(says).trim_matches(['(', ')']))
            } else {
                format!("{key} {}", one_line(says))
            }
        })
        .collect();
    if each.is_empty() {
        return Vec::new();
    }
    let told = ask.choices.iter().any(|choice| choice.says.len() > 12);
    if told && !numbered && manner == Manner::InFull {
        return each
            .iter()
            .map(|choice| hanging_in(width, "  ", choice))
            .collect();
    }
    vec![hanging_in(width, "  ", &each.join(", "))]
}

/// What became of an answer.
#[must_use]
pub fn answered(said: &Reply<'_>, ask: &Prompt, width: usize) -> String {
    let wrap = |label: &str, text: &str| hanging_in(width, label, text);
    match said {
        Reply::Copied { from, taken, but } => wrap("  ", &copied(from, taken, but)),
        Reply::Done(done) => wrap("  ", &guard_done(done)),
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
        Reply::Noted(rows, note) => wrap("  ", &noted(rows, note)),
        Reply::Refused(message, help) => {
            let mut text = format!("Not taken: {}.", one_line(message));
            if let Some(help) = help {
                text.push_str(&format!(" {}.", capital(&one_line(help))));
            }
            palette::verdict(&wrap("  ", &text), Verdict::NotMeasured)
        }
        Reply::Remark(text) => wrap("  ", &one_line(text)),
        Reply::Settled(settled) => progress(settled, width),
        Reply::Stop(place, dangers) => stopped(place, dangers, width),
        Reply::Understood {
            item,
            reading,
            meant,
            note,
            place,
        } => {
            let mut text = format!("{item}: {}", one_line(reading));
            if let Some(meant) = meant {
                // only the unit is more: then it is said with its unit
                match meant.strip_prefix(reading.as_str()) {
                    Some(unit) => text.push_str(&one_line(unit)),
                    None if only_units_more(reading, meant) => {
                        text = format!("{item}: {}", one_line(meant));
                    }
                    None => text.push_str(&format!(", that is {}", one_line(meant))),
                }
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
        Reply::UntilMended => wrap("  ", UNTIL_MENDED),
    }
}

/// Whether the two differ in nothing but units behind numbers.
fn only_units_more(reading: &str, meant: &str) -> bool {
    let mut left = reading.split(' ').peekable();
    for word in meant.split(' ') {
        if left.peek() == Some(&word) {
            left.next();
        } else if !["in", "ft", "mm", "cm", "m"].contains(&word) {
            return false;
        }
    }
    left.next().is_none()
}

/// What balls told: `A 4 in ball stops everywhere, a 3 1/2 in ball passes`.
fn balls_told(rows: &[(Item, String)]) -> Option<String> {
    let openings = rows.iter().filter(|(item, _)| *item == Item::Opening);
    let mut stops = Vec::new();
    let mut passes = Vec::new();
    for (_, written) in openings {
        // on a stair both stand in one reading
        let each = match written.split_once(" ball passes ") {
            Some((passes, stops)) if stops.contains(" ball ") => {
                vec![stops.to_owned(), format!("{passes} ball passes")]
            }
            Some(_) | None => vec![written.clone()],
        };
        for one in each {
            let (size, what) = one.split_once(" ball ")?;
            let told = format!("{} ball {}", one_line(size), one_line(what));
            if what.starts_with("stops") {
                stops.push(told);
            } else {
                passes.push(told);
            }
        }
    }
    let all: Vec<String> = stops.into_iter().chain(passes).collect();
    (!all.is_empty()).then(|| format!("A {}", all.join(", a ")))
}

/// Said once, at the first shortfall.
const UNTIL_MENDED: &str = "Until it is put right keep small children from it. The local authority and licensed professionals decide.";

/// Several rows of one answer.
fn noted(rows: &[(Item, String)], note: &str) -> String {
    let nothing_seen = rows
        .iter()
        .any(|(item, word)| *item == Item::Condition && word == "none seen");
    let flaking = rows
        .iter()
        .any(|(item, word)| *item == Item::Paint && word == "flaking");
    let mut text = "Noted.".to_owned();
    if nothing_seen {
        text.push_str(if flaking {
            " By eye nothing is missing, broken or rotten."
        } else {
            " By eye nothing is missing, broken, rotten or flaking."
        });
    }
    let balls = balls_told(rows);
    if let Some(balls) = &balls {
        text.push_str(&format!(" {balls}."));
    }
    let each: Vec<String> = rows
        .iter()
        .filter(|(item, word)| {
            let seen = *item == Item::Condition || *item == Item::Paint && word == "sound";
            let tried = *item == Item::Opening && balls.is_some();
            !(nothing_seen && seen || tried)
        })
        .map(|(item, written)| format!("{item}: {}", one_line(written)))
        .collect();
    if !each.is_empty() {
        text.push_str(&format!(" {}.", each.join("; ")));
    }
    if flaking {
        text.push_str(" From before 1978 it may hold lead: do not scrape, sand or drill it.");
    }
    if !note.is_empty() {
        text.push_str(&format!(" (\"{}\")", one_line(note)));
    }
    text
}

/// What was taken over from another railing.
fn copied(from: &GuardName, taken: &[(Item, String)], but: &[(Item, String)]) -> String {
    let each = |all: &[(Item, String)]| {
        let each: Vec<String> = all
            .iter()
            .map(|(item, written)| format!("{item} {}", one_line(written)))
            .collect();
        each.join(", ")
    };
    let from = one_line(&from.says()).into_owned();
    let mut text = if taken.is_empty() {
        format!("Nothing was to be taken over from {from}.")
    } else {
        format!("Like {from}: {}.", each(taken))
    };
    if !but.is_empty() {
        text.push_str(&format!(" But: {}.", each(but)));
    }
    text.push_str(
        " Nothing that is looked at, pushed or measured is copied. Wrong here? correct ITEM.",
    );
    text
}

/// The last line of a railing: how it came out, and what stays open.
fn guard_done(done: &GuardDone<'_>) -> String {
    let name = one_line(&done.place.says()).to_uppercase();
    let judged = &done.judged;
    if let [first, ..] = judged.dangers.as_slice() {
        return format!(
            "{name}: {}. What was not measured here waits for the repair.",
            first.danger.act
        );
    }
    let (law, by) = match done.authority {
        Authority::Law => (true, "the building rules"),
        Authority::Guidance => (false, "the advice"),
    };
    let short = |advisory: bool| {
        let mut things: Vec<String> = Vec::new();
        for finding in judged.findings.iter().filter(|finding| {
            finding.verdict == Verdict::FallsShort && (finding.ruleset.advisory && law) == advisory
        }) {
            let thing = fault(finding);
            if !things.contains(&thing) {
                things.push(thing);
            }
        }
        things
    };
    let (wrong, advised) = (short(false), short(true));
    let mut text = match judged.verdict {
        Verdict::DoesNotApply => {
            format!("{name}: these rules ask for no railing here; that is no word about danger.")
        }
        // whichever of the unwritten holds, without one rule that says so
        Verdict::FallsShort if wrong.is_empty() => format!("{name} falls short of {by}."),
        Verdict::FallsShort => format!("{name} falls short of {by}: {}.", wrong.join(", ")),
        Verdict::Meets => format!("{name} meets what was checked of {by}."),
        Verdict::NotMeasured | Verdict::NotSettled | Verdict::TooClose => {
            format!("{name} is unfinished: {by} are not settled.")
        }
    };
    if !advised.is_empty() {
        text.push_str(&format!(" Advice not followed: {}.", advised.join(", ")));
    }
    if judged.strength_unchecked {
        text.push_str(" Whether it would hold was not checked.");
    }
    let open = left_open(judged);
    if !open.is_empty() {
        text.push_str(&format!(" Left open: {open}; again asks once more."));
    }
    text
}

/// How many open items are named. (common practice, no source)
const NAMED: usize = 4;

/// What is still to be found out where a hazard is undecided.
fn left_open(judged: &Judged<'_>) -> String {
    let undecided = |question: &&Question| {
        let decided = |verdict: Option<Verdict>| {
            matches!(verdict, Some(Verdict::FallsShort | Verdict::Meets))
        };
        question.item.info().load_path.is_none()
            && judged.hazards.iter().any(|of| {
                question.item.info().hazards.contains(&of.hazard)
                    && !decided(of.verdict.or(of.guidance))
            })
    };
    let questions = judged.questions();
    let open: Vec<String> = questions
        .iter()
        .filter(undecided)
        .map(|question| question.item.name().to_owned())
        .collect();
    match open.len() {
        0..=NAMED => open.join(", "),
        more => format!("{} and {} more", open[..NAMED].join(", "), more - NAMED),
    }
}

/// What to do where a danger was seen: its act, and nothing more.
fn stopped(place: &GuardName, dangers: &[DangerSeen], width: usize) -> String {
    let mut lines = vec!["!!! STOP !!!".to_owned()];
    let place = one_line(&place.says()).into_owned();
    lines.extend(dangers.iter().map(|seen| {
        let text = format!("{place}: {}: {}.", seen.danger.act, seen.danger.says);
        hanging_in(width, "", &text)
    }));
    let open_edge = dangers.iter().any(|seen| seen.item == Item::Guard);
    let moves = dangers
        .iter()
        .any(|seen| seen.danger.hazard == Hazard::GiveWay);
    let acts = if open_edge {
        "Keep children away from it now: a screwed gate, or a lock where it is no way out in a fire. No rope or ribbon: a child goes under it. Nothing is measured at an open edge."
    } else if moves {
        "Step back from it now. Close the way to it: a lock, or a board or gate that nobody climbs; never lock or block a way out in a fire. Tie nothing to it, hang nothing on it, push it no more."
    } else {
        "Step back from it now, and keep everybody away. Close the way to it; never lock or block a way out in a fire."
    };
    lines.push(hanging_in(width, "", acts));
    lines.push(hanging_in(
        width,
        "",
        "Nothing more is measured or touched here. Go on with the next one. Who decides: the local authority and licensed professionals.",
    ));
    palette::verdict(&lines.join("\n"), Verdict::FallsShort)
}

fn further_help(ask: &Prompt, width: usize) -> String {
    let mut lines: Vec<String> = Vec::new();
    if let Some(drawing) = ask.drawing {
        let scene = drawing.scene();
        let drawn = plain(scene);
        let fits = drawn.iter().all(|line| line.chars().count() + 2 <= width);
        let indent = if fits { "  " } else { "" };
        lines.extend(drawn.into_iter().map(|line| format!("{indent}{line}")));
        lines.push(hanging_in(width, "  ", scene.caption));
    }
    let more = ask.more.iter().map(String::as_str).chain(GENERAL);
    lines.extend(more.map(|text| hanging_in(width, "  - ", text)));
    if ask.waiting > 0 {
        let rules = several(ask.waiting, "rule waits", "rules wait");
        lines.push(hanging_in(width, "  - ", &format!("{rules} for it.")));
    }
    if let Topic::Guard(GuardTopic::Item(item)) | Topic::Guard(GuardTopic::Ball(item, _)) =
        ask.topic
    {
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
