//! Written shapes and what they mean, multiplied out by hand.

use guardrule::geometry::{
    Across, Balusters, Cables, Corner, Polygon, Rake, RakedBay, Risers, Shape, Station, Strand,
    TurnedPair,
};
use guardrule::items::Item;
use guardrule::quantities::{Angle, Length, pounds_force};
use guardrule::reading::{Graduation, ShapeReading, StairReading, Value};

use crate::readings::accepted::EIGHTH;
use crate::readings::accepted::IN;
use crate::readings::accepted::M_M;
use crate::readings::accepted::MM;
use crate::readings::accepted::QUARTER;
use crate::readings::accepted::SIXTEENTH;
use crate::readings::accepted::only;
use crate::readings::accepted::plain;

#[test]
fn shapes_with_one_unit_or_a_unit_each() {
    let sides = |text: &str| {
        let found = shape(text);
        let Graduation::ReadTo(step) = found.graduation else {
            panic!("{text}: {found:?}");
        };
        (found.shape, found.unit, step.nanometres())
    };
    let rectangle = Shape::Rectangle {
        width: Length::sixty_fourths(3 * 64 + 32),
        height: Length::inches(30),
    };
    for (text, step) in [
        ("rectangle 3 1/2 x 30 in", QUARTER),
        ("rectangle 3½ × 30 in", QUARTER),
        ("rectangle 3 1/2 by 30 in", QUARTER),
        ("rectangle 3 1/2 in x 30 in", QUARTER),
        ("rectangle 3-1/2\" x 30\"", QUARTER),
        ("rectangle 3 1/2 in x 2 ft 6 in", QUARTER),
        ("rectangle 3.5x30.0in", 2_540_000),
        ("Rectangle 3 1/2 in x 30 0/16 in", EIGHTH),
    ] {
        assert_eq!(sides(text), (rectangle.clone(), IN, step), "{text}");
    }
    let slot = Shape::Slot {
        width: Length::sixty_fourths(4 * 64 + 16),
    };
    assert_eq!(sides("slot 4 1/4 in"), (slot, IN, SIXTEENTH));
    let circle = Shape::Circle {
        diameter: Length::inches(5),
    };
    assert_eq!(sides("circle 5 in"), (circle, IN, QUARTER));
    let triangle = Shape::Triangle {
        rise: Length::millimetres(190),
        run: Length::millimetres(240),
    };
    assert_eq!(sides("triangle 190 x 240 mm"), (triangle, M_M, MM));
}

#[test]
fn polygons_keep_their_corners_as_written() {
    let outline = |corners: &[(f64, f64)]| {
        let corners = corners
            .iter()
            .map(|(x_mm, y_mm)| Corner {
                x_mm: *x_mm,
                y_mm: *y_mm,
            })
            .collect();
        Shape::Polygon(Polygon::new(corners).unwrap())
    };
    let cases = [
        (
            "polygon 0:0 120:0 60:90 mm",
            outline(&[(0.0, 0.0), (120.0, 0.0), (60.0, 90.0)]),
        ),
        (
            "polygon 0:0 120.125:0 60:-90.5mm",
            outline(&[(0.0, 0.0), (120.125, 0.0), (60.0, -90.5)]),
        ),
        (
            "polygon -1:-2 12:0 6:9 cm",
            outline(&[(-10.0, -20.0), (120.0, 0.0), (60.0, 90.0)]),
        ),
        (
            "polygon 0:0 4:0 2:10 in",
            outline(&[(0.0, 0.0), (101.6, 0.0), (50.8, 254.0)]),
        ),
    ];
    for (text, expected) in cases {
        assert_eq!(shape(text).shape, expected, "{text}");
    }
}

#[test]
fn raked_bays_with_the_tape_along_or_level() {
    let step = Rake::Step {
        rise: Length::sixty_fourths(7 * 64 + 48),
        going: Length::inches(10),
    };
    let plain_bay = RakedBay {
        gap: Length::sixty_fourths(4 * 64 + 32),
        across: Across::Along,
        balusters: Balusters::Plumb,
        rake: step,
        high: None,
    };
    let degrees = |degrees, step| {
        let of = Angle::new::<uom::si::angle::degree>;
        Rake::Angle(of(degrees), of(step))
    };
    let cases = [
        ("raked 4 1/2 in along rise 7 3/4 going 10", plain_bay),
        ("raked 4 1/2 along rise 7 3/4 going 10 in", plain_bay),
        (
            "raked 4 1/2 in along the rail rise 7 3/4 in going 10 in",
            plain_bay,
        ),
        (
            "raked 4 1/2 in level at 37 deg",
            RakedBay {
                across: Across::Level,
                rake: degrees(37.0, 1.0),
                ..plain_bay
            },
        ),
        (
            "raked 4 1/2 in square level 37.5° high 30 in",
            RakedBay {
                across: Across::Level,
                balusters: Balusters::Square,
                rake: degrees(37.5, 0.1),
                high: Some(Length::inches(30)),
                ..plain_bay
            },
        ),
    ];
    for (text, expected) in cases {
        assert_eq!(shape(text).shape, Shape::Raked(expected), "{text}");
    }
    let placed = only(Item::Opening, "raked 4 in along at 37 deg at 20 in");
    let at = placed.at.expect("a place");
    assert_eq!((at.low, at.high), (Length::inches(20), Length::inches(20)));
}

