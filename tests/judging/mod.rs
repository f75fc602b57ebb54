//! What the verdicts promise: one test for each sentence, named after it.

mod careful;
mod entrapment;
mod leave_outs;
mod leaving_out;
mod load_path;
mod people;
mod posts;
mod sentences;
mod when_built;
mod wrong_words;
