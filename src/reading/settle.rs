//! From lengths as written to exact ones: units that are shared, nanometres,
//! and how finely each was read.

use std::ops::Range;

use crate::quantities::Length;
use crate::quantities::LengthUnit;
use crate::reading::Graduation;
use crate::reading::error::ReadingError;
use crate::reading::error::quoted;
use crate::reading::error::shown;
use crate::reading::exact_length::ExactLength;
use crate::reading::exact_length::exact_length;
use crate::reading::exact_length::nanometres;
use crate::reading::number::FractionPart;
use crate::reading::number::Number;
use crate::reading::offered_units::offered_units;
use crate::reading::quantity::Context;
use crate::reading::quantity::Quantity;
use crate::reading::quantity::WrittenAmount;
use crate::reading::tokens::Cursor;

/// A length with its unit known.
#[derive(Clone, Debug)]
pub(super) struct Settled {
    pub(super) length: Length,
    pub(super) unit: LengthUnit,
    /// The step to which it was read, from how it was written.
    pub(super) step: Length,
    /// Where it stands.
    pub(super) span: Range<usize>,
    /// The number as written, where it is a single one.
    pub(super) number: Option<Number>,
}

/// Whether a zero without a unit stands for itself (`lift 0`).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum BareZero {
    Allowed,
    Refused,
}

/// Gives every length its unit: its own, or the last one's where only that has
/// one, or the default.
pub(super) fn settle(
    cursor: &mut Cursor<'_>,
    context: Context,
    quantities: &[&Quantity],
    bare_zero: BareZero,
) -> Result<Vec<Settled>, ReadingError> {
    let exempt = |q: &Quantity| bare_zero == BareZero::Allowed && q.is_bare_zero();
    let counted: Vec<&&Quantity> = quantities.iter().filter(|q| !exempt(q)).collect();
    let last_end = quantities.last().map_or(0, |q| q.span.end);
    let with_unit = counted.iter().filter(|q| q.unit().is_some()).count();
    let trailing = counted.last().and_then(|q| q.trailing_unit());
    let shared = match (with_unit, trailing) {
        (0, _) => context.default_unit,
        (1, Some(unit)) => Some(unit),
        _ => None,
    };
    if with_unit > 0
        && shared.is_none()
        && let Some(bare) = counted.iter().find(|q| q.unit().is_none())
    {
        return Err(ReadingError::new(
            format!(
                "{} has no unit, and others have",
                quoted(cursor.slice(bare.span.clone()))
            ),
            bare.span.clone(),
        )
        .help("write a unit behind each number, or one behind the last"));
    }
    quantities
        .iter()
        .map(|q| {
            let zero_unit = exempt(q).then_some(LengthUnit::Inch);
            q.settled(cursor, context, shared.or(zero_unit), last_end)
        })
        .collect()
}

impl Quantity {
    /// The unit it carries itself.
    pub(super) fn unit(&self) -> Option<LengthUnit> {
        match &self.amount {
            WrittenAmount::FeetAndInches(..) => Some(LengthUnit::Inch),
            WrittenAmount::One(_, unit) => *unit,
        }
    }

    /// The unit it may lend to those before it.
    fn trailing_unit(&self) -> Option<LengthUnit> {
        match &self.amount {
            WrittenAmount::FeetAndInches(..) => None,
            WrittenAmount::One(_, unit) => *unit,
        }
    }

    /// Whether it carries a unit of its own.
    pub(super) fn has_unit(&self) -> bool {
        self.unit().is_some()
    }

    fn is_bare_zero(&self) -> bool {
        matches!(&self.amount, WrittenAmount::One(number, None) if number.is_zero())
    }

