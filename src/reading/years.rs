//! Ages and years.

use crate::quantities::Age;
use crate::quantities::YearSpan;
use crate::reading::calendar::plain_date;
use crate::reading::error::ReadingError;
use crate::reading::error::quoted;
use crate::reading::error::shown;
use crate::reading::number::Number;
use crate::reading::number::number;
use crate::reading::number::number_is_next;
use crate::reading::tokens::Cursor;
use crate::reading::tokens::Lexeme;
use crate::reading::words::plain;

/// Above this age nobody is a child any more: 18 years.
const ADULT_MONTHS: i128 = 18 * 12;

/// `about 1965` means so many years either way.
const ABOUT_YEARS: i32 = 5;

/// Years in which something that still stands may have been built.
const FIRST_YEAR: i32 = 1000;
const LAST_YEAR: i32 = 2199;

const YEAR_FORMS: &str = "write 1994, before 1978, after 1990, 1990s, 1990-1995 or about 1965";

/// Parses a child's age: `14 months`, `3 years`, `2 1/2 years`, `1 year 3 months`.
///
/// # Errors
/// [`ReadingError`] for a number without a unit, part of a month, and ages of
/// 18 years and more.
///
/// ```
/// use guardrule::quantities::Age;
/// use guardrule::reading::parse_age;
/// assert_eq!(parse_age("2 1/2 years")?, Age::from_months(30));
/// # Ok::<(), guardrule::reading::ReadingError>(())
/// ```
pub fn parse_age(text: &str) -> Result<Age, ReadingError> {
    let mut cursor = Cursor::new(text);
    let age = age(&mut cursor)?;
    cursor.finish()?;
    Ok(age)
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum AgeUnit {
    Months,
    Years,
}

/// The age that is next.
pub(super) fn age(cursor: &mut Cursor<'_>) -> Result<Age, ReadingError> {
    let whole = cursor.whole();
    if cursor.word("newborn") {
        return Ok(Age::from_months(0));
    }
    let expected = "write 14 months or 3 years";
    if !number_is_next(cursor) {
        let found = match cursor.slice(whole.clone()) {
            "" => "nothing".to_owned(),
            found => quoted(found),
        };
        return Err(ReadingError::new(
            format!("an age was expected, and {found} was found"),
            whole,
        )
        .help(expected));
    }
    let first = number(cursor)?;
    refuse_two_ages(cursor, &first)?;
    let unit = age_unit(cursor, &first)?;
    let mut months = in_months(cursor, &first, unit)?;
    cursor.word("and");
    if unit == AgeUnit::Years && number_is_next(cursor) {
        let second = number(cursor)?;
        let AgeUnit::Months = age_unit(cursor, &second)? else {
            return Err(ReadingError::new("two ages stand in one reading", whole)
                .help("write one age a row"));
        };
        months += in_months(cursor, &second, AgeUnit::Months)?;
    }
    cursor.any_phrase(&["old", "of age"]);
    if months >= ADULT_MONTHS {
        let found = quoted(cursor.slice(whole.clone()));
        return Err(
            ReadingError::new(format!("{found} is no child's age"), whole)
                .help("write the ages of children under 18 years, or none"),
        );
    }
    Ok(Age::from_months(u32::try_from(months).unwrap_or(0)))
}

/// `2 to 4 years`, `2-4 years`: ages of two children.
fn refuse_two_ages(cursor: &Cursor<'_>, first: &Number) -> Result<(), ReadingError> {
    let marked = matches!(cursor.peek(), Some(Lexeme::Dash | Lexeme::Comma));
    if !marked && !matches!(cursor.next_word(), Some("to" | "and")) {
        return Ok(());
    }
    let span = first.span.start..cursor.rest().end;
    Err(ReadingError::new(
        format!(
            "{} speaks of several ages",
            quoted(cursor.slice(span.clone()))
        ),
        span,
    )
    .help("write one age a row, such as 3 years"))
}

fn age_unit(cursor: &mut Cursor<'_>, number: &Number) -> Result<AgeUnit, ReadingError> {
    let found = match cursor.next_word() {
        Some("month" | "months" | "mo" | "mos" | "mth" | "mths") => Some(AgeUnit::Months),
        Some("year" | "years" | "yr" | "yrs" | "y" | "yo") => Some(AgeUnit::Years),
        Some(_) | None => None,
    };
    if let Some(unit) = found {
        cursor.advance();
        cursor.eat(&Lexeme::Dot);
        return Ok(unit);
    }
    if let Some(error) = weeks_or_days(cursor, number) {
        return Err(error);
    }
    let digits = shown(cursor.slice(number.span.clone()));
    let message = match cursor.peek() {
        None => format!("`{digits}` may be months or years"),
        Some(_) => format!(
            "ages are in months or years, and {} was found",
            quoted(cursor.slice(cursor.here()))
        ),
    };
    let span = number.span.start..cursor.here().end;
    Err(ReadingError::new(message, span).help(format!("write {digits} months or {digits} years")))
}

/// `6 weeks`: the whole months in it.
fn weeks_or_days(cursor: &Cursor<'_>, number: &Number) -> Option<ReadingError> {
    let in_a_year = match cursor.next_word()? {
        "week" | "weeks" | "wk" | "wks" => 52,
        "day" | "days" => 365,
        _ => return None,
    };
    let (numerator, denominator) = number.ratio();
    let age = Age::from_months(u32::try_from(numerator * 12 / (denominator * in_a_year)).ok()?);
    let span = number.span.start..cursor.here().end;
    let found = quoted(cursor.slice(span.clone()));
    Some(
        ReadingError::new(
            format!("ages are in months or years, and {found} was found"),
            span,
        )
        .help(format!("write {age}")),
    )
}

fn in_months(cursor: &Cursor<'_>, number: &Number, unit: AgeUnit) -> Result<i128, ReadingError> {
    let (numerator, denominator) = number.ratio();
    let numerator = match unit {
        AgeUnit::Months => numerator,
        AgeUnit::Years => numerator * 12,
    };
    if numerator % denominator == 0 {
        return Ok(numerator / denominator);
    }
    Err(ReadingError::new(
        format!(
            "{} is no whole number of months",
            quoted(cursor.slice(cursor.since(number.span.start)))
        ),
        number.span.clone(),
    )
    .help(format!("write {} months", numerator / denominator)))
}

/// Parses a year or a span of years: `1994`, `before 1978`, `after 1990`,
/// `since 1990`, `1990s`, `1990-1995`, `about 1965` (five years either way),
/// `2021-03-01`.
///
/// # Errors
/// [`ReadingError`] for anything else, for years out of reach and spans that
/// run backwards.
///
/// ```
/// use guardrule::quantities::YearSpan;
/// use guardrule::reading::parse_years;
/// assert_eq!(parse_years("about 1965")?, YearSpan::between(1960, 1970));
/// assert_eq!(parse_years("before 1978")?, YearSpan { first: None, last: Some(1977) });
/// # Ok::<(), guardrule::reading::ReadingError>(())
/// ```
pub fn parse_years(text: &str) -> Result<YearSpan, ReadingError> {
    let mut cursor = Cursor::new(text);
    if let Some(date) = plain_date(&plain(text)) {
        let (year, _, _) = date.map_err(|message| {
            ReadingError::new(message, cursor.whole()).help("write the year alone, such as 2021")
        })?;
        return in_reach(&cursor, i32::from(year)).map(YearSpan::year);
    }
    let span = years(&mut cursor)?;
    cursor.finish()?;
    Ok(span)
}

fn years(cursor: &mut Cursor<'_>) -> Result<YearSpan, ReadingError> {
    if cursor.any_phrase(&["before", "pre"]) {
        cursor.eat(&Lexeme::Dash);
        let year = year(cursor)?;
        return Ok(YearSpan {
            first: None,
            last: Some(year - 1),
        });
    }
    if cursor.word("after") {
        let year = year(cursor)?;
        return Ok(YearSpan {
            first: Some(year + 1),
            last: None,
        });
    }
    if cursor.word("since") {
        let year = year(cursor)?;
        return Ok(YearSpan {
            first: Some(year),
            last: None,
        });
    }
    if about(cursor) {
        let year = year(cursor)?;
        return Ok(YearSpan::between(year - ABOUT_YEARS, year + ABOUT_YEARS));
    }
    let between = cursor.any_phrase(&["between", "from"]);
    if !between {
        cursor.word("in");
    }
    let first = year(cursor)?;
    if cursor.touches() && cursor.any_phrase(&["s", "'s"]) || decade_mark(cursor) {
        return decade(cursor, first);
    }
    if cursor.eat(&Lexeme::Dash) || cursor.any_phrase(&["to", "and"]) {
        let last = year(cursor)?;
        return ordered(cursor, first, last);
    }
    if between {
        let whole = cursor.whole();
        return Err(ReadingError::new("the second year is missing", whole).help(YEAR_FORMS));
    }
    Ok(YearSpan::year(first))
}

/// `about`, `circa`, `c.`, `ca.`, `~`.
fn about(cursor: &mut Cursor<'_>) -> bool {
    let tilde = matches!(cursor.peek(), Some(Lexeme::Other('~' | '≈')));
    if tilde {
        cursor.advance();
        return true;
    }
    let found = cursor.any_phrase(&[
        "about",
        "around",
        "circa",
        "ca",
        "c",
        "approx",
        "approximately",
        "roughly",
    ]);
    if found {
        cursor.eat(&Lexeme::Dot);
    }
    found
}

/// The apostrophe and s of `1990's`.
fn decade_mark(cursor: &mut Cursor<'_>) -> bool {
    let s = cursor.peek_over(1).and_then(Lexeme::as_word) == Some("s");
    let found = cursor.peek() == Some(&Lexeme::Prime) && s;
    if found {
        cursor.advance();
        cursor.advance();
    }
    found
}

fn decade(cursor: &Cursor<'_>, first: i32) -> Result<YearSpan, ReadingError> {
    let whole = cursor.whole();
    let found = quoted(cursor.slice(whole.clone()));
    if first % 10 != 0 {
        return Err(ReadingError::new(format!("{found} is no decade"), whole)
            .help(format!("write {}s, or about {first}", first - first % 10)));
    }
    if first % 100 == 0 && first < 2000 {
        return Err(
            ReadingError::new(format!("{found} may be ten years or a hundred"), whole).help(
                format!("write {first}-{} or {first}-{}", first + 9, first + 99),
            ),
        );
    }
    Ok(YearSpan::between(first, first + 9))
}

fn ordered(cursor: &Cursor<'_>, first: i32, last: i32) -> Result<YearSpan, ReadingError> {
    if first <= last {
        return Ok(YearSpan::between(first, last));
    }
    let whole = cursor.whole();
    Err(ReadingError::new(
        format!("{} runs backwards", quoted(cursor.slice(whole.clone()))),
        whole,
    )
    .help(format!("write {last}-{first}")))
}

/// The year of four digits that is next.
fn year(cursor: &mut Cursor<'_>) -> Result<i32, ReadingError> {
    let here = cursor.here();
    let digits = cursor.slice(here.clone());
    let four = digits.len() == 4 && digits.bytes().all(|b| b.is_ascii_digit());
    let Some(found) = four.then(|| digits.parse().ok()).flatten() else {
        let written = match cursor.slice(cursor.rest()) {
            "" => "nothing".to_owned(),
            rest => quoted(rest),
        };
        let span = if here.is_empty() {
            cursor.whole()
        } else {
            here
        };
        // `May 2004`
        let mut numbers = cursor.text().split(|c: char| !c.is_ascii_digit());
        let among = numbers.find(|n| n.len() == 4 && n.starts_with(['1', '2']));
        let help = match among {
            Some(year) => format!("write {year} if that is the year"),
            None => YEAR_FORMS.to_owned(),
        };
        return Err(ReadingError::new(
            format!("a year of four digits was expected, and {written} was found"),
            span,
        )
        .help(help));
    };
    let year = in_reach(cursor, found)?;
    cursor.advance();
    Ok(year)
}

fn in_reach(cursor: &Cursor<'_>, year: i32) -> Result<i32, ReadingError> {
    if (FIRST_YEAR..=LAST_YEAR).contains(&year) {
        return Ok(year);
    }
    Err(ReadingError::new(
        format!("{year:04} is no year in which something that stands was built"),
        cursor.whole(),
    )
    .help(YEAR_FORMS))
}
