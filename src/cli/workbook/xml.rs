//! XML as a run of beginnings, texts and ends, by local names.

use quick_xml::Reader;
use quick_xml::XmlVersion;
use quick_xml::events::BytesStart;
use quick_xml::events::Event;

use crate::cli::workbook::refusal::Refusal;

/// One step through a part.
#[derive(Debug)]
pub(super) enum XmlStep<'x> {
    /// An element begins; one without content ends at once, with an [`XmlStep::End`].
    Start(Element<'x>),
    /// An element of this local name ends.
    End(String),
    /// Text between them, with entities resolved.
    Text(String),
    /// The part ends.
    Over,
}

/// The beginning of an element.
#[derive(Debug)]
pub(super) struct Element<'x>(BytesStart<'x>);

impl Element<'_> {
    /// Its name without a prefix.
    pub(super) fn name(&self) -> &str {
        self.0.local_name().into_inner()
    }

    /// Whether it carries this prefix.
    pub(super) fn has_prefix(&self, prefix: &str) -> bool {
        let name = self.0.name();
        name.prefix().is_some_and(|p| p.as_ref() == prefix)
    }

    /// An attribute by its local name.
    pub(super) fn attribute(&self, name: &str) -> Option<String> {
        let mut all = self.0.attributes();
        let found = all
            .with_checks(false)
            .flatten()
            .find(|a| a.key.local_name().into_inner() == name)?;
        found
            .normalized_value(XmlVersion::Implicit1_0)
            .ok()
            .map(|value| value.into_owned())
    }

    /// An attribute with its prefix, where two have one local name.
    pub(super) fn prefixed(&self, name: &str) -> Option<String> {
        let found = self.0.try_get_attribute(name).ok()??;
        found
            .normalized_value(XmlVersion::Implicit1_0)
            .ok()
            .map(|value| value.into_owned())
    }

    /// An attribute that is a whole number.
    pub(super) fn number(&self, name: &str) -> Option<u32> {
        self.attribute(name)?.trim().parse().ok()
    }

    /// Whether an attribute says yes: `1` or `true`.
    pub(super) fn is_on(&self, name: &str) -> bool {
        matches!(self.attribute(name).as_deref(), Some("1" | "true"))
    }
}

/// Goes through a part.
pub(super) struct Xml<'x> {
    reader: Reader<&'x [u8]>,
    /// The end of an element that had no content.
    ended: Option<String>,
}

impl<'x> Xml<'x> {
    /// Through this text.
    pub(super) fn new(text: &'x str) -> Xml<'x> {
        Xml {
            reader: Reader::from_str(text),
            ended: None,
        }
    }

    /// The next step.
    ///
    /// # Errors
    /// Where it is no well-formed XML.
    pub(super) fn step(&mut self) -> Result<XmlStep<'x>, Refusal> {
        if let Some(name) = self.ended.take() {
            return Ok(XmlStep::End(name));
        }
        loop {
            let event = self.reader.read_event().map_err(|_| Refusal::Damaged)?;
            return Ok(match event {
                Event::Start(start) => XmlStep::Start(Element(start)),
                Event::Empty(start) => {
                    let element = Element(start);
                    self.ended = Some(element.name().to_owned());
                    XmlStep::Start(element)
                }
                Event::End(end) => XmlStep::End(end.local_name().into_inner().to_owned()),
                Event::Text(text) => {
                    XmlStep::Text(text.xml_content(XmlVersion::Implicit1_0).into_owned())
                }
                Event::CData(text) => {
                    XmlStep::Text(text.xml_content(XmlVersion::Implicit1_0).into_owned())
                }
                Event::GeneralRef(entity) => XmlStep::Text(entity_text(&entity)?),
                Event::Eof => XmlStep::Over,
                Event::Comment(_) | Event::Decl(_) | Event::DocType(_) | Event::PI(_) => continue,
            });
        }
    }

    /// Passes over what is within the element that has just begun, to its end.
    ///
    /// # Errors
    /// Where it is no well-formed XML.
    pub(super) fn skip(&mut self) -> Result<(), Refusal> {
        let mut open = 1_usize;
        while open > 0 {
            match self.step()? {
                XmlStep::Start(_) => open += 1,
                XmlStep::End(_) => open -= 1,
                XmlStep::Text(_) => {}
                XmlStep::Over => return Err(Refusal::Damaged),
            }
        }
        Ok(())
    }
}

/// The character of a reference; the five of XML, or by number.
fn entity_text(entity: &quick_xml::events::BytesRef<'_>) -> Result<String, Refusal> {
    if let Ok(Some(character)) = entity.resolve_char_ref() {
        return Ok(character.to_string());
    }
    let known = match &**entity {
        "amp" => "&",
        "lt" => "<",
        "gt" => ">",
        "quot" => "\"",
        "apos" => "'",
        _ => return Err(Refusal::Damaged),
    };
    Ok(known.to_owned())
}
