//! What to do about a guard: what comes first tonight, and what lasts.

use crate::items::DangerCounts;
use crate::items::Hazard;
use crate::items::InfillWord;
use crate::items::Item;
use crate::quantities::Length;
use crate::reading::Value;
use crate::remedy::KEEP_FROM_GAPS;
use crate::remedy::RemedyKind;
use crate::remedy::TonightWords;
use crate::remedy::tonight_words;
use crate::report::JudgedGuard;
use crate::report::matters::AskedBy;
use crate::report::matters::ThingMeasured;
use crate::report::matters::says;
use crate::report::one_line;
use crate::report::reader;
use crate::report::remedied::GuardRemedies;
use crate::report::remedied::ShownRemedy;
use crate::survey::Guard;
use crate::survey::Observation;

/// Something to do before anybody sleeps.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Tonight {
    /// As it is called out: `KEEP EVERYBODY OFF IT`; empty where it is no danger.
    pub(super) call: &'static str,
    /// What it is about, for a list of work.
    pub(super) what: String,
    /// What was written, for a list of work.
    pub(super) written: String,
    /// The note beside it.
    pub(super) note: String,
    /// How much of it there is to do.
    pub(super) quantity: String,
    /// What to do, in a sentence.
    pub(super) does: &'static str,
    /// The same in a few words.
    pub(super) shortly: &'static str,
    /// Which act it is.
    kind: RemedyKind,
    /// Why, with what was written.
    pub(super) why: String,
}

impl Tonight {
    /// Whether something was seen, and not only a row that nobody could read.
    pub(super) fn was_seen(&self) -> bool {
        self.does != LOOK_AGAIN.does && self.does != BY_A_NOTE.does
    }
}

/// The words of an act.
fn words(kind: RemedyKind) -> TonightWords {
    let known = tonight_words(kind).copied();
    known.unwrap_or(TonightWords {
        kind,
        shortly: kind.row().name,
        does: kind.row().name,
        more: "",
    })
}

/// What comes of a row that may state a danger and could not be read.
const LOOK_AGAIN: TonightWords = TonightWords {
    kind: RemedyKind::KeepAway,
    shortly: "mend the row that may tell of a danger",
    does: "Let nobody lean on it: a row that may tell of a danger could not be understood. Mend that row first.",
    more: "",
};

/// What comes of a note that tells of a danger.
const BY_A_NOTE: TonightWords = TonightWords {
    kind: RemedyKind::KeepAway,
    shortly: "write down whether the note's danger is there",
    does: "Let nobody lean on it: a note tells of a danger, and no reading says whether it is so. Write that down first.",
    more: "",
};

/// Acts that leave others to do.
const OF_LESS: [&str; 3] = [KEEP_FROM_GAPS.does, LOOK_AGAIN.does, BY_A_NOTE.does];

/// What comes before every rule, then shortfalls that cannot wait, then what a
/// child climbs on, then gaps for the body of a child under two.
pub(super) fn tonight(entry: &JudgedGuard<'_>, matters: &[ThingMeasured<'_, '_>]) -> Vec<Tonight> {
    let guard = &entry.guard;
    let mut acts = dangers(entry);
    let called = !acts.is_empty();
    if !called {
        acts.extend(perhaps_a_danger(guard));
        acts.extend(told_by_a_note(entry));
    }
    let firm = !acts.iter().any(|act| act.kind == RemedyKind::EverybodyOff);
    // the most urgent come first
    for matter in matters.iter().filter(|matter| matter.is_missed()) {
        let climb = matter.topic == Item::ThingToClimb;
        let kept_off = called
            || acts
                .iter()
                .any(|act| act.kind == RemedyKind::KeepAway && !OF_LESS.contains(&act.does));
        if climb && firm {
            acts.push(act(matter, guard, words(RemedyKind::MoveThing)));
        } else if kept_off || climb {
            // whoever keeps off or closes the hole keeps from the rest as well
        } else if matter.is_urgent() {
            acts.push(act(matter, guard, words(RemedyKind::KeepAway)));
        } else if under_two(guard) && lets_a_body_in(matter) {
            acts.push(act(matter, guard, KEEP_FROM_GAPS));
        }
    }
    let mut told: Vec<Tonight> = Vec::new();
    for act in acts {
        // one act is said once, with the first of its reasons
        if !told.iter().any(|other| other.does == act.does) {
            told.push(act);
        }
    }
    told
}

