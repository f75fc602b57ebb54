//! Forces: `200 lbf`, `0.74 kN`, `222 N`.

use crate::measure::Force;
use crate::measure::newtons;
use crate::measure::pounds_force;
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
/// use guardrule::measure::pounds_force;
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
