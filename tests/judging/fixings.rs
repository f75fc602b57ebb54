//! What fastens a post and a rail, link by link: what is known of it only widens a
//! range, and what is ruled out stays so.

use serde_json::Value;

use crate::harness::check;
use crate::harness::finding;
use crate::harness::only_guard;
use crate::judging::load_path::LAW;
use crate::judging::load_path::WORKED;
use crate::judging::load_path::but;
use crate::judging::load_path::guard;
use crate::judging::load_path::link;
use crate::judging::load_path::load_finding;
use crate::judging::load_path::near;
use crate::judging::load_path::report;

/// The rows of a lag-screwed post, with some of them replaced or added.
pub(super) fn lagged(
    changed: &[(&'static str, &'static str)],
) -> Vec<(&'static str, &'static str)> {
    let mut rows = vec![
        ("height", "36 in"),
        ("location", "outside"),
        ("condition", "sound"),
        ("post material", "wood"),
        ("wood species", "southern pine"),
        ("post section", "4x4"),
        ("notched post", "no"),
        ("post spacing", "6 ft"),
        ("post fastening", "lag screws"),
        ("post fasteners", "4 x 3/8 in x 7 in"),
        ("fastener spacing", "5 in"),
        ("fastener depth", "2 in"),
        ("decking thickness", "1 in"),
        ("fastened to", "rim board"),
        ("framing species", "southern pine"),
        ("framing thickness", "1 1/2 in"),
        ("rim depth", "9 1/4 in"),
        ("post position", "outside the rim"),
        ("behind the post", "nothing"),
        ("moves when pushed", "no"),
        ("infill", "balusters"),
    ];
    rows.retain(|(item, _)| !changed.iter().any(|(other, _)| other == item));
    rows.extend_from_slice(changed);
    rows
}

pub(super) fn pounds(link: &Value, part: &str, end: &str) -> f64 {
    let newtons = link[part][end].as_f64();
    newtons.unwrap_or_else(|| panic!("{link:#?}")) / 4.448_221_615_260_5
}

/// A 7 in lag through a 3 1/2 in post reaches 3 1/2 in further, and a rim is
/// 1 1/2 in thick: no more thread than that may count, however long the lag is.
/// 1800·0.55^1.5·0.375^0.75 = 351.8 lb/in (NDS 2018 §12.2.1), wet 0.7, dry 1.6.
#[test]
fn a_lag_that_comes_out_behind_the_rim_holds_no_more_than_the_rim() {
    let found = load_finding(&lagged(&[]));
    let lags = link(&found, "post fixing", "pulled out");
    near(pounds(lags, "capacity", "low"), 351.8 * 1.5 * 0.7, "wet");
    near(pounds(lags, "capacity", "high"), 351.8 * 1.5 * 1.6, "dry");
    // an 8 in lag of 1/2 in: 458.4 to 1 047.7 lb
    let found = load_finding(&lagged(&[("post fasteners", "2 x 1/2 in x 8 in")]));
    let lags = link(&found, "post fixing", "pulled out");
    near(pounds(lags, "capacity", "low"), 458.4, "wet");
    near(pounds(lags, "capacity", "high"), 1047.7, "dry");
    // where nobody measured the rim it may be doubled, and that never makes a pass
    let open = load_finding(&lagged(&[
        ("post fasteners", "2 x 1/2 in x 8 in"),
        ("framing thickness", "not reached"),
    ]));
    let lags = link(&open, "post fixing", "pulled out");
    near(pounds(lags, "capacity", "low"), 458.4, "single");
    assert!(pounds(lags, "capacity", "high") > 1047.7 * 1.9);
}

/// Withdrawal uses G of the wood that holds the thread: Southern Pine 518.42, spruce
/// 345.95 lb for 1/2 in lags with 1.1875 in of thread (NDS 2018 §12.2.1).
#[test]
fn the_thread_is_in_the_wood_of_the_framing() {
    let lags = |posts, framing| {
        let found = load_finding(&lagged(&[
            ("post fasteners", "2 x 1/2 in x 3 in"),
            ("thread in framing", "1 1/2 in"),
            ("condition", "wet"),
            ("wood species", posts),
            ("framing species", framing),
        ]));
        pounds(link(&found, "post fixing", "pulled out"), "capacity", "low")
    };
    near(lags("southern pine", "southern pine"), 518.42 * 0.7, "pine");
    near(
        lags("southern pine", "spruce-pine-fir"),
        345.95 * 0.7,
        "spruce",
    );
    near(
        lags("spruce-pine-fir", "southern pine"),
        518.42 * 0.7,
        "exchanged",
    );
    let lightest = lags("southern pine", "unknown wood");
    assert!(lightest < 345.95 * 0.7, "the lightest wood that it may be");
}

