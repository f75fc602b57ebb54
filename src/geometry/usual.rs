//! What is taken of a bay that is to be built where nobody states it. One place, so that
//! a layout and a remedy draw alike.

use crate::quantities::DoubtEffect;
use crate::quantities::Length;
use crate::quantities::LengthUnit;
use crate::quantities::Term;
use crate::quantities::TermKind;

/// How finely a bay is marked, and how far a finished gap may be off.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct UsualBuilding {
    /// The step of the marks.
    pub graduation: Length,
    /// How far a finished gap may be from its drawing, either way.
    pub tolerance: Length,
}

impl UsualBuilding {
    /// In inches 1/16 and 1/8 in, else 1 and 3 mm. (common practice, no source)
    #[must_use]
    pub const fn in_unit(unit: LengthUnit) -> UsualBuilding {
        if unit.is_imperial() {
            UsualBuilding {
                graduation: Length::sixty_fourths(4),
                tolerance: Length::sixty_fourths(8),
            }
        } else {
            UsualBuilding {
                graduation: Length::millimetres(1),
                tolerance: Length::millimetres(3),
            }
        }
    }
}

/// What is kept free of a limit for the builder: 2u of the tolerance, with u = a/√3
/// (rectangular: GUM, JCGM 100:2008, 4.3.7).
#[must_use]
pub fn kept_for_building(tolerance: Length) -> Length {
    let builder = Term {
        effect: DoubtEffect::Builder,
        size: tolerance,
        kind: TermKind::Within,
    };
    builder.standard().doubled()
}

/// How much narrower a piece of dry softwood gets between yard and porch: from 19 to
/// 12 per cent of moisture, at most 7.6 per cent of its width from wet to dry. The gap
/// beside it opens by as much.
///
/// # Source
/// Wood Handbook, FPL-GTR-190, table 4-3 (Douglas-fir, coast, tangential 7.6 per cent),
/// read; the share S (M₁ − M₂) / 30 as restated second-hand; the two moistures are
/// common practice, no source.
#[must_use]
pub const fn usual_drying(piece: Length) -> Length {
    Length::from_nanometres(piece.nanometres() * 76 / 1000 * (19 - 12) / 30)
}

/// [`usual_drying`] in words.
pub const USUAL_DRYING: &str = "1.8 per cent of its width";

#[cfg(test)]
mod tests {
    use super::*;

    /// From 19 to 12 per cent 3/4 in of Douglas-fir loses 0.013, 1 1/2 in 0.027, 3 1/2 in
    /// 0.062 and 5 1/2 in 0.098 in (worked out apart from the code by exact fractions).
    #[test]
    fn dry_wood_narrows_by_less_than_two_per_cent() {
        for (sixty_fourths, thousandths) in [(48, 13), (96, 27), (224, 62), (352, 98)] {
            let narrower = usual_drying(Length::sixty_fourths(sixty_fourths));
            let nearest = (narrower.nanometres() + 12_700) / 25_400;
            assert_eq!(nearest, thousandths, "{sixty_fourths}/64 in");
        }
        let metre = usual_drying(Length::millimetres(1000)).nanometres();
        let tenths = (metre + 500_000) / 1_000_000;
        let says = format!("{}.{} per cent of its width", tenths / 10, tenths % 10);
        assert_eq!(says, USUAL_DRYING);
    }
}
