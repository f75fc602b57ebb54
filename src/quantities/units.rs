//! Quantities other than the exact length: those of the `uom` crate under our
//! roof, in the units that the sources print.
//!
//! Dimensions are types: what does not fit together does not compile.
//!
//! ```
//! use guardrule::quantities::{Moment, inches, pounds};
//! let at_the_base: Moment = pounds(200.0) * inches(36.0);
//! assert!((at_the_base / (pounds(1.0) * inches(1.0))).value > 7199.99);
//! ```
//!
//! ```compile_fail,E0308
//! use guardrule::quantities::{inches, pounds};
//! let nonsense = pounds(200.0) + pounds(200.0) * inches(36.0); // a force and a moment
//! ```

use std::marker::PhantomData;

use uom::si::ISQ;
use uom::si::Quantity;
use uom::si::SI;
use uom::typenum::N2;
use uom::typenum::P1;
use uom::typenum::P2;
use uom::typenum::P3;
use uom::typenum::P4;
use uom::typenum::Z0;

pub use uom::si::Dimension;
pub use uom::si::f64::{Angle, Area, Force, Pressure, Ratio};

/// A quantity of any one dimension, held in SI base units.
pub type Of<D> = Quantity<D, SI<f64>, f64>;

type Mechanical<L, M, T> = Of<ISQ<L, M, T, Z0, Z0, Z0, Z0>>;

/// A length in a formula; tape readings are exact `Length`s, which turn into
/// this with `to_uom`.
pub type Distance = uom::si::f64::Length;
/// A force per length, as of a line load, or of a fastener per inch of thread.
/// A spring's stiffness has the same dimension.
pub type LineLoad = Mechanical<Z0, P1, N2>;
/// Force for each distance of movement.
pub type Stiffness = LineLoad;
/// Force times lever arm.
pub type Moment = Mechanical<P2, P1, N2>;
/// Moment for each radian of rotation.
pub type RotationalStiffness = Moment;
/// Elastic or plastic section modulus, a length cubed.
pub type SectionModulus = Mechanical<P3, Z0, Z0>;
/// Second moment of area, a length to the fourth.
pub type SecondMoment = Mechanical<P4, Z0, Z0>;
/// Modulus of elasticity times second moment of area.
pub type Rigidity = Mechanical<P3, P1, N2>;

/// Newtons in a pound-force: exact by definition.
const NEWTONS_PER_POUND_FORCE: f64 = 4.448_221_615_260_5;

/// Metres in an inch: exact (international agreement, July 1959).
const METRES_PER_INCH: f64 = 0.025_4;

const fn of<D: Dimension + ?Sized>(base: f64) -> Of<D> {
    Quantity {
        dimension: PhantomData,
        units: PhantomData,
        value: base,
    }
}

/// A force of so many newtons.
#[must_use]
pub const fn newtons(newtons: f64) -> Force {
    of(newtons)
}

/// A force of so many pounds-force; 1 lbf = 4.4482216152605 N exactly.
#[must_use]
pub const fn pounds_force(pounds: f64) -> Force {
    newtons(pounds * NEWTONS_PER_POUND_FORCE)
}

/// The same as [`pounds_force`], as tables of fasteners write it.
#[must_use]
pub const fn pounds(pounds: f64) -> Force {
    pounds_force(pounds)
}

/// A distance of so many inches.
#[must_use]
pub const fn inches(inches: f64) -> Distance {
    of(inches * METRES_PER_INCH)
}

/// A distance of so many millimetres.
#[must_use]
pub const fn millimetres(millimetres: f64) -> Distance {
    of(millimetres * 1e-3)
}

/// A pressure or stress of so many pounds-force on a square inch.
#[must_use]
pub const fn psi(psi: f64) -> Pressure {
    of(psi * (NEWTONS_PER_POUND_FORCE / (METRES_PER_INCH * METRES_PER_INCH)))
}

/// A pressure of so many pascals.
#[must_use]
pub const fn pascals(pascals: f64) -> Pressure {
    of(pascals)
}

/// A load of so many pounds-force on each inch.
#[must_use]
pub const fn pounds_per_inch(pounds: f64) -> LineLoad {
    of(pounds * (NEWTONS_PER_POUND_FORCE / METRES_PER_INCH))
}

/// A load of so many pounds-force on each foot.
#[must_use]
pub const fn pounds_per_foot(pounds: f64) -> LineLoad {
    pounds_per_inch(pounds / 12.0)
}

/// A load of so many newtons on each metre.
#[must_use]
pub const fn newtons_per_metre(newtons: f64) -> LineLoad {
    of(newtons)
}

/// A moment of so many newton metres.
#[must_use]
pub const fn newton_metres(moment: f64) -> Moment {
    of(moment)
}

/// A moment of so many pound-force inches.
#[must_use]
pub const fn pound_inches(moment: f64) -> Moment {
    of(moment * (NEWTONS_PER_POUND_FORCE * METRES_PER_INCH))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// From 1 lbf = 4.4482216152605 N (exact, from memory): 200 lbf = 889.64 N, 50 lbf =
    /// 222.41 N.
    #[test]
    fn pounds_force_as_printed() {
        for (pounds, given) in [(200.0, 889.64), (150.0, 667.23), (50.0, 222.41)] {
            let ours = pounds_force(pounds).get::<uom::si::force::newton>();
            assert!((ours - given).abs() <= 0.005, "{pounds} lbf: {ours}");
        }
    }

    /// Multiplied out from the pound and the inch, apart from this code: 1 lbf·in =
    /// 0.1129848290 N·m, 1 plf = 14.593903 N/m, 1 psi = 6894.757 Pa.
    #[test]
    fn derived_units_as_printed() {
        assert!((pound_inches(1.0).value - 0.112_984_829_0).abs() < 5e-11);
        assert!((pounds_per_foot(1.0).value - 14.593_903).abs() < 5e-7);
        assert!((psi(1.0).value - 6_894.757).abs() < 5e-4);
    }
}
