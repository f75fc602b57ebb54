//! Remedies of what fills a guard: gaps between uprights, loose and missing ones, gaps at
//! walls and edges, bars that a child climbs.

use crate::geometry::AtTheLimit;
use crate::geometry::BayEnds;
use crate::geometry::BayPlan;
use crate::geometry::GapLimit;
use crate::geometry::Shape;
use crate::items::InfillLooseWord;
use crate::items::InfillWord;
use crate::items::Item;
use crate::items::ItemWord;
use crate::items::LocationWord;
use crate::items::OpeningsCheckedWord;
use crate::items::PlaceWord;
use crate::quantities::Length;
use crate::reading::Value;
use crate::remedy::change::GuardChange;
use crate::remedy::demands::Demands;
use crate::remedy::kind::RemedyKind;
use crate::remedy::level::Drawn;
use crate::remedy::offered::Bay;
use crate::remedy::offered::Offered;
use crate::remedy::quantity::HowMany;
use crate::remedy::quantity::MaterialPart;
use crate::remedy::quantity::PaintedArea;
use crate::remedy::quantity::along;
use crate::remedy::quantity::exact;
use crate::remedy::quantity::gaps;
use crate::remedy::quantity::measured;
use crate::remedy::quantity::side;
use crate::remedy::quantity::sides;
use crate::remedy::topics::says;

/// Gaps of the infill that are too wide, the least change first.
pub(super) fn openings(drawn: &Drawn<'_, '_>) -> Vec<Offered> {
    let Some(target) = drawn.gap_target(Item::Opening) else {
        return Vec::new();
    };
    if says(drawn.guard, PlaceWord::Window) {
        return vec![window_stop(drawn, target)];
    }
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
        all.extend(strips(drawn, target));
    }
    match infill {
        Some(InfillWord::HorizontalBars | InfillWord::Cables) => all.extend(over_bars(drawn)),
        Some(InfillWord::Glass) => all.push(beside_glass(drawn, target)),
        Some(_) | None => all.push(sheet(drawn, RemedyKind::SheetScrewed)),
    }
    if infill == Some(InfillWord::Balusters) {
        all.push(laid_out_again(drawn, target));
    }
    all.push(new_bay(drawn, target));
    all
}

/// The widest opening that was measured with a tape or traced; `None` where some
/// opening is known by a ball alone.
fn widest(drawn: &Drawn<'_, '_>) -> Option<Length> {
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

/// No gap wider than the target, anywhere: whoever does the work tries every one.
fn all_narrowed(drawn: &Drawn<'_, '_>, target: Length) -> GuardChange {
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

fn bars_between(drawn: &Drawn<'_, '_>, target: Length) -> Offered {
    let m = &drawn.measuring;
    let width = side(drawn.guard, Item::BalusterSection);
    // a hole where a baluster is missing is no gap between two that stand
    let missing = says(drawn.guard, InfillLooseWord::Missing);
    let widest = widest(drawn).filter(|_| !missing);
    let others = says(drawn.guard, InfillWord::Other);
    let block = m.text(target);
    let (bars, leaves) = match widest {
        Some(gap) if gap > target => {
            let count = bars_in(gap, target, width.unwrap_or(Length::ZERO));
            let free = gap.nanometres() - count * width.unwrap_or(Length::ZERO).nanometres();
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
        Some(_) | None => (None, String::new()),
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
            "Screw plates or upright bars over every hole that a {block} block goes through; until it goes \
             through none."
        )
    } else {
        format!(
            "Put {how} every gap that a {block} block goes through; {level}evenly spaced, screwed into the \
             top and the bottom rail{leaves}."
        )
    };
    let per_gap = bars.and_then(|bars| u32::try_from(bars).ok());
    let how_many = match (gaps(drawn.guard), per_gap) {
        (Ok(gaps), Some(bars)) => HowMany::AtMost(gaps.saturating_mul(bars)),
        (Ok(_), None) => HowMany::Write(vec![Item::Opening]),
        (Err(missing), _) => HowMany::Write(missing),
    };
    let what = width.map_or_else(
        || "upright bars, as thick as those that stand".to_owned(),
        |width| format!("upright bars {} wide", m.text(width)),
    );
    let mut offered = Offered::new(RemedyKind::BarsBetween, does, all_narrowed(drawn, target))
        .aiming(format!("gaps of {block} or less"))
        .of(MaterialPart {
            what,
            how_many,
            length: measured(drawn.guard, Item::BalusterLength),
            buy: None,
        })
        .taking(12, 24, "a bar");
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
        shrinkage: Length::ZERO,
    }
}

/// Strips that make bars thicker, where little is too much.
fn strips(drawn: &Drawn<'_, '_>, target: Length) -> Option<Offered> {
    let m = &drawn.measuring;
    let gap = widest(drawn)?;
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
        "Screw a strip to a bar or post in every gap that a {} block goes through; to one face of each, a \
         strip {} thick and as high as the bars, not glued, since a child picks it off.",
        m.text(target),
        m.text(thick)
    );
    let how_many = match gaps(drawn.guard) {
        Ok(gaps) => HowMany::AtMost(gaps),
        Err(missing) => HowMany::Write(missing),
    };
    Some(
        Offered::new(RemedyKind::Strips, says, all_narrowed(drawn, target))
            .aiming(format!("gaps of {} or less", m.text(target)))
            .of(MaterialPart {
                what: format!("strips {} thick", m.text(thick)),
                how_many,
                length: measured(drawn.guard, Item::BalusterLength),
                buy: None,
            })
            .taking(6, 12, "a strip"),
    )
}

