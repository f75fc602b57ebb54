//! The fastener in the yield equations: which diameter is used where, its
//! strength in bending, the reduction of the modes, and how hard wood is to it
//! (NDS 2018 §12.3, read second-hand).

use uom::si::angle::degree;
use uom::si::angle::radian;

use crate::quantities::Angle;
use crate::quantities::Distance;
use crate::quantities::Pressure;
use crate::quantities::inches;
use crate::quantities::psi;
use crate::statics::basis::Provenance;
use crate::statics::factors::SpecificGravity;
use crate::statics::hardware::Lag;
use crate::statics::hardware::WoodScrew;
use crate::statics::worked::Worked;

const REDUCTION_BASIS: Provenance = Provenance::quoted("NDS 2018 Table 12.3.1B");
const BEARING_BASIS: Provenance = Provenance::quoted("NDS 2018 Table 12.3.3");

/// A quarter inch, where the rules change; sizes are nominal, so a rounding
/// below it still counts as a quarter inch.
const QUARTER: Distance = inches(0.25 - 1e-9);

/// A fastener that is pushed sideways.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Dowel {
    /// A bolt with its shank in the joint.
    Bolt {
        /// D
        diameter: Distance,
    },
    /// A lag screw: root diameter in the equations.
    Lag(Lag),
    /// A nail.
    Nail {
        /// D
        diameter: Distance,
    },
    /// A wood screw: root diameter in the equations.
    WoodScrew(WoodScrew),
}

/// R_d by mode.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reduction {
    /// Modes Im and Is.
    pub crushing: f64,
    /// Mode II.
    pub turning: f64,
    /// Modes IIIm, IIIs and IV.
    pub bending: f64,
}

impl Dowel {
    /// D by which the fastener is sold: bearing, bands of F_yb, multiples of penetration.
    #[must_use]
    pub const fn nominal(self) -> Distance {
        match self {
            Dowel::Bolt { diameter } | Dowel::Nail { diameter } => diameter,
            Dowel::Lag(lag) => lag.diameter,
            Dowel::WoodScrew(screw) => screw.diameter,
        }
    }

    /// The diameter in the yield equations: the root of lags and wood screws.
    #[must_use]
    pub const fn in_equations(self) -> Distance {
        match self {
            Dowel::Bolt { diameter } | Dowel::Nail { diameter } => diameter,
            Dowel::Lag(lag) => lag.root,
            Dowel::WoodScrew(screw) => screw.root,
        }
    }

    /// F_yb, bending yield strength, by bands of the nominal diameter.
    ///
    /// The table states that of bolts from 3/8 in; below, the same value is the
    /// cautious choice.
    #[must_use]
    pub fn yield_strength(self) -> Pressure {
        if matches!(self, Dowel::Bolt { .. }) {
            return psi(45_000.0);
        }
        let d = (self.nominal() / inches(1.0)).value - 1e-9;
        let band = YIELD_BANDS.iter().find(|(widest, _)| d <= *widest);
        psi(band.map_or(45_000.0, |(_, strength)| *strength))
    }

    /// l_m of a pointed fastener: its length in the main member less half the tip.
    ///
    /// `reach` includes the tip; a lag's tip is in its table, that of screws and
    /// nails is 2D long. A bolt bears over the whole member.
    #[must_use]
    pub fn bearing_length(self, reach: Distance) -> Worked<Distance> {
        let tip = match self {
            Dowel::Bolt { .. } => {
                let inputs = [("t_m", reach.into())];
                return Worked::new("l_m", "t_m", &inputs, reach, REDUCTION_BASIS);
            }
            Dowel::Lag(lag) => lag.tip,
            Dowel::Nail { diameter } => diameter * 2.0,
            Dowel::WoodScrew(screw) => screw.diameter * 2.0,
        };
        let inputs = [("p", reach.into()), ("E", tip.into())];
        let length = (reach - tip / 2.0).max(Distance::default());
        Worked::new(
            "l_m",
            "p - E/2",
            &inputs,
            length,
            Provenance::quoted("NDS 2018 §12.3.5"),
        )
    }

