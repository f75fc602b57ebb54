//! A blank survey in table layout, for a spreadsheet.

use crate::items::Asked;
use std::collections::BTreeSet;
use std::io;
use std::io::Write;
use std::num::NonZeroU32;

use crate::items::Item;
use crate::report::safe_cell;
use crate::rules::Ruleset;

/// What a blank survey is made of.
#[derive(Clone, Debug)]
pub struct BlankSurvey<'a> {
    /// The chosen rulesets.
    pub rulesets: &'a [Ruleset],
    /// How they were named: their ids, or files.
    pub names: &'a [String],
    /// How many rows each unit has.
    pub guards: NonZeroU32,
    /// How many units there are; without them, the rows name none.
    pub units: Option<NonZeroU32>,
}

/// Writes a header, a row for what holds for the whole survey with the rulesets
/// already in it, and a row for each guard with its name to write over. Empty
/// cells are not measured.
///
/// # Errors
/// Those of `out`.
pub fn blank_survey(out: &mut dyn Write, blank: &BlankSurvey<'_>) -> io::Result<()> {
    let columns = columns(blank.rulesets);
    let mut csv = csv::Writer::from_writer(out);
    let mut header = vec!["unit", "guard"];
    header.extend(columns.iter().map(|item| heading(*item)));
    header.push("note");
    csv.write_record(&header)?;
    let rules = blank.names.join("; ");
    let mut row = |unit: &str, guard: &str, rules: &str| {
        let mut cells = vec![safe_cell(unit), safe_cell(guard)];
        cells.extend(columns.iter().map(|item| {
            let there = *item == Item::Rules;
            if there {
                safe_cell(rules)
            } else {
                String::new()
            }
        }));
        cells.push(String::new());
        csv.write_record(&cells)
    };
    row("", "", &rules)?;
    for unit in 1..=blank.units.map_or(1, NonZeroU32::get) {
        let unit = blank
            .units
            .map_or_else(String::new, |_| format!("unit {unit}"));
        for guard in 1..=blank.guards.get() {
            row(&unit, &format!("guard {guard}"), "")?;
        }
    }
    csv.flush()
}

/// The head, what holds for all, circumstances, then what is at the guard.
fn columns(rulesets: &[Ruleset]) -> Vec<Item> {
    let asked: BTreeSet<Item> = rulesets.iter().flat_map(Ruleset::items).collect();
    let head = |item: &Item| item.is_survey_fact() && item.info().asked == Asked::ByRules;
    let mut columns: Vec<Item> = Item::all().filter(head).collect();
    columns.extend(asked.iter().filter(|item| item.is_asked_once()));
    columns.extend(asked.iter().filter(|item| !item.is_asked_once()));
    columns
}

/// The column `guard` holds a guard's name; whether there is one stands under
/// another of the item's names.
fn heading(item: Item) -> &'static str {
    let info = item.info();
    let named = (item == Item::Guard).then(|| info.synonyms.first());
    named.flatten().unwrap_or(&info.name)
}
