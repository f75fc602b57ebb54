//! Walking a TOML table by hand: every key and value with its place, every
//! fault reported and none hiding the next.

use std::ops::Range;

use toml::Spanned;
use toml::de::DeTable;
use toml::de::DeValue;

use crate::rules::codes::RuleFault;
use crate::rules::faults::Faults;
use crate::rules::faults::instead;
use crate::rules::faults::one_of;

/// A value with its place.
pub(super) type TomlNode<'t> = Spanned<DeValue<'t>>;

/// A text with the place of its value, quotation marks included.
#[derive(Clone, Debug)]
pub(super) struct Text<'t> {
    pub(super) value: &'t str,
    pub(super) at: Range<usize>,
}

/// A key with its place and its value.
pub(super) struct KeyValue<'t> {
    pub(super) key: &'t str,
    pub(super) at: Range<usize>,
    pub(super) value: &'t TomlNode<'t>,
}

/// A table, with the place that stands for it: its header, or its braces.
#[derive(Clone)]
pub(super) struct Fields<'t> {
    table: &'t DeTable<'t>,
    pub(super) at: Range<usize>,
}

impl<'t> Fields<'t> {
    pub(super) fn new(table: &'t DeTable<'t>, at: Range<usize>) -> Fields<'t> {
        Fields { table, at }
    }

    /// The table that a value is; anything else is a fault.
    pub(super) fn of(
        value: &'t TomlNode<'t>,
        what: &str,
        faults: &mut Faults,
    ) -> Option<Fields<'t>> {
        let table = value.get_ref().as_table();
        if table.is_none() {
            let found = kind(value.get_ref());
            let message = format!("{what} is {found}; expected keys with values");
            faults.error(RuleFault::WrongKind, &value.span(), message);
        }
        table.map(|table| Fields::new(table, value.span()))
    }

    /// Its entries in the order of the file.
    pub(super) fn entries(&self) -> Vec<KeyValue<'t>> {
        let mut entries: Vec<KeyValue<'t>> = self
            .table
            .iter()
            .map(|(key, value)| KeyValue {
                key: key.get_ref(),
                at: key.span(),
                value,
            })
            .collect();
        entries.sort_by_key(|entry| entry.at.start);
        entries
    }

    /// Reports every key that is none of these.
    pub(super) fn only(&self, keys: &[&str], what: &str, faults: &mut Faults) {
        for entry in self.entries() {
            if !keys.contains(&entry.key) {
                let message = format!("{what} has no key `{}`", entry.key);
                faults.error_help(
                    RuleFault::UnknownKey,
                    &entry.at,
                    message,
                    instead(entry.key, keys),
                );
            }
        }
    }

    pub(super) fn value(&self, key: &str) -> Option<&'t TomlNode<'t>> {
        self.table.get(key)
    }

    /// The place of a key's value; the table's own where it is not there.
    pub(super) fn at_of(&self, key: &str) -> Range<usize> {
        self.value(key).map_or(self.at.clone(), Spanned::span)
    }

    /// The text of a key that may be missing.
    pub(super) fn text(&self, key: &str, faults: &mut Faults) -> Option<Text<'t>> {
        self.value(key).and_then(|value| text(value, key, faults))
    }

    /// The text of a key that must be there.
    pub(super) fn required(&self, key: &str, what: &str, faults: &mut Faults) -> Option<Text<'t>> {
        if self.value(key).is_none() {
            self.missing(key, what, faults);
        }
        self.text(key, faults)
    }

    /// Reports a missing key at the table's own place.
    pub(super) fn missing(&self, key: &str, what: &str, faults: &mut Faults) {
        faults.error_help(
            RuleFault::MissingKey,
            &self.at,
            format!("{what} needs `{key}`, which is missing"),
            format!("add {key} = \"…\""),
        );
    }

    /// Yes or no, where the key is there.
    pub(super) fn flag(&self, key: &str, faults: &mut Faults) -> Option<bool> {
        let value = self.value(key)?;
        let flag = value.get_ref().as_bool();
        if flag.is_none() {
            faults.error_help(
                RuleFault::WrongKind,
                &value.span(),
                format!(
                    "`{key}` is {}; expected true or false",
                    kind(value.get_ref())
                ),
                format!("write {key} = true or {key} = false, without quotation marks"),
            );
        }
        flag
    }

    /// A list of texts, where the key is there.
    pub(super) fn texts(&self, key: &str, faults: &mut Faults) -> Option<Vec<Text<'t>>> {
        self.value(key).map(|value| texts(value, key, faults))
    }

    /// The tables under a header such as `[[rule.example]]`; none where the key
    /// is not there.
    pub(super) fn tables(&self, key: &str, header: &str, faults: &mut Faults) -> Vec<Fields<'t>> {
        let Some(value) = self.value(key) else {
            return Vec::new();
        };
        let Some(array) = value.get_ref().as_array() else {
            faults.error_help(
                RuleFault::WrongKind,
                &value.span(),
                format!(
                    "`{key}` is {}; expected a list of tables",
                    kind(value.get_ref())
                ),
                format!("write {header}, in two pairs of brackets, before each of them"),
            );
            return Vec::new();
        };
        array
            .iter()
            .filter_map(|value| Fields::of(value, header, faults))
            .collect()
    }
}

