//! What the post is fastened to, and what holds that: here built guards fail in
//! tests (Loferski, Albright, Woeste, published from 2005 on).

use crate::items::FastenedToWord;
use crate::items::FramingHeldByWord;
use crate::items::Item;
use crate::items::PostFasteningWord;
use crate::judge::load_path::arm::Fixed;
use crate::judge::load_path::arm::arm_taken;
use crate::judge::load_path::arm::fixed;
use crate::judge::load_path::arm::off_the_joists;
use crate::judge::load_path::link::Link;
use crate::judge::load_path::link::LinkKind;
use crate::judge::load_path::link::Mend;
use crate::judge::load_path::link::Taken;
use crate::judge::load_path::load::Loads;
use crate::judge::load_path::post;
use crate::judge::load_path::seen::Seen;
use crate::judge::load_path::service::Wood;
use crate::judge::load_path::woods::framing_thickness;
use crate::quantities::Force;
use crate::quantities::Pressure;
use crate::statics::Ends;
use crate::statics::Provenance;
use crate::statics::Worked;
use crate::statics::factors::Moisture;
use crate::statics::torsion::torsion_stress;

const MEMBER: LinkKind = LinkKind::Framing;
const CONNECTION: LinkKind = LinkKind::FramingConnection;

/// The links below the post's fixing.
pub(super) fn links(seen: &Seen<'_, '_>, framing: &Wood, loads: Loads<'_>) -> Vec<Link> {
    let mut links = vec![member(seen)];
    links.retain(|link| !matches!(link.case, SOLID));
    if reaches_the_framing(seen) {
        links.extend(splitting(seen));
        links.extend(connections(seen, framing, loads));
    }
    links
}

/// The case of a member about which there is nothing to say by itself.
const SOLID: &str = "wood";

fn reaches_the_framing(seen: &Seen<'_, '_>) -> bool {
    let ruled = [
        FastenedToWord::DrywallOnly,
        FastenedToWord::Subfloor,
        FastenedToWord::Decking,
    ];
    !seen.mentions_any(&ruled)
        && matches!(
            seen.word::<FastenedToWord>(),
            Some(FastenedToWord::RimBoard | FastenedToWord::Joist | FastenedToWord::Blocking)
        )
}

fn member(seen: &Seen<'_, '_>) -> Link {
    if seen.mentions(FastenedToWord::DrywallOnly) {
        return Link::by_rule(
            MEMBER,
            "drywall only",
            "plaster board is no load path: it crumbles, and anchors in it are rated for things that hang",
            "home-repair pages, read second-hand; common practice",
        )
        .mending(Mend::IntoTheFraming);
    }
    if seen.mentions_any(&[FastenedToWord::Subfloor, FastenedToWord::Decking]) {
        return Link::by_rule(
            MEMBER,
            "subfloor or decking boards only",
            "no framing is reached: screws in floor boards alone give way long before the load that rules ask",
            "NDS 2018 §12.2.2 on the panel's thickness, worked out; researchers call posts fastened to boards dangerous",
        )
        .mending(Mend::IntoTheFraming);
    }
    let hidden = |case, reason, asks: &[Item]| Link::hidden(MEMBER, case, reason, asks);
    match seen.word::<FastenedToWord>() {
        Some(FastenedToWord::RimBoard | FastenedToWord::Joist | FastenedToWord::Blocking) => hidden(SOLID, "", &[]),
        // makers' ranges, for a reader and for no verdict
        Some(FastenedToWord::Concrete) => hidden(
            "concrete",
            "its strength and the distance to its edge decide, and somebody who knows anchors has to look; makers list 400 to 790 lb (1.8 to 3.5 kN) for one sleeve anchor of 3/8 to 1/2 in far from any edge, less near one (read second-hand)",
            &[],
        )
        .mending(Mend::Anchors),
        Some(FastenedToWord::Masonry) => hidden(
            "masonry",
            "how sound the brick or block is and the distance to its edge decide, and somebody who knows anchors has to look; makers list 140 to 400 lb (0.6 to 1.8 kN) for one 3/8 in anchor glued into hollow block, and 450 to 900 lb (2.0 to 4.0 kN) in sound brick (read second-hand)",
            &[],
        )
        .mending(Mend::Anchors),
        Some(FastenedToWord::Stud) => hidden("stud", "no method here for a stud that is pulled sideways", &[]),
        Some(
            FastenedToWord::Hidden
            | FastenedToWord::Decking
            | FastenedToWord::DrywallOnly
            | FastenedToWord::Subfloor,
        ) => hidden(
            "what the post is fastened to",
            "it cannot be seen: look from below, or ask to lift a board",
            &[],
        ),
        None => hidden(
            "what the post is fastened to",
            "nobody wrote what the posts are fastened to",
            &[Item::FastenedTo],
        ),
    }
}

