//! Turned balusters: the worked profiles of the facts, and what must hold of any.

use proptest::prelude::*;

use guardrule::geometry::LargestBall;
use guardrule::geometry::Shape;
use guardrule::geometry::Station;
use guardrule::geometry::TurnedPair;
use guardrule::quantities::Length;

fn pair(centres: Length, stations: &[(Length, Length)]) -> TurnedPair {
    let station = |&(height, diameter): &(Length, Length)| Station { height, diameter };
    TurnedPair::new(centres, stations.iter().map(station).collect()).expect("a profile")
}

fn ball(pair: &TurnedPair) -> LargestBall {
    let ball = Shape::Turned(pair.clone()).largest_ball();
    assert!(ball.upper_mm.is_some_and(|upper| upper >= ball.lower_mm));
    ball
}

fn micrometres(size: f64) -> Length {
    let whole: i64 = format!("{:.0}", size * 1000.0).parse().expect("whole");
    Length::from_nanometres(whole * 1000)
}

/// r(z) = r0 − a·cos(2πz/λ), three waves: found
/// apart from this code by minimisation and by a cloud of points on both surfaces, to nine decimals.
/// Straight lines between 480 stations and whole micrometres stay within 0.01 mm of
/// the curve.
#[test]
fn the_waves_of_the_facts() {
    let rows = [
        (4.5, 0.75, 0.25, 6.0, 25.4, 3.500_000_000),
        (4.5, 0.75, 0.25, 3.0, 25.4, 3.353_529_306),
        (4.5, 0.75, 0.25, 2.0, 25.4, 3.041_944_433),
        (4.5, 0.75, 0.25, 1.0, 25.4, 2.678_598_566),
        (5.0, 1.00, 0.50, 2.0, 25.4, 2.707_694_811),
        (120.0, 22.0, 8.0, 60.0, 1.0, 78.713_902_057),
        (130.0, 25.0, 10.0, 300.0, 1.0, 100.000_000_000),
    ];
    for (centres, r0, a, wave, unit, given) in rows {
        let stations: Vec<(Length, Length)> = (0..=480)
            .map(|k| {
                let z = 3.0 * wave * f64::from(k) / 480.0;
                let turn = std::f64::consts::TAU * z / wave + std::f64::consts::PI;
                let radius = r0 - a * libm::cos(turn);
                (micrometres(z * unit), micrometres(2.0 * radius * unit))
            })
            .collect();
        let ball = ball(&pair(micrometres(centres * unit), &stations));
        let off = ball.lower_mm - given * unit;
        assert!(off.abs() < 0.01, "{wave}: off by {off} mm, {ball:?}");
        let gap = ball.upper_mm.expect("bounded") - ball.lower_mm;
        // between rails a ball sits in the middle wave, else in any; they differ by rounding
        assert!(gap < 0.002, "{wave}: {gap}");
    }
}

/// A shoulder cut square where the rail begins: what lies beyond is behind the rail.
/// Checked against GEOS 3.14.1 (shapely 2.2.0), `maximum_inscribed_circle` of the
/// outline 23.5:0 70.5:0 65:37 29:37 mm: 37.0.
#[test]
fn a_square_cut_at_a_rail_is_an_end_like_any_other() {
    let mm = |size| Length::millimetres(size);
    let cut = pair(
        mm(94),
        &[
            (mm(0), mm(37)),
            (mm(0), mm(47)),
            (mm(37), mm(58)),
            (mm(37), mm(20)),
        ],
    );
    let ball = ball(&cut);
    assert!((ball.lower_mm - 37.0).abs() < 1e-6, "{ball:?}");
    // beyond the ends the slim parts go on
    assert!(
        (ball.upper_mm.expect("bounded") - 74.0).abs() < 1e-6,
        "{ball:?}"
    );
}

/// Straight bars are slots.
#[test]
fn straight_bars_leave_their_gap() {
    let (inch, foot) = (Length::inches(1), Length::feet(1));
    let ball = ball(&pair(
        Length::inches(5),
        &[(Length::ZERO, inch), (foot, inch)],
    ));
    let upper = ball.upper_mm.expect("bounded");
    assert!(ball.lower_mm <= 101.6 && 101.6 <= upper && upper - ball.lower_mm < 1e-9);
}

/// A baluster that tapers up to its rail is slimmest at the end, where the rail closes
/// the opening, or does not: the bounds say so.
#[test]
fn at_the_ends_of_a_profile_the_bounds_lie_apart() {
    let stations = [
        (Length::ZERO, Length::millimetres(50)),
        (Length::millimetres(700), Length::millimetres(25)),
    ];
    let ball = ball(&pair(Length::millimetres(125), &stations));
    let upper = ball.upper_mm.expect("bounded");
    assert!((upper - 100.0).abs() < 1e-6, "{ball:?}");
    assert!(ball.lower_mm < 99.0 && ball.lower_mm > 96.0, "{ball:?}");
}

