//! What the verdicts promise: one test for each sentence, named after it.

mod as_built;
mod leaving_out;
mod load_path;
mod sentences;