    fn settled(
        &self,
        cursor: &mut Cursor<'_>,
        context: Context,
        shared: Option<LengthUnit>,
        last_end: usize,
    ) -> Result<Settled, ReadingError> {
        match &self.amount {
            WrittenAmount::One(number, unit) => {
                let Some(unit) = unit.or(shared) else {
                    return Err(unit_is_missing(cursor, None, context, number, last_end));
                };
                let length = length_of(cursor, number, unit)?;
                if number.whole == 0 {
                    caution_improper(cursor, number, unit, length);
                }
                Ok(Settled {
                    length,
                    unit,
                    step: step(number, unit),
                    span: self.span.clone(),
                    number: Some(number.clone()),
                })
            }
            WrittenAmount::FeetAndInches(feet, inches) => {
                let whole = length_of(cursor, feet, LengthUnit::Foot)?;
                let rest = length_of(cursor, inches, LengthUnit::Inch)?;
                let length = whole + rest;
                if rest >= Length::feet(1) {
                    cursor.cautions.push(format!(
                        "{} has twelve inches or more beside its feet; it is read as {}.",
                        quoted(cursor.slice(self.span.clone())),
                        length.exact(LengthUnit::Inch)
                    ));
                }
                Ok(Settled {
                    length,
                    unit: LengthUnit::Inch,
                    step: step(inches, LengthUnit::Inch),
                    span: self.span.clone(),
                    number: None,
                })
            }
        }
    }
}

/// `31/8 in` is read as it stands, but may be a lost space.
fn caution_improper(cursor: &mut Cursor<'_>, number: &Number, unit: LengthUnit, length: Length) {
    if let FractionPart::Fraction {
        numerator,
        denominator,
    } = number.part
        && numerator > denominator
    {
        let caution = format!(
            "{} is read as {}.",
            quoted(cursor.slice(number.span.clone())),
            length.exact(unit)
        );
        cursor.cautions.push(caution);
    }
}

/// The ± behind lengths that carry their unit. One without a unit is in none of them for
/// sure, but most likely in theirs.
pub(super) fn settle_doubt(
    cursor: &mut Cursor<'_>,
    context: Context,
    of: &[Settled],
    within: &Quantity,
) -> Result<Settled, ReadingError> {
    if let (WrittenAmount::One(number, None), None) = (&within.amount, context.default_unit) {
        let unit = of.last().map(|one| one.unit);
        return Err(unit_is_missing(
            cursor,
            unit,
            context,
            number,
            within.span.end,
        ));
    }
    Ok(settle(cursor, context, &[within], BareZero::Refused)?.remove(0))
}

/// A number without a unit; `end` is where one for the whole reading belongs.
fn unit_is_missing(
    cursor: &Cursor<'_>,
    likely: Option<LengthUnit>,
    context: Context,
    number: &Number,
    end: usize,
) -> ReadingError {
    let units = likely.map_or_else(|| offered_units(context.item, number), |unit| vec![unit]);
    let forms: Vec<String> = units
        .into_iter()
        .map(|unit| {
            let joined = cursor.text()[end..].starts_with(|c: char| !c.is_whitespace());
            let space = if joined { " " } else { "" };
            shown(&cursor.rewritten(end..end, &format!(" {}{space}", unit.symbol())))
        })
        .collect();
    ReadingError::new(
        format!("{} has no unit", quoted(cursor.slice(number.span.clone()))),
        number.span.clone(),
    )
    .help(format!("write {}", forms.join(" or ")))
}

/// The exact length of a number in a unit.
fn length_of(
    cursor: &Cursor<'_>,
    number: &Number,
    unit: LengthUnit,
) -> Result<Length, ReadingError> {
    refuse_fraction_of_no_tape(cursor, number, unit)?;
    match exact_length(number, unit) {
        ExactLength::Length(length) => Ok(length),
        ExactLength::TooFine(near) => Err(ReadingError::new(
            format!(
                "{} is finer than a nanometre",
                quoted(cursor.slice(number.span.clone()))
            ),
            number.span.clone(),
        )
        .help(format!("write {}", near.exact(unit)))),
        ExactLength::TooLong => Err(ReadingError::new(
            format!(
                "{} is longer than 100 km",
                quoted(cursor.slice(number.span.clone()))
            ),
            number.span.clone(),
        )
        .help("look at the number and its unit again")),
    }
}

