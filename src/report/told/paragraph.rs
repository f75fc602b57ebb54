//! One thing measured as a paragraph: what was read, what asks and by how much it
//! is missed, what to do. Eight lines at most; `--full` says the rest.

use crate::items::Item;
use crate::items::Verdict;
use crate::judge::Finding;
use crate::judge::Operator;
use crate::judge::Reason;
use crate::quantities::Length;
use crate::report::JudgedGuard;
use crate::report::acts;
use crate::report::advice;
use crate::report::matters::AskedBy;
use crate::report::matters::ThingMeasured;
use crate::report::one_line;
use crate::report::reader;
use crate::report::remedied::GuardRemedies;
use crate::report::remedied::ShownHoles;
use crate::report::remedied::ShownLeave;
use crate::report::remedied::ShownRemedy;
use crate::report::strength;
use crate::report::words;
use crate::rules::Status;

/// How many demands of one kind are said.
const DEMANDS: usize = 2;

/// Where a text has the rest; a page has it below.
pub(in crate::report) const MORE: &str = " (--full).";

/// A sentence whose amount may differ between guards that are else alike.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(in crate::report) struct Sentence {
    pub(in crate::report) before: String,
    pub(in crate::report) amount: String,
    pub(in crate::report) after: String,
}

impl Sentence {
    /// The whole of it.
    pub(in crate::report) fn text(&self) -> String {
        let after = if self.after == MORE { "." } else { &self.after };
        format!("{}{}{after}", self.before, self.amount)
    }

    /// With no amount of its own.
    pub(in crate::report) fn plain(text: String) -> Sentence {
        Sentence {
            before: text,
            amount: String::new(),
            after: String::new(),
        }
    }
}

/// What is said of one thing measured.
#[derive(Clone, Debug)]
pub(in crate::report) struct Paragraph {
    /// The item under which it is spoken of.
    pub(in crate::report) topic: Item,
    /// The worst of it.
    pub(in crate::report) verdict: Verdict,
    /// What is wrong in a few words, with its amount: `1/2 in too low`.
    pub(in crate::report) shortly: String,
    /// Who puts it right; nothing where it is to be measured again.
    pub(in crate::report) who: Option<&'static str>,
    /// What that takes: the owner's leave, holes.
    pub(in crate::report) takes: Vec<&'static str>,
    /// Each clause that it rests on, with how that was read.
    pub(in crate::report) sources: Vec<String>,
    pub(in crate::report) title: String,
    /// The readings word for word, with their notes.
    pub(in crate::report) readings: String,
    pub(in crate::report) sentences: Vec<Sentence>,
    /// What to do, and how to settle what is too near to tell.
    pub(in crate::report) does: Vec<Sentence>,
}

impl Paragraph {
    /// What another guard's paragraph must say as well to be like this one.
    pub(in crate::report) fn but_for_amounts(&self) -> (&str, Vec<(&str, &str)>, usize) {
        let sentences = self.sentences.iter().chain(&self.does);
        let sentences = sentences.map(|said| (said.before.as_str(), said.after.as_str()));
        (&self.title, sentences.collect(), self.does.len())
    }
}

