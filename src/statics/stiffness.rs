//! A pull test reduced to stiffness and free play, and the limits of movement
//! (limits of ASTM E985 §7.2, read
//! second-hand; how to pull is common practice, no source). A stiffness is no
//! strength.

use crate::quantities::Distance;
use crate::quantities::Force;
use crate::quantities::Stiffness;
use crate::quantities::millimetres;
use crate::statics::basis::Provenance;
use crate::statics::bounds::Ends;
use crate::statics::worked::Worked;

/// One reading: the pull, and where the rail then stood.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ScalePull {
    /// The force on the scale.
    pub force: Force,
    /// The movement of the top of the rail from rest.
    pub movement: Distance,
}

/// Why two readings give no stiffness.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, thiserror::Error)]
pub enum NoStiffness {
    /// The movement between the readings is no more than the tape can tell.
    #[error("the rail moved no more between the two pulls than the ruler can tell")]
    MovedTooLittle,
    /// The second pull is not the stronger one.
    #[error("the second pull must be stronger than the first")]
    NotStronger,
}

/// K = ΔF/Δδ between two readings.
///
/// # Errors
/// Readings that do not rise.
pub fn pull_stiffness(low: ScalePull, high: ScalePull) -> Result<Worked<Stiffness>, NoStiffness> {
    if high.force <= low.force {
        return Err(NoStiffness::NotStronger);
    }
    if high.movement <= low.movement {
        return Err(NoStiffness::MovedTooLittle);
    }
    let inputs = [
        ("F1", low.force.into()),
        ("F2", high.force.into()),
        ("δ1", low.movement.into()),
        ("δ2", high.movement.into()),
    ];
    let k = (high.force - low.force) / (high.movement - low.movement);
    let formula = "(F2 - F1)/(δ2 - δ1)";
    Ok(Worked::new("K", formula, &inputs, k, Provenance::MECHANICS))
}

/// The stiffness at both ends of what the ruler can tell: movement between the
/// readings larger or smaller by `doubt`.
///
/// # Errors
/// Readings that do not rise, or by no more than the doubt.
pub fn pull_stiffness_bounds(
    low: ScalePull,
    high: ScalePull,
    doubt: Distance,
) -> Result<Ends<Worked<Stiffness>>, NoStiffness> {
    let with = |by: Distance| {
        let moved = ScalePull {
            movement: high.movement + by,
            ..high
        };
        pull_stiffness(low, moved)
    };
    Ok(Ends {
        low: with(doubt)?,
        high: with(-doubt)?,
    })
}

/// δ0 = max(0, δ1 - F1/K): movement before anything resists.
#[must_use]
pub fn free_play(low: ScalePull, stiffness: Stiffness) -> Worked<Distance> {
    let inputs = [
        ("δ1", low.movement.into()),
        ("F1", low.force.into()),
        ("K", stiffness.into()),
    ];
    let play = (low.movement - low.force / stiffness).max(Distance::default());
    Worked::new(
        "δ0",
        "max(0, δ1 - F1/K)",
        &inputs,
        play,
        Provenance::MECHANICS,
    )
}

/// At least this far under the design load: δ0 + F/K, a lower bound because
/// fixings soften. It falls as the stiffness grows.
#[must_use]
pub fn movement_at(design: Force, low: ScalePull, stiffness: Stiffness) -> Worked<Distance> {
    let play = free_play(low, stiffness);
    let inputs = [
        ("δ0", play.value.into()),
        ("F", design.into()),
        ("K", stiffness.into()),
    ];
    let movement = play.value + design / stiffness;
    Worked::new("δ_F", "δ0 + F/K", &inputs, movement, Provenance::MECHANICS).after(play)
}

/// A published limit of movement; a yardstick, not a law for a house.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum DeflectionLimit {
    /// AS/NZS 1170.1 commentary, serviceability: h/60 + L/240.
    AsNzs,
    /// BS 6180 as restated: 25 mm at any point.
    Bs6180,
    /// ASTM E985, horizontal at midspan: h/24 + L/96.
    E985Midspan,
    /// ASTM E985, horizontal at the top of a post: h/12.
    E985Post,
    /// ASTM E985, vertical at midspan: L/96.
    E985Vertical,
}

impl DeflectionLimit {
    /// Where the limit comes from.
    #[must_use]
    pub const fn basis(self) -> Provenance {
        match self {
            DeflectionLimit::AsNzs => {
                Provenance::quoted("AS/NZS 1170.1 commentary, by an engineer's page")
            }
            DeflectionLimit::Bs6180 => Provenance::quoted("BS 6180 as restated"),
            DeflectionLimit::E985Midspan
            | DeflectionLimit::E985Post
            | DeflectionLimit::E985Vertical => {
                Provenance::quoted("ASTM E985-00(2006) §7.2, withdrawn 2015")
            }
        }
    }

    /// The limit for a rail of this height between posts this far apart.
    #[must_use]
    pub fn limit(self, height: Distance, spacing: Distance) -> Worked<Distance> {
        let (formula, value) = match self {
            DeflectionLimit::AsNzs => ("h/60 + L/240", height / 60.0 + spacing / 240.0),
            DeflectionLimit::Bs6180 => ("25 mm", millimetres(25.0)),
            DeflectionLimit::E985Midspan => ("h/24 + L/96", height / 24.0 + spacing / 96.0),
            DeflectionLimit::E985Post => ("h/12", height / 12.0),
            DeflectionLimit::E985Vertical => ("L/96", spacing / 96.0),
        };
        let inputs = [("h", height.into()), ("L", spacing.into())];
        Worked::new("δ_limit", formula, &inputs, value, self.basis())
    }
}