/// A closed, smooth face from just above the floor to the top rail.
fn closed_face(drawn: &Drawn<'_, '_>, infill: InfillWord, joint: Length) -> GuardChange {
    let m = &drawn.measuring;
    let low = m.either(Length::inches(1), 25);
    let none = "as drawn: covered by the new face";
    let mut change = GuardChange::default()
        .instead(
            drawn.guard,
            Item::Infill,
            infill.name(),
            "as drawn, on the inner face",
        )
        .instead(
            drawn.guard,
            Item::Opening,
            &m.drawn(joint, m.gaps),
            "as drawn: the joints",
        )
        .instead(
            drawn.guard,
            Item::OpeningsChecked,
            OpeningsCheckedWord::EveryOne.name(),
            "",
        )
        .instead(drawn.guard, Item::Foothold, "none", none)
        .without(drawn.guard, Item::LevelBarSpacing)
        .without(drawn.guard, Item::LevelMembersOn);
    if drawn.guard.of(Item::InfillLoose).next().is_some() {
        change = change.instead(
            drawn.guard,
            Item::InfillLoose,
            InfillLooseWord::No.name(),
            "as drawn",
        );
    }
    let shut = drawn.guard.of(Item::BottomGap).any(|(_, o)| {
        let value = o.reading.as_ref().map(|reading| &reading.value);
        value == Some(&Value::None)
    });
    if !shut && !says(drawn.guard, PlaceWord::Stair) {
        let gap = m.drawn(low, m.gaps);
        change = change.instead(
            drawn.guard,
            Item::BottomGap,
            &gap,
            "as drawn: below the new face",
        );
    }
    change
}

fn area(drawn: &Drawn<'_, '_>, what: &str) -> MaterialPart {
    let m = &drawn.measuring;
    let high = measured(drawn.guard, Item::Height);
    let high = high.map_or_else(String::new, |high| {
        format!(
            ", {} high",
            m.text(m.up(high - m.either(Length::inches(1), 25)))
        )
    });
    along(drawn.guard, format!("{what}{high}"))
}

fn sheet(drawn: &Drawn<'_, '_>, kind: RemedyKind) -> Offered {
    let m = &drawn.measuring;
    let joint = m.either(Length::sixty_fourths(16), 6);
    let says = format!(
        "Screw a clear sheet to the inner face, from {} above the floor up to the top rail; {} thick or \
         more, edges rounded, joints of {} at most: it closes the gaps and gives no foothold.",
        m.text(m.either(Length::inches(1), 25)),
        m.text(m.either(Length::sixty_fourths(16), 6)),
        m.text(joint)
    );
    let change = closed_face(drawn, InfillWord::Panel, joint);
    Offered::new(kind, says, change)
        .of(area(drawn, "clear sheet (polycarbonate or acrylic)"))
        .taking(60, 120, "a bay")
}

