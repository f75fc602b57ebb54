//! Properties: what is printed is read back, notations agree, nothing panics.

use std::ops::Range;

use guardrule::geometry::{
    Across, Balusters, Cables, Corner, Polygon, Rake, RakedBay, Risers, Shape, Station, Strand,
    TurnedPair,
};
use guardrule::items::{Item, Kind};
use guardrule::quantities::{Age, Angle, Length, LengthUnit, YearSpan, newtons, pounds_force};
use guardrule::reading::{
    BallTest, Bound, Extent, Foothold, Graduation, Measure, Push, Reading, ShapeReading,
    StairReading, Stick, ThingToClimb, Tilt, VReading, Value, parse, parse_age, parse_force,
    parse_length, parse_slope, parse_years, print,
};
use proptest::prelude::*;
use uom::si::angle::degree;

fn units() -> impl Strategy<Value = LengthUnit> {
    prop_oneof![
        Just(LengthUnit::Inch),
        Just(LengthUnit::Foot),
        Just(LengthUnit::Millimetre),
        Just(LengthUnit::Centimetre),
        Just(LengthUnit::Metre),
    ]
}

/// Lengths on an inch tape, on a metric one, or between all marks.
fn lengths(millimetres: Range<i32>) -> impl Strategy<Value = Length> + Clone {
    let nanometres =
        i64::from(millimetres.start) * 1_000_000..i64::from(millimetres.end) * 1_000_000;
    prop_oneof![
        (millimetres.start * 64 / 25 + 1..millimetres.end * 64 / 26)
            .prop_map(Length::sixty_fourths),
        millimetres.prop_map(Length::millimetres),
        nanometres.prop_map(Length::from_nanometres),
    ]
}

fn graduations() -> impl Strategy<Value = Graduation> {
    prop_oneof![
        lengths(1..50).prop_map(Graduation::PlusMinus),
        lengths(1..50).prop_map(Graduation::ReadTo),
    ]
}

fn measures() -> impl Strategy<Value = Measure> {
    (lengths(60..5000), units(), graduations()).prop_map(|(length, unit, graduation)| Measure {
        length,
        unit,
        bound: Bound::Exactly,
        graduation,
    })
}

fn bounded() -> impl Strategy<Value = Measure> {
    let bounds = prop_oneof![Just(Bound::Over), Just(Bound::Under)];
    (measures(), bounds).prop_map(|(measure, bound)| Measure {
        bound,
        graduation: Graduation::ReadTo(Length::millimetres(1)),
        ..measure
    })
}

fn balls() -> impl Strategy<Value = BallTest> {
    let pushes = prop_oneof![
        Just(Push::None),
        Just(Push::ByHand),
        (1_u32..5000).prop_map(|n| Push::Force(pounds_force(f64::from(n) / 10.0))),
        (0.001_f64..1e5).prop_map(|n| Push::Force(newtons(n))),
    ];
    (lengths(1..900), units(), any::<[bool; 2]>(), pushes).prop_map(
        |(ball, unit, [passes, everywhere], push)| BallTest {
            ball,
            unit,
            passes,
            everywhere,
            push,
        },
    )
}

fn shapes() -> impl Strategy<Value = Shape> {
    // up in steps, each its own way to the left, and straight down: no two sides meet
    let corner = (-300.0_f64..0.0, 0.1_f64..100.0);
    let outline = (prop::collection::vec(corner, 2..11), -1e5_f64..1e5).prop_map(|(turns, low)| {
        let mut y_mm = low;
        let mut corners = vec![Corner { x_mm: 1.0, y_mm }];
        for (x_mm, up) in turns {
            y_mm += up;
            corners.push(Corner { x_mm, y_mm });
        }
        y_mm += 1.0;
        corners.push(Corner { x_mm: 1.0, y_mm });
        corners
    });
    let pair = (lengths(1..3000), lengths(1..3000));
    prop_oneof![
        lengths(1..3000).prop_map(|width| Shape::Slot { width }),
        lengths(1..3000).prop_map(|diameter| Shape::Circle { diameter }),
        pair.clone()
            .prop_map(|(width, height)| Shape::Rectangle { width, height }),
        pair.prop_map(|(rise, run)| Shape::Triangle { rise, run }),
        raked(),
        turned(),
        cables(),
        outline.prop_map(|corners| Shape::Polygon(Polygon::new(corners).expect("simple"))),
    ]
}

