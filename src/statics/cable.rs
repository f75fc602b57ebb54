//! Cables pushed sideways at midspan (exact equilibrium).
//!
//! For explanation: the end posts of cable guards are an engineer's matter.

use crate::quantities::Distance;
use crate::quantities::Force;
use crate::quantities::Moment;
use crate::statics::basis::Provenance;
use crate::statics::worked::Worked;

/// A cable in a bay.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cable {
    /// L, between the posts of the bay that is pushed.
    pub bay: Distance,
    /// The whole length that stretches: the bay, or the run where it slides
    /// through the posts between.
    pub run: Distance,
    /// T0
    pub pretension: Force,
    /// EA, force for a stretch of its own length.
    pub stretch: Force,
}

/// How far a pushed cable moves and how hard it then pulls.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pushed {
    /// δ at midspan.
    pub deflection: Distance,
    /// T
    pub tension: Force,
}

/// Neither pretension nor stiffness: nothing pushes back.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, thiserror::Error)]
#[error("a cable without pretension and stiffness does not push back")]
pub struct Slack;

/// EA of a 1x19 stainless cable: 0.755 of the disc is metal, E 15.5 Msi.
#[must_use]
pub fn stretch_of_strand(diameter: Distance) -> Worked<Force> {
    let pressure = crate::quantities::psi(15.5e6);
    let area = diameter * diameter * (std::f64::consts::PI / 4.0 * 0.755);
    let inputs = [("E", pressure.into()), ("D", diameter.into())];
    let basis = Provenance::memory("1x19 stainless strand");
    Worked::new("EA", "E·0.755·π·D²/4", &inputs, pressure * area, basis)
}

/// Half of the pushed cable.
fn half_length(bay: Distance, sag: Distance) -> Distance {
    let half = bay / 2.0;
    (half * half + sag * sag).sqrt()
}

impl Cable {
    fn tension(&self, sag: Distance) -> Force {
        let longer = half_length(self.bay, sag) * 2.0 - self.bay;
        self.pretension + self.stretch * (longer / self.run).value
    }

    fn push(&self, sag: Distance) -> Force {
        self.tension(sag) * 2.0 * (sag / half_length(self.bay, sag)).value
    }

    /// Where a push at midspan comes to rest, by halving on the exact equilibrium.
    ///
    /// # Errors
    /// [`Slack`] for a cable that never pushes back hard enough.
    pub fn pushed(&self, push: Force) -> Result<Worked<Pushed>, Slack> {
        let mut least = Distance::default();
        let mut most = self.bay;
        let mut doubled = 0;
        // A stretched cable's push grows without end; 60 doublings are any length there is.
        while self.push(most) < push {
            most *= 2.0;
            doubled += 1;
            if doubled > 60 {
                return Err(Slack);
            }
        }
        // 200 halvings go past the last digit of a float.
        for _ in 0..200 {
            let middle = (least + most) / 2.0;
            if self.push(middle) < push {
                least = middle;
            } else {
                most = middle;
            }
        }
        Ok(self.rest(push, most))
    }

    fn rest(&self, push: Force, deflection: Distance) -> Worked<Pushed> {
        let tension = self.tension(deflection);
        let inputs = [
            ("P", push.into()),
            ("L", self.bay.into()),
            ("T0", self.pretension.into()),
            ("EA", self.stretch.into()),
            ("L_run", self.run.into()),
            ("δ", deflection.into()),
        ];
        let solved = "where 2·T·δ/√((L/2)² + δ²) reaches P";
        let formula = "T0 + EA·(2·√((L/2)² + δ²) - L)/L_run";
        let first = Worked::new("δ", solved, &inputs[..5], deflection, Provenance::MECHANICS);
        Worked::new("T", formula, &inputs, tension, Provenance::MECHANICS)
            .after(first)
            .map(|tension| Pushed {
                deflection,
                tension,
            })
    }
}

/// Cables that end at a post: so many, evenly over its height, each this tight.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CableRun<'h> {
    /// y, of each cable above the base.
    pub heights: &'h [Distance],
    /// T, in each.
    pub tension: Force,
}

impl CableRun<'_> {
    fn first_moment(&self) -> Distance {
        let mut sum = Distance::default();
        for height in self.heights {
            sum += *height;
        }
        sum
    }

    fn inputs(&self) -> Vec<(&'static str, crate::statics::AnyQuantity)> {
        vec![
            ("T", self.tension.into()),
            ("n", f64::from(self.count()).into()),
            ("Σy", self.first_moment().into()),
        ]
    }

    fn count(&self) -> u32 {
        u32::try_from(self.heights.len()).unwrap_or(u32::MAX)
    }

    /// The moment of a post held at its foot alone, at a fastener this far below the base.
    #[must_use]
    pub fn cantilever(&self, below: Distance) -> Worked<Moment> {
        let mut inputs = self.inputs();
        inputs.push(("y_0", below.into()));
        let moment = self.tension * (self.first_moment() + below * f64::from(self.count()));
        let formula = "T·(Σy + n·y_0)";
        Worked::new("M", formula, &inputs, moment, Provenance::MECHANICS)
    }

    /// What a rail that works as a strut has to take at the top.
    #[must_use]
    pub fn strut(&self, height: Distance) -> Worked<Force> {
        let mut inputs = self.inputs();
        inputs.push(("h", height.into()));
        let force = self.tension * (self.first_moment() / height).value;
        Worked::new("R_top", "T·Σy/h", &inputs, force, Provenance::MECHANICS)
    }

    /// The moment of a post held at foot and top, at this height above its foot.
    fn between(&self, top: Force, height: Distance, at: Distance) -> Moment {
        let mut moment = top * (height - at);
        for cable in self.heights.iter().filter(|cable| **cable > at) {
            moment -= self.tension * (*cable - at);
        }
        moment
    }

    /// The greatest moment of a post held at foot and top: it lies at a cable.
    #[must_use]
    pub fn simple_span(&self, height: Distance) -> Worked<Moment> {
        let top = self.strut(height);
        let at = |cable: &Distance| self.between(top.value, height, *cable);
        let all = self.heights.iter().map(at);
        let moment = all.fold(Moment::default(), |a, b| if b > a { b } else { a });
        let mut inputs = self.inputs();
        inputs.push(("R_top", top.value.into()));
        let formula = "the greatest of R_top·(h - y) - T·Σ(y_i - y)";
        Worked::new("M", formula, &inputs, moment, Provenance::MECHANICS).after(top)
    }
}

/// How tight the cables of a guard may be where nobody measured: 100 to 400 lb
/// each. From memory; a specification that was read second-hand asks 150 to 225.
pub const USUAL_TENSION: [Force; 2] = [
    crate::quantities::pounds(100.0),
    crate::quantities::pounds(400.0),
];
