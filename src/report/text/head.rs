//! The head of the text report: what was measured, by which rules, how decided.

use std::collections::BTreeSet;

use crate::judge::Authority;
use crate::report::ReportBasis;
use crate::report::one_line;
use crate::report::palette;
use crate::report::standing;
use crate::report::words;
use crate::report::wrap::hanging;
use crate::rules::Asked;
use crate::rules::Ruleset;

const UNKNOWN: &str = "not written down";

/// The head without the line in short, line by line; of other editions only
/// those by which some guard was judged.
pub(super) fn head(basis: &ReportBasis<'_>, editions: &BTreeSet<String>) -> Vec<String> {
    let facts = basis.survey;
    let mut lines = Vec::new();
    let property = facts.property.as_deref().unwrap_or(UNKNOWN);
    lines.push(hanging("Property       ", &one_line(property)));
    let measured = list(&facts.dates);
    lines.push(hanging("Date measured  ", &measured));
    lines.push(hanging("Measured by    ", &list(&facts.by)));
    lines.push(hanging("Tape           ", &tape(&facts.tapes)));
    let files: Vec<String> = facts.files.iter().map(|name| name.to_string()).collect();
    lines.push(hanging("Read from      ", &list(&files)));
    lines.push(String::new());
    lines.push(palette::heading("Judged by"));
    let used =
        |ruleset: &&Ruleset| ruleset.asked == Asked::Chosen || editions.contains(&ruleset.id);
    for ruleset in basis.rulesets.iter().filter(used) {
        ruleset_lines(&mut lines, ruleset, basis);
    }
    if Authority::of(basis.rulesets) == Authority::Guidance {
        let law = "Guidance only; no law was checked. To check the rules that hold where you are: \
guardrule rules find flat in Florida (say where you are) names them, and --rules ID chooses one.";
        lines.push(hanging("  ", law));
    }
    let decision = words::decision(basis.options.decision);
    lines.push(hanging("  Near a limit: ", decision));
    lines
}

fn list(several: &[String]) -> String {
    if several.is_empty() {
        return UNKNOWN.to_owned();
    }
    let each: Vec<_> = several.iter().map(|text| one_line(text)).collect();
    words::shortened(&each.join("; "))
}

fn tape(tapes: &[String]) -> String {
    if tapes.is_empty() {
        format!("{UNKNOWN}; taken as an ordinary one, as said at each guard")
    } else {
        list(tapes)
    }
}

fn ruleset_lines(lines: &mut Vec<String>, ruleset: &Ruleset, basis: &ReportBasis<'_>) {
    let label = format!("  {:<8}  ", standing(ruleset));
    let title = format!(
        "{}: {} (edition read: {})",
        one_line(&ruleset.id),
        one_line(&ruleset.title),
        one_line(&ruleset.edition)
    );
    lines.push(hanging(&label, &title));
    let indent = "            ";
    if !ruleset.rules.is_empty() {
        lines.push(hanging(indent, &words::counts(ruleset, basis.options)));
    }
    for unread in &ruleset.unread {
        let says = format!("{}: by this ruleset no guard meets.", unread.says());
        lines.push(hanging("            NOT READ: ", &one_line(&says)));
    }
    if let Some(years) = ruleset.in_force {
        let until = years
            .until
            .map_or_else(String::new, |year| format!(" until {year}"));
        let says = format!(
            "Current from {}{until}; where you are it may have been taken up later, or changed.",
            years.from
        );
        lines.push(hanging(indent, &says));
    }
    for amendment in &ruleset.amendments {
        let what = if amendment.removed {
            "taken out"
        } else {
            "set"
        };
        let says = format!("{} is {what} by {}.", amendment.rule, amendment.file);
        lines.push(hanging(indent, &one_line(&says)));
    }
}
