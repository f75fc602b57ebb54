//! The whole text report: guards are kept until all are known, since the worst
//! comes first and what is the same for all is said once.

use std::collections::HashMap;
use std::io;
use std::io::Write;

use crate::input::Diagnostics;
use crate::judge::Authority;
use crate::report::Detail;
use crate::report::JudgedGuard;
use crate::report::Report;
use crate::report::ReportBasis;
use crate::report::Summary;
use crate::report::palette;
use crate::report::reader;
use crate::report::text::blocks;
use crate::report::text::end::end;
use crate::report::told::DEFERRAL;

use crate::report::Explain;
use crate::report::text::full;
use crate::report::text::top;
use crate::report::told::GuardTold;
use crate::report::told::ReportPart;
use crate::report::told::SurveyTold;
use crate::report::told::alike;
use crate::report::told::for_all;
use crate::report::told::written;
use crate::report::told::written::Known;
use crate::report::told::written::SaidOfItem;
use crate::report::wrap::Lines;

/// The text report.
pub struct TextReport<'a, W> {
    out: W,
    basis: ReportBasis<'a>,
    told: SurveyTold,
}

impl<'a, W: Write> TextReport<'a, W> {
    /// Nothing is written before the end.
    pub fn new(out: W, basis: ReportBasis<'a>) -> TextReport<'a, W> {
        TextReport {
            out,
            basis,
            told: SurveyTold::default(),
        }
    }

    fn text(&self, diagnostics: &Diagnostics) -> Lines {
        let basis = &self.basis;
        let authority = Authority::of(basis.rulesets);
        let told = &self.told.guards;
        let for_all = for_all(told);
        let mut lines = Lines::new(basis.width);
        top::head(&mut lines, basis, told, self.told.summary);
        if diagnostics.any_error() {
            let text = "Something in the files could not be understood; it is said apart, with file and \
line. Mend it and run this again.";
            lines.spread("", "", text);
        }
        if told.is_empty() {
            // a report by rules that judged nothing would only hide what is wrong
            lines.spread("", "", DEFERRAL);
            return lines;
        }
        top::tonight(&mut lines, told);
        let groups = alike(told);
        top::wrong(&mut lines, told, &groups);

        let mut known = Known::default();
        for (number, group) in (1..).zip(&groups) {
            let guards: Vec<&GuardTold> = group.iter().map(|index| &told[*index]).collect();
            let number = (told.len() > 1).then_some(number);
            blocks::block(&mut lines, number, &guards, authority, &for_all, &mut known);
        }
        unfinished(&mut lines, told, &for_all, &mut known);
        good(&mut lines, told, &for_all, &mut known);
        end(&mut lines, basis, &self.told, &for_all);
        lines
    }
}

/// Guards of which something is not looked at, and nothing is wrong so far.
fn unfinished(lines: &mut Lines, told: &[GuardTold], for_all: &[SaidOfItem], known: &mut Known) {
    let mut guards = told
        .iter()
        .filter(|guard| guard.part == ReportPart::Unfinished)
        .peekable();
    if guards.peek().is_none() {
        return;
    }
    lines.gap();
    lines.push(palette::heading("UNFINISHED"));
    for guard in guards {
        let mut parts = Vec::new();
        match guard.not_entered.as_deref() {
            Some("") => parts.push("not entered".to_owned()),
            Some(why) => parts.push(format!("not entered (\"{why}\")")),
            None => {
                if !guard.comes_out.is_empty() {
                    parts.push(guard.comes_out.clone());
                }
                parts.extend(
                    guard
                        .unclear
                        .iter()
                        .map(|why| why.trim_end_matches('.').to_owned()),
                );
                if !guard.next.is_empty() && told.len() > 1 {
                    parts.push(format!("next: {}", names(guard)));
                }
            }
        }
        if !guard.could_not_look.is_empty() && guard.not_entered.is_none() {
            parts.push(format!(
                "not looked at: {}",
                guard.could_not_look.join("; ")
            ));
        }
        lines.spread(
            "  ",
            "     ",
            &format!("{}: {}.", guard.name, parts.join("; ")),
        );
        if told.len() == 1 {
            blocks::numbered(lines, &guard.next);
        }
        blocks::what_holds_it(lines, guard);
        blocks::as_written(lines, &[guard], for_all, known);
        full(lines, guard);
    }
}

fn full(lines: &mut Lines, guard: &GuardTold) {
    if !guard.full.is_empty() {
        lines.push(guard.full.clone());
    }
}

/// What to look at next by name, most useful first; the rest as a count.
fn names(guard: &GuardTold) -> String {
    let named = guard.next.iter().take(MOST_NEXT);
    let mut names: Vec<String> = named.map(|next| next.item.name().to_owned()).collect();
    if guard.next.len() > MOST_NEXT {
        names.push(format!("{} more", guard.next.len() - MOST_NEXT));
    }
    names.join(", ")
}

/// What somebody wrote that could not be looked at, and what nobody wrote.
fn not_looked_at(guard: &GuardTold) -> String {
    let said = guard.could_not_look.iter().cloned();
    let names = Some(names(guard)).filter(|names| !names.is_empty());
    said.chain(names).collect::<Vec<_>>().join("; ")
}

/// More than these nobody looks at in one go. (our own judgement, no source)
const MOST_NEXT: usize = 6;

/// Guards that meet, or of which no rule asks anything; those that come out alike
/// stand together, and what is the same as the first one's is not said again.
fn good(lines: &mut Lines, told: &[GuardTold], for_all: &[SaidOfItem], known: &mut Known) {
    let mut groups: Vec<(&str, Vec<&GuardTold>)> = Vec::new();
    for guard in told.iter().filter(|guard| guard.part == ReportPart::Good) {
        let known = groups
            .iter_mut()
            .find(|(comes_out, _)| *comes_out == guard.comes_out);
        match known {
            Some((_, guards)) => guards.push(guard),
            None => groups.push((&guard.comes_out, vec![guard])),
        }
    }
    if groups.is_empty() {
        return;
    }
    lines.gap();
    lines.push(palette::heading("NOTHING WRONG FOUND"));
    for (comes_out, guards) in groups {
        lines.spread("  ", "  ", &format!("{}:", reader::capital(comes_out)));
        let mut same: Vec<(String, String, Vec<String>, &GuardTold)> = Vec::new();
        let mut seen = HashMap::new();
        for guard in guards {
            let mut parts = guard.met.clone();
            parts.extend(guard.written.clone());
            parts.extend(written::without(&guard.inherited, for_all));
            let all = blocks::everything(guard, for_all);
            let text = known.shortly(&guard.name, &parts, &all);
            let text = text.unwrap_or_else(|| written::joined(&parts));
            let open = not_looked_at(guard);
            let key = (text.clone(), open.clone(), &guard.full, &guard.holds);
            match seen.get(&key) {
                Some(index) => {
                    let alike: &mut (_, _, Vec<String>, _) = &mut same[*index];
                    alike.2.push(guard.name.clone());
                }
                None => {
                    seen.insert(key, same.len());
                    same.push((text, open, vec![guard.name.clone()], guard));
                }
            }
        }
        for (text, open, names, guard) in same {
            let names = reader::listed(&names);
            lines.spread("  ", "     ", &format!("{names}: {text}."));
            if !open.is_empty() {
                lines.spread("     ", "     ", &format!("Not looked at: {open}."));
            }
            blocks::what_holds_it(lines, guard);
            full(lines, guard);
        }
    }
}

impl<W: Write> Report for TextReport<'_, W> {
    fn guard(&mut self, entry: &JudgedGuard<'_>) -> io::Result<()> {
        let full = everything(entry, &self.basis);
        self.told.add(entry, &self.basis, full);
        Ok(())
    }

