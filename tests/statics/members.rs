//! Sections, wood and metal members: closed forms, and tables where named.

use guardrule::quantities::Moment;
use guardrule::quantities::inches;
use guardrule::quantities::millimetres;
use guardrule::quantities::pound_inches;
use guardrule::quantities::pounds;
use guardrule::quantities::psi;
use guardrule::statics::AnyQuantity;
use guardrule::statics::Units;
use guardrule::statics::beam::Case;
use guardrule::statics::beam::rigidity;
use guardrule::statics::factors::Incising;
use guardrule::statics::factors::LoadDuration;
use guardrule::statics::factors::Moisture;
use guardrule::statics::grade::Grade;
use guardrule::statics::infill::baluster_moment;
use guardrule::statics::infill::baluster_moment_worst;
use guardrule::statics::infill::on_one_baluster;
use guardrule::statics::metal::METALS;
use guardrule::statics::metal::Metal;
use guardrule::statics::metal::Weld;
use guardrule::statics::section::NoSection;
use guardrule::statics::section::Profile;
use guardrule::statics::section::Section;
use guardrule::statics::wood::Lying;
use guardrule::statics::wood::Service;
use guardrule::statics::wood::TIMBERS;
use guardrule::statics::wood::allowable_bending_of;
use guardrule::statics::wood::allowable_shear;

use super::agrees;
use super::bending_stress;
use super::customary;
use super::prints_as;
use super::rectangle;
use super::species;

/// Area, I, S by closed forms, sizes by NDS Supplement Table 1A.
#[test]
pub(super) fn lumber_sections() {
    let half = rectangle(3.5, 3.5).notched(inches(1.75)).unwrap();
    let two_left = rectangle(3.5, 3.5).notched(inches(2.0)).unwrap();
    for (what, profile, area, elastic, second) in [
        ("4x4", rectangle(3.5, 3.5), 12.25, 7.145833, 12.505208),
        ("6x6", rectangle(5.5, 5.5), 30.25, 27.729167, 76.255208),
        ("2x4 on edge", rectangle(1.5, 3.5), 5.25, 3.0625, 5.359375),
        ("2x4 flat", rectangle(3.5, 1.5), 5.25, 1.3125, 0.984375),
        ("2x6 on edge", rectangle(1.5, 5.5), 8.25, 7.5625, 20.796875),
        ("2x6 flat", rectangle(5.5, 1.5), 8.25, 2.0625, 1.546875),
        ("5/4x6 flat", rectangle(5.5, 1.0), 5.5, 0.916667, 0.458333),
        ("2x2", rectangle(1.5, 1.5), 2.25, 0.5625, 0.421875),
        ("half notched", half, 6.125, 1.786458, 1.563151),
        ("2 in left", two_left, 7.0, 2.333333, 2.333333),
    ] {
        let section = profile.section().unwrap();
        prints_as(what, section.area, area, 1e-6);
        prints_as(what, section.elastic, elastic, 1e-6);
        prints_as(what, section.second_moment, second, 1e-6);
    }
    // NDS Table 1B prints 7.146 and 12.51 for the 4x4.
    let post = rectangle(3.5, 3.5).section().unwrap();
    prints_as("NDS S", post.elastic, 7.146, 0.001);
    prints_as("NDS I", post.second_moment, 12.51, 0.01);
}

