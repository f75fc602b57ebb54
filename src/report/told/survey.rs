//! All guards of a survey as they will be told, and what is said once for several.

use std::collections::BTreeMap;
use std::collections::BTreeSet;

use crate::judge::Assumption;
use crate::judge::CautionSaid;
use crate::judge::guard_cautions;
use crate::judge::leave_outs;
use crate::report::Detail;
use crate::report::JudgedGuard;
use crate::report::ReportBasis;
use crate::report::Summary;
use crate::report::acts;
use crate::report::cautions::shared;
use crate::report::one_line;
use crate::report::reader;
use crate::report::told::GuardTold;
use crate::report::told::guard::ReportPart;
use crate::report::told::totals::Totals;
use crate::report::told::whose::whose;
use crate::report::told::written::SaidOfItem;

/// Of rules that were not in force when a guard was built.
const OF_ANOTHER_TIME: &str = "Judged by today's rules for new work; the rules of its time may have asked \
less, which says nothing about danger.";

/// What a report keeps until all guards are known.
#[derive(Default)]
pub(in crate::report) struct SurveyTold {
    /// In the order of the survey until they are sorted.
    pub(in crate::report) guards: Vec<GuardTold>,
    cautions: Numbered,
    /// What rules leave out, each once.
    left_out: Numbered,
    /// The editions by which some guard was judged since it was built in their time.
    pub(in crate::report) editions: BTreeSet<String>,
    pub(in crate::report) summary: Summary,
    pub(in crate::report) totals: Totals,
}

/// A text and the guards for which it holds, in the order of the report.
pub(in crate::report) struct ForGuards<'t> {
    /// Among the texts of its kind.
    number: usize,
    pub(in crate::report) says: &'t str,
    pub(in crate::report) guards: Vec<usize>,
}

/// Texts, each once, in the order of their first guard.
#[derive(Clone, Default)]
struct Numbered {
    index: BTreeMap<String, usize>,
    texts: Vec<String>,
}

impl Numbered {
    fn number(&mut self, text: &str) -> usize {
        let text = reader::plain(&one_line(text));
        if let Some(index) = self.index.get(&text) {
            return *index;
        }
        let next = self.texts.len();
        self.index.insert(text.clone(), next);
        self.texts.push(text);
        next
    }

    /// Each text with the guards for which it holds.
    fn with_guards<'t>(
        &'t self,
        guards: &[GuardTold],
        of: fn(&GuardTold) -> &[usize],
    ) -> Vec<ForGuards<'t>> {
        let texts = self.texts.iter();
        let mut all: Vec<ForGuards<'t>> = texts
            .enumerate()
            .map(|(number, says)| ForGuards {
                number,
                says,
                guards: Vec::new(),
            })
            .collect();
        for (index, guard) in guards.iter().enumerate() {
            for text in of(guard) {
                all[*text].guards.push(index);
            }
        }
        all.retain(|text| !text.guards.is_empty());
        all
    }
}

impl SurveyTold {
    /// Takes the next guard; `full` is everything of it, where a text report asks for that.
    pub(in crate::report) fn add(
        &mut self,
        entry: &JudgedGuard<'_>,
        basis: &ReportBasis<'_>,
        full: String,
    ) {
        let said = guard_cautions(
            &entry.guard,
            &entry.judged,
            basis.survey,
            basis.rulesets,
            basis.options,
        );
        let left_out = leave_outs(&entry.guard, basis.survey, basis.rulesets, basis.options);
        let mut told = GuardTold::new(entry, basis, self.guards.len());
        told.full = full;
        // what to do tonight stands at the top already
        // what strength rests on is said in one sentence where it is worked out
        let of_strength = basis.detail == Detail::Full;
        let kept_off = acts::waits_for_the_posts(entry);
        let said = said.iter().filter(|said| match said {
            CautionSaid::Tonight => false,
            CautionSaid::KeepOffUntilLookedAt => of_strength || !kept_off,
            CautionSaid::Strength(_) => of_strength,
            CautionSaid::Deferral
            | CautionSaid::DoNotLean
            | CautionSaid::General(_)
            | CautionSaid::LeadPaint(_)
            | CautionSaid::LegalWhenBuilt
            | CautionSaid::OfRuleset { .. }
            | CautionSaid::OnlyTheRailing
            | CautionSaid::Pulled(_)
            | CautionSaid::SmallBody(_) => true,
        });
        for said in said.flat_map(|said| shared(said)) {
            let text = self.cautions.number(&said.says);
            told.cautions.push(text);
            if let Some(condition) = said.only_if {
                told.only_if.push((text, one_line(&condition).into_owned()));
            }
        }
        let covered = basis.taken(entry);
        let mut covered = covered.iter();
        let said = covered.any(|taken| matches!(taken, Assumption::NoRulesetCovers(_)));
        if told.of_another_time && !said {
            told.cautions.push(self.cautions.number(OF_ANOTHER_TIME));
        }
        if told.part == ReportPart::Good || !told.open_subjects.is_empty() {
            let parts = left_out.iter();
            told.leaves_out = parts.map(|part| self.left_out.number(part)).collect();
        }
        self.totals.count(entry, &told, basis);
        self.guards.push(told);
        if let Some(when) = &entry.judged.when_built {
            let ids = when.rulesets.iter().map(|id| (*id).to_owned());
            self.editions.extend(ids);
        }
        self.summary.count(&entry.judged);
    }

