//! What must hold of every outline.

use proptest::prelude::*;

use guardrule::geometry::Corner;
use guardrule::geometry::Polygon;
use guardrule::geometry::clear_opening;

use crate::geometry::checked;
use crate::geometry::spiral::spiral;

/// Outlines round a centre, so that they are simple: from nearly round to very spiky.
fn outlines() -> impl Strategy<Value = Vec<Corner>> {
    let radii = prop::collection::vec(20.0_f64..150.0, 5..40);
    (radii, 0.0_f64..6.0, -300.0_f64..300.0).prop_map(|(radii, turn, shift)| {
        let count = f64::from(u32::try_from(radii.len()).expect("few"));
        let at = |(k, r): (u32, f64)| {
            let angle = turn + std::f64::consts::TAU * f64::from(k) / count;
            Corner {
                x_mm: shift + r * libm::cos(angle),
                y_mm: r * libm::sin(angle) - shift,
            }
        };
        (0_u32..).zip(radii).map(at).collect()
    })
}

fn of(corners: Vec<Corner>) -> guardrule::geometry::Certified {
    checked(&Polygon::new(corners).expect("simple"))
}

/// Whether two brackets of one and the same length have a value in common.
fn meet(a: guardrule::geometry::Certified, scale: f64, b: guardrule::geometry::Certified) -> bool {
    // moving and turning rounds the corners
    let room = 1e-11 * b.upper_mm;
    a.lower_mm * scale <= b.upper_mm + room && b.lower_mm <= a.upper_mm * scale + room
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]

    #[test]
    fn scaling_scales(corners in outlines(), scale in 0.001_f64..1000.0) {
        let scaled = corners.iter().map(|c| Corner {
            x_mm: c.x_mm * scale,
            y_mm: c.y_mm * scale,
        });
        prop_assert!(meet(of(corners.clone()), scale, of(scaled.collect())));
    }

    #[test]
    fn turning_and_moving_change_nothing(
        corners in outlines(),
        turn in 0.0_f64..6.3,
        shift in -1000.0_f64..1000.0,
    ) {
        let (sin, cos) = (libm::sin(turn), libm::cos(turn));
        let moved = corners.iter().map(|c| Corner {
            x_mm: c.x_mm * cos - c.y_mm * sin + shift,
            y_mm: c.x_mm * sin + c.y_mm * cos - shift,
        });
        prop_assert!(meet(of(corners.clone()), 1.0, of(moved.collect())));
    }

    #[test]
    fn the_other_way_round_and_another_first_corner_change_nothing(
        corners in outlines(),
        first in 0_usize..40,
    ) {
        let mut other = corners.clone();
        other.reverse();
        let first = first % other.len();
        other.rotate_left(first);
        prop_assert!(meet(of(corners), 1.0, of(other)));
    }

    #[test]
    fn a_corner_more_on_a_side_changes_nothing(
        corners in outlines(),
        side in 0_usize..40,
        share in 0.1_f64..0.9,
    ) {
        let side = side % corners.len();
        let (a, b) = (corners[side], corners[(side + 1) % corners.len()]);
        let between = Corner {
            x_mm: a.x_mm + share * (b.x_mm - a.x_mm),
            y_mm: a.y_mm + share * (b.y_mm - a.y_mm),
        };
        let mut more = corners.clone();
        more.insert(side + 1, between);
        prop_assert!(meet(of(corners), 1.0, of(more)));
    }

    #[test]
    fn cutting_a_corner_off_never_widens(corners in outlines(), which in 0_usize..40) {
        let count = corners.len();
        let which = which % count;
        let (before, at, after) = (
            corners[(which + count - 1) % count],
            corners[which],
            corners[(which + 1) % count],
        );
        let across = (at.x_mm - before.x_mm) * (after.y_mm - at.y_mm)
            - (at.y_mm - before.y_mm) * (after.x_mm - at.x_mm);
        // only where the corner points outward does its loss make the hole smaller
        prop_assume!(across > 0.0);
        let mut less = corners.clone();
        less.remove(which);
        let Ok(less) = Polygon::new(less) else {
            return Ok(()); // the cut would cross another side
        };
        prop_assert!(clear_opening(&less).lower_mm <= of(corners).upper_mm);
    }
}

#[test]
fn large_spirals_are_certified() {
    for corners in [100, 1_000, 10_000] {
        let start = std::time::Instant::now();
        let outline = Polygon::new(spiral(corners)).expect("simple");
        let checked_in = start.elapsed();
        let ball = checked(&outline);
        println!(
            "{corners} corners: checked in {checked_in:?}, both in {:?}",
            start.elapsed()
        );
        assert!(ball.upper_mm < 60.0, "{ball:?}");
    }
}

/// A band bent round in a ring that stays open: hundreds of places tie for the best.
/// The two circles lie 100 apart, and the chords take off less than 0.1.
#[test]
fn a_ring_of_equal_places_is_certified() {
    let at = |radius: f64, k: u32| {
        let angle = 6.2 * f64::from(k) / 249.0;
        (radius * libm::cos(angle), radius * libm::sin(angle))
    };
    let outer = (0..250).map(|k| at(1000.0, k));
    let inner = (0..250).rev().map(|k| at(900.0, k));
    let corners: Vec<(f64, f64)> = outer.chain(inner).collect();
    let ball = checked(&crate::geometry::polygon(&corners));
    assert!(ball.upper_mm <= 100.0 && ball.lower_mm >= 99.9, "{ball:?}");
}

/// Long, thin outlines: the bounds may lie apart, and hold.
#[test]
fn a_hair_of_a_metre_is_bounded() {
    for thin in [1.0, 1e-2, 1e-4, 1e-6] {
        let corners = [(0.0, 0.0), (1000.0, 0.0), (1000.0, thin), (0.0, thin)];
        let ball = clear_opening(&crate::geometry::polygon(&corners));
        assert!(
            ball.lower_mm <= thin && thin <= ball.upper_mm,
            "{thin}: {ball:?}"
        );
        assert!(ball.upper_mm - ball.lower_mm <= 1e-11, "{thin}: {ball:?}");
    }
}
