//! Lumber: reference values by species, factors, allowable bending and shear
//! (NDS Supplement 2018 Tables 4A, 4B and 4D; each value says how it was read).

use crate::quantities::Distance;
use crate::quantities::Moment;
use crate::quantities::Pressure;
use crate::quantities::SecondMoment;
use crate::quantities::SectionModulus;
use crate::quantities::inches;
use crate::quantities::psi;
use crate::statics::basis::Provenance;
use crate::statics::basis::Sourced;
use crate::statics::factors::Incising;
use crate::statics::factors::LoadDuration;
use crate::statics::factors::Moisture;
use crate::statics::factors::SpecificGravity;
use crate::statics::grade::Grade;
use crate::statics::grade::LumberTable;
use crate::statics::grade::SizeEffect;
use crate::statics::grade::bending_by_grade;
use crate::statics::worked::Worked;

impl Species {
    /// F_b of this grade at this actual width.
    ///
    /// # Errors
    /// [`NoValue::GradeNotTabulated`] where no value was read or remembered.
    pub fn bending_of(&self, grade: Grade, width: Distance) -> Result<Sourced<Pressure>, NoValue> {
        if self.size_effect == SizeEffect::ByWidth && grade == Grade::No2 {
            return Ok(self.bending);
        }
        let value = bending_by_grade(self.name, (self.table, self.size_effect), grade, width);
        value.ok_or(NoValue::GradeNotTabulated)
    }
}

/// Reference design values of No. 2 lumber.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Species {
    /// The species group as it is stamped.
    pub name: &'static str,
    /// Which table it stands in.
    pub table: LumberTable,
    /// G
    pub gravity: Sourced<SpecificGravity>,
    /// F_b
    pub bending: Sourced<Pressure>,
    /// F_v
    pub shear: Sourced<Pressure>,
    /// F_c⊥, with what is known of it.
    pub perpendicular: Option<Sourced<Pressure>>,
    /// E
    pub elasticity: Sourced<Pressure>,
    /// Size factor or not.
    pub size_effect: SizeEffect,
}

const DIMENSION: &str = "NDS Supplement 2018 Tables 4A and 4B, No. 2";
const TIMBER: &str = "NDS Supplement 2018 Table 4D, No. 2";
const GRAVITY: Provenance = Provenance::quoted("NDS 2018 Table 12.3.3A");

/// Which of the values of a row were read second-hand; the others are from memory.
#[derive(Clone, Copy)]
enum Read {
    All,
    Elasticity,
    Nothing,
}

const fn row(
    name: &'static str,
    g: f64,
    [bending, shear, perpendicular, elasticity]: [f64; 4],
    read: Read,
    size_effect: SizeEffect,
) -> Species {
    let strength = match read {
        Read::All => Provenance::quoted(DIMENSION),
        Read::Elasticity | Read::Nothing => Provenance::memory(DIMENSION),
    };
    let stiffness = match read {
        Read::All | Read::Elasticity => Provenance::quoted(DIMENSION),
        Read::Nothing => Provenance::memory(DIMENSION),
    };
    Species {
        name,
        table: LumberTable::Dimension,
        gravity: Sourced::new(SpecificGravity(g), GRAVITY),
        bending: Sourced::new(psi(bending), strength),
        shear: Sourced::new(psi(shear), strength),
        perpendicular: Some(Sourced::new(psi(perpendicular), strength)),
        elasticity: Sourced::new(psi(elasticity), stiffness),
        size_effect,
    }
}

const fn timber(name: &'static str, g: f64, values: [f64; 3], basis: Provenance) -> Species {
    let [bending, shear, elasticity] = values;
    Species {
        name,
        table: LumberTable::Timber,
        gravity: Sourced::new(SpecificGravity(g), GRAVITY),
        bending: Sourced::new(psi(bending), basis),
        shear: Sourced::new(psi(shear), basis),
        perpendicular: None,
        elasticity: Sourced::new(psi(elasticity), basis),
        size_effect: SizeEffect::ByWidth,
    }
}

