//! How many guards fall short by which rule, at which hazard, by which kind of fault.

use std::collections::BTreeMap;

use crate::items::Hazard;
use crate::items::Verdict;
use crate::report::JudgedGuard;
use crate::report::ReportBasis;
use crate::report::matters::AskedBy;
use crate::report::reader;
use crate::report::told::guard::GuardTold;
use crate::report::told::paragraph::source;

/// Counts of guards.
#[derive(Clone, Debug, Default)]
pub(in crate::report) struct Totals {
    rules: BTreeMap<String, usize>,
    hazards: BTreeMap<Hazard, usize>,
    faults: BTreeMap<String, usize>,
    work: BTreeMap<&'static str, usize>,
}

impl Totals {
    pub(in crate::report) fn count(
        &mut self,
        entry: &JudgedGuard<'_>,
        told: &GuardTold,
        basis: &ReportBasis<'_>,
    ) {
        let mut rules: Vec<String> = Vec::new();
        for finding in &entry.judged.findings {
            let short = finding.verdict == Verdict::FallsShort && finding.counts();
            let by = AskedBy::of(finding, basis);
            if short && by != AskedBy::Warning {
                let rule = format!("{} ({})", reader::asked(finding), source(finding));
                if !rules.contains(&rule) {
                    rules.push(rule);
                }
            }
        }
        for rule in rules {
            *self.rules.entry(rule).or_default() += 1;
        }
        for of in &told.each_hazard {
            if [of.rules, of.advice].contains(&Some(Verdict::FallsShort)) {
                *self.hazards.entry(of.hazard).or_default() += 1;
            }
        }
        let mut faults: Vec<&String> = told.by_rules.iter().chain(&told.by_advice).collect();
        faults.sort_unstable();
        faults.dedup();
        for fault in faults {
            *self.faults.entry(fault.clone()).or_default() += 1;
        }
        for who in told.paragraphs.iter().filter_map(|paragraph| paragraph.who) {
            *self.work.entry(who).or_default() += 1;
        }
    }

    /// Each list with what it counts, the largest first.
    pub(in crate::report) fn lists(&self) -> Vec<(&'static str, Vec<(String, usize)>)> {
        let hazards = self.hazards.iter();
        let hazards = hazards.map(|(hazard, count)| (reader::hazard(*hazard).to_owned(), *count));
        let work = self
            .work
            .iter()
            .map(|(who, count)| ((*who).to_owned(), *count));
        let owned = |map: &BTreeMap<String, usize>| {
            map.iter()
                .map(|(name, count)| (name.clone(), *count))
                .collect()
        };
        let mut lists: Vec<(&'static str, Vec<(String, usize)>)> = vec![
            ("Railings by hazard", hazards.collect()),
            ("Railings by what is wrong", owned(&self.faults)),
            ("Pieces of work by who does them", work.collect()),
            ("Railings by rule", owned(&self.rules)),
        ];
        for (_, list) in &mut lists {
            list.sort_by_key(|(_, count)| std::cmp::Reverse(*count));
        }
        lists.retain(|(_, list)| !list.is_empty());
        lists
    }
}
