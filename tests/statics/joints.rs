//! The joint that is there: arms, net sections, washers, caps and rails, cables,
//! plates, breakout and pockets. Worked by hand in exact arithmetic and by others a
//! second time; printed values where a source is named.

use guardrule::quantities::Distance;
use guardrule::quantities::inches;
use guardrule::quantities::pound_inches;
use guardrule::quantities::pounds;
use guardrule::quantities::psi;
use guardrule::statics::anchor::AnchorRow;
use guardrule::statics::anchor::Concrete;
use guardrule::statics::anchor::Qualified;
use guardrule::statics::anchor::breakout_in_service;
use guardrule::statics::anchor::concrete_breakout;
use guardrule::statics::anchor::group_breakout;
use guardrule::statics::cable::Cable;
use guardrule::statics::cable::CableRun;
use guardrule::statics::couple::PushWay;
use guardrule::statics::couple::Stands;
use guardrule::statics::couple::couple;
use guardrule::statics::couple::stretched;
use guardrule::statics::dowel::Dowel;
use guardrule::statics::dowel::dowel_bearing;
use guardrule::statics::factors::Incising;
use guardrule::statics::factors::LoadDuration;
use guardrule::statics::factors::Moisture;
use guardrule::statics::grade::Grade;
use guardrule::statics::hardware::bolt_hole;
use guardrule::statics::hardware::bolt_tension;
use guardrule::statics::joint::FastenerRow;
use guardrule::statics::joint::group_action;
use guardrule::statics::lateral::BearingMember;
use guardrule::statics::lateral::Joint;
use guardrule::statics::lateral::Shear;
use guardrule::statics::metal::METALS;
use guardrule::statics::metal::Metal;
use guardrule::statics::metal::Walls;
use guardrule::statics::metal::Weld;
use guardrule::statics::plate::plate_allowable;
use guardrule::statics::plate::plate_moment;
use guardrule::statics::pocket::Pocket;
use guardrule::statics::pocket::pocket_allowable;
use guardrule::statics::section::Profile;
use guardrule::statics::torsion::torsion_stress;
use guardrule::statics::washer::Washer;
use guardrule::statics::washer::WasherPlace;
use guardrule::statics::washer::cut_washer;
use guardrule::statics::washer::washer_bearing;
use guardrule::statics::washer::washer_that_holds;
use guardrule::statics::withdrawal::Pulled;
use guardrule::statics::withdrawal::per_length;
use guardrule::statics::wood::Lying;
use guardrule::statics::wood::Service;
use guardrule::statics::wood::allowable_bending_of;
use guardrule::statics::wood::together;

use super::agrees;
use super::customary;
use super::degrees;
use super::gravity;
use super::prints_as;
use super::species;

const fn service(duration: LoadDuration, moisture: Moisture, incising: Incising) -> Service {
    Service {
        duration,
        moisture,
        incising,
    }
}

const WET_TEN_YEARS: Service = service(LoadDuration::TEN_YEARS, Moisture::Wet, Incising::Plain);
const DRY_TEN_MINUTES: Service = service(LoadDuration::TEN_MINUTES, Moisture::Dry, Incising::Plain);

fn rectangle(across: f64, along: f64) -> Profile {
    Profile::Rectangle {
        across: inches(across),
        along: inches(along),
    }
}

