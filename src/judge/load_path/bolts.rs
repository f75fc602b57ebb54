//! Through bolts: the couple stretches one of them, or pushes both sideways where the
//! post lies flat on a joist; somebody on the rail presses both down.

use crate::judge::load_path::sources;
use crate::judge::load_path::why::LinkCase;
use crate::judge::load_path::why::LinkReason;
use uom::si::angle::degree;

use crate::items::Item;
use crate::items::PostMaterialWord;
use crate::judge::load_path::arm::Fixed;
use crate::judge::load_path::arm::arm_taken;
use crate::judge::load_path::arm::couple_asks;
use crate::judge::load_path::arm::fixed;
use crate::judge::load_path::arm::off_the_joists;
use crate::judge::load_path::arm::stretch;
use crate::judge::load_path::arm::with_stretch;
use crate::judge::load_path::link::Link;
use crate::judge::load_path::link::LinkKind;
use crate::judge::load_path::link::Mend;
use crate::judge::load_path::link::Taken;
use crate::judge::load_path::load::Loads;
use crate::judge::load_path::screws::NO_NUMBERS;
use crate::judge::load_path::screws::lightest_and_heaviest;
use crate::judge::load_path::screws::on_one;
use crate::judge::load_path::seen::Seen;
use crate::judge::load_path::seen::diameter;
use crate::judge::load_path::service::Wood;
use crate::judge::load_path::washer;
use crate::judge::load_path::woods::HINGE;
use crate::judge::load_path::woods::Woods;
use crate::judge::load_path::woods::apart;
use crate::judge::load_path::woods::framing_thickness;
use crate::judge::load_path::woods::not_in_wood;
use crate::quantities::Angle;
use crate::quantities::Distance;
use crate::quantities::Force;
use crate::quantities::inches;
use crate::reading::FastenerSize;
use crate::statics::Ends;
use crate::statics::Provenance;
use crate::statics::Worked;
use crate::statics::dowel::Dowel;
use crate::statics::dowel::dowel_bearing;
use crate::statics::factors::SpecificGravity;
use crate::statics::hardware::bolt_tension;
use crate::statics::joint::FastenerRow;
use crate::statics::joint::GeometryFactor;
use crate::statics::joint::Seasoning;
use crate::statics::joint::group_action;
use crate::statics::joint::lateral_allowable;
use crate::statics::lateral::BearingMember;
use crate::statics::lateral::Joint;
use crate::statics::lateral::Shear;

const KIND: LinkKind = LinkKind::PostFixing;
const STEEL: LinkCase = LinkCase::BoltPulled;
const DOWN: LinkCase = LinkCase::BoltsPressedDown;

/// The links of a post on through bolts.
pub(super) fn bolts(seen: &Seen<'_, '_>, woods: Woods<'_>, loads: Loads<'_>) -> Vec<Link> {
    let Some(fasteners) = seen.fasteners(Item::PostFasteners) else {
        let link = Link::hidden(KIND, LinkCase::Bolts, NO_NUMBERS, &[Item::PostFasteners]);
        return vec![with_stretch(link, seen, loads)];
    };
    let without = |reason| vec![Link::hidden(KIND, LinkCase::Bolts, reason, &[])];
    if matches!(fasteners.size, FastenerSize::Number(_)) {
        return without(LinkReason::BoltsHaveNoNumbers);
    }
    let Some(diameter) = diameter(fasteners.size) else {
        return without(LinkReason::BoltsHaveNoNumbers);
    };
    if fasteners.count < 2 {
        return without(HINGE);
    }
    match fixed(seen) {
        Some(Fixed::FlatOnAJoist) => {
            let mut links = vec![couple_across(
                seen,
                woods,
                loads,
                (diameter, fasteners.count),
            )];
            links.extend(weight(seen, woods, loads, (diameter, fasteners.count)));
            return links;
        }
        Some(Fixed::OnTheSide) => {}
        Some(Fixed::OnTop) | None => {
            return without(LinkReason::BoltsThroughPostOnFloor);
        }
    }
    let Some(demand) = stretch(seen, loads) else {
        let reason = LinkReason::PullOnUpperBoltUnknown;
        return vec![Link::hidden(KIND, STEEL, reason, &couple_asks(seen))];
    };
    let demand = on_one(demand, fasteners);
    let steel = Ends::exactly(bolt_tension(diameter));
    let mut links = vec![
        Link::weighed(KIND, STEEL, &demand, &steel)
            .taking(&arm_taken(seen))
            .mending(Mend::ThickerPost),
        washer::of_bolts(seen, woods, diameter, &demand),
    ];
    links.extend(weight(seen, woods, loads, (diameter, fasteners.count)));
    links
}

