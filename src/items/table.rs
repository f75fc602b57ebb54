//! The table of items. Ranges that are questioned or refused are common
//! practice, no source; everything about how to measure likewise, where no
//! source is named.

use crate::items::Hole;
use crate::items::Item;
use crate::items::ItemInfo;
use crate::items::circumstances;
use crate::items::gates;
use crate::items::handrails;
use crate::items::joints;
use crate::items::load_path;
use crate::items::measured;
use crate::items::openings;
use crate::items::seen;
use crate::items::survey_facts;

/// Every item, in the order of [`Item`].
pub(super) const ITEMS: &[ItemInfo] = &[
    survey_facts::PROPERTY,
    survey_facts::DATE,
    survey_facts::BY,
    survey_facts::TAPE,
    survey_facts::READ_TO,
    survey_facts::DEFAULT_UNIT,
    survey_facts::RULES,
    survey_facts::BUILD_TOLERANCE,
    circumstances::PLACE,
    circumstances::USE,
    circumstances::DWELLINGS_IN_BUILDING,
    circumstances::SHARED,
    circumstances::OWN_WAY_OUT,
    circumstances::LOCATION,
    circumstances::DROP,
    circumstances::SILL_HEIGHT,
    circumstances::SILL_TOP_HEIGHT,
    circumstances::SILL_ABOVE_GROUND,
    circumstances::REPLACED_WINDOW,
    seen::WINDOW_STOP,
    circumstances::GROUND_FALL,
    circumstances::CEILING_HEIGHT,
    circumstances::RAMP_SLOPE,
    circumstances::RAMP_RISE,
    circumstances::BUILT,
    circumstances::STOREYS,
    circumstances::RISERS,
    circumstances::FLIGHT_WIDTH,
    circumstances::FLIGHT_SHAPE,
    circumstances::TREAD_THICKNESS,
    circumstances::WELL_WIDTH,
    circumstances::INNER_EDGE_LENGTH,
    circumstances::HANDRAIL,
    circumstances::FIXED_SEAT,
    circumstances::CHILDREN,
    circumstances::STATE,
    seen::GUARD,
    measured::HEIGHT,
    measured::HEIGHT_ABOVE_SEAT,
    measured::GUARD_THICKNESS,
    measured::GUARD_LENGTH,
    openings::OPENING,
    openings::OPENINGS_CHECKED,
    openings::BOTTOM_GAP,
    openings::END_GAP,
    openings::EDGE_GAP,
    openings::STAIR_TRIANGLE,
    openings::RISER_OPENING,
    openings::V_OPENING,
    measured::LEVEL_BAR_SPACING,
    measured::LEVEL_MEMBERS_ON,
    openings::GAP_ABOVE_SOLID_PART,
    measured::FOOTHOLD,
    measured::THING_TO_CLIMB,
    measured::STEP_BESIDE,
    measured::STEP_OUTSIDE,
    handrails::HANDRAIL_HEIGHT,
    handrails::HANDRAIL_SIDES,
    handrails::HANDRAIL_SHAPE,
    handrails::HANDRAIL_THICKNESS,
    handrails::HANDRAIL_PERIMETER,
    handrails::HANDRAIL_CLEARANCE,
    handrails::HANDRAIL_EXTENSION,
    handrails::HANDRAIL_CONTINUOUS,
    handrails::HANDRAIL_ENDS,
    handrails::HANDRAIL_PROJECTION,
    handrails::HANDRAIL_END_GAP,
    handrails::HANDRAIL_GRIP_WIDTH,
    handrails::HANDRAIL_BOTTOM_EXTENSION,
    handrails::HANDRAIL_REACH,
    handrails::RAMP_EDGE,
    measured::SOLID_PART_HEIGHT,
    measured::SOLID_PART_TOP_WIDTH,
    measured::POST_SPACING,
    measured::POST_SECTION,
    seen::INFILL,
    seen::INFILL_LOOSE,
    seen::POST_FASTENING,
    seen::NOTCHED_POST,
    seen::FASTENED_TO,
    seen::MOVES_WHEN_PUSHED,
    gates::TOP_OF_STAIRS_GATE,
    gates::BOTTOM_OF_STAIRS_GATE,
    gates::GATE_HEIGHT,
    gates::GATE_GAP,
    gates::GATE_BOTTOM_GAP,
    gates::LATCH_HEIGHT,
    gates::GATE_CLOSES_ITSELF,
    gates::GATE_OPENS,
    seen::PAINT,
    seen::PHOTO,
    load_path::POST_MATERIAL,
    load_path::WALL_THICKNESS,
    load_path::WOOD_SPECIES,
    load_path::POST_FASTENERS,
    load_path::THREAD_IN_FRAMING,
    load_path::FASTENER_SPACING,
    load_path::FASTENER_DEPTH,
    load_path::EDGE_DISTANCE,
    load_path::WASHER_SIZE,
    load_path::DECKING_THICKNESS,
    load_path::FRAMING_HELD_BY,
    load_path::RAIL_SECTION,
    load_path::RAIL_END_FASTENING,
    load_path::RAIL_END_FASTENERS,
    load_path::BALUSTER_SECTION,
    load_path::BALUSTER_SPACING,
    load_path::BALUSTER_LENGTH,
    load_path::BALUSTER_FIXING,
    load_path::CONDITION,
    joints::RAIL_POSITION,
    joints::LOWER_RAIL_SECTION,
    joints::POST_POSITION,
    joints::BEHIND_THE_POST,
    joints::FRAMING_SPECIES,
    joints::LUMBER_GRADE,
    joints::ROWS_OF_SLITS,
    joints::FRAMING_THICKNESS,
    joints::RIM_DEPTH,
    joints::WASHER_THICKNESS,
    joints::TIE_LABEL,
    joints::CABLE_COUNT,
    joints::CABLE_TENSION,
    joints::ANCHOR_EMBEDMENT,
    joints::CONCRETE_EDGE,
    joints::PLATE_THICKNESS,
    joints::SOCKET_DEPTH,
    joints::POST_NECK,
    joints::NECK_HEIGHT,
    load_path::PULL_TEST,
];

