//! Remedies at windows: a stop, bars, what stands below the sill.

use crate::items::Item;
use crate::quantities::Length;
use crate::remedy::change::GuardChange;
use crate::remedy::demands::Demands;
use crate::remedy::drawn::Drawn;
use crate::remedy::drawn::raised;
use crate::remedy::gaps::all_narrowed;
use crate::remedy::kind::RemedyKind;
use crate::remedy::offered::Offered;
use crate::remedy::quantity::HowMany;
use crate::remedy::quantity::LabourPer;
use crate::remedy::quantity::MaterialPart;

/// A window whose sill is low: upright bars over its lower part, never a ladder.
pub(super) fn bars_at_window(drawn: &Drawn<'_, '_>, target: Length) -> Offered {
    let m = &drawn.measuring;
    let does = format!(
        "Have upright bars between two firm rails fixed over the opening, from the sill up to {} above the \
         floor, opened from inside without key or tool; no level bars, and none at the only way out of a \
         room in a fire.",
        m.text(target)
    );
    Offered::new(
        RemedyKind::UprightBarsAtWindow,
        does,
        raised(drawn, target, None),
    )
    .aiming(format!("{} or more", m.text(target)))
    .taking(60, 180, LabourPer::Window)
}

/// A stop that an adult releases.
pub(super) fn window_stop(drawn: &Drawn<'_, '_>, target: Length) -> Offered {
    let m = &drawn.measuring;
    let says = format!(
        "Fit a stop that lets the window open no more than {} and that an adult releases from inside \
         without key or tool.",
        m.text(target)
    );
    let mut change = all_narrowed(drawn, target);
    if drawn.guard.of(Item::WindowStop).next().is_some() {
        change = change.instead(drawn.guard, Item::WindowStop, "holds", "as drawn");
    }
    Offered::new(RemedyKind::WindowStop, says, change)
        .aiming(format!("{} or less", m.text(target)))
        .of(MaterialPart {
            what: "window stop that an adult releases".to_owned(),
            how_many: HowMany::Exactly(1),
            length: None,
            buy: None,
        })
        .taking(15, 40, LabourPer::Window)
}

/// Upright bars over the opening, where a stop will not do.
pub(super) fn window_guard(drawn: &Drawn<'_, '_>, target: Length) -> Offered {
    let m = &drawn.measuring;
    let says = format!(
        "Have a window guard of upright bars no more than {} apart fixed over the opening, that opens from \
         inside without key or tool; never at a fire escape or the only way out of a room in a fire.",
        m.text(target)
    );
    Offered::new(RemedyKind::WindowGuard, says, all_narrowed(drawn, target))
        .aiming(format!("{} or less", m.text(target)))
        .taking(60, 180, LabourPer::Window)
}

/// A sill that is low, or too narrow where little depth asks for a higher one.
pub(super) fn low_sill(drawn: &Drawn<'_, '_>, item: Item) -> Vec<Offered> {
    let m = &drawn.measuring;
    if item == Item::GuardThickness {
        return wider_sill(drawn);
    }
    let mut all = Vec::new();
    let gap = drawn.gap_target(Item::Opening, drawn.bar());
    if let Some(gap) = gap {
        all.push(Offered {
            kind: RemedyKind::SillStop,
            ..window_stop(drawn, gap)
        });
    }
    let Some(least) = Demands::of(drawn.judged, item).least else {
        return all;
    };
    let target = m.least(least, m.heights);
    let raised = |note: &str| {
        let height = m.drawn(target, m.heights);
        let mut change = GuardChange::default().instead(drawn.guard, item, &height, note);
        for other in [Item::SillHeight, Item::SillTopHeight] {
            if other != item && drawn.guard.of(other).next().is_some() {
                change = change.instead(drawn.guard, other, &height, note);
            }
        }
        change
    };
    let uprights = gap.unwrap_or(m.either(Length::sixty_fourths(200), 80));
    let bars = format!(
        "Have upright bars no more than {} apart fixed between two firm rails from the sill up to {} above \
         the floor; opened from inside without key or tool, no level bars, and none at the only way out of \
         a room in a fire.",
        m.text(uprights),
        m.text(target)
    );
    let with_bars =
        raised("as drawn: guarded up to here by upright bars").and(&all_narrowed(drawn, uprights));
    let aim = format!("{} or more", m.text(target));
    all.push(
        Offered::new(RemedyKind::UprightBarsAtWindow, bars, with_bars)
            .aiming(aim.clone())
            .taking(60, 180, LabourPer::Window),
    );
    let wall = format!(
        "Have the wall below the window raised, or a fixed pane of safety glass put in, up to {} above the \
         floor; the window still opens far enough to get out in a fire.",
        m.text(target)
    );
    all.push(
        Offered::new(
            RemedyKind::WallOrGlassBelow,
            wall,
            raised("as drawn: the new sill"),
        )
        .aiming(aim)
        .taking(480, 960, LabourPer::Window),
    );
    all
}

/// A sill that is too narrow to lean over safely at its height.
fn wider_sill(drawn: &Drawn<'_, '_>) -> Vec<Offered> {
    let m = &drawn.measuring;
    let Some(least) = Demands::of(drawn.judged, Item::GuardThickness).least else {
        return Vec::new();
    };
    let target = m.least(least, m.gaps);
    let says = format!(
        "Have the sill made {} deep or more at its top, firm enough to lean on; or bars or a rail put \
         before the window, and then measure anew.",
        m.text(target)
    );
    let deep = m.drawn(target, m.gaps);
    let change =
        GuardChange::default().instead(drawn.guard, Item::GuardThickness, &deep, "as drawn");
    vec![
        Offered::new(RemedyKind::WallOrGlassBelow, says, change)
            .aiming(format!("{} deep or more", m.text(target)))
            .taking(240, 480, LabourPer::Window),
    ]
}
