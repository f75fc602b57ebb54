//! A ball test, and where an opening lies.

use crate::input::nearest;
use crate::items::Item;
use crate::quantities::Length;
use crate::reading::BallTest;
use crate::reading::Bound;
use crate::reading::Extent;
use crate::reading::Push;
use crate::reading::error::ReadingError;
use crate::reading::error::quoted;
use crate::reading::error::shown;
use crate::reading::force::force;
use crate::reading::plausible::refuse_absurd;
use crate::reading::plausible::refuse_high_place;
use crate::reading::quantity::Context;
use crate::reading::quantity::quantity;
use crate::reading::settle::BareZero;
use crate::reading::settle::settle;
use crate::reading::tokens::Cursor;
use crate::reading::tokens::Lexeme;

const BALL_WORDS: &[&str] = &["ball", "balls", "sphere"];

/// Whether a text has a word that every reading of a ball has, in the middle of another
/// word too. Cheap.
#[must_use]
pub fn names_a_ball(text: &str) -> bool {
    BALL_WORDS.iter().any(|word| {
        let mut parts = text.as_bytes().windows(word.len());
        parts.any(|part| part.eq_ignore_ascii_case(word.as_bytes()))
    })
}

const STOPS: &[&str] = &[
    "stops",
    "stop",
    "stopped",
    "sticks",
    "does not pass through",
    "does not pass",
    "doesn't pass through",
    "doesn't pass",
    "does not go through",
    "doesn't go through",
    "will not pass",
    "won't pass",
];

const PASSES: &[&str] = &[
    "passes through",
    "passes",
    "pass",
    "passed",
    "goes through",
    "went through",
    "fits through",
];

const EVERYWHERE: &[&str] = &[
    "everywhere",
    "at every opening",
    "at every hole",
    "at every place",
    "in every hole",
];

/// Whether `at 38 in` may stand in a ball test.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum WhereRule {
    MayFollow,
    MayNot,
}

/// Whether a ball is spoken of ahead.
pub(super) fn ball_is_mentioned(cursor: &Cursor<'_>) -> bool {
    cursor.mentions(BALL_WORDS)
}

/// `4 in ball stops everywhere pushed 50 lbf at 38 in`; the tail in any order.
pub(super) fn ball(
    cursor: &mut Cursor<'_>,
    context: Context,
    item: Item,
    place_rule: WhereRule,
) -> Result<(BallTest, Option<Extent>), ReadingError> {
    let whole = cursor.whole();
    cursor.any_phrase(&["a", "the"]);
    if cursor.any_phrase(BALL_WORDS) {
        return Err(ReadingError::new(
            "the ball's size stands in front of it, and is missing",
            whole,
        )
        .help("write 4 in ball stops, or 4 in ball passes"));
    }
    let read = quantity(cursor, BALL_WORDS)?;
    let settled = settle(cursor, context, &[&read], BareZero::Refused)?.remove(0);
    if !cursor.any_phrase(BALL_WORDS) {
        let rest = cursor.rest();
        let found = quoted(cursor.slice(rest.clone()));
        return Err(ReadingError::new(
            format!("ball was expected behind its size, and {found} was found"),
            rest,
        )
        .help("write 4 in ball stops, or 4 in ball passes"));
    }
    if settled.length == Length::ZERO {
        return Err(
            ReadingError::new("a ball of no size tells nothing", settled.span)
                .help("write 4 in ball stops, or 4 in ball passes"),
        );
    }
    refuse_absurd(cursor, item.info(), &settled, Bound::Exactly)?;
    let tail = tail(cursor, context, place_rule)?;
    let Some(passes) = tail.passes else {
        let size = shown(cursor.slice(settled.span));
        return Err(
            ReadingError::new("whether the ball stops or passes is missing", whole)
                .help(format!("write {size} ball stops, or {size} ball passes")),
        );
    };
    let ball = BallTest {
        ball: settled.length,
        unit: settled.unit,
        passes,
        everywhere: tail.everywhere,
        push: tail.push.unwrap_or(Push::None),
    };
    Ok((ball, tail.at))
}

/// What stands behind `4 in ball`.
#[derive(Default)]
struct Tail {
    passes: Option<bool>,
    everywhere: bool,
    push: Option<Push>,
    at: Option<Extent>,
}

