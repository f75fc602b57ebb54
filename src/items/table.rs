//! The table of items. Ranges that are questioned or refused are common
//! practice, no source; everything about how to measure likewise, where no
//! source is named.

use crate::items::Asked;
use crate::items::Drawing;
use crate::items::Group;
use crate::items::Hazard;
use crate::items::Item;
use crate::items::ItemInfo;
use crate::items::Kind;
use crate::items::Pictured;
use crate::items::Role;
use crate::items::Word;
use crate::items::Worst;
use crate::items::joints;
use crate::items::load_path;
use crate::items::words::{NO_YES, YES_NO};
use crate::quantities::Length;

const PLACES: &[Word] = &[
    Word::or("landing", &["hall", "hallway", "upstairs hall"]),
    Word::or("floor edge", &["loft", "gallery", "mezzanine"]),
    Word::or("stair", &["stairs", "staircase", "steps", "flight"]),
    Word::plain("ramp"),
    Word::or("deck", &["decking"]),
    Word::or("terrace", &["patio"]),
    Word::or("balcony", &["juliet balcony", "juliette balcony"]),
    Word::or("porch", &["veranda", "verandah"]),
    Word::or("roof", &["roof terrace", "flat roof"]),
    Word::or("window", &["windows"]),
    Word::or("pool", &["swimming pool"]),
];

const USES: &[Word] = &[
    Word::or(
        "dwelling",
        &["home", "house", "flat", "apartment", "residential"],
    ),
    Word::or("public", &["shop", "school", "assembly"]),
    Word::or("workplace", &["work", "office", "factory"]),
];

const LOCATIONS: &[Word] = &[
    Word::or("inside", &["indoors", "in", "interior"]),
    Word::or("outside", &["outdoors", "out", "exterior"]),
];

const HANDRAILS: &[Word] = &[
    Word::or("top of the guard", &["top", "guard", "same", "top rail"]),
    Word::or("separate", &["wall", "own", "yes"]),
    Word::or("none", &["no", "n"]),
];

const HANDRAIL_SIDES: &[Word] = &[
    Word::or("both sides", &["both", "two", "2"]),
    Word::or("one side", &["one", "1", "a side"]),
];

const HANDRAIL_SHAPES: &[Word] = &[
    Word::or("round", &["circular", "pipe", "dowel"]),
    Word::or(
        "with finger grooves",
        &["finger grooves", "type ii", "grooved"],
    ),
    Word::or("other", &["oval", "flat", "square", "shaped"]),
];

const STATES: &[Word] = &[
    Word::or("existing", &["built", "there"]),
    Word::or("proposed", &["planned", "drawn", "new", "to be built"]),
];

const GUARD: &[Word] = &[
    Word::or("present", &["yes", "y", "there"]),
    Word::or("none", &["no", "n", "missing"]),
];

const CHECKED: &[Word] = &[
    Word::or("every one", &["all", "every", "everyone", "each"]),
    Word::or("some", &["a few", "several"]),
    Word::or("one", &["1", "only one"]),
];

const INFILLS: &[Word] = &[
    Word::or("solid", &["wall", "boards", "closed"]),
    Word::or("panel", &["panels"]),
    Word::or("glass", &["glazing", "acrylic"]),
    Word::or(
        "balusters",
        &[
            "baluster",
            "spindles",
            "spindle",
            "pickets",
            "bars",
            "vertical bars",
            "upright bars",
        ],
    ),
    Word::or("mesh", &["wire mesh", "perforated sheet", "lattice"]),
    Word::or("other", &["scrollwork", "castings"]),
    Word::or("upright cables", &["vertical cables", "vertical wires"]),
    Word::or("net", &["netting", "rope net"]),
    Word::or(
        "cables",
        &[
            "cable",
            "wires",
            "wire",
            "horizontal cables",
            "level cables",
        ],
    ),
    Word::or(
        "horizontal bars",
        &[
            "horizontal rails",
            "rails",
            "level bars",
            "horizontal boards",
            "ladder rails",
        ],
    ),
];

const LOOSE: &[Word] = &[
    Word::or("no", &["none", "n", "tight"]),
    Word::or("one", &["1", "yes", "y"]),
    Word::or("several", &["some", "many"]),
    Word::or("missing", &["one missing", "gone", "broken out"]),
];

const FASTENINGS: &[Word] = &[
    Word::or(
        "through bolts",
        &[
            "bolts",
            "bolt",
            "bolted",
            "carriage bolts",
            "through bolted",
        ],
    ),
    Word::or("embedded", &["cast in", "set in concrete", "grouted in"]),
    Word::or("welded", &["weld"]),
    Word::or("plate", &["base plate", "flange"]),
    Word::or("bracket", &["brackets", "post bracket"]),
    Word::or(
        "masonry anchors",
        &["anchors", "anchor bolts", "expansion anchors"],
    ),
    Word::or("lag screws", &["lags", "lag bolts", "coach screws"]),
    Word::or("wood screws", &["screws", "screwed"]),
    Word::or("central rod", &["rod", "hanger bolt"]),
    Word::plain("other"),
    Word::or("unknown", &["hidden", "cannot see"]),
    Word::or("half wall", &["studs of a half wall", "half-wall studs"]),
    Word::or("nails", &["nailed", "nail"]),
];

const FASTENED_TO: &[Word] = &[
    Word::or("concrete", &["slab"]),
    Word::or("masonry", &["brick", "block", "stone"]),
    Word::or("joist", &["joists", "beam"]),
    Word::plain("blocking"),
    Word::or("stud", &["studs"]),
    Word::or("rim board", &["rim", "rim joist", "band board"]),
    Word::or("decking", &["deck boards", "decking boards"]),
    Word::or("subfloor", &["floor boards", "floorboards"]),
    Word::or("hidden", &["unknown", "cannot see"]),
    Word::or(
        "drywall only",
        &["drywall", "plasterboard", "plasterboard only"],
    ),
];

const MOVES: &[Word] = &[
    Word::or("no", &["n", "none", "firm"]),
    Word::or("a little", &["little", "slightly", "some", "a bit"]),
    Word::or("a lot", &["lot", "much", "yes", "y", "loose"]),
];

