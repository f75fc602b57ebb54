//! The rows of circumstances: what says which rules apply.

use crate::items::Change;
use crate::items::Drawing;
use crate::items::FixedSeatWord;
use crate::items::FlightShapeWord;
use crate::items::Group;
use crate::items::HandrailWord;
use crate::items::Hazard;
use crate::items::Holds;
use crate::items::Item;
use crate::items::ItemInfo;
use crate::items::ItemPlace;
use crate::items::ItemWord;
use crate::items::Kind;
use crate::items::LocationWord;
use crate::items::MeasuredBetween;
use crate::items::OwnWayOutWord;
use crate::items::Pictured;
use crate::items::PlaceWord;
use crate::items::ReplacedWindowWord;
use crate::items::Role;
use crate::items::SharedWord;
use crate::items::StateWord;
use crate::items::UseWord;
use crate::items::Worst;
use crate::items::row::row;
use crate::quantities::Length;

pub(super) const PLACE: ItemInfo = ItemInfo {
    change: Change::StartsAGuard,
    synonyms: &["where", "position"],
    role: Role::Single,
    question: "Where is it: landing, stair, deck, balcony …?",
    ..row(
        Item::Place,
        "place",
        Kind::Words(PlaceWord::WORDS),
        Group::Circumstance,
        "What kind of place the guard stands at.",
        &[
            "Choose the word that fits what you stand on at the guard.",
            "Where a sloping stair guard meets a level landing guard, write two guards.",
        ],
        &["landing", "stair", "deck"],
    )
};

pub(super) const USE: ItemInfo = ItemInfo {
    holds: Holds::ForAll,
    synonyms: &["building use", "occupancy"],
    role: Role::Single,
    question: "What is the building used for: dwelling, public, workplace?",
    ..row(
        Item::Use,
        "use",
        Kind::Words(UseWord::WORDS),
        Group::Circumstance,
        "What the building, or this part of it, is used for.",
        &["A house, flat or its stairwell is a dwelling."],
        &["dwelling"],
    )
};

pub(super) const DWELLINGS_IN_BUILDING: ItemInfo = ItemInfo {
    holds: Holds::ForAll,
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
};

pub(super) const SHARED: ItemInfo = ItemInfo {
    holds: Holds::ForMost,
    synonyms: &["common", "communal"],
    role: Role::Single,
    question: "Do several households share it?",
    ..row(
        Item::Shared,
        "shared",
        Kind::Words(SharedWord::WORDS),
        Group::Circumstance,
        "Whether several households use this place.",
        &["A stairwell or hall outside the flats' own doors: yes."],
        &["yes", "no"],
    )
};

pub(super) const LOCATION: ItemInfo = ItemInfo {
    load_path: Some(46),
    synonyms: &["inside or outside"],
    role: Role::Single,
    question: "Is it inside or outside?",
    ..row(
        Item::Location,
        "location",
        Kind::Words(LocationWord::WORDS),
        Group::Circumstance,
        "Whether the guard stands inside or outside.",
        &["Under a roof but open at the sides: outside."],
        &["inside", "outside"],
    )
};

pub(super) const DROP: ItemInfo = ItemInfo {
    between: MeasuredBetween::EdgeAndGround,
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
            "Some rules count the fall further out than that: where it gets deeper beyond, say in the note how far out and how deep.",
            "On a stair take the highest step that the guard runs along.",
            "Too far to measure: write over 8 ft, or count storeys and say so in the note.",
        ],
        &["4 ft 4 1/4 in", "over 8 ft", "2.6 m"],
    )
};

pub(super) const SILL_HEIGHT: ItemInfo = ItemInfo {
    synonyms: &[
        "bottom of the clear opening",
        "lowest opening",
        "lowest part of the window",
    ],
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
            "The sill itself may lie lower, below a fixed pane: that is the item sill top height. How far it opens is the item opening.",
        ],
        &["21 5/8 in", "760 mm"],
    )
};

pub(super) const SILL_ABOVE_GROUND: ItemInfo = ItemInfo {
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
        &["10 ft 7 in", "over 8 ft", "3.2 m"],
    )
};

pub(super) const GROUND_FALL: ItemInfo = ItemInfo {
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
};

pub(super) const CEILING_HEIGHT: ItemInfo = ItemInfo {
    worst: Worst::Least,
    question: "How high is the ceiling above the floor that the guard protects?",
    usual: Some((Length::feet(3), Length::feet(20))),
    most: Some(Length::feet(100)),
    pictured: Pictured::Not("the words say between which two places the tape runs"),
    ..row(
        Item::CeilingHeight,
        "ceiling height",
        Kind::Length,
        Group::Circumstance,
        "How high the ceiling is above the floor that the guard protects, where one can stand or crawl in a loft.",
        &[
            "Plumb from the floor up to the ceiling, at its highest place: a sloping roof has several.",
            "Only low lofts have rules of their own; outdoors leave it out.",
        ],
        &["6 ft 6 in", "2.1 m"],
    )
};

