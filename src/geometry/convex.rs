//! The largest circle in a convex outline: a linear program, of a triangle one of
//! known answer.

use crate::geometry::Corner;
use crate::geometry::edges::BoundingBox;
use crate::geometry::edges::OutlineEdge;
use crate::geometry::orient::SideOfLine;
use crate::geometry::orient::side;
use crate::geometry::tangents::Added;
use crate::geometry::tangents::ROUNDINGS;
use crate::geometry::tangents::RadiusBound;
use crate::geometry::tangents::SearchBox;
use crate::geometry::tangents::Tangents;

/// A radius between two bounds.
#[derive(Clone, Copy, Debug)]
pub(super) struct Radius {
    pub(super) centre: Corner,
    pub(super) lower: f64,
    pub(super) upper: f64,
}

/// How an outline turns at its corners.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Turning {
    BothWays,
    /// To the side on which the inside lies.
    OneWay(SideOfLine),
}

/// What a program for a convex outline found.
#[derive(Clone, Copy, Debug)]
pub(super) enum Convex {
    Proven(Radius),
    /// The program is full; a better centre can lie in the box only.
    SoFar(Radius, Option<SearchBox>),
}

/// A simple outline that turns one way only is convex.
pub(super) fn turning(corners: &[Corner]) -> Turning {
    let mut found = None;
    for (index, corner) in corners.iter().enumerate() {
        let (before, after) = neighbours(corners, index);
        let here = side(before, *corner, after);
        if here != SideOfLine::On {
            if found.is_some_and(|found| found != here) {
                return Turning::BothWays;
            }
            found = Some(here);
        }
    }
    found.map_or(Turning::BothWays, Turning::OneWay)
}

fn neighbours(corners: &[Corner], index: usize) -> (Corner, Corner) {
    let last = corners.len() - 1;
    let before = if index == 0 { last } else { index - 1 };
    let after = if index == last { 0 } else { index + 1 };
    (corners[before], corners[after])
}

/// On which side of its sides the inside of an outline lies: how it turns at its
/// lowest corner (of several the left one), where no outline turns the other way.
pub(super) fn inner_side(corners: &[Corner]) -> SideOfLine {
    // a zero below zero is no lower than zero
    let order = |corner: &Corner| (corner.y_mm + 0.0, corner.x_mm + 0.0);
    let lower = |a: &(usize, &Corner), b: &(usize, &Corner)| {
        let ((ay, ax), (by, bx)) = (order(a.1), order(b.1));
        ay.total_cmp(&by).then(ax.total_cmp(&bx))
    };
    let lowest = corners.iter().enumerate().min_by(lower);
    let lowest = lowest.map_or(0, |(index, _)| index);
    let (before, after) = neighbours(corners, lowest);
    side(before, corners[lowest], after)
}

/// 1 where the inside lies to the left, else -1.
pub(super) fn inward_sign(inner: SideOfLine) -> f64 {
    match inner {
        SideOfLine::Left | SideOfLine::On => 1.0,
        SideOfLine::Right => -1.0,
    }
}

/// The box of an outline.
pub(super) fn box_of(bounds: &BoundingBox) -> SearchBox {
    let (low, high) = (bounds.low, bounds.high);
    let middle = Corner {
        x_mm: low.x_mm / 2.0 + high.x_mm / 2.0,
        y_mm: low.y_mm / 2.0 + high.y_mm / 2.0,
    };
    let half = |low: f64, middle: f64, high: f64| (high - middle).max(middle - low);
    SearchBox {
        middle,
        half_x: half(low.x_mm, middle.x_mm, high.x_mm),
        half_y: half(low.y_mm, middle.y_mm, high.y_mm),
    }
}

fn box_of_point(middle: Corner) -> SearchBox {
    SearchBox {
        middle,
        half_x: 0.0,
        half_y: 0.0,
    }
}

fn edges(corners: &[Corner]) -> impl Iterator<Item = OutlineEdge> + '_ {
    let next = corners.iter().skip(1).chain(corners.first());
    corners.iter().zip(next).map(|(from, to)| OutlineEdge {
        from: *from,
        to: *to,
    })
}

