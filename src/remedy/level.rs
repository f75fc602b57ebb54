//! Remedies of heights: too low, the gap below, handrails, footholds.

use crate::items::HandrailWord;
use crate::items::InfillWord;
use crate::items::Item;
use crate::items::ItemWord;
use crate::items::PlaceWord;
use crate::judge::Judged;
use crate::quantities::Length;
use crate::reading::Foothold;
use crate::reading::Value;
use crate::remedy::aim::Measuring;
use crate::remedy::change::GuardChange;
use crate::remedy::demands::Demands;
use crate::remedy::kind::RemedyKind;
use crate::remedy::offered::Offered;
use crate::remedy::quantity::HowMany;
use crate::remedy::quantity::MaterialPart;
use crate::remedy::quantity::along;
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
    /// The widest gap that may be drawn; `None` where no rule bounds it.
    pub(super) fn gap_target(&self, item: Item) -> Option<Length> {
        let limit = Demands::of(self.judged, item).most?;
        let target = self.measuring.most(limit, self.measuring.gaps);
        (target > Length::ZERO).then_some(target)
    }

    /// Whether the infill is one that a child climbs.
    pub(super) fn is_climbable(&self) -> bool {
        let ladders = [InfillWord::HorizontalBars, InfillWord::Cables];
        ladders.iter().any(|infill| says(self.guard, *infill))
    }

    fn is_handrail(&self) -> bool {
        says(self.guard, HandrailWord::TopOfTheGuard)
    }
}

/// Below this an old top is a foothold for a small child (British Columbia Building Code
/// 9.8.8.6 as decisions of its Appeal Board quote it: 140 to 900 mm).
const FOOT: Length = Length::millimetres(900);

/// The lowest height that a tape read; `None` where none did.
fn lowest(guard: &Guard, item: Item) -> Option<Length> {
    let all = guard.of(item);
    all.filter_map(|(_, o)| exact(&o.reading.as_ref()?.value))
        .min()
}

/// The guard at its new height, with what goes up together with its top.
fn raised(drawn: &Drawn<'_, '_>, target: Length, by: Option<Length>) -> GuardChange {
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
            .taking(240, 480, "a bay"),
    );
    if drawn.is_handrail() {
        let own_rail: Vec<Offered> = all
            .iter()
            .filter_map(|one| with_wall_handrail(drawn, one))
            .collect();
        all.extend(own_rail);
    }
    if low.is_none() {
        for one in &mut all {
            one.asks.push(Item::Height);
        }
    }
    all
}

/// A window whose sill is low: upright bars over its lower part, never a ladder.
fn bars_at_window(drawn: &Drawn<'_, '_>, target: Length) -> Offered {
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
    .taking(60, 180, "a window")
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
    offered.parts.push(along(
        drawn.guard,
        "graspable handrail with brackets".to_owned(),
    ));
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
            .taking(30, 60, "a bay"),
    )
}

/// Widths in which boards are sold, dressed: 1x4 to 1x12, and their like in millimetres.
/// (common practice, no source)
const BOARDS: [(i32, i32); 5] = [(224, 90), (352, 140), (464, 185), (592, 235), (720, 285)];

fn board_above(drawn: &Drawn<'_, '_>, low: Length, target: Length) -> Offered {
    let m = &drawn.measuring;
    let gap = drawn.gap_target(Item::Opening).unwrap_or(Length::ZERO);
    let room = target - low;
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
         posts flush with the old rail's inner face{stays}.",
        m.text(target),
        m.text(wide)
    );
    let mut change = raised(drawn, target, Some(room));
    if left > m.gaps {
        change = opening_between(drawn, change, low, left);
    }
    Offered::new(RemedyKind::BoardAbove, says, change)
        .aiming(format!("{} or more", m.text(target)))
        .of(along(drawn.guard, format!("board {} wide", m.text(wide))))
        .taking(45, 90, "a bay")
}

