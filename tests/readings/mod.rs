//! What the parser of readings accepts, refuses and prints.

mod accepted;
mod helps;
mod others;
mod refused;
mod round_trip;
mod shapes;
