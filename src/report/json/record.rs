//! What stands in the JSON report, key by key in the order of its schema.

use serde::Serialize;

use crate::items::Hazard;
use crate::items::Item;
use crate::items::Verdict;
use crate::judge::Finding;
use crate::judge::HazardVerdict;
use crate::judge::Judged;
use crate::judge::leave_outs;
use crate::quantities::Length;
use crate::quantities::LengthUnit;
use crate::remedy::PlanDepth;
use crate::report::JudgedGuard;
use crate::report::ReportBasis;
use crate::report::actions;
use crate::report::json::links::LinkRecord;
use crate::report::json::links::StrengthRecord;
use crate::report::json::links::links;
use crate::report::json::links::strengths;
use crate::report::millimetres::Millimetres;
use crate::report::remedied::GuardRemedies;
use crate::report::remedied::ShownHoles;
use crate::report::standing;
use crate::report::words;
use crate::rules::Amendment;
use crate::rules::LeaveOut;
use crate::rules::Ruleset;
use crate::survey::Guard;
use crate::survey::Observation;
use crate::survey::SurveyFacts;

#[derive(Serialize)]
pub(super) struct Tool<'a> {
    name: &'static str,
    version: &'a str,
    date: &'a str,
}

impl<'a> Tool<'a> {
    pub(super) fn of(basis: &'a ReportBasis<'a>) -> Tool<'a> {
        Tool {
            name: "guardrule",
            version: basis.tool_version,
            date: &basis.today,
        }
    }
}

#[derive(Serialize)]
pub(super) struct SurveyRecord<'a> {
    property: Option<&'a str>,
    date: Option<String>,
    by: Option<String>,
    tape: Option<String>,
    files: Vec<&'a str>,
    readings: Vec<ReadingRecord<'a>>,
}

impl<'a> SurveyRecord<'a> {
    pub(super) fn of(facts: &'a SurveyFacts) -> SurveyRecord<'a> {
        SurveyRecord {
            property: facts.property.as_deref(),
            date: joined(&facts.dates),
            by: joined(&facts.by),
            tape: joined(&facts.tapes),
            files: facts.files.iter().map(|name| &**name).collect(),
            readings: facts.said.iter().map(|fact| reading(fact, facts)).collect(),
        }
    }
}

/// Several as one text; `None` where there are none.
pub(super) fn joined(several: &[String]) -> Option<String> {
    (!several.is_empty()).then(|| several.join("; "))
}

#[derive(Serialize)]
pub(super) struct RulesetRecord<'a> {
    id: &'a str,
    title: &'a str,
    edition: &'a str,
    standing: &'static str,
    file: &'a str,
    in_force: Option<YearsRecord>,
    covers: &'a str,
    leaves_out: Vec<String>,
    rules: CountRecord,
    amendments: Vec<AmendmentRecord<'a>>,
    sources: Vec<SourceRecord<'a>>,
}

#[derive(Serialize)]
struct YearsRecord {
    from: i32,
    until: Option<i32>,
}

#[derive(Serialize)]
struct CountRecord {
    all: usize,
    published: usize,
    quoted: usize,
    memory: usize,
    practice: usize,
}

#[derive(Serialize)]
struct AmendmentRecord<'a> {
    rule: &'a str,
    file: &'a str,
    removed: bool,
    asks_less: &'a [String],
}

#[derive(Serialize)]
struct SourceRecord<'a> {
    key: &'a str,
    title: &'a str,
    edition: &'a str,
    status: &'static str,
}

impl<'a> RulesetRecord<'a> {
    pub(super) fn of(ruleset: &'a Ruleset) -> RulesetRecord<'a> {
        let counts = crate::report::Counts::of(ruleset);
        let amendment = |amendment: &'a Amendment| AmendmentRecord {
            rule: &amendment.rule,
            file: &amendment.file,
            removed: amendment.removed,
            asks_less: &amendment.asks_less,
        };
        RulesetRecord {
            id: &ruleset.id,
            title: &ruleset.title,
            edition: &ruleset.edition,
            standing: standing(ruleset),
            file: &ruleset.file,
            in_force: ruleset.in_force.map(|years| YearsRecord {
                from: years.from,
                until: years.until,
            }),
            covers: &ruleset.covers.says,
            leaves_out: ruleset
                .leaves_out
                .iter()
                .map(LeaveOut::conditional)
                .collect(),
            rules: CountRecord {
                all: counts.rules,
                published: counts.published,
                quoted: counts.quoted,
                memory: counts.memory,
                practice: counts.practice,
            },
            amendments: ruleset.amendments.iter().map(amendment).collect(),
            sources: ruleset
                .sources
                .iter()
                .map(|source| SourceRecord {
                    key: &source.key,
                    title: &source.title,
                    edition: &source.edition,
                    status: source.status.name(),
                })
                .collect(),
        }
    }
}

