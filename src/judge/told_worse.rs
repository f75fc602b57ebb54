//! Notes beside a reading that tell of a worse place: `33 1/2 in at the far end`, `a 4 in
//! ball passes at the post`. Nobody judges by a note; the reading beside it does not meet
//! until what the note says is a reading as well.

use crate::items::Hole;
use crate::items::Item;
use crate::judge::Reason;
use crate::judge::scene::Build;
use crate::judge::scene::Scene;
use crate::quantities::Length;
use crate::reading::Bound;
use crate::reading::Value;
use crate::reading::names_a_ball;
use crate::reading::parse_or_none;

/// The most words that one reading in a note has: `2 ft 10 1/2 in`, `4 in ball passes`.
const LONGEST: usize = 5;

/// Whether its own note tells of a lesser height, or of a ball that passes, that is no
/// reading of the guard.
pub(super) fn told_worse(scene: &Scene<'_>, index: usize) -> Option<Reason<'static>> {
    let observation = scene.guard.observation(index);
    let item = observation.item;
    let a_hole = item.info().hole != Hole::No;
    let told = observation.note.bytes().any(|byte| byte.is_ascii_digit());
    // of a hole only a ball that passes is looked for
    let told = told && (!a_hole || names_a_ball(&observation.note));
    if !told || scene.build == Build::Exact || !(a_hole || item == Item::Height) {
        return None;
    }
    let value = &observation.reading.as_ref()?.value;
    let shared = scene.shares_its_note(observation);
    let worse = readings(item, &observation.note).into_iter().any(|told| {
        let is_worse = if let Value::Ball(ball) = &told {
            a_hole && ball.passes
        } else {
            !shared && !a_hole && is_lower(&told, value)
        };
        let mut written = scene
            .of(item)
            .filter_map(|(_, other)| other.reading.as_ref());
        is_worse && !written.any(|reading| says_the_same(&reading.value, &told))
    });
    worse.then_some(Reason::NoteTellsWorse { item, index })
}

/// Whether a length of a note may be the height at another place: it is less, and more than
/// how far something stands away. (common practice, no source)
fn is_lower(told: &Value, written: &Value) -> bool {
    let (Some(told), Some(written)) = (exactly(told), exactly(written)) else {
        return false;
    };
    told < written && told.nanometres() >= written.nanometres() / 10 * 7
}

fn exactly(value: &Value) -> Option<Length> {
    if let Value::Measure(measure) = value {
        (measure.bound == Bound::Exactly).then_some(measure.length)
    } else {
        None
    }
}

fn says_the_same(one: &Value, other: &Value) -> bool {
    if let (Value::Ball(one), Value::Ball(other)) = (one, other) {
        return (one.ball, one.passes) == (other.ball, other.passes);
    }
    exactly(one).is_some() && exactly(one) == exactly(other)
}

/// What of a note could be readings of an item, from left to right.
fn readings(item: Item, note: &str) -> Vec<Value> {
    let aside = |c: char| matches!(c, '.' | ',' | ';' | ':' | '!' | '?' | '(' | ')');
    let words: Vec<&str> = note
        .split_whitespace()
        .map(|word| word.trim_matches(aside))
        .collect();
    let mut found = Vec::new();
    let mut at = 0;
    while at < words.len() {
        let begins = words[at].starts_with(|c: char| c.is_ascii_digit());
        let most = if begins {
            LONGEST.min(words.len() - at)
        } else {
            0
        };
        let read = (1..=most).rev().find_map(|count| {
            let parsed = parse_or_none(item, &words[at..at + count].join(" "), None)?;
            Some((count, parsed.readings))
        });
        at += read.as_ref().map_or(1, |(count, _)| *count);
        let read = read.into_iter().flat_map(|(_, readings)| readings);
        found.extend(read.map(|reading| reading.value));
    }
    found
}
