//! A blank survey in table layout, for a spreadsheet.

use crate::items::AskedWhen;
use std::collections::BTreeSet;
use std::io;
use std::io::Write;
use std::num::NonZeroU32;

use crate::items::Item;
use crate::report::safe_cell;
use crate::report::sheet::front::DEFERRAL;
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

/// A blank survey as rows of cells.
#[derive(Clone, Debug)]
pub struct BlankTable {
    /// The headings.
    pub headings: Vec<&'static str>,
    /// What stands in each column: an item, or names or notes.
    pub items: Vec<Option<Item>>,
    /// A row for what holds for the whole survey, and one for each guard.
    pub rows: Vec<Vec<String>>,
}

/// A header, a row for what holds for the whole survey with the rulesets already
/// in it, and a row for each guard with its name to write over. Empty cells are
/// not measured.
#[must_use]
pub fn blank_table(blank: &BlankSurvey<'_>) -> BlankTable {
    let columns = columns(blank.rulesets);
    let mut headings = vec!["unit", "guard"];
    headings.extend(columns.iter().map(|item| heading(*item)));
    headings.push("note");
    let rules = blank.names.join("; ");
    let row = |unit: &str, guard: &str, rules: &str, note: &str| {
        let mut cells = vec![unit.to_owned(), guard.to_owned()];
        cells.extend(columns.iter().map(|item| {
            let there = *item == Item::Rules;
            if there {
                rules.to_owned()
            } else {
                String::new()
            }
        }));
        cells.push(note.to_owned());
        cells
    };
    let mut rows = vec![row("", "", &rules, DEFERRAL)];
    for unit in 1..=blank.units.map_or(1, NonZeroU32::get) {
        let unit = blank
            .units
            .map_or_else(String::new, |_| format!("unit {unit}"));
        for guard in 1..=blank.guards.get() {
            rows.push(row(&unit, &format!("guard {guard}"), "", ""));
        }
    }
    let mut items = vec![None, None];
    items.extend(columns.into_iter().map(Some));
    items.push(None);
    BlankTable {
        headings,
        items,
        rows,
    }
}

/// Writes the blank survey as CSV.
///
/// # Errors
/// Those of `out`.
pub fn blank_survey(out: &mut dyn Write, blank: &BlankSurvey<'_>) -> io::Result<()> {
    let table = blank_table(blank);
    let mut csv = csv::Writer::from_writer(out);
    csv.write_record(&table.headings)?;
    for row in table.rows {
        csv.write_record(row.iter().map(|cell| safe_cell(cell)))?;
    }
    csv.flush()
}

/// The head, what holds for all, circumstances, then what is at the guard.
fn columns(rulesets: &[Ruleset]) -> Vec<Item> {
    let asked: BTreeSet<Item> = rulesets.iter().flat_map(Ruleset::items).collect();
    let head = |item: &Item| item.is_survey_fact() && item.info().asked == AskedWhen::ByRules;
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
