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
use crate::geometry::edges::Bounds;
use crate::geometry::edges::EdgeTree;
use crate::geometry::orient::Side;
use crate::geometry::orient::side;
use crate::geometry::tangents::Added;
use crate::geometry::tangents::Bound;
use crate::geometry::tangents::Cell;
use crate::geometry::tangents::ROUNDINGS;
use crate::geometry::tangents::Reach;
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
/// facts/measurement-and-geometry.md §3.1. Branch and bound over boxes and the
/// weak duality of linear programs: textbook methods.
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
    let tree = EdgeTree::new(polygon.corners());
    let inner = inner_side(&tree);
    let radius = match turning(&tree) {
        Turning::OneWay => convex(&tree, inner),
        Turning::BothWays => Search::new(&tree, inner).run(),
    };
    let lower_mm = 2.0 * radius.lower.max(0.0);
    Certified {
        centre: radius.centre,
        lower_mm,
        upper_mm: (2.0 * radius.upper).max(lower_mm),
    }
}

/// A radius between two bounds.
#[derive(Clone, Copy, Debug)]
struct Radius {
    centre: Corner,
    lower: f64,
    upper: f64,
}

/// How an outline turns at its corners.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Turning {
    BothWays,
    OneWay,
}

/// A simple outline that turns one way only is convex.
fn turning(tree: &EdgeTree) -> Turning {
    let mut found = None;
    let mut before = tree.edges[tree.edges.len() - 1];
    for edge in &tree.edges {
        let here = side(before.from, before.to, edge.to);
        if here != Side::On {
            if found.is_some_and(|found| found != here) {
                return Turning::BothWays;
            }
            found = Some(here);
        }
        before = *edge;
    }
    Turning::OneWay
}

/// On which side of its sides the inside of an outline lies: how it turns at its
/// lowest corner (of several the left one), where no outline turns the other way.
fn inner_side(tree: &EdgeTree) -> Side {
    let count = tree.edges.len();
    let order = |index: &usize| {
        let Corner { x_mm, y_mm } = tree.edges[*index].from;
        (y_mm, x_mm)
    };
    let lower = |a: &usize, b: &usize| {
        let ((ay, ax), (by, bx)) = (order(a), order(b));
        ay.total_cmp(&by).then(ax.total_cmp(&bx))
    };
    let lowest = (0..count).min_by(lower).unwrap_or(0);
    let before = &tree.edges[(lowest + count - 1) % count];
    side(before.from, before.to, tree.edges[lowest].to)
}

/// 1 where the inside lies to the left, else -1.
fn sign(inner: Side) -> f64 {
    match inner {
        Side::Left | Side::On => 1.0,
        Side::Right => -1.0,
    }
}

fn whole(bounds: Bounds) -> Cell {
    let (low, high) = (bounds.low, bounds.high);
    let middle = Corner {
        x_mm: low.x_mm / 2.0 + high.x_mm / 2.0,
        y_mm: low.y_mm / 2.0 + high.y_mm / 2.0,
    };
    let half = |low: f64, middle: f64, high: f64| (high - middle).max(middle - low);
    Cell {
        middle,
        half_x: half(low.x_mm, middle.x_mm, high.x_mm),
        half_y: half(low.y_mm, middle.y_mm, high.y_mm),
    }
}

/// The nearest side's line at a place of a convex outline, and how deep inside the
/// place lies at least.
fn nearest_line(tree: &EdgeTree, at: Corner, inward: f64) -> (usize, f64) {
    let here = Cell {
        middle: at,
        half_x: 0.0,
        half_y: 0.0,
    };
    let mut least = (0, f64::INFINITY);
    for (index, edge) in tree.edges.iter().enumerate() {
        let bound = Bound::inward(edge, &here, inward);
        let depth = bound.at_middle - bound.error;
        if depth < least.1 {
            least = (index, depth);
        }
    }
    least
}

/// Of a convex outline the distance inward from its lines is the distance to it
/// everywhere inside, so a few of them prove the whole.
fn convex(tree: &EdgeTree, inner: Side) -> Radius {
    let inward = sign(inner);
    let cell = whole(tree.bounds());
    let (first, _) = nearest_line(tree, cell.middle, inward);
    let mut program = Tangents::new(cell, Bound::inward(&tree.edges[first], &cell, inward));
    let mut best = Radius {
        centre: tree.edges[0].from,
        lower: 0.0,
        upper: program.upper(),
    };
    loop {
        let centre = program.centre();
        let (nearest, lower) = nearest_line(tree, centre, inward);
        if lower > best.lower {
            (best.centre, best.lower) = (centre, lower);
        }
        let bound = Bound::inward(&tree.edges[nearest], &cell, inward);
        match program.add(bound) {
            Added::Moved => best.upper = best.upper.min(program.upper()),
            Added::ChangesNothing => return best,
            // more tangents than one program holds: a smaller box needs fewer
            Added::NoRoom => return Search::from(tree, inner, best, &program).run(),
        }
    }
}

