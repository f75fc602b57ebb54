//! Whether the examples of a rule straddle its limits: one at the limit, one
//! close to it on the side where the verdict is another.

use std::ops::Range;

use crate::geometry::Shape;
use crate::items::Item;
use crate::items::Verdict;
use crate::quantities::Length;
use crate::reading::Bound;
use crate::reading::Reading;
use crate::reading::Value;
use crate::rules::codes::RuleFault;
use crate::rules::demand::Bounds;
use crate::rules::demand::Demand;
use crate::rules::demand::FootholdDemand;
use crate::rules::demand::Ladder;
use crate::rules::demand::Limit;
use crate::rules::demand::LoadDemand;
use crate::rules::demand::Member;
use crate::rules::demand::OpeningDemand;
use crate::rules::demand::Subject;
use crate::rules::faults::Faults;
use crate::rules::model::Condition;
use crate::rules::model::Example;
use crate::rules::model::Rule;
use crate::rules::model::Ruleset;
use crate::rules::model::Test;

/// What the examples of a rule lack.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct StraddleGap {
    /// The rule's id.
    pub rule: String,
    /// What is missing: `no example just below 36 in`.
    pub says: String,
}

/// What the examples of a ruleset's rules lack: for each limit of each check
/// one at exactly the limit and one close to it, on the side where the verdict
/// is another; and for each rule one that meets and one that does not. The
/// conditions' limits count where a check has none.
///
/// Close is within 2 mm (1/16 in lies within), or the next whole number.
#[must_use]
pub fn straddle_gaps(ruleset: &Ruleset) -> Vec<StraddleGap> {
    ruleset
        .rules
        .iter()
        .flat_map(|rule| {
            gaps(rule).into_iter().map(|says| StraddleGap {
                rule: rule.id.clone(),
                says,
            })
        })
        .collect()
}

/// Warns where the examples of a rule do not straddle its limits.
pub(super) fn warn(rule: &Rule, at: &Range<usize>, faults: &mut Faults) {
    if rule.examples.is_empty() {
        faults.warning(
            RuleFault::ExamplesMissing,
            at,
            format!("the rule `{}` has no examples", rule.id),
            "add [[rule.example]] with given and expect, on both sides of the limit and at it",
        );
        return;
    }
    let gaps = gaps(rule);
    if !gaps.is_empty() {
        faults.warning(
            RuleFault::ExamplesMissing,
            at,
            format!(
                "the examples of `{}` leave a gap: {}",
                rule.id,
                gaps.join("; ")
            ),
            "add [[rule.example]] with given and expect for each",
        );
    }
}

/// Close to a length limit: 2 mm, so that 1/16 in is close as well.
const CLOSE: i64 = 2_000_000;

#[derive(Clone, Copy)]
enum OtherSide {
    Above,
    Below,
}

/// Which number of a reading is compared.
#[derive(Clone, Copy)]
enum PointOf {
    /// How far one foothold of an example is above the next lower one.
    Apart,
    Depth,
    /// The longer side of a rectangle.
    Long,
    Size,
}

/// A limit as a whole number: nanometres, a count, months or a year.
struct LimitEdge {
    items: Vec<Item>,
    of: PointOf,
    at: i64,
    /// The side on which the verdict is another than at the limit itself.
    other: OtherSide,
    close: i64,
    written: String,
}

fn gaps(rule: &Rule) -> Vec<String> {
    let mut gaps = Vec::new();
    let mut edges: Vec<LimitEdge> = rule
        .checks
        .iter()
        .flat_map(|check| demand_edges(check.subject, &check.demand))
        .collect();
    if edges.is_empty() {
        let all = rule.when_any.iter().chain(&rule.unless).flatten();
        edges = rule
            .when
            .iter()
            .chain(all)
            .flat_map(condition_edges)
            .collect();
    }
    for edge in &edges {
        let points = points(rule, edge);
        if !points.contains(&edge.at) {
            gaps.push(format!("no example at exactly {}", edge.written));
        }
        let (side, close): (&str, &dyn Fn(i64) -> bool) = match edge.other {
            OtherSide::Above => ("above", &|p| p > edge.at && p - edge.at <= edge.close),
            OtherSide::Below => ("below", &|p| p < edge.at && edge.at - p <= edge.close),
        };
        if !points.into_iter().any(close) {
            gaps.push(format!("no example just {side} {}", edge.written));
        }
    }
    let expected =
        |verdicts: &[Verdict]| rule.examples.iter().any(|e| verdicts.contains(&e.expect));
    let mut of_loads = rule.loads().peekable();
    if of_loads.peek().is_some() {
        gaps.extend(of_loads.flat_map(|demand| load_gaps(rule, demand)));
        return gaps;
    }
    // a rule that cannot be met where it applies shows where it does not
    if !expected(&[Verdict::Meets, Verdict::DoesNotApply]) {
        gaps.push("no example that meets".to_owned());
    }
    if !expected(&[Verdict::FallsShort, Verdict::NotSettled]) {
        gaps.push("no example that falls short".to_owned());
    }
    gaps
}