const GATES: &[Word] = &[
    Word::or(
        "screwed",
        &[
            "screwed to the wall",
            "hardware mounted",
            "hardware-mounted",
        ],
    ),
    Word::or(
        "pressed",
        &[
            "pressure",
            "pressure mounted",
            "pressure-mounted",
            "pressure fit",
        ],
    ),
    Word::or("none", &["no", "n"]),
];

const PAINT: &[Word] = &[
    Word::or("sound", &["good", "fine", "unpainted", "none"]),
    Word::or("flaking", &["peeling", "chipped", "chalking", "worn"]),
];

const TAPES: &[Word] = &[
    Word::or("class I", &["class i", "class 1", "1", "i"]),
    Word::or("class II", &["class ii", "class 2", "2", "ii"]),
    Word::or("class III", &["class iii", "class 3", "3", "iii"]),
    Word::or("handbook 44", &["nist handbook 44", "hb44"]),
];

const UNITS: &[Word] = &[
    Word::or("in", &["inch", "inches"]),
    Word::or("ft", &["foot", "feet"]),
    Word::or(
        "mm",
        &["millimetre", "millimetres", "millimeter", "millimeters"],
    ),
    Word::or(
        "cm",
        &["centimetre", "centimetres", "centimeter", "centimeters"],
    ),
    Word::or("m", &["metre", "metres", "meter", "meters"]),
];

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
        worst: Worst::Neither,
        hazards: &[],
        means,
        how,
        pictured: Pictured::Not(""),
        examples,
        question: "",
        usual: None,
        most: None,
        asked: Asked::ByRules,
        zero_allowed: false,
        none_allowed: false,
    }
}

