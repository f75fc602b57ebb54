//! What the report keeps of a guard until all are known.

use crate::items::Item;
use crate::items::Verdict;
use crate::judge::Assumption;
use crate::judge::Authority;
use crate::judge::Bearing;
use crate::judge::Reason;
use crate::judge::Unclear;
use crate::judge::WhyUnclear;
use crate::reading::Value;
use crate::remedy::PlanDepth;
use crate::report::JudgedGuard;
use crate::report::ReportBasis;
use crate::report::acts;
use crate::report::acts::Tonight;
use crate::report::matters::AskedBy;
use crate::report::matters::ThingMeasured;
use crate::report::matters::is_open_edge;
use crate::report::matters::matters;
use crate::report::matters::was_not_entered;
use crate::report::one_line;
use crate::report::reader;
use crate::report::remedied::GuardRemedies;
use crate::report::told::holds;
use crate::report::told::outcome::HazardTold;
use crate::report::told::outcome::are_unfinished;
use crate::report::told::outcome::comes_out;
use crate::report::told::outcome::each_hazard;
use crate::report::told::outcome::hazards;
use crate::report::told::outcome::is_good;
use crate::report::told::outcome::silent_about;
use crate::report::told::outcome::unfinished_subjects;
use crate::report::told::page::PageTold;
use crate::report::told::paragraph::Paragraph;
use crate::report::told::paragraph::Sentence;
use crate::report::told::paragraph::paragraph;
use crate::report::told::rank::Rank;
use crate::report::told::written;
use crate::report::told::written::RowNotes;
use crate::report::told::written::SaidOfItem;
use crate::report::words;
use crate::rules::Ruleset;
use crate::rules::UnreadPart;
use crate::survey::ReadingKey;

/// Where a guard stands in the report.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in crate::report) enum ReportPart {
    /// It needs something: a block of its own.
    Wrong,
    /// Something is not looked at or not understood, and nothing is wrong so far.
    Unfinished,
    /// It meets, or no rule asks.
    Good,
}

/// Something to look at or to write down next.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(in crate::report) struct Next {
    pub(in crate::report) item: Item,
    /// As it is asked.
    pub(in crate::report) asks: String,
    /// How to look; nothing where a reading is there and says too little.
    pub(in crate::report) how: String,
}

/// A guard as it will be printed.
#[derive(Clone, Debug)]
pub(in crate::report) struct GuardTold {
    pub(in crate::report) rank: Rank,
    pub(in crate::report) part: ReportPart,
    pub(in crate::report) verdict: Verdict,
    /// Building, unit and name.
    pub(in crate::report) name: String,
    /// The name alone.
    pub(in crate::report) alone: String,
    /// The ages of the children who live there.
    pub(in crate::report) children: Vec<String>,
    pub(in crate::report) unit: String,
    pub(in crate::report) building: String,
    /// Nobody could look at it at all, and why.
    pub(in crate::report) not_entered: Option<String>,
    pub(in crate::report) tonight: Vec<Tonight>,
    /// What is wrong by the rules, by the advice, and what is too near to tell.
    pub(in crate::report) by_rules: Vec<String>,
    pub(in crate::report) by_advice: Vec<String>,
    pub(in crate::report) near: Vec<String>,
    /// What to do first.
    pub(in crate::report) first: String,
    /// How it comes out, in a sentence.
    pub(in crate::report) comes_out: String,
    pub(in crate::report) hazards: String,
    /// The same one by one.
    pub(in crate::report) each_hazard: Vec<HazardTold>,
    /// The worst of it in a few words: `2 1/2 in too low`.
    pub(in crate::report) worst: String,
    /// There is no railing.
    pub(in crate::report) open_edge: bool,
    /// It is a plan, or what will be once the work is done.
    pub(in crate::report) drawn: bool,
    /// What it meets the rules without: subjects whose rules are not finished.
    pub(in crate::report) open_subjects: Vec<&'static str>,
    /// What the rules that decide ask nothing about.
    pub(in crate::report) silent_about: Vec<&'static str>,
    pub(in crate::report) paragraphs: Vec<Paragraph>,
    /// What to look at or to write down next, most decisive first.
    pub(in crate::report) next: Vec<Next>,
    pub(in crate::report) could_not_look: Vec<String>,
    /// What is unclear of the rules, and what holds whatever is not written down.
    pub(in crate::report) unclear: Vec<String>,
    pub(in crate::report) met: Vec<SaidOfItem>,
    pub(in crate::report) written: Vec<SaidOfItem>,
    /// Everything that was written of it, said elsewhere or not.
    pub(in crate::report) all: Vec<SaidOfItem>,
    pub(in crate::report) inherited: Vec<SaidOfItem>,
    /// Whether something is asked by rules that were not in force when it was built.
    pub(in crate::report) of_another_time: bool,
    pub(in crate::report) taken: Vec<String>,
    pub(in crate::report) waits_for_the_posts: bool,
    /// What matters of each load path, in sentences.
    pub(in crate::report) holds: Vec<Vec<String>>,
    /// Everything, as the text report gives it where it was asked for.
    pub(in crate::report) full: String,
    /// Cautions and what rules leave out, by their numbers in the survey's lists.
    pub(in crate::report) cautions: Vec<usize>,
    /// Cautions of which nobody wrote whether they hold, with the condition.
    pub(in crate::report) only_if: Vec<(usize, String)>,
    pub(in crate::report) leaves_out: Vec<usize>,
    /// What a page shows beside it; nothing in a text.
    pub(in crate::report) page: Option<Box<PageTold>>,
}