/// Printed: Mott, Machine Elements, Table A16-6.
#[test]
pub(super) fn pipes_as_tabulated() {
    for (name, expected, printed) in [
        (
            "1 std",
            [0.493877, 0.0873430, 0.132841, 0.186602],
            [0.494, 0.08734, 0.1328],
        ),
        (
            "1 1/4 std",
            [0.668531, 0.194710, 0.234590, 0.324371],
            [0.669, 0.1947, 0.2346],
        ),
        (
            "1 1/2 std",
            [0.799457, 0.309894, 0.326205, 0.447620],
            [0.799, 0.3099, 0.3262],
        ),
        (
            "2 std",
            [1.074532, 0.665747, 0.560629, 0.760875],
            [1.075, 0.6658, 0.5607],
        ),
    ] {
        let section = pipe(name).section().unwrap();
        six_digits(name, &section, expected);
        // The handbook's 2 in row is one in its last digit off: 0.665747 and 0.560629.
        let slack = if name == "2 std" { 2.0 } else { 1.0 };
        prints_as(name, section.area, printed[0], 0.001);
        prints_as(
            name,
            section.second_moment,
            printed[1],
            slack * last_digit(printed[1]),
        );
        prints_as(name, section.elastic, printed[2], slack * 0.0001);
    }
}

/// Standard-weight pipe by the same table.
fn pipe(name: &str) -> Profile {
    let (outside, wall) = match name {
        "1 std" => (1.315, 0.133),
        "1 1/4 std" => (1.660, 0.140),
        "1 1/2 std" => (1.900, 0.145),
        "2 std" => (2.375, 0.154),
        other => panic!("no pipe {other}"),
    };
    Profile::RoundTube {
        outside: inches(outside),
        wall: inches(wall),
    }
}

fn last_digit(printed: f64) -> f64 {
    if printed < 0.1 { 0.000_01 } else { 0.0001 }
}

/// Equal to six digits.
fn six_digits(what: &str, section: &Section, expected: [f64; 4]) {
    let ours = [
        customary(section.area),
        customary(section.second_moment),
        customary(section.elastic),
        customary(section.plastic),
    ];
    for (ours, expected) in ours.iter().zip(expected) {
        assert!(
            (ours - expected).abs() <= 6e-6 * expected,
            "{what}: {ours}, expected {expected}"
        );
    }
}

/// Tubes and bars with closed forms, and two square steel tubes with round
/// corners as the steel tables print them. The meshed values (sectionproperties 3.10) for those two
/// (0.607292 in², 0.723292 in²) lie up to 0.04 % below the closed form, since the
/// mesh has polygons for corners.
#[test]
pub(super) fn tubes_and_bars() {
    let tube = |across: f64, along: f64, wall: f64, corner: f64| Profile::RectangularTube {
        across: inches(across),
        along: inches(along),
        wall: inches(wall),
        corner: inches(corner),
    };
    let round = |outside: f64, wall: f64| Profile::RoundTube {
        outside: inches(outside),
        wall: inches(wall),
    };
    let bar = |d: f64| Profile::Round {
        diameter: inches(d),
    };
    let square = Profile::Rectangle {
        across: inches(0.5),
        along: inches(0.5),
    };
    for (what, profile, expected) in [
        (
            "1.5 x 0.065",
            round(1.5, 0.065),
            [0.293032, 0.0755821, 0.100776, 0.133941],
        ),
        (
            "2 x 0.125",
            tube(2.0, 2.0, 0.125, 0.0),
            [0.937500, 0.551758, 0.551758, 0.660156],
        ),
        (
            "1 x 0.062",
            tube(1.0, 1.0, 0.062, 0.0),
            [0.232624, 0.0342612, 0.0685223, 0.0819447],
        ),
        (
            "1/2 round",
            bar(0.5),
            [0.196350, 0.00306796, 0.0122718, 0.0208333],
        ),
        (
            "5/8 round",
            bar(0.625),
            [0.306796, 0.00749014, 0.0239684, 0.0406901],
        ),
        (
            "3/4 round",
            bar(0.75),
            [0.441786, 0.0155316, 0.0414175, 0.0703125],
        ),
        ("1/2 square", square, [0.25, 0.00520833, 0.0208333, 0.03125]),
    ] {
        six_digits(what, &profile.section().unwrap(), expected);
    }
    let section = tube(1.5, 1.5, 0.116, 0.232).section().unwrap();
    let meshed = |ours: f64, mesh: f64| assert!((ours / mesh - 1.0).abs() < 1e-3, "{ours} {mesh}");
    meshed(customary(section.area), 0.607_292);
    meshed(customary(section.second_moment), 0.188_006);
    meshed(customary(section.elastic), 0.250_675);
    meshed(customary(section.plastic), 0.308_676);
    prints_as("table A", section.area, 0.608, 0.002);
    prints_as("table I", section.second_moment, 0.188, 0.001);
    prints_as("table S", section.elastic, 0.251, 0.001);
    prints_as("table Z", section.plastic, 0.309, 0.001);
    let section = tube(1.5, 2.0, 0.116, 0.232).section().unwrap();
    meshed(customary(section.area), 0.723_292);
    meshed(customary(section.second_moment), 0.382_717);
    meshed(customary(section.elastic), 0.382_717);
    meshed(customary(section.plastic), 0.474_999);
    prints_as("table A", section.area, 0.724, 0.002);
    prints_as("table I", section.second_moment, 0.383, 0.001);
    prints_as("table S", section.elastic, 0.383, 0.001);
    prints_as("table Z", section.plastic, 0.475, 0.001);
}

