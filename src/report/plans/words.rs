//! Words of the plans that belong to no single kind of remedy.

use crate::items::Item;
use crate::items::Verdict;
use crate::quantities::LengthUnit;
use crate::remedy::Broken;
use crate::remedy::HowMany;
use crate::remedy::Labour;
use crate::remedy::MakesHoles;
use crate::remedy::MaterialPart;
use crate::remedy::Needed;
use crate::remedy::RefusedRemedy;
use crate::remedy::RemedyKind;
use crate::remedy::RemedyPlan;
use crate::remedy::tonight_words;
use crate::report::one_line;
use crate::report::plans::counts::LabourTotal;
use crate::report::reader;
use crate::survey::Guard;

/// What to do tonight: the act as a check has it, and what more there is to mind.
pub(super) fn tonight(kind: RemedyKind) -> String {
    let Some(words) = tonight_words(kind) else {
        return kind.row().name.to_owned();
    };
    let shortly = reader::capital(words.shortly);
    let lead = if words.does.starts_with(&shortly) {
        String::new()
    } else {
        format!("{shortly}. ")
    };
    let more = if words.more.is_empty() {
        String::new()
    } else {
        format!(" {}", words.more)
    };
    format!("{lead}{}{more}", words.does)
}

/// `somebody handy; needs the owner's leave, in writing; makes holes; 12 to 24 minutes a bar`
pub(super) fn takes(plan: &RemedyPlan, kind: RemedyKind, labour: Option<Labour>) -> String {
    let row = kind.row();
    let mut parts = vec![plan.who(kind).name().to_owned()];
    parts.extend(leave(row.leave).map(str::to_owned));
    parts.extend(holes(row.holes).map(str::to_owned));
    parts.extend(permit(row.permit).map(str::to_owned));
    parts.extend(labour.map(time));
    parts.join("; ")
}

fn leave(needed: Needed) -> Option<&'static str> {
    match needed {
        Needed::No => None,
        Needed::Ask => Some("a tenant asks first"),
        Needed::Yes => Some("a tenant needs the owner's leave, in writing"),
    }
}

fn holes(holes: MakesHoles) -> Option<&'static str> {
    match holes {
        MakesHoles::No => Some("makes no holes"),
        MakesHoles::Either => Some("with or without holes"),
        MakesHoles::Yes => Some("makes holes"),
    }
}

fn permit(needed: Needed) -> Option<&'static str> {
    match needed {
        Needed::No => None,
        Needed::Ask => Some("ask the building office whether it needs a permit"),
        Needed::Yes => Some("usually needs a permit"),
    }
}

/// `Labour, as far as it is counted: 2 to 5 hours, without travel; 1 step is not counted
/// (common practice, no source).`; `None` where nothing is counted.
pub(super) fn labour_in_all(total: LabourTotal) -> Option<String> {
    let [from, to] = total.minutes;
    if to == 0 {
        return None;
    }
    let hours = |minutes: u32| {
        let halves = minutes.div_ceil(30);
        match (halves / 2, halves % 2) {
            (0, _) => "1/2".to_owned(),
            (whole, 0) => whole.to_string(),
            (whole, _) => format!("{whole} 1/2"),
        }
    };
    let open = match total.uncounted {
        0 => String::new(),
        1 => "; 1 step is not counted".to_owned(),
        open => format!("; {open} steps are not counted"),
    };
    let time = if to <= 60 {
        format!("{from} to {to} minutes")
    } else {
        format!("{} to {} hours", hours(from), hours(to))
    };
    Some(format!(
        "Labour, where every place needs it: {time}, without travel{open} (common practice, no source)."
    ))
}

/// `12 to 24 minutes a bar`, `1 1/2 to 3 hours a flight`
pub(super) fn time(labour: Labour) -> String {
    let [from, to] = labour.minutes;
    if to <= 60 {
        return format!("{from} to {to} minutes {}", labour.per.name());
    }
    let hours = |minutes: u32| {
        let half = if minutes % 60 >= 30 { "1/2" } else { "" };
        match (minutes / 60, half) {
            (0, half) => half.to_owned(),
            (whole, "") => whole.to_string(),
            (whole, half) => format!("{whole} {half}"),
        }
    };
    format!(
        "{} to {} hours {}",
        hours(from.max(30)),
        hours(to),
        labour.per.name()
    )
}

/// `at most 24 upright bars 3/4 in wide, 32 in long`
pub(in crate::report) fn part(part: &MaterialPart, unit: LengthUnit) -> String {
    let count = match &part.how_many {
        HowMany::Exactly(count) => format!("{count} x "),
        HowMany::AtMost(count) => format!("at most {count} x "),
        HowMany::Write(_) => String::new(),
    };
    let length = part.length.map_or_else(String::new, |length| {
        format!(", {} long", length.readable_up(unit))
    });
    let buy = part.buy.map_or_else(String::new, |buy| {
        format!(" (buy {}, a tenth for waste)", buy.readable_up(unit))
    });
    format!("{count}{}{length}{buy}", part.what)
}

/// Why a remedy is not offered, in a sentence.
pub(in crate::report) fn refusal(refused: &RefusedRemedy) -> String {
    if refused.breaks.is_empty() {
        return refused.why.clone();
    }
    let mut told: Vec<String> = Vec::new();
    for broken in &refused.breaks {
        let says = broke(broken);
        if !told.contains(&says) && told.len() < 2 {
            told.push(says);
        }
    }
    told.join("; and ")
}

fn broke(broken: &Broken) -> String {
    let becomes = match broken.becomes {
        Verdict::FallsShort => "would fall short",
        Verdict::TooClose => "would be too near to tell",
        Verdict::NotMeasured | Verdict::NotSettled => "could no longer be judged",
        Verdict::Meets | Verdict::DoesNotApply => "would change",
    };
    let with = broken
        .written
        .as_ref()
        .map_or_else(String::new, |written| format!(" at {}", one_line(written)));
    let rule = one_line(&broken.says);
    format!(
        "{}{with} {becomes}: \"{}\"",
        broken.key.item,
        rule.trim_end_matches('.')
    )
}

/// The readings of an item as they were written.
pub(super) fn readings(guard: &Guard, item: Item) -> String {
    let mut all: Vec<String> = Vec::new();
    for (_, observation) in guard.of(item) {
        let written = one_line(&observation.written).into_owned();
        if !all.contains(&written) {
            all.push(written);
        }
    }
    all.join("; ")
}
