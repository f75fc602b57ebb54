//! The forms of a report.

use std::io;
use std::io::Write;

use crate::report::Basis;
use crate::report::Csv;
use crate::report::Form;
use crate::report::Json;
use crate::report::Report;
use crate::report::SummaryForm;
use crate::report::Text;

/// A report of this form, with its head written where it has one.
///
/// # Errors
/// Those of the writer.
pub fn report<'a>(
    form: Form,
    basis: Basis<'a>,
    out: impl Write + 'a,
) -> io::Result<Box<dyn Report + 'a>> {
    Ok(match form {
        Form::Csv => Box::new(Csv::new(out, basis)?),
        Form::Json => Box::new(Json::new(out, basis)?),
        Form::Summary => Box::new(SummaryForm::new(out)),
        Form::Text => Box::new(Text::new(out, basis)),
    })
}
