//! What is known of a guard's shape, and nothing else: what nobody wrote is not drawn.

use crate::geometry::Risers;
use crate::items::InfillWord;
use crate::items::Item;
use crate::items::PlaceWord;
use crate::items::Verdict;
use crate::judge::Finding;
use crate::judge::Operator;
use crate::quantities::Length;
use crate::quantities::LengthUnit;
use crate::reading::Bound;
use crate::reading::StairReading;
use crate::reading::Value;
use crate::report::JudgedGuard;
use crate::report::ReportBasis;
use crate::report::matters::AskedBy;
use crate::report::matters::is_open_edge;
use crate::report::matters::says;
use crate::report::one_line;
use crate::report::reader;
use crate::survey::Observation;

/// What is drawn of a guard.
#[derive(Clone, Debug)]
pub(in crate::report) struct GuardDrawn {
    pub(in crate::report) name: String,
    /// There is none: an edge alone.
    pub(in crate::report) open_edge: bool,
    /// Heights are plumb above the nose of a step.
    pub(in crate::report) on_stair: bool,
    /// The top, at every place where it was measured; the lowest first.
    pub(in crate::report) tops: Vec<SizeDrawn>,
    /// What is asked of the top, the strictest of rules and of advice.
    pub(in crate::report) asked: Vec<SizeDrawn>,
    pub(in crate::report) bottom_gaps: Vec<SizeDrawn>,
    pub(in crate::report) footholds: Vec<FootholdDrawn>,
    /// What fills it, as it was written.
    pub(in crate::report) infill: Option<InfillWord>,
    pub(in crate::report) drop: Option<String>,
    pub(in crate::report) hole: Option<HoleDrawn>,
    /// In which units scale bars are.
    pub(in crate::report) unit: LengthUnit,
}

/// A length with what is written beside it.
#[derive(Clone, Debug)]
pub(in crate::report) struct SizeDrawn {
    pub(in crate::report) length: Length,
    pub(in crate::report) says: String,
}

/// Something to step on.
#[derive(Clone, Debug)]
pub(in crate::report) struct FootholdDrawn {
    pub(in crate::report) height: Length,
    pub(in crate::report) depth: Option<Length>,
    pub(in crate::report) says: String,
}

/// The hole that decides, with the balls asked for and the largest that passes.
#[derive(Clone, Debug)]
pub(in crate::report) struct HoleDrawn {
    pub(in crate::report) title: String,
    pub(in crate::report) shape: HoleShape,
    /// The largest ball that passes.
    pub(in crate::report) passes: Length,
    /// As it was written, with the card that it belongs to.
    pub(in crate::report) says: String,
    /// Each ball that must not pass, with who asks.
    pub(in crate::report) asked: Vec<SizeDrawn>,
    pub(in crate::report) unit: LengthUnit,
}

/// What lies around the hole.
#[derive(Clone, Copy, Debug)]
pub(in crate::report) enum HoleShape {
    /// Between two uprights.
    BetweenUprights,
    /// Between two level members, or one and the floor.
    BetweenLevels,
    /// At a step, under a rail at this plumb lift.
    AtStep {
        rise: Length,
        going: Length,
        lift: Length,
    },
    /// Of another shape, or known by a ball alone: the balls are drawn and no edge.
    Unknown,
}

