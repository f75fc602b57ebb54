//! Judges guards (stair railings, landings, deck guards) from tape readings
//! against swappable rule files, and says per rule: meets, falls short, too
//! close to call, not measured, does not apply.
//!
//! The folders are floors: each imports only from those above it in this list.
//!
//! It never declares anything safe. It defers to the local authority and to
//! licensed practice.
#![cfg_attr(not(target_arch = "wasm32"), forbid(unsafe_code))]

pub mod measure;
pub mod source;

pub mod geometry;
pub mod statics;

pub mod items;

pub mod reading;

pub mod rules;
pub mod survey;

pub mod evaluate;

pub mod walk;

pub mod report;

#[cfg(feature = "terminal")]
pub mod cli;
