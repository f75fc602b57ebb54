//! A post plate screwed down: the pull in the screws from the moment at the
//! base by elementary statics.

use crate::quantities::Distance;
use crate::quantities::Force;
use crate::quantities::Moment;
use crate::quantities::Pressure;
use crate::statics::basis::Provenance;
use crate::statics::worked::Worked;

/// Screws at one distance from the compressed edge of the plate.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ScrewRow {
    /// y, from the compressed edge.
    pub distance: Distance,
    /// How many screws.
    pub count: u32,
}

/// No screw lies on the pulled side of the pivot.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, thiserror::Error)]
#[error("no screw lies on the pulled side of the plate")]
pub struct NoGrip;

/// The pull in each screw of each row by elastic shares: M·y/Σ(n·y²).
///
/// Rows at or behind the pivot pull nothing.
///
/// # Errors
/// [`NoGrip`] where nothing holds the plate down.
pub fn elastic_shares(moment: Moment, rows: &[ScrewRow]) -> Result<Worked<Vec<Force>>, NoGrip> {
    let none = Distance::default();
    let pulled = |row: &ScrewRow| row.distance.max(none);
    let sum = rows
        .iter()
        .map(|row| pulled(row) * pulled(row) * f64::from(row.count))
        .reduce(|sum, one| sum + one)
        .filter(|sum| sum.value > 0.0)
        .ok_or(NoGrip)?;
    let mut lines = Vec::new();
    let mut forces = Vec::new();
    for row in rows {
        let force = moment * pulled(row) / sum;
        let inputs = [
            ("M", moment.into()),
            ("y", pulled(row).into()),
            ("Σ", sum.into()),
        ];
        let formula = "M·y/Σ, Σ = sum of y² over all screws";
        lines.extend(Worked::new("T_i", formula, &inputs, force, Provenance::MECHANICS).lines);
        forces.push(force);
    }
    Ok(Worked {
        value: forces,
        lines,
    })
}

/// The pull in the worst screw.
///
/// # Errors
/// [`NoGrip`] where nothing holds the plate down.
pub fn greatest_pull(moment: Moment, rows: &[ScrewRow]) -> Result<Worked<Force>, NoGrip> {
    let greatest = |forces: Vec<Force>| forces.into_iter().fold(Force::default(), Force::max);
    Ok(elastic_shares(moment, rows)?.map(greatest))
}

/// The rows seen from a pivot moved inward by so much: a plate that bends
/// presses at the face of the post and not at its own edge.
#[must_use]
pub fn with_pivot_moved(rows: &[ScrewRow], inward: Distance) -> Vec<ScrewRow> {
    let moved = |row: &ScrewRow| ScrewRow {
        distance: row.distance - inward,
        count: row.count,
    };
    rows.iter().map(moved).collect()
}

/// The moment that the pulled screws bend a plate with, about the face of the post.
#[must_use]
pub fn plate_moment(pulled: Force, screws: u32, to_the_post: Distance) -> Worked<Moment> {
    let count = f64::from(screws);
    let inputs = [
        ("n", count.into()),
        ("T_far", pulled.into()),
        ("x", to_the_post.into()),
    ];
    let moment = pulled * to_the_post * count;
    Worked::new("M_p", "n·T_far·x", &inputs, moment, Provenance::MECHANICS)
}

/// What a flat plate takes: F_y·B·t²/(4·1.67).
#[must_use]
pub fn plate_allowable(strength: Pressure, width: Distance, thickness: Distance) -> Worked<Moment> {
    let inputs = [
        ("F_y", strength.into()),
        ("B", width.into()),
        ("t", thickness.into()),
    ];
    let moment = strength * width * thickness * thickness / (4.0 * 1.67);
    let basis = Provenance::memory("AISC 360, plastic bending of a plate");
    Worked::new("M_a", "F_y·B·t²/(4·1.67)", &inputs, moment, basis)
}
