//! The largest circle in an outline, between two proven bounds.
//!
//! A convex outline is a linear program. Any other is cut into boxes, the most
//! promising first; in a box that lies inside, the sides nearby give flat upper
//! bounds ([`Tangents`]), which close parallel sides in one step and shrink the
//! box about a corner of the medial axis quadratically.

use std::cmp::Ordering;
use std::collections::BinaryHeap;

use crate::geometry::Corner;
use crate::geometry::Polygon;
use crate::geometry::convex::Convex;
use crate::geometry::convex::Radius;
use crate::geometry::convex::Turning;
use crate::geometry::convex::box_of;
use crate::geometry::convex::convex;
use crate::geometry::convex::inner_side;
use crate::geometry::convex::inward_sign;
use crate::geometry::convex::triangle;
use crate::geometry::convex::turning;
use crate::geometry::edges::EdgeTree;
use crate::geometry::orient::SideOfLine;
use crate::geometry::tangents::Added;
use crate::geometry::tangents::ROUNDINGS;
use crate::geometry::tangents::RadiusBound;
use crate::geometry::tangents::SearchBox;
use crate::geometry::tangents::SideReach;
use crate::geometry::tangents::Tangents;

/// Boxes whose bound is this near (relative) to the best circle are done with.
const NEAR_ENOUGH: f64 = 2e-10;

/// Distances that may be asked for, besides some for each side: what keeps any
/// outline from taking long.
const WORK: usize = 200_000;
const WORK_FOR_A_SIDE: usize = 100;

/// A diameter between two bounds, and where the circle of the lower one lies.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Certified {
    /// The centre of a circle of the lower diameter that fits.
    pub centre: Corner,
    /// A circle of this diameter fits, in mm.
    pub lower_mm: f64,
    /// No circle of a larger diameter than this fits, in mm.
    pub upper_mm: f64,
}

impl Certified {
    /// How far the bounds lie apart, as a share of the lower one.
    #[must_use]
    pub fn relative_gap(&self) -> f64 {
        (self.upper_mm - self.lower_mm) / self.lower_mm
    }
}

/// The clear opening of an outline: the diameter of the largest circle in it,
/// and so of the largest ball that passes, between two bounds.
///
/// # Accuracy
/// The bounds hold against every rounding of the arithmetic. They lie within
/// 1e-9 of each other, relative, or within 1e-14 of the longest side, where an
/// outline is so thin that this is more. The work is bounded; should it not
/// suffice, they lie farther apart and hold all the same.
///
/// # Source
/// The largest ball through a flat hole is the largest circle in it:
/// on its way through, its equator lies in the plane of the hole. Branch and bound
/// over boxes and the weak duality of linear programs: textbook methods.
///
/// ```
/// use guardrule::geometry::{Corner, Polygon, clear_opening};
/// let corners = [(0.0, 0.0), (4.0, 0.0), (0.0, 3.0)];
/// let corners = corners.map(|(x_mm, y_mm)| Corner { x_mm, y_mm });
/// let ball = clear_opening(&Polygon::new(corners.to_vec())?);
/// assert!(ball.lower_mm <= 2.0 && 2.0 <= ball.upper_mm);
/// assert!(ball.relative_gap() < 1e-9);
/// # Ok::<(), guardrule::geometry::ShapeError>(())
/// ```
#[must_use]
pub fn clear_opening(polygon: &Polygon) -> Certified {
    let corners = polygon.corners();
    let radius = match turning(corners) {
        Turning::OneWay(inner) => match corners {
            [a, b, c] => triangle([*a, *b, *c], inner),
            _ => match convex(corners, inner) {
                Convex::Proven(radius) => radius,
                Convex::SoFar(best, cell) => {
                    let tree = EdgeTree::new(corners);
                    CircleSearch::from(&tree, inner, best, cell).run()
                }
            },
        },
        Turning::BothWays => CircleSearch::new(&EdgeTree::new(corners), inner_side(corners)).run(),
    };
    let lower_mm = 2.0 * radius.lower.max(0.0);
    Certified {
        centre: radius.centre,
        lower_mm,
        upper_mm: (2.0 * radius.upper).max(lower_mm),
    }
}

/// A box that may hold the best centre, and the radius it cannot exceed.
#[derive(Clone, Copy, Debug)]
struct OpenBox {
    cell: SearchBox,
    upper: f64,
}

impl PartialEq for OpenBox {
    fn eq(&self, other: &OpenBox) -> bool {
        self.cmp(other).is_eq()
    }
}

impl Eq for OpenBox {}

impl PartialOrd for OpenBox {
    fn partial_cmp(&self, other: &OpenBox) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

impl Ord for OpenBox {
    fn cmp(&self, other: &OpenBox) -> Ordering {
        self.upper.total_cmp(&other.upper)
    }
}

/// Branch and bound.
struct CircleSearch<'t> {
    tree: &'t EdgeTree,
    inner: SideOfLine,
    open: BinaryHeap<OpenBox>,
    centre: Corner,
    /// The radius of the best circle so far.
    lower: f64,
    /// No box that was put aside can exceed this.
    aside: f64,
    /// Below this width a box is not cut any more.
    finest: f64,
    work: usize,
}

