//! Why a workbook is not read, and what to do.

use std::sync::Arc;

use crate::cli::codes;
use crate::input::Diagnostic;
use crate::input::Excerpt;

/// Why a workbook cannot be read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in crate::cli) enum Refusal {
    /// Some part of it is not as it should be.
    Damaged,
    /// Apple's own form.
    Numbers,
    /// The form before 2007, or one under a password: both are kept alike.
    Old,
    /// It is under a password.
    Password,
    /// More than a survey can be.
    TooLarge,
    /// An archive of other files.
    Unknown,
    /// The binary form of .xlsx.
    Xlsb,
}

impl Refusal {
    /// What to say of it.
    pub(in crate::cli) fn diagnostic(self, name: &str) -> Diagnostic {
        let (message, help) = match self {
            Refusal::Damaged => (
                "this workbook is damaged: a part of it cannot be read",
                "open it in the spreadsheet program, save it anew and check again",
            ),
            Refusal::Numbers => (
                "this is a workbook in the form .numbers, which is not read here",
                "export it as .xlsx or CSV",
            ),
            Refusal::Old => (
                "this is a file in the form .xls of before 2007, which is not read here",
                "open it in the spreadsheet program and save it as .xlsx, .ods or \"CSV UTF-8\"",
            ),
            Refusal::Password => (
                "this workbook is under a password",
                "save it without one, and check again",
            ),
            Refusal::TooLarge => (
                "this workbook holds more than a survey can: 64 MiB packed, 128 MiB a sheet, 4 million cells",
                "save the sheets with the survey as \"CSV UTF-8\"",
            ),
            Refusal::Unknown => (
                "this is an archive of files, and no workbook",
                "name the survey itself: .csv, .xlsx or .ods",
            ),
            Refusal::Xlsb => (
                "this is a workbook in the binary form .xlsb, which is not read here",
                "save it as .xlsx",
            ),
        };
        let at = Excerpt::whole(Arc::from(name));
        Diagnostic::error(codes::WORKBOOK_REFUSED, message, at).help(help)
    }
}
