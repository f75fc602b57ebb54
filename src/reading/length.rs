//! Plain lengths: at, over or under a value, from one to another, ± a, and sticks.

use crate::items::Item;
use crate::items::Kind;
use crate::items::Worst;
use crate::quantities::Length;
use crate::quantities::LengthUnit;
use crate::reading::Bound;
use crate::reading::Graduation;
use crate::reading::Measure;
use crate::reading::Stick;
use crate::reading::Value;
use crate::reading::error::ReadingError;
use crate::reading::error::quoted;
use crate::reading::error::shown;
use crate::reading::plausible::judge;
use crate::reading::plausible::refuse_absurd;
use crate::reading::quantity::Context;
use crate::reading::quantity::Quantity;
use crate::reading::quantity::quantity;
use crate::reading::settle::BareZero;
use crate::reading::settle::Settled;
use crate::reading::settle::settle;
use crate::reading::settle::settle_doubt;
use crate::reading::tokens::Cursor;
use crate::reading::tokens::Lexeme;

/// Words that say roughly, none of which says how roughly.
const ROUGHLY: &[&str] = &[
    "about",
    "approximately",
    "approx",
    "around",
    "ca",
    "circa",
    "roughly",
    "nearly",
    "almost",
];

/// The same behind a length.
const ROUGHLY_BEHIND: &[&str] = &[
    "-ish",
    "ish",
    " or so",
    " approx",
    " approx.",
    " approximately",
    " roughly",
    " about",
    " more or less",
];

/// Parses a plain length: `36 in`, `2 ft 10 5/8 in`, `87.9 cm`.
///
/// For limits of rulesets and options of the command line: no `over`, no `±`,
/// nothing behind it. How finely it was read is as for a reading.
///
/// # Errors
/// [`ReadingError`] for anything else, a bare number without a default unit too.
///
/// ```
/// use guardrule::quantities::Length;
/// use guardrule::reading::parse_length;
/// assert_eq!(parse_length("35½″", None)?.length, Length::sixty_fourths(35 * 64 + 32));
/// assert_eq!(parse_length("4 in", None)?.length, parse_length("101.6 mm", None)?.length);
/// assert!(parse_length("36", None).is_err());
/// # Ok::<(), guardrule::reading::ReadingError>(())
/// ```
pub fn parse_length(text: &str, default_unit: Option<LengthUnit>) -> Result<Measure, ReadingError> {
    let mut cursor = Cursor::new(text);
    if cursor.at_end() {
        return Err(ReadingError::new("there is no length", 0..0).help("write one, such as 36 in"));
    }
    let context = Context {
        item: None,
        default_unit,
    };
    let settled = single_length(&mut cursor, context)?;
    cursor.finish()?;
    Ok(measure(&settled, Bound::Exactly, None))
}

/// One length with its unit.
pub(super) fn single_length(
    cursor: &mut Cursor<'_>,
    context: Context,
) -> Result<Settled, ReadingError> {
    let read = quantity(cursor, &[])?;
    let mut settled = settle(cursor, context, &[&read], BareZero::Refused)?;
    Ok(settled.remove(0))
}

fn measure(settled: &Settled, bound: Bound, within: Option<Length>) -> Measure {
    Measure {
        length: settled.length,
        unit: settled.unit,
        bound,
        graduation: within.map_or(Graduation::ReadTo(settled.step), Graduation::PlusMinus),
    }
}

/// The readings of an item that is a plain length.
pub(super) fn length(
    cursor: &mut Cursor<'_>,
    context: Context,
    item: Item,
) -> Result<Vec<Value>, ReadingError> {
    if let Some(stick) = stick(cursor, context, item)? {
        return Ok(vec![Value::Stick(stick)]);
    }
    if cursor.mentions(&["ball", "sphere"]) {
        return Err(
            ReadingError::new(format!("a ball says nothing about {item}"), cursor.whole())
                .help("write a length, such as 36 in"),
        );
    }
    let found = measures(cursor, context, item)?;
    Ok(found.into_iter().map(Value::Measure).collect())
}

