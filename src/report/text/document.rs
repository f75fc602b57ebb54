//! The whole text report: guards are kept until all are known, since the worst
//! comes first and what is the same for all is said once.

use std::collections::BTreeMap;
use std::collections::BTreeSet;
use std::io;
use std::io::Write;

use crate::input::Diagnostics;
use crate::judge::Authority;
use crate::judge::CautionSaid;
use crate::judge::guard_cautions;
use crate::judge::leave_outs;
use crate::report::Detail;
use crate::report::JudgedGuard;
use crate::report::Report;
use crate::report::ReportBasis;
use crate::report::Summary;
use crate::report::cautions::caution;
use crate::report::one_line;
use crate::report::palette;
use crate::report::reader;
use crate::report::text::blocks;
use crate::report::text::end::DEFERRAL;
use crate::report::text::end::ForGuards;
use crate::report::text::end::end;

use crate::report::text::told::GuardTold;
use crate::report::text::told::ReportPart;
use crate::report::text::top;
use crate::report::text::written;
use crate::report::text::written::Known;
use crate::report::text::written::SaidOfItem;
use crate::report::wrap::Lines;

/// Of rules that were not in force when a guard was built.
const OF_ANOTHER_TIME: &str = "Judged by today's rules for new work; the rules of its time may have asked \
less, which says nothing about danger.";

/// The text report.
pub struct TextReport<'a, W> {
    out: W,
    basis: ReportBasis<'a>,
    guards: Vec<Kept>,
    cautions: Numbered,
    /// What rules leave out, each once.
    left_out: Numbered,
    /// The editions by which some guard was judged since it was built in their time.
    editions: BTreeSet<String>,
    summary: Summary,
}

/// Texts, each once, in the order of their first guard.
#[derive(Default)]
struct Numbered {
    index: BTreeMap<String, usize>,
    texts: Vec<String>,
}

impl Numbered {
    fn number(&mut self, text: String) -> usize {
        if let Some(index) = self.index.get(&text) {
            return *index;
        }
        let next = self.texts.len();
        self.index.insert(text.clone(), next);
        self.texts.push(text);
        next
    }

    /// Each text with the guards for which it holds.
    fn with_guards<'t>(&'t self, of: impl Fn(usize) -> Vec<usize>) -> Vec<ForGuards<'t>> {
        let texts = self.texts.iter().enumerate();
        let texts = texts.map(|(index, says)| ForGuards {
            says,
            guards: of(index),
        });
        texts.filter(|text| !text.guards.is_empty()).collect()
    }
}

/// A guard as it will be printed, and what holds for it.
struct Kept {
    told: GuardTold,
    cautions: Vec<usize>,
    leaves_out: Vec<usize>,
}

