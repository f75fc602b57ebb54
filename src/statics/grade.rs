//! Grades of lumber: F_b where it was read, by species, grade and width (NDS
//! Supplement 2018 Tables 4A and 4B; each value says how it was read).

use crate::quantities::Distance;
use crate::quantities::Pressure;
use crate::quantities::inches;
use crate::quantities::psi;
use crate::statics::basis::Provenance;
use crate::statics::basis::Sourced;

/// Slack for sizes read in other units.
const HAIR: Distance = inches(1.0 / 64.0);

/// Which table of the supplement a member belongs to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum LumberTable {
    /// Dimension lumber, 2 to 4 in thick.
    Dimension,
    /// Posts and timbers, 5 x 5 and larger.
    Timber,
}

/// Whether the size factor is in the reference value already.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum SizeEffect {
    /// As of Southern Pine.
    InReference,
    /// By the table of widths.
    ByWidth,
}

/// A grade of structural lumber, as it is stamped.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Grade {
    /// No. 1.
    No1,
    /// No. 2: what the tables of this module give where no grade is named.
    No2,
    /// No. 3.
    No3,
    /// Stud.
    Stud,
    /// Standard.
    Standard,
}

impl Grade {
    /// Every grade, the better first.
    pub const ALL: &[Grade] = &[
        Grade::No1,
        Grade::No2,
        Grade::No3,
        Grade::Stud,
        Grade::Standard,
    ];

    /// As it is stamped.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Grade::No1 => "No. 1",
            Grade::No2 => "No. 2",
            Grade::No3 => "No. 3",
            Grade::Stud => "Stud",
            Grade::Standard => "Standard",
        }
    }
}

/// F_b in psi of the grades but No. 2: No. 1, No. 3, Stud.
const GRADED: &[(&str, [f64; 3])] = &[
    ("Douglas Fir-Larch", [1000.0, 525.0, 700.0]),
    ("Hem-Fir", [975.0, 500.0, 675.0]),
    ("Spruce-Pine-Fir", [875.0, 500.0, 675.0]),
];

/// F_b in psi of Standard grade; from memory.
const STANDARD: &[(&str, f64)] = &[
    ("Douglas Fir-Larch", 575.0),
    ("Hem-Fir", 550.0),
    ("Spruce-Pine-Fir", 550.0),
    ("Southern Pine", 500.0),
];

/// Southern Pine, whose size effect is in the reference value: widest actual width
/// in inches, and F_b in psi of No. 1, No. 2, No. 3 and Stud, where it was read.
const PINE_BY_WIDTH: &[(f64, [Option<f64>; 3])] = &[
    (3.5, [Some(1500.0), Some(1100.0), Some(650.0)]),
    (5.5, [Some(1350.0), Some(1000.0), Some(575.0)]),
    (7.25, [Some(1250.0), Some(925.0), None]),
    (9.25, [None, Some(800.0), None]),
    (11.25, [None, Some(750.0), None]),
];

/// The best bending value of dimension lumber that was read: Southern Pine Dense
/// Select Structural, 5 and 6 in wide.
pub const BEST_LUMBER: Sourced<Pressure> = Sourced::new(
    psi(2400.0),
    Provenance::quoted("NDS Supplement 2018 Table 4B, Dense Select Structural"),
);

const GRADES: &str = "NDS Supplement 2018 Tables 4A and 4B, F_b by grade";

/// F_b of a species and grade at this actual width, where it was read or remembered.
pub(super) fn bending_by_grade(
    name: &str,
    (table, size_effect): (LumberTable, SizeEffect),
    grade: Grade,
    width: Distance,
) -> Option<Sourced<Pressure>> {
    let read = |value: f64| Sourced::new(psi(value), Provenance::quoted(GRADES));
    let dimension = table == LumberTable::Dimension;
    match (size_effect, grade) {
        (SizeEffect::ByWidth | SizeEffect::InReference, Grade::Standard) => {
            let narrow = width <= inches(3.5) + HAIR && dimension;
            let row = STANDARD.iter().find(|row| row.0 == name && narrow)?;
            Some(Sourced::new(psi(row.1), Provenance::memory(GRADES)))
        }
        (SizeEffect::ByWidth, Grade::No1 | Grade::No2 | Grade::No3 | Grade::Stud) => {
            let row = GRADED.iter().find(|row| row.0 == name && dimension)?;
            let [no1, no3, stud] = row.1;
            Some(read(match grade {
                Grade::No1 => no1,
                Grade::Stud => stud,
                Grade::No2 | Grade::No3 | Grade::Standard => no3,
            }))
        }
        (SizeEffect::InReference, Grade::No1 | Grade::No2 | Grade::No3 | Grade::Stud) => {
            let mut rows = PINE_BY_WIDTH.iter();
            let (_, [no1, no2, no3]) = rows.find(|row| width <= inches(row.0) + HAIR)?;
            let value = match grade {
                Grade::No1 => *no1,
                Grade::No2 => *no2,
                Grade::No3 | Grade::Stud | Grade::Standard => *no3,
            };
            value.map(read)
        }
    }
}
