//! A comparison for programs.

use std::io;
use std::io::Write;

use serde_json::json;

use crate::report::ReportBasis;
use crate::report::compared::told::ComparisonTold;
use crate::report::told::DEFERRAL;

pub(super) fn write(
    out: &mut dyn Write,
    basis: &ReportBasis<'_>,
    told: &ComparisonTold,
) -> io::Result<()> {
    let changes: Vec<_> = told
        .changes
        .iter()
        .map(|change| {
            json!({
                "change": change.kind.name(),
                "decides": change.decides,
                "building": change.building,
                "unit": change.unit,
                "guard": change.guard,
                "item": change.item.name(),
                "by": change.by,
                "before": change.before,
                "after": change.after,
                "asked": change.asked,
                "clause": change.clause,
                "moved": change.moved.map(|moved| moved.millimetres_as_float()),
                "says": change.says,
            })
        })
        .collect();
    let counts: serde_json::Map<String, serde_json::Value> = told
        .by_kind
        .iter()
        .map(|(kind, decides, advice)| {
            let of = json!({ "decides": decides, "advice": advice });
            (kind.name().replace(' ', "_"), of)
        })
        .collect();
    let not_entered: Vec<_> = told
        .not_entered
        .iter()
        .map(|(name, why, before)| json!({ "guard": name, "why": why, "before": before.name() }))
        .collect();
    let appeared: Vec<_> = told
        .appeared
        .iter()
        .map(|(name, verdict)| json!({ "guard": name, "verdict": verdict.name() }))
        .collect();
    let rulesets: Vec<&str> = basis.rulesets.iter().map(|one| one.id.as_str()).collect();
    let all = json!({
        "comparison": 1,
        "tool": format!("guardrule {}", basis.tool_version),
        "head": told.head,
        "rulesets": rulesets,
        "law": told.authority.name(),
        "changes": changes,
        "not_entered": not_entered,
        "first_round_alone": told.missing,
        "second_round_alone": appeared,
        "questions": told.questions,
        "unchanged": told.unchanged,
        "counts": counts,
        "compared": told.compared,
        "deferral": DEFERRAL,
    });
    serde_json::to_writer_pretty(&mut *out, &all)?;
    writeln!(out)
}