/// Every item, in the order of [`Item`].
pub(super) const ITEMS: &[ItemInfo] = &[
    ItemInfo {
        synonyms: &["address", "house name"],
        role: Role::Single,
        ..row(
            Item::Property,
            "property",
            Kind::Text,
            Group::Survey,
            "Which property the survey is about, in words of your own.",
            &["Write a name that you will know again next year."],
            &["our house"],
        )
    },
    ItemInfo {
        synonyms: &["measured on", "day"],
        role: Role::Single,
        ..row(
            Item::Date,
            "date",
            Kind::Date,
            Group::Survey,
            "The day on which it was measured.",
            &["Write year, month and day, in this order."],
            &["2026-05-04"],
        )
    },
    ItemInfo {
        synonyms: &["measured by", "who"],
        ..row(
            Item::By,
            "by",
            Kind::Text,
            Group::Survey,
            "Who measured.",
            &["Write a name or initials."],
            &["R. T."],
        )
    },
    ItemInfo {
        synonyms: &["tape measure", "tape class"],
        role: Role::Single,
        ..row(
            Item::Tape,
            "tape",
            Kind::Words(TAPES),
            Group::Survey,
            "How accurate the tape is, as printed near its zero mark.",
            &[
                "Look near the start of the tape for I, II or III in an oval: that is its class.",
                "A tape in inches without such a mark: leave it out. NIST Handbook 44's limit for metal tapes is then taken.",
            ],
            &["class II", "handbook 44"],
        )
    },
    ItemInfo {
        synonyms: &["reading to"],
        role: Role::Single,
        ..row(
            Item::ReadTo,
            "read to",
            Kind::Graduation,
            Group::Survey,
            "How finely you read the tape.",
            &["Write the smallest step you bothered to tell apart."],
            &["1/16 in", "1 mm"],
        )
    },
    ItemInfo {
        synonyms: &["unit of measure", "default units"],
        role: Role::Single,
        ..row(
            Item::DefaultUnit,
            "default unit",
            Kind::Words(UNITS),
            Group::Survey,
            "The unit of numbers that are written without one, in this file.",
            &["Write in, ft, mm, cm or m. Better still: write the unit with each reading."],
            &["in", "mm"],
        )
    },
    ItemInfo {
        synonyms: &["ruleset", "rulesets", "code"],
        ..row(
            Item::Rules,
            "rules",
            Kind::Text,
            Group::Survey,
            "Which rulesets to judge by, parted by a semicolon.",
            &["Type guardrule rules list to see which there are."],
            &["us-dwelling-2018", "us-dwelling-2018; small-child-advice"],
        )
    },
    ItemInfo {
        synonyms: &["tolerance"],
        role: Role::Single,
        ..row(
            Item::BuildTolerance,
            "build tolerance",
            Kind::Tolerance,
            Group::Survey,
            "How far a proposed guard may come out from its drawing.",
            &["Ask whoever builds it how closely they work."],
            &["± 1/8 in", "± 3 mm"],
        )
    },
    ItemInfo {
        synonyms: &["where", "position"],
        role: Role::Single,
        question: "Where is it: landing, stair, deck, balcony …?",
        ..row(
            Item::Place,
            "place",
            Kind::Words(PLACES),
            Group::Circumstance,
            "What kind of place the guard stands at.",
            &[
                "Choose the word that fits what you stand on at the guard.",
                "Where a sloping stair guard meets a level landing guard, write two guards.",
            ],
            &["landing", "stair", "deck"],
        )
    },
    ItemInfo {
        synonyms: &["building use", "occupancy"],
        role: Role::Single,
        question: "What is the building used for: dwelling, public, workplace?",
        ..row(
            Item::Use,
            "use",
            Kind::Words(USES),
            Group::Circumstance,
            "What the building, or this part of it, is used for.",
            &["A house, flat or its stairwell is a dwelling."],
            &["dwelling"],
        )
    },
    ItemInfo {
        synonyms: &["dwellings", "number of dwellings"],
        role: Role::Single,
        question: "How many dwellings are in the building?",
        ..row(
            Item::DwellingsInBuilding,
            "dwellings in building",
            Kind::Count,
            Group::Circumstance,
            "How many dwellings the building holds.",
            &["Count the doorbells or letter boxes; a single-family house has 1."],
            &["1", "12"],
        )
    },
    ItemInfo {
        synonyms: &["common", "communal"],
        role: Role::Single,
        question: "Do several households share it?",
        ..row(
            Item::Shared,
            "shared",
            Kind::Words(YES_NO),
            Group::Circumstance,
            "Whether several households use this place.",
            &["A stairwell or hall outside the flats' own doors: yes."],
            &["yes", "no"],
        )
    },
    ItemInfo {
        synonyms: &["inside or outside"],
        role: Role::Single,
        question: "Is it inside or outside?",
        ..row(
            Item::Location,
            "location",
            Kind::Words(LOCATIONS),
            Group::Circumstance,
            "Whether the guard stands inside or outside.",
            &["Under a roof but open at the sides: outside."],
            &["inside", "outside"],
        )
    },
    ItemInfo {
        synonyms: &["fall", "fall height", "drop height"],
        worst: Worst::Greatest,
        hazards: &[Hazard::FallOver],
        question: "How far is it down at the edge, at its deepest?",
        usual: Some((Length::inches(4), Length::feet(50))),
        most: Some(Length::feet(1000)),
        zero_allowed: true,
        pictured: Pictured::By(&[Drawing::Drop]),
        ..row(
            Item::Drop,
            "drop",
            Kind::Length,
            Group::Circumstance,
            "How far one would fall: from the walking surface down to the floor or ground below.",
            &[
                "Stay behind the guard: never lean over an edge that has none.",
                "Let the tape down from the walking surface at the edge to what lies below.",
                "Look up to 36 in out from the edge for a deeper place, such as a stairwell or a ditch, and take the deepest (IRC 2018 R312.1.1).",
                "On a stair take the highest step that the guard runs along.",
                "Too far to measure: write over 8 ft, or count storeys and say so in the note.",
            ],
            &["9 ft 2 in", "over 8 ft", "2.6 m"],
        )
    },
    ItemInfo {
        synonyms: &["window sill height", "lowest part of the window"],
        worst: Worst::Least,
        hazards: &[Hazard::FallOver],
        question: "How high above the floor does the window's opening begin?",
        usual: Some((Length::inches(4), Length::feet(8))),
        most: Some(Length::feet(20)),
        zero_allowed: true,
        pictured: Pictured::By(&[Drawing::Sill]),
        ..row(
            Item::SillHeight,
            "sill height",
            Kind::Length,
            Group::Circumstance,
            "How high above the floor inside the opening of a window begins.",
            &[
                "Open the window and find the lowest edge of the opening that comes free.",
                "Measure plumb from the floor to that edge; a fixed pane below it does not count as opening.",
            ],
            &["24 in", "800 mm"],
        )
    },
    ItemInfo {
        synonyms: &["sill above grade", "window above ground"],
        worst: Worst::Greatest,
        hazards: &[Hazard::FallOver],
        question: "How high above the ground outside does the window's opening begin?",
        usual: Some((Length::inches(12), Length::feet(100))),
        most: Some(Length::feet(1000)),
        zero_allowed: true,
        pictured: Pictured::By(&[Drawing::Sill]),
        ..row(
            Item::SillAboveGround,
            "sill above ground",
            Kind::Length,
            Group::Circumstance,
            "How high above the ground or surface outside the opening of a window begins.",
            &[
                "Measure from outside, or add the sill's height above the floor to the floor's height above the ground.",
                "Never lean out of the window to measure.",
            ],
            &["9 ft", "over 8 ft", "2.4 m"],
        )
    },
    ItemInfo {
        synonyms: &["slope beside the edge", "slope of the ground"],
        worst: Worst::Greatest,
        hazards: &[Hazard::FallOver],
        question: "How far does the ground beside the edge fall over one metre?",
        usual: Some((Length::ZERO, Length::feet(4))),
        most: Some(Length::feet(30)),
        zero_allowed: true,
        pictured: Pictured::Not("the words say between which two places the tape runs"),
        ..row(
            Item::GroundFall,
            "ground fall",
            Kind::Length,
            Group::Circumstance,
            "How far the ground beside the edge falls away over one metre (39 3/8 in), measured level, at its steepest within 1.2 m (4 ft) of the edge.",
            &[
                "Lay a straight board or a spirit level 1 m long out from the edge over the ground, and hold it level.",
                "Measure plumb from its outer end down to the ground, and from its inner end: the difference is the fall.",
                "1 in 2 is 500 mm over the metre. Level ground: 0 mm.",
            ],
            &["50 mm", "2 in"],
        )
    },
    ItemInfo {
        synonyms: &["year built", "year", "built in"],
        role: Role::Single,
        question: "When was it built, roughly?",
        ..row(
            Item::Built,
            "built",
            Kind::Years,
            Group::Circumstance,
            "When the guard was built or last rebuilt.",
            &["A year, or as much as you know: before 1978, 1990s, 1990-1995, about 1965."],
            &["1994", "before 1978", "1990s"],
        )
    },
    ItemInfo {
        synonyms: &["stories", "floors", "storeys in building"],
        role: Role::Single,
        question: "How many storeys has the building?",
        ..row(
            Item::Storeys,
            "storeys",
            Kind::Count,
            Group::Circumstance,
            "How many storeys the building has above the ground.",
            &["Count the rows of windows from outside."],
            &["2"],
        )
    },
    ItemInfo {
        synonyms: &["steps in flight", "number of risers"],
        worst: Worst::Greatest,
        question: "How many risers has the flight?",
        ..row(
            Item::Risers,
            "risers",
            Kind::Count,
            Group::Circumstance,
            "How many risers the flight of stairs has.",
            &["Count each step up, the last one onto the landing too."],
            &["13"],
        )
    },
    ItemInfo {
        synonyms: &["stair width", "width of the flight"],
        worst: Worst::Greatest,
        question: "How wide is the flight?",
        usual: Some((Length::inches(18), Length::feet(10))),
        most: Some(Length::feet(60)),
        pictured: Pictured::Not("the words say between which two places the tape runs"),
        ..row(
            Item::FlightWidth,
            "flight width",
            Kind::Length,
            Group::Circumstance,
            "How wide the flight of stairs or the ramp is.",
            &[
                "Measure level across a step, between the walls, or from the wall to the inner face of the guard.",
            ],
            &["36 in", "900 mm"],
        )
    },
    ItemInfo {
        synonyms: &["width of the well", "stairwell"],
        worst: Worst::Greatest,
        hazards: &[Hazard::FallOver],
        question: "How wide is the open well beside the flight?",
        usual: Some((Length::inches(1), Length::feet(12))),
        most: Some(Length::feet(60)),
        zero_allowed: true,
        none_allowed: true,
        pictured: Pictured::Not("the words say between which two places the tape runs"),
        ..row(
            Item::WellWidth,
            "well width",
            Kind::Length,
            Group::Circumstance,
            "How wide the open well is that the flight runs beside.",
            &[
                "Measure level from the inner face of this flight's guard, or of its edge, to that of the flight across the well.",
                "A flight beside a hall or a room, with no flight across: measure to the wall opposite.",
            ],
            &["200 mm", "8 in"],
        )
    },
    ItemInfo {
        synonyms: &["landing barrier length"],
        worst: Worst::Greatest,
        hazards: &[Hazard::FallOver],
        question: "How long is the guard along the landing's inner edge, or is this another edge?",
        usual: Some((Length::inches(2), Length::feet(12))),
        most: Some(Length::feet(60)),
        none_allowed: true,
        pictured: Pictured::Not("the words say between which two places the tape runs"),
        ..row(
            Item::InnerEdgeLength,
            "inner edge length",
            Kind::Length,
            Group::Circumstance,
            "How long the guard is that runs along the inner edge of a landing, from one flight's guard to the next.",
            &[
                "Only on a landing, at the side where the two flights meet.",
                "Measure from post to post. The guard stands at another edge: none.",
            ],
            &["450 mm", "none"],
        )
    },
    ItemInfo {
        synonyms: &["hand rail"],
        role: Role::Single,
        question: "What do you hold on to: the top of the guard, a separate handrail, or none?",
        ..row(
            Item::Handrail,
            "handrail",
            Kind::Words(HANDRAILS),
            Group::Circumstance,
            "What a person holds on to here.",
            &[
                "top of the guard: the guard's own top rail is what you hold.",
                "separate: another rail, on the wall or on the guard.",
            ],
            &["top of the guard", "separate", "none"],
        )
    },
    ItemInfo {
        synonyms: &["bench", "built-in seat"],
        role: Role::Single,
        question: "Is there a built-in seat beside the guard?",
        ..row(
            Item::FixedSeat,
            "fixed seat",
            Kind::Words(NO_YES),
            Group::Circumstance,
            "Whether a seat that cannot be moved, such as a bench built in, stands beside the guard.",
            &["Look along the whole guard. A chair that can be carried away is a thing to climb."],
            &["no", "yes"],
        )
    },
    ItemInfo {
        synonyms: &["child", "ages", "children's ages", "ages of children"],
        question: "How old are the children who live here or visit?",
        none_allowed: true,
        ..row(
            Item::Children,
            "children",
            Kind::Ages,
            Group::Circumstance,
            "How old the children are who live here or visit.",
            &[
                "Write one age a row: months for small children.",
                "No children, now or as guests: none.",
            ],
            &["14 months", "3 years", "none"],
        )
    },
    ItemInfo {
        synonyms: &["status"],
        role: Role::Single,
        ..row(
            Item::State,
            "state",
            Kind::Words(STATES),
            Group::Circumstance,
            "Whether the guard stands there or is a plan; existing if not said.",
            &["A drawing or an offer: proposed. Then write its build tolerance too."],
            &["existing", "proposed"],
        )
    },
    ItemInfo {
        synonyms: &["railing", "rail", "balustrade", "barrier"],
        hazards: &[Hazard::FallOver],
        question: "Is there a guard at this edge?",
        ..row(
            Item::Guard,
            "guard",
            Kind::Words(GUARD),
            Group::Seen,
            "Whether there is a guard at this edge at all.",
            &[
                "Only needed where there is none, or where you could not look.",
                "An insect screen is no guard (IRC 2018 R312.1.1).",
            ],
            &["none", "present", "not reached"],
        )
    },
    ItemInfo {
        synonyms: &["rail height", "guard height", "railing height"],
        worst: Worst::Least,
        hazards: &[Hazard::FallOver],
        question: "How high is the top of the guard at its lowest?",
        usual: Some((Length::inches(12), Length::feet(8))),
        most: Some(Length::feet(20)),
        pictured: Pictured::By(&[Drawing::Height, Drawing::HeightOnStair]),
        ..row(
            Item::Height,
            "height",
            Kind::Length,
            Group::Measured,
            "How high the top of the guard stands above the walking surface, at its lowest.",
            &[
                "Find the lowest place: rails sag between posts, and floors rise.",
                "Stand the tape on the walking surface beside the guard, plumb: held askew it reads too long.",
                "On a stair measure plumb from the nose of a step, not from the back of the tread.",
                "Read at the top edge of the top rail.",
                "Too close to tell: hold up a stick cut to the height asked for; write reaches 36 in, or below 36 in.",
            ],
            &["35 1/2 in", "reaches 36 in", "902 mm"],
        )
    },
    ItemInfo {
        synonyms: &[
            "height above kerb",
            "height above ledge",
            "height above curb",
        ],
        worst: Worst::Least,
        hazards: &[Hazard::FallOver],
        question: "How high is the guard's top above the seat, kerb or ledge beside it?",
        usual: Some((Length::inches(4), Length::feet(8))),
        most: Some(Length::feet(20)),
        zero_allowed: true,
        pictured: Pictured::Not("the words say between which two places the tape runs"),
        ..row(
            Item::HeightAboveSeat,
            "height above seat",
            Kind::Length,
            Group::Measured,
            "How high the top of the guard stands above a built-in seat, kerb or ledge beside it that one can stand on.",
            &[
                "Stand the tape on the seat, kerb or ledge, plumb, at the guard's lowest place.",
                "There is nothing of the kind: leave it out, and write fixed seat no.",
            ],
            &["24 in", "840 mm"],
        )
    },
    ItemInfo {
        synonyms: &["thickness", "parapet thickness"],
        worst: Worst::Least,
        hazards: &[Hazard::FallOver],
        question: "How thick is the guard at its top?",
        usual: Some((Length::millimetres(10), Length::feet(3))),
        most: Some(Length::feet(10)),
        pictured: Pictured::Not("the words say between which two places the tape runs"),
        ..row(
            Item::GuardThickness,
            "guard thickness",
            Kind::Length,
            Group::Measured,
            "How thick the guard is at its top, from its inner to its outer face.",
            &["Measure level across the top. A rail on uprights: the width of the top rail."],
            &["60 mm", "12 in"],
        )
    },
    ItemInfo {
        synonyms: &[
            "gap",
            "baluster gap",
            "openings",
            "spacing",
            "biggest gap",
            "largest gap",
            "widest gap",
            "widest opening",
            "gap between balusters",
            "gap between spindles",
        ],
        worst: Worst::Greatest,
        hazards: &[Hazard::FallThrough, Hazard::Entrapment],
        question: "How wide is the widest opening? Best: does a ball of that size stop everywhere?",
        usual: Some((Length::millimetres(6), Length::inches(24))),
        most: Some(Length::feet(20)),
        zero_allowed: true,
        none_allowed: true,
        pictured: Pictured::By(&[Drawing::Ball, Drawing::Tape, Drawing::RakedGap]),
        ..row(
            Item::Opening,
            "opening",
            Kind::Opening,
            Group::Measured,
            "The widest hole anywhere in the guard, at its ends too: the largest ball that would pass.",
            &[
                "Best: try a ball of the size asked for at every hole. Write 4 in ball stops everywhere, or 4 in ball passes.",
                "With a tape: find the widest gap by eye, then measure clear between the faces, square to them, at top, middle and bottom.",
                "Turned or shaped balusters: where they are slimmest; or their profile, heights up from the bottom with the diameter there, and how far apart their centres stand.",
                "Under a sloping rail a tape along the rail reads more than the hole: raked says how it lay.",
                "Cables and thin rods spread: try a ball and push it. A tape alone can show only that they are too far apart.",
                "Above the walking surface by how much? Add at 38 in where the hole lies high; of a tall hole its lowest and highest place: at 30 in to 38 in.",
            ],
            &[
                "3 7/8 in",
                "4 in ball stops everywhere",
                "99 mm at 300 mm",
                "raked 4 1/2 in along rise 7 3/4 going 10",
                "turned 4 1/2 in centres 0:1 3/4 6:1 12:1 3/4 in",
                "cable 3 in spacing 1/8 in diameter 36 in free",
                "polygon 0:0 120:0 60:90 mm",
                "none",
            ],
        )
    },
    ItemInfo {
        synonyms: &["gaps checked", "checked"],
        hazards: &[Hazard::FallThrough, Hazard::Entrapment],
        question: "Did you check every opening, some, or one?",
        pictured: Pictured::Not("a word says how many were looked at; the tape shows nothing"),
        ..row(
            Item::OpeningsChecked,
            "openings checked",
            Kind::Words(CHECKED),
            Group::Measured,
            "How many of the openings you looked at; every one if not said, as the widest is asked for.",
            &["With some or one, the rest stays not measured."],
            &["every one", "some"],
        )
    },
    ItemInfo {
        synonyms: &[
            "gap under the rail",
            "gap under bottom rail",
            "gap under the bottom rail",
            "gap at the bottom",
            "gap below",
            "bottom",
        ],
        worst: Worst::Greatest,
        hazards: &[Hazard::FallThrough, Hazard::Entrapment],
        question: "How high is the gap under the bottom rail, at its highest?",
        usual: Some((Length::ZERO, Length::inches(24))),
        most: Some(Length::feet(20)),
        zero_allowed: true,
        none_allowed: true,
        pictured: Pictured::By(&[Drawing::BottomGap]),
        ..row(
            Item::BottomGap,
            "bottom gap",
            Kind::Opening,
            Group::Measured,
            "The gap between the walking surface and the lowest rail, at its highest. On a stair: the plumb distance from the line of the step noses to the rail's underside.",
            &[
                "Look along the bottom for the highest place: floors dip.",
                "Measure up from the walking surface to the underside.",
                "The guard goes down to the floor: none.",
            ],
            &["2 1/4 in", "60 mm", "none"],
        )
    },
    ItemInfo {
        synonyms: &["side gap", "wall gap", "gap at the wall", "gap at the end"],
        worst: Worst::Greatest,
        hazards: &[Hazard::FallThrough, Hazard::Entrapment],
        question: "How wide is the gap between the guard's end and the wall or post?",
        usual: Some((Length::ZERO, Length::inches(24))),
        most: Some(Length::feet(20)),
        zero_allowed: true,
        none_allowed: true,
        pictured: Pictured::By(&[Drawing::EndGap]),
        ..row(
            Item::EndGap,
            "end gap",
            Kind::Opening,
            Group::Measured,
            "The gap between the guard's end and the wall or post; only where you want it apart from opening.",
            &["Walls lean: measure at the widest place, not at the bottom."],
            &["3 1/2 in", "none"],
        )
    },
    ItemInfo {
        synonyms: &["face gap", "gap beside the floor", "gap at the edge"],
        worst: Worst::Greatest,
        hazards: &[Hazard::FallThrough],
        question: "How wide is the gap between the edge of the floor and the inner face of the guard?",
        usual: Some((Length::ZERO, Length::inches(12))),
        most: Some(Length::feet(20)),
        zero_allowed: true,
        none_allowed: true,
        pictured: Pictured::By(&[Drawing::EdgeGap]),
        ..row(
            Item::EdgeGap,
            "edge gap",
            Kind::Opening,
            Group::Measured,
            "The level gap between the edge of the floor, or of the flight, and the inner face of a guard that is fixed outside it.",
            &[
                "Only where the guard stands outside the edge, fixed to its face.",
                "Measure level from the edge to the nearest inner face, at the widest place.",
                "The guard stands on the floor: none.",
            ],
            &["40 mm", "1 1/2 in", "none"],
        )
    },
    ItemInfo {
        synonyms: &["triangle", "step triangle"],
        worst: Worst::Greatest,
        hazards: &[Hazard::FallThrough],
        question: "At a step, what are rise, going and the plumb lift of the bottom rail?",
        none_allowed: true,
        pictured: Pictured::By(&[Drawing::StairTriangle]),
        ..row(
            Item::StairTriangle,
            "stair triangle",
            Kind::StairTriangle,
            Group::Measured,
            "The hole between a riser, a tread and the bottom rail of a stair guard.",
            &[
                "Rise: plumb from one tread to the next. Going: level from one nose to the next.",
                "Lift: lay a straight board on the noses and measure plumb up to the rail's underside. On the noses: lift 0.",
                "Steps that stand out over the riser below: add how far, and how thick they are: nosing 1 thick 1 1/4 in. No boards behind the treads: add open risers.",
                "Steps differ: measure the largest. Where the stair winds: a reading for each tread, its going measured along the guard.",
                "The side is closed: none. Quicker: try a ball; write 6 in ball stops everywhere.",
            ],
            &[
                "rise 7 3/4 going 10 lift 1 in",
                "rise 7 3/4 going 10 lift 1 nosing 1 thick 1 1/4 in",
                "rise 190 going 250 lift 40 mm open risers",
                "6 in ball stops everywhere",
                "none",
            ],
        )
    },
    ItemInfo {
        synonyms: &["open riser", "open risers", "riser gap"],
        worst: Worst::Greatest,
        hazards: &[Hazard::FallThrough],
        question: "Are the risers open, and how wide is the gap between treads?",
        usual: Some((Length::ZERO, Length::inches(12))),
        most: Some(Length::feet(5)),
        zero_allowed: true,
        none_allowed: true,
        pictured: Pictured::By(&[Drawing::RiserOpening]),
        ..row(
            Item::RiserOpening,
            "riser opening",
            Kind::Opening,
            Group::Measured,
            "The gap between two treads of a stair with open risers.",
            &[
                "Measure plumb from the top of one tread to the underside of the next.",
                "Closed risers: none.",
            ],
            &["none", "6 in"],
        )
    },
    ItemInfo {
        synonyms: &[
            "v gap",
            "vee",
            "v",
            "vee opening",
            "v shaped opening",
            "v shaped gap",
        ],
        worst: Worst::Neither,
        hazards: &[Hazard::Entrapment],
        question: "Does any opening stand open at the top and narrow downward, and how wide and deep is it?",
        none_allowed: true,
        pictured: Pictured::By(&[Drawing::VOpening]),
        ..row(
            Item::VOpening,
            "v opening",
            Kind::VOpening,
            Group::Measured,
            "An opening that is open at the top and narrows downward: between pickets, scrolls, a rail and a post.",
            &[
                "Measure how wide it is at the top, and how deep from there to where the sides meet.",
                "If the sides do not meet, add how wide it is at the bottom. Nothing of the kind: none.",
            ],
            &[
                "5 in wide 6 in deep",
                "120 mm wide 150 mm deep 20 mm at the bottom",
                "none",
            ],
        )
    },
    ItemInfo {
        synonyms: &["distance between level members"],
        worst: Worst::Least,
        hazards: &[Hazard::Climb],
        question: "How far apart are the tops of the level members?",
        usual: Some((Length::inches(2), Length::feet(6))),
        most: Some(Length::feet(20)),
        pictured: Pictured::Not("the words say between which two places the tape runs"),
        ..row(
            Item::LevelBarSpacing,
            "level bar spacing",
            Kind::Length,
            Group::Measured,
            "How far apart two level members of the guard or fence are, from top to top, at the nearest.",
            &[
                "Measure plumb from the top of one level member to the top of the next.",
                "There is one level member at most: leave it out.",
            ],
            &["45 in", "1.1 m"],
        )
    },
    ItemInfo {
        synonyms: &["gap above the front"],
        worst: Worst::Greatest,
        hazards: &[Hazard::FallThrough, Hazard::Entrapment],
        question: "How wide is the gap between the solid part and the rail above it?",
        usual: Some((Length::ZERO, Length::inches(24))),
        most: Some(Length::feet(20)),
        zero_allowed: true,
        none_allowed: true,
        pictured: Pictured::Not("the words say between which two places the tape runs"),
        ..row(
            Item::GapAboveSolidPart,
            "gap above solid part",
            Kind::Length,
            Group::Measured,
            "The gap between the top of the guard's solid part, such as a balcony's front, and a rail above it.",
            &[
                "Measure plumb at the widest place.",
                "There is no rail above it: none.",
            ],
            &["105 mm", "4 in", "none"],
        )
    },
    ItemInfo {
        synonyms: &["toe hold", "toehold", "ledge", "ledges", "footholds"],
        hazards: &[Hazard::Climb],
        question: "Is there anything on the guard that a child's foot could stand on, and how high?",
        none_allowed: true,
        pictured: Pictured::By(&[Drawing::Foothold]),
        ..row(
            Item::Foothold,
            "foothold",
            Kind::Foothold,
            Group::Measured,
            "Something on the guard that a child's foot could stand on: a rail, a ledge, a wide hole.",
            &[
                "Look from a child's height for anything level that sticks out or lets a foot in.",
                "Measure its top above the walking surface, and how deep it is.",
                "Bottom rails count too. Nothing of the kind: none.",
            ],
            &["450 mm high 40 mm deep", "18 in high", "none"],
        )
    },
    ItemInfo {
        synonyms: &[
            "climbable object",
            "furniture",
            "planter",
            "things to climb",
        ],
        hazards: &[Hazard::Climb],
        question: "Does anything stand near the guard that a child could climb?",
        none_allowed: true,
        pictured: Pictured::By(&[Drawing::ThingToClimb]),
        ..row(
            Item::ThingToClimb,
            "thing to climb",
            Kind::ThingToClimb,
            Group::Measured,
            "Something near the guard that a child could climb: a chair, a planter, a toy box.",
            &[
                "Look along the whole guard.",
                "Move it away, and then write none; else write how high it is and how far off.",
            ],
            &["18 in high 5 in away", "yes", "none"],
        )
    },
    ItemInfo {
        synonyms: &["rail grip height"],
        worst: Worst::Neither,
        question: "How high is the handrail above the step noses?",
        usual: Some((Length::inches(18), Length::feet(5))),
        most: Some(Length::feet(12)),
        pictured: Pictured::By(&[Drawing::HandrailHeight]),
        ..row(
            Item::HandrailHeight,
            "handrail height",
            Kind::Length,
            Group::Measured,
            "How high the top of the handrail is above the line of the step noses, or the floor.",
            &[
                "Plumb from the nose of a step to the top of the handrail.",
                "Measure at the lowest and at the highest place, and write both.",
            ],
            &["36 in", "950 mm"],
        )
    },
    ItemInfo {
        synonyms: &["handrails on"],
        hazards: &[Hazard::FallOver],
        question: "Is there a handrail on both sides, or on one?",
        pictured: Pictured::Not("it is counted, and not measured"),
        ..row(
            Item::HandrailSides,
            "handrail sides",
            Kind::Words(HANDRAIL_SIDES),
            Group::Measured,
            "On how many sides of the flight or ramp a handrail runs.",
            &[
                "Count a guard whose top is the handrail as one side.",
                "One side, if one of the two does not run the whole length.",
            ],
            &["both sides", "one side"],
        )
    },
    ItemInfo {
        hazards: &[Hazard::FallOver],
        question: "Is the handrail round, has it finger grooves, or neither?",
        pictured: Pictured::Not("it is looked at, and not measured"),
        ..row(
            Item::HandrailShape,
            "handrail shape",
            Kind::Words(HANDRAIL_SHAPES),
            Group::Measured,
            "What a cut through the handrail looks like.",
            &[
                "round: a full circle, as of a pipe.",
                "with finger grooves: a wide rail with a groove for the fingers on both sides, below its widest part.",
                "other: anything else, an oval or a flat board too.",
            ],
            &["round", "other"],
        )
    },
    ItemInfo {
        synonyms: &["handrail diameter", "handrail width"],
        worst: Worst::Neither,
        hazards: &[Hazard::FallOver],
        question: "How thick is the handrail?",
        usual: Some((Length::millimetres(10), Length::inches(8))),
        most: Some(Length::feet(2)),
        pictured: Pictured::Not("the words say between which two places the tape runs"),
        ..row(
            Item::HandrailThickness,
            "handrail thickness",
            Kind::Length,
            Group::Measured,
            "How thick the handrail is: the longest straight line across a cut through it, which for a round one is its diameter.",
            &[
                "Hold two flat blocks against it, parallel, and measure between them.",
                "Turn them around it and take the greatest.",
            ],
            &["1 1/2 in", "40 mm"],
        )
    },
    ItemInfo {
        synonyms: &["perimeter of the handrail"],
        worst: Worst::Neither,
        hazards: &[Hazard::FallOver],
        question: "How long is a strip of paper once around the handrail?",
        usual: Some((Length::inches(1), Length::inches(24))),
        most: Some(Length::feet(4)),
        pictured: Pictured::Not("the words say between which two places the tape runs"),
        ..row(
            Item::HandrailPerimeter,
            "handrail perimeter",
            Kind::Length,
            Group::Measured,
            "How long a string is that goes once around the handrail.",
            &[
                "Lay a strip of paper around it, mark where it meets itself, and measure the strip flat.",
            ],
            &["5 in", "130 mm"],
        )
    },
    ItemInfo {
        synonyms: &["distance from the wall"],
        worst: Worst::Least,
        hazards: &[Hazard::FallOver],
        question: "How much room is there between the handrail and the wall?",
        usual: Some((Length::millimetres(10), Length::inches(8))),
        most: Some(Length::feet(4)),
        pictured: Pictured::Not("the words say between which two places the tape runs"),
        ..row(
            Item::HandrailClearance,
            "handrail clearance",
            Kind::Length,
            Group::Measured,
            "How much room there is between the handrail and the wall or guard beside it.",
            &[
                "Measure clear between the faces, at the narrowest place; brackets do not count. No wall beside it: leave it out.",
            ],
            &["1 1/2 in", "50 mm"],
        )
    },
    ItemInfo {
        synonyms: &["top extension"],
        worst: Worst::Least,
        hazards: &[Hazard::FallOver],
        question: "How far does the handrail run on beyond the top step?",
        usual: Some((Length::ZERO, Length::feet(4))),
        most: Some(Length::feet(30)),
        none_allowed: true,
        pictured: Pictured::Not("the words say between which two places the tape runs"),
        ..row(
            Item::HandrailExtension,
            "handrail extension",
            Kind::Length,
            Group::Measured,
            "How far the handrail runs on level beyond the top step.",
            &[
                "At the top landing, measure level from the nose of the last step to the handrail's end.",
                "It ends at the step: none.",
            ],
            &["12 in", "300 mm", "none"],
        )
    },
    ItemInfo {
        synonyms: &["parapet height", "wall height"],
        worst: Worst::Least,
        hazards: &[Hazard::Climb],
        usual: Some((Length::inches(1), Length::feet(8))),
        most: Some(Length::feet(20)),
        zero_allowed: true,
        none_allowed: true,
        question: "How high is the solid part of the guard?",
        pictured: Pictured::By(&[Drawing::SolidPart]),
        ..row(
            Item::SolidPartHeight,
            "solid part height",
            Kind::Length,
            Group::Measured,
            "How high the solid lower part of the guard is: a parapet or a kerb.",
            &["From the walking surface to its top. A child may stand on it."],
            &["24 in", "none"],
        )
    },
    ItemInfo {
        synonyms: &["parapet width", "wall top width"],
        worst: Worst::Greatest,
        hazards: &[Hazard::Climb],
        usual: Some((Length::ZERO, Length::feet(4))),
        most: Some(Length::feet(20)),
        zero_allowed: true,
        question: "How wide is the top of the solid part?",
        pictured: Pictured::By(&[Drawing::SolidPart]),
        ..row(
            Item::SolidPartTopWidth,
            "solid part top width",
            Kind::Length,
            Group::Measured,
            "How wide the top of the solid part is, where a foot could stand.",
            &["Across the top, from the inner face to whatever stands on it."],
            &["4 in"],
        )
    },
    ItemInfo {
        synonyms: &["distance between posts"],
        worst: Worst::Greatest,
        hazards: &[Hazard::GiveWay],
        usual: Some((Length::inches(12), Length::feet(12))),
        most: Some(Length::feet(60)),
        question: "How far apart are the posts, at most?",
        pictured: Pictured::By(&[Drawing::PostSpacing]),
        ..row(
            Item::PostSpacing,
            "post spacing",
            Kind::Length,
            Group::Measured,
            "How far apart the posts stand, centre to centre, at most.",
            &[
                "Along the rail, from the middle of one post to the middle of the next; take the widest bay.",
            ],
            &["6 ft", "1.8 m"],
        )
    },
    ItemInfo {
        synonyms: &["post size", "post"],
        hazards: &[Hazard::GiveWay],
        question: "What is the post's section?",
        pictured: Pictured::By(&[Drawing::PostSection]),
        ..row(
            Item::PostSection,
            "post section",
            Kind::Section,
            Group::Measured,
            "How thick a post is, both ways, as measured and not as sold.",
            &["Across both faces of the post."],
            &["3 1/2 x 3 1/2 in", "90 x 90 mm"],
        )
    },
    ItemInfo {
        synonyms: &["filling", "fill", "infill type", "type of infill"],
        hazards: &[Hazard::FallThrough, Hazard::Climb],
        question: "What fills the guard between floor and top rail?",
        ..row(
            Item::Infill,
            "infill",
            Kind::Words(INFILLS),
            Group::Seen,
            "What fills the guard between floor and top rail.",
            &[
                "Choose the word that fits most of it. Level cables are cables, upright ones upright cables.",
                "Cables and nets give way: try a ball, pushed by hand.",
            ],
            &["balusters", "horizontal bars", "glass"],
        )
    },
    ItemInfo {
        synonyms: &["loose infill", "loose balusters", "loose spindles"],
        hazards: &[Hazard::FallThrough, Hazard::GiveWay],
        question: "Is any baluster or panel loose or missing?",
        ..row(
            Item::InfillLoose,
            "infill loose",
            Kind::Words(LOOSE),
            Group::Seen,
            "Whether balusters or panels are loose or missing.",
            &["Take hold of each and twist it gently. Do not pull hard."],
            &["no", "one", "missing"],
        )
    },
    ItemInfo {
        synonyms: &["fastening", "fixing", "post fixing"],
        hazards: &[Hazard::GiveWay],
        question: "What holds the posts?",
        ..row(
            Item::PostFastening,
            "post fastening",
            Kind::Words(FASTENINGS),
            Group::Seen,
            "What holds the posts to the building.",
            &[
                "Look at the foot of a post, inside and outside; take nothing apart.",
                "Bolt heads with a nut behind: through bolts. Hexagon heads without a nut: lag screws.",
                "Cannot be seen: unknown.",
            ],
            &["through bolts", "nails", "unknown"],
        )
    },
    ItemInfo {
        synonyms: &["notched", "notched posts"],
        hazards: &[Hazard::GiveWay],
        question: "Is the post notched where it is fixed?",
        ..row(
            Item::NotchedPost,
            "notched post",
            Kind::Words(NO_YES),
            Group::Seen,
            "Whether a post is cut away where it is fixed.",
            &["Look whether the post gets thinner at the deck's edge."],
            &["no", "yes"],
        )
    },
    ItemInfo {
        synonyms: &["fixed to", "fastened into"],
        hazards: &[Hazard::GiveWay],
        question: "What are the posts fastened to?",
        ..row(
            Item::FastenedTo,
            "fastened to",
            Kind::Words(FASTENED_TO),
            Group::Seen,
            "What the posts or rail ends are fastened to.",
            &["Look from below or from the side. Cannot be seen: hidden."],
            &["joist", "rim board", "hidden"],
        )
    },
    ItemInfo {
        synonyms: &["moves", "wobbles", "wobbly", "loose"],
        hazards: &[Hazard::GiveWay],
        question: "Does it move when you push it gently?",
        ..row(
            Item::MovesWhenPushed,
            "moves when pushed",
            Kind::Words(MOVES),
            Group::Seen,
            "Whether the guard moves when pushed gently with one hand.",
            &[
                "Stand firmly on the safe side, well back. Never lean on it.",
                "Push once, gently, with one hand at the top, near a post and between two posts.",
                "Stop at the first movement or noise.",
            ],
            &["no", "a little", "a lot"],
        )
    },
    ItemInfo {
        synonyms: &["gate", "stair gate", "baby gate"],
        hazards: &[Hazard::FallOver],
        question: "Is there a gate at the top of the stairs, screwed or pressed?",
        ..row(
            Item::TopOfStairsGate,
            "top of stairs gate",
            Kind::Words(GATES),
            Group::Seen,
            "Whether a gate closes the top of the stairs, and how it is held.",
            &["screwed: held by screws in the wall. pressed: held by pressing against the walls."],
            &["screwed", "pressed", "none"],
        )
    },
    ItemInfo {
        synonyms: &["height of the gate"],
        worst: Worst::Least,
        hazards: &[Hazard::FallOver],
        question: "How high is the gate?",
        usual: Some((Length::inches(12), Length::feet(6))),
        most: Some(Length::feet(12)),
        pictured: Pictured::Not("a gate's height is measured as a guard's is"),
        ..row(
            Item::GateHeight,
            "gate height",
            Kind::Length,
            Group::Measured,
            "How high the top of the stair gate stands above the floor.",
            &[
                "Measure plumb at its lowest place.",
                "A bar of the gate that a child can step on: measure from that bar.",
            ],
            &["30 in", "750 mm"],
        )
    },
    ItemInfo {
        synonyms: &["gate openings", "gate bars"],
        worst: Worst::Greatest,
        hazards: &[Hazard::FallThrough, Hazard::Entrapment],
        question: "How wide is the widest gap in the gate?",
        usual: Some((Length::millimetres(6), Length::inches(12))),
        most: Some(Length::feet(6)),
        none_allowed: true,
        pictured: Pictured::Not("the gaps of a gate are measured as those of a guard are"),
        ..row(
            Item::GateGap,
            "gate gap",
            Kind::Opening,
            Group::Measured,
            "The widest gap between two bars of the stair gate, or at its side.",
            &[
                "Measure clear between the faces, square to them, at the widest place.",
                "The gate is solid: none.",
            ],
            &["55 mm", "2 1/4 in", "none"],
        )
    },
    ItemInfo {
        synonyms: &["gap under the gate"],
        worst: Worst::Greatest,
        hazards: &[Hazard::FallThrough, Hazard::Entrapment],
        question: "How high is the gap under the gate?",
        usual: Some((Length::ZERO, Length::inches(12))),
        most: Some(Length::feet(6)),
        zero_allowed: true,
        none_allowed: true,
        pictured: Pictured::Not("the gap under a gate is measured as that under a guard is"),
        ..row(
            Item::GateBottomGap,
            "gate bottom gap",
            Kind::Opening,
            Group::Measured,
            "The gap between the floor and the underside of the stair gate, at its highest.",
            &["Measure up from the floor to the underside, at the highest place."],
            &["2 in", "50 mm", "none"],
        )
    },
    ItemInfo {
        synonyms: &["paint condition"],
        question: "Is the paint sound or flaking?",
        ..row(
            Item::Paint,
            "paint",
            Kind::Words(PAINT),
            Group::Seen,
            "Whether the paint is sound or flaking.",
            &["Look at rails at a child's mouth height. Do not scrape it."],
            &["sound", "flaking"],
        )
    },
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

#[cfg(test)]
mod tests {
    use super::*;
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
                | Kind::Force
                | Kind::Length
                | Kind::Opening
                | Kind::Pull
                | Kind::Section
                | Kind::StairTriangle
                | Kind::ThingToClimb => true,
                Kind::Ages
                | Kind::Count
                | Kind::Date
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
