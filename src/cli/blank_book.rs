//! The blank survey as a workbook: lists to choose from, headings that stay in
//! view, and a sheet on how to measure.

use std::io;
use std::io::Write;

use rust_xlsxwriter::DataValidation;
use rust_xlsxwriter::Format;
use rust_xlsxwriter::FormatAlign;
use rust_xlsxwriter::Formula;
use rust_xlsxwriter::Workbook;
use rust_xlsxwriter::Worksheet;
use rust_xlsxwriter::XlsxError;

use crate::items::Item;
use crate::items::Kind;
use crate::report;
use crate::report::BlankSurvey;
use crate::report::BlankTable;

/// Rows below the last one that take the same form, for guards that are added.
const MORE_ROWS: u32 = 200;

/// What our own sheets beside the survey begin with.
pub(super) const OURS: &str = "guardrule:";

/// Writes it.
///
/// # Errors
/// Those of `out`, and where the workbook cannot be made.
pub(super) fn write(out: &mut dyn Write, blank: &BlankSurvey<'_>) -> io::Result<()> {
    let table = report::blank_table(blank);
    let bytes = book(&table).map_err(io::Error::other)?;
    out.write_all(&bytes)
}

fn book(table: &BlankTable) -> Result<Vec<u8>, XlsxError> {
    let mut book = Workbook::new();
    let mut words = WordSheet::new()?;
    let sheet = book.add_worksheet().set_name("Survey")?;
    survey(sheet, table, &mut words)?;
    how_to(book.add_worksheet().set_name("How to measure")?, table)?;
    book.push_worksheet(words.sheet);
    book.save_to_buffer()
}

/// The survey itself; every cell is text, so that no reading becomes a date.
fn survey(
    sheet: &mut Worksheet,
    table: &BlankTable,
    words: &mut WordSheet,
) -> Result<(), XlsxError> {
    let text = Format::new().set_num_format("@");
    let head = Format::new().set_num_format("@").set_bold().set_text_wrap();
    let last_row = u32::try_from(table.rows.len())
        .unwrap_or(u32::MAX)
        .saturating_add(MORE_ROWS);
    for (column, (heading, item)) in (0_u16..).zip(table.headings.iter().zip(&table.items)) {
        sheet.set_column_format(column, &text)?;
        sheet.set_column_width(column, if column < 2 { 18.0 } else { 15.0 })?;
        sheet.write_string_with_format(0, column, *heading, &head)?;
        let Some(item) = item else {
            continue;
        };
        if let Some(list) = words.list(*item)? {
            // another word may be right: what is chosen is checked when it is read
            let choice = DataValidation::new()
                .allow_list_formula(Formula::new(list))
                .show_error_message(false);
            sheet.add_data_validation(1, column, last_row, column, &choice)?;
        }
    }
    for (row, cells) in (1_u32..).zip(&table.rows) {
        for (column, cell) in (0_u16..).zip(cells) {
            if !cell.is_empty() {
                sheet.write_string_with_format(row, column, cell, &text)?;
            }
        }
    }
    sheet.set_freeze_panes(1, 2)?;
    Ok(())
}

/// What each column asks, and how to find it.
fn how_to(sheet: &mut Worksheet, table: &BlankTable) -> Result<(), XlsxError> {
    let bold = Format::new().set_bold();
    let wrapped = Format::new().set_text_wrap().set_align(FormatAlign::Top);
    let notes = [
        "guardrule: how to fill in the sheet Survey (one railing a row)",
        "Write the unit with each reading: 36 1/4 in, 920 mm. Several readings of one thing are parted by ;",
        "An empty cell is not measured. Write none where you looked and there is none, and not reached where you could not look.",
        "Do not lean on a railing that you doubt. The local authority and licensed professionals decide.",
    ];
    for (row, note) in (0_u32..).zip(notes) {
        sheet.write_string(row, 0, note)?;
    }
    for (column, (heading, width)) in (0_u16..).zip([
        ("column", 22.0),
        ("what it is", 50.0),
        ("how", 80.0),
        ("such as", 30.0),
    ]) {
        sheet.write_string_with_format(5, column, heading, &bold)?;
        sheet.set_column_width(column, width)?;
    }
    let asked = table.headings.iter().zip(&table.items);
    let asked = asked.filter_map(|(heading, item)| Some((heading, (*item)?.info())));
    for (row, (heading, info)) in (6_u32..).zip(asked) {
        let cells = [
            (*heading).to_owned(),
            info.means.to_owned(),
            info.how.join(" "),
            info.examples.join(", "),
        ];
        for (column, cell) in (0_u16..).zip(cells) {
            sheet.write_string_with_format(row, column, cell, &wrapped)?;
        }
    }
    sheet.set_freeze_panes(6, 1)?;
    Ok(())
}

/// The words of each item, on a sheet of their own that the lists refer to.
struct WordSheet {
    sheet: Worksheet,
    columns: u16,
}

impl WordSheet {
    fn new() -> Result<WordSheet, XlsxError> {
        let mut sheet = Worksheet::new();
        sheet.set_name("Words")?;
        sheet.set_hidden(true);
        sheet.write_string(0, 0, format!("{OURS} the words to choose from"))?;
        Ok(WordSheet { sheet, columns: 0 })
    }

    /// The range of an item's words, where it takes words of a list.
    fn list(&mut self, item: Item) -> Result<Option<String>, XlsxError> {
        let Kind::Words(words) = item.info().kind else {
            return Ok(None);
        };
        let column = self.columns;
        self.columns += 1;
        let mut row = 1;
        for word in words {
            self.sheet.write_string(row, column, word.name)?;
            row += 1;
        }
        let letters = rust_xlsxwriter::utility::column_number_to_name(column);
        Ok(Some(format!("=Words!${letters}$2:${letters}${row}")))
    }
}
