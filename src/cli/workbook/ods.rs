//! Workbooks in the form .ods (ISO/IEC 26300).

use std::collections::HashMap;
use std::sync::Arc;

use crate::cli::workbook::bounds::WorkbookBounds;
use crate::cli::workbook::grid::CalendarDay;
use crate::cli::workbook::grid::GridCell;
use crate::cli::workbook::grid::Merged;
use crate::cli::workbook::grid::NumberFormat;
use crate::cli::workbook::grid::SheetGrid;
use crate::cli::workbook::grid::Stored;
use crate::cli::workbook::grid::Workbook;
use crate::cli::workbook::ods_styles;
use crate::cli::workbook::ods_styles::OdsStyle;
use crate::cli::workbook::parts::ZipParts;
use crate::cli::workbook::refusal::Refusal;
use crate::cli::workbook::rich::RichText;
use crate::cli::workbook::xml::Element;
use crate::cli::workbook::xml::Xml;
use crate::cli::workbook::xml::XmlStep;

/// So many cells in a row may hold a colour and nothing else; behind them lies paper.
const MOST_COLOURED: u32 = 50;

/// The part that holds the sheets.
pub(super) const CONTENT: &str = "content.xml";

/// Reads the book.
///
/// # Errors
/// Where a part is missing, damaged, under a password or too large.
pub(super) fn read(
    parts: &mut ZipParts<'_>,
    bounds: &mut WorkbookBounds,
) -> Result<Workbook, Refusal> {
    let manifest = parts.text("META-INF/manifest.xml")?.unwrap_or_default();
    if manifest.contains("encryption-data") {
        return Err(Refusal::Password);
    }
    let (mut formats, mut styles) = (HashMap::new(), HashMap::new());
    if let Some(text) = parts.text("styles.xml")? {
        ods_styles::read(&text, &mut formats, &mut styles)?;
    }
    let content = parts.text(CONTENT)?.ok_or(Refusal::Damaged)?;
    ods_styles::read(&content, &mut formats, &mut styles)?;
    let mut book = Workbook::default();
    let mut xml = Xml::new(&content);
    loop {
        match xml.step()? {
            XmlStep::Start(element) if element.name() == "table" && element.has_prefix("table") => {
                let grid = SheetGrid {
                    name: element.attribute("name").unwrap_or_default(),
                    is_hidden: style_of(&element, &styles).is_hidden,
                    ..SheetGrid::default()
                };
                let mut sheet = OdsSheet {
                    grid,
                    styles: &styles,
                    bounds,
                    column_styles: Vec::new(),
                    columns: 0,
                    row: 0,
                };
                sheet.read(&mut xml)?;
                book.sheets.push(sheet.grid);
            }
            XmlStep::Over => return Ok(book),
            XmlStep::End(_) | XmlStep::Start(_) | XmlStep::Text(_) => {}
        }
    }
}

fn style_of(element: &Element<'_>, styles: &HashMap<String, OdsStyle>) -> OdsStyle {
    let name = element.attribute("style-name");
    name.and_then(|name| styles.get(&name).cloned())
        .unwrap_or_default()
}

/// A sheet that is being read.
struct OdsSheet<'s> {
    grid: SheetGrid,
    styles: &'s HashMap<String, OdsStyle>,
    bounds: &'s mut WorkbookBounds,
    /// The style of cells that name none, by first column.
    column_styles: Vec<(u32, OdsStyle)>,
    columns: u32,
    row: u32,
}

