//! The sides of an outline in a tree of boxes, for large outlines.
//!
//! Sides that follow each other lie near each other, so the tree halves the
//! outline by order and not by place: it needs no sorting.

use crate::geometry::Corner;
use crate::geometry::orient::SideOfLine;
use crate::geometry::orient::side;

/// Sides in one leaf.
const LEAF: usize = 4;

/// A side of an outline, from one corner to the next.
#[derive(Clone, Copy, Debug)]
pub(super) struct OutlineEdge {
    pub(super) from: Corner,
    pub(super) to: Corner,
}

impl OutlineEdge {
    /// The square of the distance from a point, in mm².
    pub(super) fn distance_squared(&self, p: Corner) -> f64 {
        let (ex, ey) = (self.to.x_mm - self.from.x_mm, self.to.y_mm - self.from.y_mm);
        let (dx, dy) = (p.x_mm - self.from.x_mm, p.y_mm - self.from.y_mm);
        let along = dx * ex + dy * ey;
        if along <= 0.0 {
            return dx * dx + dy * dy;
        }
        let length_squared = ex * ex + ey * ey;
        if along >= length_squared {
            let (dx, dy) = (p.x_mm - self.to.x_mm, p.y_mm - self.to.y_mm);
            return dx * dx + dy * dy;
        }
        // from the nearer end, where the products lose least
        let across = if along + along <= length_squared {
            ex * dy - ey * dx
        } else {
            ex * (p.y_mm - self.to.y_mm) - ey * (p.x_mm - self.to.x_mm)
        };
        across * across / length_squared
    }

    /// The length, in mm.
    pub(super) fn length(&self) -> f64 {
        let (ex, ey) = (self.to.x_mm - self.from.x_mm, self.to.y_mm - self.from.y_mm);
        (ex * ex + ey * ey).sqrt()
    }

    fn bounds(&self) -> BoundingBox {
        BoundingBox {
            low: Corner {
                x_mm: self.from.x_mm.min(self.to.x_mm),
                y_mm: self.from.y_mm.min(self.to.y_mm),
            },
            high: Corner {
                x_mm: self.from.x_mm.max(self.to.x_mm),
                y_mm: self.from.y_mm.max(self.to.y_mm),
            },
        }
    }
}

/// An upright box.
#[derive(Clone, Copy, Debug)]
pub(super) struct BoundingBox {
    pub(super) low: Corner,
    pub(super) high: Corner,
}

impl BoundingBox {
    /// The box round some corners, of which there is one at least.
    pub(super) fn around(corners: &[Corner]) -> BoundingBox {
        let first = corners.first().copied().unwrap_or(Corner::ORIGIN);
        let point = |corner: Corner| BoundingBox {
            low: corner,
            high: corner,
        };
        corners
            .iter()
            .fold(point(first), |bounds, corner| bounds.with(point(*corner)))
    }

    fn with(self, other: BoundingBox) -> BoundingBox {
        BoundingBox {
            low: Corner {
                x_mm: self.low.x_mm.min(other.low.x_mm),
                y_mm: self.low.y_mm.min(other.low.y_mm),
            },
            high: Corner {
                x_mm: self.high.x_mm.max(other.high.x_mm),
                y_mm: self.high.y_mm.max(other.high.y_mm),
            },
        }
    }

    fn meets(&self, other: &BoundingBox) -> bool {
        self.low.x_mm <= other.high.x_mm
            && other.low.x_mm <= self.high.x_mm
            && self.low.y_mm <= other.high.y_mm
            && other.low.y_mm <= self.high.y_mm
    }

    fn distance_squared(&self, p: Corner) -> f64 {
        let dx = (self.low.x_mm - p.x_mm)
            .max(p.x_mm - self.high.x_mm)
            .max(0.0);
        let dy = (self.low.y_mm - p.y_mm)
            .max(p.y_mm - self.high.y_mm)
            .max(0.0);
        dx * dx + dy * dy
    }
}

/// The side that is nearest to a point.
#[derive(Clone, Copy, Debug)]
pub(super) struct Nearest {
    pub(super) edge: usize,
    pub(super) distance_mm: f64,
}

