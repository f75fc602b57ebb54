//! What is written about the load path, the worst of several readings each.

use std::cell::Cell;

use crate::items::Item;
use crate::items::ItemSet;
use crate::items::ItemWord;
use crate::items::NotchedPostWord;
use crate::items::PostFasteningWord;
use crate::items::Worst;
use crate::judge::scene::Scene;
use crate::quantities::Distance;
use crate::quantities::Force;
use crate::quantities::Length;
use crate::quantities::LengthUnit;
use crate::quantities::inches;
use crate::reading::Bound;
use crate::reading::FastenerSize;
use crate::reading::Fasteners;
use crate::reading::Value;
use crate::statics::Ends;
use crate::statics::Units;
use crate::statics::hardware::WOOD_SCREWS;
use crate::statics::stiffness::ScalePull;
use crate::survey::Observation;

/// A length that was written, or that there is none of it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum WrittenLength {
    Nothing,
    There(Distance),
    ThereIsNone,
}

/// From the least height that the greatest one may have to the greatest.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Height {
    pub(super) low: Distance,
    /// The least again where nothing bounds it from above.
    pub(super) high: Distance,
    /// Whether it may be more than `high`.
    pub(super) is_open: bool,
}

impl Height {
    fn of(value: &Value) -> Option<Height> {
        let (bound, length) = if let Value::Measure(measure) = value {
            (measure.bound, measure.length)
        } else if let Value::Stick(stick) = value {
            let bound = if stick.reaches {
                Bound::Over
            } else {
                Bound::Under
            };
            (bound, stick.stick)
        } else {
            return None;
        };
        let length: Distance = length.to_uom();
        Some(Height {
            low: if bound == Bound::Under {
                Distance::default()
            } else {
                length
            },
            high: length,
            is_open: bound == Bound::Over,
        })
    }

    /// Of two heights of one guard the higher one counts.
    fn higher(self, other: Height) -> Height {
        Height {
            low: self.low.max(other.low),
            high: self.high.max(other.high),
            is_open: self.is_open || other.is_open,
        }
    }
}

/// The nominal diameter; none for a number that no wood screw has.
pub(super) fn diameter(size: FastenerSize) -> Option<Distance> {
    match size {
        FastenerSize::Diameter(diameter) => Some(diameter.to_uom()),
        FastenerSize::Number(number) => {
            let mut screws = WOOD_SCREWS.iter();
            let screw = screws.find(|screw| screw.number == number)?;
            Some(screw.diameter)
        }
    }
}

/// A size that stands in no table counts as the thinner one.
fn thinner(one: FastenerSize, other: FastenerSize) -> FastenerSize {
    let size = |of| diameter(of).unwrap_or_default();
    // a screw of a number before a bolt of the same diameter, whichever was written first
    let key = |of| (size(of), matches!(of, FastenerSize::Diameter(_)));
    if key(other) < key(one) { other } else { one }
}

/// What is written about the load path of one guard.
pub(super) struct Seen<'s, 'g> {
    scene: &'s Scene<'g>,
    /// Items that somebody has asked for so far.
    looked_at: Cell<ItemSet>,
}

impl<'s, 'g> Seen<'s, 'g> {
    pub(super) fn of(scene: &'s Scene<'g>) -> Seen<'s, 'g> {
        Seen {
            scene,
            looked_at: Cell::new(ItemSet::EMPTY),
        }
    }

    /// The items that somebody has asked for so far.
    pub(super) fn looked_at(&self) -> ItemSet {
        self.looked_at.get()
    }

    fn of_item(&self, item: Item) -> impl Iterator<Item = (usize, &'g Observation)> {
        let mut looked_at = self.looked_at.get();
        looked_at.insert(item);
        self.looked_at.set(looked_at);
        self.scene.of(item)
    }

