//! Outlines by their corners.

use crate::geometry::Corner;
use crate::geometry::ShapeError;
use crate::geometry::edges::EdgeTree;
use crate::geometry::edges::OutlineEdge;
use crate::geometry::orient::SideOfLine;
use crate::geometry::orient::side;

/// An outline of at least three corners that neither crosses nor touches itself.
#[derive(Clone, Debug, PartialEq)]
pub struct Polygon {
    corners: Vec<Corner>,
}

/// No opening is as large: beyond it the arithmetic of floats has no room (mm).
const FARTHEST_MM: f64 = 1e100;

/// No opening is smaller than a nanometre (mm).
const SMALLEST_MM: f64 = 1e-6;

impl Polygon {
    /// An outline through these corners, in order, clockwise or not; the last
    /// side leads back to the first corner.
    ///
    /// A corner on the straight line between its neighbours is fine.
    ///
    /// # Errors
    /// [`ShapeError::TooFewCorners`] below three; [`ShapeError::NotFinite`];
    /// [`ShapeError::RepeatedCorner`]; [`ShapeError::SidesCross`] and
    /// [`ShapeError::SidesFold`], found exactly and not within a tolerance;
    /// [`ShapeError::TooSmall`] below a nanometre across.
    pub fn new(corners: Vec<Corner>) -> Result<Polygon, ShapeError> {
        let count = corners.len();
        if count < 3 {
            return Err(ShapeError::TooFewCorners { count });
        }
        let finite = |v: f64| v.abs() <= FARTHEST_MM;
        if !corners.iter().all(|c| finite(c.x_mm) && finite(c.y_mm)) {
            return Err(ShapeError::NotFinite);
        }
        for (first, corner) in corners.iter().enumerate() {
            let second = (first + 1) % count;
            if same_place(*corner, corners[second]) {
                return Err(ShapeError::RepeatedCorner {
                    first: first + 1,
                    second: second + 1,
                });
            }
        }
        let tree = EdgeTree::new(&corners);
        if let Some(error) = first_crossing(&tree) {
            return Err(error);
        }
        let bounds = tree.bounds();
        let wide = bounds.high.x_mm - bounds.low.x_mm;
        let high = bounds.high.y_mm - bounds.low.y_mm;
        if wide.max(high) < SMALLEST_MM {
            return Err(ShapeError::TooSmall);
        }
        Ok(Polygon { corners })
    }

    /// The corners in the order they were written.
    #[must_use]
    pub fn corners(&self) -> &[Corner] {
        &self.corners
    }
}

fn same_place(a: Corner, b: Corner) -> bool {
    let equal = |a: f64, b: f64| a.total_cmp(&b).is_eq() || (a - b).abs() <= 0.0;
    equal(a.x_mm, b.x_mm) && equal(a.y_mm, b.y_mm)
}

/// The first two sides that meet where they should not; sides are counted from 1,
/// the first from the first corner to the second.
fn first_crossing(tree: &EdgeTree) -> Option<ShapeError> {
    let count = tree.edges.len();
    tree.meeting(&mut |first, second| {
        let (one, other) = (&tree.edges[first], &tree.edges[second]);
        if first + 1 == second {
            return folds(one, other).then_some(fold(first, second, other.from));
        }
        if (second + 1) % count == first {
            return folds(other, one).then_some(fold(first, second, one.from));
        }
        meeting_place(one, other).map(|at| ShapeError::SidesCross {
            first: first + 1,
            second: second + 1,
            at,
        })
    })
}

fn fold(first: usize, second: usize, at: Corner) -> ShapeError {
    ShapeError::SidesFold {
        first: first + 1,
        second: second + 1,
        at,
    }
}

/// Whether a side leads straight back over the one before it.
fn folds(one: &OutlineEdge, next: &OutlineEdge) -> bool {
    side(one.from, one.to, next.to) == SideOfLine::On
        && (between(one.from, one.to, next.to) || between(next.from, next.to, one.from))
}

/// Whether a point on the line of two others lies between them, ends counted.
fn between(a: Corner, b: Corner, p: Corner) -> bool {
    let within = |a: f64, b: f64, p: f64| a.min(b) <= p && p <= a.max(b);
    within(a.x_mm, b.x_mm, p.x_mm) && within(a.y_mm, b.y_mm, p.y_mm)
}

