//! A cell as the text that a survey reads, and why it cannot be taken as it stands.

use crate::cli::workbook::grid::CalendarDay;
use crate::cli::workbook::grid::GridCell;
use crate::cli::workbook::grid::NumberFormat;
use crate::cli::workbook::grid::Stored;
use crate::cli::workbook::grid::address;
use crate::survey::CellDoubt;

/// Months as the programs show them.
const MONTHS: [&str; 12] = [
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
];

/// A cell as one line of text, with the doubt about it.
pub(super) fn of(cell: &GridCell) -> (String, Option<CellDoubt>) {
    let (text, doubt) = match &cell.value {
        Stored::Blank => (String::new(), None),
        Stored::Bool(true) => ("yes".to_owned(), None),
        Stored::Bool(false) => ("no".to_owned(), None),
        Stored::Date(day) => (shown_day(*day), Some(CellDoubt::Date(meant(*day)))),
        Stored::Error(text) => (text.clone(), Some(CellDoubt::Error)),
        Stored::NoResult => {
            let formula = cell.formula.clone().unwrap_or_default();
            let formula = formula.trim_start_matches("of:").to_owned();
            (formula.clone(), Some(CellDoubt::NoResult(formula)))
        }
        Stored::Number(number) => of_number(*number, &cell.format),
        Stored::Text(text) => (one_line(text), None),
        Stored::Time(hours, minutes, seconds) => {
            let text = format!("{hours}:{minutes:02}");
            let meant = if *seconds == 0 {
                format!("{hours} ft {minutes} in, or {hours}:{minutes}")
            } else {
                format!("{hours}:{minutes}:{seconds}")
            };
            (text, Some(CellDoubt::Time(meant)))
        }
    };
    let doubt = if cell.is_struck && !text.is_empty() {
        Some(CellDoubt::StruckOut)
    } else {
        doubt
    };
    (text, doubt)
}

fn of_number(number: f64, format: &NumberFormat) -> (String, Option<CellDoubt>) {
    let plain = decimal(number);
    match format {
        NumberFormat::Plain | NumberFormat::DateOrTime => (plain, None),
        NumberFormat::Fraction => (fraction(number).unwrap_or(plain), None),
        NumberFormat::Money => (plain, Some(CellDoubt::Money)),
        NumberFormat::Percent => (
            format!("{} %", decimal(number * 100.0)),
            Some(CellDoubt::Percent),
        ),
        NumberFormat::Words(words) => (format!("{plain} {words}"), None),
    }
}

/// A number in full, without the dust of arithmetic: fifteen digits, as the
/// programs show at most.
fn decimal(number: f64) -> String {
    let exact = format!("{number}");
    let digits = exact.bytes().filter(u8::is_ascii_digit).count();
    if digits <= 15 {
        return exact;
    }
    let rounded: f64 = format!("{number:.14e}").parse().unwrap_or(number);
    format!("{rounded}")
}

/// A number as whole and sixty-fourths at most, where it is one exactly.
fn fraction(number: f64) -> Option<String> {
    let parts = number * 64.0;
    if !(0.0..1e9).contains(&parts) || (parts - parts.round()).abs() > 0.0 {
        return None;
    }
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "whole, and within the range checked above"
    )]
    let parts = parts as u64;
    let (whole, mut above, mut below) = (parts / 64, parts % 64, 64);
    while above > 0 && above % 2 == 0 {
        above /= 2;
        below /= 2;
    }
    Some(match (whole, above) {
        (whole, 0) => whole.to_string(),
        (0, above) => format!("{above}/{below}"),
        (whole, above) => format!("{whole} {above}/{below}"),
    })
}

fn shown_day(day: CalendarDay) -> String {
    format!("{:04}-{:02}-{:02}", day.year, day.month, day.day)
}

