//! What the post is fastened to, and what holds that.

use crate::items::Item;
use crate::judge::load_path::fixing::arm_taken;
use crate::judge::load_path::fixing::pull;
use crate::judge::load_path::link::Link;
use crate::judge::load_path::link::LinkKind;
use crate::judge::load_path::load::Loads;
use crate::judge::load_path::seen::Seen;

const MEMBER: LinkKind = LinkKind::Framing;
const CONNECTION: LinkKind = LinkKind::FramingConnection;

/// The link below the post's fixing.
pub(super) fn link(seen: &Seen<'_, '_>, loads: Loads<'_>) -> Link {
    if seen.has(Item::FastenedTo, "drywall only") {
        return Link::by_rule(
            MEMBER,
            "drywall only",
            "plaster board is no load path: it crumbles, and anchors in it are rated for things that hang",
            "facts of home-repair pages, read second-hand; common practice",
        );
    }
    if seen.has(Item::FastenedTo, "subfloor") {
        return Link::by_rule(
            MEMBER,
            "subfloor or decking boards only",
            "no framing is reached: screws in floor boards alone give way long before the load that rules ask",
            "wood design standard, withdrawal from panels; researchers call posts fastened to boards dangerous",
        );
    }
    let nailed = ["nails into end grain", "screws into end grain"];
    if seen.has(Item::FastenedTo, "rim board") && seen.has_any(Item::FramingHeldBy, &nailed) {
        return pulled(on_end_grain(), seen, loads);
    }
    match seen.word(Item::FastenedTo) {
        Some("rim board" | "joist" | "blocking") => pulled(connection(seen), seen, loads),
        // makers' ranges, for a reader and for no verdict
        Some("concrete") => Link::hidden(
            MEMBER,
            "concrete",
            "its strength and the distance to its edge decide, and somebody who knows anchors has to look; makers list 400 to 790 lb (1.8 to 3.5 kN) for one sleeve anchor of 3/8 to 1/2 in far from any edge, less near one (read second-hand)",
            &[],
        ),
        Some("masonry") => Link::hidden(
            MEMBER,
            "masonry",
            "how sound the brick or block is and the distance to its edge decide, and somebody who knows anchors has to look; makers list 140 to 400 lb (0.6 to 1.8 kN) for one 3/8 in anchor glued into hollow block, and 450 to 900 lb (2.0 to 4.0 kN) in sound brick (read second-hand)",
            &[],
        ),
        Some("stud") => Link::hidden(
            MEMBER,
            "stud",
            "no method here for a stud that is pulled sideways",
            &[],
        ),
        Some(_) => Link::hidden(
            MEMBER,
            "what the post is fastened to",
            "it cannot be seen: look from below, or ask to lift a board",
            &[],
        ),
        None => Link::hidden(
            MEMBER,
            "what the post is fastened to",
            "nobody wrote what the posts are fastened to",
            &[Item::FastenedTo],
        ),
    }
}

const AWAY: &str = "pulled away from the joists";

/// The pull of the upper fastener lands on nails or screws in the ends of the joists.
fn on_end_grain() -> Link {
    Link::by_rule(
        CONNECTION,
        AWAY,
        "the rim board hangs on nails or screws in the ends of the joists, and those may not be counted against a pull",
        "NDS 2018 §12.2.2.3 and §12.2.3.3, read second-hand; in tests the rim peeled off at 237 lb on average",
    )
}

/// What holds the joist, the blocking or the rim board.
fn connection(seen: &Seen<'_, '_>) -> Link {
    let hidden = |reason, asks: &[Item]| Link::hidden(CONNECTION, AWAY, reason, asks);
    match seen.word(Item::FramingHeldBy) {
        Some("nails into end grain" | "screws into end grain") => hidden(
            "whether the pull lands on the nails depends on which way the joist runs",
            &[],
        ),
        Some("tension tie") => hidden(
            "what a tie carries stands on its label; compare it with the load given here",
            &[],
        ),
        Some("blocking" | "hangers") => hidden(
            "no published value: blocking split in tests below 500 lb; somebody who builds decks has to look",
            &[],
        ),
        Some(_) => hidden("it cannot be seen: look from below, behind the post", &[]),
        None => hidden(
            "nobody wrote what holds the joist or rim board",
            &[Item::FramingHeldBy],
        ),
    }
}

/// With the pull of the upper fastener, where that is known.
fn pulled(link: Link, seen: &Seen<'_, '_>, loads: Loads<'_>) -> Link {
    match pull(seen, loads) {
        Some(demand) => link.with_demand(&demand).taking(&arm_taken(seen)),
        None => link,
    }
}
