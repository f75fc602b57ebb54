//! Styles of .ods: number formats, what is struck out, raised or hidden.

use std::collections::HashMap;
use std::sync::Arc;

use crate::cli::workbook::grid::NumberFormat;
use crate::cli::workbook::refusal::Refusal;
use crate::cli::workbook::xml::Element;
use crate::cli::workbook::xml::Xml;
use crate::cli::workbook::xml::XmlStep;

/// What a style says, as far as it matters.
#[derive(Clone, Debug, Default)]
pub(super) struct OdsStyle {
    pub(super) format: NumberFormat,
    pub(super) is_struck: bool,
    pub(super) is_raised: bool,
    pub(super) is_hidden: bool,
    /// The colour behind a cell.
    pub(super) fill: Option<Arc<str>>,
}

/// Adds the number formats and styles of a part to those known.
///
/// # Errors
/// Where the part is no well-formed XML.
pub(super) fn read(
    text: &str,
    formats: &mut HashMap<String, NumberFormat>,
    styles: &mut HashMap<String, OdsStyle>,
) -> Result<(), Refusal> {
    let mut named: Option<(String, OdsStyle)> = None;
    let mut format: Option<(String, NumberFormat, String)> = None;
    let mut in_words = false;
    let mut xml = Xml::new(text);
    loop {
        match xml.step()? {
            XmlStep::Start(element) => match element.name() {
                "style" => named = Some(begun(&element, styles, formats)),
                "text-properties" => {
                    if let Some((_, style)) = &mut named {
                        marks(&element, style);
                    }
                }
                "table-cell-properties" => {
                    let colour = element.attribute("background-color");
                    if let (Some((_, style)), Some(colour)) = (&mut named, colour) {
                        style.fill = (colour != "transparent").then(|| colour.into());
                    }
                }
                "table-properties" => {
                    if let Some((_, style)) = &mut named {
                        style.is_hidden = element.attribute("display").as_deref() == Some("false");
                    }
                }
                "number-style" | "percentage-style" | "currency-style" | "date-style"
                | "time-style" => format = Some(format_begun(&element)),
                "fraction" => {
                    if let Some((_, format, _)) = &mut format {
                        *format = NumberFormat::Fraction;
                    }
                }
                "text" if element.has_prefix("number") => in_words = format.is_some(),
                // the sheets themselves follow
                "body" => return Ok(()),
                _ => {}
            },
            XmlStep::Text(run) if in_words => {
                if let Some((_, _, words)) = &mut format {
                    words.push_str(&run);
                }
            }
            XmlStep::End(name) => match name.as_str() {
                "text" => in_words = false,
                "style" => {
                    if let Some((name, style)) = named.take() {
                        styles.insert(name, style);
                    }
                }
                "number-style" | "percentage-style" | "currency-style" | "date-style"
                | "time-style" => {
                    if let Some((name, format, words)) = format.take() {
                        let words = words.trim();
                        let format = match format {
                            NumberFormat::Plain if words.contains(['$', '€', '£', '¥']) => {
                                NumberFormat::Money
                            }
                            NumberFormat::Plain if !words.is_empty() => {
                                NumberFormat::Words(words.to_owned())
                            }
                            other @ (NumberFormat::DateOrTime
                            | NumberFormat::Fraction
                            | NumberFormat::Money
                            | NumberFormat::Percent
                            | NumberFormat::Plain
                            | NumberFormat::Words(_)) => other,
                        };
                        formats.insert(name, format);
                    }
                }
                _ => {}
            },
            XmlStep::Text(_) => {}
            XmlStep::Over => return Ok(()),
        }
    }
}

/// A style begins with what it takes over from its parent.
fn begun(
    element: &Element<'_>,
    styles: &HashMap<String, OdsStyle>,
    formats: &HashMap<String, NumberFormat>,
) -> (String, OdsStyle) {
    let parent = element.attribute("parent-style-name");
    let mut style = parent
        .and_then(|parent| styles.get(&parent).cloned())
        .unwrap_or_default();
    let format = element.attribute("data-style-name");
    if let Some(format) = format.and_then(|format| formats.get(&format).cloned()) {
        style.format = format;
    }
    (element.attribute("name").unwrap_or_default(), style)
}

fn format_begun(element: &Element<'_>) -> (String, NumberFormat, String) {
    let format = match element.name() {
        "percentage-style" => NumberFormat::Percent,
        "currency-style" => NumberFormat::Money,
        "date-style" | "time-style" => NumberFormat::DateOrTime,
        _ => NumberFormat::Plain,
    };
    let name = element.attribute("name").unwrap_or_default();
    (name, format, String::new())
}

fn marks(element: &Element<'_>, style: &mut OdsStyle) {
    let through = ["text-line-through-style", "text-line-through-type"];
    for name in through {
        if let Some(value) = element.attribute(name) {
            style.is_struck = value != "none";
        }
    }
    if let Some(position) = element.attribute("text-position") {
        let place = position.split(' ').next().unwrap_or_default();
        let raised = place.trim_end_matches('%').parse::<f64>();
        style.is_raised =
            place == "super" || place == "sub" || raised.is_ok_and(|by| by.abs() > 0.0);
    }
}
