//! What is said of two rounds, before anybody decides how it looks.

use std::collections::BTreeMap;

use crate::compare::ChangeFound;
use crate::compare::ChangeKind;
use crate::compare::ChangeNote;
use crate::compare::Compared;
use crate::compare::GuardPair;
use crate::items::Item;
use crate::items::Verdict;
use crate::judge::Authority;
use crate::judge::Finding;
use crate::quantities::Length;
use crate::report::ReportBasis;
use crate::report::advice;
use crate::report::conversation::judged_by_titles;
use crate::report::one_line;
use crate::report::reader;
use crate::report::words;
use crate::report::words::several;
use crate::rules::Ruleset;
use crate::survey::Guard;
use crate::survey::SurveyFacts;

/// A comparison as it will be written.
pub(super) struct ComparisonTold {
    /// Property and the days of both rounds.
    pub(super) head: String,
    /// One sentence of counts.
    pub(super) counts: String,
    /// By what both rounds are judged, and where the first one named something else.
    pub(super) judged_by: String,
    pub(super) authority: Authority,
    /// How many things became what, of what decides and of advice beside it.
    pub(super) by_kind: Vec<(ChangeKind, usize, usize)>,
    /// Worst first.
    pub(super) changes: Vec<ChangeTold>,
    /// Guards at which nothing changed and nothing falls short.
    pub(super) unchanged: Vec<String>,
    /// Guards that nobody could enter, with why, and how they came out before.
    pub(super) not_entered: Vec<(String, String, Verdict)>,
    /// Guards of one round alone, as questions.
    pub(super) questions: Vec<String>,
    /// Guards of the first round alone, and of the second alone.
    pub(super) missing: Vec<String>,
    pub(super) appeared: Vec<(String, Verdict)>,
    pub(super) compared: usize,
}

/// What stands under one heading.
pub(super) struct PartTold<'t> {
    pub(super) heading: &'static str,
    pub(super) mark: Verdict,
    /// Building, unit and name of each guard, with what is said of it.
    pub(super) guards: Vec<(&'t str, Vec<&'t ChangeTold>)>,
}

fn by_guard<'t>(
    changes: impl Iterator<Item = &'t ChangeTold>,
) -> Vec<(&'t str, Vec<&'t ChangeTold>)> {
    let mut guards: Vec<(&str, Vec<&ChangeTold>)> = Vec::new();
    let mut known: BTreeMap<&str, usize> = BTreeMap::new();
    for change in changes {
        let at = *known.entry(&change.name).or_insert_with(|| {
            guards.push((&change.name, Vec::new()));
            guards.len() - 1
        });
        guards[at].1.push(change);
    }
    guards
}

/// One thing of one guard.
pub(super) struct ChangeTold {
    pub(super) building: String,
    pub(super) unit: String,
    pub(super) guard: String,
    /// Building, unit and name.
    pub(super) name: String,
    pub(super) item: Item,
    pub(super) what: String,
    pub(super) kind: ChangeKind,
    pub(super) decides: bool,
    /// `rules`, `advice`, `rules and advice`, `danger`.
    pub(super) by: &'static str,
    pub(super) before: String,
    pub(super) after: String,
    pub(super) asked: String,
    pub(super) clause: String,
    pub(super) note: String,
    /// How far it moved to the good side.
    pub(super) moved: Option<Length>,
    /// `before 33 1/2 in, now 35 in; asked: 36 in or more; 1 in too low`
    pub(super) says: String,
}

impl ChangeTold {
    /// Who asks; of a danger, what it was before.
    pub(super) fn by(&self) -> String {
        if self.is_danger_now() {
            format!("{}, {}", self.by, self.kind.name())
        } else {
            self.by.to_owned()
        }
    }

    /// A danger that is there now.
    fn is_danger_now(&self) -> bool {
        self.by == DANGER && falls_short(self.kind)
    }
}

