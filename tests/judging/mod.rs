//! What the verdicts promise: one test for each sentence, named after it.

mod as_built;
mod entrapment;
mod leave_outs;
mod leaving_out;
mod load_path;
mod posts;
mod sentences;
