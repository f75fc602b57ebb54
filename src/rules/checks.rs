//! `check` and `check-any`: what a rule asks.

use crate::items::Item;
use crate::items::Kind;
use crate::rules::codes::RuleFault;
use crate::rules::conditions::item;
use crate::rules::conditions::nanometres;
use crate::rules::conditions::operators;
use crate::rules::conditions::words_asked;
use crate::rules::demand::Check;
use crate::rules::demand::Demand;
use crate::rules::demand::Entraps;
use crate::rules::demand::FootholdDemand;
use crate::rules::demand::Ladder;
use crate::rules::demand::Limit;
use crate::rules::demand::OpeningDemand;
use crate::rules::demand::Subject;
use crate::rules::faults::Faults;
use crate::rules::fields::Fields;
use crate::rules::fields::KeyValue;
use crate::rules::fields::TomlNode;
use crate::rules::loads::load;
use crate::rules::plausible;
use crate::rules::quantity::BOUNDS;
use crate::rules::quantity::bounds;
use crate::rules::quantity::count;
use crate::rules::quantity::force;
use crate::rules::quantity::limit;
use crate::rules::quantity::sides;
use crate::rules::quantity::slope;
use crate::rules::quantity::zone;

/// The key that stands for every opening of a guard.
const ANY_OPENING: &str = "any-opening";

/// The key that stands for all that holds a guard up.
const LOAD: &str = "load";

/// Operators for openings that lie at some height above the walking surface.
const PLACED_OPENING: &[&str] = &[
    "stops-ball",
    "at-most",
    "at-least",
    "not-within",
    "entraps",
    "zone",
    "pushed",
];

/// Operators for openings whose place is given by what they are.
const FIXED_OPENING: &[&str] = &[
    "stops-ball",
    "at-most",
    "at-least",
    "not-within",
    "entraps",
    "pushed",
];

/// What can be said of footholds.
const FOOTHOLD: &[&str] = &[
    "none-within",
    "deeper-than",
    "no-steeper-than",
    "ladder-up-to",
    "ladder-below",
];

/// What a rule asks, by its `check` or its `check-any`.
pub(super) fn checks(rule: &Fields<'_>, faults: &mut Faults) -> Vec<Check> {
    let any = rule.tables("check-any", "[[rule.check-any]]", faults);
    match rule.value("check") {
        None if rule.value("check-any").is_none() => {
            faults.error_help(
                RuleFault::MissingKey,
                &rule.at,
                "a rule needs `check`, which is missing",
                "add what it asks, such as check.height.at-least = \"36 in\"",
            );
            Vec::new()
        }
        None => any
            .iter()
            .filter_map(|fields| check(fields, "check-any", faults))
            .collect(),
        Some(value) => {
            if rule.value("check-any").is_some() {
                faults.error_help(
                    RuleFault::SeveralChecks,
                    &rule.at_of("check-any"),
                    "a rule has both `check` and `check-any`",
                    "keep check where one thing is asked, check-any where one of several suffices",
                );
            }
            Fields::of(value, "check", faults)
                .and_then(|fields| check(&fields, "check", faults))
                .into_iter()
                .collect()
        }
    }
}

/// The one thing that a table asks; two are a fault.
fn check(fields: &Fields<'_>, what: &str, faults: &mut Faults) -> Option<Check> {
    let entries = fields.entries();
    let mut entries = entries.iter();
    let Some(first) = entries.next() else {
        faults.error_help(
            RuleFault::NothingAsked,
            &fields.at,
            format!("`{what}` asks nothing"),
            "add what it asks, such as height.at-least = \"36 in\"",
        );
        return None;
    };
    let check = one(first, faults);
    for entry in entries {
        one(entry, faults);
        faults.error_help(
            RuleFault::SeveralChecks,
            &entry.at,
            format!("`{what}` asks of `{}` and of `{}`", first.key, entry.key),
            "write a rule for each; or [[rule.check-any]] for each where one of them suffices",
        );
    }
    check
}

fn one(entry: &KeyValue<'_>, faults: &mut Faults) -> Option<Check> {
    if entry.key == ANY_OPENING {
        return Some(Check {
            subject: Subject::AnyOpening,
            demand: opening(Item::Opening, entry.value, PLACED_OPENING, faults)?,
        });
    }
    if entry.key == LOAD {
        return Some(Check {
            subject: Subject::LoadPath,
            demand: Demand::Load(load(entry.value, faults)?),
        });
    }
    let item = item(entry.key, &entry.at, faults)?;
    Some(Check {
        subject: Subject::Item(item),
        demand: demand(item, entry, faults)?,
    })
}

