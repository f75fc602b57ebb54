//! Bending and shear that a piece of wood can take: both ends over what is not known.

use crate::judge::load_path::service::Wood;
use crate::quantities::Distance;
use crate::quantities::Force;
use crate::quantities::Moment;
use crate::quantities::inches;
use crate::statics::Ends;
use crate::statics::Provenance;
use crate::statics::Worked;
use crate::statics::section::Profile;
use crate::statics::wood::Lying;
use crate::statics::wood::Species;
use crate::statics::wood::allowable_bending;
use crate::statics::wood::allowable_moment;
use crate::statics::wood::allowable_shear;

/// From this size both ways the table of posts and timbers holds: 5 x 5 in
/// nominal, 4 1/2 in dressed.
pub(super) const TIMBER: Distance = inches(4.5);

/// Slack for sizes read in other units.
const HAIR: Distance = inches(1.0 / 64.0);

/// The rows of the table to which a piece of this size belongs.
fn rows(wood: &Wood, across: Distance, along: Distance) -> &[&'static Species] {
    if across >= TIMBER - HAIR && along >= TIMBER - HAIR {
        wood.timbers()
    } else {
        wood.lumber()
    }
}

/// The moment that a solid rectangle can take, load along its second side.
///
/// `None` where no factor is tabulated for the size.
pub(super) fn moment(
    wood: &Wood,
    across: Distance,
    along: Distance,
) -> Option<Ends<Worked<Moment>>> {
    left_of(wood, across, along, along)
}

/// The same where a notch leaves less along the load: the stress is that of
/// the whole piece.
pub(super) fn left_of(
    wood: &Wood,
    across: Distance,
    along: Distance,
    left: Distance,
) -> Option<Ends<Worked<Moment>>> {
    let profile = Profile::Rectangle {
        across,
        along: left,
    };
    let modulus = profile.elastic().ok()?;
    let (thickness, width) = (across.min(along), across.max(along));
    let lying = if along < across - HAIR {
        Lying::Flat
    } else {
        Lying::OnEdge
    };
    let mut all = Vec::new();
    for species in rows(wood, across, along) {
        for service in wood.members() {
            let stress = allowable_bending(species, thickness, width, lying, service);
            let stress = stress.ok()?;
            let least = allowable_moment(stress.value, modulus.value);
            all.push(least.after(modulus.clone()).after(stress));
        }
    }
    Ends::of_worked(all)
}

/// The shear that a solid rectangle can take: F'_v·A/1.5.
pub(super) fn shear(wood: &Wood, across: Distance, along: Distance) -> Option<Ends<Worked<Force>>> {
    let area = Profile::Rectangle { across, along }.section().ok()?.area;
    let mut all = Vec::new();
    for species in rows(wood, across, along) {
        for service in wood.members() {
            let stress = allowable_shear(species, service);
            let inputs = [("F'_v", stress.value.into()), ("A", area.into())];
            let force = stress.value * area / 1.5;
            let worked = Worked::new("V_a", "F'_v·A/1.5", &inputs, force, Provenance::MECHANICS);
            all.push(worked.after(stress));
        }
    }
    Ends::of_worked(all)
}
