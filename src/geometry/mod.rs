//! Shapes of openings and the largest ball that passes through them.
//!
//! Slot, rectangle, triangle, circle and the triangle at a stair have closed
//! forms; the opening of an outline by its corners lies between two bounds, with
//! the circle that proves the lower one.

mod ball;
mod convex;
mod covering;
mod edges;
mod inscribed;
mod orient;
mod placement;
mod polygon;
mod probe;
mod shape;
mod stair_triangle;
mod tangents;
mod vee;

pub use ball::{LargestBall, Passage};
pub use inscribed::{Certified, clear_opening};
pub use placement::{Fit, Placement, admits};
pub use polygon::{Corner, Polygon};
pub use probe::Probe;
pub use shape::{ClearOpening, Shape, ShapeError};
pub use stair_triangle::{StairTriangle, StairTriangleError};
pub use vee::Vee;
