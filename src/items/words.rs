//! The words of each item that has a list, better ones first, with what else
//! they are called and the danger that a word states.

use crate::items::Item;
use crate::items::ItemWord;
use crate::items::Word;
use crate::items::danger;
use crate::items::item_word::item_words;

item_words! {
    PlaceWord of Place {
        Landing = "landing" ["hall", "hallway", "upstairs hall"],
        FloorEdge = "floor edge" ["loft", "loft edge", "gallery", "mezzanine", "mezzanine edge"],
        Stair = "stair" ["stairs", "staircase", "steps", "flight"],
        Ramp = "ramp" [],
        Deck = "deck" ["decking"],
        Terrace = "terrace" ["patio", "roof terrace", "rooftop terrace", "roof garden"],
        Balcony = "balcony" ["juliet balcony", "juliette balcony"],
        Porch = "porch" ["veranda", "verandah"],
        Roof = "roof" [],
        Window = "window" ["windows"],
        Pool = "pool" ["swimming pool"],
    }
    UseWord of Use {
        Dwelling = "dwelling" [
            "home", "house", "flat", "apartment", "residential", "one-family dwelling",
            "one family dwelling", "two-family dwelling", "two family dwelling",
            "single-family home", "single family home",
        ],
        Public = "public" ["shop", "school", "assembly"],
        Workplace = "workplace" ["work", "office", "factory"],
    }
    SharedWord of Shared {
        Yes = "yes" ["y", "true"],
        No = "no" ["n", "false"],
    }
    OwnWayOutWord of OwnWayOut {
        Yes = "yes" ["y", "true"],
        No = "no" ["n", "false"],
    }
    LocationWord of Location {
        Inside = "inside" ["indoors", "in", "interior"],
        Outside = "outside" ["outdoors", "out", "exterior"],
    }
    ReplacedWindowWord of ReplacedWindow {
        No = "no" ["n", "false"],
        Yes = "yes" ["y", "true"],
    }
    FlightShapeWord of FlightShape {
        Straight = "straight" ["straight flight"],
        Winders = "winders" ["winder", "turning steps"],
        Curved = "curved" ["bent"],
        Spiral = "spiral" ["helical", "round a post"],
    }
    HandrailWord of Handrail {
        TopOfTheGuard = "top of the guard" [
            "top", "guard", "same", "top rail", "top of guard", "top of the railing",
            "top of railing", "same as railing", "same as the railing",
        ],
        Separate = "separate" ["wall", "own"],
        None = "none" ["no", "n"],
    }
    FixedSeatWord of FixedSeat {
        No = "no" ["n", "false"],
        Yes = "yes" ["y", "true"],
    }
    HandrailSidesWord of HandrailSides {
        BothSides = "both sides" ["both", "two", "2"],
        OneSide = "one side" ["one", "1", "a side"],
    }
    HandrailShapeWord of HandrailShape {
        Round = "round" ["circular", "pipe", "dowel"],
        WithFingerGrooves = "with finger grooves" ["finger grooves", "type ii", "grooved"],
        Other = "other" ["oval", "flat", "square", "shaped"],
    }
    HandrailContinuousWord of HandrailContinuous {
        Yes = "yes" ["y", "true"],
        No = "no" ["n", "false"],
    }
    HandrailEndsWord of HandrailEnds {
        Returned = "returned" ["bent to the wall", "turned to the wall", "turned to the floor"],
        AtAPost = "at a post" ["post", "newel", "at a newel"],
        Free = "free" ["open", "just stop"],
    }
    RampEdgeWord of RampEdge {
        Wall = "wall" ["parapet"],
        Kerb = "kerb" ["curb", "upstand"],
        LowRail = "low rail" ["rail", "bar"],
        None = "none" ["no", "n", "nothing"],
    }
    LevelMembersOnWord of LevelMembersOn {
        None = "none" ["no", "n"],
        Outside = "outside" ["out", "far side"],
        Inside = "inside" ["in", "near side"],
        BothSides = "both sides" ["both", "in the middle"],
    }
    StateWord of State {
        Existing = "existing" ["built", "there"],
        Altered = "altered" ["after the work", "to be changed"],
        Proposed = "proposed" ["planned", "drawn", "to be built"],
    }
    GuardWord of Guard {
        Present = "present" ["yes", "y", "there"],
        None = "none" ["no", "n", "missing"] NO_RAILING,
    }
    OpeningsCheckedWord of OpeningsChecked {
        EveryOne = "every one" ["all", "every", "everyone", "each"],
        Some = "some" ["a few", "several"],
        One = "one" ["1", "only one"],
    }
    InfillWord of Infill {
        Solid = "solid" ["wall", "boards", "closed"],
        Panel = "panel" ["panels"],
        Glass = "glass" ["glazing", "acrylic"],
        Balusters = "balusters" ["baluster", "spindles", "spindle", "pickets", "vertical bars", "upright bars"],
        Mesh = "mesh" ["wire mesh", "perforated sheet", "lattice"],
        Other = "other" ["scrollwork", "castings"],
        UprightCables = "upright cables" ["vertical cables", "vertical wires"],
        Net = "net" ["netting", "rope net"],
        Cables = "cables" ["cable", "wires", "wire", "horizontal cables", "level cables"],
        HorizontalBars = "horizontal bars" ["horizontal rails", "rails", "level bars", "horizontal boards", "ladder rails"],
    }
    InfillLooseWord of InfillLoose {
        No = "no" ["none", "n", "tight"],
        One = "one" ["1"],
        Several = "several" ["some", "many"],
        Missing = "missing" ["one missing", "gone", "broken out"] MISSING_INFILL,
    }
    PostFasteningWord of PostFastening {
        ThroughBolts = "through bolts" ["bolts", "bolt", "bolted", "carriage bolts", "through bolted"],
        Embedded = "embedded" ["cast in", "set in concrete", "grouted in"],
        Welded = "welded" ["weld"],
        Plate = "plate" ["base plate", "flange"],
        Bracket = "bracket" ["brackets", "post bracket"],
        MasonryAnchors = "masonry anchors" ["anchors", "anchor bolts", "expansion anchors"],
        LagScrews = "lag screws" ["lags", "lag bolts", "coach screws"],
        WoodScrews = "wood screws" ["screws", "screwed"],
        CentralRod = "central rod" ["rod", "hanger bolt"],
        Other = "other" [],
        Hidden = "hidden" ["cannot see"],
        HalfWall = "half wall" ["studs of a half wall", "half-wall studs"],
        Nails = "nails" ["nailed", "nail"],
        Missing = "missing" ["gone", "not fastened"] POSTS_NOT_FASTENED,
    }
    NotchedPostWord of NotchedPost {
        No = "no" ["n", "false"],
        Yes = "yes" ["y", "true"],
    }
    FastenedToWord of FastenedTo {
        Concrete = "concrete" ["slab"],
        Masonry = "masonry" ["brick", "stone"],
        Joist = "joist" ["joists", "beam"],
        Blocking = "blocking" [],
        Stud = "stud" ["studs"],
        RimBoard = "rim board" ["rim", "rim joist", "band board"],
        Decking = "decking" ["deck boards", "decking boards"],
        Subfloor = "subfloor" ["floor boards", "floorboards"],
        Hidden = "hidden" ["cannot see"],
        DrywallOnly = "drywall only" ["drywall", "plasterboard", "plasterboard only"],
    }
    MovesWhenPushedWord of MovesWhenPushed {
        No = "no" ["n", "none", "firm"],
        ALittle = "a little" ["little", "slightly", "some", "a bit"],
        ALot = "a lot" ["lot", "much", "loose"] MOVES_A_LOT,
    }
    TopOfStairsGateWord of TopOfStairsGate {
        Screwed = "screwed" ["screwed to the wall", "hardware mounted", "hardware-mounted"],
        Pressed = "pressed" ["pressure", "pressure mounted", "pressure-mounted", "pressure fit"],
        None = "none" ["no", "n"],
    }
    BottomOfStairsGateWord of BottomOfStairsGate {
        Screwed = "screwed" ["screwed to the wall", "hardware mounted", "hardware-mounted"],
        Pressed = "pressed" ["pressure", "pressure mounted", "pressure-mounted", "pressure fit"],
        None = "none" ["no", "n"],
    }
    GateClosesItselfWord of GateClosesItself {
        Yes = "yes" ["y", "true"],
        No = "no" ["n", "false"],
    }
    GateOpensWord of GateOpens {
        Away = "away" ["outward", "outwards", "over the landing"],
        BothWays = "both ways" ["both"],
        Towards = "towards" ["inward", "inwards", "over the stairs"],
    }
    WindowStopWord of WindowStop {
        Holds = "holds" ["fixed stop", "locked stop"],
        ComesUndone = "comes undone" ["slips", "child can undo it"] STOP_COMES_UNDONE,
        None = "none" ["no", "n"],
    }
    PaintWord of Paint {
        Sound = "sound" ["good", "fine", "unpainted", "none"],
        Flaking = "flaking" ["peeling", "chipped", "chalking", "worn"],
    }
    TapeWord of Tape {
        ClassOne = "class I" ["class i", "class 1", "1", "i"],
        ClassTwo = "class II" ["class ii", "class 2", "2", "ii"],
        ClassThree = "class III" ["class iii", "class 3", "3", "iii"],
        Handbook44 = "handbook 44" ["nist handbook 44", "hb44"],
    }
    DefaultUnitWord of DefaultUnit {
        Inch = "in" ["inch", "inches"],
        Foot = "ft" ["foot", "feet"],
        Millimetre = "mm" ["millimetre", "millimetres", "millimeter", "millimeters"],
        Centimetre = "cm" ["centimetre", "centimetres", "centimeter", "centimeters"],
        Metre = "m" ["metre", "metres", "meter", "meters"],
    }
    PostMaterialWord of PostMaterial {
        Wood = "wood" ["timber", "lumber", "wooden"],
        SteelPipe = "steel pipe" ["pipe", "round steel tube"],
        SteelTube = "steel tube" ["square steel tube"],
        StainlessPipe = "stainless pipe" ["round stainless tube"],
        StainlessTube = "stainless tube" ["square stainless tube"],
        AluminiumTube = "aluminium tube" ["aluminium", "aluminum", "aluminum tube"],
        Iron = "iron" ["cast iron", "wrought iron"],
        Plastic = "plastic" ["composite", "vinyl", "pvc"],
        Other = "other" [],
    }
    WoodSpeciesWord of WoodSpecies {
        SouthernPine = "southern pine" ["syp", "yellow pine"],
        DouglasFirLarch = "douglas fir-larch" ["douglas fir", "df-l", "fir"],
        HemFir = "hem-fir" ["hemlock"],
        SprucePineFir = "spruce-pine-fir" ["spf", "spruce"],
        SprucePineFirSouth = "spruce-pine-fir south" ["spf south"],
        Redwood = "redwood" ["sequoia"],
        Cedar = "cedar" ["western cedar", "western red cedar"],
        UnknownWood = "unknown wood" ["do not know", "wood", "treated wood"],
    }
    FramingHeldByWord of FramingHeldBy {
        TiesAtBothBolts = "ties at both bolts" ["ties at both", "hold-downs at both bolts"],
        TieAtTheUpperBolt = "tie at the upper bolt" ["hold-down at the upper bolt", "tie at the top bolt"],
        TensionTie = "tension tie" ["hold-down", "holdown", "hold down", "tie"],
        Blocking = "blocking" ["blocked", "blocks", "between joists"],
        Hangers = "hangers" ["joist hangers", "hanger"],
        Hidden = "hidden" ["cannot see"],
        TieAtTheLowerBolt = "tie at the lower bolt" ["hold-down at the lower bolt", "tie at the bottom bolt"],
        ScrewsIntoEndGrain = "screws into end grain" ["screws", "end screws"],
        NailsIntoEndGrain = "nails into end grain" ["nails", "end nails", "nailed", "toe nails"],
    }
    RailEndFasteningWord of RailEndFastening {
        BoltsThroughAPost = "bolts through a post" ["bolts", "through bolts"],
        Welded = "welded" ["weld"],
        LetIntoThePost = "let into the post" ["housed", "mortised"],
        ScrewsIntoAPost = "screws into a post" [],
        ScrewsIntoAStud = "screws into a stud" ["stud", "studs"],
        Bracket = "bracket" ["brackets"],
        MasonryAnchors = "masonry anchors" ["anchors", "anchor bolts"],
        Hidden = "hidden" ["cannot see"],
        Nails = "nails" ["nailed", "toe nails"],
        HollowWallAnchor = "hollow-wall anchor" ["hollow wall anchor", "toggle", "toggle bolt", "wall plug", "drywall anchor", "molly"],
    }
    BalusterFixingWord of BalusterFixing {
        Welded = "welded" ["weld"],
        LetIn = "let in" ["mortised", "grooved", "in holes"],
        Screws = "screws" ["screwed", "screw"],
        Nails = "nails" ["toe nails", "nailed", "nail"],
        Brackets = "brackets" ["bracket", "clips", "connectors"],
        Hidden = "hidden" ["cannot see"],
        BradsOrGlue = "brads or glue" ["brads", "glue", "glued", "pins"],
    }
    ConditionWord of Condition {
        Sound = "sound" [],
        NoneSeen = "none seen" ["none", "nothing seen", "no", "n", "good", "fine", "ok"],
        Dry = "dry" ["always dry"],
        Wet = "wet" ["damp", "often wet"],
        SurfaceRust = "surface rust" ["rust", "rust stain", "corrosion"],
        Cracks = "cracks" ["cracked", "splits", "split"] CRACKS,
        DeepRust = "deep rust" ["rust scale", "rusted through"] DEEP_RUST,
        BrokenGlass = "broken glass" ["cracked glass", "glass broken"] BROKEN_GLASS,
        Rot = "rot" ["rotten", "decay", "soft wood"] ROT,
    }
    RailPositionWord of RailPosition {
        LetIn = "let in" ["let into the posts", "housed", "in a notch"],
        InsideFace = "inside face" ["on the inside", "inside"],
        OnTop = "on top" ["on the posts", "cap", "on top of the posts"],
        BetweenPosts = "between posts" ["between the posts", "between"],
        OutsideFace = "outside face" ["on the outside", "outside"],
        Hidden = "hidden" ["cannot see"],
    }
    PostPositionWord of PostPosition {
        OutsideTheRim = "outside the rim" ["outside", "outside the framing"],
        InsideTheRim = "inside the rim" ["inside", "inside the framing"],
        SideOfAJoist = "side of a joist" ["flat on a joist", "beside a joist"],
        OnTopOfTheFloor = "on top of the floor" ["on top", "on the floor"],
        ThroughTheFloor = "through the floor" ["through"],
        Hidden = "hidden" ["cannot see"],
    }
    BehindThePostWord of BehindThePost {
        Nothing = "nothing" ["wood on wood", "tight", "no gap"],
        Siding = "siding" ["cladding", "stucco", "sheathing"],
        Spacers = "spacers" ["spacer", "washers", "packing"],
        Gap = "gap" ["open gap", "a gap"],
        Hidden = "hidden" ["cannot see"],
    }
    LumberGradeWord of LumberGrade {
        NumberOne = "no. 1" ["no 1", "number 1", "1"],
        NumberTwo = "no. 2" ["no 2", "number 2", "2", "no. 2 & better"],
        Stud = "stud" ["stud grade"],
        NumberThree = "no. 3" ["no 3", "number 3", "3"],
        Standard = "standard" ["stand", "standard & better", "std"],
        UnknownGrade = "unknown grade" ["no stamp"],
    }
    RowsOfSlitsWord of RowsOfSlits {
        No = "no" ["n", "none", "smooth"],
        Yes = "yes" ["y", "slits", "incised"],
    }
}

impl InfillWord {
    /// Whether it cannot be without gaps: bars that stand apart, cables, mesh.
    #[must_use]
    pub const fn has_gaps(self) -> bool {
        match self {
            InfillWord::Balusters
            | InfillWord::Cables
            | InfillWord::HorizontalBars
            | InfillWord::Mesh
            | InfillWord::Net
            | InfillWord::UprightCables => true,
            InfillWord::Glass | InfillWord::Other | InfillWord::Panel | InfillWord::Solid => false,
        }
    }

    /// Whether it spreads under a push, so that a tape alone can prove only a shortfall.
    #[must_use]
    pub const fn gives_way(self) -> bool {
        match self {
            InfillWord::Cables | InfillWord::Net | InfillWord::UprightCables => true,
            InfillWord::Balusters
            | InfillWord::Glass
            | InfillWord::HorizontalBars
            | InfillWord::Mesh
            | InfillWord::Other
            | InfillWord::Panel
            | InfillWord::Solid => false,
        }
    }
}
