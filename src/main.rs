//! The program: a thin shell around the library's command line.
#![forbid(unsafe_code)]

use std::process::ExitCode;

use guardrule::cli;

fn main() -> ExitCode {
    let mut terminal = cli::Terminal::of_the_process();
    cli::run(std::env::args_os(), &mut terminal).into()
}