impl GuardTold {
    pub(in crate::report) fn new(
        entry: &JudgedGuard<'_>,
        basis: &ReportBasis<'_>,
        order: usize,
    ) -> GuardTold {
        let guard = &entry.guard;
        let matters = matters(entry, basis);
        let tonight = acts::tonight(entry, &matters);
        let remedies = GuardRemedies::of(entry, basis, PlanDepth::Best);
        let mut paragraphs: Vec<Paragraph> = matters
            .iter()
            .map(|matter| paragraph(matter, entry, &remedies))
            .collect();
        once(&mut paragraphs);
        let mut said: Vec<ReadingKey> = Vec::new();
        for matter in &matters {
            let readings = matter.readings(guard);
            said.extend(readings.iter().map(|o| o.key()));
        }
        let notes = RowNotes::of(guard);
        let could_not_look = could_not_look(entry, &mut said, &notes);
        let met = met(entry, &mut said, &notes);
        let not_entered = was_not_entered(guard).then(|| why_not_entered(entry));
        let (by_rules, by_advice, near) = faults(&matters);
        let open_subjects = unfinished_subjects(entry, basis);
        let wrong = !paragraphs.is_empty() || tonight.iter().any(Tonight::was_seen);
        let part = if wrong {
            ReportPart::Wrong
        } else if is_good(entry.judged.verdict) && open_subjects.is_empty() {
            ReportPart::Good
        } else {
            ReportPart::Unfinished
        };
        let worst = worst(&tonight, &paragraphs);
        GuardTold {
            rank: Rank::of(entry, order),
            part,
            verdict: entry.judged.verdict,
            name: reader::name(guard),
            alone: one_line(&guard.name).into_owned(),
            children: guard
                .of(Item::Children)
                // `none` and `not reached` are no ages
                .filter(|(_, observation)| {
                    let reading = observation.reading.as_ref();
                    reading.is_some_and(|reading| matches!(reading.value, Value::Age(_)))
                })
                .map(|(_, observation)| one_line(&observation.written).into_owned())
                .collect(),
            unit: one_line(&guard.unit).into_owned(),
            building: one_line(&guard.building).into_owned(),
            not_entered,
            first: first(&tonight, &paragraphs),
            tonight,
            by_rules,
            by_advice,
            near,
            comes_out: comes_out(entry, basis),
            hazards: hazards(entry, basis),
            each_hazard: each_hazard(entry, basis),
            worst,
            open_edge: is_open_edge(guard),
            drawn: guard.is_drawn(),
            open_subjects,
            silent_about: silent_about(entry, basis),
            paragraphs,
            next: next(entry),
            could_not_look,
            unclear: unclear(entry),
            met,
            written: written::of_guard(guard, &said, &notes),
            all: written::of_guard(guard, &[], &notes),
            inherited: written::inherited(guard),
            of_another_time: of_another_time(entry),
            taken: taken(entry, basis),
            waits_for_the_posts: acts::waits_for_the_posts(entry),
            holds: holds::what_matters(entry),
            full: String::new(),
            cautions: Vec::new(),
            only_if: Vec::new(),
            leaves_out: Vec::new(),
            page: None,
        }
    }

