//! What the verdicts promise: one test for each sentence, named after it.

mod as_built;
mod entrapment;
mod leaving_out;
mod sentences;
