//! Outlines whose corners are whole or half nanometres, and doubt that is carried
//! over by differences.

use crate::geometry::Certified;
use crate::geometry::Corner;
use crate::geometry::Polygon;
use crate::geometry::clear_opening;
use crate::geometry::tangents::ROUNDINGS;
use crate::quantities::Length;
use crate::quantities::StandardUncertainty;

/// A corner in nanometres, exact as floats.
pub(super) fn nanometre_corner(x: f64, y: f64) -> Corner {
    Corner { x_mm: x, y_mm: y }
}

/// The largest circle in an outline whose corners are given in nanometres. It is
/// found among those exact corners, and only the answer is brought to millimetres,
/// rounded outward. `None` where the corners make no outline.
pub(super) fn certified(corners: Vec<Corner>) -> Option<Certified> {
    let found = clear_opening(&Polygon::new(corners).ok()?);
    Some(Certified {
        centre: Corner {
            x_mm: found.centre.x_mm / 1e6,
            y_mm: found.centre.y_mm / 1e6,
        },
        lower_mm: found.lower_mm / 1e6 * (1.0 - ROUNDINGS),
        upper_mm: found.upper_mm / 1e6 * (1.0 + ROUNDINGS),
    })
}

/// How sure a value is when each of its dimensions is this sure: each is moved by
/// its standard uncertainty both ways, and the larger change counts.
///
/// # Source
/// The sum of squares of such changes: GUM, JCGM 100:2008, 5.1.3, note 2.
pub(super) fn by_differences(
    dimensions: &[Length],
    each: StandardUncertainty,
    value: impl Fn(&[Length]) -> Option<f64>,
) -> StandardUncertainty {
    let step = each.as_length();
    let Some(middle) = value(dimensions).filter(|_| step > Length::ZERO) else {
        return StandardUncertainty::NONE;
    };
    let mut squares = 0.0;
    for moved in 0..dimensions.len() {
        let mut change = 0.0_f64;
        for step in [step, -step] {
            let mut others = dimensions.to_vec();
            others[moved] = (others[moved] + step).max(Length::from_nanometres(1));
            if let Some(there) = value(&others) {
                change = change.max((there - middle).abs());
            }
        }
        squares += change * change;
    }
    scaled(each, squares.sqrt() / step.nanometres_as_float())
}

/// An uncertainty times a factor.
pub(super) fn scaled(u: StandardUncertainty, factor: f64) -> StandardUncertainty {
    let size = u.as_length().nanometres_as_float() * factor;
    StandardUncertainty::from_length(Length::from_nanometres_rounded(size))
}
