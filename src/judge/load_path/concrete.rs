//! Posts on and in concrete: only a shortfall can be told from outside.

use crate::items::Item;
use crate::judge::load_path::link::Link;
use crate::judge::load_path::link::LinkKind;
use crate::judge::load_path::link::Mend;
use crate::judge::load_path::load::Loads;
use crate::judge::load_path::prying::NoPull;
use crate::judge::load_path::prying::plate_pull;
use crate::judge::load_path::screws::NO_NUMBERS;
use crate::judge::load_path::seen::Seen;
use crate::judge::load_path::sources;
use crate::judge::load_path::why::LinkCase;
use crate::judge::load_path::why::LinkReason;
use crate::quantities::Distance;
use crate::quantities::Force;
use crate::quantities::inches;
use crate::quantities::psi;
use crate::statics::Ends;
use crate::statics::Provenance;
use crate::statics::Worked;
use crate::statics::anchor::AnchorRow;
use crate::statics::anchor::Concrete;
use crate::statics::anchor::LEAST_EDGE;
use crate::statics::anchor::Qualified;
use crate::statics::anchor::breakout_in_service;
use crate::statics::pocket::Pocket;
use crate::statics::pocket::pocket_allowable;

const KIND: LinkKind = LinkKind::PostFixing;
const BREAKOUT: LinkCase = LinkCase::Breakout;
const POCKET: LinkCase = LinkCase::Pocket;

const NEVER: LinkReason = LinkReason::AnchorsOnlyBreakout;

/// The pulled row of a plate's anchors.
pub(super) fn breakout(seen: &Seen<'_, '_>, loads: Loads<'_>) -> Link {
    let without =
        |reason, asks: &[Item]| Link::hidden(KIND, BREAKOUT, reason, asks).mending(Mend::Anchors);
    let Some(fasteners) = seen.fasteners(Item::PostFasteners) else {
        return without(NO_NUMBERS, &[Item::PostFasteners]);
    };
    let pulled = match plate_pull(seen, loads, fasteners.count) {
        Ok(pulled) => pulled,
        Err(NoPull(asks)) => return without(LinkReason::PullOnAnchorsUnknown, &asks),
    };
    let far = pulled.far_screws;
    let all_of_row = |one: &Worked<Force>| {
        let n = f64::from(far);
        let inputs = [("n", n.into()), ("T_1", one.value.into())];
        let force = one.value * n;
        Worked::new("T", "n·T_1", &inputs, force, Provenance::MECHANICS).after(one.clone())
    };
    let demand = Ends {
        low: all_of_row(&pulled.on_one.low),
        high: all_of_row(&pulled.on_one.high),
    };
    let (depth, edge) = (
        seen.known_length(Item::AnchorEmbedment),
        seen.known_length(Item::ConcreteEdge),
    );
    let apart = seen.known_length(Item::FastenerSpacing).unwrap_or_default();
    let Some((embedded, near)) = depth.zip(edge) else {
        let reason = LinkReason::AnchorDepthAndEdgeDecide;
        let asks = [Item::AnchorEmbedment, Item::ConcreteEdge];
        return without(reason, &asks).with_demand(&demand);
    };
    // pulled outward the inner row is stretched, inward the one next to the edge
    let edge = if loads.pulls_inward() {
        near
    } else {
        near + apart
    };
    if near < LEAST_EDGE - inches(1e-6) {
        return Link::by_rule(
            KIND,
            BREAKOUT,
            LinkReason::AnchorsNearEdge,
            sources::ANCHOR_GUIDE,
        )
        .with_demand(&demand)
        .mending(Mend::Anchors);
    }
    let row = AnchorRow {
        count: far,
        apart,
        embedded,
        edge,
    };
    let capacity = Ends {
        low: breakout_in_service(
            row.breakout(Concrete::Cracked, psi(2500.0)),
            Qualified::Unknown,
        ),
        high: breakout_in_service(
            row.breakout(Concrete::Uncracked, psi(4000.0)),
            Qualified::Well,
        ),
    };
    Link::weighed(KIND, BREAKOUT, &demand, &capacity)
        .mending(Mend::Anchors)
        .never_passing(NEVER, &[])
}

/// A post in a pocket: its depth cannot be seen, and the edge usually decides.
pub(super) fn pocket(seen: &Seen<'_, '_>, loads: Loads<'_>) -> Link {
    let unseen = LinkReason::SocketCannotBeTold;
    let hidden = |asks: &[Item]| Link::hidden(KIND, POCKET, unseen, asks).mending(Mend::Socket);
    let Some(depth) = seen.known_length(Item::SocketDepth) else {
        return hidden(&[]);
    };
    let Some((a, b)) = seen.section(Item::PostSection) else {
        return hidden(&[Item::PostSection]);
    };
    let (Some(height), Some(load)) = (seen.height(), loads.top_force()) else {
        return hidden(&[Item::Height, Item::PostSpacing]);
    };
    if depth <= Distance::default() {
        return hidden(&[Item::SocketDepth]);
    }
    let of = |width, arm, strength| Pocket {
        width,
        depth,
        arm,
        strength: psi(strength),
    };
    let best = of(a.max(b), height.low, 5000.0);
    let ends = [
        pocket_allowable(of(a.min(b), height.high, 3000.0).by_blocks()),
        pocket_allowable(best.by_blocks()),
        pocket_allowable(best.by_handbook()),
    ];
    let demand = Ends::exactly(load);
    match Ends::of_worked(ends) {
        Some(capacity) => Link::weighed(KIND, POCKET, &demand, &capacity)
            .mending(Mend::Socket)
            .never_passing(unseen, &[]),
        None => hidden(&[]),
    }
}