    /// What stands at the end of a block's first line.
    pub(in crate::report) fn status(&self, authority: Authority) -> String {
        let called = self.tonight.iter().find(|act| !act.call.is_empty());
        if let Some(act) = called {
            return act.call.to_owned();
        }
        match (self.verdict, authority) {
            (Verdict::FallsShort, Authority::Law) => "falls short of the building rules".to_owned(),
            (Verdict::FallsShort, Authority::Guidance) => "falls short of the advice".to_owned(),
            (Verdict::TooClose, _) => "too near to tell".to_owned(),
            (Verdict::NotSettled, _) => "rule unclear".to_owned(),
            (Verdict::NotMeasured, _) => "unfinished".to_owned(),
            (Verdict::Meets, Authority::Law) if !self.open_subjects.is_empty() => {
                are_unfinished(&self.open_subjects)
            }
            (Verdict::Meets, Authority::Law) => "meets the building rules".to_owned(),
            (Verdict::Meets, Authority::Guidance) => "meets the advice".to_owned(),
            (Verdict::DoesNotApply, _) => "no rule asks for a railing".to_owned(),
        }
    }
}

/// What puts several things right is said of the first of them.
fn once(paragraphs: &mut [Paragraph]) {
    for index in 1..paragraphs.len() {
        let (before, rest) = paragraphs.split_at_mut(index);
        let Some(this) = rest.first_mut() else {
            continue;
        };
        for does in &mut this.does {
            let same = before.iter().find(|other| other.does.contains(does));
            if let Some(same) = same {
                *does = Sentence::plain(format!("Do: as under {}.", same.title));
            }
        }
    }
}

/// Faults in a few words: by the rules, by advice, and what is too near to tell.
fn faults(matters: &[ThingMeasured<'_, '_>]) -> (Vec<String>, Vec<String>, Vec<String>) {
    let (mut rules, mut advice, mut near) = (Vec::new(), Vec::new(), Vec::new());
    for matter in matters {
        for (by, finding) in matter.missed() {
            let fault = reader::fault(finding);
            let into = match by {
                AskedBy::Rules => &mut rules,
                AskedBy::Advice => &mut advice,
                AskedBy::Warning => continue,
            };
            if !into.contains(&fault) {
                into.push(fault);
            }
        }

        if matter.with(Verdict::TooClose).next().is_some() && !matter.is_missed() {
            near.push(reader::title(matter.topic).to_lowercase());
        }
    }
    // what the rules ask as well was said of them
    let mut more: Vec<String> = advice
        .iter()
        .filter(|fault| !rules.contains(fault))
        .cloned()
        .collect();
    if more.is_empty() && !advice.is_empty() {
        more.push("the same".to_owned());
    }
    (shortly(rules), shortly(more), near)
}

/// In a list of everything no more than these are named.
const FAULTS: usize = 4;

fn shortly(mut faults: Vec<String>) -> Vec<String> {
    let left = faults.len().saturating_sub(FAULTS);
    if left > 1 {
        faults.truncate(FAULTS);
        faults.push(format!("and {left} more"));
    }
    faults
}

/// The first thing to do, in a few words.
fn first(tonight: &[Tonight], paragraphs: &[Paragraph]) -> String {
    // what is called out is no news
    if let Some(act) = tonight.first().filter(|act| act.call.is_empty()) {
        return act.shortly.to_owned();
    }
    let mut does = paragraphs.iter().flat_map(|paragraph| &paragraph.does);
    let Some(does) = does.next() else {
        return String::new();
    };
    let whole = format!("{}{}{}", does.before, does.amount, does.after);
    let (waits, whole) = match whole.split_once(": ") {
        Some((lead, rest)) if lead.starts_with("Do, ") => (format!("{}, ", &lead[4..]), rest),
        Some(_) | None => (String::new(), whole.as_str()),
    };
    let whole = whole.trim_start_matches("Do: ");
    let whole = whole.trim_start_matches("To settle it: ");
    let end = [": ", "; ", ", until ", ", and keep off it until then", ". "]
        .iter()
        .filter_map(|end| whole.find(end))
        .min();
    let shortly = &whole[..end.unwrap_or(whole.len())];
    format!("{waits}{}", shortly.trim_end_matches('.'))
}