impl GuardDrawn {
    /// What is known of a guard; `None` where there is nothing to draw. `cards` are
    /// the topics of its cards in their order.
    pub(in crate::report) fn of(
        entry: &JudgedGuard<'_>,
        basis: &ReportBasis<'_>,
        cards: &[Item],
    ) -> Option<GuardDrawn> {
        let guard = &entry.guard;
        let tie = Tie(cards);
        let mut unit = None;
        let mut lengths = |item: Item| -> Vec<SizeDrawn> {
            let mut found: Vec<SizeDrawn> = Vec::new();
            for (_, observation) in guard.of(item) {
                if let Some((length, own)) = measured(observation) {
                    unit.get_or_insert(own);
                    let says = tie.to(item, &one_line(&observation.written));
                    if found.iter().all(|other| other.says != says) {
                        found.push(SizeDrawn { length, says });
                    }
                }
            }
            found.sort_by_key(|size| size.length);
            found
        };
        let on_stair = says(guard, PlaceWord::Stair);
        let tops = lengths(Item::Height);
        // on a stair it is the lift of the rail, and no opening of its own
        let bottom_gaps = if on_stair {
            Vec::new()
        } else {
            lengths(Item::BottomGap)
        };
        let drop = guard.of(Item::Drop).find_map(|(_, observation)| {
            let value = &observation.reading.as_ref()?.value;
            (*value != Value::Unknown).then(|| one_line(&observation.written).into_owned())
        });
        let mut infill = guard.of(Item::Infill);
        let drawn = GuardDrawn {
            name: reader::name(guard),
            open_edge: is_open_edge(guard),
            on_stair,
            asked: asked(entry, basis),
            footholds: footholds(entry, &tie),
            infill: infill.find_map(|(_, observation)| observation.word()),
            hole: hole(entry, basis, &tie),
            unit: unit.unwrap_or(LengthUnit::Millimetre),
            tops,
            bottom_gaps,
            drop,
        };
        let nothing = drawn.tops.is_empty()
            && drawn.bottom_gaps.is_empty()
            && drawn.footholds.is_empty()
            && drawn.hole.is_none()
            && !drawn.open_edge;
        (!nothing).then_some(drawn)
    }
}

/// Which card a thing measured belongs to.
struct Tie<'c>(&'c [Item]);

impl Tie<'_> {
    /// `33 1/2 in ②`
    fn to(&self, item: Item, says: &str) -> String {
        let of_topic = |topic: &Item| item.topic() == *topic;
        match self.0.iter().position(of_topic) {
            Some(place) => format!("{says} {}", reader::tie(place + 1)),
            None => says.to_owned(),
        }
    }
}

/// A length that was measured as such: no bound, no ball.
fn measured(observation: &Observation) -> Option<(Length, LengthUnit)> {
    if let Value::Measure(measure) = &observation.reading.as_ref()?.value
        && measure.bound == Bound::Exactly
    {
        Some((measure.length, measure.unit))
    } else {
        None
    }
}

/// What asks of a finding's item, rules and advice apart.
fn who(by: AskedBy) -> &'static str {
    match by {
        AskedBy::Rules => "rules",
        AskedBy::Advice => "advice",
        AskedBy::Warning => "not read",
    }
}

/// The strictest height that rules ask for, and that advice asks for.
fn asked(entry: &JudgedGuard<'_>, basis: &ReportBasis<'_>) -> Vec<SizeDrawn> {
    let mut found: Vec<(AskedBy, SizeDrawn)> = Vec::new();
    for finding in &entry.judged.findings {
        let by = AskedBy::of(finding, basis);
        let limit = finding.limit.as_ref().filter(|limit| {
            matches!(limit.operator, Operator::AtLeast | Operator::Above)
                && finding.item == Item::Height
                && by != AskedBy::Warning
        });
        let Some(length) = limit.and_then(|limit| limit.value) else {
            continue;
        };
        let size = SizeDrawn {
            length,
            says: format!("asked: {} ({})", reader::asked(finding), who(by)),
        };
        match found.iter_mut().find(|(known, _)| *known == by) {
            Some((_, known)) if known.length < length => *known = size,
            Some(_) => {}
            None => found.push((by, size)),
        }
    }
    found.sort_by_key(|(by, _)| *by);
    found.into_iter().map(|(_, size)| size).collect()
}

