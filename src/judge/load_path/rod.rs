//! A newel on one rod or hanger bolt: it turns about its own edge.

use crate::items::Item;
use crate::judge::load_path::link::Link;
use crate::judge::load_path::link::LinkKind;
use crate::judge::load_path::link::Mend;
use crate::judge::load_path::load::Loads;
use crate::judge::load_path::screws::NO_NUMBERS;
use crate::judge::load_path::seen::Seen;
use crate::judge::load_path::seen::diameter;
use crate::judge::load_path::service::Wood;
use crate::judge::load_path::why::LinkCase;
use crate::judge::load_path::why::LinkReason;
use crate::quantities::Distance;
use crate::quantities::Force;
use crate::quantities::Moment;
use crate::quantities::inches;
use crate::statics::Ends;
use crate::statics::Provenance;
use crate::statics::Worked;
use crate::statics::demand::lever_arm;
use crate::statics::factors::Grain;
use crate::statics::hardware::bolt_tension;
use crate::statics::withdrawal::Pulled;
use crate::statics::withdrawal::withdrawal;

const KIND: LinkKind = LinkKind::PostFixing;
const CASE: LinkCase = LinkCase::RodPulled;

/// The longest thread that a hanger bolt has.
const LONGEST_THREAD: Distance = inches(6.0);

/// The rod: at most its steel, at least what its thread holds in the end of the
/// newel; washer and floor below it are seen by nobody, so it never passes.
pub(super) fn link(seen: &Seen<'_, '_>, wood: &Wood, loads: Loads<'_>) -> Link {
    let demand = match pull(seen, loads) {
        Ok(demand) => demand,
        Err(asks) => {
            let reason = LinkReason::PullOnRodUnknown;
            return Link::hidden(KIND, CASE, reason, &asks);
        }
    };
    let fasteners = seen.fasteners(Item::PostFasteners);
    let Some(diameter) = fasteners.and_then(|one| diameter(one.size)) else {
        return Link::hidden(KIND, CASE, NO_NUMBERS, &[Item::PostFasteners]).with_demand(&demand);
    };
    let mut takes = vec![bolt_tension(diameter)];
    let longest = fasteners
        .and_then(|one| one.length)
        .map(|length| length.to_uom());
    let thread: Distance = longest.map_or(LONGEST_THREAD, |length: Distance| {
        length.min(LONGEST_THREAD)
    });
    for species in wood.lumber() {
        for service in wood.joints_in(Grain::End) {
            let held = withdrawal(
                Pulled::Lag(diameter),
                species.gravity.value,
                thread,
                service,
            );
            takes.extend(held.ok());
        }
    }
    let Some(capacity) = Ends::of_worked(takes) else {
        return Link::hidden(KIND, CASE, LinkReason::OutsideTables, &[]).with_demand(&demand);
    };
    Link::weighed(KIND, CASE, &demand, &capacity)
        .mending(Mend::NewPost)
        .never_passing(LinkReason::RodEndsUnseen, &[])
}

fn pull(seen: &Seen<'_, '_>, loads: Loads<'_>) -> Result<Ends<Worked<Force>>, Vec<Item>> {
    let Some(height) = seen.height() else {
        return Err(vec![Item::Height]);
    };
    let Some((a, b)) = seen.section(Item::PostSection) else {
        return Err(vec![Item::PostSection]);
    };
    let at = |height| {
        let arm = lever_arm(height, Distance::default(), Distance::default());
        loads.post_moment(arm, height)
    };
    let moments = at(height.low).zip(at(height.high));
    let (low, high) = moments.ok_or_else(|| vec![Item::PostSpacing])?;
    let on = |moment: Worked<Moment>, side: Distance| {
        let inputs = [("M", moment.value.into()), ("B", side.into())];
        let pull = moment.value / (side / 2.0);
        Worked::new("T", "M/(B/2)", &inputs, pull, Provenance::MECHANICS).after(moment)
    };
    Ok(Ends {
        low: on(low, a.max(b)),
        high: on(high, a.min(b)),
    })
}
