//! Shapes of openings and the largest ball that passes through them.
//!
//! Slot, rectangle, triangle, circle, a raked bay and the triangle at a stair have
//! closed forms; the opening of an outline by its corners, of a stair with nosings
//! and between turned balusters lies between two bounds, with the circle that proves
//! the lower one. Cables are bounded from below alone.

mod ball;
mod bay;
mod cables;
mod convex;
mod corner;
mod covering;
mod edges;
mod exact;
mod flight;
mod inscribed;
mod orient;
mod placement;
mod polygon;
mod probe;
mod raked;
mod shape;
mod shape_error;
mod sketch;
mod stair_triangle;
mod tangents;
mod turned;
mod usual;
mod vee;

pub use ball::{LargestBall, Passage};
pub use bay::{
    AtTheLimit, BayEnds, BayError, BayLayout, BayPlan, GapLimit, Infilled, added_between,
    on_each_tread,
};
pub use cables::{Cables, CablesError, Strand, TautCables};
pub use corner::Corner;
pub use inscribed::{Certified, clear_opening};
pub use placement::{Fit, Placement, admits};
pub use polygon::Polygon;
pub use probe::Probe;
pub use raked::{Across, Balusters, Rake, RakedBay};
pub use shape::{ClearOpening, Shape};
pub use shape_error::ShapeError;
pub use sketch::{Dimension, Sketch, SketchPart};
pub use stair_triangle::{Risers, StairTriangle, StairTriangleError};
pub use turned::{Station, TurnedError, TurnedPair};
pub use usual::{USUAL_DRYING, UsualBuilding, kept_for_building, usual_drying};
pub use vee::Vee;
