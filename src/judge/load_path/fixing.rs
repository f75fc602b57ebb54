//! What fastens a post: the couple of two bolts, screws pulled out and pushed
//! sideways (NDS 2018 chapter 12, read second-hand).

use uom::si::angle::degree;

use crate::items::Item;
use crate::judge::load_path::link::Link;
use crate::judge::load_path::link::LinkKind;
use crate::judge::load_path::link::Taken;
use crate::judge::load_path::load::Loads;
use crate::judge::load_path::plate::plate;
use crate::judge::load_path::screws::Layers;
use crate::judge::load_path::screws::NO_NUMBERS;
use crate::judge::load_path::screws::NO_THREAD;
use crate::judge::load_path::screws::held;
use crate::judge::load_path::screws::one_of;
use crate::judge::load_path::screws::pushed_sideways;
use crate::judge::load_path::seen::Seen;
use crate::judge::load_path::seen::WrittenLength;
use crate::judge::load_path::service::Wood;
use crate::quantities::Angle;
use crate::quantities::Distance;
use crate::quantities::Force;
use crate::quantities::inches;
use crate::reading::FastenerSize;
use crate::reading::Fasteners;
use crate::rules::Direction;
use crate::statics::Ends;
use crate::statics::Provenance;
use crate::statics::Worked;
use crate::statics::couple::PushWay;
use crate::statics::couple::couple;
use crate::statics::demand::lever_arm;
use crate::statics::dowel::Dowel;
use crate::statics::dowel::dowel_bearing;
use crate::statics::factors::SpecificGravity;
use crate::statics::hardware::bolt_tension;
use crate::statics::joint::GeometryFactor;
use crate::statics::joint::Seasoning;
use crate::statics::joint::lateral_allowable;
use crate::statics::lateral::BearingMember;
use crate::statics::lateral::Joint;
use crate::statics::lateral::Shear;
use crate::statics::washer::Washer;
use crate::statics::washer::WasherPlace;
use crate::statics::washer::washer_bearing;

const KIND: LinkKind = LinkKind::PostFixing;

/// The links of the post's fixing.
pub(super) fn links(seen: &Seen<'_, '_>, wood: &Wood, loads: Loads<'_>) -> Vec<Link> {
    if seen.has(Item::PostFastening, "nails") {
        return vec![with_pull(
            Link::by_rule(
                KIND,
                "pulled out",
                "nails draw out: they may not be relied on to hold a post against a pull",
                "NDS 2018 §12.2.3, read second-hand; common practice",
            ),
            seen,
            loads,
        )];
    }
    match seen.word(Item::PostFastening) {
        Some("through bolts") => bolts(seen, wood, loads),
        Some("lag screws" | "wood screws") => screws_in_the_side(seen, wood, loads),
        Some("plate") => vec![plate(seen, wood, loads)],
        Some("unknown") => vec![with_pull(
            Link::hidden(
                KIND,
                "what holds the post",
                "it cannot be seen: ask to lift the cover or the board at the foot of a post",
                &[],
            ),
            seen,
            loads,
        )],
        Some("embedded") => vec![hidden(
            "what a post set in concrete holds cannot be told from outside: look for cracks, rust stains and standing water in the socket",
        )],
        Some("masonry anchors") => vec![with_pull(
            hidden(
                "anchors depend on the concrete or masonry around them and on the distance to its edge: somebody who knows them has to look",
            ),
            seen,
            loads,
        )],
        Some(_) => vec![hidden(
            "no published value: a bracket's stands on its label, a weld's is for a welder or an engineer",
        )],
        None => vec![with_pull(
            Link::hidden(
                KIND,
                "what holds the post",
                "nobody wrote what holds the posts",
                &[Item::PostFastening],
            ),
            seen,
            loads,
        )],
    }
}

fn hidden(reason: &'static str) -> Link {
    Link::hidden(KIND, "what holds the post", reason, &[])
}

/// The pull on the upper fastener of a post on the side of the framing, outward;
/// inward the lower one is pulled, and by less.
pub(super) fn pull(seen: &Seen<'_, '_>, loads: Loads<'_>) -> Option<Ends<Worked<Force>>> {
    let load = loads.at_the_top()?;
    let apart = seen.there(Item::FastenerSpacing)?;
    let height = seen.height()?;
    let end = |covering, depth| {
        let arm = lever_arm(height, covering, depth);
        couple(PushWay::Outward, load.value, arm.value, apart)
            .map(|couple| couple.tension)
            .after(arm)
            .after(load.clone())
    };
    let (covering, depth) = (seen.covering(), seen.depth());
    Some(Ends {
        low: end(covering.low, depth.low),
        high: end(covering.high, depth.high),
    })
}

