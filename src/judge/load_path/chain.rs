//! The chain of one guard under one rule's loads.

use crate::items::BehindThePostWord;
use crate::items::ConditionWord;
use crate::items::InfillWord;
use crate::items::Item;
use crate::items::MovesWhenPushedWord;
use crate::items::NotchedPostWord;
use crate::items::PostMaterialWord;
use crate::items::PostPositionWord;
use crate::judge::before::Before;
use crate::judge::load_path::arm::Fixed;
use crate::judge::load_path::arm::fixed;
use crate::judge::load_path::cables;
use crate::judge::load_path::fixing;
use crate::judge::load_path::framing;
use crate::judge::load_path::infill;
use crate::judge::load_path::link::Chain;
use crate::judge::load_path::link::Hidden;
use crate::judge::load_path::link::Link;
use crate::judge::load_path::link::LinkFinding;
use crate::judge::load_path::link::LinkKind;
use crate::judge::load_path::link::Taken;
use crate::judge::load_path::link::Wrong;
use crate::judge::load_path::load::Loads;
use crate::judge::load_path::post;
use crate::judge::load_path::post::PostDemand;
use crate::judge::load_path::pull;
use crate::judge::load_path::rail;
use crate::judge::load_path::rail_end;
use crate::judge::load_path::seen::Seen;
use crate::judge::load_path::service::Wood;
use crate::judge::load_path::why::LinkReason;
use crate::judge::load_path::woods::Woods;
use crate::judge::scene::Scene;
use crate::quantities::Moment;
use crate::quantities::inches;
use crate::rules::LoadBasis;
use crate::rules::LoadDemand;
use crate::rules::Member;
use crate::statics::lateral::WIDEST_ACROSS_GRAIN;

/// Follows the load from the infill and the rail down to the framing.
pub(in crate::judge) fn chain(scene: &Scene<'_>, demand: &LoadDemand) -> Chain {
    let seen = Seen::of(scene);
    let loads = Loads {
        demand,
        spacing: seen.known_length(Item::PostSpacing),
    };
    let written = seen.tells_anything();
    let of_post = post::demand(&seen, loads);
    // a list of what nobody wrote would only bury the rest
    let links = if written {
        links(&seen, loads, of_post.as_ref())
    } else {
        Vec::new()
    };
    Chain {
        basis: demand.basis,
        units: seen.units(),
        links,
        written,
        seen: wrong(&seen),
        moments: moments(&seen, loads, of_post),
        looked_at: seen.looked_at(),
    }
}

/// Whether a chain that was followed before a change is the one that it would be now.
pub(in crate::judge) fn is_the_same(chain: &Chain, before: &Before<'_>, scene: &Scene<'_>) -> bool {
    before.leaves(chain.looked_at) && Seen::of(scene).units() == chain.units
}

fn links(seen: &Seen<'_, '_>, loads: Loads<'_>, of_post: Option<&PostDemand>) -> Vec<Link> {
    let (wood, framing_wood) = (Wood::of_posts(seen), Wood::of_framing(seen));
    let woods = Woods {
        post: &wood,
        framing: &framing_wood,
    };
    let mut links = infill::links(seen, &wood, loads);
    links.extend(rail::links(seen, &wood, loads));
    links.extend(rail_end::links(seen, &wood, loads));
    links.extend(post::links(seen, &wood, loads, of_post));
    links.extend(cables::end_post(seen, &wood));
    links.extend(fixing::links(seen, woods, loads));
    links.extend(framing::links(seen, &framing_wood, loads));
    let mut links: Vec<Link> = links
        .into_iter()
        .map(|link| with_the_whole_load(link, loads))
        .map(|link| with_what_is_seen(link, seen))
        .map(|link| with_what_was_looked_at(link, seen))
        .collect();
    if loads.demand.basis == LoadBasis::Characteristic {
        links.iter_mut().for_each(demand_only);
    }
    links.extend(pull::link(seen));
    for link in &mut links {
        each_once(&mut link.asks);
        each_once(&mut link.taken);
    }
    links
}

