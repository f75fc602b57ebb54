//! Level cables and slender rods, which spread under a push.

use uom::si::force::newton;

use crate::quantities::Force;
use crate::quantities::Length;

/// What runs level through the posts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Strand {
    /// A cable: what holds it straight is its tension.
    Cable,
    /// A slender rod: what holds it straight is its own stiffness.
    Rod,
}

/// A run of equal, parallel cables or rods.
///
/// At rest the clear gap is spacing less diameter. A push opens it, so that this
/// bounds the clear opening from below alone.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cables {
    strand: Strand,
    spacing: Length,
    diameter: Length,
    free: Option<Length>,
    tension: Option<Force>,
}

/// Why there is no such run.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
#[non_exhaustive]
pub enum CablesError {
    /// A dimension of zero or below.
    #[error("spacing, diameter and free length must be longer than nothing")]
    NotPositive,
    /// A tension of a rod, or one without a free length.
    #[error("a tension belongs to a cable whose free length is known")]
    TensionAlone,
    /// A diameter as large as the spacing.
    #[error("as thick as they are apart, they leave no gap")]
    Touch,
}

impl Cables {
    /// Centre to centre, and how thick.
    ///
    /// # Errors
    /// [`CablesError::NotPositive`], [`CablesError::Touch`].
    pub fn new(strand: Strand, spacing: Length, diameter: Length) -> Result<Cables, CablesError> {
        if spacing <= Length::ZERO || diameter <= Length::ZERO {
            return Err(CablesError::NotPositive);
        }
        if diameter >= spacing {
            return Err(CablesError::Touch);
        }
        Ok(Cables {
            strand,
            spacing,
            diameter,
            free: None,
            tension: None,
        })
    }

    /// The same with what was read of its free length and its tension.
    ///
    /// # Errors
    /// [`CablesError::NotPositive`], [`CablesError::TensionAlone`].
    pub fn strung(
        self,
        free: Option<Length>,
        tension: Option<Force>,
    ) -> Result<Cables, CablesError> {
        let pulled = |force: Force| force.get::<newton>() > 0.0;
        if free.is_some_and(|free| free <= Length::ZERO) || !tension.is_none_or(pulled) {
            return Err(CablesError::NotPositive);
        }
        if tension.is_some() && (free.is_none() || self.strand == Strand::Rod) {
            return Err(CablesError::TensionAlone);
        }
        Ok(Cables {
            free,
            tension,
            ..self
        })
    }

    /// Cable or rod.
    #[must_use]
    pub fn strand(&self) -> Strand {
        self.strand
    }

    /// Centre to centre.
    #[must_use]
    pub fn spacing(&self) -> Length {
        self.spacing
    }

    /// How thick one is.
    #[must_use]
    pub fn diameter(&self) -> Length {
        self.diameter
    }

    /// Between the places that hold it, where written.
    #[must_use]
    pub fn free(&self) -> Option<Length> {
        self.free
    }

    /// How hard it is pulled, where measured.
    #[must_use]
    pub fn tension(&self) -> Option<Force> {
        self.tension
    }

    /// The clear gap while nobody pushes.
    #[must_use]
    pub fn at_rest(&self) -> Length {
        self.spacing - self.diameter
    }

    /// The same as taut cables, where length and tension are known.
    #[must_use]
    pub fn taut(&self) -> Option<TautCables> {
        Some(TautCables {
            spacing: self.spacing,
            diameter: self.diameter,
            free: self.free?,
            tension: self.tension?,
        })
    }
}

/// Cables whose tension was measured: what statics says of a push at mid-span.
/// An explanation, and never a verdict: friction, stretch and the posts' own give
/// are left out.
///
/// # Source
/// Statics of a taut cable, worked out by ourselves: k = 4T/L from the balance at
/// midspan, and the largest force on the way between two cables that are pushed
/// apart.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TautCables {
    spacing: Length,
    diameter: Length,
    free: Length,
    tension: Force,
}

impl TautCables {
    /// How far a force at mid-span moves one cable: δ = F·L/(4T).
    #[must_use]
    pub fn gives(&self, push: Force) -> Length {
        Length::from_nanometres_rounded(push.get::<newton>() / self.per_nanometre())
    }

