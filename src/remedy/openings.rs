//! Remedies of openings that are too wide, by what fills the guard.

use crate::items::InfillWord;
use crate::items::Item;
use crate::items::PlaceWord;
use crate::quantities::Length;
use crate::remedy::cables::nearer_cables;
use crate::remedy::drawn::Drawn;
use crate::remedy::faces::new_bay;
use crate::remedy::faces::over_bars;
use crate::remedy::faces::sheet;
use crate::remedy::gaps::all_narrowed;
use crate::remedy::gaps::bars_between;
use crate::remedy::gaps::laid_out_again;
use crate::remedy::gaps::strips;
use crate::remedy::kind::RemedyKind;
use crate::remedy::offered::Offered;
use crate::remedy::topics::says;
use crate::remedy::windows::window_guard;
use crate::remedy::windows::window_stop;

/// Gaps of the infill that are too wide, the least change first.
pub(super) fn openings(drawn: &Drawn<'_, '_>) -> Vec<Offered> {
    if says(drawn.guard, PlaceWord::Window) {
        let target = drawn.gap_target(Item::Opening, Length::ZERO);
        let both = |target| vec![window_stop(drawn, target), window_guard(drawn, target)];
        return target.map_or_else(Vec::new, both);
    }
    let Some(target) = drawn.gap_target(Item::Opening, drawn.bar()) else {
        return Vec::new();
    };
    let infill = drawn.guard.of(Item::Infill).find_map(|(_, o)| o.word());
    let takes_bars = match infill {
        Some(InfillWord::Balusters | InfillWord::Other) | None => true,
        Some(
            InfillWord::Cables
            | InfillWord::Glass
            | InfillWord::HorizontalBars
            | InfillWord::Mesh
            | InfillWord::Net
            | InfillWord::Panel
            | InfillWord::Solid
            | InfillWord::UprightCables,
        ) => false,
    };
    let mut all = Vec::new();
    if takes_bars {
        all.push(bars_between(drawn, target));
        all.extend(strips(drawn));
    }
    match infill {
        Some(InfillWord::HorizontalBars) => all.extend(over_bars(drawn)),
        Some(InfillWord::Cables) => {
            all.extend(over_bars(drawn));
            all.extend(nearer_cables(drawn, target));
        }
        Some(InfillWord::Glass) => all.push(beside_glass(drawn, target)),
        Some(_) | None => all.push(sheet(drawn, RemedyKind::SheetScrewed)),
    }
    if infill == Some(InfillWord::Balusters) {
        all.push(laid_out_again(drawn, target));
    }
    all.push(new_bay(drawn, target));
    all
}

fn beside_glass(drawn: &Drawn<'_, '_>, target: Length) -> Offered {
    let m = &drawn.measuring;
    let says = format!(
        "Have an edge strip or a profile, held by the posts or the rail, close the gap beside the \
         glass to {} or less; the glass itself is never drilled or cut.",
        m.text(target)
    );
    Offered::new(
        RemedyKind::GlassEdgeStrip,
        says,
        all_narrowed(drawn, target),
    )
    .aiming(format!("gaps of {} or less", m.text(target)))
}
