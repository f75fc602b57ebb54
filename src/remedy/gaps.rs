//! Remedies of gaps between uprights and of holes: bars, strips, a bay laid out anew.

use crate::geometry::AtTheLimit;
use crate::geometry::BayEnds;
use crate::geometry::BayPlan;
use crate::geometry::GapLimit;
use crate::geometry::Shape;
use crate::geometry::usual_drying;
use crate::items::InfillLooseWord;
use crate::items::InfillWord;
use crate::items::Item;
use crate::items::ItemWord;
use crate::items::OpeningsCheckedWord;
use crate::items::PlaceWord;
use crate::quantities::Length;
use crate::reading::Value;
use crate::remedy::change::GuardChange;
use crate::remedy::demands::Demands;
use crate::remedy::drawn::Drawn;
use crate::remedy::drawn::widest;
use crate::remedy::kind::RemedyKind;
use crate::remedy::offered::Bay;
use crate::remedy::offered::Offered;
use crate::remedy::quantity::HowMany;
use crate::remedy::quantity::LabourPer;
use crate::remedy::quantity::MaterialPart;
use crate::remedy::quantity::PaintedArea;
use crate::remedy::quantity::gaps;
use crate::remedy::quantity::measured;
use crate::remedy::quantity::side;
use crate::remedy::quantity::sides;
use crate::remedy::topics::says;

/// No gap wider than the target, anywhere: whoever does the work tries every one.
pub(super) fn all_narrowed(drawn: &Drawn<'_, '_>, target: Length) -> GuardChange {
    let m = &drawn.measuring;
    let every = OpeningsCheckedWord::EveryOne.name();
    GuardChange::default()
        .instead(
            drawn.guard,
            Item::Opening,
            &m.drawn(target, m.gaps),
            "as drawn: no gap wider than this, every one tried with a block",
        )
        .instead(drawn.guard, Item::OpeningsChecked, every, "")
}

pub(super) fn bars_between(drawn: &Drawn<'_, '_>, target: Length) -> Offered {
    let m = &drawn.measuring;
    let width = side(drawn.guard, Item::BalusterSection);
    // a hole where a baluster is missing is no gap between two that stand
    let missing = says(drawn.guard, InfillLooseWord::Missing);
    let widest = widest(drawn).filter(|_| !missing);
    let others = says(drawn.guard, InfillWord::Other);
    let block = m.text(target);
    // how many go between is known where it is known how wide they are
    let (bars, leaves) = match (widest, width) {
        (Some(gap), Some(width)) if gap > target => {
            let count = bars_in(gap, target, width);
            let free = gap.nanometres() - count * width.nanometres();
            let left = m.up(Length::from_nanometres(free / (count + 1)));
            (
                Some(count),
                format!(
                    "; in the widest, {}, that leaves {}",
                    gap.readable_up(m.unit),
                    m.text(left)
                ),
            )
        }
        (Some(_) | None, _) => (None, String::new()),
    };
    let level = if says(drawn.guard, PlaceWord::Stair) {
        "measured level, "
    } else {
        ""
    };
    let how = match bars {
        Some(1) => "one more upright bar in".to_owned(),
        Some(count) => format!("{count} more upright bars in"),
        None => "more upright bars in".to_owned(),
    };
    let does = if others {
        format!(
            "Screw plates or upright bars over every hole that a block of {block} goes through; until it goes \
             through none."
        )
    } else {
        format!(
            "Put {how} every gap that a block of {block} goes through; {level}evenly spaced, screwed into the \
             top and the bottom rail{leaves}."
        )
    };
    let per_gap = bars.and_then(|bars| u32::try_from(bars).ok());
    let how_many = match (gaps(drawn.guard), per_gap) {
        (Ok(gaps), Some(bars)) => HowMany::from_to(bars, gaps.saturating_mul(bars)),
        (Ok(_), None) => HowMany::Write(vec![Item::Opening]),
        (Err(missing), _) => HowMany::Write(missing),
    };
    let what = width.map_or_else(
        || "upright bars, as thick as those that stand, 2 screws at each end".to_owned(),
        |width| format!("upright bars {} wide, 2 screws at each end", m.text(width)),
    );
    let mut offered = Offered::new(RemedyKind::BarsBetween, does, all_narrowed(drawn, target))
        .aiming(format!("gaps of {block} or less"))
        .of(MaterialPart {
            what,
            how_many,
            length: measured(drawn.guard, Item::BalusterLength),
            buy: None,
        })
        .taking(12, 24, LabourPer::Bar);
    if width.is_none() {
        offered.asks.push(Item::BalusterSection);
    }
    let upright = !says(drawn.guard, PlaceWord::Stair) && !others;
    if let (Some(width), Some(gap), true) = (width, widest, upright) {
        offered.bay = Some(Bay {
            plan: bay_plan(drawn, gap, width),
            between: vec![gap],
        });
    }
    offered
}

