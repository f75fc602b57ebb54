//! From a row to what it says: one entry of a notebook, or one for each filled
//! cell of a table.

use std::borrow::Cow;
use std::collections::HashMap;
use std::sync::Arc;

use crate::input::Diagnostic;
use crate::items::Group;
use crate::items::Item;
use crate::items::NearMiss;
use crate::quantities::LengthUnit;
use crate::reading::Parsed;
use crate::reading::Value;
use crate::reading::parse_or_none;
use crate::survey::codes;
use crate::survey::complaints::Complaints;
use crate::survey::header::Header;
use crate::survey::header::Layout;
use crate::survey::heading::HeaderColumn;
use crate::survey::heading::nearest_name;
use crate::survey::row::SurveyRow;

/// What an entry speaks of.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum EntrySubject {
    /// An item and its reading.
    Item(Item),
    /// An item whose reading cannot be used; that was said already.
    Lost(Item),
    /// Nothing that can be told; that was said already.
    Nothing,
    /// The person's own.
    Own(Arc<str>),
}

/// One thing that a row says.
#[derive(Clone, Debug)]
pub(super) struct RowEntry<'r> {
    pub(super) subject: EntrySubject,
    /// The cell that holds the reading.
    pub(super) cell: usize,
    /// The reading: the cell, or one of several in it.
    pub(super) text: Cow<'r, str>,
    pub(super) note: Arc<str>,
    /// The unit of a bare number, where the heading names one.
    pub(super) unit: Option<LengthUnit>,
}

impl RowEntry<'_> {
    /// In which column it stands.
    pub(super) fn column(&self) -> u32 {
        u32::try_from(self.cell).unwrap_or(u32::MAX)
    }
}

