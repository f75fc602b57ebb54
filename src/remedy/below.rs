//! Remedies of the gap under the bottom rail.

use crate::items::Item;
use crate::quantities::Length;
use crate::reading::Value;
use crate::remedy::change::GuardChange;
use crate::remedy::drawn::Drawn;
use crate::remedy::kind::RemedyKind;
use crate::remedy::offered::Offered;
use crate::remedy::quantity::LabourPer;
use crate::remedy::quantity::along;
use crate::remedy::quantity::measured;
use crate::survey::Guard;

/// The gap under the bottom rail.
pub(super) fn bottom_gap(drawn: &Drawn<'_, '_>, item: Item) -> Vec<Offered> {
    let m = &drawn.measuring;
    let water = m.either(Length::sixty_fourths(32), 12);
    let gap = measured(drawn.guard, item);
    let target = drawn.filled_target(item, gap);
    let Some(target) = target.filter(|target| *target >= water) else {
        return vec![closed_below(drawn, item)];
    };
    let joint = m.either(Length::sixty_fourths(16), 6);
    let high = gap
        .map(|gap| m.down(gap - water - joint))
        .filter(|high| *high > Length::ZERO);
    let board = high.map_or_else(
        || "a board as high as the gap leaves".to_owned(),
        |high| format!("a board {} high", m.text(high)),
    );
    let kick = format!(
        "Screw a board under the bottom rail, flush with its inner face; {board}, {} above the floor for \
         water and at most {} below the rail, not in the way of a door.",
        m.text(water),
        m.text(joint)
    );
    let below = drawn.dried(water, high.unwrap_or(Length::ZERO));
    let change = GuardChange::default().instead(drawn.guard, item, &below, "as drawn");
    let mut all = vec![
        Offered::new(RemedyKind::KickBoard, kick, change)
            .aiming(format!("{} or less", m.text(water)))
            .of(along(drawn.guard, board))
            .taking(30, 60, LabourPer::Bay),
    ];
    let narrowed =
        || GuardChange::default().instead(drawn.guard, item, &m.drawn(target, m.gaps), "as drawn");
    let aim = format!("{} or less", m.text(target));
    if let Some(gap) = gap.filter(|gap| *gap > target) {
        let strip = m.up(gap - target);
        if strip <= m.either(Length::sixty_fourths(128), 50) {
            let says = format!(
                "Screw a strip under the bottom rail, so that {} or less stays everywhere, also where the floor \
                 dips; a strip {} high.",
                m.text(target),
                m.text(strip)
            );
            all.push(
                Offered::new(RemedyKind::StripUnder, says, narrowed())
                    .aiming(aim.clone())
                    .of(along(drawn.guard, format!("strip {} high", m.text(strip))))
                    .taking(20, 40, LabourPer::Bay),
            );
        }
        all.extend(second_rail(drawn, item, gap));
    }
    let lower = format!(
        "Have the bottom rail lowered to {} above the floor and the balusters lengthened.",
        m.text(target)
    );
    all.push(
        Offered::new(RemedyKind::LowerBottomRail, lower, narrowed())
            .aiming(aim)
            .taking(120, 240, LabourPer::Bay),
    );
    all
}

/// Where so little is allowed that no gap for water can stay.
fn closed_below(drawn: &Drawn<'_, '_>, item: Item) -> Offered {
    let says =
        "Close the gap with a board or an upstand down to the floor, flush with the inner face of \
                the rail; lead water away elsewhere, and no hole through a waterproof layer."
            .to_owned();
    let change = GuardChange::default().instead(drawn.guard, item, "none", "as drawn: closed");
    Offered::new(RemedyKind::KickBoard, says, change)
        .aiming("no gap".to_owned())
        .of(along(drawn.guard, "board down to the floor".to_owned()))
        .taking(45, 90, LabourPer::Bay)
}

/// A second bar in the middle of the gap; its top is a thing to step on.
fn second_rail(drawn: &Drawn<'_, '_>, item: Item, gap: Length) -> Option<Offered> {
    let m = &drawn.measuring;
    let thick = m.either(Length::sixty_fourths(96), 38);
    let open = m.up(Length::from_nanometres((gap - thick).nanometres() / 2));
    if open <= Length::ZERO {
        return None;
    }
    let top = m.up(open + thick);
    let says = format!(
        "Fix a second bar {} high in the middle under the bottom rail: {} stay below and above it.",
        m.text(thick),
        m.text(open)
    );
    let dried = drawn.dried(open, thick);
    let above = format!("{dried} at {} to {}", m.text(top), m.text(m.up(top + open)));
    let step = format!(
        "{} high {} deep ± {}",
        m.text(top),
        m.text(thick),
        m.text(m.gaps)
    );
    let change = GuardChange::default()
        .instead(drawn.guard, item, &dried, "as drawn: below the new bar")
        .also(Item::Opening, &above, "as drawn: above the new bar")
        .without_none(drawn.guard, Item::Foothold)
        .also(Item::Foothold, &step, "as drawn: the new bar");
    Some(
        Offered::new(RemedyKind::SecondBottomRail, says, change)
            .aiming(format!("{} or less", m.text(open)))
            .of(along(drawn.guard, format!("bar {} high", m.text(thick))))
            .taking(40, 75, LabourPer::Bay),
    )
}

impl GuardChange {
    /// `none` of an item no longer holds.
    pub(super) fn without_none(mut self, guard: &Guard, item: Item) -> GuardChange {
        let all = (0..).zip(&guard.observations);
        let none = all.filter(|(_, observation)| {
            let reading = observation.reading.as_ref();
            observation.item == item && reading.is_some_and(|reading| reading.value == Value::None)
        });
        self.gone.extend(none.map(|(index, _)| index));
        self
    }
}
