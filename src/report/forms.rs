//! The forms of a report.

use std::io;
use std::io::Write;

use crate::report::Csv;
use crate::report::HtmlReport;
use crate::report::Json;
use crate::report::Report;
use crate::report::ReportBasis;
use crate::report::ReportForm;
use crate::report::SummaryForm;
use crate::report::TextReport;
use crate::report::actions::Actions;
use crate::report::actions::ActionsForm;

/// A report of this form, with its head written where it has one.
///
/// # Errors
/// Those of the writer.
pub fn report<'a>(
    form: ReportForm,
    basis: ReportBasis<'a>,
    out: impl Write + 'a,
) -> io::Result<Box<dyn Report + 'a>> {
    Ok(match form {
        ReportForm::Actions => Box::new(Actions::new(out, basis, ActionsForm::Csv)),
        ReportForm::ActionsTable => Box::new(Actions::new(out, basis, ActionsForm::Table)),
        ReportForm::Csv => Box::new(Csv::new(out, basis)?),
        ReportForm::Html { guards, page_for } => {
            Box::new(HtmlReport::new(out, basis, guards, page_for))
        }
        ReportForm::Json => Box::new(Json::new(out, basis)?),
        ReportForm::Summary => Box::new(SummaryForm::new(out)),
        ReportForm::Text => Box::new(TextReport::new(out, basis)),
    })
}