/// The fewest bars of this width that bring a gap down to the target.
fn bars_in(gap: Length, target: Length, width: Length) -> i64 {
    let over = (gap - target).nanometres();
    let each = (width + target).nanometres().max(1);
    (over + each - 1) / each
}

fn bay_plan(drawn: &Drawn<'_, '_>, clear: Length, baluster: Length) -> BayPlan {
    let limit = Demands::of(drawn.judged, Item::Opening)
        .most
        .unwrap_or(clear);
    BayPlan {
        clear,
        baluster,
        // the graduation is kept free as the target keeps it
        limit: GapLimit {
            length: limit - drawn.measuring.step,
            exactly: AtTheLimit::Fits,
        },
        ends: BayEnds::Gap,
        rake: None,
        graduation: drawn.measuring.step,
        tolerance: drawn.measuring.gaps,
        shrinkage: usual_drying(baluster),
    }
}

/// Strips that make bars thicker, where little is too much.
pub(super) fn strips(drawn: &Drawn<'_, '_>) -> Option<Offered> {
    let m = &drawn.measuring;
    let gap = widest(drawn)?;
    let target = drawn.filled_target(Item::Opening, Some(gap))?;
    let most = m.either(Length::sixty_fourths(48), 19);
    let thick = m.up(gap - target);
    // turned and other balusters give a strip no face
    let plain = drawn.guard.of(Item::Opening).all(|(_, observation)| {
        let value = observation.reading.as_ref().map(|reading| &reading.value);
        !matches!(value, Some(Value::Shape(found)) if matches!(found.shape, Shape::Turned(_)))
    });
    let missing = says(drawn.guard, InfillLooseWord::Missing);
    let others = says(drawn.guard, InfillWord::Other);
    if thick <= Length::ZERO || thick > most || others || missing || !plain {
        return None;
    }
    let says = format!(
        "Screw a strip to a bar or post in every gap that a block of {} goes through; to one face of each, a \
         strip {} thick and as high as the bars, not glued, since a child picks it off.",
        m.text(target),
        m.text(thick)
    );
    let how_many = match gaps(drawn.guard) {
        Ok(gaps) => HowMany::from_to(1, gaps),
        Err(missing) => HowMany::Write(missing),
    };
    Some(
        Offered::new(RemedyKind::Strips, says, all_narrowed(drawn, target))
            .aiming(format!("gaps of {} or less", m.text(target)))
            .of(MaterialPart {
                what: format!("strips {} thick, 3 screws each", m.text(thick)),
                how_many,
                length: measured(drawn.guard, Item::BalusterLength),
                buy: None,
            })
            .taking(6, 12, LabourPer::Strip),
    )
}

pub(super) fn laid_out_again(drawn: &Drawn<'_, '_>, target: Length) -> Offered {
    let m = &drawn.measuring;
    let width = side(drawn.guard, Item::BalusterSection);
    let post = side(drawn.guard, Item::PostSection);
    let between = measured(drawn.guard, Item::PostSpacing);
    let clear = match (between, post) {
        (Some(between), Some(post)) if between > post => Some(between - post),
        (Some(_) | None, _) => None,
    };
    let plan = match (clear, width) {
        (Some(clear), Some(width)) => Some(bay_plan(drawn, clear, width)),
        (Some(_) | None, _) => None,
    };
    let count = plan
        .and_then(|plan| plan.layout().ok())
        .and_then(|layout| u32::try_from(layout.marks.len()).ok());
    let balusters = count.map_or_else(String::new, |count| format!(": {count} in a bay"));
    let says = format!(
        "Take the balusters of a bay out and set them anew, no gap wider than {}{balusters}; fill \
         the old holes. One bay at a time, none left open overnight.",
        m.text(target)
    );
    let missing = [Item::BalusterSection, Item::PostSection, Item::PostSpacing];
    let missing: Vec<Item> = missing
        .into_iter()
        .filter(|item| drawn.guard.of(*item).next().is_none())
        .collect();
    let mut offered = Offered::new(RemedyKind::LaidOutAgain, says, all_narrowed(drawn, target))
        .aiming(format!("gaps of {} or less", m.text(target)))
        .of(MaterialPart {
            what: "balusters in a bay".to_owned(),
            how_many: count.map_or_else(|| HowMany::Write(missing.clone()), HowMany::Exactly),
            length: measured(drawn.guard, Item::BalusterLength),
            buy: None,
        })
        .taking(120, 240, LabourPer::Bay);
    offered.asks = missing;
    // there are no more old ones than new ones
    let length = measured(drawn.guard, Item::BalusterLength);
    if let (Some(count), Some(sides), Some(length)) =
        (count, sides(drawn.guard, Item::BalusterSection), length)
    {
        offered.paint = Some(PaintedArea::of(count, sides, length));
    }
    offered.bay = plan.map(|plan| Bay {
        plan,
        between: Vec::new(),
    });
    offered
}
