//! The measuring drawings, as data. How each thing is measured: the items table
//! (common practice, no source, unless named there).

use crate::items::At;
use crate::items::DimensionEnds;
use crate::items::DrawingScene;
use crate::items::Mark;
use crate::items::Mark::{Label, Rail, Solid};

const fn at(x: i32, y: i32) -> At {
    At { x, y }
}

const fn baluster(x: i32, first: i32, last: i32) -> Mark {
    Mark::Baluster {
        x,
        rows: (first, last),
    }
}

const fn post(x: i32, first: i32, last: i32) -> Mark {
    Mark::Post {
        x,
        rows: (first, last),
    }
}

/// MeasuredBetween two faces.
const fn span(from: At, to: At) -> Mark {
    Mark::Span(from, to, DimensionEnds::Faces)
}

pub(super) const HEIGHT: DrawingScene = DrawingScene {
    caption: "The tape stands plumb on the walking surface and is read at the top edge of the rail, where the rail is lowest.",
    columns: 38,
    rows: 10,
    marks: &[
        Solid(at(0, 9), at(37, 9)),
        post(2, 1, 8),
        post(34, 1, 8),
        Rail(at(3, 1), at(18, 2)),
        Rail(at(18, 2), at(33, 1)),
        span(at(18, 2), at(18, 8)),
        Label(at(12, 0), "lowest place"),
        Label(at(20, 5), "plumb"),
    ],
};

pub(super) const HEIGHT_ON_STAIR: DrawingScene = DrawingScene {
    caption: "On a stair the tape stands plumb on the nose of a step, and is read at the top edge of the rail.",
    columns: 32,
    rows: 13,
    marks: &[
        Solid(at(4, 11), at(9, 12)),
        Solid(at(10, 9), at(15, 12)),
        Solid(at(16, 7), at(21, 12)),
        Solid(at(22, 5), at(31, 12)),
        Rail(at(1, 7), at(22, 0)),
        span(at(10, 4), at(10, 8)),
        Label(at(0, 0), "from the nose"),
        Label(at(12, 6), "plumb"),
    ],
};

pub(super) const HANDRAIL_HEIGHT: DrawingScene = DrawingScene {
    caption: "Plumb from the nose of a step to the top of the handrail, once where it is lowest and once where it is highest.",
    columns: 36,
    rows: 13,
    marks: &[
        Solid(at(4, 11), at(9, 12)),
        Solid(at(10, 9), at(15, 12)),
        Solid(at(16, 7), at(21, 12)),
        Solid(at(22, 5), at(35, 12)),
        Rail(at(4, 6), at(22, 0)),
        span(at(4, 6), at(4, 10)),
        span(at(22, 0), at(22, 4)),
        Label(at(0, 0), "handrail"),
        Label(at(24, 2), "plumb"),
    ],
};

pub(super) const DROP: DrawingScene = DrawingScene {
    caption: "From the walking surface at the edge plumb down to the deepest place up to 36 in out from the edge.",
    columns: 40,
    rows: 12,
    marks: &[
        Solid(at(0, 4), at(15, 4)),
        post(14, 0, 3),
        Solid(at(0, 9), at(22, 11)),
        Solid(at(23, 11), at(31, 11)),
        Solid(at(32, 9), at(39, 11)),
        Mark::Dots(at(16, 4), at(30, 4)),
        span(at(16, 2), at(30, 2)),
        Label(at(17, 1), "36 in out"),
        span(at(27, 4), at(27, 10)),
        Label(at(29, 7), "deepest"),
    ],
};

pub(super) const BALL: DrawingScene = DrawingScene {
    caption: "A ball of the size asked for is held against a hole: it stops, or it passes; try every hole.",
    columns: 34,
    rows: 10,
    marks: &[
        Rail(at(1, 0), at(32, 0)),
        Rail(at(1, 9), at(32, 9)),
        baluster(4, 1, 8),
        baluster(12, 1, 8),
        baluster(20, 1, 8),
        baluster(28, 1, 8),
        Mark::Ball {
            at: at(16, 4),
            across: 9,
        },
        Label(at(14, 4), "ball"),
    ],
};