fn footholds(entry: &JudgedGuard<'_>, tie: &Tie<'_>) -> Vec<FootholdDrawn> {
    let mut found: Vec<FootholdDrawn> = Vec::new();
    for (_, observation) in entry.guard.of(Item::Foothold) {
        let Some(reading) = &observation.reading else {
            continue;
        };
        if let Value::Foothold(foothold) = &reading.value {
            let up = foothold.height.exact(foothold.unit);
            found.push(FootholdDrawn {
                height: foothold.height,
                depth: foothold.depth,
                says: tie.to(Item::Foothold, &format!("{up} up")),
            });
        }
    }
    found.sort_by_key(|foothold| foothold.height);
    found.dedup_by_key(|foothold| foothold.height);
    found
}

/// Holes that a page can show, in the order in which they are looked for.
const HOLES: [Item; 6] = [
    Item::StairTriangle,
    Item::Opening,
    Item::EndGap,
    Item::BottomGap,
    Item::RiserOpening,
    Item::EdgeGap,
];

/// The hole that comes out worst, and of those the one with least to spare.
fn hole(entry: &JudgedGuard<'_>, basis: &ReportBasis<'_>, tie: &Tie<'_>) -> Option<HoleDrawn> {
    let findings = entry.judged.findings.iter();
    let of_a_hole = findings.filter(|finding| {
        HOLES.contains(&finding.item)
            && finding.verdict != Verdict::DoesNotApply
            && ball(finding).is_some()
            && finding.measured.as_ref().is_some_and(|m| m.value.is_some())
    });
    let decides = of_a_hole.min_by_key(|finding| {
        let by = AskedBy::of(finding, basis);
        (by == AskedBy::Warning, finding.verdict, by, finding.margin)
    })?;
    let observation = entry.guard.observation(*decides.readings.first()?);
    let passes = decides.measured.as_ref()?.value?;
    let unit = decides.measured.as_ref()?.unit?;
    let item = decides.item;
    let mut asked: Vec<SizeDrawn> = Vec::new();
    for finding in entry.judged.findings.iter().filter(|f| f.item == item) {
        let by = AskedBy::of(finding, basis);
        let applies = finding.verdict != Verdict::DoesNotApply && by != AskedBy::Warning;
        if let Some((length, written)) = ball(finding).filter(|_| applies) {
            let says = format!("{written}: {}", who(by));
            if asked.iter().all(|other| other.says != says) {
                asked.push(SizeDrawn { length, says });
            }
        }
    }
    asked.sort_by_key(|size| size.length);
    Some(HoleDrawn {
        title: reader::title(item),
        shape: shape(item, observation, entry),
        passes,
        says: tie.to(item, &one_line(&observation.written)),
        asked,
        unit,
    })
}

/// The ball that must not pass, as written.
fn ball(finding: &Finding<'_>) -> Option<(Length, String)> {
    let limit = finding.limit.as_ref()?;
    let asks = matches!(limit.operator, Operator::StopsBall | Operator::AtMost);
    let length = limit.value.filter(|_| asks)?;
    Some((length, one_line(&limit.written).into_owned()))
}

fn shape(item: Item, observation: &Observation, entry: &JudgedGuard<'_>) -> HoleShape {
    let Some(reading) = &observation.reading else {
        return HoleShape::Unknown;
    };
    let between_levels = matches!(item, Item::BottomGap | Item::RiserOpening)
        || says(&entry.guard, InfillWord::HorizontalBars)
        || says(&entry.guard, InfillWord::Cables);
    if let Value::StairTriangle(stair) = &reading.value {
        return at_step(stair);
    }
    match (measured(observation), between_levels) {
        (None, _) => HoleShape::Unknown,
        (Some(_), true) => HoleShape::BetweenLevels,
        (Some(_), false) => HoleShape::BetweenUprights,
    }
}

/// A step is drawn where all of it was written, and its nose is plain.
fn at_step(stair: &StairReading) -> HoleShape {
    let plain = stair.nosing == Length::ZERO && stair.risers == Risers::Closed;
    match stair.lift.filter(|_| plain) {
        Some(lift) => HoleShape::AtStep {
            rise: stair.rise,
            going: stair.going,
            lift,
        },
        None => HoleShape::Unknown,
    }
}