/// The weight of somebody on the rail, shared by the bolts in shear.
fn weight(
    seen: &Seen<'_, '_>,
    woods: Woods<'_>,
    loads: Loads<'_>,
    (diameter, count): (Distance, u32),
) -> Option<Link> {
    let demand = share_of_the_weight(loads, count)?;
    let without =
        |reason, asks: &[Item]| Some(Link::hidden(KIND, DOWN, reason, asks).with_demand(&demand));
    if let Some((reason, asks)) = not_in_wood(seen) {
        return without(reason, asks);
    }
    let (a, b) = match wooden_post(seen) {
        Ok(section) => section,
        Err((reason, asks)) => return without(reason, asks),
    };
    if let Some(near) = too_near(seen, diameter) {
        return Some(near.with_demand(&demand));
    }
    let joint = |post, framing, thick| in_shear(post, framing, diameter, (a.min(b), thick));
    let Some(capacity) = laterally(seen, woods, (diameter, count), (a.min(b), joint)) else {
        return without(LinkReason::NoTableForBolts, &[]);
    };
    let link = Link::weighed(KIND, DOWN, &demand, &capacity)
        .taking(woods.framing.taken())
        .taking(&[Taken::Distances])
        .asking(&woods.framing.narrows())
        .mending(Mend::Bolts);
    let lengths = [Item::RimDepth, Item::FastenerDepth, Item::FastenerSpacing];
    let missing: Vec<Item> = lengths
        .into_iter()
        .filter(|item| seen.known_length(*item).is_none())
        .collect();
    Some(if missing.is_empty() {
        link
    } else {
        let reason = LinkReason::BoltEdgesNotWritten;
        link.never_passing(reason, &missing)
    })
}

/// Z' of one bolt at both ends of what the woods may be.
fn laterally(
    seen: &Seen<'_, '_>,
    woods: Woods<'_>,
    (diameter, count): (Distance, u32),
    (post, joint): (
        Distance,
        impl Fn(SpecificGravity, SpecificGravity, Distance) -> Joint,
    ),
) -> Option<Ends<Worked<Force>>> {
    let thick = framing_thickness(seen);
    let ends = [thick.low, thick.high];
    let gravities = lightest_and_heaviest(woods.post)
        .into_iter()
        .zip(lightest_and_heaviest(woods.framing));
    let mut all = Vec::new();
    for ((post_gravity, framing_gravity), thick) in
        gravities.flat_map(|pair| ends.map(|t| (pair, t)))
    {
        let reference = joint(post_gravity, framing_gravity, thick).reference();
        for group in in_a_row(seen, woods, (diameter, count), (post, thick)) {
            let load = reference.value.load * group.value;
            for service in woods.framing.joints() {
                let dowel = Dowel::Bolt { diameter };
                let seasoning = Seasoning::Seasoned;
                let one = lateral_allowable(load, dowel, service, seasoning, GeometryFactor::FULL);
                all.push(one.after(group.clone()).after(reference.clone()));
            }
        }
    }
    Ends::of_worked(all)
}

/// C_g of the bolts one below the other, at the softest and the stiffest wood that
/// it may be and at bolts near each other and apart.
fn in_a_row(
    seen: &Seen<'_, '_>,
    woods: Woods<'_>,
    (diameter, count): (Distance, u32),
    (post, rim): (Distance, Distance),
) -> Vec<Worked<f64>> {
    let apart = seen
        .known_length(Item::FastenerSpacing)
        .map_or([inches(1.0), inches(12.0)], |apart| [apart, apart]);
    let stiffness = |wood: &Wood| {
        let all = wood.lumber().iter().map(|species| species.elasticity.value);
        Ends::over(all)
    };
    let Some((of_post, of_rim)) = stiffness(woods.post).zip(stiffness(woods.framing)) else {
        return Vec::new();
    };
    let mut all = Vec::new();
    for (post_stiff, rim_stiff) in [(of_post.low, of_rim.low), (of_post.high, of_rim.high)] {
        for apart in apart {
            all.push(group_action(FastenerRow {
                diameter,
                count,
                apart,
                stretch: [post_stiff * post * post, rim_stiff * rim * apart],
            }));
        }
    }
    all
}

/// A post flat on the side of a joist: the couple pushes the upper bolts sideways,
/// the post across its grain and the joist along.
fn couple_across(
    seen: &Seen<'_, '_>,
    woods: Woods<'_>,
    loads: Loads<'_>,
    (diameter, count): (Distance, u32),
) -> Link {
    let case = LinkCase::BoltsPushedSideways;
    let Some(demand) = off_the_joists(seen, loads) else {
        let reason = LinkReason::CoupleOnBoltsUnknown;
        return Link::hidden(KIND, case, reason, &couple_asks(seen));
    };
    let demand = on_one(
        demand,
        crate::reading::Fasteners {
            count,
            size: FastenerSize::Number(0),
            length: None,
        },
    );
    let without =
        |reason, asks: &[Item]| Link::hidden(KIND, case, reason, asks).with_demand(&demand);
    if let Some((reason, asks)) = not_in_wood(seen) {
        return without(reason, asks);
    }
    let (a, b) = match wooden_post(seen) {
        Ok(section) => section,
        Err((reason, asks)) => return without(reason, asks),
    };
    let joint = |post, framing, thick| along_the_joist(post, framing, diameter, (a.min(b), thick));
    match laterally(seen, woods, (diameter, 1), (a.min(b), joint)) {
        Some(capacity) => Link::weighed(KIND, case, &demand, &capacity)
            .taking(woods.framing.taken())
            .taking(&arm_taken(seen))
            .taking(&[Taken::Distances])
            .asking(&woods.framing.narrows())
            .mending(Mend::Bolts),
        None => without(LinkReason::NoTableForBolts, &[]),
    }
}

