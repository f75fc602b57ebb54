//! The reader's words: what a thing measured is called, what is wrong with it,
//! by how much. People who never read a building code read these.

use crate::items::Hazard;
use crate::items::Item;
use crate::items::Verdict;
use crate::judge::Finding;
use crate::judge::LimitShown;
use crate::judge::Operator;
use crate::quantities::Length;
use crate::quantities::LengthUnit;
use crate::reading::Value;
use crate::report::advice;
use crate::report::one_line;
use crate::report::strength;
use crate::report::words;
use crate::report::wrap::tied;
use crate::rules::Status;
use crate::survey::Guard;
use crate::survey::Observation;

/// What a thing is called at the head of its paragraph, where not by its own name.
const TITLES: [(Item, &str); 14] = [
    (Item::Guard, "Open edge"),
    (Item::PostFastening, "What holds it"),
    (Item::Opening, "Gaps"),
    (Item::BottomGap, "Gap at the bottom"),
    (Item::EdgeGap, "Gap beside the floor's edge"),
    (Item::StairTriangle, "Triangle at the steps"),
    (Item::RiserOpening, "Gaps between the treads"),
    (Item::VOpening, "Gap that narrows downward"),
    (Item::Infill, "Bars to climb"),
    (Item::InfillLoose, "Bars"),
    (Item::ThingToClimb, "To climb on"),
    (Item::TopOfStairsGate, "Gate at the top"),
    (Item::Height, "Height"),
    (Item::Paint, "Paint"),
];

/// What is wrong, where it is not a size.
const FAULTS: [(Item, &str); 12] = [
    (Item::Guard, "no railing"),
    (Item::PostFastening, "how its posts are held"),
    (Item::FastenedTo, "what its posts are fixed to"),
    (Item::NotchedPost, "notched posts"),
    (Item::Infill, "bars like a ladder"),
    (Item::Foothold, "something to step on"),
    (Item::ThingToClimb, "something to climb on"),
    (Item::TopOfStairsGate, "the gate at the top"),
    (Item::Paint, "flaking paint"),
    (Item::Handrail, "no handrail"),
    (Item::HandrailSides, "a handrail missing on one side"),
    (Item::StairTriangle, "triangles at the steps too wide"),
];

/// The item under which this one is spoken of.
pub(super) fn topic(finding: &Finding<'_>) -> Item {
    if finding.chain.is_some() {
        return Item::PostFastening;
    }
    finding.item.topic()
}

/// What a thing measured is called.
pub(super) fn title(topic: Item) -> String {
    let known = TITLES.iter().find(|(item, _)| *item == topic);
    known.map_or_else(|| capital(topic.name()), |(_, title)| (*title).to_owned())
}

/// What is wrong, in a few words: `too low`, `gaps too wide`, `moves a lot`.
pub(super) fn fault(finding: &Finding<'_>) -> String {
    if finding.chain.is_some() {
        return "would not hold".to_owned();
    }
    let item = finding.item;
    let written = finding.measured.as_ref().map(|m| one_line(&m.written));
    if let (Item::MovesWhenPushed, Some(written)) = (item, &written) {
        return format!("moves {written}");
    }
    if let (Item::InfillLoose, Some(written)) = (item, &written) {
        let missing = **written == *"missing";
        return if missing {
            "a bar missing"
        } else {
            "loose bars"
        }
        .to_owned();
    }
    if let (Item::Condition, Some(written)) = (item, &written) {
        return written.clone().into_owned();
    }
    if let Some((_, fault)) = FAULTS.iter().find(|(known, _)| *known == item) {
        return (*fault).to_owned();
    }
    let operator = finding.limit.as_ref().map(|limit| limit.operator);
    let way = way(item, operator);
    if item == Item::Height {
        way.to_owned()
    } else if holds_a_head(operator) {
        "a head can be held".to_owned()
    } else if item == Item::Opening {
        format!("gaps {way}")
    } else {
        format!("{} {way}", item.name())
    }
}

