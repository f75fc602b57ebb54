//! The CSV report: one finding a row, fit to be opened in a spreadsheet.

use std::io;
use std::io::Write;

use crate::input::Diagnostics;
use crate::items::Verdict;
use crate::judge::Finding;
use crate::quantities::Length;
use crate::report::Detail;
use crate::report::JudgedGuard;
use crate::report::Report;
use crate::report::ReportBasis;
use crate::report::Summary;
use crate::report::one_line;
use crate::report::remedy::remedy;
use crate::report::safe_cell;
use crate::report::standing;
use crate::report::strength;
use crate::report::words;
use crate::survey::Observation;
use crate::survey::ReadingKey;

/// The columns. Lengths are in millimetres; a shortfall and what is to spare
/// have a column each, so that no number begins with a minus sign.
pub(super) const COLUMNS: [&str; 41] = [
    "property",
    "building",
    "unit",
    "guard",
    "guard verdict",
    "guard guidance",
    "danger",
    "agreed whichever it is",
    "law or guidance",
    "ruleset",
    "edition",
    "rule",
    "clause",
    "how the clause was read",
    "hazard",
    "item",
    "verdict",
    "urgency",
    "decides",
    "partial",
    "reading alone",
    "measured",
    "measured mm",
    "asked",
    "limit mm",
    "short by mm",
    "to spare mm",
    "how sure mm",
    "chance that it meets",
    "the rule says",
    "why",
    "what holds it up",
    "remedy",
    "file",
    "line",
    "note",
    "date measured",
    "measured by",
    "decision",
    "report",
    "cautions",
];

/// From "law or guidance" to "note": what a row without a finding leaves empty.
const COLUMNS_OF_A_FINDING: usize = 28;

/// The CSV report.
pub struct Csv<'a, W: Write> {
    out: csv::Writer<W>,
    basis: ReportBasis<'a>,
    summary: Summary,
}

impl<'a, W: Write> Csv<'a, W> {
    /// Writes the header.
    ///
    /// # Errors
    /// Those of `out`.
    pub fn new(out: W, basis: ReportBasis<'a>) -> io::Result<Csv<'a, W>> {
        let mut out = csv::Writer::from_writer(out);
        out.write_record(COLUMNS)?;
        Ok(Csv {
            out,
            basis,
            summary: Summary::default(),
        })
    }

    fn row(
        &mut self,
        entry: &JudgedGuard<'_>,
        finding: Option<&Finding<'_>>,
        reading: Option<&Observation>,
        cautions: &str,
    ) -> io::Result<()> {
        let basis = &self.basis;
        let facts = basis.survey;
        let guard = &entry.guard;
        let mut row = FindingRow::default();
        row.text(facts.property.as_deref().unwrap_or_default());
        row.text(&guard.building);
        row.text(&guard.unit);
        row.text(&guard.name);
        row.text(if entry.judged.could_not_judge {
            "could not judge"
        } else {
            entry.judged.verdict.name()
        });
        row.text(entry.judged.guidance.map_or("", Verdict::name));
        row.text(&words::dangers(&entry.judged).unwrap_or_default());
        row.text(&words::agreed(&entry.judged).join("; "));
        match (finding, reading) {
            (Some(finding), _) => {
                row.finding(finding);
                row.readings(entry, finding, basis);
            }
            (None, Some(observation)) => row.reading(observation, basis),
            (None, None) => row.empty(COLUMNS_OF_A_FINDING),
        }
        row.text(&facts.dates.join("; "));
        row.text(&facts.by.join("; "));
        row.text(basis.options.decision.name());
        row.text(&format!(
            "guardrule {}, {}",
            basis.tool_version, basis.today
        ));
        row.text(cautions);
        self.out.write_record(&row.cells)?;
        Ok(())
    }
}

/// The cells of a row so far.
#[derive(Default)]
struct FindingRow {
    cells: Vec<String>,
}

impl FindingRow {
    fn text(&mut self, text: &str) {
        self.cells.push(safe_cell(&one_line(text)));
    }

    fn millimetres(&mut self, length: Option<Length>) {
        self.text(&length.map_or_else(String::new, Length::millimetre_digits));
    }

    fn empty(&mut self, count: usize) {
        for _ in 0..count {
            self.cells.push(String::new());
        }
    }

