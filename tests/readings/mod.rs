//! What the parser of readings accepts, refuses and prints.

mod accepted;
mod refused;
mod round_trip;