/// Boards upright over bars that a child climbs, a sheet, or a new bay.
pub(super) fn over_bars(drawn: &Drawn<'_, '_>) -> Vec<Offered> {
    let m = &drawn.measuring;
    let cables = says(drawn.guard, InfillWord::Cables);
    // no wider than a foot finds no hold in, however much the rules would allow
    let slot = m.either(Length::sixty_fourths(32), 12);
    let boards = format!(
        "Screw boards upright to the inner face, no gap between them wider than {}; from {} above the \
         floor up to the top rail, so that no foot finds hold; wet boards dry first.",
        m.text(slot),
        m.text(m.either(Length::inches(1), 25))
    );
    let change = closed_face(drawn, InfillWord::Balusters, slot);
    let kind = if cables {
        RemedyKind::UprightsForCables
    } else {
        RemedyKind::UprightBoards
    };
    let mut all = vec![
        Offered::new(kind, boards, change)
            .aiming(format!("gaps of {} or less", m.text(slot)))
            .of(area(drawn, "boards, upright, to cover the length"))
            .taking(60, 150, "a bay"),
    ];
    if !cables {
        all.push(sheet(drawn, RemedyKind::SheetOverBars));
    }
    if let Some(target) = drawn.gap_target(Item::Opening) {
        all.push(Offered {
            kind: if cables {
                RemedyKind::NewBay
            } else {
                RemedyKind::BayOfUprights
            },
            ..new_bay(drawn, target)
        });
    }
    all
}

