//! What a remedy takes: parts, lengths, labour. Waste and labour are common practice, no
//! source.

use crate::items::Item;
use crate::items::LocationWord;
use crate::quantities::Length;
use crate::quantities::LengthUnit;
use crate::reading::Bound;
use crate::reading::Value;
use crate::survey::Guard;

/// Widths in which boards are sold, dressed: 1x4 to 1x12 in sixty-fourths of an inch, and
/// their like in millimetres. (common practice, no source)
pub(super) const BOARDS: [(i32, i32); 5] =
    [(224, 90), (352, 140), (464, 185), (592, 235), (720, 285)];

/// How many of a part.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum HowMany {
    /// So many.
    Exactly(u32),
    /// From the least, where one place needs it, to the most, where every place does: who
    /// tries them all knows.
    Between(u32, u32),
    /// It cannot be counted before these are written down.
    Write(Vec<Item>),
}

impl HowMany {
    /// From one place to every place; the same where that is one number.
    pub(super) fn from_to(least: u32, most: u32) -> HowMany {
        if least < most {
            HowMany::Between(least, most)
        } else {
            HowMany::Exactly(most)
        }
    }

    /// The least and the most; `None` where it cannot be counted.
    #[must_use]
    pub const fn range(&self) -> Option<[u32; 2]> {
        match self {
            HowMany::Between(least, most) => Some([*least, *most]),
            HowMany::Exactly(count) => Some([*count, *count]),
            HowMany::Write(_) => None,
        }
    }
}

/// One kind of part: material with its size, never a brand.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct MaterialPart {
    /// What it is.
    pub what: String,
    /// How many.
    pub how_many: HowMany,
    /// How long each is, where that follows.
    pub length: Option<Length>,
    /// How much length to buy in all, waste of a tenth in it.
    pub buy: Option<Length>,
}

/// Labour as a range, in minutes, for one competent person without travel.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Labour {
    /// The least and the most.
    pub minutes: [u32; 2],
    /// For what.
    pub per: LabourPer,
}

/// What labour is counted by.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "each is what its name says")]
pub enum LabourPer {
    Baluster,
    Bar,
    Bay,
    Bracket,
    End,
    Flight,
    Gate,
    Joint,
    Ledge,
    Pane,
    Place,
    Post,
    Seat,
    Step,
    Strip,
    Thing,
    Window,
}

impl LabourPer {
    /// `a bar`
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            LabourPer::Baluster => "a baluster",
            LabourPer::Bar => "a bar",
            LabourPer::Bay => "a bay",
            LabourPer::Bracket => "a bracket",
            LabourPer::End => "an end",
            LabourPer::Flight => "a flight",
            LabourPer::Gate => "a gate",
            LabourPer::Joint => "a joint",
            LabourPer::Ledge => "a ledge",
            LabourPer::Pane => "a pane",
            LabourPer::Place => "a place",
            LabourPer::Post => "a post",
            LabourPer::Seat => "a seat",
            LabourPer::Step => "a step",
            LabourPer::Strip => "a strip",
            LabourPer::Thing => "a thing",
            LabourPer::Window => "a window",
        }
    }
}

impl Labour {
    /// How often it comes: as many times as there are parts, bays or steps of a guard.
    #[must_use]
    pub fn times(self, guard: &Guard, parts: &[MaterialPart]) -> HowMany {
        match self.per {
            LabourPer::Bar | LabourPer::Baluster | LabourPer::Strip | LabourPer::Post => {
                let counted = parts.first().map(|part| part.how_many.clone());
                counted.unwrap_or(HowMany::Exactly(1))
            }
            LabourPer::Bay => {
                let all = bays(guard);
                // what runs along the railing is done in every bay, what is made anew where it is bad
                let along = parts.iter().any(|part| part.buy.is_some());
                match all.range() {
                    Some([_, most]) if !along => HowMany::from_to(1, most),
                    Some(_) | None => all,
                }
            }
            LabourPer::Step => guard
                .of(Item::Risers)
                .find_map(|(_, o)| count(&o.reading.as_ref()?.value))
                .map_or(HowMany::Write(vec![Item::Risers]), HowMany::Exactly),
            LabourPer::Bracket => brackets(guard),
            LabourPer::End
            | LabourPer::Flight
            | LabourPer::Gate
            | LabourPer::Joint
            | LabourPer::Ledge
            | LabourPer::Pane
            | LabourPer::Place
            | LabourPer::Seat
            | LabourPer::Thing
            | LabourPer::Window => HowMany::Exactly(1),
        }
    }
}

