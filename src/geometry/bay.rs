//! Balusters for one bay: how few keep every gap below a limit, and where each is
//! marked from one end.
//!
//! A mark is rounded for itself and counted from one end, so that no error adds up.
//! Between two marks on a grid lies a whole number of its steps: the fewest balusters
//! follow from the widest such step that still keeps the limit, not from a rounded gap.

use thiserror::Error;
use uom::si::angle::radian;

use crate::geometry::usual::kept_for_building;
use crate::quantities::Angle;
use crate::quantities::Length;

/// What the gaps of a bay must keep to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct GapLimit {
    /// The size asked for.
    pub length: Length,
    /// What a gap of exactly that size is.
    pub exactly: AtTheLimit,
}

/// What a gap of exactly the limit's size is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum AtTheLimit {
    /// Too wide: a ball of that size must not pass.
    Passes,
    /// Just narrow enough: at most that size.
    Fits,
}

/// What stands at both ends of a bay.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum BayEnds {
    /// A gap like all the others.
    #[default]
    Gap,
    /// Half a gap.
    HalfGap,
    /// A baluster against the post.
    Baluster,
}

/// One bay between two posts, as it is to be filled.
#[derive(Clone, Copy, Debug)]
pub struct BayPlan {
    /// From post to post, measured along the rail.
    pub clear: Length,
    /// How wide a baluster is, measured level.
    pub baluster: Length,
    /// What every gap must keep to, measured level.
    pub limit: GapLimit,
    /// What stands at the ends.
    pub ends: BayEnds,
    /// How steep the rail is; `None` where it is level.
    pub rake: Option<Angle>,
    /// The step of the marks.
    pub graduation: Length,
    /// How far a finished gap may be from its drawing, either way.
    pub tolerance: Length,
    /// How much narrower a baluster may become as it dries.
    pub shrinkage: Length,
}

/// Where the balusters of a bay stand.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BayLayout {
    /// Near faces of the balusters along the rail, from the first post's face
    /// (of a raked bay the upper post's).
    pub marks: Vec<Length>,
    /// The equal gap before rounding, measured level, to the nearest nanometre.
    pub gap: Length,
    /// From near face to near face along the rail before rounding, to the nearest
    /// nanometre; nought where there are fewer than two balusters.
    pub spacing: Length,
    /// A block that holds a baluster while it is fixed: the gap rounded down to the
    /// graduation. It holds, and does not place: its error would add up.
    pub spacer: Length,
    /// The widest gap between the marks, measured level, rounded up to a nanometre.
    pub largest_gap: Length,
    /// What the widest gap was kept to: the limit less what building and drying take.
    pub target: Length,
}

/// One gap that is there already, and the balusters that are put into it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Infilled {
    /// The gap as it is, measured level.
    pub gap: Length,
    /// What is put in.
    pub layout: BayLayout,
}

/// Balusters added between those that stand: each gap is a bay of its own, so that
/// uneven ones need no average. `plan.clear` is not used; the ends are gaps.
///
/// # Errors
/// As [`BayPlan::layout`].
pub fn added_between(plan: &BayPlan, gaps: &[Length]) -> Result<Vec<Infilled>, BayError> {
    let fill = |gap: &Length| {
        let bay = BayPlan {
            clear: *gap,
            ends: BayEnds::Gap,
            rake: None,
            ..*plan
        };
        bay.layout().map(|layout| Infilled { gap: *gap, layout })
    };
    gaps.iter().map(fill).collect()
}

/// Balusters that stand on the treads of a stair, so many on each: how many keep the
/// gaps, measured level, to the target, and that gap. `None` where more than three
/// would be needed (common practice, no source), or where they do not fit.
#[must_use]
pub fn on_each_tread(plan: &BayPlan, going: Length) -> Option<(u8, Length)> {
    let target = plan.target();
    (1..=3_u8).find_map(|count| {
        let taken = i64::from(count) * plan.baluster.nanometres();
        let free = going.nanometres() - taken;
        // up to a nanometre, and exact where it comes out whole
        let gap = Length::from_nanometres(-(-free).div_euclid(i64::from(count)));
        (free > 0 && gap <= target).then_some((count, gap))
    })
}

/// Why a bay has no layout.
#[derive(Clone, Copy, Debug, Error, PartialEq, Eq)]
pub enum BayError {
    /// A length that must be above nought is not.
    #[error("the bay, the baluster, the limit and the graduation must be more than nothing")]
    NotPositive,
    /// The tolerance and the drying take as much as the limit gives.
    #[error("the tolerance and the drying of the wood leave nothing of the limit")]
    NothingLeft,
    /// The balusters that the limit asks for do not fit beside each other.
    #[error("the balusters do not fit between the posts")]
    TooTight,
    /// More balusters than anybody sets in one bay.
    #[error("more than {MOST} balusters")]
    TooMany,
    /// A slope of a right angle or more.
    #[error("a rail as steep as a wall")]
    Wall,
}

/// The most balusters of one bay that are worked out.
const MOST: i128 = 10_000;