impl ComparisonTold {
    pub(super) fn new(
        basis: &ReportBasis<'_>,
        before: &SurveyFacts,
        compared: &Compared<'_, '_>,
    ) -> ComparisonTold {
        let authority = Authority::of(basis.rulesets);
        let mut changes: Vec<ChangeTold> = Vec::new();
        let mut unchanged = Vec::new();
        let mut not_entered = Vec::new();
        for pair in &compared.pairs {
            let name = reader::name(&pair.after.guard);
            if pair.not_entered {
                not_entered.push((name, notes(&pair.after.guard), pair.before.judged.verdict));
                continue;
            }
            if pair.changes.is_empty() {
                unchanged.push(name);
            }
            changes.extend(of_pair(pair, authority));
        }
        changes.sort_by_key(|change| (change.kind, !change.decides));
        let by_kind = ChangeKind::ALL.map(|kind| {
            let of = |decides: bool| {
                let same = |change: &&ChangeTold| change.kind == kind && change.decides == decides;
                changes.iter().filter(same).count()
            };
            (kind, of(true), of(false))
        });
        let appeared = compared.appeared.iter();
        let appeared = appeared.map(|one| (reader::name(&one.guard), one.judged.verdict));
        let missing = compared
            .missing
            .iter()
            .map(|one| reader::name(&one.of.guard));
        let told = ComparisonTold {
            head: head(before, basis),
            counts: String::new(),
            judged_by: judged_by(before, basis),
            authority,
            by_kind: by_kind.to_vec(),
            unchanged,
            not_entered,
            questions: questions(compared),
            missing: missing.collect(),
            appeared: appeared.collect(),
            compared: compared.pairs.len(),
            changes,
        };
        ComparisonTold {
            counts: counts(&told),
            ..told
        }
    }

    /// What is told under headings of its own: the dangers there are, then each kind of
    /// change, worst first; by guard, the worst guard first.
    pub(super) fn parts(&self) -> Vec<PartTold<'_>> {
        let dangers = self.changes.iter().filter(|change| change.is_danger_now());
        let mut parts = vec![PartTold {
            heading: "Danger",
            mark: Verdict::FallsShort,
            guards: by_guard(dangers),
        }];
        parts.extend(ChangeKind::ALL.map(|kind| {
            let of = self
                .changes
                .iter()
                .filter(move |change| change.kind == kind);
            PartTold {
                heading: heading(kind),
                mark: mark_of(kind),
                guards: by_guard(of.filter(|change| !change.is_danger_now())),
            }
        }));
        parts.retain(|part| !part.guards.is_empty());
        parts
    }
}

/// `the brick house · measured 2026-03-14, and again 2027-03-20`
fn head(before: &SurveyFacts, basis: &ReportBasis<'_>) -> String {
    let after = basis.survey;
    let list = |several: &[String]| {
        let each: Vec<_> = several.iter().map(|text| one_line(text)).collect();
        if each.is_empty() {
            "on a day not written down".to_owned()
        } else {
            words::shortened(&each.join("; "))
        }
    };
    let mut parts = Vec::new();
    let property = after.property.as_deref().or(before.property.as_deref());
    parts.extend(property.map(|name| words::shortened(&one_line(name))));
    let (first, second) = (list(&before.dates), list(&after.dates));
    parts.push(if first == second {
        format!("both rounds measured {first}")
    } else {
        format!("measured {first}, and again {second}")
    });
    parts.push(format!("report of {}", basis.today));
    parts.join(" · ")
}

/// `Both rounds are judged alike. Building rules: …`
fn judged_by(before: &SurveyFacts, basis: &ReportBasis<'_>) -> String {
    let by = judged_by_titles(basis.rulesets);
    let left = before.rules.iter().filter(|rules| {
        let named = basis
            .survey
            .rules
            .iter()
            .any(|other| other.name == rules.name);
        let same = |ruleset: &Ruleset| ruleset.id == rules.name;
        !named && !basis.rulesets.iter().any(same)
    });
    let left: Vec<String> = left
        .map(|rules| words::shortened(&one_line(&rules.name)))
        .collect();
    if left.is_empty() {
        return format!("Both rounds are judged alike. {by}");
    }
    format!(
        "Both rounds are judged alike, and not by {}, which the first one named. {by}",
        reader::listed(&left)
    )
}