/// No. 2 lumber by species group; the regional list of an unknown species.
pub const SPECIES: &[Species] = &[
    row(
        "Douglas Fir-Larch",
        0.50,
        [900.0, 180.0, 625.0, 1.6e6],
        Read::All,
        SizeEffect::ByWidth,
    ),
    row(
        "Spruce-Pine-Fir",
        0.42,
        [875.0, 135.0, 425.0, 1.4e6],
        Read::All,
        SizeEffect::ByWidth,
    ),
    row(
        "Hem-Fir",
        0.43,
        [850.0, 150.0, 405.0, 1.3e6],
        Read::All,
        SizeEffect::ByWidth,
    ),
    row(
        "Southern Pine",
        0.55,
        [1100.0, 175.0, 565.0, 1.4e6],
        Read::All,
        SizeEffect::InReference,
    ),
    row(
        "SPF (South)",
        0.36,
        [775.0, 135.0, 335.0, 1.1e6],
        Read::Elasticity,
        SizeEffect::ByWidth,
    ),
    row(
        "Western cedars",
        0.36,
        [700.0, 155.0, 425.0, 1.0e6],
        Read::Nothing,
        SizeEffect::ByWidth,
    ),
    row(
        "Redwood",
        0.37,
        [925.0, 160.0, 650.0, 1.2e6],
        Read::Nothing,
        SizeEffect::ByWidth,
    ),
];

/// Posts and timbers, No. 2.
pub const TIMBERS: &[Species] = &[
    timber(
        "Douglas Fir-Larch",
        0.50,
        [750.0, 170.0, 1.3e6],
        Provenance::quoted(TIMBER),
    ),
    timber(
        "Southern Pine",
        0.55,
        [850.0, 165.0, 1.2e6],
        Provenance::memory(TIMBER),
    ),
    timber(
        "Hem-Fir",
        0.43,
        [575.0, 140.0, 1.1e6],
        Provenance::memory(TIMBER),
    ),
    timber(
        "Spruce-Pine-Fir",
        0.42,
        [500.0, 125.0, 1.0e6],
        Provenance::memory(TIMBER),
    ),
];

/// Two rails that bend together and are not glued: each takes its share of the
/// moment by its stiffness, M_i = M·I_i/ΣI at one E, and the one that reaches its
/// stress first decides: min(F'_b,i·S_i·ΣI/I_i).
#[must_use]
pub fn together(
    one: (Pressure, SectionModulus, SecondMoment),
    other: (Pressure, SectionModulus, SecondMoment),
) -> Worked<Moment> {
    let sum = one.2 + other.2;
    let of = |(stress, modulus, second): (Pressure, SectionModulus, SecondMoment)| {
        let share = (second / sum).value;
        let inputs = [
            ("F'_b", stress.into()),
            ("S", modulus.into()),
            ("I/ΣI", share.into()),
        ];
        let moment = stress * modulus / share;
        Worked::new(
            "M_a",
            "F'_b·S/(I/ΣI)",
            &inputs,
            moment,
            Provenance::MECHANICS,
        )
    };
    let (first, second) = (of(one), of(other));
    if second.value < first.value {
        second
    } else {
        first
    }
}

/// How a member lies to its load.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Lying {
    /// Bent across its thickness.
    Flat,
    /// Bent across its width; a square post.
    OnEdge,
}

/// The circumstances of a member.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Service {
    /// C_D
    pub duration: LoadDuration,
    /// C_M
    pub moisture: Moisture,
    /// C_i
    pub incising: Incising,
}

/// Why there is no allowable value.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, thiserror::Error)]
pub enum NoValue {
    /// Narrower than 2 in or wider than 10 in nominal, or a board thinner than 2 in.
    #[error("no factor is tabulated here for a member of this size")]
    SizeNotTabulated,
    /// No bearing value across the grain of timbers is given.
    #[error("no bearing value across the grain is given for this species and size")]
    BearingNotTabulated,
    /// No value of this grade was read for the species and size.
    #[error("no value of this grade was read for this species and size")]
    GradeNotTabulated,
}

/// Slack for sizes read in other units.
const HAIR: Distance = inches(1.0 / 64.0);

/// C_F of F_b for No. 2 lumber by actual width and thickness.
///
/// # Errors
/// Sizes outside the table.
pub fn size_factor(
    species: &Species,
    thickness: Distance,
    width: Distance,
) -> Result<Worked<f64>, NoValue> {
    let basis = Provenance::quoted("NDS Supplement 2018 Tables 4A and 4D, size factor");
    let inputs = [("t", thickness.into()), ("width", width.into())];
    let worked = |factor| Worked::new("C_F", "by width", &inputs, factor, basis);
    let none = Err(NoValue::SizeNotTabulated);
    match species.table {
        LumberTable::Timber if width <= inches(12.0) => return Ok(worked(1.0)),
        LumberTable::Timber => return none,
        LumberTable::Dimension if thickness < inches(1.5) - HAIR => return none,
        LumberTable::Dimension => {}
    }
    let thick = thickness >= inches(3.5) - HAIR;
    let row = SIZE_FACTORS
        .iter()
        .find(|row| width <= inches(row.0) + HAIR);
    let Some((_, thin_factor, thick_factor)) = row else {
        return none;
    };
    let factor = if thick { *thick_factor } else { *thin_factor };
    match species.size_effect {
        SizeEffect::InReference => {
            let basis = Provenance::quoted("NDS Supplement 2018 Table 4B, size effect built in");
            Ok(Worked::new("C_F", "built in", &inputs, 1.0, basis))
        }
        SizeEffect::ByWidth => Ok(worked(factor)),
    }
}