impl BayPlan {
    /// The fewest balusters that keep every gap to the target, and their marks.
    ///
    /// The target is the limit less 2u of the tolerance (u = a/√3, rectangular: GUM,
    /// JCGM 100:2008, 4.3.7) and less the shrinkage, so that a check of the finished
    /// bay with that build tolerance finds every gap at least 2u within the limit.
    ///
    /// # Errors
    /// [`BayError`] where there is no such layout.
    pub fn layout(&self) -> Result<BayLayout, BayError> {
        let positive = [
            self.clear,
            self.baluster,
            self.limit.length,
            self.graduation,
        ];
        let not_negative = [self.tolerance, self.shrinkage];
        if positive.iter().any(|length| *length <= Length::ZERO)
            || not_negative.iter().any(|length| *length < Length::ZERO)
        {
            return Err(BayError::NotPositive);
        }
        let target = self.target();
        if target <= Length::ZERO {
            return Err(BayError::NothingLeft);
        }
        let rail = Rail::of(self.rake)?;
        let grid = Grid::of(self, rail, target);
        let count = grid.fewest()?;
        let marks = grid.marks(count)?;
        let gaps = grid.gaps(&marks);
        let widest = gaps.into_iter().max().unwrap_or_default();
        let equal = grid.equal_gap(count);
        let gap = rail.level(length(equal.nearest()));
        Ok(BayLayout {
            spacing: if count < 2 {
                Length::ZERO
            } else {
                length(equal.plus(grid.footprint).nearest())
            },
            spacer: floor_to(gap, self.graduation),
            gap,
            largest_gap: rail.level_up(length(widest)),
            marks: marks.into_iter().map(length).collect(),
            target,
        })
    }

    /// The largest gap that may be drawn.
    #[must_use]
    pub fn target(&self) -> Length {
        let left = self.limit.length - kept_for_building(self.tolerance) - self.shrinkage;
        match self.limit.exactly {
            AtTheLimit::Fits => left,
            AtTheLimit::Passes => left - Length::from_nanometres(1),
        }
    }
}

/// From lengths measured level to lengths along the rail, and back.
#[derive(Clone, Copy, Debug)]
struct Rail {
    /// The cosine of the slope; `None` where the rail is level, so that all is exact.
    cosine: Option<f64>,
}

/// How far a cosine and a product of it may be off, relative; by far more than they are.
const ROUNDINGS: f64 = 1e-14;

impl Rail {
    fn of(rake: Option<Angle>) -> Result<Rail, BayError> {
        let cosine = rake.map(|angle| libm::cos(angle.get::<radian>()));
        if cosine.is_some_and(|cosine| cosine < 1e-3) {
            return Err(BayError::Wall);
        }
        Ok(Rail {
            cosine: cosine.filter(|cosine| *cosine < 1.0),
        })
    }

    /// The longest length along the rail that is surely no more than this one level.
    fn along_down(self, level: Length) -> Length {
        self.cosine.map_or(level, |cosine| {
            let along = level.nanometres_as_float() / cosine * (1.0 - ROUNDINGS);
            Length::from_nanometres_rounded(along.floor())
        })
    }

    /// What a baluster of this width takes along the rail, rounded up.
    fn along_up(self, level: Length) -> Length {
        self.cosine.map_or(level, |cosine| {
            let along = level.nanometres_as_float() / cosine * (1.0 + ROUNDINGS);
            Length::from_nanometres_rounded(along.ceil())
        })
    }

    fn level(self, along: Length) -> Length {
        self.cosine.map_or(along, |cosine| {
            Length::from_nanometres_rounded(along.nanometres_as_float() * cosine)
        })
    }

    /// The level length that this one along the rail surely does not exceed.
    fn level_up(self, along: Length) -> Length {
        self.cosine.map_or(along, |cosine| {
            let level = along.nanometres_as_float() * cosine * (1.0 + ROUNDINGS);
            // a footprint is rounded up, so that the gap beside it may be a little wider
            Length::from_nanometres_rounded(level.ceil() + 1.0)
        })
    }
}

/// A number of nanometres over a whole number.
#[derive(Clone, Copy, Debug)]
struct Ratio {
    over: i128,
    under: i128,
}

impl Ratio {
    fn plus(self, whole: i128) -> Ratio {
        Ratio {
            over: self.over + whole * self.under,
            ..self
        }
    }

    /// To the nearest whole number, halves up.
    fn nearest(self) -> i128 {
        (2 * self.over + self.under).div_euclid(2 * self.under)
    }

    /// To the nearest multiple of a step, halves up.
    fn nearest_of(self, step: i128) -> i128 {
        let coarse = Ratio {
            under: self.under * step,
            ..self
        };
        coarse.nearest() * step
    }
}

/// A bay along its rail, in nanometres: what two neighbouring marks may be apart.
struct Grid {
    clear: i128,
    footprint: i128,
    step: i128,
    ends: BayEnds,
    /// The widest gap that an end may have.
    end_gap: i128,
    /// The widest distance from the last near face to the second post.
    end_reach: i128,
    /// The widest distance from near face to near face.
    reach: i128,
}

