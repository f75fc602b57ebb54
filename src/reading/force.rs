//! Forces: `200 lbf`, `0.74 kN`, `222 N`; loads along a line and on an area.

use crate::quantities::Force;
use crate::quantities::LineLoad;
use crate::quantities::Moment;
use crate::quantities::Pressure;
use crate::quantities::newton_metres;
use crate::quantities::newtons;
use crate::quantities::newtons_per_metre;
use crate::quantities::pascals;
use crate::quantities::pound_inches;
use crate::quantities::pounds_force;
use crate::quantities::pounds_per_foot;
use crate::quantities::psi;
use crate::reading::error::ReadingError;
use crate::reading::error::quoted;
use crate::reading::error::shown;
use crate::reading::number::number;
use crate::reading::tokens::Cursor;
use crate::reading::tokens::Lexeme;

/// No push at a guard is larger: a hundred tonnes' weight.
const LARGEST_NEWTONS: f64 = 1e6;

/// Parses a force: `200 lbf`, `50 lb`, `222 N`, `0.74 kN`.
///
/// # Errors
/// [`ReadingError`] for anything else, zero and a number without a unit too.
///
/// ```
/// use guardrule::quantities::pounds_force;
/// use guardrule::reading::parse_force;
/// assert_eq!(parse_force("200 lbf")?, pounds_force(200.0));
/// # Ok::<(), guardrule::reading::ReadingError>(())
/// ```
pub fn parse_force(text: &str) -> Result<Force, ReadingError> {
    let mut cursor = Cursor::new(text);
    if cursor.at_end() {
        return Err(ReadingError::new("there is no force", 0..0).help("write one, such as 200 lbf"));
    }
    let found = force(&mut cursor)?;
    cursor.finish()?;
    Ok(found)
}

/// The force that is next.
pub(super) fn force(cursor: &mut Cursor<'_>) -> Result<Force, ReadingError> {
    let start = cursor.here().start;
    if matches!(cursor.peek(), Some(Lexeme::Dash | Lexeme::Plus)) {
        return Err(
            ReadingError::new("a force has no sign", cursor.here()).help("write it so: 50 lbf")
        );
    }
    let value = amount(cursor)?;
    let digits = shown(cursor.slice(cursor.since(start)));
    let found = match cursor.next_word() {
        Some("lbf" | "lb" | "lbs" | "pound" | "pounds") => Some(pounds_force(value)),
        Some("n" | "newton" | "newtons") => Some(newtons(value)),
        Some("kn" | "kilonewton" | "kilonewtons") => Some(newtons(value * 1000.0)),
        Some(_) | None => None,
    };
    let Some(found) = found else {
        let here = cursor.here();
        let unit = match cursor.slice(here.clone()) {
            "" => "nothing".to_owned(),
            unit => quoted(unit),
        };
        return Err(ReadingError::new(
            format!("a force is in lbf, N or kN, and {unit} was found"),
            here,
        )
        .help(format!("write {digits} lbf or {digits} N")));
    };
    cursor.advance();
    cursor.any_phrase(&["force"]);
    let span = cursor.since(start);
    let size = found.get::<uom::si::force::newton>();
    if size <= 0.0 || size > LARGEST_NEWTONS {
        return Err(ReadingError::new(
            format!(
                "{} is no push at a guard",
                quoted(cursor.slice(span.clone()))
            ),
            span,
        )
        .help("write the force as read, such as 50 lbf or 222 N"));
    }
    Ok(found)
}

/// The number that is next; a plain decimal may have any count of places, as
/// forces that we print have.
fn amount(cursor: &mut Cursor<'_>) -> Result<f64, ReadingError> {
    let back = cursor.mark();
    if let Some(Lexeme::Number(digits)) = cursor.peek().cloned() {
        cursor.advance();
        let alone = cursor.next_word().is_some();
        if let (true, Ok(value)) = (alone, digits.parse()) {
            return Ok(value);
        }
        cursor.back_to(back);
    }
    number(cursor).map(|number| number.as_float())
}

/// Parses a load along a line: `50 lbf/ft`, `0.74 kN/m`.
///
/// # Errors
/// [`ReadingError`] for anything else.
pub fn parse_line_load(text: &str) -> Result<LineLoad, ReadingError> {
    const UNITS: &[(&str, LineLoad)] = &[
        ("lbf/ft", pounds_per_foot(1.0)),
        ("lb/ft", pounds_per_foot(1.0)),
        ("plf", pounds_per_foot(1.0)),
        ("kN/m", newtons_per_metre(1000.0)),
        ("N/m", newtons_per_metre(1.0)),
    ];
    rate(text, UNITS)
        .map(|(unit, number)| unit * number)
        .ok_or_else(|| refused(text, "load along a line", "50 lbf/ft or 0.74 kN/m"))
}

/// Parses a load on an area: `1 kN/m2`, `1.5 kPa`, `50 psf`.
///
/// # Errors
/// [`ReadingError`] for anything else.
pub fn parse_pressure(text: &str) -> Result<Pressure, ReadingError> {
    const UNITS: &[(&str, Pressure)] = &[
        ("lbf/ft2", psi(1.0 / 144.0)),
        ("psf", psi(1.0 / 144.0)),
        ("kN/m2", pascals(1000.0)),
        ("kN/m²", pascals(1000.0)),
        ("kPa", pascals(1000.0)),
        ("N/m2", pascals(1.0)),
    ];
    rate(text, UNITS)
        .map(|(unit, number)| unit * number)
        .ok_or_else(|| refused(text, "load on an area", "1 kN/m2 or 50 psf"))
}

/// Parses a moment: `7800 lbf in`, `1.221 kN m`, `813.5 N m`.
///
/// # Errors
/// [`ReadingError`] for anything else.
pub fn parse_moment(text: &str) -> Result<Moment, ReadingError> {
    const UNITS: &[(&str, Moment)] = &[
        ("lbf in", pound_inches(1.0)),
        ("lbf ft", pound_inches(12.0)),
        ("kN m", newton_metres(1000.0)),
        ("N m", newton_metres(1.0)),
    ];
    rate(text, UNITS)
        .map(|(unit, number)| unit * number)
        .ok_or_else(|| refused(text, "moment", "7800 lbf in or 1.2 kN m"))
}

/// A positive plain number before one of these units.
fn rate<T: Copy>(text: &str, units: &[(&str, T)]) -> Option<(T, f64)> {
    let text = text.trim();
    let unit = units.iter().find(|(unit, _)| text.ends_with(unit))?;
    let digits = text.strip_suffix(unit.0)?.trim_end();
    let plain = digits.bytes().all(|b| b.is_ascii_digit() || b == b'.');
    let number: f64 = digits.parse().ok().filter(|_| plain)?;
    (number > 0.0 && number < LARGEST_NEWTONS).then_some((unit.1, number))
}

fn refused(text: &str, what: &str, example: &str) -> ReadingError {
    ReadingError::new(format!("{} is no {what}", quoted(text)), 0..text.len())
        .help(format!("write it so: {example}"))
}
