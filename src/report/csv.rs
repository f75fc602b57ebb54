//! The CSV report: one finding a row, fit to be opened in a spreadsheet.

use std::borrow::Cow;
use std::collections::BTreeSet;
use std::collections::HashMap;
use std::io;
use std::io::Write;
use std::rc::Rc;

use crate::input::Diagnostics;
use crate::items::Verdict;
use crate::judge::CautionSaid;
use crate::judge::Finding;
use crate::quantities::Length;
use crate::remedy::PlanDepth;
use crate::report::Detail;
use crate::report::JudgedGuard;
use crate::report::Report;
use crate::report::ReportBasis;
use crate::report::Summary;
use crate::report::advice;
use crate::report::cautions::DEFERRAL;
use crate::report::cautions::DO_NOT_LEAN;
use crate::report::cautions::GENERAL;
use crate::report::cautions::caution;
use crate::report::csv_line::CsvLine;
use crate::report::remedied::GuardRemedies;
use crate::report::standing;
use crate::report::strength;
use crate::report::words;
use crate::rules::Rule;
use crate::survey::Observation;
use crate::survey::OwnEntry;
use crate::survey::ReadingKey;
use crate::survey::RowPlace;

/// The columns. Lengths are in the unit that was written and in millimetres; a shortfall
/// and what is to spare have a column each, so that no number begins with a minus sign.
pub(super) const COLUMNS: [&str; 45] = [
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
    "short by",
    "short by mm",
    "to spare",
    "to spare mm",
    "how sure",
    "how sure mm",
    "chance that it meets",
    "the rule says",
    "why",
    "what holds it up",
    "remedy",
    "file",
    "line",
    "cell",
    "note",
    "date measured",
    "measured by",
    "decision",
    "report",
    "cautions",
];

/// From "law or guidance" to "note": what a row without a finding leaves empty.
const COLUMNS_OF_A_FINDING: usize = 32;

/// The places of some columns in [`COLUMNS`].
const ITEM: usize = 15;
const MEASURED: usize = 21;
const FILE: usize = 36;

/// What stands before them.
const COLUMNS_BEFORE_A_FINDING: usize = 8;

/// The CSV report.
pub struct Csv<'a, W: Write> {
    out: W,
    row: FindingRow,
    rules: HashMap<*const Rule, RuleCells>,
    basis: ReportBasis<'a>,
    summary: Summary,
    /// How a row ends that falls short of nothing: with leaning on it, and without.
    shortly: [Rc<CsvLine>; 2],
    cautions: KnownCautions<'a>,
    /// Cells of units, buildings and all that some guard inherited, each once.
    inherited: BTreeSet<ReadingKey>,
    facts: Vec<Observation>,
    /// Whether the next row is the first of its guard.
    begins: bool,
}

/// A reading that stands in a row of its own.
struct LooseReading<'o> {
    item: &'o str,
    written: &'o str,
    note: &'o str,
    row: RowPlace,
    column: u32,
}

