//! The pull test: springs worked by hand, and the limits of ASTM E985 §7.2 as a
//! code officials' forum quotes them.

use guardrule::quantities::Distance;
use guardrule::quantities::inches;
use guardrule::quantities::pounds;
use guardrule::statics::stiffness::DeflectionLimit;
use guardrule::statics::stiffness::NoStiffness;
use guardrule::statics::stiffness::ScalePull;
use guardrule::statics::stiffness::free_play;
use guardrule::statics::stiffness::movement_at;
use guardrule::statics::stiffness::pull_stiffness;
use guardrule::statics::stiffness::pull_stiffness_bounds;

use super::agrees;

fn pull(force: f64, movement: f64) -> ScalePull {
    ScalePull {
        force: pounds(force),
        movement: inches(movement),
    }
}

/// ASTM E985 §7.2 as quoted.
#[test]
pub(super) fn limits_of_movement() {
    for (height, spacing, midspan, post) in [(42.0, 72.0, 2.5, 3.5), (36.0, 96.0, 2.5, 3.0)] {
        let of = |limit: DeflectionLimit| limit.limit(inches(height), inches(spacing)).value;
        agrees("midspan", of(DeflectionLimit::E985Midspan), midspan);
        agrees("post", of(DeflectionLimit::E985Post), post);
        agrees(
            "vertical",
            of(DeflectionLimit::E985Vertical),
            spacing / 96.0,
        );
        agrees(
            "AS/NZS",
            of(DeflectionLimit::AsNzs),
            height / 60.0 + spacing / 240.0,
        );
        agrees("BS 6180", of(DeflectionLimit::Bs6180), 25.0 / 25.4);
    }
}

/// Two pulls and the spring between them.
#[test]
pub(super) fn a_pull_test_at_two_forces() {
    let (low, high) = (pull(10.0, 0.21), pull(50.0, 0.72));
    let k = pull_stiffness(low, high).unwrap().value;
    agrees("K", k, 78.43137);
    agrees("free play", free_play(low, k).value, 0.0825);
    let moved = movement_at(pounds(200.0), low, k).value;
    agrees("at 200 lb", moved, 2.6325);
    assert!(
        moved
            < DeflectionLimit::E985Post
                .limit(inches(42.0), inches(72.0))
                .value
    );
}

/// The bolted post of the published tests (Loferski, Albright, Woeste), 4.4 in at 200 lb; it broke at 237 lb.
#[test]
pub(super) fn the_tested_post_as_a_pull_test() {
    let k = pull_stiffness(pull(0.0, 0.0), pull(200.0, 4.4))
        .unwrap()
        .value;
    agrees("K", k, 45.45455);
    let at_fifty: Distance = pounds(50.0) / k;
    agrees("at 50 lb", at_fifty, 1.1);
    // h/48, the limit h/12 brought down to 50 lb.
    assert!(at_fifty > inches(36.0) / 48.0);
}

/// 1/16 in on 1/2 in is about 12 %.
#[test]
pub(super) fn doubts_of_a_pull_test() {
    let ends = pull_stiffness_bounds(pull(10.0, 0.0), pull(50.0, 0.5), inches(1.0 / 16.0)).unwrap();
    agrees("low", ends.low.value, 40.0 / 0.5625);
    agrees("high", ends.high.value, 40.0 / 0.4375);
    let still = pull_stiffness_bounds(pull(10.0, 0.0), pull(50.0, 0.05), inches(1.0 / 16.0));
    assert_eq!(still.err(), Some(NoStiffness::MovedTooLittle));
    let same = pull_stiffness(pull(50.0, 0.1), pull(50.0, 0.2));
    assert_eq!(same.err(), Some(NoStiffness::NotStronger));
}
