//! What a text says: its guards, its facts, and what is wrong with it.

use crate::input::Code;
use crate::survey::codes;
use std::ops::ControlFlow;
use std::sync::Arc;

use crate::input::Diagnostic;
use crate::input::Diagnostics;
use crate::input::Severity;
use crate::items::Item;
use crate::judge::Judged;
use crate::judge::Options;
use crate::judge::judge;
use crate::rules::Ruleset;
use crate::survey::Guard;
use crate::survey::NamedRules;
use crate::survey::Survey;
use crate::survey::SurveyFacts;
use crate::survey::SurveyFile;
use crate::walk::GuardName;
use crate::walk::page::Page;
use crate::walk::page::PageEntry;

/// A survey as it is understood.
#[derive(Clone, Debug, Default)]
pub(super) struct View {
    pub(super) guards: Vec<Guard>,
    pub(super) facts: SurveyFacts,
    pub(super) diagnostics: Diagnostics,
}

/// Codes of a survey that has only just begun: empty, a header, facts alone.
const NOTHING_YET: [Code; 3] = [codes::EMPTY_FILE, codes::HEADER_ONLY, codes::NO_GUARDS];

/// The rulesets that a survey's text asks for.
#[must_use]
pub fn rules_of(name: &str, text: &str) -> Vec<NamedRules> {
    let page = Page::new(name, text);
    page.map(|page| View::of(&page).facts.rules)
        .unwrap_or_default()
}

impl View {
    /// Reads a text as `check` would.
    pub(super) fn of(page: &Page) -> View {
        let files: Vec<Box<dyn SurveyFile>> = vec![Box::new(page.file())];
        let mut view = View::default();
        // a text in memory is never gone, so that there is always something to show
        if let Ok(survey) = Survey::scan(&files) {
            view.facts = survey.facts().clone();
            let read = survey.guards(&mut |guard| {
                view.guards.push(guard);
                ControlFlow::Continue(())
            });
            view.diagnostics = read.unwrap_or_default();
        }
        view
    }

    /// The guard of this place.
    pub(super) fn guard(&self, place: &GuardName) -> Option<&Guard> {
        let wanted = place.compared();
        let mut guards = self.guards.iter();
        guards.find(|guard| GuardName::of(guard).compared() == wanted)
    }

    /// Faults that this text has and the one before had not.
    pub(super) fn new_faults(&self, before: &View, severity: Severity) -> Vec<Diagnostic> {
        let known = before.diagnostics.sorted();
        let same = |one: &Diagnostic, other: &Diagnostic| {
            one.code == other.code && one.message == other.message
        };
        let count = |all: &[&Diagnostic], one: &Diagnostic| {
            all.iter().filter(|other| same(one, other)).count()
        };
        let now = self.diagnostics.sorted();
        now.iter()
            .filter(|fault| fault.severity == severity)
            .filter(|fault| !NOTHING_YET.contains(&fault.code))
            .filter(|fault| count(&now, fault) > count(&known, fault))
            .map(|fault| (*fault).clone())
            .collect()
    }

    /// How many errors the text has, those of a survey that has only just begun left out.
    pub(super) fn errors(&self) -> usize {
        let all = self.diagnostics.sorted();
        all.iter()
            .filter(|fault| fault.severity == Severity::Error)
            .filter(|fault| !NOTHING_YET.contains(&fault.code))
            .count()
    }

    /// The guard of a place, as it would stand there with nothing written of it yet.
    pub(super) fn guard_or_blank(&self, page: &Page, place: &GuardName) -> Guard {
        if let Some(guard) = self.guard(place) {
            return guard.clone();
        }
        // a circumstance that changes nothing brings what the guard inherits
        let probe = PageEntry {
            place: place.clone(),
            item: Item::State,
            reading: "existing".to_owned(),
            note: String::new(),
        };
        let probed = page.with(&probe, None).map(|page| View::of(&page));
        let found = probed.ok().and_then(|view| view.guard(place).cloned());
        let mut guard = found.unwrap_or_else(|| Guard {
            building: place.building.as_str().into(),
            unit: place.unit.as_str().into(),
            name: place.guard.as_str().into(),
            observations: Vec::new(),
            own: Vec::new(),
            inherited: Arc::default(),
            rows_in_error: 0,
            rows: 0,
        });
        guard.observations.clear();
        guard.rows = 0;
        guard
    }

    /// A guard judged as `check` would.
    pub(super) fn judge<'r>(
        &self,
        guard: &Guard,
        rulesets: &'r [Ruleset],
        options: Options,
    ) -> Judged<'r> {
        judge(guard, &self.facts, rulesets, options)
    }
}
