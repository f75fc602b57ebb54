//! What a reading can be.

use crate::geometry::Risers;
use crate::geometry::Shape;
use crate::geometry::StairTriangle;
use crate::geometry::StairTriangleError;
use crate::items::ItemWord;
use crate::quantities::Age;
use crate::quantities::Angle;
use crate::quantities::Force;
use crate::quantities::Length;
use crate::quantities::LengthUnit;
use crate::quantities::YearSpan;

/// One reading: a value and, for openings, where it lies.
#[derive(Clone, Debug, PartialEq)]
pub struct Reading {
    /// What was read.
    pub value: Value,
    /// Height above the walking surface where an opening lies (`at 38 in`).
    pub at: Option<Extent>,
}

/// What was read.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub enum Value {
    /// A child's age.
    Age(Age),
    /// A ball that stops or passes: it bounds the clear opening from one side.
    Ball(BallTest),
    /// A whole number.
    Count(u32),
    /// A day, as year, month and day.
    Date {
        /// The year.
        year: u16,
        /// The month, 1 to 12.
        month: u8,
        /// The day of the month, from 1.
        day: u8,
    },
    /// Bolts, lags, screws or nails: how many, how thick, how long.
    Fasteners(Fasteners),
    /// Something a foot could stand on.
    Foothold(Foothold),
    /// A force: what a label states, how hard a cable pulls.
    Force(Force),
    /// A length or a gap, as read with a tape.
    Measure(Measure),
    /// Looked, and there is none.
    None,
    /// A pull, and how far something moved.
    Pull(Pull),
    /// A section of a member, two sides.
    Section(Length, Length),
    /// A shape of an opening.
    Shape(ShapeReading),
    /// Rise, going and lift at a step.
    StairTriangle(StairReading),
    /// A stick cut to length, held plumb: it bounds a height from one side.
    Stick(Stick),
    /// Words of the person's own.
    Text(Box<str>),
    /// Something near the guard that a child could climb.
    ThingToClimb(ThingToClimb),
    /// Could not look, with the word that says so: `not reached`, `unknown`, `n/a`, `-`, `?`.
    Unknown,
    /// An opening that is open at the top and narrows downward.
    VOpening(VReading),
    /// A word of the item's list.
    Word(&'static str),
    /// Years in which something may have been built.
    Years(YearSpan),
}

impl Value {
    /// The word that was written, of the list of one item.
    #[must_use]
    pub fn word<W: ItemWord>(&self) -> Option<W> {
        if let Value::Word(name) = self {
            W::by_name(name)
        } else {
            None
        }
    }

    /// The unit it was written in and how finely it was read, where a tape read it.
    #[must_use]
    pub fn tape(&self) -> Option<(LengthUnit, Graduation)> {
        match self {
            Value::Foothold(foothold) => Some((foothold.unit, foothold.graduation)),
            Value::Measure(measure) => Some((measure.unit, measure.graduation)),
            Value::Shape(shape) => Some((shape.unit, shape.graduation)),
            Value::StairTriangle(stair) => Some((stair.unit, stair.graduation)),
            Value::VOpening(vee) => Some((vee.unit, vee.graduation)),
            Value::Age(_)
            | Value::Ball(_)
            | Value::Count(_)
            | Value::Date { .. }
            | Value::Fasteners(_)
            | Value::None
            | Value::Force(_)
            | Value::Pull(_)
            | Value::Section(..)
            | Value::Stick(_)
            | Value::Text(_)
            | Value::ThingToClimb(_)
            | Value::Unknown
            | Value::Word(_)
            | Value::Years(_) => None,
        }
    }
}

/// How finely a length was read, from how it was written, or ± a.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Graduation {
    /// Read to the nearest step of this size.
    ReadTo(Length),
    /// The true value lies within ± this, anywhere equally likely.
    PlusMinus(Length),
}

/// On which side of the written length the true one lies.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Bound {
    /// At it.
    Exactly,
    /// Above it: `over 8 ft`.
    Over,
    /// Below it: `under 20 in`.
    Under,
}

/// A length as read with a tape.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Measure {
    /// The length.
    pub length: Length,
    /// The unit it was written in (the last one of `2 ft 11 1/2 in`).
    pub unit: LengthUnit,
    /// At it, over it or under it.
    pub bound: Bound,
    /// How finely it was read.
    pub graduation: Graduation,
}

/// How a ball was pushed against an opening.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Push {
    /// Not at all.
    None,
    /// By hand, with no force stated.
    ByHand,
    /// With a stated force.
    Force(Force),
}

/// A go/no-go reading with a ball.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BallTest {
    /// The ball's diameter.
    pub ball: Length,
    /// The unit it was written in.
    pub unit: LengthUnit,
    /// Whether it passed.
    pub passes: bool,
    /// Whether it was tried at every hole.
    pub everywhere: bool,
    /// How it was pushed.
    pub push: Push,
}

