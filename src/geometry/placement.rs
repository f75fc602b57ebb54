//! Whether a rectangle passes through an outline, turned and moved as one likes.
//!
//! Angles are taken in intervals. The part that the rectangle keeps while it turns
//! through an interval either fits nowhere, which rules the interval out, or it
//! leaves places where the rectangle itself is tried; one that fits is proven so by
//! exact orientation tests. Places are not searched on a grid: each side of the
//! outline forbids a convex set of them ([`Core::blocked_by`]), and the plane is cut along
//! the edges of those sets, so that nothing hangs on how near the fit is.

use std::collections::VecDeque;

use crate::geometry::Corner;
use crate::geometry::Polygon;
use crate::geometry::clear_opening;
use crate::geometry::covering::Core;
use crate::geometry::covering::Effect;
use crate::geometry::covering::HalfPlane;
use crate::geometry::covering::Keep;
use crate::geometry::covering::PlaceCell;
use crate::geometry::edges::BoundingBox;
use crate::geometry::edges::EdgeTree;
use crate::geometry::orient::SideOfLine;
use crate::geometry::orient::side;

/// Looks at a side from a cell that may be taken, besides some for each side: what
/// keeps any outline from taking long.
const WORK: usize = 2_000_000;
const WORK_FOR_A_SIDE: usize = 1_000;

/// How much smaller the probe is taken when it is ruled out, and how much larger
/// when it is proven to pass: shares of the outline's width.
const LESS: f64 = 1e-8;
const MORE: f64 = 1e-9;

/// Cells thinner than this share of the outline's width are dropped. A place where
/// the probe fits leaves a disc of radius [`LESS`], which so many slivers cannot hide.
const THIN: f64 = 1e-14;

/// Below this an interval of angles is not halved any more (radians).
const FINEST: f64 = 1e-8;

/// A rectangle that lies in an outline.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Placement {
    /// Its corners in order, in millimetres. It is a hair larger than the probe.
    pub corners: [Corner; 4],
}

/// Whether a probe passes through an opening.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Fit {
    /// It does not, turned and moved as one likes.
    DoesNotPass,
    /// It does. One that just fits passes; the placement is the proof, where the
    /// shape is no closed form.
    Passes(Option<Placement>),
    /// Neither is proven: it fits so nearly that rounding decides, or the bounded
    /// work did not suffice.
    Undecided,
}

/// Whether a rectangle of these sides passes through an outline.
///
/// # Accuracy
/// Both answers are proven. A rectangle that fits with less to spare than some
/// 1e-8 of the outline's width, or lacks less, may stay undecided. The work is
/// bounded by a count, 2 million looks at a side and 1000 more for each side.
///
/// # Source
/// The middles at which a convex figure meets a segment are the Minkowski sum of
/// the two: textbook computational geometry. The walk over intervals of angles is
/// our own.
///
/// ```
/// use guardrule::geometry::{Corner, Fit, Polygon, admits};
/// let corners = [(0.0, 0.0), (90.0, 0.0), (90.0, 300.0), (0.0, 300.0)];
/// let corners = corners.map(|(x_mm, y_mm)| Corner { x_mm, y_mm });
/// let outline = Polygon::new(corners.to_vec())?;
/// assert!(matches!(admits(&outline, (89.0, 157.0)), Fit::Passes(Some(_))));
/// assert_eq!(admits(&outline, (91.0, 157.0)), Fit::DoesNotPass);
/// # Ok::<(), guardrule::geometry::ShapeError>(())
/// ```
#[must_use]
pub fn admits(outline: &Polygon, sides_mm: (f64, f64)) -> Fit {
    let short = sides_mm.0.min(sides_mm.1);
    let long = sides_mm.0.max(sides_mm.1);
    if !(short > 0.0 && long.is_finite()) {
        return Fit::Undecided;
    }
    let ball = clear_opening(outline);
    if ball.upper_mm < short {
        return Fit::DoesNotPass;
    }
    let search = PlacementSearch::new(outline, short / 2.0, long / 2.0);
    if ball.lower_mm > (short * short + long * long).sqrt()
        && let Some(found) = search.proven_at(search.moved(ball.centre), 0.0)
    {
        return Fit::Passes(Some(found));
    }
    search.run()
}

/// An interval of angles, and the places that are left for it.
struct Turned {
    turn: f64,
    spread: f64,
    places: Vec<PlaceCell>,
}

/// What became of the places for one core.
enum Places {
    /// All are forbidden.
    None,
    /// A place that is free, and all that are left.
    Some(Corner, Vec<PlaceCell>),
    OutOfWork,
}

struct PlacementSearch {
    /// The outline, moved so that its box lies about the origin.
    tree: EdgeTree,
    /// As written, to prove a placement with.
    written: EdgeTree,
    by: Corner,
    half: (f64, f64),
    width: f64,
    farthest: f64,
    /// Directions of the longer sides, within half a turn.
    directions: Vec<f64>,
    work: usize,
}

