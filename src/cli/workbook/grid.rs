//! What a workbook holds, whichever program wrote it.

use std::collections::BTreeMap;
use std::collections::BTreeSet;
use std::sync::Arc;

/// A workbook's sheets.
#[derive(Debug, Default)]
pub(super) struct Workbook {
    pub(super) sheets: Vec<SheetGrid>,
}

/// One sheet; rows and columns are counted from 0.
#[derive(Debug, Default)]
pub(super) struct SheetGrid {
    pub(super) name: String,
    pub(super) is_hidden: bool,
    /// Cells that hold something.
    pub(super) cells: BTreeMap<(u32, u32), GridCell>,
    pub(super) merged: Vec<Merged>,
    pub(super) hidden_rows: BTreeSet<u32>,
    /// First and last of columns that are hidden.
    pub(super) hidden_columns: Vec<(u32, u32)>,
    /// Cells that hold a colour and nothing else, with the colour.
    pub(super) coloured: BTreeMap<(u32, u32), Arc<str>>,
    /// Whether pictures or text boxes lie on it.
    pub(super) has_drawings: bool,
}

/// A merged range, first and last row and column.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Merged {
    pub(super) rows: (u32, u32),
    pub(super) columns: (u32, u32),
}

/// A cell as it is stored.
#[derive(Clone, Debug, Default)]
pub(super) struct GridCell {
    pub(super) value: Stored,
    pub(super) format: NumberFormat,
    pub(super) formula: Option<String>,
    pub(super) is_struck: bool,
    pub(super) comment: Option<String>,
    /// The colour behind it, as the file names it.
    pub(super) fill: Option<Arc<str>>,
}

/// What is stored in a cell.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) enum Stored {
    #[default]
    Blank,
    Bool(bool),
    Date(CalendarDay),
    /// An error of the program, as it shows it.
    Error(String),
    /// A formula without a result that can be trusted.
    NoResult,
    Number(f64),
    Text(String),
    /// Hours, minutes, seconds.
    Time(u32, u32, u32),
}

/// A day of the calendar.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct CalendarDay {
    pub(super) year: i32,
    pub(super) month: u32,
    pub(super) day: u32,
}

/// What the format of a number says of it.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) enum NumberFormat {
    #[default]
    Plain,
    DateOrTime,
    Fraction,
    Money,
    Percent,
    /// Words around the number: `0.0 "in"`.
    Words(String),
}

/// The day of a serial number, counted from the last day of 1899.
///
/// The programs count a 29 February 1900 that never was, so days from March
/// 1900 on count from 30 December 1899 (from memory, and checked on files in
/// the tests); earlier ones are not taken for days.
pub(super) fn day_of(serial: f64) -> Option<CalendarDay> {
    if !(61.0..2_958_466.0).contains(&serial) {
        return None;
    }
    #[expect(
        clippy::cast_possible_truncation,
        reason = "the range is checked above"
    )]
    let days = serial.floor() as i64;
    // days since 1970-01-01, then the civil date: 400 years are 146 097 days
    let shifted = days - 25_569 + 719_468;
    let era = shifted.div_euclid(146_097);
    let of_era = shifted.rem_euclid(146_097);
    let year_of_era = (of_era - of_era / 1_460 + of_era / 36_524 - of_era / 146_096) / 365;
    let of_year = of_era - (365 * year_of_era + year_of_era / 4 - year_of_era / 100);
    let shifted_month = (5 * of_year + 2) / 153;
    let day = of_year - (153 * shifted_month + 2) / 5 + 1;
    let month = if shifted_month < 10 {
        shifted_month + 3
    } else {
        shifted_month - 9
    };
    let year = year_of_era + era * 400 + i64::from(month <= 2);
    Some(CalendarDay {
        year: i32::try_from(year).ok()?,
        month: u32::try_from(month).ok()?,
        day: u32::try_from(day).ok()?,
    })
}

/// The time of the part of a day.
pub(super) fn time_of(part: f64) -> Stored {
    let seconds = (part.fract() * 86_400.0).round().clamp(0.0, 86_399.0);
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "clamped above"
    )]
    let seconds = seconds as u32;
    Stored::Time(seconds / 3_600, seconds / 60 % 60, seconds % 60)
}

/// A column's letters: 0 is A, 26 is AA.
pub(super) fn letters(column: u32) -> String {
    let mut rest = u64::from(column) + 1;
    let mut letters = Vec::new();
    while rest > 0 {
        rest -= 1;
        letters.push(char::from(b'A' + u8::try_from(rest % 26).unwrap_or(0)));
        rest /= 26;
    }
    letters.iter().rev().collect()
}

/// Row and column of `D7`, from 0.
pub(super) fn address(text: &str) -> Option<(u32, u32)> {
    let text = text.replace('$', "");
    let digits = text.find(|c: char| c.is_ascii_digit())?;
    let (letters, number) = text.split_at(digits);
    let mut column = 0_u32;
    for letter in letters.bytes() {
        let place = letter
            .to_ascii_uppercase()
            .checked_sub(b'A')
            .filter(|p| *p < 26)?;
        column = column.checked_mul(26)?.checked_add(u32::from(place) + 1)?;
    }
    let row: u32 = number.parse().ok()?;
    Some((row.checked_sub(1)?, column.checked_sub(1)?))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn serials_are_days_as_the_programs_count_them() {
        let day = |year, month, day| Some(CalendarDay { year, month, day });
        assert_eq!(day_of(46_089.0), day(2026, 3, 8));
        assert_eq!(day_of(46_338.5), day(2026, 11, 12));
        assert_eq!(day_of(61.0), day(1900, 3, 1));
        assert_eq!(day_of(60.0), None);
        assert_eq!(time_of(0.090_972_222), Stored::Time(2, 11, 0));
    }

    #[test]
    fn addresses_are_read_as_they_are_written() {
        for (text, place) in [("A1", (0, 0)), ("D7", (6, 3)), ("$AA$10", (9, 26))] {
            assert_eq!(address(text), Some(place));
            assert_eq!(
                format!("{}{}", letters(place.1), place.0 + 1),
                text.replace('$', "")
            );
        }
        assert_eq!(address("7"), None);
    }
}