/// C_F of the grades that have a table of their own: Stud 1.1 up to 4 in wide and
/// 1.0 up to 6 in, Standard 1.0.
fn size_factor_of(
    species: &Species,
    grade: Grade,
    thickness: Distance,
    width: Distance,
) -> Result<Worked<f64>, NoValue> {
    let basis = Provenance::quoted("NDS Supplement 2018 Table 4A, size factor by grade");
    let worked = |factor| {
        let inputs = [("width", width.into())];
        Ok(Worked::new(
            "C_F",
            "by grade and width",
            &inputs,
            factor,
            basis,
        ))
    };
    match (species.size_effect, grade) {
        (SizeEffect::InReference, _) | (_, Grade::No1 | Grade::No2 | Grade::No3) => {
            size_factor(species, thickness, width)
        }
        (SizeEffect::ByWidth, Grade::Standard) => worked(1.0),
        (SizeEffect::ByWidth, Grade::Stud) if width <= inches(3.5) + HAIR => worked(1.1),
        (SizeEffect::ByWidth, Grade::Stud) if width <= inches(5.5) + HAIR => worked(1.0),
        (SizeEffect::ByWidth, Grade::Stud) => Err(NoValue::SizeNotTabulated),
    }
}

/// Widest actual width in inches, C_F of 2 and 3 in thick, of 4 in thick.
const SIZE_FACTORS: &[(f64, f64, f64)] = &[
    (3.5, 1.5, 1.5),
    (4.5, 1.4, 1.4),
    (5.5, 1.3, 1.3),
    (7.25, 1.2, 1.3),
    (9.25, 1.1, 1.2),
];

/// C_fu of a member lying flat.
fn flat_use_factor(
    lying: Lying,
    thickness: Distance,
    width: Distance,
) -> Result<Worked<f64>, NoValue> {
    let basis = Provenance::quoted("NDS Supplement 2018 Table 4A, flat use factor");
    let inputs = [("t", thickness.into()), ("width", width.into())];
    let factor = match lying {
        Lying::OnEdge => 1.0,
        Lying::Flat if (width - thickness).abs() <= HAIR => 1.0,
        Lying::Flat if thickness > inches(2.5) + HAIR => thick_flat(width)?,
        Lying::Flat => {
            let mut rows = FLAT_USE.iter();
            let row = rows.find(|(widest, _)| width <= inches(*widest) + HAIR);
            row.map(|(_, factor)| *factor)
                .ok_or(NoValue::SizeNotTabulated)?
        }
    };
    Ok(Worked::new("C_fu", "by width", &inputs, factor, basis))
}

/// Widest actual width in inches and C_fu of lumber 2 and 3 in thick.
const FLAT_USE: &[(f64, f64)] = &[
    (2.5, 1.0),
    (3.5, 1.1),
    (4.5, 1.1),
    (5.5, 1.15),
    (7.25, 1.15),
    (9.25, 1.2),
    (11.25, 1.2),
];

/// C_fu of lumber 4 in thick, 5 to 8 in wide.
fn thick_flat(width: Distance) -> Result<f64, NoValue> {
    if width <= inches(7.25) + HAIR {
        Ok(1.05)
    } else {
        Err(NoValue::SizeNotTabulated)
    }
}

/// C_M of F_b: 0.85 when wet, 1 when F_b·C_F is no more than 1150 psi, 1 for timbers.
fn wet_bending(species: &Species, bending: Pressure, size: f64, moisture: Moisture) -> Worked<f64> {
    let scaled = bending * size;
    let inputs = [("F_b", bending.into()), ("C_F", size.into())];
    let basis = match species.table {
        LumberTable::Dimension => {
            Provenance::quoted("NDS Supplement 2018 Table 4A, wet service factor")
        }
        LumberTable::Timber => {
            Provenance::quoted("NDS Supplement 2018 Table 4D, wet service factor")
        }
    };
    let line = |formula, value| Worked::new("C_M", formula, &inputs, value, basis);
    match (moisture, species.table) {
        (Moisture::Dry, LumberTable::Dimension | LumberTable::Timber) => line("1, dry", 1.0),
        (Moisture::Wet, LumberTable::Timber) => line("1, timber", 1.0),
        (Moisture::Wet, LumberTable::Dimension) if scaled <= psi(1150.0 + 1e-6) => {
            line("1, wet with F_b·C_F ≤ 1150 psi", 1.0)
        }
        (Moisture::Wet, LumberTable::Dimension) => line("0.85, wet", 0.85),
    }
}

