//! Remedies of a guard that is too low.

use crate::items::Item;
use crate::items::PlaceWord;
use crate::quantities::Length;
use crate::reading::Value;
use crate::remedy::change::GuardChange;
use crate::remedy::demands::Demands;
use crate::remedy::drawn::Drawn;
use crate::remedy::drawn::FOOT;
use crate::remedy::drawn::lowest;
use crate::remedy::drawn::raised;
use crate::remedy::handrails::hand_height;
use crate::remedy::handrails::handrail_change;
use crate::remedy::handrails::handrail_parts;
use crate::remedy::kind::RemedyKind;
use crate::remedy::offered::Offered;
use crate::remedy::quantity::BOARDS;
use crate::remedy::quantity::HowMany;
use crate::remedy::quantity::LabourPer;
use crate::remedy::quantity::MaterialPart;
use crate::remedy::quantity::along;
use crate::remedy::quantity::side;
use crate::remedy::topics::says;
use crate::remedy::windows::bars_at_window;

/// A guard that is too low.
pub(super) fn too_low(drawn: &Drawn<'_, '_>) -> Vec<Offered> {
    let m = &drawn.measuring;
    let demands = Demands::of(drawn.judged, Item::Height);
    let Some(least) = demands.least else {
        return Vec::new();
    };
    let target = m.least(least, m.heights);
    if says(drawn.guard, PlaceWord::Window) {
        return vec![bars_at_window(drawn, target)];
    }
    let low = lowest(drawn.guard, Item::Height).filter(|low| *low < target);
    let mut all = Vec::new();
    if let Some(low) = low {
        all.extend(cap(drawn, low, target));
        all.push(board_above(drawn, low, target));
        all.extend(rails_above(drawn, low, target));
    }
    let new = format!(
        "Have new posts or a new bay put up, its top at {} at its lowest; new work keeps to today's \
         rules.",
        m.text(target)
    );
    let by = low.map(|low| target - low);
    let aim = format!("{} or more", m.text(target));
    all.push(
        Offered::new(RemedyKind::NewPosts, new, raised(drawn, target, by))
            .aiming(aim)
            .taking(240, 480, LabourPer::Bay),
    );
    if drawn.is_handrail() {
        let own_rail: Vec<Offered> = all
            .iter()
            .filter_map(|one| with_wall_handrail(drawn, one))
            .collect();
        // no hand closes around a board on edge (IRC 2018 R311.7.8.5)
        all.retain(|one| one.kind != RemedyKind::BoardAbove);
        all.extend(own_rail);
    }
    if low.is_none() {
        for one in &mut all {
            one.asks.push(Item::Height);
        }
    }
    all
}

/// The same with a handrail of its own, where the top may not be one at that height.
fn with_wall_handrail(drawn: &Drawn<'_, '_>, one: &Offered) -> Option<Offered> {
    let height = hand_height(drawn)?;
    let change = handrail_change(drawn, height);
    // the wall's handrail takes the place of the one that went up with the top
    let mut raised = one.change.clone();
    raised.new.retain(|new| new.item != Item::HandrailHeight);
    let mut offered = one.clone();
    let own = format!(
        "Put up a handrail of its own on the wall, its top at {}, since the new top is no handrail.",
        drawn.measuring.text(height)
    );
    offered.says = format!("{} {own}", one.says);
    offered.act = format!("{} {own}", one.act);
    offered.change = raised.and(&change);
    offered.parts.extend(handrail_parts(drawn));
    Some(offered)
}

fn cap(drawn: &Drawn<'_, '_>, low: Length, target: Length) -> Option<Offered> {
    let m = &drawn.measuring;
    let thick = m.up(target - low);
    if thick > m.either(Length::sixty_fourths(96), 38) {
        return None;
    }
    let grip = if drawn.is_handrail() {
        " The top is the handrail: choose a profile that a hand closes around."
    } else {
        ""
    };
    let says = format!(
        "Screw a cap on the top rail, its top at {} at its lowest; on the whole of it, {} thick or a \
         little more, screws at most {} apart.{grip}",
        m.text(target),
        m.text(thick),
        m.text(m.either(Length::inches(16), 400))
    );
    Some(
        Offered::new(RemedyKind::Cap, says, raised(drawn, target, Some(thick)))
            .aiming(format!("{} or more", m.text(target)))
            .of(along(drawn.guard, format!("cap {} thick", m.text(thick))))
            .taking(30, 60, LabourPer::Bay),
    )
}

