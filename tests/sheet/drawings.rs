//! The drawings: they fit their grid, both forms come from one scene, and the
//! tape lies where it should.

use std::collections::BTreeSet;
use std::fmt::Write;

use guardrule::items::At;
use guardrule::items::Drawing;
use guardrule::items::Item;
use guardrule::items::Mark;
use guardrule::items::Pictured;
use guardrule::report::plain;
use guardrule::report::vector;

/// A drawing's spans.
fn spans(drawing: Drawing) -> Vec<(At, At)> {
    let marks = drawing.scene().marks.iter();
    let spans: Vec<(At, At)> = marks
        .filter_map(|mark| {
            if let Mark::Span(from, to, _) = mark {
                Some((*from, *to))
            } else {
                None
            }
        })
        .collect();
    assert!(!spans.is_empty() || drawing == Drawing::Ball, "{drawing:?}");
    spans
}

/// The upper left corners of what is solid: on a stair, the noses.
fn corners(drawing: Drawing) -> BTreeSet<(i32, i32)> {
    let marks = drawing.scene().marks.iter();
    marks
        .filter_map(|mark| {
            if let Mark::Solid(from, _) = mark {
                Some((from.x, from.y))
            } else {
                None
            }
        })
        .collect()
}

/// The row of a sloping rail's upper edge at a column, times the rail's run.
fn on_rail(drawing: Drawing, at: At) -> bool {
    drawing.scene().marks.iter().any(|mark| {
        if let Mark::Rail(from, to) = mark {
            let run = to.x - from.x;
            (from.y - at.y) * run + (to.y - from.y) * (at.x - from.x) == 0
        } else {
            false
        }
    })
}

#[test]
fn drawings_in_plain_text() {
    let mut all = String::new();
    for drawing in Drawing::ALL {
        let scene = drawing.scene();
        writeln!(all, "{drawing:?}: {}\n", scene.caption).expect("a String takes all");
        for line in plain(scene) {
            writeln!(all, "    {line}").expect("a String takes all");
        }
        all.push('\n');
    }
    insta::assert_snapshot!(all);
}

#[test]
fn every_drawing_belongs_to_an_item_and_has_a_sentence() {
    let mut used = BTreeSet::new();
    for item in Item::all() {
        if let Pictured::By(drawings) = item.info().pictured {
            used.extend(drawings);
        }
    }
    assert_eq!(used, BTreeSet::from(Drawing::ALL));
    for drawing in Drawing::ALL {
        let caption = drawing.scene().caption;
        assert_eq!(caption.matches('.').count(), 1, "{caption}");
        assert!(caption.ends_with('.'), "{caption}");
    }
}

#[test]
fn every_mark_lies_on_its_grid() {
    for drawing in Drawing::ALL {
        let scene = drawing.scene();
        assert!(scene.columns <= 60 && scene.rows <= 16, "{drawing:?}");
        let on = |at: At| (0..scene.columns).contains(&at.x) && (0..scene.rows).contains(&at.y);
        for mark in scene.marks {
            let fits = match *mark {
                Mark::Ball { at, across } => {
                    let reach = across / 2;
                    on(At {
                        x: at.x - reach,
                        ..at
                    }) && on(At {
                        x: at.x + reach,
                        ..at
                    })
                }
                Mark::Baluster { x, rows } | Mark::Post { x, rows } => {
                    on(At { x, y: rows.0 }) && on(At { x, y: rows.1 }) && rows.0 <= rows.1
                }
                Mark::Label(at, text) => {
                    let last = i32::try_from(text.len()).expect("short") - 1;
                    on(at)
                        && on(At {
                            x: at.x + last,
                            ..at
                        })
                }
                Mark::Box(from, to) | Mark::Solid(from, to) | Mark::Span(from, to, _) => {
                    on(from) && on(to) && from.x <= to.x && from.y <= to.y
                }
                Mark::Dots(from, to) | Mark::Rail(from, to) => on(from) && on(to) && from.x < to.x,
            };
            assert!(fits, "{drawing:?}: {mark:?}");
        }
    }
}

#[test]
fn a_dimension_is_level_or_plumb() {
    for drawing in Drawing::ALL {
        for (from, to) in spans(drawing) {
            assert!(
                (from.x == to.x) != (from.y == to.y),
                "{drawing:?}: {from:?}"
            );
        }
    }
}

