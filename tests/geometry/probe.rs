//! A rectangular probe through an outline.

use proptest::prelude::*;

use guardrule::geometry::Corner;
use guardrule::geometry::Fit;
use guardrule::geometry::Polygon;
use guardrule::geometry::Probe;
use guardrule::geometry::Shape;
use guardrule::geometry::admits;
use guardrule::quantities::Length;

use crate::geometry::corner;
use crate::geometry::distance;
use crate::geometry::polygon;
use crate::geometry::spiral::spiral;
use crate::geometry::winds_round;

const TORSO: (f64, f64) = (88.9, 157.48);

/// The answer, after checking a placement by other means: its corners and many
/// points along its edges lie inside, no corner of the outline lies in it, and its
/// sides are as long as the probe's.
fn checked(outline: &Polygon, probe: (f64, f64)) -> Fit {
    let fit = admits(outline, probe);
    let Fit::Passes(placement) = fit else {
        return fit;
    };
    let placed = placement.expect("an outline has a placement").corners;
    let corners = outline.corners();
    for k in 0..4 {
        let (a, b) = (placed[k], placed[(k + 1) % 4]);
        for step in 0..=20 {
            let share = f64::from(step) / 20.0;
            let p = corner(
                a.x_mm + share * (b.x_mm - a.x_mm),
                a.y_mm + share * (b.y_mm - a.y_mm),
            );
            let near = distance(p, corners) <= 1e-6;
            assert!(near || winds_round(p, corners), "{p:?} of {placed:?}");
        }
    }
    for p in corners {
        assert!(!winds_round(*p, &placed), "{p:?} in {placed:?}");
    }
    let side = |a: Corner, b: Corner| libm::hypot(b.x_mm - a.x_mm, b.y_mm - a.y_mm);
    let (one, other) = (side(placed[0], placed[1]), side(placed[1], placed[2]));
    let (short, long) = (probe.0.min(probe.1), probe.0.max(probe.1));
    assert!(
        one.min(other) >= short && one.max(other) >= long,
        "{placed:?}"
    );
    fit
}

fn passes(fit: Fit) -> bool {
    matches!(fit, Fit::Passes(_))
}

#[test]
fn rectangles_as_outlines_agree_with_the_closed_form() {
    let probe = Probe::new(Length::micrometres(88_900), Length::micrometres(157_480)).unwrap();
    let mut seen = [0; 2];
    for width in (80..=190).step_by(6) {
        for height in (80..=190).step_by(7) {
            let shape = Shape::Rectangle {
                width: Length::millimetres(width),
                height: Length::millimetres(height),
            };
            let (w, h) = (f64::from(width), f64::from(height));
            let turn = f64::from(width) / 37.0;
            let (sin, cos) = (libm::sin(turn), libm::cos(turn));
            let turned = [(0.0, 0.0), (w, 0.0), (w, h), (0.0, h)]
                .map(|(x, y)| (x * cos - y * sin, x * sin + y * cos));
            let closed = shape.admits(probe, Length::ZERO);
            let searched = checked(&polygon(&turned), TORSO);
            assert_ne!(searched, Fit::Undecided, "{width} x {height}");
            assert_eq!(passes(closed), passes(searched), "{width} x {height}");
            seen[usize::from(passes(closed))] += 1;
        }
    }
    assert!(seen.iter().all(|count| *count > 30), "{seen:?}");
}

#[test]
fn triangles_as_outlines_agree_with_the_closed_form() {
    let probe = Probe::new(Length::micrometres(88_900), Length::micrometres(157_480)).unwrap();
    let mut seen = [0; 2];
    for rise in (150..=420).step_by(15) {
        for run in (150..=700).step_by(35) {
            let shape = Shape::Triangle {
                rise: Length::millimetres(rise),
                run: Length::millimetres(run),
            };
            let (r, t) = (f64::from(rise), f64::from(run));
            let closed = shape.admits(probe, Length::ZERO);
            let searched = checked(&polygon(&[(0.0, 0.0), (t, 0.0), (0.0, r)]), TORSO);
            assert_ne!(searched, Fit::Undecided, "{rise} x {run}");
            assert_eq!(passes(closed), passes(searched), "{rise} x {run}");
            seen[usize::from(passes(closed))] += 1;
        }
    }
    assert!(seen.iter().all(|count| *count > 30), "{seen:?}");
}

#[test]
fn a_hair_decides() {
    let hole = |more: f64| {
        let (w, h) = (88.9 + more, 157.48 + more);
        polygon(&[(0.0, 0.0), (w, 0.0), (w, h), (0.0, h)])
    };
    assert!(passes(checked(&hole(1e-4), TORSO)));
    assert_eq!(checked(&hole(-1e-4), TORSO), Fit::DoesNotPass);
    // no corner is written so that rounding could tell
    assert_eq!(checked(&hole(0.0), TORSO), Fit::Undecided);
}