/// `reaches 36 in`, `below 36 in`: a stick held at a height.
fn stick(
    cursor: &mut Cursor<'_>,
    context: Context,
    item: Item,
) -> Result<Option<Stick>, ReadingError> {
    let whole = cursor.whole();
    let reaches = if cursor.any_phrase(&["reaches", "reach"]) {
        true
    } else if cursor.any_phrase(&["below", "does not reach", "doesn't reach"]) {
        false
    } else {
        return Ok(None);
    };
    let rest = shown(cursor.slice(cursor.rest()));
    if item.info().worst != Worst::Least {
        let help = if reaches { "over" } else { "under" };
        let word = quoted(cursor.slice(cursor.since(whole.start)));
        return Err(ReadingError::new(
            format!("{word} is for a stick held at a guard's height, and not for {item}"),
            whole,
        )
        .help(format!("write {help} {rest}")));
    }
    let settled = single_length(cursor, context)?;
    if settled.length == Length::ZERO {
        return Err(
            ReadingError::new("a stick of no length tells nothing", whole)
                .help("write the stick's length, as in reaches 36 in"),
        );
    }
    refuse_absurd(cursor, item.info(), &settled, Bound::Exactly)?;
    Ok(Some(Stick {
        stick: settled.length,
        unit: settled.unit,
        reaches,
    }))
}

/// One length, or two for `5 to 6 in`, judged against the item's ranges.
pub(super) fn measures(
    cursor: &mut Cursor<'_>,
    context: Context,
    item: Item,
) -> Result<Vec<Measure>, ReadingError> {
    refuse_roughly(cursor)?;
    let start = cursor.here().start;
    let bound = bound(cursor)?;
    let first = quantity(cursor, &["to", "at", "x", "by"])?;
    refuse_sides(cursor, item)?;
    let second = if cursor.word("to") {
        Some(quantity(cursor, &["at"])?)
    } else {
        None
    };
    let within = plus_minus(cursor)?;
    if bound != Bound::Exactly && (second.is_some() || within.is_some()) {
        let span = cursor.since(start);
        let found = quoted(cursor.slice(span.clone()));
        return Err(ReadingError::new(
            format!("{found}: over and under go with one length and without ±"),
            span,
        )
        .help("write over 8 ft, or 5 to 6 in, or 5 in ± 1/2 in"));
    }
    let mut lengths: Vec<&Quantity> = vec![&first];
    lengths.extend(second.as_ref());
    let (settled, within) = settle_with(cursor, context, &lengths, within.as_ref())?;
    for one in &settled {
        judge(cursor, item.info(), one, bound)?;
        refuse_wide(cursor, one, within.as_ref())?;
    }
    let within = within.map(|within| within.length);
    Ok(settled
        .iter()
        .map(|one| measure(one, bound, within))
        .collect())
}

/// `3 x 4 in` is no plain length.
fn refuse_sides(cursor: &mut Cursor<'_>, item: Item) -> Result<(), ReadingError> {
    if !cursor.times() {
        return Ok(());
    }
    let whole = cursor.whole();
    let written = shown(cursor.slice(whole.clone()));
    let help = if item.info().kind == Kind::Opening {
        format!("write rectangle {written}, or triangle {written}")
    } else {
        "write one length, such as 36 in".to_owned()
    };
    Err(ReadingError::new(format!("`{written}` has two sides"), whole).help(help))
}

/// Settles lengths and the ± behind them; `5 ± 1/2 in` shares its unit.
pub(super) fn settle_with(
    cursor: &mut Cursor<'_>,
    context: Context,
    lengths: &[&Quantity],
    within: Option<&Quantity>,
) -> Result<(Vec<Settled>, Option<Settled>), ReadingError> {
    let Some(within) = within else {
        return Ok((settle(cursor, context, lengths, BareZero::Refused)?, None));
    };
    let mut settled = if lengths.iter().any(|length| length.has_unit()) {
        let mut settled = settle(cursor, context, lengths, BareZero::Refused)?;
        let within = settle_doubt(cursor, context, &settled, within)?;
        settled.push(within);
        settled
    } else {
        let all: Vec<&Quantity> = lengths.iter().copied().chain([within]).collect();
        settle(cursor, context, &all, BareZero::Refused)?
    };
    let within = settled.pop();
    if let Some(within) = &within
        && within.length == Length::ZERO
    {
        return Err(
            ReadingError::new("± nothing is surer than any tape", within.span.clone())
                .help("leave it out, or write how far off it may be"),
        );
    }
    Ok((settled, within))
}

/// A ± as large as the reading says nothing.
fn refuse_wide(
    cursor: &Cursor<'_>,
    one: &Settled,
    within: Option<&Settled>,
) -> Result<(), ReadingError> {
    match within {
        Some(within) if within.length >= one.length && one.length > Length::ZERO => {
            Err(ReadingError::new(
                format!(
                    "± {} is as large as the reading itself",
                    shown(cursor.slice(within.span.clone()))
                ),
                within.span.clone(),
            )
            .help("measure again, or write how far off it may be at most"))
        }
        Some(_) | None => Ok(()),
    }
}

/// The length behind `±`, where there is one.
pub(super) fn plus_minus(cursor: &mut Cursor<'_>) -> Result<Option<Quantity>, ReadingError> {
    if cursor.eat(&Lexeme::PlusMinus) {
        quantity(cursor, &["at"]).map(Some)
    } else {
        Ok(None)
    }
}

