//! Washers pressing on wood across the grain (NDS 2018 §3.10.2 and
//! §3.10.4, read second-hand).

use std::f64::consts::PI;

use crate::quantities::Area;
use crate::quantities::Distance;
use crate::quantities::Force;
use crate::quantities::Pressure;
use crate::quantities::inches;
use crate::statics::basis::Provenance;
use crate::statics::factors::Moisture;
use crate::statics::worked::Worked;

/// A washer; outside size and the hole in the wood or washer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Washer {
    /// A round one.
    Round {
        /// Outside diameter.
        outside: Distance,
        /// Diameter of the hole.
        hole: Distance,
    },
    /// A square plate.
    Square {
        /// Side.
        side: Distance,
        /// Diameter of the hole.
        hole: Distance,
    },
}

/// The outside width of an ordinary cut washer: 2·D + 3/8 in. From memory.
///
/// A washer whose thickness nobody knows counts no more than this: thin wide
/// ones dish.
#[must_use]
pub fn cut_washer(diameter: Distance) -> Distance {
    diameter * 2.0 + inches(0.375)
}

/// A washer this thick is stiff up to 3 in wide. From memory.
pub const STIFF: Distance = inches(0.25);

/// The narrowest stiff round washer, in eighths of an inch, that keeps the wood
/// below its value across the grain; `None` above 6 in.
#[must_use]
pub fn washer_that_holds(
    pull: Force,
    perpendicular: Pressure,
    hole: Distance,
    moisture: Moisture,
) -> Option<Distance> {
    (8..=48)
        .map(|eighths| inches(f64::from(eighths) / 8.0))
        .find(|outside| {
            let washer = Washer::Round {
                outside: *outside,
                hole,
            };
            *outside > hole
                && washer_bearing(perpendicular, washer, WasherPlace::Within, moisture).value
                    >= pull
        })
}

impl Washer {
    /// The area that bears.
    #[must_use]
    pub fn area(self) -> Worked<Area> {
        match self {
            Washer::Round { outside, hole } => {
                let inputs = [("OD", outside.into()), ("hole", hole.into())];
                let area = (outside * outside - hole * hole) * (PI / 4.0);
                Worked::new(
                    "A_net",
                    "π/4·(OD² - hole²)",
                    &inputs,
                    area,
                    Provenance::MECHANICS,
                )
            }
            Washer::Square { side, hole } => {
                let inputs = [("B", side.into()), ("hole", hole.into())];
                let area = side * side - hole * hole * (PI / 4.0);
                Worked::new(
                    "A_net",
                    "B² - π/4·hole²",
                    &inputs,
                    area,
                    Provenance::MECHANICS,
                )
            }
        }
    }

    const fn length(self) -> Distance {
        match self {
            Washer::Round { outside, .. } => outside,
            Washer::Square { side, .. } => side,
        }
    }
}

/// Where the washer lies along the member.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum WasherPlace {
    /// Nearer than 3 in to the end of the wood, or unknown: no help from the fibres beside it.
    NearEnd,
    /// 3 in or more from the end.
    Within,
}

/// C_b, the help of the unloaded fibres beside a short bearing.
#[must_use]
pub fn bearing_area_factor(washer: Washer, place: WasherPlace) -> Worked<f64> {
    let basis = Provenance::quoted("NDS 2018 §3.10.4");
    let length = washer.length();
    match place {
        WasherPlace::Within if length < inches(6.0) => {
            let factor = (length + inches(0.375)) / length;
            let inputs = [("l_b", length.into())];
            Worked::new("C_b", "(l_b + 0.375 in)/l_b", &inputs, factor.value, basis)
        }
        WasherPlace::Within | WasherPlace::NearEnd => Worked::new("C_b", "1", &[], 1.0, basis),
    }
}

/// Allowable pull through the washer: no C_D; wet 0.67.
#[must_use]
pub fn washer_bearing(
    perpendicular: Pressure,
    washer: Washer,
    place: WasherPlace,
    moisture: Moisture,
) -> Worked<Force> {
    let area = washer.area();
    let helped = bearing_area_factor(washer, place);
    let wet = match moisture {
        Moisture::Dry => 1.0,
        Moisture::Wet => 0.67,
    };
    let force = perpendicular * area.value * (helped.value * wet);
    let inputs = [
        ("F_c⊥", perpendicular.into()),
        ("C_M", wet.into()),
        ("A_net", area.value.into()),
        ("C_b", helped.value.into()),
    ];
    let basis = Provenance::quoted("NDS 2018 §3.10.2 and Supplement, C_M of F_c⊥");
    Worked::new("P_washer", "F_c⊥·C_M·A_net·C_b", &inputs, force, basis)
        .after(helped)
        .after(area)
}