/// A go/no-go reading with a stick cut to length and held plumb.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Stick {
    /// The stick's length.
    pub stick: Length,
    /// The unit it was written in.
    pub unit: LengthUnit,
    /// `reaches`: the height is at least the stick's; `below`: it is less.
    pub reaches: bool,
}

/// The shape of an opening with how finely its dimensions were read.
#[derive(Clone, Debug, PartialEq)]
pub struct ShapeReading {
    /// The shape.
    pub shape: Shape,
    /// The unit it was written in.
    pub unit: LengthUnit,
    /// How finely its dimensions were read (the coarsest of them).
    pub graduation: Graduation,
}

/// Rise, going and plumb lift of the bottom rail at a step.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct StairReading {
    /// Plumb from tread to tread.
    pub rise: Length,
    /// Level from nosing to nosing.
    pub going: Length,
    /// Plumb from the nosing line to the rail's underside, where written.
    pub lift: Option<Length>,
    /// How far a nosing overhangs the riser; zero where not written.
    pub nosing: Length,
    /// How thick the nosing is, where written.
    pub nosing_thickness: Option<Length>,
    /// Closed where nothing else is written.
    pub risers: Risers,
    /// The unit it was written in.
    pub unit: LengthUnit,
    /// How finely its dimensions were read (the coarsest of them).
    pub graduation: Graduation,
}

impl StairReading {
    /// The step with its rail lifted by so much.
    ///
    /// # Errors
    /// Those of [`StairTriangle`], of a step that cannot be.
    pub fn triangle(&self, lift: Length) -> Result<StairTriangle, StairTriangleError> {
        StairTriangle::new(self.rise, self.going, lift)?
            .with_nosing(self.nosing, self.nosing_thickness)
            .map(|step| step.with_risers(self.risers))
    }
}

/// Something a child's foot could stand on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Foothold {
    /// Its top above the walking surface.
    pub height: Length,
    /// How deep it is, where written.
    pub depth: Option<Length>,
    /// How far along the guard it lies, where written.
    pub along: Option<Length>,
    /// How its top slopes, where written; else it is taken as level.
    pub slope: Option<Tilt>,
    /// The unit of its height.
    pub unit: LengthUnit,
    /// How finely it was read.
    pub graduation: Graduation,
}

/// An opening that is open at the top and narrows downward.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct VReading {
    /// How wide it is at the top.
    pub wide: Length,
    /// How deep it is, from there down.
    pub deep: Length,
    /// How wide it is at the bottom; nothing where its sides meet.
    pub bottom: Length,
    /// The unit it was written in.
    pub unit: LengthUnit,
    /// How finely its dimensions were read (the coarsest of them).
    pub graduation: Graduation,
}

/// A slope in whole billionths of a degree, so that equality at a limit is exact.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Tilt(i64);

impl Tilt {
    /// From an angle, rounded to a billionth of a degree.
    #[must_use]
    #[expect(
        clippy::cast_possible_truncation,
        reason = "slopes lie between 0 and 90 degrees"
    )]
    pub fn of(angle: Angle) -> Tilt {
        Tilt((angle.get::<uom::si::angle::degree>() * 1e9).round() as i64)
    }

    /// In degrees, with as many digits as it needs.
    #[must_use]
    pub fn degrees(self) -> String {
        let (whole, part) = (self.0 / 1_000_000_000, self.0 % 1_000_000_000);
        let text = format!("{whole}.{part:09}");
        text.trim_end_matches('0').trim_end_matches('.').to_owned()
    }
}

/// Something near the guard that a child could climb.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct ThingToClimb {
    /// Its height, where written.
    pub height: Option<Length>,
    /// How deep its top is, where written.
    pub depth: Option<Length>,
    /// How far from the guard it stands, where written.
    pub away: Option<Length>,
}

/// Where an opening lies above the walking surface, both ends included.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Extent {
    /// Its lower end.
    pub low: Length,
    /// Its upper end; the same as the lower one where a single height was written.
    pub high: Length,
}

/// Bolts, lags, screws or nails of one joint.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Fasteners {
    /// How many.
    pub count: u32,
    /// How thick: the diameter, or the number by which wood screws are sold.
    pub size: FastenerSize,
    /// How long, where written.
    pub length: Option<Length>,
}

/// How thick a fastener is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum FastenerSize {
    /// Its diameter.
    Diameter(Length),
    /// The number of a wood screw: `No. 10`.
    Number(u8),
}

/// A pull with a scale, and how far the top moved.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pull {
    /// The force on the scale.
    pub force: Force,
    /// How far the top stood from where it was.
    pub moved: Length,
}
