//! What is said once for all: by what it was judged, what was taken as given, the
//! cautions with the guards they hold for, the deferral, the next command.

use crate::judge::Decision;
use crate::report::Detail;
use crate::report::ReportBasis;
use crate::report::one_line;
use crate::report::palette;
use crate::report::reader;
use crate::report::text::told::GuardTold;
use crate::report::text::written::SaidOfItem;
use crate::report::words;
use crate::report::wrap::Lines;
use crate::rules::Asked;
use crate::rules::Ruleset;

/// What holds for every railing. (common practice, no source)
const GENERAL: &str = "Nothing here is called safe: a railing can meet every rule and still give way, and a \
child who can climb gets over. Stay near; move away what can be climbed. Drilling and screwing make holes: \
where the place is rented or shared, ask the owner first.";

/// Who decides, in the words of the text report.
pub(super) const DEFERRAL: &str = "The local authority and licensed professionals decide what is asked here \
and whether a railing is fit; this only compares readings with rules as we read them.";

/// More guards than these are counted and not named beside a caution.
const NAMED: usize = 3;

/// A text and the guards for which it holds, in the order of the report.
pub(super) struct ForGuards<'t> {
    pub(super) says: &'t str,
    pub(super) guards: Vec<usize>,
}

/// The end of the report.
pub(super) fn end(
    lines: &mut Lines,
    basis: &ReportBasis<'_>,
    told: &[GuardTold],
    for_all: &[SaidOfItem],
    cautions: &[ForGuards<'_>],
    left_out: &[ForGuards<'_>],
    editions: &std::collections::BTreeSet<String>,
) {
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
    let used =
        |ruleset: &&Ruleset| ruleset.asked == Asked::Chosen || editions.contains(&ruleset.id);
    for ruleset in basis.rulesets.iter().filter(used) {
        judged_by(lines, ruleset, basis);
    }
    let mut taken: Vec<&str> = Vec::new();
    for says in told.iter().flat_map(|guard| &guard.taken) {
        if !taken.contains(&says.as_str()) {
            taken.push(says);
        }
    }
    taken.push(match (basis.detail, basis.options.decision) {
        (Detail::Full, decision) => words::decision(decision).trim_end_matches('.'),
        (Detail::Short, Decision::Guarded) => {
            "near a limit a reading counts only beyond twice the tape's doubt"
        }
        (Detail::Short, Decision::Simple) => {
            "the reading alone counts, and how sure the tape is does not"
        }
    });
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
        &format!("Taken as given: {}.", taken.join("; ")),
    );
    let mut together: Vec<(&[usize], Vec<&str>)> = Vec::new();
    for caution in cautions {
        let known = together
            .iter_mut()
            .find(|(guards, _)| *guards == caution.guards.as_slice());
        match known {
            Some((_, says)) => says.push(caution.says),
            None => together.push((&caution.guards, vec![caution.says])),
        }
    }
    for (guards, says) in together {
        let whose = whose(guards, told);
        lines.spread("  ", "     ", &format!("{whose}{}", says.join(" ")));
    }
    if !left_out.is_empty() {
        let parts: Vec<&str> = left_out.iter().map(|part| part.says).collect();
        let parts: Vec<&str> = parts
            .iter()
            .map(|part| part.trim_end_matches('.'))
            .collect();
        let text = format!("Not asked by these rules: {}.", parts.join("; "));
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
--full (every rule and source) · --explain (the sums) · --format actions (a list of work).",
        basis.tool_version
    );
    lines.spread("  ", "     ", &read);
}

/// `Building rules: US dwellings, model code 2018 (us-dwelling-2018), edition read: 2018`
fn judged_by(lines: &mut Lines, ruleset: &Ruleset, basis: &ReportBasis<'_>) {
    let what = match (ruleset.advisory, ruleset.asked) {
        (true, _) => "Advice, no law",
        (false, Asked::Chosen) => "Building rules",
        (false, Asked::OfItsTime) => "Building rules of its time",
    };
    let counts = words::counts(ruleset, basis.options);
    let mut text = if ruleset.advisory && basis.detail == Detail::Short {
        format!("{what}: {}; {counts}", one_line(&ruleset.id))
    } else {
        format!(
            "{what}: {} ({}), edition read: {}; {counts}",
            one_line(&ruleset.title),
            one_line(&ruleset.id),
            one_line(&ruleset.edition),
        )
    };
    if let Some(years) = ruleset.in_force {
        let until = years
            .until
            .map_or_else(String::new, |year| format!(" until {year}"));
        text.push_str(&format!(
            " Current from {}{until}; your town may use another, or have changed it.",
            years.from
        ));
    }
    for amendment in &ruleset.amendments {
        let what = if amendment.removed {
            "taken out"
        } else {
            "set"
        };
        let says = format!(" {} is {what} by {}.", amendment.rule, amendment.file);
        text.push_str(&one_line(&says));
    }
    lines.spread("  ", "     ", &text);
}

/// For which guards a caution holds; nothing where for all.
fn whose(guards: &[usize], told: &[GuardTold]) -> String {
    if guards.len() == told.len() {
        return String::new();
    }
    let names: Vec<String> = guards
        .iter()
        .filter_map(|index| told.get(*index))
        .map(|guard| guard.name.clone())
        .collect();
    if names.len() > NAMED {
        return format!("For {} of the railings: ", names.len());
    }
    format!("{}: ", reader::listed(&names))
}
