//! A file's own head and rules on top of the ruleset that it extends.

use std::ops::Range;
use std::sync::Arc;

use crate::input::nearest;
use crate::rules::asks_nothing::was_read;
use crate::rules::codes::RuleFault;
use crate::rules::embedded::is_embedded;
use crate::rules::faults::Faults;
use crate::rules::faults::instead;
use crate::rules::fields::Text;
use crate::rules::head::Head;
use crate::rules::late::too_late;
use crate::rules::lessened::lessened;
use crate::rules::model::Amendment;
use crate::rules::model::AsksNothing;
use crate::rules::model::Carried;
use crate::rules::model::Caution;
use crate::rules::model::Condition;
use crate::rules::model::Covers;
use crate::rules::model::Rule;
use crate::rules::model::Ruleset;
use crate::rules::model::Status;
use crate::rules::narrowed;
use crate::rules::sources::Sources;
use crate::rules::unread::Unread;
use crate::rules::unread::UnreadPart;

/// What a file itself holds, beside its head and its sources.
#[derive(Default)]
pub(super) struct Own {
    pub(super) rules: Vec<OwnRule>,
    pub(super) cautions: Vec<Caution>,
    pub(super) silences: Vec<AsksNothing>,
    pub(super) unread: Vec<Unread>,
}

/// A sound rule of the file itself, with the place of its id.
pub(super) struct OwnRule {
    pub(super) rule: Rule,
    pub(super) at: Range<usize>,
}

/// The ruleset; `None` where the head lacks what every file needs, or no rule remains.
pub(super) fn merge(
    head: Head<'_>,
    own: Own,
    sources: Sources,
    base: Option<Ruleset>,
    faults: &mut Faults,
) -> Option<Ruleset> {
    let before = faults.errors();
    let taken = removed(&head.remove, &own.rules, base.as_ref(), faults);
    let slipped = faults.errors() > before;
    let file = Arc::clone(&faults.file().name);
    let extends = base.is_some();
    let mut base = base.unwrap_or_else(|| Ruleset::without_rules(&file));
    let mut own = own;
    // beside a rule that could not be read nobody knows what begins lower
    let all_read = own.unread.is_empty() && base.unread.is_empty();
    if all_read && !head.advisory.unwrap_or(base.advisory) {
        let covers = head
            .covers
            .as_ref()
            .filter(|own| !own.conditions.is_empty());
        let covered = covers.unwrap_or(&base.covers).conditions.as_slice();
        refuse_too_late(&mut own, covered, (&taken, &base.rules), faults);
    }
    base.unread
        .extend(unread(own.unread, slipped, &base.rules, faults));
    // an edition of the program's own stands for itself; a town's file amends one
    if extends && !is_embedded(&file) {
        let set = own.rules.iter().map(|own| {
            let old = base.rules.iter().find(|old| old.id == own.rule.id);
            let less = old.map_or_else(Vec::new, |old| lessened(old, &own.rule));
            amendment(&own.rule.id, &file, Amends::Sets, less)
        });
        let taken = taken.iter().map(|id| {
            let less = vec!["what it asks is asked no more".to_owned()];
            amendment(id, &file, Amends::TakesOut, less)
        });
        let amendments: Vec<Amendment> = set.chain(taken).collect();
        base.amendments.extend(amendments);
    }
    let before = base.clone();
    let places = own
        .rules
        .iter()
        .map(|own| (own.rule.id.clone(), own.at.clone()));
    let places: Vec<(String, Range<usize>)> = places.collect();
    if let Some(carried) = &head.carried {
        carry_all(carried, &mut base);
    }
    take_away(&mut base, &taken);
    put_in(&mut base, own.rules);
    base.cautions.extend(own.cautions);
    base.asks_nothing.extend(own.silences);
    for (id, at) in &places {
        warn_of_slips(id, at, &before, &base, faults);
    }
    let ruleset = Ruleset {
        id: head.id?.value.to_owned(),
        title: head.title?.value.to_owned(),
        country: head
            .country
            .map(|text| text.value.to_owned())
            .or(base.country),
        regions: head.regions.unwrap_or(base.regions),
        not_in: head.not_in.unwrap_or(base.not_in),
        not_for_houses: head.not_for_houses.unwrap_or(base.not_for_houses),
        taken_up: head.taken_up.unwrap_or_default(),
        matters: head.matters.unwrap_or(base.matters),
        edition: head.edition?.value.to_owned(),
        advisory: head.advisory.unwrap_or(base.advisory),
        in_force: head.in_force.or(base.in_force),
        covers: covers(head.covers, base.covers),
        leaves_out: head.leaves_out.unwrap_or(base.leaves_out),
        concerns: head.concerns.unwrap_or(base.concerns),
        sources: sources.into_list(),
        file,
        extends: head.extends.map(|text| text.value.to_owned()),
        ..base
    };
    // a head that was read alone says what it is without
    let alone = ruleset
        .unread
        .iter()
        .any(|unread| unread.part == UnreadPart::Whole);
    (alone || !ruleset.rules.is_empty()).then_some(ruleset)
}

