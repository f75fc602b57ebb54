//! One row as the survey looks at it: cells by column, the place of each, and
//! which of them cannot be trusted.

use std::borrow::Cow;
use std::ops::Range;
use std::sync::Arc;

use crate::input::CellSpan;
use crate::input::Excerpt;
use crate::survey;
use crate::survey::sheet::SheetCell;
use crate::survey::sheet::SheetCells;

/// How much of a row is shown with a diagnostic.
const SHOWN: usize = 4096;

/// What is known of a row's cells before they are read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct RowCondition {
    /// Whether something in it is an error.
    pub(super) in_error: bool,
    /// Cells that cannot be trusted.
    pub(super) doubtful: Option<Range<usize>>,
    /// Where the last column begins, a note or the person's own, that goes on
    /// over surplus cells.
    pub(super) rest_of_last: Option<usize>,
}

impl RowCondition {
    /// Nothing is wrong.
    pub(super) const SOUND: RowCondition = RowCondition {
        in_error: false,
        doubtful: None,
        rest_of_last: None,
    };

    /// These cells cannot be trusted.
    pub(super) fn doubt(&mut self, cells: Range<usize>) {
        self.in_error = true;
        self.doubtful = Some(match &self.doubtful {
            Some(before) => before.start.min(cells.start)..before.end.max(cells.end),
            None => cells,
        });
    }
}

/// A row of a survey.
#[derive(Clone, Copy, Debug)]
pub(super) struct SurveyRow<'r> {
    pub(super) file: &'r Arc<str>,
    pub(super) at: survey::RowPlace,
    pub(super) text: &'r str,
    /// Where in the text a byte was not UTF-8; it stands there as a question mark.
    pub(super) undecoded: Option<usize>,
    pub(super) cells: &'r [CellSpan],
    pub(super) condition: &'r RowCondition,
    /// What parts its cells.
    pub(super) delimiter: char,
    /// The sheet that it stands in, where it is no line of text.
    pub(super) sheet: Option<&'r SheetCells>,
}

impl<'r> SurveyRow<'r> {
    /// How many cells it has.
    pub(super) fn width(&self) -> usize {
        self.cells.len()
    }

    /// How many cells it has up to the last one that is not blank.
    pub(super) fn filled_width(&self) -> usize {
        let filled = |cell: &CellSpan| !cell.text(self.text).trim().is_empty();
        self.cells
            .iter()
            .rposition(filled)
            .map_or(0, |last| last + 1)
    }

