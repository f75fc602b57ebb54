//! The kinds of remedies: who does each, what it needs, how long it lasts, and what to
//! mind. One table; everything that is said of a kind comes from it.
//!
//! Common practice, no source, unless a caution's own words name one.

/// What somebody can do about a shortfall.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[expect(missing_docs, reason = "each is described in the table")]
pub enum RemedyKind {
    KeepAway,
    MeshInside,
    MeshOutside,
    SheetClamped,
    SheetScrewed,
    Strips,
    BarsBetween,
    LaidOutAgain,
    NewBay,
    MoveWhatRaises,
    Cap,
    RailAbove,
    BoardAbove,
    SheetAbove,
    NewPosts,
    WallHandrail,
    GuardHandrail,
    RaiseTop,
    LowerTop,
    BoardAlongGap,
    StripUnder,
    SecondBottomRail,
    KickBoard,
    LowerBottomRail,
    StairGates,
    StripUnderStairRail,
    LowerStairRail,
    TriangleFillers,
    ClosedString,
    RiserMesh,
    RiserBar,
    RiserStrip,
    FullRisers,
    FootholdAway,
    SmoothSheet,
    Fillet,
    RaiseAboveFoothold,
    MoveThing,
    RaiseAtSeat,
    CableSheet,
    TightenCables,
    SpreaderBars,
    CloserCables,
    UprightsForCables,
    SheetOverBars,
    UprightBoards,
    MeshOverBarsInside,
    MeshOverBarsOutside,
    MoreLevelBars,
    BayOfUprights,
    TieLoose,
    ScrewLoose,
    BoardOverHole,
    NewBaluster,
    EverybodyOff,
    TightenNuts,
    MendLink,
    BarrierSetBack,
    BoltsForNails,
    BoltsAndTie,
    NewPostForNotch,
    BlockingUnderPlate,
    AnchorsChecked,
    LookAtFixing,
    NewPostForRot,
    BlockingBehindRail,
    PlateAcrossStuds,
    CloseTheWay,
    NewGuard,
    GroundFilled,
    NewHandrail,
    MoveBrackets,
    StairsShut,
    PressedGateBelow,
    ScrewedGate,
    ClampKit,
    WindowShut,
    WindowStop,
    WindowGuard,
    WallBelowWindow,
    KeepOffPaint,
    TestPaint,
    Renovator,
    EnclosePaint,
    DoNotHold,
    LongerScrews,
    BackingBoard,
    BoardInWallGap,
    StripAtWall,
    HalfBaluster,
    BoardAcrossJoint,
    UprightInJoint,
    VeeClosed,
    HeightAcrossJoint,
    BoardAlongEdge,
    StripAtEdge,
    WindowAndFurniture,
    SillStop,
    UprightBarsAtWindow,
    WallOrGlassBelow,
    PoolGateLocked,
    HingeSet,
    ReleaseRaised,
    GateRehung,
    NewPoolGate,
    OffAndBelow,
    GlassEdgeStrip,
    GlassClampsReset,
    GlassTopRail,
    NewPane,
}

/// Who does it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum WhoDoes {
    /// Anybody, without a tool.
    Anyone,
    /// A careful person with hand tools.
    Handy,
    /// A carpenter, a metalworker, a glazier.
    Trade,
    /// An engineer, a licensed contractor, a certified lead renovator.
    Licensed,
}

impl WhoDoes {
    /// In a reader's words.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            WhoDoes::Anyone => "anybody",
            WhoDoes::Handy => "somebody handy",
            WhoDoes::Trade => "somebody who builds railings",
            WhoDoes::Licensed => "an engineer or a licensed contractor",
        }
    }
}

/// Whether the owner's leave, or a permit, is needed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Needed {
    /// Not as a rule.
    No,
    /// Ask.
    Ask,
    /// As a rule it is.
    Yes,
}

/// Whether it makes holes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum MakesHoles {
    /// It makes none.
    No,
    /// With and without.
    Either,
    /// It does.
    Yes,
}

/// How long it lasts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum HowLong {
    /// Hours to days.
    Tonight,
    /// Weeks to a season, looked at every week.
    Interim,
    /// For good.
    Permanent,
}

impl HowLong {
    /// The word in reports.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            HowLong::Tonight => "tonight",
            HowLong::Interim => "interim",
            HowLong::Permanent => "permanent",
        }
    }
}

/// Whether it may be fixed only to a guard that stands firm.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FirmOnly {
    /// Also to another, or to none.
    No,
    /// Only to one that does not move when pushed.
    Yes,
}

/// What to mind.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[expect(missing_docs, reason = "each is told by its words")]
pub enum RemedyCaution {
    Firm,
    Lever,
    Escape,
    Below,
    Edge,
    OpenBay,
    Ladder,
    Cords,
    Choke,
    Sharp,
    Swing,
    Wires,
    Slab,
    Glass,
    Lead,
    Fibre,
    Treated,
    Fire,
    Cable,
    Water,
    Watch,
}

