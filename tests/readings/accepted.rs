//! Written forms and what they mean. Expected values are worked out by hand
//! from 1 in = 25 400 000 nm; multiplied out by hand.

use guardrule::items::Item;
use guardrule::quantities::{Length, LengthUnit, newtons, pounds_force};
use guardrule::reading::{
    BallTest, Bound, Extent, Graduation, Measure, Push, Reading, Stick, Value, parse, parse_length,
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

pub(crate) const SIXTEENTH: i64 = 1_587_500;
pub(crate) const EIGHTH: i64 = 3_175_000;
pub(crate) const QUARTER: i64 = 6_350_000;
const INCH: i64 = 25_400_000;
pub(crate) const MM: i64 = 1_000_000;
const CM: i64 = 10_000_000;

/// Text, nanometres, unit, side, step.
type Row = (&'static str, i64, LengthUnit, Bound, i64);

pub(crate) const IN: LengthUnit = LengthUnit::Inch;
const FT: LengthUnit = LengthUnit::Foot;
pub(crate) const M_M: LengthUnit = LengthUnit::Millimetre;
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

pub(crate) fn ball(size: Length, unit: LengthUnit, passes: bool) -> BallTest {
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

pub(crate) fn plain(value: Value) -> Reading {
    Reading { value, at: None }
}

pub(crate) fn only(item: Item, text: &str) -> Reading {
    let mut parsed = parse(item, text, None).unwrap_or_else(|e| panic!("{text}: {e}"));
    assert_eq!(parsed.readings.len(), 1, "{text}");
    parsed.readings.remove(0)
}

pub(crate) fn measure(reading: &Reading, text: &str) -> Measure {
    let Value::Measure(found) = &reading.value else {
        panic!("{text}: {reading:?}");
    };
    *found
}
