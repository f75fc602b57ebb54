//! A guard as it was before a change, and what of its findings the change leaves alone.

use std::mem::discriminant;
use std::sync::Arc;

use crate::items::Item;
use crate::items::ItemSet;
use crate::items::StateWord;
use crate::judge::Finding;
use crate::judge::Reason;
use crate::judge::presence::Presence;
use crate::judge::presence::presence;
use crate::rules::Ruleset;
use crate::survey::Guard;
use crate::survey::Observation;

/// A guard before a change, judged: what rests on readings that the change leaves alone
/// need not be worked out anew.
pub(super) struct Before<'g> {
    pub(super) findings: &'g [Finding<'g>],
    /// Items of which a reading came or went.
    changed: ItemSet,
    /// Where the observations that stayed stand now.
    moved: Vec<Option<usize>>,
    /// Whether there is a guard as there was one, and a plan where there was a plan.
    is_of_its_kind: bool,
}

impl<'g> Before<'g> {
    /// A change leaves the order of what stays as it was; where it did not, more counts as
    /// changed than is.
    pub(super) fn of(guard: &Guard, findings: &'g [Finding<'g>], now: &Guard) -> Before<'g> {
        let mut changed = ItemSet::EMPTY;
        let mut moved = Vec::with_capacity(guard.observations.len());
        let mut at = 0;
        for observation in &guard.observations {
            let next = now.observations.get(at);
            if next.is_some_and(|next| is_the_same(next, observation)) {
                moved.push(Some(at));
                at += 1;
            } else {
                moved.push(None);
                changed.insert(observation.item);
            }
        }
        for new in &now.observations[at..] {
            changed.insert(new.item);
        }
        let inherited = guard.inherited.observations.len();
        if !Arc::ptr_eq(&guard.inherited, &now.inherited) {
            let both = [&guard.inherited, &now.inherited].into_iter();
            changed = both
                .flat_map(|inherited| inherited.observations.iter())
                .fold(changed, |changed, observation| {
                    changed.with(observation.item)
                });
        }
        moved.extend((0..inherited).map(|index| Some(now.observations.len() + index)));
        let kind = |guard: &Guard| {
            let mut states = guard.of(Item::State);
            let proposed = states.any(|(_, one)| one.word() == Some(StateWord::Proposed));
            (discriminant::<Presence>(&presence(guard)), proposed)
        };
        Before {
            findings,
            changed,
            moved,
            is_of_its_kind: kind(guard) == kind(now),
        }
    }

    /// Whether all readings of these items are as they were.
    pub(super) fn leaves(&self, items: ItemSet) -> bool {
        !self.changed.intersects(items)
    }

    /// Whether a ruleset that covers the guard did so before, and decides as it did.
    pub(super) fn stays_under(&self, ruleset: &Ruleset) -> bool {
        let mut covers = ruleset.covers.conditions.iter();
        self.is_of_its_kind
            && !self.changed.contains(Item::Built)
            && !covers.any(|condition| self.changed.contains(condition.item))
    }

    /// What a rule found, where the change leaves all of it as it was.
    pub(super) fn taken_over<'r>(&self, findings: &[Finding<'r>]) -> Option<Vec<Finding<'r>>> {
        let own: Option<Vec<Finding<'r>>> = findings
            .iter()
            .map(|finding| self.as_now(finding))
            .collect();
        own.filter(|own| !own.is_empty())
    }

    /// The finding with its readings where they stand now.
    fn as_now<'r>(&self, finding: &Finding<'r>) -> Option<Finding<'r>> {
        let stays = |reason: &Reason<'r>| {
            // what speaks of an observation, and what other rules did to it, is worked out anew
            reason.observation().is_none() && *reason != Reason::LiftedFromMemory
        };
        let untouched = finding.chain.is_none()
            && self.leaves(finding.looked_at)
            && finding.reasons.iter().all(stays);
        if !untouched {
            return None;
        }
        let mut now = finding.clone();
        for index in now.readings.iter_mut().chain(&mut now.also_readings) {
            *index = self.moved.get(*index).copied().flatten()?;
        }
        Some(now)
    }
}