fn tail(
    cursor: &mut Cursor<'_>,
    context: Context,
    place_rule: WhereRule,
) -> Result<Tail, ReadingError> {
    let mut tail = Tail::default();
    while !cursor.at_end() {
        let start = cursor.here().start;
        if cursor.eat(&Lexeme::Comma) || cursor.word("and") {
            continue;
        }
        let twice = if cursor.any_phrase(STOPS) {
            tail.passes.replace(false).is_some()
        } else if cursor.any_phrase(PASSES) {
            tail.passes.replace(true).is_some()
        } else if cursor.any_phrase(EVERYWHERE) {
            std::mem::replace(&mut tail.everywhere, true)
        } else if cursor.any_phrase(&["pushed", "push"]) {
            let pushed = push(cursor, start)?;
            tail.push.replace(pushed).is_some()
        } else if place_rule == WhereRule::MayFollow && next_is_at(cursor) {
            let at = place(cursor, context)?;
            let twice = tail.at.is_some();
            tail.at = at;
            twice
        } else if place_rule == WhereRule::MayFollow
            && tail.passes.is_some()
            && cursor.mentions(BALL_WORDS)
        {
            // another ball at the same hole
            return Ok(tail);
        } else {
            return Err(unknown_tail(cursor));
        };
        if twice {
            let span = cursor.since(start);
            let found = quoted(cursor.slice(span.clone()));
            return Err(ReadingError::new(
                format!("{found} comes on top of the same said before"),
                span,
            )
            .help("write one ball test a row"));
        }
    }
    Ok(tail)
}

/// `by hand`, or a force.
fn push(cursor: &mut Cursor<'_>, start: usize) -> Result<Push, ReadingError> {
    if cursor.any_phrase(&["by hand", "with a hand", "with one hand"]) {
        return Ok(Push::ByHand);
    }
    cursor.any_phrase(&["with", "at"]);
    if cursor.at_end() {
        let span = cursor.since(start);
        return Err(ReadingError::new("how it was pushed is missing", span)
            .help("write pushed by hand, or pushed 50 lbf"));
    }
    force(cursor).map(Push::Force)
}

fn unknown_tail(cursor: &Cursor<'_>) -> ReadingError {
    const KNOWN: [&str; 6] = ["stops", "passes", "everywhere", "pushed", "hand", "at"];
    let here = cursor.here();
    let found = cursor.slice(here.clone());
    let error = ReadingError::new(
        format!(
            "{} says nothing about a ball; it stops or passes, everywhere, pushed by hand or with a force",
            quoted(found)
        ),
        here.clone(),
    );
    match nearest(found, KNOWN).filter(|word| *word != found) {
        Some(word) => error.help(format!("write {}", shown(&cursor.rewritten(here, word)))),
        None => error.help("write 4 in ball stops everywhere, and the rest in the note"),
    }
}

fn next_is_at(cursor: &Cursor<'_>) -> bool {
    cursor.next_word() == Some("at")
}

/// `at 38 in`, `at 6 in to 20 in`: where an opening lies, where that is written.
pub(super) fn place(
    cursor: &mut Cursor<'_>,
    context: Context,
) -> Result<Option<Extent>, ReadingError> {
    if !cursor.word("at") {
        return Ok(None);
    }
    let context = Context {
        item: Some(Item::Height),
        ..context
    };
    let first = quantity(cursor, &["to", "pushed", "stops", "passes", "everywhere"])?;
    if !cursor.word("to") {
        let settled = settle(cursor, context, &[&first], BareZero::Refused)?.remove(0);
        refuse_high_place(cursor, &settled)?;
        return Ok(Some(Extent {
            low: settled.length,
            high: settled.length,
        }));
    }
    let second = quantity(cursor, &["pushed", "stops", "passes", "everywhere"])?;
    let ends = settle(cursor, context, &[&first, &second], BareZero::Allowed)?;
    for end in &ends {
        refuse_high_place(cursor, end)?;
    }
    let (a, b) = (ends[0].length, ends[1].length);
    Ok(Some(Extent {
        low: a.min(b),
        high: a.max(b),
    }))
}
