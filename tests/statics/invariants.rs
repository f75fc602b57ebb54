//! What must hold of demand and capacity whatever the numbers are.

use guardrule::quantities::Force;
use guardrule::quantities::inches;
use guardrule::quantities::millimetres;
use guardrule::quantities::newtons;
use guardrule::quantities::pounds;
use guardrule::quantities::psi;
use guardrule::statics::Ends;
use guardrule::statics::Line;
use guardrule::statics::RatioOutcome;
use guardrule::statics::Units;
use guardrule::statics::beam::Case;
use guardrule::statics::couple::PushWay;
use guardrule::statics::couple::couple;
use guardrule::statics::demand::point_moment;
use guardrule::statics::dowel::Dowel;
use guardrule::statics::dowel::dowel_bearing;
use guardrule::statics::factors::JointService;
use guardrule::statics::factors::LoadDuration;
use guardrule::statics::factors::Moisture;
use guardrule::statics::lateral::BearingMember;
use guardrule::statics::lateral::Joint;
use guardrule::statics::lateral::Shear;
use guardrule::statics::plate::ScrewRow;
use guardrule::statics::plate::elastic_shares;
use guardrule::statics::section::Profile;
use guardrule::statics::washer::Washer;
use guardrule::statics::washer::WasherPlace;
use guardrule::statics::washer::washer_bearing;
use guardrule::statics::withdrawal::Pulled;
use guardrule::statics::withdrawal::withdrawal;
use proptest::prelude::*;

use super::customary;
use super::degrees;
use super::gravity;
use super::lag;

fn pulled(kind: usize, d: f64) -> Pulled {
    [
        Pulled::Lag(inches(d)),
        Pulled::WoodScrew(inches(d)),
        Pulled::Nail(inches(d)),
    ][kind]
}

fn held(kind: usize, d: f64, g: f64, length: f64, service: JointService) -> Force {
    withdrawal(pulled(kind, d), gravity(g), inches(length), service)
        .expect("in the tables")
        .value
}

fn at_most(less: Force, more: Force) -> bool {
    less <= more * (1.0 + 1e-12)
}

fn joint(d: f64, main: (f64, f64), side: (f64, f64)) -> Force {
    let of = |(bearing, length): (f64, f64)| BearingMember {
        bearing: psi(bearing),
        length: inches(length),
    };
    let joint = Joint {
        dowel: Dowel::Bolt {
            diameter: inches(d),
        },
        main: of(main),
        side: of(side),
        angle: degrees(0.0),
        shear: Shear::Single,
    };
    joint.reference().value.load
}