/// C_i of strengths.
fn incised(incising: Incising) -> Worked<f64> {
    let basis = Provenance::quoted("NDS 2018 Table 4.3.8");
    match incising {
        Incising::Incised => Worked::new("C_i", "0.80, incised", &[], 0.80, basis),
        Incising::Plain => Worked::new("C_i", "1, not incised", &[], 1.0, basis),
    }
}

/// The same of a grade.
///
/// # Errors
/// Sizes and grades outside the tables.
pub fn allowable_bending_of(
    species: &Species,
    grade: Grade,
    thickness: Distance,
    width: Distance,
    lying: Lying,
    service: Service,
) -> Result<Worked<Pressure>, NoValue> {
    let bending = species.bending_of(grade, width)?;
    let size = size_factor_of(species, grade, thickness, width)?;
    let flat = flat_use_factor(lying, thickness, width)?;
    let wet = wet_bending(species, bending.value, size.value, service.moisture);
    let (duration, slits) = (service.duration.line(), incised(service.incising));
    let factors = duration.value * wet.value * size.value * flat.value * slits.value;
    let inputs = [
        ("F_b", bending.value.into()),
        ("C_D", duration.value.into()),
        ("C_M", wet.value.into()),
        ("C_F", size.value.into()),
        ("C_fu", flat.value.into()),
        ("C_i", slits.value.into()),
    ];
    let formula = "F_b·C_D·C_M·C_F·C_fu·C_i";
    let allowed = bending.value * factors;
    Ok(
        Worked::new("F'_b", formula, &inputs, allowed, bending.basis)
            .after(wet)
            .after(flat)
            .after(size)
            .after(slits)
            .after(duration),
    )
}

/// F'_v, the allowable shear stress.
#[must_use]
pub fn allowable_shear(species: &Species, service: Service) -> Worked<Pressure> {
    let wet = match (service.moisture, species.table) {
        (Moisture::Dry, LumberTable::Dimension | LumberTable::Timber)
        | (Moisture::Wet, LumberTable::Timber) => 1.0,
        (Moisture::Wet, LumberTable::Dimension) => 0.97,
    };
    let (duration, slits) = (service.duration.line(), incised(service.incising));
    let inputs = [
        ("F_v", species.shear.value.into()),
        ("C_D", duration.value.into()),
        ("C_M", wet.into()),
        ("C_i", slits.value.into()),
    ];
    let allowed = species.shear.value * (duration.value * wet * slits.value);
    let formula = "F_v·C_D·C_M·C_i";
    Worked::new("F'_v", formula, &inputs, allowed, species.shear.basis)
        .after(slits)
        .after(duration)
}

/// E' for deflections: wet 0.9, incised 0.95; no C_D.
#[must_use]
pub fn elasticity(species: &Species, moisture: Moisture, incising: Incising) -> Worked<Pressure> {
    let wet = match (moisture, species.table) {
        (Moisture::Dry, LumberTable::Dimension | LumberTable::Timber)
        | (Moisture::Wet, LumberTable::Timber) => 1.0,
        (Moisture::Wet, LumberTable::Dimension) => 0.9,
    };
    let slits = match incising {
        Incising::Incised => 0.95,
        Incising::Plain => 1.0,
    };
    let inputs = [
        ("E", species.elasticity.value.into()),
        ("C_M", wet.into()),
        ("C_i", slits.into()),
    ];
    let value = species.elasticity.value * (wet * slits);
    Worked::new("E'", "E·C_M·C_i", &inputs, value, species.elasticity.basis)
}

/// M_a, the moment that brings a section to its allowable stress.
#[must_use]
pub fn allowable_moment(stress: Pressure, modulus: SectionModulus) -> Worked<Moment> {
    let inputs = [("F'_b", stress.into()), ("S", modulus.into())];
    let moment = stress * modulus;
    Worked::new("M_a", "F'_b·S", &inputs, moment, Provenance::MECHANICS)
}