fn raked() -> impl Strategy<Value = Shape> {
    let angle = (1_u32..800).prop_map(|tenths| {
        let degrees = f64::from(tenths) / 10.0;
        let of = Angle::new::<degree>;
        if tenths % 10 == 0 {
            Rake::Angle(of(degrees), of(1.0))
        } else {
            Rake::Angle(of(degrees), of(0.1))
        }
    });
    let step =
        (lengths(1..500), lengths(1..500)).prop_map(|(rise, going)| Rake::Step { rise, going });
    (
        lengths(1..3000),
        prop_oneof![Just(Across::Along), Just(Across::Level)],
        prop_oneof![Just(Balusters::Plumb), Just(Balusters::Square)],
        prop_oneof![angle, step],
        prop::option::of(lengths(1..3000)),
    )
        .prop_map(|(gap, across, balusters, rake, high)| {
            Shape::Raked(RakedBay {
                gap,
                across,
                balusters,
                rake,
                high,
            })
        })
}

fn turned() -> impl Strategy<Value = Shape> {
    let station = (lengths(1..200), lengths(1..60));
    (lengths(70..400), prop::collection::vec(station, 2..12)).prop_map(|(centres, parts)| {
        let mut height = Length::ZERO;
        let profile = parts.into_iter().map(|(up, diameter)| {
            let station = Station { height, diameter };
            height = height + up;
            station
        });
        Shape::Turned(TurnedPair::new(centres, profile.collect()).expect("a profile"))
    })
}

fn cables() -> impl Strategy<Value = Shape> {
    let strung = prop_oneof![
        Just((Strand::Rod, None)),
        Just((Strand::Cable, None)),
        (1_u32..5000).prop_map(|n| (Strand::Cable, Some(pounds_force(f64::from(n) / 10.0)))),
        (0.001_f64..1e5).prop_map(|n| (Strand::Cable, Some(newtons(n)))),
    ];
    (lengths(60..400), lengths(1..50), lengths(100..4000), strung).prop_map(
        |(spacing, diameter, free, (strand, tension))| {
            let run = Cables::new(strand, spacing, diameter).expect("a gap");
            let free = (strand == Strand::Cable).then_some(free);
            Shape::Cables(run.strung(free, tension).expect("strung"))
        },
    )
}

fn stairs() -> impl Strategy<Value = StairReading> {
    let lift = prop::option::of(prop_oneof![Just(Length::ZERO), lengths(1..300)]);
    let nosing = prop_oneof![
        Just((Length::ZERO, None)),
        (lengths(1..40), prop::option::of(lengths(1..40))),
    ];
    let risers = prop_oneof![Just(Risers::Closed), Just(Risers::Open)];
    (
        lengths(52..400),
        lengths(104..600),
        lift,
        (nosing, risers),
        units(),
        graduations(),
    )
        .prop_map(
            |(rise, going, lift, ((nosing, nosing_thickness), risers), unit, graduation)| {
                StairReading {
                    rise,
                    going,
                    lift,
                    nosing,
                    nosing_thickness,
                    risers,
                    unit,
                    graduation,
                }
            },
        )
}

fn places() -> impl Strategy<Value = Option<Extent>> {
    let low = prop_oneof![Just(Length::ZERO), lengths(1..1500)];
    prop::option::of((low, lengths(1500..2500)).prop_flat_map(|(low, high)| {
        prop_oneof![Just(Extent { low, high }), Just(Extent { low, high: low })]
    }))
}

