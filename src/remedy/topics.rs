//! What of a guard falls short, gathered by what one remedy puts right.

use crate::items::ConditionWord;
use crate::items::Hazard;
use crate::items::InfillLooseWord;
use crate::items::InfillWord;
use crate::items::Item;
use crate::items::ItemWord;
use crate::items::LocationWord;
use crate::items::MovesWhenPushedWord;
use crate::items::PlaceWord;
use crate::items::PostFasteningWord;
use crate::items::SharedWord;
use crate::items::TopOfStairsGateWord;
use crate::items::Verdict;
use crate::judge::Judged;
use crate::judge::Operator;
use crate::quantities::Length;
use crate::reading::Bound;
use crate::reading::Value;
use crate::remedy::proof::RuleKey;
use crate::remedy::shortfall::HowSoon;
use crate::remedy::shortfall::ShortfallKind;
use crate::survey::Guard;

/// One thing that falls short, with every rule that says so.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ShortTopic {
    /// What kind of shortfall it is; `None` where none here knows it.
    pub kind: Option<ShortfallKind>,
    /// The item under which it is spoken of.
    pub item: Item,
    /// The findings that fall short.
    pub short: Vec<RuleKey>,
    /// Whether a building rule is among them; else it is advice alone.
    pub binding: bool,
    /// Whether it is a danger that was seen.
    pub danger: bool,
    /// Whether it rests on the load path, which no drawing here can prove.
    pub of_loads: bool,
}

impl ShortTopic {
    /// How soon it should be put right.
    #[must_use]
    pub fn soon(&self, guard: &Guard) -> HowSoon {
        let Some(kind) = self.kind else {
            return HowSoon::Soon;
        };
        let [child_drop, child, drop, else_] = kind.row().soon;
        match (small_child(guard), high_drop(guard)) {
            (true, true) => child_drop,
            (true, false) => child,
            (false, true) => drop,
            (false, false) => else_,
        }
    }
}

/// Whether a child under five lives or visits, or many households use the place.
fn small_child(guard: &Guard) -> bool {
    let young = guard.of(Item::Children).any(|(_, observation)| {
        let reading = observation.reading.as_ref();
        reading.is_some_and(|reading| matches!(reading.value, Value::Age(age) if age.months() < 60))
    });
    young
        || guard
            .of(Item::Shared)
            .any(|(_, o)| o.word() == Some(SharedWord::Yes))
}

/// Whether the drop is above 30 in, or nobody wrote it.
fn high_drop(guard: &Guard) -> bool {
    let mut drops = guard.of(Item::Drop).peekable();
    drops.peek().is_none()
        || drops.any(|(_, observation)| {
            let value = observation.reading.as_ref().map(|reading| &reading.value);
            match value {
                Some(Value::Measure(measure)) => {
                    measure.length > Length::inches(30) || measure.bound == Bound::Over
                }
                Some(_) | None => true,
            }
        })
}

/// Whether one of the item's readings is this word.
pub(super) fn says<W: ItemWord>(guard: &Guard, word: W) -> bool {
    guard.of(W::ITEM).any(|(_, o)| o.word() == Some(word))
}

/// Outdoors above one storey (3 m or 10 ft; common practice, no source), as far as
/// anybody wrote.
#[must_use]
pub fn is_high_outdoors(guard: &Guard) -> bool {
    let out = [
        PlaceWord::Balcony,
        PlaceWord::Deck,
        PlaceWord::Terrace,
        PlaceWord::Roof,
    ];
    let outside = says(guard, LocationWord::Outside)
        || (!says(guard, LocationWord::Inside) && out.iter().any(|place| says(guard, *place)));
    let high = guard.of(Item::Drop).any(|(_, observation)| {
        let value = observation.reading.as_ref().map(|reading| &reading.value);
        matches!(value, Some(Value::Measure(m)) if m.length > Length::feet(10))
    });
    outside && high
}

