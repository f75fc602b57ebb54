//! What people write that means one of several things, or another thing than
//! the word it looks like: what is said of it. Common practice, no source.

use crate::input::folded;
use crate::items::Item;

/// A name or a word that means one of several things.
#[derive(Clone, Copy, Debug)]
pub struct NearMiss {
    /// What people write, in lower case; a `*` in front stands for anything.
    pub written: &'static [&'static str],
    /// What to write instead, and when.
    pub says: &'static str,
    /// What `says` offers: names of items, or readings of the item.
    pub offers: &'static [&'static str],
}

impl NearMiss {
    fn fits(&self, text: &str) -> bool {
        self.written
            .iter()
            .any(|written| match written.strip_prefix('*') {
                Some(end) => text.len() > end.len() && text.ends_with(end),
                None => *written == text,
            })
    }

    /// The item that it offers first, where it offers items.
    #[must_use]
    pub fn item(&self) -> Option<Item> {
        self.offers.first().and_then(|name| Item::by_name(name))
    }
}

impl Item {
    /// What is said of a name that means one of several items, if this is such a name.
    #[must_use]
    pub fn near_miss_of_name(name: &str) -> Option<&'static NearMiss> {
        let name = folded(name).replace(['-', '_'], " ");
        NAMES.iter().find(|miss| miss.fits(&name))
    }

    /// What is said of a name that holds a word of an item or of a danger and is no item:
    /// `height at the gate`, `rotten post`. Nothing where the person says that it is
    /// their `own`.
    #[must_use]
    pub fn holding_a_word_of_one(name: &str) -> Option<&'static NearMiss> {
        if Item::is_of_ones_own(name) {
            return None;
        }
        let name = folded(name);
        let mut words = name.split(|c: char| !c.is_alphabetic());
        words.find_map(|word| HELD.iter().find(|miss| miss.written.contains(&word)))
    }

    /// Whether the person says that it is nothing that rules read: `own ball game rule`.
    #[must_use]
    pub fn is_of_ones_own(name: &str) -> bool {
        folded(name).split(|c: char| !c.is_alphabetic()).next() == Some("own")
    }

    /// The words that no name of one's own may hold.
    pub fn words_held() -> impl Iterator<Item = &'static NearMiss> {
        HELD.iter()
    }

    /// What is said of a reading that means one of several things, if this is such a reading.
    #[must_use]
    pub fn near_miss(self, reading: &str) -> Option<&'static NearMiss> {
        let own = READINGS.iter().filter(|(items, _)| items.contains(&self));
        let mut misses = own.flat_map(|(_, misses)| misses.iter());
        let first = misses.next()?;
        let reading = folded(reading);
        std::iter::once(first)
            .chain(misses)
            .find(|miss| miss.fits(&reading))
    }

    /// The names that are asked about, and the readings of each item that are.
    pub fn near_misses() -> impl Iterator<Item = (Option<Item>, &'static NearMiss)> {
        let names = NAMES.iter().map(|miss| (None, miss));
        let readings = READINGS.iter().flat_map(|(items, misses)| {
            let all = items
                .iter()
                .flat_map(|item| misses.iter().map(|m| (*item, m)));
            all.map(|(item, miss)| (Some(item), miss))
        });
        names.chain(readings)
    }
}

const fn miss(
    written: &'static [&'static str],
    offers: &'static [&'static str],
    says: &'static str,
) -> NearMiss {
    NearMiss {
        written,
        says,
        offers,
    }
}

