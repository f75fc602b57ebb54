//! Whether there is a guard at all.

use crate::items::GuardWord;
use crate::items::Item;
use crate::reading::Value;
use crate::survey::Guard;

/// Whether there is a guard at all.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Presence {
    /// There is: it was said, or something of it was read; the observation's index.
    Present(usize),
    /// Looked, and there is none; the observation's index.
    Absent(usize),
    /// Could not look; the observation's index.
    NotLooked(usize),
    /// Nobody said.
    NotSaid,
}

/// Whether a guard stands there, by all that was written of it.
pub(super) fn presence(guard: &Guard) -> Presence {
    let find = |matching: &dyn Fn(Item, &Value) -> bool| {
        guard.observations.iter().position(|observation| {
            let reading = observation.reading.as_ref();
            reading.is_some_and(|reading| matching(observation.item, &reading.value))
        })
    };
    let is_guard = |item| item == Item::Guard;
    let absent = find(&|item, value| is_guard(item) && value.word() == Some(GuardWord::None));
    let present =
        find(&|item, value| (is_guard(item) || item.is_of_the_guard()) && *value != Value::Unknown);
    let not_looked = find(&|item, value| is_guard(item) && *value == Value::Unknown);
    match (absent, present, not_looked) {
        (Some(index), _, _) => Presence::Absent(index),
        (None, Some(index), _) => Presence::Present(index),
        (None, None, Some(index)) => Presence::NotLooked(index),
        (None, None, None) => Presence::NotSaid,
    }
}
