//! Guards for the tests of this folder, read from the text of a survey.

use std::ops::ControlFlow;

use crate::survey::Guard;
use crate::survey::InMemory;
use crate::survey::Survey;
use crate::survey::SurveyFile;

/// The guards of a survey without a fault.
pub(super) fn guards(survey: &str) -> Vec<Guard> {
    let files: Vec<Box<dyn SurveyFile>> = vec![Box::new(InMemory::new("s.csv", survey.as_bytes()))];
    let survey = Survey::scan(&files).expect("held in memory");
    let mut guards = Vec::new();
    let read = survey.guards(&mut |guard| {
        guards.push(guard);
        ControlFlow::Continue(())
    });
    let read = read.expect("held in memory");
    assert!(!read.any_error(), "{:?}", read.sorted());
    guards
}
