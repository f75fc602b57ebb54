//! A plate screwed down beneath a post: the worst of its screws pulled out
//! by elastic shares.

use crate::items::Item;
use crate::judge::load_path::link::Link;
use crate::judge::load_path::link::LinkKind;
use crate::judge::load_path::link::Taken;
use crate::judge::load_path::load::Loads;
use crate::judge::load_path::screws::Layers;
use crate::judge::load_path::screws::NO_NUMBERS;
use crate::judge::load_path::screws::NO_THREAD;
use crate::judge::load_path::screws::held;
use crate::judge::load_path::screws::one_of;
use crate::judge::load_path::screws::positive;
use crate::judge::load_path::screws::pulled_out;
use crate::judge::load_path::seen::Seen;
use crate::judge::load_path::seen::WrittenLength;
use crate::judge::load_path::service::Wood;
use crate::quantities::Distance;
use crate::quantities::Force;
use crate::quantities::inches;
use crate::reading::Fasteners;
use crate::statics::Ends;
use crate::statics::Provenance;
use crate::statics::Worked;
use crate::statics::demand::lever_arm;
use crate::statics::panel::PANEL_GRAVITY;
use crate::statics::panel::STRUCTURAL_PANEL_GRAVITY;
use crate::statics::panel::USUAL_SUBFLOOR;
use crate::statics::plate::ScrewRow;
use crate::statics::plate::greatest_pull;
use crate::statics::plate::with_pivot_moved;

const KIND: LinkKind = LinkKind::PostFixing;

/// A plate screwed down beneath the post.
pub(super) fn plate(seen: &Seen<'_, '_>, wood: &Wood, loads: Loads<'_>) -> Link {
    let case = "worst screw of the plate pulled out";
    let Some(fasteners) = seen.fasteners(Item::PostFasteners) else {
        return Link::hidden(KIND, case, NO_NUMBERS, &[Item::PostFasteners]);
    };
    let demand = match plate_pull(seen, loads, fasteners) {
        Ok(demand) => demand,
        Err(asks) => {
            let reason = "the pull on the screws of the plate is not known";
            return Link::hidden(KIND, case, reason, &asks);
        }
    };
    let without =
        |reason, asks: &[Item]| Link::hidden(KIND, case, reason, asks).with_demand(&demand);
    let one = one_of(fasteners);
    let layers = in_the_floor(seen, fasteners);
    let on = if seen.has(Item::FastenedTo, "subfloor") {
        Some("subfloor")
    } else {
        seen.word(Item::FastenedTo)
    };
    let capacity = match (on, layers) {
        (Some("subfloor"), layers) => {
            // nobody sees how thick the panel is beneath; the thread fills it
            let reach = seen.there(Item::ThreadInFraming).or_else(|| {
                let length: Distance = fasteners.length?.to_uom();
                layers.map(|layers| positive(length - layers.before.low))
            });
            let reach = reach.map_or(USUAL_SUBFLOOR, |reach| reach.min(USUAL_SUBFLOOR));
            let inputs = [("t_panel", reach.into())];
            let thread = Worked::new("p_t", "t_panel", &inputs, reach, Provenance::MECHANICS);
            let gravities = [PANEL_GRAVITY.value, STRUCTURAL_PANEL_GRAVITY.value];
            pulled_out(wood, one, &Ends::exactly(thread), gravities)
        }
        (Some("joist" | "blocking" | "rim board"), Some(layers)) => held(wood, one, layers),
        (Some("joist" | "blocking" | "rim board"), None) => {
            return without(NO_THREAD, &[Item::ThreadInFraming]);
        }
        (Some(_), _) => {
            return without("no published value for what the plate is fastened to", &[]);
        }
        (None, _) => {
            return without(
                "nobody wrote what the plate is fastened to",
                &[Item::FastenedTo],
            );
        }
    };
    match capacity {
        Ok(capacity) => Link::weighed(KIND, case, &demand, &capacity)
            .taking(wood.taken())
            .taking(if seen.has(Item::FastenedTo, "subfloor") {
                &[Taken::Subfloor]
            } else {
                &[Taken::Thread]
            })
            .asking(&wood.narrows()),
        Err(reason) => without(reason, &[]),
    }
}

/// A plate's own thickness. (common practice, no source)
const PLATE: Ends<Distance> = Ends {
    low: inches(0.0),
    high: inches(0.25),
};

/// The plate and the floor's covering, and a joist that is deeper than a screw.
fn in_the_floor(seen: &Seen<'_, '_>, fasteners: Fasteners) -> Option<Layers> {
    let length: Option<Distance> = fasteners.length.map(|length| length.to_uom());
    let covering = seen.covering();
    let before = Ends {
        low: covering.low + PLATE.low,
        high: covering.high + PLATE.high,
    };
    if let WrittenLength::There(into) = seen.length(Item::ThreadInFraming) {
        return Some(Layers::written(length, before, into));
    }
    let main = Ends::exactly(length?);
    Some(Layers { before, main })
}

/// Elastic shares of the rows, with the pivot at the plate's edge; at most with
/// the pivot at the face of the post, where the plate bends.
fn plate_pull(
    seen: &Seen<'_, '_>,
    loads: Loads<'_>,
    fasteners: Fasteners,
) -> Result<Ends<Worked<Force>>, Vec<Item>> {
    let missing = |items: &[Item]| Err(items.to_vec());
    let Some(height) = seen.height() else {
        return missing(&[Item::Height]);
    };
    let lengths = seen
        .there(Item::EdgeDistance)
        .zip(seen.there(Item::FastenerSpacing));
    let Some((edge, apart)) = lengths else {
        return missing(&[Item::EdgeDistance, Item::FastenerSpacing]);
    };
    let arm = lever_arm(height, Distance::default(), Distance::default());
    let Some(moment) = loads.in_a_post(arm, height) else {
        return missing(&[Item::PostSpacing]);
    };
    // a post of unknown thickness may press as near as at the middle of the plate
    let face = seen.section(Item::PostSection);
    let face = face.map_or(Distance::default(), |(a, b)| a.min(b));
    let at = |rows: &[ScrewRow]| {
        greatest_pull(moment.value, rows).map(|pull| pull.after(moment.clone()))
    };
    let inward = positive(edge * 2.0 + apart - face) / 2.0;
    let half = fasteners.count / 2;
    // of an odd number the fuller row may be the near one or the far one
    let mut all = Vec::new();
    for near in [half, fasteners.count - half] {
        let row = |distance, count| ScrewRow { distance, count };
        let rows = [row(edge, near), row(edge + apart, fasteners.count - near)];
        let elastic = at(&rows);
        all.push(elastic.map_err(|_| vec![Item::EdgeDistance])?);
        all.extend(at(&with_pivot_moved(&rows, inward)).ok());
    }
    Ends::of_worked(all).ok_or_else(Vec::new)
}