/// The sides of a closed outline, and boxes round runs of them.
#[derive(Clone, Debug)]
pub(super) struct EdgeTree {
    pub(super) edges: Vec<OutlineEdge>,
    /// A binary tree in one row: the children of `i` are `2i + 1` and `2i + 2`.
    boxes: Vec<BoundingBox>,
    leaves: usize,
    longest: f64,
}

impl EdgeTree {
    /// The tree of an outline of at least one corner.
    pub(super) fn new(corners: &[Corner]) -> EdgeTree {
        let next = corners.iter().skip(1).chain(corners.first());
        let edges: Vec<OutlineEdge> = corners
            .iter()
            .zip(next)
            .map(|(from, to)| OutlineEdge {
                from: *from,
                to: *to,
            })
            .collect();
        let leaves = edges.len().div_ceil(LEAF).next_power_of_two();
        let last = edges.last().map_or(
            BoundingBox {
                low: Corner::ORIGIN,
                high: Corner::ORIGIN,
            },
            OutlineEdge::bounds,
        );
        let mut tree = EdgeTree {
            boxes: vec![last; 2 * leaves - 1],
            leaves,
            longest: edges.iter().map(OutlineEdge::length).fold(0.0, f64::max),
            edges,
        };
        for node in (0..tree.boxes.len()).rev() {
            tree.boxes[node] = if node + 1 < leaves {
                tree.boxes[2 * node + 1].with(tree.boxes[2 * node + 2])
            } else {
                let run = tree.sides_of_leaves(node, node);
                let bounds = tree.edges[run].iter().map(OutlineEdge::bounds);
                bounds.reduce(BoundingBox::with).unwrap_or(last)
            };
        }
        tree
    }

    /// The box round the outline.
    pub(super) fn bounds(&self) -> BoundingBox {
        self.boxes[0]
    }

    /// The width of the box, from corner to corner, in mm.
    pub(super) fn width(&self) -> f64 {
        let BoundingBox { low, high } = self.boxes[0];
        let (wide, tall) = (high.x_mm - low.x_mm, high.y_mm - low.y_mm);
        (wide * wide + tall * tall).sqrt()
    }

    /// The length of the longest side, in mm.
    pub(super) fn longest(&self) -> f64 {
        self.longest
    }

    /// The sides below the leaves from `first` to `last`.
    fn sides_of_leaves(&self, first: usize, last: usize) -> std::ops::Range<usize> {
        let count = self.edges.len();
        let start = (first + 1 - self.leaves) * LEAF;
        let end = (last + 2 - self.leaves) * LEAF;
        start.min(count)..end.min(count)
    }

    /// The sides below a node.
    fn sides_of_node(&self, node: usize) -> std::ops::Range<usize> {
        let (mut first, mut last) = (node, node);
        while first + 1 < self.leaves {
            (first, last) = (2 * first + 1, 2 * last + 2);
        }
        self.sides_of_leaves(first, last)
    }

    /// The nearest side; `hint` is one that is likely near.
    pub(super) fn nearest(&self, p: Corner, hint: usize) -> Nearest {
        let mut best = (self.edges[hint].distance_squared(p), hint);
        let mut stack = [(0_usize, 0.0_f64); 64];
        let mut depth = 1;
        while depth > 0 {
            depth -= 1;
            let (node, distance) = stack[depth];
            if distance >= best.0 {
                continue;
            }
            if node + 1 >= self.leaves {
                for edge in self.sides_of_leaves(node, node) {
                    let distance = self.edges[edge].distance_squared(p);
                    if distance < best.0 {
                        best = (distance, edge);
                    }
                }
                continue;
            }
            let (one, other) = (2 * node + 1, 2 * node + 2);
            let one = (one, self.boxes[one].distance_squared(p));
            let other = (other, self.boxes[other].distance_squared(p));
            let (near, far) = if one.1 <= other.1 {
                (one, other)
            } else {
                (other, one)
            };
            stack[depth] = far;
            stack[depth + 1] = near;
            depth += 2;
        }
        Nearest {
            edge: best.1,
            distance_mm: best.0.sqrt(),
        }
    }

