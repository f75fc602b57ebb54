//! What presses into the wood under head and nut: looseness, and no strength. F_c⊥
//! is set by a compression of 0.04 in (NDS Supplement, notes, read second-hand).
//! Above its value whether a washer pulls through is not known, so that such a row
//! is no pass either.

use crate::items::Item;
use crate::judge::load_path::arm::stretch;
use crate::judge::load_path::link::Hidden;
use crate::judge::load_path::link::Link;
use crate::judge::load_path::link::LinkFinding;
use crate::judge::load_path::link::LinkKind;
use crate::judge::load_path::link::Mend;
use crate::judge::load_path::load::Loads;
use crate::judge::load_path::screws::on_one;
use crate::judge::load_path::seen::Seen;
use crate::judge::load_path::seen::WrittenLength;
use crate::judge::load_path::seen::diameter;
use crate::judge::load_path::service::Wood;
use crate::judge::load_path::sources;
use crate::judge::load_path::why::LinkCase;
use crate::judge::load_path::why::LinkReason;
use crate::judge::load_path::woods::Woods;
use crate::quantities::Distance;
use crate::quantities::Force;
use crate::quantities::inches;
use crate::reading::Fasteners;
use crate::statics::Ends;
use crate::statics::Worked;
use crate::statics::factors::Moisture;
use crate::statics::hardware::bolt_hole;
use crate::statics::washer::STIFF;
use crate::statics::washer::Washer;
use crate::statics::washer::WasherPlace;
use crate::statics::washer::cut_washer;
use crate::statics::washer::washer_bearing;
use crate::statics::washer::washer_that_holds;

const KIND: LinkKind = LinkKind::PostFixing;
const CASE: LinkCase = LinkCase::WasherPressed;

/// The washers of a through bolt, on post and framing.
pub(super) fn of_bolts(
    seen: &Seen<'_, '_>,
    woods: Woods<'_>,
    diameter: Distance,
    demand: &Ends<Worked<Force>>,
) -> Link {
    if seen.length(Item::WasherSize) == WrittenLength::ThereIsNone {
        return Link::by_rule(KIND, CASE, LinkReason::NoWasher, sources::WASHERS)
            .with_demand(demand)
            .mending(Mend::Washers(enough(
                &[woods.post, woods.framing],
                diameter,
                demand,
            )));
    }
    pressed(seen, &[woods.post, woods.framing], diameter, demand)
}

/// The washers of lag screws, on the post alone.
pub(super) fn of_lags(
    seen: &Seen<'_, '_>,
    post: &Wood,
    loads: Loads<'_>,
    fasteners: Fasteners,
) -> Option<Link> {
    let diameter = diameter(fasteners.size)?;
    if diameter < inches(0.25 - 1e-6) {
        // a wood screw's head is no washer, and its own table is for round heads
        return None;
    }
    let demand = on_one(stretch(seen, loads)?, fasteners);
    if seen.length(Item::WasherSize) == WrittenLength::ThereIsNone {
        let reason = LinkReason::NoWasherUnderLag;
        let mend = Mend::Washers(enough(&[post], hole(seen, diameter), &demand));
        let link = Link::hidden(KIND, CASE, reason, &[]);
        return Some(link.with_demand(&demand).mending(mend));
    }
    Some(pressed(seen, &[post], diameter, &demand))
}

fn pressed(
    seen: &Seen<'_, '_>,
    woods: &[&Wood],
    diameter: Distance,
    demand: &Ends<Worked<Force>>,
) -> Link {
    let Some(outside) = seen.known_length(Item::WasherSize) else {
        let reason = LinkReason::WasherSizeNotWritten;
        return Link::hidden(KIND, CASE, reason, &[Item::WasherSize]).with_demand(demand);
    };
    let hole = hole(seen, diameter);
    if outside <= hole {
        let reason = LinkReason::WasherNoWiderThanHole;
        return Link::hidden(KIND, CASE, reason, &[Item::WasherSize]).with_demand(demand);
    }
    let stiff = seen
        .known_length(Item::WasherThickness)
        .is_some_and(|thick| thick >= STIFF - inches(1.0 / 64.0));
    let sure = if stiff {
        outside
    } else {
        outside.min(cut_washer(diameter))
    };
    // the post runs on below the upper bolt at least to the lower one
    let far = seen
        .known_length(Item::FastenerSpacing)
        .is_some_and(|apart| apart >= inches(3.0));
    let places: &[WasherPlace] = if far {
        &[WasherPlace::Within]
    } else {
        &[WasherPlace::NearEnd, WasherPlace::Within]
    };
    let mut all = Vec::new();
    for outside in [sure, outside] {
        let washer = Washer::Round { outside, hole };
        for wood in woods {
            all.extend(on_wood(wood, washer, places));
        }
    }
    let Some(ends) = Ends::of_worked(all) else {
        let reason = LinkReason::NoValueAcrossGrain;
        return Link::hidden(KIND, CASE, reason, &[]).with_demand(demand);
    };
    let mut link = Link::weighed(KIND, CASE, demand, &ends);
    for wood in woods {
        link = link.taking(wood.taken()).asking(&wood.narrows());
    }
    let reason = match link.finding {
        LinkFinding::NoShortfall => return link,
        LinkFinding::FallsShort => LinkReason::WasherPressesIn,
        LinkFinding::TooClose | LinkFinding::ByRule(_) | LinkFinding::NotMeasured(_) => {
            LinkReason::WasherMayPressIn
        }
    };
    link.finding = LinkFinding::NotMeasured(Hidden { reason });
    if !stiff {
        link = link.asking(&[Item::WasherThickness]);
    }
    link.mending(Mend::Washers(enough(woods, hole, demand)))
}

/// The hole of the thickest bolt that is written.
fn hole(seen: &Seen<'_, '_>, diameter: Distance) -> Distance {
    let thickest = seen.thickest(Item::PostFasteners);
    bolt_hole(thickest.unwrap_or(diameter)).value
}

/// What a washer takes on every wood that it may lie on.
fn on_wood(wood: &Wood, washer: Washer, places: &[WasherPlace]) -> Vec<Worked<Force>> {
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
    all
}

/// The washer that keeps the softest wood that it may be below its value.
fn enough(woods: &[&Wood], hole: Distance, demand: &Ends<Worked<Force>>) -> Option<Distance> {
    let mut widest: Option<Distance> = None;
    for wood in woods {
        let softest = wood
            .lumber()
            .iter()
            .filter_map(|species| species.perpendicular);
        let softest = Ends::over(softest.map(|of| of.value))?.low;
        let wet = wood.moistures().contains(&Moisture::Wet);
        let moisture = if wet { Moisture::Wet } else { Moisture::Dry };
        let one = washer_that_holds(demand.high.value, softest, hole, moisture)?;
        widest = Some(widest.map_or(one, |widest| widest.max(one)));
    }
    widest
}
