//! Numbers as people write them: whole, decimal, with a fraction.

use std::ops::Range;

use crate::reading::error::ReadingError;
use crate::reading::error::quoted;
use crate::reading::error::shown;
use crate::reading::tokens::Cursor;
use crate::reading::tokens::Lexeme;

/// Digits that a number may have on either side of its point.
const DIGITS: usize = 12;

/// A number, exactly as written.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Number {
    pub(super) whole: u64,
    pub(super) part: FractionPart,
    pub(super) span: Range<usize>,
}

/// What stands behind the whole number.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum FractionPart {
    /// Digits behind a decimal mark: their value without closing zeros, how
    /// many they are without and with them.
    Decimal {
        digits: u64,
        places: u32,
        written: u32,
    },
    Fraction {
        numerator: u64,
        denominator: u64,
    },
    Nothing,
}

impl Number {
    /// Numerator and denominator; both below 10²⁵.
    pub(super) fn ratio(&self) -> (i128, i128) {
        let whole = i128::from(self.whole);
        match self.part {
            FractionPart::Decimal { digits, places, .. } => {
                let power = 10_i128.pow(places);
                (whole * power + i128::from(digits), power)
            }
            FractionPart::Fraction {
                numerator,
                denominator,
            } => {
                let denominator = i128::from(denominator);
                (whole * denominator + i128::from(numerator), denominator)
            }
            FractionPart::Nothing => (whole, 1),
        }
    }

    /// The nearest float.
    #[expect(
        clippy::cast_precision_loss,
        reason = "a float is what the formulas take; the ratio is exact"
    )]
    pub(super) fn as_float(&self) -> f64 {
        let (numerator, denominator) = self.ratio();
        numerator as f64 / denominator as f64
    }

    pub(super) fn is_zero(&self) -> bool {
        self.ratio().0 == 0
    }

    pub(super) fn has_fraction(&self) -> bool {
        matches!(self.part, FractionPart::Fraction { .. })
    }

    pub(super) fn is_whole(&self) -> bool {
        self.part == FractionPart::Nothing
    }
}

/// Whether a number is next.
pub(super) fn number_is_next(cursor: &Cursor<'_>) -> bool {
    matches!(
        cursor.peek(),
        Some(Lexeme::Number(_) | Lexeme::Fraction { .. })
    )
}

/// The number that is next: `33`, `33.5`, `33,5`, `33 1/2`, `33-1/2`, `29/8`.
pub(super) fn number(cursor: &mut Cursor<'_>) -> Result<Number, ReadingError> {
    let start = cursor.here().start;
    if let Some(part) = fraction(cursor)? {
        return Ok(Number {
            whole: 0,
            part,
            span: cursor.since(start),
        });
    }
    let here = cursor.here();
    let Some(Lexeme::Number(written)) = cursor.peek().cloned() else {
        let found = match cursor.slice(cursor.rest()) {
            "" => "nothing".to_owned(),
            rest => quoted(rest),
        };
        return Err(ReadingError::new(
            format!("a number was expected, and {found} was found"),
            here,
        ));
    };
    cursor.advance();
    let (whole, part) = decimal(cursor, &written, here)?;
    let part = match mixed_fraction(cursor, part)? {
        Some(fraction) => fraction,
        None => part,
    };
    let number = Number {
        whole,
        part,
        span: cursor.since(start),
    };
    refuse_improper(cursor, &number)?;
    Ok(number)
}

/// A fraction token that is next, as a part.
fn fraction(cursor: &mut Cursor<'_>) -> Result<Option<FractionPart>, ReadingError> {
    let Some(Lexeme::Fraction {
        numerator,
        denominator,
    }) = cursor.peek().cloned()
    else {
        return Ok(None);
    };
    let here = cursor.here();
    cursor.advance();
    let (Some(numerator), Some(denominator)) =
        (short_number(&numerator), short_number(&denominator))
    else {
        return Err(too_long(cursor, here));
    };
    if denominator == 0 {
        return Err(ReadingError::new(
            format!("{} divides by nothing", quoted(cursor.slice(here.clone()))),
            here,
        )
        .help("write the fraction as it stands on the tape, such as 5/8 in"));
    }
    Ok(Some(FractionPart::Fraction {
        numerator,
        denominator,
    }))
}

