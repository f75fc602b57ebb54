//! What is refused, with the message, the marked place and the help in full.

use guardrule::items::Item;
use guardrule::reading::{ReadingError, parse, parse_age, parse_force, parse_length, parse_years};

/// An item and the readings that are refused for it.
pub(super) const REFUSED: &[(Item, &[&str])] = &[
    (
        Item::Height,
        &[
            "36",
            "902",
            "36.5",
            "3 7/8",
            "1,250 mm",
            "1,250,000 mm",
            "1.250,5 mm",
            "35.333333 in",
            "0.1234567 mm",
            "4 3/8 mm",
            "1 m 3 in",
            "3 ft 20 cm",
            "1 m 20 cm",
            "11 in 2 ft",
            "2-11 1/2 in",
            "2 11 1/2 in",
            "1 250 mm",
            "5-6 in",
            "90-95 cm",
            "2'-11 1/2",
            "1/3 in",
            "35⅓ in",
            "5/0 in",
            "3 9/8 in",
            "33 1/2/3 in",
            "-5 in",
            "+5 in",
            "- 5 in",
            "",
            "about 36 in",
            "~90 cm",
            "approx. 3 ft",
            "about high",
            "902 nm",
            "36 inchs",
            "36 yards",
            "36 furlongs",
            "35 m",
            "0 in",
            "0",
            "9999999999999 in",
            "999999999999 in",
            "35.5'",
            "none",
            "at least 36 in",
            "≥ 36 in",
            "max 36 in",
            "above 36 in",
            "36+ in",
            "1.829 mm",
            "38 in +/- 3",
            "910 mm ± 4",
            "reaches",
            "4 in ball stops",
            "36 in high",
            "36 in approx",
            "about 36",
            "no railing",
            "36-ish",
            "36 in or so",
            "1.05E2",
            "1.050 mm",
            "\"36 in\"",
            "5 in ± 5 in",
            "36 in ± 0 in",
            "36 in ± 1/2",
            "over 36 in ± 1/2 in",
            "over 35 to 36 in",
            "35 to",
            "3-Jul",
            "Jul-3",
            "2026-03-04",
            "03/04/2026",
            "3/4/26",
            "3.4.2026",
            "04-Jul-26",
            "36 in; 37 in",
            "thirty-six inches",
            "9000 mm",
            "1,250.5 mm",
            "1 / 2 in",
            "36 x 4 in",
            "2.5 ft 3 in",
            "3 ft 4 ft",
            "35.5 1/2 in",
        ],
    ),
    (
        Item::Opening,
        &[
            "diamond 4 x 5 in",
            "triangle rise 7 going 10 in",
            "circle",
            "polygon (0,0) (120,0) mm",
            "98",
            "3 7/8",
            "12",
            "4 in ball",
            "ball stops",
            "ball 4 in stops",
            "4 in ball stops passes",
            "4 in ball stops stops",
            "4 in ball stopps",
            "4 in ball stops evrywhere",
            "4 in ball stops pushed",
            "4 in ball stops pushed 50",
            "4 in ball stops pushed 50 kgf",
            "4 in ball stops pushed 0 lbf",
            "4 in ball stops wiggled",
            "4 ball stops",
            "0 in ball stops",
            "40 m ball stops",
            "4 in ± 1 mm ball stops",
            "3 in at 38",
            "3 in at 38 m",
            "3 in at",
            "turned 3 in",
            "turned",
            "turned 4 1/2 in centres",
            "turned 4 1/2 in centres 0:1",
            "turned 4 1/2 in centres 0:1 6",
            "turned 4 1/2 in centres 0:1 6 1 in",
            "turned 4 1/2 centres 0:1 6:1",
            "turned 4 1/2 in centres 6:1 0:1 in",
            "turned 4 1/2 in centres 0:1 0:1 in",
            "turned 4 1/2 in centres 0:5 6:1 in",
            "turned 4 1/2 in centres 0:0 6:1 in",
            "turnd 4 1/2 in centres 0:1 6:1 in",
            "raked",
            "raked 4 1/2 in along",
            "raked 4 1/2 in rise 7 3/4 going 10",
            "raked 4 1/2 in along rise 7 3/4",
            "raked 4 1/2 in along level at 37 deg",
            "raked 4 1/2 in along at 85 deg",
            "raked 4 1/2 in along at 0 deg",
            "raked 0 in along at 37 deg",
            "raked 4 1/2 in along rise 7 3/4 going 0",
            "raked 4 1/2 along at 37 deg",
            "raked 40 ft along at 37 deg",
            "cable",
            "cable 3 in spacing",
            "cable 3 in spacing 1/8 in",
            "cable 3 in spacing 3 in diameter",
            "cable 3 in spacing 0 in diameter",
            "cable 3 in spacing 1/8 in diameter tension 200 lbf",
            "cable 3 in spacing 1/8 in diameter 36 in free tension 200",
            "cable 3 spacing 1/8 diameter",
            "rods 3 in spacing 1/2 in diameter 36 in free tension 200 lbf",
            "cabel 3 in spacing 1/8 in diameter",
            "slot",
            "slot 3 x 4 in",
            "rectangle 3 in",
            "rectangle 3 x 4",
            "rectangle 3 in x 4",
            "rectangle 3 x 4 x 5 in",
            "rectangle 0 x 4 in",
            "rectangl 3 x 4 in",
            "3 x 4 in",
            "polygon 0:0 120:0 mm",
            "polygon 0:0 120:0 60:90",
            "polygon 0:0 1,5:0 60:90 mm",
            "polygon 0:0 120 60:90 mm",
            "polygon 0:0 1e5:0 60:90 mm",
            "polygon 0:0 4 1/2:0 60:90 in",
            "polygon 0:0 120:90 120:0 0:90 mm",
            "polygon 0:0 4:0 4:4 2:0 0:4 in",
            "polygon 0:0 120:0 60:0 mm",
            "polygon 0:0 120:0 60:90 0:0 mm",
            "polygon 0:0 120:0 120:0 60:90 mm",
            "polygon 0:0 120:0 60:90 m",
        ],
    ),
    (Item::Drop, &["9", "none", "below 8 ft", "reaches 8 ft"]),
    (Item::Place, &["none", "stiar", "garden", "back porch"]),
    (Item::Paint, &["not sound"]),
    (
        Item::StairTriangle,
        &[
            "rise 7 3/4 going 10 lft 1 in",
            "rise 7 3/4 going 10 lift 1 nossing 1 in",
            "7 3/4 x 10 in",
            "rise 7 3/4 going 10",
            "rise 7 3/4 in going 10 lift 2 in",
            "rise 0 going 10 in",
            "rise 210 going 28 lift 60 mm",
            "rise 21 going 280 lift 60 mm",
            "rise 7 3/4 going 1 lift 3 in",
            "rise 7 in",
            "going 7 in",
            "rise 7 rise 8 in",
            "rise 7 going 10 lift -1 in",
            "6 in",
            "4 in ball passes at 3 in",
        ],
    ),
    (
        Item::Foothold,
        &[
            "450 mm",
            "40 mm deep",
            "yes",
            "0 in high",
            "450 mm high 450 mm high",
            "450 mm high sloped 95 deg",
            "450 mm high sloped",
            "900 to 100 mm every 100 mm",
            "100 to 900 mm",
            "100 to 900 mm every 1 mm",
            "0 to 900 mm every 100 mm",
        ],
    ),
    (
        Item::VOpening,
        &[
            "5 in wide",
            "6 in deep",
            "5 in",
            "5 in wide 0 in deep",
            "5 in wide 6 in deep 5 in at the bottom",
            "5 in wide 5 in wide 6 in deep",
            "yes",
        ],
    ),
    (Item::ThingToClimb, &["chair", "18 in"]),
    (Item::PostSection, &["7x7", "90 mm", "0 x 4 in"]),
    (
        Item::Risers,
        &["0", "thirteen", "13 steps", "3.5", "999999999", "-3"],
    ),
    (
        Item::Children,
        &[
            "3",
            "2.3 years",
            "6 weeks",
            "-3 years",
            "30 years",
            "2 to 4 years",
            "2-4 years",
            "2",
        ],
    ),
    (
        Item::Built,
        &[
            "94",
            "1994s",
            "1900s",
            "1995-1990",
            "2021-02-30",
            "03/04/2021",
            "old",
            "202",
            "0202",
            "1994 or so",
            "May 2004",
        ],
    ),
    (
        Item::Date,
        &["2026-02-29", "03/04/2026", "25/12/2026", "yesterday"],
    ),
    (Item::Infill, &["spindels", "metal bars", "bars", "wood"]),
    (Item::Place, &["3rd floor", "flat roof", "landig"]),
    (Item::MovesWhenPushed, &["yes"]),
    (Item::PostFastening, &["none", "loose"]),
    (Item::Drop, &["3rd floor", "8 ft+", "8+ ft"]),
    (Item::BuildTolerance, &["0 mm"]),
    (Item::ReadTo, &["1/16"]),
    (Item::HandrailHeight, &["reaches 36 in"]),
];