impl RemedyCaution {
    /// What to mind, in plain words. Common practice, unless a source is named.
    #[must_use]
    pub const fn says(self) -> &'static str {
        match self {
            RemedyCaution::Firm => {
                "Where nobody has pushed it yet, push it gently with one hand first, feet on the floor; one that \
                 moves is let alone. Nothing is fixed to, hung on or leaned against a railing that moves, is \
                 loose, rotten or only nailed."
            }
            RemedyCaution::Lever => {
                "A higher or closed railing pulls harder at its posts (36 to 42 in: about 15 per cent \
                 more), and a sheet catches wind: look at what holds the posts before you add to it; \
                 outdoors and above one storey ask an engineer."
            }
            RemedyCaution::Escape => {
                "No door, window, gate or bar may keep anybody in: each adult opens it from inside in \
                 the dark, without key or tool. Try it tonight, and do not shut off the only second way out."
            }
            RemedyCaution::Below => {
                "Outdoors above a place where people walk: two fixings for each sheet that do not depend \
                 on each other, nothing on ties alone above one storey, tools on a line, nobody below."
            }
            RemedyCaution::Edge => {
                "Work from inside with both feet on the floor, no ladder or chair at the edge; what needs \
                 leaning out is for a trade."
            }
            RemedyCaution::OpenBay => {
                "While parts are out the railing is open: close the way, children elsewhere, one bay at a \
                 time, and none left open overnight."
            }
            RemedyCaution::Ladder => {
                "A foot fits into mesh, lattice and level bars: what is added should be upright or smooth."
            }
            RemedyCaution::Cords => {
                "No loop that a head goes through and no loose end longer than a hand: cut the ends, on \
                 the outer side."
            }
            RemedyCaution::Choke => "No staples, foam, caps or glued bits within a child's reach.",
            RemedyCaution::Sharp => {
                "Cut edges of wire and sheet are folded or covered, screw points cut or capped."
            }
            RemedyCaution::Swing => {
                "Nothing in the way of a door's or gate's leaf; a gate at a stair opens over the landing, \
                 and has no bar to trip on at the top."
            }
            RemedyCaution::Wires => {
                "Before drilling into a wall or a post with a lamp: look with a detector, power off, stop \
                 on the bit; never above or below a switch or a tap."
            }
            RemedyCaution::Slab => {
                "No hole in a concrete floor, parapet or balcony edge without the owner and an engineer: \
                 stressed cables and the waterproof layer lie there."
            }
            RemedyCaution::Glass => "Glass is never drilled, cut, clamped or leaned against.",
            RemedyCaution::Lead => {
                "Old paint may hold lead: have it tested first; child and pregnant women away, floor covered, wet \
                 work, no sanding, no heat, no household vacuum."
            }
            RemedyCaution::Fibre => {
                "Boards, textured coatings and plaster from before about 1990 may hold asbestos: do not \
                 drill, sand or break them before somebody has looked."
            }
            RemedyCaution::Treated => {
                "Treated wood: mask, goggles and gloves, dust gathered, hands washed, never burned."
            }
            RemedyCaution::Fire => {
                "Plastic nets and sheets burn: no smoking, grill or heater near them, and the way out \
                 stays free."
            }
            RemedyCaution::Cable => {
                "No more tension than the maker states; eyes covered, stand aside while it is tightened."
            }
            RemedyCaution::Water => "Somebody stays at the water until it is mended.",
            RemedyCaution::Watch => "Nothing here replaces a person who watches the child.",
        }
    }

    /// The word in JSON.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            RemedyCaution::Firm => "firm",
            RemedyCaution::Lever => "lever",
            RemedyCaution::Escape => "escape",
            RemedyCaution::Below => "below",
            RemedyCaution::Edge => "edge",
            RemedyCaution::OpenBay => "open-bay",
            RemedyCaution::Ladder => "ladder",
            RemedyCaution::Cords => "cords",
            RemedyCaution::Choke => "choke",
            RemedyCaution::Sharp => "sharp",
            RemedyCaution::Swing => "swing",
            RemedyCaution::Wires => "wires",
            RemedyCaution::Slab => "slab",
            RemedyCaution::Glass => "glass",
            RemedyCaution::Lead => "lead",
            RemedyCaution::Fibre => "fibre",
            RemedyCaution::Treated => "treated",
            RemedyCaution::Fire => "fire",
            RemedyCaution::Cable => "cable",
            RemedyCaution::Water => "water",
            RemedyCaution::Watch => "watch",
        }
    }
}

