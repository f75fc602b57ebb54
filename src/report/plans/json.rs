//! The plans as JSON.

use std::io;
use std::io::Write;

use serde::Serialize;

use crate::geometry::BayLayout;
use crate::geometry::added_between;
use crate::quantities::Length;
use crate::remedy::Bay;
use crate::remedy::Broken;
use crate::remedy::HowMany;
use crate::remedy::MakesHoles;
use crate::remedy::MaterialPart;
use crate::remedy::Needed;
use crate::remedy::Offered;
use crate::remedy::RefusedRemedy;
use crate::remedy::RemedyKind;
use crate::remedy::RuleKey;
use crate::remedy::ShortTopic;
use crate::remedy::WaitsFor;
use crate::report::PlanOutcome;
use crate::report::PlannedGuard;
use crate::report::ReportBasis;
use crate::report::cautions::DEFERRAL;
use crate::report::millimetres::Millimetres;
use crate::report::plans::cautions::PlacesOfRules;
use crate::report::plans::cautions::cautions;
use crate::report::plans::counts::all_to_write;
use crate::report::plans::counts::labour;
use crate::report::plans::counts::labour_by;
use crate::report::plans::counts::minutes;
use crate::report::plans::counts::totals;
use crate::report::plans::words;

#[derive(Serialize)]
struct PlansRecord<'a> {
    schema: u32,
    tool: String,
    rulesets: Vec<&'a str>,
    guards: Vec<PlanRecord<'a>>,
    totals: Vec<TotalRecord>,
    labour: Vec<LabourRecord>,
    deferral: &'static str,
    summary: PlansSummary,
}

#[derive(Serialize)]
struct PlansSummary {
    guards: usize,
    confirmed: usize,
    undecided: usize,
    stands: usize,
    nothing: usize,
}

#[derive(Serialize)]
struct PlanRecord<'a> {
    building: Option<&'a str>,
    unit: Option<&'a str>,
    guard: &'a str,
    outcome: &'static str,
    verdict: &'static str,
    verdict_after: &'static str,
    guidance_after: Option<&'static str>,
    tonight: Vec<TonightRecord>,
    steps: Vec<PlanStepRecord>,
    bridges: Vec<OfferedRecord>,
    refused: Vec<RefusedPlanRecord>,
    unsolved: Vec<UnsolvedRecord>,
    solved: Vec<KeyRecord>,
    no_longer_asked: Vec<KeyRecord>,
    still_open: Vec<OpenRecord>,
    to_write: Vec<&'static str>,
    minutes: [u32; 2],
    minutes_uncounted: u32,
    build_tolerance: Millimetres,
    cautions: Vec<CautionRecord>,
    cautions_here: Vec<String>,
}

#[derive(Serialize)]
struct TonightRecord {
    kind: &'static str,
    says: String,
}

#[derive(Serialize)]
struct CautionRecord {
    key: &'static str,
    says: &'static str,
}

#[derive(Serialize)]
struct PlanStepRecord {
    item: &'static str,
    within: Option<&'static str>,
    waits: bool,
    proved: bool,
    #[serde(flatten)]
    offered: OfferedRecord,
    lesser: Option<LesserRecord>,
    instead: Vec<OfferedRecord>,
    to_try: Vec<OfferedRecord>,
}

#[derive(Serialize)]
struct LesserRecord {
    #[serde(flatten)]
    offered: OfferedRecord,
    leaves: Vec<KeyRecord>,
}

#[derive(Serialize)]
struct OfferedRecord {
    kind: &'static str,
    says: String,
    aims_at: Option<String>,
    who: &'static str,
    leave: &'static str,
    holes: &'static str,
    permit: &'static str,
    lasts: &'static str,
    parts: Vec<PartRecord>,
    old_paint: Option<String>,
    minutes: Option<[u32; 2]>,
    minutes_per: Option<&'static str>,
    minutes_in_all: Option<[u32; 2]>,
    marks: Vec<MarksRecord>,
    readings: Vec<NewReadingRecord>,
}

#[derive(Serialize)]
struct PartRecord {
    what: String,
    count_from: Option<u32>,
    count: Option<u32>,
    at_most: bool,
    length: Option<Millimetres>,
    buy: Option<Millimetres>,
    to_write: Vec<&'static str>,
}

#[derive(Serialize)]
struct MarksRecord {
    clear: Millimetres,
    baluster: Millimetres,
    tolerance: Millimetres,
    dries_by: Millimetres,
    largest_gap: Millimetres,
    spacer: Millimetres,
    marks: Vec<Millimetres>,
}

#[derive(Serialize)]
struct NewReadingRecord {
    item: &'static str,
    written: String,
    note: String,
}

#[derive(Serialize)]
struct RefusedPlanRecord {
    kind: &'static str,
    says: String,
    why: String,
    breaks: Vec<BrokenRecord>,
}