/// Four 5/8 x 7 in lags, 9 in apart, in brick: no wood formula, and the demand alone.
/// T = 200·48/9 = 1 066.67 lb on the upper pair.
#[test]
fn nothing_but_wood_gets_a_value_of_wood() {
    for to in [
        "masonry",
        "concrete",
        "hidden",
        "subfloor",
        "drywall only",
        "",
    ] {
        let found = load_finding(&but(
            &lagged(&[
                ("post fasteners", "4 x 5/8 in x 7 in"),
                ("fastener spacing", "9 in"),
            ]),
            &[("fastened to", to)],
        ));
        for case in ["pulled out", "pressed down"] {
            let lags = link(&found, "post fixing", case);
            assert_eq!(lags["capacity"], Value::Null, "{to} {case}");
            assert_eq!(lags["verdict"], "not measured", "{to} {case}");
        }
        let lags = link(&found, "post fixing", "pulled out");
        near(
            pounds(lags, "demand", "high"),
            1066.67 / 2.0,
            "one of the pair",
        );
    }
    for between in ["siding", "spacers", "gap"] {
        let found = load_finding(&lagged(&[("behind the post", between)]));
        let lags = link(&found, "post fixing", "pulled out");
        assert_eq!(lags["capacity"], Value::Null, "{between}");
    }
}

/// A lag long enough to come out at the back
/// counts the full 1.5 in of the band.
#[test]
fn a_lag_that_comes_out_fills_the_wood_that_somebody_wrote() {
    let found = load_finding(&lagged(&[
        ("post fasteners", "2 x 1/2 in x 6 in"),
        ("thread in framing", "1 1/2 in"),
        ("condition", "wet"),
    ]));
    let lags = link(&found, "post fixing", "pulled out");
    near(
        pounds(lags, "capacity", "low"),
        436.56 * 1.5 * 0.7,
        "1.5 in",
    );
}

/// How much a notch leaves is not written: a range from the length of the screws
/// holds what somebody may have measured.
#[test]
fn without_the_thread_written_a_notched_post_only_widens_the_range() {
    let rows = |thread: Option<&'static str>| {
        let mut rows = lagged(&[
            ("post fasteners", "2 x 1/2 in x 3 in"),
            ("notched post", "yes"),
            ("condition", "wet"),
        ]);
        rows.extend(thread.map(|thread| ("thread in framing", thread)));
        let found = load_finding(&rows);
        let lags = link(&found, "post fixing", "pulled out").clone();
        (
            pounds(&lags, "capacity", "low"),
            pounds(&lags, "capacity", "high"),
        )
    };
    let (known, open) = (rows(Some("1 1/2 in")), rows(None));
    assert!(open.0 <= known.0 && known.1 <= open.1, "{open:?} {known:?}");
}

/// NDS 2018 Table 12.3.1A: the yield equations with the root diameter, the post
/// along its grain and the framing across; the same joint worked in Python from
/// its formulas gives 151.9 lb (l_m 1.5 in) dry with C_D 1.0.
#[test]
fn lags_that_carry_somebody_are_pushed_sideways() {
    let found = load_finding(&lagged(&[("location", "inside")]));
    let down = link(&found, "post fixing", "screws pressed down");
    near(pounds(down, "demand", "high"), 50.0, "200 lb on four");
    near(pounds(down, "capacity", "low"), 151.909, "Z'");
    assert_eq!(down["verdict"], "meets");
    let short = load_finding(&lagged(&[("thread in framing", "1 in")]));
    let down = link(&short, "post fixing", "screws pressed down");
    assert_eq!(down["verdict"], "not measured", "less than four diameters");
    assert!(down["reason"].as_str().unwrap().contains("less deep"));
}