impl OdsSheet<'_> {
    /// Up to the end of the sheet.
    fn read(&mut self, xml: &mut Xml<'_>) -> Result<(), Refusal> {
        loop {
            match xml.step()? {
                XmlStep::Start(element) => match element.name() {
                    "table-column" => self.column(&element),
                    "table-row" => self.one_row(xml, &element)?,
                    "shapes" => {
                        self.grid.has_drawings = true;
                        xml.skip()?;
                    }
                    // groups of rows and columns are gone into
                    "table-row-group"
                    | "table-rows"
                    | "table-header-rows"
                    | "table-columns"
                    | "table-column-group"
                    | "table-header-columns" => {}
                    _ => xml.skip()?,
                },
                XmlStep::End(name) if name == "table" => return Ok(()),
                XmlStep::End(_) | XmlStep::Text(_) => {}
                XmlStep::Over => return Err(Refusal::Damaged),
            }
        }
    }

    fn column(&mut self, element: &Element<'_>) {
        let count = element
            .number("number-columns-repeated")
            .unwrap_or(1)
            .max(1);
        let first = self.columns;
        self.columns = first.saturating_add(count);
        if is_hidden(element) {
            self.grid.hidden_columns.push((first, self.columns - 1));
        }
        let style = element.attribute("default-cell-style-name");
        let style = style.and_then(|name| self.styles.get(&name).cloned());
        self.column_styles.push((first, style.unwrap_or_default()));
    }

    /// A row, as often as it is repeated; empty ones cost nothing.
    fn one_row(&mut self, xml: &mut Xml<'_>, element: &Element<'_>) -> Result<(), Refusal> {
        let count = element.number("number-rows-repeated").unwrap_or(1).max(1);
        let hidden = is_hidden(element);
        let mut cells: Vec<(u32, GridCell)> = Vec::new();
        let mut coloured: Vec<(u32, Arc<str>)> = Vec::new();
        let mut column = 0_u32;
        loop {
            match xml.step()? {
                XmlStep::Start(element) => match element.name() {
                    "table-cell" | "covered-table-cell" => {
                        let repeated = element.number("number-columns-repeated");
                        let repeated = repeated.unwrap_or(1).max(1);
                        let covered = element.name() == "covered-table-cell";
                        self.merge(&element, column);
                        let cell = self.cell(xml, &element, column)?;
                        if !covered && holds_something(&cell) {
                            self.bounds
                                .check_place((0, column.saturating_add(repeated - 1)))?;
                            for at in column..column + repeated {
                                self.bounds.count()?;
                                cells.push((at, cell.clone()));
                            }
                        } else if let Some(fill) = cell.fill.filter(|_| !covered) {
                            let few = column..column.saturating_add(repeated.min(MOST_COLOURED));
                            coloured.extend(few.map(|at| (at, Arc::clone(&fill))));
                        }
                        column = column.saturating_add(repeated);
                    }
                    _ => xml.skip()?,
                },
                XmlStep::End(name) if name == "table-row" => break,
                XmlStep::End(_) | XmlStep::Text(_) => {}
                XmlStep::Over => return Err(Refusal::Damaged),
            }
        }
        if !cells.is_empty() {
            for (column, fill) in coloured {
                self.bounds.count()?;
                self.grid.coloured.insert((self.row, column), fill);
            }
            self.bounds
                .check_place((self.row.saturating_add(count - 1), 0))?;
            for row in self.row..self.row + count {
                if hidden {
                    self.grid.hidden_rows.insert(row);
                }
                for (column, cell) in &cells {
                    self.bounds.count()?;
                    self.grid.cells.insert((row, *column), cell.clone());
                }
            }
        }
        self.row = self.row.saturating_add(count);
        Ok(())
    }

    fn merge(&mut self, element: &Element<'_>, column: u32) {
        let columns = element.number("number-columns-spanned").unwrap_or(1).max(1);
        let rows = element.number("number-rows-spanned").unwrap_or(1).max(1);
        if columns > 1 || rows > 1 {
            self.grid.merged.push(Merged {
                rows: (self.row, self.row.saturating_add(rows - 1)),
                columns: (column, column.saturating_add(columns - 1)),
            });
        }
    }

    /// One cell, up to its end.
    fn cell(
        &mut self,
        xml: &mut Xml<'_>,
        element: &Element<'_>,
        column: u32,
    ) -> Result<GridCell, Refusal> {
        let style = match element.attribute("style-name") {
            Some(name) => self.styles.get(&name).cloned().unwrap_or_default(),
            None => {
                let before = self.column_styles.iter().rev();
                let mut before = before.skip_while(|(first, _)| *first > column);
                before
                    .next()
                    .map(|(_, style)| style.clone())
                    .unwrap_or_default()
            }
        };
        let content = self.content(xml)?;
        let mut cell = GridCell {
            format: style.format,
            formula: element.attribute("formula"),
            is_struck: (style.is_struck || content.is_struck) && !content.text.trim().is_empty(),
            comment: content.comment,
            fill: style.fill,
            ..GridCell::default()
        };
        cell.value = value(element, content.text, &mut cell.format);
        if cell.value == Stored::Blank && cell.formula.is_some() {
            cell.value = Stored::NoResult;
        }
        Ok(cell)
    }

    /// What stands within a cell: paragraphs, and a comment that is no part of them.
    fn content(&mut self, xml: &mut Xml<'_>) -> Result<OdsContent, Refusal> {
        let mut content = OdsContent::default();
        loop {
            match xml.step()? {
                XmlStep::Start(element) => match element.name() {
                    "p" => {
                        let paragraph = self.paragraph(xml)?;
                        content.is_struck |= paragraph.is_struck();
                        if !content.text.is_empty() {
                            content.text.push('\n');
                        }
                        content.text.push_str(&paragraph.finish());
                    }
                    "annotation" => content.comment = self.annotation(xml)?,
                    _ => {
                        self.grid.has_drawings = true;
                        xml.skip()?;
                    }
                },
                XmlStep::End(_) => return Ok(content),
                XmlStep::Text(_) => {}
                XmlStep::Over => return Err(Refusal::Damaged),
            }
        }
    }

    fn annotation(&mut self, xml: &mut Xml<'_>) -> Result<Option<String>, Refusal> {
        let mut text = String::new();
        loop {
            match xml.step()? {
                XmlStep::Start(element) if element.name() == "p" => {
                    let paragraph = self.paragraph(xml)?.finish();
                    if !text.is_empty() {
                        text.push(' ');
                    }
                    text.push_str(paragraph.trim());
                }
                XmlStep::Start(_) => xml.skip()?,
                XmlStep::End(_) => return Ok(Some(text).filter(|text| !text.is_empty())),
                XmlStep::Text(_) => {}
                XmlStep::Over => return Err(Refusal::Damaged),
            }
        }
    }

    /// The text of a paragraph with its runs.
    fn paragraph(&mut self, xml: &mut Xml<'_>) -> Result<RichText, Refusal> {
        let mut text = RichText::default();
        let mut styles: Vec<OdsStyle> = vec![OdsStyle::default()];
        loop {
            let style = styles.last().cloned().unwrap_or_default();
            let mut push = |run: &str| text.push(run, style.is_raised, style.is_struck);
            match xml.step()? {
                XmlStep::Start(element) => match element.name() {
                    "s" => {
                        let count = element.number("c").unwrap_or(1).min(1_000) as usize;
                        push(&" ".repeat(count));
                        xml.skip()?;
                    }
                    "tab" | "line-break" => {
                        push(" ");
                        xml.skip()?;
                    }
                    "span" => styles.push(style_of(&element, self.styles)),
                    _ => styles.push(style),
                },
                XmlStep::Text(run) => push(&run),
                XmlStep::End(_) => {
                    styles.pop();
                    if styles.is_empty() {
                        return Ok(text);
                    }
                }
                XmlStep::Over => return Err(Refusal::Damaged),
            }
        }
    }
}