/// Words within a name of one's own that look like a reading which a rule wants.
const HELD: &[NearMiss] = &[
    miss(
        &["height", "heights", "high", "low", "lowest"],
        &["height", "handrail height", "drop"],
        "write height for how high the railing is, handrail height, or drop for how far it is down, and where in the note; something else of your own is own …",
    ),
    miss(
        &[
            "opening",
            "openings",
            "gap",
            "gaps",
            "hole",
            "holes",
            "ball",
            "sphere",
            "between",
            "under",
            "spacing",
            "triangle",
            "clearance",
        ],
        &[
            "opening",
            "bottom gap",
            "end gap",
            "edge gap",
            "riser opening",
        ],
        "write opening for the gap between bars, bottom gap below them, end gap beside the last post, edge gap beside the floor, riser opening between steps, and where in the note; something else of your own is own …",
    ),
    miss(
        &["drop"],
        &["drop"],
        "write drop for how far it is down, and where in the note; something else of your own is own …",
    ),
    miss(
        &["missing"],
        &["infill loose", "guard"],
        "write infill loose,missing where a bar or panel is missing, guard,none where there is no railing; something else of your own is own …",
    ),
    miss(
        &[
            "loose", "shaky", "shakes", "wobbly", "wobble", "wobbles", "moves", "movement", "sway",
            "sways", "leans", "leaning",
        ],
        &["moves when pushed", "infill loose"],
        "write moves when pushed for the railing, infill loose for a bar or a panel; something else of your own is own …",
    ),
    miss(
        &[
            "rot",
            "rotten",
            "broken",
            "crack",
            "cracked",
            "cracks",
            "rust",
            "rusty",
            "damage",
            "damaged",
            "defect",
            "defects",
            "decay",
            "corrosion",
            "condition",
        ],
        &["condition", "infill loose"],
        "write condition (rot, cracks, deep rust, broken glass), infill loose for a broken bar; something else of your own is own …",
    ),
    miss(
        &["bolts", "screws", "nails", "anchors", "fixing", "fixings"],
        &["post fastening", "rail end fastening", "condition"],
        "write post fastening for what holds the posts, rail end fastening for what holds the rail's ends, condition for rust or rot at it; something else of your own is own …",
    ),
];

const NAMES: &[NearMiss] = &[
    miss(
        &[
            "gate",
            "stair gate",
            "stairs gate",
            "baby gate",
            "safety gate",
        ],
        &["top of stairs gate", "bottom of stairs gate"],
        "write top of stairs gate or bottom of stairs gate",
    ),
    miss(
        &[
            "opens",
            "window opens",
            "window opening",
            "opens by",
            "opening width",
            "window width",
        ],
        &["opening", "window stop"],
        "write opening for how far the window opens or how wide a hole is, window stop for what keeps the window from opening further",
    ),
    miss(
        &["latch", "gate lock"],
        &["latch height", "gate closes itself"],
        "write latch height for how high it is, gate closes itself for whether it catches",
    ),
    miss(
        &["thickness", "thick"],
        &[
            "guard thickness",
            "handrail thickness",
            "wall thickness",
            "decking thickness",
        ],
        "write what is thick: guard thickness, handrail thickness, wall thickness (of a hollow post), decking thickness",
    ),
    miss(
        &["spacing", "rail spacing", "bar spacing", "picket spacing"],
        &[
            "opening",
            "baluster spacing",
            "level bar spacing",
            "post spacing",
        ],
        "write opening for the clear gap, baluster spacing from centre to centre, level bar spacing from top to top, post spacing between posts",
    ),
    miss(
        &["loose", "looseness"],
        &["moves when pushed", "infill loose"],
        "write moves when pushed for the guard, infill loose for a baluster or a panel",
    ),
    miss(
        &[
            "sill",
            "window sill",
            "window sill height",
            "height of the sill",
        ],
        &["sill top height", "sill height"],
        "write sill top height for the ledge below the window, sill height for where the part that opens begins",
    ),
    miss(
        &["length", "long"],
        &["guard length", "baluster length", "inner edge length"],
        "write what is long: guard length, baluster length, inner edge length",
    ),
    miss(
        &["width", "wide"],
        &["flight width", "opening", "well width", "guard thickness"],
        "write what is wide: flight width, opening, well width, guard thickness",
    ),
    miss(
        &[
            "balcony height",
            "deck height",
            "porch height",
            "landing height",
            "stair height",
            "height above ground",
            "height off the ground",
        ],
        &["drop", "height"],
        "write drop for how far it is down, height for how high the railing is",
    ),
    miss(
        &["floor", "level", "storey", "story"],
        &["drop", "storeys"],
        "write drop for how far it is down, storeys for how many the building has",
    ),
    miss(
        &[
            "horizontal bars",
            "metal bars",
            "bars",
            "cross bars",
            "rungs",
        ],
        &["infill", "foothold", "level bar spacing"],
        "write infill for what fills the guard, foothold for a bar a foot could stand on, level bar spacing for how far apart they are",
    ),
    miss(
        &["ledge", "ledges", "kerb", "curb"],
        &[
            "foothold",
            "step beside",
            "step outside",
            "height above seat",
        ],
        "write foothold where it is part of the guard, step beside where it stands inside, step outside where it lies beyond; height above seat for how high the guard is above it",
    ),
    miss(
        &["slope", "gradient"],
        &["ramp slope", "ground fall"],
        "write ramp slope for a ramp, ground fall for the ground beside an edge",
    ),
    miss(
        &["post", "posts"],
        &["post section", "post fastening", "post spacing"],
        "write post section for how thick, post fastening for what holds it, post spacing for how far apart",
    ),
    miss(
        &["top rail", "toprail", "rail top"],
        &["height", "rail section"],
        "write height for how high it is, rail section for how thick",
    ),
    miss(
        &["age", "how old"],
        &["children", "built"],
        "write children for a child's age, built for the year of the guard",
    ),
    miss(
        &["glass", "window"],
        &["infill", "condition", "place"],
        "write infill for what fills the guard, condition for broken glass, place where the guard is at a window",
    ),
    miss(
        &["stairwell", "well"],
        &["well width", "drop"],
        "write well width for how wide it is, drop for how deep",
    ),
];

