//! Which limits of the shipped rulesets could be wrong without an example
//! noticing: each is moved by the smallest step of its unit, both ways.

use guardrule::judge::examples::miss;
use guardrule::quantities::Age;
use guardrule::quantities::Angle;
use guardrule::quantities::Force;
use guardrule::quantities::Length;
use guardrule::quantities::LengthUnit;
use guardrule::quantities::newtons;
use guardrule::reading::Tilt;
use guardrule::rules::Bounds;
use guardrule::rules::Condition;
use guardrule::rules::Demand;
use guardrule::rules::Ladder;
use guardrule::rules::Limit;
use guardrule::rules::Rule;
use guardrule::rules::Ruleset;
use guardrule::rules::SlopeLimit;
use guardrule::rules::Test;
use guardrule::rules::Zone;
use guardrule::rules::embedded_ids;
use guardrule::rules::load;
use uom::si::angle::degree;

#[test]
fn every_mutated_limit_is_noticed_by_an_example() {
    let mut unnoticed = Vec::new();
    let mut tried = 0;
    for id in embedded_ids() {
        let ruleset = load(id, &|_| None).ruleset.expect("a shipped ruleset");
        for index in 0..ruleset.rules.len() {
            let count = limits(&mut ruleset.rules[index].clone()).len();
            for limit in 0..count {
                for sign in [-1, 1] {
                    let mut moved = ruleset.clone();
                    let mut all = limits(&mut moved.rules[index]);
                    let limit = &mut *all[limit];
                    let written = limit.written.clone();
                    // nothing lies below zero
                    let at = limit.length.nanometres() + sign * step(limit.unit);
                    if at < 0 {
                        continue;
                    }
                    limit.length = Length::from_nanometres(at);
                    tried += 1;
                    if !noticed(&moved, index) {
                        let rule = &ruleset.rules[index].id;
                        let way = if sign < 0 { "down" } else { "up" };
                        unnoticed.push(format!("{id}: {rule}: {written} moved {way}"));
                    }
                }
            }
        }
    }
    assert!(tried > 500, "{tried}");
    assert!(
        unnoticed.is_empty(),
        "{} of {tried}:\n{}",
        unnoticed.len(),
        unnoticed.join("\n")
    );
}

/// Every count, age, year and slope that a rule states, moved by one.
#[test]
fn every_mutated_number_is_noticed_by_an_example() {
    let mut unnoticed = Vec::new();
    let mut tried = 0;
    for id in embedded_ids() {
        let ruleset = load(id, &|_| None).ruleset.expect("a shipped ruleset");
        for (index, rule) in ruleset.rules.iter().enumerate() {
            for number in 0..numbers(&mut rule.clone()).len() {
                for sign in [-1, 1] {
                    let mut moved = ruleset.clone();
                    let mut all = numbers(&mut moved.rules[index]);
                    if !all[number].step(sign) {
                        continue;
                    }
                    tried += 1;
                    if !noticed(&moved, index) {
                        unnoticed.push(format!("{id}: {}: number {number}, {sign:+}", rule.id));
                    }
                }
            }
        }
    }
    assert!(tried > 80, "{tried}");
    assert!(
        unnoticed.is_empty(),
        "{} of {tried}:\n{}",
        unnoticed.len(),
        unnoticed.join("\n")
    );
}