/// Screws in blocking pull it across its grain, and every such layout that was
/// tested split.
fn splitting(seen: &Seen<'_, '_>) -> Option<Link> {
    let screwed = seen.mentions_any(&[PostFasteningWord::LagScrews, PostFasteningWord::WoodScrews]);
    let blocking = seen.mentions(FastenedToWord::Blocking);
    (screwed && blocking).then(|| {
        Link::by_rule(
            MEMBER,
            "blocking split along its grain",
            "screws pull the blocking across its grain, for which no value is published: every layout of blocking with lags that was tested split below 500 lb",
            "NDS 2018 §3.8.2, read second-hand; tests of guard posts, trade journal, Feb 2005",
        )
        .mending(Mend::Tie)
    })
}

const AWAY: &str = "pulled away from the joists";
const INWARD: &str = "pulled away at its bottom";

/// What holds the joist, the blocking or the rim board.
fn connections(seen: &Seen<'_, '_>, framing: &Wood, loads: Loads<'_>) -> Vec<Link> {
    let rim = seen.mentions(FastenedToWord::RimBoard);
    let nailed = [
        FramingHeldByWord::NailsIntoEndGrain,
        FramingHeldByWord::ScrewsIntoEndGrain,
        FramingHeldByWord::TieAtTheLowerBolt,
    ];
    if rim && seen.mentions_any(&nailed) {
        let link = pulled(on_end_grain(), seen, loads);
        return vec![match twisted(seen, loads) {
            Some(stress) => link.explaining(TWISTED, stress.lines),
            None => link,
        }];
    }
    match seen.word::<FramingHeldByWord>() {
        Some(FramingHeldByWord::TieAtTheUpperBolt) => {
            let mut links = vec![tie(seen, framing, loads)];
            if loads.pulls_inward() {
                let reason = "the tie holds the top of the framing; what holds its bottom when somebody pulls inward is not known";
                links.push(Link::hidden(CONNECTION, INWARD, reason, &[]));
            }
            links
        }
        // outward is the greater of the two pulls
        Some(FramingHeldByWord::TiesAtBothBolts) => vec![tie(seen, framing, loads)],
        other => vec![pulled(hidden_connection(other), seen, loads)],
    }
}

/// The pull of the couple lands on nails or screws in the ends of the joists, on
/// whichever side of the rim the post stands.
fn on_end_grain() -> Link {
    Link::by_rule(
        CONNECTION,
        AWAY,
        "the rim board hangs on nails or screws in the ends of the joists, and those may not be counted against a pull at its top",
        "NDS 2018 §12.2.2.3 and §12.2.3.3, read second-hand; in tests the rim peeled off at 237 lb on average",
    )
    .mending(Mend::Tie)
}

const TWISTED: &str = "the rim alone, twisted by a post between two joists (no value for lumber in torsion was found; shear values are 130 to 280 psi)";

