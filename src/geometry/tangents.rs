//! The largest circle under a few flat bounds: a linear program in the plane.
//!
//! A bound says: within a box, a circle centred at (dx, dy) from its middle has a
//! radius of at most a + gx·dx + gy·dy. The program looks for the centre with the
//! largest radius, and proves its bound from the multipliers alone, so that a
//! slip of rounding in the search makes the bound looser and never wrong.

use crate::geometry::Corner;
use crate::geometry::edges::BoundingBox;
use crate::geometry::edges::OutlineEdge;

/// Half the distance from 1 to the next float.
pub(super) const UNIT_ROUNDOFF: f64 = 1.110_223_024_625_156_5e-16;

/// How many rounding errors one evaluation may gather, with room to spare.
pub(super) const ROUNDINGS: f64 = 16.0 * UNIT_ROUNDOFF;

/// Bounds that one program holds; more only make it slower.
pub(super) const MOST: usize = 16;

/// An upright box: its middle and half its sides, in mm.
#[derive(Clone, Copy, Debug)]
pub(super) struct SearchBox {
    pub(super) middle: Corner,
    pub(super) half_x: f64,
    pub(super) half_y: f64,
}

impl SearchBox {
    /// The box by its corners, a hair larger.
    pub(super) fn bounds(&self) -> BoundingBox {
        let Corner { x_mm, y_mm } = self.middle;
        let room = |half: f64, at: f64| half + ROUNDINGS * (half + at.abs());
        let (wide, tall) = (room(self.half_x, x_mm), room(self.half_y, y_mm));
        BoundingBox {
            low: Corner {
                x_mm: x_mm - wide,
                y_mm: y_mm - tall,
            },
            high: Corner {
                x_mm: x_mm + wide,
                y_mm: y_mm + tall,
            },
        }
    }

    /// From the middle to a corner.
    pub(super) fn reach(&self) -> f64 {
        (self.half_x * self.half_x + self.half_y * self.half_y).sqrt()
    }
}

/// An upper bound of the radius within a box.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct RadiusBound {
    pub(super) at_middle: f64,
    pub(super) slope_x: f64,
    pub(super) slope_y: f64,
    /// How far rounding may have put it off, anywhere in the box.
    pub(super) error: f64,
}

impl RadiusBound {
    /// No circle centred in the cell reaches over this side.
    ///
    /// Where every foot of the cell on the side's line lies within the side, the
    /// distance to the line is the bound, and exactly flat. Elsewhere the
    /// distance to the point nearest to the middle is, by √(d² + x) ≤ d + x/(2d).
    pub(super) fn of(edge: &OutlineEdge, cell: &SearchBox) -> SideReach {
        let p = cell.middle;
        let (from, to) = nearer_end_first(edge, p);
        let (ex, ey) = (to.x_mm - from.x_mm, to.y_mm - from.y_mm);
        let (dx, dy) = (p.x_mm - from.x_mm, p.y_mm - from.y_mm);
        let length = (ex * ex + ey * ey).sqrt();
        let (ux, uy) = (ex / length, ey / length);
        let along = dx * ux + dy * uy;
        let reach = cell.reach();
        let error = ROUNDINGS * ((dx * dx + dy * dy).sqrt() + reach);
        let swing = cell.half_x * ux.abs() + cell.half_y * uy.abs() + error;
        if along >= swing && along + swing <= length {
            let across = ux * dy - uy * dx;
            let sign = if across < 0.0 { -1.0 } else { 1.0 };
            let depth = cell.half_x * uy.abs() + cell.half_y * ux.abs() + error;
            if across.abs() < depth {
                return SideReach::Crossed;
            }
            return SideReach::Bounded(RadiusBound {
                at_middle: across.abs(),
                slope_x: -uy * sign,
                slope_y: ux * sign,
                error,
            });
        }
        let foot = along.clamp(0.0, length);
        let (wx, wy) = (dx - foot * ux, dy - foot * uy);
        let distance = (wx * wx + wy * wy).sqrt();
        if distance <= reach {
            return SideReach::TooNear;
        }
        SideReach::Bounded(RadiusBound {
            at_middle: distance + reach * reach / (2.0 * distance),
            slope_x: wx / distance,
            slope_y: wy / distance,
            error,
        })
    }

