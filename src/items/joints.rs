//! What a person can record about the joint that is there: where post and rail
//! sit, what lies between them, what a label says. How to look is common practice,
//! no source, where none is named.

use crate::items::BehindThePostWord;
use crate::items::Group;
use crate::items::Item;
use crate::items::ItemInfo;
use crate::items::ItemWord;
use crate::items::Kind;
use crate::items::LumberGradeWord;
use crate::items::Part;
use crate::items::PostPositionWord;
use crate::items::RailPositionWord;
use crate::items::RowsOfSlitsWord;
use crate::items::WoodSpeciesWord;
use crate::items::Worst;
use crate::items::load_path::LENGTH;
use crate::items::load_path::give_way;
use crate::items::load_path::length;
use crate::items::row::row;
use crate::quantities::Length;

pub(super) const RAIL_POSITION: ItemInfo = ItemInfo {
    part: Part::OfTheGuard,
    load_path: Some(25),
    synonyms: &["where the rail sits", "rail sits"],
    ..give_way(
        row(
            Item::RailPosition,
            "rail position",
            Kind::Words(RailPositionWord::WORDS),
            Group::Seen,
            "Where the top rail meets the posts.",
            &[
                "A board that lies on the posts: on top. A rail that ends at the side of each post: between posts.",
                "A rail that runs past the posts on the side of the drop: outside face; on the side where people stand: inside face.",
            ],
            &["on top", "between posts", "outside face"],
        ),
        "Where does the top rail sit: on top of the posts, between them, on a face?",
    )
};

pub(super) const LOWER_RAIL_SECTION: ItemInfo = ItemInfo {
    part: Part::OfTheGuard,
    load_path: Some(29),
    synonyms: &["second rail", "sub-rail", "lower rail"],
    none_allowed: true,
    ..give_way(
        row(
            Item::LowerRailSection,
            "lower rail section",
            Kind::Section,
            Group::Measured,
            "A second rail that the top rail lies on and that reaches both posts: width first, then height.",
            &[
                "Only a rail that touches the top rail all along and is fixed to both posts.",
                "One that stops short, or hangs below a gap, counts for nothing: none.",
            ],
            &["1 1/2 x 3 1/2 in", "none"],
        ),
        "Does the top rail lie on a second one that reaches both posts, and how thick is it?",
    )
};

pub(super) const POST_POSITION: ItemInfo = ItemInfo {
    part: Part::OfTheGuard,
    load_path: Some(9),
    synonyms: &["where the post stands", "post stands"],
    ..give_way(
        row(
            Item::PostPosition,
            "post position",
            Kind::Words(PostPositionWord::WORDS),
            Group::Seen,
            "Where the post stands, seen from the rim or joist that it is fixed to.",
            &[
                "Look over the edge: a post on the side of the drop is outside the rim, one between rim and house is inside it.",
                "Bolted flat to the side of a joist that runs out to the edge: side of a joist.",
            ],
            &["outside the rim", "inside the rim"],
        ),
        "Does the post stand outside the rim, inside it, or flat on a joist?",
    )
};

pub(super) const BEHIND_THE_POST: ItemInfo = ItemInfo {
    part: Part::OfTheGuard,
    load_path: Some(10),
    synonyms: &["between post and framing", "between post and rim"],
    ..give_way(
        row(
            Item::BehindThePost,
            "behind the post",
            Kind::Words(BehindThePostWord::WORDS),
            Group::Seen,
            "What lies between the post and the wood that it is fastened to.",
            &["Look along the face of the rim beside the post: a card that slips in is a gap."],
            &["nothing", "siding", "gap"],
        ),
        "What lies between the post and the rim or joist: nothing, siding, a gap?",
    )
};

pub(super) const FRAMING_SPECIES: ItemInfo = ItemInfo {
    load_path: Some(40),
    synonyms: &["species of the framing", "wood of the framing"],
    ..give_way(
        row(
            Item::FramingSpecies,
            "framing species",
            Kind::Words(WoodSpeciesWord::WORDS),
            Group::Seen,
            "The group of species of the joists, the rim or the studs, which is often another wood than the posts.",
            &[
                "Look for a grade stamp on a joist: S-P-F, SYP, D FIR-L, HEM-FIR.",
                "No stamp: unknown wood. Then the weakest and the strongest usual wood are both worked out.",
            ],
            &["spruce-pine-fir", "unknown wood"],
        ),
        "What kind of wood is the framing, if a stamp says so?",
    )
};