fn holds_a_head(operator: Option<Operator>) -> bool {
    matches!(operator, Some(Operator::Entraps | Operator::NotWithin))
}

/// In which direction something is wrong.
pub(super) fn way(item: Item, operator: Option<Operator>) -> &'static str {
    let upright = matches!(
        item,
        Item::Height
            | Item::HandrailHeight
            | Item::HeightAboveSeat
            | Item::GateHeight
            | Item::SolidPartHeight
            | Item::SillHeight
    );
    match operator {
        Some(Operator::AtLeast | Operator::Above | Operator::AngleAtLeast) if upright => "too low",
        Some(Operator::AtMost | Operator::Below) if upright => "too high",
        Some(Operator::AtLeast | Operator::Above | Operator::AngleAtLeast) => "too small",
        Some(
            Operator::AtMost
            | Operator::Below
            | Operator::Entraps
            | Operator::NotWithin
            | Operator::StopsBall,
        ) => "too wide",
        Some(Operator::LadderBelow | Operator::LadderUpTo) => "like a ladder",
        Some(Operator::NoneWithin) => "where a foot finds hold",
        Some(Operator::Is | Operator::IsNot) | None => "not as asked",
    }
}

/// How much it is too low or too wide: `1 1/4 in`, of a ball that passes and a stick that
/// stands out `at least 2 in`; nothing where it is no size.
pub(super) fn shortfall(finding: &Finding<'_>) -> Option<String> {
    let operator = finding.limit.as_ref().map(|limit| limit.operator);
    if holds_a_head(operator) {
        return None;
    }
    match finding.margin {
        Some(margin) => (margin < Length::ZERO).then(|| advice::amount(finding, margin)),
        None => {
            let beyond = beyond(finding).filter(|beyond| *beyond > Length::ZERO)?;
            Some(format!("at least {}", advice::amount(finding, beyond)))
        }
    }
}

/// How far a reading that is known from one side lies beyond the limit of a size.
fn beyond(finding: &Finding<'_>) -> Option<Length> {
    let limit = finding.limit.as_ref()?;
    let of_a_size = matches!(
        limit.operator,
        Operator::Above
            | Operator::AtLeast
            | Operator::AtMost
            | Operator::Below
            | Operator::StopsBall
    );
    let measured = finding.measured.as_ref()?.value?;
    let short = of_a_size && finding.verdict == Verdict::FallsShort;
    Some((measured - limit.value?).magnitude()).filter(|_| short)
}

/// A rule's own sentence is said where it is no longer; else its limit alone.
const SHORT_ENOUGH: usize = 80;

/// What is asked of things seen, in place of the item and its word.
const ASKED: [(Item, &str, &str); 9] = [
    (Item::Guard, "present", "a railing"),
    (
        Item::Infill,
        "horizontal bars or cables",
        "upright bars: level ones are a ladder",
    ),
    (Item::InfillLoose, "missing", "none missing"),
    (Item::InfillLoose, "no", "none loose"),
    (Item::MovesWhenPushed, "a lot", "it should not move"),
    (Item::MovesWhenPushed, "no", "it should not move"),
    (Item::ThingToClimb, "none", "nothing near it to climb on"),
    (
        Item::TopOfStairsGate,
        "screwed",
        "a gate screwed to the wall",
    ),
    (Item::NotchedPost, "no", "posts that are not notched"),
];