/// Whether it is the same row, not only one like it.
fn is_the_same(one: &Observation, other: &Observation) -> bool {
    let same_reading = match (&one.reading, &other.reading) {
        (Some(one), Some(other)) => Arc::ptr_eq(one, other),
        (None, None) => true,
        (Some(_), None) | (None, Some(_)) => false,
    };
    one.item == other.item
        && same_reading
        && Arc::ptr_eq(&one.written, &other.written)
        && Arc::ptr_eq(&one.note, &other.note)
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeMap;

    use super::*;
    use crate::judge::Judged;
    use crate::judge::Options;
    use crate::judge::from_csv;
    use crate::judge::judge_by_findings;
    use crate::rules::embedded_ids;
    use crate::rules::load_to_judge;
    use crate::survey::SurveyFacts;

    /// What may be written, by item; of each item that is written once one is chosen.
    const POOL: &str = "\
place,stair,\n\
place,deck,\n\
place,window,\n\
place,balcony,\n\
use,dwelling,\n\
use,workplace,\n\
children,14 months,\n\
children,none,\n\
built,1974,\n\
built,2016,\n\
drop,9 ft,\n\
drop,29 in,\n\
drop,30 in ± 1 in,\n\
drop,over 30 in,\n\
ground fall,90 mm,\n\
risers,14,\n\
risers,3,\n\
sill height,34 in,\n\
sill above ground,11 ft,\n\
height,36 in,by eye\n\
height,37 in ± 1 in,34 in at the end\n\
height,35 15/16 in,\n\
height,44 in,\n\
opening,3 7/8 in,a 4 in ball passes\n\
opening,4 in ball stops everywhere,\n\
opening,5 in at 20 in,\n\
opening,90 mm ± 20 mm,\n\
opening,none,\n\
opening,3/8 in,\n\
bottom gap,3 in,\n\
bottom gap,2 in ball stops,\n\
end gap,2 in,\n\
edge gap,6 in,\n\
infill,balusters,\n\
infill,cables,\n\
infill,glass,\n\
infill,horizontal bars,\n\
baluster spacing,5 in,\n\
baluster section,1 1/2 x 1 1/2 in,\n\
level bar spacing,6 in,\n\
foothold,300 mm high 40 mm deep,\n\
foothold,none,\n\
thing to climb,none,\n\
infill loose,no,\n\
infill loose,missing,\n\
moves when pushed,no,\n\
moves when pushed,a lot,\n\
condition,none seen,\n\
condition,rot,\n\
post fastening,through bolts,\n\
post fastening,nails,\n\
fastened to,joist,\n\
post section,3 1/2 x 3 1/2 in,\n\
post spacing,6 ft,\n\
handrail height,35 in,\n\
handrail,separate,\n\
stair triangle,rise 7 1/2 going 10 lift 2 in,\n\
stair triangle,none,\n\
riser opening,4 in,\n\
riser opening,none,\n\
openings checked,some,\n\
guard,present,\n\
guard,none,\n\
guard,not reached,\n\
state,altered,\n\
state,proposed,\n\
state,existing,\n\
dwellings in building,1,\n\
top of stairs gate,none,\n";

    /// Numbers that look drawn by lot and are the same each time (a linear congruential
    /// generator, the constants of Numerical Recipes).
    struct Lot(u32);

    impl Lot {
        fn below(&mut self, end: usize) -> usize {
            self.0 = self.0.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
            usize::try_from(self.0 >> 8).unwrap_or(0) % end
        }
    }

    /// Some of the pool, in the order of the items.
    fn drawn(pool: &BTreeMap<Item, Vec<Observation>>, lot: &mut Lot) -> Vec<Observation> {
        let mut drawn: Vec<Observation> = Vec::new();
        for of_item in pool.values() {
            for _ in 0..[0, 0, 1, 1, 1, 2][lot.below(6)] {
                drawn.push(of_item[lot.below(of_item.len())].clone());
            }
        }
        // a note of a row in a table stands beside each of its cells
        for _ in 0..lot.below(3).min(drawn.len()) {
            let note = Arc::clone(&drawn[lot.below(drawn.len())].note);
            let beside = lot.below(drawn.len());
            drawn[beside].note = note;
        }
        drawn
    }

    fn in_full(judged: &Judged<'_>) -> Vec<String> {
        let findings = judged.findings.iter();
        findings
            .map(|of| {
                format!(
                    "{} {:?} {:?} {:?} {} {} {} {:?} {:?} {:?} {:?} {:?} {:?} {:?}",
                    of.rule.id,
                    of.item,
                    of.verdict,
                    of.reading_alone,
                    of.partial,
                    of.binding,
                    of.from_memory,
                    of.measured,
                    of.limit,
                    of.margin,
                    of.uncertainty,
                    of.readings,
                    of.also_readings,
                    of.reasons,
                )
            })
            .collect()
    }

    #[test]
    fn what_a_change_leaves_alone_is_what_judging_anew_would_find() {
        let mut pool: BTreeMap<Item, Vec<Observation>> = BTreeMap::new();
        // a guard for each, since of some items only one can hold
        let rows = POOL.lines().enumerate();
        let rows: String = rows.map(|(at, row)| format!("g{at},{row}\n")).collect();
        let guards = from_csv::guards(&format!("guard,item,reading,note\n{rows}"));
        for observation in guards.iter().flat_map(|guard| &guard.observations) {
            let known = pool.entry(observation.item).or_default();
            known.push(observation.clone());
        }
        let facts = SurveyFacts::default();
        let options = Options::default();
        let like = &guards[0];
        let mut lot = Lot(1_729);
        let mut taken_over = 0;
        let ids: Vec<&str> = embedded_ids().collect();
        for number in 0..GUARDS {
            let rulesets: Vec<Ruleset> = [ids[number % ids.len()], "small-child-advice"]
                .into_iter()
                .map(|id| {
                    load_to_judge(id, &|_| None)
                        .ruleset
                        .expect("it is embedded")
                })
                .collect();
            let before = Guard {
                observations: drawn(&pool, &mut lot),
                ..like.clone()
            };
            let judged = judge_by_findings(&before, None, &facts, &rulesets, options);
            for _ in 0..8 {
                let mut now = before.clone();
                // what a remedy does: readings go, others come behind
                for _ in 0..lot.below(3) {
                    if !now.observations.is_empty() {
                        now.observations.remove(lot.below(now.observations.len()));
                    }
                }
                let new = drawn(&pool, &mut lot);
                now.observations.extend(new.into_iter().take(lot.below(4)));
                let anew = judge_by_findings(&now, None, &facts, &rulesets, options);
                let known = Some((&before, &judged));
                let changed = judge_by_findings(&now, known, &facts, &rulesets, options);
                let written: Vec<String> = now
                    .observations
                    .iter()
                    .map(|one| format!("{},{},{}", one.item, one.written, one.note))
                    .collect();
                let id = &rulesets[0].id;
                let (changed, anew) = (in_full(&changed), in_full(&anew));
                assert_eq!(changed.len(), anew.len(), "{id}: {written:#?}");
                for (changed, anew) in changed.iter().zip(&anew) {
                    assert_eq!(changed, anew, "{id}: {written:#?}");
                }
                let change = Before::of(&before, &judged.findings, &now);
                let mut findings = judged.findings.iter().map(std::slice::from_ref);
                taken_over += findings
                    .by_ref()
                    .filter(|one| change.taken_over(one).is_some())
                    .count();
            }
        }
        assert!(taken_over > 10 * GUARDS, "{taken_over}");
    }

    /// Each with eight changes.
    const GUARDS: usize = 1_000;
}
