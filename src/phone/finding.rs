//! From plain words to the rulesets that hold, for a person who chooses with a finger.

use crate::phone::answer::Found;
use crate::phone::answer::Offered;
use crate::report;
use crate::rules::Offer;
use crate::rules::Ruleset;
use crate::rules::find;

/// What these words lead to.
pub(super) fn found(words: &str, library: &[Ruleset]) -> Found {
    let found = find(words, library);
    let offered = |offers: &[Offer<'_>]| offers.iter().map(offer).collect();
    Found {
        taken: report::taken_as(&found.sought),
        law: offered(&found.law),
        advice: offered(&found.advice),
        only_where: offered(&found.only_where),
        not_here: found.not_here,
        ask: found.ask,
        unknown: found.sought.unknown,
    }
}

fn offer(offer: &Offer<'_>) -> Offered {
    Offered {
        id: offer.ruleset.id.clone(),
        title: offer.ruleset.title.clone(),
        covers: offer.ruleset.covers.says.clone(),
        only: offer.only.clone(),
    }
}