/// What is left of a post: b less the hole, 9/16 in for a 1/2 in bolt (NDS 2018
/// §12.1.3.2; a worked example in its errata takes 0.5625 in as well).
#[test]
pub(super) fn holes_take_from_the_width() {
    let half = bolt_hole(inches(0.5)).value;
    agrees("D_h", half, 0.5625);
    let modulus = |profile: Profile, hole: Distance, count| {
        profile
            .bored(hole, count)
            .unwrap()
            .section()
            .unwrap()
            .elastic
    };
    let (four, six) = (rectangle(3.5, 3.5), rectangle(5.5, 5.5));
    prints_as("4x4", modulus(four, half, 1), 5.997_396, 2e-6);
    prints_as(
        "5/8 bolt",
        modulus(four, bolt_hole(inches(0.625)).value, 1),
        5.742_188,
        2e-6,
    );
    prints_as("two side by side", modulus(four, half, 2), 4.848_958, 2e-6);
    prints_as(
        "notched to half",
        modulus(rectangle(3.5, 1.75), half, 1),
        1.499_349,
        2e-6,
    );
    prints_as("6x6", modulus(six, half, 1), 24.893_229, 2e-6);
    let net = four.bored(half, 1).unwrap().section().unwrap().area;
    agrees("A_net", net, 10.281_25);
    // a bigger bolt never leaves more
    let mut before = customary(modulus(four, inches(0.25), 1));
    for eighths in 3..=8 {
        let next = customary(modulus(four, inches(f64::from(eighths) / 8.0), 1));
        assert!(next < before);
        before = next;
    }
    assert!(four.bored(inches(3.5), 1).is_err(), "nothing left");
}

/// F'_b·S_net of a 4x4 with one 1/2 in bolt, wet with C_D 1.0 to dry with 1.6, and
/// the ratio to 200 lb at 39 in: NDS Supplement 2018 values.
#[test]
pub(super) fn a_post_on_its_net_section() {
    let takes = |name, grade, service| {
        let (side, lying) = (inches(3.5), Lying::OnEdge);
        let stress = allowable_bending_of(species(name), grade, side, side, lying, service);
        customary(stress.unwrap().value) * 5.997_396
    };
    for (name, low, high, ratio_high, ratio_low) in [
        ("Southern Pine", 6597.1, 10_555.4, 1.1823, 0.7390),
        ("Douglas Fir-Larch", 6882.0, 12_954.4, 1.1334, 0.6021),
        ("Spruce-Pine-Fir", 6690.8, 12_594.5, 1.1658, 0.6193),
        ("Hem-Fir", 6499.7, 12_234.7, 1.2001, 0.6375),
    ] {
        let (worst, best) = (
            takes(name, Grade::No2, WET_TEN_YEARS),
            takes(name, Grade::No2, DRY_TEN_MINUTES),
        );
        prints_as(name, worst, low, 0.2);
        prints_as(name, best, high, 0.2);
        prints_as(name, 7800.0 / worst, ratio_high, 1e-4);
        prints_as(name, 7800.0 / best, ratio_low, 1e-4);
    }
    let incised = service(LoadDuration::TEN_YEARS, Moisture::Wet, Incising::Incised);
    prints_as(
        "incised",
        takes("Hem-Fir", Grade::No2, incised),
        5199.7,
        0.2,
    );
    prints_as(
        "incised",
        7800.0 / takes("Hem-Fir", Grade::No2, incised),
        1.5001,
        1e-4,
    );
    // deeper and higher: M 8 600 and 9 000 lb·in
    let pine = |service| takes("Southern Pine", Grade::No2, service);
    for (moment, high, low) in [(8600.0, 1.3036, 0.8147), (9000.0, 1.3642, 0.8526)] {
        prints_as("a", moment / pine(WET_TEN_YEARS), high, 1e-4);
        prints_as("a", moment / pine(DRY_TEN_MINUTES), low, 1e-4);
    }
    for (name, grade, high, low) in [
        ("Douglas Fir-Larch", Grade::No3, 1.652, 1.032),
        ("Douglas Fir-Larch", Grade::Stud, 1.689, 1.056),
        ("Douglas Fir-Larch", Grade::Standard, 2.262, 1.414),
        ("Southern Pine", Grade::No3, 2.001, 1.251),
        ("Southern Pine", Grade::Standard, 2.601, 1.626),
    ] {
        let what = format!("{name} {}", grade.name());
        prints_as(
            &what,
            7800.0 / takes(name, grade, WET_TEN_YEARS),
            high,
            1e-3,
        );
        prints_as(
            &what,
            7800.0 / takes(name, grade, DRY_TEN_MINUTES),
            low,
            1e-3,
        );
    }
}