/// A number that a rule states, of whatever kind.
enum Number<'r> {
    Age(&'r mut Age),
    Count(&'r mut u32),
    Push(&'r mut Force),
    Slope(&'r mut SlopeLimit),
    Year(&'r mut i32),
}

impl Number<'_> {
    /// Moves it by one: a month, a year, a thing, a newton, a degree. False where
    /// nothing lies there.
    fn step(&mut self, sign: i32) -> bool {
        match self {
            Number::Age(age) => {
                let Some(months) = age.months().checked_add_signed(sign) else {
                    return false;
                };
                **age = Age::from_months(months);
            }
            Number::Count(count) => {
                let Some(moved) = count.checked_add_signed(sign) else {
                    return false;
                };
                **count = moved;
            }
            Number::Push(push) => **push += newtons(f64::from(sign)),
            Number::Slope(limit) => {
                let degrees: f64 = limit.tilt.degrees().parse().expect("a number");
                let moved = Angle::new::<degree>(degrees + f64::from(sign));
                limit.tilt = Tilt::of(moved);
            }
            Number::Year(year) => **year += sign,
        }
        true
    }
}

/// Every number but lengths that a rule states.
fn numbers(rule: &mut Rule) -> Vec<Number<'_>> {
    let mut all = Vec::new();
    let groups = rule.when_any.iter_mut().chain(&mut rule.unless).flatten();
    for condition in rule.when.iter_mut().chain(groups) {
        match &mut condition.test {
            Test::Age(bounds) => all.extend(of_bounds(bounds).into_iter().map(Number::Age)),
            Test::Count(bounds) => all.extend(of_bounds(bounds).into_iter().map(Number::Count)),
            Test::Years(bounds) => all.extend(of_bounds(bounds).into_iter().map(Number::Year)),
            Test::Length(_) | Test::NoneOf(_) | Test::OneOf(_) => {}
        }
    }
    for check in &mut rule.checks {
        match &mut check.demand {
            Demand::Count(bounds) => all.extend(of_bounds(bounds).into_iter().map(Number::Count)),
            Demand::Opening(demand) => all.extend(demand.pushed.iter_mut().map(Number::Push)),
            Demand::Foothold(demand) => {
                all.extend(demand.no_steeper_than.iter_mut().map(Number::Slope));
            }
            Demand::VOpening(limit) => all.push(Number::Slope(limit)),
            // loads have a test of their own
            Demand::Length(_) | Demand::Load(_) | Demand::Words { .. } => {}
        }
    }
    all
}

fn noticed(ruleset: &Ruleset, index: usize) -> bool {
    let rule = &ruleset.rules[index];
    rule.examples
        .iter()
        .any(|example| miss(ruleset, rule, example).is_some())
}

/// The smallest step in which such a limit is written: 1/16 in or 1 mm.
fn step(unit: LengthUnit) -> i64 {
    match unit {
        LengthUnit::Foot | LengthUnit::Inch => 1_587_500,
        LengthUnit::Centimetre | LengthUnit::Metre | LengthUnit::Millimetre => 1_000_000,
    }
}

/// Every load that a rule states, made greater or less by a hundredth, must be
/// noticed by an example.
#[test]
fn every_mutated_load_is_noticed_by_an_example() {
    let mut unnoticed = Vec::new();
    let mut tried = 0;
    for id in embedded_ids() {
        let ruleset = load(id, &|_| None).ruleset.expect("a shipped ruleset");
        for index in 0..ruleset.rules.len() {
            for check in 0..ruleset.rules[index].checks.len() {
                for which in 0..5 {
                    for by in [0.99, 1.01] {
                        let mut moved = ruleset.clone();
                        let demand = &mut moved.rules[index].checks[check].demand;
                        let Some(name) = scaled(demand, which, by) else {
                            continue;
                        };
                        tried += 1;
                        if !noticed(&moved, index) {
                            let rule = &ruleset.rules[index].id;
                            unnoticed.push(format!("{id}: {rule}: {name} times {by}"));
                        }
                    }
                }
            }
        }
    }
    assert!(tried >= 40, "{tried}");
    assert!(unnoticed.is_empty(), "{}", unnoticed.join("\n"));
}

/// Scales one of the loads of a demand; `None` where it does not state it.
fn scaled(demand: &mut Demand, which: usize, by: f64) -> Option<&'static str> {
    let Demand::Load(load) = demand else {
        return None;
    };
    match which {
        0 => load.concentrated.as_mut().map(|load| {
            load.value *= by;
            "concentrated"
        }),
        1 => load.line.as_mut().map(|load| {
            load.value *= by;
            "line"
        }),
        2 => load.line_down.as_mut().map(|load| {
            load.value *= by;
            "line-down"
        }),
        3 => load.infill.as_mut().map(|patch| {
            patch.force.value *= by;
            "infill"
        }),
        _ => load.infill_pressure.as_mut().map(|load| {
            load.value *= by;
            "infill-pressure"
        }),
    }
}

/// Every length that a rule states.
fn limits(rule: &mut Rule) -> Vec<&mut Limit> {
    let mut all = Vec::new();
    let groups = rule.when_any.iter_mut().chain(&mut rule.unless).flatten();
    for condition in rule.when.iter_mut().chain(groups) {
        all.extend(of_condition(condition));
    }
    for check in &mut rule.checks {
        match &mut check.demand {
            Demand::Foothold(demand) => {
                all.extend(demand.none_within.iter_mut().flat_map(of_zone));
                all.extend(demand.ladder.iter_mut().map(Ladder::limit_mut));
                all.extend(&mut demand.deeper_than);
            }
            Demand::Length(bounds) => all.extend(of_bounds(bounds)),
            Demand::Opening(demand) => {
                all.extend(&mut demand.stops_ball);
                all.extend(&mut demand.at_most);
                all.extend(&mut demand.at_least);
                all.extend(demand.not_within.iter_mut().flat_map(|(a, b)| [a, b]));
                all.extend(
                    demand
                        .entraps
                        .as_deref_mut()
                        .into_iter()
                        .flat_map(|entraps| {
                            [&mut entraps.short, &mut entraps.long, &mut entraps.head]
                        }),
                );
                all.extend(demand.zone.iter_mut().flat_map(of_zone));
            }
            Demand::Load(demand) => {
                let patch = demand.infill.iter_mut();
                all.extend(patch.flat_map(|patch| &mut patch.over));
            }
            Demand::Count(_) | Demand::VOpening(_) | Demand::Words { .. } => {}
        }
    }
    all
}

fn of_condition(condition: &mut Condition) -> Vec<&mut Limit> {
    match &mut condition.test {
        Test::Length(bounds) => of_bounds(bounds),
        Test::Age(_) | Test::Count(_) | Test::NoneOf(_) | Test::OneOf(_) | Test::Years(_) => {
            Vec::new()
        }
    }
}

fn of_zone(zone: &mut Zone) -> [&mut Limit; 2] {
    [&mut zone.from, &mut zone.to]
}

fn of_bounds<T>(bounds: &mut Bounds<T>) -> Vec<&mut T> {
    let Bounds {
        at_least,
        at_most,
        above,
        below,
    } = bounds;
    [at_least, at_most, above, below]
        .into_iter()
        .flatten()
        .collect()
}

/// Where a text prints two units, only the one that governs stands in a rule:
/// inches in the United States, millimetres or metres elsewhere
/// (the model codes print a rounded metric figure in brackets). No limit is the other's conversion.
#[test]
fn every_limit_stands_in_the_unit_of_its_source() {
    // collected from many sources; and cribs, whose text puts centimetres first
    let mixed = ["small-child-advice", "us-crib-slats"];
    for id in embedded_ids().filter(|id| !mixed.contains(id)) {
        let mut ruleset = load(id, &|_| None).ruleset.expect("a shipped ruleset");
        let inches = ruleset.country.as_deref() == Some("United States");
        for rule in &mut ruleset.rules {
            let name = rule.id.clone();
            for limit in limits(rule) {
                let inch = matches!(limit.unit, LengthUnit::Foot | LengthUnit::Inch);
                assert_eq!(inch, inches, "{id}: {name}: {}", limit.written);
            }
        }
    }
}