/// The worst of it in a few words.
fn worst(tonight: &[Tonight], paragraphs: &[Paragraph]) -> String {
    if let Some(act) = tonight.iter().find(|act| !act.call.is_empty()) {
        return act.call.to_owned();
    }
    let mut shortly = paragraphs.iter().map(|paragraph| &paragraph.shortly);
    shortly.next().cloned().unwrap_or_default()
}

/// What to find out next, each item once; where a reading is there and says too
/// little, why.
fn next(entry: &JudgedGuard<'_>) -> Vec<Next> {
    if entry.judged.could_not_judge {
        return Vec::new();
    }
    // nobody takes hold of what may be in danger
    let notes = &entry.judged.notes;
    let in_doubt = acts::may_be_a_danger(&entry.guard).is_some() || !notes.is_empty();
    let noted = |item: Item| notes.iter().any(|note| note.told.item == item);
    let by_hand = [Item::MovesWhenPushed, Item::InfillLoose, Item::PullTest];
    let asked = entry.judged.questions().into_iter();
    let asked = asked
        .filter(|question| !in_doubt || noted(question.item) || !by_hand.contains(&question.item));
    let asked = asked.map(|question| {
        let info = question.item.info();
        let how = info.how.first().copied().unwrap_or_default();
        match too_little(question.item, entry) {
            Some(asks) => Next {
                item: question.item,
                asks,
                how: String::new(),
            },
            None => Next {
                item: question.item,
                asks: reader::plain(info.question),
                how: reader::plain(how.split_inclusive(". ").next().unwrap_or_default()),
            },
        }
    });
    asked.collect()
}

/// Why a reading of the item says too little, and what is asked of it.
fn too_little(item: Item, entry: &JudgedGuard<'_>) -> Option<String> {
    let mut notes = entry.judged.notes.iter();
    if let Some(note) = notes.find(|note| note.told.item == item) {
        let says = reader::capital(&words::note_of_danger(note));
        return Some(format!("{says}."));
    }
    let findings = entry.judged.findings.iter();
    // of a circumstance too: no rule judges it, and many wait for it
    let mut reasons = findings.clone().flat_map(|finding| &finding.reasons);
    if let Some(doubt) = reasons.find(|reason| reason.doubts() == Some(item)) {
        let says = reader::capital(&words::reason(doubt, &entry.guard));
        return Some(format!("{says}."));
    }
    let mut open = findings
        .filter(|finding| finding.item == item && finding.counts_as() == Verdict::NotMeasured);
    open.find_map(|finding| {
        let mut reasons = finding.reasons.iter();
        let says_little = |reason: &&Reason<'_>| {
            reason.bearing() == Bearing::TooLittle && reason.doubts().is_none()
        };
        let reason = reasons.find(says_little)?;
        let asked = reader::asked(finding);
        let title = reader::title(item);
        if *reason == Reason::BoundDoesNotSettle && finding.limit.is_some() {
            return Some(format!("{title}: measure, or try that size ({asked})."));
        }
        if *reason == Reason::FootholdDepthMissing {
            return Some(format!("How deep is the foothold ({asked})?"));
        }
        let says = reader::capital(&words::reason(reason, &entry.guard));
        let says = says.trim_end_matches('.').to_owned();
        Some(match &finding.limit {
            Some(_) => format!(
                "{}: {says}; asked: {}.",
                reader::capital(item.name()),
                reader::asked(finding)
            ),
            None => format!("{}: {says}.", reader::capital(item.name())),
        })
    })
}

/// What keeps the rules from letting it meet, and what all cases of what nobody
/// wrote down agree on.
fn unclear(entry: &JudgedGuard<'_>) -> Vec<String> {
    if entry.judged.could_not_judge {
        return Vec::new();
    }
    let all = &entry.judged.unclear;
    // of a ruleset that does not cover it, or that nobody could read, there is no more to say
    let says_all = |unclear: &Unclear<'_>| match unclear.why {
        WhyUnclear::NotCovered(_) => true,
        WhyUnclear::Unread(unread) => unread.part == UnreadPart::Whole,
        WhyUnclear::HoleNotAsked(_)
        | WhyUnclear::NoRuleRead
        | WhyUnclear::OnlyOneSubject(_)
        | WhyUnclear::Silence(_) => false,
    };
    let all_is_said = |ruleset: &Ruleset| {
        let mut of_it = all.iter().filter(|other| other.ruleset.id == ruleset.id);
        of_it.any(says_all)
    };
    let said = all
        .iter()
        .filter(|unclear| says_all(unclear) || !all_is_said(unclear.ruleset));
    let unclear = said.map(words::why_unclear);
    let unclear = unclear.map(|why| reader::plain(&why));
    let mut parts: Vec<String> = unclear.map(|why| format!("Rule unclear: {why}.")).collect();
    let agreed = words::agreed(&entry.judged).into_iter();
    parts.extend(agreed.map(|says| format!("{}.", reader::capital(&says))));
    parts
}