/// Closed forms, in millimetres.
#[test]
pub(super) fn metric_tubes() {
    for (outside, wall, expected) in [
        (42.4, 2.0, [253.841, 51_915.5, 2_448.84, 3_266.99]),
        (48.3, 3.2, [453.395, 115_856.0, 4_797.37, 6_519.75]),
    ] {
        let tube = Profile::RoundTube {
            outside: millimetres(outside),
            wall: millimetres(wall),
        };
        let section = tube.section().unwrap();
        let metric = |of: AnyQuantity| of.size(Units::Metric).0;
        for (ours, expected) in [
            (metric(section.area.into()), expected[0]),
            (metric(section.second_moment.into()), expected[1]),
            (metric(section.elastic.into()), expected[2]),
            (metric(section.plastic.into()), expected[3]),
        ] {
            assert!(
                (ours - expected).abs() <= 6e-6 * expected,
                "{outside}: {ours} {expected}"
            );
        }
    }
}

#[test]
pub(super) fn sizes_that_make_no_section_are_refused() {
    let tube = |wall: f64| Profile::RoundTube {
        outside: inches(1.0),
        wall: inches(wall),
    };
    assert_eq!(tube(0.5).section(), Err(NoSection::WallTooThick));
    assert_eq!(tube(0.0).section(), Err(NoSection::NoSize));
    assert_eq!(tube(f64::NAN).section(), Err(NoSection::NoSize));
    let round = Profile::RectangularTube {
        across: inches(1.0),
        along: inches(2.0),
        wall: inches(0.1),
        corner: inches(0.6),
    };
    assert_eq!(round.section(), Err(NoSection::CornerTooRound));
}

fn service(duration: LoadDuration, moisture: Moisture) -> Service {
    Service {
        duration,
        moisture,
        incising: Incising::Plain,
    }
}

/// F'_b of a named lumber section of No. 2, in psi.
fn allowed(name: &str, sizes: (f64, f64), lying: Lying, service: Service) -> f64 {
    let (thickness, width) = (inches(sizes.0), inches(sizes.1));
    let worked = allowable_bending_of(species(name), Grade::No2, thickness, width, lying, service)
        .expect("in the tables");
    customary(worked.value)
}

const SQUARE: (f64, f64) = (3.5, 3.5);

