//! Workbooks in the form .xlsx (ISO/IEC 29500).

use std::collections::HashMap;
use std::sync::Arc;

use crate::cli::workbook::bounds::WorkbookBounds;
use crate::cli::workbook::formats;
use crate::cli::workbook::grid::GridCell;
use crate::cli::workbook::grid::Merged;
use crate::cli::workbook::grid::NumberFormat;
use crate::cli::workbook::grid::SheetGrid;
use crate::cli::workbook::grid::Stored;
use crate::cli::workbook::grid::Workbook;
use crate::cli::workbook::grid::address;
use crate::cli::workbook::grid::day_of;
use crate::cli::workbook::grid::time_of;
use crate::cli::workbook::parts::ZipParts;
use crate::cli::workbook::refusal::Refusal;
use crate::cli::workbook::rich::RichText;
use crate::cli::workbook::xml::Element;
use crate::cli::workbook::xml::Xml;
use crate::cli::workbook::xml::XmlStep;

/// The part that names the sheets.
pub(super) const WORKBOOK: &str = "xl/workbook.xml";

/// Days between the two systems of counting them: 1900 and 1904.
const DAYS_TO_1904: f64 = 1_462.0;

/// What all sheets share.
#[derive(Default)]
struct XlsxShared {
    strings: Vec<RichString>,
    styles: Vec<XlsxStyle>,
    /// Days are counted from 1904.
    from_1904: bool,
    /// Formulas are worked out when the book is opened: a stored 0 may be none.
    recalculates: bool,
}

/// A text, and whether something of it is struck out.
#[derive(Clone, Default)]
struct RichString {
    text: String,
    is_struck: bool,
}

/// How a cell looks, as far as it matters.
#[derive(Clone, Default)]
struct XlsxStyle {
    fill: Option<Arc<str>>,
    format: NumberFormat,
    is_struck: bool,
}

/// A sheet's name and part.
struct SheetPart {
    name: String,
    path: String,
    is_hidden: bool,
}

/// Reads the book.
///
/// # Errors
/// Where a part is missing, damaged or too large.
pub(super) fn read(
    parts: &mut ZipParts<'_>,
    bounds: &mut WorkbookBounds,
) -> Result<Workbook, Refusal> {
    let mut shared = XlsxShared::default();
    let listed = sheets(parts, &mut shared)?;
    shared.styles = styles(parts)?;
    shared.strings = strings(parts, bounds)?;
    let mut book = Workbook::default();
    for sheet in listed {
        let Some(text) = parts.text(&sheet.path)? else {
            // a chart sheet, or a part that is gone: nothing to read
            continue;
        };
        let mut grid = SheetGrid {
            name: sheet.name,
            is_hidden: sheet.is_hidden,
            ..SheetGrid::default()
        };
        cells(&text, &shared, bounds, &mut grid)?;
        comments(parts, &sheet.path, &mut grid)?;
        book.sheets.push(grid);
    }
    Ok(book)
}

fn sheets(parts: &mut ZipParts<'_>, shared: &mut XlsxShared) -> Result<Vec<SheetPart>, Refusal> {
    let text = parts.text(WORKBOOK)?.ok_or(Refusal::Damaged)?;
    let targets = relations(parts, WORKBOOK)?;
    let mut sheets = Vec::new();
    let mut xml = Xml::new(&text);
    loop {
        let element = match xml.step()? {
            XmlStep::Start(element) => element,
            XmlStep::Over => break,
            XmlStep::End(_) | XmlStep::Text(_) => continue,
        };
        match element.name() {
            "workbookPr" => shared.from_1904 = element.is_on("date1904"),
            "calcPr" => shared.recalculates = element.is_on("fullCalcOnLoad"),
            "sheet" => {
                let id = element.attribute("id").unwrap_or_default();
                let target = targets.iter().find(|relation| relation.id == id);
                let Some(target) = target.filter(|t| t.kind.ends_with("/worksheet")) else {
                    continue;
                };
                sheets.push(SheetPart {
                    name: element.attribute("name").unwrap_or_default(),
                    path: target.path.clone(),
                    is_hidden: element.attribute("state").is_some_and(|s| s != "visible"),
                });
            }
            _ => {}
        }
    }
    Ok(sheets)
}

/// What a part refers to.
struct Relation {
    id: String,
    kind: String,
    path: String,
}

