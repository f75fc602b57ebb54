//! A file's own head and rules on top of the ruleset that it extends.

use std::ops::Range;
use std::sync::Arc;

use crate::input::nearest;
use crate::rules::codes::Fault;
use crate::rules::embedded::embedded;
use crate::rules::faults::Faults;
use crate::rules::faults::instead;
use crate::rules::fields::Text;
use crate::rules::head::Head;
use crate::rules::model::Amendment;
use crate::rules::model::Asked;
use crate::rules::model::Carried;
use crate::rules::model::Caution;
use crate::rules::model::Rule;
use crate::rules::model::Ruleset;
use crate::rules::model::Status;
use crate::rules::narrowed;
use crate::rules::sources::Sources;

/// A rule of the file itself: its id with its place, and the rule where it is sound.
pub(super) struct OwnRule {
    pub(super) id: Option<(String, Range<usize>)>,
    pub(super) rule: Option<Rule>,
}

/// The ruleset; `None` where the head lacks what every file needs, or no rule remains.
pub(super) fn merge(
    head: Head<'_>,
    own: Vec<OwnRule>,
    cautions: Vec<Caution>,
    sources: Sources,
    base: Option<Ruleset>,
    faults: &mut Faults,
) -> Option<Ruleset> {
    let removed = removed(&head.remove, &own, base.as_ref(), faults);
    let file = Arc::clone(&faults.file().name);
    let mut amendments = base.as_ref().map_or(Vec::new(), |b| b.amendments.clone());
    // an edition of the program's own stands for itself; a town's file amends one
    if base.is_some() && embedded(&file).is_none() {
        let own_ids = own.iter().filter_map(|rule| rule.id.as_ref());
        amendments.extend(own_ids.map(|(id, _)| amendment(id, &file, false)));
        amendments.extend(removed.iter().map(|id| amendment(id, &file, true)));
    }
    let mut kept = base.as_ref().map_or(Vec::new(), |base| base.rules.clone());
    let mut all_cautions = base.as_ref().map_or(Vec::new(), |b| b.cautions.clone());
    if let Some(carried) = &head.carried {
        for rule in &mut kept {
            carry(carried, &mut rule.status, &mut rule.clause, &mut rule.says);
        }
        for caution in &mut all_cautions {
            let says = &mut caution.says;
            carry(carried, &mut caution.status, &mut caution.clause, says);
        }
    }
    let replaced: Vec<(String, Range<usize>)> =
        own.iter().filter_map(|rule| rule.id.clone()).collect();
    let rules = rules(kept, own, &removed);
    if let Some(base) = &base {
        for (id, at) in &replaced {
            let old = base.rules.iter().find(|rule| rule.id == *id);
            let new = rules.iter().find(|rule| rule.id == *id);
            match (old, new) {
                (Some(old), Some(new)) => narrowed::warn(old, new, base, &rules, at, faults),
                (None, Some(_)) => nearly_the_same(id, base, at, faults),
                (_, None) => {}
            }
        }
    }
    all_cautions.extend(cautions);
    let base = base.as_ref();
    let ruleset = Ruleset {
        id: head.id?.value.to_owned(),
        title: head.title?.value.to_owned(),
        country: head
            .country
            .map(|text| text.value.to_owned())
            .or(base.and_then(|base| base.country.clone())),
        edition: head.edition?.value.to_owned(),
        advisory: head
            .advisory
            .or(base.map(|base| base.advisory))
            .unwrap_or(false),
        in_force: head.in_force.or(base.and_then(|base| base.in_force)),
        covers: head
            .covers
            .or(base.map(|base| base.covers.clone()))
            .unwrap_or_default(),
        leaves_out: head
            .leaves_out
            .or(base.map(|base| base.leaves_out.clone()))
            .unwrap_or_default(),
        sources: sources.into_list(),
        rules,
        cautions: all_cautions,
        file,
        amendments,
        asked: Asked::Chosen,
    };
    (!ruleset.rules.is_empty()).then_some(ruleset)
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
            Fault::NearlyTheSameId,
            at,
            format!(
                "`{id}` replaces nothing: {} has no rule of this id, so both will be judged",
                base.id
            ),
            format!("write {near} if it is to replace that rule; keep it if it is a rule more"),
        );
    }
}

/// A clause that is taken over says so, and is trusted no more than that allows.
fn carry(carried: &Carried, status: &mut Status, clause: &mut String, says: &mut String) {
    *status = carried.status.max(*status);
    clause.push_str(", carried over");
    says.push(' ');
    says.push_str(&carried.says);
}

fn amendment(rule: &str, file: &Arc<str>, removed: bool) -> Amendment {
    Amendment {
        rule: rule.to_owned(),
        file: Arc::clone(file),
        removed,
    }
}

/// The base's rules, each replaced in its place by the file's own of its id,
/// and then the file's other rules. A faulty own rule leaves a hole: the file
/// replaces what was there, so it must not be judged by.
fn rules(base: Vec<Rule>, own: Vec<OwnRule>, removed: &[String]) -> Vec<Rule> {
    let mut own = own;
    let mut rules = Vec::new();
    for rule in base {
        let of_own = |own: &OwnRule| own.id.as_ref().is_some_and(|(id, _)| *id == rule.id);
        match own.iter().position(of_own) {
            Some(index) => rules.extend(own.remove(index).rule),
            None if removed.contains(&rule.id) => {}
            None => rules.push(rule),
        }
    }
    rules.extend(own.into_iter().filter_map(|own| own.rule));
    rules
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
                Fault::UnknownRemoved,
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
        let own = own.iter().filter_map(|own| own.id.as_ref());
        let own = own.into_iter().find(|(id, _)| *id == text.value);
        if !ids.contains(&text.value) {
            faults.error_help(
                Fault::UnknownRemoved,
                &text.at,
                format!(
                    "`{}` cannot be removed: {} has no such rule",
                    text.value, base.id
                ),
                instead(text.value, &ids),
            );
        } else if let Some((_, at)) = own {
            faults.error_also(
                Fault::Contradiction,
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