/// A slice of the items of a column, known before the program runs.
macro_rules! those_that {
    ($column:ident) => {{
        const COUNT: usize = {
            let (mut count, mut index) = (0, 0);
            while index < ITEMS.len() {
                if $column(index) {
                    count += 1;
                }
                index += 1;
            }
            count
        };
        const ALL: [Item; COUNT] = {
            let mut all = [Item::Opening; COUNT];
            let (mut found, mut index) = (0, 0);
            while index < ITEMS.len() {
                if $column(index) {
                    all[found] = ITEMS[index].item;
                    found += 1;
                }
                index += 1;
            }
            all
        };
        &ALL
    }};
}

const fn is_of_the_load_path(item: usize) -> bool {
    ITEMS[item].load_path.is_some()
}

/// What load rules look at, by its place among them.
pub(super) const LOAD_PATH: &[Item] = {
    const MEMBERS: &[Item] = those_that!(is_of_the_load_path);
    const BY_PLACE: [Item; MEMBERS.len()] = {
        let mut all = [Item::Height; MEMBERS.len()];
        let mut index = 0;
        while index < MEMBERS.len() {
            let item = MEMBERS[index];
            // a place too large, or taken twice, fails a test
            if let Some(place) = ITEMS[item as usize].load_path {
                all[place as usize] = item;
            }
            index += 1;
        }
        all
    };
    &BY_PLACE
};

const fn is_everywhere(item: usize) -> bool {
    ITEMS[item].hole.is_everywhere()
}

const fn is_any(item: usize) -> bool {
    matches!(ITEMS[item].hole, Hole::Any | Hole::AnyForItself)
}

/// The holes that rules on any opening judge, in the order of the table.
pub(super) const ANY_OPENING: &[Item] = those_that!(is_any);

/// The holes that a ball tried everywhere tells of, in the order of the table.
pub(super) const EVERYWHERE: &[Item] = those_that!(is_everywhere);

#[cfg(test)]
mod tests {
    use super::*;
    use crate::items::DangerCounts;
    use crate::items::Group;
    use crate::items::Kind;
    use crate::items::Part;
    use crate::items::Pictured;
    use crate::items::words::LISTS;
    use std::collections::BTreeSet;

    #[test]
    fn the_table_is_in_the_order_of_the_enum() {
        for (index, info) in ITEMS.iter().enumerate() {
            assert_eq!(info.item as usize, index, "{}", info.name);
            assert_eq!(Item::by_name(info.name), Some(info.item));
        }
        assert_eq!(ITEMS.len(), Item::PullTest as usize + 1);
    }

    #[test]
    fn the_load_path_holds_each_of_its_items_once() {
        let ranked: BTreeSet<Item> = LOAD_PATH.iter().copied().collect();
        assert_eq!(ranked.len(), LOAD_PATH.len(), "two items in one place");
        for (place, item) in LOAD_PATH.iter().enumerate() {
            let own = item.info().load_path.map(usize::from);
            assert_eq!(own, Some(place), "{item}");
        }
    }