const YES_AND_NO: &str = "y";

const READINGS: &[(&[Item], &[NearMiss])] = &[
    (
        &[Item::Place],
        &[
            miss(
                &["flat roof", "rooftop", "roof top"],
                &["terrace", "roof"],
                "write terrace where people sit or walk for pleasure, roof where somebody only goes to work on it",
            ),
            miss(
                &[
                    "* floor",
                    "ground floor",
                    "upstairs",
                    "downstairs",
                    "first floor",
                    "outside",
                    "inside",
                ],
                &["landing", "balcony", "window"],
                "write what one stands on there, such as landing, balcony or window; how far it is down goes under drop",
            ),
            miss(
                &["house", "flat", "apartment", "home"],
                &["landing", "balcony", "deck"],
                "write what one stands on there, such as landing, balcony or deck; what the building is used for goes under use",
            ),
        ],
    ),
    (
        &[Item::Use],
        &[miss(
            &["rental", "rented", "let", "shared", "common"],
            &["dwelling"],
            "write dwelling; whether several households share the place goes under shared",
        )],
    ),
    (
        &[Item::Drop],
        &[miss(
            &[
                "* floor",
                "* storey",
                "* storeys",
                "* story",
                "* stories",
                "* level",
            ],
            &["over 8 ft", "9 ft", "2.6 m"],
            "write how far it is down as well as you can tell, such as 9 ft, 2.6 m or over 8 ft, and the floor in the note",
        )],
    ),
    (
        &[Item::RampSlope],
        &[miss(
            &[
                "*%", "*percent", "*degrees", "*deg", "1:6", "1:8", "1:10", "1:12", "1:14", "1:15",
                "1:16", "1:18", "1:20", "1 in 8", "1 in 10", "1 in 12", "1 in 15", "1 in 20",
            ],
            &["83 mm", "50 mm"],
            "write how far it rises over one metre, measured level: 1 in 12 is 83 mm, 1 in 20 is 50 mm",
        )],
    ),
    (
        &[Item::Infill],
        &[
            miss(
                &[
                    "bars",
                    "metal bars",
                    "iron bars",
                    "steel bars",
                    "wooden bars",
                    "rods",
                    "metal rods",
                ],
                &["balusters", "horizontal bars"],
                "write balusters where they stand upright, horizontal bars where they lie level",
            ),
            miss(
                &[
                    "metal", "wood", "wooden", "timber", "iron", "steel", "plastic",
                ],
                &["balusters", "horizontal bars", "panel"],
                "write its form and not what it is made of: balusters where bars stand upright, horizontal bars where they lie level, panel where it is closed",
            ),
        ],
    ),
    (
        &[Item::InfillLoose],
        &[miss(
            &["yes", YES_AND_NO, "loose"],
            &["one", "several", "missing"],
            "write one or several for how many are loose, missing where one is gone",
        )],
    ),
    (
        &[Item::MovesWhenPushed],
        &[miss(
            &["yes", YES_AND_NO],
            &["a little", "a lot"],
            "write a little where one hand just feels it, a lot where it is seen to move",
        )],
    ),
    (
        &[Item::Handrail],
        &[
            miss(
                &["yes", YES_AND_NO],
                &["top of the guard", "separate"],
                "write top of the guard where one holds the railing's own top, separate where there is another rail",
            ),
            miss(
                &[
                    "one side",
                    "both sides",
                    "left",
                    "right",
                    "left side",
                    "right side",
                ],
                &["separate", "top of the guard"],
                "write separate where it is a rail of its own, top of the guard where one holds the railing's own top; on how many sides it runs goes under handrail sides",
            ),
        ],
    ),
    (
        &[Item::State],
        &[miss(
            &["new"],
            &["existing", "proposed"],
            "write existing where it stands there already, proposed where it is only a plan",
        )],
    ),
    (
        &[Item::OpeningsChecked],
        &[miss(
            &["yes", YES_AND_NO],
            &["every one", "some", "one"],
            "write every one, some or one",
        )],
    ),
    (
        &[Item::TopOfStairsGate, Item::BottomOfStairsGate],
        &[miss(
            &["yes", YES_AND_NO],
            &["screwed", "pressed"],
            "write screwed where screws hold it in the wall, pressed where it only presses against the walls",
        )],
    ),
    (
        &[Item::PostFastening],
        &[miss(
            &["none", "no", "nothing"],
            &["missing", "hidden"],
            "write missing where what should hold the post is gone, hidden where it cannot be seen",
        )],
    ),
    (
        &[Item::FastenedTo],
        &[
            miss(
                &["block"],
                &["blocking", "masonry"],
                "write blocking for wood set between joists, masonry for brick or block",
            ),
            miss(
                &["floor", "wood", "deck"],
                &["joist", "subfloor", "rim board"],
                "write joist or rim board where the screws reach the framing, subfloor where they end in the boards",
            ),
        ],
    ),
    (
        &[Item::RailEndFastening],
        &[miss(
            &["screws", "screwed", "post"],
            &["screws into a post", "screws into a stud"],
            "write screws into a post, or screws into a stud behind the wall's board",
        )],
    ),
    (
        &[Item::PostMaterial],
        &[
            miss(
                &["steel", "metal", "mild steel"],
                &["steel tube", "steel pipe"],
                "write steel tube where the post is square and hollow, steel pipe where it is round and hollow",
            ),
            miss(
                &["stainless", "stainless steel"],
                &["stainless tube", "stainless pipe"],
                "write stainless tube where the post is square and hollow, stainless pipe where it is round and hollow",
            ),
        ],
    ),
    (
        &[Item::Condition],
        &[miss(
            &["yes", YES_AND_NO, "bad", "poor", "damaged"],
            &["cracks", "rot", "deep rust", "broken glass"],
            "write what is seen: cracks, rot, surface rust, deep rust, broken glass, wet",
        )],
    ),
];

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_asked_about_is_no_name_and_no_word_already() {
        for (item, miss) in Item::near_misses() {
            for written in miss.written {
                let plain = written.trim_start_matches(['*', ' ']);
                match item {
                    None => assert_eq!(Item::by_name(written), None, "{written}"),
                    Some(item) => assert_eq!(item.word(plain), None, "{item}: {written}"),
                }
                assert_eq!(*written, written.to_lowercase());
            }
        }
    }

    #[test]
    fn what_is_said_offers_what_there_is() {
        for (item, miss) in Item::near_misses() {
            for offer in miss.offers {
                let there = match item {
                    None => Item::by_name(offer).is_some_and(|item| item.name() == *offer),
                    Some(item) => item.words().is_empty() || item.word(offer) == Some(offer),
                };
                assert!(there, "{:?} offers {offer}", miss.written);
                assert!(miss.says.contains(offer), "{}: {offer}", miss.says);
            }
            assert!(
                miss.offers.len() > 1 || item.is_some(),
                "{:?}",
                miss.written
            );
        }
    }
}