/// What could not be looked at or understood, with its note.
fn could_not_look(
    entry: &JudgedGuard<'_>,
    said: &mut Vec<ReadingKey>,
    notes: &RowNotes,
) -> Vec<String> {
    let mut parts = Vec::new();
    for observation in &entry.guard.observations {
        let place = observation.key();
        let unknown = observation
            .reading
            .as_ref()
            .is_none_or(|reading| reading.value == Value::Unknown);
        if !unknown || said.contains(&place) {
            continue;
        }
        said.push(place);
        let what = match observation.reading {
            None => " could not be understood",
            Some(_) => "",
        };
        parts.push(format!(
            "{} {}{what}",
            observation.item,
            notes.reading(observation)
        ));
    }
    parts
}

fn why_not_entered(entry: &JudgedGuard<'_>) -> String {
    let notes = entry.guard.of(Item::Guard);
    let notes = notes
        .filter(|(_, o)| !o.note.is_empty())
        .map(|(_, o)| one_line(&o.note));
    notes.collect::<Vec<_>>().join("; ")
}

/// What is met, each with its readings: `height 37 1/4 in ("where it sags")`.
fn met(entry: &JudgedGuard<'_>, said: &mut Vec<ReadingKey>, notes: &RowNotes) -> Vec<SaidOfItem> {
    let mut parts = Vec::new();
    let findings = entry.judged.findings.iter();
    let met = findings
        .filter(|finding| finding.counts_as() == Verdict::Meets && !finding.is_indicative());
    let items: Vec<Item> = met.map(|finding| finding.item).collect();
    for observation in &entry.guard.observations {
        let place = observation.key();
        if items.contains(&observation.item) && !said.contains(&place) {
            said.push(place);
            written::add(&mut parts, observation, notes);
        }
    }
    parts
}

/// Whether a rule that is missed was not in force when it was built.
fn of_another_time(entry: &JudgedGuard<'_>) -> bool {
    let mut missed = entry.judged.findings.iter();
    missed.any(|finding| {
        finding.verdict == Verdict::FallsShort
            && finding.reasons.contains(&Reason::NotInForceWhenBuilt)
    })
}

/// What was taken as given; the worst place of each reading is said once for all.
fn taken(entry: &JudgedGuard<'_>, basis: &ReportBasis<'_>) -> Vec<String> {
    let taken = basis.taken(entry);
    let mut parts: Vec<String> = Vec::new();
    for assumption in &taken {
        // nobody takes a railing that was measured for a plan
        if matches!(assumption, Assumption::Existing) {
            continue;
        }
        let says = match assumption {
            Assumption::WorstPlace(_) => "each reading the worst place".to_owned(),
            Assumption::EveryOpening => "every gap looked at".to_owned(),
            Assumption::InfillStiff => "what fills it as stiff".to_owned(),
            Assumption::Tape(class) => format!("an ordinary tape ({class})"),
            Assumption::ReadTo { written, step } => {
                format!("{} read to {step}", one_line(written))
            }
            Assumption::NoRulesetCovers(years) => format!(
                "no ruleset here covers {years}: today's rules for new work; those of its time may have asked \
less, which says nothing about danger"
            ),
            other @ (Assumption::BuiltUnknown
            | Assumption::Covered { .. }
            | Assumption::Existing) => reader::plain(&words::assumption(other)),
        };
        if !parts.contains(&says) {
            parts.push(says);
        }
    }
    for reason in entry
        .judged
        .findings
        .iter()
        .flat_map(|finding| &finding.reasons)
    {
        let Reason::TakenInZone(zone) = reason else {
            continue;
        };
        let says = format!("each gap {}", words::band(zone));
        if !parts.contains(&says) {
            parts.push(says);
        }
    }
    parts
}