/// A stick says how high at least: the demand has a low end, and nothing passes.
#[test]
fn a_height_that_a_stick_told_leaves_the_chain_standing() {
    let strong = [
        ("post section", "6x6"),
        ("fastener spacing", "7 in"),
        ("rim depth", "11 1/4 in"),
    ];
    let exact = load_finding(&but(WORKED, &strong));
    assert_eq!(link(&exact, "post", "bending")["verdict"], "meets");
    let mut stick = strong.to_vec();
    stick.push(("height", "reaches 36 in"));
    let found = load_finding(&but(WORKED, &stick));
    let post = link(&found, "post", "bending");
    assert_eq!(post["verdict"], "not measured");
    near(
        pounds(post, "demand", "low") / 0.112_984_829 * 4.448_221_6,
        7800.0,
        "M",
    );
    let mut deep = stick.clone();
    deep.retain(|(item, _)| *item != "post section");
    deep.push(("post section", "1 1/2 x 1 1/2 in"));
    let found = load_finding(&but(WORKED, &deep));
    assert_eq!(link(&found, "post", "bending")["verdict"], "falls short");
}

/// What somebody saw takes "no shortfall found" away, whatever the numbers say.
#[test]
fn what_is_seen_takes_a_pass_away() {
    let sound = load_finding(WORKED);
    assert_eq!(link(&sound, "post fixing", "steel")["verdict"], "meets");
    for (item, word) in [
        ("moves when pushed", "a lot"),
        ("moves when pushed", "a little"),
        ("moves when pushed", ""),
        ("condition", "cracks"),
        ("condition", "deep rust"),
        ("condition", ""),
        ("behind the post", "gap"),
        ("behind the post", ""),
        ("infill", "cables"),
        ("infill", ""),
    ] {
        let found = load_finding(&but(WORKED, &[(item, word)]));
        let steel = link(&found, "post fixing", "steel");
        assert_ne!(steel["verdict"], "meets", "{item} {word}");
    }
}

/// Ten cables under a 36 in rail: held at the top the least pull bends a 4x4 by
/// 5 100 lb·in and more for as long as they are tight; it can show a shortfall and
/// never that there is none.
#[test]
fn the_end_post_of_cables_never_passes() {
    let cables = |tension| {
        let rows = [
            ("infill", "cables"),
            ("cable count", "10"),
            ("cable tension", tension),
        ];
        let found = load_finding(&but(WORKED, &rows));
        link(&found, "post", "cables").clone()
    };
    assert_eq!(cables("")["verdict"], "not measured");
    assert_eq!(cables("1 lbf")["verdict"], "not measured");
    let tight = cables("400 lbf");
    assert_eq!(tight["verdict"], "falls short");
    let (some, more) = (cables("100 lbf"), cables("225 lbf"));
    assert!(pounds(&more, "demand", "low") > pounds(&some, "demand", "low"));
}

/// A post with more than a hundred cables is a slip of the pen (common practice, no
/// source): no pull is worked out, and the number is asked for. The pull of one cable is
/// taken as usual only where nobody measured it.
#[test]
fn up_to_a_hundred_cables_pull_at_a_post() {
    let cables = |count: &'static str, tension: &'static str| {
        let rows = [
            ("infill", "cables"),
            ("cable count", count),
            ("cable tension", tension),
        ];
        let found = load_finding(&but(WORKED, &rows));
        link(&found, "post", "cables").clone()
    };
    assert!(cables("100", "")["demand"].is_object());
    assert!(cables("1", "")["demand"].is_object());
    assert!(cables("101", "")["demand"].is_null());
    let taken = |link: &Value| link["taken"].to_string();
    let (usual, measured) = (cables("10", ""), cables("10", "100 lbf"));
    assert!(taken(&usual).contains("100 to 400 lb"), "{usual:#}");
    assert!(!taken(&measured).contains("100 to 400 lb"), "{measured:#}");
}

/// The hole of a 1/2 in bolt is 9/16 in wide (NDS 2018 §12.1.3.2): a washer of that
/// size lies on no wood at all, and a wider one on a little.
#[test]
fn a_washer_as_wide_as_its_hole_holds_nothing() {
    let why = |size: &'static str| {
        let found = load_finding(&but(WORKED, &[("washer size", size)]));
        let washer = link(&found, "post fixing", "washer").clone();
        washer["reason"].as_str().expect("a reason").to_owned()
    };
    for size in ["1/2 in", "9/16 in"] {
        assert!(why(size).contains("no wider than its hole"), "{size}");
    }
    assert!(!why("5/8 in").contains("no wider than its hole"));
}