/// What a file covers: words alone leave the conditions that are taken over.
fn covers(own: Option<Covers>, base: Covers) -> Covers {
    match own {
        None => base,
        Some(own) if own.conditions.is_empty() => Covers {
            says: own.says,
            conditions: base.conditions,
        },
        Some(own) => own,
    }
}

/// What of the file could not be read, with whose rules stay in force for it.
fn unread(own: Vec<Unread>, slipped: bool, base: &[Rule], faults: &Faults<'_>) -> Vec<Unread> {
    let mut own = own;
    for unread in &mut own {
        if let UnreadPart::Rule { id, in_its_place } = &mut unread.part {
            let old = base.iter().find(|rule| Some(&rule.id) == id.as_ref());
            *in_its_place = old.map(|rule| Arc::clone(&rule.file));
        }
    }
    if slipped && own.iter().all(|unread| unread.part != UnreadPart::Head) {
        own.push(Unread {
            part: UnreadPart::Head,
            hazard: None,
            at: faults.file().excerpt(0..0),
        });
    }
    own
}

/// Takes rules away, and keeps them as those that were.
fn take_away(ruleset: &mut Ruleset, ids: &[String]) {
    let rules = std::mem::take(&mut ruleset.rules);
    let (taken, kept) = rules.into_iter().partition(|rule| ids.contains(&rule.id));
    ruleset.rules = kept;
    ruleset.removed.extend::<Vec<Rule>>(taken);
}

/// Puts each rule in the place of the one of its id, and new ones at the end.
fn put_in(ruleset: &mut Ruleset, own: Vec<OwnRule>) {
    for OwnRule { rule, .. } in own {
        ruleset.removed.retain(|removed| removed.id != rule.id);
        match ruleset.rules.iter_mut().find(|old| old.id == rule.id) {
            Some(old) => *old = rule,
            None => ruleset.rules.push(rule),
        }
    }
}

/// Warns of a rule that narrows the one that it replaces, or was meant to replace one.
fn warn_of_slips(
    id: &str,
    at: &Range<usize>,
    before: &Ruleset,
    after: &Ruleset,
    faults: &mut Faults,
) {
    let of = |rules: &[Rule]| rules.iter().position(|rule| rule.id == id);
    match (of(&before.rules), of(&after.rules)) {
        (Some(old), Some(new)) => {
            let (old, new) = (&before.rules[old], &after.rules[new]);
            narrowed::warn(old, new, before, &after.rules, at, faults);
            narrowed::warn_of_zone(old, new, &after.rules, at, faults);
        }
        (None, Some(_)) => nearly_the_same(id, before, at, faults),
        (_, None) => {}
    }
}

/// A rule that stands beside one of nearly its id was most likely meant to replace it.
fn nearly_the_same(id: &str, base: &Ruleset, at: &Range<usize>, faults: &mut Faults) {
    let ids = base.rules.iter().map(|rule| rule.id.as_str());
    let letters = |id: &str| id.replace(|letter: char| letter.is_ascii_digit(), "");
    // ids that differ in a number alone are a series, and no slip
    let near = nearest(id, ids)
        .filter(|near| near.len().abs_diff(id.len()) <= 2 && letters(near) != letters(id));
    if let Some(near) = near {
        faults.warning(
            RuleFault::NearlyTheSameId,
            at,
            format!(
                "`{id}` replaces nothing: {} has no rule of this id, so both will be judged",
                base.id
            ),
            format!("write {near} if it is to replace that rule; keep it if it is a rule more"),
        );
    }
}