    /// The same of these guards alone, by their places; counts stay those of all.
    pub(in crate::report) fn only(&self, guards: &[usize]) -> SurveyTold {
        SurveyTold {
            guards: guards
                .iter()
                .map(|index| self.guards[*index].clone())
                .collect(),
            cautions: self.cautions.clone(),
            left_out: self.left_out.clone(),
            editions: self.editions.clone(),
            summary: self.summary,
            totals: Totals::default(),
        }
    }

    /// Puts the worst first.
    pub(in crate::report) fn sort(&mut self) {
        self.guards.sort_by_key(|told| told.rank);
    }

    /// The cautions with the guards they hold for, those of the same guards together.
    /// Where it was not written down whether one holds, it says on what that rests.
    pub(in crate::report) fn cautions(&self) -> Vec<(Vec<usize>, Vec<String>)> {
        let mut together: Vec<(Vec<usize>, Vec<String>)> = Vec::new();
        let texts = self
            .cautions
            .with_guards(&self.guards, |told| &told.cautions);
        for caution in texts {
            let says = self.with_conditions(&caution);
            let known = together
                .iter_mut()
                .find(|(guards, _)| *guards == caution.guards);
            match known {
                Some((_, all)) => all.push(says),
                None => together.push((caution.guards, vec![says])),
            }
        }
        together
    }

    /// `If fastened to is rim board: …` where nobody wrote it of any guard; else for
    /// which of them that is so.
    fn with_conditions(&self, caution: &ForGuards<'_>) -> String {
        let unknown = |index: &usize| {
            let guard = self.guards.get(*index)?;
            let known = guard.only_if.iter();
            let mut of_text = known.filter(|(text, _)| *text == caution.number);
            of_text.next().map(|(_, condition)| condition.as_str())
        };
        let open: Vec<usize> = caution
            .guards
            .iter()
            .copied()
            .filter(|g| unknown(g).is_some())
            .collect();
        let Some(condition) = open.first().and_then(unknown) else {
            return caution.says.to_owned();
        };
        if open.len() == caution.guards.len() {
            return format!("If {condition}: {}", caution.says);
        }
        let whose = whose(&open, &self.guards);
        format!("{} ({whose}if {condition})", caution.says)
    }

    /// What the rules leave out at guards that meet.
    pub(in crate::report) fn left_out(&self) -> Vec<&str> {
        let parts = self
            .left_out
            .with_guards(&self.guards, |told| &told.leaves_out);
        let parts = parts.iter();
        parts.map(|part| part.says.trim_end_matches('.')).collect()
    }
}

/// What most guards inherit alike is said once; a guard for which something else
/// holds says so.
pub(in crate::report) fn for_all(told: &[GuardTold]) -> Vec<SaidOfItem> {
    let mut count: BTreeMap<(&str, &str), usize> = BTreeMap::new();
    let mut guards_with: BTreeMap<&str, usize> = BTreeMap::new();
    let mut order: Vec<&SaidOfItem> = Vec::new();
    for guard in told {
        let mut items = BTreeSet::new();
        for part in &guard.inherited {
            let same = count.entry((&part.item, &part.says)).or_default();
            *same += 1;
            if *same == 1 {
                order.push(part);
            }
            if items.insert(part.item.as_str()) {
                *guards_with.entry(&part.item).or_default() += 1;
            }
        }
    }
    let mut parts: Vec<SaidOfItem> = Vec::new();
    for part in order {
        let same = count.get(&(part.item.as_str(), part.says.as_str()));
        let most = same.is_some_and(|same| same * 2 > told.len());
        let everywhere = guards_with.get(part.item.as_str()) == Some(&told.len());
        let known = parts.iter().any(|known| known.item == part.item);
        if most && everywhere && !known {
            parts.push(part.clone());
        }
    }
    parts
}