#[derive(Serialize)]
pub(super) struct GuardRecord<'a> {
    building: Option<&'a str>,
    unit: Option<&'a str>,
    guard: &'a str,
    verdict: &'static str,
    guidance: Option<&'static str>,
    hazards: Vec<HazardRecord>,
    findings: Vec<FindingRecord<'a>>,
    assumptions: Vec<String>,
    leaves_out: Vec<String>,
    cautions: Vec<String>,
    readings: Vec<ReadingRecord<'a>>,
    questions: Vec<QuestionRecord<'a>>,
    when_built: Option<WhenBuiltRecord<'a>>,
    could_not_judge: bool,
    rows_in_error: u32,
    dangers: Vec<DangerRecord>,
    notes: Vec<NoteRecord<'a>>,
    agreed: Vec<AgreedRecord<'a>>,
    unclear: Vec<UnclearRecord<'a>>,
    asks_nothing: Vec<SilenceRecord<'a>>,
    strength_unchecked: bool,
    strength: Vec<StrengthRecord<'a>>,
}

/// Something seen that comes before every rule.
#[derive(Serialize)]
struct DangerRecord {
    item: &'static str,
    word: &'static str,
    hazard: &'static str,
    act: &'static str,
    says: &'static str,
}

/// A note that tells of a danger which no reading says or denies.
#[derive(Serialize)]
struct NoteRecord<'a> {
    item: &'static str,
    word: &'static str,
    note: &'a str,
    says: String,
}

/// What all cases of what nobody wrote down agree on.
#[derive(Serialize)]
struct AgreedRecord<'a> {
    ruleset: &'a str,
    verdict: &'static str,
    hazard: Option<&'static str>,
    rules: &'a [&'a str],
    advisory: bool,
}

/// What keeps a ruleset from letting a guard meet.
#[derive(Serialize)]
struct UnclearRecord<'a> {
    ruleset: &'a str,
    hazard: Option<&'static str>,
    says: String,
}

/// What a ruleset was read to ask nothing about here.
#[derive(Serialize)]
struct SilenceRecord<'a> {
    hazard: &'static str,
    says: &'a str,
}

/// What an answer would lead to.
#[derive(Serialize)]
struct LeadsToRecord<'a> {
    ruleset: &'a str,
    answer: &'a str,
    verdict: Option<&'static str>,
}

#[derive(Serialize)]
struct HazardRecord {
    hazard: &'static str,
    verdict: Option<&'static str>,
    guidance: Option<&'static str>,
}

#[derive(Serialize)]
struct ReadingRecord<'a> {
    item: &'a str,
    written: &'a str,
    note: Option<&'a str>,
    file: &'a str,
    line: u64,
    sheet: Option<&'a str>,
    cell: Option<String>,
}

#[derive(Serialize)]
struct QuestionRecord<'a> {
    item: &'static str,
    question: &'static str,
    findings: usize,
    leads_to: Vec<LeadsToRecord<'a>>,
}

#[derive(Serialize)]
struct FindingRecord<'a> {
    ruleset: &'a str,
    rule: &'a str,
    clause: &'a str,
    hazard: &'static str,
    verdict: &'static str,
    advisory: bool,
    status: &'static str,
    indicative: bool,
    partial: bool,
    reading_alone: &'static str,
    measured: Option<QuantityRecord<'a>>,
    limit: Option<QuantityRecord<'a>>,
    margin: Option<QuantityRecord<'a>>,
    uncertainty: Option<QuantityRecord<'a>>,
    probability: Option<f64>,
    readings: Vec<PlaceRecord<'a>>,
    also_readings: Vec<PlaceRecord<'a>>,
    links: Vec<LinkRecord>,
    remedy: Option<RemedyRecord>,
    says: &'a str,
    item: &'static str,
    operator: Option<&'static str>,
    urgency: &'static str,
    binding: bool,
    reasons: Vec<String>,
}

/// What would put it right.
#[derive(Serialize)]
struct RemedyRecord {
    says: String,
    aims_at: Option<String>,
    quantity: Option<String>,
    who: &'static str,
    leave: &'static str,
    holes: bool,
    access: Option<&'static str>,
    lasts: &'static str,
    within: Option<&'static str>,
    refused: Vec<RefusedRecord>,
}

/// A remedy that is not offered.
#[derive(Serialize)]
struct RefusedRecord {
    says: String,
    breaks: Vec<String>,
}

