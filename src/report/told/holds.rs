//! What matters of what holds a guard up.

use crate::items::Verdict;
use crate::judge::Finding;
use crate::report::JudgedGuard;
use crate::report::acts;
use crate::report::strength;

/// What matters of a guard's load paths: the weakest link, what is seen wrong, what a
/// tradesman would do, what to look at next, each path for itself. What the paragraph of
/// what falls short has said, and what is not to be looked at before the posts hold, is
/// left out.
pub(in crate::report) fn what_matters(entry: &JudgedGuard<'_>) -> Vec<Vec<String>> {
    let waits = acts::waits_for_the_posts(entry);
    let applies = |finding: &&Finding<'_>| finding.verdict != Verdict::DoesNotApply;
    let chains = entry.judged.findings.iter().filter(applies);
    chains
        .filter_map(|finding| Some((finding, finding.chain.as_deref()?)))
        .filter(|(_, chain)| chain.written)
        .map(|(finding, chain)| {
            let ruled_out = strength::ruled_out(chain);
            // where it falls short the first of them stands as what to do
            let said = finding.verdict == Verdict::FallsShort && finding.counts();
            let mends = if said {
                strength::further_mends(chain)
            } else {
                strength::mends(chain)
            };
            let weakest = strength::weakest(chain);
            // what is ruled out needs no number before what to do about it
            let (first, then) = match ruled_out {
                Some(_) => (mends, weakest),
                None => (weakest, mends),
            };
            let sentences = [
                ruled_out.filter(|_| !said),
                strength::seen_wrong(chain).filter(|_| !said),
                first,
                strength::unseen(chain),
                then,
                strength::look_at_next(chain).filter(|_| !waits),
            ];
            sentences.into_iter().flatten().collect()
        })
        .collect()
}
