//! What a person can record about what holds a guard up. How to look is common
//! practice, no source, where none is named.

use crate::items::AskedWhen;
use crate::items::BalusterFixingWord;
use crate::items::ConditionWord;
use crate::items::Drawing;
use crate::items::FramingHeldByWord;
use crate::items::Group;
use crate::items::Hazard;
use crate::items::Holds;
use crate::items::Item;
use crate::items::ItemInfo;
use crate::items::ItemWord;
use crate::items::Kind;
use crate::items::Part;
use crate::items::Pictured;
use crate::items::PostMaterialWord;
use crate::items::RailEndFasteningWord;
use crate::items::WoodSpeciesWord;
use crate::items::Worst;
use crate::items::row::row;
use crate::quantities::Length;

pub(super) const LENGTH: Kind = Kind::Length;

/// A length that can be measured at a post or a rail, with its usual range.
pub(super) const fn length(info: ItemInfo, low: Length, high: Length) -> ItemInfo {
    ItemInfo {
        usual: Some((low, high)),
        most: Some(Length::feet(40)),
        ..info
    }
}

pub(super) const fn give_way(info: ItemInfo, question: &'static str) -> ItemInfo {
    let pictured = match (info.group, info.kind) {
        (_, Kind::Section) => Pictured::By(&[Drawing::PostSection]),
        (Group::Measured, _) => {
            Pictured::Not("it sits at one joint, and each joint is another: the text says where")
        }
        (_, _) => Pictured::Not(""),
    };
    ItemInfo {
        hazards: &[Hazard::GiveWay],
        pictured,
        question,
        ..info
    }
}

pub(super) const POST_MATERIAL: ItemInfo = ItemInfo {
    part: Part::OfTheGuard,
    load_path: Some(5),
    synonyms: &["material", "material of the posts"],
    topic: Some(Item::PostFastening),
    ..give_way(
        row(
            Item::PostMaterial,
            "post material",
            Kind::Words(PostMaterialWord::WORDS),
            Group::Seen,
            "What the posts are made of.",
            &[
                "Look at a cut end or a scratch; a magnet sticks to steel, and hardly to stainless steel.",
                "Round hollow steel: steel pipe. Square hollow steel: steel tube.",
            ],
            &["wood", "steel pipe", "aluminium tube"],
        ),
        "What are the posts made of?",
    )
};

pub(super) const WALL_THICKNESS: ItemInfo = ItemInfo {
    part: Part::OfTheGuard,
    load_path: Some(42),
    synonyms: &["wall of the post", "metal thickness"],
    worst: Worst::Least,
    none_allowed: true,
    topic: Some(Item::PostFastening),
    ..length(
        give_way(
            row(
                Item::WallThickness,
                "wall thickness",
                LENGTH,
                Group::Measured,
                "How thick the metal of a hollow post is.",
                &[
                    "Only where an open end or a drilled hole shows the edge of the metal.",
                    "It cannot be seen: not reached. The post is solid: none.",
                ],
                &["0.145 in", "3.2 mm", "none"],
            ),
            "How thick is the metal of the hollow post?",
        ),
        Length::sixty_fourths(3),
        Length::inches(1),
    )
};

pub(super) const WOOD_SPECIES: ItemInfo = ItemInfo {
    part: Part::OfTheGuard,
    load_path: Some(39),
    synonyms: &["species", "kind of wood", "timber species"],
    topic: Some(Item::PostFastening),
    ..give_way(
        row(
            Item::WoodSpecies,
            "wood species",
            Kind::Words(WoodSpeciesWord::WORDS),
            Group::Seen,
            "The group of species that the wood of posts and rails belongs to.",
            &[
                "Look for a grade stamp on the wood, or for the bill: S-P-F, SYP, D FIR-L, HEM-FIR.",
                "No stamp: unknown wood. Then the weakest and the strongest usual wood are both worked out.",
            ],
            &["southern pine", "unknown wood"],
        ),
        "What kind of wood is it, if a stamp says so?",
    )
};

pub(super) const POST_FASTENERS: ItemInfo = ItemInfo {
    part: Part::OfTheGuard,
    load_path: Some(4),
    synonyms: &["fasteners", "bolts in the post", "screws in the post"],
    topic: Some(Item::PostFastening),
    ..give_way(
        row(
            Item::PostFasteners,
            "post fasteners",
            Kind::Fasteners,
            Group::Measured,
            "How many bolts, lags or screws hold one post, how thick and how long they are.",
            &[
                "Count them at one post. Bolts: measure the thread that stands out of the nut.",
                "A lag screw by its hexagon head: 3/8 in across is 1/4 in, 1/2 in is 5/16 in, 9/16 in is 3/8 in, 3/4 in is 1/2 in.",
                "The length is hidden: look for a loose one or for the box, or leave it out. Take nothing apart.",
            ],
            &["2 x 1/2 in x 6 in", "4 x No. 14 x 3 in", "2 x 12 mm"],
        ),
        "How many bolts or screws hold one post, how thick and how long?",
    )
};

