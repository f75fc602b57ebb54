//! Quantities other than length: those of the `uom` crate under our roof.

pub use uom::si::f64::{Angle, Force};

/// Newtons in a pound-force: exact by definition.
const NEWTONS_PER_POUND_FORCE: f64 = 4.448_221_615_260_5;

/// A force of so many newtons.
#[must_use]
pub fn newtons(newtons: f64) -> Force {
    Force::new::<uom::si::force::newton>(newtons)
}

/// A force of so many pounds-force; 1 lbf = 4.4482216152605 N exactly.
#[must_use]
pub fn pounds_force(pounds: f64) -> Force {
    newtons(pounds * NEWTONS_PER_POUND_FORCE)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Printed conversions of facts/rules-north-america.md §0.1: 200 lbf = 889.64 N,
    /// 50 lbf = 222.41 N.
    #[test]
    fn pounds_force_as_printed() {
        for (pounds, given) in [(200.0, 889.64), (150.0, 667.23), (50.0, 222.41)] {
            let ours = pounds_force(pounds).get::<uom::si::force::newton>();
            assert!((ours - given).abs() <= 0.005, "{pounds} lbf: {ours}");
        }
    }
}
