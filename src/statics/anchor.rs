//! Anchors in concrete: the breakout of a cone, as the published method has it.

use crate::quantities::Area;
use crate::quantities::Distance;
use crate::quantities::Force;
use crate::quantities::Pressure;
use crate::quantities::inches;
use crate::quantities::pounds;
use crate::quantities::psi;
use crate::statics::basis::Provenance;
use crate::statics::worked::Worked;

/// Whether the concrete around an anchor may be cracked.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Concrete {
    /// k_c 17, post-installed.
    Cracked,
    /// k_c 24
    Uncracked,
}

/// N_b, nominal breakout of one anchor far from every edge; normal-weight concrete.
#[must_use]
pub fn concrete_breakout(
    concrete: Concrete,
    strength: Pressure,
    embedded: Distance,
) -> Worked<Force> {
    let k = match concrete {
        Concrete::Cracked => 17.0,
        Concrete::Uncracked => 24.0,
    };
    let root = (strength / psi(1.0)).value.sqrt();
    let depth = libm::pow((embedded / inches(1.0)).value, 1.5);
    let inputs = [
        ("k_c", k.into()),
        ("f'c", strength.into()),
        ("h_ef", embedded.into()),
    ];
    let basis = ACI;
    let force = pounds(k * root * depth);
    Worked::new("N_b", "k_c·√f'c·h_ef^1.5", &inputs, force, basis).in_inch_pound()
}

/// Two anchors of a plate's pulled row at the edge of a slab.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AnchorRow {
    /// How many.
    pub count: u32,
    /// From one to the next, along the edge.
    pub apart: Distance,
    /// h_ef
    pub embedded: Distance,
    /// c, from the row to the edge.
    pub edge: Distance,
}

impl AnchorRow {
    /// ψ_ed: an edge nearer than 1.5·h_ef takes from the cone.
    #[must_use]
    pub fn edge_factor(&self) -> Worked<f64> {
        let reach = self.embedded * 1.5;
        let factor = (0.7 + 0.3 * (self.edge / reach).value).min(1.0);
        let inputs = [("c", self.edge.into()), ("h_ef", self.embedded.into())];
        Worked::new(
            "ψ_ed",
            "min(1, 0.7 + 0.3·c/(1.5·h_ef))",
            &inputs,
            factor,
            ACI,
        )
    }

    /// A_Nc, the area of the cones of the row, no more than that of single anchors.
    #[must_use]
    pub fn cone_area(&self) -> Worked<Area> {
        let reach = self.embedded * 1.5;
        let gaps = f64::from(self.count.saturating_sub(1));
        let wide = self.apart.min(reach * 2.0) * gaps + reach * 2.0;
        let deep = self.edge.min(reach) + reach;
        let inputs = [
            ("s", self.apart.into()),
            ("c", self.edge.into()),
            ("h_ef", self.embedded.into()),
        ];
        let formula = "((n - 1)·s + 3·h_ef)·(min(c, 1.5·h_ef) + 1.5·h_ef)";
        Worked::new("A_Nc", formula, &inputs, wide * deep, ACI)
    }

    /// N_cbg, the nominal breakout of the row.
    #[must_use]
    pub fn breakout(&self, concrete: Concrete, strength: Pressure) -> Worked<Force> {
        let (area, edge) = (self.cone_area(), self.edge_factor());
        group_breakout(
            concrete_breakout(concrete, strength, self.embedded),
            self.embedded,
            area,
            edge,
        )
    }
}

/// N_cbg = A_Nc/(9·h_ef²)·ψ_ed·N_b.
#[must_use]
pub fn group_breakout(
    one: Worked<Force>,
    embedded: Distance,
    area: Worked<Area>,
    edge: Worked<f64>,
) -> Worked<Force> {
    let single = embedded * embedded * 9.0;
    let inputs = [
        ("A_Nc", area.value.into()),
        ("h_ef", embedded.into()),
        ("ψ_ed", edge.value.into()),
        ("N_b", one.value.into()),
    ];
    let force = one.value * (area.value / single).value * edge.value;
    let formula = "A_Nc/(9·h_ef²)·ψ_ed·N_b";
    Worked::new("N_cbg", formula, &inputs, force, ACI)
        .after(edge)
        .after(area)
        .after(one)
}

const ACI: Provenance =
    Provenance::quoted("ACI 318-19 §17.6.2, as an anchor design guide prints it");

/// How well an anchor is known to install.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Qualified {
    /// Of a good qualification: φ 0.65.
    Well,
    /// Unknown: φ 0.45.
    Unknown,
}

/// The nominal breakout brought down to compare with a service load: φ/1.6.
#[must_use]
pub fn breakout_in_service(nominal: Worked<Force>, qualified: Qualified) -> Worked<Force> {
    let phi = match qualified {
        Qualified::Unknown => 0.45,
        Qualified::Well => 0.65,
    };
    let basis = Provenance::memory("ACI 318 chapter 17, φ 0.65 down to 0.45, load factor 1.6");
    let inputs = [("φ", phi.into()), ("N_cbg", nominal.value.into())];
    let force = nominal.value * phi / 1.6;
    Worked::new("N_a", "φ·N_cbg/1.6", &inputs, force, basis).after(nominal)
}

/// No approval that was read allows a 3/8 in expansion anchor nearer to an edge.
pub const LEAST_EDGE: Distance = inches(2.5);
