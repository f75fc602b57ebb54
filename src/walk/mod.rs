//! A survey, asked for one question at a time: what to ask next, what an answer
//! becomes, what is still missing. Nothing here knows a terminal, a file or a
//! clock: the text of a survey goes in, and the text of a survey comes out.

mod page;
mod place;

pub use place::Place;
