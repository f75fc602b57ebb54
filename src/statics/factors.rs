//! The factors between a reference value and an allowable one, each asked for
//! by name so that none is chosen in silence (NDS 2018 §2.3,
//! §4.3 and §11.3, read second-hand).

use crate::statics::basis::Provenance;
use crate::statics::worked::Worked;

/// Density relative to water, the G of the tables of wood.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct SpecificGravity(pub f64);

/// The load duration factor C_D.
///
/// Which one a guard load deserves is disputed: compute [`LoadDuration::TEN_YEARS`]
/// and [`LoadDuration::TEN_MINUTES`].
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct LoadDuration(f64);

impl LoadDuration {
    /// 0.9
    pub const PERMANENT: LoadDuration = LoadDuration(0.9);
    /// 1.0
    pub const TEN_YEARS: LoadDuration = LoadDuration(1.0);
    /// 1.6
    pub const TEN_MINUTES: LoadDuration = LoadDuration(1.6);
    /// Where the factors come from.
    pub const BASIS: Provenance = Provenance::quoted("NDS 2018 Table 2.3.2");

    /// C_D for a member.
    #[must_use]
    pub const fn factor(self) -> f64 {
        self.0
    }

    /// C_D for a member, as a line of a calculation.
    #[must_use]
    pub fn line(self) -> Worked<f64> {
        Worked::new("C_D", "by duration", &[], self.0, LoadDuration::BASIS)
    }

    /// C_D for a connection: never above 1.6 (NDS 2018 Table 2.3.2 fn 2, §11.3.2).
    #[must_use]
    pub const fn for_connections(self) -> f64 {
        self.0.min(1.6)
    }
}

/// Moisture in service.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Moisture {
    /// 19 % or less.
    Dry,
    /// Above 19 %, as outdoors.
    Wet,
}

/// Whether the wood was incised to take up preservative.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Incising {
    /// Rows of small slits: lower strength.
    Incised,
    /// None.
    Plain,
}

/// Which grain a fastener goes into.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Grain {
    /// Along the fibres, as into the end of a joist.
    End,
    /// Across the fibres.
    Side,
}

/// How a nail was driven.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Driven {
    /// Square to the face.
    Straight,
    /// Aslant through the edge of one piece.
    Toenailed,
}

/// The circumstances of a wooden joint.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct JointService {
    /// C_D, limited to 1.6.
    pub duration: LoadDuration,
    /// C_M
    pub moisture: Moisture,
    /// C_eg
    pub grain: Grain,
    /// C_tn
    pub driven: Driven,
}

impl JointService {
    /// Side grain, driven straight.
    #[must_use]
    pub const fn plain(duration: LoadDuration, moisture: Moisture) -> JointService {
        JointService {
            duration,
            moisture,
            grain: Grain::Side,
            driven: Driven::Straight,
        }
    }
}
