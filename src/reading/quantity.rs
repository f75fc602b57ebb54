//! One length as written, and the ways of writing that could mean two things.

use std::ops::Range;

use crate::items::Item;
use crate::quantities::LengthUnit;
use crate::reading::error::ReadingError;
use crate::reading::error::quoted;
use crate::reading::error::shown;
use crate::reading::number::FractionPart;
use crate::reading::number::Number;
use crate::reading::number::number;
use crate::reading::number::number_is_next;
use crate::reading::tokens::Cursor;
use crate::reading::tokens::Lexeme;
use crate::reading::unit::unit;
use crate::reading::unit::unknown_unit;

/// What a reading is read for.
#[derive(Clone, Copy, Debug)]
pub(super) struct Context {
    /// The item, for plausible units and ranges.
    pub(super) item: Option<Item>,
    /// The unit of bare numbers.
    pub(super) default_unit: Option<LengthUnit>,
}

/// A length as written; its unit may be missing or stand behind a later one.
#[derive(Clone, Debug)]
pub(super) struct Quantity {
    pub(super) amount: WrittenAmount,
    /// Where it stands.
    pub(super) span: Range<usize>,
}

#[derive(Clone, Debug)]
pub(super) enum WrittenAmount {
    FeetAndInches(Number, Number),
    One(Number, Option<LengthUnit>),
}

/// Reads the length that is next; `follows` are words that may stand where a
/// unit could.
pub(super) fn quantity(
    cursor: &mut Cursor<'_>,
    follows: &[&str],
) -> Result<Quantity, ReadingError> {
    refuse_sign(cursor)?;
    let start = cursor.here().start;
    let first = number(cursor)?;
    refuse_neighbours(cursor, &first)?;
    refuse_slash(cursor, start)?;
    let feet_mark = cursor.peek() == Some(&Lexeme::Prime);
    let Some(found) = unit(cursor) else {
        if let Some(error) = unknown_unit(cursor, follows) {
            return Err(error);
        }
        return Ok(Quantity {
            span: cursor.since(start),
            amount: WrittenAmount::One(first, None),
        });
    };
    if found == LengthUnit::Foot
        && let Some(inches) = inches_behind(cursor, &first)?
    {
        return Ok(Quantity {
            span: cursor.since(start),
            amount: WrittenAmount::FeetAndInches(first, inches),
        });
    }
    refuse_second(cursor, start, found)?;
    if feet_mark {
        refuse_likely_inches(cursor, &first, start)?;
    }
    Ok(Quantity {
        span: cursor.since(start),
        amount: WrittenAmount::One(first, Some(found)),
    })
}

/// `1 / 2`, `34 1/2/3`: a slash that makes no fraction.
fn refuse_slash(cursor: &Cursor<'_>, start: usize) -> Result<(), ReadingError> {
    if cursor.peek() != Some(&Lexeme::Slash) {
        return Ok(());
    }
    let span = start..cursor.here().end;
    Err(ReadingError::new(
        format!(
            "the slash in {} makes no fraction",
            quoted(cursor.slice(start..cursor.whole().end))
        ),
        span,
    )
    .help("write the fraction without spaces, as in 34 5/8 in"))
}

fn refuse_sign(cursor: &Cursor<'_>) -> Result<(), ReadingError> {
    if !matches!(cursor.peek(), Some(Lexeme::Dash | Lexeme::Plus)) {
        return Ok(());
    }
    let here = cursor.here();
    let error = ReadingError::new(
        format!(
            "{} is a sign, and a length has none",
            quoted(cursor.slice(here.clone()))
        ),
        here.clone(),
    );
    let right = cursor.rewritten(here, "");
    Err(if right.is_empty() {
        error
    } else {
        error.help(format!("write {}", shown(&right)))
    })
}

/// `2-11 1/2 in`, `1 250 mm`: two numbers with no mark between them.
fn refuse_neighbours(cursor: &mut Cursor<'_>, first: &Number) -> Result<(), ReadingError> {
    let back = cursor.mark();
    let dashed = cursor.eat(&Lexeme::Dash);
    if !number_is_next(cursor) {
        cursor.back_to(back);
        return Ok(());
    }
    let left = shown(cursor.slice(first.span.clone())).to_owned();
    let second_start = cursor.here().start;
    let second = number(cursor)?;
    let digits = cursor.slice(second.span.clone()).to_owned();
    let found = unit(cursor);
    let span = cursor.since(first.span.start);
    let right = shown(cursor.slice(second_start..span.end));
    let inches = found == Some(LengthUnit::Inch) && first.is_whole();
    let message = if dashed {
        format!(
            "{} may be two readings or a length in two parts",
            quoted(cursor.slice(span.clone()))
        )
    } else {
        format!(
            "two numbers stand side by side in {}",
            quoted(cursor.slice(span.clone()))
        )
    };
    let help = if !dashed && digits.len() == 3 && second.is_whole() {
        format!("write {left}{right}")
    } else if inches && second.ratio().0 < 12 * second.ratio().1 {
        format!("write {left} ft {right}, or {left} to {right} for two readings")
    } else {
        format!("write {left} to {right} for two readings")
    };
    Err(ReadingError::new(message, span).help(help))
}

