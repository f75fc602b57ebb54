//! Opens a survey file, finds its header, and hands over its rows with what is
//! wrong with their marks and cells.

use std::io;
use std::sync::Arc;

use memchr::memchr_iter;

use crate::input::CellSpan;
use crate::input::FoundRow;
use crate::survey::codes;
use crate::survey::complaints::Complaints;
use crate::survey::header::Header;
use crate::survey::header::Layout;
use crate::survey::header_search;
use crate::survey::observations::cell_in_doubt;
use crate::survey::row::RowCondition;
use crate::survey::row::SurveyRow;
use crate::survey::row_kind;
use crate::survey::row_kind::RowKind;
use crate::survey::stream::Saved;
use crate::survey::stream::Stream;
use crate::survey::stream::complain_of_bytes;
use crate::survey::suspicion;

/// Reads the rows of one file.
pub(super) struct RowReader<'f> {
    stream: Stream<'f>,
    pub(super) header: Arc<Header>,
    header_line: u64,
    condition: RowCondition,
    /// How rows of the last guard begin.
    beginning: Vec<u8>,
    /// A second table has begun: its rows are another file's.
    has_ended: bool,
}

impl<'f> RowReader<'f> {
    /// Opens a file and reads its header; `None` if the file cannot be used,
    /// with the reason among the complaints.
    pub(super) fn open(
        saved: Saved<'f>,
        index: u32,
        complaints: &mut Complaints,
    ) -> io::Result<Option<RowReader<'f>>> {
        let Some(mut stream) = Stream::open(saved, index, complaints)? else {
            return Ok(None);
        };
        let Some(found) = header_search::find(&mut stream, complaints)? else {
            return Ok(None);
        };
        Ok(Some(RowReader {
            stream,
            header_line: found.line,
            header: Arc::new(found.header),
            condition: RowCondition::SOUND,
            beginning: Vec::new(),
            has_ended: false,
        }))
    }

    /// The line of the header.
    pub(super) fn line(&self) -> u64 {
        self.header_line
    }

    /// The next row that is not blank, no comment and none of totals, with what
    /// is wrong with its marks and cells among the complaints.
    pub(super) fn next(
        &mut self,
        complaints: &mut Complaints,
    ) -> io::Result<Option<SurveyRow<'_>>> {
        loop {
            if self.has_ended {
                return Ok(None);
            }
            match self.stream.scanner.advance()? {
                FoundRow::End => return Ok(None),
                FoundRow::Row if self.stream.is_blank_or_comment() => continue,
                FoundRow::Row => {}
                FoundRow::TooLong => {
                    complaints.push(self.stream.too_long());
                    continue;
                }
            }
            if self.stream.has_open_cell() && suspicion::swallows(&self.stream.row(), &self.header)
            {
                self.stream.scanner.keep_first_line();
            }
            let row = self.stream.row();
            match row_kind::kind_of(&row, &self.header) {
                RowKind::Written => break,
                RowKind::Totals => {
                    complaints.count(row.file, codes::TOTALS, "", || row_kind::totals(&row));
                }
                RowKind::HeaderAgain => {
                    let make = || row_kind::header_again(&row);
                    complaints.count(row.file, codes::SECOND_HEADER, "", make);
                }
                RowKind::OtherHeader => {
                    complaints.push(row_kind::other_header(&row));
                    self.has_ended = true;
                }
            }
        }
        let row = self.stream.row();
        self.condition = suspicion::examine(&row, &self.header, complaints);
        if let Some(bad) = row.undecoded {
            self.condition.in_error = true;
            complain_of_bytes(&row, complaints);
            let cut = |cell: &CellSpan| cell.range().contains(&bad);
            if let Some(cell) = row.cells.iter().position(cut) {
                // letters that cannot be read must not make two names one
                self.condition.doubt(cell..row.cells.len());
            }
        }
        if row.sheet.is_some() {
            names_in_doubt(&row, &self.header, &mut self.condition, complaints);
        }
        Ok(Some(SurveyRow {
            condition: &self.condition,
            ..row
        }))
    }

    /// Passes over rows of the same guard as the last one, whose names stood
    /// there as `names`, as long as their item's first letter passes; how many
    /// they were. For who counts rows and reads no further.
    ///
    /// Only rows with no more cells than the header are passed over: of the
    /// others [`RowReader::next`] alone decides whose they are.
    pub(super) fn pass_over(&mut self, names: &str, passes: fn(u8) -> bool) -> io::Result<u32> {
        let item_follows = match self.header.layout {
            Layout::Notebook { item, .. } => item == self.header.names,
            Layout::Table => false,
        };
        if !item_follows || names.is_empty() {
            return Ok(0);
        }
        let delimiter = self.header.delimiter;
        self.beginning.clear();
        self.beginning.extend_from_slice(names.as_bytes());
        self.beginning.push(delimiter);
        let most = self.header.columns.len() - self.header.names;
        let passes = |rest: &[u8]| {
            rest.first().is_some_and(|first| passes(*first))
                && memchr_iter(delimiter, rest).nth(most - 1).is_none()
        };
        self.stream.scanner.pass_over(&self.beginning, passes)
    }
}

/// Names in cells of a spreadsheet that cannot be taken as they stand.
fn names_in_doubt(
    row: &SurveyRow<'_>,
    header: &Header,
    condition: &mut RowCondition,
    complaints: &mut Complaints,
) {
    for column in [header.building, header.unit, header.guard]
        .into_iter()
        .flatten()
    {
        let cell = row.sheet_cell(column);
        let doubt = cell.and_then(|cell| cell.doubt.as_ref());
        if let Some(doubt) = doubt.filter(|doubt| doubt.bears_on_names()) {
            let heading = &header.headings[column];
            complaints.push(cell_in_doubt(row, column, heading, doubt));
            condition.doubt(column..column + 1);
        }
    }
}