/// What was taken as given in the lever arm.
pub(super) fn arm_taken(seen: &Seen<'_, '_>) -> Vec<Taken> {
    let open = |item| seen.length(item) == WrittenLength::Nothing;
    let mut taken = Vec::new();
    if open(Item::DeckingThickness) {
        taken.push(Taken::Covering);
    }
    if open(Item::FastenerDepth) {
        taken.push(Taken::Depth);
    }
    taken
}

/// What a couple lacks.
pub(super) fn couple_asks(seen: &Seen<'_, '_>) -> Vec<Item> {
    let mut asks = Vec::new();
    if seen.there(Item::FastenerSpacing).is_none() {
        asks.push(Item::FastenerSpacing);
    }
    if seen.height().is_none() {
        asks.push(Item::Height);
    }
    asks
}

fn with_pull(link: Link, seen: &Seen<'_, '_>, loads: Loads<'_>) -> Link {
    match pull(seen, loads) {
        Some(demand) => link.with_demand(&demand).taking(&arm_taken(seen)),
        None => link,
    }
}

/// The part of a force that comes on one of a post's upper fasteners: half of
/// all are up there, and of an odd number one more or one less.
fn on_one(force: Ends<Worked<Force>>, fasteners: Fasteners) -> Ends<Worked<Force>> {
    let share = |of: Worked<Force>, count: u32| {
        if count == 1 {
            return of;
        }
        let n = f64::from(count);
        let inputs = [("T", of.value.into()), ("n", n.into())];
        Worked::new("T_1", "T/n", &inputs, of.value / n, Provenance::MECHANICS).after(of)
    };
    Ends {
        low: share(force.low, fasteners.count.div_ceil(2)),
        high: share(force.high, fasteners.count / 2),
    }
}

/// One fastener lets a post turn about it: there is no couple.
const HINGE: &str = "one bolt or screw alone is a hinge: nothing here can be worked out for it";

fn bolts(seen: &Seen<'_, '_>, wood: &Wood, loads: Loads<'_>) -> Vec<Link> {
    let Some(fasteners) = seen.fasteners(Item::PostFasteners) else {
        return vec![with_pull(
            Link::hidden(KIND, "bolts", NO_NUMBERS, &[Item::PostFasteners]),
            seen,
            loads,
        )];
    };
    let FastenerSize::Diameter(diameter) = fasteners.size else {
        return vec![hidden("bolts are not sold by the numbers of wood screws")];
    };
    if fasteners.count < 2 {
        return vec![hidden(HINGE)];
    }
    let diameter: Distance = diameter.to_uom();
    let Some(demand) = pull(seen, loads) else {
        let reason = "the pull on the upper bolt is not known";
        return vec![Link::hidden(
            KIND,
            "bolts pulled",
            reason,
            &couple_asks(seen),
        )];
    };
    let demand = on_one(demand, fasteners);
    let steel = Ends::exactly(bolt_tension(diameter));
    let mut links = vec![
        Link::weighed(KIND, "upper bolt pulled: steel", &demand, &steel).taking(&arm_taken(seen)),
        washer(seen, wood, diameter, &demand),
    ];
    links.extend(weight(seen, wood, loads, fasteners.count, diameter));
    links
}

/// Holes are 1/16 in wider than bolts (NDS 2018
/// §12.1.3.2, read second-hand).
const HOLE: Distance = inches(1.0 / 16.0);

fn washer(
    seen: &Seen<'_, '_>,
    wood: &Wood,
    diameter: Distance,
    demand: &Ends<Worked<Force>>,
) -> Link {
    let case = "upper bolt pulled: washer on the wood";
    let outside = match seen.length(Item::WasherSize) {
        WrittenLength::There(outside) => outside,
        WrittenLength::ThereIsNone => {
            let reason = "no washer: a bare head sinks into the wood, and no value counts for it";
            return Link::hidden(KIND, case, reason, &[]).with_demand(demand);
        }
        WrittenLength::Nothing => {
            let reason = "nobody wrote how wide the washers are";
            let asks = [Item::WasherSize];
            return Link::hidden(KIND, case, reason, &asks).with_demand(demand);
        }
    };
    let washer = Washer::Round {
        outside,
        hole: diameter + HOLE,
    };
    // the post runs on below the upper bolt at least to the lower one
    let far = seen
        .there(Item::FastenerSpacing)
        .is_some_and(|apart| apart >= inches(3.0));
    let places: &[WasherPlace] = if far {
        &[WasherPlace::Within]
    } else {
        &[WasherPlace::NearEnd, WasherPlace::Within]
    };
    let mut all = Vec::new();
    for species in wood.lumber() {
        let Some(across) = species.perpendicular else {
            continue;
        };
        for moisture in wood.moistures() {
            let bearing =
                |place: &WasherPlace| washer_bearing(across.value, washer, *place, *moisture);
            all.extend(places.iter().map(bearing));
        }
    }
    match Ends::of_worked(all) {
        Some(capacity) if outside > diameter + HOLE => Link::weighed(KIND, case, demand, &capacity)
            .taking(wood.taken())
            .asking(&wood.narrows()),
        Some(_) | None => Link::hidden(
            KIND,
            case,
            "the washer is no wider than its hole",
            &[Item::WasherSize],
        ),
    }
}