fn act(matter: &ThingMeasured<'_, '_>, guard: &Guard, words: TonightWords) -> Tonight {
    let fault = matter
        .missed()
        .next()
        .map(|(_, finding)| reader::fault(finding));
    let readings = matter.readings(guard);
    let said = reader::readings(&readings).join("; ");
    let why = format!("{}: {said}.", reader::title(matter.topic));
    let written = readings.iter().map(|o| reader::written(o));
    let written = written.collect::<Vec<_>>().join("; ");
    let notes = readings.iter().filter(|o| !o.note.is_empty());
    let notes: Vec<_> = notes.map(|o| one_line(&o.note)).collect();
    Tonight {
        call: "",
        what: fault.unwrap_or_else(|| reader::title(matter.topic)),
        why,
        written,
        note: notes.join("; "),
        quantity: quantity(matter.topic, guard),
        does: words.does,
        shortly: words.shortly,
        kind: words.kind,
    }
}

/// What was seen that comes before every rule.
fn dangers(entry: &JudgedGuard<'_>) -> Vec<Tonight> {
    let guard = &entry.guard;
    let mut told: Vec<Tonight> = Vec::new();
    for seen in &entry.judged.dangers {
        let danger = seen.danger;
        let observation = guard.observation(seen.index);
        let note = reader::noted(&observation.note);
        let note = note.map_or_else(String::new, |note| format!(" ({note})"));
        let drop = guard.of(Item::Drop).next().map(|(_, o)| reader::written(o));
        let (over, kind) = match (danger.counts, drop) {
            (DangerCounts::OverAProtectedDrop, Some(drop)) => {
                (format!("; drop {drop}"), RemedyKind::CloseTheWay)
            }
            (DangerCounts::OverAProtectedDrop, None) => (String::new(), RemedyKind::CloseTheWay),
            // no board and no clamp on glass
            (DangerCounts::OverADrop, _) if says(guard, InfillWord::Glass) => {
                (String::new(), RemedyKind::OffAndBelow)
            }
            (DangerCounts::OverADrop, _) => (String::new(), RemedyKind::BoardOverHole),
            (DangerCounts::Always, _) => (String::new(), RemedyKind::EverybodyOff),
        };
        let why = format!("{}{over}{note}.", reader::capital(danger.says));
        match told.iter_mut().find(|other| other.call == danger.act) {
            Some(known) => known.why.push_str(&format!(" {why}")),
            None => told.push(Tonight {
                call: danger.act,
                what: danger.says.to_owned(),
                written: reader::written(observation),
                note: one_line(&observation.note).into_owned(),
                quantity: quantity(observation.item, guard),
                does: words(kind).does,
                shortly: words(kind).shortly,
                kind,
                why,
            }),
        }
    }
    told
}

/// A row that may tell of a danger and could not be understood: nobody knows that it is none.
pub(super) fn may_be_a_danger(guard: &Guard) -> Option<&Observation> {
    let mut all = guard.observations.iter();
    all.find(|o| o.reading.is_none() && o.item.may_state_a_danger())
}

fn perhaps_a_danger(guard: &Guard) -> Option<Tonight> {
    let observation = may_be_a_danger(guard)?;
    let said = reader::readings(&[observation]).join("; ");
    Some(Tonight {
        call: "",
        what: format!("a row on {} was not understood", observation.item),
        written: reader::written(observation),
        note: one_line(&observation.note).into_owned(),
        quantity: String::new(),
        does: LOOK_AGAIN.does,
        shortly: LOOK_AGAIN.shortly,
        kind: LOOK_AGAIN.kind,
        why: format!(
            "A row that may tell of a danger could not be understood: {} {said}.",
            observation.item
        ),
    })
}

