//! Posts set in a pocket of concrete: what bearing on its walls alone carries.
//!
//! For explanation and for shortfalls only: edges, swelling grout, frost and rust
//! decide as well, and none of them is in it.

use crate::quantities::Distance;
use crate::quantities::Force;
use crate::quantities::Pressure;
use crate::statics::basis::Provenance;
use crate::statics::worked::Worked;

/// A post in its pocket.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pocket {
    /// b, of the post across the push.
    pub width: Distance,
    /// l, of the post in the concrete.
    pub depth: Distance,
    /// a, from the surface up to the push.
    pub arm: Distance,
    /// f'c
    pub strength: Pressure,
}

impl Pocket {
    /// The push at which two uniform blocks of 0.85·f'c balance it.
    #[must_use]
    pub fn by_blocks(&self) -> Worked<Force> {
        let (a, l) = (self.arm, self.depth);
        let q = self.strength * 0.85;
        let turn = (a * a + a * l + l * l / 2.0).sqrt() - a;
        let force = q * self.width * (turn * 2.0 - l);
        let formula = "0.85·f'c·b·(2·√(a² + a·l + l²/2) - 2·a - l)";
        Worked::new(
            "F_blocks",
            formula,
            &self.inputs(),
            force,
            Provenance::MECHANICS,
        )
    }

    /// The form of a handbook of precast concrete.
    #[must_use]
    pub fn by_handbook(&self) -> Worked<Force> {
        let l = self.depth;
        let reach = (self.arm + l / 2.0) / l;
        let force = self.strength * 0.85 * self.width * l / (1.0 + 3.6 * reach.value);
        let formula = "0.85·f'c·b·l/(1 + 3.6·(a + l/2)/l)";
        let basis = Provenance::memory("handbook of precast concrete");
        Worked::new("F_handbook", formula, &self.inputs(), force, basis)
    }

    fn inputs(&self) -> [(&'static str, crate::statics::AnyQuantity); 4] {
        [
            ("f'c", self.strength.into()),
            ("b", self.width.into()),
            ("l", self.depth.into()),
            ("a", self.arm.into()),
        ]
    }
}

/// Brought down to compare with a service load: 0.65/1.6.
#[must_use]
pub fn pocket_allowable(nominal: Worked<Force>) -> Worked<Force> {
    let basis = Provenance::memory("ACI 318, φ 0.65 and load factor 1.6");
    let inputs = [("F_n", nominal.value.into())];
    let force = nominal.value * 0.65 / 1.6;
    Worked::new("F_a", "0.65·F_n/1.6", &inputs, force, basis).after(nominal)
}