/// The fraction of `33 1/2` and `33-1/2`, behind its whole number.
fn mixed_fraction(
    cursor: &mut Cursor<'_>,
    part: FractionPart,
) -> Result<Option<FractionPart>, ReadingError> {
    let is_fraction = |lexeme: Option<&Lexeme>| matches!(lexeme, Some(Lexeme::Fraction { .. }));
    let hyphened = cursor.peek() == Some(&Lexeme::Dash)
        && is_fraction(cursor.peek_over(1))
        && cursor.touches()
        && cursor.touches_over(1);
    if hyphened && part == FractionPart::Nothing {
        cursor.advance();
    }
    if is_fraction(cursor.peek()) && part != FractionPart::Nothing {
        let here = cursor.here();
        return Err(
            ReadingError::new("a decimal and a fraction stand side by side", here)
                .help("write one of them: 34.5 in or 34 1/2 in"),
        );
    }
    fraction(cursor)
}

/// The fraction behind a whole number must be less than one.
fn refuse_improper(cursor: &Cursor<'_>, number: &Number) -> Result<(), ReadingError> {
    let FractionPart::Fraction {
        numerator,
        denominator,
    } = number.part
    else {
        return Ok(());
    };
    if numerator < denominator {
        return Ok(());
    }
    let whole = number.whole + numerator / denominator;
    let right = match numerator % denominator {
        0 => whole.to_string(),
        rest => format!("{whole} {rest}/{denominator}"),
    };
    Err(ReadingError::new(
        format!(
            "the fraction of {} is one or more",
            quoted(cursor.slice(number.span.clone()))
        ),
        number.span.clone(),
    )
    .help(format!(
        "write {} if that was meant",
        shown(&cursor.rewritten(number.span.clone(), &right))
    )))
}

/// A whole number and its decimals.
fn decimal(
    cursor: &Cursor<'_>,
    written: &str,
    here: Range<usize>,
) -> Result<(u64, FractionPart), ReadingError> {
    let marks = written.matches(['.', ',']).count();
    let Some((whole, decimals)) = written.split_once(['.', ',']) else {
        let whole = short_number(written).ok_or_else(|| too_long(cursor, here))?;
        return Ok((whole, FractionPart::Nothing));
    };
    let comma = written.contains(',');
    if comma && (marks > 1 || decimals.len() == 3) {
        return Err(thousands_or_decimals(cursor, written, here));
    }
    if marks > 1 {
        let message = format!("{} has two decimal marks", quoted(written));
        return Err(ReadingError::new(message, here).help("write one point, as in 35.5"));
    }
    let trimmed = decimals.trim_end_matches('0');
    let whole = if whole.is_empty() {
        Some(0)
    } else {
        short_number(whole)
    };
    let (Some(whole), Some(digits)) = (
        whole,
        if trimmed.is_empty() {
            Some(0)
        } else {
            short_number(trimmed)
        },
    ) else {
        return Err(too_long(cursor, here));
    };
    let places = u32::try_from(trimmed.len()).unwrap_or(u32::MAX);
    let written = u32::try_from(decimals.len()).unwrap_or(u32::MAX);
    Ok((
        whole,
        FractionPart::Decimal {
            digits,
            places,
            written,
        },
    ))
}

/// A comma that may part thousands or decimals.
fn thousands_or_decimals(cursor: &Cursor<'_>, written: &str, here: Range<usize>) -> ReadingError {
    let single = written.matches(['.', ',']).count() == 1;
    let pointed = written.replacen(',', ".", 1);
    let right = shown(&cursor.rewritten(here.clone(), &without_thousands(written)));
    let help = if single {
        let other = shown(&cursor.rewritten(here.clone(), &pointed));
        format!("write {right}, or {other} if the comma is a decimal mark")
    } else {
        format!("write the number without marks between thousands, such as {right}")
    };
    ReadingError::new(
        format!(
            "the comma in {} may part thousands or decimals",
            quoted(written)
        ),
        here,
    )
    .help(help)
}

/// The number without marks between thousands; where points and commas stand
/// in it, the last one is the decimal mark.
fn without_thousands(written: &str) -> String {
    match written.rsplit_once(['.', ',']) {
        Some((whole, decimals)) if written.contains('.') => {
            format!("{}.{decimals}", whole.replace(['.', ','], ""))
        }
        Some(_) | None => written.replace(',', ""),
    }
}

/// The number of few enough digits.
fn short_number(digits: &str) -> Option<u64> {
    (digits.len() <= DIGITS)
        .then(|| digits.parse().ok())
        .flatten()
}

fn too_long(cursor: &Cursor<'_>, here: Range<usize>) -> ReadingError {
    let found = quoted(cursor.slice(here.clone()));
    ReadingError::new(
        format!("{found} has more digits than any reading needs"),
        here,
    )
    .help("write it to the nearest 1/16 in or 1 mm")
}
