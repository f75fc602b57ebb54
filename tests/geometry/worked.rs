//! Openings worked by ourselves apart from this code: enumeration of all triples of
//! edges and corners with 40 digits (mpmath 1.3.0), checked against exact formulas, a
//! linear program (scipy 1.17.1), branch and bound, and GEOS 3.14.1.

use crate::geometry::checked;
use crate::geometry::polygon;

type Corners = Vec<(f64, f64)>;

fn regular(count: u32, radius: f64) -> Corners {
    ring(count, |_| radius)
}

fn ring(count: u32, radius: impl Fn(u32) -> f64) -> Corners {
    let at = |k: u32| {
        let angle = std::f64::consts::TAU * f64::from(k) / f64::from(count);
        (radius(k) * libm::cos(angle), radius(k) * libm::sin(angle))
    };
    (0..count).map(at).collect()
}

fn star(count: u32, outer: f64, inner: f64) -> Corners {
    ring(count, |k| if k % 2 == 0 { outer } else { inner })
}

fn rectangle_turned() -> Corners {
    let cos = 1.0 / libm::sqrt(1.0 + 0.775 * 0.775);
    let sin = 0.775 * cos;
    let turn = |(x, y): (f64, f64)| (x * cos - y * sin, x * sin + y * cos);
    [(0.0, 0.0), (4.2, 0.0), (4.2, 20.0), (0.0, 20.0)]
        .map(turn)
        .to_vec()
}

fn scroll_bay() -> Corners {
    let left = |k: u32| {
        let angle = std::f64::consts::PI * f64::from(k) / 12.0;
        (1.2 * libm::sin(angle), f64::from(k) / 2.0)
    };
    let up = (0..=24).map(|k| (left(k).0 + 5.0, left(k).1));
    let down = (0..=24).rev().map(left);
    up.chain(down).collect()
}

/// A frame of 8 by 8 round a bar of 3 by 3, cut open by a hair through one limb,
/// far from the corners that govern.
fn frame() -> Corners {
    vec![
        (0.0, 0.0),
        (8.0, 0.0),
        (8.0, 8.0),
        (0.0, 8.0),
        (0.0, 4.0005),
        (2.5, 4.0005),
        (2.5, 5.5),
        (5.5, 5.5),
        (5.5, 2.5),
        (2.5, 2.5),
        (2.5, 3.9995),
        (0.0, 3.9995),
    ]
}

#[rustfmt::skip]
fn worked() -> Vec<(u32, Corners, f64)> {
    vec![
        (1, vec![(0.0, 0.0), (3.875, 0.0), (3.875, 32.0), (0.0, 32.0)], 3.875),
        (2, vec![(0.0, 0.0), (4.0, 0.0), (4.0, 4.0), (0.0, 4.0)], 4.0),
        (3, vec![(0.0, 0.0), (4.0, 0.0), (0.0, 3.0)], 2.0),
        (4, vec![(0.0, 0.0), (10.0, 0.0), (0.0, 7.75)], 5.098_419_071_120),
        (5, vec![(0.0, 0.0), (11.0, 0.0), (0.0, 7.0)], 4.961_595_189_595),
        (6, vec![(0.0, 0.0), (240.0, 0.0), (0.0, 190.0)], 123.895_442_699_721),
        (7, vec![(0.0, 0.0), (6.0, 0.0), (3.0, 3.0 * libm::sqrt(3.0))], 3.464_101_615_138),
        (8, vec![(0.0, 0.0), (6.0, 0.0), (3.0, 8.0)], 4.158_002_808_988),
        (9, vec![(0.0, 0.0), (14.0, 0.0), (5.0, 12.0)], 8.0),
        (10, vec![(-3.0, 0.0), (0.0, -4.0), (3.0, 0.0), (0.0, 4.0)], 4.8),
        (11, vec![(-2.0, 0.0), (0.0, -2.75), (2.0, 0.0), (0.0, 2.75)], 3.234_944_337_213),
        (12, vec![(0.0, 0.0), (5.0, 0.0), (8.0, 4.0), (3.0, 4.0)], 4.0),
        (13, vec![(0.0, 0.0), (3.9, 3.0225), (3.9, 33.0225), (0.0, 30.0)], 3.9),
        (14, rectangle_turned(), 4.2),
        (15, vec![(0.0, 0.0), (6.0, 0.0), (6.0, 3.0), (0.0, 7.0)], 4.880_570_535_876),
        (16, vec![(0.0, 0.0), (2.0, 3.0), (0.0, 7.0), (-2.0, 3.0)], 3.466_338_718_142),
        (17, regular(5, 2.0), 3.236_067_977_500),
        (18, regular(6, 2.0), 3.464_101_615_138),
        (19, regular(8, 2.2), 4.065_069_943_050),
        (20, vec![(0.0, 0.0), (4.0, -1.0), (7.0, 1.0), (6.5, 5.0), (3.0, 6.5), (-0.5, 4.0)], 6.735_134_743_208),
        (21, vec![(0.0, 0.0), (10.0, 0.0), (10.0, 4.0), (4.0, 4.0), (4.0, 9.0), (0.0, 9.0)], 4.686_291_501_015),
        (22, vec![(2.0, 0.0), (4.0, 0.0), (4.0, 2.0), (6.0, 2.0), (6.0, 4.0), (4.0, 4.0), (4.0, 6.0), (2.0, 6.0), (2.0, 4.0), (0.0, 4.0), (0.0, 2.0), (2.0, 2.0)], 2.828_427_124_746),
        (23, vec![(0.0, 4.0), (2.5, 4.0), (2.5, 0.0), (5.5, 0.0), (5.5, 4.0), (8.0, 4.0), (8.0, 7.0), (0.0, 7.0)], 3.75),
        (24, vec![(0.0, 0.0), (9.0, 0.0), (9.0, 8.0), (6.0, 8.0), (6.0, 3.0), (3.0, 3.0), (3.0, 8.0), (0.0, 8.0)], 3.514_718_625_761),
        (25, vec![(0.0, 0.0), (6.0, 3.0), (0.0, 6.0), (2.0, 3.0)], 2.472_135_955_000),
        (26, star(8, 4.0, 1.5), 3.0),
        (27, star(10, 4.0, 2.0), 4.0),
        (28, frame(), 2.928_932_188_135),
        (29, vec![(0.0, 0.0), (10.0, 0.0), (10.0, 7.75), (20.0, 7.75), (20.0, 15.5), (30.0, 15.5), (30.0, 23.25), (40.0, 23.25), (40.0, 32.0), (0.0, 1.0)], 5.756_279_596_426),
        (30, scroll_bay(), 4.991_668_281_510),
        (31, vec![(0.0, 0.0), (6.0, 0.0), (6.0, 2.0), (4.0, 2.5), (4.0, 8.0), (2.0, 8.0), (2.0, 2.5), (0.0, 2.0)], 2.9),
    ]
}

