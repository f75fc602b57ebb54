//! The chain of one guard under one rule's loads.

use crate::items::ConditionWord;
use crate::items::Item;
use crate::items::NotchedPostWord;
use crate::judge::load_path::fixing;
use crate::judge::load_path::framing;
use crate::judge::load_path::infill;
use crate::judge::load_path::link::Chain;
use crate::judge::load_path::link::Hidden;
use crate::judge::load_path::link::Link;
use crate::judge::load_path::link::LinkFinding;
use crate::judge::load_path::link::LinkKind;
use crate::judge::load_path::link::Taken;
use crate::judge::load_path::load::Loads;
use crate::judge::load_path::post;
use crate::judge::load_path::pull;
use crate::judge::load_path::rail;
use crate::judge::load_path::seen::Seen;
use crate::judge::load_path::service::Wood;
use crate::judge::scene::Scene;
use crate::quantities::Moment;
use crate::rules::LoadBasis;
use crate::rules::LoadDemand;
use crate::rules::Member;

/// Follows the load from the infill and the rail down to the framing.
pub(in crate::judge) fn chain(scene: &Scene<'_>, demand: &LoadDemand) -> Chain {
    let seen = Seen::of(scene);
    let wood = Wood::of(&seen);
    let loads = Loads {
        demand,
        spacing: seen.there(Item::PostSpacing),
    };
    let mut links = infill::links(&seen, &wood, loads);
    links.extend(rail::links(&seen, &wood, loads));
    links.push(rail::end(&seen, &wood, loads));
    links.extend(rail::end_pressed(&seen, &wood, loads));
    links.extend(post::links(&seen, &wood, loads));
    links.extend(fixing::links(&seen, &wood, loads));
    links.push(framing::link(&seen, loads));
    for link in &mut links {
        all_of_the_load(link, loads);
        condition(link, &seen);
    }
    if demand.basis == LoadBasis::Characteristic {
        links.iter_mut().for_each(demand_only);
    }
    links.extend(pull::link(&seen));
    let written = seen.anything();
    if !written {
        // a list of what nobody wrote would only bury the rest
        links.clear();
    }
    Chain {
        basis: demand.basis,
        units: seen.units(),
        links,
        written,
        moments: moments(&seen, loads),
    }
}

fn moments(seen: &Seen<'_, '_>, loads: Loads<'_>) -> Vec<(Member, Moment)> {
    let infill = infill::on_one(seen, loads).map(|(moment, _)| moment);
    [
        (Member::Infill, infill),
        (Member::Post, post::moment(seen, loads)),
        (Member::Rail, rail::moment(loads)),
    ]
    .into_iter()
    .filter_map(|(member, moment)| Some((member, moment?.value)))
    .collect()
}

fn not_measured(link: &mut Link, reason: &'static str, asks: &[Item]) {
    link.finding = LinkFinding::NotMeasured(Hidden { reason });
    link.asks.extend_from_slice(asks);
    link.ratio = None;
}

/// Where a load along the top needs a spacing that nobody wrote, the demand may
/// be greater than the one worked out: only a shortfall can be told.
fn all_of_the_load(link: &mut Link, loads: Loads<'_>) {
    let bears = matches!(
        link.kind,
        LinkKind::FramingConnection | LinkKind::Post | LinkKind::PostFixing | LinkKind::RailEnd
    );
    if !bears || !loads.lacks_spacing() {
        return;
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
        let reason = "the load along the top depends on how far apart the posts are";
        not_measured(link, reason, &[]);
    }
}

/// Sound wood and metal are what the numbers hold for: a link shows no shortfall
/// only where somebody looked.
fn condition(link: &mut Link, seen: &Seen<'_, '_>) {
    let rotten = seen.has(ConditionWord::Rot);
    let open = matches!(
        link.finding,
        LinkFinding::NoShortfall | LinkFinding::TooClose
    );
    if rotten && open && link.kind == LinkKind::PostFixing {
        return not_measured(link, "rotten wood: no number can be trusted", &[]);
    }
    if link.finding != LinkFinding::NoShortfall {
        return;
    }
    let weakened = seen.words().any(|word| tells(word) == Tells::Weaker);
    let looked = seen.words().any(|word| tells(word) != Tells::Nothing);
    let notch = seen.word::<NotchedPostWord>();
    let notch_unknown = notch.is_none() && link.kind == LinkKind::Post;
    if weakened {
        let reason = "cracks, deep rust or rot take strength that no number here counts";
        not_measured(link, reason, &[]);
    } else if !looked {
        let reason = "nobody wrote whether there is rot, rust or a crack";
        not_measured(link, reason, &[Item::Condition]);
    } else if notch_unknown {
        let reason = "nobody wrote whether the post is notched where it is fixed";
        not_measured(link, reason, &[Item::NotchedPost]);
    }
}

/// What a word of `condition` tells about strength.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Tells {
    Nothing,
    Sound,
    Weaker,
}

fn tells(word: ConditionWord) -> Tells {
    match word {
        ConditionWord::Cracks | ConditionWord::DeepRust | ConditionWord::Rot => Tells::Weaker,
        ConditionWord::Sound | ConditionWord::SurfaceRust => Tells::Sound,
        // looked at without a probe; how wet it is; a pane between the posts
        ConditionWord::BrokenGlass
        | ConditionWord::Dry
        | ConditionWord::NoneSeen
        | ConditionWord::Wet => Tells::Nothing,
    }
}

/// Characteristic loads are never compared with allowable capacities.
fn demand_only(link: &mut Link) {
    link.demand_only();
    if matches!(link.finding, LinkFinding::ByRule(_)) {
        return;
    }
    let whole = link.demand.is_some() && !link.taken.contains(&Taken::PointAlone);
    let reason = if whole {
        "this rule's loads are characteristic ones: what the link can take has to come from the same country's design code"
    } else {
        "this rule's loads are characteristic ones; the load on this link wants more lengths"
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
    Item::EdgeDistance,
    Item::FastenerSpacing,
    Item::Height,
    Item::PostFasteners,
    Item::PostSpacing,
];