#[test]
fn refused_readings_say_what_to_write() {
    let mut shown = String::new();
    for (item, texts) in REFUSED {
        for text in *texts {
            let error = parse(*item, text, None).expect_err(text);
            shown.push_str(&format!("{item}: {text}\n{}", as_shown(text, &error)));
        }
    }
    insta::assert_snapshot!(shown);
}

#[test]
fn every_refusal_offers_something_and_marks_a_place() {
    for (item, texts) in REFUSED {
        for text in *texts {
            let error = parse(*item, text, None).expect_err(text);
            assert!(error.help.is_some(), "{item}: {text}");
            assert!(text.get(error.span.clone()).is_some(), "{item}: {text}");
            assert!(!error.message.ends_with('.'), "{}", error.message);
        }
    }
}

#[test]
fn plain_quantities_refuse_what_is_more_than_one() {
    for text in [
        "",
        "36",
        "over 36 in",
        "36 in ± 1/8 in",
        "5 to 6 in",
        "none",
        "-1 in",
        "36 in x",
    ] {
        assert!(parse_length(text, None).is_err(), "{text}");
    }
    for text in [
        "",
        "50",
        "50 kgf",
        "0 lbf",
        "-5 N",
        "50 lbf down",
        "1000000 kN",
    ] {
        assert!(parse_force(text).is_err(), "{text}");
    }
    for text in ["", "3", "18 years", "-1 months", "3 years or so"] {
        assert!(parse_age(text).is_err(), "{text}");
    }
    for text in ["", "94", "1995-1990", "1994 or so", "19945", "before"] {
        assert!(parse_years(text).is_err(), "{text}");
    }
}

/// The help of a spreadsheet's date is the same in whatever form it wrote it.
#[test]
fn dates_of_a_spreadsheet_are_named_as_such() {
    for text in [
        "3-Jul",
        "Jul-3",
        "3-Jul-26",
        "2026-03-04",
        "03/04/2026",
        "3/4/26",
        "3.4.2026",
    ] {
        for item in [
            Item::Height,
            Item::Opening,
            Item::PostSection,
            Item::Children,
            Item::Risers,
        ] {
            let error = parse(item, text, None).expect_err(text);
            assert!(
                error.message.contains("spreadsheet"),
                "{item} {text}: {error}"
            );
        }
    }
}

fn as_shown(text: &str, error: &ReadingError) -> String {
    let marked = &text[error.span.clone()];
    let help = error.help.as_deref().unwrap_or("nothing offered");
    format!("  [{marked}] {}\n  {help}\n", error.message)
}
