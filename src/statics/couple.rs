//! A post on the side of a rim with two bolts: the pull is a couple, not a
//! share of the push (elementary statics).

use crate::quantities::Distance;
use crate::quantities::Force;
use crate::statics::basis::Provenance;
use crate::statics::worked::Worked;

/// The pull on the fastener in tension and the push where the post bears.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Couple {
    /// Pull on the bolt.
    pub tension: Force,
    /// Push at the pivot.
    pub bearing: Force,
}

/// Where the post stands, seen from the framing that it is fixed to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Stands {
    /// On the inner face of the rim.
    Inside,
    /// On the outer face of the rim.
    Outside,
}

/// The pull on the fastener that is stretched.
///
/// Outside the rim a push outward stretches the upper fastener, F·(a + d)/d, and a
/// push inward the lower one, F·a/d; inside the rim it is the other way round. The
/// rim itself is driven off the joists at the top by F·(a + d)/d under a push
/// outward on whichever side the post stands.
#[must_use]
pub fn stretched(
    stands: Stands,
    push: PushWay,
    force: Force,
    arm: Distance,
    apart: Distance,
) -> Worked<Force> {
    let as_outside = match (stands, push) {
        (Stands::Outside, push) => push,
        (Stands::Inside, PushWay::Inward) => PushWay::Outward,
        (Stands::Inside, PushWay::Outward) => PushWay::Inward,
    };
    couple(as_outside, force, arm, apart).map(|couple| couple.tension)
}

/// Which way the guard is pushed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum PushWay {
    /// Towards the floor side.
    Inward,
    /// Over the drop.
    Outward,
}

/// The couple of a push `force` at `arm` above the upper bolt, `apart` between
/// the upper bolt and the pivot: the lower bolt (cautious), or the edge of the
/// rim that the post presses on.
///
/// Outward the upper bolt is pulled, inward the lower one.
#[must_use]
pub fn couple(push: PushWay, force: Force, arm: Distance, apart: Distance) -> Worked<Couple> {
    let inputs = [("F", force.into()), ("a", arm.into()), ("d", apart.into())];
    let long = force * (arm + apart) / apart;
    let short = force * arm / apart;
    let line = |symbol, formula, value: Force| {
        Worked::new(symbol, formula, &inputs, value, Provenance::MECHANICS)
    };
    match push {
        PushWay::Inward => line("C_upper", "F·(a + d)/d", long)
            .after(line("T_lower", "F·a/d", short))
            .map(|bearing| Couple {
                tension: short,
                bearing,
            }),
        PushWay::Outward => line("C", "F·a/d", short)
            .after(line("T", "F·(a + d)/d", long))
            .map(|bearing| Couple {
                tension: long,
                bearing,
            }),
    }
}