/// The paragraph of a matter.
pub(in crate::report) fn paragraph(
    matter: &ThingMeasured<'_, '_>,
    entry: &JudgedGuard<'_>,
    remedies: &GuardRemedies,
) -> Paragraph {
    let guard = &entry.guard;
    let remedies = acts::remedies_of(matter, remedies);
    let observations = matter.readings(guard);
    let readings: Vec<String> = observations
        .iter()
        .zip(reader::readings(&observations))
        .map(|(observation, said)| {
            if observation.item == matter.topic {
                said
            } else {
                format!("{} {said}", observation.item)
            }
        })
        .collect();
    let mut sentences = Vec::new();
    for by in [AskedBy::Rules, AskedBy::Advice, AskedBy::Warning] {
        missed(&mut sentences, matter, by);
        let of = |verdict| {
            let all = matter.with(verdict).filter(move |(asks, _)| *asks == by);
            all.take(DEMANDS).map(|(_, finding)| finding)
        };
        let close = of(Verdict::TooClose).map(|finding| near(finding, by));
        sentences.extend(close.map(|says| Sentence::plain(reader::plain(&says))));
        let unclear = of(Verdict::NotSettled).map(|finding| unclear(finding, by, entry));
        sentences.extend(unclear.map(|says| Sentence::plain(reader::plain(&says))));
        if by == AskedBy::Rules {
            met_by_rules(&mut sentences, matter);
        }
    }
    remarks(&mut sentences, matter, entry);
    let does = remedies
        .iter()
        .map(|remedy| Sentence::plain(remedy.in_short()));
    let mut does: Vec<Sentence> = does.collect();
    let close = matter.with(Verdict::TooClose).map(|(_, finding)| finding);
    let close = close.filter(|finding| finding.margin.is_some());
    let finer = "; or read it more finely";
    if let Some(settle) = close.filter_map(advice::settle).next() {
        let settle = settle
            .split_once(finer)
            .map_or(settle.as_str(), |(ball, _)| ball);
        let settle = settle.trim_end_matches('.');
        does.push(Sentence::plain(format!("To settle it: {settle}.")));
    }
    Paragraph {
        topic: matter.topic,
        verdict: worst(matter),
        shortly: shortly(matter),
        sources: sources(matter),
        who: remedies.first().map(|remedy| remedy.who.name()),
        takes: takes(&remedies),
        title: reader::title(matter.topic),
        readings: readings.join("; "),
        sentences,
        does,
    }
}

fn worst(matter: &ThingMeasured<'_, '_>) -> Verdict {
    let verdicts = matter.asks.iter().map(|(_, finding)| finding.verdict);
    verdicts.min().unwrap_or(Verdict::NotMeasured)
}

/// The strictest of what is missed, in a few words; where nothing is, what is open.
fn shortly(matter: &ThingMeasured<'_, '_>) -> String {
    let Some(finding) = matter.strictest() else {
        let near = matter.with(Verdict::TooClose).next().is_some();
        let open = if near {
            "too near to tell"
        } else {
            "rule unclear"
        };
        return format!("{}: {open}", reader::title(matter.topic).to_lowercase());
    };
    match reader::shortfall(finding) {
        Some(amount) => {
            let operator = finding.limit.as_ref().map(|limit| limit.operator);
            format!("{amount} {}", reader::way(finding.item, operator))
        }
        None => reader::fault(finding),
    }
}

/// What the remedies take beside hands.
fn takes(remedies: &[&ShownRemedy]) -> Vec<&'static str> {
    let mut takes = Vec::new();
    if remedies
        .iter()
        .any(|remedy| remedy.leave == ShownLeave::Owner)
    {
        takes.push("the owner's leave");
    }
    if remedies
        .iter()
        .any(|remedy| remedy.holes == ShownHoles::Makes)
    {
        takes.push("may make holes");
    }
    takes
}

/// `us-dwelling-2018 R312.1.2: read in the text`
fn sources(matter: &ThingMeasured<'_, '_>) -> Vec<String> {
    let mut sources: Vec<String> = Vec::new();
    for (_, finding) in &matter.asks {
        let said = matches!(
            finding.verdict,
            Verdict::FallsShort | Verdict::TooClose | Verdict::NotSettled
        );
        let source = source(finding);
        if said && !sources.contains(&source) {
            sources.push(source);
        }
    }
    sources
}

/// Where a rule stands and how it was read.
pub(in crate::report) fn source(finding: &Finding<'_>) -> String {
    let rule = finding.rule;
    let read = reader::mark(rule.status).unwrap_or("read in the text");
    format!(
        "{}, {}: {read}",
        one_line(&finding.ruleset.id),
        one_line(&rule.clause),
    )
}

/// Who asks, as a sentence begins.
const fn who(by: AskedBy) -> &'static str {
    match by {
        AskedBy::Rules => "The rules",
        AskedBy::Advice => "The advice",
        AskedBy::Warning => "A rule that nobody here read",
    }
}

