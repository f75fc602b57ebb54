//! The whole text report: guards are kept as paragraphs until all are known,
//! since the worst comes first.

use std::collections::BTreeMap;
use std::collections::BTreeSet;
use std::io;
use std::io::Write;
use std::mem;

use crate::input::Diagnostics;
use crate::items::Verdict;
use crate::judge::guard_cautions;
use crate::judge::leave_outs;
use crate::report::JudgedGuard;
use crate::report::Report;
use crate::report::ReportBasis;
use crate::report::Summary;
use crate::report::cautions::DEFERRAL;
use crate::report::cautions::GENERAL;
use crate::report::cautions::STRENGTH_CAUTIONS;
use crate::report::cautions::TONIGHT;
use crate::report::cautions::caution;
use crate::report::one_line;
use crate::report::palette;
use crate::report::text::findings::first_steps;
use crate::report::text::guard::Detail;
use crate::report::text::guard::block;
use crate::report::text::head::head;
use crate::report::text::headline::headline;
use crate::report::text::rank::Rank;
use crate::report::text::rank::is_quiet;
use crate::report::words;
use crate::report::wrap::WIDTH;
use crate::report::wrap::hanging;

/// Above this many, guards that meet get one line each, and the others say
/// what to measure next in a few words.
const MANY: usize = 30;

/// How many guards the top of the report names.
const AT_THE_TOP: usize = 3;

/// The text report.
pub struct TextReport<'a, W> {
    out: W,
    basis: ReportBasis<'a>,
    guards: Vec<Kept>,
    cautions: Cautions,
    /// What rules leave out, each once.
    left_out: Cautions,
    /// The editions by which some guard was judged since it was built in their time.
    editions: BTreeSet<String>,
    summary: Summary,
}

/// Every caution once, with how many guards it holds for.
#[derive(Default)]
struct Cautions {
    index: BTreeMap<String, usize>,
    counts: Vec<usize>,
}

impl Cautions {
    fn count(&mut self, caution: String) -> usize {
        let next = self.counts.len();
        let index = *self.index.entry(caution).or_insert(next);
        if index == next {
            self.counts.push(0);
        }
        self.counts[index] += 1;
        index
    }
}

/// A guard as it will be printed.
struct Kept {
    rank: Rank,
    title: String,
    headline: String,
    verdict: Verdict,
    quiet: bool,
    /// What to speak of first, for the top of the report.
    first: Vec<String>,
    /// The lines below the headline; empty once there are many and it is quiet.
    block: String,
    /// The same in brief, as long as there may still be few.
    brief: String,
    cautions: Vec<usize>,
    /// What its rules leave out; looked at where it meets.
    leaves_out: Vec<usize>,
}