/// F·(a + d)/d and F·a/d at a = 39 in, by rim and pivot.
#[test]
pub(super) fn the_couple_by_where_the_bolts_fit() {
    let pull = |arm, apart| {
        let couple = couple(PushWay::Outward, pounds(200.0), inches(arm), inches(apart)).value;
        (customary(couple.tension), customary(couple.bearing))
    };
    for (apart, tension, bearing) in [
        (3.25, 2600.0, 2400.0),
        (4.25, 2035.3, 1835.3),
        (5.25, 1685.7, 1485.7),
        (5.0, 1760.0, 1560.0),
        (7.25, 1275.9, 1075.9),
        (9.25, 1043.2, 843.2),
    ] {
        let (t, c) = pull(39.0, apart);
        prints_as("T", t, tension, 0.1);
        prints_as("C", c, bearing, 0.1);
        prints_as("T - C", t - c, 200.0, 2e-6);
    }
    prints_as("brick", pull(39.0, 9.0).0, 1066.67, 0.01);
    prints_as("newel", pull(39.5, 5.0).0, 1780.0, 0.1);
    // raised from 36 to 42 in, and that with a deeper rim: 200 (45 + d) / d
    prints_as("raised by 6 in", pull(45.0, 5.0).0, 2000.0, 0.1);
    prints_as("and 7 in apart", pull(45.0, 7.0).0, 1485.7, 0.1);
    let of = |stands, push, arm, apart| {
        customary(stretched(stands, push, pounds(200.0), inches(arm), inches(apart)).value)
    };
    prints_as(
        "outside, outward",
        of(Stands::Outside, PushWay::Outward, 39.0, 5.0),
        1760.0,
        0.1,
    );
    prints_as(
        "outside, inward",
        of(Stands::Outside, PushWay::Inward, 39.0, 5.0),
        1560.0,
        0.1,
    );
    prints_as(
        "inside, outward",
        of(Stands::Inside, PushWay::Outward, 39.0, 5.0),
        1560.0,
        0.1,
    );
    prints_as(
        "inside, inward",
        of(Stands::Inside, PushWay::Inward, 39.0, 5.0),
        1760.0,
        0.1,
    );
    prints_as(
        "rim's top edge",
        of(Stands::Inside, PushWay::Outward, 37.0, 7.0),
        1057.1,
        0.1,
    );
    // a tie of 1 800 lb wants at least 4.875 in
    prints_as("least d", pull(39.0, 4.875).0, 1800.0, 0.1);
    // what the tested bolted post held at 237 lb
    let held = |apart| pull(39.0, apart).0 * 237.0 / 200.0;
    for (apart, pull) in [(4.0, 2548.0), (3.25, 3081.0), (5.25, 1998.0)] {
        prints_as("row 2", held(apart), pull, 1.0);
    }
    // the tie's label whole, without load duration, and in wet wood
    for (apart, ratios) in [
        (3.25, [1.425, 2.279, 3.256]),
        (4.25, [1.115, 1.784, 2.549]),
        (5.25, [0.924, 1.478, 2.111]),
        (7.25, [0.699, 1.119, 1.598]),
    ] {
        for (share, ratio) in [1.0, 1.0 / 1.6, 0.7 / 1.6].into_iter().zip(ratios) {
            prints_as("tie", pull(39.0, apart).0 / (1825.0 * share), ratio, 1e-3);
        }
    }
}

