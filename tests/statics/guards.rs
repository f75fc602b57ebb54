//! Demands, couples, plates, cables, anchors: elementary statics worked by hand,
//! printed values where a source is named.

use guardrule::quantities::Force;
use guardrule::quantities::LineLoad;
use guardrule::quantities::Moment;
use guardrule::quantities::inches;
use guardrule::quantities::millimetres;
use guardrule::quantities::newtons;
use guardrule::quantities::newtons_per_metre;
use guardrule::quantities::pound_inches;
use guardrule::quantities::pounds;
use guardrule::quantities::pounds_per_foot;
use guardrule::quantities::psi;
use guardrule::statics::Ends;
use guardrule::statics::RatioOutcome;
use guardrule::statics::anchor::Concrete;
use guardrule::statics::anchor::Qualified;
use guardrule::statics::anchor::breakout_in_service;
use guardrule::statics::anchor::concrete_breakout;
use guardrule::statics::cable::Cable;
use guardrule::statics::cable::stretch_of_strand;
use guardrule::statics::couple::PushWay;
use guardrule::statics::couple::couple;
use guardrule::statics::demand::Bays;
use guardrule::statics::demand::infill_moment;
use guardrule::statics::demand::lever_arm;
use guardrule::statics::demand::line_force;
use guardrule::statics::demand::line_moment;
use guardrule::statics::demand::point_moment;
use guardrule::statics::demand::tributary_width;
use guardrule::statics::factors::JointService;
use guardrule::statics::factors::LoadDuration;
use guardrule::statics::factors::Moisture;
use guardrule::statics::panel::PANEL_GRAVITY;
use guardrule::statics::panel::USUAL_SUBFLOOR;
use guardrule::statics::plate::ScrewRow;
use guardrule::statics::plate::elastic_shares;
use guardrule::statics::plate::greatest_pull;
use guardrule::statics::plate::with_pivot_moved;
use guardrule::statics::withdrawal::Pulled;
use guardrule::statics::withdrawal::withdrawal;

use super::agrees;
use super::customary;
use super::gravity;
use super::prints_as;
use super::screw;

fn kilonewton_metres(moment: Moment) -> f64 {
    moment.value / 1000.0
}

/// Printed in Build 107, "Changes to barrier loadings", as 1.7 m; 50 plf passes
/// 200 lb at 4 ft.
#[test]
pub(super) fn where_a_line_load_overtakes_a_point_load() {
    let width = newtons(600.0) / newtons_per_metre(350.0);
    prints_as("Build 107", (width / millimetres(1000.0)).value, 1.7, 0.1);
    let at = |line, width| customary(line_force(line, inches(width)).value);
    agrees("4 ft", at(pounds_per_foot(50.0), 48.0), 200.0);
}

/// F·a, with newton metres beside it.
#[test]
pub(super) fn moments_at_the_base() {
    for (arm, moment, metric) in [
        (36.0, 7200.0, 813.4908),
        (39.0, 7800.0, 881.2817),
        (42.0, 8400.0, 949.0726),
    ] {
        let found = point_moment(pounds(200.0), inches(arm)).value;
        agrees("41", found, moment);
        agrees("41, N·m", found.value, metric);
    }
    agrees(
        "lever arm",
        lever_arm(inches(36.0), inches(1.0), inches(2.0)).value,
        39.0,
    );
    let width = tributary_width(Bays::Two(inches(72.0), inches(72.0))).value;
    agrees("42 width", width, 72.0);
    agrees(
        "42 force",
        line_force(pounds_per_foot(50.0), width).value,
        300.0,
    );
    agrees(
        "42",
        line_moment(pounds_per_foot(50.0), width, inches(42.0)).value,
        12_600.0,
    );
    agrees(
        "end post",
        tributary_width(Bays::One(inches(72.0))).value,
        36.0,
    );
}

