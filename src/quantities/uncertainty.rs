//! Standard uncertainty of a length and the terms it is made of.

use crate::quantities::Length;

/// A standard uncertainty: one standard deviation of what a reading may be off.
///
/// Kept in whole nanometres, so that "at least 2u from the limit" is decided exactly.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub struct StandardUncertainty(Length);

impl StandardUncertainty {
    /// No doubt: a go/no-go gauge, or an example judged as an exact value.
    pub const NONE: StandardUncertainty = StandardUncertainty(Length::ZERO);

    /// A standard uncertainty of this size.
    #[must_use]
    pub const fn from_length(length: Length) -> StandardUncertainty {
        StandardUncertainty(length.magnitude())
    }

    /// The standard uncertainty as a length.
    #[must_use]
    pub const fn as_length(self) -> Length {
        self.0
    }

    /// Twice the standard uncertainty: the band around a limit in which a
    /// reading is too close to call (k = 2, about 95 %).
    ///
    /// # Source
    /// ILAC-G8:09/2019, 4.1 and 4.2.2: guard band w = U.
    #[must_use]
    pub fn doubled(self) -> Length {
        self.0 + self.0
    }

    /// Whether it is more than any tape leaves: ± 1 in, or a tenth of what was read where
    /// that is ± 1/4 in or more. (common practice, no source)
    #[must_use]
    pub fn is_beyond_any_tape(self, read: Length) -> bool {
        let a_square = |length: Length| {
            let nanometres = i128::from(length.nanometres());
            nanometres * nanometres
        };
        // u = a/√3, so that a ± of a is 3u² = a²
        let of = 3 * a_square(self.0);
        let inch = a_square(Length::inches(1));
        of > inch || 16 * of >= inch && 100 * of >= a_square(read)
    }
}

/// How an effect spreads, and so how its size becomes a standard uncertainty.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TermKind {
    /// The true value lies within ± the size, anywhere equally likely: u = a/√3
    /// (GUM, JCGM 100:2008, 4.3.7; clause number from memory).
    Within,
    /// The size is a graduation r, read to the nearest mark: u = r/(2√3).
    Graduation,
    /// The size is a standard deviation already.
    Deviation,
}

/// What makes a reading doubtful; the reports word it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DoubtEffect {
    /// The error of whoever builds what is drawn.
    Builder,
    /// Finding the two edges of a gap.
    Edges,
    /// How finely it was read.
    Graduation,
    /// A hand that is not quite steady.
    Hand,
    /// The sliding hook of a tape.
    Hook,
    /// `± a` beside the reading.
    PlusMinus,
    /// A tape that is not quite plumb.
    Plumb,
    /// All that makes a reading of one round of a survey doubtful.
    Round,
    /// A floor or ground that is not quite flat.
    Surface,
    /// The tape itself.
    Tape,
    /// The tape and its hook in one figure.
    TapeWithHook,
}

/// One effect that makes a reading doubtful.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Term {
    /// What it is.
    pub effect: DoubtEffect,
    /// How large it is.
    pub size: Length,
    /// How it spreads.
    pub kind: TermKind,
}

impl Term {
    /// This effect alone as a standard uncertainty.
    #[must_use]
    pub fn standard(self) -> StandardUncertainty {
        StandardUncertainty(Length::from_nanometres_rounded(self.variance().sqrt()))
    }

    fn variance(self) -> f64 {
        let size = self.size.nanometres_as_float();
        match self.kind {
            TermKind::Within => size * size / 3.0,
            TermKind::Graduation => size * size / 12.0,
            TermKind::Deviation => size * size,
        }
    }
}

/// Independent effects together: the root of the sum of their squares.
///
/// # Source
/// GUM, JCGM 100:2008, 5.1.2 (clause number from memory).
#[must_use]
pub fn combine(terms: &[Term]) -> StandardUncertainty {
    let sum: f64 = terms.iter().map(|term| term.variance()).sum();
    StandardUncertainty(Length::from_nanometres_rounded(sum.sqrt()))
}