impl Grid {
    fn of(plan: &BayPlan, rail: Rail, target: Length) -> Grid {
        let wide = |length: Length| i128::from(length.nanometres());
        let at_end = match plan.ends {
            BayEnds::Gap => target,
            BayEnds::HalfGap => Length::from_nanometres(target.nanometres() / 2),
            BayEnds::Baluster => Length::ZERO,
        };
        Grid {
            clear: wide(plan.clear),
            footprint: wide(rail.along_up(plan.baluster)),
            step: wide(plan.graduation),
            ends: plan.ends,
            end_gap: wide(rail.along_down(at_end)),
            end_reach: wide(rail.along_down(at_end + plan.baluster)),
            reach: wide(rail.along_down(target + plan.baluster)),
        }
    }

    /// The widest distance of two marks that both lie on the grid.
    fn stride(&self) -> i128 {
        down(self.reach, self.step)
    }

    /// How far up the last mark can lie, and how far it has to.
    fn fewest(&self) -> Result<i128, BayError> {
        let least = match self.ends {
            BayEnds::Gap if self.clear <= self.end_gap => return Ok(0),
            BayEnds::Gap | BayEnds::HalfGap => 1,
            BayEnds::Baluster => 2,
        };
        let stride = self.stride();
        if stride < self.footprint
            || (self.ends != BayEnds::Baluster && self.end_reach < self.footprint)
        {
            return Err(BayError::TooTight);
        }
        let (first, last, between) = match self.ends {
            BayEnds::Gap | BayEnds::HalfGap => (
                down(self.end_gap, self.step),
                up(self.clear - self.end_reach, self.step),
                1,
            ),
            // the last one stands against the post, wherever that is
            BayEnds::Baluster => {
                let last = self.clear - self.footprint;
                let before = up(last - self.reach, self.step);
                (0, before, 2)
            }
        };
        let more = up((last - first).max(0), stride) / stride;
        let count = (more + between).max(least);
        if count > MOST {
            return Err(BayError::TooMany);
        }
        if count * self.footprint > self.clear {
            return Err(BayError::TooTight);
        }
        Ok(count)
    }

    /// The gap where all are equal, along the rail.
    fn equal_gap(&self, count: i128) -> Ratio {
        let gaps = match self.ends {
            BayEnds::Gap => count + 1,
            BayEnds::HalfGap => count,
            BayEnds::Baluster => count - 1,
        };
        Ratio {
            over: self.clear - count * self.footprint,
            under: gaps,
        }
    }

    /// Marks on the grid as near to equal gaps as the limit allows.
    fn marks(&self, count: i128) -> Result<Vec<i128>, BayError> {
        let equal = self.equal_gap(count);
        let pitch = equal.plus(self.footprint);
        let stride = self.stride();
        let last = match self.ends {
            BayEnds::Gap | BayEnds::HalfGap => up(self.clear - self.end_reach, self.step),
            BayEnds::Baluster => up(self.clear - self.footprint - self.reach, self.step) + stride,
        };
        let mut marks: Vec<i128> = Vec::new();
        for index in 0..count {
            let ideal = match self.ends {
                BayEnds::Gap => equal.over + index * pitch.over,
                BayEnds::HalfGap => equal.over / 2 + index * pitch.over,
                BayEnds::Baluster => index * pitch.over,
            };
            let ideal = Ratio {
                over: ideal,
                under: equal.under,
            };
            let lowest = last - (count - 1 - index) * stride;
            let highest = match marks.last() {
                Some(before) => before + stride,
                None => down(self.end_gap, self.step),
            };
            let against_the_post = self.ends == BayEnds::Baluster && index == count - 1;
            marks.push(if against_the_post {
                self.clear - self.footprint
            } else {
                ideal.nearest_of(self.step).max(lowest).min(highest)
            });
        }
        if self.gaps(&marks).iter().any(|gap| *gap < 0) {
            return Err(BayError::TooTight);
        }
        Ok(marks)
    }

    /// All gaps along the rail, those at the ends too.
    fn gaps(&self, marks: &[i128]) -> Vec<i128> {
        let ends = marks.iter().copied().chain([self.clear]);
        let mut face = 0;
        ends.map(|mark| {
            let gap = mark - face;
            face = mark + self.footprint;
            gap
        })
        .collect()
    }
}

/// The multiple of a step at or below.
fn down(size: i128, step: i128) -> i128 {
    size - size.rem_euclid(step)
}

/// The multiple of a step at or above.
fn up(size: i128, step: i128) -> i128 {
    -down(-size, step)
}

fn floor_to(length: Length, step: Length) -> Length {
    let (size, step) = (length.nanometres(), step.nanometres());
    Length::from_nanometres(size - size.rem_euclid(step))
}

/// Saturates, as sums of lengths do.
fn length(nanometres: i128) -> Length {
    Length::from_nanometres(i64::try_from(nanometres).unwrap_or(i64::MAX))
}
