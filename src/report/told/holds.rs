//! What matters of what holds a guard up.

use crate::items::Verdict;
use crate::judge::Finding;
use crate::report::JudgedGuard;
use crate::report::strength;

/// What matters of a guard's load paths: the weakest link, what is seen wrong, what a
/// tradesman would do, what to look at next, each path for itself.
pub(in crate::report) fn what_matters(entry: &JudgedGuard<'_>) -> Vec<Vec<String>> {
    let applies = |finding: &&Finding<'_>| finding.verdict != Verdict::DoesNotApply;
    let chains = entry.judged.findings.iter().filter(applies);
    chains
        .filter_map(|finding| finding.chain.as_deref())
        .filter(|chain| chain.written)
        .map(|chain| {
            let sentences = [
                strength::ruled_out(chain),
                strength::weakest(chain),
                strength::mends(chain),
                strength::seen_wrong(chain),
                strength::look_at_next(chain),
            ];
            sentences.into_iter().flatten().collect()
        })
        .collect()
}