/// What speaks of a danger.
const DANGER: &str = "danger";

/// The mark of what became of it.
pub(super) const fn mark_of(kind: ChangeKind) -> Verdict {
    match kind {
        ChangeKind::Worse | ChangeKind::New | ChangeKind::StillShort => Verdict::FallsShort,
        ChangeKind::NoLongerMeasured => Verdict::NotMeasured,
        ChangeKind::Undecided => Verdict::TooClose,
        ChangeKind::Mended => Verdict::Meets,
    }
}

/// What a reader calls what became of it.
const fn heading(kind: ChangeKind) -> &'static str {
    match kind {
        ChangeKind::Worse => "Worse than before",
        ChangeKind::New => "New",
        ChangeKind::StillShort => "Still short",
        ChangeKind::NoLongerMeasured => "No longer measured",
        ChangeKind::Undecided => "Not settled",
        ChangeKind::Mended => "Mended",
    }
}

fn counts(told: &ComparisonTold) -> String {
    let mut parts: Vec<String> = Vec::new();
    for (kind, decides, advice) in &told.by_kind {
        if decides + advice == 0 {
            continue;
        }
        let all = decides + advice;
        parts.push(match (told.authority, advice) {
            (Authority::Law, advice) if *advice > 0 => {
                format!("{all} {} ({advice} of advice)", kind.name())
            }
            (Authority::Law | Authority::Guidance, _) => format!("{all} {}", kind.name()),
        });
    }
    if parts.is_empty() {
        parts.push("nothing falls short, and nothing changed".to_owned());
    }
    let mut text = String::new();
    let in_danger = by_guard(told.changes.iter().filter(|change| change.is_danger_now()));
    if !in_danger.is_empty() {
        let railings = several(in_danger.len(), "railing", "railings");
        text.push_str(&format!("DANGER at {railings}. "));
    }
    text.push_str(&format!(
        "{} compared. Of things measured: {}.",
        several(told.compared, "railing", "railings"),
        parts.join(", ")
    ));
    if !told.not_entered.is_empty() {
        let railings = several(told.not_entered.len(), "railing was", "railings were");
        text.push_str(&format!(" {railings} not entered."));
    }
    let alone = told.missing.len() + told.appeared.len();
    if alone > 0 {
        let railings = several(alone, "railing stands", "railings stand");
        text.push_str(&format!(" {railings} in one round alone."));
    }
    text
}

/// The notes of a guard that nobody could look at.
fn notes(guard: &Guard) -> String {
    let readings = guard.of(Item::Guard).filter(|(_, o)| !o.note.is_empty());
    let notes: Vec<_> = readings.map(|(_, o)| one_line(&o.note)).collect();
    notes.join("; ")
}

fn questions(compared: &Compared<'_, '_>) -> Vec<String> {
    let mut asked = Vec::new();
    for missing in &compared.missing {
        let name = reader::name(&missing.of.guard);
        asked.push(match missing.perhaps {
            Some(other) => format!(
                "{name} stands in the first round alone, and {} in the second alone. Are they the same? \
Then give both one name.",
                reader::name(&other.guard)
            ),
            None => format!(
                "{name} stands in the first round alone: was it taken away, renamed, or left out?"
            ),
        });
    }
    for one in &compared.appeared {
        let known = compared.missing.iter().any(|missing| {
            missing
                .perhaps
                .is_some_and(|other| std::ptr::eq(other, *one))
        });
        if !known {
            let name = reader::name(&one.guard);
            let comes_out = reader::verdict(one.judged.verdict);
            asked.push(format!(
                "{name} stands in the second round alone ({comes_out}): is it new, or was it renamed?"
            ));
        }
    }
    asked
}

