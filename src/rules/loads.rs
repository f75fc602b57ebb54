//! `check.load`: what force a guard must stand up to, and the moments that a
//! worked example of such a rule states.

use crate::quantities::Moment;
use crate::reading::ReadingError;
use crate::reading::parse_force;
use crate::reading::parse_length;
use crate::reading::parse_line_load;
use crate::reading::parse_moment;
use crate::reading::parse_pressure;
use crate::rules::codes::RuleFault;
use crate::rules::demand::Direction;
use crate::rules::demand::Limit;
use crate::rules::demand::LoadBasis;
use crate::rules::demand::LoadDemand;
use crate::rules::demand::Member;
use crate::rules::demand::Patch;
use crate::rules::demand::Stated;
use crate::rules::faults::Faults;
use crate::rules::fields::Fields;
use crate::rules::fields::TomlNode;
use crate::rules::fields::choice;
use crate::rules::quantity::unreadable;

const KEYS: &[&str] = &[
    "concentrated",
    "line",
    "line-down",
    "infill",
    "infill-pressure",
    "direction",
    "basis",
];

/// What `check.load` asks.
pub(super) fn load(value: &TomlNode<'_>, faults: &mut Faults) -> Option<LoadDemand> {
    let fields = Fields::of(value, "`load`", faults)?;
    let before = faults.errors();
    fields.only(KEYS, "`load`", faults);
    let basis = fields
        .required("basis", "`load`", faults)
        .and_then(|text| choice(&text, "basis", &LoadBasis::ALL, LoadBasis::name, faults));
    let direction = fields
        .text("direction", faults)
        .and_then(|text| choice(&text, "direction", &Direction::ALL, Direction::name, faults));
    let demand = LoadDemand {
        concentrated: stated(&fields, "concentrated", parse_force, faults),
        line: stated(&fields, "line", parse_line_load, faults),
        line_down: stated(&fields, "line-down", parse_line_load, faults),
        infill: patch(&fields, faults),
        infill_pressure: stated(&fields, "infill-pressure", parse_pressure, faults),
        direction: direction.unwrap_or(Direction::Any),
        basis: basis?,
    };
    let along = ["concentrated", "line"];
    if along.iter().all(|key| fields.value(key).is_none()) {
        faults.error_help(
            RuleFault::NothingAsked,
            &fields.at,
            "`load` states no load along the top",
            "add concentrated = \"200 lbf\" or line = \"0.74 kN/m\"",
        );
    }
    (faults.errors() == before).then_some(demand)
}

fn stated<T>(
    fields: &Fields<'_>,
    key: &str,
    parse: fn(&str) -> Result<T, ReadingError>,
    faults: &mut Faults,
) -> Option<Stated<T>> {
    let text = fields.text(key, faults)?;
    match parse(text.value) {
        Ok(value) => Some(Stated {
            value,
            written: text.value.to_owned(),
        }),
        Err(error) => {
            unreadable(&text, &error, RuleFault::UnreadableQuantity, faults);
            None
        }
    }
}

/// `"50 lbf on 12 x 12 in"`, or a force alone.
fn patch(fields: &Fields<'_>, faults: &mut Faults) -> Option<Patch> {
    let text = fields.text("infill", faults)?;
    let (force, area) = match text.value.split_once(" on ") {
        Some((force, area)) => (force, Some(area)),
        None => (text.value, None),
    };
    let value = parse_force(force)
        .map_err(|error| unreadable(&text, &error, RuleFault::UnreadableQuantity, faults))
        .ok()?;
    let over = match area.map(side) {
        Some(None) => {
            let message = format!("\"{}\" names no square area", text.value);
            let help = "write it so: 50 lbf on 12 x 12 in";
            faults.error_help(RuleFault::UnreadableQuantity, &text.at, message, help);
            return None;
        }
        Some(side) => side,
        None => None,
    };
    let force = Stated {
        value,
        written: text.value.to_owned(),
    };
    Some(Patch { force, over })
}

/// The side of a square area: `12 x 12 in`.
fn side(area: &str) -> Option<Limit> {
    let (first, second) = area.split_once(" x ")?;
    let side = parse_length(second, None).ok()?;
    let number = second.split(' ').next()?;
    (number == first.trim()).then(|| Limit {
        length: side.length,
        unit: side.unit,
        written: second.to_owned(),
    })
}

/// The moments that an example states: `{ post = "7800 lbf in" }`.
pub(super) fn moments(value: &TomlNode<'_>, faults: &mut Faults) -> Vec<(Member, Stated<Moment>)> {
    let Some(fields) = Fields::of(value, "`moments`", faults) else {
        return Vec::new();
    };
    let names: Vec<&str> = Member::ALL.iter().map(|member| member.name()).collect();
    fields.only(&names, "`moments`", faults);
    Member::ALL
        .into_iter()
        .filter_map(|member| {
            let moment = stated(&fields, member.name(), parse_moment, faults)?;
            Some((member, moment))
        })
        .collect()
}