/// Any reading that the parser can give, with an item of its kind.
fn readings() -> impl Strategy<Value = (Item, Reading)> {
    let plain = |value| Reading { value, at: None };
    let placed = |value: Value| {
        places().prop_map(move |at| Reading {
            value: value.clone(),
            at,
        })
    };
    let openings = prop_oneof![
        measures().prop_map(Value::Measure),
        balls().prop_map(Value::Ball),
        (shapes(), units(), graduations()).prop_map(|(shape, unit, graduation)| {
            Value::Shape(ShapeReading {
                shape,
                unit,
                graduation,
            })
        }),
    ];
    let heights = prop_oneof![
        measures().prop_map(Value::Measure),
        bounded().prop_map(Value::Measure),
        (lengths(100..2000), units(), any::<bool>()).prop_map(|(stick, unit, reaches)| {
            Value::Stick(Stick {
                stick,
                unit,
                reaches,
            })
        }),
        Just(Value::Unknown),
    ];
    let stair = prop_oneof![
        stairs().prop_map(Value::StairTriangle),
        balls().prop_map(Value::Ball),
    ];
    let footholds = (
        lengths(1..2000),
        prop::option::of(lengths(0..300)),
        prop::option::of(lengths(0..3000)),
        prop::option::of(0.0_f64..89.9),
        units(),
        graduations(),
    )
        .prop_map(|(height, depth, along, slope, unit, graduation)| {
            let degrees = |angle| Tilt::of(Angle::new::<degree>(angle));
            Value::Foothold(Foothold {
                height,
                depth,
                along,
                slope: slope.map(degrees),
                unit,
                graduation,
            })
        });
    let vees = (lengths(2..2000), lengths(1..2000), units(), graduations()).prop_map(
        |(wide, deep, unit, graduation)| {
            Value::VOpening(VReading {
                wide,
                deep,
                bottom: Length::ZERO,
                unit,
                graduation,
            })
        },
    );
    let optional = || prop::option::of(lengths(0..3000));
    let things = (optional(), optional(), optional()).prop_map(|(height, depth, away)| {
        Value::ThingToClimb(ThingToClimb {
            height,
            depth,
            away,
        })
    });
    let sections = (lengths(1..500), lengths(1..500)).prop_map(|(a, b)| Value::Section(a, b));
    let years = prop_oneof![
        (1000_i32..2100, 0_i32..99).prop_map(|(y, more)| YearSpan::between(y, y + more)),
        (1001_i32..2100).prop_map(|y| YearSpan {
            first: Some(y),
            last: None
        }),
        (1000_i32..2100).prop_map(|y| YearSpan {
            first: None,
            last: Some(y)
        }),
    ];
    let words: Vec<(Item, Value)> = Item::all()
        .flat_map(|item| {
            item.words()
                .iter()
                .map(move |word| (item, Value::Word(word.name)))
        })
        .collect();
    prop_oneof![
        openings
            .prop_flat_map(placed)
            .prop_map(|reading| (Item::Opening, reading)),
        Just((Item::Opening, plain(Value::None))),
        heights.prop_map(move |value| (Item::Height, plain(value))),
        stair.prop_map(move |value| (Item::StairTriangle, plain(value))),
        footholds.prop_map(move |value| (Item::Foothold, plain(value))),
        vees.prop_map(move |value| (Item::VOpening, plain(value))),
        things.prop_map(move |value| (Item::ThingToClimb, plain(value))),
        sections.prop_map(move |value| (Item::PostSection, plain(value))),
        years.prop_map(move |span| (Item::Built, plain(Value::Years(span)))),
        (0_u32..216).prop_map(move |m| (Item::Children, plain(Value::Age(Age::from_months(m))))),
        (1_u32..=100_000).prop_map(move |n| (Item::Risers, plain(Value::Count(n)))),
        (1_u16..=9999, 1_u8..=12, 1_u8..=28).prop_map(move |(year, month, day)| {
            (Item::Date, plain(Value::Date { year, month, day }))
        }),
        prop::sample::select(words).prop_map(move |(item, value)| (item, plain(value))),
        "[A-Z][a-z]{7} [a-z]{8}"
            .prop_map(move |text| (Item::Property, plain(Value::Text(text.into())))),
        (lengths(1..20), units()).prop_map(move |(length, unit)| {
            let graduation = Graduation::PlusMinus(length);
            let measure = Measure {
                length,
                unit,
                bound: Bound::Exactly,
                graduation,
            };
            (Item::BuildTolerance, plain(Value::Measure(measure)))
        }),
        (lengths(1..20), units()).prop_map(move |(length, unit)| {
            let graduation = Graduation::ReadTo(length);
            let measure = Measure {
                length,
                unit,
                bound: Bound::Exactly,
                graduation,
            };
            (Item::ReadTo, plain(Value::Measure(measure)))
        }),
    ]
}

