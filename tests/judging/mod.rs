//! What the verdicts promise: one test for each sentence, named after it.

mod boundaries;
mod bounds_of_cases;
mod careful;
mod entrapment;
mod fixings;
mod found;
mod inspected;
mod leave_outs;
mod leaving_out;
mod load_path;
mod notes;
mod own_rules;
mod people;
mod posts;
mod rails;
mod sentences;
mod slips;
mod when_built;
mod widened;
mod wrong_words;
