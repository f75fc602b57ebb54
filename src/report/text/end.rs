//! What is said once for all: by what it was judged, what was taken as given, the
//! cautions with the guards they hold for, the deferral, the next command.

use crate::report::ReportBasis;
use crate::report::one_line;
use crate::report::palette;
use crate::report::told::DEFERRAL;
use crate::report::told::GENERAL;
use crate::report::told::SurveyTold;
use crate::report::told::judged_by;
use crate::report::told::judging;
use crate::report::told::taken;
use crate::report::told::whose;
use crate::report::told::written::SaidOfItem;
use crate::report::words;
use crate::report::wrap::Lines;

/// The end of the report.
pub(super) fn end(
    lines: &mut Lines,
    basis: &ReportBasis<'_>,
    survey: &SurveyTold,
    for_all: &[SaidOfItem],
) {
    let told = &survey.guards;
    lines.gap();
    let title = if told.len() == 1 {
        "KNOW"
    } else {
        "FOR ALL, where nothing else is said"
    };
    lines.push(palette::heading(title));
    let tapes = basis.survey.tapes.iter();
    let tapes = tapes.map(|tape| format!("tape {}", one_line(tape)));
    let facts = for_all.iter().map(|said| said.says.clone());
    let facts: Vec<String> = facts.chain(tapes).collect();
    if !facts.is_empty() {
        let text = format!("As written: {}.", facts.join("; "));
        lines.spread("  ", "     ", &text);
    }
    for ruleset in judging(basis, survey) {
        lines.spread("  ", "     ", &judged_by(ruleset, basis));
    }
    let tapes: Vec<_> = basis
        .survey
        .tapes
        .iter()
        .map(|tape| one_line(tape))
        .collect();
    if !tapes.is_empty() {
        lines.spread("  ", "     ", &format!("Tape: {}.", tapes.join("; ")));
    }
    lines.spread(
        "  ",
        "     ",
        &format!("Taken as given: {}.", taken(basis, told).join("; ")),
    );
    for (guards, says) in survey.cautions() {
        let whose = whose(&guards, told);
        lines.spread("  ", "     ", &format!("{whose}{}", says.join(" ")));
    }
    let left_out = survey.left_out();
    if !left_out.is_empty() {
        let text = format!("Not asked by these rules: {}.", left_out.join("; "));
        lines.spread("  ", "     ", &text);
    }
    for text in [GENERAL, DEFERRAL] {
        lines.spread("  ", "     ", text);
    }
    let files: Vec<_> = basis
        .survey
        .files
        .iter()
        .map(|name| one_line(name))
        .collect();
    let files = words::shortened(&files.join(", "));
    let read = format!(
        "guardrule {}; read from {files}. A clause was read in its text unless it says otherwise. More: \
--full (every rule and source) · --explain (the sums) · --format actions (a list of work) · guardrule \
remedy (what would put it right, to the mark).",
        basis.tool_version
    );
    lines.spread("  ", "     ", &read);
}