pub(super) const LUMBER_GRADE: ItemInfo = ItemInfo {
    part: Part::OfTheGuard,
    load_path: Some(38),
    synonyms: &["grade", "grade stamp"],
    ..give_way(
        row(
            Item::LumberGrade,
            "lumber grade",
            Kind::Words(LumberGradeWord::WORDS),
            Group::Seen,
            "The grade on the stamp of posts and rails.",
            &[
                "On the stamp beside the species: No.1, No.2, No.3, STUD, STAND. The lowest of several counts.",
                "No stamp: unknown grade. Then the lowest and the best are both worked out.",
            ],
            &["no. 2", "unknown grade"],
        ),
        "Which grade does the stamp on the posts name?",
    )
};

pub(super) const ROWS_OF_SLITS: ItemInfo = ItemInfo {
    part: Part::OfTheGuard,
    load_path: Some(41),
    synonyms: &["incised", "slits", "incising"],
    ..give_way(
        row(
            Item::RowsOfSlits,
            "rows of slits",
            Kind::Words(RowsOfSlitsWord::WORDS),
            Group::Seen,
            "Whether the wood has the rows of small slits through which preservative is pressed in: they take a fifth of its strength.",
            &["Look at the faces of a treated post: slits of about 1/2 in, all along, in rows."],
            &["no", "yes"],
        ),
        "Are there rows of small slits in the faces of the posts?",
    )
};

pub(super) const FRAMING_THICKNESS: ItemInfo = ItemInfo {
    load_path: Some(14),
    synonyms: &["thickness of the rim", "joist thickness"],
    worst: Worst::Least,
    ..length(
        give_way(
            row(
                Item::FramingThickness,
                "framing thickness",
                LENGTH,
                Group::Measured,
                "How thick the wood is that the post is fastened to.",
                &[
                    "Across the rim or joist, from below; a doubled one is both together.",
                    "Solid blocking below a plate: its smaller side.",
                ],
                &["1 1/2 in", "38 mm"],
            ),
            "How thick is the rim, joist or blocking that the post is fastened to?",
        ),
        Length::sixty_fourths(48),
        Length::inches(8),
    )
};

pub(super) const RIM_DEPTH: ItemInfo = ItemInfo {
    load_path: Some(13),
    synonyms: &["depth of the rim", "joist depth"],
    worst: Worst::Least,
    ..length(
        give_way(
            row(
                Item::RimDepth,
                "rim depth",
                LENGTH,
                Group::Measured,
                "How deep the rim or joist is, from its top to its bottom edge.",
                &["From the underside of the boards down to the bottom edge, plumb."],
                &["9 1/4 in", "235 mm"],
            ),
            "How deep is the rim or joist, top to bottom?",
        ),
        Length::inches(5),
        Length::inches(16),
    )
};

pub(super) const WASHER_THICKNESS: ItemInfo = ItemInfo {
    part: Part::OfTheGuard,
    load_path: Some(17),
    synonyms: &["thickness of the washers"],
    worst: Worst::Least,
    ..length(
        give_way(
            row(
                Item::WasherThickness,
                "washer thickness",
                LENGTH,
                Group::Measured,
                "How thick the washers under head and nut are: thin wide ones dish.",
                &["Across the edge of the washer; the thinner of the two."],
                &["1/4 in", "3 mm"],
            ),
            "How thick are the washers?",
        ),
        Length::sixty_fourths(2),
        Length::inches(1),
    )
};

pub(super) const TIE_LABEL: ItemInfo = ItemInfo {
    load_path: Some(19),
    synonyms: &["label of the tie", "tie load"],
    worst: Worst::Least,
    ..give_way(
        row(
            Item::TieLabel,
            "tie label",
            Kind::Force,
            Group::Measured,
            "The load that the label or table of a tension tie states, where its screws and bolt are those that it asks for.",
            &[
                "Find the maker's table for the number on the tie, with the screws that are in it.",
                "Other screws, screws missing, another product: leave it out.",
            ],
            &["1800 pounds", "8 kN"],
        ),
        "What load does the label of the tension tie state?",
    )
};

pub(super) const CABLE_COUNT: ItemInfo = ItemInfo {
    part: Part::OfTheGuard,
    load_path: Some(32),
    synonyms: &["number of cables", "cables"],
    ..give_way(
        row(
            Item::CableCount,
            "cable count",
            Kind::Count,
            Group::Measured,
            "How many cables end at one post.",
            &["Count them at an end or corner post, from the floor to the rail."],
            &["10"],
        ),
        "How many cables end at one post?",
    )
};