/// The text that a value is; anything else, and an empty one, is a fault.
pub(super) fn text<'t>(
    value: &'t TomlNode<'t>,
    key: &str,
    faults: &mut Faults,
) -> Option<Text<'t>> {
    let at = value.span();
    let Some(text) = value.get_ref().as_str() else {
        let found = kind(value.get_ref());
        let message = format!("`{key}` is {found}; expected text in quotation marks");
        match scalar(value.get_ref()) {
            Some(plain) => {
                let help = format!("write \"{plain}\"");
                faults.error_help(RuleFault::WrongKind, &at, message, help);
            }
            None => faults.error(RuleFault::WrongKind, &at, message),
        }
        return None;
    };
    if text.trim().is_empty() {
        let message = format!("`{key}` is empty; expected words");
        faults.error(RuleFault::EmptyText, &at, message);
        return None;
    }
    Some(Text { value: text, at })
}

/// A list of texts; one text alone is a list of one.
pub(super) fn texts<'t>(value: &'t TomlNode<'t>, key: &str, faults: &mut Faults) -> Vec<Text<'t>> {
    match value.get_ref().as_array() {
        Some(array) => array
            .iter()
            .filter_map(|one| text(one, key, faults))
            .collect(),
        None => text(value, key, faults).into_iter().collect(),
    }
}

/// What kind of value it is, in a reader's words.
pub(super) fn kind(value: &DeValue<'_>) -> &'static str {
    match value {
        DeValue::String(_) => "a text",
        DeValue::Integer(_) | DeValue::Float(_) => "a bare number",
        DeValue::Boolean(_) => "true or false",
        DeValue::Datetime(_) => "a date",
        DeValue::Array(_) => "a list",
        DeValue::Table(_) => "a table",
    }
}

/// The plain text of a value that only lacks its quotation marks.
pub(super) fn scalar(value: &DeValue<'_>) -> Option<String> {
    match value {
        DeValue::Integer(number) => Some(number.as_str().to_owned()),
        DeValue::Float(number) => Some(number.as_str().to_owned()),
        DeValue::Datetime(date) => Some(date.to_string()),
        DeValue::Boolean(_) | DeValue::String(_) | DeValue::Array(_) | DeValue::Table(_) => None,
    }
}

/// A word of a list of the format: a hazard, an urgency, a status, a verdict.
pub(super) fn choice<T: Copy>(
    text: &Text<'_>,
    what: &str,
    all: &[T],
    name: fn(T) -> &'static str,
    faults: &mut Faults,
) -> Option<T> {
    let found = all.iter().find(|one| name(**one) == text.value);
    if found.is_none() {
        let names: Vec<&str> = all.iter().map(|one| name(*one)).collect();
        let message = format!(
            "\"{}\" is no {what}; expected {}",
            text.value,
            one_of(&names)
        );
        let help = instead(text.value, &names);
        faults.error_help(RuleFault::UnknownChoice, &text.at, message, help);
    }
    found.copied()
}