/// The reading that a program took for this day: a fraction of a tape whose
/// halves, quarters, eighths … stand where month or day or year do.
fn meant(day: CalendarDay) -> Option<String> {
    let is_part = |below: u32| matches!(below, 2 | 4 | 8 | 16 | 32 | 64);
    let of_tape = |above: u32, below: u32| is_part(below) && above < below;
    let short_year = u32::try_from(day.year.rem_euclid(100)).ok()?;
    let month = usize::try_from(day.month)
        .ok()
        .and_then(|m| MONTHS.get(m.checked_sub(1)?))?;
    let typed = |reading: String| format!("{reading} ({} {month})", day.day);
    if of_tape(day.month, day.day) {
        // month before day, as in the United States
        Some(typed(format!("{}/{}", day.month, day.day)))
    } else if of_tape(day.day, day.month) {
        Some(typed(format!("{}/{}", day.day, day.month)))
    } else if of_tape(day.month, short_year) {
        // 3.7.8: three and seven eighths
        Some(typed(format!("{} {}/{short_year}", day.day, day.month)))
    } else {
        None
    }
}

/// Line breaks within a cell become spaces: a row is a line.
fn one_line(text: &str) -> String {
    if text.contains(['\n', '\r', '\t', '\u{b}']) {
        text.split(['\n', '\r', '\t', '\u{b}'])
            .map(str::trim)
            .filter(|line| !line.is_empty())
            .collect::<Vec<_>>()
            .join(" ")
    } else {
        text.to_owned()
    }
}

/// Whether a formula in this column looks through other rows of it: a sum, an
/// average, a greatest of those above.
pub(super) fn looks_down(formula: &str, (row, column): (u32, u32)) -> bool {
    const THROUGH: [&str; 7] = [
        "SUM", "AVERAGE", "SUBTOTAL", "MAX", "MIN", "COUNT", "MEDIAN",
    ];
    let upper = formula.to_uppercase();
    if !THROUGH.iter().any(|name| upper.contains(name)) {
        return false;
    }
    let bare: String = upper
        .chars()
        .filter(|c| !matches!(c, '[' | ']' | '.' | '$'))
        .collect();
    let ranges = bare
        .split(['(', ')', ',', ';', '+'])
        .filter_map(|part| part.split_once(':'));
    ranges
        .filter_map(|(first, last)| Some((address(first.trim())?, address(last.trim())?)))
        .any(|(first, last)| {
            first.0 != last.0
                && (first.1..=last.1).contains(&column)
                && !(first.0..=last.0).contains(&row)
        })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn day(year: i32, month: u32, day: u32) -> Option<String> {
        meant(CalendarDay { year, month, day })
    }

    #[test]
    fn dates_give_back_the_fraction_that_was_typed() {
        assert_eq!(day(2026, 3, 8).as_deref(), Some("3/8 (8 March)"));
        assert_eq!(day(2026, 8, 3).as_deref(), Some("3/8 (3 August)"));
        assert_eq!(day(2026, 1, 2).as_deref(), Some("1/2 (2 January)"));
        assert_eq!(day(2008, 7, 3).as_deref(), Some("3 7/8 (3 July)"));
        assert_eq!(day(2026, 11, 12), None);
    }

    #[test]
    fn numbers_are_written_as_they_are_stored() {
        let fraction = |number| of_number(number, &NumberFormat::Fraction).0;
        assert_eq!(fraction(3.9375), "3 15/16");
        assert_eq!(fraction(0.5), "1/2");
        assert_eq!(fraction(36.0), "36");
        assert_eq!(fraction(3.888), "3.888");
        assert_eq!(decimal(2_501.899_999_999_999_6), "2501.9");
        assert_eq!(decimal(1067.0), "1067");
        assert_eq!(
            of_number(0.038, &NumberFormat::Percent),
            ("3.8 %".to_owned(), Some(CellDoubt::Percent))
        );
    }

    #[test]
    fn sums_of_the_rows_above_are_told_from_those_of_a_row() {
        assert!(looks_down("SUM(D2:D9)", (9, 3)));
        assert!(looks_down("of:=AVERAGE([.D2:.D9])", (9, 3)));
        assert!(!looks_down("MAX(F2:H2)", (1, 3)));
        assert!(!looks_down("D2*25.4", (1, 4)));
    }
}