    #[test]
    fn what_stands_apart_from_a_guard_says_nothing_of_it() {
        for item in [
            Item::GateHeight,
            Item::Handrail,
            Item::HandrailHeight,
            Item::Paint,
            Item::ThingToClimb,
            Item::TopOfStairsGate,
        ] {
            assert!(!item.is_of_the_guard(), "{item}");
        }
        for item in [
            Item::Height,
            Item::Infill,
            Item::Opening,
            Item::PostFastening,
        ] {
            assert!(item.is_of_the_guard(), "{item}");
        }
        for info in ITEMS.iter().filter(|info| !info.item.is_at_guard()) {
            assert_eq!(info.part, Part::Apart, "{}", info.name);
        }
    }

    #[test]
    fn what_comes_before_every_rule() {
        let mut found = Vec::new();
        for info in ITEMS {
            for word in info.item.words() {
                if let Some(danger) = word.danger {
                    found.push((info.name, word.name, danger.hazard.name(), danger.counts));
                    assert_eq!(danger.act, danger.act.to_uppercase(), "{}", word.name);
                    assert!(!danger.says.ends_with('.'), "{}", danger.says);
                }
            }
        }
        use DangerCounts::{Always, OverADrop, OverAProtectedDrop};
        let expected = [
            ("window stop", "comes undone", "fall over", OverADrop),
            ("guard", "none", "fall over", OverAProtectedDrop),
            ("infill loose", "missing", "fall through", OverADrop),
            ("post fastening", "missing", "give way", Always),
            ("moves when pushed", "a lot", "give way", Always),
            ("condition", "cracks", "give way", Always),
            ("condition", "deep rust", "give way", Always),
            ("condition", "broken glass", "fall through", Always),
            ("condition", "rot", "give way", Always),
        ];
        assert_eq!(found, expected);
    }

    #[test]
    fn every_list_of_words_stands_in_its_own_row() {
        for info in ITEMS {
            // the wood of the framing is told by the words of that of the posts
            let listed = if info.item == Item::FramingSpecies {
                Item::WoodSpecies
            } else {
                info.item
            };
            let mut lists = LISTS.iter().filter(|(item, _)| *item == listed);
            let own = lists.next().map_or(&[][..], |(_, words)| *words);
            assert_eq!(info.item.words(), own, "{}", info.name);
        }
    }

    #[test]
    fn every_item_has_its_measuring_text() {
        for info in ITEMS {
            assert!(info.means.ends_with('.'), "{}: what it means", info.name);
            assert!(!info.how.is_empty(), "{}: how to measure it", info.name);
            assert!(!info.examples.is_empty(), "{}: an example", info.name);
            let asked = !info.item.is_survey_fact() && info.item != Item::State;
            assert_eq!(
                !info.question.is_empty(),
                asked,
                "{}: the question a report asks",
                info.name
            );
        }
    }

    #[test]
    fn what_is_measured_is_drawn_or_says_why_not() {
        for info in ITEMS {
            let tape = match info.kind {
                Kind::Fasteners
                | Kind::Foothold
                | Kind::Length
                | Kind::Opening
                | Kind::Pull
                | Kind::Section
                | Kind::StairTriangle
                | Kind::ThingToClimb => true,
                Kind::Ages
                | Kind::Count
                | Kind::Date
                | Kind::Force
                | Kind::Graduation
                | Kind::Text
                | Kind::Tolerance
                | Kind::VOpening
                | Kind::Words(_)
                | Kind::Years => info.group == Group::Measured,
            };
            let shown = match info.pictured {
                Pictured::By(drawings) => !drawings.is_empty(),
                Pictured::Not(why) => !why.is_empty(),
            };
            assert_eq!(shown, tape, "{}: a drawing, or why not", info.name);
        }
    }

    #[test]
    fn no_name_or_word_means_two_things() {
        let mut names = BTreeSet::new();
        for name in Item::names() {
            assert!(names.insert(name), "{name} twice");
            assert_eq!(name, name.to_lowercase());
        }
        for info in ITEMS {
            let mut words = BTreeSet::new();
            for word in info.item.words() {
                for name in std::iter::once(&word.name).chain(word.synonyms) {
                    let lower = name.to_lowercase();
                    let own = lower == word.name.to_lowercase() && *name != word.name;
                    assert!(own || words.insert(lower), "{}: {name} twice", info.name);
                }
            }
        }
    }
}