fn demand(item: Item, entry: &KeyValue<'_>, faults: &mut Faults) -> Option<Demand> {
    let value = entry.value;
    match item.info().kind {
        Kind::Words(_) if !item.is_survey_fact() => words(item, value, faults),
        Kind::ThingToClimb => words(item, value, faults),
        Kind::Count => {
            let fields = operators(item, value, BOUNDS, faults)?;
            bounds(&fields, faults, count, |n| i64::from(*n)).map(Demand::Count)
        }
        Kind::Foothold => foothold(item, value, faults),
        Kind::VOpening => v_opening(item, value, faults),
        Kind::Length => {
            let fields = operators(item, value, BOUNDS, faults)?;
            let bounds = bounds(&fields, faults, limit, nanometres)?;
            plausible::of_check(item, &bounds, &fields, faults);
            Some(Demand::Length(bounds))
        }
        Kind::Opening if item == Item::RiserOpening => opening(item, value, FIXED_OPENING, faults),
        Kind::Opening => opening(item, value, PLACED_OPENING, faults),
        Kind::StairTriangle => opening(item, value, FIXED_OPENING, faults),
        Kind::Ages
        | Kind::Date
        | Kind::Fasteners
        | Kind::Graduation
        | Kind::Force
        | Kind::Pull
        | Kind::Section
        | Kind::Text
        | Kind::Tolerance
        | Kind::Words(_)
        | Kind::Years => {
            faults.error_help(
                RuleFault::OperatorDoesNotFit,
                &entry.at,
                format!("`{item}` cannot be checked by a rule"),
                "checks look at lengths, openings, counts, footholds and words; when can look at ages and years",
            );
            None
        }
    }
}

fn words(item: Item, value: &TomlNode<'_>, faults: &mut Faults) -> Option<Demand> {
    let (is, is_not) = words_asked(item, value, faults)?;
    Some(Demand::Words { is, is_not })
}

fn opening(
    item: Item,
    value: &TomlNode<'_>,
    fitting: &[&str],
    faults: &mut Faults,
) -> Option<Demand> {
    let fields = operators(item, value, fitting, faults)?;
    let before = faults.errors();
    let mut one = |key| limit(fields.value(key)?, key, faults);
    let demand = OpeningDemand {
        stops_ball: one("stops-ball"),
        at_most: one("at-most"),
        at_least: one("at-least"),
        not_within: fields
            .value("not-within")
            .and_then(|value| band(value, faults)),
        entraps: fields
            .value("entraps")
            .and_then(|value| entraps(value, faults))
            .map(Box::new),
        zone: fields
            .value("zone")
            .and_then(|value| zone(value, "zone", faults)),
        pushed: fields
            .value("pushed")
            .and_then(|value| force(value, "pushed", faults)),
    };
    consistent(&demand, &fields, faults);
    plausible::of_opening(item, &demand, &fields, faults);
    (faults.errors() == before).then_some(Demand::Opening(demand))
}

/// Reports bounds of an opening that ask for nothing, or for what cannot be.
fn consistent(demand: &OpeningDemand, fields: &Fields<'_>, faults: &mut Faults) {
    let asked = ["stops-ball", "at-most", "at-least", "not-within", "entraps"];
    if asked.iter().all(|key| fields.value(key).is_none()) {
        faults.error_help(
            RuleFault::NothingAsked,
            &fields.at,
            "a zone or a push alone asks nothing of an opening",
            "add stops-ball (a ball of that size must not pass) or at-most (equal is fine)",
        );
    }
    if demand.stops_ball.is_some() && demand.at_most.is_some() {
        faults.error_help(
            RuleFault::Contradiction,
            &fields.at_of("at-most"),
            "`stops-ball` and `at-most` bound the same side",
            "keep one: at-most lets an opening of the limit itself pass, stops-ball does not",
        );
    }
    if let Some(least) = &demand.at_least {
        let nothing = |most: &Limit| most.length <= least.length;
        let at_most = |most: &Limit| most.length < least.length;
        if demand.stops_ball.as_ref().is_some_and(nothing)
            || demand.at_most.as_ref().is_some_and(at_most)
        {
            faults.error(
                RuleFault::Contradiction,
                &fields.at_of("at-least"),
                format!(
                    "no opening is at least {} and within the other bound",
                    least.written
                ),
            );
        }
    }
}

