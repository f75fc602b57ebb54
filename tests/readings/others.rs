//! Written ages, words, sections, fasteners and forces, and what they mean.

use guardrule::items::Item;
use guardrule::quantities::{Age, Length, YearSpan, newtons, pounds_force};
use guardrule::reading::{
    FastenerSize, Foothold, Graduation, Reading, ThingToClimb, Tilt, VReading, Value, parse,
    parse_force, parse_slope,
};

use crate::readings::accepted::IN;
use crate::readings::accepted::M_M;
use crate::readings::accepted::MM;
use crate::readings::accepted::QUARTER;
use crate::readings::accepted::only;

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
