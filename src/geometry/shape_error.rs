//! Why an outline cannot be one.

use crate::geometry::Corner;

/// Why a shape cannot be. Corners and sides are counted from 1; side 1 leads from
/// corner 1 to corner 2.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum ShapeError {
    /// A coordinate that is no number, or none that any opening has.
    #[error("a corner is no finite number")]
    NotFinite,
    /// A side of zero or below.
    #[error("every side must be longer than nothing")]
    NotPositive,
    /// Two corners that follow each other lie in one place.
    #[error("corner {first} and corner {second} of the outline are one and the same place")]
    RepeatedCorner {
        /// The number of the first.
        first: usize,
        /// The number of the one behind it.
        second: usize,
    },
    /// Two sides that are no neighbours cross or touch.
    #[error("side {first} and side {second} of the outline meet at {}", place(*.at))]
    SidesCross {
        /// The number of the first side.
        first: usize,
        /// The number of the second side.
        second: usize,
        /// Where they meet, rounded.
        at: Corner,
    },
    /// A side leads straight back over its neighbour.
    #[error("side {first} and side {second} of the outline run over each other at {}", place(*.at))]
    SidesFold {
        /// The number of the first side.
        first: usize,
        /// The number of the second side.
        second: usize,
        /// The corner between them.
        at: Corner,
    },
    /// A polygon with fewer than three corners.
    #[error("an outline needs three corners or more, and this has {count}")]
    TooFewCorners {
        /// How many there are.
        count: usize,
    },
    /// An outline that is smaller than a nanometre.
    #[error("the outline is smaller than a nanometre")]
    TooSmall,
}

/// A place as a corner is written, in millimetres to a thousandth.
fn place(at: Corner) -> String {
    let rounded = |v: f64| {
        let v = (v * 1000.0).round() / 1000.0;
        if v.abs() > 0.0 { v } else { 0.0 }
    };
    format!("{}:{} mm", rounded(at.x_mm), rounded(at.y_mm))
}
