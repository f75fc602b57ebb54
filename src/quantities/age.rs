//! A child's age in whole months.

use std::fmt;

/// An age in whole months, as people give a small child's age.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Age {
    months: u32,
}

impl Age {
    /// An age of so many months.
    #[must_use]
    pub const fn from_months(months: u32) -> Age {
        Age { months }
    }

    /// The age in whole months.
    #[must_use]
    pub const fn months(self) -> u32 {
        self.months
    }
}

/// `14 months`, `3 years`.
impl fmt::Display for Age {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match (self.months, self.months % 12) {
            (1, _) => write!(f, "1 month"),
            (12, _) => write!(f, "1 year"),
            (months, 0) if months >= 36 => write!(f, "{} years", months / 12),
            (months, _) => write!(f, "{months} months"),
        }
    }
}
