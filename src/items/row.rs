//! A row of the table, before it says what is its own.

use crate::items::AskedWhen;
use crate::items::Change;
use crate::items::Group;
use crate::items::Holds;
use crate::items::Hole;
use crate::items::Item;
use crate::items::ItemInfo;
use crate::items::ItemPlace;
use crate::items::Kind;
use crate::items::MeasuredBetween;
use crate::items::Part;
use crate::items::Pictured;
use crate::items::Role;
use crate::items::Worst;

/// What most rows share; each row says only what is its own.
pub(super) const fn row(
    item: Item,
    name: &'static str,
    kind: Kind,
    group: Group,
    means: &'static str,
    how: &'static [&'static str],
    examples: &'static [&'static str],
) -> ItemInfo {
    ItemInfo {
        item,
        name,
        synonyms: &[],
        kind,
        group,
        role: Role::Several,
        change: Change::WithinAGuard,
        part: Part::Apart,
        between: MeasuredBetween::FloorAndTop,
        hole: Hole::No,
        holds: Holds::ForAGuard,
        place: ItemPlace::Anywhere,
        topic: None,
        load_path: None,
        worst: Worst::Neither,
        hazards: &[],
        means,
        how,
        pictured: Pictured::Not(""),
        examples,
        question: "",
        usual: None,
        most: None,
        asked: AskedWhen::ByRules,
        zero_allowed: false,
        none_allowed: false,
    }
}