    /// The distance inward from a side's line, where no inner point of the cell
    /// lies beyond that line and no foot on it lies inside: so of a convex outline.
    /// `inward` is 1 where the inside lies to the left.
    pub(super) fn inward(edge: &OutlineEdge, cell: &SearchBox, inward: f64) -> RadiusBound {
        let p = cell.middle;
        let (ex, ey) = (edge.to.x_mm - edge.from.x_mm, edge.to.y_mm - edge.from.y_mm);
        let (dx, dy) = (p.x_mm - edge.from.x_mm, p.y_mm - edge.from.y_mm);
        let (fx, fy) = (p.x_mm - edge.to.x_mm, p.y_mm - edge.to.y_mm);
        let scale = inward / (ex * ex + ey * ey).sqrt();
        let (near, far) = (dx * dx + dy * dy, fx * fx + fy * fy);
        let across = if near <= far {
            ex * dy - ey * dx
        } else {
            ex * fy - ey * fx
        };
        RadiusBound {
            at_middle: across * scale,
            slope_x: -ey * scale,
            slope_y: ex * scale,
            error: ROUNDINGS * (near.min(far).sqrt() + cell.reach()),
        }
    }

    /// The bound at a point so far from the middle.
    pub(super) fn at(&self, dx: f64, dy: f64) -> f64 {
        self.at_middle + (self.slope_x * dx + self.slope_y * dy)
    }
}

/// What a side is to a cell.
#[derive(Clone, Copy, Debug)]
pub(super) enum SideReach {
    /// It bounds the radius.
    Bounded(RadiusBound),
    /// It runs through the cell from one end to the other.
    Crossed,
    /// It is so near that it says too little.
    TooNear,
}

fn nearer_end_first(edge: &OutlineEdge, p: Corner) -> (Corner, Corner) {
    let square = |end: Corner| {
        let (dx, dy) = (p.x_mm - end.x_mm, p.y_mm - end.y_mm);
        dx * dx + dy * dy
    };
    if square(edge.from) <= square(edge.to) {
        (edge.from, edge.to)
    } else {
        (edge.to, edge.from)
    }
}

/// A row of the program: normal · (dx, dy, radius) ≤ limit.
#[derive(Clone, Copy, Debug)]
struct ProgramRow {
    normal: [f64; 3],
    limit: f64,
    /// Which bound it is; `None` for a side of the box.
    bound: Option<usize>,
}

impl ProgramRow {
    fn of_bound(index: usize, bound: &RadiusBound) -> ProgramRow {
        ProgramRow {
            normal: [-bound.slope_x, -bound.slope_y, 1.0],
            limit: bound.at_middle,
            bound: Some(index),
        }
    }
}

/// The program: bounds within a box, and its best corner so far.
#[derive(Clone, Debug)]
pub(super) struct Tangents {
    cell: SearchBox,
    bounds: [RadiusBound; MOST],
    count: usize,
    basis: [ProgramRow; 3],
    /// The multipliers of the basis; never below zero but for rounding.
    weights: [f64; 3],
    /// dx, dy, radius.
    best: [f64; 3],
}

impl Tangents {
    /// A program of one bound: its best place is a corner of the box.
    pub(super) fn new(cell: SearchBox, first: RadiusBound) -> Tangents {
        let sign = |slope: f64| if slope < 0.0 { -1.0 } else { 1.0 };
        let (sx, sy) = (sign(first.slope_x), sign(first.slope_y));
        let (dx, dy) = (sx * cell.half_x, sy * cell.half_y);
        let wall = |normal, limit| ProgramRow {
            normal,
            limit,
            bound: None,
        };
        let mut bounds = [RadiusBound::default(); MOST];
        bounds[0] = first;
        Tangents {
            cell,
            bounds,
            count: 1,
            basis: [
                ProgramRow::of_bound(0, &first),
                wall([sx, 0.0, 0.0], cell.half_x),
                wall([0.0, sy, 0.0], cell.half_y),
            ],
            weights: [1.0, first.slope_x.abs(), first.slope_y.abs()],
            best: [dx, dy, first.at(dx, dy)],
        }
    }