    fn finding(&mut self, finding: &Finding<'_>) {
        let (rule, ruleset) = (finding.rule, finding.ruleset);
        self.text(standing(ruleset));
        self.text(&ruleset.id);
        self.text(&ruleset.edition);
        self.text(&rule.id);
        self.text(&rule.clause);
        self.text(rule.status.name());
        self.text(rule.hazard.name());
        self.text(finding.item.name());
        self.text(finding.verdict.name());
        self.text(rule.urgency.name());
        self.text(yes_or_no(finding.binding));
        self.text(yes_or_no(finding.partial));
        self.text(finding.reading_alone.name());
        let measured = finding.measured.as_ref();
        self.text(measured.map_or("", |measured| &measured.written));
        self.millimetres(measured.and_then(|measured| measured.value));
        let limit = finding.limit.as_ref();
        self.text(&limit.map(words::limit).unwrap_or_default());
        self.millimetres(limit.and_then(|limit| limit.value));
        let short = finding.margin.filter(|margin| *margin < Length::ZERO);
        self.millimetres(short.map(Length::magnitude));
        self.millimetres(finding.margin.filter(|margin| *margin >= Length::ZERO));
        self.millimetres(finding.uncertainty.map(|u| u.as_length()));
        // a tape tells no more than three places
        let probability = finding.probability.map(|p| format!("{:.3}", p.value()));
        self.text(&probability.unwrap_or_default());
        self.text(&rule.says);
    }

    /// A reading that no finding used.
    fn reading(&mut self, observation: &Observation, basis: &ReportBasis<'_>) {
        let item = COLUMNS.iter().position(|name| *name == "item");
        let written = COLUMNS.iter().position(|name| *name == "measured");
        let (item, written) = (item.unwrap_or(0), written.unwrap_or(0));
        self.empty(item.saturating_sub(self.cells.len()));
        self.text(observation.item.name());
        self.empty(written.saturating_sub(self.cells.len()));
        self.text(&observation.written);
        let file = COLUMNS.iter().position(|name| *name == "file").unwrap_or(0);
        self.empty(file.saturating_sub(self.cells.len()));
        self.place(observation, basis);
    }

    fn place(&mut self, observation: &Observation, basis: &ReportBasis<'_>) {
        self.text(words::file_name(observation.row, basis.survey));
        self.text(&observation.row.line.to_string());
        self.text(&observation.note);
    }

    fn readings(
        &mut self,
        entry: &JudgedGuard<'_>,
        finding: &Finding<'_>,
        basis: &ReportBasis<'_>,
    ) {
        let reasons: Vec<String> = finding
            .reasons
            .iter()
            .map(|reason| words::reason(reason, &entry.guard))
            .collect();
        self.text(&reasons.join("; "));
        let chain = finding.chain.as_deref().filter(|chain| chain.written);
        self.text(&chain.map(strength::in_one_cell).unwrap_or_default());
        let short = finding.verdict == Verdict::FallsShort && finding.counts();
        let remedy = short.then(|| remedy(&entry.remedies, &entry.judged, finding.item));
        self.text(
            &remedy
                .flatten()
                .map_or_else(String::new, |remedy| remedy.says),
        );
        match finding.readings.first() {
            Some(index) => {
                let observation = entry.guard.observation(*index);
                self.place(observation, basis);
            }
            None => self.empty(3),
        }
    }
}

const fn yes_or_no(yes: bool) -> &'static str {
    if yes { "yes" } else { "no" }
}

impl<W: Write> Report for Csv<'_, W> {
    fn guard(&mut self, entry: &JudgedGuard<'_>) -> io::Result<()> {
        let cautions = self.basis.cautions(entry).join(" ");
        let full = self.basis.detail == Detail::Full;
        let findings = entry.judged.findings.iter();
        let said: Vec<&Finding<'_>> = findings
            .filter(|finding| full || finding.verdict != Verdict::DoesNotApply)
            .collect();
        if said.is_empty() {
            self.row(entry, None, None, &cautions)?;
        }
        // a filtered sheet still carries what must be known
        for finding in &said {
            self.row(entry, Some(finding), None, &cautions)?;
        }
        // a finding's row shows the reading that decided; the others have rows of their own
        let decided = said.iter().filter_map(|finding| finding.readings.first());
        let decided = decided.map(|index| entry.guard.observation(*index));
        let mut told: Vec<ReadingKey> = decided.map(|o| o.key()).collect();
        for observation in &entry.guard.observations {
            let place = observation.key();
            if !told.contains(&place) {
                told.push(place);
                self.row(entry, None, Some(observation), &cautions)?;
            }
        }
        self.summary.count(&entry.judged);
        Ok(())
    }

    fn finish(mut self: Box<Self>, _: &Diagnostics) -> io::Result<Summary> {
        self.out.flush()?;
        Ok(self.summary)
    }
}
