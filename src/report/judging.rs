//! A survey read, judged and written, guard after guard: whoever asks for a report
//! gets it from here, so that every surface gives the same.

use std::io;
use std::ops::ControlFlow;

use crate::input::Diagnostics;
use crate::judge::judge;
use crate::report::JudgedGuard;
use crate::report::Report;
use crate::report::ReportBasis;
use crate::survey::FileError;
use crate::survey::Guard;
use crate::survey::Survey;

/// What came of reading a survey a second time, guard after guard.
#[derive(Debug)]
pub struct GuardsWritten {
    /// How many guards were written.
    pub guards: usize,
    /// What is wrong with the rows; an error where a file was gone meanwhile.
    pub read: Result<Diagnostics, FileError>,
}

/// Judges every guard that is wanted, in the order of first appearance, and hands it to
/// the report. Its end ([`Report::finish`]) is the caller's, who may have more to say.
///
/// # Errors
/// Those of the report's writer.
pub fn write_guards(
    survey: &Survey<'_>,
    basis: &ReportBasis<'_>,
    is_wanted: &dyn Fn(&Guard) -> bool,
    report: &mut dyn Report,
) -> io::Result<GuardsWritten> {
    each_guard(survey, is_wanted, &mut |guard| {
        let judged = judge(&guard, basis.survey, basis.rulesets, basis.options);
        report.guard(&JudgedGuard { guard, judged })
    })
}

/// Hands over every guard that is wanted, in the order of first appearance, until one of
/// them cannot be written.
///
/// # Errors
/// Those of `write`.
pub fn each_guard(
    survey: &Survey<'_>,
    is_wanted: &dyn Fn(&Guard) -> bool,
    write: &mut dyn FnMut(Guard) -> io::Result<()>,
) -> io::Result<GuardsWritten> {
    let mut failed = Ok(());
    let mut guards = 0;
    let read = survey.guards(&mut |guard| {
        if !is_wanted(&guard) {
            return ControlFlow::Continue(());
        }
        guards += 1;
        match write(guard) {
            Ok(()) => ControlFlow::Continue(()),
            Err(error) => {
                failed = Err(error);
                ControlFlow::Break(())
            }
        }
    });
    failed.map(|()| GuardsWritten { guards, read })
}