/// Centres, and a profile that leaves a gap everywhere.
fn pairs() -> impl Strategy<Value = (i32, Vec<(i32, i32)>)> {
    let station = (2_i32..200, 15_i32..60);
    (90_i32..200, prop::collection::vec(station, 2..12)).prop_map(|(centres, parts)| {
        let mut height = 0;
        let stations = parts.into_iter().map(|(up, diameter)| {
            let station = (height, diameter);
            height += up;
            station
        });
        (centres, stations.collect())
    })
}

fn in_mm(centres: i32, stations: &[(i32, i32)], scale: i32) -> TurnedPair {
    let mm = |size: i32| Length::millimetres(size * scale);
    let stations: Vec<(Length, Length)> = stations.iter().map(|(z, d)| (mm(*z), mm(*d))).collect();
    pair(mm(centres), &stations)
}

/// The distance from a point of the plane of the axes to the nearer baluster, walked
/// along each profile in small steps: never below the true one.
fn walked(centres: f64, stations: &[(i32, i32)], x: f64, z: f64) -> f64 {
    let mut least = f64::INFINITY;
    for pair in stations.windows(2) {
        let ((z1, d1), (z2, d2)) = (pair[0], pair[1]);
        for k in 0..=200 {
            let share = f64::from(k) / 200.0;
            let at = f64::from(z1) + share * f64::from(z2 - z1);
            let r = (f64::from(d1) + share * f64::from(d2 - d1)) / 2.0;
            for edge in [r, centres - r] {
                least = least.min(libm::hypot(x - edge, z - at));
            }
        }
    }
    least
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]

    #[test]
    fn scaling_scales((centres, stations) in pairs(), scale in 2_i32..20) {
        let one = ball(&in_mm(centres, &stations, 1));
        let many = ball(&in_mm(centres, &stations, scale));
        let times = f64::from(scale);
        prop_assert!(one.lower_mm * times <= many.upper_mm.unwrap_or(0.0) * (1.0 + 1e-12));
        prop_assert!(many.lower_mm <= one.upper_mm.unwrap_or(0.0) * times * (1.0 + 1e-12));
    }

    #[test]
    fn thicker_balusters_never_widen((centres, stations) in pairs(), which in 0_usize..12, more in 1_i32..20) {
        let before = ball(&in_mm(centres, &stations, 1));
        let mut thicker = stations.clone();
        let which = which % thicker.len();
        thicker[which].1 += more;
        let after = ball(&in_mm(centres, &thicker, 1));
        prop_assert!(after.lower_mm <= before.upper_mm.unwrap_or(0.0));
    }

    #[test]
    fn a_larger_spacing_never_narrows((centres, stations) in pairs(), more in 1_i32..60) {
        let before = ball(&in_mm(centres, &stations, 1));
        let after = ball(&in_mm(centres + more, &stations, 1));
        prop_assert!(after.upper_mm.unwrap_or(0.0) >= before.lower_mm);
        // and it widens by no more than the balusters moved apart
        prop_assert!(after.lower_mm <= before.upper_mm.unwrap_or(0.0) + f64::from(more) + 1e-9);
    }

    /// The lower bound's circle keeps clear of every point walked to, and no place
    /// tried within the profile has more room than the upper bound.
    #[test]
    fn the_bracket_holds_against_probing(
        (centres, stations) in pairs(),
        places in prop::collection::vec((0.0_f64..1.0, 0.0_f64..1.0), 30),
    ) {
        let ball = ball(&in_mm(centres, &stations, 1));
        let (centre, across) = (ball.centre.expect("a centre"), f64::from(centres));
        let room = walked(across, &stations, centre.x_mm, centre.y_mm);
        prop_assert!(2.0 * room >= ball.lower_mm - 1e-9);
        let top = f64::from(stations[stations.len() - 1].0);
        for (across_share, up) in places {
            let z = up * top;
            // between the faces at this height
            let at = stations.windows(2).find(|p| z <= f64::from(p[1].0)).expect("within");
            let ((z1, d1), (z2, d2)) = (at[0], at[1]);
            let share = (z - f64::from(z1)) / f64::from(z2 - z1);
            let r = (f64::from(d1) + share * f64::from(d2 - d1)) / 2.0;
            let x = r + across_share * (across - 2.0 * r);
            // steps of the walk are at most a millimetre and a bit long
            let near = walked(across, &stations, x, z) - 1.5;
            prop_assert!(2.0 * near <= ball.upper_mm.unwrap_or(0.0), "{x} {z}");
        }
    }
}