/// An opening above an old rail, with the heights between which it lies.
fn opening_between(
    drawn: &Drawn<'_, '_>,
    change: GuardChange,
    from: Length,
    high: Length,
) -> GuardChange {
    let m = &drawn.measuring;
    let (low, top) = (m.down(from), m.up(from + high));
    let written = format!(
        "{} at {} to {}",
        m.drawn(high, m.gaps),
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
    if let Some(gap) = drawn.gap_target(Item::Opening)
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
        change = opening_between(drawn, change, from, open);
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
        .of(MaterialPart {
            how_many: u32::try_from(bars + 1).map_or(HowMany::Exactly(1), HowMany::Exactly),
            ..along(drawn.guard, format!("rails {} high", m.text(thick)))
        })
        .taking(90, 150, "a bay")
}

/// The top of a handrail that suits what is asked: 36 in or 914 mm fits a range of 34 to
/// 38 in, of 900 to 1000 mm, and is no foothold below 900 mm.
fn hand_height(drawn: &Drawn<'_, '_>) -> Option<Length> {
    let m = &drawn.measuring;
    let demands = Demands::of(drawn.judged, Item::HandrailHeight);
    let least = demands
        .least
        .map_or(Length::ZERO, |least| m.least(least, m.gaps));
    let most = demands
        .most
        .map_or(Length::feet(4), |most| m.most(most, m.gaps));
    let usual = m.either(Length::inches(36), 914);
    (least <= most).then(|| usual.max(least).min(most))
}

fn handrail_change(drawn: &Drawn<'_, '_>, height: Length) -> GuardChange {
    let m = &drawn.measuring;
    let size = m.either(Length::sixty_fourths(96), 38);
    let clear = m.either(Length::inches(2), 50);
    let note = "as drawn, of the new handrail";
    let mut change = GuardChange::default()
        .instead(
            drawn.guard,
            Item::Handrail,
            HandrailWord::Separate.name(),
            note,
        )
        .instead(
            drawn.guard,
            Item::HandrailHeight,
            &m.drawn(height, m.gaps),
            note,
        )
        .instead(drawn.guard, Item::HandrailShape, "round", note)
        .instead(
            drawn.guard,
            Item::HandrailThickness,
            &m.drawn(size, m.step),
            note,
        )
        .instead(
            drawn.guard,
            Item::HandrailClearance,
            &m.drawn(clear, m.gaps),
            note,
        )
        .instead(drawn.guard, Item::HandrailContinuous, "yes", note)
        .instead(drawn.guard, Item::HandrailEnds, "returned", note)
        .without(drawn.guard, Item::HandrailPerimeter)
        .without(drawn.guard, Item::HandrailGripWidth);
    let asked = |item: Item| Demands::of(drawn.judged, item).most.is_some();
    if asked(Item::HandrailProjection) {
        let stands_out = m.drawn(clear + size, m.gaps);
        change = change.instead(drawn.guard, Item::HandrailProjection, &stands_out, note);
    }
    if asked(Item::HandrailEndGap) {
        change = change.instead(drawn.guard, Item::HandrailEndGap, "none", note);
    }
    change
}

/// A handrail that is missing, on too few sides, or of a shape that no hand closes around.
pub(super) fn handrail(drawn: &Drawn<'_, '_>) -> Vec<Offered> {
    let m = &drawn.measuring;
    let Some(height) = hand_height(drawn) else {
        return Vec::new();
    };
    let does = format!(
        "Put up a round handrail on the wall the whole flight, its top {} above the noses; {} thick, {} clear \
         of the wall, its ends turned to the wall, brackets into studs or a backing board, at most {} apart.",
        m.text(height),
        m.text(m.either(Length::sixty_fourths(96), 38)),
        m.text(m.either(Length::inches(2), 50)),
        m.text(m.either(Length::inches(48), 1200))
    );
    let mut change = handrail_change(drawn, height);
    if drawn.guard.of(Item::HandrailSides).next().is_some() {
        change = change.instead(drawn.guard, Item::HandrailSides, "both sides", "as drawn");
    }
    let part = along(drawn.guard, "round handrail with brackets".to_owned());
    vec![
        Offered::new(RemedyKind::NewHandrail, does, change)
            .aiming(format!("its top at {}", m.text(height)))
            .of(part)
            .taking(90, 180, "a flight"),
    ]
}

/// The top of a guard that is the handrail, and higher than a handrail may be: never
/// lowered; a handrail of its own is put up instead.
pub(super) fn top_as_handrail(drawn: &Drawn<'_, '_>) -> Vec<Offered> {
    let m = &drawn.measuring;
    let Some(height) = hand_height(drawn) else {
        return Vec::new();
    };
    let wall = format!(
        "Do not lower the guard: leave its top where it is, and put up a handrail of its own on the wall, its top {} above the \
         noses, so that the top of the railing need not be one.",
        m.text(height)
    );
    let on_guard = format!(
        "Do not lower the guard: leave its top where it is, and put a handrail on the inner face, its top {} above the noses, on \
         slim brackets from below.",
        m.text(height)
    );
    let change = handrail_change(drawn, height);
    let deep = m.either(Length::sixty_fourths(96), 38);
    let step = format!(
        "{} high {} deep ± {}",
        m.text(height),
        m.text(deep),
        m.text(m.gaps)
    );
    let with_step = change.clone().also(
        Item::Foothold,
        &step,
        "as drawn: the handrail on the railing",
    );
    let rail = || along(drawn.guard, "round handrail with brackets".to_owned());
    vec![
        Offered::new(RemedyKind::WallHandrail, wall, change)
            .of(rail())
            .taking(90, 180, "a flight"),
        Offered::new(RemedyKind::GuardHandrail, on_guard, with_step)
            .of(rail())
            .taking(120, 240, "a flight"),
    ]
}

/// A separate handrail at a wrong height.
pub(super) fn handrail_height(drawn: &Drawn<'_, '_>) -> Vec<Offered> {
    let m = &drawn.measuring;
    if drawn.is_handrail() {
        return top_as_handrail(drawn);
    }
    let Some(height) = hand_height(drawn) else {
        return Vec::new();
    };
    let does = format!(
        "Move the handrail's brackets, so that its top stands at {} above the noses; screws into wood, \
         not into old holes.",
        m.text(height)
    );
    let change = GuardChange::default().instead(
        drawn.guard,
        Item::HandrailHeight,
        &m.drawn(height, m.gaps),
        "as drawn",
    );
    vec![
        Offered::new(RemedyKind::MoveBrackets, does, change)
            .aiming(format!("its top at {}", m.text(height)))
            .taking(20, 30, "a bracket"),
    ]
}

/// The gap under the bottom rail.
pub(super) fn bottom_gap(drawn: &Drawn<'_, '_>, item: Item) -> Vec<Offered> {
    let m = &drawn.measuring;
    let water = m.either(Length::sixty_fourths(32), 12);
    let target = drawn.gap_target(item);
    let Some(target) = target.filter(|target| *target >= water) else {
        return vec![closed_below(drawn, item)];
    };
    let gap = drawn
        .guard
        .of(item)
        .filter_map(|(_, o)| exact(&o.reading.as_ref()?.value))
        .max();
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
    let change =
        GuardChange::default().instead(drawn.guard, item, &m.drawn(water, m.gaps), "as drawn");
    let mut all = vec![
        Offered::new(RemedyKind::KickBoard, kick, change)
            .aiming(format!("{} or less", m.text(water)))
            .of(along(drawn.guard, board))
            .taking(30, 60, "a bay"),
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
                    .taking(20, 40, "a bay"),
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
            .taking(120, 240, "a bay"),
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
        .taking(45, 90, "a bay")
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
    let above = format!(
        "{} at {} to {}",
        m.drawn(open, m.gaps),
        m.text(top),
        m.text(m.up(top + open))
    );
    let step = format!(
        "{} high {} deep ± {}",
        m.text(top),
        m.text(thick),
        m.text(m.gaps)
    );
    let change = GuardChange::default()
        .instead(
            drawn.guard,
            item,
            &m.drawn(open, m.gaps),
            "as drawn: below the new bar",
        )
        .also(Item::Opening, &above, "as drawn: above the new bar")
        .without_none(drawn.guard, Item::Foothold)
        .also(Item::Foothold, &step, "as drawn: the new bar");
    Some(
        Offered::new(RemedyKind::SecondBottomRail, says, change)
            .aiming(format!("{} or less", m.text(open)))
            .of(along(drawn.guard, format!("bar {} high", m.text(thick))))
            .taking(40, 75, "a bay"),
    )
}

/// Something a foot finds hold on.
pub(super) fn foothold(drawn: &Drawn<'_, '_>) -> Vec<Offered> {
    let m = &drawn.measuring;
    let away = "Take away or cover what a foot finds hold on: a box, a hook, a ledge that carries \
                nothing. A rail that holds the railing together stays; ask before you take it."
        .to_owned();
    let gone =
        GuardChange::default().instead(drawn.guard, Item::Foothold, "none", "as drawn: taken away");
    let mut all =
        vec![Offered::new(RemedyKind::FootholdAway, away, gone).taking(10, 60, "a place")];
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
        all.push(Offered::new(RemedyKind::Fillet, says, change).taking(30, 60, "a ledge"));
    }
    all
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

/// Whether the guard is at a stair.
pub(super) fn is_stair(guard: &Guard) -> bool {
    says(guard, PlaceWord::Stair)
}