/// A smooth face over infill that a foot finds hold on.
pub(super) fn covered(drawn: &Drawn<'_, '_>) -> Vec<Offered> {
    let solid = [InfillWord::Glass, InfillWord::Solid];
    if solid.iter().any(|infill| says(drawn.guard, *infill)) {
        return Vec::new();
    }
    vec![sheet(drawn, RemedyKind::SmoothSheet)]
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

fn laid_out_again(drawn: &Drawn<'_, '_>, target: Length) -> Offered {
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
        .taking(120, 240, "a bay");
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

fn new_bay(drawn: &Drawn<'_, '_>, target: Length) -> Offered {
    let m = &drawn.measuring;
    let says = format!(
        "Have the bay made anew with uprights no more than {} apart and no more than that above \
         the floor; new work keeps to today's rules.",
        m.text(target)
    );
    let mut change = closed_face(drawn, InfillWord::Balusters, target);
    change.new.retain(|new| new.item != Item::BottomGap);
    if !says_stair(drawn) {
        let bottom = drawn
            .gap_target(Item::BottomGap)
            .unwrap_or(target)
            .min(target);
        let gap = m.drawn(bottom, m.gaps);
        change = change.instead(drawn.guard, Item::BottomGap, &gap, "as drawn");
    }
    Offered::new(RemedyKind::NewBay, says, change)
        .aiming(format!("gaps of {} or less", m.text(target)))
        .taking(240, 480, "a bay")
}

fn says_stair(drawn: &Drawn<'_, '_>) -> bool {
    says(drawn.guard, PlaceWord::Stair)
}

fn window_stop(drawn: &Drawn<'_, '_>, target: Length) -> Offered {
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
        .taking(15, 40, "a window")
}

/// Loose or missing infill.
pub(super) fn loose(drawn: &Drawn<'_, '_>) -> Vec<Offered> {
    let change = GuardChange::default().instead(
        drawn.guard,
        Item::InfillLoose,
        InfillLooseWord::No.name(),
        "as drawn",
    );
    if says(drawn.guard, InfillLooseWord::Missing) {
        let does = "Put a new baluster where one is missing; of the same section, screwed at both ends. Count all bays, since one missing often means that all are held alike."
            .to_owned();
        return vec![
            Offered::new(RemedyKind::NewBaluster, does, change)
                .of(MaterialPart {
                    what: "balusters of the same section".to_owned(),
                    how_many: HowMany::Exactly(1),
                    length: measured(drawn.guard, Item::BalusterLength),
                    buy: None,
                })
                .taking(20, 40, "a baluster"),
        ];
    }
    let does =
        "Drive one new screw, top and bottom, through what is loose into the rail, beside the \
                old hole and with a pilot hole; what is split or only nailed is replaced."
            .to_owned();
    vec![Offered::new(RemedyKind::ScrewLoose, does, change).taking(6, 12, "a baluster")]
}

/// The gap between the last upright and a wall or post.
pub(super) fn at_wall(drawn: &Drawn<'_, '_>) -> Vec<Offered> {
    let m = &drawn.measuring;
    let Some(target) = drawn.gap_target(Item::EndGap) else {
        return Vec::new();
    };
    let change = GuardChange::default().instead(
        drawn.guard,
        Item::EndGap,
        &m.drawn(target, m.gaps),
        "as drawn, at its widest",
    );
    let gap = measured(drawn.guard, Item::EndGap).filter(|gap| *gap > target);
    let wide = gap.map_or_else(
        || "wide enough".to_owned(),
        |gap| format!("{} thick or more", m.text(m.up(gap - target))),
    );
    let aim = format!("{} or less", m.text(target));
    let strip = format!(
        "Screw an upright strip to the post or to wood in the wall, from the floor to the top rail; a strip \
         {wide}, so that {} or less stays at the widest place, never into plaster alone.",
        m.text(target)
    );
    let bar = format!(
        "Set a half baluster or a wall post in the gap, so that {} or less stays on either side.",
        m.text(target)
    );
    vec![
        Offered::new(RemedyKind::StripAtWall, strip, change.clone())
            .aiming(aim.clone())
            .taking(20, 45, "a strip"),
        Offered::new(RemedyKind::HalfBaluster, bar, change)
            .aiming(aim)
            .taking(30, 60, "a post"),
    ]
}

/// The gap between the floor's edge and a guard that is fixed outside it.
pub(super) fn at_edge(drawn: &Drawn<'_, '_>) -> Vec<Offered> {
    let m = &drawn.measuring;
    let Some(target) = drawn.gap_target(Item::EdgeGap) else {
        return Vec::new();
    };
    let says = format!(
        "Close the gap at the floor's edge with a strip on the edge or a rail set inward, to {} or \
         less; leave a way for water.",
        m.text(target)
    );
    let change = GuardChange::default().instead(
        drawn.guard,
        Item::EdgeGap,
        &m.drawn(target, m.gaps),
        "as drawn",
    );
    vec![
        Offered::new(RemedyKind::StripAtEdge, says, change)
            .aiming(format!("{} or less", m.text(target))),
    ]
}

/// A gap that is open at the top and narrows downward.
pub(super) fn vee(drawn: &Drawn<'_, '_>) -> Vec<Offered> {
    let says = "Fill the V to its full height with a board, or close it above by a bar at the top \
                rail; half filled it only becomes narrower."
        .to_owned();
    let change =
        GuardChange::default().instead(drawn.guard, Item::VOpening, "none", "as drawn: filled");
    vec![Offered::new(RemedyKind::VeeClosed, says, change)]
}

/// What bridges the time until an opening is closed: nothing that makes holes.
pub(super) fn bridges(drawn: &Drawn<'_, '_>) -> Vec<Offered> {
    let m = &drawn.measuring;
    let inside = says(drawn.guard, LocationWord::Inside);
    let kind = match (drawn.is_climbable(), inside) {
        (true, true) => RemedyKind::MeshOverBarsInside,
        (true, false) => RemedyKind::MeshOverBarsOutside,
        (false, true) => RemedyKind::MeshInside,
        (false, false) => RemedyKind::MeshOutside,
    };
    let mesh = m.either(Length::sixty_fourths(80), 30);
    let does = format!(
        "Tie a stiff mesh of {} squares or smaller to the inner face, from the floor up to the top \
         rail, a tie every {} at all edges, ends cut and turned outward; push it by hand every week.",
        m.text(mesh),
        m.text(m.either(Length::inches(6), 150))
    );
    let mut change = closed_face(drawn, InfillWord::Mesh, mesh);
    // a mesh covers no ledge
    change.new.retain(|new| new.item != Item::Foothold);
    change
        .gone
        .retain(|index| drawn.guard.observation(*index).item != Item::Foothold);
    vec![
        Offered::new(kind, does, change)
            .of(area(drawn, "stiff mesh"))
            .taking(30, 90, "a bay"),
    ]
}