#[derive(Serialize)]
struct BrokenRecord {
    #[serde(flatten)]
    key: KeyRecord,
    says: String,
    becomes: &'static str,
    written: Option<String>,
}

#[derive(Serialize)]
struct UnsolvedRecord {
    item: &'static str,
    why: String,
}

#[derive(Serialize)]
struct KeyRecord {
    ruleset: String,
    rule: String,
    item: &'static str,
}

#[derive(Serialize)]
struct OpenRecord {
    #[serde(flatten)]
    key: KeyRecord,
    says: String,
    verdict: &'static str,
}

#[derive(Serialize)]
struct LabourRecord {
    who: &'static str,
    minutes: [u32; 2],
    uncounted: u32,
}

#[derive(Serialize)]
struct TotalRecord {
    what: String,
    count_from: u32,
    count: u32,
    at_most: bool,
    buy: Millimetres,
    guards: u32,
    uncounted: u32,
}

/// The plans as one JSON object; lengths in millimetres.
///
/// # Errors
/// Those of `out`.
pub fn plans_json(
    out: &mut dyn Write,
    guards: &[PlannedGuard<'_>],
    basis: &ReportBasis<'_>,
) -> io::Result<()> {
    let of = |outcome: PlanOutcome| {
        guards
            .iter()
            .filter(|guard| guard.outcome() == outcome)
            .count()
    };
    let record = PlansRecord {
        schema: 1,
        tool: format!("guardrule {}", basis.tool_version),
        rulesets: basis.rulesets.iter().map(|ruleset| &*ruleset.id).collect(),
        guards: guards
            .iter()
            .map(|guard| plan(guard, &PlacesOfRules::of(basis)))
            .collect(),
        totals: totals(guards)
            .into_iter()
            .map(|total| TotalRecord {
                what: total.what,
                count_from: total.count[0],
                count: total.count[1],
                at_most: total.count[0] < total.count[1],
                buy: Millimetres(total.buy),
                guards: total.guards,
                uncounted: total.uncounted,
            })
            .collect(),
        labour: labour_by(guards)
            .into_iter()
            .map(|(who, total)| LabourRecord {
                who: who.name(),
                minutes: total.minutes,
                uncounted: total.uncounted,
            })
            .collect(),
        deferral: DEFERRAL,
        summary: PlansSummary {
            guards: guards.len(),
            confirmed: of(PlanOutcome::Confirmed),
            undecided: of(PlanOutcome::Undecided),
            stands: of(PlanOutcome::Stands),
            nothing: of(PlanOutcome::Nothing),
        },
    };
    serde_json::to_writer_pretty(&mut *out, &record)?;
    writeln!(out)
}

/// The word of an outcome in JSON and CSV.
pub(super) const fn outcome(outcome: PlanOutcome) -> &'static str {
    match outcome {
        PlanOutcome::Confirmed => "confirmed",
        PlanOutcome::Nothing => "nothing to do",
        PlanOutcome::Stands => "stands",
        PlanOutcome::Undecided => "undecided",
    }
}

fn plan<'a>(planned: &'a PlannedGuard<'_>, places: &PlacesOfRules<'_>) -> PlanRecord<'a> {
    let plan = &planned.plan;
    let (cautions, local) = cautions(std::iter::once(planned), places);
    let labour = labour(planned);
    PlanRecord {
        building: named(&planned.guard.building),
        unit: named(&planned.guard.unit),
        guard: &planned.guard.name,
        outcome: outcome(planned.outcome()),
        verdict: planned.judged.verdict.name(),
        verdict_after: plan.way.verdict.name(),
        guidance_after: plan.way.guidance.map(|verdict| verdict.name()),
        tonight: plan
            .tonight
            .iter()
            .map(|kind| TonightRecord {
                kind: kind.row().key,
                says: words::tonight(*kind),
            })
            .collect(),
        steps: plan
            .steps
            .iter()
            .map(|step| PlanStepRecord {
                item: step.topic.item.name(),
                within: within(&step.topic, planned),
                waits: step.waits != WaitsFor::Nothing,
                proved: step.proved,
                offered: offered(planned, &step.offered),
                lesser: step.lesser.as_ref().map(|lesser| LesserRecord {
                    offered: offered(planned, &lesser.offered),
                    leaves: lesser.leaves.iter().map(key).collect(),
                }),
                instead: step
                    .instead
                    .iter()
                    .map(|one| offered(planned, one))
                    .collect(),
                to_try: step
                    .to_try
                    .iter()
                    .map(|one| offered(planned, one))
                    .collect(),
            })
            .collect(),
        bridges: plan
            .bridges
            .iter()
            .map(|one| offered(planned, one))
            .collect(),
        refused: plan.refused.iter().map(refused).collect(),
        unsolved: plan
            .unsolved
            .iter()
            .map(|one| UnsolvedRecord {
                item: one.topic.item.name(),
                why: one.why.clone(),
            })
            .collect(),
        solved: plan.way.solved.iter().map(key).collect(),
        no_longer_asked: plan.way.no_longer_asked.iter().map(key).collect(),
        still_open: plan
            .open
            .iter()
            .map(|open| OpenRecord {
                key: key(&open.key),
                says: open.says.clone(),
                verdict: open.verdict.name(),
            })
            .collect(),
        to_write: all_to_write(planned)
            .iter()
            .map(|item| item.name())
            .collect(),
        minutes: labour.minutes,
        minutes_uncounted: labour.uncounted,
        build_tolerance: Millimetres(plan.measuring.gaps),
        cautions: cautions
            .iter()
            .map(|caution| CautionRecord {
                key: caution.key(),
                says: caution.says(),
            })
            .collect(),
        cautions_here: local,
    }
}