    /// Where the largest circle would be.
    pub(super) fn centre(&self) -> Corner {
        Corner {
            x_mm: self.cell.middle.x_mm + self.best[0],
            y_mm: self.cell.middle.y_mm + self.best[1],
        }
    }

    /// The bounds so far.
    pub(super) fn bounds(&self) -> &[RadiusBound] {
        &self.bounds[..self.count]
    }

    /// Adds a bound that the best place breaks, and moves to the new best place.
    pub(super) fn add(&mut self, bound: RadiusBound) -> Added {
        if self.count == MOST {
            return Added::NoRoom;
        }
        let over = self.best[2] - bound.at(self.best[0], self.best[1]);
        if over <= bound.error {
            return Added::ChangesNothing;
        }
        let row = ProgramRow::of_bound(self.count, &bound);
        self.bounds[self.count] = bound;
        self.count += 1;
        let mut next = row;
        // the best place may break the box or an older bound now: a few exchanges mend it
        for _ in 0..2 * MOST {
            if !self.exchange(next) {
                return Added::ChangesNothing;
            }
            match self.broken() {
                Some(broken) => next = broken,
                None => break,
            }
        }
        Added::Moved
    }

    /// The dual simplex step: the row comes in, and the one goes out whose
    /// multiplier reaches zero first.
    fn exchange(&mut self, row: ProgramRow) -> bool {
        let [a, b, c] = &self.basis;
        let (bc, ca, ab) = (
            cross(&b.normal, &c.normal),
            cross(&c.normal, &a.normal),
            cross(&a.normal, &b.normal),
        );
        let size = dot(&a.normal, &bc);
        let mut out: Option<(usize, f64)> = None;
        for (index, face) in [bc, ca, ab].iter().enumerate() {
            let share = dot(&row.normal, face) / size;
            if share > 1e-12 {
                let ratio = self.weights[index].max(0.0) / share;
                if out.is_none_or(|(_, least)| ratio < least) {
                    out = Some((index, ratio));
                }
            }
        }
        let Some((index, _)) = out else {
            return false;
        };
        self.basis[index] = row;
        self.settle()
    }

    /// The place and the multipliers of the basis.
    fn settle(&mut self) -> bool {
        let [a, b, c] = &self.basis;
        let (bc, ca, ab) = (
            cross(&b.normal, &c.normal),
            cross(&c.normal, &a.normal),
            cross(&a.normal, &b.normal),
        );
        let size = 1.0 / dot(&a.normal, &bc);
        if !size.is_finite() {
            return false;
        }
        self.weights = [bc[2] * size, ca[2] * size, ab[2] * size];
        // sides that are nearly parallel leave a rest, which costs the bound: once more
        let [u, v, w] = self.weights;
        let mut rest = [0.0, 0.0, 1.0];
        for (axis, rest) in rest.iter_mut().enumerate() {
            *rest -= u * a.normal[axis] + v * b.normal[axis] + w * c.normal[axis];
        }
        for (weight, face) in self.weights.iter_mut().zip([bc, ca, ab]) {
            *weight += dot(&rest, &face) * size;
        }
        for (axis, best) in self.best.iter_mut().enumerate() {
            *best = (a.limit * bc[axis] + b.limit * ca[axis] + c.limit * ab[axis]) * size;
        }
        true
    }

    /// The row that the best place breaks most.
    fn broken(&self) -> Option<ProgramRow> {
        let [dx, dy, radius] = self.best;
        let mut worst: Option<(f64, ProgramRow)> = None;
        let mut look = |over: f64, slack: f64, row: ProgramRow| {
            if over > slack && worst.is_none_or(|(most, _)| over > most) {
                worst = Some((over, row));
            }
        };
        for (index, bound) in self.bounds().iter().enumerate() {
            let over = radius - bound.at(dx, dy);
            look(over, bound.error, ProgramRow::of_bound(index, bound));
        }
        let walls = [
            (
                dx.abs() - self.cell.half_x,
                self.cell.half_x,
                [dx.signum(), 0.0, 0.0],
            ),
            (
                dy.abs() - self.cell.half_y,
                self.cell.half_y,
                [0.0, dy.signum(), 0.0],
            ),
        ];
        for (over, limit, normal) in walls {
            let row = ProgramRow {
                normal,
                limit,
                bound: None,
            };
            look(over, 1e-12 * limit, row);
        }
        worst.map(|(_, row)| row)
    }