/// NDS 2018 §3.10: F_c⊥·C_M·A·C_b of Southern Pine, wet, against 1 685.7 lb, and the
/// washer that is just enough.
#[test]
pub(super) fn washers_by_their_size() {
    let takes = |washer| washer_bearing(psi(565.0), washer, WasherPlace::Within, Moisture::Wet);
    let hole = inches(0.5625);
    let round = |outside| Washer::Round {
        outside: inches(outside),
        hole,
    };
    agrees("a cut washer for 1/2 in", cut_washer(inches(0.5)), 1.375);
    for (outside, area, force, ratio) in [
        (0.75, 0.193_282, 109.75, 15.4),
        (1.375, 1.236_389, 595.68, 2.830),
        (2.0, 2.893_088, 1300.52, 1.296),
        (3.0, 6.820_079, 2904.46, 0.580),
    ] {
        prints_as("A", round(outside).area().value, area, 2e-6);
        let found = customary(takes(round(outside)).value);
        prints_as("washer", found, force, 0.01);
        prints_as(
            "ratio",
            1685.714 / found,
            ratio,
            if ratio > 10.0 { 0.1 } else { 1e-3 },
        );
    }
    let square = Washer::Square {
        side: inches(3.0),
        hole,
    };
    prints_as("3 x 3", takes(square).value, 3726.99, 0.01);
    prints_as("2 1/4", takes(round(2.25)).value, 1646.3, 0.1);
    prints_as("2 1/2", takes(round(2.5)).value, 2028.8, 0.1);
    // a carriage head of about 1.03 in, whose hole is its bolt's
    prints_as("carriage head", takes(round(1.03)).value, 301.9, 0.5);
    for (across, pull, outside) in [
        (565.0, 1685.714, 2.375),
        (405.0, 1760.0, 2.875),
        (425.0, 1760.0, 2.75),
        (335.0, 1760.0, 3.125),
        (565.0, 2600.0, 2.875),
        (405.0, 2600.0, 3.375),
        (425.0, 2600.0, 3.375),
    ] {
        let found = washer_that_holds(pounds(pull), psi(across), hole, Moisture::Wet);
        agrees("enough", found.expect("there is one"), outside);
    }
}

/// AISC 360-10 Table J3.2, A307: 45 ksi, Ω 2.0.
#[test]
pub(super) fn bolts_in_tension() {
    prints_as("1/2 in", bolt_tension(inches(0.5)).value, 4417.9, 0.1);
    prints_as("3/8 in", bolt_tension(inches(0.375)).value, 2485.0, 0.1);
    // a newel on one rod turns about its edge: M/(B/2)
    for (side, pull) in [(3.5, 4114.0), (3.0, 4800.0), (5.0, 2880.0)] {
        prints_as("rod", 7200.0 / (side / 2.0), pull, 1.0);
    }
    let lag = per_length(Pulled::Lag(inches(0.3125)), gravity(0.42)).unwrap();
    prints_as("hanger bolt", lag.value, 204.78, 0.01);
    prints_as("in end grain", customary(lag.value) * 0.75, 153.6, 0.1);
    let oak = per_length(Pulled::Lag(inches(0.5)), gravity(0.67)).unwrap();
    prints_as(
        "red oak",
        4800.0 / (customary(oak.value) * 0.75 * 1.6),
        6.82,
        0.5,
    );
}

/// One 1/2 in bolt between a post loaded across its grain and a joist along: mode
/// III_s in every wood (NDS 2018 Table 12.3.1A, worked apart).
#[test]
pub(super) fn a_post_flat_on_a_joist() {
    for (g, z) in [(0.55, 470.2), (0.50, 432.2), (0.42, 372.4)] {
        let bearing = |angle| dowel_bearing(gravity(g), inches(0.5), degrees(angle)).value;
        let joint = Joint {
            dowel: Dowel::Bolt {
                diameter: inches(0.5),
            },
            main: BearingMember {
                bearing: bearing(90.0),
                length: inches(3.5),
            },
            side: BearingMember {
                bearing: bearing(0.0),
                length: inches(1.5),
            },
            angle: degrees(90.0),
            shear: Shear::Single,
        };
        prints_as("Z", joint.reference().value.load, z, 0.1);
    }
}