pub(super) const THREAD_IN_FRAMING: ItemInfo = ItemInfo {
    part: Part::OfTheGuard,
    load_path: Some(18),
    synonyms: &["thread penetration", "penetration"],
    worst: Worst::Least,
    zero_allowed: true,
    topic: Some(Item::PostFastening),
    ..length(
        give_way(
            row(
                Item::ThreadInFraming,
                "thread in framing",
                LENGTH,
                Group::Measured,
                "How much of a screw sits in the wood behind the post or the plate, its tip included.",
                &[
                    "The screw's length, less the thickness of the post or plate and of boards in between.",
                    "Not more than the thickness of the wood that it bites.",
                ],
                &["1 1/2 in", "38 mm"],
            ),
            "How much of each screw sits in the framing?",
        ),
        Length::sixty_fourths(16),
        Length::inches(8),
    )
};

pub(super) const FASTENER_SPACING: ItemInfo = ItemInfo {
    part: Part::OfTheGuard,
    load_path: Some(11),
    synonyms: &["distance between fasteners", "bolt spacing", "row distance"],
    worst: Worst::Least,
    topic: Some(Item::PostFastening),
    ..length(
        give_way(
            row(
                Item::FastenerSpacing,
                "fastener spacing",
                LENGTH,
                Group::Measured,
                "How far apart the upper and the lower fastener of a post are, or the two rows of a plate.",
                &[
                    "On the side of a joist: plumb from the middle of the upper bolt to that of the lower one.",
                    "On a plate: across, in the direction in which somebody would fall, from row to row.",
                ],
                &["5 1/4 in", "130 mm"],
            ),
            "How far apart are the upper and the lower bolt, or the rows of the plate?",
        ),
        Length::inches(1),
        Length::inches(12),
    )
};

pub(super) const FASTENER_DEPTH: ItemInfo = ItemInfo {
    part: Part::OfTheGuard,
    load_path: Some(12),
    synonyms: &["upper bolt below framing", "framing top to fastener"],
    worst: Worst::Greatest,
    zero_allowed: true,
    topic: Some(Item::PostFastening),
    ..length(
        give_way(
            row(
                Item::FastenerDepth,
                "fastener depth",
                LENGTH,
                Group::Measured,
                "How far below the top of the joist or rim the upper fastener of a post sits.",
                &[
                    "From the underside of the boards down to the middle of the upper bolt.",
                    "A post on a plate on top: 0 in.",
                ],
                &["2 in", "50 mm"],
            ),
            "How far below the top of the framing is the upper bolt?",
        ),
        Length::ZERO,
        Length::inches(12),
    )
};

pub(super) const EDGE_DISTANCE: ItemInfo = ItemInfo {
    part: Part::OfTheGuard,
    load_path: Some(20),
    synonyms: &["distance to the edge", "plate edge distance"],
    worst: Worst::Least,
    topic: Some(Item::PostFastening),
    ..length(
        give_way(
            row(
                Item::EdgeDistance,
                "edge distance",
                LENGTH,
                Group::Measured,
                "From the middle of the outer fasteners to the nearest edge: of the plate, or of the wood.",
                &[
                    "A plate: to the edge it would tip over. Wood: to the edge the bolt is nearest to.",
                ],
                &["1/2 in", "40 mm"],
            ),
            "How far are the fasteners from the edge of the plate or of the wood?",
        ),
        Length::sixty_fourths(16),
        Length::inches(12),
    )
};

pub(super) const WASHER_SIZE: ItemInfo = ItemInfo {
    part: Part::OfTheGuard,
    load_path: Some(16),
    synonyms: &["washer width", "width of the washers"],
    worst: Worst::Least,
    none_allowed: true,
    topic: Some(Item::PostFastening),
    ..length(
        give_way(
            row(
                Item::WasherSize,
                "washer size",
                LENGTH,
                Group::Measured,
                "How wide the washers under head and nut of the bolts are.",
                &[
                    "Across the washer that lies on the wood, the smaller of the two.",
                    "A carriage bolt's round head without a washer: measure the head. No washer under a hexagon head: none.",
                ],
                &["1 3/8 in", "35 mm", "none"],
            ),
            "How wide are the washers on the wood?",
        ),
        Length::sixty_fourths(32),
        Length::inches(4),
    )
};