    fn finish(mut self: Box<Self>, diagnostics: &Diagnostics) -> io::Result<Summary> {
        self.told.sort();
        let text = self.text(diagnostics).joined();
        writeln!(self.out, "{text}")?;
        Ok(self.told.summary)
    }
}

/// What a report says first: the counts, what to do tonight, what is wrong and what to
/// do first. The deferral stands below it.
///
/// # Errors
/// Those of `out`.
pub fn first_screen(
    out: &mut dyn Write,
    basis: &ReportBasis<'_>,
    guards: &[JudgedGuard<'_>],
) -> io::Result<()> {
    let mut survey = SurveyTold::default();
    for entry in guards {
        survey.add(entry, basis, String::new());
    }
    survey.sort();
    let told = &survey.guards;
    let mut lines = Lines::new(basis.width);
    top::head(&mut lines, basis, told, survey.summary);
    top::tonight(&mut lines, told);
    top::wrong(&mut lines, told, &alike(told));
    lines.gap();
    lines.spread("", "", DEFERRAL);
    writeln!(out, "{}", lines.joined())
}

fn everything(entry: &JudgedGuard<'_>, basis: &ReportBasis<'_>) -> String {
    let mut lines = Lines::new(basis.width);
    if basis.detail == Detail::Full {
        full::everything(&mut lines, entry, basis);
    }
    if basis.explain == Explain::Yes {
        full::sums(&mut lines, entry, basis);
    }
    lines.joined()
}