/// A rim or joist of 2x lumber.
const RIM: Distance = inches(1.5);

/// The weight of somebody on the rail, shared by the bolts in shear.
fn weight(
    seen: &Seen<'_, '_>,
    wood: &Wood,
    loads: Loads<'_>,
    count: u32,
    diameter: Distance,
) -> Option<Link> {
    let case = "bolts pressed down";
    let demand = share_of_the_weight(loads, count)?;
    let without =
        |reason, asks: &[Item]| Some(Link::hidden(KIND, case, reason, asks).with_demand(&demand));
    let (a, b) = match wooden_post(seen) {
        Ok(section) => section,
        Err((reason, asks)) => return without(reason, asks),
    };
    if too_near(seen, diameter) {
        return without(TOO_NEAR, &[]);
    }
    let joints = wood.lumber().iter().flat_map(|species| {
        let gravity = species.gravity.value;
        wood.joints().map(move |service| {
            let reference = in_shear(gravity, diameter, a.min(b)).reference();
            let load = reference.value.load;
            let dowel = Dowel::Bolt { diameter };
            let seasoning = Seasoning::Seasoned;
            lateral_allowable(load, dowel, service, seasoning, GeometryFactor::FULL)
                .after(reference)
        })
    });
    let capacity = Ends::of_worked(joints)?;
    Some(
        Link::weighed(KIND, case, &demand, &capacity)
            .taking(wood.taken())
            .taking(&[Taken::Rim, Taken::Distances]),
    )
}

