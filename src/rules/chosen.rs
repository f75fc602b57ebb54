//! Which rulesets a survey is judged by: those that were asked for, each once, and
//! the child guidance beside them.

use crate::input::Diagnostics;
use crate::input::Excerpt;
use crate::input::SourceFile;
use crate::rules::load::load_to_judge;
use crate::rules::model::Ruleset;

/// What is judged beside any law, and alone where nobody chose.
pub const GUIDANCE: &str = "small-child-advice";

/// Whether the child guidance is judged where nobody asked for it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Guidance {
    /// It stands beside whatever was asked for.
    Beside,
    /// Only where it was asked for.
    WhereAsked,
}

/// The rulesets of these names, each once, and the child guidance beside them; what is
/// wrong with them goes to `diagnostics`.
///
/// A name may come with where a survey says it: a ruleset that is nowhere is then
/// complained of there. `lookup` finds what is none of the program's own.
pub fn chosen<'a>(
    names: impl IntoIterator<Item = (&'a str, Option<&'a Excerpt>)>,
    guidance: Guidance,
    lookup: &dyn Fn(&str) -> Option<SourceFile>,
    diagnostics: &mut Diagnostics,
) -> Vec<Ruleset> {
    let guidance = (guidance == Guidance::Beside).then_some((GUIDANCE, None));
    let mut known: Vec<&str> = Vec::new();
    let mut loaded = Vec::new();
    for (name, row) in names.into_iter().chain(guidance) {
        if known.contains(&name) {
            continue;
        }
        known.push(name);
        let mut one = load_to_judge(name, lookup);
        if let (None, Some(row)) = (&one.ruleset, row) {
            // there is no such file: said where the survey names it
            let nowhere = one.diagnostics.iter_mut().filter(|d| d.at.at.line() == 0);
            nowhere.for_each(|fault| fault.at.at = row.clone());
        }
        diagnostics.extend(one.diagnostics);
        // it stays among the chosen, so that no guard meets what nobody could read
        loaded.push(one.ruleset.unwrap_or_else(|| Ruleset::unreadable(name)));
    }
    loaded
}
