//! Shapes of openings and the largest ball that passes through them.
//!
//! Closed forms only: slot, rectangle, triangle, circle, and the triangle at a
//! stair. A polygon is kept as it was written and has no answer here.

mod shape;
mod stair_triangle;

pub use shape::{Corner, Polygon, Shape, ShapeError};
pub use stair_triangle::{StairTriangle, StairTriangleError};