/// What a name in the column `item` means.
#[derive(Clone, Copy, Debug)]
enum Named {
    Item(Item),
    Near(Item, &'static str),
    /// It may mean several items, this one among them.
    Several(Item, &'static NearMiss),
    Own,
}

/// How many different names of items are remembered.
const REMEMBERED: usize = 1000;

/// How many names of items are found without a search.
const RECENT: usize = 128;

/// Takes rows apart.
#[derive(Debug)]
pub(super) struct Entries {
    items: HashMap<Box<str>, Named>,
    /// Names met last, by their length and last letter: most rows find theirs here.
    recent: Vec<Option<(Box<str>, Named)>>,
    no_note: Arc<str>,
}

impl Entries {
    pub(super) fn new() -> Entries {
        Entries {
            items: HashMap::new(),
            recent: vec![None; RECENT],
            no_note: Arc::from(""),
        }
    }

    /// What the row says: the first entry, and the others of a table.
    pub(super) fn of<'r>(
        &mut self,
        row: &SurveyRow<'r>,
        header: &Header,
        complaints: &mut Complaints,
    ) -> (Option<RowEntry<'r>>, Vec<RowEntry<'r>>) {
        match header.layout {
            Layout::Notebook {
                item,
                reading,
                unit,
            } => {
                let mut entry = self.notebook(row, header, (item, reading), complaints);
                if let Some(entry) = &mut entry {
                    entry.unit = unit;
                }
                (entry, self.other_columns(row, header))
            }
            Layout::Table => (None, self.table(row, header, complaints)),
        }
    }

    fn notebook<'r>(
        &mut self,
        row: &SurveyRow<'r>,
        header: &Header,
        (item, reading): (usize, usize),
        complaints: &mut Complaints,
    ) -> Option<RowEntry<'r>> {
        let name = row.cell(item);
        let text = row.cell(reading);
        let note = row.text_of(header.note_column());
        let trusted = row.is_trusted(item) && row.is_trusted(reading);
        if name.is_empty() && text.is_empty() {
            return self.without_item(row, &note, reading);
        }
        let named = (!name.is_empty()).then(|| self.named(&name));
        let subject = match named {
            None if !trusted => EntrySubject::Nothing,
            None => {
                complaints.push(item_missing(row, item, &text));
                EntrySubject::Nothing
            }
            Some(Named::Item(known)) if !trusted => EntrySubject::Lost(known),
            Some(Named::Item(known)) if text.is_empty() => {
                complaints.push(empty_reading(row, reading, known));
                EntrySubject::Lost(known)
            }
            Some(Named::Item(known)) => EntrySubject::Item(known),
            Some(Named::Near(known, right)) => {
                let alike = name.to_lowercase();
                complaints.count(row.file, codes::NEARLY_AN_ITEM, &alike, || {
                    nearly_an_item(row, item, &name, right)
                });
                EntrySubject::Lost(known)
            }
            Some(Named::Several(known, miss)) => {
                let alike = name.to_lowercase();
                complaints.count(row.file, codes::NEARLY_AN_ITEM, &alike, || {
                    several_items(row, item, &name, miss)
                });
                EntrySubject::Lost(known)
            }
            Some(Named::Own) => match shifted(row, header, item) {
                Some((known, diagnostic)) => {
                    complaints.push(diagnostic);
                    EntrySubject::Lost(known)
                }
                None if is_a_gauge(&text) && !Item::is_of_ones_own(&name) => {
                    complaints.push(gauge_of_no_item(row, item, &text));
                    EntrySubject::Lost(Item::Opening)
                }
                None => {
                    let alike = name.to_lowercase();
                    complaints.count(row.file, codes::OWN_ITEM, &alike, || {
                        own_item(row, item, &name)
                    });
                    EntrySubject::Own((&*name).into())
                }
            },
        };
        Some(RowEntry {
            subject,
            cell: reading,
            text,
            note: self.with_comment(row, reading, self.note(&note)),
            unit: None,
        })
    }

    /// A row with neither item nor reading: its note, if it has one.
    fn without_item<'r>(
        &self,
        row: &SurveyRow<'r>,
        note: &str,
        reading: usize,
    ) -> Option<RowEntry<'r>> {
        if row.condition.in_error {
            return Some(self.nothing(reading));
        }
        (!note.is_empty()).then(|| RowEntry {
            subject: EntrySubject::Own("note".into()),
            text: Cow::Owned(note.to_owned()),
            ..self.nothing(reading)
        })
    }

    fn nothing<'r>(&self, cell: usize) -> RowEntry<'r> {
        RowEntry {
            subject: EntrySubject::Nothing,
            cell,
            text: Cow::Borrowed(""),
            note: Arc::clone(&self.no_note),
            unit: None,
        }
    }

    /// A fact of the whole file in a column of a table.
    pub(super) fn filled_down<'r>(
        &self,
        item: Item,
        cell: usize,
        text: Cow<'r, str>,
        unit: Option<LengthUnit>,
    ) -> RowEntry<'r> {
        RowEntry {
            subject: EntrySubject::Item(item),
            text,
            unit,
            ..self.nothing(cell)
        }
    }

    /// Cells of a notebook beside its item and reading: the person's own, which are kept, and
    /// what stands under a heading that could not be used.
    fn other_columns<'r>(&self, row: &SurveyRow<'r>, header: &Header) -> Vec<RowEntry<'r>> {
        if !header.has_more {
            return Vec::new();
        }
        let mut entries = Vec::new();
        for (index, column) in header.columns.iter().enumerate() {
            let text = match column.is_beside_a_notebook() {
                true => row.text_of(index),
                false => continue,
            };
            if text.is_empty() {
                continue;
            }
            let own = || EntrySubject::Own(Arc::clone(&header.headings[index]));
            let subject = match *column {
                HeaderColumn::Misspelt(item) => EntrySubject::Lost(item),
                HeaderColumn::Twice => {
                    entries.push(self.nothing(index));
                    own()
                }
                HeaderColumn::Building
                | HeaderColumn::Guard
                | HeaderColumn::Item
                | HeaderColumn::Note
                | HeaderColumn::NoteOf(_)
                | HeaderColumn::Of(..)
                | HeaderColumn::Own
                | HeaderColumn::Reading(_)
                | HeaderColumn::Unit => own(),
            };
            entries.push(RowEntry {
                subject,
                text,
                ..self.nothing(index)
            });
        }
        entries
    }

    fn table<'r>(
        &self,
        row: &SurveyRow<'r>,
        header: &Header,
        complaints: &mut Complaints,
    ) -> Vec<RowEntry<'r>> {
        let mut entries = Vec::new();
        let note = self.note(&row.text_of(header.note_column()));
        for (index, column) in header.columns.iter().enumerate() {
            let (subject, unit) = match column {
                HeaderColumn::Of(item, unit) if row.is_trusted(index) => {
                    (EntrySubject::Item(*item), *unit)
                }
                HeaderColumn::Of(item, _) | HeaderColumn::Misspelt(item) => {
                    (EntrySubject::Lost(*item), None)
                }
                HeaderColumn::Own
                    if is_a_gauge(&row.text_of(index))
                        && !Item::is_of_ones_own(&header.headings[index]) =>
                {
                    complaints.push(gauge_of_no_item(row, index, &row.text_of(index)));
                    (EntrySubject::Lost(Item::Opening), None)
                }
                HeaderColumn::Own => (EntrySubject::Own(Arc::clone(&header.headings[index])), None),
                HeaderColumn::Twice => {
                    if !row.text_of(index).is_empty() {
                        entries.push(self.nothing(index));
                    }
                    (EntrySubject::Own(Arc::clone(&header.headings[index])), None)
                }
                HeaderColumn::Building
                | HeaderColumn::Guard
                | HeaderColumn::Item
                | HeaderColumn::Note
                | HeaderColumn::NoteOf(_)
                | HeaderColumn::Reading(_)
                | HeaderColumn::Unit => continue,
            };
            let text = row.cell(index);
            if text.is_empty() {
                continue;
            }
            let note = match &subject {
                EntrySubject::Item(item) | EntrySubject::Lost(item) => {
                    let note = self.note_of(row, header, *item, &note);
                    self.with_comment(row, index, note)
                }
                EntrySubject::Nothing | EntrySubject::Own(_) => Arc::clone(&self.no_note),
            };
            let parts: Vec<Cow<'r, str>> = match &subject {
                EntrySubject::Item(_) if text.contains(';') => parts(&text),
                EntrySubject::Item(_)
                | EntrySubject::Lost(_)
                | EntrySubject::Nothing
                | EntrySubject::Own(_) => {
                    vec![text]
                }
            };
            entries.extend(parts.into_iter().map(|text| RowEntry {
                subject: subject.clone(),
                cell: index,
                text,
                note: Arc::clone(&note),
                unit,
            }));
        }
        if entries.is_empty() && (row.condition.in_error || !note.is_empty()) {
            entries.push(match row.condition.in_error {
                true => self.nothing(0),
                false => RowEntry {
                    subject: EntrySubject::Own("note".into()),
                    text: Cow::Owned(note.to_string()),
                    ..self.nothing(header.note.unwrap_or(0))
                },
            });
        }
        loose_notes(row, header, &entries, complaints);
        entries
    }

    /// The note of an item in a table: its own, else the row's.
    fn note_of(
        &self,
        row: &SurveyRow<'_>,
        header: &Header,
        item: Item,
        note: &Arc<str>,
    ) -> Arc<str> {
        let column = header.notes.iter().find(|(of, _)| *of == item);
        match column.map(|(_, column)| row.text_of(*column)) {
            Some(own) if !own.is_empty() => self.note(&own),
            Some(_) | None => Arc::clone(note),
        }
    }

    /// The note, and the spreadsheet's comment beside the cell: it may take the reading back.
    fn with_comment(&self, row: &SurveyRow<'_>, cell: usize, note: Arc<str>) -> Arc<str> {
        match row.sheet_cell(cell).and_then(|cell| cell.comment.as_ref()) {
            None => note,
            Some(comment) if note.is_empty() => Arc::clone(comment),
            Some(comment) => format!("{note}; {comment}").into(),
        }
    }

    fn note(&self, text: &str) -> Arc<str> {
        if text.is_empty() {
            Arc::clone(&self.no_note)
        } else {
            text.into()
        }
    }

    fn named(&mut self, name: &str) -> Named {
        let last = name.bytes().last().unwrap_or_default();
        let slot = (name.len() * 31 + usize::from(last)) % RECENT;
        if let Some((recent, named)) = &self.recent[slot]
            && **recent == *name
        {
            return *named;
        }
        let named = self.named_anew(name);
        self.recent[slot] = Some((name.into(), named));
        named
    }

    fn named_anew(&mut self, name: &str) -> Named {
        if let Some(named) = self.items.get(name) {
            return *named;
        }
        let named = match Item::by_name(name) {
            Some(item) => Named::Item(item),
            None => several(name)
                .or_else(|| {
                    let right = nearest_name(name, Item::names())?;
                    Item::by_name(right).map(|item| Named::Near(item, right))
                })
                .or_else(|| one_of(Item::holding_a_word_of_one(name)?))
                .unwrap_or(Named::Own),
        };
        if self.items.len() >= REMEMBERED {
            self.items.clear();
        }
        self.items.insert(name.into(), named);
        named
    }
}