/// Where two sides that are no neighbours meet, if they do: found exactly, the
/// place rounded.
fn meeting_place(one: &OutlineEdge, other: &OutlineEdge) -> Option<Corner> {
    let (a, b) = (
        side(one.from, one.to, other.from),
        side(one.from, one.to, other.to),
    );
    let (c, d) = (
        side(other.from, other.to, one.from),
        side(other.from, other.to, one.to),
    );
    let touches = [
        (a, one, other.from),
        (b, one, other.to),
        (c, other, one.from),
        (d, other, one.to),
    ];
    let touching = touches
        .into_iter()
        .find(|(side, edge, p)| *side == SideOfLine::On && between(edge.from, edge.to, *p));
    if let Some((_, _, p)) = touching {
        return Some(p);
    }
    let apart = |one: SideOfLine, other: SideOfLine| {
        matches!(
            (one, other),
            (SideOfLine::Left, SideOfLine::Right) | (SideOfLine::Right, SideOfLine::Left)
        )
    };
    if !(apart(a, b) && apart(c, d)) {
        return None;
    }
    let (ex, ey) = (one.to.x_mm - one.from.x_mm, one.to.y_mm - one.from.y_mm);
    let (fx, fy) = (
        other.to.x_mm - other.from.x_mm,
        other.to.y_mm - other.from.y_mm,
    );
    let (dx, dy) = (
        other.from.x_mm - one.from.x_mm,
        other.from.y_mm - one.from.y_mm,
    );
    let share = ((dx * fy - dy * fx) / (ex * fy - ey * fx)).clamp(0.0, 1.0);
    let share = if share.is_nan() { 0.5 } else { share };
    Some(Corner {
        x_mm: one.from.x_mm + share * ex,
        y_mm: one.from.y_mm + share * ey,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn outline(corners: &[(f64, f64)]) -> Result<Polygon, ShapeError> {
        let corner = |&(x_mm, y_mm): &(f64, f64)| Corner { x_mm, y_mm };
        Polygon::new(corners.iter().map(corner).collect())
    }

    #[test]
    fn an_outline_needs_three_finite_corners() {
        assert_eq!(
            outline(&[(0.0, 0.0), (1.0, 0.0)]),
            Err(ShapeError::TooFewCorners { count: 2 })
        );
        let bad = outline(&[(0.0, 0.0), (f64::NAN, 0.0), (1.0, 1.0)]);
        assert_eq!(bad, Err(ShapeError::NotFinite));
        let bad = outline(&[(0.0, 0.0), (f64::INFINITY, 0.0), (1.0, 1.0)]);
        assert_eq!(bad, Err(ShapeError::NotFinite));
    }

    #[test]
    fn a_bow_tie_names_the_sides_that_cross_and_where() {
        let bow = outline(&[(0.0, 0.0), (4.0, 4.0), (4.0, 0.0), (0.0, 4.0)]);
        let at = Corner {
            x_mm: 2.0,
            y_mm: 2.0,
        };
        let crossing = ShapeError::SidesCross {
            first: 1,
            second: 3,
            at,
        };
        assert_eq!(bow, Err(crossing));
    }

    #[test]
    fn a_corner_that_touches_another_side_is_a_crossing() {
        let touching = outline(&[(0.0, 0.0), (6.0, 0.0), (6.0, 4.0), (3.0, 0.0), (0.0, 4.0)]);
        let at = Corner {
            x_mm: 3.0,
            y_mm: 0.0,
        };
        let first = 1;
        let second = 3;
        let crossing = ShapeError::SidesCross { first, second, at };
        assert_eq!(touching, Err(crossing));
    }

    #[test]
    fn sides_that_fold_back_are_no_outline() {
        let flat = outline(&[(0.0, 0.0), (2.0, 0.0), (1.0, 0.0)]);
        assert!(
            matches!(flat, Err(ShapeError::SidesFold { .. })),
            "{flat:?}"
        );
        let spike = outline(&[(0.0, 0.0), (4.0, 0.0), (4.0, 4.0), (4.0, 6.0), (4.0, 4.5)]);
        let at = Corner {
            x_mm: 4.0,
            y_mm: 6.0,
        };
        let fold = ShapeError::SidesFold {
            first: 3,
            second: 4,
            at,
        };
        assert_eq!(spike, Err(fold));
    }

    #[test]
    fn a_repeated_corner_is_named() {
        let closed = outline(&[(0.0, 0.0), (4.0, 0.0), (0.0, 3.0), (0.0, -0.0)]);
        let repeated = ShapeError::RepeatedCorner {
            first: 4,
            second: 1,
        };
        assert_eq!(closed, Err(repeated));
    }

    #[test]
    fn a_corner_on_a_straight_side_is_fine() {
        let straight = outline(&[(0.0, 0.0), (0.1, 0.1), (0.3, 0.3), (0.0, 1.0)]);
        assert!(straight.is_ok(), "{straight:?}");
    }

    #[test]
    fn an_outline_below_a_nanometre_is_refused() {
        let speck = outline(&[(0.0, 0.0), (1e-7, 0.0), (0.0, 1e-7)]);
        assert_eq!(speck, Err(ShapeError::TooSmall));
    }
}
