//! Judges guards (stair railings, landings, deck guards) from tape readings
//! against swappable rule files, and says per rule: meets, falls short, too
//! close to call, not measured, does not apply.
//!
//! The folders are floors: each imports only from those above it in this list.
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
//! landing,place,landing
//! landing,drop,9 ft 2 in
//! landing,height,35 1/2 in
//! ";
//! let files: Vec<Box<dyn SurveyFile>> = vec![Box::new(InMemory::new("hall.csv", text.as_bytes()))];
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

pub mod input;
pub mod quantities;

pub mod geometry;
pub mod statics;

pub mod items;

pub mod reading;

pub mod rules;
pub mod survey;

pub mod judge;

pub mod walk;

pub mod report;

#[cfg(feature = "terminal")]
pub mod cli;