/// The changes of one guard; those of one item that became the same are one.
fn of_pair(pair: &GuardPair<'_, '_>, authority: Authority) -> Vec<ChangeTold> {
    let mut told: Vec<ChangeTold> = Vec::new();
    let mut groups: Vec<Vec<&ChangeFound<'_, '_>>> = Vec::new();
    for change in &pair.changes {
        let danger = |one: &ChangeFound<'_, '_>| one.note == Some(ChangeNote::Danger);
        let like = |group: &&mut Vec<&ChangeFound<'_, '_>>| {
            group.first().is_some_and(|first| {
                first.item == change.item
                    && first.kind == change.kind
                    && danger(first) == danger(change)
            })
        };
        match groups.iter_mut().find(like) {
            Some(group) => group.push(change),
            None => groups.push(vec![change]),
        }
    }
    // advice that says the same as a danger is not said again
    let called: Vec<_> = groups
        .iter()
        .flat_map(|group| group.first())
        .filter(|change| change.note == Some(ChangeNote::Danger))
        .map(|change| (change.item, falls_short(change.kind)))
        .collect();
    groups.retain(|group| {
        group.first().is_some_and(|change| {
            change.note == Some(ChangeNote::Danger)
                || change.decides && authority == Authority::Law
                || !called.contains(&(change.item, falls_short(change.kind)))
        })
    });
    for group in groups {
        told.extend(of_group(pair, &group, authority));
    }
    told
}

/// Whether it falls short now, before or not.
const fn falls_short(kind: ChangeKind) -> bool {
    match kind {
        ChangeKind::Worse | ChangeKind::New | ChangeKind::StillShort => true,
        ChangeKind::NoLongerMeasured | ChangeKind::Undecided | ChangeKind::Mended => false,
    }
}

fn of_group(
    pair: &GuardPair<'_, '_>,
    group: &[&ChangeFound<'_, '_>],
    authority: Authority,
) -> Option<ChangeTold> {
    // what decides speaks, and of that the strictest
    let margin = |change: &&&ChangeFound<'_, '_>| {
        let finding = change.after.or(change.before);
        (!change.decides, finding.and_then(|finding| finding.margin))
    };
    let leads = group.iter().min_by_key(margin)?;
    let guard = &pair.after.guard;
    let finding = leads.after.or(leads.before);
    let decides = group.iter().any(|change| change.decides);
    let advises = group.iter().any(|change| !change.decides);
    let by = match (
        leads.note == Some(ChangeNote::Danger),
        authority,
        decides,
        advises,
    ) {
        (true, _, _, _) => DANGER,
        (_, Authority::Guidance, _, _) | (_, Authority::Law, false, _) => "advice",
        (_, Authority::Law, true, true) => "rules and advice",
        (_, Authority::Law, true, false) => "rules",
    };
    let mut clauses: Vec<String> = Vec::new();
    for change in group {
        let finding = change.after.or(change.before);
        let clause = finding.map(|finding| one_line(&finding.rule.clause).into_owned());
        if let Some(clause) = clause.filter(|clause| !clauses.contains(clause)) {
            clauses.push(clause);
        }
    }
    let before = written(leads.before, &pair.before.guard, leads.item);
    let after = written(leads.after, guard, leads.item);
    let asked = finding.map_or_else(String::new, reader::asked);
    let note = note(leads);
    let says = says(leads, &before, &after, &asked, &note);
    Some(ChangeTold {
        building: one_line(&guard.building).into_owned(),
        unit: one_line(&guard.unit).into_owned(),
        guard: one_line(&guard.name).into_owned(),
        name: reader::name(guard),
        item: leads.item,
        what: reader::title(leads.item),
        kind: leads.kind,
        decides,
        by,
        before,
        after,
        asked,
        clause: clauses.join("; "),
        note,
        moved: leads.moved,
        says,
    })
}

