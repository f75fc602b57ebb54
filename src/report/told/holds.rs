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
            let told = finding.verdict == Verdict::FallsShort;
            let sentences = [
                strength::ruled_out(chain).filter(|_| !told),
                strength::weakest(chain),
                strength::mends(chain),
                strength::seen_wrong(chain).filter(|_| !told),
                strength::look_at_next(chain).filter(|_| !waits),
            ];
            sentences.into_iter().flatten().collect()
        })
        .collect()
}