impl PlacementSearch {
    fn new(outline: &Polygon, short: f64, long: f64) -> PlacementSearch {
        let written = EdgeTree::new(outline.corners());
        let bounds = written.bounds();
        let by = Corner {
            x_mm: bounds.low.x_mm / 2.0 + bounds.high.x_mm / 2.0,
            y_mm: bounds.low.y_mm / 2.0 + bounds.high.y_mm / 2.0,
        };
        let moved = |c: &Corner| Corner {
            x_mm: c.x_mm - by.x_mm,
            y_mm: c.y_mm - by.y_mm,
        };
        let corners: Vec<Corner> = outline.corners().iter().map(moved).collect();
        let far = |c: &Corner| c.x_mm.abs().max(c.y_mm.abs());
        let tree = EdgeTree::new(&corners);
        PlacementSearch {
            directions: directions(&tree, short),
            width: tree.width(),
            farthest: outline.corners().iter().map(far).fold(0.0, f64::max),
            work: WORK + WORK_FOR_A_SIDE * corners.len(),
            half: (short, long),
            tree,
            written,
            by,
        }
    }

    fn moved(&self, place: Corner) -> Corner {
        Corner {
            x_mm: place.x_mm - self.by.x_mm,
            y_mm: place.y_mm - self.by.y_mm,
        }
    }

    fn run(mut self) -> Fit {
        const FIRST: u32 = 16;
        let whole = PlaceCell::of_bounds(&self.tree.bounds());
        let spread = std::f64::consts::PI / f64::from(2 * FIRST);
        let mut open: VecDeque<Turned> = (0..FIRST)
            .map(|k| Turned {
                turn: spread * f64::from(2 * k + 1),
                spread,
                places: vec![whole.clone()],
            })
            .collect();
        let mut undecided = false;
        while let Some(next) = open.pop_front() {
            let Turned { turn, spread, .. } = next;
            let left = match self.places_left(&next) {
                Places::None => continue,
                Places::OutOfWork => return Fit::Undecided,
                Places::Some(place, left) => {
                    if let Some(found) = self.proven_at(place, turn) {
                        return Fit::Passes(Some(found));
                    }
                    left
                }
            };
            match self.fit_at_one_angle(turn, spread, &left) {
                Fit::DoesNotPass => {}
                found @ Fit::Passes(_) => return found,
                Fit::Undecided if self.work == 0 => return Fit::Undecided,
                Fit::Undecided => {}
            }
            if spread < FINEST {
                undecided = true;
                continue;
            }
            for turn in [turn - spread / 2.0, turn + spread / 2.0] {
                open.push_back(Turned {
                    turn,
                    spread: spread / 2.0,
                    places: left.clone(),
                });
            }
        }
        if undecided {
            Fit::Undecided
        } else {
            Fit::DoesNotPass
        }
    }

    /// The places that an interval of angles leaves to the rectangle's core.
    fn places_left(&mut self, turned: &Turned) -> Places {
        // the ends overlap by a hair, so that no angle falls between two intervals
        let spread = turned.spread * (1.0 + 1e-9) + 1e-14;
        let less = LESS * self.width;
        match Core::of(self.half, turned.turn, spread, less) {
            Some(core) => self.places(&core, &turned.places),
            None => match turned.places.first() {
                Some(cell) => Places::Some(cell.middle, turned.places.clone()),
                None => Places::None,
            },
        }
    }

    /// The rectangle itself at one angle of an interval: at that of a side of the
    /// outline, if one lies within, else at the middle.
    fn fit_at_one_angle(&mut self, turn: f64, spread: f64, places: &[PlaceCell]) -> Fit {
        let within = |direction: &&f64| {
            let off = (**direction - turn).abs();
            off.min(std::f64::consts::PI - off) <= spread
        };
        let angle = self.directions.iter().find(within).copied();
        let angle = angle.unwrap_or(turn);
        let more = self.more();
        let half = (self.half.0 + more, self.half.1 + more);
        let Some(core) = Core::of(half, angle, 0.0, 0.0) else {
            return Fit::Undecided;
        };
        match self.places(&core, places) {
            Places::None | Places::OutOfWork => Fit::Undecided,
            Places::Some(place, _) => match self.proven_at(place, angle) {
                Some(found) => Fit::Passes(Some(found)),
                None => Fit::Undecided,
            },
        }
    }

    fn more(&self) -> f64 {
        MORE * self.width + 1e-13 * self.farthest
    }

    /// Cuts cells along the edges of what is forbidden, until one is free or none
    /// is left.
    fn places(&mut self, core: &Core, start: &[PlaceCell]) -> Places {
        let thin = THIN * self.width;
        let mut stack: Vec<PlaceCell> = start.to_vec();
        while let Some(cell) = stack.pop() {
            match self.examine(core, cell) {
                Looked::Gone => {}
                Looked::Free(cell) => {
                    if self.tree.contains(cell.middle) {
                        let place = cell.middle;
                        stack.push(cell);
                        return Places::Some(place, stack);
                    }
                }
                Looked::Split(cell, line) => {
                    let parts = [Keep::Within, Keep::Beyond].map(|keep| cell.part(&line, keep));
                    let wide = |part: &PlaceCell| !part.is_thin(thin);
                    stack.extend(parts.into_iter().flatten().filter(wide));
                }
                Looked::OutOfWork => return Places::OutOfWork,
            }
        }
        Places::None
    }