fn relations(parts: &mut ZipParts<'_>, of: &str) -> Result<Vec<Relation>, Refusal> {
    let (folder, file) = of.rsplit_once('/').unwrap_or(("", of));
    let Some(text) = parts.text(&format!("{folder}/_rels/{file}.rels"))? else {
        return Ok(Vec::new());
    };
    let mut relations = Vec::new();
    let mut xml = Xml::new(&text);
    loop {
        match xml.step()? {
            XmlStep::Start(element) if element.name() == "Relationship" => {
                let target = element.attribute("Target").unwrap_or_default();
                // `r:id` shares its local name with nothing else here
                relations.push(Relation {
                    id: element.attribute("Id").unwrap_or_default(),
                    kind: element.attribute("Type").unwrap_or_default(),
                    path: resolved(folder, &target),
                });
            }
            XmlStep::Over => return Ok(relations),
            XmlStep::End(_) | XmlStep::Start(_) | XmlStep::Text(_) => {}
        }
    }
}

/// A path as seen from a folder: `../comments1.xml`, `/xl/sheet.xml`.
fn resolved(folder: &str, target: &str) -> String {
    if let Some(whole) = target.strip_prefix('/') {
        return whole.to_owned();
    }
    let mut steps: Vec<&str> = folder.split('/').filter(|s| !s.is_empty()).collect();
    for step in target.split('/') {
        match step {
            ".." => drop(steps.pop()),
            "." | "" => {}
            name => steps.push(name),
        }
    }
    steps.join("/")
}

fn styles(parts: &mut ZipParts<'_>) -> Result<Vec<XlsxStyle>, Refusal> {
    let Some(text) = parts.text("xl/styles.xml")? else {
        return Ok(Vec::new());
    };
    let mut codes: HashMap<u32, String> = HashMap::new();
    let mut struck_fonts: Vec<bool> = Vec::new();
    let mut fills: Vec<Option<Arc<str>>> = Vec::new();
    let mut styles = Vec::new();
    let mut within = String::new();
    let mut xml = Xml::new(&text);
    loop {
        let element = match xml.step()? {
            XmlStep::Start(element) => element,
            XmlStep::End(name) => {
                if name == within {
                    within.clear();
                }
                continue;
            }
            XmlStep::Text(_) => continue,
            XmlStep::Over => return Ok(styles),
        };
        match (within.as_str(), element.name()) {
            ("", "fonts" | "fills" | "cellXfs" | "numFmts") => {
                element.name().clone_into(&mut within)
            }
            ("numFmts", "numFmt") => {
                if let (Some(id), Some(code)) =
                    (element.number("numFmtId"), element.attribute("formatCode"))
                {
                    codes.insert(id, code);
                }
            }
            ("fonts", "font") => struck_fonts.push(false),
            ("fonts", "strike") => {
                if let Some(last) = struck_fonts.last_mut() {
                    *last = is_not_off(&element);
                }
            }
            ("fills", "fill") => fills.push(None),
            ("fills", "patternFill")
                if element.attribute("patternType").as_deref() == Some("solid") =>
            {
                let number = fills.len();
                if let Some(last) = fills.last_mut() {
                    *last = Some(format!("fill {number}").into());
                }
            }
            ("cellXfs", "xf") => {
                let fill = element.number("fillId").unwrap_or(0) as usize;
                let id = element.number("numFmtId").unwrap_or(0);
                let font = element.number("fontId").unwrap_or(0) as usize;
                let code = codes.get(&id).map(|code| formats::of_code(code));
                styles.push(XlsxStyle {
                    fill: fills.get(fill).cloned().flatten(),
                    format: code.unwrap_or_else(|| formats::built_in(id)),
                    is_struck: struck_fonts.get(font).copied().unwrap_or(false),
                });
            }
            (_, _) => {}
        }
    }
}

/// A mark that is on where it stands, unless it says otherwise.
fn is_not_off(element: &Element<'_>) -> bool {
    !matches!(
        element.attribute("val").as_deref(),
        Some("0" | "false" | "none")
    )
}