    /// A radius that no circle centred in the box exceeds.
    ///
    /// A weighted mean of bounds is a bound, whatever the weights (none below
    /// zero): weak duality.
    pub(super) fn upper(&self) -> f64 {
        let (mut weight, mut value, mut slope_x, mut slope_y) = (0.0, 0.0, 0.0, 0.0);
        let (mut error, mut size) = (0.0_f64, 0.0);
        for (row, share) in self.basis.iter().zip(self.weights) {
            let Some(bound) = row.bound.map(|index| &self.bounds[index]) else {
                continue;
            };
            let share = share.max(0.0);
            weight += share;
            value += share * bound.at_middle;
            size += share * bound.at_middle.abs();
            slope_x += share * bound.slope_x;
            slope_y += share * bound.slope_y;
            error = error.max(bound.error);
        }
        let swing = self.cell.half_x * slope_x.abs() + self.cell.half_y * slope_y.abs();
        let upper = (value + swing + ROUNDINGS * (size + swing)) / weight;
        if upper.is_nan() {
            return f64::INFINITY;
        }
        upper + error
    }

    /// The part of the box in which a circle of this radius may still have its
    /// centre, as a smaller box; `None` where there is none.
    pub(super) fn contracted(&self, radius: f64) -> Option<SearchBox> {
        let (x, y) = (self.cell.half_x, self.cell.half_y);
        let mut part = vec![(-x, -y), (x, -y), (x, y), (-x, y)];
        for bound in self.bounds() {
            part = clipped(&part, |(dx, dy)| {
                bound.at(dx, dy) + 2.0 * bound.error - radius
            });
        }
        let (first, rest) = part.split_first()?;
        let (mut low, mut high) = (*first, *first);
        for (dx, dy) in rest {
            low = (low.0.min(*dx), low.1.min(*dy));
            high = (high.0.max(*dx), high.1.max(*dy));
        }
        let room = 1e-9 * self.cell.reach();
        Some(SearchBox {
            middle: Corner {
                x_mm: self.cell.middle.x_mm + (low.0 + high.0) / 2.0,
                y_mm: self.cell.middle.y_mm + (low.1 + high.1) / 2.0,
            },
            half_x: ((high.0 - low.0) / 2.0 + room).min(x),
            half_y: ((high.1 - low.1) / 2.0 + room).min(y),
        })
    }
}

/// What a new bound did.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Added {
    /// The best place keeps to it already, or rounding leaves nothing to gain.
    ChangesNothing,
    /// The best place moved.
    Moved,
    /// The program is full.
    NoRoom,
}

/// The part of a convex polygon in which a flat function is not below zero.
fn clipped(part: &[(f64, f64)], keep: impl Fn((f64, f64)) -> f64) -> Vec<(f64, f64)> {
    let mut kept = Vec::with_capacity(part.len() + 1);
    for (index, here) in part.iter().enumerate() {
        let next = part[(index + 1) % part.len()];
        let (at_here, at_next) = (keep(*here), keep(next));
        if at_here >= 0.0 {
            kept.push(*here);
        }
        if (at_here >= 0.0) != (at_next >= 0.0) {
            let share = (at_here / (at_here - at_next)).clamp(0.0, 1.0);
            kept.push((
                here.0 + share * (next.0 - here.0),
                here.1 + share * (next.1 - here.1),
            ));
        }
    }
    kept
}

fn cross(a: &[f64; 3], b: &[f64; 3]) -> [f64; 3] {
    [
        a[1] * b[2] - a[2] * b[1],
        a[2] * b[0] - a[0] * b[2],
        a[0] * b[1] - a[1] * b[0],
    ]
}

fn dot(a: &[f64; 3], b: &[f64; 3]) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}
