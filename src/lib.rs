//! Judges guards (stair railings, balconies, deck guards) from tape readings
//! against swappable rule files, and says per rule: meets, falls short, too
//! close to call, not settled, not measured, does not apply.
//!
//! The modules below are floors, listed from the ground up (0 to 8, two of them on
//! some): each imports only from floors below its own.
//!
//! ```
//! use std::ops::ControlFlow;
//! use guardrule::survey::{InMemory, Survey, SurveyFile};
//! use guardrule::items::Verdict;
//! use guardrule::{judge, rules};
//!
//! let law = rules::load("us-dwelling-2018", &|_| None).ruleset.expect("it is embedded");
//! let text = "\
//! guard,item,reading
//! ,use,dwelling
//! porch,place,porch
//! porch,drop,4 ft 4 1/4 in
//! porch,height,34 5/8 in
//! ";
//! let files: Vec<Box<dyn SurveyFile>> = vec![Box::new(InMemory::new("porch.csv", text.as_bytes()))];
//! let survey = Survey::scan(&files)?;
//! let diagnostics = survey.guards(&mut |guard| {
//!     let options = judge::Options::default();
//!     let judged = judge::judge(&guard, survey.facts(), std::slice::from_ref(&law), options);
//!     assert_eq!(judged.verdict, Verdict::FallsShort);
//!     ControlFlow::Continue(())
//! })?;
//! assert!(!diagnostics.any_error());
//! # Ok::<(), guardrule::survey::FileError>(())
//! ```
//!
//! It never declares anything safe. It defers to the local authority and to
//! licensed practice.
#![cfg_attr(not(target_arch = "wasm32"), forbid(unsafe_code))]

// floor 0
pub mod input;
pub mod quantities;
// floor 1
pub mod geometry;
pub mod statics;
// floor 2
pub mod items;
// floor 3
pub mod reading;
// floor 4
pub mod rules;
pub mod survey;
// floor 5
pub mod judge;
// floor 6
pub mod compare;
pub mod remedy;
pub mod walk;
// floor 7
pub mod report;
// floor 8
#[cfg(feature = "terminal")]
pub mod cli;
pub mod phone;