impl<'o> LooseReading<'o> {
    fn of(observation: &'o Observation) -> LooseReading<'o> {
        LooseReading {
            item: observation.item.name(),
            written: &observation.written,
            note: &observation.note,
            row: observation.row,
            column: observation.column,
        }
    }

    fn of_own(own: &'o OwnEntry) -> LooseReading<'o> {
        LooseReading {
            item: &own.name,
            written: &own.written,
            note: &own.note,
            row: own.row,
            column: own.column,
        }
    }
}

/// Which program says so, and when.
fn report_of(basis: &ReportBasis<'_>) -> String {
    format!("guardrule {}, {}", basis.tool_version, basis.today)
}

impl<'a, W: Write> Csv<'a, W> {
    /// Writes the header.
    ///
    /// # Errors
    /// Those of `out`.
    pub fn new(mut out: W, basis: ReportBasis<'a>) -> io::Result<Csv<'a, W>> {
        let mut heading = CsvLine::default();
        for column in COLUMNS {
            heading.text(column);
        }
        out.write_all(heading.ended())?;
        let shortly = [
            after(&basis, &format!("{DO_NOT_LEAN} {DEFERRAL}")),
            after(&basis, DEFERRAL),
        ]
        .map(Rc::new);
        Ok(Csv {
            out,
            shortly,
            cautions: KnownCautions::default(),
            row: FindingRow::default(),
            rules: HashMap::new(),
            basis,
            summary: Summary::default(),
            inherited: BTreeSet::new(),
            facts: Vec::new(),
            begins: true,
        })
    }

    /// Writes a row between what stands at both ends of each of the guard's rows.
    fn row(
        &mut self,
        entry: &JudgedGuard<'_>,
        tells: RowTells<'_, '_>,
        ends: &RowEnds,
    ) -> io::Result<()> {
        let (row, basis) = (&mut self.row, &self.basis);
        row.cells.clear();
        row.cells.extend(&ends.before);
        match tells {
            RowTells::Finding(finding, remedies) => {
                let known = self.rules.entry(std::ptr::from_ref(finding.rule));
                row.finding(finding, known.or_insert_with(|| RuleCells::of(finding)));
                row.readings((entry, remedies), finding, basis);
            }
            RowTells::Nothing => row.cells.empty(COLUMNS_OF_A_FINDING),
            RowTells::Reading(reading) => row.reading(reading, basis),
        }
        let short = matches!(tells, RowTells::Finding(finding, _)
            if finding.verdict == Verdict::FallsShort);
        let first = std::mem::take(&mut self.begins);
        row.cells.extend(if short || first {
            &ends.beware
        } else {
            &ends.after
        });
        self.out.write_all(row.cells.ended())
    }
}

/// What stands in the middle of a row.
#[derive(Clone, Copy)]
enum RowTells<'t, 'r> {
    Finding(&'t Finding<'r>, &'t GuardRemedies),
    Nothing,
    Reading(&'t LooseReading<'t>),
}

/// What each row of a rule says alike; kept, since rules are few.
struct RuleCells {
    /// From "law or guidance" to "hazard".
    before: CsvLine,
    says: CsvLine,
}

impl RuleCells {
    fn of(finding: &Finding<'_>) -> RuleCells {
        let (rule, ruleset) = (finding.rule, finding.ruleset);
        let mut before = CsvLine::default();
        before.text(standing(ruleset));
        before.text(&ruleset.id);
        before.text(&ruleset.edition);
        before.text(&rule.id);
        before.text(&rule.clause);
        before.text(rule.status.name());
        before.text(rule.hazard.name());
        let mut says = CsvLine::default();
        says.text(&rule.says);
        RuleCells { before, says }
    }
}

/// A chance to three places: a tape tells no more. Nearly all are sure or hopeless.
fn chance(probability: f64) -> Cow<'static, str> {
    match probability {
        sure if sure > 0.9996 => Cow::Borrowed("1.000"),
        hopeless if hopeless < 0.0004 => Cow::Borrowed("0.000"),
        between => Cow::Owned(format!("{between:.3}")),
    }
}

/// What each row of a guard begins and ends with.
struct RowEnds {
    before: CsvLine,
    /// All cautions: where something falls short, and in a guard's first row.
    beware: Rc<CsvLine>,
    /// Not to lean, and who decides: in the other rows.
    after: Rc<CsvLine>,
}

/// How rows with all cautions end, by the cautions: guards have few different lists of them.
#[derive(Default)]
struct KnownCautions<'a>(Vec<(Vec<CautionSaid<'a>>, Rc<CsvLine>)>);

impl<'a> KnownCautions<'a> {
    /// More lists than these are not kept.
    const MOST: usize = 32;

    fn of(&mut self, cautions: Vec<CautionSaid<'a>>, basis: &ReportBasis<'a>) -> Rc<CsvLine> {
        if let Some((_, line)) = self.0.iter().find(|(known, _)| *known == cautions) {
            return Rc::clone(line);
        }
        let words: Vec<Cow<'_, str>> = cautions.iter().map(caution).collect();
        let line = Rc::new(after(basis, &words.join(" ")));
        if self.0.len() >= KnownCautions::MOST {
            self.0.clear();
        }
        self.0.push((cautions, Rc::clone(&line)));
        line
    }
}

impl RowEnds {
    fn of<'a>(
        entry: &JudgedGuard<'_>,
        basis: &ReportBasis<'a>,
        [leaning, plain]: &[Rc<CsvLine>; 2],
        known: &mut KnownCautions<'a>,
    ) -> RowEnds {
        let (guard, judged) = (&entry.guard, &entry.judged);
        let mut before = CsvLine::default();
        before.text(basis.survey.property.as_deref().unwrap_or_default());
        before.text(&guard.building);
        before.text(&guard.unit);
        before.text(&guard.name);
        before.text(if judged.could_not_judge {
            "could not judge"
        } else {
            judged.verdict.name()
        });
        before.text(judged.guidance.map_or("", Verdict::name));
        before.text(&words::dangers(judged).unwrap_or_default());
        before.text(&words::agreed(judged).join("; "));
        let cautions = basis.cautions_said(entry);
        let lean = cautions.contains(&CautionSaid::DoNotLean);
        RowEnds {
            before,
            beware: known.of(cautions, basis),
            after: Rc::clone(if lean { leaning } else { plain }),
        }
    }