    /// One cell under all sides near it.
    fn examine(&mut self, core: &Core, mut cell: PlaceCell) -> Looked {
        let thin = THIN * self.width;
        let mut near = Vec::new();
        self.tree.near(&cell.bounds(core.radius), &mut near);
        let mut sets: Vec<_> = near
            .iter()
            .map(|edge| core.blocked_by(&self.tree.edges[*edge]))
            .collect();
        loop {
            let mut best: Option<(HalfPlane, f64)> = None;
            let mut cut = false;
            let mut left = Vec::with_capacity(sets.len());
            for set in sets {
                if self.work == 0 {
                    return Looked::OutOfWork;
                }
                self.work -= 1;
                match cell.effect_of(&set, thin / 4.0) {
                    Effect::Beside => {}
                    Effect::Covers => return Looked::Gone,
                    Effect::CutBy(line) => {
                        match cell.part(&line, Keep::Beyond) {
                            Some(part) if !part.is_thin(thin) => cell = part,
                            _ => return Looked::Gone,
                        }
                        cut = true;
                    }
                    Effect::SplitBy(line, deep) => {
                        if best.is_none_or(|(_, so_far)| deep < so_far) {
                            best = Some((line, deep));
                        }
                        left.push(set);
                    }
                }
            }
            let Some((line, _)) = best else {
                return Looked::Free(cell);
            };
            let large = cell.radius > self.half.0;
            if large {
                let across = cell.middle_line();
                return Looked::Split(cell, across);
            }
            if !cut {
                return Looked::Split(cell, line);
            }
            sets = left;
        }
    }

    /// The rectangle, a hair larger, at one place: proven to lie in the outline, or
    /// nothing.
    fn proven_at(&self, place: Corner, turn: f64) -> Option<Placement> {
        // the corners round by far less than half of what is added
        let more = self.more() / 2.0;
        let (a, b) = (self.half.0 + more, self.half.1 + more);
        let (sin, cos) = (libm::sin(turn), libm::cos(turn));
        let at = |x: f64, y: f64| Corner {
            x_mm: self.by.x_mm + place.x_mm + (x * cos - y * sin),
            y_mm: self.by.y_mm + place.y_mm + (x * sin + y * cos),
        };
        let corners = [at(-a, -b), at(a, -b), at(a, b), at(-a, b)];
        lies_in(&self.written, &corners).then_some(Placement { corners })
    }
}

/// What a cell comes to.
enum Looked {
    Free(PlaceCell),
    Gone,
    OutOfWork,
    Split(PlaceCell, HalfPlane),
}

/// The directions of the sides that are no shorter than the probe's half, longest
/// first, and square to them; within half a turn.
fn directions(tree: &EdgeTree, short: f64) -> Vec<f64> {
    use std::f64::consts::PI;
    const MOST: usize = 24;
    let mut sides: Vec<(f64, f64)> = tree
        .edges
        .iter()
        .filter(|edge| edge.length() >= short)
        .map(|edge| {
            let (dx, dy) = (edge.to.x_mm - edge.from.x_mm, edge.to.y_mm - edge.from.y_mm);
            (edge.length(), libm::atan2(dy, dx))
        })
        .collect();
    sides.sort_by(|one, other| other.0.total_cmp(&one.0));
    sides.truncate(MOST);
    let folded = |angle: f64| angle - PI * (angle / PI).floor();
    sides
        .into_iter()
        .flat_map(|(_, angle)| [folded(angle), folded(angle + PI / 2.0)])
        .collect()
}

/// Whether a convex figure lies in an outline: no side comes into it, and its
/// middle is inside. Exact, since each side must lie on the far side of one of the
/// figure's own sides, or all of the figure on one side of it.
fn lies_in(tree: &EdgeTree, corners: &[Corner; 4]) -> bool {
    let bounds = BoundingBox::around(corners);
    let mut near = Vec::new();
    tree.near(&bounds, &mut near);
    let outside = |edge: &usize| {
        let edge = &tree.edges[*edge];
        let next = corners.iter().skip(1).chain(corners.first());
        let beyond = |(from, to): (&Corner, &Corner)| {
            let right = |p| side(*from, *to, p) != SideOfLine::Left;
            right(edge.from) && right(edge.to)
        };
        let all = |wanted: SideOfLine| {
            let on = |p: &Corner| {
                let found = side(edge.from, edge.to, *p);
                found == wanted || found == SideOfLine::On
            };
            corners.iter().all(on)
        };
        corners.iter().zip(next).any(beyond) || all(SideOfLine::Left) || all(SideOfLine::Right)
    };
    let middle = Corner {
        x_mm: corners[0].x_mm / 2.0 + corners[2].x_mm / 2.0,
        y_mm: corners[0].y_mm / 2.0 + corners[2].y_mm / 2.0,
    };
    near.iter().all(outside) && tree.contains(middle)
}