fn strings(
    parts: &mut ZipParts<'_>,
    bounds: &mut WorkbookBounds,
) -> Result<Vec<RichString>, Refusal> {
    let Some(text) = parts.text("xl/sharedStrings.xml")? else {
        return Ok(Vec::new());
    };
    let mut strings = Vec::new();
    let mut xml = Xml::new(&text);
    loop {
        match xml.step()? {
            XmlStep::Start(element) if element.name() == "si" => {
                bounds.count()?;
                strings.push(rich(&mut xml, "si")?);
            }
            XmlStep::Over => return Ok(strings),
            XmlStep::End(_) | XmlStep::Start(_) | XmlStep::Text(_) => {}
        }
    }
}

/// The text of runs up to the end of this element; readings of Chinese
/// characters (`rPh`) are no part of it.
fn rich(xml: &mut Xml<'_>, until: &str) -> Result<RichString, Refusal> {
    let mut text = RichText::default();
    let (mut in_text, mut is_raised, mut is_struck) = (false, false, false);
    loop {
        match xml.step()? {
            XmlStep::Start(element) => match element.name() {
                "rPh" => xml.skip()?,
                "r" => (is_raised, is_struck) = (false, false),
                "vertAlign" => {
                    is_raised = matches!(
                        element.attribute("val").as_deref(),
                        Some("superscript" | "subscript")
                    );
                }
                "strike" => is_struck = is_not_off(&element),
                "t" => in_text = true,
                _ => {}
            },
            XmlStep::Text(run) if in_text => text.push(&unescaped(&run), is_raised, is_struck),
            XmlStep::End(name) if name == "t" => in_text = false,
            XmlStep::End(name) if name == until => break,
            XmlStep::Text(_) | XmlStep::End(_) => {}
            XmlStep::Over => return Err(Refusal::Damaged),
        }
    }
    Ok(RichString {
        is_struck: text.is_struck(),
        text: text.finish(),
    })
}

/// `_x000D_` stands for a character that XML cannot hold.
fn unescaped(text: &str) -> String {
    let mut whole = String::with_capacity(text.len());
    let mut rest = text;
    while let Some(at) = rest.find("_x") {
        let (before, from) = rest.split_at(at);
        whole.push_str(before);
        let code = from.get(2..6).filter(|_| from.get(6..7) == Some("_"));
        let character = code
            .and_then(|code| u32::from_str_radix(code, 16).ok())
            .and_then(char::from_u32);
        match character {
            Some(character) => {
                whole.push(character);
                rest = &from[7..];
            }
            None => {
                whole.push_str("_x");
                rest = &from[2..];
            }
        }
    }
    whole.push_str(rest);
    whole
}

fn cells(
    text: &str,
    shared: &XlsxShared,
    bounds: &mut WorkbookBounds,
    grid: &mut SheetGrid,
) -> Result<(), Refusal> {
    let mut xml = Xml::new(text);
    // a row or cell that does not say where it stands follows the one before
    let (mut row, mut column) = (0_u32, 0_u32);
    loop {
        let element = match xml.step()? {
            XmlStep::Start(element) => element,
            XmlStep::Over => return Ok(()),
            XmlStep::End(name) => {
                if name == "row" {
                    row = row.saturating_add(1);
                }
                continue;
            }
            XmlStep::Text(_) => continue,
        };
        match element.name() {
            "row" => {
                row = element.number("r").map_or(row, |r| r.saturating_sub(1));
                column = 0;
                if element.is_on("hidden") {
                    grid.hidden_rows.insert(row);
                }
            }
            "c" => {
                let at = element.attribute("r").as_deref().and_then(address);
                let at = at.unwrap_or((row, column));
                bounds.check_place(at)?;
                column = at.1.saturating_add(1);
                let cell = cell(&mut xml, &element, shared)?;
                if cell.value != Stored::Blank || cell.formula.is_some() {
                    bounds.count()?;
                    grid.cells.insert(at, cell);
                } else if let Some(fill) = cell.fill {
                    bounds.count()?;
                    grid.coloured.insert(at, fill);
                }
            }
            "col" if element.is_on("hidden") => {
                let first = element.number("min").unwrap_or(1).max(1) - 1;
                let last = element.number("max").unwrap_or(1).max(1) - 1;
                grid.hidden_columns.push((first, last));
            }
            "mergeCell" => {
                let range = element.attribute("ref").unwrap_or_default();
                grid.merged.extend(merged(&range));
                bounds.count()?;
            }
            "drawing" => grid.has_drawings = true,
            _ => {}
        }
    }
}

fn merged(range: &str) -> Option<Merged> {
    let (first, last) = range.split_once(':')?;
    let (first, last) = (address(first)?, address(last)?);
    Some(Merged {
        rows: (first.0, last.0),
        columns: (first.1, last.1),
    })
}