/// Table 11.3.6A of NDS 2018, from memory: D 1 in, s 4 in, E 1.4e6, equal members of
/// 5 in²: 1.00 for two and 0.97 for three in a row.
#[test]
pub(super) fn bolts_in_a_row_share_unevenly() {
    let row = |count| {
        let stretch = pounds(1.4e6 * 5.0);
        group_action(FastenerRow {
            diameter: inches(1.0),
            count,
            apart: inches(4.0),
            stretch: [stretch, stretch],
        })
        .value
    };
    prints_as("two", row(2), 1.00, 0.01);
    prints_as("three", row(3), 0.97, 0.01);
    assert!(row(5) < row(4) && row(4) < row(3));
    let thin = group_action(FastenerRow {
        diameter: inches(0.2),
        count: 6,
        apart: inches(2.0),
        stretch: [pounds(1e6), pounds(1e6)],
    });
    agrees("below 1/4 in", thin.value, 1.0);
}

/// A cap on a second rail over 72 in: equal deflection, min(F'_b·S·ΣI/I).
#[test]
pub(super) fn a_cap_and_a_second_rail_bend_together() {
    let of = |name, across: f64, along: f64, service| {
        let profile = rectangle(across, along).section().unwrap();
        let (thin, wide) = (inches(across.min(along)), inches(across.max(along)));
        let lying = if along < across {
            Lying::Flat
        } else {
            Lying::OnEdge
        };
        let stress = allowable_bending_of(species(name), Grade::No2, thin, wide, lying, service);
        (
            stress.unwrap().value,
            profile.elastic,
            profile.second_moment,
        )
    };
    for (name, cap, service, capacity) in [
        ("Southern Pine", 3.5, WET_TEN_YEARS, 3987.5),
        ("Spruce-Pine-Fir", 3.5, WET_TEN_YEARS, 4044.1),
        ("Southern Pine", 5.5, WET_TEN_YEARS, 4341.1),
    ] {
        let found = together(of(name, cap, 1.5, service), of(name, 1.5, 3.5, service)).value;
        prints_as(name, found, capacity, 0.1);
    }
    // a 2x6 laid flat alone over 72 in, C_D 1.0 and 1.6
    for (name, moment, low) in [
        ("Southern Pine", 2371.9, WET_TEN_YEARS),
        ("Douglas Fir-Larch", 2358.8, WET_TEN_YEARS),
        ("Hem-Fir", 2620.9, WET_TEN_YEARS),
        ("Spruce-Pine-Fir", 2698.0, WET_TEN_YEARS),
        ("Western cedars", 2158.4, WET_TEN_YEARS),
    ] {
        let (stress, modulus, _) = of(name, 5.5, 1.5, low);
        prints_as(name, stress * modulus, moment, 0.1);
    }
    let dry = service(LoadDuration::TEN_YEARS, Moisture::Dry, Incising::Plain);
    let (stress, modulus, _) = of("Douglas Fir-Larch", 5.5, 1.5, dry);
    prints_as("DF-L dry", stress * modulus, 2775.1, 0.1);
}

/// A 4x4 of Southern Pine by width (NDS Supplement 2018 Table 4B).
#[test]
pub(super) fn southern_pine_goes_by_its_width() {
    for (width, grade, value) in [
        (3.5, Grade::No2, 1100.0),
        (5.5, Grade::No2, 1000.0),
        (7.25, Grade::No2, 925.0),
        (9.25, Grade::No2, 800.0),
        (11.25, Grade::No2, 750.0),
        (3.5, Grade::No1, 1500.0),
        (5.5, Grade::No1, 1350.0),
        (7.25, Grade::No1, 1250.0),
        (3.5, Grade::No3, 650.0),
        (5.5, Grade::Stud, 575.0),
    ] {
        let found = species("Southern Pine").bending_of(grade, inches(width));
        agrees(grade.name(), found.unwrap().value, value);
    }
    assert!(
        species("Redwood")
            .bending_of(Grade::No3, inches(3.5))
            .is_err()
    );
}

