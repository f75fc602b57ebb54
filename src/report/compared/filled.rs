//! A list of work that came back filled in, read as a second round: what was measured
//! after the work stands in place of what was measured before it.

use std::sync::Arc;

use crate::input::Code;
use crate::input::Diagnostic;
use crate::input::Diagnostics;
use crate::input::Excerpt;
use crate::input::folded;
use crate::items::Item;
use crate::items::Verdict;
use crate::judge::Judged;
use crate::reading::Reading;
use crate::reading::Value;
use crate::reading::parse;
use crate::report::JudgedGuard;
use crate::report::ReportBasis;
use crate::report::acts;
use crate::report::matters::matters;
use crate::report::one_line;
use crate::report::reader;
use crate::survey::Guard;
use crate::survey::Observation;
use crate::survey::RowPlace;

/// A row of a list of work that fits nothing of the first round.
pub(super) const NOT_IN_THE_LIST: Code = Code {
    number: 330,
    title: "a row of a list of work that fits nothing of the first round",
};
/// What was measured after the work cannot be read.
pub(super) const NOT_A_READING: Code = Code {
    number: 331,
    title: "what was measured after the work cannot be read",
};

/// What a file is called that begins as a list of work does.
#[must_use]
pub fn is_an_action_list(beginning: &str) -> bool {
    let first = beginning.trim_start_matches('\u{feff}').lines().next();
    first.is_some_and(|first| {
        let cells: Vec<&str> = first.split([',', ';', '\t']).collect();
        cells.first().map(|cell| cell.trim_matches('"')) == Some("priority")
            && cells
                .iter()
                .any(|cell| cell.trim_matches('"') == "measured after")
    })
}

/// A filled-in list of work.
#[derive(Debug)]
pub struct FilledList {
    name: String,
    rows: Vec<FilledRow>,
}

#[derive(Clone, Debug)]
struct FilledRow {
    line: u64,
    names: [String; 3],
    what: String,
    done_on: String,
    after: String,
}

impl FilledList {
    /// Reads the rows that were filled in.
    ///
    /// # Errors
    /// Text that is no list of work, or whose rows cannot be told apart.
    pub fn read(name: &str, text: &str) -> Result<FilledList, Box<Diagnostic>> {
        let text = text.trim_start_matches('\u{feff}');
        let head = text.lines().next().unwrap_or_default();
        let delimiter = [b';', b'\t']
            .into_iter()
            .find(|sign| head.as_bytes().contains(sign) && !head.contains(','))
            .unwrap_or(b',');
        let mut reader = csv::ReaderBuilder::new()
            .delimiter(delimiter)
            .flexible(true)
            .from_reader(text.as_bytes());
        let broken = |error: &csv::Error| {
            let message = format!("the list of work cannot be read: {error}");
            Box::new(Diagnostic::error(
                NOT_IN_THE_LIST,
                message,
                Excerpt::whole(Arc::from(name)),
            ))
        };
        let headers = reader.headers().map_err(|error| broken(&error))?.clone();
        let column = |name: &str| headers.iter().position(|cell| cell.trim() == name);
        let columns = [
            "building",
            "unit",
            "guard",
            "what",
            "done on",
            "measured after",
        ]
        .map(column);
        let mut rows = Vec::new();
        for record in reader.records() {
            let record = record.map_err(|error| broken(&error))?;
            let line = record.position().map_or(0, csv::Position::line);
            let cell = |at: usize| {
                let cell = columns[at]
                    .and_then(|at| record.get(at))
                    .unwrap_or_default();
                // our own guard against formulas comes off again
                cell.strip_prefix('\'').unwrap_or(cell).trim().to_owned()
            };
            let row = FilledRow {
                line,
                names: [cell(0), cell(1), cell(2)],
                what: cell(3),
                done_on: cell(4),
                after: cell(5),
            };
            if !(row.done_on.is_empty() && row.after.is_empty()) {
                rows.push(row);
            }
        }
        Ok(FilledList {
            name: name.to_owned(),
            rows,
        })
    }

    /// How many rows were filled in.
    #[must_use]
    pub fn filled(&self) -> usize {
        self.rows.len()
    }