proptest! {
    #[test]
    fn demand_grows_with_height_load_and_spacing(
        force in 1.0_f64..500.0, arm in 10.0_f64..60.0, apart in 1.0_f64..12.0, more in 1.0_f64..2.0,
    ) {
        let pull = |f: f64, a: f64| {
            couple(PushWay::Outward, pounds(f), inches(a), inches(apart)).value.tension
        };
        prop_assert!(at_most(pull(force, arm), pull(force, arm * more)));
        prop_assert!(at_most(pull(force, arm), pull(force * more, arm)));
        let moment = |f: f64, a: f64| point_moment(pounds(f), inches(a)).value;
        prop_assert!(moment(force, arm) <= moment(force, arm * more));
        let span = |l: f64| Case::OneSpan(pounds(force)).moments(inches(l)).value.greatest();
        prop_assert!(span(arm) <= span(arm * more));
    }

    #[test]
    fn a_longer_thicker_fastener_in_denser_wood_never_holds_less(
        kind in 0_usize..3, d in 0.25_f64..0.36, g in 0.32_f64..0.6, length in 0.5_f64..6.0,
        bigger in 1.0_f64..1.03, denser in 1.0_f64..1.2, longer in 1.0_f64..2.0,
    ) {
        let dry = JointService::plain(LoadDuration::TEN_YEARS, Moisture::Dry);
        let wet = JointService { moisture: Moisture::Wet, ..dry };
        let brief = JointService { duration: LoadDuration::TEN_MINUTES, ..dry };
        let base = held(kind, d, g, length, dry);
        prop_assert!(at_most(base, held(kind, d * bigger, g, length, dry)));
        prop_assert!(at_most(base, held(kind, d, g * denser, length, dry)));
        prop_assert!(at_most(base, held(kind, d, g, length * longer, dry)));
        prop_assert!(at_most(base, held(kind, d, g, length, brief)));
        prop_assert!(at_most(held(kind, d, g, length, wet), base));
    }

    #[test]
    fn lateral_values_never_fall_with_bearing_and_length(
        d in 0.25_f64..1.0, main in (1500.0_f64..9e3, 1.0_f64..6.0),
        side in (1500.0_f64..9e3, 0.5_f64..3.0), more in 1.0_f64..1.5,
    ) {
        let base = joint(d, main, side);
        prop_assert!(at_most(base, joint(d, (main.0, main.1 * more), side)));
        prop_assert!(at_most(base, joint(d, main, (side.0, side.1 * more))));
        prop_assert!(at_most(base, joint(d, (main.0 * more, main.1), (side.0 * more, side.1))));
    }

    #[test]
    fn lateral_values_never_fall_with_density_and_bending_strength(
        d in 0.25_f64..0.273, g in 0.31_f64..0.6, denser in 1.0_f64..1.2, l_m in 1.0_f64..6.0,
        l_s in 0.5_f64..3.0, angle in 0.0_f64..90.0,
    ) {
        let of = |dowel: Dowel, g: f64| {
            let bearing = dowel_bearing(gravity(g), dowel.nominal(), degrees(angle)).value;
            let side = |length: f64| BearingMember { bearing, length: inches(length) };
            let (main, side) = (side(l_m), side(l_s));
            let joint = Joint { dowel, main, side, angle: degrees(angle), shear: Shear::Single };
            joint.reference().value.load
        };
        let diameter = inches(d);
        let (soft, hard) = (Dowel::Bolt { diameter }, Dowel::Nail { diameter });
        prop_assert!(soft.yield_strength() < hard.yield_strength());
        prop_assert!(at_most(of(soft, g), of(hard, g)));
        prop_assert!(at_most(of(soft, g), of(soft, g * denser)));
    }

    #[test]
    fn main_and_side_may_be_exchanged(
        d in 0.25_f64..1.0, main in (1500.0_f64..9e3, 1.0_f64..6.0),
        side in (1500.0_f64..9e3, 0.5_f64..3.0),
    ) {
        let (one, other) = (customary(joint(d, main, side)), customary(joint(d, side, main)));
        prop_assert!((one - other).abs() <= 1e-9 * one, "{one} {other}");
    }

    #[test]
    fn a_couple_leaves_the_push(
        force in 1.0_f64..500.0, arm in 10.0_f64..60.0, apart in 1.0_f64..12.0,
    ) {
        let out = couple(PushWay::Outward, pounds(force), inches(arm), inches(apart)).value;
        let inward = couple(PushWay::Inward, pounds(force), inches(arm), inches(apart)).value;
        prop_assert!((customary(out.tension - out.bearing) - force).abs() < 1e-8);
        prop_assert!((customary(inward.bearing - inward.tension) - force).abs() < 1e-8);
        let lever = customary(out.tension * inches(apart));
        prop_assert!((lever - force * (arm + apart)).abs() < 1e-7, "moment about the lower bolt");
    }

    #[test]
    fn screws_of_a_plate_balance_the_moment(
        moment in 1.0_f64..20e3, ys in prop::collection::vec((0.1_f64..10.0, 1_u32..4), 1..6),
    ) {
        let rows: Vec<ScrewRow> =
            ys.iter().map(|(y, n)| ScrewRow { distance: inches(*y), count: *n }).collect();
        let m = pounds(moment) * inches(1.0);
        let forces = elastic_shares(m, &rows).unwrap().value;
        let sum: f64 = rows.iter().zip(forces)
            .map(|(row, force)| customary(force * row.distance) * f64::from(row.count)).sum();
        prop_assert!((sum - moment).abs() <= 1e-9 * moment);
    }

    #[test]
    fn notching_never_helps_and_more_section_never_hurts(
        across in 1.0_f64..6.0, along in 1.0_f64..6.0, left in 0.05_f64..1.0, wall in 0.02_f64..0.2,
    ) {
        let whole = Profile::Rectangle { across: inches(across), along: inches(along) };
        let notched = whole.notched(inches(along * left)).unwrap();
        prop_assert!(notched.section().unwrap().elastic <= whole.section().unwrap().elastic);
        let tube = |t: f64| Profile::RoundTube { outside: inches(along), wall: inches(t) };
        let thicker = tube(wall * 1.5).section().unwrap();
        prop_assert!(tube(wall).section().unwrap().plastic <= thicker.plastic);
    }

    #[test]
    fn a_wider_washer_never_holds_less(
        outside in 1.0_f64..5.0, more in 1.0_f64..2.0, within in any::<bool>(),
    ) {
        let place = if within { WasherPlace::Within } else { WasherPlace::NearEnd };
        let of = |size: f64, moisture| {
            let washer = Washer::Round { outside: inches(size), hole: inches(0.5) };
            washer_bearing(psi(625.0), washer, place, moisture).value
        };
        prop_assert!(at_most(of(outside, Moisture::Wet), of(outside, Moisture::Dry)));
        prop_assert!(at_most(of(outside, Moisture::Dry), of(outside * more, Moisture::Dry)));
    }

    #[test]
    fn units_change_no_finding(force in 1.0_f64..3000.0, arm in 10.0_f64..60.0, d in 1.0_f64..9.0) {
        let dry = JointService::plain(LoadDuration::TEN_YEARS, Moisture::Dry);
        let half = Pulled::Lag(lag("1/2 in").diameter);
        let in_metric = Pulled::Lag(millimetres(12.7));
        let hold = |of, length| {
            Ends::exactly(withdrawal(of, gravity(0.42), length, dry).unwrap().value)
        };
        let customary = couple(PushWay::Outward, pounds(force), inches(arm), inches(d)).value;
        let metric = couple(
            PushWay::Outward,
            newtons(force * 4.448_221_615_260_5),
            millimetres(arm * 25.4),
            millimetres(d * 25.4),
        ).value;
        let one = Ends::utilisation(Ends::exactly(customary.tension), hold(half, inches(2.0)));
        let other =
            Ends::utilisation(Ends::exactly(metric.tension), hold(in_metric, millimetres(50.8)));
        prop_assert!((one.low.0 - other.low.0).abs() <= 1e-12 * one.low.0);
        prop_assert_eq!(one.outcome(), other.outcome());
    }

    #[test]
    fn what_is_unknown_only_widens_the_range(
        demand in (1.0_f64..500.0, 1.0_f64..500.0), known in 1.0_f64..500.0, other in 1.0_f64..500.0,
    ) {
        let demand = Ends::between(pounds(demand.0), pounds(demand.1));
        let capacity = Ends::exactly(pounds(known));
        let wider = capacity.hull(Ends::exactly(pounds(other)));
        let one = Ends::utilisation(demand, capacity);
        let wide = Ends::utilisation(demand, wider);
        prop_assert!(wide.low.0 <= one.low.0 && one.high.0 <= wide.high.0);
        // Wider is undecided or the same, never the opposite.
        prop_assert!(wide.outcome() == one.outcome() || wide.outcome() == RatioOutcome::TooClose);
    }
}

/// Every symbol of a formula that is put in stands in the written line as a number.
#[test]
fn lines_can_be_checked_by_hand() {
    let dry = JointService::plain(LoadDuration::TEN_MINUTES, Moisture::Wet);
    let half = Pulled::Lag(inches(0.5));
    let worked = withdrawal(half, gravity(0.55), inches(2.1875), dry).unwrap();
    let written: Vec<String> = worked
        .lines
        .iter()
        .map(|line: &Line| line.written(Units::Customary))
        .collect();
    assert_eq!(
        written,
        [
            "W = 1800·G^1.5·D^0.75 = 1800·0.55^1.5·(0.5 in)^0.75 = 436.56 lb/in",
            "W'p = W·p_t·C_D·C_M·C_eg·C_tn = 436.56 lb/in·2.1875 in·1.6·0.7·1·1 = 1069.57 lb",
        ]
    );
    assert!(
        worked
            .lines
            .iter()
            .all(|line| !line.basis.source.is_empty())
    );
}
