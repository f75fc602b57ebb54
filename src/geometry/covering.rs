//! Where the middle of a probe cannot lie: each side of an outline, thickened by
//! the probe, forbids a convex set of places; the rest is cut into convex cells.

use crate::geometry::Corner;
use crate::geometry::edges::BoundingBox;
use crate::geometry::edges::OutlineEdge;

/// A direction of length one.
#[derive(Clone, Copy, Debug)]
struct Normal {
    x: f64,
    y: f64,
}

impl Normal {
    /// Square to a step, on its right; `None` for a step of nothing.
    fn right_of(from: Corner, to: Corner) -> Option<Normal> {
        let (dx, dy) = (to.x_mm - from.x_mm, to.y_mm - from.y_mm);
        let length = (dx * dx + dy * dy).sqrt();
        (length > 0.0).then_some(Normal {
            x: dy / length,
            y: -dx / length,
        })
    }

    fn opposite(self) -> Normal {
        Normal {
            x: -self.x,
            y: -self.y,
        }
    }

    fn along(self, p: Corner) -> f64 {
        self.x * p.x_mm + self.y * p.y_mm
    }
}

/// A half-plane: the places whose measure along the normal is at most the reach.
#[derive(Clone, Copy, Debug)]
pub(super) struct HalfPlane {
    normal: Normal,
    reach: f64,
}

impl HalfPlane {
    /// How far a place lies outside; below zero inside.
    pub(super) fn excess(&self, p: Corner) -> f64 {
        self.normal.along(p) - self.reach
    }
}

/// A convex figure about the origin that is the same when turned by half a turn.
#[derive(Clone, Debug)]
pub(super) struct Core {
    corners: Vec<Corner>,
    sides: Vec<HalfPlane>,
    /// From the origin to its farthest corner.
    pub(super) radius: f64,
    less: f64,
}

impl Core {
    /// The part that all rectangles have in common that lie turned by an angle
    /// between `turn - spread` and `turn + spread`: an octagon within it. `None`
    /// where they turn too far to have a plain octagon in common.
    ///
    /// # Source
    /// A place stays in the rectangle while it turns if it does at both ends, and
    /// keeps to the inscribed circle between them: plane geometry.
    pub(super) fn of(half: (f64, f64), turn: f64, spread: f64, less: f64) -> Option<Core> {
        let (a, b) = half;
        let (sin, cos) = (libm::sin(spread), libm::cos(spread));
        let double = cos * cos - sin * sin;
        let (x, y) = ((a * cos - b * sin) / double, (b * cos - a * sin) / double);
        if spread > 0.7 || x <= 0.5 * a || y <= 0.5 * b {
            return None;
        }
        let quarter = if spread > 0.0 {
            vec![(a, 0.0), (x, y), (0.0, b), (-x, y)]
        } else {
            vec![(a, b), (-a, b)]
        };
        let opposite = quarter.iter().map(|(x, y)| (-x, -y));
        let (sin, cos) = (libm::sin(turn), libm::cos(turn));
        let corners: Vec<Corner> = quarter
            .iter()
            .copied()
            .chain(opposite)
            .map(|(x, y)| Corner {
                x_mm: x * cos - y * sin,
                y_mm: x * sin + y * cos,
            })
            .collect();
        let next = corners.iter().skip(1).chain(corners.first());
        let sides = corners.iter().zip(next).filter_map(|(from, to)| {
            let normal = Normal::right_of(*from, *to)?;
            let reach = normal.along(*from).max(normal.along(*to));
            Some(HalfPlane { normal, reach })
        });
        Some(Core {
            sides: sides.collect(),
            corners,
            radius: (a * a + b * b).sqrt(),
            less,
        })
    }

    /// The places where a core about them would meet a side, less a hair.
    pub(super) fn blocked_by(&self, edge: &OutlineEdge) -> Forbidden {
        let mut sides: Vec<HalfPlane> = Vec::with_capacity(self.sides.len() + 2);
        for side in &self.sides {
            let far = side.normal.along(edge.from).max(side.normal.along(edge.to));
            sides.push(HalfPlane {
                normal: side.normal,
                reach: side.reach + far - self.less,
            });
        }
        if let Some(normal) = Normal::right_of(edge.from, edge.to) {
            let widths = self.corners.iter().map(|corner| normal.along(*corner));
            let width = widths.fold(0.0, f64::max) - self.less;
            for normal in [normal, normal.opposite()] {
                let at = normal.along(edge.from).max(normal.along(edge.to));
                sides.push(HalfPlane {
                    normal,
                    reach: width + at,
                });
            }
        }
        Forbidden { sides }
    }
}

/// A convex set of places that cannot be the probe's middle.
#[derive(Clone, Debug)]
pub(super) struct Forbidden {
    sides: Vec<HalfPlane>,
}

/// What a forbidden set does to a cell.
#[derive(Clone, Copy, Debug)]
pub(super) enum Effect {
    /// Nothing of the cell is forbidden.
    Beside,
    /// All of it is.
    Covers,
    /// What is left lies beyond one side.
    CutBy(HalfPlane),
    /// What is left lies beyond several sides: the one beyond which most lies,
    /// and how deep inside the cell's middle is.
    SplitBy(HalfPlane, f64),
}

/// A convex set of places that are not yet known to be forbidden.
#[derive(Clone, Debug)]
pub(super) struct PlaceCell {
    corners: Vec<Corner>,
    pub(super) middle: Corner,
    /// From the middle to the farthest corner.
    pub(super) radius: f64,
}