/// What is asked: `no 4 in ball may pass`, `36 in or more`.
pub(super) fn asked(finding: &Finding<'_>) -> String {
    if finding.chain.is_some() {
        return strength::main_load(finding);
    }
    let says = lower(&plain(&one_line(finding.rule.says.trim_end_matches('.'))));
    let Some(limit) = &finding.limit else {
        return says;
    };
    let seen = ASKED
        .iter()
        .find(|(item, word, _)| *item == finding.item && *word == limit.written);
    if let Some((_, _, asked)) = seen {
        return (*asked).to_owned();
    }
    let size = size(limit, advice::unit(finding));
    match limit.operator {
        Operator::AtLeast => format!("{size} or more"),
        Operator::Above => format!("more than {size}"),
        Operator::AtMost => format!("{size} or less"),
        Operator::Below => format!("less than {size}"),
        Operator::StopsBall => format!("no ball of {size} may pass"),
        Operator::NotWithin => {
            format!("gaps between {size} can hold a head")
        }
        Operator::NoneWithin => format!("nothing to step on between {size}"),
        Operator::AngleAtLeast
        | Operator::Entraps
        | Operator::Is
        | Operator::IsNot
        | Operator::LadderBelow
        | Operator::LadderUpTo => {
            if says.len() <= SHORT_ENOUGH {
                says
            } else {
                format!("{} {}", finding.item, one_line(&words::limit(limit)))
            }
        }
    }
}

/// A limit for whoever measured in the other system too: `36 in (914.4 mm)`.
fn size(limit: &LimitShown<'_>, own: LengthUnit) -> String {
    let written = tied(&one_line(&limit.written));
    let of_two = limit.operator == Operator::NotWithin;
    match (limit.value, limit.unit) {
        (Some(value), Some(unit)) if !of_two && unit.is_imperial() != own.is_imperial() => {
            format!("{written} ({})", tied(&value.readable(own)))
        }
        (_, _) => written,
    }
}

/// What a reader should know of how a clause was read; nothing where in the text.
pub(super) const fn mark(status: Status) -> Option<&'static str> {
    match status {
        Status::Published => None,
        Status::Quoted => Some("second-hand"),
        Status::Memory => Some("from memory"),
        Status::Practice => Some("common practice"),
    }
}

/// What a hazard is called.
#[must_use]
pub const fn hazard(hazard: Hazard) -> &'static str {
    match hazard {
        Hazard::FallOver => "over the top",
        Hazard::FallThrough => "through a gap",
        Hazard::Entrapment => "head caught",
        Hazard::Climb => "climbing up",
        Hazard::GiveWay => "giving way",
    }
}

/// A verdict that is open or good, in the reader's words.
#[must_use]
pub const fn verdict(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::FallsShort => "falls short",
        Verdict::TooClose => "too near to tell",
        Verdict::NotSettled => "rule unclear",
        Verdict::NotMeasured => "not looked at",
        Verdict::Meets => "meets",
        Verdict::DoesNotApply => "no rule asks",
    }
}

/// Building, unit and name of a guard: `Front stair, 2B, balcony`.
#[must_use]
pub fn name(guard: &Guard) -> String {
    let parts = [&guard.building, &guard.unit, &guard.name];
    let parts = parts.iter().filter(|part| !part.is_empty());
    let parts: Vec<_> = parts.map(|part| one_line(part)).collect();
    parts.join(", ")
}

/// A reading word for word; a bare number with the unit of its column.
pub(super) fn written(observation: &Observation) -> String {
    let written = one_line(&observation.written);
    let is_bare = written
        .chars()
        .all(|c| c.is_numeric() || " /.,-".contains(c));
    let value = observation.reading.as_ref().map(|reading| &reading.value);
    if let Some(Value::Measure(measure)) = value
        && is_bare
    {
        return format!("{written} {}", measure.unit.symbol());
    }
    written.into_owned()
}

/// A reading word for word, its note in quotation marks: `36 in ("at the newel")`.
pub(super) fn reading(observation: &Observation) -> String {
    let written = written(observation);
    match noted(&observation.note) {
        Some(note) => format!("{written} ({note})"),
        None => written,
    }
}

/// Readings that are told together; a note beside several cells of one row is told
/// behind the last of them.
pub(super) fn readings(observations: &[&Observation]) -> Vec<String> {
    let mut told = Vec::with_capacity(observations.len());
    for (at, observation) in observations.iter().enumerate() {
        let goes_on = observations
            .get(at + 1)
            .is_some_and(|next| next.row == observation.row && next.note == observation.note);
        told.push(if goes_on {
            written(observation)
        } else {
            reading(observation)
        });
    }
    told
}

