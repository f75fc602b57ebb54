//! How a survey file is laid out, for whoever adds to it.

use crate::items::Item;
use crate::survey::FileError;
use crate::survey::SurveyFile;
use crate::survey::complaints::Complaints;
use crate::survey::header::Layout;
use crate::survey::heading::HeaderColumn;
use crate::survey::reader::RowReader;
use crate::survey::stream::Saved;

/// Which column holds what, all counted from 0.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Plan {
    /// What parts the cells.
    pub delimiter: char,
    /// How many columns the header has.
    pub width: usize,
    /// Names of buildings.
    pub building: Option<usize>,
    /// Names of units.
    pub unit: Option<usize>,
    /// Names of guards.
    pub guard: Option<usize>,
    /// Notes.
    pub note: Option<usize>,
    /// The rest, by the file's layout.
    pub layout: PlanLayout,
    /// The line of the header, from 1.
    pub line: u64,
}

/// What the two layouts do not share.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum PlanLayout {
    /// One observation a row.
    Notebook {
        /// Names of items.
        item: usize,
        /// Readings.
        reading: usize,
    },
    /// One guard a row.
    Table {
        /// A column of readings for each item, the first where there are several.
        items: Vec<(Item, usize)>,
        /// Columns of notes of one item.
        notes: Vec<(Item, usize)>,
    },
}

impl Plan {
    /// The layout of a file; `None` where its first row is no header.
    ///
    /// # Errors
    /// A file that cannot be read.
    pub fn of(file: &dyn SurveyFile) -> Result<Option<Plan>, FileError> {
        let mut complaints = Complaints::unheard();
        let saved = Saved::look(file).map_err(FileError::of(file))?;
        let reader = RowReader::open(saved, 0, &mut complaints).map_err(FileError::of(file))?;
        let Some(reader) = reader else {
            return Ok(None);
        };
        let header = &reader.header;
        let layout = match header.layout {
            Layout::Notebook { item, reading, .. } => PlanLayout::Notebook { item, reading },
            Layout::Table => PlanLayout::Table {
                items: items(&header.columns),
                notes: header.notes.clone(),
            },
        };
        Ok(Some(Plan {
            delimiter: char::from(header.delimiter),
            width: header.columns.len(),
            building: header.building,
            unit: header.unit,
            guard: header.guard,
            note: header.note,
            layout,
            line: reader.line(),
        }))
    }
}

fn items(columns: &[HeaderColumn]) -> Vec<(Item, usize)> {
    let mut items: Vec<(Item, usize)> = Vec::new();
    for (index, column) in columns.iter().enumerate() {
        if let HeaderColumn::Of(item, _) = *column
            && items.iter().all(|(known, _)| *known != item)
        {
            items.push((item, index));
        }
    }
    items
}