/// Which part of a cell is kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Keep {
    Beyond,
    Within,
}

impl PlaceCell {
    /// A box.
    pub(super) fn of_bounds(bounds: &BoundingBox) -> PlaceCell {
        let (low, high) = (bounds.low, bounds.high);
        let corner = |x_mm, y_mm| Corner { x_mm, y_mm };
        PlaceCell::through(vec![
            low,
            corner(high.x_mm, low.y_mm),
            high,
            corner(low.x_mm, high.y_mm),
        ])
    }

    fn through(corners: Vec<Corner>) -> PlaceCell {
        let mut sum = Corner::ORIGIN;
        let mut count = 0.0;
        for corner in &corners {
            (sum.x_mm, sum.y_mm) = (sum.x_mm + corner.x_mm, sum.y_mm + corner.y_mm);
            count += 1.0;
        }
        let middle = Corner {
            x_mm: sum.x_mm / count,
            y_mm: sum.y_mm / count,
        };
        let radius = corners.iter().map(|corner| distance(*corner, middle));
        PlaceCell {
            radius: radius.fold(0.0, f64::max),
            middle,
            corners,
        }
    }

    /// The box round it, wider by so much.
    pub(super) fn bounds(&self, wider: f64) -> BoundingBox {
        let BoundingBox { low, high } = BoundingBox::around(&self.corners);
        BoundingBox {
            low: Corner {
                x_mm: low.x_mm - wider,
                y_mm: low.y_mm - wider,
            },
            high: Corner {
                x_mm: high.x_mm + wider,
                y_mm: high.y_mm + wider,
            },
        }
    }

    /// Whether nothing of it is wider than this.
    pub(super) fn is_thin(&self, width: f64) -> bool {
        let Some((first, rest)) = self.corners.split_first() else {
            return true;
        };
        let mut area = 0.0;
        let mut longest = 0.0_f64;
        for (one, other) in rest.iter().zip(rest.iter().skip(1)) {
            area += cross(*first, *one, *other) / 2.0;
        }
        for corner in rest {
            longest = longest.max(distance(*first, *corner));
        }
        area.abs() <= width * longest / 2.0
    }

    /// What a forbidden set does to it; what overlaps by no more than a hair does not
    /// count, so that rounding never cuts the same cell twice.
    pub(super) fn effect_of(&self, set: &Forbidden, hair: f64) -> Effect {
        let mut cut: Option<(HalfPlane, f64)> = None;
        let mut cuts = 0_usize;
        let mut deep = f64::NEG_INFINITY;
        for side in &set.sides {
            let here = side.excess(self.middle);
            deep = deep.max(here);
            if here >= self.radius {
                return Effect::Beside;
            }
            if here <= -self.radius {
                continue;
            }
            let (mut least, mut most) = (f64::INFINITY, f64::NEG_INFINITY);
            for corner in &self.corners {
                let at = side.excess(*corner);
                (least, most) = (least.min(at), most.max(at));
            }
            if least >= -hair {
                return Effect::Beside;
            }
            if most > hair {
                cuts += 1;
                if cut.is_none_or(|(_, so_far)| most > so_far) {
                    cut = Some((*side, most));
                }
            }
        }
        match (cut, cuts) {
            (None, _) => Effect::Covers,
            (Some((side, _)), 1) => Effect::CutBy(side),
            (Some((side, _)), _) => Effect::SplitBy(side, deep),
        }
    }

    /// The part on one side of a line; `None` where there is none.
    pub(super) fn part(&self, line: &HalfPlane, keep: Keep) -> Option<PlaceCell> {
        let next = self.corners.iter().skip(1).chain(self.corners.first());
        let mut corners = Vec::with_capacity(self.corners.len() + 1);
        for (from, to) in self.corners.iter().zip(next) {
            let (here, there) = (line.excess(*from), line.excess(*to));
            let kept = match keep {
                Keep::Beyond => here >= 0.0,
                Keep::Within => here <= 0.0,
            };
            if kept {
                corners.push(*from);
            }
            if (here < 0.0 && there > 0.0) || (here > 0.0 && there < 0.0) {
                let share = here / (here - there);
                corners.push(Corner {
                    x_mm: from.x_mm + share * (to.x_mm - from.x_mm),
                    y_mm: from.y_mm + share * (to.y_mm - from.y_mm),
                });
            }
        }
        (corners.len() >= 3).then(|| PlaceCell::through(corners))
    }

    /// The line across the longer way of its box, through the middle.
    pub(super) fn middle_line(&self) -> HalfPlane {
        let BoundingBox { low, high } = BoundingBox::around(&self.corners);
        let normal = if high.x_mm - low.x_mm >= high.y_mm - low.y_mm {
            Normal { x: 1.0, y: 0.0 }
        } else {
            Normal { x: 0.0, y: 1.0 }
        };
        let reach = (normal.along(low) + normal.along(high)) / 2.0;
        HalfPlane { normal, reach }
    }
}

fn distance(a: Corner, b: Corner) -> f64 {
    let (dx, dy) = (b.x_mm - a.x_mm, b.y_mm - a.y_mm);
    (dx * dx + dy * dy).sqrt()
}

fn cross(a: Corner, b: Corner, c: Corner) -> f64 {
    (b.x_mm - a.x_mm) * (c.y_mm - a.y_mm) - (b.y_mm - a.y_mm) * (c.x_mm - a.x_mm)
}
