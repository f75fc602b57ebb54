//! Fasteners pushed sideways: the yield limit equations
//! (NDS 2018 Tables 12.3.1A and 12.3.1B, read second-hand).

use crate::quantities::Angle;
use crate::quantities::Distance;
use crate::quantities::Force;
use crate::quantities::LineLoad;
use crate::quantities::Pressure;
use crate::quantities::inches;
use crate::quantities::psi;
use crate::statics::amount::AnyQuantity;
use crate::statics::basis::Provenance;
use crate::statics::dowel::Dowel;
use crate::statics::dowel::Reduction;
use crate::statics::worked::Worked;

/// Where the yield limit equations come from.
pub const YIELD_BASIS: Provenance = Provenance::quoted("NDS 2018 Tables 12.3.1A and 12.3.1B");

/// How a joint yields.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Mode {
    /// The wood of the main member is crushed.
    Im,
    /// The wood of the side member is crushed.
    Is,
    /// The fastener turns as a whole and crushes both.
    II,
    /// The fastener bends once, in the main member.
    IIIm,
    /// The fastener bends once, in the side member.
    IIIs,
    /// The fastener bends twice.
    IV,
}

impl Mode {
    /// The name of the mode in the standard.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Mode::Im => "Im",
            Mode::Is => "Is",
            Mode::II => "II",
            Mode::IIIm => "IIIm",
            Mode::IIIs => "IIIs",
            Mode::IV => "IV",
        }
    }
}

/// What one member of a joint gives the fastener to press on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BearingMember {
    /// F_e, dowel bearing strength.
    pub bearing: Pressure,
    /// l, the length of the fastener that bears in it.
    pub length: Distance,
}

/// How many planes the fastener is sheared in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Shear {
    /// Two equal side members, one on each face; `side` is one of them.
    Double,
    /// One side member.
    Single,
}

/// A fastener between two members.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Joint {
    /// The fastener.
    pub dowel: Dowel,
    /// The member that holds the point, or the middle one in double shear.
    pub main: BearingMember,
    /// The member under the head.
    pub side: BearingMember,
    /// θ, the largest angle of load to grain in either member.
    pub angle: Angle,
    /// Single or double shear.
    pub shear: Shear,
}

/// The load of every mode, and the mode that governs.
#[derive(Clone, Debug, PartialEq)]
pub struct Yield {
    /// Every mode with its load, in the order of the standard.
    pub modes: Vec<(Mode, Force)>,
    /// The mode of the least load.
    pub governing: Mode,
    /// Z, the reference value of one fastener.
    pub load: Force,
}

impl Joint {
    /// Z for one fastener, every mode in a line of its own.
    #[must_use]
    pub fn reference(&self) -> Worked<Yield> {
        let reduction = self.dowel.reduction(self.angle);
        let planes = Planes::of(self);
        let mut lines = Vec::new();
        let mut modes = Vec::new();
        for mode in Mode::of(self.shear) {
            let one = planes.mode(*mode, &reduction.value, self.shear);
            modes.push((*mode, one.value));
            lines.extend(one.lines);
        }
        let start = modes[0];
        let least = modes.iter().fold(
            start,
            |least, one| {
                if one.1 < least.1 { *one } else { least }
            },
        );
        let last = Worked::new("Z", "the least of the modes", &[], least.1, YIELD_BASIS);
        lines.extend(last.lines);
        let worked = Worked {
            value: Yield {
                modes,
                governing: least.0,
                load: least.1,
            },
            lines,
        };
        worked.after(reduction)
    }
}

impl Mode {
    const fn of(shear: Shear) -> &'static [Mode] {
        match shear {
            Shear::Double => &[Mode::Im, Mode::Is, Mode::IIIs, Mode::IV],
            Shear::Single => &[
                Mode::Im,
                Mode::Is,
                Mode::II,
                Mode::IIIm,
                Mode::IIIs,
                Mode::IV,
            ],
        }
    }
}