/// The circle inscribed in a triangle.
///
/// The bound: the distances to the sides, weighted by the sides' lengths, have the
/// same mean everywhere inside.
///
/// # Source
/// The incentre, weighted by the opposite sides: textbook geometry.
pub(super) fn triangle(corners: [Corner; 3], inner: SideOfLine) -> Radius {
    let [a, b, c] = corners;
    let sides = [(a, b), (b, c), (c, a)].map(|(from, to)| OutlineEdge { from, to });
    let lengths = sides.map(|side| side.length());
    let [ab, bc, ca] = lengths;
    let around = ab + bc + ca;
    let (to_b, to_c) = (ca / around, ab / around);
    let centre = Corner {
        x_mm: a.x_mm + (to_b * (b.x_mm - a.x_mm) + to_c * (c.x_mm - a.x_mm)),
        y_mm: a.y_mm + (to_b * (b.y_mm - a.y_mm) + to_c * (c.y_mm - a.y_mm)),
    };
    let (mut lower, mut mean, mut error) = (f64::INFINITY, 0.0, 0.0_f64);
    let (mut slope_x, mut slope_y) = (0.0, 0.0);
    for (side, length) in sides.iter().zip(lengths) {
        let bound = RadiusBound::inward(side, &box_of_point(centre), inward_sign(inner));
        lower = lower.min(bound.at_middle - bound.error);
        error = error.max(bound.error);
        let share = length / around;
        mean += share * bound.at_middle;
        slope_x += share * bound.slope_x;
        slope_y += share * bound.slope_y;
    }
    let reach = ab.max(bc).max(ca);
    let swing = reach * (slope_x.abs() + slope_y.abs() + ROUNDINGS);
    Radius {
        centre,
        lower,
        upper: mean + swing + error,
    }
}

/// The nearest side's line at a place of a convex outline, and how deep inside the
/// place lies at least.
fn nearest_line(corners: &[Corner], place: Corner, inward: f64) -> (OutlineEdge, f64) {
    let mut least = (
        OutlineEdge {
            from: place,
            to: place,
        },
        f64::INFINITY,
    );
    for edge in edges(corners) {
        let bound = RadiusBound::inward(&edge, &box_of_point(place), inward);
        let depth = bound.at_middle - bound.error;
        if depth < least.1 {
            least = (edge, depth);
        }
    }
    least
}

/// Of a convex outline the distance inward from its lines is the distance to it
/// everywhere inside, so a few of them prove the whole.
pub(super) fn convex(corners: &[Corner], inner: SideOfLine) -> Convex {
    let inward = inward_sign(inner);
    let cell = box_of(&BoundingBox::around(corners));
    let (first, _) = nearest_line(corners, cell.middle, inward);
    let mut program = Tangents::new(cell, RadiusBound::inward(&first, &cell, inward));
    let mut best = Radius {
        centre: first.from,
        lower: 0.0,
        upper: program.upper(),
    };
    loop {
        let centre = program.centre();
        let (nearest, lower) = nearest_line(corners, centre, inward);
        if lower > best.lower {
            (best.centre, best.lower) = (centre, lower);
        }
        match program.add(RadiusBound::inward(&nearest, &cell, inward)) {
            Added::Moved => best.upper = best.upper.min(program.upper()),
            Added::ChangesNothing => return Convex::Proven(best),
            // more tangents than one program holds: a smaller box needs fewer
            Added::NoRoom => return Convex::SoFar(best, program.contracted(best.lower)),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_inside_is_found_whatever_the_sign_of_zero() {
        let corner = |x_mm, y_mm| Corner { x_mm, y_mm };
        let mut flat = vec![
            corner(0.0, 0.0),
            corner(5.0, -0.0),
            corner(9.0, 0.0),
            corner(4.0, 1.0),
            corner(5.0, 9.0),
        ];
        assert_eq!(turning(&flat), Turning::BothWays);
        assert_eq!(inner_side(&flat), SideOfLine::Left);
        flat.reverse();
        assert_eq!(inner_side(&flat), SideOfLine::Right);
    }
}