/// The remedy of what a finding judged, where it falls short.
fn remedy(
    remedies: &GuardRemedies,
    entry: &JudgedGuard<'_>,
    finding: &Finding<'_>,
) -> Option<RemedyRecord> {
    let remedy = remedies.find(finding)?;
    let access = actions::access(&entry.guard);
    Some(RemedyRecord {
        says: remedy.whole(),
        aims_at: remedy.aims_at.clone(),
        quantity: remedy.quantity.clone(),
        who: remedy.who.name(),
        leave: remedy.leave.name(),
        holes: remedy.holes == ShownHoles::Makes,
        access: (!access.is_empty()).then_some(access),
        lasts: remedy.lasts,
        within: remedy.within,
        refused: remedy
            .refused
            .iter()
            .map(|refused| RefusedRecord {
                says: refused.says.clone(),
                breaks: refused.breaks.clone(),
            })
            .collect(),
    })
}

/// A quantity: as written, and in millimetres where it is a length.
#[derive(Serialize)]
struct QuantityRecord<'a> {
    written: std::borrow::Cow<'a, str>,
    value: Option<Millimetres>,
    unit: Option<&'static str>,
}

impl<'a> QuantityRecord<'a> {
    fn new(
        written: impl Into<std::borrow::Cow<'a, str>>,
        value: Option<Length>,
    ) -> QuantityRecord<'a> {
        QuantityRecord {
            written: written.into(),
            value: value.map(Millimetres),
            unit: value.map(|_| LengthUnit::Millimetre.symbol()),
        }
    }
}

#[derive(Serialize)]
struct PlaceRecord<'a> {
    file: &'a str,
    line: u64,
    sheet: Option<&'a str>,
    cell: Option<String>,
}

fn name(verdict: Option<Verdict>) -> Option<&'static str> {
    verdict.map(Verdict::name)
}

pub(super) fn filled(text: &str) -> Option<&str> {
    (!text.is_empty()).then_some(text)
}

/// How a guard fares by the rules of its time.
#[derive(Serialize)]
struct WhenBuiltRecord<'a> {
    verdict: &'static str,
    rulesets: &'a [&'a str],
}

impl<'a> GuardRecord<'a> {
    pub(super) fn of(
        entry: &'a JudgedGuard<'_>,
        cautions: Vec<String>,
        basis: &'a ReportBasis<'_>,
    ) -> GuardRecord<'a> {
        let facts = basis.survey;
        let (guard, judged) = (&entry.guard, &entry.judged);
        let remedies = GuardRemedies::of(entry, basis, PlanDepth::All);
        let hazard = |verdict: &HazardVerdict| HazardRecord {
            hazard: verdict.hazard.name(),
            verdict: name(verdict.verdict),
            guidance: name(verdict.guidance),
        };
        GuardRecord {
            building: filled(&guard.building),
            unit: filled(&guard.unit),
            guard: &guard.name,
            verdict: judged.verdict.name(),
            guidance: name(judged.guidance),
            hazards: judged.hazards.iter().map(hazard).collect(),
            findings: judged
                .findings
                .iter()
                .map(|finding| FindingRecord::of(finding, (entry, &remedies), facts))
                .collect(),
            assumptions: basis.taken(entry).iter().map(words::assumption).collect(),
            leaves_out: leave_outs(guard, facts, basis.rulesets, basis.options),
            cautions,
            readings: readings(guard, facts),
            questions: judged
                .questions()
                .iter()
                .map(|question| QuestionRecord {
                    item: question.item.name(),
                    question: question.item.info().question,
                    findings: question.findings,
                    leads_to: leads_to(judged, question.item),
                })
                .collect(),
            when_built: judged.when_built.as_ref().map(|when| WhenBuiltRecord {
                verdict: when.verdict.name(),
                rulesets: &when.rulesets,
            }),
            could_not_judge: judged.could_not_judge,
            rows_in_error: guard.rows_in_error,
            dangers: judged
                .dangers
                .iter()
                .map(|seen| DangerRecord {
                    item: seen.item.name(),
                    word: seen.word,
                    hazard: seen.danger.hazard.name(),
                    act: seen.danger.act,
                    says: seen.danger.says,
                })
                .collect(),
            notes: judged
                .notes
                .iter()
                .map(|note| NoteRecord {
                    item: note.told.item.name(),
                    word: note.word,
                    note: &note.note,
                    says: words::note_of_danger(note),
                })
                .collect(),
            agreed: judged
                .agreed
                .iter()
                .map(|agreed| AgreedRecord {
                    ruleset: &agreed.ruleset.id,
                    verdict: agreed.verdict.name(),
                    hazard: agreed.hazard.map(Hazard::name),
                    rules: &agreed.rules,
                    advisory: agreed.advises,
                })
                .collect(),
            unclear: judged
                .unclear
                .iter()
                .map(|unclear| UnclearRecord {
                    ruleset: &unclear.ruleset.id,
                    hazard: unclear.hazard.map(Hazard::name),
                    says: words::why_unclear(unclear),
                })
                .collect(),
            asks_nothing: judged
                .silences
                .iter()
                .map(|silence| SilenceRecord {
                    hazard: silence.hazard.name(),
                    says: &silence.says,
                })
                .collect(),
            strength_unchecked: judged.strength_unchecked,
            strength: strengths(&judged.findings),
        }
    }
}