/// The items table (how to measure `opening`): clear between the faces, square to them.
#[test]
fn the_tape_lies_square_between_two_balusters() {
    for drawing in [Drawing::Tape, Drawing::RakedGap] {
        for (from, to) in spans(drawing) {
            assert_eq!(from.y, to.y, "{drawing:?}: level, as balusters are upright");
            for x in [from.x - 1, to.x + 1] {
                let beside = drawing.scene().marks.iter().any(|mark| {
                    matches!(mark, Mark::Baluster { x: there, rows }
                        if *there == x && (rows.0..=rows.1).contains(&from.y))
                });
                assert!(beside, "{drawing:?}: a baluster at column {x}");
            }
        }
    }
}

/// The items table (how to measure `height`, `handrail height`): plumb, from the
/// nose of a step or from the floor, to the top edge of the rail.
#[test]
fn a_height_is_plumb_from_a_nose_or_the_floor_to_the_top_of_the_rail() {
    for drawing in [Drawing::HeightOnStair, Drawing::HandrailHeight] {
        for (from, to) in spans(drawing) {
            assert_eq!(from.x, to.x, "{drawing:?}");
            let noses = corners(drawing);
            assert!(noses.contains(&(to.x, to.y + 1)), "{drawing:?}: {to:?}");
            assert!(on_rail(drawing, from), "{drawing:?}: {from:?}");
        }
    }
    let spans = spans(Drawing::Height);
    let [(from, to)] = spans.as_slice() else {
        panic!("one dimension: {spans:?}");
    };
    assert_eq!(from.x, to.x);
    let mut lowest = 0;
    for mark in Drawing::Height.scene().marks {
        if let Mark::Rail(left, right) = mark {
            lowest = lowest.max(left.y).max(right.y);
        }
    }
    assert_eq!(from.y, lowest, "where the rail is lowest");
}

/// The items table (`stair triangle`): rise plumb from tread to tread, going level
/// from nose to nose, lift plumb above the line of the noses.
#[test]
fn the_stair_triangle_has_its_three_lengths() {
    let noses: Vec<(i32, i32)> = corners(Drawing::StairTriangle).into_iter().collect();
    let [first, second, third] = noses.as_slice() else {
        panic!("three noses: {noses:?}");
    };
    let found = spans(Drawing::StairTriangle);
    let [rise, going, lift] = found.as_slice() else {
        panic!("three dimensions: {found:?}");
    };
    assert_eq!(
        (rise.0.y, rise.1.y),
        (second.1, first.1 - 1),
        "tread to tread"
    );
    assert_eq!(
        (going.0.x, going.1.x),
        (second.0, third.0 - 1),
        "nose to nose"
    );
    assert_eq!((lift.1.x, lift.1.y), (third.0, third.1 - 1), "at a nose");
    // a rail is one row thick, so its underside is a row below its upper edge
    let top = At {
        x: lift.0.x,
        y: lift.0.y - 1,
    };
    assert!(on_rail(Drawing::StairTriangle, top), "up to the underside");
}

#[test]
fn the_vectors_are_well_formed_and_say_the_same_words() {
    for drawing in Drawing::ALL {
        let scene = drawing.scene();
        let svg = vector(scene).into_string();
        let document = roxmltree::Document::parse(&svg).expect("well-formed");
        let root = document.root_element();
        assert_eq!(root.tag_name().name(), "svg");
        let named = |name: &str| -> Vec<String> {
            root.descendants()
                .filter(|node| node.has_tag_name(("http://www.w3.org/2000/svg", name)))
                .map(|node| node.text().unwrap_or_default().to_owned())
                .collect()
        };
        assert_eq!(named("title"), [scene.caption]);
        let labels: Vec<&str> = scene
            .marks
            .iter()
            .filter_map(|mark| {
                if let Mark::Label(_, text) = mark {
                    Some(*text)
                } else {
                    None
                }
            })
            .collect();
        assert_eq!(named("text"), labels, "{drawing:?}");
        let drawn = root.children().filter(roxmltree::Node::is_element).count();
        assert!(
            drawn > scene.marks.len(),
            "{drawing:?}: every mark is drawn"
        );
        for sentence in plain(scene) {
            assert!(sentence.is_ascii() && !sentence.ends_with(' '));
        }
    }
}