pub(super) const DECKING_THICKNESS: ItemInfo = ItemInfo {
    load_path: Some(15),
    synonyms: &["thickness of the boards", "floor thickness", "decking"],
    worst: Worst::Greatest,
    zero_allowed: true,
    topic: Some(Item::PostFastening),
    ..length(
        give_way(
            row(
                Item::DeckingThickness,
                "decking thickness",
                LENGTH,
                Group::Measured,
                "How thick the boards or the floor covering on top of the framing are.",
                &["At the edge of the deck, across a board."],
                &["1 in", "28 mm"],
            ),
            "How thick are the boards on top of the framing?",
        ),
        Length::ZERO,
        Length::inches(4),
    )
};

pub(super) const FRAMING_HELD_BY: ItemInfo = ItemInfo {
    load_path: Some(2),
    synonyms: &["rim held by", "framing fixed by", "rim fastening"],
    topic: Some(Item::PostFastening),
    ..give_way(
        row(
            Item::FramingHeldBy,
            "framing held by",
            Kind::Words(FramingHeldByWord::WORDS),
            Group::Seen,
            "What keeps the joist or rim that the post is fixed to from being pulled away or twisted.",
            &[
                "Look from below, behind the post. A steel bracket with a rod along a joist is a tie: at the upper bolt, at the lower one, or at both.",
                "Nail heads in the outside of the rim, in line with the joists: nails into end grain.",
                "Cannot be seen: hidden.",
            ],
            &["tie at the upper bolt", "nails into end grain", "hidden"],
        ),
        "What holds the joist or rim board behind the post?",
    )
};

pub(super) const RAIL_SECTION: ItemInfo = ItemInfo {
    part: Part::OfTheGuard,
    load_path: Some(28),
    synonyms: &["rail size", "top rail section"],
    topic: Some(Item::PostFastening),
    ..give_way(
        row(
            Item::RailSection,
            "rail section",
            Kind::Section,
            Group::Measured,
            "How wide and how high the top rail is, the width first.",
            &[
                "Across the rail from inside to outside, then from underside to top.",
                "A flat board laid on posts: 3 1/2 x 1 1/2 in. The same board on edge: 1 1/2 x 3 1/2 in.",
                "A rail of another material than the posts: not reached.",
            ],
            &["3 1/2 x 1 1/2 in", "90 x 35 mm"],
        ),
        "What is the top rail's section, width first?",
    )
};

pub(super) const RAIL_END_FASTENING: ItemInfo = ItemInfo {
    part: Part::OfTheGuard,
    load_path: Some(26),
    synonyms: &["rail end", "rail ends", "rail fastening"],
    topic: Some(Item::PostFastening),
    ..give_way(
        row(
            Item::RailEndFastening,
            "rail end fastening",
            Kind::Words(RailEndFasteningWord::WORDS),
            Group::Seen,
            "What holds the ends of the top rail to a post or to a wall.",
            &[
                "Look where the rail meets the post or the wall; the worst of the ends counts.",
                "At a hollow wall: knock beside the bracket. Hollow, and no stud behind: hollow-wall anchor.",
            ],
            &[
                "screws into a post",
                "screws into a stud",
                "hollow-wall anchor",
            ],
        ),
        "What holds the ends of the top rail?",
    )
};

pub(super) const RAIL_END_FASTENERS: ItemInfo = ItemInfo {
    part: Part::OfTheGuard,
    load_path: Some(27),
    synonyms: &["screws in the rail end"],
    topic: Some(Item::PostFastening),
    ..give_way(
        row(
            Item::RailEndFasteners,
            "rail end fasteners",
            Kind::Fasteners,
            Group::Measured,
            "How many screws hold one end of the top rail, how thick and how long they are.",
            &["Count the screws that go into the post or stud at one end; the weakest end counts."],
            &["2 x No. 10 x 3 in"],
        ),
        "How many screws hold one end of the top rail, how thick and how long?",
    )
};

pub(super) const BALUSTER_SECTION: ItemInfo = ItemInfo {
    part: Part::OfTheGuard,
    load_path: Some(34),
    synonyms: &["baluster size", "spindle size"],
    ..give_way(
        row(
            Item::BalusterSection,
            "baluster section",
            Kind::Section,
            Group::Measured,
            "How thick a baluster is, both ways, the side along the rail first.",
            &[
                "At its thinnest place; a turned one at its neck.",
                "Balusters of another material than the posts: not reached.",
            ],
            &["1 1/2 x 1 1/2 in", "20 x 20 mm"],
        ),
        "How thick is a baluster, both ways?",
    )
};

