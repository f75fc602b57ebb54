//! Two answers to one question where only one can hold.

use crate::items::Change;
use std::sync::Arc;

use crate::input::Diagnostic;
use crate::input::Excerpt;
use crate::items::Item;
use crate::items::Role;
use crate::reading::Value;
use crate::survey::Observation;
use crate::survey::codes;
use crate::survey::complaints::RowSpot;
use crate::survey::complaints::SpotMark;
use crate::survey::complaints::Unplaced;

/// Whether two answers to this item can clash.
pub(super) fn can_clash(item: Item) -> bool {
    item.info().role == Role::Single
}

/// The first two observations of an item that say different things.
pub(super) fn clashing(observations: &[Observation], item: Item) -> Option<[&Observation; 2]> {
    let mut known = observations
        .iter()
        .filter(|o| o.item == item && value(o).is_some());
    let first = known.next()?;
    let second = known.find(|other| value(other) != value(first))?;
    Some([first, second])
}

/// What an observation says; not being able to look contradicts nothing.
fn value(observation: &Observation) -> Option<&Value> {
    let value = &observation.reading.as_ref()?.value;
    (*value != Value::Unknown).then_some(value)
}

/// Takes all readings of an item away: nobody can tell which one holds.
pub(super) fn forget(observations: &mut [Observation], item: Item) {
    for observation in observations.iter_mut().filter(|o| o.item == item) {
        observation.reading = None;
    }
}

/// What to say of it.
pub(super) fn complaint([first, second]: [&Observation; 2], file: &Arc<str>) -> Unplaced {
    let item = first.item;
    let message = format!(
        "{item}: `{}` here, and `{}` on line {}: only one can hold",
        second.written, first.written, first.row.line
    );
    let help = match item.info().change {
        Change::StartsAGuard => {
            "leave out the one that is wrong, or write two guards where it changes"
        }
        Change::WithinAGuard => "leave out the one that is wrong",
    };
    Unplaced {
        spots: [second, first].map(|observation| RowSpot {
            row: observation.row,
            mark: SpotMark::Item(item),
        }),
        second_says: "the other one",
        diagnostic: Diagnostic::error(
            codes::CLASH,
            message,
            Excerpt::new(Arc::clone(file), second.row.line, "", 0..0),
        )
        .help(help),
    }
}