/// A forbidden band: `{ above = "3 1/2 in", below = "9 in" }`.
fn band(value: &TomlNode<'_>, faults: &mut Faults) -> Option<(Limit, Limit)> {
    let fields = Fields::of(value, "`not-within`", faults)?;
    fields.only(&["above", "below"], "`not-within`", faults);
    for key in ["above", "below"] {
        if fields.value(key).is_none() {
            fields.missing(key, "`not-within`", faults);
        }
    }
    let mut one = |key| limit(fields.value(key)?, key, faults);
    let (above, below) = (one("above"), one("below"));
    let (above, below) = (above?, below?);
    if above.length >= below.length {
        faults.error_help(
            RuleFault::Contradiction,
            &value.span(),
            format!(
                "the band is upside down: {} is not below {}",
                above.written, below.written
            ),
            format!(
                "write {{ above = \"{}\", below = \"{}\" }}",
                below.written, above.written
            ),
        );
        return None;
    }
    Some((above, below))
}

/// A body without its head: `{ admits = "3 1/2 x 6.2 in", stops-ball = "9 in" }`.
fn entraps(value: &TomlNode<'_>, faults: &mut Faults) -> Option<Entraps> {
    const KEYS: [&str; 2] = ["admits", "stops-ball"];
    let fields = Fields::of(value, "`entraps`", faults)?;
    fields.only(&KEYS, "`entraps`", faults);
    for key in KEYS {
        if fields.value(key).is_none() {
            fields.missing(key, "`entraps`", faults);
        }
    }
    let head = limit(fields.value("stops-ball")?, "stops-ball", faults);
    let probe = sides(fields.value("admits")?, "admits", faults);
    let (head, (short, long, written)) = (head?, probe?);
    if head.length <= short.length {
        faults.error_help(
            RuleFault::Contradiction,
            &value.span(),
            format!(
                "nothing admits a probe of {written} and stops a ball of {}",
                head.written
            ),
            "the ball is the head's size, larger than the probe's shorter side",
        );
        return None;
    }
    Some(Entraps {
        short,
        long,
        head,
        written,
    })
}

/// How far the sides of an opening that narrows downward must open.
fn v_opening(item: Item, value: &TomlNode<'_>, faults: &mut Faults) -> Option<Demand> {
    let fields = operators(item, value, &["angle-at-least"], faults)?;
    let value = fields.value("angle-at-least")?;
    slope(value, "angle-at-least", faults).map(Demand::VOpening)
}

/// What counts as a foothold, where none may be, and how near two make a ladder.
fn foothold(item: Item, value: &TomlNode<'_>, faults: &mut Faults) -> Option<Demand> {
    let fields = operators(item, value, FOOTHOLD, faults)?;
    let before = faults.errors();
    let mut one = |key| limit(fields.value(key)?, key, faults);
    let deeper_than = one("deeper-than");
    let (below, up_to) = (one("ladder-below"), one("ladder-up-to"));
    if below.is_some() && up_to.is_some() {
        faults.error_help(
            RuleFault::Contradiction,
            &fields.at_of("ladder-up-to"),
            "`ladder-below` and `ladder-up-to` bound the same side",
            "keep one: ladder-up-to takes ledges of exactly the distance as a ladder, ladder-below does not",
        );
    }
    let ladder = below.map(Ladder::Below).or(up_to.map(Ladder::UpTo));
    let no_steeper_than = fields
        .value("no-steeper-than")
        .and_then(|value| slope(value, "no-steeper-than", faults));
    let none_within = fields
        .value("none-within")
        .and_then(|value| zone(value, "none-within", faults));
    let asked = ["none-within", "ladder-below", "ladder-up-to"];
    if asked.iter().all(|key| fields.value(key).is_none()) {
        fields.missing("none-within", "a rule about footholds", faults);
    }
    (faults.errors() == before).then_some(Demand::Foothold(FootholdDemand {
        none_within,
        deeper_than,
        no_steeper_than,
        ladder,
    }))
}
