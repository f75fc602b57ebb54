//! How much a remedy changes and asks of people.

use crate::remedy::kind::MakesHoles;
use crate::remedy::kind::Needed;
use crate::remedy::kind::RemedyCaution;
use crate::remedy::kind::RemedyKind;
use crate::remedy::kind::WhoDoes;
use crate::remedy::offered::Offered;

/// What it weighs that something is left to be done by another step.
pub(super) const LEFT: u32 = 20;

/// How much a remedy changes and asks of people: less is better. (our own judgement, no
/// source)
pub(super) fn cost(offered: &Offered, high: bool) -> u32 {
    let row = offered.kind.row();
    let needed = |needed: Needed, ask: u32, yes: u32| match needed {
        Needed::No => 0,
        Needed::Ask => ask,
        Needed::Yes => yes,
    };
    let who = match who(offered.kind, high) {
        WhoDoes::Anyone => 0,
        WhoDoes::Handy => 1,
        WhoDoes::Trade => 8,
        WhoDoes::Licensed => 16,
    };
    let holes = match row.holes {
        MakesHoles::No => 0,
        MakesHoles::Either => 1,
        MakesHoles::Yes => 3,
    };
    let labour = offered.labour.map_or(0, |labour| labour.minutes[1] / 30);
    let parts = u32::try_from(offered.parts.len()).unwrap_or(u32::MAX);
    // what catches wind or pulls harder at the posts comes after what does not
    let lever = if row.cautions.contains(&RemedyCaution::Lever) {
        10
    } else {
        0
    };
    who + holes + lever + needed(row.leave, 1, 3) + needed(row.permit, 2, 15) + labour + 2 * parts
}

pub(super) fn who(kind: RemedyKind, high: bool) -> WhoDoes {
    let row = kind.row();
    if high { row.who_high } else { row.who }
}
