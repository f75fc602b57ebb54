//! The counts alone, as JSON.

use std::io;
use std::io::Write;

use crate::input::Diagnostics;
use crate::report::JudgedGuard;
use crate::report::Report;
use crate::report::Summary;
use crate::report::counted::Counted;
use crate::report::counted::SummaryRecord;

/// The form that writes the summary and nothing else, as one JSON object.
pub struct SummaryForm<W> {
    out: W,
    counted: Counted,
}

impl<W: Write> SummaryForm<W> {
    /// Nothing counted yet.
    pub fn new(out: W) -> SummaryForm<W> {
        SummaryForm {
            out,
            counted: Counted::default(),
        }
    }
}

impl<W: Write> Report for SummaryForm<W> {
    fn guard(&mut self, entry: &JudgedGuard<'_>) -> io::Result<()> {
        self.counted.count(entry);
        Ok(())
    }

    fn finish(mut self: Box<Self>, _: &Diagnostics) -> io::Result<Summary> {
        let summary = self.counted.summary();
        serde_json::to_writer_pretty(&mut self.out, &SummaryRecord::of(summary))?;
        writeln!(self.out)?;
        Ok(summary)
    }
}
