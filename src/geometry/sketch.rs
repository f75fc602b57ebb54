//! An opening as lines to draw, and the lengths to write beside them.

use crate::geometry::Across;
use crate::geometry::Balusters;
use crate::geometry::Cables;
use crate::geometry::Corner;
use crate::geometry::RakedBay;
use crate::geometry::Risers;
use crate::geometry::Shape;
use crate::geometry::StairTriangle;
use crate::geometry::TurnedPair;
use crate::geometry::turned::ProfileEnds;
use crate::quantities::Length;

/// A piece of a drawing, in millimetres, across and up.
#[derive(Clone, Debug, PartialEq)]
pub enum SketchPart {
    /// A line along something solid.
    Edge(Vec<Corner>),
    /// A part of the opening; its edges are drawn apart.
    Hole(Vec<Corner>),
    /// A solid member by its corners.
    Member(Vec<Corner>),
    /// A round hole by its middle and its diameter.
    Round(Corner, Length),
}

/// A length as it was measured, and the two places between which it was.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Dimension {
    /// One end; the text stands to the right of the way to the other.
    pub from: Corner,
    /// The other end.
    pub to: Corner,
    /// How long it is.
    pub length: Length,
    /// What it is, where that is not plain.
    pub name: &'static str,
}

/// What to draw of an opening. What goes on is drawn for a stretch.
#[derive(Clone, Debug, PartialEq)]
pub struct Sketch {
    /// The pieces, those behind first.
    pub parts: Vec<SketchPart>,
    /// The lengths.
    pub dimensions: Vec<Dimension>,
    /// A place for the ball, where many are as good.
    pub middle: Corner,
}

impl Shape {
    /// What to draw, in the coordinates of [`Shape::largest_ball`].
    #[must_use]
    pub fn sketch(&self) -> Sketch {
        match self {
            Shape::Cables(run) => cables(run),
            Shape::Circle { diameter } => round(*diameter),
            Shape::Polygon(outline) => polygon(outline.corners()),
            Shape::Raked(bay) => raked(bay),
            Shape::Rectangle { width, height } => rectangle(*width, *height),
            Shape::Slot { width } => slot(*width),
            Shape::Triangle { rise, run } => triangle(*rise, *run),
            Shape::Turned(pair) => turned(pair),
        }
    }
}

fn at(x_mm: f64, y_mm: f64) -> Corner {
    Corner { x_mm, y_mm }
}

/// From nanometres.
fn millimetres(corner: Corner) -> Corner {
    at(corner.x_mm / 1e6, corner.y_mm / 1e6)
}

fn mm(length: Length) -> f64 {
    length.millimetres_as_float()
}

fn dimension(from: Corner, to: Corner, length: Length) -> Dimension {
    Dimension {
        from,
        to,
        length,
        name: "",
    }
}

fn named_dimension(name: &'static str, from: Corner, to: Corner, length: Length) -> Dimension {
    Dimension {
        from,
        to,
        length,
        name,
    }
}

/// A closed outline: the hole and the edge round it.
fn closed(corners: Vec<Corner>) -> Vec<SketchPart> {
    let mut edge = corners.clone();
    edge.extend(corners.first().copied());
    vec![SketchPart::Hole(corners), SketchPart::Edge(edge)]
}

fn round(diameter: Length) -> Sketch {
    let half = mm(diameter) / 2.0;
    Sketch {
        parts: vec![SketchPart::Round(Corner::ORIGIN, diameter)],
        dimensions: vec![dimension(at(-half, -half), at(half, -half), diameter)],
        middle: Corner::ORIGIN,
    }
}

fn polygon(corners: &[Corner]) -> Sketch {
    let least = |v: fn(&Corner) -> f64| corners.iter().map(v).fold(f64::INFINITY, f64::min);
    let most = |v: fn(&Corner) -> f64| corners.iter().map(v).fold(f64::NEG_INFINITY, f64::max);
    let (left, right) = (least(|c| c.x_mm), most(|c| c.x_mm));
    let (low, high) = (least(|c| c.y_mm), most(|c| c.y_mm));
    let length = |size: f64| Length::from_nanometres_rounded(size * 1e6);
    Sketch {
        parts: closed(corners.to_vec()),
        dimensions: vec![
            dimension(at(left, low), at(right, low), length(right - left)),
            dimension(at(right, low), at(right, high), length(high - low)),
        ],
        middle: at((left + right) / 2.0, (low + high) / 2.0),
    }
}

