//! Fasteners of a joint, and a pull with a scale.

use crate::quantities::Length;
use crate::reading::FastenerSize;
use crate::reading::Fasteners;
use crate::reading::Pull;
use crate::reading::Value;
use crate::reading::error::ReadingError;
use crate::reading::error::quoted;
use crate::reading::force::force;
use crate::reading::length::single_length;
use crate::reading::quantity::Context;
use crate::reading::quantity::Quantity;
use crate::reading::quantity::quantity;
use crate::reading::settle::BareZero;
use crate::reading::settle::settle;
use crate::reading::tokens::Cursor;
use crate::reading::tokens::Lexeme;

const EXAMPLE: &str =
    "write how many, how thick and how long: 2 x 1/2 in x 6 in, or 4 x No. 10 x 3 in";
const PULL_EXAMPLE: &str = "write the force and how far it moved: 50 lbf 0.21 in, or 220 N 5 mm";

/// More than these hold no single joint of a guard. (common practice, no source)
const MOST: u32 = 24;

/// `2 x 1/2 in x 6 in`, `4 x No. 10 x 3 in`, `2 x 12 mm`.
pub(super) fn fasteners(cursor: &mut Cursor<'_>, context: Context) -> Result<Value, ReadingError> {
    let count = how_many(cursor)?;
    let number = numbered(cursor)?;
    let mut lengths: Vec<Quantity> = Vec::new();
    if number.is_none() {
        lengths.push(quantity(cursor, &["x", "by", "long"])?);
    }
    if cursor.times() {
        lengths.push(quantity(cursor, &["long"])?);
    }
    cursor.any_phrase(&["long"]);
    let each: Vec<&Quantity> = lengths.iter().collect();
    let settled = settle(cursor, context, &each, BareZero::Refused)?;
    if let Some(nothing) = settled.iter().find(|one| one.length == Length::ZERO) {
        return Err(ReadingError::new("a fastener has a size", nothing.span.clone()).help(EXAMPLE));
    }
    let mut settled = settled.iter().map(|one| one.length);
    let size = match number {
        Some(number) => FastenerSize::Number(number),
        None => FastenerSize::Diameter(settled.next().unwrap_or(Length::ZERO)),
    };
    Ok(Value::Fasteners(Fasteners {
        count,
        size,
        length: settled.next(),
    }))
}

/// The count before the first `x`.
fn how_many(cursor: &mut Cursor<'_>) -> Result<u32, ReadingError> {
    let here = cursor.here();
    let whole = cursor.whole();
    if let Some(Lexeme::Number(digits)) = cursor.peek().cloned()
        && let Ok(count) = digits.parse::<u32>()
        && (1..=MOST).contains(&count)
    {
        cursor.advance();
        if cursor.times() {
            return Ok(count);
        }
    }
    let found = quoted(cursor.slice(whole));
    Err(ReadingError::new(
        format!("{found} does not begin with how many fasteners there are (1 to {MOST})"),
        here,
    )
    .help(EXAMPLE))
}

/// `No. 10`, `#10`.
fn numbered(cursor: &mut Cursor<'_>) -> Result<Option<u8>, ReadingError> {
    let named = cursor.any_phrase(&["no", "number", "gauge"]);
    if !named && !cursor.eat(&Lexeme::Other('#')) {
        return Ok(None);
    }
    cursor.eat(&Lexeme::Dot);
    let here = cursor.here();
    if let Some(Lexeme::Number(digits)) = cursor.peek().cloned()
        && let Ok(number) = digits.parse::<u8>()
        && (1..=24).contains(&number)
    {
        cursor.advance();
        return Ok(Some(number));
    }
    Err(ReadingError::new("the number of the screw is missing", here).help(EXAMPLE))
}

/// `50 lbf 0.21 in`.
pub(super) fn pull(cursor: &mut Cursor<'_>, context: Context) -> Result<Value, ReadingError> {
    let force = force(cursor).map_err(|error| match error.help {
        Some(_) => error,
        None => error.help(PULL_EXAMPLE),
    })?;
    cursor.eat(&Lexeme::Comma);
    cursor.any_phrase(&["moved", "moves"]);
    if cursor.at_end() {
        let whole = cursor.whole();
        return Err(ReadingError::new("how far it moved is missing", whole).help(PULL_EXAMPLE));
    }
    let moved = single_length(cursor, context)?.length;
    Ok(Value::Pull(Pull { force, moved }))
}
