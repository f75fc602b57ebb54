//! Notes that tell of a danger which no reading of the guard says or denies.

use std::sync::Arc;

use crate::items::ConditionWord;
use crate::items::Item;
use crate::items::dangers_told;
use crate::judge::NoteOfDanger;
use crate::judge::dangers::counts;
use crate::judge::rule::Bench;
use crate::judge::said::says_nothing;
use crate::judge::scene::Scene;

/// What the notes of a guard tell of, each danger once, where the item that would say so
/// was not written. What a unit's note says is of no guard in particular.
pub(super) fn noted(scene: &Scene<'_>, benches: &[Bench<'_>]) -> Vec<NoteOfDanger> {
    let guard = scene.guard;
    let of_readings = guard.observations.iter().map(|one| &one.note);
    let own = guard.own.iter().flat_map(|own| [&own.written, &own.note]);
    let mut looked_at: Vec<&Arc<str>> = Vec::new();
    let mut told: Vec<NoteOfDanger> = Vec::new();
    for note in of_readings.chain(own).filter(|note| !note.is_empty()) {
        // a note of a row in a table stands beside each of its cells
        if looked_at.iter().any(|known| Arc::ptr_eq(known, note)) {
            continue;
        }
        looked_at.push(note);
        for (danger, word) in dangers_told(note) {
            let known = told.iter().any(|known| known.told == danger);
            if known || is_answered(scene, danger.item) || !counts(scene, benches, &danger.danger) {
                continue;
            }
            told.push(NoteOfDanger {
                told: danger,
                word,
                note: Arc::clone(note),
            });
        }
    }
    told.sort_by(|one, other| (one.told.item, &one.note).cmp(&(other.told.item, &other.note)));
    told
}

/// Whether somebody wrote a word of the item that speaks of dangers: wood that is dry may
/// be rotten all the same.
fn is_answered(scene: &Scene<'_>, item: Item) -> bool {
    scene.of(item).any(|(index, observation)| {
        let aside = matches!(
            observation.word(),
            Some(ConditionWord::Dry | ConditionWord::Wet)
        );
        // a row that could not be read comes first, and lets nothing meet
        !aside && (observation.reading.is_none() || says_nothing(index, observation).is_none())
    })
}
