//! A guard drawn from what was measured of it, to scale where that is known and
//! silent where it is not.

mod facts;
mod front;
mod hole;
mod life_size;
mod pen;

pub(super) use facts::GuardDrawn;
pub(super) use front::front;
pub(super) use hole::hole;
pub(super) use life_size::life_size;
