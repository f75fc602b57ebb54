//! Written forms and what they mean. Expected values are worked out by hand
//! from 1 in = 25 400 000 nm; multiplied out by hand.

use guardrule::geometry::{
    Across, Balusters, Cables, Corner, Polygon, Rake, RakedBay, Risers, Shape, Station, Strand,
    TurnedPair,
};
use guardrule::items::Item;
use guardrule::quantities::{Age, Angle, Length, LengthUnit, YearSpan, newtons, pounds_force};
use guardrule::reading::{
    BallTest, Bound, Extent, FastenerSize, Foothold, Graduation, Measure, Push, Reading,
    ShapeReading, StairReading, Stick, ThingToClimb, Tilt, VReading, Value, parse, parse_force,
    parse_length, parse_slope,
};

/// One length in the many ways that people write it; nanometres multiplied out by hand.
#[test]
fn notations_of_the_facts() {
    const TABLE: &[(i64, &[&str])] = &[
        (
            901_700_000,
            &[
                "35 1/2\"",
                "35-1/2\"",
                "35 1/2 in",
                "35½\"",
                "35 ½ in.",
                "35½″",
                "35.5 in",
                "35.5\"",
                "35,5 in",
            ],
        ),
        (
            901_700_000,
            &[
                "2'-11 1/2\"",
                "2' 11 1/2\"",
                "2′ 11½″",
                "2 ft 11 1/2 in",
                "2ft 11.5in",
            ],
        ),
        (914_400_000, &["3'", "3'-0\"", "36\""]),
        (
            902_000_000,
            &["902 mm", "902mm", "90.2 cm", "90,2 cm", "0.902 m"],
        ),
        (98_425_000, &["3 7/8 in", "3⅞\"", "3-7/8\"", "31/8 in"]),
        (100_012_500, &["3 15/16\"", "3.9375\""]),
        (111_125_000, &["4 3/8\"", "4⅜\"", "4.375\""]),
        (196_850_000, &["7 3/4\"", "7¾″"]),
    ];
    for (nanometres, texts) in TABLE {
        for text in *texts {
            let found = parse_length(text, None).unwrap_or_else(|e| panic!("{text}: {e}"));
            assert_eq!(found.length.nanometres(), *nanometres, "{text}");
        }
    }
}

const SIXTEENTH: i64 = 1_587_500;
const EIGHTH: i64 = 3_175_000;
const QUARTER: i64 = 6_350_000;
const INCH: i64 = 25_400_000;
const MM: i64 = 1_000_000;
const CM: i64 = 10_000_000;