/// What the table says of a kind.
#[derive(Clone, Copy, Debug)]
pub struct RemedyRow {
    /// Which kind.
    pub kind: RemedyKind,
    /// Its name for programs.
    pub key: &'static str,
    /// Its name for a reader.
    pub name: &'static str,
    /// Who does it.
    pub who: WhoDoes,
    /// Who does it outdoors above one storey.
    pub who_high: WhoDoes,
    /// Whether the owner's leave is needed.
    pub leave: Needed,
    /// Whether it makes holes.
    pub holes: MakesHoles,
    /// Whether it needs a permit.
    pub permit: Needed,
    /// How long it lasts; of several the shortest first.
    pub lasts: &'static [HowLong],
    /// Whether it needs a guard that stands firm.
    pub firm: FirmOnly,
    /// What to mind.
    pub cautions: &'static [RemedyCaution],
}

impl RemedyKind {
    /// What the table says of it.
    #[must_use]
    pub fn row(self) -> &'static RemedyRow {
        // the rows stand in the order of the kinds: a test holds it so
        &REMEDIES[self as usize]
    }
}

use FirmOnly as F;
use HowLong as L;
use MakesHoles as H;
use Needed as N;
use RemedyCaution as C;
use RemedyKind as K;
use WhoDoes as W;

#[expect(
    clippy::too_many_arguments,
    reason = "a row of a table, each in its column"
)]
const fn row(
    kind: RemedyKind,
    key: &'static str,
    name: &'static str,
    [who, who_high]: [WhoDoes; 2],
    leave: Needed,
    holes: MakesHoles,
    permit: Needed,
    lasts: &'static [HowLong],
    firm: FirmOnly,
    cautions: &'static [RemedyCaution],
) -> RemedyRow {
    RemedyRow {
        kind,
        key,
        name,
        who,
        who_high,
        leave,
        holes,
        permit,
        lasts,
        firm,
        cautions,
    }
}

