//! A pull test against the published limit of movement (ASTM E985
//! §7.2, read second-hand): a stiffness, and no strength.

use crate::items::Item;
use crate::judge::load_path::link::Link;
use crate::judge::load_path::link::LinkKind;
use crate::judge::load_path::seen::Seen;
use crate::judge::load_path::why::LinkCase;
use crate::judge::load_path::why::LinkReason;
use crate::quantities::Distance;
use crate::quantities::Force;
use crate::quantities::inches;
use crate::quantities::newtons;
use crate::quantities::pounds;
use crate::statics::Ends;
use crate::statics::stiffness::DeflectionLimit;
use crate::statics::stiffness::NoStiffness;
use crate::statics::stiffness::ScalePull;
use crate::statics::stiffness::movement_at;
use crate::statics::stiffness::pull_stiffness_bounds;

/// How well a ruler tells the movement (common practice, no source).
const DOUBT: Distance = inches(1.0 / 16.0);

/// The load at which the limit of movement holds.
const DESIGN: Force = pounds(200.0);

const CASE: LinkCase = LinkCase::TopMoves;

/// The link; none where nobody pulled.
pub(super) fn link(seen: &Seen<'_, '_>) -> Option<Link> {
    let kind = LinkKind::Stiffness;
    let pulls = seen.pulls();
    let last = *pulls.last()?;
    let rest = ScalePull {
        force: newtons(0.0),
        movement: Distance::default(),
    };
    // several pulls of one force, at several posts say, are each against rest
    let first = pulls[0];
    let first = if first.force < last.force {
        first
    } else {
        rest
    };
    let stiffness = match pull_stiffness_bounds(first, last, DOUBT) {
        Ok(stiffness) => stiffness,
        Err(NoStiffness::MovedTooLittle) => {
            let reason = LinkReason::TooStiffForARuler;
            return Some(Link::hidden(kind, CASE, reason, &[]));
        }
        Err(NoStiffness::NotStronger) => {
            let reason = LinkReason::TwoPullsNeeded;
            return Some(Link::hidden(kind, CASE, reason, &[]));
        }
    };
    let movement = stiffness.falling(|k| movement_at(DESIGN, first, k.value).after(k));
    let Some(height) = seen.height() else {
        let reason = LinkReason::HeightNotWritten;
        let link = Link::hidden(kind, CASE, reason, &[Item::Height]);
        return Some(link.with_demand(&movement));
    };
    let spacing = seen.known_length(Item::PostSpacing).unwrap_or_default();
    // the limit grows with the height
    let limit = Ends {
        low: DeflectionLimit::E985Post.limit(height.low, spacing),
        high: DeflectionLimit::E985Post.limit(height.high, spacing),
    };
    Some(Link::weighed(kind, CASE, &movement, &limit))
}
