//! A sheet as a survey's file: its rows as lines of text, and what is to be
//! known of its cells beside them.

use std::collections::BTreeMap;
use std::collections::HashMap;
use std::fmt::Write;
use std::io;
use std::io::Read;
use std::sync::Arc;

use crate::cli::blank_book::OURS;
use crate::cli::codes;
use crate::cli::workbook::grid::Merged;
use crate::cli::workbook::grid::SheetGrid;
use crate::cli::workbook::grid::Stored;
use crate::cli::workbook::grid::Workbook;
use crate::cli::workbook::grid::letters;
use crate::cli::workbook::text;
use crate::input::Code;
use crate::input::Diagnostic;
use crate::input::Excerpt;
use crate::survey::CellDoubt;
use crate::survey::Plan;
use crate::survey::SheetCell;
use crate::survey::SheetCells;
use crate::survey::SurveyFile;

/// How many hidden rows or comments are named.
const NAMED: usize = 20;

/// The sheets of a workbook that hold a survey, and what is to be said of it.
pub(in crate::cli) struct OpenedBook {
    pub(in crate::cli) files: Vec<Box<dyn SurveyFile>>,
    pub(in crate::cli) diagnostics: Vec<Diagnostic>,
}

/// One sheet.
pub(super) struct SheetFile {
    name: String,
    text: String,
    sheet: SheetCells,
}

impl SurveyFile for SheetFile {
    fn name(&self) -> &str {
        &self.name
    }

    fn open(&self) -> io::Result<Box<dyn Read + '_>> {
        Ok(Box::new(self.text.as_bytes()))
    }

    fn sheet(&self) -> Option<&SheetCells> {
        Some(&self.sheet)
    }
}

/// The sheets that hold a survey; of the others it is said that they hold none.
pub(super) fn sheets(name: &str, book: Workbook) -> OpenedBook {
    let mut opened = OpenedBook {
        files: Vec::new(),
        diagnostics: Vec::new(),
    };
    let mut without: Vec<(SheetFile, Vec<Diagnostic>)> = Vec::new();
    for grid in book.sheets {
        if grid.cells.is_empty() {
            continue;
        }
        let file = SheetFile::of(name, &grid);
        let said = remarks(&file.name, &grid);
        // memory can be read
        if matches!(Plan::of(&file), Ok(Some(_))) {
            opened.diagnostics.extend(said);
            opened.files.push(Box::new(file));
        } else {
            without.push((file, said));
        }
    }
    if opened.files.is_empty() {
        // what is wrong with their headings is said when they are read
        for (file, said) in without {
            opened.diagnostics.extend(said);
            opened.files.push(Box::new(file));
        }
    } else {
        let foreign = without
            .iter()
            .filter(|(file, _)| !file.text.starts_with(OURS));
        let no_survey = foreign.map(|(file, _)| no_survey(&file.name));
        opened.diagnostics.extend(no_survey);
    }
    if opened.files.is_empty() {
        let at = Excerpt::whole(Arc::from(name));
        let empty = Diagnostic::error(codes::WORKBOOK_REFUSED, "the workbook is empty", at);
        opened
            .diagnostics
            .push(empty.help("`guardrule sheet --xlsx` writes one to fill in"));
    }
    opened
}

impl SheetFile {
    fn of(book: &str, grid: &SheetGrid) -> SheetFile {
        let mut sheet = SheetCells::new(&*grid.name);
        let mut rows: BTreeMap<u32, BTreeMap<u32, String>> = BTreeMap::new();
        let last_row = grid.last_row();
        let merges: HashMap<(u32, u32), &Merged> = grid
            .merged
            .iter()
            .map(|merged| ((merged.rows.0, merged.columns.0), merged))
            .collect();
        for (at, cell) in &grid.cells {
            let (text, doubt) = text::of(cell);
            let merged = merges.get(at);
            let looks_down = cell
                .formula
                .as_ref()
                .is_some_and(|formula| text::looks_down(formula, *at));
            let doubt = doubt.or_else(|| merged.map(|m| CellDoubt::Merged(m.range())));
            let about = SheetCell {
                doubt,
                comment: cell.comment.as_deref().map(Arc::from),
                looks_down,
            };
            // a merged cell stands for all rows that it covers
            let last = merged.map_or(at.0, |m| m.rows.1.min(last_row));
            for row in at.0..=last {
                sheet.set(u64::from(row) + 1, at.1 as usize, about.clone());
                if !text.is_empty() {
                    rows.entry(row).or_default().insert(at.1, text.clone());
                }
            }
        }
        SheetFile {
            name: format!("{book}, {}", grid.name),
            text: lines(&rows),
            sheet,
        }
    }
}

/// The rows as lines, so that a row's number is its line's.
fn lines(rows: &BTreeMap<u32, BTreeMap<u32, String>>) -> String {
    let mut text = String::new();
    let mut line = 0;
    for (row, cells) in rows {
        for _ in line..*row {
            text.push('\n');
        }
        let mut column = 0;
        for (at, cell) in cells {
            for _ in column..*at {
                text.push(',');
            }
            column = *at;
            push_cell(&mut text, cell);
        }
        text.push('\n');
        line = row + 1;
    }
    text
}

fn push_cell(text: &mut String, cell: &str) {
    if cell.contains([',', '"', ';', '\n', '\r']) || cell.trim() != cell {
        text.push('"');
        text.push_str(&cell.replace('"', "\"\""));
        text.push('"');
    } else {
        text.push_str(cell);
    }
}