fn rectangle(width: Length, height: Length) -> Sketch {
    let (w, h) = (mm(width), mm(height));
    Sketch {
        parts: closed(vec![at(0.0, 0.0), at(w, 0.0), at(w, h), at(0.0, h)]),
        dimensions: vec![
            dimension(at(0.0, 0.0), at(w, 0.0), width),
            dimension(at(w, 0.0), at(w, h), height),
        ],
        middle: at(w / 2.0, h / 2.0),
    }
}

fn slot(width: Length) -> Sketch {
    let (w, h) = (mm(width), 2.5 * mm(width));
    Sketch {
        parts: vec![
            SketchPart::Hole(vec![at(0.0, 0.0), at(w, 0.0), at(w, h), at(0.0, h)]),
            SketchPart::Edge(vec![at(0.0, 0.0), at(0.0, h)]),
            SketchPart::Edge(vec![at(w, 0.0), at(w, h)]),
        ],
        dimensions: vec![dimension(at(0.0, 0.0), at(w, 0.0), width)],
        middle: at(w / 2.0, h / 2.0),
    }
}

fn triangle(rise: Length, run: Length) -> Sketch {
    let (r, g) = (mm(rise), mm(run));
    Sketch {
        parts: closed(vec![at(0.0, 0.0), at(g, 0.0), at(0.0, r)]),
        dimensions: vec![
            dimension(at(0.0, 0.0), at(g, 0.0), run),
            dimension(at(0.0, r), at(0.0, 0.0), rise),
        ],
        middle: at(g / 3.0, r / 3.0),
    }
}

/// A stretch of three, the ball in the lower gap.
fn cables(run: &Cables) -> Sketch {
    let (spacing, thick) = (mm(run.spacing()), mm(run.diameter()));
    let wide = 3.0 * spacing;
    let bar = |middle: f64| {
        let (low, high) = (middle - thick / 2.0, middle + thick / 2.0);
        SketchPart::Member(vec![
            at(0.0, low),
            at(wide, low),
            at(wide, high),
            at(0.0, high),
        ])
    };
    let hole = |low: f64| {
        let (low, high) = (low + thick / 2.0, low + spacing - thick / 2.0);
        SketchPart::Hole(vec![
            at(0.0, low),
            at(wide, low),
            at(wide, high),
            at(0.0, high),
        ])
    };
    Sketch {
        parts: vec![
            hole(0.0),
            hole(spacing),
            bar(0.0),
            bar(spacing),
            bar(2.0 * spacing),
        ],
        dimensions: vec![
            named_dimension("spacing", at(wide, 0.0), at(wide, spacing), run.spacing()),
            named_dimension(
                "gap",
                at(wide, spacing + thick / 2.0),
                at(wide, 2.0 * spacing - thick / 2.0),
                run.at_rest(),
            ),
        ],
        middle: at(wide / 2.0, spacing / 2.0),
    }
}

fn raked(bay: &RakedBay) -> Sketch {
    // without a height, drawn for a stretch
    let taken = bay.high.unwrap_or(bay.gap + bay.gap + bay.gap);
    let [left, right, top_right, top_left] = bay.outline(taken).map(millimetres);
    let beside = |share: f64| {
        let along = |from: f64, to: f64| from + (to - from) * share;
        at(
            along(left.x_mm, top_left.x_mm),
            along(left.y_mm, top_left.y_mm),
        )
    };
    let mut parts = vec![
        SketchPart::Hole(vec![left, right, top_right, top_left]),
        SketchPart::Edge(vec![top_left, left, right, top_right]),
    ];
    if bay.high.is_some() {
        parts.push(SketchPart::Edge(vec![top_left, top_right]));
    }
    let gap = match bay.across {
        Across::Along => named_dimension("along the rail", left, right, bay.gap),
        Across::Level => {
            let from = match bay.balusters {
                Balusters::Plumb => left,
                // a level tape meets the other baluster so much nearer to its foot
                Balusters::Square => beside((right.y_mm / top_left.y_mm).clamp(0.25, 1.0)),
            };
            named_dimension(
                "level",
                from,
                at(from.x_mm + mm(bay.gap), from.y_mm),
                bay.gap,
            )
        }
    };
    let mut dimensions = vec![gap];
    if let (Some(high), Balusters::Plumb) = (bay.high, bay.balusters) {
        dimensions.push(named_dimension("plumb", right, top_right, high));
    }
    Sketch {
        parts,
        dimensions,
        middle: at(
            (left.x_mm + top_right.x_mm) / 2.0,
            (left.y_mm + top_right.y_mm) / 2.0,
        ),
    }
}

