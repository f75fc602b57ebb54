//! The text of a survey, changed as little as can be: a row is added at the
//! end, or one cell is put right. Comments, order, columns of the person's own
//! and line ends stay.

use std::cell::OnceCell;
use std::sync::Arc;

use crate::items::Item;
use crate::survey::FileError;
use crate::survey::InMemory;
use crate::survey::Plan;
use crate::survey::PlanLayout;
use crate::walk::GuardName;
use crate::walk::page_error::PageError;
use crate::walk::row::PageRow;
use crate::walk::row::line_is_no_row;
use crate::walk::row::line_starts;

/// The header of a survey that begins here.
pub(super) const HEADER: &str = "unit,guard,item,reading,note\n";

/// The text of a survey and how it is laid out.
#[derive(Clone, Debug)]
pub(super) struct Page {
    pub(super) name: Arc<str>,
    pub(super) text: Arc<str>,
    pub(super) plan: Plan,
    /// The unit of numbers alone, once somebody has asked for it.
    unit: OnceCell<Option<PageSpot>>,
}

/// What goes into a survey.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct PageEntry {
    pub(super) place: GuardName,
    pub(super) item: Item,
    pub(super) reading: String,
    pub(super) note: String,
}

/// Where a reading stands: its row's line, and its text as it stands there.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct PageSpot {
    pub(super) line: u64,
    pub(super) written: String,
}

impl Page {
    /// A text; one without anything gets a header.
    pub(super) fn new(name: &str, text: &str) -> Result<Page, PageError> {
        let bare = text.trim_start_matches('\u{feff}');
        let text: Arc<str> = if bare.trim().is_empty() {
            HEADER.into()
        } else {
            text.into()
        };
        let name: Arc<str> = name.into();
        let plan = plan(&name, &text)?;
        Ok(Page {
            name,
            text,
            plan,
            unit: OnceCell::new(),
        })
    }

    /// The text as a file that can be read.
    pub(super) fn file(&self) -> InMemory {
        in_memory(&self.name, &self.text)
    }

    /// Whether it has one observation a row.
    pub(super) fn is_notebook(&self) -> bool {
        matches!(self.plan.layout, PlanLayout::Notebook { .. })
    }

    /// The text with an entry more; `row` is the line of the guard's row in a table.
    pub(super) fn with(&self, entry: &PageEntry, row: Option<u64>) -> Result<Page, PageError> {
        self.can_name(&entry.place)?;
        match (&self.plan.layout, row) {
            (PlanLayout::Notebook { item, reading }, _) => {
                let page = self.with_note_column(&entry.note)?;
                let mut cells = page.names(&entry.place);
                put_in_cell(&mut cells, *item, entry.item.name());
                put_in_cell(&mut cells, *reading, &entry.reading);
                page.put_note(&mut cells, &entry.note);
                page.with_row(&cells)
            }
            (PlanLayout::Table { .. }, Some(line)) => self.with_cell(line, entry),
            (PlanLayout::Table { .. }, None) => {
                let page = self.with_row(&self.names(&entry.place))?;
                let line = page.last_line();
                page.with_cell(line, entry)
            }
        }
    }

    /// The text with a reading put right; a note of its own replaces the old one.
    pub(super) fn corrected(&self, spot: &PageSpot, entry: &PageEntry) -> Result<Page, PageError> {
        match &self.plan.layout {
            PlanLayout::Notebook { reading, .. } => {
                let row = self.row(spot.line)?;
                let stands = row.texts.get(*reading).map(|text| text.trim());
                if stands != Some(spot.written.trim()) {
                    return Err(PageError::Gone(spot.line));
                }
                let page = self.with_text(spot.line, *reading, &entry.reading)?;
                page.noted(spot.line, entry)
            }
            PlanLayout::Table { .. } => {
                let page = self.with_column(entry.item.name(), PageColumn::Reading(entry.item))?;
                let column = page.column(entry.item).ok_or(PageError::NoHeader)?;
                let row = page.row(spot.line)?;
                let cell = row.texts.get(column).cloned().unwrap_or_default();
                let mut parts: Vec<&str> = cell.split(';').map(str::trim).collect();
                let part = parts.iter_mut().find(|part| **part == spot.written.trim());
                *part.ok_or(PageError::Gone(spot.line))? = &entry.reading;
                let page = page.with_text(spot.line, column, &parts.join("; "))?;
                page.noted(spot.line, entry)
            }
        }
    }

