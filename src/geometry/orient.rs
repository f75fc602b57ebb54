//! On which side of a line a point lies, exactly.

use crate::geometry::Corner;

/// Where a point lies of the line through two others, looking along it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum SideOfLine {
    Left,
    On,
    Right,
}

/// On which side of the line from `a` to `b` the point `c` lies.
///
/// # Accuracy
/// Exact for coordinates between 1e-120 and 1e120 in size: a float answer where
/// its error cannot matter, else the determinant as an exact sum of floats.
///
/// # Source
/// J. R. Shewchuk, "Adaptive Precision Floating-Point Arithmetic and Fast Robust
/// Geometric Predicates", 1997: the error bound of the first stage, and sums of
/// floats kept exact (grow-expansion).
pub(super) fn side(a: Corner, b: Corner, c: Corner) -> SideOfLine {
    /// (3 + 16 ε) ε with ε = 2⁻⁵³.
    const BOUND: f64 = 3.330_669_073_875_471_6e-16;
    let left = (a.x_mm - c.x_mm) * (b.y_mm - c.y_mm);
    let right = (a.y_mm - c.y_mm) * (b.x_mm - c.x_mm);
    let float = left - right;
    if float.abs() > BOUND * (left.abs() + right.abs()) {
        return sign(float);
    }
    let products = [
        (a.x_mm, b.y_mm),
        (-a.y_mm, b.x_mm),
        (b.x_mm, c.y_mm),
        (-b.y_mm, c.x_mm),
        (c.x_mm, a.y_mm),
        (-c.y_mm, a.x_mm),
    ];
    let mut sum: Vec<f64> = Vec::with_capacity(12);
    for (one, other) in products {
        let high = one * other;
        let low = one.mul_add(other, -high);
        grow(&mut sum, low);
        grow(&mut sum, high);
    }
    // the parts do not overlap, so the largest that is not zero has the sign
    let leading = sum.iter().rev().find(|part| part.abs() > 0.0);
    sign(leading.copied().unwrap_or(0.0))
}

fn sign(value: f64) -> SideOfLine {
    if value > 0.0 {
        SideOfLine::Left
    } else if value < 0.0 {
        SideOfLine::Right
    } else {
        SideOfLine::On
    }
}

/// Adds a float to an exact sum, smallest part first.
fn grow(sum: &mut Vec<f64>, more: f64) {
    let mut carry = more;
    for part in sum.iter_mut() {
        let total = carry + *part;
        let virtual_part = total - carry;
        let lost = (carry - (total - virtual_part)) + (*part - virtual_part);
        *part = lost;
        carry = total;
    }
    sum.push(carry);
}

#[cfg(test)]
mod tests {
    use super::*;

    fn corner(x_mm: f64, y_mm: f64) -> Corner {
        Corner { x_mm, y_mm }
    }

    #[test]
    fn a_hair_beside_a_long_line_is_beside_it() {
        let (a, b) = (corner(12.0, 12.0), corner(24.0, 24.0));
        let hair = f64::EPSILON / 4.0;
        let at = |x_mm: f64, y_mm: f64| side(a, b, corner(x_mm, y_mm));
        assert_eq!(at(0.5, 0.5), SideOfLine::On);
        assert_eq!(at(0.5, 0.5 + 2.0 * hair), SideOfLine::Left);
        assert_eq!(at(0.5 + 2.0 * hair, 0.5), SideOfLine::Right);
        assert_eq!(at(0.5 + hair, 0.5 + hair), SideOfLine::On);
    }

    /// Three decimal points of one line whose floats are not exactly on it:
    /// the answer is that of the floats, whichever corner comes first.
    #[test]
    fn the_answer_does_not_hang_on_the_order() {
        let points = [corner(0.1, 0.1), corner(0.3, 0.3), corner(0.7, 0.7)];
        let [a, b, c] = points;
        assert_eq!(side(a, b, c), SideOfLine::On);
        let nudged = corner(0.3, 0.300_000_000_000_000_04);
        assert_eq!(side(a, nudged, c), side(nudged, c, a));
        assert_eq!(side(a, nudged, c), side(c, a, nudged));
        assert_ne!(side(a, nudged, c), side(nudged, a, c));
    }
}
