//! Diagnostics as text: the line they speak of, with the place marked.

use std::borrow::Cow;
use std::io;
use std::io::Write;
use std::ops::Range;

use annotate_snippets::AnnotationKind;
use annotate_snippets::Element;
use annotate_snippets::Level;
use annotate_snippets::Origin;
use annotate_snippets::Renderer;
use annotate_snippets::Snippet;

use crate::input::Diagnostic;
use crate::input::Diagnostics;
use crate::input::Excerpt;
use crate::input::Label;
use crate::input::Severity;
use crate::report::one_line;
use crate::report::wrap::NARROWEST;
use crate::report::wrap::WIDEST;
use crate::report::wrap::wrapped;

/// What stands before a line that is shown: its number and a bar.
const GUTTER: usize = 8;

/// How much of a line is shown before the mark where it is cut: one part of this many.
const BEFORE: usize = 4;

/// What stands before a help, and before a title with its code.
const HELP: usize = 12;
const TITLE: usize = 16;

/// How names of files stand where they are longer than a line.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FileNames {
    /// Their end alone: on a screen.
    Fitted,
    /// Whole, for whoever reads them from a file.
    Whole,
}

/// Writes all diagnostics, by file and place, in lines of this many columns; styles
/// as ANSI sequences.
///
/// # Errors
/// Those of `out`.
pub fn diagnostics_text(
    out: &mut impl Write,
    diagnostics: &Diagnostics,
    columns: usize,
    names: FileNames,
) -> io::Result<()> {
    let columns = columns.clamp(NARROWEST, WIDEST);
    let sorted = diagnostics.sorted();
    for (index, diagnostic) in sorted.iter().enumerate() {
        writeln!(out, "{}", rendered(diagnostic, columns, names))?;
        let file = diagnostic.at.at.file();
        let number = diagnostic.code.number;
        let same = |other: &&&Diagnostic| other.at.at.file() == file && other.code.number == number;
        if sorted[index + 1..].iter().any(|other| same(&other)) {
            continue;
        }
        let more = diagnostics
            .left_out()
            .find(|(name, code, _)| *name == &**file && *code == number);
        if let Some((_, _, count)) = more {
            let title = diagnostic.code.title;
            let name = one_line(file);
            let text = format!("{name}: and {count} more of these (G{number}: {title})");
            writeln!(out, "{}\n", wrapped(&text, columns))?;
        }
    }
    Ok(())
}

fn rendered(diagnostic: &Diagnostic, columns: usize, names: FileNames) -> String {
    let level = match diagnostic.severity {
        Severity::Error => Level::ERROR,
        Severity::Warning => Level::WARNING,
    };
    let code = format!("G{}", diagnostic.code.number);
    let title = wrapped(&one_line(&diagnostic.message), columns - TITLE);
    let title = level.primary_title(title).id(code);
    let mut elements: Vec<Element<'_>> = Vec::new();
    place(
        &mut elements,
        &diagnostic.at,
        AnnotationKind::Primary,
        columns,
        names,
    );
    for label in &diagnostic.also {
        place(
            &mut elements,
            label,
            AnnotationKind::Context,
            columns,
            names,
        );
    }
    if let Some(help) = &diagnostic.help {
        let help = wrapped(&one_line(help), columns - HELP);
        elements.push(Level::HELP.message(help).into());
    }
    let group = title.elements(elements);
    let mut text = Renderer::styled().render(&[group]);
    if diagnostic.at.at.cell().is_some() {
        // the renderer leaves a line for a name that a cell does not have
        let lines = text.lines().filter(|line| shown(line).trim() != ":::");
        text = lines.collect::<Vec<_>>().join("\n");
    }
    text.push('\n');
    text
}

/// A line without its styles.
fn shown(line: &str) -> String {
    let mut parts = line.split('\u{1b}');
    let mut text = parts.next().unwrap_or_default().to_owned();
    for part in parts {
        text.push_str(part.split_once('m').map_or("", |(_, rest)| rest));
    }
    text
}

