//! `guardrule layout`, as typed.

use crate::harness::run_here;

/// 68 in, balusters of 1 1/4 in, a 4 in ball: ± 1/8 in takes 0.1443 in, drying 0.0222 in,
/// so that gaps of 3.8335 in may be drawn: ceil((68 - 3.8335) / 5.0835) = 13
/// (textbook arithmetic).
#[test]
fn a_bay_in_json_has_its_count_its_gap_and_its_marks_in_millimetres() {
    let ran = run_here(&[
        "layout",
        "--clear",
        "68 in",
        "--baluster",
        "1 1/4 in",
        "--limit",
        "4 in",
        "--format",
        "json",
    ]);
    assert_eq!((ran.code, ran.err.as_str()), (0, ""));
    let bay = ran.json();
    assert_eq!(bay["count"], 13);
    assert_eq!(bay["marks"].as_array().map(Vec::len), Some(13));
    let millimetres = |key: &str| bay[key].as_f64().expect("a number");
    // (68 - 13 x 1.25) / 14 = 3.696428... in
    assert!((millimetres("gap") - 3.696_428_571 * 25.4).abs() < 1e-4);
    assert!(millimetres("largest_gap") < millimetres("limit") - millimetres("tolerance"));
    assert!(
        bay["deferral"]
            .as_str()
            .is_some_and(|text| text.contains("local authority"))
    );
}

#[test]
fn a_bay_in_text_names_every_mark_what_was_taken_and_who_decides() {
    let ran = run_here(&[
        "layout",
        "--clear",
        "1730 mm",
        "--baluster",
        "25 mm",
        "--limit",
        "110 mm",
        "--at-most",
    ]);
    assert_eq!((ran.code, ran.err.as_str()), (0, ""));
    insta::assert_snapshot!(ran.out);
}

#[test]
fn a_raked_bay_says_from_where_it_is_measured() {
    let ran = run_here(&[
        "layout",
        "--clear",
        "93 in",
        "--baluster",
        "3/4 in",
        "--limit",
        "4 in",
        "--rake",
        "7 1/2 x 10 in",
    ]);
    assert_eq!(ran.code, 0);
    let words: Vec<&str> = ran.out.split_whitespace().collect();
    let text = words.join(" ");
    assert!(
        text.contains("the upper post's face, along the rail"),
        "{text}"
    );
    assert!(text.contains("3 balusters on each would do"), "{text}");
}

#[test]
fn balusters_are_added_between_uneven_ones() {
    let ran = run_here(&[
        "layout",
        "--between",
        "5 in",
        "--between",
        "2 in",
        "--baluster",
        "1 in",
        "--limit",
        "3 1/2 in",
    ]);
    assert_eq!(ran.code, 0);
    assert!(ran.out.contains("1 baluster of 1 in to add"), "{}", ran.out);
    assert!(
        ran.out.contains("gap of 2 in: narrow enough as it is"),
        "{}",
        ran.out
    );
}

#[test]
fn all_that_is_wrong_with_the_options_is_said_at_once() {
    let ran = run_here(&[
        "layout",
        "--clear",
        "68",
        "--baluster",
        "thick",
        "--limit",
        "4 in",
    ]);
    assert_eq!(ran.code, 2);
    assert_eq!(ran.err.matches("error[G311]").count(), 2, "{}", ran.err);
    assert!(
        ran.err.contains("--clear") && ran.err.contains("--baluster"),
        "{}",
        ran.err
    );
    let tight = run_here(&[
        "layout",
        "--clear",
        "68 in",
        "--baluster",
        "1 in",
        "--limit",
        "1/8 in",
    ]);
    assert_eq!(tight.code, 2);
    assert!(
        tight.err.contains("leave nothing of the limit"),
        "{}",
        tight.err
    );
}

#[test]
fn a_bay_is_drawn_as_one_document_with_every_baluster() {
    let ran = run_here(&[
        "layout",
        "--clear",
        "68 in",
        "--baluster",
        "1 1/4 in",
        "--limit",
        "4 in",
        "--format",
        "svg",
    ]);
    assert_eq!(ran.code, 0);
    let document = roxmltree::Document::parse(&ran.out).expect("well-formed");
    let bars = document
        .descendants()
        .filter(|node| node.has_tag_name("rect") && node.attribute("height") == Some("154"));
    assert_eq!(bars.count(), 13);
    for said in [
        "A ball of 4 in must not pass; a gap may come out 1/8 in off and wood dry narrower by",
        "The local authority and licensed professionals decide.",
    ] {
        assert!(ran.out.contains(said), "{said}\n{}", ran.out);
    }
}
