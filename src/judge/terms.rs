//! The effects that make a finding's value doubtful.

use crate::judge::Finding;
use crate::judge::Options;
use crate::judge::scene::Scene;
use crate::quantities::Term;
use crate::survey::Guard;
use crate::survey::SurveyFacts;

impl Finding<'_> {
    /// The effects that make the deciding value doubtful, for `--explain`; of a
    /// shape those of each dimension.
    #[must_use]
    pub fn terms(&self, guard: &Guard, facts: &SurveyFacts) -> Vec<Term> {
        let scene = Scene::new(guard, facts, Options::default());
        let value = self.measured.as_ref().and_then(|measured| measured.value);
        let (Some(_), Some(value), Some(index)) = (self.uncertainty, value, self.readings.first())
        else {
            return Vec::new();
        };
        let observation = guard.observation(*index);
        let tape = observation
            .reading
            .as_ref()
            .and_then(|reading| reading.value.tape());
        match tape {
            Some((unit, graduation)) => {
                scene.terms(self.item, observation, value, unit, graduation)
            }
            None => Vec::new(),
        }
    }
}