/// The place of a label: file, line and column, and the line itself.
fn place<'a>(
    elements: &mut Vec<Element<'a>>,
    label: &'a Label,
    kind: AnnotationKind,
    columns: usize,
    names: FileNames,
) {
    let at = &label.at;
    let name = match names {
        FileNames::Fitted => place_name(at, columns),
        FileNames::Whole => place_name(at, usize::MAX),
    };
    let origin = Origin::path(name.clone());
    if at.first_line() == 0 {
        elements.push(origin.into());
        return;
    }
    let number = |value: u64| usize::try_from(value).unwrap_or(usize::MAX);
    let room = columns - GUTTER;
    let (text, range) = cut(at, room);
    // the renderer counts columns in what it is shown, which may be cut
    let counted = width(&text[..range.start]) + 1;
    let path = if at.cell().is_some() {
        // a spreadsheet's cells are found by their address alone
        elements.push(origin.into());
        None
    } else if counted == number(at.column()) {
        Some(name)
    } else {
        let column = number(at.column());
        elements.push(origin.line(number(at.line())).char_column(column).into());
        None
    };
    let says = one_line(&label.says);
    let beside = width(&text[..range.end]) + 1 + width(&says) <= room;
    let mut annotation = kind.span(range);
    if !says.is_empty() && beside {
        annotation = annotation.label(says.clone());
    }
    elements.push(
        Snippet::source(text)
            .path(path)
            .line_start(number(at.line()))
            .annotation(annotation)
            .into(),
    );
    if !says.is_empty() && !beside {
        let says = wrapped(&says, columns - HELP);
        elements.push(Level::NOTE.message(says).into());
    }
}

/// The file, and the cell where it is a spreadsheet: `flats.xlsx, Flats!D7`. Of a name that
/// is longer than a line the end is shown, which is the file's own.
fn place_name(at: &Excerpt, columns: usize) -> String {
    let (name, place) = match at.cell() {
        Some(cell) => (format!("{}!{cell}", one_line(at.file())), String::new()),
        None => (
            one_line(at.file()).into_owned(),
            format!(":{}:{}", at.line(), at.column()),
        ),
    };
    // the arrow is moved in by the digits of the largest line
    let arrow = "--> ".len() + at.line().to_string().len() + 1;
    let room = columns.saturating_sub(arrow + place.len());
    if width(&name) <= room {
        return name;
    }
    tail(&name, room.saturating_sub(1)).into_owned()
}

/// The line on which the mark begins, cut around the mark where it is long, and
/// the mark in it. A mark over several lines is shown to the end of its first.
///
/// Every character that a terminal would obey has become a space.
fn cut(at: &Excerpt, room: usize) -> (String, Range<usize>) {
    let text = at.text();
    let range = at.range();
    let line_start = text[..range.start]
        .rfind('\n')
        .map_or(0, |newline| newline + 1);
    let line_end = text[range.start..]
        .find('\n')
        .map_or(text.len(), |newline| range.start + newline);
    let line = text[line_start..line_end].trim_end_matches('\r');
    let start = (range.start - line_start).min(line.len());
    let end = (range.end - line_start).clamp(start, line.len());
    let before = tail(&line[..start], start_room(line, room));
    let marked = head(&line[start..end], room - room / BEFORE);
    let room = room.saturating_sub(width(&before) + width(&marked));
    let after = if marked.len() < end - start {
        Cow::Borrowed("")
    } else {
        head(&line[end..], room)
    };
    let mut shown = visible(&before);
    let from = shown.len();
    shown.push_str(&visible(&marked));
    let to = shown.len();
    shown.push_str(&visible(&after));
    (shown, from..to)
}

/// How much may stand before the mark: all of it where the line is short.
fn start_room(line: &str, room: usize) -> usize {
    if width(line) <= room {
        room
    } else {
        room / BEFORE
    }
}

fn width(text: &str) -> usize {
    text.chars().count()
}

/// The first characters, with `…` where some are left out.
fn head(text: &str, most: usize) -> Cow<'_, str> {
    match text.char_indices().nth(most) {
        None => Cow::Borrowed(text),
        Some((end, _)) => Cow::Owned(format!("{}…", &text[..end])),
    }
}

/// The last characters, with `…` where some are left out.
fn tail(text: &str, most: usize) -> Cow<'_, str> {
    let count = width(text);
    if count <= most {
        return Cow::Borrowed(text);
    }
    let start = text
        .char_indices()
        .nth(count - most)
        .map_or(0, |(start, _)| start);
    Cow::Owned(format!("…{}", &text[start..]))
}

/// One space for each character that breaks a line or is a tab; the rest by
/// [`one_line`], so that what a terminal would obey is written out.
fn visible(text: &str) -> String {
    let spaced: String = text
        .chars()
        .map(|c| if c == '\t' || c == '\r' { ' ' } else { c })
        .collect();
    one_line(&spaced).into_owned()
}
