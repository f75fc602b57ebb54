//! An outline that is hard to search: for a test and for the benchmark.

use guardrule::geometry::Corner;

/// A band wound up into a spiral.
pub(crate) fn spiral(corners: u32) -> Vec<Corner> {
    let half = corners / 2;
    let turns = 3.0 + f64::from(corners) / 1000.0;
    let at = |k: u32, side: f64| {
        let share = f64::from(k) / f64::from(half - 1);
        let angle = std::f64::consts::TAU * turns * share;
        let radius = 60.0 + 75.0 * turns * share + side * (20.0 + 8.0 * libm::sin(9.0 * share));
        Corner {
            x_mm: radius * libm::cos(angle),
            y_mm: radius * libm::sin(angle),
        }
    };
    let outer = (0..half).map(|k| at(k, 1.0));
    let inner = (0..half).rev().map(|k| at(k, -1.0));
    outer.chain(inner).collect()
}
