//! From a load to a moment at the fixing: elementary statics.

use crate::quantities::Distance;
use crate::quantities::Force;
use crate::quantities::LineLoad;
use crate::quantities::Moment;
use crate::quantities::Pressure;
use crate::statics::basis::Provenance;
use crate::statics::worked::Worked;

/// From the load down to the fastener that resists: never the guard height alone.
#[must_use]
pub fn lever_arm(
    height: Distance,
    covering: Distance,
    framing_top_to_fastener: Distance,
) -> Worked<Distance> {
    let inputs = [
        ("h", height.into()),
        ("t_deck", covering.into()),
        ("y_fastener", framing_top_to_fastener.into()),
    ];
    let arm = height + covering + framing_top_to_fastener;
    Worked::new(
        "a",
        "h + t_deck + y_fastener",
        &inputs,
        arm,
        Provenance::MECHANICS,
    )
}

/// Moment of a point load.
#[must_use]
pub fn point_moment(force: Force, arm: Distance) -> Worked<Moment> {
    let inputs = [("F", force.into()), ("a", arm.into())];
    Worked::new("M", "F·a", &inputs, force * arm, Provenance::MECHANICS)
}

/// Which bays a post carries.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Bays {
    /// An end post.
    One(Distance),
    /// A post between two bays.
    Two(Distance, Distance),
}

/// The length of rail whose line load comes to one post: half of each bay.
#[must_use]
pub fn tributary_width(bays: Bays) -> Worked<Distance> {
    match bays {
        Bays::One(bay) => {
            let inputs = [("L", bay.into())];
            Worked::new("s", "L/2", &inputs, bay / 2.0, Provenance::MECHANICS)
        }
        Bays::Two(left, right) => {
            let inputs = [("L1", left.into()), ("L2", right.into())];
            let width = (left + right) / 2.0;
            Worked::new("s", "(L1 + L2)/2", &inputs, width, Provenance::MECHANICS)
        }
    }
}

/// The force of a line load on one post.
#[must_use]
pub fn line_force(load: LineLoad, tributary: Distance) -> Worked<Force> {
    let inputs = [("w", load.into()), ("s", tributary.into())];
    Worked::new(
        "F_line",
        "w·s",
        &inputs,
        load * tributary,
        Provenance::MECHANICS,
    )
}

/// Moment of a line load along the top.
#[must_use]
pub fn line_moment(load: LineLoad, tributary: Distance, arm: Distance) -> Worked<Moment> {
    let force = line_force(load, tributary);
    let inputs = [("F_line", force.value.into()), ("a", arm.into())];
    let moment = force.value * arm;
    Worked::new("M", "F_line·a", &inputs, moment, Provenance::MECHANICS).after(force)
}

/// Moment of a pressure on the whole infill of one post's bays.
#[must_use]
pub fn infill_moment(
    pressure: Pressure,
    tributary: Distance,
    infill_height: Distance,
) -> Worked<Moment> {
    let inputs = [
        ("p", pressure.into()),
        ("s", tributary.into()),
        ("h", infill_height.into()),
    ];
    let moment = pressure * tributary * infill_height * infill_height / 2.0;
    Worked::new("M", "p·s·h²/2", &inputs, moment, Provenance::MECHANICS)
}