/// Loads of BS 6180 and of the Ontario code; 0.74 kN/m and 1.0 kN/m² are equal at h = 1.48 m.
#[test]
pub(super) fn metric_demands() {
    let line = |load: LineLoad, s: f64, a: f64| {
        kilonewton_metres(line_moment(load, millimetres(s), millimetres(a)).value)
    };
    agrees("43", line(newtons_per_metre(740.0), 1500.0, 1100.0), 1.221);
    agrees(
        "44 line",
        line(newtons_per_metre(500.0), 1800.0, 1070.0),
        0.963,
    );
    let point = point_moment(newtons(1000.0), millimetres(1070.0)).value;
    agrees("44 point", kilonewton_metres(point), 1.07);
    let pressure = guardrule::quantities::pascals(1000.0);
    let infill = infill_moment(pressure, millimetres(1500.0), millimetres(1480.0)).value;
    let top = line(newtons_per_metre(740.0), 1500.0, 1480.0);
    agrees("equal", kilonewton_metres(infill), top);
}

/// F·(a + d)/d; the pull is 16 to 22 times a share of the push.
#[test]
pub(super) fn the_pull_on_the_upper_bolt() {
    for (arm, apart, tension, bearing) in [
        (39.0, 4.0, 2150.0, 1950.0),
        (39.0, 5.25, 1685.714, 1485.714),
        (38.0, 5.5, 1581.818, 1381.818),
    ] {
        let push = pounds(200.0);
        let out = couple(PushWay::Outward, push, inches(arm), inches(apart)).value;
        agrees("T", out.tension, tension);
        agrees("C", out.bearing, bearing);
        agrees("T - C = F", out.tension - out.bearing, 200.0);
        let inward = couple(PushWay::Inward, push, inches(arm), inches(apart)).value;
        agrees("lower bolt", inward.tension, bearing);
        agrees("upper bearing", inward.bearing, tension);
    }
}

fn row(distance: f64, count: u32) -> ScrewRow {
    ScrewRow {
        distance: inches(distance),
        count,
    }
}

fn shares(moment: f64, rows: &[ScrewRow]) -> Vec<f64> {
    let forces = elastic_shares(pound_inches(moment), rows)
        .expect("in the tables")
        .value;
    forces.into_iter().map(customary).collect()
}

/// Elastic shares M·y/Σy², worked by hand.
#[test]
pub(super) fn plates_screwed_down() {
    let square = [row(3.5, 2), row(0.5, 2)];
    let round = [row(3.0, 1), row(0.75, 2)];
    let wide = [row(5.0, 2), row(1.0, 2)];
    for (moment, rows, expected) in [
        (7200.0, square, [1008.0, 144.0]),
        (6000.0, round, [1777.778, 444.4444]),
        (8400.0, wide, [807.6923, 161.5385]),
    ] {
        let found = shares(moment, &rows);
        agrees("far", found[0], expected[0]);
        agrees("near", found[1], expected[1]);
    }
    let turned = [row(2.25, 2), row(0.5, 1)];
    let worst = greatest_pull(pound_inches(6000.0), &turned).unwrap();
    agrees("64 turned", worst.value, 1301.205);

    let service = |duration| JointService::plain(duration, Moisture::Dry);
    let held = |duration| {
        let pulled = Pulled::WoodScrew(screw(14).diameter);
        withdrawal(pulled, gravity(0.5), inches(2.0), service(duration))
            .unwrap()
            .value
    };
    agrees("62 low", held(LoadDuration::TEN_YEARS), 344.85);
    agrees("62 high", held(LoadDuration::TEN_MINUTES), 551.76);
    let capacity = Ends::between(
        held(LoadDuration::TEN_YEARS),
        held(LoadDuration::TEN_MINUTES),
    );
    let ratio = Ends::utilisation(Ends::exactly(pounds(1008.0)), capacity);
    prints_as("62 ratio", ratio.high.0, 2.92, 0.01);
    prints_as("62 ratio", ratio.low.0, 1.83, 0.01);
    assert_eq!(ratio.outcome(), RatioOutcome::FallsShort);
}

