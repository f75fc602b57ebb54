//! The counts alone, as JSON, with the deferral.

use std::io;
use std::io::Write;

use crate::input::Diagnostics;
use crate::report::JudgedGuard;
use crate::report::Report;
use crate::report::Summary;
use crate::report::tally::SurveyTally;

/// The form that writes the summary and nothing else, as one JSON object.
pub struct SummaryForm<W> {
    out: W,
    tally: SurveyTally,
}

impl<W: Write> SummaryForm<W> {
    /// Nothing counted yet.
    pub fn new(out: W) -> SummaryForm<W> {
        SummaryForm {
            out,
            tally: SurveyTally::default(),
        }
    }
}

impl<W: Write> Report for SummaryForm<W> {
    fn guard(&mut self, entry: &JudgedGuard<'_>) -> io::Result<()> {
        self.tally.count(entry);
        Ok(())
    }

    fn finish(mut self: Box<Self>, _: &Diagnostics) -> io::Result<Summary> {
        serde_json::to_writer_pretty(&mut self.out, &self.tally.record())?;
        writeln!(self.out)?;
        Ok(self.tally.summary())
    }
}