/// The reading without what no text can hold: the unit of a length that its
/// unit cannot express, and a step that no form of writing stands for.
fn essence(value: &Value) -> Value {
    let within = |graduation| match graduation {
        Graduation::PlusMinus(within) => Graduation::PlusMinus(within),
        Graduation::ReadTo(_) => Graduation::ReadTo(Length::ZERO),
    };
    let unit = LengthUnit::Millimetre;
    match value.clone() {
        Value::Measure(m) => Value::Measure(Measure {
            unit,
            graduation: within(m.graduation),
            ..m
        }),
        Value::Ball(ball) => Value::Ball(BallTest { unit, ..ball }),
        Value::Stick(stick) => Value::Stick(Stick { unit, ..stick }),
        Value::Shape(shape) => Value::Shape(ShapeReading {
            unit,
            graduation: within(shape.graduation),
            ..shape
        }),
        Value::StairTriangle(stair) => Value::StairTriangle(StairReading {
            unit,
            graduation: within(stair.graduation),
            ..stair
        }),
        Value::VOpening(vee) => Value::VOpening(VReading {
            unit,
            graduation: within(vee.graduation),
            ..vee
        }),
        Value::Foothold(foothold) => Value::Foothold(Foothold {
            unit,
            graduation: within(foothold.graduation),
            ..foothold
        }),
        other @ (Value::Age(_)
        | Value::Count(_)
        | Value::Date { .. }
        | Value::None
        | Value::Pull(_)
        | Value::Section(..)
        | Value::Text(_)
        | Value::ThingToClimb(_)
        | Value::Unknown
        | Value::Word(_)
        | Value::Years(_)
        | _) => other,
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(2000))]

    #[test]
    fn what_is_printed_is_read_back((item, reading) in readings()) {
        let text = print(&reading);
        let parsed = parse(item, &text, None)
            .map_err(|e| TestCaseError::fail(format!("{item}: {text}: {e}")))?;
        prop_assert_eq!(parsed.readings.len(), 1, "{}: {}", item, &text);
        let again = &parsed.readings[0];
        prop_assert_eq!(essence(&again.value), essence(&reading.value), "{}: {}", item, &text);
        prop_assert_eq!(again.at, reading.at, "{}: {}", item, &text);
    }

    /// Whatever the parser made of a text comes back whole, graduation and unit too.
    #[test]
    fn what_was_read_is_printed_and_read_back_whole(
        whole in 1_u32..200,
        form in 0_usize..9,
        sixty_fourths in 1_u32..64,
        digits in 0_u32..1000,
    ) {
        let text = match form {
            0 => format!("{whole} in"),
            1 => format!("{whole} {sixty_fourths}/64 in"),
            2 => format!("{whole} {}/16 in", sixty_fourths / 4),
            3 => format!("{whole} {}/2 in", sixty_fourths / 32),
            4 => format!("{whole} ft {}.{} in", sixty_fourths % 12, digits % 10),
            5 => format!("{whole}.{digits:03} in"),
            6 => format!("{whole}.{} mm", digits % 10),
            7 => format!("{whole}.{} cm", digits % 10),
            _ => format!("{whole}.{digits:03} m"),
        };
        let first = parse_length(&text, None).expect("a form that is read");
        let printed = print(&Reading { value: Value::Measure(first), at: None });
        prop_assert_eq!(parse_length(&printed, None), Ok(first), "{} as {}", text, printed);
    }

    #[test]
    fn one_length_in_several_notations_is_one_length(marks in 64_u32..64 * 96) {
        let (whole, rest) = (marks / 64, marks % 64);
        let (feet, inches) = (whole / 12, whole % 12);
        let nanometres = i64::from(marks) * 396_875;
        let (mm, part) = (nanometres / 1_000_000, nanometres % 1_000_000);
        let decimal = f64::from(marks) / 64.0;
        let texts = [
            format!("{whole} {rest}/64 in"),
            format!("{whole}-{rest}/64\""),
            format!("{whole} {rest}⁄64″"),
            format!("{marks}/64 in"),
            format!("{decimal} in"),
            format!("{decimal}\""),
            format!("{feet}' {inches} {rest}/64\""),
            format!("{feet} ft {inches}-{rest}/64 in"),
            format!("{mm}.{part:06} mm"),
            format!("{mm},{part:06} mm"),
            format!("{}.{:07} cm", nanometres / 10_000_000, nanometres % 10_000_000),
            format!("{}.{:09} m", nanometres / 1_000_000_000, nanometres % 1_000_000_000),
        ];
        for text in texts {
            let found = parse_length(&text, None)
                .map_err(|e| TestCaseError::fail(format!("{text}: {e}")))?;
            prop_assert_eq!(found.length.nanometres(), nanometres, "{}", text);
        }
    }

    #[test]
    fn no_text_makes_a_parser_panic(text in any_text()) {
        parse_everything(&text)?;
    }

    #[test]
    fn no_bytes_make_a_parser_panic(bytes in prop::collection::vec(any::<u8>(), 0..40)) {
        parse_everything(&String::from_utf8_lossy(&bytes))?;
    }
}