    /// Of what was written of units, buildings and all.
    fn of_all(basis: &ReportBasis<'_>) -> RowEnds {
        let mut before = CsvLine::default();
        before.text(basis.survey.property.as_deref().unwrap_or_default());
        before.empty(COLUMNS_BEFORE_A_FINDING - 1);
        let general = GENERAL.join(" ");
        let beware = Rc::new(after(basis, &format!("{DO_NOT_LEAN} {general} {DEFERRAL}")));
        RowEnds {
            before,
            after: Rc::clone(&beware),
            beware,
        }
    }
}

fn after(basis: &ReportBasis<'_>, cautions: &str) -> CsvLine {
    let facts = basis.survey;
    let mut after = CsvLine::default();
    after.text(&facts.dates.join("; "));
    after.text(&facts.by.join("; "));
    after.text(basis.options.decision.name());
    after.text(&report_of(basis));
    after.text(cautions);
    after
}

/// The cells of a row so far.
#[derive(Default)]
struct FindingRow {
    cells: CsvLine,
    /// Room for a number.
    digits: String,
}

impl FindingRow {
    fn text(&mut self, text: &str) {
        self.cells.text(text);
    }

    fn millimetres(&mut self, length: Option<Length>) {
        match length {
            Some(length) => {
                self.digits.clear();
                length.push_millimetre_digits(&mut self.digits);
                self.cells.text(&self.digits); // may be below zero
            }
            None => self.empty(1),
        }
    }

    /// An amount in the unit that the person wrote.
    fn own_unit(&mut self, amount: Option<String>) {
        match amount {
            Some(amount) => self.text(&amount),
            None => self.empty(1),
        }
    }

    fn empty(&mut self, count: usize) {
        self.cells.empty(count);
    }

    fn finding(&mut self, finding: &Finding<'_>, rule: &RuleCells) {
        self.cells.extend(&rule.before);
        self.cells.plain(finding.item.name());
        self.cells.plain(finding.verdict.name());
        self.cells.plain(finding.rule.urgency.name());
        self.cells.plain(yes_or_no(finding.binding));
        self.cells.plain(yes_or_no(finding.partial));
        self.cells.plain(finding.reading_alone.name());
        let measured = finding.measured.as_ref();
        self.text(measured.map_or("", |measured| &measured.written));
        self.millimetres(measured.and_then(|measured| measured.value));
        let limit = finding.limit.as_ref();
        self.text(&limit.map(words::limit).unwrap_or_default());
        self.millimetres(limit.and_then(|limit| limit.value));
        let short = finding.margin.filter(|margin| *margin < Length::ZERO);
        let unit = advice::unit(finding);
        self.own_unit(short.map(|margin| margin.magnitude().readable_up(unit)));
        self.millimetres(short.map(Length::magnitude));
        let spare = finding.margin.filter(|margin| *margin >= Length::ZERO);
        self.own_unit(spare.map(|margin| margin.readable_down(unit)));
        self.millimetres(spare);
        let sure = finding.uncertainty.map(|u| u.as_length());
        self.own_unit(sure.map(|sure| sure.readable_up(unit)));
        self.millimetres(sure);
        let chance = finding.probability.map(|p| chance(p.value()));
        self.cells.plain(&chance.unwrap_or_default());
        self.cells.extend(&rule.says);
    }

    /// A reading that no finding used.
    fn reading(&mut self, reading: &LooseReading<'_>, basis: &ReportBasis<'_>) {
        self.empty(ITEM.saturating_sub(self.cells.cells()));
        self.text(reading.item);
        self.empty(MEASURED.saturating_sub(self.cells.cells()));
        self.text(reading.written);
        self.empty(FILE.saturating_sub(self.cells.cells()));
        self.place(reading, basis);
    }

    fn place(&mut self, reading: &LooseReading<'_>, basis: &ReportBasis<'_>) {
        let (row, facts) = (reading.row, basis.survey);
        self.text(words::file_name(row, facts));
        self.cells.number(row.line);
        self.text(&words::sheet_cell(row, reading.column, facts).unwrap_or_default());
        self.text(reading.note);
    }