/// What was written: of the deciding reading, else all of them.
fn written(finding: Option<&Finding<'_>>, guard: &Guard, item: Item) -> String {
    if let Some(measured) = finding.and_then(|finding| finding.measured.as_ref()) {
        return one_line(&measured.written).into_owned();
    }
    let mut all: Vec<String> = Vec::new();
    for (_, observation) in guard.of(item) {
        let reading = reader::reading(observation);
        if !all.contains(&reading) {
            all.push(reading);
        }
    }
    all.join("; ")
}

/// What is said where nothing moved.
const AS_BEFORE: &str = "as before";

fn note(change: &ChangeFound<'_, '_>) -> String {
    let by = |change: &ChangeFound<'_, '_>| {
        let moved = change.moved?.magnitude();
        let finding = change.after.or(change.before)?;
        Some(advice::amount(finding, moved))
    };
    match change.note {
        None => match (change.kind, by(change)) {
            (ChangeKind::Worse, Some(by)) => format!("worse by {by}"),
            (ChangeKind::StillShort, _) if change.moved == Some(Length::ZERO) => {
                AS_BEFORE.to_owned()
            }
            (ChangeKind::StillShort, Some(_)) => {
                "the readings differ by less than the tape's doubt: no change".to_owned()
            }
            (
                ChangeKind::Worse
                | ChangeKind::New
                | ChangeKind::StillShort
                | ChangeKind::NoLongerMeasured
                | ChangeKind::Undecided
                | ChangeKind::Mended,
                _,
            ) => String::new(),
        },
        Some(ChangeNote::Better) => by(change).map_or_else(
            || "better than before, and not enough".to_owned(),
            |by| format!("better by {by}, and not enough"),
        ),
        Some(ChangeNote::WithinDoubt) => {
            "the readings differ by less than the tape's doubt: measure again".to_owned()
        }
        Some(ChangeNote::FewerPlaces) => {
            "read in fewer places than before: measure again where it was short".to_owned()
        }
        Some(ChangeNote::ElsewhereNow) => {
            "read elsewhere than before: measure again where it was short".to_owned()
        }
        Some(ChangeNote::OnlyDrawn) => "as drawn: nobody has measured what was built".to_owned(),
        Some(ChangeNote::NotAskedNow) => {
            "by what is written now no rule asks for it: see whether that is so".to_owned()
        }
        Some(ChangeNote::NotSettledNow) => "too near to tell, or a rule is unclear".to_owned(),
        Some(ChangeNote::OnlySeen) => {
            "no shortfall found by what was seen; nobody tested it, an engineer decides".to_owned()
        }
        Some(ChangeNote::Danger) => {
            let seen = change.dangers.iter().flatten().next();
            seen.map_or_else(String::new, |seen| match change.kind {
                ChangeKind::Mended => format!("was: {}", seen.danger.says),
                ChangeKind::Worse
                | ChangeKind::New
                | ChangeKind::StillShort
                | ChangeKind::NoLongerMeasured
                | ChangeKind::Undecided => format!("{}: {}", seen.danger.act, seen.danger.says),
            })
        }
    }
}

fn says(
    change: &ChangeFound<'_, '_>,
    before: &str,
    after: &str,
    asked: &str,
    note: &str,
) -> String {
    let shown = |text: &str| {
        if text.is_empty() {
            "nothing written".to_owned()
        } else {
            text.to_owned()
        }
    };
    let mut parts = Vec::new();
    if before == after && !after.is_empty() {
        parts.push(format!("{after} as before"));
    } else {
        parts.push(format!("before {}, now {}", shown(before), shown(after)));
    }
    if !asked.is_empty() {
        parts.push(format!("asked: {asked}"));
    }
    let short = change
        .after
        .filter(|finding| finding.verdict == Verdict::FallsShort);
    if let Some(finding) = short
        && let Some(amount) = reader::shortfall(finding)
    {
        let operator = finding.limit.as_ref().map(|limit| limit.operator);
        parts.push(format!("{amount} {}", reader::way(finding.item, operator)));
    }
    if !note.is_empty() && note != AS_BEFORE {
        parts.push(note.to_owned());
    }
    parts.join("; ")
}
