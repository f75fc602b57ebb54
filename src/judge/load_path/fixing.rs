//! What fastens a post: the method follows from what is seen (NDS 2018 chapter
//! 12, read second-hand).

use crate::items::ConditionWord;
use crate::items::FastenedToWord;
use crate::items::Item;
use crate::items::NotchedPostWord;
use crate::items::PostFasteningWord;
use crate::items::PostMaterialWord;
use crate::judge::load_path::arm::Fixed;
use crate::judge::load_path::arm::arm_taken;
use crate::judge::load_path::arm::couple_asks;
use crate::judge::load_path::arm::fixed;
use crate::judge::load_path::arm::stretch;
use crate::judge::load_path::arm::with_stretch;
use crate::judge::load_path::bolts::bolts;
use crate::judge::load_path::bolts::share_of_the_weight;
use crate::judge::load_path::bolts::too_near;
use crate::judge::load_path::bolts::wooden_post;
use crate::judge::load_path::concrete;
use crate::judge::load_path::link::Link;
use crate::judge::load_path::link::LinkKind;
use crate::judge::load_path::link::Mend;
use crate::judge::load_path::link::Taken;
use crate::judge::load_path::load::Loads;
use crate::judge::load_path::plate;
use crate::judge::load_path::rod;
use crate::judge::load_path::screws::Layers;
use crate::judge::load_path::screws::NO_NUMBERS;
use crate::judge::load_path::screws::NO_THREAD;
use crate::judge::load_path::screws::Sideways;
use crate::judge::load_path::screws::held;
use crate::judge::load_path::screws::no_more_than_the_heads;
use crate::judge::load_path::screws::on_one;
use crate::judge::load_path::screws::one_of;
use crate::judge::load_path::screws::pushed_sideways;
use crate::judge::load_path::seen::Seen;
use crate::judge::load_path::seen::WrittenLength;
use crate::judge::load_path::seen::diameter;
use crate::judge::load_path::sources;
use crate::judge::load_path::washer;
use crate::judge::load_path::why::LinkCase;
use crate::judge::load_path::why::LinkReason;
use crate::judge::load_path::woods::HINGE;
use crate::judge::load_path::woods::Woods;
use crate::judge::load_path::woods::framing_thickness;
use crate::judge::load_path::woods::not_in_wood;
use crate::quantities::Distance;
use crate::quantities::Force;
use crate::reading::Fasteners;
use crate::statics::Ends;
use crate::statics::Worked;
use crate::statics::factors::Grain;

const KIND: LinkKind = LinkKind::PostFixing;
const PULLED: LinkCase = LinkCase::UpperScrewPulledOut;

/// The links of the post's fixing.
pub(super) fn links(seen: &Seen<'_, '_>, woods: Woods<'_>, loads: Loads<'_>) -> Vec<Link> {
    if let Some(ruled) = ruled_out(seen) {
        return vec![with_stretch(ruled, seen, loads)];
    }
    match seen.word::<PostFasteningWord>() {
        Some(PostFasteningWord::ThroughBolts) => bolts(seen, woods, loads),
        Some(PostFasteningWord::LagScrews | PostFasteningWord::WoodScrews) => {
            screws(seen, woods, loads)
        }
        Some(PostFasteningWord::Plate) => plate::links(seen, woods, loads),
        Some(PostFasteningWord::CentralRod) => vec![rod::link(seen, woods.post, loads)],
        Some(PostFasteningWord::Embedded) => vec![concrete::pocket(seen, loads)],
        Some(PostFasteningWord::MasonryAnchors)
            if seen.word() == Some(FastenedToWord::Concrete) =>
        {
            vec![concrete::breakout(seen, loads)]
        }
        Some(PostFasteningWord::MasonryAnchors) => vec![with_stretch(
            hidden(LinkReason::AnchorsDependOnConcrete).mending(Mend::Anchors),
            seen,
            loads,
        )],
        Some(PostFasteningWord::Hidden) => vec![with_stretch(
            Link::hidden(
                KIND,
                LinkCase::HoldsThePost,
                LinkReason::PostFastenedUnseen,
                &[],
            ),
            seen,
            loads,
        )],
        Some(_) => vec![hidden(LinkReason::BracketOrWeld)],
        None => vec![with_stretch(
            Link::hidden(
                KIND,
                LinkCase::HoldsThePost,
                LinkReason::PostFasteningNotWritten,
                &[Item::PostFastening],
            ),
            seen,
            loads,
        )],
    }
}