#[test]
pub(super) fn a_plate_that_bends_presses_at_the_post() {
    let rows = [row(3.5, 2), row(0.5, 2)];
    let moved = with_pivot_moved(&rows, inches(1.0));
    let found = shares(7200.0, &moved);
    agrees("far alone", found[0], 7200.0 / (2.0 * 2.5));
    agrees("behind the pivot", found[1], 0.0);
    assert!(greatest_pull(pound_inches(1.0), &with_pivot_moved(&rows, inches(4.0))).is_err());
}

/// Worked by hand: 27.76042 lb of 200 on a plate that bites the subfloor only.
#[test]
pub(super) fn a_plate_on_the_subfloor_only() {
    let pulled = Pulled::WoodScrew(screw(14).diameter);
    let of = |duration| {
        let service = JointService::plain(duration, Moisture::Dry);
        withdrawal(pulled, PANEL_GRAVITY.value, USUAL_SUBFLOOR, service)
            .unwrap()
            .value
    };
    agrees("66", of(LoadDuration::TEN_YEARS), 87.44534);
    let pull = shares(7200.0, &[row(3.5, 2), row(0.5, 2)])[0];
    let carried = 200.0 * customary(of(LoadDuration::TEN_MINUTES)) / pull;
    agrees("66 push", carried, 27.76042);
}

/// Worked by hand: a rail end on No. 10 screws in a spruce stud.
#[test]
pub(super) fn a_rail_end_on_screws() {
    let pulled = Pulled::WoodScrew(screw(10).diameter);
    let each = |duration| {
        let service = JointService::plain(duration, Moisture::Dry);
        withdrawal(pulled, gravity(0.42), inches(1.5), service)
            .unwrap()
            .value
    };
    agrees("67", each(LoadDuration::TEN_YEARS), 143.2809);
    let needed = |duration| (pounds(200.0) / each(duration)).value;
    prints_as("67 count", needed(LoadDuration::TEN_YEARS), 1.396, 0.001);
    prints_as("67 count", needed(LoadDuration::TEN_MINUTES), 0.872, 0.001);
}

/// Exact equilibrium by bisection, worked apart; and the end post.
#[test]
pub(super) fn cables_pushed_at_midspan() {
    let (push, bay) = (pounds(50.0), inches(36.0));
    let strand = stretch_of_strand(inches(0.125)).value;
    prints_as("EA", strand, 143_600.0, 100.0);
    for (pretension, deflection, tension) in
        [(200.0, 1.033051, 436.3197), (0.0, 1.267857, 355.8089)]
    {
        let cable = Cable {
            bay,
            run: bay,
            pretension: pounds(pretension),
            stretch: pounds(143_611.3),
        };
        let found = cable.pushed(push).unwrap().value;
        agrees("δ", found.deflection, deflection);
        agrees("T", found.tension, tension);
        let sliding = Cable {
            run: bay * 3.0,
            ..cable
        }
        .pushed(push)
        .unwrap()
        .value;
        assert!(
            sliding.deflection > found.deflection,
            "a sliding cable is softer"
        );
    }
    let slack = Cable {
        bay,
        run: bay,
        pretension: Force::default(),
        stretch: Force::default(),
    };
    assert!(slack.pushed(push).is_err());
}

/// ACI 318 chapter 17 from memory, worked by hand.
#[test]
pub(super) fn breakout_of_anchors() {
    let nominal = concrete_breakout(Concrete::Cracked, psi(2500.0), inches(2.0)).value;
    agrees("86", nominal, 2404.163);
    let service = breakout_in_service(
        concrete_breakout(Concrete::Cracked, psi(2500.0), inches(2.0)),
        Qualified::Well,
    );
    agrees("in service", service.value, 976.6912);
}