#[test]
fn turned_balusters_by_heights_and_diameters() {
    let station = |height, sixty_fourths| Station {
        height: Length::inches(height),
        diameter: Length::sixty_fourths(sixty_fourths),
    };
    let profile = vec![station(0, 112), station(6, 64), station(12, 112)];
    let pair = TurnedPair::new(Length::sixty_fourths(4 * 64 + 32), profile).expect("a profile");
    for text in [
        "turned 4 1/2 in centres 0:1 3/4 6:1 12:1 3/4 in",
        "turned 4 1/2 in centers 0:1 3/4 6:1 12:1 3/4",
        "turned 4½ on centre 0:1¾ 6:1 12:1¾ in",
        "turned 4.5 in apart 0:1.75 6:1 12:1.75 in",
    ] {
        assert_eq!(shape(text).shape, Shape::Turned(pair.clone()), "{text}");
    }
    let mixed = shape("turned 114.3 mm centres 0:1 3/4 6:1 12:1 3/4 in");
    assert_eq!(mixed.shape, Shape::Turned(pair));
}

#[test]
fn cables_and_rods() {
    let run = |strand| Cables::new(strand, Length::inches(3), Length::sixty_fourths(8)).unwrap();
    let free = Some(Length::inches(36));
    let cases = [
        ("cable 3 in spacing 1/8 in diameter", run(Strand::Cable)),
        (
            "cables 3 spacing 1/8 diameter 36 in free",
            run(Strand::Cable).strung(free, None).unwrap(),
        ),
        (
            "cable 36 in free 1/8 in diameter 3 in on centres tension 200 lbf",
            run(Strand::Cable)
                .strung(free, Some(pounds_force(200.0)))
                .unwrap(),
        ),
        (
            "rods 3 in spacing 1/8 in thick 36 in span",
            run(Strand::Rod).strung(free, None).unwrap(),
        ),
    ];
    for (text, expected) in cases {
        assert_eq!(shape(text).shape, Shape::Cables(expected), "{text}");
    }
}

#[test]
fn stair_triangles() {
    let plain_stair = StairReading {
        rise: Length::sixty_fourths(7 * 64 + 48),
        going: Length::inches(10),
        lift: None,
        nosing: Length::ZERO,
        nosing_thickness: None,
        risers: Risers::Closed,
        unit: IN,
        graduation: Graduation::ReadTo(Length::from_nanometres(QUARTER)),
    };
    let lifted = |lift| StairReading {
        lift: Some(lift),
        ..plain_stair
    };
    let cases = [
        ("rise 7 3/4 going 10 in", plain_stair),
        ("rise 7 3/4 in going 10 in", plain_stair),
        ("riser 7¾ tread 10 in", plain_stair),
        ("riser 7¾ run 10 in", plain_stair),
        ("going 10 rise 7 3/4 in", plain_stair),
        ("rise 7 3/4, going 10 in", plain_stair),
        ("rise 7 3/4 going 10 lift 2 in", lifted(Length::inches(2))),
        ("rise 7 3/4 going 10 in lift 0", lifted(Length::ZERO)),
        ("rise 7 3/4 in going 10 in lift 0", lifted(Length::ZERO)),
        ("lift 0 rise 7 3/4 going 10 in", lifted(Length::ZERO)),
        (
            "rise 7 3/4 going 10 lift 2 nosing 1 in",
            StairReading {
                nosing: Length::inches(1),
                ..lifted(Length::inches(2))
            },
        ),
        (
            "rise 7 3/4 going 10 lift 2 nosing 1 thick 1 1/4 in",
            StairReading {
                nosing: Length::inches(1),
                nosing_thickness: Some(Length::sixty_fourths(80)),
                ..lifted(Length::inches(2))
            },
        ),
        (
            "rise 7 3/4 going 10 lift 2 in open risers",
            StairReading {
                risers: Risers::Open,
                ..lifted(Length::inches(2))
            },
        ),
        (
            "rise 7 3/4 going 10 in ± 1/8 in risers open",
            StairReading {
                risers: Risers::Open,
                graduation: Graduation::PlusMinus(Length::sixty_fourths(8)),
                ..plain_stair
            },
        ),
        (
            "rise 7 3/4 going 10 in ± 1/8 in",
            StairReading {
                graduation: Graduation::PlusMinus(Length::sixty_fourths(8)),
                ..plain_stair
            },
        ),
    ];
    for (text, expected) in cases {
        let found = only(Item::StairTriangle, text);
        assert_eq!(found, plain(Value::StairTriangle(expected)), "{text}");
    }
}

pub(crate) fn shape(text: &str) -> ShapeReading {
    let Value::Shape(found) = only(Item::Opening, text).value else {
        panic!("{text} is no shape");
    };
    found
}