/// One cell, up to its end.
fn cell(
    xml: &mut Xml<'_>,
    element: &Element<'_>,
    shared: &XlsxShared,
) -> Result<GridCell, Refusal> {
    let kind = element.attribute("t").unwrap_or_default();
    let style = element.number("s").unwrap_or(0) as usize;
    let style = shared.styles.get(style).cloned().unwrap_or_default();
    let mut formula: Option<String> = None;
    let mut stored = String::new();
    let mut inline: Option<RichString> = None;
    let mut within = "";
    loop {
        match xml.step()? {
            XmlStep::Start(inner) => match inner.name() {
                "f" => {
                    within = "f";
                    formula.get_or_insert_default();
                }
                "v" => within = "v",
                "is" => inline = Some(rich(xml, "is")?),
                _ => within = "",
            },
            XmlStep::Text(text) => match within {
                "f" => formula.get_or_insert_default().push_str(&text),
                "v" => stored.push_str(&text),
                _ => {}
            },
            XmlStep::End(name) if name == "c" => break,
            XmlStep::End(_) => within = "",
            XmlStep::Over => return Err(Refusal::Damaged),
        }
    }
    let mut cell = GridCell {
        format: style.format.clone(),
        is_struck: style.is_struck,
        fill: style.fill.clone(),
        formula,
        ..GridCell::default()
    };
    cell.value = match kind.as_str() {
        "s" => {
            let index: Option<usize> = stored.trim().parse().ok();
            let text = index.and_then(|index| shared.strings.get(index));
            let text = text.cloned().ok_or(Refusal::Damaged)?;
            cell.is_struck |= text.is_struck;
            Stored::Text(text.text)
        }
        "inlineStr" => {
            let text = inline.unwrap_or_default();
            cell.is_struck |= text.is_struck;
            Stored::Text(text.text)
        }
        "str" => Stored::Text(unescaped(&stored)),
        "b" => Stored::Bool(stored.trim() == "1"),
        "e" => Stored::Error(stored),
        "d" => Stored::Text(stored),
        _ => number(stored.trim(), &cell, shared),
    };
    let is_empty = matches!(&cell.value, Stored::Text(text) if text.is_empty());
    if is_empty || cell.value == Stored::Blank {
        cell.value = if cell.formula.is_some() && kind != "str" {
            Stored::NoResult
        } else {
            Stored::Blank
        };
    }
    Ok(cell)
}

/// A stored number, or the day or time that its format makes of it.
fn number(stored: &str, cell: &GridCell, shared: &XlsxShared) -> Stored {
    if stored.is_empty() {
        return Stored::Blank;
    }
    let Ok(number) = stored.parse::<f64>() else {
        return Stored::Error(stored.to_owned());
    };
    if cell.formula.is_some() && number == 0.0 && shared.recalculates {
        return Stored::NoResult;
    }
    if cell.format != NumberFormat::DateOrTime {
        return Stored::Number(number);
    }
    if (0.0..1.0).contains(&number) {
        return time_of(number);
    }
    let serial = if shared.from_1904 {
        number + DAYS_TO_1904
    } else {
        number
    };
    day_of(serial).map_or(Stored::Number(number), Stored::Date)
}

/// Comments beside cells of a sheet.
fn comments(parts: &mut ZipParts<'_>, sheet: &str, grid: &mut SheetGrid) -> Result<(), Refusal> {
    let relations = relations(parts, sheet)?;
    let Some(path) = relations.iter().find(|r| r.kind.ends_with("/comments")) else {
        return Ok(());
    };
    let Some(text) = parts.text(&path.path)? else {
        return Ok(());
    };
    let mut xml = Xml::new(&text);
    loop {
        match xml.step()? {
            XmlStep::Start(element) if element.name() == "comment" => {
                let at = element.attribute("ref").as_deref().and_then(address);
                let comment = rich(&mut xml, "comment")?.text;
                if let Some(at) = at {
                    let cell = grid.cells.entry(at).or_default();
                    cell.comment = Some(comment.trim().to_owned()).filter(|c| !c.is_empty());
                }
            }
            XmlStep::Over => return Ok(()),
            XmlStep::End(_) | XmlStep::Start(_) | XmlStep::Text(_) => {}
        }
    }
}
