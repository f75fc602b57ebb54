//! The top rail and its ends.

use crate::items::Item;
use crate::judge::load_path::link::Link;
use crate::judge::load_path::link::LinkKind;
use crate::judge::load_path::link::Taken;
use crate::judge::load_path::load::Loads;
use crate::judge::load_path::screws::Layers;
use crate::judge::load_path::screws::held;
use crate::judge::load_path::screws::rail_end_pressed;
use crate::judge::load_path::seen::Seen;
use crate::judge::load_path::service::Wood;
use crate::judge::load_path::wood;
use crate::quantities::Distance;
use crate::quantities::Moment;
use crate::quantities::inches;
use crate::rules::Direction;
use crate::statics::Ends;
use crate::statics::Worked;
use crate::statics::beam::end_reaction;

const DOWN: &str = "bending, pressed down";
const LEVEL: &str = "bending, pushed level";

/// The rail between two posts.
pub(super) fn links(seen: &Seen<'_, '_>, wood: &Wood, loads: Loads<'_>) -> Vec<Link> {
    let kind = LinkKind::TopRail;
    let Some(span) = loads.spacing else {
        let reason = "nobody wrote how far apart the posts are";
        return vec![Link::hidden(kind, "bending", reason, &[Item::PostSpacing])];
    };
    let down = loads.in_a_rail_down(span);
    let level = loads.in_a_rail_level(span);
    let mut links = Vec::new();
    links.extend(down.map(|moment| bending(seen, wood, DOWN, moment)));
    links.extend(level.map(|moment| bending(seen, wood, LEVEL, moment)));
    links
}

fn bending(seen: &Seen<'_, '_>, wood: &Wood, case: &'static str, moment: Worked<Moment>) -> Link {
    let kind = LinkKind::TopRail;
    let demand = Ends::exactly(moment);
    let without =
        |reason, asks: &[Item]| Link::hidden(kind, case, reason, asks).with_demand(&demand);
    match seen.word(Item::PostMaterial) {
        Some("wood") => {}
        Some(_) => {
            return without(
                "a rail of metal or plastic: its strength cannot be seen",
                &[],
            );
        }
        None => return without("nobody wrote what it is made of", &[Item::PostMaterial]),
    }
    let Some((width, height)) = seen.section(Item::RailSection) else {
        return without(
            "nobody wrote how wide and high the top rail is",
            &[Item::RailSection],
        );
    };
    let capacity = if case == DOWN {
        wood::moment(wood, width, height)
    } else {
        wood::moment(wood, height, width)
    };
    match capacity {
        Some(capacity) => Link::weighed(kind, case, &demand, &capacity)
            .taking(wood.taken())
            .taking(&[Taken::OneSpan, Taken::SameMaterial])
            .asking(&wood.narrows()),
        None => without("no published factors for wood of this size", &[]),
    }
}

/// A rail end of up to this thickness, or a bracket of nearly nothing, lies
/// between the head of a screw and the wood that it bites. (common practice, no source)
const BEFORE_THE_WOOD: Ends<Distance> = Ends {
    low: inches(0.0),
    high: inches(1.5),
};

/// The depth of a 2x4 stud and of a 4x4 post.
const BEHIND: Distance = inches(3.5);

const OUTWARD: &str = "pulled outward";

/// What holds the end of the rail.
pub(super) fn end(seen: &Seen<'_, '_>, wood: &Wood, loads: Loads<'_>) -> Link {
    let kind = LinkKind::RailEnd;
    let load = loads.at_the_top();
    let demand = load.map(|load| {
        let reaction = end_reaction(load.value);
        Ends::exactly(reaction.after(load))
    });
    let shown = |link: Link| match &demand {
        Some(demand) => link.with_demand(demand),
        None => link,
    };
    let without = |reason, asks: &[Item]| shown(Link::hidden(kind, OUTWARD, reason, asks));
    if seen.has(Item::RailEndFastening, "hollow-wall anchor") {
        return shown(Link::by_rule(
            kind,
            OUTWARD,
            "an anchor in a hollow wall is no load path: toggles are rated at 30 to 50 lb for things that hang, plaster board crumbles, and pulling out is the weaker way",
            "facts of home-repair pages, read second-hand; common practice",
        ));
    }
    if seen.has(Item::RailEndFastening, "nails") {
        return shown(Link::by_rule(
            kind,
            OUTWARD,
            "nails draw out: they may not be relied on against a pull",
            "NDS 2018 §12.2.3, read second-hand; common practice",
        ));
    }
    match seen.word(Item::RailEndFastening) {
        Some("screws into a post" | "screws into a stud") => {
            let Some(fasteners) = seen.fasteners(Item::RailEndFasteners) else {
                return without(
                    "nobody wrote how many screws hold the rail's end, how thick and how long",
                    &[Item::RailEndFasteners],
                );
            };
            let Some(length) = fasteners.length else {
                let reason = "how long the screws in the rail's end are is not written";
                return without(reason, &[Item::RailEndFasteners]);
            };
            let layers = Layers {
                before: BEFORE_THE_WOOD,
                main: Ends::between(BEHIND, length.to_uom()),
            };
            let held = held(wood, fasteners, layers);
            match (held, &demand) {
                (Ok(capacity), Some(demand)) => Link::weighed(kind, OUTWARD, demand, &capacity)
                    .taking(wood.taken())
                    .taking(&[Taken::Thread])
                    .asking(&wood.narrows()),
                (Err(reason), _) => without(reason, &[Item::RailEndFasteners]),
                (Ok(_), None) => without("no load along the top is known", &[Item::PostSpacing]),
            }
        }
        Some("hidden") => without(
            "what holds the rail's end cannot be seen: look behind the bracket or its cover",
            &[],
        ),
        Some("masonry anchors") => without(
            "anchors in masonry depend on the wall behind: somebody who knows them has to look",
            &[],
        ),
        Some(_) => without("no published value for this fixing", &[]),
        None => without(
            "nobody wrote what holds the rail's ends",
            &[Item::RailEndFastening],
        ),
    }
}

/// Somebody who sits on the rail pushes the screws of its end sideways; only
/// where screws hold it, and the rule's loads come from above too.
pub(super) fn end_pressed(seen: &Seen<'_, '_>, wood: &Wood, loads: Loads<'_>) -> Option<Link> {
    let (kind, case) = (LinkKind::RailEnd, "pressed down");
    let screwed = matches!(
        seen.word(Item::RailEndFastening),
        Some("screws into a post" | "screws into a stud")
    );
    let point = loads.demand.concentrated.as_ref()?;
    if !screwed || loads.demand.direction == Direction::Level {
        return None;
    }
    let fasteners = seen.fasteners(Item::RailEndFasteners)?;
    let length: Distance = fasteners.length?.to_uom();
    let demand = Ends::exactly(end_reaction(point.value));
    Some(match rail_end_pressed(wood, fasteners, length, BEHIND) {
        Ok(capacity) => Link::weighed(kind, case, &demand, &capacity)
            .taking(wood.taken())
            .asking(&wood.narrows()),
        Err(reason) => Link::hidden(kind, case, reason, &[]).with_demand(&demand),
    })
}

/// The moment that an example may state: the rail pressed down.
pub(super) fn moment(loads: Loads<'_>) -> Option<Worked<Moment>> {
    loads.in_a_rail_down(loads.spacing?)
}