pub(super) const BALUSTER_SPACING: ItemInfo = ItemInfo {
    part: Part::OfTheGuard,
    load_path: Some(35),
    synonyms: &["spindle spacing"],
    worst: Worst::Greatest,
    ..length(
        give_way(
            row(
                Item::BalusterSpacing,
                "baluster spacing",
                LENGTH,
                Group::Measured,
                "How far apart the balusters are, centre to centre.",
                &["From the left edge of one to the left edge of the next."],
                &["4 3/4 in", "120 mm"],
            ),
            "How far apart are the balusters, centre to centre?",
        ),
        Length::inches(2),
        Length::inches(12),
    )
};

pub(super) const BALUSTER_LENGTH: ItemInfo = ItemInfo {
    part: Part::OfTheGuard,
    load_path: Some(36),
    synonyms: &["spindle length"],
    worst: Worst::Greatest,
    ..length(
        give_way(
            row(
                Item::BalusterLength,
                "baluster length",
                LENGTH,
                Group::Measured,
                "How long a baluster is between its two fixings.",
                &["From the upper fixing to the lower one; take the longest."],
                &["32 in", "850 mm"],
            ),
            "How long is a baluster between its fixings?",
        ),
        Length::inches(6),
        Length::feet(5),
    )
};

pub(super) const BALUSTER_FIXING: ItemInfo = ItemInfo {
    part: Part::OfTheGuard,
    load_path: Some(37),
    synonyms: &["spindle fixing", "baluster fastening"],
    topic: Some(Item::PostFastening),
    ..give_way(
        row(
            Item::BalusterFixing,
            "baluster fixing",
            Kind::Words(BalusterFixingWord::WORDS),
            Group::Seen,
            "What holds the ends of the balusters.",
            &["Look at both ends of several; the weakest kind counts."],
            &["screws", "nails", "brads or glue"],
        ),
        "What holds the balusters at their ends?",
    )
};

pub(super) const CONDITION: ItemInfo = ItemInfo {
    holds: Holds::ForThisGuardAlone,
    part: Part::OfTheGuard,
    load_path: Some(8),
    synonyms: &["state of the wood", "decay", "corrosion seen"],
    topic: Some(Item::PostFastening),
    ..give_way(
        row(
            Item::Condition,
            "condition",
            Kind::Words(ConditionWord::WORDS),
            Group::Seen,
            "Rot, rust, cracks and broken glass at posts, rails and their fixings, and whether the wood is often wet or always dry; write each that is so.",
            &[
                "Press the point of a screwdriver into the wood at the foot of a post: deeper than 1/8 in is rot. (news advice; trade checklists say 1/4 in)",
                "Wood that rain or soil reaches is wet; indoors it is dry, under a roof outdoors it may be either.",
                "Looked, pressed nothing, and saw nothing: none seen. Looked and pressed, and it is hard: sound.",
                "Look for cracks along the grain from bolt holes, for scale or a stain below a screw head, for a missing nut.",
            ],
            &["none seen", "cracks", "rot"],
        ),
        "Is there rot, rust, a crack or broken glass at posts, rails or their fixings?",
    )
};

pub(super) const PULL_TEST: ItemInfo = ItemInfo {
    part: Part::OfTheGuard,
    load_path: Some(47),
    synonyms: &["pull", "luggage scale"],
    asked: AskedWhen::Never,
    topic: Some(Item::PostFastening),
    ..give_way(
        row(
            Item::PullTest,
            "pull test",
            Kind::Pull,
            Group::Measured,
            "How far the top of a post moves when a luggage scale pulls it inwards: it tells how stiff a guard is, and not how strong.",
            &[
                "Nobody asks for it: leave it out when in doubt. Never at a guard that is loose, rotten, cracked or rusted through, never at glass, never over an open drop that you could fall into, and never at a shared guard without its owner's leave.",
                "First: nobody below, children and pets away. Stand on the floor well back from the edge, with both feet planted, so that you stay on if something lets go. Pull inwards and level; never lean, never push outwards, never jerk, no rope round your body, no weights, no second person.",
                "Hook the scale round the top rail at a post, not lower: a pull lower down moves the top less. Hold a ruler to the top of the rail on something that does not move with it.",
                "Start low: pull 10 lbf and write how far the top moved; then 30, then 50 lbf, and back to 10. Never more than 50 lbf (220 N): that is a quarter of a 200 lbf load.",
                "Stop at the first crack, creak or 1 in of movement, and write that down instead.",
                "Write each pull as a reading of its own.",
            ],
            &["10 lbf 0.21 in", "50 lbf 0.72 in", "220 N 18 mm"],
        ),
        "How far did the top of the post move under a pull of a luggage scale?",
    )
};
