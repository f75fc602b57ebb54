//! Limits that no railing has: a slip of the unit, most often. A rule that holds one
//! asks less than its text, so it counts as not read.

use crate::items::Item;
use crate::quantities::Length;
use crate::rules::codes::RuleFault;
use crate::rules::demand::Bounds;
use crate::rules::demand::Limit;
use crate::rules::demand::OpeningDemand;
use crate::rules::faults::Faults;
use crate::rules::fields::Fields;

/// Refuses a limit that asks less than is ever found: a height of at least 36 mm, an
/// opening of at most 4 m. One that asks more than is usual falls short, and is seen.
pub(super) fn of_check(
    item: Item,
    bounds: &Bounds<Limit>,
    fields: &Fields<'_>,
    faults: &mut Faults,
) {
    let Some((low, high)) = item.info().usual else {
        return;
    };
    for (key, limit) in [("at-least", &bounds.at_least), ("above", &bounds.above)] {
        if let Some(limit) = limit.as_ref().filter(|limit| limit.length < low) {
            refuse(item, key, limit, low, fields, faults);
        }
    }
    for (key, limit) in [("at-most", &bounds.at_most), ("below", &bounds.below)] {
        if let Some(limit) = limit.as_ref().filter(|limit| limit.length > high) {
            refuse(item, key, limit, high, fields, faults);
        }
    }
}

/// Likewise of a hole; the triangle at a step has the range of any opening.
pub(super) fn of_opening(
    item: Item,
    demand: &OpeningDemand,
    fields: &Fields<'_>,
    faults: &mut Faults,
) {
    let usual = item.info().usual.or(Item::Opening.info().usual);
    let Some((_, high)) = usual else {
        return;
    };
    let most = [
        ("stops-ball", &demand.stops_ball),
        ("at-most", &demand.at_most),
    ];
    for (key, limit) in most {
        if let Some(limit) = limit.as_ref().filter(|limit| limit.length > high) {
            refuse(item, key, limit, high, fields, faults);
        }
    }
}

/// Refuses a trigger that is never passed, or always: more than twice what is usual, or
/// less than half of it. Zero is a trigger of its own: there is one, or there is none.
pub(super) fn of_condition(
    item: Item,
    bounds: &Bounds<Limit>,
    fields: &Fields<'_>,
    faults: &mut Faults,
) {
    let Some((low, high)) = item.info().usual else {
        return;
    };
    let all = [
        ("at-least", &bounds.at_least),
        ("at-most", &bounds.at_most),
        ("above", &bounds.above),
        ("below", &bounds.below),
    ];
    for (key, limit) in all {
        let Some(limit) = limit else { continue };
        if limit.length > high + high {
            refuse(item, key, limit, high, fields, faults);
        } else if limit.length > Length::ZERO && limit.length + limit.length < low {
            refuse(item, key, limit, low, fields, faults);
        }
    }
}

fn refuse(
    item: Item,
    key: &str,
    limit: &Limit,
    end: Length,
    fields: &Fields<'_>,
    faults: &mut Faults,
) {
    let side = if limit.length < end { "least" } else { "most" };
    faults.error_help(
        RuleFault::Implausible,
        &fields.at_of(key),
        format!(
            "`{key}` is {} for {item}, where {} is the {side} that is usual",
            limit.written,
            end.readable(limit.unit)
        ),
        "look at the number and its unit again: 36 mm is not 36 in, 100 cm is not 100 mm",
    );
}