    fn readings(
        &mut self,
        (entry, remedies): (&JudgedGuard<'_>, &GuardRemedies),
        finding: &Finding<'_>,
        basis: &ReportBasis<'_>,
    ) {
        let reason = |reason| words::reason(reason, &entry.guard);
        match finding.reasons.as_slice() {
            [] => self.empty(1),
            [only] => self.text(&reason(only)),
            several => {
                let several: Vec<String> = several.iter().map(reason).collect();
                self.text(&several.join("; "));
            }
        }
        match finding.chain.as_deref().filter(|chain| chain.written) {
            Some(chain) => self.text(&strength::in_one_cell(chain)),
            None => self.empty(1),
        }
        match remedies.find(finding) {
            Some(remedy) => self.text(&remedy.whole()),
            None => self.empty(1),
        }
        match finding.readings.first() {
            Some(index) => {
                let observation = entry.guard.observation(*index);
                self.place(&LooseReading::of(observation), basis);
            }
            None => self.empty(4),
        }
    }
}

const fn yes_or_no(yes: bool) -> &'static str {
    if yes { "yes" } else { "no" }
}

impl<W: Write> Report for Csv<'_, W> {
    fn guard(&mut self, entry: &JudgedGuard<'_>) -> io::Result<()> {
        let ends = RowEnds::of(entry, &self.basis, &self.shortly, &mut self.cautions);
        self.begins = true;
        let full = self.basis.detail == Detail::Full;
        let findings = entry.judged.findings.iter();
        let said: Vec<&Finding<'_>> = findings
            .filter(|finding| full || finding.verdict != Verdict::DoesNotApply)
            .collect();
        if said.is_empty() {
            self.row(entry, RowTells::Nothing, &ends)?;
        }
        // a filtered sheet still carries what must be known
        let remedies = GuardRemedies::of(entry, &self.basis, PlanDepth::Best);
        for finding in &said {
            self.row(entry, RowTells::Finding(finding, &remedies), &ends)?;
        }
        // a finding's row shows the reading that decided; the others have rows of their own
        let decided = said.iter().filter_map(|finding| finding.readings.first());
        let decided = decided.map(|index| entry.guard.observation(*index));
        let mut told: BTreeSet<ReadingKey> = decided.map(Observation::key).collect();
        for observation in &entry.guard.observations {
            if told.insert(observation.key()) {
                let reading = LooseReading::of(observation);
                self.row(entry, RowTells::Reading(&reading), &ends)?;
            }
        }
        for own in &entry.guard.own {
            let reading = LooseReading::of_own(own);
            self.row(entry, RowTells::Reading(&reading), &ends)?;
        }
        for observation in &entry.guard.inherited.observations {
            if self.inherited.insert(observation.key()) {
                self.facts.push(observation.clone());
            }
        }
        self.summary.count(&entry.judged);
        Ok(())
    }

    /// What was written of units, buildings and all has a row of its own at the end.
    fn finish(mut self: Box<Self>, _: &Diagnostics) -> io::Result<Summary> {
        let ends = RowEnds::of_all(&self.basis);
        let said = self.basis.survey.said.iter().cloned();
        for fact in said.chain(std::mem::take(&mut self.facts)) {
            let row = &mut self.row;
            row.cells.clear();
            row.cells.extend(&ends.before);
            row.reading(&LooseReading::of(&fact), &self.basis);
            row.cells.extend(&ends.after);
            self.out.write_all(row.cells.ended())?;
        }
        self.out.flush()?;
        Ok(self.summary)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn columns_are_where_a_reading_is_put() {
        let names = [ITEM, MEASURED, FILE].map(|place| COLUMNS[place]);
        assert_eq!(names, ["item", "measured", "file"]);
        let last = COLUMNS_BEFORE_A_FINDING + COLUMNS_OF_A_FINDING;
        assert_eq!(COLUMNS[COLUMNS_BEFORE_A_FINDING], "law or guidance");
        assert_eq!(COLUMNS[last - 1], "note");
    }

    #[test]
    fn a_chance_is_written_as_it_rounds() {
        for value in [
            0.0, 0.000_399, 0.000_4, 0.000_5, 0.25, 0.999_5, 0.999_6, 0.999_601, 1.0,
        ] {
            let shown = chance(value);
            assert_eq!(shown, format!("{value:.3}"));
        }
    }
}