/// What is seen that no number can mend.
fn ruled_out(seen: &Seen<'_, '_>) -> Option<Link> {
    let fastened = |word: PostFasteningWord| seen.mentions(word);
    let (case, reason, source, mend) = if fastened(PostFasteningWord::Missing) {
        (
            LinkCase::HoldsThePost,
            LinkReason::FastenerMissing,
            sources::PRACTICE,
            Mend::Bolts,
        )
    } else if fastened(PostFasteningWord::Nails) {
        (
            LinkCase::PulledOut,
            LinkReason::NailsHoldNoPost,
            sources::NAILS,
            Mend::Bolts,
        )
    } else if fastened(PostFasteningWord::HalfWall) {
        (
            LinkCase::EndOfHalfWall,
            LinkReason::HalfWallEndGrain,
            sources::END_GRAIN,
            Mend::IntoTheFraming,
        )
    } else if seen.mentions(ConditionWord::Rot) && of_wood(seen) {
        (
            LinkCase::InRottenWood,
            LinkReason::RottenFixings,
            sources::DECAY,
            Mend::NewPost,
        )
    } else {
        return None;
    };
    Some(Link::by_rule(KIND, case, reason, source).mending(mend))
}

/// Whether the post or what it is fastened to is wood.
fn of_wood(seen: &Seen<'_, '_>) -> bool {
    let wooden = [
        FastenedToWord::Joist,
        FastenedToWord::Blocking,
        FastenedToWord::RimBoard,
        FastenedToWord::Subfloor,
        FastenedToWord::Decking,
        FastenedToWord::Stud,
    ];
    seen.word() == Some(PostMaterialWord::Wood) || seen.mentions_any(&wooden)
}

fn hidden(reason: LinkReason) -> Link {
    Link::hidden(KIND, LinkCase::HoldsThePost, reason, &[])
}

/// Lags or wood screws through the post into the side of the framing: pulled
/// out by the couple, and pressed down.
fn screws(seen: &Seen<'_, '_>, woods: Woods<'_>, loads: Loads<'_>) -> Vec<Link> {
    let Some(fasteners) = seen.fasteners(Item::PostFasteners) else {
        let link = Link::hidden(KIND, PULLED, NO_NUMBERS, &[Item::PostFasteners]);
        return vec![with_stretch(link, seen, loads)];
    };
    if fasteners.count < 2 {
        return vec![hidden(HINGE)];
    }
    if fixed(seen) != Some(Fixed::OnTheSide) {
        let reason = LinkReason::ScrewsThroughFoot;
        return vec![Link::hidden(KIND, PULLED, reason, &[])];
    }
    let layers = behind_the_post(seen, fasteners);
    let mut links = vec![pulled(seen, woods, loads, (fasteners, layers))];
    links.extend(washer::of_lags(seen, woods.post, loads, fasteners));
    links.extend(pressed(seen, woods, loads, (fasteners, layers)));
    links
}

fn pulled(
    seen: &Seen<'_, '_>,
    woods: Woods<'_>,
    loads: Loads<'_>,
    (fasteners, layers): (Fasteners, Option<Layers>),
) -> Link {
    let Some(demand) = stretch(seen, loads) else {
        let reason = LinkReason::PullOnUpperScrewUnknown;
        return Link::hidden(KIND, PULLED, reason, &couple_asks(seen));
    };
    let demand = on_one(demand, fasteners);
    let without =
        |reason, asks: &[Item]| Link::hidden(KIND, PULLED, reason, asks).with_demand(&demand);
    if let Some((reason, asks)) = not_in_wood(seen) {
        return without(reason, asks);
    }
    let Some(layers) = layers else {
        return without(NO_THREAD, &[Item::ThreadInFraming]);
    };
    let under_heads = |thread: Ends<Worked<Force>>| {
        let under = (woods.post, layers.before);
        let heads = no_more_than_the_heads(thread.clone(), under, one_of(fasteners));
        match seen.word::<PostMaterialWord>() {
            Some(PostMaterialWord::Wood) => heads,
            Some(_) => thread,
            // a post of metal may hold the heads
            None => Ends {
                low: heads.low,
                high: thread.high,
            },
        }
    };
    match held(woods.framing, one_of(fasteners), layers, Grain::Side) {
        Ok(capacity) => Link::weighed(KIND, PULLED, &demand, &under_heads(capacity))
            .taking(woods.framing.taken())
            .taking(&arm_taken(seen))
            .taking(&[Taken::Thread])
            .taking(thickness_taken(seen))
            .asking(&woods.framing.narrows())
            .mending(Mend::Bolts),
        Err(reason) => without(reason, &[]),
    }
}

