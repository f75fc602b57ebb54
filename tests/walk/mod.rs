//! The walk: what it asks, what it makes of answers, and that nothing is lost.

mod core;
mod dangers;
mod disk;
mod fast;
mod person;
mod rules;
mod screen;
mod support;
