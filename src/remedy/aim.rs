//! How far beyond a limit a drawing aims, and in which unit it is drawn.

use crate::geometry::UsualBuilding;
use crate::geometry::kept_for_building;
use crate::items::Item;
use crate::items::LocationWord;
use crate::quantities::Length;
use crate::quantities::LengthUnit;
use crate::survey::Guard;
use crate::survey::SurveyFacts;

/// In which unit a guard is drawn, how finely it is marked, and how far a finished part
/// may be off its drawing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Measuring {
    /// The unit.
    pub unit: LengthUnit,
    /// The step of the marks.
    pub step: Length,
    /// How far a finished gap may be off, either way.
    pub gaps: Length,
    /// How far a finished height may be off, either way.
    pub heights: Length,
}

impl Measuring {
    /// As the guard was measured: in inches where most of it was, else in millimetres;
    /// ± 1/8 in or 3 mm, of heights outdoors ± 1/4 in or 5 mm (common practice, no
    /// source), unless the survey states a build tolerance.
    #[must_use]
    pub fn of(guard: &Guard, facts: &SurveyFacts) -> Measuring {
        let readings = guard
            .observations
            .iter()
            .chain(&guard.inherited.observations);
        let units = readings.filter_map(|observation| {
            let (unit, _) = observation.reading.as_ref()?.value.tape()?;
            Some(unit.is_imperial())
        });
        let (inches, all) = units.fold((0_usize, 0_usize), |(inches, all), imperial| {
            (inches + usize::from(imperial), all + 1)
        });
        let outside = guard
            .of(Item::Location)
            .any(|(_, o)| o.word() == Some(LocationWord::Outside));
        let unit = if 2 * inches >= all && all > 0 {
            LengthUnit::Inch
        } else {
            LengthUnit::Millimetre
        };
        let bay = UsualBuilding::in_unit(unit);
        let outdoors = if unit.is_imperial() {
            Length::sixty_fourths(16)
        } else {
            Length::millimetres(5)
        };
        let usual = Measuring {
            unit,
            step: bay.graduation,
            gaps: bay.tolerance,
            heights: if outside { outdoors } else { bay.tolerance },
        };
        match facts.build_tolerance {
            Some(within) => Measuring {
                gaps: within,
                heights: within,
                ..usual
            },
            None => usual,
        }
    }

    /// What inches and what millimetres are in the unit of the drawing: stock sizes.
    #[must_use]
    pub fn either(&self, inches: Length, millimetres: i32) -> Length {
        if self.unit.is_imperial() {
            inches
        } else {
            Length::millimetres(millimetres)
        }
    }

    /// The largest that may be drawn where this is the most: the limit less twice the
    /// standard doubt and one graduation, rounded down to a mark.
    #[must_use]
    pub fn most(&self, limit: Length, within: Length) -> Length {
        self.down(limit - self.beyond(within))
    }

    /// The least that may be drawn where this is the least.
    #[must_use]
    pub fn least(&self, limit: Length, within: Length) -> Length {
        self.up(limit + self.beyond(within))
    }

    /// 2u + q.
    fn beyond(&self, within: Length) -> Length {
        kept_for_building(within) + self.step
    }

    /// To the mark at or below.
    #[must_use]
    pub fn down(&self, length: Length) -> Length {
        let (size, step) = (length.nanometres(), self.step.nanometres().max(1));
        Length::from_nanometres(size - size.rem_euclid(step))
    }

    /// To the mark at or above.
    #[must_use]
    pub fn up(&self, length: Length) -> Length {
        -self.down(-length)
    }

    /// As it is written for a reader.
    #[must_use]
    pub fn text(&self, length: Length) -> String {
        length.exact(self.unit)
    }

    /// As a reading of something drawn: `3 3/4 in ± 1/8 in`.
    #[must_use]
    pub fn drawn(&self, length: Length, within: Length) -> String {
        // nothing is as far off as it is long: a joint is written as wide as it may come out
        let length = if length <= within {
            length + within
        } else {
            length
        };
        format!("{} ± {}", self.text(length), self.text(within))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn inches(within: i32) -> Measuring {
        Measuring {
            unit: LengthUnit::Inch,
            step: Length::sixty_fourths(4),
            gaps: Length::sixty_fourths(within),
            heights: Length::sixty_fourths(within),
        }
    }

    fn millimetres(within: i32) -> Measuring {
        Measuring {
            unit: LengthUnit::Millimetre,
            step: Length::millimetres(1),
            gaps: Length::millimetres(within),
            heights: Length::millimetres(within),
        }
    }

    /// Worked out from limit ∓ (2a/√3 + one graduation), rounded away from the limit,
    /// with exact fractions apart from this code.
    #[test]
    fn a_drawing_aims_beyond_the_limit_by_twice_the_doubt_and_a_graduation() {
        // the ball in sixty-fourths, then at ± 1/16, 1/8, 3/16, 1/4 in
        let balls = [
            (152, [140, 136, 132, 128]),
            (224, [212, 208, 204, 200]),
            (256, [244, 240, 236, 232]),
            (280, [268, 264, 260, 256]),
            (384, [372, 368, 364, 360]),
            (2432, [2420, 2416, 2412, 2408]),
        ];
        for (limit, aims) in balls {
            for (within, aim) in [4, 8, 12, 16].into_iter().zip(aims) {
                let all = inches(within);
                let drawn = all.most(Length::sixty_fourths(limit), all.gaps);
                assert_eq!(
                    drawn,
                    Length::sixty_fourths(aim),
                    "{limit}/64 ± {within}/64"
                );
            }
        }
        for (limit, aims) in [
            (34, [12, 16, 20, 24]),
            (36, [12, 16, 20, 24]),
            (42, [12, 16, 20, 24]),
        ] {
            for (within, more) in [4, 8, 12, 16].into_iter().zip(aims) {
                let all = inches(within);
                let drawn = all.least(Length::inches(limit), all.heights);
                assert_eq!(
                    drawn,
                    Length::sixty_fourths(limit * 64 + more),
                    "{limit} ± {within}/64"
                );
            }
        }
        // micrometres, since 3 1/2 in is 88.9 mm; at ± 1, 2, 3, 5 mm
        let most = [
            (60_000, [57, 56, 55, 53]),
            (88_900, [86, 85, 84, 82]),
            (100_000, [97, 96, 95, 93]),
            (110_000, [107, 106, 105, 103]),
            (120_000, [117, 116, 115, 113]),
            (125_000, [122, 121, 120, 118]),
            (150_000, [147, 146, 145, 143]),
            (965_000, [962, 961, 960, 958]),
        ];
        for (limit, aims) in most {
            for (within, aim) in [1, 2, 3, 5].into_iter().zip(aims) {
                let all = millimetres(within);
                let drawn = all.most(Length::micrometres(limit), all.gaps);
                assert_eq!(drawn, Length::millimetres(aim), "{limit} ± {within}");
            }
        }
        for limit in [865, 900, 1000, 1070, 1100] {
            for (within, more) in [(1, 3), (2, 4), (3, 5), (5, 7)] {
                let all = millimetres(within);
                let drawn = all.least(Length::millimetres(limit), all.heights);
                assert_eq!(
                    drawn,
                    Length::millimetres(limit + more),
                    "{limit} ± {within}"
                );
            }
        }
    }
}