pub(super) const TAPE: DrawingScene = DrawingScene {
    caption: "The tape lies square between the faces of two balusters at the widest gap, at its top, middle and bottom.",
    columns: 34,
    rows: 10,
    marks: &[
        Rail(at(1, 0), at(32, 0)),
        Rail(at(1, 9), at(32, 9)),
        baluster(3, 1, 8),
        baluster(9, 1, 8),
        baluster(21, 1, 8),
        baluster(27, 1, 8),
        span(at(10, 2), at(20, 2)),
        span(at(10, 5), at(20, 5)),
        span(at(10, 8), at(20, 8)),
        Label(at(12, 3), "widest"),
    ],
};

pub(super) const RAKED_GAP: DrawingScene = DrawingScene {
    caption: "On a stair the gap is measured level, square to the upright balusters, and not along the sloping rail.",
    columns: 36,
    rows: 13,
    marks: &[
        Rail(at(2, 7), at(30, 0)),
        Rail(at(2, 12), at(30, 5)),
        baluster(6, 7, 10),
        baluster(14, 5, 8),
        baluster(22, 3, 6),
        span(at(7, 7), at(13, 7)),
        Label(at(16, 6), "level"),
    ],
};

pub(super) const BOTTOM_GAP: DrawingScene = DrawingScene {
    caption: "From the walking surface up to the underside of the bottom rail, where the gap is highest.",
    columns: 36,
    rows: 10,
    marks: &[
        Solid(at(0, 8), at(11, 9)),
        Solid(at(12, 9), at(23, 9)),
        Solid(at(24, 8), at(35, 9)),
        baluster(6, 0, 3),
        baluster(14, 0, 3),
        baluster(22, 0, 3),
        baluster(30, 0, 3),
        Rail(at(1, 4), at(34, 4)),
        span(at(16, 5), at(16, 8)),
        Label(at(18, 6), "highest place"),
    ],
};

pub(super) const END_GAP: DrawingScene = DrawingScene {
    caption: "From the end of the guard level to the wall or post, at the widest place.",
    columns: 34,
    rows: 10,
    marks: &[
        Solid(at(0, 0), at(2, 4)),
        Solid(at(0, 5), at(3, 8)),
        Solid(at(0, 9), at(33, 9)),
        post(11, 2, 8),
        baluster(18, 3, 6),
        baluster(25, 3, 6),
        Rail(at(12, 2), at(33, 2)),
        Rail(at(12, 7), at(33, 7)),
        span(at(3, 3), at(10, 3)),
        Label(at(4, 0), "widest place"),
    ],
};

pub(super) const EDGE_GAP: DrawingScene = DrawingScene {
    caption: "Seen from its end: level from the edge of the floor to the inner face of a guard that is fixed outside it.",
    columns: 36,
    rows: 9,
    marks: &[
        Solid(at(0, 5), at(12, 7)),
        Solid(at(13, 7), at(17, 7)),
        post(18, 0, 8),
        span(at(13, 5), at(17, 5)),
        Label(at(20, 5), "level"),
        Label(at(2, 3), "floor"),
        Label(at(20, 1), "guard"),
    ],
};

pub(super) const STAIR_TRIANGLE: DrawingScene = DrawingScene {
    caption: "Rise is plumb from tread to tread, going is level from nose to nose, and lift is plumb from the line of the noses up to the underside of the bottom rail.",
    columns: 36,
    rows: 14,
    marks: &[
        Solid(at(2, 12), at(13, 13)),
        Solid(at(14, 8), at(25, 13)),
        Solid(at(26, 4), at(35, 13)),
        Mark::Dots(at(2, 12), at(26, 4)),
        Rail(at(2, 9), at(29, 0)),
        span(at(13, 8), at(13, 11)),
        Label(at(8, 11), "rise"),
        span(at(14, 7), at(25, 7)),
        Label(at(17, 7), "going"),
        span(at(26, 2), at(26, 3)),
        Label(at(28, 2), "lift"),
    ],
};

pub(super) const RISER_OPENING: DrawingScene = DrawingScene {
    caption: "Plumb from the top of one tread up to the underside of the next.",
    columns: 34,
    rows: 10,
    marks: &[
        Solid(at(1, 9), at(14, 9)),
        Solid(at(12, 5), at(24, 5)),
        Solid(at(22, 1), at(33, 1)),
        span(at(13, 6), at(13, 8)),
        Label(at(15, 7), "plumb"),
    ],
};