/// A bolt needs a washer under its head and its nut (NDS 2018 §12.1.3.3, read
/// second-hand); of a lag screw no such rule was read, and nobody knows.
#[test]
fn a_bolt_without_a_washer_is_ruled_out_and_a_lag_screw_is_not_known() {
    let none = ("washer size", "none");
    let found = load_finding(&but(WORKED, &[none]));
    let bolts = link(&found, "post fixing", "washer");
    assert_eq!(bolts["verdict"], "falls short");
    assert_eq!(bolts["by_rule"], true);
    let with = load_finding(WORKED);
    assert_eq!(link(&with, "post fixing", "washer")["by_rule"], false);

    let found = load_finding(&lagged(&[none]));
    let lags = link(&found, "post fixing", "washer");
    assert_eq!(lags["verdict"], "not measured");
    let reason = lags["reason"].as_str().expect("a reason");
    assert!(reason.starts_with("no washer"), "{reason}");
}

/// No approval that was read lets a 3/8 in anchor stand nearer than 2 1/2 in to the edge
/// of the concrete (an anchor design guide, read second-hand).
#[test]
fn anchors_nearer_to_the_edge_than_any_approval_are_ruled_out() {
    let anchors = |edge| {
        let rows = [
            ("post fastening", "masonry anchors"),
            ("post position", "on top of the floor"),
            ("fastened to", "concrete"),
            ("post material", "steel tube"),
            ("post section", "2 x 2 in"),
            ("post fasteners", "4 x 3/8 in x 3 in"),
            ("fastener spacing", "3 in"),
            ("edge distance", "1/2 in"),
            ("anchor embedment", "2 in"),
            ("concrete edge", edge),
        ];
        let found = load_finding(&lagged(&rows));
        link(&found, "post fixing", "concrete").clone()
    };
    for near in ["1 in", "2 7/16 in"] {
        assert_eq!(anchors(near)["by_rule"], true, "{near}");
    }
    for far in ["2 1/2 in", "2 9/16 in"] {
        assert_eq!(anchors(far)["by_rule"], false, "{far}");
    }
}

/// Screws down through the foot of a post, and anchors in masonry, have no number here
/// (no method read): nothing about them is ever called enough.
#[test]
fn what_no_method_was_read_for_is_not_known() {
    let foot = load_finding(&lagged(&[("post position", "on top of the floor")]));
    let foot = link(&foot, "post fixing", "pulled out");
    assert_eq!(foot["verdict"], "not measured");
    assert!(foot["capacity"].is_null(), "{foot:#}");
    let anchors = |into| {
        let rows = [
            ("post fastening", "masonry anchors"),
            ("post position", "on top of the floor"),
            ("fastened to", into),
        ];
        let found = load_finding(&lagged(&rows));
        let links = found["links"].as_array().expect("links").clone();
        let fixing = links.into_iter().find(|link| link["link"] == "post fixing");
        fixing.expect("what holds the post")
    };
    let (masonry, concrete) = (anchors("masonry"), anchors("concrete"));
    assert_eq!(masonry["verdict"], "not measured");
    assert!(masonry["capacity"].is_null(), "{masonry:#}");
    assert_ne!(masonry["case"], concrete["case"]);
}

/// No published value holds for screws that miss the joist: a plate centred on one
/// bites the floor, and solid boards are no plywood (No. 14 in 1 in of Southern Pine:
/// 208.6 lb, NDS 2018 Table 12.2B).
#[test]
fn a_plate_bites_what_is_below_its_screws() {
    let plate = |changed: &[(&'static str, &'static str)]| {
        let rows = [
            ("height", "36 in"),
            ("location", "inside"),
            ("post material", "wood"),
            ("post section", "2 x 2 in"),
            ("post fastening", "plate"),
            ("post fasteners", "4 x No. 14 x 3 in"),
            ("fastener spacing", "3 in"),
            ("edge distance", "1/2 in"),
            ("framing species", "southern pine"),
            ("decking thickness", "0 in"),
        ];
        let found = load_finding(&but(&rows, changed));
        link(&found, "post fixing", "plate pulled").clone()
    };
    let joist = plate(&[("fastened to", "joist"), ("framing thickness", "1 1/2 in")]);
    let floor = plate(&[("fastened to", "subfloor")]);
    assert_eq!(joist["capacity"], floor["capacity"]);
    let boards = plate(&[("fastened to", "decking"), ("decking thickness", "1 in")]);
    near(
        pounds(&boards, "capacity", "low"),
        208.6,
        "one inch of pine",
    );
    let block = plate(&[
        ("fastened to", "blocking"),
        ("framing thickness", "5 1/2 in"),
    ]);
    assert!(pounds(&block, "capacity", "low") > pounds(&floor, "capacity", "high"));
}

