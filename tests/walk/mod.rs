//! The walk: what it asks, what it makes of answers, and that nothing is lost.

mod core;
mod disk;
mod fast;
mod person;
mod screen;
mod support;