fn pressed(
    seen: &Seen<'_, '_>,
    woods: Woods<'_>,
    loads: Loads<'_>,
    (fasteners, layers): (Fasteners, Option<Layers>),
) -> Option<Link> {
    let case = LinkCase::ScrewsPressedDown;
    let demand = share_of_the_weight(loads, fasteners.count)?;
    let without =
        |reason, asks: &[Item]| Some(Link::hidden(KIND, case, reason, asks).with_demand(&demand));
    if let Some((reason, asks)) = not_in_wood(seen) {
        return without(reason, asks);
    }
    if let Err((reason, asks)) = wooden_post(seen) {
        return without(reason, asks);
    }
    let Some(layers) = layers else {
        return without(NO_THREAD, &[Item::ThreadInFraming]);
    };
    if let Some(diameter) = diameter(fasteners.size)
        && let Some(near) = too_near(seen, diameter)
    {
        return Some(near.with_demand(&demand));
    }
    let through = Sideways {
        layers,
        grain: Grain::Side,
        plate: None,
        under_the_head: 0.0,
    };
    match pushed_sideways((woods.post, woods.framing), one_of(fasteners), through) {
        Ok(capacity) => Some(
            Link::weighed(KIND, case, &demand, &capacity)
                .taking(woods.framing.taken())
                .taking(thickness_taken(seen))
                .taking(&[Taken::Distances])
                .asking(&woods.framing.narrows())
                .mending(Mend::Bolts),
        ),
        Err(reason) => without(reason, &[]),
    }
}

/// The post, or what a notch may have left of it, and the wood behind it.
fn behind_the_post(seen: &Seen<'_, '_>, fasteners: Fasteners) -> Option<Layers> {
    let length: Option<Distance> = fasteners.length.map(|length| length.to_uom());
    let whole = seen.word() == Some(NotchedPostWord::No);
    // how deep a notch is nobody writes: the posts of the published tests
    // kept less than half; where the thread is not written either, a
    // quarter may be left (common practice, no source)
    let share = match (whole, seen.known_length(Item::ThreadInFraming)) {
        (true, _) => 1.0,
        (false, Some(_)) => 0.5,
        (false, None) => 0.25,
    };
    let post = seen.section(Item::PostSection);
    let post = post.map(|(a, b)| Ends {
        low: a.min(b) * share,
        high: a.max(b),
    });
    let thick = framing_thickness(seen);
    match (seen.length(Item::ThreadInFraming), post, length) {
        (WrittenLength::There(into), post, length) => {
            let unknown = Ends {
                low: Distance::default(),
                high: length.unwrap_or(into),
            };
            // never more than the member is thick
            let into = match seen.known_length(Item::FramingThickness) {
                Some(thick) => into.min(thick),
                None => into,
            };
            Some(Layers::written(length, post.unwrap_or(unknown), into))
        }
        (WrittenLength::Nothing | WrittenLength::ThereIsNone, Some(before), Some(_)) => {
            Some(Layers {
                before,
                main: thick,
            })
        }
        (WrittenLength::Nothing | WrittenLength::ThereIsNone, _, _) => None,
    }
}

fn thickness_taken(seen: &Seen<'_, '_>) -> &'static [Taken] {
    let known = [Item::ThreadInFraming, Item::FramingThickness];
    if known.iter().any(|item| seen.known_length(*item).is_some()) {
        &[]
    } else {
        &[Taken::RimOrMore]
    }
}