/// What is taken over says so, and is trusted no more than that allows. That a
/// text asks nothing is not taken over where it was not read.
fn carry_all(carried: &Carried, base: &mut Ruleset) {
    for rule in &mut base.rules {
        carry(carried, &mut rule.status, &mut rule.clause, &mut rule.says);
    }
    for caution in &mut base.cautions {
        let says = &mut caution.says;
        carry(carried, &mut caution.status, &mut caution.clause, says);
    }
    for silence in &mut base.asks_nothing {
        let clause = silence.clause.get_or_insert_default();
        carry(carried, &mut silence.status, clause, &mut silence.says);
    }
    base.asks_nothing.retain(|silence| was_read(silence.status));
}

/// A clause that is taken over says so, and is trusted no more than that allows.
fn carry(carried: &Carried, status: &mut Status, clause: &mut String, says: &mut String) {
    *status = carried.status.max(*status);
    if !clause.is_empty() {
        clause.push_str(", ");
    }
    clause.push_str("carried over");
    says.push(' ');
    says.push_str(&carried.says);
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum Amends {
    Sets,
    TakesOut,
}

fn amendment(rule: &str, file: &Arc<str>, amends: Amends, asks_less: Vec<String>) -> Amendment {
    Amendment {
        rule: rule.to_owned(),
        file: Arc::clone(file),
        removed: amends == Amends::TakesOut,
        asks_less,
    }
}

/// Rules that begin where nobody begins, with none beside them that begins lower, count as
/// not read: what they would have replaced stays in force.
fn refuse_too_late(
    own: &mut Own,
    covered: &[Condition],
    (taken, base): (&[String], &[Rule]),
    faults: &mut Faults,
) {
    let rules = std::mem::take(&mut own.rules);
    let replaced =
        |old: &&Rule| !taken.contains(&old.id) && rules.iter().all(|own| own.rule.id != old.id);
    let beside: Vec<&Rule> = base.iter().filter(replaced).collect();
    let late: Vec<Option<String>> = rules
        .iter()
        .map(|this| {
            let own = rules.iter().map(|own| &own.rule);
            let others = beside.iter().copied().chain(own);
            let others = others.filter(|other| other.id != this.rule.id);
            too_late(&this.rule, covered, others)
        })
        .collect();
    for (rule, late) in rules.into_iter().zip(late) {
        let Some(says) = late else {
            own.rules.push(rule);
            continue;
        };
        let id = rule.rule.id;
        faults.error_help(
            RuleFault::Implausible,
            &rule.at,
            format!("`{id}` begins later than any text does ({says}), and no other rule asks the same from lower down"),
            "look at the number and its unit again: 30 ft is not 30 in; a rule that asks for more higher up stands beside one that begins lower",
        );
        own.unread.push(Unread {
            part: UnreadPart::Rule {
                id: Some(id),
                in_its_place: None,
            },
            hazard: Some(rule.rule.hazard),
            at: faults.file().excerpt(rule.at),
        });
    }
}

/// The ids of rules to take away; one that the base does not have is a fault.
fn removed(
    remove: &[Text<'_>],
    own: &[OwnRule],
    base: Option<&Ruleset>,
    faults: &mut Faults,
) -> Vec<String> {
    let mut removed = Vec::new();
    for text in remove {
        let Some(base) = base else {
            faults.error_help(
                RuleFault::UnknownRemoved,
                &text.at,
                format!(
                    "`{}` cannot be removed: the file extends no ruleset",
                    text.value
                ),
                "add extends = \"…\" with the ruleset that it amends, or take remove away",
            );
            continue;
        };
        let ids: Vec<&str> = base.rules.iter().map(|rule| rule.id.as_str()).collect();
        let own = own.iter().find(|own| own.rule.id == text.value);
        if !ids.contains(&text.value) {
            faults.error_help(
                RuleFault::UnknownRemoved,
                &text.at,
                format!(
                    "`{}` cannot be removed: {} has no such rule",
                    text.value, base.id
                ),
                instead(text.value, &ids),
            );
        } else if let Some(OwnRule { at, .. }) = own {
            faults.error_also(
                RuleFault::Contradiction,
                &text.at,
                format!("`{}` is removed and written again", text.value),
                at,
                "written here; that alone replaces it",
            );
        } else {
            removed.push(text.value.to_owned());
        }
    }
    removed
}