impl Merged {
    fn range(&self) -> String {
        let (first, last) = (letters(self.columns.0), letters(self.columns.1));
        format!("{first}{}:{last}{}", self.rows.0 + 1, self.rows.1 + 1)
    }
}

impl SheetGrid {
    fn last_row(&self) -> u32 {
        self.cells.keys().next_back().map_or(0, |at| at.0)
    }
}

/// What is not seen on the screen, or stands beside the cells.
fn remarks(name: &str, grid: &SheetGrid) -> Vec<Diagnostic> {
    let mut remarks = Vec::new();
    let mut say = |code: Code, message: String, cell: Option<String>, help: &str| {
        let at = Excerpt::whole(Arc::from(name));
        let at = match cell {
            Some(cell) => at.in_cell(&cell),
            None => at,
        };
        remarks.push(Diagnostic::warning(code, message, at).help(help));
    };
    if grid.is_hidden {
        say(
            codes::HIDDEN,
            "this sheet is hidden; it was read all the same".to_owned(),
            None,
            "delete it if it does not hold",
        );
    }
    let rows: Vec<u32> = grid
        .hidden_rows
        .iter()
        .copied()
        .filter(|row| grid.has_row(*row))
        .collect();
    if let Some(first) = rows.first() {
        say(
            codes::HIDDEN,
            format!(
                "hidden or filtered rows were read as well: {}",
                named(&rows)
            ),
            Some(format!("A{}", first + 1)),
            "delete those that do not hold",
        );
    }
    for (first, last) in &grid.hidden_columns {
        if grid.has_column(*first, *last) {
            let (from, to) = (letters(*first), letters(*last));
            say(
                codes::HIDDEN,
                format!("hidden columns were read as well: {from} to {to}"),
                Some(format!("{from}1")),
                "delete those that do not hold",
            );
        }
    }
    for ((row, column), cell) in &grid.cells {
        if let Some(comment) = &cell.comment {
            let shown = text::of(cell).0;
            let message = if cell.value == Stored::Blank {
                format!("a comment beside an empty cell: {comment}")
            } else {
                format!("a comment beside `{shown}`, which was read as it stands: {comment}")
            };
            let address = format!("{}{}", letters(*column), row + 1);
            say(
                codes::COMMENT,
                message,
                Some(address),
                "if it takes the reading back, write what holds into the cell",
            );
        }
    }
    let coloured = grid.coloured_alone();
    if let Some(first) = coloured.first() {
        let cells: Vec<&str> = coloured.iter().take(NAMED).map(String::as_str).collect();
        let more = coloured.len().saturating_sub(NAMED);
        let more = if more > 0 {
            format!(" and {more} more")
        } else {
            String::new()
        };
        say(
            codes::NOT_READ,
            format!(
                "a colour and nothing else stands in {}{more}; what it means was not read",
                cells.join(", ")
            ),
            Some(first.clone()),
            "write what it stands for into the cell: a reading, none, or not reached",
        );
    }
    if grid.has_drawings {
        say(
            codes::NOT_READ,
            "pictures and text boxes lie on this sheet; they were not read".to_owned(),
            None,
            "what they say of a unit or a reading goes into cells",
        );
    }
    remarks
}

impl SheetGrid {
    fn has_row(&self, row: u32) -> bool {
        self.cells
            .range((row, 0)..=(row, u32::MAX))
            .next()
            .is_some()
    }

    /// Cells of the table whose colour is that of no other cell of their row: a row
    /// that is coloured throughout says nothing of one of its cells.
    fn coloured_alone(&self) -> Vec<String> {
        let says = |at: &(u32, u32), fill: &Arc<str>| {
            let mut others = self.cells.range((at.0, 0)..=(at.0, u32::MAX)).peekable();
            let in_the_table = others.peek().is_some() && !self.is_merged(*at);
            in_the_table && !others.any(|(_, cell)| cell.fill.as_ref() == Some(fill))
        };
        let coloured = self.coloured.iter().filter(|(at, fill)| says(at, fill));
        coloured
            .map(|((row, column), _)| format!("{}{}", letters(*column), row + 1))
            .collect()
    }

    fn is_merged(&self, at: (u32, u32)) -> bool {
        let holds = |range: (u32, u32), at: u32| (range.0..=range.1).contains(&at);
        let mut merged = self.merged.iter();
        merged.any(|merged| holds(merged.rows, at.0) && holds(merged.columns, at.1))
    }

    fn has_column(&self, first: u32, last: u32) -> bool {
        self.cells.keys().any(|at| (first..=last).contains(&at.1))
    }
}

/// `4, 7, 12 and 3 more`.
fn named(rows: &[u32]) -> String {
    let mut text = String::new();
    for (index, row) in rows.iter().take(NAMED).enumerate() {
        let comma = if index > 0 { ", " } else { "" };
        // a string takes all text
        let _written = write!(text, "{comma}{}", row + 1);
    }
    if rows.len() > NAMED {
        let _written = write!(text, " and {} more", rows.len() - NAMED);
    }
    text
}

fn no_survey(name: &str) -> Diagnostic {
    let at = Excerpt::whole(Arc::from(name));
    let message = "this sheet has no heading row of a survey, and was not read";
    Diagnostic::warning(codes::NOT_READ, message, at)
        .help("a survey's headings are unit, guard and then one item a column; leave the sheet out if it is none")
}
