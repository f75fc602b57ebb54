//! The infill and its ends.

use crate::items::BalusterFixingWord;
use crate::items::InfillWord;
use crate::items::Item;
use crate::items::PostMaterialWord;
use crate::judge::load_path::link::Link;
use crate::judge::load_path::link::LinkKind;
use crate::judge::load_path::link::Taken;
use crate::judge::load_path::load::Loads;
use crate::judge::load_path::seen::Seen;
use crate::judge::load_path::service::Wood;
use crate::judge::load_path::wood;
use crate::quantities::Distance;
use crate::quantities::Force;
use crate::quantities::Moment;
use crate::quantities::inches;
use crate::statics::Ends;
use crate::statics::Line;
use crate::statics::Worked;
use crate::statics::cable::Cable;
use crate::statics::cable::stretch_of_strand;
use crate::statics::infill::baluster_end;
use crate::statics::withdrawal::Pulled;
use crate::statics::withdrawal::withdrawal;

const BENDING: &str = "a baluster bending";

/// The links of the infill; none where the rule states no load on it.
pub(super) fn links(seen: &Seen<'_, '_>, wood: &Wood, loads: Loads<'_>) -> Vec<Link> {
    let asked = loads.demand.infill.is_some() || loads.demand.infill_pressure.is_some();
    if !asked {
        return Vec::new();
    }
    match seen.word::<InfillWord>() {
        Some(InfillWord::Balusters) => balusters(seen, wood, loads),
        Some(InfillWord::Cables | InfillWord::UprightCables | InfillWord::Net) => {
            let reason = "how tight the cables are and what the end posts take is for an engineer";
            let link = Link::hidden(LinkKind::Infill, "cables", reason, &[]);
            vec![match pushed_cable(seen, loads) {
                Some(lines) => link.explaining(PUSHED, lines),
                None => link,
            }]
        }
        Some(_) => vec![Link::hidden(
            LinkKind::Infill,
            "panels or bars",
            "no method here for this infill; glass and panels are for their maker or an engineer",
            &[],
        )],
        None => vec![Link::hidden(
            LinkKind::Infill,
            "what fills it",
            "nobody wrote what the infill is",
            &[Item::Infill],
        )],
    }
}

const PUSHED: &str = "one cable of 1/8 in pushed at the middle of a bay, clamped at the posts";

/// How far a cable gives and how hard it then pulls: for a reader, and for no verdict.
fn pushed_cable(seen: &Seen<'_, '_>, loads: Loads<'_>) -> Option<Vec<Line>> {
    let tension = seen.forces(Item::CableTension)?.low;
    let bay = loads.spacing?;
    let push = loads.demand.infill.as_ref()?.force.value;
    let stretch = stretch_of_strand(inches(0.125));
    let cable = Cable {
        bay,
        run: bay,
        pretension: tension,
        stretch: stretch.value,
    };
    Some(cable.pushed(push).ok()?.after(stretch).lines)
}

fn balusters(seen: &Seen<'_, '_>, wood: &Wood, loads: Loads<'_>) -> Vec<Link> {
    let load = on_one(seen, loads);
    let fixing = fixing(seen, wood, load.as_ref().map(|(_, force)| force));
    let Some((moment, _)) = load else {
        let reason = "nobody wrote how far apart and how long the balusters are";
        let asks = [Item::BalusterSpacing, Item::BalusterLength];
        return vec![
            Link::hidden(LinkKind::Infill, BENDING, reason, &asks),
            fixing,
        ];
    };
    vec![bending(seen, wood, moment), fixing]
}

/// The moment of one baluster and the load on it.
pub(super) fn on_one(
    seen: &Seen<'_, '_>,
    loads: Loads<'_>,
) -> Option<(Worked<Moment>, Worked<Force>)> {
    let length = seen.known_length(Item::BalusterLength)?;
    loads.baluster_load(seen.known_length(Item::BalusterSpacing), length)
}

fn bending(seen: &Seen<'_, '_>, wood: &Wood, moment: Worked<Moment>) -> Link {
    let demand = Ends::exactly(moment);
    let kind = LinkKind::Infill;
    let without =
        |reason, asks: &[Item]| Link::hidden(kind, BENDING, reason, asks).with_demand(&demand);
    let Some((a, b)) = seen.section(Item::BalusterSection) else {
        let reason = "nobody wrote how thick the balusters are";
        return without(reason, &[Item::BalusterSection]);
    };
    match seen.word::<PostMaterialWord>() {
        Some(PostMaterialWord::Wood) => {}
        Some(_) => {
            return without(
                "balusters of metal or plastic: no published strength fits unseen",
                &[],
            );
        }
        None => return without("nobody wrote what it is made of", &[Item::PostMaterial]),
    }
    // the load comes square to the guard, across the side that lies along the rail
    match wood::moment(wood, a, b) {
        Some(takes) => Link::weighed(kind, BENDING, &demand, &takes.ends)
            .taking(&wood.taken_in_bending())
            .taking(&[Taken::SameMaterial])
            .asking(&wood.narrows_bending())
            .lowest(takes.lowest),
        None => without("no published factors for wood of this size", &[]),
    }
}

/// The thread that one screw at each end is taken to have.
const HELD: Distance = inches(0.5);

/// A No. 8 wood screw.
const NUMBER_8: Distance = inches(0.164);

fn fixing(seen: &Seen<'_, '_>, wood: &Wood, load: Option<&Worked<Force>>) -> Link {
    let kind = LinkKind::InfillFixing;
    let case = "pulled out";
    let demand = load.map(|load| Ends::exactly(baluster_end(load.value).after(load.clone())));
    let without = |reason, asks: &[Item]| {
        let link = Link::hidden(kind, case, reason, asks);
        match &demand {
            Some(demand) => link.with_demand(demand),
            None => link,
        }
    };
    match (seen.word::<BalusterFixingWord>(), &demand) {
        (Some(BalusterFixingWord::Screws), Some(demand)) => {
            let all = wood.lumber().iter().flat_map(|species| {
                let gravity = species.gravity.value;
                let pulled = Pulled::WoodScrew(NUMBER_8);
                wood.joints()
                    .map(move |service| withdrawal(pulled, gravity, HELD, service))
            });
            match Ends::of_worked(all.flatten()) {
                Some(capacity) => Link::weighed(kind, case, demand, &capacity)
                    .taking(wood.taken())
                    .taking(&[Taken::OneScrew]),
                None => without("outside the published tables", &[]),
            }
        }
        (Some(BalusterFixingWord::BradsOrGlue), _) => {
            without("brads and glue have no value that may be counted", &[])
        }
        (Some(BalusterFixingWord::Nails), _) => {
            without("how the nails sit, and how deep, cannot be seen", &[])
        }
        (Some(BalusterFixingWord::Hidden), _) => {
            without("the ends of the balusters cannot be seen", &[])
        }
        (Some(_), _) => without("no published value for this fixing", &[]),
        (None, _) => without(
            "nobody wrote what holds the balusters",
            &[Item::BalusterFixing],
        ),
    }
}
