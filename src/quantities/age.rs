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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn from_three_years_on_an_age_is_said_in_years() {
        for (months, says) in [
            (24, "24 months"),
            (35, "35 months"),
            (36, "3 years"),
            (37, "37 months"),
        ] {
            assert_eq!(Age::from_months(months).to_string(), says);
        }
    }
}
