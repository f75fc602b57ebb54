//! Balusters under the infill load (elementary statics).

use crate::quantities::Distance;
use crate::quantities::Force;
use crate::quantities::Moment;
use crate::statics::basis::Provenance;
use crate::statics::beam::Case;
use crate::statics::worked::Worked;

/// The share of a patch load that one of several balusters carries: its
/// spacing over the width of the patch, and never more than all.
#[must_use]
pub fn on_one_baluster(load: Force, patch: Distance, spacing: Distance) -> Worked<Force> {
    let inputs = [
        ("P", load.into()),
        ("s", spacing.into()),
        ("a", patch.into()),
    ];
    let share = (spacing / patch).value.min(1.0);
    Worked::new(
        "W",
        "P·min(1, s/a)",
        &inputs,
        load * share,
        Provenance::MECHANICS,
    )
}

/// The moment in a baluster of this length: its share spread over the patch at
/// midspan, or over the whole baluster where that is shorter.
#[must_use]
pub fn baluster_moment(
    load: Force,
    patch: Distance,
    spacing: Distance,
    length: Distance,
) -> Worked<Moment> {
    let share = on_one_baluster(load, patch, spacing);
    let case = Case::PartlyUniform {
        load: share.value,
        over: patch.min(length),
    };
    let moments = case.moments(length);
    moments.map(|moments| moments.sagging).after(share)
}

/// The same with the whole load on one baluster at midspan: the pessimistic case.
#[must_use]
pub fn baluster_moment_worst(load: Force, length: Distance) -> Worked<Moment> {
    let moments = Case::OneSpan(load).moments(length);
    moments.map(|moments| moments.sagging)
}

/// What each end of the baluster has to hold.
#[must_use]
pub fn baluster_end(share: Force) -> Worked<Force> {
    let inputs = [("W", share.into())];
    Worked::new("R", "W/2", &inputs, share / 2.0, Provenance::MECHANICS)
}
