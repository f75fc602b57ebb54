//! Exactly at the limits of the methods, where a step lies between two formulas. The
//! limits are those of NDS 2018 (§3.10.4, §11.3.6, Tables 12.3.1B and 12.3.3, Supplement
//! Table 4D; read second-hand, §11.3.6 from memory); which side equality belongs to
//! follows from their words.

use guardrule::quantities::inches;
use guardrule::quantities::pounds;
use guardrule::quantities::psi;
use guardrule::statics::Ends;
use guardrule::statics::dowel::Dowel;
use guardrule::statics::dowel::dowel_bearing;
use guardrule::statics::joint::FastenerRow;
use guardrule::statics::joint::group_action;
use guardrule::statics::metal::METALS;
use guardrule::statics::metal::Walls;
use guardrule::statics::section::Profile;
use guardrule::statics::stiffness::ScalePull;
use guardrule::statics::stiffness::pull_stiffness;
use guardrule::statics::washer::Washer;
use guardrule::statics::washer::WasherPlace;
use guardrule::statics::washer::bearing_area_factor;
use guardrule::statics::wood::TIMBERS;
use guardrule::statics::wood::size_factor;

use super::agrees;
use super::degrees;
use super::gravity;
use super::rectangle;

/// D ≥ 1/4 in: 4, 3.6 and 3.2 times K_θ; less: K_D, which is 3 at 1/4 in.
#[test]
fn a_quarter_inch_bolt_is_no_small_fastener() {
    let quarter = Dowel::Bolt {
        diameter: inches(0.25),
    };
    let reduction = quarter.reduction(degrees(0.0)).value;
    agrees("crushing", reduction.crushing, 4.0);
    agrees("turning", reduction.turning, 3.6);
    agrees("bending", reduction.bending, 3.2);
    // 11200·0.5, and not 16600·0.5^1.84
    let bears = dowel_bearing(gravity(0.5), inches(0.25), degrees(0.0)).value;
    agrees("bearing", bears, 5600.0);
}

#[test]
fn two_in_a_row_share_a_load_unevenly() {
    let row = |count| FastenerRow {
        diameter: inches(0.5),
        count,
        apart: inches(4.0),
        stretch: [pounds(12.25 * 1.4e6), pounds(5.25 * 1.4e6)],
    };
    agrees("one alone", group_action(row(1)).value, 1.0);
    assert!(group_action(row(2)).value < 1.0);
}

#[test]
fn a_wall_exactly_at_the_limit_is_thick_enough() {
    let aluminium = METALS
        .iter()
        .find(|metal| metal.name == "aluminium 6061-T6");
    let walls = |outside: f64| {
        aluminium.expect("in the table").walls(Profile::RoundTube {
            outside: inches(outside),
            wall: inches(0.125),
        })
    };
    assert_eq!(walls(2.5), Walls::Compact);
    assert_eq!(walls(2.501), Walls::Slender);
}

#[test]
fn a_notch_of_nothing_leaves_the_whole_post_and_a_corner_may_be_half_the_side() {
    let post = rectangle(3.5, 3.5);
    assert_eq!(post.notched(inches(3.5)), Ok(post));
    assert!(post.notched(inches(3.51)).is_err());
    let tube = |across: f64, along: f64| Profile::RectangularTube {
        across: inches(across),
        along: inches(along),
        wall: inches(0.125),
        corner: inches(1.0),
    };
    for (across, along, fits) in [
        (2.0, 3.0, true),
        (3.0, 2.0, true),
        (1.99, 3.0, false),
        (3.0, 1.99, false),
    ] {
        assert_eq!(
            tube(across, along).section().is_ok(),
            fits,
            "{across} x {along}"
        );
    }
}

/// A second pull that moves the top no farther gives no stiffness, and none that is
/// without end.
#[test]
fn a_top_that_moved_no_farther_gives_no_stiffness() {
    let pull = |force: f64, movement: f64| ScalePull {
        force: pounds(force),
        movement: inches(movement),
    };
    assert!(pull_stiffness(pull(10.0, 0.25), pull(20.0, 0.25)).is_err());
    assert!(pull_stiffness(pull(10.0, 0.25), pull(10.0, 0.5)).is_err());
    assert!(pull_stiffness(pull(10.0, 0.25), pull(20.0, 0.26)).is_ok());
}

/// Bearings of less than 6 in are helped by the fibres beside them; one of 6 in is not.
#[test]
fn a_bearing_of_six_inches_gets_no_help_from_beside() {
    let factor = |side: f64| {
        let plate = Washer::Square {
            side: inches(side),
            hole: inches(0.5),
        };
        bearing_area_factor(plate, WasherPlace::Within).value
    };
    agrees("6 in", factor(6.0), 1.0);
    agrees("3 in", factor(3.0), 1.125);
}

#[test]
fn a_timber_twelve_inches_deep_still_has_a_size_factor() {
    let factor = |depth: f64| size_factor(&TIMBERS[0], inches(5.5), inches(depth));
    agrees("12 in", factor(12.0).expect("in the table").value, 1.0);
    assert!(factor(12.01).is_err());
}

#[test]
fn the_ends_of_an_interval_belong_to_it() {
    let ends = Ends {
        low: psi(100.0),
        high: psi(200.0),
    };
    for (value, within) in [(100.0, true), (200.0, true), (99.9, false), (200.1, false)] {
        assert_eq!(ends.holds(psi(value)), within, "{value}");
    }
}