    /// Whether a point lies inside, by the parity of a ray to the right.
    ///
    /// # Accuracy
    /// Right for points farther from the outline than 1e-14 of its width.
    pub(super) fn contains(&self, p: Corner) -> bool {
        let above = |corner: Corner| corner.y_mm > p.y_mm;
        let mut inside = false;
        let mut stack = [0_usize; 64];
        let mut depth = 1;
        while depth > 0 {
            depth -= 1;
            let node = stack[depth];
            let bounds = &self.boxes[node];
            if bounds.low.y_mm > p.y_mm || bounds.high.y_mm <= p.y_mm || bounds.high.x_mm < p.x_mm {
                continue;
            }
            let right = bounds.low.x_mm > p.x_mm;
            if right {
                // the whole run lies to the right: its ends tell the parity
                let run = self.sides_of_node(node);
                if let (Some(first), Some(last)) = (
                    self.edges.get(run.start),
                    self.edges.get(run.end.wrapping_sub(1)),
                ) && !run.is_empty()
                {
                    inside ^= above(first.from) != above(last.to);
                }
            } else if node + 1 >= self.leaves {
                for edge in &self.edges[self.sides_of_leaves(node, node)] {
                    inside ^= above(edge.from) != above(edge.to) && is_left_of(p, edge);
                }
            } else {
                stack[depth] = 2 * node + 1;
                stack[depth + 1] = 2 * node + 2;
                depth += 2;
            }
        }
        inside
    }

    /// Whether every side that comes into a box lies on one side of the line of
    /// another, or on it, as far as it goes. A bound in doubt counts as no.
    pub(super) fn all_beside(&self, edge: usize, bounds: &BoundingBox, beside: SideOfLine) -> bool {
        let OutlineEdge { from, to } = self.edges[edge];
        let fits = |end: Corner| {
            let found = side(from, to, end);
            found == beside || found == SideOfLine::On
        };
        let mut stack = [0_usize; 64];
        let mut depth = 1;
        while depth > 0 {
            depth -= 1;
            let node = stack[depth];
            if !self.boxes[node].meets(bounds) {
                continue;
            }
            if node + 1 < self.leaves {
                stack[depth] = 2 * node + 1;
                stack[depth + 1] = 2 * node + 2;
                depth += 2;
                continue;
            }
            for other in &self.edges[self.sides_of_leaves(node, node)] {
                if other.bounds().meets(bounds) && !(fits(other.from) && fits(other.to)) {
                    return false;
                }
            }
        }
        true
    }

    /// The sides whose boxes meet a box.
    pub(super) fn near(&self, bounds: &BoundingBox, found: &mut Vec<usize>) {
        let mut stack = [0_usize; 64];
        let mut depth = 1;
        while depth > 0 {
            depth -= 1;
            let node = stack[depth];
            if !self.boxes[node].meets(bounds) {
                continue;
            }
            if node + 1 < self.leaves {
                stack[depth] = 2 * node + 1;
                stack[depth + 1] = 2 * node + 2;
                depth += 2;
                continue;
            }
            let run = self.sides_of_leaves(node, node);
            found.extend(run.filter(|edge| self.edges[*edge].bounds().meets(bounds)));
        }
    }

    /// Calls with every pair of sides (the first lower) whose boxes meet, until
    /// something comes back.
    pub(super) fn meeting<T>(
        &self,
        found: &mut impl FnMut(usize, usize) -> Option<T>,
    ) -> Option<T> {
        for (index, edge) in self.edges.iter().enumerate() {
            let bounds = edge.bounds();
            let mut stack = vec![0_usize];
            while let Some(node) = stack.pop() {
                if !self.boxes[node].meets(&bounds) {
                    continue;
                }
                if node + 1 < self.leaves {
                    stack.extend([2 * node + 2, 2 * node + 1]);
                    continue;
                }
                for other in self.sides_of_leaves(node, node) {
                    if other > index
                        && self.edges[other].bounds().meets(&bounds)
                        && let Some(found) = found(index, other)
                    {
                        return Some(found);
                    }
                }
            }
        }
        None
    }
}

/// Whether a ray to the right meets a side that spans its height.
fn is_left_of(p: Corner, edge: &OutlineEdge) -> bool {
    let (low, high) = if edge.from.y_mm < edge.to.y_mm {
        (edge.from, edge.to)
    } else {
        (edge.to, edge.from)
    };
    let left = (high.x_mm - low.x_mm) * (p.y_mm - low.y_mm);
    let right = (high.y_mm - low.y_mm) * (p.x_mm - low.x_mm);
    left > right
}