    /// The guards of the first round as they are after the work. What was done and not
    /// measured counts as not looked at; what was not filled in stays as it was.
    pub fn after(
        &self,
        before: &[(Guard, Judged<'_>)],
        basis: &ReportBasis<'_>,
        diagnostics: &mut Diagnostics,
    ) -> Vec<Guard> {
        let mut used = vec![false; self.rows.len()];
        let mut guards = Vec::new();
        for (guard, judged) in before {
            let own = [&guard.building, &guard.unit, &guard.name].map(|name| folded(name));
            let entry = JudgedGuard {
                guard: guard.clone(),
                judged: judged.clone(),
            };
            let acts = of_guard(&entry, basis);
            let mut guard = guard.clone();
            for (row, used) in self.rows.iter().zip(&mut used) {
                if row.names.clone().map(|name| folded(&name)) != own {
                    continue;
                }
                let act = acts
                    .iter()
                    .find(|(what, _)| folded(what) == folded(&row.what));
                if let Some((_, item)) = act {
                    *used = true;
                    self.put(&mut guard, *item, row, diagnostics);
                }
            }
            guards.push(guard);
        }
        for (row, used) in self.rows.iter().zip(used) {
            if !used {
                let message = format!(
                    "{}, line {}: \"{}\" is no act of the first round at this railing",
                    self.name,
                    row.line,
                    one_line(&row.what)
                );
                let at = Excerpt::whole(Arc::from(self.name.as_str()));
                diagnostics.push(Diagnostic::error(NOT_IN_THE_LIST, message, at).help(
                    "leave building, unit, guard and what as they were written, and compare with the survey that the list came from",
                ));
            }
        }
        guards
    }

    /// Puts what was measured after the work in place of what was measured before.
    fn put(&self, guard: &mut Guard, item: Item, row: &FilledRow, diagnostics: &mut Diagnostics) {
        let place = RowPlace {
            file: 0,
            line: row.line,
        };
        let done = if row.done_on.is_empty() {
            String::new()
        } else {
            format!("done on {}", row.done_on)
        };
        let observed = |written: &str, reading: Option<Arc<Reading>>, note: String| Observation {
            item,
            written: Arc::from(written),
            reading,
            note: Arc::from(note),
            row: place,
            column: 0,
        };
        let unknown = || {
            Arc::new(Reading {
                value: Value::Unknown,
                at: None,
            })
        };
        let new: Vec<Observation> = if row.after.is_empty() {
            let note = format!("{done}, and not measured after");
            vec![observed("not measured after", Some(unknown()), note)]
        } else {
            match parse(item, &row.after, None) {
                Ok(parsed) => {
                    let readings = parsed.readings.into_iter();
                    let each = readings
                        .map(|reading| observed(&row.after, Some(Arc::new(reading)), done.clone()));
                    each.collect()
                }
                Err(error) => {
                    let message = format!(
                        "{}, line {}, measured after: \"{}\": {error}",
                        self.name,
                        row.line,
                        one_line(&row.after)
                    );
                    let at = Excerpt::whole(Arc::from(self.name.as_str()));
                    diagnostics.push(
                        Diagnostic::error(NOT_A_READING, message, at)
                            .help(format!("write a reading of {item}: guardrule items {item}")),
                    );
                    guard.rows_in_error += 1;
                    vec![observed(&row.after, None, done)]
                }
            }
        };
        guard
            .observations
            .retain(|observation| observation.item != item);
        guard.observations.extend(new);
    }
}

/// What a list of work calls each act of a guard, with the item that it is about.
fn of_guard(entry: &JudgedGuard<'_>, basis: &ReportBasis<'_>) -> Vec<(String, Item)> {
    let matters = matters(entry, basis);
    let mut acts: Vec<(String, Item)> = Vec::new();
    for matter in &matters {
        if let Some((_, finding)) = matter.missed().next() {
            acts.push((reader::fault(finding), finding.item));
        }
        if let Some((_, finding)) = matter.with(Verdict::TooClose).next() {
            let what = format!(
                "{}: too near to tell",
                reader::title(matter.topic).to_lowercase()
            );
            acts.push((what, finding.item));
        }
    }
    for (seen, act) in entry
        .judged
        .dangers
        .iter()
        .zip(acts::tonight(entry, &matters))
    {
        acts.push((act.what, seen.item));
        acts.push((seen.danger.says.to_owned(), seen.item));
    }
    acts
}