/// A box that may hold the best centre, and the radius it cannot exceed.
#[derive(Clone, Copy, Debug)]
struct Open {
    cell: Cell,
    upper: f64,
}

impl PartialEq for Open {
    fn eq(&self, other: &Open) -> bool {
        self.cmp(other).is_eq()
    }
}

impl Eq for Open {}

impl PartialOrd for Open {
    fn partial_cmp(&self, other: &Open) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

impl Ord for Open {
    fn cmp(&self, other: &Open) -> Ordering {
        self.upper.total_cmp(&other.upper)
    }
}

/// Branch and bound.
struct Search<'t> {
    tree: &'t EdgeTree,
    inner: Side,
    open: BinaryHeap<Open>,
    centre: Corner,
    /// The radius of the best circle so far.
    lower: f64,
    /// No box that was put aside can exceed this.
    aside: f64,
    /// Below this width a box is not cut any more.
    finest: f64,
    work: usize,
}

impl<'t> Search<'t> {
    fn new(tree: &'t EdgeTree, inner: Side) -> Search<'t> {
        let cell = whole(tree.bounds());
        let upper = cell.half_x.min(cell.half_y);
        let upper = upper + ROUNDINGS * upper;
        Search {
            tree,
            inner,
            open: BinaryHeap::from([Open { cell, upper }]),
            centre: tree.edges[0].from,
            lower: 0.0,
            aside: 0.0,
            finest: 1e-15 * cell.reach(),
            work: WORK + WORK_FOR_A_SIDE * tree.edges.len(),
        }
    }

    /// Goes on from a program that has run full.
    fn from(tree: &'t EdgeTree, inner: Side, best: Radius, program: &Tangents) -> Search<'t> {
        let mut search = Search::new(tree, inner);
        (search.centre, search.lower) = (best.centre, best.lower);
        search.open.clear();
        match program.contracted(best.lower) {
            Some(cell) => search.put(cell, best.upper),
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
            self.look(&next);
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
    fn put(&mut self, cell: Cell, upper: f64) {
        if upper <= self.goal() || cell.reach() <= self.finest {
            self.aside = self.aside.max(upper);
        } else {
            self.open.push(Open { cell, upper });
        }
    }

    /// The distance to the outline and the nearest side; below zero outside. A
    /// circle that fits is kept if it is the largest so far.
    fn depth(&mut self, p: Corner, hint: usize) -> (f64, usize) {
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

    fn look(&mut self, open: &Open) {
        let cell = open.cell;
        let (depth, edge) = self.depth(cell.middle, 0);
        let reach = cell.reach();
        let error = ROUNDINGS * (2.0 * depth.abs() + self.tree.longest() + reach);
        let upper = open.upper.min(depth + reach + error);
        if upper <= self.goal() {
            self.aside = self.aside.max(upper);
        } else {
            match self.bound(edge, &cell) {
                Some(bound) => self.bounded(&cell, upper, edge, bound),
                None => self.cut(&cell, upper),
            }
        }
    }

    /// The upper bound that a side gives in a box.
    ///
    /// A side that runs through the box leaves nothing of the inside beyond it if
    /// no other side comes there.
    fn bound(&mut self, edge: usize, cell: &Cell) -> Option<Bound> {
        match Bound::of(&self.tree.edges[edge], cell) {
            Reach::Bounded(bound) => Some(bound),
            Reach::TooNear => None,
            Reach::Crossed => {
                self.work = self.work.saturating_sub(1);
                let alone = self.tree.all_beside(edge, &cell.bounds(), self.inner);
                alone.then(|| Bound::inward(&self.tree.edges[edge], cell, sign(self.inner)))
            }
        }
    }

    /// Flat bounds from the sides nearby.
    fn bounded(&mut self, cell: &Cell, upper: f64, edge: usize, first: Bound) {
        let mut program = Tangents::new(*cell, first);
        let mut upper = upper.min(program.upper());
        let mut found = 0.0_f64;
        let mut hint = edge;
        while upper > self.goal() {
            let (depth, edge) = self.depth(program.centre(), hint);
            hint = edge;
            found = found.max(depth);
            let bound = self.bound(edge, cell);
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
            Some(part) if part.reach() < 0.7 * cell.reach() => self.put(part, upper),
            Some(part) => self.cut(&part, upper),
        }
    }

    /// Two halves, across the longer side.
    fn cut(&mut self, cell: &Cell, upper: f64) {
        let Corner { x_mm, y_mm } = cell.middle;
        let halves = if cell.half_x >= cell.half_y {
            let half_x = cell.half_x / 2.0;
            [x_mm - half_x, x_mm + half_x].map(|x_mm| Cell {
                middle: Corner { x_mm, y_mm },
                half_x,
                ..*cell
            })
        } else {
            let half_y = cell.half_y / 2.0;
            [y_mm - half_y, y_mm + half_y].map(|y_mm| Cell {
                middle: Corner { x_mm, y_mm },
                half_y,
                ..*cell
            })
        };
        for half in halves {
            self.put(half, upper);
        }
    }
}