    /// The largest ball that a push at mid-span forces through.
    ///
    /// D = 2·[(p/2)^(2/3) + (F·L/8T)^(2/3)]^(3/2) − d.
    #[must_use]
    pub fn ball_under(&self, push: Force) -> Length {
        let half = self.spacing.nanometres_as_float() / 2.0;
        let spread = push.get::<newton>() / (2.0 * self.per_nanometre());
        let apart = two_thirds(half) + two_thirds(spread);
        let reach = apart * apart.sqrt();
        Length::from_nanometres_rounded(2.0 * reach) - self.diameter
    }

    /// The push at mid-span that forces a ball through; nothing for one that
    /// passes at rest.
    ///
    /// F = 2k·[a^(2/3) − (p/2)^(2/3)]^(3/2), a = (D + d)/2.
    #[must_use]
    pub fn push_for(&self, ball: Length) -> Force {
        let half = self.spacing.nanometres_as_float() / 2.0;
        let reach = (ball + self.diameter).nanometres_as_float() / 2.0;
        let apart = (two_thirds(reach) - two_thirds(half)).max(0.0);
        Force::new::<newton>(2.0 * self.per_nanometre() * apart * apart.sqrt())
    }

    /// k = 4T/L, in newtons for each nanometre.
    fn per_nanometre(&self) -> f64 {
        4.0 * self.tension.get::<newton>() / self.free.nanometres_as_float()
    }
}

/// x^(2/3).
fn two_thirds(x: f64) -> f64 {
    libm::cbrt(x * x)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantities::newtons;

    fn taut(tension: f64, free: i64, spacing: i64, diameter: i64) -> TautCables {
        let micrometres = |size| Length::from_nanometres(size * 1000);
        Cables::new(Strand::Cable, micrometres(spacing), micrometres(diameter))
            .and_then(|run| run.strung(Some(micrometres(free)), Some(newtons(tension))))
            .ok()
            .and_then(|run| run.taut())
            .expect("taut")
    }

    /// Worked in Python apart from this code: the largest force found by a numerical
    /// search, which the closed form meets to 1e-6.
    #[test]
    fn the_cables_worked_elsewhere() {
        let rows = [
            (1000.0, 1_000_000, 80_000, 4000, 100.0, 137.203_052),
            (2000.0, 1_000_000, 80_000, 4000, 222.4, 142.128_993),
            (2000.0, 900_000, 76_200, 3200, 222.4, 133.434_170),
            (890.0, 914_400, 76_200, 4760, 22.24, 92.639_679),
            (1500.0, 1_200_000, 90_000, 5000, 50.0, 117.940_030),
        ];
        for (tension, free, spacing, diameter, push, ball) in rows {
            let cables = taut(tension, free, spacing, diameter);
            let ours = cables.ball_under(newtons(push)).millimetres_as_float();
            assert!((ours - ball).abs() < 1e-6, "{ours} for {ball}");
            let ball = Length::from_nanometres_rounded(ball * 1e6);
            let back = cables.push_for(ball).get::<newton>();
            assert!((back - push).abs() < 1e-5 * push, "{back} for {push}");
        }
        let rows = [
            (1000.0, 1_000_000, 100.0, 25_000_000),
            (1000.0, 1_000_000, 222.4, 55_600_000),
            (2000.0, 1_200_000, 50.0, 7_500_000),
            (2000.0, 1_500_000, 222.4, 41_700_000),
        ];
        for (tension, free, push, gives) in rows {
            let cables = taut(tension, free, 80_000, 4000);
            assert_eq!(cables.gives(newtons(push)), Length::from_nanometres(gives));
        }
    }

    /// Without a push a ball passes by what is clear: pitch less diameter.
    #[test]
    fn without_a_push_the_gap_is_that_at_rest() {
        let cables = taut(1000.0, 1_000_000, 80_000, 4000);
        assert_eq!(cables.ball_under(newtons(0.0)), Length::millimetres(76));
        assert!(cables.push_for(Length::millimetres(70)).get::<newton>() <= 0.0);
    }

    #[test]
    fn what_cannot_be_is_refused() {
        let (three, one) = (Length::inches(3), Length::inches(1));
        let run = |spacing, diameter| Cables::new(Strand::Rod, spacing, diameter);
        assert_eq!(run(three, three), Err(CablesError::Touch));
        assert_eq!(run(three, Length::ZERO), Err(CablesError::NotPositive));
        let rods = run(three, one).expect("rods");
        let pulled = Some(newtons(900.0));
        assert_eq!(
            rods.strung(Some(three), pulled),
            Err(CablesError::TensionAlone)
        );
        assert_eq!(
            rods.strung(Some(Length::ZERO), None),
            Err(CablesError::NotPositive)
        );
    }
}