/// Worked by hand with the values of NDS Supplement 2018.
#[test]
pub(super) fn wooden_posts_in_bending() {
    let wet = |duration| service(duration, Moisture::Wet);
    let post = Profile::Rectangle {
        across: inches(3.5),
        along: inches(3.5),
    };
    let modulus = |profile: Profile| profile.section().unwrap().elastic;
    let stress = |moment: f64, profile: Profile| {
        customary(bending_stress(pound_inches(moment), modulus(profile)))
    };
    let low = allowed(
        "Spruce-Pine-Fir",
        SQUARE,
        Lying::OnEdge,
        wet(LoadDuration::TEN_YEARS),
    );
    let high = allowed(
        "Spruce-Pine-Fir",
        SQUARE,
        Lying::OnEdge,
        wet(LoadDuration::TEN_MINUTES),
    );
    let bent = stress(7200.0, post);
    prints_as("45 f_b", bent, 1007.58, 0.01);
    agrees("45 F'_b", low, 1115.625);
    agrees("45 ratio", bent / low, 0.9031531);
    agrees("45 ratio", bent / high, 0.5644707);

    let fir = allowed(
        "Douglas Fir-Larch",
        SQUARE,
        Lying::OnEdge,
        wet(LoadDuration::TEN_YEARS),
    );
    let bent = stress(8400.0, post);
    prints_as("46 f_b", bent, 1175.51, 0.01);
    agrees("46 F'_b", fir, 1147.5);
    agrees("46 ratio", bent / fir, 1.02441);

    let notched = post.notched(inches(1.75)).unwrap();
    let bent = stress(7200.0, notched);
    let fir = allowed(
        "Douglas Fir-Larch",
        SQUARE,
        Lying::OnEdge,
        wet(LoadDuration::TEN_MINUTES),
    );
    agrees("47 f_b", bent, 4030.321);
    agrees("47 F'_b", fir, 1836.0);
    agrees("47 ratio", bent / fir, 2.195164);

    let six = Profile::Rectangle {
        across: inches(5.5),
        along: inches(5.5),
    };
    let bent = stress(8400.0, six);
    let timber = &TIMBERS[0];
    let of = allowable_bending_of(
        timber,
        Grade::No2,
        inches(5.5),
        inches(5.5),
        Lying::OnEdge,
        wet(LoadDuration::TEN_YEARS),
    );
    agrees("48 f_b", bent, 302.9301);
    agrees("48 ratio", bent / customary(of.unwrap().value), 0.4039068);
}

/// Every No. 2 species passes in bending at 36 in, wet, C_D 1.0, at ratios
/// of 0.878 to 0.930; at 42 in they are 1.02 to 1.08.
#[test]
pub(super) fn a_wet_post_by_species() {
    let wet = service(LoadDuration::TEN_YEARS, Moisture::Wet);
    let main_four = [
        "Douglas Fir-Larch",
        "Spruce-Pine-Fir",
        "Hem-Fir",
        "Southern Pine",
    ];
    let ratios = main_four.map(|name| 1007.58 / allowed(name, SQUARE, Lying::OnEdge, wet));
    let ends = |ratios: [f64; 4]| {
        let least = ratios.iter().copied().fold(f64::INFINITY, f64::min);
        (least, ratios.iter().copied().fold(0.0, f64::max))
    };
    prints_as("least at 36 in", ends(ratios).0, 0.878, 0.001);
    prints_as("most at 36 in", ends(ratios).1, 0.930, 0.001);
    let ratios = main_four.map(|name| 1175.51 / allowed(name, SQUARE, Lying::OnEdge, wet));
    prints_as("least at 42 in", ends(ratios).0, 1.02, 0.01);
    prints_as("most at 42 in", ends(ratios).1, 1.08, 0.01);
}

