//! The yield modes against an independent derivation: the general dowel
//! equations of AWC Technical Report 12 without a gap, one quadratic
//! A·P² + B·P + C = 0 for each mode.

use guardrule::quantities::inches;
use guardrule::quantities::psi;
use guardrule::statics::dowel::Dowel;
use guardrule::statics::lateral::BearingMember;
use guardrule::statics::lateral::Joint;
use guardrule::statics::lateral::Mode;
use guardrule::statics::lateral::Shear;
use proptest::prelude::*;

use super::customary;
use super::degrees;

/// P of one mode in pounds, before any reduction. `q` is the load on an inch of
/// dowel, `l` the bearing length, `hinge` the plastic moment F_yb·D³/6.
fn general(mode: Mode, q_m: f64, q_s: f64, l_m: f64, l_s: f64, hinge: f64) -> f64 {
    let (crush_m, crush_s) = (q_m * l_m * l_m / 4.0, q_s * l_s * l_s / 4.0);
    let (a, b, c) = match mode {
        Mode::Im => return q_m * l_m,
        Mode::Is => return q_s * l_s,
        Mode::II => {
            let a = 1.0 / (4.0 * q_s) + 1.0 / (4.0 * q_m);
            (a, l_s / 2.0 + l_m / 2.0, -crush_s - crush_m)
        }
        Mode::IIIm => {
            let a = 1.0 / (2.0 * q_s) + 1.0 / (4.0 * q_m);
            (a, l_m / 2.0, -hinge - crush_m)
        }
        Mode::IIIs => {
            let a = 1.0 / (4.0 * q_s) + 1.0 / (2.0 * q_m);
            (a, l_s / 2.0, -crush_s - hinge)
        }
        Mode::IV => (1.0 / (2.0 * q_s) + 1.0 / (2.0 * q_m), 0.0, -2.0 * hinge),
    };
    (-b + (b * b - 4.0 * a * c).sqrt()) / (2.0 * a)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(2000))]

    #[test]
    fn every_mode_is_the_root_of_its_quadratic(
        is_bolt in any::<bool>(),
        d in 0.1_f64..1.0,
        f_em in 1500.0_f64..90e3,
        f_es in 1500.0_f64..90e3,
        l_m in 0.5_f64..6.0,
        l_s in 0.05_f64..4.0,
        angle in 0.0_f64..90.0,
    ) {
        let diameter = inches(d);
        let dowel = if is_bolt { Dowel::Bolt { diameter } } else { Dowel::Nail { diameter } };
        let joint = Joint {
            dowel,
            main: BearingMember { bearing: psi(f_em), length: inches(l_m) },
            side: BearingMember { bearing: psi(f_es), length: inches(l_s) },
            angle: degrees(angle),
            shear: Shear::Single,
        };
        let found = joint.reference().value;
        let f_yb = customary(dowel.yield_strength());
        let reduction = dowel.reduction(degrees(angle)).value;
        let hinge = f_yb * d * d * d / 6.0;
        let mut least = f64::INFINITY;
        for (mode, load) in &found.modes {
            let r_d = match mode {
                Mode::Im | Mode::Is => reduction.crushing,
                Mode::II => reduction.turning,
                Mode::IIIm | Mode::IIIs | Mode::IV => reduction.bending,
            };
            let expected = general(*mode, f_em * d, f_es * d, l_m, l_s, hinge) / r_d;
            let ours = customary(*load);
            prop_assert!((ours - expected).abs() <= 1e-9 * expected, "{mode:?}: {ours} {expected}");
            least = least.min(expected);
        }
        prop_assert!((customary(found.load) - least).abs() <= 1e-9 * least);
    }
}
