//! What a remedy takes: parts, lengths, labour. Waste and labour are common practice, no
//! source.

use crate::items::Item;
use crate::quantities::Length;
use crate::reading::Bound;
use crate::reading::Value;
use crate::survey::Guard;

/// How many of a part.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum HowMany {
    /// So many.
    Exactly(u32),
    /// So many where every place needs it.
    AtMost(u32),
    /// It cannot be counted before these are written down.
    Write(Vec<Item>),
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
    /// For what: `a bar`, `a bay`.
    pub per: &'static str,
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
    guard.of(item).find_map(|(_, o)| {
        if let Value::Section(across, _) = o.reading.as_ref()?.value {
            Some(across)
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
