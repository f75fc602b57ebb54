//! Quantities: the exact [`Length`], how sure a reading is, probabilities, ages
//! and years. Everything that is compared with a limit is a whole number of its
//! smallest unit, so that equality at a limit is exact.
//!
//! Nothing here knows what a guard is.

mod age;
mod conformance;
mod length;
mod uncertainty;
mod units;
mod years;

pub use age::Age;
pub use conformance::{Probability, normal_cumulative};
pub use length::{Length, LengthUnit};
pub use uncertainty::{DoubtEffect, StandardUncertainty, Term, TermKind, combine};
pub use units::{
    Angle, Area, Dimension, Distance, Force, LineLoad, Moment, Of, Pressure, Ratio, Rigidity,
    RotationalStiffness, SecondMoment, SectionModulus, Stiffness, inches, millimetres,
    newton_metres, newtons, newtons_per_metre, pascals, pound_inches, pounds, pounds_force,
    pounds_per_foot, pounds_per_inch, psi,
};
pub use years::YearSpan;
