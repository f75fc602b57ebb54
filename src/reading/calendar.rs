//! Days of the calendar, and cells that a spreadsheet turned into one.

use crate::reading::Value;
use crate::reading::error::ReadingError;
use crate::reading::error::quoted;
use crate::reading::tokens::Cursor;
use crate::reading::words::plain;

const MONTHS: [&str; 12] = [
    "january",
    "february",
    "march",
    "april",
    "may",
    "june",
    "july",
    "august",
    "september",
    "october",
    "november",
    "december",
];

/// A day as year, month, day.
pub(super) type Day = (u16, u8, u8);

/// The day of a `date`: `2026-05-04`, `4 May 2026`, `May 4, 2026`.
pub(super) fn day(cursor: &Cursor<'_>) -> Result<Value, ReadingError> {
    let text = plain(cursor.text());
    let whole = cursor.whole();
    let found = quoted(cursor.slice(whole.clone()));
    match plain_date(&text) {
        Some(Ok((year, month, day))) => Ok(Value::Date { year, month, day }),
        Some(Err(message)) => {
            Err(ReadingError::new(message, whole)
                .help("write year, month and day, such as 2026-05-04"))
        }
        None => {
            let error = ReadingError::new(
                format!("year, month and day were expected in this order, and {found} was found"),
                whole,
            );
            Err(match in_our_form(&text) {
                Some(forms) => error.help(format!("write {forms}")),
                None => error.help("write it so: 2026-05-04"),
            })
        }
    }
}

/// The day that a text names without doubt, or what is wrong with it; `None`
/// where it names none.
pub(super) fn plain_date(text: &str) -> Option<Result<Day, String>> {
    let pieces = date_pieces(text);
    let &[a, b, c] = pieces.as_slice() else {
        return None;
    };
    let (year, month, day) = if let (4, Some(month)) = (a.len(), number(b)) {
        (number(a)?, month, number(c)?)
    } else if let Some(month) = month_by_name(b) {
        (four_digits(c)?, month, number(a)?)
    } else if let Some(month) = month_by_name(a) {
        (four_digits(c)?, month, number(b)?)
    } else {
        return None;
    };
    Some(
        day_that_exists(year, month, day)
            .ok_or_else(|| format!("{} is no day of the calendar", quoted(text))),
    )
}

/// The text cut at hyphens, slashes, points, commas and spaces.
fn date_pieces(text: &str) -> Vec<&str> {
    text.split(['-', '/', '.', ',', ' ', '‑', '–'])
        .filter(|piece| !piece.is_empty())
        .take(4)
        .collect()
}

fn number(piece: &str) -> Option<u16> {
    let digits = piece.len() <= 4 && piece.bytes().all(|b| b.is_ascii_digit());
    digits.then(|| piece.parse().ok()).flatten()
}

fn four_digits(piece: &str) -> Option<u16> {
    (piece.len() == 4).then(|| number(piece)).flatten()
}

/// The month of a name or its first three letters or more.
fn month_by_name(piece: &str) -> Option<u16> {
    if piece.len() < 3 {
        return None;
    }
    (1..)
        .zip(MONTHS)
        .find(|(_, name)| name.starts_with(piece))
        .map(|(month, _)| month)
}

fn day_that_exists(year: u16, month: u16, day: u16) -> Option<Day> {
    let leap = year.is_multiple_of(4) && (!year.is_multiple_of(100) || year.is_multiple_of(400));
    let days = match month {
        1 | 3 | 5 | 7 | 8 | 10 | 12 => 31,
        4 | 6 | 9 | 11 => 30,
        2 if leap => 29,
        2 => 28,
        _ => return None,
    };
    if year == 0 || day == 0 || day > days {
        return None;
    }
    Some((year, u8::try_from(month).ok()?, u8::try_from(day).ok()?))
}

/// `03/04/2026` in the form we read, once where the order is plain, else both ways.
fn in_our_form(text: &str) -> Option<String> {
    let pieces = date_pieces(text);
    let &[a, b, c] = pieces.as_slice() else {
        return None;
    };
    let (a, b, year) = (number(a)?, number(b)?, four_digits(c)?);
    let forms: Vec<String> = [day_that_exists(year, a, b), day_that_exists(year, b, a)]
        .into_iter()
        .flatten()
        .map(|(year, month, day)| format!("{year:04}-{month:02}-{day:02}"))
        .collect();
    match forms.as_slice() {
        [] => None,
        [one] => Some(one.clone()),
        [one, other, ..] if one == other => Some(one.clone()),
        [one, other, ..] => Some(format!("{one} or {other}")),
    }
}

/// Whether a spreadsheet seems to have turned the cell into a date: `3-Jul`,
/// `Jul-3`, `2026-03-04`, `03/04/2026`.
pub fn looks_like_a_date(text: &str) -> bool {
    if is_plainly_no_date(text.trim()) {
        return false;
    }
    let text = plain(text);
    let pieces = date_pieces(&text);
    match pieces.as_slice() {
        [a, b] => {
            (number(a).is_some() && month_by_name(b).is_some())
                || (month_by_name(a).is_some() && number(b).is_some())
        }
        [a, b, c] => {
            let named = month_by_name(a).is_some() || month_by_name(b).is_some();
            let numbers = [a, b, c].iter().filter(|p| number(p).is_some()).count();
            let joined = !text.contains([' ', ',']);
            let year = a.len() == 4 || c.len() == 4 || text.matches('/').count() == 2;
            (named && numbers == 2) || (numbers == 3 && joined && year && !mixed_marks(&text))
        }
        _ => false,
    }
}

/// Whether it holds a space or a comma and no word that is long enough for a month: most
/// readings are so.
fn is_plainly_no_date(text: &str) -> bool {
    let mut letters = 0;
    let mut any_month = false;
    for byte in text.bytes() {
        letters = if byte.is_ascii_alphabetic() {
            letters + 1
        } else {
            0
        };
        any_month |= letters >= 3;
    }
    text.is_ascii() && text.contains([' ', ',']) && !any_month
}

/// Whether more than one kind of mark parts the pieces.
fn mixed_marks(text: &str) -> bool {
    ['-', '/', '.']
        .iter()
        .filter(|mark| text.contains(**mark))
        .count()
        > 1
}

/// The error for such a cell.
pub(super) fn spreadsheet_date(cursor: &Cursor<'_>) -> ReadingError {
    let whole = cursor.whole();
    ReadingError::new(
        format!(
            "{} is a date; a spreadsheet seems to have made it of a reading",
            quoted(cursor.slice(whole.clone()))
        ),
        whole,
    )
    .help("format the column as text, and write the reading again, such as 3 11/16 in")
}