/// The quantities of the equations, once for all modes.
struct Planes {
    d: Distance,
    l_m: Distance,
    l_s: Distance,
    f_em: Pressure,
    f_es: Pressure,
    f_yb: Pressure,
    r_e: f64,
    r_t: f64,
}

impl Planes {
    fn of(joint: &Joint) -> Planes {
        Planes {
            d: joint.dowel.in_equations(),
            l_m: joint.main.length,
            l_s: joint.side.length,
            f_em: joint.main.bearing,
            f_es: joint.side.bearing,
            f_yb: joint.dowel.yield_strength(),
            r_e: (joint.main.bearing / joint.side.bearing).value,
            r_t: (joint.main.length / joint.side.length).value,
        }
    }

    fn k1(&self) -> Worked<f64> {
        let (e, t) = (self.r_e, self.r_t);
        let root = e + 2.0 * e * e * (1.0 + t + t * t) + t * t * e * e * e;
        let k = (root.sqrt() - e * (1.0 + t)) / (1.0 + e);
        let formula = "(√(R_e + 2·R_e²·(1 + R_t + R_t²) + R_t²·R_e³) - R_e·(1 + R_t))/(1 + R_e)";
        let inputs = [("R_e", e.into()), ("R_t", t.into())];
        Worked::new("k1", formula, &inputs, k, YIELD_BASIS)
    }

    fn k2(&self) -> Worked<f64> {
        let e = self.r_e;
        let slender = self.f_yb * self.d * self.d / (self.f_em * self.l_m * self.l_m);
        let root = 2.0 * (1.0 + e) + 2.0 / 3.0 * (1.0 + 2.0 * e) * slender.value;
        let formula = "-1 + √(2·(1 + R_e) + 2·F_yb·(1 + 2·R_e)·D²/(3·F_em·l_m²))";
        Worked::new(
            "k2",
            formula,
            &self.inputs(),
            root.sqrt() - 1.0,
            YIELD_BASIS,
        )
    }

    fn k3(&self) -> Worked<f64> {
        let e = self.r_e;
        let slender = self.f_yb * self.d * self.d / (self.f_em * self.l_s * self.l_s);
        let root = 2.0 * (1.0 + e) / e + 2.0 / 3.0 * (2.0 + e) * slender.value;
        let formula = "-1 + √(2·(1 + R_e)/R_e + 2·F_yb·(2 + R_e)·D²/(3·F_em·l_s²))";
        Worked::new(
            "k3",
            formula,
            &self.inputs(),
            root.sqrt() - 1.0,
            YIELD_BASIS,
        )
    }

    fn inputs(&self) -> Vec<(&'static str, AnyQuantity)> {
        vec![
            ("D", self.d.into()),
            ("l_m", self.l_m.into()),
            ("l_s", self.l_s.into()),
            ("F_em", self.f_em.into()),
            ("F_es", self.f_es.into()),
            ("F_yb", self.f_yb.into()),
            ("R_e", self.r_e.into()),
            ("R_t", self.r_t.into()),
        ]
    }