impl<'a, W: Write> TextReport<'a, W> {
    /// Nothing is written before the end.
    pub fn new(out: W, basis: ReportBasis<'a>) -> TextReport<'a, W> {
        TextReport {
            out,
            basis,
            guards: Vec::new(),
            cautions: Cautions::default(),
            left_out: Cautions::default(),
            editions: BTreeSet::new(),
            summary: Summary::default(),
        }
    }

    fn many(&self) -> bool {
        self.guards.len() > MANY
    }

    fn write_head(&mut self) -> io::Result<()> {
        let made = format!(
            "guardrule {}, report of {}",
            self.basis.tool_version, self.basis.today
        );
        writeln!(self.out, "{}\n", palette::heading(&made))?;
        writeln!(self.out, "{}", hanging("In short: ", &self.in_short()))?;
        let loud = self.guards.iter().filter(|guard| !guard.quiet).count();
        for (number, guard) in (1..).zip(self.guards.iter().take(loud.min(AT_THE_TOP))) {
            let head = format!("{}: {}.", guard.title, guard.headline);
            let head = hanging(&format!("  {number}. "), &head);
            writeln!(self.out, "{}", palette::verdict(&head, guard.verdict))?;
            for step in &guard.first {
                writeln!(self.out, "{}", hanging("     ", step))?;
            }
        }
        if loud > AT_THE_TOP {
            let rest = format!("{} more below, worst first.", loud - AT_THE_TOP);
            writeln!(self.out, "{}", hanging("     ", &rest))?;
        }
        if self.cautions.index.contains_key(TONIGHT) {
            let text = "keep children away from what falls short or moves, with a gate that an adult opens at once or somebody beside them; lock or block no way by which people would leave in a fire.";
            writeln!(self.out, "{}", hanging("Tonight: ", text))?;
        }
        writeln!(self.out)?;
        if self.guards.is_empty() {
            return Ok(());
        }
        for line in head(&self.basis, &self.editions) {
            writeln!(self.out, "{line}")?;
        }
        Ok(())
    }

    fn in_short(&self) -> String {
        if self.guards.is_empty() {
            return "no guard could be read from the survey, so nothing was judged; why is said apart.".to_owned();
        }
        counted(self.summary)
    }

    fn write_guards(&mut self) -> io::Result<()> {
        let many = self.many();
        let leaves_out = self.leave_out_lines();
        let cautions = self.caution_lines();
        let mut told = BTreeSet::new();
        let mut in_a_list = false;
        for (number, guard) in (1..).zip(&self.guards) {
            let title = format!("{number}. {}", guard.title);
            if many && guard.quiet {
                let text = format!("{}: {}", guard.title, guard.headline);
                if !in_a_list {
                    writeln!(self.out, "\n{}", "-".repeat(WIDTH - 2))?;
                }
                in_a_list = true;
                writeln!(self.out, "{}", hanging(&format!("{number}. "), &text))?;
                continue;
            }
            in_a_list = false;
            writeln!(self.out, "\n{}", "-".repeat(WIDTH - 2))?;
            for line in hanging("", &title).lines() {
                writeln!(self.out, "{}", palette::heading(line))?;
            }
            let head = hanging("  ", &format!("{}.", guard.headline));
            for line in head.lines() {
                writeln!(self.out, "{}", palette::verdict(line, guard.verdict))?;
            }
            writeln!(self.out, "\n{}", guard.block)?;
            let mut own = guard
                .cautions
                .iter()
                .filter_map(|index| cautions[*index].at_guard());
            if let Some(first) = own.next() {
                writeln!(
                    self.out,
                    "\n  {}\n{first}",
                    palette::heading("Before you act")
                )?;
            }
            for line in own {
                writeln!(self.out, "{line}")?;
            }
            if guard.verdict == Verdict::Meets && !guard.leaves_out.is_empty() {
                let above = !told.is_empty();
                let of_guard = guard.leaves_out.iter();
                let new: Vec<usize> = of_guard
                    .copied()
                    .filter(|part| told.insert(*part))
                    .collect();
                let heading = match (above, new.is_empty()) {
                    (false, _) => "What these rules leave out",
                    (true, true) => "What its rules leave out is listed above",
                    (true, false) => "What its rules leave out, beside what is listed above",
                };
                writeln!(self.out, "\n  {}", palette::heading(heading))?;
                for part in new {
                    writeln!(self.out, "{}", leaves_out[part])?;
                }
            }
        }
        Ok(())
    }

    /// The cautions in the order of their first guard. One that a ruleset
    /// states for every guard here is said once, at the end, and so is what
    /// every answer about strength says.
    fn caution_lines(&self) -> Vec<CautionLine> {
        let mut lines: Vec<(usize, CautionLine)> = Vec::new();
        let all = self.guards.len();
        for (caution, index) in &self.cautions.index {
            let mut stated = self
                .basis
                .rulesets
                .iter()
                .flat_map(|ruleset| &ruleset.cautions);
            let line = hanging("    - ", &one_line(caution));
            let everywhere = all > 1
                && self.cautions.counts[*index] == all
                && stated.any(|stated| caution.contains(&stated.says));
            // said once, they hold for whichever guard
            let of_strength =
                self.cautions.counts[*index] > 1 && STRENGTH_CAUTIONS.contains(&caution.as_str());
            let line = if everywhere || of_strength {
                CautionLine::AtEnd(line)
            } else {
                CautionLine::AtGuard(line)
            };
            lines.push((*index, line));
        }
        lines.sort_by_key(|(index, _)| *index);
        lines.into_iter().map(|(_, line)| line).collect()
    }

    /// What the rules of some guard leave out, a line each, by their number.
    fn leave_out_lines(&self) -> Vec<String> {
        let mut parts: Vec<(&String, &usize)> = self.left_out.index.iter().collect();
        parts.sort_by_key(|(_, index)| **index);
        let line = |part: &String| hanging("    - ", &one_line(part));
        parts.into_iter().map(|(part, _)| line(part)).collect()
    }

    /// What the rules leave out for guards that have a line of their own only.
    fn left_out_of_quiet(&self) -> Vec<String> {
        let lines = self.leave_out_lines();
        let quiet = self.guards.iter().filter(|guard| guard.quiet);
        let parts: BTreeSet<usize> = quiet.flat_map(|guard| guard.leaves_out.clone()).collect();
        parts.into_iter().map(|part| lines[part].clone()).collect()
    }

    fn write_end(&mut self, diagnostics: &Diagnostics) -> io::Result<()> {
        writeln!(self.out, "\n{}", "-".repeat(WIDTH - 2))?;
        writeln!(self.out, "{}", palette::heading("Summary"))?;
        writeln!(self.out, "{}", hanging("  ", &counted(self.summary)))?;
        if self.many() && self.guards.iter().any(|guard| guard.quiet) {
            let leaves_out = self.left_out_of_quiet();
            if !leaves_out.is_empty() {
                writeln!(
                    self.out,
                    "\n  {}",
                    palette::heading("What these rules leave out")
                )?;
            }
            for line in leaves_out {
                writeln!(self.out, "{line}")?;
            }
        }
        if diagnostics.any_error() {
            let text = "Something in the files could not be understood; it is said apart, with file and line. Mend it and run this again.";
            writeln!(self.out, "{}", hanging("  ", text))?;
        }
        writeln!(self.out, "\n{}", palette::heading("For every guard here"))?;
        for line in self.caution_lines() {
            if let CautionLine::AtEnd(line) = line {
                writeln!(self.out, "{line}")?;
            }
        }
        for caution in GENERAL {
            writeln!(self.out, "{}", hanging("    - ", caution))?;
        }
        writeln!(self.out, "{}", hanging("    - ", DEFERRAL))
    }
}

/// A caution as it is printed, and where.
enum CautionLine {
    AtEnd(String),
    AtGuard(String),
}

impl CautionLine {
    fn at_guard(&self) -> Option<&str> {
        match self {
            CautionLine::AtEnd(_) => None,
            CautionLine::AtGuard(line) => Some(line),
        }
    }
}

/// The summary as sentences.
fn counted(summary: Summary) -> String {
    let parts = [
        (summary.falls_short, "falls short", "fall short"),
        (
            summary.too_close,
            "is too close to call",
            "are too close to call",
        ),
        (summary.not_settled, "is not settled", "are not settled"),
        (summary.not_measured, "is not measured", "are not measured"),
        (summary.meets, "meets", "meet"),
        (
            summary.does_not_apply,
            "needs none by these rules",
            "need none by these rules",
        ),
        (
            summary.could_not_judge,
            "could not be judged",
            "could not be judged",
        ),
    ];
    let parts: Vec<String> = parts
        .iter()
        .filter(|(count, _, _)| *count > 0)
        .map(|(count, one, many)| format!("{count} {}", if *count == 1 { one } else { many }))
        .collect();
    let guards = if summary.guards == 1 {
        "guard"
    } else {
        "guards"
    };
    if parts.is_empty() {
        return "No guard was found.".to_owned();
    }
    let mut text = format!("{} {guards}: {}.", summary.guards, parts.join(", "));
    if summary.reading_alone_meets > 0 {
        text.push_str(&format!(
            " By the readings alone {} of the undecided would meet.",
            summary.reading_alone_meets
        ));
    }
    text
}

impl<W: Write> Report for TextReport<'_, W> {
    fn guard(&mut self, entry: &JudgedGuard<'_>) -> io::Result<()> {
        let quiet = is_quiet(entry);
        let many = self.guards.len() >= MANY;
        if self.guards.len() == MANY {
            for guard in &mut self.guards {
                guard.block = mem::take(&mut guard.brief);
            }
        }
        let cautions = guard_cautions(
            &entry.guard,
            &entry.judged,
            self.basis.survey,
            self.basis.rulesets,
            self.basis.options,
        );
        let cautions = cautions
            .into_iter()
            .map(|said| self.cautions.count(caution(&said).into_owned()))
            .collect();
        let left_out = leave_outs(
            &entry.guard,
            self.basis.survey,
            self.basis.rulesets,
            self.basis.options,
        );
        let leaves_out = left_out
            .into_iter()
            .map(|part| self.left_out.count(part))
            .collect();
        let brief = if quiet {
            String::new()
        } else {
            block(entry, &self.basis, Detail::Brief)
        };
        let (block, brief) = if many {
            (brief, String::new())
        } else {
            (block(entry, &self.basis, Detail::Full), brief)
        };
        self.guards.push(Kept {
            rank: Rank::of(entry, self.guards.len()),
            title: words::title(&entry.guard),
            headline: headline(entry, &self.basis),
            verdict: entry.judged.verdict,
            quiet,
            first: first_steps(entry, &self.basis),
            block,
            brief,
            cautions,
            leaves_out,
        });
        if let Some(when) = &entry.judged.when_built {
            let ids = when.rulesets.iter().map(|id| (*id).to_owned());
            self.editions.extend(ids);
        }
        self.summary.count(&entry.judged);
        Ok(())
    }

    fn finish(mut self: Box<Self>, diagnostics: &Diagnostics) -> io::Result<Summary> {
        self.guards.sort_by_key(|guard| guard.rank);
        self.write_head()?;
        if self.guards.is_empty() {
            // a head by rules that judged nothing would only hide what is wrong
            writeln!(self.out, "{}", hanging("", DEFERRAL))?;
            return Ok(self.summary);
        }
        self.write_guards()?;
        self.write_end(diagnostics)?;
        Ok(self.summary)
    }
}