/// What each of a post's fasteners carries of somebody who sits on the rail;
/// none where the rule's loads are level.
pub(super) fn share_of_the_weight(loads: Loads<'_>, count: u32) -> Option<Ends<Worked<Force>>> {
    let point = loads.demand.concentrated.as_ref()?;
    if !loads.presses_down() {
        return None;
    }
    let inputs = [("F", point.value.into()), ("n", f64::from(count).into())];
    let share = point.value / f64::from(count);
    Some(Ends::exactly(Worked::new(
        "V_1",
        "F/n",
        &inputs,
        share,
        Provenance::MECHANICS,
    )))
}

/// The section of a wooden post, or why there is none to reckon with.
pub(super) fn wooden_post(
    seen: &Seen<'_, '_>,
) -> Result<(Distance, Distance), (LinkReason, &'static [Item])> {
    if let Some(reason) = apart(seen) {
        return Err((reason, &[]));
    }
    match (
        seen.word::<PostMaterialWord>(),
        seen.section(Item::PostSection),
    ) {
        (Some(PostMaterialWord::Wood), Some(section)) => Ok(section),
        (Some(PostMaterialWord::Wood), None) => {
            Err((LinkReason::PostThicknessNotWritten, &[Item::PostSection]))
        }
        (Some(_), _) => Err((LinkReason::PostNotWood, &[])),
        (None, _) => Err((LinkReason::MaterialOfPostsNotWritten, &[Item::PostMaterial])),
    }
}

/// A fastener nearer to an edge than the method allows at all: 4 D from the edge
/// that it presses towards, 1 1/2 D from the other (NDS 2018 Table 12.5.1C, read
/// second-hand, from 1/4 in on).
pub(super) fn too_near(seen: &Seen<'_, '_>, diameter: Distance) -> Option<Link> {
    let hair = inches(1e-6);
    // the thickest of several is the nearest
    let diameter = seen
        .thickest(Item::PostFasteners)
        .map_or(diameter, |thickest| thickest.max(diameter));
    if diameter < inches(0.25) - hair {
        return None;
    }
    let near = |edge: Distance, least: f64| edge < diameter * least - hair;
    let known = |item| seen.all_lengths(item);
    let (top, apart) = (known(Item::FastenerDepth), known(Item::FastenerSpacing));
    let below = known(Item::RimDepth)
        .zip(top)
        .zip(apart)
        .map(|((rim, depth), apart)| rim.low - depth.high - apart.high);
    let any = known(Item::EdgeDistance);
    let is_near = below.is_some_and(|edge| near(edge, 4.0))
        || top.is_some_and(|depth| near(depth.low, 1.5))
        || any.is_some_and(|edge| near(edge.low, 1.5));
    is_near.then(|| {
        Link::by_rule(KIND, DOWN, LinkReason::BoltNearEdge, sources::NEAR_THE_EDGE)
            .mending(Mend::Tie)
    })
}

fn bears(gravity: SpecificGravity, diameter: Distance, angle: f64) -> crate::quantities::Pressure {
    dowel_bearing(gravity, diameter, Angle::new::<degree>(angle)).value
}

/// The post along its grain, the rim across.
fn in_shear(
    post: SpecificGravity,
    framing: SpecificGravity,
    diameter: Distance,
    (post_thick, thick): (Distance, Distance),
) -> Joint {
    Joint {
        dowel: Dowel::Bolt { diameter },
        main: BearingMember {
            bearing: bears(post, diameter, 0.0),
            length: post_thick,
        },
        side: BearingMember {
            bearing: bears(framing, diameter, 90.0),
            length: thick,
        },
        angle: Angle::new::<degree>(90.0),
        shear: Shear::Single,
    }
}

/// The post across its grain, the joist along.
fn along_the_joist(
    post: SpecificGravity,
    framing: SpecificGravity,
    diameter: Distance,
    (post_thick, thick): (Distance, Distance),
) -> Joint {
    Joint {
        dowel: Dowel::Bolt { diameter },
        main: BearingMember {
            bearing: bears(post, diameter, 90.0),
            length: post_thick,
        },
        side: BearingMember {
            bearing: bears(framing, diameter, 0.0),
            length: thick,
        },
        angle: Angle::new::<degree>(90.0),
        shear: Shear::Single,
    }
}