    /// The text with a note beside the reading of a row.
    pub(super) fn noted(&self, line: u64, entry: &PageEntry) -> Result<Page, PageError> {
        if entry.note.is_empty() {
            return Ok(self.clone());
        }
        match &self.plan.layout {
            PlanLayout::Notebook { .. } => {
                let page = self.with_note_column(&entry.note)?;
                let note = page.plan.note.ok_or(PageError::NoHeader)?;
                page.with_text(line, note, &entry.note)
            }
            PlanLayout::Table { .. } => {
                let heading = format!("note: {}", entry.item.name());
                let page = self.with_column(&heading, PageColumn::NoteOf(entry.item))?;
                let note = page.note_column(entry.item).ok_or(PageError::NoHeader)?;
                page.with_text(line, note, &entry.note)
            }
        }
    }

    /// The text without a reading: without its row in a notebook, without its part of the
    /// cell in a table.
    pub(super) fn removed(&self, item: Item, spot: &PageSpot) -> Result<Page, PageError> {
        let row = self.row(spot.line)?;
        let gone = PageError::Gone(spot.line);
        match &self.plan.layout {
            PlanLayout::Notebook { reading, .. } => {
                let stands = row.texts.get(*reading).map(|text| text.trim());
                if stands != Some(spot.written.trim()) {
                    return Err(gone);
                }
                let end = line_starts(&self.text)
                    .map(|(_, start)| start)
                    .find(|start| *start > row.range.start)
                    .unwrap_or(self.text.len());
                let mut text = self.text.to_string();
                text.replace_range(row.range.start..end, "");
                self.replaced(text)
            }
            PlanLayout::Table { .. } => {
                let column = self.column(item).ok_or_else(|| gone.clone())?;
                let cell = row.texts.get(column).cloned().unwrap_or_default();
                let mut parts: Vec<&str> = cell.split(';').map(str::trim).collect();
                let at = parts.iter().position(|part| *part == spot.written.trim());
                parts.remove(at.ok_or(gone)?);
                self.with_text(spot.line, column, &parts.join("; "))
            }
        }
    }

    /// The unit of numbers alone, where it stands in the text: looked for once.
    pub(super) fn default_unit(&self) -> Option<&PageSpot> {
        let unit = self.unit.get_or_init(|| self.fact(Item::DefaultUnit));
        unit.as_ref()
    }

    /// A fact of the whole survey, where it stands in the text.
    pub(super) fn fact(&self, item: Item) -> Option<PageSpot> {
        let lines = line_starts(&self.text).filter(|(line, start)| {
            *line > self.plan.line && !line_is_no_row(&self.text[*start..], self.plan.delimiter)
        });
        let row = |(line, start)| PageRow::at(&self.text, line, start, self.plan.delimiter).ok();
        let mut rows = lines.filter_map(|at| Some((at.0, row(at)?)));
        rows.find_map(|(line, row)| {
            let text = |column: Option<usize>| {
                let cell = column.and_then(|column| row.texts.get(column));
                cell.map_or("", |cell| cell.trim())
            };
            let names = [self.plan.building, self.plan.unit, self.plan.guard];
            let of_all = names.into_iter().all(|column| text(column).is_empty());
            let written = match &self.plan.layout {
                PlanLayout::Notebook { item: of, reading } => {
                    let same = Item::by_name(text(Some(*of))) == Some(item);
                    same.then(|| text(Some(*reading)))
                }
                PlanLayout::Table { .. } => self.column(item).map(|column| text(Some(column))),
            };
            let written = written.filter(|written| of_all && !written.is_empty())?;
            Some(PageSpot {
                line,
                written: written.to_owned(),
            })
        })
    }

    /// A column `building` in front, where the file has none.
    pub(super) fn with_building_column(&self) -> Result<Page, PageError> {
        let mut text = String::with_capacity(self.text.len() + 64);
        let mut behind = 0;
        for (line, start) in line_starts(&self.text) {
            if line < self.plan.line || line_is_no_row(&self.text[start..], self.plan.delimiter) {
                continue;
            }
            text.push_str(&self.text[behind..start]);
            if line == self.plan.line {
                text.push_str("building");
            }
            text.push(self.plan.delimiter);
            behind = start;
        }
        text.push_str(&self.text[behind..]);
        self.replaced(text)
    }