/// The inches of `2 ft 11 1/2 in`, where they follow the feet.
fn inches_behind(cursor: &mut Cursor<'_>, feet: &Number) -> Result<Option<Number>, ReadingError> {
    let back = cursor.mark();
    let dashed = cursor.eat(&Lexeme::Dash);
    if !dashed && !cursor.eat(&Lexeme::Comma) {
        cursor.word("and");
    }
    if !number_is_next(cursor) {
        cursor.back_to(back);
        return Ok(None);
    }
    let inches = number(cursor)?;
    let written = shown(cursor.slice(inches.span.clone()));
    let feet_written = shown(cursor.slice(feet.span.clone()));
    match unit(cursor) {
        Some(LengthUnit::Inch) => {}
        Some(LengthUnit::Foot) => {
            let span = cursor.since(feet.span.start);
            return Err(ReadingError::new(
                format!("{} holds two lengths", quoted(cursor.slice(span.clone()))),
                span,
            )
            .help(format!(
                "write {feet_written} to {written} ft for two readings"
            )));
        }
        Some(LengthUnit::Centimetre | LengthUnit::Metre | LengthUnit::Millimetre) => {
            return Err(mixed_systems(cursor, feet.span.start));
        }
        None => {
            let span = cursor.since(feet.span.start);
            return Err(ReadingError::new(
                format!(
                    "the inches of {} have no mark",
                    quoted(cursor.slice(span.clone()))
                ),
                span,
            )
            .help(format!("write {feet_written} ft {written} in")));
        }
    }
    if !feet.is_whole() {
        let span = cursor.since(feet.span.start);
        return Err(ReadingError::new(
            format!(
                "{} has parts of feet and inches as well",
                quoted(cursor.slice(span.clone()))
            ),
            span,
        )
        .help("write whole feet before the inches, as in 2 ft 11 1/2 in"));
    }
    refuse_second(cursor, feet.span.start, LengthUnit::Inch)?;
    Ok(Some(inches))
}

/// Nothing that begins a further length may follow: `1 m 3 in`.
fn refuse_second(
    cursor: &mut Cursor<'_>,
    start: usize,
    first: LengthUnit,
) -> Result<(), ReadingError> {
    let back = cursor.mark();
    let written = shown(cursor.slice(cursor.since(start)));
    cursor.eat(&Lexeme::Dash);
    if !number_is_next(cursor) {
        cursor.back_to(back);
        return Ok(());
    }
    let second_start = cursor.here().start;
    number(cursor)?;
    let found = unit(cursor);
    let span = cursor.since(start);
    let second = shown(cursor.slice(second_start..span.end));
    if found.is_some_and(|found| found.is_imperial() != first.is_imperial()) {
        return Err(mixed_systems(cursor, start));
    }
    let message = format!("{} holds two lengths", quoted(cursor.slice(span.clone())));
    Err(ReadingError::new(message, span).help(format!(
        "write one length in one unit, or {written} to {second} for two readings"
    )))
}

fn mixed_systems(cursor: &Cursor<'_>, start: usize) -> ReadingError {
    let span = cursor.since(start);
    ReadingError::new(
        format!(
            "{} mixes inches or feet with metric units",
            quoted(cursor.slice(span.clone()))
        ),
        span,
    )
    .help("write it in one of them, as in 41 in or 1041 mm")
}

/// `35.5'`: inches were likelier.
fn refuse_likely_inches(
    cursor: &Cursor<'_>,
    number: &Number,
    start: usize,
) -> Result<(), ReadingError> {
    if !matches!(number.part, FractionPart::Decimal { .. }) || number.whole < 12 {
        return Ok(());
    }
    let span = cursor.since(start);
    let digits = shown(cursor.slice(number.span.clone()));
    let found = quoted(cursor.slice(span.clone()));
    Err(
        ReadingError::new(format!("{found} are feet, and inches were likelier"), span).help(
            format!("write {digits} in, or {digits} ft if that was meant"),
        ),
    )
}

/// Whether a length is next: a number, or a sign that is refused in its turn.
pub(super) fn quantity_is_next(cursor: &Cursor<'_>) -> bool {
    number_is_next(cursor) || matches!(cursor.peek(), Some(Lexeme::Dash | Lexeme::Plus))
}