/// What each answer to a question would lead to.
fn leads_to<'a>(judged: &'a Judged<'_>, item: Item) -> Vec<LeadsToRecord<'a>> {
    let of = judged.leads_to.iter().filter(|leads| leads.item == item);
    of.flat_map(|leads| {
        leads.answers.iter().map(|(answer, verdict)| LeadsToRecord {
            ruleset: &leads.ruleset.id,
            answer,
            verdict: verdict.map(Verdict::name),
        })
    })
    .collect()
}

fn reading<'a>(observation: &'a Observation, facts: &'a SurveyFacts) -> ReadingRecord<'a> {
    ReadingRecord {
        item: observation.item.name(),
        written: &observation.written,
        note: filled(&observation.note),
        file: words::file_name(observation.row, facts),
        line: observation.row.line,
        sheet: words::sheet_name(observation.row, facts),
        cell: words::sheet_cell(observation.row, observation.column, facts),
    }
}

/// Every cell once: one that holds two readings (`5 to 6 in`) is one cell. What
/// is the person's own comes last.
fn readings<'a>(guard: &'a Guard, facts: &'a SurveyFacts) -> Vec<ReadingRecord<'a>> {
    let mut seen = std::collections::BTreeSet::new();
    guard
        .observations
        .iter()
        .chain(&guard.inherited.observations)
        .filter(|o| {
            seen.insert((
                o.row,
                o.item,
                std::sync::Arc::as_ptr(&o.written).cast::<u8>(),
            ))
        })
        .map(|observation| reading(observation, facts))
        .chain(guard.own.iter().map(|own| ReadingRecord {
            item: &own.name,
            written: &own.written,
            note: filled(&own.note),
            file: words::file_name(own.row, facts),
            line: own.row.line,
            sheet: words::sheet_name(own.row, facts),
            cell: words::sheet_cell(own.row, own.column, facts),
        }))
        .collect()
}

impl<'a> FindingRecord<'a> {
    fn of(
        finding: &'a Finding<'_>,
        (entry, remedies): (&'a JudgedGuard<'_>, &GuardRemedies),
        facts: &'a SurveyFacts,
    ) -> FindingRecord<'a> {
        let guard = &entry.guard;
        let unit = crate::report::advice::unit(finding);
        let places = |indices: &[usize]| {
            indices
                .iter()
                .map(|index| guard.observation(*index))
                .map(|observation| PlaceRecord {
                    file: words::file_name(observation.row, facts),
                    line: observation.row.line,
                    sheet: words::sheet_name(observation.row, facts),
                    cell: words::sheet_cell(observation.row, observation.column, facts),
                })
                .collect()
        };
        let own = |length: Length| QuantityRecord::new(length.exact(unit), Some(length));
        FindingRecord {
            ruleset: &finding.ruleset.id,
            rule: &finding.rule.id,
            clause: &finding.rule.clause,
            hazard: finding.rule.hazard.name(),
            verdict: finding.verdict.name(),
            advisory: finding.ruleset.advisory,
            status: finding.rule.status.name(),
            indicative: finding.is_indicative(),
            partial: finding.partial,
            reading_alone: finding.reading_alone.name(),
            measured: finding
                .measured
                .as_ref()
                .map(|measured| QuantityRecord::new(&*measured.written, measured.value)),
            limit: finding
                .limit
                .as_ref()
                .map(|limit| QuantityRecord::new(&*limit.written, limit.value)),
            margin: finding.margin.map(own),
            uncertainty: finding.uncertainty.map(|u| own(u.as_length())),
            probability: finding.probability.map(|probability| probability.value()),
            readings: places(&finding.readings),
            also_readings: places(&finding.also_readings),
            links: links(finding),
            remedy: remedy(remedies, entry, finding),
            says: &finding.rule.says,
            item: finding.item.name(),
            operator: finding.limit.as_ref().map(|limit| limit.operator.key()),
            urgency: finding.rule.urgency.name(),
            binding: finding.binding,
            reasons: finding
                .reasons
                .iter()
                .map(|reason| words::reason(reason, guard))
                .collect(),
        }
    }
}
