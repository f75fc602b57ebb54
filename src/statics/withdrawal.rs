//! Pulling a fastener straight out of wood (NDS 2018 §12.2; Table
//! 12.2A read in two scans, the rest second-hand).

use std::f64::consts::PI;

use crate::quantities::Dimension;
use crate::quantities::Distance;
use crate::quantities::Force;
use crate::quantities::LineLoad;
use crate::quantities::Of;
use crate::quantities::inches;
use crate::quantities::pounds;
use crate::quantities::pounds_per_inch;
use crate::statics::amount::AnyQuantity;
use crate::statics::basis::Provenance;
use crate::statics::factors::Driven;
use crate::statics::factors::Grain;
use crate::statics::factors::JointService;
use crate::statics::factors::Moisture;
use crate::statics::factors::SpecificGravity;
use crate::statics::worked::Worked;

/// What a method rules out, so that there is no number.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, thiserror::Error)]
pub enum RuledOut {
    /// NDS 2018 §12.2.3.3.
    #[error("nails pulled out of end grain carry nothing that may be counted")]
    NailInEndGrain,
    /// The formula holds for 0.31 ≤ G ≤ 0.73 and the sizes of its tables.
    #[error("outside the range of the published formula")]
    OutsideRange,
    /// NDS 2018 §12.2.2.3.
    #[error("wood screws pulled out of end grain carry nothing that may be counted")]
    ScrewInEndGrain,
}

impl RuledOut {
    /// The clause that rules it out.
    #[must_use]
    pub const fn basis(self) -> Provenance {
        match self {
            RuledOut::NailInEndGrain => Provenance::quoted("NDS 2018 §12.2.3.3"),
            RuledOut::OutsideRange => Provenance::quoted("NDS 2018 Tables 12.2A to 12.2C"),
            RuledOut::ScrewInEndGrain => Provenance::quoted("NDS 2018 §12.2.2.3"),
        }
    }
}

/// A fastener that is pulled, by its nominal diameter D.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Pulled {
    /// A lag screw.
    Lag(Distance),
    /// A smooth nail or spike.
    Nail(Distance),
    /// A wood screw, cut or rolled thread.
    WoodScrew(Distance),
}

/// Numbers of a quantity in one of its units.
fn count<D: Dimension + ?Sized>(of: Of<D>, one: Of<D>) -> f64 {
    of.value / one.value
}

/// W, the reference withdrawal value per inch of thread or penetration in side grain.
///
/// # Errors
/// [`RuledOut::OutsideRange`] for G or D outside the published tables.
pub fn per_length(pulled: Pulled, gravity: SpecificGravity) -> Result<Worked<LineLoad>, RuledOut> {
    let g = gravity.0;
    let (diameter, sizes) = match pulled {
        Pulled::Lag(d) => (d, 0.25..=1.25),
        Pulled::Nail(d) => (d, 0.092..=0.375),
        // No. 6 to No. 24, whose diameter is 0.060 in + 0.013 in for each number.
        Pulled::WoodScrew(d) => (d, 0.138..=0.372),
    };
    let d = count(diameter, inches(1.0));
    // A size read as millimetres may lie a rounding beside the end of the table.
    let inside = *sizes.start() - 1e-9 <= d && d <= *sizes.end() + 1e-9;
    if !(0.31..=0.73).contains(&g) || !inside {
        return Err(RuledOut::OutsideRange);
    }
    let (formula, value, basis) = match pulled {
        Pulled::Lag(_) => (
            "1800·G^1.5·D^0.75",
            1800.0 * libm::pow(g, 1.5) * libm::pow(d, 0.75),
            Provenance::published("NDS 2018 §12.2.1, Table 12.2A"),
        ),
        Pulled::Nail(_) => (
            "1380·G^2.5·D",
            1380.0 * libm::pow(g, 2.5) * d,
            Provenance::quoted("NDS 2018 §12.2.3, Table 12.2C"),
        ),
        Pulled::WoodScrew(_) => (
            "2850·G²·D",
            2850.0 * g * g * d,
            Provenance::quoted("NDS 2018 §12.2.2, Table 12.2B"),
        ),
    };
    let inputs = [("G", g.into()), ("D", diameter.into())];
    let value = pounds_per_inch(value);
    Ok(Worked::new("W", formula, &inputs, value, basis).in_inch_pound())
}

