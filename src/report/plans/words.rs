//! Words of the plans that belong to no single kind of remedy.

use std::collections::BTreeMap;

use crate::geometry::BayLayout;
use crate::geometry::added_between;
use crate::items::Item;
use crate::items::Verdict;
use crate::quantities::LengthUnit;
use crate::remedy::Bay;
use crate::remedy::Broken;
use crate::remedy::Labour;
use crate::remedy::MakesHoles;
use crate::remedy::MaterialPart;
use crate::remedy::Needed;
use crate::remedy::RefusedRemedy;
use crate::remedy::RemedyKind;
use crate::remedy::RemedyPlan;
use crate::remedy::WaitsFor;
use crate::remedy::WhoDoes;
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

/// `Labour without 1 step that cannot be counted yet: 2 to 5 hours, without travel (common
/// practice, no source).`; `None` where nothing is counted.
pub(super) fn labour_in_all(total: LabourTotal) -> Option<String> {
    let time = time_in_all(total.minutes)?;
    Some(format!(
        "Labour{}: {time}, without travel (common practice, no source).",
        not_counted(total)
    ))
}

/// The same for all railings, by who does it.
pub(super) fn labour_by_trade(by: &BTreeMap<WhoDoes, LabourTotal>) -> Option<String> {
    let all = by.iter().filter_map(|(who, total)| {
        let time = time_in_all(total.minutes)?;
        let open = match total.uncounted {
            0 => String::new(),
            open => format!(" (steps not counted yet: {open})"),
        };
        Some(format!("{} {time}{open}", who.name()))
    });
    let all: Vec<String> = all.collect();
    (!all.is_empty()).then(|| {
        format!(
            "Labour, without travel (common practice, no source): {}.",
            all.join("; ")
        )
    })
}

fn not_counted(total: LabourTotal) -> String {
    match total.uncounted {
        0 => String::new(),
        1 => " without 1 step that cannot be counted yet".to_owned(),
        open => format!(" without {open} steps that cannot be counted yet"),
    }
}

/// `2 1/2 to 5 hours`
fn time_in_all([from, to]: [u32; 2]) -> Option<String> {
    let hours = |minutes: u32| {
        let halves = minutes.div_ceil(30);
        match (halves / 2, halves % 2) {
            (0, _) => "1/2".to_owned(),
            (whole, 0) => whole.to_string(),
            (whole, _) => format!("{whole} 1/2"),
        }
    };
    match to {
        0 => None,
        1..=60 => Some(format!("{from} to {to} minutes")),
        _ if from < 30 => Some(format!("{from} minutes to {} hours", hours(to))),
        _ => Some(format!("{} to {} hours", hours(from), hours(to))),
    }
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

/// `1 to 24 x `, `13 x `; nothing where nothing was counted.
pub(super) fn so_many(count: [u32; 2]) -> String {
    match count {
        [_, 0] => String::new(),
        count => format!("{} x ", range(count)),
    }
}

/// `1 to 24 x upright bars 3/4 in wide, 32 in long`
pub(in crate::report) fn part(part: &MaterialPart, unit: LengthUnit) -> String {
    // one that runs along the railing is bought by its length
    let count = part.how_many.range();
    let count = count.filter(|count| part.buy.is_none() || *count != [1, 1]);
    let count = count.map_or_else(String::new, so_many);
    let length = part.length.map_or_else(String::new, |length| {
        format!(", {} long", length.readable_up(unit))
    });
    let buy = part.buy.map_or_else(String::new, |buy| {
        format!(" (buy {}, a tenth for waste)", buy.readable_up(unit))
    });
    let stock = part.stock(unit).map_or_else(String::new, |stock| {
        format!(
            " ({} from a length of {}, as each cut takes {}: buy {})",
            stock.each,
            stock.long.exact(unit),
            stock.cut.exact(unit),
            range(stock.lengths)
        )
    });
    format!("{count}{}{length}{buy}{stock}", part.what)
}

/// `1 to 14`, `3`
pub(super) fn range([least, most]: [u32; 2]) -> String {
    if least < most {
        format!("{least} to {most}")
    } else {
        most.to_string()
    }
}

/// What has to be so before a remedy is begun, to be put before it.
pub(super) const fn waits(waits: WaitsFor) -> &'static str {
    match waits {
        WaitsFor::Nothing => "",
        WaitsFor::AFirmGuard => "once it stands firm: ",
        WaitsFor::ALook => "once somebody has pushed it and looked at what holds its posts: ",
    }
}

/// Where the bars of a bay are marked: of balusters put between others, in each such gap.
pub(super) fn marks(bay: &Bay, unit: LengthUnit) -> Vec<String> {
    let marked = |layout: &BayLayout| {
        let marks = layout.marks.iter().map(|mark| mark.exact(unit));
        marks.collect::<Vec<_>>().join(", ")
    };
    let block = |layout: &BayLayout| {
        format!(
            "a block of {} holds them while they are fixed",
            layout.spacer.exact(unit)
        )
    };
    if bay.between.is_empty() {
        let layout = bay.plan.layout().ok();
        let says = layout.map(|layout| {
            format!(
                "in a bay of {}, from the left post's face to the near face of each, never adding up: {}; {}.",
                bay.plan.clear.exact(unit),
                marked(&layout),
                block(&layout)
            )
        });
        return says.into_iter().collect();
    }
    let between = added_between(&bay.plan, &bay.between).unwrap_or_default();
    let each = between.iter().filter(|one| !one.layout.marks.is_empty());
    each.map(|one| {
        format!(
            "in a gap of {}, from the left bar's face to the near face of each new one: {}; {}.",
            one.gap.readable(unit),
            marked(&one.layout),
            block(&one.layout)
        )
    })
    .collect()
}

/// What is not offered: what is held back for one reason together, by its names; what would
/// break something by its act, with what.
pub(super) fn not_offered(refused: &[RefusedRemedy]) -> Vec<String> {
    let mut held: Vec<(&str, Vec<&str>)> = Vec::new();
    let mut all: Vec<String> = Vec::new();
    for one in refused {
        let name = one.offered.kind.row().name;
        if !one.breaks.is_empty() {
            let act = one.offered.says.trim_end_matches('.');
            all.push(format!("{act}; {}", refusal(one)));
        } else if let Some((_, names)) = held.iter_mut().find(|(why, _)| *why == one.why) {
            names.push(name);
        } else {
            held.push((&one.why, vec![name]));
        }
    }
    let held = held.into_iter();
    all.extend(held.map(|(why, names)| format!("{}: {why}", names.join("; "))));
    all
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
    let what = if item == Item::InfillLoose {
        "loose or missing: "
    } else {
        ""
    };
    for (_, observation) in guard.of(item) {
        let written = format!("{what}{}", one_line(&observation.written));
        if !all.contains(&written) {
            all.push(written);
        }
    }
    all.join("; ")
}
