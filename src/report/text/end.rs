//! What is said once for all: by what it was judged, what was taken as given, the
//! cautions with the guards they hold for, the deferral, the next command.

use crate::items::Item;
use crate::items::Verdict;
use crate::report::ReportBasis;
use crate::report::one_line;
use crate::report::palette;
use crate::report::reader;
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
    // the head of the report says these
    let above = [Item::Property, Item::Date, Item::By];
    let said = basis.survey.said.iter();
    let said = said.filter(|fact| !above.contains(&fact.item) || !fact.note.is_empty());
    let said = said.map(|fact| format!("{} {}", fact.item, reader::reading(fact)));
    let facts = for_all.iter().map(|said| said.says.clone());
    let facts: Vec<String> = facts.chain(said).collect();
    if !facts.is_empty() {
        let text = format!("As written: {}.", facts.join("; "));
        lines.spread("  ", "     ", &text);
    }
    for ruleset in judging(basis, survey) {
        lines.spread("  ", "     ", &judged_by(ruleset, basis));
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
    lines.spread("  ", "     ", GENERAL);
    let files: Vec<_> = basis
        .survey
        .files
        .iter()
        .map(|name| one_line(name))
        .collect();
    let files = words::shortened(&files.join(", "));
    // what would put it right, to the mark, is a command of its own
    let mend = if told
        .iter()
        .any(|guard| guard.verdict == Verdict::FallsShort)
    {
        " · guardrule remedy"
    } else {
        ""
    };
    let read = format!(
        "{DEFERRAL} guardrule {}; read from {files}. More: --full (sources) · --explain (sums) · --format \
actions{mend}.",
        basis.tool_version
    );
    lines.spread("  ", "     ", &read);
}