fn turned(pair: &TurnedPair) -> Sketch {
    let hole: Vec<Corner> = pair
        .outline(ProfileEnds::Closed)
        .into_iter()
        .map(millimetres)
        .collect();
    let axis = mm(pair.centres());
    let baluster = |axis: f64| {
        let right = pair.profile().iter();
        let left = pair.profile().iter().rev();
        let right = right.map(|s| at(axis + mm(s.diameter) / 2.0, mm(s.height)));
        let left = left.map(|s| at(axis - mm(s.diameter) / 2.0, mm(s.height)));
        SketchPart::Member(right.chain(left).collect())
    };
    let stations = pair.profile();
    let low = stations.first().map_or(0.0, |s| mm(s.height));
    let high = stations.last().map_or(0.0, |s| mm(s.height));
    let widest = stations
        .iter()
        .map(|s| mm(s.diameter) / 2.0)
        .fold(0.0, f64::max);
    let tall = stations.last().zip(stations.first());
    let mut dimensions = vec![named_dimension(
        "centres",
        at(0.0, low),
        at(axis, low),
        pair.centres(),
    )];
    if let Some((last, first)) = tall {
        let right = axis + widest;
        let length = last.height - first.height;
        dimensions.push(named_dimension(
            "profile",
            at(right, low),
            at(right, high),
            length,
        ));
    }
    Sketch {
        parts: vec![SketchPart::Hole(hole), baluster(0.0), baluster(axis)],
        dimensions,
        middle: at(axis / 2.0, (low + high) / 2.0),
    }
}

impl StairTriangle {
    /// What to draw, in the coordinates of [`StairTriangle::largest_ball`].
    #[must_use]
    pub fn sketch(self) -> Sketch {
        let (rise, going, lift) = self.sides();
        let overhang = mm(self.overhang);
        let corner = |c: Corner| at(c.x_mm / 1e6 + overhang, c.y_mm / 1e6);
        let outline: Vec<Corner> = self.outline_to_draw().into_iter().map(corner).collect();
        let (mut steps, rail) = if lift == Length::ZERO {
            let ends = (outline.last().copied(), outline.first().copied());
            (outline.clone(), ends)
        } else {
            let count = outline.len().saturating_sub(2);
            let ends = (outline.get(count).copied(), outline.last().copied());
            (outline[..count].to_vec(), ends)
        };
        let rail: Vec<Corner> = [rail.0, rail.1].into_iter().flatten().collect();
        let mut parts = vec![SketchPart::Hole(outline)];
        match self.risers {
            Risers::Closed => parts.push(SketchPart::Edge(std::mem::take(&mut steps))),
            Risers::Open => {
                // the treads alone
                let level = steps.windows(2).filter(|pair| match pair {
                    [a, b] => (a.y_mm - b.y_mm).abs() < 1e-9 && a.x_mm > b.x_mm,
                    _ => false,
                });
                parts.extend(level.map(|pair| SketchPart::Edge(pair.to_vec())));
            }
        }
        parts.push(SketchPart::Edge(rail));
        let (r, g, v) = (mm(rise), mm(going), mm(lift));
        let below = at(overhang, 0.0);
        let nose = at(overhang, r);
        let mut dimensions = vec![
            named_dimension("going", below, at(overhang + g, 0.0), going),
            named_dimension("rise", at(0.0, r), Corner::ORIGIN, rise),
        ];
        if lift > Length::ZERO {
            dimensions.push(named_dimension("lift", at(overhang, r + v), nose, lift));
        }
        Sketch {
            parts,
            dimensions,
            middle: at(overhang + g / 3.0, r / 3.0),
        }
    }
}