/// Elastic shares: a flange of three screws is worked out both
/// ways round; here one far screw of two rows takes 7200·3/(3² + 2·0.75²) = 2133 lb.
#[test]
fn of_three_screws_the_single_one_may_be_the_far_one() {
    let found = load_finding(&[
        ("height", "36 in"),
        ("post section", "4 x 4 in"),
        ("post fastening", "plate"),
        ("post fasteners", "3 x No. 14 x 3 in"),
        ("fastener spacing", "2 1/4 in"),
        ("edge distance", "3/4 in"),
        ("fastened to", "blocking"),
        ("framing thickness", "3 1/2 in"),
    ]);
    let plate = link(&found, "post fixing", "plate");
    near(pounds(plate, "demand", "high"), 2133.3, "one far");
    // turned: 7200·3/(2·3² + 0.75²) = 1163.6 lb
    near(pounds(plate, "demand", "low"), 1163.6, "two far");
}

/// Of three lags one may be above and two below, or the other way round.
#[test]
fn of_three_lags_one_or_two_are_the_upper_ones() {
    let found = load_finding(&lagged(&[("post fasteners", "3 x 3/8 in x 7 in")]));
    let lags = link(&found, "post fixing", "pulled out");
    // 200·(39 + 5)/5 = 1760 lb, and 1275.9 lb with the pivot at the rim's bottom edge
    near(pounds(lags, "demand", "low"), 1275.9 / 2.0, "two");
    near(pounds(lags, "demand", "high"), 1760.0, "one");
    let one = load_finding(&lagged(&[("post fasteners", "1 x 3/8 in x 7 in")]));
    assert_eq!(
        link(&one, "post fixing", "holds")["verdict"],
        "not measured"
    );
}

/// Somebody who adds that a second post could not be seen takes back nothing of
/// what was seen at the first.
#[test]
fn what_falls_short_by_rule_stays_so_beside_what_cannot_be_seen() {
    for (item, word, hidden) in [
        ("fastened to", "drywall only", "not reached"),
        ("fastened to", "subfloor", "hidden"),
        ("fastened to", "subfloor", "not reached"),
        ("post fastening", "nails", "not reached"),
        ("rail end fastening", "hollow-wall anchor", "not reached"),
        ("rail end fastening", "nails", "unknown"),
    ] {
        let found = load_finding(&[("height", "36 in"), (item, word), (item, hidden)]);
        assert_eq!(found["verdict"], "falls short", "{word} and {hidden}");
    }
    let rim = [
        ("height", "36 in"),
        ("fastened to", "rim board"),
        ("framing held by", "nails into end grain"),
        ("framing held by", "not reached"),
    ];
    assert_eq!(load_finding(&rim)["verdict"], "falls short");
}

/// Aluminium extrusions have sharp corners (F_ty·S/1.65: 11 703.95 lb·in of
/// 6061-T6), round steel tube may be A500 with F_y 42 000 psi.
#[test]
fn the_strongest_metal_that_it_may_be_is_the_greatest_capacity() {
    let post = |material, section, wall| {
        let found = load_finding(&[
            ("height", "36 in"),
            ("post material", material),
            ("post section", section),
            ("wall thickness", wall),
            ("post fastening", "embedded"),
        ]);
        let post = link(&found, "post", "bending").clone();
        post["capacity"]["high"].as_f64().unwrap() / 0.112_984_829_0
    };
    near(
        post("aluminium tube", "2 x 2 in", "0.125 in"),
        11703.95,
        "6061",
    );
    // 42 000 psi · 0.447620 in³ / 1.67
    near(
        post("steel pipe", "1.9 x 1.9 in", "0.145 in"),
        11257.5,
        "A500",
    );
}