/// Why the rim cannot hold the post by itself: half of the moment twists it each way.
fn twisted(seen: &Seen<'_, '_>, loads: Loads<'_>) -> Option<Worked<Pressure>> {
    let deep = seen.known_length(Item::RimDepth)?;
    let thick = framing_thickness(seen).low;
    let moment = post::moment(seen, loads)?;
    let inputs = [("M", moment.value.into())];
    let half = moment.value / 2.0;
    let torque = Worked::new("T", "M/2", &inputs, half, Provenance::MECHANICS).after(moment);
    Some(torsion_stress(torque.value, deep, thick).after(torque))
}

fn hidden_connection(held: Option<FramingHeldByWord>) -> Link {
    let hidden =
        |reason, asks: &[Item]| Link::hidden(CONNECTION, AWAY, reason, asks).mending(Mend::Tie);
    match held {
        Some(
            FramingHeldByWord::NailsIntoEndGrain
            | FramingHeldByWord::ScrewsIntoEndGrain
            | FramingHeldByWord::TieAtTheLowerBolt,
        ) => hidden(
            "whether the pull lands on the nails depends on which way the joist runs",
            &[],
        ),
        Some(
            FramingHeldByWord::TensionTie
            | FramingHeldByWord::TieAtTheUpperBolt
            | FramingHeldByWord::TiesAtBothBolts,
        ) => hidden(
            "a tie holds only at the bolt that it is at: look whether it is the upper one",
            &[],
        ),
        Some(FramingHeldByWord::Hangers) => hidden(
            "hangers carry downward, and count for nothing against a pull away from the joists",
            &[],
        ),
        Some(FramingHeldByWord::Blocking) => hidden(
            "no published value: blocking split in tests below 500 lb; somebody who builds decks has to look",
            &[],
        ),
        Some(FramingHeldByWord::Hidden) => {
            hidden("it cannot be seen: look from below, behind the post", &[])
        }
        None => hidden(
            "nobody wrote what holds the joist or rim board",
            &[Item::FramingHeldBy],
        ),
    }
}

/// A tie by its label, which usually has load duration in it already (from memory):
/// at the low end it does not, and its screws sit in wet wood outdoors.
fn tie(seen: &Seen<'_, '_>, framing: &Wood, loads: Loads<'_>) -> Link {
    let Some(label) = seen.forces(Item::TieLabel) else {
        let reason = "what a tie carries stands on its label; compare it with the load given here";
        let link = Link::hidden(CONNECTION, AWAY, reason, &[Item::TieLabel]);
        return pulled(link.mending(Mend::Tie), seen, loads);
    };
    let Some(demand) = off_the_joists(seen, loads) else {
        let reason = "the pull on the tie is not known";
        let asks = [Item::FastenerSpacing, Item::Height];
        return Link::hidden(CONNECTION, AWAY, reason, &asks);
    };
    let wet = framing.moistures().contains(&Moisture::Wet);
    let capacity = by_label(label, wet.then_some(0.7));
    Link::weighed(CONNECTION, AWAY, &demand, &capacity)
        .taking(&arm_taken(seen))
        .taking(&[Taken::Label])
        .mending(Mend::Tie)
}

fn by_label(label: Ends<Force>, wet: Option<f64>) -> Ends<Worked<Force>> {
    let basis = Provenance::memory("labels of ties for wind and earthquake, load duration 1.6");
    let factor = wet.unwrap_or(1.0);
    let inputs = [("label", label.low.into()), ("C_M", factor.into())];
    let low = label.low / 1.6 * factor;
    Ends {
        low: Worked::new("T_a", "label/1.6·C_M", &inputs, low, basis),
        high: Worked::new(
            "T_a",
            "label",
            &[("label", label.low.into())],
            label.low,
            basis,
        ),
    }
}

/// With the pull at the top of the framing, where that is known.
fn pulled(link: Link, seen: &Seen<'_, '_>, loads: Loads<'_>) -> Link {
    match off_the_joists(seen, loads).filter(|_| fixed(seen) == Some(Fixed::OnTheSide)) {
        Some(demand) => link.with_demand(&demand).taking(&arm_taken(seen)),
        None => link,
    }
}