/// Several readings in one cell of a table.
fn parts<'r>(text: &str) -> Vec<Cow<'r, str>> {
    text.split(';')
        .map(str::trim)
        .filter(|part| !part.is_empty())
        .map(|part| Cow::Owned(part.to_owned()))
        .collect()
}

/// Notes of items for which the row has no reading.
fn loose_notes(
    row: &SurveyRow<'_>,
    header: &Header,
    entries: &[RowEntry<'_>],
    complaints: &mut Complaints,
) {
    for (item, index) in header.notes.iter().copied() {
        let spoken_of = entries
            .iter()
            .any(|entry| matches!(entry.subject, EntrySubject::Item(i) | EntrySubject::Lost(i) if i == item));
        if !spoken_of && !row.cell(index).is_empty() {
            complaints.push(loose_note(row, index, item.name()));
        }
    }
}

/// A note beside nothing.
pub(super) fn loose_note(row: &SurveyRow<'_>, index: usize, beside: &str) -> Diagnostic {
    Diagnostic::warning(
        codes::LOOSE_NOTE,
        format!("a note, and no {beside} that it speaks of: it is not kept"),
        row.excerpt(index),
    )
    .help("write the reading beside it; not reached says that you could not look")
}

fn item_missing(row: &SurveyRow<'_>, item: usize, text: &str) -> Diagnostic {
    Diagnostic::error(
        codes::ITEM_MISSING,
        format!("`{text}` stands here, and no item says what it is"),
        row.excerpt(item),
    )
    .help("write the item: height, opening, bottom gap, drop …")
}

fn empty_reading(row: &SurveyRow<'_>, reading: usize, item: Item) -> Diagnostic {
    Diagnostic::error(
        codes::EMPTY_READING,
        format!("`{item}` has no reading"),
        row.excerpt(reading),
    )
    .help("write what you found; not reached, unknown or none where there is nothing to read")
}

fn nearly_an_item(row: &SurveyRow<'_>, item: usize, name: &str, right: &str) -> Diagnostic {
    Diagnostic::error(
        codes::NEARLY_AN_ITEM,
        format!("`{name}` is no item, but nearly `{right}`"),
        row.excerpt(item),
    )
    .help(format!("write {right}"))
}

/// A name that means one of several items: the first of them is lost.
fn several(name: &str) -> Option<Named> {
    one_of(Item::near_miss_of_name(name)?)
}

fn one_of(miss: &'static NearMiss) -> Option<Named> {
    miss.item().map(|first| Named::Several(first, miss))
}

fn several_items(row: &SurveyRow<'_>, item: usize, name: &str, miss: &NearMiss) -> Diagnostic {
    Diagnostic::error(
        codes::NEARLY_AN_ITEM,
        format!("`{name}` may mean several items"),
        row.excerpt(item),
    )
    .help(miss.says)
}

/// An item where the guard's name belongs, and its reading where the item does: a comma is
/// missing in front of it, and the row says something of another guard or of all. A guard
/// may be called `handrail`, and have items of the person's own.
fn shifted(row: &SurveyRow<'_>, header: &Header, item: usize) -> Option<(Item, Diagnostic)> {
    let guard = header.guard?;
    let known = Item::by_name(row.cell(guard).trim())?;
    let a_number = row.cell(item).starts_with(|c: char| c.is_ascii_digit());
    if known.info().group != Group::Survey && !a_number {
        return None;
    }
    let diagnostic = Diagnostic::error(
        codes::CELLS_SHIFTED,
        format!("`{known}` stands where the guard's name belongs"),
        row.excerpt(guard),
    )
    .help(format!(
        "put one comma more in front of it, so that its reading is `{}`",
        row.cell(item)
    ));
    Some((known, diagnostic))
}

/// Whether a reading says that a ball stops or passes: of a hole of the guard, whatever the
/// person calls it.
fn is_a_gauge(text: &str) -> bool {
    let of_a_ball = |parsed: Parsed| {
        let mut readings = parsed.readings.iter();
        readings.any(|reading| matches!(reading.value, Value::Ball(_)))
    };
    text.contains("ball") && parse_or_none(Item::Opening, text, None).is_some_and(of_a_ball)
}

fn gauge_of_no_item(row: &SurveyRow<'_>, cell: usize, text: &str) -> Diagnostic {
    Diagnostic::error(
        codes::NEARLY_AN_ITEM,
        format!("`{text}` speaks of a hole, and no item that rules read says of which"),
        row.excerpt(cell),
    )
    .help("write opening for the gap between bars, bottom gap below them, end gap beside the last post, riser opening between steps; something else of your own is own …")
}

fn own_item(row: &SurveyRow<'_>, item: usize, name: &str) -> Diagnostic {
    Diagnostic::warning(
        codes::OWN_ITEM,
        format!("`{name}` is your own item: no rule reads it"),
        row.excerpt(item),
    )
    .help("type `guardrule items` to see the items that rules read")
}