/// Everything that falls short, what holds the guard first, then what has to be there
/// before the rest.
#[must_use]
pub fn topics(guard: &Guard, judged: &Judged<'_>) -> Vec<ShortTopic> {
    let mut topics: Vec<ShortTopic> = Vec::new();
    for seen in &judged.dangers {
        let kind = of_item(guard, seen.item, None);
        add(&mut topics, guard, kind, seen.item).danger = true;
    }
    for finding in &judged.findings {
        if finding.verdict != Verdict::FallsShort || !finding.counts() {
            continue;
        }
        let item = if finding.chain.is_some() {
            Item::PostFastening
        } else {
            finding.item
        };
        let operator = finding.limit.as_ref().map(|limit| limit.operator);
        let kind = if finding.chain.is_some() {
            Some(ShortfallKind::PostFixing)
        } else {
            of_item(guard, item, operator)
        };
        let topic = add(&mut topics, guard, kind, item);
        topic.short.push(RuleKey::of(finding));
        topic.binding |= finding.binding;
        topic.of_loads |= finding.chain.is_some();
    }
    for topic in &mut topics {
        if topic.item == Item::Opening {
            topic.kind = Some(of_gap(guard, judged, topic));
        }
    }
    topics.sort_by_key(|topic| (order(topic.item), topic.item));
    topics
}

fn add<'t>(
    topics: &'t mut Vec<ShortTopic>,
    guard: &Guard,
    kind: Option<ShortfallKind>,
    item: Item,
) -> &'t mut ShortTopic {
    let item = spoken_of(guard, item, kind);
    let at = topics
        .iter()
        .position(|topic| topic.item == item && (topic.kind == kind || item != Item::Height));
    let at = at.unwrap_or_else(|| {
        topics.push(ShortTopic {
            kind,
            item,
            short: Vec::new(),
            binding: false,
            danger: false,
            of_loads: false,
        });
        topics.len() - 1
    });
    &mut topics[at]
}

/// Items that one remedy puts right stand under one.
fn spoken_of(guard: &Guard, item: Item, kind: Option<ShortfallKind>) -> Item {
    let climbable = [InfillWord::HorizontalBars, InfillWord::Cables]
        .iter()
        .any(|infill| says(guard, *infill));
    match (item, kind) {
        (_, Some(ShortfallKind::PostFixing)) => Item::PostFastening,
        (Item::Infill | Item::LevelBarSpacing | Item::LevelMembersOn, _) => Item::Infill,
        (Item::Foothold, _) if climbable => Item::Infill,
        (_, Some(ShortfallKind::RailEndLoose)) => Item::RailEndFastening,
        (_, Some(ShortfallKind::NoHandrail)) => Item::Handrail,
        _ => item,
    }
}

fn of_gap(guard: &Guard, judged: &Judged<'_>, topic: &ShortTopic) -> ShortfallKind {
    if says(guard, PlaceWord::Window) {
        return ShortfallKind::WindowOpens;
    }
    let of_infill = [
        (InfillWord::Cables, ShortfallKind::Cables),
        (InfillWord::UprightCables, ShortfallKind::Cables),
        (InfillWord::HorizontalBars, ShortfallKind::LevelBars),
        (InfillWord::Glass, ShortfallKind::GlassGap),
    ];
    if let Some((_, kind)) = of_infill.iter().find(|(infill, _)| says(guard, *infill)) {
        return *kind;
    }
    let mut short = judged.findings.iter().filter(|finding| {
        finding.verdict == Verdict::FallsShort && topic.short.contains(&RuleKey::of(finding))
    });
    let wide = short.clone().any(|finding| {
        let value = finding
            .measured
            .as_ref()
            .and_then(|measured| measured.value);
        value.is_some_and(|value| value >= Length::inches(6))
    });
    if wide {
        ShortfallKind::Hole
    } else if topic.binding {
        ShortfallKind::Gap
    } else if short.any(|finding| finding.rule.hazard == Hazard::FallThrough) {
        ShortfallKind::GapForAChild
    } else {
        ShortfallKind::GapForAHead
    }
}

/// What holds first, then what must be there before the rest is.
fn order(item: Item) -> usize {
    const FIRST: [Item; 10] = [
        Item::MovesWhenPushed,
        Item::Condition,
        Item::PostFastening,
        Item::RailEndFastening,
        Item::Guard,
        Item::InfillLoose,
        Item::Infill,
        Item::Opening,
        Item::Height,
        Item::BottomGap,
    ];
    let at = FIRST.iter().position(|first| *first == item);
    at.unwrap_or(FIRST.len())
}