pub(super) const BUILT: ItemInfo = ItemInfo {
    holds: Holds::ForMost,
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
};

pub(super) const STOREYS: ItemInfo = ItemInfo {
    holds: Holds::ForAll,
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
};

pub(super) const RISERS: ItemInfo = ItemInfo {
    synonyms: &["steps in flight", "number of risers"],
    worst: Worst::Greatest,
    question: "How many risers has the flight?",
    place: ItemPlace::OnStairs,
    ..row(
        Item::Risers,
        "risers",
        Kind::Count,
        Group::Circumstance,
        "How many risers the stair has, counted on over a landing.",
        &[
            "Count each step up, the last one onto the landing too.",
            "Go on counting over a landing: three steps, a landing and three more are 6.",
        ],
        &["13"],
    )
};

pub(super) const FLIGHT_WIDTH: ItemInfo = ItemInfo {
    between: MeasuredBetween::Faces,
    synonyms: &["stair width", "width of the flight"],
    worst: Worst::Greatest,
    question: "How wide is the flight?",
    usual: Some((Length::inches(18), Length::feet(10))),
    most: Some(Length::feet(60)),
    pictured: Pictured::By(&[Drawing::FlightWidth]),
    place: ItemPlace::OnStairs,
    ..row(
        Item::FlightWidth,
        "flight width",
        Kind::Length,
        Group::Circumstance,
        "How wide the flight of stairs or the ramp is: the width of its treads.",
        &[
            "Measure level along the front edge of a tread, from one end of it to the other, below the handrails and not between them.",
            "A tread that runs on below the guard: to the inner face of the guard.",
        ],
        &["33 1/2 in", "870 mm"],
    )
};

pub(super) const WELL_WIDTH: ItemInfo = ItemInfo {
    between: MeasuredBetween::Faces,
    synonyms: &["width of the well"],
    worst: Worst::Greatest,
    hazards: &[Hazard::FallOver],
    question: "How wide is the open well beside the flight?",
    usual: Some((Length::inches(1), Length::feet(12))),
    most: Some(Length::feet(60)),
    zero_allowed: true,
    none_allowed: true,
    pictured: Pictured::Not("the words say between which two places the tape runs"),
    place: ItemPlace::OnStairs,
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
};

pub(super) const INNER_EDGE_LENGTH: ItemInfo = ItemInfo {
    between: MeasuredBetween::Faces,
    synonyms: &["landing barrier length"],
    worst: Worst::Greatest,
    hazards: &[Hazard::FallOver],
    question: "How long is the guard along the landing's inner edge, or is this another edge?",
    usual: Some((Length::inches(2), Length::feet(12))),
    most: Some(Length::feet(60)),
    none_allowed: true,
    pictured: Pictured::Not("the words say between which two places the tape runs"),
    place: ItemPlace::OnStairs,
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
};

pub(super) const HANDRAIL: ItemInfo = ItemInfo {
    synonyms: &["hand rail"],
    role: Role::Single,
    question: "What do you hold on to: the top of the guard, a separate handrail, or none?",
    place: ItemPlace::OnStairs,
    ..row(
        Item::Handrail,
        "handrail",
        Kind::Words(HandrailWord::WORDS),
        Group::Circumstance,
        "What a person holds on to here.",
        &[
            "top of the guard: the guard's own top rail is what you hold.",
            "separate: another rail, on the wall or on the guard.",
        ],
        &["top of the guard", "separate", "none"],
    )
};

pub(super) const FIXED_SEAT: ItemInfo = ItemInfo {
    synonyms: &["bench", "built-in seat"],
    role: Role::Single,
    question: "Is there a built-in seat beside the guard?",
    ..row(
        Item::FixedSeat,
        "fixed seat",
        Kind::Words(FixedSeatWord::WORDS),
        Group::Circumstance,
        "Whether a seat that cannot be moved, such as a bench built in, stands beside the guard.",
        &["Look along the whole guard. A chair that can be carried away is a thing to climb."],
        &["no", "yes"],
    )
};

pub(super) const CHILDREN: ItemInfo = ItemInfo {
    holds: Holds::ForAUnit,
    synonyms: &[
        "child",
        "ages",
        "children's ages",
        "ages of children",
        "kids",
    ],
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
};

pub(super) const STATE: ItemInfo = ItemInfo {
    synonyms: &["status"],
    role: Role::Single,
    ..row(
        Item::State,
        "state",
        Kind::Words(StateWord::WORDS),
        Group::Circumstance,
        "Whether the guard stands there or is a plan; existing if not said.",
        &["A drawing or an offer: proposed. Then write its build tolerance too."],
        &["existing", "proposed"],
    )
};

pub(super) const OWN_WAY_OUT: ItemInfo = ItemInfo {
    synonyms: &["own front door to the outside", "own exit"],
    role: Role::Single,
    question: "Does the flat have a way out of its own, straight to the outside?",
    ..row(
        Item::OwnWayOut,
        "own way out",
        Kind::Words(OwnWayOutWord::WORDS),
        Group::Circumstance,
        "Whether the flat that the guard belongs to has a way out of its own, straight to the outside.",
        &[
            "Walk from the flat's own door to the street: without a hall, landing or stair that others use, it is yes.",
            "A shared stairwell, hall or gallery on the way: no.",
        ],
        &["no", "yes"],
    )
};

