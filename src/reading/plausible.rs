//! Whether a length can be what its item says: absurd values are refused,
//! unusual ones questioned, from the table of items.

use std::ops::Range;

use crate::items::Item;
use crate::items::ItemInfo;
use crate::quantities::Length;
use crate::quantities::LengthUnit;
use crate::reading::Bound;
use crate::reading::error::ReadingError;
use crate::reading::error::quoted;
use crate::reading::error::shown;
use crate::reading::exact_length::ExactLength;
use crate::reading::exact_length::exact_length;
use crate::reading::offered_units::offered_units;
use crate::reading::settle::Settled;
use crate::reading::tokens::Cursor;

/// Refuses a length that cannot be, and questions one that is unusual.
pub(super) fn judge(
    cursor: &mut Cursor<'_>,
    info: &ItemInfo,
    settled: &Settled,
    bound: Bound,
) -> Result<(), ReadingError> {
    let zero = settled.length == Length::ZERO;
    if zero && (bound == Bound::Under || !info.zero_allowed) {
        return Err(cannot_be_zero(cursor, info, settled.span.clone()));
    }
    refuse_absurd(cursor, info, settled, bound)?;
    refuse_thousands(cursor, info, settled)?;
    if !zero {
        question(cursor, info, settled, bound);
    }
    Ok(())
}

/// Refuses a length above the item's most.
pub(super) fn refuse_absurd(
    cursor: &Cursor<'_>,
    info: &ItemInfo,
    settled: &Settled,
    bound: Bound,
) -> Result<(), ReadingError> {
    let Some(most) = info.most else {
        return Ok(());
    };
    if settled.length <= most || bound == Bound::Under {
        return Ok(());
    }
    Err(absurd(cursor, info, most, settled))
}

fn absurd(cursor: &Cursor<'_>, info: &ItemInfo, most: Length, settled: &Settled) -> ReadingError {
    let found = quoted(cursor.slice(settled.span.clone()));
    let message = format!(
        "{found} is absurd for {}: more than {} is refused as a slip",
        info.name,
        readable(most, settled.unit)
    );
    let error = ReadingError::new(message, settled.span.clone());
    let Some(number) = &settled.number else {
        return error.help("measure again, and look at the number and its unit");
    };
    let digits = shown(cursor.slice(number.span.clone()));
    let smaller = |unit: &LengthUnit| match exact_length(number, *unit) {
        ExactLength::Length(length) => length <= most,
        ExactLength::TooFine(_) | ExactLength::TooLong => false,
    };
    let forms: Vec<String> = offered_units(Some(info.item), number)
        .into_iter()
        .filter(smaller)
        .map(|unit| format!("{digits} {}", unit.symbol()))
        .collect();
    if forms.is_empty() {
        error.help("measure again, and look at the number and its unit")
    } else {
        error.help(format!("write {} if that was meant", forms.join(" or ")))
    }
}

fn cannot_be_zero(cursor: &Cursor<'_>, info: &ItemInfo, span: Range<usize>) -> ReadingError {
    let found = quoted(cursor.slice(span.clone()));
    let help = if info.none_allowed {
        "write none if there is none, or not reached where you could not measure"
    } else {
        "write what you measured, or not reached where you could not measure"
    };
    ReadingError::new(format!("{found}: {} cannot be zero", info.name), span).help(help)
}

/// Adds a caution where a length lies outside of what is usual.
pub(super) fn question(cursor: &mut Cursor<'_>, info: &ItemInfo, settled: &Settled, bound: Bound) {
    let Some((low, high)) = info.usual else {
        return;
    };
    let length = settled.length;
    let unusual = match bound {
        Bound::Exactly => length < low || length > high,
        Bound::Over => length > high,
        Bound::Under => length < low,
    };
    if !unusual {
        return;
    }
    let unit = settled.unit;
    cursor.cautions.push(format!(
        "{} is unusual for {}, where {} to {} is common; look at the number and its unit again.",
        quoted(cursor.slice(settled.span.clone())),
        info.name,
        readable(low, unit),
        readable(high, unit)
    ));
}

/// A limit of the table in the reader's own system.
fn readable(length: Length, unit: LengthUnit) -> String {
    if unit.is_imperial() && length >= Length::feet(5) {
        let feet = length.nanometres() / LengthUnit::Foot.one().nanometres();
        return format!("{feet} ft");
    }
    if !unit.is_imperial() && length >= Length::millimetres(1000) {
        let tenths = (length.nanometres() + 50_000_000) / 100_000_000;
        return Length::from_nanometres(tenths * 100_000_000).exact(LengthUnit::Metre);
    }
    length.readable(unit)
}

/// Refuses `1.250 mm` where only 1250 mm would be usual: much of Europe parts
/// thousands by a point, and no tape shows thousandths of a millimetre.
fn refuse_thousands(
    cursor: &Cursor<'_>,
    info: &ItemInfo,
    settled: &Settled,
) -> Result<(), ReadingError> {
    let (Some(number), Some((low, high))) = (&settled.number, info.usual) else {
        return Ok(());
    };
    let fine = matches!(
        settled.unit,
        LengthUnit::Centimetre | LengthUnit::Millimetre
    );
    let Some((whole, decimals)) = cursor.slice(number.span.clone()).split_once('.') else {
        return Ok(());
    };
    let usual = |length: Length| low <= length && length <= high;
    let thousandfold = settled.length.nanometres().saturating_mul(1000);
    let meant = Length::from_nanometres(thousandfold);
    let parted = fine && decimals.len() == 3 && !whole.starts_with('0');
    if !parted || usual(settled.length) || !usual(meant) {
        return Ok(());
    }
    let unit = settled.unit.symbol();
    let small = two_decimals(whole, decimals);
    Err(ReadingError::new(
        format!(
            "the point in {} may part thousands or decimals",
            quoted(cursor.slice(number.span.clone()))
        ),
        number.span.clone(),
    )
    .help(format!(
        "write {whole}{decimals} {unit}, or {small} {unit} if the point is a decimal mark"
    )))
}

/// The number with two decimals at most, so that no point parts three digits any more: a tape
/// reads no finer.
fn two_decimals(whole: &str, decimals: &str) -> String {
    let thousandths: u128 = format!("{whole}{decimals}").parse().unwrap_or_default();
    let hundredths = (thousandths + 5) / 10;
    let text = format!("{}.{:02}", hundredths / 100, hundredths % 100);
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

/// Refuses a height of an opening that no guard has.
pub(super) fn refuse_high_place(
    cursor: &Cursor<'_>,
    settled: &Settled,
) -> Result<(), ReadingError> {
    refuse_absurd(cursor, Item::Height.info(), settled, Bound::Exactly)
}
