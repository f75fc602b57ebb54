//! From the reference value of a fastener to the allowable one of a joint:
//! moisture, grain, distances to ends and edges, pull and push together
//! (NDS 2018 §11.3, §12.4 and §12.5, read second-hand).

use uom::si::angle::radian;

use crate::quantities::Angle;
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
use crate::statics::lateral::WIDEST_ACROSS_GRAIN;
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

/// Where a fastener sits in a member.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Distances {
    /// To the end of the member.
    pub end: End,
    /// To the edge of the member.
    pub edge: EdgeOfWood,
    /// To the next fastener in the row; `None` for one alone.
    pub in_row: Option<Distance>,
    /// Between the outer bolts across the grain; `None` for one row.
    pub across_grain: Option<Distance>,
}

/// Distance to the end of the member, by how the load pulls.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum End {
    /// Along the grain away from the end wood, or across the grain: full 4D.
    Otherwise(Distance),
    /// Along the grain towards the end, softwood: full 7D.
    Tension(Distance),
}

/// Distance to the edge of the member.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum EdgeOfWood {
    /// The load across the grain presses towards this edge: 4D.
    Loaded(Distance),
    /// 1.5D
    Unloaded(Distance),
}

/// Which distance is below the least that the method allows.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, thiserror::Error)]
pub enum TooNear {
    /// More than 5 in across the grain between outer bolts.
    #[error("the outer bolts stand more than 5 in apart across the grain")]
    AcrossGrain,
    /// Below 1.5D, or 4D to a loaded edge.
    #[error("nearer to the edge than the method allows")]
    Edge,
    /// Below half the full end distance.
    #[error("nearer to the end than half the full distance")]
    End,
    /// Below 3D in a row.
    #[error("nearer to the next fastener than 3 diameters")]
    InRow,
}

/// Slack for distances read in other units.
const HAIR: Distance = inches(1e-6);

/// C_Δ: the least of actual over full distance.
///
/// # Errors
/// A distance below the least.
pub fn geometry_factor(dowel: Dowel, at: Distances) -> Result<Worked<GeometryFactor>, TooNear> {
    let basis = Provenance::quoted("NDS 2018 Tables 12.5.1A to 12.5.1E");
    let d = dowel.nominal();
    if d < inches(0.25) - HAIR {
        let small = Worked::new("C_Δ", "1 below 1/4 in", &[("D", d.into())], 1.0, basis);
        return Ok(small.map(GeometryFactor));
    }
    if at
        .across_grain
        .is_some_and(|wide| wide > WIDEST_ACROSS_GRAIN + HAIR)
    {
        return Err(TooNear::AcrossGrain);
    }
    let (edge, least) = match at.edge {
        EdgeOfWood::Loaded(edge) => (edge, d * 4.0),
        EdgeOfWood::Unloaded(edge) => (edge, d * 1.5),
    };
    if edge < least - HAIR {
        return Err(TooNear::Edge);
    }
    let (end, full) = match at.end {
        End::Otherwise(end) => (end, d * 4.0),
        End::Tension(end) => (end, d * 7.0),
    };
    if end < full / 2.0 - HAIR {
        return Err(TooNear::End);
    }
    let of_end = (end / full).value;
    let in_row = at.in_row.unwrap_or(d * 4.0);
    if in_row < d * 3.0 - HAIR {
        return Err(TooNear::InRow);
    }
    let of_row = (in_row / (d * 4.0)).value;
    let inputs = [
        ("end", end.into()),
        ("full", full.into()),
        ("spacing", in_row.into()),
        ("D", d.into()),
    ];
    let factor = of_end.min(of_row).min(1.0);
    let formula = "min(1, end/full, spacing/(4·D))";
    Ok(Worked::new("C_Δ", formula, &inputs, factor, basis).map(GeometryFactor))
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

/// Which formula of pull and push together applies.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Interaction {
    /// Nails and spikes: cos α and sin α.
    Nail,
    /// Lag screws and wood screws: their squares.
    Threaded,
}

/// Z'_α, allowable at an angle to the surface of the wood; 90° is a straight pull.
#[must_use]
pub fn combined(
    interaction: Interaction,
    withdrawal: Force,
    lateral: Force,
    angle: Angle,
) -> Worked<Force> {
    let radians = angle.get::<radian>();
    let (sin, cos) = (libm::sin(radians), libm::cos(radians));
    let (formula, share_cos, share_sin) = match interaction {
        Interaction::Nail => ("W'p·Z'/(W'p·cosα + Z'·sinα)", cos, sin),
        Interaction::Threaded => ("W'p·Z'/(W'p·cosα² + Z'·sinα²)", cos * cos, sin * sin),
    };
    let inputs = [
        ("W'p", withdrawal.into()),
        ("Z'", lateral.into()),
        ("cosα", cos.into()),
        ("sinα", sin.into()),
    ];
    let force = withdrawal * lateral / (withdrawal * share_cos + lateral * share_sin);
    Worked::new(
        "Z'_α",
        formula,
        &inputs,
        force,
        Provenance::quoted("NDS 2018 §12.4"),
    )
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
