//! What to do tonight, for all guards together.

use crate::report::told::GuardTold;

/// An act with the guards that it is for.
pub(in crate::report) struct ActOfAll<'t> {
    /// As it is called out; empty where it is no danger.
    pub(in crate::report) call: &'static str,
    pub(in crate::report) does: &'static str,
    /// Each guard's place in the report, and what was seen there.
    pub(in crate::report) guards: Vec<(usize, &'t str)>,
}

impl ActOfAll<'_> {
    pub(in crate::report) fn names(&self, told: &[GuardTold]) -> Vec<String> {
        let guards = self.guards.iter();
        guards.map(|(index, _)| told[*index].name.clone()).collect()
    }
}

/// One act for several guards is said once; dangers come first.
pub(in crate::report) fn acts_of_all(told: &[GuardTold]) -> Vec<ActOfAll<'_>> {
    let mut acts: Vec<ActOfAll<'_>> = Vec::new();
    for (index, guard) in told.iter().enumerate() {
        for act in &guard.tonight {
            let one = (index, act.why.as_str());
            let known = acts
                .iter_mut()
                .find(|other| (other.call, other.does) == (act.call, act.does));
            match known {
                Some(known) => known.guards.push(one),
                None => acts.push(ActOfAll {
                    call: act.call,
                    does: act.does,
                    guards: vec![one],
                }),
            }
        }
    }
    acts.sort_by_key(|act| act.call.is_empty());
    acts
}