    /// The line on which an entry of this place was written just now.
    pub(super) fn line_written(&self, row: Option<u64>) -> u64 {
        match row {
            Some(line) if !self.is_notebook() => line,
            Some(_) | None => self.last_line(),
        }
    }

    /// The first row of a place; of one without a guard, the row of its facts.
    pub(super) fn row_of(&self, place: &GuardName) -> Option<u64> {
        let wanted = place.compared();
        let lines = line_starts(&self.text).filter(|(line, start)| {
            let no_row = line_is_no_row(&self.text[*start..], self.plan.delimiter);
            *line > self.plan.line && !no_row
        });
        let named = |row: &PageRow, column: Option<usize>| {
            let cell = column.and_then(|column| row.texts.get(column));
            cell.cloned().unwrap_or_default()
        };
        let row = |(line, start)| PageRow::at(&self.text, line, start, self.plan.delimiter);
        let mut lines = lines;
        let found = lines.find(|at| {
            row(*at).is_ok_and(|row| {
                let place = GuardName {
                    building: named(&row, self.plan.building),
                    unit: named(&row, self.plan.unit),
                    guard: named(&row, self.plan.guard),
                };
                place.compared() == wanted
            })
        });
        found.map(|(line, _)| line)
    }

    pub(super) fn can_name(&self, place: &GuardName) -> Result<(), PageError> {
        if !place.building.is_empty() && self.plan.building.is_none() {
            return Err(PageError::NoBuilding);
        }
        if !place.unit.is_empty() && self.plan.unit.is_none() {
            return Err(PageError::NoUnit);
        }
        Ok(())
    }

    /// The cells of a row that names only its place.
    fn names(&self, place: &GuardName) -> Vec<String> {
        let mut cells = vec![String::new(); self.plan.width];
        let names = [
            (self.plan.building, &place.building),
            (self.plan.unit, &place.unit),
            (self.plan.guard, &place.guard),
        ];
        for (column, name) in names {
            if let Some(column) = column {
                put_in_cell(&mut cells, column, name);
            }
        }
        cells
    }

    fn put_note(&self, cells: &mut [String], note: &str) {
        if let Some(column) = self.plan.note {
            put_in_cell(cells, column, note);
        }
    }

    /// Sets or adds to the cell of an item in a table.
    fn with_cell(&self, line: u64, entry: &PageEntry) -> Result<Page, PageError> {
        let page = self.with_column(entry.item.name(), PageColumn::Reading(entry.item))?;
        let column = page.column(entry.item).ok_or(PageError::NoHeader)?;
        let row = page.row(line)?;
        let old = row.texts.get(column).map_or("", |text| text.trim());
        let text = if old.is_empty() {
            entry.reading.clone()
        } else {
            format!("{old}; {}", entry.reading)
        };
        page.with_text(line, column, &text)?.noted(line, entry)
    }

    fn column(&self, item: Item) -> Option<usize> {
        match &self.plan.layout {
            PlanLayout::Notebook { .. } => None,
            PlanLayout::Table { items, .. } => column_of(items, item),
        }
    }

    fn note_column(&self, item: Item) -> Option<usize> {
        match &self.plan.layout {
            PlanLayout::Notebook { .. } => self.plan.note,
            PlanLayout::Table { notes, .. } => column_of(notes, item),
        }
    }

    fn with_note_column(&self, note: &str) -> Result<Page, PageError> {
        if note.is_empty() || self.plan.note.is_some() {
            return Ok(self.clone());
        }
        self.with_heading("note")
    }

    fn with_column(&self, heading: &str, column: PageColumn) -> Result<Page, PageError> {
        let there = match column {
            PageColumn::NoteOf(item) => self.note_column(item),
            PageColumn::Reading(item) => self.column(item),
        };
        match there {
            Some(_) => Ok(self.clone()),
            None => self.with_heading(heading),
        }
    }

    /// A column more at the end of the header.
    fn with_heading(&self, heading: &str) -> Result<Page, PageError> {
        self.with_text(self.plan.line, self.plan.width, heading)
    }

