//! Bending and shear that a piece of wood can take: both ends over what is not known.

use crate::judge::load_path::link::Lowest;
use crate::judge::load_path::service::DURATIONS;
use crate::judge::load_path::service::Wood;
use crate::quantities::Distance;
use crate::quantities::Force;
use crate::quantities::Moment;
use crate::quantities::inches;
use crate::statics::Ends;
use crate::statics::Provenance;
use crate::statics::Worked;
use crate::statics::factors::LoadDuration;
use crate::statics::section::Profile;
use crate::statics::wood::Lying;
use crate::statics::wood::NoValue;
use crate::statics::wood::Service;
use crate::statics::wood::Species;
use crate::statics::wood::allowable_bending_of;
use crate::statics::wood::allowable_moment;
use crate::statics::wood::allowable_shear;
use crate::statics::wood::together;

/// From this size both ways the table of posts and timbers holds: 5 x 5 in
/// nominal, 4 1/2 in dressed.
pub(super) const TIMBER: Distance = inches(4.5);

/// Slack for sizes read in other units.
pub(super) const HAIR: Distance = inches(1.0 / 64.0);

/// What a piece can take, and whether the table holds its lowest plausible grade.
pub(super) struct Takes<T> {
    pub(super) ends: Ends<Worked<T>>,
    pub(super) lowest: Lowest,
}

/// The rows of the table to which a piece of this size belongs.
fn rows(wood: &Wood, across: Distance, along: Distance) -> &[&'static Species] {
    if across >= TIMBER - HAIR && along >= TIMBER - HAIR {
        wood.timbers()
    } else {
        wood.lumber()
    }
}

/// A solid rectangle with the load along its second side, as it is sold, and what
/// is left of it at the place that counts.
#[derive(Clone, Copy)]
pub(super) struct LumberPiece {
    pub(super) across: Distance,
    pub(super) along: Distance,
}

impl LumberPiece {
    const fn profile(self) -> Profile {
        Profile::Rectangle {
            across: self.across,
            along: self.along,
        }
    }

    fn lying(self) -> Lying {
        if self.along < self.across - HAIR {
            Lying::Flat
        } else {
            Lying::OnEdge
        }
    }

    /// The stress that each species, grade and service allows the whole piece.
    fn stresses(
        self,
        wood: &Wood,
        mut each: impl FnMut(&Species, Worked<crate::quantities::Pressure>, Service),
    ) -> Result<Lowest, NoValue> {
        let (thickness, width) = (self.across.min(self.along), self.across.max(self.along));
        let mut lowest = Lowest::Known;
        for species in rows(wood, self.across, self.along) {
            for grade in wood.grades() {
                for service in wood.members(species) {
                    let stress = allowable_bending_of(
                        species,
                        *grade,
                        thickness,
                        width,
                        self.lying(),
                        service,
                    );
                    match stress {
                        Ok(stress) => each(species, stress, service),
                        Err(NoValue::GradeNotTabulated) => lowest = Lowest::Unknown,
                        Err(no) => return Err(no),
                    }
                }
            }
        }
        Ok(lowest)
    }
}

/// The moment that a solid rectangle can take, load along its second side.
///
/// `None` where no factor is tabulated for the size.
pub(super) fn moment(wood: &Wood, across: Distance, along: Distance) -> Option<Takes<Moment>> {
    let piece = LumberPiece { across, along };
    moment_of(wood, piece, &[piece.profile()])
}

/// The same where holes or a notch leave less: the stress is that of the whole
/// piece, the modulus that of each profile that may be left.
pub(super) fn moment_of(
    wood: &Wood,
    piece: LumberPiece,
    left: &[Profile],
) -> Option<Takes<Moment>> {
    let moduli: Option<Vec<_>> = left.iter().map(|profile| profile.elastic().ok()).collect();
    let moduli = moduli?;
    let mut all = Vec::new();
    let lowest = piece
        .stresses(wood, |_, stress, _| {
            all.extend(moduli.iter().map(|modulus| {
                let least = allowable_moment(stress.value, modulus.value);
                least.after(modulus.clone()).after(stress.clone())
            }));
        })
        .ok()?;
    let ends = Ends::of_worked(all)?;
    Some(Takes { ends, lowest })
}

/// The moment under a load that never goes: C_D 0.9.
pub(super) fn permanent_moment(
    wood: &Wood,
    piece: LumberPiece,
    left: &[Profile],
) -> Option<Ends<Worked<Moment>>> {
    let takes = moment_of(wood, piece, left)?.ends;
    let lasting = |of: Worked<Moment>, from: LoadDuration| {
        let share = LoadDuration::PERMANENT.factor() / from.factor();
        let inputs = [("M_a", of.value.into()), ("0.9/C_D", share.into())];
        let basis = LoadDuration::BASIS;
        Worked::new("M_a", "M_a·0.9/C_D", &inputs, of.value * share, basis).after(of)
    };
    Some(Ends {
        low: lasting(takes.low, DURATIONS[0]),
        high: lasting(takes.high, DURATIONS[1]),
    })
}

/// A cap on a second rail that both reach the posts, pressed down.
pub(super) fn moment_together(
    wood: &Wood,
    cap: LumberPiece,
    lower: LumberPiece,
) -> Option<Takes<Moment>> {
    let (upper, under) = (
        cap.profile().section().ok()?,
        lower.profile().section().ok()?,
    );
    let mut stresses = Vec::new();
    let one = cap.stresses(wood, |species, stress, service| {
        stresses.push((species.name, stress, service));
    });
    let mut all = Vec::new();
    let other = lower.stresses(wood, |species, stress, service| {
        let same = stresses
            .iter()
            .filter(|(name, _, of)| *name == species.name && *of == service);
        for (_, first, _) in same {
            let moment = together(
                (first.value, upper.elastic, upper.second_moment),
                (stress.value, under.elastic, under.second_moment),
            );
            all.push(moment.after(stress.clone()).after(first.clone()));
        }
    });
    let known = [one.ok()?, other.ok()?] == [Lowest::Known; 2];
    let lowest = if known {
        Lowest::Known
    } else {
        Lowest::Unknown
    };
    let ends = Ends::of_worked(all)?;
    Some(Takes { ends, lowest })
}

/// The shear that each of these profiles can take: F'_v·A/1.5.
pub(super) fn shear(
    wood: &Wood,
    piece: LumberPiece,
    left: &[Profile],
) -> Option<Ends<Worked<Force>>> {
    let areas: Option<Vec<_>> = left.iter().map(|one| one.section().ok()).collect();
    let areas = areas?;
    let mut all = Vec::new();
    for species in rows(wood, piece.across, piece.along) {
        for service in wood.members(species) {
            let stress = allowable_shear(species, service);
            for section in &areas {
                let inputs = [("F'_v", stress.value.into()), ("A", section.area.into())];
                let force = stress.value * section.area / 1.5;
                let worked =
                    Worked::new("V_a", "F'_v·A/1.5", &inputs, force, Provenance::MECHANICS);
                all.push(worked.after(stress.clone()));
            }
        }
    }
    Ends::of_worked(all)
}