#[test]
fn large_outlines_come_to_an_end() {
    for corners in [100, 1_000, 10_000] {
        let start = std::time::Instant::now();
        let outline = Polygon::new(spiral(corners)).expect("simple");
        let narrow = checked(&outline, TORSO);
        let first = start.elapsed();
        let small = checked(&outline, (30.0, 70.0));
        println!(
            "{corners}: {narrow:?} {first:?}, {small:?} {:?}",
            start.elapsed()
        );
        assert_eq!(narrow, Fit::DoesNotPass, "{corners}");
        assert_ne!(small, Fit::DoesNotPass, "{corners}");
    }
}

/// Outlines round a centre, so that they are simple, about as large as the probe.
fn outlines() -> impl Strategy<Value = Vec<Corner>> {
    let radii = prop::collection::vec(60.0_f64..190.0, 5..40);
    (radii, 0.0_f64..6.0).prop_map(|(radii, turn)| {
        let count = f64::from(u32::try_from(radii.len()).expect("few"));
        let at = |(k, r): (u32, f64)| {
            let angle = turn + std::f64::consts::TAU * f64::from(k) / count;
            corner(r * libm::cos(angle), r * libm::sin(angle))
        };
        (0_u32..).zip(radii).map(at).collect()
    })
}

fn scaled(corners: &[Corner], scale: f64) -> Polygon {
    let scaled = corners
        .iter()
        .map(|c| corner(c.x_mm * scale, c.y_mm * scale));
    Polygon::new(scaled.collect()).expect("simple")
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    #[test]
    fn turning_and_moving_keep_the_answer(
        corners in outlines(),
        turn in 0.0_f64..6.3,
        shift in -1000.0_f64..1000.0,
    ) {
        let (sin, cos) = (libm::sin(turn), libm::cos(turn));
        let moved = corners.iter().map(|c| corner(
            c.x_mm * cos - c.y_mm * sin + shift,
            c.x_mm * sin + c.y_mm * cos - shift,
        ));
        let there = checked(&Polygon::new(moved.collect()).expect("simple"), TORSO);
        let here = checked(&scaled(&corners, 1.0), TORSO);
        prop_assert_ne!(here, Fit::Undecided);
        prop_assert_eq!(passes(here), passes(there));
    }

    #[test]
    fn scaling_both_keeps_the_answer(corners in outlines(), scale in 0.01_f64..100.0) {
        let probe = (TORSO.1 * scale, TORSO.0 * scale);
        let here = checked(&scaled(&corners, 1.0), TORSO);
        let there = checked(&scaled(&corners, scale), probe);
        prop_assert_eq!(passes(here), passes(there));
    }

    #[test]
    fn a_larger_hole_or_a_smaller_probe_passes_what_passed(
        corners in outlines(),
        larger in 1.0_f64..1.5,
        smaller in 0.5_f64..1.0,
    ) {
        // round a centre, so that the larger outline holds the smaller
        let here = checked(&scaled(&corners, 1.0), TORSO);
        let more = checked(&scaled(&corners, larger), TORSO);
        let less = checked(&scaled(&corners, 1.0), (TORSO.0 * smaller, TORSO.1));
        if passes(here) {
            prop_assert!(passes(more) && passes(less), "{more:?} {less:?}");
        }
    }
}

/// Random outlines by shapely's erosion at 360 angles, as `probe_oracle.py` froze them.
#[test]
fn what_shapely_could_tell_is_told_alike() {
    const FROZEN: &str = include_str!("probe.txt");
    let number = |text: &str| -> f64 { text.parse().expect("a number") };
    let (mut fits, mut not) = (0, 0);
    for line in FROZEN.lines().filter(|line| !line.starts_with('#')) {
        let mut words = line.split(' ').skip(1);
        let says = words.next().expect("an answer");
        let corners: Vec<(f64, f64)> = words
            .map(|corner| corner.split_once(':').expect("x:y"))
            .map(|(x, y)| (number(x), number(y)))
            .collect();
        let ours = checked(&polygon(&corners), TORSO);
        assert_ne!(ours, Fit::Undecided, "{line}");
        match says {
            "fits" => fits += 1,
            "no" => not += 1,
            _ => continue,
        }
        assert_eq!(passes(ours), says == "fits", "{line}");
    }
    assert!(fits > 50 && not > 20, "{fits} fit, {not} do not");
}
