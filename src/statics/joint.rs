//! From the reference value of a fastener to the allowable one of a joint:
//! moisture, grain, several in a row (NDS 2018 §11.3 and §12.5, read second-hand).

use crate::quantities::Distance;
use crate::quantities::Force;
use crate::quantities::inches;
use crate::quantities::pounds_per_inch;
use crate::statics::basis::Provenance;
use crate::statics::dowel::Dowel;
use crate::statics::factors::Driven;
use crate::statics::factors::Grain;
use crate::statics::factors::JointService;
use crate::statics::factors::Moisture;
use crate::statics::worked::Worked;

/// How wet the wood was when it was fastened.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Seasoning {
    /// Dry, or one row of fasteners along the grain.
    Seasoned,
    /// Wet, drying in service, and more than one row: it may split.
    WetInRows,
}

/// C_M of lateral values.
#[must_use]
pub fn lateral_wet_factor(dowel: Dowel, moisture: Moisture, seasoning: Seasoning) -> Worked<f64> {
    let basis = Provenance::quoted("NDS 2018 Table 11.3.3");
    let small = dowel.nominal() < inches(0.25 - 1e-9);
    let (formula, value) = match (seasoning, moisture) {
        (Seasoning::WetInRows, Moisture::Dry | Moisture::Wet) if !small => {
            ("0.4, fastened wet in rows", 0.4)
        }
        (Seasoning::WetInRows, Moisture::Dry | Moisture::Wet)
        | (Seasoning::Seasoned, Moisture::Wet) => ("0.7, wet", 0.7),
        (Seasoning::Seasoned, Moisture::Dry) => ("1, dry", 1.0),
    };
    Worked::new("C_M", formula, &[], value, basis)
}

/// C_Δ, for distances below the full ones; between one half and 1.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct GeometryFactor(f64);

impl GeometryFactor {
    /// Full distances, or a fastener below 1/4 in.
    pub const FULL: GeometryFactor = GeometryFactor(1.0);

    /// The factor as a number.
    #[must_use]
    pub const fn factor(self) -> f64 {
        self.0
    }
}

/// Z', the allowable lateral value of one fastener: Z·C_D·C_M·C_Δ·C_eg·C_tn.
#[must_use]
pub fn lateral_allowable(
    reference: Force,
    dowel: Dowel,
    service: JointService,
    seasoning: Seasoning,
    geometry: GeometryFactor,
) -> Worked<Force> {
    let wet = lateral_wet_factor(dowel, service.moisture, seasoning);
    let end_grain = match service.grain {
        Grain::End => 0.67,
        Grain::Side => 1.0,
    };
    let toe = match service.driven {
        Driven::Straight => 1.0,
        Driven::Toenailed => 0.83,
    };
    let duration = service.duration.for_connections();
    let inputs = [
        ("Z", reference.into()),
        ("C_D", duration.into()),
        ("C_M", wet.value.into()),
        ("C_Δ", geometry.0.into()),
        ("C_eg", end_grain.into()),
        ("C_tn", toe.into()),
    ];
    let force = reference * (duration * wet.value * geometry.0 * end_grain * toe);
    let basis = Provenance::quoted("NDS 2018 Table 11.3.1");
    Worked::new("Z'", "Z·C_D·C_M·C_Δ·C_eg·C_tn", &inputs, force, basis).after(wet)
}

/// Fasteners in one row along the load, between two members.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FastenerRow {
    /// D
    pub diameter: Distance,
    /// n
    pub count: u32,
    /// s, from one to the next.
    pub apart: Distance,
    /// E·A of either member.
    pub stretch: [Force; 2],
}

/// C_g: of several bolts or lags in a row the outer ones take more. 1 below 1/4 in.
#[must_use]
pub fn group_action(row: FastenerRow) -> Worked<f64> {
    let basis = Provenance::memory("NDS 2018 §11.3.6");
    let n = f64::from(row.count);
    if row.count < 2 || row.diameter < inches(0.25 - 1e-9) {
        return Worked::new("C_g", "1", &[], 1.0, basis);
    }
    let d = (row.diameter / inches(1.0)).value;
    let slip = pounds_per_inch(180_000.0 * libm::pow(d, 1.5));
    let [one, other] = row.stretch;
    let soft = (slip * row.apart / one).value + (slip * row.apart / other).value;
    let u = 1.0 + soft / 2.0;
    let m = u - (u * u - 1.0).sqrt();
    let ratio = (one / other).value.min((other / one).value);
    let (to_n, to_2n) = (libm::pow(m, n), libm::pow(m, 2.0 * n));
    let lower = n * ((1.0 + ratio * to_n) * (1.0 + m) - 1.0 + to_2n);
    let factor = m * (1.0 - to_2n) / lower * (1.0 + ratio) / (1.0 - m);
    let inputs = [("n", n.into()), ("m", m.into()), ("R_EA", ratio.into())];
    let formula = "m·(1 - m^(2·n))/(n·((1 + R_EA·m^n)·(1 + m) - 1 + m^(2·n)))·(1 + R_EA)/(1 - m)";
    Worked::new("C_g", formula, &inputs, factor.min(1.0), basis)
}