/// What each of a post's fasteners carries of somebody who sits on the rail;
/// none where the rule's loads are level.
fn share_of_the_weight(loads: Loads<'_>, count: u32) -> Option<Ends<Worked<Force>>> {
    let point = loads.demand.concentrated.as_ref()?;
    if loads.demand.direction == Direction::Level {
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
fn wooden_post(
    seen: &Seen<'_, '_>,
) -> Result<(Distance, Distance), (&'static str, &'static [Item])> {
    match (
        seen.word(Item::PostMaterial),
        seen.section(Item::PostSection),
    ) {
        (Some("wood"), Some(section)) => Ok(section),
        (Some("wood"), None) => Err(("nobody wrote how thick the posts are", &[Item::PostSection])),
        (Some(_), _) => Err((
            "no method here for a fastener through a post that is not wood",
            &[],
        )),
        (None, _) => Err((
            "nobody wrote what the posts are made of",
            &[Item::PostMaterial],
        )),
    }
}

const TOO_NEAR: &str =
    "nearer to the edge of the wood than 1 1/2 diameters: the method gives no value there";

/// Whether a fastener sits nearer to an edge than the method allows at all
/// (NDS 2018 Table 12.5.1C, read second-hand: 1.5 D, from 1/4 in).
fn too_near(seen: &Seen<'_, '_>, diameter: Distance) -> bool {
    let near = |edge: Distance| edge < diameter * 1.5 - inches(1e-6);
    diameter >= inches(0.25 - 1e-6) && seen.there(Item::EdgeDistance).is_some_and(near)
}

fn in_shear(gravity: SpecificGravity, diameter: Distance, post: Distance) -> Joint {
    let along = dowel_bearing(gravity, diameter, Angle::new::<degree>(0.0)).value;
    let across = dowel_bearing(gravity, diameter, Angle::new::<degree>(90.0)).value;
    Joint {
        dowel: Dowel::Bolt { diameter },
        main: BearingMember {
            bearing: along,
            length: post,
        },
        side: BearingMember {
            bearing: across,
            length: RIM,
        },
        angle: Angle::new::<degree>(90.0),
        shear: Shear::Single,
    }
}

/// Lags or wood screws through the post into the side of the framing: pulled
/// out by a push outward, and pressed down.
fn screws_in_the_side(seen: &Seen<'_, '_>, wood: &Wood, loads: Loads<'_>) -> Vec<Link> {
    let case = "upper screw pulled out";
    let Some(fasteners) = seen.fasteners(Item::PostFasteners) else {
        let link = Link::hidden(KIND, case, NO_NUMBERS, &[Item::PostFasteners]);
        return vec![with_pull(link, seen, loads)];
    };
    if fasteners.count < 2 {
        return vec![hidden(HINGE)];
    }
    let layers = behind_the_post(seen, fasteners);
    let mut links = vec![pulled(seen, wood, loads, fasteners, layers)];
    links.extend(pressed(seen, wood, loads, fasteners, layers));
    links
}

fn pulled(
    seen: &Seen<'_, '_>,
    wood: &Wood,
    loads: Loads<'_>,
    fasteners: Fasteners,
    layers: Option<Layers>,
) -> Link {
    let case = "upper screw pulled out";
    let Some(demand) = pull(seen, loads) else {
        let reason = "the pull on the upper screw is not known";
        return Link::hidden(KIND, case, reason, &couple_asks(seen));
    };
    let demand = on_one(demand, fasteners);
    let Some(layers) = layers else {
        let asks = [Item::ThreadInFraming];
        return Link::hidden(KIND, case, NO_THREAD, &asks).with_demand(&demand);
    };
    match held(wood, one_of(fasteners), layers) {
        Ok(capacity) => Link::weighed(KIND, case, &demand, &capacity)
            .taking(wood.taken())
            .taking(&arm_taken(seen))
            .taking(&[Taken::Thread])
            .taking(thickness_taken(seen))
            .asking(&wood.narrows()),
        Err(reason) => Link::hidden(KIND, case, reason, &[]).with_demand(&demand),
    }
}

fn pressed(
    seen: &Seen<'_, '_>,
    wood: &Wood,
    loads: Loads<'_>,
    fasteners: Fasteners,
    layers: Option<Layers>,
) -> Option<Link> {
    let case = "screws pressed down";
    let demand = share_of_the_weight(loads, fasteners.count)?;
    let without =
        |reason, asks: &[Item]| Some(Link::hidden(KIND, case, reason, asks).with_demand(&demand));
    if let Err((reason, asks)) = wooden_post(seen) {
        return without(reason, asks);
    }
    let Some(layers) = layers else {
        return without(NO_THREAD, &[Item::ThreadInFraming]);
    };
    if let FastenerSize::Diameter(diameter) = fasteners.size
        && too_near(seen, diameter.to_uom())
    {
        return without(TOO_NEAR, &[]);
    }
    match pushed_sideways(wood, one_of(fasteners), layers) {
        Ok(capacity) => Some(
            Link::weighed(KIND, case, &demand, &capacity)
                .taking(wood.taken())
                .taking(thickness_taken(seen))
                .taking(&[Taken::Distances])
                .asking(&wood.narrows()),
        ),
        Err(reason) => without(reason, &[]),
    }
}

/// The post, or what a notch may have left of it, and the wood behind it: as
/// thick as somebody wrote, or a rim of 2x lumber and more.
fn behind_the_post(seen: &Seen<'_, '_>, fasteners: Fasteners) -> Option<Layers> {
    let length: Option<Distance> = fasteners.length.map(|length| length.to_uom());
    let whole = seen.word(Item::NotchedPost) == Some("no");
    // how deep a notch is nobody writes: the posts of the published tests
    // kept less than half; where the thread is not written either, a
    // quarter may be left (common practice, no source)
    let share = match (whole, seen.there(Item::ThreadInFraming)) {
        (true, _) => 1.0,
        (false, Some(_)) => 0.5,
        (false, None) => 0.25,
    };
    let post = seen.section(Item::PostSection);
    let post = post.map(|(a, b)| Ends {
        low: a.min(b) * share,
        high: a.max(b),
    });
    match (seen.length(Item::ThreadInFraming), post, length) {
        (WrittenLength::There(into), post, length) => {
            let unknown = Ends {
                low: Distance::default(),
                high: length.unwrap_or(into),
            };
            Some(Layers::written(length, post.unwrap_or(unknown), into))
        }
        (WrittenLength::Nothing | WrittenLength::ThereIsNone, Some(before), Some(length)) => {
            Some(Layers {
                before,
                main: Ends::between(RIM, length),
            })
        }
        (WrittenLength::Nothing | WrittenLength::ThereIsNone, _, _) => None,
    }
}

fn thickness_taken(seen: &Seen<'_, '_>) -> &'static [Taken] {
    if seen.there(Item::ThreadInFraming).is_some() {
        &[]
    } else {
        &[Taken::RimOrMore]
    }
}