#[derive(Default)]
struct OdsContent {
    text: String,
    is_struck: bool,
    comment: Option<String>,
}

fn holds_something(cell: &GridCell) -> bool {
    cell.value != Stored::Blank || cell.comment.is_some()
}

fn is_hidden(element: &Element<'_>) -> bool {
    matches!(
        element.attribute("visibility").as_deref(),
        Some("collapse" | "filter")
    )
}

/// The stored value; the cell itself says what kind it is.
fn value(element: &Element<'_>, text: String, format: &mut NumberFormat) -> Stored {
    if element.prefixed("calcext:value-type").as_deref() == Some("error") {
        return Stored::Error(text);
    }
    let kind = element.prefixed("office:value-type").unwrap_or_default();
    let number = || -> Option<f64> { element.prefixed("office:value")?.parse().ok() };
    let stored = match kind.as_str() {
        "float" => number().map(Stored::Number),
        "percentage" => {
            *format = NumberFormat::Percent;
            number().map(Stored::Number)
        }
        "currency" => {
            *format = NumberFormat::Money;
            number().map(Stored::Number)
        }
        "date" => element
            .prefixed("office:date-value")
            .and_then(|date| day(&date))
            .map(Stored::Date),
        "time" => element
            .prefixed("office:time-value")
            .and_then(|time| duration(&time)),
        "boolean" => Some(Stored::Bool(
            element.prefixed("office:boolean-value").as_deref() == Some("true"),
        )),
        _ => None,
    };
    match stored {
        Some(stored) => stored,
        None if text.is_empty() => Stored::Blank,
        None => Stored::Text(text),
    }
}

/// `2026-03-08`, with or without a time behind it.
fn day(text: &str) -> Option<CalendarDay> {
    let date = text.split('T').next()?;
    let mut parts = date.splitn(3, '-');
    Some(CalendarDay {
        year: parts.next()?.parse().ok()?,
        month: parts.next()?.parse().ok()?,
        day: parts.next()?.parse().ok()?,
    })
}

/// `PT02H11M00S`.
fn duration(text: &str) -> Option<Stored> {
    let rest = text.strip_prefix("PT")?;
    let (hours, rest) = rest.split_once('H')?;
    let (minutes, rest) = rest.split_once('M')?;
    let seconds = rest.trim_end_matches('S').split(['.', ',']).next()?;
    Some(Stored::Time(
        hours.parse().ok()?,
        minutes.parse().ok()?,
        seconds.parse().ok()?,
    ))
}
