//! A guard for which remedies are drawn.

use crate::geometry::usual_drying;
use crate::items::HandrailWord;
use crate::items::InfillWord;
use crate::items::Item;
use crate::items::PlaceWord;
use crate::judge::Judged;
use crate::quantities::Length;
use crate::reading::Value;
use crate::remedy::aim::Measuring;
use crate::remedy::change::GuardChange;
use crate::remedy::demands::Demands;
use crate::remedy::quantity::exact;
use crate::remedy::quantity::side;
use crate::remedy::topics::says;
use crate::survey::Guard;

/// A guard for which remedies are drawn.
pub(super) struct Drawn<'g, 'r> {
    pub(super) guard: &'g Guard,
    pub(super) judged: &'g Judged<'r>,
    pub(super) measuring: Measuring,
}

impl Drawn<'_, '_> {
    /// The widest gap that may be drawn beside a new piece of wood so wide, which may dry
    /// narrower; `None` where no rule bounds it.
    pub(super) fn gap_target(&self, item: Item, wood: Length) -> Option<Length> {
        let limit = Demands::of(self.judged, item).most? - usual_drying(wood);
        let target = self.measuring.most(limit, self.measuring.gaps);
        (target > Length::ZERO).then_some(target)
    }

    /// The same beside a strip that fills what is open down to it.
    pub(super) fn filled_target(&self, item: Item, open: Option<Length>) -> Option<Length> {
        let dry = self.gap_target(item, Length::ZERO)?;
        let strip = open.map_or(Length::ZERO, |open| (open - dry).max(Length::ZERO));
        self.gap_target(item, strip)
    }

    /// How wide a new bar is: as those that stand, else 1 1/2 in or 38 mm.
    pub(super) fn bar(&self) -> Length {
        let usual = self.measuring.either(Length::sixty_fourths(96), 38);
        side(self.guard, Item::BalusterSection).unwrap_or(usual)
    }

    /// An opening beside new wood so wide, as it is read when the wood has dried.
    pub(super) fn dried(&self, open: Length, wood: Length) -> String {
        let m = &self.measuring;
        m.drawn(m.up(open + usual_drying(wood)), m.gaps)
    }

    /// Whether the infill is one that a child climbs.
    pub(super) fn is_climbable(&self) -> bool {
        let ladders = [InfillWord::HorizontalBars, InfillWord::Cables];
        ladders.iter().any(|infill| says(self.guard, *infill))
    }

    /// Whether its top is the handrail.
    pub(super) fn is_handrail(&self) -> bool {
        says(self.guard, HandrailWord::TopOfTheGuard)
    }
}

/// Below this an old top is a foothold for a small child (British Columbia Building Code
/// 9.8.8.6 as decisions of its Appeal Board quote it: 140 to 900 mm).
pub(super) const FOOT: Length = Length::millimetres(900);

/// The lowest height that a tape read; `None` where none did.
pub(super) fn lowest(guard: &Guard, item: Item) -> Option<Length> {
    let all = guard.of(item);
    all.filter_map(|(_, o)| exact(&o.reading.as_ref()?.value))
        .min()
}

/// The widest opening that was measured with a tape or traced; `None` where some
/// opening is known by a ball alone.
pub(super) fn widest(drawn: &Drawn<'_, '_>) -> Option<Length> {
    let mut widest = None;
    for (_, observation) in drawn.guard.of(Item::Opening) {
        let value = &observation.reading.as_ref()?.value;
        let wide = if let Value::Shape(shape) = value {
            Some(shape.shape.clear_opening().upper?)
        } else if let Value::Ball(ball) = value
            && ball.passes
        {
            return None;
        } else {
            exact(value)
        };
        widest = widest.max(wide);
    }
    widest
}

/// Whether the guard is at a stair.
pub(super) fn is_stair(guard: &Guard) -> bool {
    says(guard, PlaceWord::Stair)
}

/// The guard at its new height, with what goes up together with its top.
pub(super) fn raised(drawn: &Drawn<'_, '_>, target: Length, by: Option<Length>) -> GuardChange {
    let m = &drawn.measuring;
    let height = m.drawn(target, m.heights);
    let mut change = GuardChange::default().instead(
        drawn.guard,
        Item::Height,
        &height,
        "as drawn, at its lowest",
    );
    if drawn.is_handrail() && drawn.guard.of(Item::HandrailHeight).next().is_some() {
        change = change.instead(
            drawn.guard,
            Item::HandrailHeight,
            &height,
            "as drawn: the new top",
        );
    }
    if let (Some(by), Some(seat)) = (by, lowest(drawn.guard, Item::HeightAboveSeat)) {
        let above = m.drawn(m.down(seat + by), m.heights);
        change = change.instead(drawn.guard, Item::HeightAboveSeat, &above, "as drawn");
    }
    change
}
