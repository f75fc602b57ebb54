//! The largest circle in an outline against other ways to find it.

mod bars;
mod bay;
mod edges;
mod geos;
mod invariants;
mod old_house;
mod probe;
mod spiral;
mod surveys;
mod turned;
mod worked;

use guardrule::geometry::Certified;
use guardrule::geometry::Corner;
use guardrule::geometry::Polygon;
use guardrule::geometry::clear_opening;

pub(crate) fn corner(x_mm: f64, y_mm: f64) -> Corner {
    Corner { x_mm, y_mm }
}

pub(crate) fn polygon(corners: &[(f64, f64)]) -> Polygon {
    let outline = Polygon::new(corners.iter().map(|(x, y)| corner(*x, *y)).collect());
    outline.unwrap_or_else(|error| panic!("{error}: {corners:?}"))
}

/// The distance from a point to the nearest side, side by side.
pub(crate) fn distance(p: Corner, corners: &[Corner]) -> f64 {
    let next = corners.iter().cycle().skip(1);
    let to_side = |(a, b): (&Corner, &Corner)| {
        let (ex, ey) = (b.x_mm - a.x_mm, b.y_mm - a.y_mm);
        let (dx, dy) = (p.x_mm - a.x_mm, p.y_mm - a.y_mm);
        let share = ((dx * ex + dy * ey) / (ex * ex + ey * ey)).clamp(0.0, 1.0);
        libm::hypot(dx - share * ex, dy - share * ey)
    };
    let distances = corners.iter().zip(next).map(to_side);
    distances.fold(f64::INFINITY, f64::min)
}

/// Whether a point lies inside, by how often the outline winds round it.
pub(crate) fn winds_round(p: Corner, corners: &[Corner]) -> bool {
    let next = corners.iter().cycle().skip(1);
    let turn = |(a, b): (&Corner, &Corner)| {
        let (ax, ay) = (a.x_mm - p.x_mm, a.y_mm - p.y_mm);
        let (bx, by) = (b.x_mm - p.x_mm, b.y_mm - p.y_mm);
        libm::atan2(ax * by - ay * bx, ax * bx + ay * by)
    };
    let turned: f64 = corners.iter().zip(next).map(turn).sum();
    turned.abs() > 3.0
}

/// The clear opening, after checking that its circle fits and its bounds are
/// in order and as near as they should be.
pub(crate) fn checked(outline: &Polygon) -> Certified {
    let ball = clear_opening(outline);
    let corners = outline.corners();
    assert!(ball.lower_mm > 0.0, "{ball:?}");
    assert!(ball.lower_mm <= ball.upper_mm, "{ball:?}");
    let next = corners.iter().cycle().skip(1);
    let side = |(a, b): (&Corner, &Corner)| libm::hypot(b.x_mm - a.x_mm, b.y_mm - a.y_mm);
    let longest = corners.iter().zip(next).map(side).fold(0.0, f64::max);
    let near = 1e-9 * ball.lower_mm;
    let gap = ball.upper_mm - ball.lower_mm;
    assert!(gap <= near.max(1e-14 * longest), "{gap:e}: {ball:?}");
    assert!(winds_round(ball.centre, corners), "{ball:?} of {corners:?}");
    // the distance as it is measured here is off by some roundings of the long sides
    let fits = 2.0 * distance(ball.centre, corners);
    let room = 1e-12 * fits + 1e-15 * longest;
    assert!(ball.lower_mm <= fits + room, "{ball:?} against {fits}");
    ball
}
