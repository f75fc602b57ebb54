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
use crate::judge::load_path::why::LinkCase;
use crate::judge::load_path::why::LinkReason;
use crate::judge::load_path::why::StepName;
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

const BENDING: LinkCase = LinkCase::BalusterBending;

/// The links of the infill; none where the rule states no load on it.
pub(super) fn links(seen: &Seen<'_, '_>, wood: &Wood, loads: Loads<'_>) -> Vec<Link> {
    let asked = loads.demand.infill.is_some() || loads.demand.infill_pressure.is_some();
    if !asked {
        return Vec::new();
    }
    match seen.word::<InfillWord>() {
        Some(InfillWord::Balusters) => balusters(seen, wood, loads),
        Some(InfillWord::Cables | InfillWord::UprightCables | InfillWord::Net) => {
            let reason = LinkReason::CablesForAnEngineer;
            let link = Link::hidden(LinkKind::Infill, LinkCase::Cables, reason, &[]);
            vec![match pushed_cable(seen, loads) {
                Some(lines) => link.explaining(PUSHED, lines),
                None => link,
            }]
        }
        Some(_) => vec![Link::hidden(
            LinkKind::Infill,
            LinkCase::PanelsOrBars,
            LinkReason::NoMethodForInfill,
            &[],
        )],
        None => vec![Link::hidden(
            LinkKind::Infill,
            LinkCase::Infill,
            LinkReason::InfillNotWritten,
            &[Item::Infill],
        )],
    }
}

const PUSHED: StepName = StepName::CablePushed;

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
        let reason = LinkReason::BalusterSpacingNotWritten;
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
        let reason = LinkReason::BalusterThicknessNotWritten;
        return without(reason, &[Item::BalusterSection]);
    };
    match seen.word::<PostMaterialWord>() {
        Some(PostMaterialWord::Wood) => {}
        Some(_) => {
            return without(LinkReason::BalustersNotWood, &[]);
        }
        None => return without(LinkReason::MaterialNotWritten, &[Item::PostMaterial]),
    }
    // the load comes square to the guard, across the side that lies along the rail
    match wood::moment(wood, a, b) {
        Some(takes) => Link::weighed(kind, BENDING, &demand, &takes.ends)
            .taking(&wood.taken_in_bending())
            .taking(&[Taken::SameMaterial])
            .asking(&wood.narrows_bending())
            .lowest(takes.lowest),
        None => without(LinkReason::NoFactorsForSize, &[]),
    }
}

/// The thread that one screw at each end is taken to have.
const HELD: Distance = inches(0.5);

/// A No. 8 wood screw.
const NUMBER_8: Distance = inches(0.164);

fn fixing(seen: &Seen<'_, '_>, wood: &Wood, load: Option<&Worked<Force>>) -> Link {
    let kind = LinkKind::InfillFixing;
    let case = LinkCase::PulledOut;
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
                None => without(LinkReason::OutsideTables, &[]),
            }
        }
        (Some(BalusterFixingWord::BradsOrGlue), _) => without(LinkReason::BradsOrGlue, &[]),
        (Some(BalusterFixingWord::Nails), _) => without(LinkReason::BalusterNailsUnseen, &[]),
        (Some(BalusterFixingWord::Hidden), _) => without(LinkReason::BalusterEndsUnseen, &[]),
        (Some(_), _) => without(LinkReason::NoValueForFixing, &[]),
        (None, _) => without(
            LinkReason::BalusterFixingNotWritten,
            &[Item::BalusterFixing],
        ),
    }
}
