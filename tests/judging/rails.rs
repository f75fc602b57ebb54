//! How the end of a rail is loaded and held.

use serde_json::Value;

use crate::judging::fixings::lagged;
use crate::judging::fixings::pounds;
use crate::judging::load_path::WORKED;
use crate::judging::load_path::but;
use crate::judging::load_path::link;
use crate::judging::load_path::load_finding;
use crate::judging::load_path::near;
use crate::judging::load_path::ratio;

/// The end of a rail works as it sits: in end grain on top of a post or between two,
/// pulled out of side grain on the outside face (NDS 2018 §12.2 and §12.5.2.2; two
/// No. 10 x 3 in in Southern Pine outdoors, worked apart by the dowel equations).
#[test]
fn how_a_rail_end_is_loaded_follows_from_where_the_rail_sits() {
    let rail = |position, fasteners, species| {
        let rows = but(
            &lagged(&[
                ("rail section", "3 1/2 x 1 1/2 in"),
                ("rail end fastening", "screws into a post"),
            ]),
            &[
                ("rail position", position),
                ("rail end fasteners", fasteners),
                ("wood species", species),
            ],
        );
        load_finding(&rows)
    };
    for (screws, species, low, high, ratio_high, ratio_low, verdict) in [
        (
            "2 x No. 10 x 3 in",
            "southern pine",
            119.84,
            273.92,
            1.669,
            0.730,
            "too close to call",
        ),
        (
            "2 x No. 10 x 3 in",
            "spruce-pine-fir",
            93.11,
            212.81,
            2.148,
            0.940,
            "too close to call",
        ),
        (
            "2 x No. 8 x 2 1/2 in",
            "southern pine",
            94.41,
            215.80,
            2.118,
            0.927,
            "too close to call",
        ),
        (
            "2 x No. 8 x 2 1/2 in",
            "spruce-pine-fir",
            68.12,
            155.69,
            2.936,
            1.285,
            "falls short",
        ),
        (
            "2 x No. 10 x 3 in",
            "cedar",
            81.23,
            185.67,
            2.462,
            1.077,
            "falls short",
        ),
    ] {
        let found = rail("on top", screws, species);
        let out = link(&found, "rail end", "pushed outward");
        near(pounds(out, "capacity", "low"), low, species);
        near(pounds(out, "capacity", "high"), high, species);
        near(ratio(out, "high"), ratio_high, species);
        near(ratio(out, "low"), ratio_low, species);
        assert_eq!(out["verdict"], verdict, "{screws} in {species}");
        // upward nothing that may be counted
        let up = link(&found, "rail end", "upward");
        assert_eq!(
            (&up["capacity"], &up["verdict"]),
            (&Value::Null, &"not measured".into())
        );
    }
    // a lag of 1/4 x 4 in through the cap: 78.86 lb across, 456.29 lb upward
    let found = rail("on top", "1 x 1/4 in x 4 in", "southern pine");
    let out = link(&found, "rail end", "pushed outward");
    near(pounds(out, "capacity", "low"), 78.86 * 0.7, "wet");
    let up = link(&found, "rail end", "upward");
    near(pounds(up, "capacity", "low"), 456.29 * 0.7, "wet");
    // on the outside face they are pulled: the thread alone would hold 491.4 to 210.5 lb in
    // side grain, and the heads are pulled through the rail before that, 1725·π·D_H²·G² each
    for (species, thread, dry) in [
        ("southern pine", 491.4, 432.02),
        ("douglas fir-larch", 406.1, 357.04),
        ("spruce-pine-fir", 286.6, 251.93),
        ("cedar", 210.5, 185.09),
    ] {
        assert!(dry < thread);
        let found = but(
            &lagged(&[
                ("rail section", "1 1/2 x 3 1/2 in"),
                ("rail end fastening", "screws into a post"),
                ("rail position", "outside face"),
                ("rail end fasteners", "2 x No. 10 x 3 in"),
            ]),
            &[("wood species", species)],
        );
        let found = load_finding(&found);
        let out = link(&found, "rail end", "pushed outward");
        near(pounds(out, "capacity", "low"), dry * 0.7, species);
        near(pounds(out, "capacity", "high"), dry * 1.6, species);
    }
    // on the inside face a push outward presses the rail on the posts
    let found = rail("inside face", "2 x No. 10 x 3 in", "southern pine");
    let links = found["links"].as_array().unwrap();
    let outward = links
        .iter()
        .any(|link| link["case"] == "pushed outward" && link["link"] == "rail end");
    assert!(!outward, "{links:#?}");
    // where nobody wrote it, never a pass and never a shortfall
    let found = rail("", "12 x No. 10 x 3 in", "southern pine");
    let out = link(&found, "rail end", "pushed outward");
    assert_eq!(out["verdict"], "not measured");
    assert!(out["asks"].to_string().contains("rail position"));
}

/// A 5/4 board has no value of its own: at the best value of any lumber it carries
/// 200 lb over one span of 81.0 in and over several of 98.8 in; longer falls short,
/// shorter is never a pass (2400·1.15·1.6 psi on 0.9167 in³, against 0.204915·P·L).
#[test]
fn of_a_thin_board_only_a_shortfall_can_be_told() {
    for (bay, verdict) in [
        ("4 ft", "not measured"),
        ("80 in", "not measured"),
        ("98 1/2 in", "not measured"),
        ("99 in", "falls short"),
    ] {
        let board = [("rail section", "5 1/2 x 1 in"), ("post spacing", bay)];
        let found = load_finding(&but(WORKED, &board));
        assert_eq!(
            link(&found, "top rail", "down")["verdict"],
            verdict,
            "{bay}"
        );
    }
}

/// A second rail on edge below the cap carries it downward: 3 987.5 lb·in with C_D 1.0
/// for a 2x4 on a 2x4 of Southern Pine.
#[test]
fn a_second_rail_carries_the_cap() {
    let with = [("lower rail section", "1 1/2 x 3 1/2 in")];
    let found = load_finding(&but(WORKED, &with));
    let down = link(&found, "top rail", "down");
    near(ratio(down, "high"), 0.903, "C_D 1.0");
    near(ratio(down, "low"), 0.564, "C_D 1.6");
    assert_eq!(down["verdict"], "meets");
    let open = load_finding(&but(WORKED, &[("lower rail section", "")]));
    let down = link(&open, "top rail", "down");
    assert_eq!(down["verdict"], "too close to call");
    near(ratio(down, "high"), 2.267, "alone");
}

/// 16d common toe-nails: 0.83·Z = 127.76, 116.94, 99.06 lb each in Southern Pine,
/// Douglas Fir-Larch and spruce (NDS 2018 §12.3.10.2 and C_tn, worked apart).
#[test]
fn toe_nails_between_posts_carry_across_and_not_along() {
    for (species, one) in [
        ("southern pine", 127.76),
        ("douglas fir-larch", 116.94),
        ("spruce-pine-fir", 99.06),
    ] {
        let found = load_finding(&but(
            &lagged(&[
                ("rail end fastening", "nails"),
                ("rail position", "between posts"),
                ("rail end fasteners", "2 x 0.162 in x 3.5 in"),
                ("location", "inside"),
            ]),
            &[("wood species", species)],
        ));
        let out = link(&found, "rail end", "pushed outward");
        near(pounds(out, "capacity", "low"), 2.0 * one, species);
        assert_eq!(link(&found, "rail end", "along")["capacity"], Value::Null);
    }
}