fn each_once<T: PartialEq + Copy>(list: &mut Vec<T>) {
    let mut kept = 0;
    for at in 0..list.len() {
        if !list[..kept].contains(&list[at]) {
            list[kept] = list[at];
            kept += 1;
        }
    }
    list.truncate(kept);
}

fn moments(
    seen: &Seen<'_, '_>,
    loads: Loads<'_>,
    of_post: Option<PostDemand>,
) -> Vec<(Member, Moment)> {
    let infill = infill::on_one(seen, loads).map(|(moment, _)| moment);
    [
        (Member::Infill, infill),
        (Member::Post, of_post.map(|demand| demand.high)),
        (Member::Rail, rail::moment(loads)),
    ]
    .into_iter()
    .filter_map(|(member, moment)| Some((member, moment?.value)))
    .collect()
}

/// The links that bear what holds a post.
const fn holds_the_post(kind: LinkKind) -> bool {
    match kind {
        LinkKind::Post | LinkKind::PostFixing | LinkKind::Framing | LinkKind::FramingConnection => {
            true
        }
        LinkKind::Infill
        | LinkKind::InfillFixing
        | LinkKind::TopRail
        | LinkKind::RailEnd
        | LinkKind::Stiffness => false,
    }
}

/// Where a load along the top needs a spacing that nobody wrote, the demand may
/// be greater than the one worked out: only a shortfall can be told.
fn with_the_whole_load(mut link: Link, loads: Loads<'_>) -> Link {
    let bears = holds_the_post(link.kind) || link.kind == LinkKind::RailEnd;
    if !bears || !loads.lacks_spacing() {
        return link;
    }
    link.asks.push(Item::PostSpacing);
    if link.demand.is_some() {
        link.taken.push(Taken::PointAlone);
    }
    let open = matches!(
        link.finding,
        LinkFinding::NoShortfall | LinkFinding::TooClose
    );
    if open {
        let reason = LinkReason::LineLoadWantsSpacing;
        link.finding = LinkFinding::NotMeasured(Hidden { reason });
        link.ratio = None;
    }
    link
}

/// What somebody saw takes a pass away, and never gives one.
fn with_what_is_seen(link: Link, seen: &Seen<'_, '_>) -> Link {
    let structural =
        holds_the_post(link.kind) || matches!(link.kind, LinkKind::RailEnd | LinkKind::TopRail);
    let moves = |word: MovesWhenPushedWord| seen.mentions(word);
    let ill = |word: ConditionWord| seen.mentions(word);
    let held_below = matches!(
        link.kind,
        LinkKind::PostFixing | LinkKind::Framing | LinkKind::FramingConnection
    );
    let reason = if structural && moves(MovesWhenPushedWord::ALot) {
        LinkReason::MovesALot
    } else if ill(ConditionWord::Rot) || ill(ConditionWord::Cracks) || ill(ConditionWord::DeepRust)
    {
        LinkReason::DecayedSomewhere
    } else if structural && link.kind != LinkKind::RailEnd && cables::has_cables(seen) {
        LinkReason::CablesPullOnTop
    } else if held_below && moves(MovesWhenPushedWord::ALittle) {
        LinkReason::MovesALittle
    } else if holds_the_post(link.kind) && seen.height_is_open() {
        return link.never_passing(LinkReason::RailMayBeHigher, &[Item::Height]);
    } else {
        return link;
    };
    link.never_passing(reason, &[])
}

