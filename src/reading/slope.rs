//! Slopes: `32 deg`, `1:2`, `7 3/4 x 10 in`, `10 %`.

use std::ops::Range;

use uom::si::angle::degree;
use uom::si::angle::radian;

use crate::quantities::Angle;
use crate::quantities::Length;
use crate::quantities::LengthUnit;
use crate::reading::error::ReadingError;
use crate::reading::error::quoted;
use crate::reading::number::Number;
use crate::reading::number::number;
use crate::reading::quantity::Context;
use crate::reading::quantity::quantity;
use crate::reading::settle::BareZero;
use crate::reading::settle::settle;
use crate::reading::tokens::Cursor;
use crate::reading::tokens::Lexeme;

const FORMS: &str = "write 32 deg, 1:2 (rise to going) or 7 3/4 x 10 in (rise x going)";

/// Parses a slope: an angle, a ratio of rise to going, both as lengths, or per cent.
///
/// # Errors
/// [`ReadingError`] for anything else, and for a slope of 90 degrees or more.
///
/// # Source
/// Angle = atan(rise / going): trigonometry.
///
/// ```
/// use guardrule::reading::parse_slope;
/// let slope = parse_slope("7 3/4 x 10 in")?;
/// let degrees = slope.get::<uom::si::angle::degree>();
/// assert!((degrees - 37.7757).abs() < 0.00005);
/// # Ok::<(), guardrule::reading::ReadingError>(())
/// ```
pub fn parse_slope(text: &str) -> Result<Angle, ReadingError> {
    let mut cursor = Cursor::new(text);
    let angle = slope(&mut cursor)?;
    cursor.finish()?;
    refuse_wall(&cursor, angle)?;
    Ok(angle)
}

/// Refuses 90 degrees and more.
pub(super) fn refuse_wall(cursor: &Cursor<'_>, angle: Angle) -> Result<(), ReadingError> {
    if angle.get::<degree>() < 90.0 {
        return Ok(());
    }
    let found = quoted(cursor.text());
    Err(ReadingError::new(
        format!("{found} is as steep as a wall or steeper"),
        cursor.whole(),
    )
    .help(FORMS))
}

/// The slope that is next.
pub(super) fn slope(cursor: &mut Cursor<'_>) -> Result<Angle, ReadingError> {
    let whole = cursor.whole();
    let start = cursor.mark();
    let first = number(cursor).map_err(|error| error.help(FORMS))?;
    if cursor.eat(&Lexeme::Degree) || cursor.any_phrase(&["deg", "degree", "degrees"]) {
        cursor.eat(&Lexeme::Dot);
        return Ok(Angle::new::<degree>(first.as_float()));
    }
    if cursor.eat(&Lexeme::Percent) {
        return Ok(ratio(first.as_float(), 100.0));
    }
    if cursor.eat(&Lexeme::Colon) {
        let second = number(cursor).map_err(|error| error.help(FORMS))?;
        refuse_no_going(&second, whole)?;
        return Ok(ratio(first.as_float(), second.as_float()));
    }
    cursor.back_to(start);
    rise_by_going(cursor)
}

fn rise_by_going(cursor: &mut Cursor<'_>) -> Result<Angle, ReadingError> {
    let whole = cursor.whole();
    let rise = quantity(cursor, &["x", "by", "deg"])?;
    if !cursor.times() {
        let found = quoted(cursor.slice(whole.clone()));
        return Err(ReadingError::new(format!("{found} is no slope"), whole).help(FORMS));
    }
    let going = quantity(cursor, &[])?;
    // a ratio needs no unit, but two numbers without one need the same
    let context = Context {
        item: None,
        default_unit: Some(LengthUnit::Inch),
    };
    let both = settle(cursor, context, &[&rise, &going], BareZero::Refused)?;
    let (rise, going) = (both[0].length, both[1].length);
    if going == Length::ZERO {
        return Err(ReadingError::new("a slope has a going", whole).help(FORMS));
    }
    Ok(ratio(
        rise.nanometres_as_float(),
        going.nanometres_as_float(),
    ))
}

fn refuse_no_going(going: &Number, span: Range<usize>) -> Result<(), ReadingError> {
    if going.is_zero() {
        return Err(ReadingError::new("a slope has a going", span).help(FORMS));
    }
    Ok(())
}

fn ratio(rise: f64, going: f64) -> Angle {
    Angle::new::<radian>(libm::atan2(rise, going))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Worked in Python apart from this code, to four digits.
    #[test]
    fn slopes_as_worked_elsewhere() {
        const CASES: &[(&str, f64)] = &[
            ("7 3/4 x 10 in", 37.7757),
            ("7 3/4 x 10", 37.7757),
            ("77.5 %", 37.7757),
            ("0.775:1", 37.7757),
            ("7 x 11 in", 32.4712),
            ("180 x 280 mm", 32.7352),
            ("32 deg", 32.0),
            ("32°", 32.0),
            ("1:1", 45.0),
        ];
        for (text, given) in CASES {
            let ours = parse_slope(text).unwrap().get::<degree>();
            assert!((ours - given).abs() <= 0.00005, "{text}: {ours}");
        }
    }

    #[test]
    fn what_is_no_slope_is_refused() {
        for text in [
            "", "90 deg", "120 deg", "1:0", "7 in", "7 x 0 in", "-3 deg", "3 deg x", "x",
        ] {
            assert!(parse_slope(text).is_err(), "{text}");
        }
    }
}