/// Saint-Venant's series, checked by others against a handbook: a post between two
/// joists twists the rim by 3 900 lb·in each way.
#[test]
pub(super) fn a_rim_alone_cannot_hold_a_post_by_twisting() {
    for (deep, stress) in [(7.25, 824.1), (9.25, 626.1), (11.25, 504.6)] {
        let found = torsion_stress(pound_inches(3900.0), inches(deep), inches(1.5)).value;
        prints_as("τ", found, stress, 0.1);
        assert!(customary(found) > 280.0, "above any shear value");
    }
    // a square: T/(0.2082·a³) by every handbook
    let square = torsion_stress(pound_inches(1000.0), inches(2.0), inches(2.0)).value;
    prints_as("square", square, 4.804 * 1000.0 / 8.0, 0.1);
}

/// Ten cables at 3 1/8 in under a 36 in rail.
#[test]
pub(super) fn cables_pull_at_the_post_where_they_end() {
    let heights: Vec<Distance> = (1..=10).map(|n| inches(3.125 * f64::from(n))).collect();
    for (tension, foot, below, top, span) in [
        (100.0, 17_187.5, 20_187.5, 477.4, 5110.7),
        (225.0, 38_671.9, 45_421.9, 1074.2, 11_499.0),
        (250.0, 42_968.8, 50_468.8, 1193.6, 12_776.7),
        (400.0, 68_750.0, 80_750.0, 1909.7, 20_442.7),
    ] {
        let run = CableRun {
            heights: &heights,
            tension: pounds(tension),
        };
        prints_as("foot", run.cantilever(inches(0.0)).value, foot, 0.1);
        prints_as("3 in below", run.cantilever(inches(3.0)).value, below, 0.1);
        prints_as("strut", run.strut(inches(36.0)).value, top, 0.1);
        prints_as("span", run.simple_span(inches(36.0)).value, span, 0.1);
    }
    // a 4x4 of Southern Pine on its net section with C_D 0.9 is used up at these
    let takes = 1100.0 * 0.9 * 5.997_396;
    prints_as("net, permanent", takes, 5937.4, 0.1);
    prints_as("cantilever", takes / 201.875, 29.4, 0.1);
    prints_as("strut", takes / 51.107, 116.2, 0.1);
}

/// Exact equilibrium by bisection; EA 143 611 lb for 1/8 in of 1x19.
#[test]
pub(super) fn a_cable_that_is_pushed_tightens() {
    for (push, bay, tension, run, deflection, tight) in [
        (50.0, 42.0, 225.0, 42.0, 1.1722, 448.6),
        (50.0, 42.0, 225.0, 240.0, 1.7095, 308.1),
        (50.0, 42.0, 0.0, 42.0, 1.4792, 355.8),
        (12.5, 42.0, 225.0, 42.0, 0.4955, 265.0),
        (50.0, 48.0, 225.0, 480.0, 2.1373, 281.8),
    ] {
        let cable = Cable {
            bay: inches(bay),
            run: inches(run),
            pretension: pounds(tension),
            stretch: pounds(143_611.0),
        };
        let pushed = cable.pushed(pounds(push)).unwrap().value;
        prints_as("δ", pushed.deflection, deflection, 1e-4);
        prints_as("T", pushed.tension, tight, 0.1);
    }
}

fn metal(name: &str) -> &'static Metal {
    let row = METALS.iter().find(|row| row.name == name);
    row.unwrap_or_else(|| panic!("no metal {name}"))
}