/// `about 5 in` and `5 in or so` do not say how far off they may be.
fn refuse_roughly(cursor: &mut Cursor<'_>) -> Result<(), ReadingError> {
    let span = cursor.whole();
    let whole = cursor.slice(span.clone()).trim();
    let tilde = matches!(cursor.peek(), Some(Lexeme::Other('~' | '≈' | '∼')));
    let written = if tilde || cursor.any_phrase(ROUGHLY) {
        if tilde {
            cursor.advance();
        }
        cursor.eat(&Lexeme::Dot);
        shown(cursor.slice(cursor.rest()))
    } else {
        let lower = whole.to_ascii_lowercase();
        let behind = ROUGHLY_BEHIND.iter().find_map(|w| lower.strip_suffix(w));
        let Some(behind) = behind.and_then(|rest| whole.get(..rest.len())) else {
            return Ok(());
        };
        shown(behind.trim_end_matches(['-', ' ', '(', ',']))
    };
    let message = format!("{} does not say how far off it may be", quoted(whole));
    let mut rest = Cursor::new(&written);
    let length = quantity(&mut rest, &[]).ok().filter(|_| rest.at_end());
    let help = match length.map(|length| length.unit()) {
        Some(Some(unit)) => format!("write {written} ± {}", rough_doubt(unit)),
        Some(None) => format!(
            "write the unit, and how far off it may be at most: {written} in ± {}, or {written} mm ± {}",
            rough_doubt(LengthUnit::Inch),
            rough_doubt(LengthUnit::Millimetre)
        ),
        None => "write it so: 5 in ± 1/2 in".to_owned(),
    };
    Err(ReadingError::new(message, span).help(help))
}

/// How far off a length may well be that somebody wrote down roughly; an example only.
const fn rough_doubt(unit: LengthUnit) -> &'static str {
    match unit {
        LengthUnit::Centimetre => "1 cm",
        LengthUnit::Foot => "6 in",
        LengthUnit::Inch => "1/2 in",
        LengthUnit::Metre => "10 cm",
        LengthUnit::Millimetre => "10 mm",
    }
}

/// `over`, `under` and the words that mean the same.
fn bound(cursor: &mut Cursor<'_>) -> Result<Bound, ReadingError> {
    let start = cursor.here().start;
    if cursor.any_phrase(&["over", "more than"]) || cursor.eat(&Lexeme::Greater) {
        return Ok(Bound::Over);
    }
    if cursor.any_phrase(&["under", "less than"]) || cursor.eat(&Lexeme::Less) {
        return Ok(Bound::Under);
    }
    let right = if cursor.any_phrase(&["at least", "above", "min", "minimum"])
        || matches!(cursor.peek(), Some(Lexeme::Other('≥')))
    {
        "over"
    } else if cursor.any_phrase(&["at most", "up to", "max", "maximum"])
        || matches!(cursor.peek(), Some(Lexeme::Other('≤')))
    {
        "under"
    } else {
        return Ok(Bound::Exactly);
    };
    if matches!(cursor.peek(), Some(Lexeme::Other(_))) {
        cursor.advance();
    }
    let rest = shown(cursor.slice(cursor.rest()));
    let span = cursor.since(start);
    Err(ReadingError::new(
        format!(
            "{} is not a word for readings; they say over or under",
            quoted(cursor.slice(span.clone()))
        ),
        span,
    )
    .help(format!("write {right} {rest}")))
}

/// `± 1/8 in`: how far off something may come out.
pub(super) fn tolerance(
    cursor: &mut Cursor<'_>,
    context: Context,
    item: Item,
) -> Result<Value, ReadingError> {
    cursor.eat(&Lexeme::PlusMinus);
    let settled = single_length(cursor, context)?;
    judge(cursor, item.info(), &settled, Bound::Exactly)?;
    Ok(Value::Measure(measure(
        &settled,
        Bound::Exactly,
        Some(settled.length),
    )))
}

/// `1/16 in`: the step to which a tape was read.
pub(super) fn graduation(
    cursor: &mut Cursor<'_>,
    context: Context,
    item: Item,
) -> Result<Value, ReadingError> {
    cursor.any_phrase(&["to the nearest", "the nearest", "nearest", "to"]);
    let settled = single_length(cursor, context)?;
    judge(cursor, item.info(), &settled, Bound::Exactly)?;
    Ok(Value::Measure(Measure {
        length: settled.length,
        unit: settled.unit,
        bound: Bound::Exactly,
        graduation: Graduation::ReadTo(settled.length),
    }))
}