/// All kinds of remedies.
#[rustfmt::skip]
pub const REMEDIES: &[RemedyRow] = &[
    row(K::KeepAway, "keep-away", "keep away: a door or gate before it", [W::Anyone, W::Anyone], N::Ask, H::Either, N::No, &[L::Tonight], F::No, &[C::Escape, C::Swing, C::Watch]),
    row(K::MeshInside, "mesh-inside", "a mesh tied inside, indoors", [W::Handy, W::Handy], N::No, H::No, N::No, &[L::Interim], F::Yes, &[C::Firm, C::Ladder, C::Cords, C::Choke, C::Sharp]),
    row(K::MeshOutside, "mesh-outside", "a mesh tied inside, outdoors", [W::Handy, W::Handy], N::Yes, H::No, N::No, &[L::Interim], F::Yes, &[C::Firm, C::Ladder, C::Cords, C::Choke, C::Sharp, C::Fire, C::Below]),
    row(K::SheetClamped, "sheet-clamped", "a clear sheet, clamped or tied", [W::Handy, W::Handy], N::Yes, H::No, N::No, &[L::Interim], F::Yes, &[C::Firm, C::Lever, C::Below, C::Fire, C::Glass]),
    row(K::SheetScrewed, "sheet-screwed", "a clear sheet, screwed", [W::Trade, W::Licensed], N::Yes, H::Yes, N::Ask, &[L::Permanent], F::Yes, &[C::Firm, C::Lever, C::Below, C::Slab, C::Lead, C::Fire]),
    row(K::Strips, "strips", "strips on the bars", [W::Handy, W::Handy], N::Yes, H::Yes, N::No, &[L::Permanent], F::Yes, &[C::Lead, C::Choke, C::Edge]),
    row(K::BarsBetween, "bars-between", "bars between", [W::Handy, W::Handy], N::Yes, H::Yes, N::Ask, &[L::Permanent], F::Yes, &[C::Lead, C::Edge]),
    row(K::LaidOutAgain, "laid-out-again", "all bars laid out again", [W::Trade, W::Trade], N::Yes, H::Yes, N::Ask, &[L::Permanent], F::Yes, &[C::OpenBay, C::Lead, C::Edge, C::Treated]),
    row(K::NewBay, "new-bay", "a new bay", [W::Licensed, W::Licensed], N::Yes, H::Yes, N::Yes, &[L::Permanent], F::No, &[C::OpenBay, C::Lead, C::Edge, C::Slab, C::Treated]),
    row(K::MoveWhatRaises, "move-what-raises", "move what raises a child", [W::Anyone, W::Anyone], N::No, H::No, N::No, &[L::Tonight], F::No, &[C::Escape, C::Watch]),
    row(K::Cap, "cap", "a cap on the top rail", [W::Handy, W::Handy], N::Yes, H::Yes, N::Ask, &[L::Permanent], F::Yes, &[C::Firm, C::Lead, C::Treated]),
    row(K::RailAbove, "rail-above", "a second rail above", [W::Trade, W::Licensed], N::Yes, H::Yes, N::Ask, &[L::Permanent], F::Yes, &[C::Firm, C::Lever, C::Ladder, C::Edge, C::Lead]),
    row(K::BoardAbove, "board-above", "a board on edge above", [W::Trade, W::Licensed], N::Yes, H::Yes, N::Ask, &[L::Permanent], F::Yes, &[C::Firm, C::Lever, C::Edge, C::Lead]),
    row(K::SheetAbove, "sheet-above", "a sheet above the rail", [W::Licensed, W::Licensed], N::Yes, H::Yes, N::Ask, &[L::Interim], F::Yes, &[C::Firm, C::Lever, C::Below]),
    row(K::NewPosts, "new-posts", "new posts or a new bay", [W::Licensed, W::Licensed], N::Yes, H::Yes, N::Yes, &[L::Permanent], F::No, &[C::OpenBay, C::Edge, C::Slab, C::Lead, C::Treated]),
    row(K::WallHandrail, "wall-handrail", "a handrail on the wall", [W::Handy, W::Handy], N::Yes, H::Yes, N::Ask, &[L::Permanent], F::No, &[C::Wires, C::Fibre, C::Lead]),
    row(K::GuardHandrail, "guard-handrail", "a handrail on the guard", [W::Trade, W::Trade], N::Yes, H::Yes, N::Ask, &[L::Permanent], F::Yes, &[C::Firm, C::Ladder, C::Lead]),
    row(K::RaiseTop, "raise-top", "the top raised", [W::Handy, W::Handy], N::Yes, H::Yes, N::Ask, &[L::Permanent], F::Yes, &[C::Firm, C::Lead]),
    row(K::LowerTop, "lower-top", "the top lowered", [W::Licensed, W::Licensed], N::Yes, H::Yes, N::Yes, &[L::Permanent], F::Yes, &[C::OpenBay, C::Lead]),
    row(K::BoardAlongGap, "board-along-gap", "a board along the gap", [W::Anyone, W::Anyone], N::No, H::No, N::No, &[L::Tonight], F::Yes, &[C::Firm, C::Ladder, C::Choke]),
    row(K::StripUnder, "strip-under", "a strip under the rail", [W::Handy, W::Handy], N::Yes, H::Yes, N::No, &[L::Permanent], F::Yes, &[C::Lead]),
    row(K::SecondBottomRail, "second-bottom-rail", "a second bottom rail", [W::Handy, W::Handy], N::Yes, H::Yes, N::No, &[L::Permanent], F::Yes, &[C::Ladder, C::Lead]),
    row(K::KickBoard, "kick-board", "a kick board", [W::Handy, W::Handy], N::Yes, H::Yes, N::No, &[L::Permanent], F::Yes, &[C::Swing, C::Slab, C::Lead]),
    row(K::LowerBottomRail, "lower-bottom-rail", "the bottom rail lowered", [W::Trade, W::Trade], N::Yes, H::Yes, N::Ask, &[L::Permanent], F::Yes, &[C::OpenBay, C::Lead]),
    row(K::StairGates, "stair-gates", "gates at top and bottom", [W::Handy, W::Handy], N::Yes, H::Yes, N::No, &[L::Tonight, L::Interim], F::No, &[C::Escape, C::Swing, C::Wires]),
    row(K::StripUnderStairRail, "strip-under-stair-rail", "a strip under the stair rail", [W::Handy, W::Handy], N::Yes, H::Yes, N::No, &[L::Permanent], F::Yes, &[C::Lead]),
    row(K::LowerStairRail, "lower-stair-rail", "the stair rail lowered", [W::Trade, W::Trade], N::Yes, H::Yes, N::Ask, &[L::Permanent], F::Yes, &[C::OpenBay, C::Lead]),
    row(K::TriangleFillers, "triangle-fillers", "fillers, or a saw-tooth board", [W::Handy, W::Handy], N::Yes, H::Yes, N::No, &[L::Permanent], F::No, &[C::Lead]),
    row(K::ClosedString, "closed-string", "a closed string", [W::Licensed, W::Licensed], N::Yes, H::Yes, N::Yes, &[L::Permanent], F::No, &[C::OpenBay, C::Lead]),
    row(K::RiserMesh, "riser-mesh", "a mesh or sheet behind the treads", [W::Handy, W::Handy], N::Yes, H::Either, N::No, &[L::Interim], F::No, &[C::Swing, C::Sharp]),
    row(K::RiserBar, "riser-bar", "a bar in each riser", [W::Handy, W::Handy], N::Yes, H::Yes, N::No, &[L::Permanent], F::No, &[C::Lead, C::Ladder]),
    row(K::RiserStrip, "riser-strip", "a strip under each tread", [W::Handy, W::Handy], N::Yes, H::Yes, N::No, &[L::Permanent], F::No, &[C::Lead]),
    row(K::FullRisers, "full-risers", "full risers", [W::Handy, W::Handy], N::Yes, H::Yes, N::No, &[L::Permanent], F::No, &[C::Lead]),
    row(K::FootholdAway, "foothold-away", "take the foothold away", [W::Anyone, W::Anyone], N::Ask, H::No, N::No, &[L::Tonight, L::Permanent], F::No, &[C::Firm]),
    row(K::SmoothSheet, "smooth-sheet", "a smooth sheet over the infill", [W::Handy, W::Handy], N::Yes, H::Either, N::No, &[L::Interim, L::Permanent], F::Yes, &[C::Firm, C::Lever, C::Below]),
    row(K::Fillet, "fillet", "a fillet on the ledge", [W::Handy, W::Handy], N::Yes, H::Yes, N::No, &[L::Permanent], F::No, &[C::Lead]),
    row(K::RaiseAboveFoothold, "raise-above-foothold", "the guard raised above it", [W::Trade, W::Licensed], N::Yes, H::Yes, N::Ask, &[L::Permanent], F::Yes, &[C::Firm, C::Lever]),
    row(K::MoveThing, "move-thing", "move the thing to climb", [W::Anyone, W::Anyone], N::No, H::No, N::No, &[L::Tonight], F::No, &[C::Escape, C::Watch]),
    row(K::RaiseAtSeat, "raise-at-seat", "the guard raised at a fixed seat", [W::Licensed, W::Licensed], N::Yes, H::Yes, N::Ask, &[L::Permanent], F::Yes, &[C::Firm, C::Lever]),
    row(K::CableSheet, "cable-sheet", "a net or sheet inside the cables", [W::Handy, W::Handy], N::Yes, H::No, N::No, &[L::Interim], F::Yes, &[C::Firm, C::Ladder, C::Cords, C::Below, C::Fire]),
    row(K::TightenCables, "tighten-cables", "the cables tightened", [W::Trade, W::Trade], N::Yes, H::No, N::No, &[L::Permanent], F::Yes, &[C::Firm, C::Cable]),
    row(K::SpreaderBars, "spreader-bars", "spreader bars", [W::Handy, W::Handy], N::Yes, H::Either, N::No, &[L::Permanent], F::Yes, &[C::Cable]),
    row(K::CloserCables, "closer-cables", "cables closer together", [W::Licensed, W::Licensed], N::Yes, H::Yes, N::Ask, &[L::Permanent], F::Yes, &[C::Firm, C::Lever, C::Cable]),
    row(K::UprightsForCables, "uprights-for-cables", "a sheet or uprights instead", [W::Licensed, W::Licensed], N::Yes, H::Yes, N::Yes, &[L::Permanent], F::Yes, &[C::Lever, C::Below, C::OpenBay]),
    row(K::SheetOverBars, "sheet-over-bars", "a sheet from floor to top rail", [W::Handy, W::Handy], N::Yes, H::Either, N::Ask, &[L::Interim, L::Permanent], F::Yes, &[C::Firm, C::Lever, C::Below, C::Fire]),
    row(K::UprightBoards, "upright-boards", "upright boards", [W::Handy, W::Handy], N::Yes, H::Yes, N::No, &[L::Permanent], F::Yes, &[C::Firm, C::Lever, C::Treated]),
    row(K::MeshOverBarsInside, "mesh-over-bars-inside", "a mesh over level bars, indoors", [W::Handy, W::Handy], N::No, H::No, N::No, &[L::Interim], F::Yes, &[C::Firm, C::Ladder, C::Cords, C::Sharp]),
    row(K::MeshOverBarsOutside, "mesh-over-bars-outside", "a mesh over level bars, outdoors", [W::Handy, W::Handy], N::Yes, H::No, N::No, &[L::Interim], F::Yes, &[C::Firm, C::Ladder, C::Cords, C::Sharp, C::Below, C::Fire]),
    row(K::MoreLevelBars, "more-level-bars", "more level bars", [W::Handy, W::Handy], N::Yes, H::Yes, N::No, &[L::Permanent], F::Yes, &[C::Ladder]),
    row(K::BayOfUprights, "bay-of-uprights", "a new bay with uprights", [W::Licensed, W::Licensed], N::Yes, H::Yes, N::Yes, &[L::Permanent], F::No, &[C::OpenBay, C::Edge, C::Slab, C::Lead]),
    row(K::TieLoose, "tie-loose", "tie or clamp what is loose", [W::Anyone, W::Anyone], N::No, H::No, N::No, &[L::Tonight], F::Yes, &[C::Firm, C::Cords]),
    row(K::ScrewLoose, "screw-loose", "screw what is loose", [W::Handy, W::Handy], N::Yes, H::Yes, N::No, &[L::Permanent], F::Yes, &[C::Lead]),
    row(K::BoardOverHole, "board-over-hole", "a board over the hole", [W::Handy, W::Handy], N::Ask, H::Either, N::No, &[L::Tonight], F::Yes, &[C::Firm, C::Edge]),
    row(K::NewBaluster, "new-baluster", "a new baluster", [W::Handy, W::Handy], N::Yes, H::Yes, N::No, &[L::Permanent], F::Yes, &[C::Lead, C::Edge]),
    row(K::EverybodyOff, "everybody-off", "everybody off, the way closed", [W::Anyone, W::Anyone], N::No, H::No, N::No, &[L::Tonight], F::No, &[C::Escape, C::Below, C::Watch]),
    row(K::TightenNuts, "tighten-nuts", "the nuts tightened", [W::Handy, W::Handy], N::Yes, H::No, N::No, &[L::Permanent], F::No, &[C::Edge]),
    row(K::MendLink, "mend-link", "the link that moves mended", [W::Trade, W::Licensed], N::Yes, H::Yes, N::Ask, &[L::Permanent], F::No, &[C::Edge, C::Lever, C::Slab]),
    row(K::BarrierSetBack, "barrier-set-back", "a barrier set back", [W::Licensed, W::Licensed], N::Yes, H::No, N::No, &[L::Tonight, L::Interim], F::No, &[C::Escape, C::Below]),
    row(K::BoltsForNails, "bolts-for-nails", "bolts in place of nails", [W::Licensed, W::Licensed], N::Yes, H::Yes, N::Ask, &[L::Permanent], F::No, &[C::Edge, C::Lead, C::Treated]),
    row(K::BoltsAndTie, "bolts-and-tie", "bolts and a tie", [W::Licensed, W::Licensed], N::Yes, H::Yes, N::Ask, &[L::Permanent], F::No, &[C::Edge, C::Lead, C::Treated]),
    row(K::NewPostForNotch, "new-post-for-notch", "a new post, not notched", [W::Licensed, W::Licensed], N::Yes, H::Yes, N::Yes, &[L::Permanent], F::No, &[C::OpenBay, C::Edge]),
    row(K::BlockingUnderPlate, "blocking-under-plate", "blocking under the plate", [W::Licensed, W::Licensed], N::Yes, H::Yes, N::Yes, &[L::Permanent], F::No, &[C::Wires]),
    row(K::AnchorsChecked, "anchors-checked", "anchors looked at by an engineer", [W::Licensed, W::Licensed], N::Yes, H::Yes, N::Ask, &[L::Permanent], F::No, &[C::Slab]),
    row(K::LookAtFixing, "look-at-fixing", "look at what holds it", [W::Handy, W::Handy], N::Yes, H::Yes, N::No, &[L::Permanent], F::No, &[C::Wires, C::Fibre, C::Lead]),
    row(K::NewPostForRot, "new-post-for-rot", "a new post for a rotten one", [W::Licensed, W::Licensed], N::Yes, H::Yes, N::Yes, &[L::Permanent], F::No, &[C::OpenBay, C::Edge, C::Below]),
    row(K::BlockingBehindRail, "blocking-behind-rail", "blocking behind the rail end", [W::Handy, W::Handy], N::Yes, H::Yes, N::No, &[L::Permanent], F::No, &[C::Wires, C::Fibre, C::Lead]),
    row(K::PlateAcrossStuds, "plate-across-studs", "a plate across two studs", [W::Handy, W::Handy], N::Yes, H::Yes, N::No, &[L::Permanent], F::No, &[C::Wires, C::Fibre, C::Lead]),
    row(K::CloseTheWay, "close-the-way", "no guard: the way closed", [W::Anyone, W::Anyone], N::No, H::No, N::No, &[L::Tonight], F::No, &[C::Escape, C::Watch]),
    row(K::NewGuard, "new-guard", "a new guard", [W::Licensed, W::Licensed], N::Yes, H::Yes, N::Yes, &[L::Permanent], F::No, &[C::Edge, C::Slab, C::Treated]),
    row(K::GroundFilled, "ground-filled", "the ground filled up", [W::Trade, W::Trade], N::Yes, H::No, N::Ask, &[L::Permanent], F::No, &[C::Below]),
    row(K::NewHandrail, "new-handrail", "a handrail on the wall", [W::Handy, W::Handy], N::Yes, H::Yes, N::Ask, &[L::Permanent], F::No, &[C::Wires, C::Fibre, C::Lead]),
    row(K::MoveBrackets, "move-brackets", "the brackets moved", [W::Handy, W::Handy], N::Yes, H::Yes, N::No, &[L::Permanent], F::No, &[C::Wires, C::Fibre, C::Lead]),
    row(K::StairsShut, "stairs-shut", "the stairs shut off", [W::Anyone, W::Anyone], N::No, H::No, N::No, &[L::Tonight], F::No, &[C::Escape, C::Watch]),
    row(K::PressedGateBelow, "pressed-gate-below", "a pressed gate at the foot, or in a doorway", [W::Anyone, W::Anyone], N::No, H::No, N::No, &[L::Tonight, L::Interim], F::No, &[C::Swing]),
    row(K::ScrewedGate, "screwed-gate", "a screwed gate at the top", [W::Handy, W::Handy], N::Yes, H::Yes, N::No, &[L::Permanent], F::No, &[C::Escape, C::Swing, C::Wires]),
    row(K::ClampKit, "clamp-kit", "a clamp kit for a screwed gate", [W::Handy, W::Handy], N::No, H::No, N::No, &[L::Interim], F::Yes, &[C::Firm, C::Escape, C::Swing]),
    row(K::WindowShut, "window-shut", "shut and latched", [W::Anyone, W::Anyone], N::No, H::No, N::No, &[L::Tonight], F::No, &[C::Escape, C::Cords, C::Watch]),
    row(K::WindowStop, "window-stop", "a stop", [W::Handy, W::Handy], N::Yes, H::Yes, N::No, &[L::Permanent], F::No, &[C::Escape]),
    row(K::WindowGuard, "window-guard", "a window guard", [W::Trade, W::Trade], N::Yes, H::Yes, N::No, &[L::Permanent], F::No, &[C::Escape, C::Ladder, C::Below]),
    row(K::WallBelowWindow, "wall-below-window", "a wall or rail below", [W::Licensed, W::Licensed], N::Yes, H::Yes, N::Yes, &[L::Permanent], F::No, &[C::Escape]),
    row(K::KeepOffPaint, "keep-off-paint", "keep off it, and wet-wipe", [W::Anyone, W::Anyone], N::No, H::No, N::No, &[L::Tonight], F::No, &[C::Lead]),
    row(K::TestPaint, "test-paint", "the paint tested", [W::Anyone, W::Anyone], N::Ask, H::Either, N::No, &[L::Tonight], F::No, &[C::Lead]),
    row(K::Renovator, "renovator", "a certified renovator", [W::Licensed, W::Licensed], N::Yes, H::Yes, N::Ask, &[L::Permanent], F::No, &[C::Lead]),
    row(K::EnclosePaint, "enclose-paint", "the paint enclosed", [W::Handy, W::Handy], N::Yes, H::Yes, N::No, &[L::Interim, L::Permanent], F::Yes, &[C::Lead, C::Lever]),
    row(K::DoNotHold, "do-not-hold", "a notice: do not hold", [W::Anyone, W::Anyone], N::No, H::No, N::No, &[L::Tonight], F::No, &[C::Watch]),
    row(K::LongerScrews, "longer-screws", "longer screws into the same stud", [W::Handy, W::Handy], N::Yes, H::Yes, N::No, &[L::Permanent], F::No, &[C::Wires, C::Lead]),
    row(K::BackingBoard, "backing-board", "to a stud, or a backing board", [W::Handy, W::Handy], N::Yes, H::Yes, N::No, &[L::Permanent], F::No, &[C::Wires, C::Fibre, C::Lead]),
    row(K::BoardInWallGap, "board-in-wall-gap", "a board in the gap at the wall", [W::Anyone, W::Anyone], N::No, H::No, N::No, &[L::Tonight], F::Yes, &[C::Firm, C::Choke]),
    row(K::StripAtWall, "strip-at-wall", "a strip at the wall or post", [W::Handy, W::Handy], N::Yes, H::Yes, N::No, &[L::Permanent], F::No, &[C::Wires, C::Fibre, C::Lead]),
    row(K::HalfBaluster, "half-baluster", "a half baluster or a wall post", [W::Handy, W::Handy], N::Yes, H::Yes, N::Ask, &[L::Permanent], F::Yes, &[C::Wires, C::Lead]),
    row(K::BoardAcrossJoint, "board-across-joint", "a board across the joint", [W::Anyone, W::Anyone], N::No, H::No, N::No, &[L::Tonight], F::Yes, &[C::Firm, C::Cords]),
    row(K::UprightInJoint, "upright-in-joint", "an upright between the two posts", [W::Handy, W::Handy], N::Yes, H::Yes, N::No, &[L::Permanent], F::Yes, &[C::Firm, C::Lead]),
    row(K::VeeClosed, "vee-closed", "the V closed or capped", [W::Handy, W::Handy], N::Yes, H::Yes, N::No, &[L::Permanent], F::Yes, &[C::Ladder, C::Lead]),
    row(K::HeightAcrossJoint, "height-across-joint", "the greater height across the joint", [W::Trade, W::Trade], N::Yes, H::Yes, N::Ask, &[L::Permanent], F::Yes, &[C::Firm, C::Lever]),
    row(K::BoardAlongEdge, "board-along-edge", "a board along the floor edge", [W::Anyone, W::Anyone], N::No, H::No, N::No, &[L::Tonight], F::No, &[C::Swing, C::Edge]),
    row(K::StripAtEdge, "strip-at-edge", "a strip, or a rail set inward", [W::Trade, W::Trade], N::Yes, H::Yes, N::Ask, &[L::Permanent], F::Yes, &[C::Slab, C::Edge, C::Ladder]),
    row(K::WindowAndFurniture, "window-and-furniture", "the window shut, furniture away", [W::Anyone, W::Anyone], N::No, H::No, N::No, &[L::Tonight], F::No, &[C::Escape, C::Cords, C::Watch]),
    row(K::SillStop, "sill-stop", "a stop at the low window", [W::Handy, W::Handy], N::Yes, H::Yes, N::No, &[L::Permanent], F::No, &[C::Escape]),
    row(K::UprightBarsAtWindow, "upright-bars-at-window", "upright bars over the opening", [W::Trade, W::Trade], N::Yes, H::Yes, N::No, &[L::Permanent], F::No, &[C::Escape, C::Below]),
    row(K::WallOrGlassBelow, "wall-or-glass-below", "a wall or safety glass below", [W::Licensed, W::Licensed], N::Yes, H::Yes, N::Yes, &[L::Permanent], F::No, &[C::Escape, C::Glass]),
    row(K::PoolGateLocked, "pool-gate-locked", "the gate locked, the water watched", [W::Anyone, W::Anyone], N::No, H::No, N::No, &[L::Tonight], F::No, &[C::Water, C::Escape, C::Watch]),
    row(K::HingeSet, "hinge-set", "the hinge or closer set", [W::Handy, W::Handy], N::Yes, H::No, N::No, &[L::Permanent], F::No, &[C::Water]),
    row(K::ReleaseRaised, "release-raised", "the release raised or shielded", [W::Handy, W::Handy], N::Yes, H::Yes, N::No, &[L::Permanent], F::No, &[C::Water]),
    row(K::GateRehung, "gate-rehung", "the gate rehung", [W::Trade, W::Trade], N::Yes, H::Yes, N::Ask, &[L::Permanent], F::No, &[C::Water, C::Swing]),
    row(K::NewPoolGate, "new-pool-gate", "a new gate or fence part", [W::Licensed, W::Licensed], N::Yes, H::Yes, N::Yes, &[L::Permanent], F::No, &[C::Water, C::Wires]),
    row(K::OffAndBelow, "off-and-below", "everybody off, and off below", [W::Anyone, W::Anyone], N::No, H::No, N::No, &[L::Tonight], F::No, &[C::Glass, C::Below, C::Escape]),
    row(K::GlassEdgeStrip, "glass-edge-strip", "an edge strip", [W::Licensed, W::Licensed], N::Yes, H::Yes, N::Ask, &[L::Permanent], F::Yes, &[C::Glass, C::Below]),
    row(K::GlassClampsReset, "glass-clamps-reset", "the clamps reset", [W::Licensed, W::Licensed], N::Yes, H::Yes, N::Ask, &[L::Permanent], F::No, &[C::Glass, C::Below]),
    row(K::GlassTopRail, "glass-top-rail", "the top edge tied to a rail", [W::Licensed, W::Licensed], N::Yes, H::Yes, N::Ask, &[L::Permanent], F::No, &[C::Glass, C::Below, C::Lever]),
    row(K::NewPane, "new-pane", "a new pane", [W::Licensed, W::Licensed], N::Yes, H::Yes, N::Yes, &[L::Permanent], F::No, &[C::Glass, C::Below, C::OpenBay]),
];

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_kind_stands_in_its_own_row_and_has_a_name_of_its_own() {
        for (index, row) in REMEDIES.iter().enumerate() {
            assert_eq!(row.kind as usize, index, "{}", row.key);
            assert_eq!(row.kind.row().key, row.key);
            let alike = REMEDIES.iter().filter(|other| other.key == row.key).count();
            assert_eq!(alike, 1, "{}", row.key);
            assert!(
                row.lasts.is_sorted() && !row.lasts.is_empty(),
                "{}",
                row.key
            );
        }
    }

    /// Nothing of tonight makes a hole for sure or waits for a permit.
    #[test]
    fn what_is_done_tonight_needs_no_permit() {
        for row in REMEDIES
            .iter()
            .filter(|row| row.lasts == [HowLong::Tonight])
        {
            assert_eq!(row.permit, Needed::No, "{}", row.key);
            assert_ne!(row.holes, MakesHoles::Yes, "{}", row.key);
        }
    }
}
