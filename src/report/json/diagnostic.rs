//! What is wrong with files, in the JSON report.

use serde::Serialize;

use crate::input::Diagnostic;
use crate::input::Diagnostics;
use crate::input::Label;
use crate::input::Severity;
use crate::report::json::record::filled;

#[derive(Serialize)]
pub(super) struct DiagnosticRecord<'a> {
    code: String,
    severity: Option<&'static str>,
    message: String,
    file: &'a str,
    line: Option<u64>,
    column: Option<u64>,
    cell: Option<&'a str>,
    says: Option<&'a str>,
    help: Option<&'a str>,
    also: Vec<LabelRecord<'a>>,
    count: u64,
}

#[derive(Serialize)]
struct LabelRecord<'a> {
    file: &'a str,
    line: Option<u64>,
    column: Option<u64>,
    cell: Option<&'a str>,
    says: Option<&'a str>,
}

impl<'a> LabelRecord<'a> {
    fn of(label: &'a Label) -> LabelRecord<'a> {
        let at = &label.at;
        let placed = at.first_line() > 0;
        LabelRecord {
            file: at.file(),
            line: placed.then(|| at.line()),
            column: placed.then(|| at.column()),
            cell: filled(at.marked()),
            says: filled(&label.says),
        }
    }
}

/// The diagnostics by file and place; those that were left out come last, as
/// one record for each file and code with their count.
pub(super) fn diagnostics(diagnostics: &Diagnostics) -> Vec<DiagnosticRecord<'_>> {
    let mut records: Vec<DiagnosticRecord<'_>> = diagnostics
        .sorted()
        .into_iter()
        .map(DiagnosticRecord::of)
        .collect();
    for (file, code, count) in diagnostics.left_out() {
        records.push(DiagnosticRecord {
            code: format!("G{code}"),
            severity: None,
            message: format!("and {count} more of these"),
            file,
            line: None,
            column: None,
            cell: None,
            says: None,
            help: None,
            also: Vec::new(),
            count,
        });
    }
    records
}

impl<'a> DiagnosticRecord<'a> {
    fn of(diagnostic: &'a Diagnostic) -> DiagnosticRecord<'a> {
        let at = LabelRecord::of(&diagnostic.at);
        DiagnosticRecord {
            code: format!("G{}", diagnostic.code.number),
            severity: Some(match diagnostic.severity {
                Severity::Error => "error",
                Severity::Warning => "warning",
            }),
            message: diagnostic.message.clone(),
            file: at.file,
            line: at.line,
            column: at.column,
            cell: at.cell,
            says: at.says,
            help: diagnostic.help.as_deref(),
            also: diagnostic.also.iter().map(LabelRecord::of).collect(),
            count: 1,
        }
    }
}
