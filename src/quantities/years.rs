//! Spans of calendar years: when something was built.

use std::fmt;

/// A span of whole years, both ends included; `None` is open.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct YearSpan {
    /// The first year it may have been; `None` where nobody knows.
    pub first: Option<i32>,
    /// The last year it may have been; `None` where nobody knows.
    pub last: Option<i32>,
}

impl YearSpan {
    /// One year.
    #[must_use]
    pub const fn year(year: i32) -> YearSpan {
        YearSpan::between(year, year)
    }

    /// From the first to the last year, both included.
    #[must_use]
    pub const fn between(first: i32, last: i32) -> YearSpan {
        YearSpan {
            first: Some(first),
            last: Some(last),
        }
    }

    /// Whether every year of the span lies before this one.
    #[must_use]
    pub fn surely_before(self, year: i32) -> bool {
        self.last.is_some_and(|last| last < year)
    }

    /// Whether no year of the span lies before this one.
    #[must_use]
    pub fn surely_from(self, year: i32) -> bool {
        self.first.is_some_and(|first| first >= year)
    }
}

/// `1994`, `before 1978`, `after 1990`, `1990-1995`.
impl fmt::Display for YearSpan {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match (self.first, self.last) {
            (Some(first), Some(last)) if first == last => write!(f, "{first}"),
            (Some(first), Some(last)) => write!(f, "{first}-{last}"),
            (Some(first), None) => write!(f, "after {}", first - 1),
            (None, Some(last)) => write!(f, "before {}", last + 1),
            (None, None) => write!(f, "any year"),
        }
    }
}
