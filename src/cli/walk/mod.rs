//! `guardrule walk FILE`: a survey, asked for one question at a time.

mod keys;
mod store;
mod talk;

pub(super) use talk::run;
