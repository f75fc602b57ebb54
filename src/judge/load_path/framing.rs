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
use crate::judge::load_path::sources;
use crate::judge::load_path::why::LinkCase;
use crate::judge::load_path::why::LinkReason;
use crate::judge::load_path::why::StepName;
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
    let mut links: Vec<Link> = member(seen).into_iter().collect();
    if reaches_the_framing(seen) {
        links.extend(splitting(seen));
        links.extend(connections(seen, framing, loads));
    }
    links
}

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

/// The member itself; nothing of wood, which is judged by what holds it.
fn member(seen: &Seen<'_, '_>) -> Option<Link> {
    if seen.mentions(FastenedToWord::DrywallOnly) {
        return Some(no_framing(
            LinkCase::DrywallOnly,
            LinkReason::PlasterBoard,
            sources::PLASTER,
        ));
    }
    if seen.mentions_any(&[FastenedToWord::Subfloor, FastenedToWord::Decking]) {
        return Some(no_framing(
            LinkCase::BoardsOnly,
            LinkReason::FloorBoardsOnly,
            sources::BOARDS,
        ));
    }
    let hidden = |case, reason, asks: &[Item]| Some(Link::hidden(MEMBER, case, reason, asks));
    let anchors = |case, reason| hidden(case, reason, &[]).map(|link| link.mending(Mend::Anchors));
    match seen.word::<FastenedToWord>() {
        Some(FastenedToWord::RimBoard | FastenedToWord::Joist | FastenedToWord::Blocking) => None,
        // makers' ranges, for a reader and for no verdict
        Some(FastenedToWord::Concrete) => anchors(LinkCase::Concrete, LinkReason::Concrete),
        Some(FastenedToWord::Masonry) => anchors(LinkCase::Masonry, LinkReason::Masonry),
        Some(FastenedToWord::Stud) => hidden(LinkCase::Stud, LinkReason::StudPulledSideways, &[]),
        Some(
            FastenedToWord::Hidden
            | FastenedToWord::Decking
            | FastenedToWord::DrywallOnly
            | FastenedToWord::Subfloor,
        ) => hidden(LinkCase::FastenedTo, LinkReason::FastenedToUnseen, &[]),
        None => hidden(
            LinkCase::FastenedTo,
            LinkReason::FastenedToNotWritten,
            &[Item::FastenedTo],
        ),
    }
}

fn no_framing(case: LinkCase, reason: LinkReason, source: &'static str) -> Link {
    Link::by_rule(MEMBER, case, reason, source).mending(Mend::IntoTheFraming)
}

/// Screws in blocking pull it across its grain, and every such layout that was
/// tested split.
fn splitting(seen: &Seen<'_, '_>) -> Option<Link> {
    let screwed = seen.mentions_any(&[PostFasteningWord::LagScrews, PostFasteningWord::WoodScrews]);
    let blocking = seen.mentions(FastenedToWord::Blocking);
    (screwed && blocking).then(|| {
        Link::by_rule(
            MEMBER,
            LinkCase::BlockingSplit,
            LinkReason::BlockingAcrossGrain,
            sources::ACROSS_THE_GRAIN,
        )
        .mending(Mend::Tie)
    })
}

const AWAY: LinkCase = LinkCase::PulledAway;
const INWARD: LinkCase = LinkCase::PulledAwayBelow;

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
                let reason = LinkReason::TieHoldsOnlyTop;
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
        LinkReason::RimOnEndGrain,
        sources::RIM_PEELED,
    )
    .mending(Mend::Tie)
}

const TWISTED: StepName = StepName::RimTwisted;

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
        ) => hidden(LinkReason::WhichWayTheJoistRuns, &[]),
        Some(
            FramingHeldByWord::TensionTie
            | FramingHeldByWord::TieAtTheUpperBolt
            | FramingHeldByWord::TiesAtBothBolts,
        ) => hidden(LinkReason::TieAtWhichBolt, &[]),
        Some(FramingHeldByWord::Hangers) => hidden(LinkReason::HangersCarryDownward, &[]),
        Some(FramingHeldByWord::Blocking) => hidden(LinkReason::BlockingSplitInTests, &[]),
        Some(FramingHeldByWord::Hidden) => hidden(LinkReason::FramingHeldUnseen, &[]),
        None => hidden(LinkReason::FramingHeldNotWritten, &[Item::FramingHeldBy]),
    }
}

/// A tie by its label, which usually has load duration in it already (from memory):
/// at the low end it does not, and its screws sit in wet wood outdoors.
fn tie(seen: &Seen<'_, '_>, framing: &Wood, loads: Loads<'_>) -> Link {
    let Some(label) = seen.forces(Item::TieLabel) else {
        let reason = LinkReason::TieLabelNotWritten;
        let link = Link::hidden(CONNECTION, AWAY, reason, &[Item::TieLabel]);
        return pulled(link.mending(Mend::Tie), seen, loads);
    };
    let Some(demand) = off_the_joists(seen, loads) else {
        let reason = LinkReason::PullOnTieUnknown;
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
    let basis = Provenance::memory(sources::LABELS);
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