/// A load rule shows the moment of each member that its loads bear on, and one
/// chain that falls short. A strength is never met, so that no example shows it.
fn load_gaps(rule: &Rule, demand: &LoadDemand) -> Vec<String> {
    let along = demand.concentrated.is_some() || demand.line.is_some();
    let wanted = [
        (Member::Post, along),
        (Member::Rail, demand.line_down.is_some()),
        (Member::Infill, demand.infill.is_some()),
    ];
    let states = |member: Member| {
        let mut moments = rule.examples.iter().flat_map(|example| &example.moments);
        moments.any(|(of, _)| *of == member)
    };
    let missing = wanted
        .into_iter()
        .filter(|(member, wanted)| *wanted && !states(*member));
    let mut gaps: Vec<String> = missing
        .map(|(member, _)| format!("no example with the moment of the {}", member.name()))
        .collect();
    if !rule
        .examples
        .iter()
        .any(|e| e.expect == Verdict::FallsShort)
    {
        gaps.push("no example that falls short".to_owned());
    }
    gaps
}

fn demand_edges(subject: Subject, demand: &Demand) -> Vec<LimitEdge> {
    let items = match subject {
        Subject::AnyOpening | Subject::Item(_) => subject.looks_at(),
        Subject::LoadPath => &[],
    };
    match demand {
        Demand::Count(bounds) => whole_edges(items, bounds, 1, |n| i64::from(*n), u32::to_string),
        Demand::Foothold(demand) => foothold_edges(items, demand),
        Demand::Length(bounds) => length_edges(items, bounds),
        Demand::Opening(demand) => opening_edges(items, demand),
        Demand::Load(_) | Demand::VOpening(_) | Demand::Words { .. } => Vec::new(),
    }
}

fn condition_edges(condition: &Condition) -> Vec<LimitEdge> {
    let items = [condition.item];
    match &condition.test {
        Test::Age(bounds) => whole_edges(
            &items,
            bounds,
            1,
            |age| i64::from(age.months()),
            ToString::to_string,
        ),
        Test::Count(bounds) => whole_edges(&items, bounds, 1, |n| i64::from(*n), u32::to_string),
        Test::Length(bounds) => length_edges(&items, bounds),
        Test::Years(bounds) => whole_edges(&items, bounds, 1, |y| i64::from(*y), i32::to_string),
        Test::OneOf(_) | Test::NoneOf(_) => Vec::new(),
    }
}

fn length_edges(items: &[Item], bounds: &Bounds<Limit>) -> Vec<LimitEdge> {
    whole_edges(
        items,
        bounds,
        CLOSE,
        |limit| limit.length.nanometres(),
        |limit| limit.written.clone(),
    )
}

fn whole_edges<T>(
    items: &[Item],
    bounds: &Bounds<T>,
    close: i64,
    size: fn(&T) -> i64,
    written: fn(&T) -> String,
) -> Vec<LimitEdge> {
    // at the limit of at-least the verdict is the good one, so the other is below; and so on
    let sides = [
        (&bounds.at_least, OtherSide::Below),
        (&bounds.at_most, OtherSide::Above),
        (&bounds.above, OtherSide::Above),
        (&bounds.below, OtherSide::Below),
    ];
    sides
        .into_iter()
        .filter_map(|(bound, other)| {
            bound.as_ref().map(|bound| LimitEdge {
                items: items.to_vec(),
                of: PointOf::Size,
                at: size(bound),
                other,
                close,
                written: written(bound),
            })
        })
        .collect()
}

fn edge(items: &[Item], of: PointOf, limit: &Limit, other: OtherSide) -> LimitEdge {
    LimitEdge {
        items: items.to_vec(),
        of,
        at: limit.length.nanometres(),
        other,
        close: CLOSE,
        written: limit.written.clone(),
    }
}