/// Worked by hand: a 2x4 cap of spruce, dry.
#[test]
pub(super) fn a_flat_cap() {
    let dry = |duration| service(duration, Moisture::Dry);
    let size = (1.5, 3.5);
    let edge = allowed(
        "Spruce-Pine-Fir",
        size,
        Lying::OnEdge,
        dry(LoadDuration::TEN_YEARS),
    );
    agrees("68 F'_b", edge, 1312.5);
    let cap = |across: f64, along: f64| {
        let profile = Profile::Rectangle {
            across: inches(across),
            along: inches(along),
        };
        let modulus = profile.section().unwrap().elastic;
        customary(bending_stress(pound_inches(3600.0), modulus))
    };
    prints_as("68 f_b", cap(1.5, 3.5), 1175.51, 0.01);
    agrees("69 f_b", cap(3.5, 1.5), 2742.857);
    let low = allowed(
        "Spruce-Pine-Fir",
        size,
        Lying::Flat,
        dry(LoadDuration::TEN_YEARS),
    );
    let high = allowed(
        "Spruce-Pine-Fir",
        size,
        Lying::Flat,
        dry(LoadDuration::TEN_MINUTES),
    );
    agrees("69 F'_b", low, 1443.75);
    agrees("69 F'_b", high, 2310.0);
    prints_as("69 ratio", cap(3.5, 1.5) / low, 1.900, 0.001);
    prints_as("69 ratio", cap(3.5, 1.5) / high, 1.187, 0.001);
}

/// Sizes without a factor give no number: a deck board, and what is wider than the
/// tables that were read.
#[test]
pub(super) fn untabulated_sizes_have_no_allowable_stress() {
    let dry = service(LoadDuration::TEN_YEARS, Moisture::Dry);
    for (name, thickness, width) in [
        ("Douglas Fir-Larch", 1.0, 5.5),
        ("Douglas Fir-Larch", 1.5, 11.25),
        ("Southern Pine", 1.5, 13.25),
    ] {
        let none = allowable_bending_of(
            species(name),
            Grade::No2,
            inches(thickness),
            inches(width),
            Lying::OnEdge,
            dry,
        );
        assert!(none.is_err(), "{name} {thickness} x {width}");
    }
    let shear = allowable_shear(
        species("Douglas Fir-Larch"),
        service(LoadDuration::TEN_YEARS, Moisture::Wet),
    );
    agrees("F_v wet", shear.value, 180.0 * 0.97);
}

/// F·a³/3EI: the 4x4 alone moves 0.1776631 in; 1125.7 lb/in, 0.044 in at 50 lb.
#[test]
pub(super) fn a_post_bends_little() {
    let profile = Profile::Rectangle {
        across: inches(3.5),
        along: inches(3.5),
    };
    let post = rigidity(psi(1.4e6), profile.section().unwrap().second_moment).value;
    let moved = |pull: f64| {
        Case::Cantilever(pounds(pull))
            .deflection(inches(36.0), post)
            .unwrap()
            .value
    };
    agrees("49", moved(200.0), 0.1776631);
    prints_as("stiffness", pounds(200.0) / moved(200.0), 1125.7, 0.1);
    prints_as("at 50 lb", moved(50.0), 0.044, 0.001);
}

/// Worked by hand: balusters.
#[test]
pub(super) fn balusters_under_the_infill_load() {
    let patch = inches(12.0);
    for (spacing, length, side, share, moment, stress) in [
        (4.75, 32.0, 1.5, 19.79167, 128.6458, 228.7037),
        (5.0, 36.0, 0.5, 20.83333, 156.25, 7500.0),
    ] {
        let share_found = on_one_baluster(pounds(50.0), patch, inches(spacing));
        let found = baluster_moment(pounds(50.0), patch, inches(spacing), inches(length));
        let profile = Profile::Rectangle {
            across: inches(side),
            along: inches(side),
        };
        let modulus = profile.section().unwrap().elastic;
        agrees("W", share_found.value, share);
        agrees("M", found.value, moment);
        agrees("f", bending_stress(found.value, modulus), stress);
    }
    let whole = baluster_moment_worst(pounds(50.0), inches(36.0)).value;
    let bar = Profile::Rectangle {
        across: inches(0.5),
        along: inches(0.5),
    };
    agrees(
        "73 whole",
        bending_stress(whole, bar.section().unwrap().elastic),
        21_600.0,
    );
    prints_as("73 ratio", 7500.0 / (0.6 * 36_000.0), 0.347, 0.001);
}

fn metal(name: &str) -> &'static Metal {
    METALS
        .iter()
        .find(|row| row.name == name)
        .expect("in the tables")
}

