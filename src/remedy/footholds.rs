//! Remedies of what a foot finds hold on.

use crate::items::FixedSeatWord;
use crate::items::Item;
use crate::items::ItemWord;
use crate::quantities::Length;
use crate::reading::Foothold;
use crate::reading::Value;
use crate::remedy::change::GuardChange;
use crate::remedy::demands::Demands;
use crate::remedy::drawn::Drawn;
use crate::remedy::drawn::lowest;
use crate::remedy::kind::RemedyKind;
use crate::remedy::offered::Offered;
use crate::remedy::quantity::LabourPer;

/// Something a foot finds hold on.
pub(super) fn foothold(drawn: &Drawn<'_, '_>) -> Vec<Offered> {
    let m = &drawn.measuring;
    let away = "Take away or cover what a foot finds hold on: a box, a hook, a ledge that carries \
                nothing. A rail that holds the railing together stays; ask before you take it."
        .to_owned();
    let gone =
        GuardChange::default().instead(drawn.guard, Item::Foothold, "none", "as drawn: taken away");
    let mut all =
        vec![Offered::new(RemedyKind::FootholdAway, away, gone).taking(10, 60, LabourPer::Place)];
    let ledges: Vec<Foothold> = drawn
        .guard
        .of(Item::Foothold)
        .filter_map(|(_, o)| {
            if let Value::Foothold(foothold) = o.reading.as_ref()?.value {
                Some(foothold)
            } else {
                None
            }
        })
        .collect();
    let shallow = m.either(Length::inches(2), 50);
    let is_ledge = |ledge: &Foothold| ledge.depth.is_some_and(|deep| deep <= shallow);
    if !ledges.is_empty() && ledges.iter().all(is_ledge) {
        let mut change = GuardChange::default().without(drawn.guard, Item::Foothold);
        for ledge in &ledges {
            let deep = ledge.depth.unwrap_or(Length::ZERO);
            let written = format!(
                "{} high {} deep ± {} sloped 45 deg",
                ledge.height.exact(ledge.unit),
                deep.exact(ledge.unit),
                m.text(m.gaps)
            );
            change = change.also(Item::Foothold, &written, "as drawn: with a fillet on it");
        }
        let says =
            "Fix a fillet on the ledge, as high as the ledge is deep, so that its top slopes at \
                    45 degrees and no foot stays on it."
                .to_owned();
        all.push(Offered::new(RemedyKind::Fillet, says, change).taking(30, 60, LabourPer::Ledge));
    }
    all
}

/// Something fixed beside the guard, or just outside it, that one could stand on.
pub(super) fn step(drawn: &Drawn<'_, '_>, item: Item) -> Vec<Offered> {
    let where_ = if item == Item::StepOutside {
        "outside"
    } else {
        "beside"
    };
    let gone = |note: &str| GuardChange::default().instead(drawn.guard, item, "none", note);
    let away = format!(
        "Have what one can stand on {where_} the railing taken away; a wall, a roof or a radiator stays, \
         and then it is covered or the railing is raised above it."
    );
    let cover = format!(
        "Fix a cover that slopes by 45 degrees or more over what one can stand on {where_} the railing; \
         closed at its ends, from wall to wall, so that no foot stays on it."
    );
    vec![
        Offered::new(RemedyKind::FootholdAway, away, gone("as drawn: taken away")).taking(
            30,
            120,
            LabourPer::Place,
        ),
        Offered::new(
            RemedyKind::Fillet,
            cover,
            gone("as drawn: covered, steeper than a foot stays on"),
        )
        .taking(60, 180, LabourPer::Place),
    ]
}

/// A seat that is fixed beside the guard, from which the height counts.
pub(super) fn seat(drawn: &Drawn<'_, '_>) -> Vec<Offered> {
    let m = &drawn.measuring;
    let away =
        "Have the fixed seat taken away from the railing; the height then counts from the floor.";
    let gone = GuardChange::default()
        .instead(
            drawn.guard,
            Item::FixedSeat,
            FixedSeatWord::No.name(),
            "as drawn: taken away",
        )
        .without(drawn.guard, Item::HeightAboveSeat);
    let mut all = vec![
        Offered::new(RemedyKind::FootholdAway, away.to_owned(), gone).taking(
            60,
            240,
            LabourPer::Seat,
        ),
    ];
    if let Some(least) = Demands::of(drawn.judged, Item::HeightAboveSeat).least {
        let target = m.least(least, m.heights);
        let raise = format!(
            "Have the railing raised to {} above the seat at its lowest; on posts that an engineer has \
             looked at, no opening wider than before.",
            m.text(target)
        );
        let high = m.drawn(target, m.heights);
        let mut change =
            GuardChange::default().instead(drawn.guard, Item::HeightAboveSeat, &high, "as drawn");
        let seat = lowest(drawn.guard, Item::HeightAboveSeat);
        let floor = lowest(drawn.guard, Item::Height);
        if let (Some(seat), Some(floor)) = (seat, floor)
            && target > seat
        {
            let height = m.drawn(m.up(floor + target - seat), m.heights);
            change = change.instead(drawn.guard, Item::Height, &height, "as drawn");
        }
        all.push(
            Offered::new(RemedyKind::RaiseAtSeat, raise, change)
                .aiming(format!("{} or more", m.text(target)))
                .taking(240, 480, LabourPer::Bay),
        );
    }
    all
}