/// Text, nanometres, unit, side, step.
type Row = (&'static str, i64, LengthUnit, Bound, i64);

const IN: LengthUnit = LengthUnit::Inch;
const FT: LengthUnit = LengthUnit::Foot;
const M_M: LengthUnit = LengthUnit::Millimetre;
const C_M: LengthUnit = LengthUnit::Centimetre;
const M: LengthUnit = LengthUnit::Metre;
const AT: Bound = Bound::Exactly;

/// How finely each was read goes by how it was written.
const LENGTHS: &[Row] = &[
    ("36 in", 914_400_000, IN, AT, QUARTER),
    ("36in", 914_400_000, IN, AT, QUARTER),
    ("36 IN", 914_400_000, IN, AT, QUARTER),
    ("36 in.", 914_400_000, IN, AT, QUARTER),
    ("36 inch", 914_400_000, IN, AT, QUARTER),
    ("36 inches", 914_400_000, IN, AT, QUARTER),
    ("36 Inches", 914_400_000, IN, AT, QUARTER),
    ("36 \"", 914_400_000, IN, AT, QUARTER),
    ("36″", 914_400_000, IN, AT, QUARTER),
    ("36”", 914_400_000, IN, AT, QUARTER),
    ("36''", 914_400_000, IN, AT, QUARTER),
    ("36’’", 914_400_000, IN, AT, QUARTER),
    ("36′′", 914_400_000, IN, AT, QUARTER),
    ("  36   in  ", 914_400_000, IN, AT, QUARTER),
    ("36\u{a0}in", 914_400_000, IN, AT, QUARTER),
    ("36\u{2009}in", 914_400_000, IN, AT, QUARTER),
    ("36\u{202f}in", 914_400_000, IN, AT, QUARTER),
    ("35 1/2 in", 901_700_000, IN, AT, EIGHTH),
    ("35\u{2011}1/2 in", 901_700_000, IN, AT, EIGHTH),
    ("35½ in", 901_700_000, IN, AT, EIGHTH),
    ("35\u{a0}½\u{202f}in", 901_700_000, IN, AT, EIGHTH),
    ("35 1⁄2 in", 901_700_000, IN, AT, EIGHTH),
    ("35 ¹⁄₂ in", 901_700_000, IN, AT, EIGHTH),
    ("35¹⁄₂ in", 901_700_000, IN, AT, EIGHTH),
    ("35 2/4 in", 901_700_000, IN, AT, SIXTEENTH),
    ("35 8/16 in", 901_700_000, IN, AT, SIXTEENTH),
    ("35 1/4 in", 895_350_000, IN, AT, SIXTEENTH),
    ("35¼ in", 895_350_000, IN, AT, SIXTEENTH),
    ("35¾ in", 908_050_000, IN, AT, SIXTEENTH),
    ("35 3/8 in", 898_525_000, IN, AT, SIXTEENTH),
    ("35⅛ in", 892_175_000, IN, AT, SIXTEENTH),
    ("35⅝ in", 904_875_000, IN, AT, SIXTEENTH),
    ("35⅞ in", 911_225_000, IN, AT, SIXTEENTH),
    ("35 1/16 in", 890_587_500, IN, AT, SIXTEENTH),
    ("35 1/32 in", 889_793_750, IN, AT, SIXTEENTH),
    ("35 1/64 in", 889_396_875, IN, AT, SIXTEENTH),
    ("36 0/16 in", 914_400_000, IN, AT, SIXTEENTH),
    ("36 0/2 in", 914_400_000, IN, AT, EIGHTH),
    ("35.5 in", 901_700_000, IN, AT, 2_540_000),
    ("35.50 in", 901_700_000, IN, AT, MM),
    ("35,5 in", 901_700_000, IN, AT, 2_540_000),
    ("36.0 in", 914_400_000, IN, AT, 2_540_000),
    ("35.25\"", 895_350_000, IN, AT, MM),
    ("35.4375 in", 900_112_500, IN, AT, MM),
    ("35.015625 in", 889_396_875, IN, AT, MM),
    ("3 ft", 914_400_000, FT, AT, INCH),
    ("3 FT.", 914_400_000, FT, AT, INCH),
    ("3 foot", 914_400_000, FT, AT, INCH),
    ("3 feet", 914_400_000, FT, AT, INCH),
    ("3'", 914_400_000, FT, AT, INCH),
    ("3′", 914_400_000, FT, AT, INCH),
    ("3’", 914_400_000, FT, AT, INCH),
    ("3 1/2 ft", 1_066_800_000, FT, AT, INCH),
    ("3.5 ft", 1_066_800_000, FT, AT, INCH),
    ("3.5'", 1_066_800_000, FT, AT, INCH),
    ("2 ft 11 in", 889_000_000, IN, AT, QUARTER),
    ("2 ft 11 1/2 in", 901_700_000, IN, AT, EIGHTH),
    ("2 ft 11-1/2 in", 901_700_000, IN, AT, EIGHTH),
    ("2 ft. 11 1/2 in.", 901_700_000, IN, AT, EIGHTH),
    ("2 ft, 11 1/2 in", 901_700_000, IN, AT, EIGHTH),
    ("2 feet and 11 1/2 inches", 901_700_000, IN, AT, EIGHTH),
    ("2ft11.5in", 901_700_000, IN, AT, 2_540_000),
    ("2'11 1/2\"", 901_700_000, IN, AT, EIGHTH),
    ("2'11½\"", 901_700_000, IN, AT, EIGHTH),
    ("2’11½”", 901_700_000, IN, AT, EIGHTH),
    ("2'11 1/2''", 901_700_000, IN, AT, EIGHTH),
    ("2'-11½\"", 901_700_000, IN, AT, EIGHTH),
    ("2' – 11½\"", 901_700_000, IN, AT, EIGHTH),
    ("3'-0\"", 914_400_000, IN, AT, QUARTER),
    ("2' 11 3/16\"", 893_762_500, IN, AT, SIXTEENTH),
    ("902 mm", 902_000_000, M_M, AT, MM),
    ("902mm", 902_000_000, M_M, AT, MM),
    ("902 MM", 902_000_000, M_M, AT, MM),
    ("902 mm.", 902_000_000, M_M, AT, MM),
    ("902 millimetres", 902_000_000, M_M, AT, MM),
    ("902 millimeters", 902_000_000, M_M, AT, MM),
    ("902.5 mm", 902_500_000, M_M, AT, MM),
    ("902,5 mm", 902_500_000, M_M, AT, MM),
    ("1250 mm", 1_250_000_000, M_M, AT, MM),
    ("1.250 m", 1_250_000_000, M, AT, MM),
    ("90 cm", 900_000_000, C_M, AT, CM),
    ("90 centimetres", 900_000_000, C_M, AT, CM),
    ("90.2 cm", 902_000_000, C_M, AT, MM),
    ("90.0 cm", 900_000_000, C_M, AT, MM),
    ("90,2 cm", 902_000_000, C_M, AT, MM),
    ("90.25 cm", 902_500_000, C_M, AT, MM),
    ("1 m", 1_000_000_000, M, AT, CM),
    ("1 metre", 1_000_000_000, M, AT, CM),
    ("1 meter", 1_000_000_000, M, AT, CM),
    ("1.1 m", 1_100_000_000, M, AT, 10_000_000),
    ("0.9 m", 900_000_000, M, AT, 10_000_000),
    (".9 m", 900_000_000, M, AT, 10_000_000),
    ("0.90 m", 900_000_000, M, AT, CM),
    ("0.902 m", 902_000_000, M, AT, MM),
    ("0,90 m", 900_000_000, M, AT, CM),
    ("over 8 ft", 2_438_400_000, FT, Bound::Over, INCH),
    ("Over 8 ft", 2_438_400_000, FT, Bound::Over, INCH),
    ("more than 8 ft", 2_438_400_000, FT, Bound::Over, INCH),
    ("> 8 ft", 2_438_400_000, FT, Bound::Over, INCH),
    (">8'", 2_438_400_000, FT, Bound::Over, INCH),
    ("under 20 in", 508_000_000, IN, Bound::Under, QUARTER),
    ("less than 20 in", 508_000_000, IN, Bound::Under, QUARTER),
    ("<20 in", 508_000_000, IN, Bound::Under, QUARTER),
    ("under 500 mm", 500_000_000, M_M, Bound::Under, MM),
];

#[test]
fn lengths_with_unit_bound_and_graduation() {
    for (text, nanometres, unit, bound, step) in LENGTHS {
        let expected = Measure {
            length: Length::from_nanometres(*nanometres),
            unit: *unit,
            bound: *bound,
            graduation: Graduation::ReadTo(Length::from_nanometres(*step)),
        };
        let parsed = parse(Item::Drop, text, None).unwrap_or_else(|e| panic!("{text}: {e}"));
        assert_eq!(parsed.readings, [plain(Value::Measure(expected))], "{text}");
        assert_eq!(parsed.cautions, [""; 0], "{text}");
        if *bound == Bound::Exactly {
            assert_eq!(parse_length(text, None), Ok(expected), "{text}");
        }
    }
}

/// A bare number takes the default unit, and a written unit stands over it.
#[test]
fn a_default_unit_is_for_bare_numbers_only() {
    const CASES: &[(&str, LengthUnit, i64)] = &[
        ("36", IN, 914_400_000),
        ("35 1/2", IN, 901_700_000),
        ("902", M_M, 902_000_000),
        ("90.2", C_M, 902_000_000),
        ("3", FT, 914_400_000),
        ("0.902", M, 902_000_000),
        ("36 in", M_M, 914_400_000),
        ("902 mm", IN, 902_000_000),
    ];
    for (text, default, nanometres) in CASES {
        let found = parse_length(text, Some(*default)).unwrap();
        assert_eq!(found.length.nanometres(), *nanometres, "{text}");
    }
    assert!(parse_length("4 3/8", Some(M_M)).is_err());
}

#[test]
fn plus_minus_replaces_the_graduation() {
    let cases: [(&str, i64, i64); 8] = [
        ("5 in ± 1/2 in", 127_000_000, 12_700_000),
        ("5 in ±1/2 in", 127_000_000, 12_700_000),
        ("5 in +/- 1/2 in", 127_000_000, 12_700_000),
        ("5 in +- 1/2 in", 127_000_000, 12_700_000),
        ("5 ± 1/2 in", 127_000_000, 12_700_000),
        ("5\" ± 1/2\"", 127_000_000, 12_700_000),
        ("5 in ± 10 mm", 127_000_000, 10_000_000),
        ("127 mm ± 3 mm", 127_000_000, 3_000_000),
    ];
    for (text, nanometres, within) in cases {
        let found = measure(&only(Item::Opening, text), text);
        assert_eq!(found.length.nanometres(), nanometres, "{text}");
        let within = Length::from_nanometres(within);
        assert_eq!(found.graduation, Graduation::PlusMinus(within), "{text}");
    }
}

#[test]
fn from_one_length_to_another_is_two_readings() {
    for (text, first, second) in [
        ("5 to 6 in", 5, 6),
        ("5 in to 6 in", 5, 6),
        ("6 in to 5 in", 6, 5),
        ("5 to 6\"", 5, 6),
    ] {
        let parsed = parse(Item::Opening, text, None).unwrap();
        let lengths: Vec<Length> = parsed
            .readings
            .iter()
            .map(|reading| measure(reading, text).length)
            .collect();
        assert_eq!(
            lengths,
            [Length::inches(first), Length::inches(second)],
            "{text}"
        );
    }
}

fn ball(size: Length, unit: LengthUnit, passes: bool) -> BallTest {
    BallTest {
        ball: size,
        unit,
        passes,
        everywhere: false,
        push: Push::None,
    }
}

#[test]
fn ball_tests_with_their_tails_in_any_order() {
    let four = ball(Length::inches(4), IN, false);
    let everywhere = BallTest {
        everywhere: true,
        ..four
    };
    let pushed = |push| BallTest { push, ..four };
    let fifty = Push::Force(pounds_force(50.0));
    let cases = [
        ("4 in ball stops", four),
        ("4\" ball stops", four),
        ("a 4 in ball stops", four),
        ("4 in ball does not pass", four),
        ("4 in ball doesn't pass", four),
        ("4 in ball doesn’t go through", four),
        ("4 IN BALL STOPS", four),
        ("4 in ball passes", ball(Length::inches(4), IN, true)),
        ("4 in ball goes through", ball(Length::inches(4), IN, true)),
        (
            "100 mm ball passes",
            ball(Length::millimetres(100), M_M, true),
        ),
        ("4 in ball stops everywhere", everywhere),
        ("4 in ball everywhere stops", everywhere),
        ("4 in ball stops at every hole", everywhere),
        ("4 in ball stops pushed by hand", pushed(Push::ByHand)),
        ("4 in ball pushed by hand stops", pushed(Push::ByHand)),
        ("4 in ball stops, pushed by hand", pushed(Push::ByHand)),
        ("4 in ball stops pushed 50 lbf", pushed(fifty)),
        ("4 in ball stops pushed with 50 lb", pushed(fifty)),
        (
            "4 in ball stops pushed 222 N",
            pushed(Push::Force(newtons(222.0))),
        ),
        (
            "4 in ball stops pushed 0.25 kN",
            pushed(Push::Force(newtons(250.0))),
        ),
    ];
    for (text, expected) in cases {
        assert_eq!(
            only(Item::Opening, text),
            plain(Value::Ball(expected)),
            "{text}"
        );
    }
    let six = BallTest {
        everywhere: true,
        ..ball(Length::inches(6), IN, false)
    };
    let stair = only(Item::StairTriangle, "6 in ball stops everywhere");
    assert_eq!(stair, plain(Value::Ball(six)));
}

#[test]
fn where_an_opening_lies() {
    let cases = [
        ("4 in at 38 in", Length::inches(38), Length::inches(38)),
        (
            "99 mm at 300 mm",
            Length::millimetres(300),
            Length::millimetres(300),
        ),
        (
            "4 in at 6 in to 20 in",
            Length::inches(6),
            Length::inches(20),
        ),
        ("4 in at 6 to 20 in", Length::inches(6), Length::inches(20)),
        ("4 in at 0 to 20 in", Length::ZERO, Length::inches(20)),
        (
            "4 in at 20 in to 6 in",
            Length::inches(6),
            Length::inches(20),
        ),
        (
            "4 in ball stops at 38 in",
            Length::inches(38),
            Length::inches(38),
        ),
        (
            "4 in ball at 38 in passes",
            Length::inches(38),
            Length::inches(38),
        ),
        (
            "circle 5 in at 38 in",
            Length::inches(38),
            Length::inches(38),
        ),
        ("5 to 6 in at 38 in", Length::inches(38), Length::inches(38)),
    ];
    for (text, low, high) in cases {
        let parsed = parse(Item::Opening, text, None).unwrap_or_else(|e| panic!("{text}: {e}"));
        for reading in parsed.readings {
            assert_eq!(reading.at, Some(Extent { low, high }), "{text}");
        }
    }
}

#[test]
fn sticks_at_heights() {
    let stick = |stick, unit, reaches| {
        Value::Stick(Stick {
            stick,
            unit,
            reaches,
        })
    };
    let cases = [
        ("reaches 36 in", stick(Length::inches(36), IN, true)),
        ("reaches 3 ft", stick(Length::inches(36), FT, true)),
        ("below 36 in", stick(Length::inches(36), IN, false)),
        (
            "does not reach 900 mm",
            stick(Length::millimetres(900), M_M, false),
        ),
    ];
    for (text, expected) in cases {
        assert_eq!(only(Item::Height, text).value, expected, "{text}");
    }
}

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

#[test]
fn footholds_things_and_sections() {
    let step = |nanometres| Graduation::ReadTo(Length::from_nanometres(nanometres));
    let foothold = Foothold {
        height: Length::millimetres(450),
        depth: Some(Length::millimetres(40)),
        along: None,
        slope: None,
        unit: M_M,
        graduation: step(MM),
    };
    for text in [
        "450 mm high 40 mm deep",
        "450 high 40 mm deep",
        "450 mm high, 40 mm deep",
        "40 mm deep 450 mm high",
    ] {
        assert_eq!(
            only(Item::Foothold, text).value,
            Value::Foothold(foothold),
            "{text}"
        );
    }
    let plain_foothold = Foothold {
        height: Length::inches(18),
        depth: None,
        along: None,
        slope: None,
        unit: IN,
        graduation: step(QUARTER),
    };
    let sloped = Foothold {
        along: Some(Length::millimetres(600)),
        slope: Some(Tilt::of(parse_slope("60 deg").unwrap())),
        ..foothold
    };
    for text in [
        "450 mm high 40 mm deep 600 mm along sloped 60 deg",
        "450 mm high 40 mm deep 600 mm along sloping 60°",
    ] {
        let found = only(Item::Foothold, text).value;
        assert_eq!(found, Value::Foothold(sloped), "{text}");
    }
    for text in [
        "100 to 900 mm every 400 mm",
        "100 mm to 900 mm every 400 mm apart",
        "100 up to 999 mm high every 400 mm",
    ] {
        let read = parse(Item::Foothold, text, None).unwrap();
        let height = |reading: &Reading| {
            let Value::Foothold(bar) = &reading.value else {
                panic!("{:?}", reading.value);
            };
            bar.height
        };
        let heights: Vec<Length> = read.readings.iter().map(height).collect();
        let expected = [100, 500, 900].map(Length::millimetres);
        assert_eq!(heights, expected, "{text}");
    }
    let vee = VReading {
        wide: Length::inches(5),
        deep: Length::inches(6),
        bottom: Length::ZERO,
        unit: IN,
        graduation: step(QUARTER),
    };
    for text in [
        "5 in wide 6 in deep",
        "vee 5 in wide 6 in deep",
        "6 in deep 5 in wide",
        "V 5 wide 6 in deep",
    ] {
        let found = only(Item::VOpening, text).value;
        assert_eq!(found, Value::VOpening(vee), "{text}");
    }
    let found = only(Item::Foothold, "18 in high").value;
    assert_eq!(found, Value::Foothold(plain_foothold));
    let thing = |height, away| {
        Value::ThingToClimb(ThingToClimb {
            height,
            depth: None,
            away,
        })
    };
    let (high, away) = (Some(Length::inches(18)), Some(Length::inches(5)));
    for (text, expected) in [
        ("18 in high 5 in away", thing(high, away)),
        ("18 in high", thing(high, None)),
        ("5 in away", thing(None, away)),
        ("yes", thing(None, None)),
        ("none", Value::None),
    ] {
        assert_eq!(only(Item::ThingToClimb, text).value, expected, "{text}");
    }
    let plinth = Value::ThingToClimb(ThingToClimb {
        height: Some(Length::millimetres(150)),
        depth: Some(Length::millimetres(300)),
        away: Some(Length::ZERO),
    });
    for text in [
        "150 mm high 300 mm deep 0 mm away",
        "150 high 0 away 300 mm deep",
    ] {
        assert_eq!(only(Item::StepBeside, text).value, plinth, "{text}");
    }
    let post = Length::sixty_fourths(3 * 64 + 32);
    for text in [
        "3 1/2 x 3 1/2 in",
        "3½″ × 3½″",
        "88.9 by 88.9 mm",
        "3.5 in x 88.9 mm",
    ] {
        assert_eq!(
            only(Item::PostSection, text).value,
            Value::Section(post, post),
            "{text}"
        );
    }
}

#[test]
fn ages_years_days_and_counts() {
    for (text, months) in [
        ("14 months", 14),
        ("18 mo", 18),
        ("1 month", 1),
        ("3 years", 36),
        ("3 yrs", 36),
        ("3 years old", 36),
        ("2 1/2 years", 30),
        ("2½ years", 30),
        ("2.5 years", 30),
        ("1 year 3 months", 15),
        ("newborn", 0),
    ] {
        let expected = Value::Age(Age::from_months(months));
        assert_eq!(only(Item::Children, text).value, expected, "{text}");
    }
    let open = |first, last| YearSpan { first, last };
    for (text, expected) in [
        ("1994", YearSpan::year(1994)),
        ("in 1994", YearSpan::year(1994)),
        ("before 1978", open(None, Some(1977))),
        ("pre-1978", open(None, Some(1977))),
        ("after 1990", open(Some(1991), None)),
        ("since 1990", open(Some(1990), None)),
        ("1990s", YearSpan::between(1990, 1999)),
        ("1990's", YearSpan::between(1990, 1999)),
        ("2000s", YearSpan::between(2000, 2009)),
        ("1990-1995", YearSpan::between(1990, 1995)),
        ("1990–1995", YearSpan::between(1990, 1995)),
        ("1990 to 1995", YearSpan::between(1990, 1995)),
        ("between 1990 and 1995", YearSpan::between(1990, 1995)),
        ("about 1965", YearSpan::between(1960, 1970)),
        ("c. 1965", YearSpan::between(1960, 1970)),
        ("2021-03-01", YearSpan::year(2021)),
    ] {
        assert_eq!(
            only(Item::Built, text).value,
            Value::Years(expected),
            "{text}"
        );
    }
    for (text, year, month, day) in [
        ("2026-05-04", 2026, 5, 4),
        ("2026-5-4", 2026, 5, 4),
        ("2026/05/04", 2026, 5, 4),
        ("4 May 2026", 2026, 5, 4),
        ("May 4, 2026", 2026, 5, 4),
        ("2024-02-29", 2024, 2, 29),
    ] {
        let expected = Value::Date { year, month, day };
        assert_eq!(only(Item::Date, text).value, expected, "{text}");
    }
    assert_eq!(only(Item::Risers, "13").value, Value::Count(13));
}

#[test]
fn words_absence_and_what_could_not_be_seen() {
    for (item, text, expected) in [
        (Item::Place, "stair", Value::Word("stair")),
        (Item::Place, "Stairs", Value::Word("stair")),
        (Item::Infill, "spindles", Value::Word("balusters")),
        (Item::PostFastening, "bolts", Value::Word("through bolts")),
        (Item::PostFastening, "hidden", Value::Word("hidden")),
        (Item::PostFastening, "cannot see", Value::Word("hidden")),
        (Item::PostFastening, "unknown", Value::Unknown),
        (Item::FastenedTo, "unknown", Value::Unknown),
        (Item::Condition, "none seen", Value::Word("none seen")),
        (Item::NotchedPost, "n", Value::Word("no")),
        (Item::Guard, "none", Value::Word("none")),
        (Item::Guard, "not reached", Value::Unknown),
        (Item::Handrail, "none", Value::Word("none")),
        (Item::DefaultUnit, "inches", Value::Word("in")),
        (Item::Tape, "Class 2", Value::Word("class II")),
        (Item::Opening, "none", Value::None),
        (Item::Opening, "None", Value::None),
        (Item::BottomGap, "no", Value::None),
        (Item::Children, "none", Value::None),
        (Item::StairTriangle, "none", Value::None),
        (Item::Height, "not reached", Value::Unknown),
        (Item::Height, "Not  Reached", Value::Unknown),
        (Item::Height, "unknown", Value::Unknown),
        (Item::Opening, "n/a", Value::Unknown),
        (Item::Opening, "-", Value::Unknown),
        (Item::Built, "?", Value::Unknown),
        (Item::Place, "can’t see", Value::Unknown),
        (
            Item::Property,
            "Our house, 3",
            Value::Text("Our house, 3".into()),
        ),
    ] {
        assert_eq!(only(item, text).value, expected, "{item}: {text}");
    }
}

#[test]
fn tolerances_and_graduations() {
    let tolerance = |text| measure(&only(Item::BuildTolerance, text), text).graduation;
    let eighth = Graduation::PlusMinus(Length::sixty_fourths(8));
    assert_eq!(tolerance("± 1/8 in"), eighth);
    assert_eq!(tolerance("+/- 1/8 in"), eighth);
    assert_eq!(tolerance("1/8 in"), eighth);
    let graduation = |text| measure(&only(Item::ReadTo, text), text).graduation;
    assert_eq!(
        graduation("1/16 in"),
        Graduation::ReadTo(Length::sixty_fourths(4))
    );
    assert_eq!(
        graduation("1 mm"),
        Graduation::ReadTo(Length::millimetres(1))
    );
    assert_eq!(
        graduation("nearest 1/8 in"),
        Graduation::ReadTo(Length::sixty_fourths(8))
    );
}

#[test]
fn forces_in_pounds_and_newtons() {
    for (text, expected) in [
        ("200 lbf", pounds_force(200.0)),
        ("200 lb", pounds_force(200.0)),
        ("200lbs", pounds_force(200.0)),
        ("222 N", newtons(222.0)),
        ("0.74 kN", newtons(740.0)),
    ] {
        assert_eq!(parse_force(text), Ok(expected), "{text}");
    }
}

/// Accepted with a warning: text, nanometres, how many cautions, a word of the first.
#[test]
fn doubtful_readings_are_taken_with_a_caution() {
    for (item, text, nanometres, says) in [
        (Item::Drop, "4' 14\"", 1_574_800_000, "read as 62 in"),
        (Item::Opening, "31/8 in", 98_425_000, "read as 3 7/8 in"),
        (Item::Height, "11 in", 279_400_000, "unusual for height"),
        (
            Item::Height,
            "over 9 ft",
            2_743_200_000,
            "unusual for height",
        ),
        (Item::Opening, "2 mm", 2_000_000, "unusual for opening"),
        (Item::Drop, "60 ft", 18_288_000_000, "unusual for drop"),
    ] {
        let parsed = parse(item, text, None).unwrap_or_else(|e| panic!("{text}: {e}"));
        let [
            Reading {
                value: Value::Measure(found),
                ..
            },
        ] = parsed.readings.as_slice()
        else {
            panic!("{text}: {parsed:?}");
        };
        assert_eq!(found.length.nanometres(), nanometres, "{text}");
        let [caution] = parsed.cautions.as_slice() else {
            panic!("{text}: {:?}", parsed.cautions);
        };
        assert!(caution.contains(says), "{text}: {caution}");
    }
}

#[test]
fn zero_is_a_reading_where_it_can_be() {
    for item in [Item::Opening, Item::BottomGap, Item::Drop] {
        let parsed = parse(item, "0 in", None).unwrap();
        assert_eq!(parsed.cautions, [""; 0], "{item}");
    }
    assert!(parse(Item::Height, "0 in", None).is_err());
    assert!(parse(Item::Drop, "under 0 in", None).is_err());
}

fn plain(value: Value) -> Reading {
    Reading { value, at: None }
}

fn only(item: Item, text: &str) -> Reading {
    let mut parsed = parse(item, text, None).unwrap_or_else(|e| panic!("{text}: {e}"));
    assert_eq!(parsed.readings.len(), 1, "{text}");
    parsed.readings.remove(0)
}

fn measure(reading: &Reading, text: &str) -> Measure {
    let Value::Measure(found) = &reading.value else {
        panic!("{text}: {reading:?}");
    };
    *found
}

fn shape(text: &str) -> ShapeReading {
    let Value::Shape(found) = only(Item::Opening, text).value else {
        panic!("{text} is no shape");
    };
    found
}

/// Sizes of NDS 2018 Appendix L and NDS Supplement Table 1A, second-hand.
#[test]
fn fasteners_pulls_and_lumber_by_name() {
    let fasteners = |text| {
        let Value::Fasteners(found) = only(Item::PostFasteners, text).value else {
            panic!("{text}");
        };
        found
    };
    let half = Length::sixty_fourths(32);
    for text in ["2 x 1/2 in x 6 in", "2 x 1/2 x 6 in", "2 × ½\" x 6\""] {
        let found = fasteners(text);
        assert_eq!(found.count, 2, "{text}");
        assert_eq!(found.size, FastenerSize::Diameter(half), "{text}");
        assert_eq!(found.length, Some(Length::inches(6)), "{text}");
    }
    for text in [
        "4 x No. 10 x 3 in",
        "4 x #10 x 3 in",
        "4 x no 10 by 3 in long",
    ] {
        let found = fasteners(text);
        assert_eq!(found.size, FastenerSize::Number(10), "{text}");
        assert_eq!(found.length, Some(Length::inches(3)), "{text}");
    }
    assert_eq!(fasteners("2 x 12 mm").length, None);
    for text in ["10 lbf 0.21 in", "10 lb moved 0.21 in", "10 lbf, 0.21 in"] {
        let Value::Pull(pull) = only(Item::PullTest, text).value else {
            panic!("{text}");
        };
        assert_eq!(pull.force, pounds_force(10.0), "{text}");
        assert_eq!(pull.moved, Length::from_nanometres(5_334_000), "{text}");
    }
    let four = Length::sixty_fourths(224);
    for text in ["4x4", "4 x 4", "4×4"] {
        assert_eq!(
            only(Item::PostSection, text).value,
            Value::Section(four, four)
        );
    }
}