/// Square tubes with sharp corners: F_ty·S/1.65, and 0.6·F_y·S of steel.
#[test]
pub(super) fn posts_of_tube() {
    let tube = |side: f64, wall| Profile::RectangularTube {
        across: inches(side),
        along: inches(side),
        wall: inches(wall),
        corner: inches(0.0),
    };
    for (name, side, moment, ratio) in [
        ("aluminium 6063-T5", 2.0, 5350.4, 1.346),
        ("aluminium 6063-T6", 2.0, 8360.0, 0.861),
        ("aluminium 6061-T6", 2.0, 11_704.0, 0.615),
        ("aluminium 6063-T5", 2.5, 8684.3, 0.829),
    ] {
        let section = tube(side, 0.125).section().unwrap();
        let found = metal(name)
            .allowable_moment(&section, Weld::Clear)
            .unwrap()
            .value;
        prints_as(name, found, moment, 0.1);
        prints_as(name, 7200.0 / customary(found), ratio, 1e-3);
    }
    let welded = tube(2.5, 0.125).section().unwrap();
    let found = metal("aluminium 6063-T5")
        .allowable_moment(&welded, Weld::Beside)
        .unwrap();
    prints_as("welded foot", found.value, 4342.2, 0.1);
    for (wall, moment) in [(0.125, 15_228.5), (0.116, 14_327.2)] {
        let section = tube(2.0, wall).section().unwrap();
        let found = metal("steel A500 Gr B")
            .elastic_moment(&section)
            .unwrap()
            .value;
        prints_as("2 x 2 steel", found, moment, 0.1);
    }
    let unknown = tube(2.0, 0.116).section().unwrap();
    let found = metal("mild steel, unknown")
        .elastic_moment(&unknown)
        .unwrap()
        .value;
    prints_as("unknown steel", found, 9343.8, 0.1);
    let thin = tube(1.5, 0.065).section().unwrap();
    prints_as(
        "thin",
        metal("steel A500 Gr B")
            .elastic_moment(&thin)
            .unwrap()
            .value,
        4721.9,
        0.1,
    );
    let plastic = metal("steel A500 Gr B")
        .allowable_moment(&thin, Weld::Clear)
        .unwrap();
    prints_as("thin, plastic", plastic.value, 5534.1, 0.1);
    // beyond 28.1 walls of flat width no number holds
    assert_eq!(
        metal("steel A500 Gr B").walls(tube(2.0, 0.125)),
        Walls::Compact
    );
    assert_eq!(
        metal("steel A500 Gr B").walls(tube(2.0, 0.03)),
        Walls::Slender
    );
    assert_eq!(
        metal("aluminium 6063-T5").walls(tube(2.0, 0.06)),
        Walls::Slender
    );
}

/// A 4 x 4 plate under a 2 x 2 post, screws 1/2 in from the edge, 36 ksi: stiff, and
/// pressing at the post's far face.
#[test]
pub(super) fn a_base_plate_bends_before_its_screws_say_so() {
    for (pull, moment) in [(1008.0, 1008.0), (1440.0, 1440.0)] {
        prints_as(
            "M_p",
            plate_moment(pounds(pull), 2, inches(0.5)).value,
            moment,
            0.1,
        );
    }
    for (thick, takes, stiff, bending) in [
        (0.25, 1347.3, 0.748, 1.069),
        (0.1875, 757.9, 1.330, 1.900),
        (0.375, 3031.4, 0.333, 0.475),
    ] {
        let found = customary(plate_allowable(psi(36e3), inches(4.0), inches(thick)).value);
        prints_as("M_a", found, takes, 0.1);
        prints_as("stiff", 1008.0 / found, stiff, 1e-3);
        prints_as("bending", 1440.0 / found, bending, 1e-3);
    }
}