    /// R_d of each mode for the largest angle of load to grain.
    #[must_use]
    pub fn reduction(self, angle: Angle) -> Worked<Reduction> {
        let degrees = angle.get::<degree>();
        let k_angle = 1.0 + 0.25 * degrees / 90.0;
        let in_equations = self.in_equations();
        let angle_line = Worked::new(
            "K_θ",
            "1 + 0.25·θ/90",
            &[("θ", degrees.into())],
            k_angle,
            REDUCTION_BASIS,
        );
        if in_equations >= QUARTER {
            let inputs = [("K_θ", k_angle.into())];
            let line =
                |formula, value| Worked::new("R_d", formula, &inputs, value, REDUCTION_BASIS);
            let crushing = line("4·K_θ (modes I)", 4.0 * k_angle);
            let turning = line("3.6·K_θ (mode II)", 3.6 * k_angle);
            let bending = line("3.2·K_θ (modes III, IV)", 3.2 * k_angle);
            let value = Reduction {
                crushing: crushing.value,
                turning: turning.value,
                bending: bending.value,
            };
            return bending
                .after(turning)
                .after(crushing)
                .after(angle_line)
                .map(|_| value);
        }
        let small = small_reduction(in_equations);
        if self.nominal() >= QUARTER {
            let inputs = [("K_D", small.value.into()), ("K_θ", k_angle.into())];
            let all = small.value * k_angle;
            Worked::new("R_d", "K_D·K_θ", &inputs, all, REDUCTION_BASIS)
                .after(angle_line)
                .after(small)
                .map(Reduction::all)
        } else {
            let inputs = [("K_D", small.value.into())];
            Worked::new("R_d", "K_D", &inputs, small.value, REDUCTION_BASIS)
                .after(small)
                .map(Reduction::all)
        }
    }
}

impl Reduction {
    const fn all(r_d: f64) -> Reduction {
        Reduction {
            crushing: r_d,
            turning: r_d,
            bending: r_d,
        }
    }
}

/// K_D of diameters below 1/4 in.
fn small_reduction(diameter: Distance) -> Worked<f64> {
    let d = (diameter / inches(1.0)).value;
    let inputs = [("D", diameter.into())];
    if d <= 0.17 {
        Worked::new("K_D", "2.2", &inputs, 2.2, REDUCTION_BASIS)
    } else {
        let value = 10.0 * d + 0.5;
        Worked::new("K_D", "10·D + 0.5", &inputs, value, REDUCTION_BASIS).in_inch_pound()
    }
}

/// Widest nominal diameter in inches and F_yb in psi of nails, screws, lags.
const YIELD_BANDS: &[(f64, f64)] = &[
    (0.142, 100_000.0),
    (0.177, 90_000.0),
    (0.236, 80_000.0),
    (0.273, 70_000.0),
    (0.344, 60_000.0),
    (0.375, 45_000.0),
];

/// To the nearest 50 psi, as the tables print bearing strengths.
fn to_fifty(strength: f64) -> f64 {
    (strength / 50.0).round() * 50.0
}

/// F_e, dowel bearing strength of wood at an angle of load to grain, rounded to
/// 50 psi as tabulated; angles between by Hankinson's formula.
#[must_use]
pub fn dowel_bearing(
    gravity: SpecificGravity,
    nominal: Distance,
    angle: Angle,
) -> Worked<Pressure> {
    let g = gravity.0;
    if nominal < QUARTER {
        let value = psi(to_fifty(16_600.0 * libm::pow(g, 1.84)));
        let inputs = [("G", g.into())];
        let formula = "16600·G^1.84, to 50 psi";
        return Worked::new("F_e", formula, &inputs, value, BEARING_BASIS).in_inch_pound();
    }
    let d = (nominal / inches(1.0)).value;
    let along = psi(to_fifty(11_200.0 * g));
    let across = psi(to_fifty(6_100.0 * libm::pow(g, 1.45) / d.sqrt()));
    let along_line = Worked::new(
        "F_e∥",
        "11200·G, to 50 psi",
        &[("G", g.into())],
        along,
        BEARING_BASIS,
    )
    .in_inch_pound();
    let across_line = Worked::new(
        "F_e⊥",
        "6100·G^1.45/√D, to 50 psi",
        &[("G", g.into()), ("D", nominal.into())],
        across,
        BEARING_BASIS,
    )
    .in_inch_pound();
    // Along and across the grain need no formula between them.
    let degrees = angle.get::<degree>();
    if degrees <= 0.0 {
        along_line
    } else if degrees >= 90.0 {
        across_line
    } else {
        hankinson(along, across, angle)
            .after(across_line)
            .after(along_line)
    }
}

/// Strength at an angle between the grain and across it.
#[must_use]
pub fn hankinson(along: Pressure, across: Pressure, angle: Angle) -> Worked<Pressure> {
    let radians = angle.get::<radian>();
    let (sin, cos) = (libm::sin(radians), libm::cos(radians));
    let value = along * across / (along * (sin * sin) + across * (cos * cos));
    let inputs = [
        ("F_e∥", along.into()),
        ("F_e⊥", across.into()),
        ("sinθ", sin.into()),
        ("cosθ", cos.into()),
    ];
    let formula = "F_e∥·F_e⊥/(F_e∥·sinθ² + F_e⊥·cosθ²)";
    Worked::new(
        "F_eθ",
        formula,
        &inputs,
        value,
        Provenance::quoted("NDS 2018 §12.3.4, Appendix J"),
    )
}