/// C_M of withdrawal: lag and wood screws 0.7 when wet in service, nails 0.25
/// (wet and dry by turns; the cautious one of the two published values).
const fn wet_factor(pulled: Pulled, moisture: Moisture) -> f64 {
    match (moisture, pulled) {
        (Moisture::Dry, Pulled::Lag(_) | Pulled::Nail(_) | Pulled::WoodScrew(_)) => 1.0,
        (Moisture::Wet, Pulled::Lag(_) | Pulled::WoodScrew(_)) => 0.7,
        (Moisture::Wet, Pulled::Nail(_)) => 0.25,
    }
}

/// Allowable withdrawal of one fastener: W · C_D · C_M · C_eg · C_tn · p_t.
///
/// `held` is the thread in the main member, for a lag without its tip; for a
/// nail its whole penetration.
///
/// # Errors
/// End grain for screws and nails, and what lies outside the tables.
pub fn withdrawal(
    pulled: Pulled,
    gravity: SpecificGravity,
    held: Distance,
    service: JointService,
) -> Result<Worked<Force>, RuledOut> {
    let end_grain = match (service.grain, pulled) {
        (Grain::End, Pulled::Nail(_)) => return Err(RuledOut::NailInEndGrain),
        (Grain::End, Pulled::WoodScrew(_)) => return Err(RuledOut::ScrewInEndGrain),
        (Grain::End, Pulled::Lag(_)) => 0.75,
        (Grain::Side, Pulled::Lag(_) | Pulled::Nail(_) | Pulled::WoodScrew(_)) => 1.0,
    };
    let toe = match service.driven {
        Driven::Straight => 1.0,
        Driven::Toenailed => 0.67,
    };
    let per = per_length(pulled, gravity)?;
    let duration = service.duration.for_connections();
    let wet = wet_factor(pulled, service.moisture);
    let force = per.value * held * (duration * wet * end_grain * toe);
    let inputs: [(&str, AnyQuantity); 6] = [
        ("W", per.value.into()),
        ("p_t", held.into()),
        ("C_D", duration.into()),
        ("C_M", wet.into()),
        ("C_eg", end_grain.into()),
        ("C_tn", toe.into()),
    ];
    let basis = Provenance::quoted("NDS 2018 §12.2, Tables 11.3.1 and 11.3.3");
    let formula = "W·p_t·C_D·C_M·C_eg·C_tn";
    Ok(Worked::new("W'p", formula, &inputs, force, basis).after(per))
}

/// W_H, the head of a nail or screw pulled through a member of this thickness;
/// before C_D and the other factors. The formula is for round heads.
#[must_use]
pub fn head_pull_through(
    head: Distance,
    gravity: SpecificGravity,
    thickness: Distance,
) -> Worked<Force> {
    let (h, g) = (count(head, inches(1.0)), gravity.0);
    let t = count(thickness, inches(1.0));
    let (formula, value) = if t <= 2.5 * h {
        ("690·π·D_H·G²·t", 690.0 * PI * h * g * g * t)
    } else {
        ("1725·π·D_H²·G²", 1725.0 * PI * h * h * g * g)
    };
    let inputs = [
        ("D_H", head.into()),
        ("G", g.into()),
        ("t", thickness.into()),
    ];
    let basis = Provenance::quoted("NDS 2018 §12.2.5, Table 12.2F");
    Worked::new("W_H", formula, &inputs, pounds(value), basis).in_inch_pound()
}

/// W'_H, what the wood under one head allows: W_H·C_D·C_M.
#[must_use]
pub fn head_allowable(reference: &Worked<Force>, service: JointService) -> Worked<Force> {
    let duration = service.duration.for_connections();
    let wet = match service.moisture {
        Moisture::Dry => 1.0,
        Moisture::Wet => 0.7,
    };
    let inputs = [
        ("W_H", reference.value.into()),
        ("C_D", duration.into()),
        ("C_M", wet.into()),
    ];
    let force = reference.value * (duration * wet);
    let basis = Provenance::quoted("NDS 2018 §12.2.5 (C_M from memory)");
    Worked::new("W'_H", "W_H·C_D·C_M", &inputs, force, basis).after(reference.clone())
}
