//! The post itself.

use crate::items::Item;
use crate::judge::load_path::bend;
use crate::judge::load_path::bend::Share;
use crate::judge::load_path::fixing::arm_taken;
use crate::judge::load_path::link::Hidden;
use crate::judge::load_path::link::Link;
use crate::judge::load_path::link::LinkFinding;
use crate::judge::load_path::link::LinkKind;
use crate::judge::load_path::link::Ruled;
use crate::judge::load_path::link::Taken;
use crate::judge::load_path::load::Loads;
use crate::judge::load_path::seen::Seen;
use crate::judge::load_path::service::Wood;
use crate::judge::load_path::wood;
use crate::quantities::Distance;
use crate::quantities::Moment;
use crate::statics::Ends;
use crate::statics::Worked;
use crate::statics::demand::lever_arm;

const KIND: LinkKind = LinkKind::Post;
const BENDING: &str = "bending above its fixing";

const ROT: Ruled = Ruled {
    reason: "rotten wood: no number can be trusted, and the fixings have lost their hold",
    source: "news advice and trade checklists, read second-hand",
};

const NOTCH: Ruled = Ruled {
    reason: "a thin post notched where it is fixed: half a notch leaves a quarter of the bending strength, and notched posts on lag screws failed in tests at 178 lb on average",
    source: "tests of guard posts (Loferski, Albright, Woeste), published from 2005 on",
};

/// Where the fixing holds the post: on the side of the framing, or at the floor.
fn on_the_side(seen: &Seen<'_, '_>) -> Option<bool> {
    match seen.word(Item::PostFastening)? {
        "through bolts" | "lag screws" | "wood screws" | "nails" => Some(true),
        "plate" | "embedded" => Some(false),
        _ => None,
    }
}

/// The moment above the fixing: at the framing's top, or at the floor.
fn demand(seen: &Seen<'_, '_>, loads: Loads<'_>) -> Option<Ends<Worked<Moment>>> {
    let height = seen.height()?;
    let at = |covering| loads.in_a_post(lever_arm(height, covering, Distance::default()), height);
    let covering = seen.covering();
    let covering = match on_the_side(seen) {
        Some(true) => covering,
        Some(false) => Ends::exactly(Distance::default()),
        None => Ends {
            low: Distance::default(),
            ..covering
        },
    };
    Some(Ends {
        low: at(covering.low)?,
        high: at(covering.high)?,
    })
}

/// The greatest moment at the fastener that resists.
pub(super) fn moment(seen: &Seen<'_, '_>, loads: Loads<'_>) -> Option<Worked<Moment>> {
    let height = seen.height()?;
    let arm = if on_the_side(seen) == Some(false) {
        lever_arm(height, Distance::default(), Distance::default())
    } else {
        lever_arm(height, seen.covering().high, seen.depth().high)
    };
    loads.in_a_post(arm, height)
}

/// The links of the post.
pub(super) fn links(seen: &Seen<'_, '_>, wood: &Wood, loads: Loads<'_>) -> Vec<Link> {
    let Some(demand) = demand(seen, loads) else {
        let reason = "how high the rail is, or how far apart the posts are, is not written";
        let asks = [Item::Height, Item::PostSpacing];
        let link = Link::hidden(KIND, BENDING, reason, &asks);
        return vec![ruled(seen, link)];
    };
    let left = if seen.has(Item::NotchedPost, "yes") {
        Share::Half
    } else {
        Share::Whole
    };
    let mut links = Vec::new();
    let bending = match bend::post(seen, wood, left) {
        Ok((capacity, taken)) => Link::weighed(KIND, BENDING, &demand, &capacity)
            .taking(&taken)
            .asking(&wood.narrows()),
        Err(no) => Link::hidden(KIND, BENDING, no.reason, &no.asks).with_demand(&demand),
    };
    let mut taken = arm_taken(seen);
    taken.retain(|taken| *taken == Taken::Covering && on_the_side(seen) != Some(false));
    if left == Share::Half {
        taken.push(Taken::NotchHalf);
    }
    links.push(ruled(seen, bending.taking(&taken)));
    if left == Share::Whole && !seen.has(Item::Condition, "rot") {
        links.extend(shear(seen, wood, loads));
    }
    links
}

/// What is seen of the post decides before any number.
fn ruled(seen: &Seen<'_, '_>, link: Link) -> Link {
    if seen.has(Item::Condition, "rot") {
        let rotten = Link::bare(KIND, link.case, LinkFinding::ByRule(ROT));
        return Link {
            demand: link.demand,
            ..rotten
        };
    }
    if !seen.has(Item::NotchedPost, "yes") {
        return link;
    }
    let thick = seen.section(Item::PostSection);
    if thick.is_none_or(|(a, b)| a.min(b) < wood::TIMBER) {
        return Link {
            finding: LinkFinding::ByRule(NOTCH),
            ..link
        };
    }
    // what is ruled out is a notch in a 4x4; what a thicker post keeps splits as well
    match link.finding {
        LinkFinding::NoShortfall | LinkFinding::TooClose => Link {
            finding: LinkFinding::NotMeasured(Hidden {
                reason: "a notch splits a post along the grain from its corner, and no number here counts that",
            }),
            ratio: None,
            ..link
        },
        LinkFinding::ByRule(_) | LinkFinding::FallsShort | LinkFinding::NotMeasured(_) => link,
    }
}

fn shear(seen: &Seen<'_, '_>, wood: &Wood, loads: Loads<'_>) -> Option<Link> {
    let (a, b) = seen.section(Item::PostSection)?;
    if seen.word(Item::PostMaterial) != Some("wood") {
        return None;
    }
    let demand = Ends::exactly(loads.at_the_top()?);
    let capacity = wood::shear(wood, a, b)?;
    Some(Link::weighed(KIND, "shear", &demand, &capacity).taking(wood.taken()))
}