/// Sound wood and metal in contact are what the numbers hold for: a link shows no
/// shortfall only where somebody looked.
fn with_what_was_looked_at(link: Link, seen: &Seen<'_, '_>) -> Link {
    let looked = seen.words::<ConditionWord>().any(|word| {
        !matches!(
            word,
            ConditionWord::Dry | ConditionWord::Wet | ConditionWord::NoneSeen
        )
    });
    let mut link = if looked {
        link
    } else {
        let reason = LinkReason::ConditionNotWritten;
        link.never_passing(reason, &[Item::Condition])
    };
    let structural = holds_the_post(link.kind) || link.kind == LinkKind::RailEnd;
    if structural && seen.word::<MovesWhenPushedWord>().is_none() {
        let reason = LinkReason::MovementNotWritten;
        link = link.never_passing(reason, &[Item::MovesWhenPushed]);
    }
    if !holds_the_post(link.kind) {
        return link;
    }
    if seen.word::<InfillWord>().is_none() {
        let reason = LinkReason::CablesNotWritten;
        link = link.never_passing(reason, &[Item::Infill]);
    }
    let wooden = seen
        .word::<PostMaterialWord>()
        .is_none_or(|word| word == PostMaterialWord::Wood);
    if link.kind == LinkKind::Post && wooden && seen.word::<NotchedPostWord>().is_none() {
        let reason = LinkReason::NotchNotWritten;
        link = link.never_passing(reason, &[Item::NotchedPost]);
    }
    let side = matches!(fixed(seen), Some(Fixed::OnTheSide | Fixed::FlatOnAJoist));
    if side && seen.word::<PostPositionWord>().is_none() {
        let reason = LinkReason::PostPositionNotWritten;
        link = link.never_passing(reason, &[Item::PostPosition]);
    }
    let touches = seen.word() == Some(BehindThePostWord::Nothing);
    if link.kind != LinkKind::Post && side && !touches {
        let reason = LinkReason::ContactNotWritten;
        link = link.never_passing(reason, &[Item::BehindThePost]);
    }
    link
}

/// What is seen at the guard that no number counts, the worst first.
fn wrong(seen: &Seen<'_, '_>) -> Vec<Wrong> {
    let moves = |word: MovesWhenPushedWord| seen.mentions(word);
    let ill = |word: ConditionWord| seen.mentions(word);
    let apart = [
        BehindThePostWord::Siding,
        BehindThePostWord::Spacers,
        BehindThePostWord::Gap,
    ];
    let wide = seen
        .known_length(Item::FastenerSpacing)
        .is_some_and(|apart| apart > WIDEST_ACROSS_GRAIN + inches(1e-6));
    let bolted = fixed(seen) == Some(Fixed::OnTheSide);
    [
        (moves(MovesWhenPushedWord::ALot), Wrong::MovesALot),
        (ill(ConditionWord::Rot), Wrong::Rot),
        (ill(ConditionWord::DeepRust), Wrong::DeepRust),
        (ill(ConditionWord::Cracks), Wrong::Cracks),
        (seen.mentions(NotchedPostWord::Yes), Wrong::Notched),
        (seen.mentions_any(&apart), Wrong::Apart),
        (cables::has_cables(seen), Wrong::Cables),
        (moves(MovesWhenPushedWord::ALittle), Wrong::MovesALittle),
        (wide && bolted, Wrong::WideAcrossGrain),
    ]
    .into_iter()
    .filter_map(|(there, what)| there.then_some(what))
    .collect()
}

/// Characteristic loads are never compared with allowable capacities.
fn demand_only(link: &mut Link) {
    link.demand_only();
    if matches!(link.finding, LinkFinding::ByRule(_)) {
        return;
    }
    let whole = link.demand.is_some() && !link.taken.contains(&Taken::PointAlone);
    let reason = if whole {
        LinkReason::CharacteristicLoads
    } else {
        LinkReason::CharacteristicLoadsWantLengths
    };
    link.finding = LinkFinding::NotMeasured(Hidden { reason });
    // what the load itself wants is still worth writing down, and nothing else
    link.asks
        .retain(|item| !whole && OF_THE_LOAD.contains(item));
}

/// Items that the load on a link depends on.
const OF_THE_LOAD: &[Item] = &[
    Item::BalusterLength,
    Item::BalusterSpacing,
    Item::CableCount,
    Item::EdgeDistance,
    Item::FastenerSpacing,
    Item::Height,
    Item::PostFasteners,
    Item::PostSpacing,
];