/// A note in quotation marks.
pub(super) fn noted(note: &str) -> Option<String> {
    (!note.is_empty()).then(|| format!("\"{}\"", one_line(note)))
}

/// A text with a small letter first.
pub(super) fn uncapital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| {
        format!("{}{}", first.to_lowercase(), letters.as_str())
    })
}

/// The number that ties a card to a drawing: `①`, beyond twenty `(21)`.
pub(super) fn tie(number: usize) -> String {
    let circled = u32::try_from(number)
        .ok()
        .filter(|number| (1..=20).contains(number));
    match circled.and_then(|number| char::from_u32(0x245F + number)) {
        Some(circled) => circled.to_string(),
        None => format!("({number})"),
    }
}

/// A text with a capital first.
pub fn capital(text: &str) -> String {
    let mut chars = text.chars();
    match chars.next() {
        Some(first) => first.to_uppercase().chain(chars).collect(),
        None => String::new(),
    }
}

/// `a`, `a and b`, `a, b and c`.
pub(super) fn listed(parts: &[String]) -> String {
    match parts {
        [] => String::new(),
        [one] => one.clone(),
        // names may hold commas of their own
        parts if parts.iter().any(|part| part.contains(", ")) => parts.join("; "),
        [first @ .., last] => format!("{} and {last}", first.join(", ")),
    }
}

/// `height: 33 1/2 in; asked: 36 in or more; 2 1/2 in too low`
pub(super) fn compared(finding: &Finding<'_>) -> String {
    if let Some(chain) = &finding.chain {
        return strength::compared(chain);
    }
    let mut text = format!("{}: ", finding.item);
    match &finding.measured {
        Some(measured) => text.push_str(&tied(&one_line(&measured.written))),
        None => text.push_str("no reading"),
    }
    if finding.limit.is_some() {
        text.push_str(&format!("; asked: {}", asked(finding)));
    }
    let operator = finding.limit.as_ref().map(|limit| limit.operator);
    match (shortfall(finding), finding.verdict) {
        (Some(amount), Verdict::FallsShort) => {
            text.push_str(&format!("; {amount} {}", way(finding.item, operator)));
        }
        (_, Verdict::FallsShort) if finding.margin == Some(Length::ZERO) => {
            text.push_str("; exactly the limit is not enough");
        }
        (None, Verdict::Meets) => {
            let spare = finding.margin.map(|margin| advice::amount(finding, margin));
            if let Some(spare) = spare {
                text.push_str(&format!("; {spare} to spare"));
            }
        }
        (_, _) => {}
    }
    text
}

/// A sentence with a small letter first, to stand within another; `IRC` stays.
fn lower(text: &str) -> String {
    let mut chars = text.chars();
    match chars.next() {
        Some(first) if chars.clone().next().is_some_and(char::is_lowercase) => {
            first.to_lowercase().chain(chars).collect()
        }
        Some(_) | None => text.to_owned(),
    }
}

/// A sentence of the program's own in a reader's words: a guard is a railing to them.
/// What somebody wrote stands in quotation marks, and is left as it is.
pub(super) fn plain(text: &str) -> String {
    let mut said = String::with_capacity(text.len() + 16);
    let mut before = "";
    let mut quoted = false;
    for (index, word) in text.split(' ').enumerate() {
        if index > 0 {
            said.push(' ');
        }
        let bare = word.trim_matches(|c: char| !c.is_alphanumeric());
        let railing = match bare {
            "guard" => Some("railing"),
            "guards" => Some("railings"),
            "Guard" => Some("Railing"),
            "Guards" => Some("Railings"),
            _ => None,
        };
        match railing {
            // what is fixed before a window is no railing
            Some(railing) if !quoted && !before.eq_ignore_ascii_case("window") => {
                said.push_str(&word.replacen(bare, railing, 1));
            }
            Some(_) | None => said.push_str(word),
        }
        before = bare;
        quoted ^= word.matches('"').count() % 2 == 1;
    }
    said
}