fn count(value: &Value) -> Option<u32> {
    if let Value::Count(count) = value {
        Some(*count)
    } else {
        None
    }
}

/// How many bays a guard has.
fn bays(guard: &Guard) -> HowMany {
    let length = measured(guard, Item::GuardLength);
    let spacing = measured(guard, Item::PostSpacing).filter(|spacing| *spacing > Length::ZERO);
    let bays = length.zip(spacing).and_then(|(length, spacing)| {
        let bays = (length.nanometres() + spacing.nanometres() - 1) / spacing.nanometres();
        u32::try_from(bays).ok()
    });
    let asked = [Item::GuardLength, Item::PostSpacing];
    let missing = asked
        .into_iter()
        .filter(|item| measured(guard, *item).is_none());
    bays.map_or_else(|| HowMany::Write(missing.collect()), HowMany::Exactly)
}

/// Brackets of a handrail as long as the guard: one within 12 in of each end, no two more
/// than 48 in apart; where only studs hold them no more than 40 in, since studs 16 in apart
/// stand near 20 in apart along a stair. (common practice, no source)
pub(super) fn brackets(guard: &Guard) -> HowMany {
    let Some(length) = measured(guard, Item::GuardLength) else {
        return HowMany::Write(vec![Item::GuardLength]);
    };
    let between = (length - Length::inches(24)).nanometres().max(1);
    let at_most = |apart: Length| {
        let apart = apart.nanometres();
        u32::try_from((between + apart - 1) / apart + 1).unwrap_or(u32::MAX)
    };
    HowMany::from_to(at_most(Length::inches(48)), at_most(Length::inches(40)))
}

/// Pieces that are cut from lengths as they are sold.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Stock {
    /// How long one is.
    pub long: Length,
    /// What a cut takes.
    pub cut: Length,
    /// How many pieces one gives.
    pub each: u32,
    /// How many to buy, the least and the most.
    pub lengths: [u32; 2],
}

impl MaterialPart {
    /// What to buy of pieces whose length and count are known: lengths of 96 in or 2400 mm,
    /// of which a cut takes 1/8 in or 3 mm. (common practice, no source)
    #[must_use]
    pub fn stock(&self, unit: LengthUnit) -> Option<Stock> {
        let (long, cut) = if unit.is_imperial() {
            (Length::inches(96), Length::sixty_fourths(8))
        } else {
            (Length::millimetres(2400), Length::millimetres(3))
        };
        let piece = self.length.filter(|_| self.buy.is_none())?;
        let each = (long + cut).nanometres() / (piece + cut).nanometres().max(1);
        let each = u32::try_from(each).ok().filter(|each| *each > 0)?;
        let count = self.how_many.range()?;
        Some(Stock {
            long,
            cut,
            each,
            lengths: count.map(|count| count.div_ceil(each)),
        })
    }
}

/// A length that was measured, the greatest of several.
pub(super) fn measured(guard: &Guard, item: Item) -> Option<Length> {
    guard
        .of(item)
        .filter_map(|(_, o)| exact(&o.reading.as_ref()?.value))
        .max()
}

/// A length as read, where it is no bound.
pub(super) fn exact(value: &Value) -> Option<Length> {
    if let Value::Measure(measure) = value {
        (measure.bound == Bound::Exactly).then_some(measure.length)
    } else {
        None
    }
}

/// A section's side that lies across the gaps: the first one written.
pub(super) fn side(guard: &Guard, item: Item) -> Option<Length> {
    sides(guard, item).map(|[across, _]| across)
}

/// Both sides of a section.
pub(super) fn sides(guard: &Guard, item: Item) -> Option<[Length; 2]> {
    guard.of(item).find_map(|(_, o)| {
        if let Value::Section(across, deep) = o.reading.as_ref()?.value {
            Some([across, deep])
        } else {
            None
        }
    })
}

/// A part that runs the whole length of the guard, a tenth more to buy.
pub(super) fn along(guard: &Guard, what: String) -> MaterialPart {
    let length = measured(guard, Item::GuardLength);
    MaterialPart {
        what,
        how_many: match length {
            Some(_) => HowMany::Exactly(1),
            None => HowMany::Write(vec![Item::GuardLength]),
        },
        length,
        buy: length.map(|length| Length::from_nanometres(length.nanometres() / 10 * 11)),
    }
}

