//! The program: a thin shell around the library's command line.
#![forbid(unsafe_code)]

fn main() {}