pub(super) const FOOTHOLD: DrawingScene = DrawingScene {
    caption: "Seen from its end: how high the top of the ledge is above the walking surface, and how deep a foot can stand on it.",
    columns: 34,
    rows: 10,
    marks: &[
        Solid(at(0, 9), at(33, 9)),
        post(18, 0, 8),
        Solid(at(13, 5), at(17, 5)),
        span(at(10, 5), at(10, 8)),
        Label(at(5, 7), "high"),
        span(at(13, 3), at(17, 3)),
        Label(at(7, 3), "deep"),
        Label(at(20, 1), "guard"),
    ],
};

pub(super) const THING_TO_CLIMB: DrawingScene = DrawingScene {
    caption: "How high the thing stands above the walking surface, and how far it is from the guard.",
    columns: 34,
    rows: 9,
    marks: &[
        Solid(at(0, 8), at(33, 8)),
        Mark::Box(at(8, 4), at(15, 7)),
        post(26, 0, 7),
        span(at(6, 4), at(6, 7)),
        Label(at(1, 6), "high"),
        span(at(16, 5), at(25, 5)),
        Label(at(19, 4), "away"),
        Label(at(28, 1), "guard"),
    ],
};

pub(super) const SOLID_PART: DrawingScene = DrawingScene {
    caption: "Seen from its end: how high the solid part is, and how wide its top is from the inner face to whatever stands on it.",
    columns: 34,
    rows: 10,
    marks: &[
        Solid(at(0, 9), at(33, 9)),
        Solid(at(14, 4), at(22, 8)),
        post(20, 0, 3),
        span(at(11, 4), at(11, 8)),
        Label(at(6, 6), "high"),
        span(at(14, 2), at(19, 2)),
        Label(at(9, 2), "wide"),
    ],
};

pub(super) const POST_SPACING: DrawingScene = DrawingScene {
    caption: "Along the rail from the middle of one post to the middle of the next, at the widest bay.",
    columns: 36,
    rows: 9,
    marks: &[
        Solid(at(0, 8), at(35, 8)),
        post(4, 1, 7),
        post(30, 1, 7),
        Rail(at(1, 1), at(34, 1)),
        Mark::Span(at(4, 4), at(30, 4), DimensionEnds::Centres),
        Label(at(9, 5), "middle to middle"),
    ],
};

pub(super) const POST_SECTION: DrawingScene = DrawingScene {
    caption: "A post, rail or baluster seen from its end: across both of its faces.",
    columns: 34,
    rows: 8,
    marks: &[
        Mark::Box(at(10, 0), at(19, 5)),
        Label(at(13, 2), "end"),
        span(at(10, 7), at(19, 7)),
        span(at(22, 0), at(22, 5)),
        Label(at(24, 2), "both ways"),
    ],
};

pub(super) const SILL: DrawingScene = DrawingScene {
    caption: "A window seen from its end: plumb from the floor inside, and from the ground outside, to the lowest edge of what opens.",
    columns: 36,
    rows: 13,
    marks: &[
        Solid(at(15, 0), at(18, 1)),
        Solid(at(15, 5), at(18, 11)),
        Solid(at(0, 9), at(14, 9)),
        Solid(at(0, 12), at(35, 12)),
        span(at(12, 5), at(12, 8)),
        span(at(21, 5), at(21, 11)),
        Mark::Dots(at(19, 5), at(22, 5)),
        Mark::Dots(at(11, 5), at(14, 5)),
        Label(at(3, 3), "inside"),
        Label(at(23, 3), "outside"),
        Label(at(5, 7), "floor"),
        Label(at(23, 9), "ground"),
    ],
};

pub(super) const V_OPENING: DrawingScene = DrawingScene {
    caption: "Wide is level at the top of the opening, deep is plumb from there down to where its sides meet.",
    columns: 36,
    rows: 10,
    marks: &[
        Rail(at(4, 1), at(17, 9)),
        Rail(at(18, 9), at(31, 1)),
        span(at(5, 0), at(30, 0)),
        Mark::Dots(at(6, 1), at(29, 1)),
        span(at(17, 2), at(17, 8)),
        Label(at(20, 3), "deep"),
        Label(at(14, 0), "wide"),
    ],
};