fn board_above(drawn: &Drawn<'_, '_>, low: Length, target: Length) -> Offered {
    let m = &drawn.measuring;
    let room = target - low;
    let gap = drawn
        .gap_target(Item::Opening, room)
        .unwrap_or(Length::ZERO);
    let boards = BOARDS
        .iter()
        .map(|(inches, millimetres)| m.either(Length::sixty_fourths(*inches), *millimetres));
    let wide = boards
        .into_iter()
        .find(|wide| *wide >= room - gap)
        .unwrap_or(m.up(room));
    let left = m.down((room - wide).max(Length::ZERO));
    let stays = if left > Length::ZERO {
        format!(", and {} stays open between them", m.text(left))
    } else {
        String::new()
    };
    let says = format!(
        "Fix a board on edge above the old rail, its top at {} at its lowest; it is {} wide, fixed to the \
         posts near its upper edge, since wood dries narrower, flush with the old rail's inner face{stays}.",
        m.text(target),
        m.text(wide)
    );
    let mut change = raised(drawn, target, Some(room));
    if left > m.gaps {
        change = opening_between(drawn, change, (low, left), wide);
    }
    Offered::new(RemedyKind::BoardAbove, says, change)
        .aiming(format!("{} or more", m.text(target)))
        .of(along(drawn.guard, format!("board {} wide", m.text(wide))))
        .taking(45, 90, LabourPer::Bay)
}

/// An opening above an old rail, below new wood so wide, with the heights between which
/// it lies.
fn opening_between(
    drawn: &Drawn<'_, '_>,
    change: GuardChange,
    (from, high): (Length, Length),
    wood: Length,
) -> GuardChange {
    let m = &drawn.measuring;
    let (low, top) = (m.down(from), m.up(from + high));
    let written = format!(
        "{} at {} to {}",
        drawn.dried(high, wood),
        m.text(low),
        m.text(top)
    );
    change.also(Item::Opening, &written, "as drawn: above the old rail")
}

/// A rail above the old one: alone, and with rails between where the opening that it
/// leaves would be too high.
fn rails_above(drawn: &Drawn<'_, '_>, low: Length, target: Length) -> Vec<Offered> {
    let m = &drawn.measuring;
    let thick = m.either(Length::sixty_fourths(96), 38);
    let room = target - low - thick;
    if room <= Length::ZERO {
        return Vec::new();
    }
    let mut counts = vec![0_i64];
    if let Some(gap) = drawn.gap_target(Item::Opening, thick)
        && room > gap
    {
        let over = (room - gap).nanometres();
        let each = (thick + gap).nanometres().max(1);
        counts.push((over + each - 1) / each);
    }
    counts
        .into_iter()
        .map(|bars| rail_above(drawn, low, target, bars))
        .collect()
}

fn rail_above(drawn: &Drawn<'_, '_>, low: Length, target: Length, bars: i64) -> Offered {
    let m = &drawn.measuring;
    let thick = m.either(Length::sixty_fourths(96), 38);
    let free = (target - low - thick).nanometres() - bars * thick.nanometres();
    let open = m.up(Length::from_nanometres(free / (bars + 1)));
    let mut change = raised(drawn, target, Some(target - low));
    let mut from = low;
    for _ in 0..=bars {
        change = opening_between(drawn, change, (from, open), thick);
        from = from + open + thick;
    }
    if low < FOOT {
        let deep = side(drawn.guard, Item::RailSection);
        let deep = deep.unwrap_or(m.either(Length::sixty_fourths(96), 38));
        let top = format!(
            "{} high {} deep ± {}",
            m.text(m.down(low)),
            m.text(m.down(deep)),
            m.text(m.gaps)
        );
        let none_said = drawn.guard.of(Item::Foothold).all(|(_, o)| {
            o.reading
                .as_ref()
                .is_some_and(|reading| reading.value == Value::None)
        });
        if none_said {
            change = change.without(drawn.guard, Item::Foothold);
        }
        change = change.also(Item::Foothold, &top, "the old top, kept below the new rail");
    }
    let between = match bars {
        0 => String::new(),
        1 => " and one more in the middle below it".to_owned(),
        bars => format!(" and {bars} more, evenly spaced, below it"),
    };
    let says = format!(
        "Fix a rail above the old one, its top at {} at its lowest{between}; on posts that are lengthened, \
         each {} high, and openings of {} stay above the old rail.",
        m.text(target),
        m.text(thick),
        m.text(open)
    );
    Offered::new(RemedyKind::RailAbove, says, change)
        .aiming(format!("{} or more", m.text(target)))
        .of(rails(drawn, thick, bars + 1))
        .taking(90, 150, LabourPer::Bay)
}

/// So many rails the whole length of the guard.
fn rails(drawn: &Drawn<'_, '_>, thick: Length, count: i64) -> MaterialPart {
    let one = along(
        drawn.guard,
        format!("rails {} high", drawn.measuring.text(thick)),
    );
    let all = |buy: Length| Length::from_nanometres(buy.nanometres().saturating_mul(count));
    MaterialPart {
        how_many: match one.how_many {
            HowMany::Between(..) | HowMany::Exactly(_) => {
                HowMany::Exactly(u32::try_from(count).unwrap_or(u32::MAX))
            }
            HowMany::Write(missing) => HowMany::Write(missing),
        },
        buy: one.buy.map(all),
        ..one
    }
}