/// The kind of shortfall that an item's is.
fn of_item(guard: &Guard, item: Item, operator: Option<Operator>) -> Option<ShortfallKind> {
    let too_much = matches!(operator, Some(Operator::AtMost | Operator::Below));
    let (_, kind) = KINDS.iter().find(|(items, _)| items.contains(&item))?;
    let special = [
        (
            S::TooLow,
            item == Item::Height && too_much,
            S::TopAsHandrail,
        ),
        // at a window one shuts it tonight, and no railing is raised
        (
            S::TooLow,
            item == Item::Height && says(guard, PlaceWord::Window),
            S::LowSill,
        ),
        (
            S::TooLow,
            item == Item::Height && far_too_low(guard),
            S::FarTooLow,
        ),
        (
            S::LooseInfill,
            says(guard, InfillWord::Glass),
            S::GlassLoose,
        ),
        (
            S::LooseInfill,
            says(guard, InfillLooseWord::Missing),
            S::MissingInfill,
        ),
        (
            S::MovesALittle,
            says(guard, MovesWhenPushedWord::ALot),
            S::MovesALot,
        ),
        (
            S::PostRotten,
            says(guard, ConditionWord::BrokenGlass),
            S::GlassLoose,
        ),
        (
            S::PostFixing,
            says(guard, PostFasteningWord::Missing),
            S::PostRotten,
        ),
        (
            S::NoGate,
            says(guard, TopOfStairsGateWord::Pressed),
            S::PressedGate,
        ),
    ];
    let special = special.iter().find(|(of, so, _)| of == kind && *so);
    Some(special.map_or(*kind, |(_, _, special)| *special))
}

use ShortfallKind as S;

/// Items, and the kind of shortfall that theirs is.
const KINDS: &[(&[Item], ShortfallKind)] = &[
    (&[Item::Guard], S::NoGuard),
    (&[Item::Height], S::TooLow),
    (
        &[Item::HeightAboveSeat, Item::StepBeside, Item::StepOutside],
        S::FixedStep,
    ),
    (&[Item::Opening], S::Gap),
    (&[Item::EndGap], S::GapAtWall),
    (&[Item::EdgeGap], S::GapAtEdge),
    (&[Item::VOpening], S::VOpen),
    (&[Item::BottomGap, Item::GapAboveSolidPart], S::BottomGap),
    (&[Item::StairTriangle], S::StairTriangle),
    (&[Item::RiserOpening], S::RiserOpening),
    (&[Item::Foothold], S::Foothold),
    (
        &[Item::Infill, Item::LevelBarSpacing, Item::LevelMembersOn],
        S::LevelBars,
    ),
    (&[Item::ThingToClimb], S::ThingToClimb),
    (&[Item::InfillLoose], S::LooseInfill),
    (&[Item::MovesWhenPushed], S::MovesALittle),
    (&[Item::Condition], S::PostRotten),
    (
        &[
            Item::PostFastening,
            Item::FastenedTo,
            Item::NotchedPost,
            Item::PostSpacing,
            Item::PostSection,
        ],
        S::PostFixing,
    ),
    (
        &[Item::RailEndFastening, Item::RailEndFasteners],
        S::RailEndLoose,
    ),
    (
        &[
            Item::Handrail,
            Item::HandrailSides,
            Item::HandrailShape,
            Item::HandrailThickness,
            Item::HandrailPerimeter,
            Item::HandrailClearance,
            Item::HandrailExtension,
            Item::HandrailContinuous,
            Item::HandrailEnds,
            Item::HandrailProjection,
            Item::HandrailEndGap,
            Item::HandrailGripWidth,
            Item::HandrailBottomExtension,
            Item::HandrailReach,
        ],
        S::NoHandrail,
    ),
    (&[Item::HandrailHeight], S::HandrailHeight),
    (&[Item::TopOfStairsGate], S::NoGate),
    (&[Item::BottomOfStairsGate], S::NoGateBelow),
    (
        &[
            Item::GateHeight,
            Item::GateGap,
            Item::GateBottomGap,
            Item::LatchHeight,
            Item::GateClosesItself,
            Item::GateOpens,
        ],
        S::PoolGate,
    ),
    (
        &[
            Item::SillHeight,
            Item::SillTopHeight,
            Item::SillAboveGround,
            Item::GuardThickness,
        ],
        S::LowSill,
    ),
    (&[Item::WindowStop], S::WindowOpens),
    (&[Item::Paint], S::FlakingPaint),
];

fn far_too_low(guard: &Guard) -> bool {
    guard.of(Item::Height).any(|(_, observation)| {
        let value = observation.reading.as_ref().map(|reading| &reading.value);
        matches!(value, Some(Value::Measure(m)) if m.length < Length::inches(30))
    })
}
