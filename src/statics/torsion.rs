//! A rim between two joists, twisted by the post on its face: why it cannot hold
//! a post by itself. For explanation: no design value of sawn lumber in torsion
//! was found.

use std::f64::consts::PI;

use crate::quantities::Distance;
use crate::quantities::Moment;
use crate::quantities::Pressure;
use crate::statics::basis::Provenance;
use crate::statics::worked::Worked;

/// Terms of the series; each is smaller than the last by its odd number squared.
const TERMS: u32 = 200;

/// The greatest shear stress of a solid rectangle in torsion, by the exact series
/// (Saint-Venant).
#[must_use]
pub fn torsion_stress(torque: Moment, one: Distance, other: Distance) -> Worked<Pressure> {
    let (long, short) = (one.max(other), one.min(other));
    let slender = (long / short).value;
    let odd = (0..TERMS).map(|n| f64::from(2 * n + 1));
    let (mut stress, mut stiff) = (0.0, 0.0);
    for n in odd {
        let turn = n * PI * slender / 2.0;
        // far out both are 0 and 1 to the last digit
        let (sech, tanh) = if turn > 300.0 {
            (0.0, 1.0)
        } else {
            (1.0 / libm::cosh(turn), libm::tanh(turn))
        };
        stress += sech / (n * n);
        stiff += tanh / libm::pow(n, 5.0);
    }
    let top = 1.0 - 8.0 / (PI * PI) * stress;
    let beta = (1.0 - 192.0 / libm::pow(PI, 5.0) / slender * stiff) / 3.0;
    let factor = top / beta;
    let inputs = [
        ("T", torque.into()),
        ("b", long.into()),
        ("t", short.into()),
        ("k", factor.into()),
    ];
    let value = torque * factor / (long * short * short);
    Worked::new("τ", "k·T/(b·t²)", &inputs, value, Provenance::MECHANICS)
}
