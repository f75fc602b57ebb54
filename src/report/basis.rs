//! What every form is given, and what every form does.

use std::io;

use crate::input::Diagnostics;
use crate::judge::Assumption;
use crate::judge::CautionSaid;
use crate::judge::Judged;
use crate::judge::Options;
use crate::judge::assumptions;
use crate::judge::cautions;
use crate::report::PageFor;
use crate::report::Summary;
use crate::report::cautions::caution;
use crate::rules::Ruleset;
use crate::survey::Guard;
use crate::survey::SurveyFacts;

/// What a report's head needs.
#[derive(Clone, Debug)]
pub struct ReportBasis<'a> {
    /// The survey's facts.
    pub survey: &'a SurveyFacts,
    /// The rulesets, in the order asked for.
    pub rulesets: &'a [Ruleset],
    /// How it was judged.
    pub options: Options,
    /// The day of the report: `2026-05-04`.
    pub today: String,
    /// The version of the program.
    pub tool_version: &'a str,
    /// Whether the arithmetic is shown.
    pub explain: Explain,
    /// How much is said.
    pub detail: Detail,
    /// How long a line of text may be, in columns.
    pub width: usize,
}

impl<'a> ReportBasis<'a> {
    /// The cautions of one guard, the general ones and the deferral among them.
    pub(super) fn cautions(&self, entry: &JudgedGuard<'_>) -> Vec<String> {
        let said = self.cautions_said(entry);
        said.iter().map(|said| caution(said).into_owned()).collect()
    }

    /// The same, not yet in words.
    pub(super) fn cautions_said(&self, entry: &JudgedGuard<'_>) -> Vec<CautionSaid<'a>> {
        cautions(
            &entry.guard,
            &entry.judged,
            self.survey,
            self.rulesets,
            self.options,
        )
    }

    /// What was taken as given when a guard was judged.
    pub(super) fn taken(&self, entry: &JudgedGuard<'a>) -> Vec<Assumption<'a>> {
        assumptions(
            &entry.guard,
            &entry.judged,
            self.survey,
            self.rulesets,
            self.options,
        )
    }
}

/// Whether a text report shows the arithmetic of each finding.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Explain {
    /// It does not.
    #[default]
    No,
    /// It does.
    Yes,
}

/// How much a report says.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Detail {
    /// What a reader needs first; rules that do not apply are left out.
    #[default]
    Short,
    /// Every finding with its rule, its source and why.
    Full,
}

/// One guard with what was found.
#[derive(Clone, Debug)]
pub struct JudgedGuard<'r> {
    /// The guard.
    pub guard: Guard,
    /// What was found.
    pub judged: Judged<'r>,
}

/// The forms of a report.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ReportForm {
    /// One act a row: a list of work.
    Actions,
    /// The list of work as a table for a terminal.
    ActionsTable,
    /// One finding a row, for a spreadsheet.
    Csv,
    /// A page to hand over.
    Html {
        /// How many guards it will hold.
        guards: usize,
        /// For whom it is.
        page_for: PageFor,
    },
    /// Everything, for programs.
    Json,
    /// The counts alone, as JSON.
    Summary,
    /// For reading.
    Text,
}

/// A report that takes one guard after another. JSON, CSV and the summary are
/// written as the guards come and keep none; text keeps its paragraphs, since
/// the worst guard comes first.
pub trait Report {
    /// Takes the next guard, in the order of first appearance.
    ///
    /// # Errors
    /// Those of the writer.
    fn guard(&mut self, entry: &JudgedGuard<'_>) -> io::Result<()>;

    /// Writes what comes last, and says how the guards came out.
    ///
    /// # Errors
    /// Those of the writer.
    fn finish(self: Box<Self>, diagnostics: &Diagnostics) -> io::Result<Summary>;
}