/// `The rules: 36 in or more: 1/2 in too low (R312.1.2).`
fn missed(sentences: &mut Vec<Sentence>, matter: &ThingMeasured<'_, '_>, asked_by: AskedBy) {
    let who = who(asked_by);
    let mut said: Vec<String> = Vec::new();
    let mut left = 0_usize;
    let mut told: Vec<&Finding<'_>> = Vec::new();
    let of_rules: Vec<String> = matter
        .missed()
        .filter(|(by, _)| *by == AskedBy::Rules && asked_by == AskedBy::Advice)
        .map(|(_, finding)| reader::asked(finding))
        .collect();
    let mut same = false;
    for (by, finding) in matter.missed() {
        let asked = reader::asked(finding);
        if by != asked_by || said.contains(&asked) || told.iter().any(|t| implies(t, finding)) {
            continue;
        }
        if of_rules.contains(&asked) {
            same = true;
            continue;
        }
        told.push(finding);
        if said.len() == DEMANDS {
            left += 1;
            continue;
        }
        let lead = if said.is_empty() {
            format!("{who}: {asked}")
        } else {
            format!("and {asked}")
        };
        said.push(asked);
        let would = finding.chain.as_ref().map_or_else(String::new, |chain| {
            format!(
                ": {}; worked out from what was seen and not tested, a licensed engineer decides",
                strength::would_not_hold(chain)
            )
        });
        let after = format!("{}{would};", clause(finding, asked_by));
        sentences.push(match reader::shortfall(finding) {
            Some(amount) => {
                let operator = finding.limit.as_ref().map(|limit| limit.operator);
                let way = reader::way(finding.item, operator);
                Sentence {
                    before: format!("{lead}: "),
                    amount,
                    after: format!(" {way}{after}"),
                }
            }
            None => Sentence::plain(format!("{lead}{after}")),
        });
    }
    if same && said.is_empty() {
        sentences.push(Sentence::plain(format!("{who} asks the same.")));
    } else if left > 0 {
        sentences.push(Sentence {
            before: format!("and {left} more"),
            amount: String::new(),
            after: MORE.to_owned(),
        });
    } else if let Some(last) = sentences.last_mut().filter(|_| !said.is_empty()) {
        let end = if last.after.is_empty() {
            &mut last.before
        } else {
            &mut last.after
        };
        let ends = end.trim_end_matches(';').len();
        end.truncate(ends);
        end.push('.');
    }
}

/// Whether who keeps the first demand keeps the second as well: a ball, a height or a
/// width of the same ruleset that asks for less.
fn implies(first: &Finding<'_>, second: &Finding<'_>) -> bool {
    let sizes = |finding: &Finding<'_>| {
        let limit = finding.limit.as_ref()?;
        Some((limit.operator, limit.value?))
    };
    let same = first.item == second.item && first.ruleset.id == second.ruleset.id;
    match (sizes(first), sizes(second)) {
        (Some((one, strict)), Some((other, lax))) if same && one == other => match one {
            Operator::StopsBall | Operator::AtMost | Operator::Below => strict <= lax,
            Operator::AtLeast | Operator::Above => strict >= lax,
            Operator::AngleAtLeast
            | Operator::Entraps
            | Operator::Is
            | Operator::IsNot
            | Operator::LadderBelow
            | Operator::LadderUpTo
            | Operator::NoneWithin
            | Operator::NotWithin => false,
        },
        (_, _) => false,
    }
}

/// Where the clause stands; of advice, how it was read where not in the text.
fn clause(finding: &Finding<'_>, by: AskedBy) -> String {
    let mark = reader::mark(finding.rule.status);
    let clause = one_line(&finding.rule.clause);
    match (by, mark) {
        (AskedBy::Rules | AskedBy::Warning, None) => format!(" ({clause})"),
        (AskedBy::Rules | AskedBy::Warning, Some(mark)) => format!(" ({clause}; {mark})"),
        (AskedBy::Advice, Some(mark)) if finding.rule.status != Status::Practice => {
            format!(" ({mark})")
        }
        (AskedBy::Advice, Some(_) | None) => String::new(),
    }
}