struct Tube {
    section: Section,
    metal: &'static Metal,
}

impl Tube {
    fn stress(&self, moment: Moment) -> f64 {
        customary(bending_stress(moment, self.section.elastic))
    }
    fn moved(&self, case: Case, length: f64) -> f64 {
        let elasticity = self.metal.elasticity.expect("in the tables");
        let post = rigidity(elasticity, self.section.second_moment).value;
        customary(
            case.deflection(inches(length), post)
                .expect("in the tables")
                .value,
        )
    }
    fn allowed(&self, weld: Weld) -> f64 {
        customary(
            self.metal
                .allowable_moment(&self.section, weld)
                .expect("in the tables")
                .value,
        )
    }
}

/// Worked by hand: rails and posts of metal.
#[test]
pub(super) fn metal_rails_and_posts() {
    let load = pounds(200.0);
    let tube = |profile: Profile, name: &str| Tube {
        section: profile.section().unwrap(),
        metal: metal(name),
    };
    let rail = tube(pipe("1 1/4 std"), "steel A53 Gr B pipe");
    agrees("74 f_b", rail.stress(pound_inches(3600.0)), 15345.93);
    agrees("74 δ", rail.moved(Case::OneSpan(load), 72.0), 0.2754234);
    agrees("74 M_a", rail.allowed(Weld::Clear), 6798.188);
    let elastic = rail.metal.elastic_moment(&rail.section).unwrap().value;
    agrees("74 elastic", elastic, 4926.388);
    prints_as("74 ratio", 3600.0 / rail.allowed(Weld::Clear), 0.530, 0.001);
    prints_as("74 ratio", 3600.0 / customary(elastic), 0.731, 0.001);

    let post = tube(pipe("1 1/2 std"), "steel A53 Gr B pipe");
    agrees("75 f_b", post.stress(pound_inches(8400.0)), 25750.7);
    agrees("75 δ", post.moved(Case::Cantilever(load), 42.0), 0.5495976);
    agrees("75 M_a", post.allowed(Weld::Clear), 9381.254);
    prints_as("75 ratio", 8400.0 / post.allowed(Weld::Clear), 0.895, 0.001);

    let square = Profile::RectangularTube {
        across: inches(2.0),
        along: inches(2.0),
        wall: inches(0.125),
        corner: inches(0.0),
    };
    let post = tube(square, "aluminium 6061-T6");
    agrees("76 f_b", post.stress(pound_inches(7200.0)), 13049.2);
    agrees("76 M_a", post.allowed(Weld::Clear), 11703.95);
    agrees("76 welded", post.allowed(Weld::Beside), 5015.98);
    agrees("76 δ", post.moved(Case::Cantilever(load), 36.0), 0.5581442);
    prints_as("76 ratio", 7200.0 / post.allowed(Weld::Clear), 0.615, 0.001);
    prints_as(
        "76 ratio",
        7200.0 / post.allowed(Weld::Beside),
        1.435,
        0.001,
    );

    let round = Profile::RoundTube {
        outside: inches(1.5),
        wall: inches(0.065),
    };
    let post = tube(round, "stainless 304 or 316");
    agrees("77 f_b", post.stress(pound_inches(8400.0)), 83353.04);
    agrees("77 M_a", post.allowed(Weld::Clear), 2406.129);
    agrees("77 δ", post.moved(Case::Cantilever(load), 42.0), 2.333885);
    prints_as("77 ratio", 8400.0 / post.allowed(Weld::Clear), 3.49, 0.01);
}

#[test]
pub(super) fn iron_of_unknown_alloy_has_no_allowable_moment() {
    let bar = Profile::Round {
        diameter: inches(0.5),
    }
    .section()
    .unwrap();
    let iron = metal("iron, wrought or cast");
    assert!(iron.allowable_moment(&bar, Weld::Clear).is_err());
    assert!(iron.elastic_moment(&bar).is_err());
}