    fn values(&self, item: Item) -> impl Iterator<Item = &'s Value> {
        self.of_item(item)
            .filter_map(|(_, observation)| observation.reading.as_ref())
            .map(|reading| &reading.value)
    }

    /// Whether every reading of the item could be used.
    fn is_sound(&self, item: Item) -> bool {
        let mut all = self.of_item(item);
        all.all(|(_, observation)| {
            let reading = observation.reading.as_ref();
            reading.is_some_and(|reading| reading.value != Value::Unknown)
        })
    }

    /// The worst word; none where one of several could not be read.
    pub(super) fn word<W: ItemWord>(&self) -> Option<W> {
        self.word_in(W::ITEM)
    }

    /// The same of an item that shares another's list of words.
    pub(super) fn word_in<W: ItemWord>(&self, item: Item) -> Option<W> {
        if !self.is_sound(item) {
            return None;
        }
        let place = |word: &W| W::ALL.iter().position(|known| known == word);
        let words = self.values(item).filter_map(Value::word);
        words.max_by_key(place)
    }

    /// Every word that is written.
    pub(super) fn words<W: ItemWord>(&self) -> impl Iterator<Item = W> {
        self.values(W::ITEM).filter_map(Value::word)
    }

    pub(super) fn mentions<W: ItemWord>(&self, word: W) -> bool {
        self.words().any(|found: W| found == word)
    }

    pub(super) fn mentions_any<W: ItemWord>(&self, words: &[W]) -> bool {
        self.words().any(|found: W| words.contains(&found))
    }

    /// The worst length, exactly read.
    pub(super) fn length(&self, item: Item) -> WrittenLength {
        if !self.is_sound(item) {
            return WrittenLength::Nothing;
        }
        let mut lengths: Vec<Length> = Vec::new();
        for value in self.values(item) {
            if *value == Value::None {
                return WrittenLength::ThereIsNone;
            }
            match exact(value) {
                Some(length) => lengths.push(length),
                // a bound says too little for a calculation
                None => return WrittenLength::Nothing,
            }
        }
        let worst = match item.info().worst {
            Worst::Greatest => lengths.iter().max(),
            Worst::Least | Worst::Neither => lengths.iter().min(),
        };
        worst.map_or(WrittenLength::Nothing, |length| {
            WrittenLength::There(length.to_uom())
        })
    }

    /// The least and the greatest of the lengths that are written.
    pub(super) fn all_lengths(&self, item: Item) -> Option<Ends<Distance>> {
        self.known_length(item)?;
        let all = self.values(item).filter_map(exact);
        Ends::over(all.map(Length::to_uom))
    }

    /// The worst length, where one is written.
    pub(super) fn known_length(&self, item: Item) -> Option<Distance> {
        match self.length(item) {
            WrittenLength::There(length) => Some(length),
            WrittenLength::Nothing | WrittenLength::ThereIsNone => None,
        }
    }

    /// The height at which the load along the top acts: the greatest one written,
    /// since the demand grows with it. A stick or a bound leaves an end open.
    pub(super) fn height(&self) -> Option<Height> {
        if !self.is_sound(Item::Height) {
            return None;
        }
        let mut all = self.values(Item::Height).map(Height::of);
        let first = all.next()??;
        all.try_fold(first, |worst, one| Some(worst.higher(one?)))
    }

    /// Whether the greatest height is open above: `reaches 36 in`.
    pub(super) fn height_is_open(&self) -> bool {
        self.height().is_some_and(|height| height.is_open)
    }

    /// The smaller section of several.
    pub(super) fn section(&self, item: Item) -> Option<(Distance, Distance)> {
        let sections = self.values(item).filter_map(|value| {
            if let Value::Section(a, b) = value {
                Some((*a, *b))
            } else {
                None
            }
        });
        let least = sections.min_by_key(|(a, b)| (*a.min(b), *a.max(b)))?;
        self.is_sound(item)
            .then(|| (least.0.to_uom(), least.1.to_uom()))
    }

    /// The fewest, the thinnest and the shortest that are written, whichever row
    /// each stands in: the order of rows decides nothing.
    pub(super) fn fasteners(&self, item: Item) -> Option<Fasteners> {
        let all = self.values(item).filter_map(|value| {
            if let Value::Fasteners(fasteners) = value {
                Some(*fasteners)
            } else {
                None
            }
        });
        let least = all.reduce(|one, other| Fasteners {
            count: one.count.min(other.count),
            size: thinner(one.size, other.size),
            length: one.length.zip(other.length).map(|(a, b)| a.min(b)),
        });
        least.filter(|_| self.is_sound(item))
    }

    /// The most fasteners that are written of one post: they take the most holes.
    pub(super) fn most_fasteners(&self, item: Item) -> Option<u32> {
        let all = self.values(item).filter_map(|value| {
            if let Value::Fasteners(fasteners) = value {
                Some(fasteners.count)
            } else {
                None
            }
        });
        all.max().filter(|_| self.is_sound(item))
    }

    /// The thickest fastener that is written: it takes the largest hole.
    pub(super) fn thickest(&self, item: Item) -> Option<Distance> {
        let all = self.values(item).filter_map(|value| {
            if let Value::Fasteners(fasteners) = value {
                diameter(fasteners.size)
            } else {
                None
            }
        });
        let thickest = all.reduce(Distance::max);
        thickest.filter(|_| self.is_sound(item))
    }

    /// A count, the greatest of several.
    pub(super) fn count(&self, item: Item) -> Option<u32> {
        let all = self.values(item).filter_map(|value| {
            if let Value::Count(count) = value {
                Some(*count)
            } else {
                None
            }
        });
        all.max().filter(|_| self.is_sound(item))
    }

    /// The forces that are written, from the least to the greatest.
    pub(super) fn forces(&self, item: Item) -> Option<Ends<Force>> {
        let all = self.values(item).filter_map(|value| {
            if let Value::Force(force) = value {
                Some(*force)
            } else {
                None
            }
        });
        Ends::over(all).filter(|_| self.is_sound(item))
    }

    /// Every pull, the weakest first; of two alike the one that moved less.
    pub(super) fn pulls(&self) -> Vec<ScalePull> {
        let mut pulls: Vec<ScalePull> = self
            .values(Item::PullTest)
            .filter_map(|value| {
                let Value::Pull(pull) = value else {
                    return None;
                };
                Some(ScalePull {
                    force: pull.force,
                    movement: pull.moved.to_uom(),
                })
            })
            .collect();
        pulls.sort_by(|a, b| {
            let moved = a.movement.value.total_cmp(&b.movement.value);
            a.force.value.total_cmp(&b.force.value).then(moved)
        });
        pulls
    }

    /// Boards between the walking surface and the framing; what nobody wrote is
    /// anything up to 2 in (common practice, no source).
    pub(super) fn covering(&self) -> Ends<Distance> {
        match self.length(Item::DeckingThickness) {
            WrittenLength::There(length) => Ends::exactly(length),
            WrittenLength::Nothing | WrittenLength::ThereIsNone => Ends {
                low: inches(0.0),
                high: inches(2.0),
            },
        }
    }

    /// From the framing's top down to the upper fastener; what nobody wrote is
    /// 1 to 6 in (common practice, no source).
    pub(super) fn depth(&self) -> Ends<Distance> {
        match self.length(Item::FastenerDepth) {
            WrittenLength::There(length) => Ends::exactly(length),
            WrittenLength::Nothing | WrittenLength::ThereIsNone => Ends {
                low: inches(1.0),
                high: inches(6.0),
            },
        }
    }

    /// Whether anything is written about what holds the guard, beyond "cannot see".
    pub(super) fn tells_anything(&self) -> bool {
        const ELSEWHERE: &[Item] = &[
            Item::Height,
            Item::Infill,
            Item::Location,
            Item::MovesWhenPushed,
            Item::PostSpacing,
        ];
        // in every list these two words say so
        let nothing = [PostFasteningWord::Hidden.name(), NotchedPostWord::No.name()];
        let telling = |item: &&Item| {
            let known = self.values(**item).any(|value| {
                let silent = matches!(value, Value::Word(word) if nothing.contains(word));
                !silent && *value != Value::Unknown
            });
            known && !ELSEWHERE.contains(item)
        };
        Item::LOAD_PATH.iter().any(|item| telling(&item))
    }

    /// In which units the person measures: those of the first length of the guard.
    pub(super) fn units(&self) -> Units {
        let observations = self.scene.guard.observations.iter();
        let mut units = observations.filter_map(|observation| {
            let value = &observation.reading.as_ref()?.value;
            value.tape().map(|(unit, _)| unit)
        });
        match units.next() {
            Some(LengthUnit::Centimetre | LengthUnit::Metre | LengthUnit::Millimetre) => {
                Units::Metric
            }
            Some(LengthUnit::Foot | LengthUnit::Inch) | None => Units::Customary,
        }
    }
}

fn exact(value: &Value) -> Option<Length> {
    let Value::Measure(measure) = value else {
        return None;
    };
    (measure.bound == Bound::Exactly).then_some(measure.length)
}