    /// One cell of a row set; cells that the row lacks are added.
    fn with_text(&self, line: u64, column: usize, text: &str) -> Result<Page, PageError> {
        let row = self.row(line)?;
        let cell = self.as_cell(text);
        let (range, cell) = match row.cells.get(column) {
            Some(range) => (range.clone(), cell),
            None => {
                let missing = column + 1 - row.cells.len();
                let delimiters = self.plan.delimiter.to_string().repeat(missing);
                let end = row.range.end;
                (end..end, format!("{delimiters}{cell}"))
            }
        };
        let mut all = self.text.to_string();
        all.replace_range(range, &cell);
        self.replaced(all)
    }

    /// A row more at the end.
    fn with_row(&self, cells: &[String]) -> Result<Page, PageError> {
        let cells: Vec<String> = cells.iter().map(|cell| self.as_cell(cell)).collect();
        let mut text = self.text.to_string();
        let end = self.line_end();
        if !text.ends_with(['\n', '\r']) {
            text.push_str(end);
        }
        text.push_str(&cells.join(&self.plan.delimiter.to_string()));
        text.push_str(end);
        self.replaced(text)
    }

    fn replaced(&self, text: String) -> Result<Page, PageError> {
        let text: Arc<str> = text.into();
        let plan = plan(&self.name, &text)?;
        Ok(Page {
            name: Arc::clone(&self.name),
            text,
            plan,
            unit: OnceCell::new(),
        })
    }

    /// The line end that the file has.
    fn line_end(&self) -> &'static str {
        match self.text.find(['\r', '\n']) {
            Some(at) if self.text[at..].starts_with("\r\n") => "\r\n",
            Some(at) if self.text[at..].starts_with('\r') => "\r",
            Some(_) | None => "\n",
        }
    }

    /// The line of the last row.
    fn last_line(&self) -> u64 {
        let rows = line_starts(&self.text);
        let filled = rows.filter(|(_, start)| !self.text[*start..].trim().is_empty());
        filled.last().map_or(1, |(line, _)| line)
    }

    fn row(&self, line: u64) -> Result<PageRow, PageError> {
        PageRow::of(&self.text, line, self.plan.delimiter)
    }

    /// A text as a cell: in marks where it needs them, and nothing in front that
    /// a spreadsheet would run.
    fn as_cell(&self, text: &str) -> String {
        let runs = text.starts_with(['=', '+', '@']) || (text.len() > 1 && text.starts_with('-'));
        let text = if runs {
            format!("'{text}")
        } else {
            text.to_owned()
        };
        let marks = text.contains([self.plan.delimiter, '"', '\n', '\r']);
        if marks || text.trim() != text {
            format!("\"{}\"", text.replace('"', "\"\""))
        } else {
            text
        }
    }
}

#[derive(Clone, Copy)]
enum PageColumn {
    NoteOf(Item),
    Reading(Item),
}

fn column_of(columns: &[(Item, usize)], item: Item) -> Option<usize> {
    let mut columns = columns.iter();
    columns.find(|(of, _)| *of == item).map(|(_, at)| *at)
}

fn put_in_cell(cells: &mut [String], column: usize, text: &str) {
    if let Some(cell) = cells.get_mut(column) {
        text.clone_into(cell);
    }
}

fn in_memory(name: &Arc<str>, text: &Arc<str>) -> InMemory {
    InMemory::new(Arc::clone(name), Arc::clone(text))
}