/// Two examples of an anchor design guide after ACI 318-19 §17.6.2, which prints
/// 47 405 and 88 489 lb, 18 313 and 92 221 lb (its factors rounded on the way), and
/// the row of a guard's plate.
#[test]
pub(super) fn breakout_of_a_row_of_anchors() {
    let one = concrete_breakout(Concrete::Cracked, psi(4500.0), inches(12.0));
    prints_as("N_b", one.value, 47_405.3, 0.1);
    let row = |count, apart, embedded, edge| AnchorRow {
        count,
        apart: inches(apart),
        embedded: inches(embedded),
        edge: inches(edge),
    };
    let at_edge = row(2, 36.0, 12.0, 6.0);
    agrees("ψ", at_edge.edge_factor().value, 0.8);
    let area = at_edge.cone_area().map(|_| inches(3024.0) * inches(1.0));
    let group = group_breakout(one, inches(12.0), area, at_edge.edge_factor());
    prints_as("N_cbg", group.value, 88_489.9, 0.5);
    let inner = row(2, 3.0, 5.75, 8.0);
    prints_as("ψ", inner.edge_factor().value, 0.978_26, 1e-5);
    for (embedded, edge, area, factor, nominal, allowed) in [
        (2.0, 1.5, 40.5, 0.85, 2299.0, 934.0),
        (2.0, 3.0, 54.0, 1.0, 3606.2, 1465.0),
        (3.25, 2.0, 87.656, 0.823_08, 3779.7, 1535.5),
    ] {
        let row = row(2, 3.0, embedded, edge);
        prints_as("A", row.cone_area().value, area, 1e-3);
        prints_as("ψ", row.edge_factor().value, factor, 1e-5);
        let found = row.breakout(Concrete::Cracked, psi(2500.0));
        prints_as("N", found.value, nominal, 0.1);
        let service = breakout_in_service(found, Qualified::Well).value;
        prints_as("N_a", service, allowed, 0.1);
    }
    let worst = row(2, 3.0, 2.0, 1.5).breakout(Concrete::Cracked, psi(2500.0));
    prints_as(
        "unknown",
        breakout_in_service(worst, Qualified::Unknown).value,
        646.6,
        0.1,
    );
    let best = row(2, 3.0, 2.0, 1.5).breakout(Concrete::Uncracked, psi(4000.0));
    let best = breakout_in_service(best, Qualified::Well).value;
    prints_as("best", best, 1667.8, 0.1);
    prints_as("ratio", 2016.0 / customary(best), 1.21, 0.01);
}

/// Uniform blocks on either side of the turning point, and the form of a handbook.
#[test]
pub(super) fn posts_in_a_pocket() {
    let of = |depth, width, arm, strength: f64| Pocket {
        width: inches(width),
        depth: inches(depth),
        arm: inches(arm),
        strength: psi(strength),
    };
    for (depth, width, arm, blocks, handbook, low, high) in [
        (4.0, 2.0, 39.0, 497.3, 538.3, 202.0, 218.7),
        (4.0, 1.9, 42.0, 440.2, 477.3, 178.8, 193.9),
        (3.0, 1.9, 42.0, 250.5, 273.2, 101.8, 111.0),
        (5.0, 1.9, 42.0, 679.9, 733.2, 276.2, 297.9),
    ] {
        let pocket = of(depth, width, arm, 3000.0);
        prints_as("blocks", pocket.by_blocks().value, blocks, 0.1);
        prints_as("handbook", pocket.by_handbook().value, handbook, 0.1);
        prints_as(
            "allowed",
            pocket_allowable(pocket.by_blocks()).value,
            low,
            0.1,
        );
        prints_as(
            "allowed",
            pocket_allowable(pocket.by_handbook()).value,
            high,
            0.1,
        );
    }
    for (width, arm, blocks, handbook) in [
        (1.9, 42.0, 169.6, 185.0),
        (2.0, 36.0, 207.1, 225.2),
        (2.375, 36.0, 245.9, 267.4),
    ] {
        let pocket = of(3.0, width, arm, 5000.0);
        prints_as(
            "3 in",
            pocket_allowable(pocket.by_blocks()).value,
            blocks,
            0.1,
        );
        prints_as(
            "3 in",
            pocket_allowable(pocket.by_handbook()).value,
            handbook,
            0.1,
        );
    }
}
