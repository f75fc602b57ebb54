//! Writing the JSON report piece by piece.

use std::io;
use std::io::Write;

use serde::Serialize;

use crate::input::Diagnostics;
use crate::judge::Authority;
use crate::report::JudgedGuard;
use crate::report::Report;
use crate::report::ReportBasis;
use crate::report::Summary;
use crate::report::json::diagnostic::diagnostics;
use crate::report::json::escaped;
use crate::report::json::record::GuardRecord;
use crate::report::json::record::RulesetRecord;
use crate::report::json::record::SurveyRecord;
use crate::report::json::record::Tool;
use crate::report::tally::SurveyTally;

/// The number of the schema; raised when a key changes its meaning or goes.
pub const SCHEMA: u32 = 2;

/// The JSON Schema (draft 2020-12) that every JSON report satisfies.
pub const SCHEMA_TEXT: &str = include_str!("../report.schema.json");

/// The JSON report.
pub struct Json<'a, W> {
    out: W,
    basis: ReportBasis<'a>,
    tally: SurveyTally,
}

impl<'a, W: Write> Json<'a, W> {
    /// Writes the head.
    ///
    /// # Errors
    /// Those of `out`.
    pub fn new(out: W, basis: ReportBasis<'a>) -> io::Result<Json<'a, W>> {
        let mut json = Json {
            out,
            basis: basis.clone(),
            tally: SurveyTally::default(),
        };
        let authority = Authority::of(basis.rulesets);
        let rulesets: Vec<RulesetRecord<'_>> =
            basis.rulesets.iter().map(RulesetRecord::of).collect();
        write!(json.out, "{{\"schema\":{SCHEMA}")?;
        json.key("tool", &Tool::of(&basis))?;
        json.key("survey", &SurveyRecord::of(basis.survey))?;
        json.key("basis", authority.name())?;
        json.key("decision", basis.options.decision.name())?;
        json.key("rulesets", &rulesets)?;
        write!(json.out, ",\n\"guards\":[")?;
        Ok(json)
    }

    fn key<T: Serialize + ?Sized>(&mut self, key: &str, value: &T) -> io::Result<()> {
        write!(self.out, ",\n\"{key}\":")?;
        escaped::write(&mut self.out, value)
    }
}

impl<W: Write> Report for Json<'_, W> {
    fn guard(&mut self, entry: &JudgedGuard<'_>) -> io::Result<()> {
        let comma = if self.tally.summary().guards == 0 {
            ""
        } else {
            ","
        };
        let cautions = self.basis.cautions(entry);
        let record = GuardRecord::of(entry, cautions, &self.basis);
        // one write a guard: the writer need not be buffered
        let mut line = format!("{comma}\n").into_bytes();
        escaped::write(&mut line, &record)?;
        self.out.write_all(&line)?;
        self.tally.count(entry);
        Ok(())
    }

    fn finish(mut self: Box<Self>, found: &Diagnostics) -> io::Result<Summary> {
        write!(self.out, "\n]")?;
        self.key("diagnostics", &diagnostics(found))?;
        let record = self.tally.record();
        self.key("summary", &record)?;
        writeln!(self.out, "\n}}")?;
        Ok(self.tally.summary())
    }
}