fn plan(name: &Arc<str>, text: &Arc<str>) -> Result<Plan, PageError> {
    let file = in_memory(name, text);
    let no_header = |_: FileError| PageError::NoHeader;
    Plan::of(&file)
        .map_err(no_header)?
        .ok_or(PageError::NoHeader)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn entry(guard: &str, item: Item, reading: &str, note: &str) -> PageEntry {
        PageEntry {
            place: GuardName {
                guard: guard.to_owned(),
                ..GuardName::default()
            },
            item,
            reading: reading.to_owned(),
            note: note.to_owned(),
        }
    }

    fn page(text: &str) -> Page {
        Page::new("s.csv", text).expect("a survey")
    }

    #[test]
    fn a_survey_that_is_not_there_begins_with_a_header() {
        for text in ["", "\n\n", "\u{feff}"] {
            let written = page(text)
                .with(&entry("landing", Item::Height, "34 5/8 in", "sags"), None)
                .expect("written");
            assert_eq!(
                &*written.text,
                "unit,guard,item,reading,note\n,landing,height,34 5/8 in,sags\n"
            );
        }
    }

    #[test]
    fn a_notebook_keeps_comments_order_own_columns_and_line_ends() {
        let text = "# ours\r\nguard,who,item,reading\r\n\r\nlanding,me,height,\"35,5 cm\"\r\n# end";
        let added = page(text)
            .with(&entry("landing", Item::Drop, "9 ft", ""), None)
            .expect("written");
        assert_eq!(&*added.text, format!("{text}\r\nlanding,,drop,9 ft\r\n"));
        let spot = PageSpot {
            line: 4,
            written: "35,5 cm".to_owned(),
        };
        let right = added
            .corrected(
                &spot,
                &entry("landing", Item::Height, "90 cm", "at the door"),
            )
            .expect("corrected");
        assert_eq!(
            &*right.text,
            "# ours\r\nguard,who,item,reading,note\r\n\r\nlanding,me,height,90 cm,at the door\r\n# end\r\nlanding,,drop,9 ft\r\n"
        );
    }

    #[test]
    fn a_table_gets_cells_parts_of_cells_and_columns() {
        let text = "unit,guard,height,mine\n2A,landing,,x\n2A,stair\n";
        let mut there = entry("landing", Item::Height, "36 in", "");
        there.place.unit = "2A".to_owned();
        let set = page(text).with(&there, Some(2)).expect("set");
        let more = set
            .with(
                &PageEntry {
                    reading: "35 in".to_owned(),
                    ..there.clone()
                },
                Some(2),
            )
            .expect("more");
        assert_eq!(
            &*more.text,
            "unit,guard,height,mine\n2A,landing,36 in; 35 in,x\n2A,stair\n"
        );
        let spot = PageSpot {
            line: 2,
            written: "35 in".to_owned(),
        };
        let right = more
            .corrected(
                &spot,
                &PageEntry {
                    reading: "34 in".to_owned(),
                    ..there.clone()
                },
            )
            .expect("corrected");
        assert!(right.text.contains("36 in; 34 in,x"), "{}", right.text);
        let stair = PageEntry {
            place: GuardName {
                guard: "stair".to_owned(),
                ..there.place.clone()
            },
            item: Item::Drop,
            reading: "9 ft".to_owned(),
            note: "to the yard, below".to_owned(),
        };
        let wide = right.with(&stair, Some(3)).expect("wider");
        assert_eq!(
            &*wide.text,
            "unit,guard,height,mine,drop,note: drop\n2A,landing,36 in; 34 in,x\n2A,stair,,,9 ft,\"to the yard, below\"\n"
        );
        let new = PageEntry {
            place: GuardName {
                guard: "deck".to_owned(),
                ..there.place
            },
            ..stair
        };
        let new = wide.with(&new, None).expect("a row more");
        assert!(
            new.text
                .ends_with("\n2A,deck,,,9 ft,\"to the yard, below\"\n"),
            "{}",
            new.text
        );
    }

    #[test]
    fn what_a_spreadsheet_would_run_gets_an_apostrophe_and_marks_are_doubled() {
        let written = page("guard;item;reading;note\n")
            .with(
                &entry("=1+1", Item::Height, "35 in", "a \"low\" one; sags"),
                None,
            )
            .expect("written");
        assert_eq!(
            &*written.text,
            "guard;item;reading;note\n'=1+1;height;35 in;\"a \"\"low\"\" one; sags\"\n"
        );
    }

    #[test]
    fn a_row_that_is_no_longer_there_is_never_overwritten() {
        let page =
            page("guard,item,reading\nlanding,height,36 in\nlanding,drop,\"9 ft\nx,height,1 in\n");
        let at = |line, written: &str| PageSpot {
            line,
            written: written.to_owned(),
        };
        let new = entry("landing", Item::Height, "35 in", "");
        let gone = page.corrected(&at(2, "34 in"), &new).expect_err("changed");
        assert_eq!(gone, PageError::Gone(2));
        let marks = page.corrected(&at(3, "9 ft"), &new).expect_err("open");
        assert_eq!(marks, PageError::Marks(3));
        assert_eq!(
            page.corrected(&at(90, "9 ft"), &new).expect_err("no row"),
            PageError::Gone(90)
        );
    }

    #[test]
    fn a_building_is_put_in_front_of_every_row() {
        let page = page("# ours\nunit,guard,item,reading\n\n,,use,dwelling\n");
        let wider = page.with_building_column().expect("wider");
        assert_eq!(
            &*wider.text,
            "# ours\nbuilding,unit,guard,item,reading\n\n,,,use,dwelling\n"
        );
    }
}