pub(super) const SILL_TOP_HEIGHT: ItemInfo = ItemInfo {
    synonyms: &["top of the sill", "top of sill", "sill top"],
    worst: Worst::Least,
    hazards: &[Hazard::FallOver],
    question: "How high above the floor is the top of the window's sill?",
    usual: Some((Length::inches(4), Length::feet(8))),
    most: Some(Length::feet(20)),
    zero_allowed: true,
    pictured: Pictured::By(&[Drawing::Sill]),
    ..row(
        Item::SillTopHeight,
        "sill top height",
        Kind::Length,
        Group::Circumstance,
        "How high above the floor inside the top of a window's sill lies: the ledge below the whole window, whether or not the part above it opens.",
        &[
            "Measure plumb from the floor to the top of the sill, where one would set a flower pot.",
            "The part that opens may begin higher, above a fixed pane: that is the item sill height.",
        ],
        &["20 in", "500 mm"],
    )
};

pub(super) const REPLACED_WINDOW: ItemInfo = ItemInfo {
    synonyms: &["window replaced", "replacement window"],
    role: Role::Single,
    question: "Was the window put into an old opening in place of another one?",
    ..row(
        Item::ReplacedWindow,
        "replaced window",
        Kind::Words(ReplacedWindowWord::WORDS),
        Group::Circumstance,
        "Whether the window, or its sash alone, was put into an opening that was there before, in place of an older one.",
        &[
            "A window as old as its wall, or in a new opening: no.",
            "New panes in old frames are no replaced window. When it was done belongs under built.",
        ],
        &["no", "yes"],
    )
};

pub(super) const RAMP_SLOPE: ItemInfo = ItemInfo {
    synonyms: &["slope of the ramp", "ramp gradient"],
    worst: Worst::Greatest,
    question: "How far does the ramp rise over one metre?",
    usual: Some((Length::ZERO, Length::millimetres(400))),
    most: Some(Length::feet(4)),
    zero_allowed: true,
    pictured: Pictured::By(&[Drawing::Ramp]),
    ..row(
        Item::RampSlope,
        "ramp slope",
        Kind::Length,
        Group::Circumstance,
        "How far the ramp rises over one metre (39 3/8 in), measured level, at its steepest.",
        &[
            "Lay a straight board or a spirit level 1 m long on the ramp, its upper end on the floor of the ramp, and hold it level.",
            "Measure plumb from its lower end down to the ramp.",
            "1 in 12 is 83.3 mm (3 9/32 in) over the metre, 1 in 20 is 50 mm.",
        ],
        &["83 mm", "3 1/4 in"],
    )
};

pub(super) const RAMP_RISE: ItemInfo = ItemInfo {
    synonyms: &["rise of the ramp"],
    worst: Worst::Greatest,
    question: "How far does the ramp rise, from its foot to its head?",
    usual: Some((Length::inches(1), Length::feet(10))),
    most: Some(Length::feet(60)),
    zero_allowed: true,
    pictured: Pictured::By(&[Drawing::Ramp]),
    ..row(
        Item::RampRise,
        "ramp rise",
        Kind::Length,
        Group::Circumstance,
        "How far the ramp rises in all, from its foot to the landing at its head.",
        &["Measure plumb beside the head, from the landing down to the level of the foot."],
        &["16 in", "400 mm"],
    )
};

pub(super) const FLIGHT_SHAPE: ItemInfo = ItemInfo {
    synonyms: &["winders", "shape of the stair", "kind of flight"],
    role: Role::Single,
    question: "Is the flight straight, or has it winders or a curve?",
    place: ItemPlace::OnStairs,
    ..row(
        Item::FlightShape,
        "flight shape",
        Kind::Words(FlightShapeWord::WORDS),
        Group::Circumstance,
        "How the flight runs when looked at from above.",
        &[
            "straight: every step as deep at one end as at the other.",
            "winders: some steps narrow towards one end, to turn a corner. curved: all of them do. spiral: all of them, round a post.",
        ],
        &["straight", "winders"],
    )
};

pub(super) const TREAD_THICKNESS: ItemInfo = ItemInfo {
    synonyms: &["step thickness", "thickness of the treads"],
    worst: Worst::Least,
    question: "How thick are the treads?",
    usual: Some((Length::millimetres(15), Length::inches(8))),
    most: Some(Length::feet(2)),
    pictured: Pictured::By(&[Drawing::TreadThickness]),
    place: ItemPlace::OnStairs,
    ..row(
        Item::TreadThickness,
        "tread thickness",
        Kind::Length,
        Group::Circumstance,
        "How thick a step is, from its top to its underside, at its front edge.",
        &["Only where the risers are open, so that the edge is seen. Take the thinnest."],
        &["1 1/2 in", "40 mm"],
    )
};