/// Without the spacing of the posts a load along the top is not known: what is
/// printed says so, and the spacing is asked for, whatever the loads are.
#[test]
fn a_load_along_the_top_asks_for_the_spacing() {
    for ruleset in ["us-buildings-2018", "ontario-2012"] {
        let rows = [
            ("height", "42 in"),
            ("post material", "wood"),
            ("post section", "4x4"),
            ("post fastening", "plate"),
        ];
        let report = check(&guard(&rows), &["--rules", ruleset, "--no-guidance"]).json();
        let findings = only_guard(&report)["findings"].as_array().unwrap().clone();
        let loads = findings.iter().find(|finding| {
            let links = finding["links"].as_array();
            links.is_some_and(|links| !links.is_empty())
        });
        let post = link(loads.unwrap(), "post", "bending").clone();
        let asks = post["asks"].to_string();
        assert!(asks.contains("post spacing"), "{ruleset}: {asks}");
        let taken = post["taken"].to_string();
        assert!(taken.contains("at one point alone"), "{ruleset}: {taken}");
    }
}

/// A notch is ruled out in a 4x4 (no notching of guard posts: American deck
/// guide, read second-hand); half a 6x6 keeps more
/// than a 4x4 has, and still shows no strength, since it may split.
#[test]
fn a_thick_post_that_is_notched_neither_falls_short_by_rule_nor_shows_strength() {
    let notched = |section| {
        let rows = lagged(&[("notched post", "yes"), ("post section", section)]);
        link(&load_finding(&rows), "post", "bending").clone()
    };
    assert_eq!(notched("4x4")["by_rule"], true);
    let thick = notched("6x6");
    assert_eq!(
        (&thick["by_rule"], &thick["verdict"]),
        (&false.into(), &"not measured".into())
    );
}

/// Pulls at two posts in either order say the same.
#[test]
fn the_order_of_pulls_changes_nothing() {
    let pulls = [
        "10 lbf 0.05 in",
        "50 lbf 0.25 in",
        "10 lbf 0.30 in",
        "50 lbf 1.20 in",
    ];
    let said = |order: [usize; 4]| {
        let mut rows = vec![("height", "42 in")];
        rows.extend(order.map(|at| ("pull test", pulls[at])));
        let found = load_finding(&rows);
        let moved = link(&found, "stiffness in the pull test", "movement");
        (
            moved["demand"]["low"].to_string(),
            moved["verdict"].to_string(),
        )
    };
    assert_eq!(said([0, 1, 2, 3]), said([2, 0, 3, 1]));
    let two = load_finding(&[
        ("height", "42 in"),
        ("pull test", "50 lbf 1/4 in"),
        ("pull test", "50 lbf 1 in"),
    ]);
    let moved = link(&two, "stiffness in the pull test", "movement");
    assert_eq!(
        moved["verdict"], "falls short",
        "the post that moved more counts"
    );
}

/// A load finding takes part in the guard's verdict only where it falls short, so
/// a guard that no longer falls short may meet the rest of the law; its headline
/// and its hazard then say that nobody judged its strength.
#[test]
fn leaving_out_what_falls_short_leaves_the_strength_unjudged_and_says_so() {
    let rows = [("height", "42 in"), ("post section", "4x4")];
    let mut short = rows.to_vec();
    short.push(("fastened to", "drywall only"));
    let with = check(&guard(&short), LAW);
    assert_eq!(with.code, 1);
    let without = check(&guard(&rows), LAW);
    assert_eq!(without.code, 0);
    let judged = without.json();
    let of = only_guard(&judged);
    assert_eq!(finding(of, "guard-load")["verdict"], "not measured");
    let hazards = of["hazards"].as_array().unwrap();
    let give_way = hazards.iter().find(|one| one["hazard"] == "give way");
    assert_eq!(give_way.unwrap()["verdict"], "not measured");
    let text = report(&rows, "text", &[]);
    let text = text.split_whitespace().collect::<Vec<_>>().join(" ");
    let headline = "Meets the 3 building rules checked; whether it would hold was not checked";
    assert!(text.contains(headline), "{text}");
}

/// Makers' tables, read second-hand: the range is for a reader, and no verdict rests on it.
#[test]
fn anchors_in_concrete_and_masonry_are_a_printed_range_and_not_measured() {
    for (to, range) in [("concrete", "400 to 790 lb"), ("masonry", "450 to 900 lb")] {
        let found = load_finding(&[("height", "42 in"), ("fastened to", to)]);
        let framing = link(&found, "framing", to);
        assert_eq!(framing["verdict"], "not measured");
        assert!(framing["reason"].as_str().unwrap().contains(range));
    }
}