/// Fractions stand on inch tapes only, and there in halves to 64ths.
fn refuse_fraction_of_no_tape(
    cursor: &Cursor<'_>,
    number: &Number,
    unit: LengthUnit,
) -> Result<(), ReadingError> {
    let FractionPart::Fraction {
        numerator,
        denominator,
    } = number.part
    else {
        return Ok(());
    };
    let written = shown(cursor.slice(number.span.clone()));
    let on_tape = matches!(denominator, 2 | 4 | 8 | 16 | 32 | 64);
    if on_tape && unit.is_imperial() {
        return Ok(());
    }
    if on_tape {
        let decimal = decimal_of(number);
        return Err(ReadingError::new(
            format!(
                "`{written} {}`: no metric tape shows fractions",
                unit.symbol()
            ),
            number.span.clone(),
        )
        .help(format!(
            "write {written} in, or {decimal} {} if that was meant",
            unit.symbol()
        )));
    }
    let sixteenths = (numerator * 32 + denominator) / (2 * denominator);
    let near = Length::sixty_fourths(i32::try_from(sixteenths * 4).unwrap_or(i32::MAX));
    let near = near + nanometres(i128::from(number.whole) * 25_400_000);
    Err(ReadingError::new(
        format!("`{written}` is a fraction of no tape: those have halves, quarters, 8ths, 16ths, 32nds or 64ths"),
        number.span.clone(),
    )
    .help(format!(
        "write the nearest mark, such as {}",
        near.exact(LengthUnit::Inch)
    )))
}

/// A number whose fraction is a tape's, as a decimal.
fn decimal_of(number: &Number) -> String {
    let (numerator, denominator) = number.ratio();
    let millionths = numerator * 1_000_000 / denominator;
    let (whole, rest) = (millionths / 1_000_000, millionths % 1_000_000);
    let digits = format!("{rest:06}");
    let digits = digits.trim_end_matches('0');
    if digits.is_empty() {
        whole.to_string()
    } else {
        format!("{whole}.{digits}")
    }
}

/// How finely a number was read, from how it was written.
///
/// # Source
/// Common practice, no source: quarters and finer to 1/16 in, halves to 1/8 in,
/// whole inches to 1/4 in, feet to 1 in; whole centimetres and metres to 1 cm;
/// decimals to their last place, not finer than 1 mm and not coarser than a
/// whole number of the unit would be (`1.1 m` is read no worse than `1 m`).
fn step(number: &Number, unit: LengthUnit) -> Length {
    let whole = match unit {
        LengthUnit::Inch => Length::sixty_fourths(16),
        LengthUnit::Foot => Length::inches(1),
        LengthUnit::Millimetre => Length::millimetres(1),
        LengthUnit::Centimetre | LengthUnit::Metre => Length::millimetres(10),
    };
    match number.part {
        FractionPart::Decimal { written, .. } => {
            let place = 10_i64.checked_pow(written).unwrap_or(i64::MAX);
            let last = Length::from_nanometres(unit.one().nanometres() / place);
            last.min(whole).max(Length::millimetres(1))
        }
        FractionPart::Fraction { denominator, .. } if unit == LengthUnit::Inch => {
            Length::sixty_fourths(if denominator == 2 { 8 } else { 4 })
        }
        FractionPart::Fraction { .. } | FractionPart::Nothing => whole,
    }
}

/// The coarsest step of several lengths; a zero is a statement and has none of
/// its own, unless there is nothing else.
pub(super) fn coarsest(settled: &[Settled]) -> Graduation {
    let steps = |zeros: bool| {
        settled
            .iter()
            .filter(move |s| zeros || s.length != Length::ZERO)
            .map(|s| s.step)
            .max()
    };
    let step = steps(false).or_else(|| steps(true));
    Graduation::ReadTo(step.unwrap_or(Length::millimetres(1)))
}