impl<'a, W: Write> TextReport<'a, W> {
    /// Nothing is written before the end.
    pub fn new(out: W, basis: ReportBasis<'a>) -> TextReport<'a, W> {
        TextReport {
            out,
            basis,
            guards: Vec::new(),
            cautions: Numbered::default(),
            left_out: Numbered::default(),
            editions: BTreeSet::new(),
            summary: Summary::default(),
        }
    }

    fn text(&self, diagnostics: &Diagnostics) -> Lines {
        let basis = &self.basis;
        let authority = Authority::of(basis.rulesets);
        let told: Vec<GuardTold> = self.guards.iter().map(|kept| kept.told.clone()).collect();
        let for_all = for_all(&told);
        let mut lines = Lines::new(basis.width);
        top::head(&mut lines, basis, &told, self.summary);
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
        top::tonight(&mut lines, &told);
        let groups = blocks::alike(&told);
        top::wrong(&mut lines, &told, &groups);

        let mut known = Known::default();
        for (number, group) in (1..).zip(&groups) {
            let guards: Vec<&GuardTold> = group.iter().map(|index| &told[*index]).collect();
            let number = (told.len() > 1).then_some(number);
            blocks::block(&mut lines, number, &guards, authority, &for_all, &mut known);
        }
        unfinished(&mut lines, &told, &for_all, &mut known);
        good(&mut lines, &told, &for_all, &mut known);
        let holding = |of: fn(&Kept) -> &[usize]| {
            move |text: usize| -> Vec<usize> {
                let guards = self.guards.iter().enumerate();
                let holds = guards.filter(|(_, kept)| of(kept).contains(&text));
                holds.map(|(index, _)| index).collect()
            }
        };
        let cautions = self.cautions.with_guards(holding(|kept| &kept.cautions));
        let left_out = self.left_out.with_guards(holding(|kept| &kept.leaves_out));
        end(
            &mut lines,
            basis,
            &told,
            &for_all,
            &cautions,
            &left_out,
            &self.editions,
        );
        lines
    }
}

/// What most guards inherit alike is said once; a guard for which something else
/// holds says so.
fn for_all(told: &[GuardTold]) -> Vec<SaidOfItem> {
    let mut parts: Vec<SaidOfItem> = Vec::new();
    for part in told.iter().flat_map(|guard| &guard.inherited) {
        let has_some = |guard: &GuardTold| guard.inherited.iter().any(|o| o.item == part.item);
        let same = told
            .iter()
            .filter(|guard| guard.inherited.contains(part))
            .count();
        let known = parts.iter().any(|known| known.item == part.item);
        if !known && told.iter().all(has_some) && same * 2 > told.len() {
            parts.push(part.clone());
        }
    }
    parts
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
                parts.push(guard.comes_out.clone());
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
                "could not be looked at: {}",
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

/// What is still to be looked at, by name.
fn names(guard: &GuardTold) -> String {
    let names: Vec<&str> = guard.next.iter().map(|next| next.item.name()).collect();
    names.join(", ")
}

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
        for guard in guards {
            let mut parts = guard.met.clone();
            parts.extend(guard.written.clone());
            parts.extend(written::without(&guard.inherited, for_all));
            let text = known.shortly(&guard.name, &parts);
            let text = text.unwrap_or_else(|| written::joined(&parts));
            let open = names(guard);
            let alike = same.iter_mut().find(|(t, o, _, one)| {
                *t == text && *o == open && one.full == guard.full && one.holds == guard.holds
            });
            match alike {
                Some((_, _, names, _)) => names.push(guard.name.clone()),
                None => same.push((text, open, vec![guard.name.clone()], guard)),
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
        let basis = &self.basis;
        let said = guard_cautions(
            &entry.guard,
            &entry.judged,
            basis.survey,
            basis.rulesets,
            basis.options,
        );
        let left_out = leave_outs(&entry.guard, basis.survey, basis.rulesets, basis.options);
        let told = GuardTold::new(entry, basis, self.guards.len());
        // what to do tonight stands at the top already
        // what strength rests on is said in one sentence where it is worked out
        let full = basis.detail == Detail::Full;
        let said = said.iter().filter(|said| match said {
            CautionSaid::Tonight => false,
            CautionSaid::Strength(_) => full,
            CautionSaid::Deferral
            | CautionSaid::DoNotLean
            | CautionSaid::General(_)
            | CautionSaid::KeepOffUntilLookedAt
            | CautionSaid::LeadPaint(_)
            | CautionSaid::LegalWhenBuilt
            | CautionSaid::OfRuleset { .. }
            | CautionSaid::OnlyTheRailing
            | CautionSaid::Pulled(_)
            | CautionSaid::SmallBody(_) => true,
        });
        let said = said.map(|said| caution(said).into_owned());
        let said = said.chain(told.of_another_time.then(|| OF_ANOTHER_TIME.to_owned()));
        let cautions = said
            .map(|caution| self.cautions.number(one_line(&caution).into_owned()))
            .collect();
        let meets = told.part == ReportPart::Good;
        let leaves_out = left_out
            .into_iter()
            .filter(|_| meets)
            .map(|part| self.left_out.number(one_line(&part).into_owned()))
            .collect();
        self.guards.push(Kept {
            told,
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
        self.guards.sort_by_key(|kept| kept.told.rank);
        let text = self.text(diagnostics).joined();
        writeln!(self.out, "{text}")?;
        Ok(self.summary)
    }
}
