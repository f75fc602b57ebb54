//! What is said once for all: by what it was judged, what was taken as given, for
//! whom a caution holds, who decides.

use crate::judge::Decision;
use crate::report::Detail;
use crate::report::ReportBasis;
use crate::report::one_line;
use crate::report::told::GuardTold;
use crate::report::told::survey::SurveyTold;
use crate::report::words;
use crate::rules::Asked;
use crate::rules::Ruleset;

/// What holds for every railing. (common practice, no source)
pub(in crate::report) const GENERAL: &str = "Nothing here is called safe: a railing can meet every rule and \
still give way, and a child who can climb gets over. Stay near; move away what can be climbed. Where you rent or \
share the place, holes need the owner's leave.";

/// Who decides, in the words of the text report.
pub(in crate::report) const DEFERRAL: &str = "The local authority and licensed professionals decide; this only \
compares readings with rules as we read them.";

/// The rulesets that judged some guard.
pub(in crate::report) fn judging<'r>(
    basis: &ReportBasis<'r>,
    survey: &SurveyTold,
) -> Vec<&'r Ruleset> {
    let used = |ruleset: &&Ruleset| {
        ruleset.asked == Asked::Chosen || survey.editions.contains(&ruleset.id)
    };
    basis.rulesets.iter().filter(used).collect()
}

/// `Building rules: US dwellings, model code 2018 (us-dwelling-2018), edition read: 2018`
pub(in crate::report) fn judged_by(ruleset: &Ruleset, basis: &ReportBasis<'_>) -> String {
    let what = match (ruleset.advisory, ruleset.asked) {
        (true, _) => "Advice, no law",
        (false, Asked::Chosen) => "Building rules",
        (false, Asked::OfItsTime) => "Building rules of its time",
    };
    let counts = words::counts(ruleset, basis.options);
    let title = one_line(&ruleset.title);
    // most titles name their edition
    let named = title.contains(&*ruleset.edition);
    let mut text = if ruleset.advisory && basis.detail == Detail::Short {
        format!("{what}: {}; {counts}", one_line(&ruleset.id))
    } else if named && basis.detail == Detail::Short {
        format!("{what}: {title} ({}); {counts}", one_line(&ruleset.id))
    } else {
        format!(
            "{what}: {title} ({}), edition read: {}; {counts}",
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
        let less = amendment.says_less();
        let less = less.map_or_else(String::new, |less| format!(": {less}"));
        let says = format!(" {} is {what} by {}{less}.", amendment.rule, amendment.file);
        text.push_str(&one_line(&says));
    }
    text
}

/// What was taken as given of any guard, and how a reading near a limit was decided.
pub(in crate::report) fn taken<'t>(basis: &ReportBasis<'_>, told: &'t [GuardTold]) -> Vec<&'t str> {
    let mut taken: Vec<&str> = Vec::new();
    for says in told.iter().flat_map(|guard| &guard.taken) {
        if !taken.contains(&says.as_str()) {
            taken.push(says);
        }
    }
    taken.push(match (basis.detail, basis.options.decision) {
        (Detail::Full, decision) => words::decision(decision).trim_end_matches('.'),
        (Detail::Short, Decision::Guarded) => "near a limit twice the tape's doubt decides",
        (Detail::Short, Decision::Simple) => "the reading alone decides, however sure the tape is",
    });
    taken
}
