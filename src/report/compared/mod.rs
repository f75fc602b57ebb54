//! Two rounds beside each other, as text, JSON, CSV and a page.

mod csv;
mod filled;
mod json;
mod page;
mod text;
mod told;

use std::io;
use std::io::Write;

use crate::compare::Compared;
use crate::input::Code;
use crate::report::ReportBasis;
use crate::survey::SurveyFacts;

pub use filled::{FilledList, is_an_action_list};

/// What can be wrong with a filled-in list of work.
#[must_use]
pub fn codes() -> &'static [Code] {
    &[filled::NOT_IN_THE_LIST, filled::NOT_A_READING]
}

/// How a comparison is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ComparisonForm {
    /// One change a row, for a spreadsheet.
    Csv,
    /// A page to hand over.
    Html,
    /// Everything, for programs.
    Json,
    /// For reading.
    Text,
}

/// Writes what became of each guard. `basis` is that of the second round, `before` are
/// the facts of the first.
///
/// # Errors
/// Those of `out`.
pub fn comparison(
    form: ComparisonForm,
    basis: &ReportBasis<'_>,
    before: &SurveyFacts,
    compared: &Compared<'_, '_>,
    out: &mut dyn Write,
) -> io::Result<()> {
    let told = told::ComparisonTold::new(basis, before, compared);
    match form {
        ComparisonForm::Csv => csv::write(out, &told),
        ComparisonForm::Html => page::write(out, basis, &told),
        ComparisonForm::Json => json::write(out, basis, &told),
        ComparisonForm::Text => text::write(out, basis, &told),
    }
}