impl<'t> CircleSearch<'t> {
    fn new(tree: &'t EdgeTree, inner: SideOfLine) -> CircleSearch<'t> {
        let cell = box_of(&tree.bounds());
        let upper = cell.half_x.min(cell.half_y);
        let upper = upper + ROUNDINGS * upper;
        CircleSearch {
            tree,
            inner,
            open: BinaryHeap::from([OpenBox { cell, upper }]),
            centre: tree.edges[0].from,
            lower: 0.0,
            aside: 0.0,
            finest: 1e-15 * cell.reach(),
            work: WORK + WORK_FOR_A_SIDE * tree.edges.len(),
        }
    }

    /// Goes on from a program that has run full, in the box that it left.
    fn from(
        tree: &'t EdgeTree,
        inner: SideOfLine,
        best: Radius,
        cell: Option<SearchBox>,
    ) -> CircleSearch<'t> {
        let mut search = CircleSearch::new(tree, inner);
        (search.centre, search.lower) = (best.centre, best.lower);
        search.open.clear();
        match cell {
            Some(cell) => search.keep_for_later(cell, best.upper),
            None => search.aside = best.lower,
        }
        search
    }

    fn run(mut self) -> Radius {
        while let Some(next) = self.open.pop() {
            if next.upper <= self.goal() || self.work == 0 {
                self.aside = self.aside.max(next.upper);
                break;
            }
            self.examine(&next);
        }
        Radius {
            centre: self.centre,
            lower: self.lower,
            upper: self.aside.max(self.lower),
        }
    }

    fn goal(&self) -> f64 {
        self.lower + self.lower * NEAR_ENOUGH
    }

    /// Keeps a box for later, or puts it aside where nothing is to be gained.
    fn keep_for_later(&mut self, cell: SearchBox, upper: f64) {
        if upper <= self.goal() || cell.reach() <= self.finest {
            self.aside = self.aside.max(upper);
        } else {
            self.open.push(OpenBox { cell, upper });
        }
    }

    /// The distance to the outline and the nearest side; below zero outside. A
    /// circle that fits is kept if it is the largest so far.
    fn signed_distance(&mut self, p: Corner, hint: usize) -> (f64, usize) {
        self.work = self.work.saturating_sub(1);
        let near = self.tree.nearest(p, hint);
        if !self.tree.contains(p) {
            return (-near.distance_mm, near.edge);
        }
        let error = ROUNDINGS * (2.0 * near.distance_mm + self.tree.longest() / 2.0);
        let fits = near.distance_mm - error;
        // nearer to the outline than this, inside and outside are not told apart
        let certain = 4.0 * ROUNDINGS * self.tree.width();
        if fits > self.lower && fits > certain {
            (self.centre, self.lower) = (p, fits);
        }
        (near.distance_mm, near.edge)
    }

    fn examine(&mut self, open: &OpenBox) {
        let cell = open.cell;
        let (depth, edge) = self.signed_distance(cell.middle, 0);
        let reach = cell.reach();
        let error = ROUNDINGS * (2.0 * depth.abs() + self.tree.longest() + reach);
        let upper = open.upper.min(depth + reach + error);
        if upper <= self.goal() {
            self.aside = self.aside.max(upper);
        } else {
            match self.bound_by_side(edge, &cell) {
                Some(bound) => self.bound_by_tangents(&cell, upper, edge, bound),
                None => self.cut(&cell, upper),
            }
        }
    }

    /// The upper bound that a side gives in a box.
    ///
    /// A side that runs through the box leaves nothing of the inside beyond it if
    /// no other side comes there.
    fn bound_by_side(&mut self, edge: usize, cell: &SearchBox) -> Option<RadiusBound> {
        match RadiusBound::of(&self.tree.edges[edge], cell) {
            SideReach::Bounded(bound) => Some(bound),
            SideReach::TooNear => None,
            SideReach::Crossed => {
                self.work = self.work.saturating_sub(1);
                let alone = self.tree.all_beside(edge, &cell.bounds(), self.inner);
                alone.then(|| {
                    RadiusBound::inward(&self.tree.edges[edge], cell, inward_sign(self.inner))
                })
            }
        }
    }

    /// Flat bounds from the sides nearby.
    fn bound_by_tangents(&mut self, cell: &SearchBox, upper: f64, edge: usize, first: RadiusBound) {
        let mut program = Tangents::new(*cell, first);
        let mut upper = upper.min(program.upper());
        let mut found = 0.0_f64;
        let mut hint = edge;
        while upper > self.goal() {
            let (depth, edge) = self.signed_distance(program.centre(), hint);
            hint = edge;
            found = found.max(depth);
            let bound = self.bound_by_side(edge, cell);
            if bound.is_none_or(|bound| program.add(bound) != Added::Moved) {
                break;
            }
            upper = upper.min(program.upper());
        }
        let error = ROUNDINGS * (2.0 * found + self.tree.longest());
        if upper <= self.goal() || upper - found <= 4.0 * error {
            self.aside = self.aside.max(upper);
            return;
        }
        match program.contracted(self.lower) {
            None => self.aside = self.aside.max(self.lower),
            Some(part) if part.reach() < 0.7 * cell.reach() => self.keep_for_later(part, upper),
            Some(part) => self.cut(&part, upper),
        }
    }

    /// Two halves, across the longer side.
    fn cut(&mut self, cell: &SearchBox, upper: f64) {
        let Corner { x_mm, y_mm } = cell.middle;
        let halves = if cell.half_x >= cell.half_y {
            let half_x = cell.half_x / 2.0;
            [x_mm - half_x, x_mm + half_x].map(|x_mm| SearchBox {
                middle: Corner { x_mm, y_mm },
                half_x,
                ..*cell
            })
        } else {
            let half_y = cell.half_y / 2.0;
            [y_mm - half_y, y_mm + half_y].map(|y_mm| SearchBox {
                middle: Corner { x_mm, y_mm },
                half_y,
                ..*cell
            })
        };
        for half in halves {
            self.keep_for_later(half, upper);
        }
    }
}