pub(super) const ABOVE_A_SEAT: DrawingScene = DrawingScene {
    caption: "Seen from its end: plumb from the seat or ledge to the top of the guard, and level across that top.",
    columns: 36,
    rows: 10,
    marks: &[
        Solid(at(0, 9), at(35, 9)),
        Mark::Box(at(9, 6), at(17, 8)),
        Solid(at(19, 2), at(23, 8)),
        Mark::Dots(at(13, 2), at(18, 2)),
        span(at(14, 2), at(14, 5)),
        Label(at(2, 4), "above it"),
        span(at(19, 0), at(23, 0)),
        Label(at(25, 0), "thick"),
        Label(at(11, 7), "seat"),
        Label(at(26, 5), "guard"),
    ],
};

pub(super) const BEYOND_THE_STEP: DrawingScene = DrawingScene {
    caption: "Level from the nose of the last step to the end of the handrail.",
    columns: 38,
    rows: 13,
    marks: &[
        Solid(at(4, 11), at(9, 12)),
        Solid(at(10, 9), at(15, 12)),
        Solid(at(16, 7), at(37, 12)),
        Rail(at(4, 6), at(16, 2)),
        Rail(at(16, 2), at(27, 2)),
        span(at(16, 5), at(27, 5)),
        Label(at(29, 5), "beyond"),
        Label(at(0, 1), "handrail"),
    ],
};

pub(super) const FLIGHT_WIDTH: DrawingScene = DrawingScene {
    caption: "Seen from above: level along the front edge of a tread, from one of its ends to the other.",
    columns: 36,
    rows: 9,
    marks: &[
        Solid(at(0, 0), at(2, 8)),
        Solid(at(33, 0), at(35, 8)),
        Rail(at(3, 1), at(32, 1)),
        Rail(at(3, 4), at(32, 4)),
        Rail(at(3, 7), at(32, 7)),
        span(at(3, 5), at(32, 5)),
        Label(at(14, 2), "tread"),
    ],
};

pub(super) const FROM_THE_WALL: DrawingScene = DrawingScene {
    caption: "A handrail seen from its end: clear between the wall and the handrail, and across the handrail where it is thickest.",
    columns: 36,
    rows: 9,
    marks: &[
        Solid(at(0, 0), at(3, 8)),
        Mark::Box(at(13, 2), at(20, 5)),
        span(at(4, 3), at(12, 3)),
        Label(at(6, 1), "room"),
        span(at(13, 7), at(20, 7)),
        Label(at(22, 7), "thick"),
        Label(at(22, 3), "handrail"),
    ],
};

pub(super) const LATCH: DrawingScene = DrawingScene {
    caption: "Plumb from the ground or floor to the knob or lever that opens the gate.",
    columns: 40,
    rows: 10,
    marks: &[
        Solid(at(0, 9), at(39, 9)),
        post(4, 0, 8),
        post(26, 0, 8),
        Mark::Box(at(6, 1), at(22, 8)),
        Solid(at(23, 3), at(25, 3)),
        Mark::Dots(at(27, 3), at(30, 3)),
        span(at(29, 3), at(29, 8)),
        Label(at(31, 6), "plumb"),
        Label(at(28, 1), "latch"),
        Label(at(12, 5), "gate"),
    ],
};

pub(super) const RAMP: DrawingScene = DrawingScene {
    caption: "Slope is plumb below the lower end of a level board 1 m long, and rise is plumb from the floor at the head down to the level of the foot.",
    columns: 48,
    rows: 11,
    marks: &[
        Rail(at(1, 9), at(34, 3)),
        Solid(at(35, 3), at(37, 9)),
        Solid(at(0, 10), at(47, 10)),
        Mark::Box(at(8, 4), at(28, 4)),
        span(at(8, 5), at(8, 7)),
        Label(at(1, 6), "slope"),
        Label(at(13, 2), "level, 1 m"),
        Mark::Dots(at(38, 3), at(42, 3)),
        span(at(41, 3), at(41, 9)),
        Label(at(43, 6), "rise"),
    ],
};

pub(super) const TREAD_THICKNESS: DrawingScene = DrawingScene {
    caption: "Plumb from the top of a tread to its underside, at its front edge.",
    columns: 34,
    rows: 8,
    marks: &[
        Solid(at(22, 0), at(33, 1)),
        Solid(at(10, 4), at(25, 6)),
        Mark::Dots(at(5, 4), at(9, 4)),
        span(at(7, 4), at(7, 6)),
        Label(at(1, 5), "thick"),
    ],
};