/// A name; none where there is none.
fn named(name: &str) -> Option<&str> {
    (!name.is_empty()).then_some(name)
}

fn within(topic: &ShortTopic, planned: &PlannedGuard<'_>) -> Option<&'static str> {
    topic.soon(&planned.guard).says()
}

fn offered(planned: &PlannedGuard<'_>, one: &Offered) -> OfferedRecord {
    let plan = &planned.plan;
    let row = one.kind.row();
    OfferedRecord {
        kind: row.key,
        says: one.says.clone(),
        aims_at: one.aims_at.clone(),
        who: plan.who(one.kind).name(),
        leave: leave(one.kind),
        holes: match row.holes {
            MakesHoles::No => "no",
            MakesHoles::Either => "either",
            MakesHoles::Yes => "yes",
        },
        permit: match row.permit {
            Needed::No => "no",
            Needed::Ask => "ask",
            Needed::Yes => "yes",
        },
        lasts: row.lasts.last().map_or("", |lasts| lasts.name()),
        parts: one.parts.iter().map(part).collect(),
        old_paint: one.paint.map(|paint| paint.text()),
        minutes: one.labour.map(|labour| labour.minutes),
        minutes_per: one.labour.map(|labour| labour.per.name()),
        minutes_in_all: minutes(&planned.guard, one),
        marks: one.bay.as_ref().map(marks).unwrap_or_default(),
        readings: one
            .change
            .new
            .iter()
            .map(|new| NewReadingRecord {
                item: new.item.name(),
                written: new.written.clone(),
                note: new.note.clone(),
            })
            .collect(),
    }
}

/// Whose leave a tenant needs.
pub(super) fn leave(kind: RemedyKind) -> &'static str {
    match kind.row().leave {
        Needed::No => "none",
        Needed::Ask => "ask",
        Needed::Yes => "owner",
    }
}

fn part(part: &MaterialPart) -> PartRecord {
    let range = part.how_many.range();
    let to_write = match &part.how_many {
        HowMany::Between(..) | HowMany::Exactly(_) => Vec::new(),
        HowMany::Write(items) => items.iter().map(|item| item.name()).collect(),
    };
    PartRecord {
        what: part.what.clone(),
        count_from: range.map(|[least, _]| least),
        count: range.map(|[_, most]| most),
        at_most: range.is_some_and(|[least, most]| least < most),
        length: part.length.map(Millimetres),
        buy: part.buy.map(Millimetres),
        to_write,
    }
}

fn marks(bay: &Bay) -> Vec<MarksRecord> {
    let record = |clear: Length, layout: &BayLayout| MarksRecord {
        clear: Millimetres(clear),
        baluster: Millimetres(bay.plan.baluster),
        tolerance: Millimetres(bay.plan.tolerance),
        dries_by: Millimetres(bay.plan.shrinkage),
        largest_gap: Millimetres(layout.largest_gap),
        spacer: Millimetres(layout.spacer),
        marks: layout.marks.iter().copied().map(Millimetres).collect(),
    };
    if bay.between.is_empty() {
        let layout = bay.plan.layout().ok();
        layout
            .iter()
            .map(|layout| record(bay.plan.clear, layout))
            .collect()
    } else {
        let all = added_between(&bay.plan, &bay.between).unwrap_or_default();
        all.iter().map(|one| record(one.gap, &one.layout)).collect()
    }
}

fn refused(refused: &RefusedRemedy) -> RefusedPlanRecord {
    RefusedPlanRecord {
        kind: refused.offered.kind.row().key,
        says: refused.offered.says.clone(),
        why: words::refusal(refused),
        breaks: refused.breaks.iter().map(broken).collect(),
    }
}

fn broken(broken: &Broken) -> BrokenRecord {
    BrokenRecord {
        key: key(&broken.key),
        says: broken.says.clone(),
        becomes: broken.becomes.name(),
        written: broken.written.clone(),
    }
}

fn key(key: &RuleKey) -> KeyRecord {
    KeyRecord {
        ruleset: key.ruleset.clone(),
        rule: key.rule.clone(),
        item: key.item.name(),
    }
}