/// Random characters, and random sequences of the pieces that readings are made of.
fn any_text() -> impl Strategy<Value = String> {
    const PIECES: &[&str] = &[
        "1",
        "35",
        "7 3/4",
        "1/2",
        "½",
        "0",
        "9999999999999999999999",
        "1,250",
        "35.5",
        "35,5",
        "5/0",
        ".",
        ",",
        "-",
        "–",
        "+",
        "±",
        "+/-",
        "in",
        "ft",
        "'",
        "\"",
        "″",
        "mm",
        "cm",
        "m",
        "nm",
        "x",
        "×",
        "by",
        "to",
        "at",
        "over",
        "under",
        "about",
        "ball",
        "stops",
        "passes",
        "everywhere",
        "pushed",
        "by hand",
        "50 lbf",
        "slot",
        "rectangle",
        "triangle",
        "circle",
        "polygon",
        "0:0",
        "1:-2",
        ":",
        "rise",
        "going",
        "lift",
        "nosing",
        "high",
        "deep",
        "away",
        "none",
        "unknown",
        "months",
        "years",
        "1994",
        "before",
        "s",
        "2026-05-04",
        "Jul",
        "/",
        "⁄",
        "²",
        "\u{a0}",
        "\u{200b}",
        "é",
        "°",
        "%",
        ">",
        "reaches",
        "below",
        "turned",
    ];
    let pieces = prop::collection::vec(prop::sample::select(PIECES), 0..9);
    let spaced = (pieces.clone(), any::<bool>())
        .prop_map(|(pieces, spaced)| pieces.join(if spaced { " " } else { "" }));
    prop_oneof![any::<String>(), spaced]
}

/// Runs every parser over the text, and checks that what it says is sound.
fn parse_everything(text: &str) -> Result<(), TestCaseError> {
    for item in Item::all() {
        for default_unit in [None, Some(LengthUnit::Inch), Some(LengthUnit::Millimetre)] {
            match parse(item, text, default_unit) {
                Ok(parsed) => {
                    prop_assert!(!parsed.readings.is_empty());
                    for reading in &parsed.readings {
                        let printed = print(reading);
                        let again = parse(item, &printed, None);
                        let again = again.map(|p| essence(&p.readings[0].value));
                        prop_assert_eq!(
                            again,
                            Ok(essence(&reading.value)),
                            "{}: {}",
                            item,
                            printed
                        );
                    }
                }
                Err(error) => {
                    prop_assert!(text.get(error.span.clone()).is_some(), "{:?}", error);
                    let about_words = matches!(item.info().kind, Kind::Words(_));
                    prop_assert!(
                        about_words || error.message.len() < 400,
                        "{}",
                        error.message
                    );
                }
            }
        }
    }
    let _ = (
        parse_length(text, None),
        parse_force(text),
        parse_slope(text),
    );
    let _ = (parse_age(text), parse_years(text));
    Ok(())
}