    /// The cell's text without spaces around it and without the apostrophe that
    /// we put in front of what a spreadsheet would run; blank where it is missing.
    pub(super) fn cell(&self, index: usize) -> Cow<'r, str> {
        let Some(cell) = self.cells.get(index) else {
            return Cow::Borrowed("");
        };
        match cell.text(self.text) {
            Cow::Borrowed(text) => Cow::Borrowed(without_apostrophe(trim(text))),
            Cow::Owned(text) => Cow::Owned(without_apostrophe(trim(&text)).to_owned()),
        }
    }

    /// The cell of a column that may not be there.
    pub(super) fn cell_of(&self, column: Option<usize>) -> Cow<'r, str> {
        column.map_or(Cow::Borrowed(""), |index| self.cell(index))
    }

    /// Whether the cell may be read.
    pub(super) fn is_trusted(&self, index: usize) -> bool {
        let doubtful = self.condition.doubtful.as_ref();
        doubtful.is_none_or(|cells| !cells.contains(&index))
    }

    /// The text in this column; with the cells behind it where they belong to it,
    /// and blank where it cannot be trusted.
    pub(super) fn text_of(&self, column: usize) -> Cow<'r, str> {
        if self.condition.rest_of_last == Some(column) {
            self.rest_from(column)
        } else if self.is_trusted(column) {
            self.cell(column)
        } else {
            Cow::Borrowed("")
        }
    }

    /// The text of all cells from this one on, as one.
    fn rest_from(&self, index: usize) -> Cow<'r, str> {
        let cells = self
            .cells
            .get(index..self.filled_width())
            .unwrap_or_default();
        let texts: Vec<_> = cells.iter().map(|cell| cell.text(self.text)).collect();
        Cow::Owned(
            texts
                .join(self.delimiter.encode_utf8(&mut [0; 4]))
                .trim()
                .to_owned(),
        )
    }

    /// What the spreadsheet tells of a cell, where the row is one of a sheet.
    pub(super) fn sheet_cell(&self, column: usize) -> Option<&'r SheetCell> {
        self.sheet?.cell(self.at.line, column)
    }

    /// The row with this cell marked.
    pub(super) fn excerpt(&self, index: usize) -> Excerpt {
        self.excerpt_of(self.range(index))
    }

    /// The row with all of it marked.
    pub(super) fn excerpt_whole(&self) -> Excerpt {
        self.excerpt_of(0..self.text.len())
    }

    /// The row with these bytes of it marked.
    pub(super) fn excerpt_of(&self, range: Range<usize>) -> Excerpt {
        let end = self.text.floor_char_boundary(SHOWN.min(self.text.len()));
        let excerpt = Excerpt::new(
            Arc::clone(self.file),
            self.at.line,
            &self.text[..end],
            range.start.min(end)..range.end.min(end),
        );
        if self.sheet.is_none() {
            return excerpt;
        }
        let whole = range.len() == self.text.len();
        let holds = |cell: &CellSpan| cell.range().end >= range.start;
        let first = self.cells.iter().position(holds).filter(|_| !whole);
        excerpt.in_cell(&SheetCells::address(self.at.line, first.unwrap_or(0)))
    }

    /// The bytes of a cell, without spaces around it; the row's end where it is missing.
    pub(super) fn range(&self, index: usize) -> Range<usize> {
        let Some(cell) = self.cells.get(index) else {
            return self.text.len()..self.text.len();
        };
        let raw = &self.text[cell.range()];
        let start = cell.range().start + (raw.len() - raw.trim_start().len());
        start..(start + raw.trim().len())
    }

    /// The row with the text of these cells written as one or changed.
    pub(super) fn mended(&self, cells: Range<usize>, text: &str) -> String {
        let start = self.range(cells.start).start;
        let end = self.range(cells.end.max(cells.start + 1) - 1).end;
        let (before, after) = (&self.text[..start], &self.text[end.max(start)..]);
        format!("{before}{}{after}", as_cell(text))
    }

    /// The text of neighbouring cells with the delimiter between them.
    pub(super) fn joined(&self, cells: Range<usize>) -> String {
        let range = self.range(cells.start).start..self.range(cells.end.max(1) - 1).end;
        match self.text.get(range) {
            Some(text) if !text.contains('"') => text.to_owned(),
            Some(_) | None => {
                let texts: Vec<_> = cells.map(|index| self.cell(index)).collect();
                texts.join(self.delimiter.encode_utf8(&mut [0; 4]))
            }
        }
    }
}

/// A text as a cell of a row.
pub(super) fn as_cell(text: &str) -> String {
    if text.contains([',', '"', ';', '\t', '\n', '\r']) {
        format!("\"{}\"", text.replace('"', "\"\""))
    } else {
        text.to_owned()
    }
}

/// Without spaces around it; most cells have none, and ASCII at both ends.
fn trim(text: &str) -> &str {
    match text.as_bytes() {
        [first, .., last] if first.is_ascii_graphic() && last.is_ascii_graphic() => text,
        _ => text.trim(),
    }
}

/// Takes off the apostrophe that we put in front of what a spreadsheet would run.
fn without_apostrophe(text: &str) -> &str {
    match text.strip_prefix('\'') {
        Some(rest) if rest.starts_with(['=', '+', '-', '@', '\t', '\r']) => rest,
        Some(_) | None => text,
    }
}