#[test]
fn the_worked_openings_lie_between_the_bounds() {
    let worked = worked();
    assert_eq!(worked.len(), 31);
    for (number, corners, diameter) in worked {
        let ball = checked(&polygon(&corners));
        // twelve decimals are given
        assert!(
            ball.lower_mm <= diameter + 1e-12,
            "{number}: {ball:?}, {diameter}"
        );
        assert!(
            ball.upper_mm >= diameter - 1e-12,
            "{number}: {ball:?}, {diameter}"
        );
    }
}

/// GEOS 3.14.1 stops at 3.699268 here, whatever its tolerance: the exact answer
/// is 3.7, by construction.
#[test]
fn a_slot_with_bumps_in_which_a_known_library_stops_short() {
    let bump = |x: f64, inward: f64, y: f64| [(x, y - 0.4), (x + inward, y), (x, y + 0.4)];
    let mut corners = vec![(0.0, 0.0), (3.7, 0.0)];
    corners.extend(bump(3.7, -0.5, 4.4));
    corners.extend(bump(3.7, -0.5, 12.4));
    corners.extend([(3.7, 24.0), (0.0, 24.0)]);
    let mut left: Vec<(f64, f64)> = bump(0.0, 0.5, 8.4).into();
    left.extend(bump(0.0, 0.5, 16.4));
    corners.extend(left.into_iter().rev());
    let ball = checked(&polygon(&corners));
    assert!(ball.lower_mm <= 3.7 && 3.7 <= ball.upper_mm, "{ball:?}");
}

/// Limbs of 3.6 in, long: a ball of 2 w (2 − √2) = 4.2177 in passes the corner.
#[test]
fn the_corner_of_an_l_passes_more_than_its_limbs() {
    let limbs = [
        (0.0, 0.0),
        (20.0, 0.0),
        (20.0, 3.6),
        (3.6, 3.6),
        (3.6, 20.0),
        (0.0, 20.0),
    ];
    let ball = checked(&polygon(&limbs));
    let closed = 2.0 * 3.6 * (2.0 - std::f64::consts::SQRT_2);
    assert!(
        ball.lower_mm <= closed && closed <= ball.upper_mm,
        "{ball:?}"
    );
    assert!((ball.lower_mm - 4.2177).abs() < 0.00005);
}

/// A regular outline of many corners: 2 r cos(π/n); squeezed to an ellipse's corners, nearly its minor axis.
#[test]
fn round_outlines_of_many_corners() {
    for count in [20_u32, 100, 1000, 5000] {
        let around = regular(count, 100.0);
        let ball = checked(&polygon(&around));
        let closed = 200.0 * libm::cos(std::f64::consts::PI / f64::from(count));
        // the corners are rounded
        assert!(ball.lower_mm <= closed + 1e-12, "{count}: {ball:?}");
        assert!(ball.upper_mm >= closed - 1e-12, "{count}: {ball:?}");
        let squeezed: Corners = around.iter().map(|(x, y)| (*x, 0.4 * y)).collect();
        let ball = checked(&polygon(&squeezed));
        assert!(
            ball.lower_mm <= 80.0 && ball.upper_mm > 78.0,
            "{count}: {ball:?}"
        );
    }
}