/// Notes that tell of a danger which no reading says or denies.
fn told_by_a_note(entry: &JudgedGuard<'_>) -> Option<Tonight> {
    let notes = &entry.judged.notes;
    let first = notes.first()?;
    let said: Vec<String> = notes
        .iter()
        .filter_map(|note| reader::noted(&note.note))
        .fold(Vec::new(), |mut said, note| {
            if !said.contains(&note) {
                said.push(note);
            }
            said
        });
    Some(Tonight {
        call: "",
        what: "a note tells of a danger".to_owned(),
        written: String::new(),
        note: one_line(&first.note).into_owned(),
        quantity: String::new(),
        does: BY_A_NOTE.does,
        shortly: BY_A_NOTE.shortly,
        kind: BY_A_NOTE.kind,
        why: format!("The note says {}.", said.join("; ")),
    })
}

/// Whether a child under two lives or visits here.
fn under_two(guard: &Guard) -> bool {
    guard.of(Item::Children).any(|(_, observation)| {
        let reading = observation.reading.as_ref();
        reading.is_some_and(|reading| matches!(reading.value, Value::Age(age) if age.months() < 24))
    })
}

/// Whether a gap of 3 1/2 in or more is too wide by something that asks.
fn lets_a_body_in(matter: &ThingMeasured<'_, '_>) -> bool {
    let body = Length::sixty_fourths(224);
    matter.missed().any(|(_, finding)| {
        let through = matches!(
            finding.rule.hazard,
            Hazard::FallThrough | Hazard::Entrapment
        );
        let wide = finding
            .measured
            .as_ref()
            .and_then(|measured| measured.value);
        through && wide.is_some_and(|wide| wide >= body)
    })
}

/// What would put right what is missed of a matter: one remedy for all of it, several
/// where it is spoken of together and put right apart.
pub(super) fn remedies_of<'r>(
    matter: &ThingMeasured<'_, '_>,
    remedies: &'r GuardRemedies,
) -> Vec<&'r ShownRemedy> {
    if !matter.is_missed() {
        return Vec::new();
    }
    let strictest = matter.strictest();
    let missed = matter.missed().map(|(_, finding)| finding);
    let mut all: Vec<&ShownRemedy> = Vec::new();
    for remedy in strictest
        .into_iter()
        .chain(missed)
        .filter_map(|f| remedies.find(f))
    {
        if !all.contains(&remedy) {
            all.push(remedy);
        }
    }
    all
}

/// Whether all else waits until the posts hold: nothing is tied to a guard that moves.
pub(super) fn waits_for_the_posts(entry: &JudgedGuard<'_>) -> bool {
    let mut dangers = entry.judged.dangers.iter();
    dangers.any(|seen| seen.danger.hazard == Hazard::GiveWay)
}

/// By whose word a matter is missed, rules before advice.
pub(super) fn asked_by(matter: &ThingMeasured<'_, '_>) -> AskedBy {
    let by = matter.missed().map(|(by, _)| by).min();
    by.unwrap_or(AskedBy::Advice)
}

/// How much of it there is to do, as far as somebody wrote it; what was not counted
/// or measured says so.
pub(super) fn quantity(topic: Item, guard: &Guard) -> String {
    let written = |item| guard.of(item).next().map(|(_, o)| reader::written(o));
    let length = || match written(Item::GuardLength) {
        Some(length) => format!("length {length}"),
        None => "length not written".to_owned(),
    };
    let steps = || match written(Item::Risers) {
        Some(risers) => format!("{risers} steps"),
        None => "steps not counted".to_owned(),
    };
    let is = |items: &[Item]| items.contains(&topic);
    if topic == Item::Guard {
        format!("1 edge; {}", length())
    } else if is(&[Item::Opening, Item::EndGap]) {
        format!("gaps not counted; {}", length())
    } else if topic == Item::InfillLoose {
        match written(Item::InfillLoose).as_deref() {
            Some("one") => "1 bar".to_owned(),
            Some(_) | None => "bars not counted".to_owned(),
        }
    } else if topic == Item::PostFastening {
        "posts not counted".to_owned()
    } else if is(&[Item::StairTriangle, Item::RiserOpening]) {
        steps()
    } else if topic == Item::ThingToClimb {
        guard.of(Item::ThingToClimb).count().to_string()
    } else if is(&[Item::TopOfStairsGate, Item::BottomOfStairsGate]) {
        "1 gate".to_owned()
    } else {
        // whatever else is put right along a guard takes as much as the guard is long
        length()
    }
}
