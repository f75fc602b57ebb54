//! What a page shows of a guard beyond what a text says of it.

use crate::items::Item;
use crate::items::Verdict;
use crate::report::JudgedGuard;
use crate::report::PhotoShown;
use crate::report::ReportBasis;
use crate::report::guard_drawing::GuardDrawn;
use crate::report::matters::AskedBy;
use crate::report::one_line;
use crate::report::reader;
use crate::report::told::paragraph::Paragraph;
use crate::report::told::paragraph::source;
use crate::report::words;

/// How much is kept of each guard: of thousands only what stands in the lists.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in crate::report) enum PageKeeps {
    /// The drawing, and the rules one by one.
    Everything,
    /// The drawing.
    Drawings,
    /// The lists alone.
    Lists,
}

/// What a page shows of a guard beyond what a text says of it.
#[derive(Clone, Debug)]
pub(in crate::report) struct PageTold {
    /// Its drawing; `None` where there is nothing to draw, or too many guards.
    pub(in crate::report) drawn: Option<GuardDrawn>,
    /// How every rule came out.
    pub(in crate::report) rules: Vec<RuleTold>,
    /// Its photographs.
    pub(in crate::report) photos: Vec<PhotoTold>,
    /// Everything that was written of it, for how it is measured.
    pub(in crate::report) items: Vec<Item>,
}

/// One photograph that the survey names.
#[derive(Clone, Debug)]
pub(in crate::report) struct PhotoTold {
    pub(in crate::report) name: String,
    pub(in crate::report) note: String,
    /// The picture, or why there is none.
    pub(in crate::report) shown: Result<PhotoShown, String>,
}

/// How one rule came out.
#[derive(Clone, Debug)]
pub(in crate::report) struct RuleTold {
    pub(in crate::report) verdict: Verdict,
    pub(in crate::report) by: &'static str,
    /// `height: 35 1/2 in; asked: 36 in or more; 1/2 in too low`
    pub(in crate::report) compared: String,
    /// The rule in a sentence.
    pub(in crate::report) says: String,
    pub(in crate::report) source: String,
    /// Why it came out so.
    pub(in crate::report) why: Vec<String>,
}

impl PageTold {
    pub(in crate::report) fn new(
        entry: &JudgedGuard<'_>,
        basis: &ReportBasis<'_>,
        keeps: PageKeeps,
        paragraphs: &[Paragraph],
    ) -> PageTold {
        let mut items: Vec<Item> = Vec::new();
        let inherited = &entry.guard.inherited.observations;
        for observation in entry.guard.observations.iter().chain(inherited) {
            if !items.contains(&observation.item) {
                items.push(observation.item);
            }
        }
        let (rules, drawn) = match keeps {
            PageKeeps::Everything => {
                let cards: Vec<Item> = paragraphs.iter().map(|card| card.topic).collect();
                (rules(entry, basis), GuardDrawn::of(entry, basis, &cards))
            }
            PageKeeps::Drawings => {
                let cards: Vec<Item> = paragraphs.iter().map(|card| card.topic).collect();
                (Vec::new(), GuardDrawn::of(entry, basis, &cards))
            }
            PageKeeps::Lists => (Vec::new(), None),
        };
        PageTold {
            drawn,
            rules,
            photos: Vec::new(),
            items,
        }
    }
}

/// Worst first; rules that do not apply say so too.
fn rules(entry: &JudgedGuard<'_>, basis: &ReportBasis<'_>) -> Vec<RuleTold> {
    let findings = entry.judged.findings.iter();
    let mut rules: Vec<RuleTold> = findings
        .map(|finding| RuleTold {
            verdict: finding.counts_as(),
            by: AskedBy::of(finding, basis).name(),
            compared: reader::compared(finding),
            says: one_line(&finding.rule.says).into_owned(),
            source: source(finding),
            why: finding
                .reasons
                .iter()
                .map(|reason| {
                    let text = reader::capital(&words::reason(reason, &entry.guard));
                    format!("{}.", text.trim_end_matches('.'))
                })
                .collect(),
        })
        .collect();
    rules.sort_by_key(|rule| rule.verdict);
    rules
}