pub(super) const CABLE_TENSION: ItemInfo = ItemInfo {
    part: Part::OfTheGuard,
    load_path: Some(33),
    synonyms: &["tension", "tightness of the cables"],
    worst: Worst::Greatest,
    ..give_way(
        row(
            Item::CableTension,
            "cable tension",
            Kind::Force,
            Group::Measured,
            "How tight each cable is, where somebody measured it with a gauge.",
            &["Only from a tension gauge or from whoever tightened them; leave it out otherwise."],
            &["225 pounds", "1 kN"],
        ),
        "How tight is each cable, if somebody measured it?",
    )
};

pub(super) const ANCHOR_EMBEDMENT: ItemInfo = ItemInfo {
    part: Part::OfTheGuard,
    load_path: Some(22),
    synonyms: &["anchor depth", "embedment"],
    worst: Worst::Least,
    ..length(
        give_way(
            row(
                Item::AnchorEmbedment,
                "anchor embedment",
                LENGTH,
                Group::Measured,
                "How deep the anchors of a plate sit in the concrete.",
                &["From the box or the bill of the anchors; it cannot be seen. Take nothing out."],
                &["2 in", "60 mm"],
            ),
            "How deep do the anchors sit in the concrete?",
        ),
        Length::inches(1),
        Length::inches(12),
    )
};

pub(super) const CONCRETE_EDGE: ItemInfo = ItemInfo {
    load_path: Some(23),
    synonyms: &["distance to the slab edge", "slab edge"],
    worst: Worst::Least,
    ..length(
        give_way(
            row(
                Item::ConcreteEdge,
                "concrete edge",
                LENGTH,
                Group::Measured,
                "From the middle of the nearest anchor to the edge of the concrete.",
                &["Level, at the anchor that is nearest to the edge."],
                &["3 in", "75 mm"],
            ),
            "How far is the nearest anchor from the edge of the concrete?",
        ),
        Length::inches(1),
        Length::feet(3),
    )
};

pub(super) const PLATE_THICKNESS: ItemInfo = ItemInfo {
    part: Part::OfTheGuard,
    load_path: Some(21),
    synonyms: &["thickness of the plate", "flange thickness"],
    worst: Worst::Least,
    ..length(
        give_way(
            row(
                Item::PlateThickness,
                "plate thickness",
                LENGTH,
                Group::Measured,
                "How thick the metal plate below a post is.",
                &["Across its edge."],
                &["1/4 in", "6 mm"],
            ),
            "How thick is the plate below the post?",
        ),
        Length::sixty_fourths(4),
        Length::inches(2),
    )
};

pub(super) const SOCKET_DEPTH: ItemInfo = ItemInfo {
    part: Part::OfTheGuard,
    load_path: Some(24),
    synonyms: &["depth in the concrete", "pocket depth"],
    worst: Worst::Least,
    ..length(
        give_way(
            row(
                Item::SocketDepth,
                "socket depth",
                LENGTH,
                Group::Measured,
                "How deep a post sits in the concrete.",
                &["Only where a loose or removed post shows it; it cannot be seen otherwise."],
                &["4 in", "100 mm"],
            ),
            "How deep does the post sit in the concrete?",
        ),
        Length::inches(1),
        Length::feet(3),
    )
};

pub(super) const POST_NECK: ItemInfo = ItemInfo {
    part: Part::OfTheGuard,
    load_path: Some(43),
    synonyms: &["neck", "thinnest part of the post"],
    worst: Worst::Least,
    ..length(
        give_way(
            row(
                Item::PostNeck,
                "post neck",
                LENGTH,
                Group::Measured,
                "How thick a turned post is at its thinnest place.",
                &["Across, at the thinnest turned place."],
                &["1 3/4 in", "45 mm"],
            ),
            "How thick is a turned post at its thinnest place?",
        ),
        Length::inches(1),
        Length::inches(6),
    )
};

pub(super) const NECK_HEIGHT: ItemInfo = ItemInfo {
    part: Part::OfTheGuard,
    load_path: Some(44),
    synonyms: &["height of the neck"],
    worst: Worst::Least,
    zero_allowed: true,
    ..length(
        give_way(
            row(
                Item::NeckHeight,
                "neck height",
                LENGTH,
                Group::Measured,
                "How high above the floor the thinnest place of a turned post is.",
                &["Plumb, from the floor to the thinnest place; the lowest of several."],
                &["8 in", "200 mm"],
            ),
            "How high above the floor is the thinnest place of the post?",
        ),
        Length::ZERO,
        Length::feet(3),
    )
};