/// How many gaps a guard has at most, by its length and the spacing of its balusters.
pub(super) fn gaps(guard: &Guard) -> Result<u32, Vec<Item>> {
    let (length, spacing) = (
        measured(guard, Item::GuardLength),
        measured(guard, Item::BalusterSpacing),
    );
    match (length, spacing) {
        (Some(length), Some(spacing)) if spacing > Length::ZERO => {
            let gaps = length.nanometres() / spacing.nanometres() + 1;
            Ok(u32::try_from(gaps).unwrap_or(u32::MAX))
        }
        (Some(_) | None, _) => {
            let missing = |item: &Item| measured(guard, *item).is_none();
            let asked = [Item::GuardLength, Item::BalusterSpacing];
            Err(asked.into_iter().filter(missing).collect())
        }
    }
}

/// Painted surface that is taken out: in the United States the whole surface of a part
/// that is removed counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct PaintedArea {
    square_nanometres: i128,
}

/// A square foot.
const SQUARE_FOOT: i128 = 304_800_000 * 304_800_000;

impl PaintedArea {
    /// Of so many bars of this section and length, all four sides.
    #[must_use]
    pub fn of(count: u32, [one, other]: [Length; 2], length: Length) -> PaintedArea {
        let round = i128::from(2 * (one.nanometres() + other.nanometres()));
        PaintedArea {
            square_nanometres: i128::from(count) * round * i128::from(length.nanometres()),
        }
    }

    /// Whether paid work may still count as minor repair: at most 6 square feet in a room,
    /// 20 outside.
    ///
    /// # Source
    /// 40 CFR 745.83, definition of minor repair, as the federal agency's questions and
    /// answers give it (read); that a removed part counts whole: the same.
    #[must_use]
    pub fn is_minor_repair(self, place: LocationWord) -> bool {
        let most = match place {
            LocationWord::Inside => 6,
            LocationWord::Outside => 20,
        };
        self.square_nanometres <= most * SQUARE_FOOT
    }

    /// In square feet, rounded up to a tenth.
    #[must_use]
    pub fn text(self) -> String {
        let tenths = (self.square_nanometres * 10 + SQUARE_FOOT - 1) / SQUARE_FOOT;
        format!("{}.{} sq ft", tenths / 10, tenths % 10)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Three pieces of 32 in are 96 in, and the cuts take what one would need; of 31 7/8 in
    /// there are three: (96 + 1/8) / (31 7/8 + 1/8) = 3.004 (worked out by exact fractions).
    #[test]
    fn a_cut_takes_wood_too() {
        let bars = |length: Length, count| MaterialPart {
            what: "bars".to_owned(),
            how_many: HowMany::from_to(1, count),
            length: Some(length),
            buy: None,
        };
        let stock = |length, count| {
            let stock = bars(length, count).stock(LengthUnit::Inch);
            stock.map(|stock| (stock.each, stock.lengths))
        };
        assert_eq!(stock(Length::inches(32), 28), Some((2, [1, 14])));
        assert_eq!(stock(Length::sixty_fourths(2040), 28), Some((3, [1, 10])));
        assert_eq!(stock(Length::inches(97), 28), None);
    }

    /// Painted balusters of 1 1/2 x 1 1/2 x 32 in have 1 1/3 square feet each: 4 are 5.33
    /// and 5 are 6.67, 15 are exactly 20.00 and 16 are 21.33 (worked out from the lengths).
    #[test]
    fn a_part_that_is_taken_out_counts_with_its_whole_surface() {
        let side = Length::sixty_fourths(96);
        let area = |count| PaintedArea::of(count, [side, side], Length::inches(32));
        let minor = |count, place| area(count).is_minor_repair(place);
        assert_eq!(
            (
                minor(4, LocationWord::Inside),
                minor(5, LocationWord::Inside)
            ),
            (true, false)
        );
        assert_eq!(
            (
                minor(15, LocationWord::Outside),
                minor(16, LocationWord::Outside)
            ),
            (true, false)
        );
        assert_eq!(
            (area(4).text(), area(15).text()),
            ("5.4 sq ft".to_owned(), "20.0 sq ft".to_owned())
        );
    }
}