fn opening_edges(items: &[Item], demand: &OpeningDemand) -> Vec<LimitEdge> {
    let band = demand.not_within.as_ref();
    let sides = [
        (demand.stops_ball.as_ref(), OtherSide::Below),
        (demand.at_most.as_ref(), OtherSide::Above),
        (demand.at_least.as_ref(), OtherSide::Below),
        (band.map(|(above, _)| above), OtherSide::Above),
        (band.map(|(_, below)| below), OtherSide::Below),
        (demand.entraps.as_ref().map(|e| &e.short), OtherSide::Below),
        (demand.entraps.as_ref().map(|e| &e.head), OtherSide::Below),
    ];
    let long = demand.entraps.as_ref().map(|e| &e.long);
    sides
        .into_iter()
        .filter_map(|(limit, other)| limit.map(|limit| edge(items, PointOf::Size, limit, other)))
        .chain(long.map(|long| edge(items, PointOf::Long, long, OtherSide::Below)))
        .collect()
}

fn foothold_edges(items: &[Item], demand: &FootholdDemand) -> Vec<LimitEdge> {
    let zone = demand.none_within.iter();
    let mut edges: Vec<LimitEdge> = zone
        .flat_map(|zone| {
            [
                edge(items, PointOf::Size, &zone.from, OtherSide::Below),
                edge(items, PointOf::Size, &zone.to, OtherSide::Above),
            ]
        })
        .collect();
    edges.extend(demand.ladder.iter().map(|ladder| match ladder {
        Ladder::Below(limit) => edge(items, PointOf::Apart, limit, OtherSide::Below),
        Ladder::UpTo(limit) => edge(items, PointOf::Apart, limit, OtherSide::Above),
    }));
    edges.extend(
        demand
            .deeper_than
            .iter()
            .map(|limit| edge(items, PointOf::Depth, limit, OtherSide::Above)),
    );
    edges
}

fn points(rule: &Rule, edge: &LimitEdge) -> Vec<i64> {
    let given = |example: &Example, of| -> Vec<i64> {
        let of_items = example.given.iter();
        let of_items = of_items.filter(|(item, _, _)| edge.items.contains(item));
        of_items
            .filter_map(|(_, reading, _)| point(reading, of))
            .collect()
    };
    let points = rule.examples.iter().flat_map(|example| match edge.of {
        PointOf::Apart => {
            let mut heights = given(example, PointOf::Size);
            heights.sort_unstable();
            heights.windows(2).map(|pair| pair[1] - pair[0]).collect()
        }
        PointOf::Depth | PointOf::Long | PointOf::Size => given(example, edge.of),
    });
    points.collect()
}

/// The number that a reading states. A ball that passes is an opening of its
/// size; one that stops, an opening just below it; a stick likewise.
fn point(reading: &Reading, of: PointOf) -> Option<i64> {
    const HAIR: Length = Length::from_nanometres(1);
    let length = match (&reading.value, of) {
        (Value::Foothold(foothold), PointOf::Depth) => foothold.depth,
        (_, PointOf::Apart | PointOf::Depth) => None,
        (Value::Shape(shape), PointOf::Long) => match shape.shape {
            Shape::Rectangle { width, height } => Some(width.max(height)),
            Shape::Cables(_)
            | Shape::Circle { .. }
            | Shape::Polygon(_)
            | Shape::Raked(_)
            | Shape::Slot { .. }
            | Shape::Triangle { .. }
            | Shape::Turned(_) => None,
        },
        (_, PointOf::Long) => None,
        (Value::Age(age), PointOf::Size) => return Some(i64::from(age.months())),
        (Value::Count(count), PointOf::Size) => return Some(i64::from(*count)),
        (Value::Years(years), PointOf::Size) => return years.first.map(i64::from),
        (Value::Ball(test), PointOf::Size) if test.passes => Some(test.ball),
        (Value::Ball(test), PointOf::Size) => Some(test.ball - HAIR),
        (Value::Foothold(foothold), PointOf::Size) => Some(foothold.height),
        (Value::Measure(measure), PointOf::Size) => {
            (measure.bound == Bound::Exactly).then_some(measure.length)
        }
        (Value::Shape(shape), PointOf::Size) => shape.shape.clear_opening().exact(),
        (Value::StairTriangle(step), PointOf::Size) => step.lift.and_then(|lift| {
            let triangle = step.triangle(lift).ok()?;
            triangle.clear_opening().exact()
        }),
        (Value::Stick(stick), PointOf::Size) if stick.reaches => Some(stick.stick),
        (Value::Stick(stick), PointOf::Size) => Some(stick.stick - HAIR),
        (
            Value::Date { .. }
            | Value::Fasteners(_)
            | Value::None
            | Value::Force(_)
            | Value::Pull(_)
            | Value::Section(..)
            | Value::Text(_)
            | Value::ThingToClimb(_)
            | Value::Unknown
            | Value::VOpening(_)
            | Value::Word(_),
            PointOf::Size,
        ) => None,
    };
    length.map(Length::nanometres)
}