/// What the building rules ask of it and is met, where advice is not.
fn met_by_rules(sentences: &mut Vec<Sentence>, matter: &ThingMeasured<'_, '_>) {
    if matter.missed().any(|(by, _)| by == AskedBy::Rules) {
        return;
    }
    let met = matter.with(Verdict::Meets);
    let mut met = met.filter(|(by, finding)| *by == AskedBy::Rules && finding.limit.is_some());
    let Some((_, finding)) = met.next() else {
        return;
    };
    let spare = finding.margin.filter(|margin| *margin > Length::ZERO);
    let spare = spare.map_or_else(String::new, |margin| {
        format!("; {} to spare", advice::amount(finding, margin))
    });
    let says = format!("Meets the rules ({}{spare}).", reader::asked(finding));
    sentences.push(Sentence::plain(says));
}

/// What is too near to tell, and how sure the tape is.
fn near(finding: &Finding<'_>, by: AskedBy) -> String {
    let who = who(by);
    if let Some(why) = for_a_person(finding) {
        return format!("{who}, unclear: {why}.");
    }
    let asked = reader::asked(finding);
    let clause = clause(finding, by);
    let why = match (finding.margin, finding.uncertainty) {
        (Some(Length::ZERO), _) => "it reads exactly that, and a tape cannot settle it".to_owned(),
        (Some(margin), Some(u)) if margin.magnitude() < u.doubled() => {
            let side = if margin < Length::ZERO {
                "on the wrong side"
            } else {
                "on the good side"
            };
            format!(
                "it reads {} {side}, and this tape may be out by {}",
                advice::amount(finding, margin),
                advice::doubt(finding, u.doubled())
            )
        }
        (Some(_), _) | (None, _) => open_for(finding),
    };
    format!("{who}, too near to tell: {asked}{clause}; {why}.")
}

/// What is unclear of a rule, and whom to ask.
fn unclear(finding: &Finding<'_>, by: AskedBy, entry: &JudgedGuard<'_>) -> String {
    let who = who(by);
    if let Some(why) = for_a_person(finding) {
        return format!("{who}, unclear: {why}.");
    }
    let mut reasons = finding.reasons.iter();
    let why = reasons
        .next()
        .map(|reason| words::reason(reason, &entry.guard));
    let why = why.unwrap_or_else(|| "what is asked here is not known".to_owned());
    format!(
        "{who}, unclear: {}{}; {}.",
        reader::asked(finding),
        clause(finding, by),
        why.trim_end_matches('.')
    )
}

fn open_for(finding: &Finding<'_>) -> String {
    let mut reasons = finding.reasons.iter();
    if reasons.any(|reason| matches!(reason, Reason::TriggerInDoubt(_))) {
        "whether it is asked here lies too near to tell as well".to_owned()
    } else {
        "what is written does not settle it".to_owned()
    }
}

/// Why a clause without a number leaves it to a person.
fn for_a_person(finding: &Finding<'_>) -> Option<String> {
    finding.reasons.iter().find_map(|reason| {
        let Reason::ForAPerson(why) = reason else {
            return None;
        };
        let why = one_line(why.trim_end_matches('.'));
        finding.margin.is_none().then(|| why.into_owned())
    })
}

/// What a reader should know beside it: where it was taken to lie, a rule of another time.
fn remarks(sentences: &mut Vec<Sentence>, matter: &ThingMeasured<'_, '_>, entry: &JudgedGuard<'_>) {
    let guard = &entry.guard;
    let mut said: Vec<String> = Vec::new();
    for (_, finding) in &matter.asks {
        if !matches!(finding.verdict, Verdict::FallsShort | Verdict::TooClose) {
            continue;
        }
        for reason in &finding.reasons {
            // it was written beside it
            let triangle = guard.of(Item::StairTriangle).next().is_some();
            let known = (triangle && *reason == Reason::MayBeTriangle)
                || matches!(
                    reason,
                    Reason::ExactlyAtLimit
                        | Reason::ForAPerson(_)
                        | Reason::NotInForceWhenBuilt
                        | Reason::StrengthNotJudged
                        | Reason::TakenAsLong
                        | Reason::TakenInZone(_)
                );
            let text = reader::plain(&words::reason(reason, &entry.guard));
            let text = reader::capital(&text);
            let text = format!("{}.", text.trim_end_matches('.'));
            if !known && !said.contains(&text) && said.len() < DEMANDS {
                said.push(text);
            }
        }
    }
    sentences.extend(said.into_iter().map(Sentence::plain));
}
