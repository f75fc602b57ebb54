//! Openings: a gap, a shape or a ball test.

use crate::items::Item;
use crate::reading::Reading;
use crate::reading::Value;
use crate::reading::ball::WhereRule;
use crate::reading::ball::ball;
use crate::reading::ball::ball_is_mentioned;
use crate::reading::ball::place;
use crate::reading::error::ReadingError;
use crate::reading::length::measures;
use crate::reading::quantity::Context;
use crate::reading::shape::shape;
use crate::reading::tokens::Cursor;

/// The readings of an item that is an opening.
pub(super) fn opening(
    cursor: &mut Cursor<'_>,
    context: Context,
    item: Item,
) -> Result<Vec<Reading>, ReadingError> {
    if ball_is_mentioned(cursor) {
        return balls(cursor, context, item);
    }
    let values = match shape(cursor, context, item)? {
        Some(shape) => vec![Value::Shape(shape)],
        None => measures(cursor, context, item)
            .map_err(|error| of_no_shape(cursor, error))?
            .into_iter()
            .map(Value::Measure)
            .collect(),
    };
    let at = place(cursor, context)?;
    Ok(values
        .into_iter()
        .map(|value| Reading { value, at })
        .collect())
}

/// One ball, or two at the same hole: `3 in ball passes 4 in ball stops`. Where it
/// lies may be said at either.
fn balls(
    cursor: &mut Cursor<'_>,
    context: Context,
    item: Item,
) -> Result<Vec<Reading>, ReadingError> {
    let (first, mut at) = ball(cursor, context, item, WhereRule::MayFollow)?;
    let mut all = vec![first];
    if !cursor.at_end() {
        let (second, place) = ball(cursor, context, item, WhereRule::MayFollow)?;
        all.push(second);
        at = place.or(at);
    }
    let reading = |ball| Reading {
        value: Value::Ball(ball),
        at,
    };
    Ok(all.into_iter().map(reading).collect())
}

/// `diamond 4 x 5 in`: a word where a length was expected is meant as a shape.
fn of_no_shape(cursor: &Cursor<'_>, error: ReadingError) -> ReadingError {
    let whole = cursor.whole();
    let worded = cursor.slice(whole.clone()).starts_with(char::is_alphabetic);
    if worded && cursor.here().start == whole.start {
        error.help(
            "write a gap (3 11/16 in), a ball (4 in ball stops), or a shape: slot, rectangle, \
             triangle, circle, raked, turned, cable, rods, and polygon for any other, by its corners",
        )
    } else {
        error
    }
}