    /// The load of one mode over both planes of double shear.
    fn mode(&self, mode: Mode, reduction: &Reduction, shear: Shear) -> Worked<Force> {
        let e = self.r_e;
        let planes = match (shear, mode) {
            (Shear::Single, _) | (Shear::Double, Mode::Im) => 1.0,
            (Shear::Double, Mode::Is | Mode::II | Mode::IIIm | Mode::IIIs | Mode::IV) => 2.0,
        };
        let per_main: LineLoad = self.f_em * self.d;
        let per_side: LineLoad = self.f_es * self.d;
        let (symbol, formula, k, r_d, force) = match mode {
            Mode::Im => {
                let force = per_main * self.l_m;
                ("Z_Im", "D·l_m·F_em/R_d", None, reduction.crushing, force)
            }
            Mode::Is => {
                let force = per_side * self.l_s;
                ("Z_Is", "n·D·l_s·F_es/R_d", None, reduction.crushing, force)
            }
            Mode::II => {
                let k = self.k1();
                let force = per_side * self.l_s * k.value;
                (
                    "Z_II",
                    "k1·D·l_s·F_es/R_d",
                    Some(k),
                    reduction.turning,
                    force,
                )
            }
            Mode::IIIm => {
                let k = self.k2();
                let force = per_main * self.l_m * (k.value / (1.0 + 2.0 * e));
                let formula = "k2·D·l_m·F_em/((1 + 2·R_e)·R_d)";
                ("Z_IIIm", formula, Some(k), reduction.bending, force)
            }
            Mode::IIIs => {
                let k = self.k3();
                let force = per_main * self.l_s * (k.value / (2.0 + e));
                let formula = "n·k3·D·l_s·F_em/((2 + R_e)·R_d)";
                ("Z_IIIs", formula, Some(k), reduction.bending, force)
            }
            Mode::IV => {
                let root = (self.f_em * self.f_yb).sqrt() * (2.0 / (3.0 * (1.0 + e))).sqrt();
                let formula = "n·D²/R_d·√(2·F_em·F_yb/(3·(1 + R_e)))";
                let force = self.d * self.d * root;
                ("Z_IV", formula, None, reduction.bending, force)
            }
        };
        let mut inputs = self.inputs();
        inputs.push(("R_d", r_d.into()));
        inputs.push(("n", planes.into()));
        if let Some(k) = &k {
            inputs.push((k.lines[0].symbol, k.value.into()));
        }
        let worked = Worked::new(symbol, formula, &inputs, force * planes / r_d, YIELD_BASIS);
        match k {
            Some(k) => worked.after(k),
            None => worked,
        }
    }
}

/// What a fastener bears on that is no wood.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum SidePlate {
    /// A36 steel, 1/4 in and thicker: 87 000 psi.
    A36,
    /// Concrete: 7 500 psi.
    Concrete,
    /// Sheet of A653 grade 33: 61 850 psi.
    Sheet,
}

impl SidePlate {
    /// F_e
    #[must_use]
    pub const fn bearing(self) -> Pressure {
        match self {
            SidePlate::A36 => psi(87_000.0),
            SidePlate::Concrete => psi(7_500.0),
            SidePlate::Sheet => psi(61_850.0),
        }
    }

    /// Where the value comes from.
    #[must_use]
    pub const fn basis(self) -> Provenance {
        match self {
            SidePlate::A36 | SidePlate::Sheet => Provenance::quoted("NDS 2018 Tables 12B and 12K"),
            SidePlate::Concrete => {
                Provenance::published("a university course page on bolt yield equations")
            }
        }
    }
}

/// The length a fastener is driven into the main member against the least one.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, thiserror::Error)]
#[error("the fastener reaches less deep than the method asks at least")]
pub struct TooShallow;

/// The share of a tabulated Z for a penetration below the full one: p over 8D
/// (lags, without tip) or 10D (screws and nails, tip included).
///
/// # Errors
/// [`TooShallow`] below 4D and 6D, where the method gives nothing.
pub fn penetration_share(dowel: Dowel, penetration: Distance) -> Result<Worked<f64>, TooShallow> {
    let (least, full, formula) = match dowel {
        Dowel::Bolt { .. } => return Ok(Worked::new("p/p_full", "1", &[], 1.0, YIELD_BASIS)),
        Dowel::Lag(_) => (4.0, 8.0, "min(1, p/(8·D))"),
        Dowel::Nail { .. } | Dowel::WoodScrew(_) => (6.0, 10.0, "min(1, p/(10·D))"),
    };
    let multiple = (penetration / dowel.nominal()).value;
    if multiple < least - 1e-9 {
        return Err(TooShallow);
    }
    let inputs = [("p", penetration.into()), ("D", dowel.nominal().into())];
    let share = (multiple / full).min(1.0);
    Ok(Worked::new(
        "p/p_full",
        formula,
        &inputs,
        share,
        YIELD_BASIS,
    ))
}

/// Outer bolts may stand no farther apart across the grain (NDS 2018 §12.5.1.3, read
/// second-hand).
pub const WIDEST_ACROSS_GRAIN: Distance = inches(5.0);
